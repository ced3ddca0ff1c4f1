"""Flowers, leaves and fruits painted by lot, out of focus behind and sharp in front."""

from __future__ import annotations

import math
from random import Random

import cv2
import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFilter

Colour = tuple[int, int, int]
HUES: dict[str, Colour] = {
    "pink": (232, 120, 165), "rose": (214, 80, 130), "red": (200, 30, 40), "scarlet": (214, 36, 30),
    "yellow": (246, 205, 50), "violet": (120, 80, 180), "blue": (70, 95, 200), "white": (245, 244, 238),
    "purple": (125, 50, 140), "gold": (240, 180, 40), "orange": (240, 130, 40), "cream": (246, 236, 205),
    "lilac": (180, 150, 215), "lavender": (165, 140, 210), "magenta": (200, 30, 120),
    "silver": (185, 195, 190), "coral": (245, 115, 95), "burgundy": (115, 20, 50), "lime": (180, 215, 80),
    "chartreuse": (190, 215, 70), "crimson": (170, 15, 45), "bronze": (150, 105, 60),
    "buff": (215, 190, 140), "copper": (190, 95, 50), "apricot": (248, 180, 120), "indigo": (60, 55, 140),
    "mauve": (170, 130, 175), "salmon": (245, 150, 125), "cobalt": (35, 70, 190), "maroon": (110, 20, 40),
}  # fmt: skip


def hue(words: str, rng: Random) -> Colour:
    for word in words.replace("-", " ").split():
        if word in HUES:
            return HUES[word]
    return rng.choice(list(HUES.values()))


def paint(kind: str, colour: Colour, size: tuple[int, int], rng: Random) -> Image.Image:
    """A picture of the plant: a soft green ground, blurred plants behind, a few sharp ones in front."""
    w, h = size
    ground = _ground(size, rng)
    for layer, blur in ((7, min(w, h) / 28), (6, min(w, h) / 90), (5, 0.6)):
        pane = Image.new("RGBA", size, (0, 0, 0, 0))
        pencil = ImageDraw.Draw(pane)
        for _ in range(layer):
            at = (rng.uniform(0.02, 0.98) * w, rng.uniform(0.1, 1.0) * h)
            DRAWN.get(kind, _leaves)(
                pencil, at, min(w, h) * rng.uniform(0.11, 0.2), _shade(colour, rng, 26), rng
            )
        ground.paste(
            pane.filter(ImageFilter.GaussianBlur(blur)), (0, 0), pane.filter(ImageFilter.GaussianBlur(blur))
        )
    grain = np.random.default_rng(rng.randint(0, 10**9)).normal(0, 3.5, (h, w, 1))
    return Image.fromarray(np.clip(np.asarray(ground, np.float32) + grain, 0, 255).astype(np.uint8))


def _ground(size: tuple[int, int], rng: Random) -> Image.Image:
    dice = np.random.default_rng(rng.randint(0, 10**9))
    small = dice.normal(0, 1, (9, 9)).astype(np.float32)
    soft: NDArray[np.float32] = cv2.resize(small, size, interpolation=cv2.INTER_CUBIC)
    base = np.array(rng.choice(((52, 92, 40), (78, 112, 52), (38, 72, 48), (96, 120, 70))), np.float32)
    return Image.fromarray(
        np.clip(base + soft[..., None] * np.array([18, 22, 14], np.float32), 0, 255).astype(np.uint8)
    )


def _shade(colour: Colour, rng: Random, by: int) -> Colour:
    move = rng.randint(-by, by)
    r, g, b = (max(0, min(255, part + move)) for part in colour)
    return r, g, b


