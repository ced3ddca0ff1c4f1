"""What kind of mark a patch of ink is, told by its shape alone: no picture of any known mark is used.

Round marks are unrolled around their centre: evenly spaced rays, arms and petals show as a rhythm along the
circle, found by a Fourier transform. Upright marks are told by how wide they are from top to bottom.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import cv2
import numpy as np

from ocr_tags.geometry import Floats, Pixels

Kind = Literal[
    "sun", "half_sun", "shade", "ring", "drop", "thermometer", "snow", "tall", "wide", "apart", "flower"
]

ANGLES = 128
RINGS = 40
"""Rings of the unrolled patch, from its centre out to `REACH` times its radius."""
REACH = 2.5
RHYTHM = 0.62
"""Share of all change along a circle that even spacing must explain."""
STEPS = 24
LEAST_FLOWER = 50
"""Least size in pixels of a flower: smaller ones are asterisks and other letters with arms."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A kind, how sure it is (0 to 1), and how far it reaches beyond the patch (1: not at all)."""

    kind: Kind
    certainty: float
    reach: float = 1.0


@dataclass(frozen=True, slots=True)
class _Rhythm:
    """Rings with evenly spaced ink: their number of rays, first and last ring, and the share inked."""

    rays: int
    first: int
    last: int
    inked: float


def shape_of(ink: Pixels, filled: Pixels, around: Pixels) -> Shape | None:
    """The mark that a patch is, if any.

    `ink` is the patch alone (0 or 1), `filled` the same with its holes filled, `around` all ink of the
    picture within `REACH` of its centre (a square, the patch in its middle).
    """
    height, width = ink.shape
    if 0.8 < width / height < 1.25:
        return _round_shape(ink, filled, around)
    return _long_shape(ink, filled)


# ---------------------------------------------------------------- round marks


def _round_shape(ink: Pixels, filled: Pixels, around: Pixels) -> Shape | None:
    radius = max(ink.shape) / 2
    if filled.sum() > 0.9 * np.pi / 4 * ink.size and _is_disc(filled):
        return _disc(ink, _unrolled(around, radius))
    own = _unrolled(_centred(ink), radius)
    star = _star(own)
    return None if star and star.kind == "flower" and radius < LEAST_FLOWER / 2 else star


def _is_disc(filled: Pixels) -> bool:
    """Whether the patch is as far from its centre in every direction."""
    edge = _unrolled(_centred(filled), max(filled.shape) / 2).sum(axis=0) / (RINGS / REACH)
    return float(edge.min()) > 0.84 and float(edge.std()) < 0.05


def _disc(ink: Pixels, rolled: Floats) -> Shape | None:
    """A disc or ring: a sun with rays around it, else half or wholly dark, or a ring."""
    edge = round(RINGS / REACH)
    rhythm = _rhythm(rolled, edge + 2, RINGS, 6, 24)
    fill = _fill(ink)
    if rhythm is None or rhythm.last - rhythm.first < 2 or rhythm.inked > 0.7:
        plain: dict[str, Kind] = {"half": "half_sun", "full": "shade", "empty": "ring"}
        return Shape(plain[fill], 0.8 if fill == "half" else 0.5) if fill in plain else None
    beyond = rolled[rhythm.last + 1 : rhythm.last + 5].mean(axis=1)
    if len(beyond) and float(beyond.min()) > 0.3:
        return None
    if fill == "other":
        return None
    return Shape("half_sun" if fill == "half" else "sun", 0.9, (rhythm.last + 1) * REACH / RINGS)


def _fill(ink: Pixels) -> Literal["full", "empty", "half", "other"]:
    """How much of the inside of a disc is inked."""
    height, width = ink.shape
    y, x = np.mgrid[:height, :width]
    dx, dy = (x - (width - 1) / 2) / (width / 2), (y - (height - 1) / 2) / (height / 2)
    inside = np.hypot(dx, dy) < 0.66
    share = float(ink[inside].mean())
    if share > 0.93:
        return "full"
    if share < 0.07:
        return "empty"
    for side in (dx, dy, (dx + dy) / 1.41, (dx - dy) / 1.41):
        one, two = (float(ink[inside & (sign * side > 0.12)].mean()) for sign in (-1, 1))
        if max(one, two) > 0.9 and min(one, two) < 0.1:
            return "half"
    return "other"


def _star(rolled: Floats) -> Shape | None:
    """A patch in one piece with rays, arms or petals."""
    edge = round(RINGS / REACH)
    rhythm = _rhythm(rolled, 3, edge, 4, 24)
    if rhythm is None or rhythm.last < 0.8 * edge or rhythm.last - rhythm.first < 0.25 * edge:
        return None
    core = float(rolled[: max(rhythm.first, 2)].mean())
    from_centre = rhythm.first / edge
    if rhythm.rays in (6, 8, 12) and from_centre < 0.36 and rhythm.inked < 0.55:
        return Shape("snow", 0.7)
    if rhythm.rays >= 7 and 0.36 <= from_centre < 0.8 and rhythm.inked < 0.62 and core > 0.25:
        return Shape("sun", 0.8)
    if 4 <= rhythm.rays <= 8 and rhythm.inked >= 0.5 and core > 0.4 and from_centre > 0.3:
        return Shape("flower", 0.6)
    return None


