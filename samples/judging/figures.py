"""Lengths, temperatures, zones and numbers as tags print them, each with the value it stands for."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Any

CM = {"in": 2.54, "ft": 30.48, "cm": 1.0, "m": 100.0}
FRACTIONS = {0.25: "¼", 0.5: "½", 0.75: "¾"}
PLAIN_FRACTIONS = {0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}
DASHES = ("-", "–", "–", " - ", " – ", "—", " to ", " to ")
UNITS = {
    "in": ('"', '"', "″", " in.", " in", " inches", "in", " IN"),
    "ft": ("'", "′", " ft.", " ft", " feet", "ft"),
    "cm": (" cm", "cm", " cm."),
    "m": (" m", "m"),
}
OTHER_INCHES = {"fr": " po", "es": " pulg.", "de": " Zoll", "nl": " inch"}


@dataclass(frozen=True, slots=True)
class Hand:
    """One printer's habits, kept over a whole side."""

    dash: str
    inch: str
    foot: str
    cm: str
    metre: str
    fractions: str  # "glyph", "hyphen" or "space": 1½, 1-1/2, 1 1/2
    comma: bool
    both: str  # second unit: "", "( )" or "/"
    repeat: bool


def choose_hand(rng: Random, both: str) -> Hand:
    return Hand(
        rng.choice(DASHES),
        rng.choice(UNITS["in"]),
        rng.choice(UNITS["ft"]),
        rng.choice(UNITS["cm"]),
        rng.choice(UNITS["m"]),
        rng.choice(("glyph", "glyph", "hyphen", "space")),
        False,
        both,
        rng.random() < 0.2,
    )


@dataclass(frozen=True, slots=True)
class Length:
    """A length as planned, in the unit printed first; `form` is range, single or upto."""

    low: float
    high: float
    unit: str
    form: str

    @property
    def value(self) -> dict[str, float | None]:
        if self.form == "single":
            return {"min_cm": _cm(self.high, self.unit), "max_cm": _cm(self.high, self.unit)}
        low = None if self.form == "upto" else _cm(self.low, self.unit)
        return {"min_cm": low, "max_cm": _cm(self.high, self.unit)}


def _cm(number: float, unit: str) -> float:
    return round(number * CM[unit], 2)


def plan_length(rng: Random, inches: tuple[int, int], metric: bool) -> Length:
    """The figures a tag would print for this many inches, in the unit the trade would take."""
    low, high = float(inches[0]), float(inches[1])
    form = rng.choices(("range", "single", "upto"), (70, 17, 13))[0]
    if metric:
        if high >= 100 and rng.random() < 0.8:
            return _ordered(_step(low * 0.0254, 0.1), _step(high * 0.0254, 0.1), "m", form)
        step = 10 if high > 50 else 5 if high > 8 else 1
        return _ordered(_step(low * 2.54, step), _step(high * 2.54, step), "cm", form)
    if high >= 48 or (high >= 24 and low % 6 == 0 and rng.random() < 0.4):
        step = 1.0 if high > 96 else 0.5
        return _ordered(_step(low / 12, step), _step(high / 12, step), "ft", form)
    return _ordered(low, high, "in", form)


def _step(number: float, step: float) -> float:
    return max(round(round(number / step) * step, 2), step)


def _ordered(low: float, high: float, unit: str, form: str) -> Length:
    return Length(low, high, unit, "single" if form == "range" and low >= high else form)


def say_length(length: Length, hand: Hand, language: str = "en") -> str:
    """`12-18"`, `1½ to 2 ft.`, `up to 45 cm (18 in.)`; other languages keep figures and unit."""
    said = _length(length, hand, language)
    if not hand.both or language != "en":
        return said
    other = _other(length)
    second = _length(
        Length(other.low, other.high, other.unit, "range" if length.form == "range" else "single"), hand
    )
    return f"{said} ({second})" if hand.both == "( )" else f"{said} / {second}"


