"""A pen for narrow columns, and for fonts that would print æ where a tag says "ae"."""

from __future__ import annotations

import re

from press import Colour, Pen

SMALLEST = 28  # pixels on the press
APART = re.compile(r"(?<=[aoAO])(?=[eE])")
NO_LIGATURE = "\u200c"  # zero width non-joiner


class NarrowPen(Pen):
    """Sets one piece of print smaller when its longest word is wider than its column.

    What cannot stand there at all measures taller than any tag, so that it is left out and not said.
    """

    def width(self, text: str, name: str, size: float) -> float:
        return super().width(_apart(text), name, size)

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
        return super().line(x, y, _apart(text), name, size, fill, align)

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
        while size > SMALLEST and not self.fits(text, name, size, width):
            size = max(size * 0.95, SMALLEST)
        tall = super().text(x, y, width, text, name, size, fill, align, leading)
        return tall if self.fits(text, name, size, width) else 1e6


def _apart(text: str) -> str:
    """Keeps fonts from joining "ae" and "oe" to one letter: the genus is Foeniculum, not Fœniculum."""
    return APART.sub(NO_LIGATURE, text)
