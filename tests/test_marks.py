"""Marks drawn here in several styles, none of them by the program that draws the sample tags."""

from __future__ import annotations

from typing import Any

import cv2
import numpy as np
import pytest

from ocr_tags.fields.bloom.reader import read_bloom
from ocr_tags.fields.cold import read_min_temperature
from ocr_tags.fields.light.reader import read_light
from ocr_tags.fields.sizes.reader import read_height, read_spread
from ocr_tags.pictures.marks import Mark, find_marks, mark_words, unread
from ocr_tags.record import Box, TagText, Word
from ocr_tags.values import Length

INK, PAPER = (40, 60, 30), (236, 244, 246)
Picture = np.ndarray[Any, Any]


def paper() -> Picture:
    return np.full((400, 600, 3), PAPER, np.uint8)


def at_angle(degrees: float, away: float) -> tuple[int, int]:
    turn = np.radians(degrees)
    return round(300 + away * np.cos(turn)), round(200 + away * np.sin(turn))


def sun(rays: int = 8, filled: bool = True, half: bool = False) -> Picture:
    picture = paper()
    cv2.circle(picture, (300, 200), 24, INK, -1 if filled else 4, cv2.LINE_AA)
    if half:
        cv2.ellipse(picture, (300, 200), (24, 24), 90, 0, 180, INK, -1, cv2.LINE_AA)
    for ray in range(rays):
        degrees = 360 * ray / rays
        cv2.line(picture, at_angle(degrees, 33), at_angle(degrees, 46), INK, 5, cv2.LINE_AA)
    return picture


def arrow() -> Picture:
    picture = paper()
    for one, two in (((300, 150), (300, 250)), ((300, 250), (300, 150))):
        cv2.arrowedLine(picture, one, two, INK, 6, cv2.LINE_AA, tipLength=0.22)
    return picture


def drop() -> Picture:
    picture = paper()
    cv2.fillPoly(picture, [np.array([(300, 150), (272, 210), (328, 210)])], INK, cv2.LINE_AA)
    cv2.circle(picture, (300, 218), 30, INK, -1, cv2.LINE_AA)
    return picture


def snow() -> Picture:
    picture = paper()
    for arm in range(6):
        cv2.line(picture, (300, 200), at_angle(60 * arm + 30, 40), INK, 5, cv2.LINE_AA)
    return picture


def kinds(picture: Picture) -> list[str]:
    return [mark.kind for mark in find_marks(picture)]


@pytest.mark.parametrize(("rays", "filled"), [(8, True), (8, False), (10, True), (12, True), (12, False)])
def test_suns_full_and_outlined(rays: int, filled: bool) -> None:
    [mark] = find_marks(sun(rays, filled))
    assert mark.kind == "sun"
    # The mark holds its rays: 46 pixels from the middle, half a stroke and the softened edge.
    assert 84 <= mark.box.w <= 112


def test_a_sun_that_may_be_a_daisy_says_nothing_of_light() -> None:
    assert kinds(sun(10, filled=False)) in ([], ["flower"])


def sprout(picture: Picture, x: int, foot: int) -> None:
    cv2.line(picture, (x, foot), (x, foot - 70), INK, 6, cv2.LINE_AA)
    for side in (-1, 1):
        cv2.ellipse(picture, (x + 14 * side, foot - 74), (17, 8), -35 * side, 0, 360, INK, -1, cv2.LINE_AA)


def test_two_plants_and_the_room_between_them() -> None:
    picture = paper()
    for x in (250, 350):
        sprout(picture, x, 220)
    for one, two in (((262, 236), (338, 236)), ((338, 236), (262, 236))):
        cv2.arrowedLine(picture, one, two, INK, 6, cv2.LINE_AA, tipLength=0.2)
    assert kinds(picture) == ["apart"]


@pytest.mark.parametrize("upright", (True, False))
def test_an_arrow_between_two_bars(upright: bool) -> None:
    picture = paper()
    for y in (130, 270):
        cv2.line(picture, (265, y), (335, y), INK, 7, cv2.LINE_AA)
    for one, two in (((300, 140), (300, 260)), ((300, 260), (300, 140))):
        cv2.arrowedLine(picture, one, two, INK, 7, cv2.LINE_AA, tipLength=0.2)
    turned = picture if upright else np.ascontiguousarray(picture.swapaxes(0, 1))
    assert kinds(turned) == ["tall" if upright else "wide"]


def test_a_sun_half_dark() -> None:
    assert kinds(sun(8, filled=False, half=True)) == ["half_sun"]


@pytest.mark.parametrize(("picture", "kind"), [(arrow(), "tall"), (drop(), "drop"), (snow(), "snow")])
def test_other_marks(picture: Picture, kind: str) -> None:
    assert kinds(picture) == [kind]


def test_a_large_drop_filled_with_a_paler_ink() -> None:
    whole = cv2.resize(drop(), None, fx=2, fy=2, interpolation=cv2.INTER_AREA)
    dark = (whole.astype(np.int16).sum(axis=2) < 3 * 128).astype(np.uint8)
    whole[cv2.erode(dark, np.ones((21, 21), np.uint8)) > 0] = (165, 155, 150)
    assert kinds(np.asarray(whole, np.uint8)) == ["drop"]


def test_an_arrow_on_its_side() -> None:
    assert kinds(np.ascontiguousarray(arrow().swapaxes(0, 1))) == ["wide"]


