"""What a plant wants and what is claimed of it: class, water, soil, feeding, harvest, warnings."""

from __future__ import annotations

from random import Random
from typing import Any

import wordbook as words
from facts import Fact, word_fact
from species import Species


def care_facts(rng: Random, s: Species, language: str, column: int) -> Any:
    category = rng.choice(words.CATEGORY[s.kind])
    other = category[column] if 0 < column < len(category) else ""
    kind = [s.kind] if not ("vine" in s.flags and rng.random() < 1) else [s.kind, "vine"]
    text = category[0] if len(kind) == 1 else f"{category[0]} vine"
    fact = word_fact(rng, "categories", text, kind, text, "", language, other if len(kind) == 1 else "")
    yield fact
    dry = "silver" in s.colours or s.kind == "succulent"
    water = words.WATER[rng.choice((1, 5, 6))] if dry else rng.choice(words.WATER[:5])
    for field, row in (
        ("water", water),
        ("soil", rng.choice(words.SOIL)),
        ("feeding", rng.choice(words.FEEDING)),
    ):
        other = row[column] if 0 < column < len(row) else ""
        text = row[0]
        said = (
            f"{text} water"
            if field == "water" and " " not in text
            else f"{text} soil"
            if field == "soil"
            else text
        )
        yield word_fact(rng, field, text, text, said, "drop" if field == "water" else "", language, other)
    if "days" in s.notes:
        yield _days(rng, s)
    if "sow" in s.notes:
        depth = f"{s.notes['sow']} in. deep"
        yield word_fact(rng, "also:sowing_depth", depth, depth, f"Sow {depth}", "", "")
        sprout = f"{rng.randint(5, 8)}-{rng.randint(9, 14)} days"
        yield word_fact(rng, "also:germination", sprout, sprout, f"Germinates in {sprout}", "", "")
    yield from _claims(rng, s)


def _days(rng: Random, s: Species) -> Fact:
    low, high = (int(part) for part in s.notes["days"].split("-"))
    if rng.random() < 0.4:
        text, value = f"{high} days", {"min_days": high, "max_days": high}
    else:
        text, value = f"{low}{rng.choice(('-', '–', ' to '))}{high} days", {"min_days": low, "max_days": high}
    return word_fact(rng, "days_to_maturity", text, value, f"Matures in {text}", "", "")


def _claims(rng: Random, s: Species) -> Any:
    for warned in [part for part in s.notes.get("warn", "").split(",") if part]:
        if rng.random() < 0.75:
            text = rng.choice(words.WARN[warned])
            yield Fact("warnings", "", text, [text.rstrip(".")], text)
    if "native" in s.notes and rng.random() < 0.7:
        text = rng.choice(words.NATIVE).format(s.notes["native"])
        yield Fact("native_claim", "", text, text, text)
    for flag, field in (("deer", "also:resists"), ("bees", "also:attracts")):
        if flag in s.flags:
            text = rng.choice(words.ALSO[field][1])
            yield Fact(field, "", text, [flag], text)
    if (
        s.kind in ("annual", "perennial", "tender_perennial", "biennial", "bulb", "shrub")
        and rng.random() < 0.3
    ):
        use = rng.choice(words.USES)
        yield word_fact(rng, "also:uses", use, use, f"Use for {use.lower()}", "", "")
    if rng.random() < 0.25:
        habit = rng.choice(words.HABIT)
        yield word_fact(rng, "also:habit", habit, habit, f"{habit} habit", "", "")
