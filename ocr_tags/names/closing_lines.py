"""Firms that sign the last line of a side with a name of any words: "Marlby & Thrush".

Where tags are signed is common practice, no source. That a line stands there alone, its words with capitals,
is all the grammar tells; that such words speak of a firm, what was learnt from tags has to agree (`claims/`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.names import lexicon, titles
from ocr_tags.names.addresses import COUNTY, LAND, STATE, TRADE, Span, foot_of
from ocr_tags.names.signature_words import EVENT, HOUSE
from ocr_tags.names.titles import Line
from ocr_tags.names.vocabulary import is_care_word, is_tag_word
from ocr_tags.patterns import later

STRANGE = 0.85
"""How sure the words are a firm's when one of them stands on no tag else."""
PLAIN = 0.8
FEWEST_LINES = 4
"""The side is a text and not a list of headings from more lines on."""
FRONT = 0.76
"""How sure on a front, where other lines stand last as well: a second name, a series."""

_CAP = r"(?:(?:Mrs?|Ms|Bros|St|Ste|Mt|Dr|[A-ZÀ-Þ])\.|[dl]['’][A-ZÀ-Þ][\w’'-]*|[A-ZÀ-Þ][\w’'-]*)"
_JOIN = r"(?:&|\+|and|of|on|at|in|by|the|de|du|des|la|le|les|et|à|aux|van|von|der|den|und|en|am|im|zum|y)"
_BEFORE = (
    r"(?:[£€$] ?\d+(?:[.,]\d\d)?|\d+[.,]\d\d ?[€£$]"
    r"|\d[\d.,]* ?(?:cm|mm|l|ltr|lit(?:re|er)s?|L|gal\.?|in\.|\")(?: pot)?"
    r"|(?:\w+[ ])?\d+[- ]?(?:packs?|cells?|plugs?|counts?)(?: (?:tray|flat|pack))?"
    r"|(?:PLU|SKU|Item|Art\.?|Code|Lot|Batch)[ :#]*[\w-]*\d[\w-]*|\d[\d ]{10,}\d|©(?: ?\d{4})?|\(c\))"
)
_SIGNED = later(
    rf"\W*(?:{_BEFORE}[ \t·•|,;–—-]+)*(?:(?:[Ff]rom|[Bb]y)[ ])?"
    rf"(?P<name>(?:(?:The|A)[ ])?{_CAP}(?:[ ](?:{_JOIN}[ ])*{_CAP}){{0,6}})"
)
_REGION = rf"(?:{STATE}|{COUNTY}|{LAND}|N\.-?B\.|N\.S\.|P\.E\.I\.|USA|UK|NZ)"
_PLACE = r"[A-Z][\w’'.-]+(?:[ -](?:on|sur|am|le|la|[A-Z][\w’'.-]+)){0,3}"
_BEHIND = later(
    rf"(?:[ \t·•|,;–—-]+{_BEFORE})*"
    rf"(?:,? ?[(,·•|–—-] ?(?:(?:{_PLACE}, )?{_PLACE}|{_REGION})\)?)?(?:,? {_REGION})?"
    rf"(?:[ \t·•|,;–—-]+{_BEFORE}|[ \t·•|,;–—-]+\d+[.,]\d\d)*\W*$"
    r"|,? (?:UK |EU )?[Pp]lant [Pp]assport\b|[ \t]?[·•|] ?(?:Zone|RHS|Peat|H\d|No\.|www)\b"
    r"|,? (?:from|in|at|since|growing|est\.?|growers|near)\b[^.]*\.?$|[ .]+We \w+"
)
_IN_REGION = later(rf",? {_REGION}(?!\w)")
_BY = later(r".* by (?=[A-ZÀ-Þ])")
_TOWN = later(r"(?: [A-ZÀ-Þ]{4,})+(?: [A-Z]{2})?$")
"""A town in capitals behind a name that is not."""
_TOWN_BEHIND = later(r"(?<=[A-Z]{2})(?: [A-ZÀ-Þ][a-zà-ÿ][\w'’-]*){1,3}(?: [A-Z]{2})?$")
"""The same behind a name that is."""
_GROUP = later(r"(?:Sub)?[Tt]ropicals|Heirlooms|Fields|Glass|Greens|Starts|Fernery|Rosery|Hedges|Heathers")
"""What growers call themselves by, beside the words of `signature_words` and `addresses`."""
_QUOTES = tuple("'‘’\"“”`´„")
_NUMBERED = later(r"(?: (?:Lot|Batch|Item|SKU|No|EAN|UPC|Tray|ABN|Zones?|Est))+$", re.I)
"""Labels of numbers, which the line goes on with."""
_SAYS = later(
    r"\b(?:your|you|our|we|us|my|me|i|it|its|this|that|these|not|no|never|if|when|with|without|is|are|may|can|do|does"
    r"|keep|grow|grown|plant passport|passport|product|produce|native to|series"
    r"|made|for|please|enjoy|thanks?|happy|new|free|see"
    r"|reserved|rights?|patent|pending|warning|caution|hardy|zones?|sun|shade|height|spread|spacing|bloom\w*"
    r"|^water|water$|feed|fertili[sz]\w*|care|guarantee\w*|recycl\w*|price|fruiting|tag)\b",
    re.I,
)
"""Words of a note, a heading or a label: no firm is named so."""


