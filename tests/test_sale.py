"""Prices print and read back; containers stay as printed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields.container.reader import read_container
from ocr_tags.fields.sale import read_price
from ocr_tags.record import TagText
from ocr_tags.values import Price

# Currency codes: ISO 4217.
PRINTED = {
    "${}": "USD",
    "US${}": "USD",
    "CA${}": "CAD",
    "€{}": "EUR",
    "£{}": "GBP",
    "{} €": "EUR",
    "{} EUR": "EUR",
}


@given(st.integers(1, 999_99), st.sampled_from(sorted(PRINTED)))
def test_any_price_prints_and_reads_back(cents: int, form: str) -> None:
    amount = f"{cents // 100}.{cents % 100:02d}"
    found = [one.value for one in read_price(TagText(form.format(amount)))]
    assert found == [Price(amount, PRINTED[form])]


@pytest.mark.parametrize(
    "text", ["2 for $10", "3/$5.00", "Save $2.00", "$2.00 off", "$250 fine", "$899", "6.99"]
)
def test_no_price_of_one_plant(text: str) -> None:
    assert list(read_price(TagText(text))) == []


@pytest.mark.parametrize(
    "text", ["Plant in a 12 in. pot", "Add 1 gal of water", "#1 in gardens", "Space 4 in. apart"]
)
def test_no_container_of_this_plant(text: str) -> None:
    assert list(read_container(TagText(text))) == []
