"""The lengths and labels of one text, and those in columns: a row of labels over a row of lengths."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import groupby, pairwise

from ocr_tags.fields.sizes.clauses import OTHER_TONGUE
from ocr_tags.fields.sizes.words import Label, find_labels
from ocr_tags.measures.printed import Measure, find_lengths, parse_length
from ocr_tags.patterns import later

_UNIT_IN_LABEL = later(
    r" ?(?:[(\[] ?(?:in )?|in )(?P<unit>inches|in|cm|centimet(?:re|er)s|ft|feet|m|"
    r"po)\.?[)\]]? ?[:.]? ?[\t\n]?"
    r"(?P<figures>\d[\d ./½¼¾–-]*[\d½¼¾]|\d|[½¼¾])(?=\s*(?:$|[A-Z,;\n\t]))"
)

_UNIT_LATER = later(
    r"[ :.]{0,3}(?P<figures>\d{1,3}(?: ?[-–] ?\d{1,3})?)(?= ?[x×/,]? ?(?:W|B|L|S|width|spread)[ :.]{1,3}"
    r"\d{1,3}(?: ?[-–] ?\d{1,3})? ?(?P<unit>cm|in|ft)\b)"
)
"""H 60 x W 45 cm: the unit stands once, at the end."""
_OTHER_TONGUE = later(rf"^{OTHER_TONGUE}(?=\s|$)", re.I)
_BETWEEN_CELLS = later(r"\t| [/|] ")
_LETTERS_ONLY = later(r"[^\d\t\n]+")


@dataclass(frozen=True, slots=True)
class Size:
    kind: str
    measure: Measure
    certainty: float


@dataclass
class Measured:
    """One text being read: its lengths and labels in order, and which labels are spent."""

    text: str
    measures: list[Measure] = field(init=False)
    labels: list[Label] = field(init=False)
    spent: set[Label] = field(default_factory=set)
    settled: set[int] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.measures = list(find_lengths(self.text))
        self.labels = [self._with_unit(label) for label in find_labels(self.text)]
        self.measures.sort(key=lambda measure: measure.span)

    def _with_unit(self, label: Label) -> Label:
        """ "Height (in): 12-18": the unit is taken with the label, and the bare figures are a length."""
        match = _UNIT_IN_LABEL.match(self.text, label.end) or _UNIT_LATER.match(self.text, label.end)
        measure = parse_length(f"{match['figures']} {match['unit']}") if match else None
        if match is None or measure is None:
            return label
        self.measures.append(replace(measure, span=match.span("figures"), certainty=measure.certainty * 0.95))
        return replace(label, end=match.start("figures"))

    def label_before(self, start: int) -> Label | None:
        return max((x for x in self.labels if x.end <= start), key=lambda x: x.end, default=None)

    def label_after(self, end: int) -> Label | None:
        return min((x for x in self.labels if x.start >= end), key=lambda x: x.start, default=None)

    def between(self, start: int, end: int) -> str:
        return self.text[start:end]


def _rows(text: str) -> Iterator[list[tuple[int, int]]]:
    """The rows of each block of text that no empty line parts."""
    start = 0
    for block in text.split("\n\n"):
        rows = []
        for row in block.split("\n"):
            rows.append((start, start + len(row)))
            start += len(row) + 1
        start += 1
        yield rows


def _only(tag: Measured, row: tuple[int, int], more: bool = False) -> tuple[list[Label], list[int]]:
    """The labels, or the places of the lengths, a row consists of; both empty when it has more than that.

    With `more` a label may have words of its own before it: "GARDEN HEIGHT".
    """
    labels = [x for x in tag.labels if row[0] <= x.start < row[1] and not x.weak]
    places = [n for n, m in enumerate(tag.measures) if row[0] <= m.span[0] < row[1]]
    if (
        more
        and len(labels) == 1
        and not places
        and _LETTERS_ONLY.fullmatch(tag.text, row[0], labels[0].start)
    ):
        row = (labels[0].start, row[1])
    rest = list(tag.text[row[0] : row[1]])
    for start, end in [(x.start, x.end) for x in labels] + [tag.measures[n].span for n in places]:
        rest[start - row[0] : end - row[0]] = " " * (min(end, row[1]) - start)
    if labels and not places:
        rest = list(_OTHER_TONGUE.sub("", "".join(rest)))
    if any(sign.isalnum() for sign in rest) or (labels and places):
        return [], []
    return labels, places


def table(tag: Measured) -> Iterator[Size]:
    """A row of labels over a row of as many lengths."""
    for rows in _rows(tag.text):
        for upper, lower in pairwise(rows):
            labels, places = _only(tag, upper)[0], _only(tag, lower)[1]
            if len(labels) < 2:
                continue
            tag.spent.update(labels)
            if len(labels) != len(places) or any(len(x.kinds) > 1 for x in labels):
                continue
            tag.settled.update(places)
            for label, place in zip(labels, places, strict=True):
                measure = tag.measures[place]
                if label.kinds != ("none",):
                    yield Size(label.kinds[0], measure, 0.7 * label.certainty * measure.certainty)


def _cells(text: str, row: tuple[int, int]) -> list[tuple[int, int]]:
    """The cells of a row that column gaps part, or at least two strokes; one may part two languages."""
    gaps = [match.span() for match in _BETWEEN_CELLS.finditer(text, *row)]
    if len(gaps) == 1 and text[slice(*gaps[0])] != "\t":
        gaps = []
    return list(
        zip([row[0], *(end for _, end in gaps)], [*(start for start, _ in gaps), row[1]], strict=True)
    )


def cell_around(tag: Measured, measure: Measure) -> tuple[int, int]:
    """The cell a length stands in, without what stands in brackets; a line end within a length ends none."""
    inside = {at for m in tag.measures for at in range(*m.span)}
    ends = [at for at, sign in enumerate(tag.text) if sign in "\t\n(" and at not in inside]
    start = max((at + 1 for at in ends if at < measure.span[0]), default=0)
    return start, min((at for at in ends if at >= measure.span[1]), default=len(tag.text))


def mixed_table(tag: Measured) -> Iterator[Size]:
    """A row of labels of any kind over a row of as many cells: "Height, Spread, Zone"; or right under it."""
    for rows in _rows(tag.text):
        count = [len(_cells(tag.text, row)) for row in rows]
        below = {at for first, last in _runs(count) for at in _labels_below(tag, rows[first:last], first)}
        for at in range(len(rows) - 1):
            if at + 1 in below:
                yield from _labelled_cells(tag, rows[at + 1], rows[at], 0.7)
            elif at not in below:
                yield from _labelled_cells(tag, rows[at], rows[at + 1], 0.7)
        for at in range(len(rows) - 1):
            neighbours = [*count[max(0, at - 1) : at], *count[at + 2 : at + 3]]
            if count[at] not in neighbours:  # else the labels may belong to the row below them
                yield from _labelled_cells(tag, rows[at + 1], rows[at], 0.6)


def _runs(count: list[int]) -> Iterator[tuple[int, int]]:
    """Where rows of as many cells begin and end, of three cells at least."""
    at = 0
    for cells, run in groupby(count):
        first, at = at, at + len(list(run))
        if cells > 2:
            yield first, at


def _labels_below(tag: Measured, rows: list[tuple[int, int]], first: int) -> list[int]:
    """The rows of labels of a table whose top row holds figures and each second row words only."""
    words = [all(_LETTERS_ONLY.fullmatch(tag.text, *cell) for cell in _cells(tag.text, row)) for row in rows]
    paired = len(rows) > 2 and len(rows) % 2 == 0 and not words[0] and all(words[1::2])
    return list(range(first + 1, first + len(rows), 2)) if paired else []


def _labelled_cells(
    tag: Measured, labels_row: tuple[int, int], values_row: tuple[int, int], sure: float
) -> Iterator[Size]:
    heads, values = _cells(tag.text, labels_row), _cells(tag.text, values_row)
    if len(heads) < 2 or len(heads) != len(values):
        return
    if not all(_LETTERS_ONLY.fullmatch(tag.text, *head) for head in heads):
        return
    named = [(_whole_label(tag.text[slice(*head)]), value) for head, value in zip(heads, values, strict=True)]
    kinds = [label.kinds[0] for label, _ in named if label]
    if len(set(kinds)) < len(kinds):
        return  # one label in several languages
    for label, value in named:
        places = _only(tag, value)[1]
        if label and len(places) == 1 and places[0] not in tag.settled:
            tag.spent.update(x for x in tag.labels if labels_row[0] <= x.start < labels_row[1])
            tag.settled.update(places)
            measure = tag.measures[places[0]]
            if label.kinds != ("none",):
                yield Size(label.kinds[0], measure, sure * label.certainty * measure.certainty)


def _whole_label(text: str) -> Label | None:
    """The label a cell consists of, if it names one thing."""
    labels = [label for label in find_labels(f"{text}\t") if not label.weak and len(label.kinds) == 1]
    one = len(labels) == 1 and not any(map(str.isalnum, text[: labels[0].start] + text[labels[0].end :]))
    return labels[0] if one else None


def values_above(tag: Measured) -> Iterator[Size]:
    """A column of length, label, length, label; sure only amid other rows that leave none over."""
    blocks = [
        [(row, _only(tag, row, more=True)) for row in rows if row[0] < row[1]] for rows in _rows(tag.text)
    ]
    column = [part for block in blocks for _, part in block]
    order = _order(column)
    for run in _VALUES_ABOVE.finditer(order):
        if len(run[0]) > 2 and run.start() and run.end() < len(order):
            yield from _column(tag, column[run.start() : run.end()], 0.7)
    for block in blocks:
        parts = [part for _, part in block]
        if _VALUES_ABOVE.fullmatch(_order(parts)) and not tag.settled & {n for _, ns in parts for n in ns}:
            yield from _column(tag, parts, 0.5)


def _order(parts: list[tuple[list[Label], list[int]]]) -> str:
    """L for a row that is a label, M for one that is a length."""
    return "".join("L" if len(labels) == 1 else "M" if len(places) == 1 else "-" for labels, places in parts)


_VALUES_ABOVE = later(r"(?<![LM])(?:ML)+(?![LM])")


def _column(tag: Measured, parts: list[tuple[list[Label], list[int]]], sure: float) -> Iterator[Size]:
    for (_, (place,)), ((label,), _) in zip(parts[::2], parts[1::2], strict=True):
        tag.spent.add(label)
        tag.settled.add(place)
        measure = tag.measures[place]
        for kind in label.kinds if "none" not in label.kinds else ():
            yield Size(kind, measure, sure * label.certainty * measure.certainty)


def values_left(tag: Measured) -> Iterator[Size]:
    """A table whose labels stand behind their values, row by row: "40-60 cm, HEIGHT" over "45 cm, WIDTH"."""
    if _LABEL_LEFT.search(tag.text):
        return
    told = []
    for row in (row for rows in _rows(tag.text) for row in rows):
        value, parted, name = tag.text[slice(*row)].partition("\t")
        places, label = _only(tag, (row[0], row[0] + len(value)))[1], parted and _whole_label(name)
        if label and len(places) == 1:
            told.append((places[0], label, row))
    for place, label, row in told if len(told) > 1 else ():
        tag.settled.add(place)
        tag.spent.update(x for x in tag.labels if row[0] <= x.start < row[1])
        measure = tag.measures[place]
        if label.kinds != ("none",):
            yield Size(label.kinds[0], measure, 0.85 * label.certainty * measure.certainty)


_LABEL_LEFT = later(r"(?:^|\n)[^\W\d_][^\n\t\d]*\t[^\n\t]*\d")
"""A row of label and figure: labels stand first on this tag."""
