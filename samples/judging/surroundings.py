"""What lies under and around a tag: lid, desk, slats, soil, gravel, leaves, cloth, pots; a finger."""

from __future__ import annotations

import math
from random import Random
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray
from outlines import Outline

Floats = NDArray[Any]


def lay(width: int, height: int, level: str, rng: Random) -> Floats:
    """A ground for this level, as floats of RGB."""
    dice = np.random.default_rng(rng.randint(0, 2**31))
    if level == "easy":
        return rng.choice((_lid, _lid, _desk, _slats))(width, height, dice, rng)
    return rng.choice((_slats, _soil, _gravel, _leaves, _cloth, _pots, _desk))(width, height, dice, rng)


def _cloud(width: int, height: int, cell: float, dice: Any) -> Floats:
    rows, cols = int(height / cell) + 2, int(width / cell) + 2
    return cv2.resize(
        dice.normal(0, 1, (rows, cols)).astype(np.float32), (width, height), interpolation=cv2.INTER_CUBIC
    )


def _flat(width: int, height: int, colour: tuple[int, int, int]) -> Floats:
    return np.full((height, width, 3), colour, np.float32)


def _lid(width: int, height: int, dice: Any, rng: Random) -> Floats:
    ground = _flat(
        width, height, rng.choice(((236, 236, 233), (205, 207, 208), (60, 62, 64), (122, 128, 131)))
    )
    return ground + _cloud(width, height, 300, dice)[..., None] * 1.5  # type: ignore[no-any-return]


def _desk(width: int, height: int, dice: Any, rng: Random) -> Floats:
    ground = _flat(
        width,
        height,
        rng.choice(((168, 152, 130), (92, 104, 116), (70, 82, 66), (196, 190, 180), (128, 60, 52))),
    )
    return (
        ground
        + _cloud(width, height, 220, dice)[..., None] * 6
        + _cloud(width, height, 4, dice)[..., None] * 4
    )  # type: ignore[no-any-return]


