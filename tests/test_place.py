"""Where the user is: typed, kept, overridden, and used by the commands that show records."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth_records import truth_records
from typer.testing import CliRunner, Result

from index import Catalogue
from ocr_tags.cli import app
from ocr_tags.errors import ExitCode
from ocr_tags.place import Day, Place, PlaceError, Point, load_place, place_from, save_place
from ocr_tags.usda import HALF_ZONES


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The file of the place, away from the user's own."""
    monkeypatch.setenv("OCR_TAGS_PLACE", str(tmp_path / "conf" / "place.toml"))
    monkeypatch.setenv("COLUMNS", "150")
    return tmp_path / "conf" / "place.toml"


def run(*arguments: str) -> Result:
    return CliRunner().invoke(app, list(arguments))


# ---------------------------------------------------------------- what may be typed


@pytest.mark.parametrize(
    ("coldest", "zone"),
    # USDA Plant Hardiness Zone Map: the lower limit of each half zone belongs to it.
    [
        ("-60 F", "1a"),
        ("-20F", "5a"),
        ("-15 °F", "5b"),
        ("0 F", "7a"),
        ("-29 C", "5a"),
        ("-17.8 °C", "7a"),
        ("-12 °C", "8a"),
        ("30 F", "10a"),
        ("-17 F", "5a"),
        ("69 F", "13b"),
    ],
)
def test_a_zone_may_be_given_as_its_coldest_temperature(coldest: str, zone: str) -> None:
    assert place_from({"zone": coldest}).zone == zone


@pytest.mark.parametrize(("typed", "zone"), [("5", "5"), ("5B", "5b"), ("Zone 10a", "10a")])
def test_a_zone_stays_as_exact_as_it_was_given(typed: str, zone: str) -> None:
    assert place_from({"zone": typed}).zone == zone


def test_a_whole_zone_is_both_its_halves() -> None:
    assert [HALF_ZONES[half] for half in Place(zone="5").halves or ()] == ["5a", "5b"]
    assert [HALF_ZONES[half] for half in Place(zone="5b").halves or ()] == ["5b", "5b"]
    assert Place().halves is None


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("zone", "14"),
        ("zone", "5c"),
        ("zone", "-90 F"),
        ("zone", "-20"),
        ("heat", "warm"),
        ("units", "yards"),
        ("at", "91, 0"),
        ("at", "46.8"),
        ("last_frost", "31 Apr"),
        ("last_frost", "May"),
        ("country", "USA!"),
        ("first_frost", "10 May 12"),
        ("hemisphere", "east"),
    ],
)
def test_what_is_not_understood_is_named_with_an_example(name: str, text: str) -> None:
    with pytest.raises(PlaceError) as told:
        place_from({name: text})
    assert name in str(told.value) and repr(text) in str(told.value) and "Write it like" in str(told.value)


def test_a_part_that_does_not_exist_is_named() -> None:
    with pytest.raises(PlaceError, match=r"no 'zones'.*Known: zone"):
        place_from({"zones": "5"})


def test_other_ways_to_write_it() -> None:
    place = place_from(
        {"at": "46.8 / -92.1, 690 ft", "last_frost": "May 20", "first_frost": "1. October", "country": "uk"}
    )
    assert place.at == Point(46.8, -92.1, 210)  # 690 ft x 0.3048 = 210.3 m
    assert (place.last_frost, place.first_frost, place.country) == (Day(5, 20), Day(10, 1), "GB")


def test_south_is_known_from_latitude_or_word() -> None:
    assert place_from({"at": "-37.8, 145"}).south and place_from({"hemisphere": "south"}).south
    assert not place_from({"at": "37.8, 145"}).south and not Place().south


def test_an_empty_text_takes_a_part_away_and_others_stay() -> None:
    base = Place(zone="5b", heat="hot")
    assert place_from({"zone": ""}, base) == Place(heat="hot")
    assert place_from({}, base) == base


# ---------------------------------------------------------------- kept

points = st.builds(
    Point,
    st.decimals(-90, 90, places=2).map(float),
    st.decimals(-180, 180, places=2).map(float),
    st.none() | st.integers(-400, 9000).map(float),
)
days = st.builds(Day, st.integers(1, 12), st.integers(1, 29))
places = st.builds(
    Place,
    zone=st.none() | st.sampled_from([*HALF_ZONES, *map(str, range(1, 14))]),
    heat=st.none() | st.sampled_from(["cool", "average", "hot"]),
    country=st.none() | st.sampled_from(["US", "NL"]),
    at=st.none() | points,
    hemisphere=st.none() | st.sampled_from(["north", "south"]),
    last_frost=st.none() | days,
    first_frost=st.none() | days,
    units=st.none() | st.sampled_from(["in", "cm"]),
    tags_at=st.none() | points,
)


@given(places)
def test_what_is_shown_reads_back_as_it_was(place: Place) -> None:
    assert place_from(place.texts()) == place