def _petal(
    pen: ImageDraw.ImageDraw, at: tuple[float, float], angle: float, long: float, wide: float, colour: Colour
) -> None:
    cx, cy = at
    outline = []
    for step in range(17):
        t = step / 16 * math.tau
        along, across = (1 - math.cos(t)) / 2 * long, math.sin(t) * wide * (0.6 + 0.4 * (1 - math.cos(t)) / 2)
        outline.append(
            (
                cx + math.cos(angle) * along - math.sin(angle) * across,
                cy + math.sin(angle) * along + math.cos(angle) * across,
            )
        )
    dark = tuple(int(part * 0.72) for part in colour)
    pen.polygon(outline, fill=(*colour, 255), outline=(*dark, 255))
    pen.line(
        (cx, cy, cx + math.cos(angle) * long * 0.7, cy + math.sin(angle) * long * 0.7),
        fill=(*dark, 255),
        width=2,
    )


def _ring(pen, at, r, colour, rng, petals, wide, eye):  # type: ignore[no-untyped-def]
    turn = rng.uniform(0, math.tau)
    for step in range(petals):
        _petal(
            pen,
            at,
            turn + step * math.tau / petals,
            r * rng.uniform(0.88, 1.05),
            r * wide,
            _shade(colour, rng, 14),
        )
    if eye:
        e = r * 0.26
        pen.ellipse((at[0] - e, at[1] - e, at[0] + e, at[1] + e), fill=(*eye, 255))


