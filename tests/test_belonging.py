"""Two sides of one tag, or of two? Invented texts; layouts by common practice, no source."""

from __future__ import annotations

import pytest
from fake_reading import side_of

from ocr_tags.pairing.belonging import belong_together, likely_side

CONEFLOWER = side_of("Purple Coneflower\nMagnus")
CONEFLOWER_BACK = side_of(
    "Echinacea purpurea 'Magnus'\nHeight: 24-36 in\nSpacing 18 in\nFull sun\nUSDA Zones 3-8\nBlooms summer"
)
LAVENDER = side_of("English Lavender\nHidcote")
NAMELESS_BACK = side_of("Height: 24-36 in\nSpacing 18 in\nFull sun\nUSDA Zones 3-8\nBlooms all summer")


def test_a_repeated_name_joins_whichever_comes_first() -> None:
    verdict = belong_together(CONEFLOWER, CONEFLOWER_BACK)
    assert verdict.ok and verdict.front_first and verdict.strength == 3
    assert not belong_together(CONEFLOWER_BACK, CONEFLOWER).front_first


def test_common_and_botanical_name_of_one_plant() -> None:
    """Echinacea purpurea is purple coneflower: USDA PLANTS, symbol ECPU."""
    bare = side_of("Purple Coneflower\nPerennial favourite")
    back = side_of("Echinacea purpurea\nHeight: 24-36 in\nFull sun\nUSDA Zones 3-8")
    assert belong_together(bare, back).ok


def test_a_damaged_name_still_joins() -> None:
    back = side_of("Purp1e ConefIower\nHeight: 24-36 in\nSpacing 18 in\nFull sun\nUSDA Zones 3-8")
    assert belong_together(CONEFLOWER, back).ok


def test_a_nameless_back_joins_more_weakly() -> None:
    verdict = belong_together(LAVENDER, NAMELESS_BACK)
    assert verdict.ok and verdict.front_first and verdict.strength == 2
    assert not belong_together(NAMELESS_BACK, LAVENDER).front_first


def test_an_unreadable_side_joins_most_weakly() -> None:
    verdict = belong_together(side_of("~ ."), NAMELESS_BACK)
    assert verdict.ok and verdict.strength == 1
    assert not belong_together(side_of(""), side_of(".")).ok


@pytest.mark.parametrize(
    ("one", "two", "words"),
    [
        (LAVENDER, CONEFLOWER_BACK, "two plants"),
        (LAVENDER, CONEFLOWER, "two plants"),
        (
            side_of("Meadow Sage\nSalvia nemorosa 'Wexcombe'\nFull sun"),
            side_of("Meadow Sage\nSalvia nemorosa 'Tarnlight'\nHeight: 24 in"),
            "two cultivars",
        ),
        (
            side_of("Hosta sieboldiana\nPart shade"),
            side_of("Astilbe chinensis\nHeight: 24 in\nPart shade"),
            "two genera",
        ),
    ],
)
def test_two_plants_clash(one, two, words: str) -> None:  # type: ignore[no-untyped-def]
    for verdict in (belong_together(one, two), belong_together(two, one)):
        assert not verdict.ok and verdict.clash and words in verdict.why


def test_two_fronts_that_share_a_name_stay_apart() -> None:
    roma, boy = (
        side_of("Solanum lycopersicum 'Roma'\nFor sauce"),
        side_of("Solanum lycopersicum 'Big Boy'\nSlicer"),
    )
    assert not belong_together(roma, boy).ok


def test_the_same_side_twice_stays_apart() -> None:
    assert "twice" in belong_together(CONEFLOWER, CONEFLOWER).why


def test_two_nameless_backs_stay_apart() -> None:
    other = side_of("Grows to a height of 90 cm\nFull shade\nPlant 60 cm apart\nHardy to -20 °C\nKeep moist")
    assert not belong_together(NAMELESS_BACK, other).ok


def test_half_a_cultivar_name_is_no_clash() -> None:
    front = side_of("Panicle Hydrangea\nHydrangea paniculata 'Brindlow'\nHeight 4 ft")
    back = side_of(
        "Panicle Hydrangea\nHydrangea paniculata 'Brindlow Parasol'\nFull sun\nUSDA Zones 3-8\nSpread 4 ft"
    )
    assert belong_together(front, back).ok


def test_the_side_of_a_lone_photo() -> None:
    assert likely_side(NAMELESS_BACK) == "back"
    assert likely_side(CONEFLOWER) == "front" and likely_side(side_of("")) == "front"
