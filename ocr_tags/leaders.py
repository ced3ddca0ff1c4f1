"""Leader dots, the rows of points between a label and its value, taken out of a picture.

A reader takes them for letters, and then often loses the short value at their end.
"""

from __future__ import annotations

import cv2
import numpy as np

from ocr_tags.geometry import Pixels

LARGEST_DOT = 14
"""Width and height of a point, in pixels of a straightened picture."""
FEWEST_DOTS = 4
WIDEST_GAP = 25
CONTRAST = 15


def without_leaders(pixels: Pixels) -> Pixels:
    """The picture (height x width x 3, uint8) with rows of points painted over with what is around them."""
    grey = np.asarray(cv2.cvtColor(pixels, cv2.COLOR_BGR2GRAY), np.uint8)
    mask = _rows_of_dots(grey, False) | _rows_of_dots(grey, True)
    if not mask.any():
        return pixels
    wide = cv2.dilate(mask, np.ones((5, 5), np.uint8))
    return np.asarray(cv2.inpaint(pixels, wide, 3, cv2.INPAINT_TELEA), np.uint8)


def _rows_of_dots(grey: Pixels, light: bool) -> Pixels:
    """255 on points that stand at least `FEWEST_DOTS` in a row, else 0."""
    dots = _dots(grey, light)
    joined = cv2.morphologyEx(dots, cv2.MORPH_CLOSE, np.ones((1, WIDEST_GAP), np.uint8))
    _, rows, stats, _ = cv2.connectedComponentsWithStats(joined, connectivity=8)
    count, labels, _, centres = cv2.connectedComponentsWithStats(dots, connectivity=8)
    chosen = np.zeros(count, bool)
    if count > FEWEST_DOTS:
        at = np.rint(centres[1:]).astype(int)
        row_of = rows[at[:, 1], at[:, 0]]
        members = np.bincount(row_of, minlength=len(stats))
        level = stats[:, cv2.CC_STAT_HEIGHT] <= 1.6 * LARGEST_DOT
        chosen[1:] = ((members >= FEWEST_DOTS) & level & (np.arange(len(stats)) > 0))[row_of]
    return np.asarray(chosen[labels], np.uint8) * np.uint8(255)


def _dots(grey: Pixels, light: bool) -> Pixels:
    """255 on patches as small, round and full as a printed point, else 0."""
    kind, margin = (cv2.THRESH_BINARY, -CONTRAST) if light else (cv2.THRESH_BINARY_INV, CONTRAST)
    marks = cv2.adaptiveThreshold(grey, 255, cv2.ADAPTIVE_THRESH_MEAN_C, kind, 31, margin)
    _, labels, stats, _ = cv2.connectedComponentsWithStats(marks, connectivity=8)
    wide, tall = stats[:, cv2.CC_STAT_WIDTH], stats[:, cv2.CC_STAT_HEIGHT]
    full = stats[:, cv2.CC_STAT_AREA] >= 0.55 * wide * tall
    small = (np.maximum(wide, tall) <= LARGEST_DOT) & (np.minimum(wide, tall) >= 2)
    keep = full & small & (wide <= 1.7 * tall) & (tall <= 1.7 * wide)
    keep[0] = False
    return np.asarray(keep[labels], np.uint8) * np.uint8(255)
