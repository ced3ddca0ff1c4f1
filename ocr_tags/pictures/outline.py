"""Where the tag lies in the photo: its four corners, and how sure that is.

Several cheap methods propose four-sided shapes; one judge scores them all. A wrong outline would cut text
off, so a shape must have real edges on its sides and hold the print that is visible in the photo.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import cv2
import numpy as np

from ocr_tags.pictures.geometry import BEFORE, NEXT, Floats, Pixels, following, inside_share, reduced, through
from ocr_tags.pictures.glyphs import Direction
from ocr_tags.pictures.shapes import clockwise, crossing, distinct, evenness, off_border, shapes

SMALL = 640
"""Long side of the copy the outline is looked for on."""
SMALLEST = 64
"""A photo with a shorter side than this is not searched."""
BORDER_COLOURS = (2, 5)
"""Main colours that the edge of a photo is taken to have: plain ground, and gravel, soil or leaves."""
SAMPLES = 40
SETTLING = np.arange(-6.0, 6.1, 1.5)
"""Pixels by which the ends of a side are tried further out or in."""
SETTLING_COST = 0.5
"""Grey levels that a pixel of such a move must gain: without an edge to settle on, a side stays."""
CONVINCING = 0.45
CERTAIN = 0.85
"""Of 531 photographs 180 show such a shape in the first lot already; what more search found there was better
by a twentieth on one."""
NEARLY = 0.85
"""Outlines with less than this share of the best one's score are out."""
KEPT = 25
EXTENDED = 4
"""How many of the best shapes are also tried longer and wider: a tag's panel with the picture next to it."""


FEWEST_LETTERS, ALIKE, STEPS, TITLE, NEAREST, FURTHEST = 4, 0.2, (0.35, 2.2), 1.25, 1.5, 0.6
"""So many letters of one size and in a row, to this share of it, these steps apart (in their size), so much
larger than those on the tag, and so near to its side (in their size) make a title that an outline left out;
further off, as a share of the tag, none is sought."""
REACHES = np.geomspace(1.02, 3.0, 80)
LEAST_REACH = 1.1
ON_THE_GROUND = 0.8
"""A side is moved outwards by at least a tenth, and until this share of it lies on the background."""


@dataclass(frozen=True, slots=True)
class Outline:
    """Four corners (4 x 2, clockwise from the top left as the photo stands) and a score from 0 to 1."""

    corners: Floats
    sure: float

    @property
    def area(self) -> float:
        return abs(cv2.contourArea(self.corners.astype(np.float32)))


def find_outlines(pixels: Pixels, seen: Direction) -> list[Outline]:
    """Convincing outlines in photo pixels, best first, none far behind it; `seen` is the likely print."""
    if min(pixels.shape[:2]) < SMALLEST:
        return []
    small, back = reduced(pixels, SMALL / max(pixels.shape[:2]))
    lab = np.asarray(cv2.cvtColor(cv2.medianBlur(small, 5), cv2.COLOR_BGR2LAB), np.uint8)
    (few, _), (many, usual) = (off_border(lab, count) for count in BORDER_COLOURS)
    prints = through(np.asarray(np.linalg.inv(back), np.float64), seen.centres)
    judge = _Judge.of(lab, many, usual, prints, seen.share)
    quads, scores = _judged(shapes(lab, (few, many)), judge)
    if not quads:
        return []
    least = max(CONVINCING, NEARLY * float(scores.max()))
    best = [k for k in np.argsort(-scores, kind="stable")[:KEPT] if scores[k] > least]
    whole = [judge.reached(judge.settled(judge.settled(quads[k]))) for k in best]
    return [Outline(through(back, quad), float(scores[k])) for k, quad in zip(best, whole, strict=True)]


