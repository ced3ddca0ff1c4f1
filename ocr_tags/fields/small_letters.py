"""Tags in small letters throughout, where a small letter at a line's head tells nothing of sentences."""

from __future__ import annotations

import re
from itertools import pairwise, takewhile

from ocr_tags.patterns import later


def all_small(text: str, at: int, end: int | None = None) -> bool:
    """Whether the lines around are all in small letters: then these tell nothing of sentences.

    Where only most are, it must also be plain that the line that ends at `end` was ended on purpose.
    """
    begin = text.rfind("\n\n", 0, at) + 1
    block = text[begin : stop if (stop := text.find("\n\n", at)) >= 0 else len(text)]
    heads = [line.strip()[:1] for line in re.split(r"[\t\n]|[.!?] ", block)]
    every = sum(head.islower() for head in heads) >= 3 and not any(head.isupper() for head in heads)
    return every or (in_list(text, at) and (end is None or _ended(text, at, end)))


_ROOM, _MOST, _SEVERAL = 0.75, 0.5, 3
"""A line had room for the next word below this share of the width; how many breaks of a list had it."""
_MEASURE_END = later(
    r"(?i)(?:\d[°'’”\"]?|\b(?:cm|mm|m|ft|in|feet|inches|jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov"
    r"|dec))\.?$"
)


def ended_on_purpose(line: str, following: str, width: int) -> bool:
    """Whether a line was not full: it ends in a measure or month, or had room for the word that follows.

    >>> ended_on_purpose("to 30 cm", "poisonous", 18), ended_on_purpose("all parts are", "poisonous", 13)
    (True, False)
    """
    room = len(line) + 1 + len(following.split()[0]) <= _ROOM * width
    return room or bool(_MEASURE_END.search(line))


def in_list(text: str, at: int) -> bool:
    r"""Whether the line stands in a list in small letters: most of its lines were ended on purpose.

    >>> in_list("to 30 cm\nfull sun\nno feed, no fuss at all\nplug of 50\nwet feet rot it", 12)
    True
    >>> in_list("water well while\nthe roots are\nyoung and the\ntop dry", 0)
    False
    """
    run = _run(text, at)
    width = max(map(len, run), default=0)
    ended = sum(ended_on_purpose(one, next_, width) for one, next_ in pairwise(run))
    return ended >= max(_SEVERAL, _MOST * (len(run) - 1))


def _run(text: str, at: int) -> list[str]:
    """The lines in small letters among which that at `at` stands."""
    begin = text.rfind("\n", 0, at) + 1
    after = list(takewhile(_is_small, text[begin:].split("\n")))
    before = list(takewhile(_is_small, reversed(text[: max(begin - 1, 0)].split("\n")))) if after else []
    return [*reversed(before), *after]


def _ended(text: str, at: int, end: int) -> bool:
    line, below = re.split(r"[\t\n]", text[:end])[-1], re.split(r"[\t\n]", text[end + 1 :], maxsplit=1)[0]
    return bool(below.strip()) and ended_on_purpose(line, below, max(map(len, _run(text, at))))


def _is_small(line: str) -> bool:
    head = line.strip()[:1]
    return bool(head) and "\t" not in line and not head.isupper()
