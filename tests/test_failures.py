"""The kinds of failure that the sheet of failures is parted by."""

import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parent.parent / "samples"))

from failures import KINDS, kind_of
from score import Verdict

MISREAD, CUT, OTHER, ABSENT = KINDS


@pytest.mark.parametrize(
    ("outcome", "printed", "read", "kind"),
    [
        ("missing", "Moist, rich soil", None, ABSENT),
        ("wrong", "Moist, rich soil", "rich soil", CUT),
        ("wrong", "Slow-release feed", "Slow-releave feed", MISREAD),
        ("wrong", {"name": "Salvia nemorosa"}, {"name": "Salvia nemorasa"}, MISREAD),
        ("wrong", ["Toxic to pets"], ["Wear gloves"], OTHER),
        ("wrong", None, "Bright Sill", OTHER),
    ],
)
def test_failures_are_of_one_kind(outcome: Any, printed: Any, read: Any, kind: str) -> None:
    assert kind_of(Verdict("tag", "field", outcome, printed, read)) == kind
