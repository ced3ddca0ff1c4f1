"""How far apart one kind of plant stands: stated by a person, printed on its tag, or estimated from it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

from ocr_tags.errors import QueryError
from ocr_tags.measures.lengths import Units, length_in_words
from ocr_tags.names.lexicon import plant_named
from ocr_tags.names.matching import match_plant
from ocr_tags.planting.sizes import size_in_words, typed_length
from ocr_tags.record import TagRecord
from ocr_tags.values import BotanicalName, Length

Basis = Literal["stated", "printed", "estimate from spread"]

WOODY = frozenset({"tree", "shrub"})


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of plant in a bed; distances in centimetres, `between` rows only where they differ.

    `woody` is None when nothing is known of the plant. `notes` are sentences the user must see.
    """

    name: str
    narrow: float
    wide: float
    between: float | None = None
    share: float = 1.0
    basis: Basis = "stated"
    woody: bool | None = None
    notes: tuple[str, ...] = ()

    def spacing_in_words(self, units: Units, word: str = "") -> str:
        """The distances as the trade writes them, with their basis unless a person stated them.

        `word` goes behind the distance: " apart".
        """
        words = self._distance(units) + word
        if self.between:
            words += f", rows {size_in_words(self.between, units)}"
        return words if self.basis == "stated" else f"{words} ({self.basis})"

    def _distance(self, units: Units) -> str:
        if self.basis != "stated":
            return length_in_words(Length(self.narrow, self.wide), units)
        ends = dict.fromkeys(size_in_words(end, units) for end in (self.narrow, self.wide))
        return " to ".join(ends)


def stated(text: str, name: str, rows: str | None = None) -> Kind:
    """A kind of which only the spacing is known, as typed: "18 in", "12-18 in"."""
    narrow, wide, notes = _ends(typed_length(text, "The spacing").length, "stated")
    between = _ends(typed_length(rows, "The distance between rows").length, "stated")[1] if rows else None
    return Kind(name, narrow, wide, between, notes=notes)


def with_spacing(record: TagRecord, kind: Kind) -> Kind:
    """A stated kind, with what the record knows of the plant beside its spacing."""
    return replace(kind, woody=_woody(record))


def from_record(record: TagRecord, name: str, below: float, units: Units, from_spread: bool = False) -> Kind:
    """The kind of a tag with the spacing it prints.

    A reading less sure than `below` is used but said to be doubtful. Spread is not spacing: it is taken
    only with `from_spread`, and then called an estimate. QueryError when there is nothing to go by.
    """
    spacing, spread = _length(record, "spacing"), _length(record, "spread")
    woody = _woody(record)
    if spacing is None and not (from_spread and spread):
        raise QueryError(*_no_spacing(name, spread, units))
    field, basis = ("spacing", "printed") if spacing else ("spread", "estimate from spread")
    narrow, wide, notes = _ends(spacing or spread, "printed")  # type: ignore[arg-type]
    reading = record.readings[field][0]
    if reading.status == "disagreed" or (
        reading.confidence < below and reading.status not in ("confirmed", "corrected")
    ):
        notes += (f"The {field} of {name} is doubtful (printed {reading.printed!r}): look at the tag.",)
    if basis != "printed":
        notes += (
            f"{name} prints no spacing; its spread is taken instead, an estimate: plants then just touch"
            " when full grown.",
        )
    rows = _length(record, "row_spacing")
    between = _ends(rows, "printed")[1] if rows and spacing else None
    kind = Kind(name, narrow, wide, between, woody=woody, notes=notes)
    return replace(kind, basis="printed" if spacing else "estimate from spread")


def _ends(length: Length, how: str) -> tuple[float, float, tuple[str, ...]]:
    """Both ends of a range in centimetres; of an open range the end it has, with a note."""
    low, high = length.min_cm, length.max_cm
    if low is None and high is None:
        raise QueryError("The spacing is empty.")
    if low is None or high is None:
        end = high if low is None else low
        open_end = "only the widest" if low is None else "only the narrowest"
        return end or 0.0, end or 0.0, (f"Of the spacing {open_end} is {how}; it is used as it stands.",)
    return low, high, ()


def _no_spacing(name: str, spread: Length | None, units: Units) -> tuple[str, str]:
    if spread is None:
        return f"{name} prints no spacing, and no spread either.", "Give one with --spacing."
    return (
        f"{name} prints no spacing.",
        f"Give one with --spacing, or add --from-spread to estimate it from the spread"
        f" ({length_in_words(spread, units)}), which is not the same thing.",
    )


def _length(record: TagRecord, field: str) -> Length | None:
    found = record.readings.get(field, ())
    value = found[0].value if found else None
    return value if isinstance(value, Length) and (value.min_cm or value.max_cm) else None


def _woody(record: TagRecord) -> bool | None:
    """Whether it is a tree or shrub, by the tag or else by the lexicon."""
    categories = _value(record, "categories")
    if categories:
        return bool(WOODY & set(categories))
    botanical = _value(record, "botanical_name")
    common = tuple(str(reading.value) for reading in record.readings.get("common_names", ()))
    match = match_plant(common, botanical if isinstance(botanical, BotanicalName) else None)
    plant = plant_named(match.name) if match and match.name else None
    return None if plant is None else plant.kind in WOODY


def _value(record: TagRecord, field: str) -> Any:
    found = record.readings.get(field, ())
    return found[0].value if found else None
