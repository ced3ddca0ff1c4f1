"""How many plants of each kind a bed needs, at both ends of a range of spacing, and in how many packs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from ocr_tags.errors import QueryError
from ocr_tags.planting.beds import Bed
from ocr_tags.planting.placing import WHOLE, Grid, Slab, Spot, by_formula, place, round_up, slabs
from ocr_tags.planting.sizes import size_in_words
from ocr_tags.planting.spacings import Kind

DIGGING = (
    "Before you dig, have buried lines marked: in the United States call 811 some days ahead, it is free;"
    " elsewhere ask your utilities. How near lines, walls, wires and borders a tree or shrub may stand is"
    " for local codes to say."
)
"""call811.com for the number; every state asks for notice."""


@dataclass(frozen=True, slots=True)
class Count:
    """Plants of one kind at one spacing: set on the ground, and by the formula (not rounded).

    `on_edge` is how many there would be with plants on the very edge of the bed.
    """

    grid: Grid
    spots: tuple[Spot, ...]
    formula: float
    on_edge: int

    @property
    def placed(self) -> int:
        return len(self.spots)

    @property
    def by_formula(self) -> int:
        return round_up(self.formula)


@dataclass(frozen=True, slots=True)
class Need:
    """One kind in its part of the bed: the fewest plants, at the widest spacing, and the most."""

    kind: Kind
    slab: Slab
    fewest: Count
    most: Count

    @property
    def counts(self) -> tuple[Count, ...]:
        """From narrow to wide; one when the spacing is no range."""
        return (self.most,) if self.kind.narrow == self.kind.wide else (self.most, self.fewest)


@dataclass(frozen=True, slots=True)
class Planting:
    """A bed worked out. `edge` is the distance kept from the outline, None for half the spacing."""

    bed: Bed
    offset: bool
    edge: float | None
    needs: tuple[Need, ...]

    @property
    def fewest(self) -> int:
        return sum(need.fewest.placed for need in self.needs)

    @property
    def most(self) -> int:
        return sum(need.most.placed for need in self.needs)

    @property
    def notes(self) -> tuple[str, ...]:
        """What the user must see beside the figures, each sentence once."""
        found = [note for need in self.needs for note in need.kind.notes]
        if any(need.kind.woody is not False for need in self.needs):
            found.append(DIGGING)
        return tuple(dict.fromkeys(found))


def work_out(bed: Bed, kinds: Sequence[Kind], offset: bool = False, edge: float | None = None) -> Planting:
    """The plants every kind needs in its share of the bed; QueryError, naming the kind, when none fits."""
    empty = Planting(bed, offset, edge, ())
    parts = [WHOLE] if len(kinds) == 1 else list(slabs(bed, [kind.share for kind in kinds]))
    whole = sum(kind.share for kind in kinds)
    needs = []
    for kind, slab in zip(kinds, parts, strict=True):
        counts = [
            _count(empty, kind, spacing, kind.share / whole, slab)
            for spacing in dict.fromkeys((kind.narrow, kind.wide))
        ]
        needs.append(Need(kind, slab, fewest=counts[-1], most=counts[0]))
    return replace(empty, needs=tuple(needs))


def _count(empty: Planting, kind: Kind, spacing: float, share: float, slab: Slab) -> Count:
    bed, edge = empty.bed, empty.edge
    grid = Grid(spacing, kind.between, empty.offset)
    spots = place(bed, grid, edge, slab)
    if not spots:
        where = f"its {share:.0%} of the" if share < 1 else "a"
        kept = "half of it" if edge is None else size_in_words(edge, bed.units)
        raise QueryError(
            f"{kind.name[:1].upper()}{kind.name[1:]}: a spacing of {size_in_words(spacing, bed.units)} does"
            f" not fit into {where} {bed.in_words()}, with {kept} kept to the edge.",
            "Give a larger bed or a closer spacing, --edge none, or plan it as a --row.",
        )
    return Count(grid, tuple(spots), by_formula(bed, grid, share), len(place(bed, grid, 0.0, slab)))


def packs(plants: int, sizes: Iterable[int]) -> Iterator[tuple[int, int]]:
    """For each pack size, (packs to buy, plants in them): packs are not broken, so always rounded up.

    >>> list(packs(40, (6, 36)))
    [(7, 42), (2, 72)]
    """
    for size in sizes:
        number = -(-plants // size)
        yield number, number * size


def to_json(planting: Planting, pack_sizes: Sequence[int] = ()) -> dict[str, Any]:
    """All figures of a bed in plain numbers, centimetres and square centimetres, with every spot."""
    bed = planting.bed
    return {
        "bed": {"shape": bed.kind, ("length_cm" if bed.kind == "row" else "area_cm2"): round(bed.size, 3)},
        "pattern": "offset" if planting.offset else "square",
        "edge_cm": planting.edge if planting.edge is not None else "half the spacing",
        "plants": {"fewest": planting.fewest, "most": planting.most},
        "kinds": [_kind_json(need, pack_sizes) for need in planting.needs],
        "notes": list(planting.notes),
    }


def _kind_json(need: Need, pack_sizes: Sequence[int]) -> dict[str, Any]:
    return {
        "name": need.kind.name,
        "basis": need.kind.basis,
        "share": need.kind.share,
        "counts": [
            {
                "spacing_cm": round(count.grid.along, 3),
                "rows_cm": round(count.grid.rows, 3),
                "placed": count.placed,
                "formula": round(count.formula, 3),
                "formula_rounded_up": count.by_formula,
                "placed_on_the_edge": count.on_edge,
                "packs": [
                    {"of": size, "packs": number, "plants": plants}
                    for size, (number, plants) in zip(
                        pack_sizes, packs(count.placed, pack_sizes), strict=True
                    )
                ],
                "spots_cm": [[round(x, 2), round(y, 2)] for x, y in count.spots],
            }
            for count in need.counts
        ],
    }
