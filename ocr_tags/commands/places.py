"""Where the user is: shown, changed, forgotten; and the table of hardiness zones."""

from __future__ import annotations

from typing import Annotated

import typer

from ocr_tags.commands.shared import AsJson, app, print_json, say, settings_of


@app.command()
def place(
    ctx: typer.Context,
    zone: Annotated[
        str | None,
        typer.Option(metavar="ZONE", help='USDA zone, 5 or 5b; or the coldest of a usual winter: "-15 F".'),
    ] = None,
    heat: Annotated[str | None, typer.Option(metavar="WORD", help="Summers: cool, average or hot.")] = None,
    country: Annotated[str | None, typer.Option(metavar="CODE", help="Two letters: US, CA, GB, NL.")] = None,
    at: Annotated[
        str | None,
        typer.Option(
            metavar="LAT,LON", help='Degrees, south and west minus; and perhaps height: "46.8, -92.1, 210 m".'
        ),
    ] = None,
    hemisphere: Annotated[
        str | None, typer.Option(metavar="WORD", help="north or south, where --at is not given.")
    ] = None,
    last_frost: Annotated[
        str | None, typer.Option(metavar="DAY", help='Usual last frost of spring: "10 May".')
    ] = None,
    first_frost: Annotated[
        str | None, typer.Option(metavar="DAY", help='Usual first frost of autumn: "1 Oct".')
    ] = None,
    units: Annotated[
        str | None, typer.Option(metavar="UNIT", help="in (inches and feet) or cm; both when not given.")
    ] = None,
    tags_at: Annotated[
        str | None, typer.Option(metavar="LAT,LON", help="Where your tags' bloom months were written for.")
    ] = None,
    forget: Annotated[bool, typer.Option("--forget", help="Forget all of it first.")] = False,
    zones: Annotated[
        bool, typer.Option("--zones", help="Show the table of hardiness zones instead.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Say where you are, once; what a tag means depends on it. Without options, show what is set.

    An empty text takes a part away. Example: ocr-tags place --zone 5b --heat cool --country US --units in
    """
    from ocr_tags.place import Place, load_place, place_from, save_place

    if zones:
        _show_zones(as_json)
        return
    path = settings_of(ctx).place
    given = {
        **{"zone": zone, "heat": heat, "country": country, "at": at, "hemisphere": hemisphere},
        **{"last_frost": last_frost, "first_frost": first_frost, "units": units, "tags_at": tags_at},
    }
    texts = {name: text for name, text in given.items() if text is not None}
    known = place_from(texts, Place() if forget else load_place(path))
    if texts or forget:
        save_place(known, path)
        say(f"Kept in {path}.")
    if as_json:
        print_json(known.texts())
        return
    for name, text in known.texts().items():
        print(f"{name.replace('_', '-'):12} {text}")
    if not known.texts():
        say("No place is set. Begin with your zone: ocr-tags place --zone 5b")


def _show_zones(as_json: bool) -> None:
    from ocr_tags.usda import USDA_ZONES

    for half, low_f, high_f, low_c, high_c in USDA_ZONES:
        if as_json:
            print_json({"zone": half, "fahrenheit": [low_f, high_f], "celsius": [low_c, high_c]})
        else:
            print(f"{half:>4}  {low_f:>4} to {high_f:>3} °F  {low_c:>6} to {high_c:>5} °C")
    if not as_json:
        say("The coldest of an average winter (USDA Plant Hardiness Zone Map, limits of 2012 and 2023).")
