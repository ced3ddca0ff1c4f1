"""Water, soil and feeding: what the tag says, in its own words.

A labelled phrase counts before a sentence; of several sentences the first. The printed words are kept,
with single spaces. Reading "Low" or "weekly" as an amount is nobody's business here: needs change with
soil, weather and age of the plant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import chain, islice

from ocr_tags.fields.phrases import Phrases, clean, flowing, fold, label_phrases
from ocr_tags.fields.values import is_torn, labelled, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_Reader = Callable[[TagText], Iterator[Found[str]]]


_AMOUNT = (
    r"(?:very |evenly |moderately |fairly )?(?:low|medium|med|moderate|average|high|regular|normal"
    r"|minimal|light|"
    r"heavy|dry|moist|wet|weekly|daily|modere|moyen|moderado|medio|bajo|alto|massig|mittel|matig|regelmatig)"
)


def _after_labels(
    text: str, labels: Phrases[bool], bare: re.Pattern[str], own: re.Pattern[str]
) -> Iterator[Found[str]]:
    """Labelled phrases. With only a space between, the rest must be a value that could not end a sentence.

    A phrase with none of the field's `own` words is doubtful, and behind a column gap or line end another
    part of the tag. A capital after the label ("Soil type Rich loam") is no sentence of its label either.
    """
    for found in labelled(text, labels):
        phrase = clean(text[found.start : found.end])
        if not any(character.isalpha() for character in phrase) or len(phrase) > 160:
            continue
        spoken = own.search(fold(phrase)) is not None
        label = text[found.label : found.start].rstrip()
        apart = label[1:].islower() or (label.isupper() and not phrase.isupper())
        titled = spoken and phrase[0].isupper() and apart
        if found.bare and not titled and not bare.fullmatch(fold(phrase)):
            continue
        doubt = 1.0 if spoken else 0.3 if set(text[found.label : found.start]) & set("\t\n") else 0.8
        if found.second:
            doubt *= 0.5  # its words are not those that are kept
        if _BROKEN.match(phrase) or is_torn(text[found.start : found.end]):
            doubt = min(doubt, 0.4)
        yield Found(phrase, (found.start, found.end), found.certainty * doubt)


_BROKEN = later(r"(?![aAàyoI] )[^\W\d_] (?=[a-z])|\W*[^\W\d_]{1,4}\.+(?=[A-Z])")
"""The end of a torn word, or leader dots read as letters: "e moist", "ww.Sandy"."""


def _opens_sentence(text: str, at: int) -> bool:
    return not text[:at].strip() or bool(re.search(r"(?:[.!;:•|·\t\n,]|[^\w\s])\s*$", text[:at]))


def _sentences(text: str, opening: re.Pattern[str], certainty: float) -> Iterator[Found[str]]:
    """Sentences that begin as `opening` says, to their end."""
    for match in opening.finditer(flowing(text)):
        end = value_end(text, match.start(), match.end())
        phrase = clean(text[match.start() : end])
        if _opens_sentence(text, match.start()) and 6 <= len(phrase) <= 160:
            doubt = 0.4 if is_torn(text[match.start() : end]) else 1.0
            yield Found(phrase, (match.start(), end), certainty * doubt)


def _or_spoken(found: list[Found[str]], spoken: Iterator[Found[str]]) -> Iterator[Found[str]]:
    """What was found after labels; the first sentence too, where that leaves doubt."""
    yield from found
    if not any(one.certainty > DOUBTFUL for one in found):
        yield from islice(spoken, 1)


DOUBTFUL = 0.5

# ---------------------------------------------------------------- water

_WATER_LABELS = label_phrases("water")
_WATER_BARE = later(rf"{_AMOUNT}(?: (?:to|-) {_AMOUNT})?(?: (?:once established|water|moisture|needs|use))?")
_WATER_OWN = later(
    r"water|moist|\bdry|drie[sd]|\bwet|damp|drain|drought|\blow|medium|\bmed\b|moderate|average|high"
    r"|regular|normal"
    r"|minim|light|heav|week|da(?:y|ily)|freely|sparing|establish|thorough|deep|often|frequent|rain|humid"
    r"|require|much"
    r"|little|plenty|need|arros|\beau|\bsec|moyen|modere|faible|eleve|frais|humed|moderad|medi[oa]|\bbaj"
    r"|\balt[oa]"
    r"|seco\b|poc[oa]|riego|mucho|massig|mittel|feucht|trocken|giess|wenig|viel|frisch|nass|hoch|gering"
    r"|matig|vocht"
    r"|droog|\bnat\b|weinig|veel|gemiddeld|mattlig|fukt|torr|torka|medel|tor\b|fugt|vand|asciut|umid"
    r"|abbond|regol"
)
_SOIL_WORD = (
    r"(?:the |potting |top(?: \w+)?(?: of)?(?: the)? )?(?:soil|ground|surface|compost|roots|root ball"
    r"|medium|mix)"
)
_WATER = later(
    rf"\b(?:keep (?:{_SOIL_WORD} |roots |plants? )?(?:(?:evenly|consistently|slightly|constantly|fairly"
    rf"|just|always|"
    r"uniformly) )?(?:moist|damp|wet|watered|well[- ]watered|on the dry side|dry)\b"
    r"|water (?:regularly|freely|well\b(?! after)|deeply|thoroughly|weekly|daily|sparingly|moderately|often|"
    r"frequently|lightly|consistently|as needed|when|only when|once|twice|every|during|if|to keep|until"
    r"|after|"
    r"at (?:the )?base|in dry|1|2)\b"
    rf"|(?:allow|let) {_SOIL_WORD}?(?: to)? ?(?:dry|dry out)\b"
    r"|do not (?:over-?water|let|allow)\b|avoid over-?watering|never let"
    r"|(?:very |extremely |highly )?drought[- ](?:tolerant|resistant|hardy)\b|tolerates (?:some |dry|drought)"
    r"(?!.{0,12}soil)|(?:needs|requires|prefers) (?:regular|average|moderate|little|plenty of|consistent"
    r"|ample|low|"
    r"frequent) (?:water|moisture)|(?:low|medium|moderate|average|high|regular) water(?:ing)?(?: needs"
    r"| use|er)?\b(?! lil)"
    r")"
)
_WATER_ELSEWHERE = later(
    r"\b(?:arroser\b|garder (?:le sol |la terre )?(?:humide|frais)|tolere la secheresse"
    r"|resistante? a la secheresse"
    r"|regar\b|riegue\b|mantener (?:el suelo |la tierra )?humed\w+|tolerante a la sequia"
    r"|(?:massig|regelmassig|reichlich) giessen|trockenheitsvertraglich|regelmatig water geven"
    r"|droogtetolerant)"
)


def read_water(tag: TagText) -> Iterator[Found[str]]:
    """What the tag says about watering: the labelled phrase, or else the first sentence about it.

    >>> [found.value for found in read_water(TagText("Full sun. Keep soil moist. Zone 5"))]
    ['Keep soil moist']
    >>> list(read_water(TagText("Water lily for the water garden")))
    []
    """
    text = tag.string
    found = list(_after_labels(text, _WATER_LABELS, _WATER_BARE, _WATER_OWN)) or list(_behind_drops(text))
    spoken = chain(_sentences(text, _WATER, 0.85), _sentences(text, _WATER_ELSEWHERE, 0.8))
    yield from _or_spoken(found, spoken)


_DROPS = later(r"💧[💧 ]*")


def _behind_drops(text: str) -> Iterator[Found[str]]:
    """An amount that is all that stands behind drawn drops (common practice, no source)."""
    for drops in _DROPS.finditer(text):
        end = value_end(text, drops.end())
        phrase = clean(text[drops.end() : end])
        if _WATER_BARE.fullmatch(fold(phrase)):
            yield Found(phrase, (drops.end(), end), 0.55)


# ---------------------------------------------------------------- soil

_SOIL_LABELS = label_phrases("soil")
_ADJECTIVE = (
    r"(?:moist|dry|wet|damp|boggy|average|ordinary|normal|rich|fertile|poor|lean|light|heavy|loose|deep"
    r"|loamy|loam|"
    r"sandy|sand|clay|rocky|gravelly|gritty|acidic?|alkaline|neutral|chalky|lime|limey|humusy"
    r"|humus[- ]rich|organic|"
    r"organically rich|well[- ]?drain(?:ed|ing)|well[- ]?drained|free[- ]draining|fast[- ]drain(?:ed|ing)|"
    r"moisture[- ]retentive|evenly moist|slightly|moderately|consistently|very|medium|any|most|all|good"
    r"|garden|"
    r"cactus|potting|enriched|amended|infertile|shallow|compacted|salty|saline|cool)"
)
_SOIL_OWN = later(
    r"drain|moist|\bdry|\bwet|damp|average|ordinar|normal|rich|fertile|poor|lean|light|heav|loose|loam"
    r"|sand|clay|rock"
    r"|gravel|grit|acid|alkali|neutral|chalk|lime|humus|organic|\bany|most|\ball|well|adapt|compost|mix"
    r"|potting|peat"
    r"|\bph\b|tolera|bog|medium|cool|deep|soil|ericac|sabl|argil|frais|humid|\bsec|leger|calcaire|terreau"
    r"|tout"
    r"|neutr|fertil|rico|suelto|dren|aren|arcill|humed|durchlass|humos|nahrstoff|sauer|kalk|lehm|feucht"
    r"|trocken"
    r"|frisch|jede|alle|doorla|zuur|zand|klei|vocht|droog|voedz|goed|mull|naring|\bsur|torr|fukt|lucker|ricc"
)
_NOUN_PHRASE = (
    rf"{_ADJECTIVE}(?:(?:,? (?:and|or|to|but|y) |, ?|/"
    rf"| ){_ADJECTIVE})* (?:garden )?soils?(?: types?)?\b"
)
_SOIL = later(
    r"(?:\b(?P<verb>prefers?|requires?|needs?|likes?|tolerates?|thrives? in|adaptable to"
    r"|adapts to) (?:an? )?)?"
    rf"\b(?P<soil>{_NOUN_PHRASE})"
)
_NOT_OF_PLANT = later(
    r"\b(?:water|keep|when|until|if|allow|let|backfill|fill|cover|with|firm|press|potting|moisten|remove"
    r"|in poor|"
    r"mix(?:ed)?|new|native|bag of|use)\b[^.;\n\t]{0,20}$"
)


def read_soil(tag: TagText) -> Iterator[Found[str]]:
    """The soil a tag asks for: the labelled phrase, or else "Prefers well-drained soil" and its like.

    >>> [found.value for found in read_soil(TagText("Plant in full sun and rich, well-drained soil."))]
    ['rich, well-drained soil']
    >>> list(read_soil(TagText("Keep soil moist. Fill hole with soil.")))
    []
    """
    text = tag.string
    bare = later(rf"{_ADJECTIVE}(?:(?:,? (?:and|or|to|but) |, ?|/| ){_ADJECTIVE})*(?: soils?)?")
    found = [f for f in _after_labels(text, _SOIL_LABELS, bare, _SOIL_OWN) if _is_soil(text, f)]
    yield from _or_spoken(found, _soil_phrases(text))


def _is_soil(text: str, found: Found[str]) -> bool:
    """Not "Sol" of a Spanish tag, nor a soil's moisture or temperature read as its kind."""
    printed = fold(text[: found.span[0]])
    if re.search(r"\bsol\s?[:.\t\n ]*$", printed):
        return not re.match(r"(?:directo|pleno|parcial|y |o |a )", fold(found.value))
    return True


