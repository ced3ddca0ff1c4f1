"""Water: what the tag says about watering, in its own words."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from ocr_tags.fields.care import AMOUNT, after_labels, or_spoken, sentences
from ocr_tags.fields.phrases import clean, fold, label_phrases
from ocr_tags.fields.values import value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_LABELS = label_phrases("water")
_BARE = later(rf"{AMOUNT}(?: (?:to|-) {AMOUNT})?(?: (?:once established|water|moisture|needs|use))?")
_OWN = later(
    r"water|moist|\bdry|drie[sd]|\bwet|damp|drain|drought|\blow|medium|\bmed\b|moderate|average|high|regular"
    r"|normal"
    r"|minim|light|heav|week|da(?:y|ily)|freely|sparing|establish|thorough|deep|often|frequent|rain|humid"
    r"|require|much|little|plenty|need|glass|\bcups?\b|every|steady|consistent|occasional|month|soak|mist"
    r"|arros|\beau|\bsec|moyen|modere|faible|eleve|frais|humed|moderad|medi[oa]|\bbaj|\balt[oa]"
    r"|seco\b|poc[oa]|riego|mucho|massig|mittel|feucht|trocken|gie(?:ss|ß)|wenig|viel|frisch|nass|hoch|gering"
    r"|matig|vocht"
    r"|droog|\bnat\b|weinig|veel|gemiddeld|mattlig|fukt|torr|torka|medel|tor\b|fugt|vand|asciut|umid|abbond"
    r"|regol"
)
_SOIL_WORD = (
    r"(?:the |potting |top(?: \w+)?(?: of)?(?: the)? )?"
    r"(?:soil|ground|surface|compost|roots|root ball|medium|mix)"
)
_MUCH = (
    r"(?:low|medium|moderate|average|high|regular|steady|even|consistent|constant|ample|plenty of|abundant"
    r"|adequate|occasional|little|minimal|frequent)"
)
_MEASURED = (
    r"(?:(?:about|around|at least|up to) )?(?:\d[\d.,/½¼¾ -]*|[½¼¾]|an?|one|two|half an?) ?(?:small |large "
    r"|full |good )?"
    r"(?:inch(?:es)?|in\b\.?|\"|”|″|cm|mm|cups?|glass(?:es)?|gal(?:lons?)?\b\.?|l\b|lit(?:re|er)s?|ml|pints?"
    r"|qts?\b\.?|quarts?|tablespoons?|ice cubes?)"
)
_EACH = r"(?:weekly|daily|monthly|(?:per|an?|each|every|once|twice)\b)"
_HOW = (
    r"(?:regularly|freely|well\b(?! after)|deeply|thoroughly|weekly|daily|monthly|sparingly|moderately|often"
    r"|frequently|infrequently|occasionally|lightly|little|less|heavily|generously|evenly|carefully"
    r"|abundantly"
    r"|plentifully|liberally|slowly|consistently|as (?:needed|required|necessary)|when|only (?:when|if|once)"
    r"|once|twice|(?:two|three) times|every|each|during|if|to keep|until|unless|after|before|between|while"
    r"|whenever|through(?:out)?\b|from below|from the bottom|at (?:the )?(?:base|roots?|soil)"
    r"|in (?:dry|hot|warm|summer|winter|spring|drought|the (?:morning|growing))"
    r"|\d+(?: ?[-–] ?\d+)? ?(?:x\b|times)|1|2)"
)
_SPOKEN = later(
    rf"\b(?:keep (?:{_SOIL_WORD} |roots |plants? )?(?:(?:evenly|consistently|slightly|constantly|fairly|just"
    rf"|always"
    r"|uniformly|quite|rather|permanently) )?(?:moist|damp|wet|watered|well[- ]watered|on the dry side|dry)\b"
    rf"|water(?: plants?)? {_HOW}\b|water {_MEASURED} {_EACH}"
    rf"|(?:(?:give|provide|supply|needs?|requires?|wants?) (?:it |them "
    rf"|plants? )?)?{_MEASURED} (?:of )?(?:water|rain) {_EACH}"
    rf"|(?:allow|let) {_SOIL_WORD}?(?: to)? ?(?:dry|dry out)\b|(?:allow|let) to dry\b"
    r"|(?:do not|don.t) (?:over-?water|let|allow)\b|avoid (?:over-?watering|letting)|never (?:let|allow)\b"
    r"|must (?:not|never) dry out|prefers to dry out"
    r"|(?:very |extremely |highly )?drought[- ](?:tolerant|resistant|hardy)\b|tolerates (?:some |dry|drought)"
    r"(?!.{0,12}soil)|(?:withstands|survives|tolerant of) drought\b"
    rf"|(?:needs|requires|prefers|likes|loves|wants|provide|give) {_MUCH} (?:water(?:ing)?|moisture)\b"
    rf"|(?:very |fairly )?{_MUCH} (?:water(?:ing)?|moisture)(?: needs| use|er)?\b"
    r"(?! (?:lil|table|garden|feature|plant|level|mark|area|stress)))"
)
_ELSEWHERE = later(
    r"\b(?:arroser\b|garder (?:le sol |la terre )?(?:humide|frais)|tolere la secheresse"
    r"|resistante? a la secheresse"
    r"|regar\b|riegue\b|mantener (?:el suelo |la tierra )?humed\w+|tolerante a la sequia"
    r"|(?:massig|regelmassig|reichlich|wenig|sparsam|viel) gie(?:ss|ß)en|trockenheitsvertraglich"
    r"|(?:regelmatig|matig|weinig|veel) water(?: geven)?\b|droogtetolerant)"
)


def read_water(tag: TagText) -> Iterator[Found[str]]:
    """What the tag says about watering: the labelled phrase, or else the first sentence about it.

    >>> [found.value for found in read_water(TagText("Full sun. Keep soil moist. Zone 5"))]
    ['Keep soil moist']
    >>> list(read_water(TagText("Water lily for the water garden")))
    []
    """
    text = tag.string
    found = list(after_labels(text, _LABELS, _BARE, _OWN, _SPOKEN)) or list(_behind_drops(text))
    spoken = chain(sentences(text, _SPOKEN, 0.85), sentences(text, _ELSEWHERE, 0.8))
    yield from or_spoken(found, spoken)


_DROPS = later(r"💧[💧 ]*")


def _behind_drops(text: str) -> Iterator[Found[str]]:
    """An amount that is all that stands behind drawn drops (common practice, no source)."""
    for drops in _DROPS.finditer(text):
        end = value_end(text, drops.end())
        phrase = clean(text[drops.end() : end])
        if _BARE.fullmatch(fold(phrase)):
            yield Found(phrase, (drops.end(), end), 0.55)
