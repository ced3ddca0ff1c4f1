"""What lies behind a photographed tag: soil, wood, gravel, concrete, foliage, a hand, pots on a bench."""

from __future__ import annotations

import random

import cv2
import numpy as np
from art import Picture, blend, cloud, mix


def _soil(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    out = blend(cloud(h, w, gen, 40, 4), (14, 20, 30), (58, 78, 100))
    for _ in range(900):
        x, y, size = rng.randrange(w), rng.randrange(h), max(2, int(w * abs(rng.gauss(0, 0.006))))
        colour = mix((20, 30, 45), (80, 105, 135), rng.random()) if rng.random() < 0.93 else (215, 222, 225)
        cv2.ellipse(
            out,
            (x, y),
            (size, max(1, int(size * rng.uniform(0.3, 1)))),
            rng.uniform(0, 180),
            0,
            360,
            colour,
            -1,
            cv2.LINE_AA,
        )
    return out


def _wood(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    wavy = cv2.resize(cloud(h, max(8, w // 30), gen, 60, 3), (w, h), interpolation=cv2.INTER_CUBIC)
    fine = cv2.resize(
        gen.random((h, max(4, w // 90))).astype(np.float32), (w, h), interpolation=cv2.INTER_CUBIC
    )
    stretched = wavy * 0.6 + cv2.GaussianBlur(fine, (0, 0), 1.2) * 0.4
    dark, light = rng.choice(
        [((50, 80, 112), (120, 160, 195)), ((92, 100, 108), (165, 172, 178)), ((40, 60, 90), (85, 120, 155))]
    )
    out = blend(stretched, dark, light)
    plank = int(h * rng.uniform(0.18, 0.35))
    for y in range(rng.randrange(plank), h, plank):
        cv2.line(
            out, (0, y), (w, y + rng.randint(-6, 6)), mix(dark, (0, 0, 0), 0.7), max(3, h // 260), cv2.LINE_AA
        )
    return out


def _gravel(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    out = np.full((h, w, 3), (54, 60, 64), np.uint8)
    size = max(8, w // 46)
    for _ in range(int(h * w / size**2 * 1.5)):
        x, y, a = rng.randrange(w), rng.randrange(h), rng.uniform(0.5, 1.2) * size
        grey = rng.randint(88, 200)
        axes, turn = (int(a), int(a * rng.uniform(0.5, 0.95))), rng.uniform(0, 180)
        cv2.ellipse(out, (x + 3, y + 4), axes, turn, 0, 360, (30, 34, 36), -1, cv2.LINE_AA)
        cv2.ellipse(out, (x, y), axes, turn, 0, 360, (grey - 14, grey - 5, grey), -1, cv2.LINE_AA)
    return out


def _concrete(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    out = blend(cloud(h, w, gen, 4, 6), (128, 134, 138), (188, 192, 194)).astype(np.float32)
    return np.clip(out + gen.normal(0, 9, (h, w, 1)), 0, 255).astype(np.uint8)


def _foliage(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    green = rng.choice([(50, 110, 60), (40, 90, 46), (70, 120, 96)])
    out = blend(cloud(h, w, gen, 6), (12, 26, 14), green)
    for _ in range(240):
        x, y, size, turn = (
            rng.randrange(w),
            rng.randrange(h),
            int(w * rng.uniform(0.02, 0.07)),
            rng.uniform(0, 360),
        )
        colour = mix(mix(green, (0, 0, 0), rng.uniform(0, 0.6)), (150, 230, 190), rng.uniform(0, 0.35))
        cv2.ellipse(out, (x, y), (size, int(size * 0.4)), turn, 0, 360, colour, -1, cv2.LINE_AA)
        tip = (int(x + size * np.cos(np.radians(turn))), int(y + size * np.sin(np.radians(turn))))
        cv2.line(
            out, (2 * x - tip[0], 2 * y - tip[1]), tip, mix(colour, (190, 240, 210), 0.3), 2, cv2.LINE_AA
        )
    return cv2.GaussianBlur(out, (0, 0), w / rng.choice([900, 300, 160]))


def _skin(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    out = _foliage(h, w, rng, gen)
    tone = rng.choice([(150, 178, 222), (110, 140, 190), (64, 88, 130), (130, 160, 210)])
    shade = blend(cloud(h, w, gen, 5, 5), mix(tone, (0, 0, 0), 0.3), mix(tone, (255, 255, 255), 0.12))
    mask = np.zeros((h, w), np.uint8)
    thick = int(min(h, w) * 0.17)
    cv2.ellipse(mask, (w // 2, int(h * 0.95)), (int(w * 0.42), int(h * 0.42)), 0, 0, 360, 255, -1)
    for k in range(4):
        x = int(w * (0.2 + 0.19 * k))
        cv2.line(
            mask, (x, int(h * 0.8)), (x + rng.randint(-60, 60), int(h * rng.uniform(0.16, 0.34))), 255, thick
        )
    soft = cv2.GaussianBlur(mask, (0, 0), 3).astype(np.float32)[..., None] / 255
    depth = cv2.GaussianBlur(mask, (0, 0), thick / 5).astype(np.float32)[..., None] / 255
    return np.clip(out * (1 - soft) + shade * (0.45 + 0.55 * depth) * soft, 0, 255).astype(np.uint8)


def _bench(h: int, w: int, rng: random.Random, gen: np.random.Generator) -> Picture:
    """Black plastic pots on a wire bench, out of focus."""
    out, soil = blend(cloud(h, w, gen, 8, 4), (30, 32, 34), (92, 96, 98)), _soil(h, w, rng, gen)
    leaves = _foliage(h, w, rng, gen)
    size = int(min(h, w) * rng.uniform(0.16, 0.26))
    for row in range(-1, h // (2 * size) + 2):
        for column in range(-1, w // (2 * size) + 2):
            x = int((2 * column + row % 2) * size * 1.06 + rng.gauss(0, size * 0.05))
            y = int(row * 1.9 * size + rng.gauss(0, size * 0.05))
            disc = cv2.circle(np.zeros((h, w), np.uint8), (x, y), int(size * 0.88), 255, -1)
            cv2.circle(out, (x, y), size, (26, 26, 28), -1, cv2.LINE_AA)
            cv2.circle(out, (x, y), size, (62, 64, 68), max(2, size // 22), cv2.LINE_AA)
            out[disc > 0] = soil[disc > 0]
            tuft = cv2.circle(np.zeros((h, w), np.uint8), (x, y), int(size * rng.uniform(0.3, 0.8)), 255, -1)
            rough = cv2.GaussianBlur(tuft, (0, 0), size / 10).astype(np.float32) / 255 > cloud(
                h, w, gen, 50, 2
            )
            out[rough] = leaves[rough]
    return cv2.GaussianBlur(out, (0, 0), w / rng.choice([500, 240, 160]))


GROUNDS = {
    "soil": _soil,
    "wood": _wood,
    "gravel": _gravel,
    "concrete": _concrete,
    "foliage": _foliage,
    "skin": _skin,
    "bench": _bench,
}


def ground(kind: str, height: int, width: int, rng: random.Random) -> Picture:
    """A background, drawn at a third of the size and sharpened by fine grain."""
    gen = np.random.default_rng(rng.getrandbits(32))
    small = GROUNDS[kind](height // 2, width // 2, rng, gen)
    large = cv2.resize(small, (width, height), interpolation=cv2.INTER_CUBIC).astype(np.float32)
    return np.clip(large + gen.normal(0, 4, (height, width, 1)), 0, 255).astype(np.uint8)
