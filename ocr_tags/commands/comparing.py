"""One plant on several tags: who says what, and where they disagree."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Annotated

import typer

from ocr_tags.commands.shared import (
    AsJson,
    Here,
    app,
    open_catalogue,
    place_of,
    print_json,
    say,
    settings_of,
)
from ocr_tags.errors import QueryError

if TYPE_CHECKING:
    from index import Catalogue
    from index.comparison import PlantComparison, Report
    from index.comparison_words import Speak


@app.command()
def compare(
    ctx: typer.Context,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="NAME|TAGS", help="A plant, or ids of tags; all when not given."),
    ] = None,
    here: Here = None,
    as_json: AsJson = False,
) -> None:
    """Lay the tags of one plant side by side; without a name, report every disagreement, worst first.

    Examples: ocr-tags compare panicle hydrangea; ocr-tags compare 3fa2 91c0; ocr-tags compare --json
    """
    from index.comparison_words import plant_json
    from ocr_tags.commands.show import in_words

    settings = settings_of(ctx)
    speak = partial(in_words, units=place_of(settings, here).units)
    with open_catalogue(settings) as catalogue:
        report = _report(catalogue, words or [], settings.doubtful_below)
    plants = report.plants if words else [plant for plant in report.plants if _worth_telling(plant)]
    if as_json:
        for plant in plants:
            print_json(plant_json(plant, speak))
        return
    for plant in plants:
        _print_plant(plant, speak, whole=bool(words))
    _print_end(report, len(plants), whole=bool(words))


def _worth_telling(plant: PlantComparison) -> bool:
    return any(field.differs or field.verdict == "uncertain" for field in plant.fields)


def _report(catalogue: Catalogue, words: list[str], below: float) -> Report:
    """All of the catalogue, the tags named, or the plants that answer to a name."""
    from index.comparison import Report, compare_all, compare_these

    if not words:
        return compare_all(catalogue.records(), below)
    named = _tags(catalogue, words)
    if len(named) > 1:
        chosen = [catalogue.get(tag_id) for tag_id in dict.fromkeys(named)]
        if len(chosen) < 2:
            raise QueryError("That is one tag twice.", "Name two tags, or a plant.")
        return Report((compare_these(chosen, below),), ())
    name = " ".join(words)
    hits = set(named) or {hit.tag_id for hit in catalogue.find(name, limit=200) if not hit.nearest_only}
    if not hits:
        raise QueryError(f"No tag answers to {name!r}.", "Try 'ocr-tags find'.")
    found = compare_all(catalogue.records(), below)
    plants = tuple(plant for plant in found.plants if hits & set(plant.tag_ids))
    perhaps = tuple(pair for pair in found.perhaps if hits & set(pair[:2]))
    return Report(plants, perhaps)


def _tags(catalogue: Catalogue, words: list[str]) -> list[str]:
    """The ids meant, when every word is one; else none, and the words are a name."""
    try:
        return [catalogue.get(word).tag_id for word in words]
    except QueryError:
        return []


# ---------------------------------------------------------------- printing


def _print_plant(plant: PlantComparison, speak: Speak, *, whole: bool) -> None:
    """Every field, or with `whole` off only those that differ."""
    from rich.markup import escape
    from rich.table import Table

    from index.comparison_words import VERDICT_WORDS, joint
    from ocr_tags.commands.show import console

    screen = console()
    table = Table(title=escape(plant.name), title_justify="left", header_style="bold", show_lines=True)
    for heading in ("Field", "Verdict", "What the tags say together"):
        table.add_column(heading, overflow="fold")
    for field in plant.fields:
        if whole or field.differs or field.verdict == "uncertain":
            said = escape(joint(field, speak))
            table.add_row(field.label, VERDICT_WORDS[field.verdict], said)
    screen.print(table)
    joined = f", because {' and '.join(plant.why)}" if plant.why else ""
    screen.print(f"  Tags {', '.join(plant.tag_ids)}{joined}.", markup=False, soft_wrap=True)
    for remark in plant.remarks:
        screen.print(f"  {remark}", markup=False, soft_wrap=True)
    screen.print()


def _print_end(report: Report, shown: int, *, whole: bool) -> None:
    from index.comparison_words import perhaps_words

    if not report.plants:
        say("No plant has a second tag to compare with.")
    elif not whole:
        say(f"{shown} of {len(report.plants)} plants with several tags have something to settle.")
    for sentence in perhaps_words(report):
        say(sentence)
