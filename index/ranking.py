"""How well the names of a record answer a question, and why, in plain words.

Two things count: how much of the question the record's words cover, and how near the whole question
comes to one whole name of it ("salvia caradonna" to genus and cultivar). Whole names alone would miss
a question that mixes supplier and plant; words alone would put "Lavender Cotton" level with "Lavender".
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA

from index.entries import Kind, Name
from index.folding import fold, shape

COVERAGE = 0.45
"""Share of the score that words covered have; the rest is the nearest whole name."""

GOOD_WORD = 0.8
GOOD_LONG_WORD = 0.83
GOOD_WHOLE = 0.88
"""An answer is good when every word fits this well (long ones share their endings: -flower, -folia), or the
whole question fits a whole name this well and every word half. See `index.benchmark` for what that gives."""

_FIRST_LETTER_ONLY = 0.9
_BEGINNING = 0.95
_TOGETHER = 0.85
# Only to break ties: "cherry pie" is not "pie cherry", and "lotus" is first what is called so in full.
_OTHER_ORDER, _RUN_TOGETHER, _SHORTENED = 0.98, 0.99, 0.98
_TRUST = {"may be": 0.93, "other reading": 0.96, "supplier": 0.9, "series": 0.97, "old name": 0.99}
_QUALIFIERS = frozenset(("cultivar", "trade designation", "series", "supplier"))
_MAIN = frozenset(("common name", "botanical name", "plant", "also called", "old name", "other reading"))


class Title(NamedTuple):
    """One way of naming a record in full, ready to be compared."""

    plain: str
    in_order: str
    joined: str
    trust: float
    parts: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class Known:
    """All that ranking needs of one record's names."""

    titles: tuple[Title, ...]
    plain: tuple[str, ...]
    in_order: tuple[str, ...]
    joined: tuple[str, ...]
    words: dict[str, Name]
    """Each folded word to the first name that holds it."""
    shapes: dict[str, str]
    pairs: dict[str, str]
    """Neighbouring words run together, as a shape, to the first of the two."""


@dataclass(frozen=True, slots=True)
class Fit:
    """`score` is 0 to 100; `good` is False when some word asked for is not really there."""

    score: float
    good: bool
    why: str


class WordFit(NamedTuple):
    value: float
    nearest: str | None
    """The record's word it was taken for; None when nothing is near."""
    exact: bool


@lru_cache(maxsize=20_000)
def known(names: tuple[Name, ...]) -> Known:
    """Names taken apart once; records of the same plant share the work."""
    titles = tuple(_titles(names))
    words: dict[str, Name] = {}
    for name in names:
        for word in fold(name.text).split():
            words.setdefault(word, name)
    return Known(
        titles=titles,
        plain=tuple(t.plain for t in titles),
        in_order=tuple(t.in_order for t in titles),
        joined=tuple(t.joined for t in titles),
        words=words,
        shapes={shape(word): word for word in words},
        pairs={
            shape(left + right): left for name in names for left, right in pairwise(fold(name.text).split())
        },
    )


def _titles(names: tuple[Name, ...]) -> list[Title]:
    bases = [(text, name) for name in names if name.kind in _MAIN for text in _ways(name)]
    extras = [name for name in names if name.kind in _QUALIFIERS]
    found: dict[str, tuple[Name, ...]] = {fold(name.text): (name,) for name in names}
    for text, name in bases:
        found.setdefault(text, (name,))
        for extra in extras:
            found.setdefault(f"{text} {fold(extra.text)}", (name, extra))
    return [
        Title(text, _sorted(text), shape(text.replace(" ", "")), _trust(text, parts), parts)
        for text, parts in found.items()
        if text
    ]


def _trust(text: str, parts: tuple[Name, ...]) -> float:
    """The least trusted part decides; a tag whose own name is asked for comes before one that may be it."""
    shortened = len(text) < len(fold(parts[0].text))
    return min(_TRUST.get(name.kind, 1.0) for name in parts) * (_SHORTENED if shortened else 1.0)


def _ways(name: Name) -> list[str]:
    """A botanical name is also said without its cultivar, as genus alone, and with a one-letter genus."""
    if name.kind not in ("botanical name", "plant", "old name"):
        return [fold(name.text)]
    bare = fold(name.text.partition("'")[0].partition("‘")[0]).split()
    if not bare:
        return [fold(name.text)]
    ways = [fold(name.text), " ".join(bare), bare[0]]
    return ways if len(bare) < 2 else [*ways, " ".join((bare[0][0], *bare[1:]))]


