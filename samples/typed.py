"""Tags typed by people who saw no code: how many of their facts the readers of words find.

    python samples/typed.py [FILE …]              every file of samples/typed, or these
    python samples/typed.py FILE --errors         each wrong and missing value

A file holds one tag a line: `tag`, `front`, `back`, and `fields`, the truth in the record's outside shape. A
side is lines "1.4|words": the height of the letters, then what is printed; a tab parts columns;
`{soil|any soil}` marks where a fact stands. No picture is drawn: the words are laid out as boxes and go
through everything but the eyes.
"""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from typing import Any

from score import Tally, Verdict, judge

from ocr_tags.claims.confidence import is_sure
from ocr_tags.claims.of_side import claims
from ocr_tags.fields import FIELDS
from ocr_tags.fields.labels import is_label
from ocr_tags.layout.lines import Line
from ocr_tags.layout.text import side_texts
from ocr_tags.pipeline import TITLE_SIZE, SideRead, make_record
from ocr_tags.record import Box, Photo, Side, TagText, Word
from ocr_tags.record_json import to_json

TYPED = Path(__file__).parent / "typed"
READERS = ("tesseract", "rapidocr")
LETTER, WIDE, SPACE, LEADING, MARGIN, COLUMN = 24, 0.55, 0.35, 1.45, 40, 60
"""In pixels, the height of a letter of size 1 and the margins; the rest are shares of a letter's height."""
_SIDES: tuple[Side, Side] = ("front", "back")
_OPENS = re.compile(r"\{(\w+)\|")


@dataclass(frozen=True)
class Typed:
    """A word of a typed side: its letters and box, and of each letter which mark holds it: (fact, number)."""

    text: str
    box: Box
    marks: tuple[tuple[str, int] | None, ...]


def typed_tags(file: Path) -> list[dict[str, Any]]:
    """The tags of a file."""
    return [json.loads(line) for line in file.read_text("utf-8").splitlines()]


def laid_out(side: str) -> tuple[list[list[Typed]], int]:
    """The lines of a typed side as words in boxes, and the height of the whole, in pixels."""
    rows = [_row(line) for line in _letters(side)]
    found: list[list[Typed]] = []
    y = MARGIN
    for (size, cells), columns in zip(rows, _columns(rows), strict=True):
        height = round(LETTER * size)
        for cell, x in zip(cells, columns, strict=True):
            line: list[Typed] = []
            for word in _words(cell):
                width = max(round(WIDE * height * len(word)), 4)
                box = Box(round(x), y, width, height)
                line.append(Typed("".join(c for c, _ in word), box, tuple(mark for _, mark in word)))
                x += width + SPACE * height
            if line:
                found.append(line)
        y += round(LEADING * height) if found else height
    return found, y + MARGIN


Letter = tuple[str, tuple[str, int] | None]
Row = tuple[float, list[list[Letter]]]


def _columns(rows: Sequence[Row]) -> Iterator[list[float]]:
    """Where each cell of each row begins: all second cells at one place, further ones where rows of as many
    cells follow each other."""
    first = max((_width(size, cells[0]) for size, cells in rows if len(cells) > 1), default=0.0)
    for count, block in groupby(rows, key=lambda row: len(row[1])):
        own = list(block)
        starts = [MARGIN, MARGIN + first + COLUMN][:count]
        for column in range(1, count - 1):
            starts.append(starts[-1] + max(_width(size, cells[column]) for size, cells in own) + COLUMN)
        yield from [starts] * len(own)


def _width(size: float, cell: Sequence[Letter]) -> float:
    return LETTER * WIDE * size * len(cell)


