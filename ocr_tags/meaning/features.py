"""What can be seen of a word and of the words around it: what `model.py` judges by."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

from ocr_tags.names import lexicon
from ocr_tags.names.vocabulary import is_tag_word
from ocr_tags.patterns import later
from ocr_tags.record import TagText

_TOKEN = later(r"\d+(?:[.,]\d+)?|[^\W\d_]+(?:['’][^\W\d_]+)*|[^\w\s]|_")
_UNITS = frozenset(["in", "inch", "inches", "ins", "ft", "feet", "foot", "cm", "cms", "mm", "m"]) | frozenset(
    ["metre", "metres", "meter", "meters"]
)
_SIZES = (("title", 1.6), ("large", 1.15), ("plain", 0.85))
_ENDS = frozenset(".;!?")
NEAR = 3
"""So many words on either side count by their place."""
WITHIN = 8
"""So many words of the same sentence on either side count wherever they stand."""


@dataclass(frozen=True, slots=True)
class Token:
    """A word, a figure or a sign of a text; `gap` is what stands before it (see `TagText`): P for a break
    between lines that have nothing to do with each other, T a tab, N a new line, S a space, 0 nothing."""

    start: int
    end: int
    word: str
    shape: str
    gap: str


def tokens(string: str) -> list[Token]:
    """The words, figures and signs of a text.

    >>> [(token.word, token.shape, token.gap) for token in tokens("Height: 30cm")]
    [('height', 'Aa', 'P'), (':', '.', '0'), ('#2', '99', 'S'), ('cm', 'a', '0')]
    """
    found: list[Token] = []
    for match in _TOKEN.finditer(string):
        gap = _gap(string[found[-1].end : match.start()]) if found else "P"
        found.append(Token(*match.span(), _plain(match[0]), _shape(match[0]), gap))
    return found


def _gap(between: str) -> str:
    return next(
        (sign for sign, mark in (("P", "\n\n"), ("T", "\t"), ("N", "\n"), ("S", " ")) if mark in between), "0"
    )


@lru_cache(maxsize=8192)
def _plain(word: str) -> str:
    """In small letters without accents; a figure only by how many digits it has."""
    if word[0].isdigit():
        return f"#{min(len(word), 4)}"
    apart = unicodedata.normalize("NFKD", word.lower().replace("’", "'"))
    return "".join(c for c in apart if not unicodedata.combining(c))


def _shape(word: str) -> str:
    if word[0].isdigit():
        return "9" * min(len(word), 4) if word.isdigit() else "9.9"
    if not word[0].isalpha():
        return "."
    if word.isupper():
        return "A" if len(word) == 1 else "AA"
    return "Aa" if word[0].isupper() else "a"


def features(tag: TagText) -> tuple[list[Token], list[list[str]]]:
    """The tokens of a text, and of each what can be seen of it."""
    found = tokens(tag.string)
    kinds = [_kinds(token.word) for token in found]
    sizes = list(_sizes(tag, found))
    return found, [_of_one(found, kinds, at, sizes[at]) for at in range(len(found))]


def _of_one(found: Sequence[Token], kinds: Sequence[tuple[str, ...]], at: int, size: str) -> list[str]:
    token = found[at]
    word, after = token.word, found[at + 1].gap if at + 1 < len(found) else "P"
    seen = ["b", f"w={word}", f"s={token.shape}", f"p={word[:4]}", f"e={word[-3:]}", size]
    seen += [f"g={token.gap}", f"h={after}", f"gw={token.gap}{word}", *(f"c={kind}" for kind in kinds[at])]
    for away in (*range(-NEAR, 0), *range(1, NEAR + 1)):
        place = at + away
        inside = 0 <= place < len(found)
        seen.append(f"w{away:+}={found[place].word if inside else '|'}")
        seen += [f"c{away:+}={kind}" for kind in kinds[place]] if inside else []
    if at:
        seen += [f"w-1,0={found[at - 1].word}_{word}", f"s-1={found[at - 1].shape}"]
    if at + 1 < len(found):
        seen += [f"w0,1={word}_{found[at + 1].word}", f"s+1={found[at + 1].shape}"]
    first = _first_in_line(found, at)
    seen += [f"l={' '.join(each.word for each in found[first : first + 2])}", f"l1={found[first].word}"]
    if first:
        seen.append(f"u={found[_first_in_line(found, first - 1)].word}")
    seen.append(f"d={min(at - first, 6)}")
    return seen + sorted(_in_sentence(found, at))


def _first_in_line(found: Sequence[Token], at: int) -> int:
    while at and found[at].gap in "S0":
        at -= 1
    return at


def _in_sentence(found: Sequence[Token], at: int) -> set[str]:
    """The words of the same sentence before and behind."""
    seen = set()
    place = at - 1
    while place >= max(at - WITHIN, 0) and found[place + 1].gap != "P" and found[place].word not in _ENDS:
        seen.add(f"<{found[place].word}")
        place -= 1
    place = at + 1
    while (
        place < min(at + WITHIN + 1, len(found))
        and found[place].gap != "P"
        and found[place].word not in _ENDS
    ):
        seen.add(f">{found[place].word}")
        place += 1
    return seen


def _sizes(tag: TagText, found: Sequence[Token]) -> Iterator[str]:
    """How large each token's letters are, and how far down the tag it stands."""
    lines = iter(sorted(tag.lines, key=lambda line: line.start))
    line = next(lines, None)
    for token in found:
        while line is not None and line.end <= token.start:
            line = next(lines, None)
        size, level = (line.size, line.level) if line else (1.0, 0.5)
        large = next((name for name, least in _SIZES if size > least), "small")
        yield f"z={large}{int(level * 5)}"


@cache
def _kinds(word: str) -> tuple[str, ...]:
    """The closed lists that hold this word."""
    named = [
        name
        for name, words in (("genus", _genera()), ("name", _name_words()), ("colour", _colours()))
        if word in words
    ]
    if not named and word.isalpha():
        named.append("tag" if is_tag_word(word) else "other")
    return (*named, *(["unit"] if word in _UNITS else []), *sorted(_sections().get(word, ())))


@cache
def _genera() -> frozenset[str]:
    return frozenset(plant.genus.lower() for plant in lexicon.plants())


@cache
def _name_words() -> frozenset[str]:
    return frozenset(
        w.lower() for plant in lexicon.plants() for name in plant.common_names for w in name.split()
    )


@cache
def _colours() -> frozenset[str]:
    rows = _data("colour_words.tsv").splitlines()
    return frozenset(row.partition("\t")[0].lower() for row in rows if not row.startswith("#"))


@cache
def _sections() -> dict[str, set[str]]:
    """By word, the parts of `field_words.txt` that hold it, labels by what they are labels of."""
    found: dict[str, set[str]] = {}
    section = ""
    for line in _data("field_words.txt").splitlines():
        if opened := re.match(r"\[(\w+)\.?(\w*)\]", line):
            section = opened[0].strip("[]") if "label" in opened[1] else opened[1]
        elif not line.startswith("#"):
            for word in re.findall(r"[^\W\d_]+", line):
                found.setdefault(_plain(word), set()).add(section)
    return found


def _data(name: str) -> str:
    return files("ocr_tags").joinpath("data", name).read_text("utf-8")
