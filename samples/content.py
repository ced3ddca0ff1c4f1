"""What one tag says: its names and facts, chosen and worded for one plant, supplier and seed."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace
from typing import Any

import climate
import trade
import wording as w
from plants import GARDEN_CENTRE, Plant, Supplier, cultivar, raiser_code
from wording import Fact, Said

Rng = random.Random


@dataclass(frozen=True)
class Line:
    """A line of names or small print and the values it states."""

    text: str
    says: tuple[Said, ...] = ()


@dataclass(frozen=True)
class Content:
    """Everything a layout may print. It need not print all of it: the truth is what it did print."""

    plant: Plant
    supplier: Supplier
    title: Line
    subtitle: Line | None
    botanical: Line | None
    french: Line
    spanish: Line
    also: Line | None
    series: Line | None
    maker: Line
    facts: tuple[Fact, ...]
    small_print: tuple[Line, ...]
    patents: Fact | None
    gtin: str
    price: Fact
    container: Fact
    passport: tuple[str, ...]
    tagline: str

    def fact(self, name: str) -> Fact | None:
        return next((fact for fact in self.facts if fact.field == name), None)


def botanical_value(
    printed: str, cultivar_name: str | None = None, trade: str | None = None
) -> dict[str, Any]:
    """A botanical name in the record's shape.

    >>> botanical_value("Nepeta × faassenii", "Tamsel")["name"]
    "Nepeta × faassenii 'Tamsel'"
    """
    words = printed.replace("× ", "×").split()
    hybrid = any(word.startswith("×") for word in words)
    genus, rest = words[0].lstrip("×"), words[1:]
    species = rest[0].lstrip("×") if rest else None
    return {
        "name": printed + (f" '{cultivar_name}'" if cultivar_name else ""),
        "genus": genus,
        "species": species,
        "infraspecific": " ".join(rest[1:]) or None,
        "hybrid": hybrid,
        "cultivar": cultivar_name,
        "group": None,
        "trade_designation": trade,
    }


def _common(text: str) -> Said:
    return Said("common_names", text, text)


def _names(
    plant: Plant, supplier: Supplier, cv: str | None, rng: Rng, selling: bool
) -> dict[str, Line | None]:
    common = rng.choice(plant.common)
    printed = plant.older if plant.older and rng.random() < 0.35 else plant.printed
    latin = printed.replace("× ", rng.choice(["× ", "x ", "×", "× "]))
    if plant.genus == common and cv is None:
        latin = printed
    quote = rng.choice(["''", "''", "‘’", "‘’", '""'])
    style = rng.choice(
        ["split", "split", "joined", "plain", "trade" if supplier.patents and selling else "plain"]
    )
    if cv is None:
        botanical = Line(latin, (Said("botanical_name", botanical_value(printed), latin),))
        return {"title": Line(common, (_common(common),)), "subtitle": None, "botanical": botanical}
    code = raiser_code(rng) if style == "trade" else cv
    with_cv = f"{latin} {quote[0]}{code}{quote[1]}"
    value = botanical_value(printed, code, cv if style == "trade" else None)
    botanical = Line(with_cv, (Said("botanical_name", value, with_cv),))
    if style == "joined":
        name = f"{cv} {common}"
        plain = Line(latin, (Said("botanical_name", botanical_value(printed), latin),))
        said = (_common(name), Said("selling_name", cv, cv))
        return {"title": Line(name, said), "subtitle": None, "botanical": plain}
    if style == "plain":
        return {"title": Line(common, (_common(common),)), "subtitle": None, "botanical": botanical}
    mark = rng.choice(["®", "™"]) if style == "trade" else ""
    shown = cv + mark if mark else rng.choice([cv, f"{quote[0]}{cv}{quote[1]}"])
    return {"title": Line(shown), "subtitle": Line(common, (_common(common),)), "botanical": botanical}


def _facts(plant: Plant, supplier: Supplier, rng: Rng, gaps: float) -> list[Fact]:
    """Facts in the order a label gives them; each may be left out with chance `gaps`."""
    made: list[Fact | None] = [
        trade.kind(plant, rng),
        w.light(plant, supplier, rng),
        w.size("height", plant.height, supplier, rng),
    ]
    if plant.flower_height:
        made.append(w.size("flower_height", plant.flower_height, supplier, rng))
    made.append(w.size("spread", plant.spread, supplier, rng))
    if plant.spacing and rng.random() < 0.75:
        made.append(w.size("spacing", plant.spacing, supplier, rng))
    rows = next((t[5:] for t in plant.traits if t.startswith("rows:")), None)
    if rows:
        ends = [float(n) for n in rows.split("-")]
        made.append(w.size("row_spacing", (ends[0], ends[-1]), supplier, rng))
    if plant.zones:
        made.extend(climate.hardiness(plant.zones, supplier, rng))
    if plant.months:
        made.append(climate.bloom(plant.months, supplier, rng))
    if plant.colours and rng.random() < 0.5:
        made.append(trade.colour(plant, supplier, rng))
    made.append(trade.days(plant, rng))
    made.extend(
        trade.free_text(name, plant, supplier, rng)
        for name in ("water", "soil", "feeding")
        if rng.random() < 0.65
    )
    made.extend([trade.native(plant, rng), trade.warning(plant, rng), *trade.extras(plant, rng)])
    kept = [fact for fact in made if fact is not None]
    return [fact for fact in kept if fact.field == "warnings" or rng.random() > gaps]


def _vary(plant: Plant, rng: Rng) -> Plant:
    """The same species as another house would describe it: figures a little larger or smaller."""

    def stretch(span: tuple[float, float] | None) -> tuple[float, float] | None:
        if span is None:
            return None
        factor = rng.choice([0.7, 0.8, 0.9, 1.0, 1.0, 1.1, 1.2, 1.35])
        step = 12 if span[1] > 60 else 2 if span[1] > 14 else 1
        low, high = (max(step, round(end * factor / step) * step) for end in span)
        return float(low), float(high)

    zones = plant.zones
    if zones and rng.random() < 0.4:
        low = max(2, int(zones[0]) + rng.choice([-1, 1]))
        zones = (str(low), str(max(low + 2, int(zones[1]) + rng.choice([-1, 0, 1]))))
    return replace(
        plant,
        height=stretch(plant.height) or plant.height,
        spread=stretch(plant.spread) or plant.spread,
        spacing=stretch(plant.spacing),
        flower_height=None
        if plant.flower_height is None
        else (plant.flower_height[0], plant.flower_height[1]),
        zones=zones,
    )


def write_content(plant: Plant, supplier: Supplier, rng: Rng, cultivar_name: str | None = None) -> Content:
    """One tag's content. Give `cultivar_name` to have two suppliers describe the same plant."""
    cv = cultivar_name or (cultivar(rng) if rng.random() < 0.8 else None)
    names = _names(plant, supplier, cv, rng, selling=cultivar_name is None)
    varied = _vary(plant, rng)
    others = [name for name in plant.common if name not in (names["title"] or Line("")).text]
    used = names["subtitle"].text if names["subtitle"] else ""
    others = [name for name in others if name != used and name not in names["title"].text]  # type: ignore[union-attr]
    also = others[0] if others and rng.random() < 0.4 else None
    series = rng.choice(supplier.series) if supplier.series and cv and rng.random() < 0.6 else None
    mark = rng.choice(["™", "®", "", ""])
    series_text = rng.choice(
        [f"{series}{mark} Series", f"{series}{mark} series", f"The {series}{mark} Series"]
    )
    maker = rng.choice(["Grown by {}", "{}", "{}", "From {}", "Grower: {}"]).format(supplier.name)
    if rng.random() < 0.4:
        maker += rng.choice([", ", " · "]) + supplier.town
    filler = trade.INDOOR_PRINT if plant.light == "indoor" else trade.SMALL_PRINT
    prints = [Line(text) for text in rng.sample(filler, min(len(filler), rng.randint(2, 6)))]
    return Content(
        plant=plant,
        supplier=supplier,
        title=names["title"] or Line(""),
        subtitle=names["subtitle"],
        botanical=names["botanical"],
        french=Line(plant.french, (_common(plant.french),)),
        spanish=Line(plant.spanish, (_common(plant.spanish),)),
        also=Line(f"{rng.choice(['Also called', 'Also known as', 'a.k.a.'])} {also}", (_common(also),))
        if also
        else None,
        series=Line(series_text, (Said("series", series, series_text),)) if series else None,
        maker=Line(maker, (Said("supplier", supplier.name, maker),)),
        facts=tuple(_facts(varied, supplier, rng, rng.choice([0.0, 0.1, 0.1, 0.3]))),
        small_print=tuple(prints),
        patents=trade.patents(supplier, rng) if supplier.patents and cv and rng.random() < 0.6 else None,
        gtin=trade.gtin(rng),
        price=trade.price(supplier, plant, rng),
        container=trade.container(plant, supplier, rng),
        passport=tuple(trade.passport(plant, supplier, rng)),
        tagline=rng.choice(trade.TAGLINES),
    )


SHOP = GARDEN_CENTRE
