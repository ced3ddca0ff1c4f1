"""The lines that name the plant together with a botanical name standing alone: right above and below it.

Tags of all lands print the names as one block: common name, selling name and botanical name under each
other in two or three sizes (common practice, no source). Being in the block makes a line a title, however
small its letters.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from ocr_tags.names import lexicon
from ocr_tags.names.firms import is_maker
from ocr_tags.names.naming import Mention
from ocr_tags.names.titles import Line, is_answer, is_noise, is_qualifier

HIGHEST = 5
"""A block has at most this many lines above its botanical name."""

Taken = Callable[[Line], bool]
"""Whether a line speaks of something else: care, size, a label."""


@dataclass(frozen=True, slots=True)
class Block:
    """Where the lines of a block stand among the lines of the side."""

    mention: Mention
    above: tuple[int, ...]
    below: int | None


def find_blocks(
    string: str, lines: tuple[Line, ...], mentions: list[Mention], taken: Taken
) -> Iterator[Block]:
    """The block of each botanical name that is a line of its own and more than a genus."""
    for mention in mentions:
        if not mention.alone or not (mention.name.species or mention.name.cultivar):
            continue
        first = next(n for n, line in enumerate(lines) if line.end > mention.span[0])
        last = next(n for n, line in enumerate(lines) if line.end >= mention.span[1])
        yield Block(mention, tuple(_above(string, lines, first, taken)), _below(string, lines, last, taken))


def as_titles(string: str, lines: tuple[Line, ...], blocks: list[Block]) -> tuple[Line, ...]:
    """The lines again: those above a botanical name as titles, and known names right under a title."""
    shown = {number for block in blocks for number in block.above}
    found: list[Line] = []
    for number, line in enumerate(lines):
        under = number > 0 and found[-1].title and string[found[-1].end : line.start] == "\n"
        if number in shown or (under and _is_known(line.text)):
            line = replace(line, title=True, flat=False)
        found.append(line)
    return tuple(found)


def _above(string: str, lines: tuple[Line, ...], first: int, taken: Taken) -> list[int]:
    found: list[int] = []
    for number in range(first - 1, max(first - 1 - HIGHEST, -1), -1):
        line = lines[number]
        if sum(map(str.isalpha, line.text)) < 3:
            continue  # a mark of the picture, read as a letter
        tie = string[line.end : lines[number + 1].start]
        if tie != "\n" and not (tie == "\n\n" and _is_known(line.text)):
            break
        if not _may_name(line.text) or taken(line):
            break
        found.insert(0, number)
    return found


def _below(string: str, lines: tuple[Line, ...], last: int, taken: Taken) -> int | None:
    below = last + 1
    if below == len(lines) or string[lines[last].end : lines[below].start] != "\n":
        return None
    text = lines[below].text
    return None if not _may_name(text) or taken(lines[below]) else below


def _is_known(text: str) -> bool:
    name = text.strip(" .,|")
    return lexicon.is_trade_name(name) and name[0].isupper()


def _may_name(text: str) -> bool:
    words = text.strip(" .,|'‘’“”\"™®").split()
    if not words or not words[0][0].isupper() or ":" in text or is_maker(text):
        return False
    known = lexicon.is_trade_name(" ".join(words)) or is_qualifier(words)
    return known or not (is_noise(" ".join(words)) or is_answer(text))
