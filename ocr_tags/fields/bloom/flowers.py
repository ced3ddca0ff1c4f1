"""Whether a sentence speaks of flowers before it names a time: "White bells, June to October".

No label stands there, so the noun decides: a flower, or a shape of flowers with its colour. Berries, leaves,
stems and bark have their seasons too, and so has every chore, so one word of those silences the sentence.
"""

from __future__ import annotations

from ocr_tags.fields.bloom.colours import colours_after, colours_before
from ocr_tags.fields.colours.words import MEASURE, SHAPE, colour_list
from ocr_tags.fields.phrases import flowing, fold
from ocr_tags.fields.small_letters import all_small
from ocr_tags.patterns import later

_ENDS = later(
    r"(?<!\bfl)(?<!\bfls)(?<!\bflr)(?<!\bflrs)(?<!\bflws)(?:(?<!\d ft)(?<!\d in)(?<!\d cm)(?<!\d m)[.;!?]\s"
    r"|[.;!?]\s(?![a-z]))|\t|\n\n|[|•·]\s"
)
_MEASURED = later(r"(?:,? (?:to|up to|on|of))? \d[\d./½-]* (?:ft|in|cm|m)\. (?!$)")
"""The height of flowers, whose stop ends no sentence: "bells on scapes to 3 ft. in June"."""
LINKED = later(r"(?:,|\b(?:in|from|of|and|to|through|until|after|before|with|during|the|a|late|early|mid))$")

_FLOWER = (
    r"(?:flowers?(?! buds)|blooms|blossoms?|florets|petals|sepals|tepals|bracts|racemes|umbels|panicles"
    r"|spikes|spires"
    r"|plumes"
    r"|bottlebrushes"
    r"|fl\.|fl(?:w?rs?|s|ws)\b\.?|spathes?|cymes|corymbs|flower[- ](?:stems|spikes|heads|stalks)|drumsticks"
    r"|inflorescences?|flowerheads|catkins"
    r"|fleurs|flores|bluten|bloemen)"
)
_ANY = r"(?:[^.;]|(?<=\d)\.(?=\d))"
_ARRIVE = (
    r"appear(?:s|ing)?|open(?:ing|s)?|re?-?peat(?:ing|s)?|last(?:s|ing)?|continu(?:e|es|ing)|arriv(?:e|es"
    r"|ing)"
    r"|com(?:e|es|ing)(?: out)?|show(?:s|ing)?(?: up)?|turn(?:s|ing)? up|unfold(?:s|ing)?|unfurl(?:s|ing)?"
    r"|emerg(?:e|es|ing)|carr(?:y|ies|ying) on|go(?:es)? on|keep(?:s)? (?:on|going|coming)|(?:are|is) out"
    r"|on (?:show|display)|on and off|off and on|bloom(?:s|ing)?|flower(?:s|ing)?|at their best|produced"
    r"|borne"
)
"""What flowers do at a time that no preposition leads to: "Flowers arrive June to August"."""
_REST = (
    rf"(?P<rest>(?:,? {_ANY}{{0,100}}?)?(?:,| -| –|\b(?:in|from|at|around|towards?|during|throughout"
    rf"|(?:all |right )?through|all|every|each|over|{_ARRIVE}))|\.?) ?$"
)
_FREE = rf"(?P<rest>(?:,? {_ANY}{{0,60}}?)?) ?$"
"""Before a time with a beginning and an end, which nothing need lead to: "Lilac spires May-July"."""
_OF_FLOWERS = later(rf"\b{_FLOWER}{_REST}")
_SHOW = (
    r"(?:rays|flush|whorls?|show|display|burst|wave|mass|masses|crop|profusion|cloud|haze|carpet"
    r"|froth|sheet|blanket)"
)
_NO_LEAF = r"(?!(?:[a-z]+ |[a-z]+-)?(?:green|silver|gr[ea]y|bronze|copper)\b)"


_FLOWERY = "(?!shuttlecocks)"
"""Of ferns and of seed heads the shapes are no flowers'."""


