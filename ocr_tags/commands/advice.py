"""Cautions as a person reads them in a terminal: few, the weightiest first, each with what to do instead."""

from __future__ import annotations

from collections.abc import Sequence

from rich.table import Table
from rich.text import Text

from ocr_tags.record import Caution, Weight

MARKS: dict[Weight, tuple[str, str]] = {
    "harm": ("!!", "bold red"),
    "loss": ("!", "bold yellow"),
    "note": ("–", "dim"),
}
MOST_NOTES = 3
"""Notes shown unless all are asked for; what is at stake for people, animals and plants is always shown."""


def advice_of(cautions: Sequence[Caution], *, every: bool) -> Table:
    """One row a caution: a mark for its weight, then why to be careful and what to do.

    With `every`, all notes and what each caution rests on.
    """
    table = Table.grid(padding=(0, 1))
    table.add_column(justify="right", min_width=4)
    table.add_column()
    notes = 0
    for caution in cautions:
        notes += caution.weight == "note"
        if every or caution.weight != "note" or notes <= MOST_NOTES:
            mark, style = MARKS[caution.weight]
            table.add_row(Text(mark, style), _words(caution, every))
    if not every and notes > MOST_NOTES:
        more = notes - MOST_NOTES
        table.add_row("", Text(f"{more} more {'note' if more == 1 else 'notes'}: --all-notes", "dim"))
    return table


def _words(caution: Caution, every: bool) -> Text:
    style = "bold" if caution.weight == "harm" else ""
    words = Text.assemble((caution.message, style), " ", caution.advice)
    words.append("\n" if caution.swatches else "")
    for swatch in caution.swatches:
        words.append("███", swatch.hex)
        words.append(f" {swatch.name}  ")
    if every:
        words.append(f"\n{caution.code}; {caution.basis}", "dim")
    return words
