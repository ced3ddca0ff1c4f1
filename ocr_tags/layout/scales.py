"""Scales with a pointer ("low ———o—— high"): the words at their ends say what could be, not what is."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import level_rows

_ENDS = frozenset(
    [
        *(("low", "high"), ("low", "bright"), ("dim", "bright"), ("dark", "bright"), ("dry", "wet")),
        *(("dry", "moist"), ("less", "more"), ("little", "lots"), ("min", "max"), ("slow", "fast")),
        *(("easy", "hard"), ("easy", "expert"), ("cool", "warm"), ("cold", "hot"), ("never", "often")),
    ]
)
"""Opposites of amount (common practice, no source). Sun and shade are none: side by side they are a range."""
LONG = 3.0
"""How many times its end words a scale is long, at least."""


def without_scales(lines: Sequence[Line]) -> list[Line]:
    """The lines but the two words, alone in their row and far apart, at the ends of a scale."""
    ends = {
        id(line)
        for row in level_rows(lines)
        if len(row) == 2
        for left, right in pairwise(row)
        if (left.text.casefold(), right.text.casefold()) in _ENDS
        and right.place.x - left.place.right > LONG * max(left.place.w, right.place.w)
        for line in row
    }
    return [line for line in lines if id(line) not in ends]
