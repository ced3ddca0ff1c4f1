"""Marks without words on a tag: suns, drops, arrows, snowflakes, flowers, as words of one symbol each.

A printed mark is one flat colour on a flat ground, apart from what is around it; pictures of plants are
not. What is left is told by shape (`mark_shapes`). A plain dot or ring is a bullet or a letter, unless it
stands in a row with a sun or a half-dark disc.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import cv2
import numpy as np

from ocr_tags.geometry import Floats, Indices, Pixels, through
from ocr_tags.mark_shapes import REACH, Kind, shape_of
from ocr_tags.record import Box, Word

SYMBOLS: dict[str, str] = {
    "sun": "☀",
    "half_sun": "◐",
    "shade": "●",
    "ring": "○",
    "drop": "💧",
    "thermometer": "🌡",
    "snow": "❄",
    "tall": "↕",
    "wide": "↔",
    "apart": "⇿",
    "flower": "✿",
}
"""The Unicode character that stands in the text where a mark is printed."""
SMALLEST, LARGEST = 18, 260
"""Width and height of a mark, in pixels of the straightened picture; its longer side at least SMALLEST."""
CONTRAST = 40.0
UNEVEN = 22.0
"""Grey levels by which a printed mark, or the ground right around it, varies at most."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark: what it shows, where in the straightened picture, and how sure its shape is, 0 to 1."""

    kind: Kind
    box: Box
    certainty: float


def find_marks(picture: Pixels) -> list[Mark]:
    """The marks on a straightened tag (BGR, uint8, height x width x 3), from top to bottom."""
    darkest, lightest = (
        np.asarray(way(way(picture[..., 0], picture[..., 1]), picture[..., 2]), np.uint8)
        for way in (cv2.min, cv2.max)
    )
    found = [*_marks_in(picture, darkest), *_marks_in(picture, np.asarray(255 - lightest, np.uint8))]
    return sorted(_in_rows(_apart(found)), key=lambda mark: (mark.box.y, mark.box.x))


def mark_words(marks: Iterable[Mark], to_photo: Floats, limits: tuple[int, int]) -> list[Word]:
    """Each mark as a word of one symbol, with its box in the photo (`limits`: its width and height)."""
    words = []
    for mark in marks:
        at = mark.box
        corners = np.array([(at.x, at.y), (at.right, at.y), (at.right, at.bottom), (at.x, at.bottom)])
        there = np.clip(through(to_photo, corners.astype(np.float64)), (0, 0), limits)
        left, top = (int(v) for v in np.floor(there.min(axis=0)))
        right, bottom = (int(v) for v in np.ceil(there.max(axis=0)))
        box = Box(left, top, max(right - left, 1), max(bottom - top, 1))
        words.append(Word(SYMBOLS[mark.kind], at, box, mark.certainty, "marks"))
    return words


def covers(mark: Mark, place: Box) -> bool:
    """Whether a word read in this place is the mark, taken for letters."""
    return _shared(mark.box, place) > 0.6 * place.w * place.h


# ---------------------------------------------------------------- ink


def _marks_in(picture: Pixels, value: Pixels) -> Iterator[Mark]:
    ink = _ink(value)
    _, labels, stats, _ = cv2.connectedComponentsWithStats(ink, connectivity=8, ltype=cv2.CV_32S)
    for label in _candidates(np.asarray(stats, np.intp)):
        x, y, w, h = (int(v) for v in stats[label, :4])
        own = np.asarray(labels[y : y + h, x : x + w] == label, np.uint8)
        if not _is_flat(picture, ink, own, Box(x, y, w, h)):
            continue
        shape = shape_of(own, _filled(own), _around(ink, Box(x, y, w, h)))
        if shape is not None:
            kind = "apart" if shape.kind == "wide" and _has_neighbours(ink, Box(x, y, w, h)) else shape.kind
            yield Mark(kind, _grown(Box(x, y, w, h), shape.reach), shape.certainty)


def _has_neighbours(ink: Pixels, at: Box) -> bool:
    """Whether something stands over or beside both ends of a level arrow, and nothing over its middle: two
    plants and the room between them."""
    third, half = at.w // 3, at.w // 2
    over = ink[max(at.y - half, 0) : max(at.y - 2, 0), at.x : at.right]
    if over[:, :third].any() and over[:, -third:].any() and not over[:, third:-third].any():
        return True
    around = ink[max(at.y - half, 0) : at.bottom + half]
    sides = (around[:, max(at.x - third, 0) : at.x], around[:, at.right : at.right + third])
    inked = [float(side.max(axis=1, initial=0).mean()) if side.size else 0.0 for side in sides]
    # Ink all the way up and down is the rim of a badge that the arrow stands in.
    return all(0 < share < 0.9 for share in inked)


