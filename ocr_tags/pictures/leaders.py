"""Leader dots, the rows of points between a label and its value, taken out of a picture.

A reader takes them for letters, and then often loses the short value at their end.
"""

from __future__ import annotations

import cv2
import numpy as np

from ocr_tags.pictures.geometry import Floats, Indices, Pixels, components, reduced
from ocr_tags.pictures.glyphs import joined, near_pairs

LOOK_SIDE = 1000
"""Long side of the copy on which points are sought, half that of a straightened picture."""
LARGEST_DOT = 7
"""Width and height of a point, in pixels of that copy."""
FEWEST_DOTS = 4
WIDEST_GAP = 12
UNEVEN = 1.5
"""In pixels of that copy: how much a step between points may differ from the next. Printed points stand
evenly; bits of small letters, a speckled ground and the dots over letters do not."""
CONTRAST = 15


def without_leaders(pixels: Pixels) -> Pixels:
    """The picture (height x width x 3, uint8) with rows of points painted over with what is around them."""
    small, _ = reduced(pixels, LOOK_SIDE / max(pixels.shape[:2]))
    grey = np.asarray(cv2.cvtColor(small, cv2.COLOR_BGR2GRAY), np.uint8)
    mask = _rows_of_dots(grey, False) | _rows_of_dots(grey, True)
    if not mask.any():
        return pixels
    whole = cv2.resize(mask, pixels.shape[1::-1], interpolation=cv2.INTER_NEAREST)
    wide = cv2.dilate(whole, np.ones((5, 5), np.uint8))
    return np.asarray(cv2.inpaint(pixels, wide, 3, cv2.INPAINT_TELEA), np.uint8)


def _rows_of_dots(grey: Pixels, light: bool) -> Pixels:
    """255 on points that stand at least `FEWEST_DOTS` in a row, else 0."""
    kind, margin = (cv2.THRESH_BINARY, -CONTRAST) if light else (cv2.THRESH_BINARY_INV, CONTRAST)
    marks = cv2.adaptiveThreshold(grey, 255, cv2.ADAPTIVE_THRESH_MEAN_C, kind, 15, margin)
    labels, stats, centres = components(np.asarray(marks, np.uint8))
    dots = np.flatnonzero(_are_points(np.asarray(stats, np.intp)))
    if len(dots) < FEWEST_DOTS:
        return np.zeros_like(grey)
    in_row = _in_rows(np.asarray(centres[dots]), np.asarray(stats[dots], np.intp))
    if not in_row.any():
        return np.zeros_like(grey)
    chosen = np.zeros(len(stats), np.uint8)
    chosen[dots[in_row]] = 255
    return np.asarray(chosen[labels], np.uint8)


def _in_rows(centres: Floats, stats: Indices) -> Indices:
    """Which points (n x 2) stand in a level row of enough of them."""
    width, height = stats[:, cv2.CC_STAT_WIDTH], stats[:, cv2.CC_STAT_HEIGHT]
    first, second = near_pairs(centres[:, 1], height / 2)
    gap = np.abs(centres[first, 0] - centres[second, 0]) - (width[first] + width[second]) / 2
    near = gap < WIDEST_GAP
    row = joined(len(centres), np.column_stack([first[near], second[near]]))
    even = np.zeros(len(centres), bool)
    for number in np.flatnonzero(np.bincount(row) >= FEWEST_DOTS):
        members = np.flatnonzero(row == number)
        even[members] = _evenly_set(centres[members, 0], np.maximum(width, height)[members])
    top, foot = np.full(len(centres), np.inf), np.full(len(centres), -np.inf)
    np.minimum.at(top, row, stats[:, cv2.CC_STAT_TOP])
    np.maximum.at(foot, row, stats[:, cv2.CC_STAT_TOP] + height)
    return np.asarray(even & (foot - top <= 1.6 * LARGEST_DOT)[row])


def _evenly_set(across: Floats, sizes: Indices) -> Indices:
    """Which points of one row belong to a run of enough points of one size at even steps."""
    order = np.argsort(across)
    steps, sizes = np.diff(across[order]), sizes[order]
    alike = np.abs(np.diff(sizes)) <= 1
    goes_on = alike[:-1] & alike[1:] & (np.abs(np.diff(steps)) <= UNEVEN)
    kept = np.zeros(len(across), bool)
    start = 0
    for end in range(len(goes_on) + 1):
        if end == len(goes_on) or not goes_on[end]:
            if end - start + 2 >= FEWEST_DOTS:
                kept[order[start : end + 2]] = True
            start = end + 1
    return kept


def _are_points(stats: Indices) -> Indices:
    """Whether patches (n x 5, as OpenCV counts them) are as small, round and full as a printed point."""
    wide, tall = stats[:, cv2.CC_STAT_WIDTH], stats[:, cv2.CC_STAT_HEIGHT]
    full = stats[:, cv2.CC_STAT_AREA] >= 0.55 * wide * tall
    small = (np.maximum(wide, tall) <= LARGEST_DOT) & (np.minimum(wide, tall) >= 1)
    keep = full & small & (wide <= 1.7 * tall) & (tall <= 1.7 * wide)
    keep[0] = False
    return np.asarray(keep)
