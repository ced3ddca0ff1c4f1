"""Sizes no plant has are questioned; sizes honest tags print are not."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from tags_by_hand import tag

from ocr_tags.cautions import cautions
from ocr_tags.place import Place
from ocr_tags.values import Length

sys.path.insert(0, str(Path(__file__).parent.parent / "samples"))

from plants import PLANTS

INCH = 2.54

# Plants that are small, tall or wide for their kind: height and spread in inches, all from memory.
HARD = [
    ("Thymus serpyllum", "groundcover", (1, 3), (12, 18)),
    ("Helianthus annuus", "annual", (120, 144), (24, 36)),
    ("Ipomoea purpurea", "annual", (96, 120), (12, 24)),
    ("Ipomoea batatas", "annual", (6, 12), (36, 72)),
    ("Cucurbita pepo", "vegetable", (18, 24), (120, 180)),
    ("Zea mays", "vegetable", (72, 96), (12, 18)),
    ("Acer palmatum 'Dew'", "shrub", (36, 48), (36, 48)),
    ("Juniperus horizontalis", None, (4, 6), (72, 96)),
    ("Pinus mugo 'Mini'", None, (12, 24), (24, 36)),
    ("Wisteria sinensis", "vine", (240, 360), (48, 240)),
    ("Hedera helix", "groundcover", (6, 8), (36, 120)),
    ("Crambe cordifolia", "perennial", (72, 96), (48, 60)),
    ("Gunnera manicata", "perennial", (72, 120), (96, 120)),
    ("Alcea rosea", "biennial", (60, 96), (12, 18)),
    ("Laurus nobilis", "herb", (96, 120), (48, 72)),
    ("Mentha requienii", "herb", (0.5, 1), (6, 12)),
    ("Sagina subulata", "perennial", (1, 1), (12, 12)),
    ("Crocus vernus", "bulb", (4, 6), (2, 3)),
    ("Canna indica", "bulb", (60, 96), (18, 24)),
    ("Phyllostachys nigra", "grass", (240, 360), (120, 180)),
    ("Dicksonia antarctica", "fern", (120, 180), (72, 96)),
    ("Sequoiadendron giganteum", "tree", (720, 2400), (240, 300)),
    ("Lithops lesliei", "succulent", (1, 1), (2, 3)),
    ("Carnegiea gigantea", "succulent", (480, 600), (120, 120)),
    ("Musa basjoo", "perennial", (144, 192), (96, 120)),
    ("Ricinus communis", "annual", (96, 144), (36, 60)),
    ("Cortaderia selloana", "grass", (72, 144), (60, 84)),
    ("Solanum lycopersicum", "vegetable", (72, 120), (24, 36)),
    ("Lagerstroemia indica 'Tiny'", None, (18, 24), (24, 36)),
]
Inches = tuple[float, float]


def questioned(
    name: str, kind: str | None, height: Inches, spread: Inches | None = None, unit: float = 1
) -> set[str]:
    """Fields of which a size is questioned; `unit` makes all lengths so many times longer."""
    lengths = {"height": height} | ({"spread": spread} if spread else {})
    sizes = {field: Length(low * INCH * unit, high * INCH * unit) for field, (low, high) in lengths.items()}
    record = tag(None, name, **sizes, **({"categories": kind} if kind else {}))
    return {caution.field for caution in cautions(record, Place()) if caution.code.endswith("-improbable")}


@pytest.mark.parametrize(("name", "kind", "height", "spread"), HARD, ids=lambda value: str(value))
def test_honest_sizes_pass(name: str, kind: str | None, height: Inches, spread: Inches) -> None:
    assert questioned(name, kind, height, spread) == set()


def test_the_sizes_the_samples_are_drawn_from_pass_with_and_without_their_kind() -> None:
    for plant in PLANTS.values():
        for kind in (plant.kind, None):
            assert questioned(plant.printed, kind, plant.height, plant.spread) == set(), plant.printed


def test_inches_read_as_feet_are_mostly_seen_on_soft_plants() -> None:
    soft = [
        plant
        for plant in PLANTS.values()
        if plant.kind in {"annual", "perennial", "bulb", "vegetable", "fern"}
    ]
    tall = [plant for plant in soft if plant.height[0] >= 12]
    seen = [plant for plant in tall if questioned(plant.printed, plant.kind, plant.height, unit=12)]
    assert len(tall) > 20 and len(seen) >= 0.8 * len(tall), (len(seen), len(tall))


def test_feet_read_as_inches_are_seen_on_trees() -> None:
    trees = [plant for plant in PLANTS.values() if plant.kind == "tree" and plant.height[1] <= 400]
    assert trees and all(questioned(plant.printed, "tree", plant.height, unit=1 / 12) for plant in trees)
