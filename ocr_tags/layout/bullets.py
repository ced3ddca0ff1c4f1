"""Lists with a dot before each item: the dot whatever a reader made of it, a new column where one begins, and
the wrapped rest of an item told from the label it may look like ("• Regular / watering")."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import line_below

BULLET = "•"
_DOTS = frozenset("•·▪■●◦‣∙⋅")
_LIKE_DOTS = _DOTS | frozenset(["*", "¢", "«", "»", "+", "+»", "“+", "©", "°", "¤", "›", ">"])
_LETTERS_LIKE_DOTS = frozenset(["e", "o"])
FEWEST, FEWEST_OTHERS = 2, 3
"""From so many lines on, what stands before them is a dot and no sign or letter of its own; where no line has
a dot that was read as one, so many."""


def as_list(lines: Sequence[Line]) -> list[Line]:
    """The lines of one reader with every dot before an item as such, and each item a line by itself."""
    items = [line for line in lines if _looks_like_item(line)]
    dots = sum(line.words[0].text in _DOTS for line in items)
    if len(items) < (FEWEST if dots else FEWEST_OTHERS):
        return list(lines)
    likes = [id(line) for line in items]
    return [
        part for line in lines for part in (_items(_with_dot(line), items) if id(line) in likes else [line])
    ]


def _looks_like_item(line: Line) -> bool:
    """Whether a dot, or what may be one, stands before words, all in their usual size."""
    first = line.words[0].text
    if len(line.words) < 2 or first not in _LIKE_DOTS | _LETTERS_LIKE_DOTS:
        return False
    return first in _DOTS or line.words[1].text[:1].isupper()


def _with_dot(line: Line) -> Line:
    return Line((replace(line.words[0], text=BULLET), *line.words[1:]))


def _items(line: Line, items: Sequence[Line]) -> Iterator[Line]:
    """An item parted where one of a second column begins: below or above, others begin right there."""
    for number, word in enumerate(line.words[:-1]):
        if number and word.text in _LIKE_DOTS and any(_begins_at(word.place.x, item) for item in items):
            yield Line(line.words[:number])
            yield from _items(_with_dot(Line(line.words[number:])), items)
            return
    yield line


def _begins_at(x: int, item: Line) -> bool:
    return abs(item.words[0].place.x - x) < item.height


def no_rest(lines: Sequence[Line], is_label: Callable[[str], bool]) -> Callable[[str], bool]:
    """`is_label`, but not for the wrapped rest of an item: small letters below a line with a dot."""
    below = line_below(lines)
    rests: set[str] = set()
    for item in (line for line in lines if line.words[0].text == BULLET):
        rest = below.get(id(item))
        while rest is not None and rest.text[:1].islower():
            rests.add(rest.text)
            rest = below.get(id(rest))
    return (lambda text: text not in rests and is_label(text)) if rests else is_label
