"""Several photos of one side: laid over each other by their words, and read as one side.

The second photo is the first one seen through a known perspective, drawn by OpenCV's own function for it.
"""

from __future__ import annotations

from dataclasses import replace

import cv2
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ocr_tags.claims.of_side import claims
from ocr_tags.fields import FIELDS
from ocr_tags.layout.lines import Line
from ocr_tags.layout.text import side_texts
from ocr_tags.pairing.belonging import belong_together
from ocr_tags.pictures.overlay import lay_over
from ocr_tags.pipeline import SideRead, make_record, one_side
from ocr_tags.record import Box, Photo, Word
from ocr_tags.record_json import from_json, to_json

TAG = """Meadow Sage Wexcombe
Salvia nemorosa
Height: 24-36 in
Spacing: 18 in
Light: Full sun
USDA Zones 3-8
Blooms: all summer long"""
OTHER = """Garden Catmint Tarnlight
Nepeta racemosa
Height: 12-18 in
Spacing: 15 in
Light: Full sun
USDA Zones 4-8
Blooms: early summer"""
LEANING = np.array([[0.35, -0.92, 900], [0.9, 0.42, 60], [0.0001, 0.00005, 1]])
"""A quarter turn and more, farther away at one end."""


def shot(text: str, name: str, way: np.ndarray | None = None, sure: float = 0.95) -> SideRead:
    """A photo on which both engines read `text`, one line below the other, through the perspective `way`."""
    lines = []
    for row, printed in enumerate(text.splitlines()):
        x, words = 50, []
        for each in printed.split(" "):
            place = Box(x, 60 + 70 * row, 22 * len(each), 40)
            words.append(Word(each, place, seen_through(way, place), sure))
            x += 22 * len(each) + 20
        lines.append(Line(tuple(word for word in words if word.text.strip("_"))))
    passes = {name: [line for line in lines if line.words] for name in ("tesseract lines", "rapidocr lines")}
    texts = side_texts(passes, "front", 700)
    return SideRead(
        Photo("front", f"{name}.jpg", name, 2000, 2000),
        {field.name: claims(texts, field) for field in FIELDS},
        tuple(line.text for line in passes["rapidocr lines"]),
        text.splitlines()[0],
        sum(len(line.words) for line in lines),
        ("fake",),
        tuple(span.word for span in texts[0].words),
    )


def seen_through(way: np.ndarray | None, box: Box) -> Box:
    if way is None:
        return box
    corners = [(box.x, box.y), (box.right, box.y), (box.right, box.bottom), (box.x, box.bottom)]
    moved = cv2.perspectiveTransform(np.array([corners], np.float64), way)[0]
    left, top = moved.min(axis=0)
    right, bottom = moved.max(axis=0)
    return Box(int(left), int(top), int(right - left), int(bottom - top))


def test_words_of_a_leaning_photo_are_carried_to_their_place() -> None:
    one, two = shot(TAG, "one"), shot(TAG, "two", LEANING)
    over = lay_over(one, two)
    assert over is not None and over.share == over.whole == 1.0 and not over.unlike
    for here, there in zip(one.words, two.words, strict=True):
        lies = over.carried(there.box)
        assert abs(lies.x + lies.w / 2 - here.box.x - here.box.w / 2) < 12
        assert abs(lies.y + lies.h / 2 - here.box.y - here.box.h / 2) < 12


@settings(deadline=None, max_examples=40)
@given(st.sets(st.integers(0, 18), max_size=9))
def test_one_side_is_known_again_whatever_light_hides(hidden: set[int]) -> None:
    """Up to half of the words gone from one photo."""
    full, part = shot(TAG, "one"), shot(TAG, "two", LEANING)
    part = replace(part, words=tuple(word for n, word in enumerate(part.words) if n not in hidden))
    assert belong_together(full, part).same and belong_together(part, full).same


def test_another_tag_in_the_same_layout_is_not_the_same_side() -> None:
    assert not belong_together(shot(TAG, "one"), shot(OTHER, "two", LEANING)).same
    sister = TAG.replace("Wexcombe", "Tarnlight")
    assert not belong_together(shot(TAG, "one"), shot(sister, "two")).same


