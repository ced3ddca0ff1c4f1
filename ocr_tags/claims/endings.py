"""Where a phrase begins and ends. A pattern lets it run over a line end, as sentences do, and stops at a word
it was never taught; whether the words there still tell of the same fact, their meaning says better."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.values import is_torn
from ocr_tags.meaning.model import Meaning, meaning
from ocr_tags.patterns import later
from ocr_tags.record import Field, Found, TagText

OWN, OTHER = 0.7, 0.15
"""Chances by meaning: what stands before a line end tells of the fact, what stands behind it does not."""
WHOLE = 0.8
"""From this chance on, words beside a phrase belong to it: so far 20 in 21 were right on typed tags."""
NAMES = frozenset(["supplier", "series"])
"""What stands beside a name, a town or a number, is much like it."""
_BULLET = later(r"(?:[¢*«»©®°•·▪■●◦‣¤›] ?)+")
"""The dot before an item of a list, and what readers make of it."""
_UNDER = later(r"[a-z]+ (?:types?|needs?|requirements?|preferences?|levels?)", re.I)
"""A label under its value, which no phrase ends with: "Rich loam" over "soil type"."""
_LEAD = later(r"[^.;]*(?:[:–—-]|\b(?:in|on|into)) *", re.I)
"""A label, or words that lead to a phrase and are none of it: "does well in" light, sandy soil."""


def ending_where_meant(tag: TagText, field: Field[Any], found: Found[Any]) -> Found[Any]:
    """The finding, without lines that tell of something else, with words of its own line that were left out.

    Only words kept as printed are changed: a figure or a class is not a part of its print.
    """
    start, end = found.span
    if (
        field.shape != "one"
        or not isinstance(found.value, str)
        or found.value != _as_value(tag.string[start:end])
    ):
        return found
    told = meaning(tag)
    start, end = _with_own_words(
        tag.string, told, field.name, _own_lines(tag.string, told, field.name, start, end)
    )
    if dot := _BULLET.match(tag.string, start):
        start = dot.end()
    kept = tag.string[start:end].rstrip(" .,;\n")
    return replace(found, value=_as_value(kept), span=(start, start + len(kept)))


def _own_lines(text: str, told: Meaning, fact: str, start: int, end: int) -> tuple[int, int]:
    for at in (n for n in range(start, end) if text[n] == "\n"):
        if _UNDER.fullmatch(text, at + 1, end) and is_label(text[at + 1 : end]):
            return start, at
        own, other = told.chance(fact, (start, at)), told.chance(fact, (at + 1, end))
        if own > OWN and other < OTHER and not is_torn(text[start:at]):
            return start, at
    return start, end


def _with_own_words(text: str, told: Meaning, fact: str, span: tuple[int, int]) -> tuple[int, int]:
    start, end = span
    for first, last, chance in told.told(fact) if fact not in NAMES else ():
        before, behind = text[first:start], text[end:last]
        holds = first <= start and end <= last and chance >= WHOLE
        leads = _LEAD.fullmatch(before) or is_label(before.strip())
        if holds and not set("\n\t") & set(before + behind) and not leads:
            return first, last
    return span


def _as_value(printed: str) -> str:
    return " ".join(printed.split()).rstrip(" .,;")
