"""Common names of both sides laid together: the title as printed, not a part of it.

What is printed is invented. Quotes set a cultivar apart (ICNCP 9th edition, Art. 14, from memory); that a
selling name then stands for itself is common practice, no source.
"""

from dataclasses import replace

import pytest

from ocr_tags.claims.whole_names import whole_names
from ocr_tags.names.cultivars import with_cultivar
from ocr_tags.names.matching import match_plant
from ocr_tags.record import Box, Reading
from ocr_tags.values import BotanicalName

SPECIES = BotanicalName("Digitalis purpurea", "Digitalis", "purpurea")
CULTIVAR = with_cultivar(SPECIES, "Marrow Lark")
ONE_LINE, TWO_LINES = Box(0, 0, 900, 60), Box(0, 0, 400, 130)


def named(value: str, confidence: float = 0.9, box: Box = ONE_LINE) -> Reading[str]:
    return Reading(value, value, "front", box, confidence, "read")


@pytest.mark.parametrize(
    ("names", "botanical", "kept"),
    [
        (("Marrow Lark Common Foxglove", "Common Foxglove"), SPECIES, 1),
        (("Marrow Lark Common Foxglove", "Foxglove"), SPECIES, 1),
        (("Common Foxglove", "Foxglove"), SPECIES, 2),
        (("Marrow Lark Common Foxglove", "Common Foxglove"), CULTIVAR, 2),
    ],
)
def test_the_rest_of_a_title_is_no_other_name(
    names: tuple[str, ...], botanical: BotanicalName, kept: int
) -> None:
    found = whole_names([named(name) for name in names], botanical)
    assert [one.value for one in found] == list(names[:kept])


def test_a_cultivar_on_a_line_above_is_no_part_of_the_common_name() -> None:
    title = named("Marrow Lark Common Foxglove", box=TWO_LINES)
    found = whole_names([title, named("Common Foxglove")], CULTIVAR)
    assert [one.value for one in found] == ["Common Foxglove"]


def test_a_doubtful_title_does_not_replace_a_sure_name() -> None:
    found = whole_names([named("Lyd Common Foxglove", 0.55), named("Common Foxglove", 0.95)], SPECIES)
    assert "Common Foxglove" in [one.value for one in found]


def test_a_title_that_begins_with_a_selling_name_still_finds_its_plant() -> None:
    found = match_plant(("Marrow Lark Common Foxglove",), None)
    assert found is not None and found.name == "Digitalis purpurea"


def test_a_word_of_a_cultivar_that_names_another_plant_is_no_common_name() -> None:
    found = whole_names([named("Mango"), named("Common Foxglove")], SPECIES)
    assert [one.value for one in found] == ["Common Foxglove"]
    assert [one.value for one in whole_names([named("Mango")], SPECIES)] == ["Mango"]


def test_a_series_before_a_name_is_no_part_of_it() -> None:
    names = [named("Fern Hollow Common Foxglove"), named("Common Foxglove", 0.9)]
    for some in (names, names[:1]):
        assert [one.value for one in whole_names(some, SPECIES, "Fern Hollow")] == ["Common Foxglove"]
    assert [one.value for one in whole_names([named("Moon Daisies")], SPECIES, "Moon Daisies")] != []


def test_one_line_of_a_name_over_two_is_no_other_name() -> None:
    title, line = named("Common Foxglove", 0.9, TWO_LINES), named("Foxglove", 0.95, Box(0, 70, 380, 60))
    assert [one.value for one in whole_names([title, line], SPECIES)] == ["Common Foxglove"]
    apart = named("Foxglove", 0.95, Box(0, 600, 380, 60))
    assert len(whole_names([title, apart], SPECIES)) == 2


def test_the_end_of_a_name_that_the_other_side_has_whole_is_no_other_name() -> None:
    whole, end = named("Woodland Forget-me-not"), replace(named("Forget-me-not"), side="back")
    held = {"back": ("Forget-Me-Not", "Woodland", "Myosotis sylvatica")}
    assert whole_names([whole, end], None, None, held) == (whole,)
    assert len(whole_names([whole, end], None, None, {"back": ("Forget-Me-Not",)})) == 2
