"""Leader dots go, print stays: on pictures drawn here."""

import cv2
import numpy as np
import pytest

from ocr_tags.pictures.geometry import Pixels
from ocr_tags.pictures.leaders import without_leaders


def sheet(ground: tuple[int, int, int] = (250, 250, 250)) -> Pixels:
    return np.full((600, 2000, 3), ground, np.uint8)


@pytest.mark.parametrize("step", (14, 20, 28))
@pytest.mark.parametrize("radius", (3, 5))
def test_a_row_of_points_is_painted_over(step: int, radius: int) -> None:
    picture = sheet()
    for x in range(500, 1200, step):
        cv2.circle(picture, (x, 300), radius, (40, 40, 40), -1, cv2.LINE_AA)
    assert int(without_leaders(picture)[280:320].min()) > 200


@pytest.mark.parametrize("size", (0.55, 0.7, 0.9))
@pytest.mark.parametrize(
    ("ground", "ink"), (((250, 250, 250), (30, 30, 30)), ((30, 100, 90), (245, 245, 245)))
)
def test_small_print_is_no_row_of_points(
    size: float, ground: tuple[int, int, int], ink: tuple[int, int, int]
) -> None:
    picture = sheet(ground)
    lines = (
        "Zonas de rusticidad / Winter hardy",
        "Distancia / Spacing 10-16 in.",
        "illi. mix in winter, min. 15 ml",
    )
    for number, line in enumerate(lines):
        place = (80, 120 + 150 * number)
        cv2.putText(picture, line, place, cv2.FONT_HERSHEY_SIMPLEX, size, ink, 1, cv2.LINE_AA)
    assert np.array_equal(without_leaders(picture), picture)


def test_points_at_uneven_steps_are_not_leaders() -> None:
    picture = sheet()
    for x in (500, 512, 545, 561, 590, 600, 640, 655):
        cv2.circle(picture, (x, 300), 4, (40, 40, 40), -1, cv2.LINE_AA)
    assert np.array_equal(without_leaders(picture), picture)
