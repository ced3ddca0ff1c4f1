"""A bent tag made flat: judged by how straight its lines are, and where its words lie on the photo."""

import cv2
import numpy as np
import pytest

from ocr_tags.pictures.bend import find_bend, flattened
from ocr_tags.pictures.cleaning import Straightened


def page() -> np.ndarray:
    tag = np.full((900, 1200, 3), 245, np.uint8)
    for number in range(8):
        text = "mountain heather grows near water in acid ground"[number : 44 + number // 2]
        at = (60, 120 + 95 * number)
        cv2.putText(tag, text, at, cv2.FONT_HERSHEY_SIMPLEX, 1.3, (30, 30, 30), 2, cv2.LINE_AA)
    return tag


def bent(tag: np.ndarray, sag: float) -> np.ndarray:
    """The picture with its middle `sag` pixels higher than its edges."""
    height, width = tag.shape[:2]
    x, y = np.meshgrid(np.arange(width, dtype=np.float32), np.arange(height, dtype=np.float32))
    down = sag * ((x - width / 2) / (width / 2)) ** 2
    return cv2.remap(tag, x, (y - down).astype(np.float32), cv2.INTER_LINEAR, borderValue=(245, 245, 245))


@pytest.mark.parametrize("sag", [-45.0, 30.0, 60.0])
def test_a_bend_is_undone_to_within_a_tenth(sag: float) -> None:
    straight = Straightened(bent(page(), sag), np.eye(3), (), 0.0)
    flat = flattened(straight)
    assert flat.bend is not None
    points = np.array([(60.0, 450.0), (600.0, 450.0), (1140.0, 450.0)])
    left, middle, right = flat.on_photo(points)[:, 1]
    assert left - middle == pytest.approx(sag * (540 / 600) ** 2, abs=0.1 * abs(sag) + 2)
    assert right - middle == pytest.approx(sag * (540 / 600) ** 2, abs=0.1 * abs(sag) + 2)
    again = find_bend(flat.pixels)
    assert again is None or abs(again.arc) < 0.2 * abs(sag) / 600**2


def test_a_flat_tag_and_an_empty_one_are_left_alone() -> None:
    for picture in (page(), np.full((500, 500, 3), 200, np.uint8)):
        straight = Straightened(picture, np.eye(3), (), 0.0)
        assert flattened(straight) is straight


def test_short_lines_at_either_end_tell_the_bend_of_a_table() -> None:
    """Labels at the left and values at the right, each too short to curve: their slopes differ."""
    tag = np.full((900, 1200, 3), 245, np.uint8)
    for number in range(8):
        for text, x in (("plant spacing", 60), ("every season", 850)):
            at = (x, 120 + 95 * number)
            cv2.putText(tag, text, at, cv2.FONT_HERSHEY_SIMPLEX, 1.3, (30, 30, 30), 2, cv2.LINE_AA)
    assert find_bend(tag) is None
    bend = find_bend(bent(tag, 45.0))
    assert bend is not None
    assert bend.arc * 600**2 == pytest.approx(45.0, abs=7)
