"""How much sun, in hours, and what the user's summers make of it. At most one caution a tag.

Further north a plant can often take one class more sun, in hot places it wants one class less (common
practice, no source). Never two classes: shade does not become part sun, nor part shade full sun.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

from ocr_tags.cautions.common import PRACTICE, caution, printed_kinds
from ocr_tags.facts import HEIGHT, LIGHT, SPREAD, SUNNY_TO_SHADY
from ocr_tags.place import Place
from ocr_tags.record import Caution, Reading, TagRecord

HOURS = {
    "full_sun": "6 hours or more of direct summer sun",
    "part_sun": "3 to 6 hours, hot afternoon sun included",
    "part_shade": "3 to 6 hours, but out of the hot afternoon sun",
    "full_shade": "3 hours or less",
}
_HOURS_BASIS = (
    "6 hours for full sun, and morning sun being milder: K-State Research and Extension, Johnson County; "
    f"the other classes: {PRACTICE} (sources differ by an hour or two)"
)
_SYMBOLS = re.compile(r"[☀☼🌞🌣⛅🌤🌥☁○◐◑◒◓●◯]")
NORTH, HOT = 45.0, 33.0
"""Latitudes that count as north, and as hot, where the place says nothing of its summers (from memory)."""

Step = Literal["sunnier", "shadier"]


def step_here(place: Place) -> Step | None:
    """Which way the user's summers move a plant by one class; None for average or unknown ones."""
    if place.heat is None and place.at is not None:
        latitude = abs(place.at.latitude)
        return "sunnier" if latitude >= NORTH else "shadier" if latitude <= HOT else None
    return {"cool": "sunnier", "hot": "shadier"}.get(place.heat or "")  # type: ignore[return-value]


def light_here(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of a range of light, of a class that moves here, or of what part sun and part shade are."""
    reading = record.best(LIGHT)
    if reading is None:
        return
    step = step_here(place)
    if len(reading.value) > 1:
        yield _range(reading, step)
    elif reading.value and step and (moved := moved_class(reading.value[0], step)):
        yield _moved(reading, step, moved)
    elif reading.value and reading.value[0] in ("part_sun", "part_shade"):
        yield caution(
            "light-hours",
            LIGHT,
            f"{_name(reading.value[0]).capitalize()} means {HOURS[reading.value[0]]}.",
            "Morning sun is milder than afternoon sun; count the hours in summer.",
            basis=_HOURS_BASIS,
            reading=reading,
        )


def moved_class(light: str, step: Step) -> str | None:
    """The class one step over, or None at the end of the row.

    >>> moved_class("part_shade", "sunnier"), moved_class("full_sun", "sunnier")
    ('part_sun', None)
    """
    place = SUNNY_TO_SHADY.index(light) + (1 if step == "shadier" else -1)
    return SUNNY_TO_SHADY[place] if 0 <= place < len(SUNNY_TO_SHADY) else None


def _name(light: str) -> str:
    return light.replace("_", " ")


def _range(reading: Reading[tuple[str, ...]], step: Step | None) -> Caution:
    sunny, shady = reading.value[0], reading.value[-1]
    where = {
        "sunnier": f"With your summers take the sunnier end: {_name(sunny)}, {HOURS[sunny]}.",
        "shadier": f"With your summers take the shadier end: {_name(shady)}, {HOURS[shady]}.",
        None: "Where summers are cool lean to the sunnier end, where they are hot to the shadier.",
    }
    return caution(
        "light-range",
        LIGHT,
        f"Anything from {_name(sunny)} to {_name(shady)} will do.",
        where[step],
        basis=_HOURS_BASIS,
        reading=reading,
    )


def _moved(reading: Reading[tuple[str, ...]], step: Step, moved: str) -> Caution:
    light = reading.value[0]
    to = f"{_name(moved)}: {HOURS[moved]}."
    if step == "shadier":
        message = f"Where summers are hot, {_name(light)} plants often do better in {to}"
        advice = "If the leaves bleach or scorch, that is the place to try."
    else:
        message = f"Where summers are cool, {_name(light)} plants can often take {to}"
        limit = {"part_shade": " Not full sun.", "full_shade": " Not part sun."}.get(light, "")
        advice = f"Worth a try, not a fact: watch for scorched leaves.{limit}"
    return caution(
        "light-one-step-less" if step == "shadier" else "light-one-step-more",
        LIGHT,
        message,
        advice,
        basis=PRACTICE,
        reading=reading,
    )


def light_not_in_words(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when a tag with sizes has no word on light: there may be symbols, which are not read."""
    if record.best(LIGHT) or "houseplant" in printed_kinds(record):
        return
    symbols = dict.fromkeys(
        _SYMBOLS.findall(" ".join(line for lines in record.texts.values() for line in lines))
    )
    if symbols:
        shown = " ".join(symbols)
        several = "They may be a range, or the key to all of them." if len(symbols) > 1 else ""
        yield caution(
            "light-symbols",
            LIGHT,
            f"Light is given by symbol only ({shown}); symbols differ between suppliers. {several}".strip(),
            "Look for the key on the tag; ask when there is none.",
            printed=shown,
        )
    elif record.best(HEIGHT) or record.best(SPREAD):
        yield caution(
            "light-not-in-words",
            LIGHT,
            "No word on light was read. If the tag shows sun symbols only, they were not read.",
            "Look at the symbols and their key: a half-filled sun is part sun with one supplier and part "
            "shade with another.",
        )


def light_key() -> str:
    """The four classes and their hours in one line."""
    return "; ".join(f"{_name(light)} {hours}" for light, hours in HOURS.items())