def _ink(value: Pixels) -> Pixels:
    """1 where the picture is clearly darker than the ground around."""
    height, width = value.shape
    small = cv2.resize(value, (max(width // 8, 1), max(height // 8, 1)), interpolation=cv2.INTER_AREA)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (21, 21))
    ground = cv2.GaussianBlur(cv2.morphologyEx(small, cv2.MORPH_CLOSE, kernel), (0, 0), 4)
    full = cv2.resize(ground, (width, height), interpolation=cv2.INTER_LINEAR)
    return np.asarray(cv2.subtract(full, value) > CONTRAST, np.uint8)


def _candidates(stats: Indices) -> list[int]:
    w, h, area = (stats[:, k].astype(np.float64) for k in (2, 3, 4))
    tall, thin = np.maximum(w, h), np.minimum(w, h)
    fits = (tall >= SMALLEST) & (tall <= LARGEST) & (thin >= 7) & (tall < 7 * thin) & (area > 0.07 * w * h)
    fits[0] = False
    return [int(k) for k in np.flatnonzero(fits)]


def _is_flat(picture: Pixels, ink: Pixels, own: Pixels, at: Box) -> bool:
    """Whether the patch has one colour on a ground of one colour."""
    room = max(3, max(at.w, at.h) // 8)
    top, left = max(at.y - room, 0), max(at.x - room, 0)
    part = picture[top : at.bottom + room, left : at.right + room]
    inner = cv2.erode(own, np.ones((3, 3), np.uint8))
    inner = inner if inner.sum() > 12 else own
    colours = picture[at.y : at.bottom, at.x : at.right][inner > 0]
    free = cv2.dilate(ink[top : at.bottom + room, left : at.right + room], np.ones((5, 5), np.uint8)) == 0
    ground = part[free]
    if len(ground) < 20:
        return False
    return bool(colours.std(axis=0).max() < UNEVEN and ground.std(axis=0).max() < UNEVEN)


def _filled(own: Pixels) -> Pixels:
    outlines, _ = cv2.findContours(own, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_SIMPLE)
    return np.asarray(cv2.drawContours(np.zeros_like(own), outlines, -1, 1, cv2.FILLED), np.uint8)


def _around(ink: Pixels, at: Box) -> Pixels:
    """All ink within `REACH` of a patch, as a square around its middle."""
    half = round(max(at.w, at.h) * REACH / 2) + 1
    cx, cy = at.x + at.w // 2, at.y + at.h // 2
    top, left = max(cy - half, 0), max(cx - half, 0)
    part = ink[top : cy + half + 1, left : cx + half + 1]
    square = np.zeros((2 * half + 1, 2 * half + 1), np.uint8)
    down, over = top - (cy - half), left - (cx - half)
    square[down : down + part.shape[0], over : over + part.shape[1]] = part
    return square


def _grown(at: Box, reach: float) -> Box:
    dx, dy = round(at.w * (reach - 1) / 2), round(at.h * (reach - 1) / 2)
    return Box(at.x - dx, at.y - dy, at.w + 2 * dx, at.h + 2 * dy)


# ---------------------------------------------------------------- marks together


def _apart(marks: Sequence[Mark]) -> list[Mark]:
    """Of marks that lie in one another the surest (a sun rather than its disc)."""
    kept: list[Mark] = []
    for mark in sorted(marks, key=lambda mark: (-mark.certainty, -mark.box.w)):
        area = mark.box.w * mark.box.h
        if all(_shared(mark.box, other.box) < 0.3 * min(area, other.box.w * other.box.h) for other in kept):
            kept.append(mark)
    return kept


def _in_rows(marks: Sequence[Mark]) -> Iterator[Mark]:
    """Plain dots and rings only beside a sun or a half-dark disc of their size."""
    suns = [mark for mark in marks if mark.kind in ("sun", "half_sun")]
    for mark in marks:
        if mark.kind in ("shade", "ring"):
            if any(_beside(mark.box, sun.box) for sun in suns):
                yield replace(mark, certainty=0.7)
        else:
            yield mark


def _beside(a: Box, b: Box) -> bool:
    level = abs((a.y + a.bottom) - (b.y + b.bottom)) < 0.5 * min(a.h, b.h)
    gap = max(a.x, b.x) - min(a.right, b.right)
    return level and 0 <= gap < 1.5 * max(a.w, b.w) and 0.4 < a.h / b.h < 1.6


def _shared(a: Box, b: Box) -> int:
    return max(0, min(a.right, b.right) - max(a.x, b.x)) * max(0, min(a.bottom, b.bottom) - max(a.y, b.y))
