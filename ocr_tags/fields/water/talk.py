"""Sentences about watering in nobody's pattern: weighed by what they name, as a reader would.

Asked last, where no label, command or clause tells of water (common practice, no source).
"""

from __future__ import annotations

from ocr_tags.fields.parts import OTHER, Matter
from ocr_tags.patterns import later

_NO_WATER = later(
    r"^wet or (?:dry|average|moist)|^wet\b.{0,12}\bsoil|water (?:the )?(?:divisions|cuttings|seeds?)"
    r"|never dries out|never wet|water[- ](?:garden|lil\w+|feature|table|plants?|level|depth|edge|meadow"
    r"|mark|fall|nymph|line)\w*|water.s edge"
    r"|standing water|(?:in|by|of|near|beside|above|under) (?:the )?(?:ponds?|water)\b|watering hole"
    r"|hot water"
    r"|(?:each|every|second|third|next|before|after) (?:watering|drink|soak(?:ing)?)s?\b"
    r"|rain (?:garden|cover|lily)s?|water[- ]soluble|can be|can\b(?= (?:\w+ )?(?:cause|grow|be|take|reach"
    r"|kill|trigger|reach|harm|irritate))"
    r"|(?:pouring|driving) rain|wet feet|no (?:\w+ )?warranty.*|forget to water|to keep (?:wet|rain)"
    r"|dry(?:ing)? winds?|dry stone|dried flowers?|half[- ]?dry|.*(?:sold separately|not included"
    r"|\bfarms?\b).*|pour nothing|to a depth"
    r"|(?:cups?|glass(?:es)?|cans?) of (?!(?:\w+ )?(?:rain ?)?water)\w+"
)
"""Water that nobody gives."""
_VESSEL = r"(?:buckets?|pitchers?|cups?|cans?|jugs?|pails?|teaspoons?|glass(?:es)?|bottles?)(?:ful)?"
_MEASURE = rf"(?:gal\b\.?|gallons?|lit(?:re|er)s?|\d ?l\b|ml\b|{_VESSEL})"
_RATE = (
    r"(?:at once|(?:a|per|each|every)\b|once|twice|weekly|daily|at (?:the |its )?(?:root|base|foot"
    r"|planting)|there\b|when"
    r"|whenever|until|to the|(?:round|around|over) the (?:base|roots?|stem))"
)
_NUMBER = r"(?:an?|one|two|three|four|five|six|ten|twenty|\d[\d.,/½¼-]*)"
_DAYS = r"(?:days?|weeks?|wks?|mornings?|evenings?|nights?|fortnight)"
_THEN = (
    r"(?= (?:it|them|me|in (?!depth)|well|deep\w*|thorough\w*|regular\w*|spar\w*|free\w*|gener\w*|gent\w*"
    r"|slow\w*|less|more|much"
    r"|only|again|as|at|by|from|when\w*|while|if|until|till|once|twice|every|each|daily|weekly|during"
    r"|through\w*|over|between|under"
    r"|before|after|like|with|just|often|hard|light\w*|early|late|mornings?|evenings?|the|your|its|this|\d"
    r"|young|new\w*|pots?"
    r"|tubs|plants?|trees|seldom|rarely|little|infreq\w*|freq\w*|even\w*|moder\w*|occas\w*|round|into|onto"
    r"|around"
    r"|along|here|there|on\b)|$|[,;:])"
)
_STRONG = (
    r"^\d ?[x×] (?:per|an?|each|every) (?:day|week|fortnight|month)\b(?! /)|precipitation"
    r"|the wetter,? the better"
    r"|(?:go easy|easy) (?:with|on) the (?:can|hose|water\w*)|(?:skip|forget|omit) (?:the )?(?:watering"
    r"|hose|can)\b"
    r"|hold (?:off|back) (?:on )?(?:the )?(?:hose|can|water\w*)|(?:takes|tolerates|copes with) (?:wet"
    r"|dry) or (?:wet|dry)\b"
    r"|(?:damp|wet|dry) or (?:droughty|dry|wet), it copes|(?:needs?|wants?|lives on) (?:only"
    r"|nothing but) rain\b"
    r"|fill (?:the|its|me) (?:pot|saucer|basin|reservoir|bag|hole)?\b(?: to the brim| with water"
    r"|.{0,20} once)"
    r"|^flood the (?:bed|hill|row|base|roots?|saucer)|^bucket (?:once|twice|weekly|every|each)"
    r"|^sips? (?:once|weekly|twice|every)"
    r"|let me drink|(?:stand|sit) (?:me|it|the pot) in (?:a|the|its) (?:saucer|tray|sink|bowl)|driest days"
    r"|^(?:moist|damp|dry|wet) (?:until|till) (?!harvest)\w|(?:supply|supplies) of water\b"
    r"|irrigat\w+|(?:over|under|hand)?-?watering(?:s| can| bag| tube)?|over-?water(?:ed|s)?|hand-?water"
    r"|(?:the|your) (?:\w+ )?(?:hose|sprinkler|can|watering can)\b(?! \w+ (?:cause|be)\b)|soaker|sprinkler"
    r"|drip (?:line|hose|irrigation)s?"
    r"|rain ?water|(?:tepid|tap|lukewarm|distilled|soft|room[- ]temperature|drier) water|bone[- ]dry"
    r"|parch\w*"
    r"|(?:let|allow|wait|until|till|when|if)\b.{0,45}\b(?:dry|dries|dried|pales?|crumbly)\b"
    r"|(?:let|allow)\b.{0,30}\b(?:wilt|flag|droop|thirsty|bake)\b"
    r"|(?<![\w’'])(?:(?:just|please|always|only|never|do not|don.t|must|shall|should|to|then|now|and) )?"
    r"(?:soak|drench|douse|moisten|pour|dunk|hose|puddle in|submerge)\b"
    r"|^(?:(?:just|please|always|only|never|do not|don.t|then|so) )*"
    rf"(?:water{_THEN}|sprinkle|splash|dip|wet|withhold|trickle|drown|check (?:\w+ ){{0,2}}(?:daily|every"
    rf"|each))\b"
    rf"|(?:shall|should|must|to|then|please|not) (?:water{_THEN}|sprinkle|go thirsty)\b|to (?:drink"
    rf"|be watered)\b"
    r"|(?:more|less|little|enough|much|plenty|no|shut off the|give|and|moderate|average|extra|short of"
    r"|with|low|lots of"
    rf"|{_MEASURE} of|without) water\b"
    r"|tip in an?\b|(?:lean|keep|stay|err)\w* (?:it |them )?(?:a little )?on the (?:dry|damp|moist"
    r"|wet) side|no drying\b|not a drop"
    r"|(?:never|no|not|nothing) overhead"
    r"|(?:keep an eye|watch|mind|check|look)\b.{0,30}\b(?:in|during|when|if|through)\b.{0,14}\bdry"
    r"|needs? wetting|(?:likes|wants|prefers|needs) (?:an? |its )?(?:\w+ )?(?:wetter|damper|moister|drier"
    r"|(?:wet|damp|moist) (?:feet|roots?|toes))\b(?! \w*soil)"
    rf"|{_VESSEL} of (?:rain ?)?water|dry to (?:the )?(?:\w+ )?(?:knuckle|touch)"
    r"|(?:needs?|wants?|likes?|loves?|appreciates?|enjoys?|asks? for|give (?:it "
    r"|them )?) ?(?:an? )?(?:\w+ )?(?:drinks?|soak(?:ing)?s?|drench(?:ing)?|dousing)\b"
    r"|(?:is|are|means?|when|if) (?:it |they )?too dry\b|^(?:always |only |water )?from (?:the )?(?:bottom"
    r"|below)|dr(?:y|ying) out\b|(?:stick|push|poke|dip|put|with) (?:a|your) finger\b|wrung-?out"
    r"|(?:wilts?|droops?|flags?) (?:\w+ )?(?:when|if|but|without|quickly|fast)\b|(?:regular|occasional"
    r"|weekly|supplemental) (?:summer |winter )?water\b"
    r"|drinks?\b (?:like|deeply|freely|a lot|from|heavily|greedily|plenty|little)|between drinks|(?:daily"
    r"|weekly|quick|deep) drinks?\b"
    r"|little (?:and|&) often|(?:leave|left) (?:it )?to the (?:rain|sky|weather)|(?:falls? from"
    r"|rely on) the (?:sky|rain)"
    r"|fends? for (?:itself|themselves|herself|himself)|mother nature|thirst(?:y|s|iest)?\b"
    r"|droughts?\b|dry (?:spells?|weeks?|summers?|periods?|roots?|root run|weather)\b|(?:good|weekly|deep"
    r"|summer|thorough) soak(?:ing)?\b"
    rf"|{_NUMBER}[- ]?(?:(?:full|big|good|deep) )?{_MEASURE},? {_RATE}"
    rf"|\b{_NUMBER}[- ]?{_MEASURE}\b.{{0,40}} (?:once|twice|weekly|(?:every|each|a|per) {_DAYS})\b"
    r"|\d ?(?:ml|l) ?/ ?\d|give (?:it |them )?(?:\w+ )?(?:once|twice|(?:two|three|\d) times) (?:a|per"
    r"|every|each)\b"
    r"|(?:twice|once|daily|weekly|nightly|steady|slow|timed)[- ](?:\w+[- ])?drip\b"
    rf"|{_NUMBER} ?(?:inch(?:es)?|in\b\.?|cm|mm|\"|”|″) (?:of (?:water|rain|moisture) )?(?:(?:a|per|each"
    rf"|every) week|weekly|,? at the roots?)"
    r"|rain(?:fall)? (?:should|will|is|alone|normally|suffices)"
    r"|(?:summer|natural|normal) rain(?:fall)?|on rain(?:fall)?|dries out|(?:keep|stay|kept|be"
    r"|remain) (?:\w+ ){0,2}(?:moist|damp)\b"
    r"|(?:even|steady|regular|sponge-like|moderate|constant) (?:moisture|wetness)"
)
_LED = (
    r"^(?:daily|deep(?:ly)?, (?:weekly|fortnightly|monthly|once|twice|every)|sparingly(?=[;,]| in | when )"
    r"|monthly in (?:winter|summer)|every (?:second )?(?:day|morning|evening)|every (?:\d+|two|three|four"
    r"|five|six|seven|eight|nine|ten|few|other|second|third)[\w -]{0,12} (?:days?|mornings?|evenings?"
    r"|(?:weeks?|wks?)(?=;| in|,? (?:less|more|then|but)))"
    r"|(?:once|twice|two times|three times|2 ?x|3 ?x) (?:a|per|in|every) (?:day|week|two weeks"
    r"|fortnight)\b|weekly)\b"
)
"""How often, where a sentence begins so and names nothing that is given."""
_STRONG_WORDS = later(_STRONG)
_OWN = later(rf"{_STRONG}|{_LED}")
_WEAK = later(
    rf"{_LED}|"
    r"\bdry\b|\bdrying\b|\bwet(?:ting|ter)?\b|\bdamp\b|\bmoist(?:ure)?\b|\bdrinks?\b|\bdrip\b|\brain\w*\b"
    r"|\bdroop\w*|\bwilt\w*|\blimp\b"
    r"|\bflag\b|\bsoak\w*|\bsaucer\b|\bcan\b|\bdrown\w*|\boverhead\b|\bsodden\b|\bdry side\b|\bwater\b"
    r"|\bbuckets?\b|\bgallons?\b|\bhose\b"
)
_OFTEN = later(
    r"\b(?:daily|weekly|fortnightly|twice|once|(?:every|each) (?:other |few |second |third "
    r"|\w+[- ](?:to[- ]\w+ )?)?"
    rf"{_DAYS}|\d+ ?(?:/|-| )(?:\d+ ?)?{_DAYS}|monthly"
    r"|a (?:week|day)|(?:two|three|four) times|intervals?|times a (?:day|week))\b"
)
_AROUND = later(
    r"\b(?:once (?:\w+ ){0,3}(?:established|rooted|settled|roots|has|up)|after (?:establishment|year"
    r"|the first|\d+ months|two)"
    r"|first (?:\w+ )?(?:summer|season|year|month|weeks?)"
    r"|first two|young|new (?:plants?|lines)|summers?|winter|midsummer|heat\w*|hot|july|august|june|april"
    r"|september|pots?|baskets?|tubs"
    r"|deeply?|slow(?:ly)?|sparing\w*|freely|regular\w*|occasional\w*|noon"
    r"|never|not|hates?|likes?|loves?|needs?|prefers?|wants?|copes?|handles?|survives?|little|none|plenty"
    r"|enough|ample|more|less|all it|lives|manages"
    r"|roots?|base|leaves|foliage|crown|stem|skins|established|hardly|seldom|until|mornings?|ideal|without"
    r"|then|for \d+)\b"
)
_FEEDS = (
    r"feed|(?:bone|blood) ?meal|\d+-\d+-\d+|fertili[sz]|manure|plant food|\bfood\b|nutri|pellets|granules"
    r"|potash|nitrogen"
    r"|emulsion|seaweed|compost tea"
)
_OTHER = later(
    rf"{_FEEDS}|{OTHER}"
    r"|shade|\bloam|\bclay|\bsandy?\b|\bpotting mix\b|\bearth\b|\bpeat|lime\b|\bmulch|\bprun|\bpinch"
    r"|\btrim|\bcut\b(?! back (?:to|on|once)\b)|\bharvest(?!\b or)|\bpick\b|\bfrost|\bspread\b(?! \d)"
    r"|\bnative\b|^dig\b|\bdig (?:in\b|a\b|over|the|out)|\btease|\bsoak\w* (?:\w+ ){0,4}overnight\b"
    r"|\bseeds?\b|\bcorms?\b|\btubers?\b|\bbulbs?\b|\bbefore planting\b|\bbare[- ]?roots?\b|\bvase\b"
    r"|\bhedge|\bborder\b|\bground ?cover|\bwinters? (?:above|under glass)|\bgrow(?:s|n)? (?:wild|in)"
    r"|\bmeadow|\bstream|\bswamp|\bpond|\blake"
)


def _weight(printed: str) -> float:
    said = _NO_WATER.sub("#", printed)
    strong, weak = _STRONG_WORDS.findall(said), _WEAK.findall(said)
    often, around = _OFTEN.findall(said), _AROUND.findall(said)
    if not strong and not weak:
        return 0.0
    return (
        2 * min(len(strong), 2) + min(len(set(weak)), 2) + min(len(often), 1) + min(len(set(around)), 2) / 2
    )


TALK = Matter(_OWN, _OTHER, _weight)
