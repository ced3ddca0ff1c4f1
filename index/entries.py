"""What the search index keeps of a record: the names it says, the plant they point to, and its facts.

The other names of a plant are not copied into the tag: a tag is linked to its plant, and the index keeps
the plant's names once. The word lists of the day decide, not those of the day the tag was read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Any, Literal, NamedTuple

from index.facts import facts_of
from index.folding import fold
from index.linking import likely_plant
from ocr_tags.names.matching import match_plant
from ocr_tags.record import PlantMatch, Reading, TagRecord
from ocr_tags.values import BotanicalName, PlantPassport

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


BOTANICAL = frozenset(("botanical name", "plant", "old name", "may be"))


class Name(NamedTuple):
    """A name a tag can be found by, and what sort of name it is there."""

    kind: Kind
    text: str


class Plant(NamedTuple):
    """A plant of the word lists with all its names, or the few plants that a shared name may mean.

    `key` tells plants apart: the accepted name, or the names of all it may be joined by " | ".
    """

    key: str
    names: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One record as the search index sees it: names as read, first the main ones.

    Tags with the same `group` are of one plant; it is the plant's key, or where the lists know no plant the
    folded name that was read.
    """

    tag_id: str
    names: tuple[Name, ...]
    plant: Plant | None = None
    sure: bool = True
    """False when the names on the tag are only like those of the plant."""
    group: str = ""
    facts: tuple[str, ...] = ()


def entry_of(record: TagRecord) -> Entry:
    """Every name that was read on the tag, the plant they point to, and what can be searched by field."""
    first: dict[str, Name] = {}
    for name in _read_names(record):
        if name.text.strip():
            first.setdefault(name.text.casefold(), name)
    names = tuple(first.values())
    match, sure = _match(record), True
    if match is None and (likely := _likely(record)):
        match, sure = PlantMatch(likely), False
    plant = _linked(match)
    group = plant.key if plant else _read_group(record)
    return Entry(record.tag_id, names, plant, sure, group, facts_of(record))


def joined(name: Name) -> dict[str, tuple[str, str]]:
    """Neighbouring words run together, to the two; "langustifolia" too, for L. angustifolia."""
    words = fold(name.text).split()
    found = {left + right: (left, right) for left, right in pairwise(words)}
    if name.kind in BOTANICAL and len(words) > 1:
        found[words[0][0] + words[1]] = words[0], words[1]
    return found


def _match(record: TagRecord) -> PlantMatch | None:
    """The plant by the names as they now stand; what was matched at reading counts until a person speaks."""
    common = record.readings.get("common_names", ())
    botanical = record.readings.get("botanical_name", ())
    found = match_plant(tuple(r.value for r in common), botanical[0].value if botanical else None)
    if found or any(reading.status == "corrected" for reading in (*common, *botanical)):
        return found
    return record.plant


def _likely(record: TagRecord) -> str | None:
    """A plant whose names are like those that were read; none once a person has said what they are."""
    common = record.readings.get("common_names", ())
    botanical = record.readings.get("botanical_name", ())
    if any(reading.status in ("corrected", "confirmed") for reading in (*common, *botanical)):
        return None
    bare = " ".join(filter(None, (botanical[0].value.genus, botanical[0].value.species))) if botanical else ""
    return likely_plant(tuple(reading.value for reading in common), bare)


def _read_group(record: TagRecord) -> str:
    """The bare botanical name, else the first common name, folded and marked as merely read."""
    for reading in record.readings.get("botanical_name", ()):
        name: BotanicalName = reading.value
        return "read: " + fold(" ".join(filter(None, (name.genus, name.species))) or name.name)
    for reading in record.readings.get("common_names", ()):
        return "read: " + fold(str(reading.value))
    return ""


def _read_names(record: TagRecord) -> Iterator[Name]:
    for reading in record.readings.get("botanical_name", ()):
        yield from _botanical(reading.value)
    for field, kind in _TEXT_FIELDS:
        for reading in record.readings.get(field, ()):
            yield Name(kind, str(reading.value))
    passport = record.readings.get("plant_passport", ())
    if passport and isinstance(passport[0].value, PlantPassport) and passport[0].value.botanical_name:
        yield Name("botanical name", passport[0].value.botanical_name)
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


@lru_cache(maxsize=20_000)
def _linked(match: PlantMatch | None) -> Plant | None:
    """The plant with every name the word lists link to it."""
    if match is None or not (match.name or match.could_be):
        return None
    if not match.name:
        names = (Name("may be", each) for each in match.could_be)
        return Plant(" | ".join(match.could_be), tuple(names))
    words = match.name.replace("× ", "").split()
    hybrid = "×" in match.name
    known = match_plant(
        (), BotanicalName(match.name, words[0], words[1] if len(words) > 1 else None, None, hybrid)
    )
    same = [each for each in (match, known) if each and each.name == match.name]
    found: dict[str, Name] = {match.name.casefold(): Name("plant", match.name)}
    for each in same:
        called = [Name("also called", text) for text in each.common_names]
        for name in (*called, *(Name("old name", text) for text in each.synonyms)):
            found.setdefault(name.text.casefold(), name)
    return Plant(match.name, tuple(found.values()))
