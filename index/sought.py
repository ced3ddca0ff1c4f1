"""The words of a question, and which words of the index each may stand for."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import NamedTuple

from index.vocabulary import Fits, Vocabulary

LAST_BEGUN = 0.95
BEGUN = 0.9
KNOWN_BEGUN = 0.65
_SHORTENED = 4
_GLUED, _GLUED_LONGER = 0.8, 2
_WELL_KNOWN = 3
_ANOTHER = 0.75
_RARE = 0.05


class Sought(NamedTuple):
    """`fits` has an entry for every word; `together` for every place whose word and the next, run together,
    may be one word of the index."""

    words: tuple[str, ...]
    fits: tuple[Fits, ...]
    together: dict[int, Fits]


def spelt(words: tuple[str, ...], vocabulary: Vocabulary) -> Sought:
    """The words as typed, whole, begun or parted: spelt right as far as they go."""
    fits = tuple(_spelt(word, vocabulary, last=place == len(words)) for place, word in enumerate(words, 1))
    glued = {place: left + right for place, (left, right) in enumerate(pairwise(words))}
    together: dict[int, Fits] = {
        place: {word: 1.0} if word in vocabulary else {} for place, word in glued.items()
    }
    return Sought(words, fits, together)


def misspelt(words: tuple[str, ...], vocabulary: Vocabulary, count: Callable[[str], int]) -> Sought:
    """The same, and every word of the index that is near; `count` is of how many tags have a word."""
    right = spelt(words, vocabulary)
    fits = tuple(
        {**_near(word, vocabulary, count), **fits} for word, fits in zip(words, right.fits, strict=True)
    )
    together = {place: _glued(words[place], words[place + 1], vocabulary) for place in right.together}
    return Sought(words, fits, together)


def _glued(left: str, right: str, vocabulary: Vocabulary) -> Fits:
    """What two words run together may be: nothing that one of them alone is as near to."""
    length = max(len(left), len(right)) + _GLUED_LONGER
    near = vocabulary.near(left + right)
    return {each: fit for each, fit in near.items() if fit >= _GLUED and len(each) >= length}


def _near(word: str, vocabulary: Vocabulary, count: Callable[[str], int]) -> Fits:
    """A word that tags have is hardly another of theirs misspelt, unless one of the two is rare: misread."""
    if len(word) < 2:
        return {}
    near, own = vocabulary.near(word), count(word)
    if own < _WELL_KNOWN:
        return near
    return {each: fit * (_ANOTHER if _is_another(own, count(each)) else 1) for each, fit in near.items()}


def _is_another(own: int, other: int) -> bool:
    return other >= _WELL_KNOWN and min(own, other) >= _RARE * max(own, other)


def _spelt(word: str, vocabulary: Vocabulary, *, last: bool) -> Fits:
    """One in the middle is only taken for a beginning when it is no word itself, or short: "S. nem. X"."""
    if word in vocabulary:
        short = last or len(word) <= _SHORTENED
        return {**(dict.fromkeys(vocabulary.beginning(word), KNOWN_BEGUN) if short else {}), word: 1.0}
    return dict.fromkeys(vocabulary.beginning(word), LAST_BEGUN if last else BEGUN)
