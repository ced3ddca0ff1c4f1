"""Pictures and the ways between them: 3 x 3 matrices that take the pixels of one picture to those of another.

Coordinates are those of OpenCV's warps: whole numbers are pixel centres, so a picture half as large has its
first pixel at 0.5 of the larger one.
"""

from __future__ import annotations

from typing import TypeAlias

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.record import Box

Pixels: TypeAlias = NDArray[np.uint8]
Floats: TypeAlias = NDArray[np.float64]
Indices: TypeAlias = NDArray[np.intp]


def through(way: Floats, points: Floats) -> Floats:
    """Points (n x 2) carried along a 3 x 3 matrix."""
    moved = np.column_stack([points, np.ones(len(points))]) @ way.T
    return np.asarray(moved[:, :2] / moved[:, 2:])


def box_around(points: Floats) -> Box:
    """The level box, in whole pixels, that holds all points (n x 2)."""
    left, top = np.floor(points.min(axis=0)).astype(int)
    right, bottom = np.ceil(points.max(axis=0)).astype(int)
    return Box(int(left), int(top), max(int(right - left), 1), max(int(bottom - top), 1))


def reduced(pixels: Pixels, scale: float) -> tuple[Pixels, Floats]:
    """A copy `scale` times as large (never enlarged), and the way from its pixels back."""
    height, width = pixels.shape[:2]
    size = max(2, round(width * min(scale, 1.0))), max(2, round(height * min(scale, 1.0)))
    times = min(width // size[0], height // size[1])
    if times > 1:  # by area as far as a whole number goes: a broken one costs five times as much
        half = width // times, height // times
        width, height = half[0] * times, half[1] * times
        pixels = np.asarray(cv2.resize(pixels[:height, :width], half, interpolation=cv2.INTER_AREA), np.uint8)
    copy = np.asarray(cv2.resize(pixels, size, interpolation=cv2.INTER_LINEAR), np.uint8)
    x, y = width / size[0], height / size[1]
    return copy, np.array([[x, 0, x / 2 - 0.5], [0, y, y / 2 - 0.5], [0, 0, 1]], np.float64)


LEAST_ENLARGED = 0.9
"""Pixels of the source for one of the copy, from which on the copy counts as no larger."""


def warped(pixels: Pixels, way: Floats, size: tuple[int, int]) -> Pixels:
    """A picture of `size` (width, height) drawn from `pixels`; `way` takes its pixels to theirs.

    Where `pixels` is much finer it is reduced by area first, or small print breaks up.
    """
    corners = np.array([(0, 0), (size[0], 0), (0, size[1])], np.float64)
    origin, right, down = through(way, corners)
    finer = min(np.linalg.norm(right - origin) / size[0], np.linalg.norm(down - origin) / size[1])
    if finer > 1.3:
        pixels, back = reduced(pixels, 1.0 / float(finer))
        way = np.linalg.inv(back) @ way
    # What is not enlarged has nothing between its pixels that curves could show.
    drawing = cv2.INTER_LINEAR if finer > LEAST_ENLARGED else cv2.INTER_CUBIC
    flags = drawing | cv2.WARP_INVERSE_MAP
    drawn = cv2.warpPerspective(pixels, way, size, flags=flags, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(drawn, np.uint8)


def components(mask: Pixels, connectivity: int = 8) -> tuple[Indices, Indices, Floats]:
    """Connected patches of a mask: the label of each pixel, OpenCV's figures (n x 5) and middles (n x 2) of
    each label, 0 being what lies outside."""
    kind = _label_type(mask)
    _, labels, stats, centres = cv2.connectedComponentsWithStats(mask, connectivity=connectivity, ltype=kind)
    return np.asarray(labels), np.asarray(stats), np.asarray(centres, np.float64)


def labelled(mask: Pixels) -> Indices:
    """The label of each pixel alone: a quarter of the price."""
    return np.asarray(cv2.connectedComponents(mask, connectivity=8, ltype=_label_type(mask))[1])


def _label_type(mask: Pixels) -> int:
    """OpenCV counts twice as fast in 16 bits. They hold the labels where fewer patches can begin: no more
    than there are places where a row steps into the mask."""
    steps = cv2.countNonZero(cv2.subtract(mask[:, 1:], mask[:, :-1])) + cv2.countNonZero(mask[:, :1])
    return cv2.CV_16U if steps < MOST_SHORT else cv2.CV_32S


MOST_SHORT = 65_000
"""Labels that 16 bits hold, with some to spare."""


def outlined(mask: Pixels) -> list[NDArray[np.int32]]:
    """The outer outlines (n x 1 x 2) of the connected patches of a mask, those inside a hole of another too.

    They tell boxes at a third of the price of `components`.
    """
    contours, tree = cv2.findContours(mask, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_SIMPLE)
    return [
        np.asarray(contour)
        for contour, node in zip(contours, tree[0] if contours else (), strict=True)
        if node[3] < 0
    ]


NEXT, BEFORE = [1, 2, 3, 0], [3, 0, 1, 2]
"""For each corner of a quad the one that follows, and the one before: numpy.roll at a tenth of its price."""


def following(points: Floats) -> Floats:
    """For each point of a ring (n x 2) the next."""
    return np.concatenate([points[1:], points[:1]])


def around_centre(size: tuple[int, int], degrees: float) -> tuple[Floats, tuple[int, int]]:
    """The way into a picture of `size` (width, height) from its copy turned anticlockwise by `degrees`,
    and the size of that copy, large enough to hold all of it."""
    width, height = size
    turn = np.vstack([cv2.getRotationMatrix2D((width / 2, height / 2), degrees, 1.0), (0, 0, 1)])
    corners = through(turn, np.array([(0, 0), (width, 0), (width, height), (0, height)], np.float64))
    low, high = corners.min(axis=0), corners.max(axis=0)
    turn[:2, 2] -= low
    return np.asarray(np.linalg.inv(turn)), (round(high[0] - low[0]), round(high[1] - low[1]))


def quantile(values: Floats, share: float) -> float:
    """The value below which `share` of a few values lie: numpy.quantile, at a twentieth of its price."""
    ordered = np.sort(values)
    at = share * (len(ordered) - 1)
    low = int(at)
    high = min(low + 1, len(ordered) - 1)
    return float(ordered[low] + (at - low) * (ordered[high] - ordered[low]))


def inside_share(quad: Floats, points: Floats) -> float:
    """Share of the points that lie inside a clockwise quad."""
    edges = following(quad) - quad
    away = points[:, None, :] - quad[None]
    turn = edges[None, :, 0] * away[..., 1] - edges[None, :, 1] * away[..., 0]
    return float((turn >= 0).all(axis=1).mean())
