"""How tags print the name of a series beside a word for it.

How series are printed is common practice, no source.
"""

from __future__ import annotations

import re

from ocr_tags.patterns import later

CAPITALS = "A-ZÀ-ÖØ-Þ"
WORD = rf"(?:[dl]['’]{{1,2}}(?=[{CAPITALS}]))?[{CAPITALS}][\w’'&-]*"
"""A word of somebody's own name."""

SERIES_AFTER = later(
    rf"(?P<name>{WORD}(?:[ ](?:& )?{WORD}){{0,2}})[\"”’']?"
    r"(?:(?:\s?(?:[™®©]M?|\((?:TM|tm|R|r)\)))?\s+(?:[Ss]eries|SERIES)"
    r"|\s?(?:[™®]|\((?:TM|tm|R|r)\))\s+(?:[Cc]ollection|COLLECTION|[Ff]amily|FAMILY))\b"
)
SERIES_NAMED = later(
    rf"\b(?:[Ff]rom|[Ii]n|[Pp]art of|FROM) (?:the|our|THE|OUR) (?P<name>{WORD}(?:[ ](?:& )?{WORD}){{0,2}}?)"
    r"(?:\s?[™®])?\s+(?:[Cc]ollection|COLLECTION|[Rr]ange|RANGE)(?=[\s.,;]|$)"
)
"""A range that a sentence names: "from the Lanternwick range by ..."."""
SERIES_OF_KIND = later(
    rf"^\W*(?P<name>{WORD}(?:[ ]{WORD}){{0,2}}) ?(?:[®™]|\((?:tm|r)\)) (?:[\w-]+ ){{0,2}}"
    r"(?:Shrubs|Perennials|Annuals|Roses|Grasses|Vines|Houseplants|Succulents|Trees|Bulbs|Ferns|Herbs"
    r"|Vegetables|Groundcovers|Hedging|Natives|Fruits?|Line|Range|Strain)(?: for [\w ]+)?\W*$",
    re.I,
)
"""A protected name before plants of many kinds is no plant's own: "Quillmarsh® Shrubs"."""
SERIES_BEFORE = later(
    rf"\b(?:(?:[Ss]eries|SERIES|Série|Serie|[Cc]ollection)\s*:|(?:[Ss]eries|SERIES|Série|Serie)\s*[–-])"
    rf"\s*[\"“‘']?(?P<name>{WORD}(?:[ ]{WORD}){{0,2}})"
)
