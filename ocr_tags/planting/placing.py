"""Plants set on the ground, centre to centre, and the formulae they are held against.

Two answers are always given. The formula divides the area by the room of one plant, which is what
printed tables do; it is exact for a bed that the spacing divides evenly and that keeps half a spacing to
every edge. The count sets real plants inside the real outline, where a row either fits or does not.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPoint
from shapely.affinity import rotate

from ocr_tags.errors import QueryError
from ocr_tags.planting.beds import Bed
from ocr_tags.planting.sizes import size_in_words

ROWS = math.sqrt(3) / 2
"""Distance of the rows over the spacing when every plant stands equally far from its six neighbours."""

MOST = 20_000
"""More plants than this in one bed is a slip of the units."""

_SLACK = 0.05
"""Centimetres, half a millimetre: nobody plants to that, and round edges are drawn in chords."""


@dataclass(frozen=True, slots=True)
class Grid:
    """How far apart plants stand, in centimetres: `along` their row and, if it differs, `between` rows.

    `offset` shifts every other row by half a spacing; without `between`, such rows stand closer
    together, so that all neighbours are equally far away (triangular pattern).
    """

    along: float
    between: float | None = None
    offset: bool = False

    @property
    def rows(self) -> float:
        return self.between or (self.along * ROWS if self.offset else self.along)

    @property
    def room(self) -> float:
        """The ground one plant takes, in square centimetres."""
        return self.along * self.rows


class Slab(NamedTuple):
    """The part of a bed between two lines across its long side; an end that is the bed's own is infinite."""

    low: float
    high: float
    across: bool = False
    """Whether the lines lie level, the bed being taller than it is wide."""


WHOLE = Slab(-math.inf, math.inf)
Spot = tuple[float, float]


def by_formula(bed: Bed, grid: Grid, share: float = 1.0) -> float:
    """Plants by area over the room of one; for a running row, length over spacing. Not rounded."""
    return share * bed.size / (grid.along if bed.kind == "row" else grid.room)


def round_up(plants: float) -> int:
    """Whole plants that cover it; a hair over a whole number, from binary fractions, is that number."""
    return math.ceil(plants - 1e-6)


def place(bed: Bed, grid: Grid, edge: float | None = None, slab: Slab = WHOLE, tries: int = 8) -> list[Spot]:
    """The most plants found in the bed at this grid, as centres; empty when none fits.

    `edge` is the least distance of a centre from the outline in centimetres, half the spacing when None.
    Towards another kind (`slab`) half the spacing is always kept. Rows run whichever way holds more; the
    grid is shifted in `tries` steps each way and what is left over is shared evenly between the sides.
    QueryError when the formula gives more than 20,000.
    """
    plants = by_formula(bed, grid)
    if plants > MOST:
        raise QueryError(f"That would be about {plants:,.0f} plants.", "Check the units of bed and spacing.")
    if bed.kind == "row":
        return _on_line(bed, grid, edge, slab)
    inside = _inside(bed, grid, edge, slab)
    if inside.is_empty:
        return []
    tries = tries if plants < 2000 else 2
    ways = [(angle, *_most(rotate(inside, -angle, (0, 0)), grid, tries)) for angle in _angles(bed)]
    angle, _, spots = max(ways, key=lambda way: way[1])
    return [
        (float(x), float(y)) for x, y in shapely.get_coordinates(rotate(MultiPoint(spots), angle, (0, 0)))
    ]


def _angles(bed: Bed) -> list[float]:
    """Ways the rows may run, in degrees: along and across the bed, and along and across its longest side."""
    corners = shapely.get_coordinates(bed.ground)
    along, up = max(np.diff(corners, axis=0), key=lambda side: math.hypot(*side))
    slant = round(math.degrees(math.atan2(up, along)) % 90, 6) if bed.kind == "polygon" else 0.0
    return [0.0, 90.0, slant, slant + 90.0] if slant else [0.0, 90.0]


Spots = NDArray[np.float64]
Rank = tuple[int, float]


def _most(ground: shapely.Geometry, grid: Grid, tries: int) -> tuple[Rank, Spots]:
    """The fullest placing with level rows, and its rank: how many, and how evenly they stand."""
    shapely.prepare(ground)
    rank, best = (0, 0.0), np.empty((0, 2))
    for rows_shifted in (False, True) if grid.offset else (False,):
        for shift in _shifts(ground.bounds, grid, tries):
            lattice = _lattice(ground.bounds, grid, rows_shifted, shift)
            spots = lattice[shapely.contains_xy(ground, lattice[:, 0], lattice[:, 1])]
            if len(spots) < max(1, rank[0]):
                continue
            spots = _centred(spots, ground)
            rank, best = max((rank, best), (_rank(spots, ground), spots), key=lambda found: found[0])
    return rank, best


def _on_line(bed: Bed, grid: Grid, edge: float | None, slab: Slab) -> list[Spot]:
    half = grid.along / 2
    start, end = bed.bounds[0], bed.bounds[2]
    outer = half if edge is None else edge
    low = start + outer if slab.low == -math.inf else slab.low + half
    high = end - outer if slab.high == math.inf else slab.high - half
    if high - low < -_SLACK:
        return []
    gaps = math.floor((high - low + _SLACK) / grid.along)
    first = low + (high - low - gaps * grid.along) / 2
    return [(first + number * grid.along, 0.0) for number in range(gaps + 1)]


