"""Colours and a time that stand together, with no flower named: "Deep purple, June-July", "May; pure white".

Tags that save words print the flower's colour and its months and nothing else. The two vouch for each other:
the time is that of bloom because colours lead to it, and the colours are the flower's because a time follows.
Leaves, fruits and barks have a colour and a season as well, so a word of those beside them silences both.
"""

from __future__ import annotations

import re

from ocr_tags.fields.colours.clauses import DETAIL, PLANTS, TURNS
from ocr_tags.fields.colours.words import colour_list
from ocr_tags.fields.phrases import fold
from ocr_tags.fields.small_letters import all_small
from ocr_tags.patterns import later

Stretch = tuple[int, int]

_COLOURS = later(
    lambda: (
        rf"(?P<list>{colour_list()}(?:,?{TURNS}(?:[a-z]+ )?{colour_list()})*)(?: {DETAIL})?(?: (?:mix"
        rf"|mixed))?"
    )
)
_LED = (
    r"(?:, (?!(?:plant|sow|in|from)\b)[a-z][a-z -]{2,24}){0,2}"
    r"(?P<link>[,;.!/]| [-–—/|]| \(| in| from|)[ ]?(?:in |from |all |throughout |during )*"
)
_OPENS_TIME = later(
    lambda: (
        rf"[\W_]*(?:colou?rs?(?: of flowers?)?: ?|(?:[a-z]{{3,}}(?:y"
        rf"|ing) )(?!and))?{_COLOURS.pattern}{_LED}"
    )
)
_STARTS = later(r"(?:^|[.;!?] |, | [-–—~] )(?=[\w(])")
_FOLLOWS = later(
    lambda: rf"\.?\)?(?:[,;:]| [-–—|/]) ?\(?{_COLOURS.pattern}(?=\)? ?(?:[\n\t.;,|•·)/]|$| [-–—] ))"
)
_CELL = later(r"[\n\t|•·]")
_EDGE = later(r"[\n\t|•·]| / ")
_NEIGHBOUR = later(r" ?(?:[\n|•·]| / ) ?[^\w\n\t(]{0,2}")
_SCENTED = r"(?:(?: [-–—]|,)? (?:scented|fragrant))?"
_WHOLE_CELL = later(lambda: rf"[\W_]*{_COLOURS.pattern}{_SCENTED}\W*")
_CLOSES = later(r"[.)]{0,2}(?: ?(?:\n|[|•·])| / ) ?[^\w\n\t(]{0,2}")
_CELL_BEHIND = later(lambda: rf"{_COLOURS.pattern}{_SCENTED}(?= ?(?:[\n\t.|•·]| /|$))")
_LEAD = later(r"[\W_]*(?:from |in |all |throughout )*")
_OTHER = later(
    r"\b(?:foliage|leaf|leaves|blades|culms|berr\w+|fruits?|fruiting|hips?|bark|stems?|pods?|skin|flesh"
    r"|cones?"
    r"|needles?|twigs?"
    r"|fall|autumn|winter|seed\w*|crops?|harvest\w*|pick\w*|ripe\w*|plant|planting|plants? (?:in|out)"
    r"|sow\w*"
    r"|prun\w*|cut|feed|fertili\w+|divide|ship\w*|available|in stock|packed|sale|also|pot|interest|growth"
    r"|shoots"
    r"|tips|turn\w*|more|other|mulch\w*|water\w*|keep|stake|peppers?|squash|chill?i\w*|beans?|onions?"
    r"|kale|lettuce|means?|signs? of)\b"
)
"""Beside colours and a time, what says that they are no flower's, or not now on this plant."""


_EATEN = later(
    r"(?:^|[\n\t.;]) ?(?:[a-z-]+ )?(?:vegetables?|fruit(?: trees?)?|tomato(?:es)?|peppers?|apples?|squash"
    r"|plums?|pears?"
    r"|(?:[a-z]+ )?beans?|peas|courgettes?|zucchini|cucumbers?|pumpkins?|melons?|figs?|blueberr(?:y|ies)"
    r"|raspberr(?:y|ies)|strawberr(?:y|ies)|grapes?)(?= ?(?:[\n\t.,;]|$))"
)
"""Where what is sold is eaten, a colour and late months may be those of the crop."""


_HARVESTED = later(r"\b(?:harvest\w*|ripens?|ripening|pick(?:ing)?|crops?|cropping|sow(?:ing)?)\b")


