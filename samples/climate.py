"""How the trade words hardiness and bloom time."""

from __future__ import annotations

import random

from plants import Supplier
from wording import FOREIGN, Fact

Rng = random.Random

# ---------------------------------------------------------------- hardiness

_COLD_F = {str(zone): 10 * zone - 70 for zone in range(1, 13)}
_RHS = {
    "2": "H7",
    "3": "H7",
    "4": "H7",
    "5": "H7",
    "6": "H6",
    "7": "H5",
    "8": "H4",
    "9": "H3",
    "10": "H2",
    "11": "H2",
}


def hardiness(zones: tuple[str, str], supplier: Supplier, rng: Rng) -> list[Fact]:
    """Hardiness as one house would print it: zones, or a lowest temperature, or an RHS rating."""
    low, high = zones
    if supplier.country == "GB":
        rating = _RHS[low]
        facts = [Fact("rhs_rating", rating, "RHS hardiness", rating, f"RHS {rating}")]
        celsius = {"H7": -20, "H6": -20, "H5": -15, "H4": -10, "H3": -5, "H2": 1}[rating]
        if rng.random() < 0.6 and rating in ("H6", "H5", "H4"):
            words = f"{celsius}°C".replace("-", rng.choice(["-", "−"]))
            facts.append(
                Fact("min_temperature", {"celsius": float(celsius)}, "Hardy to", words, f"Hardy to {words}")
            )
        return facts
    draw = rng.random()
    if draw < 0.13 and int(low) <= 8 and supplier.country in ("US", "CA"):
        return [_lowest_temperature(low, rng)]
    if draw < 0.28:
        words = rng.choice(["Hardy to zone {}", "Hardy to Zone {}", "Winter hardy to USDA zone {}"]).format(
            low
        )
        other = {"fr": ("Rustique", f"jusqu'en zone {low}"), "es": ("Resiste hasta", f"zona {low}")}
        return [Fact("hardiness", {"min_zone": low, "max_zone": None}, "", words, words, other)]
    if rng.random() < 0.25:
        low, high = low + rng.choice("ab"), high + rng.choice("ab")
    join = rng.choice(["-", "-", "–", " to ", " - "])
    span = f"{low}{join}{high}"
    label = rng.choice(["Zone", "Zones", "Hardiness zone", "USDA Zones", "Hardiness", "USDA zone", "ZONES"])
    phrase = rng.choice(
        [f"Zones {span}", f"USDA {span}", f"USDA Zones {span}", f"Hardy in zones {span}", f"Zone {span}"]
    )
    other = {"fr": ("Zones", f"{low} à {high}"), "es": ("Zonas", f"{low} a {high}")}
    facts = [Fact("hardiness", {"min_zone": low, "max_zone": high}, label, span, phrase, other)]
    if rng.random() < 0.12 and supplier.country == "US":
        hot, cool = rng.randint(8, 10), rng.randint(1, 3)
        words = f"{hot}-{cool}"
        facts.append(
            Fact("heat_zones", {"coolest": cool, "hottest": hot}, "Heat zones", words, f"Heat zones {words}")
        )
    if rng.random() < 0.12 and low.isdigit():
        facts.append(_lowest_temperature(low, rng))
    return facts


def _lowest_temperature(zone: str, rng: Rng) -> Fact:
    fahrenheit = _COLD_F[zone] + 0
    figure = f"{fahrenheit}".replace("-", rng.choice(["-", "-", "−", "–"]))
    words = rng.choice([f"{figure}°F", f"{figure}° F", f"{figure} °F"])
    if rng.random() < 0.3:
        words += f" ({round((fahrenheit - 32) / 1.8)}°C)".replace("(-", "(−")
    value = {"celsius": round((fahrenheit - 32) / 1.8, 4)}
    return Fact("min_temperature", value, "Hardy to", words, f"Hardy to {words}")


# ---------------------------------------------------------------- bloom

MONTHS = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]
_SEASON_WORDS = {
    3: ("Early spring", "early_spring"),
    4: ("Mid spring", "mid_spring"),
    5: ("Late spring", "late_spring"),
    6: ("Early summer", "early_summer"),
    7: ("Midsummer", "mid_summer"),
    8: ("Late summer", "late_summer"),
    9: ("Early fall", "early_fall"),
    10: ("Fall", "fall"),
}
_WIDE = {
    3: ("Spring", "spring"),
    4: ("Spring", "spring"),
    5: ("Spring", "spring"),
    6: ("Summer", "summer"),
    7: ("Summer", "summer"),
    8: ("Summer", "summer"),
    9: ("Fall", "fall"),
    10: ("Fall", "fall"),
}
_SEASON_FOREIGN = {
    "spring": ("printemps", "primavera"),
    "summer": ("été", "verano"),
    "fall": ("automne", "otoño"),
}


def bloom(months: tuple[int, int], supplier: Supplier, rng: Rng) -> Fact:
    """Bloom time: season words or months. `seasons` are the words named, `months` every month covered."""
    first, last = months
    label = rng.choice(
        ["Bloom time", "Blooms", "Bloom Time", "Flowers", "BLOOM", "Flowering time", "Bloom period"]
    )
    numbers = list(range(first, last + 1))
    other = _foreign_seasons(first, last)
    draw = rng.random()
    if supplier.country in ("NL", "GB") or draw < 0.3:
        text = _months_text(first, last, supplier, rng)
        value = {"text": text, "seasons": [], "months": numbers}
    else:
        book = _WIDE if draw < 0.6 else _SEASON_WORDS
        ends = [book[first]] if book[first] == book[last] else [book[first], book[last]]
        autumn = supplier.country == "GB"
        words = [
            word.replace("Fall", "Autumn").replace("fall", "autumn") if autumn else word for word, _ in ends
        ]
        text = rng.choice([" to ", " to ", " - ", " through "]).join(
            [words[0], *(w.lower() for w in words[1:])]
        )
        value = {"text": text, "seasons": [season for _, season in ends], "months": []}
    lower = text if text.startswith(tuple(m[:3] for m in MONTHS)) else text[0].lower() + text[1:]
    return Fact("bloom", value, label, text, rng.choice(["Blooms {}", "Flowers {}"]).format(lower), other)


def _months_text(first: int, last: int, supplier: Supplier, rng: Rng) -> str:
    if first == last:
        return MONTHS[first - 1]
    short = rng.random() < 0.4
    names = [MONTHS[m - 1][:3] if short else MONTHS[m - 1] for m in (first, last)]
    return rng.choice([" - ", "-", " to ", "–"]).join(names)


def _foreign_seasons(first: int, last: int) -> dict[str, tuple[str, str]]:
    other = {}
    for at, code in enumerate(("fr", "es")):
        words = [_SEASON_FOREIGN[_WIDE[m][1]][at] for m in (first, last)]
        unique = list(dict.fromkeys(words))
        joined = {"fr": " à l'", "es": " a "}[code].join(unique)
        other[code] = (FOREIGN["bloom"][code], joined.capitalize())
    return other
