"""Colours a tag states for flowers and leaves, in its own words.

A colour word in a plant's name is no evidence of colour, and "blue" is often violet to a gardener
(Kelly and Judd, NBS Special Publication 440, 1976, on horticultural charts), so words are kept, never
mapped to a shade, and only taken after a label or beside the flower or leaf they describe.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from ocr_tags.fields.bloom.colours import cell_after, colours_after, colours_before
from ocr_tags.fields.bloom.reader import read_bloom
from ocr_tags.fields.colours.cells import filled
from ocr_tags.fields.colours.changes import changes
from ocr_tags.fields.colours.clauses import DETAIL, MORE, TURNS, clauses, plain
from ocr_tags.fields.colours.doubts import PERHAPS, RIPE, TROUBLE, borne, is_ill, is_plant, of_another
from ocr_tags.fields.colours.items import items
from ocr_tags.fields.colours.parts import (
    AFTER_PART,
    BEFORE_PART,
    BRACKETED,
    DETAILS,
    FLOWERS_FIRST,
    FORMS,
    FRUITS,
    GERMAN,
    HYPHENED,
    LEAF_AND_FLOWER,
    MARKED,
    ONE_OF_THEM,
    SHAPES,
    own_end,
)
from ocr_tags.fields.colours.passages import passages
from ocr_tags.fields.colours.runs import ONE, runs_of, within_one_flow
from ocr_tags.fields.colours.strays import PASSED_OVER, is_left_over
from ocr_tags.fields.colours.twins import is_foreign, without_twins
from ocr_tags.fields.colours.words import colour, colour_list
from ocr_tags.fields.colours.wraps import DOUBTED, broken, is_cut, wraps
from ocr_tags.fields.phrases import clean, flowing, fold, label_phrases
from ocr_tags.fields.values import labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_FILLED = later(lambda: rf"{colour_list()}(?:(?:,|,? (?:with|and)(?: an?)?) {colour_list()} {DETAIL})?")
_KEEN = (
    r"(?:large|small|single|double|semi-double|crisp|showy|fragrant|scented|tubular|ruffled|evergreen"
    r"|deciduous"
    r"|glossy|edible|sweet|round|rounded|blocky|flat|daisy-like|bell-shaped|lacy|juicy|plump|abundant)"
)
_SOON = later(lambda: rf"(?:(?:\w+ ){{1,2}}|{_KEEN}, )(?={colour()})")

_LABELS = label_phrases("colours")

_NAME_FOLLOWS = later(
    r" (?:farms?|nursery|growers|gardens?|tree|carpet|vine|shop|market|company|co\b|inc\b|ltd)"
)
_NAME = later(r"\b(?:Leaf|Flower|Blossom|Bells|Trumpets?|Spires?|Plumes?|LEAF|FLOWER|BLOSSOM|BELLS)$")
_KIND = later(r" (?:Skin|Flesh|Pod|Face|Bud|Twig|Peel|Berry|Rib|Stalk)(?: [A-Z]|s? [A-Z][a-z]+$)")
"""After a colour, what makes the two a kind's name: "Red Skin Potato"."""
TITLE = 1.8
"""Print this much larger than usual is a name: "Blue Flower Carpet" states no colour."""


def read_colours(tag: TagText) -> Iterator[Found[str]]:
    """Each colour stated for a flower, leaf or fruit, as printed, each once.

    >>> [found.value for found in read_colours(TagText("Bloom color: white & yellow"))]
    ['white', 'yellow']
    >>> [found.value for found in read_colours(TagText("Flower color: mahogany red, cream"))]
    ['mahogany red', 'cream']
    >>> list(read_colours(TagText("Purple Coneflower by Green Valley Growers")))
    []
    """
    whole = list(broken(tag.string))
    apart = [one for one in _each_once(tag) if not any(_overlap(one.span, other.span) for other in whole)]
    every = sorted([*whole, *apart], key=lambda one: one.span)
    found = without_twins(tag.string, every)
    english = [one for one in found if not is_foreign(one.value)]
    found = english or found  # what another language says again
    if is_cut(tag.string):
        found = [replace(one, certainty=DOUBTED * one.certainty) for one in found]
    if every and is_left_over(tag, every):
        found = [replace(one, certainty=PASSED_OVER * one.certainty) for one in found]
    yield from found


def _overlap(one: tuple[int, int], other: tuple[int, int]) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _each_once(tag: TagText) -> Iterator[Found[str]]:
    seen: set[str] = set()
    told = 0
    every = list(_every(tag))
    surest: dict[tuple[int, int], float] = {}
    for one in every:
        surest[one.span] = max(one.certainty, surest.get(one.span, 0.0))
    for one in every:
        if one.span[0] < told:
            continue  # words within a colour that is told more exactly
        if fold(one.value) not in seen:
            seen.add(fold(one.value))
            told = one.span[1]
            yield replace(one, certainty=surest[one.span])


