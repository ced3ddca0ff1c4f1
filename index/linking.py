"""The plant of the word lists that a misread tag most likely is of, so that it is found by its other names.

This is for finding only and never becomes a value: an answer found so says that the plant is a likely one.
"""

from __future__ import annotations

import gzip
from collections import Counter
from collections.abc import Iterator
from functools import cache, lru_cache
from importlib.resources import files
from typing import NamedTuple

from rapidfuzz.distance import OSA

from index.folding import fold, shape
from ocr_tags.names.lexicon import plants

ALONE, LEAD = 0.85, 0.05
TOGETHER = 0.7
"""One name this like a plant's, well before the next plant's, is enough; of two each may be less like."""

_PART = 4
_LOOKED_AT = 24
_TOO_COMMON = 400
_SHORTEST = 6


class _Names(NamedTuple):
    """Shapes of whole names run together, the plant of each, and which of them hold four letters."""

    shapes: list[str]
    plants: list[str]
    holding: dict[str, list[int]]


@lru_cache(maxsize=20_000)
def likely_plant(common_names: tuple[str, ...], botanical: str) -> str | None:
    """The accepted name of the plant, by a damaged botanical name (without cultivar) and common names."""
    by_name = _likeness(botanical, _botanical())
    by_common: dict[str, float] = {}
    for name in common_names:
        for plant, likeness in _likeness(name, _common()).items():
            by_common[plant] = max(likeness, by_common.get(plant, 0.0))
    both = [(by_name[p] + by_common[p], p) for p in by_name.keys() & by_common.keys()]
    if both and min(by_name[max(both)[1]], by_common[max(both)[1]]) >= TOGETHER:
        return max(both)[1]
    return _clear(by_name) or (None if botanical else _clear(by_common))


def _clear(likeness: dict[str, float]) -> str | None:
    """The plant that is like enough and well before the next."""
    best, *others = sorted(((value, plant) for plant, value in likeness.items()), reverse=True) or [(0.0, "")]
    next_best = others[0][0] if others else 0.0
    return best[1] if best[0] >= ALONE and best[0] - next_best >= LEAD else None


def _likeness(text: str, names: _Names) -> dict[str, float]:
    """How like the text each plant's likest name is, for those that share some letters with it."""
    key = shape(fold(text).replace(" ", ""))
    if len(key) < _SHORTEST:
        return {}
    shared: Counter[int] = Counter()
    for part in _parts(key):
        holding = names.holding.get(part, ())
        if len(holding) <= _TOO_COMMON:
            shared.update(holding)
    found: dict[str, float] = {}
    for place, _ in shared.most_common(_LOOKED_AT):
        likeness = OSA.normalized_similarity(key, names.shapes[place])
        plant = names.plants[place]
        found[plant] = max(likeness, found.get(plant, 0.0))
    return found


def _parts(key: str) -> set[str]:
    return {key[place : place + _PART] for place in range(len(key) - _PART + 1)}


@cache
def _botanical() -> _Names:
    trade = [(name, plant.name) for plant in plants() for name in (plant.name, *plant.synonyms)]
    return _taken_apart([*trade, *((name, name) for name, _ in _species())])


@cache
def _common() -> _Names:
    trade = [(name, plant.name) for plant in plants() for name in plant.common_names]
    return _taken_apart([*trade, *((common, name) for name, names in _species() for common in names)])


def _taken_apart(named: list[tuple[str, str]]) -> _Names:
    first: dict[tuple[str, str], None] = {}
    for name, plant in named:
        first.setdefault((shape(fold(name).replace(" ", "")), plant))
    shapes, of = [key for key, _ in first], [plant for _, plant in first]
    holding: dict[str, list[int]] = {}
    for place, key in enumerate(shapes):
        for part in _parts(key):
            holding.setdefault(part, []).append(place)
    return _Names(shapes, of, holding)


def _species() -> Iterator[tuple[str, list[str]]]:
    """The species of the long list that have common names and are not in the trade table."""
    traded = {name for plant in plants() for name in (plant.name, *plant.synonyms)}
    packed = files("ocr_tags").joinpath("data", "plant_names.txt.gz").read_bytes()
    for line in gzip.decompress(packed).decode("utf-8").splitlines():
        if not line.startswith("#"):
            genus, _, _, species = line.split("\t")
            for epithet, _, names in (entry.partition("=") for entry in species.split(";")):
                written = f"{genus} × {epithet[1:]}" if epithet.startswith("×") else f"{genus} {epithet}"
                if names and written not in traded:
                    yield written, names.split("|")
