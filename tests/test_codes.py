"""Trade item numbers and rights against the published rules."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields.codes import read_gtin, read_patents
from ocr_tags.gtin import check_digit
from ocr_tags.record import TagText


def gtins(text: str) -> list[str]:
    return [found.value for found in read_gtin(TagText(text))]


# Worked examples: GS1 (gs1.org, "How to calculate a check digit manually"), GS1 Sweden, GS1 India.
@pytest.mark.parametrize("printed", ["6291041500213", "7300011000017", "8904000210037"])
def test_worked_examples_of_gs1(printed: str) -> None:
    assert check_digit(printed[:-1]) == int(printed[-1])
    assert gtins(printed) == [printed]


# The digit is computed here from the rule: weights 3 and 1 from the right, up to the next ten.
@given(st.integers(1, 10**12 - 1))
def test_a_right_digit_is_read_and_nine_wrong_ones_are_not(body: int) -> None:
    digits = f"{body:012d}"
    total = sum(map(int, digits[-1::-2])) * 3 + sum(map(int, digits[-2::-2]))
    right = (10 - total % 10) % 10
    for last in range(10):
        printed = f"{digits}{last}"
        expected = [printed] if last == right and len(set(printed)) > 1 else []
        assert gtins(printed) == expected


@given(st.integers(0, 11), st.integers(1, 9))
def test_every_single_wrong_digit_is_caught(place: int, change: int) -> None:
    digits = list("7300011000017")
    digits[place] = str((int(digits[place]) + change) % 10)
    assert gtins("".join(digits)) == []


def test_eight_digits_alone_may_be_a_shortened_upc() -> None:
    # 01801624 is a zero-suppressed UPC: its last digit belongs to 018200000164 (expansion rule, computed).
    assert gtins("01801624") == gtins("23456785") == []
    assert gtins("EAN 2345 6785") == ["23456785"]


def patents(text: str) -> list[str]:
    return [found.value for found in read_patents(TagText(text))]


# Forms "PP" with up to five digits, "USPP#" and "PPAF": trade press primers on plant patents.
@pytest.mark.parametrize(
    "printed", ["PP08901", "USPP08901", "USPP#08901", "PP#08,901", "U.S. Plant Patent No. 08,901"]
)
def test_granted_plant_patents_have_one_form(printed: str) -> None:
    assert patents(printed) == ["PP08901"]


@given(st.integers(1000, 99_999))
def test_any_patent_number_prints_and_reads_back(number: int) -> None:
    assert patents(f"'Lantern Dusk' PP{number:,} PBR") == [f"PP{number}", "PBR"]


def test_a_label_of_us_variety_protection_is_no_number() -> None:
    # Wording after 7 CFR 97.141.
    label = "Unauthorized Propagation Prohibited - U.S. Protected Variety"
    assert patents(label) == []
