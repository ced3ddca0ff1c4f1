"""How well the names of a tag answer a question, and why, in plain words.

Three things count: how much of the question the names cover, how much of one main name the question covers
("petunia" is first what is called so in full), and whether words that were asked for side by side stand so.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple, get_args

from rapidfuzz import process
from rapidfuzz.distance import OSA

from index.entries import BOTANICAL, Kind, Name, joined
from index.folding import fold, shape
from index.sought import Sought

_COVERED, _COMPLETE, _BESIDE = 0.78, 0.16, 0.06
_GENUS_ALONE = 0.98
_INITIAL = 0.9
_TOGETHER = 0.97
_LEAST = 0.5
_HALF = 3
_TRUST = {"may be": 0.93, "other reading": 0.96, "supplier": 0.9, "series": 0.97, "old name": 0.99}
_SAID_IN_FULL = {"cultivar": 0.97, "trade designation": 0.97, **_TRUST}
_NAMING = frozenset(get_args(Kind)) - {"supplier"}

GOOD_WORD = 0.8
GOOD_LONG_WORD = 0.83
GOOD_ALL, GOOD_LEAST = 0.88, 0.65
"""An answer is good when every word fits this well (long ones share their endings: -flower, -folia), or all
together do and none is far off. See `index.benchmark` for what that gives."""


class Known(NamedTuple):
    """The names of a tag or plant, taken apart once."""

    names: tuple[tuple[Name, tuple[str, ...], bool], ...]
    """Each name, its folded words, and whether to say it is to name the tag."""
    words: dict[str, Name]
    """Each folded word to the first name that holds it."""
    pairs: dict[str, tuple[str, ...]]
    """Words run together, neighbours or a whole name, and a genus's letter with its epithet, to the words."""


class WordFit(NamedTuple):
    value: float
    words: tuple[str, ...] = ()
    """The tag's word it was taken for, or words when run together; none when nothing is near."""


class Fit(NamedTuple):
    """`score` is 0 to 100; `good` is False when some word asked for is not really there."""

    score: float
    good: bool
    fits: tuple[WordFit, ...]


NOTHING = WordFit(0.0)


@lru_cache(maxsize=20_000)
def known(names: tuple[Name, ...]) -> Known:
    parted = tuple((name, tuple(fold(name.text).split()), name.kind in _NAMING) for name in names)
    words: dict[str, Name] = {}
    pairs: dict[str, tuple[str, ...]] = {}
    for name, parts, _ in parted:
        for word in parts:
            words.setdefault(word, name)
        pairs.update({"".join(parts): parts, **joined(name)} if len(parts) > 1 else {})
    return Known(parted, words, pairs)


def fit(sought: Sought, own: Known, plant: Known | None) -> Fit:
    """How a tag with these names, of a plant with those, answers."""
    records = (own, plant) if plant else (own,)
    fits = [_word_fit(place, sought, records) for place in range(len(sought.words))]
    _see_through_gaps(sought, records, fits)
    _look_again(sought, records, fits)
    lengths = [len(word) for word in sought.words]
    weight = sum(lengths) or 1
    trusted = sum(n * f.value * _trust(f.words, records) for n, f in zip(lengths, fits, strict=True)) / weight
    score = (
        _COVERED * trusted + _COMPLETE * _completeness(fits, records) + _BESIDE * _side_by_side(fits, records)
    )
    return Fit(100 * score, _is_good(sought.words, fits), tuple(fits))


def _is_good(words: tuple[str, ...], fits: list[WordFit]) -> bool:
    pairs = list(zip(words, fits, strict=True))
    if all(found.value >= (GOOD_LONG_WORD if len(word) >= 8 else GOOD_WORD) for word, found in pairs):
        return True
    covered = sum(len(word) * found.value for word, found in pairs) / sum(map(len, words))
    return covered >= GOOD_ALL and min(found.value for found in fits) >= GOOD_LEAST


def _word_fit(place: int, sought: Sought, records: tuple[Known, ...]) -> WordFit:
    word, fits = sought.words[place], sought.fits[place]
    best = NOTHING
    for record in records:
        if word in record.words:
            return WordFit(1.0, (word,))
        for each in filter(fits.__contains__, record.words):
            if fits[each] > best.value:
                best = WordFit(fits[each], (each,))
        if word in record.pairs and best.value < _TOGETHER:
            best = WordFit(_TOGETHER, record.pairs[word])
        if len(word) == 1 and best.value < _INITIAL:
            first = next((each for each in record.words if each.startswith(word)), "")
            best = WordFit(_INITIAL, (first,)) if first else best
    return best


def _see_through_gaps(sought: Sought, records: tuple[Known, ...], fits: list[WordFit]) -> None:
    """Two words asked for may be one of the tag's: "cone flower" for "coneflower"; or "l angustifolia"."""
    for place, together in sought.together.items():
        worse = min(fits[place].value, fits[place + 1].value)
        for record in records:
            glued = sought.words[place] + sought.words[place + 1]
            if glued in record.pairs and worse < _TOGETHER:
                fits[place] = fits[place + 1] = WordFit(_TOGETHER, record.pairs[glued])
            for each in filter(together.__contains__, record.words):
                if together[each] > worse:
                    fits[place] = fits[place + 1] = WordFit(together[each] * _TOGETHER, (each,))
                    worse = together[each]


