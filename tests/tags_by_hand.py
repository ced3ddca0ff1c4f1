"""Small records made by hand: values by field, in the words a tag would print."""

from __future__ import annotations

from typing import Any

from ocr_tags.fields import FIELDS
from ocr_tags.names.matching import match_plant
from ocr_tags.names.nomenclature import parse
from ocr_tags.record import Photo, Reading, Side, TagRecord

_FIELDS = {field.name: field for field in FIELDS}


def tag(
    common: str | None = None,
    name: str | None = None,
    texts: dict[str, tuple[str, ...]] | None = None,
    sides: tuple[Side, ...] = ("front", "back"),
    **values: Any,
) -> TagRecord:
    """A record of these values; give a whole reading where the print or the status matters."""
    given: dict[str, Any] = dict(values)
    if common:
        given["common_names"] = common
    if name:
        given["botanical_name"] = reading(parse(name), name)
    readings = {field: (_reading(field, value),) for field, value in given.items()}
    botanical = readings.get("botanical_name")
    plant = match_plant((common,) if common else (), botanical[0].value if botanical else None)
    photos = tuple(Photo(side, f"{side}.jpg", side.ljust(64, "0"), 100, 100) for side in sides)
    return TagRecord("by-hand", photos, readings, plant, texts=texts or {})


def reading(value: Any, printed: str, side: Side = "back", **more: Any) -> Reading[Any]:
    return Reading(value, printed, side, None, 0.99, **more)


def _reading(field: str, value: Any) -> Reading[Any]:
    if isinstance(value, Reading):
        return value
    if _FIELDS[field].shape == "list" and isinstance(value, str):
        value = (value,)
    shown = ", ".join(value) if isinstance(value, tuple) else str(getattr(value, "text", value))
    return reading(value, shown)