def _length(length: Length, hand: Hand, language: str = "en") -> str:
    unit = {"in": hand.inch, "ft": hand.foot, "cm": hand.cm, "m": hand.metre}[length.unit]
    dash = hand.dash
    if language != "en":
        unit = {"in": OTHER_INCHES[language], "ft": {"fr": " pi", "es": " pies"}.get(language, " ft")}.get(
            length.unit, unit
        )
        dash = "-" if " to " in dash else dash
    high = _number(length.high, hand, length.unit)
    if length.form == "single" or length.low == length.high:
        return high + unit
    if length.form == "upto":
        upto = {"en": "up to ", "fr": "jusqu'à ", "es": "hasta ", "de": "bis ", "nl": "tot "}[language]
        return upto + high + unit
    low = _number(length.low, hand, length.unit)
    if (
        hand.fractions == "hyphen"
        and length.unit in ("in", "ft")
        and "/" in low + high
        and dash.strip() in "-–—"
    ):
        dash = " to "
    return f"{low}{unit if hand.repeat else ''}{dash}{high}{unit}"


def _other(length: Length) -> Length:
    centimetres = [part * CM[length.unit] for part in (length.low, length.high)]
    if length.unit in ("in", "ft"):
        if centimetres[1] >= 200:
            return Length(*(_step(part / 100, 0.1) for part in centimetres), "m", "range")
        step = 5 if centimetres[1] > 40 else 1
        return Length(*(_step(part, step) for part in centimetres), "cm", "range")
    if centimetres[1] >= 120:
        return Length(*(_step(part / 30.48, 0.5) for part in centimetres), "ft", "range")
    return Length(*(_step(part / 2.54, 1) for part in centimetres), "in", "range")


def _number(number: float, hand: Hand, unit: str) -> str:
    whole, part = int(number), round(number - int(number), 2)
    if not part:
        return str(whole)
    if unit in ("m", "cm"):
        return f"{number:g}".replace(".", "," if hand.comma else ".")
    if hand.fractions == "glyph":
        return f"{whole or ''}{FRACTIONS[part]}"
    joint = "-" if hand.fractions == "hyphen" else " "
    return f"{whole}{joint}{PLAIN_FRACTIONS[part]}" if whole else PLAIN_FRACTIONS[part]


def zone_floor(zone: str) -> int:
    """The lower limit of a USDA zone in degrees Fahrenheit: zone 5 or 5a is -20 (USDA map, ARS 2023)."""
    number, half = int(zone.rstrip("ab")), zone.endswith("b")
    return -60 + 10 * (number - 1) + (5 if half else 0)


def say_temperature(
    fahrenheit: int, celsius_first: bool, both: bool, rng: Random
) -> tuple[str, dict[str, float]]:
    celsius = round((fahrenheit - 32) / 1.8)
    minus = rng.choice(("-", "–", "−"))
    degree = rng.choice(("°{}", "° {}"))
    f = f"{minus if fahrenheit < 0 else ''}{abs(fahrenheit)}{degree.format('F')}"
    c = f"{minus if celsius < 0 else ''}{abs(celsius)}{degree.format('C')}"
    first, second = (c, f) if celsius_first else (f, c)
    value = float(celsius) if celsius_first else round((fahrenheit - 32) / 1.8, 4)
    return (f"{first} ({second})" if both else first), {"celsius": value}


def check_digit(digits: str) -> str:
    """The last digit of a GTIN: weights 3, 1 from the right, up to the next ten (GS1)."""
    total = sum(int(digit) * (3 if place % 2 == 0 else 1) for place, digit in enumerate(reversed(digits)))
    return str(-total % 10)


def in_store_number(rng: Random, european: bool) -> str:
    """A number no product is ever given: EAN-13 with prefix 20 to 29, or UPC-A that begins with 4."""
    head = str(rng.randint(20, 29)) if european else "4"
    digits = head + "".join(str(rng.randint(0, 9)) for _ in range(12 - len(head) if european else 10))
    return digits + check_digit(digits)


def say_price(rng: Random, currency: str) -> tuple[str, dict[str, Any]]:
    amount = f"{rng.randint(2, 49)}.{rng.choice(('99', '49', '95', '50'))}"
    printed = {"USD": f"${amount}", "GBP": f"£{amount}", "EUR": f"€ {amount}"}[currency]
    return printed, {"amount": amount, "currency": currency}
