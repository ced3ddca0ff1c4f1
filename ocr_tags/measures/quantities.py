"""One figure with its unit, as print gives it: fractions, decimals, 2'6", and worn letters.

Units are exact: 1 in = 2.54 cm, 1 ft = 30.48 cm, 1 yd = 91.44 cm (international yard and pound agreement
of 1959).
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from ocr_tags.patterns import later

CM = {"in": 2.54, "ft": 30.48, "yd": 91.44, "cm": 1.0, "m": 100.0, "mm": 0.1}
METRIC = frozenset({"cm", "m", "mm"})

MARKS = "'’‘′´`"
_TWICE, _TWO = "|".join(mark * 2 for mark in MARKS), f"[{MARKS}]{{2}}"
"""Inches. Two marks that differ may be one that was read twice, and then they are feet: no telling."""
_GAP = r"(?:[ \t]?\n(?!\n) ?| {0,3})"  # a length may run on to the next line, never past an empty one
_GLUED = r"(?=(?:tall|high|wide|broad|across|apart|deep|long|spread|spacing)(?![^\W_]))"
"""What the length is of, with its blank lost: "3-6 in.tall", "5'apart"."""
_ENDS = rf"(?:(?![^\W\d_])|(?=[HW](?![^\W_]))|(?=x ?\d)|{_GLUED})"

_UNITS = {
    "in": (
        rf"inch(?:es)?\b\.?|ins?\b\.?|in(?=[HW]\b|x ?\d)|in{_GLUED}|[\"″”“„]|{_TWICE}|pouces?"
        rf"|po\b\.?|pulgadas?|pulg\b\.?|zoll"
    ),
    "ft": rf"feet|foot|ft\b\.?|ft(?=[HW]\b|x ?\d|\d{{1,2}} ?(?:in\b|[\"″”]))|ft{_GLUED}"
    rf"|pieds?|pies?|pi\b\.?|[{MARKS}](?![{MARKS}])",
    "yd": r"yards?\b",
    "cm": rf"cms?\b\.?|cm(?=[HW]\b|x ?\d)|cm{_GLUED}|cent[ií]m[eè]t(?:re|er|ro)s?|zentimeter",
    "mm": r"mm\b\.?|millimet(?:er|re)s?",
    "m": rf"(?-i:m|(?<=\d)M)\b\.?|m(?=[HW]\b|x ?\d)|m{_GLUED}|m[eè]t(?:er|re|ro)s?",
}
_WORN_UNITS = {
    "in": rf"[l1I|]nch(?:es)?|in[oe]h(?:es)?|[l1I|]n\b\.?|[*°º](?! ?[CF]\b)|{_TWO}",
    "ft": r"f[il1]\b\.?|tt\b\.?|feei",
    "cm": r"crn\b|cn\b|om\b|ern\b",
}


def _units(forms: dict[str, str]) -> re.Pattern[str]:
    choices = "|".join(f"(?P<{unit}>{form})" for unit, form in forms.items())
    return later(rf"{_GAP}(?:{choices}){_ENDS}", re.I)


_HYPHENED = later(
    r"-(?:(?P<in>in\b\.?|inch)|(?P<ft>ft\b\.?|foot)|(?P<cm>cm)|(?P<m>met(?:re|er)))(?![^\W\d_])", re.I
)
"""An 18-inch spread, a 2-foot mound: prose ties figure and unit, which stays in the singular."""
_UNIT, _WORN_UNIT = _units(_UNITS), _units(_WORN_UNITS)

# "in" is also a word: "Plant 6 in a pot", "grows 18-24 in full sun".
_WORD_IN = later(
    r"(?<=\bin) (?:an?(?! ?\d)|the|full|part|partial|sun|shade|spring|summer|fall|autumn|winter|each|one|"
    r"well|moist|rows?|groups?|containers?|pots?|packs?|your|our|all|most|good|rich|early|late|mid|bloom|"
    r"flower|zones?|usda|any|beds?|borders?|colou?rs?|that|this|both|hot|cool|cold|dry|sunny)\b"
    r"|(?<=\bIN) (?:AN?|THE|EACH|POTS?)\b"
)

_VULGAR = dict(zip("½¼¾⅓⅔⅛⅜⅝⅞", (1 / 2, 1 / 4, 3 / 4, 1 / 3, 2 / 3, 1 / 8, 3 / 8, 5 / 8, 7 / 8), strict=True))
_DIGITS = str.maketrans("lI|!OoSBZs", "1111005825")

# A stroke with room on either side parts two facts of a row: "2 / 3 ft" is zone 2 and 3 feet.
_NUMBER = later(
    r"(?P<smudged>[1-9]) ?/?½/?2(?! ?\d)|"  # ½ read twice
    r"(?:(?P<whole>\d{1,2})(?:[ -]{1,2}|(?=[½¼¾⅓⅔⅛⅜⅝⅞])))?"
    r"(?:(?P<top>\d)(?:[/⁄] ?| [/⁄](?! ))(?P<under>[23458]|16)|(?P<vulgar>[½¼¾⅓⅔⅛⅜⅝⅞]))(?!\d)"
    r"|(?P<half>[1-9])(?:%|Y2|['’]/2(?! ?(?:c?m\b|\d)))"  # what readers make of 1½
    r"|(?P<decimal>\d{1,3}[.,]\d{1,2})(?![\d])"
    r"|(?P<clean>\d{1,3}(?=[1lI|]n\b)|\d{1,4}(?![OoSBZ|!]|[lI](?![nN])))"
    r"|(?P<worn>(?<![^\s(])s(?=cm\b)|(?<![^\s(])[lI|](?= ?(?:to|-|–) ?\d)"  # 5 cm, and 1 to 2 ft
    r"|(?:(?<!\w)|(?<=[\d ][Tt][Oo]))[lI|!]\d{1,2}(?![\doO])|\d[lI|!OoSBZ]|(?<!\w)[I|l!][OoB])"
)


FIGURES = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}
_TENS = {"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80}
FIGURES |= {f"{ten}-{one}": _TENS[ten] + FIGURES[one] for ten in _TENS for one in list(FIGURES)}
FIGURES |= _TENS | {"ten": 10, "eleven": 11, "twelve": 12, "fourteen": 14, "fifteen": 15, "sixteen": 16}
FIGURES |= {"eighteen": 18, "ninety": 90}
"""Numbers that tags spell out."""
WORD = rf"(?:{'|'.join(sorted(FIGURES, key=len, reverse=True))})"
_HALVES: dict[str, float] = {"a": 1, "an": 1, "half a": 0.5, "half an": 0.5}
SPELLED = (
    rf"(?<![^\W_])(?:{WORD}(?=(?: and a half|[ \n](?:to|or)[ \n]{WORD})?[ \n-]"
    r"(?:inch(?:es)?|foot|feet|met(?:re|er)s?|centimet(?:re|er)s?|yards?)\b)|"
    r"(?:half )?an?(?=[ \n](?:foot|inch|met(?:re|er)|yard)\b(?! or (?!so\b|more\b|less\b))))"
)
"""A number in words counts only before a unit in words: "one in each" is none."""
_SPELLED = later(rf"(?P<word>{SPELLED})(?P<half> and a half)?", re.I)
_AND_A_HALF = later(r"\s(?:and|&)\sa\shalf\b", re.I)
"""A foot and a half, behind its unit."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A figure and its unit, if one follows; where they end; how sure their letters leave us, 0 to 1."""

    value: float
    unit: str | None
    end: int
    certainty: float


