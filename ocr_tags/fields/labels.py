"""Is this line a label and nothing else? Asked by readers, and by whoever puts lines in reading order."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from ocr_tags.fields.phrases import listed, squeezed
from ocr_tags.fields.sizes.words import find_labels
from ocr_tags.patterns import later

_BESIDE = later(r"\s*[/|&·•]\s*")
_ZONES = later(
    r"(?:usda )?(?:plant |grow(?:ing)? )?(?:cold |winter )?(?:hardiness |hardy |heat )?zones?|"
    r"hardiness(?: rating)?|"
    r"min(?:imum|\.)? ?temp(?:erature|\.)?|zone de rusticité|rusticité|zona(?: de rusticidad)?|whz|"
    r"winterhärtezone",
    re.I,
)

_BESIDE_ZONES = later(r"(?:winter |cold )?hard(?:y|iness)", re.I)
"""The word for zones in a second language, beside a label only: alone it is a claim."""


@lru_cache(maxsize=512)
def is_label(line: str) -> bool:
    """Whether a line is nothing but a label, or several labels side by side ("Height / Hauteur").

    >>> is_label("Height / Hauteur:"), is_label("Mature Height"), is_label("Keep moist")
    (True, True, False)
    """
    parts = [part for part in _BESIDE.split(line.strip(" .:…-–—")) if part.strip()]
    told = [_is_one_label(part.strip(" .:")) for part in parts]
    others = [part.strip(" .:") for part, is_one in zip(parts, told, strict=True) if not is_one]
    return any(told) and all(map(_BESIDE_ZONES.fullmatch, others))


def _is_one_label(text: str) -> bool:
    if squeezed(text) in _printed_labels() or _ZONES.fullmatch(text):
        return True
    sizes = list(find_labels(text))
    if len(sizes) != 1 or sizes[0].weak:
        return False
    before, after = text[: sizes[0].start].strip().casefold(), text[sizes[0].end :].strip().casefold()
    return before in _BEFORE_SIZE and after in _AFTER_SIZE


_BEFORE_SIZE = frozenset(
    ["", "mature", "plant", "garden", "average", "maximum", "max", "max.", "ultimate", "typical", "final"]
) | frozenset(["eventual", "expected", "approx", "approx.", "full", "adult", "usual"])
_AFTER_SIZE = frozenset(["", "at maturity", "when mature", "of plant", "of plants", "range"])


@cache
def _printed_labels() -> frozenset[str]:
    alone = (*listed("light_alone").values(), *listed("foreign_light_alone").values())
    values = {squeezed(word) for words in alone for word in words}
    known = (*listed("label").values(), *listed("foreign_label").values())
    return frozenset(squeezed(label) for labels in known for label in labels) - values
