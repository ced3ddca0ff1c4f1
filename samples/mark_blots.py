"""Draws what stands on tags and is no mark: leaves, boxes, stars, strokes, badges, arrows one way."""

from __future__ import annotations

from math import cos, pi, sin
from random import Random

import numpy as np
from mark_pen import SIDE, Ink, Sheet, polar
from mark_suns import cloud_sun


def blot(lot: Random) -> Ink:
    """A leaf, a heart of lines, a badge: whatever else stands on a tag."""
    if lot.random() < 0.1:  # a sun behind a cloud may mean part sun, or weather
        return cloud_sun(lot)
    sheet = Sheet()
    green = (_leaf, _leaf, _patch, _patch, _cloud)
    draw = lot.choice((*green, _triangle, _box, _star, _strokes, _arc, _badge, _arrow, _check))
    draw(sheet, lot)
    return sheet.ink()


def _leaf(sheet: Sheet, lot: Random) -> None:
    turn, broad = lot.uniform(0, pi), lot.uniform(0.15, 0.5)
    way = np.linspace(-1, 1, 24)
    flank = [(t, broad * (1 - t * t) ** lot.choice((0.8, 1.0, 1.4)) * (1 + 0.3 * t)) for t in way]
    points = [*flank, *((x, -y) for x, y in reversed(flank))]
    sheet.area(
        [(x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)) for x, y in points],
        lot.choice((0.0, 0.0, 0.06)),
    )
    if lot.random() < 0.5:
        sheet.line([polar(-0.9, turn), polar(0.9, turn)], 0.05, 0)


def _patch(sheet: Sheet, lot: Random) -> None:
    number = lot.randint(5, 22)
    rough = lot.uniform(0.2, 0.8)
    points = [polar(0.95 * (1 - rough * lot.random()), 2 * pi * k / number) for k in range(number)]
    stretch = lot.uniform(0.3, 1)
    sheet.area([(x, y * stretch) for x, y in points], lot.choice((0.0, 0.0, 0.07)))


def _box(sheet: Sheet, lot: Random) -> None:
    a, b = lot.uniform(0.3, 0.95), lot.uniform(0.1, 0.95)
    sheet.area([(-a, -b), (a, -b), (a, b), (-a, b)], lot.choice((0.0, lot.uniform(0.05, 0.2))))
    if lot.random() < 0.3:
        sheet.line([(0, -b), (0, b)], 0.08)


def _star(sheet: Sheet, lot: Random) -> None:
    points = lot.choice((4, 5, 5, 6))
    start, inner = -pi / 2, lot.uniform(0.25, 0.6)
    sheet.area(
        [polar((0.95, inner)[k % 2], start + pi * k / points) for k in range(2 * points)],
        lot.choice((0.0, 0.08)),
    )


def _strokes(sheet: Sheet, lot: Random) -> None:
    for _ in range(lot.randint(2, 6)):
        sheet.line(
            [(lot.uniform(-0.9, 0.9), lot.uniform(-0.9, 0.9)) for _ in range(lot.randint(2, 4))],
            lot.uniform(0.05, 0.3),
        )


def _arc(sheet: Sheet, lot: Random) -> None:
    start, along = lot.uniform(0, 2 * pi), lot.uniform(1.5, 5.6)
    sheet.line([polar(0.85, start + along * k / 40) for k in range(41)], lot.uniform(0.08, 0.3))


def _badge(sheet: Sheet, lot: Random) -> None:
    sheet.disc(0, 0, 0.95, lot.choice((0.06, 0.1)))
    inner = Sheet()
    lot.choice((_leaf, _patch, _strokes, _box, _arc))(inner, lot)
    size = round(SIDE * lot.uniform(0.4, 0.65))
    small = inner.image.resize((size, size))
    sheet.image.paste(255, ((SIDE - size) // 2,) * 2, small)


def _arrow(sheet: Sheet, lot: Random) -> None:
    """One head only: says no size."""
    turn, head, width = lot.choice((0, 1, 2, 3)) * pi / 2, lot.uniform(0.2, 0.5), lot.uniform(0.08, 0.25)
    tip, (c, s) = 0.95, (cos(turn), sin(turn))
    for points in ([(-0.95, 0.0), (tip - 0.1, 0.0)], [(tip - head, -head), (tip, 0.0), (tip - head, head)]):
        sheet.line([(x * c - y * s, x * s + y * c) for x, y in points], width)


def _check(sheet: Sheet, lot: Random) -> None:
    sheet.line([(-0.7, 0.1), (-0.2, 0.7), (0.8, -0.7)], lot.uniform(0.1, 0.3))


def _cloud(sheet: Sheet, lot: Random) -> None:
    """A cloud without a sun: it may mean shade, rain or nothing."""
    puffs = [(x, lot.uniform(-0.15, 0.2), lot.uniform(0.25, 0.42)) for x in (-0.5, -0.1, 0.3, 0.55)]
    line = lot.choice((0.0, 0.07, 0.1))
    for shrink, ink in ((0.0, 255), (line, 0))[: 1 + bool(line)]:
        for x, y, r in puffs:
            sheet.dot(x, y, r - shrink, ink)
        sheet.area([(-0.6, 0.1), (0.6, 0.1), (0.6, 0.5 - shrink), (-0.6, 0.5 - shrink)], ink=ink)


def _triangle(sheet: Sheet, lot: Random) -> None:
    """As around a warning."""
    turn = lot.choice((-pi / 2, -pi / 2, pi / 2, 0.0, pi))
    corners = [polar(0.95, turn + 2 * pi * k / 3) for k in range(3)]
    line = lot.choice((0.0, 0.08, 0.12))
    sheet.area(corners, line)
    if line and lot.random() < 0.6:
        sheet.line([(0, -0.3), (0, 0.15)], 0.12)