def test_an_arrow_between_two_plants_is_no_width() -> None:
    picture = np.ascontiguousarray(arrow().swapaxes(0, 1))
    wide = find_marks(picture)[0].box
    for x in (wide.x + 8, wide.right - 8):
        cv2.circle(picture, (x, wide.y - 12), 9, INK, -1, cv2.LINE_AA)
    assert kinds(picture) == ["apart"]


def test_a_width_in_a_badge_among_badges_is_no_room_between_plants() -> None:
    picture = paper()
    for left in (40, 230, 420):
        cv2.rectangle(picture, (left, 130), (left + 140, 270), INK, -1)
    for one, two in (((250, 200), (350, 200)), ((350, 200), (250, 200))):
        cv2.arrowedLine(picture, one, two, PAPER, 8, cv2.LINE_AA, tipLength=0.25)
    assert kinds(picture) == ["wide"]


def test_a_large_mark_may_be_as_soft_as_a_shaky_hand_makes_it() -> None:
    shaken = cv2.GaussianBlur(arrow(), (0, 0), 1.6)
    assert kinds(np.asarray(shaken, np.uint8)) == ["tall"]


def test_light_marks_on_dark() -> None:
    assert kinds(255 - sun()) == ["sun"]


@pytest.mark.parametrize("font", [cv2.FONT_HERSHEY_SIMPLEX, cv2.FONT_HERSHEY_COMPLEX, cv2.FONT_ITALIC])
def test_letters_and_figures_are_no_marks(font: int) -> None:
    picture = paper()
    for row, text in enumerate(("OQ0 IXH8*", "& @ % # 6 9", "Full SunDo", "...:;!?iljI")):
        cv2.putText(picture, text, (20, 90 + 90 * row), font, 2.4, INK, 5, cv2.LINE_AA)
    # One sign passes for a flower, which says nothing where no months stand behind it.
    assert kinds(picture) in ([], ["flower"])


def test_a_bullet_alone_is_no_mark_beside_a_half_dark_disc_it_is() -> None:
    picture = paper()
    cv2.circle(picture, (300, 200), 22, INK, -1, cv2.LINE_AA)
    assert find_marks(picture) == []
    cv2.circle(picture, (235, 200), 22, INK, 3, cv2.LINE_AA)
    cv2.ellipse(picture, (235, 200), (22, 22), 90, 0, 180, INK, -1, cv2.LINE_AA)
    assert kinds(picture) == ["half_sun", "shade"]


def test_petals_of_many_colours_are_no_marks() -> None:
    picture, lot = paper(), np.random.default_rng(3)
    for ray in range(12):
        colour = tuple(int(v) for v in lot.integers(30, 200, 3))
        cv2.ellipse(picture, at_angle(30 * ray, 30), (22, 8), 30 * ray, 0, 360, colour, -1, cv2.LINE_AA)
    assert find_marks(picture) == []


def test_a_mark_is_a_word_of_one_symbol_on_the_photo() -> None:
    marks: list[Mark] = find_marks(sun())
    [word] = mark_words(marks, np.diag([2.0, 2.0, 1.0]), (1200, 800))
    assert (word.text, word.box.x, word.box.w) == ("☀", 2 * word.place.x, 2 * word.place.w)


def test_what_is_read_as_a_word_is_no_mark() -> None:
    marks = [Mark("wide", Box(100, 50, 80, 30), 0.9)]
    over, letter, beside = Box(96, 48, 90, 34), Box(100, 50, 80, 30), Box(200, 48, 90, 34)
    assert unread(marks, [Word("18—24", over, over, 0.9, "any")]) == []
    assert (
        unread(marks, [Word("H", letter, letter, 0.9, "any"), Word("18", beside, beside, 0.9, "any")])
        == marks
    )


# What the drawn signs stand for: common practice, no source.
def test_lengths_behind_arrows() -> None:
    tag = TagText("↕ 18 in\n↔ 12 in")
    assert [(f.value, f.certainty <= 0.75) for f in read_height(tag)] == [(Length(45.72, 45.72), True)]
    assert [f.value for f in read_spread(tag)] == [Length(30.48, 30.48)]
    assert [f.value for f in read_spread(TagText("↕ Spread: 12 in"))] == [Length(30.48, 30.48)]
    assert list(read_height(TagText("↕ Spread: 12 in"))) == []


def test_suns_speak_only_where_no_word_does() -> None:
    assert [f.value for f in read_light(TagText("☀"))] == [("full_sun",)]
    assert [f.value for f in read_light(TagText("☀ ◐"))] == [("full_sun", "part_sun", "part_shade")]
    assert [f.value for f in read_light(TagText("☀ Part shade"))] == [("part_shade",)]
    assert list(read_light(TagText("☀ ◐ ●"))) == []


def test_frost_behind_a_snowflake() -> None:
    [found] = read_min_temperature(TagText("❄ -20 °C"))
    assert found.value.celsius == -20
    assert found.certainty <= 0.55
    assert list(read_min_temperature(TagText("🌡 18 °C"))) == []


def test_months_behind_a_flower() -> None:
    assert [f.value.months for f in read_bloom(TagText("✿ V–VIII"))] == [(5, 6, 7, 8)]
    assert [f.value.months for f in read_bloom(TagText("✿ June to July"))] == [(6, 7)]
    assert list(read_bloom(TagText("✿ Plant 12 in apart. IV"))) == []
