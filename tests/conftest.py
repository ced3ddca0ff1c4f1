"""Puts this folder on the path: worker processes must be able to import `fake_reading`. No example of a
property is timed: on a busy machine that would fail what is right."""

import sys
from pathlib import Path

from hypothesis import settings

sys.path.insert(0, str(Path(__file__).parent))
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
