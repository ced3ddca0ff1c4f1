"""How many plants a bed needs, held against published tables, worked examples and plain geometry."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from truth_records import truth_records

from ocr_tags.errors import QueryError
from ocr_tags.planting import beds
from ocr_tags.planting.needs import DIGGING, packs, work_out
from ocr_tags.planting.placing import Grid, by_formula, how_far_apart, place, round_up, slabs
from ocr_tags.planting.spacings import from_record, stated
from ocr_tags.record import Reading, TagRecord
from ocr_tags.values import Length

INCH, FOOT = 2.54, 30.48
ACRE_SQ_FT = 43_560


def square_feet(area: float) -> beds.Bed:
    """A bed of this many square feet, whatever its shape."""
    return beds.rectangle(f"{area:g} ft", "1 ft")


def grid(inches: float, rows: float | None = None, *, offset: bool = False) -> Grid:
    return Grid(inches * INCH, None if rows is None else rows * INCH, offset)


# ---------------------------------------------------------------- the formula against published tables

# "Determining Plant Quantity", Iowa State University Extension, Horticulture and Home Pest News, 29 Apr 1992:
# spacing in inches, plants per square foot.
IOWA_STATE = [(6, 4), (8, 2.25), (10, 1.44), (12, 1), (18, 0.44), (24, 0.25)]

# T. DiSabato-Aust, The Well-Tended Perennial Garden, 3rd ed.: the same. It prints .45 for 18 in, which is
# .444 rounded up.
DISABATO_AUST = [(12, 1.00), (15, 0.64), (18, 0.45), (24, 0.25), (36, 0.11)]

# Commercial Gardening, ed. J. Weathers, 1913, vol. 3: inches by inches, plants in a square rod (272¼ sq ft).
# It leaves out the fraction of a plant; a gardener who buys rounds up.
ROD = [
    *[(3, 3, 4356), (4, 4, 2450), (5, 4, 1960), (6, 4, 1633), (6, 6, 1089), (8, 6, 816), (8, 8, 612)],
    *[(10, 8, 490), (10, 10, 392), (12, 12, 272), (15, 10, 261)],
]

# The same, and L. H. Bailey, Farm and Garden Rule-Book, 1911, per acre "full to the margin".
ACRE = [
    *[(30, 12, 17_424), (30, 18, 11_616), (30, 24, 8_712), (30, 30, 6_969), (30, 36, 5_808), (30, 42, 4_978)],
    *[(24, 36, 7_260), (3, 7, 298_697), (3, 12, 174_240), (4, 7, 224_022), (4, 8, 196_020)],
]


@pytest.mark.parametrize(("inches", "printed"), [*IOWA_STATE, *DISABATO_AUST])
def test_plants_per_square_foot(inches: float, printed: float) -> None:
    assert by_formula(square_feet(1), grid(inches)) == pytest.approx(printed, abs=0.006)


@pytest.mark.parametrize(("along", "rows", "printed"), ROD)
def test_plants_per_square_rod(along: float, rows: float, printed: int) -> None:
    assert math.floor(by_formula(square_feet(272.25), grid(along, rows)) + 1e-6) == printed


@pytest.mark.parametrize(("along", "rows", "printed"), ACRE)
def test_plants_per_acre(along: float, rows: float, printed: int) -> None:
    acre = beds.rectangle("43560 ft", "1 ft")
    assert math.floor(by_formula(acre, grid(along, rows)) + 1e-6) == printed


def test_trees_per_acre() -> None:
    """K. Coder, "Number of Trees per Acre by Spacing Distance", University of Georgia: 9 by 9 ft, 538."""
    assert round(by_formula(square_feet(ACRE_SQ_FT), grid(9 * 12))) == 538


def test_iowa_states_worked_examples() -> None:
    """100 sq ft at 8 in want 225; a circle of 10 ft radius has 314 sq ft, a triangle of 20 by 25 ft 250."""
    assert round_up(by_formula(beds.rectangle("10ft", "10ft"), grid(8))) == 225
    assert beds.circle("20 ft").size / FOOT**2 == pytest.approx(314, abs=0.2)
    assert beds.polygon("0,0 20ft,0 0,25ft").size / FOOT**2 == pytest.approx(250)


def test_the_figures_in_circulation_that_the_formula_does_not_bear_out() -> None:
    """Many trade tables print 2.28 for 8 in, some .24 for 24 in. 144/8² is 2.25 and 144/24² is .25."""
    assert by_formula(square_feet(1), grid(8)) == pytest.approx(2.25)
    assert by_formula(square_feet(1), grid(24)) == pytest.approx(0.25)


# Sunset, "Bedding plants" (sunset.com): offset rows; inches apart, square feet that 48 and 64 plants
# cover, to the half foot, now rounded and now cut off.
SUNSET = [
    *[(48, 4, 4.5), (48, 6, 10), (48, 8, 18), (48, 10, 28.5), (48, 12, 41.5)],
    *[(64, 4, 6), (64, 6, 13.5), (64, 8, 24.5), (64, 10, 38.5), (64, 12, 55.5)],
]


@pytest.mark.parametrize(("plants", "inches", "square_feet"), SUNSET)
def test_area_that_offset_rows_cover(plants: int, inches: float, square_feet: float) -> None:
    covered = plants * grid(inches, offset=True).room / FOOT**2
    assert -0.1 < covered - square_feet < 0.5
    assert plants * grid(inches).room / FOOT**2 - square_feet > 0.5  # a square pattern covers more


def test_rows_of_the_triangular_pattern() -> None:
    """E. J. Wickson, The California Fruits and How to Grow Them: trees 18 ft apart, rows 15.588 ft."""
    assert grid(18 * 12, offset=True).rows / FOOT == pytest.approx(15.588, abs=0.0005)


@pytest.mark.parametrize(
    ("feet", "printed"), [(6, 1540), (8, 867), (10, 555), (15, 246), (20, 138), (40, 35)]
)
def test_a_table_of_circles_is_denser_than_any_planting(feet: float, printed: int) -> None:
    """Forest Management Workshop Manual (kyphilom.com, 1995), "calculated on circular spacings".

    It gives every tree a circle one spacing across and no ground between the circles, which no pattern can
    do: 4/π of the square formula, and more than the triangular pattern, the densest there is.
    """
    acre = square_feet(ACRE_SQ_FT)
    assert by_formula(acre, grid(feet * 12)) * 4 / math.pi == pytest.approx(printed, abs=1)
    assert by_formula(acre, grid(feet * 12, offset=True)) < printed


# ---------------------------------------------------------------- plants set on the ground


def placed(bed: beds.Bed, inches: float, *, offset: bool = False, edge: float | None = None) -> int:
    return len(place(bed, grid(inches, offset=offset), edge))


def test_ten_by_four_feet() -> None:
    """Geometry: 40 with half a spacing kept free, as by the formula; 11 × 5 with plants on the edge."""
    bed = beds.rectangle("10ft", "4ft")
    assert placed(bed, 12) == round_up(by_formula(bed, grid(12))) == 40
    assert placed(bed, 12, edge=0.0) == 55


def test_a_square_acre_of_trees() -> None:
    """Oklahoma Experiment Station Circular 20, quoted in L. H. Bailey, The Principles of Fruit-Growing, 1915.

    At 25 ft a square acre holds 64 trees by the square system and 67 by the triangular. The circular
    counts nine rows that begin with one of seven; begun with one of eight there are 68.
    """
    acre = beds.polygon("0,0 208.71ft,0 208.71,208.71 0,208.71")
    assert placed(acre, 25 * 12) == 64
    spots = place(acre, grid(25 * 12, offset=True))
    rows = min((Counter(round(spot[axis]) for spot in spots) for axis in (0, 1)), key=len)
    assert [rows[place] for place in sorted(rows)] == [8, 7, 8, 7, 8, 7, 8, 7, 8]


def test_a_field_with_a_free_margin() -> None:
    """M. Kihanya, Sunday Nation (Nairobi), 30 May 2021: trees 6 ft apart.

    200 by 200 ft take 33 rows of 33; 447 by 447 ft with 20 ft kept free take 68 rows of 68.
    """
    assert placed(beds.polygon("0,0 200ft,0 200,200 0,200"), 72) == 33 * 33
    field = beds.polygon("0,0 447ft,0 447,447 0,447")
    assert placed(field, 72, edge=20 * FOOT) == 68 * 68


@pytest.mark.parametrize(("radius", "plants"), [(1, 7), (2, 19), (3, 37)])
def test_rings_in_a_circle(radius: int, plants: int) -> None:
    """Centred hexagonal numbers (OEIS A003215): one in the middle, then rings of 6, 12, 18."""
    on_edge = beds.circle(f"{2 * radius} ft")
    assert placed(on_edge, 12, offset=True, edge=0.0) >= plants
    assert placed(beds.circle(f"{2 * radius + 1} ft"), 12, offset=True) >= plants


@pytest.mark.parametrize(("radius", "plants"), [(1, 5), (2, 13), (3, 29), (4, 49)])
def test_square_pattern_in_a_circle(radius: int, plants: int) -> None:
    """Points of the square lattice about one of them (OEIS A000328); another centre may hold more."""
    assert placed(beds.circle(f"{2 * radius} ft"), 12, edge=0.0) >= plants


def test_running_row() -> None:
    """Plants on centres: half a spacing at each end, or one more with both ends planted."""
    row = beds.row("20 ft")
    assert placed(row, 12) == 20 and placed(row, 12, edge=0.0) == 21 and by_formula(row, grid(12)) == 20
    assert placed(beds.row("250 ft"), 30) == 100
    assert place(beds.row("10in"), grid(12)) == []


def test_an_l_shaped_bed() -> None:
    """Two rectangles of 10 by 4 and 4 by 6 ft: 64 sq ft, which 12 in divides everywhere."""
    bed = beds.polygon("0,0 10ft,0 10ft,4ft 4ft,4ft 4ft,10ft 0,10ft")
    assert placed(bed, 12) == 64 == round_up(by_formula(bed, grid(12)))


def test_rows_follow_a_slanting_bed() -> None:
    """The bed of 10 by 4 ft, turned by the angle of a 3-4-5 triangle, holds what it held before."""
    slanting = beds.polygon("0,0 8ft,6ft 5.6ft,9.2ft -2.4ft,3.2ft")
    assert slanting.size == pytest.approx(40 * FOOT**2)
    assert placed(slanting, 12) == 40


def test_corners_may_come_in_either_order_and_unit() -> None:
    turned = beds.polygon("0,3.048m; 0,0; 121.92 cm, 0; 121.92cm,3.048m")
    assert turned.size == pytest.approx(beds.rectangle("10ft", "4ft").size)
    assert placed(turned, 12) == 40


lengths = st.integers(4, 60).map(lambda quarters: quarters * 3.0)


@given(lengths, lengths, st.integers(4, 40), st.booleans(), st.sampled_from([None, 0.0, 5.0]))
@settings(max_examples=60, deadline=None)
def test_plants_keep_their_distance(
    long: float, wide: float, inches: int, offset: bool, edge: float | None
) -> None:
    """No two stand closer than the spacing, none closer to the edge than wanted, half a millimetre apart."""
    bed = beds.rectangle(f"{long} in", f"{wide} in")
    spots = place(bed, grid(inches, offset=offset), edge)
    kept = inches * INCH / 2 if edge is None else edge
    outline = bed.ground.exterior
    assert all(bed.ground.buffer(0.1).contains(shapely.Point(spot)) for spot in spots)
    assert all(outline.distance(shapely.Point(spot)) >= kept - 0.06 for spot in spots)
    if len(spots) > 1:
        tree = shapely.STRtree([shapely.Point(spot) for spot in spots])
        close = tree.query(
            [shapely.Point(spot) for spot in spots], predicate="dwithin", distance=inches * INCH - 0.06
        )
        assert len(close[0]) == len(spots)  # every plant is near itself alone
    if not offset:
        free = [side * INCH - 2 * kept + 0.06 for side in (long, wide)]
        fits = [math.floor(side / (inches * INCH)) + 1 if side > 0 else 0 for side in free]
        assert len(spots) == fits[0] * fits[1]


# ---------------------------------------------------------------- how far apart


@pytest.mark.parametrize(("plants", "inches"), [(40, 12), (10, 24), (160, 6)])
def test_the_reverse_undoes_the_formula(plants: int, inches: float) -> None:
    apart = how_far_apart(beds.rectangle("10ft", "4ft"), plants)
    assert apart.by_formula == pytest.approx(inches * INCH)
    assert apart.placed == pytest.approx(inches * INCH, abs=0.1)


def test_the_reverse_on_a_row() -> None:
    assert how_far_apart(beds.row("20ft"), 20).placed == pytest.approx(FOOT, abs=0.1)
    assert how_far_apart(beds.row("20ft"), 21, edge=0.0).placed == pytest.approx(FOOT, abs=0.1)


@given(st.integers(1, 80), st.booleans(), st.sampled_from(["circle", "polygon"]))
@settings(max_examples=15, deadline=None)
def test_so_many_do_fit(plants: int, offset: bool, shape: str) -> None:
    bed = beds.circle("3 m") if shape == "circle" else beds.polygon("0,0 3m,0 2m,2m 0,2m")
    apart = how_far_apart(bed, plants, offset).placed
    assert len(place(bed, Grid(apart, offset=offset))) >= plants


@pytest.mark.parametrize("plants", [0, -3, 1_000_000])
def test_a_number_that_makes_no_sense(plants: int) -> None:
    with pytest.raises(QueryError):
        how_far_apart(beds.rectangle("10ft", "4ft"), plants)


# ---------------------------------------------------------------- ranges, shares, packs


def test_a_range_of_spacing_gives_a_range_of_counts() -> None:
    planting = work_out(beds.rectangle("12ft", "3ft"), [stated("12-18 in", "Thyme")])
    assert (planting.fewest, planting.most) == (8 * 2, 12 * 3)
    assert [count.by_formula for count in planting.needs[0].counts] == [36, 16]


def test_several_kinds_by_share() -> None:
    """60 and 40 hundredths of 10 by 4 ft are 6 and 4 ft of it: 24 at 12 in, and 4 ft by 4 ft at 24 in."""
    kinds = [replace(stated("12in", "Thyme"), share=60), replace(stated("2ft", "Hosta"), share=40)]
    planting = work_out(beds.rectangle("10ft", "4ft"), kinds)
    assert [need.fewest.placed for need in planting.needs] == [24, 4]
    assert [need.fewest.formula for need in planting.needs] == pytest.approx([24, 4])
    thyme, hosta = (need.fewest.spots for need in planting.needs)
    nearest = min(math.dist(one, other) for one in thyme for other in hosta)
    assert nearest >= (12 + 24) / 2 * INCH - 0.1  # unlike neighbours: half the sum of their spacings


@pytest.mark.parametrize("offset", [False, True])
@pytest.mark.parametrize("edge", [None, 0.0])
def test_unlike_neighbours_keep_half_the_sum_of_their_spacings(offset: bool, edge: float | None) -> None:
    kinds = [stated("12in", "Thyme"), stated("20in", "Hosta"), stated("8in", "Sedge")]
    planting = work_out(beds.circle("14ft"), kinds, offset, edge)
    for one, other in pairwise(planting.needs):
        nearest = min(math.dist(a, b) for a in one.fewest.spots for b in other.fewest.spots)
        assert nearest >= (one.kind.wide + other.kind.wide) / 2 - 0.2


def test_shares_cut_any_shape() -> None:
    for bed in (beds.circle("10ft"), beds.row("20ft"), beds.polygon("0,0 3m,0 1m,8m")):
        ends = [slab.high for slab in slabs(bed, [1, 2, 1])]
        assert ends[-1] == math.inf and all(a < b for a, b in pairwise(ends))
    middle = next(slabs(beds.circle("10ft"), [1, 1])).high
    assert middle == pytest.approx(5 * FOOT, abs=0.01)


def test_packs_are_not_broken() -> None:
    assert list(packs(40, (6, 36, 40))) == [(7, 42), (2, 72), (1, 40)]


# ---------------------------------------------------------------- from a record


def record(**sizes: Reading[Length]) -> TagRecord:
    return TagRecord("t", (), {name: (reading,) for name, reading in sizes.items()})


def read(low: float | None, high: float | None, sure: float = 0.99) -> Reading[Length]:
    return Reading(Length(low, high), "as printed", "back", None, sure)


def test_spacing_from_a_tag() -> None:
    kind = from_record(truth_records()["04-hydrangea"], "Hydrangea", 0.8, "in")
    assert (kind.narrow, kind.wide, kind.basis) == (54 * INCH, 54 * INCH, "printed")
    assert kind.spacing_in_words("in") == "4½ ft (printed)"
    assert DIGGING in work_out(beds.rectangle("20ft", "20ft"), [kind]).notes  # a shrub


def test_rows_printed_on_a_tag_are_kept() -> None:
    kind = from_record(truth_records()["34-strawberry"], "Strawberry", 0.8, "in")
    assert kind.between and kind.between > kind.wide
    assert DIGGING not in work_out(beds.rectangle("20ft", "20ft"), [kind]).notes


def test_no_spacing_is_said_and_spread_is_only_an_estimate() -> None:
    tag = truth_records()["03-hydrangea"]
    with pytest.raises(QueryError, match=r"prints no spacing\. .*--from-spread.*5½–6½ ft"):
        from_record(tag, "Hydrangea", 0.8, "in")
    kind = from_record(tag, "Hydrangea", 0.8, "in", from_spread=True)
    assert kind.basis == "estimate from spread" and "an estimate" in kind.notes[0]
    assert "(estimate from spread)" in kind.spacing_in_words("in")
    with pytest.raises(QueryError, match="no spread either"):
        from_record(record(), "Nothing", 0.8, "in", from_spread=True)


def test_spread_never_takes_the_place_of_a_printed_spacing() -> None:
    tag = record(spacing=read(30, 30), spread=read(60, 60))
    assert from_record(tag, "Thyme", 0.8, "cm", from_spread=True).wide == 30


def test_open_ends_and_doubt_are_said() -> None:
    kind = from_record(record(spacing=read(None, 45, sure=0.4)), "Thyme", 0.8, "cm")
    assert (kind.narrow, kind.wide) == (45, 45)
    assert any("only the widest" in note for note in kind.notes)
    assert any("doubtful" in note and "look at the tag" in note for note in kind.notes)


# ---------------------------------------------------------------- bad input

BAD = [
    (lambda: beds.rectangle("-3ft", "4ft"), "length of the bed must be more than nothing"),
    (lambda: beds.rectangle("3ft", "0"), "width of the bed must be more than nothing"),
    (lambda: beds.rectangle("3", "4ft"), "not a length with a unit"),
    (lambda: beds.rectangle("3-4ft", "4ft"), "must be one length"),
    (lambda: beds.circle("wide"), "not a length"),
    (lambda: beds.polygon("0,0 10ft,10ft 10ft,0 0,10ft"), "crosses or touches itself at 5 ft, 5 ft"),
    (lambda: beds.polygon("0,0 10ft,0"), "at least three corners"),
    (lambda: beds.polygon("0,0 5ft,0 10ft,0"), "on one line"),
    (lambda: beds.polygon("0,0 10,0 10,4"), "no unit"),
    (lambda: beds.polygon("0,0 ten,0 10ft,4ft"), "is not a corner"),
    (lambda: stated("-6in", "x"), "spacing must be more than nothing"),
    (lambda: work_out(beds.rectangle("10in", "10in"), [stated("1ft", "Thyme")]), "12 in does not fit"),
    (lambda: work_out(beds.circle("1ft"), [stated("2ft", "Thyme")]), "does not fit into a circle"),
    (lambda: work_out(beds.rectangle("100m", "100m"), [stated("1in", "x")]), "Check the units"),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "said"), BAD, ids=[said for _, said in BAD])
def test_bad_input_gets_one_clear_sentence(ask: object, said: str) -> None:
    with pytest.raises(QueryError, match=said) as caught:
        ask()  # type: ignore[operator]
    assert "\n" not in str(caught.value)
