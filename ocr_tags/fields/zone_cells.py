"""Zones without the word beside them: in a table, in a cell of their own, behind what tells of winter."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from ocr_tags.patterns import later

WHERE_LEFT_OUT = (
    r"(?:(?:(?:over-?)?winters?|perennial|comes back|(?:outdoors|outside) (?:all year|year[- ]round)) in"
    r"(?= [\dab]+(?: ?[–—-] ?| (?:to|through) )[\dab]+ ?(?:[.,;:)\n\t]|\Z)))"
)
"""Where a plant outlives the winter, with no word for zones: "Winters in 5-9", to the end of its clause."""
HALVES = later(
    r"(?:^|(?<=[\n\t]))(?P<low>(?:1[0-3]|0?[1-9])(?:[ab](?= ?[–—-])|(?= ?[–—-] ?\d{1,2}[ab]))) ?[–—-] ?"
    r"(?P<high>(?:1[0-3]|0?[1-9])[ab]?)(?= ?(?:[\n\t]|\Z))"
)
"""A range in a cell of its own, of which one end is half a zone."""
HARDY_ALONE = later(r"hardy(?: in| from)?\Z")
CLAUSE_ENDS = later(r" ?(?:[.,;)\n\t]|\Z)")
""""Hardy 8-10." tells zones; degrees would be told by "to" or their sign."""
_HEAD = later(r"\W*(?:usda )?(?:hardiness )?zones?\W*", re.I)
_Cell = tuple[int, int]


def below_or_above(text: str) -> Iterator[_Cell]:
    """The cells right below or above a cell that says "Zone", in rows of as many cells, three at least."""
    rows = list(_rows(text))
    for upper, lower in pairwise(rows):
        if len(upper) != len(lower) or len(upper) < _COLUMNS:
            continue
        for over, under in zip(upper, lower, strict=True):
            if _HEAD.fullmatch(text, *over):
                yield under
            elif _HEAD.fullmatch(text, *under):
                yield over


_COLUMNS = 3
"""Two cells side by side may as well be two lists."""


def _rows(text: str) -> Iterator[list[_Cell]]:
    start = 0
    for line in text.split("\n"):
        cells, at = [], start
        for cell in line.split("\t"):
            cells.append((at, at + len(cell)))
            at += len(cell) + 1
        yield cells
        start += len(line) + 1
