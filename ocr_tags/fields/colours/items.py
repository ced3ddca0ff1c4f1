"""Colours as items of a short list that says other things too: "half-hardy annual, blue, white".

Seed packets and swap tags say everything between commas, dots or strokes. An item that is a colour and
nothing else is the plant's, if no other item speaks of what is sold beside it, of pots or of visitors.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import DETAIL, NAME, TURNS, Stretch, plain
from ocr_tags.fields.colours.words import colour, colour_list
from ocr_tags.fields.phrases import flowing
from ocr_tags.patterns import later
from ocr_tags.record import TagText

_LINE = later(r"[^\n\t.;]+")
_ITEM = later(r"(?:[^,~()]|,(?! ))+")
_COLOUR = later(lambda: rf" *(?:and |& )?(?P<list>{colour()}) *")
_DOTTED = later(
    lambda: (
        rf"(?:^|[\n\t]) ?(?P<list>{colour_list()}(?: ?(?:[•·|~]| / | - | – ) ?{colour_list()})+)"
        r"(?: ?(?:[•·|~]| / ) ?(?:striped|mixed|mix|bicolou?r))? ?(?=[\n\t]|$)"
    )
)
_EYED = later(
    lambda: (
        rf"(?:^|[\n\t]) ?(?P<list>{colour_list()}),? (?:with )?(?:an? )?"
        rf"(?:darker|lighter|paler|deeper|contrasting|dark|pale|light|bold"
        rf"|prominent) {DETAIL}(?= ?(?:[\n\t.;,]|$))"
    )
)
_OF_KIND = later(
    lambda: (
        r"(?:^|[\n\t]|[.!•·|] )(?:(?:hardy|half-hardy|tender|evergreen|deciduous|herbaceous|dwarf|compact"
        r"|bushy|trailing"
        r"|climbing|upright|small|large|low|tall|spring|summer|autumn|winter),? ){0,3}(?:annual|perennial"
        r"|biennial"
        r"|shrub|climber|vine|bulb|tree|grass|rose|houseplant|ground ?cover|alpine|bedding(?: plant)?), "
        rf"(?P<list>{colour_list()}(?:,?{TURNS}{colour_list()})*)(?= ?(?:[.,;\n\t]|$))"
    )
)
"""Behind a kind and a comma: "Hardy perennial, dark violet."""
_IN_TONGUES = later(r"(?:^|[\n\t(/·•] ?)(?:D|DE|F|FR|NL|DK|SE|S|E|ES|I|IT|GB)\)? ?(?:[:·] ?)?(?=[^\W\d_]{3})")
"""What several languages tell apart, one alone tells in part."""
_OTHER_MATTER = later(
    r"\b(?:also|lot|batch|qty|trays?|bags?|tubs?|punnets?|cells?|sizes?|seeds?|onions?|peppers?|salt"
    r"|available|series"
    r"|range|collection|others?|pots?|containers?|choose|choice|avoid"
    r"|attract\w*|bees?|love[sd]?"
    r"|butterfl\w+|hummingbirds|birds|wasps|paper|ribbon|tape|label|tag|with|companions?|soil|compost"
    r"|mulch|rot|spot"
    r"|mildew|mites?|admiral|resists?|resistant|plants?|nursery|farms?|growers|gardens|co|inc|ltd|street"
    r"|road|colours?"
    r"|colors?|or|if|not|no|see|like|from|in|on|to|by|of)\b"
)
_MOST_WORDS = 5


def items(tag: TagText) -> Iterator[Stretch]:
    """Stretches of colours that are items of a list.

    >>> tag = TagText("half-hardy, blue, violet, white" + chr(10) + "Oak, Red")
    >>> [tag.string[start:end] for start, end, _ in items(tag)]
    ['blue', 'violet', 'white']
    """
    folded = flowing(tag.string)
    for pattern in (_DOTTED, _EYED):
        for match in pattern.finditer(folded):
            sure = pattern is _EYED or any(map(plain, re.split(r" ?[•·|~/,&–-] ?", match["list"])))
            if sure and tag.line_at(match.start("list")).size < NAME:
                yield *match.span("list"), 0.7
    for match in () if len(_IN_TONGUES.findall(tag.string)) > 1 else _OF_KIND.finditer(folded):
        sure = plain(match["list"]) or " " in match["list"]
        if sure and tag.line_at(match.start("list")).size < NAME:
            yield *match.span("list"), 0.8
    for line in _LINE.finditer(folded):
        if tag.line_at(line.start()).size < NAME:
            yield from _in_list(tag.string, line)


def _in_list(text: str, line: re.Match[str]) -> Iterator[Stretch]:
    parts = list(_ITEM.finditer(line.string, *line.span()))
    told = [found for part in parts if (found := _COLOUR.fullmatch(line.string, *part.span()))]
    others = [part[0] for part in parts if not _COLOUR.fullmatch(part[0]) and part[0].strip()]
    if len(parts) < 3 or not told or not others or not any(plain(found["list"]) for found in told):
        return
    if any(len(other.split()) > _MOST_WORDS or _OTHER_MATTER.search(other) for other in others[1:]):
        return
    if _OTHER_MATTER.search(others[0]) or not all(text[found.start("list")].islower() for found in told):
        return
    for found in told:
        yield *found.span("list"), 0.7
