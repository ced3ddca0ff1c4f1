"""The lines of a tag that can name a plant: titles, labels, and what is only selling or care.

A title is a line in letters half as large again as usual. A tag with little on it has no such line; then
its first lines stand in, and what is read there counts for less. Right under a title a line a quarter larger
than usual is one too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

from rapidfuzz import process
from rapidfuzz.distance import OSA

from ocr_tags.names import lexicon, repair
from ocr_tags.names.epithets import title_case
from ocr_tags.names.foreign_names import genera_called, is_plant_word
from ocr_tags.patterns import later
from ocr_tags.record import TagText

TITLE_SIZE = 1.5
SUBTITLE_SIZE = 1.25
FLAT_TITLES = 4
LONE_WORDS = 3
"""The most words of a side's only line for it to be a title, however large its letters."""


@dataclass(frozen=True, slots=True)
class Line:
    """One printed line: where it stands, its text, and whether it may be a title."""

    start: int
    end: int
    text: str
    size: float
    title: bool
    flat: bool


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a line that may be a name; positions are in the tag's text."""

    start: int
    end: int
    text: str


def lines_of(tag: TagText) -> tuple[Line, ...]:
    """The lines of a side, with titles told from small print."""
    base = _usual(tag)
    flat = not any(
        line.size >= TITLE_SIZE * base and _may_name(tag.string[line.start : line.end]) for line in tag.lines
    )
    worded = [tag.string[line.start : line.end] for line in tag.lines]
    worded = [text for text in worded if _worded(text)]
    alone = len(worded) == 1 and len(worded[0].split()) <= LONE_WORDS
    lines: list[Line] = []
    left = FLAT_TITLES
    passport = False
    for span in tag.lines:
        text = tag.string[span.start : span.end]
        prose = bool(lines) and _goes_on(tag.string, lines[-1], span.start)
        first = (
            flat and left > 0 and _worded(text) and len(text) <= 45 and not _answers(tag.string, span.start)
        )
        left -= first
        passport = passport or bool(_PASSPORT.search(text))
        under = bool(lines) and lines[-1].title and span.size >= SUBTITLE_SIZE * base
        large = (span.size >= TITLE_SIZE * base or under) and sum(map(str.isalpha, text)) > 1  # no petal
        title = first if flat else large
        lines.append(
            Line(
                span.start,
                span.end,
                text,
                span.size,
                title and not passport and not prose,
                flat and not alone,
            )
        )
    return tuple(lines)


def _goes_on(string: str, before: Line, start: int) -> bool:
    """Whether small letters begin a line under a long one without its full stop: the rest of a sentence."""
    sentence = len(before.text.split()) > 3 and before.text.rstrip()[-1:] not in (*".!?:", "")
    return sentence and not before.title and string[before.end : start] == "\n" and string[start].islower()


def _usual(tag: TagText) -> float:
    """The usual size of letters, which is 1; of two or three lines the smallest: one is the title."""
    sizes = [line.size for line in tag.lines if _worded(tag.string[line.start : line.end])]
    return min(1.0, *sizes) if 1 < len(sizes) < 4 else 1.0


# What follows the heading of a plant passport are its lettered lines (EU 2017/2313), not titles.
_PASSPORT = later(
    r"\bpl?ante?n?\s?passp?|passeport\s+phyto|pasaporte\s+fito|plantenpaspoort|pflanzenpass", re.I
)


def _may_name(text: str) -> bool:
    return _worded(text) and (not is_noise(text) or lexicon.is_trade_name(text.strip(" .,|")))


def _worded(text: str) -> bool:
    return sum(c.isalpha() for c in text) >= 3


def _answers(string: str, start: int) -> bool:
    """Whether a line stands to the right of a label of its own row: "Type TAB Shrub rose"."""
    if start == 0 or string[start - 1] != "\t":
        return False
    label = re.split(r"[\t\n]", string[: start - 1])[-1]
    return label.rstrip().endswith(":") or (is_noise(label) and len(label.split()) <= 3)


