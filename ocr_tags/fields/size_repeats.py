"""All sizes of one text together: what is said twice, and a width that its height makes unlikely."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.size_columns import Size
from ocr_tags.quantities import METRIC
from ocr_tags.two_units import SAME_SIZE
from ocr_tags.values import Length

WIDEST = 6
"""Over 3 m wide and more than so many times its height: a creeping shrub, or a fraction misread."""


def settle(text: str, found: Sequence[Size]) -> Iterator[Size]:
    """One thing printed in inches and again in centimetres is said once, as first printed."""
    kept: list[Size] = []
    tallest = max((x.measure.length.max_cm or 0 for x in found if x.kind == "height"), default=0)
    for size in sorted((_thin_to(text, x) for x in found), key=lambda x: x.measure.span):
        if size.kind == "spread" and 0 < WIDEST * tallest < (size.measure.length.max_cm or 0) > 300:
            size = replace(size, certainty=0.6 * size.certainty)
        if not any(_says_again(size, earlier) for earlier in kept):
            kept.append(size)
    yield from kept


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
