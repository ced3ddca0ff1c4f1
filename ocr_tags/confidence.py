"""From strength of evidence to the chance of being right.

The points below were set by hand and are not yet fitted to counts: `samples/measure.py --calibration`
shows how often values of each confidence are right, and between points the chance is interpolated.
"""

from __future__ import annotations

from bisect import bisect_right

ONE_READER = ((0.0, 0.0), (0.3, 0.3), (0.5, 0.5), (0.7, 0.8), (0.85, 0.93), (0.9, 0.95), (1.0, 0.97))
SEVERAL = ((0.0, 0.0), (0.3, 0.3), (0.5, 0.6), (0.7, 0.85), (0.9, 0.97), (0.97, 0.99), (1.0, 0.995))
"""Points of strength and chance: one reading of one side, and several readings or both sides."""


def chance(strength: float, readers: int, both_sides: bool) -> float:
    """The chance, 0 to 1, that a claim of this strength is right."""
    table = SEVERAL if readers > 1 or both_sides else ONE_READER
    strength = min(max(strength, 0.0), 1.0)
    at = min(bisect_right([point for point, _ in table], strength), len(table) - 1)
    (low, low_chance), (high, high_chance) = table[at - 1], table[at]
    return low_chance + (high_chance - low_chance) * (strength - low) / (high - low)
