"""What the search index keeps of a record: its names, each with where it comes from, and a few facts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, NamedTuple

from ocr_tags.record import BotanicalName, Hardiness, Length, PlantMatch, PlantPassport, Reading, TagRecord

Kind = Literal[
    "common name",
    "botanical name",
    "cultivar",
    "trade designation",
    "series",
    "supplier",
    "plant",
    "also called",
    "old name",
    "may be",
    "other reading",
]


class Name(NamedTuple):
    """A name a tag can be found by, and what sort of name it is there."""

    kind: Kind
    text: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One record as the search index sees it.

    `height` is "min-max" in whole millimetres and `zones` is "min-max" as printed; an end that was not
    printed is empty. Both are empty strings when the tag does not say.
    """

    tag_id: str
    names: tuple[Name, ...]
    plant: str = ""
    height: str = ""
    zones: str = ""
    light: tuple[str, ...] = ()
    categories: tuple[str, ...] = ()


def entry_of(record: TagRecord) -> Entry:
    """Every name that was read on the tag, every name of the plant it was matched to, and its facts."""
    names = dict.fromkeys((*_read_names(record), *_plant_names(record.plant)))
    first: dict[str, Name] = {}
    for name in names:
        if name.text.strip():
            first.setdefault(name.text.casefold(), name)
    return Entry(
        tag_id=record.tag_id,
        names=tuple(first.values()),
        plant=(record.plant and record.plant.name) or "",
        height=_height(_value(record, "height")),
        zones=_zones(_value(record, "hardiness")),
        light=tuple(_value(record, "light") or ()),
        categories=tuple(_value(record, "categories") or ()),
    )


def _read_names(record: TagRecord) -> Iterator[Name]:
    for reading in record.readings.get("botanical_name", ()):
        yield from _botanical(reading.value)
    for field, kind in _TEXT_FIELDS:
        for reading in record.readings.get(field, ()):
            yield Name(kind, str(reading.value))
    passport = _value(record, "plant_passport")
    if isinstance(passport, PlantPassport) and passport.botanical_name:
        yield Name("botanical name", passport.botanical_name)
    for field in ("common_names", "botanical_name", "series"):
        for reading in record.readings.get(field, ()):
            yield from _alternatives(reading)


_TEXT_FIELDS: tuple[tuple[str, Kind], ...] = (
    ("common_names", "common name"),
    ("series", "series"),
    ("supplier", "supplier"),
)


def _botanical(name: BotanicalName) -> Iterator[Name]:
    yield Name("botanical name", name.name)
    if name.cultivar:
        yield Name("cultivar", name.cultivar)
    if name.trade_designation:
        yield Name("trade designation", name.trade_designation)


def _alternatives(reading: Reading[Any]) -> Iterator[Name]:
    """What another side or another look at the same place said: a damaged reading may hide the right one.

    Not once a person has spoken: what they put aside is wrong.
    """
    if reading.status in ("confirmed", "corrected"):
        return
    for other in reading.alternatives:
        value = other.value
        yield Name("other reading", value.name if isinstance(value, BotanicalName) else str(value))


def _plant_names(plant: PlantMatch | None) -> Iterator[Name]:
    if plant is None:
        return
    if plant.name:
        yield Name("plant", plant.name)
    yield from (Name("also called", name) for name in plant.common_names)
    yield from (Name("old name", name) for name in plant.synonyms)
    yield from (Name("may be", name) for name in plant.could_be if name != plant.name)


def _value(record: TagRecord, field: str) -> Any:
    found = record.readings.get(field, ())
    return found[0].value if found else None


def _height(value: Length | None) -> str:
    if value is None:
        return ""
    return "-".join("" if end is None else str(round(end * 10)) for end in (value.min_cm, value.max_cm))


def _zones(value: Hardiness | None) -> str:
    return "" if value is None else f"{value.min_zone or ''}-{value.max_zone or ''}".lower()
