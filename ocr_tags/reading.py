"""Photos into lines of words: which way is up, where the lines are, and what each reader makes of them.

Lines are sought in two ways that fail differently: by an engine that can find lines, where there is one, and
by chains of letter shapes. Each is then cut out and read by every engine, as that engine likes it. Where no
engine finds lines, the engine also reads the whole picture twice. All passes go side by side to the fields,
which vote.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.engines import Engine, LineFinder
from ocr_tags.engines.remembering import Remembering
from ocr_tags.framing import found_lines, framed, missed
from ocr_tags.layout.lines import Line, split_wide
from ocr_tags.layout.text import MARKS
from ocr_tags.pictures.bend import flattened
from ocr_tags.pictures.cleaning import Straightened, even_light, straighten
from ocr_tags.pictures.crops import Crop, cut_colour, cut_line
from ocr_tags.pictures.facing import amount_said, reversed_line, upright
from ocr_tags.pictures.geometry import Floats, box_around, reduced, through
from ocr_tags.pictures.level import levelled
from ocr_tags.pictures.marks import covers, find_marks, mark_words, unread
from ocr_tags.pictures.month_bars import month_words
from ocr_tags.pictures.regions import LineRegion, find_lines
from ocr_tags.record import Box, Word

SPARSE_SCALE = 0.6
"""The sparse pass reads a smaller picture than the page pass, so that the two err differently."""
SMALL_SIDE = 1200
"""Long side of the copy that is read whole to tell which way is up."""
MARK_GAP = 1.5
"""In its own heights: a mark stands no further before the line it belongs to."""
LEAST_SURE = 0.25
"""Words the engine itself is less sure of are not words."""
LEAST_SAID = 0.6
"""A line that says less than one clear letter is a stain, an edge or a leaf (see `Line.weight`)."""

AS_IT_IS: Floats = np.eye(3)
Moved = list[list[Word]]
"""Lines of words whose `place` is in the straightened picture."""


@dataclass(frozen=True)
class PictureRead:
    """What one photo says: lines by pass, in the straightened picture that `straight` describes."""

    straight: Straightened
    turn: int
    passes: dict[str, list[Line]]

    @property
    def height(self) -> int:
        return int(self.straight.pixels.shape[0])


@dataclass(frozen=True)
class _Sighted:
    """One photo the right way up and its lines, with what the engine that was asked first makes of them.

    `straight` is the picture whose pixels show the lines at `regions`; `level` is the one that words lie in,
    which `way` (3 x 3) leads to; `limits` are the photo's width and height.
    """

    straight: Straightened
    turn: int
    level: Straightened
    way: Floats
    regions: Sequence[LineRegion]
    said: Moved
    limits: tuple[int, int]


def read_pictures(pictures: Sequence[NDArray[np.uint8]], engines: Sequence[Engine]) -> list[PictureRead]:
    """Read upright photos (BGR, uint8, height x width x 3) with every engine: what each photo says.

    An engine that is a program costs more to start than a side's lines to read, so the sides of a tag are
    best given together.
    """
    finder = next((engine for engine in engines if isinstance(engine, LineFinder)), None)
    # The engine that finds lines reads them cheaply as well, so it is the one asked which way is up.
    asked = next((engine for engine in engines if engine is finder), engines[0])
    sighted = [_sighted(pixels, asked, finder) for pixels in pictures]
    passes: list[dict[str, Moved]] = [{} for _ in sighted]
    for engine in engines:
        read = [one.said for one in sighted] if engine is asked else _read_all(engine, sighted)
        for own, one, lines in zip(passes, sighted, read, strict=True):
            own[f"{engine.name} lines"] = [words for words in lines if words]
            if finder is None:
                own[f"{engine.name} page"] = _read_page(one.level, engine)
                own[f"{engine.name} sparse"] = _read_sparse(one.level, engine)
    return [_picture_read(one, own, asked) for one, own in zip(sighted, passes, strict=True)]


def _sighted(pixels: NDArray[np.uint8], engine: Engine, finder: LineFinder | None) -> _Sighted:
    asked = Remembering(engine)
    cut = straighten(pixels, finely=finder is None)  # lines that are found can be made level later
    straight, found = framed(pixels, cut, finder)
    regions = found or find_lines(straight.pixels)
    read_whole = None if finder else partial(_read_small, asked)
    straight, turn, regions = upright(straight, regions, partial(read_lines, asked), read_whole)
    flat = flattened(straight)
    if flat is not straight:
        straight = flat
        found = found_lines(flat, finder)
        regions = found or find_lines(flat.pixels)
    level, way = levelled(straight, regions)
    if found:
        regions = [*regions, *missed(straight.pixels, regions)]
    said = _from_better_ends(regions, read_lines(asked, straight, regions, way))
    if finder:  # what it makes nothing of is grain or the edge of a leaf
        regions = [region for region, words in zip(regions, said, strict=True) if words]
    return _Sighted(straight, turn, level, way, regions, said, (pixels.shape[1], pixels.shape[0]))


def _picture_read(one: _Sighted, passes: Mapping[str, Moved], asked: Engine) -> PictureRead:
    read = {name: on_photo(lines, name, one.level, one.limits) for name, lines in passes.items()}
    return PictureRead(one.level, one.turn, {**read, **_marked(read, asked, one.level, one.limits)})


# ---------------------------------------------------------------- the passes


def read_lines(
    engine: Engine, straight: Straightened, regions: Sequence[LineRegion], way: Floats = AS_IT_IS
) -> Moved:
    """Each region's words along its own direction; nothing for a region in which nothing is read.

    Their places are those in the picture that `way` (3 x 3) leads to.
    """
    crops = _crops(engine, straight, regions)
    read = engine.read([crop.pixels for crop in crops], "line")
    return [_words_at(lines, crop, way) for lines, crop in zip(read, crops, strict=True)]


def _read_all(engine: Engine, sighted: Sequence[_Sighted]) -> Iterator[Moved]:
    """What `read_lines` gives for each picture, in one go."""
    crops = [_crops(engine, one.straight, one.regions) for one in sighted]
    read = iter(engine.read([crop.pixels for own in crops for crop in own], "line"))
    for one, own in zip(sighted, crops, strict=True):
        yield [_words_at(next(read), crop, one.way) for crop in own]


def _crops(engine: Engine, straight: Straightened, regions: Sequence[LineRegion]) -> list[Crop]:
    cut = cut_colour if engine.colour else cut_line
    return [cut(straight.pixels, region) for region in regions]


def _words_at(lines: Sequence[Sequence[Word]], crop: Crop, way: Floats) -> list[Word]:
    return [replace(word, place=moved(word.place, way @ crop.to_picture)) for line in lines for word in line]


def _from_better_ends(regions: Sequence[LineRegion], lines: Moved) -> Moved:
    """The lines as read; nothing where the same print, read from its other end, says more."""
    ends = {region.quad: amount_said(words) for region, words in zip(regions, lines, strict=True)}
    others = (ends.get(reversed_line(region).quad, 0.0) for region in regions)
    return [words if amount_said(words) >= other else [] for words, other in zip(lines, others, strict=True)]


def _read_page(straight: Straightened, engine: Engine) -> Moved:
    return engine.read([even_light(straight.pixels)], "page")[0]


def _read_small(engine: Engine, straight: Straightened) -> Moved:
    """Whatever a small copy shows, to tell which way is up; places are those of the copy."""
    small, _ = reduced(even_light(straight.pixels), SMALL_SIDE / max(straight.pixels.shape[:2]))
    return engine.read([small], "sparse")[0]


def _read_sparse(straight: Straightened, engine: Engine) -> Moved:
    grey = even_light(straight.pixels)
    small = np.asarray(
        cv2.resize(grey, None, fx=SPARSE_SCALE, fy=SPARSE_SCALE, interpolation=cv2.INTER_AREA), np.uint8
    )
    grown = np.diag([1 / SPARSE_SCALE, 1 / SPARSE_SCALE, 1.0])
    return [
        [replace(word, place=moved(word.place, grown)) for word in line]
        for line in engine.read([small], "sparse")[0]
    ]


def moved(place: Box, way: NDArray[np.float64]) -> Box:
    """The level box around `place` carried along the 3x3 homography `way`."""
    return box_around(through(way, _corners(place)))


def _on_photo(place: Box, straight: Straightened, limits: tuple[int, int]) -> Box:
    return box_around(np.clip(straight.on_photo(_corners(place)), (0, 0), limits))


def _corners(place: Box) -> Floats:
    x, y, right, bottom = place.x, place.y, place.right, place.bottom
    return np.array([(x, y), (right, y), (right, bottom), (x, bottom)], np.float64)


def on_photo(lines: Moved, reader: str, straight: Straightened, limits: tuple[int, int]) -> list[Line]:
    """Lines of one reading, parted at wide gaps, each word with its box on the photo; stains left out."""
    found: list[Line] = []
    for line in lines:
        words = [
            replace(
                word,
                box=box_around(np.clip(straight.on_photo(_corners(word.place)), (0, 0), limits)),
                reader=reader,
            )
            for word in line
            if word.confidence >= LEAST_SURE
        ]
        found.extend(part for part in split_wide(words) if _is_print(part))
    return found


def _is_print(line: Line) -> bool:
    return line.weight >= LEAST_SAID and line.confidence >= 0.4


# ---------------------------------------------------------------- marks


def _marked(
    read: dict[str, list[Line]], engine: Engine, straight: Straightened, limits: tuple[int, int]
) -> dict[str, list[Line]]:
    """One more pass where the tag has marks: an engine's lines, each with the marks that stand before it.

    It bears the engine's name, as the letters are the engine's: it adds what marks say and no second vote.
    """
    printed = read[f"{engine.name} lines"]
    words = [word for line in printed for word in line.words]
    symbols = [
        *mark_words(unread(find_marks(straight.pixels), words), straight.to_photo, limits),
        *month_words(straight.pixels, [line.words for line in printed]),
    ]
    if not symbols:
        return {}
    lines = list(_without(printed, [symbol.place for symbol in symbols]))
    for symbol in sorted(symbols, key=lambda symbol: -symbol.place.x):
        beside = [line for line in lines if _stands_before(symbol, line)]
        below = [line for line in printed if _stands_over(symbol, line)]
        nearest = min(beside, key=lambda line: line.place.x, default=None)
        nearest = nearest or min(below, key=lambda line: line.place.y, default=None)
        if nearest is None or nearest not in lines:
            lines.append(Line((symbol,)))
        else:
            lines[lines.index(nearest)] = Line((_at_start(symbol, nearest), *nearest.words))
    return {f"{engine.name} {MARKS}": lines}


def _without(lines: Sequence[Line], marks: Sequence[Box]) -> Iterator[Line]:
    """The lines without what is a mark taken for letters."""
    for line in lines:
        words = tuple(word for word in line.words if not any(covers(mark, word.place) for mark in marks))
        if words:
            yield Line(words)


def _stands_before(symbol: Word, line: Line) -> bool:
    mark, place = symbol.place, line.place
    level = abs((mark.y + mark.bottom) - (place.y + place.bottom)) < max(mark.h, place.h)
    return level and -0.3 * mark.w < place.x - mark.right < MARK_GAP * mark.h


def _stands_over(symbol: Word, line: Line) -> bool:
    """Whether a line is the caption right below a mark."""
    mark, place = symbol.place, line.place
    middle = mark.x + mark.w / 2
    gap = place.y - mark.bottom
    return place.x <= middle <= place.right and -0.2 * place.h < gap < MARK_GAP * mark.h / 2 + place.h / 2


def _at_start(symbol: Word, line: Line) -> Word:
    """A mark over its caption as a word before it, so that the caption stays one level line."""
    at = line.place
    if symbol.place.bottom > at.y + at.h / 2:
        return symbol
    return replace(symbol, place=Box(max(at.x - at.h, 0), at.y, max(at.h // 2, 1), at.h))
