"""How two tags' values of one field stand to each other, and by how much they differ."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from ocr_tags.claims.agreement import compare
from ocr_tags.usda import halves
from ocr_tags.values import Bloom, BotanicalName, Days, Hardiness, HeatZones, Length, Temperature

Kind = Literal["same", "fuller", "wording", "overlap", "apart"]
"""`fuller`: one says more, neither contradicts. `wording`: other words, which only a person can weigh.
`overlap`: they differ but share ground. `apart`: both cannot be right."""


@dataclass(frozen=True, slots=True)
class Relation:
    """`by` says how much, a length or words; `size` is for ranking only: 1 is twice as tall, or two zones."""

    kind: Kind
    size: float = 0.0
    by: Length | str = ""

    @property
    def differs(self) -> bool:
        return self.kind in ("overlap", "apart")


SAME = Relation("same")
NEAR = 0.05
"""Share by which two ends may differ: inches on one tag, whole centimetres on the other."""

LIGHT = ("full_sun", "part_sun", "part_shade", "full_shade")
LIFE = frozenset({"annual", "biennial", "perennial", "tender_perennial"})
WOODY = frozenset({"tree", "shrub", "vine"})
SEASONS = ("spring", "summer", "fall", "winter")
PARTS = ("early", "mid", "late")


def relate(field: str, one: Any, other: Any) -> Relation:
    """The relation of two values of this field."""
    rule = _RULES.get(field)
    if rule is not None:
        return rule(one, other)
    if isinstance(one, Length):
        return _lengths(one, other)
    return _words(one, other)


# ---------------------------------------------------------------- figures


def _lengths(one: Length, other: Length) -> Relation:
    if compare(one, other) == "same":
        return SAME
    ends = ((one.min_cm, other.min_cm), (one.max_cm, other.max_cm))
    size = abs(math.log2(_middle(one.min_cm, one.max_cm) / _middle(other.min_cm, other.max_cm)))
    gap = _gap(one.min_cm, one.max_cm, other.min_cm, other.max_cm)
    if gap > NEAR * max(x for pair in ends for x in pair if x is not None):
        return Relation("apart", size, Length(gap, gap))
    known = [(a, b) for a, b in ends if a is not None and b is not None]
    widest = max((abs(a - b) for a, b in known), default=0.0)
    if all(abs(a - b) <= NEAR * max(a, b) for a, b in known):
        return Relation("fuller")
    return Relation("overlap", size, Length(widest, widest))


def _days(one: Days, other: Days) -> Relation:
    if one == other:
        return SAME
    ends = (one.min_days, one.max_days), (other.min_days, other.max_days)
    gap = _gap(*ends[0], *ends[1])
    size = abs(math.log2(_middle(*ends[0]) / _middle(*ends[1])))
    return Relation("apart" if gap > 0 else "overlap", size, f"{gap:g} days" if gap > 0 else "ends differ")


def _middle(low: float | None, high: float | None) -> float:
    ends = [end for end in (low, high) if end]
    return sum(ends) / len(ends) if ends else 1.0


def _gap(low: float | None, high: float | None, other_low: float | None, other_high: float | None) -> float:
    """The room between two ranges; negative when they touch. An open end reaches any length."""
    gaps = [a - b for a, b in ((low, other_high), (other_low, high)) if a is not None and b is not None]
    return max(gaps, default=-1.0)


def _hardiness(one: Hardiness, other: Hardiness) -> Relation:
    """The cold end decides whether it lives; the warm end is an opinion, so it alone contradicts nothing."""
    if one == other:
        return SAME
    cold, warm = _zones_between(one.min_zone, other.min_zone), _zones_between(one.max_zone, other.max_zone)
    if not cold and not warm:
        return Relation("fuller")
    by = [f"{_zones_in_words(cold)} at the cold end"] if cold else []
    by += [f"{_zones_in_words(warm)} at the warm end"] if warm else []
    return Relation("apart" if cold else "overlap", cold / 2 + warm / 4, ", ".join(by))


def _zones_between(one: str | None, other: str | None) -> float:
    """Whole zones between two ends; 0 when one is only less exact ("4" and "4a") or missing."""
    if not one or not other:
        return 0.0
    try:
        first, second = halves(one), halves(other)
    except ValueError:
        return 0.0 if one == other else 0.5
    if max(first[0], second[0]) <= min(first[1], second[1]):
        return 0.0
    return abs(first[0] - second[0]) / 2


def _zones_in_words(zones: float) -> str:
    return {0.5: "half a zone", 1.0: "1 zone"}.get(zones, f"{zones:g} zones")


def _temperature(one: Temperature, other: Temperature) -> Relation:
    """Within a degree Celsius it is one limit, rounded in two scales."""
    between = abs(one.celsius - other.celsius)
    if between <= 1:
        return SAME
    return Relation("apart", between / 11.1, f"{between:.0f} °C ({between * 9 / 5:.0f} °F)")


def _heat(one: HeatZones, other: HeatZones) -> Relation:
    between = max(abs(one.coolest - other.coolest), abs(one.hottest - other.hottest))
    return Relation("overlap", between / 8, f"{between} heat zone{'s' * (between > 1)}") if between else SAME


def _rating(one: str, other: str) -> Relation:
    numbers = [int(n[0]) if (n := re.findall(r"\d", text)) else None for text in (one, other)]
    if one.casefold() == other.casefold():
        return SAME
    if None in numbers or numbers[0] == numbers[1]:
        return Relation("fuller")
    steps = abs((numbers[0] or 0) - (numbers[1] or 0))
    return Relation("apart", steps / 4, f"{steps} rating{'s' * (steps > 1)}")


# ---------------------------------------------------------------- classes


def _light(one: Iterable[str], other: Iterable[str]) -> Relation:
    """Part sun and part shade count as neighbours that touch: half the sources hold them for one class."""
    first, second = ({LIGHT.index(each) for each in value if each in LIGHT} for value in (one, other))
    if first == second:
        return SAME
    if not first or not second:
        return _words(one, other)
    steps = min(abs(a - b) for a in first for b in second)
    if steps == 0 or (1 in first | second and 2 in first | second and steps == 1):
        return Relation("overlap", 0.2, "one allows more light classes")
    return Relation("apart", steps / 2, f"{steps} light class{'es' * (steps > 1)}")


def _categories(one: Iterable[str], other: Iterable[str]) -> Relation:
    first, second = set(one), set(other)
    if first == second:
        return SAME
    for classes, kind, size in ((LIFE, "apart", 1.0), (WOODY, "overlap", 0.5)):
        a, b = first & classes, second & classes
        if a and b and not a & b:
            shown = " against ".join(", ".join(sorted(each)).replace("_", " ") for each in (a, b))
            return Relation(kind, size, shown)  # type: ignore[arg-type]
    return Relation("fuller")


def _bloom(one: Bloom, other: Bloom) -> Relation:
    """Months beside months and seasons beside seasons; a season is no month until the place is known."""
    if compare(one.text, other.text) == "same":
        return SAME
    for first, second in ((set(one.months), set(other.months)), (_season_parts(one), _season_parts(other))):
        if not first or not second:
            continue
        if first == second:
            return SAME
        if first <= second or second <= first:
            return Relation("fuller")
        if first & second:
            alone = len(first ^ second)
            return Relation("overlap", alone / 12, f"{alone} month{'s' * (alone > 1)} not shared")
        return Relation("apart", 1.0, "no month shared")
    return Relation("wording")


def _season_parts(bloom: Bloom) -> set[int]:
    """Thirds of seasons, 0 to 11 from early spring; "spring to fall" holds summer too."""
    named = [thirds for season in bloom.seasons if (thirds := _thirds(season))]
    if len(named) == 2 and _SPAN.search(bloom.text):
        first, last = named[0][0], named[1][-1]
        return {third % 12 for third in range(first, last + 1 + (12 if last < first else 0))}
    return {third for thirds in named for third in thirds}


_SPAN = re.compile(r"[-–—~]|\b(?:to|through|thru|until|till|into|à|bis|tot|hasta|a)\b", re.I)


def _thirds(season: str) -> list[int]:
    part, _, name = season.rpartition("_")
    if name not in SEASONS:
        return []
    start = SEASONS.index(name) * 3
    return [start + PARTS.index(part)] if part in PARTS else [start, start + 1, start + 2]


def _patents(one: Iterable[str], other: Iterable[str]) -> Relation:
    """Numbers only: an application ("PPAF") is followed by a patent, so it contradicts none."""
    first, second = ({re.sub(r"\D", "", each).lstrip("0") for each in value} - {""} for value in (one, other))
    if first == second:
        return SAME if first else Relation("fuller")
    if first & second or not first or not second:
        return Relation("fuller")
    return Relation("apart", 0.2, "no number shared")


# ---------------------------------------------------------------- words


def _words(one: Any, other: Any) -> Relation:
    kinds = {"same": "same", "fuller": "fuller", "poorer": "fuller", "different": "wording"}
    if isinstance(one, str | BotanicalName):
        return Relation(kinds[compare(one, other)])  # type: ignore[arg-type]
    if isinstance(one, tuple | list):
        found = [any(compare(a, b) != "different" for b in other) for a in one]
        if not all(found):
            return Relation("wording")
        return SAME if len(one) == len(other) else Relation("fuller")
    return SAME if one == other else Relation("wording")


_RULES: Mapping[str, Callable[[Any, Any], Relation]] = {
    "hardiness": _hardiness,
    "heat_zones": _heat,
    "min_temperature": _temperature,
    "rhs_rating": _rating,
    "light": _light,
    "categories": _categories,
    "bloom": _bloom,
    "days_to_maturity": _days,
    "patents": _patents,
}
