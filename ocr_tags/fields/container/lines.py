"""The pot within a line: beside the firm or the price, or said of the plant that is sold."""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.fields.container.sizes import LARGEST, PLANTING, WIDEST_PRICED, clean_size, is_made
from ocr_tags.fields.container.words import (
    CELLS,
    LENGTH,
    MADE_OF,
    NUMBER,
    POTLESS,
    PRICE,
    PRICED,
    VOLUME,
    WORDED,
)
from ocr_tags.names.firms import firm_in
from ocr_tags.names.signatures import is_signed
from ocr_tags.patterns import later
from ocr_tags.record import Found

_SOLD_IN = later(
    rf"(?:^|(?<=\n))(?:(?:(?:indoor|house|foliage|live|young|one|1) ?plants?|houseplants?|supplied|potted) )?"
    rf"in an? (?P<size>{NUMBER} ?(?:{LENGTH}|{VOLUME}) ?{MADE_OF}pot)\.?(?=\n|$)"
)
"""A line that says no more than what the plant stands in: behind a verb it would be advice."""
_BEFORE_PRICE = later(
    rf"(?<=[a-z.] |[/·•|] )(?P<size>#(?:[1-357]|10|15)(?!\d)|{NUMBER} ?{VOLUME}|[1-4]\d0 ?mm)"
    rf"[ ,]*[/·•|–-]? ?{PRICED}(?=\n|\t|$)"
)
"""A class or volume between words and the price, at the end of the line."""
_WIDTH_DOT_PRICE = later(
    rf"(?:^|(?<=\n)|(?<=[a-z] [·•|] ))(?P<size>{NUMBER} ?{LENGTH}) ?[·•|] ?{PRICE}(?= ?[·•|\n]"
    rf"|$)(?![^\n]*[$€£])"
)
""""180 mm · $21.50": as a width with its price right behind it."""

_CELL_AND_PRICE = later(
    rf"(?<![^\n\t])(?P<size>{NUMBER} ?{LENGTH}(?: ?[/(] ?{NUMBER} ?{LENGTH}\)?)?)[ \t]+{PRICED}(?=\n|\t|$)"
)
_AT_PRICE = later(
    rf"(?:^|(?<=[\n\t])|(?<=\. ))(?P<size>#(?:[1-357]|10|15)|{NUMBER} ?{VOLUME}) (?:at|for) {PRICED}"
)
_NUMBERED = later(
    r"(?:^|(?<=[\n\t]))(?:pot|container|size|pot size|container size|stock|class)(?: ?: ?| ?\t"
    r"|(?: ?[._·]){2,} ?| )"
    r"(?P<size>no\. ?(?:[1-357]|10|15|20|25))(?=\n|\t|$)"
    r"(?!\s*\d* ?(?:tubers?|bulbs?|corms?|rhizomes?|roots?)\b)"
)
"""A nursery class behind its label: "Pot No. 3"; those of bulbs are of other sizes."""
_NUMBER_AND_PRICE = later(rf"(?<![^\n\t])(?P<size>no\. ?(?:[1-357]|10|15|20|25))[ \t]+{PRICED}(?=\n|\t|$)")
_STOCK = later(
    rf"(?<![^\n\t])(?:nursery )?(?:stock|size|grade)(?: type)?(?: ?: ?| )(?P<size>{POTLESS.pattern})"
    r"(?= {2,}| (?:bundle|tray|qty|pack|box|lot)\b|[ ,;]*[\n\t]|$)"
)
_POTTED_IN = later(rf"\bpotted (?P<size>{NUMBER} ?(?:cm|mm|{VOLUME}))(?=\n|\t|$)")
""""Rooted cuttings, potted 9cm"."""
_BEHIND_PRICE = later(rf"(?<![^\n\t]){PRICED}[ \t](?P<size>{NUMBER} ?{LENGTH})(?=\n|$)")
_CELLS_AT_END = later(rf"(?<=[a-z0-9][.,] )(?P<size>{CELLS})[ .]{{0,2}}(?=\n|\t|$)")
"""The cells of a tray as the last clause of a line, behind the address."""
_BEFORE_HEIGHT = later(rf"(?<![^\n\t])(?:[ø⌀] ?)?(?P<size>{NUMBER} ?(?:cm|mm))[ \t·•|]{{1,3}}↕")
"""The width of the pot before an arrow up and down and the plant's height, as on European labels (common
practice, no source)."""


