"""Questions in the ways people ask, each with what a right answer must be; and questions without one."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass

from index.benchmark.damage import as_heard, look_alike, misread, mistype
from index.benchmark.tags import Tag
from index.folding import fold
from ocr_tags.names.lexicon import Plant

ORDINARY = (
    "water weekly in dry weather", "made in holland", "thank you", "half price today", "best before june",
    "open every sunday", "customer service desk", "compost fifty litres", "opening hours",
    "garden gloves medium", "hosepipe reel", "terracotta pot", "slug pellets", "lawn feed and weed",
    "gift voucher", "xqzzt", "invoice number", "delivery note", "tomorrow morning", "wheelbarrow tyre",
    "please pay at till four", "bird table", "patio heater", "watering can", "greenhouse thermometer",
    "sharp sand", "secateurs", "kneeling mat", "loyalty card", "potting bench",
)  # fmt: skip
_STARTS = ("Bran", "Cor", "Dul", "Fen", "Gal", "Hes", "Jor", "Kel", "Mor", "Nab", "Pri", "Quo", "Tes", "Vol")
_ENDS = ("dwortia", "phelium", "zanthus", "mandra", "vecula", "ssopia", "rrhoza", "ttonia", "gonium")
_EPITHETS = ("obtusellum", "quadrivense", "nimbicola", "tarvensis", "ustulinum", "valdecorum", "hymettica")


@dataclass(frozen=True, slots=True)
class Asked:
    """`text` as typed; a right tag's plant passes `plant` and its cultivar passes `cultivar`."""

    text: str
    plant: Callable[[Tag], bool]
    cultivar: Callable[[str], bool]

    def is_answered_by(self, tag: Tag) -> bool:
        return self.cultivar(tag.cultivar) and self.plant(tag)


Kind = Callable[[Tag, random.Random], Asked]


def _any(_: object) -> bool:
    return True


def _called(name: str) -> Callable[[Tag], bool]:
    folded = fold(name)
    return lambda tag: folded in tag.plant_names


def _in_full(spoil: Callable[[str, random.Random], str]) -> Kind:
    """One of the plant's names and the cultivar, spoilt."""

    def ask(tag: Tag, dice: random.Random) -> Asked:
        name = dice.choice((*tag.plant.common_names, tag.plant.name))
        text = f"{name} {tag.cultivar}".replace("× ", "").lower()
        return Asked(spoil(text, dice), _called(name), tag.cultivar.__eq__)

    return ask


def _name_alone(spoil: Callable[[str, random.Random], str]) -> Kind:
    def ask(tag: Tag, dice: random.Random) -> Asked:
        name = dice.choice((*tag.plant.common_names, tag.plant.name))
        return Asked(spoil(name.replace("× ", "").lower(), dice), _called(name), _any)

    return ask


def _cultivar(tag: Tag, dice: random.Random) -> Asked:
    return Asked(tag.cultivar, _any, tag.cultivar.__eq__)


def _old_name(tag: Tag, dice: random.Random) -> Asked:
    name = dice.choice(tag.plant.synonyms or (tag.plant.name,))
    return Asked(f"{name} {tag.cultivar}", _called(name), tag.cultivar.__eq__)


def _begun(tag: Tag, dice: random.Random) -> Asked:
    name = dice.choice((*tag.plant.common_names, tag.plant.name))
    first, second = tag.cultivar.split()
    start = f"{first} {second[: dice.randint(2, 3)]}"
    return Asked(f"{name} {start}".lower(), _called(name), lambda cultivar: cultivar.startswith(start))


def _half_remembered(tag: Tag, dice: random.Random) -> Asked:
    name, word = dice.choice((*tag.plant.common_names, tag.plant.name)), dice.choice(tag.cultivar.split())
    return Asked(f"{name} {word}".lower(), _called(name), lambda cultivar: word in cultivar.split())


