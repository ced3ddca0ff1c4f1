"""The published USDA hardiness zones, and how far apart two of them are."""

from __future__ import annotations

USDA_ZONES: tuple[tuple[str, int, int, float, float], ...] = (
    ("1a", -60, -55, -51.1, -48.3),
    ("1b", -55, -50, -48.3, -45.6),
    ("2a", -50, -45, -45.6, -42.8),
    ("2b", -45, -40, -42.8, -40.0),
    ("3a", -40, -35, -40.0, -37.2),
    ("3b", -35, -30, -37.2, -34.4),
    ("4a", -30, -25, -34.4, -31.7),
    ("4b", -25, -20, -31.7, -28.9),
    ("5a", -20, -15, -28.9, -26.1),
    ("5b", -15, -10, -26.1, -23.3),
    ("6a", -10, -5, -23.3, -20.6),
    ("6b", -5, 0, -20.6, -17.8),
    ("7a", 0, 5, -17.8, -15.0),
    ("7b", 5, 10, -15.0, -12.2),
    ("8a", 10, 15, -12.2, -9.4),
    ("8b", 15, 20, -9.4, -6.7),
    ("9a", 20, 25, -6.7, -3.9),
    ("9b", 25, 30, -3.9, -1.1),
    ("10a", 30, 35, -1.1, 1.7),
    ("10b", 35, 40, 1.7, 4.4),
    ("11a", 40, 45, 4.4, 7.2),
    ("11b", 45, 50, 7.2, 10.0),
    ("12a", 50, 55, 10.0, 12.8),
    ("12b", 55, 60, 12.8, 15.6),
    ("13a", 60, 65, 15.6, 18.3),
    ("13b", 65, 70, 18.3, 21.1),
)
"""Half zone, average annual extreme minimum from and to in °F, and the same in °C as published.

USDA Plant Hardiness Zone Map (2012 limits, kept in 2023).
"""

HALF_ZONES = tuple(row[0] for row in USDA_ZONES)


def colder_half(zone: str) -> str:
    """The half zone a printed zone begins with: "5" is "5a"; ValueError for what is no zone.

    >>> colder_half("5"), colder_half("10b")
    ('5a', '10b')
    """
    half = zone.lower() if zone[-1:].isalpha() else f"{zone}a"
    if half not in HALF_ZONES:
        raise ValueError(f"no USDA hardiness zone: {zone!r}")
    return half


def halves(zone: str) -> tuple[int, int]:
    """The half zones of a zone as places in the table: "5b" has one, "5" two; ValueError as above.

    >>> halves("5"), halves("5b")
    ((8, 9), (9, 9))
    """
    first = HALF_ZONES.index(colder_half(zone))
    return first, first + (not zone[-1:].isalpha())


def steps_colder(zone: str, other: str) -> int:
    """By how many half zones `zone` is colder than `other`; negative when it is warmer.

    >>> steps_colder("4a", "5")
    2
    """
    return HALF_ZONES.index(colder_half(other)) - HALF_ZONES.index(colder_half(zone))


def zone_for(celsius: float) -> str | None:
    """The coldest half zone of a plant hardy to this temperature; None outside the table.

    Tags print whole degrees Celsius, so within half a degree of a limit the limit is meant: -29 °C
    stands for -20 °F, which is 5a and not the last of 4b.

    >>> zone_for(-29), zone_for(-10)
    ('5a', '8a')
    """
    step = (celsius * 9 / 5 + 32 + 60) / 5
    if abs(step - round(step)) <= 0.5 * 9 / 5 / 5:
        step = round(step)
    return HALF_ZONES[int(step // 1)] if 0 <= step < len(HALF_ZONES) else None
