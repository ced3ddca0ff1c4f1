"""Text lines anywhere on a tag: dark or light, small or large, level, slanted or upright.

Blobs shaped like letters are chained to the next like blob on the right; what forms a row is a line. Finding
too much costs little (the reader makes nothing of it), finding too little loses a fact.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ocr_tags.pictures.geometry import Floats, Indices, Pixels, quantile
from ocr_tags.pictures.glyphs import Layer, chains, layers

MOST_LINES = 100
FEWEST_LETTERS = 1.8
MARGIN = 0.2
"""Room around a line, in letter heights: marks over letters, a point or comma at the end."""
LEAST_ODDS = -2.5
"""Log odds below which a row is left out: of rows that readers made words of, one in a hundred is."""
UPRIGHT_ODDS = 3.0
"""How much less likely a row is to be print when it runs up or down the tag."""
SQUARE = 1.3
"""A quad this much taller than wide holds a line that runs down; short words are about square."""

Quad = tuple[tuple[float, float], tuple[float, float], tuple[float, float], tuple[float, float]]


@dataclass(frozen=True, slots=True)
class LineRegion:
    """One line of print. `quad`: four points in picture pixels, from the line's own top left clockwise.

    `letter_height` is the height of its capitals in pixels, or of its small letters where it has no
    taller ones. `score`, 0 to 1: how likely it is print.
    """

    quad: Quad
    letter_height: float
    score: float

    @property
    def length(self) -> float:
        """How far the line runs, in pixels."""
        return _length(self.quad)

    @property
    def angle(self) -> float:
        """Which way it runs in degrees: 0 to the right, growing clockwise."""
        (x0, y0), (x1, y1) = self.quad[:2]
        return float(np.degrees(np.arctan2(y1 - y0, x1 - x0)))


def find_lines(pixels: Pixels) -> list[LineRegion]:
    """Lines of text in a colour picture (height x width x 3), likeliest first, `MOST_LINES` at most."""
    found: list[LineRegion] = []
    extent = float(max(pixels.shape[:2]))
    for layer in layers(pixels):
        found.extend(_rows(layer, extent, upright=False))
        found.extend(_rows(layer, extent, upright=True))
    return _strongest(_weighed(pixels, found))


def find_level(pixels: Pixels) -> list[LineRegion]:
    """The same, of rows that run level only: half the price where the way up is known."""
    extent = float(max(pixels.shape[:2]))
    return _strongest(
        _weighed(pixels, [row for layer in layers(pixels) for row in _rows(layer, extent, upright=False)])
    )


def region_of(quad: Quad, letter_share: float = 0.6) -> LineRegion:
    """A line somebody else found, running along the longer side of its quad; letters take `letter_share` of
    its height (measured on lines found both ways: half of them within 0.55 to 0.64)."""
    if _length(quad) < _length((quad[1], quad[2], quad[3], quad[0])) / SQUARE:
        quad = (quad[1], quad[2], quad[3], quad[0])
    tall = _length((quad[1], quad[2], quad[3], quad[0]))
    return LineRegion(quad, letter_share * tall, 1.0)


def find_rows(pixels: Pixels) -> tuple[list[LineRegion], list[LineRegion]]:
    """Rows of clear dark or light print that run level, and those that run straight up and down (given
    downwards); only such as are likelier print than not."""
    extent = float(max(pixels.shape[:2]))
    level: list[LineRegion] = []
    down: list[LineRegion] = []
    for layer in layers(pixels, colour=False):
        level.extend(_rows(layer, extent, upright=False, least=0.0))
        down.extend(list(_rows(layer, extent, upright=True, least=0.0))[::2])
    return _strongest(_weighed(pixels, level)), _strongest(_weighed(pixels, down))


def _rows(layer: Layer, extent: float, upright: bool, least: float = LEAST_ODDS) -> Iterator[LineRegion]:
    """Rows of one layer that run level, or else up or down (each given both ways)."""
    boxes = layer.boxes
    if upright:
        boxes = np.stack([boxes[:, 1], -boxes[:, 0] - boxes[:, 2], boxes[:, 3], boxes[:, 2]], axis=1)
    kept = boxes[:, 2] < 12 * boxes[:, 3]
    boxes = boxes[kept]
    for chain in _promising(chains(boxes), boxes, layer.contrast[kept], extent, least):
        region = _region(boxes[chain])
        if region is None:
            continue
        if upright:
            a, b, c, d = ((-y, x) for x, y in region.quad)
            odds = region.score - UPRIGHT_ODDS
            yield replace(region, quad=(a, b, c, d), score=odds)
            yield replace(region, quad=(c, d, a, b), score=odds)
        else:
            yield region


def _length(quad: Quad) -> float:
    return float(np.hypot(quad[1][0] - quad[0][0], quad[1][1] - quad[0][1]))


def _promising(
    chains: list[Indices], boxes: Floats, contrast: Floats, extent: float, least: float
) -> Iterator[Indices]:
    """The chains that can still become likely enough, judged by what is quickly known of them."""
    if not chains:
        return
    order = np.concatenate(chains)
    counts = np.array([len(chain) for chain in chains])
    starts = np.cumsum(counts) - counts

    def mean(values: Floats) -> Floats:
        return np.asarray(np.add.reduceat(values[order], starts) / counts)

    heights = boxes[:, 3]
    letters = mean(np.maximum(1.0, boxes[:, 2] / (0.7 * heights))) * counts
    tall = mean(heights)
    spread = np.sqrt(np.maximum(mean(heights**2) - tall**2, 0)) / tall
    odds = (
        2.4 * np.log(letters)
        - 3.2 * spread
        - 2.5
        + _size_odds(1.2 * tall, extent)
        + _contrast_odds(1.5 * mean(contrast))
    )
    for index in np.flatnonzero((odds > least) & (letters > FEWEST_LETTERS)):
        yield chains[int(index)]


def _size_odds(height: Any, extent: float) -> Any:
    """Print has a least size for the tag's own; what is smaller is grain."""
    return 0.8 * np.log(np.minimum(height / extent, 0.05))


