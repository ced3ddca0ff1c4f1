"""A plan of the bed to look at: every plant with its room, to scale, with sizes and a legend."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain
from pathlib import Path

import shapely

from ocr_tags.errors import TagError
from ocr_tags.measures.lengths import Units
from ocr_tags.planting.needs import Need, Planting
from ocr_tags.planting.placing import Spot
from ocr_tags.planting.sheet import Disc, Line, Sheet, Words, to_png, to_svg
from ocr_tags.planting.sizes import size_in_words

PAPER = {"in": (279.4, 215.9), "cm": (297.0, 210.0)}
"""US Letter and ISO 216 A4, lying; millimetres."""

SCALES = {
    "in": (1, 2, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536, 3072),
    "cm": (1, 2, 5, 10, 15, 20, 25, 40, 50, 75, 100, 200, 250, 500, 1000, 2500),
}
"""1 to so much: those on a scale rule, so that a ruler can be laid on the print."""
_TO_THE_FOOT = {4: "3 in", 6: "2 in", 8: "1½ in", 12: "1 in", 16: "¾ in", 24: "½ in", 48: "¼ in", 96: "⅛ in"}

_BARS = {
    "in": (1, 2, 3, 6, 12, 24, 36, 60, 120, 240, 600, 1200),
    "cm": (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000),
}
"""Round lengths for the scale bar, in inches or centimetres."""

_EDGE, _LEGEND, _HEAD, _GAP = 14.0, 6.5, 24.0, 9.0
_INK, _FAINT, _SOIL, _LINE = "#1c1c1c", "#9a9a9a", "#f6f2ea", "#5b4a36"
_KIND_INKS = ("#14532d", "#8a1c4a", "#1e3a8a", "#92400e", "#5b21b6", "#0f5c66")


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where the bed stands on the paper: millimetres of paper from centimetres of ground, y upwards."""

    left: float
    bottom: float
    scale: int
    origin: Spot

    def at(self, spot: Spot) -> Spot:
        x, y = spot[0] - self.origin[0], spot[1] - self.origin[1]
        return self.left + self.mm(x), self.bottom - self.mm(y)

    def mm(self, cm: float) -> float:
        return cm * 10 / self.scale


def save_plan(planting: Planting, path: Path) -> None:
    """Write the plan; the ending says how, .svg or .png. TagError for another ending or a full disk."""
    sheet = plan_of(planting)
    try:
        if path.suffix.lower() == ".svg":
            path.write_text(to_svg(sheet), "utf-8")
        elif path.suffix.lower() == ".png":
            path.write_bytes(to_png(sheet))
        else:
            raise TagError(f"A plan is written as .svg or .png, not {path.name!r}.")
    except OSError as error:
        raise TagError(f"The plan {path} cannot be written: {error.strerror}.") from error


def plan_of(planting: Planting) -> Sheet:
    """The plan on a sheet of Letter or A4, by the bed's units; a range of spacing drawn at its wide end."""
    bed, units = planting.bed, planting.bed.units
    width, height = PAPER[units]
    foot = _EDGE + _LEGEND * (len(planting.needs) + 2)
    room = width - 2 * _EDGE - 2 * _GAP, height - _EDGE - _HEAD - foot - 2 * _GAP
    along, across = (span + 2 * _overhang(planting) for span in bed.spans)
    scale = _scale(along, across, room, units)
    left, bottom = (_EDGE + _GAP, _EDGE + _HEAD + _GAP + room[1])
    spare = [(whole - span * 10 / scale) / 2 for whole, span in zip(room, bed.spans, strict=True)]
    frame = _Frame(left + spare[0], bottom - spare[1], scale, bed.bounds[:2])
    marks = [
        *_heading(planting),
        *_ground(planting, frame),
        *chain.from_iterable(_plants(need, number, frame) for number, need in enumerate(planting.needs)),
        *_sizes(planting, frame),
        *_legend(planting, height - foot, frame),
    ]
    return Sheet(width, height, f"Plan of a bed: {bed.in_words()}", tuple(marks))


def _overhang(planting: Planting) -> float:
    """How far the room of the widest plants reaches over the outline, in centimetres."""
    half = max(need.fewest.grid.along for need in planting.needs) / 2
    if planting.bed.kind == "row":
        return half
    return max(0.0, half - (half if planting.edge is None else planting.edge))


def _scale(along: float, across: float, room: Spot, units: Units) -> int:
    needed = max(along * 10 / room[0], across * 10 / room[1])
    return next((scale for scale in SCALES[units] if scale >= needed), math.ceil(needed))


def _heading(planting: Planting) -> Iterator[Words]:
    bed = planting.bed
    pattern = "Offset rows" if planting.offset else "Square pattern"
    kept = "half a spacing" if planting.edge is None else size_in_words(planting.edge, bed.units)
    border = "the ends" if bed.kind == "row" else "the edge"
    room = "plants on the very edge" if planting.edge == 0 else f"{kept} kept to {border}"
    name = bed.in_words()
    said = f"{'In line' if bed.kind == 'row' else pattern}, centre to centre; {room}"
    yield Words((_EDGE, _EDGE + 5), name[:1].upper() + name[1:], 6)
    yield Words((_EDGE, _EDGE + 12), said)


# ---------------------------------------------------------------- ground and plants


