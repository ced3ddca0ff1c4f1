"""Where light has blown out the print of a tag: the lamp or the sky mirrored in plastic or varnish.

Such a patch is white, without any grain, and fades softly into paper that is darker; white paper in good
light is as white, but everywhere, and a white field or petal ends at once.

It is only told, and changes no word's confidence: measured on 40 photos with such patches, words cut by them
already get low scores from the readers, and lowering these further lost right values and no wrong one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.pictures.geometry import Pixels, components, reduced
from ocr_tags.record import Box, Word

LOOK_SIDE = 500
"""Long side of the copy on which patches are sought."""
BLOWN = 250
"""The darkest of the three colours of a pixel that holds nothing but light."""
LEAST, MOST = 0.0015, 0.25
"""Share of the picture that a patch takes; a larger one is white paper."""
PAPER = 238
"""The darkest of three colours of paper around a patch, at most."""
SOFT = 0.75
"""Share of a patch's edge that must fade and not end."""
TOUCHED = 0.1
"""Share of a word's place that must be hidden for it to stand beside a patch."""
REACH = 0.016
"""How far beyond its white core a patch spoils print, as a share of the picture's long side."""


@dataclass(frozen=True, slots=True)
class Glare:
    """Blown-out patches of a picture: a mask (0 or 1) on a copy `scale` times as large."""

    mask: NDArray[np.uint8]
    scale: float

    def beside(self, words: Iterable[Word]) -> list[Word]:
        """The words that a patch cuts or touches; words in its midst are not read at all."""
        return [word for word in words if self._over(word.place) > TOUCHED]

    def _over(self, place: Box) -> float:
        """How much of a word, with half a letter's height before and behind it, is hidden, 0 to 1."""
        room = place.h // 2
        x0, x1 = (int(edge * self.scale) for edge in (place.x - room, place.right + room))
        y0, y1 = (int(edge * self.scale) for edge in (place.y, place.bottom))
        seen = self.mask[max(y0, 0) : max(y1, y0 + 1), max(x0, 0) : max(x1, x0 + 1)]
        return float(seen.mean()) if seen.size else 0.0


def find_glare(pixels: Pixels) -> Glare | None:
    """The blown-out patches of a straightened picture (BGR), or None where there is none."""
    small, _ = reduced(pixels, LOOK_SIDE / max(pixels.shape[:2]))
    darkest = np.asarray(small.min(axis=2), np.uint8)
    mask = np.zeros_like(darkest)
    for patch in _patches(darkest):
        mask |= patch
    if not mask.any():
        return None
    size = 2 * round(REACH * LOOK_SIDE) + 1
    spread = cv2.dilate(mask, cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (size, size)))
    return Glare(np.asarray(spread, np.uint8), small.shape[1] / pixels.shape[1])


def _patches(darkest: NDArray[np.uint8]) -> Iterator[NDArray[np.uint8]]:
    white = cv2.morphologyEx((darkest >= BLOWN).astype(np.uint8), cv2.MORPH_OPEN, np.ones((3, 3), np.uint8))
    labels, stats, _ = components(np.asarray(white, np.uint8), 4)
    height, width = labels.shape
    for number in range(1, len(stats)):
        x, y, w, h, area = (int(value) for value in stats[number])
        inside = x > 0 and y > 0 and x + w < width and y + h < height  # else it is what the tag lies on
        if inside and LEAST <= area / labels.size <= MOST:
            patch = np.asarray(labels == number, np.uint8)
            if _fades(darkest, patch, area):
                yield patch


def _fades(darkest: NDArray[np.uint8], patch: NDArray[np.uint8], area: int) -> bool:
    """Light all around the edge, and darker paper farther out."""
    near = _ring(patch, 2, 1)
    if not near.any() or float(np.mean(darkest[near] >= 200)) < SOFT:
        return False
    out = round(0.6 * (area / np.pi) ** 0.5) + 4
    far = _ring(patch, out + 3, out)
    return bool(far.any()) and float(np.percentile(darkest[far], 60)) <= PAPER


def _ring(patch: NDArray[np.uint8], outer: int, inner: int) -> NDArray[np.bool_]:
    def grown(by: int) -> NDArray[np.bool_]:
        kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * by + 1, 2 * by + 1))
        return np.asarray(cv2.dilate(patch, kernel), np.bool_)

    return np.asarray(grown(outer) & ~grown(inner))
