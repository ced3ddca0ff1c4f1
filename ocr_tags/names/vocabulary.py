"""Every word that tags and the names of plants are made of: what is none of them is somebody's own name."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files

from rapidfuzz import process
from rapidfuzz.distance import OSA

from ocr_tags.names import lexicon

_LISTS = ("tag_words.txt", "field_words.txt", "name_words.txt", "not_names.txt", "colour_words.tsv")
_DAMAGED_FROM = 6
"""Letters from which on a word with one wrong letter counts as that word misread."""


def is_tag_word(word: str) -> bool:
    """Whether tags or plants' common names use this word, one wrong letter of a long one allowed for.

    >>> is_tag_word("Woodland"), is_tag_word("Flowerng"), is_tag_word("Elmerton")
    (True, True, False)
    """
    plain = word.casefold()
    if plain in _words() or len(plain) < _DAMAGED_FROM:
        return plain in _words()
    return process.extractOne(plain, _words(), scorer=OSA.distance, score_cutoff=1) is not None


def is_care_word(word: str) -> bool:
    """Whether tags use this word of what plants need, are and draw, as against the names of plants.

    >>> is_care_word("Butterflies"), is_care_word("Thistle")
    (True, False)
    """
    return word.casefold() in _care_words()


@cache
def _care_words() -> frozenset[str]:
    lists = " ".join(files("ocr_tags").joinpath("data", name).read_text("utf-8") for name in _LISTS[:2])
    return frozenset(re.findall(r"[^\W\d_]{2,}", lists.casefold()))


@cache
def _words() -> frozenset[str]:
    lists = " ".join(files("ocr_tags").joinpath("data", name).read_text("utf-8") for name in _LISTS)
    names = " ".join(" ".join((plant.name, *plant.common_names)) for plant in lexicon.plants())
    return frozenset(re.findall(r"[^\W\d_]{2,}", f"{lists} {names}".casefold()))