_IN_POT = later(
    r"\s+(?:(?:im|in|en|i|au|in einem|in a|dans un)\s+)?(?:\w*topf|pots?|\w*krukke|\w*potte|maceta|vaso"
    r"|vasetto|godet|kruka|kübel|container|ampel)\b[^·|/]*$"
    r"|\s+(?:[TCØ⌀]\s?)?\d+(?:[.,]\d+)?\s?(?:cm|mm|l|L|gal|in\.?|\"|ltr)\b.*$",
    re.I,
)
"""The pot a plant is sold in, behind its name: Kannenpflanze im Ampeltopf 14 cm."""


_HELLO = later(
    r"\s*(?:(?:hi|hello|hey|howdy|aloha|psst|g['’]day|hallo|bonjour|hola)\b[,.! ]*(?:there\b[,.! ]*)?)?"
    r"(?:i['’]?m|i am|my name is|meet|this is|say hello to|call me|je suis|ich bin|soy)\s+"
    r"(?:(?:an?|your|the)\s+)?",
    re.I,
)
"""How a tag that speaks for its plant begins: Hi, I'm a Snake Plant!"""


def pieces(line: Line, taken: list[tuple[int, int]]) -> list[Piece]:
    """The line cut at dashes, bars, brackets and at what was already read from it."""
    text = list(line.text)
    for start, end in taken:
        for position in range(max(start, line.start), min(end, line.end)):
            text[position - line.start] = "|"
    cut = "".join(text)
    found: list[Piece] = []
    cut = _IN_POT.sub("", cut)
    hello = _HELLO.match(cut)
    if hello and lexicon.plants_called(cut[hello.end() :].strip(" .,!|")):
        cut = "|" * hello.end() + cut[hello.end() :].replace("!", "|")
    cut = re.sub(r":.*", "", cut)  # what follows a colon answers a label, and name labels are read elsewhere
    for match in re.finditer(r"[^|–—•·∙‧⋅◦●▪■♦~/;()\[\]\t™®©*+=<>]+", cut):
        for part in re.finditer(r"(?:(?!\s-+\s).)+", match[0]):
            words = part[0].strip(" .,'’‘`\"“”-_")
            if sum(c.isalpha() for c in words) >= 3:
                start = line.start + match.start() + part.start() + part[0].index(words)
                found.append(Piece(start, start + len(words), words))
    return found


@cache
def _stop_words() -> frozenset[str]:
    text = files("ocr_tags").joinpath("data", "not_names.txt").read_text("utf-8")
    return frozenset(line for line in text.splitlines() if line and not line.startswith("#"))


def is_noise(text: str) -> bool:
    """Whether a line is selling, care or address rather than a name: stop words, digits, marks, sentences."""
    words = re.findall(r"[^\W\d_]+(?:[-'’][^\W\d_]+)*", text.lower())
    if not words or len(words) > 5 or re.search(r"\d|[%$€£@#&?!°]|\.\w", text):
        return True
    return any(word in _stop_words() for word in words) or max(map(len, words)) < 3


def is_answer(text: str) -> bool:
    """Whether a line has only words of care, size and season, one letter of each perhaps misread.

    >>> is_answer("Well-Drained"), is_answer("Monthty"), is_answer("Midsummer Snow")
    (True, True, False)
    """
    return all(_is_answer_word(word) for word in re.findall(r"[^\W\d_]+", text))


@lru_cache(maxsize=4096)
def _is_answer_word(word: str) -> bool:
    folded = repair.fold(word)
    if folded in _answer_folds():
        return True
    near = process.extractOne(folded, _answer_folds(), scorer=OSA.distance, score_cutoff=1)
    return len(folded) > 4 and near is not None and len(near[0]) > 4


@cache
def _answer_folds() -> frozenset[str]:
    words = (part for word in lexicon.words_of("answer") | _stop_words() for part in word.split("-"))
    return frozenset(repair.fold(word) for word in words)


def looks_like_name(text: str) -> bool:
    """Whether an unknown title has the shape of a name: one to four whole words with capitals."""
    words = text.split()
    if not 1 <= len(words) <= 4 or is_noise(text) or is_answer(text) or len(text) < 4:
        return False
    whole = all(re.fullmatch(r"[^\W\d_]{2,}(?:[-'’.][^\W\d_]+)*\.?", word) for word in words)
    spoken = all(re.search(r"[aeiouyà-ü]", word.lower()) for word in words)
    return whole and spoken and text[0].isupper() and not repair.perhaps_damaged(text)


