"""The name shown large: on one line or stacked, straight, arched or slanted."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from blocks import Block
from facts import Fact
from PIL import Image
from press import Colour, Pen, fit_line


@dataclass(frozen=True, slots=True)
class Title:
    """How a name is shown: font file, colour, bend ("", "arch", "slant"), stacked words, outline colour."""

    face: str
    fill: Colour
    bend: str = ""
    stacked: bool = False
    edge: Colour | None = None
    align: str = "m"
    most: float = 0.2  # of the width


def title_block(text: str, mark: str, look: Title, facts: tuple[Fact, ...], rank: int = 0) -> Block:
    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(*facts)
        down = 0.0
        for number, (line, tall) in enumerate(_lines(pen, text + mark, look, w, size)):
            down += _one(pen, x, y + down, w, line, tall, look) * (1.08 if number else 1.0)
        return down

    return Block(show, rank, 0.25)


def _lines(pen: Pen, text: str, look: Title, w: float, size: float) -> list[tuple[str, float]]:
    """Each line with its letter size. A name that would be small on one line is broken into words."""
    most = max(min(w * look.most, size * 3.4), size * 1.6)
    one = fit_line(pen, text, look.face, w * 0.96, most, 10)
    words = text.split(" ")
    if (one >= max(w * 0.115, size * 1.3) and not look.stacked) or len(words) == 1:
        return [(text, one)]
    if look.stacked:
        return [(word, fit_line(pen, word, look.face, w * 0.96, most, 10)) for word in words]
    half = (len(words) + 1) // 2
    parts = [" ".join(words[:half]), " ".join(words[half:])]
    fit = min(fit_line(pen, part, look.face, w * 0.96, most, 10) for part in parts)
    return [(part, fit) for part in parts]


def _one(pen: Pen, x: float, y: float, w: float, line: str, size: float, look: Title) -> float:
    rise = size * 0.35 if look.bend else 0.0
    tall = size * 1.25 + rise
    if pen.dry:
        return tall
    pane = Image.new("RGBA", (int(w), int(tall + size * 0.3)), (*look.fill, 0))
    inner = type(pen)(pane, pen.side, pen.said, pen.family, look.fill, pen.accent, pen.paper)
    at = {"l": 0.0, "m": w / 2, "r": w}[look.align]
    if look.edge:
        step = max(int(size / 26), 2)
        for dx, dy in ((-step, 0), (step, 0), (0, -step), (0, step), (step, step), (-step, -step)):
            inner.line(at + dx, rise + dy, line, look.face, size, look.edge, look.align)
    inner.line(at, rise, line, look.face, size, look.fill, look.align)
    pen.least = min(pen.least, inner.least)
    pen.printed.append((x, y, x + w, y + tall + size * 0.3))
    shown = _bent(pane, look.bend, rise)
    pen.image.paste(shown, (int(x), int(y)), shown)
    return tall


def _bent(pane: Image.Image, bend: str, rise: float) -> Image.Image:
    if not bend:
        return pane
    pixels = np.array(pane)
    width = pixels.shape[1]
    for column in range(width):
        t = column / width
        shift = rise * (4 * t * (1 - t)) if bend == "arch" else rise * t
        pixels[:, column] = np.roll(pixels[:, column], -int(shift), axis=0)
    return Image.fromarray(pixels)
