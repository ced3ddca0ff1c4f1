"""Sizes as people type them ("10ft", "3 m", "12-18 in"), and sizes of a bed, which are not to be rounded off.

What a tag prints is shown by `measures.lengths`, which looks for the round figure meant; a bed that measures
10 ft 3 in is no bed of 10 ft.
"""

from __future__ import annotations

import math
import re

from ocr_tags.errors import QueryError
from ocr_tags.measures.lengths import Units
from ocr_tags.measures.printed import Measure, parse_length
from ocr_tags.measures.quantities import CM, METRIC
from ocr_tags.values import Length

_EXAMPLES = "Write it like 10 ft, 3 m or 12-18 in."
_NEGATIVE = re.compile(r"\s*[-−–]\s*\d")
_NOTHING = re.compile(r"\s*0+(?:[.,]0+)?\s*[^\W\d_\"'′″]*[\"'′″]?\s*")
# A plant is never 100 m long, so the reader of tags refuses it; a hedge may be.
_LONG = re.compile(r"\s*(?P<number>\d+(?:[.,]\d+)?)\s*(?P<unit>mm|cm|m|in|ft)\b\.?\s*", re.I)
_FRACTIONS = {0.25: "¼", 0.5: "½", 0.75: "¾"}


def typed_length(text: str, what: str) -> Measure:
    """The length or range a person typed, above nothing; `what` names it in the error ("The spacing").

    >>> typed_length("12-18 in", "The spacing").length
    Length(min_cm=30.48, max_cm=45.72)
    >>> typed_length("250 ft", "The row").length.max_cm
    7620.0
    """
    if _NEGATIVE.match(text) or _NOTHING.fullmatch(text):
        raise QueryError(f"{what} must be more than nothing, not {text!r}.")
    measure = parse_length(text.strip())
    if measure is None and (long := _LONG.fullmatch(text)):
        unit = long["unit"].lower()
        cm = round(float(long["number"].replace(",", ".")) * CM[unit], 6)
        measure = Measure(Length(cm, cm), (0, len(text)), unit)
    if measure is None:
        raise QueryError(f"{what}: {text!r} is not a length with a unit.", _EXAMPLES)
    return measure


def typed_size(text: str, what: str) -> tuple[float, Units]:
    """One length in centimetres, and the system it was typed in; a range is refused."""
    measure = typed_length(text, what)
    low, high = measure.length.min_cm, measure.length.max_cm
    if low is None or high is None or low != high:
        raise QueryError(f"{what} must be one length, not {text!r}.")
    return low, system(measure)


def system(measure: Measure) -> Units:
    return "cm" if measure.unit in METRIC else "in"


# ---------------------------------------------------------------- shown to the quarter inch or centimetre


def size_in_words(cm: float, units: Units) -> str:
    """A size to the quarter inch under 3 ft, to the inch above; in feet where they come out in halves.

    >>> [size_in_words(cm, "in") for cm in (30.48, 31.1, 60.96, 63.5, 137.16, 304.8)]
    ['12 in', '12¼ in', '2 ft', '25 in', '4½ ft', '10 ft']
    >>> size_in_words(140, "in"), size_in_words(45, "cm"), size_in_words(120, "cm"), size_in_words(1234, "cm")
    ('4 ft 7 in', '45 cm', '1.2 m', '12.34 m')
    """
    if cm < 0:
        return f"−{size_in_words(-cm, units)}"
    if units == "cm":
        return f"{round(cm, 1 if cm < 10 else 0):g} cm" if cm < 99.5 else f"{round(cm / 100, 2):g} m"
    quarters = round(cm / 2.54 * 4)
    if quarters >= 24 * 4 and quarters % 24 == 0:
        return f"{_mixed(quarters // 12)} ft"
    if quarters < 36 * 4:
        return f"{_mixed(quarters)} in"
    whole = round(cm / 2.54)
    return f"{_mixed(whole // 3)} ft" if whole % 6 == 0 else f"{whole // 12} ft {whole % 12} in"


def floor_in_words(cm: float, units: Units) -> str:
    """The same, never more than `cm`: what is to fit must not be rounded up.

    >>> floor_in_words(30.2, "in"), floor_in_words(30.475, "in"), floor_in_words(45.9, "cm")
    ('11¾ in', '12 in', '45 cm')
    """
    fine, coarse = (2.54 / 4, 2.54) if units == "in" else (0.1, 1.0)
    step = fine if cm < (36 * 2.54 if units == "in" else 10) else coarse
    return size_in_words(math.floor(cm / step + 0.02) * step, units)


def area_in_words(square_cm: float, units: Units) -> str:
    """An area in square feet or square metres.

    >>> area_in_words(40 * 30.48**2, "in"), area_in_words(52_500, "cm")
    ('40 sq ft', '5.25 m²')
    """
    if units == "cm":
        return f"{round(square_cm / 10_000, 2):g} m²"
    return f"{round(square_cm / 30.48**2, 1):g} sq ft"


def _mixed(quarters: int) -> str:
    """Quarters as a mixed number: 6 is "1½"."""
    whole, part = divmod(quarters, 4)
    return f"{whole or ''}{_FRACTIONS[part / 4]}" if part else str(whole)