def _shapes(rest: str) -> str:
    return (
        rf"(?<![\w-])(?:(?!silver fluff){colour_list()} {MEASURE}(?:[a-z-]+ )?{_FLOWERY}{SHAPE}"
        rf"|{_NO_LEAF}{colour_list()} (?:carpet|haze|cloud|froth|foam|sheet)"
        rf"|(?:nodding|drooping|hanging|dangling|starry|frilly|frilled|ruffled|fluffy|upturned|open"
        rf"|waxy) {SHAPE}"
        rf"|{_FLOWERY}{SHAPE} (?:of|in) {colour_list()}|{_SHOW} of {_NO_LEAF}{colour_list()}){rest}"
    )


_FLOWERS_FREE = later(rf"\b{_FLOWER}{_FREE}")
_OF_SHAPES = later(lambda: _shapes(_REST))
_SHAPES_FREE = later(lambda: _shapes(_FREE))
_COLOURS_ONLY = later(
    lambda: (
        rf"[\W_]*{colour_list()}(?: (?:and|with|on) {colour_list()})?(?P<link>,| -| –| in| from"
        rf"| de| im|) ?(?:in )?"
    )
)
_FLOWERS_TOLD = later(r"(?:[^.;:\n\t]|\.(?=\d)){3,60}(?:,| [-–—]| (?:in|from|during|de|im|von)) ?")
_OTHER = later(
    r"\b(?:prun\w*|cut|dead ?head\w*|remov\w+|before|after|fad\w+|spent|followed|fruits?|berr\w+|seeds?"
    r"|seedheads"
    r"|pods?|foliage|leaf|leaves|stems? in|bark|hips?|cones|turn\w*|harvest\w*|pick\w*|plant(?:ed)?"
    r"|sow\w*|divide"
    r"|feed\w*|fertili\w+|attract\w*|not?|when|until|once|protect\w*|bulbs?|tubers?|then|over|dorman\w+"
    r"|dry|dried|blades|culms|swords"
    r"|trim\w*|shear\w*|pinch\w*|lift|move|repot|water|more|mulch\w*|available|ship\w*|colou?r|autumn|fall"
    r"|ripen\w*|set|used?|eaten|salads?|nectar|shelter\w*|stake|cover|shield|keep|give|provide|apply"
    r"|nursery|market|farms?)\b"
)
_ABOVE_LEAVES = later(
    r"\b(?:(?:held|carried|borne|high|well|ris(?:e|es|ing)|stand(?:s|ing)?) )*(?:above|over|among|amid"
    r"|amongst) (?:the |its |their )?(?:[a-z-]+,? ){0,2}(?:foliage|leaves)(?: |(?=,))"
    r"|\bon [^.;\n]{0,24}?(?:stems"
    r"|stalks|scapes) "
    r"|\bover (?:christmas|the holidays|(?:the )?(?:winter|summer)|many weeks|a (?:very )?long (?:season"
    r"|period|time))\b"
)
"""Where flowers stand; their time is none of the leaves'."""
_KEEP_ON = later(r"\bkeeps? (?=on\b|going\b|coming\b|blooming\b|flowering\b)")
"""Of flowers no chore: "Daisies keep coming"."""
_COVER = later(r"\b(flowers?|blooms|blossoms?|clusters|spikes|stars|bells|daisies) (?:that )?covers?\b")
"""Of flowers no chore either: "Flowers cover the mound in June"."""
_OTHER_LABEL = later(
    r"(?:^|\n)(?:seed ?heads?|berr(?:y|ies)|fruits?|crop|harvest|bark|foliage|leaf|leaves|(?:fall"
    r"|autumn|winter)"
    r" (?:colou?r|foliage|interest|leaf))(?:\t|: ?|\.{3,} ?|\n)[^\t\n]*$"
)
"""Before a time in the same row, a label of what is no flower."""
_FADES = later(
    lambda: (
        rf"\b(?:and |then )?(?:fad(?:e|es|ing)|turn(?:s|ing)?|age(?:s|ing)"
        rf"|aging) (?:to )?(?={colour_list()}\b)"
    )
)
"""Flowers that fade to a colour are in bloom."""
_OPENING = later(lambda: rf"\b(?:opening|blooming|flowering) (?:to )?{colour_list()},? (?:in|from|during) $")
_CLOSED = later(r"$|[.,;\n\t]| [|•·]| \d[\d.]* ?(?:cm|m|in|ft|[\"”″'])")
_LEAF_BEFORE = later(
    r"\b(?:foliage|lea(?:f|ves)|berr(?:y|ies)|fruits?|hips?|bark|stems?|fall|autumn|new growth)\b"
)


