"""A tag that bends away from the camera, made flat by the lines of its own print.

On a tag bent around a pot, level lines become arcs: each point lies lower (or higher) by an amount that
grows with the square of its distance from the middle. All lines of one tag bend alike, at most a little more
towards one edge, so a few long lines tell the bend of the whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.pictures.cleaning import Straightened
from ocr_tags.pictures.geometry import Floats, Pixels, reduced
from ocr_tags.pictures.glyphs import chains, layers

LOOK_SIDE = 1000
LONG_ROW = 8
"""Letters that a line must have to tell its bend."""
LEAST_ROWS = 3
LEAST_SAG = 0.25
"""In letter heights, over all that is printed: less than this disturbs no reader, and no row of a table."""
AGREEMENT = 1.6
"""A bend must leave this many times less of the lines' unevenness than a slope alone, which is the same along
all of a line: of short lines at either end of a tag the slopes tell that it is bent."""


@dataclass(frozen=True, slots=True)
class Bend:
    """How far down a point of the flat picture lies in the bent one, in pixels:
    (slope + slope_down * y) * x + (arc + arc_down * y) * x squared, x and y from `centre`."""

    centre: tuple[float, float]
    slope: float
    slope_down: float
    arc: float
    arc_down: float

    def bent(self, points: Floats) -> Floats:
        """Points (n x 2) of the flat picture, in the bent one."""
        x, y = (points - np.array(self.centre)).T
        down = (self.slope + self.slope_down * y) * x + (self.arc + self.arc_down * y) * x**2
        return np.column_stack([points[:, 0], points[:, 1] + down])

    def lowered(self, width: int, height: int) -> NDArray[np.float32]:
        """For each pixel of a flat picture (height x width), how far down it lies in the bent one."""
        x = np.arange(width, dtype=np.float32) - np.float32(self.centre[0])
        y = np.arange(height, dtype=np.float32) - np.float32(self.centre[1])
        slope, arc = self.slope + self.slope_down * y, self.arc + self.arc_down * y
        level = np.arange(height, dtype=np.float32)[:, None]
        down = np.outer(slope, x) + np.outer(arc, x**2) + level
        return np.asarray(down, np.float32)


def find_bend(picture: Pixels) -> Bend | None:
    """The bend of the level lines in an upright colour picture; None where there is none worth undoing."""
    small, back = reduced(picture, LOOK_SIDE / max(picture.shape[:2]))
    rows = list(_long_rows(small))
    if len(rows) < LEAST_ROWS:
        return None
    middle = np.array(small.shape[1::-1], np.float64) / 2
    height = float(np.median([row[:, 2].mean() for row in rows]))
    terms, offs = _equations([row[:, :2] - middle for row in rows], middle)
    _, unbent = _fitted(terms[:, :2], offs, height)
    found, left = _fitted(terms, offs, height)
    wide = float(np.ptp(np.concatenate([row[:, 0] for row in rows])))
    sag = abs(float(found[2])) / middle[0] ** 2 * (wide / 2) ** 2
    if sag < LEAST_SAG * height or np.median(unbent) < AGREEMENT * np.median(left):
        return None
    scale = float(back[0, 0])
    x, y = middle[0] * scale, middle[1] * scale
    slope, slope_down, arc, arc_down = (float(value) * scale for value in found)
    return Bend((x, y), slope / x, slope_down / x / y, arc / x**2, arc_down / x**2 / y)


def flattened(straight: Straightened) -> Straightened:
    """The same tag with its lines straight; itself where they are."""
    bend = find_bend(straight.pixels)
    if bend is None:
        return straight
    height, width = straight.pixels.shape[:2]
    across = np.broadcast_to(np.arange(width, dtype=np.float32), (height, width)).copy()
    down = bend.lowered(width, height)
    flat = cv2.remap(straight.pixels, across, down, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return replace(straight, pixels=np.asarray(flat, np.uint8), bend=bend)


def _long_rows(picture: Pixels) -> Iterator[Floats]:
    """Rows of letters: for each the middle (x, y) and height of its letters, tall and low ones left out."""
    for layer in layers(picture, colour=False):
        boxes = layer.boxes[layer.boxes[:, 2] < 3 * layer.boxes[:, 3]]
        for chain in chains(boxes):
            row = boxes[chain]
            height = float(np.median(row[:, 3]))
            # Letters of one height share their middle: mixed heights would put noise for curvature.
            row = row[np.abs(row[:, 3] - height) < 0.15 * height + 1]
            if len(row) >= LONG_ROW and np.ptp(row[:, 0]) > 6 * height:
                yield np.column_stack([row[:, :2] + row[:, 2:] / 2, row[:, 3]])


def _fitted(terms: Floats, offs: Floats, height: float) -> tuple[Floats, Floats]:
    """The terms' factors, letters far off counting less, and how far off each letter still is."""
    weights = np.ones(len(offs))
    for _ in range(4):
        found = np.linalg.lstsq(terms * weights[:, None], offs * weights, rcond=None)[0]
        left = np.abs(offs - terms @ found)
        weights = 1.0 / np.maximum(left / (0.15 * height), 1.0)
    return np.asarray(found), np.asarray(left)


def _equations(rows: list[Floats], half: Floats) -> tuple[Floats, Floats]:
    """For each letter the terms of the bend, and how far it is off its row's mean. Lengths along x and y are
    shares of `half`, so that the terms are alike in size."""
    terms, offs = [], []
    for row in rows:
        x, level = row[:, 0] / half[0], float(row[:, 1].mean()) / half[1]
        own = np.column_stack([x, level * x, x**2, level * x**2])
        terms.append(own - own.mean(axis=0))
        offs.append(row[:, 1] - row[:, 1].mean())
    return np.concatenate(terms), np.concatenate(offs)
