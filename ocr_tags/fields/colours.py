"""Colours a tag states for flowers and leaves, in its own words.

A colour word in a plant's name is no evidence of colour, and "blue" is often violet to a gardener
(Kelly and Judd, NBS Special Publication 440, 1976, on horticultural charts), so words are kept, never
mapped to a shade, and only taken after a label or beside the flower or leaf they describe.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from ocr_tags.fields.bloom import read_bloom
from ocr_tags.fields.colour_clauses import MORE, TURNS, clauses
from ocr_tags.fields.colour_words import SHAPE, choice, colour, colour_list, modifiers
from ocr_tags.fields.phrases import clean, flowing, fold, label_phrases, listed
from ocr_tags.fields.values import labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_ONE = later(lambda: rf"(?<![\w'’‘-]){colour()}(?![\w-])")
_SEVERAL = later(colour_list)
_SOON = later(lambda: rf"(?:\w+ ){{1,2}}(?={colour()})")

_LABELS = label_phrases("colours")

_ADJECTIVE = (
    r"(?:large|small|big|huge|tiny|giant|showy|fragrant|scented|double|single|semi-double|ruffled|tubular"
    r"|trumpet|"
    r"trumpet-shaped|bell-shaped|daisy-like|star-shaped|starry|glossy|lacy|ferny|feathery|evergreen|fall"
    r"|spring|summer|"
    r"funnel-shaped|round|fluffy|velvety|fuzzy|flat|upright|heart-shaped|lance-shaped|edged|marked"
    r"|sweetly|long-lasting|"
    r"bottlebrush|lacecap|mophead|pompon|spidery|cupped|star|bell|daisy|[a-z]+-[a-z]+|edible|nodding"
    r"|pendulous|papery|aromatic|variegated|striped|veined|tinged|tipped|puckered|crinkled|wrinkled|quilted"
    r"|leathery|shiny|waxy|thick|broad|narrow|slender|strappy|spiky|pleated|lobed|divided|finely|deeply"
    r"|cut|toothed"
    r"|felted|hairy|downy|woolly|silky|soft|rounded|oval|long|dense|airy"
    r"|[a-z]{3,}(?:y|ous|ular|like|shaped|ish))"
)
_PART = (
    r"(?:flowers?|fl(?:o?w)?rs|flws|blooms|blossoms?|florets?|petals|bracts|foliage|leaves|leaf|flowerheads"
    r"|flower heads"
    r"|flower spikes|plumes|"
    r"spikes|trumpets|bells|panicles|umbels|spires|catkins|berries|stems|bark|needles|fronds|blades"
    r"|seedheads|bloom(?= in )"
    r"|cent(?:er|re)s|eyes|throats|new (?:tips|growth|shoots|leaves)|shoots|tips|edges?|margins?"
    r"|fruits?)(?![\w-])"
)
_BEFORE_PART = later(
    lambda: (
        rf"(?<![\w'’‘-])(?P<list>{colour_list()})(?:-(?:colou?red|edged|tipped|veined|splashed|margined"
        rf"|striped))?(?:(?:,? {_ADJECTIVE}){{0,3}} {_PART}"
        rf"| (?!{colour()} )[a-z]{{4,}} (?:flowers|blooms|blossoms|florets)(?![\w-]))"
    )
)
_AFTER_PART = later(
    lambda: (
        r"\b(?:(?:spikes|clusters|masses|mounds|panicles|spires|clouds|trumpets|plumes|swords|sprays"
        r"|shades|heads"
        r"|drifts) (?:of|in)|"
        r"(?:flowers|blooms|blossoms|foliage|leaves|growth|shoots|needles|fronds|blades|bracts"
        r"|stems) (?:is|are|in|of"
        r"|open|turn|turns|in shades of)|"
        rf"fleurs|flores|bluten|feuillage|feuilles|follaje|hojas|bloemen) (?:an? |a "
        rf"|the )?(?P<list>{colour_list()})(?![\w-])(?! (?:sun|soil|shade))"
    )
)
_FLOWERS_FIRST = later(
    lambda: (
        rf"\b(?:flowers|blooms|blossoms|petals|bracts)(?:,| -| –)? (?P<list>{colour_list()})(?![\w-])"
        r"(?=[,.;]|[ ]?(?:$|[\n\t])| (?:in|from|with|veined|edged|\w+ spotted)\b)"
    )
)
_SHAPES = later(
    lambda: rf"(?<![\w'’‘-])(?P<list>{colour_list()}) (?:{_ADJECTIVE} )?(?P<shape>{SHAPE})(?![\w-])"
)
_LEAF_AND_FLOWER = later(
    lambda: rf"(?<![\w-]){colour()} (?:leaf|foliage) ?[/,] ?(?P<list>{colour_list()})(?= ?(?:[\n\t.;]|$))"
)
_GERMAN = later(lambda: rf"(?<![\w-])(?P<list>{colour()}e?s?) (?:bluten|blatter|bloemen|blad)\b")
_NAME_FOLLOWS = later(
    r" (?:farms?|nursery|growers|gardens?|tree|carpet|vine|shop|market|company|co\b|inc\b|ltd)"
)
_NAME = later(r"\b(?:Leaf|Flower|Blossom|Bells|Trumpets?|Spires?|Plumes?|LEAF|FLOWER|BLOSSOM|BELLS)$")
_TROUBLE = later(r"[^.\n]{0,30}\b(?:means?|indicates?|signals?|signs? of)\b")
"""Yellow leaves that mean something are ill."""
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
    found = list(_each_once(tag))
    english = [one for one in found if not _is_foreign(one.value)]
    yield from english or found  # what another language says again


def _each_once(tag: TagText) -> Iterator[Found[str]]:
    seen: set[str] = set()
    labelled_at = {found.start for found in labelled(tag.string, _LABELS) if not found.bare}
    for start, end, certainty in sorted(_stated(tag), key=lambda told: (told[0], -told[2])):
        within = _within(tag.string, start, end)
        runs = list(_runs(within))
        if runs and _MORE_LOST.match(within, runs[-1][1]):
            certainty *= TORN
        for first, last in runs:
            whole = _PATTERNED.fullmatch(within, 0, first) or (
                start in labelled_at and _SHADE.fullmatch(within, 0, first)
            )
            at = (start if whole else start + first), start + last
            value = clean(tag.string[slice(*at)])
            if fold(value) not in seen:
                seen.add(fold(value))
                yield Found(value, at, certainty)


def _is_foreign(value: str) -> bool:
    """Whether a colour's words are all those of another language."""
    words, (english, foreign) = fold(value).split(), _colour_words()
    return all(word in foreign and word not in english for word in words)


