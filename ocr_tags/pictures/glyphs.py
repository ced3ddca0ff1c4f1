"""Letter-like blobs: the raw material for finding text lines, their direction, and where a tag's text lies.

A blob is a connected patch darker (or lighter) than its surroundings and about as large as a letter. Large
letters are found on reduced copies, so one window size serves letters from 6 to 240 pixels high.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

import cv2
import numpy as np

from ocr_tags.pictures.geometry import Floats, Indices, Pixels, components

WINDOW = 31
SMALLEST, LARGEST = 6, 30
"""Letter heights looked for on each copy, in its pixels; the next copy is half as large."""
MOST = 2500
"""Blobs kept on each copy, the largest first: gravel and leaves give any number of small ones."""
WIDEST_GAP = 2.0
"""In letter heights: two runs further apart are two columns."""


@dataclass(frozen=True, slots=True)
class Layer:
    """The dark blobs of one channel, or the light ones: `boxes` has rows of left, top, width, height in
    pixels, `contrast` says by how many grey levels the surroundings of each blob vary."""

    channel: str
    boxes: Floats
    contrast: Floats


def layers(pixels: Pixels, colour: bool = True, floor: float = 7.0) -> Iterator[Layer]:
    """Blobs of the lightness, dark then light, and of the two colour differences (for text as light as its
    background; half the pixels serve, since JPEG keeps no more colour than that)."""
    lab = cv2.cvtColor(pixels, cv2.COLOR_BGR2LAB)
    wanted = {"lightness": (0, 1.0, floor)}
    if colour:
        wanted |= {"green-red": (1, 0.5, 8.0), "blue-yellow": (2, 0.5, 8.0)}
    for name, (index, scale, least) in wanted.items():
        channel = cv2.extractChannel(lab, index)
        if scale != 1:
            channel = cv2.resize(channel, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA)
        found = _over_sizes(np.asarray(channel, np.uint8), scale, least)
        for light in (False, True):
            blobs = _single(np.concatenate(found[light]))
            yield Layer(name, blobs[:, :4], blobs[:, 4])


def _over_sizes(channel: Pixels, scale: float, floor: float) -> dict[bool, list[Floats]]:
    found: dict[bool, list[Floats]] = {False: [], True: []}
    while min(channel.shape) >= WINDOW:
        off, spread = _local(channel)
        margin = np.maximum(spread * np.float32(0.35), np.float32(floor))
        for light, mask in ((False, off < -margin), (True, off > margin)):
            boxes = _boxes(mask.view(np.uint8))
            x, y = (boxes[:, :2] + boxes[:, 2:] / 2).astype(int).T
            found[light].append(np.column_stack([boxes / scale, spread[y, x]]))
        if min(channel.shape) < 4 * WINDOW:
            break
        channel = np.asarray(cv2.pyrDown(channel), np.uint8)
        scale /= 2
    for lists in found.values():
        lists.append(np.empty((0, 5)))
    return found


def _local(channel: Pixels) -> tuple[Floats, Floats]:
    """How far each pixel is above the mean around it, and how much its surroundings vary."""
    mean = cv2.boxFilter(channel, cv2.CV_32F, (WINDOW, WINDOW))
    square = cv2.sqrBoxFilter(channel, cv2.CV_32F, (WINDOW, WINDOW))
    spread = np.sqrt(np.maximum(cv2.subtract(square, cv2.multiply(mean, mean)), np.float32(0)))
    return np.asarray(cv2.subtract(channel, mean, dtype=cv2.CV_32F)), spread


def _boxes(mask: Pixels) -> Floats:
    """Boxes of the patches shaped like a letter, or like a few joined letters."""
    _, stats, _ = components(mask)
    stats = stats[1:]
    w, h, area = (stats[:, k].astype(np.float64) for k in (2, 3, 4))
    tall, fill, wide = np.maximum(w, h), area / (w * h), w / h
    kept = (tall >= SMALLEST) & (np.minimum(w, h) <= LARGEST) & (tall <= LARGEST * 12) & (area >= 8)
    kept &= (fill > 0.1) & ~((fill > 0.8) & ((wide > 2.2) | (wide < 0.12)))
    kept &= (wide < 12) & (wide > 1 / 12)
    boxes = stats[kept, :4].astype(np.float64)
    if len(boxes) > MOST:
        boxes = boxes[np.argsort(-np.minimum(boxes[:, 2], boxes[:, 3]), kind="stable")[:MOST]]
    return np.asarray(boxes)


def _single(boxes: Floats) -> Floats:
    """Without the second sight of a blob that two neighbouring sizes both show."""
    first, second = near_pairs(boxes[:, 1] + boxes[:, 3] / 2, boxes[:, 3] * 0.3)
    a, b = boxes[first], boxes[second]
    shared = _overlap(a[:, 0], a[:, 2], b[:, 0], b[:, 2]) * _overlap(a[:, 1], a[:, 3], b[:, 1], b[:, 3])
    area_a, area_b = a[:, 2] * a[:, 3], b[:, 2] * b[:, 3]
    same = shared > 0.6 * np.maximum(area_a, area_b)
    worse = np.where(area_a < area_b, first, second)[same]
    return np.delete(boxes, np.unique(worse), axis=0)


def _overlap(start_a: Floats, length_a: Floats, start_b: Floats, length_b: Floats) -> Floats:
    shared = np.minimum(start_a + length_a, start_b + length_b) - np.maximum(start_a, start_b)
    return np.asarray(np.maximum(shared, 0))


def near_pairs(position: Floats, reach: Floats) -> tuple[Indices, Indices]:
    """All pairs (i, j), i before j along `position`, no further apart than i's own reach."""
    order = np.argsort(position, kind="stable")
    line = position[order]
    ends = np.searchsorted(line, line + reach[order], side="right")
    counts = np.maximum(ends - np.arange(len(line)) - 1, 0)
    first = np.repeat(np.arange(len(line)), counts)
    starts = np.cumsum(counts) - counts
    second = first + 1 + np.arange(len(first)) - np.repeat(starts, counts)
    return order[first], order[second]


