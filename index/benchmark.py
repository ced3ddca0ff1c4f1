"""How often the right tag comes first, and what an answer costs: `python -m index.benchmark`.

Catalogues of invented tags (real plants, invented cultivars and suppliers) are built in a temporary
folder and asked in the ways people ask. Some tags are kept as a reader damages them. All is drawn
from a fixed seed; the times are CPU time of this process.
"""

from __future__ import annotations

import argparse
import gzip
import random
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from statistics import median, quantiles

from index.answers import Hit
from index.catalogue import Catalogue
from index.folding import fold
from ocr_tags.lexicon import Plant, plants
from ocr_tags.record import BotanicalName, Hardiness, PlantMatch, Reading, TagRecord

FIRST = (
    "Silver", "Amber", "Little", "Giant", "Velvet", "Crystal", "Northern", "Copper", "Midnight", "Early",
    "Dancing", "Quiet", "Royal", "Sugar", "Ruby", "Frosty", "Golden", "Wild", "Gentle", "Painted", "Scarlet",
    "Cloudy", "Twilight", "Hidden", "Lucky", "Shining", "Rusty", "Winter", "Sunny", "Misty",
)  # fmt: skip
SECOND = (
    "Pony", "Lantern", "Ribbon", "Feather", "Button", "Harbour", "Whistle", "Comet", "Dragonfly", "Teacup",
    "Meadow", "Lace", "Pillow", "Swan", "Bonfire", "Marble", "Parade", "Kettle", "Thimble", "Cascade", "Star",
    "Pebble", "Orchard", "Mirror", "Carousel", "Saffron", "Sparrow", "Tower", "Bell", "Cushion",
)  # fmt: skip
SUPPLIERS = ("Greenhollow", "Larkmoor", "Tannerby", "Oakwhistle", "Fernbarrow", "Sandlemere", "Quillworth")

