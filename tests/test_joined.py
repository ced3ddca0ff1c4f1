"""Readers run a label and its value together; print never does (common practice, no source)."""

import pytest
from test_text import line, words

from ocr_tags.fields.labels import is_label
from ocr_tags.layout.joined import set_apart
from ocr_tags.layout.lines import Line
from ocr_tags.layout.text import side_texts


def parted(text: str, height: int = 20) -> list[str]:
    return [part.text for part in set_apart([line(text, 0, 0, height)], 20.0, is_label)]


@pytest.mark.parametrize(
    ("run_together", "apart"),
    [
        ("LightPart shade", ["Light Part shade"]),
        ("Bloom timeMay to June", ["Bloom time May to June"]),
        ("WATERKeep evenly moist", ["WATER Keep evenly moist"]),
        ('12-18"Spread', ['12-18"', "Spread"]),
        ("3'Bloom Time", ["3'", "Bloom Time"]),
        ("Type.Vegetable", ["Type. Vegetable"]),
    ],
)
def test_a_label_is_parted_from_what_runs_into_it(run_together: str, apart: list[str]) -> None:
    assert parted(run_together) == apart


@pytest.mark.parametrize("name", ["SkyLantern", "TENfold81", "McBride Lily", "Full sunPart shade", "3in"])
def test_capitals_inside_other_words_stay(name: str) -> None:
    assert parted(name) == [name]


def test_a_label_behind_a_gap_that_is_no_space_begins_a_column() -> None:
    value, label = words("Full sun", 0, 0), words("Soil type", 95, 0)
    assert [part.text for part in set_apart([Line((*value, *label))], 20.0, is_label)] == [
        "Full sun",
        "Soil type",
    ]
    label = words("Soil type", 85, 0)
    assert len(set_apart([Line((*value, *label))], 20.0, is_label)) == 1


def test_a_word_behind_a_figure_and_a_gap_may_be_its_own_label() -> None:
    figure, label = words("18 in", 0, 0), words("Height", 70, 0)
    assert len(set_apart([Line((*figure, *label))], 20.0, is_label)) == 1


def test_a_name_in_large_letters_may_begin_with_the_word_of_a_label() -> None:
    assert parted("WaterLight", height=60) == ["WaterLight"]
    assert parted("WaterLight") == ["Water Light"]


def test_both_halves_keep_their_place_on_the_photo() -> None:
    (joined,) = words("WaterWeekly", 100, 0)
    (text, *_) = side_texts({"rapidocr lines": [line("WaterWeekly", 100, 0)]}, "front", 500, is_label)
    assert text.string == "Water Weekly"
    label, value = (span.word for span in text.words)
    assert (label.box, value.box) == (joined.box, joined.box)
    assert (label.place.x, label.place.right, value.place.right) == (100, value.place.x, joined.place.right)
