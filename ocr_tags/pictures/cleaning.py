"""From a photo to a level, evenly lit picture of the tag, with the exact way back to the photo's pixels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

import cv2
import numpy as np

from ocr_tags.pictures.crops import Crop, cut_line
from ocr_tags.pictures.geometry import Floats, Pixels, around_centre, reduced, through, warped
from ocr_tags.pictures.glyphs import Direction, layers, text_direction
from ocr_tags.pictures.outline import best_outline, find_outlines, grown, with_titles
from ocr_tags.pictures.regions import LineRegion, find_lines, find_rows

__all__ = [
    "Crop",
    "LineRegion",
    "Straightened",
    "cut_line",
    "even_light",
    "find_lines",
    "straighten",
    "turned",
]

LONG_SIDE = 2000
"""Wanted long side of the straightened picture in pixels."""
MOST_ENLARGED = 2.0
LOOK_SIDE = 1000
"""Long side of the copy on which print is looked for in the whole photo."""
LEVEL_SIDE = 800
"""Long side of the copy on which the direction of the lines is measured."""
MARGIN = 0.02
"""Room kept around the outline, as a share of the tag's shorter side."""
CLEAR = 18.0
"""Grey levels by which print must stand out to be a sign of where the tag is: the grain of wood does not."""

FEWEST_LINES, ROOM, MOST_OF_IT = 3, 0.12, 0.6
"""So many lines tell where a tag without an outline is: with this room on all sides, as a share of the longer
side of the place they take, where that is no more than so much of the picture."""
CUT_OFF, CUT_SHARE, FEWEST_CUT = 0.012, 0.25, 2
"""Lines this near a border, as a share of the shorter side, are cut off by it: one that runs along it, or of
those that run up to an outline at least this share of all lines and this many."""
FURTHER = 0.6
"""How much of its width or height a picture gains beyond a border that cuts lines off."""


class Unbent(Protocol):
    """Takes points (n x 2) of a picture made flat to where they were before."""

    def bent(self, points: Floats) -> Floats: ...


Corners = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Straightened:
    """A tag seen straight on.

    `pixels`: colour picture, height x width x 3. `to_photo`: 3 x 3, takes picture pixels to photo pixels.
    `outline`: the tag's corners in photo pixels, from its top left clockwise; empty when the whole picture
    or only its print was taken for the tag. `sure`, 0 to 1: how convincing the outline is. `bend`: how far a
    tag made flat was bent; `on_photo` minds it, `to_photo` alone does not.
    """

    pixels: Pixels
    to_photo: Floats
    outline: Corners
    sure: float
    bend: Unbent | None = None

    def on_photo(self, points: Floats) -> Floats:
        """Points (n x 2) of the picture in pixels of the photo."""
        return through(self.to_photo, points if self.bend is None else self.bend.bent(points))


# ---------------------------------------------------------------- straight


def straighten(pixels: Pixels, finely: bool = True) -> Straightened:
    """The tag cut out of an upright colour photo (height x width x 3, uint8), level and free of perspective.

    Text is never cut off for the sake of an outline: without a convincing one the surroundings of the print
    are kept, and without print the whole photo. Not `finely`, where lines are sought afterwards, a tag with
    an outline is as level as that is, and without one the whole photo is kept (see `narrowed`).
    """
    seen = _print_in(pixels)
    best = best_outline(find_outlines(pixels, seen))
    if best is not None:
        whole = with_titles(best.corners, seen)
        corners = tuple((float(x), float(y)) for x, y in whole)
        cut = _cut(pixels, grown(whole, MARGIN), corners, best.sure)
        return _levelled(pixels, cut, most=6.0) if finely else cut
    part = _around_print(pixels, seen) if finely else _whole(pixels)
    return _levelled(pixels, _cut(pixels, part, (), 0.0), most=30.0)


def _whole(pixels: Pixels) -> Floats:
    height, width = pixels.shape[:2]
    return np.array([(0, 0), (width, 0), (width, height), (0, height)], np.float64)


def _print_in(pixels: Pixels) -> Direction:
    """Likely print anywhere in the photo, in photo pixels."""
    look, back = reduced(pixels, LOOK_SIDE / max(pixels.shape[:2]))
    seen = text_direction(list(layers(look, colour=False, floor=CLEAR)))
    return replace(seen, centres=through(back, seen.centres), sizes=seen.sizes * back[0, 0])


