"""Feeding: how the tag says to feed, in its own words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from ocr_tags.fields.care import AMOUNT, after_labels, asked, asking, or_spoken, sentences
from ocr_tags.fields.feeding.clauses import DISH_AND_TIME, fed
from ocr_tags.fields.feeding.talk import TALK
from ocr_tags.fields.parts import rounded, told
from ocr_tags.fields.phrases import fold, label_phrases
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_LABELS = label_phrases("feeding")
_FEED_IT = asking("(?:feed|fertili[sz]e)")
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_HOW_OFTEN = (
    r"every|each|monthly|weekly|bi-?weekly|bi-?monthly|fortnightly|yearly|regularly|once|twice|lightly"
    r"|sparingly|well"
    r"|in|during|with|after|when|at|as|throughout|through|from|spring|annually|frequently|infrequently"
    r"|occasionally|heavily|before|generously|moderately|using|while|until|only|little|liberally"
    r"|to encourage|w/ ?(?=\w)"
    r"|january|february|march|april|june|july|august|september|october|november"
    r"|(?:two|three|four) times|\d+(?: ?[-–] ?\d+)? ?(?:x|times)"
)
_OWN = later(
    r"feed|fertil|\bfert\b|hardly|barely|nothing|rarely|never|seldom|little|month|week|every|spring|summer"
    r"|autumn|\bfall|winter|season|slow|liquid|balanced|organic"
    r"|compost"
    r"|manure|\blow|medium|light|heav|moderate|high|average|none|\bnot?\b|regular|year|annual|granul|bloom"
    r"|food|once"
    r"|twice|when|\d-\d+-\d|potash|general|mulch|minim|days|after|before|harvest|fruit|planting|strength"
    r"|bone|seaweed|nitrogen|sparing|optional|ample|handful|pellet|spoon|hungry|greedy|engrais|mois\b"
    r"|semaine|printemps|liberation|fois"
    r"|abon|\bmes\b|mensual|semana|primavera|dung|woch|monat|tage\b|langzeit|jahr|mest|maand|voorjaar"
    r"|korrel"
    r"|\bmeal\b|emulsion|\btbsp|\btsp|\bwks?\b|\d ?[x×]|kelp|guano|castings|leaf ?mou?ld"
    r"|^(?:skip|don.t|go easy)(?: it)?!?$|godsel|naring|manad|vecka|concim|settiman|mese"
)
_KIND = (
    r"(?:balanced|complete|starter|double|quarter|worm|liquid|general|all|purpose|multi-?purpose"
    r"|controlled|slow|time"
    r"|timed|release"
    r"|granular"
    r"|organic|water|soluble|high|low|potash|potassium|nitrogen|phosphorus|phosphate|free|iron|half|full"
    r"|strength"
    r"|dilute|diluted|weak|native|tomato|rose|citrus|acid|ericaceous|azalea|rhododendron|hydrangea|orchid"
    r"|cactus"
    r"|succulent|palm|fern|lawn|evergreen|bulb|shrub|tree|fruit|vegetable|flower|bloom|foliage|houseplant"
    r"|seaweed|fish|plant|\d+[-–]\d+[-–]\d+)"
)
_BARE = later(
    rf"(?:{AMOUNT}|\d{{1,2}}-\d{{1,2}}-\d{{1,2}} (?:{_HOW_OFTEN})\b.*"
    rf"|(?:(?:an?|with|{_KIND})[ -]){{1,5}}(?:feed|food|fertili[sz]er"
    rf"|compost)(?: (?:{_HOW_OFTEN})\b.*)?)"
)
_FERTILISER = (
    r"(?:fertili[sz]er(?: (?:tab(?:let)?s?|spikes?|sticks?|granules))?|(?:plant|bulb|rose|tomato"
    r"|citrus) food|feed"
    r"|bone ?meal"
    r"|blood,? fish (?:and|&) bone)"
)
_FOOD = (
    r"(?:\d[\d./]* ?(?:inch(?:es)?|in|cm|oz|lb|g|kg|cups?|tbsp|handfuls?|\"|″)\.? (?:of )?"
    r"|an? (?:(?:good|light|small|thin|generous|half|inch|annual|yearly) )?(?:handful|cupful|cup|scoop"
    r"|spoonful|tablespoon|dressing|shovel(?:ful)?|spade(?:ful)?|forkful|trowel(?:ful)?|bucket(?:ful)?"
    r"|barrowload"
    r"|layer"
    r"|dose|inch|ring|top-?dressing) of )?"
    rf"(?:(?:(?:an? )?(?:{_KIND}[ -]){{1,5}}(?:feed|food|fertili[sz]er)|fertili[sz]er|(?:slow"
    r"|controlled)[ -]release|compost(?: tea)?|(?:manure|worm|comfrey) tea"
    r"|fish emulsion|seaweed(?: extract| tonic)?|kelp|worm castings|(?:alfalfa|cottonseed|blood|kelp"
    r"|soy) ?meal"
    r"|(?:garden compost|(?:composted|rotted|aged|chicken|pelleted|poultry|cow|horse|sheep)(?: chicken"
    r"| poultry)?"
    r" manure)(?: pellets)?|\d{1,2}-\d{1,2}-\d{1,2}"
    r"|(?:slow|controlled)[ -]release (?:pellets|granules|tablets)|bone ?meal|blood (?:and|&) bone"
    r"|(?:blood,? fish|fish,? blood),? (?:and|&) bone"
    r"|(?:(?:ammonium|potassium|iron|magnesium) sul(?:f|ph)ate|sul(?:f|ph)ate of (?:potash|ammonia|iron)"
    r"|(?:super|rock )phosphate|epsom salts?|wood ash)"
    r"|(?:well[- ]rotted )?manure))"
)
_SPOKEN = later(
    rf"\b(?:{_FOOD},? (?:every|each|monthly|weekly|fortnightly|once|twice|(?:\d|two|three|four) times"
    rf"|in[ \n](?:early |late "
    rf"|mid[ -]?)?(?:spring|summer"
    rf"|autumn|fall|winter|{_MONTH})\b|at (?:planting|bud|flowering|fruit)|when planting|from (?:first"
    rf"|early|late|mid|spring|summer|bud|flower|{_MONTH})|when|after (?:flowering"
    rf"|bloom|harvest|pruning)|throughout|during)\b|{_FOOD},? (?:in |from )?(?:{_MONTH}|(?:early |late "
    rf"|mid[ -]?)?"
    rf"(?:spring|summer|autumn|fall))\b|(?:feed|fertili[sz]er?|fert\.?)(?: plants?)? (?:{_HOW_OFTEN})\b"
    rf"|feed (?!(?:[\w-]+ ){{0,4}}(?:feed|fertili[sz]er)\b)(?:with )?(?:an? )?{_FOOD} (?:every|each"
    rf"|monthly|weekly|fortnightly|once|twice|in|at|from"
    rf"|when|after"
    r"|during|throughout)\b"
    rf"|(?:apply|use|mix in|work in|add|give|push|insert|sprinkle|scatter)(?: an?"
    rf"| the)?(?: [\w-]+){{0,3}} {_FERTILISER}\b"
    r"|(?:side|top)-? ?dress(?:ing)? (?!with (?:[\w.]+ )*(?:grit|gravel|bark|sand|stones?"
    r"|slate|chips?|chippings|flint|shingle|pebbles|pumice|lava|granite|shells?|straw)\b)"
    r"(?:w/|(?:with|in|when|after|at|once|every|each|monthly|annually"
    r"|yearly)\b)"
    r"|(?:weekly|monthly|fortnightly|bi-?weekly|annual|yearly|regular|occasional|light|spring)"
    rf" (?:{_KIND}[ -]){{0,3}}(?:feeds?|feeding|fertili[sz]er|fertili[sz]ing)\b(?! ?: )"
    r"|fertiliser (?:tou|au|une|cha)\w*|engrais (?:aux|tous|toutes|chaque|une fois)\b"
    r"|(?:fertilizar|abonar) (?:cada|una|en|con|mens)\w*|(?:do not|don.t|never) (?:fertili[sz]e"
    r"|feed)\b(?! (?:the )?(?:birds|animals|wildlife|bees|children|to))"
    r"|(?:skip|withhold|omit|hold back|hold|(?:go )?easy on) (?:the |all |any )?(?:fertili[sz]er"
    r"|feed(?:ing)?"
    r"|plant food)\b(?! (?:store|shop))"
    r"|avoid (?:all |any |high-\w+ |using )?(?:fertili[sz]ers?|feed(?:ing)?)\b"
    r"|(?:no|needs? no|does not need|(?:rarely|seldom) needs) (?:(?:bottled|added|extra|chemical"
    r"|additional|more|other|further|synthetic) )?(?:fertili[sz]er|feed(?:ing)?|fertili[sz]ing)\b"
    r"|(?:fertili[sz]er|feed|feeding|fertili[sz]ing) (?:is )?(?:not|rarely|seldom) (?:needed|required"
    r"|necessary)"
    r"|stop (?:feeding|fertili[sz]ing) (?:in|by|after|when)\b|no need to (?:feed|fertili[sz]e)\b"
    r"|(?:alle|jede) \S+ (?:wochen |tage |woche )?dungen)"
)


_FEEDER = later(
    r"\b(?:(?:an?|moderate|very) )?(?:light|heavy|hungry|greedy|gross|moderate|medium|low|average) feeder\b"
)
"""How much it eats, where nothing says how to feed it."""
_MULCH = later(
    r"\bmulch(?:ed)? (?:it |them |the \w+ )?(?:(?:well|yearly|annually|generously|thickly) )?with (?:an? )?"
    r"(?:(?:(?:well|fully)[- ]?)?rotted |old |garden |composted |aged |good |home-?made |farmyard |cow )*"
    r"(?:leaf[ -]?mou?ld|manure|muck|compost|dung),? (?:each|every|in|yearly|annually|once|come)\b"
)
"""What rots feeds; a depth of it ("5 cm of manure") tells of a cover, and bark or straw is one."""
_TOLD = ((_SPOKEN, 0.9), (_MULCH, 0.8), (DISH_AND_TIME, 0.86), (_FEEDER, 0.9))


def read_feeding(tag: TagText) -> Iterator[Found[str]]:
    """How the tag says to feed: the labelled phrase, or else the first sentence about it.

    >>> [found.value for found in read_feeding(TagText("Feed every 2 weeks. Attracts bees."))]
    ['Feed every 2 weeks']
    >>> list(read_feeding(TagText("Feeds hummingbirds. Fertilizer sold separately.")))
    []
    """
    text = tag.string
    found = [_whole(text, f) for f in after_labels(text, _LABELS, _BARE, _OWN, _SPOKEN) if _is_feed(text, f)]
    found += asked(text, _FEED_IT)
    clauses = (sentences(text, pattern, sure) for pattern, sure in _TOLD)
    spoken = (rounded(text, fed(one, text), TALK) for one in chain.from_iterable(clauses))
    said = chain(spoken, told(text, TALK, 0.85, 2.0))
    yield from map(_without_label, or_spoken(text, found, said))


_KIND_ALONE = later(
    r"(?:slow|controlled|timed?)[- ]release|liquid|balanced|water[- ]soluble|(?:high|low)[- ]\w+"
)
_ITS_TIME = later(
    r"(?:^|[\t\n])(?:(?:in|every|once|each|from) (?:early |late |mid|an? |\d|(?:the )?(?:spring|summer"
    r"|autumn|fall"
    r"|month|week))|(?:feed|food|fertili[sz]er)(?=[\t\n]|$))"
)


_LABEL_INSIDE = later(r"\A(?:Fertili[sz]er|Nutrition|Feeding) (?=[A-Z][a-z])")
"""A label as such, before a value that begins with a capital as values do: "Fertiliser Little or none"."""


def _without_label(found: Found[str]) -> Found[str]:
    value = _LABEL_INSIDE.sub("", found.value)
    return replace(found, value=value, span=(found.span[0] + len(found.value) - len(value), found.span[1]))


def _whole(text: str, found: Found[str]) -> Found[str]:
    """A kind of feed is no sure thing where its noun or time may stand in a cell of its own."""
    apart = _KIND_ALONE.fullmatch(fold(found.value)) and _ITS_TIME.search(fold(text))
    return replace(found, certainty=0.4 * found.certainty) if apart else found


_EATEN = later(
    r"\b(?:food|eats|nutrition|nutrients|supper|lunch|dinner|breakfast|snack|diet|menu|hungry)\W*$"
)
_KIND_BEFORE = later(
    rf"(?:(?:{_KIND}|skip|avoid|omit|withhold|no|the|any|use|do not|don.t|never|please) )+(?:feed|food"
    rf"|fertili[sz]e|fertili[sz]er)\s?:\s\Z"
)
"""What is no label but part of the advice: "Rose fertiliser: a handful in March"."""


def _is_feed(text: str, found: Found[str]) -> bool:
    """Not what animals or people eat: after "Food" words of feeding must stand."""
    kind = _KIND_BEFORE.search(fold(text[: found.span[0]]))
    if kind and not _LABELS.whole(kind[0]):
        return False
    food = _EATEN.search(fold(text[: found.span[0]]))
    return not food or bool(_OWN.search(fold(found.value)))
