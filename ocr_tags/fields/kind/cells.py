"""What the cells around a kind word tell: labels above and below, offers of a nursery, kinds of rose."""

from __future__ import annotations

import re
from collections.abc import Sequence

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import Hit


def among_labels(text: str, start: int, end: int) -> bool:
    """Whether a cell stands in a column of labels: one right above it and one right below."""
    above, below = text[:start].rstrip("\n"), text[end:].lstrip("\n")
    return is_label(above.rpartition("\n")[2]) and is_label(below.partition("\n")[0])


def is_kind_of_rose(folded: str, start: int, end: int) -> bool:
    """Whether "Shrub rose", or "Rose" beside a name like Beach Rose, is all a cell says."""
    cell = folded[start:end].strip(" •·*-.|")
    named = re.search(r"(?<!shrub) rose[ \W]*$", folded, re.M)
    told = re.match(r"shrub rose(?:$|[,.]| (?:up )?to \d| (?:with|that|which|reaching|growing)\b)", cell)
    return told is not None or (cell == "rose" and named is not None)


def labels_in_capitals(text: str) -> int:
    """How many lines are labels in capitals, as stand over their values."""
    return sum(line.isupper() and is_label(line) for line in re.split(r"[\t\n]+", text))


def is_offer(folded: str, inside: Sequence[Hit[str]]) -> bool:
    """Whether a line tells what a nursery grows: "Trees • Shrubs • Perennials"."""
    several = len({hit.value for hit in inside}) > 2
    return several and all(folded[hit.start : hit.end].endswith("s") for hit in inside)
