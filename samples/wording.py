"""How the trade words each fact: the words printed and the value they state, always made together.

A `Fact` is what a label may say once: as label and value ("Height" / "12-18 in"), or as a phrase that
stands alone ("Grows 12-18 in tall"). The value is worked out from the figures printed, not from the plant.
"""

from __future__ import annotations

import random
import re
from dataclasses import dataclass, field
from typing import Any

from plants import Plant, Range, Supplier

Rng = random.Random


@dataclass(frozen=True)
class Said:
    """One value as printed: its field, the value in the record's shape, and the words that state it."""

    field: str
    value: Any
    printed: str


@dataclass(frozen=True)
class Fact:
    """`label` may be empty (the words stand alone); `phrase` is the other way to print the same value."""

    field: str
    value: Any
    label: str
    text: str
    phrase: str = ""
    other: dict[str, tuple[str, str]] = field(default_factory=dict)
    """Label and words in another language, by language; they repeat the value."""

    def said(self, printed: str | None = None) -> Said:
        return Said(self.field, self.value, printed or self.text)


# ---------------------------------------------------------------- lengths

CM = {"in": 2.54, "ft": 30.48, "cm": 1.0, "m": 100.0}
_UNIT_WORDS = {
    "in": ['"', '"', " in.", " in", "in", " inches", "″", " In.", '"'],
    "ft": ["'", " ft.", " ft", "ft", " feet", "′", " Ft."],
    "cm": [" cm", "cm", " cm"],
    "m": [" m", "m"],
}
_LOCAL = {"fr": {"in": " po", "ft": " pi"}, "es": {"in": " pulg.", "ft": " pies"}}
_JOINS = ["-", "-", "-", "–", "–", " to ", " - ", "—"]


_HALVES = ["½", "½", "-1/2", " 1/2", ".5"]


def _figure(number: float, unit: str, half: str) -> str:
    whole, rest = divmod(number, 1)
    if not rest or unit in ("cm", "m"):
        return f"{number:g}"
    return f"{int(whole)}{half}"


def _in_unit(span: Range, unit: str) -> Range:
    low, high = (inches * 2.54 / CM[unit] for inches in span)
    step = {"in": 1.0, "ft": 0.5, "cm": 5.0, "m": 0.5}[unit]
    if unit == "in" and high > 12:
        step = 1.0
    rounded = [max(step, round(end / step) * step) for end in (low, high)]
    return rounded[0], rounded[1]


def _unit_for(span: Range, system: str, rng: Rng) -> str:
    if system == "metric":
        return "m" if span[1] > 60 else "cm"
    if span[1] > 60 or (span[0] >= 24 and rng.random() < 0.55) or (span[0] >= 18 and rng.random() < 0.15):
        return "ft"
    return "in"


def _length_words(low: float, high: float, unit: str, rng: Rng) -> str:
    tail, join, half = rng.choice(_UNIT_WORDS[unit]), rng.choice(_JOINS), rng.choice(_HALVES)
    if half == "-1/2" and (low % 1 or high % 1):
        join = " to "
    if low == high:
        return f"{_figure(low, unit, half)}{tail}"
    if tail in "\"'″′" and rng.random() < 0.25:
        return f"{_figure(low, unit, half)}{tail}{join}{_figure(high, unit, half)}{tail}"
    low_text = _figure(low, unit, half)
    if join in "-—" and ("/" in low_text or low_text.endswith(("½",))):
        join = " to "
    return f"{low_text}{join}{_figure(high, unit, half)}{tail}"


@dataclass(frozen=True)
class LengthText:
    """A length as printed, its value in cm, and the same in the languages of a two-language label."""

    text: str
    value: dict[str, float | None]
    local: dict[str, str]


def length(span: Range, system: str, rng: Rng, allow_up_to: bool = True) -> LengthText:
    """Words for a length, with the value of the figures printed first."""
    first, _, second = system.partition("+")
    unit = _unit_for(span, first, rng)
    low, high = _in_unit(span, unit)
    up_to = allow_up_to and rng.random() < 0.12
    if rng.random() < 0.12:
        low = high
    words = _length_words(high if up_to else low, high, unit, rng)
    extra = ""
    if second:
        other = _unit_for(span, second, rng)
        also = _in_unit((low * CM[unit] / 2.54, high * CM[unit] / 2.54), other)
        also_words = _length_words(also[1] if up_to else also[0], also[1], other, rng)
        extra = rng.choice([f" ({also_words})", f" / {also_words}", f" ({also_words})"])
    value = {"min_cm": None if up_to else round(low * CM[unit], 4), "max_cm": round(high * CM[unit], 4)}
    figures = f"{high:g}" if low == high or up_to else f"{low:g}-{high:g}"
    local = {
        code: {"fr": "jusqu'à ", "es": "hasta "}[code] * up_to
        + (figures.replace(".", ",") if code == "fr" else figures)
        + _LOCAL[code].get(unit, f" {unit}")
        for code in ("fr", "es")
    }
    return LengthText(rng.choice(["up to ", "Up to ", "to "]) * up_to + words + extra, value, local)