# The commonest letter faults of Tesseract 5.3 on rendered plant names, with how often each was counted.
FAULTS = {
    ("l", "i"): 158, ("l", ""): 39, ("i", ""): 34, ("l", "t"): 33, ("i", "t"): 30, ("a", "o"): 23,
    ("r", "n"): 20, ("m", ""): 20, ("u", "a"): 17, ("o", "e"): 15, ("m", "n"): 15, ("c", "e"): 14,
    ("l", "f"): 13, (" ", ""): 27,
}  # fmt: skip
LETTERS = "abcdefghijklmnopqrstuvwxyz"
ORDINARY = (
    "water weekly in dry weather", "plant in spring", "made in holland", "thank you", "half price today",
    "best before june", "open every sunday", "customer service desk", "twelve pack", "compost fifty litres",
    "opening hours", "garden gloves medium", "hosepipe reel", "terracotta pot", "slug pellets",
    "lawn feed and weed", "gift voucher", "xqzzt", "invoice number", "delivery note", "tomorrow morning",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Tag:
    """An invented tag: what is printed on it, and how it was read."""

    plant: Plant
    cultivar: str
    record: TagRecord


def build_tags(count: int, dice: random.Random, sold: list[Plant]) -> list[Tag]:
    """Distinct pairs of plant and cultivar; every 25th is read with faults and matched to no plant."""
    seen: set[tuple[str, str]] = set()
    tags: list[Tag] = []
    while len(tags) < count:
        plant = dice.choice(sold)
        cultivar = f"{dice.choice(FIRST)} {dice.choice(SECOND)}"
        if (plant.name, cultivar) not in seen:
            seen.add((plant.name, cultivar))
            tags.append(Tag(plant, cultivar, _record(len(tags), plant, cultivar, dice)))
    return tags


def _record(number: int, plant: Plant, cultivar: str, dice: random.Random) -> TagRecord:
    damaged = number % 25 == 24
    read: Callable[[str], str] = (lambda text: misread(text, dice)) if damaged else str
    genus, _, species = plant.name.replace("× ", "").partition(" ")
    name = BotanicalName(
        f"{read(plant.name)} '{read(cultivar)}'", genus, species or None, cultivar=read(cultivar)
    )
    values = {
        "common_names": read(dice.choice(plant.common_names)).title(),
        "botanical_name": name,
        "supplier": f"{dice.choice(SUPPLIERS)} Plants",
        "hardiness": Hardiness(str(dice.randint(3, 7)), str(dice.randint(8, 10))),
    }
    match = None if damaged else PlantMatch(plant.name, plant.common_names, plant.synonyms)
    readings = {field: (Reading(value, "", "front", None, 0.9),) for field, value in values.items()}
    return TagRecord(f"tag{number:09}", (), readings, match)


def all_plants() -> list[Plant]:
    """The trade table, and the species of the long list that have a common name."""
    known = list(plants())
    packed = files("ocr_tags").joinpath("data", "plant_names.txt.gz").read_bytes()
    for line in gzip.decompress(packed).decode("utf-8").splitlines():
        if not line.startswith("#"):
            genus, _, _, species = line.split("\t")
            for epithet, _, names in (entry.partition("=") for entry in species.split(";")):
                if names and epithet.isalpha() and epithet.islower():
                    known.append(Plant(f"{genus} {epithet}", (), tuple(names.split("|")), ""))
    return known


# ---------------------------------------------------------------- ways of asking


def misread(text: str, dice: random.Random) -> str:
    """Two of a reader's faults, as often as they were counted."""
    for _ in range(2):
        here = [
            (fault, text.count(fault[0]) * weight) for fault, weight in FAULTS.items() if fault[0] in text
        ]
        if here:
            ((wrong, seen),) = dice.choices([fault for fault, _ in here], [weight for _, weight in here])
            places = [place for place in range(len(text)) if text.startswith(wrong, place)]
            place = dice.choice(places)
            text = text[:place] + seen + text[place + len(wrong) :]
    return text


def mistype(text: str, dice: random.Random, times: int = 1) -> str:
    """One letter dropped, doubled, changed or swapped with the next, in a word of four letters or more."""
    for _ in range(times):
        places = [i for i in range(len(text) - 1) if text[i : i + 2].isalpha() and len(_word_at(text, i)) > 3]
        place = dice.choice(places or [0])
        one, two = text[place], text[place + 1 : place + 2]
        instead = dice.choice((two, one + one + two, dice.choice(LETTERS) + two, two + one))
        text = text[:place] + instead + text[place + 2 :]
    return text


def _word_at(text: str, place: int) -> str:
    return text[text.rfind(" ", 0, place) + 1 :].split(" ")[0]


def _full(tag: Tag, dice: random.Random) -> str:
    names = (*tag.plant.common_names, tag.plant.name)
    return f"{dice.choice(names)} {tag.cultivar}".replace(" ×", "").lower()


def _cut(tag: Tag, dice: random.Random) -> str:
    text = _full(tag, dice)
    return text[: len(text) - len(text.split()[-1]) + dice.randint(2, 3)]


def _swapped(tag: Tag, dice: random.Random) -> str:
    words = _full(tag, dice).split()
    dice.shuffle(words)
    return " ".join(words)


def _glued(tag: Tag, dice: random.Random) -> str:
    words = _full(tag, dice).split()
    place = dice.randrange(len(words) - 1)
    return " ".join((*words[:place], words[place] + words[place + 1], *words[place + 2 :]))


def _abbreviated(tag: Tag, dice: random.Random) -> str:
    genus, gap, rest = tag.plant.name.replace("× ", "").partition(" ")
    return f"{genus[0]}.{gap}{rest} '{tag.cultivar}'"


def _old_name(tag: Tag, dice: random.Random) -> str:
    return f"{dice.choice(tag.plant.synonyms or (tag.plant.name,))} {tag.cultivar}"


def _parted(tag: Tag, dice: random.Random) -> str:
    text = _full(tag, dice)
    place = dice.choice([i for i in range(3, len(text) - 2) if text[i - 3 : i + 3].isalpha()] or [0])
    return f"{text[:place]} {text[place:]}"


Way = Callable[[Tag, random.Random], str]
WAYS: dict[str, Way] = {
    "exact": _full,
    "name only": lambda tag, dice: dice.choice(tag.plant.common_names),
    "cultivar only": lambda tag, dice: tag.cultivar,
    "old name": _old_name,
    "capitals and accents": lambda tag, dice: _full(tag, dice).upper().replace("E", "É").replace(" ", "-"),
    "one typo": lambda tag, dice: mistype(_full(tag, dice), dice),
    "two typos": lambda tag, dice: mistype(_full(tag, dice), dice, 2),
    "misread": lambda tag, dice: misread(_full(tag, dice), dice),
    "words in any order": _swapped,
    "last word begun": _cut,
    "genus as a letter": _abbreviated,
    "words run together": _glued,
    "word in two": _parted,
    "supplier too": lambda tag, dice: f"{_supplier(tag)} {_full(tag, dice)}",
}


def _supplier(tag: Tag) -> str:
    return str(tag.record.readings["supplier"][0].value).split()[0]


# ---------------------------------------------------------------- measuring


@dataclass(frozen=True, slots=True)
class Measured:
    way: str
    asked: int
    first: int
    in_ten: int
    nearest_only: int
    milliseconds: tuple[float, ...]


def measure(
    catalogue: Catalogue, way: str, tags: list[Tag], dice: random.Random, truth: dict[str, Tag]
) -> Measured:
    """Right is a tag of the same plant and cultivar, or of what the question names of the two."""
    first = in_ten = nearest = 0
    times = []
    for tag in tags:
        words = WAYS[way](tag, dice)
        start = time.process_time()
        hits = catalogue.find(words, limit=10)
        times.append(1000 * (time.process_time() - start))
        right = [_same(truth[hit.tag_id], tag, way, words) for hit in hits]
        first += right[:1] == [True]
        in_ten += any(right)
        nearest += bool(hits and hits[0].nearest_only)
    return Measured(way, len(tags), first, in_ten, nearest, tuple(times))


def _same(found: Tag, wanted: Tag, way: str, words: str) -> bool:
    if way == "cultivar only":
        return found.cultivar == wanted.cultivar
    if way == "name only":
        return fold(words) in {fold(name) for name in found.plant.common_names}
    shared = set(found.plant.common_names) & set(wanted.plant.common_names)
    return found.cultivar == wanted.cultivar and (found.plant.name == wanted.plant.name or bool(shared))


def measure_absent(catalogue: Catalogue, absent: list[str]) -> dict[str, int]:
    """What comes back for what is not there."""
    counts: Counter[str] = Counter()
    for words in absent:
        hits: list[Hit] = catalogue.find(words)
        counts["nothing" if not hits else "nearest only" if hits[0].nearest_only else "taken for found"] += 1
    return dict(counts)


def report(records: int, queries: int, seed: int) -> Iterator[str]:
    dice = random.Random(seed)
    known = all_plants()
    dice.shuffle(known)
    traded = {plant.name for plant in plants()}
    held_out = [plant for plant in known[: len(known) // 5] if plant.name not in traded]
    sold = [*known[len(known) // 5 :], *plants() * 5]
    sold_words = {word for plant in sold for word in _words(plant)}
    tags = build_tags(records, dice, sold)
    truth = {tag.record.tag_id: tag for tag in tags}
    with tempfile.TemporaryDirectory() as folder, Catalogue.open(Path(folder)) as catalogue:
        start = time.process_time()
        catalogue.add_many((tag.record, {}) for tag in tags)
        yield f"{records} records, added and indexed in {time.process_time() - start:.1f} s CPU"
        yield f"{'':<24}{'first':>7}{'in ten':>8}{'nearest':>9}{'median ms':>11}{'p95 ms':>8}"
        clean = [tag for tag in tags if tag.record.plant]
        groups = {way: dice.sample(clean, min(queries, len(clean))) for way in WAYS}
        results = [measure(catalogue, way, group, dice, truth) for way, group in groups.items()]
        damaged = [tag for tag in tags if not tag.record.plant][:queries]
        results.append(measure(catalogue, "exact", damaged, dice, truth))
        for place, done in enumerate(results):
            name = done.way if place < len(WAYS) else "tag itself misread"
            yield _row(name, done)
        every = [milliseconds for done in results for milliseconds in done.milliseconds]
        yield f"all: median {median(every):.1f} ms, 95 % within {quantiles(every, n=20)[-1]:.1f} ms"
        names = [n for p in held_out for n in p.common_names[:1] if not set(fold(n).split()) <= sold_words][
            :queries
        ]
        unsold = [p.name for p in held_out if not _words(p) & sold_words][:queries]
        for title, absent in (
            ("common names not sold", names),
            ("plants not sold", unsold),
            ("no names", ORDINARY),
        ):
            yield f"{title} ({len(absent)}): {measure_absent(catalogue, list(absent))}"


def _words(plant: Plant) -> set[str]:
    return {
        word for name in (plant.name, *plant.synonyms, *plant.common_names) for word in fold(name).split()
    }


def _row(name: str, done: Measured) -> str:
    share = [f"{100 * count / done.asked:.1f}" for count in (done.first, done.in_ten, done.nearest_only)]
    slow = quantiles(done.milliseconds, n=20)[-1]
    return f"{name:<24}{share[0]:>7}{share[1]:>8}{share[2]:>9}{median(done.milliseconds):>11.1f}{slow:>8.1f}"


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m index.benchmark", description=__doc__)
    parser.add_argument("--records", type=int, nargs="+", default=[1000, 10000])
    parser.add_argument("--queries", type=int, default=200, help="questions of each kind")
    parser.add_argument("--seed", type=int, default=7)
    chosen = parser.parse_args()
    for records in chosen.records:
        for line in report(records, chosen.queries, chosen.seed):
            print(line, flush=True)


if __name__ == "__main__":
    main()