def _swap(text: str, dice: random.Random) -> str:
    words = text.split()
    dice.shuffle(words)
    return " ".join(words)


def _run_together(text: str, dice: random.Random) -> str:
    words = text.split()
    place = dice.randrange(len(words) - 1)
    return " ".join((*words[:place], words[place] + words[place + 1], *words[place + 2 :]))


def _part(text: str, dice: random.Random) -> str:
    place = dice.choice([i for i in range(3, len(text) - 2) if text[i - 3 : i + 3].isalpha()] or [0])
    return f"{text[:place]} {text[place:]}"


def _abbreviated(tag: Tag, dice: random.Random) -> Asked:
    genus, _, rest = tag.plant.name.replace("× ", "").partition(" ")
    short = f"{genus[0]}. {rest}".strip().lower()
    if len(rest) > 5 and dice.random() < 0.5:
        short = f"{genus[0]}. {rest[:4]}.".lower()
    asked = short.split(" ")[-1].rstrip(".")

    def plant(other: Tag) -> bool:
        words = (other.plant.name.replace("× ", "") + " ").lower().split(" ")
        return (
            words[0][0] == short[0] and words[1].startswith(asked) if rest else words[0].startswith(asked[0])
        )

    return Asked(f"{short} '{tag.cultivar}'", plant, tag.cultivar.__eq__)


def _with_supplier(tag: Tag, dice: random.Random) -> Asked:
    supplier = str(tag.record.readings["supplier"][0].value).split()[0]
    asked = _in_full(lambda text, _: text)(tag, dice)
    return Asked(f"{supplier} {asked.text}", asked.plant, asked.cultivar)


KINDS: dict[str, Kind] = {
    "exact": _in_full(lambda text, dice: text),
    "one typo": _in_full(mistype),
    "two typos": _in_full(lambda text, dice: mistype(text, dice, 2)),
    "OCR damage, as counted": _in_full(misread),
    "OCR damage, look-alikes": _in_full(look_alike),
    "prefix, last word begun": _begun,
    "partial, a word missing": _half_remembered,
    "swapped words": _in_full(_swap),
    "abbreviation": _abbreviated,
    "written as heard": _in_full(as_heard),
    "capitals and accents": _in_full(lambda text, dice: text.upper().replace("E", "É").replace(" ", "-")),
    "words run together": _in_full(_run_together),
    "word in two": _in_full(_part),
    "old name": _old_name,
    "name alone": _name_alone(lambda text, dice: text),
    "name alone, one typo": _name_alone(mistype),
    "name alone, as heard": _name_alone(as_heard),
    "cultivar alone": _cultivar,
    "supplier too": _with_supplier,
}
"""What is asked for, of tags that were read well."""


def absent(unsold: list[Plant], sold: list[Plant], dice: random.Random, count: int) -> dict[str, list[str]]:
    """Questions that no tag answers: no plant that is sold has all their words in its names."""
    called = [{word for name in _names(plant) for word in fold(name).split()} for plant in sold]
    places: dict[str, set[int]] = {}
    for number, words in enumerate(called):
        for word in words:
            places.setdefault(word, set()).add(number)

    def is_absent(name: str) -> bool:
        return not set.intersection(*(places.get(word, set()) for word in fold(name).split()))

    common = [name for plant in unsold for name in plant.common_names[:1] if is_absent(name)]
    botanical = [plant.name for plant in unsold if is_absent(plant.name)]
    coined = [f"{dice.choice(_STARTS)}{dice.choice(_ENDS)} {dice.choice(_EPITHETS)}" for _ in range(count)]
    return {
        "common names not sold": dice.sample(common, min(count, len(common))),
        "botanical names not sold": dice.sample(botanical, min(count, len(botanical))),
        "names of no plant": coined,
        "not names at all": list(ORDINARY),
    }


def _names(plant: Plant) -> tuple[str, ...]:
    return (plant.name, *plant.synonyms, *plant.common_names)