_LABELS: dict[str, list[str]] = {
    "height": ["Height", "Height", "HEIGHT", "Ht.", "H", "Mature height", "Garden Height", "Plant height"],
    "spread": ["Spread", "Spread", "SPREAD", "Width", "W", "Sp.", "Mature width", "Wd."],
    "spacing": ["Spacing", "Spacing", "SPACING", "Plant spacing", "Space", "Space plants"],
    "flower_height": ["Flower height", "Height in bloom", "Bloom height", "In flower"],
    "row_spacing": ["Row spacing", "Rows", "Between rows", "Row Spacing"],
}
FOREIGN: dict[str, dict[str, str]] = {
    "height": {"fr": "Hauteur", "es": "Altura"},
    "spread": {"fr": "Largeur", "es": "Ancho"},
    "spacing": {"fr": "Espacement", "es": "Distancia"},
    "flower_height": {"fr": "Hauteur en fleur", "es": "Altura de la flor"},
    "row_spacing": {"fr": "Entre les rangs", "es": "Entre hileras"},
    "light": {"fr": "Exposition", "es": "Luz"},
    "hardiness": {"fr": "Zone", "es": "Zona"},
    "bloom": {"fr": "Floraison", "es": "Floración"},
    "water": {"fr": "Arrosage", "es": "Riego"},
}
_PHRASES: dict[str, list[str]] = {
    "height": [
        "Grows {} tall",
        "{} tall",
        "Reaches {} tall",
        "Grows {} high",
        "Ht. {}",
        "Height: {}",
        "H {}",
    ],
    "spread": ["Spreads {}", "{} wide", "{} spread", "Width {}", "Spread: {}", "W {}", "Grows {} wide"],
    "spacing": ["Plant {} apart", "Space {} apart", "{} O.C.", "Set plants {} apart", "Space {} on center"],
    "flower_height": ["{} tall in bloom", "Flower stems {}", "{} in flower"],
    "row_spacing": ["Rows {} apart", "Space rows {} apart"],
}


def size(name: str, span: Range, supplier: Supplier, rng: Rng) -> Fact:
    """A length fact of any of the five kinds."""
    words = length(span, supplier.units, rng, allow_up_to=name in ("height", "spread"))
    text = words.text
    phrase = rng.choice(_PHRASES[name]).format(text.replace("Up to", "up to"))
    if not phrase[0].isdigit():
        phrase = phrase[0].upper() + phrase[1:]
    other = {code: (FOREIGN[name][code], words.local[code]) for code in words.local}
    return Fact(name, words.value, rng.choice(_LABELS[name]), text, phrase, other)


# ---------------------------------------------------------------- light

LIGHT: dict[str, list[tuple[str, list[str]]]] = {
    "sun": [
        ("Full sun", ["full_sun"]),
        ("Full Sun", ["full_sun"]),
        ("FULL SUN", ["full_sun"]),
        ("Sun", ["full_sun"]),
        ("Full sun (6+ hours)", ["full_sun"]),
        ("Full sun: 6 or more hours daily", ["full_sun"]),
        ("Plant in full sun", ["full_sun"]),
    ],
    "sun_part_sun": [
        ("Full sun to part sun", ["full_sun", "part_sun"]),
        ("Full Sun / Part Sun", ["full_sun", "part_sun"]),
        ("Full to partial sun", ["full_sun", "part_sun"]),
        ("Sun - Part Sun", ["full_sun", "part_sun"]),
    ],
    "sun_to_part_shade": [
        ("Full sun to part shade", ["full_sun", "part_shade"]),
        ("Sun to Part Shade", ["full_sun", "part_shade"]),
        ("Full sun to partial shade", ["full_sun", "part_shade"]),
        ("Full Sun-Part Shade", ["full_sun", "part_shade"]),
        ("Sun or partial shade", ["full_sun", "part_shade"]),
        ("SUN/PART SHADE", ["full_sun", "part_shade"]),
    ],
    "part_shade": [
        ("Part shade", ["part_shade"]),
        ("Partial Shade", ["part_shade"]),
        ("Part shade (3-6 hours of morning sun)", ["part_shade"]),
        ("Part Sun to Part Shade", ["part_sun", "part_shade"]),
        ("Dappled or part shade", ["part_shade"]),
    ],
    "part_to_shade": [
        ("Part shade to full shade", ["part_shade", "full_shade"]),
        ("Part Shade / Shade", ["part_shade", "full_shade"]),
        ("Partial to full shade", ["part_shade", "full_shade"]),
        ("Shade to part shade", ["part_shade", "full_shade"]),
        ("Shade", ["full_shade"]),
    ],
    "sun_or_shade": [("Sun or shade", ["full_sun", "full_shade"])],
}
_LIGHT_FOREIGN = {
    "full_sun": ("Plein soleil", "Pleno sol"),
    "part_sun": ("Mi-soleil", "Sol parcial"),
    "part_shade": ("Mi-ombre", "Media sombra"),
    "full_shade": ("Ombre", "Sombra"),
}
INDOOR_LIGHT = [
    "Bright, indirect light",
    "Medium to bright indirect light",
    "Low to medium light",
    "Bright filtered light",
]


def light(plant: Plant, supplier: Supplier, rng: Rng) -> Fact:
    """Exposure. Indoor light words name none of the four classes, so they are no `light` value."""
    label = rng.choice(["Light", "Exposure", "EXPOSURE", "Sun", "Light needs", "Location"])
    if plant.light == "indoor":
        text = rng.choice(INDOOR_LIGHT)
        return Fact("indoor_light", text, "Light", text, text)
    text, value = rng.choice(LIGHT[plant.light])
    if supplier.country == "GB" and re.search(r"part(ial)? sun", text.lower()):
        text, value = "Full sun", ["full_sun"]
    other = {}
    for at, code in enumerate(("fr", "es")):
        words = [_LIGHT_FOREIGN[v][at] for v in value]
        joined = {"fr": " à ", "es": " a "}[code].join([words[0], *(w.lower() for w in words[1:])])
        other[code] = (FOREIGN["light"][code], joined)
    if label == "Sun" and "sun" in text.lower().split()[0]:
        label = "Light"
    return Fact("light", value, label, text, text, other)
