"""From a flat printed side to a photograph of it: shape, bend, place, light, lens, file.

`photograph` keeps the way of every corner, so that the truth says where the tag lies in the picture.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
from art import Picture, blend, cloud, mix
from grounds import GROUNDS, ground
from numpy.typing import NDArray
from PIL import Image, ImageDraw

Floats = NDArray[np.float32]


@dataclass(frozen=True)
class Photo:
    """A finished photograph, BGR; `corners` from the tag's own top left clockwise, in its pixels.

    `turn` is how far, clockwise, the print is turned from upright, to the nearest quarter.
    """

    pixels: Picture
    corners: tuple[tuple[int, int], ...]
    turn: int


# ---------------------------------------------------------------- the tag as a thing


def cut_out(side: Image.Image, shape: str, rng: random.Random) -> Picture:
    """BGRA with the outline of its kind: a stake's point, a hang tag's hole, rounded corners; some dirt."""
    width, height = side.size
    tail = int(height * rng.uniform(0.16, 0.3)) if "stake" in shape else 0
    edge = side.getpixel((4, height - 4))
    full = Image.new("RGB", (width, height + tail), edge if rng.random() < 0.5 else (244, 244, 240))
    full.paste(side, (0, 0))
    mask = Image.new("L", full.size, 0)
    pen = ImageDraw.Draw(mask)
    radius = int(min(width, height) * rng.choice([0.0, 0.03, 0.06]))
    pen.rounded_rectangle((0, 0, width - 1, height + (radius if tail else -1)), radius, fill=255)
    if tail:
        waist = width * rng.uniform(0.05, 0.22)
        pen.polygon(
            [
                (0, height),
                (width, height),
                (width - waist, height + tail * 0.75),
                (width / 2, height + tail),
                (waist, height + tail * 0.75),
            ],
            fill=255,
        )
    if shape == "hang":
        hole = width * 0.045
        pen.ellipse((width / 2 - hole, hole * 0.7, width / 2 + hole, hole * 2.7), fill=0)
    pixels = cv2.cvtColor(np.asarray(full), cv2.COLOR_RGB2BGR)
    return np.dstack([pixels, np.asarray(mask)])


def wear(tag: Picture, rng: random.Random, amount: float) -> Picture:
    """Fading, grain, specks of soil and scratches."""
    gen = np.random.default_rng(rng.getrandbits(32))
    out = tag.astype(np.float32)
    fade = rng.uniform(0, 0.16) * amount
    out[..., :3] = out[..., :3] * (1 - fade) + 225 * fade
    out[..., :3] += gen.normal(0, 2.0, tag.shape[:2])[..., None]
    out = np.clip(out, 0, 255).astype(np.uint8)
    height, width = tag.shape[:2]
    for _ in range(int(rng.uniform(0, 26) * amount)):
        x, y, size = (
            rng.randrange(width),
            rng.randrange(height),
            max(1, int(width * abs(rng.gauss(0, 0.004)))),
        )
        colour = mix((30, 42, 60), (90, 110, 130), rng.random())
        cv2.ellipse(
            out,
            (x, y),
            (size, max(1, int(size * rng.uniform(0.5, 1)))),
            rng.uniform(0, 180),
            0,
            360,
            (*colour, 255),
            -1,
            cv2.LINE_AA,
        )
    for _ in range(int(rng.uniform(0, 5) * amount)):
        x, y = rng.randrange(width), rng.randrange(height)
        cv2.line(
            out,
            (x, y),
            (x + rng.randint(-250, 250), y + rng.randint(-120, 120)),
            (225, 225, 225, 255),
            1,
            cv2.LINE_AA,
        )
    out[..., 3] = np.minimum(out[..., 3], tag[..., 3])
    return out


def bend(tag: Picture, depth: float) -> tuple[Picture, Floats]:
    """Curl the tag about its long axis; returns it with its corners. `depth`: share of its width."""
    height, width = tag.shape[:2]
    pad = int(abs(depth) * max(width, height)) + 2
    corners = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    xs, ys = np.meshgrid(np.arange(width, dtype=np.float32), np.arange(height + 2 * pad, dtype=np.float32))
    lift = (depth * width * (1 - (2 * xs / width - 1) ** 2)).astype(np.float32)
    squeeze = np.arcsin(np.clip((2 * xs / width - 1) * 0.92, -1, 1)) / np.arcsin(0.92)
    amount = min(1.0, abs(depth) * 8)
    map_x = (xs * (1 - amount) + (squeeze + 1) / 2 * width * amount).astype(np.float32)
    bent = cv2.remap(
        tag,
        map_x,
        ys - pad + lift,
        cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_CONSTANT,
        borderValue=(0, 0, 0, 0),
    )
    shade = 1 - 0.25 * amount * (2 * xs / width - 1) ** 2
    bent[..., :3] = np.clip(bent[..., :3] * shade[..., None], 0, 255).astype(np.uint8)
    return bent, corners + np.array([0, pad], np.float32)


# ---------------------------------------------------------------- taking the picture

LEVELS: dict[str, dict[str, Any]] = {
    "easy": {
        "fill": (0.72, 0.92),
        "tilt": 0.012,
        "lean": 2.0,
        "bend": 0.0,
        "shadow": 0.12,
        "blur": (0.3, 0.6),
        "noise": 2.0,
        "glare": 0.0,
        "shine": (0, 1),
        "turns": (0,),
        "cast": 0.03,
        "wear": 0.15,
    },
    "medium": {
        "fill": (0.6, 0.86),
        "tilt": 0.06,
        "lean": 9.0,
        "bend": 0.012,
        "shadow": 0.4,
        "blur": (0.5, 1.0),
        "noise": 3.0,
        "glare": 0.18,
        "shine": (40, 110),
        "turns": (0, 0, 0, 0, 0, 90, 270, 180),
        "cast": 0.06,
        "wear": 0.6,
    },
    "hard": {
        "fill": (0.52, 0.8),
        "tilt": 0.11,
        "lean": 16.0,
        "bend": 0.03,
        "shadow": 0.6,
        "blur": (0.8, 1.5),
        "noise": 5.0,
        "glare": 0.55,
        "shine": (80, 190),
        "turns": (0, 0, 90, 180, 270),
        "cast": 0.1,
        "wear": 1.0,
    },
}
"""`fill`: tag's long side as a share of the frame's; `tilt`: perspective; `lean`: degrees off level."""


def photograph(
    tag: Picture, level: str, long_side: int, rng: random.Random, turn: int | None = None, grip: bool = False
) -> Photo:
    """Photograph a cut-out tag as a person with a phone would at this level of trouble.

    `grip`: the tag has a blank lower end, where a finger may hold it.
    """
    how = LEVELS[level]
    if level == "easy" and rng.random() < 0.5:
        return scan(tag, long_side, rng)
    turn = rng.choice(how["turns"]) if turn is None else turn
    tag = wear(tag, rng, how["wear"])
    corners = np.array(
        [[0, 0], [tag.shape[1], 0], [tag.shape[1], tag.shape[0]], [0, tag.shape[0]]], np.float32
    )
    if how["bend"] and rng.random() < 0.7:
        tag, corners = bend(tag, rng.uniform(-1, 1) * how["bend"])
    frame = _frame(long_side, turn, tag, level, rng)
    matrix, tag = _place(tag, frame, how, turn, rng)
    canvas, mask = _compose(tag, matrix, frame, rng, level)
    if grip and level != "easy" and rng.random() < 0.4:
        canvas = _finger(canvas, matrix, tag, rng)
    canvas = _light(canvas, mask, how, rng)
    canvas = _lens(canvas, how, rng)
    scale = tag.shape[1] / max(corners[1][0], 1)
    moved = cv2.perspectiveTransform((corners * scale)[None], matrix)[0]
    return Photo(canvas, tuple((round(float(x)), round(float(y))) for x, y in moved), turn)


def _frame(long_side: int, turn: int, tag: Picture, level: str, rng: random.Random) -> tuple[int, int]:
    short = int(long_side * rng.choice([0.75, 0.75, 0.5625]))
    upright = (tag.shape[0] >= tag.shape[1]) == (turn % 180 == 0)
    if level == "hard" and rng.random() < 0.15:
        upright = not upright
    return (long_side, short) if upright else (short, long_side)


def _place(
    tag: Picture, frame: tuple[int, int], how: dict[str, Any], turn: int, rng: random.Random
) -> tuple[Floats, Picture]:
    """The homography onto the frame, and the tag brought near its final size first (no moiré)."""
    height, width = frame
    th, tw = tag.shape[:2]
    lean = np.radians(turn + rng.gauss(0, 0.45) * how["lean"])
    c, s = abs(np.cos(lean)), abs(np.sin(lean))
    fit = min(width / (tw * c + th * s), height / (tw * s + th * c))
    scale = fit * rng.uniform(*how["fill"])
    step = min(1.0, scale * 1.25)
    tag = cv2.resize(tag, None, fx=step, fy=step, interpolation=cv2.INTER_AREA)
    th, tw, scale = tag.shape[0], tag.shape[1], scale / step
    source = np.array([[0, 0], [tw, 0], [tw, th], [0, th]], np.float32)
    flat = (source - [tw / 2, th / 2]) * scale
    turned = flat @ np.array([[np.cos(lean), np.sin(lean)], [-np.sin(lean), np.cos(lean)]])
    jitter = (
        np.array([[rng.uniform(-1, 1), rng.uniform(-1, 1)] for _ in range(4)])
        * how["tilt"]
        * min(tw, th)
        * scale
    )
    free = np.array([width, height]) - np.ptp(turned, axis=0)
    shift = np.array([width, height]) / 2 + free * np.array(
        [rng.uniform(-0.35, 0.35), rng.uniform(-0.35, 0.35)]
    )
    target = (turned + jitter + shift).astype(np.float32)
    return cv2.getPerspectiveTransform(source, target).astype(np.float32), tag


def _compose(
    tag: Picture, matrix: Floats, frame: tuple[int, int], rng: random.Random, level: str
) -> tuple[Floats, Floats]:
    height, width = frame
    kinds = ["wood", "concrete", "bench"] if level == "easy" else sorted(GROUNDS)
    back = ground(rng.choice(kinds), height, width, rng).astype(np.float32)
    warped = cv2.warpPerspective(
        tag, matrix, (width, height), flags=cv2.INTER_CUBIC, borderMode=cv2.BORDER_CONSTANT
    )
    mask = np.clip(warped[..., 3].astype(np.float32) / 255, 0, 1)
    reach = width * rng.uniform(0.006, 0.02)
    drop = cv2.warpAffine(mask, np.float32([[1, 0, reach], [0, 1, reach]]), (width, height))
    back *= 1 - 0.55 * cv2.GaussianBlur(drop, (0, 0), reach)[..., None]
    cover = mask[..., None]
    return back * (1 - cover) + warped[..., :3].astype(np.float32) * cover, mask


def _finger(canvas: Floats, matrix: Floats, tag: Picture, rng: random.Random) -> Floats:
    """A thumb over the stake's blank point, coming from outside the picture."""
    height, width = tag.shape[:2]
    ends = np.array([[[width * 0.5, height * 0.93], [width * 0.5, height * 0.5]]], np.float32)
    tip, middle = cv2.perspectiveTransform(ends, matrix)[0]
    way = (tip - middle) / max(float(np.linalg.norm(tip - middle)), 1.0)
    way = way + np.array([rng.uniform(-0.5, 0.5), rng.uniform(-0.5, 0.5)])
    reach = float(max(canvas.shape[:2]))
    thick = int(reach * rng.uniform(0.11, 0.16))
    start = tip + way * thick * 0.45
    mask = np.zeros(canvas.shape[:2], np.uint8)
    cv2.line(
        mask, tuple(start.astype(int)), tuple((start + way * reach).astype(int)), 255, thick, cv2.LINE_AA
    )
    gen = np.random.default_rng(rng.getrandbits(32))
    tone = rng.choice([(150, 178, 222), (110, 140, 190), (64, 88, 130), (130, 160, 210)])
    skin = blend(
        cloud(*canvas.shape[:2], gen, 60, 3), mix(tone, (0, 0, 0), 0.12), mix(tone, (255, 255, 255), 0.08)
    )
    soft = cv2.GaussianBlur(mask, (0, 0), reach / 700).astype(np.float32)[..., None] / 255
    round_ = cv2.GaussianBlur(mask, (0, 0), thick / 4).astype(np.float32)[..., None] / 255
    shadow = cv2.GaussianBlur(
        np.roll(mask, (int(reach / 120), int(reach / 120)), (0, 1)), (0, 0), reach / 120
    )
    out = canvas * (1 - 0.45 * shadow.astype(np.float32)[..., None] / 255)
    return (out * (1 - soft) + skin * (0.35 + 0.65 * round_) * soft).astype(np.float32)


