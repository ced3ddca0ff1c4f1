"""Four-sided shapes in a photo that may be the tag: many cheap guesses, for `outline` to judge."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from math import hypot

import cv2
import numpy as np

from ocr_tags.pictures.geometry import Floats, Pixels, following, outlined

CLUSTER_SIDE = 160
SMALLEST_SHARE = 0.03
"""A tag takes at least this share of the photo."""


def shapes(lab: Pixels, aways: Sequence[Floats]) -> Iterator[list[Floats]]:
    """Quads (4 x 2, clockwise from the top left) around whatever may be the tag in a small Lab picture, in
    lots: what is cheap and tells most first. `aways`: how far pixels are from its edge (`off_border`).
    """
    for masks in (_unlike_border(lab, aways), _clusters(lab), chain(_smooth(lab), _ringed(lab))):
        yield [quad for hull in _hulls(masks) for quad in _quads(hull)]


def _hulls(masks: Iterable[Pixels]) -> Iterator[Floats]:
    """Convex hulls of everything that may be the tag."""
    for mask in masks:
        least = SMALLEST_SHARE * mask.size
        contours, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_SIMPLE)
        for contour in sorted(contours, key=cv2.contourArea, reverse=True)[:3]:
            hull = cv2.convexHull(contour)
            if cv2.contourArea(hull) > least:
                yield np.asarray(hull[:, 0, :], np.float64)


def _closed(mask: Pixels, close: int, opened: int) -> Pixels:
    grown = cv2.morphologyEx(mask, cv2.MORPH_CLOSE, _disc(close))
    return np.asarray(cv2.morphologyEx(grown, cv2.MORPH_OPEN, _disc(opened)), np.uint8)


def _disc(size: int) -> Pixels:
    return np.asarray(cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (size, size)), np.uint8)


BAND = 40
"""The part of a photo's shorter side that counts as its edge: a tag may nearly fill the photo."""
ON_AN_EDGE = 0.03
"""A colour with a smaller share of an edge of the photo is not of that edge."""


def _palette(colours: Floats, count: int) -> Floats:
    """The `count` main colours (k-means with a fixed start)."""
    cv2.setRNGSeed(1)
    data = colours.astype(np.float32)
    stop = (cv2.TERM_CRITERIA_EPS + cv2.TERM_CRITERIA_MAX_ITER, 12, 1.0)
    empty = np.empty((0, 1), np.int32)
    _, _, centres = cv2.kmeans(data, count, empty, stop, 1, cv2.KMEANS_PP_CENTERS)
    return np.asarray(centres, np.float64)


def _distances(lab: Pixels, palette: Floats) -> Floats:
    """For each pixel the distance to each colour of the palette; light counts less than hue (shadow)."""
    weight = np.array([0.6, 1.4, 1.4], np.float32)
    flat = (lab.astype(np.float32) * weight).reshape(-1, 3)
    colours = palette.astype(np.float32) * weight
    squares = (flat**2).sum(axis=1) - 2 * colours @ flat.T + (colours**2).sum(axis=1)[:, None]
    return np.asarray(np.sqrt(np.maximum(squares, 0)).reshape(-1, *lab.shape[:2]))


def _unlike_border(lab: Pixels, aways: Sequence[Floats]) -> Iterator[Pixels]:
    """What differs from the colours along the photo's edge."""
    for away in aways:
        level = np.asarray(np.clip(away * 2, 0, 255), np.uint8)
        otsu, _ = cv2.threshold(level, 0, 255, cv2.THRESH_OTSU)
        for threshold in (otsu, otsu * 0.6, max(16.0, otsu * 0.35)):
            mask = np.asarray(level > threshold, np.uint8) * 255
            for opened in (5, 11):
                yield _doubled(_closed(mask, 7, opened), lab)


