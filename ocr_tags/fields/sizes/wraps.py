"""Sizes whose label a narrow column broke in two, so that the length stands within it: "Mature 4 ft" over
"Height". The words of the label, put together again, say what the length is."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.fields.sizes.words import FLOWER_TOO, Label, find_labels
from ocr_tags.patterns import later

_HEAD = r"(?P<head>[^\W\d_]{3,}(?: (?:in|and|at|de|des|du|entre|between))?)"
_TAIL = r"(?P<tail>[^\W\d_]{3,})"
_VALUE = r"(?P<value>[^\n\t]*\d[^\n\t]*)"
_TAIL_FIRST = later(rf"(?:^|(?<=\n)){_TAIL}\n{_HEAD} {_VALUE}(?=\n|$)")
"""What the order of columns makes of it: a label under its value is put first."""
_NOT_OF_NEXT = r"(?=\n|$)(?!\n{1,2}[^\n]{0,8}\d)"
"""Else the second part is the label of what is below it."""
_TAIL_BELOW = later(
    rf"(?:^|(?<=\n)){_HEAD}[\t ]{_VALUE}(?:\t[^\n\t]*\d[^\n\t]*)?\n{{1,2}}"
    rf"(?:{_TAIL}{_NOT_OF_NEXT}|(?P<small>[a-z]{{3,}})(?=\n|$))"
)
_ROWS = later(
    r"(?:^|(?<=\n))(?P<upper>[^\n]+\t[^\n]+)\n{1,2}(?P<lower>[^\W\d_]{3,}(?:\t[^\W\d_]{3,})+)" + _NOT_OF_NEXT
)
_CELL = later(rf"{_HEAD} {_VALUE}")
_SURE = 0.8


@dataclass(frozen=True, slots=True)
class _Part:
    """A label in two, and where its length and all of it stand."""

    head: str
    tail: str
    place: int
    span: tuple[int, int]

    def label(self, flowers: bool) -> Label | None:
        """The label the two make, if they make one; `flowers` when the tag tells their height as well."""
        phrase = f"{self.head} {self.tail}"
        beside = "\nFlower height" if flowers else ""
        labels = [label for label in find_labels(phrase + beside) if label.start < len(phrase)]
        if len(labels) != 1 or labels[0].weak or len(labels[0].kinds) != 1:
            return None
        # a small letter goes on with what is above it, whatever that says: "Habit" and "height"
        goes_on = self.tail.islower() and labels[0].end == len(phrase)
        return labels[0] if goes_on or is_label(phrase) else None


def wrapped(tag: Measured) -> Iterator[Size]:
    """Every length between the two parts of its label; never quite sure."""
    parts = list(_parts(tag))
    flowers = bool(FLOWER_TOO.search("\n".join([tag.text, *(f"{x.head} {x.tail}" for x in parts)])))
    for part in parts:
        label, measure = part.label(flowers), tag.measures[part.place]
        if label is None or part.place in tag.settled:
            continue
        tag.settled.add(part.place)
        tag.spent.update(x for x in tag.labels if part.span[0] <= x.start < part.span[1])
        if label.kinds != ("none",):
            yield Size(label.kinds[0], measure, _SURE * label.certainty * measure.certainty)


def _parts(tag: Measured) -> Iterator[_Part]:
    for match in _TAIL_FIRST.finditer(tag.text):
        yield from _part(tag, match, match["tail"], match.span())
    for match in _TAIL_BELOW.finditer(tag.text):
        yield from _part(tag, match, match["tail"] or match["small"], match.span())
    for match in _ROWS.finditer(tag.text):
        tails, start = match["lower"].split("\t"), match.start("upper")
        cells = match["upper"].split("\t")
        for tail, cell in zip(tails, cells, strict=True) if len(tails) == len(cells) else ():
            if whole := _CELL.fullmatch(tag.text, start, start + len(cell)):
                yield from _part(tag, whole, tail, match.span())
            start += len(cell) + 1


def _part(tag: Measured, match: re.Match[str], tail: str, span: tuple[int, int]) -> Iterator[_Part]:
    """The part whose value is a length and nothing else."""
    for place, measure in enumerate(tag.measures):
        first, last = measure.span
        # "Distance de" over a figure: its last word was taken for one before a length
        if last == match.end("value") and match.start("head") < first <= match.start("value"):
            yield _Part(match["head"], tail, place, span)
