"""Fonts, colours and pictures: what makes a drawn tag look printed."""

from __future__ import annotations

import random
from functools import lru_cache
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFont

Colour = tuple[int, int, int]
Picture = NDArray[np.uint8]

# ---------------------------------------------------------------- fonts (Debian packages, see README.md)

_TRUE, _OPEN = "/usr/share/fonts/truetype", "/usr/share/fonts/opentype"
_LATO, _GARAMOND = f"{_TRUE}/lato/Lato-%s.ttf", f"{_OPEN}/ebgaramond/EBGaramond12-%s.otf"
_OPEN_SANS, _SLAB = f"{_TRUE}/open-sans/OpenSans-%s.ttf", f"{_OPEN}/roboto/slab/RobotoSlab-%s.otf"
_QUICKSAND, _DOSIS = f"{_TRUE}/quicksand/Quicksand-%s.ttf", f"{_OPEN}/dosis/Dosis-%s.otf"


def _three(pattern: str, italic: str | None = None) -> tuple[str, str, str]:
    return pattern % "Regular", pattern % "Bold", italic or pattern % "Italic"


FAMILIES: dict[str, tuple[str, str, str]] = {
    "open": _three(_OPEN_SANS),
    "lato": _three(_LATO),
    "liberation": _three(f"{_TRUE}/liberation/LiberationSans-%s.ttf"),
    "narrow": _three(f"{_TRUE}/liberation/LiberationSansNarrow-%s.ttf"),
    "condensed": _three(f"{_TRUE}/roboto/unhinted/RobotoCondensed-%s.ttf"),
    "cabin": _three(f"{_OPEN}/cabin/Cabin-%s.otf"),
    "slab": _three(_SLAB, _GARAMOND % "Italic"),
    "garamond": _three(_GARAMOND),
    "vollkorn": _three(f"{_TRUE}/vollkorn/Vollkorn-%s.ttf"),
    "quicksand": _three(_QUICKSAND, _LATO % "Italic"),
    "dosis": (_DOSIS % "Medium", _DOSIS % "Bold", _OPEN_SANS % "Italic"),
    "serif": _three(f"{_TRUE}/liberation/LiberationSerif-%s.ttf"),
}
"""Regular, bold and italic of each family."""

DISPLAY = {
    "bebas": f"{_OPEN}/bebas-neue/BebasNeue-Bold.otf",
    "yanone": f"{_OPEN}/yanone-kaffeesatz/YanoneKaffeesatz-Bold.otf",
    "didot": f"{_OPEN}/didot/GFSDidotBold.otf",
    "comfortaa": f"{_TRUE}/comfortaa/Comfortaa-Bold.ttf",
    "lobstertwo": f"{_OPEN}/lobstertwo/LobsterTwo-Bold.otf",
    "slab": FAMILIES["slab"][1],
    "open": FAMILIES["open"][1],
    "garamond": FAMILIES["garamond"][1],
    "condensed": FAMILIES["condensed"][1],
}
ORNAMENTAL = {
    "lobster": f"{_OPEN}/lobster/lobster.otf",
    "dancing": f"{_OPEN}/dancingscript/DancingScript-Bold.otf",
    "chancery": f"{_OPEN}/urw-base35/Z003-MediumItalic.otf",
    "kristi": f"{_TRUE}/kristi/Kristi.ttf",
    "rufscript": f"{_TRUE}/rufscript/Rufscript010.ttf",
    "isabella": f"{_TRUE}/isabella/Isabella.ttf",
}


@lru_cache(maxsize=512)
def font(path: str, size: int) -> ImageFont.FreeTypeFont:
    if not Path(path).exists():
        raise SystemExit(f"{path} is missing: install the font packages named in samples/README.md.")
    return ImageFont.truetype(path, size)


@lru_cache(maxsize=4096)
def _has(path: str, character: str) -> bool:
    face = font(path, 40)
    return character == " " or bytes(face.getmask(character)) != bytes(face.getmask("\U0010fffd"))


