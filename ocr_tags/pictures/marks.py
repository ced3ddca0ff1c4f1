"""Marks without words on a tag: suns, drops, arrows, snowflakes, flowers, as words of one symbol each.

A printed mark is one flat colour on a flat ground, apart from what is around it; pictures of plants are
not. A sun's rays may stand apart from its disc, so ink is looked at as it is and joined over narrow gaps;
words then become long and drop out by themselves. What is left is told by shape (`mark_shapes`). A plain
dot or ring is a bullet or a letter, unless it stands in a row with a sun or a half-dark disc.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import cv2
import numpy as np

from ocr_tags.pictures.geometry import Floats, Indices, Pixels, labelled, outlined, through
from ocr_tags.pictures.mark_shapes import Kind, Small, kinds_of, small_patch
from ocr_tags.record import Box, Word

SYMBOLS: dict[str, str] = {
    "sun": "☀",
    "half_sun": "◐",
    "crescent": "☾",
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
SMALLEST, LARGEST = 24, 260
"""Longer side of a mark in pixels of the straightened picture."""
THINNEST = 8
LEAST: dict[Kind, int] = {"flower": 32, "snow": 32, "apart": 48}
"""Longer side at least: smaller flowers and snowflakes are asterisks, two smaller plants a pair of signs."""
CONTRAST = 40
FAINTEST = 60.0
"""Grey levels by which ink stands out from its ground at least: any of it, and the darkest of a mark."""
UNEVEN, UNEVEN_GROUND = 22.0, 12.0
"""Grey levels by which a printed mark and the ground right around it vary at most."""
SOFTEST, SOFT_SHARE = 3.2, 0.04
"""Width of the edges of print at most, in pixels or as a share of a mark's longer side: a shaky hand softens
large marks no less than small ones, and only small ones are lost in it."""
PALE = 15.0
"""Grey levels by which a filling of paler ink varies at most."""
JOINED = (0, 1, 3, 6)
"""Gaps over which ink is joined, in pixels of the half-size picture to either side."""
OF_GAP = 12
"""A mark joined over gaps is at least this many times as large as they are."""
SURE, SURE_FLOWER = 0.9, 0.96
"""A shape less like its kind than this is no mark; stars and badges are like flowers."""
MOST_SURE = 0.9
"""No shape is surer than this: a mark never outranks a word."""
OF_LIGHT: tuple[Kind, ...] = ("sun", "half_sun", "crescent", "shade", "ring")
SURE_IN_ROW = 0.55
"""The same for marks of light beside a sun that is sure; plain discs and rings need one beside them."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark: what it shows, where in the straightened picture, and how sure its shape is, 0 to 1."""

    kind: Kind
    box: Box
    certainty: float


@dataclass(frozen=True, slots=True)
class Patch:
    """Ink that may be a mark: how much it stands out, 0 to 255, and the same at the network's size."""

    box: Box
    ink: Pixels
    small: Small


def find_marks(picture: Pixels) -> list[Mark]:
    """The marks on a straightened tag (BGR, uint8, height x width x 3), from top to bottom."""
    found = [mark for contrast in contrasts(picture) for mark in _marks_in(picture, contrast)]
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


def unread(marks: Iterable[Mark], words: Sequence[Word]) -> list[Mark]:
    """The marks that are no part of a word: two figures and a dash between them may look like an arrow."""
    said = [word.place for word in words if sum(sign.isalnum() for sign in word.text) > 1]
    return [mark for mark in marks if not any(_is_part(mark.box, place) for place in said)]


def _is_part(at: Box, word: Box) -> bool:
    # A word far wider than the mark may hold it by mistake: readers box the line, mark and all.
    return word.w < 3 * at.w and at.shared(word) > 0.6 * at.w * at.h


def covers(mark: Box, place: Box) -> bool:
    """Whether a word read in this place is the mark that stands there, taken for letters."""
    return mark.shared(place) > 0.6 * place.w * place.h


# ---------------------------------------------------------------- ink


def _marks_in(picture: Pixels, contrast: Pixels) -> Iterator[Mark]:
    found = list(patches(contrast))
    for patch, (kind, chance) in zip(found, kinds_of([patch.small for patch in found]), strict=True):
        least = SURE_IN_ROW if kind in OF_LIGHT else SURE_FLOWER if kind == "flower" else SURE
        if kind is None or chance < least:
            continue
        if max(patch.box.w, patch.box.h) < LEAST.get(kind, 0):
            continue
        if not _is_printed(picture, contrast, patch, kind != "wide"):
            continue
        # As tall as wide it is a whole badge, and what stands beside that is the next badge.
        slim = patch.box.w > 1.3 * patch.box.h
        if kind == "wide" and slim and _has_neighbours(np.asarray(contrast > CONTRAST, np.uint8), patch.box):
            kind = "apart"
        yield Mark(kind, patch.box, chance)


