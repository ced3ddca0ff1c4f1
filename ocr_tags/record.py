"""The types everything else is built from: what was seen, what was read, what is known of one tag.

Nothing here imports anything of ours. All values are frozen, cheap to pickle, and JSON comes from
their own shape (`msgspec`), so a new field needs no code in this file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Generic, Literal, TypeVar

V = TypeVar("V")
V_co = TypeVar("V_co", covariant=True)

Side = Literal["front", "back"]
Status = Literal["read", "agreed", "disagreed", "inferred", "confirmed", "corrected"]
Weight = Literal["harm", "loss", "note"]

FORMAT = 1
"""Version number of the JSON form; a release reads this and every earlier one."""


# ---------------------------------------------------------------- what was seen


@dataclass(frozen=True, slots=True)
class Box:
    """A level rectangle: left, top, width, height, in whole pixels."""

    x: int
    y: int
    w: int
    h: int

    @property
    def right(self) -> int:
        return self.x + self.w

    @property
    def bottom(self) -> int:
        return self.y + self.h

    def shared(self, other: Box) -> int:
        """The area both boxes cover, in pixels.

        >>> Box(0, 0, 10, 10).shared(Box(8, 5, 10, 10)), Box(0, 0, 2, 2).shared(Box(5, 5, 2, 2))
        (10, 0)
        """
        wide = min(self.right, other.right) - max(self.x, other.x)
        high = min(self.bottom, other.bottom) - max(self.y, other.y)
        return max(0, wide) * max(0, high)

    @staticmethod
    def around(boxes: Iterable[Box]) -> Box:
        """The smallest box holding all of `boxes`; ValueError when there are none."""
        kept = list(boxes)
        left, top = min(b.x for b in kept), min(b.y for b in kept)
        return Box(left, top, max(b.right for b in kept) - left, max(b.bottom for b in kept) - top)


@dataclass(frozen=True, slots=True)
class Word:
    """One printed word as one reader saw it.

    `place` lies in the straightened picture of the tag, where lines run level from left to right;
    `box` is the same place in pixels of the photo as a person sees it (EXIF orientation applied).
    `confidence` is the reader's own score, 0 to 1. `reader` names engine and pass.
    """

    text: str
    place: Box
    box: Box
    confidence: float
    reader: str = ""


@dataclass(frozen=True, slots=True)
class WordSpan:
    """Where a word stands in `TagText.string`."""

    start: int
    end: int
    word: Word


@dataclass(frozen=True, slots=True)
class LineSpan:
    """Where one line (a level run of words with no wide gap inside) stands in `TagText.string`.

    `size` is its letter height over the usual letter height on this side of the tag: about 1 for
    small print, 2 and more for a title. `level` is the line's middle as a share of the tag's height
    from the top, 0 to 1.
    """

    start: int
    end: int
    size: float = 1.0
    level: float = 0.0


@dataclass(frozen=True, slots=True)
class TagText:
    r"""The text of one side, as the field readers get it.

    Layout is kept in four separators, so that a pattern can say what it may cross:

    - ``" "`` between words of one line,
    - ``"\t"`` between a line and its right-hand neighbour on the same level (columns, leader dots),
    - ``"\n"`` between a line and the line right below it in the same column,
    - ``"\n\n"`` between lines that have nothing to do with each other: no value crosses it.

    Characters are as the reader gave them: field readers never rewrite the string, or the way back
    to the photo is lost. Made from a plain string, every line has size 1 and there are no words.

    >>> tag = TagText("Height\t12 in\nSpread\t10 in")
    >>> [tag.string[line.start:line.end] for line in tag.lines]
    ['Height', '12 in', 'Spread', '10 in']
    """

    string: str
    side: Side = "front"
    lines: tuple[LineSpan, ...] = ()
    words: tuple[WordSpan, ...] = ()
    reader: str = ""

    def __post_init__(self) -> None:
        if not self.lines and self.string:
            object.__setattr__(self, "lines", tuple(_plain_lines(self.string)))

    def line_at(self, position: int) -> LineSpan:
        """The line holding this character; ValueError when the position is between lines."""
        for line in self.lines:
            if line.start <= position < max(line.end, line.start + 1):
                return line
        raise ValueError(f"no line at character {position}")

    def words_in(self, span: tuple[int, int]) -> list[Word]:
        """The words a span touches, in text order; empty for a text without words."""
        return [w.word for w in self.words if w.start < span[1] and w.end > span[0]]


def _plain_lines(string: str) -> Iterator[LineSpan]:
    start = 0
    count = string.count("\n") + 1
    row = 0
    for position, character in enumerate(string + "\n"):
        if character in "\t\n":
            if position > start:
                yield LineSpan(start, position, level=row / count)
            start = position + 1
            row += character == "\n"


# ---------------------------------------------------------------- what it means


@dataclass(frozen=True, slots=True)
class Found(Generic[V_co]):
    """What a field reader found in a text: a value and where it stands.

    `certainty` is the grammar's part of the doubt, 0 to 1: near 1 where a label or a unit leaves no
    choice, lower where the value rests on position or on a repaired word. How well the letters were
    read is not the reader's business; the pipeline adds that.
    """

    value: V_co
    span: tuple[int, int]
    certainty: float = 1.0


Shape = Literal["one", "list", "each"]
"""How several findings become the record's entry: `one` fact (findings must agree), `list` (one reading
whose value collects all items), `each` (a list of readings, main one first)."""


@dataclass(frozen=True, slots=True)
class Fact(Generic[V]):
    """One thing a tag may say, for whoever looks at records and reads no tag."""

    name: str
    label: str
    type: type[V]
    shape: Shape = "one"


@dataclass(frozen=True, slots=True)
class Field(Generic[V]):
    """A fact and who reads it from a tag."""

    fact: Fact[V]
    read: Callable[[TagText], Iterator[Found[V]]]

    @property
    def name(self) -> str:
        return self.fact.name

    @property
    def shape(self) -> Shape:
        return self.fact.shape


@dataclass(frozen=True, slots=True)
class Reading(Generic[V_co]):
    """A value with its proof: photo side, box in photo pixels, the printed text, and how sure.

    `photo` says in which of the record's photos the box lies, counted from 0: a side may have several.
    """

    value: V_co
    printed: str
    side: Side
    box: Box | None
    confidence: float
    status: Status = "read"
    alternatives: tuple[Reading[V_co], ...] = ()
    photo: int = 0


@dataclass(frozen=True, slots=True)
class Photo:
    """One photograph of one side. `width`, `height` and `outline` are in upright photo pixels.

    `outline` is the tag's four corners, from its own top left clockwise, or empty when the whole
    picture was taken for the tag.
    """

    side: Side
    file: str
    sha256: str
    width: int
    height: int
    taken_at: str | None = None
    outline: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class PlantMatch:
    """The plant a tag's names were matched to in the lexicon; nothing here was printed.

    More than one entry in `could_be` means the names on the tag are shared by several plants.
    """

    name: str | None
    common_names: tuple[str, ...] = ()
    synonyms: tuple[str, ...] = ()
    could_be: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Swatch:
    """One colour a colour word has been used for: its published name and sRGB as "#9065ca"."""

    name: str
    hex: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning about what a tag says: what it says, why to be careful, what to do instead.

    `weight` is what is at stake: `harm` to people, animals or the law, `loss` of the plant or the money,
    or a `note` that helps to understand the tag. `basis` is a published source or "common practice, no
    source". `printed`, `side`, `box` and `photo` point at the print, as in `Reading`; a caution about what is
    missing has none.
    """

    code: str
    field: str
    message: str
    basis: str
    advice: str = ""
    weight: Weight = "note"
    printed: str = ""
    side: Side | None = None
    box: Box | None = None
    swatches: tuple[Swatch, ...] = ()
    photo: int | None = None


@dataclass(frozen=True, slots=True)
class TagRecord:
    """Everything known of one tag."""

    tag_id: str
    photos: tuple[Photo, ...]
    readings: Mapping[str, tuple[Reading[Any], ...]] = field(default_factory=dict)
    plant: PlantMatch | None = None
    cautions: tuple[Caution, ...] = ()
    texts: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """By side: the printed lines in reading order, whether or not a field was found in them."""
    readers: tuple[str, ...] = ()
    """Engine, version and model that read the words."""
    notes: tuple[str, ...] = ()
    """What a person should know about how this record came about: pairing, an unreadable side."""

    def best(self, wanted: Fact[V]) -> Reading[V] | None:
        """The reading that counts for this field, or None when the tag does not say."""
        found = self.readings.get(wanted.name, ())
        return found[0] if found else None

    def all(self, wanted: Fact[V]) -> tuple[Reading[V], ...]:
        return self.readings.get(wanted.name, ())
