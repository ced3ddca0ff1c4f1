"""Lengths as the printers of the second part set them; one printer keeps one way over a tag."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

import second_words as words
from figures import Length


@dataclass(frozen=True, slots=True)
class Habit:
    """One printer's way with lengths; `pick` chooses the words once a tag."""

    metric: bool
    units: dict[str, str]
    both: str  # second unit: "", "(" or "/"
    comma: bool
    pick: int


def choose_habit(rng: Random, market: str, both: bool) -> Habit:
    units = {
        "in": rng.choice((" in", "in", " ins.", " inches", '"', "in.")),
        "ft": rng.choice((" ft", "ft", " feet", "'", "ft.")),
        "cm": rng.choice((" cm", "cm", "cm")),
        "m": rng.choice((" m", "m")),
    }
    second = rng.choice(("", "", "", "(", "/")) if both else ""
    return Habit(market in ("uk", "de", "sv"), units, second, market in ("de", "sv"), rng.randrange(12))


def say(length: Length, habit: Habit, tongue: str = "en") -> str:
    """A length in the words of that language; the figures stay the same."""
    high, unit = _figure(length.high, habit), habit.units[length.unit]
    if tongue != "en":
        unit = {"in": " pulg.", "ft": " pies"}.get(length.unit, unit)
    if length.form == "upto":
        return words.UPTO[tongue][habit.pick % len(words.UPTO[tongue])] + high + unit
    if length.form == "single":
        about = ("", "", *words.ABOUT[tongue])
        return about[habit.pick % 3 if habit.pick < 6 else 0] + high + unit
    low, joint = _figure(length.low, habit), words.TO[tongue][habit.pick % len(words.TO[tongue])]
    if not (low + high).isdigit() and joint == "-":
        joint = "–"
    return f"{low}{joint}{high}{unit}"


def say_both(length: Length, habit: Habit) -> str:
    """The length, and what it is in the other units, rounded as tags round it."""
    text = say(length, habit)
    if not habit.both or length.form == "upto":
        return text
    high, unit = _converted(length.high, length)
    low = _converted(length.low, length)[0] if length.form == "range" else high
    second = f"{high}{unit}" if low == high else f"{low}–{high}{unit}"
    return f"{text} ({second})" if habit.both == "(" else f"{text}/{second}"


def _converted(number: float, length: Length) -> tuple[str, str]:
    """Figure and unit on the other side; the larger end chooses the unit for both."""
    if length.unit in ("cm", "m"):
        inches, most = (part * (100 if length.unit == "m" else 1) / 2.54 for part in (number, length.high))
        return (f"{max(round(inches), 1)}", "in") if most < 48 else (f"{max(round(inches / 12), 1)}", "ft")
    centimetres, most = (part * (30.48 if length.unit == "ft" else 2.54) for part in (number, length.high))
    return (f"{round(centimetres)}", "cm") if most < 100 else (f"{centimetres / 100:.1f}", "m")


def _figure(number: float, habit: Habit) -> str:
    """`2`, `1,5`, `1.5`, `1½` or `1 1/2`: only halves are ever printed."""
    if number == int(number):
        return str(int(number))
    if habit.metric or habit.pick % 3 == 0:
        return f"{number:g}".replace(".", "," if habit.comma else ".")
    whole = str(int(number) or "")
    return f"{whole}½" if habit.pick % 3 == 1 else f"{whole} 1/2".strip()
