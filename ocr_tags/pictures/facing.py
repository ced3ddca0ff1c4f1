"""Which way is up: the same lines of print, seen from each of the four ways a tag can lie."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cache
from importlib.resources import files

import numpy as np

from ocr_tags.pictures.cleaning import Straightened, turned
from ocr_tags.pictures.geometry import Floats, through
from ocr_tags.pictures.regions import LineRegion
from ocr_tags.record import Word

TRIAL_LINES = 6
FEWEST_OF_A_WAY = 3
"""Lines read both ways up to find which way is up; of those up and down the tag a few at least."""
FIRST_OF_A_WAY, LOT = 2, 2
CLEAR_LETTERS, CLEARLY = 12.0, 3.0
"""The lots so far decide when one way says this much, and this many times what any other says."""
KNOWN_LETTERS = 10.0
"""So many letters of words that tags carry decide before the lines are read from their other end: of 411
photographs none showed more than 6 the wrong way."""
ENOUGH_LETTERS = 14.0
"""A longer line tells no better which way is up."""
UNKNOWN_WORD = 0.3
"""What a letter of an unknown word says, beside one of a word that tags carry."""

ReadLines = Callable[[Straightened, Sequence[LineRegion]], Sequence[Sequence[Word]]]
"""Reads each line of a picture along its own direction."""
ReadWhole = Callable[[Straightened], Sequence[Sequence[Word]]]
"""Reads whatever stands upright anywhere in a picture."""


def upright(
    straight: Straightened,
    regions: Sequence[LineRegion],
    read: ReadLines,
    read_whole: ReadWhole | None = None,
) -> tuple[Straightened, int, list[LineRegion]]:
    """The picture turned so that its text reads, the turn in degrees clockwise, and its lines there.

    Lines may run any way; those that run up or down the upright tag come twice, to be read both ways. Where
    they say too little to tell, `read_whole` is asked at all four turns.
    """
    rows = [region if -45 <= region.angle < 135 else reversed_line(region) for region in regions]
    said = _said_by_direction(straight, rows, read)
    if read_whole is not None and max(said.values()) < CLEAR_LETTERS:
        for running in said:
            said[running] += sum(map(amount_said, read_whole(turned(straight, (360 - running) % 360))))
    turn = (360 - max(said, key=lambda each: said[each])) % 360
    if not turn:
        return straight, 0, list(_both_ways(rows))
    up = turned(straight, turn)
    way = np.linalg.inv(up.to_photo) @ straight.to_photo
    return up, turn, list(_both_ways(_carried(region, way) for region in rows))


def reversed_line(region: LineRegion) -> LineRegion:
    """The same line read from its other end."""
    a, b, c, d = region.quad
    return replace(region, quad=(c, d, a, b))


def _carried(region: LineRegion, way: Floats) -> LineRegion:
    a, b, c, d = ((float(x), float(y)) for x, y in through(way, np.array(region.quad)))
    return replace(region, quad=(a, b, c, d))


def _both_ways(regions: Iterable[LineRegion]) -> Iterator[LineRegion]:
    for region in regions:
        if abs(region.angle) < 45:
            yield region
        elif abs(region.angle) > 135:
            yield reversed_line(region)
        else:
            yield region
            yield reversed_line(region)


def _said_by_direction(
    straight: Straightened, rows: Sequence[LineRegion], read: ReadLines
) -> dict[int, float]:
    """How much the longest lines say, by the way they would run: 0 is to the right, 90 down, and so on.

    Each line is read as it stands, then upside down where that leaves a doubt, and so is the next lot.
    """
    said = dict.fromkeys((0, 180, 90, 270), 0.0)
    known = dict.fromkeys(said, 0.0)
    for lot in _trial_lines(rows):
        for over, lines in ((0, lot), (180, [reversed_line(region) for region in lot])):
            for region, words in zip(lot, read(straight, lines), strict=True):
                way = over + (0 if abs(region.angle) < 45 else 90)
                said[way] += amount_said(words)
                known[way] += sum(len(word.text) * word.confidence for word in words if _known(word.text))
            if max(known.values()) > KNOWN_LETTERS:
                return said
        first, second = sorted(said.values(), reverse=True)[:2]
        if first > CLEAR_LETTERS and first > CLEARLY * second:
            break
    return said


def _trial_lines(rows: Sequence[LineRegion]) -> Iterator[list[LineRegion]]:
    """The likeliest lines in small lots, of each direction at least a few."""
    level = sorted((r for r in rows if abs(r.angle) < 45), key=_likely_letters, reverse=True)
    down = sorted((r for r in rows if abs(r.angle) >= 45), key=_likely_letters, reverse=True)
    best = sorted((*level[:TRIAL_LINES], *down[:TRIAL_LINES]), key=_likely_letters, reverse=True)[
        :TRIAL_LINES
    ]
    few = (*level[:FEWEST_OF_A_WAY], *down[:FEWEST_OF_A_WAY])
    first = [*level[:FIRST_OF_A_WAY], *down[:FIRST_OF_A_WAY]]
    chosen = [*best, *(region for region in few if region not in best)]
    rest = [region for region in chosen if region not in first]
    yield from filter(None, (first, *(rest[at : at + LOT] for at in range(0, len(rest), LOT))))


def _likely_letters(region: LineRegion) -> tuple[float, float]:
    """About how many letters a line has, as far as it takes to tell; of such lines the shorter, as the price
    of reading goes with length. The grain of a picture makes the longest rows, unlikely ones."""
    letters = region.length / max(region.letter_height, 1)
    return min(letters, ENOUGH_LETTERS) * region.score**2, -letters


def amount_said(words: Sequence[Word]) -> float:
    """How much these words say; a word that tags carry says far more than any letters can.

    An engine is sure of much that stands on its head ("seed" for "paas"), so its confidence alone is a
    poor judge of which way is up.
    """
    return sum(
        len(word.text) * (word.confidence if _known(word.text) else UNKNOWN_WORD * word.confidence**2)
        for word in words
        if len(word.text) > 1
    )


def _known(text: str) -> bool:
    return text.strip(".,:;()").casefold() in _tag_words()


@cache
def _tag_words() -> frozenset[str]:
    lines = files("ocr_tags").joinpath("data/tag_words.txt").read_text("utf-8").splitlines()
    return frozenset(word for line in lines if not line.startswith("#") for word in line.split())
