"""Photographs of a printed side: a flatbed scan, a phone held above, a phone in bad light."""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random
from typing import Any

import cv2
import numpy as np
import surroundings
import wear
from numpy.typing import NDArray
from outlines import Outline
from PIL import Image, ImageDraw
from press import Pen

Pixels = NDArray[np.uint8]
Floats = NDArray[Any]


@dataclass(frozen=True, slots=True)
class Shot:
    """The picture, corners of the tag from its own top left clockwise, and the turn of its print."""

    pixels: Pixels
    corners: list[list[int]]
    turn: int
    quality: int
    letter: float
    """Letter size (em) of the smallest print, in pixels of the picture."""


def cut(image: Image.Image, outline: Outline) -> NDArray[np.uint8]:
    """The printed side with its outline and holes as transparency."""
    mask = Image.new("L", image.size, 0)
    pencil = ImageDraw.Draw(mask)
    pencil.polygon(outline.border, fill=255)
    for hole in outline.holes:
        pencil.polygon(hole, fill=0)
    return np.dstack([np.array(image), np.array(mask)])


def take(pen: Pen, outline: Outline, level: str, rng: Random) -> Shot:
    """One photograph of a printed side; dirt and drops fall where nothing is printed."""
    dice = np.random.default_rng(rng.randint(0, 2**31))
    tag, least = cut(pen.image, outline), pen.least
    if level == "hard" or (level == "medium" and rng.random() < 0.25):
        wear.spoil(tag, pen.printed, rng)
    quarter = {"easy": (0.0, 0.06), "medium": (0.0, 0.3), "hard": (0.0, 0.35)}[level][1]
    turn = rng.choice((90, 180, 270, 90, 270)) if rng.random() < quarter else 0
    if outline.name in ("loop", "strip") and level != "easy" and rng.random() < 0.5:
        turn = rng.choice((90, 270))
    frame, corners, scale = _place(tag, turn, least, level, rng)
    height, width = frame
    bent = _bend(tag, rng) if level == "hard" and rng.random() < 0.45 else tag
    ground = surroundings.lay(width, height, level, rng)
    lie = cv2.getPerspectiveTransform(
        np.array([[0, 0], [tag.shape[1], 0], [tag.shape[1], tag.shape[0]], [0, tag.shape[0]]], np.float32),
        np.array(corners, np.float32),
    )
    flat = _warp(bent, lie, width, height, scale)
    alpha = flat[..., 3:].astype(np.float32) / 255
    _shadow(ground, alpha[..., 0], width, level, rng)
    picture = ground * (1 - alpha) + flat[..., :3].astype(np.float32) * alpha * _paper(alpha, dice)
    if level != "easy" and rng.random() < 0.4:
        surroundings.finger(picture, corners, outline, rng)
    picture = _light(picture, alpha[..., 0], level, rng)
    pixels = _sensor(picture, level, rng, dice, least * scale)
    quality = {"easy": rng.randint(88, 95), "medium": rng.randint(72, 90), "hard": rng.randint(60, 82)}[level]
    return Shot(pixels, [[round(x), round(y)] for x, y in corners], turn, quality, least * scale)


def _warp(tag: NDArray[np.uint8], lie: Floats, width: int, height: int, scale: float) -> NDArray[np.uint8]:
    """Averages first where the picture is much smaller than the print, so that thin strokes survive."""
    soft = cv2.GaussianBlur(tag, (0, 0), 0.42 / scale) if scale < 0.8 else tag
    return cv2.warpPerspective(soft, lie, (width, height), flags=cv2.INTER_CUBIC)  # type: ignore[return-value]


