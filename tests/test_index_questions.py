"""What a question may say, how answers are grouped by plant, and what is said when nothing is called so."""

import os
import runpy
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from index import Catalogue
from index.entries import entry_of
from index.linking import likely_plant
from index.query import ask
from ocr_tags.cli import app
from ocr_tags.commands.findings import parts_of, remarks_on
from ocr_tags.errors import ExitCode, QueryError
from ocr_tags.record import PlantMatch
from ocr_tags.values import Bloom

_tags = runpy.run_path(str(Path(__file__).parent / "data" / "index_tags.py"))
make_tag, reading = _tags["make_tag"], _tags["reading"]


def says(**facts: Any) -> dict[str, Any]:
    return facts


SHELF = {
    "english": says(
        common="English Lavender", name="Lavandula angustifolia 'Quiet Harbour'", zones=("5", "9")
    ),
    "tall": says(
        common="Lavender", name="Lavandula angustifolia 'Giant Swan'", height=(60, 90), zones=("6", "9")
    ),
    "french": says(common="French Lavender", name="Lavandula stoechas 'Ruby Comet'", zones=("8", "10")),
    "heart": says(
        common="Bleeding Heart", name="Lamprocapnos spectabilis", zones=("3", "9"), light=("part_shade",)
    ),
    "hearts": says(common="Heart of Bleeding Gold", supplier="North Bank Nursery", light=("full_sun",)),
    # Centaurea cineraria and Jacobaea maritima are both sold as dusty miller: common practice, no source.
    "dusty1": says(common="Dusty Miller", name="Jacobaea maritima 'Silver Swan'", height=(20, 30)),
    "dusty2": says(common="Dusty Miller", name="Centaurea cineraria", height=(60, 90)),
}  # fmt: skip


@pytest.fixture
def catalogue(tmp_path: Path) -> Iterator[Catalogue]:
    with Catalogue.open(tmp_path / "catalogue") as opened:
        opened.add_many(make_tag(tmp_path, photo, **said) for photo, said in SHELF.items())
        yield opened


def photos(catalogue: Catalogue, words: str) -> set[str]:
    found = catalogue.search(words)
    return {Path(hit.record.photos[0].file).stem for hit in found.hits if found.good}


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("bleeding heart", {"heart", "hearts"}),
        ('"bleeding heart"', {"heart"}),
        ("“bleeding heart”", {"heart"}),
        ('"heart of bleeding"', {"hearts"}),
        ('heart "bleeding gold"', {"hearts"}),
        ('"lavandula angustifolia" -swan', {"english"}),
        ("lavender zone:5", {"english"}),
        ("lavender zone 8", {"english", "tall", "french"}),
        ("lavender zones:10", {"french"}),
        ("lavender -zone:8", set()),
        ("lavender -zone:5", {"tall", "french"}),
        ("light:part_shade", {"heart"}),
        ("heart -light:full_sun", {"heart"}),
        ("height:2-3ft", {"tall", "dusty2"}),
        ("height: < 60 cm", {"dusty1"}),
        ("dusty height:>1.5ft", {"dusty2"}),
        ('supplier:"north bank"', {"hearts"}),
        ("cultivar:swan", {"tall", "dusty1"}),
        ("swan −dusty", {"tall"}),
    ],
)
def test_the_question_language(catalogue: Catalogue, words: str, wanted: set[str]) -> None:
    assert photos(catalogue, words) == wanted


