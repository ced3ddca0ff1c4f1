"""Invented tags of real plants: what is printed on each, and how it was read."""

from __future__ import annotations

import gzip
import random
from dataclasses import dataclass
from functools import cached_property
from importlib.resources import files

from index.benchmark.damage import misread
from index.folding import fold
from ocr_tags.names.lexicon import Plant, plants
from ocr_tags.record import PlantMatch, Reading, TagRecord
from ocr_tags.values import BotanicalName, Hardiness, Length

FIRST = (
    "Silver", "Amber", "Little", "Giant", "Velvet", "Crystal", "Northern", "Copper", "Midnight", "Early",
    "Dancing", "Quiet", "Royal", "Sugar", "Ruby", "Frosty", "Golden", "Wild", "Gentle", "Painted", "Scarlet",
    "Cloudy", "Twilight", "Hidden", "Lucky", "Shining", "Rusty", "Winter", "Sunny", "Misty", "Ivory", "Merry",
    "Burnished", "Tender", "Noble", "Distant", "Marbled", "Honey", "Coral", "Dusky", "Eastern", "Humble",
    "Joyful", "Lively", "Mellow", "Polar", "Rosy", "Smoky", "Tiny", "Upright",
)  # fmt: skip
SECOND = (
    "Pony", "Lantern", "Ribbon", "Feather", "Button", "Harbour", "Whistle", "Comet", "Dragonfly", "Teacup",
    "Meadow", "Lace", "Pillow", "Swan", "Bonfire", "Marble", "Parade", "Kettle", "Thimble", "Cascade", "Star",
    "Pebble", "Orchard", "Mirror", "Carousel", "Saffron", "Sparrow", "Tower", "Bell", "Cushion", "Anchor",
    "Bramble", "Candle", "Dove", "Ember", "Fiddle", "Garland", "Hamlet", "Island", "Jigsaw", "Kitten",
    "Lagoon", "Mitten", "Nugget", "Otter", "Pepper", "Quartz", "Riddle", "Sonnet", "Tassel",
)  # fmt: skip
SUPPLIERS = ("Greenhollow", "Larkmoor", "Tannerby", "Oakwhistle", "Fernbarrow", "Sandlemere", "Quillworth")
_LIGHT = (("full_sun",), ("full_sun", "part_sun"), ("part_shade",), ("part_shade", "full_shade"))
_MISREAD_EVERY = 25


@dataclass(frozen=True)
class Tag:
    """An invented tag. `misread`: its names were read with faults, and no plant could be told from them."""

    plant: Plant
    cultivar: str
    record: TagRecord
    misread: bool

    @cached_property
    def plant_names(self) -> frozenset[str]:
        """All names of its plant, folded."""
        return frozenset(map(fold, (self.plant.name, *self.plant.synonyms, *self.plant.common_names)))


def build_tags(count: int, dice: random.Random, sold: list[Plant]) -> list[Tag]:
    """Distinct pairs of plant and cultivar; every 25th is misread."""
    seen: set[tuple[str, str]] = set()
    tags: list[Tag] = []
    while len(tags) < count:
        plant, cultivar = dice.choice(sold), f"{dice.choice(FIRST)} {dice.choice(SECOND)}"
        if (plant.name, cultivar) not in seen:
            seen.add((plant.name, cultivar))
            spoilt = len(tags) % _MISREAD_EVERY == _MISREAD_EVERY - 1
            tags.append(Tag(plant, cultivar, _record(len(tags), plant, cultivar, spoilt, dice), spoilt))
    return tags


def _record(number: int, plant: Plant, cultivar: str, spoilt: bool, dice: random.Random) -> TagRecord:
    def read(text: str) -> str:
        return misread(text, dice, dice.choice((1, 1, 2))) if spoilt else text

    botanical, kind = read(plant.name), read(cultivar)
    genus, _, species = botanical.replace("× ", "").partition(" ")
    low, first = dice.randint(10, 90), dice.randint(3, 7)
    values = {
        "common_names": read(dice.choice(plant.common_names)).title(),
        "botanical_name": BotanicalName(f"{botanical} '{kind}'", genus, species or None, cultivar=kind),
        "supplier": f"{dice.choice(SUPPLIERS)} Plants",
        "hardiness": Hardiness(str(first), str(first + dice.randint(2, 4))),
        "height": Length(low, low + 20),
        "light": dice.choice(_LIGHT),
    }
    match = None if spoilt else PlantMatch(plant.name, plant.common_names, plant.synonyms)
    readings = {field: (Reading(value, "", "front", None, 0.9),) for field, value in values.items()}
    return TagRecord(f"tag{number:09}", (), readings, match)


def all_plants() -> list[Plant]:
    """The trade table, and the species of the long list that have a common name."""
    known = list(plants())
    traded = {plant.name for plant in known}
    packed = files("ocr_tags").joinpath("data", "plant_names.txt.gz").read_bytes()
    for line in gzip.decompress(packed).decode("utf-8").splitlines():
        if not line.startswith("#"):
            genus, _, _, species = line.split("\t")
            for epithet, _, names in (entry.partition("=") for entry in species.split(";")):
                if names and epithet.isalpha() and epithet.islower() and f"{genus} {epithet}" not in traded:
                    known.append(Plant(f"{genus} {epithet}", (), tuple(names.split("|")), ""))
    return known
