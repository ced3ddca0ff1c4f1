"""Any decoded picture as the one kind the rest works on: BGR, 8 bits, upright."""

from __future__ import annotations

from typing import Any

import cv2
import numpy as np
import numpy.typing as npt
from PIL import Image

Pixels = npt.NDArray[np.uint8]
"""Height x width x 3, BGR; or height x width for one grey channel."""


def to_bgr(image: Image.Image) -> Pixels:
    """Any Pillow picture as 8-bit BGR; what is transparent becomes white, as paper is."""
    if image.mode.startswith(("I", "F")):
        grey = _to_eight_bits(np.asarray(image))
        return np.ascontiguousarray(np.repeat(grey[:, :, None], 3, axis=2))
    if image.has_transparency_data:
        seen = image.convert("RGBA")
        image = Image.new("RGBA", seen.size, "white")
        image.alpha_composite(seen)
    plain = image if image.mode == "RGB" else image.convert("RGB")
    return np.asarray(cv2.cvtColor(np.asarray(plain), cv2.COLOR_RGB2BGR), np.uint8)


def _to_eight_bits(values: npt.NDArray[Any]) -> Pixels:
    """Deep grey values scaled by the range their type stands for: 65535 is white in 16 bits.

    Pillow's own conversion cuts 16 bits off at 255, which turns a deep scan into a white sheet.
    """
    exact = np.nan_to_num(values.astype(np.float64))
    if values.dtype == np.uint16:
        white = 65535.0
    else:  # 32-bit and float files do not say where white is: the smallest usual white that holds them all
        most = float(exact.max(initial=0.0))
        white = next((each for each in (1.0, 255.0, 65535.0) if most <= each), most)
        white = 255.0 if values.dtype.kind != "f" and white == 1.0 else white
    return np.clip(np.rint(exact * (255.0 / white)), 0, 255).astype(np.uint8)


def upright(pixels: Pixels, orientation: int) -> Pixels:
    """The picture turned as EXIF orientation 1 to 8 asks (EXIF 2.32, tag 274)."""
    match orientation:
        case 2:
            turned = pixels[:, ::-1]
        case 3:
            turned = pixels[::-1, ::-1]
        case 4:
            turned = pixels[::-1]
        case 5:
            turned = pixels.swapaxes(0, 1)
        case 6:
            turned = pixels.swapaxes(0, 1)[:, ::-1]
        case 7:
            turned = pixels.swapaxes(0, 1)[::-1, ::-1]
        case 8:
            turned = pixels.swapaxes(0, 1)[::-1]
        case _:
            turned = pixels
    return np.ascontiguousarray(turned)