def _every(tag: TagText) -> Iterator[Found[str]]:
    """Each colour of each stretch that states colours, as often as it is stated."""
    labelled_at = {found.start for found in labelled(tag.string, _LABELS) if not found.bare}
    folded = fold(tag.string)
    for start, end, certainty in sorted(_stated(tag), key=lambda told: (told[0], -told[2])):
        within = _NOT_SEEN.split(within_one_flow(tag.string, start, end, start in labelled_at))[0]
        runs = list(runs_of(within))
        if runs and _MORE_LOST.match(within, runs[-1][1]):
            certainty *= TORN
        for first, last in runs:
            if _BLUSHES_TO.match(within, first) and _AND.search(within, 0, first):
                continue  # "white and blush to pink"
            verb = _BLUSHES.match(within, first)
            if verb and _THEN.search(folded, 0, start + first):
                first = verb.end()  # "then blush strawberry"
            if first >= last:
                continue
            last = own_end(within, first, last, tag.string[end : end + 24])
            labelled_shade = start in labelled_at and _SHADE.fullmatch(within, 0, first)
            patterned = _PATTERNED.search(within, 0, first)
            if last == first:
                continue
            begin = 0 if labelled_shade else patterned.start("how") if patterned else first
            at = start + begin, start + last
            yield Found(clean(tag.string[slice(*at)]), at, certainty)


_BLUSHES = later(r"blush (?=[a-z])")
_BLUSHES_TO = later(r"blush(?: ?$| (?:in)?to\b)")
_AND = later(r"(?:\band|\bthen|,) \Z")
_THEN = later(r"(?:\bthen|, and|\band then) \Z")
_NOT_SEEN = later(r"(?<![\w-])(?:smell\w*|tast\w+|flavou?r\w*|like|(?:scent|aroma|hint)s? of|reminiscent)\b")
"""What is said of scent and taste has colours' names in it: "pale pink, smells of warm chocolate"."""
_MORE_LOST = later(
    r" ?(?:(?:and|or|&|to|with|then|,? (?:age?ing|fading|turning|maturing)(?: to)?)\s*$|and(?=[a-z]{3}))"
)
"""Behind the last colour made out, another that was not: "Yellow and", "Yellow andpink"."""
TORN = 0.4
_PATTERNED = later(
    r"(?:\A|[,&/] ?|\band )(?P<how>(?:spotted|striped|mottled|flecked|speckled|veined|splashed"
    r"|streaked|marbled) )\Z"
)
"""Before a colour, part of what is printed: "Flower colour: spotted mauve"."""


_SHADE = later(
    r"(?!(?:mostly|mainly|usually|often|the|an?|many|various|showy|fragrant|scented|large|small|big|tiny"
    r"|double"
    r"|single|semi-double|masses|clusters|abundant|pretty|lovely|shades?|with|from|in|early|late|spring"
    r"|summer"
    r"|autumn|fall|winter|new|young|bi-?colou?r|tri-?colou?r|two-tone|assorted|mixed"
    r"|sweet|ripe|juicy|crisp|tart|firm|plump|round|tasty|opens?|opening|turns?|turning|fades?|fading"
    r"|ages?|ageing|emerges?|starts?|begins?|has|have|are|is|pure"
    r"|flowers?|blooms?|leaves|foliage|leaf|plumes?|petals?|bracts?|fruits?|berry|berries|bark|stems?"
    r"|twigs?"
    r"|spikes?|seed ?heads?|cones?|skin|flesh|pods?|buds?|needles?|fronds?|colou?rs?|interest|season|time"
    r"|(?:[a-z]+-)?scented)\b)[a-z]{3,12} "
)
"""Right behind a label and before a colour, a word that is no colour by itself says which: "Oxblood red"."""


