"""What the names of one side of a tag come to, gathered while its lines are read."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise

from ocr_tags.names import lexicon
from ocr_tags.names.block import Block
from ocr_tags.names.known_names import agrees
from ocr_tags.names.naming import Mention
from ocr_tags.names.titles import Line, Piece, known_ending
from ocr_tags.record import Found
from ocr_tags.values import BotanicalName

KNOWN = 0.7
"""From this certainty up a common name counts as known, and unknown titles are no longer guessed at."""


LARGER = 1.3
"""How much larger a title is than what is printed under it."""


@dataclass(slots=True)
class Side:
    """What the names of one side come to.

    `common` are known names, `unknown` titles that may be names, `loose` title words that may be a cultivar
    standing apart, `marked` words with a trade mark sign; `labelled` is where a label or place says: a name.
    In `answers` other fields found their values. `cultivars`: whether a mark or a cultivar stands apart.
    """

    lines: tuple[Line, ...]
    mentions: list[Mention]
    taken: list[tuple[int, int]]
    answers: tuple[tuple[int, int], ...] = ()
    common: list[Found[str]] = field(default_factory=list)
    unknown: list[Found[str]] = field(default_factory=list)
    loose: list[tuple[str, float, Line]] = field(default_factory=list)
    marked: list[str] = field(default_factory=list)
    labelled: set[tuple[int, int]] = field(default_factory=set)
    blocks: list[Block] = field(default_factory=list)
    cultivars: bool = False

    @property
    def genera(self) -> set[str]:
        return {m.name.genus for m in self.mentions if m.name.genus and not is_bare(m.name)}

    def take(self, found: Found[str]) -> None:
        self.common.append(found)
        self.taken.append(found.span)

    def is_in_block(self, line: Line) -> bool:
        """Whether the line stands with a botanical name, above it."""
        return any(self.lines[number].start == line.start for block in self.blocks for number in block.above)

    def is_largest(self, line: Line) -> bool:
        """Whether it is a title in letters as large as any."""
        return line.title and line.size >= max(other.size for other in self.lines if other.title)

    def is_without_cultivar(self, common: str) -> bool:
        """Whether the side names a species of this common name, and neither a cultivar nor a mark."""
        whole = [m.name for m in self.mentions if m.name.species]
        told = any(m.name.cultivar or m.name.trade_designation for m in self.mentions)
        count, ending = known_ending(common.split())
        agreed = bool(count) and any(agrees(ending, name.genus) for name in whole)
        return agreed and not told and not self.cultivars

    def answers_in(self, piece: Piece | Line) -> bool:
        return any(start < piece.end and end > piece.start for start, end in self.answers)


def is_bare(name: BotanicalName) -> bool:
    """Whether it is a lone genus, which may as well be a common name: Petunia."""
    return name.name == name.genus and not name.trade_designation


def is_headline(one: Found[str], side: Side) -> bool:
    """Whether a genus that shops use as a common name is the one word of the largest title.

    Then it is one, whatever others stand beside it: Kniphofia, over Red Hot Poker (common practice, no
    source). Where a name on the side ends with it and no cultivar stands right below, it is a heading:
    Hydrangea, over Panicle Hydrangea.
    """
    part = any(c.value.lower().endswith(f" {one.value.lower()}") for c in side.common)
    for line, below in pairwise(side.lines):
        if line.start <= one.span[0] < line.end:
            shown = side.is_largest(line) and LARGER * below.size <= line.size
            named = any(m.alone and m.name.cultivar and below.start == m.span[0] for m in side.mentions)
            return shown and (named or not part) and _is_shop_genus(line.text)
    return False


def _is_shop_genus(text: str) -> bool:
    name = text.strip(" .,|")
    return lexicon.is_genus(name) and lexicon.is_trade_name(name)


def headline_of(mention: Mention, side: Side) -> Line | None:
    """The title that is the genus alone of a name whose rest stands below it in smaller letters."""
    spanned = [line for line in side.lines if line.start < mention.span[1] and line.end > mention.span[0]]
    if len(spanned) != 2 or not mention.name.cultivar:
        return None
    first, second = spanned
    shown = side.is_largest(first) and _is_shop_genus(first.text) and LARGER * second.size <= first.size
    return first if shown else None


def also_named(side: Side, genus: str) -> bool:
    """Whether a plant of this genus has a common name on the side that does without the genus."""
    others = [c.value for c in side.common if c.certainty >= KNOWN and genus.lower() not in c.value.lower()]
    return any(agrees(value, genus) for value in others)