@cache
def _colour_words() -> tuple[frozenset[str], frozenset[str]]:
    lists = listed("colour")
    english = frozenset(fold(word) for word in (*lists["english"], *lists["modifier"]))
    return english, frozenset(fold(word) for word in lists["foreign"])


_MORE_LOST = later(r" ?(?:(?:and|or|&)\s*$|and(?=[a-z]{3}))")
"""Behind the last colour made out, another that was not: "Yellow and", "Yellow andpink"."""
TORN = 0.4
_PATTERNED = later(r"(?:spotted|striped|mottled|flecked|speckled|veined|splashed|streaked|marbled) ")
"""Before the first colour, part of what is printed: "Flower colour: spotted mauve"."""


_SHADE = later(
    r"(?!(?:mostly|mainly|usually|often|the|an?|many|various|showy|fragrant|scented|large|small|big|tiny"
    r"|double"
    r"|single|semi-double|masses|clusters|abundant|pretty|lovely|shades?|with|from|in|early|late|spring"
    r"|summer"
    r"|autumn|fall|winter|new|young|bi-?colou?r|tri-?colou?r|two-tone|assorted|mixed"
    r"|flowers?|blooms?|leaves|foliage)\b)[a-z]{3,12} "
)
"""Right behind a label and before a colour, a word that is no colour by itself says which: "Oxblood red"."""


def _within(text: str, start: int, end: int) -> str:
    """The stretch as one flow: "Rose" and "pink" below it are rose pink; all in small letters, two."""
    folded = (fold if text[start].islower() else flowing)(text)[start:end]
    return _OPENS.sub(r"\1 ", folded)


