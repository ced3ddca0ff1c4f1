"""From evidence to the chance that a value is right, and to the three levels people are told.

The chance is a logistic regression: each kind of evidence has a weight, each field an offset of its own.
Weights, offsets and cuts stand in `data/confidence.toml`, which `samples/calibrate.py` writes from counts.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache
from importlib.resources import files
from math import exp
from typing import Any, Literal

from ocr_tags.facts import (
    BOTANICAL_NAME,
    COMMON_NAMES,
    FEEDING,
    NATIVE_CLAIM,
    SERIES,
    SOIL,
    SUPPLIER,
    WARNINGS,
    WATER,
)
from ocr_tags.record import Reading

Level = Literal["sure", "look"]
"""What a person does with a value: rely on it, or look at the tag. What was not read is absent."""
LEVEL_WORDS: dict[Level, str] = {"sure": "sure", "look": "look at the tag"}
NAMES = frozenset((COMMON_NAMES.name, BOTANICAL_NAME.name))
IN_WORDS = NAMES | {fact.name for fact in (SUPPLIER, SERIES, SOIL, WATER, FEEDING, WARNINGS, NATIVE_CLAIM)}
"""Facts kept in the words of the print."""
PART = " part"
"""After a field's name: one item of its list, which may be right where the whole list is not."""


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for a value and against it, each 0 to 1."""

    vote: float = 0.0
    """The best reader's: how clear its letters are times how sure the grammar is."""
    certainty: float = 1.0
    """The grammar's part of that vote."""
    second: float = 0.0
    """The vote of a second engine that found the same value by itself; 0 when none did."""
    unsupported: float = 0.0
    """1 when a second engine read this side and did not find the value."""
    lesser: float = 0.0
    """1 when that second engine is the better one of the two."""
    in_form: float = 0.0
    """1 when the better engine alone found it, and it is a figure or a class, not words kept as printed:
    misread letters make other words, but seldom another figure with its unit."""
    echo: float = 0.0
    """How alike that engine's letters are where the value stands: read alike, but laid out otherwise."""
    partly: float = 0.0
    """1 when that second engine read a part of the value only."""
    pieced: float = 0.0
    """1 when no engine has the value by itself: it stands only in the text merged from both."""
    both_sides: float = 0.0
    """The vote of the other side, when it says the same."""
    in_place: float = 0.0
    """How strong another value is that was read in the same place, beside this one."""
    elsewhere: float = 0.0
    """How strong another value is that stands elsewhere on the tag, beside this one."""
    meant: float = 0.5
    """How likely its words tell of this fact, by examples alone."""
    beyond: float = 0.0
    """How likely the words beside it belong to it as well, by examples alone."""
    by_example: float = 0.0
    """1 when examples alone tell it, and no pattern."""
    parts: float = 0.0
    """Of a list, how many more items than one it has: 0 for one, 0.5 for two, nearing 1."""


@dataclass(frozen=True, slots=True)
class Fit:
    """What `samples/calibrate.py` found: weights by kind of evidence, offsets by field, and two cuts."""

    start: float
    weights: Mapping[str, float]
    offsets: Mapping[str, float]
    shown: float
    """A value with a smaller chance of being right is left out: unreadable is absent."""
    named: float
    """The same for a plant's names: without any a tag is not found again."""
    sure: float
    """From this chance up a value is `sure`: wrong at most once in 200 on the tags it was fitted on."""

    def least(self, field: str) -> float:
        """The chance from which up a value of this field is given."""
        return min(self.shown, self.named) if field in NAMES else self.shown

    def chance(self, field: str, evidence: Evidence) -> float:
        """The chance, 0 to 1, that a value of this field with this evidence is right."""
        score = self.start + self.offsets.get(field, 0.0)
        score += sum(weight * getattr(evidence, name) for name, weight in self.weights.items())
        return 1 / (1 + exp(-max(min(score, 30.0), -30.0)))


@cache
def fitted() -> Fit:
    """The fit that stands in `data/confidence.toml`."""
    return read_fit(files("ocr_tags").joinpath("data", "confidence.toml").read_text("utf-8"))


def read_fit(text: str) -> Fit:
    """A fit from its TOML form."""
    given: dict[str, Any] = tomllib.loads(text)
    return Fit(**{each.name: given[each.name] for each in fields(Fit)})


def level(reading: Reading[Any]) -> Level:
    """Whether a value can be relied on or should be looked at on the tag."""
    return "sure" if is_sure(reading.status, reading.confidence) else "look"


def is_sure(status: str, confidence: float) -> bool:
    """Whether a person has settled it, or its measured chance is past the cut and no reading disagrees."""
    if status in {"confirmed", "corrected"}:
        return True
    return status not in {"disagreed", "inferred"} and confidence >= fitted().sure
