"""Rows of month cells drawn here; that bloom time is shown so is common practice, no source."""

from __future__ import annotations

from typing import Any

import cv2
import numpy as np
import pytest

from ocr_tags.pictures.month_bars import LETTERS, month_words
from ocr_tags.record import Box, Word

Picture = np.ndarray[Any, Any]
Colour = tuple[int, int, int]
PAPER, INK, PINK, GREY = (240, 246, 248), (50, 40, 30), (150, 90, 220), (205, 208, 206)


def bar(filled: set[int], style: str = "cells", empty: Colour = PAPER, full: Colour = PINK) -> Picture:
    """Letters in cells, or a band under (over) the letters of the months in `filled`, 0 to 11."""
    picture = np.full((240, 700, 3), PAPER, np.uint8)
    shift = {"cells": 0, "under": 40, "over": -40}[style]
    for month in range(12):
        left, colour = 40 + 50 * month, full if month in filled else empty
        cv2.rectangle(picture, (left, 100 + shift), (left + 50, 140 + shift), colour, -1)
        if style == "cells":
            cv2.rectangle(picture, (left, 100), (left + 50, 140), INK, 1)
        cv2.putText(
            picture, LETTERS[month], (left + 15, 131), cv2.FONT_HERSHEY_SIMPLEX, 0.8, INK, 2, cv2.LINE_AA
        )
    grain = np.random.default_rng(1).normal(0, 4, picture.shape)
    return np.clip(picture + grain, 0, 255).astype(np.uint8)


def letters(text: str = LETTERS) -> list[Word]:
    """The letters as a reader finds them, each a word of its own."""
    places = [Box(40 + 50 * at + 15, 110, 20, 22) for at in range(len(text))]
    return [Word(letter, place, place, 0.9, "any") for letter, place in zip(text, places, strict=True)]


def said(picture: Picture, words: list[Word]) -> list[str]:
    return [word.text for word in month_words(picture, [words])]


@pytest.mark.parametrize("style", ["cells", "under", "over"])
@pytest.mark.parametrize(
    ("filled", "months"),
    [({5, 6, 7}, "VI–VIII"), ({3}, "IV"), ({10, 11, 0, 1}, "XI–II"), (set(range(2, 10)), "III–X")],
)
def test_the_filled_cells_are_the_months(style: str, filled: set[int], months: str) -> None:
    assert said(bar(filled, style), letters()) == [months]


def test_empty_cells_may_have_a_colour_of_their_own() -> None:
    assert said(bar({4, 5}, empty=GREY), letters()) == ["V–VI"]


def test_one_word_and_a_letter_misread() -> None:
    place = Box(55, 110, 570, 22)
    assert said(bar({4, 5}), [Word("JFMAMJJAS0ND", place, place, 0.9, "any")]) == ["V–VI"]
    assert said(bar({4, 5}), letters("JFMAMJJASQND")) == ["V–VI"]


def test_every_letter_may_be_a_line_of_its_own_or_given_twice() -> None:
    picture, apart = bar({4, 5}), [[word] for word in letters()]
    assert [word.text for word in month_words(picture, apart)] == ["V–VI"]
    assert [word.text for word in month_words(picture, [*apart[:7], letters()])] == ["V–VI"]


def test_no_cell_filled_all_filled_or_two_runs_say_nothing() -> None:
    for filled in (set[int](), set(range(12)), {1, 2, 8, 9}):
        assert said(bar(filled), letters()) == []


def test_other_letters_are_no_months() -> None:
    assert said(bar({4, 5}), letters("JASMINEFLOWR")) == []
    assert said(bar({4, 5}), letters("JFMAMJ")) == []