def _rhythm(rolled: Floats, first: int, stop: int, fewest: int, most: int) -> _Rhythm | None:
    """The longest run of rings between `first` and `stop` with one number of evenly spaced rays."""
    rows = rolled[first:stop]
    inked = rows.mean(axis=1)
    power = np.abs(np.fft.rfft(rows - inked[:, None], axis=1)) ** 2
    total = power.sum(axis=1) + 1e-9
    best: _Rhythm | None = None
    for rays in range(fewest, most + 1):
        own = power[:, rays::rays][:, :4].sum(axis=1) / total
        # Rays twice as many have no power at half their number: then the larger number is meant.
        even = (own > RHYTHM) & (inked > 0.05) & (inked < 0.92) & (power[:, rays] > 0.3 * own * total)
        run = _longest(even)
        if run and (best is None or run[1] - run[0] > best.last - best.first):
            share = float(inked[run[0] : run[1] + 1].mean())
            best = _Rhythm(rays, first + run[0], first + run[1], share)
    return best


def _longest(flags: Floats) -> tuple[int, int] | None:
    """First and last index of the longest run of true flags."""
    padded = np.concatenate([[False], flags, [False]]).astype(np.int8)
    starts, ends = np.flatnonzero(np.diff(padded) == 1), np.flatnonzero(np.diff(padded) == -1)
    if not len(starts):
        return None
    at = int(np.argmax(ends - starts))
    return int(starts[at]), int(ends[at]) - 1


def _centred(ink: Pixels) -> Pixels:
    """The patch in the middle of an empty square reaching `REACH` times its radius."""
    side = round(max(ink.shape) * REACH) + 2
    side += (side - max(ink.shape)) % 2
    square = np.zeros((side, side), np.uint8)
    top, left = (side - ink.shape[0]) // 2, (side - ink.shape[1]) // 2
    square[top : top + ink.shape[0], left : left + ink.shape[1]] = ink
    return square


def _unrolled(square: Pixels, radius: float) -> Floats:
    """Rings (rows, from the centre out) by angle, 0 to 1, out to `REACH` times the radius."""
    centre = ((square.shape[1] - 1) / 2, (square.shape[0] - 1) / 2)
    flags = cv2.WARP_POLAR_LINEAR | cv2.INTER_LINEAR
    polar = cv2.warpPolar(square.astype(np.float32), (RINGS, ANGLES), centre, radius * REACH, flags)
    return np.asarray(polar.T, np.float64)


# ---------------------------------------------------------------- long and upright marks


def _long_shape(ink: Pixels, filled: Pixels) -> Shape | None:
    height, width = ink.shape
    if width > height:
        return (
            Shape("wide", 0.85) if width > 1.6 * height and _is_arrow(np.ascontiguousarray(ink.T)) else None
        )
    if height > 1.6 * width and _is_arrow(ink):
        return Shape("tall", 0.85)
    if _is_drop(filled):
        return Shape("drop", 0.75)
    return Shape("thermometer", 0.6) if _is_thermometer(filled) else None


def _profile(patch: Pixels) -> tuple[Floats, Floats]:
    """At `STEPS` heights from the top: how wide the patch is and how far its middle is off the axis, both
    as shares of its width."""
    height, width = patch.shape
    rows = np.linspace(0, height - 1, STEPS).round().astype(int)
    wide, off = np.zeros(STEPS), np.zeros(STEPS)
    for at, row in enumerate(rows):
        places = np.flatnonzero(patch[row])
        if len(places):
            wide[at] = (places[-1] - places[0] + 1) / width
            off[at] = ((places[0] + places[-1]) / 2 - (width - 1) / 2) / width
    return wide, off


def _is_arrow(ink: Pixels) -> bool:
    """An upright shaft with a point at each end: narrow at the tips, widest behind them, thin between."""
    wide, off = _profile(ink)
    shaft = wide[STEPS // 2 - 3 : STEPS // 2 + 3]
    if not (shaft.min() > 0 and shaft.max() < 0.45 and np.abs(off).max() < 0.12):
        return False
    upper, lower = wide[: STEPS // 2], wide[::-1][: STEPS // 2]
    return all(_is_head(half, float(shaft.max())) for half in (upper, lower))


def _is_head(half: Floats, shaft: float) -> bool:
    barb = int(np.argmax(half))
    if not 2 <= barb <= 8:
        return False
    growing = np.diff(half[: barb + 1])
    return (
        half[barb] > 0.85
        and half[0] < 0.5
        and half[barb] > 2.0 * shaft
        and float(growing.min()) > -0.08
        and float(growing.max()) < 0.5
    )


def _is_drop(filled: Pixels) -> bool:
    """A point above, straight or hollow flanks, half a circle below."""
    height, width = filled.shape
    wide, off = _profile(filled)
    if not 1.15 < height / width < 2.0 or np.abs(off).max() > 0.07:
        return False
    widest = int(np.argmax(wide))
    if not 12 <= widest <= 20:
        return False
    flank = wide[: widest + 1]
    rises = float(np.diff(flank).min()) > -0.04 and wide[0] < 0.25 and wide[STEPS // 6] < 0.5
    y = (np.linspace(0, height - 1, STEPS) - (height - width / 2)) / (width / 2)
    bowl = y > 0
    round_below = np.abs(wide[bowl] - np.sqrt(np.clip(1 - y[bowl] ** 2, 0, 1))).mean() < 0.1
    return bool(rises and round_below)


def _is_thermometer(filled: Pixels) -> bool:
    """A straight tube with a round end over a larger bulb."""
    height, width = filled.shape
    wide, off = _profile(filled)
    if not 1.9 < height / width < 4.5 or np.abs(off).max() > 0.08:
        return False
    tube, bulb = wide[3 : STEPS // 2], wide[-round(STEPS * width / height) :]
    round_below = wide[-1] < 0.75 and float(bulb.max()) > 0.9
    return bool(0.3 < tube.mean() < 0.75 and tube.std() < 0.05 and round_below)
