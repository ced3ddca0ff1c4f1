r"""What the readers of printed words share: folding, closed word lists, labels, and where a phrase ends.

Folding keeps every character in its place, so a match in the folded text is a span of the printed one.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import Generic, TypeVar

from rapidfuzz import process
from rapidfuzz.distance import OSA

T = TypeVar("T")

_WORN = str.maketrans("015|!", "olsll")
_MIXED = re.compile(r"(?<![^\W_])(?=[a-z|!]*[\d|!])(?=[\d|!]*[a-z])[a-z\d|!]{3,}(?![^\W_])")
_TOKEN = re.compile(r"[^\W_]+")
_GAP = re.compile(r"[ .'’-]{0,3}\n?")
REPAIRED = 0.75
"""Certainty of a phrase that is one or two letters away from a known one."""


@lru_cache(maxsize=64)
def fold(text: str) -> str:
    """Lower case, no accents, look-alike digits inside words as letters; as long as `text`.

    >>> fold("Fu11 Sun à 6-8 Été")
    'full sun a 6-8 ete'
    """
    plain = "".join(_plain(character) for character in text)
    return _MIXED.sub(_as_word, plain)


def _plain(character: str) -> str:
    lower = character.lower()
    base = unicodedata.normalize("NFD", lower)[0]
    return base if len(lower) == 1 else character


def _as_word(match: re.Match[str]) -> str:
    letters = sum(character.isalpha() for character in match[0])
    return match[0].translate(_WORN) if 2 * letters >= len(match[0]) else match[0]


@lru_cache(maxsize=64)
def flowing(text: str) -> str:
    """The folded text with a space for a line end where the sentence runs on in small letters.

    >>> flowing("Pink" + chr(10) + "flowers" + chr(10) + "Foliage")
    'pink flowers\\nfoliage'
    """
    folded = fold(text)
    ends = [at for at in range(1, len(text) - 1) if text[at] == "\n" and text[at + 1].islower()]
    kept = [at for at in ends if text[at - 1] not in "\n\t.:;!?"]
    return (
        "".join(" " if at in kept else character for at, character in enumerate(folded)) if kept else folded
    )


def squeezed(text: str) -> str:
    """Folded letters and digits alone: what two printings of one phrase have in common."""
    return "".join(_TOKEN.findall(fold(text)))


def clean(text: str) -> str:
    """A printed phrase on one line: single spaces, a word broken at its hyphen joined again."""
    return " ".join(text.replace("-\n", "-").split()).strip(" .,;:|•·*-–—_")


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
    words too easily.
    """

    def __init__(self, meanings: Mapping[str, T], shortest: int = 7) -> None:
        self._exact = {squeezed(phrase): value for phrase, value in meanings.items()}
        counts = {squeezed(phrase): len(_TOKEN.findall(fold(phrase))) for phrase in meanings}
        self._longest = max(counts.values())
        self._worn: dict[tuple[int, str], list[str]] = {}
        for key, count in counts.items():
            if len(key) >= shortest:
                self._worn.setdefault((count, key[0]), []).append(key)

    def find(self, text: str) -> list[Hit[T]]:
        """Known phrases in printed order, the longest at each place; none overlap."""
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
    text = (files("ocr_tags") / "data" / "field_words.txt").read_text(encoding="utf-8")
    sections = re.split(r"^\[", re.sub(r"^#.*\n", "", text, flags=re.M), flags=re.M)[1:]
    lists: dict[str, tuple[str, ...]] = {}
    for head, _, body in (section.partition("]") for section in sections):
        if head.startswith(f"{name}."):
            words = (word.strip() for word in re.split(r"[,\n]", body))
            lists[head.removeprefix(f"{name}.")] = tuple(word for word in words if word)
    return lists


def label_phrases(field: str) -> Phrases[bool]:
    """The labels of one field."""
    return Phrases(dict.fromkeys(listed("label")[field], True))


