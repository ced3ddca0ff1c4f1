"""What words tell by example alone, where no pattern of `fields/` knows them.

The examples show where a fact stands; what its value is, the field's own reader says, to whom the words are
given once more as if a label stood before them. A fact told in a phrase has no value but those words.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ocr_tags.facts import (
    BLOOM,
    CATEGORIES,
    CONTAINER,
    DAYS_TO_MATURITY,
    HEIGHT,
    LIGHT,
    MIN_TEMPERATURE,
    NATIVE_CLAIM,
    ROW_SPACING,
    SOIL,
    SPACING,
    SUPPLIER,
    WATER,
)
from ocr_tags.meaning.model import meaning
from ocr_tags.record import Field, Found, TagText

LABELS = {
    CATEGORIES.name: "Type: ",
    HEIGHT.name: "Height: ",
    SPACING.name: "Spacing: ",
    ROW_SPACING.name: "Row spacing: ",
    MIN_TEMPERATURE.name: "Minimum temperature: ",
    LIGHT.name: "Light: ",
    WATER.name: "Water: ",
    SOIL.name: "Soil: ",
    BLOOM.name: "Bloom time: ",
    DAYS_TO_MATURITY.name: "Days to maturity: ",
    NATIVE_CLAIM.name: "",
    CONTAINER.name: "Pot size: ",
    SUPPLIER.name: "Grown by ",
}
"""Facts that examples tell often enough where patterns do not, and a label that each of them may have."""


def by_example(text: TagText, field: Field[Any]) -> Iterator[Found[Any]]:
    """Values whose words the examples take for this fact, each as certain as they are and the reader is."""
    label = LABELS.get(field.name)
    if label is None:
        return
    for start, end, chance in meaning(text).told(field.name):
        words = " ".join(text.string[start:end].split())
        found = list(field.read(TagText(label + words)))
        if len(found) == 1 or (found and field.shape == "list"):
            for one in found:
                value = words.strip(" .,;:") if field.fact.type is str and field.shape == "one" else one.value
                yield Found(value, (start, end), one.certainty * chance)
