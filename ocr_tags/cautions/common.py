"""What the caution rules share: how a caution is made, and what kind of plant a record is about."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from ocr_tags.facts import BOTANICAL_NAME, CATEGORIES
from ocr_tags.names.lexicon import Plant, plant_named
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, Reading, Swatch, TagRecord, Weight
from ocr_tags.usda import USDA_ZONES

PRACTICE = "common practice, no source"
DOUBTFUL = 0.8
"""A caution on a value read with less confidence says so: the tag may not say what it warns of."""


def caution(
    code: str,
    field: Fact[Any],
    message: str,
    advice: str,
    *,
    basis: str = PRACTICE,
    weight: Weight = "note",
    reading: Reading[Any] | None = None,
    printed: str | None = None,
    swatches: Iterable[Swatch] = (),
) -> Caution:
    """A caution pointing at a reading; `printed` narrows it to some of the printed words."""
    if reading and reading.confidence < DOUBTFUL and reading.status not in {"confirmed", "corrected"}:
        advice += " Read with doubt: check the tag first."
    return Caution(
        code=code,
        field=field.name,
        message=message,
        basis=basis,
        advice=advice,
        weight=weight,
        printed=printed if printed is not None else reading.printed if reading else "",
        side=reading.side if reading else None,
        box=reading.box if reading else None,
        photo=reading.photo if reading else None,
        swatches=tuple(swatches),
    )


def quoted(printed: str) -> str:
    """Printed words on one line, in quotation marks."""
    return f"“{' '.join(printed.split())}”"


def printed_kinds(record: TagRecord) -> frozenset[str]:
    """The kinds of plant the tag names."""
    found = record.best(CATEGORIES)
    return frozenset(found.value) if found else frozenset()


def known_plant(record: TagRecord) -> Plant | None:
    """The plant of the trade table that the tag's names point to."""
    return plant_named(record.plant.name) if record.plant and record.plant.name else None


def kinds(record: TagRecord) -> frozenset[str]:
    """Kinds printed on the tag, and the kind the trade table has for the plant."""
    plant = known_plant(record)
    return printed_kinds(record) | ({plant.kind} if plant else frozenset())


def botanical_names(record: TagRecord) -> list[str]:
    """Every botanical name this plant goes by: as printed, as accepted, older ones; no cultivars."""
    names = []
    printed = record.best(BOTANICAL_NAME)
    if printed and printed.value.genus and printed.value.species:
        names.append(f"{printed.value.genus} {printed.value.species}")
    if record.plant:
        names += [record.plant.name or "", *record.plant.synonyms]
    return [name for name in dict.fromkeys(names) if name]


def cold_of(half: int, place: Place) -> str:
    """The coldest of a usual winter in a half zone, in the user's degrees.

    >>> cold_of(9, Place(units="in")), cold_of(9, Place(units="cm"))
    ('−15 °F', '−26 °C')
    """
    _, fahrenheit, _, celsius, _ = USDA_ZONES[half]
    warm, cold = (text.replace("-", "−") for text in (f"{fahrenheit} °F", f"{round(celsius)} °C"))
    return {"in": warm, "cm": cold}.get(place.units or "", f"{warm} ({cold})")
