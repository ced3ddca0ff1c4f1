"""Where a phrase about water ends, and amounts of it that are all a line tells."""

from __future__ import annotations

from dataclasses import replace

from ocr_tags.fields.phrases import clean, flowing, fold
from ocr_tags.fields.soil.words import MOISTURE_FIRST
from ocr_tags.patterns import later
from ocr_tags.record import Found

MUCH = (
    r"(?:low|medium|moderate|average|avg\.?|high|regular|steady|even|consistent|constant|ample"
    r"|plenty of|abundant"
    r"|plentiful|adequate|occasional|little|minimal|frequent|generous|sufficient|lots of|extra)"
)
_DAMP = r"(?:(?:evenly |fairly |slightly |always )?(?:moist|wet|damp)|dry|average|avg|medium|mesic)"
_TOO_WET = r"(?:soggy|wet|water-?logged|sodden|swampy|saturated|boggy|drenched|soaked|soaking)"
_BUT_NOT = (
    rf"(?:[,;]? (?:but )?(?:not|never) (?:too |over-?|overly )?(?:{_TOO_WET}|dry)"
    r"(?: in (?:winter|summer|spring|autumn|fall))?)"
)
MOISTURE = later(
    rf"(?:^|(?<=[\n\t])|(?<=[★•·*.;!] ))(?P<value>{_DAMP} to {_DAMP}(?P<but>{_BUT_NOT})?"
    rf"|{_DAMP} ?[-–] ?{_DAMP}|(?P<parted>{MOISTURE_FIRST})"
    rf"|(?P<sure>(?:(?:evenly|always|just|fairly|slightly|constantly) )*(?:moist|damp){_BUT_NOT}"
    r"|(?:just|barely|lightly) (?:moist|damp)|on the dry side|(?:very )?xeric"
    r"|(?:always|constantly|consistently) (?:(?:slightly|evenly|a little|fairly) )?(?:moist|damp)))"
    r"(?(parted)| ?(?=[\n\t.•·|]|$))"
)
"""Moisture that is all a line or sentence tells; a list with commas and strokes tells of the soil."""
_PERIOD = r"(?:d|days?|wks?|weeks?|mos?|months?)\b"
FREQUENCY = later(
    r"(?:^|(?<=[\n\t])|(?<=💧 ))(?P<value>(?:\d(?: ?[-–] ?\d)? ?[x×] ?(?:/|per|every|an?|in) ?|every )"
    rf"(?:(?:\d{{1,2}}|two|three|ten)(?: ?[-–] ?\d{{1,2}})? ?)?{_PERIOD}\.?) ?(?=[\n\t]|$)"
)
"""How often, that is all a cell tells beside a drawn can or drop that was not read."""
_BY_MEASURE = (
    r"(?:(?:about|around|at least|up to) )?\d[\d.,/½¼¾]*(?: ?[-–] ?\d[\d.,/½¼¾]*)? ?"
    r"(?:inch(?:es)?|in\b\.?|\"|”|″|cm|mm|gal(?:lons?)?\b\.?|l\b|lit(?:re|er)s?)"
    r"(?: of (?:water|rain))?"
    r" ?(?:weekly|daily|/ ?(?:wk|week|d|day|mo|month)\b|(?:per|an?|each|every) (?:wk\b|week|day|month))"
    r"(?:,? at (?:the )?(?:base|roots?|soil))?"
)
MEASURE_LINE = later(
    rf"(?:^|(?<=[\n\t])|(?<=[💧★•·*] ))(?P<value>{_BY_MEASURE}"
    r"|deep(?:ly)?,? (?:(?:once|twice|two times|three times|\d(?: ?[-–] ?\d)? ?(?:x|times)) )?"
    r"(?:(?:an?|per|each|every) (?:week|month)|weekly|monthly)) ?(?=[\n\t]|$)"
)
"""No other matter of a plant is told as a depth or volume a week, or as "Deep, twice weekly"."""
_COMPLETE = later(
    rf"(?:{MUCH} (?:water(?:ing)?|moisture)|{_BY_MEASURE}|(?:keep |always )?(?:evenly |fairly )?moist"
    r"|(?:very )?drought[- ]tolerant)(?=\n)"
)
_CONTINUED = later(
    r"(?:in|when|during|until|till|once|after|while|to|for|and|or|but|needed|required|throughout|at"
    r"|especially"
    r"|through|prevents?|keeps?|ensures?|helps?|promotes?|encourages?|between|as|if|with|the|its|their"
    r"|weekly|daily|monthly|not|never|all|from|by|on|over|of|before|well|is|are|needs?"
    r"|use|than|spring|summer|soil|at|plants?)\b"
)
"""How a line begins that says more of what the line above says in full: "Regular water", "in summer"."""
_EFFECT = later(
    r"[^,;.]*?\b(?:water|moisture|rain) (?:(?:an?|per|each|every)\s\w+|weekly|daily)"
    r"(?P<effect>\s(?:keeps|makes|gives|brings|produces|helps|ensures|prevents|encourages|promotes|means"
    r"|yields|improves|rewards)\b)"
)
"""So much in such a time is said in full; "Steady moisture prevents cracking" is one piece of advice."""
_FEED_TOO = later(r"(?<!with )(?<!and )\b(?:liquid|tomato|rose|potash) (?:feed|food|fertili[sz]er)\b")
"""Another job, from which the engines read no comma off."""


def advice(text: str, found: Found[str]) -> Found[str]:
    """The phrase without what it does ("An inch a week keeps leaves crisp") and the next line of a list."""
    start, end = found.span
    printed = flowing(text)[start:end]
    if _FEED_TOO.search(printed):
        found = replace(found, certainty=0.4 * found.certainty)
    if effect := _EFFECT.match(printed):
        end = start + effect.start("effect")
    whole = _COMPLETE.match(fold(text), start)
    if whole and whole.end() < end and not _CONTINUED.match(fold(text), whole.end() + 1):
        end = whole.end()
    return replace(found, value=clean(text[start:end]), span=(start, end)) if end < found.span[1] else found
