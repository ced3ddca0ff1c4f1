"""Which tags are of one plant, and where they disagree.

The samples hold three plants that two suppliers sell and describe differently (samples/README.md); their
truth is turned into records, so nothing here depends on what an engine reads.
"""

from __future__ import annotations

import json
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth_records import truth_records
from typer.testing import CliRunner

from index import Catalogue
from index.comparison import Said, compare_all, compare_field, compare_these
from index.comparison_identity import group, identity_of, tie
from index.comparison_values import relate
from index.comparison_words import joint, plant_json
from ocr_tags.cli import app
from ocr_tags.commands.show import in_words
from ocr_tags.names.nomenclature import parse
from ocr_tags.record import Photo, Reading, Status, TagRecord
from ocr_tags.values import Bloom, Days, Hardiness, HeatZones, Length, Temperature

INCH, FOOT = 2.54, 30.48
BELOW = 0.8
speak = partial(in_words, units="in")


def tag(
    tag_id: str,
    common: str | None = None,
    botanical: str | None = None,
    *,
    sure: float = 0.99,
    status: Status = "read",
    **fields: Any,
) -> TagRecord:
    """A record; `sure` and `status` are those of every field but the names."""
    names = {"common_names": common, "botanical_name": parse(botanical) if botanical else None}
    readings = {
        name: (Reading(value, str(value), "front", None, 0.99),) for name, value in names.items() if value
    }
    readings |= {
        name: (Reading(value, str(value), "back", None, sure, status),) for name, value in fields.items()
    }
    return TagRecord(tag_id, (), readings)


def grouped(*records: TagRecord) -> list[set[str]]:
    return [set(each.tag_ids) for each in group([identity_of(record) for record in records]).groups]


def kept_apart(*records: TagRecord) -> list[tuple[str, str, str]]:
    return list(group([identity_of(record) for record in records]).perhaps)


# ---------------------------------------------------------------- the samples


def test_the_planted_disagreements_and_no_others() -> None:
    """What the two tags of each pair really print, held against each other by hand from truth.jsonl."""
    report = compare_all(truth_records().values(), BELOW)
    found = {plant.tag_ids: {each.name for each in plant.differences} for plant in report.plants}
    assert found == {
        ("03-hydrangea", "04-hydrangea"): {"hardiness", "spread", "patents"},
        ("18-lavender", "19-lavender"): {"hardiness", "spread", "height"},
        ("07-reed-grass", "08-reed-grass"): {"spread", "flower_height"},
    }
    assert report.perhaps == ()


def test_what_the_samples_agree_on_is_no_disagreement() -> None:
    report = compare_all(truth_records().values(), BELOW)
    verdicts = {plant.tag_ids[0]: {e.name: e.verdict for e in plant.fields} for plant in report.plants}
    assert verdicts["03-hydrangea"]["light"] == verdicts["03-hydrangea"]["bloom"] == "agree"
    assert verdicts["07-reed-grass"]["hardiness"] == "fuller"  # 4a-9a beside 4 - 9
    assert verdicts["07-reed-grass"]["bloom"] == "fuller"  # early summer to early fall lies in summer to fall
    assert verdicts["18-lavender"]["water"] == "wording"


def test_worst_comes_first() -> None:
    report = compare_all(truth_records().values(), BELOW)
    ranks = [plant.rank for plant in report.plants]
    assert ranks == sorted(ranks)
    assert report.plants[-1].tag_ids == ("07-reed-grass", "08-reed-grass")  # nothing there is apart
    for plant in report.plants:
        assert [each.rank for each in plant.fields] == sorted(each.rank for each in plant.fields)


# ---------------------------------------------------------------- one plant or two

SAME = [
    # ICNCP, after NC State Extension, "The Nomenclature of Horticultural Plants": these two are one.
    (("", "Cornus 'Ozark Spring'"), ("", "Cornus florida 'Ozark Spring'")),
    # ICN Art. H.3.3 (Shenzhen): the hybrid sign is no part of the name.
    (("", "Calamagrostis acutiflora"), ("", "Calamagrostis × acutiflora")),
    # Sedum spectabile is the older name of Hylotelephium spectabile (the trade table, from memory).
    (("", "Sedum spectabile"), ("", "Hylotelephium spectabile")),
    (("Feather Reed Grass", "Calamagrostis × acutiflora 'Moonrise Rill'"),
     ("Moonrise Rill Feather Reed Grass", "Calamagrostis × acutiflora")),
    (("Red Maple", "Acer rubrum"), ("Swamp Maple", "Acer rubrum")),
    (("Spanish Lavender", ""), ("", "Lavandula stoechas")),
    (("", "Salvia nemorosa 'Ashdown Étoile'"), ("", "SALVIA NEMOROSA ‘ASHDOWN ETOILE’")),
]  # fmt: skip