def _place(
    tag: NDArray[np.uint8], turn: int, least: int, level: str, rng: Random
) -> tuple[tuple[int, int], list[tuple[float, float]], float]:
    """Frame (height, width), the four corners and how many picture pixels a press pixel takes."""
    h, w = tag.shape[:2]
    tw, th = (h, w) if turn in (90, 270) else (w, h)
    share = {"easy": (0.82, 0.95), "medium": (0.66, 0.88), "hard": (0.5, 0.8)}[level]
    letter = {"easy": 30, "medium": 29, "hard": 23}[level]
    frame_long = rng.randint(*{"easy": (2000, 3100), "medium": (2400, 3200), "hard": (1900, 2800)}[level])
    aspect = rng.uniform(1.05, 1.35) if level == "easy" else 4 / 3
    upright = th > tw or (abs(th - tw) < 0.15 * th and rng.random() < 0.5)
    fw, fh = (frame_long / aspect, float(frame_long)) if upright else (float(frame_long), frame_long / aspect)
    if level == "easy":
        fw, fh = (
            (min(fw, fh * tw / th * 1.25 + 120), fh) if upright else (fw, min(fh, fw * th / tw * 1.25 + 120))
        )
    scale = min(fw * rng.uniform(*share) / tw, fh * rng.uniform(*share) / th)
    scale = max(scale, letter / least)
    grow = max(1.0, tw * scale / (0.95 * fw), th * scale / (0.95 * fh))
    scale = min(scale / 1.0, scale)
    fw, fh = fw * grow, fh * grow
    if max(fw, fh) > 3300:
        fw, fh, scale = fw * 3300 / max(fw, fh), fh * 3300 / max(fw, fh), scale * 3300 / max(fw, fh)
    tilt = rng.gauss(0, {"easy": 1.0, "medium": 5, "hard": 7}[level])
    a = math.radians(turn + max(-14, min(14, tilt)))
    lean = {"easy": 0.0, "medium": 0.045, "hard": 0.07}[level]
    corners = []
    for x, y in ((-w / 2, -h / 2), (w / 2, -h / 2), (w / 2, h / 2), (-w / 2, h / 2)):
        px, py = x * math.cos(a) - y * math.sin(a), x * math.sin(a) + y * math.cos(a)
        corners.append(
            (
                px * scale + rng.uniform(-lean, lean) * tw * scale,
                py * scale + rng.uniform(-lean, lean) * th * scale,
            )
        )
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, bottom = min(y for _, y in corners), max(y for _, y in corners)
    fw, fh = max(fw, (right - left) * 1.04), max(fh, (bottom - top) * 1.04)
    dx = rng.uniform(0.3, 0.7) * (fw - (right - left)) - left
    dy = rng.uniform(0.3, 0.7) * (fh - (bottom - top)) - top
    return (int(fh), int(fw)), [(x + dx, y + dy) for x, y in corners], scale


def _bend(tag: NDArray[np.uint8], rng: Random) -> NDArray[np.uint8]:
    """The tag curved round an axis along its length or across it, seen from the front, with its shading."""
    h, w = tag.shape[:2]
    turn = rng.uniform(0.45, 0.85)
    across = rng.random() < 0.5
    size = w if across else h
    place = np.linspace(-1, 1, size, dtype=np.float32)
    source = (np.arcsin(np.clip(place * math.sin(turn), -1, 1)) / turn + 1) / 2 * (size - 1)
    shade = (
        1
        - 0.35
        * (1 - np.cos(np.arcsin(place * math.sin(turn)) - rng.uniform(-0.3, 0.3)))
        / (1 - math.cos(turn))
        * 0.6
    )
    ys, xs = np.mgrid[0:h, 0:w].astype(np.float32)
    maps = (
        (np.broadcast_to(source[None, :], (h, w)), ys)
        if across
        else (xs, np.broadcast_to(source[:, None], (h, w)))
    )
    out = cv2.remap(tag, np.ascontiguousarray(maps[0]), np.ascontiguousarray(maps[1]), cv2.INTER_CUBIC)
    darker = shade[None, :, None] if across else shade[:, None, None]
    out[..., :3] = np.clip(out[..., :3] * darker, 0, 255).astype(np.uint8)
    return out  # type: ignore[return-value]


