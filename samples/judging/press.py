"""A pen that prints text on a picture, wraps it, and remembers what it said, where and how small."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from faces import Family, font, runs, spare_for
from facts import Fact, Said
from PIL import Image, ImageDraw

Colour = tuple[int, int, int]


@dataclass
class Pen:
    """Prints on one side of one tag. `least` is the smallest letter height (em) so far, in pixels."""

    image: Image.Image
    side: str
    said: Said
    family: Family
    ink: Colour
    accent: Colour
    paper: Colour
    dry: bool = False
    least: int = 999
    printed: list[tuple[float, float, float, float]] = field(default_factory=list)
    draw: Any = field(init=False)

    def __post_init__(self) -> None:
        self.draw = ImageDraw.Draw(self.image)

    def say(self, *facts: Fact) -> None:
        if not self.dry:
            for fact in facts:
                self.said.add(fact, self.side)

    def width(self, text: str, name: str, size: float) -> float:
        return sum(
            float(font(used, int(size)).getlength(part)) for part, used in runs(text, name, spare_for(name))
        )

    def line(
        self,
        x: float,
        y: float,
        text: str,
        name: str,
        size: float,
        fill: Colour | None = None,
        align: str = "l",
    ) -> float:
        """Prints one line with its top at `y`; gives its width. `align`: l, m or r, of `x`."""
        wide = self.width(text, name, size)
        if self.dry:
            return wide
        self.least = min(self.least, int(size))
        left = x - {"l": 0.0, "m": wide / 2, "r": wide}[align]
        self.printed.append((left, y, left + wide, y + size * 1.3))
        at = x - {"l": 0.0, "m": wide / 2, "r": wide}[align]
        for part, used in runs(text, name, spare_for(name)):
            face = font(used, int(size))
            self.draw.text((at, y + size * 0.95), part, font=face, fill=fill or self.ink, anchor="ls")
            at += float(face.getlength(part))
        return wide

    def wrap(self, text: str, name: str, size: float, width: float) -> list[str]:
        lines: list[str] = []
        for word in text.split(" "):
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and self.width(longer, name, size) <= width:
                lines[-1] = longer
            else:
                lines.append(word)
        return lines

    def text(
        self,
        x: float,
        y: float,
        width: float,
        text: str,
        name: str,
        size: float,
        fill: Colour | None = None,
        align: str = "l",
        leading: float = 1.22,
    ) -> float:
        """Prints wrapped text; gives its height."""
        at = {"l": x, "m": x + width / 2, "r": x + width}[align]
        lines = self.wrap(text, name, size, width)
        for number, line in enumerate(lines):
            self.line(at, y + number * size * leading, line, name, size, fill, align)
        return len(lines) * size * leading

    def fits(self, text: str, name: str, size: float, width: float) -> bool:
        return all(self.width(line, name, size) <= width for line in self.wrap(text, name, size, width))


def fit_line(pen: Pen, text: str, name: str, width: float, most: float, least: float) -> float:
    """The largest size at which the text stands on one line; never below `least`."""
    size = most
    while size > least and pen.width(text, name, size) > width:
        size *= 0.95
    return max(size, least)
