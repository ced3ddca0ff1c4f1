"""Sizes a plant has after so many years, beside the one it has in the end, which is its size."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.measures.quantities import FIGURES, WORD
from ocr_tags.patterns import later

_COUNT = rf"(?P<years>\d{{1,2}}|{WORD})"
YEARS = later(rf"\b{_COUNT}[ -]?(?:years?|yrs?|ans|jahren?|jaar)\b", re.I)
_YOUNG_BEHIND = later(
    r"(?: (?:tall|high))?,?\s(?:(?:with)?in|after|at|by)(?: about| around| the first)?\s"
    rf"{_COUNT}[ -]?y(?:ea)?rs?\b\.?",
    re.I,
)
_IN_THE_END = (
    r"(?:in the end|in time|in (?:ripe )?old age|in maturity|at (?:full )?maturity|at last|at most"
    r"|eventually|ultimately|finally|(?:when|once) (?:mature|grown|old|full[- ]grown|fully grown)"
    r"|full[- ]grown|fully grown|with (?:time|age)|if left(?: alone| unpruned)?)"
)
_AND_THEN = later(
    r"[\s,;:(–—-]{0,3}(?:(?:and|but|then|eventually|ultimately|finally|later|reaching|growing|going|rising"
    r"|makes?|making|on)\s){0,3}",
    re.I,
)
_LATE_BEHIND = later(rf"(?: (?:tall|high))?,?\s{_IN_THE_END}(?![^\W\d_])", re.I)
_LATE_BEFORE = later(rf"\b{_IN_THE_END},?\s(?:(?:reaching|growing|it is|makes?|to|at)\s)?$", re.I)
_SURE = 0.8


def years(match: re.Match[str]) -> int:
    """The count of `YEARS` as a number."""
    printed = match["years"].casefold()
    return FIGURES.get(printed) or int(printed)


def grown(tag: Measured) -> Iterator[Size]:
    """The height in the end beside one in some years: "3 m in ten years, up to 8 m eventually"."""
    for place, (young, old) in enumerate(zip(tag.measures, tag.measures[1:], strict=False)):
        aged = _YOUNG_BEHIND.match(tag.text, young.span[1])
        if not aged or place + 1 in tag.settled or not _taller(young.length.max_cm, old.length.max_cm):
            continue
        between = tag.between(aged.end(), old.span[0])
        late_before = _LATE_BEFORE.search(tag.text, aged.end() - 1, old.span[0])
        late = _LATE_BEHIND.match(tag.text, old.span[1]) and _AND_THEN.fullmatch(between)
        if late or (late_before and _AND_THEN.fullmatch(tag.between(aged.end(), late_before.start()))):
            tag.settled.add(place + 1)
            yield Size("height", old, _SURE * old.certainty)


def _taller(young: float | None, old: float | None) -> bool:
    return young is not None and old is not None and old > young
