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
COARSE = 4
"""How much smaller the picture is on which the tone of paper and ink is sought."""
AROUND = 0.5
"""Of a crop's height: how far around a place its paper and ink are sought."""
FAINTEST, LEAST_DEPTH = 0.3, 12.0
"""Print is no fainter than this share of the line's own depth, or this many tones: what is, is grain."""
SLIVER = 0.3
"""Of a line's height: what reaches in from its edge and is lower is a part of another line."""


@dataclass(frozen=True, slots=True)
class Crop:
    """A picture of one line, grey or colour (uint8). `to_picture` (3 x 3) takes its pixels to those of
    the picture it was cut from."""

    pixels: Pixels
    to_picture: Floats


def cut_line(pixels: Pixels, region: LineRegion, height: int = 48) -> Crop:
    """The region's line, dark on light, capitals about 0.7 x `height` pixels tall, with a white margin."""
    colour, to_picture, margin = _rectified(pixels, region, height)
    grey = _without_slivers(_black_on_white(colour, margin, height), margin)
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


def _black_on_white(colour: Pixels, margin: int, height: int) -> Pixels:
    """Print to black and ground to white, also where light, shadow or a picture runs across the line."""
    value = _darker_print(colour, margin, height)
    paper, ink = _extremes(value, height)
    depth = paper - ink
    depth = np.maximum(depth, max(FAINTEST * float(np.percentile(depth, 90)), LEAST_DEPTH))
    return _stretched((value - paper) / depth)


def _darker_print(colour: Pixels, margin: int, height: int) -> Floats:
    """The tone along the colour direction in which print and ground differ most, the rarer tone the darker:
    of a line it is the print."""
    flat = colour.astype(np.float32)
    ground = cv2.blur(np.asarray(cv2.medianBlur(colour, 5)), (height * 2 + 1, height * 2 + 1))
    off = flat - ground.astype(np.float32)
    sides = off.reshape(-1, 3)
    _, vectors = np.linalg.eigh(sides.T @ sides)
    along = vectors[:, -1]
    low, middle, high = np.percentile(off[margin:-margin, margin:-margin] @ along, (4, 50, 96))
    return np.asarray(flat @ (along if middle - low > high - middle else -along), np.float32)


def _extremes(value: Floats, height: int) -> tuple[Floats, Floats]:
    """What paper and ink are like around each place."""
    small = cv2.resize(value, None, fx=1 / COARSE, fy=1 / COARSE, interpolation=cv2.INTER_AREA)
    letter = int(AROUND * height / COARSE) | 1
    size = (value.shape[1], value.shape[0])
    paper, ink = (
        cv2.resize(
            cv2.GaussianBlur(extreme(small, np.ones((letter, letter), np.uint8)), (0, 0), 0.8 * letter), size
        )
        for extreme in (cv2.dilate, cv2.erode)
    )
    return np.asarray(paper, np.float32), np.asarray(ink, np.float32)


def _stretched(value: Floats) -> Pixels:
    low, high = np.percentile(value, (2, 90))
    spread = max(float(high - low), 0.05)
    return np.asarray(np.clip((value - high) / spread * 235 + 245, 0, 255), np.uint8)


def _without_slivers(grey: Pixels, margin: int) -> Pixels:
    """The crop without the feet and heads of the lines above and below that reach into it."""
    inner = grey[margin:-margin]
    tall = inner.shape[0]
    _, labels, stats, _ = cv2.connectedComponentsWithStats((inner < 128).astype(np.uint8))
    top, high = stats[:, cv2.CC_STAT_TOP], stats[:, cv2.CC_STAT_HEIGHT]
    sliver = ((top == 0) | (top + high == tall)) & (high < SLIVER * tall)
    sliver[0] = False  # the ground
    if sliver.any():
        around = cv2.dilate(sliver[labels].astype(np.uint8), np.ones((5, 5), np.uint8))
        inner[around > 0] = 255
    return grey