def _judged(lots: Iterable[list[Floats]], judge: _Judge) -> tuple[list[Floats], Floats]:
    """Shapes and their scores; none are sought any more once one is certain."""
    quads: list[Floats] = []
    scores = np.empty(0)

    def add(lot: Iterable[Floats]) -> None:
        nonlocal scores
        if added := distinct(lot, judge.shape, quads):
            quads.extend(added)
            scores = np.concatenate([scores, judge.scores(added)])

    for lot in lots:
        add(lot)
        if scores.max(initial=0.0) > CERTAIN:
            return quads, scores
    add([quad for k in np.argsort(-scores)[:EXTENDED] for quad in judge.extended(quads[k])])
    return quads, scores


def best_outline(outlines: list[Outline]) -> Outline | None:
    """The one to trust: the best, or a larger one around it that is nearly as good (a panel on the tag has
    edges as clear as the tag's own, and too large a cut loses nothing)."""
    if not outlines:
        return None
    best = outlines[0]
    for other in outlines[1:]:
        around = inside_share(grown(other.corners, 0.02), best.corners) == 1
        if around and 1.25 < other.area / best.area < 4:
            best = other
    return best


def with_titles(corners: Floats, seen: Direction) -> Floats:
    """Corners moved outwards to hold a title right beyond a side: a band of the tag in a colour of the ground
    is taken for ground, yet letters larger than those on the tag, in a row along its side, are the tag's."""
    for _ in range(4):
        a, b, c, d = corners
        to_unit = cv2.getPerspectiveTransform(corners.astype(np.float32), _UNIT)
        across, down = through(np.asarray(to_unit, np.float64), seen.centres).reshape(-1, 2).T
        height = (float(np.linalg.norm(d - a)) + float(np.linalg.norm(c - b))) / 2
        width = (float(np.linalg.norm(b - a)) + float(np.linalg.norm(c - d))) / 2
        inside = (np.abs(across - 0.5) < 0.5) & (np.abs(down - 0.5) < 0.5)
        beyond = (np.abs(across - 0.5) < 0.5) & (down < 0) & (down > -FURTHEST)
        if inside.sum() >= FEWEST_LETTERS and beyond.sum() >= FEWEST_LETTERS:
            size, level = np.median(seen.sizes[beyond]), np.median(down[beyond])
            like = np.abs(seen.sizes - size) < ALIKE * size
            row = beyond & like & (np.abs(down - level) * height < ALIKE * size)
            large = size > TITLE * np.median(seen.sizes[inside])
            steps = np.diff(np.sort(across[row])) * width / size
            even = len(steps) >= FEWEST_LETTERS - 1 and STEPS[0] < steps.min() and steps.max() < STEPS[1]
            if even and large and 0 < -level * height / size - 0.5 < NEAREST:
                share = 1 + (-level * height + 1.2 * size) / height
                a, b = d + (a - d) * share, c + (b - c) * share
        corners = np.array([b, c, d, a])
    return np.asarray(corners)


_UNIT = np.array([(0, 0), (1, 0), (1, 1), (0, 1)], np.float32)


def grown(corners: Floats, share: float) -> Floats:
    """Corners moved outwards by a share of the shorter side."""
    sides = np.linalg.norm(following(corners) - corners, axis=1)
    reach = share * float(min(sides[0] + sides[2], sides[1] + sides[3])) / 2
    before, after = corners[BEFORE], following(corners)
    return np.asarray(corners + reach * (_unit(corners - before) + _unit(corners - after)))


def _unit(vectors: Floats) -> Floats:
    return np.asarray(vectors / (np.linalg.norm(vectors, axis=1, keepdims=True) + 1e-9))


def _flatness(quad: Floats) -> float:
    """1 for a shape that a flat rectangle seen a little aslant can have, less for wedges and lozenges."""
    sides = following(quad) - quad
    lengths = np.linalg.norm(sides, axis=1)
    along = sides / lengths[:, None]
    skew = float(np.abs((along * along[BEFORE]).sum(axis=1)).max())
    return float((0.6 + 0.4 * min(evenness(lengths)) ** 0.5) * np.clip(1.1 - 1.2 * skew, 0.3, 1))


# ---------------------------------------------------------------- the judge


