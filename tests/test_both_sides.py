"""The botanical name on one side tells what a word of the other side is."""

from dataclasses import replace

import pytest

from ocr_tags.claims.both_sides import settled
from ocr_tags.claims.of_side import Claim
from ocr_tags.record import Box, Side
from ocr_tags.values import BotanicalName, Length, PlantPassport

BOX = Box(0, 0, 90, 20)


def named(name: str, side: Side = "front", certainty: float = 0.7) -> Claim:
    return Claim(name, name, side, BOX, (("rapidocr", certainty),), 0.0, certainty=certainty)


def in_latin(genus: str, species: str, side: Side = "back", certainty: float = 0.96) -> Claim:
    value = BotanicalName(f"{genus} {species}", genus, species)
    return Claim(value, value.name, side, BOX, (("rapidocr", certainty),), 0.0, certainty=certainty)


def certainty_beside(common: Claim, botanical: Claim) -> float:
    (claim,) = settled({"common_names": [common], "botanical_name": [botanical]})["common_names"]
    return claim.certainty


@pytest.mark.parametrize(
    ("front", "genus", "species", "certainty"),
    [
        ("Apple", "Malus", "domestica", 0.95),  # a fruit, a scent, or the tree: the back tells
        ("Jacaranda", "Jacaranda", "mimosifolia", 0.95),
        ("Sorrel Moon Apple", "Malus", "domestica", 0.8),  # its beginning may be another thing
        ("Sorrel Moon", "Malus", "domestica", 0.7),
        ("Apricot", "Impatiens", "walleriana", 0.42),  # a colour, most likely
    ],
)
def test_a_name_is_surer_beside_its_own_plant(front: str, genus: str, species: str, certainty: float) -> None:
    assert certainty_beside(named(front), in_latin(genus, species)) == pytest.approx(certainty)


def test_nothing_changes_what_stands_beside_its_own_botanical_name_or_an_unsure_one() -> None:
    assert certainty_beside(named("Apricot", side="back"), in_latin("Impatiens", "walleriana")) == 0.7
    assert certainty_beside(named("Apple"), in_latin("Malus", "domestica", certainty=0.5)) == 0.7


def test_votes_follow_the_certainty() -> None:
    apple = [named("Apple")]
    found = settled({"common_names": apple, "botanical_name": [in_latin("Malus", "domestica")]})
    ((engine, vote),) = found["common_names"][0].votes
    assert (engine, vote) == ("rapidocr", pytest.approx(0.95))


def test_one_print_is_the_distance_of_rows_and_not_of_plants_as_well() -> None:
    five, eight = (
        Claim(Length(cm, cm), printed, "back", Box(0, y, 40, 20), (("rapidocr", 0.9),), 0.0, certainty=0.9)
        for cm, printed, y in ((152.4, "5'", 0), (243.84, "8'", 30))
    )
    found = settled({"spacing": [five, eight], "row_spacing": [eight]})
    assert (found["spacing"], found["row_spacing"]) == ([five], [eight])


@pytest.mark.parametrize(("text_of_spacing", "heights"), [(0, 0), (1, 1)])
def test_a_length_is_what_the_surer_words_say_unless_one_text_says_both(
    text_of_spacing: int, heights: int
) -> None:
    """ "Plant at" and "50 cm" in a row, and the figures alone where columns are read one by one."""
    height = replace(
        Claim(Length(50, 50), "50 cm", "back", BOX, (("rapidocr", 0.6),), 0.0, certainty=0.6),
        spans=((1, 30, 35),),
    )
    spacing = replace(height, certainty=0.95, spans=((text_of_spacing, 30, 35),))
    found = settled({"height": [height], "spacing": [spacing]})
    assert (len(found["height"]), found["spacing"]) == (heights, [spacing])


def test_a_line_that_is_the_plants_name_is_no_colour() -> None:
    pink = Claim("Sea pink", "Sea pink", "front", BOX, (("rapidocr", 0.8),), 0.0, certainty=0.8)
    red = Claim("red", "red", "front", Box(0, 40, 30, 20), (("rapidocr", 0.8),), 0.0, certainty=0.8)
    found = settled({"colours": [pink, red], "common_names": [named("Sea pink", certainty=0.9)]})
    assert found["colours"] == [red]


def test_a_genus_that_ends_another_common_name_of_the_tag_is_not_one_beside_it() -> None:
    claims = [named("Deutzia", certainty=0.98), named("Slender Deutzia", side="back", certainty=0.98)]
    found = settled({"common_names": claims, "botanical_name": [in_latin("Deutzia", "gracilis")]})
    assert [claim.value for claim in found["common_names"]] == ["Slender Deutzia"]


LINE = Box(0, 0, 400, 20)


def with_cultivar(name: str, genus: str, cultivar: str) -> Claim:
    value = BotanicalName(name, genus, cultivar=cultivar)
    return Claim(value, name, "back", BOX, (("rapidocr", 0.9),), 0.0, certainty=0.9)


