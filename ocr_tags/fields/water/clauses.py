"""Clauses that give watering advice in the words of talk: built of who drinks, how much, how often, and when.

They are asked only where no labelled phrase and no plain command tells of water (common practice, no source).
"""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.fields.phrases import clean, flowing
from ocr_tags.patterns import later
from ocr_tags.record import Found

_MORE = r"(?:[^.;!?\n\t•|·]|(?<=\bmin)\.|(?<=\bgal)\.|(?<=\bin)\.|(?<=\bft)\.|(?<=\d)\.(?=\d))"
"""Any words of the same clause; an abbreviation does not end it."""
_MANY = r"(?:\d+(?: ?[-–] ?\d+)?|two|three|four|five|six|ten|few|couple of|several)"
_EACH = (
    r"(?:(?:once|twice|thrice) (?:an?|per|each|every|daily|weekly|monthly)\b"
    r"|(?:\d(?: ?[-–] ?\d)? ?x|(?:\d|two|three|four) times) ?(?:/|an?\b|per\b|each\b|every\b|daily|weekly)"
    rf"|(?:every|each) (?:other |second |third |{_MANY} )?(?:single )?"
    r"(?:days?|weeks?|fortnight|months?|mornings?|evenings?|nights?|weekend"
    r"|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b"
    r"|(?:an?|per|/) ?(?:day|week|fortnight|month|wk)\b"
    r"|daily|weekly|bi-?weekly|fortnightly|monthly|nightly)"
)
_CONDITION = (
    r"(?:when(?:ever)?|once|if|until|till|unless|while|as soon as|as (?:the )?(?:buds?|fruits?|berries|pods"
    r"|plants?"
    r"|flowers|soil|leaves|it)|after (?:the |my |its )?(?:soil|compost|mix|surface|top|pot|leaves)"
    r"|(?:in|during|through(?:out)?|over|from|between|for) (?:the |its |a |any |all |mid-?|early |late "
    r"|first |dry |hot"
    r"|warm |long |very |prolonged |extended )*(?:spring|summer|autumn|fall|winter|drought|dry|hot|heat"
    r"|spells?|weather"
    r"|waves?|season|year|growth|growing|leaf|flower|bloom|may|june|july|august|september|establishment))\b"
)
_NUMBER = (
    r"(?:(?:about|around|at least|up to|roughly|only|just|maybe|another) )*"
    rf"(?:an?|one|half an?|{_MANY}|\d[\d.,/½¼¾ -]*|[½¼¾])(?: and a (?:half|quarter))? ?"
)
_PORTION = (
    rf"(?:{_NUMBER}|(?:weekly|daily|monthly|fortnightly|nightly|morning|evening) (?=(?:drink|soak|drench"
    rf"|splash|dunk)))"
    r"(?:(?:good|big|small|full|large|deep|long|slow|thorough|proper|light|decent|quick|weekly|daily"
    r"|regular"
    r"|steady"
    r"|heavy|generous|watering|little|tiny),? ){0,2}"
    r"(?:buckets?(?:ful)?|cans?(?:ful)?|pails?|jugs?|gallons?|gals?\b\.?|lit(?:re|er)s?|l\b|pints?|quarts?"
    r"|qts?\b\.?"
    r"|cups?|glass(?:es)?|ml|drink(?:s|ing)?|soak(?:s|ing)?|drench(?:ing)?|splash(?:es)?"
    r"|dous(?:e|ing)|sip|shower|dunk(?:ing)?|hosing|watering|(?:steady )?drip)\b"
)
_NOT_DRINK = (
    r"(?! vase|,? (?:\w+ )?(?:pots?|containers?|cont|tubs?|planters?|bags?|size)\b"
    r"| of (?!(?:\w+ )?(?:rain ?)?water|it\b))"
)
_DEPTH = (
    rf"{_NUMBER}(?:(?:inch(?:es)?|in\b\.?|cm|mm)|(?<=and a half)|(?<=and a quarter))(?: and a half)?\b\.?"
)
_GIVEN = (
    r"(?:(?:please |just |only |always |then |so )*(?:give|allow|provide|supply|offer)"
    r"(?: (?:it|them|me|her|him|each(?: \w+)?|(?:the |new |young |every )*(?:plants?|trees?|shrubs?|pots?"
    r"|baskets?|beds?|roots|seedlings?|vines?)))?"
    r"|(?:(?:i|it|she|he|they|(?:the|this|these|each|every|your|young|new|established|potted)"
    r"(?: [\w-]+){0,3}?|(?:plants?|trees?|shrubs?|roots|seedlings?|vines?|(?:hanging )?baskets|pots|tubs"
    r"|containers|window boxes)) )?"
    r"(?:only |just |really |still |always )*"
    r"(?:wants?|needs?|likes?|loves?|takes?|gets?|enjoys?|appreciates?|asks? for|drinks?|requires?|prefers?"
    r"|uses?|could do with|is glad of|glad of))"
)
_ADVERB = (
    r"(?:gently|slowly|deeply|lightly|well|often|freely|sparingly|thoroughly|generously|regularly|heavily"
    r"|hard"
    r"|little|steadily|evenly|more|less|again)\b"
)
_POURED = (
    r"(?:(?:soak|drench|douse|irrigate|sprinkle|moisten|hose(?: in)?|top up|saturate|dunk|submerge|immerse"
    r"|float (?=(?:the|it|them|each|its|board)\b)|flood"
    r"|bottom[- ]water|wick(?: or bottom[- ]water)?|(?:dip|stand|plunge|sit) (?:the |each |its )?(?:pot"
    r"|basket|rootball"
    r"|root ball|mount|plant|basket)s?|trickle(?: (?:water|a hose))?|run (?:a|the) (?:hose|drip"
    r"|soaker)(?: hose)?)\b"
    r"(?! (?:off|down|(?:dried )?(?:beans|peas)\b|overnight|the (?:seeds?|corms?|tubers?|bulbs?|soil disc"
    r"|disc|pellet|roots for|bare)|seeds?|corms?|tubers?"
    r"|bulbs?|bare|(?:in |on |over )?(?:\w+ )?(?:lime|fertili[sz]er|compost|sand|grit|manure|granules)\b"
    r"|fertili[sz]er|granules|compost|sand|roots? (?:for|in|before))))"
)
_WATER_VERB = (
    r"(?<!\bof )water (?:it |them |me )?(?:gently|slowly|along|around|round|under|over|onto|into|through"
    r"|by hand|early|late"
    r"|from|at|with (?:a|tepid|warm|cool|lime)|only|more|less|as|for (?:the first|\d|an?\b|two|three)|hard"
    r"|like|overhead|right|straight|between|beside"
    r"|directly|the (?:soil|ground|roots?|base|crown|pot|compost|plants?|bed|row|tree|shrub|moss|mount"
    r"|saucer|root ?ball|day"
    r"|evening|morning|night)|every|each|in (?:early|late|the|hot|dry|any))\b"
    r"(?! (?:garden|lil|feature|table|level|line|butt|depth|\d|(?:the |its )?crown))"
)
_DRYNESS = (
    r"(?:droughts?|drought(?:y|ed)? \w+|dryness|dry (?:spells?|weather|conditions|summers?|times|periods?"
    r"|roots?|at the roots?|out|feet|pot|root ?balls?|compost)|dr(?:ying|ied)(?: out| up| right out| off)?"
    r"|parch\w+|thirst|being thirsty"
    r")"
)
_FLOOD = r"(?:flood(?:s|ing|ed)?|standing water|inundation|(?:sitting|standing) in water|wet spells?)"
_SOME = (
    r"(?:(?:short|long|brief|some|summer|winter|spring|seasonal|moderate|occasional|extended|prolonged"
    r"|periods? of"
    r"|spells of|a bit of|a|the|any|both|considerable|great|much|of) )*"
)
_BEARS = (
    r"(?:(?:can|will) (?:take|stand|handle|survive|tolerate|bear|cope with)|resists?|puts? up with"
    r"|copes? with|bears|takes|stands|stands up to|endures?|shrugs? off|laughs? (?:at|off)"
    r"|survives?"
    r"|handles|weathers|tolerates?|withstands|forgives|rides out|(?:fine|happy|ok(?:ay)?|content) (?:with"
    r"|in)"
    r"|unfazed by|unbothered by|tolerant of|(?:doesn.t|does not) mind)"
)
_BEARS_NOT = (
    r"(?:(?:does not|doesn.t|do not|don.t|won.t|will not|cannot|can.t|never)"
    r" (?:like|tolerate|stand|bear|abide|enjoy|forgive|take|appreciate|want|survive|cope with)"
    r"|hates?|dislikes?|resents?|loathes?|detests?|objects to|intolerant of|can.t abide"
    r"|(?:sulks|wilts|flags|suffers|droops|collapses|browns|scorches|crisps)(?: \w+)? (?:in|if|when|with))"
)
_WET = r"(?:over-?water(?:ing|ed)|(?:to )?(?:sit|be left|stand|sitting|standing) in water|drown(?:ing|ed))"
_DOUSE = (
    r"(?:drown|flood|saturate|swamp|drench|leave (?:\w+ ){0,3}(?:sitting|standing) in water"
    r"|(?:stand|sit|leave) (?:\w+ ){0,3}in water|let (?:\w+ ){0,3}(?:sit|stand|wilt|flag|dry))"
)
_GROUND = (
    r"(?:(?:top (?:\w+ )?(?:of )?)?(?:the )?(?:soil|compost|mix|pot|surface|bark|medium|basket|substrate"
    r"|root ?ball|ball|bed"
    r"|moss|roots|container|potting mix)|top (?:half|third|layer|inch|few \w+|\d[\w.-]*(?: ?(?:cm|in"
    r"|inches))?))"
)
_LESS = (
    r"(?:withhold|hold (?:back|off)(?: on)?|ease (?:off|up on)|cut (?:back|down)(?: on)?|reduce"
    r"|go easy (?:on|with)|stop"
    r"|ration|spare it|slow|increase|step up|resume|restart)"
)
_RAIN = r"(?:(?:ordinary|normal|natural|average|usual|summer|local|the) )*rain(?:fall|s)?"
_SOFT = (
    r"(?:rain ?water|(?:distilled|filtered|soft|rain|purified|deionised|lime-free) (?:water|rain)"
    r"|distilled)"
)
_LEAD = (
    r"(?:(?:if|when|once|whenever|as soon as|in|during|through|for|after|until|till|from|over|throughout)"
    r"(?! (?:[\w-]+ ){0,3}?(?:(?:trans|re)?plant|(?:re)?pott?|sow)(?:ing|ed|s)?\b)"
    rf" {_MORE}{{3,60}}?,? )"
)
CLAUSE = later(
    rf"(?<![\w’'])(?<!\bof\s)(?:so |and |then |but |plus )?(?P<advice>(?P<lead>{_LEAD})?(?:"
    rf"(?:{_GIVEN} )?{_PORTION}{_NOT_DRINK}{_MORE}{{0,50}}?(?:{_EACH}|(?<!\bin )(?<!\bin\. ){_CONDITION})"
    rf"|(?:{_GIVEN} )?{_DEPTH}(?: of (?:water|rain))?,? (?:of (?:water|rain) )?(?:deep )?{_EACH}"
    rf"|(?:{_POURED}{_MORE}{{0,50}}?(?:{_EACH}|{_CONDITION}|\b{_ADVERB}|with (?:tepid|soft|rain|lukewarm))"
    rf"|{_WATER_VERB}|(?(lead){_POURED}|(?!)))"
    rf"|{_BEARS} {_SOME}(?:{_DRYNESS}|{_FLOOD})(?= ?(?:[.,;:!\n\t]|$| (?:once|when|and|but|or|well|after|if"
    rf"|in)\b))"
    rf"(?! (?:and|or) (?:poor|clay|sandy|heavy|acid|rocky|alkaline|salt))"
    rf"|(?:fine|happy|content) (?:with|in) (?:dry|wet)(?= ?(?:[.;\n\t]|$))"
    rf"|{_BEARS_NOT} (?:being |getting |to be |to |going |too |it |an? )*(?:dry(?= ?(?:[.,;!\n\t]|$))"
    rf"|{_DRYNESS}|{_WET})\b"
    rf"|(?:let|allow) (?:the )?{_GROUND} (?:to )?(?:go |get |become |turn |run |almost |quite |nearly "
    rf"|just "
    rf"|fully )*dry\b"
    rf"|(?:the |its )?{_GROUND} (?:must|should|needs to|has to|wants to|likes to) (?:always |never |not "
    rf"|be kept |be |stay"
    rf" |remain |just |evenly |a little )+(?:moist|damp|wet|dry)\b"
    rf"|{_LESS} (?:the |all |any )?(?:water(?:ing|ings)?|can)\b(?= ?(?:[.,;\n\t]|$|(?:to|in|when|once|after"
    rf"|during|from|by"
    rf"|until|over|through|as|while|for)\b))"
    rf"|(?:happy|lives?|gets? by|manages?|content|thrives?|survives?) (?:on|with) {_RAIN}(?: alone"
    rf"| only)?\b"
    rf"|{_GIVEN} (?:water(?:ing)?|soaking|topping up) (?:well |deeply |again )?{_EACH}"
    rf"|(?:{_GIVEN} )?an? (?:daily|weekly|nightly|fortnightly|monthly) (?:can|bucket|drink|soak(?:ing)?"
    rf"|drench(?:ing)?|dunk"
    r"|splash|watering|sip)\b"
    r"|(?:only )?when (?:the )?(?:top|soil|compost|surface|pot|mix)\b[^.;:\n\t]{0,30}\b(?:dry"
    r"|dries(?: out)?)(?= ?(?:[.;\n\t]|$))"
    r"|only when (?:bone |quite |fully |completely |almost |nearly )?dry(?= ?(?:[.;\n\t]|$))"
    rf"|{_SOFT},? (?:never|not) (?:tap|hard)\b|keep (?:its|the|my) (?:feet|roots|toes) (?:\w+ )?(?:moist"
    rf"|damp|wet)\b"
    r"|(?:never|not) (?:be |let it be |left )?(?:short of|without) (?:water|a drink)\b"
    r"|(?:not a drop|no water(?: at all)?) (?:until|till|in|from|while|once|over|through|when|unless)\b"
    r"|(?:(?:i|it|she|he|they) )?(?:hardly|rarely|seldom|barely|scarcely|never) (?:ever )?(?:needs?|wants?"
    r"|requires?|asks? for)"
    r" (?:any |much |extra |a )?(?:water(?:ing)?|drink|irrigation)\b"
    rf"|{_GIVEN} (?:next to no|hardly any|almost no|very little|not much|(?:quite )?a lot of|loads of"
    rf"|masses of|gallons of"
    r"|a good deal of|a fair amount of|a little|some|less|more|no more than a little|much|good"
    r"|as much) (?:water(?:ing)?"
    r"|rain|moisture|irrigation)\b"
    r"|(?:doesn.t|does not|don.t|do not) (?:want|need|like|require) (?:a lot of|much|any|too much"
    r"|extra) water(?:ing)?\b"
    r"|(?:can|will) (?:go|last|manage|survive|cope|live) (?:\w+ ){0,4}without (?:water(?:ing)?|rain"
    r"|a drink)\b"
    r"|(?:must|should|may|can) (?:not|never) (?:be allowed to |be left to |ever |go |get )?(?:dry|dried)\b"
    r"|(?:(?:it |i )?(?:is|am|does|do|.s) )?(?:best|happiest|better) (?:if |when )?(?:kept "
    r"|it is )?(?:evenly |always |just "
    r"|slightly |rather |fairly )?(?:moist|damp|wet|on the dry side)(?= ?(?:[.,;\n\t]|$|(?:in|at|while"
    r"|until"
    r"|through)\b))"
    rf"|(?:watering|soaking|irrigation)s? {_MORE}{{0,20}}?{_EACH}|an? (?:soaker "
    rf"|drip )?hose {_MORE}{{0,30}}?{_EACH}"
    r"|keep (?:the |its )?(?:saucer |tray |reservoir |dish |pot |bowl )?(?:well )?(?:topped up|filled"
    r"|full)(?: with"
    r" (?:\w+ )?(?:rain ?)?water|(?= ?(?:[.,;\n\t]|$)))"
    rf"|(?:stand|sit|keep|set) (?:the |its )?(?:pot|basket|it) in (?:an? "
    rf"|the )?(?:[\w-]+ ){{0,4}}(?:rain)?water\b"
    rf"|drip(?:[- ]irrigat(?:e|ion))? {_MORE}{{0,20}}?{_EACH}"
    rf"|(?:please )?(?:do not|don.t|never) {_DOUSE}\b"
    rf"|(?:needs? )?no (?:summer |extra |further )?(?:irrigation|watering)\b"
    rf"|(?:very |quite |extremely )?drought[- ](?:proof|tough|loving|defying|busting)\b"
    rf"|thirsty (?:when|in|while|during|until|plants?\b|so\b)|(?:big|heavy|thirsty|light"
    rf"|modest) drinkers?\b"
    rf"|{_RAIN} (?:alone |usually )?(?:will do|is (?:enough|plenty|sufficient|all)|does|suffices"
    rf"|will suffice|should do)\b"
    rf"|{_SOFT}(?: (?:or|and) [\w ]{{3,12}})? (?:is )?(?:best|only|preferred|better|and nothing else"
    rf"|exclusively)\b"
    rf"|(?:fill|top up)(?: (?:the |its )?(?:saucer|tray|bowl|dish|vase|cup|glass"
    rf"|reservoir))? with water (?:to|until|so)\b"
    r"))"
)
WHEN_THEN = later(
    r"(?:^|(?<=[.!?:\n\t] )|(?<=[\n\t]))(?P<advice>(?:if|when|once|whenever|as soon as) "
    r"[^.!?\n\t•|]{3,90}?(?:,|:| then| =|–|-) ?(?:it.s time to |it needs |give (?:it|them) )?"
    r"(?:water(?:ing)?|soak|drench|irrigate|dunk|a drink|(?:a )?(?:good )?(?:soak|drink))\b"
    r"(?! (?:garden|lil|feature|table|level|line|butt|depth|needs)))"
)
"""A sign, and what to do then: "When leaves curl, water"."""

