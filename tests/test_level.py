"""Lines that run aslant or fan out come out level, and points find their way back to the photo."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from ocr_tags.pictures.bend import Bend
from ocr_tags.pictures.cleaning import Straightened
from ocr_tags.pictures.geometry import Floats, through
from ocr_tags.pictures.level import LEAST_SLOPE, levelled
from ocr_tags.pictures.regions import LineRegion

WIDE, HIGH = 600, 900


def seen(bend: Bend | None = None) -> Straightened:
    blank = np.full((HIGH, WIDE, 3), 255, np.uint8)
    to_photo = np.array([[1.1, 0.02, 40], [-0.03, 1.2, 60], [0, 0, 1]])
    return Straightened(blank, to_photo, (), 0.0, bend)


def lines(slope: float, fan: float, count: int = 9) -> list[LineRegion]:
    """Lines across the picture; how steep each runs grows with how far down it stands."""
    found = []
    for level in np.linspace(80, HIGH - 80, count):
        steep = slope - fan * (level - HIGH / 2)
        y0, y1 = (level + steep * (x - WIDE / 2) for x in (60, 540))
        quad = ((60.0, y0 - 12), (540.0, y1 - 12), (540.0, y1 + 12), (60.0, y0 + 12))
        found.append(LineRegion(quad, 16.0, 1.0))
    return found


def steepness(regions: list[LineRegion], way: Floats) -> float:
    """The steepest of the lines where the way takes them."""
    quads = [through(way, np.array(region.quad)) for region in regions]
    ends = [((q[0] + q[3]) / 2, (q[1] + q[2]) / 2) for q in quads]
    return max(abs((right[1] - left[1]) / (right[0] - left[0])) for left, right in ends)


@given(st.floats(-0.6, 0.6), st.floats(-4e-4, 4e-4))
@example(0.005859375, 6.97e-05)  # level on the whole, as most lines are; the steepest is not
def test_lines_of_any_slant_and_fan_come_out_level(slope: float, fan: float) -> None:
    regions = lines(slope, fan)
    straight = seen()
    level, way = levelled(straight, regions)
    # Lines whose mean slope is under the least are left: the steepest of a fan is 1 + √2 times its mean.
    assert steepness(regions, way) < 2.5 * LEAST_SLOPE
    corner = np.array([(100.0, 200.0)])
    assert level.on_photo(through(way, corner)) == pytest.approx(straight.on_photo(corner), abs=0.01)


def test_level_lines_stay_as_they_are() -> None:
    straight = seen()
    level, way = levelled(straight, lines(0.005, 0.0))
    assert level is straight
    assert (way == np.eye(3)).all()


def test_one_line_on_a_slant_does_not_turn_the_others() -> None:
    odd = lines(0.5, 0.0)[4]
    level, _ = levelled(straight := seen(), [*lines(0.0, 0.0), odd])
    assert level is straight


def test_no_lines() -> None:
    assert levelled(straight := seen(), [])[0] is straight


def test_a_bent_tag_finds_its_way_back_too() -> None:
    straight = seen(bend=Bend((300.0, 450.0), 0.1, 0.0, 2e-4, 0.0))
    level, way = levelled(straight, lines(0.2, 0.0))
    corner = np.array([(100.0, 200.0), (500.0, 700.0)])
    assert level.on_photo(through(way, corner)) == pytest.approx(straight.on_photo(corner), abs=0.01)