@pytest.mark.parametrize(
    ("front", "back", "box", "names"),
    [
        (["Rosemary"], "Tansley Rosemary", LINE, ["Tansley Rosemary"] * 2),  # its cultivar before it
        (["Sorrel Moon", "Rosemary"], "Sorrel Moon Rosemary", LINE, ["Sorrel Moon Rosemary"] * 2),
        (["Rosemary"], "Sorrel Moon Rosemary", LINE, ["Rosemary", "Sorrel Moon Rosemary"]),
        (["Pee Gee", "Hydrangea"], "Pee Gee Hydrangea", LINE, ["Pee Gee Hydrangea"] * 2),
        (["Rosemary"], "Tansley Rosemary", Box(0, 0, 60, 90), ["Rosemary", "Tansley Rosemary"]),  # two lines
    ],
)
def test_a_name_with_its_selling_name_in_one_line_is_no_second_name(
    front: list[str], back: str, box: Box, names: list[str]
) -> None:
    whole = Claim(back, back, "back", box, (("rapidocr", 0.9),), 0.0, certainty=0.9)
    claims = [*(named(name, certainty=0.95) for name in front), whole]
    latin = with_cultivar("Salvia 'Tansley'", "Salvia", "Tansley")
    found = settled({"common_names": claims, "botanical_name": [latin]})
    assert [claim.value for claim in found["common_names"]] == names


def test_a_genus_read_out_of_the_botanical_name_is_no_common_name() -> None:
    latin = replace(with_cultivar("Hebe 'Tansley'", "Hebe", "Tansley"), spans=((0, 4, 18),))
    genus = replace(named("Hebe", side="back", certainty=0.95), spans=((0, 4, 18),))
    found = settled({"common_names": [genus], "botanical_name": [latin]})
    assert found["common_names"] == []


def test_the_second_unit_of_a_row_distance_in_the_next_line_is_no_spacing() -> None:
    def said(cm: float, printed: str, y: int) -> Claim:
        box = Box(0, y, 40, 20)
        return Claim(Length(cm, cm), printed, "front", box, (("rapidocr", 0.9),), 0.0, certainty=0.9)

    rows, unit, plants = said(91.44, "3 ft / 90 cm", 0), said(90.0, "90 cm", 30), said(30.0, "30 cm", 60)
    found = settled({"spacing": [unit, plants], "row_spacing": [rows]})
    assert found["spacing"] == [plants]


def test_a_phrase_does_not_run_on_into_the_value_of_another_fact() -> None:
    def said(words: str, partly: bool = False) -> Claim:
        return Claim(words, words, "back", BOX, (("tesseract", 0.9),), 0.0, certainty=0.9, partly=partly)

    soil = said("Well drained")
    for partly, value in ((True, "Let it dry out"), (False, "Let it dry out Well drained")):
        found = settled({"water": [said("Let it dry out Well drained", partly)], "soil": [soil]})
        assert [claim.value for claim in found["water"]] == [value]
        assert found["soil"] == [soil]


def test_words_on_one_side_say_what_an_arrow_on_the_other_is() -> None:
    """Arrows for spread and for spacing look alike (common practice, no source)."""
    said, drawn = (
        Claim(Length(180.0, 180.0), "180cm", side, BOX, (("rapidocr", sure),), 0.0, certainty=sure)
        for side, sure in (("back", 0.97), ("front", 0.75))
    )
    assert settled({"spread": [said], "spacing": [drawn]})["spacing"] == []
    assert settled({"height": [said], "spacing": [drawn]})["spacing"] == [drawn]


def test_one_end_of_a_range_is_the_range_cut_short() -> None:
    ranged, end, other = (
        Claim(Length(low, high), "", side, BOX, (("rapidocr", 0.9),), 0.0, certainty=0.95)
        for low, high, side in ((25.0, 40.0, "back"), (40.0, 40.0, "front"), (60.0, 60.0, "front"))
    )
    assert settled({"height": [ranged, end]})["height"] == [ranged]
    assert settled({"height": [ranged, other]})["height"] == [ranged, other]
    worn = replace(ranged, votes=(("rapidocr", 0.3),))
    assert settled({"height": [worn, end]})["height"] == [worn, end]


def test_a_selling_name_is_no_series_as_well() -> None:
    latin = in_latin("Lobularia", "maritima")
    sold = replace(latin, value=replace(latin.value, cultivar="THOette54", trade_designation="Trevaluna"))
    found = settled({"botanical_name": [sold], "series": [named("Trevaluna"), named("Marlwick")]})
    assert [claim.value for claim in found["series"]] == ["Marlwick"]


def test_a_passport_with_the_genus_alone_is_doubted_where_the_tag_names_the_species() -> None:
    passport = replace(named("", side="back"), value=PlantPassport("Thuja", "NL-000000001", "26-1", "NL"))
    species = in_latin("Thuja", "occidentalis")
    (doubted,) = settled({"botanical_name": [species], "plant_passport": [passport]})["plant_passport"]
    assert doubted.certainty < passport.certainty
    assert settled({"plant_passport": [passport]})["plant_passport"] == [passport]


def test_a_name_read_badly_on_one_side_is_the_known_one_of_the_other() -> None:
    common = [named("Sade Plan", certainty=0.55), named("Jade Plant", side="back", certainty=0.84)]
    assert [claim.value for claim in settled({"common_names": common})["common_names"]] == ["Jade Plant"] * 2


def test_two_known_names_stay_two_however_alike() -> None:
    common = [named("Marsh Marigold"), named("Fresh Marigold", side="back", certainty=0.84)]
    assert len({claim.value for claim in settled({"common_names": common})["common_names"]}) == 2


def test_the_series_of_one_side_is_no_common_name_on_the_other() -> None:
    series = [named("Ravelot", certainty=0.85)]
    common = [named("Petunia"), named("Ravelot", side="back", certainty=0.75)]
    found = settled({"common_names": common, "series": series})["common_names"]
    assert [claim.value for claim in found] == ["Petunia"]
