"""One thing a tag says: its field, label, print and value; and the truth of what was printed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from random import Random
from typing import Any

import wordbook as words


@dataclass(frozen=True, slots=True)
class Fact:
    """`label` and `text` as printed in English; `others` holds (label, text) in the tag's second language.

    `sentence` says the same without a label. `icon` names the mark that may stand beside or for the label.
    Fields that begin with "also:" are no fields of the record; `many` fields gather their values in a list.
    """

    field: str
    label: str
    text: str
    value: Any
    sentence: str = ""
    icon: str = ""
    other: tuple[str, str] | None = None

    @property
    def key(self) -> str:
        return f"{self.field}|{self.value!r}"


def _label(rng: Random, name: str, language: str) -> tuple[str, str]:
    tongues = words.LABELS[name]
    return rng.choice(tongues["en"]), rng.choice(tongues[language]) if language in tongues else ""


def word_fact(
    rng: Random, field: str, text: str, value: Any, sentence: str, icon: str, language: str, other: str = ""
) -> Fact:
    label, foreign = _label(rng, field, language)
    if other and foreign and isinstance(value, str):
        value = f"{value} / {other}"
    return Fact(field, label, text, value, sentence, icon, (foreign, other) if other and foreign else None)


MANY = {"patents", "warnings", "colours"}


@dataclass
class Said:
    """What was printed so far, side by side."""

    facts: dict[str, Fact] = field(default_factory=dict)
    sides: dict[str, list[str]] = field(default_factory=dict)

    def add(self, fact: Fact, side: str) -> None:
        kept = self.facts.get(fact.key)
        if kept is None or (fact.other and not kept.other):
            self.facts[fact.key] = fact
        where = self.sides.setdefault(fact.key, [])
        if side not in where:
            where.append(side)

    def truth(self) -> tuple[dict[str, Any], dict[str, Any]]:
        """`fields` and `also_printed` in the form that `samples/measure.py` reads."""
        fields: dict[str, Any] = {}
        also: dict[str, Any] = {}
        for key, fact in self.facts.items():
            entry = {
                "value": fact.value,
                "printed": fact.text,
                "sides": sorted(self.sides[key], reverse=True),
            }
            entry["sides"] = [side for side in ("front", "back") if side in self.sides[key]]
            if fact.field.startswith("also:"):
                also.setdefault(fact.field[5:], entry)
            elif fact.field == "common_names":
                fields.setdefault("common_names", []).append(entry)
            elif fact.field in MANY and fact.field in fields:
                fields[fact.field]["value"] = [*fields[fact.field]["value"], *_new(fields[fact.field], fact)]
                fields[fact.field]["printed"] += "; " + fact.text
            elif fact.field in fields:
                _fuller(fields, fact, entry)
            else:
                fields[fact.field] = entry
        if "common_names" in fields:
            fields["common_names"] = _main_first(fields["common_names"])
        return fields, also


def _new(entry: dict[str, Any], fact: Fact) -> Iterable[Any]:
    return (item for item in fact.value if item not in entry["value"])


def _fuller(fields: dict[str, Any], fact: Fact, entry: dict[str, Any]) -> None:
    """Only a botanical name may be printed once short and once in full: the full one counts."""
    if fact.field != "botanical_name":
        raise ValueError(f"two values for {fact.field}: {fields[fact.field]['value']!r} and {fact.value!r}")
    if fact.value["cultivar"] and not fields["botanical_name"]["value"]["cultivar"]:
        fields["botanical_name"] = entry


def _main_first(names: list[dict[str, Any]]) -> list[dict[str, Any]]:
    seen: dict[str, dict[str, Any]] = {}
    for entry in names:
        seen.setdefault(entry["value"].casefold(), entry)
    return list(seen.values())
