"""Lengths as print gives them, in centimetres: single and ranges, in one unit or two."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from ocr_tags.measures.quantities import CM, MARKS, METRIC, SPELLED, Quantity, quantity_at
from ocr_tags.measures.two_units import agree, one_end_lost, to_nearest_five
from ocr_tags.patterns import later
from ocr_tags.values import Length

LONGEST = {"in": 144, "ft": 197, "yd": 66, "cm": 1000, "m": 60, "mm": 2000}
"""More than this in that unit is a lost hyphen ("1218 in"), not a plant; 60 m at the outside."""
_TREE = 300, 4000
"""A range in centimetres that ends beyond the longest is a tree's when it begins so tall."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One printed length: its value, where it stands, the unit it was printed in, and how sure."""

    length: Length
    span: tuple[int, int]
    unit: str
    certainty: float = 1.0


def find_lengths(text: str) -> Iterator[Measure]:
    """Every length with a unit in `text`, in order; the same length in a second unit is part of it.

    Reversed ranges, nothing, and lengths no plant has are left out.

    >>> [m.length for m in find_lengths("2-3' (60-90 cm), up to 1½ m")]
    [Length(min_cm=60.96, max_cm=91.44), Length(min_cm=None, max_cm=150.0)]
    """
    position = 0
    while start := _START.search(text, position):
        measure = _measure_at(text, start.start())
        position = measure.span[1] if measure else start.start() + 1
        if measure:
            if _NEAR_END_LOST.search(text, max(0, measure.span[0] - 6), measure.span[0]):
                measure = replace(measure, certainty=0.3 * measure.certainty)
            if measure.length.min_cm == measure.length.max_cm and (
                _FAR_END_LOST.match(text, measure.span[1]) or _goes_on_below(text, measure)
            ):
                measure = replace(measure, certainty=0.3 * measure.certainty)
            measure = _with_second_unit(text, measure)
            position = measure.span[1]
            if _plausible(measure.length):
                yield measure


def parse_length(text: str) -> Measure | None:
    """The length `text` consists of, and nothing else; None when it is not one."""
    found = list(find_lengths(text))
    whole = len(found) == 1 and found[0].span == (0, len(text))
    return found[0] if whole else None


_START = later(
    r"(?<![\d$€£#½¼¾⅓⅔⅛⅜⅝⅞%])(?<!\d[-–—.,])(?<![ :(]\.)(?=[\dlI|!½¼¾⅓⅔⅛⅜⅝⅞]|s(?=cm\b)|(?i:" + SPELLED + "))"
)
_TO = later(
    r"-\s(?:to|or)\s|(?<=\d)\n\n[-–—] ?(?=\d)|\s?(?:-{1,2}|[–—−‐‑~=_])\s?"
    r"| *\n? *(?:\b|(?<=\d))(?:to|thru|through|bis|tot|till?)(?:\b|(?=\d|[Il|]\d))\s*"
    r"| *\n? *à\s*|\s+(?:a|"
    r"y|and|et)\s+",
    re.I,
)
_STROKE = later(r" ?/ ?(?=\d{2,3} ?cm\b)", re.I)
"""Height grades and continental labels print 60/80 cm for 60 to 80 cm (common practice, no source)."""
_ASIDE = later(r" ?\([^()\n]{2,14}\)")