def test_a_front_whose_names_stand_on_the_back_as_well_is_not_the_same_side() -> None:
    front = shot("\n".join(TAG.splitlines()[:2]), "one")
    assert not belong_together(front, shot(TAG, "two")).same
    short = shot("\n".join(TAG.splitlines()[:4]), "two")  # the names are more than a third of it
    assert belong_together(front, short).ok


def test_a_value_hidden_in_one_photo_is_taken_from_the_other() -> None:
    one = shot(TAG.replace("USDA Zones 3-8", "____"), "one")
    two = shot(TAG.replace("Height: 24-36 in", "_____"), "two", LEANING)
    record = make_record([one, two])
    (zones,), (height,) = record.readings["hardiness"], record.readings["height"]
    assert (zones.printed, record.photos[zones.photo].file) == ("USDA Zones 3-8", "two.jpg")
    assert (height.printed, record.photos[height.photo].file) == ("24-36 in", "one.jpg")
    assert zones.box == Box.around(w.box for w in two.words if w.text in {"USDA", "Zones", "3-8"})


def test_what_two_photos_say_is_surer() -> None:
    one, two = shot(TAG, "one", sure=0.7), shot(TAG, "two", LEANING, sure=0.7)
    alone, both = (make_record(shots).readings["height"][0] for shots in ([one], [one, two]))
    assert alone.value == both.value and alone.confidence < both.confidence


def test_a_name_misread_in_one_photo_is_no_second_name() -> None:
    """Without places "Meaolew Sege" would be one name more."""
    good = shot(TAG, "one")
    bad = shot(TAG.replace("Meadow Sage", "Meaolew Sege"), "two", LEANING, sure=0.6)
    for shots in ([good, bad], [bad, good]):
        names = [reading.value for reading in make_record(shots).readings["common_names"]]
        assert names == [reading.value for reading in make_record(good).readings["common_names"]]


def test_two_halves_of_a_long_tag() -> None:
    lines = TAG.splitlines()
    upper, lower = shot("\n".join(lines[:5]), "upper"), shot("\n".join(lines[3:]), "lower")
    lower = replace(lower, words=tuple(replace(w, box=moved_up(w.box)) for w in lower.words))
    side = one_side([upper, lower])
    assert side.lines == tuple(lines)
    assert {"common_names", "height", "hardiness"} <= set(side.readings)


def moved_up(box: Box) -> Box:
    return Box(box.x + 30, box.y - 20, box.w, box.h)


def test_json_says_in_which_photo_a_value_stands() -> None:
    record = make_record([shot(TAG.replace("Zones 3-8", "____"), "one"), shot(TAG, "two", LEANING)])
    shown = to_json(record)
    assert shown["fields"]["hardiness"]["photo"] == 1
    assert to_json(from_json(shown)) == shown


@pytest.mark.parametrize("side", ["front", "back"])
def test_json_that_does_not_say_which_photo_means_the_first_of_the_side(side: str) -> None:
    shown = to_json(make_record(shot(TAG, "one"), shot(TAG, "two")))
    entry = shown["fields"]["hardiness"]
    del entry["photo"]
    entry["side"] = side
    assert from_json(shown).readings["hardiness"][0].photo == ["front", "back"].index(side)


def test_print_that_one_photo_runs_together_does_not_replace_what_both_readers_saw() -> None:
    """One reader of the second photo reads on into the next column."""
    one, two = shot(TAG, "one"), shot(TAG, "two", LEANING)
    (claim,) = two.claims["bloom"]
    longer = replace(claim.value, text=f"{claim.value.text} izer every")
    astray = replace(claim, value=longer, printed=f"{claim.printed} izer every", votes=(("rapidocr", 0.9),))
    two = replace(two, claims={**two.claims, "bloom": (astray,)})
    (bloom,) = make_record([one, two]).readings["bloom"]
    assert (bloom.value.text, bloom.photo) == (claim.value.text, 0)