OTHER = [
    (("", "Salvia nemorosa"), ("", "Salvia nemorosa 'Ashdown Blue'")),  # a species is not its cultivar
    (("", "Salvia nemorosa 'Ashdown Blue'"), ("", "Salvia nemorosa 'Tarn White'")),
    (("", "Salvia nemorosa"), ("", "Salvia officinalis")),
    (("Panicle Hydrangea", "Hydrangea paniculata"), ("Ashdown Panicle Hydrangea", "Hydrangea paniculata")),
    (("", "Athyrium niponicum"), ("", "Athyrium niponicum var. pictum")),
    (("Red Maple", ""), ("Sugar Maple", "")),
    (("", "Petunia"), ("", "Petunia")),  # a genus alone names no plant
]


@pytest.mark.parametrize(("one", "other"), SAME)
def test_same_plant(one: tuple[str, str], other: tuple[str, str]) -> None:
    assert grouped(tag("a", *one), tag("b", *other)) == [{"a", "b"}]


@pytest.mark.parametrize(("one", "other"), OTHER)
def test_other_plant(one: tuple[str, str], other: tuple[str, str]) -> None:
    records = tag("a", *one), tag("b", *other)
    assert grouped(*records) == [] and kept_apart(*records) == []


def test_a_shared_common_name_joins_nothing_but_is_told() -> None:
    """Dusty miller is Jacobaea maritima, Centaurea, Artemisia and more (ambiguous.tsv)."""
    records = (
        tag("a", "Dusty Miller"),
        tag("b", "Dusty Miller"),
        tag("c", "Dusty Miller", "Jacobaea maritima"),
    )
    assert grouped(*records) == []
    pairs = kept_apart(*records)
    assert {pair[:2] for pair in pairs} == {("a", "b"), ("a", "c"), ("b", "c")}
    assert all("several plants share" in pair[2] for pair in pairs)


def test_a_common_name_of_one_plant_joins_and_says_so() -> None:
    (plant,) = compare_all([tag("a", "Spanish Lavender"), tag("b", "", "Lavandula stoechas")], BELOW).plants
    assert any("a prints no botanical name" in remark for remark in plant.remarks)


def test_a_describing_word_is_no_given_name() -> None:
    """Two cultivars and a plain species, all called hardy: nothing joins them."""
    records = [
        tag("a", "Hardy Rose Mallow", "Hibiscus moscheutos 'Ashdown Moon'"),
        tag("b", "Hardy Rose Mallow", "Hibiscus moscheutos 'Tarn Fire'"),
        tag("c", "Hardy Rose Mallow", "Hibiscus moscheutos"),
    ]
    assert grouped(*records) == []


def test_two_cultivars_are_never_joined_through_a_third_tag() -> None:
    """A selling name used for two cultivars (as happens; ICNCP keeps such names apart from the name)."""
    records = [
        tag("a", "", "Rosa 'Korxyz'"),
        tag("b", "Rose", "Rosa MOONRISE 'Korxyz'"),
        tag("c", "Rose", "Rosa MOONRISE 'Tanabc'"),
    ]
    assert {"a", "c"} not in [each & {"a", "c"} for each in grouped(*records)]
    assert grouped(*records) == [{"a", "b"}]


def test_a_given_name_in_the_place_of_a_common_one() -> None:
    """Whole, it joins; cut short or unknown, it is only told."""
    full = tag("a", "Feather Reed Grass", "Calamagrostis × acutiflora 'Moonrise Rill'")
    whole = tag("b", "Moonrise Rill", "Calamagrostis × acutiflora")
    short = tag("c", "Moonrise", "Calamagrostis × acutiflora")
    plain = tag("d", "Feather Reed Grass", "Calamagrostis × acutiflora")
    assert grouped(full, whole) == [{"a", "b"}]
    assert grouped(full, short) == [] and "cut short" in kept_apart(full, short)[0][2]
    assert grouped(short, plain) == [] and "further name" in kept_apart(short, plain)[0][2]


