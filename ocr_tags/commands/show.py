"""Records as a person reads them in a terminal: values in words, and every doubt marked and named."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields, is_dataclass
from typing import Any

from rich.console import Console
from rich.markup import escape
from rich.table import Table

from ocr_tags.claims.confidence import LEVEL_WORDS, level
from ocr_tags.facts import FACTS
from ocr_tags.measures.lengths import Units, length_in_words
from ocr_tags.place import Place
from ocr_tags.record import Reading, TagRecord
from ocr_tags.values import Bloom, BotanicalName, Days, Hardiness, HeatZones, Length, Price, Temperature

MARK = "(?)"
LEGEND = f"{MARK} doubtful: see the tag. 'ocr-tags show TAG' says why and where on the photo it stands."
WIDE = 160
"""Columns taken when the output is no terminal, so that nothing is cut off in a file."""
ROOMY = 120
"""Columns a terminal needs for a table with a column a field."""
IN_LISTS = ("hardiness", "light", "height", "spread", "bloom")
NAMES = ("common_names", "botanical_name")
NOWHERE = Place()


def console() -> Console:
    if sys.stdout.isatty() or os.environ.get("COLUMNS"):
        return Console(highlight=False)
    return Console(highlight=False, width=WIDE)


# ---------------------------------------------------------------- values in words


def in_words(value: Any, units: Units | None = None) -> str:
    """A field's value as a person would write it; lengths and degrees in both systems, or in one.

    >>> in_words(Length(30.48, 45.72)), in_words(Length(None, 91.44), "cm"), in_words(("full_sun",))
    ('12–18 in (30–45 cm)', 'up to 90 cm', 'full sun')
    >>> in_words(Hardiness("4", "9")), in_words(Hardiness("5a", None)), in_words(Temperature(-34.4), "in")
    ('4–9', '5a and warmer', '-30 °F')
    >>> in_words(BotanicalName("Rosa 'Tenquil'", "Rosa", trade_designation="Harbour Lantern"))
    "Rosa 'Tenquil', sold as Harbour Lantern"
    """
    match value:
        case Length():
            return length_in_words(value, units)
        case Hardiness(low, high):
            return _span(low, high, "and warmer", "and colder")
        case HeatZones(low, high):
            return _span(str(low), str(high), "", "")
        case Temperature(celsius):
            scales = {"in": f"{round(celsius * 9 / 5 + 32)} °F", "cm": f"{round(celsius, 1):g} °C"}
            return scales[units] if units else f"{scales['in']} ({scales['cm']})"
        case Days(low, high):
            return f"{_range(low, high)} days"
        case Price(amount, currency):
            return f"{amount} {currency}"
        case BotanicalName(name, trade_designation=sold_as):
            return f"{name}, sold as {sold_as}" if sold_as else name
        case Bloom(text):
            return text
        case tuple() | list():
            return ", ".join(in_words(each, units) for each in value)
        case str():
            return _spoken(value)
    if is_dataclass(value):
        given = ((each.name, getattr(value, each.name)) for each in fields(value))
        return "; ".join(f"{_spoken(name)}: {in_words(part, units)}" for name, part in given if part)
    return str(value)


def _spoken(code: str) -> str:
    """Our code words ("full_sun") without the underscore; printed text stays as it is."""
    return code.replace("_", " ") if code.isidentifier() and code.islower() else code


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


def doubt(reading: Reading[Any], below: float, units: Units | None = None) -> str:
    """Why a value should be checked against the tag, or "" when it need not be."""
    reasons = []
    if reading.status == "disagreed":
        said = dict.fromkeys(in_words(other.value, units) for other in reading.alternatives)
        others = ", ".join(each for each in said if each != in_words(reading.value, units))
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
        for field in FACTS
        if any(doubt(reading, below) for reading in record.readings.get(field.name, ()))
    ]


def _marked(record: TagRecord, name: str, below: float, units: Units | None = None) -> str:
    found = record.readings.get(name, ())
    if not found:
        return ""
    return escape(in_words(found[0].value, units)) + (f" {MARK}" if doubt(found[0], below) else "")


def name_of(record: TagRecord) -> str:
    """What a person would call the tag."""
    found = [in_words(record.readings[name][0].value) for name in NAMES if record.readings.get(name)]
    return f"{found[0]} ({found[1]})" if len(found) == 2 else "".join(found) or "no name read"


# ---------------------------------------------------------------- tables


def table_of(
    parts: Iterable[tuple[str, Sequence[TagRecord]]],
    below: float,
    width: int,
    why: Iterable[str] = (),
    place: Place = NOWHERE,
) -> Table:
    """One row a tag, each part under its title if it has one, so that columns line up between parts.

    With `why`, a last column says why each tag was found; with a zone, another if it lives there. `width`
    is the terminal's, in characters: a narrow one gets the values of a tag under each other.
    """
    reasons = list(why)
    here = f"Here ({place.zone})" if place.zone else ""
    labels = [*(fact.label for fact in FACTS if fact.name in IN_LISTS), *([here] if here else [])]
    table = Table(header_style="bold", show_lines=width < ROOMY)
    headings = ["Tag", "Plant", *(["Says"] if width < ROOMY else labels)]
    for heading in (*headings, *(["Found because"] if reasons else [])):
        table.add_column(heading, overflow="fold")
    left = iter(reasons)
    for title, records in parts:
        if title:
            table.add_section()
            table.add_row("", f"[bold]{escape(title)}[/bold]")
        for record in records:
            said = _said(record, below, place)
            if width < ROOMY:
                named = zip(labels, said, strict=True)
                said = ["\n".join(f"{label}: {cell}" for label, cell in named if cell)]
            because = [escape(next(left))] if reasons else []
            table.add_row(record.tag_id, _called(record, below), *said, *because)
    return table


def _called(record: TagRecord, below: float) -> str:
    return "\n".join(filter(None, (_marked(record, name, below) for name in NAMES))) or "no name read"


def _said(record: TagRecord, below: float, place: Place) -> list[str]:
    """The values shown in lists, in the order of the tag; with a zone, last how the tag stands to it."""
    said = [_marked(record, fact.name, below, place.units) for fact in FACTS if fact.name in IN_LISTS]
    if place.zone:
        from ocr_tags.cautions import verdict  # most have set no zone, and need not wait for the rules

        said.append(verdict(record, place) or "")
    return said


def details(record: TagRecord, below: float, boxes: bool = False, units: Units | None = None) -> Table:
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
        why = doubt(reading, below, units)
        box = reading.box
        place = [f"{box.x}, {box.y}, {box.w}, {box.h}" if box else ""] if boxes else []
        settled = reading.status in {"confirmed", "corrected"}
        sure = reading.status if settled else f"{LEVEL_WORDS[level(reading)]}, {reading.confidence:.0%}"
        value, printed = (
            escape(in_words(reading.value, units)),
            escape(" / ".join(reading.printed.split("\n"))),
        )
        table.add_row(
            label,
            value,
            printed,
            _shown_on(record, reading),
            sure,
            escape(f"{MARK} {why}" if why else ""),
            *place,
        )
    return table


def _readings(record: TagRecord) -> Iterator[tuple[str, Reading[Any]]]:
    for field in FACTS:
        for number, reading in enumerate(record.readings.get(field.name, ())):
            yield ("" if number else field.label), reading


def _shown_on(record: TagRecord, reading: Reading[Any]) -> str:
    """The side; of a side with several photos also which one, counted from 1 in the order they are named."""
    photos = [place for place, photo in enumerate(record.photos) if photo.side == reading.side]
    several = len(photos) > 1 and reading.photo in photos
    return f"{reading.side} {photos.index(reading.photo) + 1}" if several else reading.side


def remarks(record: TagRecord) -> list[str]:
    """What a person should know beside the values, a sentence a line: the plant meant, how it was read."""
    plant = record.plant
    lines = []
    if plant and plant.name:
        lines.append(f"By the word lists this is {plant.name}.")
    elif plant and plant.could_be:
        lines.append(f"The name is shared: it could be {', '.join(plant.could_be)}.")
    lines += list(record.notes)
    return lines
