"""Cautions as a whole: every rule is listed and tested, few are told, and three places get three answers."""

from __future__ import annotations

import importlib
import inspect
import json
import pkgutil
import re
from collections.abc import Iterator
from dataclasses import replace
from importlib.resources import files
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.console import Console
from tags_by_hand import reading, tag
from test_cautions_rules import CASES
from truth_records import truth_records

from ocr_tags import cautions as package
from ocr_tags.cautions import RULES, cautions, general, with_cautions
from ocr_tags.cautions.light import HOURS
from ocr_tags.cautions.sizes import HEIGHTS
from ocr_tags.commands.advice import MOST_NOTES, advice_of
from ocr_tags.names.lexicon import key
from ocr_tags.place import Place, place_from
from ocr_tags.record import Box, Caution, TagRecord
from ocr_tags.record_json import from_json, to_json
from ocr_tags.usda import HALF_ZONES
from ocr_tags.values import Bloom, Hardiness, Length, Temperature

RECORDS = truth_records()
PLACES = {
    "nowhere": Place(),
    "zone 5, north": place_from(
        {
            "zone": "5a",
            "heat": "cool",
            "country": "US",
            "units": "in",
            "at": "46.8, -92.1",
            "tags_at": "39.8, -86.1",
        }
    ),
    "zone 9, hot": place_from(
        {"zone": "9b", "heat": "hot", "country": "US", "units": "in", "at": "29.8, -95.4"}
    ),
    "Netherlands": place_from(
        {"zone": "8a", "heat": "cool", "country": "NL", "units": "cm", "at": "52.4, 4.9"}
    ),
    "Melbourne": place_from({"zone": "10a", "country": "AU", "units": "cm", "at": "-37.8, 145"}),
}
EVERY = [(name, record, place) for name, record in RECORDS.items() for place in PLACES.values()]


def sources() -> Iterator[str]:
    for module in pkgutil.iter_modules(package.__path__):
        yield inspect.getsource(importlib.import_module(f"{package.__name__}.{module.name}"))


# ---------------------------------------------------------------- the list


def test_every_rule_is_in_the_list() -> None:
    listed = {rule.__name__ for rule in RULES}
    written = {
        match[1]
        for source in sources()
        for match in re.finditer(
            r"^def ([a-z]\w+)\(record: TagRecord, place: Place\) -> Iterator", source, re.M
        )
    }
    assert written == listed and len(listed) == len(RULES)


def test_every_code_has_a_case() -> None:
    """A code is the first argument of `caution`; those made of a field or colour are spelt out here."""
    codes = {
        match[1] for source in sources() for match in re.finditer(r'caution\(\s*f?"([a-z{}._-]+)"', source)
    }
    made = {"colour-{family}": ["colour-blue", "colour-purple", "colour-red"]}
    made["{field.name}-improbable"] = ["height-improbable", "spread-improbable", "spacing-improbable"]
    wanted = {code for each in codes for code in made.get(each, [each])} | {
        "light-one-step-less",
        "light-one-step-more",
    }
    assert wanted == {case.code for case in CASES}


# ---------------------------------------------------------------- whatever a reader may have read

centimetres = st.none() | st.floats(0.1, 7000)
zone_texts = st.none() | st.sampled_from([*HALF_ZONES, "0", "5", "13", "14", "24"])
VALUES: dict[str, st.SearchStrategy[Any]] = {
    **dict.fromkeys(
        ["height", "spread", "spacing", "flower_height"], st.builds(Length, centimetres, centimetres)
    ),
    "hardiness": st.builds(Hardiness, zone_texts, zone_texts),
    "min_temperature": st.builds(Temperature, st.floats(-60, 40)),
    "rhs_rating": st.sampled_from(["H1a", "H3", "H7", "H9"]),
    "light": st.lists(st.sampled_from(sorted(HOURS)), unique=True).map(tuple),
    "bloom": st.builds(Bloom, st.text(), months=st.lists(st.integers(1, 12), unique=True).map(tuple)),
    "colours": st.lists(st.text() | st.sampled_from(["blue", "wine red"])).map(tuple),
    "categories": st.lists(st.sampled_from([*HEIGHTS, "moss"]), unique=True).map(tuple),
    "native_claim": st.text(),
    "water": st.text(),
    "patents": st.lists(st.text(), min_size=1).map(tuple),
    "warnings": st.lists(st.text()).map(tuple),
    "common_names": st.text() | st.sampled_from(["Dusty Miller", "Petunia", "Red Maple"]),
}


@given(st.fixed_dictionaries({}, optional=VALUES), st.sampled_from(sorted(PLACES)))
def test_no_reading_however_odd_stops_a_rule(values: dict[str, Any], place: str) -> None:
    name = values.pop("common_names", None)
    record = tag(name, texts={"front": (), "back": ("☀", "Edible")}, **values)
    for caution in cautions(record, PLACES[place]):
        assert caution.message and caution.advice and caution.basis


