"""How many plants a bed needs, and how far apart so many must stand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

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
from ocr_tags.settings import Settings

if TYPE_CHECKING:
    from index import Catalogue
    from ocr_tags.measures.lengths import Units
    from ocr_tags.planting.beds import Bed
    from ocr_tags.planting.needs import Need, Planting
    from ocr_tags.planting.placing import Apart
    from ocr_tags.planting.spacings import Kind
    from ocr_tags.record import TagRecord

Texts = list[str] | None


@app.command()
def bed(
    ctx: typer.Context,
    tags: Annotated[
        Texts, typer.Argument(metavar="TAGS", help="What to plant: ids or names of tags, one a kind.")
    ] = None,
    rectangle: Annotated[
        tuple[str, str] | None, typer.Option(metavar="LENGTH WIDTH", help="Such as 10ft 4ft.")
    ] = None,
    circle: Annotated[str | None, typer.Option(metavar="DIAMETER", help="Such as 6ft.")] = None,
    polygon: Annotated[
        str | None, typer.Option(metavar="CORNERS", help="In order: '0,0 10ft,0 10ft,4ft 0,4ft'.")
    ] = None,
    row: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="A running row or hedge, such as 20m.")
    ] = None,
    spacing: Annotated[
        Texts, typer.Option(help="In place of the tag's: 18in or '12-18 in'; one for each kind.")
    ] = None,
    rows: Annotated[
        str | None, typer.Option(help="Distance between rows, where it differs from that in the row.")
    ] = None,
    pattern: Annotated[str, typer.Option(help="square, or offset (triangular).")] = "square",
    edge: Annotated[
        str, typer.Option(help="Kept free along the edge: half (a spacing), none, or a length.")
    ] = "half",
    share: Annotated[
        list[float] | None, typer.Option(min=0, help="Share of the bed for each kind, such as 60 and 40.")
    ] = None,
    pack: Annotated[list[int] | None, typer.Option(min=1, help="Plants in a pack or flat.")] = None,
    plants: Annotated[
        int | None, typer.Option(help="The reverse: how far apart so many plants must stand.")
    ] = None,
    from_spread: Annotated[
        bool, typer.Option("--from-spread", help="Estimate from the spread where no spacing is printed.")
    ] = False,
    plan: Annotated[
        list[Path] | None, typer.Option(metavar="FILE", help="Draw it to scale: .svg or .png.")
    ] = None,
    here: Here = None,
    as_json: AsJson = False,
) -> None:
    """Work out how many plants a bed needs, from the spacing on their tags or a stated one.

    Examples: ocr-tags bed lavender --rectangle 10ft 4ft --pattern offset --plan bed.svg;
    ocr-tags bed --spacing 30cm --circle 2m --pack 6; ocr-tags bed --row 20ft --plants 14
    """
    from ocr_tags.planting.needs import to_json, work_out
    from ocr_tags.planting.placing import how_far_apart
    from ocr_tags.planting.plan import save_plan

    settings = settings_of(ctx)
    units = place_of(settings, here).units
    ground = _bed({"rectangle": rectangle, "circle": circle, "polygon": polygon, "row": row}, units)
    offset, kept = _pattern(pattern), _edge(edge)
    records = _records(settings, tags or [])
    kinds = _stated(records, spacing or [], rows)
    if not kinds:
        kinds = [_printed(record, settings, ground, from_spread) for record in records]
    if plants is not None:
        if len(kinds) > 1 or plan or share:
            raise QueryError("--plants takes one kind, without --share and --plan.")
        _print_apart(ground, plants, kinds, how_far_apart(ground, plants, offset, kept), as_json)
        return
    if not kinds:
        raise QueryError("Nothing says how far apart the plants stand.", "Name a tag, or give --spacing.")
    planting = work_out(ground, _shared(kinds, share), offset, kept)
    for path in plan or ():
        save_plan(planting, path)
        say(f"Plan drawn in {path}.")
    if as_json:
        print_json(to_json(planting, pack or ()))
    else:
        _print_planting(planting, pack or ())


# ---------------------------------------------------------------- what was asked


def _bed(asked: dict[str, Any], units: Units | None) -> Bed:
    """The one bed asked for, spoken of in the user's units, or else in those it was typed in."""
    from ocr_tags.planting import beds

    given = [(shape, value) for shape, value in asked.items() if value is not None]
    if len(given) != 1:
        raise QueryError("Give one bed:", "--rectangle, --circle, --polygon or --row.")
    shape, value = given[0]
    ground: Bed = getattr(beds, shape)(*value) if shape == "rectangle" else getattr(beds, shape)(value)
    return beds.in_units(ground, units)