def _paper(alpha: Floats, dice: Any) -> Floats:
    h, w = alpha.shape[:2]
    small = dice.normal(1, 0.005, (h // 40 + 2, w // 40 + 2)).astype(np.float32)
    return np.clip(cv2.resize(small, (w, h), interpolation=cv2.INTER_LINEAR), 0.9, 1.02)[..., None]


def _shadow(ground: Floats, alpha: Floats, width: int, level: str, rng: Random) -> None:
    reach = width * (0.004 if level == "easy" else rng.uniform(0.006, 0.02))
    moved = np.roll(alpha, (int(reach), int(reach * rng.uniform(-1, 1))), (0, 1))
    soft = cv2.GaussianBlur(moved, (0, 0), reach + 1)
    ground *= (1 - 0.55 * soft)[..., None]


def _light(picture: Floats, alpha: Floats, level: str, rng: Random) -> Floats:
    h, w = picture.shape[:2]
    ys, xs = np.mgrid[0:h, 0:w].astype(np.float32)
    a = rng.uniform(0, math.tau)
    slope = ((xs / w - 0.5) * math.cos(a) + (ys / h - 0.5) * math.sin(a)) * {
        "easy": 0.06,
        "medium": 0.35,
        "hard": 0.5,
    }[level]
    light = 1 + slope
    if level != "easy" and rng.random() < (0.45 if level == "medium" else 0.7):
        b, off = rng.uniform(0, math.tau), rng.uniform(-0.25, 0.25)
        edge = ((xs / w - 0.5) * math.cos(b) + (ys / h - 0.5) * math.sin(b) - off) * rng.uniform(8, 40)
        deep = rng.uniform(0.2, 0.4) if level == "medium" else rng.uniform(0.35, 0.6)
        light *= 1 - deep / (1 + np.exp(-np.clip(edge, -30, 30)))
    cast = {"easy": 0.02, "medium": 0.07, "hard": 0.17}[level]
    tint = np.array([1 + rng.uniform(-cast, cast), 1.0, 1 + rng.uniform(-cast, cast)], np.float32)
    lit = picture * np.maximum(light, 0.62 if level == "medium" else 0.45)[..., None] * tint
    if level == "hard" and rng.random() < 0.6:
        lit = _glare(lit, alpha, rng, xs, ys)
    return lit


def _glare(lit: Floats, alpha: Floats, rng: Random, xs: Floats, ys: Floats) -> Floats:
    """A soft sheen: it greys the print and never blots it out."""
    h, w = lit.shape[:2]
    cx, cy = rng.uniform(0.25, 0.75) * w, rng.uniform(0.2, 0.8) * h
    a, long, wide = rng.uniform(0, math.pi), w * rng.uniform(0.15, 0.4), w * rng.uniform(0.05, 0.14)
    u = (xs - cx) * math.cos(a) + (ys - cy) * math.sin(a)
    v = -(xs - cx) * math.sin(a) + (ys - cy) * math.cos(a)
    veil = np.exp(-((u / long) ** 2) - (v / wide) ** 2) * rng.uniform(0.3, 0.5) * alpha
    return lit * (1 - veil[..., None]) + 250 * veil[..., None]  # type: ignore[no-any-return]


def _sensor(picture: Floats, level: str, rng: Random, dice: Any, letter: float) -> Pixels:
    """Focus, shake and noise, in measure with the letters: blur stays below a tenth of their height."""
    blur = {"easy": (0.4, 0.8), "medium": (0.03, 0.055), "hard": (0.05, 0.08)}[level]
    sigma = rng.uniform(*blur) * (1 if level == "easy" else letter * 0.9)
    out = cv2.GaussianBlur(picture.astype(np.float32), (0, 0), max(sigma, 0.4))
    if level == "hard" and rng.random() < 0.4:
        out = _shake(out, max(int(letter * rng.uniform(0.08, 0.16)), 2), rng.uniform(0, math.pi))
    noise = {"easy": 1.5, "medium": rng.uniform(3, 6), "hard": rng.uniform(4, 9)}[level]
    h, w = out.shape[:2]
    coarse = cv2.resize(dice.normal(0, noise, (h // 2 + 1, w // 2 + 1, 3)).astype(np.float32), (w, h))
    return np.clip(out + coarse + dice.normal(0, noise * 0.6, out.shape), 0, 255).astype(np.uint8)


def _shake(picture: Floats, long: int, angle: float) -> Floats:
    side = long * 2 + 1
    kernel = np.zeros((side, side), np.float32)
    end = (round(long + math.cos(angle) * long / 2), round(long + math.sin(angle) * long / 2))
    start = (round(long - math.cos(angle) * long / 2), round(long - math.sin(angle) * long / 2))
    cv2.line(kernel, start, end, 1.0, 1)
    return cv2.filter2D(picture, -1, kernel / kernel.sum())
