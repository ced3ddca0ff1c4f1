"""The two heights of a plant whose flowers rise over its leaves: "Leaves 12 in., scapes 18 in." The leaves'
is the plant's own, the stalks' the height in flower (common practice, no source). Each is taken only beside
the other: a leaf alone is as likely told by its length, a flower by its width."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.measures.printed import Measure
from ocr_tags.patterns import later

_LEAVES = (
    r"(?:(?:basal |leaf |foliage |leafy )?(?:clumps?|mounds?|tufts?|tussocks?|fans?|cushions?)"
    r"(?: of (?:[a-z-]+ ){0,2}?(?:lea(?:f|ves)|foliage|blades|straps))?"
    r"|(?:[a-z-]+ )?(?:leaves|foliage|lvs\.?|blades|straps|fronds|leafage)|feuillage|blatt(?:werk)?|blad)"
)
_STALKS = (
    r"(?:(?:(?:flower(?:ing)?|bloom(?:ing)?|seed|fl)[ .-]{0,2})?(?:stems?|stalks?|scapes?|spikes?|spires?"
    r"|plumes?|wands?|heads?|panicles?|sprays?)|pokers?|tassels?|oat-?heads|tails|racemes|sails"
    r"|(?:in|with)[ \n](?:full[ ])?(?:flower|bloom|seed|plume)|flowers?|blooms?|fleurs?|bl[üu]ten|bloemen?)"
)
_VERB = (
    r"(?:[ \n](?:itself|themselves|then|that|which|will|only))*"
    r"(?:[ \n](?:stays?|sits?(?: flat)?|lies?|lie flat|stands?|reach(?:es)?|rises?|are|is|go|goes|make"
    r"|makes|tops? out|to"
    r"|shoot|float|soar|arch|grow|tower|remains?|held|carried))?"
    r"(?:[ \n](?:at|to|up|about|around|over|well|some|above|on))*"
)
_GAP = r"(?:[ \n]|[ ]?:[ ]?|\t|(?:[ ]?[.·…_]){2,}[ ]?)"
_NOT_FLAT = (
    r"(?!\s?(?:across|wide|long|broad|in dia|apart|deep|spread|w\b|above|below|between|of (?:mulch|soil))"
    r"(?! ?[:\t]))"
)
_BEFORE = {
    kind: later(rf"(?<![^\W_]){noun}{_VERB}{_GAP}$", re.I)
    for kind, noun in (("height", _LEAVES), ("flower_height", _STALKS))
}
_BEHIND = {
    kind: later(
        rf"[ -](?:tall |high )?(?:(?!and\b|or\b|in\b|with\b|above\b|under\b|over\b"
        rf"|of\b)[a-z-]+ ){{0,2}}{noun}"
        rf"(?![^\W_])(?!\s?(?:apart|across))",
        re.I,
    )
    for kind, noun in (("height", _LEAVES), ("flower_height", _STALKS))
}
_LEAFY_FAN = later(
    r" (?:mound|clump|fan|tuft|tussock|rosette) of (?:[a-z-]+ ){0,2}(?:leaves|foliage|blades)", re.I
)
_LEAF_LENGTH = later(r"(?:^|\n)(?:lea(?:f|ves)|fronds)(?:\t| ?: ?)$", re.I)
"""In a row of facts the leaves are as likely so long."""
_UPRIGHT = later(_NOT_FLAT, re.I)
_IN_BRACKET = later(
    r"\d[^\n\t()]{1,10}\("
    r"(?:(?:fls?|flwrs?|flrs?|flowers?|blooms?|scapes?|stems?)|(?:in|with) (?:flower|bloom))[.:]? ?"
    r"(?:to |at )?$",
    re.I,
)
"""Behind a height, in brackets, that in flower: "8 in. (fls 18 in.)"."""
_SURE = 0.85
_FLOWER_OF = 12.0
"""In cm; what is less is how wide a flower is."""


def two_heights(tag: Measured) -> Iterator[Size]:
    """The leaves' height and the stalks', where a text tells exactly one of each."""
    told: dict[str, list[int]] = {"height": [], "flower_height": []}
    for place, measure in enumerate(tag.measures):
        if place and _IN_BRACKET.search(tag.text, max(0, measure.span[0] - 30), measure.span[0]):
            tag.settled.add(place)
            yield Size("flower_height", measure, _SURE * measure.certainty)
            continue
        kind = _kind(tag.text, measure)
        if kind and place not in tag.settled:
            told[kind].append(place)
    if any(len(places) != 1 for places in told.values()):
        return
    low, high = (tag.measures[told[kind][0]] for kind in told)
    top = high.length.max_cm or 0
    if top < _FLOWER_OF or top <= (low.length.max_cm or 0) or _labelled(tag):
        return
    for kind, (place,) in told.items():
        tag.settled.add(place)
        measure = tag.measures[place]
        start = measure.span[0]
        line = tag.text.rfind("\n", 0, start) + 1
        tag.spent.update(x for x in tag.labels if max(line, start - 40) <= x.start < start and x.weak)
        yield Size(kind, measure, _SURE * measure.certainty)


def _labelled(tag: Measured) -> bool:
    """Whether the text tells a height by that word as well: then that one is the plant's."""
    return any(x.kinds == ("height",) and _SAYS_HEIGHT.match(tag.text, x.start) for x in tag.labels)


_SAYS_HEIGHT = later(r"h(?:ei)?gh?ts?\b|ht\b|tall\b|h[öo]he|hauteur|hoogte", re.I)


def _kind(text: str, measure: Measure) -> str | None:
    start, end = measure.span
    if not _UPRIGHT.match(text, end):
        return None
    behind = [kind for kind, pattern in _BEHIND.items() if pattern.match(text, end)]
    before = [kind for kind, pattern in _BEFORE.items() if pattern.search(text, max(0, start - 70), start)]
    if before == ["height"] and _LEAF_LENGTH.search(text, max(0, start - 12), start):
        return None
    if _LEAFY_FAN.match(text, end):
        return "height"
    kinds = before or behind
    return kinds[0] if len(kinds) == 1 else None
