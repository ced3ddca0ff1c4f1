"""The outline goes as far as the tag does: over panels, two colours, and the tip of a stake."""

import cv2
import numpy as np
import pytest

from ocr_tags.pictures.cleaning import straighten
from ocr_tags.pictures.geometry import Floats, Pixels, inside_share, reduced
from ocr_tags.pictures.glyphs import NO_DIRECTION
from ocr_tags.pictures.outline import best_outline, find_outlines
from ocr_tags.pictures.shapes import off_border

GREEN, PAPER, CREAM, TEAL = (96, 120, 104), (236, 240, 242), (226, 238, 240), (84, 74, 34)
ORANGE = (30, 140, 245)


def ground(colour: tuple[int, int, int], seed: int) -> Pixels:
    """A plain ground, 1200 x 1600, with the grain of a photo."""
    noise = np.random.default_rng(seed).normal(0, 3, (1200, 1600, 1))
    return np.asarray(np.clip(np.array(colour, np.float64) + noise, 0, 255), np.uint8)


def box(picture: Pixels, left: int, top: int, right: int, bottom: int, colour: tuple[int, int, int]) -> None:
    cv2.rectangle(picture, (left, top), (right, bottom), colour, -1)


def found(picture: Pixels) -> Floats:
    best = best_outline(find_outlines(picture, NO_DIRECTION))
    assert best is not None
    return best.corners


@pytest.mark.parametrize("right", [1400, 1570])
def test_a_tag_in_two_colours_is_one_tag_wherever_it_ends(right: int) -> None:
    """Also where it nearly reaches the edge of the photo, whose colours are else the background's."""
    picture = ground(GREEN, 1)
    box(picture, 60, 300, 660, 900, TEAL)
    box(picture, 660, 300, right, 900, CREAM)
    inside = np.array([(100.0, 350.0), (700.0, 600.0), (right - 60.0, 850.0)])
    assert inside_share(found(picture), inside) == 1


def test_a_band_that_comes_near_two_edges_of_the_photo_is_not_the_ground() -> None:
    """As on a tag that nearly fills the photo."""
    picture = ground(GREEN, 3)
    box(picture, 34, 34, 1530, 330, ORANGE)
    box(picture, 34, 330, 1530, 1140, CREAM)
    small, _ = reduced(picture, 0.4)
    lab = np.asarray(cv2.cvtColor(small, cv2.COLOR_BGR2LAB), np.uint8)
    away, usual = off_border(lab, 5)  # on a copy half as large
    assert away[30, 160] > 40 > usual  # in the band
    assert away[:2].max() < usual + 10  # above it


def stake() -> Pixels:
    """A stake on paper: a picture, a dark field with a panel in the paper's colour, and a tip."""
    picture = ground(PAPER, 2)
    outer = [
        (600, 60),
        (1000, 60),
        (1000, 860),
        (870, 920),
        (870, 1080),
        (800, 1140),
        (730, 1080),
        (730, 920),
    ]
    cv2.fillPoly(picture, [np.array([*outer, (600, 860)], np.int32)], TEAL)
    box(picture, 600, 60, 1000, 440, (150, 190, 120))
    box(picture, 630, 620, 970, 840, PAPER)
    return picture


def test_a_panel_in_the_colour_of_the_ground_and_the_tip_belong_to_the_stake() -> None:
    inside = np.array([(640.0, 640.0), (960.0, 830.0), (610.0, 80.0), (740.0, 930.0), (800.0, 1100.0)])
    assert inside_share(found(stake()), inside) == 1


def titled(word: str, share: float) -> tuple[Pixels, Floats]:
    """A white panel with small print on a ground in the colour of the tag's band above it, with the title, of
    `share` of its usual size; and the middles of the title's letters."""
    picture = ground(GREEN, 4)
    box(picture, 200, 500, 1400, 1000, PAPER)
    for line in range(5):
        cv2.putText(picture, "Acca sellowiana hardy", (260, 580 + 90 * line), 0, 1.6, TEAL, 4, cv2.LINE_AA)
    at = [(520 + 90 * share * k, 485 - 85 * share) for k in range(len(word))]
    for letter, (x, y) in zip(word, at, strict=True):
        low = int(x), int(y + 42 * share)
        cv2.putText(picture, letter, low, 0, 3.6 * share, PAPER, int(14 * share))
    return picture, np.array(at)


@pytest.mark.parametrize(
    ("word", "share", "held"), [("FEHOA", 1.0, 1.0), ("F H", 1.0, 0.0), ("FEHOA", 0.42, 0.0)]
)
def test_a_title_on_a_band_in_the_colour_of_the_ground_is_the_tags(
    word: str, share: float, held: float
) -> None:
    """A row of large letters right above the panel; two blobs may be anything, and letters no larger than the
    panel's another tag's."""
    picture, letters = titled(word, share)
    cut = straighten(picture)
    assert inside_share(np.array(cut.outline), letters) == held
