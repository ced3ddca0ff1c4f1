"""Plant passports after the models of Implementing Regulation (EU) 2017/2313 and its British version."""

from __future__ import annotations

from itertools import permutations

import pytest

from ocr_tags.fields.passport import read_plant_passport
from ocr_tags.record import TagText
from ocr_tags.values import PlantPassport

LINES = {"A": "Lavandula angustifolia", "B": "NL-000000001", "C": "25-0417-03", "D": "NL"}
READ = PlantPassport("Lavandula angustifolia", "NL-000000001", "25-0417-03", "NL")


def passports(text: str) -> list[PlantPassport]:
    return [found.value for found in read_plant_passport(TagText(text))]


# Recital 2 of the regulation: the models fix neither size nor proportion, so place says nothing, letters all.
@pytest.mark.parametrize("order", list(permutations("ABCD")))
def test_letters_count_not_their_place(order: tuple[str, ...]) -> None:
    lines = "\n".join(f"{letter} {LINES[letter]}" for letter in order)
    assert passports(f"Plantenpaspoort / Plant Passport\n{lines}") == [READ]


@pytest.mark.parametrize("between", ["\n", "\t", "  ", "\n\n"])
@pytest.mark.parametrize("mark", [" ", ". ", ") ", ": ", ":"])
def test_the_models_of_the_annex(between: str, mark: str) -> None:
    lines = between.join(f"{letter}{mark}{value}" for letter, value in LINES.items())
    assert passports(f"Plant Passport{between}{lines}") == [READ]


def test_great_britain_prints_the_number_without_a_country() -> None:
    # Annex VII of Regulation (EU) 2016/2031 as retained, Part A.
    text = "UK Plant Passport\nA Quercus robur\nB 12345\nC 2411\nD GB"
    assert passports(text) == [PlantPassport("Quercus robur", "12345", "2411", "GB")]


def test_protected_zones_carry_the_code_of_the_pest() -> None:
    # "PZ" and an EPPO code: ERWIAM is Erwinia amylovora.
    text = "Plant Passport - PZ ERWIAM\nA Malus domestica\nB IE-1234\nC 55-1\nD IE"
    assert passports(text)[0].protected_zone == "ERWIAM"


@pytest.mark.parametrize(
    "text",
    ["Vitamins A, B, C and D", "A lovely plant\nBest in sun\nCare\nDry", "Plant passport on the crate"],
)
def test_other_letters_are_no_passport(text: str) -> None:
    assert passports(text) == []


@pytest.mark.parametrize("between", [" · ", " ·", "·", " | ", " / "])
def test_marks_between_the_letters(between: str) -> None:
    lines = between.join(f"{letter} {value}" for letter, value in LINES.items())
    assert passports(f"EU Plant Passport · Plantepas{between}{lines}") == [READ]
