"""Trade item numbers (GTIN): check digit, lengths, shortened numbers, and which are a shop's own.

The rules are those of the GS1 General Specifications (check digit, GTIN formats, GS1 prefixes).
"""

from __future__ import annotations

import re

LENGTHS = (8, 12, 13, 14)
"""A GTIN is printed with so many digits; the key of all of them is the same number in a field of 14."""


def check_digit(digits: str) -> int:
    """The GS1 check digit of a number without it (weights 3, 1, 3, … from the right).

    >>> check_digit("629104150021")
    3
    """
    total = sum(int(digit) * (1 if place % 2 else 3) for place, digit in enumerate(reversed(digits)))
    return -total % 10


def is_gtin(digits: str) -> bool:
    """Whether these digits are as long as a GTIN, end in their check digit and are not all the same.

    >>> is_gtin("7300011000017"), is_gtin("7300011000018")
    (True, False)
    """
    return (
        len(digits) in LENGTHS
        and digits.isdecimal()
        and len(set(digits)) > 1
        and int(digits[-1]) == check_digit(digits[:-1])
    )


def gtin14(digits: str) -> str:
    """The same number in a field of 14 digits: equal for all ways to print one GTIN.

    >>> gtin14("411890740097") == gtin14("0411890740097")
    True
    """
    return digits.zfill(14)


def expanded(short: str) -> str | None:
    """The twelve digits that a zero-suppressed UPC-E of eight stands for; None when it stands for none.

    >>> expanded("01801624")
    '018200000164'
    >>> expanded("23456785") is None
    True
    """
    if not re.fullmatch(r"[01]\d{7}", short):
        return None
    system, body, how, check = short[0], short[1:6], int(short[6]), short[7]
    if how <= 2:
        number = f"{body[:2]}{how}0000{body[2:]}"
    elif how == 3:
        number = f"{body[:3]}00000{body[3:]}"
    elif how == 4:
        number = f"{body[:4]}00000{body[4]}"
    else:
        number = f"{body}0000{how}"
    full = f"{system}{number}{check}"
    return full if is_gtin(full) else None


def is_restricted(digits: str) -> bool:
    """Whether a shop or region gave the number itself, so that it names an article only there.

    Prefixes 02, 04 and 20 to 29 of thirteen digits; 2 and 4 of twelve; 0 and 2 of eight.

    >>> is_restricted("411890740097"), is_restricted("2012345678900"), is_restricted("6291041500213")
    (True, True, False)
    """
    if len(digits) == 8:
        return digits[0] in "02"
    thirteen = gtin14(digits)[1:]
    return thirteen[0] == "2" or thirteen[:2] in {"02", "04"}
