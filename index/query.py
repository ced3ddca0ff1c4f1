"""What a person asks for, taken apart: words to look for, words not wanted, and what a tag must say.

    lavender                     any name, misspelt, begun or in any order
    "bleeding heart"             these words side by side, spelt so
    lavender -english            no name with this word
    lavender zone:5              the tag says that it is hardy in zone 5
    height:<60cm  spread:2-3ft   at most 60 cm high; 2 to 3 feet across
    light:part_shade bloom:june  quotes keep a value together: supplier:"north bank"
    -light:full_sun              tags that do not say full sun

Words that stand alone must all be in the names of a tag or of its plant, however spelt. "zone 5" and "z5"
among them mean zone:5. Which fields there are is listed in `index.facts`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from index.facts import Filter, asked
from index.folding import fold
from index.measures import CM_PER_UNIT
from ocr_tags.errors import QueryError

_ZONE_IN_WORDS = re.compile(r"(?<![\w:-])(?:zone\s+|z)(\d{1,2}[ab]?)\b(?!\s*[-–]\s*\d)", re.I)
_QUOTES = str.maketrans(dict.fromkeys("“”„‟«»", '"'))
_LESS = "-−–"
_PART = re.compile(
    rf"""(?P<less>(?<!\S)[{_LESS}](?=\S))?          # not wanted
    (?:(?P<field>[A-Za-z]+):\s*(?=\S))?             # field:
    (?:"(?P<phrase>[^"]*)(?P<end>"|$)|(?P<word>\S+))""",
    re.X,
)
_UNITS = "|".join(unit for unit in CM_PER_UNIT if unit.isalpha())
_LENGTH = re.compile(rf"\b(height|spread):\s*([<>]=?)?\s*(\d[^\s\"]*)(?:\s+({_UNITS})\b)?", re.I)

Words = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Question:
    """All words are folded. `words` holds those of the phrases too; without any, every tag has the names."""

    words: Words = ()
    phrases: tuple[Words, ...] = ()
    without: tuple[Words, ...] = ()
    filters: tuple[Filter, ...] = ()

    @property
    def narrowed(self) -> bool:
        """Whether anything is asked for beside words."""
        return bool(self.phrases or self.without or self.filters)


def ask(text: str, **filters: str | None) -> Question:
    """A question from what a person typed; QueryError when it asks nothing or cannot be understood.

    `filters` are further `field:value` parts, those of None left out.

    >>> ask('lavender "blue ice" -english').words
    ('lavender', 'blue', 'ice')
    >>> [wanted.field for wanted in ask("lavender zone 5 height:<60cm", light="sun").filters]
    ['zone', 'height', 'light']
    """
    text = _LENGTH.sub(r"\1:\2\3\4", text.translate(_QUOTES))  # "height: < 60 cm" in one piece
    if not filters.get("zone"):
        text = _ZONE_IN_WORDS.sub(r" zone:\1 ", text, count=1)
    words: list[str] = []
    phrases: list[Words] = []
    without: list[Words] = []
    passing: list[Filter] = []
    for part in _PART.finditer(text):
        said, negated = _value(part), bool(part["less"])
        if part["field"]:
            passing.append(asked(part["field"], said, negated=negated))
            continue
        folded = tuple(fold(said).split())
        if negated:
            without += [folded] if folded else []
            continue
        words.append(said)
        phrases += [folded] if part["phrase"] and folded else []
    passing += [asked(field, value) for field, value in filters.items() if value]
    # Folded together, for the x of "Mentha x piperita" is only known between words.
    folded = tuple(fold(" ".join(words)).split())
    return _sensible(Question(folded, tuple(phrases), tuple(without), tuple(passing)))


def _value(part: re.Match[str]) -> str:
    if part["phrase"] is not None and not part["end"]:
        raise QueryError(
            f"The quotation mark before {part['phrase'].strip()!r} is not closed.",
            f'Write "{part["phrase"].strip()}", or leave it out.',
        )
    said: str = part["word"] if part["phrase"] is None else part["phrase"]
    if part["word"] and said.endswith(":") and said[:-1].isalpha():
        raise QueryError(f"{said!r} has no value.", f"Write it like {said}value, or leave out the colon.")
    return said


def _sensible(question: Question) -> Question:
    if question.words or any(not wanted.negated for wanted in question.filters):
        return question
    if question.without or question.filters:
        raise QueryError(
            "This says only what is not wanted.", "Add a name or a field to look for: lavender -english."
        )
    raise QueryError("There is nothing to look for.", "Give a name, part of a name, or a field: zone:5.")
