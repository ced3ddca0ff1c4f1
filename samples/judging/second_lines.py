"""The rows of a tag of the second part: each fact with its label, its sentence and its second language."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from random import Random
from typing import Any

import second_words as words
from facts import Fact
from figures import plan_length, say_temperature, zone_floor
from second_lengths import Habit, say, say_both
from species import Species
from wordbook import SEASON_CODES, START


@dataclass(frozen=True, slots=True)
class Line:
    """What stands in one row: label and text in English, `other` in the second language, and its facts."""

    label: str
    text: str
    facts: tuple[Fact, ...]
    sentence: str
    icon: str = ""
    other: tuple[str, str] | None = None

    @property
    def field(self) -> str:
        return self.facts[0].field


@dataclass(frozen=True, slots=True)
class Printer:
    """Who prints: the lot, the way with lengths, the second language ("" for none) and the market."""

    rng: Random
    habit: Habit
    tongue: str
    market: str

    def line(self, field: str, text: str, value: Any, sentence: str, icon: str = "", there: str = "") -> Line:
        """A line of one fact; a phrase printed in two languages has the value "English / other"."""
        foreign = words.label(self.rng, field, self.tongue) if self.tongue and there else ""
        if foreign and isinstance(value, str):
            value = f"{value} / {there}"
        fact = Fact(field, "", text, value)
        other = (foreign, there) if foreign else None
        return Line(self.label(field), text, (fact,), sentence, icon, other)

    def label(self, field: str) -> str:
        """The English label, spelt as the market spells."""
        british = words.label(self.rng, field, "en")
        if self.market in ("us", "es"):
            return british.replace("colour", "color").replace("Fertiliser", "Fertilizer")
        return british

    def phrase(self, field: str, key: str, icon: str = "", value: Any = None) -> Line:
        """A line that says one of the phrases under this key."""
        said = self.rng.choice(words.phrases()[key])
        there = said.others.get(self.tongue, "")
        return self.line(field, said.text, value or said.text, said.sentence, icon, there)


def all_lines(by: Printer, s: Species) -> Iterator[Line]:
    """Everything a tag could say of this plant."""
    yield by.phrase("categories", s.kind, value=[s.kind, "vine"] if "vine" in s.flags else [s.kind])
    yield from _sizes(by, s)
    yield from _light(by, s)
    yield from _cold(by, s)
    if s.bloom:
        yield _bloom(by, *s.bloom)
    yield from _colour(by, s)
    yield by.phrase("water", "dry" if s.kind == "succulent" else "water", "drop")
    yield by.phrase("soil", "soil")
    yield by.phrase("feeding", "feeding")
    if s.kind == "perennial":
        yield by.phrase("also:care", "care")
    if "days" in s.notes:
        low, high = (int(part) for part in s.notes["days"].split("-"))
        text = f"{low}{by.rng.choice((' to ', '–'))}{high} days"
        value = {"min_days": low, "max_days": high}
        yield by.line("days_to_maturity", text, value, f"Ready to harvest in {text}")
    yield from _claims(by, s)


def _claims(by: Printer, s: Species) -> Iterator[Line]:
    for warned in [part for part in s.notes.get("warn", "").split(",") if part]:
        said = by.rng.choice(words.phrases()[f"warn {warned}"])
        there = said.others.get(by.tongue, "")
        fact = Fact("warnings", "", said.text, [f"{said.text} / {there}" if there else said.text])
        yield Line("", said.text, (fact,), said.text, "", ("", there) if there else None)
    if "native" in s.notes:
        text = by.rng.choice(words.NATIVE).format(s.notes["native"])
        yield Line("", text, (Fact("native_claim", "", text, text),), text)
    for flag, (field, choice) in words.WILDLIFE.items():
        if flag in s.flags:
            text, named = by.rng.choice(choice)
            yield Line("", text, (Fact(field, "", text, [named]),), text)
    if s.kind in words.USES:
        use = by.rng.choice(words.USES[s.kind])
        yield by.line("also:uses", use, use, f"Lovely for {use.lower()}")


def _sizes(by: Printer, s: Species) -> Iterator[Line]:
    rng, metric = by.rng, by.habit.metric
    tall, broad = plan_length(rng, s.height, metric), plan_length(rng, s.spread, metric)
    pair: list[Line] = []
    for field, length, icon, sentence in (
        ("height", tall, "rise", "Grows {} tall"),
        ("spread", broad, "reach", "Spreads {} across"),
    ):
        text = say_both(length, by.habit)
        there = say(length, by.habit, by.tongue) if by.tongue else ""
        pair.append(by.line(field, text, length.value, sentence.format(text), icon, there))
    if not by.tongue and "upto" not in (tall.form, broad.form) and rng.random() < 0.3:
        one, two = (line.text for line in pair)
        text = rng.choice((f"H {one} × S {two}", f"{one} high × {two} wide", f"H: {one}  W: {two}"))
        yield Line("Size", text, (pair[0].facts[0], pair[1].facts[0]), text)
    else:
        yield from pair
    if s.kind not in ("tree", "houseplant") and s.spread[1] <= 40:
        yield from _spacing(by, s)


def _spacing(by: Printer, s: Species) -> Iterator[Line]:
    low, high = s.spread
    gap = plan_length(by.rng, (max(low - 2, 2), max(high - 2, 4)), by.habit.metric)
    gap = replace(gap, form="single") if gap.form == "upto" else gap
    shown, there = say(gap, by.habit), say(gap, by.habit, by.tongue) if by.tongue else ""
    apart = by.rng.random() < 0.5
    text = f"{shown} apart" if apart else shown
    line = by.line("spacing", text, gap.value, f"Set plants {shown} apart", "apart", there)
    yield replace(line, label=by.rng.choice(("Plant", "Set out", "Space"))) if apart else line
    if by.tongue in ("de", "sv") and s.kind == "perennial":
        text = f"{by.rng.randint(3, 5)}–{by.rng.randint(6, 9)}"
        yield by.line("also:density", text, text, f"{text} plants per m²", "", text)


def _light(by: Printer, s: Species) -> Iterator[Line]:
    rng = by.rng
    if s.kind == "houseplant":
        text, *others = words.INDOOR["".join(s.light)]
        there = dict(zip(words.TONGUES[1:], others, strict=False)).get(by.tongue, "")
        yield by.line("also:indoor_light", text, text, text, "half", there)
        return
    codes = ["S" if code == "P" and not by.tongue and rng.random() < 0.25 else code for code in s.light]
    parts = [rng.choice(words.LIGHT[code]["en"][: 5 if len(codes) == 1 else 2]) for code in codes]
    text = rng.choice((" to ", " or ", " / ", ", ")).join([parts[0], *(part.lower() for part in parts[1:])])
    there = ""
    if by.tongue:
        joint = {"de": " bis ", "sv": "–", "es": " a "}[by.tongue]
        there = joint.join(rng.choice(words.LIGHT[code][by.tongue]) for code in codes)
        there = there[0].upper() + there[1:]
    icon = {"F": "sun", "S": "half", "P": "half", "D": "shade"}[codes[0]]
    value = [words.CLASSES[code] for code in codes]
    yield by.line("light", text, value, f"Happiest in: {text.lower()}", icon, there)


def _cold(by: Printer, s: Species) -> Iterator[Line]:
    if s.zones is None:
        return
    rng, low, high = by.rng, str(s.zones[0]), str(s.zones[1])
    if by.market == "uk":
        # RHS 2012: H7 is hardier than -20 °C, H6 down to -20 °C; zone 5 begins at -28.9 °C.
        if s.zones[0] <= 6:
            grade = "H7" if s.zones[0] <= 5 else "H6"
            yield by.line("rhs_rating", grade, grade, f"RHS hardiness rating {grade}")
        return
    if by.market == "sv":
        text = f"I–{rng.choice(('III', 'IV', 'V', 'VI'))}"
        yield by.line("also:zones_sweden", text, text, f"Swedish zone {text}", "", text)
        return
    if rng.random() < 0.35:
        text, celsius = say_temperature(zone_floor(low), by.market == "de", rng.random() < 0.4, rng)
        there = text if by.tongue else ""
        yield by.line("min_temperature", text, celsius, f"Frost hardy to {text}", "cold", there)
        if rng.random() < 0.5:
            return
    if by.market == "de":
        text = low + rng.choice(("", "a", "b"))
        value, there = {"min_zone": text, "max_zone": None}, text
    elif rng.random() < 0.2:
        text, there = f"{low} and warmer", f"{low} y más cálidas"
        value = {"min_zone": low, "max_zone": None}
    else:
        text, there = low + rng.choice((" to ", "–", " through ", "-")) + high, f"{low}-{high}"
        value = {"min_zone": low, "max_zone": high}
    sentence = f"Winter hardy in zone{'s' if value['max_zone'] else ''} {text}"
    yield by.line("hardiness", text, value, sentence, "cold", there if by.tongue else "")


def _bloom(by: Printer, start: str, end: str) -> Line:
    months = START[start] <= START[end] and by.rng.random() < (0.7 if by.tongue in ("de", "sv") else 0.4)
    text, there, value, sentence = (_bloom_months if months else _bloom_seasons)(by, start, end)
    return by.line("bloom", text, {"text": text, **value}, sentence, "flower", there)


Bloom = tuple[str, str, dict[str, Any], str]
"""Text, text in the second language, value, sentence."""


def _bloom_months(by: Printer, start: str, end: str) -> Bloom:
    first, last = START[start], START[end]
    names = words.MONTHS["en"][first - 1 : last]
    cut = 3 if by.rng.random() < 0.4 else 12
    ends = [name[:cut] for name in dict.fromkeys((names[0], names[-1]))]
    text, sentence = by.rng.choice((" to ", "–", " until ")).join(ends), "Flowering from {}"
    if len(names) == 3 and by.rng.random() < 0.5:
        text = ", ".join(names)
    if len(ends) == 1 or "," in text:
        sentence = "Flowering in {}"
    there = ""
    if by.tongue:
        known = words.MONTHS[by.tongue]
        there = "–".join(dict.fromkeys((known[first - 1], known[last - 1])))
    return text, there, {"seasons": [], "months": list(range(first, last + 1))}, sentence.format(text)


def _bloom_seasons(by: Printer, start: str, end: str) -> Bloom:
    autumn = "autumn" if by.market in ("uk", "de", "sv") else "fall"
    codes = list(dict.fromkeys((start, end)))
    ends = [words.SEASONS[code] for code in codes]
    text = by.rng.choice((" to ", " until ", " into ")).join(names[0].format(autumn) for names in ends)
    there = ""
    if by.tongue:
        column = words.TONGUES.index(by.tongue)
        there = {"de": " bis ", "sv": " till ", "es": " a "}[by.tongue].join(names[column] for names in ends)
    value = {"seasons": [SEASON_CODES[code] for code in codes], "months": []}
    return text.capitalize(), there, value, f"In flower {text}"


def _colour(by: Printer, s: Species) -> Iterator[Line]:
    """English only: a colour in two languages would be two words of one list."""
    if s.bloom and s.colours:
        colour = s.colours[0]
        yield by.line("colours", colour.capitalize(), colour.split(" and "), f"{colour.capitalize()} blooms")