def _ground(planting: Planting, frame: _Frame) -> Iterator[Line]:
    bed = planting.bed
    if bed.kind == "row":
        yield Line(tuple(frame.at(spot) for spot in bed.ground.coords), _LINE, 0.6)
        return
    outline = shapely.get_coordinates(bed.ground)[:-1]
    yield Line(tuple(frame.at((x, y)) for x, y in outline), _LINE, 0.6, fill=_SOIL)
    left, low, right, high = bed.bounds
    for need in planting.needs[:-1]:
        line = need.slab.high
        ends = [(left, line), (right, line)] if need.slab.across else [(line, low), (line, high)]
        for part in shapely.get_parts(shapely.LineString(ends).intersection(bed.ground)):
            cut = tuple(frame.at((x, y)) for x, y in shapely.get_coordinates(part))
            yield Line(cut, _LINE, 0.3, dashed=True)


def _plants(need: Need, number: int, frame: _Frame) -> Iterator[Line | Disc]:
    ink = _KIND_INKS[number % len(_KIND_INKS)]
    size = min(1.3, frame.mm(need.fewest.grid.along) * 0.18)
    for spot in need.fewest.spots:
        yield Disc(frame.at(spot), frame.mm(need.fewest.grid.along) / 2, _FAINT, 0.15)
    for spot in need.fewest.spots:
        yield _mark(number, frame.at(spot), size, ink)


def _mark(number: int, at: Spot, size: float, ink: str) -> Line | Disc:
    """The sign of a kind: told apart by shape as well as by ink, so that a grey print can be read."""
    x, y = at
    shapes: tuple[tuple[Spot, ...], ...] = (
        (),
        ((x, y - size * 1.2), (x + size * 1.1, y + size * 0.8), (x - size * 1.1, y + size * 0.8)),
        ((x - size, y - size), (x + size, y - size), (x + size, y + size), (x - size, y + size)),
        ((x, y - size * 1.3), (x + size * 1.3, y), (x, y + size * 1.3), (x - size * 1.3, y)),
    )
    corners = shapes[number % len(shapes)]
    hollow = number // len(shapes) % 2 == 1
    fill = "#ffffff" if hollow else ink
    return Line(corners, ink, 0.25, fill=fill) if corners else Disc(at, size, ink, 0.25, fill)


# ---------------------------------------------------------------- sizes and legend


def _sizes(planting: Planting, frame: _Frame) -> Iterator[Line | Words]:
    """The two outer sizes, above and to the left of the bed."""
    left, low, right, high = planting.bed.bounds
    along, across = planting.bed.spans
    units = planting.bed.units
    clear = frame.mm(_overhang(planting))
    (x, y), (far_x, far_y) = frame.at((left, high)), frame.at((right, low))
    top, side = y - 4 - clear, x - 4 - clear
    yield Line(((x, top), (far_x, top)), _INK, 0.2)
    yield from (Line(((end, top - 1.2), (end, top + 1.2)), _INK, 0.2) for end in (x, far_x))
    yield Words(((x + far_x) / 2, top - 1.8), size_in_words(along, units), 3.6, "middle")
    if across:
        yield Line(((side, y), (side, far_y)), _INK, 0.2)
        yield from (Line(((side - 1.2, end), (side + 1.2, end)), _INK, 0.2) for end in (y, far_y))
        yield Words((side - 1.8, (y + far_y) / 2), size_in_words(across, units), 3.6, "middle", turned=True)


def _legend(planting: Planting, top: float, frame: _Frame) -> Iterator[Line | Disc | Words]:
    units = planting.bed.units
    width, _ = PAPER[units]
    yield Line(((_EDGE, top - 3), (width - _EDGE, top - 3)), _FAINT, 0.2)
    line = top + 3
    for number, need in enumerate(planting.needs):
        yield _mark(number, (_EDGE + 2, line - 1.2), 1.3, _KIND_INKS[number % len(_KIND_INKS)])
        yield Words((_EDGE + 6, line), f"{_clipped(need.kind.name)}: {_said(need, units)}")
        line += _LEGEND
    yield Words((_EDGE, line), _total(planting))
    yield from _scale_bar(width - _EDGE, line + _LEGEND, frame, units)
    room = "The thin circles show the room of each plant, one spacing across."
    yield Words((_EDGE, line + _LEGEND), room, 3.2)


def _clipped(name: str, most: int = 62) -> str:
    return name if len(name) <= most else f"{name[: most - 1].rstrip()}…"


def _said(need: Need, units: Units) -> str:
    number = need.fewest.placed
    drawn = f"{number} {'plant' if number == 1 else 'plants'}, {need.kind.spacing_in_words(units, ' apart')}"
    if need.most is need.fewest:
        return drawn
    return f"{drawn}, drawn at the wide end; {need.most.placed} at the narrow end"


def _total(planting: Planting) -> str:
    how = "length" if planting.bed.kind == "row" else "area"
    formula = sum(need.fewest.by_formula for need in planting.needs)
    return f"Plants drawn: {planting.fewest}. By the {how} formula: {formula}."


def _scale_bar(right: float, line: float, frame: _Frame, units: Units) -> Iterator[Line | Words]:
    """A bar of a round length, some 30 to 60 mm of paper, with the scale in figures."""
    unit = 2.54 if units == "in" else 1.0
    long = next((step * unit for step in reversed(_BARS[units]) if frame.mm(step * unit) <= 60), unit)
    left, y = right - frame.mm(long), line - 1
    yield Line(((left, y), (right, y)), _INK, 0.5)
    yield from (Line(((x, y - 1.3), (x, y + 1.3)), _INK, 0.3) for x in (left, right))
    yield Words(((left + right) / 2, y - 2), size_in_words(long, units), 3.2, "middle")
    foot = _TO_THE_FOOT.get(frame.scale) if units == "in" else None
    said = f"1 : {frame.scale}" + (f", {foot} to the foot" if foot else "")
    yield Words((left - 4, line), said, 3.2, "end")