def _soil_phrases(text: str) -> Iterator[Found[str]]:
    folded = flowing(text)
    for match in _SOIL.finditer(folded):
        before = folded[max(0, match.start() - 40) : match.start()]
        if _NOT_OF_PLANT.search(before) or re.fullmatch(
            r"(?:garden|potting|good|cactus)\s(?:garden )?soils?", match[0]
        ):
            continue
        whole = match["verb"] and match["verb"][:5] != "adapt" and _opens_sentence(text, match.start())
        span = match.span() if whole else match.span("soil")
        yield Found(clean(text[slice(*span)]), span, 0.85)


# ---------------------------------------------------------------- feeding

_FEEDING_LABELS = label_phrases("feeding")
_HOW_OFTEN = (
    r"every|monthly|weekly|bi-?weekly|fortnightly|regularly|once|twice|lightly|sparingly|in|during|with"
    r"|after|"
    r"when|at|as|throughout|through|from|spring|annually|frequently|heavily|before|generously|moderately"
    r"|using"
)
_FEEDING_OWN = later(
    r"feed|fertil|month|week|every|spring|summer|autumn|\bfall|winter|season|slow|liquid|balanced|organic"
    r"|compost"
    r"|manure|\blow|medium|light|heav|moderate|high|average|none|\bnot?\b|regular|year|annual|granul|bloom"
    r"|food|once"
    r"|twice|when|\d-\d+-\d|potash|general|mulch|minim|days|engrais|mois\b|semaine|printemps|liberation|fois"
    r"|abon|\bmes\b|mensual|semana|primavera|dung|woch|monat|tage\b|langzeit|jahr|mest|maand|voorjaar"
    r"|korrel|godsel"
    r"|naring|manad|vecka|concim|settiman|mese"
)
_FEEDING_BARE = later(
    rf"(?:{_AMOUNT}|(?:(?:an?|with|slow|controlled|release|liquid|balanced|general|all|purpose|granular"
    rf"|organic"
    r"|soluble|high|low|potash|nitrogen|tomato|rose|citrus|\d+[-–]\d+[-–]\d+)[ -]){1,5}"
    rf"(?:feed|food|fertili[sz]er|compost)(?: (?:{_HOW_OFTEN})\b.*)?)"
)
_FOOD = (
    r"(?:(?:an? )?(?:(?:balanced|liquid|general|all|purpose|controlled|slow|release|granular|organic"
    r"|soluble|high"
    r"|low|potash|nitrogen|phosphorus|tomato|rose|citrus|acid|evergreen|bulb|plant)[ -]){1,4}"
    r"(?:feed|food|fertili[sz]er)|(?:slow|controlled)[ -]release|compost)"
)
_FEEDING = later(
    rf"\b(?:{_FOOD} (?:every|each|monthly|weekly|fortnightly|once|twice|in (?:early |late "
    rf"|mid[ -]?)?(?:spring|summer"
    r"|autumn|fall|winter)|at planting|when planting|throughout|during)\b|"
    rf"(?:feed|fertili[sz]er?)(?: plants?)? (?:{_HOW_OFTEN})\b|(?:apply|use|mix in|work in|add)"
    r"(?: an?| the)?(?: [\w-]+){0,3} (?:fertili[sz]er|plant food|feed)\b|fertiliser (?:tou|au|une|cha)\w*"
    r"|(?:fertilizar|abonar) (?:cada|una|en|con|mens)\w*|do not (?:fertili[sz]e|feed)"
    r"|no fertili[sz]er (?:need|requ)\w+)"
)


def read_feeding(tag: TagText) -> Iterator[Found[str]]:
    """How the tag says to feed: the labelled phrase, or else the first sentence about it.

    >>> [found.value for found in read_feeding(TagText("Feed every 2 weeks. Attracts bees."))]
    ['Feed every 2 weeks']
    >>> list(read_feeding(TagText("Feeds hummingbirds. Fertilizer sold separately.")))
    []
    """
    text = tag.string
    found = list(_after_labels(text, _FEEDING_LABELS, _FEEDING_BARE, _FEEDING_OWN))
    yield from _or_spoken(found, _sentences(text, _FEEDING, 0.9))
