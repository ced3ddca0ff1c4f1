"""The second reader: lines found and read, Latin signs only, and never a call to the network."""

import subprocess
import sys
from itertools import pairwise

import cv2
import numpy as np
import pytest
from PIL import Image, ImageDraw, ImageFont

from ocr_tags.engines import open_engine, open_engines
from ocr_tags.engines.rapidocr import RapidReader
from ocr_tags.errors import ReaderError, TagError

OFFLINE = """
import socket
def refuse(*given, **named):
    raise AssertionError("the network was called")
socket.socket.connect = socket.create_connection = socket.getaddrinfo = refuse
import numpy as np, cv2
from ocr_tags.engines import open_engine
picture = np.full((60, 400, 3), 255, np.uint8)
cv2.putText(picture, "Full sun", (20, 45), cv2.FONT_HERSHEY_SIMPLEX, 1.3, (0, 0, 0), 2, cv2.LINE_AA)
print(" ".join(word.text for word in open_engine("rapidocr").read([picture], "line")[0][0]))
"""


@pytest.fixture(scope="module")
def reader() -> RapidReader:
    engine = open_engine("rapidocr")
    assert isinstance(engine, RapidReader)
    return engine


def line(text: str, colour: tuple[int, int, int] = (0, 0, 0)) -> np.ndarray:
    picture = np.full((64, 40 + 24 * len(text), 3), 250, np.uint8)
    cv2.putText(picture, text, (20, 46), cv2.FONT_HERSHEY_SIMPLEX, 1.2, colour, 2, cv2.LINE_AA)
    return picture


def test_words_come_with_places_in_the_order_printed(reader: RapidReader) -> None:
    ((words,),) = reader.read([line("Spread 12 to 18 in")], "line")
    assert [word.text for word in words] == ["Spread", "12", "to", "18", "in"]
    assert all(a.place.right <= b.place.x + 4 for a, b in pairwise(words))
    assert 12 <= words[0].place.x <= 30, "the first letter stands twenty pixels from the left"


def test_colour_and_grey_both_do_and_an_empty_picture_says_nothing(reader: RapidReader) -> None:
    grey = cv2.cvtColor(line("Zone 5"), cv2.COLOR_BGR2GRAY)
    empty = np.full((48, 200), 255, np.uint8)
    read = reader.read([grey, empty, line("Zone 6", (40, 40, 200))], "line")
    assert [[word.text for words in lines for word in words] for lines in read] == [
        ["Zone", "5"],
        [],
        ["Zone", "6"],
    ]


def test_lines_are_found_whichever_way_they_run(reader: RapidReader) -> None:
    page = np.full((700, 900, 3), 245, np.uint8)
    page[100:164, 100 : 100 + line("Swamp milkweed").shape[1]] = line("Swamp milkweed")
    upright = np.rot90(line("Asclepias"))
    page[300 : 300 + upright.shape[0], 700:764] = upright
    wide, tall = sorted(reader.find_lines(page), key=lambda quad: quad[0][1])
    assert abs(wide[1][0] - wide[0][0]) > 4 * abs(wide[3][1] - wide[0][1])
    heights = [y for _, y in tall]
    assert max(heights) - min(heights) > 120


def test_no_sign_outside_latin_is_ever_read(reader: RapidReader) -> None:
    noise = np.random.default_rng(5).integers(0, 255, (48, 600, 3), np.uint8)
    rough = cv2.GaussianBlur(noise, (0, 0), 3)
    read = reader.read([noise, rough], "line")
    text = "".join(word.text for lines in read for words in lines for word in words)
    assert all(ord(sign) < 0x3000 for sign in text)


def test_nothing_is_fetched() -> None:
    done = subprocess.run([sys.executable, "-c", OFFLINE], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "Full sun", done.stderr


def test_both_says_which_is_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(languages: str, folder: str | None) -> None:
        raise ReaderError("The reader RapidOCR is not installed.", "Install it.")

    monkeypatch.setattr("ocr_tags.engines.rapidocr.open_engine", missing)
    assert [engine.name for engine in open_engines("auto")] in (["tesseract"], ["tesserocr"])
    with pytest.raises(ReaderError, match="RapidOCR is not installed"):
        open_engines("both")
    with pytest.raises(TagError, match="no reader called 'abacus'"):
        open_engines("abacus")


@pytest.mark.parametrize("share", [0.6, 0.7, 0.8])
def test_condensed_print_loses_no_letters(reader: RapidReader, share: float) -> None:
    """Letters that fall into one column of the recogniser come out as one: "pereial" for perennial."""
    printed = "A reliable perennial. Winter hardy. Needs well drained soil. Full till fall."
    font = ImageFont.load_default(34)
    wide = round(font.getlength(printed))
    page = Image.new("RGB", (wide + 24, 54), "white")
    ImageDraw.Draw(page).text((12, 6), printed, fill=(30, 30, 30), font=font)
    squeezed = cv2.resize(np.asarray(page), None, fx=share, fy=1.0, interpolation=cv2.INTER_AREA)
    ((words,),) = reader.read([np.asarray(squeezed)], "line")
    assert " ".join(word.text for word in words) == printed
    assert words[-1].place.right == pytest.approx((12 + wide) * share, abs=16)
