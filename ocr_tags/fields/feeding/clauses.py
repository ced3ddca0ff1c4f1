"""Clauses that tell how to feed without the word "feed" before them: a dish and its time, in either order.

Asked only where no labelled phrase and no plain command tells of feeding (common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace

from ocr_tags.fields.phrases import clean, flowing
from ocr_tags.patterns import later
from ocr_tags.record import Found

_MORE = r"(?:[^.;!?\n\t•|·]|(?<=\b(?:lb|oz))\.|(?<=\d)\.(?=\d))"
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_PART = rf"(?:(?:early |late |mid[- ]?)?(?:spring|summer|autumn|fall|winter|{_MONTH})\b)"
_TIME = (
    r"(?:(?:every|each)\s(?:(?:other|second|third|fourth|few|two|three|four|five|six|eight|ten|\d+) )?"
    rf"(?:{_PART}|days?\b|weeks?\b|fortnight|months?\b|years?\b|season|watering|drink|dip|bath|sunday"
    rf"|time\b)"
    r"|(?:once|twice|(?:\d|two|three|four) times|\dx) (?:an?|per|each|every|in)\b"
    r"|(?:an?|per) (?:week|fortnight|month|year|season)\b"
    r"|(?:bi-?)?(?:weekly|monthly)|fortnightly|yearly|annually|constantly"
    rf"|(?:in|from|until|till|through|throughout|by|during|over|to|since|,|early in|late in"
    rf"|come)\s(?:the )?{_PART}"
    rf"|(?:in|through|throughout|during) (?:the )?(?:growing|active|growth|flowering|warm|season)"
    rf"|{_PART}(?: ?(?:to|and|-|–|&|through|thru|until) ?{_PART})"
    r"|(?:at|after|before|with|as|when|once|while|whenever|until) (?:the |it |its |every |each |new "
    r"|active "
    r"|first"
    r" |you |they )*(?:start|planting|bud|bloom|flower|growth|grow|season|second|lea[fv]|water|drink|fruit"
    r"|harvest"
    r"|prun|shoot|day|pods?\b|set\b|trusses))"
)
_NO_KIND = (
    r"(?!(?:birds?|bees?|butterfl\w+|cats?|dogs?|pets?|fingers?|comfort|fast|sea|health|wildlife|hosts?"
    r"|larval|the|this"
    r"|caterpillars?|pollinators?|super|street|baby|is|are|and|of|for|an?|contains?|includes?|included|sold"
    r"|our|free"
    r"|from|grown|raised|potted|with|without|in|no|not|never|their|its|finch|people|soil|ground|sun|shade"
    r"|feed|food|water(?! soluble)|flowers?|zones?|hardy|height|good|best|great"
    r"|favou?rite|delicious|fine)\b)"
)
_KIND = rf"(?:{_NO_KIND}(?:[\d½¼]+|[a-z\d½¼%/’'-]{{2,}}) )"
_QUANTITY = (
    r"(?:(?:an?|one|two|half an?|\d[\d./½¼]*|[½¼¾]) ?(?:\w+ )?(?:cups?|handfuls?|lbs?\b\.?|oz\b\.?|g\b|kg\b"
    r"|spoon(?:ful)?s?|tablespoons?|tbsp|teaspoons?|tsp|scoops?|pinch|dose|dash|shovel(?:ful)?s?"
    r"|spade(?:ful)?s?"
    r"|barrowloads?|buckets?|inch(?:es)?|cm|layer|mulch|dressing|sprinkle|ring)(?: of)? |an? |one |two )?"
)
ANIMALS = (
    r" (?:(?:the|our|many|early|late|hungry|wild|native|honey|bumble|song|small|visiting|winter) ?)*"
    r"(?:birds?|(?:bumble-?)?bees?|butterfl\w+|moths|pollinators?|hummingbirds?|finch\w*|thrush\w*"
    r"|caterpillars?|wildlife|insects|hover-?flies|larvae|livestock|children)\b"
)
"""Whom flowers and berries feed: "Flat heads feed bees late in the season"."""
_DISH = (
    r"(?:(?:fertili[sz]er|feed|food)(?: (?:tablets?|granules|pellets|spikes|sticks|drench"
    r"|\d+[-–:]\d+[-–:]\d+))?"
    rf"(?! (?:for|plant|source|chain|crop|garden|store|bank|web)\b|{ANIMALS})"
    r"|(?:pond|aquatic|plant) tablets?"
    r"|(?:slow|controlled|timed)[- ]release(?: (?:granules|pellets|tablets))?|granules|bloom booster"
    r"|fish emulsion"
    r"|seaweed(?: (?:soak|drench|extract|tonic|drink|feed))?|(?:bone|blood|fish|alfalfa) ?meal"
    r"|blood,? fish,? (?:and|&) bone|(?:sul(?:ph|f)ate of )?potash|(?:compost|comfrey|nettle|manure"
    r"|worm) tea"
    r"|(?:(?:well[- ])?rotted |composted |aged )?manure|worm castings|\d+[-–]\d+[-–]\d+|guano|sul(?:ph"
    r"|f)ate of ammonia"
    r"|epsom salts)\b"
)
_LAID = (
    r"(?:(?:spread|scatter|fork in|rake in|work in|dig in|apply|give|sprinkle|use|offer|dress with"
    r"|boost with|treat (?:it |them )?(?:to|with)|(?:top|side)[- ]?dress with|add|rake|push in|drop in"
    r"|tuck in)"
    r" (?:it |them |on |only |the |some |plenty of |each (?:plant|one) )*)?"
)
_WISHES = (
    r"(?:(?:i|it|they|she|he) )?(?:only |just )?(?:likes?|needs?|wants?|enjoys?|appreciates?|asks? for) "
    r"(?:an? )?"
)
DISH_AND_TIME = later(
    rf"(?P<advice>{_LAID}{_QUANTITY}{_KIND}{{0,4}}?{_DISH}{_MORE}{{0,50}}?\s?{_TIME}"
    rf"|{_WISHES}(?:{_KIND}{{0,3}}?(?:feed(?:ing)?s?|fertili[sz]er){_MORE}{{0,40}}?\s?{_TIME}"
    r"|(?:monthly|weekly|regular|fortnightly|light|annual|generous"
    r"|occasional) (?:[\w-]+ ){0,2}?feed(?:ing)?s?\b)"
    rf"|{_TIME}{_MORE}{{0,20}}?(?:[,:]|[ ][–—-]|\bwith\b|\bgive(?: it)?\b)"
    rf" {_LAID}{_QUANTITY}{_KIND}{{0,4}}?{_DISH}"
    r"|please (?:do not|don.t|never) (?:feed|fertili[sz]e)\b(?! (?:the )?(?:birds|animals|wildlife|bees"
    r"|children|to)))"
)
_OTHER_CARE = later(
    r"(?i)[;,] (?:and |then )?(?=(?:top up|irrigate|soak|drench|sprinkle|water|keep (?!feed)|dead-?head"
    r"|mist"
    r"|let it"
    r"|hose|repot|prune|trim)\b(?! (?:before|after|it) (?:and|feeding)))"
)


_STRAY = later(r"[a-z]{1,2}(?=[A-Z][a-z])")


def fed(found: Found[str], text: str) -> Found[str]:
    """The advice without the watering or cutting that follows it; a stray letter before it is doubt."""
    start, end = found.span
    if _STRAY.match(found.value):
        found = replace(found, certainty=0.4 * found.certainty)
    job = _OTHER_CARE.search(flowing(text), start, end)
    if not job or job.start() < start + 5:
        return found
    return replace(found, value=clean(text[start : job.start()]), span=(start, job.start()))