def off_border(lab: Pixels, count: int) -> tuple[Floats, float]:
    """On a copy half as large, how far each pixel is from the `count` main colours along the photo's edge;
    and the distance that nine in ten pixels along that edge keep to.

    A colour that only one of the four edges has is the tag's own, where that reaches the edge.
    """
    small = np.asarray(cv2.resize(lab, None, fx=0.5, fy=0.5, interpolation=cv2.INTER_AREA), np.uint8)
    band = max(3, min(small.shape[:2]) // BAND)
    rims = [small[:band], small[-band:], small[:, :band], small[:, -band:]]
    palette = _palette(np.concatenate([rim.reshape(-1, 3) for rim in rims]).astype(np.float64), count)
    nearest = [_distances(rim, palette).argmin(axis=0) for rim in rims]
    shares = np.array([np.bincount(near.ravel(), minlength=count) / near.size for near in nearest])
    kept = (shares > ON_AN_EDGE).sum(axis=0) > 1
    away = _distances(small, palette[kept] if kept.any() else palette).min(axis=0)
    edges = (away[:band], away[-band:], away[:, :band], away[:, -band:])
    own = [kept[near] | ~kept.any() for near in nearest]
    usual = np.concatenate([edge[ours] for edge, ours in zip(edges, own, strict=True)])
    return away, float(np.percentile(usual, 90))


def _doubled(mask: Pixels, like: Pixels) -> Pixels:
    height, width = like.shape[:2]
    return np.asarray(cv2.resize(mask, (width, height), interpolation=cv2.INTER_NEAREST), np.uint8)


def _clusters(lab: Pixels) -> Iterator[Pixels]:
    """Patches of one main colour."""
    scale = CLUSTER_SIDE / max(lab.shape[:2])
    tiny = np.asarray(cv2.resize(lab, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA), np.uint8)
    for count in (3, 5, 8):
        nearest = _distances(tiny, _palette(tiny.reshape(-1, 3).astype(np.float64), count)).argmin(axis=0)
        for index in range(count):
            mask = np.asarray(nearest == index, np.uint8) * 255
            yield _doubled(_closed(mask, 5, 5), lab)


def _smooth(lab: Pixels) -> Iterator[Pixels]:
    """Patches without texture: printed plastic against soil, gravel or leaves."""
    light = cv2.extractChannel(lab, 0)
    gradient = cv2.morphologyEx(light, cv2.MORPH_GRADIENT, _disc(5))
    for limit in (12, 24):
        mask = np.asarray(cv2.blur(gradient, (7, 7)) < limit, np.uint8) * 255
        yield _closed(mask, 15, 9)


RINGED, LEAST_RINGED = 6, 0.01
"""Of the patches between edges so many, the largest, each at least this share of the picture."""


def _ringed(lab: Pixels) -> Iterator[Pixels]:
    """Patches enclosed by edges."""
    for index in range(3):
        channel = cv2.GaussianBlur(cv2.extractChannel(lab, index), (0, 0), 1.5)
        for low, high in ((20, 60), (50, 120)):
            edges = cv2.dilate(cv2.Canny(channel, low, high), _disc(3))
            inside = np.asarray(255 - edges, np.uint8)
            for patch in sorted(outlined(inside), key=cv2.contourArea, reverse=True)[:RINGED]:
                if cv2.contourArea(patch) > LEAST_RINGED * edges.size:
                    mask = cv2.drawContours(np.zeros_like(edges), [patch], -1, 255, cv2.FILLED)
                    yield np.asarray(cv2.drawContours(mask, [patch], -1, 255, 5), np.uint8)
            yield np.asarray(edges, np.uint8)


def _quads(hull: Floats) -> Iterator[Floats]:
    """Four-sided shapes around a hull: the tightest, the upright-sided, and long sides with square ends
    (a stake with a point)."""
    points = hull.astype(np.float32)
    if len(points) >= 4:
        tight = cv2.approxPolyN(points, 4)
        yield clockwise(np.asarray(tight, np.float64).reshape(-1, 2))
    box = np.asarray(cv2.boxPoints(cv2.minAreaRect(points)), np.float64)
    yield clockwise(box)
    ended = _square_ended(hull, box)
    if ended is not None:
        yield clockwise(ended)


def _square_ended(hull: Floats, box: Floats) -> Floats | None:
    """The hull's two long sides as they run, closed by the short sides of the box around it."""
    if np.linalg.norm(box[1] - box[0]) < np.linalg.norm(box[2] - box[1]):
        box = following(box)
    one, two = _side_along(hull, box[0], box[1]), _side_along(hull, box[3], box[2])
    if one is None or two is None:
        return None
    start, end = (box[0], box[3]), (box[1], box[2])
    corners = [crossing(side, cap) for side, cap in ((one, start), (one, end), (two, end), (two, start))]
    found = [corner for corner in corners if corner is not None]
    return np.array(found) if len(found) == 4 else None


def _side_along(hull: Floats, start: Floats, end: Floats) -> tuple[Floats, Floats] | None:
    """The longest hull edge near the line from start to end and about parallel to it."""
    along = (end - start) / np.linalg.norm(end - start)
    nexts = following(hull)
    edges = nexts - hull
    lengths = np.linalg.norm(edges, axis=1) + 1e-9
    parallel = np.abs(edges @ along) / lengths > 0.97
    normal = np.array([-along[1], along[0]])
    near = np.abs((hull + nexts) / 2 @ normal - start @ normal) < 0.2 * np.linalg.norm(end - start)
    fits = np.flatnonzero(parallel & near)
    if not len(fits):
        return None
    best = fits[np.argmax(lengths[fits])]
    return hull[best], nexts[best]


def crossing(one: tuple[Floats, Floats], two: tuple[Floats, Floats]) -> Floats | None:
    """Where two lines, each through two points, meet; None when they run (nearly) side by side."""
    (ax, ay, aw), (bx, by, bw) = (_line(*(end.tolist() for end in ends)) for ends in (one, two))
    x, y, w = ay * bw - aw * by, aw * bx - ax * bw, ax * by - ay * bx
    scale = hypot(ax, ay) * hypot(bx, by)
    return np.array([x / w, y / w]) if abs(w) > 0.05 * scale else None


def _line(start: list[float], end: list[float]) -> tuple[float, float, float]:
    """The line through two points as a, b, c of ax + by + c = 0."""
    (x0, y0), (x1, y1) = start, end
    return y0 - y1, x1 - x0, x0 * y1 - x1 * y0


def clockwise(quad: Floats) -> Floats:
    """Clockwise as seen, from the corner nearest the photo's top left."""
    if len(quad) != 4:
        return np.empty((0, 2))
    centre = quad.mean(axis=0)
    angles = np.arctan2(quad[:, 1] - centre[1], quad[:, 0] - centre[0])
    quad = quad[np.argsort(angles)]
    return np.roll(quad, -int(np.argmin(quad.sum(axis=1))), axis=0)


def distinct(quads: Iterable[Floats], shape: tuple[int, int], known: Sequence[Floats] = ()) -> list[Floats]:
    """Sound shapes that are not among those known, each once."""
    height, width = shape
    kept = np.array([*known, np.full((4, 2), np.inf)])
    for quad in quads:
        if len(quad) != 4 or not cv2.isContourConvex(quad.astype(np.float32)):
            continue
        out = np.maximum(-quad, quad - (width - 1, height - 1)).max()
        area = abs(cv2.contourArea(quad.astype(np.float32)))
        sides = np.linalg.norm(following(quad) - quad, axis=1)
        if out > 0.15 * max(shape) or area < SMALLEST_SHARE * width * height or sides.min() < 12:
            continue
        if area > 0.985 * width * height or min(evenness(sides)) < 0.5:
            continue
        if np.abs(kept - quad).max(axis=(1, 2)).min() > 3:
            kept = np.concatenate([kept, quad[None]])
    return list(kept[len(known) + 1 :])


def evenness(sides: Floats) -> tuple[float, float]:
    """How alike opposite sides are: 1 alike, towards 0 unlike. No camera makes a tag half a wedge."""
    a, b, c, d = sides
    return float(min(a, c) / max(a, c)), float(min(b, d) / max(b, d))