def _contrast_odds(contrast: Any) -> Any:
    return 0.8 * np.log(contrast + 1)


def _region(boxes: Floats) -> LineRegion | None:
    """The line a row of blobs makes, or None when it does not look like print."""
    widths, heights = boxes[:, 2], boxes[:, 3]
    letters = float(np.sum(np.maximum(1.0, widths / (0.7 * heights))))
    if letters < FEWEST_LETTERS:
        return None
    centres = boxes[:, 0] + widths / 2
    slope = _slope(centres, boxes)
    bottoms, tops = boxes[:, 1] + heights - slope * centres, boxes[:, 1] - slope * centres
    tall = quantile(heights, 0.8)
    top, bottom = quantile(tops, 0.1), quantile(bottoms, 0.9)
    score = _likeness(boxes, letters, bottoms, tops, abs(slope))
    start, end = float(boxes[:, 0].min()), float((boxes[:, 0] + widths).max())
    along = np.array([1.0, slope]) / np.hypot(1, slope)
    down = np.array([-along[1], along[0]])
    margin, half = MARGIN * tall, (bottom - top) / 2 * along[0]
    left, right = (np.array([x, (top + bottom) / 2 + slope * x]) for x in (start, end))
    quad = tuple(
        (float(x), float(y))
        for x, y in (
            end + margin * side * along + (half + margin) * level * down
            for end, side, level in ((left, -1, -1), (right, 1, -1), (right, 1, 1), (left, -1, 1))
        )
    )
    return LineRegion(quad, tall, score)  # type: ignore[arg-type]


def _likeness(boxes: Floats, letters: float, bottoms: Floats, tops: Floats, slope: float) -> float:
    """How like print a row is, as log odds without its size and contrast.

    The weights come from a logistic fit on rows of drawn tags, told apart by whether a reader made words
    of them: many letters, of one height, on one line, each taller than wide.
    """
    widths, heights = boxes[:, 2], boxes[:, 3]
    tall = quantile(heights, 0.8)
    uneven = sum(quantile(np.abs(edge - quantile(edge, 0.5)), 0.5) for edge in (bottoms, tops)) / tall
    spread = float(np.std(heights) / np.mean(heights))
    left = np.argsort(boxes[:, 0])
    gaps = np.append(boxes[left][1:, 0] - (boxes[left][:-1, 0] + boxes[left][:-1, 2]), 0.0)
    gap = max(quantile(gaps, 0.5), 0.0) / tall
    shape = abs(float(np.log(quantile(widths / heights, 0.5) / 0.7)))
    odds = 2.4 * np.log(letters) - 3.9 * uneven - 3.2 * spread - 0.6 * gap - 1.2 * shape - 3.0 * slope
    return float(odds - 2.5)


