"""A title over a botanical name is a cultivar, until the other side prints the cultivar in the name."""

import pytest

from ocr_tags.claims.confidence import fitted
from ocr_tags.claims.of_side import Claim
from ocr_tags.claims.selling_names import told_apart
from ocr_tags.claims.voting import weigh
from ocr_tags.fields import FIELDS
from ocr_tags.record import Box, Side
from ocr_tags.values import BotanicalName

BOTANICAL = next(field for field in FIELDS if field.name == "botanical_name")


def claim(cultivar: str | None, printed: str, side: Side, certainty: float, sold: str | None = None) -> Claim:
    species = "Salvia nemorosa"
    name = f"{species} '{cultivar}'" if cultivar else species
    value = BotanicalName(name, "Salvia", "nemorosa", cultivar=cultivar, trade_designation=sold)
    votes = (("rapidocr", certainty), ("tesseract", certainty))
    return Claim(value, printed, side, Box(0, 0, 90, 20), votes, 0.0, certainty=certainty, asked=2)


def test_a_title_is_the_selling_name_of_the_cultivar_that_the_other_side_prints() -> None:
    front = claim("Sky Lantern", "Salvia nemorosa", "front", 0.65)
    back = claim("Lambin", "Salvia nemorosa 'Lambin'", "back", 0.96)
    settled = told_apart([front, back])
    assert settled[0].value == BotanicalName("Salvia nemorosa", "Salvia", "nemorosa")
    assert settled[1].value.name == "Salvia nemorosa 'Lambin'"
    assert settled[1].value.trade_designation == "Sky Lantern"
    ((reading, _),) = weigh(BOTANICAL, settled, fitted())
    assert (reading.value.cultivar, reading.status) == ("Lambin", "agreed")


@pytest.mark.parametrize(
    "front",
    [
        claim("Sky Lantern", "Salvia nemorosa 'Sky Lantern'", "front", 0.96),  # printed: a contradiction
        claim("Larnbin", "Salvia nemorosa", "front", 0.65),  # the same cultivar, read in other letters
        claim(None, "Salvia nemorosa", "front", 0.96),
    ],
)
def test_what_is_no_title_beside_a_cultivar_stays_as_it_is(front: Claim) -> None:
    back = claim("Lambin", "Salvia nemorosa 'Lambin'", "back", 0.96, "Sky Lantern")
    assert told_apart([front, back]) == [front, back]


def test_a_selling_name_that_is_printed_stays() -> None:
    back = claim("Lambin", "Salvia nemorosa 'Lambin'", "back", 0.96, "Sky Lantern")
    settled = told_apart([claim("Sky Lanter", "Salvia nemorosa", "front", 0.65), back])
    assert settled[1] == back


def alone(cultivar: str, side: Side, certainty: float = 0.88) -> Claim:
    value = BotanicalName(f"'{cultivar}'", cultivar=cultivar)
    votes = (("rapidocr", certainty), ("tesseract", certainty))
    return Claim(value, value.name, side, Box(0, 0, 90, 20), votes, 0.0, certainty=certainty, asked=2)


def test_a_cultivar_without_a_genus_belongs_to_the_name_on_the_other_side() -> None:
    (settled,) = told_apart([alone("Elm Ember", "front"), claim(None, "Salvia nemorosa", "back", 0.96)])
    assert settled.value.name == "Salvia nemorosa 'Elm Ember'"
    assert settled.certainty == 0.88


def test_a_cultivar_without_a_genus_is_no_name_by_itself() -> None:
    whole = claim("Lambin", "Salvia nemorosa 'Lambin'", "back", 0.96)
    assert told_apart([alone("Elm Ember", "front")]) == []
    assert told_apart([alone("Elm Ember", "front"), whole]) == [whole]
    assert told_apart([alone("Elm Ember", "back"), whole]) == [whole]


def test_a_cultivar_hardly_read_is_not_taken_up() -> None:
    species = claim(None, "Salvia nemorosa", "back", 0.96)
    assert told_apart([alone("Elm Ember", "front", 0.4), species]) == [species]
