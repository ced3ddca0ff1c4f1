"""Will it live through the winter here? The tag's cold and heat limits against the user's zone.

Only the cold end of a zone range is USDA's; the warm end is the grower's view of heat, so it is put softly.
A zone is the coldest night of an average winter, not the coldest there ever was.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from ocr_tags.cautions.common import PRACTICE, caution, cold_of, kinds, printed_kinds, quoted
from ocr_tags.facts import HARDINESS, MIN_TEMPERATURE, RHS_RATING
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, Reading, TagRecord
from ocr_tags.usda import HALF_ZONES, halves, zone_for
from ocr_tags.values import Hardiness

Verdict = Literal["hardy", "at its limit", "too cold", "too warm"]

USDA = "USDA Plant Hardiness Zone Map (limits of 2012, kept in 2023)"
POTS = (
    "gardening column of The Columbus Dispatch, 4 November 2018: most experts advise two zones "
    "(others say one); roots in pots get as cold as the air: Washington State University Extension, 2014"
)
RHS = "RHS hardiness ratings with the RHS's own USDA column (H5 to H7 of that column from memory)"
POT_HALF_ZONES = 4
_LITTLE_WINTER = HALF_ZONES.index("9a")
"""From here on bulbs and fruit may miss their winter cold (from memory)."""

_RHS_COLDEST = {
    **{"H1a": "13a", "H1b": "12a", "H1c": "11a", "H2": "10b", "H3": "9b", "H4": "8b", "H5": "7b", "H6": "6b"},
    **{"H7": "6a"},
}
"""RHS rating -> coldest USDA half zone beside it; H7 is open towards the cold."""
_ONE_SEASON = frozenset({"annual", "vegetable", "houseplant"})


@dataclass(frozen=True, slots=True)
class Rated:
    """The range a tag gives, in half zones of the USDA table; `how` is how the tag gives it."""

    coldest: int
    warmest: int | None
    how: str
    field: Fact[Any]
    reading: Reading[Any]
    open_to_cold: bool = False


def rated(record: TagRecord) -> Rated | None:
    """What the tag says of winter: its zones, else its lowest temperature, else its RHS rating."""
    zones, cold, rating = record.best(HARDINESS), record.best(MIN_TEMPERATURE), record.best(RHS_RATING)
    if zones and (known := _of_zones(zones)):
        return known
    if cold and (zone := zone_for(cold.value.celsius)):
        how = f"zone {zone}, worked out from {quoted(cold.printed)}"
        return Rated(HALF_ZONES.index(zone), None, how, MIN_TEMPERATURE, cold)
    if rating and (coldest := _RHS_COLDEST.get(rating.value)):
        how = f"about zone {coldest}, worked out from {quoted(rating.printed)}"
        return Rated(HALF_ZONES.index(coldest), None, how, RHS_RATING, rating, rating.value == "H7")
    return None


def _of_zones(reading: Reading[Hardiness]) -> Rated | None:
    low, high = reading.value.min_zone, reading.value.max_zone
    try:
        coldest = halves(low)[0] if low else None
        warmest = halves(high)[1] if high else None
    except ValueError:  # zone 0, or one of another system
        return None
    if coldest is None or low is None:
        return None
    how = f"zones {low}–{high}" if high and high != low else f"zone {low}"
    return Rated(coldest, warmest, how, HARDINESS, reading)


def verdict(record: TagRecord, place: Place) -> Verdict | None:
    """How the tag's range stands to the user's zone; None when either is unknown."""
    known, here = rated(record), place.halves
    if known is None or here is None:
        return None
    if here[1] < known.coldest:
        return None if known.open_to_cold else "too cold"
    if here[0] <= known.coldest:
        return "hardy" if known.open_to_cold else "at its limit"
    if known.warmest is not None and here[0] > known.warmest:
        return "too warm"
    return "hardy"


# ---------------------------------------------------------------- the user's zone


def winter_here(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when it is out of its range here, at its limit, or hardy in the ground but not in a pot."""
    known, here = rated(record), place.halves
    said = printed_kinds(record)
    if known is None or here is None or (said and said <= _ONE_SEASON):
        return
    match verdict(record, place):
        case "too cold":
            yield _too_cold(record, place, known)
        case "at its limit":
            yield _at_its_limit(place, known)
        case "too warm":
            yield _too_warm(record, place, known)
        case "hardy" if here[0] - POT_HALF_ZONES < known.coldest and "tree" not in kinds(record):
            yield _not_in_a_pot(place, known)


