"""Rows in two languages."""

from __future__ import annotations

from collections.abc import Sequence

from blocks import ROWS, Block
from facts import Fact
from press import Pen


def two_languages(facts: Sequence[Fact], rank: int, side_by_side: bool) -> Block:
    """English and the other language: in two columns, or each line doubled by a slash."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        down, gap = 0.0, size * 1.2
        for fact in facts:
            if not fact.other:
                down += (
                    ROWS["phrase"](pen, x, y + down, w, size, fact)
                    if not fact.label
                    else ROWS["colon"](pen, x, y + down, w, size, fact)
                )
            elif side_by_side:
                half = (w - gap) / 2
                other = Fact(fact.field, fact.other[0], fact.other[1], fact.value)
                right = x + half + gap
                tall = ROWS["colon"](pen, x, y + down, half, size, fact)
                down += max(tall, _foreign(pen, right, y + down, half, size, other))
            else:
                pen.say(fact)
                same = fact.other[1] == fact.text
                text = fact.text if same else f"{fact.text} / {fact.other[1]}"
                down += pen.text(
                    x, y + down, w, f"{fact.label} / {fact.other[0]}: {text}", pen.family.regular, size
                )
            down += size * 0.3
        return down

    fewer = (lambda: two_languages(facts[:-1], rank, side_by_side)) if len(facts) > 1 else None
    return Block(show, rank, less=fewer)


def _foreign(pen: Pen, x: float, y: float, w: float, size: float, fact: Fact) -> float:
    return pen.text(x, y, w, f"{fact.label} : {fact.text}", pen.family.italic, size)
