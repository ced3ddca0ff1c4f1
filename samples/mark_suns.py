"""Draws suns, half suns, suns behind clouds, crescents and discs, each time another."""

from __future__ import annotations

from math import pi
from random import Random

import cv2
import numpy as np
from mark_pen import MID, SIDE, Ink, Sheet, ellipse, polar
from PIL import ImageChops


def sun(lot: Random) -> Ink:
    sheet = Sheet()
    disc, _ = _rays(sheet, lot)
    _disc(sheet, lot, disc)
    return sheet.ink()


def _disc(sheet: Sheet, lot: Random, r: float) -> None:
    style = lot.choice(("filled", "filled", "ring", "ring", "ringed"))
    sheet.disc(0, 0, r, 0 if style == "filled" else lot.uniform(0.12, 0.4) * r)
    if style == "ringed":
        sheet.dot(0, 0, r * lot.uniform(0.3, 0.55))


def _rays(
    sheet: Sheet, lot: Random, part: tuple[float, float] = (0, 2 * pi), most: int = 24
) -> tuple[float, float]:
    """Rays all around or within `part` of the circle; the radius of the disc within, and of the whole."""
    number = lot.choice((8, 8, 8, 12, 12, lot.randint(6, most)))
    start = lot.choice((0.0, pi / number, lot.uniform(0, pi)))
    inner = lot.uniform(0.36, 0.74)
    disc = inner - lot.choice((0.0, lot.uniform(0.05, 0.22)))
    if lot.random() < 0.12:  # one jagged outline instead of rays
        points = [
            polar((inner, 0.97)[k % 2], start + pi * k / max(number, 8)) for k in range(2 * max(number, 8))
        ]
        sheet.area(points)
        return inner * lot.choice((0.6, 0.9)), 0.97
    form = lot.choice(("line", "line", "line", "wedge", "spike", "drop", "outline"))
    width = lot.uniform(0.05, 0.32) * 2 * pi * inner / number
    lengths = (0.97, lot.choice((0.97, 0.97, lot.uniform(inner + 0.12, 0.97))))
    for k in range(number):
        turn = start + 2 * pi * k / number
        if not part[0] - 0.01 <= turn % (2 * pi) <= part[1] + 0.01:
            continue
        _ray(sheet, form, turn, inner, lengths[k % 2], max(width, 0.03))
    return disc, 0.97


def _ray(sheet: Sheet, form: str, turn: float, inner: float, outer: float, width: float) -> None:
    across = polar(width * (1.0 if form == "line" else 1.3), turn + pi / 2)
    (x, y), (u, v) = polar(inner, turn), polar(outer, turn)
    if form == "line":
        sheet.line([(x, y), (u, v)], width)
    elif form == "wedge":
        sheet.area([(x, y), (u + across[0] / 2, v + across[1] / 2), (u - across[0] / 2, v - across[1] / 2)])
    elif form == "drop":
        middle = polar((inner + outer) / 2, turn)
        sheet.area(ellipse(*middle, (outer - inner) / 2, max(width, 0.04), turn))
    else:
        tip = [(x + across[0], y + across[1]), (u, v), (x - across[0], y - across[1])]
        sheet.area(tip, 0.0 if form == "spike" else 0.035)


def half_sun(lot: Random) -> Ink:
    """A disc, one half dark; with rays around or not; or half a sun."""
    sheet = Sheet()
    side = lot.choice((0.0, pi / 2, pi, -pi / 2, lot.choice((1, 3, 5, 7)) * pi / 4))
    if lot.random() < 0.15:
        turn = lot.choice((0.0, pi))
        r = lot.uniform(0.45, 0.8)
        sheet.area([polar(r, turn - pi / 2 + pi * k / 24) for k in range(25)])
        reach = lot.uniform(r + 0.15, 0.97)
        for k in range(number := lot.randint(3, 7)):
            ray = turn - pi / 2 + pi * (k + 0.5) / number
            _ray(sheet, "line", ray, r + lot.uniform(0.03, 0.1), reach, lot.uniform(0.06, 0.12))
        return sheet.ink()
    r = _rays(sheet, lot)[0] if lot.random() < 0.5 else 0.95
    line = lot.uniform(0.05, 0.18) * r
    sheet.disc(0, 0, r, line)
    sheet.area([polar(r, side - pi / 2 + pi * k / 24) for k in range(25)])
    return sheet.ink()