_PRAISE = later(r"\w+(?:y|ing|ed|ful|ous|able|ive|ic|al)")
"""Words that praise plants end so: "Showy", "Prolific"."""
_KINDS = later(
    r"Annuals|Perennials|Shrubs|Trees|Flowers|Blooms|Plants|Leaves|Fruits?|Bulbs|Grasses|Vines|Climbers|Colou?rs|Pods"
)


def closing_firms(text: str, lines: Sequence[Line]) -> Iterator[tuple[str, Span, float]]:
    """The name that the last worded line of a side is, its stretch, and how sure that is.

    >>> from ocr_tags.record import TagText
    >>> from ocr_tags.names.titles import lines_of
    >>> tag = TagText(chr(10).join(["Quince", "Full sun.", "2 m", "Prune it.", "Elmscote Quinces £9"]))
    >>> [name for name, _, _ in closing_firms(tag.string, lines_of(tag))]
    ['Elmscote Quinces']
    """
    largest = max((line.size for line in lines), default=1.0)
    front = any(line.title and not line.flat for line in lines)
    for line in foot_of(lines[1:]) if front or len(lines) > FEWEST_LINES else ():
        signed = _SIGNED.match(line.text)
        if signed is None or (front and line.size >= largest):
            continue
        start = signed.start("name")
        if by := _BY.match(signed["name"]):
            start += by.end()
        name = _NUMBERED.sub("", _event_aside(line.text[start : signed.end("name")])).rstrip(" .")
        end = start + len(name)
        closes = _BEHIND.match(line.text, end)
        if not name.isupper() and (town := _TOWN.search(name) or _TOWN_BEHIND.search(name)):
            name, end = name[: town.start()], start + town.start()
        if _is_quoted(line.text, start, name):
            continue  # a cultivar
        if _IN_REGION.match(line.text, end) and not ("&" in name or _ends_firm(name)):
            continue  # an address: "Marlby Flats, ON"
        if not closes or not _may_sign(name):
            continue
        if front and not ("&" in name or _ends_firm(name)):
            continue
        strange = any(map(_is_strange, name.split()))
        certainty = FRONT if front else STRANGE if strange else PLAIN
        yield name, (line.start + start, line.start + end), certainty
        return


def _event_aside(name: str) -> str:
    """The name without the sale its owner holds, unless that is half of it: "Elm Farm & Plant Sale"."""
    body = EVENT.split(name)[0]
    return name if body.endswith("&") else body


def _may_sign(name: str) -> bool:
    """Whether it may be somebody's name: words in small and capital letters, no plant's and no note's."""
    words = name.split()
    if not 2 <= len(words) <= 7 or name.isupper() or _SAYS.search(name):
        return False
    if lexicon.is_common_name(name) or lexicon.plants_called(name) or lexicon.is_genus(words[0].title()):
        return False
    if titles.known_ending(words)[0] and not (re.search("[^s]s$", words[-1]) or "&" in words):
        return False  # "Marlby Gold Feather Grass"
    named = [word for word in words if word[0].isupper()]
    if _KINDS.fullmatch(words[-1]) and not any(map(_is_strange, named)):
        return False  # "Showy Trailing Annuals"
    if len(words) < 4 and "&" not in words and all(map(is_tag_word, words)):
        return False  # "Rock Gardens"
    return not all(map(is_care_word, named))


def _is_quoted(text: str, at: int, name: str) -> bool:
    """Whether a name stands in quotes, of which one end may be read as part of it."""
    before, within = text[:at].rstrip()[-1:], name[-1:] + text[at + len(name) :].lstrip()[:1]
    return before in _QUOTES and any(sign in _QUOTES for sign in within)


def _ends_firm(name: str) -> bool:
    last = name.split()[-1]
    return any(kind.fullmatch(last) for kind in (TRADE, HOUSE, _GROUP))


def _is_strange(word: str) -> bool:
    plain = len(word) > 2 and word[0].isupper() and not _PRAISE.fullmatch(word)
    return plain and not any(map(is_tag_word, re.split("['’.-]", word)))
