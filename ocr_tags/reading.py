"""One photo into lines of words: which way is up, which passes to make, every word back on the photo.

The passes differ in how they err: `page` lets the engine find columns and lines in the evened picture;
`sparse` has it look for words anywhere in a smaller copy; `lines` gives it each line we found ourselves,
cut out, turned dark on light and scaled to the letter height it reads best. All go side by side to the
fields, which vote.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.cleaning import Straightened, even_light, straighten, turned
from ocr_tags.crops import cut_line
from ocr_tags.engines import Engine
from ocr_tags.leaders import without_leaders
from ocr_tags.record import Box, Word
from ocr_tags.regions import LineRegion, find_lines
from ocr_tags.text import Line, split_wide

TRIAL_LINES = 12
FEWEST_OF_A_WAY = 4
"""Lines read both ways up to find which way is up; of those up and down the tag a few at least."""
UNKNOWN_WORD = 0.3
"""What a letter of an unknown word says, beside one of a word that tags carry."""
SPARSE_SCALE = 0.6
"""The sparse pass reads a smaller picture than the page pass, so that the two err differently."""
LEAST_SURE = 0.25
"""Words the engine itself is less sure of are not words."""
LEAST_SAID = 0.6
"""A line that says less than one clear letter is a stain, an edge or a leaf (see `Line.weight`)."""


@dataclass(frozen=True)
class PictureRead:
    """What one photo says: lines by pass, in the straightened picture that `straight` describes."""

    straight: Straightened
    turn: int
    passes: dict[str, list[Line]]

    @property
    def height(self) -> int:
        return int(self.straight.pixels.shape[0])


def read_picture(pixels: NDArray[np.uint8], engine: Engine) -> PictureRead:
    """Read an upright photo (BGR, uint8, height x width x 3) with every pass."""
    cut = straighten(pixels)
    straight, turn, regions = _upright(replace(cut, pixels=without_leaders(cut.pixels)), engine)
    passes = {
        "page": _read_page(straight, engine),
        "sparse": _read_sparse(straight, engine),
        "lines": _read_lines(straight, regions, engine),
    }
    limits = (pixels.shape[1], pixels.shape[0])
    return PictureRead(
        straight, turn, {name: on_photo(lines, name, straight, limits) for name, lines in passes.items()}
    )


# ---------------------------------------------------------------- which way is up


def _upright(straight: Straightened, engine: Engine) -> tuple[Straightened, int, list[LineRegion]]:
    """The picture turned so that its text reads, the turn in degrees clockwise, and its lines."""
    regions = find_lines(straight.pixels)
    said = _said_by_direction(straight, regions, engine)
    direction = max(said, key=lambda each: said[each])
    if direction == 0:
        return straight, 0, regions
    turn = (360 - direction) % 360
    upright = turned(straight, turn)
    return upright, turn, find_lines(upright.pixels)


def _said_by_direction(
    straight: Straightened, regions: Sequence[LineRegion], engine: Engine
) -> dict[int, float]:
    """How much the longest lines say, by the way they would run: 0 is to the right, 90 down, and so on.

    Each line is read as it stands and upside down, all in one call.
    """
    said = dict.fromkeys((0, 180, 90, 270), 0.0)
    chosen = _trial_lines(regions)
    crops = [cut_line(straight.pixels, region).pixels for region in chosen]
    over = [np.ascontiguousarray(crop[::-1, ::-1]) for crop in crops]
    read = engine.read([*crops, *over], "line")
    for number, lines in enumerate(read):
        way = 0 if abs(chosen[number % len(chosen)].angle) < 45 else 90
        said[way if number < len(chosen) else way + 180] += sum(_said(line) for line in lines)
    return said


def _trial_lines(regions: Sequence[LineRegion]) -> list[LineRegion]:
    """The longest lines, of each direction at least a few; those up the tag are the ones down it, turned."""
    level = sorted((r for r in regions if abs(r.angle) < 45), key=_letters_wide, reverse=True)
    down = sorted((r for r in regions if 45 <= r.angle <= 135), key=_letters_wide, reverse=True)
    best = sorted((*level[:TRIAL_LINES], *down[:TRIAL_LINES]), key=_letters_wide, reverse=True)[:TRIAL_LINES]
    few = (*level[:FEWEST_OF_A_WAY], *down[:FEWEST_OF_A_WAY])
    return [*best, *(region for region in few if region not in best)]


def _letters_wide(region: LineRegion) -> float:
    (x0, y0), (x1, y1) = region.quad[0], region.quad[1]
    return min(float(np.hypot(x1 - x0, y1 - y0)) / max(region.letter_height, 1), 30)


def _said(words: Sequence[Word]) -> float:
    """How much these words say; a word that tags carry says far more than any letters can.

    An engine is sure of much that stands on its head ("seed" for "paas"), so its confidence alone is a
    poor judge of which way is up.
    """
    return sum(
        len(word.text) * (word.confidence if _known(word.text) else UNKNOWN_WORD * word.confidence**2)
        for word in words
        if len(word.text) > 1
    )


def _known(text: str) -> bool:
    return text.strip(".,:;()").casefold() in _tag_words()


@cache
def _tag_words() -> frozenset[str]:
    lines = files("ocr_tags").joinpath("data/tag_words.txt").read_text("utf-8").splitlines()
    return frozenset(word for line in lines if not line.startswith("#") for word in line.split())


# ---------------------------------------------------------------- the passes

Moved = list[list[Word]]
"""Lines of words whose `place` is in the straightened picture."""


def _read_page(straight: Straightened, engine: Engine) -> Moved:
    return engine.read([even_light(straight.pixels)], "page")[0]


def _read_sparse(straight: Straightened, engine: Engine) -> Moved:
    grey = even_light(straight.pixels)
    small = np.asarray(
        cv2.resize(grey, None, fx=SPARSE_SCALE, fy=SPARSE_SCALE, interpolation=cv2.INTER_AREA), np.uint8
    )
    grown = np.diag([1 / SPARSE_SCALE, 1 / SPARSE_SCALE, 1.0])
    return [
        [replace(word, place=moved(word.place, grown)) for word in line]
        for line in engine.read([small], "sparse")[0]
    ]


def _read_lines(straight: Straightened, regions: Sequence[LineRegion], engine: Engine) -> Moved:
    crops = [cut_line(straight.pixels, region) for region in regions]
    lines: Moved = []
    for read, crop in zip(engine.read([crop.pixels for crop in crops], "line"), crops, strict=True):
        words = [replace(word, place=moved(word.place, crop.to_picture)) for line in read for word in line]
        if words:
            lines.append(words)
    return lines


def moved(place: Box, way: NDArray[np.float64], limits: tuple[int, int] | None = None) -> Box:
    """The level box around `place` carried along the 3x3 homography `way`, kept inside `limits`."""
    corners = np.array(
        [[[place.x, place.y], [place.right, place.y], [place.right, place.bottom], [place.x, place.bottom]]],
        dtype=np.float64,
    )
    there = cv2.perspectiveTransform(corners, way)[0]
    if limits is not None:
        there = np.clip(there, (0, 0), limits)
    left, top = np.floor(there.min(axis=0)).astype(int)
    right, bottom = np.ceil(there.max(axis=0)).astype(int)
    return Box(int(left), int(top), max(int(right - left), 1), max(int(bottom - top), 1))


def on_photo(lines: Moved, reader: str, straight: Straightened, limits: tuple[int, int]) -> list[Line]:
    """Lines of one reading, parted at wide gaps, each word with its box on the photo; stains left out."""
    found: list[Line] = []
    for line in lines:
        words = [
            replace(word, box=moved(word.place, straight.to_photo, limits), reader=f"{word.reader} {reader}")
            for word in line
            if word.confidence >= LEAST_SURE
        ]
        found.extend(part for part in split_wide(words) if _is_print(part))
    return found


def _is_print(line: Line) -> bool:
    return line.weight >= LEAST_SAID and line.confidence >= 0.4