def face_for(path: str, text: str, size: int) -> ImageFont.FreeTypeFont:
    """The font, or a plain one where it lacks a character of the text."""
    fits = all(_has(path, character) for character in set(text))
    return font(path if fits else FAMILIES["open"][1 if "Bold" in path else 0], size)


# ---------------------------------------------------------------- colour

_TRADE = {
    "violet": (118, 68, 170),
    "purple": (110, 50, 140),
    "blue": (96, 100, 200),
    "pink": (228, 110, 160),
    "magenta": (200, 30, 120),
    "white": (240, 240, 232),
    "yellow": (246, 205, 50),
    "orange": (240, 130, 30),
    "red": (200, 36, 44),
    "scarlet": (222, 40, 30),
    "lavender": (170, 150, 215),
    "lilac": (190, 150, 210),
    "coral": (245, 120, 100),
    "salmon": (246, 150, 125),
    "cream": (245, 235, 200),
    "rose": (222, 80, 120),
    "peach": (250, 180, 140),
    "apricot": (248, 175, 110),
    "plum": (100, 30, 80),
    "lime": (180, 210, 70),
    "burgundy": (110, 20, 45),
    "mauve": (180, 130, 180),
    "crimson": (180, 20, 50),
    "buff": (220, 200, 150),
    "tan": (205, 170, 110),
    "golden": (240, 185, 40),
    "cherry": (205, 25, 60),
    "ruby": (150, 15, 50),
}


def flower_colour(words: str) -> Colour:
    for word, colour in _TRADE.items():
        if word in words:
            return colour
    return (214, 120, 170)


def mix(a: Colour, b: Colour, share: float) -> Colour:
    return tuple(int(x + (y - x) * share) for x, y in zip(a, b, strict=True))  # type: ignore[return-value]


# ---------------------------------------------------------------- textures


