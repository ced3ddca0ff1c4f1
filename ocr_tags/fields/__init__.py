"""Text in, values out: one file per family of fields, and the list of them all.

To add a field, write its reader in a file here and one line in the list, and say in `facts.py` what it is
called; JSON, search, tables and commands follow from there.
"""

from typing import Any

from ocr_tags.fields.bloom import BLOOM
from ocr_tags.fields.care import FEEDING, SOIL, WATER
from ocr_tags.fields.categories import CATEGORIES
from ocr_tags.fields.claims import NATIVE_CLAIM, WARNINGS
from ocr_tags.fields.codes import GTIN, PATENTS
from ocr_tags.fields.cold import MIN_TEMPERATURE
from ocr_tags.fields.colours import COLOURS
from ocr_tags.fields.harvest import DAYS_TO_MATURITY
from ocr_tags.fields.light import LIGHT
from ocr_tags.fields.makers import SERIES, SUPPLIER
from ocr_tags.fields.names import BOTANICAL_NAME, COMMON_NAMES
from ocr_tags.fields.passport import PLANT_PASSPORT
from ocr_tags.fields.sale import CONTAINER, PRICE
from ocr_tags.fields.sizes import FLOWER_HEIGHT, HEIGHT, ROW_SPACING, SPACING, SPREAD
from ocr_tags.fields.zones import HARDINESS, HEAT_ZONES, RHS_RATING
from ocr_tags.record import Field

FIELDS: tuple[Field[Any], ...] = (
    COMMON_NAMES,
    BOTANICAL_NAME,
    SERIES,
    CATEGORIES,
    HEIGHT,
    FLOWER_HEIGHT,
    SPREAD,
    SPACING,
    ROW_SPACING,
    HARDINESS,
    HEAT_ZONES,
    RHS_RATING,
    MIN_TEMPERATURE,
    LIGHT,
    WATER,
    SOIL,
    FEEDING,
    BLOOM,
    COLOURS,
    DAYS_TO_MATURITY,
    NATIVE_CLAIM,
    CONTAINER,
    PRICE,
    GTIN,
    PATENTS,
    PLANT_PASSPORT,
    SUPPLIER,
    WARNINGS,
)
"""Every field, in the order a person reads a tag."""
