"""Marks beside or instead of words, each in three invented drawing styles."""

from __future__ import annotations

import math

from press import Pen


def draw(pen: Pen, name: str, x: float, y: float, side: float) -> None:
    """Draws the mark into the square at (x, y); a side keeps to one style."""
    if pen.dry:
        return
    style = (len(pen.family.regular) + sum(pen.accent)) % 3
    thick = max(int(side / 14), 2)
    if style == 2:
        pen.draw.rounded_rectangle((x, y, x + side, y + side), side * 0.2, fill=pen.accent)
        DRAWN[name](pen, x + side * 0.14, y + side * 0.14, side * 0.72, thick, pen.paper, True)
    else:
        DRAWN[name](pen, x, y, side, thick, pen.accent, style == 1)


def _sun(pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool) -> None:
    cx, cy, r = x + s / 2, y + s / 2, s * 0.24
    pen.draw.ellipse((cx - r, cy - r, cx + r, cy + r), fill=ink if solid else None, outline=ink, width=thick)
    for step in range(8):
        a = step * math.pi / 4
        pen.draw.line(
            (
                cx + math.cos(a) * s * 0.32,
                cy + math.sin(a) * s * 0.32,
                cx + math.cos(a) * s * 0.48,
                cy + math.sin(a) * s * 0.48,
            ),
            ink,
            thick,
        )


def _half(pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool) -> None:
    box = (x + s * 0.12, y + s * 0.12, x + s * 0.88, y + s * 0.88)
    pen.draw.ellipse(box, outline=ink, width=thick)
    pen.draw.pieslice(box, 90, 270, fill=ink)


def _shade(
    pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool
) -> None:
    pen.draw.ellipse((x + s * 0.12, y + s * 0.12, x + s * 0.88, y + s * 0.88), fill=ink)


def _drop(pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool) -> None:
    outline = [(x + s / 2, y + s * 0.04)]
    for step in range(13):
        a = math.radians(-20 + step * 220 / 12)
        outline.append((x + s / 2 + math.cos(a) * s * 0.28, y + s * 0.64 + math.sin(a) * s * 0.28))
    pen.draw.polygon(outline, fill=ink if solid else None, outline=ink, width=thick)


def _arrow(
    pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], upright: bool
) -> None:
    a, b, tip = s * 0.08, s * 0.92, s * 0.18
    points = [((s / 2, a), (s / 2, b))]
    for end, way in ((a, 1), (b, -1)):
        points += [((s / 2, end), (s / 2 + side * tip, end + way * tip)) for side in (-1, 1)]
    for start, stop in points:
        pair = (start, stop) if upright else (start[::-1], stop[::-1])
        pen.draw.line((x + pair[0][0], y + pair[0][1], x + pair[1][0], y + pair[1][1]), ink, thick + 1)


def _rise(pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool) -> None:
    _arrow(pen, x, y, s, thick, ink, True)


def _reach(
    pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool
) -> None:
    _arrow(pen, x, y, s, thick, ink, False)


def _apart(
    pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool
) -> None:
    _arrow(pen, x, y + s * 0.2, s, thick, ink, False)
    for at in (0.1, 0.9):
        pen.draw.ellipse((x + s * at - s * 0.1, y + s * 0.1, x + s * at + s * 0.1, y + s * 0.3), fill=ink)


def _flower(
    pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool
) -> None:
    for step in range(6):
        a = step * math.pi / 3
        cx, cy, r = x + s / 2 + math.cos(a) * s * 0.26, y + s / 2 + math.sin(a) * s * 0.26, s * 0.17
        pen.draw.ellipse(
            (cx - r, cy - r, cx + r, cy + r), fill=ink if solid else None, outline=ink, width=thick
        )


def _cold(pen: Pen, x: float, y: float, s: float, thick: int, ink: tuple[int, int, int], solid: bool) -> None:
    cx = x + s / 2
    pen.draw.rounded_rectangle(
        (cx - s * 0.1, y + s * 0.05, cx + s * 0.1, y + s * 0.72), s * 0.1, outline=ink, width=thick
    )
    pen.draw.ellipse((cx - s * 0.2, y + s * 0.58, cx + s * 0.2, y + s * 0.97), fill=ink)
    pen.draw.line((cx, y + s * 0.4, cx, y + s * 0.7), ink, thick + 1)


DRAWN = {
    "sun": _sun,
    "half": _half,
    "shade": _shade,
    "drop": _drop,
    "rise": _rise,
    "reach": _reach,
    "apart": _apart,
    "flower": _flower,
    "cold": _cold,
}
