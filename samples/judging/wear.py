"""What time and weather leave on a tag: soil, drops, scratches. Soil and drops keep off the print."""

from __future__ import annotations

import math
from collections.abc import Sequence
from random import Random
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

Pixels = NDArray[Any]
Boxes = Sequence[tuple[float, float, float, float]]


def spoil(tag: Pixels, printed: Boxes, rng: Random) -> None:
    """Marks the picture of the tag in place."""
    height, width = tag.shape[:2]
    if rng.random() < 0.6:
        for _ in range(rng.randint(6, 24)):
            _dab(tag, printed, rng, _soil)
    if rng.random() < 0.5:
        for _ in range(rng.randint(5, 18)):
            _dab(tag, printed, rng, _drop)
    if rng.random() < 0.5:
        for _ in range(rng.randint(2, 6)):
            at = (rng.randint(0, width), rng.randint(0, height))
            a, long = rng.uniform(0, math.tau), rng.uniform(0.1, 0.5) * min(width, height)
            end = (int(at[0] + math.cos(a) * long), int(at[1] + math.sin(a) * long))
            _blend(
                tag,
                lambda pane, at=at, end=end: cv2.line(pane, at, end, (235, 235, 230), 2, cv2.LINE_AA),
                0.5,
            )


def _dab(tag: Pixels, printed: Boxes, rng: Random, paint: Any) -> None:
    height, width = tag.shape[:2]
    x, y, r = rng.randint(0, width), rng.randint(0, height), rng.randint(8, 34)
    pad = r * 1.6 + 8
    if any(a - pad < x < c + pad and b - pad < y < d + pad for a, b, c, d in printed):
        return
    paint(tag, x, y, r, rng)


def _soil(tag: Pixels, x: int, y: int, r: int, rng: Random) -> None:
    tone = rng.choice(((74, 54, 40), (98, 76, 54), (56, 44, 36)))
    outline = [
        (
            x + math.cos(n * math.tau / 14) * r * rng.uniform(0.6, 1.3),
            y + math.sin(n * math.tau / 14) * r * rng.uniform(0.6, 1.3),
        )
        for n in range(14)
    ]
    _blend(
        tag,
        lambda pane: cv2.fillPoly(pane, [np.array(outline, np.int32)], tone, cv2.LINE_AA),
        rng.uniform(0.45, 0.9),
    )


def _drop(tag: Pixels, x: int, y: int, r: int, rng: Random) -> None:
    _blend(
        tag,
        lambda pane: cv2.ellipse(
            pane, (x + 2, y + 3), (r, int(r * 0.9)), 0, 0, 360, (40, 44, 48), -1, cv2.LINE_AA
        ),
        0.25,
    )
    _blend(
        tag,
        lambda pane: cv2.ellipse(
            pane, (x, y), (r - 2, int(r * 0.85)), 0, 0, 360, (214, 222, 228), -1, cv2.LINE_AA
        ),
        0.35,
    )
    _blend(
        tag,
        lambda pane: cv2.circle(
            pane, (x - r // 3, y - r // 3), max(r // 5, 2), (255, 255, 255), -1, cv2.LINE_AA
        ),
        0.9,
    )


def _blend(tag: Pixels, paint: Any, share: float) -> None:
    pane = np.ascontiguousarray(tag[..., :3])
    paint(pane)
    tag[..., :3] = cv2.addWeighted(pane, share, np.ascontiguousarray(tag[..., :3]), 1 - share, 0)
