"""Where a side speaks of care, size or place: stretches in which no unknown words can be a plant's name."""

from __future__ import annotations

from typing import Any

from ocr_tags.fields.bloom import BLOOM
from ocr_tags.fields.care import FEEDING, SOIL, WATER
from ocr_tags.fields.categories import CATEGORIES
from ocr_tags.fields.claims import NATIVE_CLAIM, WARNINGS
from ocr_tags.fields.cold import MIN_TEMPERATURE
from ocr_tags.fields.harvest import DAYS_TO_MATURITY
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.light import LIGHT
from ocr_tags.fields.sale import CONTAINER, PRICE
from ocr_tags.fields.sizes import HEIGHT, SPACING, SPREAD
from ocr_tags.fields.zones import HARDINESS
from ocr_tags.record import Field, TagText

Span = tuple[int, int]

_TELLING: tuple[Field[Any], ...] = (
    *(LIGHT, WATER, SOIL, FEEDING, BLOOM, CATEGORIES, NATIVE_CLAIM, WARNINGS, DAYS_TO_MATURITY),
    *(CONTAINER, PRICE, HEIGHT, SPREAD, SPACING, HARDINESS, MIN_TEMPERATURE),
)
_TOLD = 0.6
"""Findings less sure than this may themselves be names misread."""


def find_answers(tag: TagText) -> tuple[Span, ...]:
    r"""What other fields read as their values, and labels with the cell right beside or below each.

    >>> text = "Sky Lantern\nFeed\nMonthly"
    >>> [text[slice(*span)] for span in find_answers(TagText(text))]
    ['Monthly', 'Feed', 'Monthly']
    """
    spans = [found.span for field in _TELLING for found in field.read(tag) if found.certainty >= _TOLD]
    return (*spans, *_labels(tag))


def _labels(tag: TagText) -> list[Span]:
    spans: list[Span] = []
    for number, line in enumerate(tag.lines):
        if is_label(tag.string[line.start : line.end]):
            spans.append((line.start, line.end))
            spans += [
                (after.start, after.end)
                for after in tag.lines[number + 1 : number + 2]
                if tag.string[line.end : after.start] in ("\t", "\n")
            ]
    return spans
