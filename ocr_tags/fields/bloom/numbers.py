"""Months that a tag prints as numbers, plain or Roman, behind a bloom label or a drawn flower."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.words import colour_list
from ocr_tags.fields.phrases import fold, label_phrases
from ocr_tags.fields.values import labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found
from ocr_tags.values import Bloom

_NUMERALS = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII")
_ROMAN = {r: n for n, r in enumerate(_NUMERALS, 1)}

LABELS = label_phrases("bloom")
"""The labels of a bloom time."""
_NUMERIC_LABEL = later(
    r"(?:blute|blutezeit|bl|bloei\w*|bloom months|months of bloom|months in flower|flowering months"
    r"|floraison|floracion|flowering(?: (?:time|period|season))?|bloom(?:ing)? (?:time|period|season)"
    r"|blomning\w*"
    r"|blomstring\w*|fioritura)\b"
)
_NUMBERS = later(
    r"(?P<a>[IVX]{1,4}|\d{1,2})(?:\s?[-–—]\s?(?P<b>[IVX]{1,4}|\d{1,2}))?(?=$|[\s,;.|)])(?!\s?(?:\d|in|cm"
    r"|ft|we|da|\"))"
)


def read_numbers(text: str) -> Iterator[Found[Bloom]]:
    """Each bloom time printed as numbers of months.

    >>> [found.value.months for found in read_numbers("Bloom: IV-VI")]
    [(4, 5, 6)]
    """
    yield from _numbered(text)
    yield from _shortened(text)
    yield from _behind_flower(text)


def span(first: int, last: int) -> tuple[int, ...]:
    """The months from `first` to `last`, over the turn of the year where it must be.

    >>> span(11, 2)
    (11, 12, 1, 2)
    """
    return tuple((first + step - 1) % 12 + 1 for step in range((last - first) % 12 + 1))


def _numbered(text: str) -> Iterator[Found[Bloom]]:
    """Months as Roman numbers after any bloom label; as plain numbers only where the trade prints them so."""
    for found in labelled(text, LABELS):
        match = _NUMBERS.match(text, found.start)
        if match is None:
            continue
        roman = match["a"] in _ROMAN and (match["b"] or match["a"]) in _ROMAN
        first, last = _month_number(match["a"]), _month_number(match["b"] or match["a"])
        if (
            not first
            or not last
            or (not roman and not (_NUMERIC_LABEL.match(fold(text), found.label) and match["b"]))
        ):
            continue
        yield Found(Bloom(match[0], (), span(first, last)), match.span(), 0.9 * found.certainty)


def _behind_flower(text: str) -> Iterator[Found[Bloom]]:
    """Roman months, or a range in plain numbers, behind a drawn flower (common practice, no source)."""
    for flower in re.finditer("[✿❀❁✾✽⚘][ \t]?", text):
        match = _NUMBERS.match(text, flower.end())
        if match is None:
            continue
        first, last = _month_number(match["a"]), _month_number(match["b"] or match["a"])
        roman = match["a"] in _ROMAN and (match["b"] or match["a"]) in _ROMAN
        plain = match["b"] and match["a"].isdigit() and match["b"].isdigit()
        if first and last and (roman or plain):
            yield Found(Bloom(match[0], (), span(first, last)), match.span(), 0.55)


_SHORT_LABEL = later(
    r"(?<![^\W_])(?:fl|flg|flr|flw|bl|blm|bl[uü]te(?:zeit)?|bl[uü]ht|bloei(?:t|tijd)?|floraison|blomstring"
    r"|blt)[.:]{0,2} ?(?:(?P<a>[IVX]{1,4}) ?[-–—/] ?(?P<b>[IVX]{1,4})(?![^\W_])"
    r"|(?P<c>\d{1,2}) ?[-–—] ?(?P<d>\d{1,2})(?= ?(?:[\n,;|•·)]|$)))",
    re.I,
)


_IN_SENTENCE = later(
    r"(?<![^\W_])(?:flowers|flowering|blooms|blooming|in (?:flower|bloom)) "
    r"(?P<a>[IVX]{1,4}) ?[-–—] ?(?P<b>[IVX]{1,4})(?=[.;,]?\s)",
    re.I,
)
_FACT = r"(?:\d ?(?:cm|mm|m|in|ft)\.?|\d ?[\"”″'’]|°[CF]?|\b[ZH]\d{1,2}[ab]?|\d ?/ ?m[2²])"
_OWN_LINE = later(
    rf"(?:(?:^|(?<=[\n\t]))(?:[•·*-]|\d{{1,2}} )?|[•·|,;] |{_FACT}[,;]? ) ?"
    r"(?P<a>[IVXl1]{1,4}) ?(?:[-–—/]|bis|t/m|to) ?(?P<b>[IVXl1]{1,4}) ?"
    r"(?=[,;\n\t☀☼◐●○✿•·|]|\.{3,}|$|(?<= )(?:[-–−+±~]? ?\d|[ZH]\d|[€£$]))"
)
"""Roman months on a line of their own or among sizes and cold."""
_OTHER_JOB = later(
    r"(?i)\b(?:plant\w*|pflanz\w*|sow\w*|zaai\w*|aussaat|saat|semis|harvest\w*|ernte\w*|oogst\w*|recolte"
    r"|récolte|cosecha|siembra|prun\w*|snoei\w*|schnitt|taille|zones?|group|grade|class|ship\w*|fruits?|berr\w*"
    r"|ripe\w*|laub|feed\w*|pot(?:ting)?|set|corms?|pick)\W{0,3}\Z"
)


_LED = later(lambda: rf"(?:^|[\n\t•·|;] ?){colour_list()}, ")
"""Before Roman months, the flower's colour: "White, V-VI; red berries IX-XII"."""
_ROMAN_PAIR = later(r"(?P<a>[IVX]{1,4}) ?[-–—] ?(?P<b>[IVX]{1,4})(?![^\W_])")


