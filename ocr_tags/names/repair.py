"""The known plant name nearest to a damaged one, and whether it is clearly that one.

Repair works on the trade table, by OSA similarity of the folded, space-free name: on 562 renderings that
a reader had damaged, a likeness of 0.85 and over gave right names 77 % and wrong ones 0.2 % of the time;
a longer list only adds wrong ones. The next name of another plant must lag by 0.05. Names under six
letters must match exactly.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache, lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from ocr_tags.names.lexicon import (
    epithets,
    key,
    plant_named,
    plants,
    plants_called,
    trade_binomials,
    trade_genera,
    words_of,
)

ACCEPT = 0.85
GAP = 0.05
MIN_REPAIR = 6
LEAST_OF_WORD = 0.6
"""Likeness that each word of a name must have by itself."""


@dataclass(frozen=True, slots=True)
class Near:
    """The nearest known name to a reading, its likeness 0 to 1, and the lead over the next other plant."""

    name: str
    likeness: float
    gap: float

    @property
    def clear(self) -> bool:
        return self.likeness >= ACCEPT and self.gap >= GAP


@lru_cache(maxsize=8192)
def fold(name: str) -> str:
    """`key`, with letters that readers take for each other made one: rn m, cl d, vv w, 1 l i, 0 o.

    >>> fold("Tiarella") == fold("T1arel1a"), fold("corn") == fold("com")
    (True, True)
    """
    folded = key(name.replace("|", "l").replace("!", "l"))
    for seen, same in (("rn", "m"), ("cl", "d"), ("vv", "w"), ("1", "i"), ("l", "i"), ("0", "o")):
        folded = folded.replace(seen, same)
    return folded


@cache
def _common_folds() -> tuple[tuple[str, ...], tuple[str, ...]]:
    names: dict[str, str] = {}
    for plant in plants():
        for name in plant.common_names:
            names.setdefault(fold(name), name)
    kept = {folded: name for folded, name in names.items() if len(folded) >= MIN_REPAIR}
    return tuple(kept), tuple(kept.values())


@cache
def _binomial_folds() -> tuple[tuple[str, ...], tuple[str, ...]]:
    names: dict[str, str] = {}
    for plant in plants():
        for name in (*plant.synonyms, plant.name):
            words = name.split()
            short = " ".join(words[: 3 if "×" in words else 2])
            names[fold(short)] = short
    return tuple(names), tuple(names.values())


@cache
def _genus_folds() -> tuple[tuple[str, ...], tuple[str, ...]]:
    names = {fold(genus): genus.capitalize() for genus in trade_genera() if len(genus) >= MIN_REPAIR}
    return tuple(names), tuple(names.values())


@lru_cache(maxsize=8192)
def nearest_common(text: str) -> Near | None:
    """The trade common name most like `text`, with its lead over names of any other plant.

    >>> nearest_common("Purp1e Conef1ower").name
    'purple coneflower'
    """
    near = _nearest(
        text, *_common_folds(), same=lambda a, b: set(plants_called(a)) & set(plants_called(b)) != set()
    )
    return None if near and _has_other_word(text, near.name) else near


@cache
def _name_words() -> frozenset[str]:
    """Every word of the common names in the trade table."""
    return frozenset(key(word) for plant in plants() for name in plant.common_names for word in name.split())


@cache
def _describing() -> frozenset[str]:
    """Words that only describe a plant."""
    return frozenset(map(key, words_of("qualifier")))


def _has_other_word(text: str, name: str) -> bool:
    """Whether a word of the text is a word of plant names, or little like, and another than in `name`.

    Print that is whole is not bent into another plant's name.

    >>> _has_other_word("Northern Maidenhair Fern", "southern maidenhair fern")
    True
    >>> _has_other_word("Hummingbird Sign", "hummingbird sage"), _has_other_word("Bee Baim", "bee balm")
    (True, False)
    """
    return any(
        one in _name_words() or OSA.normalized_similarity(fold(one), fold(other)) < LEAST_OF_WORD
        for one, other in _changed(text, name)
    )


def _changed(text: str, name: str) -> list[tuple[str, str]]:
    """The words of a text that differ from those in their place in a name of as many words, and these."""
    printed, known = ([key(word) for word in words.split()] for words in (text, name))
    pairs = zip(printed, known, strict=True) if len(printed) == len(known) else ()
    return [(one, other) for one, other in pairs if one != other]


@lru_cache(maxsize=8192)
def nearest_binomial(text: str) -> Near | None:
    """The trade binomial most like `text`, which should hold genus and epithet only."""
    return _nearest(text, *_binomial_folds(), same=lambda a, b: plant_named(a) == plant_named(b))


@lru_cache(maxsize=8192)
def nearest_genus(word: str) -> Near | None:
    """The trade genus most like `word`."""
    return _nearest(word, *_genus_folds(), same=lambda a, b: a == b)


@lru_cache(maxsize=4096)
def nearest_name_of(botanical: str, text: str) -> Near | None:
    """The common name of this trade plant most like `text`, when it is fairly like it.

    With the botanical name as a second witness less likeness is needed (0.72) than without.

    >>> nearest_name_of("Prunus × yedoensis", "Yeshino Cberry").name
    'Yoshino cherry'
    >>> nearest_name_of("Astrantia major", "Greater Masterwort")  # printed right, and not the great one
    """
    plant = plant_named(botanical)
    names = plant.common_names if plant else ()
    plain = key(text)
    scored = [(OSA.normalized_similarity(plain, key(name)), name) for name in names]
    likeness, name = max(scored, default=(0.0, ""))
    whole = any(one in _describing() for one, _ in _changed(text, name))
    return Near(name, likeness, 1.0) if len(plain) >= MIN_REPAIR and likeness >= 0.72 and not whole else None


@lru_cache(maxsize=2048)
def nearest_epithet(genus: str, word: str) -> Near | None:
    """The epithet of a known genus most like `word`: the second look, in the long list.

    Genus and epithet are weighed together, as measured; so that a short epithet is not bent into
    another plant's, four fifths of its own letters must agree.
    """
    genus = genus.lower()
    known = {e for g, e in trade_binomials() if g == genus}
    known |= {e.removeprefix("×") for e in epithets(genus)}
    folds = {fold(genus + e): e for e in known}
    near = _nearest(genus + word, tuple(folds), tuple(folds.values()), same=lambda a, b: a == b)
    if near is None or OSA.normalized_similarity(fold(word), fold(near.name)) < 0.8:
        return None
    return near


@lru_cache(maxsize=2048)
def perhaps_damaged(text: str) -> bool:
    """Whether an unknown name is so like a known one that it may be it, misread: better kept silent.

    >>> perhaps_damaged("Hosla"), perhaps_damaged("Thistledown Queen")
    (True, False)
    """
    folded = fold(text)
    folds = _short_folds() if len(folded) < MIN_REPAIR else _common_folds()[0]
    return process.extractOne(folded, folds, scorer=OSA.normalized_similarity, score_cutoff=0.78) is not None


@cache
def _short_folds() -> tuple[str, ...]:
    names = {fold(name) for plant in plants() for name in plant.common_names} | {
        fold(g) for g in trade_genera()
    }
    return tuple(name for name in names if 3 < len(name) <= MIN_REPAIR)


def _nearest(
    text: str, folds: tuple[str, ...], names: tuple[str, ...], same: Callable[[str, str], bool]
) -> Near | None:
    folded = fold(text)
    if len(folded) < MIN_REPAIR or not folds:
        return None
    found = process.extract(folded, folds, scorer=OSA.normalized_similarity, score_cutoff=0.7, limit=6)
    if not found:
        return None
    # Folding spoils a name that lost a letter (hydrngea -> hydmgea), so the plain letters are weighed too.
    plain = key(text)
    ranked = [
        (max(score, OSA.normalized_similarity(plain, key(names[at]))), names[at]) for _, score, at in found
    ]
    ranked.sort(key=lambda pair: -pair[0])
    likeness, name = ranked[0]
    rival = next((score for score, other in ranked[1:] if not same(name, other)), 0.7)
    return Near(name, likeness, likeness - rival)
