"""Which plant the names on a tag point to."""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.names.lexicon import (
    Plant,
    binomial,
    epithets,
    is_genus,
    plant_named,
    plants_called,
    published_as,
    shared_by,
    trade_genera,
)
from ocr_tags.record import PlantMatch
from ocr_tags.values import BotanicalName


def match_plant(common_names: tuple[str, ...], botanical: BotanicalName | None) -> PlantMatch | None:
    """The plant that the names on a tag point to; None when the lists know nothing of them.

    A printed botanical name settles it. Without one, a common name shared by several plants gives all
    of them in `could_be` and no `name`.

    >>> match_plant(("Spanish lavender",), None).name
    'Lavandula stoechas'
    >>> match_plant(("Marrow Lark Spanish Lavender",), None).name
    'Lavandula stoechas'
    """
    if botanical is not None and botanical.genus:
        if botanical.species:
            return _species(botanical.genus, botanical.species)
        here = trade_genera().get(botanical.genus.lower(), ())
        named = [p for p in here if any(p in plants_called(c) for c in common_names)]
        if named:
            return _choose(tuple(named), ())
        return PlantMatch(botanical.genus) if is_genus(botanical.genus) else None
    for name in (*common_names, *_endings(common_names)):
        others = shared_by(name)
        found = plants_called(name)
        if found:
            narrowed = tuple(
                p for p in found if all(p in plants_called(c) or not plants_called(c) for c in common_names)
            )
            return _choose(narrowed or found, others)
        if names := published_as(name):
            return PlantMatch(names[0], (name,)) if len(names) == 1 else PlantMatch(None, could_be=names)
    return None


def _endings(common_names: tuple[str, ...]) -> Iterator[str]:
    """What each name ends with, longest first: a title may begin with a selling name that no list knows."""
    for words in map(str.split, common_names):
        yield from (" ".join(words[first:]) for first in range(1, len(words)))


def _choose(found: tuple[Plant, ...], others: tuple[str, ...]) -> PlantMatch:
    genera = {plant.genus for plant in found}
    names = tuple(plant.name for plant in found) + tuple(o for o in others if o not in genera)
    if len(names) == 1:
        return _known(found[0])
    return PlantMatch(None, could_be=names)


def _known(plant: Plant) -> PlantMatch:
    return PlantMatch(plant.name, plant.common_names, plant.synonyms)


def _species(genus: str, species: str) -> PlantMatch | None:
    plant = plant_named(f"{genus} {species}")
    if plant is not None:
        return _known(plant)
    known = epithets(genus.lower())
    for epithet in (species, "×" + species):
        if epithet in known:
            return PlantMatch(binomial(genus, epithet), known[epithet])
    return None