def _around_print(pixels: Pixels, seen: Direction) -> Floats:
    """The whole photo; or, where all clear print stands in a small part of it, that part along its lines
    with as much room again on all sides (what is in no clear row may still be print)."""
    height, width = pixels.shape[:2]
    whole = _whole(pixels)
    angle = np.radians((seen.angle + 45) % 90 - 45)
    axes = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    flat, frame = seen.centres @ axes.T, whole @ axes.T
    if len(flat) < 30 or seen.share < 0.5 or np.ptp(flat, axis=0).max() > 0.25 * min(width, height):
        return whole
    room = np.ptp(flat, axis=0).max()
    low = np.maximum(flat.min(axis=0) - room, frame.min(axis=0))
    high = np.minimum(flat.max(axis=0) + room, frame.max(axis=0))
    return np.asarray(np.array([low, (high[0], low[1]), high, (low[0], high[1])]) @ axes)


def _cut(pixels: Pixels, quad: Floats, outline: Corners, sure: float) -> Straightened:
    """The quad as a level rectangle."""
    top, right, bottom, left = (float(np.linalg.norm(quad[(k + 1) % 4] - quad[k])) for k in range(4))
    width, height = max(top, bottom), max(left, right)
    scale = min(LONG_SIDE / max(width, height), MOST_ENLARGED)
    size = (max(8, round(width * scale)), max(8, round(height * scale)))
    target = np.array([(0, 0), (size[0], 0), size, (0, size[1])], np.float32)
    to_photo = np.asarray(cv2.getPerspectiveTransform(target, quad.astype(np.float32)), np.float64)
    return Straightened(warped(pixels, to_photo, size), to_photo, outline, sure)


def narrowed(pixels: Pixels, cut: Straightened, lines: Sequence[Floats]) -> Straightened:
    """Where no outline was found, the part of the photo that holds the lines (each 4 x 2), and some room.

    The same picture where it has an outline, or where that part is most of it.
    """
    if cut.outline or len(lines) < FEWEST_LINES:
        return cut
    ends = np.array(lines).reshape(-1, 4, 2)
    axes = _along_most(ends)
    flat = ends.reshape(-1, 2) @ axes.T
    room = ROOM * np.ptp(flat, axis=0).max()
    low, high = flat.min(axis=0) - room, flat.max(axis=0) + room
    height, width = cut.pixels.shape[:2]
    if np.prod(high - low) > MOST_OF_IT * height * width:
        return cut
    quad = np.array([low, (high[0], low[1]), high, (low[0], high[1])]) @ axes
    return _cut(pixels, through(cut.to_photo, quad), (), 0.0)


def _along_most(ends: Floats) -> Floats:
    """The two directions (2 x 2) in which most lines run: along their longer sides."""
    sides = np.concatenate([ends[:, 1] - ends[:, 0], ends[:, 2] - ends[:, 1]])
    lengths = np.linalg.norm(sides, axis=1)
    fourfold = np.exp(4j * np.arctan2(sides[:, 1], sides[:, 0])) * lengths**2
    angle = float(np.angle(fourfold.sum())) / 4
    return np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])


def widened(pixels: Pixels, cut: Straightened, lines: Sequence[Floats]) -> Straightened:
    """The picture with more of the photo beyond each border that cuts lines (each 4 x 2) of print off.

    An outline that does so was none, so it is not kept. The same picture where no lines are cut off.
    """
    if not lines:
        return cut
    height, width = cut.pixels.shape[:2]
    ends = np.array(lines).reshape(-1, 4, 2)
    level = np.ptp(ends[..., 0], axis=1) > np.ptp(ends[..., 1], axis=1)
    low, high, near = ends.min(axis=1), ends.max(axis=1), CUT_OFF * min(height, width)
    reached = (
        (low[:, 0] < near, ~level),
        (low[:, 1] < near, level),
        (high[:, 0] > width - near, ~level),
        (high[:, 1] > height - near, level),
    )
    fewest = max(FEWEST_CUT, CUT_SHARE * len(ends)) if cut.outline else 1
    left, top, right, bottom = (
        more and (bool((touched & along).any()) or int(touched.sum()) >= fewest)
        for more, (touched, along) in zip(_goes_on(pixels, cut), reached, strict=True)
    )
    if not (left or top or right or bottom):
        return cut
    x0, x1 = -FURTHER * width * left, width * (1 + FURTHER * right)
    y0, y1 = -FURTHER * height * top, height * (1 + FURTHER * bottom)
    quad = through(cut.to_photo, np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], np.float64))
    return _cut(pixels, quad, (), 0.0)


