"""Cleaning is judged by what is left: the tag's corners against where they were drawn, the angle of its
lines, and the way back to the photo."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from PIL import Image, ImageDraw, ImageFont

from ocr_tags.pictures.cleaning import (
    Straightened,
    even_light,
    narrowed,
    straighten,
    text_angle,
    turned,
    widened,
)
from ocr_tags.pictures.geometry import Floats, Pixels, through

LINES = [
    ("Purple Coneflower", 66),
    ("Echinacea purpurea", 44),
    ("Full sun to part shade", 34),
    ("Height 24-36 in.", 34),
    ("Hardy to zone 4, sheltered spots", 30),
    ("Plant 18 inches apart in well drained soil", 26),
    ("Keep watered through the first dry summer", 26),
]
WIDE, TALL = 800, 1000
WIDTH, HEIGHT = 1800, 1500


def tag(paper: str = "ivory", ink: str = "black") -> Pixels:
    picture = Image.new("RGB", (WIDE, TALL), paper)
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, TALL - 180, WIDE, TALL), fill="darkgreen")
    y = 60
    for text, size in LINES:
        pen.text((50, y), text, font=ImageFont.load_default(size), fill=ink)
        y += round(size * 1.9)
    return np.asarray(cv2.cvtColor(np.asarray(picture), cv2.COLOR_RGB2BGR), np.uint8)


def ground(kind: str) -> Pixels:
    """Soil, planks or bare concrete, always the same."""
    grains = np.random.default_rng(11)
    if kind == "soil":
        rough = grains.normal((45, 60, 80), 22, (HEIGHT // 6, WIDTH // 6, 3))
    elif kind == "planks":
        rough = np.repeat(grains.normal((70, 110, 150), 8, (HEIGHT // 6, 1, 3)), WIDTH // 6, axis=1)
    else:
        rough = grains.normal((120, 122, 125), 3, (HEIGHT // 6, WIDTH // 6, 3))
    small = rough.clip(0, 255).astype(np.uint8)
    return np.asarray(cv2.resize(small, (WIDTH, HEIGHT), interpolation=cv2.INTER_CUBIC), np.uint8)


def corners_at(degrees: float, slant: float = 0.04) -> Floats:
    """Where the tag's own corners (top left first, clockwise) lie in the photo: turned, and seen aslant."""
    angle = np.radians(degrees)
    turn = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    flat = np.array([(-400, -500), (400, -500), (400, 500), (-400, 500)], np.float64)
    aslant = flat * (1 + slant * np.array([1.0, 0.4, -1.0, -0.5]))[:, None]
    return np.asarray(aslant @ turn * 0.95 + (WIDTH / 2, HEIGHT / 2))


def photo(corners: Floats, back: Pixels, front: Pixels) -> Pixels:
    frame = np.array([(0, 0), (WIDE, 0), (WIDE, TALL), (0, TALL)], np.float32)
    way = cv2.getPerspectiveTransform(frame, corners.astype(np.float32))
    there = cv2.warpPerspective(np.full((TALL, WIDE), 255, np.uint8), way, (WIDTH, HEIGHT))
    laid = cv2.warpPerspective(front, way, (WIDTH, HEIGHT))
    mixed = np.where(there[..., None] > 127, laid, back)
    return np.asarray(cv2.GaussianBlur(mixed, (0, 0), 0.8), np.uint8)


@pytest.mark.parametrize("kind", ["soil", "planks", "concrete"])
@pytest.mark.parametrize("degrees", [0, 7, -14, 90, 172])
def test_the_outline_is_where_the_tag_was_laid(kind: str, degrees: float) -> None:
    corners = corners_at(degrees)
    found = straighten(photo(corners, ground(kind), tag()))
    assert len(found.outline) == 4
    outline = np.array(found.outline)
    off = min(np.abs(np.roll(outline, k, axis=0) - corners).max() for k in range(4))
    assert off < 0.015 * np.linalg.norm(corners[0] - corners[2])


@pytest.mark.parametrize(("paper", "ink"), [("indigo", "white"), ("gold", "maroon")])
def test_a_coloured_tag_is_found_too(paper: str, ink: str) -> None:
    corners = corners_at(7)
    found = straighten(photo(corners, ground("soil"), tag(paper, ink)))
    outline = np.array(found.outline)
    assert np.abs(outline - corners).max() < 0.015 * np.linalg.norm(corners[0] - corners[2])