def test_a_place_survives_its_file(tmp_path: Path) -> None:
    place = Place(
        "5b", "cool", "US", Point(46.8, -92.1, 210), None, Day(5, 20), Day(9, 25), "in", Point(40, -86)
    )
    save_place(place, tmp_path / "new folder" / "place.toml")
    assert load_place(tmp_path / "new folder" / "place.toml") == place
    assert load_place(tmp_path / "none.toml") == Place()


@pytest.mark.parametrize("content", ["zone = ", 'zone = "99"', 'colour = "red"'])
def test_a_damaged_file_is_named(tmp_path: Path, content: str) -> None:
    file = tmp_path / "place.toml"
    file.write_text(content, "utf-8")
    with pytest.raises(PlaceError, match=r"place\.toml"):
        load_place(file)


# ---------------------------------------------------------------- commands


def test_set_show_change_forget(kept: Path) -> None:
    assert "No place is set" in run("place").stderr
    assert run("place", "--zone", "-15 F", "--heat", "cool", "--units", "in").exit_code == 0
    assert kept.is_file()
    assert run("place").stdout.split() == ["zone", "5b", "heat", "cool", "units", "in"]
    run("place", "--heat", "")
    assert json.loads(run("place", "--json").stdout) == {"zone": "5b", "units": "in"}
    assert json.loads(run("place", "--forget", "--zone", "9", "--json").stdout) == {"zone": "9"}
    assert run("place", "--forget").exit_code == 0 and run("place").stdout == ""


def test_wrong_use_is_one_sentence_and_changes_nothing(kept: Path) -> None:
    run("place", "--zone", "5b")
    wrong = run("place", "--zone", "99")
    assert wrong.exit_code == ExitCode.WRONG_USE and wrong.stderr.count("\n") == 1
    assert json.loads(run("place", "--json").stdout) == {"zone": "5b"}


def test_the_zone_table_is_the_published_one(kept: Path) -> None:
    rows = {
        row["zone"]: row for row in map(json.loads, run("place", "--zones", "--json").stdout.splitlines())
    }
    assert list(rows) == [f"{number}{half}" for number in range(1, 14) for half in "ab"]
    for place, row in enumerate(rows.values()):  # 26 half zones of 5 °F from -60 °F (USDA)
        assert row["fahrenheit"] == [-60 + 5 * place, -55 + 5 * place]
        for fahrenheit, celsius in zip(row["fahrenheit"], row["celsius"], strict=True):
            assert celsius == pytest.approx((fahrenheit - 32) * 5 / 9, abs=0.05)


@pytest.fixture
def catalogue(kept: Path, tmp_path: Path) -> str:
    folder = tmp_path / "cat"
    with Catalogue.open(folder) as opened:
        opened.add(replace(truth_records()["35-lantana"], photos=()), {})
    return str(folder)


def codes(result: Result) -> set[str]:
    assert result.exit_code == 0, result.stderr
    (record,) = map(json.loads, result.stdout.splitlines())
    return {caution["code"] for caution in record["cautions"]}


@pytest.mark.parametrize("command", [("show", "35"), ("list",), ("find", "lantana"), ("export",)])
def test_every_command_that_shows_records_knows_the_place_and_another(
    catalogue: str, command: tuple[str, ...]
) -> None:
    as_json = () if command == ("export",) else ("--json",)
    at_home = run("-c", catalogue, *command, *as_json)
    assert "too-cold-here" not in codes(at_home)
    run("place", "--zone", "5b")
    assert "too-cold-here" in codes(run("-c", catalogue, *command, *as_json))
    elsewhere = run("-c", catalogue, *command, "--here", "zone=10a", *as_json)
    assert "too-cold-here" not in codes(elsewhere)


def test_cautions_are_never_kept(catalogue: str) -> None:
    run("-c", catalogue, "show", "35", "--here", "zone=5b", "--json")
    with Catalogue.open(Path(catalogue)) as opened:
        assert [record.cautions for record in opened.records()] == [()]


def test_the_terminal_shows_cautions_units_and_what_holds_for_all(catalogue: str) -> None:
    shown = run("-c", catalogue, "show", "35", "--here", "zone=5b", "--here", "units=cm")
    assert "Poisonous: keep away from children and pets" in shown.stdout
    assert "Too cold here" in shown.stdout and "−26 °C" in shown.stdout
    assert "60–80 cm" in shown.stdout and "32 in" not in shown.stdout.replace("24 to 32 in", "")
    assert shown.stderr.count("No warning on a tag") == 1
    listed = run("-c", catalogue, "list", "--here", "zone=5b").stdout
    assert "Here (5b)" in listed and "too cold" in listed
    assert "Here (" not in run("-c", catalogue, "list").stdout


def test_a_bad_override_is_refused(catalogue: str) -> None:
    for bad in ("5b", "zone=99", "planet=mars"):
        result = run("-c", catalogue, "list", "--here", bad)
        assert result.exit_code == ExitCode.WRONG_USE and result.stderr.startswith("ocr-tags: "), bad
