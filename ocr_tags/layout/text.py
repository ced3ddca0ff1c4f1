"""Several readings of one side as the texts that fields read.

Layout is ambiguous: two boxes side by side may be a label and its value, or two columns. So nothing
is decided here; a side gives one text in `rows` order and one in `columns` order, for each reading
and for their merger, and the fields that a text holds are voted on later.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ocr_tags.layout.bullets import as_list, no_rest
from ocr_tags.layout.cells import stacked, table
from ocr_tags.layout.joined import set_apart
from ocr_tags.layout.lines import Line, split_wide
from ocr_tags.layout.mended import mended
from ocr_tags.layout.reading_order import Arranged, IsLabel, columns, no_label, rows
from ocr_tags.layout.scales import without_scales
from ocr_tags.record import Box, LineSpan, Side, TagText, Word, WordSpan

MERGED = "merged"
MARKS = "marks"
"""How the name of a reading ends that shows drawn marks before the letters they belong to."""
BARS = "barcode"
"""The reading that holds the numbers of a photo's bars, and no print."""
SURE_LINE, GHOST_LINE, GHOST_SHARE = 0.9, 0.7, 0.15
"""A line less sure than the second that lies by this share on one surer than the first is a ghost: the lower
half of one line and the upper half of the next, read as a line between them."""


def side_texts(
    readings: dict[str, list[Line]], side: Side, height: int, is_label: IsLabel = no_label
) -> list[TagText]:
    """Every text of one side: the merged reading first, then each reading, in both orders.

    `readings` are lines by reader; `height` is that of the picture they were read in, in pixels;
    `is_label` tells labels from values, for tags that print the label under its value.
    """
    readings = {
        reader: set_apart(
            mended(as_list(without_scales(without_ghosts(lines))), is_label), _usual_height(lines), is_label
        )
        for reader, lines in readings.items()
    }
    merged = merge([line for lines in readings.values() for line in lines])
    ordered = {MERGED: merged, **readings} if len(readings) > 1 else readings
    texts: list[TagText] = []
    labels = {reader: no_rest(lines, is_label) for reader, lines in ordered.items()}
    told = {pairs[1] for reader, lines in ordered.items() if (pairs := stacked(lines, labels[reader]))}
    elsewhere = next(iter(told)) if len(told) == 1 else None  # a side is printed in one way
    for reader, lines in ordered.items():
        label = labels[reader]
        down, under = stacked(lines, label, elsewhere) or (columns(lines, label), False)
        for arranged in (table(lines, label) or rows(lines, label, under), down):
            text = tag_text(arranged, side, height, reader)
            if text.string and all(text.string != other.string for other in texts if other.reader == reader):
                texts.append(text)
    return texts


def without_ghosts(lines: Sequence[Line]) -> list[Line]:
    """The lines but those read from the edges of a line that the same reader read well beside them."""
    sure = [line for line in lines if line.confidence >= SURE_LINE]
    return [
        line
        for line in lines
        if line.confidence >= GHOST_LINE
        or not any(line.place.shared(other.place) > GHOST_SHARE * _area(line.place) for other in sure)
    ]


def _area(box: Box) -> int:
    return box.w * box.h


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
        word.place.shared(line.place) > 0.3 * word.place.w * word.place.h
        and any(word.place.shared(other.place) > 0.2 * word.place.w * word.place.h for other in line.words)
        for line in lines
    )


def _worth_adding(line: Line) -> bool:
    return line.confidence > 0.5 and any(c.isalnum() for c in line.text)


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
