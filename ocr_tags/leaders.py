"""Leader dots, the rows of points between a label and its value, taken out of a picture.

A reader takes them for letters, and then often loses the short value at their end.
"""

from __future__ import annotations

import cv2
import numpy as np

from ocr_tags.geometry import Indices, Pixels

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
    kind, margin = (cv2.THRESH_BINARY, -CONTRAST) if light else (cv2.THRESH_BINARY_INV, CONTRAST)
    marks = cv2.adaptiveThreshold(grey, 255, cv2.ADAPTIVE_THRESH_MEAN_C, kind, 31, margin)
    _, labels, stats, centres = cv2.connectedComponentsWithStats(marks, connectivity=8)
    dots = np.flatnonzero(_are_points(np.asarray(stats, np.intp)))
    if len(dots) < FEWEST_DOTS:
        return np.zeros_like(grey)
    chosen = np.zeros(len(stats), np.uint8)
    chosen[dots] = 255
    joined = cv2.morphologyEx(chosen[labels], cv2.MORPH_CLOSE, np.ones((1, WIDEST_GAP), np.uint8))
    _, rows, row_stats, _ = cv2.connectedComponentsWithStats(joined, connectivity=8)
    at = np.rint(centres[dots]).astype(int)
    row_of = rows[at[:, 1], at[:, 0]]
    members = np.bincount(row_of, minlength=len(row_stats))
    level = row_stats[:, cv2.CC_STAT_HEIGHT] <= 1.6 * LARGEST_DOT
    in_row = (members >= FEWEST_DOTS) & level & (np.arange(len(row_stats)) > 0)
    chosen[dots[~in_row[row_of]]] = 0
    return np.asarray(chosen[labels], np.uint8)


def _are_points(stats: Indices) -> Indices:
    """Whether patches (n x 5, as OpenCV counts them) are as small, round and full as a printed point."""
    wide, tall = stats[:, cv2.CC_STAT_WIDTH], stats[:, cv2.CC_STAT_HEIGHT]
    full = stats[:, cv2.CC_STAT_AREA] >= 0.55 * wide * tall
    small = (np.maximum(wide, tall) <= LARGEST_DOT) & (np.minimum(wide, tall) >= 2)
    keep = full & small & (wide <= 1.7 * tall) & (tall <= 1.7 * wide)
    keep[0] = False
    return np.asarray(keep)
