"""Where it can hurt: poison, eating, weeds, digging, other people's rights. What is said, and whom to ask.

Nothing here says that a plant is safe, edible or allowed. Local codes and licensed practice come first.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from ocr_tags.cautions.common import botanical_names, caution, kinds, quoted
from ocr_tags.facts import BOTANICAL_NAME, CATEGORIES, COMMON_NAMES, HEIGHT, PATENTS, WARNINGS
from ocr_tags.names.lexicon import key
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, TagRecord, Weight

# ---------------------------------------------------------------- poison and eating

POISON_BASIS = (
    "US poison centres of Oklahoma, Wisconsin, Utah and Georgia; UK National Poisons Information Service; "
    "Health Canada, 2023"
)
_POISON_LINES = {
    "US": "Poison Help, 1-800-222-1222",
    "CA": "1-844-POISON-X (1-844-764-7669)",
    "GB": "NHS 111 (in Northern Ireland your doctor)",
    "IE": "the poisons line, 01 809 2166",
}
_RIGHTS = re.compile(
    r"\b(?:(?:propagat|reproduc|multiplicat|unlicen[sc]ed)\w*\b.{0,90}?\b(?:prohibited|forbidden|illegal|unlawful"
    r"|not permitted|interdite?|prohibida|verboten|violation|infring\w+)"
    r"|(?:unauthori[sz]ed|unlicen[sc]ed|illegal|prohibid[ao]|interdit\w*)\b.{0,40}?\b(?:propagation|reproduction"
    r"|multiplication))\b",
    re.I,
)
"""A notice that others may not propagate the plant."""
_WEED = re.compile(r"\b(?:invasive|weed(?:y|s)?|noxious|aggressive(?:ly)?)\b", re.I)
_THORNS = re.compile(r"\b(?:thorn|spine|prickle|sharp)", re.I)
_SKIN = re.compile(r"irrita|gloves|skin|eye|hautreizend|sap\b", re.I)
_EATEN = re.compile(r"eaten|eat\b|ingest|consum|swallow|chew|poison|toxi|harmful|giftig|venen|nocif", re.I)
_EDIBLE = re.compile(r"\b(?:edible|comestible|essbar|eetbaar)\b", re.I)
_NOT_EDIBLE = re.compile(r"\b(?:in|not |non-?|no )\s*(?:edible|comestible)|nicht essbar|niet eetbaar", re.I)


def poison_line(place: Place) -> str:
    """Whom to call about a poisoning, for the user's country."""
    if place.country in _POISON_LINES:
        return _POISON_LINES[place.country]
    return "your poison centre" if place.country else "your poison centre (in the US 1-800-222-1222)"


