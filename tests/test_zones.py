"""Zones, ratings and winter lows: against the published tables, from rows, and printed and read back."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields.cold import read_min_temperature
from ocr_tags.fields.ratings import read_heat_zones, read_rhs_rating
from ocr_tags.fields.zones import read_hardiness
from ocr_tags.record import Found, TagText
from ocr_tags.usda import HALF_ZONES, USDA_ZONES, colder_half, steps_colder, zone_for
from ocr_tags.values import Hardiness, HeatZones, Temperature

READERS: dict[str, Callable[[TagText], Iterator[Found[Any]]]] = {
    "hardiness": read_hardiness,
    "heat_zones": read_heat_zones,
    "rhs_rating": read_rhs_rating,
    "min_temperature": read_min_temperature,
}
SURE = 0.5
CASES = Path(__file__).parent / "cases"


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) * 5 / 9


# ---------------------------------------------------------------- the USDA table


def test_the_usda_table_has_26_steps_of_five_degrees_fahrenheit() -> None:
    """USDA Plant Hardiness Zone Map: zones 10 °F wide from -60 °F, halves 5 °F, 1a to 13b."""
    assert len(USDA_ZONES) == 26
    for step, (name, low, high, low_c, high_c) in enumerate(USDA_ZONES):
        assert name == f"{step // 2 + 1}{'ab'[step % 2]}"
        assert (low, high) == (-60 + 5 * step, -55 + 5 * step)
        assert low_c == pytest.approx(celsius(low), abs=0.051)
        assert high_c == pytest.approx(celsius(high), abs=0.051)


@pytest.mark.parametrize("row", USDA_ZONES, ids=[row[0] for row in USDA_ZONES])
def test_hardy_to_the_lower_limit_is_that_zone(row: tuple[str, int, int, float, float]) -> None:
    """A zone's plants bear its lower limit; tags print it in whole degrees of either scale."""
    name, low, _, low_c, _ = row
    assert zone_for(celsius(low)) == zone_for(low_c) == zone_for(round(celsius(low))) == name


@given(st.floats(-80, 40))
def test_a_temperature_inside_a_zone_is_that_zone(temperature: float) -> None:
    fahrenheit = temperature * 9 / 5 + 32
    inside = [row[0] for row in USDA_ZONES if row[1] + 1 < fahrenheit < row[2] - 1]
    assert not inside or zone_for(temperature) == inside[0]
    if fahrenheit < -61 or fahrenheit > 71:
        assert zone_for(temperature) is None


def test_a_whole_zone_counts_as_its_colder_half() -> None:
    assert [colder_half(str(zone)) for zone in range(1, 14)] == list(HALF_ZONES[::2])
    assert steps_colder("5", "5a") == 0 and steps_colder("4", "5") == 2 and steps_colder("10b", "10a") == -1
    for wrong in ("14", "0", "5c", "", "x"):
        with pytest.raises(ValueError, match="zone"):
            colder_half(wrong)


# ---------------------------------------------------------------- rows


def rows() -> Iterator[object]:
    for path in sorted(CASES.glob("zones*.tsv")):
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1):
            if line and not line.startswith("#"):
                yield pytest.param(line, id=f"{path.stem}-{number}")


def value_of(name: str, printed: str) -> object:
    if name == "rhs_rating":
        return printed
    if name == "min_temperature":
        return celsius(float(printed[:-1])) if printed[-1] == "F" else float(printed[:-1])
    low, high = printed.split(":")
    return Hardiness(low or None, high or None) if name == "hardiness" else HeatZones(int(low), int(high))


def plain(value: object) -> object:
    return pytest.approx(value.celsius) if isinstance(value, Temperature) else value


@pytest.mark.parametrize("line", list(rows()))
def test_rows(line: str) -> None:
    text, wanted = line.split("\t")
    tag = TagText(text.replace("\\n", "\n").replace("\\t", "\t"))
    values = {}
    for part in wanted.split():
        if part not in {"-", "-?"}:
            name, printed = part.split("=")
            values[name] = (value_of(name, printed.rstrip("~?")), re.sub(r".*?([~?]?)$", r"\1", printed))
    for name, read in READERS.items():
        found = list(read(tag))
        for one in found:
            if name in values:
                value, mark = values[name]
                assert plain(one.value) == value
                assert one.certainty <= {"~": 0.9, "?": SURE, "": 1}[mark]
            else:
                assert wanted == "-?" and one.certainty <= SURE, one
        sure = any(one.certainty > SURE for one in found)
        assert sure or name not in values or values[name][1] == "?"


