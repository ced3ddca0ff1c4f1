"""Which way is up, with the real engines: a drawn tag, turned each way, is read the right way up."""

import cv2
import numpy as np
import pytest

from ocr_tags.engines import open_engines
from ocr_tags.reading import read_picture


def drawn_tag() -> np.ndarray:
    """A white tag of plain print, height 900, width 700."""
    tag = np.full((900, 700, 3), 250, np.uint8)
    lines = ("Shasta Daisy", "Height 18 to 24 in", "Full sun to part shade", "Hardiness zones 4 to 9")
    for number, line in enumerate(lines):
        at = (50, 180 + 150 * number)
        cv2.putText(tag, line, at, cv2.FONT_HERSHEY_SIMPLEX, 1.5, (20, 20, 20), 3, cv2.LINE_AA)
    return tag


@pytest.mark.parametrize("reader", ["both", "tesseract", "rapidocr"])
@pytest.mark.parametrize("quarter", [0, 1, 2, 3])
def test_a_turned_tag_is_read_upright_and_its_words_lie_on_the_photo(reader: str, quarter: int) -> None:
    photo = np.ascontiguousarray(np.rot90(drawn_tag(), quarter))
    engines = open_engines(reader)
    seen = read_picture(photo, engines)
    assert seen.turn == 90 * quarter
    for engine in engines:
        said = {
            word.text
            for name, lines in seen.passes.items()
            if name.startswith(engine.name)
            for line in lines
            for word in line.words
        }
        assert {"Height", "Full", "Hardiness"} <= said, engine.name
    for word in (word for lines in seen.passes.values() for line in lines for word in line.words):
        assert 0 <= word.box.x < word.box.right <= photo.shape[1] + 1
        assert 0 <= word.box.y < word.box.bottom <= photo.shape[0] + 1


def test_a_mark_over_its_caption_is_read_before_it() -> None:
    tag = drawn_tag()
    for one, two in (((600, 380), (600, 480)), ((600, 480), (600, 380))):
        cv2.arrowedLine(tag, one, two, (20, 20, 20), 7, cv2.LINE_AA, tipLength=0.22)
    cv2.putText(tag, "30 in", (530, 550), cv2.FONT_HERSHEY_SIMPLEX, 1.5, (20, 20, 20), 3, cv2.LINE_AA)
    seen = read_picture(tag, open_engines("rapidocr"))
    assert "↕ 30 in" in [line.text for line in seen.passes["rapidocr marks"]]


def test_small_print_on_a_ground_of_its_own_colour_is_found_and_read() -> None:
    """A white tag on white paper: no outline tells where it is, and the print is a hundredth of the photo."""
    photo = np.full((2250, 3000, 3), 238, np.uint8)
    printed = ("Shasta Daisy", "Height 18 to 24 in", "Full sun to part shade", "Hardiness zones 4 to 9")
    for number, line in enumerate(printed):
        at = (1900, 1500 + 60 * number)
        cv2.putText(photo, line, at, cv2.FONT_HERSHEY_SIMPLEX, 0.9, (20, 20, 20), 2, cv2.LINE_AA)
    turn = cv2.getRotationMatrix2D((1500, 1125), 7, 1.0)
    photo = np.asarray(cv2.warpAffine(photo, turn, (3000, 2250), borderValue=(238, 238, 238)), np.uint8)
    seen = read_picture(photo, open_engines("rapidocr"))
    assert {line.text for line in seen.passes["rapidocr lines"]} >= set(printed)
    height, width = seen.straight.pixels.shape[:2]
    corners = seen.straight.on_photo(np.array([(0, 0), (width, height)], float))
    assert np.ptp(corners, axis=0).max() < 1500, "the tag was cut out"