def cloud(
    height: int, width: int, rng: np.random.Generator, grain: int = 6, octaves: int = 4
) -> NDArray[np.float32]:
    """Smooth random field, 0 to 1: the base of soil, wood, foliage and shadow."""
    total = np.zeros((height, width), np.float32)
    weight = 1.0
    for octave in range(octaves):
        cells = max(2, grain * 2**octave)
        rough = rng.random(
            (
                max(2, cells * height // max(height, width)) + 1,
                max(2, cells * width // max(height, width)) + 1,
            )
        )
        total += weight * cv2.resize(rough.astype(np.float32), (width, height), interpolation=cv2.INTER_CUBIC)
        weight *= 0.55
    low, high = float(total.min()), float(total.max())
    return (total - low) / max(high - low, 1e-6)


def blend(field: NDArray[np.float32], dark: Colour, light: Colour) -> Picture:
    a, b = np.array(dark, np.float32), np.array(light, np.float32)
    return np.clip(a + (b - a) * field[..., None], 0, 255).astype(np.uint8)


# ---------------------------------------------------------------- pictures of plants


def picture(width: int, height: int, art: str, colours: tuple[str, ...], rng: random.Random) -> Image.Image:
    """A photograph-like panel of the plant: foliage in layers, flowers in and out of focus."""
    gen = np.random.default_rng(rng.getrandbits(32))
    green = rng.choice([(52, 96, 40), (40, 84, 56), (74, 110, 44), (30, 66, 36)])
    canvas = blend(
        cloud(height, width, gen, 5), mix(green, (0, 0, 0), 0.65), mix(green, (255, 255, 210), 0.25)
    )
    if art == "tree":
        canvas = blend(cloud(height, width, gen, 3, 3), (140, 180, 220), (225, 235, 245))
    unit = (width * height) ** 0.5
    flower = flower_colour(rng.choice(colours)) if colours else mix(green, (230, 240, 150), 0.5)
    for depth in (0.25, 0.6, 1.0):
        _leaves(canvas, art, green, unit, depth, rng)
        _flowers(canvas, art, flower, green, unit, depth, rng)
        if depth < 1:
            canvas = cv2.GaussianBlur(canvas, (0, 0), max(0.8, unit * 0.012 * (1.1 - depth)))
    light = cloud(height, width, gen, 2, 2)[..., None] * 0.5 + 0.75
    noise = gen.normal(0, 5, canvas.shape)
    return Image.fromarray(np.clip(canvas * light + noise, 0, 255).astype(np.uint8))


def _polygon(canvas: Picture, points: NDArray[np.float64], colour: Colour) -> None:
    cv2.fillPoly(canvas, [np.round(points * 8).astype(np.int32)], colour, cv2.LINE_AA, 3)


def _blade(
    x: float, y: float, angle: float, length: float, width: float, bend: float = 0.2
) -> NDArray[np.float64]:
    t = np.linspace(0, 1, 12)
    side = width * np.sin(np.pi * t) ** 0.8
    curve = bend * length * t**2
    along = np.concatenate([t, t[::-1]]) * length
    across = np.concatenate([side + curve, (curve - side)[::-1]])
    c, s = np.cos(angle), np.sin(angle)
    return np.stack([x + along * c - across * s, y + along * s + across * c], axis=1)


def _leaves(canvas: Picture, art: str, green: Colour, unit: float, depth: float, rng: random.Random) -> None:
    height, width = canvas.shape[:2]
    if art in ("grass", "fern"):
        for _ in range(int(70 * depth) + 15):
            x, y = rng.uniform(0, width), rng.uniform(height * 0.6, height * 1.1)
            colour = mix(green, (225, 225, 140), rng.uniform(0, 0.6))
            angle, size = -np.pi / 2 + rng.uniform(-0.7, 0.7), unit * rng.uniform(0.4, 0.9)
            blade = _blade(x, y, angle, size, unit * 0.008, rng.uniform(-0.5, 0.5))
            _polygon(canvas, blade, colour)
            if art == "fern":
                for k in range(2, 11):
                    for turn in (-1, 1):
                        _polygon(
                            canvas,
                            _blade(*blade[k], angle + turn * 1.0, size * 0.22 * (1 - k / 13), unit * 0.012),
                            colour,
                        )
        return
    count = int((90 if art in ("leaf", "herb", "tree", "rosette") else 45) * (0.5 + depth))
    for _ in range(count):
        size = (
            unit
            * rng.uniform(0.08, 0.2)
            * depth
            * (1.6 if art == "leaf" else 0.8 if art in ("herb", "tree") else 1)
        )
        x, y, angle = rng.uniform(0, width), rng.uniform(0, height), rng.uniform(0, 2 * np.pi)
        if art == "tree":
            x, y = width / 2 + rng.gauss(0, width * 0.16), height * 0.42 + rng.gauss(0, height * 0.15)
        colour = mix(mix(green, (0, 0, 0), rng.uniform(0, 0.5)), (215, 235, 120), rng.uniform(0, 0.45))
        leaf = _blade(x, y, angle, size, size * rng.uniform(0.2, 0.34), rng.uniform(-0.2, 0.2))
        _polygon(canvas, leaf, colour)
        cv2.line(
            canvas,
            tuple(leaf[0].astype(int)),
            tuple(leaf[11].astype(int)),
            mix(colour, (240, 250, 200), 0.35),
            1,
            cv2.LINE_AA,
        )


def _flowers(
    canvas: Picture, art: str, colour: Colour, green: Colour, unit: float, depth: float, rng: random.Random
) -> None:
    height, width = canvas.shape[:2]
    number = {"leaf": 0, "grass": 6, "fern": 0, "tree": 26, "herb": 0}.get(art, 5 + int(7 * depth))
    for _ in range(number):
        x, y, size = (
            rng.uniform(0, width),
            rng.uniform(0, height),
            unit * rng.uniform(0.08, 0.15) * (0.5 + depth),
        )
        tint = mix(colour, rng.choice([(255, 255, 255), (60, 0, 40)]), rng.uniform(0, 0.25))
        if art == "tree":
            x, y = width / 2 + rng.gauss(0, width * 0.18), height * 0.4 + rng.gauss(0, height * 0.15)
            cv2.circle(canvas, (int(x), int(y)), max(2, int(size * 0.2)), tint, -1, cv2.LINE_AA)
        elif art in ("spike", "grass"):
            _spike(canvas, x, y, size, tint, rng)
        elif art == "dome":
            for _ in range(60):
                a, r = rng.uniform(0, 2 * np.pi), size * rng.random() ** 0.5
                spot = mix(tint, (255, 255, 255), rng.uniform(0, 0.5))
                cv2.circle(
                    canvas,
                    (int(x + r * np.cos(a)), int(y + 0.75 * r * np.sin(a))),
                    max(2, int(size * 0.11)),
                    spot,
                    -1,
                    cv2.LINE_AA,
                )
        elif art in ("tomato", "fruit"):
            _round_fruit(canvas, x, y, size * 0.6, (200, 36, 30) if art == "tomato" else (66, 74, 130), green)
        elif art in ("rose", "rosette"):
            base = tint if art == "rose" else mix(green, (200, 230, 215), 0.5)
            for ring in range(6, 0, -1):
                for k in range(ring + 4):
                    a = 2 * np.pi * k / (ring + 4) + ring * 0.6
                    petal = _blade(x, y, a, size * ring / 5, size * ring / 12, 0.15)
                    _polygon(canvas, petal, mix(base, (40, 0, 20), 0.45 - ring * 0.06 + rng.uniform(0, 0.1)))
        else:
            _open_flower(canvas, art, x, y, size, tint, rng)


def _spike(canvas: Picture, x: float, y: float, size: float, tint: Colour, rng: random.Random) -> None:
    lean = rng.uniform(-0.15, 0.15)
    for k in range(26):
        t = k / 26
        spread = size * 0.28 * (1 - t)
        for _ in range(3):
            px, py = x + lean * size * 4 * t + rng.uniform(-spread, spread), y + size * 1.4 - t * size * 3.2
            spot = mix(tint, (20, 0, 30), rng.uniform(0, 0.45))
            cv2.ellipse(
                canvas,
                (int(px), int(py)),
                (max(2, int(size * 0.1)), max(1, int(size * 0.07))),
                rng.uniform(0, 180),
                0,
                360,
                spot,
                -1,
                cv2.LINE_AA,
            )


def _round_fruit(canvas: Picture, x: float, y: float, size: float, colour: Colour, green: Colour) -> None:
    for k in range(8):
        radius = max(1, int(size * (1 - k / 9)))
        centre = (int(x - size * 0.05 * k), int(y - size * 0.05 * k))
        cv2.circle(
            canvas,
            centre,
            radius,
            mix(mix(colour, (0, 0, 0), 0.35), mix(colour, (255, 230, 210), 0.35), k / 8),
            -1,
            cv2.LINE_AA,
        )
    for k in range(5):
        _polygon(canvas, _blade(x, y - size * 0.8, 2 * np.pi * k / 5, size * 0.5, size * 0.08), green)


def _open_flower(
    canvas: Picture, art: str, x: float, y: float, size: float, tint: Colour, rng: random.Random
) -> None:
    petals = {"daisy": 15, "bell": 5, "cup": 6}.get(art, 5)
    wide = {"daisy": 0.12, "bell": 0.3, "cup": 0.34}.get(art, 0.42)
    start = rng.uniform(0, 1)
    for k in range(petals):
        a = 2 * np.pi * k / petals + start
        _polygon(
            canvas, _blade(x, y, a, size, size * wide, 0.1), mix(tint, (50, 0, 40), rng.uniform(0, 0.28))
        )
        cv2.line(
            canvas,
            (int(x), int(y)),
            (int(x + size * 0.7 * np.cos(a)), int(y + size * 0.7 * np.sin(a))),
            mix(tint, (60, 0, 50), 0.4),
            1,
            cv2.LINE_AA,
        )
    heart = (90, 54, 20) if art == "daisy" else mix(tint, (250, 230, 90), 0.6)
    cv2.circle(canvas, (int(x), int(y)), max(2, int(size * 0.24)), heart, -1, cv2.LINE_AA)
    for _ in range(14):
        cv2.circle(
            canvas,
            (int(x + rng.gauss(0, size * 0.1)), int(y + rng.gauss(0, size * 0.1))),
            max(1, int(size * 0.03)),
            mix(heart, (255, 200, 60), 0.5),
            -1,
            cv2.LINE_AA,
        )
