"""What a mixed planting is made of: lines that count plants, "2 Petunia", name no plant of the tag's own."""

from __future__ import annotations

from collections.abc import Sequence

from ocr_tags.names import lexicon
from ocr_tags.names.titles import Line
from ocr_tags.patterns import later

_COUNTED = later(r"\W*[1-9](?: ?[x×])? (?P<name>[A-ZÀ-Þ][^\W\d_]+)(?P<second> [^\W\d_]+)?")
FEWEST = 2
"""One line may as well be a pack: 1 Hosta."""


def without_parts(lines: Sequence[Line]) -> tuple[Line, ...]:
    """The lines but those that count the plants of a mixture, where there are several."""
    counted = [line for line in lines if _is_counted(line.text)]
    return tuple(line for line in lines if len(counted) < FEWEST or line not in counted)


def _is_counted(text: str) -> bool:
    match = _COUNTED.match(text)
    if match is None:
        return False
    name = match["name"]
    return lexicon.is_genus(name) or any(
        lexicon.plants_called(words) for words in (name, f"{name}{match['second'] or ''}")
    )