def _sorted(text: str) -> str:
    return " ".join(sorted(text.split()))


def fit(words: tuple[str, ...], names: tuple[Name, ...], plant: str = "") -> Fit:
    """How a record with these names answers folded words; `plant` is what an old name is the old name of."""
    record = known(names)
    text = " ".join(words)
    whole, title = max(
        (_nearest(text, record, record.plain, 1.0),
         _nearest(_sorted(text), record, record.in_order, _OTHER_ORDER),
         _nearest(shape(text.replace(" ", "")), record, record.joined, _RUN_TOGETHER)),
        key=lambda found: found[0],
    )  # fmt: skip
    fits = word_fits(words, record)
    weight = sum(len(word) for word in words) or 1
    covered = sum(len(word) * found.value for word, found in zip(words, fits, strict=True)) / weight
    least = min((found.value for found in fits), default=0.0)
    found = all(_found(word, found.value) for word, found in zip(words, fits, strict=True))
    good = found or (whole >= GOOD_WHOLE and least >= 0.5)
    score = 100 * (COVERAGE * covered + (1 - COVERAGE) * whole)
    return Fit(score, good, _why(words, fits, record, title, plant))


def _found(word: str, value: float) -> bool:
    return value >= (GOOD_LONG_WORD if len(word) >= 8 else GOOD_WORD)


def _nearest(text: str, record: Known, choices: tuple[str, ...], trust: float) -> tuple[float, Title | None]:
    best, best_title = 0.0, None
    for _, score, place in process.extract(text, choices, scorer=fuzz.ratio, limit=3):
        title = record.titles[place]
        if score * title.trust * trust / 100 > best:
            best, best_title = score * title.trust * trust / 100, title
    return best, best_title


def word_fits(words: tuple[str, ...], record: Known) -> list[WordFit]:
    """For each word asked for, how well the record has it; words run together or apart are seen through."""
    fits = [_word_fit(word, record, last=place == len(words) - 1) for place, word in enumerate(words)]
    for place, (left, right) in enumerate(pairwise(words)):
        if min(fits[place].value, fits[place + 1].value) < _BEGINNING:
            joined = _word_fit(left + right, record, last=False)
            if joined.value >= max(_TOGETHER, min(fits[place].value, fits[place + 1].value)):
                fits[place] = fits[place + 1] = joined
    return fits


def _word_fit(word: str, record: Known, *, last: bool) -> WordFit:
    if word in record.words:
        return WordFit(1.0, word, True)
    if len(word) == 1:
        found = next((w for w in record.words if w.startswith(word)), None)
        return WordFit(_FIRST_LETTER_ONLY if found else 0.0, found, True)
    if last and (found := next((w for w in record.words if w.startswith(word)), None)):
        return WordFit(_BEGINNING, found, True)
    key = shape(word)
    if key in record.shapes:
        return WordFit(0.98, record.shapes[key], False)
    if key in record.pairs:
        return WordFit(_BEGINNING, record.pairs[key], True)
    near = process.extractOne(key, record.shapes.keys(), scorer=OSA.normalized_similarity)
    return (
        WordFit(near[1], record.shapes[near[0]], False)
        if near and near[1] >= 0.5
        else WordFit(0.0, None, False)
    )


_SAID: dict[Kind, str] = {
    "plant": "name of the matched plant",
    "may be": "one of the plants the printed name can mean",
    "other reading": "another reading of the tag",
}


def _why(words: tuple[str, ...], fits: list[WordFit], record: Known, title: Title | None, plant: str) -> str:
    """The names that explain the hit, the best whole name first, then how each misspelt word was taken."""
    named = list(title.parts) if title else []
    held = {word for name in named for word in fold(name.text).split()}
    for found in fits:
        if found.nearest and found.value >= 0.5 and found.nearest not in held:
            name = record.words[found.nearest]
            named.append(name)
            held.update(fold(name.text).split())
    said = [_say(name, plant) for name in dict.fromkeys(named)]
    spelt = [
        f"spelt '{word}', nearest '{found.nearest}'"
        for word, found in zip(words, fits, strict=True)
        if found.nearest and not found.exact
    ]
    return "; ".join((*said, *spelt))


def _say(name: Name, plant: str) -> str:
    of = f" of {plant}" if name.kind == "old name" and plant else ""
    text = name.text if name.kind in ("botanical name", "plant", "old name") else f"'{name.text}'"
    return f"{_SAID.get(name.kind, name.kind)} {text}{of}"
