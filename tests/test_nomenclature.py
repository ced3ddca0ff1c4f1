"""Names taken apart and written again, against the codes' own examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.names.cultivars import combine
from ocr_tags.names.epithets import plausible_epithet, title_case
from ocr_tags.names.nomenclature import parse, read_name, write
from ocr_tags.values import BotanicalName

# Source: ICN (Shenzhen Code 2018) Art. 24.1-24.2 and its examples; RHS Recommended Style for Printing Plant
# Names, January 2004, for ssp. and the abbreviations of rank.
BELOW_SPECIES = [
    (
        "Saxifraga aizoon var. aizoon subvar. brevifolia f. multicaulis subf. surculosa",
        "var. aizoon subvar. brevifolia f. multicaulis subf. surculosa",
    ),
    ("Solanum melongena var. insanum", "var. insanum"),
    ("Primula vulgaris subsp. sibthorpii", "subsp. sibthorpii"),
    ("Primula vulgaris ssp. sibthorpii", "subsp. sibthorpii"),
    ("Pimelea prostrata f. parvifolia", "f. parvifolia"),
    ("Sarcococca hookeriana var. digyna", "var. digyna"),
    ("Polypodium vulgare nothosubsp. mantoniae", "nothosubsp. mantoniae"),
]


@pytest.mark.parametrize(("printed", "infraspecific"), BELOW_SPECIES)
def test_ranks_below_species(printed: str, infraspecific: str) -> None:
    name = parse(printed)
    assert name is not None and name.infraspecific == infraspecific
    assert name.name == printed.replace("ssp.", "subsp.")


# Source: ICN Art. H.1, H.2, H.3.1 and Rec. H.3A: the examples there; the letter x is tolerated (Darwin Core,
# comment on scientificName), joined forms by common practice.
@pytest.mark.parametrize(
    ("printed", "genus", "species", "written"),
    [
        ("×Agropogon littoralis", "Agropogon", "littoralis", "× Agropogon littoralis"),
        ("Salix ×capreola", "Salix", "capreola", "Salix × capreola"),
        ("Salix × capreola", "Salix", "capreola", "Salix × capreola"),
        ("Salix x capreola", "Salix", "capreola", "Salix × capreola"),
        ("Salix X capreola", "Salix", "capreola", "Salix × capreola"),
        ("Salix xcapreola", "Salix", "capreola", "Salix × capreola"),
        ("SALIX X CAPREOLA", "Salix", "capreola", "Salix × capreola"),
        ("Mentha ×smithiana", "Mentha", "smithiana", "Mentha × smithiana"),
        ("Salix aurita × S. caprea", "Salix", None, "Salix aurita × S. caprea"),
        (
            "Agrostis stolonifera × Polypogon monspeliensis",
            None,
            None,
            "Agrostis stolonifera × Polypogon monspeliensis",
        ),
    ],
)
def test_hybrids(printed: str, genus: str | None, species: str | None, written: str) -> None:
    name = parse(printed)
    assert name is not None and name.hybrid
    assert (name.genus, name.species, name.name) == (genus, species, written)


def test_a_hybrid_need_not_be_marked() -> None:
    """Source: ICN Art. H.3 Note 1, Ex. 3."""
    name = parse("Digitalis mertonensis")
    assert name is not None and (name.species, name.hybrid) == ("mertonensis", False)


# Source: NC State Extension, The Nomenclature of Horticultural Plants; FAO, Rules for cultivars (Populus);
# Darwin Core comment on cultivarEpithet for Group and grex; ICNCP on trade designations, from summaries.
@pytest.mark.parametrize(
    ("printed", "written", "cultivar", "group", "trade"),
    [
        ("Cornus 'Ozark Spring'", "Cornus 'Ozark Spring'", "Ozark Spring", None, None),
        ("Cornus florida 'Ozark Spring'", "Cornus florida 'Ozark Spring'", "Ozark Spring", None, None),
        ("Solanum tuberosum 'King Edward'", "Solanum tuberosum 'King Edward'", "King Edward", None, None),
        ('Cryptomeria japonica "Elegans"', "Cryptomeria japonica 'Elegans'", "Elegans", None, None),
        (
            "Berberis thunbergii cv. 'Crimson Pygmy'",
            "Berberis thunbergii 'Crimson Pygmy'",
            "Crimson Pygmy",
            None,
            None,
        ),
        (
            "Rhododendron boothii Mishmiense Group",
            "Rhododendron boothii Mishmiense Group",
            None,
            "Mishmiense Group",
            None,
        ),
        ("Paphiopedilum Atlantis grex", "Paphiopedilum Atlantis grex", None, "Atlantis grex", None),
        ("Rosa ICEBERG 'Korbin'", "Rosa 'Korbin'", "Korbin", None, "Iceberg"),
        ("Rosa Iceberg ('Korbin')", "Rosa 'Korbin'", "Korbin", None, "Iceberg"),
        (
            "Brassica oleracea\nCapitata Group",
            "Brassica oleracea Capitata Group",
            None,
            "Capitata Group",
            None,
        ),
        ("+Laburnocytisus 'Adamii'", "+Laburnocytisus 'Adamii'", "Adamii", None, None),
    ],
)
def test_cultivated_plants(
    printed: str, written: str, cultivar: str | None, group: str | None, trade: str | None
) -> None:
    name = parse(printed)
    assert name is not None
    assert (name.name, name.cultivar, name.group, name.trade_designation) == (written, cultivar, group, trade)


@pytest.mark.parametrize(
    ("epithet", "plausible"),
    # Source: Summary of ICNCP rules for orchid hybrids, 2017, and FAO, Rules for cultivars.
    [
        ("Super 5", True),
        ("100th Battalion", True),
        ("12", False),
        ("A", False),
        ("x" * 31, False),
        ("½ Moon", False),
    ],
)
def test_limits_on_epithets(epithet: str, plausible: bool) -> None:
    assert plausible_epithet(epithet) is plausible


@pytest.mark.parametrize("opening", list("'‘`´\"“,‚"))
@pytest.mark.parametrize("closing", list("'’`´\"”"))
def test_quotes_as_readers_give_them(opening: str, closing: str) -> None:
    name = parse(f"Salvia nemorosa {opening}Blue Kettle{closing}")
    assert name is not None and name.name == "Salvia nemorosa 'Blue Kettle'"


@pytest.mark.parametrize(
    "authors",
    ["L.", "Mill.", "(L.) Moench", "Siebold & Zucc.", "(Thunb.) Hook.f.", "Lindl. ex Paxton", "hort."],
)
def test_authors_are_dropped(authors: str) -> None:
    """The author citations are common forms of ICN Art. 46; the names before them are no matter."""
    for after in ("", " 'Blue Kettle'"):
        name = parse(f"Salvia nemorosa {authors}{after}")
        assert name is not None and name.name == f"Salvia nemorosa{after}"


@pytest.mark.parametrize(
    "text",
    ["", "Plant in spring", "Full sun to part shade", "12 in", "'Blue Kettle'", "Height: 3 ft", "salvia"],
)
def test_what_is_no_name(text: str) -> None:
    assert parse(text) is None


def test_case_of_capitals() -> None:
    assert title_case("FORGET-ME-NOT") == "Forget-me-not"
    assert title_case("QUEEN OF THE PRAIRIE") == "Queen of the Prairie"


LATIN = st.from_regex(
    r"[bcdfglmnprst][aeiou][bcdfglmnprst]{1,2}[aeiou](?:nsis|ta|tus|rum|lis)", fullmatch=True
)
GENUS = st.from_regex(r"[BCDFGLMNPRST][aeiou][bcdfglmnprst]{1,2}(?:ia|us|um|is)", fullmatch=True)
WORD = st.from_regex(r"[A-Z][aeiou][b-df-hj-np-tv-z]{1,2}[a-z]{0,5}", fullmatch=True)
CULTIVAR = st.lists(WORD, min_size=1, max_size=3).map(" ".join).filter(lambda words: len(words) <= 30)
RANK = st.sampled_from(["subsp.", "var.", "f."])


@st.composite
def names(draw: st.DrawFn) -> BotanicalName:
    species = draw(st.none() | LATIN)
    below = draw(st.none() | st.tuples(RANK, LATIN).map(" ".join)) if species else None
    name = BotanicalName(
        name="",
        genus=draw(GENUS),
        species=species,
        infraspecific=below,
        hybrid=draw(st.booleans()) if species else False,
        cultivar=draw(st.none() | CULTIVAR),
        group=draw(st.none() | WORD.map(lambda word: f"{word} Group")),
    )
    return BotanicalName(write(name), *(getattr(name, f) for f in name.__dataclass_fields__ if f != "name"))


@given(names())
def test_what_is_written_reads_back_the_same(name: BotanicalName) -> None:
    assert parse(name.name) == name


@given(names(), st.sampled_from(["‘{}’", '"{}"', "“{}”", "`{}´"]))
def test_other_quotes_read_back_the_same(name: BotanicalName, quotes: str) -> None:
    if name.cultivar:
        printed = name.name.replace(f"'{name.cultivar}'", quotes.format(name.cultivar))
        assert parse(printed) == name


@given(names())
def test_a_name_ends_where_it_ends(name: BotanicalName) -> None:
    text = f"{name.name}; height 12 in"
    parsed = read_name(text, 0)
    assert parsed is not None and text[: parsed.end] == name.name


@given(names(), names())
def test_combining_takes_nothing_away(one: BotanicalName, other: BotanicalName) -> None:
    assert combine(one, one) == one
    both = combine(one, other)
    if both is not None:
        for part in ("genus", "species", "infraspecific", "cultivar", "group"):
            assert getattr(one, part) in (None, getattr(both, part))
            assert getattr(other, part) in (None, getattr(both, part))