def clause_before(text: str, start: int) -> str:
    r"""The folded words of the sentence before `start`; a line end is none of its ends where it runs on.

    >>> clause_before("Keep moist, cut\nMauve flowers\nin June", 33)
    'mauve flowers in '
    """
    begin = max((match.end() for match in _ENDS.finditer(text, max(0, start - 160), start)), default=0)
    begin = max(begin, start - 160)
    ends = [at for at in range(begin, start) if text[at] == "\n" and not _runs_on(text, at)]
    clause = fold(text)[ends[-1] + 1 if ends else begin : start].replace("\n", " ")
    return _MEASURED.sub(" ", clause)


def _runs_on(text: str, at: int) -> bool:
    line, following = text[text.rfind("\n", 0, at) + 1 : at].rstrip(), text[at + 1 :].split("\n")[0]
    if not following[:1].isalpha() or (following[0].islower() and all_small(text, at + 1)):
        return False
    capitals = line.isupper() and following.isupper()
    return following[0].islower() or capitals or bool(LINKED.search(fold(line)))


def of_flowers(text: str, start: int, end: int, *, months: bool, cold: bool, spans: bool = False) -> float:
    """How sure it is that the time from `start` to `end` is that of flowers named before it; 0 when not.

    `months` when the time names months, `cold` when it begins with fall or winter, as that of leaves does,
    `spans` when it has a beginning and an end.
    """
    clause = _FADES.sub("", _ABOVE_LEAVES.sub(" ", _BRACKET.sub(",", clause_before(text, start))))
    if (
        spans
        and months
        and not clause
        and text[start - 1 : start] == "\n"
        and text[start - 2] not in ".:;!?\t"
    ):
        clause = f"{clause_before(text, start - 1)} "  # "Mauve spires" and "Dec-Feb" below
    clause = _COVER.sub(r"\1 ", _KEEP_ON.sub(" ", clause))
    if _OTHER_LABEL.search(fold(text), max(0, start - 90), start):
        return 0.0
    if not cold and _CLOSED.match(text, end):
        if colours_before(text, start, months=months):
            return 0.75
        if colours_after(text, start, end):
            return 0.7
    clause = clause.rpartition(": ")[2]
    part = clause.rpartition(", ")[2]
    if (
        _OTHER.search(clause)
        and (_COLOURED_FREE if spans else _COLOURED).fullmatch(part)
        and not _OTHER.search(part)
    ):
        return 0.0 if _CHORE_ABOVE.search(clause) else 0.75  # "glossy leaves, pink clusters from June"
    if _OTHER.search(clause) and not _on_own_line(text, start):
        return 0.0
    if _OF_CROPS.search(clause) and _CROPS.search(fold(text)):
        return 0.0
    if _OPENING.search(clause):
        return 0.7
    if _OF_FLOWERS.search(clause) or _OF_SHAPES.search(clause):
        return 0.75
    if spans and (_SHAPES_FREE.search(clause) or (months and _FLOWERS_FREE.search(clause))):
        return 0.7
    return 0.0


def _on_own_line(text: str, start: int) -> bool:
    """Whether coloured flowers and their time open a line, and no chore above it runs on into them."""
    begin = text.rfind("\n", 0, start) + 1
    folded = fold(text)
    above = folded[folded.rfind("\n", 0, max(begin - 1, 0)) + 1 : max(begin - 1, 0)]
    alone = _COLOURED.fullmatch(folded, begin, start) and not _OTHER.search(folded, begin, start)
    return bool(alone) and not LINKED.search(above) and not _CHORE_ABOVE.search(above)


