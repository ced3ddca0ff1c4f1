"""What kind of mark a patch of ink is, told by its shape alone.

A patch is brought to one small size, and a small network says which kind it is most like. Its suns and arrows
were drawings thrown like dice (`samples/mark_drawings.py`), no maker's own: it knows what is common to suns.
`samples/fit_marks.py` fits it anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal, TypeAlias

import cv2
import numpy as np
import numpy.typing as npt

from ocr_tags.pictures.geometry import Pixels

Kind = Literal[
    "sun",
    "half_sun",
    "crescent",
    "shade",
    "ring",
    "drop",
    "thermometer",
    "snow",
    "tall",
    "wide",
    "flower",
    "apart",
]
KINDS: tuple[Kind | None, ...] = (
    *("sun", "half_sun", "crescent", "shade", "ring", "drop", "thermometer", "snow"),
    *("tall", "wide", "flower", "apart", None),
)
"""What the network tells apart, in the order of its answers; None is no mark."""
SIDE = 24
"""Width and height of the small picture that the network sees."""

Small: TypeAlias = npt.NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Network:
    """Two layers of weights, as fitted."""

    first: Small
    first_bias: Small
    second: Small
    second_bias: Small

    def likeness(self, patches: Small) -> Small:
        """For each patch (n x SIDE²) the chance of each of `KINDS`, adding up to 1."""
        hidden = np.maximum(patches @ self.first + self.first_bias, 0)
        answer = hidden @ self.second + self.second_bias
        power = np.exp(answer - answer.max(axis=1, keepdims=True))
        return np.asarray(power / power.sum(axis=1, keepdims=True), np.float32)


def small_patch(ink: Pixels) -> Small:
    """A patch (0 paper to 255 ink) at the network's size, its longer side filling it, as one row, 0 to 1."""
    height, width = ink.shape
    scale = SIDE / max(height, width)
    size = max(1, round(width * scale)), max(1, round(height * scale))
    way = cv2.INTER_AREA if scale < 1 else cv2.INTER_LINEAR
    square = np.zeros((SIDE, SIDE), np.float32)
    left, top = (SIDE - size[0]) // 2, (SIDE - size[1]) // 2
    square[top : top + size[1], left : left + size[0]] = cv2.resize(ink, size, interpolation=way)
    return square.reshape(-1) / np.float32(255)


def kinds_of(patches: Sequence[Small]) -> list[tuple[Kind | None, float]]:
    """The likeliest kind of each small patch and its chance, the mean of the patch and its mirror image."""
    if not patches:
        return []
    rows = np.stack(patches)
    mirrored = rows.reshape(-1, SIDE, SIDE)[:, :, ::-1].reshape(rows.shape)
    likeness = (_network().likeness(rows) + _network().likeness(mirrored)) / 2
    return [
        (KINDS[int(at)], float(row[at])) for row, at in zip(likeness, likeness.argmax(axis=1), strict=True)
    ]


@cache
def _network() -> Network:
    with (files("ocr_tags") / "data" / "mark_network.npz").open("rb") as stream:
        kept = np.load(stream)
        return Network(
            *(kept[name].astype(np.float32) for name in ("first", "first_bias", "second", "second_bias"))
        )