def _daisy(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    _ring(pen, at, r, colour, rng, rng.randint(13, 20), 0.13, (120, 70, 25))


def _open(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    _ring(pen, at, r, colour, rng, rng.choice((5, 5, 6)), 0.34, (235, 210, 90))


def _double(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for part in (1.0, 0.78, 0.56, 0.35):
        _ring(pen, at, r * part, _shade(colour, rng, 20), rng, 11, 0.24, None)


def _ball(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(70):
        a, d = rng.uniform(0, math.tau), r * 0.75 * math.sqrt(rng.random())
        spot = (at[0] + math.cos(a) * d, at[1] + math.sin(a) * d)
        _ring(pen, spot, r * 0.17, _shade(colour, rng, 30), rng, 5, 0.35, None)


def _umbel(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(60):
        a, d = rng.uniform(0, math.tau), r * math.sqrt(rng.random())
        spot = (at[0] + math.cos(a) * d, at[1] + math.sin(a) * d * 0.55)
        _ring(pen, spot, r * 0.15, _shade(colour, rng, 24), rng, 5, 0.4, None)


def _spike(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    lean = rng.uniform(-0.25, 0.25)
    pen.line(
        (at[0] + lean * r * 2, at[1] + r * 1.6, at[0], at[1] - r * 1.6),
        fill=(70, 110, 50, 255),
        width=max(int(r / 14), 2),
    )
    for step in range(44):
        t = step / 43
        wide = r * 0.34 * (1 - t * 0.75)
        spot = (at[0] + lean * r * (1 - 2 * t) + rng.uniform(-wide, wide), at[1] + r * (1.1 - 2.7 * t))
        _petal(
            pen, spot, rng.uniform(0, math.tau), r * 0.24 * (1 - t * 0.5), r * 0.07, _shade(colour, rng, 30)
        )


def _plume(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(150):
        t = rng.random()
        wide = r * 0.6 * (1 - t)
        spot = (at[0] + rng.uniform(-wide, wide), at[1] + r * (0.8 - 2.2 * t))
        e = r * rng.uniform(0.03, 0.07)
        pen.ellipse(
            (spot[0] - e, spot[1] - e, spot[0] + e, spot[1] + e), fill=(*_shade(colour, rng, 36), 255)
        )


def _bell(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(5):
        spot = (at[0] + rng.uniform(-r, r), at[1] + rng.uniform(-r, r))
        tint = _shade(colour, rng, 20)
        pen.line((spot[0], spot[1] - r * 0.6, spot[0], spot[1]), fill=(80, 120, 60, 255), width=3)
        pen.pieslice(
            (spot[0] - r * 0.3, spot[1] - r * 0.1, spot[0] + r * 0.3, spot[1] + r * 0.9),
            180,
            360,
            fill=(*tint, 255),
        )
        for side in (-0.2, 0, 0.2):
            _petal(pen, (spot[0] + side * r, spot[1] + r * 0.3), math.pi / 2 + side, r * 0.3, r * 0.1, tint)


def _blades(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(34):
        lean, long = rng.uniform(-1.1, 1.1), r * rng.uniform(1.2, 2.6)
        tint = _shade((110, 140, 70), rng, 40)
        points = [(at[0] + lean * long * (t / 8) ** 2, at[1] + r - long * t / 8) for t in range(9)]
        pen.line(points, fill=(*tint, 255), width=max(int(r / 22), 2), joint="curve")


def _frond(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for lean in (-0.9, -0.3, 0.35, 0.95):
        for step in range(22):
            t = step / 21
            spot = (at[0] + lean * r * 1.6 * t, at[1] + r - r * 2.3 * t * (1 - 0.3 * t * abs(lean)))
            for side in (-1, 1):
                angle = -math.pi / 2 + lean * t + side * 1.2
                _petal(pen, spot, angle, r * 0.5 * (1 - t) + 4, r * 0.06, _shade((70, 130, 60), rng, 24))


def _leaves(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(11):
        spot = (at[0] + rng.uniform(-r, r) * 0.8, at[1] + rng.uniform(-r, r) * 0.8)
        tint = _shade(colour if max(colour) - min(colour) < 60 else (80, 135, 62), rng, 34)
        _petal(pen, spot, rng.uniform(0, math.tau), r * 0.95, r * 0.27, tint)


def _berries(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    _leaves(pen, at, r, (80, 135, 62), rng)
    tint = rng.choice(((190, 25, 35), (50, 40, 95), (240, 240, 235), (120, 40, 130)))
    for _ in range(14):
        x, y, e = at[0] + rng.uniform(-r, r) * 0.6, at[1] + rng.uniform(-r, r) * 0.6, r * 0.17
        pen.ellipse((x - e, y - e, x + e, y + e), fill=(*_shade(tint, rng, 16), 255))
        pen.ellipse((x - e * 0.5, y - e * 0.6, x - e * 0.1, y - e * 0.2), fill=(255, 255, 255, 170))


def _rosette(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for part in (1.0, 0.8, 0.6, 0.4):
        _ring(pen, at, r * part, _shade((120, 165, 125), rng, 22), rng, 10, 0.2, None)


def _needles(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    for _ in range(90):
        a, long = rng.uniform(0, math.tau), r * rng.uniform(0.5, 1.2)
        tint = _shade((70, 120, 105), rng, 30)
        end = (at[0] + math.cos(a) * long, at[1] + math.sin(a) * long)
        pen.line((*at, *end), fill=(*tint, 255), width=max(int(r / 26), 2))


def _fruit(pen, at, r, colour, rng):  # type: ignore[no-untyped-def]
    _leaves(pen, at, r, (80, 135, 62), rng)
    tint = rng.choice(((60, 110, 45), (200, 50, 35), (90, 40, 100), (225, 180, 60)))
    pen.ellipse((at[0] - r * 0.4, at[1] - r * 0.7, at[0] + r * 0.4, at[1] + r * 0.8), fill=(*tint, 255))
    pen.ellipse(
        (at[0] - r * 0.25, at[1] - r * 0.5, at[0] - r * 0.1, at[1] + r * 0.1), fill=(255, 255, 255, 90)
    )


DRAWN = {
    "daisy": _daisy, "open": _open, "double": _double, "ball": _ball, "umbel": _umbel, "cloud": _umbel,
    "spike": _spike, "plume": _plume, "bell": _bell, "blades": _blades, "frond": _frond, "leafy": _leaves,
    "berry": _berries, "rosette": _rosette, "needle": _needles, "fruit": _fruit, "trumpet": _open,
    "branch": _open, "cup": _open, "spathe": _leaves, "drop": _plume, "maple": _leaves, "oak": _leaves,
    "fan": _leaves,
}  # fmt: skip
