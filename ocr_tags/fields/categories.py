"""What kind of plant the tag says it is: perennial, shrub, herb and the like.

Kind words stand in names ("Tree Mallow"), praise ("a perennial favourite") and places ("herb garden") as
well, so a word counts only alone on its line, after a label, or as the noun of a describing sentence.
"Perennial" holds for some place only; that is for a caution to say.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from ocr_tags.fields.phrases import Hit, Phrases, cells, fold, label_phrases, labelled, listed
from ocr_tags.record import Field, Found, TagText

_WORDS = Phrases({word: kind for kind, words in listed("kind").items() for word in words}, shortest=8)
_BOTH = {"fruit tree": ("tree", "fruit")}

_LABELS = label_phrases("categories")
_ADJECTIVE = (
    r"(?:hardy|half[- ]hardy|cold[- ]hardy|winter[- ]hardy|flowering|evergreen|semi-evergreen|deciduous"
    r"|ornamental|climbing|"
    r"herbaceous|garden|dwarf|compact|native|woody|fruiting|bedding|perennial|annual|broadleaf"
    r"|summer|fall|tall|small|large|"
    r"tropical|sun|shade|long[- ]lived|low|low-growing|fast-growing|vigorous|rugged|tough|trailing"
    r"|twining|showy|easy|"
    r"easy-care|reliable|handsome|graceful|bushy|upright|rounded|spreading|mounding|colorful|colourful"
    r"|beautiful|lovely|"
    r"hybrid|heirloom|organic|aromatic|fragrant|drought-tolerant|warm-season|cool-season|medium-sized"
    r"|multi-stemmed|short-lived|"
    r"slow-growing|versatile|classic|culinary|edible|patio|specimen|stately|robust|clumping|clump-forming"
    r"|weeping|"
    r"late|early|true|rustique|resistente)"
)
_WHOLE = re.compile(rf"[\W_]*(?:zones?\s?\d+\w?\s)?(?:{_ADJECTIVE}[ ,]{{1,2}}){{0,3}}")
_TRAIL = re.compile(
    r"[\W_]*(?:plants?[\W_]*|rustique[\W_]*)?$|\W{0,3}\(?(?:in )?(?:usda )?(?:hardiness )?zones?\b"
    r"|\s?[,•|;–—-]\s(?:zones?|hardy|sun|full|part|shade|height|usda)\b|\s+hardy\b|\s+(?:de|du)\s"
)
_JOIN = re.compile(r"\s?(?:/|,|&|\+|\bor\b|\band\b|-|–|\bou\b|\bo\b|\||\n(?!\n))\s?")
_BESIDE = re.compile(rf"\s?[/,&-]?\s?(?:{_ADJECTIVE}\s)?")
_SENTENCE = re.compile(
    rf"\b(?:(?:this|is an?|an?|these|makes an?|our) (?:{_ADJECTIVE},? (?:and )?){{0,4}}(?:[a-z]+-[a-z]+ )?)$"
)
_OF_PLANT = re.compile(
    r"(?: (?:that|which|with|is|are|grows?|for|has|bears|produces|native|hardy|growing|forming|whose"
    r"|covered|loved|"
    r"blooms?|prized|valued|grown|featuring|offering|offers|adds|thrives|performs|features|makes|returns"
    r"|in zones?)\b|[.,;:!]|$)"
)
_NOT_ONE = re.compile(
    r"\b(?:as|like|under|around|near|with|to|not|than|unlike|over|through|against|support"
    r"|along)\s(?:an?\s|the\s)?$"
)


def read_categories(tag: TagText) -> Iterator[Found[str]]:
    """Each kind the tag names, once.

    >>> [found.value for found in read_categories(TagText("Hardy. This compact shrub is evergreen."))]
    ['shrub']
    >>> [found.value for found in read_categories(TagText("Plant type: Perennial / Annual"))]
    ['perennial', 'annual']
    >>> list(read_categories(TagText("A perennial favourite for the herb garden")))
    []
    """
    text = tag.string
    folded = fold(text)
    hits = _WORDS.find(text)
    values = [(found.start, found.end) for found in labelled(text, _LABELS)]
    seen: set[str] = set()
    for hit in hits:
        if re.match(r"['’]s\b", folded[hit.end :]):
            continue
        certainty = _certainty(text, folded, hits, hit, values)
        kinds = _BOTH.get(folded[hit.start - 6 : hit.end], (hit.value,))
        for kind in kinds if certainty else ():
            if kind not in seen:
                seen.add(kind)
                yield Found(kind, (hit.start, hit.end), certainty * hit.certainty)


_Kind = Hit[str]


def _certainty(text: str, folded: str, hits: list[_Kind], hit: _Kind, values: list[tuple[int, int]]) -> float:
    """How sure it is that this word says what the plant is; 0 when it belongs to something else."""
    if any(start <= hit.start < end and _fills(folded, start, end, hits, hit) for start, end in values):
        return 1.0
    start, end = next(cell for cell in cells(text) if cell[0] <= hit.start < cell[1])
    if _fills(folded, start, end, hits, hit):
        return 0.9
    before = folded[max(start, hit.start - 70) : hit.start]
    if _NOT_ONE.search(before):
        return 0.0
    opens = _SENTENCE.search(folded[max(0, hit.start - 70) : hit.start].replace("\n", " "))
    return 0.85 if opens and _OF_PLANT.match(folded.replace("\n", " "), hit.end) else 0.0


def _fills(folded: str, start: int, end: int, hits: list[_Kind], hit: _Kind) -> bool:
    """True when kinds, their adjectives and a zone are all there is between `start` and `end`."""
    inside = [other for other in hits if start <= other.start < end]
    if hit not in inside or not _WHOLE.fullmatch(folded, start, inside[0].start):
        return False
    for one, other in pairwise(inside):
        gap = folded[one.end : other.start]
        beside = len(gap) > 1 and _BESIDE.fullmatch(gap)
        if not (beside or _JOIN.fullmatch(gap)):
            return False
    return bool(_TRAIL.match(folded[inside[-1].end : end]))


CATEGORIES: Field[str] = Field("categories", "Kind of plant", str, read_categories, "list")
