"""Symbols of the Unicode standard as Noto Sans Symbols and DejaVu Sans draw them (`build_mark_glyphs.py`).

None of these fonts was used to fit the network that tells marks.
"""

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import cv2
import numpy as np

from ocr_tags.pictures.marks import find_marks

Picture = np.ndarray[Any, Any]
DATA, CELL, ACROSS = Path(__file__).parent / "data", 112, 12
SIZES, TILTS = (40, 64, 96), (0, 4)
"""Longer side in pixels, and degrees anticlockwise."""
FLOORS = {"sun": 0.8, "half_sun": 0.9, "drop": 0.8, "snow": 0.8, "tall": 0.85, "wide": 0.85, "flower": 0.6}
"""Least share found of each kind; what is left must not be taken for another kind."""


def glyphs() -> list[tuple[str, Picture]]:
    sheet = cv2.imread(str(DATA / "mark_glyphs.png"), cv2.IMREAD_GRAYSCALE)
    assert sheet is not None
    rows = (DATA / "mark_glyphs.tsv").read_text("utf-8").splitlines()[1:]
    corners = [(at // ACROSS * CELL, at % ACROSS * CELL) for at in range(len(rows))]
    return [
        (row.split("\t")[0], sheet[y : y + CELL, x : x + CELL])
        for row, (y, x) in zip(rows, corners, strict=True)
    ]


def printed(cell: Picture, size: int, tilt: int, light: bool) -> Picture:
    """The glyph on a tag: dark on light or light on dark, tilted, soft as in a photograph, with grain."""
    turn = cv2.getRotationMatrix2D((CELL / 2, CELL / 2), tilt, size / 96)
    turn[:, 2] += 120 - CELL / 2
    soft = cv2.GaussianBlur(cell, (0, 0), max(0.4 * 96 / size, 0.4))
    cover = cv2.warpAffine(soft, turn, (240, 240)).astype(np.float32)[..., None] / 255
    ink, paper = np.array([(45, 60, 40), (235, 242, 240)][:: -1 if light else 1], np.float32)
    grain = np.random.default_rng(size + tilt).normal(0, 3, (240, 240, 3))
    return np.clip(paper + (ink - paper) * cover + grain, 0, 255).astype(np.uint8)


@cache
def said() -> Counter[tuple[str, str]]:
    """How often a symbol of one kind (or none) was taken for a mark of a kind (or for none)."""
    counted: Counter[tuple[str, str]] = Counter()
    for at, (kind, cell) in enumerate(glyphs()):
        for size in SIZES:
            for tilt in TILTS:
                found = find_marks(printed(cell, size, tilt, light=bool(at % 2)))
                counted[kind, "+".join(mark.kind for mark in found) or "none"] += 1
    return counted


def test_most_symbols_are_found() -> None:
    for kind, floor in FLOORS.items():
        drawn = sum(count for (own, _), count in said().items() if own == kind)
        assert said()[kind, kind] >= floor * drawn, kind


def test_hardly_one_is_taken_for_another() -> None:
    wrong = {pair: n for pair, n in said().items() if pair[1] not in ("none", pair[0]) and pair[0] != "none"}
    assert sum(wrong.values()) <= 0.02 * sum(said().values()), wrong


def test_other_symbols_are_hardly_ever_marks() -> None:
    drawn = sum(count for (own, _), count in said().items() if own == "none")
    wrong = {pair: n for pair, n in said().items() if pair[0] == "none" and pair[1] != "none"}
    assert drawn > 500
    # Only a flower now and then, which says nothing where no months stand behind it.
    assert {said for _, said in wrong} <= {"flower"}, wrong
    assert sum(wrong.values()) <= 0.03 * drawn, wrong