_BRACKET = later(r" ?\($")
_OF_CROPS = later(r"\b(?:clusters|trusses|bunches|heads|globes|balls|cones)\b")
_CROPS = later(
    r"\b(?:grapes?|vitis|currants?|tomato(?:es)?|lycopersicum|capsicum|cherries|cordon|growbags?|hops"
    r"|jelly)\b"
)
"""Of some plants the clusters that are told of are the fruit's."""


def _coloured(rest: str) -> str:
    return (
        rf"(?:(?:the|its|and|with|then|small|large|showy|big) )*{colour_list()}"
        rf"(?: [a-z-]+){{0,2}} (?:{_FLOWER}|{SHAPE}){rest}"
    )


_COLOURED = later(lambda: _coloured(_REST))
_COLOURED_FREE = later(lambda: _coloured(_FREE))
_CHORE_ABOVE = later(
    r"\b(?:prun\w*|cut|dead ?head\w*|remov\w+|faded|spent|feed\w*|fertili\w+|water\w*|harvest\w*|pick\w*"
    r"|plant"
    r"|sow|when|once|keep|protect\w*|cover|trim\w*|shear\w*|pinch\w*|stake|move|not|no|attract\w*)\b"
)


_ITS_FLOWERS = later(
    r"[ \n](?:flowers?|blossoms?|blooms)(?=[.,;\n\t]|$| (?:with|in|on|of|are|is|cover|smother|crowd"
    r"|before|that|veined|edged|and)\b)"
)
_BEARS = later(
    lambda: (
        r"(?:^|[.,;:!\t\n•|] ?|\b(?:with|bears?|bearing|produces|producing|has|and) )"
        r"(?:(?:an?|showy|fragrant|scented|small|large|masses of|lovely|abundant|bright"
        rf"|{colour_list()}),? )*\Z"
    )
)
"""What may stand before the time of "White summer flowers"."""
_OPENS = later(r"(?:^|[.;!?\n\t] ?)(?:in|by|from|come|through|during|throughout|every|each) $")
_THEN_OPEN = later(
    lambda: (
        rf",? (?:(?!{colour_list()} |seed)[a-z-]+,? ){{0,2}}{colour_list()} (?:(?!seed)[a-z-]+ )?"
        rf"(?:{_FLOWER}|bells|stars|daisies|trumpets|cups|heads|lockets|puffs|globes)"
        r" (?:open|appear|arrive|top|hang|dangle|cover|nod|rise|bloom|stand|float|smother|crown|burst)\b"
    )
)
"""Behind a time that opens its sentence, flowers and what they do: "In late May pink bells open"."""
_PAIRED = later(
    r"\b(?:plant|pairs?|combines?|mix|team|goes|good|great|well|partners?|companions?)\b(?: \w+)? (?:with"
    r"|for|to) "
)
"""Before the flowers of other plants."""


def before_flowers(text: str, start: int, end: int) -> float:
    """How sure it is that the flowers named behind the time are the plant's; 0 when not.

    >>> tag = "A climber with white summer flowers"
    >>> before_flowers(tag, 21, 27), before_flowers("Plant with spring flowers", 11, 17)
    (0.7, 0.0)
    """
    folded = fold(text)
    before = folded[max(0, start - 90) : start]
    if _OPENS.search(before) and _THEN_OPEN.match(flowing(text), end):
        return 0.75
    if not _ITS_FLOWERS.match(folded, end) or not _BEARS.search(before) or _PAIRED.search(before):
        return 0.0
    named = text[start].isupper() and text[end:].lstrip()[:1].isupper()  # "Spring Flowers"
    return 0.0 if named else 0.7


def opens_with_colours(words: str) -> bool:
    """Whether colours are all that stands between a label of bloom and the time: "Blooms: White, in May".

    >>> opens_with_colours("white, in "), opens_with_colours("feed ")
    (True, False)
    """
    return bool(_COLOURS_ONLY.fullmatch(words))


def opens_with_flowers(words: str) -> bool:
    """Whether what stands between "Flowers:" and the time speaks of flowers alone: "White, fragrant - May".

    >>> opens_with_flowers("white, fragrant - "), opens_with_flowers("cut faded ones in ")
    (True, False)
    """
    return bool(_FLOWERS_TOLD.fullmatch(words)) and not _OTHER.search(words)
