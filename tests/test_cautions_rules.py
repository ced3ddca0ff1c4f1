"""Each caution on a tag that deserves it, and silent on one that almost does.

Sample tags are taken by their truth (no reading engine). What a rule rests on is named beside it; a trade
fact without a source is marked "common practice, no source".
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

import pytest
from tags_by_hand import reading, tag
from truth_records import truth_records

from ocr_tags.cautions import cautions
from ocr_tags.place import Place, place_from
from ocr_tags.record import Caution, TagRecord
from ocr_tags.values import Bloom, Hardiness, Length, Temperature

NOWHERE = Place()
ZONE_5 = place_from({"zone": "5b", "heat": "cool", "country": "US", "units": "in"})
ZONE_9 = place_from({"zone": "9b", "heat": "hot", "country": "US", "units": "in"})
NETHERLANDS = place_from({"zone": "8a", "heat": "cool", "country": "NL", "units": "cm"})
BRITAIN = place_from({"country": "GB"})
PERENNIAL = {"categories": "perennial"}


def sample(name: str) -> TagRecord:
    return next(record for tag_id, record in truth_records().items() if tag_id.startswith(name))


def found(record: TagRecord, place: Place, code: str) -> list[Caution]:
    return [caution for caution in cautions(record, place) if caution.code == code]


@dataclass(frozen=True)
class Case:
    """A caution, a tag and place where it speaks (with words it must use), and one where it must not."""

    code: str
    speaks: TagRecord
    words: str
    silent: TagRecord
    here: Place = NOWHERE
    silent_here: Place | None = None


def ft(low: float | None, high: float | None = None) -> Length:
    return Length(low and low * 30.48, (high or low or 0) * 30.48)


CASES = [
    # ------------------------------------------------------------ names and sides
    # Poison centres of Oklahoma and Utah: one common name may cover several plants, some dangerous.
    Case(
        "name-shared",
        tag("Dusty Miller"),
        "Jacobaea maritima.*botanical name",
        tag("Dusty Miller", "Jacobaea maritima"),
    ),
    Case(
        "name-shared", tag("Geranium"), "several plants", sample("15-echeveria")
    ),  # "Hens and Chicks", named
    Case("name-common-only", tag("Zinnia"), "usually it is Zinnia", sample("21-zinnia")),
    Case("name-common-only", tag("Moonlit Wonder"), "Only a common name", tag("Dusty Miller")),
    Case(
        "sides-disagree",
        tag(
            "Zinnia",
            height=reading(
                ft(1, 1.5),
                "12-18 in",
                "front",
                status="disagreed",
                alternatives=(reading(ft(2, 3), "2-3 ft"),),
            ),
        ),
        "“12-18 in” on the front, “2-3 ft” on the back",
        tag(  # two looks at one side are doubt, not disagreement
            "Zinnia",
            height=reading(
                ft(1, 1.5),
                "12-18 in",
                "back",
                status="disagreed",
                alternatives=(reading(ft(2, 3), "2-3 ft"),),
            ),
        ),
    ),
    Case(
        "front-unread",
        tag("Zinnia", texts={"front": (), "back": ("Zinnia", "Full sun")}),
        "from the back",
        tag("Zinnia", texts={"front": ("Zinnia Brindlow", "by Quillmere"), "back": ("Full sun",)}),
    ),
    Case(
        "front-unread",
        tag("Zinnia", texts={"front": ("~",), "back": ("Zinnia",)}),
        "Hold the name against the front",
        tag("Zinnia", texts={"back": ("Zinnia",)}, sides=("back",)),  # there was no front photo
    ),
    Case(
        "front-unread",
        tag("Zinnia", texts={"front": ("Znna",), "back": ("Zinnia",)}),
        "could not be read",
        tag(  # a front may print its name and no more
            common_names=reading("Zinnia", "Zinnia", "front"),
            texts={"front": ("Zinnia",), "back": ("Full sun",)},
        ),
    ),
    # ------------------------------------------------------------ poison, eating, weeds, digging, rights
    Case(
        "warning-printed",
        sample("10-tulip"),
        "Toxic to cats and dogs.*1-800-222-1222.*vet",
        sample("05-maple"),
        ZONE_5,
    ),
    Case("warning-printed", sample("35-lantana"), "NHS 111", sample("31-stonecrop"), BRITAIN),
    Case(
        "warning-printed",
        tag(warnings="Sap may irritate skin"),
        "gloves",
        tag("Rose"),
    ),
    Case("warning-printed", tag(warnings="Thorny"), "Wear gloves", tag("Rose")),
    Case("warning-printed", tag(warnings="May be invasive in some areas"), "weed list", tag("Rose")),
    # University of Missouri Extension: flowers are not food unless it is known how they were grown.
    Case("edible-is-the-tags-word", sample("13-blueberry"), "no leave to eat", sample("34-strawberry")),
    Case(
        "edible-is-the-tags-word",
        tag("Daylily", texts={"back": ("Edible flowers",)}),
        "“Edible flowers”",
        tag("Daylily", texts={"back": ("Not edible",)}),
    ),
    # Penn State Extension, 2022: Berberis thunbergii is a noxious weed in Pennsylvania, cultivars included.
    Case(
        "regulated-plant",
        sample("22-barberry"),
        "Berberis thunbergii.*your state",
        sample("13-blueberry"),
        ZONE_5,
    ),
    # Wildlife and Countryside Act 1981, Schedule 9: Virginia creeper; a US gardener need not hear of it.
    Case("regulated-plant", sample("25-virginia"), "Schedule 9", sample("25-virginia"), BRITAIN, ZONE_5),
    # EU 2016/1141 as amended in 2017: fountain grass, under its new name as well.
    Case(
        "regulated-plant",
        tag(name="Cenchrus setaceus"),
        "EU list",
        tag(name="Cenchrus alopecuroides"),
        NETHERLANDS,
    ),
    Case(
        "regulated-plant",
        tag(name="Pennisetum setaceum 'Rubrum'"),
        "EU list",
        tag(name="Zinnia elegans"),
        NETHERLANDS,
    ),
    Case(
        "call-before-digging", sample("05-maple"), "call 811.*overhead wires", sample("01-echinacea"), ZONE_5
    ),
    Case("call-before-digging", sample("22-barberry"), "utility line", sample("28-snake-plant"), NETHERLANDS),
    Case("call-before-digging", sample("27-apple"), "811 in the US", sample("34-strawberry")),
    # 35 USC 163 (from memory): asexual propagation without a licence is barred; 7 CFR 97.141 for varieties.
    Case("propagation-prohibited", sample("01-echinacea"), "PP#21,318.*licence", sample("05-maple")),
    Case("propagation-prohibited", sample("24-foxglove"), "right applied for", sample("23-milkweed")),
    Case(
        "propagation-prohibited",
        tag("Rose", texts={"back": ("Unlicensed", "propagation prohibited")}),
        "Unlicensed propagation prohibited",
        tag("Rose", texts={"back": ("Easy to propagate",)}),
    ),
    # ------------------------------------------------------------ winter
    # USDA: a plant of zones 9-11 bears 20 °F, zone 5b goes down to -15 °F.
    Case("too-cold-here", sample("35-lantana"), "−15 °F.*20 °F", sample("01-echinacea"), ZONE_5),
    Case(
        "too-cold-here", sample("15-echeveria"), "−12 °C.*−7 °C", sample("15-echeveria"), NETHERLANDS, ZONE_9
    ),
    # RHS H7 is "below -20 °C": enough for zone 8, no answer for zone 5 (RHS rating sheet).
    Case("rating-open-end", sample("33-iris"), "below −20 °C", sample("33-iris"), ZONE_5, NETHERLANDS),
    Case(
        "too-cold-here",
        tag("X", rhs_rating="H3", categories="perennial"),
        "worked out from “H3”",
        tag("X", rhs_rating="H5", categories="perennial"),
        NETHERLANDS,
    ),
    # "Hardy to -20 °F" is zone 5 (USDA): zone 4 is too cold for it, and the zone is marked as worked out.
    Case(
        "too-cold-here",
        tag("X", min_temperature=reading(Temperature(-28.9), "Hardy to -20 F"), **PERENNIAL),
        "zone 5a, worked out from “Hardy to -20 F”",
        tag("X", min_temperature=reading(Temperature(-28.9), "Hardy to -20 F"), **PERENNIAL),
        place_from({"zone": "4b"}),
        place_from({"zone": "5b"}),
    ),
    Case(
        "at-its-limit-here",
        sample("18-lavender"),
        "zones 5–8.*shelter",
        sample("19-lavender"),
        place_from({"zone": "5a"}),
    ),
    Case(
        "at-its-limit-here",
        sample("18-lavender"),
        "colder half, 5a",
        sample("18-lavender"),
        Place("5"),
        Place("5b"),
    ),
    # Two zones for pots: The Columbus Dispatch, 4 November 2018 (others say one).
    Case(
        "pot-in-winter", sample("01-echinacea"), "not in a pot", sample("29-houseleek"), ZONE_5, Place("6a")
    ),
    Case("pot-in-winter", sample("20-hosta"), "two zones", sample("20-hosta"), Place("4a"), Place("5a")),
    # The warm end of a range is the grower's (common practice, no source): loud only far beyond it.
    Case(
        "too-warm-here", sample("10-tulip"), "grower's view.*chilled bulbs", sample("08-reed-grass"), ZONE_9
    ),
    Case(
        "too-warm-here",
        sample("03-hydrangea"),
        "summers are cool, so it may well do",
        sample("05-maple"),
        NETHERLANDS,
    ),
    Case("perennial-no-zone", tag("Aster", **PERENNIAL), "no zone", sample("01-echinacea")),
    Case("perennial-no-zone", tag("Aster", **PERENNIAL), "zone 5b", sample("33-iris"), ZONE_5),
    # -30 °F is the lower limit of 4a (USDA).
    Case(
        "zone-worked-out", sample("34-strawberry"), "cold end of zone 4a.*not printed", sample("29-houseleek")
    ),
    Case(
        "zone-and-cold-differ",
        tag(hardiness=Hardiness("3", "8"), min_temperature=Temperature(-23.3)),
        "that is zone 6a",
        sample("04-hydrangea"),  # zones 3-8 and -40 °F: the same limit
    ),
    # ------------------------------------------------------------ how long it lives
    Case(
        "annual-or-perennial",
        tag(categories=("annual", "perennial")),
        "depends on your winter",
        sample("02-petunia"),
    ),
    Case(
        "annual-in-mild-winters", sample("02-petunia"), "live on", sample("02-petunia"), Place("10a"), ZONE_9
    ),
    Case("biennial-once", sample("24-foxglove"), "flowers in its second", sample("01-echinacea")),
    Case("tender-here", tag(categories="tender_perennial"), "dies of frost", sample("35-lantana"), ZONE_5),
    Case(
        "tender-here",
        tag(categories="tender_perennial"),
        "one season",
        tag(categories="perennial"),
        ZONE_5,
        ZONE_9,
    ),
    Case(
        "after-last-frost",
        sample("12-tomato"),
        "20 May",
        sample("26-lettuce"),
        place_from({"last_frost": "20 May"}),
    ),
    Case(
        "after-last-frost",
        sample("02-petunia"),
        "20 May",
        sample("02-petunia"),
        place_from({"last_frost": "20 May"}),
        ZONE_5,
    ),
    # ------------------------------------------------------------ light (common practice, no source)
    Case(
        "light-hours",
        tag(light=("part_shade",)),
        "3 to 6 hours, but out of the hot",
        tag(light=("full_sun",)),
    ),
    Case("light-hours", tag(light=("part_sun",)), "afternoon sun included", tag(light=("full_shade",))),
    Case("light-range", sample("03-hydrangea"), "sunnier end: full sun", sample("05-maple"), ZONE_5),
    Case("light-range", sample("03-hydrangea"), "shadier end: part sun", sample("05-maple"), ZONE_9),
    Case("light-one-step-less", sample("05-maple"), "part sun.*scorch", sample("05-maple"), ZONE_9, ZONE_5),
    Case("light-one-step-less", tag(light=("part_shade",)), "full shade", tag(light=("full_shade",)), ZONE_9),
    Case(
        "light-one-step-more",
        tag(light=("part_shade",)),
        "part sun.*Not full sun",
        tag(light=("full_sun",)),
        ZONE_5,
    ),
    Case(
        "light-one-step-more",
        tag(light=("full_shade",)),
        "part shade.*Not part sun",
        tag(light=("full_shade",)),
        ZONE_5,
        ZONE_9,
    ),
    Case(
        "light-one-step-more",
        tag(light=("part_sun",)),
        "full sun",
        tag(light=("part_sun",)),
        place_from({"at": "60, 10"}),
        NOWHERE,
    ),
    Case("light-not-in-words", sample("08-reed-grass"), "symbols", sample("07-reed-grass")),
    Case("light-not-in-words", sample("33-iris"), "not read", sample("14-pothos")),
    Case(
        "light-symbols",
        tag("Zinnia", texts={"back": ("☀ 12 in",)}),
        "symbol only",
        tag("Zinnia", light=("full_sun",)),
    ),
    Case("light-symbols", tag("Zinnia", texts={"back": ("○ ◐",)}), "range, or the key", tag("Zinnia")),
    # ------------------------------------------------------------ water and bloom
    # D. Parmenter, La Plata County Extension: check the moisture before each watering.
    Case("water-by-calendar", sample("11-basil"), "finger into the soil", sample("01-echinacea")),
    Case(
        "water-by-calendar", tag(water="A cup a day"), "“A cup a day”", tag(water="Keep moist every season")
    ),
    Case(
        "water-by-calendar", tag(water="Twice a week"), "weather", tag(water="Water when dry, twice as deep")
    ),
    Case(
        "water-by-calendar", tag(water="Arroser une fois par semaine"), "soil", tag(water="Arroser au besoin")
    ),
    Case(
        "water-by-calendar",
        tag(water="Fill weekly"),
        "soil",
        tag(water="Fill weekly", texts={"back": ("Self-watering pot",)}),
    ),
    # Seasons of three months: U.S. National Centers for Environmental Information.
    Case("bloom-by-date", sample("03-hydrangea"), "mid summer to early fall", sample("05-maple")),
    Case("bloom-by-date", sample("10-tulip"), "mid to late spring", sample("16-rose")),
    Case("bloom-by-date", sample("04-hydrangea"), "early autumn", sample("06-clematis"), NETHERLANDS),
    Case(
        "bloom-by-date",
        sample("27-apple"),
        "November with you",
        sample("01-echinacea"),
        place_from({"hemisphere": "south"}),
    ),
    # ------------------------------------------------------------ sizes (common practice, no source)
    Case(
        "spread-no-spacing",
        sample("01-echinacea"),
        "how wide it grows.*centre to centre",
        sample("07-reed-grass"),
    ),
    Case("spread-no-spacing", sample("02-petunia"), "55–70 cm", sample("28-snake-plant"), NETHERLANDS),
    Case("spacing-no-spread", tag(spacing=ft(1)), "centre to centre", sample("07-reed-grass")),
    Case("flower-height-only", sample("07-reed-grass"), "leaves stay lower", sample("08-reed-grass")),
    Case(
        "height-improbable",
        tag(name="Petunia × atkinsiana", height=ft(12)),
        "inches rather than feet",
        sample("02-petunia"),
    ),
    Case(
        "height-improbable",
        tag("X", categories="tree", height=ft(1.5)),
        "too little.*feet rather than inches",
        sample("30-spruce"),
    ),
    Case(
        "height-improbable",
        tag("X", categories="tree", height=ft(1.5)),
        "Look at the tag",
        tag("Dwarf Spruce", categories="tree", height=ft(1.5)),
    ),
    Case(
        "height-improbable",
        tag("Zinnia", height=ft(30)),
        "too much",
        tag("Sunflower", "Helianthus annuus", height=ft(12)),
    ),
    Case(
        "height-improbable",
        tag(name="Picea abies 'Gem'", categories="tree", height=ft(1)),
        "too little",
        tag(name="Picea abies 'Gem'", height=ft(1)),  # a dwarf conifer, not called a tree
    ),
    Case("spread-improbable", tag("Zinnia", spread=ft(18)), "too much", sample("21-zinnia")),
    Case(
        "spacing-improbable", tag("Zinnia", spacing=ft(12)), "inches rather", tag("Zinnia", spacing=ft(0.5))
    ),
    Case("kind-against-name", tag("Zinnia", categories="tree"), "sold as annual", sample("21-zinnia")),
    Case("kind-against-name", tag("Red Maple", categories="annual"), "does not fit", sample("05-maple")),
    # ------------------------------------------------------------ words
    # Kelly and Judd, NBS SP 440: hyacinth and lobelia blue of the flower chart are vivid violet.
    Case("colour-blue", sample("19-lavender"), "violet or purple", sample("33-iris")),
    Case(
        "colour-blue", sample("18-lavender"), "“Blue”", tag("Blue Fescue", "Festuca glauca")
    ),  # a name, no promise
    Case("colour-purple", sample("02-petunia"), "magenta", sample("32-impatiens")),
    Case("colour-red", tag(colours="crimson"), "from orange to purplish red", tag(colours="white")),
    Case("colour-red", tag(colours="rouge"), "promises little", sample("05-maple")),  # red maple
    Case("native-where", sample("01-echinacea"), "wide region", sample("02-petunia")),
    Case("native-where", sample("36-switchgrass"), "does not mean here", sample("33-iris"), NETHERLANDS),
    Case("native-where", tag(native_claim="Native"), "does not say where", tag(common="Native Son Zinnia")),
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.code}-{CASES.index(case)}")
def test_it_speaks_where_it_should_and_nowhere_else(case: Case) -> None:
    spoken = found(case.speaks, case.here, case.code)
    assert spoken, [caution.code for caution in cautions(case.speaks, case.here)]
    told = f"{spoken[0].message} {spoken[0].advice}"
    assert re.search(case.words, told), told
    assert not found(case.silent, case.silent_here or case.here, case.code)


# ---------------------------------------------------------------- the shift of bloom

INDIANA = "39.8, -86.1, 220 m"
APPLE = tag(name="Malus domestica", bloom=Bloom("April", (), (4,)))


def shift(here: str, there: str = INDIANA, record: TagRecord = APPLE) -> str | None:
    (caution,) = found(record, place_from({"at": here, "tags_at": there}), "bloom-by-date")
    match = re.search(r"about (\d+ days \w+)", caution.advice)
    assert (match is None) == ("rule of thumb" not in caution.advice)
    assert match is None or ("two weeks" in caution.advice and "Hopkins" in caution.basis)
    return match and match[1]


def test_hopkins_law() -> None:
    """4 days later for each degree north, 5 degrees east, 400 ft (122 m) up (Hopkins)."""
    assert shift("49.8, -86.1, 220 m") == "40 days later"  # 10 degrees
    assert shift("39.8, -76.1, 220 m") == "8 days later"
    assert shift("39.8, -86.1, 525 m") == "10 days later"  # 1,000 ft
    assert shift("34.8, -86.1, 220 m") == "20 days earlier"
    assert shift("44.8, -96.1, 220 m") == "12 days later"  # 5 north, 10 west: 20 - 8


def test_no_shift_where_the_law_does_not_hold() -> None:
    assert shift("40.3, -86.1, 220 m") is None  # two days are no news
    assert shift("52.4, 4.9") is None and shift("-37.8, 145") is None  # Europe, the south
    assert shift("28, -82, 0 m") is None  # further than a rule of thumb carries
    assert shift("44.8, -86.1", record=tag(name="Zinnia elegans", bloom=Bloom("June", (), (6,)))) is None
    assert shift("44.8, -86.1", record=tag(name="Malus domestica", bloom=Bloom("Sep", (), (9,)))) is None
    assert shift("44.8, -86.1, 900 m", "39.8, -86.1") == "20 days later"  # one height says nothing


# ---------------------------------------------------------------- what all share


def test_a_corrected_size_is_not_doubted() -> None:
    record = tag(name="Petunia × atkinsiana", height=reading(ft(12), "12 ft", status="confirmed"))
    assert not found(record, NOWHERE, "height-improbable")


def test_nothing_is_said_of_an_empty_record() -> None:
    for place in (NOWHERE, ZONE_5, ZONE_9, NETHERLANDS):
        assert cautions(TagRecord("empty", ()), place) == ()


def test_no_size_of_the_samples_is_called_improbable() -> None:
    for record in truth_records().values():
        said = {caution.code for caution in cautions(record, NOWHERE)}
        assert not {code for code in said if "improbable" in code or "against" in code}, record.tag_id


def test_every_length_of_a_damaged_unit_is_seen() -> None:
    """Inches read as feet on the annuals among the samples: all are out of range."""
    for name in ("02-petunia", "21-zinnia", "32-impatiens"):
        record = sample(name)
        (height,) = record.readings["height"]
        low, high = height.value.min_cm, height.value.max_cm
        wrong = replace(height, value=Length(low and low * 12, high * 12))
        damaged = replace(record, readings={**record.readings, "height": (wrong,)})
        assert found(damaged, NOWHERE, "height-improbable"), name
