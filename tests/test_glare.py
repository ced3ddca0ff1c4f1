"""Light on plastic, drawn: a soft white bell over print (a lamp's mirror image is brightest in its middle and
fades outwards; common practice, no source), and white things that are no glare."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from ocr_tags.pictures.glare import find_glare
from ocr_tags.pipeline import SideRead, make_record, one_side
from ocr_tags.record import Box, Photo, Word

Picture = NDArray[np.uint8]


def tag(paper: int = 215, ink: int = 40) -> Picture:
    """Six lines of print on a plain tag, 1000 x 700, with the grain of a phone's sensor."""
    picture = np.full((700, 1000, 3), paper, np.uint8)
    for row in range(6):
        place = (60, 120 + 95 * row)
        cv2.putText(picture, "Height 12-18 in Full sun", place, cv2.FONT_HERSHEY_SIMPLEX, 1.8, (ink,) * 3, 4)
    grain = np.random.default_rng(5).normal(0, 3, picture.shape)
    return np.asarray(np.clip(picture + grain, 0, 255), np.uint8)


def lit(picture: Picture, x: int, y: int, wide: float = 110, high: float = 60) -> Picture:
    ys, xs = np.mgrid[0 : picture.shape[0], 0 : picture.shape[1]]
    veil = np.minimum(1.5 * np.exp(-(((xs - x) / wide) ** 2) - ((ys - y) / high) ** 2), 1)[..., None]
    return np.asarray(picture * (1 - veil) + 255 * veil, np.uint8)


def word(text: str, x: int, y: int) -> Word:
    box = Box(x, y, 40 * len(text), 45)
    return Word(text, box, box, 0.9)


@pytest.mark.parametrize(("paper", "ink"), [(215, 40), (40, 220), (120, 20)])
def test_a_patch_is_found_and_the_words_it_cuts(paper: int, ink: int) -> None:
    glare = find_glare(lit(tag(paper, ink), 500, 300))
    assert glare is not None
    words = [word("Height", 60, 80), word("12-18", 300, 275), word("Full", 640, 275), word("sun", 900, 560)]
    assert [each.text for each in glare.beside(words)] == ["12-18"]


def test_white_that_is_no_glare() -> None:
    white_panel = tag(60, 230)
    white_panel[250:450, 300:700] = 255
    on_a_white_table = cv2.copyMakeBorder(
        tag(200), 90, 90, 90, 90, cv2.BORDER_CONSTANT, value=(255, 255, 255)
    )
    for picture in (tag(), tag(254), tag(40, 255), white_panel, np.asarray(on_a_white_table, np.uint8)):
        assert find_glare(picture) is None


def side(name: str, *blown_out: str) -> SideRead:
    return SideRead(Photo("front", name, name, 9, 9), {}, ("Sage",), None, 9, (), blown_out=blown_out)


def test_it_is_said_unless_another_photo_shows_the_place() -> None:
    (note,) = make_record(side("a", "in", "Height")).notes
    assert note == "Part of the front is blown out by light: print near “Height” may be missing."
    assert make_record([side("a", "Height"), side("b")]).notes == ()
    assert one_side([side("a", "Height"), side("b", "Zones")]).blown_out == ("Height",)
