"""Spread is not spacing, a flower stem is not the plant's height, and no petunia grows 12 ft tall.

Spread and width are how wide a plant grows; spacing is from centre to centre; a flower's height is not the
plant's (common practice, no source). A size out of range asks for a look at the tag and corrects nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from ocr_tags.cautions.common import caution, kinds, known_plant, printed_kinds, quoted
from ocr_tags.facts import CATEGORIES, COMMON_NAMES, FLOWER_HEIGHT, HEIGHT, SPACING, SPREAD
from ocr_tags.measures.lengths import length_in_words
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, Reading, TagRecord
from ocr_tags.values import Length

_BEDDED = frozenset(
    {"annual", "perennial", "biennial", "tender_perennial", "grass", "fern", "bulb", "herb", "vegetable"}
    | {"groundcover", "shrub", "fruit", "vine", "rose", "conifer"}
)


def spread_without_spacing(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when a plant for beds has a spread but no spacing on its tag."""
    spread = record.best(SPREAD)
    if spread and not record.best(SPACING) and kinds(record) & _BEDDED and "houseplant" not in kinds(record):
        yield caution(
            "spread-no-spacing",
            SPREAD,
            f"{length_in_words(spread.value, place.units)} is how wide it grows; no spacing was read.",
            "For a bed ask for the spacing, centre to centre; at its full spread it fills in late but well.",
            reading=spread,
        )


