"""Sentences about feeding in nobody's pattern: a food, and how much, how often or whether at all.

Asked last, where no label, command or dish with its time tells of feeding (common practice, no source).
"""

from __future__ import annotations

from ocr_tags.fields.feeding.clauses import ANIMALS
from ocr_tags.fields.parts import OTHER, Matter
from ocr_tags.patterns import later

_NO_FEED = later(
    r"(?:rich|low|high|poor) in (?:nitrogen|nutrients|compost)|low-nutrient|nutrient-(?:rich|poor)"
    rf"|feeds? (?:the |on |people|a family)|feeds?{ANIMALS}"
    r"|pollinator food|food (?:plant|source|for)|(?:bird|finch|finger|host|larval|larvae|cat|dog) food"
    r"|compost (?:heap|bin|pile)s?"
    r"|(?:potting|ericaceous|peat-free|cactus|seed|multi-?purpose|john innes|old|moist|the|its) compost"
    r"|(?:enriched|improved|amended|soil|ground|dirt|earth|loam|bed|fattened)\b.{0,30}\bwith\b.*"
    r"|(?:dig|fork|work|mix|blend|till) (?:in )?(?:\w+ ){0,5}(?:compost|manure|leaf ?mou?ld|lime|peat|grit"
    r"|muck)"
    r"|plenty of (?:compost|manure|humus)|manured|well[- ]fed|feed (?:store|shop)|sold separately"
    r"|nitrogen[- ]fix\w+"
    r"|^mulch\b.*|\bmulch (?:\w+ ){0,3}with (?:leaf|bark|straw|grit|wood|chip).*|full of|fish pond"
    r"|slow growing|tablets? of|potash[- ]free|(?:grown|raised|potted|sown) in .*|.*\b(?:contains?|special"
    r"|sold|included)\b.*|feed may be|good food"
)
"""Food of soil, of animals and of people."""
_MEAL = (
    r"(?:(?:fertili[sz]ers?|plant food)\b|(?:[\w-]+ )?feed(?:s|ing|ings)?\b|\bfood\b|fert\."
    r"|(?:bone|blood|fish|kelp|alfalfa|cottonseed|soy(?:bean)?|feather)[- ]?meal|bonemeal|dried blood"
    r"|hoof (?:and|&) horn"
    r"|blood,? (?:fish,? )?(?:and|&) bone|fish,? blood,? (?:and|&) bone|fish emulsion|seaweed|kelp|guano"
    r"|worm castings|vermicompost"
    r"|(?:compost|comfrey|nettle|manure|worm) tea|\bpotash\b|\bpotassium\b|phosph\w+"
    r"|(?<!own )nitrogen(?:ous)?|nitrate\b|\d+[-–:]\d+[-–:]\d+"
    r"|epsom salts?|wood ash|dolomite|(?:slow|controlled|timed?|continuous)[- ]release\b(?! (?:water|bag))"
    r"|\bchelated iron\b|(?:iron|sequestered) (?:chelate|tonic)|bloom[- ]boosters?|\b\w+-tone\b"
    r"|(?:balanced|organic|granular|native|feeding) (?:granules|pellets|granular|blend)\b"
    r"|all-purpose\b(?! (?:soil|mix))"
    r"|(?:chicken|poultry|sheep|cow|horse|wool|citrus|rose|tomato|fertili[sz]er|native|plant|lily|alfalfa"
    r"|manure|seaweed|food|slow-release)"
    r"(?: \w+)? (?:pellets|granules|tabs?|tablets?|spikes|sticks|beads|manure)"
    r"|(?:clay|feed|food|fertili[sz]er|aquatic|pond) (?:tab(?:let)?s?|spikes?|sticks?|pellets)|(?:citrus"
    r"|conifer|rose) granules"
    r"|(?:rotted|composted|aged|old|dried|pelleted|garden|leaf) (?:\w+ )?(?:manure|compost)|leaf ?mou?ld"
    r"|\bmanure\b|\bcompost\b|\bmuck\b"
    r"|(?:liquid|high-\w+|potash|plant|bloom|nitrogen|\w+-plant) (?:tonic|booster|boost|drench"
    r"|concentrate)|(?:weak|nitrogen-rich|\w+-rich|tomato|high-\w+|balanced|dilute) liquid(?: n)?\b"
    r"|\btonic\b|\btabs?,? (?:monthly|each|every|per)\b)"
)
_PORTION = (
    r"(?:(?:an?|one|two|three|half an?|\d[\d./½¼]*|[½¼]) ?(?:[\w-]+ )?)?(?:handfuls?|splash|ring"
    r"|cups?(?:ful)?|shovel(?:ful)?s?|fork(?:ful)?s?|spade(?:ful)?s?|trowel(?:ful)?s?"
    r"|sprinkl(?:e|ing)|dusting|dose|sachet|drop|dash|pinch|scoop|spoon(?:ful)?|tablespoons?|tbsp\.?"
    r"|teaspoons?|tsp\.?|tablets?|tabs?|bucket(?:ful)?|barrow(?:load|ful)?"
    r"|dressing|top-?dressing|side-?dressing|mulch|layer|helping|collar|oz\.?|ounces?|lbs?\.?|pounds?"
    r"|\d ?g|\d ?kg|measure|capful|fistful|pellets|bag)"
    r"(?: of\b|(?= per\b)|(?= in\b)|(?= each\b)|(?= at\b))"
)
_LAID = (
    r"(?:^|(?<=\bthen )|(?<=\band )|(?<=\bso )|(?<=\bto ))(?:(?:just|only|please|then|and"
    r"|so) )?(?:side-?dress|top-?dress|scratch in|rake in|scatter|spread|push in|poke"
    r"|give (?:it |them )?|apply|reward (?:it |them )?with|treat (?:it |them )?(?:to|with)|follow with|mix"
    r"|tuck|drop in|water in|sprinkle|feed|fertili[sz]e|begin feeding|start feeding|boost)\b"
)
_NEVER = (
    r"(?:(?:no|skip|withhold|avoid|omit|without|hold|forget|never|not|don.t|doesn.t|needs? no|starve it"
    r"|hold off on|go (?:easy|light|steady|gently) (?:on|with)|go without|hardly any|nothing|only)\b"
    r"|(?:is |are )?(?:optional|unnecessary|contraindicated|wasted|harmful|not needed|never needed|rarely"
    r"|seldom|sufficient|enough|plenty|ample|needless)|more harm than good)"
)
_OFTEN = (
    r"(?:weekly|fortnightly|monthly|annual(?:ly)?|yearly|once|twice|every (?:other |second |two |few "
    r"|\w+ )?(?:days?|weeks?|months?|watering|spring|year|autumn|fall)"
    r"|(?:six|four|three|eight|two)[- ]weekly|(?:every|each|alternate|first|second) (?:\w+ )?(?:mon|tues"
    r"|wednes|thurs"
    r"|fri|satur|sun)days?|each (?:\w+ )?(?:flush|cut(?:ting)?|picking|trim|potting|flowering)"
    r"|each (?:\w+ )?(?:spring|summer|year|month|march|april|may|june|august|fall|autumn|february"
    r"|big harvest|watering)"
    r"|(?:once|twice|\d x|\dx) (?:an?|per) (?:week|month|year)|intervals?|first year|on (?:sun|mon|tues"
    r"|wednes|thurs|fri|satur)days?)"
)
_WHEN = (
    r"(?:(?:in|from|till|until|through|during|come|by|late|early|mid)[ -](?:\w+[- ])?(?:spring|summer"
    r"|autumn|fall|winter|january|february|march|april|may|june|july|august"
    r"|september|october|november|december|growth|season)|(?:jan|feb|mar|apr|aug|sept?|oct|nov|dec)\b"
    r"|spring\b"
    r"|(?:when|once|as|after|before|at|while|till|until) (?:the |it |each |every |first |plants |buds? "
    r"|in )*(?:\w+ )?(?:planting|pruning|flower\w*|bloom\w*|buds?|growth|fruit\w*|harvest|picking|shoots?"
    r"|runners?|peppers|crops?|weeks|leaves|noses|run|starts?|begins?|set)"
    r"|(?:after|from|at|until|till) (?:the |each |every |an? )(?:first |second |third |\w+th |last "
    r"|hard )?\w+"
    r"|at week \d+|if (?:pale|yellow\w*|leaves|growth|needed|hungry)|(?:small|little) and often"
    r"|half[- ]strength"
    r"|quarter[- ]strength|\b(?:lightly|weakly|sparingly)\b|\d+ weeks|early\b|later\b|memorial day"
    r"|labor day|ahead\b)"
)
_STRONG = later(rf"{_MEAL}|{_PORTION}|\bstarve\b|\b(?:hungry|greedy)\b")
_MEALS, _SAID = (
    later(_MEAL),
    later(
        r"\bstarve (?:it|them|for)\b|(?:feeding|fertili[sz]er|food) (?:is )?(?:optional|contraindicated"
        r"|unnecessary|wasted)|no fertili[sz]er|we do not feed"
    ),
)
_HOW = tuple(later(one) for one in (_PORTION, _LAID, _NEVER, _OFTEN, _WHEN))
_OTHER = later(
    rf"{OTHER}"
    r"|\bshade\b(?! the)|\bloam\b|\bclay\b|\bsandy\b|\bpeat\b|\bprune\b|\bpinch\b(?! of)|\btrim\b"
    r"|(?<!hard )(?<!each )(?<!every )(?<!first )\bcut\b|\btop up\b|\birrigat"
    r"|\bwater (?:well|weekly|daily|deeply|freely|regularly|twice|every|when|in)\b|\bhose\b"
    r"|\bthirsty\b|\bmoist\b|\bdrench (?:weekly|the)"
    r"|(?<!before )(?<!until )(?<!last )(?<!after )\bfrost\b|\bnative to\b|\bhedge\b|\bdig in\b"
    r"|\bwork in\b|\bfork in\b|\blime\b(?!-)"
    r"|(?:rich|drained|moist|good|fertile|poor|acid\w*|light|heavy) soil\b"
)


def _weight(printed: str) -> float:
    said = _NO_FEED.sub("#", printed)
    if _SAID.search(said):
        return 3.0
    if not _MEALS.search(said):
        return 0.0
    return 1.0 + sum(bool(pattern.search(said)) for pattern in _HOW)


TALK = Matter(_STRONG, _OTHER, _weight)
