"""Plants per square metre or foot, as a spacing."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from ocr_tags.measures.quantities import CM
from ocr_tags.patterns import later
from ocr_tags.record import Found
from ocr_tags.values import Length

_DENSITY = later(
    r"(?<![\d.,$€£-])(?P<few>\d{1,2})(?:\s?(?:[-–]|to|à|a|bis|tot)\s?(?P<many>\d{1,2}))?\s?(?:plant\w*|"
    r"pl\.?|st(?:k|ück)?\.?|"
    r"pflanzen|pcs)?\s?(?:/|\bper\b|\bpar\b|\bpor\b|\bpro\b|\bje\b)\s?"
    r"(?:(?P<metre>m²|m2|sq\.? ?m\b|square met(?:er|re)|qm)|(?P<foot>sq\.? ?ft|ft²|ft2|square foot))",
    re.I,
)


def by_density(text: str) -> Iterator[Found[Length]]:
    """Plants per square metre or foot as the spacing of a square grid: the root of the area each one has.

    A whisper: how many fill a square is printed for carpets, and no distance stands on the tag.
    """
    for match in _DENSITY.finditer(text):
        few, many = int(match["few"]), int(match["many"] or match["few"])
        if not 0 < few <= many:
            continue
        side = 100.0 if match["metre"] else 12 * CM["in"]
        yield Found(Length(side / math.sqrt(many), side / math.sqrt(few)), match.span(), 0.5)
