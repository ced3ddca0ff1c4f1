"""Records as a person reads them in a terminal: values in words, and every doubt marked and named."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from rich.console import Console
from rich.markup import escape
from rich.table import Table

from ocr_tags.fields import FIELDS
from ocr_tags.record import (
    Bloom,
    BotanicalName,
    Days,
    Hardiness,
    HeatZones,
    Length,
    Price,
    Reading,
    TagRecord,
    Temperature,
)

MARK = "(?)"
LEGEND = f"{MARK} doubtful: see the tag. 'ocr-tags show TAG' says why and where on the photo it stands."
WIDE = 160
"""Columns taken when the output is no terminal, so that nothing is cut off in a file."""
ROOMY = 120
"""Columns a terminal needs for a table with a column a field."""
IN_LISTS = ("hardiness", "light", "height", "spread", "bloom")
NAMES = ("common_names", "botanical_name")


def console() -> Console:
    if sys.stdout.isatty() or os.environ.get("COLUMNS"):
        return Console(highlight=False)
    return Console(highlight=False, width=WIDE)


# ---------------------------------------------------------------- values in words


def in_words(value: Any) -> str:
    """A field's value as a person would write it; lengths in both systems.

    >>> in_words(Length(45.72, 60.96)), in_words(Length(None, 91.44)), in_words(("full_sun", "part_shade"))
    ('45.7–61 cm (18–24 in)', 'up to 91.4 cm (36 in)', 'full sun, part shade')
    >>> in_words(Hardiness("4", "9")), in_words(Hardiness("5a", None)), in_words(Temperature(-34.4))
    ('4–9', '5a and warmer', '-34.4 °C (-30 °F)')
    """
    match value:
        case Length(low, high):
            inches = f"{_range(_inches(low), _inches(high))} in"
            return f"{_range(low, high)} cm ({inches.removeprefix('up to ').removeprefix('from ')})"
        case Hardiness(low, high):
            return _span(low, high, "and warmer", "and colder")
        case HeatZones(low, high):
            return _span(str(low), str(high), "", "")
        case Temperature(celsius):
            return f"{celsius:g} °C ({celsius * 9 / 5 + 32:.0f} °F)"
        case Days(low, high):
            return f"{_range(low, high)} days"
        case Price(amount, currency):
            return f"{amount} {currency}"
        case BotanicalName():
            return value.name
        case Bloom(text):
            return text
        case tuple() | list():
            return ", ".join(in_words(each) for each in value)
        case str():
            return _spoken(value)
    if is_dataclass(value):
        given = ((each.name, getattr(value, each.name)) for each in fields(value))
        return "; ".join(f"{_spoken(name)}: {in_words(part)}" for name, part in given if part)
    return str(value)


def _spoken(code: str) -> str:
    """Our code words ("full_sun") without the underscore; printed text stays as it is."""
    return code.replace("_", " ") if code.isidentifier() and code.islower() else code


def _inches(cm: float | None) -> float | None:
    return None if cm is None else cm / 2.54


def _range(low: float | None, high: float | None) -> str:
    shown = ["" if end is None else f"{round(end, 1):g}" for end in (low, high)]
    if not shown[0]:
        return f"up to {shown[1]}"
    if not shown[1]:
        return f"from {shown[0]}"
    return shown[0] if shown[0] == shown[1] else "–".join(shown)


def _span(low: str | None, high: str | None, open_top: str, open_bottom: str) -> str:
    if low and high:
        return low if low == high else f"{low}–{high}"
    return f"{low} {open_top}" if low else f"{high} {open_bottom}"


# ---------------------------------------------------------------- doubt


def doubt(reading: Reading[Any], below: float) -> str:
    """Why a value should be checked against the tag, or "" when it need not be."""
    reasons = []
    if reading.status == "disagreed":
        said = dict.fromkeys(in_words(other.value) for other in reading.alternatives)
        others = ", ".join(each for each in said if each != in_words(reading.value))
        reasons.append(f"readings disagree, also read: {others}" if others else "readings disagree")
    if reading.status == "inferred":
        reasons.append("not printed, inferred")
    if reading.confidence < below and reading.status not in {"confirmed", "corrected"}:
        reasons.append(f"{reading.confidence:.0%} sure")
    return "; ".join(reasons)


def doubtful_fields(record: TagRecord, below: float) -> list[str]:
    """Labels of the fields with a doubtful value, in the order of the tag."""
    return [
        field.label
        for field in FIELDS
        if any(doubt(reading, below) for reading in record.readings.get(field.name, ()))
    ]


def _marked(record: TagRecord, name: str, below: float) -> str:
    found = record.readings.get(name, ())
    if not found:
        return ""
    return escape(in_words(found[0].value)) + (f" {MARK}" if doubt(found[0], below) else "")


def name_of(record: TagRecord) -> str:
    """What a person would call the tag."""
    found = [in_words(record.readings[name][0].value) for name in NAMES if record.readings.get(name)]
    return f"{found[0]} ({found[1]})" if len(found) == 2 else "".join(found) or "no name read"


# ---------------------------------------------------------------- tables


def table_of(records: Iterable[TagRecord], below: float, width: int, why: Iterable[str] = ()) -> Table:
    """One row a tag; with `why`, a last column saying why each was found.

    `width` is the terminal's, in characters: a narrow one gets the values of a tag under each other.
    """
    reasons = list(why)
    facts = [(field.name, field.label) for field in FIELDS if field.name in IN_LISTS]
    table = Table(header_style="bold", show_lines=width < ROOMY)
    headings = ["Tag", "Plant", "Says"] if width < ROOMY else ["Tag", "Plant", *(label for _, label in facts)]
    for heading in (*headings, *(["Found because"] if reasons else [])):
        table.add_column(heading, overflow="fold")
    for number, record in enumerate(records):
        plant = "\n".join(filter(None, (_marked(record, name, below) for name in NAMES))) or "no name read"
        cells = [(label, _marked(record, name, below)) for name, label in facts]
        if width < ROOMY:
            said = ["\n".join(f"{label}: {cell}" for label, cell in cells if cell)]
        else:
            said = [cell for _, cell in cells]
        table.add_row(record.tag_id, plant, *said, *([escape(reasons[number])] if reasons else []))
    return table


def details(record: TagRecord, below: float, boxes: bool = False) -> Table:
    """One tag, every value with its printed text, side, how sure, and with `boxes` where on the photo."""
    photos = ", ".join(f"{photo.side} {photo.file}" for photo in record.photos)
    table = Table(
        title=escape(f"{record.tag_id}  {name_of(record)}"), caption=escape(photos), title_justify="left"
    )
    for heading in (
        "Field",
        "Value",
        "Printed",
        "Side",
        "Sure",
        "Doubt",
        *(["Box x, y, w, h"] if boxes else []),
    ):
        table.add_column(heading, overflow="fold")
    for label, reading in _readings(record):
        why = doubt(reading, below)
        box = reading.box
        place = [f"{box.x}, {box.y}, {box.w}, {box.h}" if box else ""] if boxes else []
        sure = reading.status if reading.status in {"confirmed", "corrected"} else f"{reading.confidence:.0%}"
        value, printed = escape(in_words(reading.value)), escape(" / ".join(reading.printed.split("\n")))
        table.add_row(
            label, value, printed, reading.side, sure, escape(f"{MARK} {why}" if why else ""), *place
        )
    return table


def _readings(record: TagRecord) -> Iterator[tuple[str, Reading[Any]]]:
    for field in FIELDS:
        for number, reading in enumerate(record.readings.get(field.name, ())):
            yield ("" if number else field.label), reading


def remarks(record: TagRecord) -> list[str]:
    """Everything beside the values, a sentence a line: the plant meant, cautions, notes, readers."""
    plant = record.plant
    lines = []
    if plant and plant.name:
        lines.append(f"By the word lists this is {plant.name}.")
    elif plant and plant.could_be:
        lines.append(f"The name is shared: it could be {', '.join(plant.could_be)}.")
    lines += [f"Caution: {caution.message} ({caution.basis})" for caution in record.cautions]
    lines += list(record.notes)
    return lines