def test_bloom_is_asked_by_month_and_season(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = make_tag(tmp_path, "blooming", common="Fairy Fan")
    record.readings["bloom"] = (reading(Bloom("late spring; Nov-Dec", ("late_spring",), (11, 12))),)
    catalogue.add(record, files)
    for right in (
        "bloom:spring",
        "bloom:late_spring",
        "bloom:december",
        "bloom:dec-feb",
        "blooms:october-nov",
    ):
        assert photos(catalogue, right) == {"blooming"}, right
    for wrong in ("bloom:summer", "bloom:early_spring", "bloom:jan-mar"):
        assert photos(catalogue, wrong) == set(), wrong


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("lavender hieght:60cm", r"no field 'hieght'.*Did you mean height:"),
        ("lavender qqqqq:1", r"no field 'qqqqq'.*The fields are zone, height"),
        ("lavender zone:", r"'zone:' has no value"),
        ('"bleeding heart', r"before 'bleeding heart' is not closed"),
        ("-english", r"only what is not wanted.*lavender -english"),
        ("-zone:5", r"only what is not wanted"),
        ("zone:15", r"'15' is not a hardiness zone.*5a"),
        ("light:dim", r"'dim' is not a light level.*part_shade"),
        ("bloom:soon", r"'soon' is not a bloom time.*may-july"),
        ("height:tall", r"'tall' is not a height or spread.*2-3 ft"),
        ('""', r"nothing to look for"),
    ],
)
def test_a_question_that_cannot_be_understood_gets_one_line_and_a_remedy(words: str, message: str) -> None:
    with pytest.raises(QueryError, match=message) as caught:
        ask(words)
    assert "\n" not in str(caught.value)


# ---------------------------------------------------------------- plants


def test_a_name_that_several_plants_share_is_said_and_grouped(catalogue: Catalogue) -> None:
    found = catalogue.search("dusty miller")
    assert {plant.plant for plant in found.plants} == set(found.shared)
    assert found.shared and set(found.shared) == {"Jacobaea maritima", "Centaurea cineraria"}
    assert any("share this name" in line for line in remarks_on(found))


def test_one_plant_with_many_tags_is_one_group(catalogue: Catalogue) -> None:
    found = catalogue.search("lavandula angustifolia")
    assert [(plant.plant, plant.total) for plant in found.plants] == [("Lavandula angustifolia", 2)]
    assert found.shared == ()


