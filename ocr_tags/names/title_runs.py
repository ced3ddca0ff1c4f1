"""Lines that are one thing together: a name broken over title lines, a list of names that goes on below."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from ocr_tags.names import lexicon
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.titles import Line, is_qualifier
from ocr_tags.patterns import later
from ocr_tags.record import TagText

NEARLY_TITLE = 1.2
"""Of the usual letters, how large those of one line of a known name are, of which another is a title."""
_HYPHEN = later(r"[^\W\d_]{2}-$")
_LIST = later(r"[/·∙•|]")


def with_wrapped(string: str, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """The lines again, a list of names that goes on below in small letters, or after its stroke, made one.

    At commas names are listed as care is: there the line below must be a name by itself, the end of the last.
    """
    found: list[Line] = []
    for number, line in enumerate(lines):
        before = found[-1] if found and string[found[-1].end : line.start] == "\n" else None
        ends_name = line.text[:1].islower() and lexicon.is_common_name(line.text.strip(" ."))
        if before and ends_name and re.search(r", [a-z-]+$", before.text, re.I):
            found[-1] = replace(before, end=line.end, text=f"{before.text} {line.text}")
            continue
        if before and _is_hyphened(before.text, line.text):
            found[-1] = replace(before, end=line.end, text=f"{before.text} {line.text}")
            continue
        last = found[-1] if found and _LIST.search(lines[number - 1].text) else None
        if (
            last
            and _LIST.search(last.text)
            and string[last.end : line.start] == "\n"
            and ":" not in last.text
        ):
            open_ended = last.text.rstrip()[-1:] in ("/", "·", "∙", "•", "|")
            if (open_ended or line.text[:1].islower()) and 0.8 < line.size / last.size < 1.25:
                found[-1] = replace(last, end=line.end, text=f"{last.text} {line.text}")
                continue
        found.append(line)
    return tuple(found)


def _is_hyphened(above: str, below: str) -> bool:
    """Whether a hyphen at its end ties a line to the one below, both a plant's name: Steppen- / Salbei."""
    whole = f"{above} {below}"
    tied = _HYPHEN.search(above) and below[:1].isalpha() and len(whole.split()) < 4
    return bool(tied and (genera_called(whole) or lexicon.is_common_name(whole)))


def runs(tag: TagText, lines: tuple[Line, ...]) -> Iterator[tuple[Line, ...]]:
    """Title lines of about one size that stand together: a name broken over lines, longest runs first."""
    for length in (4, 3, 2):
        for first in range(len(lines) - length + 1):
            run = lines[first : first + length]
            sizes = [line.size for line in run]
            gaps = [tag.string[a.end : b.start] for a, b in pairwise(run)]
            together = all(gap in ("\n", "\t", " ") for gap in gaps)
            # Short words without tall letters are measured worst: "Common" above "Foxglove".
            whole = lexicon.is_trade_name(" ".join(line.text.strip() for line in run))
            spread = 2.0 if whole or is_qualifier(run[0].text.split()) else 1.45
            titles = [line.title or (whole and line.size > NEARLY_TITLE) for line in run]
            alike = max(sizes) <= spread * min(sizes)
            if alike and together and all(titles) and any(line.title for line in run):
                yield run
