"""Where a side speaks of care, size or place: stretches in which no unknown words can be a plant's name."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from ocr_tags.fields.bloom.reader import read_bloom
from ocr_tags.fields.claims import read_native_claim
from ocr_tags.fields.cold import read_min_temperature
from ocr_tags.fields.container.reader import read_container
from ocr_tags.fields.feeding.reader import read_feeding
from ocr_tags.fields.harm import read_warnings
from ocr_tags.fields.harvest import read_days
from ocr_tags.fields.kind.reader import read_categories
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.light.reader import read_light
from ocr_tags.fields.sale import read_price
from ocr_tags.fields.sizes.reader import read_height, read_spacing, read_spread
from ocr_tags.fields.soil.reader import read_soil
from ocr_tags.fields.water.reader import read_water
from ocr_tags.fields.zones import read_hardiness
from ocr_tags.record import Found, TagText

Span = tuple[int, int]

_TELLING: tuple[Callable[[TagText], Iterator[Found[Any]]], ...] = (
    *(read_light, read_water, read_soil, read_feeding, read_bloom, read_categories, read_native_claim),
    *(read_warnings, read_days, read_container, read_price, read_height, read_spread, read_spacing),
    *(read_hardiness, read_min_temperature),
)
_TOLD = 0.6
"""Findings less sure than this may themselves be names misread."""


def find_answers(tag: TagText) -> tuple[Span, ...]:
    r"""What other fields read as their values, and labels with the cell right beside or below each.

    >>> text = "Sky Lantern\nFeed\nMonthly"
    >>> [text[slice(*span)] for span in find_answers(TagText(text))]
    ['Monthly', 'Feed', 'Monthly']
    """
    spans = [found.span for read in _TELLING for found in read(tag) if found.certainty >= _TOLD]
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
