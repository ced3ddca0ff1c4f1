"""Colours that fill a cell, or its first words: "Skin: green", "scarlet" below the name, "Red · 2 m · Sun".

A colour alone may be the end of a name or of a sentence. So it counts behind a part of the plant and a colon,
beside what is said of flowers only, among other short facts, or in small letters in a line of its own below
one that does not run on (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import DETAIL, MORE, NAME, TURNS, Stretch, plain, time_words
from ocr_tags.fields.colours.parts import FRUIT, VERB
from ocr_tags.fields.colours.words import LAID, TRACE, choice, colour, colour_list
from ocr_tags.fields.phrases import flowing, fold
from ocr_tags.fields.small_letters import all_small
from ocr_tags.patterns import later
from ocr_tags.record import TagText

_PART = (
    r"(?:(?:fall|autumn|winter|spring|summer|new|young|mature|ripe|outer|inner) )?"
    r"(?:fall|autumn|winter|scapes?|stems?|stalks?|bark|skins?|flesh|buds?|pods?|tips|undersides?"
    r"|reverse|backs?"
    r"|petioles|veins?|throats?|eyes?|lips?|spathes?|twigs?|heads?|cones?|catkins|needles|berry|haws"
    r"|growth|tints?"
    r"|shoots|leaves|leaf|foliage|husks?|roots?|tubers?|ribs?|seed ?heads?|pitchers?|flwrs?|blossom"
    r"|bracts|centre"
    r"|center|interior|inside|outside|colou?ring|tones?|ripe|young|mature|shells?|meat|rinds?|blossoms"
    rf"|lvs|crops?|{FRUIT}|stamens|calyx|calyces|leaflets|sepals|tepals|unripe|when ripe|colou?rs may vary)"
)
_LABELLED = later(
    lambda: (
        rf"(?:^|[\n\t]|[.;,•·|] |(?<=[a-z]) / ){_PART}(?: ?: ?| ?\t|\.{{3,}} ?)"
        rf"(?:\d[\d./½]*(?: ?[-–] ?\d+)? ?(?:\"|”|″|in\.?|cm|mm|ft\.?|m), )?(?:[a-z-]+, |{VERB} )?"
        rf"(?P<list>{colour_list()}(?:(?:,?{TURNS}|,? (?:and |then )?{VERB} )(?:an? |the )?{colour_list()})*)"
        r"(?![\w-])"
    )
)
_CAPITAL_LABEL = later(
    r"(?:^|[\n\t]|[.•·|] )(?:FALL|AUTUMN|WINTER|SPRING|SUMMER|FRUIT|BERRIES|BARK|STEMS|LEAF|LEAVES"
    r"|FOLIAGE|HIPS|CONES|PLUMES|PETALS|PODS|BUDS|SKIN|FLESH|SEEDHEADS) "
)
_TOLD = later(
    lambda: rf"(?P<list>{colour_list()}(?:(?:,?{TURNS})(?:an? )?{colour_list()})*)(?= ?(?:[.,;\n\t]|$))"
)
"""Behind a label that only its capitals tell: "FALL Orange-red"."""
_FORM = (
    r"(?:(?:semi-|fully |very )?double|single|anemone-flowered|ruffled|frilled|fringed|waxy|bicolou?r"
    r"|picotee"
    r"|(?:[a-z]+[ -]){0,2}(?:scent|scented|fragrance|fragrant|perfume|perfumed)|repeat[- ]flowering"
    r"|large-flowered"
    r"|(?:early|mid|late)[- ]flowering|free-flowering|lacecap|mophead|trumpet-shaped|bell-shaped)"
)
_FORMED = later(
    lambda: (
        rf"(?:^|[\n\t]|[.•·|] )(?P<list>{colour_list()})(?:,| [-–—•·]) (?:(?:and|with an?) )?{_FORM}"
        r"(?:,? (?:and )?[a-z-]+){0,3}(?= ?(?:[.\n\t•·|,]|$))"
    )
)
"""Before what is said of flowers only: "Orchid pink, semi-double", "Warm apricot, strong tea scent"."""
_SIZED = later(
    lambda: (
        rf"(?:^|[\n\t]|[.•·|] )(?P<list>{colour_list()}),? "
        r"(?:(?:medium|large|small|good|fair|bite)[- ]?sized?\b"
        r"|(?:[a-z]+,? )?(?:scented|fragrant|perfumed)\b"
        r"|(?:one|two|three|four|five|six|eight|ten|\d+) (?:(?:to|or) [a-z]+ )?"
        r"(?:pounds?|inch(?:es)?|feet)\b)"
        rf"|\d ?(?:cm|m|in|ft|[\"”″'’]|[\"”″'’]? ?[hw])\.?[,.] ?(?P<last>{colour_list()})(?= ?(?:[.\n\t]|$))"
    )
)
"""Beside what only a fruit or flower has: "Red, medium sized", "Blush pink, apple scented", "30 cm, red"."""
_VARIES = later(
    lambda: (
        rf"(?:^|[\n\t]|[.•·|] )(?P<list>{colour_list()}(?: ?[/|·•] ?{colour_list()})*),?"
        r"(?: [-–—]| \(|,)? ?(?:colou?rs?|shades?) (?:may |will )?(?:vary|varies|differ)"
    )
)
_PAIR = later(
    lambda: (
        rf"(?:^|[\n\t.;:—–] ?|, |\b(?:an?|in|are|is|flowers|leaves|large|small|opens?|round|and|clear"
        rf"|flat) )(?P<list>{colour_list()},? "
        rf"(?:(?:heavily|lightly|softly|deeply|finely) )?{LAID} (?:(?:in|with) )?{colour_list()}"
        rf"|{colour_list()},? (?:with|a?round) (?:an? )?(?:{TRACE}{colour()}"
        rf"|(?:(?!{colour()} )[a-z]+ )?{colour()} {DETAIL})|{colour()} from {colour()} buds?)(?![\w-])"
    )
)
"""Two colours that lie together, anywhere: "round, green with a dull red flush"."""
_FACTS = later(r"[^\n\t]+")
_JOINT = later(r" ?[·•|] ?| / | [–—] | {2,}|, ")
_FACT = later(
    lambda: (
        r"(?:h(?:t|eight)?\.? )?\d[\d./]*(?: ?[-–x×] ?\d[\d./]*)? ?(?:cm|mm|m|ft|in|\"|”|″"
        r"|')\.?(?: (?:tall|high|wide"
        r"|apart|oc|pot))?|(?:full |part |half |light )?(?:sun|shade|sun/shade)|(?:usda )?z(?:ones?"
        r"|n)?\.? ?\d.*"
        rf"|(?:early |mid |late |mid-)?(?:{choice(time_words())})(?: ?(?:[-–]|to) ?(?:early |mid |late "
        rf"|mid-)?"
        rf"(?:{choice(time_words())}))?|(?:early|mid|late)(?:[- ]season)?|\d+ bulbs?"
    )
)
_RUNS_ON = later(
    r"[a-z]{2,}[ -](?:[a-z'’-]+ ){2,}[a-z'’-]+$|[,–&-]$|\b(?:feuilles|feuillage|fleurs|baies|fruits|tiges)$"
    r"|\b(?:and|or|of|to|in|with|the|an?|goes|turns?)$"
)


def filled(tag: TagText) -> Iterator[Stretch]:
    r"""Stretches of colours that fill cells, or open them.

    >>> tag = TagText("Canna 'Corrida'\nscarlet\nSkin: green")
    >>> [tag.string[start:end] for start, end, _ in filled(tag)]
    ['green', 'scarlet']
    """
    text, folded = tag.string, fold(tag.string)
    flow = folded.replace("\n", " ")
    for match in _LABELLED.finditer(folded):
        yield *match.span("list"), 0.85
        if more := MORE.match(flow, match.end("list")):
            yield *more.span("list"), 0.85
    for label in _CAPITAL_LABEL.finditer(text):
        behind = _TOLD.match(folded, label.end())
        if behind and not text[slice(*behind.span("list"))].isupper():
            yield *behind.span("list"), 0.85
    for pattern in (_FORMED, _VARIES):
        for match in pattern.finditer(folded):
            if _is_small(tag, match) and (plain(match["list"]) or re.search("[ -]", match["list"])):
                yield *match.span("list"), 0.85
    for match in _SIZED.finditer(flowing(text)):
        told = "list" if match["list"] else "last"
        sure = plain(match[told]) or re.search("[ -]", match[told])
        if sure and tag.line_at(match.start(told)).size < NAME:
            yield *match.span(told), 0.85
    for match in _PAIR.finditer(flow):
        if _is_small(tag, match) and not _OTHERS.search(
            flow, max(0, match.start() - 30), match.start("list")
        ):
            yield *match.span("list"), 0.85
    for line in _FACTS.finditer(folded):
        yield from _among_facts(tag, line)
    yield from _alone(text, folded, tag)


_OTHERS = later(r"\b(?:with|beside|near|like|behind|under|plant|not)\b[^.;]*$")


def _is_small(tag: TagText, match: re.Match[str]) -> bool:
    return tag.line_at(match.start("list")).size < NAME


def _among_facts(tag: TagText, line: re.Match[str]) -> Iterator[Stretch]:
    """A colour among two other short facts at least, or beside one where the stroke parts them."""
    joints = list(_JOINT.finditer(line.string, *line.span()))
    begins = [line.start(), *(joint.end() for joint in joints)]
    ends = [*(joint.start() for joint in joints), line.end()]
    parts = [(one, other, line.string[one:other].strip()) for one, other in zip(begins, ends, strict=True)]
    facts = sum(bool(_FACT.fullmatch(part)) for _, _, part in parts)
    if not facts or tag.line_at(line.start()).size >= NAME:
        return
    for one, other, part in parts:
        if re.fullmatch(colour_list(), part) and plain(part) and (facts > 1 or len(parts) == 2):
            yield one, other, 0.75


_SORTS = r"(?:assorted|mix|mixed|variegated|(?:bi|tri|multi)-?colou?r)"
"""No colour by themselves, they say how many there are."""


def _alone(text: str, folded: str, tag: TagText) -> Iterator[Stretch]:
    """One colour in small letters, all there is in a line, below one that does not run on."""
    for match in re.finditer(rf"(?<=\n)((?!{_SORTS}){colour()})(?= ?(?:\n|$))", folded):
        start, end = match.span(1)
        above = text[text.rfind("\n", 0, max(start - 1, 0)) + 1 : max(start - 1, 0)]
        below = text[end:].lstrip(" \n")[:1]
        small = (
            text[start:end].islower()
            and (not below.islower() or all_small(text, start))
            and not _RUNS_ON.search(above)
        )
        name = not plain(match[1]) and (" " not in match[1] and all_small(text, start))
        if small and above and not name and tag.line_at(start).size < NAME:
            yield start, end, 0.75
