"""What the program knows of itself: its fields, its reader, its settings, the health of the catalogue."""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator
from typing import Any

import typer

from ocr_tags.commands.shared import AsJson, app, loaded_of, open_catalogue, print_json
from ocr_tags.errors import ExitCode, TagError
from ocr_tags.settings import Settings, config_file


@app.command()
def fields(as_json: AsJson = False) -> None:
    """List every field a tag may have, by the name used in JSON and in 'correct'."""
    from ocr_tags.facts import FACTS

    for field in FACTS:
        if as_json:
            print_json({"name": field.name, "label": field.label, "shape": field.shape})
        else:
            print(f"{field.name:18} {field.label}")


@app.command()
def check(ctx: typer.Context, as_json: AsJson = False) -> None:
    """Say which reader, model, settings and catalogue are in use, and what is missing."""
    loaded = loaded_of(ctx)
    reader, reader_fault = _reader(loaded.settings)
    catalogue, catalogue_faults = _catalogue(loaded.settings)
    chosen = {name: str(getattr(loaded.settings, name)) for name in loaded.origins}
    if as_json:
        print_json(
            {
                "reader": reader,
                "catalogue": catalogue,
                "heic": _heic(),
                "problems": [*reader_fault, *catalogue_faults],
                "config_file": str(config_file()),
                "settings": {
                    name: {"value": value, "from": loaded.origins[name]} for name, value in chosen.items()
                },
            }
        )
    else:
        for line in _lines(reader, catalogue, [*reader_fault, *catalogue_faults]):
            print(line)
        print("Settings:")
        for name, value in chosen.items():
            print(f"  {name} = {value}  ({loaded.origins[name]})")
    if reader_fault:
        raise typer.Exit(ExitCode.NO_READER)
    if catalogue_faults:
        raise typer.Exit(ExitCode.CATALOGUE)


def _lines(reader: str | None, catalogue: dict[str, Any], problems: list[str]) -> Iterator[str]:
    yield f"Reader: {reader or 'none'}"
    yield f"HEIC photos: {'can be opened' if _heic() else 'cannot be opened; pip install pi-heif'}"
    if catalogue["tags"] is None:
        yield f"Catalogue: {catalogue['folder']} (none there yet)"
    else:
        yield f"Catalogue: {catalogue['folder']}, {catalogue['tags']} tags, {catalogue['photos']} photos"
    yield f"Config file: {config_file()}{'' if config_file().exists() else ' (none there)'}"
    yield from (f"Problem: {problem}" for problem in problems)


def _reader(settings: Settings) -> tuple[str | None, list[str]]:
    from ocr_tags.engines import open_engines

    try:
        folder = str(settings.tessdata) if settings.tessdata else None
        engines = open_engines(settings.reader, settings.languages, folder)
        return "; ".join(engine.describe() for engine in engines), []
    except TagError as error:
        return None, [str(error)]


def _heic() -> bool:
    return importlib.util.find_spec("pi_heif") is not None


def _catalogue(settings: Settings) -> tuple[dict[str, Any], list[str]]:
    shown: dict[str, Any] = {"folder": str(settings.catalogue), "tags": None, "photos": None}
    if not settings.catalogue.is_dir():
        return shown, []
    try:
        with open_catalogue(settings) as catalogue:
            health = catalogue.check()
    except TagError as error:
        return shown, [str(error)]
    return {**shown, "tags": health.tags, "photos": health.photos}, list(health.problems)
