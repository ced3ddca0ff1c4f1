"""Two photos of one print, laid over each other by the words that both show.

A side photographed twice shows the same words in the same places; two sides, or two tags, do not, even
where they share a name. Words are matched by their letters, and a way from one photo to the other is
sought that puts as many as possible in their place.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

import cv2
import numpy as np
from numpy.typing import NDArray
from rapidfuzz import fuzz

from ocr_tags.pictures.geometry import Floats, through
from ocr_tags.record import Box, Photo, Word

FEWEST = 3
"""Words in place below which nothing is known."""
ENOUGH = 8
"""Words in place from which a photo's perspective can be told and not only its turn and size."""
ASTRAY = 1.0
"""In heights of a word: how far from its place a word may lie; a bent tag moves them."""
ALIKE = 60.0
"""Likeness of letters, 0 to 100, of one word read twice, in whatever light."""
MISREAD = 80.0
"""The same of words that are looked for anywhere on the other photo."""
CLEAR = 0.7
"""A reader's score from which a word is compared at all."""
SURE = 0.85
"""A reader's score from which a word that differs is another word and no misreading."""


@dataclass(frozen=True, slots=True)
class Overlay:
    """How a second photo lies over a first.

    `way` takes pixels of the second to the first. `alike`: how many words stand in one place and say the
    same. `unlike`: words, as read in the first and second, that stand in one place, were surely read and
    differ. `share` and `whole`, 0 to 1: how many of the words that lie within both photos are alike, of the
    photo on which fewer were read, and of the other.
    """

    way: Floats
    alike: int
    unlike: tuple[tuple[str, str], ...]
    share: float
    whole: float

    def carried(self, box: Box) -> Box:
        """A box of the second photo where it would lie in the first."""
        return _carried(self.way, box)


class Shot(Protocol):
    """A photo and the words read on it."""

    @property
    def photo(self) -> Photo: ...
    @property
    def words(self) -> tuple[Word, ...]: ...


def lay_over(one: Shot, two: Shot) -> Overlay | None:
    """The second photo's words over the first's; None where too few are in their place."""
    first, second = ([word for word in shot.words if _is_clear(word)] for shot in (one, two))
    way = _way(first, second)
    if way is None:
        return None
    alike, unlike = 0, []
    for word in second:
        place = _carried(way, word.box)
        over = [other for other in first if _covered(place, other.box, min) > 0.3]
        if any(_same_word(other, word) and _same_size(place, other, word) for other in over):
            alike += 1
            continue
        instead = (other for other in over if _covered(place, other.box, max) > 0.5)
        unlike += [(o.text, word.text) for o in instead if min(o.confidence, word.confidence) >= SURE]
    back = np.asarray(np.linalg.inv(way), np.float64)
    fewer, more = sorted((_within(second, way, one.photo), _within(first, back, two.photo)))
    if alike < FEWEST:
        return None
    return Overlay(way, alike, tuple(unlike), min(alike / max(fewer, 1), 1.0), alike / max(more, alike))


def _is_clear(word: Word) -> bool:
    """What a leaf or a stain was taken for is on one photo only, and read with little confidence."""
    return len(_letters(word.text)) > 1 and word.confidence >= CLEAR and min(word.box.w, word.box.h) > 2


def _way(first: Sequence[Word], second: Sequence[Word]) -> Floats | None:
    """From the second photo to the first, by the words that stand once in each."""
    pairs = list(_pairs(first, second))
    if len(pairs) < FEWEST:
        return None
    to, start = (np.array([_middle(pair[n]) for pair in pairs]) for n in (0, 1))
    reach = ASTRAY * float(np.median([min(here.box.w, here.box.h) for here, _ in pairs]))
    if len(pairs) >= ENOUGH:
        found, kept = cv2.findHomography(start, to, cv2.RANSAC, reach)
        return _usable(found, kept)
    flat, kept = cv2.estimateAffinePartial2D(start, to, method=cv2.RANSAC, ransacReprojThreshold=2 * reach)
    if flat is None or int(kept.sum()) < FEWEST:
        return None
    if kept.sum() > FEWEST:  # enough to lean and stretch as well
        inside = kept.ravel() > 0
        level = np.column_stack([start[inside], np.ones(int(inside.sum()))])
        flat = np.linalg.lstsq(level, to[inside], rcond=None)[0].T
    return _usable(np.vstack([flat, (0.0, 0.0, 1.0)]), kept)


def _usable(found: NDArray[Any] | None, kept: NDArray[Any]) -> Floats | None:
    if found is None or int(kept.sum()) < FEWEST or abs(np.linalg.det(found)) < 1e-6:
        return None
    return np.asarray(found, np.float64)


def _pairs(first: Sequence[Word], second: Sequence[Word]) -> Iterator[tuple[Word, Word]]:
    """Words that are alike, once on each photo: by all their letters, then by most."""
    here, there = (dict(_once(words)) for words in (first, second))
    for text in [text for text in here if text in there]:
        yield here.pop(text), there.pop(text)
    for text, word in here.items():
        like = max(there, key=lambda other: fuzz.ratio(text, other), default="")
        if fuzz.ratio(text, like) >= MISREAD:
            yield word, there.pop(like)


def _once(words: Sequence[Word]) -> Iterator[tuple[str, Word]]:
    count = Counter(_letters(word.text) for word in words)
    return ((text, word) for word in words if count[text := _letters(word.text)] == 1)


def _same_word(a: Word, b: Word) -> bool:
    """One print read twice, perhaps parted or run together differently; figures must be the same."""
    here, there = _letters(a.text), _letters(b.text)
    if here in there or there in here:
        return True
    if re.sub(r"\D", "", here) != re.sub(r"\D", "", there):
        return False
    return fuzz.ratio(here, there) >= ALIKE


def _same_size(place: Box, here: Word, there: Word) -> bool:
    """The name is large on the front and small on the back; of a word run together a part is covered."""
    lengths = sorted((len(_letters(here.text)), len(_letters(there.text))))
    return _covered(place, here.box, max) * lengths[1] / lengths[0] > 0.25


def _within(words: Sequence[Word], way: Floats, photo: Photo) -> int:
    """How many words the other photo would show: its frame may hold only part of a long tag."""
    middles = through(way, np.array([_middle(word) for word in words]))
    return sum(0 <= x <= photo.width and 0 <= y <= photo.height for x, y in middles)


def _carried(way: Floats, box: Box) -> Box:
    corners = np.array(
        [(box.x, box.y), (box.right, box.y), (box.right, box.bottom), (box.x, box.bottom)], np.float64
    )
    moved = through(way, corners)
    left, top = np.floor(moved.min(axis=0)).astype(int)
    right, bottom = np.ceil(moved.max(axis=0)).astype(int)
    return Box(int(left), int(top), max(int(right - left), 1), max(int(bottom - top), 1))


def _middle(word: Word) -> tuple[float, float]:
    return word.box.x + word.box.w / 2, word.box.y + word.box.h / 2


def _covered(a: Box, b: Box, which: Callable[[int, int], int]) -> float:
    """What two boxes share of the smaller (`min`) or larger (`max`) of them, 0 to 1."""
    wide = min(a.right, b.right) - max(a.x, b.x)
    high = min(a.bottom, b.bottom) - max(a.y, b.y)
    return max(0, wide) * max(0, high) / which(a.w * a.h, b.w * b.h)


def _letters(text: str) -> str:
    return "".join(each for each in text.casefold() if each.isalnum())