def _goes_on(pixels: Pixels, cut: Straightened) -> list[bool]:
    """Whether the photo goes on beyond the picture's left, upper, right, and lower border."""
    less, more = -FURTHER / 2, 1 + FURTHER / 2
    beyond = np.array([(less, 0.5), (0.5, less), (more, 0.5), (0.5, more)]) * cut.pixels.shape[1::-1]
    there = through(cut.to_photo, beyond)
    return [0 < x < pixels.shape[1] and 0 < y < pixels.shape[0] for x, y in there]


def _levelled(pixels: Pixels, cut: Straightened, most: float) -> Straightened:
    """The picture turned by the small angle its text lines still have."""
    angle = text_angle(cut.pixels)
    if not 0.2 < abs(angle) < most:
        return cut
    height, width = cut.pixels.shape[:2]
    back, size = around_centre((width, height), angle)
    to_photo = cut.to_photo @ back
    return replace(cut, pixels=warped(pixels, to_photo, size), to_photo=to_photo)


# ---------------------------------------------------------------- level and upright


def text_angle(picture: Pixels) -> float:
    """Angle of the text lines in degrees, clockwise positive, up to 30 either way; 0 when there is none."""
    level, upright = _rows(picture)
    main = level if _amount(level) >= _amount(upright) else upright
    clear = [row for row in main if row.score > 0.5 and row.length > 4 * row.letter_height]
    if not clear:
        return 0.0
    slopes = np.array([row.angle for row in clear])
    order = np.argsort(slopes)
    weights = np.cumsum(np.array([row.length * row.score for row in clear])[order])
    angle = float(slopes[order][np.searchsorted(weights, weights[-1] / 2)])
    return (angle + 45) % 90 - 45


def _rows(picture: Pixels) -> tuple[list[LineRegion], list[LineRegion]]:
    """Rows of print that run level, and those that run down, on a small copy."""
    small, _ = reduced(picture, LEVEL_SIDE / max(picture.shape[:2]))
    return find_rows(small)


def _amount(rows: list[LineRegion]) -> float:
    """How much print the rows make: likelihood times letters."""
    return sum(row.score**2 * min(row.length / row.letter_height, 30.0) for row in rows)


def turned(picture: Straightened, degrees: int) -> Straightened:
    """The picture turned clockwise by a multiple of 90 degrees; its way back to the photo stays exact."""
    quarter = degrees // 90 % 4
    low, right = picture.pixels.shape[0] - 1.0, picture.pixels.shape[1] - 1.0
    back = {
        0: np.eye(3),
        1: np.array([[0.0, 1, 0], [-1, 0, low], [0, 0, 1]]),
        2: np.array([[-1.0, 0, right], [0, -1, low], [0, 0, 1]]),
        3: np.array([[0.0, -1, right], [1, 0, 0], [0, 0, 1]]),
    }[quarter]
    pixels = np.ascontiguousarray(np.rot90(picture.pixels, -quarter))
    outline = picture.outline[-quarter:] + picture.outline[:-quarter] if quarter else picture.outline
    return Straightened(pixels, picture.to_photo @ back, outline, picture.sure)


# ---------------------------------------------------------------- light


def even_light(pixels: Pixels) -> Pixels:
    """Grey picture (height x width) without shadows: each place divided by the light that falls on it."""
    grey = np.asarray(cv2.cvtColor(pixels, cv2.COLOR_BGR2GRAY), np.uint8)
    scale = 200 / max(grey.shape)
    small = cv2.resize(grey, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA)
    bright = cv2.dilate(small, np.ones((5, 5), np.uint8))
    light = cv2.GaussianBlur(bright, (0, 0), 12).astype(np.float32)
    light = np.maximum(light, 0.4 * float(light.max()))
    full = cv2.resize(light, (grey.shape[1], grey.shape[0]), interpolation=cv2.INTER_LINEAR)
    return np.asarray(np.clip(grey * (float(np.percentile(light, 95)) / full), 0, 255), np.uint8)