def _pattern(pattern: str) -> bool:
    if pattern not in ("square", "offset"):
        raise QueryError(f"The pattern is square or offset, not {pattern!r}.")
    return pattern == "offset"


def _edge(edge: str) -> float | None:
    from ocr_tags.planting.sizes import typed_size

    return None if edge == "half" else 0.0 if edge == "none" else typed_size(edge, "The edge")[0]


def _stated(records: Sequence[TagRecord], spacings: list[str], rows: str | None) -> list[Kind]:
    """A kind for each spacing typed, by the name of its tag where tags were named."""
    from ocr_tags.planting.spacings import stated, with_spacing

    if records and spacings and len(records) != len(spacings):
        asked = f"{_many(spacings, 'spacing')} for {_many(records, 'kind')}:"
        raise QueryError(asked, "give one for each, or none.")
    if records:
        return [
            with_spacing(record, stated(text, _name(record), rows))
            for record, text in zip(records, spacings, strict=False)
        ]
    names = [f"kind {number}" for number in range(1, len(spacings) + 1)] if spacings[1:] else ["plants"]
    return [stated(text, name, rows) for text, name in zip(spacings, names, strict=False)]


def _printed(record: TagRecord, settings: Settings, ground: Bed, from_spread: bool) -> Kind:
    from ocr_tags.planting.spacings import from_record

    return from_record(record, _name(record), settings.doubtful_below, ground.units, from_spread)


def _records(settings: Settings, tags: list[str]) -> list[TagRecord]:
    if not tags:
        return []
    with open_catalogue(settings) as catalogue:
        return [_record(catalogue, text) for text in tags]


def _record(catalogue: Catalogue, text: str) -> TagRecord:
    """The tag of this id, or the only one of this name."""
    try:
        return catalogue.get(text)
    except QueryError:
        hits = [hit for hit in catalogue.find(text) if not hit.nearest_only]
        if not hits:
            raise
    if len(hits) > 1:
        ids = ", ".join(hit.record.tag_id for hit in hits[:4]) + (" and more" if len(hits) > 4 else "")
        raise QueryError(f"{len(hits)} tags answer to {text!r}: {ids}.", "Name one by its id.")
    return hits[0].record


def _name(record: TagRecord) -> str:
    from ocr_tags.commands.show import name_of

    return name_of(record)


def _shared(kinds: list[Kind], shares: list[float] | None) -> list[Kind]:
    if not shares:
        return kinds
    if len(shares) != len(kinds):
        raise QueryError(
            f"{_many(shares, 'share')} for {_many(kinds, 'kind')}:", "give one --share for each kind."
        )
    if min(shares) <= 0:
        raise QueryError("A share of the bed must be more than nothing.")
    return [replace(kind, share=share) for kind, share in zip(kinds, shares, strict=True)]


def _many(things: Sequence[object], word: str) -> str:
    return f"{len(things)} {word}{'' if len(things) == 1 else 's'}"


# ---------------------------------------------------------------- what comes out


