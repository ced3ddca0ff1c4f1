"""What one tag says: every fact planned once, then worded for a side."""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random
from typing import Any

from calling import FOREIGN_NAMES, name_plant
from facts import Fact, word_fact
from figures import choose_hand, in_store_number, say_price
from growing import growing_facts
from species import FIRMS, SERIES, Species


@dataclass(frozen=True, slots=True)
class Tag:
    """Everything decided about one tag before it is laid out; `facts` are those of the back, in order."""

    species: Species
    common: Fact
    second_common: Fact | None
    foreign_common: Fact | None
    botanical: Fact
    botanical_short: Fact | None
    title: str  # the selling name or cultivar shown large, or ""
    mark: str
    series: Fact | None
    facts: tuple[Fact, ...]
    small: tuple[Fact, ...]  # patents, container, supplier, price: what stands at the edge
    passport: Fact | None
    gtin: Fact | None
    language: str  # the second language, or ""
    market: str


def plan_tag(rng: Random, species: Species) -> Tag:
    """One tag: its market, names, facts and small print, all by lot."""
    market = rng.choices(("us", "ca", "uk", "eu"), (62, 12, 12, 14))[0]
    language = _language(rng, market)
    metric = market in ("uk", "eu") or (market == "ca" and rng.random() < 0.4)
    hand = choose_hand(rng, rng.choice(("", "", "( )", "/")) if not language and rng.random() < 0.5 else "")
    if market == "eu":
        hand = replace(hand, comma=True)
    facts = list(growing_facts(rng, species, hand, language, metric, market))
    botanical, short, title, mark = name_plant(rng, species)
    commons = [Fact("common_names", "", name, name) for name in species.commons]
    foreign = FOREIGN_NAMES.get(species.name, {}).get(language)
    series = rng.choice(SERIES) if title and rng.random() < 0.2 else ""
    return Tag(
        species,
        commons[0],
        commons[1] if len(commons) > 1 and rng.random() < 0.4 else None,
        Fact("common_names", "", foreign, foreign) if foreign else None,
        botanical,
        short,
        title,
        mark,
        Fact("series", "", f"{series}{rng.choice('™®')} {rng.choice(('Series', 'series'))}", series)
        if series
        else None,
        tuple(_chosen(rng, species, facts)),
        tuple(_small(rng, market, title)),
        plan_passport(rng, species) if market == "eu" and rng.random() < 0.75 else None,
        _gtin(rng, market),
        language,
        market,
    )


def _language(rng: Random, market: str) -> str:
    share, tongues = {"us": (0.18, "es"), "ca": (0.8, "fr"), "uk": (0.0, ""), "eu": (0.5, "")}[market]
    if rng.random() >= share:
        return ""
    return tongues or rng.choice(("de", "nl"))


KEPT = {
    "height": 0.97,
    "spread": 0.85,
    "light": 0.98,
    "hardiness": 0.95,
    "min_temperature": 1.0,
    "bloom": 0.75,
}
CLASSY = ("fern", "grass", "vine", "tree", "rose", "bulb", "herb", "shrub")


def _chosen(rng: Random, s: Species, facts: list[Fact]) -> Any:
    """Tags differ in how much they print; a common name that ends in a class word brings its class along."""
    density = rng.choice((0.3, 0.5, 0.75, 1.0))
    named = any(word in name.casefold() for word in CLASSY for name in s.commons)
    for fact in facts:
        share = KEPT.get(fact.field, {"spacing": 0.4, "categories": 0.75}.get(fact.field, density))
        if fact.field == "categories" and (named or "vine" in s.flags):
            share = 1.0
        if rng.random() < share:
            yield fact


def _small(rng: Random, market: str, title: str) -> Any:
    firm, place, web = rng.choice(FIRMS)
    if rng.random() < 0.7:
        lead = rng.choice(("", "", "Grown by ", "From ", "Grower: ", "© "))
        tail = rng.choice(("", f" · {place}", f", {place}", f"  www.{web}", f" – {web}"))
        yield Fact("supplier", "", f"{lead}{firm}{tail}", firm)
    if title and market in ("us", "ca") and rng.random() < 0.45:
        number = rng.randint(21000, 36500)
        text = rng.choice(
            (f"PP{number}", f"PP#{number // 1000},{number % 1000:03}", f"USPP {number}", "PPAF", "USPPAF")
        )
        yield Fact("patents", "", text, [text])
    if rng.random() < 0.35:
        text = rng.choice(
            {
                "us": ("#1", "#2", "1 gal", "4.5 in. pot", '6" pot', "#3 container", "2 gallon", "1 qt"),
                "ca": ("1 gal", "2 L", "15 cm pot"),
                "uk": ("2 L", "9 cm pot", "3 litre pot"),
                "eu": ("P9", "C2", "C3", "Ø 12 cm"),
            }[market]
        )
        yield word_fact(rng, "container", text, text, text, "", "")
    if market != "ca" and rng.random() < 0.2:
        currency = {"us": "USD", "uk": "GBP", "eu": "EUR"}[market]
        printed, value = say_price(rng, currency)
        yield Fact("price", "", printed, value)


def plan_passport(rng: Random, s: Species) -> Fact:
    land = rng.choice(("NL", "DE", "BE", "FR", "DK"))
    origin = rng.choice((land, land, "PL", "IT", "KE"))
    value = {
        "botanical_name": s.name,
        "operator": f"{land}-{rng.randint(1000000, 99999999):09}",
        "traceability": rng.choice(
            (f"{rng.randint(10000, 99999)}", f"{rng.randint(23, 26)}-{rng.randint(1000, 9999)}")
        ),
        "origin": origin,
        "protected_zone": None,
    }
    return Fact(
        "plant_passport",
        land,
        f"A {s.name} B {value['operator']} C {value['traceability']} D {origin}",
        value,
    )


def _gtin(rng: Random, market: str) -> Fact | None:
    if rng.random() >= 0.3:
        return None
    digits = in_store_number(rng, market in ("uk", "eu"))
    return Fact("gtin", "", digits, digits)
