"""Invented tags for the catalogue's tests: real plants, invented cultivars and suppliers."""

import hashlib
from pathlib import Path
from typing import Any

from ocr_tags.record import Box, Photo, PlantMatch, Reading, TagRecord
from ocr_tags.values import BotanicalName, Hardiness, Length


def reading(value: Any, **more: Any) -> Reading[Any]:
    return Reading(value, str(value), "front", Box(10, 20, 30, 40), 0.9, **more)


def botanical(name: str) -> BotanicalName:
    bare, _, cultivar = name.partition(" '")
    genus, _, species = bare.replace("× ", "").partition(" ")
    return BotanicalName(
        name, genus, species or None, hybrid="×" in bare, cultivar=cultivar.strip("'") or None
    )


def make_tag(
    folder: Path,
    *photos: str,
    common: str | tuple[str, ...] = (),
    name: str = "",
    series: str = "",
    supplier: str = "",
    height: tuple[float | None, float | None] | None = None,
    zones: tuple[str | None, str | None] | None = None,
    light: tuple[str, ...] = (),
    categories: tuple[str, ...] = (),
    plant: PlantMatch | None = None,
) -> tuple[TagRecord, dict[str, Path]]:
    """A record and its photo files; a photo's contents are its name, the first is the front."""
    files = {}
    shown = []
    for place, photo in enumerate(photos):
        path = folder / f"{photo}.jpg"
        path.write_bytes(photo.encode() * 50)
        sha256 = hashlib.sha256(path.read_bytes()).hexdigest()
        files[sha256] = path
        shown.append(Photo("back" if place else "front", path.name, sha256, 300, 400))
    values: dict[str, tuple[Any, ...]] = {
        "common_names": (common,) if isinstance(common, str) else common,
        "botanical_name": (botanical(name),) if name else (),
        "series": (series,) if series else (),
        "supplier": (supplier,) if supplier else (),
        "height": (Length(*height),) if height else (),
        "hardiness": (Hardiness(*zones),) if zones else (),
        "light": (light,) if light else (),
        "categories": (categories,) if categories else (),
    }
    readings = {field: tuple(map(reading, found)) for field, found in values.items() if found}
    tag_id = hashlib.sha256("".join(sorted(files)).encode()).hexdigest()[:12]
    return TagRecord(tag_id, tuple(shown), readings, plant), files
