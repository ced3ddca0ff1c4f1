"""Shapes of tags: size on the press, outline, holes, and where print may stand."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random

Point = tuple[float, float]
Box = tuple[float, float, float, float]  # x, y, width, height


@dataclass(frozen=True, slots=True)
class Outline:
    """Pixels on the press; `body` is the letter size its layouts begin with, `least` where they end."""

    name: str
    width: int
    height: int
    border: list[Point]
    box: Box
    body: float
    least: float
    holes: list[list[Point]] = field(default_factory=list)


def _ellipse(cx: float, cy: float, rx: float, ry: float) -> list[Point]:
    return [(cx + math.cos(a * math.tau / 40) * rx, cy + math.sin(a * math.tau / 40) * ry) for a in range(40)]


def rounded(w: float, h: float, r: float, x: float = 0, y: float = 0) -> list[Point]:
    corners = ((w - r, r, -90), (w - r, h - r, 0), (r, h - r, 90), (r, r, 180))
    return [
        (
            x + cx + math.cos(math.radians(start + step * 10)) * r,
            y + cy + math.sin(math.radians(start + step * 10)) * r,
        )
        for cx, cy, start in corners
        for step in range(10)
    ]


def stake(rng: Random) -> Outline:
    """Tall, narrow, pointed below."""
    w, h = rng.randint(560, 700), rng.randint(2500, 3100)
    point = w * rng.uniform(0.7, 1.2)
    top = rounded(w, 200, min(w * rng.choice((0.04, 0.2, 0.45)), 99))[:10]
    left = [(w - x, y) for x, y in reversed(top)]
    border = [*left, *top, (w, h - point), (w / 2 + 20, h), (w / 2 - 20, h), (0, h - point)]
    return Outline("stake", w, h, border, (w * 0.09, 90, w * 0.82, h - point - 130), 50, 40)


def flag(rng: Random) -> Outline:
    """A wide head on a narrow leg."""
    w, head = rng.randint(1250, 1500), rng.randint(1300, 1650)
    h = head + rng.randint(500, 800)
    leg = w * rng.uniform(0.2, 0.3)
    border = [*rounded(w, head, 70)[:20], (w / 2 + leg / 2, head), (w / 2 + leg * 0.4, h - 150), (w / 2, h)]
    border += [(w / 2 - leg * 0.4, h - 150), (w / 2 - leg / 2, head), *rounded(w, head, 70)[20:]]
    return Outline("flag", w, h, border, (80, 70, w - 160, head - 140), 58, 42)


def hang(rng: Random) -> Outline:
    """A card with a hole or a slit above."""
    w, h = rng.randint(1150, 1400), rng.randint(1900, 2300)
    hole = _ellipse(w / 2, 130, 48, 48) if rng.random() < 0.6 else rounded(180, 40, 19, w / 2 - 90, 110)
    return Outline(
        "hang", w, h, rounded(w, h, rng.choice((12, 60, 110))), (90, 230, w - 180, h - 310), 58, 42, [hole]
    )


def square(rng: Random) -> Outline:
    w = rng.randint(1450, 1700)
    return Outline(
        "square", w, w, rounded(w, w, rng.choice((8, 50, 120))), (100, 90, w - 200, w - 180), 58, 42
    )


def wide(rng: Random) -> Outline:
    w, h = rng.randint(1900, 2200), rng.randint(1200, 1450)
    return Outline("wide", w, h, rounded(w, h, rng.choice((8, 40, 90))), (90, 80, w - 180, h - 160), 58, 42)


def bench(rng: Random) -> Outline:
    """A card that stands on the bench of the shop."""
    w, h = rng.randint(1800, 2000), rng.randint(2300, 2600)
    return Outline("bench", w, h, rounded(w, h, 10), (130, 120, w - 260, h - 240), 84, 50)


def loop(rng: Random) -> Outline:
    """A long strip whose tail goes round the stem and through the slit of its head."""
    w, h = rng.randint(2900, 3300), rng.randint(620, 760)
    border = [*rounded(w, h, 50)[:20], *rounded(w, h, 50)[20:]]
    border = [
        (0, h * 0.36),
        (420, h * 0.3),
        (520, 0),
        (w - 40, 0),
        (w, 40),
        (w, h - 40),
        (w - 40, h),
        (520, h),
    ]
    border += [(420, h * 0.7), (0, h * 0.64)]
    slit = rounded(34, h * 0.5, 16, w - 110, h * 0.25)
    return Outline("loop", w, h, border, (590, 60, w - 790, h - 120), 56, 44, [slit])


def wrap(rng: Random) -> Outline:
    """A band round the pot, a little wider above than below."""
    w, h = rng.randint(2900, 3300), rng.randint(950, 1150)
    sag = h * 0.06
    above = [(w * t / 20, sag * (1 - math.sin(math.pi * t / 20))) for t in range(21)]
    below = [
        (w * (0.03 + 0.94 * t / 20), h - sag * math.sin(math.pi * (1 - t / 20)) * 0.2)
        for t in range(20, -1, -1)
    ]
    return Outline("wrap", w, h, [*above, *below], (w * 0.06, 110, w * 0.88, h - 200), 58, 46)


def thermal(rng: Random) -> Outline:
    w, h = rng.randint(1550, 1900), rng.randint(1000, 1250)
    return Outline("thermal", w, h, rounded(w, h, rng.choice((20, 45))), (70, 60, w - 140, h - 120), 56, 42)


SHAPES: dict[str, tuple[Callable[[Random], Outline], float]] = {
    "stake": (stake, 3),
    "flag": (flag, 2),
    "hang": (hang, 2.2),
    "square": (square, 1.5),
    "wide": (wide, 2.2),
    "bench": (bench, 0.8),
    "loop": (loop, 1),
    "wrap": (wrap, 1),
    "thermal": (thermal, 1.3),
}
