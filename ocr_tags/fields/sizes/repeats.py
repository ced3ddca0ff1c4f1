"""All sizes of one text together: what is said twice, and a width that its height makes unlikely."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.sizes.ages import YEARS, years
from ocr_tags.fields.sizes.columns import Size
from ocr_tags.measures.quantities import METRIC
from ocr_tags.measures.two_units import SAME_SIZE
from ocr_tags.patterns import later
from ocr_tags.values import Length

WIDEST = 6
"""Over 3 m wide and more than so many times its height: a creeping shrub, or a fraction misread."""

FARTHEST = 1500.0
"""In cm; nobody sets plants farther apart: "60 m" has lost its c (common practice, no source)."""


def settle(text: str, found: Sequence[Size]) -> Iterator[Size]:
    """One thing printed in inches and again in centimetres is said once, as first printed."""
    kept: list[Size] = []
    found = _flowering(text, found)
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


_IN_FLOWER = later(r"[ \n-]?(?:when )?in[ \n](?:full )?(?:flower|bloom)\b", re.I)
_HEIGHT_BEFORE = later(
    r"\b(?:tall|high|height|ht\.?|stands?|reach(?:es)?|grows?|gets?|makes)\W{1,4}(?:A[.:] ?)?(?:to "
    r"|about )?$",
    re.I,
)


def _flowering(text: str, found: Sequence[Size]) -> Sequence[Size]:
    """A height in flower that is the only one of a tag is the plant's where a label or verb says so ("Stands
    3 ft in flower"), and may be either without one; beside another it is the flower's."""
    if any(size.kind == "height" for size in found) or [x.kind for x in found].count("flower_height") != 1:
        return found
    return [_whole_height(text, size) for size in found]


def _whole_height(text: str, size: Size) -> Size:
    start, end = size.measure.span
    if size.kind != "flower_height" or not _IN_FLOWER.match(text, end):
        return size
    told = _HEIGHT_BEFORE.search(text, 0, start)
    return replace(
        size, kind="height" if told else size.kind, certainty=(0.8 if told else 0.45) * size.certainty
    )


YOUNG = 0.3
_BETWEEN = later(
    r"[\s:;,()@=-]{0,4}(?:(?:height|spread|after|in|at|by|is|h|ht|up|to|a)[\s:.]{1,3}){0,3}", re.I
)


_OF_LENGTH_BEFORE = later(
    r"\d ?(?:cm|m|ft|feet|in|[\"”″'′’])\.?,? (?:(?:tall|high),? )?(?:in|after|at|by) (?:about )?$", re.I
)
"""Years that stand right behind a length are those of that one, not of the next."""


def _age_of(text: str, size: Size) -> int:
    """After how many years a plant is that large, where the same line says it beside the figure; else 0."""
    start, end = size.measure.span
    line, stop = text.rfind("\n", 0, start) + 1, text.find("\n", end)
    for age in YEARS.finditer(text, line, stop if stop >= 0 else len(text)):
        if age.end() <= start and _OF_LENGTH_BEFORE.search(text, line, age.start()):
            continue
        first, last = (age.end(), start) if age.end() <= start else (end, age.start())
        if _BETWEEN.fullmatch(text, first, last):
            return years(age)
    return 0


def _is_young(text: str, size: Size, found: Sequence[Size]) -> bool:
    """Whether the tag tells a later size too: "2.5 m after 10 years, ultimately 8 m"."""
    age = _age_of(text, size) if size.kind in {"height", "spread"} else 0
    if not age:
        return False
    others = [x for x in found if x.kind == size.kind and x.measure.span != size.measure.span]
    grown = any(_age_of(text, x) == 0 and not _says_again(x, size) for x in others)
    rows = (row for row in YEARS.finditer(text) if text[: row.start()].rstrip(" ")[-1:] in ("", "\n"))
    return grown or any(years(row) > age for row in rows)


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
