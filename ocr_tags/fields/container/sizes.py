"""Which sizes pots are made in, and a printed size as it is kept."""

from __future__ import annotations

import re
from collections.abc import Mapping

from ocr_tags.fields.container.words import LENGTH
from ocr_tags.patterns import later

_MEASURE = later(
    rf"(?P<whole>\d{{1,3}})(?:[.,]\d{{1,2}})?(?: ?[-/]? ?(?P<top>\d)/(?P<under>\d)| ?[½¼¾])? ?"
    rf"(?:(?P<mm>mm\b)|(?P<cm>cm\b|[ø∅⌀])|(?P<inch>{LENGTH})|(?P<gallon>gal|-gal)"
    r"|(?P<litre>(?:lt?|ltr|lit(?:re|er|ro)s?)\b))"
)
LARGEST = {"mm": 999, "cm": 100, "inch": 36, "gallon": 100, "litre": 400}
"""No pot of the trade is wider or holds more (common practice, no source): a greater figure is misread."""
_LARGEST_BROKEN = 12
"""No larger pot is told in parts of an inch (common practice, no source): "31½ in" is 3½ in."""
WIDEST_PRICED = {"mm": 300, "cm": 30, "inch": 12}
PLANTING = later(
    r"(?<!applied )\b(?:in|i|dans|für|pour|voor|into|with|of|to|for|use|add|per|each|every|fill|large"
    r"|least|our|than"
    r"|min(?:imum)?\.?|suits?|fits?|fills?|plants?(?!\n))\s(?:an? |at least |eine[mnr]? |e?en |et |une? )*$"
    r"|\bholes?\W{0,3}$"
)


def is_made(folded: str, largest_of: Mapping[str, int] = LARGEST) -> bool:
    """Whether pots of the sizes printed are made: none is 444 in. wide, and 4/2 is no part of an inch.

    >>> is_made('4-1/2" pot'), is_made('444" pot'), is_made('4 4/2" pot'), is_made("0 gal")
    (True, False, False, False)
    """
    for size in _MEASURE.finditer(folded):
        largest = largest_of[size.lastgroup or "cm"]
        part = size["top"] is None or (size["top"] < size["under"] and size["under"] in "2348")
        if size["inch"] and re.search(r"[/½¼¾]", size[0]):
            largest = _LARGEST_BROKEN
        if not part or int(size["whole"]) > largest or not re.search("[1-9½¼¾]", size[0]):
            return False
    return True


def clean_size(text: str) -> str:
    """A printed size on one line, without what stands round it."""
    plain = _WORN_ONE.sub("1", " ".join(text.split()).strip(" ,;:|•"))
    return _ACROSS.sub(r"Ø \1 cm", plain)


_WORN_ONE = later(r"^[Il](?= ?(?:gal|L\b|qt|quart|pt))")
_ACROSS = later(r"[Øø∅⌀] ?(\d+(?:[.,]\d)?) ?cm\b")
