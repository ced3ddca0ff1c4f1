"""What the cells around a kind word tell: labels above and below, offers of a nursery, kinds of rose."""

from __future__ import annotations

import re
from collections.abc import Sequence

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import Hit
from ocr_tags.names import lexicon

_AND = re.compile(r" ?(?:&|\+|and) ?")


def among_labels(text: str, start: int, end: int) -> bool:
    """Whether a cell stands in a column of labels: one right above it and one right below."""
    above, below = text[:start].rstrip("\n"), text[end:].lstrip("\n")
    return is_label(above.rpartition("\n")[2]) and is_label(below.partition("\n")[0])


def is_kind_of_rose(folded: str, start: int, end: int) -> bool:
    """Whether "Shrub rose", or "Rose" beside a name like Beach Rose, is all a cell says."""
    cell = folded[start:end].strip(" •·*-.|")
    named = re.search(r"(?<!shrub) rose[ \W]*$", folded, re.M)
    told = re.match(r"shrub rose(?:$|[,.]| (?:up )?to \d| (?:with|that|which|reaching|growing)\b)", cell)
    firsts = (line.split()[0] for line in folded.split("\n") if line.strip())
    other = any(first != "rosa" and lexicon.is_trade_genus(first) for first in firsts)  # then it is a colour
    return told is not None or (cell == "rose" and named is not None and not other)


def labels_in_capitals(text: str) -> int:
    """How many lines are labels in capitals, as stand over their values."""
    return sum(line.isupper() and is_label(line) for line in re.split(r"[\t\n]+", text))


def is_offer(folded: str, inside: Sequence[Hit[str]], hits: Sequence[Hit[str]]) -> bool:
    """Whether a line tells what a nursery grows: "Trees • Shrubs • Perennials", or "Shrubs & Climbers"
    where the tag says again which of the two this is."""
    kinds = {hit.value for hit in inside}
    paired = len(kinds) == 2 and _AND.fullmatch(folded, inside[0].end, inside[-1].start)
    again = paired and any(hit.value in kinds and hit not in inside for hit in hits)
    return (len(kinds) > 2 or bool(again)) and all(
        folded[hit.start : hit.end].endswith("s") for hit in inside
    )
