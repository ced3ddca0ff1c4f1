"""Which way is up, with the real engines: a drawn tag, turned each way, is read the right way up."""

from collections.abc import Sequence

import cv2
import numpy as np
import pytest

from ocr_tags.engines import Quad, open_engines
from ocr_tags.framing import _found_closest
from ocr_tags.pictures.cleaning import Straightened
from ocr_tags.pictures.facing import ReadLines, reversed_line, upright
from ocr_tags.pictures.regions import LineRegion
from ocr_tags.reading import _from_better_ends, read_pictures
from ocr_tags.record import Box, Word


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
    (seen,) = read_pictures([photo], engines)
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
    (seen,) = read_pictures([tag], open_engines("rapidocr"))
    assert "↕ 30 in" in [line.text for line in seen.passes["rapidocr marks"]]


PRINTED = ("Shasta Daisy", "Height 18 to 24 in", "Full sun to part shade", "Hardiness zones 4 to 9")


def white_on_white(size: float, degrees: float) -> np.ndarray:
    """A white tag on white paper, 2250 x 3000, its print turned: no outline tells where it is."""
    photo = np.full((2250, 3000, 3), 238, np.uint8)
    for number, line in enumerate(PRINTED):
        at = (1900 - round(400 * size), 1500 - round(300 * size) + round(66 * size * number))
        cv2.putText(
            photo, line, at, cv2.FONT_HERSHEY_SIMPLEX, size, (20, 20, 20), round(2 * size), cv2.LINE_AA
        )
    turn = cv2.getRotationMatrix2D((1500, 1125), degrees, 1.0)
    turned = cv2.warpAffine(photo, turn, (3000, 2250), borderValue=(238, 238, 238))
    return np.asarray(turned, np.uint8)


def test_small_print_on_a_ground_of_its_own_colour_is_found_and_read() -> None:
    (seen,) = read_pictures([white_on_white(0.9, 7)], open_engines("rapidocr"))
    assert {line.text for line in seen.passes["rapidocr lines"]} >= set(PRINTED)
    height, width = seen.straight.pixels.shape[:2]
    corners = seen.straight.on_photo(np.array([(0, 0), (width, height)], float))
    assert np.ptp(corners, axis=0).max() < 1500, "the tag was cut out"


def test_rows_that_only_look_like_print_do_not_tell_how_a_tag_lies(monkeypatch: pytest.MonkeyPatch) -> None:
    def rows(picture: np.ndarray, found: Sequence[LineRegion]) -> list[LineRegion]:
        height, width = picture.shape[:2]
        quads = (((0, y), (width, y), (width, y + 30), (0, y + 30)) for y in range(20, height - 40, 90))
        return [LineRegion(quad, 20.0, 0.9) for quad in quads]  # type: ignore[arg-type]

    monkeypatch.setattr("ocr_tags.reading.missed", rows)
    for levels_before in ("framing.narrowed", "pictures.cleaning._levelled"):
        monkeypatch.setattr(f"ocr_tags.{levels_before}", lambda pixels, cut, *more, **named: cut)
    (seen,) = read_pictures([white_on_white(4.0, 7)], open_engines("rapidocr"))
    whole = [line for line in seen.passes["rapidocr lines"] if line.text in PRINTED]
    assert len(whole) == len(PRINTED)
    for line in whole:
        middles = [word.place.y + word.place.h / 2 for word in line.words]
        assert max(middles) - min(middles) < 0.2 * line.height


def test_what_the_finder_makes_nothing_of_is_read_by_nobody(monkeypatch: pytest.MonkeyPatch) -> None:
    blank = LineRegion(((20, 20), (300, 20), (300, 60), (20, 60)), 25.0, 0.9)
    monkeypatch.setattr("ocr_tags.reading.missed", lambda picture, found: [blank])
    lines: list[int] = []

    class Other:
        name, colour = "other", False

        def read(self, pictures: Sequence[np.ndarray], layout: str) -> list[list[list[Word]]]:
            lines.append(len(pictures))
            return [[] for _ in pictures]

    read_pictures([drawn_tag()], (Other(), *open_engines("rapidocr")))  # type: ignore[arg-type]
    assert lines == [4]


def test_of_one_print_read_from_both_ends_the_end_that_says_more_is_kept() -> None:
    down = LineRegion(((60, 20), (60, 300), (20, 300), (20, 20)), 25.0, 0.9)
    level = LineRegion(((100, 20), (400, 20), (400, 60), (100, 60)), 25.0, 0.9)
    box = Box(0, 0, 1, 1)
    title, turned, other = ([Word(text, box, box, 0.9, "x")] for text in ("SWITCHGRASS", "SWIAS", "Moor"))
    regions = [level, down, reversed_line(down)]
    assert _from_better_ends(regions, [other, turned, title]) == [other, [], title]
    assert _from_better_ends(regions, [other, title, []]) == [other, title, []]


def reads(lines: dict[int, str]) -> tuple[list[int], ReadLines]:
    """A reader that reads each line by its way in degrees, and the list of all ways it was asked for."""
    asked: list[int] = []

    def read(straight: Straightened, regions: Sequence[LineRegion]) -> list[list[Word]]:
        ways = [round(region.angle) % 360 for region in regions]
        asked.extend(ways)
        box = Box(0, 0, 1, 1)
        return [[Word(text, box, box, 0.9, "x") for text in lines.get(way, "").split()] for way in ways]

    return asked, read


@pytest.mark.parametrize(
    ("text", "ways"), [("Height Full sun zones", {0}), ("seed pods", {0, 180}), ("Xqwv Ghrtz Plmk", {0, 180})]
)
def test_lines_are_read_from_their_other_end_only_where_they_leave_a_doubt(text: str, ways: set[int]) -> None:
    picture = Straightened(drawn_tag(), np.eye(3), (), 0.0)
    quads = [((50, y), (650, y), (650, y + 50), (50, y + 50)) for y in (100, 250)]
    asked, read = reads({0: text})
    _, turn, _ = upright(picture, [LineRegion(quad, 30.0, 0.9) for quad in quads], read)  # type: ignore[arg-type]
    assert (turn, set(asked)) == (0, ways)


class Blobs:
    """Finds the dark blobs of a picture, in place of a network."""

    def find_lines(self, picture: np.ndarray, closely: float = 1.0) -> list[Quad]:
        dark = np.asarray(picture[..., 0] < 100, np.uint8)
        _, _, stats, _ = cv2.connectedComponentsWithStats(dark)
        return [((x, y), (x + w, y), (x + w, y + h), (x, y + h)) for x, y, w, h, _ in stats[1:].tolist()]


@pytest.mark.parametrize("shape", [(1000, 600, 3), (600, 1000, 3)])
def test_a_picture_looked_at_in_halves_shows_each_line_once_and_whole(shape: tuple[int, int, int]) -> None:
    picture = np.full(shape, 255, np.uint8)
    lines = [(40, 30, 300, 20), (450, 300, 100, 20), (100, 495, 180, 15), (380, 550, 190, 12)]
    for x, y, w, h in lines:
        picture[y : y + h, x : x + w] = 0
    found = _found_closest(picture, Blobs())
    assert {(*quad[0], *quad[2]) for quad in found} == {(x, y, x + w, y + h) for x, y, w, h in lines}
    assert len(found) == len(lines)
