"""Finding tags by name and by filter, and an index that mends itself whatever happens to its files."""

import hashlib
import pickle
import runpy
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from index import Catalogue, generation
from index.entries import entry_of
from index.measures import half_zones
from index.measures import lengths as heights
from ocr_tags.errors import CatalogueError, QueryError
from ocr_tags.record import PlantMatch

_tags = runpy.run_path(str(Path(__file__).parent / "data" / "index_tags.py"))
make_tag, reading = _tags["make_tag"], _tags["reading"]

HEART = PlantMatch("Lamprocapnos spectabilis", ("bleeding heart", "lyre flower"), ("Dicentra spectabilis",))


def says(**facts: Any) -> dict[str, Any]:
    return facts


SHELF = {
    "daisy": says(
        common="Shasta Daisy",
        name="Leucanthemum × superbum 'Silver Pony'",
        supplier="Larkmoor Nursery",
        height=(60, 90),
        zones=("5", "9"),
        light=("full_sun",),
        categories=("perennial",),
    ),
    "lavender": says(
        common="English Lavender",
        name="Lavandula angustifolia 'Quiet Harbour'",
        supplier="Larkmoor Nursery",
        height=(30, 45),
        zones=("5b", "9a"),
        light=("full_sun",),
        categories=("perennial", "herb"),
    ),
    "heart": says(
        common="Bleeding Heart",
        name="Lamprocapnos spectabilis 'Ruby Lantern'",
        plant=HEART,
        height=(None, 91.44),
        zones=("3", None),
        light=("part_shade", "full_shade"),
    ),
    "coneflower": says(
        common="Purple Coneflower",
        name="Echinacea purpurea 'Crème Teacup'",
        supplier="Quillworth",
        height=(45.72, 60.96),
        zones=("4", "8"),
    ),
    "petunia": says(
        common="Petunia",
        name="Petunia × atkinsiana 'Lucky Comet'",
        series="Skylark",
        light=("full_sun", "part_sun"),
        categories=("annual",),
    ),
    "wort": says(
        common="St. John's Wort", name="Hypericum calycinum 'Königin der Nacht'", zones=("5a", "7b")
    ),
    "burning": says(common="Burning Bush", name="Euonymus alatus 'Copper Kettle'", categories=("shrub",)),
    "forget": says(common="Forget-me-not", name="Myosotis sylvatica 'Frosty Bell'"),
    "quillwort": says(common="Quillwort", name="Isoëtes lacustris"),
    "mint": says(common="Peppermint", name="Mentha ×piperita", light=("part_sun",)),
    "misread": says(common="Cornmon Foxg1ove", name="Digitalis purpurea 'Velvet Bell'"),
    "geranium": says(common="Geranium", plant=PlantMatch(None, could_be=("Pelargonium × hortorum",))),
}


@pytest.fixture
def catalogue(tmp_path: Path) -> Iterator[Catalogue]:
    with Catalogue.open(tmp_path / "catalogue") as opened:
        opened.add_many(make_tag(tmp_path, photo, **said) for photo, said in SHELF.items())
        yield opened


def photos(catalogue: Catalogue, words: str = "", **filters: str) -> list[str]:
    """The photo names of what is found, without those that are only near."""
    found = catalogue.find(words, **filters)
    return [Path(hit.record.photos[0].file).stem for hit in found if not hit.nearest_only]


# ---------------------------------------------------------------- names

