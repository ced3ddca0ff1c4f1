"""Colours in passing: one that becomes another, that fruit of a size has, that the ground decides, in a list.

No flower stands beside them, but what does is said of nothing else on a tag: a colour warms to another, blue
turns to pink with the soil, an inch of fruit is gold streaked with red (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import NAME, TURNS, Stretch, plain
from ocr_tags.fields.colours.parts import ADJECTIVE
from ocr_tags.fields.colours.words import LAID, SHAPE, colour, colour_list
from ocr_tags.fields.phrases import flowing
from ocr_tags.patterns import later
from ocr_tags.record import TagText

_PASSES = later(
    lambda: (
        rf"(?:^|[\n\t]|[.,;:!] |\b(?:from|in|is|are) |\b(?:fronds|leaves"
        r"|foliage|growth|shoots|flowers|blooms|petals|bracts|buds|fruits?|berries|pods|heads|plumes"
        r"|needles),? )"
        rf"(?:an? )?(?P<list>{colour_list()},? (?:and |then )?"
        r"(?:(?:age?ing|turning|fading|ripening) (?!to )(?=[a-z])|(?:warming|fading|age?ing|turning"
        r"|maturing|ripening|deepening|shading|blending|softening|paling"
        r"|mellowing|brightening|darkening|lightening|melting|bleaching|cooling|changing|opening|passing"
        rf"|flushing|blushing|bronzing) (?:in)?to )(?:an? |the )?{colour_list()})(?![\w-])"
    )
)
"""Whatever it is that does: "chartreuse warming to gold"."""
_EATEN = r"(?:fruits?|pods?|tomato(?:es)?|peppers?|chill?i(?:e?s)?|berries|apples|plums|pears|figs|roots)"
_MEASURED = later(
    lambda: (
        rf"(?:^|[\n\t]|[.!;] ?)(?P<list>{colour_list()}(?:,?{TURNS}{colour_list()})*),? "
        r"(?:about |to |up to |around |small |large )*\d[\d./½¼¾⅓⅔ –-]* ?"
        rf"(?:-?in(?:ch(?:es)?)?\b\.?|-?cm\b|-?mm\b|[\"”″]) ?(?:long |wide |across |round )?{_EATEN}"
        r"(?= ?(?:[.,;\n\t]|$))"
    )
)
_FROM_TO = later(
    lambda: (
        rf"\bfrom (?:an? |the )?(?P<list>{colour()}(?: in bud)?"
        rf"(?:,? (?:through|via|past) (?:an? )?{colour_list()})?,? (?:in)?to (?:an? "
        rf"|the )?{colour()})(?![\w-])"
    )
)
_REVEALED = later(
    lambda: rf"\breveal(?:s|ing)? (?:an? |the |its |inner |rich |shiny )*(?P<list>{colour_list()})(?![\w-])"
)
"""What bark, buds and pods hide: "peels to reveal cinnamon"."""
_WITHIN = later(
    lambda: (
        rf"(?:^|[\n\t]|[,;.(] ?|\band )(?P<list>{colour_list()}) (?:within|inside|outside|beneath|underneath"
        r"|at the (?:tips?|base|heart|cent(?:er|re)|edges?)|in the (?:throat|cent(?:er|re)|middle|heart)"
        r"|above|below|on top|on the (?:back|outside|inside|reverse|underside))"
        r"(?= ?(?:[.,;)\n\t]|$))"
    )
)
"""Where on a flower or fruit a colour lies: "Coral tubes, yellow within"."""
_GROUND = (
    r"(?:very |more )?(?:acid(?:ic)?|alkaline|lim[ey]y?|chalky?|neutral|sweet|sour|ericaceous)"
    r"(?:,? (?:soils?|ground|compost))?"
)
_BY_GROUND = later(
    lambda: (
        r"(?:^|[\n\t]|[.,;:] ?|\b(?:and|but|or|to|turns?|are|flowers?|blooms?) )"
        rf"(?P<list>{colour_list()}),? (?:flowers |blooms |heads )?(?:in|on|if|when|where) (?:an? |the )?"
        rf"{_GROUND}(?= ?(?:[.,;)\n\t]|$| (?:and|or|but)\b))"
    )
)
_GROUND_FIRST = later(
    lambda: (
        rf"(?<=[a-z])[,;] (?:and |but |or )?(?:in|on) (?:an? |the )?{_GROUND},? (?:turns? |goes |they are )?"
        rf"(?P<list>{colour()})(?= ?(?:[.,;)\n\t]|$))"
    )
)
_LAID_ON = later(
    lambda: (
        rf"(?<=[a-z)]), (?:each |all |boldly |finely |heavily |narrowly |broadly |evenly )?{LAID} "
        rf"(?:in |with )?(?P<list>{colour_list()})(?= ?(?:[,.;)\n\t]|$))"
    )
)
"""Behind a comma, how a colour lies on what was spoken of: "Grass from wet cliffs, striped lime and gold"."""
_OF_WHAT = later(
    lambda: (
        rf"\b(?:the )?colou?rs? of (?:an? |the |old |fine |good |ripe |fresh |dark |thick |wet )*"
        rf"(?P<list>{colour()}(?: (?:and|or) {colour()})?)(?= ?(?:[.,;:)\n\t]|$)| (?:and|that|with|on|in"
        rf"|above|from)\b)"
    )
)
"""What a part of the plant is likened to: "stems the colour of claret"."""
_ON_STEMS = later(
    lambda: (
        rf"(?:^|[\n\t]|[.;:!] )(?P<list>{colour()}(?:(?:, | ?/ ?| ?& ?|,? (?:and|or) ){colour()}){{1,5}}) "
        r"on (?:[a-z-]+,? ){0,3}?(?:stems|stalks|plants|bushes|spikes|canes|wands)\b"
    )
)
"""Flowers without the word: "Red, orange and pink on wiry stems"."""
_OVER = later(
    lambda: (
        rf"(?<![\w'’-])(?P<list>{colour()}),? (?:held |carried |set |borne |high )?"
        rf"(?:on|over|above|against|atop|amid) (?:the |its "
        rf"|their )?(?:{ADJECTIVE} )?{colour()} (?:{ADJECTIVE} )?"
        r"(?:leaves|foliage|lvs|leaf|fronds|blades|needles|growth|canes|pads|rosettes)(?![\w-])"
    )
)
"""The flower's colour before that of what it stands on: "Scarlet over bronze leaves"."""
_IN_SEVERAL = later(
    lambda: (
        rf"\b(?:flower(?:s|ing)?|bloom(?:s|ing)?|blossoms?|petals|plumes|{SHAPE}|comes?)\b"
        r"[^.;:\t\n]{0,60}? in (?:an? )?(?:shades of |mix of |mixture of )?"
        rf"(?P<list>{colour()}(?:(?:, | ?/ ?| ?& ?|,? (?:and|or) ){colour()}){{1,5}})"
        r"(?= ?(?:[.,;:)\n\t]|$)| (?:from|to|all|above|over|on|with|in|for|through|until|every|by)\b)"
    )
)
"""Flowers, and the several colours they come in: "Cups to 8 cm across in white, pink and mauve"."""
_FLOWERING = later(
    lambda: (
        r"\b(?:may|will|can|to|they|it|plants?|i|we|that|shrub|tree|often|then) (?:flowers?|blooms?) "
        rf"(?:starry |freely |a )?(?P<list>{colour_list()})"
        r"(?= ?[.,;]| (?:in|from|through|all|every|each|on|for|at|with)\b)"
    )
)
"""The verb, which says what the noun does: "old plants may flower white in winter"."""
_IF_LEFT = later(
    lambda: (
        rf"(?<=[a-z\d)])[,;] (?:and |then |or )?(?P<list>{colour()}) (?:if|when|once) "
        r"(?:you (?:can )?(?:wait|leave)|left|allowed|fully|ripe|mature|let)\b"
    )
)
"""What a crop comes to that is left on the plant: "green pods, red if left"."""
_NEXT = (
    r"(?:prune|pruning|flowers?|flowering|height|spread|plant|planting|position|soil|hardy|hardiness|feed"
    r"|water|watering|foliage|aspect|site|spacing|zones?|sun|scent|fragrance|uses?|care|pot|price|type"
    r"|width"
    r"|light|exposure|harvest|sow|season|habit)"
)
_AMONG_LABELS = later(
    lambda: (
        rf"(?<=[^\n\t] )(?:flower |bloom |foliage |leaf |fruit )?colou?r:? (?P<list>{colour_list()})"
        rf"(?P<end>(?= {_NEXT}\b)|(?=[.;,]? ?(?:$|[\n\t])))"
    )
)
"""A label within a line among others, with no mark behind it: "Flowers July Colour Deep blue Prune May"."""
_ALONE = later(
    lambda: (
        r"(?:^|[\n\t]) ?(?:(?:[a-z]+[- ])?(?:scented|fragrant|perfumed) ?(?:[·•|]| / | [-–—] ) ?"
        rf"(?P<list>{colour()})|(?P<first>{colour()}) ?(?:[·•|]| / | [-–—] ) ?"
        r"(?:[a-z]+[- ])?(?:scented|fragrant|perfumed)) ?(?=[\n\t]|$)"
    )
)
"""Beside a scent, all there is in a line: "clove-scented · white"."""
_ILL = later(
    r"\b(?:if|when|should|once|until|unless|avoid|prevent|stop"
    r"|(?<!in )(?<!by )(?<!to )(?<!early )(?<!late )may(?!,)|can|might|will|do not|don't|means?"
    r"|remove|old|lower)\b[^.;\n]{0,40}$"
)
"""Before leaves that turn brown of thirst, and fruits that are not ripe yet."""
_COLOUR = later(lambda: rf"(?<![\w-]){colour()}(?![\w-])")
_PALE = frozenset(("yellow", "brown", "black", "pale", "yellowish", "brownish"))