def _slats(width: int, height: int, dice: Any, rng: Random) -> Floats:
    """Boards of a potting bench, grey or brown, with gaps."""
    ground = _flat(width, height, rng.choice(((150, 132, 108), (122, 116, 108), (112, 82, 56))))
    grain = cv2.resize(
        dice.normal(0, 1, (height // 3 + 2, width // 120 + 2)).astype(np.float32), (width, height)
    )
    ground += grain[..., None] * 11
    board = rng.randint(260, 520)
    for number, top in enumerate(range(rng.randint(-board, 0), height, board)):
        ground[max(top, 0) : top + board] *= rng.uniform(0.86, 1.1)
        ground[max(top, 0) : max(top + rng.randint(8, 26), 0)] *= 0.3 + 0.02 * number
    return ground if rng.random() < 0.5 else np.ascontiguousarray(_turned(ground, width, height))


def _turned(ground: Floats, width: int, height: int) -> Floats:
    return cv2.resize(np.rot90(ground), (width, height))


def _soil(width: int, height: int, dice: Any, rng: Random) -> Floats:
    ground = _flat(width, height, rng.choice(((62, 46, 36), (84, 66, 50), (48, 40, 36))))
    for cell, strength in ((60, 10), (18, 14), (6, 14), (2.5, 9)):
        ground += _cloud(width, height, cell, dice)[..., None] * strength
    _specks(ground, 260, rng, (4, 13), ((226, 222, 210), (150, 120, 84), (110, 84, 60)))
    return ground


def _gravel(width: int, height: int, dice: Any, rng: Random) -> Floats:
    ground = _flat(width, height, (70, 68, 66))
    tones = ((150, 146, 140), (178, 170, 158), (118, 112, 108), (196, 190, 182), (138, 120, 104))
    _specks(ground, int(width * height / 1500), rng, (16, 40), tones)
    return ground + _cloud(width, height, 5, dice)[..., None] * 7  # type: ignore[no-any-return]


def _specks(ground: Floats, count: int, rng: Random, sizes: tuple[int, int], tones: Any) -> None:
    height, width = ground.shape[:2]
    for _ in range(count):
        at = (rng.randint(0, width), rng.randint(0, height))
        axes = (rng.randint(*sizes), rng.randint(*sizes))
        light = rng.uniform(0.8, 1.1)
        tone = [part * light for part in rng.choice(tones)]
        cv2.ellipse(
            ground, (at[0] + 3, at[1] + 4), axes, rng.uniform(0, 180), 0, 360, [p * 0.4 for p in tone], -1
        )
        cv2.ellipse(ground, at, axes, rng.uniform(0, 180), 0, 360, tone, -1)


def _leaves(width: int, height: int, dice: Any, rng: Random) -> Floats:
    ground = _flat(width, height, (34, 48, 26)) + _cloud(width, height, 80, dice)[..., None] * 9
    for _ in range(230):
        at, long, a = (
            (rng.uniform(0, width), rng.uniform(0, height)),
            rng.uniform(90, 330),
            rng.uniform(0, math.tau),
        )
        tone = np.array(
            rng.choice(((62, 104, 44), (88, 132, 58), (48, 82, 50), (112, 140, 70)))
        ) * rng.uniform(0.7, 1.15)
        points = []
        for t in np.linspace(0, math.tau, 26):
            along, across = (1 - math.cos(t)) / 2 * long, math.sin(t) * long * 0.2
            points.append(
                (
                    at[0] + math.cos(a) * along - math.sin(a) * across,
                    at[1] + math.sin(a) * along + math.cos(a) * across,
                )
            )
        shape = np.array(points, np.int32)
        cv2.fillPoly(ground, [shape + 8], (tone * 0.35).tolist())
        cv2.fillPoly(ground, [shape], tone.tolist(), cv2.LINE_AA)
        tip = (int(at[0] + math.cos(a) * long), int(at[1] + math.sin(a) * long))
        cv2.line(ground, (int(at[0]), int(at[1])), tip, (tone * 1.25).tolist(), 3, cv2.LINE_AA)
    return cv2.GaussianBlur(ground, (0, 0), 2.2)


def _cloth(width: int, height: int, dice: Any, rng: Random) -> Floats:
    """Woven ground cover or a work glove: a fine dark or coloured weave."""
    ys, xs = np.mgrid[0:height, 0:width].astype(np.float32)
    pitch = rng.uniform(9, 16)
    weave = np.sin(xs * math.tau / pitch) * np.sin(ys * math.tau / pitch)
    ground = _flat(width, height, rng.choice(((40, 42, 44), (52, 74, 104), (122, 108, 80))))
    return ground + weave[..., None] * 9 + _cloud(width, height, 400, dice)[..., None] * 9  # type: ignore[no-any-return]


def _pots(width: int, height: int, dice: Any, rng: Random) -> Floats:
    """Rims of black or terracotta pots from above."""
    ground = _flat(width, height, (120, 116, 110)) + _cloud(width, height, 30, dice)[..., None] * 8
    tone = rng.choice(((34, 34, 36), (168, 92, 62)))
    pitch = rng.randint(560, 820)
    for row in range(-1, height // pitch + 2):
        for column in range(-1, width // pitch + 2):
            at = (column * pitch + rng.randint(-30, 30), row * pitch + rng.randint(-30, 30))
            cv2.circle(ground, at, int(pitch * 0.48), tone, -1, cv2.LINE_AA)
            cv2.circle(ground, at, int(pitch * 0.42), (58, 44, 36), -1, cv2.LINE_AA)
            cv2.circle(ground, at, int(pitch * 0.46), [part * 1.4 for part in tone], 6, cv2.LINE_AA)
    return ground + _cloud(width, height, 7, dice)[..., None] * 8  # type: ignore[no-any-return]


def finger(picture: Floats, corners: list[tuple[float, float]], outline: Outline, rng: Random) -> None:
    """A thumb over the rim of the tag, where nothing is printed: it reaches no further than the margin."""
    spot = rng.choice(("left", "right", "below"))
    a, b, c, d = (np.array(corner) for corner in corners)
    margin = min(outline.box[0] / outline.width, 0.09) * 0.5
    if spot == "below" and outline.name in ("stake", "flag"):
        rim, inward = c * 0.5 + d * 0.5, (a * 0.5 + b * 0.5) - (c * 0.5 + d * 0.5)
        depth = 0.05 if outline.name == "stake" else 0.18
    elif spot == "left":
        t = rng.uniform(0.3, 0.8)
        rim, inward, depth = a * (1 - t) + d * t, b - a, margin
    else:
        t = rng.uniform(0.3, 0.8)
        rim, inward, depth = b * (1 - t) + c * t, a - b, margin
    length = float(np.linalg.norm(inward))
    way = inward / length
    wide = max(picture.shape[:2]) * rng.uniform(0.035, 0.05)
    tip = rim + way * (depth * length - wide)
    tone = np.array(
        rng.choice(((222, 170, 140), (196, 140, 108), (120, 78, 56), (240, 196, 170), (84, 54, 40))),
        np.float32,
    )
    pane = picture.copy()
    across = np.array((-way[1], way[0]))
    shape = [tip + way * wide * math.cos(t) + across * wide * math.sin(t) for t in np.linspace(-1.5, 1.5, 24)]
    shape += [tip - way * wide * 14 + across * wide * 1.6, tip - way * wide * 14 - across * wide * 1.6]
    cv2.fillPoly(pane, [np.array(shape, np.int32)], tone.tolist(), cv2.LINE_AA)
    mask = np.zeros(picture.shape[:2], np.float32)
    cv2.fillPoly(mask, [np.array(shape, np.int32)], 1.0, cv2.LINE_AA)
    round_ = cv2.GaussianBlur(mask, (0, 0), wide * 0.5)
    nail = (int(tip[0] + way[0] * wide * 0.25), int(tip[1] + way[1] * wide * 0.25))
    turn = math.degrees(math.atan2(way[1], way[0]))
    cv2.ellipse(
        pane,
        nail,
        (int(wide * 0.55), int(wide * 0.48)),
        turn,
        0,
        360,
        (tone * 1.1 + 14).tolist(),
        -1,
        cv2.LINE_AA,
    )
    picture *= (1 - 0.3 * cv2.GaussianBlur(mask, (0, 0), wide * 0.25) * (1 - mask))[..., None]
    picture += (pane * (0.5 + 0.5 * np.clip(round_, 0, 1))[..., None] - picture) * mask[..., None]