@dataclass(frozen=True, slots=True)
class Direction:
    """Which way the text runs: `angle` in degrees, 0 level, growing clockwise, -90 to 90; `share` of all
    rows of three that agree; `centres` (n x 2) of the blobs that stand in a longer row running that way, and
    their `sizes` (n), both in pixels."""

    angle: float
    share: float
    centres: Floats
    sizes: Floats


NO_DIRECTION = Direction(0.0, 0.0, np.empty((0, 2)), np.empty(0))
SHORTEST_ROW = 5
"""Blobs in a row before it counts as print: gravel makes rows of three and four by chance."""
CROWD = 9


def text_direction(layers: Iterable[Layer]) -> Direction:
    """The direction in which most blobs stand in rows, whatever way the picture is turned."""
    rows = [_rows_of_three(layer.boxes) for layer in layers]
    angles = np.concatenate([row[3] for row in rows]) if rows else np.empty(0)
    if len(angles) < SHORTEST_ROW:
        return NO_DIRECTION
    votes = np.bincount((angles // 2).astype(int) % 90, minlength=90).astype(np.float64)
    peak = float(np.argmax(sum(np.roll(votes, k) for k in range(-3, 4))) * 2 + 1)
    runs = [_long_rows(*row, peak) for row in rows]
    off = np.concatenate([off for _, _, off in runs])
    if not len(off):
        return NO_DIRECTION
    best = peak + float(np.median(off))
    centres, sizes = np.concatenate([c for c, _, _ in runs]), np.concatenate([s for _, s, _ in runs])
    kept = _crowded(centres, sizes)
    share = float((np.abs(_turned_off(angles, best)) < 10).mean())
    return Direction((best + 90) % 180 - 90, share, centres[kept], sizes[kept])


def _turned_off(angles: Floats, angle: float) -> Floats:
    return np.asarray((angles - angle + 90) % 180 - 90)


def _long_rows(
    centres: Floats, sizes: Floats, triples: Indices, angles: Floats, peak: float
) -> tuple[Floats, Floats, Floats]:
    """Centres and sizes of the blobs in rows in long rows along `peak`, and the rows' angles off it."""
    off = _turned_off(angles, peak)
    agree = np.abs(off) < 10
    triples, off = triples[agree], off[agree]
    groups = joined(len(centres), np.concatenate([triples[:, :2], triples[:, 1:]]))
    long = np.bincount(groups, minlength=len(centres))[groups] >= SHORTEST_ROW
    return centres[long], sizes[long], off[long[triples[:, 1]]]


def _crowded(centres: Floats, sizes: Floats) -> Floats:
    """Which have enough others around: chance rows in gravel lie scattered, print stands together."""
    away = np.linalg.norm(centres[:, None] - centres[None], axis=2)
    return np.asarray((away < 8 * sizes[:, None]).sum(axis=1) > CROWD)


def joined(count: int, pairs: Indices) -> Indices:
    """For each of `count` things the number of the group it belongs to, once all pairs are joined."""
    parent = list(range(count))

    def root(k: int) -> int:
        while parent[k] != k:
            parent[k] = parent[parent[k]]
            k = parent[k]
        return k

    for a, b in pairs.tolist():
        parent[root(a)] = root(b)
    return np.array([root(k) for k in range(count)], dtype=np.intp)


def _rows_of_three(boxes: Floats) -> tuple[Floats, Floats, Indices, Floats]:
    """Centres and sizes of the blobs; triples (n x 3) standing in a row, and their directions in degrees."""
    boxes = boxes[np.maximum(boxes[:, 2], boxes[:, 3]) < 4 * np.minimum(boxes[:, 2], boxes[:, 3])]
    centres = boxes[:, :2] + boxes[:, 2:] / 2
    sizes = np.maximum(boxes[:, 2], boxes[:, 3])
    if len(boxes) < SHORTEST_ROW:
        return centres, sizes, np.empty((0, 3), np.intp), np.empty(0)
    nearest = _nearest(centres, 6)
    vectors = centres[nearest] - centres[:, None, :]
    distance = np.hypot(vectors[..., 0], vectors[..., 1])
    larger, smaller = np.maximum(sizes[nearest], sizes[:, None]), np.minimum(sizes[nearest], sizes[:, None])
    like = (larger < 1.8 * smaller) & (distance < 1.4 * larger) & (distance > 0.2 * smaller)
    triples: list[Indices] = []
    for a, b in combinations(range(nearest.shape[1]), 2):
        dot = (vectors[:, a] * vectors[:, b]).sum(axis=1)
        straight = like[:, a] & like[:, b] & (dot < -0.966 * distance[:, a] * distance[:, b])
        middle = np.flatnonzero(straight)
        triples.append(np.stack([nearest[middle, a], middle, nearest[middle, b]], axis=1))
    rows = np.concatenate(triples)
    span = centres[rows[:, 2]] - centres[rows[:, 0]]
    return centres, sizes, rows, np.degrees(np.arctan2(span[:, 1], span[:, 0])) % 180


def _nearest(points: Floats, count: int) -> Indices:
    """For each point the indices of its nearest others."""
    data = points.astype(np.float32)
    _, found = cv2.batchDistance(data, data, cv2.CV_32F, K=min(count + 1, len(data)))
    return np.asarray(found[:, 1:], np.intp)


def chains(boxes: Floats) -> list[Indices]:
    """Groups of blob indices, each a row: every blob joined to its nearest like blob left and right."""
    roots = joined(len(boxes), np.stack(_neighbours(boxes), axis=1))
    order = np.argsort(roots, kind="stable")
    cuts = np.flatnonzero(np.diff(roots[order])) + 1
    return [group for group in np.split(order, cuts) if len(group)]


def _neighbours(boxes: Floats) -> tuple[Indices, Indices]:
    middle, height = boxes[:, 1] + boxes[:, 3] / 2, boxes[:, 3]
    a, b = near_pairs(middle, height * 0.8)
    swap = boxes[a, 0] > boxes[b, 0]
    a, b = np.where(swap, b, a), np.where(swap, a, b)
    gap = boxes[b, 0] - boxes[a, 0] - boxes[a, 2]
    tall, low = np.maximum(height[a], height[b]), np.minimum(height[a], height[b])
    shared = np.minimum(boxes[a, 1] + height[a], boxes[b, 1] + height[b]) - np.maximum(
        boxes[a, 1], boxes[b, 1]
    )
    fits = (gap < WIDEST_GAP * tall) & (gap > -0.35 * tall) & (tall < 2.1 * low) & (shared > 0.45 * low)
    a, b, gap, tall = a[fits], b[fits], gap[fits], tall[fits]
    slope = np.abs(boxes[a, 1] + height[a] - boxes[b, 1] - height[b])
    cost = np.maximum(gap, 0) / tall + 0.6 * np.minimum(slope, np.abs(boxes[a, 1] - boxes[b, 1])) / tall
    order = np.argsort(cost, kind="stable")
    _, forwards = np.unique(a[order], return_index=True)
    _, backwards = np.unique(b[order], return_index=True)
    links = order[np.union1d(forwards, backwards)]
    return a[links], b[links]