def _number(match: re.Match[str]) -> tuple[float, float]:
    """The value of a number, and how sure its letters leave us."""
    if match["top"] or match["vulgar"]:
        part = _VULGAR[match["vulgar"]] if match["vulgar"] else int(match["top"]) / int(match["under"])
        return (int(match["whole"] or 0) + part, 1.0) if part < 1 else (0.0, 0.0)  # "4/3" is two figures
    if match["smudged"]:
        return int(match["smudged"]) + 0.5, 0.6
    if match["half"]:
        return int(match["half"]) + 0.5, 0.4
    if match["decimal"]:
        return float(match["decimal"].replace(",", ".")), 1.0
    if match["worn"]:
        unit = match.string[match.end() : match.end() + 2]
        nought = match["worn"][1:] in ("o", "O") and unit in ("cm", "mm", "in", "ft")  # "6ocm"
        return float(match["worn"].translate(_DIGITS)), 0.85 if nought else 0.6
    return float(match["clean"]), 1.0


def quantity_at(text: str, start: int) -> Quantity | None:
    """The quantity printed at `start`, feet with their inches; None when no figure stands there."""
    match = _NUMBER.match(text, start)
    if match is None:
        return _spelled_at(text, start)
    value, certainty = _number(match)
    if certainty == 0:
        return None
    unit, end, letters = _unit_at(text, match.end())
    if unit == "ft" and value == int(value) and (inches := _inches_at(text, end)):
        return Quantity(value + inches.value / 12, "ft", inches.end, certainty * inches.certainty)
    if unit == "ft" and text[end - 1] in MARKS and re.match(r"[\d%]", text[end : end + 1]):
        certainty = 0.0  # "1'4 ft" and "1'%'" may be 1¼ or 1½
    if unit == "in" and letters < 1 and re.search(rf"{_TWO}$", text[:end]):
        certainty = 0.0
    if unit and match["decimal"]:
        certainty *= _decimal_doubt(match["decimal"], unit)
    return Quantity(value, unit, end, certainty * letters)


def _spelled_at(text: str, start: int) -> Quantity | None:
    """ "Two feet", "one and a half metres"."""
    match = _SPELLED.match(text, start)
    if match is None:
        return None
    word = match["word"].casefold()
    figure = _HALVES[word] if word in _HALVES else FIGURES[word]
    unit, end, letters = _unit_at(text, match.end())
    half = _AND_A_HALF.match(text, end) if figure == 1 and unit else None
    return Quantity(
        figure + (0.5 if match["half"] or half else 0.0), unit, half.end() if half else end, letters
    )


def _unit_at(text: str, start: int) -> tuple[str | None, int, float]:
    for pattern, certainty in ((_HYPHENED, 1.0), (_UNIT, 1.0), (_WORN_UNIT, 0.6)):
        match = pattern.match(text, start)
        if match and match.lastgroup and not _WORD_IN.match(text, match.end()):
            return match.lastgroup, match.end(), certainty
    return None, start, 1.0


def _inches_at(text: str, start: int) -> Quantity | None:
    """The inches of 2'6\", when inches follow feet directly."""
    match = later(r" ?\d").match(text, start)
    inches = quantity_at(text, match.end() - 1) if match else None
    return inches if inches and inches.unit == "in" and inches.value < 12 else None


def _decimal_doubt(printed: str, unit: str) -> float:
    """A stop where a hyphen was: "12.18 in" is 12-18, and "4.6 in" may be 4-6."""
    part = re.split("[.,]", printed)[1]
    if unit == "m" or part in {"5", "50", "25", "75", "0"}:
        return 1.0
    return 0.5 if len(part) == 1 else 0.0
