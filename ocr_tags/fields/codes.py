"""Numbers others gave the plant: trade item numbers, patents and variety rights."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.phrases import clean
from ocr_tags.gtin import is_gtin
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

# ---------------------------------------------------------------- trade item numbers

_GROUPS = (
    r"\d{14}|\d{13}|\d{12}|\d{8}|\d \d{6} \d{6}|\d{7} \d{6}|\d \d{5} \d{5} \d|\d{6} \d{6}"
    r"|\d-\d{5}-\d{5}-\d|\d{4} \d{4}"
    r"|\d \d{2} \d{5} \d{5} \d|\d{2} \d{5} \d{5} \d|\d \d{10} \d|\d \d{5} \d{6}|\d{6} \d{5} \d|\d \d{12}"
    r"|\d \d{6} \d{5} \d|\d-\d{6}-\d{5}-\d|\d-\d{6}-\d{6}|\d\d-\d{5}-(?:\d{6}|\d{5}-\d)"
)
_DIGITS = later(rf"(?<![\w+#$.,/-])(?:(?<!\d )|(?<=[.,]\d\d ))(?:{_GROUPS})(?![\w/-]|[.,]\d| \d{{3,}})")
_TELEPHONE = later(r"(?:tel|phone|fax|call|mobile|telefon\w*|telefono|\+)[\s.:()+\d-]*$", re.I)
_LABEL = later(r"(?:gtin|ean|upc|barcode|jan)(?:[- ]?(?:8|12|13|14|a))?(?: code| no\.?)?\s*[:#]?\s*$", re.I)


def read_gtin(tag: TagText) -> Iterator[Found[str]]:
    """Trade item numbers of 8, 12, 13 or 14 digits with a right check digit, as long as printed.

    A digit is never repaired: one wrong number in ten has a right check digit by chance. Eight digits
    may be a date or a shortened UPC, so they count only in two groups, after a label or from the bars.

    >>> [found.value for found in read_gtin(TagText("6 291041 500213"))]
    ['6291041500213']
    >>> list(read_gtin(TagText("6 291041 500214")))
    []
    """
    for match in _DIGITS.finditer(tag.string):
        before = tag.string[max(0, match.start() - 24) : match.start()].split("\n")[-1]
        digits = re.sub(r"\D", "", match[0])
        if _TELEPHONE.search(before) or not is_gtin(digits):
            continue
        labelled = bool(_LABEL.search(before)) or _is_bars(tag, match.span())
        if len(digits) > 8 or labelled or " " in match[0]:
            yield Found(digits, match.span(), 1.0 if labelled else 0.7 if len(digits) == 8 else 0.95)


def _is_bars(tag: TagText, span: tuple[int, int]) -> bool:
    """Whether the digits come from the bars themselves."""
    return any(word.reader.startswith("barcode") for word in tag.words_in(span))


# ---------------------------------------------------------------- patents and variety rights

_COUNTRY = r"(?:u\.? ?s\.? ?)?"
_NUMBER = r"(?P<number>\d{1,2}[,.] ?\d{3}|\d{4,5})(?![\d-])(?!,\d)"
_KIND = r"(?:\s?P[123]\b)?"
_PLANT_PATENT = later(
    rf"(?<![^\W_]){_COUNTRY}(?:p\.? ?p\.?(?: ?a\.?)?|plant pat(?:ents?|s?\b\.?))\s?:?(?:\s?(?:nos?\b\.?"
    rf"|numbers?|num\.?|nº|#)\s?[:#]?)?\s?{_NUMBER}{_KIND}",
    re.I,
)
_MORE = later(rf"\s?(?:,|&|and|/|;)\s?(?:#\s?)?{_NUMBER}(?!\s?(?:in|cm|\"|%))", re.I)
_WORN = later(rf"(?<![^\W_])(?:us ?)?(?:rp|pr|pf|fp|pp|bp|pb) ?#\s?{_NUMBER}", re.I)
_PENDING = later(
    rf"(?<![^\W_]){_COUNTRY}(?:ppaf(?![^\W_])|p\.p\.a\.f\.|pp pending|pp applied for"
    r"|plant patent (?:applied for|pending))",
    re.I,
)
_UTILITY = later(
    r"\bu\.?s\.? (?:utility )?patent (?:no\.?|number|#)?\s?(?P<number>\d{1,2},\d{3},\d{3})\b", re.I
)
_PATENT_PENDING = later(r"(?<!plant )\bpat(?:ent|\.)?s? pend(?:ing\b|\.)", re.I)
_RIGHTS = later(
    r"(?<![^\W_])(?P<office>EU ?|(?:Canadian|European|Australian) |UK ?|AU ?|NZ ?|US ?|Can\.? ?"
    r"|CAN ?)?(?P<kind>CPBRAF|PBRAF|CPBR|PBR|PVRAF"
    r"|PVR|PVPA|PVP|CPVR|COPF|(?i:plant (?:breeders?['’]?s?['’]?|variety) rights?))"
    r"(?P<applied>(?:/[PC]OV\b)?\s?(?:AF\b|(?i:applied for|pending|granted)))?"
    r"(?![^\W\d_])(?:[ :]?\(?(?:[Cc]ert(?:ificate|\.)? ?)?(?:No\.?|#|Nr\.?)? ?#?"
    r"(?P<number>(?:(?!LOT|SKU|UPC|EAN|REF|QTY|BAY|ROW|NO|IN|TO)[A-Z]{2,3} ?)?(?:\d{2,4}-\d{3,6}(?![\d-])"
    r"|\d[\d/]{2,11}(?!\d|-\d))))?"
)


_PROTECTED = later(
    r"\b(?:(?i:protected)(?i: variety| by)?|(?i:rights)|P[BV]R)(?:[:,]?\s"
    r"| ?[·•|/–—-] ?)(?P<right>EU ?\d{4,6})\b"
    r"|(?<![^\W_])(?P<filed>(?:(?:UK|GB) )?AFP\s?(?:No\.? ?)?\d{1,2}/\d{2,5})(?!\d)"
)
"""A right of the European office, named by its number alone, or an application to the British one."""


def read_patents(tag: TagText) -> Iterator[Found[str]]:
    """Each patent in one form, PP12345 or PPAF, and each variety right as printed: CPBR 1234, PBR pending.

    >>> [found.value for found in read_patents(TagText("USPP 12,345 & 13,456  CPBRAF"))]
    ['PP12345', 'PP13456', 'CPBRAF']
    >>> list(read_patents(TagText("Apply 12345 units")))
    []
    """
    text = tag.string
    found = [*_plant_patents(text)]
    found += [Found(_pending(match[0]), match.span(), 0.95) for match in _PENDING.finditer(text)]
    found += [Found("US" + _digits(match["number"]), match.span(), 0.95) for match in _UTILITY.finditer(text)]
    found += [Found("Patent pending", match.span(), 0.95) for match in _PATENT_PENDING.finditer(text)]
    rights = [Found(_right(match), match.span(), 0.9) for match in _RIGHTS.finditer(text)]
    numbered = [
        Found(clean(match[told]), match.span(told), 0.9)
        for match in _PROTECTED.finditer(text)
        for told in ("right", "filed")
        if match[told] and not any(one.span[0] <= match.start(told) < one.span[1] for one in rights)
    ]
    found += [one for one in rights if not (numbered and one.value in _BARE)]
    found += numbered
    seen: set[str] = set()
    for one in sorted(found, key=lambda item: item.span):
        if one.value not in seen:
            seen.add(one.value)
            yield one


_BARE = frozenset(("PBR", "PVR"))
"""Kinds of right that say nothing beside their numbers."""


def _plant_patents(text: str) -> Iterator[Found[str]]:
    for match in _PLANT_PATENT.finditer(text):
        yield Found("PP" + _digits(match["number"]), match.span(), 0.95)
        end = match.end()
        while more := _MORE.match(text, end):
            yield Found("PP" + _digits(more["number"]), more.span("number"), 0.85)
            end = more.end()
    for match in _WORN.finditer(text):
        if not _PLANT_PATENT.match(text, match.start()):
            yield Found("PP" + _digits(match["number"]), match.span(), 0.6)


def _digits(printed: str) -> str:
    return re.sub(r"\D", "", printed)


def _pending(printed: str) -> str:
    """An application in its letters, PPAF; words stay as they are printed."""
    return (
        "PPAF"
        if len(_SPACES.sub("", printed)) <= 10 and "end" not in printed.lower()
        else _SPACES.sub(" ", printed)
    )


_SPACES = later(r"\s+")


def _right(match: re.Match[str]) -> str:
    """A right as it is printed: in words, or in letters and its number."""
    return _SPACES.sub(" ", match[0]).strip(" .:#(")
