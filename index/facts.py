"""What a tag says that can be searched by field, and what a search may ask of each field.

A fact is one word of the index, `field=value` ("zone=4-9", "light=full_sun"). Tags know so few different
facts that a search looks at every one and takes the tags of those that pass.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from rapidfuzz import process

from index.folding import fold
from index.measures import Lengths, Zones, half_zones, is_zone, lengths
from ocr_tags.errors import QueryError
from ocr_tags.record import TagRecord
from ocr_tags.values import Bloom, BotanicalName, Hardiness, Length

Passes = Callable[[str], bool]
"""Whether a fact's value is what was asked for."""

LIGHTS = ("full_sun", "part_sun", "part_shade", "full_shade")
SEASONS = ("spring", "summer", "fall", "winter")
MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
    "november", "december",
)  # fmt: skip
_LIGHT_WORDS = {
    "sun": "full_sun",
    "partial_sun": "part_sun",
    "partial_shade": "part_shade",
    "half_shade": "part_shade",
    "semi_shade": "part_shade",
    "shade": "full_shade",
}
_RANGE = re.compile(r"[-–—]|\b(?:to|through|thru|until|till?)\b", re.I)


@dataclass(frozen=True, slots=True)
class Filter:
    """`field` as in a fact; a tag counts when one of its facts passes, or with `negated` when none does."""

    field: str
    passes: Passes
    negated: bool = False


# ---------------------------------------------------------------- what a tag says


def facts_of(record: TagRecord) -> tuple[str, ...]:
    """Every searchable fact of a record, each once."""
    return tuple(
        dict.fromkeys(
            f"{field}={said}"
            for field, (name, say) in _SAID.items()
            for reading in record.readings.get(name, ())
            for said in say(reading.value)
        )
    )


def _length(value: Length) -> Iterator[str]:
    """Whole millimetres "min-max"; an end that was not printed stays empty."""
    yield "-".join("" if end is None else str(round(end * 10)) for end in (value.min_cm, value.max_cm))


def _zones(value: Hardiness) -> Iterator[str]:
    ends = [end.lower() if end and is_zone(end) else "" for end in (value.min_zone, value.max_zone)]
    yield "-".join(ends)


def _bloom(value: Bloom) -> Iterator[str]:
    """Seasons and months as named; "spring to fall" says summer too. A season is never made into months."""
    yield from value.seasons
    yield from (MONTHS[month - 1] for month in value.months)
    ends = [SEASONS.index(name.rpartition("_")[2]) for name in value.seasons if _is_season(name)]
    if len(ends) == 2 and _RANGE.search(value.text):
        yield from (SEASONS[step % 4] for step in range(ends[0] + 1, ends[0] + (ends[1] - ends[0]) % 4))


def _is_season(name: str) -> bool:
    return name.rpartition("_")[2] in SEASONS


def _words(value: Any) -> Iterator[str]:
    yield from (fold(str(each)) for each in (value if isinstance(value, tuple) else (value,)))


def _cultivar(value: BotanicalName) -> Iterator[str]:
    yield from (fold(each) for each in (value.cultivar, value.trade_designation) if each)


def _codes(value: tuple[str, ...]) -> Iterator[str]:
    yield from value


_SAID: dict[str, tuple[str, Callable[[Any], Iterator[str]]]] = {
    "zone": ("hardiness", _zones),
    "height": ("height", _length),
    "spread": ("spread", _length),
    "light": ("light", _codes),
    "bloom": ("bloom", _bloom),
    "category": ("categories", _codes),
    "colour": ("colours", _words),
    "supplier": ("supplier", _words),
    "series": ("series", _words),
    "cultivar": ("botanical_name", _cultivar),
}
"""The field as it is searched by -> the record's field, and how its value is said in facts."""

OTHER_WORDS = {"color": "colour", "kind": "category", "zones": "zone", "hardiness": "zone", "blooms": "bloom"}


# ---------------------------------------------------------------- what may be asked


def asked(field: str, value: str, *, negated: bool = False) -> Filter:
    """A filter from what a person typed; QueryError when there is no such field or it cannot have the value.

    >>> asked("zone", "5").passes("4-9"), asked("bloom", "summer").passes("late_summer")
    (True, True)
    """
    name = OTHER_WORDS.get(field.lower(), field.lower())
    if name not in _ASKED:
        near = process.extractOne(name, list(_ASKED), score_cutoff=60)
        meant = f"Did you mean {near[0]}: ? " if near else ""
        raise QueryError(
            f"There is no field {field!r} to search by.", f"{meant}The fields are {', '.join(_ASKED)}."
        )
    return Filter(name, _ASKED[name](value), negated)


def _zone(text: str) -> Passes:
    lowest, _, highest = text.partition("-")
    first, last = half_zones(lowest), half_zones(highest or lowest)
    return Zones(first.coldest, last.warmest).within


def _height(text: str) -> Passes:
    found: Lengths = lengths(text)
    return found.fits


def _light(text: str) -> Passes:
    word = fold(text).replace(" ", "_")
    word = _LIGHT_WORDS.get(word, word)
    if word not in LIGHTS:
        raise QueryError(f"{text!r} is not a light level.", f"Choose from {', '.join(LIGHTS)}.")
    return word.__eq__


def _bloom_time(text: str) -> Passes:
    """A season, with or without "early", "mid", "late"; a month; or months from-to, over the new year too.

    A tag that says "summer" blooms in early summer too, and one that says "early summer" in summer.
    """
    word = fold(text).replace(" ", "_").replace("autumn", "fall")
    if _is_season(word):
        season = word.rpartition("_")[2]
        if word == season:
            return lambda said: said.rpartition("_")[2] == word
        return {word, season}.__contains__
    ends = [_month(part) for part in re.split(r"\s*(?:[-–—]|\bto\b)\s*", text.strip().lower())]
    if len(ends) > 2 or None in ends:
        raise QueryError(
            f"{text!r} is not a bloom time.", "Give a season or months: summer, early_summer, june, may-july."
        )
    first, last = ends[0] or 0, ends[-1] or 0
    return {MONTHS[(first + step) % 12] for step in range((last - first) % 12 + 1)}.__contains__


def _month(text: str) -> int | None:
    """The month whose name begins so, counted from 0; three letters are enough."""
    found = [number for number, name in enumerate(MONTHS) if len(text) >= 3 and name.startswith(text)]
    return found[0] if found else None


def _category(text: str) -> Passes:
    word = fold(text).replace(" ", "_")
    return {word, word.removesuffix("s")}.__contains__


def _text(text: str) -> Passes:
    """Every word of it, in any order."""
    wanted = set(fold(text).split())
    if not wanted:
        raise QueryError(f"There is nothing to look for in {text!r}.", "Give a word.")
    return lambda said: wanted <= set(said.split())


_ASKED: dict[str, Callable[[str], Passes]] = {
    "zone": _zone,
    "height": _height,
    "spread": _height,
    "light": _light,
    "bloom": _bloom_time,
    "category": _category,
    "colour": _text,
    "supplier": _text,
    "series": _text,
    "cultivar": _text,
}
