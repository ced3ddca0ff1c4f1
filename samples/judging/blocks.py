"""Blocks of print: rows, tables, columns, prose; each can be measured before it is printed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import icons
from facts import Fact
from press import Pen

Print = Callable[[Pen, float, float, float, float], float]
"""(pen, x, y, width, letter size) → height used"""


@dataclass(frozen=True, slots=True)
class Block:
    """`rank` tells what is left out first for want of room: the highest. `less` is the same with less."""

    print: Print
    rank: int = 0
    gap: float = 0.35
    less: Callable[[], Block] | None = None


def height_of(pen: Pen, block: Block, width: float, size: float) -> float:
    before, pen.dry = pen.dry, True
    try:
        return block.print(pen, 0, 0, width, size)
    finally:
        pen.dry = before


def fill(
    pen: Pen, blocks: Sequence[Block], box: tuple[float, float, float, float], most: float, least: float
) -> float:
    """Prints the blocks one under another, as large as they fit; what does not fit at all is left out."""
    x, y, width, height = box
    kept = list(blocks)
    while kept:
        size = most
        while size >= least:
            tall = sum(height_of(pen, block, width, size) + block.gap * size for block in kept)
            if tall <= height:
                return _down(pen, kept, (x, y, width), size, min((height - tall) / len(kept), size * 0.5))
            size *= 0.95
        last = max(range(len(kept)), key=lambda n: (kept[n].rank, n))
        fewer = kept[last].less
        kept[last : last + 1] = [fewer()] if fewer else []
    return y


def _down(
    pen: Pen, blocks: Sequence[Block], at: tuple[float, float, float], size: float, more: float
) -> float:
    x, y, width = at
    for block in blocks:
        y += block.print(pen, x, y, width, size) + block.gap * size + more
    return y


BARE = {
    "height",
    "spread",
    "spacing",
    "flower_height",
    "row_spacing",
    "bloom",
    "hardiness",
    "min_temperature",
}
"""Figures that say nothing without a label: alone they stand in their sentence."""


def row(fact: Fact, style: str, rank: int) -> Block:
    """One fact in one of the row styles."""
    return Block(
        lambda pen, x, y, w, size: ROWS[style if fact.label else "phrase"](pen, x, y, w, size, fact), rank
    )


def _colon(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    label = f"{fact.label}: "
    pen.say(fact)
    wide = pen.width(label, pen.family.bold, size)
    if wide + pen.width(fact.text, pen.family.regular, size) <= w:
        pen.line(x, y, label, pen.family.bold, size)
        pen.line(x + wide, y, fact.text, pen.family.regular, size)
        return size * 1.2
    pen.line(x, y, label, pen.family.bold, size)
    words = fact.text.split(" ")
    first = 0
    while (
        first < len(words) and wide + pen.width(" ".join(words[: first + 1]), pen.family.regular, size) <= w
    ):
        first += 1
    pen.line(x + wide, y, " ".join(words[:first]), pen.family.regular, size)
    return size * 1.2 + pen.text(
        x, y + size * 1.2, w, " ".join(words[first:]), pen.family.regular, size, leading=1.2
    )


def _inline(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    return pen.text(x, y, w, f"{fact.label} {fact.text}", pen.family.regular, size)


def _caps(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    return pen.text(x, y, w, f"{fact.label}: {fact.text}".upper(), pen.family.regular, size * 0.92)


def _table(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    left = w * 0.42
    tall = max(
        pen.text(x + size * 0.2, y, left - size * 0.4, fact.label, pen.family.bold, size * 0.92),
        pen.text(x + left, y, w - left, fact.text, pen.family.regular, size),
    )
    if not pen.dry:
        pen.draw.line(
            (x, y + tall + size * 0.12, x + w, y + tall + size * 0.12), pen.accent, max(int(size / 22), 1)
        )
    return tall + size * 0.15


def _dots(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    room = (
        w - pen.width(fact.label, pen.family.regular, size) - pen.width(fact.text, pen.family.regular, size)
    )
    dot = pen.width(".", pen.family.regular, size)
    if room < 4 * dot:
        return _stacked(pen, x, y, w, size, fact)
    wide = pen.line(x, y, fact.label, pen.family.regular, size)
    pen.line(x + wide, y, "." * int((room - dot) / dot), pen.family.regular, size)
    pen.line(x + w, y, fact.text, pen.family.regular, size, align="r")
    return size * 1.2


def _stacked(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    small = size * 0.8
    tall = pen.text(x, y, w, fact.label.upper(), pen.family.bold, small, pen.accent, leading=1.1)
    return tall + pen.text(x, y + tall, w, fact.text, pen.family.regular, size)


def _below(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    tall = pen.text(x, y, w, fact.text, pen.family.bold, size * 1.05, align="m", leading=1.1)
    return tall + pen.text(
        x, y + tall, w, fact.label.lower(), pen.family.regular, size * 0.8, pen.accent, "m", 1.1
    )


def _bullet(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    if not pen.dry:
        r = size * 0.12
        pen.draw.ellipse((x, y + size * 0.62 - r, x + 2 * r, y + size * 0.62 + r), fill=pen.accent)
    pen.say(fact)
    return pen.text(
        x + size * 0.6,
        y,
        w - size * 0.6,
        fact.sentence or f"{fact.label} {fact.text}",
        pen.family.regular,
        size,
    )


def _margin(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    """The value at the right margin, its label at the left."""
    pen.say(fact)
    if pen.width(f"{fact.label}   {fact.text}", pen.family.regular, size) > w:
        return _stacked(pen, x, y, w, size, fact)
    pen.line(x, y, fact.label, pen.family.italic, size)
    pen.line(x + w, y, fact.text, pen.family.bold, size, align="r")
    return size * 1.2


def _phrase(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    pen.say(fact)
    text = fact.sentence if fact.field in BARE else fact.text
    return pen.text(x, y, w, text, pen.family.bold if fact.field == "warnings" else pen.family.regular, size)


def _icon(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    """A mark before the words; figures of size need no label beside it."""
    if not fact.icon:
        return _colon(pen, x, y, w, size, fact)
    side = size * 1.7
    icons.draw(pen, fact.icon, x, y, side)
    pen.say(fact)
    text = (
        fact.text
        if fact.field in ("height", "spread", "light", "bloom", "min_temperature")
        else f"{fact.label}: {fact.text}"
    )
    tall = pen.text(x + side * 1.3, y + size * 0.25, w - side * 1.3, text, pen.family.regular, size)
    return max(tall + size * 0.25, side)


ROWS = {
    "colon": _colon,
    "inline": _inline,
    "caps": _caps,
    "table": _table,
    "dots": _dots,
    "stacked": _stacked,
    "below": _below,
    "bullet": _bullet,
    "margin": _margin,
    "phrase": _phrase,
    "icon": _icon,
}


def prose(facts: Sequence[Fact], rank: int) -> Block:
    """Sentences run together into one paragraph."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(*facts)
        said, rest = [], list(facts)
        while rest:
            fact = rest.pop(0)
            words = fact.sentence or fact.text
            if fact.field == "height" and rest and rest[0].field == "spread":
                more = rest.pop(0).sentence
                words += f" and {more[0].lower()}{more[1:]}"
            said.append(words.rstrip(".") + ".")
        return pen.text(x, y, w, " ".join(said), pen.family.regular, size)

    return Block(show, rank, less=(lambda: prose(facts[:-1], rank)) if len(facts) > 1 else None)


def columns(facts: Sequence[Fact], style: str, rank: int) -> Block:
    """The rows in two columns side by side."""
    half = (len(facts) + 1) // 2

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        gap, tall = size * 1.2, 0.0
        for number, part in enumerate((facts[:half], facts[half:])):
            down = 0.0
            for fact in part:
                print_row = ROWS[style if fact.label else "phrase"]
                left = x + number * (w + gap) / 2
                down += print_row(pen, left, y + down, (w - gap) / 2, size, fact) + size * 0.35
            tall = max(tall, down)
        return tall

    return Block(show, rank, less=(lambda: columns(facts[:-1], style, rank)) if len(facts) > 1 else None)


def cells(facts: Sequence[Fact], across: int, rank: int) -> Block:
    """Values with their labels below, in a grid."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        tall = 0.0
        for start in range(0, len(facts), across):
            part = facts[start : start + across]
            wide = w / len(part)
            tall += size * 0.4 + max(
                _below(pen, x + n * wide + size * 0.2, y + tall, wide - size * 0.4, size, fact)
                for n, fact in enumerate(part)
            )
        return tall

    return Block(show, rank, less=(lambda: cells(facts[:-1], across, rank)) if len(facts) > 1 else None)