def _print_planting(planting: Planting, pack_sizes: Sequence[int]) -> None:
    from rich.table import Table

    from ocr_tags.commands.show import console

    line = planting.bed.kind == "row"
    screen = console()
    screen.print(_heading(planting), markup=False)
    table = Table(header_style="bold")
    for heading in ("Plant", "Spacing", "Placed", "By length" if line else "By area", "On the edge"):
        right = heading not in ("Plant", "Spacing")
        table.add_column(heading, overflow="fold", justify="right" if right else "left")
    for size in pack_sizes:
        table.add_column(f"Packs of {size}", justify="right")
    for need in planting.needs:
        for cells in _cells(need, planting.bed.units, pack_sizes):
            table.add_row(*cells)
    screen.print(table)
    many = f"{planting.fewest}–{planting.most}" if planting.fewest != planting.most else f"{planting.most}"
    screen.print(f"Plants in all: {many}.", markup=False)
    formula = "length over spacing" if line else "area over the room of one plant"
    screen.print(
        f"'Placed' counts plants set out in this very bed; 'by {'length' if line else 'area'}' is the rule of"
        f" printed tables, {formula}, rounded up. They part where rows do not fill the bed evenly. 'On the"
        " edge' is the count with plants on the outline itself.",
        soft_wrap=True,
        markup=False,
    )
    for note in planting.notes:
        screen.print(note, markup=False, soft_wrap=True)


def _heading(planting: Planting) -> str:
    from ocr_tags.planting.sizes import size_in_words

    name = planting.bed.in_words()
    pattern = "" if planting.bed.kind == "row" else f"; {'offset' if planting.offset else 'square'} pattern"
    kept = "half a spacing" if planting.edge is None else size_in_words(planting.edge, planting.bed.units)
    edge = "plants on the very edge" if planting.edge == 0 else f"{kept} kept to the edge"
    return f"{name[:1].upper()}{name[1:]}{pattern}, centre to centre; {edge}."


def _cells(need: Need, units: Units, pack_sizes: Sequence[int]) -> Iterator[list[str]]:
    """A row for each end of the range of spacing."""
    from rich.markup import escape

    from ocr_tags.planting.needs import packs

    for first, count in zip((True, False), need.counts, strict=False):
        kind = replace(need.kind, narrow=count.grid.along, wide=count.grid.along)
        exact = "" if abs(count.formula - count.by_formula) < 0.005 else f" ({round(count.formula, 2):g})"
        yield [
            escape(need.kind.name) if first else "",
            escape(kind.spacing_in_words(units)),
            str(count.placed),
            f"{count.by_formula}{exact}",
            str(count.on_edge),
            *(f"{number} ({plants} plants)" for number, plants in packs(count.placed, pack_sizes)),
        ]


def _print_apart(ground: Bed, plants: int, kinds: list[Kind], apart: Apart, as_json: bool) -> None:
    from ocr_tags.planting.needs import DIGGING
    from ocr_tags.planting.sizes import floor_in_words, size_in_words

    stands = [(kind, _beside(apart.placed, kind)) for kind in kinds]
    if as_json:
        found = {"placed_cm": round(apart.placed, 2), "formula_cm": round(apart.by_formula, 2)}
        print_json({"plants": plants, **found, "beside_wanted": [word for _, word in stands]})
        return
    units = ground.units
    how = "length" if ground.kind == "row" else "area"
    one = "1 plant has" if plants == 1 else f"{plants} plants stand up to"
    print(
        f"{one} {floor_in_words(apart.placed, units)}{' of room' if plants == 1 else ' apart'}"
        f" in the {ground.in_words()}; by the {how} formula {size_in_words(apart.by_formula, units)}."
    )
    for kind, word in stands:
        print(f"That is {word} than wanted" if word != "as wanted" else "That is as wanted", end=" ")
        print(f"for {kind.name}: {kind.spacing_in_words(units)}.")
    if not kinds or any(kind.woody is not False for kind in kinds):
        print(DIGGING)


def _beside(spacing: float, kind: Kind) -> str:
    """How a spacing stands to that of the kind, give or take a millimetre."""
    if spacing < kind.narrow - 0.1:
        return "closer"
    return "wider" if spacing > kind.wide + 0.1 else "as wanted"
