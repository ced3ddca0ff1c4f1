"""One photo into lines of words: which way is up, which passes to make, every word back on the photo.

The passes differ in how they err: `page` lets the engine find its own lines in the evened picture;
`lines` gives it each line we found ourselves, cut out, turned dark on light and scaled to the letter
height it reads best. Both go side by side to the fields, which vote.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.cleaning import Straightened, even_light, level_turns, straighten, turned
from ocr_tags.crops import cut_line
from ocr_tags.engines import Engine
from ocr_tags.record import Box, Word
from ocr_tags.regions import LineRegion, find_lines
from ocr_tags.text import Line, split_wide

TRIAL_LINES = 10
"""Lines read both ways up to find which way is up."""
CLEAR_LEAD = 1.6
"""A turn whose trial reads this many times better than the other is taken without a further trial."""
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
    straight, turn, regions = _upright(straighten(pixels), engine)
    passes = {
        "page": _read_page(straight, engine),
        "lines": _read_lines(straight, regions, engine),
    }
    limits = (pixels.shape[1], pixels.shape[0])
    return PictureRead(
        straight, turn, {name: _on_photo(lines, name, straight, limits) for name, lines in passes.items()}
    )


# ---------------------------------------------------------------- which way is up


def _upright(straight: Straightened, engine: Engine) -> tuple[Straightened, int, list[LineRegion]]:
    """The picture turned so that its text reads, the turn in degrees, and its lines."""
    best: tuple[float, Straightened, int, list[LineRegion]] | None = None
    tried: set[int] = set()
    for turn in level_turns(straight.pixels):
        if turn in tried:
            continue
        tried |= {turn, (turn + 180) % 360}
        level = turned(straight, turn)
        regions = find_lines(level.pixels)
        up, down = _trial(level, regions, engine)
        if best is None or max(up, down) > best[0]:
            if up >= down:
                best = (up, level, turn, regions)
            else:
                over = turned(straight, (turn + 180) % 360)
                best = (down, over, (turn + 180) % 360, find_lines(over.pixels))
        if max(up, down) > CLEAR_LEAD * min(up, down) + 10:
            break
    if best is None:
        return straight, 0, find_lines(straight.pixels)
    return best[1:]


def _trial(level: Straightened, regions: Sequence[LineRegion], engine: Engine) -> tuple[float, float]:
    """How much the longest lines say, as they stand and upside down."""
    chosen = sorted(regions, key=lambda region: -_letters_wide(region))[:TRIAL_LINES]
    crops = [cut_line(level.pixels, region).pixels for region in chosen]
    over = [np.ascontiguousarray(crop[::-1, ::-1]) for crop in crops]
    read = engine.read([*crops, *over], "line")
    scores = [sum(_said(line) for line in lines) for lines in read]
    return sum(scores[: len(crops)]), sum(scores[len(crops) :])


def _letters_wide(region: LineRegion) -> float:
    (x0, y0), (x1, y1) = region.quad[0], region.quad[1]
    return min(float(np.hypot(x1 - x0, y1 - y0)) / max(region.letter_height, 1), 30)


def _said(words: Sequence[Word]) -> float:
    return sum(word.confidence**2 * len(word.text) for word in words if len(word.text) > 2)


# ---------------------------------------------------------------- the passes

Moved = list[list[Word]]
"""Lines of words whose `place` is in the straightened picture."""


def _read_page(straight: Straightened, engine: Engine) -> Moved:
    return engine.read([even_light(straight.pixels)], "sparse")[0]


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


def _on_photo(lines: Moved, reader: str, straight: Straightened, limits: tuple[int, int]) -> list[Line]:
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