def test_a_plant_of_many_tags_does_not_hide_the_others_that_share_its_name(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    many = (
        make_tag(tmp_path, f"{n}", common="Dusty Miller", name=f"Jacobaea maritima 'Number{n}'")
        for n in range(150)
    )
    catalogue.add_many(many)
    found = catalogue.search("dusty miller", limit=10)
    assert {plant.plant: plant.total for plant in found.plants} == {
        "Jacobaea maritima": 151, "Centaurea cineraria": 1,
    }  # fmt: skip
    assert parts_of(found)[0][0].startswith("Jacobaea maritima: 151 tags, 5 shown")
    assert len(found.hits) <= 10
    assert len(catalogue.find("jacobaea maritima", limit=200)) == 151, "all are to be had"


def test_a_printed_name_that_may_be_several_plants_is_shared_by_itself(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    both = PlantMatch(None, could_be=("Nepeta cataria", "Nepeta × faassenii"))
    catalogue.add(*make_tag(tmp_path, "mint", common="Moonmint", plant=both))
    found = catalogue.search("moonmint")
    assert found.plants[0].plant == "Nepeta cataria or Nepeta × faassenii"
    assert found.shared == ("Nepeta cataria", "Nepeta × faassenii")


# ---------------------------------------------------------------- nothing is called so


def test_near_names_are_offered_when_nothing_is_called_so(catalogue: Catalogue) -> None:
    found = catalogue.search("dusky milfoil")
    assert not found.good and "Dusty Miller" in found.meant
    assert next(remarks_on(found)) == "No tag is called so; these come nearest."
    assert all(hit.nearest_only for hit in found.hits)


def test_nonsense_finds_nothing_rather_than_anything(catalogue: Catalogue) -> None:
    found = catalogue.search("xqzzt wvwv")
    assert (found.plants, found.note) == ((), "No tag is called anything like that.")


def test_a_name_that_does_not_fit_the_rest_is_shown_as_such(catalogue: Catalogue) -> None:
    found = catalogue.search("lavender zone:2")
    assert not found.good and found.hits
    assert "do not fit the rest" in found.note
    assert catalogue.search("zone:1").note == "No tag says that."


# ---------------------------------------------------------------- tags that were misread


def test_a_misread_tag_is_found_by_the_other_names_of_its_likely_plant(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    catalogue.add(*make_tag(tmp_path, "misread", common="Everiasting Peo", name="Lathyrus tatifolius 'Pony'"))
    # USDA PLANTS calls Lathyrus latifolius perennial pea.
    found = catalogue.search("perennial pea pony")
    assert [Path(hit.record.photos[0].file).stem for hit in found.hits][:1] == ["misread"]
    assert "probably Lathyrus latifolius" in found.hits[0].why


@pytest.mark.parametrize(
    ("common", "botanical", "wanted"),
    [
        (("Everiasting Peo",), "Lathyrus tatifolius", "Lathyrus latifolius"),
        ((), "Echinacea purpunea", "Echinacea purpurea"),
        (("Purp1e Conef1ower",), "", "Echinacea purpurea"),
        # Near misses: another plant's name is as near, or nothing is.
        ((), "Hordeum mxrinum", None),
        (("Hop",), "", None),
        (("Water weekly in summer",), "Made in Holland", None),
    ],
)
def test_the_likely_plant(common: tuple[str, ...], botanical: str, wanted: str | None) -> None:
    assert likely_plant(common, botanical) == wanted


def test_a_person_s_word_is_not_second_guessed(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = make_tag(tmp_path, "misread", common="Everiasting Peo", name="Lathyrus tatifolius")
    catalogue.add(record, files)
    assert entry_of(record).plant is not None
    assert entry_of(catalogue.confirm(record.tag_id)).plant is None


# ---------------------------------------------------------------- at the command line


def asked(catalogue: Catalogue, *words: str) -> Result:
    return CliRunner().invoke(app, ["--catalogue", str(catalogue.path), "find", *words])


def test_a_word_not_wanted_is_no_option(catalogue: Catalogue) -> None:
    result = asked(catalogue, "lavender", "-english")
    assert result.exit_code == 0, result.stderr
    assert "Lavandula stoechas" in result.stdout and "English" not in result.stdout
    assert "Usage" in asked(catalogue, "-h").stdout


def test_why_is_told_when_asked_for(catalogue: Catalogue) -> None:
    assert "Found because" not in asked(catalogue, "lavendar").stdout
    told = asked(catalogue, "lavendar", "--explain").stdout
    assert "Found because" in told and "nearest" in told


def test_the_command_line_says_that_a_name_is_shared_and_offers_near_ones(catalogue: Catalogue) -> None:
    assert "Several plants share this name" in asked(catalogue, "dusty", "miller").stderr
    offered = asked(catalogue, "dusky", "milfoil").stderr
    assert "No tag is called so" in offered and "Did you mean" in offered
    wrong = asked(catalogue, "hieght:60cm")
    assert wrong.exit_code == ExitCode.WRONG_USE and "Did you mean height:" in wrong.stderr


SAID_AGAIN = """
import sys
from pathlib import Path
from index import Catalogue
with Catalogue.open(Path(sys.argv[1])) as catalogue:
    for words in ("purp", "lav", "purp con", "dus sil"):
        for hit in catalogue.search(words).hits:
            print(hit.tag_id, hit.score, hit.why)
"""


def test_answers_do_not_change_from_run_to_run(catalogue: Catalogue, tmp_path: Path) -> None:
    """Words that fit equally well are taken in the order of the names, not in that of a set."""
    cone = make_tag(tmp_path, "cone", common="Purple Coneflower", name="Echinacea purpurea 'Purpalora'")
    catalogue.add_many([cone])
    said = {
        subprocess.run(
            [sys.executable, "-c", SAID_AGAIN, tmp_path / "catalogue"],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2", "3", "4")
    }
    assert len(said) == 1
    assert b"lavandula angustifolia 'quiet harbour'" in said.pop().lower()
