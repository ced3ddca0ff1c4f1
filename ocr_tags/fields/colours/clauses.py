"""Colours that a clause of their own states, no label and no flower beside them: "Raspberry with white tips".

One colour word alone may be a name, and many are plants (Rose, Lilac, Plum). So a clause must say more: a
second colour and how the two lie together, several colours of which one is no plant, or when it is seen.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.colours.words import LAID, TRACE, choice, colour, colour_list
from ocr_tags.fields.phrases import flowing, fold, listed
from ocr_tags.patterns import later
from ocr_tags.record import TagText

Stretch = tuple[int, int, float]

_HOW = r"(?:(?:heavily|lightly|softly|boldly|deeply|finely|strongly|delicately|faintly) )?"
_ADJECTIVE = (
    r"(?:(?:prominent|central|contrasting|small|large|broad|narrow|fine|bold|distinct|thin|wide|glossy"
    r"|shiny"
    r"|matt) )?"
)
DETAIL = (
    r"(?:eyes?|cent(?:er|re)s?|throats?|tips?|edges?|edging|margins?|stripes?|veins?|veining|bars?"
    r"|blotch(?:es)?"
    r"|spots?|spotting|stamens|anthers|halos?|flecks|speckles|streaks|rims?|bands?|markings?|picotee|edge"
    r"|reverses?|lips?|coronas?|hearts?|cal[iy]x|calyces|sepals|discs?|cones?|boss|splash(?:es)?|flush"
    r"|base|flares?|faces?|ribs?|seeds?|cheeks?|crests?|falls|tubes?|markings|stars?|frills?|ruffles?|bees?"
    r"|hems?|piping|trims?|trimming|outlines?|lacing|fringes?|rings?|borders?|collars?|cups?|tongues?|hairs"
    r"|undersides?|backs?|buds|tassels?|picotee edge|dots"
    r"|skirts?|corollas?|petticoats?"
    r"|freckles|lines|patch(?:es)?|zones?|highlights)"
)
TURNS = (
    rf" {_HOW}(?:with|w/|(?:and |then )?(?:fad(?:ing|es?) to|turn(?:ing|s)?(?: to)?|age?ing(?: to)?"
    rf"|ages to|matur(?:ing|es) to"
    r"|deepen(?:ing|s)? to)|then"
    rf"|changing to|over"
    rf"|becoming|opening to|rarely|sometimes|occasionally|{LAID}|(?:all )?a?round"
    rf"|from(?= [a-z -]{{3,24}} buds?\b)|→|->)"
    rf"(?: (?:in|with|to|by))?(?: an?| the)? ?(?:{TRACE})?"
)
"""Between one colour and the other: how they lie together, or follow each other."""
MORE = later(
    lambda: (
        rf",?(?: (?:each|all|every one))?{TURNS}{_ADJECTIVE}(?P<list>{colour_list()})(?: {DETAIL})?(?![\w-])"
    )
)
"""What goes on from flowers of one colour to their other one: "White flowers with golden stamens"."""

_SCENT = (
    r"(?:,?(?: and| &)? (?:(?:lightly|light|very|sweetly|sweet|strongly|strong|richly) )*"
    r"(?:scent(?:ed)?|fragran(?:t|ce)))?"
)
_MIXED_FROM = (
    r"(?:(?:bicolou?r|bi-colou?r|tricolou?r|two-tone|mix(?:ed|ture)? of|shades of|assorted|mixed)[:, ]+)?"
)


def _times() -> Iterator[str]:
    for kind in ("month", "season"):
        for words in listed(kind).values():
            yield from words


def time_words() -> Iterator[str]:
    """The names of months and seasons."""
    yield from _times()


def _time() -> str:
    leaves = {*listed("season")["fall"], *listed("season")["winter"]}  # what colours then is no flower
    times = choice(word for word in _times() if word not in leaves)
    return rf"(?:in |from )?(?:(?:early|mid|late)[ -]?)?(?:{times})\b"


_TURNING = later(
    lambda: (
        rf"{_MIXED_FROM}(?P<list>{colour_list()}(?:,?{TURNS}{_ADJECTIVE}{colour_list()})+)"
        rf"(?: {DETAIL})?{_SCENT}"
    )
)
_SEVERAL = later(lambda: rf"{_MIXED_FROM}(?P<list>{colour_list()})(?: mix)?{_SCENT}")
_TIMED = later(lambda: rf"(?P<list>{colour_list()})(?P<link>, | - | – | )(?P<time>{_time()})[^\t\n;|]*")
_TIME_GOES_ON = later(
    lambda: rf"(?:and|until|till|through|thru|into|onwards?|first|frosts?|early|mid|late|{choice(_times())})"
)
"""What may follow a month or season where a time goes on; any other word makes a name: "Pink May Nursery"."""
_ONE = later(colour)
_OPENING = later(lambda: rf"(?P<list>{colour()}), (?!(?:{_time()}))")
"""A shade before all else that is said: "Bright red, about as big as a cherry"."""
_JOINT = later(r",? (?:and|or|to|et|y|und) |, | ?[/&+] ?")
_CLAUSE = later(r"[^\t\n;|•·.!]+(?:\.(?! |\n|$)[^\t\n;|•·.!]+)*")
_BETWEEN = later(lambda: rf"(?<= / )(?P<list>{colour()})(?= / )")
_NOT_FLOWERS = later(r"(?:fall|autumn|winter|foliage|leaf|leaves|berr\w+|fruits?|hips?|bark|stems?)\W*$")
_QUOTES = ("'", "‘", "’", '"', "“")
NAME = 1.3
"""Print this much larger than usual may be a name: "Green and Gold", "Black & Blue"."""

PLANTS = later(
    r"(?:amber|apricot|butter|cherry|chocolate|ginger|lavender|lemon|lilac|lime|mango|mulberry|orange"
    r"|orchid"
    r"|peach|periwinkle|plum|raspberry|rose|saffron|salmon|violet|fuchsia|fuschia|tangerine|rust|coral"
    r"|wheat|brick|slate|straw|cinnamon|oyster)"
)
"""Colours that name plants, or parts of plants' names, as well."""