_LEAD_BEFORE = later(
    r"(?:^|(?<=[.!?:\n\t;] )|(?<=[\n\t]))"
    r"(?:(?:stick|push|poke) (?:a|your) finger [^.\n\t]{0,30}[;,] )?"
    r"(?:if|when|once|whenever|in|during|through|until|after|for) [^.;:!?\n\t•|]{3,50}, ?\Z"
)
_ASKED_BEFORE = later(
    r"(?:^|(?<=[.!:;\n\t✔•] )|(?<=[\n\t]))(?=[^?.\n\t]*\b(?:dry|droop\w*|wilt\w*|wrinkl\w*|limp|flag\w*"
    r"|curl\w*"
    r"|shrivel\w*|sag\w*|pale|light)\b)[a-z](?:[\w’'-]* ){1,5}[\w’'-]+\? \Z"
)
"""A sign asked for, and then what to do: "Leaves limp? A good soak"."""
_OF_PLANTING = later(
    r"\b(?:plant(?:ing|ed)?|hole|potting|arriv\w+|unpack\w*|sow(?:ing|n)?|harvest|cut|prune)\b"
)


def with_lead(text: str, found: Found[str]) -> Found[str]:
    """The advice with the condition that stands before it: "In dry spells, water weekly"."""
    start, end = found.span
    flow = flowing(text)[:start]
    if asked := _ASKED_BEFORE.search(flow):
        return replace(found, value=clean(text[asked.start() : end]), span=(asked.start(), end))
    lead = _LEAD_BEFORE.search(flow)
    if not lead or _OF_PLANTING.search(lead[0]) or not re.match(r"[a-z]", text[start : start + 1]):
        return found
    return replace(found, value=clean(text[lead.start() : end]), span=(lead.start(), end))
