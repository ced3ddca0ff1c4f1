"""Do two values of one field say the same? Asked of two readings of one place, two sides, two tags."""

from __future__ import annotations

import unicodedata
from functools import singledispatch
from typing import Any, Literal

from rapidfuzz.distance import OSA

from ocr_tags.values import Bloom, BotanicalName, Hardiness, Length, PlantPassport

Comparison = Literal["same", "fuller", "poorer", "different"]
"""`fuller`: the first says all that the second says, and more; `poorer`: the other way round."""

LIKE = 0.85
"""Share of letters in common above which two printed phrases are one phrase read twice."""


def key(value: Any) -> Any:
    """What must be equal for two values to be the same: letter case, spaces and marks left out."""
    if isinstance(value, str):
        return _letters(value)
    if isinstance(value, BotanicalName):
        return _letters(value.name)
    if isinstance(value, Length):
        return tuple(None if end is None else round(end, 1) for end in (value.min_cm, value.max_cm))
    if hasattr(value, "text"):
        return _letters(value.text)
    return value


@singledispatch
def compare(first: Any, second: Any) -> Comparison:
    """How two values of one field stand to each other."""
    return "same" if key(first) == key(second) else "different"


@compare.register
def _(first: str, second: Any) -> Comparison:
    a, b = _letters(first), _letters(second)
    if a == b:
        return "same"
    if not any(c.isalpha() for c in a) or min(len(a), len(b)) < 5:
        return "different"
    if _digits(a) == _digits(b) and OSA.normalized_similarity(a, b) >= LIKE:
        return "same"
    return _by_content(a, b)


def _by_content(a: str, b: str) -> Comparison:
    if b in a:
        return "fuller"
    return "poorer" if a in b else "different"


@compare.register
def _(first: tuple, second: Any) -> Comparison:  # type: ignore[type-arg]
    """Classes of light: "Sun" in a headline is the poorer word for "sun to part shade" beside it."""
    a, b = set(first), set(second)
    if a == b:
        return "same"
    if a > b:
        return "fuller"
    return "poorer" if a < b else "different"


@compare.register
def _(first: BotanicalName, second: Any) -> Comparison:
    """A part that is missing, or only begun ("White" for "Pellinge White"), makes a name poorer."""
    parts = ("genus", "species", "infraspecific", "cultivar", "group", "trade_designation")
    return _by_parts(first, second, parts)


@compare.register
def _(first: PlantPassport, second: Any) -> Comparison:
    """A passport with a line missing is poorer."""
    return _by_parts(first, second, ("botanical_name", "operator", "traceability", "origin"))


def _by_parts(first: Any, second: Any, parts: tuple[str, ...]) -> Comparison:
    """Where each has what the other lacks, the longer one is fuller."""
    more = less = 0
    for part in parts:
        a, b = _letters(getattr(first, part) or ""), _letters(getattr(second, part) or "")
        if a not in b and b not in a:
            return "different"
        more += max(len(a) - len(b), 0)
        less += max(len(b) - len(a), 0)
    if more == less == 0:
        return "same"
    return "fuller" if more >= less else "poorer"


@compare.register
def _(first: Bloom, second: Any) -> Comparison:
    """One time in other words, or in another language, is one time."""
    times = (first.seasons, first.months) == (second.seasons, second.months)
    if key(first) == key(second) or (times and (first.seasons or first.months)):
        return "same"
    return _by_content(_letters(first.text), _letters(second.text))


@compare.register
def _(first: Hardiness, second: Any) -> Comparison:
    if first == second:
        return "same"
    if first.min_zone != second.min_zone:
        return "different"
    return "fuller" if second.max_zone is None else "poorer" if first.max_zone is None else "different"


@compare.register
def _(first: Length, second: Any) -> Comparison:
    a, b = (first.min_cm, first.max_cm), (second.min_cm, second.max_cm)
    return "same" if all(_near(x, y) for x, y in zip(a, b, strict=True)) else "different"


def _near(a: float | None, b: float | None) -> bool:
    """Within 5 %: one side in inches and the other in whole centimetres still agree."""
    if a is None or b is None:
        return a is b
    return abs(a - b) <= 0.05 * max(a, b)


def _letters(text: str) -> str:
    """The letters alone, without accents, of which an engine that knows none makes two of "ü": Liittmoor."""
    plain = unicodedata.normalize("NFKD", text)
    return "".join(c for c in plain.casefold() if c.isalnum()).replace("ii", "u")


def _digits(text: str) -> str:
    return "".join(c for c in text if c.isdigit())
