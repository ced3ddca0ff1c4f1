"""Water by the calendar, bloom by the date: what holds only where and when the tag was written."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.cautions.common import caution, kinds, quoted
from ocr_tags.facts import BLOOM, CONTAINER, WATER
from ocr_tags.place import Place, Point
from ocr_tags.record import Caution, Reading, TagRecord
from ocr_tags.values import Bloom

# ---------------------------------------------------------------- water

_NUMBER = r"(?:\d{1,2}|one|two|three|four|five|six|seven|ten|a|an?other|other)"
_UNIT = r"(?:day|week|month)"
_PER = rf"(?:a|per|each|every) {_UNIT}"
_CALENDAR = re.compile(
    r"\b(?:daily|weekly|bi-?weekly|fortnightly|every ?day|every other (?:day|week)"
    rf"|every (?:{_NUMBER} ?(?:(?:-|–|to) ?\d{{1,2}})? ?)?(?:days?|weeks?)"
    rf"|(?:once|twice|{_NUMBER} times|\d ?[x×]) {_PER}"
    rf"|(?:cups?|ounces?|oz|inch(?:es)?|gallons?|lit(?:er|re)s?|ice cubes?) (?:of water )?{_PER}"
    r"|(?:mon|tues|wednes|thurs|fri|satur|sun)days?"
    r"|chaque (?:jour|semaine)|(?:une|deux) fois par (?:jour|semaine)|cada (?:d[ií]a|semana)"
    r"|(?:una|dos) (?:vez|veces) (?:al|por|a la) (?:d[ií]a|semana)|diari[oa]|semanal\w*"
    r"|hebdomadaire|quotidien\w*|wöchentlich|täglich|wekelijks|dagelijks)\b",
    re.I,
)
_RESERVOIR = re.compile(
    r"\bself[- ]?watering|\bwater reservoir|\breservoir pot|\breserve d'eau|\bautorriego|\bwasserspeicher",
    re.I,
)


def water_by_calendar(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the tag waters by days or weeks; a pot with a reservoir may be filled by the calendar."""
    water = record.best(WATER)
    found = _CALENDAR.search(water.value) if water else None
    if water is None or found is None or _RESERVOIR.search(_all_text(record)):
        return
    yield caution(
        "water-by-calendar",
        WATER,
        f"{quoted(water.value)} knows neither your soil nor your weather.",
        "Put a finger into the soil: water when it is dry an inch (2–3 cm) down, then deeply; new plants "
        "need it more often.",
        basis="D. Parmenter, La Plata County Extension: check moisture before each watering",
        reading=water,
        printed=found[0],
    )


def _all_text(record: TagRecord) -> str:
    container = record.best(CONTAINER)
    lines = [line for lines in record.texts.values() for line in lines]
    return " ".join([*lines, container.printed if container else "", *(r.printed for r in record.all(WATER))])


# ---------------------------------------------------------------- bloom

_SEASONS = ("winter", "spring", "summer", "fall")
_PARTS = ("early", "mid", "late")
DAYS_PER_DEGREE_NORTH, DAYS_PER_DEGREE_EAST, DAYS_PER_METRE_UP = 4.0, 4 / 5, 4 / 121.92
"""Hopkins: 4 days later for each degree north, 5 degrees east, and 400 feet (121.92 m) up."""
_HOPKINS = (
    "Hopkins' bioclimatic law, for spring and early summer in temperate North America; "
    "the spread between years: University of Arkansas and University of Illinois Extension, 2012"
)
_SHIFTED = range(3, 7)
"""Months, of the north, that count as spring and early summer."""
_LEAST_DAYS, _MOST_DAYS = 4, 40
"""Less is no news; more is further than a rule of thumb carries."""


def bloom_by_date(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when bloom is given in months: season words for them, and where known how the date shifts."""
    bloom = record.best(BLOOM)
    if bloom is None or not bloom.value.months:
        return
    seasons = season_words(bloom.value.months)
    if place.country not in (None, "US", "CA"):
        seasons = seasons.replace("fall", "autumn")
    message = f"{quoted(bloom.printed)} is a date of one place and year. Think {seasons}"
    if place.south:
        months = [(month + 5) % 12 + 1 for month in (bloom.value.months[0], bloom.value.months[-1])]
        names = "–".join(dict.fromkeys(_MONTHS[month - 1] for month in months))
        message += f"; if the tag was written for the north, that is {names} with you"
    shift = _shift(record, bloom, place)
    yield caution(
        "bloom-by-date",
        BLOOM,
        f"{message}.",
        f"Go by what blooms around you; a warm spring can be weeks early.{shift}",
        basis=_HOPKINS if shift else "University of Arkansas Extension, Phenology, 2012",
        reading=bloom,
    )


_MONTHS: tuple[str, ...] = ("January", "February", "March", "April", "May", "June", "July")
_MONTHS = (*_MONTHS, "August", "September", "October", "November", "December")


def season_words(months: Sequence[int]) -> str:
    """Months of the north in season words (meteorological seasons).

    >>> season_words([7, 8, 9]), season_words([4, 5]), season_words([12])
    ('mid summer to early fall', 'mid to late spring', 'early winter')
    """
    (part, season), (last_part, last_season) = (
        (_PARTS[month % 3], _SEASONS[month % 12 // 3]) for month in (months[0], months[-1])
    )
    if season != last_season:
        return f"{part} {season} to {last_part} {last_season}"
    return f"{part} {season}" if part == last_part else f"{part} to {last_part} {season}"


def days_later(tags: Point, here: Point) -> float:
    """By how many days spring comes later here than where the tags are from (Hopkins)."""
    days = (here.latitude - tags.latitude) * DAYS_PER_DEGREE_NORTH
    days += (here.longitude - tags.longitude) * DAYS_PER_DEGREE_EAST
    if here.elevation_m is not None and tags.elevation_m is not None:
        days += (here.elevation_m - tags.elevation_m) * DAYS_PER_METRE_UP
    return days


def _shift(record: TagRecord, bloom: Reading[Bloom], place: Place) -> str:
    """The estimate in words, or "" where the rule does not hold: wrong land, wrong season, too small."""
    if place.at is None or place.tags_at is None or bloom.value.months[0] not in _SHIFTED:
        return ""
    if kinds(record) & {"annual", "vegetable", "houseplant"}:  # they bloom by when they were sown
        return ""
    if not all(_temperate_north_america(point) for point in (place.at, place.tags_at)):
        return ""
    days = round(days_later(place.tags_at, place.at))
    if not _LEAST_DAYS <= abs(days) <= _MOST_DAYS:
        return ""
    way = "later" if days > 0 else "earlier"
    return f" By a rule of thumb it starts about {abs(days)} days {way} with you, give or take two weeks."


def _temperate_north_america(point: Point) -> bool:
    return 25 <= point.latitude <= 55 and -130 <= point.longitude <= -52
