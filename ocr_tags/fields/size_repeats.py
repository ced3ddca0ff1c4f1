"""All sizes of one text together: what is said twice, and a width that its height makes unlikely."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.size_columns import Size
from ocr_tags.patterns import later
from ocr_tags.quantities import METRIC
from ocr_tags.two_units import SAME_SIZE
from ocr_tags.values import Length

WIDEST = 6
"""Over 3 m wide and more than so many times its height: a creeping shrub, or a fraction misread."""

FARTHEST = 1500.0
"""In cm; nobody sets plants farther apart: "60 m" has lost its c (common practice, no source)."""


def settle(text: str, found: Sequence[Size]) -> Iterator[Size]:
    """One thing printed in inches and again in centimetres is said once, as first printed."""
    kept: list[Size] = []
    tallest = max((x.measure.length.max_cm or 0 for x in found if x.kind == "height"), default=0)
    for size in sorted((_thin_to(text, x) for x in found), key=lambda x: x.measure.span):
        if size.kind == "spread" and 0 < WIDEST * tallest < (size.measure.length.max_cm or 0) > 300:
            size = replace(size, certainty=0.6 * size.certainty)
        if size.kind in {"spacing", "row_spacing"} and (size.measure.length.max_cm or 0) > FARTHEST:
            size = replace(size, certainty=0.3 * size.certainty)
        if _is_young(text, size, found):
            size = replace(size, certainty=YOUNG * size.certainty)
        if not any(_says_again(size, earlier) for earlier in kept):
            kept.append(size)
    yield from kept


YOUNG = 0.3
_YEARS = later(r"\b(\d{1,2}) ?(?:years?|yrs?|ans|jahren?|jaar)\b", re.I)
_BETWEEN = later(
    r"[\s:;,()@=-]{0,4}(?:(?:height|spread|after|in|at|by|is|h|ht|up|to|a)[\s:.]{1,3}){0,3}", re.I
)


def _age_of(text: str, size: Size) -> int:
    """After how many years a plant is that large, where the same line says it beside the figure; else 0."""
    start, end = size.measure.span
    line, stop = text.rfind("\n", 0, start) + 1, text.find("\n", end)
    for years in _YEARS.finditer(text, line, stop if stop >= 0 else len(text)):
        first, last = (years.end(), start) if years.end() <= start else (end, years.start())
        if _BETWEEN.fullmatch(text, first, last):
            return int(years[1])
    return 0


def _is_young(text: str, size: Size, found: Sequence[Size]) -> bool:
    """Whether the tag tells a later size too: "2.5 m after 10 years, ultimately 8 m"."""
    age = _age_of(text, size) if size.kind in {"height", "spread"} else 0
    if not age:
        return False
    others = [x for x in found if x.kind == size.kind and x.measure.span != size.measure.span]
    grown = any(_age_of(text, x) == 0 and not _says_again(x, size) for x in others)
    rows = (years for years in _YEARS.finditer(text) if text[: years.start()].rstrip(" ")[-1:] in ("", "\n"))
    return grown or any(int(years[1]) > age for years in rows)


def _thin_to(text: str, size: Size) -> Size:
    """ "Thin to 4 in" names the distance itself, not a limit."""
    top = size.measure.length.max_cm
    to = re.match(r"to\b", text[size.measure.span[0] :], re.I)
    if to and size.kind in {"spacing", "row_spacing"} and size.measure.length.min_cm is None:
        return replace(
            size, measure=replace(size.measure, length=Length(top, top)), certainty=size.certainty * 0.9
        )
    return size


def _says_again(size: Size, earlier: Size) -> bool:
    one, other = size.measure, earlier.measure
    if size.kind != earlier.kind or (one.unit in METRIC) == (other.unit in METRIC):
        return False
    ends = ((one.length.min_cm, other.length.min_cm), (one.length.max_cm, other.length.max_cm))
    return all(a == b or (a and b and abs(a - b) <= SAME_SIZE * max(a, b)) for a, b in ends)
