r"""What the readers of printed words share: folding, closed word lists, labels, and where a phrase ends.

Folding keeps every character in its place, so a match in the folded text is a span of the printed one.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from importlib.resources import files
from typing import Generic, TypeVar

from rapidfuzz import process
from rapidfuzz.distance import OSA, Indel

from ocr_tags.patterns import later

T = TypeVar("T")

_WORN = str.maketrans("015|!", "olsll")
_MIXED = later(r"(?<![^\W_])(?=[a-z|!]*[\d|!])(?=[\d|!]*[a-z])[a-z\d|!]{3,}(?![^\W_])")
_TOKEN = later(r"[^\W_]+")
_GAP = later(r"(?! - )[ .'’-]{0,3}\n?")
REPAIRED = 0.75
"""Certainty of a phrase that is one or two letters away from a known one."""
KEPT = 64
"""Texts of which what was found is kept: all of both sides of a tag, which several readers search."""


@lru_cache(maxsize=64)
def fold(text: str) -> str:
    """Lower case, no accents, look-alike digits inside words as letters; as long as `text`.

    >>> fold("Fu11 Sun à 6-8 Été"), fold("10cm")
    ('full sun a 6-8 ete', '10cm')
    """
    plain = "".join(_plain(character) for character in _TALL_I.sub(_as_l, text))
    return _MIXED.sub(_as_word, plain)


_TALL_I = later(r"(?<=[a-zà-ÿ])I+(?![A-Z])")
"""A capital I within a word in small letters is an l."""


def _as_l(match: re.Match[str]) -> str:
    return "l" * len(match[0])


def _plain(character: str) -> str:
    lower = character.lower()
    base = unicodedata.normalize("NFD", lower)[0]
    return base if len(lower) == 1 else character


_UNIT = later(r"\d+(?:cm|mm|ml|in|ft|gal|qt|pt|pk|kg|lt|ltr|oz)|pb\d+")
"""A figure with its unit or a class of pots, which is no word that a digit strayed into."""


def _as_word(match: re.Match[str]) -> str:
    if _UNIT.fullmatch(match[0]) or _exclaimed(match):
        return match[0]
    letters = sum(character.isalpha() for character in match[0])
    return match[0].translate(_WORN) if 2 * letters >= len(match[0]) else match[0]


def _exclaimed(match: re.Match[str]) -> bool:
    """Whether a mark ends an outcry (a long word or a line ends) and is no worn l, as in "Ful! sun"."""
    word = match[0].rstrip("!")
    ends = match.string[match.end() : match.end() + 1] in ("", "\n", "\t")
    return word != match[0] and word.isalpha() and (ends or len(word) >= 5)


_ASKS_FIGURE = later(r"\b(?:the|top|of|at|about|every|least|than|within|after|first|another)\Z")


@lru_cache(maxsize=64)
def flowing(text: str) -> str:
    """The folded text with a space for a line end where the sentence runs on: in small letters, or with a
    figure that its last word asks for.

    >>> flowing("Pink" + chr(10) + "flowers" + chr(10) + "Foliage")
    'pink flowers\\nfoliage'
    >>> flowing("when the top" + chr(10) + "2 in. are dry" + chr(10) + "12 in.")
    'when the top 2 in. are dry\\n12 in.'
    >>> flowing("earshot of the" + 2 * chr(10) + "1.2m")
    'earshot of the\\n\\n1.2m'
    """
    folded = fold(text)
    ends = [at for at in range(1, len(text) - 1) if text[at] == "\n"]
    kept = [
        at
        for at in ends
        if (text[at + 1].islower() and text[at - 1] not in "\n\t.:;!?")
        or (text[at + 1].isdecimal() and _ASKS_FIGURE.search(folded, max(0, at - 12), at))
    ]
    return (
        "".join(" " if at in kept else character for at, character in enumerate(folded)) if kept else folded
    )


def squeezed(text: str) -> str:
    """Folded letters and digits alone: what two printings of one phrase have in common."""
    return "".join(_TOKEN.findall(fold(text)))


def clean(text: str) -> str:
    """A printed phrase on one line: single spaces, a word broken at its hyphen joined again, read once.

    >>> clean("Toxic to nets if" + chr(10) + "Toxic to pets if chewed.")
    'Toxic to pets if chewed'
    """
    words = text.replace("-\n", "-").split()
    return " ".join(_once(words)).strip(" .,;:|/•·*-–—_")


_ECHO, _ECHO_LETTERS = 0.85, 10


def _once(words: list[str]) -> list[str]:
    """Words without the echo of a line that was read twice: the later reading stands."""
    for length in range(len(words) // 2, 1, -1):
        first, second = ("".join(words[at : at + length]).lower() for at in (0, length))
        if len(first) >= _ECHO_LETTERS and Indel.normalized_similarity(first, second) >= _ECHO:
            return words[length:]
    return words


@dataclass(frozen=True, slots=True)
class Hit(Generic[T]):
    """A known phrase in a text."""

    value: T
    start: int
    end: int
    certainty: float = 1.0


class Phrases(Generic[T]):
    """A closed list of printed phrases and what each means; finds them exact, fused, split or worn.

    Repair wants the same number of words, the same first letter ("in summer" is no "fin summer"), at least
    `shortest` letters, and at most one wrong letter (two from eleven letters on): short words become other
    words too easily. The list is asked for when a text is first searched.
    """

    def __init__(self, meanings: Callable[[], Mapping[str, T]], shortest: int = 7) -> None:
        self._meanings, self._shortest = meanings, shortest
        self._kept: dict[str, tuple[Hit[T], ...]] = {}

    @cached_property
    def _exact(self) -> dict[str, T]:
        return {squeezed(phrase): value for phrase, value in self._meanings().items()}

    @cached_property
    def _counts(self) -> dict[str, int]:
        return {squeezed(phrase): len(_TOKEN.findall(fold(phrase))) for phrase in self._meanings()}

    @cached_property
    def _longest(self) -> int:
        return max(self._counts.values())

    @cached_property
    def _worn(self) -> dict[tuple[int, str], list[str]]:
        worn: dict[tuple[int, str], list[str]] = {}
        for key, count in self._counts.items():
            if len(key) >= self._shortest:
                worn.setdefault((count, key[0]), []).append(key)
        return worn

    def find(self, text: str) -> tuple[Hit[T], ...]:
        """Known phrases in printed order, the longest at each place; none overlap."""
        if text not in self._kept:
            if len(self._kept) >= KEPT:
                self._kept.clear()
            self._kept[text] = tuple(self._search(text))
        return self._kept[text]

    def _search(self, text: str) -> list[Hit[T]]:
        folded = fold(text)
        tokens = list(_TOKEN.finditer(folded))
        hits: list[Hit[T]] = []
        at = 0
        while at < len(tokens):
            count, hit = self._at(folded, tokens, at)
            if hit:
                hits.append(hit)
            at += count
        return hits

    def whole(self, text: str) -> Hit[T] | None:
        """The phrase that `text` consists of, punctuation aside."""
        hits = self.find(text)
        fits = len(hits) == 1 and squeezed(text) == squeezed(text[hits[0].start : hits[0].end])
        return hits[0] if fits else None

    def _at(self, folded: str, tokens: list[re.Match[str]], at: int) -> tuple[int, Hit[T] | None]:
        windows = list(_windows(folded, tokens, at, self._longest + 1))
        for lookup, certainty in ((self._exact_key, 1.0), (self._near_key, REPAIRED)):
            for count, key in reversed(windows):
                known = lookup(key, count)
                if known is not None:
                    span = tokens[at].start(), tokens[at + count - 1].end()
                    return count, Hit(self._exact[known], *span, certainty)
        return 1, None

    def _exact_key(self, key: str, count: int) -> str | None:
        return key if key in self._exact else None

    def _near_key(self, key: str, count: int) -> str | None:
        if key.isdigit() or len(key) < 5:
            return None
        if key.replace("rn", "m") in self._exact:
            return key.replace("rn", "m")
        near = process.extractOne(
            key, self._worn.get((count, key[0]), ()), scorer=OSA.distance, score_cutoff=2
        )
        if near is None:
            return None
        return near[0] if near[1] <= (2 if len(near[0]) >= 11 else 1) else None


def _windows(folded: str, tokens: list[re.Match[str]], at: int, longest: int) -> Iterator[tuple[int, str]]:
    """Runs of 1, 2, … words from `at` with nothing but a space, hyphen or line end between them."""
    key = ""
    for count in range(1, min(longest, len(tokens) - at) + 1):
        token = tokens[at + count - 1]
        if count > 1 and not _GAP.fullmatch(folded, tokens[at + count - 2].end(), token.start()):
            return
        key += token[0]
        yield count, key


@cache
def listed(name: str) -> dict[str, tuple[str, ...]]:
    """The words of one list in `data/field_words.txt`, by meaning."""
    lists: dict[str, tuple[str, ...]] = {}
    for head, body in _sections():
        if head.startswith(f"{name}."):
            words = (word.strip() for word in body.replace("\n", " ").split(","))
            lists[head.removeprefix(f"{name}.")] = tuple(word for word in words if word)
    return lists


@cache
def _sections() -> tuple[tuple[str, str], ...]:
    text = (files("ocr_tags") / "data" / "field_words.txt").read_text(encoding="utf-8")
    kept = "\n".join(line for line in text.splitlines() if not line.startswith("#"))
    return tuple((head, body) for head, _, body in (part.partition("]") for part in kept.split("\n[")[1:]))


def label_phrases(field: str) -> Phrases[bool]:
    """The labels of one field, True for English ones."""

    def meanings() -> dict[str, bool]:
        foreign = dict.fromkeys(listed("foreign_label").get(field, ()), False)
        return foreign | dict.fromkeys(listed("label")[field], True)

    return Phrases(meanings)


def cells(text: str) -> Iterator[tuple[int, int]]:
    """Start and end of every run without a column gap or line end, blanks at its ends left out."""
    for match in re.finditer(r"[^\t\n]+", text):
        stripped = match[0].strip()
        if stripped:
            start = match.start() + match[0].index(stripped)
            yield start, start + len(stripped)


def french(text: str) -> bool:
    """True when the tag speaks French as well, as tags for Canada do."""
    return bool(
        re.search(
            r"\b(?:vivace|annuelle|plein soleil|hauteur|arrosage|floraison|mi-ombre|prix)\b", text, re.I
        )
    )
