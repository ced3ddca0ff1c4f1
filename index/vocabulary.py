"""The different words of all names in the index, and which of them a misspelt word may be.

A hundred thousand tags have only some eight thousand different words, so looking at every one is
cheaper than asking the index for words within some distance.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from itertools import takewhile
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import OSA

from index.folding import shape

NEAREST = 5
_NEAR = 0.6
_BEGINNINGS = 30
_HALF = 3


class Near(NamedTuple):
    """A word shape of the index, and how near it is to the word asked for, 0 to 1."""

    shape: str
    fit: float


class Vocabulary:
    """`words` are folded words, `shapes` their look-alike keys."""

    def __init__(self, words: list[str], shapes: list[str]) -> None:
        self._words = sorted(words)
        self._shapes = shapes
        self._known = frozenset(shapes)
        self._seen: dict[str, tuple[Near, ...]] = {}

    def has(self, word: str) -> bool:
        return shape(word) in self._known

    def beginning(self, start: str) -> list[str]:
        """Folded words beginning so, the first few in alphabetical order; none for a single letter."""
        if len(start) < 2:
            return []
        place = bisect_left(self._words, start)
        found = takewhile(lambda word: word.startswith(start), self._words[place : place + _BEGINNINGS])
        return list(found)

    def near(self, word: str) -> tuple[Near, ...]:
        """The nearest word shapes, best first; of a known word too, for other tags may have it misread."""
        key = shape(word)
        if key not in self._seen:
            found = process.extract(
                key, self._shapes, scorer=OSA.normalized_similarity, limit=NEAREST, score_cutoff=_NEAR
            )
            self._seen[key] = tuple(Near(text, fit) for text, fit, _ in found)
        return self._seen[key]

    def readings(self, words: tuple[str, ...]) -> list[tuple[str, ...]]:
        """The words as typed, with neighbours joined, and with a word split in two; the likeliest first.

        A reading with a word that nothing is near to is left out.
        """
        found = dict.fromkeys((words, *_joined(words), *self._split(words)))
        scored = [(self._score(reading), reading) for reading in found]
        return [reading for score, reading in sorted(scored, key=lambda s: -s[0]) if score > 0]

    def _split(self, words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        for place, word in enumerate(words):
            for cut in range(_HALF, len(word) - _HALF + 1):
                if self.has(word[:cut]) and self.has(word[cut:]):
                    yield (*words[:place], word[:cut], word[cut:], *words[place + 1 :])

    def _score(self, words: tuple[str, ...]) -> float:
        fits = [(len(word), max((near.fit for near in self.near(word)), default=0.0)) for word in words]
        if not all(fit for _, fit in fits):
            return 0.0
        return sum(length * fit for length, fit in fits) / sum(length for length, _ in fits)


def _joined(words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for place in range(len(words) - 1):
        yield (*words[:place], words[place] + words[place + 1], *words[place + 2 :])
