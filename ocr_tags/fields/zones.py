"""How much cold a plant bears: hardiness zones.

A zone number alone says nothing ("Zone in on savings", "Time zone 5"): the words before it must leave
no choice. Sunset zones, which share the word and run to 24, are not hardiness zones and stay unread.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from ocr_tags.fields.zone_cells import CLAUSE_ENDS, HALVES, HARDY_ALONE, WHERE_LEFT_OUT, below_or_above
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Hardiness

GAP = r"(?:[ ]?\?[ ]?(?:A[.:])?)?(?:[ ]?[]:.=·•…_|]){0,30}(?:[ ][–—-][ ])?[ ]?[\t\n]?(?!\n)[ :.]{0,4}"
_DASH = r"\s?(?:-{1,2}|[–—−‐‑~])\s?"
TO = rf"(?:{_DASH}|\s?(?:to|thru|through|bis|tot|[àa] ?/ ?to|to ?/ ?[àa]|à)\s?|\s(?:a|al|and|et|&)\s)"
ZONE = r"(?:1[0-3]|0?[1-9])(?!\d)(?:[ab](?![^\W\d_])| [ab](?=\s*(?:$|[\n\t,.;)–-]|to\b)))?"
_WORN_ZONE = r"(?:[1lI|][0-3OoIl|]|[1-9SBAZ]|[sgq](?=[ab]))[ab]?"
_NO_LETTER_BEFORE, NO_WORD_AFTER = r"(?<![^\W\d_])", r"(?![^\W_])"

_HEAD = (
    r"(?:(?:usda|u\.s\.d\.a\.?|us)[ ]?(?:plant )?(?:hardiness |cold )?(?:[sz]ones?|zn\.?)?"
    r"|(?:plant |cold |winter )?hard(?:i?ness|y)(?: (?:to|in|from|down to))?(?: usda)?(?: (?:zone(?:s"
    r"|\(s\))?|Z(?=\d)))?|"
    r"zone(?:s|\(s\))?(?: usda)?"
    r"|zones? de rusticit[ée](?: usda)?|rusticit[ée](?: zones?)?|zonas?(?: de (?:rusticidad|"
    r"resistencia))?(?: usda)?"
    rf"|{WHERE_LEFT_OUT}"
    r"|winterh[äa]rtezonen?|whz|winterhardheidszone|Z(?=[ ]?\d|\.|[:\t] ?\d)|zn(?=[ .:\t]))"
)
_ALSO = (
    r"(?: ?/ ?(?:winter hardy|hardy|hardiness|(?:usda |hardiness |grow )?zones?|"
    r"zonas?(?: de (?:rusticidad|resistencia))?|zones? de rusticit[ée]|rusticit[ée]|whz|"
    r"winterh[äa]rtezone|winterhardheidszone))?"
)
"""The label again in a second language."""
RANGE = later(
    rf"{_NO_LETTER_BEFORE}(?P<head>{_HEAD}{_ALSO})(?: ?/(?=\t))?{GAP}(?:usda[ :]{{1,2}}|z ?\n)?"
    rf"(?P<low>{ZONE})(?:{TO}(?:zones? )?(?P<high>{ZONE}))?"
    rf"(?P<list>(?:, ?{ZONE}){{1,12}})?{NO_WORD_AFTER}"
    r"(?P<open> ?(?:\+|(?:(?:and|or|on|&)[ \n](?:up(?:wards?)?|above|over|higher|warmer|warm)"
    r"|up(?:wards?)?(?![ \n]to\b)|onwards?)\b|et plus\b|o más\b))?"
    rf"(?! ?[–—-] ?\w{{1,2}}(?!\w)|[.,]\d|·\d(?![\d .–-]{{0,8}}(?:cm|m|ft|in)\b)|, ?(?:1[4-9]|2\d)|"
    rf" ?(?:in\b(?! (?:full|part|sun|shade|most|the|all|well|"
    rf"containers?))|inch|ft\b|feet|cm\b|m\b|[\"”″°º%']))",
    re.I,
)
_WORN_RANGE = later(
    rf"\b(?P<head>(?:usda )?(?:hardiness )?[zZ]ones?:?) ?(?P<low>{_WORN_ZONE})"
    rf"(?:{_DASH}(?P<high>{_WORN_ZONE}))?"
    r"(?![^\W_]|[ ]?[-–\"”°']|, ?\d| [a-z])"
)
_LOST_DASH = later(r"\b[zZ](?:ones|ONES):? ?(?P<low>[1-9])(?P<high>[2-9]|1[0-3])(?![\w–-]|[ ]?[-–])")
_LETTERS = str.maketrans(
    {
        "S": "5",
        "s": "5",
        "g": "9",
        "q": "9",
        "B": "8",
        "A": "4",
        "Z": "2",
        "l": "1",
        "I": "1",
        "|": "1",
        "O": "0",
        "o": "0",
    }
)

_RANGE_AFTER_MARK = later(
    rf"[🌡❄]\ufe0f? ?(?P<low>{ZONE}){TO}(?P<high>{ZONE}){NO_WORD_AFTER}"
    r"(?! ?(?:[°º˚*\"”″'’′%$€£]|(?:[CF]|deg\w*|in|inch\w*|ft|feet|[cm]?m|"
    r"days?|weeks?|months?|hours?|hrs?|x)\b)"
    r"|[.,/-]\d)",
    re.I,
)
"""A thermometer or snowflake drawn before zones (common practice, no source)."""
_RANGE_OVER_LABEL = later(
    rf"(?:^|(?<=[\n\t]))(?P<low>{ZONE}){TO}(?P<high>{ZONE})[\n\t]"
    r"(?:usda |hardiness )*zones?(?=\s*(?:$|\n(?!\d)))",
    re.I,
)
_CELL = later(rf"\W*(?P<low>{ZONE}){TO}(?P<high>{ZONE})\W*", re.I)
_BARE_RANGE = later(
    r"(?:^|(?<=\n))(?P<low>0?[2-9][ab]?) ?[–—-] ?(?P<high>(?:1[01]|[5-9])[ab]?)(?= ?(?:\n|$)"
    r"| {1,4}\$ ?\d)",
    re.I,
)
_FEET_OR_INCHES = later(r"\d ?(?:[\"”″'’′]|in\b|inch|ft\b|feet)", re.I)
_ZONE_TOO = later(r"\bzones?\b|\busda\b|\brhs\b|hardiness|°", re.I)
_WIDE = 4
"""So many zones at least lie between the ends of a bare range; narrower ones may be a size in feet, a count
or hours (common practice, no source)."""
_FAR_END_LOST = later(
    r"[ \n]?[–—-](?! \w)|[ \t](?:[a-z]{1,2} )?(?:1[0-3]|[1-9])(?![\w\"”″'’½–-]| ?(?:in|ft|cm|m)\b)"
)

# Words before (or after) that make the number something else, or turn its meaning round.
_NOT_HARDINESS = later(
    r"(?:\b(?:sunset|root|water(?:ing)?|tolerant to|time|heat|ahs|comfort|drought|climate|western|"
    r"annuals? (?:[a-z]+ ){0,2}(?:in|for)(?: [a-z]+)?|annuals? (?:here|with us) ?\("
    r"|(?:for|at) (?:my|our|his|her|their) [a-z'’]+ in|not|n['’]est pas|never|below|"
    r"except|outside|than|treat as|indoors in|overwinter (?:indoors )?in|parking|school|loading|fire|"
    r"half|semi|tender|evergreen|deciduous|dies? (?:back|down))"
    r"[ :]{0,2}(?:hardy )?(?:in |for |to |below )?"
    r"|\b(?:dig|lift|store|mulch|protect(?:ion|ed)?|bring|move|heel)\b[^.;:\n\t]{0,25} (?:in|for) )$",
    re.I,
)
_FOREIGN_AFTER = later(
    r"[ :,]{0,2}(?:grown? |treat |use )?as (?:an )?annuals?\b(?! elsewhere)|"
    r" ?: ?(?:water|depth|submerge)\w*\b[^.;\n\t]{0,24}\d ?(?:cm|mm|in\b|[\"”])|"
    r"[ :,–-]{1,3}(?:dig|lift|store|bring|move|mulch|protect)\b"
    r"(?![^.;\n\t]{0,30}\b(?:elsewhere|colder|cooler|north|outside|other|zones?)\b)|[^\n\t]{0,20}\b(?:inc"
    r"|llc|"
    r"ltd|corp|co\.|gmbh|irrigation|parking|sprinklers?|drip|loading|aisle|weeks?|days?|"
    r"months?|hours?|hrs?|times?|minutes?|min)\b",
    re.I,
)
_ALONE_BEFORE = later(r"(?:^|[\n\t.,;:|•·/(–-]|\b(?:perennial|hardy|in|to|through|en|canadian)) ?$", re.I)
_Z_ENDS = later(r"(?<![^\W_])z$")
_NO_BOTHER = later(
    r"(?:[ \n](?:cold|winters?|lows?|frosts?|freezes?))?[ \n](?:is|are|does|do|will|wo|give|poses?"
    r"|hold)s?(?:[ \n]?n['’]t|[ \n](?:not?|nothing"
    r"|never|fine|ok))\b",
    re.I,
)
"""Behind a zone whose cold does the plant no harm."""
_Z_ALONE = later(r"(?:^|[\n\t]|(?:\d ?(?:ft|in|'|\"|cm|m)\.?|[IVX]) {1,3})[Zz]\.? ?\d[ab]?\s?\Z", re.I)
_OF_PLANT = later(r"\d ?cm\b|\b(?:sun|shade|peren\w*|shrub|tree|height|ht|spread|bloom\w*)\b", re.I)
""""Z4" that is its cell, or stands behind the size, where the tag speaks of a plant: else a shelf."""
_CANADA = later(r"canad|\bcan\.", re.I)

# ---------------------------------------------------------------- hardiness zones


def read_hardiness(tag: TagText) -> Iterator[Found[Hardiness]]:
    """Every hardiness zone or range of zones on the tag, as printed; one zone alone is the coldest.

    >>> [found.value for found in read_hardiness(TagText("USDA Zones 4-8"))]
    [Hardiness(min_zone='4', max_zone='8')]
    >>> list(read_hardiness(TagText("Sunset zones 14-24, Zone in on savings")))
    []
    """
    clean = [
        claimed
        for match in RANGE.finditer(tag.string)
        if (found := _hardiness(tag.string, match))
        for claimed in _with_above(tag.string, match, found)
    ]
    clean += [
        Found(Hardiness(_tidy(x["low"]), None), x.span(), EITHER) for x in _NOT_BELOW.finditer(tag.string)
    ]
    yield from clean
    in_table = [match for cell in below_or_above(tag.string) if (match := _CELL.fullmatch(tag.string, *cell))]
    if not clean and len(in_table) == 1:
        low, high = _tidy(in_table[0]["low"]), _tidy(in_table[0]["high"])
        if _order(low) < _order(high):
            clean.append(Found(Hardiness(low, high), in_table[0].span(), 0.85))
            yield clean[-1]
    for pattern, certainty in ((_RANGE_AFTER_MARK, 0.6), (_RANGE_OVER_LABEL, 0.65)) if not clean else ():
        for match in pattern.finditer(tag.string):
            low, high = _tidy(match["low"]), _tidy(match["high"])
            if _order(low) < _order(high):
                clean.append(Found(Hardiness(low, high), match.span(), certainty))
                yield clean[-1]
    if not clean:
        clean += _bare_range(tag.string)
        yield from clean
    if not clean:
        yield from _worn_hardiness(tag.string)


def _with_above(text: str, match: re.Match[str], found: Found[Hardiness]) -> Iterator[Found[Hardiness]]:
    """The range below a label, and the one right above it: where both stand there, either may be meant."""
    above = _RIGHT_ABOVE.search(text, max(0, match.start() - 12), match.start())
    if not above or "\n" not in text[match.end("head") : match.start("low")]:
        yield found
        return
    yield replace(found, certainty=EITHER)
    yield Found(Hardiness(_tidy(above["low"]), _tidy(above["high"])), above.span(), EITHER)


_RIGHT_ABOVE = later(rf"(?:^|\n)(?P<low>{ZONE}){TO}(?P<high>{ZONE})\n$")
EITHER = 0.45
"""How sure each of two ranges is, of which one is that of the label between them."""


def _bare_range(text: str) -> Iterator[Found[Hardiness]]:
    """The only "3-8" in a line of its own on a tag that measures in feet or inches and speaks of no zone, or
    the only "9b-11" of a tag."""
    halves = list(HALVES.finditer(text))
    if len(halves) == 1 and _order(_tidy(halves[0]["low"])) < _order(_tidy(halves[0]["high"])):
        yield Found(Hardiness(_tidy(halves[0]["low"]), _tidy(halves[0]["high"])), halves[0].span(), 0.75)
        return
    told = list(_BARE_RANGE.finditer(text))
    if len(told) != 1 or _ZONE_TOO.search(text) or not _FEET_OR_INCHES.search(text):
        return
    low, high = _tidy(told[0]["low"]), _tidy(told[0]["high"])
    above = text[: told[0].start()].rstrip("\n").rpartition("\n")[2]
    labelled = above.rstrip().endswith((":", "?")) or (len(above.split()) < 3 and _A_LABEL.search(above))
    if _order(high) - _order(low) >= _WIDE and not labelled:
        yield Found(Hardiness(low, high), told[0].span(), 0.6)


_A_LABEL = later(
    r"\b(?:height|spread|width|size|spacing|bloom\w*|flower\w*|months?|ph|hours?|days?|depth|qty)\b", re.I
)


def _hardiness(text: str, match: re.Match[str]) -> Found[Hardiness] | None:
    if is_foreign(text, match):
        return None
    low, high = _tidy(match["low"]), _tidy(match["high"])
    if match["list"]:
        numbers = [
            low,
            *([high] if high else []),
            *(_tidy(x) for x in re.findall(ZONE, match["list"], re.I)),
        ]
        if high or not _consecutive(numbers):
            return None
        high = numbers[-1]
    if high and (match["open"] or _order(low) > _order(high)):
        return None
    certainty = _head_certainty(text, match, bool(high or match["open"]))
    if not certainty:
        return None
    if not high and _FAR_END_LOST.match(text, match.end()):
        certainty = 0.25  # the far end of a range is missing, or its "to" was misread
    around = text[max(0, match.start() - 20) : match.start()] + text[match.end() : match.end() + 14]
    if _CANADA.search(around.replace("\n\n", "\0").split("\0")[0]):
        certainty = min(certainty, 0.5)
    return Found(Hardiness(low or None, high or None), match.span(), certainty)


_NOT_BELOW = later(
    r"(?:\b(?:not|never)|n['’]t)[ \n](?:(?:reliably|fully|truly|really|quite|winter|frost"
    r"|root)[ \n-])*hardy[ \n]"
    rf"(?:below|under|north of|colder than|in anything colder than)[ \n](?:usda[ \n])?z(?:one"
    rf"|n)?\.?[ \n]?(?P<low>{ZONE}){NO_WORD_AFTER}",
    re.I,
)
""""Not hardy below zone 8": the coldest it bears."""


def is_foreign(text: str, match: re.Match[str]) -> bool:
    before = text[max(0, match.start() - 40) : match.start()]
    return bool(_NOT_HARDINESS.search(before) or _FOREIGN_AFTER.match(text, match.end()))


def _head_certainty(text: str, match: re.Match[str], closed: bool) -> float:
    """A range leaves little doubt; a single figure needs the word zone before it, better still whose zone.

    Nothing (0) for "hardy to 10": that may as well be degrees.
    """
    word = match["head"].casefold()
    named = any(part in word for part in ("usda", "hard", "rustic", "whz", "winterh"))
    if not any(part in word for part in ("zo", "whz", "usda", "zn")) and not _Z_ENDS.search(word):
        range_alone = closed and HARDY_ALONE.search(word) and CLAUSE_ENDS.match(text, match.end())
        return (0.8 if range_alone else 0.0) if "hardy" in word else 0.85 if closed else 0.4
    if word == "z":
        alone = _Z_ALONE.search(text[: match.end() + 1]) and _OF_PLANT.search(text)
        return 0.85 if closed else 0.65 if alone else 0.5
    if not closed and "zones" in word:
        return 0.25  # more zones than one were printed
    if closed or named:
        return 0.97 if closed and named else 0.95 if closed else 0.93
    if _NO_BOTHER.match(text, match.end()):
        return 0.8
    after = re.match(r" (?!ok\b|hardy\b|fine\b)[a-z]{2}", text[match.end() :])
    alone_too = _ALONE_BEFORE.search(text, 0, match.start()) and not after
    return 0.85 if alone_too else 0.5


def _tidy(printed: str | None) -> str:
    return (printed or "").replace(" ", "").lower().lstrip("0")


def _order(zone: str) -> float:
    """Zones in order of warmth; a zone without half counts as its colder half."""
    return int(zone.rstrip("ab")) + (0.5 if zone.endswith("b") else 0)


def _consecutive(zones: list[str]) -> bool:
    return all(zone.isdigit() for zone in zones) and all(int(b) == int(a) + 1 for a, b in pairwise(zones))


def _worn_hardiness(text: str) -> Iterator[Found[Hardiness]]:
    """Zones of which a letter or the dash was misread; never sure."""
    for pattern in (_WORN_RANGE, _LOST_DASH):
        for match in pattern.finditer(text):
            low, high = (
                _tidy(match["low"].translate(_LETTERS)),
                _tidy((match["high"] or "").translate(_LETTERS)),
            )
            if is_foreign(text, match) or (high and _order(low) >= _order(high)) or not low:
                continue
            yield Found(Hardiness(low, high or None), match.span(), 0.4 if high else 0.3)