ASKED = [
    ("Shasta Daisy", "daisy"),
    ("daisy shasta", "daisy"),
    ("SHASTA-DAISY", "daisy"),
    ("shastadaisy", "daisy"),
    ("shasta dasiy", "daisy"),
    ("sha", "daisy"),
    ("leucanthemum superb", "daisy"),
    ("silver pony", "daisy"),
    ("Leucanthemum 'Silver Pony'", "daisy"),
    ("leucantemum siver pony", "daisy"),
    ("L. angustifolia", "lavender"),
    ("lavender quiet harbour", "lavender"),
    ("lavander", "lavender"),
    ("lavendr", "lavender"),
    ("larkmoor lavender", "lavender"),
    ("Dicentra spectabilis", "heart"),
    ("dicentra", "heart"),
    ("lyre flower", "heart"),
    ("cone flower", "coneflower"),
    ("creme teacup", "coneflower"),
    ("Crème Teacup", "coneflower"),
    ("skylark petunia", "petunia"),
    ("St John's-wort", "wort"),
    ("st johns wort", "wort"),
    ("saint john wort", "wort"),
    ("konigin der nacht", "wort"),
    ("forgetmenot", "forget"),
    ("forget me not", "forget"),
    ("common foxglove", "misread"),
    ("foxglove", "misread"),
    ("digitalis", "misread"),
    ("pelargonium", "geranium"),
    # ICN (Shenzhen Code, 2018) Art. 60.7: a diaeresis does not make another name, Isoëtes is Isoetes.
    ("Isoetes lacustris", "quillwort"),
    # ICN Art. H.3A: the multiplication sign stands with or without a space, or is written as the letter x.
    ("Mentha × piperita", "mint"),
    ("Mentha ×piperita", "mint"),
    ("Mentha x piperita", "mint"),
    ("mentha piperita", "mint"),
    ("Leucanthemum x superbum", "daisy"),
    # Misspellings met in a dictionary: WordNet 3.0 has "Euonymous alatus"; USDA PLANTS has Euonymus alatus.
    ("Euonymous alatus", "burning"),
    # As above the letters a reader takes for others: from memory.
    ("1avandu1a angustifo1ia", "lavender"),
    ("Petunla", "petunia"),
    ("Digitalis purpurea 'Ve1vet Be11'", "misread"),
]


@pytest.mark.parametrize(("words", "wanted"), ASKED)
def test_a_tag_is_found_first_and_as_found(catalogue: Catalogue, words: str, wanted: str) -> None:
    assert photos(catalogue, words)[:1] == [wanted]


@pytest.mark.parametrize("words", ["hollyhock", "Delphinium elatum", "water weekly", "qqq", "7", "ünïcödé"])
def test_what_is_not_there_is_not_passed_off_as_found(catalogue: Catalogue, words: str) -> None:
    assert photos(catalogue, words) == []


def test_the_nearest_are_shown_as_such(catalogue: Catalogue) -> None:
    hits = catalogue.find("Lavandula stoechas")
    assert hits and all(hit.nearest_only for hit in hits)
    assert hits[0].record.photos[0].file == "lavender.jpg"


def test_good_answers_come_without_merely_near_ones(catalogue: Catalogue) -> None:
    assert photos(catalogue, "lantern") == ["heart"]
    assert len(catalogue.find("lantern")) == 1


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("shasta daisy", "common name 'Shasta Daisy'"),
        ("dicentra spectabilis", "old name Dicentra spectabilis of Lamprocapnos spectabilis"),
        ("lyre flower", "also called 'lyre flower'"),
        ("skylark", "series 'Skylark'"),
        ("quillworth", "supplier 'Quillworth'"),
        ("ruby lantern", "cultivar 'Ruby Lantern'"),
        ("mentha piperita", "botanical name Mentha ×piperita"),
        ("pelargonium", "one of the plants the printed name can mean 'Pelargonium × hortorum'"),
        ("peppermnt", "common name 'Peppermint'; spelt 'peppermnt', nearest 'peppermint'"),
    ],
)
def test_why_names_what_matched(catalogue: Catalogue, words: str, why: str) -> None:
    assert catalogue.find(words)[0].why == why


def test_the_whole_name_comes_before_a_longer_one(catalogue: Catalogue, tmp_path: Path) -> None:
    catalogue.add(*make_tag(tmp_path, "longer", common="Petunia Vine Creeper"))
    assert photos(catalogue, "petunia") == ["petunia", "longer"]


def test_a_plain_name_is_found_among_hundreds_of_longer_ones(catalogue: Catalogue, tmp_path: Path) -> None:
    catalogue.add_many(make_tag(tmp_path, f"{n}", common=f"Petunia Number{n}") for n in range(300))
    assert photos(catalogue, "petunia")[0] == "petunia"


def test_scores_fall_and_the_limit_holds(catalogue: Catalogue) -> None:
    scores = [hit.score for hit in catalogue.find("purple")]
    assert len(scores) == 2
    assert 100 >= scores[0] > scores[1] >= 0
    assert [hit.score for hit in catalogue.find("purple", limit=1)] == scores[:1]


