"""Whether a running sentence says that the plant is of a kind: "Give this perennial part shade"."""

from __future__ import annotations

from ocr_tags.fields.kind.clauses import (
    AMONG_ALL,
    AS_ONE,
    ENDS_THERE,
    FROM_WHERE,
    GIVEN,
    GOES_ON,
    GROWN_AS,
    HEADLESS,
    IT_DOES,
    NO_COMPOUND,
    NOT_ONE,
    OF_HEADLESS,
    OF_PLANT,
    OF_THIS,
    ONE_OF_ALL,
    SENTENCE,
    THIS,
    TREATED,
    WHOLE,
)
from ocr_tags.fields.phrases import flowing

LIVES = frozenset(("annual", "perennial", "biennial", "tender_perennial"))
"""How long a plant lives goes before what it is: Perennial grass, Annual vine."""
PARTS_TOO = frozenset(("fruit", "vine"))
"""Kinds that are parts of plants as well, and so labels."""
_NO_FORM = frozenset(("fruit", "vine", "houseplant", *LIVES))
"""Kinds no gardener makes of a plant by pruning."""


def told_in_sentence(text: str, kind: str, start: int, end: int) -> float:
    """How sure it is that the sentence around a kind word is about this plant; 0 when it is not.

    >>> told_in_sentence("Give this shrub room.", "shrub", 10, 15)
    0.8
    >>> told_in_sentence("Near a shrub", "shrub", 7, 12)
    0.0
    """
    flow = flowing(text)
    before = flow[max(0, start - 70) : start]
    if (THIS.search(before) and OF_THIS.match(flow, end)) or (
        GIVEN.search(before) and NO_COMPOUND.match(flow, end)
    ):
        return 0.8
    if text[start].islower() and kind not in _NO_FORM and GROWN_AS.search(before):
        return 0.7
    if HEADLESS.search(before) and _after_comma(text, kind, start, end) and OF_HEADLESS.match(flow, end):
        return 0.75
    if (ONE_OF_ALL.search(before) and AMONG_ALL.match(flow, end)) or (
        AS_ONE.search(before) and IT_DOES.match(flow, end)
    ):
        return 0.75
    if kind in LIVES and TREATED.search(before) and ENDS_THERE.match(flow, end):
        return 0.85
    flow, before = flow.replace("\n", " "), before.replace("\n", " ")
    opens = None if NOT_ONE.search(before) else SENTENCE.search(before)
    told = OF_PLANT.match(flow, end) or (kind in LIVES and FROM_WHERE.match(flow, end))
    return 0.85 if opens and told else 0.0


def _after_comma(text: str, kind: str, start: int, end: int) -> bool:
    """Not a name and its height: "Maidenhair Fern, 30 cm", "tomato vine, 2 m"."""
    return text[end : end + 1] != "," or (text[start].islower() and kind not in PARTS_TOO)


def opens_value(folded: str, value: int, start: int, end: int) -> bool:
    """Whether a labelled value begins with the kind and goes on: "Type: lax climber for walls"."""
    flow = folded.replace("\n", " ")
    return WHOLE.fullmatch(folded, value, start) is not None and bool(
        GOES_ON.match(flow, end) or FROM_WHERE.match(flow, end)
    )
