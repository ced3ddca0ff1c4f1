"""Water: what the tag says about watering, in its own words."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from ocr_tags.fields.care import AMOUNT, after_labels, asked, asking, or_spoken, sentences
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.parts import rounded, told, with_next
from ocr_tags.fields.phrases import clean, flowing, fold, label_phrases
from ocr_tags.fields.values import SECOND_LANGUAGE, is_torn, labelled, value_end
from ocr_tags.fields.water.aside import place_of_water, thirsty
from ocr_tags.fields.water.clauses import CLAUSE, WHEN_THEN, with_lead
from ocr_tags.fields.water.ends import FREQUENCY, MEASURE_LINE, MOISTURE, MUCH, advice
from ocr_tags.fields.water.talk import TALK
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_LABELS, _SOIL_LABELS = label_phrases("water"), label_phrases("soil")
_WATER_IT = asking("water")
_BARE = later(
    r"(?:daily|weekly|deeply|freely|sparingly|often|little)[,;] [^.\t\n]{3,50}|"
    rf"{AMOUNT}(?: (?:to|-) {AMOUNT})?(?: (?:water|moisture|needs|use))?"
    r"(?: (?:when|once|after|until|till|while) establish(?:ed|ing))?"
)
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_AND_THEN = later(
    r"[.;]\s(?=(?:(?:after (?:that|this)|thereafter|afterwards?|later(?: on)?|from then on|then)[,:]?\s"
    r"(?:only|just|hardly|rarely|seldom|every|once|twice|weekly|less|when|if|little|sparingly|not at all"
    r"|nothing|never|let|leave|monthly|no more)|\d(?: ?[-–] ?\d)? ?x (?:an? |per )?(?:wk|week|day|month)"
    r"|(?:twice|three times|double|more|more often|oftener|daily|every day|weekly)(?: a day| a week)?"
    r" (?:above|over|below|in|from|during|when|if|once|after|while|through)\b|(?:less|hardly(?: at all)?"
    r"|not at all|rarely|drier"
    rf"|barely|little|sparingly|much less|keep drier) (?:in|from|during|over|when|once|after|{_MONTH}))\b)"
)
"""A second sentence without a verb of its own goes on with the first: "Water weekly. Less in winter"."""
_OWN = later(
    r"water|moist|\bdry|drie[sd]|\bwet|damp|drain|drought|\blow|medium|\bmed\b|moderate|average|high"
    r"|regular"
    r"|normal"
    r"|minim|light|heav|week|da(?:y|ily)|freely|sparing|establish|thorough|deep|often|frequent|rain|humid"
    r"|require|much|little|plenty|need|glass|\bcups?\b|every|steady|\beven\b|consistent|occasional"
    r"|hardly|seldom|rarely|never|scarcely|month|soak|mist|droop|wilt|limp|surface|\btop\b|finger|bucket"
    r"|\bcans?\b|splash|trickle|\bdrip|drench"
    r"|arros|\beau|\bsec|moyen|modere|faible|eleve|frais|humed|moderad|medi[oa]|\bbaj|\balt[oa]"
    r"|seco\b|poc[oa]|riego|mucho|massig|mittel|feucht|trocken|gie(?:ss|ß)|wenig|viel|frisch|nass|hoch"
    r"|gering"
    r"|matig|vocht"
    r"|\bwks?\b|\d ?[x×]|xeric|\blots\b|barely|first (?:summer|season|year)"
    r"|indifferent|\bnone\b|droog|\bnat\b|weinig|veel|gemiddeld|mattlig|fukt|torr|torka"
    r"|medel|tor\b|fugt|vand|asciut|umid|abbond"
    r"|regol"
)
_SOIL_WORD = (
    r"(?:the |potting |top(?: \w+)?(?: of)?(?: the)? )?"
    r"(?:soil|ground|surface|compost|roots|root ?ball|medium|mix|bed|bark|pot|basket|border|moss|substrate"
    r"|crown)"
)
_SOAKS = (
    r"(?:(?:deep|thorough|infrequent|frequent|regular|light|weekly|daily|slow|occasional|good|long"
    r"|heavy|gentle)"
    r"(?:,? (?:and |but )?| ))+"
)
_ADVERB = (
    r"(?:(?:very|lightly|evenly|consistently|slightly|constantly|fairly|just|always|uniformly|quite|rather"
    r"|permanently"
    r"|barely|well|nicely|cool (?:and|&)) ){0,2}"
)
_MEASURED = (
    r"(?:(?:about|around|at least|up to) )?(?:\d[\d.,/½¼¾ -]*|[½¼¾]|an?|one|two|half an?) ?(?:small |large "
    r"|full |good )?"
    r"(?:inch(?:es)?|in\b\.?|\"|”|″|cm|mm|cups?|glass(?:es)?|gal(?:lons?)?\b\.?|l\b|lit(?:re|er)s?|ml"
    r"|pints?"
    r"|qts?\b\.?|quarts?|tablespoons?|ice cubes?)"
)
_EACH = r"(?:weekly|daily|monthly|(?:per|each|every|once|twice)\b|an?[ \t](?:week|day|month|fortnight)\b)"
_HOW = (
    r"(?:regularly|freely|well\b(?! after)|deeply|thoroughly|weekly|daily|monthly|sparingly|moderately"
    r"|often"
    r"|frequently|infrequently|occasionally|lightly|little|less|heavily|generously|evenly|carefully"
    r"|abundantly"
    r"|plentifully|liberally|slowly|consistently|as (?:needed|required|necessary)|when|only (?:when|if"
    r"|once|in)"
    r"|once|twice|(?:two|three) times|every|each|during|if|to (?:keep|establish)|until|unless|after"
    r"|before|between|while"
    r"|whenever|through(?:out)?\b|from below|from the bottom|with (?:rain ?water|soft|tepid|distilled"
    r"|filtered)|at (?:the )?(?:base|roots?|soil)"
    r"|in (?:dry|hot|warm|summer|winter|spring|drought|the (?:morning|growing))"
    r"|\d+(?: ?[-–] ?\d+)? ?(?:x\b|times)|1|2)"
)
_DISLIKES = r"(?:does not like|doesn.t like|won.t (?:like|stand|tolerate)|hates|dislikes|resents)"
_SUFFERS = (
    r"\b(?:dr(?:y|ies|ied)|wilt\w*|flag|droop|thirst\w*|parch\w*|bake|crisp|wet|soggy|sodden|waterlog\w*"
    r"|water|stand|sit"
    r"|drought|moisture|saucer)\b"
)
_SPOKEN = later(
    rf"(?<![\w-])(?:keep (?:{_SOIL_WORD} |roots |plants? |it |me |them |us |my (?:soil|roots"
    rf"|feet) )?{_ADVERB}(?:moist|damp|wet|watered"
    r"|well[- ]watered|on the dry side|dry)\b"
    r"|(?:keep|hold|maintain) (?:the |its |soil )*moisture(?: levels?)?(?: as)? (?:even|steady|constant"
    r"|consistent"
    r"|level|regular|high|up)\b"
    rf"|water(?: (?:newly[ -]planted |new |young |potted )?(?:plants?|trees|shrubs|transplants))? {_HOW}\b"
    rf"|water (?:newly[ -]planted|young|new) \w+ with \d|water[ \n]{_MEASURED} {_EACH}"
    rf"|(?:(?:give|provide|supply|needs?|requires?|wants?) (?:it |them "
    rf"|plants? )?)?{_MEASURED} (?:of )?(?:water|rain) {_EACH}"
    rf"|(?:allow|let) (?:it|plants?|them|{_SOIL_WORD})?(?: to)? ?(?:dry|dry out)\b|(?:allow|let) to dry\b"
    r"|(?:allow|let) (?:the )?top (?:\d[\d.]* ?(?:cm|in(?:ch(?:es)?)?|mm|\"|″)|few (?:cm|inches)|inch"
    r"|layer)"
    r"(?: of (?:the )?(?:soil|compost|mix))? (?:to |go )?dry\b"
    rf"|(?:do not|don.t|never) (?:over[- ]?water|(?:let|allow)\b(?=[^.;\t]{{0,60}}{_SUFFERS})"
    rf"|water from above"
    r"|water (?:it |them )?(?:in|from|until|during|while|when|at|the (?:leaves|foliage|crown|flowers))\b)"
    r"|(?:do not|don.t|never|avoid) (?:wet(?:ting)?|splash(?:ing)?) (?:the )?(?:leaves|foliage|crown"
    r"|flowers|blooms)"
    rf"|{_DISLIKES} (?:being |getting |going |to be |to get )*(?:parched|dr(?:y|ied) out|drying out"
    rf"|drought|bone[- ]dry)\b"
    r"|dry (?:out |down )?(?:the )?top\b[^.;\n\t]{0,14}?(?:in\b\.?|inch(?:es)?|cm|half|third|layer|\"|″)"
    r"|(?:(?:give|provide|needs?|likes?|wants?) )(?:only )?(?:(?:very )?(?:regularly|moderately|sparingly"
    r"|generously|abundantly|plentifully|frequently|daily|weekly|enough|often)|much|little) water\b"
    r"|(?:drinks|drink(?= \w+ (?:in|from|when|until|through)\b)) (?:daily|weekly|deeply|freely|often|twice"
    r"|every)\b"
    r"|keep (?:on )?watering\b|keep up (?:the )?water|no (?:summer|winter) water(?:ing)?\b"
    r"|never (?:let it )?(?:wilt|go thirsty)\b"
    r"|(?:very |always |never |seldom )?thirsty(?: plant| vine| shrub)?(?= ?(?:[.:;!,\n\t]|[–—-] |$))"
    r"|rain ?water (?:is )?(?:best|only|preferred)\b"
    r"|(?:once (?:settled|established|rooted),? (?:it )?)?(?:needs?|requires?|wants?) (?:no|very little"
    r"|hardly any)"
    r" (?:(?:summer|winter|extra|additional|further|supplemental|more) )?water(?:ing)?\b"
    rf"|water the (?:ground|soil|roots?|base|saucer|pot)\b|(?:evenly |always )?(?:moist"
    rf"|damp) (?:at all times|all (?:summer"
    rf"|year|season)|year[- ]round)\b"
    r"|(?:(?:plenty|lots|ample|well watered) (?:in|during) (?:full |active |the )?(?:growth|growing season"
    r"|leaf|summer|spring),? (?:and |but |then )?)?(?:bone )?(?:wet|moist|damp|dry) (?:in"
    rf"|through|until|by)"
    rf" (?:(?:early |late |mid[ -]?)?(?:spring|summer|autumn|fall|winter)|{_MONTH})\b"
    r"|avoid (?:over-?watering|letting|(?:over-?head|excess(?:ive)?) water)"
    rf"|(?:give (?:it |plants? |them )?|needs |likes )?(?:an? )?{_SOAKS}(?:soak(?:ing)?s?|waterings?"
    r"|drinks?)\b"
    rf"|\d+ ice cubes? {_EACH}|use (?:rain|soft |distilled |filtered )water\b"
    r"|soak(?:,| and|;) (?:then )?(?:let (?:it )?)?(?:dry|drain)"
    r"|moisture[- ]loving\b|(?:needs|loves|likes|prefers) moisture\b|(?:needs|loves|likes|prefers"
    r"|wants) (?:it|to be"
    rf"|to be kept|to stay|being kept) {_ADVERB}(?:moist|damp|wet|dry|on the dry side)\b"
    r"|soak (?:deeply|thoroughly|well|weekly|once|twice|every|each) (?!.{0,20}(?:before|planting))"
    r"|(?:(?:slightly|fairly|nearly|almost|quite) )?dry (?:out )?(?:(?:a (?:bit|little)|slightly|well"
    r"|completely|partly|thoroughly|down) )?between (?:water|drinks|soaks)"
    r"|must (?:not|never) dry out|prefers to dry out"
    r"|(?:very |extremely |highly |moderately |fairly |quite |reasonably )?(?:drought|dry)[- ](?:tolerant"
    r"|resistant|hardy)\b|tolerates (?:some |dry|drought)"
    r"(?!.{0,12}soil)|(?:withstands|survives|tolerant of) drought\b"
    rf"|(?:needs|requires|prefers|likes|loves|wants|uses|drinks|provide|give) {MUCH} (?:water(?:ing)?"
    r"|moisture)\b"
    rf"|(?:very |fairly )?{MUCH} (?:water(?:ing)?|moisture)(?: needs| use|er)?\b"
    r"(?! (?:lil|table|garden|feature|plant|level|mark|area|stress)))"
)
_ELSEWHERE = later(
    r"\b(?:arroser\b|(?:vandes|vattnas) (?:rigeligt|moderat|regelmæssigt|sparsomt|jævnligt|rikligt|mattligt"
    r"|regelbundet|sparsamt)\b"
    r"|garder (?:le (?:sol|substrat|terreau|compost|melange) |la (?:terre|motte) )?(?:humide"
    r"|frais)|tolere la secheresse"
    r"|resistante? a la secheresse"
    r"|regar\b|riegue\b|mantener (?:el suelo |la tierra )?humed\w+|tolerante a la sequia"
    r"|(?:massig|regelmassig|reichlich|wenig|sparsam|viel) gie(?:ss|ß)en|trockenheitsvertraglich"
    r"|(?:regelmatig|matig|weinig|veel) water(?: geven)?\b|droogtetolerant"
    r"|(?:\d(?: ?[-–] ?\d)? ?x|een ?maal|een keer|twee keer|eens) per (?:week|dag|maand|(?:2|twee) weken)"
    r" (?:water (?:geven)?|gieten)"
    r"|(?:\d(?: ?[-–] ?\d)? ?(?:x|mal)|einmal|zweimal) (?:pro woche|wochentlich|im monat|pro monat)"
    r" (?:gie(?:ss|ß)en|wassern)"
    r"|arrosage (?:regulier|modere|faible|abondant|frequent|hebdomadaire)\b"
    r"|riego (?:regular|moderado|bajo|escaso|abundante|frecuente|semanal)\b)"
)


_IN_ENGLISH = later(r"(?:^|[.\n\t] ?)(?:water|keep|soak|let)\s[a-z]", re.I)
"""A job in English, which the other language says again."""


def read_water(tag: TagText) -> Iterator[Found[str]]:
    """What the tag says about watering: the labelled phrase, or else the first sentence about it.

    >>> [found.value for found in read_water(TagText("Full sun. Keep soil moist. Zone 5"))]
    ['Keep soil moist']
    >>> list(read_water(TagText("Water lily for the water garden")))
    []
    """
    text = tag.string
    found = list(after_labels(text, _LABELS, _BARE, _OWN, _SPOKEN)) or list(_behind_drops(text))
    found += [*thirsty(text), *asked(text, _WATER_IT)]
    spoken = sentences(text, _SPOKEN, 0.85)
    of_soil = {one.start for one in labelled(text, _SOIL_LABELS)}
    damp = (
        Found(clean(text[slice(*match.span("value"))]), match.span("value"), 0.8 if sure else 0.65)
        for pattern in (MOISTURE, MEASURE_LINE)
        for match in pattern.finditer(flowing(text))
        if match.start("value") not in of_soil
        for sure in ({"sure", "but", "parted"} & {name for name, said in match.groupdict().items() if said},)
    )
    clauses = chain(sentences(text, WHEN_THEN, 0.78), sentences(text, CLAUSE, 0.78))
    spoken = (rounded(text, one, TALK) for one in chain(spoken, damp, clauses))
    again = 0.8 * (SECOND_LANGUAGE if _IN_ENGLISH.search(text) else 1)
    spoken = chain(spoken, told(text, TALK, 0.7, 2.5), sentences(text, _ELSEWHERE, again), _how_often(text))
    found = [_with_rest(text, advice(text, one)) for one in found if not place_of_water(text, one)]
    said = (
        with_lead(text, advice(text, one))
        for one in spoken
        if not _planted(text, one) and not _negated(text, one) and not place_of_water(text, one)
    )
    found = [with_next(text, _with_no(text, one), TALK, 2.5) for one in found]
    yield from or_spoken(
        text, found, (with_next(text, _with_no(text, _with_rest(text, one)), TALK, 2.5) for one in said)
    )


def _how_often(text: str) -> Iterator[Found[str]]:
    """Once in so many days, where no label stands before it and no sowing or feeding is dated so."""
    for match in FREQUENCY.finditer(fold(text)):
        before = fold(text)[: match.start()].rstrip()
        above = re.split(r"[\n\t]", before)[-1]
        if not (is_torn(above) or is_label(above) or _DATED.search(above)):
            span = match.span("value")
            yield Found(clean(text[slice(*span)]), span, 0.85 if later(r"\b[Ff]eed\b").search(text) else 0.62)


_DATED = later(
    r"\b(?:sow\w*|feed\w*|fe+d|food|fertili\w+|fert|harvest\w*|pick\w*|cut\w*|turn|mist|spray|bloom\w*"
    r"|flower\w*|repot|pot)\b"
)
_NO_BEFORE = later(
    r"(?i)\b(?:no|never|(?:don['’]?t|do not|never)[ \n](?:skimp on|stint on)|don['’]?t|do not)[ \n]\Z"
)


def _with_no(text: str, found: Found[str]) -> Found[str]:
    """The phrase with the "no" right before it, without which it says the contrary."""
    start, end = found.span
    no = _NO_BEFORE.search(text, max(0, start - 18), start)
    return replace(found, value=clean(text[no.start() : end]), span=(no.start(), end)) if no else found


_LET = later(r"(?:let|allow)\b(?!.*\b(?:between|before|slightly|until|then)\b)", re.I | re.S)
_NOT = later(r"\b(?:never|not|don.t)\s*(?:[\n\t]|\Z)")


def _negated(text: str, found: Found[str]) -> bool:
    """Whether "let dry out" may belong to a "Never" that a gap, or another column, parts from it."""
    return bool(_LET.match(found.value) and _NOT.search(fold(text)))


_BRIEF = later(rf"{AMOUNT} (?:water(?:ing)?|moisture)")


def _with_rest(text: str, found: Found[str]) -> Found[str]:
    """The phrase with the next sentence, where one of the two has no verb and so needs the other."""
    start, end = found.span
    more = _AND_THEN.match(fold(text), end)
    if not more and _BRIEF.fullmatch(fold(found.value)) and (gap := later(r"[.;] ").match(text, end)):
        flow = flowing(text)
        more = gap if _SPOKEN.match(flow, gap.end()) or CLAUSE.match(flow, gap.end()) else None
    if not more:
        return found
    stop = value_end(text, more.end())
    return replace(found, value=clean(text[start:stop]), span=(start, stop))


_WHEN_PLANTED = later(
    r"(?i)(?:water|soak)(?: in)?(?: (?:well|thoroughly|deeply|heavily|generously|freely))?"
    r"(?P<when>,? (?:in|immediately|(?:right |directly )?(?:after|at|when"
    r"|before) (?:trans)?plant(?:ing|ed)))?"
)
_PLANTS = later(
    r"(?i)\b(?:dig|hole|back-?fill|fill|firm|root ?ball|rootball|loosen|tease|transplant"
    r"|set (?:plants?|in|the|at)"
    r"|plant (?:in|at|out|the|bulbs|level|so)|press|remove (?:from|pot|the pot)|(?:un)?pot\b|cover with)"
)


def _planted(text: str, found: Found[str]) -> bool:
    """Whether "Water well" is but the last step of planting."""
    step = _WHEN_PLANTED.fullmatch(found.value)
    before = text[max(0, found.span[0] - 120) : found.span[0]].split("\n\n")[-1]
    before = "".join(re.split(r"(?<=[a-z][.!?])(?=\s[A-Z])", before)[-2:])
    if _ROOTS.match(found.value) and _BARE_ROOTED.search(before):
        return True
    return bool(step and (step["when"] or _PLANTS.search(before)))


_ROOTS = later(r"(?i)keep (?:the )?roots (?:moist|damp|wet|covered)")
_BARE_ROOTED = later(r"(?i)\b(?:heel in|on arrival|unpack|unwrap|bare[- ]root\w*|open the bag)\b")


_DROPS = later(r"💧[💧 ]*")


def _behind_drops(text: str) -> Iterator[Found[str]]:
    """An amount that is all that stands behind drawn drops (common practice, no source)."""
    for drops in _DROPS.finditer(text):
        end = value_end(text, drops.end())
        phrase = clean(text[drops.end() : end])
        if _BARE.fullmatch(fold(phrase)):
            yield Found(phrase, (drops.end(), end), 0.8)
