"""What the invented trade sells: real species with plausible figures, invented suppliers, invented cultivars.

Figures are plausible, not authoritative (from memory): the tags are drawn from them, nothing is advised.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from pathlib import Path

Range = tuple[float, float]


@dataclass(frozen=True)
class Plant:
    """One species. Lengths in inches; `light` is a key of `wording.LIGHT`; `months` 1 to 12 or None."""

    printed: str
    accepted: str
    older: str | None
    common: tuple[str, ...]
    french: str
    spanish: str
    kind: str
    height: Range
    spread: Range
    spacing: Range | None
    flower_height: Range | None
    zones: tuple[str, str] | None
    light: str
    months: tuple[int, int] | None
    colours: tuple[str, ...]
    art: str
    traits: tuple[str, ...]

    @property
    def genus(self) -> str:
        return self.printed.lstrip("× ").split()[0]


_ROWS = [
    row for row in Path(__file__).with_name("plants.psv").read_text("utf-8").splitlines() if row[0] != "#"
]
"""One plant a line; the file's head names the columns."""


def _inches(text: str) -> Range | None:
    if not text:
        return None
    low, _, high = text.partition("-")
    return float(low), float(high or low)


def _plant(row: str) -> Plant:
    c = row.split("|")
    zones, months = c[10].split("-"), _inches(c[12])
    height, spread = _inches(c[6]), _inches(c[7])
    assert height and spread, row
    return Plant(
        printed=c[0],
        accepted=c[1][1:] if c[1].startswith("=") else c[0],
        older=c[1] if c[1][:1] not in ("", "=") else None,
        common=tuple(c[2].split(";")),
        french=c[3],
        spanish=c[4],
        kind=c[5],
        height=height,
        spread=spread,
        spacing=_inches(c[8]),
        flower_height=_inches(c[9]),
        zones=(zones[0], zones[1]) if c[10] else None,
        light=c[11],
        months=(int(months[0]), int(months[1])) if months else None,
        colours=tuple(filter(None, c[13].split(","))),
        art=c[14],
        traits=tuple(filter(None, c[15].split(","))),
    )


PLANTS = {plant.accepted: plant for plant in map(_plant, _ROWS)}


# ---------------------------------------------------------------- suppliers, all invented


@dataclass(frozen=True)
class Supplier:
    """`units` is what it prints: us, metric, us+metric, metric+us. `mark` sets its colours apart."""

    name: str
    town: str
    country: str
    currency: str
    units: str
    languages: tuple[str, ...]
    kinds: frozenset[str]
    colour: tuple[int, int, int]
    series: tuple[str, ...] = ()
    patents: bool = False


_GARDEN = frozenset(
    [
        "perennial",
        "biennial",
        "annual",
        "tender_perennial",
        "shrub",
        "rose",
        "tree",
        "vine",
        "grass",
        "fern",
        "bulb",
        "succulent",
    ]
)
_FOOD = frozenset(["herb", "vegetable", "fruit"])
_HOUSE = frozenset(["houseplant", "succulent"])
_WOODY = frozenset(["shrub", "rose", "tree", "vine", "fruit"])

SUPPLIERS = {
    s.name: s
    for s in (
        Supplier(
            "Tarnholt Perennials",
            "Tarnholt, MN",
            "US",
            "USD",
            "us",
            ("en",),
            _GARDEN - {"tree"},
            (34, 92, 60),
            ("Norrema",),
            True,
        ),
        Supplier(
            "Quillmere Growers",
            "Quillmere, TN",
            "US",
            "USD",
            "us",
            ("en",),
            _GARDEN | _FOOD,
            (150, 36, 84),
            ("Zindalee", "Candolino"),
            True,
        ),
        Supplier(
            "Saltmarrow Nursery",
            "Saltmarrow, MI",
            "US",
            "USD",
            "us+metric",
            ("en",),
            _WOODY | {"grass"},
            (24, 70, 112),
            ("Lumorra",),
            True,
        ),
        Supplier(
            "Bramhythe Kitchen Plants", "Bramhythe, WI", "US", "USD", "us", ("en",), _FOOD, (184, 74, 20)
        ),
        Supplier(
            "Pépinières Lac-aux-Merles",
            "Lac-aux-Merles (Québec)",
            "CA",
            "CAD",
            "metric+us",
            ("en", "fr"),
            _GARDEN | _FOOD,
            (70, 62, 132),
            ("Frostanza",),
            True,
        ),
        Supplier(
            "Viveros Tres Garzas",
            "Tres Garzas, NM",
            "US",
            "USD",
            "us+metric",
            ("en", "es"),
            _GARDEN | _FOOD,
            (190, 110, 10),
        ),
        Supplier(
            "Kwekerij Oosterwiel",
            "Oosterwiel",
            "NL",
            "EUR",
            "metric",
            ("en",),
            _GARDEN | _HOUSE | {"herb"},
            (0, 112, 108),
            ("Wielinga",),
            True,
        ),
        Supplier(
            "Fenwold Plants",
            "Fenwold",
            "GB",
            "GBP",
            "metric",
            ("en",),
            _GARDEN | {"herb", "fruit"},
            (92, 46, 46),
            (),
            True,
        ),
        Supplier("Ondelay Indoor Plants", "Ondelay, MN", "US", "USD", "us", ("en",), _HOUSE, (58, 84, 84)),
    )
}

GARDEN_CENTRE = "Nettlepoint Garden Centre"
"""The invented shop in the north: USDA zone 3b/4a, so half of what the catalogues call hardy is not."""

# ---------------------------------------------------------------- cultivar names, all invented

_FIRST = [
    "Tamsel",
    "Brindlow",
    "Quillwick",
    "Harrowmere",
    "Osmoor",
    "Pellinge",
    "Wrenfold",
    "Jorvelle",
    "Maddowen",
    "Sorrelby",
    "Thistlo",
    "Corvane",
    "Lindisle",
    "Fernoway",
    "Ullsby",
    "Hesperly",
    "Kestwyn",
    "Ravelot",
    "Yarrin",
    "Dunmelle",
    "Ottoline's",
    "Imberlee",
]
_SECOND = [
    "Lantern",
    "Lark",
    "Ember",
    "Parasol",
    "Skyline",
    "Mist",
    "Sixpence",
    "Whisper",
    "Banner",
    "Tapestry",
    "Cascade",
    "Torch",
    "Dancer",
    "Velvet",
    "Sprite",
    "Sentinel",
    "Ripple",
    "Beacon",
    "Duchess",
    "Meadow",
    "Cloud",
    "Tower",
    "Carpet",
    "Jubilee",
]
_COLOUR_WORDS = ["Blue", "Pink", "Gold", "Ruby", "White", "Plum", "Copper", "Lemon", "Scarlet", "Rose"]


def cultivar(rng: random.Random) -> str:
    """An invented cultivar name; sometimes with a colour word, which is no evidence of colour."""
    first = rng.choice(_FIRST)
    draw = rng.random()
    if draw < 0.55:
        return f"{first} {rng.choice(_SECOND)}"
    if draw < 0.85:
        return f"{first} {rng.choice(_COLOUR_WORDS)}"
    return first if "'" not in first else f"{first} {rng.choice(_SECOND)}"


def raiser_code(rng: random.Random) -> str:
    """A nonsense-code denomination, as stands beside a selling name."""
    return (
        rng.choice(["TH", "Oost", "Salt", "Qm", "Fen"])
        + rng.choice(["belo", "rima", "dux", "ka", "nix"])
        + (rng.choice(["", "", f"{rng.randint(2, 99)}"]))
    )
