"""How much heat a plant bears, in AHS zones, and how much cold by the letters of the RHS."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.zones import GAP, NO_WORD_AFTER, RANGE, TO, is_foreign
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import HeatZones

_HEAT_PAIR = rf"(?P<one>1[0-2]|[1-9]){TO}(?P<two>1[0-2]|[1-9]){NO_WORD_AFTER}(?![.,-]\d|-| ?(?:in|ft|cm|°)\b)"
_HEAT = later(rf"\b(?:(?:ahs )?heat[ -]?\n?zones?|ahs|(?:ahs )?heat)(?: zones?)?{GAP}{_HEAT_PAIR}", re.I)
_AFTER_STROKE = later(rf" ?/ ?{_HEAT_PAIR}", re.I)

_RHS = later(
    rf"(?:\b(?:rhs|hardiness|hardy|rating)(?: (?:hardiness|rating|plant|zone|code))*{GAP}\(?)"
    r"(?P<rating>(?-i:H) ?(?:1[abc]|[2-7]))(?![^\W_]|[ ]?[-–/]\d|[ ]?[\"”'’]| ?(?:in|ft|cm|m)\b)",
    re.I,
)

_RHS_BESIDE_FROST = later(
    r"(?:^|(?<=[\n\t]))(?P<rating>H(?:1[abc]|[2-7]))(?=[\n\t][-–−] ?\d{1,2} ?[°º˚]? ?C(?![^\W_]))"
)
"""A rating alone in its cell, and in the next the frost it stands for."""
_RHS_ALONE = later(r"(?:^|(?<=\n))(?P<rating>H(?:1[abc]|[2-7]))(?=\n|$)")
_BRITISH = later(r"£ ?\d|\bUK ?(?:Plant|plant|PLANT)|\bGB-\d|\bRHS\b|\bco\.uk\b")
"""Where the rating of the RHS is printed without its name (common practice, no source)."""


# ---------------------------------------------------------------- heat zones


def read_heat_zones(tag: TagText) -> Iterator[Found[HeatZones]]:
    """AHS heat zones: named so, or the second pair of "4-9/9-1", which runs from hot to cool."""
    for match in _HEAT.finditer(tag.string):
        yield Found(_heat(match), match.span(), 0.95)
    for zones in RANGE.finditer(tag.string):
        pair = _AFTER_STROKE.match(tag.string, zones.end())
        if pair and int(pair["one"]) > int(pair["two"]) and not is_foreign(tag.string, zones):
            yield Found(_heat(pair), (pair.start("one"), pair.end()), 0.9)


def _heat(match: re.Match[str]) -> HeatZones:
    one, two = sorted((int(match["one"]), int(match["two"])))
    return HeatZones(one, two)


# ---------------------------------------------------------------- RHS rating


def read_rhs_rating(tag: TagText) -> Iterator[Found[str]]:
    """The RHS hardiness rating, H1a to H7, where a word beside it says that it is one.

    >>> [found.value for found in read_rhs_rating(TagText("RHS hardiness: H5, H 5 in"))]
    ['H5']
    """
    for match in _RHS.finditer(tag.string):
        named = "rhs" in match[0].casefold()
        rating = match["rating"].replace(" ", "")
        yield Found(rating[0] + rating[1:].lower(), match.span("rating"), 0.97 if named else 0.9)
    for match in _RHS_BESIDE_FROST.finditer(tag.string):
        yield Found(match["rating"], match.span("rating"), 0.6)
    for match in _RHS_ALONE.finditer(tag.string) if _BRITISH.search(tag.string) else ():
        yield Found(match["rating"], match.span("rating"), 0.75)
