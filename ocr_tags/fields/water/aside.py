"""Water in which a plant stands, which nobody gives, and what answers "Thirsty?"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.phrases import clean, flowing, fold
from ocr_tags.fields.values import value_end
from ocr_tags.fields.water.talk import TALK
from ocr_tags.patterns import later
from ocr_tags.record import Found

_UNDER_WATER = later(r"(?i)\b(?:above|below|under|in|over|of) (?:the )?water\W*\Z")


def place_of_water(text: str, found: Found[str]) -> bool:
    """Whether the label is none: "Height above water"."""
    if _OVER_POT.match(flowing(text), found.span[0]):
        return True
    if _DEEP.match(flowing(text), found.span[0]) or _OVER_CROWN.match(fold(found.value)):
        return bool(_DEPTH_BEFORE.search(text, max(0, found.span[0] - 24), found.span[0]))
    return bool(_UNDER_WATER.search(text[: found.span[0]]))


_CROWN = r"(?:the |its )?(?:crowns?|roots?|rhizomes?|tubers?|pots?|plants?|baskets?|soil|rims?|surface)\b"
_OVER_CROWN = later(rf"(?:over|above|covering|on top of)\s{_CROWN}")
_DEEP = later(rf"water\s(?:over|above|covering|on top of)\s{_CROWN}")
_OVER_POT = later(rf"water\s(?:over|above|covering|on top of)\s{_CROWN}\s*(?:[:\t\n]|\.{{2,}}|$|\d)")
"""The label of that depth, its figure behind it or in the next column."""
_DEPTH_BEFORE = later(r"\d ?(?:cm|mm|m|in|ft|inches|feet)?\b\.?[\"”″]?\s(?:of\s)?(?:water\s)?\Z", re.I)
"""So deep a pond plant stands: "30 cm water over crown"."""


_QUESTION = later(
    r"(?i)(?:^|(?<=[\n\t])|(?<=[.!?] ))(?:(?:is it|am i|are (?:we|they)|is she|is he) )?"
    r"(?:thirsty|wet)\?[ \t]?"
)


def thirsty(text: str) -> Iterator[Found[str]]:
    """What answers "Thirsty?", with the sentence that says how: "Hardly. A cup each month"."""
    for asked in _QUESTION.finditer(text):
        end = value_end(text, asked.end())
        if text[asked.end() : end].count(" ") < 2 and (gap := later(r"[.!][ \n]").match(text, end)):
            more = value_end(text, gap.end())
            end = more if TALK.own.search(flowing(text), gap.end(), more) else end
        phrase = clean(text[asked.end() : end])
        if 3 < len(phrase) <= 160:
            yield Found(phrase, (asked.end(), end), 0.9)