def _too_cold(record: TagRecord, place: Place, known: Rated) -> Caution:
    frost = f" (about {place.first_frost})" if place.first_frost else ""
    if kinds(record) & {"tree", "shrub", "vine", "fruit"} and not kinds(record) & {"tender_perennial"}:
        advice = "Choose a hardier kind, or keep it in a pot that winters in a frost-free place."
    else:
        advice = f"Enjoy it for one season, or bring it in before the first frost{frost}."
    return caution(
        "too-cold-here",
        known.field,
        f"Too cold here to stay out: the tag says {known.how}, and you are in zone {place.zone}. Your usual "
        f"winter goes down to {_cold_here(place)}; this is rated to {cold_of(known.coldest, place)}.",
        advice,
        basis=_basis(known),
        weight="loss",
        reading=known.reading,
    )


def _at_its_limit(place: Place, known: Rated) -> Caution:
    half = ""
    if place.zone and not place.zone[-1].isalpha():
        half = f" Zone {place.zone} has a colder half, {place.zone}a, and a warmer, {place.zone}b."
    return caution(
        "at-its-limit-here",
        known.field,
        f"At its limit here: the tag says {known.how}, and you are in zone {place.zone}.{half} "
        "A zone is the coldest night of an average winter; some winters are colder.",
        "Give it a sheltered place and mulch, and do not leave it in a pot outside over winter.",
        basis=_basis(known),
        reading=known.reading,
    )


def _too_warm(record: TagRecord, place: Place, known: Rated) -> Caution:
    cool, here = place.heat == "cool", place.halves or (0, 0)
    message = f"Warmer here than the tag's range: it says {known.how}, and you are in zone {place.zone}."
    if cool:
        message += " The warm end is the grower's view of heat, and your summers are cool, so it may well do."
        advice = "Ask whether it grows well in gardens near you."
    else:
        message += " The warm end is the grower's view, but long heat and mild winters do wear plants out."
        advice = (
            "Ask locally first; give it afternoon shade and water in heat, or choose a kind bred for heat."
        )
    if kinds(record) & {"bulb", "fruit"} and here[0] >= _LITTLE_WINTER and not cool:
        advice += " Bulbs and fruit need winter cold: ask for chilled bulbs or low-chill fruit."
    return caution(
        "too-warm-here",
        known.field,
        message,
        advice,
        basis=f"{USDA}; the warm end: {PRACTICE}",
        weight="note" if cool or here[0] - (known.warmest or 0) <= 2 else "loss",
        reading=known.reading,
    )


def _not_in_a_pot(place: Place, known: Rated) -> Caution:
    return caution(
        "pot-in-winter",
        known.field,
        f"Hardy in the ground here (you: zone {place.zone}; tag: {known.how}), but not in a pot left out "
        "over winter: for a pot count about two zones colder.",
        "Sink the pot into the ground, shelter it, or move it to an unheated shed or garage.",
        basis=f"{USDA}; {POTS}",
        reading=known.reading,
    )


def _cold_here(place: Place) -> str:
    """The coldest of usual winters in the user's zone."""
    here = place.halves or (0, 0)
    return cold_of(here[0], place)


def _basis(known: Rated) -> str:
    return f"{USDA}; {RHS}" if known.field is RHS_RATING else USDA


# ---------------------------------------------------------------- what the tag leaves open


def open_rating(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when only RHS H7 is printed and the place is colder than that rating tells of."""
    known, here = rated(record), place.halves
    if known and here and known.open_to_cold and here[1] < known.coldest:
        yield caution(
            "rating-open-end",
            RHS_RATING,
            f"H7 means hardy below −20 °C without saying how far; you are in zone {place.zone}, "
            f"{_cold_here(place)} in a usual winter.",
            "Look its USDA zone up by the botanical name.",
            basis=RHS,
            reading=known.reading,
        )


def zone_worked_out(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when a lowest temperature is printed but no zone; or when the two do not fit each other."""
    zones, cold = record.best(HARDINESS), record.best(MIN_TEMPERATURE)
    zone = zone_for(cold.value.celsius) if cold else None
    if cold is None or zone is None:
        return
    if zones is None:
        yield caution(
            "zone-worked-out",
            MIN_TEMPERATURE,
            f"No zone was read. {quoted(cold.printed)} is the cold end of zone {zone}: worked out, "
            "not printed.",
            "Take it as a guide, not as the grower's word.",
            basis=USDA,
            reading=cold,
        )
    elif (known := _of_zones(zones)) and abs(known.coldest - HALF_ZONES.index(zone)) > 1:
        yield caution(
            "zone-and-cold-differ",
            HARDINESS,
            f"{known.how.capitalize()} and {quoted(cold.printed)} do not fit: that is zone {zone}.",
            "Look at the tag; until you know, count on the warmer of the two.",
            basis=USDA,
            weight="loss",
            reading=zones,
        )
