"""The catalogue at the command line: find, show, put right, take out."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from ocr_tags.commands.findings import WordsWithDashes, parts_of, remarks_on
from ocr_tags.commands.shared import (
    AsJson,
    FieldName,
    Here,
    TagId,
    app,
    open_catalogue,
    place_of,
    print_details,
    print_json,
    print_table,
    record_json,
    say,
    say_general,
    settings_of,
)
from ocr_tags.errors import TagError


@app.command(cls=WordsWithDashes)
def find(
    ctx: typer.Context,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="WORDS...", help="Any name, misspelt too; field:value; -not."),
    ] = None,
    zone: Annotated[str | None, typer.Option(help="Hardy in this zone, such as 5 or 5b.")] = None,
    light: Annotated[str | None, typer.Option(help="full_sun, part_sun, part_shade or full_shade.")] = None,
    height: Annotated[str | None, typer.Option(help="Such as '12-24 in' or '<60cm'.")] = None,
    category: Annotated[str | None, typer.Option(help="Such as perennial, shrub or herb.")] = None,
    supplier: Annotated[str | None, typer.Option(help="Whose label it is.")] = None,
    limit: Annotated[int, typer.Option(min=1, help="Show at most this many.")] = 20,
    explain: Annotated[
        bool, typer.Option("--explain", help="Say which name matched each, and how far off it is.")
    ] = False,
    here: Here = None,
    as_json: AsJson = False,
) -> None:
    """Find tags by any of their names, and by what they say.

    Words may be misspelt, begun or in any order. '"bleeding heart"' asks for these words side by side,
    -english for tags without that word, zone:5, height:<60cm, light:part_shade, bloom:june, spread:2-3ft,
    category:, colour:, supplier:, series: and cultivar: for what a tag says, -light:full_sun for not.

    Examples: ocr-tags find purple coneflower; ocr-tags find lavender zone:5 -english
    """
    settings = settings_of(ctx)
    place = place_of(settings, here)
    fields = {"zone": zone, "light": light, "height": height, "category": category, "supplier": supplier}
    with open_catalogue(settings) as catalogue:
        found = catalogue.search(" ".join(words or ()), limit=limit, **fields)
    if as_json:
        for plant in found.plants:
            for hit in plant.hits:
                why = {"score": hit.score, "why": hit.why, "nearest_only": hit.nearest_only}
                shown = {
                    **why,
                    "plant": plant.plant,
                    "tags_of_plant": plant.total,
                    "shared": list(found.shared),
                }
                print_json(record_json(hit.record, place, found=shown))
    for line in remarks_on(found):
        say(line)
    if as_json:
        return
    if parts := parts_of(found):
        reasons = [f"{hit.score:.0f}: {hit.why}" for _, hits in parts for hit in hits] if explain else []
        print_table(
            [(title, [hit.record for hit in hits]) for title, hits in parts], settings, place, reasons
        )


@app.command("list")
def list_tags(
    ctx: typer.Context,
    limit: Annotated[int | None, typer.Option(min=1, help="Show at most this many.")] = None,
    offset: Annotated[int, typer.Option(min=0, help="Pass over the first ones.")] = 0,
    here: Here = None,
    as_json: AsJson = False,
) -> None:
    """List the tags in the order they were added."""
    settings = settings_of(ctx)
    place = place_of(settings, here)
    with open_catalogue(settings) as catalogue:
        if as_json:
            for record in catalogue.records(limit, offset):
                print_json(record_json(record, place))
        elif records := list(catalogue.records(limit, offset)):
            print_table([("", records)], settings, place)
        else:
            say("The catalogue holds no tags." if not len(catalogue) else "There are no tags that far on.")


@app.command()
def show(ctx: typer.Context, tag: TagId, here: Here = None, as_json: AsJson = False) -> None:
    """Show all a tag says: printed text, side, how sure, where on which photo; and what to be careful of."""
    settings = settings_of(ctx)
    place = place_of(settings, here)
    with open_catalogue(settings) as catalogue:
        record = catalogue.get(tag)
        if as_json:
            print_json(record_json(record, place))
            return
        print_details(record, settings, place, boxes=True, every=True)
        for photo in record.photos:
            try:
                kept = str(catalogue.photo_path(photo.sha256))
            except TagError as error:
                kept = str(error)
            print(f"  {photo.side}: {photo.width} x {photo.height} pixels, {kept}")
        for reader in record.readers:
            print(f"  read by {reader}")
    say_general(place)


@app.command()
def correct(
    ctx: typer.Context,
    tag: TagId,
    field: FieldName,
    value: Annotated[
        str | None, typer.Argument(metavar="VALUE", help="As printed on a tag: '12-18 in'.")
    ] = None,
    absent: Annotated[bool, typer.Option("--absent", help="The tag says nothing of the kind.")] = False,
    as_json: AsJson = False,
) -> None:
    """Put a value right. What was read is kept beside it, and reading again never undoes it.

    Example: ocr-tags correct 3fa2 height "12-18 in"
    """
    from index.corrections import field_named
    from ocr_tags.commands.show import in_words
    from ocr_tags.typed import typed_value

    if (value is None) != absent:
        raise TagError("Give either a value or --absent.", "See 'ocr-tags correct --help'.")
    wanted = field_named(field)
    settings = settings_of(ctx)
    with open_catalogue(settings) as catalogue:
        record = catalogue.correct(tag, field, None if value is None else typed_value(wanted, value))
    place = place_of(settings)
    found = [in_words(reading.value, place.units) for reading in record.readings.get(field, ())]
    say(f"{wanted.label} of {record.tag_id}: {', '.join(found) or 'not on this tag'}.")
    if as_json:
        print_json(record_json(record, place))


@app.command()
def confirm(
    ctx: typer.Context,
    tag: TagId,
    field: Annotated[
        str | None, typer.Argument(metavar="[FIELD]", help="Every field when not given.")
    ] = None,
) -> None:
    """Vouch for what was read, after holding it against the tag."""
    with open_catalogue(settings_of(ctx)) as catalogue:
        record = catalogue.confirm(tag, field)
    say(f"Confirmed for {record.tag_id}: {field or 'every field that was read'}.")


@app.command()
def withdraw(ctx: typer.Context, tag: TagId, field: FieldName) -> None:
    """Take a correction or confirmation back; what was read counts again."""
    with open_catalogue(settings_of(ctx)) as catalogue:
        record = catalogue.withdraw(tag, field)
    say(f"{record.tag_id} says again what was read for {field}.")


@app.command()
def remove(
    ctx: typer.Context,
    tag: TagId,
    yes: Annotated[bool, typer.Option("--yes", "-y", help="Do not ask.")] = False,
) -> None:
    """Take a tag out of the catalogue, with its corrections and the copies of its photos."""
    from ocr_tags.commands.show import name_of

    with open_catalogue(settings_of(ctx)) as catalogue:
        record = catalogue.get(tag)
        if not yes:
            if not sys.stdin.isatty():
                raise TagError("Removing a tag needs a yes.", "Add --yes.")
            typer.confirm(f"Remove {record.tag_id}, {name_of(record)}?", abort=True, err=True)
        catalogue.remove(record.tag_id)
    say(f"Removed {record.tag_id}, {name_of(record)}.")


@app.command()
def reindex(ctx: typer.Context) -> None:
    """Build the search index anew from the records, with a progress bar on a terminal."""
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress

    hidden = not sys.stderr.isatty()
    bar = Progress(
        BarColumn(), MofNCompleteColumn(), console=Console(stderr=True), transient=True, disable=hidden
    )
    with open_catalogue(settings_of(ctx)) as catalogue:
        with bar:
            task = bar.add_task("records", total=len(catalogue))
            catalogue.rebuild(lambda done, total: bar.update(task, completed=done, total=total))
        say(f"The search index holds {len(catalogue)} tags.")


@app.command()
def export(
    ctx: typer.Context,
    output: Annotated[
        Path | None, typer.Option("--output", "-o", metavar="FILE", help="A file instead of stdout.")
    ] = None,
    here: Here = None,
) -> None:
    """Write every record as JSON lines.

    Example: ocr-tags export -o tags.jsonl
    """
    import json

    settings = settings_of(ctx)
    place = place_of(settings, here)
    with open_catalogue(settings) as catalogue:
        shown = (record_json(record, place) for record in catalogue.records())
        lines = (json.dumps(record, ensure_ascii=False) + "\n" for record in shown)
        if output is None or str(output) == "-":
            sys.stdout.writelines(lines)
            return
        try:
            with output.open("w", encoding="utf-8") as stream:
                stream.writelines(lines)
        except OSError as error:
            raise TagError(f"{output} cannot be written: {error.strerror}.") from error
        say(f"{len(catalogue)} records written to {output}.")
