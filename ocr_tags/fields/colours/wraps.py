"""Colours beside a label of two lines: "Foliage" over "Colour", "Copper to" over "burgundy".

Where label and value are both broken, each line holds half of both, and the halves may lie apart in the
text. A half that plainly goes on is no whole answer: its other half is told too, or all is doubted.
"""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.fields.colours.clauses import Stretch
from ocr_tags.fields.colours.words import choice, colour, colour_list, modifiers
from ocr_tags.fields.phrases import clean, fold
from ocr_tags.patterns import later
from ocr_tags.record import Found

_PART = (
    r"(?:flower|bloom|foliage|leaf|fruit|berry|plume|petal|bract|bark|stem|fall|autumn|skin|flesh|spike"
    r"|seed ?head|cone|twig)"
)
_OPENS = r"(?:(?<![^\n\t|])|(?<=\| ))"
_GOES_ON = (
    r"(?:,|/|&|,? (?:and|or|to|with|then|over"
    r"|(?:age?ing|fading|turning|maturing|ripening|warming|edged|veined)(?: to| with)?))"
)
_HEAD = later(
    lambda: rf"{_OPENS}{_PART}[ \t](?P<list>{colour_list()}) ?{_GOES_ON} ?(?=[\n\t|]|$)(?!\n{colour()})"
)
_TAIL = later(
    lambda: rf"{_OPENS}colou?rs?[ \t](?:(?:and|or|to|with|&|/) )?(?P<list>{colour_list()}) ?(?=[\n\t|]|$)"
)
_BROKEN = later(
    lambda: (
        rf"{_OPENS}{_PART}[ \t](?P<first>(?:{choice(modifiers())}|copper|coppery|[a-z]+ish))\n+"
        rf"colou?r[ \t](?P<last>{colour()}) ?(?=[\n\t|]|$)"
    )
)
_HALF = later(
    lambda: rf"{_OPENS}{_PART}[ \t](?:[a-z-]+,? ){{1,3}}(?:and|or|to|with) ?(?=[\n\t|]|$)(?!\n{colour()})"
)
_LABEL = later(rf"{_OPENS}colou?rs?(?= ?[\n\t]|$| [a-z-]+ ?(?:[\n\t]|$))")
_LOST = later(lambda: rf"{_OPENS}colou?rs?[ \t](?:and|or|to|with|&|/) {colour()}")
DOUBTED = 0.4
"""What is left of the certainty of colours on a tag one of whose lists is cut."""


def wraps(text: str) -> Iterator[Stretch]:
    r"""Both halves of lists that are broken as their label is.

    >>> tag = "Foliage Copper to\nHardy\nColor\tburgundy"
    >>> [tag[start:end] for start, end, _ in wraps(tag)]
    ['Copper', 'burgundy']
    """
    folded = fold(text)
    heads, tails = list(_HEAD.finditer(folded)), list(_TAIL.finditer(folded))
    for match in (*heads, *tails) if len(heads) == len(tails) else ():
        yield *match.span("list"), 0.95


def is_cut(text: str) -> bool:
    r"""Whether one half of such a list stands on the tag and the other was not found.

    >>> is_cut("Flower White and\nColor\nTime"), is_cut("Flower White and\nTime\nColor\tblush")
    (True, False)
    """
    folded = fold(text)
    if not _LABEL.search(folded):
        return False  # running text
    heads, tails = len(_HEAD.findall(folded)), len(_TAIL.findall(folded))
    torn = heads > tails or len(_HALF.findall(folded)) > max(heads, tails - 1)
    return torn or (not heads and bool(_LOST.search(folded)))


def broken(text: str) -> Iterator[Found[str]]:
    r"""One colour whose words are broken so: "Fruit" over "Color", "Coppery" over "orange".

    >>> [found.value for found in broken("FRUIT\tCoppery\n\nCOLOR\torange")]
    ['Coppery orange']
    """
    for match in _BROKEN.finditer(fold(text)):
        words = (text[slice(*match.span(part))] for part in ("first", "last"))
        yield Found(clean(" ".join(words)), (match.start("first"), match.end("last")), 0.9)
