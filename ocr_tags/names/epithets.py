"""Epithets and titles as a person writes them, and cultivars in quotes, by the codes of nomenclature.

Sources: ICN (Shenzhen Code 2018) and ICNCP (9th edition, 2016); see `nomenclature.py`.
"""

from __future__ import annotations

import re
import unicodedata

from ocr_tags.patterns import later

# Readers turn the opening quote into a comma or an accent, and the pair into one or two strokes.
OPENING = "'‘’‛`´′“”\"„‚,"
_CLOSING = "'‘’‛`´′“”\"*"
CAPITAL = "A-ZÀ-ÖØ-ÞŠŽŒ"

MAX_EPITHET = 30
"""ICNCP: a cultivar epithet holds at most 30 characters (since 1996)."""

SMALL = re.compile(
    r"an?|and|as|at|by|del?|de[rs]|du|for|from|im|in|la|les?|of|on|or|the|to|und|van|von|with", re.I
)
"""Words that stay small within titles."""
_CV = later(
    rf"\s+(?:cv|var)\.?\s+(?=[{re.escape(OPENING)}])|\s+cv\.?\s+(?P<bare>[{CAPITAL}][\w’'-]*(?:\s[{CAPITAL}][\w’'-]*){{0,2}})",
    re.I,
)


_SERIES = later(r"\s?[™®]?[ ]+(?:series|s[ée]rie|collection|range|family)\b", re.I)
"""What makes of quoted words a series: "Paintpot" Series."""


def plain_epithet(word: str) -> str:
    """The word in the letters of Latin: ligatures parted, accents gone (ICN Art. 60.7).

    >>> plain_epithet("idæus"), plain_epithet("aloë")
    ('idaeus', 'aloe')
    """
    parted = word.replace("æ", "ae").replace("œ", "oe")
    return "".join(c for c in unicodedata.normalize("NFKD", parted) if not unicodedata.combining(c))


_NOUGHT = later(r"(?<=[A-Za-z]{2})O(?=\d+$)")
"""A raiser's code is letters, then a number, whose nought in front readers take for a letter."""


def tidy_epithet(printed: str) -> str:
    """An epithet with single spaces, and in ordinary letters when it was all capitals.

    >>> tidy_epithet("QUENBY  SKY"), tidy_epithet("BelvO4")
    ('Quenby Sky', 'Belv04')
    """
    words = " ".join(printed.replace("’", "'").replace("‘", "'").replace("`", "'").split()).strip(" ,;.")
    words = _NOUGHT.sub("0", words)
    return title_case(words) if words.isupper() and len(words) > 3 and not re.search(r"\d", words) else words


def title_case(words: str) -> str:
    """Every word with a capital, as a person writes a title.

    >>> title_case("LILY OF THE VALLEY"), title_case("lamb's ear"), title_case("BLACK-EYED SUSAN")
    ('Lily of the Valley', "Lamb's Ear", 'Black-Eyed Susan')
    """
    out: list[str] = []
    for number, word in enumerate(words.lower().split(" ")):
        plain = number > 0 and SMALL.fullmatch(word)
        out.append(
            word
            if plain
            else "-".join(
                p if _stays_small(p, i) else p[:1].upper() + p[1:] for i, p in enumerate(word.split("-"))
            )
        )
    return " ".join(out)


def _stays_small(part: str, place: int) -> bool:
    """Whether a part of a hyphened word stays small: Forget-me-not, Lily-of-the-Valley."""
    return place > 0 and bool(SMALL.fullmatch(part) or part in ("me", "not", "leaf", "s"))


def plausible_epithet(epithet: str) -> bool:
    """Whether the code's limits on cultivar epithets allow it (length, characters, not digits alone).

    >>> plausible_epithet("100th Battalion"), plausible_epithet("12"), plausible_epithet("x" * 31)
    (True, False, False)
    """
    letters = sum(c.isalpha() for c in epithet)
    return (
        1 < len(epithet) <= MAX_EPITHET
        and letters >= 2
        and not re.search(r"[^\w\s'’,!.\-/\\]|_|½|¼", epithet)
    )


def read_cultivar(text: str, start: int) -> tuple[str, int, int] | None:
    """A quoted cultivar epithet after optional spaces: (epithet, end, quotes seen); None when there is none.

    >>> read_cultivar(" ‘Jacob's Coat’", 0)
    ("Jacob's Coat", 15, 2)
    >>> read_cultivar(" 'Gardeners' Pride' x", 0)[0]
    "Gardeners' Pride"
    """
    marked = _CV.match(text, start)
    if marked and marked["bare"]:
        return tidy_epithet(marked["bare"]), marked.end(), 1
    place = marked.end() if marked else len(text) - len(text[start:].lstrip(" \n\t"))
    bracket = text[place : place + 1] == "("
    place += bracket
    opening = place
    while opening < len(text) and text[opening] in OPENING and opening - place < 2:
        opening += 1
    if opening == place or not text[opening : opening + 1].strip():
        return None
    comma = text[place] in ",‚„"
    closing = _closing_quote(text, opening)
    if closing is None:
        return None
    epithet = tidy_epithet(text[opening:closing])
    if not plausible_epithet(epithet) or not (epithet[0].isupper() or epithet[0].isdigit()):
        return None
    end = closing
    while end < len(text) and text[end] in _CLOSING and end - closing < 2:
        end += 1
    end += bracket and text[end : end + 1] == ")"
    if _SERIES.match(text, end):
        return None
    return epithet, end, 1 if comma else 2


def _closing_quote(text: str, start: int) -> int | None:
    """Where the epithet ends: an apostrophe before a letter is inside it, and so is a plural's."""
    ends: list[int] = []
    for position in range(start, min(len(text), start + MAX_EPITHET + 4)):
        letter = text[position]
        if letter == "\t" or _line_ends_it(text, position, start) or (ends and letter in ",;()\n"):
            break
        if letter in _CLOSING and not text[position + 1 : position + 2].isalnum():
            if position > start and text[position - 1] in _CLOSING:
                continue
            ends.append(position)
            if text[position - 1] != "s":
                break
        elif letter in OPENING and ends and text[position - 1] == " ":
            break
    if not ends:
        return None
    return ends[-1]


def _line_ends_it(text: str, position: int, start: int) -> bool:
    """Whether an epithet ends with its line: it goes on only into capitals before a closing quote."""
    if text[position] != "\n":
        return False
    linked = rf"\n(?:(?:de|du|del|la|of|the|von|van|der|and) )*[{CAPITAL}][^\W\d_]*"
    return not re.match(rf"{linked}(?:\s[^\W\d_]+)?[{_CLOSING}]", text[position:])
