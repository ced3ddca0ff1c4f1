"""Text in, values out: one file per family of fields, and the list of them all.

To add a field, say in `facts.py` what it is, write its reader in a file here and join the two in the list;
JSON, search, tables and commands follow from there.
"""

from typing import Any

from ocr_tags import facts
from ocr_tags.fields.bloom.reader import read_bloom
from ocr_tags.fields.claims import read_native_claim
from ocr_tags.fields.codes import read_gtin, read_patents
from ocr_tags.fields.cold import read_min_temperature
from ocr_tags.fields.colours.reader import read_colours
from ocr_tags.fields.container.reader import read_container
from ocr_tags.fields.feeding.reader import read_feeding
from ocr_tags.fields.harm import read_warnings
from ocr_tags.fields.harvest import read_days
from ocr_tags.fields.kind.reader import read_categories
from ocr_tags.fields.light.reader import read_light
from ocr_tags.fields.makers import read_supplier
from ocr_tags.fields.names import read_botanical_name, read_common_names
from ocr_tags.fields.passport import read_plant_passport
from ocr_tags.fields.ratings import read_heat_zones, read_rhs_rating
from ocr_tags.fields.sale import read_price
from ocr_tags.fields.series.reader import read_series
from ocr_tags.fields.sizes.reader import (
    read_flower_height,
    read_height,
    read_row_spacing,
    read_spacing,
    read_spread,
)
from ocr_tags.fields.soil.reader import read_soil
from ocr_tags.fields.water.reader import read_water
from ocr_tags.fields.zones import read_hardiness
from ocr_tags.record import Field

FIELDS: tuple[Field[Any], ...] = (
    Field(facts.COMMON_NAMES, read_common_names),
    Field(facts.BOTANICAL_NAME, read_botanical_name),
    Field(facts.SERIES, read_series),
    Field(facts.CATEGORIES, read_categories),
    Field(facts.HEIGHT, read_height),
    Field(facts.FLOWER_HEIGHT, read_flower_height),
    Field(facts.SPREAD, read_spread),
    Field(facts.SPACING, read_spacing),
    Field(facts.ROW_SPACING, read_row_spacing),
    Field(facts.HARDINESS, read_hardiness),
    Field(facts.HEAT_ZONES, read_heat_zones),
    Field(facts.RHS_RATING, read_rhs_rating),
    Field(facts.MIN_TEMPERATURE, read_min_temperature),
    Field(facts.LIGHT, read_light),
    Field(facts.WATER, read_water),
    Field(facts.SOIL, read_soil),
    Field(facts.FEEDING, read_feeding),
    Field(facts.BLOOM, read_bloom),
    Field(facts.COLOURS, read_colours),
    Field(facts.DAYS_TO_MATURITY, read_days),
    Field(facts.NATIVE_CLAIM, read_native_claim),
    Field(facts.CONTAINER, read_container),
    Field(facts.PRICE, read_price),
    Field(facts.GTIN, read_gtin),
    Field(facts.PATENTS, read_patents),
    Field(facts.PLANT_PASSPORT, read_plant_passport),
    Field(facts.SUPPLIER, read_supplier),
    Field(facts.WARNINGS, read_warnings),
)
"""Every fact with its reader, in the order of `FACTS`."""