def shade(lot: Random) -> Ink:
    sheet = Sheet()
    sheet.area(ellipse(0, 0, 0.95, 0.95 * lot.uniform(0.94, 1.0)))
    return sheet.ink()


def ring(lot: Random) -> Ink:
    sheet = Sheet()
    sheet.disc(0, 0, 0.95, lot.uniform(0.06, 0.25))
    return sheet.ink()


def crescent(lot: Random) -> Ink:
    """A disc from which another is taken; filled, outlined, or in a ring."""
    disc = Sheet()
    r = 0.95
    disc.dot(0, 0, r)
    turn, away, other = (
        lot.choice((0.0, 0.0, pi, pi, lot.uniform(-0.9, 0.9))),
        lot.uniform(0.25, 0.62),
        lot.uniform(0.72, 0.92),
    )
    bite = Sheet()
    bite.dot(*polar(away, turn), other)
    moon = ImageChops.subtract(disc.image, bite.image)
    style = lot.choice(("filled", "filled", "outline", "outline", "ring"))
    ink = np.asarray(moon, np.uint8)
    if style == "filled":
        return ink
    line = round(lot.uniform(0.05, 0.1) * MID)
    if style == "outline":
        return np.asarray(np.clip(ink - np.minimum(_shrunk(ink, line), ink), 0, 255), np.uint8)
    edge = Sheet()
    edge.disc(0, 0, r, line / MID)
    if lot.random() < 0.5:
        ink = np.asarray(ImageChops.subtract(disc.image, moon), np.uint8)
    return np.maximum(ink, edge.ink())


def _shrunk(ink: Ink, by: int) -> Ink:
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * by + 1, 2 * by + 1))
    return np.asarray(cv2.erode(ink, kernel), np.uint8)


def cloud_sun(lot: Random) -> Ink:
    """A sun behind a cloud."""
    sheet = Sheet()
    disc, _ = _rays(sheet, lot, most=16)
    _disc(sheet, lot, disc)
    side = lot.choice((-1, 1))
    s = lot.uniform(0.45, 0.95)
    small = sheet.image.resize((round(SIDE * s),) * 2)
    whole = Sheet()
    x, y = lot.uniform(0, 0.25), lot.uniform(0.0, 0.2)
    left = round(x * SIDE) if side < 0 else SIDE - small.width - round(x * SIDE)
    whole.image.paste(small, (left, round(y * SIDE * (1 - s))))
    outline = lot.random() < 0.5
    line = lot.uniform(0.06, 0.12)
    size, drop_by = lot.uniform(0.6, 1.0), lot.uniform(-0.1, 0.15)
    puffs = [(-0.55, 0.5, 0.36), (-0.1, 0.28, 0.42), (0.35, 0.38, 0.36), (0.62, 0.58, 0.3)][
        lot.randint(0, 1) :
    ]
    puffs = [(side * px + lot.uniform(-0.1, 0.1), py + lot.uniform(-0.1, 0.1), pr) for px, py, pr in puffs]
    puffs = [(size * (px + side * 0.3 * (1 - size)), drop_by + size * py, size * pr) for px, py, pr in puffs]
    low, mid_y = max(py + pr for _, py, pr in puffs), max(py for _, py, _ in puffs)
    left_x, right_x = min(px for px, _, _ in puffs), max(px for px, _, _ in puffs)
    for grow, ink in ((0.09, 0), (0.0, 255), *(((-line, 0),) if outline else ())):
        for px, py, pr in puffs:
            whole.dot(px, py, pr + grow, ink)
        whole.area([(left_x, mid_y), (right_x, mid_y), (right_x, low + grow), (left_x, low + grow)], ink=ink)
    return whole.ink()