def _slope(centres: Floats, boxes: Floats) -> float:
    """Rise over run of the row, from the feet and the heads of its letters, the straighter of them more."""
    if len(boxes) < 3 or np.ptp(centres) < 3 * quantile(boxes[:, 3], 0.5):
        return 0.0
    fits = [_fit(centres, edge) for edge in (boxes[:, 1] + boxes[:, 3], boxes[:, 1])]
    weights = [1 / (rough + 1.0) for _, rough in fits]
    slope = sum(weight * slope for weight, (slope, _) in zip(weights, fits, strict=True)) / sum(weights)
    return float(np.clip(slope, -0.6, 0.6))


def _fit(x: Floats, y: Floats) -> tuple[float, float]:
    """Slope of the line through most of the points, and how far (squared) those are from it."""
    slope, base = np.polyfit(x, y, 1)
    off = np.abs(y - slope * x - base)
    near = off <= max(quantile(off, 0.5) * 1.5, 1.0)
    if near.sum() >= 3 and np.ptp(x[near]) > 0.5 * np.ptp(x):
        slope, base = np.polyfit(x[near], y[near], 1)
    return float(slope), float(np.mean((y[near] - slope * x[near] - base) ** 2))


def _weighed(pixels: Pixels, regions: Iterable[LineRegion]) -> Iterator[LineRegion]:
    """The regions likely enough to be print, size and contrast taken in, their score now a probability."""
    height, width = pixels.shape[:2]
    for region in regions:
        corners = np.array(region.quad)
        x0, y0 = np.maximum(corners.min(axis=0), 0).astype(int)
        x1, y1 = np.minimum(corners.max(axis=0), (width, height)).astype(int)
        if x1 - x0 < 3 or y1 - y0 < 3:
            continue
        step = max(1, int(min(region.letter_height / 10, (x1 - x0) / 60)))
        contrast = float(pixels[y0:y1:step, x0:x1:step].reshape(-1, 3).std(axis=0).max())
        odds = region.score + _size_odds(region.letter_height, max(height, width)) + _contrast_odds(contrast)
        if odds > LEAST_ODDS:
            yield replace(region, score=float(1 / (1 + np.exp(-odds))))


def _strongest(regions: Iterable[LineRegion]) -> list[LineRegion]:
    """The best regions, leaving out those that better ones already cover."""
    kept: list[LineRegion] = []
    frames = np.empty((0, 4))
    for region in sorted(regions, key=lambda r: -r.score):
        corners = np.array(region.quad)
        frame = np.concatenate([corners.min(axis=0), corners.max(axis=0)])
        if not _covered(frame, region, frames, kept):
            kept.append(region)
            frames = np.vstack([frames, frame])
    return kept[:MOST_LINES]


def _is_upright(region: LineRegion) -> bool:
    (x0, y0), (x1, y1) = region.quad[:2]
    return abs(y1 - y0) > abs(x1 - x0)


def _covered(frame: Floats, region: LineRegion, frames: Floats, kept: list[LineRegion]) -> bool:
    sides = np.minimum(frame[2:], frames[:, 2:]) - np.maximum(frame[:2], frames[:, :2])
    shared = np.prod(np.maximum(sides, 0), axis=1) / float(np.prod(frame[2:] - frame[:2]))
    # Letters of level lines below each other also stand in upright rows.
    if _is_upright(region) and sum(s for s, o in zip(shared, kept, strict=True) if not _is_upright(o)) > 0.3:
        return True
    for index in np.flatnonzero(shared > 0.6):
        other = kept[int(index)]
        if _is_upright(region) and region.letter_height == other.letter_height:
            continue
        if 0.4 < region.letter_height / other.letter_height < 2.5 or region.score < 0.5 * other.score:
            return True
    return False
