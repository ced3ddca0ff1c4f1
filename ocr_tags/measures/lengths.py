"""Lengths as the trade writes them: `12–18 in`, `1½–2 ft`, `30–45 cm`, never 11.999.

Conversion is exact (1 in = 2.54 cm), the figure shown is the roundest one near it, as on bilingual tags
where 12 in stands beside 30 cm. What a tag printed in the unit asked for comes out as printed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from ocr_tags.values import Length

Units = Literal["in", "cm"]

NEAR = 0.03
"""Share by which a shown figure may differ from the exact one: 24 in is printed beside 60 cm (1.6 %)."""
EXACT = 0.01
"""Within this, in the unit shown, a figure counts as printed in that unit."""
ROUGH = 0.1
"""The most that half feet may be off before inches are used instead: 14 in is not 1 ft."""

_INCH, _FOOT, _METRE = 2.54, 30.48, 100.0
_FRACTIONS = {0.25: "¼", 0.5: "½", 0.75: "¾"}


def length_in_words(length: Length, units: Units | None = None) -> str:
    """The length in inches and feet ("in"), in centimetres and metres ("cm"), or in both.

    >>> bed = Length(30.48, 45.72)
    >>> length_in_words(bed, "in"), length_in_words(bed, "cm"), length_in_words(bed)
    ('12–18 in', '30–45 cm', '12–18 in (30–45 cm)')
    >>> length_in_words(Length(45.72, 60.96), "in"), length_in_words(Length(None, 250.0), "in")
    ('1½–2 ft', 'up to 8 ft')
    >>> length_in_words(Length(35.56, 198.12), "in")
    '14–78 in'
    """
    if length.min_cm is None and length.max_cm is None:
        return "no length"
    if units is None:
        return f"{length_in_words(length, 'in')} ({_bare(length, 'cm')})"
    if length.min_cm is None:
        return f"up to {_bare(length, units)}"
    return f"{_bare(length, units)} or more" if length.max_cm is None else _bare(length, units)


def _bare(length: Length, units: Units) -> str:
    """The figures and their unit, without "up to" and "or more"."""
    ends = [end for end in (length.min_cm, length.max_cm) if end is not None]
    figures, unit = _imperial(ends) if units == "in" else _metric(ends)
    shown = list(dict.fromkeys(_fraction(x) if units == "in" else f"{x:g}" for x in figures))
    return f"{'–'.join(shown)} {unit}"


def _imperial(ends: Sequence[float]) -> tuple[list[float], str]:
    """Feet from two feet up where they come out in halves, else inches; large lengths in feet anyway."""
    feet = [_roundest(end / _FOOT, (5, 1, 0.5) if end > 20 * _FOOT else (1, 0.5)) for end in ends]
    inches = [_roundest(end / _INCH, (2, 1, 0.5) if end > 24 * _INCH else (1, 0.5)) for end in ends]
    as_feet = max(ends) >= 2 * _FOOT * (1 - NEAR) and min(ends) >= _FOOT * (1 - NEAR)
    exact_inches = all(_is_whole(end / _INCH) for end in ends)
    exact_feet = all(_is_whole(2 * end / _FOOT) for end in ends)
    if as_feet and None not in feet and (exact_feet or not exact_inches):
        return [x for x in feet if x is not None], "ft"
    too_rough = any(abs(_nearest(end / _FOOT, 0.5) * _FOOT - end) > ROUGH * end for end in ends)
    if max(ends) <= 6 * _FOOT or too_rough:
        return [x or _nearest(end / _INCH, 0.25) for end, x in zip(ends, inches, strict=True)], "in"
    return [x or _nearest(end / _FOOT, 0.5) for end, x in zip(ends, feet, strict=True)], "ft"


def _metric(ends: Sequence[float]) -> tuple[list[float], str]:
    """Centimetres up to two metres, then metres."""
    if max(ends) > 2 * _METRE and min(ends) >= _METRE / 2:
        metres = (_roundest(end / _METRE, (1, 0.5, 0.1)) or _nearest(end / _METRE, 0.1) for end in ends)
        return [round(x, 1) for x in metres], "m"
    steps = (5, 1, 0.5)
    return [_roundest(end, steps) or _nearest(end, 1) or 1 for end in ends], "cm"


def _roundest(figure: float, steps: Sequence[float]) -> float | None:
    """The figure itself when it is whole, else the multiple of the largest step that lies near."""
    if _is_whole(figure):
        return round(figure)
    for step in steps:
        rounded = _nearest(figure, step)
        if rounded and abs(rounded - figure) <= NEAR * figure:
            return rounded
    return None


def _is_whole(figure: float) -> bool:
    return round(figure) > 0 and abs(figure - round(figure)) <= EXACT


def _nearest(figure: float, step: float) -> float:
    return round(figure / step) * step


def _fraction(figure: float) -> str:
    whole, part = divmod(figure, 1)
    sign = _FRACTIONS.get(round(part, 2))
    return f"{whole:g}{sign}" if sign and whole else sign or f"{figure:g}"
