"""An empty square and what pictograms are drawn with on it: lines, areas, discs."""

from __future__ import annotations

from math import cos, pi, sin

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

Ink = NDArray[np.uint8]
Point = tuple[float, float]
SIDE = 256
MID = SIDE / 2


class Sheet:
    """An empty square to draw on, in units of its half side around its middle, y downwards."""

    def __init__(self) -> None:
        self.image = Image.new("L", (SIDE, SIDE), 0)
        self.pen = ImageDraw.Draw(self.image)

    @staticmethod
    def at(x: float, y: float) -> Point:
        return MID + MID * x, MID + MID * y

    def area(self, points: list[Point], width: float = 0.0, ink: int = 255) -> None:
        """A filled outline, or with `width` only its line."""
        there = [self.at(*point) for point in points]
        if width:
            self.line([*points, points[0], points[1]], width, ink)
        else:
            self.pen.polygon(there, fill=ink)

    def line(self, points: list[Point], width: float, ink: int = 255) -> None:
        there = [self.at(*point) for point in points]
        self.pen.line(there, fill=ink, width=max(2, round(width * MID)), joint="curve")

    def dot(self, x: float, y: float, r: float, ink: int = 255) -> None:
        self.area(ellipse(x, y, r, r), ink=ink)

    def disc(self, x: float, y: float, r: float, width: float = 0.0, hollow: bool = True) -> None:
        """A filled disc, or with `width` a ring around nothing."""
        self.dot(x, y, r)
        if width and hollow:
            self.dot(x, y, max(r - width, 0.0), 0)

    def ink(self) -> Ink:
        return np.asarray(self.image, np.uint8)


def ellipse(x: float, y: float, a: float, b: float, turn: float = 0.0, steps: int = 48) -> list[Point]:
    c, s = cos(turn), sin(turn)
    around = [(a * cos(2 * pi * k / steps), b * sin(2 * pi * k / steps)) for k in range(steps)]
    return [(x + c * u - s * v, y + s * u + c * v) for u, v in around]


def polar(away: float, turn: float) -> Point:
    return away * cos(turn), away * sin(turn)
