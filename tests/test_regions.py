"""Where text lines are found, and that a cut-out line leads back to the exact place it came from."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from PIL import Image, ImageDraw, ImageFont

from ocr_tags.pictures.crops import cut_line
from ocr_tags.pictures.geometry import Floats, Pixels, through
from ocr_tags.pictures.regions import LineRegion, find_lines

PAPER, INK = (245, 245, 240), (25, 25, 30)


def drawn(
    texts: list[tuple[str, int, tuple[int, int]]],
    paper: tuple[int, int, int] = PAPER,
    ink: tuple[int, int, int] = INK,
) -> tuple[Pixels, list[tuple[int, int, int, int]]]:
    """A 900 x 1200 picture (colours given as red, green, blue) and the ink box of every text."""
    picture = Image.new("RGB", (900, 1200), paper)
    pen = ImageDraw.Draw(picture)
    boxes = []
    for text, size, place in texts:
        font = ImageFont.load_default(size)
        pen.text(place, text, font=font, fill=ink)
        alone = Image.new("L", picture.size)
        ImageDraw.Draw(alone).text(place, text, font=font, fill=255)
        boxes.append(alone.point(lambda level: 255 * (level > 100)).getbbox())
    return np.asarray(cv2.cvtColor(np.asarray(picture), cv2.COLOR_RGB2BGR), np.uint8), boxes  # type: ignore[return-value]


def covered(box: tuple[int, int, int, int], region: LineRegion) -> float:
    """Share of a box that a region's own level frame covers."""
    corners = np.array(region.quad)
    low, high = corners.min(axis=0), corners.max(axis=0)
    sides = np.minimum(high, box[2:]) - np.maximum(low, box[:2])
    return float(np.prod(np.maximum(sides, 0)) / ((box[2] - box[0]) * (box[3] - box[1])))


def finder(box: tuple[int, int, int, int], lines: list[LineRegion]) -> LineRegion | None:
    """The line that covers a box and is not much larger than it."""
    for line in lines:
        if covered(box, line) > 0.9 and line.letter_height < 1.6 * (box[3] - box[1]):
            return line
    return None


SIZES = [
    ("Echinacea", 150, (40, 30)),
    ("Purple Coneflower", 70, (40, 260)),
    ("Full sun to part shade", 36, (40, 400)),
    ("Water weekly until established", 22, (40, 520)),
    ("Grown for you by a careful nursery", 14, (40, 600)),
]


@pytest.mark.parametrize(
    ("paper", "ink"),
    [
        (PAPER, INK),
        ((30, 70, 40), (240, 240, 230)),
        ((120, 30, 90), (250, 220, 60)),
        ((250, 230, 120), (200, 60, 20)),
    ],
    ids=["dark on light", "light on green", "yellow on purple", "red on yellow"],
)
def test_lines_of_every_size_are_found_in_both_polarities(
    paper: tuple[int, int, int], ink: tuple[int, int, int]
) -> None:
    picture, boxes = drawn(SIZES, paper, ink)
    lines = find_lines(picture)
    for (text, _, _), box in zip(SIZES, boxes, strict=True):
        line = finder(box, lines)
        assert line is not None, text
        crop = cut_line(picture, line).pixels
        assert np.percentile(crop, 2) < 90 and np.percentile(crop, 60) > 220, text


def test_text_as_light_as_its_ground_is_found_by_its_colour() -> None:
    ground = np.full((1, 1, 3), (140, 90, 150), np.uint8)
    letters = np.full((1, 1, 3), (140, 175, 150), np.uint8)
    paper, ink = (
        tuple(int(v) for v in cv2.cvtColor(lab, cv2.COLOR_LAB2RGB)[0, 0]) for lab in (ground, letters)
    )
    picture, boxes = drawn([("Partial shade", 60, (60, 300))], paper, ink)  # type: ignore[arg-type]
    lightness = cv2.extractChannel(cv2.cvtColor(picture, cv2.COLOR_BGR2LAB), 0)
    assert np.percentile(lightness, 99) - np.percentile(lightness, 1) < 8
    line = finder(boxes[0], find_lines(picture))
    assert line is not None
    crop = cut_line(picture, line).pixels
    assert np.percentile(crop, 2) < 90
    assert np.percentile(crop, 90) > 220


@pytest.mark.parametrize(("paper", "ink"), [(PAPER, INK), (INK, PAPER)], ids=["dark print", "light print"])
@pytest.mark.parametrize("bright_end", [0.2, 5.0], ids=["ends in shadow", "ends in glare"])
def test_a_crop_is_black_on_white_from_end_to_end_in_uneven_light(
    paper: tuple[int, int, int], ink: tuple[int, int, int], bright_end: float
) -> None:
    picture, boxes = drawn([("Spacing between plants: twelve inches", 45, (20, 300))], paper, ink)
    line = finder(boxes[0], find_lines(picture))
    assert line is not None
    light = np.linspace(1, bright_end, picture.shape[1]).reshape(1, -1, 1)
    lit = np.clip(picture / light.max() * light * 0.8 + 30, 0, 255).astype(np.uint8)
    crop = cut_line(lit, line).pixels
    for end in np.array_split(crop[8:-8, 12:-12], 6, axis=1):
        assert np.percentile(end, 5) < 90
        assert np.percentile(end, 70) > 190