# ---------------------------------------------------------------- printed and read back

ZONE = st.sampled_from([*map(str, range(1, 14)), *HALF_ZONES])
HEADS = [
    "Zones",
    "Zone:",
    "USDA Zones",
    "USDA",
    "Hardiness Zones:",
    "Hardiness zone",
    "Zone de rusticité",
    "Zona",
    "WHZ",
]


@given(
    ZONE, ZONE, st.sampled_from(HEADS), st.sampled_from(["-", " - ", "–", " to ", "—", " à ", " through "])
)
def test_a_printed_range_of_zones_is_read_back(one: str, other: str, head: str, dash: str) -> None:
    low, high = sorted((one, other), key=lambda zone: (HALF_ZONES.index(colder_half(zone)), zone))
    (found,) = read_hardiness(TagText(f"Perennial\n{head} {low}{dash}{high}\nFull sun"))
    assert found.value == Hardiness(low, high)
    assert found.certainty > 0.8


@given(ZONE, ZONE)
def test_a_reversed_range_is_never_hardiness(one: str, other: str) -> None:
    low, high = sorted((one, other), key=lambda zone: HALF_ZONES.index(colder_half(zone)))
    if steps_colder(low, high) > 1:
        assert all(x.certainty <= SURE for x in read_hardiness(TagText(f"Zones {high}-{low}")))


@given(
    st.integers(2, 12),
    st.sampled_from(["AHS heat zones {}-1", "Heat Zones: {} to 1", "Zones 4-8/{}-1", "AHS {}–1"]),
)
def test_heat_zones_run_from_hot_to_cool(hottest: int, form: str) -> None:
    """AHS Plant Heat-Zone Map (1997): twelve zones, printed hottest first."""
    (found,) = read_heat_zones(TagText(form.format(hottest)))
    assert found.value == HeatZones(1, hottest)


@pytest.mark.parametrize("rating", ["H1a", "H1b", "H1c", "H2", "H3", "H4", "H5", "H6", "H7"])
def test_every_rhs_rating(rating: str) -> None:
    """Royal Horticultural Society hardiness ratings: H1a, H1b, H1c, H2 to H7."""
    for form in ("RHS {}", "RHS hardiness rating: {}", "Hardiness: {}", "Hardiness\t{}", "Fully hardy ({})"):
        (found,) = read_rhs_rating(TagText(form.format(rating)))
        assert found.value == rating


@pytest.mark.parametrize(
    "text", ["H5", "Bench H5", "H 5 in", 'H5"', "RHS H8", "RHS H1", "RHS H0", "Hardiness H5-7 ft"]
)
def test_what_only_looks_like_a_rating(text: str) -> None:
    assert list(read_rhs_rating(TagText(text))) == []


@given(
    st.integers(-50, 0),
    st.sampled_from(
        [
            "Hardy to {}°F",
            "Cold hardy to {} degrees F",
            "Min. temp {}F",
            "Hardiness: {} ºF",
            "Withstands {}°F",
        ]
    ),
)
def test_a_printed_winter_low_is_read_back(low: int, form: str) -> None:
    (found,) = read_min_temperature(TagText(form.format(low)))
    assert found.value.celsius == pytest.approx(celsius(low))


@given(st.integers(-45, 10))
def test_the_first_of_two_scales_counts_and_the_second_checks_it(low: int) -> None:
    fahrenheit = round(low * 9 / 5 + 32)
    (found,) = read_min_temperature(TagText(f"Hardy to {low}°C ({fahrenheit}°F)"))
    assert found.value.celsius == low and found.certainty > 0.9
    (clash,) = read_min_temperature(TagText(f"Hardy to {low}°C ({fahrenheit + 10}°F)"))
    assert clash.certainty <= 0.4


def test_a_label_between_two_ranges_may_be_that_of_either() -> None:
    found = list(read_hardiness(TagText("2-7\nZONE\n4-6\n\nTALL")))
    assert {(one.value.min_zone, one.value.max_zone) for one in found} == {("2", "7"), ("4", "6")}
    assert all(one.certainty <= 0.5 for one in found)
    (alone,) = read_hardiness(TagText("Full sun\nZONE\n4-6"))
    assert alone.certainty > 0.9


@given(st.text(alphabet="Zones Hardy to°FCH1459-ab/\t\nUSDA:", max_size=60))
def test_no_text_is_too_strange(text: str) -> None:
    for read in READERS.values():
        for found in read(TagText(text)):
            assert 0 <= found.span[0] < found.span[1] <= len(text)
            assert 0 < found.certainty <= 1