@dataclass(frozen=True, slots=True)
class _Judge:
    lab: Floats
    ground: Floats
    prints: Floats
    trust: float

    @staticmethod
    def of(lab: Pixels, away: Floats, usual: float, prints: Floats, share: float) -> _Judge:
        """`away`, `usual`: what `off_border` tells of it; `share` of the rows seen that agree in direction:
        low when gravel makes most of them."""
        smooth = cv2.GaussianBlur(lab, (0, 0), 1.2).astype(np.float32)
        ground = _open(np.asarray(away < 1.4 * usual + 6, np.uint8))
        full = cv2.resize(ground, (lab.shape[1], lab.shape[0]), interpolation=cv2.INTER_NEAREST)
        return _Judge(np.asarray(smooth), np.asarray(full, np.float64), prints, min(1.0, share / 0.5))

    @property
    def shape(self) -> tuple[int, int]:
        return self.lab.shape[0], self.lab.shape[1]

    def scores(self, quads: list[Floats]) -> Floats:
        """0 to 1 each: edges on the sides, print inside, background outside, size, and a likely shape."""
        every = np.array(quads)
        edge = np.sort(self._sides(every), axis=1) @ (0.4, 0.25, 0.2, 0.15)
        areas = np.array([abs(cv2.contourArea(quad.astype(np.float32))) for quad in quads])
        size = np.minimum(1.0, (areas / (0.25 * self.ground.size)) ** 0.3)
        shape = np.array([_flatness(quad) * self._holds(quad) for quad in quads])
        apart = self._stands_out(every) * (1 - 0.4 * self._within(every))
        return np.asarray(edge * (0.7 + 0.3 * size) * shape * apart)

    def extended(self, quad: Floats) -> Iterator[Floats]:
        """The quad with one side moved outwards along its neighbours, up to three times as long, where the
        added piece has clear edges of its own on its three outer sides and is no background."""
        shares = np.geomspace(1.08, 3.0, 22)[:, None]
        for k in range(4):
            a, b, c, d = np.roll(quad, -k, axis=0)
            far_b, far_c = a + (b - a) * shares, d + (c - d) * shares
            near_b, near_c = np.broadcast_to(b, far_b.shape), np.broadcast_to(c, far_c.shape)
            added = np.stack([near_b, far_b, far_c, near_c], axis=1)
            some = np.flatnonzero(self._within(added) < 0.65)
            for index in some[self._sides(added[some])[:, :3].min(axis=1) > 0.5] if some.size else ():
                yield clockwise(np.array([a, far_b[index], far_c[index], d]))

    def reached(self, quad: Floats) -> Floats:
        """The quad with each side moved outwards as far as what lies there is no background: a panel of the
        tag has edges of its own, and behind them the tag goes on."""
        for _ in range(4):
            a, b, c, d = quad
            far = np.stack([a + (b - a) * REACHES[:, None], d + (c - d) * REACHES[:, None]], axis=1)
            points = far[:, :1] + (far[:, 1:] - far[:, :1]) * np.linspace(0.02, 0.98, SAMPLES)[:, None]
            height, width = self.lab.shape[:2]
            beyond = ((points < 0) | (points > (width - 1, height - 1))).any(axis=2)
            ground = np.where(beyond, 1.0, self._at(points, self.ground))
            open_ = ground.mean(axis=1) > ON_THE_GROUND
            last = int(np.argmax(open_)) - 1 if open_.any() else len(REACHES) - 1
            if last >= 0 and REACHES[last] > LEAST_REACH:
                b, c = far[last]
            quad = np.array([b, c, d, a])
        return quad

    def settled(self, quad: Floats) -> Floats:
        """The quad with each side moved, by a few pixels at either end, to where the colour steps most."""
        run = following(quad) - quad
        normal = np.stack([-run[:, 1], run[:, 0]], axis=1) / np.linalg.norm(run, axis=1, keepdims=True)
        first, last = (off.reshape(-1, 1) for off in np.meshgrid(SETTLING, SETTLING))
        starts = quad[:, None] + first * normal[:, None]
        ends = following(quad)[:, None] + last * normal[:, None]
        points = starts[:, :, None] + (ends - starts)[:, :, None] * np.linspace(0.1, 0.9, 20)[:, None]
        steps = np.minimum(self._step(points, normal[:, None, None]), 40.0).mean(axis=2)
        best = np.argmax(steps - SETTLING_COST * (np.abs(first) + np.abs(last)).T, axis=1)
        sides = [(starts[k, b], ends[k, b]) for k, b in enumerate(best)]
        corners = [crossing(sides[k - 1], sides[k]) for k in range(4)]
        found = [corner for corner in corners if corner is not None]
        return np.array(found) if len(found) == 4 else quad

    def _holds(self, quad: Floats) -> float:
        """How much of the visible print lies inside."""
        if len(self.prints) < 6:
            return 0.9
        held = float(np.clip((inside_share(quad, self.prints) - 0.5) / 0.4, 0.05, 1))
        return 1 - self.trust * (1 - held)

    def _stands_out(self, quads: Floats) -> Floats:
        """How much of what lies just outside has a colour of the photo's edge: around a panel or a picture
        printed on the tag there is more tag."""
        away = quads - quads.mean(axis=1, keepdims=True)
        ring = np.concatenate([_along(quads + away * out) for out in (0.06, 0.12)], axis=2)
        return np.asarray(0.6 + 0.4 * self._at(ring, self.ground).mean(axis=(1, 2)))

    def _within(self, quads: Floats) -> Floats:
        """How much of the inside has a colour of the photo's edge."""
        steps = np.linspace(0.06, 0.94, 12)
        across, down = np.meshgrid(steps, steps)
        weights = np.stack(
            [(1 - across) * (1 - down), across * (1 - down), across * down, (1 - across) * down], axis=-1
        )
        return np.asarray(self._at(weights.reshape(-1, 4) @ quads, self.ground).mean(axis=1))

    def _sides(self, quads: Floats) -> Floats:
        """For each side the share along which the colour steps; under half where it is the photo's frame."""
        height, width = self.lab.shape[:2]
        run = quads[:, NEXT] - quads
        points = _along(quads)
        normal = np.stack([-run[..., 1], run[..., 0]], axis=2)
        normal = (normal / (np.linalg.norm(normal, axis=2, keepdims=True) + 1e-9))[:, :, None]
        frame = ((points < 4) | (points > (width - 5, height - 5))).any(axis=3)
        step = np.stack(
            [self._step(points + shift * normal, normal) for shift in (-3.0, 0.0, 3.0, 11.0, -11.0)]
        )
        support = np.clip((step[:3].max(axis=0) - 0.7 * step[3:].min(axis=0) - 6) / 20, 0, 1)
        return np.asarray(np.where(frame, 0.45, support).mean(axis=2))

    def _step(self, points: Floats, normal: Floats) -> Floats:
        """Colour difference across a line, three pixels to either side."""
        off = self._at(points + 3 * normal, self.lab) - self._at(points - 3 * normal, self.lab)
        return np.asarray(np.sqrt(np.einsum("...k,...k", off, off)))

    @staticmethod
    def _at(points: Floats, image: Floats) -> Floats:
        height, width = image.shape[:2]
        x = np.clip(np.rint(points[..., 0]).astype(int), 0, width - 1)
        y = np.clip(np.rint(points[..., 1]).astype(int), 0, height - 1)
        return np.asarray(image[y, x])


def _open(ground: Pixels) -> Pixels:
    """The background that reaches the photo's edge; what it encloses in its colour is a panel of a tag."""
    _, parts = cv2.connectedComponents(ground, connectivity=4)
    rim = np.concatenate([parts[0], parts[-1], parts[:, 0], parts[:, -1]])
    return np.asarray(np.isin(parts, np.unique(rim[rim > 0])), np.uint8)


def _along(quads: Floats) -> Floats:
    """Points along the four sides of each quad (n x 4 x samples x 2), corners (often rounded) left out."""
    run = quads[:, NEXT] - quads
    return np.asarray(quads[:, :, None] + run[:, :, None] * np.linspace(0.08, 0.92, SAMPLES)[:, None])