def is_qualifier(words: list[str]) -> bool:
    known = lexicon.words_of("qualifier")
    return all(
        word.lower() in known or re.fullmatch(r"\w+-leaf|\w+-leaved|\w+leaf", word.lower()) for word in words
    )


def has_head(text: str) -> bool:
    """Whether the last word is the kind of word common names end with."""
    last = re.sub(r"[^a-z]", "", re.split(r"[\s-]", text.lower())[-1])
    return last in lexicon.words_of("head") or (
        len(last) > 6 and last.endswith(("grass", "wort", "berry", "flower", "weed", "bush"))
    )


def as_written(printed: str) -> str:
    """A common name as a person would write it: as printed when it has both kinds of letters.

    >>> as_written("PURPLE CONEFLOWER"), as_written("Lady fern"), as_written("LILY-OF-THE-VALLEY")
    ('Purple Coneflower', 'Lady fern', 'Lily-of-the-Valley')
    """
    plain = " ".join(printed.replace("’", "'").replace("‘", "'").replace("`", "'").split())
    plain = re.sub(r"(?<=\w)- (?=\w)", "-", plain)  # the line ended at its hyphen
    if (
        plain.isupper()
        or plain.islower()
        or sum(map(str.isupper, plain)) > len(plain.split()) + plain.count("-") + 1
    ):
        return title_case(plain)
    return plain


def without_digits(text: str) -> str:
    """The text with figures inside words put back to the letters they were read for: H0sta, Ma1low.

    >>> without_digits("H0sta"), without_digits("Zone 5")
    ('Hosta', 'Zone 5')
    """
    return re.sub(
        r"(?<=[^\W\d_])[015](?=[^\W\d_])|(?<![\w])[01](?=[^\W\d_]{3})", lambda m: _DIGITS[m[0]], text
    )


_DIGITS = {"0": "o", "1": "l", "5": "s"}


def known_ending(words: list[str]) -> tuple[int, str]:
    """How many last words make a known trade name, and that name well spelt; (0, "") when none do.

    >>> known_ending("Pellinge Scarlet 0strich Fern".split())
    (2, 'Ostrich Fern')
    """
    for count in range(min(4, len(words)), 0, -1):
        if lexicon.plants_called(" ".join(words[-count:])):
            return count, " ".join(words[-count:])
    for count in (3, 2):
        if count < len(words):
            near = repair.nearest_common(" ".join(words[-count:]))
            if near and near.clear and near.name.count(" ") == count - 1:
                return count, title_case(near.name) if words[-1][0].isupper() else near.name
    return 0, ""


def known_beginning(words: list[str]) -> int:
    """How many first words make a known trade name; 0 when none do."""
    for count in range(min(4, len(words) - 1), 0, -1):
        if lexicon.plants_called(" ".join(words[:count])):
            return count
    return 0


def is_foreign(text: str) -> bool:
    """Whether it is in another language: by a plant word of that, or letters no English word has."""
    words = re.findall(r"[^\W\d_]+(?:['’-][^\W\d_]+)*", text.lower())
    if re.search("[āēīōū]|\\w-(?!(?:of|and|in|on|the|eyed?|leaf|leaved)\\b)[a-zà-ü]{3,}-[A-Z]", text):
        return True  # Māori marks its long vowels; Zwarte-ogen-Susanne
    known = lexicon.words_of("foreign")
    return any(word in known or is_plant_word(word) or genera_called(word) for word in words)


def is_line_of_names(piece: Piece, line: Line, between: str = "") -> bool:
    """Whether a line is this piece, or a few such, with strokes, dashes and marks `between` them only."""
    text = _IN_POT.sub("", line.text).rstrip(" .,").translate(dict.fromkeys(map(ord, between)))
    plain = not re.search(r"[\d:!?%$€£.,]", text)
    return plain and piece.text[0].isupper() and len(line.text.split()) <= 14
