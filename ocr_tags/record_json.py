"""A record as JSON and back: the one outside shape, built from the list of fields.

Lengths are centimetres and temperatures degrees Celsius, unrounded. A field that was not printed or
not read is absent. A reading's `photo` is the place of its photograph in `photos`, counted from 0, as a side
may have several; in records that do not say, it is the first of that side.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import msgspec

from ocr_tags.errors import CatalogueError
from ocr_tags.facts import FACTS
from ocr_tags.record import FORMAT, Box, Caution, Fact, Photo, PlantMatch, Reading, TagRecord


def to_json(record: TagRecord) -> dict[str, Any]:
    """The record as plain dicts, lists, numbers and text, ready for `json.dumps`."""
    fields: dict[str, Any] = {}
    for field in FACTS:
        readings = record.readings.get(field.name, ())
        if readings:
            shown = [_reading(reading) for reading in readings]
            fields[field.name] = shown if field.shape == "each" else shown[0]
    return {
        "format": FORMAT,
        "tag_id": record.tag_id,
        "photos": [_photo(photo) for photo in record.photos],
        "fields": fields,
        "plant": None if record.plant is None else msgspec.to_builtins(record.plant),
        "cautions": [_caution(caution) for caution in record.cautions],
        "texts": {side: list(lines) for side, lines in record.texts.items()},
        "readers": list(record.readers),
        "notes": list(record.notes),
    }


def from_json(shown: Mapping[str, Any]) -> TagRecord:
    """The record that `to_json` wrote; unknown fields and keys of later minor versions are left out.

    Raises CatalogueError, naming the place, when the JSON is not a record or is of a later format.
    """
    if shown.get("format", FORMAT) > FORMAT:
        raise CatalogueError(
            f"This record has format {shown['format']}; this version reads up to {FORMAT}.",
            "Update ocr-tags.",
        )
    try:
        photos = tuple(_as(photo, Photo) for photo in shown["photos"])
        return TagRecord(
            tag_id=shown["tag_id"],
            photos=photos,
            readings={
                field.name: _read_back(shown["fields"][field.name], field, photos)
                for field in FACTS
                if field.name in shown["fields"]
            },
            plant=_as(shown["plant"], PlantMatch) if shown.get("plant") else None,
            cautions=tuple(_caution_back(caution) for caution in shown.get("cautions", ())),
            texts={side: tuple(lines) for side, lines in shown.get("texts", {}).items()},
            readers=tuple(shown.get("readers", ())),
            notes=tuple(shown.get("notes", ())),
        )
    except (KeyError, TypeError, msgspec.ValidationError) as error:
        raise CatalogueError(f"This JSON is not a tag record: {error}.") from error


def value_type(field: Fact[Any]) -> Any:
    """The type of the value a reading of this field holds."""
    return tuple[field.type, ...] if field.shape == "list" else field.type  # type: ignore[name-defined]


def _photo(photo: Photo) -> dict[str, Any]:
    shown: dict[str, Any] = msgspec.to_builtins(photo)
    shown["outline"] = [list(corner) for corner in photo.outline]
    return shown


def _caution(caution: Caution) -> dict[str, Any]:
    box = caution.box
    shown: dict[str, Any] = msgspec.to_builtins(caution)
    return {**shown, "box": None if box is None else [box.x, box.y, box.w, box.h]}


def _caution_back(shown: Mapping[str, Any]) -> Caution:
    box = shown.get("box")
    caution: Caution = _as({**shown, "box": None}, Caution)
    return caution if box is None else replace(caution, box=Box(*box))


def _reading(reading: Reading[Any]) -> dict[str, Any]:
    box = reading.box
    return {
        "value": msgspec.to_builtins(reading.value),
        "printed": reading.printed,
        "side": reading.side,
        "photo": reading.photo,
        "box": None if box is None else [box.x, box.y, box.w, box.h],
        "confidence": round(reading.confidence, 3),
        "status": reading.status,
        "alternatives": [_reading(other) for other in reading.alternatives],
    }


def _read_back(shown: Any, field: Fact[Any], photos: tuple[Photo, ...]) -> tuple[Reading[Any], ...]:
    entries = shown if field.shape == "each" else [shown]
    return tuple(_reading_back(entry, value_type(field), photos) for entry in entries)


def _reading_back(entry: Mapping[str, Any], kind: Any, photos: tuple[Photo, ...]) -> Reading[Any]:
    box = entry.get("box")
    first = next((place for place, photo in enumerate(photos) if photo.side == entry["side"]), 0)
    return Reading(
        value=_as(entry["value"], kind),
        printed=entry["printed"],
        side=entry["side"],
        box=None if box is None else Box(*box),
        confidence=float(entry["confidence"]),
        status=entry["status"],
        alternatives=tuple(_reading_back(other, kind, photos) for other in entry.get("alternatives", ())),
        photo=int(entry.get("photo", first)),
    )


def _as(shown: Any, kind: Any) -> Any:
    return msgspec.convert(shown, type=kind, strict=True)
