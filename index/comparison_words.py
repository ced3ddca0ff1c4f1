"""A comparison in sentences and as JSON. No sentence hides a difference: every value stands in it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import msgspec

from index.comparison import FieldComparison, PlantComparison, Report, Said
from index.comparison_values import LIGHT, relate
from ocr_tags.usda import HALF_ZONES, halves
from ocr_tags.values import Hardiness, Length, Temperature

Speak = Callable[[Any], str]
"""A value in words, in the user's units."""

_WIDE = 3
"""Ends further apart than so many times are each given in their own unit."""

VERDICT_WORDS = {
    "apart": "disagree",
    "overlap": "differ, but overlap",
    "uncertain": "uncertain",
    "wording": "other words",
    "fuller": "one says more",
    "agree": "agree",
    "single": "one tag only",
}


def joint(field: FieldComparison, speak: Speak) -> str:
    """What the tags say together, with the difference in it: "12–36 in; suppliers disagree: …"."""
    each = _each(field.said, speak)
    match field.verdict:
        case "single":
            return f"{speak(field.said[0].value)}; only {field.said[0].who} says so{_silence(field)}"
        case "agree":
            number = len(field.said)
            return f"{speak(field.said[0].value)}; {'both' if number == 2 else f'all {number}'} agree"
        case "fuller":
            return f"{each}; no contradiction, but one says more"
        case "wording":
            return f"{each}; other words, for a person to weigh"
        case "uncertain":
            return f"{each}; they differ, but {_misread(field)}"
    together, verb = _together(field.said, speak), "disagree" if field.verdict == "apart" else "differ"
    parts = [f"{together}; " if together else "", f"{_speakers(field.said)} {verb}: {each}"]
    parts += [f"; {by}"] if (by := by_how_much(field, speak)) else []
    parts += [f"; {field.alone} stands alone"] if field.alone else []
    parts += [f"; {safe}"] if (safe := _safe_side(field.said, speak)) else []
    return "".join(parts)


def by_how_much(field: FieldComparison, speak: Speak) -> str:
    """The difference in words, "" where it cannot be measured."""
    by = field.relation.by
    if not isinstance(by, Length):
        return by
    return f"{speak(by)} between them" if field.relation.kind == "apart" else f"ends up to {speak(by)} apart"


def _each(said: Sequence[Said], speak: Speak) -> str:
    """Who says what, those of one mind together."""
    speakers: dict[str, list[str]] = {}
    for one in said:
        speakers.setdefault(speak(one.value), []).append(f"{one.who}{' (?)' if one.doubtful else ''}")
    return ", ".join(f"{value} ({' and '.join(who)})" for value, who in speakers.items())


def _speakers(said: Sequence[Said]) -> str:
    """Whether it is suppliers who differ, or only tags: of one supplier, or of nobody named."""
    names = {one.supplier.casefold() for one in said}
    return "suppliers" if len(names) > 1 and "" not in names else "tags"


def _misread(field: FieldComparison) -> str:
    doubtful = [one for one in field.said if one.doubtful]
    sure = [one for one in field.said if not one.doubtful]
    who = " and ".join(one.who for one in doubtful)
    text = f"the reading of {who} is doubtful: look at the tag"
    agrees = any(
        not relate(field.name, other, one.value).differs
        for reading in doubtful
        for other in reading.also_read
        for one in sure
    )
    return f"{text}; another reading of it agrees" if agrees else text


def _silence(field: FieldComparison) -> str:
    return "; that the others are silent is no proof of safety" if field.name == "warnings" else ""


# ---------------------------------------------------------------- together


def _together(said: Sequence[Said], speak: Speak) -> str:
    """The range that holds all values, "" where values make no range."""
    values = [one.value for one in said]
    if all(isinstance(value, Length) for value in values):
        return _all_lengths(values, speak)
    if all(isinstance(value, Hardiness) for value in values):
        ends = _end(values, "min_zone", coldest=True), _end(values, "max_zone", coldest=False)
        return speak(Hardiness(*ends))
    return ""


def _all_lengths(values: Sequence[Length], speak: Speak) -> str:
    lows, highs = [value.min_cm for value in values], [value.max_cm for value in values]
    low = min((end for end in lows if end is not None), default=None) if None not in lows else None
    high = max((end for end in highs if end is not None), default=None) if None not in highs else None
    if low and high and high > _WIDE * low:  # inches to feet: one unit would round one end away
        return f"{speak(Length(low, low))} to {speak(Length(high, high))}"
    return speak(Length(low, high))


def _safe_side(said: Sequence[Said], speak: Speak) -> str:
    """What all agree on, for limits where the wrong side costs the plant."""
    values = [one.value for one in said]
    if all(isinstance(value, Hardiness) for value in values):
        cold, warm = _end(values, "min_zone", coldest=False), _end(values, "max_zone", coldest=True)
        if cold and warm and _order(cold) > _order(warm):
            return "no zone that all name"
        return f"on the safe side {speak(Hardiness(cold, warm))}"
    if all(isinstance(value, Temperature) for value in values):
        return f"on the safe side {speak(max(values, key=lambda value: value.celsius))}"
    if all(isinstance(value, tuple | list) and value and set(value) <= set(LIGHT) for value in values):
        shared = [light for light in LIGHT if all(light in value for value in values)]
        return f"all allow {speak(tuple(shared))}" if shared else ""
    return ""


def _end(values: Sequence[Hardiness], end: str, *, coldest: bool) -> str | None:
    """The coldest or warmest of all zones at one end; None when no tag gives that end."""
    zones = [zone for value in values if (zone := getattr(value, end))]
    return (min if coldest else max)(zones, key=_order, default=None)


def _order(zone: str) -> float:
    try:
        first, last = halves(zone)
    except ValueError:
        return len(HALF_ZONES)
    return (first + last) / 2


# ---------------------------------------------------------------- JSON


def plant_json(plant: PlantComparison, speak: Speak) -> dict[str, Any]:
    """One plant's comparison as plain values; lengths in centimetres."""
    return {
        "plant": plant.name,
        "tags": list(plant.tag_ids),
        "same_because": list(plant.why),
        "remarks": list(plant.remarks),
        "fields": [_field_json(field, speak) for field in plant.fields],
    }


def _field_json(field: FieldComparison, speak: Speak) -> dict[str, Any]:
    return {
        "field": field.name,
        "verdict": field.verdict,
        "differs": field.differs,
        "by": by_how_much(field, speak),
        "alone": field.alone,
        "joint": joint(field, speak),
        "said": [
            {
                "tag": one.tag_id,
                "who": one.who,
                "value": msgspec.to_builtins(one.value),
                "printed": one.printed,
                "doubtful": one.doubtful,
            }
            for one in field.said
        ],
    }


def perhaps_words(report: Report) -> list[str]:
    """Pairs kept apart, a sentence each."""
    return [f"{one} and {other} may be one plant, but {why}." for one, other, why in report.perhaps]