_AT_MOST = (
    r"up\sto|to(?!:|\t)(?<!\ngrows to(?=\n))(?!(?-i:(?<=TO))\n)"  # "Grows to:" is a label, no limit
    r"|no (?:more|taller|higher|bigger|wider) than|(?:never|rarely|seldom|hardly ever) (?:over|above"
    r"|more than|exceeds)|under|less than|max(?:imum|\.)?|jusqu.{0,2}[àa]|hasta|bis(?: zu)?|tot|[<≤]"
)
_AT_LEAST = r"over|more than|at least|min(?:imum|\.)?|plus de|más de|mas de|über|(?<![←<–—=-])[>≥]"
_ABOUT = (
    r"about|approx(?:imately|\.)?|around|average|avg\.?|ca\.?|env(?:iron|\.)|aprox\.?|"
    r"between|from|entre|de|von|circa|(?<!o\.)c\.|[~±]"
)
_BEFORE = later(
    rf"(?<![^\W\d_])(?:(?P<most>{_AT_MOST})|(?P<least>{_AT_LEAST})|(?P<about>{_ABOUT})):?\s{{0,2}}$", re.I
)
_AFTER = later(
    r" ?(?:(?P<least>(?<! )\+|\+(?! [^\W\d_])|"
    r"(?:or|and) (?:up|more|over|better|taller|higher|wider|bigger)\b|et plus\b|o más\b|plus\b"
    r"|min(?:imum)?\b\.?)"
    r"|(?P<about>or so\b)|(?P<most>or less\b|\(?max(?:imum)?\b\.?\)?))",
    re.I,
)
_SECOND_UNIT = later(r"\n(?!\n)[(\[]?| ?(?:[(\[/|,;=–-]|\bor\b)?(?: ?\n(?!\n)| ?)")
_NEAR_END_LOST = later(r"[½¼¾%]\d ?$|[\d½¼¾%][\"″”'’′]? ?(?:[-–—~]|\bto\b) ?$|(?:^|[\t\n])\d{1,2}\t$", re.I)

_FAR_END_LOST = later(r" ?(?:[-–—~]|\bto) ?(?=[\n\t]|$)", re.I)
_BEHIND_WORDS = later(r"[^\W\d_]{2}[^\n\t]*\Z")


def _goes_on_below(text: str, measure: Measure) -> bool:
    """Whether a greater length alone in the line below may be the far end, its dash lost."""
    start, end = measure.span
    other = quantity_at(text, end + 1) if text[end : end + 1] == "\n" else None
    if other is None or other.unit != measure.unit or text[other.end : other.end + 1] not in {"", "\n"}:
        return False
    greater = 1 < other.value * CM[other.unit] / (measure.length.max_cm or 1) < 3
    return greater and bool(_BEHIND_WORDS.search(text, text.rfind("\n", 0, start) + 1, start))


def _measure_at(text: str, start: int) -> Measure | None:
    first = quantity_at(text, start)
    if first is None:
        return None
    second = _second(text, first)
    if second is None and first.unit is None:
        return None
    last = second or first
    unit = last.unit or first.unit or ""
    certainty = min(first.certainty, last.certainty) * (1.0 if last.unit else 0.6)
    if last.unit == "in" and text[last.end - 1] in "°º" and (first is last or first.unit is None):
        certainty = min(certainty, 0.4) if last.value >= 9 else 0.0  # of 3' and 3" it may be either
    tree = unit == "cm" and _TREE[0] <= first.value <= last.value <= _TREE[1]  # 1520 alone may be 15-20
    if first.value > LONGEST[first.unit or unit] or (last.value > LONGEST[unit] and not tree):
        certainty = 0.0
    length = Length(_cm(first.value, first.unit or unit), _cm(last.value, unit))
    doubt = _width_doubt(length, first.unit or unit)
    length, begin, end = _one_end(text, start, last.end, length, second is not None)
    # One of the two marks of 18" is often lost, and no perennial grows 18 feet.
    marked = text[last.end - 1] in MARKS
    if unit == "ft" and (marked or last.certainty < 1) and last.value > 6 and not (marked and _tall(text)):
        doubt *= 0.75
    if unit == "ft" and last.value > 10 and last.value % 10 == 1 and (second is None or last.value > 20):
        doubt *= 0.45  # what readers make of 3½'
    return Measure(length if certainty else Length(0, 0), (begin, end), unit, certainty * doubt)


_FEET = later(rf"(?<![\d.])[1-9]\d? ?[{MARKS}](?![{MARKS}\"″”\w])")


def _tall(text: str) -> bool:
    """Whether feet are what this tag measures in: three lengths with one mark are not worn."""
    return len(_FEET.findall(text)) >= 3


