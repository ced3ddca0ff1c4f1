"""What one tag of the second part says: names, rows and small print, each with its value."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import second_names as names
from facts import Fact
from figures import in_store_number
from saying import plan_passport
from second_lengths import choose_habit
from second_lines import Line, Printer, all_lines
from species import Species, load_species

LIST = Path(__file__).with_name("second_species.psv")
MARKETS = {"us": 30, "uk": 22, "de": 18, "sv": 16, "es": 14}
"""Shares; the last three print a second language: German, Swedish, or Spanish beside US units."""
KEPT = {"height": 0.95, "spread": 0.85, "light": 0.95, "hardiness": 0.95, "categories": 1.0, "bloom": 0.8}
POTS = {
    "us": ("1 gallon pot", "3.5 in. pot", "#2 pot"),
    "es": ("1 gallon pot", "#1 pot"),
    "uk": ("3 litre pot", "1 litre pot", "9cm pot"),
    "de": ("C3", "P9", "C2"),
    "sv": ("C3", "P9", "C2"),
}


@dataclass(frozen=True, slots=True)
class Copy:
    """All that is decided about a tag before it is laid out."""

    species: Species
    commons: tuple[Fact, ...]  # the main one first; then the one in the second language, if any
    botanical: Fact
    short: Fact | None
    title: str  # the name shown large as it is printed, or ""
    series: Fact | None
    lines: tuple[Line, ...]
    small: tuple[Fact, ...]
    price: Fact | None
    passport: Fact | None
    gtin: Fact | None
    tongue: str
    foreign_first: bool


def load_second() -> list[Species]:
    return load_species(LIST)


def plan_copy(rng: Random, s: Species) -> Copy:
    """One tag: its market, names, rows and small print, all by lot."""
    market = rng.choices(list(MARKETS), list(MARKETS.values()))[0]
    tongue = market if market in ("de", "sv", "es") else ""
    by = Printer(rng, choose_habit(rng, market, not tongue), tongue, market)
    botanical, short, title = _botanical(rng, s)
    commons = [s.commons[0], names.FOREIGN.get(s.name, {}).get(tongue, "")]
    if len(s.commons) > 1 and rng.random() < 0.3:
        commons.append(s.commons[1])
    lines = [line for line in all_lines(by, s) if rng.random() < KEPT.get(line.field, 0.62)]
    return Copy(
        s,
        tuple(Fact("common_names", "", name, name) for name in commons if name),
        botanical,
        short,
        title,
        _series(rng) if title and rng.random() < 0.3 else None,
        tuple(lines),
        tuple(_small(by, bool(title))),
        _price(rng, market) if rng.random() < 0.3 else None,
        plan_passport(rng, s) if market in ("de", "sv") and rng.random() < 0.7 else None,
        _gtin(rng, market in ("uk", "de", "sv")) if rng.random() < 0.35 else None,
        tongue,
        rng.random() < 0.6,
    )


def _botanical(rng: Random, s: Species) -> tuple[Fact, Fact | None, str]:
    """The name in full, the name without its cultivar, and the name shown large.

    A cultivar stands in single quotes everywhere; ™ and ® belong to a trade designation only (ICNCP 2016).
    """
    kind = rng.choices(("plain", "cultivar", "trade"), (30, 42, 28))[0]
    head, (left, right) = rng.choice(names.HEADS), rng.choice(("''", "‘’"))
    epithet, trade, title = None, None, ""
    if kind == "cultivar":
        epithet = f"{head} {rng.choice(names.TAILS)}"
        title = f"{left}{epithet}{right}" if rng.random() < 0.7 else ""
    elif kind == "trade":
        epithet = head[:3] + rng.choice(("tine", "lop", "wick", "mar", "sol"))
        two_words = f"{rng.choice(names.HEADS)} {rng.choice(names.TAILS[:20])}"
        trade = rng.choice((two_words, rng.choice(names.COINED)))
        title = trade + rng.choice(("™", "®", "™", ""))
    value: dict[str, Any] = {
        "name": f"{s.name} '{epithet}'" if epithet else s.name,
        "genus": s.genus,
        "species": s.epithet,
        "infraspecific": s.below,
        "hybrid": s.hybrid,
        "cultivar": epithet,
        "group": None,
        "trade_designation": trade,
    }
    printed = s.name.replace("×", "x") if rng.random() < 0.4 else s.name
    full = f"{printed} {left}{epithet}{right}" if epithet else printed
    bare = {**value, "name": s.name, "cultivar": None}
    short = Fact("botanical_name", "", printed, bare) if epithet else None
    return Fact("botanical_name", "", full, value), short, title


def _series(rng: Random) -> Fact:
    name = rng.choice(names.SERIES)
    shown = rng.choice(("{} Series", "{}® Series", "The {} series", "{}™ series")).format(name)
    return Fact("series", "", shown, name)


def _small(by: Printer, named: bool) -> Iterator[Fact]:
    """Supplier, patent and pot."""
    rng, (firm, place, web) = by.rng, by.rng.choice(names.FIRMS[by.market])
    if rng.random() < 0.75:
        shown = rng.choice(("{0}", "{0} | {1}", "Raised by {0}", "{0} • {2}", "Produced by {0}, {1}"))
        yield Fact("supplier", "", shown.format(firm, place, web), firm)
    if named and by.market in ("us", "es") and rng.random() < 0.4:
        number = rng.randint(24000, 36900)
        text = rng.choice((f"US PP{number}", f"U.S. Plant Patent {number}", f"PP{number}"))
        yield Fact("patents", "", text, [text])
    if rng.random() < 0.35:
        text = rng.choice(POTS[by.market])
        yield Fact("container", by.label("container"), text, text)


def _price(rng: Random, market: str) -> Fact:
    whole, cents = rng.randint(2, 39), rng.choice(("98", "75", "90", "29"))
    shown, money = {
        "us": (f"$ {whole}.{cents}", "USD"),
        "es": (f"${whole}.{cents}", "USD"),
        "uk": (f"£{whole}.{cents}", "GBP"),
        "de": (f"{whole},{cents} €", "EUR"),
        "sv": (f"{whole + 20},{cents} kr", "SEK"),
    }[market]
    amount = f"{whole + 20 if market == 'sv' else whole}.{cents}"
    return Fact("price", "", shown, {"amount": amount, "currency": money})


def _gtin(rng: Random, european: bool) -> Fact:
    digits = in_store_number(rng, european)
    return Fact("gtin", "", digits, digits)
