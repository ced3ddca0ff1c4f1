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