def test_a_common_name_in_quotes_is_no_cultivar() -> None:
    quoted = tag("a", "Panicle Hydrangea", "Hydrangea paniculata 'Panicle Hydrangea'")
    assert grouped(quoted, tag("b", "Panicle Hydrangea", "Hydrangea paniculata")) == [{"a", "b"}]


def test_a_misread_cultivar_is_told_not_joined() -> None:
    records = tag("a", "", "Salvia nemorosa 'Ashdown Blue'"), tag("b", "", "Salvia nemorosa 'Ashdown Biue'")
    assert grouped(*records) == []
    assert "misread" in kept_apart(*records)[0][2]


# GS1: 4006381333931 is a published example of a GTIN-13; prefixes 20 to 29 are for use inside a company.
GTIN, IN_STORE = "4006381333931", "2012345678900"


def test_article_numbers() -> None:
    names = ("Coneflower", None), (None, "Echinacea purpurea 'Ashdown White'")
    assert grouped(tag("a", *names[0], gtin=GTIN), tag("b", *names[1], gtin=GTIN)) == [{"a", "b"}]
    assert grouped(tag("a", *names[0], gtin=IN_STORE), tag("b", *names[1], gtin=IN_STORE)) == []
    clash = tag("a", None, "Salvia nemorosa", gtin=GTIN), tag("b", None, "Acer rubrum", gtin=GTIN)
    assert grouped(*clash) == [] and "article number" in kept_apart(*clash)[0][2]


def test_the_tie_is_the_same_both_ways() -> None:
    identities = [identity_of(record) for record in truth_records().values()]
    for one in identities:
        for other in identities:
            assert tie(one, other) == tie(other, one)


# ---------------------------------------------------------------- how values stand to each other


def inches(low: float | None, high: float | None) -> Length:
    return Length(None if low is None else low * INCH, None if high is None else high * INCH)


RELATIONS = [
    ("height", inches(12, 18), Length(30, 45), "same", ""),  # as tags round: 12 in = 30 cm
    ("height", inches(12, 18), inches(24, 36), "apart", inches(6, 6)),
    ("height", inches(12, 18), inches(14, 20), "overlap", inches(2, 2)),
    ("spread", inches(None, 18), inches(12, 18), "fuller", ""),
    ("spread", inches(None, 18), inches(20, 24), "apart", inches(2, 2)),
    ("height", inches(36, None), inches(12, 24), "apart", inches(12, 12)),
    ("hardiness", Hardiness("4", "9"), Hardiness("4a", "9a"), "fuller", ""),
    ("hardiness", Hardiness("5", "9"), Hardiness("4", "9"), "apart", "1 zone at the cold end"),
    ("hardiness", Hardiness("5b", "9"), Hardiness("5a", "9"), "apart", "half a zone at the cold end"),
    ("hardiness", Hardiness("4", "8"), Hardiness("4", "10"), "overlap", "2 zones at the warm end"),
    ("hardiness", Hardiness("5", None), Hardiness("5", "9"), "fuller", ""),
    ("min_temperature", Temperature(-28.9), Temperature(-29), "same", ""),  # -20 °F in whole degrees Celsius
    ("min_temperature", Temperature(-28.9), Temperature(-23.3), "apart", "6 °C (10 °F)"),
    ("heat_zones", HeatZones(1, 9), HeatZones(1, 8), "overlap", "1 heat zone"),
    ("rhs_rating", "H4", "H6", "apart", "2 ratings"),
    ("light", ("full_sun",), ("full_sun",), "same", ""),
    ("light", ("full_sun", "part_sun"), ("full_sun",), "overlap", "one allows more light classes"),
    ("light", ("full_sun",), ("full_shade",), "apart", "3 light classes"),
    # Half the sources hold part sun and part shade for one class (extension services differ).
    ("light", ("part_sun",), ("part_shade",), "overlap", "one allows more light classes"),
    ("bloom", Bloom("June - August", (), (6, 7, 8)), Bloom("Jul–Aug", (), (7, 8)), "fuller", ""),
    ("bloom", Bloom("June", (), (6,)), Bloom("Sept", (), (9,)), "apart", "no month shared"),
    ("bloom", Bloom("May-Jun", (), (5, 6)), Bloom("Jun-Jul", (), (6, 7)), "overlap", "2 months not shared"),
    ("bloom", Bloom("summer", ("summer",)), Bloom("June - August", (), (6, 7, 8)), "wording", ""),
    ("bloom", Bloom("spring to fall", ("spring", "fall")), Bloom("summer", ("summer",)), "fuller", ""),
    ("bloom", Bloom("spring and fall", ("spring", "fall")), Bloom("summer", ("summer",)), "apart",
     "no month shared"),
    ("categories", ("perennial",), ("annual",), "apart", "perennial against annual"),
    ("categories", ("grass",), ("grass", "perennial"), "fuller", ""),
    ("categories", ("tree",), ("shrub",), "overlap", "tree against shrub"),
    ("patents", ("PP#22,463",), ("PP22463",), "same", ""),
    ("patents", ("PPAF",), ("PP22463",), "fuller", ""),
    ("patents", ("PP#22,463",), ("PP33031",), "apart", "no number shared"),
    ("days_to_maturity", Days(55, 60), Days(75, 80), "apart", "15 days"),
    ("water", "Keep moist", "Keep evenly moist", "wording", ""),
    ("soil", "Well-drained", "well drained", "same", ""),
]  # fmt: skip


