"""What was found, in the order and the words in which the command line shows it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from typer.core import TyperCommand

if TYPE_CHECKING:
    from index import Found, Hit, PlantHits

_NOT_WANTED = re.compile(r"-(?=[^\W\d_]{2})")
_MINUS = "\N{MINUS SIGN}"


class WordsWithDashes(TyperCommand):
    """A command whose words may begin with a dash, as in `find lavender -english`: no option looks so."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        return super().parse_args(
            ctx, [_NOT_WANTED.sub(_MINUS, arg, count=1) if _NOT_WANTED.match(arg) else arg for arg in args]
        )


def remarks_on(found: Found) -> Iterator[str]:
    """What is said beside the tags: that they are only near, that the name is shared, that there are more."""
    if found.note:
        yield found.note
    if found.meant:
        yield f"Did you mean {_listed(list(found.meant), 'or')}?"
    if found.shared:
        yield f"Several plants share this name: {_listed(list(found.shared), 'and')}."
    if any(plant.total > len(plant.hits) for plant in found.plants):
        yield "There are more tags than are shown; --limit 100 shows more."


def parts_of(found: Found) -> list[tuple[str, list[Hit]]]:
    """The tags under the name of their plant; all together, without a title, when each plant has just one."""
    if len(found.plants) > 1 and any(plant.total > 1 for plant in found.plants):
        return [(_title(plant), list(plant.hits)) for plant in found.plants]
    return [("", [hit for plant in found.plants for hit in plant.hits])] if found.plants else []


def _title(plant: PlantHits) -> str:
    shown = len(plant.hits)
    tags = "1 tag" if plant.total == 1 else f"{plant.total} tags"
    return f"{plant.plant}: {tags}{f', {shown} shown' if shown < plant.total else ''}"


def _listed(names: list[str], last: str) -> str:
    """The first few, as in "a, b and c"."""
    shown = names[:5] if len(names) <= 6 else [*names[:5], f"{len(names) - 5} others"]
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} {last} {shown[-1]}"
