"""What a tag may say, fact by fact: all that showing, keeping and cautions need, without the readers."""

from __future__ import annotations

from typing import Any

from ocr_tags.record import Fact
from ocr_tags.values import (
    Bloom,
    BotanicalName,
    Days,
    Hardiness,
    HeatZones,
    Length,
    PlantPassport,
    Price,
    Temperature,
)

COMMON_NAMES = Fact("common_names", "Common name", str, "each")
BOTANICAL_NAME = Fact("botanical_name", "Botanical name", BotanicalName)
SERIES = Fact("series", "Series", str)
CATEGORIES = Fact("categories", "Kind of plant", str, "list")
HEIGHT = Fact("height", "Height", Length)
FLOWER_HEIGHT = Fact("flower_height", "Flower height", Length)
SPREAD = Fact("spread", "Spread", Length)
SPACING = Fact("spacing", "Spacing", Length)
ROW_SPACING = Fact("row_spacing", "Row spacing", Length)
HARDINESS = Fact("hardiness", "Hardiness zones", Hardiness)
HEAT_ZONES = Fact("heat_zones", "Heat zones", HeatZones)
RHS_RATING = Fact("rhs_rating", "RHS hardiness rating", str)
MIN_TEMPERATURE = Fact("min_temperature", "Lowest temperature", Temperature)
LIGHT: Fact[tuple[str, ...]] = Fact("light", "Light", tuple[str, ...])
WATER = Fact("water", "Water", str)
SOIL = Fact("soil", "Soil", str)
FEEDING = Fact("feeding", "Feeding", str)
BLOOM = Fact("bloom", "Bloom time", Bloom)
COLOURS = Fact("colours", "Colours", str, "list")
DAYS_TO_MATURITY = Fact("days_to_maturity", "Days to maturity", Days)
NATIVE_CLAIM = Fact("native_claim", "Native", str)
CONTAINER = Fact("container", "Container", str)
PRICE = Fact("price", "Price", Price)
GTIN = Fact("gtin", "Barcode number", str)
PATENTS = Fact("patents", "Patents and variety rights", str, "list")
PLANT_PASSPORT = Fact("plant_passport", "Plant passport", PlantPassport)
SUPPLIER = Fact("supplier", "Supplier", str)
WARNINGS = Fact("warnings", "Warnings", str, "list")

SUNNY_TO_SHADY = ("full_sun", "part_sun", "part_shade", "full_shade")
"""The values of `LIGHT`."""

FACTS: tuple[Fact[Any], ...] = tuple(one for one in list(vars().values()) if isinstance(one, Fact))
"""Every fact above, in the order a person reads a tag; `fields.FIELDS` has a reader for each."""