def test_the_other_readings_of_a_name_are_searched_too(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = make_tag(tmp_path, "doubtful")
    name = reading("Hcllyhcck", status="disagreed", alternatives=(reading("Hollyhock"),))
    record.readings["common_names"] = (name,)
    catalogue.add(record, files)
    assert catalogue.find("hollyhock")[0].why == "another reading of the tag 'Hollyhock'"


def test_every_kind_of_name_is_indexed() -> None:
    common, name = ("Daisy", "Ox-eye"), "Lamprocapnos spectabilis 'Silver Pony'"
    record, _ = make_tag(Path(), common=common, name=name, series="Skylark", supplier="Larkmoor", plant=HEART)
    entry = entry_of(record)
    assert entry.plant is not None
    assert {name.kind for name in (*entry.names, *entry.plant.names)} == {
        "common name", "botanical name", "cultivar", "series", "supplier", "plant", "also called", "old name",
    }  # fmt: skip


# ---------------------------------------------------------------- filters


def test_zones_compare_by_halves() -> None:
    # USDA Plant Hardiness Zone Map (2023): zones 1 to 13, each of two 5 °F halves, a the colder.
    assert half_zones("5a").within("5a-7b")
    assert not half_zones("5a").within("5b-9a")
    assert not half_zones("5").within("5b-9a"), "zone 5 has gardens of 5a"
    assert half_zones("5b").within("5-9")
    assert half_zones("9a").within("5b-9a")
    assert not half_zones("9").within("5b-9a")
    assert half_zones("10").within("9-11"), "not compared as text"
    assert half_zones("12").within("3-"), "an open end"
    assert not half_zones("5").within("-"), "nothing printed"


def test_heights_compare_in_centimetres() -> None:
    # NIST SP 811, appendix B: 1 in = 2.54 cm and 1 ft = 30.48 cm, exactly.
    assert heights("2-3 ft").lowest == 60.96
    assert heights('18"').fits("457-457")
    assert heights("12 in").fits("300-300"), "30 cm, rounded from inches"
    assert heights("<60cm").fits("300-600")
    assert not heights("<60cm").fits("300-601")
    assert not heights("<60cm").fits("300-"), "how tall it gets is not printed"
    assert heights(">1.5 m").fits("1000-2000")
    assert heights("60-90").fits("-610")
    assert not heights("60-90").fits("100-590")


@pytest.mark.parametrize(
    ("filters", "wanted"),
    [
        ({"zone": "5"}, {"daisy", "heart", "coneflower", "wort"}),
        ({"zone": "5b"}, {"daisy", "lavender", "heart", "coneflower", "wort"}),
        ({"zone": "9"}, {"daisy", "heart"}),
        ({"light": "shade"}, {"heart"}),
        ({"light": "part sun"}, {"petunia", "mint"}),
        ({"category": "perennials"}, {"daisy", "lavender"}),
        ({"category": "Annual", "light": "full_sun"}, {"petunia"}),
        ({"supplier": "larkmoor"}, {"daisy", "lavender"}),
        ({"supplier": "Larkmoor Nursery", "height": "<60cm"}, {"lavender"}),
        ({"height": "2-3 ft"}, {"daisy", "heart", "coneflower"}),
        ({"height": "> 1 m"}, set()),
    ],
)
def test_filters_alone(catalogue: Catalogue, filters: dict[str, str], wanted: set[str]) -> None:
    assert set(photos(catalogue, **filters)) == wanted


def test_words_and_filters_together(catalogue: Catalogue) -> None:
    assert photos(catalogue, "daisy zone 5") == ["daisy"]
    assert photos(catalogue, "daisy z5") == ["daisy"]
    assert photos(catalogue, "daisy zone 3") == []
    assert photos(catalogue, "lavander", zone="5b") == ["lavender"]
    assert photos(catalogue, "lavander", zone="5") == []
    assert photos(catalogue, "zone 9") == photos(catalogue, zone="9")


@pytest.mark.parametrize(
    ("filters", "message"),
    [
        ({}, "nothing to look for"),
        ({"words": " ™ "}, "nothing to look for"),
        ({"words": "☘"}, "nothing to look for"),
        ({"words": "%_*:("}, "nothing to look for"),
        ({"zone": "14"}, "'14' is not a hardiness zone"),
        ({"zone": "5c"}, "'5c' is not a hardiness zone"),
        ({"light": "dim"}, "'dim' is not a light level.*part_shade"),
        ({"height": "tall"}, "'tall' is not a height.*2-3 ft"),
        ({"height": "1-2-3 cm"}, "not a height"),
        ({"height": "<1-2 cm"}, "not a height"),
    ],
)
def test_what_cannot_be_understood_is_said(
    catalogue: Catalogue, filters: dict[str, str], message: str
) -> None:
    with pytest.raises(QueryError, match=message):
        catalogue.find(**filters)


# ---------------------------------------------------------------- an index that mends itself


def built(catalogue: Catalogue) -> Path:
    search = catalogue.path / "search"
    return search / (search / "current").read_text()


def spoil(pattern: str, how: Callable[[bytes], bytes]) -> Callable[[Catalogue], None]:
    def do(catalogue: Catalogue) -> None:
        found = list(built(catalogue).glob(pattern))
        assert found
        for path in found:
            path.write_bytes(how(path.read_bytes()))

    return do


def remove(pattern: str) -> Callable[[Catalogue], None]:
    def do(catalogue: Catalogue) -> None:
        for path in list((catalogue.path / "search").glob(pattern)):
            shutil.rmtree(path) if path.is_dir() else path.unlink()

    return do


def point_elsewhere(text: bytes) -> Callable[[Catalogue], None]:
    return lambda catalogue: (catalogue.path / "search" / "current").write_bytes(text) and None


HARM = {
    "torn list of segments": spoil("*.toc", lambda data: data[: len(data) // 2]),
    "empty list of segments": spoil("*.toc", lambda data: b""),
    "foreign list of segments": spoil("*.toc", lambda data: pickle.dumps({"a": 1})),
    "torn segment": spoil("*.seg", lambda data: data[: len(data) // 2]),
    "empty segment": spoil("*.seg", lambda data: b""),
    "segment of noise": spoil("*.seg", lambda data: bytes(range(256)) * (len(data) // 256 + 1)),
    "noise in the middle": spoil(
        "*.seg", lambda data: data[:200] + b"\xff" * (len(data) - 400) + data[-200:]
    ),
    "segment gone": remove("built-*/*.seg"),
    "list of segments gone": remove("built-*/*.toc"),
    "build gone": remove("built-*"),
    "pointer gone": remove("current"),
    "all gone": remove("*"),
    "pointer empty": point_elsewhere(b""),
    "pointer of noise": point_elsewhere(b"\xff\xfe\x00"),
    "pointer out of the folder": point_elsewhere(b"../photos"),
}


@pytest.mark.parametrize("harm", HARM)
def test_a_damaged_index_is_built_again(catalogue: Catalogue, harm: str) -> None:
    catalogue.close()
    HARM[harm](catalogue)
    with Catalogue.open(catalogue.path) as again:
        assert photos(again, "lavander") == ["lavender"]
        assert photos(again, "daisy zone 5") == ["daisy"]
        found = again.check()
        assert (found.indexed, found.behind, found.problems) == (len(SHELF), 0, ())


@pytest.mark.parametrize("harm", HARM)
def test_damage_does_not_stop_adding(catalogue: Catalogue, tmp_path: Path, harm: str) -> None:
    catalogue.close()
    HARM[harm](catalogue)
    with Catalogue.open(catalogue.path) as again:
        again.add_many([make_tag(tmp_path, "new", common="Hollyhock")])
        assert photos(again, "hollyhock") == ["new"]
        assert again.check().indexed == len(SHELF) + 1


def test_an_index_of_another_form_is_built_again(
    catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = built(catalogue)
    catalogue.close()
    monkeypatch.setattr(generation, "FORM", generation.FORM + 1)
    with Catalogue.open(catalogue.path) as later:
        assert "another version" in later.check().problems[0]
        assert photos(later, "petunia") == ["petunia"]
        assert built(later) != before


def test_an_index_of_another_catalogue_is_built_again(catalogue: Catalogue, tmp_path: Path) -> None:
    with Catalogue.open(tmp_path / "other") as other:
        other.add(*make_tag(tmp_path, "only", common="Hollyhock"))
    shutil.copytree(catalogue.path / "search", tmp_path / "other" / "search")
    with Catalogue.open(tmp_path / "other") as other:
        assert "another catalogue" in other.check().problems[0]
        assert photos(other, "hollyhock") == ["only"]
        assert photos(other, "petunia") == []


def test_an_older_database_put_back_is_noticed(catalogue: Catalogue, tmp_path: Path) -> None:
    catalogue.close()
    backup = tmp_path / "backup.sqlite"
    shutil.copy(catalogue.path / "catalogue.sqlite", backup)
    with Catalogue.open(catalogue.path) as later:
        later.add_many([make_tag(tmp_path, "new", common="Hollyhock")])
    for path in catalogue.path.glob("catalogue.sqlite*"):
        path.unlink()
    shutil.copy(backup, catalogue.path / "catalogue.sqlite")
    with Catalogue.open(catalogue.path) as restored:
        assert photos(restored, "hollyhock") == []
        assert restored.check().indexed == len(SHELF)


def test_a_miscounting_index_is_built_again(catalogue: Catalogue) -> None:
    catalogue.close()
    raw = sqlite3.connect(catalogue.path / "catalogue.sqlite")
    raw.execute("DELETE FROM tags WHERE record LIKE '%Shasta%'")  # behind the change numbers' back
    raw.commit()
    raw.close()
    with Catalogue.open(catalogue.path) as again:
        assert photos(again, "shasta") == []
        assert again.check().indexed == len(SHELF) - 1


def test_another_programs_changes_are_seen_at_the_next_search(catalogue: Catalogue, tmp_path: Path) -> None:
    assert photos(catalogue, "hollyhock") == []
    with Catalogue.open(catalogue.path) as other:
        record, files = make_tag(tmp_path, "new", common="Hollyhock")
        other.add(record, files)
        assert photos(catalogue, "hollyhock") == ["new"]
        other.remove(record.tag_id)
        other.rebuild()
        assert photos(catalogue, "hollyhock") == []


def test_changes_go_into_the_index_at_hand(catalogue: Catalogue, tmp_path: Path) -> None:
    before = built(catalogue)
    catalogue.close()
    with Catalogue.open(catalogue.path) as again:
        record, files = make_tag(tmp_path, "new", common="Hollyhock")
        again.add_many([(record, files)])
        again.correct(record.tag_id, "common_names", "Foxtail")
        assert (photos(again, "foxtail"), photos(again, "hollyhock")) == (["new"], [])
        again.remove(record.tag_id)
        assert photos(again, "foxtail") == []
        assert (again.check().behind, again.check().indexed) == (0, len(SHELF))
        assert built(again) == before, "nothing of this needs building anew"


def test_damage_that_shows_only_while_asking_is_mended(
    catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = built(catalogue)
    sound = generation.Generation.kept

    def torn(self: generation.Generation, *asked: Any) -> Any:
        if self.name == before.name:
            raise EOFError("no more pages")
        return sound(self, *asked)

    monkeypatch.setattr(generation.Generation, "kept", torn)
    assert photos(catalogue, "petunia") == ["petunia"]
    assert built(catalogue) != before


def test_rebuilding_tells_how_far_it_is(catalogue: Catalogue) -> None:
    told: list[tuple[int, int]] = []
    catalogue.rebuild(lambda done, total: told.append((done, total)))
    assert told == [(number, len(SHELF)) for number in range(1, len(SHELF) + 1)]


def test_a_rebuild_that_fails_leaves_the_old_index(catalogue: Catalogue) -> None:
    before = built(catalogue)

    def stop(done: int, total: int) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        catalogue.rebuild(stop)
    assert built(catalogue) == before
    assert [path.name for path in (catalogue.path / "search").glob("built-*")] == [before.name]
    assert photos(catalogue, "petunia") == ["petunia"]


def test_a_search_index_that_cannot_be_written_is_named(catalogue: Catalogue) -> None:
    catalogue.close()
    shutil.rmtree(catalogue.path / "search")
    (catalogue.path / "search").write_text("a file in the way")
    with (
        Catalogue.open(catalogue.path) as again,
        pytest.raises(CatalogueError, match=r"search index .* cannot be written"),
    ):
        again.find("petunia")


def test_the_index_is_no_part_of_the_truth(catalogue: Catalogue, tmp_path: Path) -> None:
    """Two catalogues of the same records answer alike, however their indexes came about."""
    with Catalogue.open(tmp_path / "one by one") as other:
        for photo, said in SHELF.items():
            other.add(*make_tag(tmp_path, photo, **said))
            other.find("petunia")
        for words, _ in ASKED:
            assert other.find(words) == catalogue.find(words), words


def test_hashes_of_photos_are_their_contents(catalogue: Catalogue) -> None:
    for record in catalogue.records():
        data = catalogue.photo_path(record.photos[0].sha256).read_bytes()
        assert hashlib.sha256(data).hexdigest() == record.photos[0].sha256