_OPENS = later(lambda: rf"((?<![\w-])(?:{choice(modifiers())}|[a-z]+ish))\n(?=[a-z])")
"""No colour ends so: "reddish" and "purple" below it are one, and so are "velvet" and "purple"."""


_MANY = later(r"(?:bi-?colou?r|tri-?colou?r|two-tone|assorted)")
"""Before colours, how many there are: "Bicolor rose & white"."""


def _runs(folded: str) -> Iterator[tuple[int, int]]:
    """Colour words, those with only a space between them as one: mahogany red."""
    run: tuple[int, int] | None = None
    for match in _ONE.finditer(folded):
        if _MANY.fullmatch(match[0]) and _ONE.match(folded, match.end() + 1):
            continue
        if run and folded[run[1] : match.start()] == " ":
            run = run[0], match.end()
            continue
        if run:
            yield run
        run = match.span()
    if run:
        mixed = _MIXED_AFTER.search(folded, *run)
        yield (run[0], mixed.start()) if mixed and mixed.start() > run[0] else run


_MIXED_AFTER = later(r" (?:mix|mixed|mixture|assorted|shades)\Z")
"""Behind the last of several colours, that they come together."""


def _stated(tag: TagText) -> Iterator[tuple[int, int, float]]:
    """Stretches of text that state colours."""
    text = tag.string
    folded = flowing(text)
    told = 0
    for found in labelled(text, _LABELS):
        if not found.second and _opens_with_colour(folded, found.start, found.end, found.bare):
            told += 1
            yield found.start, found.end, found.certainty
    for pattern in (_BEFORE_PART, _AFTER_PART, _GERMAN, _FLOWERS_FIRST, _SHAPES, _LEAF_AND_FLOWER):
        for match in pattern.finditer(folded):
            if pattern is _SHAPES and not text[match.start("shape")].islower():
                continue  # Coral Bells
            if told and (pattern is _GERMAN or _ELSEWHERE.match(match[0])):
                continue  # says again what English words said
            if not _is_name(tag, match) and not _TROUBLE.match(folded, match.end()):
                told += 1
                yield *match.span("list"), 0.85
                yield from _more(folded, match.end())
    yield from clauses(tag)
    for bloom in read_bloom(tag):
        if bloom.certainty > _SAID and (after := _AFTER_TIME.match(folded, bloom.span[1])):
            yield *after.span("list"), 0.75
            yield from _more(folded, after.end())


_ELSEWHERE = later(r"(?:fleurs|flores|bluten|feuillage|feuilles|follaje|hojas|bloemen)\b")
_SAID = 0.5
_AFTER_TIME = later(
    lambda: (
        r"(?:\.?(?:,| [-–—|•·/])|) ?\(?(?:in )?(?:an? |shades of )?(?:(?:fragrant|scented|large|small"
        r"|double|showy)"
        rf",? )*(?P<list>{colour_list()})(?= ?(?:[\n\t.;|•·)]|$)|{TURNS})"
    )
)
"""What closes the line that tells when it blooms: "Blooms Feb to Apr, blush pink"."""


def _more(folded: str, end: int) -> Iterator[tuple[int, int, float]]:
    """The other colours of the same flowers: veined purple, with golden stamens."""
    while match := MORE.match(folded, end):
        yield *match.span("list"), 0.8
        end = match.end()


def _is_name(tag: TagText, match: re.Match[str]) -> bool:
    """True for titles, and for "Coral Bells" and "Purple Leaf Plum" in any size."""
    capital = tag.string[match.start("list")].isupper()
    big = tag.line_at(match.start("list")).size >= TITLE
    return big or bool(
        _NAME_FOLLOWS.match(match.string, match.end())
        or (capital and _NAME.search(tag.string[slice(*match.span())]))
    )


def _opens_with_colour(folded: str, start: int, end: int, bare: bool) -> bool:
    if bare:
        return bool(_SEVERAL.fullmatch(folded[start:end].strip()))
    return bool(_ONE.match(folded, start)) or bool(_SOON.match(folded[start:end]))
