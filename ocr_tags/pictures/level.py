"""Lines found in an upright picture made level: what outline and letter shapes got wrong, put right.

A wrong corner of the outline leaves the tag's lines aslant, or fanning out. Then level boxes around words
reach into the lines above and below, and order and layout are lost though every line is read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ocr_tags.pictures.cleaning import Straightened, Unbent
from ocr_tags.pictures.geometry import Floats, through, warped
from ocr_tags.pictures.regions import LineRegion

LEAST_SLOPE = 0.015
"""About one degree: less disturbs no reader."""
LONG_LINE = 3.0
"""In letter heights: shorter lines say too little about which way they run."""
FEWEST_FANNED = 5
"""Lines that it takes to tell how lines fan out; fewer tell one slope for all."""
WIDEST_FAN = 0.25
"""By how much the two ends of the picture may differ in size once the fan is undone."""


@dataclass(frozen=True, slots=True)
class Aslant:
    """The way from a level picture back to the bent one: `back` (3 x 3) into the flat one, then `bend`."""

    back: Floats
    bend: Unbent

    def bent(self, points: Floats) -> Floats:
        """Points (n x 2) of the level picture, in the bent one."""
        return self.bend.bent(through(self.back, points))


def levelled(straight: Straightened, regions: Sequence[LineRegion]) -> tuple[Straightened, Floats]:
    """The picture with its lines level, and the way (3 x 3) into it from the picture as it was.

    Columns stay upright: what slants is the letters, so lines are better read where they were. Where most
    lines are level the same picture is given back.
    """
    height, width = straight.pixels.shape[:2]
    way = _way(regions, width, height)
    if way is None:
        return straight, np.eye(3)
    corners = through(way, np.array([(0, 0), (width, 0), (width, height), (0, height)], np.float64))
    low = corners.min(axis=0)
    way = np.array([[1, 0, -low[0]], [0, 1, -low[1]], [0, 0, 1]]) @ way
    right, bottom = np.ceil(corners.max(axis=0) - low).astype(int)
    back = np.asarray(np.linalg.inv(way))
    pixels = warped(straight.pixels, back, (int(right), int(bottom)))
    if straight.bend is not None:
        return replace(straight, pixels=pixels, bend=Aslant(back, straight.bend)), way
    return replace(straight, pixels=pixels, to_photo=straight.to_photo @ back), way


def _way(regions: Sequence[LineRegion], width: int, height: int) -> Floats | None:
    """The 3 x 3 matrix that sends the point where the lines meet to the far right; None for level lines."""
    centre = np.array([width / 2, height / 2])
    told = [
        (region.length, *_slope_and_middle(region, centre))
        for region in regions
        if abs(region.angle) < 45 and region.length > LONG_LINE * region.letter_height
    ]
    if not told:
        return None
    weights, slopes, middles = np.array(told).T
    slope, fan = _fitted(weights, slopes, middles)
    if abs(fan) * width / 2 > WIDEST_FAN:
        slope, fan = _median(weights, slopes), 0.0
    if np.average(np.abs(slope - fan * middles), weights=weights) < LEAST_SLOPE:
        return None
    x, y = centre
    to_centre = np.array([[1.0, 0, -x], [0, 1, -y], [0, 0, 1]])
    return np.asarray(np.array([[1.0, 0, 0], [-slope, 1, 0], [-fan, 0, 1]]) @ to_centre)


def _slope_and_middle(region: LineRegion, centre: Floats) -> tuple[float, float]:
    """How steep a line's middle runs, and how far under the picture's centre it passes, in pixels."""
    a, b, c, d = np.array(region.quad)
    (x0, y0), (x1, y1) = (a + d) / 2 - centre, (b + c) / 2 - centre
    slope = (y1 - y0) / (x1 - x0)
    return float(slope), float(y0 - slope * x0)


def _fitted(weights: Floats, slopes: Floats, middles: Floats) -> tuple[float, float]:
    """`slope` and `fan` of lines that run like slope - fan * middle: those of one point all do."""
    start = _median(weights, slopes)
    if len(slopes) < FEWEST_FANNED:
        return start, 0.0
    terms = np.column_stack([np.ones(len(slopes)), -middles])
    found = np.array([start, 0.0])
    for _ in range(8):
        left = np.abs(slopes - terms @ found)
        trust = np.sqrt(weights / np.maximum(left, LEAST_SLOPE / 2))
        found = np.linalg.lstsq(terms * trust[:, None], slopes * trust, rcond=None)[0]
    return float(found[0]), float(found[1])


def _median(weights: Floats, values: Floats) -> float:
    order = np.argsort(values)
    reached = np.cumsum(weights[order])
    return float(values[order][np.searchsorted(reached, reached[-1] / 2)])
