"""The committed samples as records, made from their truth: what a reader without fault would have read."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

from ocr_tags.fields import FIELDS
from ocr_tags.names.matching import match_plant
from ocr_tags.record import Photo, TagRecord
from ocr_tags.record_json import from_json

TRUTH = Path(__file__).parent.parent / "samples/tags/truth.jsonl"


@cache
def truth_records() -> dict[str, TagRecord]:
    """Every sample by its name ("04-hydrangea")."""
    rows = (json.loads(line) for line in TRUTH.read_text("utf-8").splitlines())
    return {row["tag"]: record_of(row) for row in rows}


def record_of(row: dict[str, Any]) -> TagRecord:
    fields = {field.name: field for field in FIELDS}
    shown = {
        name: [_reading(each) for each in value] if fields[name].shape == "each" else _reading(value)
        for name, value in row["fields"].items()
        if name in fields
    }
    photos = [_photo(photo["file"], photo["side"]) for photo in row["photos"]]
    record = from_json({"tag_id": row["tag"], "photos": [], "fields": shown})
    names = tuple(reading.value for reading in record.readings.get("common_names", ()))
    botanical = record.readings.get("botanical_name")
    plant = match_plant(names, botanical[0].value if botanical else None)
    return TagRecord(row["tag"], tuple(photos), record.readings, plant)


def _reading(truth: dict[str, Any]) -> dict[str, Any]:
    return {
        "value": truth["value"],
        "printed": truth["printed"],
        "side": truth["sides"][0],
        "confidence": 0.99,
        "status": "read",
    }


def _photo(file: str, side: Any) -> Photo:
    return Photo(side, file, file.encode().hex().ljust(64, "0")[:64], 100, 100)
