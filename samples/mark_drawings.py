"""Draws pictograms of no one's own: each time another sun, drop or arrow, as tags might print them, and what
is none of them.

What is common to all suns stays (a disc, rays all around); everything else is thrown like dice: number,
length, width and form of rays, filled or outlined, with a gap or without.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin
from random import Random

import numpy as np
from mark_blots import blot
from mark_pen import Ink, Point, Sheet, ellipse, polar
from mark_suns import crescent, half_sun, ring, shade, sun

# ---------------------------------------------------------------- water and cold


def drop(lot: Random) -> Ink:
    sheet = Sheet()
    bowl, hollow = lot.uniform(0.3, 0.72), lot.uniform(0.4, 1.6)
    outline = _drop_outline(bowl, hollow)
    style = lot.choice(("filled", "filled", "outline", "shine", "tinted"))
    if style == "tinted":
        sheet.area(outline, ink=lot.randint(40, 150))
    sheet.area(outline, lot.uniform(0.07, 0.16) if style in ("outline", "tinted") else 0.0)
    if style == "shine":
        side, start = lot.choice((-1, 1)), 0.95 - bowl
        arc = [(side * bowl * 0.6 * sin(a), start + bowl * 0.6 * cos(a)) for a in np.linspace(0.5, 1.5, 8)]
        sheet.line(arc, lot.uniform(0.06, 0.12), 0)
    return sheet.ink()


def _drop_outline(bowl: float, hollow: float) -> list[Point]:
    """From the point above down one flank, around the bowl and up; `hollow` above 1 draws flanks in."""
    centre = 0.95 - bowl
    flank = [(bowl * t**hollow, -0.95 + (centre + 0.95) * t) for t in np.linspace(0, 1, 20)]
    round_below = [(bowl * cos(a), centre + bowl * sin(a)) for a in np.linspace(0, pi, 30)]
    return [*flank, *round_below, *((-x, y) for x, y in reversed(flank))]


def thermometer(lot: Random) -> Ink:
    sheet = Sheet()
    tube, bulb = lot.uniform(0.12, 0.26), lot.uniform(0.26, 0.42)
    bulb = max(bulb, tube * 1.4)
    style, line = lot.choice(("filled", "outline", "outline", "inner")), lot.uniform(0.05, 0.1)
    for shrink, ink in ((0.0, 255), *(((line, 0),) if style != "filled" else ())):
        sheet.dot(0, 0.95 - bulb, bulb - shrink, ink)
        sheet.dot(0, -0.95 + tube, tube - shrink, ink)
        sheet.area(
            [
                (-tube + shrink, -0.95 + tube),
                (tube - shrink, -0.95 + tube),
                (tube - shrink, 0.95 - bulb),
                (-tube + shrink, 0.95 - bulb),
            ],
            ink=ink,
        )
    if style != "filled":
        sheet.dot(0, 0.95 - bulb, (bulb - line) * lot.uniform(0.5, 0.95))
        sheet.line(
            [(0, 0.95 - bulb), (0, lot.uniform(-0.6, 0.3))], max(tube - line, 0.05) * lot.uniform(0.6, 1.3)
        )
    if lot.random() < 0.35:
        side = lot.choice((-1, 1))
        for y in np.linspace(-0.75, 0.1, lot.randint(3, 5)):
            sheet.line([(side * (tube + 0.06), y), (side * (tube + lot.uniform(0.15, 0.25)), y)], 0.06)
    return sheet.ink()


def snow(lot: Random) -> Ink:
    """Six arms, bare or with branches."""
    sheet = Sheet()
    start, width = lot.choice((0.0, pi / 6)), lot.uniform(0.04, 0.17)
    branches = lot.choice((0, 0, 1, 1, 2, 2))
    places = sorted(lot.uniform(0.3, 0.8) for _ in range(branches))
    length, spread = lot.uniform(0.2, 0.4), lot.choice((pi / 3, pi / 4))
    end, heart = lot.choice(("", "", "", "dot", "hexagon")), lot.choice(("", "", "hexagon"))
    for arm in range(6):
        turn = start + pi / 3 * arm
        sheet.line([(0, 0), polar(0.95, turn)], width)
        for place in places:
            x, y = polar(place, turn)
            for way in (-1, 1):
                u, v = polar(length * (1.2 - 0.5 * place), turn + way * spread)
                sheet.line([(x, y), (x + u, y + v)], width * 0.9)
        if end == "dot":
            sheet.dot(*polar(0.85, turn), max(width, 0.09))
    if heart:
        sheet.area([polar(0.3, start + pi / 3 * k) for k in range(6)], width * 0.8)
    return sheet.ink()


# ---------------------------------------------------------------- sizes and bloom


def tall(lot: Random) -> Ink:
    """An arrow up and down."""
    sheet = Sheet()
    head, depth = lot.uniform(0.14, 0.55), lot.uniform(0.2, 0.6)
    shaft = lot.uniform(0.025, 0.5) * head
    style = lot.choice(("open", "open", "filled", "filled", "block", "hollow", "barbed"))
    bar, thick = lot.random() < 0.35, lot.uniform(0.05, 0.14)
    tip = lot.choice((0.88, 0.93)) if bar else 0.95
    if style in ("open",):
        width = max(lot.uniform(0.04, 0.16), 0.05)
        width = min(width, head * 0.7)
        for way in (-1, 1):
            sheet.line([(-head, way * (tip - depth)), (0, way * tip), (head, way * (tip - depth))], width)
        sheet.line([(0, -tip), (0, tip)], width * lot.uniform(0.7, 1.1))
        if lot.random() < 0.2:
            sheet.line([(0, -tip + 0.15), (0, tip - 0.15)], width * 3)
            sheet.line([(0, -tip + 0.2), (0, tip - 0.2)], width * 1.4, 0)
    else:
        notch = depth * (0.35 if style == "barbed" else 0.0)
        shaft = max(shaft, 0.03) if style != "block" else head * lot.uniform(0.3, 0.65)
        line = lot.uniform(0.04, 0.09) if style == "hollow" else 0.0
        half = [(0.0, -tip), (head, -tip + depth), (shaft, -tip + depth - notch)]
        right = [*half, *((x, -y) for x, y in reversed(half))]
        sheet.area([*right, *((-x, y) for x, y in reversed(right))], line)
    if bar:
        end = min(head * lot.uniform(0.9, 2.4), 0.85)
        for way in (-1, 1):
            sheet.line([(-end, way * 0.92), (end, way * 0.92)], thick)
    return sheet.ink()


def wide(lot: Random) -> Ink:
    return np.ascontiguousarray(tall(lot).T)


def apart(lot: Random) -> Ink:
    """Two plants and the arrow between them."""
    sheet = Sheet()
    away, foot = lot.uniform(0.5, 0.72), lot.uniform(0.0, 0.7)
    width = lot.uniform(0.05, 0.12)
    plant = lot.choice((_sprout, _sprout, _tuft, _crown, _bloom))
    alike = lot.random()
    for side in (-1, 1):
        plant(sheet, Random(alike), side * away, foot, width)
    below = lot.random() < 0.6
    level = min(foot + lot.uniform(0.12, 0.3), 0.9) if below else foot - lot.uniform(0.05, 0.35)
    reach = away * lot.uniform(0.85, 1.1) if below else away * lot.uniform(0.5, 0.72)
    head, marked = lot.uniform(0.08, 0.2), below and lot.random() < 0.4
    sheet.line([(-reach, level), (reach, level)], width)
    for side in (-1, 1):
        tips = [
            (side * (reach - head), level - head),
            (side * reach, level),
            (side * (reach - head), level + head),
        ]
        if lot.random() < 0.3:
            sheet.area(tips)
        sheet.line(tips, width)
        if marked:
            sheet.line([(side * away, foot), (side * away, min(level + 0.15, 0.95))], width)
    return sheet.ink()


def _sprout(sheet: Sheet, lot: Random, x: float, foot: float, width: float) -> None:
    """A stem with two leaves."""
    top = foot - lot.uniform(0.5, 0.9)
    size, slant, line = lot.uniform(0.16, 0.3), lot.uniform(0.3, 1.0), lot.choice((0.0, width * 0.8))
    sheet.line([(x, foot), (x, top)], width)
    for way in (-1, 1):
        turn = -pi / 2 + way * slant
        u, v = polar(size, turn)
        sheet.area(ellipse(x + u, top + v, size, size * lot.uniform(0.3, 0.55), turn), line)


def _tuft(sheet: Sheet, lot: Random, x: float, foot: float, width: float) -> None:
    """Blades of grass from one point."""
    tall, count = lot.uniform(0.5, 0.9), lot.randint(3, 5)
    for turn in np.linspace(-0.5, 0.5, count):
        sheet.line([(x, foot), (x + tall * 0.6 * sin(turn), foot - tall * cos(turn))], width)


def _crown(sheet: Sheet, lot: Random, x: float, foot: float, width: float) -> None:
    """A shrub or a tree: a crown on a stem, round or pointed."""
    r, stem = lot.uniform(0.2, 0.34), lot.uniform(0.05, 0.4)
    middle, line = foot - stem - r, lot.choice((0.0, 0.0, width))
    sheet.line([(x, foot), (x, middle)], width)
    if lot.random() < 0.3:
        sheet.area([(x - r, middle + r), (x, middle - 1.3 * r), (x + r, middle + r)], line)
    else:
        sheet.area(ellipse(x, middle, r, r * lot.uniform(0.9, 1.3)), line)


def _bloom(sheet: Sheet, lot: Random, x: float, foot: float, width: float) -> None:
    """A flower on a stem, with a leaf or none."""
    top, r, petals = foot - lot.uniform(0.5, 0.85), lot.uniform(0.09, 0.14), lot.randint(4, 6)
    sheet.line([(x, foot), (x, top)], width)
    for k in range(petals):
        u, v = polar(r, 2 * pi * k / petals)
        sheet.dot(x + u, top + v, r * 0.8)
    if lot.random() < 0.5:
        sheet.area(ellipse(x + 0.14, (foot + top) / 2, 0.14, 0.06, -0.6))


def flower(lot: Random) -> Ink:
    """Petals around a heart, or grown together into one shape of lobes."""
    sheet = Sheet()
    petals = lot.choice((4, 4, 5, 5, 5, 6, 6, 8, lot.randint(7, 10)))
    start = lot.choice((-pi / 2, -pi / 2 + pi / petals, lot.uniform(0, pi)))
    if lot.random() < 0.35:
        _lobes(sheet, lot, petals, start)
        return sheet.ink()
    inner = lot.uniform(0.05, 0.3 if petals < 7 else 0.15)
    length, broad = (
        (0.95 - inner) / 2,
        lot.uniform(0.9, 1.15) * 0.62 * pi / petals * (0.7 if petals > 4 else 0.6),
    )
    broad = min(broad, length * 1.1)
    line = lot.uniform(0.05, 0.1)
    outline = lot.random() < 0.4
    for shrink, ink in ((0.0, 255), (line, 0))[: 1 + outline]:
        for k in range(petals):
            turn = start + 2 * pi * k / petals
            sheet.area(ellipse(*polar(inner + length, turn), length - shrink, broad - shrink, turn), ink=ink)
    _heart(sheet, lot, lot.uniform(0.16, 0.36), line)
    return sheet.ink()


def _lobes(sheet: Sheet, lot: Random, petals: int, start: float) -> None:
    away = lot.uniform(0.42, 0.6)
    r = min(0.95 - away, away * sin(pi / petals) * lot.uniform(1.0, 1.35))
    line, outline = lot.uniform(0.05, 0.1), lot.random() < 0.3
    for shrink, ink in ((0.0, 255), (line, 0))[: 1 + outline]:
        sheet.area(ellipse(0, 0, away - shrink, away - shrink), ink=ink)
        for k in range(petals):
            sheet.dot(*polar(away, start + 2 * pi * k / petals), r - shrink, ink)
    if outline or lot.random() < 0.5:
        _heart(sheet, lot, lot.uniform(0.14, 0.3), line)


def _heart(sheet: Sheet, lot: Random, r: float, line: float) -> None:
    style = lot.choice(("", "hole", "ring", "dot", "full"))
    if style in ("hole", "dot", "ring"):
        sheet.dot(0, 0, r + line, 255 if style == "ring" else 0)
    if style == "ring":
        sheet.dot(0, 0, r, 0)
    elif style in ("dot", "full"):
        sheet.dot(0, 0, r)


DRAWINGS: dict[str, Callable[[Random], Ink]] = {
    "sun": sun,
    "half_sun": half_sun,
    "crescent": crescent,
    "shade": shade,
    "ring": ring,
    "drop": drop,
    "thermometer": thermometer,
    "snow": snow,
    "tall": tall,
    "wide": wide,
    "flower": flower,
    "apart": apart,
    "": blot,
}
"""A way to draw each kind of mark; under no name what is none of them."""
