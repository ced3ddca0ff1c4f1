"""What each word of a text is likely to tell of, learnt from tags that people typed.

The patterns of `fields/` know what they were taught; this knows by example, and doubts what a pattern took
for something else or cut short: a second reader of words, as there is a second reader of letters. Where no
pattern finds a fact it says which words may tell of it. It is a conditional random field (CRFsuite), fitted
by `samples/fit_meaning.py`.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

import pycrfsuite

from ocr_tags.meaning.features import Token, features
from ocr_tags.record import LineSpan, TagText

BEGINS, GOES_ON, NOTHING = "B-", "I-", "O"
UNKNOWN = 0.5
KNOWN_FROM_LISTS = frozenset(["common_names", "botanical_name"])
"""Facts that lists of names know better than a thousand examples."""
KEPT = 64
"""Texts of which the meaning is kept: all of both sides of a tag, which many fields ask for."""


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a text's words tell of. By fact, and for each token: the chance that it begins to tell of it, and
    the chance that it goes on with what the token before told."""

    tokens: tuple[Token, ...]
    begins: Mapping[str, Sequence[float]]
    goes_on: Mapping[str, Sequence[float]]

    def chance(self, fact: str, span: tuple[int, int]) -> float:
        """The mean chance, 0 to 1, that a span's words tell of this fact; UNKNOWN where none was learnt."""
        inside = self._inside(span)
        if fact not in self.begins or not inside:
            return UNKNOWN
        return sum(self.begins[fact][at] + self.goes_on[fact][at] for at in inside) / len(inside)

    def beyond(self, fact: str, span: tuple[int, int]) -> float:
        """The chance, 0 to 1, that a span leaves out the word before it or behind it."""
        inside = self._inside(span)
        if fact not in self.begins or not inside:
            return 0.0
        edges = (inside[0], inside[-1] + 1)
        return max(self.goes_on[fact][at] if at < len(self.tokens) else 0.0 for at in edges)

    def told(self, fact: str) -> Iterator[tuple[int, int, float]]:
        """Where words likelier than not tell of this fact: from where to where in the text, and the chance,
        that of the weakest of its tokens, that they all do and the token behind them does not."""
        begins, goes_on = self.begins.get(fact, ()), self.goes_on.get(fact, ())
        for first, begun in enumerate(begins):
            if begun <= UNKNOWN:
                continue
            behind = next((at for at in range(first + 1, len(begins)) if goes_on[at] <= UNKNOWN), len(begins))
            after = 1 - goes_on[behind] if behind < len(begins) else 1.0
            yield (
                self.tokens[first].start,
                self.tokens[behind - 1].end,
                min(begun, after, *goes_on[first + 1 : behind], 1.0),
            )

    def _inside(self, span: tuple[int, int]) -> range:
        first = bisect_right(self.tokens, span[0], key=lambda token: token.end)
        return range(first, bisect_left(self.tokens, span[1], key=lambda token: token.start))


def meaning(tag: TagText) -> Meaning:
    """What the words of a text tell of."""
    return _of(tag.string, tag.lines)


@lru_cache(maxsize=KEPT)
def _of(string: str, lines: tuple[LineSpan, ...]) -> Meaning:
    tokens, seen = features(TagText(string, lines=lines))
    if not tokens:
        return Meaning((), {}, {})
    tagger = _tagger()
    tagger.set(pycrfsuite.ItemSequence(seen))
    begins, goes_on = (
        {fact: [tagger.marginal(sign + fact, at) for at in range(len(tokens))] for fact in _facts()}
        for sign in (BEGINS, GOES_ON)
    )
    return Meaning(tuple(tokens), begins, goes_on)


@cache
def _tagger() -> pycrfsuite.Tagger:
    tagger = pycrfsuite.Tagger()
    tagger.open_inmemory(_model())
    return tagger


@cache
def _model() -> bytes:
    """Kept for as long as the tagger: it reads from these very bytes and holds no copy."""
    return files("ocr_tags").joinpath("data", "meaning.crfsuite").read_bytes()


@cache
def _facts() -> tuple[str, ...]:
    """The facts that were learnt of, in one word and in several."""
    labels = _tagger().labels()
    begun = [label.removeprefix(BEGINS) for label in labels if label.startswith(BEGINS)]
    return tuple(fact for fact in begun if GOES_ON + fact in labels and fact not in KNOWN_FROM_LISTS)
