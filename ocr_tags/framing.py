"""Where the lines of a photo are: the tag cut out so that all lines that a finder shows lie on it, and the
rows of letter shapes that the finder left out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.engines import LineFinder, Quad
from ocr_tags.pictures.cleaning import Straightened, narrowed, widened
from ocr_tags.pictures.geometry import Floats, box_around, reduced, through
from ocr_tags.pictures.leaders import without_leaders
from ocr_tags.pictures.regions import LineRegion, find_level, region_of
from ocr_tags.record import Box

SHAPES_SIDE = 640
"""Long side of the copy on which letter shapes are sought where an engine has found lines already: it is
large letters that a finder overlooks."""
LEAST_LIKELY = 0.75
"""Of rows of letter shapes that an engine's finder left out, those less likely print are not read. On drawn
tags a finder overlooks a large bold title now and then; of 600 rows less likely than this, one was a line."""
TOUCHING = 0.2
"""A row of which more lies on lines found is made of their letters."""
WIDENINGS = 3
"""How often a border that cuts lines off is moved, before and after the tag is sought by its lines."""
CLOSELY, CLOSEST, FEW_LINES = 2.5, 5.0, 3
"""How many times the usual area shows the lines where no tag was cut out, and where it shows so few: of 53
such photographs 11 lost half of their lines or more on the usual one, of 470 others none."""
WITH_ROOM = 1.9
"""The same where the tag has been cut out along its lines, with room around it."""
HALF = 0.6
"""Of the longer side of a picture that is looked at in two halves: what they share holds a whole line."""


def framed(
    pixels: NDArray[np.uint8], cut: Straightened, finder: LineFinder | None
) -> tuple[Straightened, list[LineRegion]]:
    """The picture with all the lines that a finder shows, and not much around them; the lines."""
    straight = replace(cut, pixels=without_leaders(cut.pixels))
    found = found_lines(straight, finder)
    for frame in (*[widened] * WIDENINGS, narrowed, *[widened] * WIDENINGS):
        again = frame(pixels, cut, [np.array(region.quad) for region in found])
        if again is not cut:
            cut, straight = again, replace(again, pixels=without_leaders(again.pixels))
            found = found_lines(straight, finder, WITH_ROOM if frame is narrowed else CLOSELY)
    return straight, found


def found_lines(
    straight: Straightened, finder: LineFinder | None, closely: float = CLOSELY
) -> list[LineRegion]:
    """The lines a finder shows, looked at `closely` where no outline tells that the tag is all there is."""
    if finder is None:
        return []
    quads = finder.find_lines(straight.pixels, 1.0 if straight.outline else closely)
    if len(quads) < FEW_LINES and not straight.outline:
        quads = _found_closest(straight.pixels, finder)
    return [region_of(quad) for quad in quads]


def _found_closest(picture: NDArray[np.uint8], finder: LineFinder) -> list[Quad]:
    """Lines sought in either half of a picture and a little beyond, as one copy that shows as much would take
    twice the memory; of two in one place, as where a half cuts a line, the larger."""
    along = 0 if picture.shape[0] > picture.shape[1] else 1
    length = picture.shape[along]
    found: list[Quad] = []
    for start in (0, round((1 - HALF) * length)):
        part = np.take(picture, range(start, min(start + round(HALF * length), length)), axis=along)
        shift = (0, start) if along == 0 else (start, 0)
        found += [_shifted(quad, shift) for quad in finder.find_lines(part, CLOSEST * HALF)]
    kept: list[tuple[Quad, Box]] = []
    for quad, box in sorted(
        ((q, box_around(np.array(q))) for q in found), key=lambda one: -one[1].w * one[1].h
    ):
        if not any(box.shared(other) > 0.5 * box.w * box.h for _, other in kept):
            kept.append((quad, box))
    return [quad for quad, _ in kept]


def _shifted(quad: Quad, by: tuple[int, int]) -> Quad:
    a, b, c, d = ((x + by[0], y + by[1]) for x, y in quad)
    return a, b, c, d


def missed(picture: NDArray[np.uint8], found: Sequence[LineRegion]) -> list[LineRegion]:
    """Level rows of clear letter shapes in an upright picture that the finder left out."""
    small, back = reduced(picture, SHAPES_SIDE / max(picture.shape[:2]))
    taken, way = np.zeros(small.shape[:2], np.uint8), np.asarray(np.linalg.inv(back), np.float64)
    for region in found:
        cv2.fillConvexPoly(taken, _pixels(through(way, np.array(region.quad))), 1)
    likely = (row for row in find_level(small) if row.score > LEAST_LIKELY)
    return [_enlarged(row, back) for row in likely if _share_of(taken, row) < TOUCHING]


def _share_of(taken: NDArray[np.uint8], region: LineRegion) -> float:
    """How much of a region is marked in `taken`."""
    own = np.zeros_like(taken)
    cv2.fillConvexPoly(own, _pixels(np.array(region.quad)), 1)
    return float((taken & own).sum() / max(own.sum(), 1))


def _pixels(points: Floats) -> NDArray[np.int32]:
    return np.asarray(np.rint(points), np.int32)


def _enlarged(region: LineRegion, back: Floats) -> LineRegion:
    a, b, c, d = ((float(x), float(y)) for x, y in through(back, np.array(region.quad)))
    return replace(region, quad=(a, b, c, d), letter_height=region.letter_height * float(back[1, 1]))
