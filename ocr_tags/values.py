"""The values a tag's words are understood as, one type for each kind; units are part of the name."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Length:
    """A length or a range of lengths in centimetres; an end that was not printed is None."""

    min_cm: float | None
    max_cm: float | None


@dataclass(frozen=True, slots=True)
class Hardiness:
    """Hardiness zones as printed: "4" stays "4", "5a" stays "5a"; an open end is None."""

    min_zone: str | None
    max_zone: str | None


@dataclass(frozen=True, slots=True)
class HeatZones:
    """AHS heat zones, coolest and hottest, 1 to 12."""

    coolest: int
    hottest: int


@dataclass(frozen=True, slots=True)
class Temperature:
    celsius: float


@dataclass(frozen=True, slots=True)
class Bloom:
    """Bloom time: the words as printed, the seasons they name, and months 1 to 12 where printed."""

    text: str
    seasons: tuple[str, ...] = ()
    months: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Days:
    min_days: int | None
    max_days: int | None


@dataclass(frozen=True, slots=True)
class Price:
    """`amount` is a decimal number as text, so that 6.90 stays 6.90; `currency` is ISO 4217."""

    amount: str
    currency: str


@dataclass(frozen=True, slots=True)
class PlantPassport:
    """The lettered lines of a plant passport: A, B, C and D (EU 2017/2313)."""

    botanical_name: str | None = None
    operator: str | None = None
    traceability: str | None = None
    origin: str | None = None
    protected_zone: str | None = None


@dataclass(frozen=True, slots=True)
class BotanicalName:
    """A botanical name taken apart by the codes (ICN, ICNCP). `name` is the whole, well written."""

    name: str
    genus: str | None = None
    species: str | None = None
    infraspecific: str | None = None
    hybrid: bool = False
    cultivar: str | None = None
    group: str | None = None
    trade_designation: str | None = None
