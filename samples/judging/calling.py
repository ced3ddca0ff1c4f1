"""What a plant is called on one tag: botanical name, selling name, names in other languages."""

from __future__ import annotations

from random import Random
from typing import Any

from facts import Fact
from species import Species, code_name, cultivar, selling_name

FOREIGN_NAMES = {  # from memory; the species whose name in the other language is sure
    "Achillea millefolium": {"fr": "Achillée millefeuille", "es": "Milenrama", "de": "Schafgarbe"},
    "Alchemilla mollis": {"fr": "Alchémille", "de": "Frauenmantel", "nl": "Vrouwenmantel"},
    "Aquilegia canadensis": {"fr": "Ancolie du Canada"},
    "Armeria maritima": {"fr": "Gazon d'Espagne", "de": "Grasnelke", "nl": "Engels gras"},
    "Paeonia lactiflora": {"fr": "Pivoine", "es": "Peonía", "de": "Pfingstrose", "nl": "Pioenroos"},
    "Antirrhinum majus": {"fr": "Muflier", "es": "Boca de dragón", "de": "Löwenmäulchen", "nl": "Leeuwenbek"},
    "Tagetes patula": {
        "fr": "Œillet d'Inde",
        "es": "Damasquina",
        "de": "Studentenblume",
        "nl": "Afrikaantje",
    },
    "Cosmos bipinnatus": {"fr": "Cosmos", "es": "Mirasol", "de": "Schmuckkörbchen"},
    "Leucanthemum × superbum": {"fr": "Marguerite", "es": "Margarita", "de": "Margerite", "nl": "Margriet"},
    "Allium schoenoprasum": {"fr": "Ciboulette", "es": "Cebollino", "de": "Schnittlauch", "nl": "Bieslook"},
    "Petroselinum crispum": {"fr": "Persil", "es": "Perejil", "de": "Petersilie", "nl": "Peterselie"},
    "Thymus vulgaris": {"fr": "Thym", "es": "Tomillo", "de": "Thymian", "nl": "Tijm"},
    "Salvia rosmarinus": {"fr": "Romarin", "es": "Romero", "de": "Rosmarin", "nl": "Rozemarijn"},
    "Salvia officinalis": {"fr": "Sauge", "es": "Salvia real", "de": "Salbei", "nl": "Salie"},
    "Daucus carota subsp. sativus": {"fr": "Carotte", "es": "Zanahoria", "de": "Möhre", "nl": "Wortel"},
    "Cucumis sativus": {"fr": "Concombre", "es": "Pepino", "de": "Gurke", "nl": "Komkommer"},
    "Rubus idaeus": {"fr": "Framboisier", "es": "Frambuesa", "de": "Himbeere", "nl": "Framboos"},
    "Ribes nigrum": {"fr": "Cassis", "es": "Grosella negra", "nl": "Zwarte bes"},
    "Galanthus nivalis": {"fr": "Perce-neige", "de": "Schneeglöckchen", "nl": "Sneeuwklokje"},
    "Pelargonium × hortorum": {"fr": "Géranium", "es": "Geranio", "de": "Pelargonie"},
    "Alcea rosea": {"fr": "Rose trémière", "es": "Malvarrosa", "de": "Stockrose", "nl": "Stokroos"},
    "Buxus sempervirens": {"fr": "Buis", "es": "Boj", "de": "Buchsbaum", "nl": "Buxus"},
    "Picea pungens": {"fr": "Épinette du Colorado", "de": "Stechfichte"},
}


def name_plant(rng: Random, species: Species) -> tuple[Fact, Fact | None, str, str]:
    """The botanical name in full, its short form, the name shown large and its mark."""
    kind = rng.choices(("plain", "cultivar", "trade"), (30, 40, 30))[0]
    if "genus" in species.flags and kind == "plain":
        kind = "cultivar"
    epithet = {"plain": None, "cultivar": cultivar(rng), "trade": code_name(rng)}[kind]
    trade = selling_name(rng) if kind == "trade" else None
    value: dict[str, Any] = {
        "name": f"{species.name} '{epithet}'" if epithet else species.name,
        "genus": species.genus,
        "species": species.epithet,
        "infraspecific": species.below,
        "hybrid": species.hybrid,
        "cultivar": epithet,
        "group": None,
        "trade_designation": trade,
    }
    printed = species.name
    if species.hybrid and rng.random() < 0.35:
        printed = printed.replace("×", "x")
    elif species.hybrid and rng.random() < 0.3:
        printed = printed.replace("× ", "×")
    left, right = rng.choice(("''", "‘’", "‘’", '""'))
    full = f"{printed} {left}{epithet}{right}" if epithet else printed
    short = None
    if epithet and "genus" not in species.flags:
        bare = {**value, "name": species.name, "cultivar": None}
        short = Fact("botanical_name", "", printed, bare)
    mark = rng.choice(("™", "®", "™", "")) if trade else ""
    title = trade or (epithet if kind == "cultivar" and rng.random() < 0.75 else "") or ""
    return Fact("botanical_name", "", full, value), short, title, mark
