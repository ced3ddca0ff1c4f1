"""The name lists and what is looked up in them, judged by WordNet and by the lists' own promises."""

from __future__ import annotations

import random
import re
import runpy
from pathlib import Path

import pytest

from ocr_tags.names import lexicon, repair
from ocr_tags.names.matching import match_plant
from ocr_tags.names.nomenclature import parse
from ocr_tags.values import BotanicalName

DATA = Path(__file__).parent / "data"
# Source: WordNet 3.0, Princeton University, data.noun: which plant a name means, in another hand's view.
WORDNET = [
    line.split("\t")
    for line in (DATA / "wordnet_sample.tsv").read_text("utf-8").splitlines()
    if not line.startswith("#")
]
KINDS = set(
    """
    annual perennial biennial shrub tree vine grass fern bulb herb vegetable fruit houseplant succulent
    """.split()  # noqa: SIM905
)


def genera_called(common: str) -> set[str]:
    return {
        lexicon.genus_of(name)
        for plant in lexicon.plants_called(common)
        for name in (plant.name, *plant.synonyms)
    }


def test_common_names_lead_to_the_genus_wordnet_gives() -> None:
    """Names are shared: WordNet means another plant by some. Four in five must still agree."""
    agreed = [common for common, species, _ in WORDNET if species.split()[0] in genera_called(common)]
    assert len(WORDNET) == 160
    assert len(agreed) >= 0.8 * len(WORDNET)


def test_a_printed_botanical_name_settles_what_a_shared_name_leaves_open() -> None:
    settled = 0
    for common, species, _ in WORDNET:
        match = match_plant((common,), parse(species))
        if match is not None and match.name is not None:
            plant = lexicon.plant_named(match.name)
            known = {match.name, *(plant.synonyms if plant else ())}
            assert lexicon.key(species) in {
                lexicon.key(" ".join(n.replace("× ", "").split()[:2])) for n in known
            }
            assert match.could_be == ()
            settled += 1
    assert settled >= 0.8 * len(WORDNET)


def test_every_trade_plant_is_well_written() -> None:
    assert len(lexicon.plants()) >= 700
    for plant in lexicon.plants():
        assert plant.kind in KINDS
        assert plant.common_names
        for name in (plant.name, *plant.synonyms):
            parsed = parse(name)
            assert parsed is not None and parsed.name == name, name
        for name in plant.common_names:
            assert re.fullmatch(r"[^\W\d_].*[\w.']", name) and name == " ".join(name.split()), name


def test_accepted_names_stand_once() -> None:
    names = [plant.name for plant in lexicon.plants()]
    assert len(names) == len(set(names))


# Older names that tags go on printing; from memory.
@pytest.mark.parametrize(
    ("printed", "accepted"),
    [
        ("Dicentra spectabilis", "Lamprocapnos spectabilis"),
        ("Sedum spectabile", "Hylotelephium spectabile"),
        ("Aster novae-angliae", "Symphyotrichum novae-angliae"),
        ("Sansevieria trifasciata", "Dracaena trifasciata"),
        ("Rosmarinus officinalis", "Salvia rosmarinus"),
        ("Perovskia atriplicifolia", "Salvia yangii"),
        ("Cimicifuga racemosa", "Actaea racemosa"),
        ("Petunia x hybrida", "Petunia × atkinsiana"),
        ("Pennisetum setaceum", "Cenchrus setaceus"),
        ("Buddleia davidii", "Buddleja davidii"),
    ],
)
def test_synonyms(printed: str, accepted: str) -> None:
    plant = lexicon.plant_named(printed)
    assert plant is not None and plant.name == accepted


def test_shared_names_give_every_plant_and_settle_on_none() -> None:
    match = match_plant(("Dusty Miller",), None)
    assert match is not None and match.name is None and len(match.could_be) > 1
    assert lexicon.is_ambiguous("dusty miller") and not lexicon.is_ambiguous("oakleaf hydrangea")
    geranium = match_plant(("Geranium",), BotanicalName("Pelargonium", "Pelargonium"))
    assert geranium is not None and geranium.name is not None
    assert lexicon.genus_of(geranium.name) == "Pelargonium"


def test_two_common_names_narrow_the_choice() -> None:
    match = match_plant(("Stonecrop", "Ice Plant"), None)
    assert match is not None
    names = [name for name in (match.name, *match.could_be) if name]
    genera = {"Hylotelephium", "Delosperma", "Mesembryanthemum", "Sedum", "Phedimus"}
    assert names and {lexicon.genus_of(name) for name in names} <= genera


def test_what_no_list_knows_matches_nothing() -> None:
    assert match_plant(("Moonrise Widget",), None) is None
    assert match_plant((), BotanicalName("Qqqus qqqa", "Qqqus", "qqqa")) is None
    assert match_plant((), None) is None


@pytest.mark.parametrize(
    "text",
    ["Oak Street", "Full Sun", "Winter", "Care guide", "ооо", "", "12 in", "Height 12 in", "Attracts bees"],
)
def test_ordinary_words_are_near_no_name(text: str) -> None:
    """Looser likenesses took Oak Street for a tree, Winter for a genus; the Cyrillic row folds to nothing."""
    for nearest in (repair.nearest_common, repair.nearest_binomial, repair.nearest_genus):
        near = nearest(text)
        assert near is None or not near.clear


def test_damaged_names_are_put_right_and_seldom_wrong() -> None:
    """Two letters a name exchanged as a reader does (the commonest pairs of Tesseract 5, measured)."""
    swaps = {"l": "i", "i": "l", "t": "l", "r": "n", "a": "o", "o": "e", "c": "e", "m": "n", "u": "a"}
    chance = random.Random(4)
    right = wrong = asked = 0
    for plant in lexicon.plants():
        name = max(plant.common_names, key=len)
        places = [at for at, letter in enumerate(name) if letter in swaps]
        if len(name) < 10 or len(places) < 2:
            continue
        damaged = list(name)
        for at in chance.sample(places, 2):
            damaged[at] = swaps[damaged[at]]
        near = repair.nearest_common("".join(damaged))
        asked += 1
        if near and near.clear:
            same = plant in lexicon.plants_called(near.name)
            right, wrong = right + same, wrong + (not same)
    assert asked > 500
    assert right > 0.6 * asked
    assert wrong < 0.01 * asked


def test_the_long_list_is_built_from_its_table() -> None:
    table = (
        "name\trank\tfamily\tcommon names\tsources\n"
        "Aesculus\tgenus\tSapindaceae\thorse chestnuts\tncbi\n"
        "Aesculus glabra\tspecies\tSapindaceae\tOhio buckeye\tncbi\n"
        "Aesculus × carnea\tspecies\tSapindaceae\t\tncbi\n"
        "Angrecum\tgenus\tOrchidaceae\t\twordnet\n"
    )
    build = runpy.run_path(str(Path(__file__).parent / "build_plant_names.py"))["build"]
    lines = [line for line in build(table).splitlines() if not line.startswith("#")]
    assert lines == ["Aesculus\tSapindaceae\thorse chestnuts\tglabra=Ohio buckeye;×carnea"]
    assert lexicon.is_binomial("Aesculus", "carnea") and lexicon.is_binomial("Aesculus", "glabra")
    assert not lexicon.is_genus("Angrecum")


def test_a_whole_word_is_not_bent_into_another_plants_name() -> None:
    near = repair.nearest_common("Northern Maidenhair Fern")
    assert near is None or near.name != "southern maidenhair fern"
