"""Colours as items of a short list that says other things too: "half-hardy annual, blue, white".

Seed packets and swap tags say everything between commas, dots or strokes. An item that is a colour and
nothing else is the plant's, if no other item speaks of what is sold beside it, of pots or of visitors.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import DETAIL, NAME, TURNS, Stretch, plain
from ocr_tags.fields.colours.words import colour, colour_list
from ocr_tags.fields.fact_rows import all_facts
from ocr_tags.fields.phrases import flowing, fold
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
_CELLS = later(lambda: rf"(?:^|\n) ?(?P<list>{colour()}(?: ?\t ?{colour()})+) ?(?=\n|$)")
"""Colours that are all of a row, each in its cell."""
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
    for pattern in (_DOTTED, _CELLS, _EYED):
        for match in pattern.finditer(folded):
            sure = pattern is _EYED or any(map(plain, re.split(r" ?[•·|~/,&\t–-] ?", match["list"])))
            if sure and tag.line_at(match.start("list")).size < NAME:
                yield *match.span("list"), 0.7
    for match in () if len(_IN_TONGUES.findall(tag.string)) > 1 else _OF_KIND.finditer(folded):
        sure = plain(match["list"]) or " " in match["list"]
        if sure and tag.line_at(match.start("list")).size < NAME:
            yield *match.span("list"), 0.8
    for line in _LINE.finditer(folded):
        if tag.line_at(line.start()).size < NAME:
            yield from _in_list(tag.string, line)
    yield from _among_facts(tag)


def _among_facts(tag: TagText) -> Iterator[Stretch]:
    """A colour in a line of facts ("8 m pale pink May-Jun"), or alone in its line between two of them."""
    lines = list(_ROW.finditer(tag.string))
    facts = [all_facts(line[0]) for line in lines]
    for at, line in enumerate(lines):
        found = (_ALONE if not facts[at] else _WITHIN).search(fold(tag.string), *line.span())
        beside = facts[max(at - 1, 0) : at + 2]
        if not found or not plain(found["list"]) or tag.line_at(line.start()).size >= NAME:
            continue
        if facts[at] or (sum(beside) == 2 and line[0].strip()[:1].isupper()):
            yield *found.span("list"), 0.75


_ROW = later(r"[^\n]+")
_ALONE = later(lambda: rf"(?<![^\n]) ?(?P<list>{colour()}) ?(?![^\n])")
_WITHIN = later(lambda: rf"(?<![\w-])(?P<list>{colour_list()})(?![\w-])(?! (?:sun|shade|soils?)\b)")


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
