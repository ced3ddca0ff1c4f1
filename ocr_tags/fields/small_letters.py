"""Tags in small letters throughout, where a small letter at a line's head tells nothing of sentences."""

from __future__ import annotations

import re
from itertools import pairwise, takewhile


def all_small(text: str, at: int) -> bool:
    """Whether the lines around are all in small letters: then these tell nothing of sentences."""
    begin = text.rfind("\n\n", 0, at) + 1
    block = text[begin : end if (end := text.find("\n\n", at)) >= 0 else len(text)]
    heads = [line.strip()[:1] for line in re.split(r"[\t\n]|[.!?] ", block)]
    every = sum(head.islower() for head in heads) >= 3 and not any(head.isupper() for head in heads)
    return every or _ended_on_purpose(text, at)


_ROOM, _MOST, _SEVERAL = 0.75, 0.5, 3
"""A line had room for the next word below this share of the width; how many breaks of a list had it."""


def _ended_on_purpose(text: str, at: int) -> bool:
    r"""Whether the line stands in a list in small letters: most lines had room for the word that follows.

    >>> tag = "to 30 cm\nfull sun\nno feed, no fuss at all\nplug of 50\nwet feet rot it"
    >>> _ended_on_purpose(tag, 12)
    True
    >>> _ended_on_purpose("water well while\nthe roots are\nyoung and the\ntop dry", 0)
    False
    """
    begin = text.rfind("\n", 0, at) + 1
    lines = text[begin:].split("\n")
    after = list(takewhile(_is_small, lines))
    before = list(takewhile(_is_small, reversed(text[: max(begin - 1, 0)].split("\n")))) if after else []
    run = [*reversed(before), *after]
    width = _ROOM * max(map(len, run), default=0)
    room = sum(len(one) + 1 + len(next_.split()[0]) <= width for one, next_ in pairwise(run))
    return room >= max(_SEVERAL, _MOST * (len(run) - 1))


def _is_small(line: str) -> bool:
    head = line.strip()[:1]
    return bool(head) and "\t" not in line and not head.isupper()
