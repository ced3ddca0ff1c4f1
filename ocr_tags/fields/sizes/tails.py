"""A word right behind a length that says what it measures: "12 in tall", "18 in apart", "on 30 in plants"."""

from __future__ import annotations

import re

from ocr_tags.fields.sizes.clauses import (
    BLOOM_BEFORE,
    CROWN,
    CROWN_BEFORE,
    FOREIGN_BEFORE,
    FOREIGN_EARLIER,
    FOREIGN_NOUN_AFTER,
    LABELS_NEXT,
    OF_PART,
    PARTS_ON_PLANT,
    PLANT_BEFORE,
    PLANT_OF_LEAVES,
    POSTS_BEFORE,
    ROWS_BEFORE,
    SOWING_BEFORE,
    TAIL,
)
from ocr_tags.fields.sizes.columns import Measured
from ocr_tags.fields.sizes.words import FLOWER_TOO, Label
from ocr_tags.fields.values import is_torn
from ocr_tags.measures.printed import Measure
from ocr_tags.patterns import later

_FOLIAGE_BEFORE = later(r"\b(?:foliage|leaves)(?: (?:stands?|grows?|is|are|mounds?|about|to))?[ \n]$", re.I)
"""Beside the height in flower that of the foliage is the plant's own."""


def tail_of(text: str, measure: Measure, label: Label | None) -> re.Match[str] | None:
    """The word behind a length that says what it is; in the next line it may be the label of the next."""
    tail = TAIL.match(text, measure.span[1])
    if tail and tail[0].startswith("\n") and LABELS_NEXT.match(text, tail.end()):
        return tail if label is None and text[tail.end() : tail.end() + 1] == "\n" else None
    needed = _NEEDS.get(tail.lastgroup or "") if tail else None
    if needed and not (label is None and needed.search(text, max(0, measure.span[0] - 60), measure.span[0])):
        return None
    return tail


_STEM_BEFORE = later(
    r"(?:^|[\n\t]|[.;] )stem[ :]{1,2}(?:about |to )?$",
    re.I,
)
"""One stem, at the head of a sentence: that of a bulb's flower as likely as the whole plant."""
_ON_STEMS = later(
    r"\b(?:flowers?|blooms?|blossoms?|spathes?|bells|stars|trumpets|daisies|white|pink|red|blue|yellow"
    r"|sails|trusses|heads)\b[^.;\t]{0,40}[ \n]on[ \n](?:[a-z-]+[ \n]){0,2}(?:stems|stalks|scapes|spikes)"
    r"(?:[ \n](?:up to|about|to))?[ \n]$",
    re.I,
)
"""How tall the stems are on which the flowers stand."""
_CUT_TO = later(
    r"(?:^|[.;!?]\s|[\n\t](?:[-–•*] )?)(?:cut|shear|mow|trim|prune)(?: it| them| clumps?| back| down| off"
    r"| hard| all)*\b[^.;:\n\t]{0,40}, ?$",
    re.I,
)
"""A sentence of cutting: its height is where to cut."""
_IN_ROW = later(r"\bin\s(?:the\s)?rows?\b", re.I)
_ON = later(r"\b(?:on|at|to)[ \n](?:(?:about|staggered|roughly|even)[ \n])?$", re.I)
_ALLOWED = later(r"\b(?:allow|leave|give)[ \n](?:(?:about|at least|some)[ \n])?$", re.I)
_NEEDS = {"each": _ALLOWED, "stems": BLOOM_BEFORE, "plant": PLANT_BEFORE, "between": _IN_ROW, "centres": _ON}
_NAMED = {
    "each": "spacing",
    "stems": "flower_height",
    "plant": "height",
    "between": "row_spacing",
    "centres": "spacing",
}
"""Nouns behind a length that say what it is only after the words they need."""


def by_tail(tag: Measured, measure: Measure, tail: re.Match[str]) -> tuple[tuple[str, ...], float]:
    """ "12 in tall", "18 in apart": the kinds a word after the length names, and how sure."""
    kind, before = _NAMED.get(tail.lastgroup or "", tail.lastgroup or ""), tag.text[: measure.span[0]]
    certainty = 0.85 if "\n" in tail[0] or tail.lastgroup == "plant" else 0.95
    if kind == "none":
        return (), 0.0
    if kind in {"spacing", "row_spacing"}:
        if _ROWS_NEXT.match(tag.text, tail.end()):
            before = _CANES.sub("plants ", before)
        return _apart(kind, tail[0], before, certainty)
    if FOREIGN_NOUN_AFTER.match(tag.text, tail.end()):
        return (), 0.0
    if kind == "height" and _FOLIAGE_BEFORE.search(before) and FLOWER_TOO.search(tag.text):
        return (kind,), 0.9 * certainty
    if (measure.length.max_cm or 0) >= CROWN:
        before = CROWN_BEFORE.sub(" ", before)
    before = PARTS_ON_PLANT.sub("plant ", PLANT_OF_LEAVES.sub("plant", before))
    if kind == "height" and _ON_STEMS.search(before):
        return ("flower_height",), 0.9 * certainty
    if kind != "flower_height":
        if FOREIGN_BEFORE.search(before) or OF_PART.search(before) or _CUT_TO.search(before):
            return (), 0.0
        if FOREIGN_EARLIER.search(before):
            certainty *= 0.85 if _fills_row(tag.text, measure.span[0], tail.end()) else 0.5
        if _STEM_BEFORE.search(before) or (kind == "spread" and (measure.length.max_cm or 0) < _OF_FLOWER):
            certainty *= 0.45
    return (("height", "spread") if kind == "both" else (kind,)), certainty


def _fills_row(text: str, start: int, end: int) -> bool:
    """Whether a length and its word are a line of a list, which the line above does not run into."""
    above, _, own = text[:start].rpartition("\n")
    ends = text[end : end + 1] in ("", "\n")
    return ends and not any(map(str.isalnum, own)) and not is_torn(above.rpartition("\n")[2])


_OF_FLOWER = 8.0
"""In cm; what is no wider is a flower rather than a plant."""

_ROWS_NEXT = later(r",?[ \n](?:and |with |in )?rows? ", re.I)
_CANES = later(r"(?:^|(?<=[\n.;] )|(?<=\n))canes? (?:set )?$", re.I)
"""Before the rows they stand in, canes are the plants, no supports."""
_EACH_WAY = later(r"each way|each direction", re.I)
_SET = later(r"\b(?:spac\w+|plant\w*|set|thin\w*|sow\w*|allow|leave|give|apart|cent(?:re|er)s?)\b", re.I)
_GROWN = later(r"\b(?:grow\w*|reach\w*|figure on|expect|count on|reckon on|matures?|makes?|gets?)\b", re.I)


def _clause(before: str) -> str:
    """What stands before a length in its own sentence."""
    return re.split(r"[.;:!?]\s|\n\n", before[-80:])[-1]


def _apart(kind: str, tail: str, before: str, certainty: float) -> tuple[tuple[str, ...], float]:
    if _EACH_WAY.search(tail) and not _SET.search(clause := _clause(before)) and _GROWN.search(clause):
        return ("height", "spread"), 0.8 * certainty  # a plant that grows so far each way
    if kind == "spacing" and ROWS_BEFORE.search(before):
        return ("row_spacing",), certainty
    if (kind == "spacing" and POSTS_BEFORE.search(before)) or re.search(r"\d ?[x×] ?$", before):
        return (), 0.0
    if kind == "spacing" and SOWING_BEFORE.search(before):
        certainty *= 0.65  # how far apart seeds go is often thinned later
    return (kind,), certainty