@pytest.mark.parametrize(("field", "one", "other", "kind", "by"), RELATIONS)
def test_relation(field: str, one: Any, other: Any, kind: str, by: Any) -> None:
    found = relate(field, one, other)
    assert found.kind == kind
    if isinstance(by, Length):
        assert isinstance(found.by, Length) and found.by.max_cm == pytest.approx(by.max_cm)
    else:
        assert found.by == by
    assert relate(field, other, one).kind == kind


# ---------------------------------------------------------------- what is said of it


def say(who: str, value: Any, doubtful: bool = False, also: tuple[Any, ...] = ()) -> Said:
    return Said(who[0], who, who, value, str(value), doubtful, also)


def statement(field: str, *said: Said) -> str:
    return joint(compare_field(field, field, said), speak)


def test_the_joint_statement_never_hides_the_difference() -> None:
    text = statement("height", say("Ashdown", inches(12, 18)), say("Tarn", inches(24, 36)))
    assert text.startswith("12–36 in") or text.startswith("1–3 ft")
    assert "suppliers disagree: 12–18 in (Ashdown), 2–3 ft (Tarn)" in text
    assert "6 in between them" in text


def test_agreement_is_said_as_such() -> None:
    assert statement("height", say("Ashdown", inches(12, 18)), say("Tarn", Length(30, 45))).endswith(
        "both agree"
    )
    single = statement("warnings", say("Ashdown", ("Harmful if eaten",)))
    assert "only Ashdown says so" in single and "no proof of safety" in single


def test_zones_end_on_the_safe_side() -> None:
    text = statement("hardiness", say("A", Hardiness("4", "9")), say("B", Hardiness("5", "8")))
    assert text.startswith("4–9; suppliers disagree") and text.endswith("on the safe side 5–8")
    none = statement("hardiness", say("A", Hardiness("2", "4")), say("B", Hardiness("7", "9")))
    assert none.endswith("no zone that all name")
    warmer = statement("min_temperature", say("A", Temperature(-28.9)), say("B", Temperature(-12.2)))
    assert warmer.endswith("on the safe side 10 °F")


def test_the_outlier_of_three() -> None:
    same = inches(12, 18)
    said = say("Ashdown", same), say("Tarn", Length(30, 45)), say("Oak", inches(36, 48))
    found = compare_field("height", "Height", said)
    assert found.alone == "Oak" and "Oak stands alone" in joint(found, speak)
    assert compare_field("height", "Height", said[:1] + said[2:]).alone is None  # of two, neither is
    each_apart = (say("A", inches(6, 8)), say("B", inches(20, 24)), say("C", inches(60, 70)))
    assert compare_field("height", "Height", each_apart).alone is None
    softly = (say("A", same), say("B", same), say("C", inches(14, 20)))
    assert compare_field("height", "Height", softly).alone == "C"


def test_a_doubtful_reading_is_no_sure_disagreement() -> None:
    far = say("Tarn", inches(72, 78), doubtful=True, also=(inches(12, 18),))
    found = compare_field("height", "Height", (say("Ashdown", inches(12, 18)), far))
    assert found.verdict == "uncertain" and not found.differs
    text = joint(found, speak)
    assert "6–6½ ft (Tarn (?))" in text and "another reading of it agrees" in text


@pytest.mark.parametrize(
    ("sure", "status", "verdict"),
    [(0.99, "read", "apart"), (0.5, "read", "uncertain"), (0.99, "disagreed", "uncertain"),
     (0.5, "corrected", "apart")],
)  # fmt: skip
def test_doubt_comes_from_the_reading(sure: float, status: Status, verdict: str) -> None:
    records = [
        tag("a", None, "Acer rubrum", height=Length(1200, 1800)),
        tag("b", None, "Acer rubrum", height=Length(300, 500), sure=sure, status=status),
    ]
    (plant,) = compare_all(records, BELOW).plants
    assert {each.name: each.verdict for each in plant.fields}["height"] == verdict


