"""Words into lines in reading order, and several readings of one side into the texts that fields read.

Layout is ambiguous: two boxes side by side may be a label and its value, or two columns. So nothing
is decided here; a side gives one text in `rows` order and one in `columns` order, for each reading
and for their merger, and the fields that a text holds are voted on later.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence, Set
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from statistics import median

from ocr_tags.record import Box, LineSpan, Side, TagText, Word, WordSpan

WIDE_GAP = 1.3
"""A gap of more letter heights than this parts a line in two (columns, leader dots)."""
MERGED = "merged"


@dataclass(frozen=True)
class Line:
    """A level run of words of one reading, with no wide gap inside; never empty."""

    words: tuple[Word, ...]

    @cached_property
    def place(self) -> Box:
        return Box.around(word.place for word in self.words)

    @cached_property
    def text(self) -> str:
        return " ".join(word.text for word in self.words)

    @cached_property
    def height(self) -> float:
        """Letter height in picture pixels: the usual height of the words, short marks left out."""
        tall = [word.place.h for word in self.words if any(c.isalnum() for c in word.text)]
        return float(median(tall or [word.place.h for word in self.words]))

    @cached_property
    def confidence(self) -> float:
        """Mean confidence of the words, weighted by their length."""
        letters = sum(len(word.text) for word in self.words)
        return sum(word.confidence * len(word.text) for word in self.words) / max(letters, 1)

    @cached_property
    def weight(self) -> float:
        """How much was read here, and how surely: decides between readings of one place."""
        return sum((word.confidence**2) * sum(c.isalnum() for c in word.text) for word in self.words)


def split_wide(words: Sequence[Word]) -> Iterator[Line]:
    """The words of one printed line, parted where a column gap stands between them."""
    ordered = sorted(words, key=lambda word: word.place.x)
    if not ordered:
        return
    height = Line(tuple(ordered)).height
    run = [ordered[0]]
    for word in ordered[1:]:
        if word.place.x - run[-1].place.right > WIDE_GAP * max(height, 1.0):
            yield Line(tuple(run))
            run = []
        run.append(word)
    yield Line(tuple(run))


IsLabel = Callable[[str], bool]


def no_label(line: str) -> bool:
    return False


def side_texts(
    readings: dict[str, list[Line]], side: Side, height: int, is_label: IsLabel = no_label
) -> list[TagText]:
    """Every text of one side: the merged reading first, then each reading, in both orders.

    `readings` are lines by reader; `height` is that of the picture they were read in, in pixels;
    `is_label` tells labels from values, for tags that print the label under its value.
    """
    merged = merge([line for lines in readings.values() for line in lines])
    ordered = {MERGED: merged, **readings} if len(readings) > 1 else readings
    texts: list[TagText] = []
    for reader, lines in ordered.items():
        for arranged in (rows(lines, is_label), columns(lines, is_label)):
            text = tag_text(arranged, side, height, reader)
            if text.string and all(text.string != other.string for other in texts if other.reader == reader):
                texts.append(text)
    return texts


def merge(lines: Iterable[Line]) -> list[Line]:
    """One reading out of several: of lines in one place the best stays, and what it lacks is added."""
    kept: list[Line] = []
    for line in sorted(lines, key=lambda line: -line.weight):
        new = tuple(word for word in line.words if not _covered(word, kept))
        if len(new) == len(line.words):
            kept.append(line)
        elif new:
            kept.extend(part for part in split_wide(new) if _worth_adding(part))
    return kept


def _covered(word: Word, lines: Iterable[Line]) -> bool:
    return any(
        _shared(word.place, line.place) > 0.3 * word.place.w * word.place.h
        and any(_shared(word.place, other.place) > 0.2 * word.place.w * word.place.h for other in line.words)
        for line in lines
    )


def _worth_adding(line: Line) -> bool:
    return line.confidence > 0.5 and any(c.isalnum() for c in line.text)


def _shared(a: Box, b: Box) -> int:
    return max(0, min(a.right, b.right) - max(a.x, b.x)) * max(0, min(a.bottom, b.bottom) - max(a.y, b.y))


# ---------------------------------------------------------------- reading order

Arranged = list[tuple[str, Line]]
"""Lines in reading order, each with the separator that stands before it."""


def rows(lines: Sequence[Line], is_label: IsLabel = no_label) -> Arranged:
    """Level lines side by side are joined by a tab; a line right below a whole row follows by a newline.

    On a side whose labels stand over their values, a label and what is beside it have no tie.
    """
    below = _line_below(lines)
    over = _label_ties(lines, is_label)[1]
    arranged: Arranged = []
    previous: list[Line] = []
    for row in _level_rows(lines):
        follows = bool(previous) and len(row) == 1 and below.get(id(previous[-1])) is row[0]
        separator = "\n" if follows else "\n\n"
        for line in row:
            arranged.append((separator, line))
            separator = "\n\n" if id(line) in over else "\t"
        previous = row
    return arranged


def _label_ties(lines: Sequence[Line], is_label: IsLabel) -> tuple[set[int], set[int]]:
    """Labels (by id) whose value is beside them, and labels whose value is below: one of the two is empty.

    A tag is printed one way or the other, so the commoner tie on a side speaks for all its labels.
    """
    labels = {id(line) for line in lines if is_label(line.text)}
    below = _line_below(lines)
    beside = {
        id(left)
        for row in _level_rows(lines)
        for left, right in pairwise(row)
        if id(left) in labels and id(right) not in labels
    }
    over = {label for label in labels if label in below and id(below[label]) not in labels}
    return (beside, set()) if len(beside) > len(over) else (set(), over)


def columns(lines: Sequence[Line], is_label: IsLabel = no_label) -> Arranged:
    """Lines that stand right below one another come together, newline after newline.

    Where a side prints its labels under their values (a picture, the value, then in small letters what
    it is), each such column comes with its label first: readers know one order only.
    """
    chains = _apart(_chains(lines, _label_ties(lines, is_label)[0]), is_label)
    under = [chain for chain in chains if _labelled_below(chain, is_label)]
    arranged: Arranged = []
    for chain in chains:
        turned = [chain[-1], *chain[:-1]] if len(under) > 1 and chain in under else chain
        arranged.extend(("\n" if number else "\n\n", line) for number, line in enumerate(turned))
    return arranged


def _chains(lines: Sequence[Line], ends: Set[int]) -> list[list[Line]]:
    """Each column of lines right below one another, from the top left; a line in `ends` (ids) ends one."""
    below = {upper: lower for upper, lower in _line_below(lines).items() if upper not in ends}
    followers = {id(line) for line in below.values()}
    chains: list[list[Line]] = []
    for line in sorted(lines, key=lambda line: (line.place.y, line.place.x)):
        if id(line) in followers:
            continue
        chain = [line]
        while id(chain[-1]) in below:
            chain.append(below[id(chain[-1])])
        chains.append(chain)
    return chains


def _apart(chains: list[list[Line]], is_label: IsLabel) -> list[list[Line]]:
    """Columns of value, label, value, label as pairs, if columns end in a label and begin with none."""
    orders = ["".join("L" if is_label(line.text) else "V" for line in chain) for chain in chains]
    if sum(order.endswith("VL") for order in orders) <= sum(order.startswith("LV") for order in orders):
        return chains
    parts: list[list[Line]] = []
    for chain, order in zip(chains, orders, strict=True):
        pairs = re.fullmatch("V*?((?:VL){2,})V*", order)
        start, end = pairs.span(1) if pairs else (0, 0)
        parts += [chain[:start], *(chain[at : at + 2] for at in range(start, end, 2)), chain[end:]]
    return [part for part in parts if part]


def _labelled_below(chain: Sequence[Line], is_label: IsLabel) -> bool:
    return len(chain) > 1 and is_label(chain[-1].text) and not any(is_label(line.text) for line in chain[:-1])


def _level_rows(lines: Sequence[Line]) -> list[list[Line]]:
    found: list[list[Line]] = []
    for line in sorted(lines, key=lambda line: line.place.y + line.place.h / 2):
        for row in found[-4:]:
            if all(_level(line, other) for other in row):
                row.append(line)
                break
        else:
            found.append([line])
    for row in found:
        row.sort(key=lambda line: line.place.x)
    return found


def _level(a: Line, b: Line) -> bool:
    """Whether two lines stand side by side: middles level, letters of a like size, no overlap."""
    small, large = sorted((a.height, b.height))
    offset = abs((a.place.y + a.place.bottom) - (b.place.y + b.place.bottom)) / 2
    apart = min(a.place.right, b.place.right) - max(a.place.x, b.place.x) <= 0.5 * small
    return apart and offset < 0.45 * small + 0.1 * large and large < 2.2 * small


def _line_below(lines: Sequence[Line]) -> dict[int, Line]:
    """For each line (by id) the one right below it in its column, where each is the other's nearest."""
    down: dict[int, Line] = {}
    up: dict[int, Line] = {}
    for line in lines:
        nearest = min((other for other in lines if _under(line, other)), key=_top, default=None)
        if nearest is not None:
            down[id(line)] = nearest
            rival = up.get(id(nearest))
            if rival is None or line.place.bottom > rival.place.bottom:
                up[id(nearest)] = line
    return {id(line): down[id(line)] for line in lines if id(line) in down and up[id(down[id(line)])] is line}


