"""What makes a statement of light doubtful where it stands: a label, a cut line, a legend."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.light.signs import Light
from ocr_tags.patterns import later
from ocr_tags.record import Found

TORN = 0.45
BESIDE = 0.4
SUN_OR_SHADE = later(r"sun ?[/&] ?shade")


def stands_as_label(text: str, found: Found[Light]) -> bool:
    """Whether "Sun" by itself, beside another statement of light, stands among labels or before that one."""
    start, end = found.span
    if text[start:end].lower() != "sun":
        return False
    before, after = re.split(r"[\t\n]+", text[:start]), re.split(r"[\t\n]+", text[end:])
    above, below = before[-2:-1] if before[-1] == "" else [], after[1:2] if after[0] == "" else []
    return any(map(is_label, (*above, *below))) or (text[end : end + 1] == "\t" and bool(below))


_NO = later(r"(?<!-)\b(?:no|not|without|avoid|never) ?(?=[\t\n])")
_OR = later(
    r"\b(?:sun|shade|sonne|soleil|sol) (?:or|to|and|&) ?(?:\n"
    r"(?=\n|(?![^\n]{0,12}(?:sun|shade|sonne|ombre|sombra)))"
    r"|(?:full|part|partial|partly|light|half) ?(?:\t|\n\n|(?=[^\W\d_]+ ?:)))"
)


def wholeness(folded: str, found: Found[Light]) -> float:
    """How sure it is that a statement is all there: columns read across may have cut "no" or "sun or" off."""
    start, end = found.span
    opens = start == 0 or folded[start - 1] in "\t\n"
    negated = opens and any(
        no.end() < start and folded.count("\n", no.end(), start) <= 2 for no in _NO.finditer(folded)
    )
    cut = any(not start <= part.start() < end for part in _OR.finditer(folded))
    return TORN if negated or cut else 1.0


def without_legend(statements: Sequence[Found[Light]]) -> Iterator[Found[Light]]:
    """Three and more different statements are a legend of what the words mean, not this plant's light."""
    legend = len({found.value for found in statements}) >= 3
    for found in statements:
        yield replace(found, certainty=0.3 * found.certainty) if legend else found