def is_of_crop(folded: str) -> bool:
    """Whether what is sold is eaten, so that a season may be that of its crop."""
    return bool(_EATEN.search(folded) or _HARVESTED.search(folded))


def _of_crop(folded: str, time: str) -> bool:
    return bool(_EATEN.search(folded) and _LATE.match(time))


_LEAFY = later(r"(?:[a-z]+[ -])*(?:green|gr[ea]y|bronze|brown)")
"""Of leaves rather than of flowers: "Green in summer"."""
_LATE = later(r"(?:early |mid |late |mid-)?(?:jul|aug|sep|oct|nov|late summer)")


def colours_before(text: str, start: int, *, months: bool = True) -> Stretch | None:
    r"""The colours that lead to the time beginning at `start`, in its own clause or the cell before.

    >>> tag = "Sun\nDeep purple, June-July"
    >>> tag[slice(*colours_before(tag, 17))]
    'Deep purple'
    >>> colours_before("Berries\nRed, September", 13)
    """
    folded = fold(text)
    if _of_crop(folded, folded[start : start + 24]):
        return None
    begin = max((match.end() for match in _CELL.finditer(folded, 0, start)), default=0)
    for opening in _STARTS.finditer(folded[begin:start]):
        at = begin + opening.end()
        told = _OPENS_TIME.fullmatch(folded, at, start)
        if told and (told["link"] or months) and (told["link"].strip(" infrom") or surely(told["list"])):
            beside = folded[begin : told.start("list")] + folded[told.end("list") : start]
            silent = _LEAFY.fullmatch(told["list"]) or _OTHER.search(_around(text, folded, begin) + beside)
            return None if silent else told.span("list")
    if not _LEAD.fullmatch(folded, begin, start):
        return None
    gap = max((match.end() for match in _NEIGHBOUR.finditer(folded, 0, start)), default=0)
    return _cell_before(text, folded, gap) if gap else None


def _around(text: str, folded: str, begin: int) -> str:
    """The words above the line from `begin` that may say what it speaks of: a label, or the same sentence."""
    if not begin or folded[begin - 1] != "\n":
        return folded[max(0, begin - 24) : begin]
    above = folded[folded.rfind("\n", 0, begin - 1) + 1 : begin - 1]
    runs_on = text[begin : begin + 1].islower() and not all_small(text, begin) and above[-1:] not in ".;!"
    label = len(above) <= 20 and not any(character.isdigit() for character in above)
    return above + " " if runs_on or label else ""


def _cell_before(text: str, folded: str, end: int) -> Stretch | None:
    """Colours alone in the cell that ends where the time's begins: "Vivid red | June"."""
    close = next(
        (match.start() for match in _NEIGHBOUR.finditer(folded, max(0, end - 6), end) if match.end() == end),
        end,
    )
    begin = max((gap.end() for gap in _EDGE.finditer(folded, 0, close)), default=0)
    told = _WHOLE_CELL.fullmatch(folded, begin, close)
    if told is None or not surely(told["list"]) or _OTHER.search(_around(text, folded, begin)):
        return None
    return told.span("list")


def colours_after(text: str, start: int, end: int) -> Stretch | None:
    r"""The colours that follow a time which opens its cell, or fill the cell behind it.

    >>> tag = "Sun\nMay; pure white"
    >>> tag[slice(*colours_after(tag, 4, 7))]
    'pure white'
    >>> colours_after("Pick in May, red", 8, 11)
    """
    folded = fold(text)
    begin = max((match.end() for match in _CELL.finditer(folded, 0, start)), default=0)
    if not _LEAD.fullmatch(folded, begin, start) or _OTHER.search(_around(text, folded, begin)):
        return None
    told = _FOLLOWS.match(folded, end)
    if told and surely(told["list"]) and "\n" not in told[0]:
        return told.span("list")
    return cell_after(text, end)


def cell_after(text: str, end: int) -> Stretch | None:
    """The colours alone in the cell behind a time that ends its own: "May to July" and "Scarlet" below."""
    folded = fold(text)
    closed = _CLOSES.match(folded, end)
    told = closed and _CELL_BEHIND.match(folded, closed.end())
    return told.span("list") if told and (surely(told["list"]) or "scented" in told[0]) else None


def surely(words: str) -> bool:
    """Whether words are colours and no plant's name: "Rose" and "Lilac" may be either."""
    return any(not PLANTS.fullmatch(part) for part in re.split(r"[ ,/&-]+", words))
