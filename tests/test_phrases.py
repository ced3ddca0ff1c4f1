"""Folding keeps places; worn phrases are found, other words are not; values end where they should."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields.phrases import Phrases, flowing, fold, label_phrases, listed
from ocr_tags.fields.values import labelled, value_end


@given(st.text(max_size=60))
def test_folding_keeps_every_character_in_its_place(text: str) -> None:
    assert len(fold(text)) == len(flowing(text)) == len(text)


def test_one_wrong_letter_is_repaired_two_are_not() -> None:
    light = Phrases(lambda: {"full sun": "sun", "part shade": "shade"})
    worn = {
        text: [hit.value for hit in light.find(text)]
        for text in ("Ful Sun", "Fu11 Sun", "FullSun", "Part Shede")
    }
    assert worn == {"Ful Sun": ["sun"], "Fu11 Sun": ["sun"], "FullSun": ["sun"], "Part Shede": ["shade"]}
    assert not light.find("Full of sunny days. Park shape. Fall snow")


def test_values_stand_right_below_beside_or_after_a_colon_never_beyond_a_gap() -> None:
    def values(text: str) -> list[str]:
        return [text[found.start : found.end] for found in labelled(text, label_phrases("soil"))]

    for text in (
        "Soil: Dry",
        "Soil\tDry",
        "Soil\nDry",
        "Soil .... Dry",
        "Soil - Dry",
        "Height: 2 ft Soil: Dry Zone: 5",
    ):
        assert values(text) == ["Dry"], text
    for text in ("Soil\n\nDry", "Soil\nZone: 5", "Soil\nLight\nSun", "the soil: dry"[:8]):
        assert values(text) == [], text


def test_a_sentence_ends_at_its_stop_and_runs_on_over_lines_in_small_letters() -> None:
    text = "Keep moist\nin summer. Feed"
    assert text[: value_end(text, 0)] == "Keep moist\nin summer"
    assert value_end("Keep moist\nZone 5", 0) == len("Keep moist")


def test_no_word_of_a_list_has_two_meanings() -> None:
    for name in ("light", "season", "part", "month", "kind"):
        words = [word for words in listed(name).values() for word in words]
        assert sorted(words) == sorted(set(words)), name