def passages(tag: TagText) -> Iterator[Stretch]:
    """Stretches of colours told in passing.

    >>> tag = TagText("Leaves like plates, lime warming to gold. Blue in acid soil, pink in sweet.")
    >>> [tag.string[start:end] for start, end, _ in passages(tag)]
    ['lime warming to gold', 'Blue', 'pink']
    """
    folded = flowing(tag.string)
    for pattern in (
        _PASSES,
        _FROM_TO,
        _REVEALED,
        _WITHIN,
        _MEASURED,
        _BY_GROUND,
        _GROUND_FIRST,
        _LAID_ON,
        _OVER,
        _OF_WHAT,
        _ON_STEMS,
        _IN_SEVERAL,
        _IF_LEFT,
        _FLOWERING,
    ):
        for match in pattern.finditer(folded):
            start, end = match.span("list")
            sick = {one[0] for one in _COLOUR.finditer(match["list"])} <= _PALE
            if pattern is _WITHIN and match["list"] in ("brown", "black"):
                continue
            ill = pattern not in (_MEASURED, _WITHIN, _OVER, _OF_WHAT, _ON_STEMS, _IF_LEFT) and (
                sick or (pattern is _PASSES and _ILL.search(folded, max(0, start - 60), start))
            )
            if pattern is _BY_GROUND and not plain(match["list"]) and " " not in match["list"]:
                continue  # lime if sour
            if not ill and tag.line_at(start).size < NAME:
                yield start, end, 0.85
    for match in _AMONG_LABELS.finditer(folded):
        following = tag.string[match.end("end") :].lstrip()[:1]
        if tag.string[match.start()].isupper() and not following.islower():
            yield *match.span("list"), 0.85
    for match in _ALONE.finditer(folded):
        told = "list" if match["list"] else "first"
        if plain(match[told]) and tag.line_at(match.start(told)).size < NAME:
            yield *match.span(told), 0.85