def clauses(tag: TagText) -> Iterator[Stretch]:
    """Stretches of clauses that state colours and nothing but what goes with them.

    >>> [found[:2] for found in clauses(TagText("Sun. Peach with a rose eye. Plum"))]
    [(5, 22)]
    """
    folded = flowing(tag.string)
    for flow in dict.fromkeys((folded, fold(tag.string))):  # handwriting has lines, but no capitals
        for match in _CLAUSE.finditer(flow):
            start = match.start() + len(match[0]) - len(match[0].lstrip(" -–*"))
            end = match.start() + len(match[0].rstrip())
            quoted = tag.string[start : start + 1] in _QUOTES
            if start < end and not quoted and tag.line_at(start).size < NAME:
                yield from _in_clause(tag.string, flow, start, end)
    for match in _BETWEEN.finditer(folded):
        if plain(match[0]) and tag.line_at(match.start()).size < NAME and not _in_tongues(folded, match):
            yield *match.span("list"), 0.65


def _in_clause(text: str, folded: str, start: int, end: int) -> Iterator[Stretch]:
    if turning := _TURNING.fullmatch(folded, start, end):
        yield *turning.span("list"), 0.75
    elif several := _SEVERAL.fullmatch(folded, start, end):
        spans = list(_each(several))
        if _is_list(several["list"]):
            yield from ((*span, 0.85 if len(spans) > 2 else 0.8) for span in spans)
        elif len(spans) == 1 and plain(several["list"]) and (scented(several) or _is_shade(text, spans[0])):
            yield *spans[0], 0.8
    elif (opening := _OPENING.match(folded, start, end)) and _is_shade(text, opening.span("list")):
        yield *opening.span("list"), 0.75
        if more := MORE.match(folded, opening.end("list"), end):
            yield *more.span("list"), 0.75
    elif timed := _TIMED.fullmatch(folded, start, end):
        spoken = timed["link"] != " " or text[timed.start("time")].isupper()
        following = re.search(r"[a-z]{3,}", folded[timed.end("time") : end])
        named = following and not _TIME_GOES_ON.fullmatch(following[0])
        if spoken and not named and not _NOT_FLOWERS.search(folded, max(0, start - 24), start):
            yield from ((*span, 0.7) for span in _each(timed))


def scented(match: re.Match[str]) -> bool:
    """Whether more than the colour is said: "Salmon pink & strongly scented"."""
    return match.end() > match.end("list") + len(" mix")


def _is_shade(text: str, span: tuple[int, int]) -> bool:
    """Whether one colour is told more exactly, its last word in small letters as no name is: "Soft pink"."""
    words = re.split(r"[ -]", text[slice(*span)])
    return len(words) > 1 and words[-1].islower() and words[-1] in _BASIC


_BASIC = frozenset(
    ("red", "pink", "blue", "yellow", "orange", "purple", "white", "mauve", "scarlet", "crimson")
)


def _is_list(words: str) -> bool:
    """Whether these are several colours, one of them surely no plant; "Lavender blue" is one.

    "Red/purple" is left alone: it is one printed word, and of two values in one place the record keeps one.
    """
    joints = [match[0] for match in _JOINT.finditer(words)]
    return bool(joints) and "/" not in joints and any(plain(one[0]) for one in _ONE.finditer(words))


def _each(match: re.Match[str]) -> Iterator[tuple[int, int]]:
    """The colours of a list one by one: no flower stands by that has them both."""
    at, end = match.span("list")
    spans: list[tuple[int, int]] = []
    for joint in _JOINT.finditer(match.string, at, end):
        spans.append((at, joint.start()))
        at = joint.end()
    spans.append((at, end))
    yield from spans


def plain(words: str) -> bool:
    """Whether the last of a colour's words names no plant."""
    return not PLANTS.fullmatch(re.split(r"[ -]", words)[-1])


def _in_tongues(folded: str, match: re.Match[str]) -> bool:
    """Whether a neighbour is the same colour in another language: "blue / bleu / blau"."""
    before, after = folded[: match.start() - 3], folded[match.end() + 3 :]
    return bool(re.search(rf"(?:{colour()})$", before) or re.match(colour(), after))