def spacing_without_spread(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the tag says how far apart but not how wide."""
    spacing = record.best(SPACING)
    if spacing and not record.best(SPREAD):
        yield caution(
            "spacing-no-spread",
            SPACING,
            f"{length_in_words(spacing.value, place.units)} is from centre to centre of two plants; how wide "
            "one grows was not read.",
            "A single plant may grow wider than that: ask before you put it beside a path or a wall.",
            reading=spacing,
        )


def only_flower_height(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the only height is that of the flower stems."""
    flowers = record.best(FLOWER_HEIGHT)
    if flowers and not record.best(HEIGHT):
        yield caution(
            "flower-height-only",
            FLOWER_HEIGHT,
            f"{length_in_words(flowers.value, place.units)} is the flowers' height; the leaves stay lower.",
            "For most of the year it looks shorter: ask how high the leaves grow.",
            reading=flowers,
        )


# ---------------------------------------------------------------- plausible sizes

HEIGHTS: Mapping[str, tuple[float, float]] = {
    "annual": (4, 220),
    "biennial": (8, 350),
    "perennial": (2, 360),
    "tender_perennial": (4, 450),
    "bulb": (4, 270),
    "vegetable": (5, 370),
    "herb": (2, 300),
    "grass": (5, 450),
    "fern": (4, 250),
    "groundcover": (1, 150),
    "succulent": (1, 1500),
    "shrub": (8, 1000),
    "rose": (15, 1200),
    "fruit": (8, 1500),
    "vine": (25, 3500),
    "tree": (90, 6000),
    "conifer": (10, 6000),
    "houseplant": (2, 1500),
}
"""Least and greatest height printed on honest tags by kind of plant, in cm (common practice, no source)."""
SPREADS: Mapping[str, tuple[float, float]] = {
    **dict.fromkeys(("annual", "biennial", "perennial", "tender_perennial", "herb", "fern"), (3, 300)),
    **{
        "bulb": (3, 180),
        "vegetable": (5, 700),
        "grass": (5, 450),
        "groundcover": (5, 600),
        "vine": (10, 2000),
    },
    **{
        "succulent": (2, 800),
        "shrub": (10, 1200),
        "rose": (20, 900),
        "fruit": (10, 1500),
        "tree": (45, 4500),
        "conifer": (10, 4500),
    },
    "houseplant": (3, 1200),
}
_TALL: Mapping[str, float] = {
    **{
        "Helianthus": 450,
        "Ricinus": 450,
        "Ipomoea": 600,
        "Lathyrus": 300,
        "Tropaeolum": 450,
        "Thunbergia": 600,
    },
    **{"Cobaea": 900, "Phaseolus": 450, "Musa": 900, "Ensete": 900, "Dicksonia": 900, "Cyathea": 1500},
    **{
        "Phyllostachys": 2400,
        "Bambusa": 2400,
        "Fargesia": 600,
        "Arundo": 800,
        "Cenchrus": 500,
        "Humulus": 900,
    },
    **{"Gloriosa": 300, "Amaranthus": 300, "Brugmansia": 600, "Colocasia": 300, "Dahlia": 600, "Lablab": 900},
    **{"Lophospermum": 300, "Rhodochiton": 300, "Eccremocarpus": 450, "Zea": 370, "Mandevilla": 600},
}
"""Genera that outgrow their kind: greatest height in cm (from memory)."""
_SMALL_WORDS = ("dwarf", "miniature", "mini", "bonsai", "nain", "enano", "zwerg", "dwerg")
_OTHER_UNITS = (("in", 2.54), ("ft", 30.48), ("cm", 1.0), ("m", 100.0))


def size_out_of_range(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of a height, spread or spacing that no plant of its kind has."""
    found = kinds(record)
    for field, ranges in ((HEIGHT, HEIGHTS), (SPREAD, SPREADS), (SPACING, SPREADS)):
        reading, limits = record.best(field), _limits(record, found, ranges, field)
        settled = reading and reading.status in {"confirmed", "corrected"}
        if reading and limits and not settled and _out_of(reading.value, limits):
            yield _improbable(record, field, reading, limits, place)


def _limits(
    record: TagRecord, found: frozenset[str], ranges: Mapping[str, tuple[float, float]], field: Fact[Any]
) -> tuple[float, float] | None:
    """The widest range over all kinds this plant may be; None when no kind is known."""
    known = [ranges[kind] for kind in found if kind in ranges]
    if not known:
        return None
    low, high = min(low for low, _ in known), max(high for _, high in known)
    plant = known_plant(record)
    if plant and plant.genus in _TALL:
        high = max(high, _TALL[plant.genus])
    names = " ".join(str(r.value) for r in record.all(COMMON_NAMES)).lower()
    small = any(word in names for word in _SMALL_WORDS)
    # The least size counts only for a kind the tag names, as trees have dwarfs; of spacings only the most.
    return (0 if small or field is SPACING or not printed_kinds(record) else low), high


def _out_of(length: Length, limits: tuple[float, float]) -> str:
    tallest = length.max_cm if length.max_cm is not None else length.min_cm
    shortest = length.min_cm if length.min_cm is not None else length.max_cm
    if tallest is not None and tallest < limits[0] * 0.95:
        return "little"
    if shortest is not None and shortest > limits[1] * 1.05:
        return "much"
    return ""


def _improbable(
    record: TagRecord, field: Fact[Any], reading: Reading[Length], limits: tuple[float, float], place: Place
) -> Caution:
    way = _out_of(reading.value, limits)
    plant = known_plant(record)
    said = sorted(printed_kinds(record)) or ([plant.kind] if plant else [])
    kind = " and ".join(word.replace("_", " ") for word in said)
    name = f" ({plant.name})" if plant else ""
    end = Length(limits[0], limits[0]) if way == "little" else Length(limits[1], limits[1])
    bound = "at least" if way == "little" else "at most"
    return caution(
        f"{field.name}-improbable",
        field,
        f"{length_in_words(reading.value, place.units)} is too {way} for this kind of plant: {kind}{name}, "
        f"usually {bound} {length_in_words(end, place.units)}.",
        f"Look at the tag; nothing was corrected.{_other_unit(reading.value, limits)}",
        weight="loss",
        reading=reading,
    )


def _other_unit(length: Length, limits: tuple[float, float]) -> str:
    """Feet for inches, metres for centimetres: the slip that would explain it, as a question."""
    end = length.max_cm if length.max_cm is not None else length.min_cm
    if end is None:
        return ""
    for printed, meant, factor in (
        ("feet", "inches", 1 / 12),
        ("inches", "feet", 12),
        ("metres", "centimetres", 1 / 100),
    ):
        if limits[0] <= end * factor <= limits[1]:
            return f" Is it {meant} rather than {printed}?"
    return ""


# ---------------------------------------------------------------- name and kind

_WOODY = frozenset({"tree", "shrub"})
_SOFT = frozenset({"annual", "biennial", "bulb", "vegetable", "fern", "grass"})


def kind_against_name(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak when the tag's kind of plant cannot be that of the plant its names point to."""
    plant, found = known_plant(record), record.best(CATEGORIES)
    if plant is None or found is None:
        return
    said = frozenset(found.value)
    clash = (said <= _WOODY and plant.kind in _SOFT) or (said <= _SOFT and plant.kind in _WOODY)
    if clash:
        yield caution(
            "kind-against-name",
            CATEGORIES,
            f"{quoted(found.printed)} does not fit the name: {plant.name} is sold as {plant.kind}.",
            "Look at the tag: one of the two was misread, or the photos are of two tags.",
            basis="word lists of this program, from memory",
            weight="loss",
            reading=found,
        )
