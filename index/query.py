"""What a person asks for, taken apart: words to look for, and filters a tag must pass."""

from __future__ import annotations

import re
from dataclasses import dataclass

from index.folding import fold
from ocr_tags.errors import QueryError

LIGHTS = ("full_sun", "part_sun", "part_shade", "full_shade")
_LIGHT_WORDS = {
    "sun": "full_sun",
    "partial_sun": "part_sun",
    "partial_shade": "part_shade",
    "half_shade": "part_shade",
    "semi_shade": "part_shade",
    "shade": "full_shade",
}

_ZONE = re.compile(r"(\d{1,2})([ab]?)")
_ZONE_IN_WORDS = re.compile(r"\b(?:zone\s*|z)(\d{1,2}[ab]?)\b(?!\s*[-–]\s*\d)", re.I)

_CM_PER_UNIT = {
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
_UNIT = "|".join(sorted(map(re.escape, _CM_PER_UNIT), key=len, reverse=True))
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
class Heights:
    """Heights asked for, in centimetres. `<60cm` has no lower end, `>2 ft` no upper one."""

    lowest: float | None
    highest: float | None

    def fits(self, printed: str) -> bool:
        """True when a printed height "min-max" (whole millimetres, an end may be empty) is asked for.

        A range fits what it overlaps. Open questions are about how tall the plant gets: `<60cm` wants
        the greatest height printed to be 60 cm or less, `>60cm` wants it to be 60 cm or more.

        >>> Heights(60, 90).fits("450-610"), Heights(None, 60).fits("450-610"), Heights(60, None).fits("-610")
        (True, False, True)
        """
        ends = [float(end) / 10 if end else None for end in printed.split("-")]
        low, high = ends if len(ends) == 2 else (None, None)
        tallest = high if high is not None else low
        if tallest is None or (self.lowest is None and high is None):
            return False
        if self.lowest is not None and tallest < self.lowest:
            return False
        shortest = tallest if low is None or self.lowest is None else low
        return self.highest is None or shortest <= self.highest


@dataclass(frozen=True, slots=True)
class Question:
    """Folded words to look for (empty: any), and what a tag must say to count. None means no filter."""

    words: tuple[str, ...] = ()
    zones: Zones | None = None
    light: str | None = None
    heights: Heights | None = None
    category: str | None = None
    supplier: str | None = None

    @property
    def filtered(self) -> bool:
        return any((self.zones, self.light, self.heights, self.category, self.supplier))


def ask(
    words: str,
    *,
    zone: str | None = None,
    light: str | None = None,
    height: str | None = None,
    category: str | None = None,
    supplier: str | None = None,
) -> Question:
    """A question from what a person typed; QueryError when it asks nothing or cannot be understood.

    "zone 5" or "z5" among the words is a filter, unless `zone` is given.

    >>> question = ask("lavender zone 5", height="<60cm")
    >>> question.words, question.zones, question.heights
    (('lavender',), Zones(coldest=10, warmest=11), Heights(lowest=None, highest=60.0))
    """
    in_words = _ZONE_IN_WORDS.search(words)
    if zone is None and in_words:
        zone = in_words[1]
        words = _ZONE_IN_WORDS.sub(" ", words, count=1)
    question = Question(
        words=tuple(fold(words).split()),
        zones=half_zones(zone) if zone else None,
        light=_light(light) if light else None,
        heights=heights(height) if height else None,
        category=_category(category) if category else None,
        supplier=fold(supplier) if supplier else None,
    )
    if not question.words and not question.filtered:
        raise QueryError("There is nothing to look for.", "Give a name, part of a name, or a filter.")
    return question


def half_zones(text: str) -> Zones:
    """A hardiness zone, "5" or "5a", as half zones; QueryError for anything else.

    >>> half_zones("5"), half_zones("10B")
    (Zones(coldest=10, warmest=11), Zones(coldest=21, warmest=21))
    """
    match = _ZONE.fullmatch(text.strip().lower())
    if not match or int(match[1]) > 13:
        raise QueryError(f"{text!r} is not a hardiness zone.", "Zones run from 0 to 13, with a or b: 5, 5a.")
    number = 2 * int(match[1])
    return Zones(number + (match[2] == "b"), number + (match[2] != "a"))


def heights(text: str) -> Heights:
    """A height or range of heights; a bare number is centimetres; QueryError for anything else.

    A single figure stands for itself and 5 % either way: tags in inches and in centimetres round apart.

    >>> heights("<60cm"), heights("> 2 ft 6 in")
    (Heights(lowest=None, highest=60.0), Heights(lowest=76.2, highest=None))
    >>> heights("2-3 ft"), heights("30–60")
    (Heights(lowest=60.96, highest=91.44), Heights(lowest=30.0, highest=60.0))
    """
    rest = text.strip()
    bound = _BOUND.match(rest)
    parts = re.split(r"\s*(?:[-–—]|\bto\b)\s*", rest[bound.end() :] if bound else rest)
    measures = [_measure(part) for part in parts]
    if any(m is None for m in measures) or len(measures) > (1 if bound else 2):
        raise QueryError(f"{text!r} is not a height.", "Write it like <60cm, 30-60cm, 2-3 ft or 18 in.")
    unit = next((m[1] for m in reversed(measures) if m and m[1]), 1.0)
    lengths = [round(m[0] * (1.0 if m[1] else unit), 4) for m in measures if m]
    if bound:
        below = bound[1].lower() in _BELOW
        return Heights(None, lengths[0]) if below else Heights(lengths[0], None)
    if len(lengths) == 1:
        return Heights(lengths[0] * (1 - _NEARLY), lengths[0] * (1 + _NEARLY))
    return Heights(min(lengths), max(lengths))


def _measure(text: str) -> tuple[float, float | None] | None:
    """(length, centimetres to its last unit) of "2 ft 6 in" or "60 cm"; of a bare "2", (2, None)."""
    total, unit, position = 0.0, None, 0
    while match := _MEASURE.match(text, position):
        if position and unit is None:
            return None
        number = float(match[1].replace(",", "."))
        unit = _CM_PER_UNIT[match[2].lower()] if match[2] else None
        total += number * (unit or 1.0)
        position = match.end()
    return (total, unit) if position and position == len(text) else None


def _light(text: str) -> str:
    word = fold(text).replace(" ", "_")
    word = _LIGHT_WORDS.get(word, word)
    if word not in LIGHTS:
        raise QueryError(f"{text!r} is not a light level.", f"Choose from {', '.join(LIGHTS)}.")
    return word


def _category(text: str) -> str:
    return fold(text).replace(" ", "_")