def _shortened(text: str) -> Iterator[Found[Bloom]]:
    """ "Fl VII-IX" anywhere on a line, and "VII-IX" on a line of its own, its label a picture."""
    alone = [match for match in _OWN_LINE.finditer(text) if all(_pair(match)) and set(match[0]) & set("VX")]
    told = [(match, 0.85) for short in (_SHORT_LABEL, _IN_SENTENCE) for match in short.finditer(text)]
    alone = [
        match for match in alone if not _OTHER_JOB.search(text, max(0, match.start() - 24), match.start("a"))
    ]
    told += [(match, 0.75) for match in alone if len({_pair(match) for match in alone}) == 1]
    told += [(pair, 0.7) for led in _LED.finditer(fold(text)) if (pair := _ROMAN_PAIR.match(text, led.end()))]
    for match, certainty in told:
        one, other = ("c", "d") if match.groupdict().get("c") else ("a", "b")
        first, last = _pair(match)
        if first and last:
            begin, end = match.start(one), match.end(other)
            printed = text[begin:end]
            printed = printed if one == "c" else printed.translate(_WORN_ONES)
            yield Found(Bloom(printed, (), span(first, last)), (begin, end), certainty)


_WORN_ONES = str.maketrans("l1", "II")


def _pair(match: re.Match[str]) -> tuple[int, int]:
    """The months of a range; a small l or a one in Roman numbers is their I."""
    if match.groupdict().get("c"):
        return _month_number(match["c"]), _month_number(match["d"])
    first, last = (match[name].translate(_WORN_ONES).upper() for name in ("a", "b"))
    return _month_number(first), _month_number(last)


def _month_number(printed: str) -> int:
    number = _ROMAN.get(printed) or (int(printed) if printed.isdigit() else 0)
    return number if 1 <= number <= 12 else 0
