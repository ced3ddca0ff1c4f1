"""Light told without its words: drawn suns, "Sun: Full", hours of sun, morning sun."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.facts import SUNNY_TO_SHADY
from ocr_tags.fields.phrases import fold
from ocr_tags.patterns import later
from ocr_tags.record import Found

Light = tuple[str, ...]

_DRAWN: dict[str, Light] = {
    "☀": ("full_sun",),
    "◐": ("part_sun", "part_shade"),
    "☾": ("part_shade",),
    "●": ("full_shade",),
}
"""A drawn sun, half-dark disc, crescent, dark disc (common practice, no source)."""
_AND = r" ?(?:[-–/,>]|to)? ?"
_MARKS = later(rf"(?:[☀◐](?:{_AND}[☀◐☾●○])*|[☾●](?:{_AND}[☀◐])+)")


def by_marks(text: str) -> Iterator[Found[Light]]:
    """Drawn suns, where no word tells. A half sun is part sun or part shade, the mark does not say.

    Three kinds in a row are a scale of what there is rather than this plant's light, and so are several rows.
    A dark disc or a crescent alone is a bullet or an ornament.
    """
    rows = list(_MARKS.finditer(text))
    for match in rows if len(rows) == 1 else ():
        drawn = set(match[0]) & set(_DRAWN)
        if len(drawn) < 3 and "○" not in match[0]:
            classes = {name for mark in drawn for name in _DRAWN[mark]}
            yield Found(tuple(name for name in SUNNY_TO_SHADY if name in classes), match.span(), 0.5)


_SUN_FULL = later(
    r"(?:^|(?<=[\n\t. ]))sun(?:light| exposure| needs)? ?(?:[:\t☀☼]|(?<=[\n\t]sun)\n) ?(?P<how>full|part"
    r"|partial)"
    r"(?: ?(?:to|or|and|[/&,–-]) ?(?P<also>full|part|partial))?(?! ?(?:sun|shade|shady|to\b|or\b|[/-]))\b"
)


def sun_full(text: str) -> Iterator[Found[Light]]:
    """ "Sun: Full", "Sun: Full to Part": the noun stands in the label."""
    for match in _SUN_FULL.finditer(fold(text)):
        named = {"full_sun" if how == "full" else "part_sun" for how in match.groups() if how}
        yield Found(tuple(c for c in SUNNY_TO_SHADY if c in named), match.span(), 0.85)


_COUNT = (
    r"(?P<less>less than |under |fewer than |up to |<\s?)?(?<![\d./-])(?P<low>\d{1,2}) ?(?:\+|or more"
    r"|plus)?"
    r"(?: ?(?:to|-|–) ?(?P<high>\d{1,2}))?\+? ?(?:or more )?(?:hours?|hrs?\b\.?)"
)
_HOURS = later(rf"{_COUNT}\s?(?:or more )?(?:a day |per day |daily )?(?:of )?(?:full |direct )*sun")
_SUN_HOURS = later(
    rf"\b(?:direct )?sun(?:light)?(?: exposure| needs)? ?[:\t–—-] ?(?:at least |min(?:imum"
    rf"|\.)?(?: of)? )?{_COUNT}"
)


def by_hours(text: str) -> Iterator[Found[Light]]:
    """Six hours and more are full sun, under three full shade; between them hours alone do not tell."""
    folded = fold(text)
    if len(re.findall(r"\bh(?:ou)?rs?\b", folded)) > 1:
        return  # a legend gives hours for every class
    for match in (*_HOURS.finditer(folded), *_SUN_HOURS.finditer(folded)):
        low, high = int(match["low"]), int(match["high"] or match["low"])
        if match["less"] and high <= 3:
            yield Found(("full_shade",), match.span(), 0.7)
        elif not match["less"] and 6 <= low <= high <= 12:
            yield Found(("full_sun",), match.span(), 0.8)


_MORNING = later(
    r"\b(?:morning|am|a\.m\.) sun[\s,;]{1,3}(?:and |with |then |& ?)?(?:afternoon|pm|p\.m\.) shade\b"
)


def morning_sun(text: str) -> Iterator[Found[Light]]:
    for match in _MORNING.finditer(fold(text)):
        yield Found(("part_shade",), match.span(), 0.8)
