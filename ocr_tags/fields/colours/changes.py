"""Colours that come with time or ripeness: "turns wine in May", "pick red", "70 days (green)", "Red, 4 oz".

The verb or the measure stands for the noun that is not printed: only a plant turns, ripens, is picked at a
colour, and only a fruit has a colour and a weight (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import NAME, TURNS, Stretch, plain, time_words
from ocr_tags.fields.colours.parts import VERB
from ocr_tags.fields.colours.words import choice, colour, colour_list
from ocr_tags.fields.phrases import flowing
from ocr_tags.names import lexicon
from ocr_tags.patterns import later
from ocr_tags.record import TagText

_GLOSSY = r"(?:(?:an?|the|glossy|shiny|spectacular|lovely) )*"
_LATER = (
    r"christmas|halloween|thanksgiving|easter|valentine's day|mother's day|midsummer|autumn|fall|winter"
    r"|cold"
    r"|maturity|full sun|cool weather|age|ripe|(?:the )?(?:first )?frosts?|falling|dropping"
    r"|leaf[- ]?(?:fall|drop)"
    r"|(?:they|it|the leaves) (?:falls?|drops?)|labou?r day|midwinter"
)
_WHEN = later(
    lambda: (
        rf"(?:in|by|at|during|from|with|when|as they|come|after|before|around|about|near|towards?|for|till"
        rf"|until|through|late in) (?:the )?(?:early |mid |late "
        rf"|mid-|full(?:y)? )?"
        rf"(?:{choice(time_words())}|{_LATER})\b"
    )
)
_RIPENS = (
    r"(?:ripens?|ripening|ripe|matures?|maturing|turning|mature)(?: (?:from [a-z -]{3,24} )?(?:to|at|when"
    r"|through))?"
)
_TURNING = later(
    lambda: (
        rf"\b(?:{VERB}|fad(?:es?|ing)|ages?|age?ing|deepen(?:s|ing)?|darkens?) (?:to |from |into |out )*"
        rf"{_GLOSSY}(?P<list>{colour_list()})(?:,? |,? (?:and|then) |)"
        rf"(?=(?:foliage |leaves |colou?rs? )?{_WHEN.pattern})"
    )
)
_AND_THEN = later(
    lambda: (
        rf"(?:,? (?:and |then |and then |before )|, ){VERB} (?:to |into |out |up )*{_GLOSSY}"
        rf"(?P<list>{colour_list()})(?= ?(?:[.,;)\n\t]|$)| (?:in|by|at|before|after|as|with|through"
        rf"|until|around|about|for|when|where|till|at|over|toward|towards)\b)"
    )
)
"""The next colour of what had one: "Leaves emerge plum, hold all summer, then blaze scarlet"."""
_AT_LAST = later(
    lambda: (
        rf",? (?:and )?then (?:to |into |at last )?{_GLOSSY}(?P<list>{colour_list()})"
        rf"(?= ?(?:[.,;)\n\t]|$)| (?:in|by|at|under|before|with|through|until|when|after|as|come)\b)"
    )
)
"""The next colour without a verb, behind one at least: "ivory in summer, then shell pink, then russet"."""
_BY_THEN = later(
    lambda: (
        rf"\b(?:in|by|come|towards?)\s(?:the )?(?:early |mid |late |mid-)?(?:{choice(time_words())}"
        rf"|{_LATER}),? "
        r"(?:they|it|(?:the |its )?(?:leaves|foliage|blades|fronds|needles|heads|plumes|fruits?|berries"
        r"|pods))"
        rf"(?: will)?(?: all)? {VERB} {_GLOSSY}(?P<list>{colour_list()})(?= ?(?:[.,;)\n\t]|$)| (?:and"
        rf"|then)\b)"
    )
)
"""The time before the change: "by October they have turned copper"."""
_BOTH_ENDS = later(
    lambda: (
        rf"(?:^|[\n\t.,;:•] ?|\b(?:they|it|leaves|foliage|fruits?|flowers|cones|heads|and) ){VERB} {_GLOSSY}"
        rf"(?P<list>{colour_list()}(?: in [a-z]+)?,? (?:and |then |and then "
        rf"|but )?{VERB} {_GLOSSY}{colour()})"
        r"(?![\w-])"
    )
)
"""Two verbs and two colours, whatever has them: "Starts green, ends red"."""
_RIPENING = later(
    lambda: (
        rf"\b{_RIPENS} {_GLOSSY}(?P<list>{colour_list()}(?: to {colour()})?)(?= ?(?:[.,;)\n\t]|$| (?:in"
        rf"|by|with)\b))"
    )
)
_OR_WAIT = later(
    lambda: (
        r"(?: stage)?(?: (?:at|for|when|in) [^,;\n]{2,36}(?=,? or ))?(?: (?:in|at"
        r"|after) (?:about )?\d+(?: ?[-–] ?\d+)? (?:days|weeks))?,? or (?:wait"
        r"|leave|left|let|hold|allow|keep|once|when|later)\b[a-z ,]{0,30}? ?"
        r"\b(?:for|to|until|till|turns?|turned|goes|go|ripens?|all|fully|when|at) (?:the |full |deep )*"
        rf"(?P<later>{colour()})(?= ?(?:[,;.)\n\t]|$| (?:for|stage|and|if|when)\b))"
    )
)
"""Behind the colour at which it may be picked, the one that comes later: "Pick green, or wait for red"."""
_PICKED = later(
    lambda: (
        r"\b(?:pick(?:ed)?|harvest(?:ed)?|gather|ripe)(?: (?:when|at|while|as|them|it|fruits?|pods?"
        r"|they are"
        r"|fully|still|just|is|are|the))* "
        rf"(?P<list>{colour_list()})"
        rf"(?= ?(?:[,;.)\n\t]|$)| stage\b|{_OR_WAIT.pattern}| and (?:[a-z]+y|firm|soft|sweet|plump|as"
        rf"|about|before)\b)"
    )
)
_STAGE = later(
    lambda: (
        r"\b(?:pick(?:ed|ing)?|harvest(?:ed|ing)?|gather|cut)\b[^.;:\n]{0,50}?,? (?:when|while"
        r"|as soon as|once)"
        r" (?:(?:they|it|fruits?|pods?|the|are|is|they're|it's|turns?|fully|still|all|just|skins?) )+"
        rf"(?P<list>{colour_list()})(?= ?(?:[,;.)\n\t]|$)| (?:and|but|all over)\b)"
    )
)
"""What the crop looks like when it is ready: "Start picking after 50 days, while they are green"."""
_DAYS = later(lambda: rf"\bdays?,? (?:to )?\(?(?P<list>{colour()})(?= ?(?:[).,;/\n\t]|$))")
_WEIGHED = later(
    lambda: (
        r"(?:^|[\n\t.;] ?)(?:\d[\d./½¼¾–-]* ?(?:in(?:ch(?:es)?)?\b\.?|cm\b|mm\b|[\"”″]),? )?"
        rf"(?P<list>{colour_list()}),? (?:about |to |up to |around )?\d[\d./½¼¾–-]*"
        r"(?: (?:to|or) \d[\d./½¼¾–-]*)? ?"
        r"(?:oz|ounces?|lbs?|pounds?|g|grams?)\b\.?(?: (?:fruits?|tomato(?:es)?"
        r"|each)(?! \d)(?: [a-z]+)*)?(?= ?(?:[.,;\n\t]|$))"
    )
)
_AT_TIMES = later(
    lambda: (
        rf"(?:(?:^|[\n\t]|[.!?;] )(?:the )?|(?<=[a-z]), (?:then |and )?)(?P<list>{colour_list()}) "
        rf"(?=(?:in|by|from|through|until) (?:early |mid |late |mid-)?(?:{choice(time_words())}|{_LATER})\b"
        r" ?(?:[.,;:)\n\t]|$)|all (?:year|season|spring|summer|autumn|winter)\b|year-round\b)"
    )
)
_CROP = later(
    lambda: (
        r"\b(?:crops?|fruits?|ripe|ripens|ripening|harvest|pick|picking)\b:?[ \t](?:in |from )?(?:early "
        r"|mid |"
        rf"late |mid-)?(?:{choice(time_words())})[^\n\t.;:]{{0,20}}?[,;] "
        rf"(?P<list>{colour_list()}(?:{TURNS}{colour_list()})*)"
        r"(?= ?(?:[.,;\n\t]|$)| and (?:[a-z]+y|firm|soft|sweet|plump|ripe)\b)"
    )
)
_FLESHED = later(
    lambda: (
        rf"(?<![\w'’-])(?P<list>{colour()})(?:- ?| )(?:flesh|skinn|stemm|flower|berri|podd|fruit|leav|leaf"
        rf"|bark|stalk"
        r"|throat|cent(?:er|re)?|vein|edg|back|tipp|rimm|margin|splash|lin)ed\b"
        r"(?! (?:hummingbird|bird|finch|warbler|woodpecker|bee|admiral|blackbird)s?\b)"
    )
)
"""A colour in the adjective: "yellow-fleshed"."""
_ILL = later(
    r"\b(?:if|when|should|once|until|unless|avoid|prevent|stop"
    r"|(?<!in )(?<!by )(?<!to )(?<!early )(?<!late )may(?!,)|can|might|will|do not"
    r"|don't)\b[^.;\n]{0,40}$"
)
"""Before leaves that turn yellow of thirst."""
_SICK = later(r"(?:yellow|brown|black|pale|brownish|yellowish)")
_DRESSED = later(
    r"\b(?:sow|plant|prune|feed|attracts?|loves?|butterflies|bees|birds|with|soil|mulch"
    r"|dye[sd]?)\b[^.;\n]{0,30}$"
)


_COLOUR_BEFORE = later(
    lambda: rf"(?<![\w-]){colour()} (?:in|by|until|through|early|mid|late)[ -][^.;\n]{{3,24}}(?:, )?$"
)
"""Before the second of two: "dusty pink in August, brick by October"."""
_ONE_BEFORE = later(lambda: rf"(?<![\w-]){colour()}(?![\w-])[^.;]{{0,40}}\Z")
"""A colour in the same sentence."""
_NAMED = later(r"[- ][A-Z][a-z]")
_PATTERNS = (
    *(
        _TURNING,
        _AND_THEN,
        _AT_LAST,
        _BY_THEN,
        _BOTH_ENDS,
        _RIPENING,
        _PICKED,
        _STAGE,
        _DAYS,
        _WEIGHED,
        _AT_TIMES,
        _CROP,
        _FLESHED,
    ),
)


_CELL_END = later(r"(?:(?! [-–—*+°-] )[^\n\t·•|/.,;:(])*")


def _is_common_name(text: str, start: int, end: int) -> bool:
    """Whether the adjective opens a common name, with a capital and all there is: "Blue-leaved hosta"."""
    opens = not start or text[start - 1] in "\n\t" or text[start - 2 : start] in ("· ", "• ", "| ", "/ ")
    if not (opens and text[start].isupper()):
        return False
    rest = _CELL_END.match(text, end)
    plant = rest[0].strip(" -") if rest else ""
    genus = lexicon.is_genus(plant.split()[0].capitalize()) if plant else False
    return 0 < len(plant.split()) <= 3 and (genus or bool(lexicon.plants_called(plant)))


def changes(tag: TagText) -> Iterator[Stretch]:
    """Stretches of colours told by when they come.

    >>> tag = TagText("It turns orange and wine in October. If leaves turn yellow in summer, feed.")
    >>> [tag.string[start:end] for start, end, _ in changes(tag)]
    ['orange and wine']
    """
    folded = flowing(tag.string)
    for pattern in _PATTERNS:
        for match in pattern.finditer(folded):
            start, end = match.span("list")
            before = folded[max(0, match.start() - 60) : match.start()]
            turns = pattern in (_TURNING, _AND_THEN, _RIPENING, _AT_LAST, _BY_THEN)
            if _SICK.fullmatch(match["list"]) and turns and pattern is not _RIPENING:
                continue
            if pattern is _AT_LAST and not _ONE_BEFORE.search(before):
                continue
            if pattern is _FLESHED and not tag.string[match.end() - 2].islower():
                continue  # Red-leaved
            if pattern is _FLESHED and _NAMED.match(tag.string, match.end()):
                continue  # White-fleshed Peach
            if pattern is _FLESHED and _is_common_name(tag.string, match.start(), match.end()):
                continue
            if match[0].startswith("ripe ") and not plain(match["list"]):
                continue  # "smells of ripe mango"
            if (turns and _ILL.search(before)) or tag.line_at(start).size >= NAME:
                continue
            if pattern in (_AT_TIMES, _WEIGHED) and (
                not (
                    plain(match["list"]) or re.search("[ -]", match["list"]) or _COLOUR_BEFORE.search(before)
                )
                or _DRESSED.search(before)
            ):
                continue
            passing = pattern is _RIPENING and " to " in match["list"]
            later_on = _OR_WAIT.match(folded, end) if pattern is _PICKED else None
            sure = (
                passing or later_on or pattern in (_AND_THEN, _AT_LAST, _BY_THEN, _BOTH_ENDS, _TURNING, _CROP)
            )
            yield start, end, 0.85 if sure else 0.75
            if later_on:
                yield *later_on.span("later"), 0.85