def _look_again(sought: Sought, records: tuple[Known, ...], fits: list[WordFit]) -> None:
    """A word that nothing was near to may be a badly spoilt one of this tag's, or two run together."""
    for place, word in enumerate(sought.words):
        if fits[place].value or len(word) < 4:
            continue
        best = _nearest(shape(word), {shape(each): (each,) for record in records for each in record.words})
        if len(word) >= 2 * _HALF:
            parted = _nearest(shape(word), _run_together(records))
            best = max(best, WordFit(parted.value * _TOGETHER, parted.words), key=lambda found: found.value)
        fits[place] = best


def _nearest(word: str, choices: Mapping[str, tuple[str, ...]]) -> WordFit:
    near = process.extractOne(word, choices.keys(), scorer=OSA.normalized_similarity, score_cutoff=_LEAST)
    return WordFit(near[1], choices[near[0]]) if near else NOTHING


def _run_together(records: tuple[Known, ...]) -> dict[str, tuple[str, ...]]:
    """Neighbouring words of a name, and the last word of a name with the first of another, as one shape."""
    found = {shape(pair): words for record in records for pair, words in record.pairs.items()}
    names = dict.fromkeys(words for record in records for _, words, _ in record.names if words)
    for left in names:
        for right in names:
            if left != right:
                found[shape(left[-1] + right[0])] = (left[-1], right[0])
    return found


def _trust(words: tuple[str, ...], records: tuple[Known, ...]) -> float:
    """A tag whose own name is asked for comes before one that may be it."""
    for record in records:
        if words and words[0] in record.words:
            return _TRUST.get(record.words[words[0]].kind, 1.0)
    return 1.0


def _completeness(fits: list[WordFit], records: tuple[Known, ...]) -> float:
    """Of the main name that is said most fully, the share that is said."""
    said: dict[str, float] = {}
    for found in fits:
        for word in found.words:
            said[word] = max(found.value, said.get(word, 0.0))
    best = 0.0
    for record in records:
        for name, words, main in record.names:
            if main and words:
                share = sum(len(word) * said.get(word, 0.0) for word in words) / sum(map(len, words))
                if name.kind in BOTANICAL:
                    share = max(share, _GENUS_ALONE * said.get(words[0], 0.0))
                best = max(best, share * _SAID_IN_FULL.get(name.kind, 1.0))
    return best


def _side_by_side(fits: list[WordFit], records: tuple[Known, ...]) -> float:
    """The share of neighbouring words that are neighbours in a name too."""
    pairs = [(left.words, right.words) for left, right in pairwise(fits)]
    if not pairs:
        return 1.0
    beside = sum(_is_beside(left, right, records) for left, right in pairs)
    return beside / len(pairs)


def _is_beside(left: tuple[str, ...], right: tuple[str, ...], records: tuple[Known, ...]) -> bool:
    if not left or not right:
        return False
    return left == right or any(left[-1] + right[0] in record.pairs for record in records)


# ---------------------------------------------------------------- why


_SAID: dict[Kind, str] = {
    "plant": "name of the matched plant",
    "may be": "one of the plants the printed name can mean",
    "other reading": "another reading of the tag",
}


def matched_names(how: Fit, own: Known, plant: Known | None) -> list[Name]:
    """The names that explain an answer: what says most of the question first, and the tag's own names."""
    named: dict[Name, float] = {}
    words = {word: found.value for found in how.fits for word in found.words if found.value >= _LEAST}
    left = set(words)
    while left:
        best, most = None, (0.0, False, False, 0.0)
        for record in (own, plant) if plant else (own,):
            for name, parts, _ in record.names:
                held = sum(len(word) * words[word] for word in left.intersection(parts))
                share = held / (sum(map(len, parts)) or 1)
                says = (held, record is own, name.kind not in _TRUST, share)
                if held and says > most:
                    best, most = (name, parts), says
        if best is None:
            break
        named[best[0]] = most[0]
        left -= set(best[1])
    return list(named)


def why(sought: Sought, how: Fit, own: Known, plant: Known | None, of: str, *, sure: bool) -> str:
    """Which names matched, and how each misspelt word was taken.

    `of` is the plant; with `sure` False, the tag's own names are only like those of that plant.
    """
    names = matched_names(how, own, plant)
    said = [_say(name, of) for name in names]
    if not sure and any(each[0] in names for each in (plant.names if plant else ())):
        said.append(f"by what was read it is probably {of}")
    spelt = [
        f"spelt '{word}', nearest '{' '.join(found.words)}'"
        for word, found in zip(sought.words, how.fits, strict=True)
        if found.words and word not in "".join(found.words)
    ]
    return "; ".join((*said, *spelt))


def _say(name: Name, plant: str) -> str:
    of = f" of {plant}" if name.kind == "old name" and plant else ""
    text = name.text if name.kind in BOTANICAL and name.kind != "may be" else f"'{name.text}'"
    return f"{_SAID.get(name.kind, name.kind)} {text}{of}"