def test_what_reaches_into_a_crop_from_other_lines_is_left_out() -> None:
    picture, boxes = drawn([("Moist soil", 60, (60, 300))])
    line = finder(boxes[0], find_lines(picture))
    assert line is not None
    top = int(line.quad[0][1])
    inked = (cut_line(picture, line).pixels < 128).sum()
    cv2.rectangle(picture, (200, top - 20), (260, top + 6), INK, -1)  # the foot of a letter above
    assert (cut_line(picture, line).pixels < 128).sum() == pytest.approx(inked, rel=0.02)


def test_a_wide_gap_parts_columns_but_wide_spacing_does_not_part_a_title() -> None:
    picture, boxes = drawn(
        [("Height", 40, (40, 300)), ("24-36 in.", 40, (500, 300)), ("L A V E N D E R", 60, (40, 600))]
    )
    lines = find_lines(picture)
    assert finder(boxes[0], lines) is not finder(boxes[1], lines)
    assert finder(boxes[2], lines) is not None


@pytest.mark.parametrize("degrees", [-12, 6, 12])
def test_a_slanted_line_gets_a_slanted_region(degrees: float) -> None:
    picture, _ = drawn([("Attracts butterflies", 50, (150, 500))])
    turn = cv2.getRotationMatrix2D((450, 600), -degrees, 1)
    picture = np.asarray(cv2.warpAffine(picture, turn, (900, 1200), borderValue=PAPER[::-1]), np.uint8)
    longest = max(find_lines(picture), key=lambda line: line.length * line.score)
    assert longest.angle == pytest.approx(degrees, abs=1.5)


def test_a_line_up_the_side_is_given_both_ways() -> None:
    picture, _ = drawn([("Keep this tag for reference", 50, (60, 400))])
    upright = np.ascontiguousarray(np.rot90(picture))
    ways = {round(line.angle / 90) * 90 for line in find_lines(upright) if line.length > 300}
    assert {90, -90} <= ways


def test_plain_and_grainy_pictures_hold_few_lines() -> None:
    plain = np.full((1200, 900, 3), 200, np.uint8)
    grain = np.random.default_rng(5).normal(120, 25, (1200, 900, 3)).clip(0, 255).astype(np.uint8)
    assert find_lines(plain) == []
    assert len(find_lines(np.asarray(cv2.GaussianBlur(grain, (0, 0), 2), np.uint8))) <= 100


@pytest.mark.parametrize("size", [16, 40, 140])
@pytest.mark.parametrize("degrees", [0, 8])
def test_a_crop_has_the_wanted_letter_height_and_leads_back(size: int, degrees: float) -> None:
    picture, boxes = drawn([("HIBISCUS", size, (100, 500))])
    turn = np.vstack([cv2.getRotationMatrix2D((450, 600), -degrees, 1), (0, 0, 1)])
    picture = np.asarray(cv2.warpPerspective(picture, turn, (900, 1200), borderValue=PAPER[::-1]), np.uint8)
    line = max(find_lines(picture), key=lambda found: found.score)
    crop = cut_line(picture, line)
    dark = crop.pixels < 110
    rows, columns = np.flatnonzero(dark.any(axis=1)), np.flatnonzero(dark.any(axis=0))
    assert 28 <= rows[-1] - rows[0] <= 40, "capitals of 48 x 0.7 pixels, within a fifth"
    assert np.all(crop.pixels[[0, -1]] == 255)
    left, top, right, bottom = boxes[0]
    printed = through(
        np.asarray(turn), np.array([(left, top), (right, top), (right, bottom), (left, bottom)], float)
    )
    edges = [(columns[0], rows[0]), (columns[-1], rows[0]), (columns[-1], rows[-1]), (columns[0], rows[-1])]
    back = through(crop.to_picture, np.array(edges, float))
    assert np.abs(back - printed).max() < max(2.5, 0.08 * size)


def test_the_way_back_from_a_crop_is_exact_at_its_corners() -> None:
    picture, _ = drawn([("Zones 4-8", 60, (100, 500))])
    line = find_lines(picture)[0]
    crop = cut_line(picture, line)
    height, width = crop.pixels.shape
    margin = 48 // 6
    inner: Floats = np.array(
        [
            (margin, margin),
            (width - margin, margin),
            (width - margin, height - margin),
            (margin, height - margin),
        ],
        np.float64,
    )
    assert np.abs(through(crop.to_picture, inner) - np.array(line.quad)).max() < 0.01
