"""Colours that a text names and nobody took: where one is left over, the list that was read may lack it.

A colour list is right only when it is whole. So a plain colour word that was passed over speaks against the
list, unless what stands beside it is no part of this plant: a neighbour in the bed, a visitor, a sick leaf.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.fields.colours.clauses import NAME, plain
from ocr_tags.fields.colours.runs import ONE
from ocr_tags.fields.phrases import flowing, fold
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

PASSED_OVER = 0.65
"""What is left of the certainty of a list beside which another colour stands unread."""


def is_left_over(tag: TagText, found: Sequence[Found[str]]) -> bool:
    r"""Whether a colour of this plant seems to stand on the text and not in the list.

    >>> tag = TagText("White flowers, and later a riot of scarlet. Plant with blue fescue.")
    >>> white = Found("White", (0, 5), 0.9)
    >>> is_left_over(tag, [white]), is_left_over(TagText("White flowers. Good with blue fescue."), [white])
    (True, False)
    """
    return any(True for _ in _left_over(tag, found))


def _left_over(tag: TagText, found: Sequence[Found[str]]) -> Iterator[str]:
    folded = flowing(tag.string)
    told = {word for one in found for word in _WORDS.findall(fold(one.value))}
    for match in ONE.finditer(folded):
        start, end = match.span()
        if any(one.span[0] < end and start < one.span[1] for one in found):
            continue
        words = _WORDS.findall(match[0])
        if words[0] == "rose" or {*words} <= told or not plain(match[0]) or _NO_COLOUR.fullmatch(words[-1]):
            continue
        if not tag.string[start].islower() or tag.line_at(start).size >= NAME:
            continue  # a name
        if _OF_OTHERS.match(folded, end) or _OTHERS.search(folded, max(0, start - 60), start):
            continue
        yield match[0]


_WORDS = re.compile(r"[^\W\d_]+")
_NO_COLOUR = later(
    r"(?:roses|lime|mix|mixed|assorted|variegated|rot|wit|pearl|butter|buttermilk|buttercream|caramel"
    r"|watermelon|ginger"
    r"|wine|rust|tan|blush|yellow(?=.)|brown|gray|grey|lila|rosa|bla|gul|verde|charcoal|champagne|chocolate"
    r"|mahogany|copper|terracotta|[a-z]*colou?r(?:ed)?|primrose|bronze(?=.)|mulberry|claret|merlot"
    r"|amber|brownish|yellowish)"
)
"""Words that name other things on tags more often than a colour."""
_OF_OTHERS = later(
    r"[ -](?:of the|thumb|soils?|clay|clover|roofs?|walls?|fingers?|petunias?|latex|butterfl\w+"
    r"|ribbon|wood|bottoms?|noses?|volcanic"
    r"|fescue|beans?|asters?|stars?|pine|oak|cedar|light|house|paper|label|tags?|tape|plastic|ink"
    r"|pots?|wine|tea"
    r"|hours|water|fly|flies|spiders?|spots?|mould|mold|algae|sand|grit|gravel|stones?|granite|rock"
    r"|sap|milk|ice"
    r"|beetles?|admiral|tit|finch\w*|hummingbird\w*|bees?|moths?|larvae?|peppers?|onions?|cabbage"
    r"|vinegar|sugar|rice"
    r"|manure|crop|compost|leafed|waste|bin|gloves|ball|tip|it|off|out)\b"
)
_OTHERS = later(
    r"\b(?:with|beside|near|among|amid|between|next to|like|unlike|companions?|neighbou?rs?|pairs?|cousins?"
    r"|attracts?|if|when|unless|avoid|prevents?|remove|against|heart of|will|may|can|turns it|means?|until"
    r"|before|no|not|never|nor|than|stop|hates?)\b[^.;:\n]{0,40}$|\b(?:in the|on) $"
)
"""Before a neighbour's colour, or that of a leaf which is ill."""