def _second(text: str, first: Quantity) -> Quantity | None:
    """The far end of a range, if `first` begins one."""
    aside = _ASIDE.match(text, first.end) if first.unit else None
    to = _TO.match(text, aside.end() if aside else first.end)
    if to and to[0].strip() == "To" and text[first.end - 1] == ".":
        return None  # "Height 2 ft. To 18 in. wide": another sentence
    second = quantity_at(text, to.end()) if to else _behind_stroke(text, first)
    if second is None or not (first.unit or second.unit):
        return None
    if first.unit and second.unit and (first.unit in METRIC) != (second.unit in METRIC):
        return None  # "18 in - 45 cm" is one length twice
    if to and first.unit and second.unit and second.value * CM[second.unit] < first.value * CM[first.unit]:
        return None if to[0].strip().lower() == "and" else second  # "6 ft and 4 ft across" are two
    return second


def _behind_stroke(text: str, first: Quantity) -> Quantity | None:
    """The far end of "60/80 cm"; equal or falling figures are two lengths."""
    stroke = _STROKE.match(text, first.end) if first.unit is None and first.value >= 10 else None
    second = quantity_at(text, stroke.end()) if stroke else None
    if second is None or second.value <= first.value:
        return None
    return replace(second, certainty=0.85 * second.certainty)


def _cm(value: float, unit: str) -> float:
    return round(value * CM[unit], 6)  # takes off the binary dust, so that 1 ft and 12 in are equal


def _one_end(text: str, start: int, end: int, length: Length, both: bool) -> tuple[Length, int, int]:
    """The length as "up to" and the like before or after it say, unless `both` ends are printed; its span."""
    before, after = _BEFORE.search(text, max(0, start - 24), start), _AFTER.match(text, end)
    begin = before.start() if before else start
    if both:
        return length, begin, end
    if (before and before["most"]) or (after and after["most"]):
        length = Length(None, length.max_cm)
    elif (before and before["least"]) or (after and after["least"]):
        length = Length(length.min_cm, None)
    return length, begin, after.end() if after else end


def _width_doubt(length: Length, unit: str) -> float:
    low, high = length.min_cm or 0, length.max_cm or 0
    half_a_foot_to_more = unit == "ft" and low < CM["ft"] and high >= 1.5 * CM["ft"]  # 1½-2' read as ½-2'
    return 0.3 if high > 8 * low or half_a_foot_to_more else 1.0


def _with_second_unit(text: str, measure: Measure) -> Measure:
    """`measure` checked by the same length in the other system, printed right after it."""
    gap = _SECOND_UNIT.match(text, measure.span[1])
    other = _measure_at(text, gap.end()) if gap else None
    if other is None or (other.unit in METRIC) == (measure.unit in METRIC):
        return measure
    end = other.span[1] + (text[other.span[1] : other.span[1] + 1] in tuple(")]"))
    if not _plausible(other.length):
        return replace(measure, span=(measure.span[0], end), certainty=min(measure.certainty, 0.6))
    if one_end_lost(measure.length, other.length):
        certainty = min(measure.certainty, 0.35)
    elif agree(measure.length, other.length):
        certainty = 1 - (1 - measure.certainty) * 0.3 if measure.certainty else 0.0
    elif _one_of_range(measure.length, other.length):
        certainty = 0.9 * measure.certainty
    elif not _rounded(measure, other):
        certainty = min(measure.certainty, 0.35)
    else:
        certainty = measure.certainty
    return replace(measure, span=(measure.span[0], end), certainty=certainty)


def _one_of_range(feet: Length, metres: Length) -> bool:
    """ "3-4 ft / 1 m": one round figure in the other unit that lies within the range."""
    middle = metres.max_cm
    if feet.min_cm is None or feet.max_cm is None or middle is None or metres.min_cm != middle:
        return False
    return feet.max_cm > feet.min_cm and 0.95 * feet.min_cm <= middle <= 1.05 * feet.max_cm


def _rounded(one: Measure, other: Measure) -> bool:
    metric, inches = (one, other) if one.unit == "cm" else (other, one)
    return metric.unit == "cm" and to_nearest_five(metric.length, inches.length)


def _plausible(length: Length) -> bool:
    low, high = length.min_cm, length.max_cm
    return low != 0 and high != 0 and (low is None or high is None or low <= high)