def printed_warning(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Carry the warnings the tag prints: of poison, of skin and eyes, of thorns; and say what to do."""
    warnings = record.best(WARNINGS)
    printed = warnings.value if warnings else ()
    by_advice: dict[tuple[str, Weight], list[str]] = {}
    for text in printed:
        by_advice.setdefault(_what_to_do(text, place), []).append(text)
    for (advice, weight), texts in by_advice.items():
        yield caution(
            "warning-printed",
            WARNINGS,
            f"The tag warns: {', '.join(quoted(text) for text in texts)}.",
            advice,
            basis=POISON_BASIS,
            weight=weight,
            reading=warnings,
            printed="; ".join(texts),
        )


def _what_to_do(warning: str, place: Place) -> tuple[str, Weight]:
    if _WEED.search(warning) and not _EATEN.search(warning):
        return (
            "Before planting ask your state or national weed list; keep it from ditches, woods and water.",
            "note",
        )
    if _THORNS.search(warning) and not _SKIN.search(warning):
        return "Wear gloves, and plant it away from where people and animals pass.", "note"
    if _SKIN.search(warning) and not _EATEN.search(warning):
        call = f"if skin or eyes react, rinse and call {poison_line(place)}."
        return f"Wear gloves and wash your hands; {call}", "harm"
    call = f"call {poison_line(place)}; for an animal, a vet."
    return f"Keep the tag. If some was eaten, do not wait for signs: {call}", "harm"


def edible_claim(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the tag calls anything edible: that is the tag's word, and of one part of one plant."""
    found = record.best(CATEGORIES)
    lines = [line for lines in record.texts.values() for line in lines]
    printed = [*lines, found.printed if found else ""]
    claim = next((line for line in printed if _EDIBLE.search(line) and not _NOT_EDIBLE.search(line)), None)
    if claim:
        yield caution(
            "edible-is-the-tags-word",
            CATEGORIES,
            f"{quoted(claim)} is the tag's word, as read by a machine; it is no leave to eat anything.",
            "Be sure of the plant and of the part, and that it was grown as food: ornamentals are sprayed "
            "with things no food may have.",
            basis="University of Missouri Extension",
            weight="note" if kinds(record) & {"fruit", "vegetable", "herb"} else "harm",
            reading=found if found and claim == found.printed else None,
            printed=claim,
        )


# ---------------------------------------------------------------- weeds

_EU = "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK"
_LISTS = {
    "EU": ("the EU list of invasive species, which bars buying, growing and selling it", "EU 2016/1141"),
    "GB": (
        "Schedule 9 of the Wildlife and Countryside Act: it must not be let into the wild",
        "Wildlife and Countryside Act 1981, Schedule 9 Part II (England and Wales)",
    ),
    "US": ("noxious or invasive plant lists in the US", "state lists in the US"),
}
LISTED_BASIS = "a listed species covers its cultivars: 7 CFR 360.200 note 1; some states exempt sterile ones"


@cache
def _listed() -> dict[str, tuple[tuple[str, str], ...]]:
    """Key of a botanical name -> the lists that name it, each with an example state or ""."""
    text = files("ocr_tags").joinpath("data", "regulated_plants.tsv").read_text("utf-8")
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    for line in text.splitlines():
        if not line.startswith("#"):
            name, list_name, example = line.split("\t")
            found[key(name)] = (*found.get(key(name), ()), (list_name, example))
    return found


def regulated(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of plants on an official list of weeds: of the user's country, or of any while it is unknown."""
    said: dict[str, tuple[str, str]] = {}
    for name in botanical_names(record):
        for list_name, example in _listed().get(key(name), ()):
            if _concerns(list_name, place):
                said.setdefault(list_name, (name, example))
    botanical = record.best(BOTANICAL_NAME)
    field: Fact[Any] = BOTANICAL_NAME if botanical else COMMON_NAMES
    for list_name, (name, example) in said.items():
        where, source = _LISTS[list_name]
        yield caution(
            "regulated-plant",
            field,
            f"{name} is on {where}{_example(example)}. A cultivar counts as its species.",
            "Before you buy, sell or plant it, check your state or national list, or ask your extension "
            "office or plant health authority.",
            basis=f"{source}; {LISTED_BASIS}",
            weight="harm",
            reading=record.best(field),
        )


def _example(state: str) -> str:
    if not state:
        return ""
    return f" (under {state})" if "law" in state else f" ({state}'s, for one)"


def _concerns(list_name: str, place: Place) -> bool:
    country = place.country
    return country is None or country == list_name or (list_name == "EU" and country in _EU)


# ---------------------------------------------------------------- digging

WIRES_CM = 760
"""25 ft: what grows taller stays away from overhead lines."""
_DIG_FROM_CM = 150


def call_before_digging(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak for trees and shrubs, and for other woody plants as tall as a shrub."""
    found = kinds(record)
    height = record.best(HEIGHT)
    top = 0.0 if height is None else height.value.max_cm or height.value.min_cm or 0.0
    woody = found & {"tree", "shrub", "conifer"} or (
        found & {"fruit", "vine", "rose"} and top >= _DIG_FROM_CM
    )
    if not woody or "houseplant" in found:
        return
    line = "call 811, free, a few days before" if place.country == "US" else "call the utility line first"
    if place.country is None:
        line = "call the utility line first (811 in the US)"
    wires = " It grows tall: keep it away from overhead wires." if top >= WIRES_CM else ""
    yield caution(
        "call-before-digging",
        CATEGORIES,
        f"Before you dig the hole, {line}: pipes and cables may lie there.{wires}",
        "Mind the plant's full size beside walls, paths and pipes; local codes come first.",
        basis="call811.com; distances by local code",
        weight="harm",
        reading=record.best(CATEGORIES),
    )


# ---------------------------------------------------------------- rights


def propagation(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of patents and variety rights, printed as numbers or as a sentence."""
    marks = record.best(PATENTS)
    notices = [found[0] for lines in record.texts.values() if (found := _RIGHTS.search(" ".join(lines)))]
    if marks is None and not notices:
        return
    shown = ", ".join(marks.value) if marks else notices[0]
    pending = bool(marks) and all(
        re.search(r"AF$|pend|applied", mark, re.I) for mark in (marks.value if marks else ())
    )
    state = "a right applied for" if pending else "a plant patent or variety right"
    yield caution(
        "propagation-prohibited",
        PATENTS,
        f"{quoted(shown)} is {state}: propagation without a licence is prohibited, by cuttings, division "
        "or grafts alike.",
        "Whether it still runs, and in your country, the office's register tells; ask the grower.",
        basis="35 USC 161–163 and 7 CFR 97.141 in the US; Regulation (EC) 2100/94 in the EU (from memory)",
        reading=marks,
        printed=shown,
    )


def silence(place: Place) -> str:
    """What must be said once wherever records are shown."""
    return (
        "No warning on a tag does not make a plant safe, edible or allowed. Poisoning: call "
        f"{poison_line(place)}, for animals a vet. Weeds: your state or national list decides."
    )
