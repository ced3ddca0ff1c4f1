"""The different words of all names in the index, and which of them a misspelt word may stand for.

A hundred thousand tags have only some tens of thousands of different words, so looking at every one of
about the right length is cheaper than asking the index for words within some distance.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from functools import cached_property

from rapidfuzz import process
from rapidfuzz.distance import OSA

from index.folding import shape

SAME_SHAPE = 0.98
_NEAREST = 100
_BEGINNINGS = 1_000
_HALF = 3
_PART = 5
_REMEMBERED = 5_000

Fits = dict[str, float]
"""Words of the index that a word asked for may stand for, and how well each fits, 0 to 1."""


class Vocabulary:
    """`words` are folded. Their shapes are only made when a word is asked for that is not among them."""

    def __init__(self, words: list[str]) -> None:
        self._words = sorted(words)
        self._known = frozenset(words)
        self._seen: dict[str, Fits] = {}

    def __contains__(self, word: str) -> bool:
        return word in self._known

    def beginning(self, start: str) -> list[str]:
        """The longer words beginning so, in alphabetical order; none for a single letter."""
        if len(start) < 2:
            return []
        first = bisect_left(self._words, start)
        last = bisect_left(self._words, start + "\U0010ffff")
        return [word for word in self._words[first : min(last, first + _BEGINNINGS)] if word != start]

    def halves(self, word: str) -> Iterator[tuple[str, str]]:
        """The ways to part a word into two known ones."""
        for cut in range(_HALF, len(word) - _HALF + 1):
            if word[:cut] in self._known and word[cut:] in self._known:
                yield word[:cut], word[cut:]

    def parts(self, word: str) -> list[str]:
        """Known words, of five letters or more, that a word begins or ends with."""
        cuts = range(_PART, len(word) - _HALF + 1)
        return [part for cut in cuts for part in (word[:cut], word[-cut:]) if part in self._known]

    def near(self, word: str) -> Fits:
        """The nearest words; of a known word too, for other tags may have it misread."""
        found = self._seen.get(word)
        if found is None:
            if len(self._seen) >= _REMEMBERED:
                self._seen.clear()
            found = self._seen[word] = dict(self._nearest(word))
        return found

    def _nearest(self, word: str) -> Iterator[tuple[str, float]]:
        key = shape(word)
        most = faults_allowed(len(key))
        near = process.extract(
            key, self._of_length(len(key), most), scorer=OSA.distance, limit=_NEAREST, score_cutoff=most
        )
        for text, faults, _ in near:
            for each in self._by_shape[text]:
                yield each, likeness(word, each, faults)

    def _of_length(self, length: int, most: int) -> list[str]:
        """The shapes that are not too long or short to be near."""
        first = bisect_left(self._lengths, length - most)
        last = bisect_left(self._lengths, length + most + 1)
        return self._shapes[first:last]

    @cached_property
    def _by_shape(self) -> dict[str, list[str]]:
        found: dict[str, list[str]] = {}
        for word in self._words:
            found.setdefault(shape(word), []).append(word)
        return found

    @cached_property
    def _shapes(self) -> list[str]:
        return sorted(self._by_shape, key=len)

    @cached_property
    def _lengths(self) -> list[int]:
        return [len(text) for text in self._shapes]


def likeness(word: str, other: str, faults: int) -> float:
    """0 to 1, from the faults between the shapes; those between the letters themselves count as much."""
    if word == other:
        return 1.0
    if not faults:
        return SAME_SHAPE
    plain = OSA.normalized_similarity(word, other)
    return (1 - faults / max(len(word), len(other)) + plain) / 2


def faults_allowed(length: int) -> int:
    """How many letters may be wrong in a word of this length before it is another word."""
    return 0 if length < 3 else 1 if length < 5 else 2 if length < 9 else 3
