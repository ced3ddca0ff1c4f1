"""Perennial, annual, biennial: words for how long it lives, which the winter decides."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ocr_tags.cautions.common import caution, kinds, known_plant
from ocr_tags.cautions.hardiness import rated
from ocr_tags.facts import CATEGORIES
from ocr_tags.place import Place
from ocr_tags.record import Caution, Reading, TagRecord
from ocr_tags.usda import HALF_ZONES

FROST_FREE = HALF_ZONES.index("10a")
"""From here on a usual winter has no hard frost (30 °F and above)."""
TENDER_OUTDOORS = HALF_ZONES.index("9a")
_COOL_SEASON = frozenset(
    {
        *("Allium", "Antirrhinum", "Apium", "Asparagus", "Beta", "Brassica", "Calendula", "Centaurea"),
        *("Cichorium", "Consolida", "Cynara", "Daucus", "Dianthus", "Eruca", "Lactuca", "Lathyrus"),
        *("Lobularia", "Matthiola", "Papaver", "Pisum", "Raphanus", "Rheum", "Spinacia", "Vicia", "Viola"),
    }
)
"""Genera that stand light frost and are set out before the last one (from memory)."""


def perennial_without_zone(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when "perennial" is printed and nothing says how cold it may get."""
    found = record.best(CATEGORIES)
    if found and "perennial" in found.value and rated(record) is None:
        here = f" where you are, zone {place.zone}" if place.zone else " where you are"
        yield caution(
            "perennial-no-zone",
            CATEGORIES,
            "“Perennial” holds only where the winter suits it, and no zone or lowest temperature was read.",
            f"Look its zone up by the botanical name before you count on it next year{here}.",
            reading=found,
        )


def life_span(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of biennials, of annuals where winters are mild, of tender perennials where they are not."""
    found = record.best(CATEGORIES)
    if found is None:
        return
    said = frozenset(found.value)
    if {"annual", "perennial"} <= said:
        message = "Both annual and perennial are printed: which it is depends on your winter."
        yield caution("annual-or-perennial", CATEGORIES, message, "Go by the zone on the tag.", reading=found)
    elif "annual" in said and place.halves and place.halves[0] >= FROST_FREE:
        yield caution(
            "annual-in-mild-winters",
            CATEGORIES,
            f"Many plants sold as annuals only die of frost; in zone {place.zone} this one may live on.",
            "Look up whether it is a tender perennial before you pull it out, and whether it seeds itself.",
            reading=found,
        )
    if "biennial" in said:
        yield caution(
            "biennial-once",
            CATEGORIES,
            "A biennial makes leaves in its first year, flowers in its second, and then dies.",
            "One in flower now will not flower again; let it seed, or buy a young one too.",
            reading=found,
        )
    if "tender_perennial" in said and rated(record) is None and place.halves:
        yield from _tender(place, found)


def _tender(place: Place, found: Reading[Any]) -> Iterator[Caution]:
    here = place.halves
    if here and here[1] < TENDER_OUTDOORS:
        frost = f", about {place.first_frost}" if place.first_frost else ""
        yield caution(
            "tender-here",
            CATEGORIES,
            f"A tender perennial dies of frost; in zone {place.zone} it lasts one season outdoors.",
            f"Bring it in before the first frost{frost}, or buy it anew.",
            weight="loss",
            reading=found,
        )


def after_frost(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when frost kills the plant and the user's last frost is known."""
    found, plant = record.best(CATEGORIES), known_plant(record)
    tender = kinds(record) & {"annual", "vegetable", "tender_perennial"}
    if place.last_frost and tender and not (plant and plant.genus in _COOL_SEASON):
        yield caution(
            "after-last-frost",
            CATEGORIES,
            f"Your last frost is usually about {place.last_frost}, and in some years later.",
            "Set it out after that; only cool-season kinds, such as pansies, go out before.",
            reading=found,
        )
