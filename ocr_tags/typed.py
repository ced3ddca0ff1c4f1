"""A field's value as a person types it, understood by the same reader that reads tags."""

from __future__ import annotations

import json
from typing import Any

from ocr_tags.errors import QueryError
from ocr_tags.fields import FIELDS
from ocr_tags.record import Fact, TagText
from ocr_tags.values import BotanicalName


def typed_value(field: Fact[Any], text: str) -> Any:
    """The value meant by `text`: words as printed on a tag ("12-18 in"), or its JSON shape.

    Raises QueryError when the text is understood in no way, or in more than one.
    """
    text = text.strip()
    if text.startswith(("{", "[")):
        return _from_json(field, text)
    if field.type is str:
        return [part.strip() for part in text.split(",")] if field.shape == "list" else text
    values = _read(field, text)
    if len(values) != 1:
        how = "not understood" if not values else "understood in more than one way"
        raise QueryError(
            f"{text!r} is {how} as {field.label.lower()}.", "Write it as on a tag, or give its JSON shape."
        )
    return values[0]


def _from_json(field: Fact[Any], text: str) -> Any:
    try:
        return json.loads(text)
    except json.JSONDecodeError as error:
        raise QueryError(f"This is not JSON for {field.label.lower()}: {error}.") from error


def _read(field: Fact[Any], text: str) -> list[Any]:
    """What the field's reader makes of the text: by itself if it is a name, else behind its label first."""
    (read,) = (each.read for each in FIELDS if each.name == field.name)
    labelled = [f"{field.label}: {text}", f"{field.label} {text}"]
    for attempt in [text, *labelled] if field.type is BotanicalName else [*labelled, text]:
        values = list({repr(found.value): found.value for found in read(TagText(attempt))}.values())
        if values:
            return values
    return []
