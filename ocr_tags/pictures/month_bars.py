"""A row of twelve month cells, J F M A M J J A S O N D, some of them filled: read as the months that are.

What is filled is told by colour alone: the twelve cells, or the twelve places right over or under the
letters, fall into two clearly different colours, and one of them makes a single run through the year.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import numpy as np
from rapidfuzz import fuzz

from ocr_tags.pictures.geometry import Floats, Pixels
from ocr_tags.record import Box, Word

LETTERS = "JFMAMJJASOND"
ROMAN = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII")
SURE = 0.6
"""The confidence given to a row's months."""
_OF_YEAR = re.compile("[JFMASONDQ0U]+", re.I)
"""The letters of the row, and what they are misread as."""
LIKE = 86.0
"""Share, in hundredths, of the twelve letters that must be read in their order."""
APART = 30.0
"""Distance in colour (of 255 a channel) between filled and empty cells, at least."""
ALIKE = 0.3
"""Cells of one kind differ at most by this share of the distance between the kinds."""


def month_words(picture: Pixels, lines: Sequence[Sequence[Word]]) -> list[Word]:
    """For each such row in lines of words its filled months as one word, "VI–VIII", in the row's place.

    `picture` is the straightened tag in which the words have their places. A reader may give the row as one
    line, or every letter as a line of its own.
    """
    found: list[Word] = []
    for words in (*lines, [line[0] for line in lines if len(line) == 1]):
        for row in _rows([word for word in words if _OF_YEAR.fullmatch(word.text)]):
            place = Box.around(word.place for word in row)
            months = _filled(picture, place) if _is_year("".join(word.text for word in row)) else []
            if months and not any(_level(place, other.place) for other in found):
                box = Box.around(word.box for word in row)
                found.append(Word(_span(months), place, box, SURE, "marks"))
    return found


def _rows(words: Sequence[Word]) -> Iterator[list[Word]]:
    """Words that stand level with one another, from left to right."""
    left = sorted(words, key=lambda word: word.place.x)
    while left:
        row = [word for word in left if _level(word.place, left[0].place)]
        yield row
        left = [word for word in left if word not in row]


def _level(a: Box, b: Box) -> bool:
    return abs(_middle(a) - _middle(b)) < 0.5 * b.h


def _middle(place: Box) -> float:
    return (place.y + place.bottom) / 2


def _is_year(text: str) -> bool:
    letters = text.upper().replace("0", "O")
    return 10 <= len(letters) <= 13 and fuzz.ratio(letters, LETTERS) >= LIKE


def _span(months: Sequence[int]) -> str:
    first, last = ROMAN[months[0]], ROMAN[months[-1]]
    return first if len(months) == 1 else f"{first}–{last}"


def _filled(picture: Pixels, row: Box) -> list[int]:
    """The months, 0 to 11 in their order through the year, that are filled; none where that is not clear."""
    best, found = 0.0, list[int]()
    for top, bottom in _strips(row):
        colours = _cells(picture, row, top, bottom)
        if colours is None:
            continue
        distance, dark = _two_kinds(colours, _paper(picture, row))
        run = _run(dark) if distance > best else []
        if run:
            best, found = distance, run
    return found


def _strips(row: Box) -> Iterator[tuple[int, int]]:
    """Where the filling may stand: behind the letters, right under them, right over them."""
    h = row.h
    yield row.y - h // 4, row.bottom + h // 4
    yield row.bottom + h // 3, row.bottom + h
    yield row.y - h, row.y - h // 3


def _cells(picture: Pixels, row: Box, top: int, bottom: int) -> Floats | None:
    """The main colour of each of the twelve cells (12 x 3), the letters in them apart."""
    pitch = (row.w - row.h * 0.6) / 11
    if top < 0 or bottom > picture.shape[0] or pitch < 4:
        return None
    middles = row.x + row.h * 0.3 + pitch * np.arange(12)
    cells = []
    for middle in middles:
        left, right = max(round(middle - 0.42 * pitch), 0), round(middle + 0.42 * pitch)
        part = picture[top:bottom, left:right].reshape(-1, 3)
        if not len(part):
            return None
        cells.append(np.median(part, axis=0))
    return np.array(cells, np.float64)


def _paper(picture: Pixels, row: Box) -> Floats:
    """The colour of the tag around the row."""
    room = 3 * row.h
    part = picture[max(row.y - room, 0) : row.bottom + room, max(row.x - room, 0) : row.right + room]
    return np.asarray(np.median(part[::3, ::3].reshape(-1, 3), axis=0), np.float64)


def _two_kinds(colours: Floats, paper: Floats) -> tuple[float, list[bool]]:
    """How far apart two kinds of cells are in colour (0 where they are not two), and which are filled:
    those less like the paper."""
    away = np.linalg.norm(colours - paper, axis=1)
    order = np.argsort(away)
    gaps = np.diff(away[order])
    cut = int(np.argmax(gaps)) + 1
    empty, filled = colours[order[:cut]], colours[order[cut:]]
    distance = float(np.linalg.norm(filled.mean(axis=0) - empty.mean(axis=0)))
    spread = max(float(np.linalg.norm(kind - kind.mean(axis=0), axis=1).max()) for kind in (empty, filled))
    if distance < APART or spread > ALIKE * distance:
        return 0.0, []
    dark = away >= away[order[cut]]
    return distance, [bool(flag) for flag in dark]


def _run(filled: Sequence[bool]) -> list[int]:
    """The filled months where they are one run, over the turn of the year if need be."""
    starts = [at for at in range(len(filled)) if filled[at] and not filled[at - 1]]
    if len(starts) != 1:
        return []
    return [(starts[0] + step) % 12 for step in range(sum(filled))]
