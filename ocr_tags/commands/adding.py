"""Photos to records: `read` shows them, `add` keeps them."""

from __future__ import annotations

import sys
from collections.abc import Generator
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ocr_tags.commands.shared import (
    AsJson,
    EveryNote,
    Here,
    app,
    open_catalogue,
    place_of,
    print_details,
    print_json,
    record_json,
    say,
    say_general,
    settings_of,
)
from ocr_tags.errors import ExitCode, PhotoError, TagError
from ocr_tags.settings import Settings

if TYPE_CHECKING:
    from index import Catalogue
    from ocr_tags.batch import TagRead
    from ocr_tags.record import TagRecord

Paths = Annotated[list[Path], typer.Argument(metavar="PATHS...", help="Photos, or folders of photos.")]
PairsFile = Annotated[
    Path | None,
    typer.Option(
        "--pairs",
        metavar="FILE",
        help="CSV of front,back photo names; one left blank for a lone side. Begin it with a line like"
        " front,front,back for sides with several photos.",
    ),
]
Workers = Annotated[
    int | None, typer.Option(min=1, help="Tags read at once; one per processor core when not given.")
]


@app.command()
def read(
    ctx: typer.Context,
    paths: Paths,
    pairs: PairsFile = None,
    workers: Workers = None,
    here: Here = None,
    all_notes: EveryNote = False,
    as_json: AsJson = False,
) -> None:
    """Read tags and show what they say, without keeping it.

    Example: ocr-tags read --json photos/ > tags.jsonl
    """
    settings = settings_of(ctx, workers)
    place = place_of(settings, here)
    tally, shown = _Tally(), 0
    with closing(_tags(paths, settings, pairs, tally)) as tags:
        for tag in tags:
            if as_json:
                print_json(record_json(tag.record, place))
            else:
                print_details(tag.record, settings, place, every=all_notes)
                shown += 1
    if shown:
        say_general(place)
    tally.end()


@app.command()
def add(
    ctx: typer.Context,
    paths: Paths,
    pairs: PairsFile = None,
    workers: Workers = None,
    here: Here = None,
    as_json: AsJson = False,
) -> None:
    """Read tags and keep them in the catalogue; photos already in it are passed over.

    Example: ocr-tags add photos/2026-04/
    """
    settings = settings_of(ctx, workers)
    place = place_of(settings, here)
    tally, added = _Tally(), 0
    with open_catalogue(settings, make=True) as catalogue:
        with closing(_tags(paths, settings, pairs, tally, catalogue)) as tags:
            for tag in tags:
                try:
                    result = catalogue.add(tag.record, tag.files)
                except TagError as error:  # this tag's photos are in the way of each other; the next may do
                    tally.failed(error)
                    continue
                added += result.new
                record = catalogue.get(result.tag_id)
                if as_json:
                    change = {"new": result.new, "changed": result.changed}
                    print_json(record_json(record, place, added=change))
                else:
                    _print_added(record, result.new, settings)
        say(
            f"{added} new {'tag' if added == 1 else 'tags'} in {settings.catalogue}, {len(catalogue)} in all."
        )
    tally.end()


def _print_added(record: TagRecord, new: bool, settings: Settings) -> None:
    from ocr_tags.commands.show import doubtful_fields, name_of

    doubtful = doubtful_fields(record, settings.doubtful_below)
    check = f"  Check: {', '.join(doubtful)}." if doubtful else ""
    print(f"{'Added' if new else 'Known'} {record.tag_id}  {name_of(record)}.{check}", flush=True)


class _Tally:
    """What went wrong so far, said at once and summed up at the end."""

    def __init__(self) -> None:
        self.errors: list[str] = []

    def failed(self, error: TagError) -> None:
        self.errors.append(str(error))
        say(f"ocr-tags: {error}")

    def end(self) -> None:
        if self.errors:
            count = len(self.errors)
            say(f"{count} {'photo' if count == 1 else 'photos'} could not be used; see above.")
            raise typer.Exit(ExitCode.SOME_PHOTOS_FAILED)


def _tags(
    paths: list[Path],
    settings: Settings,
    pairs: Path | None,
    tally: _Tally,
    catalogue: Catalogue | None = None,
) -> Generator[TagRead]:
    """The tags as they are read; what is no tag is told on stderr, with a progress bar on a terminal."""
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    from ocr_tags.batch import Passed, read_all
    from ocr_tags.engines import open_engines

    # Without an engine every photo would fail with the same words: better said once, before any is read.
    open_engines(settings.reader, settings.languages, str(settings.tessdata) if settings.tessdata else None)
    columns = (BarColumn(), MofNCompleteColumn(), TextColumn("{task.description}", markup=False))
    bar = Progress(
        *columns,
        console=Console(stderr=True),
        transient=True,
        disable=not sys.stderr.isatty(),
        redirect_stdout=False,
    )
    task = bar.add_task("opening photos", total=None)

    def show_progress(done: int, total: int, name: str) -> None:
        bar.update(task, completed=done, total=total, description=name)

    known = catalogue.tag_of_photo if catalogue else lambda sha256: None
    with (
        bar,
        closing(
            read_all(paths, settings, pairs_file=pairs, on_progress=show_progress, tag_of_photo=known)
        ) as outcomes,
    ):
        for outcome in outcomes:
            bar.stop()  # what is printed now must not run into the bar
            if isinstance(outcome, PhotoError):
                tally.failed(outcome)
            elif isinstance(outcome, Passed):
                say(f"{outcome.name} passed over: {outcome.why}.")
            else:
                yield outcome
            bar.start()
