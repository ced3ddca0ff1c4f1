"""One text line as the reader likes it: level, dark on light, one size, on an even ground."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np

from ocr_tags.pictures.geometry import Floats, Pixels, warped
from ocr_tags.pictures.regions import LineRegion

LETTER_SHARE = 0.7
"""Height of capitals as a share of the crop's `height`."""
LONGEST = 3000


@dataclass(frozen=True, slots=True)
class Crop:
    """A picture of one line, grey or colour (uint8). `to_picture` (3 x 3) takes its pixels to those of
    the picture it was cut from."""

    pixels: Pixels
    to_picture: Floats


def cut_line(pixels: Pixels, region: LineRegion, height: int = 48) -> Crop:
    """The region's line, dark on light, capitals about 0.7 x `height` pixels tall, with a white margin."""
    colour, to_picture, margin = _rectified(pixels, region, height)
    grey = _dark_on_light(colour, region.light_on_dark, height)
    grey[:margin], grey[-margin:] = 255, 255
    return Crop(grey, to_picture)


def cut_colour(pixels: Pixels, region: LineRegion, height: int = 48) -> Crop:
    """The region as photographed, made level: `height` pixels tall, in colour, with no margin of its own."""
    quad = np.array(region.quad)
    tall = float(np.linalg.norm(quad[3] - quad[0]) + np.linalg.norm(quad[2] - quad[1])) / 2
    wide = region.length * height / max(tall, 1.0)
    size = int(np.clip(round(wide), 8, LONGEST)), height
    target = np.array([(0, 0), (size[0], 0), size, (0, height)], np.float32)
    to_picture = np.asarray(cv2.getPerspectiveTransform(target, quad.astype(np.float32)), np.float64)
    return Crop(_drawn(pixels, to_picture, size, quad), to_picture)


def _rectified(pixels: Pixels, region: LineRegion, height: int) -> tuple[Pixels, Floats, int]:
    quad = np.array(region.quad)
    wide = float(np.linalg.norm(quad[1] - quad[0]) + np.linalg.norm(quad[2] - quad[3])) / 2
    tall = float(np.linalg.norm(quad[3] - quad[0]) + np.linalg.norm(quad[2] - quad[1])) / 2
    scale = min(LETTER_SHARE * height / region.letter_height, LONGEST / max(wide, 1.0))
    inner = max(4, round(wide * scale)), max(4, round(tall * scale))
    margin = height // 6
    size = inner[0] + 2 * margin, inner[1] + 2 * margin
    right, low = margin + inner[0], margin + inner[1]
    target = np.array([(margin, margin), (right, margin), (right, low), (margin, low)], np.float32)
    to_picture = np.asarray(cv2.getPerspectiveTransform(target, quad.astype(np.float32)), np.float64)
    return _drawn(pixels, to_picture, size, quad), to_picture, margin


def _drawn(pixels: Pixels, to_picture: Floats, size: tuple[int, int], quad: Floats) -> Pixels:
    """The part of the picture around the line, in the crop's frame."""
    room = 0.5 * float(np.ptp(quad, axis=0).min()) + 8
    limit = (pixels.shape[1], pixels.shape[0])
    x0, y0 = np.clip(quad.min(axis=0) - room, 0, np.subtract(limit, 2)).astype(int)
    x1, y1 = np.clip(quad.max(axis=0) + room, (x0 + 2, y0 + 2), limit).astype(int)
    moved = np.array([[1.0, 0, -x0], [0, 1, -y0], [0, 0, 1]])
    return warped(pixels[y0:y1, x0:x1], moved @ to_picture, size)


def _dark_on_light(colour: Pixels, light: bool, height: int) -> Pixels:
    """Ground to white, print to black, along the colour direction in which they differ most."""
    flat = colour.astype(np.float32)
    ground = cv2.blur(np.asarray(cv2.medianBlur(colour, 5)), (height * 2 + 1, height * 2 + 1)).astype(
        np.float32
    )
    off = (flat - ground).reshape(-1, 3)
    _, vectors = np.linalg.eigh(off.T @ off)
    along = vectors[:, -1]
    if along.sum() < 0:
        along = -along
    value = (flat @ along).astype(np.float32)
    if light:
        value = -value
    return _stretched(value, height)


def _stretched(value: Floats, height: int) -> Pixels:
    low, high = np.percentile(value, (2, 90))
    spread = max(float(high - low), 12.0)
    return np.asarray(np.clip((value - high) / spread * 235 + 245, 0, 255), np.uint8)
