"""Names that do not settle which plant it is, and sides that cannot both be right."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from typing import Any

from ocr_tags.cautions.common import PRACTICE, caution, quoted
from ocr_tags.claims.agreement import compare
from ocr_tags.facts import BOTANICAL_NAME, COMMON_NAMES, FACTS
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, Reading, TagRecord

_ASK = "Ask for the botanical name before you order more of it or look up its care."
_NAMES_BASIS = (
    "Oklahoma and Utah poison centres (one common name may cover several plants, some safe, some not); "
    "which plants: word lists of this program"
)
_MANY = 5
_FEW_WORDS = 3
_MATTERS = frozenset({"height", "spread", "spacing", "hardiness", "light", "warnings", "botanical_name"})


def shared_name(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when there is only a common name, and several plants are sold under it."""
    name = record.best(COMMON_NAMES)
    could_be = record.plant.could_be if record.plant else ()
    if name and len(could_be) > 1 and not record.best(BOTANICAL_NAME):
        listed = ", ".join(could_be[:_MANY]) + (" or another" if len(could_be) > _MANY else "")
        yield caution(
            "name-shared",
            COMMON_NAMES,
            f"{quoted(name.value)} is a name of several plants; this may be {listed}.",
            _ASK,
            basis=_NAMES_BASIS,
            weight="loss",
            reading=name,
        )


def only_common_name(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when no botanical name was read, and the common name at least leaves one plant."""
    name = record.best(COMMON_NAMES)
    could_be = record.plant.could_be if record.plant else ()
    if name and len(could_be) <= 1 and not record.best(BOTANICAL_NAME):
        usual = f"; usually it is {record.plant.name}" if record.plant and record.plant.name else ""
        yield caution(
            "name-common-only",
            COMMON_NAMES,
            f"Only a common name was read, {quoted(name.value)}{usual}.",
            _ASK,
            basis=PRACTICE,
            reading=name,
        )


def sides_disagree(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak for each field of which front and back print different values."""
    for field in FACTS:
        for reading in record.all(field):
            other = _other_side(reading)
            if other is not None:
                yield _disagreement(field, reading, other)


def _other_side(reading: Reading[Any]) -> Reading[Any] | None:
    if reading.status != "disagreed":
        return None
    others = (other for other in reading.alternatives if other.side != reading.side)
    return next((other for other in others if compare(reading.value, other.value) == "different"), None)


def _disagreement(field: Fact[Any], one: Reading[Any], other: Reading[Any]) -> Caution:
    front, back = (one, other) if one.side == "front" else (other, one)
    return caution(
        "sides-disagree",
        field,
        f"Front and back do not agree on {field.label.lower()}: {quoted(front.printed)} on the front, "
        f"{quoted(back.printed)} on the back.",
        "Look at the tag itself. If it does print both, ask the grower which one holds.",
        weight="loss" if field.name in _MATTERS else "note",
        reading=one,
    )


def front_unread(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the front was photographed but hardly a word of it, and no value, could be read."""
    sides = {photo.side for photo in record.photos}
    words = sum(len(line.split()) for line in record.texts.get("front", ()))
    gave = any(
        entry.side == "front" or entry.status == "agreed" for entry in chain(*record.readings.values())
    )
    if sides == {"front", "back"} and "back" in record.texts and words < _FEW_WORDS and not gave:
        yield caution(
            "front-unread",
            COMMON_NAMES,
            "The front could not be read, so everything here is from the back.",
            "Hold the name against the front of the tag, or take that photo again.",
        )
