"""Puts this folder on the path: worker processes must be able to import `fake_reading`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