# ---------------------------------------------------------------- labels and what stands after them

_CELL_START = re.compile(r"(?:^|[\t\n])[^\w\n\t]*$")
_AFTER_COLON = re.compile(r"\s?[:=][ \t]*(?:\n(?!\n))?[ \t]*")
_AFTER_LEADERS = re.compile(r"(?: ?[.…_·]{2,}[ .…_·]*\t?[ .…_·]*| ?[-–—] |[ .]?\t[ .…_·]*|[ .]?\n(?!\n))")
_NEXT_LABEL = re.compile(r"[ \t][^\W\d_][\w/]*(?: [\w/]+){0,2} ?:(?=\s|\d|$)")
_OTHER_LABELS = label_phrases("other")


@dataclass(frozen=True, slots=True)
class Labelled:
    """What stands after a label: from `start` to `end` of the text; `label` is where the label begins.

    `certainty` is 1 after a colon, less after leaders or a column gap; `bare` when only a space
    (or a line end before small letters) parts the two, so that label and value may be one sentence.
    """

    label: int
    start: int
    end: int
    certainty: float
    bare: bool = False


def labelled(text: str, labels: Phrases[bool]) -> Iterator[Labelled]:
    """The values printed after any of `labels`, in order.

    >>> tag = "Water: Low  Soil: Dry" + chr(10) + "Light" + chr(9) + "Sun"
    >>> [tag[found.start : found.end] for found in labelled(tag, Phrases({"soil": True, "light": True}))]
    ['Dry', 'Sun']
    """
    for hit in labels.find(text):
        found = _value_after(text, hit)
        if found is not None and found.start < found.end:
            yield found


def _value_after(text: str, hit: Hit[bool]) -> Labelled | None:
    opens_cell = bool(_CELL_START.search(text[: hit.start]))
    colon = _AFTER_COLON.match(text, hit.end)
    leaders = _AFTER_LEADERS.match(text, hit.end) if opens_cell else None
    gap = colon or leaders
    if gap is None:
        if not opens_cell or text[hit.end : hit.end + 1] != " ":
            return None
        return Labelled(hit.start, hit.end + 1, value_end(text, hit.end + 1), 0.8 * hit.certainty, True)
    start = gap.end()
    if ("\n" in gap[0] or "\t" in gap[0]) and _is_label(text, start):
        return None
    bare = colon is None and "\n" in gap[0] and text[start : start + 1].islower()
    certainty = 1.0 if colon and "\n" not in gap[0] else 0.95
    return Labelled(hit.start, start, value_end(text, start), certainty * hit.certainty, bare)


def _is_label(text: str, start: int) -> bool:
    line = re.split(r"[\t\n]", text[start:], maxsplit=1)[0]
    head = line.split(":")[0]
    return ":" in line or _OTHER_LABELS.whole(head) is not None


_STOP = re.compile(r"[.!;?](?=\s+[^\sa-zà-ÿ]|\s*$)|\s[•|·]\s|\t|\n")
_GOES_ON = re.compile(
    r"(?:,|-|&|\b(?:and|or|the|a|an|of|to|in|is|by|for|from|with|at|when|if|between|et|y|de))$"
)


def value_end(text: str, start: int) -> int:
    """Where the phrase that begins at `start` ends: its sentence or line, and lines that run on."""
    position = start
    while stop := _STOP.search(text, position):
        if stop[0] != "\n" or not _goes_on(text, start, stop.start()):
            end = stop.start()
            break
        position = stop.end()
    else:
        end = len(text)
    label = _NEXT_LABEL.search(text, start, end)
    return label.start() if label else end


def _goes_on(text: str, start: int, at: int) -> bool:
    following = text[at + 1 : at + 2]
    if following in ("", "\n"):
        return False
    line = text[start:at].rstrip()
    return following.islower() or bool(_GOES_ON.search(line.lower()))


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
