"""The ground to be planted: a rectangle, a circle, a polygon or a running row, in centimetres."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Literal

from shapely import LineString, Point, Polygon, box
from shapely.validation import explain_validity

from ocr_tags.errors import QueryError
from ocr_tags.measures.lengths import Units
from ocr_tags.measures.quantities import CM, METRIC
from ocr_tags.planting.sizes import area_in_words, size_in_words, typed_size

Shape = Literal["rectangle", "circle", "polygon", "row"]

_ROUND = 256
"""Chords to a quarter circle: off by 0.002 % of the radius, less than the width of a trowel's edge."""


@dataclass(frozen=True, slots=True)
class Bed:
    """A shape on the ground. `units` is the system it was typed in; a row has length but no area."""

    kind: Shape
    ground: Polygon | LineString
    units: Units

    @property
    def size(self) -> float:
        """The area in square centimetres; for a row, its length in centimetres."""
        return float(self.ground.length if self.kind == "row" else self.ground.area)

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        left, top, right, bottom = self.ground.bounds
        return float(left), float(top), float(right), float(bottom)

    @property
    def spans(self) -> tuple[float, float]:
        """The bed's extent along and across, in centimetres."""
        left, top, right, bottom = self.bounds
        return right - left, bottom - top

    def in_words(self, units: Units | None = None) -> str:
        """The bed as a person would name it.

        >>> rectangle("10ft", "4 ft").in_words()
        'rectangle 10 ft × 4 ft, 40 sq ft'
        """
        units = units or self.units
        along, across = (size_in_words(span, units) for span in self.spans)
        if self.kind == "row":
            return f"row {along} long"
        area = area_in_words(self.size, units)
        if self.kind == "circle":
            return f"circle {along} across, {area}"
        return f"{self.kind} {along} × {across}, {area}"


def rectangle(length: str, width: str) -> Bed:
    long, units = typed_size(length, "The length of the bed")
    wide, _ = typed_size(width, "The width of the bed")
    return Bed("rectangle", box(0, 0, long, wide), units)


def circle(diameter: str) -> Bed:
    across, units = typed_size(diameter, "The diameter of the bed")
    return Bed("circle", Point(across / 2, across / 2).buffer(across / 2, quad_segs=_ROUND), units)


def row(length: str) -> Bed:
    long, units = typed_size(length, "The length of the row")
    return Bed("row", LineString([(0, 0), (long, 0)]), units)


# ---------------------------------------------------------------- polygons

_SPACED_UNIT = re.compile(r"(?<=\d)\s+(?=(?:mm|cm|m|in|ft)\b)", re.I)
_CORNER = re.compile(
    r"(?P<x>[-−]?\d+(?:\.\d+)?)(?P<x_unit>mm|cm|m|in|ft)?,(?P<y>[-−]?\d+(?:\.\d+)?)(?P<y_unit>mm|cm|m|in|ft)?",
    re.I,
)


def polygon(corners: str) -> Bed:
    """A bed from its corners in order: "0,0 10ft,0 10ft,4ft 0,4ft".

    The corners are parted by spaces or semicolons. A number without a unit takes the first unit given, so
    "0,0 3m,0 3,2" is in metres. QueryError for fewer than three corners, no unit, or an outline that
    crosses itself.
    """
    matches = [_corner(each) for each in _corners(corners)]
    units = [unit for match in matches for unit in (match["x_unit"], match["y_unit"]) if unit]
    if not units:
        raise QueryError(f"The corners {corners!r} have no unit.", "Write the first like 10ft,0 or 3m,0.")
    unit = units[0].lower()
    points = [(_cm(m["x"], m["x_unit"] or unit), _cm(m["y"], m["y_unit"] or unit)) for m in matches]
    system: Units = "cm" if unit in METRIC else "in"
    if len(set(points)) < 3:
        raise QueryError(f"A bed needs at least three corners, not {len(set(points))}.")
    return Bed("polygon", _simple(Polygon(points), system), system)


def _corners(text: str) -> list[str]:
    joined = re.sub(r"\s*,\s*", ",", _SPACED_UNIT.sub("", text.strip()))
    return [each.replace(" ", "") for each in re.split(r"\s*;\s*|\s+", joined) if each]


def _corner(text: str) -> re.Match[str]:
    match = _CORNER.fullmatch(text)
    if match is None:
        raise QueryError(
            f"{text!r} is not a corner.", 'Write corners like "0,0 10ft,0 10ft,4ft 0,4ft", across first.'
        )
    return match


def _cm(number: str, unit: str) -> float:
    return round(float(number.replace("−", "-")) * CM[unit.lower()], 6)


def _simple(outline: Polygon, units: Units) -> Polygon:
    if outline.convex_hull.area < 1:
        raise QueryError("The corners of the bed lie on one line.")
    if not outline.is_valid:
        where = re.search(r"\[([-\d.e]+) ([-\d.e]+)\]", explain_validity(outline))
        place = ", ".join(size_in_words(float(each), units) for each in where.groups()) if where else ""
        raise QueryError(
            f"The outline of the bed crosses or touches itself{f' at {place}' if place else ''}.",
            "Give the corners in order, walking once round the bed.",
        )
    return outline


def in_units(bed: Bed, units: Units | None) -> Bed:
    """The same bed, spoken of in other units."""
    return replace(bed, units=units) if units else bed
