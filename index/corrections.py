"""A person's word on a field, kept apart from what was read and laid over it when a record is shown."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import msgspec

from index.store import Correction
from ocr_tags.errors import QueryError
from ocr_tags.facts import FACTS
from ocr_tags.record import Fact, Reading, Side, Status, TagRecord
from ocr_tags.record_json import value_type


def corrected(field_name: str, value: Any) -> Correction:
    """A correction from a value of the field's type, or from its JSON shape; None says "not on this tag".

    A field that holds a list of readings takes one value or a list of them, the main one first.
    QueryError, naming the field, when there is no such field or the value is not of its kind.
    """
    field = field_named(field_name)
    return Correction(field.name, "corrected", json.dumps(_plain(field, value), ensure_ascii=False))


def confirmed(record: TagRecord, field_name: str) -> Correction:
    """The record's present value of a field, vouched for; QueryError when the record has none."""
    field = field_named(field_name)
    readings = record.readings.get(field.name, ())
    if not readings:
        raise QueryError(f"Tag {record.tag_id} says nothing of {field.label.lower()}.", "Correct it instead.")
    values = [reading.value for reading in readings]
    value = values if field.shape == "each" else values[0]
    return Correction(field.name, "confirmed", json.dumps(_plain(field, value), ensure_ascii=False))


def lay_over(record: TagRecord, corrections: Iterable[Correction]) -> TagRecord:
    """The record as a person left it: their values first, what was read kept among the alternatives.

    A corrected reading keeps the printed text and the box of what it replaces, so that it can still be
    held against the photo; its confidence is 1.
    """
    readings = dict(record.readings)
    for name, status, shown in corrections:
        field = _BY_NAME.get(name)
        if field is None:  # written by a later version that knows more fields
            continue
        value = json.loads(shown)
        if value is None:
            readings.pop(name, None)
        else:
            values = value if field.shape == "each" else [value]
            readings[name] = _readings(field, values, "confirmed" if status == "confirmed" else "corrected",
                                       record)  # fmt: skip
    return replace(record, readings=readings)


def field_named(name: str) -> Fact[Any]:
    """The field of this name; QueryError, listing the names, when there is none."""
    if name not in _BY_NAME:
        raise QueryError(f"There is no field {name!r}.", f"Choose from {', '.join(_BY_NAME)}.")
    return _BY_NAME[name]


_BY_NAME: dict[str, Fact[Any]] = {field.name: field for field in FACTS}


def _plain(field: Fact[Any], value: Any) -> Any:
    """The value as JSON, after a check that it can be read back as the field's type."""
    if value is None:
        return None
    try:
        plain = msgspec.to_builtins(value)
        if field.shape == "each" and not isinstance(value, list | tuple):
            plain = [plain]
        kind = tuple[field.type, ...] if field.shape == "each" else value_type(field)  # type: ignore[name-defined]
        checked = msgspec.to_builtins(msgspec.convert(plain, type=kind, strict=True))
    except (msgspec.ValidationError, TypeError) as error:
        raise QueryError(f"{value!r} is not a value for {field.label.lower()}: {error}.") from error
    return checked or None  # an empty list says "none on this tag" too


def _readings(
    field: Fact[Any], values: list[Any], status: Status, record: TagRecord
) -> tuple[Reading[Any], ...]:
    read = record.readings.get(field.name, ())
    kind = value_type(field)
    laid = []
    for value in (msgspec.convert(value, type=kind, strict=True) for value in values):
        same = next((old for old in read if old.value == value), None)
        base = same or (read[0] if read else _never_read(record))
        others = (
            base.alternatives if same or not read else (replace(base, alternatives=()), *base.alternatives)
        )
        laid.append(replace(base, value=value, confidence=1.0, status=status, alternatives=others))
    return tuple(laid)


def _never_read(record: TagRecord) -> Reading[Any]:
    side: Side = record.photos[0].side if record.photos else "front"
    return Reading(value=None, printed="", side=side, box=None, confidence=1.0)
