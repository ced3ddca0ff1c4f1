"""Bloom times: months print and read back; seasons stay seasons."""

from __future__ import annotations

import calendar

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields.bloom.reader import read_bloom
from ocr_tags.record import TagText
from ocr_tags.values import Bloom


def blooms(text: str) -> list[Bloom]:
    return [found.value for found in read_bloom(TagText(text))]


# Month names and their order: Python's calendar.
@given(st.integers(1, 12), st.integers(1, 12), st.sampled_from([calendar.month_name, calendar.month_abbr]))
def test_any_range_of_months(first: int, last: int, names: calendar.month_name) -> None:  # type: ignore[valid-type]
    printed = f"{names[first]} to {names[last]}"  # type: ignore[index]
    months = [first]
    while months[-1] != last:
        months.append(months[-1] % 12 + 1)
    assert blooms(f"Bloom time: {printed}") == [Bloom(printed, (), tuple(months))]


# Meteorological seasons differ by hemisphere (Mississippi State University, after NCDC): no months then.
@pytest.mark.parametrize("season", ["spring", "summer", "fall", "winter"])
@pytest.mark.parametrize("part", ["", "early", "mid", "late"])
def test_seasons_name_no_months(season: str, part: str) -> None:
    printed = f"{part} {season}".strip()
    assert blooms(f"Blooms in {printed}") == [Bloom(printed, (printed.replace(" ", "_"),), ())]


def test_autumn_is_fall() -> None:
    assert blooms("Flowering time: Late autumn")[0].seasons == ("late_fall",)


@pytest.mark.parametrize(
    "text",
    [
        "Plant in spring",
        "Prune after bloom in fall",
        "Harvest June to August",
        "J F M A M J J A S O N D",
        "Blooms 6-9 in.",
    ],
)
def test_other_times_and_other_numbers(text: str) -> None:
    assert blooms(text) == []
