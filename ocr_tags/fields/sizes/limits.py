"""Lengths of which the label says that they are one end only: "Max. height", "Climbs to"."""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.fields.sizes.clauses import LIMIT_BEFORE
from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.fields.sizes.words import Label
from ocr_tags.measures.printed import Measure
from ocr_tags.patterns import later
from ocr_tags.values import Length

_UP_TO = later(r"(?:climb|spread|trail|reach|cascad|mature|scrambl|twine)\w*(?: up)? to[ .]*[:\t\n]", re.I)
""""Grows to" as a label is printed over the size itself: "GROWS TO" and "80 cm high"."""


def limited(tag: Measured, label: Label, size: Size) -> Size:
    """ "Max. height 3 ft" prints one end only."""
    limit, length = LIMIT_BEFORE.search(tag.text, 0, label.start), size.measure.length
    if length.min_cm == length.max_cm and _FLOWERS_TO.fullmatch(tag.text, label.start, label.end):
        return replace(size, measure=replace(size.measure, length=Length(None, length.max_cm)))
    if limit is None or length.min_cm != length.max_cm:
        return size
    one_end = Length(None, length.max_cm) if limit["most"] else Length(length.min_cm, None)
    return replace(size, measure=replace(size.measure, length=one_end), certainty=size.certainty * 0.65)


_FLOWERS_TO = later(r"(?:flower|bloom|scape|spire|plume)[^\n]* to", re.I)

_LEAST = 30.0
"""In cm; a smaller size may be that of a flower or a pot."""


def up_to(measure: Measure) -> bool:
    """Whether a size is one limit, as "Size: up to 3 ft": then it is the height."""
    return measure.length.min_cm is None and (measure.length.max_cm or 0) >= _LEAST


def by_verb(text: str, label: Label, measure: Measure) -> Measure:
    """The length behind a verb, up to which a plant goes where the label ends with "to"."""
    measure = arrived(text, label, measure)
    length = measure.length
    up_to = _UP_TO.match(text, label.start) or _to_below(text, label.start, measure.span[1])
    if not up_to or length.min_cm != length.max_cm:
        return measure
    return replace(measure, length=Length(None, length.max_cm))


_ARRIVES = later(
    r"(?:widen|bulk|float|soar|arch|tower|dance|wave|sway|hover|get|shoot)(?:s|ing)?(?: out| up)?",
    re.I,
)


def arrived(text: str, label: Label, measure: Measure) -> Measure:
    """ "Slowly widens to 2 ft" tells where it ends, which is no limit."""
    top, verb = measure.length.max_cm, re.split(r"\s", text[label.start : label.end])
    arrives = any(map(_ARRIVES.fullmatch, verb)) and text[measure.span[0] :].lower().startswith("to")
    limit = measure.length.min_cm is None
    return replace(measure, length=Length(top, top)) if arrives and limit else measure


def _to_below(text: str, start: int, end: int) -> bool:
    """Whether "To" stands right below a cell that begins with the verb: its label was broken in two."""
    first = max(text.rfind("\n", 0, start), text.rfind("\t", 0, start)) + 1
    row, *below = text[text.rfind("\n", 0, start) + 1 :].split("\n")
    if first != start or text[end : end + 1] not in ("", "\t", "\n"):
        return False
    place = text.count("\t", text.rfind("\n", 0, start) + 1, start)
    cells = next((line.split("\t") for line in below if line), [])
    fits = len(cells) == len(row.split("\t")) or place == 0
    return fits and [cell.strip(" |:").lower() for cell in cells[place : place + 1]] == ["to"]