@given(st.lists(st.tuples(st.integers(2, 60), st.integers(0, 40), st.booleans()), min_size=2, max_size=5))
def test_every_value_stands_in_the_statement(values: list[tuple[int, int, bool]]) -> None:
    said = tuple(
        say(f"{chr(65 + n)} Nursery", inches(low, low + more), doubtful)
        for n, (low, more, doubtful) in enumerate(values)
    )
    found = compare_field("height", "Height", said)
    text = joint(found, speak)
    if found.verdict != "agree":
        assert all(speak(one.value) in text for one in said)
    assert found.differs == (found.verdict in ("apart", "overlap"))


def test_who_speaks() -> None:
    records = [
        tag("a", None, "Acer rubrum", supplier="Ashdown", height=Length(30, 30)),
        tag("b", None, "Acer rubrum", height=Length(60, 60)),
    ]
    (plant,) = compare_all(records, BELOW).plants
    assert {one.who for one in plant.fields[0].said} == {"Ashdown", "tag b"}
    assert "tags disagree" in joint(plant.fields[0], speak)


def test_one_supplier_in_two_years() -> None:
    records = []
    for year, height in (("2019", 30.0), ("2025", 90.0)):
        photo = Photo("back", f"{year}.jpg", year.rjust(64, "0"), 10, 10, taken_at=f"{year}-05-02T10:00:00")
        record = tag(year, None, "Acer rubrum", supplier="Ashdown", height=Length(height, height))
        records.append(replace(record, photos=(photo,)))
    (plant,) = compare_all(records, BELOW).plants
    assert {one.who for one in plant.fields[0].said} == {"Ashdown, 2019", "Ashdown, 2025"}
    assert "tags disagree" in joint(plant.fields[0], speak)  # one supplier: no two suppliers disagree


def test_tags_put_side_by_side_though_they_are_of_two_plants() -> None:
    plant = compare_these([tag("a", None, "Acer rubrum"), tag("b", None, "Salvia nemorosa")], BELOW)
    assert plant.remarks[0] == "By their names a and b are not of one plant."
    assert plant.name == "Acer rubrum and Salvia nemorosa"


# ---------------------------------------------------------------- the command


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("kept") / "cat"
    with Catalogue.open(folder) as catalogue:
        for record in truth_records().values():
            catalogue.add(record, {})
    return folder


def ask(kept: Path, *words: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(app, ["-c", str(kept), "compare", *words])
    return result.exit_code, result.stdout, result.stderr


def test_report_of_the_whole_catalogue(kept: Path) -> None:
    code, out, err = ask(kept, "--json")
    plants = [json.loads(line) for line in out.splitlines()]
    assert code == 0 and [plant["tags"] for plant in plants] == [
        ["03-hydrangea", "04-hydrangea"],
        ["18-lavender", "19-lavender"],
        ["07-reed-grass", "08-reed-grass"],
    ]
    fields = {each["field"]: each for each in plants[0]["fields"]}
    assert fields["spread"]["said"][1]["value"] == {"min_cm": 121.92, "max_cm": 121.92}
    code, table, err = ask(kept)
    assert code == 0 and "3 of 3 plants" in err and "Brindlow Parasol" in table


def test_by_name_and_by_tags(kept: Path) -> None:
    for words in (["reed", "grass"], ["07"], ["07", "08"]):
        code, out, _ = ask(kept, *words, "--json")
        assert code == 0 and [json.loads(line)["tags"] for line in out.splitlines()] == [
            ["07-reed-grass", "08-reed-grass"]
        ], words
    code, out, err = ask(kept, "red", "maple")
    assert code == 0 and out == "" and "second tag" in err
    code, _, err = ask(kept, "xyzzyx")
    assert code == 2 and err.startswith("ocr-tags: No tag answers to")
    assert ask(kept, "07", "07")[0] == 2


def test_json_is_whole(kept: Path) -> None:
    for plant in compare_all(truth_records().values(), BELOW).plants:
        shown = json.loads(json.dumps(plant_json(plant, speak)))
        assert len(shown["fields"]) == len(plant.fields) and all(each["joint"] for each in shown["fields"])