@pytest.mark.parametrize("degrees", [0, 5, -9, 13])
def test_lines_are_level_afterwards(degrees: float) -> None:
    corners = corners_at(degrees, slant=0.02)
    found = straighten(photo(corners, ground("planks"), tag()))
    drawn = through(np.linalg.inv(found.to_photo), corners)
    left = np.degrees(np.arctan2(*(drawn[1] - drawn[0])[::-1]))
    assert abs(left) < 1.0


@pytest.mark.parametrize("degrees", [4, -8])
def test_without_an_outline_the_whole_photo_is_levelled_by_its_text(degrees: float) -> None:
    page = np.full((HEIGHT, WIDTH, 3), 235, np.uint8)
    page[250:1250, 500:1300] = cv2.resize(tag("white"), (800, 1000))
    page[1070:1250, 500:1300] = 235
    page[page[..., 0] > 235] = 235
    turn = cv2.getRotationMatrix2D((WIDTH / 2, HEIGHT / 2), -degrees, 1.0)
    seen = np.asarray(cv2.warpAffine(page, turn, (WIDTH, HEIGHT), borderValue=(235, 235, 235)), np.uint8)
    found = straighten(seen)
    assert found.outline == ()
    assert found.sure == 0.0
    along = through(np.linalg.inv(found.to_photo), (np.array([(500.0, 600, 1), (1300, 600, 1)]) @ turn.T))
    left = np.degrees(np.arctan2(*(along[1] - along[0])[::-1]))
    assert abs(left) < 0.8
    text = through(np.linalg.inv(found.to_photo), np.array([(500, 250, 1), (1300, 1070, 1)]) @ turn.T)
    assert (text > 0).all()
    assert (text < (found.pixels.shape[1], found.pixels.shape[0])).all()


def test_a_panel_on_the_tag_is_not_taken_for_the_tag() -> None:
    front = tag("white")
    front[60:330, 40:760] = (60, 160, 60)
    corners = corners_at(3)
    found = straighten(photo(corners, ground("soil"), front))
    drawn = through(np.linalg.inv(found.to_photo), corners)
    size = (found.pixels.shape[1], found.pixels.shape[0])
    assert (drawn > -0.01 * max(size)).all()
    assert (drawn < np.add(size, 0.01 * max(size))).all()


def test_the_way_back_shows_the_same_pixels() -> None:
    seen = photo(corners_at(7), ground("concrete"), tag())
    found = straighten(seen)
    size = (found.pixels.shape[1], found.pixels.shape[0])
    again = cv2.warpPerspective(
        seen,
        found.to_photo,
        size,
        flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP,
        borderMode=cv2.BORDER_REPLICATE,
    )
    assert np.abs(again.astype(float) - found.pixels).mean() < 2.0
    shifted = np.roll(again, 4, axis=1).astype(float)
    assert np.abs(shifted - found.pixels).mean() > 4.0, "four pixels off would be seen"


@pytest.mark.parametrize("degrees", [0, 90, 180, 270])
def test_turning_keeps_the_way_back(degrees: int) -> None:
    found = straighten(photo(corners_at(7), ground("concrete"), tag()))
    over = turned(found, degrees)
    height, width = found.pixels.shape[:2]
    inside = np.array([(0, 0), (width - 1, 0), (40, 250), (300, height - 1)], np.float64)
    x, y = inside.T
    moved = {
        0: (x, y),
        90: (height - 1 - y, x),
        180: (width - 1 - x, height - 1 - y),
        270: (y, width - 1 - x),
    }
    there = np.stack(moved[degrees], axis=1)
    assert np.abs(through(over.to_photo, there) - through(found.to_photo, inside)).max() < 1e-6
    for (a, b), (c, d) in zip(inside.astype(int), there.astype(int), strict=True):
        assert (found.pixels[b, a] == over.pixels[d, c]).all()
    first = np.array(over.outline[0])
    top_left = through(over.to_photo, np.array([(0.0, 0.0)]))[0]
    assert np.linalg.norm(first - top_left) == min(
        np.linalg.norm(np.array(c) - top_left) for c in over.outline
    )


def test_the_text_angle_is_measured() -> None:
    turn = cv2.getRotationMatrix2D((WIDE / 2, TALL / 2), -3.0, 1.0)
    aslant = np.asarray(cv2.warpAffine(tag(), turn, (WIDE, TALL), borderMode=cv2.BORDER_REPLICATE), np.uint8)
    assert text_angle(aslant) == pytest.approx(3.0, abs=0.4)
    assert text_angle(np.full((500, 500, 3), 128, np.uint8)) == 0.0


