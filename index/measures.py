"""Zones and lengths as a person asks for them, and whether a printed range is one of those."""

from __future__ import annotations

import re
from dataclasses import dataclass

from ocr_tags.errors import QueryError

_ZONE = re.compile(r"(\d{1,2})([ab]?)")

CM_PER_UNIT = {
    "mm": 0.1,
    "cm": 1.0,
    "m": 100.0,
    "in": 2.54,
    "inch": 2.54,
    "inches": 2.54,
    '"': 2.54,
    "″": 2.54,
    "”": 2.54,
    "ft": 30.48,
    "feet": 30.48,
    "foot": 30.48,
    "'": 30.48,
    "′": 30.48,
    "’": 30.48,
}
_UNIT = "|".join(sorted(map(re.escape, CM_PER_UNIT), key=len, reverse=True))
_MEASURE = re.compile(rf"(\d+(?:[.,]\d+)?)\s*({_UNIT})?\.?\s*", re.I)
_BOUND = re.compile(r"(<=?|>=?|under|below|up to|over|above|at least)\s*", re.I)
_BELOW = frozenset(("<", "<=", "under", "below", "up to"))
_NEARLY = 0.05


@dataclass(frozen=True, slots=True)
class Zones:
    """Half zones, counted from 0a: zone 5 is the pair 10 and 11, zone 5a only 10."""

    coldest: int
    warmest: int

    def within(self, printed: str) -> bool:
        """True when all of what was asked lies inside a printed range "4a-9" (an end may be empty).

        >>> Zones(10, 11).within("4-9"), Zones(10, 11).within("5b-9"), Zones(10, 11).within("4-")
        (True, False, True)
        """
        lowest, _, highest = printed.partition("-")
        if not lowest and not highest:
            return False
        above = not lowest or half_zones(lowest).coldest <= self.coldest
        return above and (not highest or half_zones(highest).warmest >= self.warmest)


@dataclass(frozen=True, slots=True)
class Lengths:
    """Heights or spreads asked for, in centimetres. `<60cm` has no lower end, `>2 ft` no upper one."""

    lowest: float | None
    highest: float | None

    def fits(self, printed: str) -> bool:
        """True when a printed range "min-max" (whole millimetres, an end may be empty) is asked for.

        A range fits what it overlaps. Open questions are about how large the plant gets: `<60cm` wants
        the greatest length printed to be 60 cm or less, `>60cm` wants it to be 60 cm or more.

        >>> Lengths(60, 90).fits("450-610"), Lengths(None, 60).fits("450-610"), Lengths(60, None).fits("-610")
        (True, False, True)
        """
        ends = [float(end) / 10 if end else None for end in printed.split("-")]
        low, high = ends if len(ends) == 2 else (None, None)
        largest = high if high is not None else low
        if largest is None or (self.lowest is None and high is None):
            return False
        if self.lowest is not None and largest < self.lowest:
            return False
        smallest = largest if low is None or self.lowest is None else low
        return self.highest is None or smallest <= self.highest


def half_zones(text: str) -> Zones:
    """A hardiness zone, "5" or "5a", as half zones; QueryError for anything else.

    >>> half_zones("5"), half_zones("10B")
    (Zones(coldest=10, warmest=11), Zones(coldest=21, warmest=21))
    """
    match = _ZONE.fullmatch(text.strip().lower())
    if not match or not is_zone(text):
        raise QueryError(f"{text!r} is not a hardiness zone.", "Zones run from 0 to 13, with a or b: 5, 5a.")
    number = 2 * int(match[1])
    return Zones(number + (match[2] == "b"), number + (match[2] != "a"))


def is_zone(text: str) -> bool:
    """Whether this is a hardiness zone, 0 to 13, perhaps with a or b."""
    match = _ZONE.fullmatch(text.strip().lower())
    return match is not None and int(match[1]) <= 13


def lengths(text: str) -> Lengths:
    """A length or range of lengths; a bare number is centimetres; QueryError for anything else.

    A single figure stands for itself and 5 % either way: tags in inches and in centimetres round apart.

    >>> lengths("<60cm"), lengths("> 2 ft 6 in")
    (Lengths(lowest=None, highest=60.0), Lengths(lowest=76.2, highest=None))
    >>> lengths("2-3 ft"), lengths("30–60")
    (Lengths(lowest=60.96, highest=91.44), Lengths(lowest=30.0, highest=60.0))
    """
    rest = text.strip()
    bound = _BOUND.match(rest)
    parts = re.split(r"\s*(?:[-–—]|\bto\b)\s*", rest[bound.end() :] if bound else rest)
    measures = [_measure(part) for part in parts]
    if any(m is None for m in measures) or len(measures) > (1 if bound else 2):
        raise QueryError(
            f"{text!r} is not a height or spread.", "Write it like <60cm, 30-60cm, 2-3 ft or 18 in."
        )
    unit = next((m[1] for m in reversed(measures) if m and m[1]), 1.0)
    found = [round(m[0] * (1.0 if m[1] else unit), 4) for m in measures if m]
    if bound:
        below = bound[1].lower() in _BELOW
        return Lengths(None, found[0]) if below else Lengths(found[0], None)
    if len(found) == 1:
        return Lengths(found[0] * (1 - _NEARLY), found[0] * (1 + _NEARLY))
    return Lengths(min(found), max(found))


def _measure(text: str) -> tuple[float, float | None] | None:
    """(length, centimetres to its last unit) of "2 ft 6 in" or "60 cm"; of a bare "2", (2, None)."""
    total, unit, position = 0.0, None, 0
    while match := _MEASURE.match(text, position):
        if position and unit is None:
            return None
        number = float(match[1].replace(",", "."))
        unit = CM_PER_UNIT[match[2].lower()] if match[2] else None
        total += number * (unit or 1.0)
        position = match.end()
    return (total, unit) if position and position == len(text) else None
