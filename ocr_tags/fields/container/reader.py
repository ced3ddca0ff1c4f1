"""The pot or pack the plant is sold in.

A container class is a name, not a volume: "#1" is no gallon, and a trade gallon holds less than one
(American Standard for Nursery Stock, ANSI Z60.1). So the printed words are the value.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.container.lines import beside_firm, in_line, on_front
from ocr_tags.fields.container.sizes import LARGEST, PLANTING, WIDEST_PRICED, clean_size, is_made
from ocr_tags.fields.container.words import (
    CELLS,
    CLASS,
    CLASSES,
    COUNTED,
    GRADED,
    LENGTH,
    LOOSE,
    MADE_WORD,
    MILLIMETRES,
    NUMBER,
    NURSERY_CLASS,
    OF_POTS,
    PACK,
    POTLESS,
    POTTED,
    PRICE,
    PRICED,
    SEVERAL,
    SQUARE,
    STRIP,
    TRAYED,
    VOLUME,
)
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import cells, fold, label_phrases
from ocr_tags.fields.values import is_torn, labelled
from ocr_tags.names.firms import firm_in
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_BESIDE = later(
    r"(?:[ -](?:(?:container|pot)[ -]grown|staked|trellis(?:ed)?|tree form|standard|bush|multi-?stem(?:med)?"
    r"|clump|espalier))?"
    r"(?: ?[/|·•,–-] ?(?:row|bay|bench|bed|house|tunnel|block|aisle|table|rack|shelf|plot|section|location"
    r"|loc\.?) ?(?:no\.? ?)?(?:[a-z]?\d{1,3}[a-z]?|[a-z])\b)*"
    r"(?:[ ,·•|–-]+(?:lot|batch)(?: no\.?)?[ :#]{1,2}[\w-]{1,12})?"
    rf"(?:[ ,.·…_]*(?:{PRICE}|\d{{1,3}}\.\d\d)|[ ,.-]*\d{{1,3}},\d\d ?[$€£])?\)?"
    rf"|(?:[ ,]*{PRICE})[ ·•|,–-]+[a-z][^\d\n]*|[ ·•|]{{1,3}}\d(?: ?\d){{11,13}}"
    r"|[ ,·•|–-]+(?:self[- ](?:fertile|pollinating|fruitful)|autofertile|grafted"
    r"|own[- ]root|seed[- ]grown)\b.*"
)
"""How the plant is grown, where it stands in the nursery, its price and its number in shops may share the
cell of a class."""
_PRICED_WIDTH = later(
    rf"(?P<width>{NUMBER} ?(?:{LENGTH}|{VOLUME}))(?:[ ,·•|/–-]*(?:was|now|only|sale|reg\.?)?:? ?{PRICE})+"
    r"(?:[ ·•|,–-]+[a-z][^\d\n]*)?"
)
"""A length with the price right behind it is that of the pot, if pots are so wide: trees are priced by their
height as well (common practice, no source)."""
_PRICE_FIRST = later(rf"(?:{PRICE}|\d{{1,4}}[.,]\d{{2}} ?[$€£]) ?[-–—·|,/.]? ?\(?")
_KIND = later(
    r"(?:(?:hardy|half-hardy|evergreen|tender|flowering|ornamental|fruiting|fruit|deciduous|herbaceous"
    r"|native|shade|dwarf|climbing|woody|broadleaf|culinary|garden|nut|small) ){0,2}(?:annuals?|perennials?"
    r"|biennials?|shrubs?"
    r"|trees?|vines?"
    r"|climbers?|roses?|grass(?:es)?|ferns?|herbs?|vegetables?|fruit|conifers?|houseplants?"
    r"|succulents?|natives?)"
    r" ?[-–—·•|,.:]? ?(?=\d)"
)
"""What the plant is may also stand in it: "PERENNIAL 1 GALLON"."""
_PRICED = later(rf" ?[-–—,/|·(]* ?{PRICED}.*$")
_SOLD = later(
    rf"(?:{PRICE}|\b(?:one|1) (?:\w+ )?plant|(?:^|[\n\t·•|] ?){SEVERAL}"
    r"|(?:^|[\n\t])(?:vegetable|herb|young|garden|bedding|pot|live|potted|fruit|tomato) plant"
    r"|\b(?:sold|supplied|grown|raised|potted|comes?|available"
    r"|offered|delivered|shipped)(?: potted| growing)?)(?: in| as)? (?:an? )?$"
)
"""Before the pot of the plant that is sold: "£12.99 in 3L pot"."""
# A letter for a diameter is read as a nought.
_ROUND = later(r"[0oø] ?(?P<width>\d{1,2}(?:[.,]5)? ?cm)")
_LABELS = label_phrases("container")
_SIZE = later(
    rf"(?:[0ø] ?)?(?:{NUMBER} ?(?:{LENGTH}|{VOLUME})|{CLASS.pattern}|{PACK.pattern}|{CELLS}"
    rf"|\d{{1,2}} ?[x×] ?\d{{1,2}} ?{LENGTH}|{LOOSE.pattern})(?:.{{0,12}}|(?:[ ,]+{MADE_WORD}){{1,3}})"
)
_MADE_BEFORE = later(rf"{MADE_WORD} $")
_PRICE_NEXT = later(rf" ?[,–—-]? ?{PRICED}")
_SIZE_LABEL = later(
    r"(?<![^\n\t])(?:sale |sold )?(?:size|uom|format|formaat|taille|gr[oö]sse|tama[nñ]o|grade"
    r"|potted(?: colou?r)?)"
    rf"(?: ?: ?|,? (?=#\s?\d|{NUMBER} ?(?:{VOLUME}|mm\b)))"
)
_WIDTH = later(rf"{NUMBER} ?{LENGTH}")
_WHOLE = later(rf"(?:(?P<potless>{POTLESS.pattern})|(?P<counted>{COUNTED.pattern}))(?:[ ,–—-]*{PRICED})?")
_STRIP = later(rf"(?P<strip>{STRIP.pattern})(?:[ ,–—-]*{PRICED})?")
_NUMBERED = later(r"no\. ?(?:[1-357]|10|15|20|25)$")
""""No. 3" before the firm that grew it is a class; alone it may be any number."""
_SAID = later(r"#|pots?\b|container")
_LABEL_FIRST = later(
    rf"(?:(?:conta?in\w*|conteneur)(?: de)? |(?:contenant|contenedor|maceta|[a-zäöü]*topf|pot(?!s)|potmaat"
    rf"|vaso|vase|godet|kruka|krukke|potte) (?=[ø∅⌀]? ?{NUMBER})(?![^\n\t]*(?:tall|high|deep|across)))"
)
"""The word for a pot that only leads to its size: "Topf 12 cm"."""
_VOLUMES = later(rf"\d ?{VOLUME}")
_CONTAINER = later(r"conta?i?n|conteneur")
_SIZE_OF_POT = later(r"(?:size|maat|formaat)\W*$")
_CLOSING = later(
    r"(?:(?<=[a-z]{3})\.(?= pb\d)|\d{2},\d{3}|ppaf|pbr|\bp[1-9]|\d{5,}|\bcanada|\busa"
    r"|\b(?:sku|item|stk|stock|art|ref|code|plu|upc)\b[ .:#no]{0,5}[\w/-]*\d[\w/-]*"
    r"|\b(?:sold as|uom):?"
    r"|\b(?:propagated|grown|raised|nursery[ -]propagated|from (?:seed|cuttings|division|salvage))\b[^;]*,) "
    r"(?P<size>#(?:[1-357]|10|15)|3\.8 ?l|pb ?\d{1,2}"
    r"|(?:[1-9]|1\d|[234]5) ?(?:gal(?:lons?|\b\.?)|qts?\b\.?|l\b|lit(?:re|er)s?))$"
)
"""A volume that closes a line of patents, numbers and the land it comes from."""
_MILLIMETRES_ALONE = later(
    rf"(?P<size>{MILLIMETRES.pattern})(?: +(?:s/?n|sku|item|code|plu|lot|no\.?)[ :#].*)?"
)
_KNOWN = 0.7
"""Certainty of a label with only a space behind it, if its letters needed no repair."""
_SPOKEN_OF = later(
    r"\s(?:is|will|gives?|holds?|takes?|does|(?:in|within) (?:\w+ ){1,2}(?:days|weeks|months|seasons?|years?)"
    r"|by (?:early |mid-?|late )?(?:spring|summer|autumn|fall|june|july|august))\b"
)
"""Behind a pot that advice speaks of: "A 9 cm pot is big enough", "fills a basket in six weeks"."""


def read_container(tag: TagText) -> Iterator[Found[str]]:
    """The pot or pack the plant is sold in, as printed.

    >>> [found.value for found in read_container(TagText("1 gal" + chr(10) + "Plant in a 12 in. pot"))]
    ['1 gal']
    """
    text = tag.string
    folded = fold(text)
    seen = False
    for found in labelled(text, _LABELS):
        if _SIZE.fullmatch(folded[found.start : found.end].strip()):
            seen = True
            if not is_made(folded[found.start : found.end]):
                continue
            worded = found.bare and not re.search(r"\b(?:in|as)\s*$", folded[found.label : found.start])
            if found.bare and not worded and found.certainty < _KNOWN:
                continue  # "Grow in 30 cm pot" is advice
            # "Pot 12 cm": the word belongs to the size, but to no class, "Pot #3", and not twice
            said = _SAID.search(folded, found.start, found.end) or _SIZE_OF_POT.search(
                folded, found.label, found.start
            )
            said = (
                said
                or _CONTAINER.match(folded, found.label)
                or _VOLUMES.search(folded, found.start, found.end)
            )
            led = _LABEL_FIRST.match(folded, found.label)
            leads = led is not None and led.end() == found.start
            start = found.label if worded and not said and not leads else found.start
            if round_ := _ROUND.fullmatch(folded, found.start, found.end):
                yield Found(f"Ø {text[slice(*round_.span('width'))]}", (found.start, found.end), 0.85)
                continue
            price = _PRICED.search(folded, found.start, found.end)
            end = price.start() if price else found.end
            yield Found(clean_size(text[start:end]), (start, end), found.certainty)
    if seen:
        return
    for match in TRAYED.finditer(folded):
        if is_made(match["size"], {**LARGEST, **WIDEST_PRICED}):
            seen = True
            yield Found(clean_size(text[slice(*match.span("size"))]), match.span("size"), 0.75)
    for pattern, certainty in ((POTTED, 0.9), (PACK, 0.85)):
        for match in pattern.finditer(folded):
            before = folded[max(0, match.start() - 30) : match.start()]
            priced = pattern is PACK and _PRICE_NEXT.match(folded, match.end())
            planting = PLANTING.search(before) and not _SOLD.search(before) and not priced
            if not planting and not _SPOKEN_OF.match(folded, match.end()) and is_made(match[0]):
                seen = True
                made = _MADE_BEFORE.search(before)
                label = None if made else _LABEL_FIRST.match(folded, match.start())
                start = label.end() if label else match.start() - len(made[0] if made else "")
                yield Found(clean_size(text[start : match.end()]), (start, match.end()), certainty)
    if not seen:
        for start, end in _parts(text):
            yield from _whole_cell(text, folded, start, end)
        yield from in_line(text, folded)
        yield from beside_firm(text, folded)
        if tag.side == "front":
            yield from on_front(text, folded)


_BETWEEN_DOTS = later(r"(?:(?!\s[—–]\s)[^·•|\t\n])+")


def _parts(text: str) -> Iterator[tuple[int, int]]:
    """Cells, and what dots or strokes part in them: "2 gal. · Carrow Berry Works"."""
    for start, end in cells(text):
        parts = [part.span() for part in _BETWEEN_DOTS.finditer(text, start, end)]
        for first, last in parts:
            stripped = text[first:last].strip(" *–—")
            if stripped:
                at = first + text[first:last].index(stripped)
                yield at, at + len(stripped)


def _whole_cell(text: str, folded: str, start: int, end: int) -> Iterator[Found[str]]:
    """A container class, volume or "bare root" that is all a cell holds, a label "Size" or price aside."""
    if text[start] == "(" and text[end - 1] == ")":
        start, end = start + 1, end - 1
    label = _SIZE_LABEL.match(folded, start, end)
    opening = label or _KIND.match(folded, start, end) or _PRICE_FIRST.match(folded, start, end)
    start = opening.end() if opening else start
    if (_after_label(text, start) and not label) or not is_made(folded[start:end]):
        return
    size = CLASSES.match(folded, start, end)
    beside = _BESIDE.fullmatch(folded, size.end(), end) if size else None
    numbered = size and beside and beside[0] and re.fullmatch(r"#\s?\d+", size[0])
    # "#4 $89.99" may be an item's number
    if size and beside and not (numbered and not NURSERY_CLASS.fullmatch(size[0])):
        certainty = (
            0.65 if numbered else 0.9 if label else 0.75 if re.match(r"[pc] ?\d", folded[start:end]) else 0.85
        )
        yield Found(clean_size(text[start : size.end()]), size.span(), certainty)
    elif priced := _PRICED_WIDTH.fullmatch(folded, start, end):
        if is_made(priced["width"], {**LARGEST, **WIDEST_PRICED}):
            yield Found(clean_size(text[start : priced.end("width")]), priced.span("width"), 0.85)
    elif (square := SQUARE.fullmatch(folded, start, end)) or (label and _WIDTH.fullmatch(folded, start, end)):
        last = square.end("size") if square else end
        yield Found(clean_size(text[start:last]), (start, last), 0.85)
    elif loose := _WHOLE.fullmatch(folded, start, end):
        span = loose.span("potless" if loose["potless"] else "counted")
        yield Found(clean_size(text[slice(*span)]), span, 0.8 if loose["potless"] else 0.7)
    elif (strip := _STRIP.fullmatch(folded, start, end)) and not _runs_into(text, folded, start, end):
        yield Found(clean_size(text[slice(*strip.span("strip"))]), strip.span("strip"), 0.7)
    elif (no := _NUMBERED.match(folded, start, end)) and firm_in(text[end:].split("\n")[0].strip(" –—·|-")):
        yield Found(clean_size(text[slice(*no.span())]), no.span(), 0.65)
    elif round_ := _ROUND.fullmatch(folded, start, end):
        yield Found(f"Ø {text[slice(*round_.span('width'))]}", (start, end), 0.85)
    elif graded := GRADED.fullmatch(folded, start, end):
        span = graded.span("size" if graded["size"] else "behind")
        yield Found(clean_size(text[slice(*span)]), span, 0.75)
    elif width := _MILLIMETRES_ALONE.fullmatch(folded, start, end):
        yield Found(clean_size(text[slice(*width.span("size"))]), width.span("size"), 0.75)
    elif OF_POTS.fullmatch(folded, start, end) and not _under_label(text, start):
        yield Found(clean_size(text[start:end]), (start, end), 0.75)
    elif closing := _CLOSING.search(folded, start, end):
        yield Found(clean_size(text[slice(*closing.span("size"))]), closing.span("size"), 0.75)


def _runs_into(text: str, folded: str, start: int, end: int) -> bool:
    """Whether a count of plants shares its line, ends the sentence above, or is how many go to an area."""
    if text[:start].rstrip(" ")[-1:] not in ("", "\n", "\t"):
        return True
    above = text[:start].rpartition("\n")[0].rpartition("\n")[2] if text[:start].endswith("\n") else ""
    around = folded[max(0, start - 30) : start] + folded[end : end + 20]
    return is_torn(above) or bool(_AREA.search(around) or PLANTING.search(folded, 0, start))


_AREA = later(r"\b(?:per|density|metre|meter|yard|m2|sq|square|apart|rows?)\b|m²")


def _under_label(text: str, start: int) -> bool:
    """Whether a width may be another fact's: in a column, or under a label or words that run on into it."""
    if text[start] in "øØ∅⌀":
        return False
    if not text[:start].strip():
        return True
    above = text[:start].rstrip().rpartition("\n")[2].rpartition("\t")[2]
    return text[start - 1] == "\t" or above.endswith(":") or is_label(above.strip(" :")) or is_torn(above)


def _after_label(text: str, start: int) -> bool:
    """True when another label's column or line leads to this cell: "Spacing" and then "2 L" is no pot."""
    line = text[:start].rstrip("\t").split("\n")[-1] if text[:start].endswith("\t") else ""
    return bool(re.search(r"[^\W\d_]{4,}\s*$", line)) and not re.search(r"(?i)plants?|perennial|shrub", line)
