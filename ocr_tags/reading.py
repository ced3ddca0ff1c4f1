"""One photo into lines of words: where its lines are, which way is up, and what each reader makes of them.

Lines are sought in two ways that fail differently: by an engine that can find lines, where there is one, and
by chains of letter shapes. Each is then cut out and read by every engine, as that engine likes it. Where no
engine finds lines, the engine also reads the whole picture twice. All passes go side by side to the fields,
which vote.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.engines import Engine, LineFinder, Quad
from ocr_tags.engines.remembering import Remembering
from ocr_tags.layout.lines import Line, split_wide
from ocr_tags.pictures.bend import flattened
from ocr_tags.pictures.cleaning import Straightened, even_light, narrowed, straighten, widened
from ocr_tags.pictures.crops import Crop, cut_colour, cut_line
from ocr_tags.pictures.facing import amount_said, reversed_line, upright
from ocr_tags.pictures.geometry import Floats, reduced, through
from ocr_tags.pictures.leaders import without_leaders
from ocr_tags.pictures.level import levelled
from ocr_tags.pictures.marks import covers, find_marks, mark_words, unread
from ocr_tags.pictures.month_bars import month_words
from ocr_tags.pictures.regions import LineRegion, find_level, find_lines, region_of
from ocr_tags.record import Box, Word

SPARSE_SCALE = 0.6
"""The sparse pass reads a smaller picture than the page pass, so that the two err differently."""
SMALL_SIDE = 1200
"""Long side of the copy that is read whole to tell which way is up."""
SHAPES_SIDE = 640
"""Long side of the copy on which letter shapes are sought where an engine has found lines already: it is
large letters that a finder overlooks."""
LEAST_LIKELY = 0.75
"""Of rows of letter shapes that an engine's finder left out, those less likely print are not read. On drawn
tags a finder overlooks a large bold title now and then; of 600 rows less likely than this, one was a line."""
TOUCHING = 0.2
"""A row of which more lies on lines found is made of their letters."""
WIDENINGS = 3
"""How often a border that cuts lines off is moved, before and after the tag is sought by its lines."""
CLOSELY, CLOSEST, FEW_LINES = 2.0, 4.0, 3
"""How many times the usual area shows the lines where no tag was cut out, and where it shows so few: of 53
such photographs 11 lost half of their lines or more on the usual one, of 470 others none."""
WITH_ROOM = 1.5
"""The same where the tag has been cut out along its lines, with room around it."""
HALF = 0.6
"""Of the longer side of a picture that is looked at in two halves: what they share holds a whole line."""
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


def read_picture(pixels: NDArray[np.uint8], engines: Sequence[Engine]) -> PictureRead:
    """Read an upright photo (BGR, uint8, height x width x 3) with every engine."""
    finder = next((engine for engine in engines if isinstance(engine, LineFinder)), None)
    cut = straighten(pixels, finely=finder is None)  # lines that are found can be made level later
    straight, found = _framed(pixels, cut, finder)
    # The engine that finds lines reads them cheaply as well, so it is the one asked which way is up.
    asked = Remembering(next((engine for engine in engines if engine is finder), engines[0]))
    regions = found or find_lines(straight.pixels)
    read_whole = None if finder else partial(_read_small, asked)
    straight, turn, regions = upright(straight, regions, partial(read_lines, asked), read_whole)
    flat = flattened(straight)
    if flat is not straight:
        straight = flat
        found = _found_lines(flat, finder)
        regions = found or find_lines(flat.pixels)
    level, way = levelled(straight, regions)
    if found:
        regions = [*regions, *_missed(straight.pixels, regions)]
    passes: dict[str, Moved] = {}
    said = _from_better_ends(regions, read_lines(asked, straight, regions, way))
    if finder:  # what it makes nothing of is grain or the edge of a leaf
        regions = [region for region, words in zip(regions, said, strict=True) if words]
    for engine in engines:
        lines = said if engine is asked.engine else read_lines(engine, straight, regions, way)
        passes[f"{engine.name} lines"] = [words for words in lines if words]
        if finder is None:
            passes[f"{engine.name} page"] = _read_page(level, engine)
            passes[f"{engine.name} sparse"] = _read_sparse(level, engine)
    limits = (pixels.shape[1], pixels.shape[0])
    read = {name: on_photo(lines, name, level, limits) for name, lines in passes.items()}
    return PictureRead(level, turn, {**read, **_marked(read, asked.engine, level, limits)})


# ---------------------------------------------------------------- where the lines are


def _framed(
    pixels: NDArray[np.uint8], cut: Straightened, finder: LineFinder | None
) -> tuple[Straightened, list[LineRegion]]:
    """The picture with all the lines that a finder shows, and not much around them; the lines."""
    straight = replace(cut, pixels=without_leaders(cut.pixels))
    found = _found_lines(straight, finder)
    for frame in (*[widened] * WIDENINGS, narrowed, *[widened] * WIDENINGS):
        again = frame(pixels, cut, [np.array(region.quad) for region in found])
        if again is not cut:
            cut, straight = again, replace(again, pixels=without_leaders(again.pixels))
            found = _found_lines(straight, finder, WITH_ROOM if frame is narrowed else CLOSELY)
    return straight, found


def _found_lines(
    straight: Straightened, finder: LineFinder | None, closely: float = CLOSELY
) -> list[LineRegion]:
    """The lines a finder shows, looked at `closely` where no outline tells that the tag is all there is."""
    if finder is None:
        return []
    quads = finder.find_lines(straight.pixels, 1.0 if straight.outline else closely)
    if len(quads) < FEW_LINES and not straight.outline:
        quads = _found_closest(straight.pixels, finder)
    return [region_of(quad) for quad in quads]


def _found_closest(picture: NDArray[np.uint8], finder: LineFinder) -> list[Quad]:
    """Lines sought in either half of a picture and a little beyond, as one copy that shows as much would take
    twice the memory; of two in one place, as where a half cuts a line, the larger."""
    along = 0 if picture.shape[0] > picture.shape[1] else 1
    length = picture.shape[along]
    found: list[Quad] = []
    for start in (0, round((1 - HALF) * length)):
        part = np.take(picture, range(start, min(start + round(HALF * length), length)), axis=along)
        shift = (0, start) if along == 0 else (start, 0)
        found += [_shifted(quad, shift) for quad in finder.find_lines(part, CLOSEST * HALF)]
    kept: list[tuple[Quad, Box]] = []
    for quad, box in sorted(((q, _around(np.array(q))) for q in found), key=lambda one: -one[1].w * one[1].h):
        if not any(box.shared(other) > 0.5 * box.w * box.h for _, other in kept):
            kept.append((quad, box))
    return [quad for quad, _ in kept]


def _shifted(quad: Quad, by: tuple[int, int]) -> Quad:
    a, b, c, d = ((x + by[0], y + by[1]) for x, y in quad)
    return a, b, c, d


def _missed(picture: NDArray[np.uint8], found: Sequence[LineRegion]) -> list[LineRegion]:
    """Level rows of clear letter shapes in an upright picture that the finder left out."""
    small, back = reduced(picture, SHAPES_SIDE / max(picture.shape[:2]))
    taken, way = np.zeros(small.shape[:2], np.uint8), np.asarray(np.linalg.inv(back), np.float64)
    for region in found:
        cv2.fillConvexPoly(taken, _pixels(through(way, np.array(region.quad))), 1)
    likely = (row for row in find_level(small) if row.score > LEAST_LIKELY)
    return [_enlarged(row, back) for row in likely if _share_of(taken, row) < TOUCHING]


def _share_of(taken: NDArray[np.uint8], region: LineRegion) -> float:
    """How much of a region is marked in `taken`."""
    own = np.zeros_like(taken)
    cv2.fillConvexPoly(own, _pixels(np.array(region.quad)), 1)
    return float((taken & own).sum() / max(own.sum(), 1))


def _pixels(points: Floats) -> NDArray[np.int32]:
    return np.asarray(np.rint(points), np.int32)


def _enlarged(region: LineRegion, back: Floats) -> LineRegion:
    a, b, c, d = ((float(x), float(y)) for x, y in through(back, np.array(region.quad)))
    return replace(region, quad=(a, b, c, d), letter_height=region.letter_height * float(back[1, 1]))


# ---------------------------------------------------------------- the passes


def read_lines(
    engine: Engine, straight: Straightened, regions: Sequence[LineRegion], way: Floats = AS_IT_IS
) -> Moved:
    """Each region's words along its own direction; nothing for a region in which nothing is read.

    Their places are those in the picture that `way` (3 x 3) leads to.
    """
    cut = cut_colour if engine.colour else cut_line
    crops: list[Crop] = [cut(straight.pixels, region) for region in regions]
    return [
        [replace(word, place=moved(word.place, way @ crop.to_picture)) for line in read for word in line]
        for read, crop in zip(engine.read([crop.pixels for crop in crops], "line"), crops, strict=True)
    ]


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
    return _around(through(way, _corners(place)))


def _on_photo(place: Box, straight: Straightened, limits: tuple[int, int]) -> Box:
    return _around(np.clip(straight.on_photo(_corners(place)), (0, 0), limits))


def _corners(place: Box) -> Floats:
    x, y, right, bottom = place.x, place.y, place.right, place.bottom
    return np.array([(x, y), (right, y), (right, bottom), (x, bottom)], np.float64)


def _around(points: Floats) -> Box:
    left, top = np.floor(points.min(axis=0)).astype(int)
    right, bottom = np.ceil(points.max(axis=0)).astype(int)
    return Box(int(left), int(top), max(int(right - left), 1), max(int(bottom - top), 1))


def on_photo(lines: Moved, reader: str, straight: Straightened, limits: tuple[int, int]) -> list[Line]:
    """Lines of one reading, parted at wide gaps, each word with its box on the photo; stains left out."""
    found: list[Line] = []
    for line in lines:
        words = [
            replace(
                word,
                box=_around(np.clip(straight.on_photo(_corners(word.place)), (0, 0), limits)),
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
    return {f"{engine.name} marks": lines}


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