def contrasts(picture: Pixels) -> Iterator[Pixels]:
    """How far each pixel stands out from the ground around: as dark ink, then as light ink."""
    blue, green, red = cv2.split(picture)
    yield _contrast(np.asarray(cv2.min(cv2.min(blue, green), red), np.uint8))
    yield _contrast(np.asarray(cv2.bitwise_not(cv2.max(cv2.max(blue, green), red)), np.uint8))


def _contrast(value: Pixels) -> Pixels:
    """How much darker each pixel is than the ground around."""
    height, width = value.shape
    small = cv2.resize(value, (max(width // 8, 1), max(height // 8, 1)), interpolation=cv2.INTER_AREA)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (21, 21))
    ground = cv2.GaussianBlur(cv2.morphologyEx(small, cv2.MORPH_CLOSE, kernel), (0, 0), 4)
    full = cv2.resize(ground, (width, height), interpolation=cv2.INTER_LINEAR)
    return np.asarray(cv2.subtract(full, value), np.uint8)


def patches(contrast: Pixels) -> Iterator[Patch]:
    """Ink of a mark's size, as it is and joined over gaps, each box once."""
    height, width = contrast.shape
    even = contrast[: height // 2 * 2, : width // 2 * 2]
    strongest = cv2.max(cv2.max(even[::2, ::2], even[1::2, ::2]), cv2.max(even[::2, 1::2], even[1::2, 1::2]))
    ink = np.asarray(strongest > CONTRAST, np.uint8)
    known: set[tuple[int, ...]] = set()
    for gap in JOINED:
        joined = cv2.dilate(ink, np.ones((2 * gap + 1, 2 * gap + 1), np.uint8)) if gap else ink
        fitting = [(at, start) for at, start in _boxes(np.asarray(joined, np.uint8), gap) if _fits(at, gap)]
        labels = labelled(np.asarray(joined, np.uint8)) if fitting else np.empty((0, 0), np.intp)
        for at, start in fitting:
            if at not in known:
                known.add(at)
                yield _patch(contrast, labels, int(labels[start]), Box(*at))


def _boxes(joined: Pixels, gap: int) -> Iterator[tuple[tuple[int, int, int, int], tuple[int, int]]]:
    """For each connected patch the box of its ink, as it was before the gaps were closed, and the row and
    column of a pixel of it."""
    for patch in outlined(joined):
        x, y, w, h = cv2.boundingRect(patch)
        column, row = patch[0, 0]
        yield (x + gap, y + gap, w - 2 * gap, h - 2 * gap), (row, column)


def _fits(at: tuple[int, int, int, int], gap: int) -> bool:
    """Whether a box in the half-size picture is of a mark's size and shape."""
    longer, shorter = max(at[2:]), min(at[2:])
    large = max(SMALLEST / 2, OF_GAP * gap) <= longer <= LARGEST / 2
    return large and shorter >= THINNEST / 2 and longer <= 7 * shorter


def _patch(contrast: Pixels, labels: Indices, label: int, half: Box) -> Patch:
    """The ink of one label (`half`: its box in the half-size picture), without what is of its neighbours."""
    own = np.asarray(labels[half.y : half.bottom, half.x : half.right] == label, np.uint8)
    box = Box(2 * half.x, 2 * half.y, 2 * half.w, 2 * half.h)
    mask = cv2.resize(own, (box.w, box.h), interpolation=cv2.INTER_NEAREST)
    ink = cv2.multiply(contrast[box.y : box.bottom, box.x : box.right], mask)
    strongest = int(ink.max())
    shown = cv2.convertScaleAbs(ink, alpha=255 / strongest)
    return Patch(box, np.asarray(shown, np.uint8), small_patch(np.asarray(shown, np.uint8)))


def _is_printed(picture: Pixels, contrast: Pixels, patch: Patch, alone: bool) -> bool:
    """Whether the patch has one colour and sharp edges, on a ground of one colour; if `alone`, with nothing
    right beside it, as there is beside a letter."""
    at, ink = patch.box, patch.ink
    room = max(4, max(at.w, at.h) // 8)
    top, left = max(at.y - room, 0), max(at.x - room, 0)
    part, near = (whole[top : at.bottom + room, left : at.right + room] for whole in (picture, contrast))
    colours = picture[at.y : at.bottom, at.x : at.right][ink > 200]
    inked = np.asarray(near > CONTRAST, np.uint8)
    ground = part[cv2.dilate(inked, np.ones((5, 5), np.uint8)) == 0]
    if len(ground) < 20 or len(colours) < 6 or float(near.max()) < FAINTEST:
        return False
    if alone:
        inked[at.y - top : at.bottom - top, at.x - left : at.right - left][ink > 0] = 0
        if float(inked.mean()) > 0.02:
            return False
    flat = colours.std(axis=0).max() < UNEVEN and ground.std(axis=0).max() < UNEVEN_GROUND
    return bool(flat and _edge(ink) < max(SOFTEST, SOFT_SHARE * max(at.w, at.h)))


def _edge(ink: Pixels) -> float:
    """How many pixels wide the edge of the ink is: little in print, much in what is out of focus. A drop may
    be filled with a paler ink, all of one tone: that is no edge."""
    inside = np.asarray(ink > 127, np.uint8)
    rim = int(inside.sum()) - int(cv2.erode(inside, np.ones((3, 3), np.uint8)).sum())
    between = np.asarray((ink > 50) & (ink < 205), np.uint8)
    heart = cv2.erode(between, np.ones((11, 11), np.uint8))
    if heart.any() and float(ink[heart > 0].std()) < PALE:
        between[cv2.dilate(heart, np.ones((13, 13), np.uint8)) > 0] = 0
    return float(np.count_nonzero(between) / max(rim, 1))


def _has_neighbours(ink: Pixels, at: Box) -> bool:
    """Whether something stands over or beside both ends of a level arrow, and nothing over its middle: two
    plants and the room between them."""
    third, half = at.w // 3, at.w // 2
    ink = _without_rim(ink, at)
    over = ink[max(at.y - half, 0) : max(at.y - 2, 0), at.x : at.right]
    if over[:, :third].any() and over[:, -third:].any() and not over[:, third:-third].any():
        return True
    around = ink[max(at.y - half, 0) : at.bottom + half]
    sides = (around[:, max(at.x - third, 0) : at.x], around[:, at.right : at.right + third])
    inked = [float(side.max(axis=1, initial=0).mean()) if side.size else 0.0 for side in sides]
    return all(0 < share < 0.9 for share in inked)


def _without_rim(ink: Pixels, at: Box) -> Pixels:
    """The ink without the rim of a badge that the arrow stands in: what is met straight above its middle."""
    middle, reach = at.x + at.w // 2, at.y - max(at.y - 2 * at.w, 0)
    above = np.flatnonzero(ink[at.y - reach : max(at.y - 2, 0), middle])
    if not above.size:
        return ink
    left = ink.copy()
    cv2.floodFill(left, None, (middle, int(at.y - reach + above[-1])), 0)
    return left


# ---------------------------------------------------------------- marks together


def _apart(marks: Sequence[Mark]) -> list[Mark]:
    """Of marks that lie in one another a sure one, plants apart rather than the arrow between them, and the
    largest (a sun rather than its disc)."""
    kept: list[Mark] = []
    ranks = {id(mark): (not _is_sure(mark), mark.kind != "apart", -mark.box.w * mark.box.h) for mark in marks}
    for mark in sorted(marks, key=lambda mark: ranks[id(mark)]):
        area = mark.box.w * mark.box.h
        if all(mark.box.shared(other.box) < 0.3 * min(area, other.box.w * other.box.h) for other in kept):
            kept.append(mark)
    return kept


def _is_sure(mark: Mark) -> bool:
    return mark.certainty >= SURE and mark.kind not in ("shade", "ring")


def _in_rows(marks: Sequence[Mark]) -> Iterator[Mark]:
    """What is sure by itself, and less sure marks of light beside a sun or half-dark disc of their size."""
    suns = [mark for mark in marks if _is_sure(mark) and mark.kind in OF_LIGHT]
    for mark in marks:
        if _is_sure(mark) or any(_beside(mark.box, sun.box) for sun in suns):
            yield replace(mark, certainty=min(mark.certainty, MOST_SURE if _is_sure(mark) else 0.7))


def _beside(a: Box, b: Box) -> bool:
    level = abs((a.y + a.bottom) - (b.y + b.bottom)) < 0.5 * min(a.h, b.h)
    gap = max(a.x, b.x) - min(a.right, b.right)
    return level and 0 <= gap < 1.5 * max(a.w, b.w) and 0.4 < a.h / b.h < 1.6
