"""The judging set: its truth is what its tags say. Nothing is rendered here, for its fonts may be missing."""

import json
import sys
from pathlib import Path
from random import Random
from typing import Any

import pytest

FOLDER = Path(__file__).parent.parent / "samples" / "judging"
sys.path.insert(0, str(FOLDER))

from facts import Fact, Said  # noqa: E402
from figures import Hand, Length, check_digit, in_store_number, say_length, zone_floor  # noqa: E402
from saying import Tag, plan_tag  # noqa: E402
from smallprint import bars  # noqa: E402
from species import load_species  # noqa: E402

HAND = Hand("-", '"', " ft", " cm", " m", "hyphen", False, "( )", False)


def _everything(tag: Tag) -> dict[str, Any]:
    said = Said()
    named = (tag.common, tag.second_common, tag.foreign_common, tag.botanical, tag.series)
    for fact in (*named, *tag.facts, *tag.small, tag.passport, tag.gtin):
        if fact:
            said.add(fact, "back")
    return said.truth()[0]


def test_every_species_makes_a_tag_whose_truth_is_whole() -> None:
    for number, species in enumerate(load_species()):
        fields = _everything(plan_tag(Random(number), species))
        assert json.loads(json.dumps(fields)) == fields
        assert fields["botanical_name"]["value"]["genus"] == species.genus
        for length in ("height", "spread", "spacing"):
            value = fields.get(length, {"value": {"min_cm": 1, "max_cm": 2}})["value"]
            assert value["min_cm"] is None or 0 < value["min_cm"] <= value["max_cm"]


def test_there_are_plants_enough() -> None:
    assert len({species.name for species in load_species()}) >= 120


def test_lengths_say_what_they_are_worth() -> None:
    # 1 in = 2.54 cm and 1 ft = 30.48 cm exactly (international yard and pound agreement, 1959).
    assert say_length(Length(1.5, 2, "ft", "range"), HAND) == "1-1/2 to 2 ft (45-60 cm)"
    assert Length(12, 18, "in", "range").value == {"min_cm": 30.48, "max_cm": 45.72}
    assert Length(2, 3, "ft", "upto").value == {"min_cm": None, "max_cm": 91.44}


def test_zone_limits() -> None:
    # USDA Plant Hardiness Zone Map: 5a begins at -20 F, 7b at 5 F.
    assert (zone_floor("5"), zone_floor("7b")) == (-20, 5)


@pytest.mark.parametrize(("digits", "last"), [("629104150021", "3"), ("730001100001", "7")])
def test_check_digits(digits: str, last: str) -> None:
    """Worked examples of GS1 and of GS1 Sweden."""
    assert check_digit(digits) == last


def test_bars_follow_the_code_sets() -> None:
    """ISO/IEC 15420, code sets A, B and C, from memory; ZXing 3.1 read bars drawn by this function."""
    left = "0001101 0100111 0111101 0001011 0010111 0011101"  # 0 in A, 0 in B, 3 in A, 9 in A, 9 in B, 4 in B
    right = "1100110 1001110 1001110 1011100 1001000 1010000"
    assert bars("4003994155486") == f"101{left}01010{right}101".replace(" ", "")


@pytest.mark.parametrize("european", [True, False])
def test_numbers_are_none_that_a_product_bears(european: bool) -> None:
    # GS1: prefixes 20 to 29 and UPC-A beginning with 4 are for use inside a shop.
    for seed in range(50):
        number = in_store_number(Random(seed), european)
        assert (len(number), number[0]) == ((13, "2") if european else (12, "4"))
        assert check_digit(number[:-1]) == number[-1]


def test_two_values_of_one_field_are_refused() -> None:
    said = Said()
    said.add(Fact("water", "Water", "Low", "Low"), "front")
    said.add(Fact("water", "Water", "High", "High"), "back")
    with pytest.raises(ValueError, match="two values for water"):
        said.truth()
