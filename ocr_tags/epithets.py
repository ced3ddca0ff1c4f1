"""Epithets and titles as a person writes them, by the codes of nomenclature.

Sources: ICN (Shenzhen Code 2018) and ICNCP (9th edition, 2016); see `nomenclature.py`.
"""

from __future__ import annotations

import re
import unicodedata

MAX_EPITHET = 30
"""ICNCP: a cultivar epithet holds at most 30 characters (since 1996)."""

_SMALL = re.compile(
    r"an?|and|as|at|by|del?|de[rs]|du|for|from|im|in|la|les?|of|on|or|the|to|und|van|von|with", re.I
)


def plain_epithet(word: str) -> str:
    """The word in the letters of Latin: ligatures parted, accents gone (ICN Art. 60.7).

    >>> plain_epithet("idæus"), plain_epithet("aloë")
    ('idaeus', 'aloe')
    """
    parted = word.replace("æ", "ae").replace("œ", "oe")
    return "".join(c for c in unicodedata.normalize("NFKD", parted) if not unicodedata.combining(c))


def tidy_epithet(printed: str) -> str:
    """An epithet with single spaces, and in ordinary letters when it was all capitals."""
    words = " ".join(printed.replace("’", "'").replace("‘", "'").replace("`", "'").split()).strip(" ,;.")
    return title_case(words) if words.isupper() and len(words) > 3 and not re.search(r"\d", words) else words


def title_case(words: str) -> str:
    """Every word with a capital, as a person writes a title.

    >>> title_case("LILY OF THE VALLEY"), title_case("lamb's ear"), title_case("BLACK-EYED SUSAN")
    ('Lily of the Valley', "Lamb's Ear", 'Black-Eyed Susan')
    """
    out: list[str] = []
    for number, word in enumerate(words.lower().split(" ")):
        plain = number > 0 and _SMALL.fullmatch(word)
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
    return place > 0 and bool(_SMALL.fullmatch(part) or part in ("me", "not", "leaf", "s"))


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
