"""Water, soil and feeding: what the tag says, in its own words.

A labelled phrase counts before a sentence; of several sentences the first. The printed words are kept,
with single spaces. Reading "Low" or "weekly" as an amount is nobody's business here: needs change with
soil, weather and age of the plant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import islice

from ocr_tags.fields.phrases import Phrases, clean, flowing, fold, label_phrases, labelled, value_end
from ocr_tags.record import Field, Found, TagText

_Reader = Callable[[TagText], Iterator[Found[str]]]


_AMOUNT = (
    r"(?:very |evenly |moderately |fairly )?(?:low|medium|med|moderate|average|high|regular|normal"
    r"|minimal|light|"
    r"heavy|dry|moist|wet|weekly|daily|modere|moyen|moderado|medio|bajo|alto|massig|mittel|matig|regelmatig)"
)


def _after_labels(text: str, labels: Phrases[bool], bare: re.Pattern[str]) -> Iterator[Found[str]]:
    """Labelled phrases. With only a space between, the rest must be a value that could not end a sentence."""
    for found in labelled(text, labels):
        phrase = clean(text[found.start : found.end])
        if not any(character.isalpha() for character in phrase) or len(phrase) > 160:
            continue
        if found.bare and not bare.fullmatch(fold(phrase)):
            continue
        yield Found(phrase, (found.start, found.end), found.certainty)


def _opens_sentence(text: str, at: int) -> bool:
    return not text[:at].strip() or bool(re.search(r"(?:[.!;:•|·\t\n,]|[^\w\s])\s*$", text[:at]))


def _sentences(text: str, opening: re.Pattern[str], certainty: float) -> Iterator[Found[str]]:
    """Sentences that begin as `opening` says, to their end."""
    for match in opening.finditer(flowing(text)):
        end = value_end(text, match.end())
        phrase = clean(text[match.start() : end])
        if _opens_sentence(text, match.start()) and 6 <= len(phrase) <= 160:
            yield Found(phrase, (match.start(), end), certainty)


# ---------------------------------------------------------------- water

_WATER_LABELS = label_phrases("water")
_WATER_BARE = re.compile(
    rf"{_AMOUNT}(?: (?:to|-) {_AMOUNT})?(?: (?:once established|water|moisture|needs|use))?"
)
_SOIL_WORD = (
    r"(?:the |potting |top(?: \w+)?(?: of)?(?: the)? )?(?:soil|ground|surface|compost|roots|root ball"
    r"|medium|mix)"
)
_WATER = re.compile(
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
    r"|arroser\b|garder (?:le sol |la terre )?(?:humide|frais)|tolere la secheresse"
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
    found = list(_after_labels(text, _WATER_LABELS, _WATER_BARE))
    yield from found or islice(_sentences(text, _WATER, 0.85), 1)


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
_NOUN_PHRASE = (
    rf"{_ADJECTIVE}(?:(?:,? (?:and|or|to|but|y) |, ?|/"
    rf"| ){_ADJECTIVE})* (?:garden )?soils?(?: types?)?\b"
)
_SOIL = re.compile(
    r"(?:\b(?P<verb>prefers?|requires?|needs?|likes?|tolerates?|thrives? in|adaptable to"
    r"|adapts to) (?:an? )?)?"
    rf"\b(?P<soil>{_NOUN_PHRASE})"
)
_NOT_OF_PLANT = re.compile(
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
    bare = re.compile(rf"{_ADJECTIVE}(?:(?:,? (?:and|or|to|but) |, ?|/| ){_ADJECTIVE})*(?: soils?)?")
    found = [f for f in _after_labels(text, _SOIL_LABELS, bare) if _is_soil(text, f)]
    yield from found or islice(_soil_phrases(text), 1)


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
_FEEDING_BARE = re.compile(rf"(?:(?:{_HOW_OFTEN})\b.*|{_AMOUNT})")
_FEEDING = re.compile(
    rf"\b(?:(?:feed|fertili[sz]er?)(?: plants?)? (?:{_HOW_OFTEN})\b|(?:apply|use|mix in|work in|add)"
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
    sentences = list(_sentences(text, _FEEDING, 0.9))
    whole = {found.span[0]: found for found in sentences}
    found = [f for f in _after_labels(text, _FEEDING_LABELS, re.compile(_AMOUNT)) if f.span[0] not in whole]
    yield from found or sentences[:1]


WATER: Field[str] = Field("water", "Water", str, read_water)
SOIL: Field[str] = Field("soil", "Soil", str, read_soil)
FEEDING: Field[str] = Field("feeding", "Feeding", str, read_feeding)