def _letters(side: str) -> Iterator[list[Letter]]:
    """Each line as letters, each with the outermost mark that holds it."""
    open_marks: list[tuple[str, int]] = []
    number = 0
    for line in side.split("\n"):
        size = re.match(r"\d+(?:\.\d+)?\|", line)
        letters: list[Letter] = [(c, None) for c in size[0]] if size else []
        at = len(letters)
        while at < len(line):
            if opened := _OPENS.match(line, at):
                open_marks.append((opened[1], number))
                number += 1
                at = opened.end()
                continue
            if line[at] == "}":
                open_marks.pop()
            else:
                letters.append((line[at], open_marks[0] if open_marks else None))
            at += 1
        yield letters


def _row(letters: Sequence[Letter]) -> Row:
    size = re.match(r"(\d+(?:\.\d+)?)\|", "".join(c for c, _ in letters))
    cells: list[list[Letter]] = [[]]
    for letter in letters[size.end() if size else 0 :]:
        if letter[0] == "\t":
            cells.append([])
        else:
            cells[-1].append(letter)
    return float(size[1]) if size else 1.0, cells


def _words(cell: Sequence[Letter]) -> Iterator[list[Letter]]:
    word: list[Letter] = []
    for letter in [*cell, (" ", None)]:
        if not letter[0].isspace():
            word.append(letter)
        elif word:
            yield word
            word = []


def texts_of(
    lines: Sequence[Sequence[Typed]], height: int, side: Side, readers: Sequence[str]
) -> list[TagText]:
    """The texts of a typed side as these readers would give it, each word surely read."""
    passes = {
        f"{reader} lines": [
            Line(tuple(Word(word.text, word.box, word.box, 0.97, reader) for word in line)) for line in lines
        ]
        for reader in readers
    }
    return side_texts(passes, side, height, is_label)


# ---------------------------------------------------------------- how well they are read


def read(tag: Mapping[str, Any]) -> dict[str, Any]:
    """The record of a typed tag in its outside shape."""
    sides = {side: _side(tag[side], side) for side in _SIDES if tag.get(side)}
    return to_json(make_record(sides.get("front"), sides.get("back")))


def _side(typed: str, side: Side) -> SideRead:
    texts = texts_of(*laid_out(typed), side, READERS)
    main = texts[0]
    shown = [(main.string[line.start : line.end], line.size) for line in main.lines]
    return SideRead(
        photo=Photo(side, side, side * 10, 1000, 1000, None, ()),
        claims={field.name: claims(texts, field) for field in FIELDS},
        lines=tuple(text for text, _ in shown),
        title=" ".join(text for text, size in shown if size >= TITLE_SIZE) or None,
        word_count=len(main.words),
        readers=READERS,
        words=tuple(span.word for span in main.words),
        blown_out=(),
    )


def verdicts(tag: Mapping[str, Any]) -> list[Verdict]:
    return list(judge(tag, read(tag)))


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("files", nargs="*", type=Path, default=sorted(TYPED.glob("*.jsonl")))
    parser.add_argument("--errors", action="store_true", help="each wrong and missing value")
    chosen = parser.parse_args()
    with ProcessPoolExecutor() as pool:
        for file in chosen.files:
            tally, sure = Tally(), Tally()
            for verdict in (each for tag in pool.map(verdicts, typed_tags(file)) for each in tag):
                tally.add(verdict)
                if verdict.confidence is not None and is_sure(verdict.status, verdict.confidence):
                    sure.add(verdict)
                if chosen.errors and verdict.outcome != "right":
                    print(f"  {verdict.tag:<24} {verdict.field:<16} {verdict.outcome:<8}", end=" ")
                    print(f"printed {verdict.truth!r}, got {verdict.got!r} {verdict.confidence}")
            print(
                f"{file.stem:<8} F1 {tally.f1:.3f}, wrong {tally.wrong_share:.1%} ({tally.right} right,",
                end=" ",
            )
            print(f"{tally.wrong} wrong, {tally.missing} missing); sure: {sure.wrong} of", end=" ")
            print(f"{sure.right + sure.wrong} wrong")


if __name__ == "__main__":
    main()