def in_line(text: str, folded: str) -> Iterator[Found[str]]:
    """The pot of a line that says how the plant is sold, and the class right before the price."""
    for pattern, certainty in (
        (_SOLD_IN, 0.8),
        (_BEFORE_PRICE, 0.75),
        (_WIDTH_DOT_PRICE, 0.75),
        (_CELL_AND_PRICE, 0.75),
        (_AT_PRICE, 0.8),
        (_NUMBERED, 0.85),
        (_NUMBER_AND_PRICE, 0.7),
        (_STOCK, 0.8),
        (_POTTED_IN, 0.8),
        (_BEHIND_PRICE, 0.75),
        (_CELLS_AT_END, 0.7),
        (_BEFORE_HEIGHT, 0.75),
    ):
        for match in pattern.finditer(folded):
            verb = PLANTING.search(folded, 0, match.start()) if pattern is _BEFORE_PRICE else None
            planting = verb and not text[verb.start() :].startswith("Plants ")
            # The size of stock sold without a pot is how tall it is.
            made = pattern is _STOCK or is_made(match["size"], {**LARGEST, **WIDEST_PRICED})
            if not planting and made:
                yield Found(clean_size(text[slice(*match.span("size"))]), match.span("size"), certainty)


_WIDTH_AT_FOOT = later(
    rf"(?<![^\n\t])(?P<firm>[a-z]{{2}}-[a-zö]+-\w+|[^\n\t\d]{{8,}}?)"
    rf" ?(?:[·•|–—]| - ) ?(?P<size>{NUMBER} ?{LENGTH})(?=\n|\t|$)"
)
_RIGHT_BEHIND = later(
    rf"(?<![^\n\t])(?P<firm>[^\n\t\d,]{{8,}}?)(?:,? | ?/ ?)(?![il])"
    rf"(?P<size>{NUMBER} ?(?:{LENGTH}|{VOLUME})(?: deep)?|pb ?\d{{1,2}}(?:\.5)?"
    rf"|[pc] ?\d{{1,2}}(?:[.,]5)?|(?:{WORDED})[- ]gallon|(?:four|six)-inch"
    rf"|tubestock|\d{{1,2}}er|trade gal(?:lon)?|[2-9]-cell|#(?:[1-357]|10|15))"
    rf"(?: ?[/,]? ?{PRICED}| ?\d{{1,2}},\d\d)?(?=\n|\t|$)"
)
"""The pot right behind the firm's name, without a mark between."""
_WIDTH_AT_HEAD = later(
    rf"(?<![^\n\t])(?P<size>{NUMBER} ?{LENGTH}) ?(?:[·•|–—]| - ) ?(?P<firm>[^\n\t\d]{{8,}})(?=\n|\t|$)"
)
_SITE = later(
    r"\b[a-z]{2}-(?:bio|öko|oko|eko|eco)-\w+"
    r"|[\w-]{4,}\.(?:com|net|org|farm|garden|example|ca|co\.uk|ie|nl|de|fr|au|nz)\b"
)


def beside_firm(text: str, folded: str) -> Iterator[Found[str]]:
    """A length beside the firm, its address on the web or its number as an organic grower: that of the pot
    (common practice, no source)."""
    for match in (
        *_WIDTH_AT_FOOT.finditer(folded),
        *_WIDTH_AT_HEAD.finditer(folded),
        *_RIGHT_BEHIND.finditer(folded),
    ):
        firm = text[slice(*match.span("firm"))].strip()
        told = _SITE.search(match["firm"]) or firm_in(firm) or is_signed(firm)
        if told and is_made(match["size"], {**LARGEST, **WIDEST_PRICED}):
            yield Found(clean_size(text[slice(*match.span("size"))]), match.span("size"), 0.75)


_BOTH_UNITS = later(
    r"(?<![^\n\t])(?P<size>(?P<inch>[2-9]|1[0-2])(?P<half>[.,]5| ?½)? ?(?:in\b\.?|[\"”″]) ?[/(] ?"
    r"(?P<cm>\d{1,2}(?:[.,]\d)?) ?cm\b\)?) ?(?=\n|\t|$)"
)
_OTHER_FACT = later(
    r"\d[^\n\t\d]{0,3}(?:in\b|cm\b|mm\b|m\b|ft\b|[\"'”″’°])|\b(?:sun|shade|zones?|height|spread|light)\b"
)


def on_front(text: str, folded: str) -> Iterator[Found[str]]:
    """One length in inches and centimetres on a front that measures nothing else: of a potted plant, the pot
    (common practice, no source).

    >>> front = "Prayer Plant" + chr(10) + "5 in. / 13 cm"
    >>> [found.value for found in on_front(front, front.lower())]
    ['5 in. / 13 cm']
    >>> list(on_front(front + chr(10) + "Zone 9", front.lower() + chr(10) + "zone 9"))
    []
    """
    told = list(_BOTH_UNITS.finditer(folded))
    if len(told) != 1 or _OTHER_FACT.search(folded[: told[0].start()] + "\n" + folded[told[0].end() :]):
        return
    size = told[0]
    inches = int(size["inch"]) + (0.5 if size["half"] else 0)
    if abs(float(size["cm"].replace(",", ".")) / inches - 2.54) < 0.4:
        yield Found(clean_size(text[slice(*size.span("size"))]), size.span("size"), 0.65)