def _light(canvas: Floats, mask: Floats, how: dict[str, Any], rng: random.Random) -> Floats:
    """Uneven daylight, a shadow's edge, the cast of the lamp, glare on the plastic."""
    height, width = canvas.shape[:2]
    gen = np.random.default_rng(rng.getrandbits(32))
    angle = rng.uniform(0, 2 * np.pi)
    ys, xs = np.mgrid[0:height, 0:width].astype(np.float32)
    slope = (xs / width - 0.5) * np.cos(angle) + (ys / height - 0.5) * np.sin(angle)
    level = 1 + slope * how["shadow"] * 0.7
    if rng.random() < how["shadow"] * 1.4:
        edge = cv2.GaussianBlur(
            (cloud(height // 8, width // 8, gen, 2, 2) > rng.uniform(0.45, 0.65)).astype(np.float32),
            (0, 0),
            rng.uniform(2, 14),
        )
        level *= 1 - how["shadow"] * 0.75 * cv2.resize(edge, (width, height))
    warm = max(-1.8, min(1.8, rng.gauss(0, 1))) * how["cast"]
    cast = np.array([1 - warm, 1 + rng.gauss(0, 0.015), 1 + warm], np.float32)
    out = canvas * level[..., None] * cast * rng.uniform(0.92, 1.1)
    for _ in range(3):
        if rng.random() < how["glare"]:
            ys_in, xs_in = np.nonzero(mask[::8, ::8] > 0.5)
            at = rng.randrange(max(1, len(xs_in)))
            spot = np.zeros((height // 4, width // 4), np.float32)
            size = (int(width * rng.uniform(0.004, 0.02)), int(width * rng.uniform(0.015, 0.06)))
            cv2.ellipse(
                spot,
                (int(xs_in[at]) * 2, int(ys_in[at]) * 2),
                (max(2, size[0]), max(2, size[1])),
                rng.uniform(0, 180),
                0,
                360,
                1.0,
                -1,
            )
            soft = cv2.resize(
                cv2.GaussianBlur(spot, (0, 0), max(2.0, width * rng.uniform(0.004, 0.014))), (width, height)
            )
            out += (soft * mask * rng.uniform(*how["shine"]))[..., None]
    return np.where(out > 196, 196 + 58 * (1 - np.exp(-(out - 196) / 58)), out).astype(np.float32)


def _lens(canvas: Floats, how: dict[str, Any], rng: random.Random) -> Picture:
    """Focus, a shaking hand, sensor noise, and the sharpening phones do."""
    gen = np.random.default_rng(rng.getrandbits(32))
    height, width = canvas.shape[:2]
    strength = max(height, width) / 2000
    out = cv2.GaussianBlur(canvas, (0, 0), rng.uniform(*how["blur"]) * strength)
    if rng.random() < how["glare"] * 0.5:
        length = max(3, int(rng.uniform(3, 7) * strength))
        kernel = np.zeros((length, length), np.float32)
        kernel[length // 2] = 1 / length
        spin = cv2.getRotationMatrix2D((length / 2 - 0.5, length / 2 - 0.5), rng.uniform(0, 180), 1)
        kernel = cv2.warpAffine(kernel, spin, (length, length))
        out = cv2.filter2D(out, -1, kernel / max(kernel.sum(), 1e-6))
    noise = gen.normal(0, how["noise"], (height, width, 1)) + gen.normal(
        0, how["noise"] * 0.4, (height, width, 3)
    )
    noise = cv2.GaussianBlur(noise.astype(np.float32), (0, 0), 0.7)
    out = out + noise
    out = out + 0.5 * (out - cv2.GaussianBlur(out, (0, 0), 1.4 * strength))
    ys, xs = np.mgrid[-1 : 1 : height * 1j, -1 : 1 : width * 1j].astype(np.float32)
    out *= (1 - 0.14 * (xs**2 + ys**2) / 2)[..., None]
    return np.clip(out, 0, 255).astype(np.uint8)


def scan(tag: Picture, long_side: int, rng: random.Random) -> Photo:
    """A flatbed scan: pale lid, hard edge, a degree off level at most."""
    tag = wear(tag, rng, 0.1)
    margin = rng.uniform(0.015, 0.07)
    step = min(1.0, long_side * (1 - 2 * margin) / max(tag.shape[:2]))
    tag = cv2.resize(tag, None, fx=step, fy=step, interpolation=cv2.INTER_AREA)
    th, tw = tag.shape[:2]
    edge = int(max(th, tw) * margin) + 8
    width, height = tw + 2 * edge, th + 2 * edge
    lean = np.radians(rng.gauss(0, 0.5))
    c, s = np.cos(lean), np.sin(lean)
    move = np.float32(
        [[c, -s, width / 2 - c * tw / 2 + s * th / 2], [s, c, height / 2 - s * tw / 2 - c * th / 2]]
    )
    warped = cv2.warpAffine(tag, move, (width, height), flags=cv2.INTER_CUBIC)
    mask = warped[..., 3:].astype(np.float32) / 255
    lid = np.full((height, width, 3), rng.choice([252, 246, 236, 228]), np.float32)
    drop = cv2.GaussianBlur(np.roll(mask[..., 0], (3, 4), (0, 1)), (0, 0), 3)
    lid *= 1 - 0.35 * drop[..., None]
    gen = np.random.default_rng(rng.getrandbits(32))
    out = lid * (1 - mask) + warped[..., :3] * mask + gen.normal(0, 1.6, (height, width, 1))
    source = np.array([[0, 0], [tw, 0], [tw, th], [0, th]], np.float32)
    moved = cv2.transform(source[None], move)[0]
    return Photo(
        np.clip(out, 0, 255).astype(np.uint8), tuple((round(float(x)), round(float(y))) for x, y in moved), 0
    )