# ---------------------------------------------------------------- how they are told


@pytest.mark.parametrize("place", PLACES.values(), ids=PLACES)
def test_a_caution_is_plain_short_and_points_at_the_print(place: Place) -> None:
    for record in RECORDS.values():
        for caution in cautions(record, place):
            told = f"{caution.message} {caution.advice}"
            assert caution.message.endswith(".") and caution.advice.endswith((".", "?")), told
            assert len(caution.message) <= 260 and len(caution.advice) <= 220, told
            assert not re.search(r"None|  |\{|_|\d\.\d{3}|\.\.", told), told
            assert caution.basis and caution.code == caution.code.lower()
            print_of = {word for r in record.readings.get(caution.field, ()) for word in _said(r)}
            assert not caution.printed or any(caution.printed in said for said in print_of), caution


def _said(reading: object) -> Iterator[str]:
    printed, value = reading.printed, reading.value  # type: ignore[attr-defined]
    yield printed
    yield json.dumps(str(value), ensure_ascii=False)
    if isinstance(value, tuple):
        yield "; ".join(value)
        yield ", ".join(value)
    for part in ("cultivar", "trade_designation"):
        yield getattr(value, part, None) or ""


@pytest.mark.parametrize("place", PLACES.values(), ids=PLACES)
def test_they_are_few_and_the_weightiest_come_first(place: Place) -> None:
    counts = []
    for record in RECORDS.values():
        found = cautions(record, place)
        assert [c.weight for c in found] == sorted(
            (c.weight for c in found), key=["harm", "loss", "note"].index
        )
        loud = [caution for caution in found if caution.weight != "note"]
        assert len(loud) <= 4, record.tag_id
        counts.append(len(loud) + min(len(found) - len(loud), MOST_NOTES))
    assert sum(counts) / len(counts) <= 4 and max(counts) <= 6


def test_no_code_is_said_twice_of_one_field() -> None:
    for name, record, place in EVERY:
        told = [(caution.code, caution.field) for caution in cautions(record, place)]
        assert len(told) == len(set(told)), name


def test_a_caution_on_a_doubtful_reading_says_so() -> None:
    zones = reading(Hardiness("9", "11"), "9-11")
    for confidence, status, doubted in (
        (0.5, "read", True),
        (0.95, "read", False),
        (0.5, "confirmed", False),
    ):
        record = tag("X", hardiness=replace(zones, confidence=confidence, status=status))
        (told,) = (c for c in cautions(record, Place("5b")) if c.code == "too-cold-here")
        assert ("Read with doubt" in told.advice) == doubted


def test_what_holds_for_every_tag_is_said_apart() -> None:
    us, dutch = general(PLACES["zone 5, north"]), general(PLACES["Netherlands"])
    assert "1-800-222-1222" in " ".join(us) and "1-800" not in " ".join(dutch)
    assert any("does not make a plant safe, edible or allowed" in line for line in us)
    assert any("pictures are not true, reds least" in line for line in us)
    assert any("--zone" in line for line in general(Place())) and not any("--zone" in line for line in us)
    for _, record, place in EVERY:
        for caution in cautions(record, place):
            assert "is safe" not in caution.message and "pictures" not in caution.message


def test_the_terminal_holds_notes_back_unless_all_are_asked_for() -> None:
    record, place = RECORDS["03-hydrangea"], PLACES["zone 9, hot"]
    few, every = (_printed(cautions(record, place), every=every) for every in (False, True))
    assert "Harmful to pets" in few and "!!" in few and "more note" in few
    assert "PP#22,463" in every and "more note" not in every and "common practice, no source" in every


def test_swatches_are_shown_in_their_colours() -> None:
    record = RECORDS["19-lavender"]
    console = Console(width=100, force_terminal=True, color_system="truecolor")
    with console.capture() as capture:
        console.print(advice_of(cautions(record, Place()), every=True))
    assert "violet" in capture.get() and "38;2;" in capture.get()


def _printed(found: tuple[Caution, ...], every: bool) -> str:
    console = Console(width=100, no_color=True)
    with console.capture() as capture:
        console.print(advice_of(found, every=every))
    return capture.get()


# ---------------------------------------------------------------- outside shape


def test_cautions_survive_json() -> None:
    for _, record, place in EVERY:
        told = with_cautions(record, place)
        assert from_json(json.loads(json.dumps(to_json(told)))) == told
    boxed = Caution("code", "height", "Message.", "basis", box=Box(1, 2, 3, 4), side="back")
    (shown,) = to_json(TagRecord("x", (), cautions=(boxed,)))["cautions"]
    assert shown["box"] == [1, 2, 3, 4] and shown["weight"] == "note"
    assert from_json(to_json(TagRecord("x", (), cautions=(boxed,)))).cautions == (boxed,)


