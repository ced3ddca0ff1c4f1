"""How a plant grows, as one tag says it: size, light, cold, bloom."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

import wordbook as words
from care import care_facts
from facts import Fact, word_fact
from figures import Hand, Length, plan_length, say_length, say_temperature, zone_floor
from species import Species


def growing_facts(rng: Random, s: Species, hand: Hand, language: str, metric: bool, market: str) -> Any:
    column = words.LANGUAGES.index(language) if language else 0
    height = plan_length(rng, s.height, metric)
    spread = plan_length(rng, s.spread, metric)
    yield _length_fact(rng, "height", height, hand, language, "Grows {} tall", "rise")
    if s.kind != "vine" or rng.random() < 0.5:
        yield _length_fact(rng, "spread", spread, hand, language, "Spreads {}", "reach")
    if "stem" in s.notes:
        low, high = (int(part) for part in s.notes["stem"].split("-"))
        stem = plan_length(rng, (low, high), metric)
        yield _length_fact(rng, "flower_height", stem, hand, "", "Flower stems {}", "")
    yield from _light(rng, s, language, column)
    yield from _cold(rng, s, hand, language, market)
    yield from _bloom(rng, s, language, column, market)
    if s.kind not in ("tree", "houseplant") and s.spread[1] <= 60:
        gap = plan_length(rng, (max(s.spread[0] - 2, 2), max(s.spread[1] - 2, 4)), metric)
        yield _length_fact(rng, "spacing", gap, hand, language, "Space plants {} apart", "apart")
    if s.kind in ("vegetable", "herb") and rng.random() < 0.6:
        rows = plan_length(rng, (s.spread[0] + 10, s.spread[1] + 14), metric)
        yield _length_fact(rng, "row_spacing", rows, hand, "", "Rows {} apart", "")
    yield from care_facts(rng, s, language, column)


def _length_fact(
    rng: Random, field: str, length: Length, hand: Hand, language: str, sentence: str, icon: str
) -> Fact:
    text = say_length(length, hand)
    if length.form == "upto" and rng.random() < 0.4:
        text = text[0].upper() + text[1:]
    other = say_length(length, hand, language) if language else ""
    # A sentence begins small inside: "Grows up to 2 ft. tall".
    inner = text[0].lower() + text[1:]
    return word_fact(rng, field, text, length.value, sentence.format(inner), icon, language, other)


def _light(rng: Random, s: Species, language: str, column: int) -> Any:
    if s.kind == "houseplant":
        text = words.INDOOR["".join(s.light)]
        yield word_fact(rng, "also:indoor_light", text, text, text, "half", language)
        return
    codes = [code for code in s.light if code in words.CLASSES]
    capital = rng.random() < 0.3
    chosen = [rng.choice(words.LIGHT_ENGLISH[code][:3]) for code in codes]
    joint = rng.choice((" to ", " to ", " or ", ", ", "/", " - "))
    text = joint.join(
        part if n == 0 or capital or "," in joint else part.lower() for n, part in enumerate(chosen)
    )
    text = f"{text} (6+ hrs)" if codes == ["F"] and rng.random() < 0.15 else text
    value = [words.CLASSES[code] for code in codes]
    join = words.JOIN.get(language, " to ")
    other = join.join(
        words.LIGHT[c][column] if n == 0 else words.LIGHT[c][column].lower() for n, c in enumerate(codes)
    )
    sentence = rng.choice(("Plant in {}", "Grow in {}", "Best in {}", "Prefers {}")).format(text.lower())
    icon = {"F": "sun", "S": "half", "P": "half", "D": "shade"}[codes[0]]
    yield word_fact(rng, "light", text, value, sentence, icon, language, other if language else "")


def _cold(rng: Random, s: Species, hand: Hand, language: str, market: str) -> Any:
    if "min" in s.notes and rng.random() < 0.6:
        text, value = say_temperature(int(s.notes["min"]), market in ("uk", "eu"), rng.random() < 0.5, rng)
        yield replace(
            word_fact(rng, "min_temperature", text, value, f"Keep above {text}", "cold", ""),
            label="Min. temperature",
        )
    if s.zones is None:
        return
    halves = market in ("us", "ca") and rng.random() < 0.2
    low, high = (f"{zone}{rng.choice('ab')}" if halves else str(zone) for zone in s.zones)
    dash = rng.choice(("-", "–", "–", " to ", " - ", "—"))
    figure = f"{low}{dash}{high}"
    value = {"min_zone": low, "max_zone": high}
    if market == "uk":
        if s.zones[0] <= 6:
            text = f"RHS {'H7' if s.zones[0] <= 5 else 'H6'}"
            yield word_fact(rng, "rhs_rating", text, text[4:], text, "", "")
        return
    if rng.random() < (0.25 if market == "us" else 0.4):
        floor = zone_floor(low)
        text, celsius = say_temperature(floor, market != "us", rng.random() < 0.4, rng)
        yield word_fact(
            rng,
            "min_temperature",
            text,
            celsius,
            f"Hardy to {text}",
            "cold",
            language,
            text if language else "",
        )
        if rng.random() < 0.6:
            return
    text = rng.choice(
        (figure, figure, f"USDA {figure}", f"Zones {figure}", f"Z {figure}" if not halves else figure)
    )
    fact = word_fact(
        rng,
        "hardiness",
        text,
        value,
        f"Hardy in zones {figure}",
        "cold",
        language,
        figure if language else "",
    )
    yield replace(fact, label="Hardiness") if text != figure else fact
    if rng.random() < 0.12 and market == "us":
        warm = rng.randint(7, 9)
        heat = f"{warm}{rng.choice('-–')}1"
        yield word_fact(
            rng, "heat_zones", heat, {"coolest": 1, "hottest": warm}, f"AHS heat zones {heat}", "", ""
        )


def _bloom(rng: Random, s: Species, language: str, column: int, market: str) -> Any:
    if s.bloom is None:
        return
    start, end = s.bloom
    style = rng.choices(("seasons", "months", "short", "roman"), (60, 18, 12, 40 if market == "eu" else 0))[0]
    first, last = words.START[start], words.START[end]
    months = list(range(first, last + 1)) if first <= last else []
    other = ""
    if style == "seasons" or not months:
        a, b = words.SEASONS[start], words.SEASONS[end]
        joint = rng.choice((" to ", " to ", " through ", " – ", "-"))
        text = a[0] if start == end else f"{a[0]}{joint}{b[0]}"
        if language:
            other = a[column] if start == end else f"{a[column]}{words.JOIN[language]}{b[column]}"
        seasons = [words.SEASON_CODES[code] for code in dict.fromkeys((start, end))]
        value: dict[str, Any] = {"text": text.capitalize(), "seasons": seasons, "months": []}
        text = text.capitalize()
    else:
        text, other = _months(rng, style, first, last, language)
        value = {"text": text, "seasons": [], "months": months}
    verb = rng.choice(("Blooms", "Flowers"))
    inner = text.lower() if value["seasons"] else text
    if other:
        other = other[0].upper() + other[1:]
    yield word_fact(rng, "bloom", text, value, f"{verb} {inner}", "flower", language, other)
    if s.colours and rng.random() < 0.6:
        colour = rng.choice(s.colours)
        text = colour.capitalize() if rng.random() < 0.6 else colour
        yield word_fact(rng, "colours", text, colour.split(" and "), f"{colour.capitalize()} flowers", "", "")


def _months(rng: Random, style: str, first: int, last: int, language: str) -> tuple[str, str]:
    if style == "roman":
        dash = rng.choice("-–")
        text = words.ROMAN[first - 1] + (f"{dash}{words.ROMAN[last - 1]}" if last > first else "")
        return text, text if language else ""
    names = [words.MONTHS[n - 1] if style == "months" else words.MONTHS[n - 1][:3] for n in (first, last)]
    joint = rng.choice((" to ", "–", " - ", "-"))
    text = names[0] if first == last else joint.join(names)
    if not language:
        return text, ""
    there = [words.MONTHS_IN[language][n - 1] for n in (first, last)]
    return text, there[0] if first == last else there[0] + words.JOIN[language] + there[1]