def test_even_light_takes_a_shadow_out() -> None:
    paper = np.full((600, 800, 3), 220, np.uint8)
    paper[100:120] = paper[300:320] = 40
    shade = np.linspace(0.5, 1.0, 800)[None, :, None]
    evened = even_light((paper * shade).astype(np.uint8))
    row = evened[200].astype(float)
    assert row.max() - row.min() < 0.15 * row.mean()
    assert evened[110].mean() < 0.45 * row.mean()


@pytest.mark.parametrize("shape", [(5, 5, 3), (40, 900, 3), (700, 30, 3)])
def test_tiny_and_odd_pictures_pass_through(shape: tuple[int, int, int]) -> None:
    found = straighten(np.full(shape, 90, np.uint8))
    assert found.outline == ()


def test_an_outline_that_cuts_lines_off_is_widened_there() -> None:
    photo = np.full((400, 800, 3), 230, np.uint8)
    cut = Straightened(
        photo[50:350, 50:400], np.array([[1.0, 0, 50], [0, 1, 50], [0, 0, 1]]), ((50, 50),), 0.5
    )
    lines = [np.array([(40, y), (349, y), (349, y + 20), (40, y + 20)], float) for y in (40, 90, 140)]
    wide = widened(photo, cut, lines)
    corners = wide.on_photo(np.array([(0, 0), (wide.pixels.shape[1], wide.pixels.shape[0])], float))
    assert corners == pytest.approx(np.array([(50, 50), (610, 350)]), abs=2)
    assert not wide.outline


def test_one_line_cut_along_its_length_is_enough() -> None:
    photo = np.full((800, 400, 3), 230, np.uint8)
    cut = Straightened(photo[:400], np.eye(3), (), 0.5)
    lines = [np.array([(40, y), (300, y), (300, y + 20), (40, y + 20)], float) for y in (40, 120, 378)]
    assert widened(photo, cut, lines).pixels.shape[0] > cut.pixels.shape[0]


def test_lines_that_end_inside_the_outline_leave_it_as_it_is() -> None:
    photo = np.full((400, 800, 3), 230, np.uint8)
    cut = Straightened(photo[50:350, 50:400], np.eye(3), (), 0.5)
    lines = [np.array([(40, y), (330, y), (330, y + 20), (40, y + 20)], float) for y in (40, 90, 140)]
    assert widened(photo, cut, lines) is cut
    assert widened(photo, cut, []) is cut


def test_a_border_of_the_photo_itself_is_not_moved() -> None:
    photo = np.full((400, 400, 3), 230, np.uint8)
    cut = Straightened(photo, np.eye(3), (), 0.0)
    lines = [np.array([(40, y), (399, y), (399, y + 20), (40, y + 20)], float) for y in (40, 90, 140)]
    assert widened(photo, cut, lines) is cut


def aslant(x: float, y: float, length: float, degrees: float = 20.0) -> np.ndarray:
    """A line of print 20 pixels high that starts at x, y and runs downwards to the right."""
    along = np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    start, down = np.array([x, y]), 20 * np.array([-along[1], along[0]])
    return np.array([start, start + length * along, start + length * along + down, start + down])


def test_without_an_outline_the_place_of_the_lines_is_cut_out_along_them() -> None:
    photo = np.full((1500, 2000, 3), 230, np.uint8)
    cut = Straightened(photo, np.eye(3), (), 0.0)
    lines = [aslant(600 - 15 * k, 500 + 40 * k, length) for k, length in enumerate((300, 200, 260, 90))]
    near = narrowed(photo, cut, lines)
    seen = [through(np.linalg.inv(near.to_photo), line) for line in lines]
    height, width = near.pixels.shape[:2]
    for corners in seen:
        assert (corners > 0).all() and (corners < (width, height)).all()
        assert np.ptp(corners[:2, 1]) < 2, "its line is level"
    taken = np.ptp(np.concatenate(seen), axis=0)
    assert (taken > 0.5 * np.array([width, height])).any()
    assert not near.outline


def test_a_tag_with_an_outline_or_lines_all_over_the_picture_is_not_cut_again() -> None:
    photo = np.full((1500, 2000, 3), 230, np.uint8)
    lines = [aslant(600, 500 + 40 * k, 300) for k in range(4)]
    outlined = Straightened(photo, np.eye(3), ((1.0, 1.0),) * 4, 0.7)
    assert narrowed(photo, outlined, lines) is outlined
    whole = Straightened(photo, np.eye(3), (), 0.0)
    assert narrowed(photo, whole, lines[:2]) is whole
    assert narrowed(photo, whole, [aslant(50, 60 + 400 * k, 1500, 1.0) for k in range(4)]) is whole
