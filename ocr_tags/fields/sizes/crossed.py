"""Two sizes side by side that no word explains: height, then spread (common practice, no source)."""

from __future__ import annotations

import re

from ocr_tags.measures.printed import Measure
from ocr_tags.patterns import later

_ELSE = (
    r"(?:pots?|trays?|packs?|flats?|cells?|modules?|plugs?|bands?|liners?|box(?:es)?|cartons?|crates?"
    r"|containers?|tubs?|troughs?|bowls?|baskets?|beds?|holes?|trench(?:es)?|pits?|grids?|blocks?|squares?"
    r"|areas?|plots?|patch(?:es)?|spac\w+|sets?|plant(?:ed|ing)?|thin\w*|apart|asunder|rows?|frames?|raised"
    r"|trellis\w*|mesh|net\w*|cages?|stakes?|posts?|wires?|blooms?|flowers?|lea(?:f|ves)|fruits?|berr\w+"
    r"|pods?"
    r"|heads?|cones?|petals?|bulbs?|tubers?|roots?|(?:root)?balls?|corms?|slabs?|bricks?|walls?|doors?"
    r"|windows?"
    r"|sills?|labels?|stems?|spikes?|centres|centers|mulch|sheets?|mounted|boards?|shelf|shelves|wide|tall"
    r"|high|deep|across)"
)
_ELSE_BEFORE = later(rf"\b{_ELSE}\b(?:[^.;:,\t\n]|\n(?!\n)){{0,50}},?\s?$", re.I)
_ELSE_AFTER = later(rf"(?:\s|-)(?:(?!and\b|in\b|with\b|for\b)[a-z-]+\s){{0,2}}{_ELSE}\b", re.I)
_LOW = 8.0
_WIDE = 20.0
"""In cm; a pair so low is a plant if it is so wide, for plants spread and pots are as wide as high."""


def is_plant(text: str, one: Measure, other: Measure) -> bool:
    """Whether two lengths with a cross between them, in the midst of a sentence, can be a plant's."""
    start, end = one.span[0], other.span[1]
    if _ELSE_BEFORE.search(text, max(0, start - 80), start) or _ELSE_AFTER.match(text, end):
        return False
    return large_enough(one, other)


def large_enough(one: Measure, other: Measure) -> bool:
    """Whether neither length is that of a pot or a flower."""
    high, wide = one.length.max_cm or 0, other.length.max_cm or 0
    return min(high, wide) >= 15.0 or (high >= _LOW and wide >= max(_WIDE, 2 * high - 1))