def _stated(tag: TagText) -> Iterator[tuple[int, int, float]]:
    """Stretches of text that state colours."""
    text = tag.string
    folded = flowing(text)
    for found in labelled(text, _LABELS):
        if not found.second and _opens_with_colour(folded, found.start, found.end, found.bare):
            yield found.start, found.end, found.certainty
    patterns = (
        BEFORE_PART,
        AFTER_PART,
        GERMAN,
        FLOWERS_FIRST,
        SHAPES,
        LEAF_AND_FLOWER,
        FRUITS,
        FORMS,
        HYPHENED,
        MARKED,
        ONE_OF_THEM,
        BRACKETED,
    )
    for pattern in patterns:
        for match in pattern.finditer(folded):
            if "shape" in match.groupdict() and not _is_shape(tag, match):
                continue
            if of_another(folded, match) if pattern is FRUITS else is_ill(folded, match):
                continue
            if (
                pattern in (AFTER_PART, FLOWERS_FIRST)
                and PERHAPS.search(folded, max(0, match.start() - 30), match.start())
                and not RIPE.match(match[0])
            ):
                continue
            epithet = _FRENCH_PART.match(match[0]) and _EPITHET.search(folded, 0, match.start())
            if pattern is AFTER_PART and epithet:
                continue
            if pattern is FLOWERS_FIRST and match["list"] == "rust":
                continue  # wet leaves rust
            if pattern is BEFORE_PART and borne(folded, match):
                continue
            if pattern in (SHAPES, BEFORE_PART) and is_plant(folded, match.start("list"), match.end()):
                continue
            if not _is_name(tag, match) and not TROUBLE.match(folded, match.end()):
                yield *match.span("list"), 0.85
                yield from _more(folded, match.end())
    yield from clauses(tag)
    yield from changes(tag)
    yield from items(tag)
    yield from passages(tag)
    yield from filled(tag)
    yield from wraps(text)
    for bloom in read_bloom(tag):
        if bloom.certainty > _SAID:
            yield from _beside_time(text, folded, bloom.span)
        if bloom.certainty > _SAID and (
            after := _AFTER_TIME.match(folded, bloom.span[1]) or _AFTER_TIME.match(fold(text), bloom.span[1])
        ):
            yield *after.span("list"), 0.85 if bloom.certainty >= _LABELLED else 0.75
            yield from _more(folded, after.end())


_FRENCH_PART = later(r"feuil|fleurs|baies|fruits|epis|tiges|aiguilles|grappes")
_EPITHET = later(r"[a-z] a (?:petites |grandes |larges )?$")
"""Before the leaves of a French name: "Hosta à feuilles bleues"."""
_SAID = 0.5
_LABELLED = 0.85
_AFTER_TIME = later(
    lambda: (
        r"(?:[.)]{0,2}(?:[,;]| [-–—|•·/])|\.(?= )|) ?\(?(?:in )?(?:an? |shades of )?(?:(?:fragrant|scented"
        r"|large|small|starry|nodding|tiny|frilly|feathery|fluffy|airy|dainty|single"
        r"|double|showy)"
        rf",? )*(?P<list>{colour_list()})(?= ?(?:[\n\t.;|•·)]|$)|,? (?:and|but) (?:the|its?|they)\b"
        rf"|{TURNS})"
    )
)
"""What closes the line that tells when it blooms: "Blooms Feb to Apr, blush pink"."""


def _beside_time(text: str, folded: str, time: tuple[int, int]) -> Iterator[tuple[int, int, float]]:
    """The colours that lead to a bloom time or follow it, where nothing else is said."""
    stretch = colours_before(text, time[0])
    if stretch:
        yield *stretch, 0.75
    elif stretch := colours_after(text, *time) or cell_after(text, time[1]):
        yield *stretch, 0.7
        yield from _more(folded, stretch[1])


def _more(folded: str, end: int) -> Iterator[tuple[int, int, float]]:
    """The other colours of the same flowers: veined purple, with golden stamens."""
    while match := MORE.match(folded, end) or DETAILS.match(folded, end):
        yield *match.span("list"), 0.85
        end = match.end()


def _is_name(tag: TagText, match: re.Match[str]) -> bool:
    """True for titles, and for "Coral Bells" and "Purple Leaf Plum" in any size."""
    capital = tag.string[match.start("list")].isupper()
    big = tag.line_at(match.start("list")).size >= TITLE
    return big or bool(
        _NAME_FOLLOWS.match(match.string, match.end())
        or (capital and _KIND.match(tag.string, match.end("list")))
        or (capital and _NAME.search(tag.string[slice(*match.span())]))
    )


def _is_shape(tag: TagText, match: re.Match[str]) -> bool:
    """Whether a shape is no name as Coral Bells is: in small letters, or in capitals that go on to a time."""
    if tag.string[match.start("shape")].islower():
        return True
    capitals = tag.string[match.start("list") : match.end() + 4].isupper()
    return capitals and plain(match["list"]) and bool(_SHOWN.match(match.string, match.end()))


_SHOWN = later(r" (?:in|from|all|above|over|on) ")


def _opens_with_colour(folded: str, start: int, end: int, bare: bool) -> bool:
    if bare:
        return bool(_FILLED.fullmatch(folded[start:end].strip()))
    return bool(ONE.match(folded, start)) or bool(_SOON.match(folded[start:end]))