def test_a_caution_of_an_older_file_is_still_read() -> None:
    old = {"code": "too-cold-here", "field": "hardiness", "message": "Too cold.", "basis": "USDA"}
    shown = {**to_json(TagRecord("x", ())), "cautions": [old]}
    assert from_json(shown).cautions == (Caution("too-cold-here", "hardiness", "Too cold.", "USDA"),)


# ---------------------------------------------------------------- data


def test_the_colour_words_say_what_the_published_charts_say() -> None:
    """Kelly and Judd, NBS SP 440: the flower chart's blues reach into violet, its purples into red."""
    rows = [line.split("\t") for line in _lines("colour_words.tsv")]
    by_word = {word: {row[3] for row in rows if row[0] == word} for word in {row[0] for row in rows}}
    assert {"vivid violet", "brilliant violet"} <= by_word["blue"]
    assert {"vivid purplish red", "moderate purplish red", "deep red"} <= by_word["purple"]
    assert {"vivid red", "vivid purplish red"} <= by_word["crimson"]
    assert {"vivid red", "vivid reddish orange"} <= by_word["vermilion"]
    assert all(re.fullmatch(r"#[0-9a-f]{6}", row[4]) for row in rows)
    assert ["crimson", "red", "H,S", "vivid red", "#be0032"] in rows


def test_regulated_names_are_well_written_and_the_eu_list_is_whole() -> None:
    """EPPO Reporting Service 2022/178: 40 plants of Union concern; two are listed under two names each."""
    rows = [line.split("\t") for line in _lines("regulated_plants.tsv")]
    assert all(len(row) == 3 and row[1] in {"EU", "GB", "US"} for row in rows)
    assert all(re.fullmatch(r"[A-Z][a-z]+ (× )?[a-z-]+", row[0]) for row in rows)
    assert len({(key(row[0]), row[1]) for row in rows}) == len(rows)
    renamed = {"Pennisetum setaceum", "Eichhornia crassipes", "Persicaria wallichii"}
    assert len({row[0] for row in rows if row[1] == "EU"} - renamed) == 40


def _lines(file: str) -> list[str]:
    text = files("ocr_tags").joinpath("data", file).read_text("utf-8")
    return [line for line in text.splitlines() if not line.startswith("#")]


# ---------------------------------------------------------------- three places


def told(tag: str, place: str) -> dict[str, str]:
    return {c.code: f"{c.message} {c.advice}" for c in cautions(RECORDS[tag], PLACES[place])}


def test_one_tag_three_places() -> None:
    """Advice on the same tags for a cold north, a hot south and a metric European garden."""
    north, hot, dutch = "zone 5, north", "zone 9, hot", "Netherlands"

    # A tulip of zones 4-7: hardy in the ground, short of winter, and fine in a cool summer.
    assert "not in a pot" in told("10-tulip", north)["pot-in-winter"]
    assert "chilled bulbs" in told("10-tulip", hot)["too-warm-here"]
    assert "summers are cool" in told("10-tulip", dutch)["too-warm-here"]

    # A lantana of zones 9-11 dies in both colder places, in degrees each knows, and lives on in the hot one.
    assert "−20 °F" in told("35-lantana", north)["too-cold-here"]
    assert "−12 °C" in told("35-lantana", dutch)["too-cold-here"]
    assert "too-cold-here" not in told("35-lantana", hot)

    # A full-sun coneflower stays in the sun up north and may move over in the heat.
    assert "light-one-step-less" in told("01-echinacea", hot)
    assert not {code for code in told("01-echinacea", north) | told("01-echinacea", dutch) if "step" in code}
    assert "sunnier end" in told("03-hydrangea", north)["light-range"]
    assert "shadier end" in told("03-hydrangea", hot)["light-range"]

    # "Native to eastern North America" is a wide region for one and another continent for the other.
    assert "wide region" in told("01-echinacea", north)["native-where"]
    assert "does not mean here" in told("01-echinacea", dutch)["native-where"]

    # Bloom months: later up north by a published rule; words of the season everywhere.
    assert "days later with you" in told("10-tulip", north)["bloom-by-date"]
    assert "days" not in told("10-tulip", dutch)["bloom-by-date"]
    assert "October–November with you" in told("10-tulip", "Melbourne")["bloom-by-date"]

    # Units, telephone numbers and lists of the land.
    assert told("01-echinacea", north)["spread-no-spacing"].startswith("1½–2 ft")
    assert told("01-echinacea", dutch)["spread-no-spacing"].startswith("45–60 cm")
    assert "1-800-222-1222" in told("10-tulip", hot)["warning-printed"]
    assert "1-800" not in told("10-tulip", dutch)["warning-printed"]
    assert "call 811" in told("05-maple", north)["call-before-digging"]
    assert "811" not in told("05-maple", dutch)["call-before-digging"]
    assert "regulated-plant" in told("22-barberry", north)
    assert "regulated-plant" not in told("22-barberry", dutch)
