"""What all commands share: the app, its options, how errors are worded, how records are printed.

Results go to stdout, everything else to stderr. What a command needs is imported inside it: OpenCV,
Whoosh and rich each cost time that `--help` and shell completion must not wait for.
"""

from __future__ import annotations

import json
import os
import sys
import traceback
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from typer.core import TyperGroup

from ocr_tags.errors import ExitCode, TagError
from ocr_tags.settings import Loaded, Settings, load_settings

if TYPE_CHECKING:
    from index import Catalogue
    from ocr_tags.place import Place
    from ocr_tags.record import TagRecord


def say(text: str) -> None:
    """A line for the person at the terminal."""
    print(text, file=sys.stderr, flush=True)


class Commands(TyperGroup):
    """The one place that words errors and turns them into exit codes."""

    def invoke(self, ctx: Any) -> Any:
        try:
            result = super().invoke(ctx)
            sys.stdout.flush()
            return result
        except (typer.Exit, typer.Abort):
            raise
        except KeyboardInterrupt:
            say("ocr-tags: stopped; what was already recorded is kept.")
            raise typer.Exit(ExitCode.STOPPED) from None
        except BrokenPipeError:
            # Whoever read our output has seen enough; Python would complain once more when it ends.
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            raise typer.Exit(ExitCode.DONE) from None
        except Exception as error:
            if type(error).__module__.startswith("typer"):  # wrong use, which typer words itself
                raise
            if ctx.params.get("debug"):
                traceback.print_exc()
            if isinstance(error, TagError):
                say(f"ocr-tags: {error}")
                raise typer.Exit(error.exit_code) from error
            say(f"ocr-tags: a fault of ours ({type(error).__name__}: {error}). --debug shows where.")
            raise typer.Exit(ExitCode.OUR_FAULT) from error


app = typer.Typer(
    name="ocr-tags",
    cls=Commands,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
    help="Read photographs of printed plant tags, keep what they say, and find it again.\n\n"
    "Start with 'ocr-tags add FOLDER', then 'ocr-tags find lavender'.",
)

AsJson = Annotated[bool, typer.Option("--json", help="One JSON object a line instead of tables.")]
Here = Annotated[
    list[str] | None,
    typer.Option(
        metavar="WHAT=TEXT",
        help="Another place for this once, as in 'ocr-tags place': --here zone=9b --here units=cm",
    ),
]
EveryNote = Annotated[
    bool, typer.Option("--all-notes", help="Show every note on a tag, and what each caution rests on.")
]
TagId = Annotated[str, typer.Argument(metavar="TAG", help="The tag's id, or its first letters.")]
FieldName = Annotated[
    str, typer.Argument(metavar="FIELD", help="A field's name; 'ocr-tags fields' lists them.")
]


def _show_version(wanted: bool) -> None:
    if wanted:
        from importlib.metadata import version

        print(f"ocr-tags {version('ocr-tags')}")
        raise typer.Exit


@app.callback()
def options(
    ctx: typer.Context,
    catalogue: Annotated[
        Path | None, typer.Option("--catalogue", "-c", metavar="FOLDER", help="The catalogue to work with.")
    ] = None,
    config: Annotated[Path | None, typer.Option(metavar="FILE", help="The config file to use.")] = None,
    reader: Annotated[
        str | None, typer.Option(help="Reading engine: auto, both, tesseract, tesserocr or rapidocr.")
    ] = None,
    languages: Annotated[str | None, typer.Option(help="Languages on the tags, such as eng+fra.")] = None,
    debug: Annotated[bool, typer.Option("--debug", help="Show the program's trace when it fails.")] = False,
    version: Annotated[
        bool, typer.Option("--version", callback=_show_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # a terminal of few characters must not end a batch
            stream.reconfigure(errors="replace")
    given = {"catalogue": catalogue, "reader": reader, "languages": languages}
    ctx.obj = load_settings(given, config=config)


def loaded_of(ctx: typer.Context) -> Loaded:
    found: Loaded = ctx.obj
    return found


def settings_of(ctx: typer.Context, workers: int | None = None) -> Settings:
    settings = loaded_of(ctx).settings
    return settings if workers is None else replace(settings, workers=workers)


def place_of(settings: Settings, here: list[str] | None = None) -> Place:
    """The user's place, with what `--here` says laid over it."""
    from ocr_tags.place import load_place, place_from

    texts = dict(part.partition("=")[::2] for part in here or ())
    if any("=" not in part for part in here or ()):
        raise TagError("--here takes a part of a place and its text.", "Such as --here zone=5b.")
    return place_from(texts, load_place(settings.place))


def open_catalogue(settings: Settings, *, make: bool = False) -> Catalogue:
    """The catalogue in use; a TagError when there is none and none should be made."""
    if not make and not settings.catalogue.is_dir():
        raise TagError(
            f"There is no catalogue in {settings.catalogue} yet.",
            "Add photos with 'ocr-tags add', or name another folder with --catalogue.",
        )
    from index import Catalogue

    return Catalogue.open(settings.catalogue)


# ---------------------------------------------------------------- printing


def print_json(shown: dict[str, Any]) -> None:
    plain = (sys.stdout.encoding or "").lower().replace("-", "") != "utf8"
    print(json.dumps(shown, ensure_ascii=plain), flush=True)


def record_json(record: TagRecord, place: Place, **more: Any) -> dict[str, Any]:
    """The record in its outside shape, with the cautions for this place."""
    from ocr_tags.cautions import with_cautions
    from ocr_tags.record_json import to_json

    return {**to_json(with_cautions(record, place)), **more}


def print_details(
    record: TagRecord, settings: Settings, place: Place, *, boxes: bool = False, every: bool = False
) -> None:
    """All values of a record and its cautions; `every` shows all notes and what each rests on."""
    from ocr_tags.cautions import cautions
    from ocr_tags.commands import show
    from ocr_tags.commands.advice import advice_of

    console = show.console()
    console.print(show.details(record, settings.doubtful_below, boxes, place.units))
    for line in show.remarks(record):
        console.print(f"  {line}", markup=False, soft_wrap=True)
    console.print(advice_of(cautions(record, place), every=every))
    console.print()


def say_general(place: Place) -> None:
    """What holds for every tag; said once, after the last one."""
    from ocr_tags.cautions import general

    for line in general(place):
        say(line)


def print_table(
    parts: Sequence[tuple[str, Sequence[TagRecord]]],
    settings: Settings,
    place: Place,
    why: Sequence[str] = (),
) -> None:
    """One row a record, each part under its title, and what the mark of doubt means where one is shown."""
    from ocr_tags.commands import show

    console = show.console()
    console.print(show.table_of(parts, settings.doubtful_below, console.width, why, place))
    if any(
        show.doubtful_fields(record, settings.doubtful_below) for _, records in parts for record in records
    ):
        say(show.LEGEND)
