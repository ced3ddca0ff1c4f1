"""One length printed in inches and again in centimetres: do the two say the same?"""

from __future__ import annotations

from ocr_tags.values import Length

SAME_SIZE = 0.09
"""Two units on one tag agree within this share: 3 ft is printed beside 1 m (8.6 % apart)."""


def agree(one: Length, other: Length) -> bool:
    """Whether two lengths in centimetres are one, as far as both print their ends."""
    pairs = [(one.max_cm, other.max_cm)]
    if (one.min_cm == one.max_cm) == (other.min_cm == other.max_cm):
        pairs.append((one.min_cm, other.min_cm))
    return all(abs(a - b) <= SAME_SIZE * max(a, b) for a, b in pairs if a is not None and b is not None)


def one_end_lost(one: Length, other: Length) -> bool:
    """Whether `one` is a single figure or a limit, and `other` a true range."""
    single = one.min_cm is None or one.min_cm == one.max_cm
    return single and other.min_cm is not None and other.max_cm is not None and other.min_cm != other.max_cm


def to_nearest_five(metric: Length, inches: Length) -> bool:
    """Whether `metric` is `inches` rounded to the nearest 5 cm (common practice, no source).

    >>> to_nearest_five(Length(10, 20), Length(10.16, 17.78))
    True
    """
    ends = ((metric.min_cm, inches.min_cm), (metric.max_cm, inches.max_cm))
    return all(a == b or (a and b and a % 5 == 0 and abs(a - b) <= 2.5) for a, b in ends)