def _top(line: Line) -> int:
    return line.place.y


def _under(upper: Line, lower: Line) -> bool:
    overlap = min(upper.place.right, lower.place.right) - max(upper.place.x, lower.place.x)
    height = max(upper.height, lower.height)
    gap = lower.place.y - upper.place.bottom
    return (
        upper is not lower
        and overlap > 0.3 * min(upper.place.w, lower.place.w)
        and -0.5 * min(upper.height, lower.height) < gap < 1.5 * height
        and lower.place.y > upper.place.y + 0.4 * min(upper.height, lower.height)
        and height < 2.6 * min(upper.height, lower.height)
    )


def tag_text(arranged: Arranged, side: Side, height: int, reader: str) -> TagText:
    """Lines in reading order as the text that field readers get, with the way back to the words."""
    usual = _usual_height([line for _, line in arranged])
    string = ""
    line_spans: list[LineSpan] = []
    word_spans: list[WordSpan] = []
    for separator, line in arranged:
        string += separator if string else ""
        start = len(string)
        for number, word in enumerate(line.words):
            string += " " if number else ""
            word_spans.append(WordSpan(len(string), len(string) + len(word.text), word))
            string += word.text
        middle = (line.place.y + line.place.h / 2) / max(height, 1)
        line_spans.append(LineSpan(start, len(string), line.height / usual, middle))
    return TagText(string, side, tuple(line_spans), tuple(word_spans), reader)


def _usual_height(lines: Sequence[Line]) -> float:
    """The letter height that most letters on this side have."""
    heights = sorted((line.height, len(line.text)) for line in lines)
    half = sum(letters for _, letters in heights) / 2
    seen = 0
    for line_height, letters in heights:
        seen += letters
        if seen >= half:
            return max(line_height, 1.0)
    return 1.0
