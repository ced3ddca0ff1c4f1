"""Real species with plausible figures, and the invented names that tags hang on them.

The figures of `species.psv` are from memory of the trade and of gardening books: plausible, not advice.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from random import Random

Range = tuple[int, int]
LIST = Path(__file__).with_name("species.psv")
NOTE = re.compile(r"(\w+)=(.*?)(?=\s+\w+=|\s+(?:deer|bees|genus|vine)\b|$)")
FLAG = re.compile(r"(?:^|\s)(deer|bees|genus|vine)(?=\s|$)")


@dataclass(frozen=True, slots=True)
class Species:
    """One line of the list; lengths in inches, an empty range where a tag would print none."""

    name: str
    commons: tuple[str, ...]
    kind: str
    height: Range
    spread: Range
    zones: Range | None
    light: tuple[str, ...]
    bloom: tuple[str, str] | None
    colours: tuple[str, ...]
    picture: str
    notes: dict[str, str]
    flags: frozenset[str]

    @property
    def hybrid(self) -> bool:
        return "×" in self.name

    @property
    def genus(self) -> str:
        return self.name.split()[0]

    @property
    def epithet(self) -> str | None:
        words = self.name.replace("× ", "").split()
        return words[1] if len(words) > 1 else None

    @property
    def below(self) -> str | None:
        """Rank and epithet below the species: "var. pictum"."""
        words = self.name.replace("× ", "").split()
        return " ".join(words[2:]) or None


def load_species(path: Path = LIST) -> list[Species]:
    lines = path.read_text("utf-8").splitlines()
    return [_species(line) for line in lines if line and not line.startswith("#")]


def _species(line: str) -> Species:
    name, commons, kind, height, spread, zones, light, bloom, colours, picture, notes = line.split("|")
    start, _, end = bloom.partition("-")
    return Species(
        name,
        tuple(commons.split(";")),
        kind,
        _range(height),
        _range(spread),
        _range(zones) if zones else None,
        tuple(light.split(",")),
        (start, end) if bloom else None,
        tuple(colours.split(";")) if colours else (),
        picture,
        dict(NOTE.findall(notes)),
        frozenset(FLAG.findall(notes)),
    )


def _range(text: str) -> Range:
    low, high = text.split("-")
    return int(low), int(high)


HEADS = [
    "Orrindale",
    "Quenby",
    "Tarvish",
    "Hesselmoor",
    "Brunwick",
    "Aldwyke",
    "Pendrith",
    "Corvane",
    "Dunlea",
    "Merrowby",
    "Skelda",
    "Varnholt",
    "Isbourne",
    "Jorrick",
    "Kestane",
    "Lindrow",
    "Ottwell",
    "Pellby",
    "Rathmere",
    "Sorrelby",
    "Thornsey",
    "Umberly",
    "Wexcombe",
    "Yelden",
    "Zandry",
]
TAILS = [
    "Ember",
    "Lantern",
    "Skylark",
    "Velvet",
    "Whisper",
    "Sorbet",
    "Parade",
    "Minuet",
    "Halo",
    "Drift",
    "Cascade",
    "Beacon",
    "Fanfare",
    "Thimble",
    "Ripple",
    "Comet",
    "Gold",
    "Pink",
    "Ruby",
    "Snow",
    "Crimson",
    "Violet",
    "Sunset",
    "Frost",
]
COINED = [
    "Zumelia",
    "Corvanta",
    "Lissario",
    "Petrandel",
    "Solvenna",
    "Amberique",
    "Trevaluna",
    "Mirobelle",
    "Fenquira",
    "Dolcarra",
]
FIRMS = (
    ("Orrin Vale Growers", "Orrin Vale, OH", "orrinvale.example"),
    ("Hessel Moor Nurseries", "Hessel Moor, NY", "hesselmoor.example.com"),
    ("Quenby & Daughters", "Quenby, PA", "quenby.example"),
    ("Three Larches Nursery", "Pendrith, VT", "threelarches.example"),
    ("Brunwick Plant Co.", "Brunwick, MI", "brunwickplants.example.com"),
    ("Saltby Gardens", "Saltby Regis, OR", "saltbygardens.example"),
    ("Copper Gate Farm", "Umberly, WI", "coppergate.example"),
    ("Tarvish Wholesale Inc.", "Tarvish, ON", "tarvish.example"),
    ("Dunlea Liners Ltd", "Dunlea, Kent", "dunlea.example"),
    ("Merrowby Seedhouse", "Merrowby, ME", "merrowbyseed.example"),
    ("Van der Skelda BV", "Skelda, NL", "skelda.example"),
    ("Gärtnerei Lindrow", "Lindrow, DE", "lindrow.example"),
)
SERIES = [
    "Zandretta",
    "Pomponelle",
    "Varioso",
    "Luminetto",
    "Cascavel",
    "Trillando",
    "Brightwell",
    "Merrimore",
]


def cultivar(rng: Random) -> str:
    """An invented epithet of two words; some carry a colour word, which is no colour of the flower."""
    return f"{rng.choice(HEADS)} {rng.choice(TAILS)}"


def code_name(rng: Random) -> str:
    """An invented denomination, as beside a selling name: `Quelark`, `TRVmoor7`."""
    head, tail = rng.choice(HEADS), rng.choice(("lark", "moor", "ette", "ina", "fire", "dot", "sun"))
    return f"{head[:3]}{tail}" if rng.random() < 0.6 else f"{head[:3].upper()}{tail}{rng.randint(1, 98)}"


def selling_name(rng: Random) -> str:
    return rng.choice((f"{rng.choice(HEADS)} {rng.choice(TAILS[:16])}", rng.choice(COINED)))