def _inside(bed: Bed, grid: Grid, edge: float | None, slab: Slab) -> shapely.Geometry:
    """Where centres may stand, half a millimetre generous."""
    half = min(grid.along, grid.between or grid.along) / 2
    outer = grid.along / 2 if edge is None else edge
    ground = bed.ground.buffer(_SLACK - outer, quad_segs=64)
    far = 10 * max(bed.spans) + 1
    low = slab.low + half - _SLACK if slab.low > -math.inf else -far
    high = slab.high - half + _SLACK if slab.high < math.inf else far
    if low > high:
        return shapely.Polygon()
    left, top = bed.bounds[:2]
    cut = shapely.box(left - far, low, left + far, high) if slab.across else None
    return ground.intersection(cut or shapely.box(low, top - far, high, top + far))


Bounds = tuple[float, float, float, float]


def _shifts(bounds: Bounds, grid: Grid, tries: int) -> Iterator[Spot]:
    """Shares of a step to shift the grid by: even steps, and a plant or a gap in the very middle."""
    left, top, right, low = bounds
    middle = (right - left) / 2 / grid.along, (low - top) / 2 / grid.rows
    even = [number / tries for number in range(tries)]
    across, down = ((*even, at % 1, (at + 0.5) % 1) for at in middle)
    return product(across, down)


def _lattice(bounds: Bounds, grid: Grid, rows_shifted: bool, shift: Spot) -> Spots:
    """Grid points over `bounds`, shifted by shares of a step."""
    left, top, right, low = bounds
    columns = np.arange(-1, math.ceil((right - left) / grid.along) + 1) + shift[0]
    rows = np.arange(-1, math.ceil((low - top) / grid.rows) + 1)
    x, y = np.meshgrid(columns * grid.along + left + _SLACK, (rows + shift[1]) * grid.rows + top + _SLACK)
    if grid.offset:
        x[(rows % 2 == 1) != rows_shifted] += grid.along / 2
    return np.column_stack((x.ravel(), y.ravel()))


def _centred(spots: Spots, ground: shapely.Geometry) -> Spots:
    """The same plants moved to the middle of the ground, where all of them stay on it."""
    for axes in ((0, 1), (0,), (1,)):
        moved = spots.copy()
        for axis in axes:
            moved[:, axis] += _leaning(spots, ground, axis)
        if shapely.contains_xy(ground, moved[:, 0], moved[:, 1]).all():
            return moved
    return spots


def _rank(spots: Spots, ground: shapely.Geometry) -> Rank:
    return len(spots), -sum(round(abs(_leaning(spots, ground, axis)), 3) for axis in (0, 1))


def _leaning(spots: Spots, ground: shapely.Geometry, axis: int) -> float:
    """How far the plants must move to stand in the middle of the ground."""
    low, high = ground.bounds[axis], ground.bounds[axis + 2]
    return float((low + high - spots[:, axis].min() - spots[:, axis].max()) / 2)


# ---------------------------------------------------------------- several kinds


def slabs(bed: Bed, shares: list[float]) -> Iterator[Slab]:
    """The bed cut across its long side into parts of these shares of its size, in order."""
    across = bed.spans[1] > bed.spans[0]
    low, done = -math.inf, 0.0
    for share in shares[:-1]:
        done += share / sum(shares)
        high = _line_before(bed, done, across)
        yield Slab(low, high, across)
        low = high
    yield Slab(low, math.inf, across)


def _line_before(bed: Bed, share: float, across: bool) -> float:
    """Where the line stands that has this share of the bed before it, to a hundredth of a millimetre."""
    left, top, right, low = bed.bounds
    near, far = (top, low) if across else (left, right)
    start = near
    while far - near > 0.001:
        middle = (near + far) / 2
        cut = (left, start, right, middle) if across else (start, top - 1, middle, low + 1)
        part = bed.ground.intersection(shapely.box(*cut))
        if (part.length if bed.kind == "row" else part.area) < share * bed.size:
            near = middle
        else:
            far = middle
    return near


# ---------------------------------------------------------------- the reverse


_STEP = 0.97
"""How the widest spacing is come down to, before it is narrowed to a tenth of a millimetre."""


class Apart(NamedTuple):
    """How far apart so many plants stand, in centimetres: by the formula, and really placed."""

    by_formula: float
    placed: float


def how_far_apart(bed: Bed, plants: int, offset: bool = False, edge: float | None = None) -> Apart:
    """The widest spacing at which `plants` stand in the bed; QueryError when they find no room at all."""
    if plants < 1:
        raise QueryError(f"The number of plants must be 1 or more, not {plants}.")
    if plants > MOST:
        raise QueryError(f"{plants:,} plants are more than one bed is worked out for.")
    room = bed.size / plants
    formula = room if bed.kind == "row" else math.sqrt(room / ROWS if offset else room)
    tries = 4 if plants < 100 else 2
    wide = formula * min(3.0, 1 + 3 / math.sqrt(plants))

    def fits(spacing: float) -> bool:
        return len(place(bed, Grid(spacing, offset=offset), edge, tries=tries)) >= plants

    while not fits(wide):
        wide *= _STEP
        if wide < formula / 4:
            raise QueryError(
                f"{plants} plants do not fit in this bed, even {size_in_words(wide, bed.units)} apart."
            )
    low, high = wide, wide / _STEP
    while high - low > 0.01:
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return Apart(formula, low)
