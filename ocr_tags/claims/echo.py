"""Whether an engine that did not find a value read the same letters where another engine found it.

What one engine finds and the other does not may be misread, or read alike and laid out otherwise: the letters
tell which.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rapidfuzz import fuzz

from ocr_tags.record import TagText, Word

COVERED = 0.4
"""The share of the smaller of two words that lies on the other where both are one print."""


def letters_again(words: Sequence[Word], others: Iterable[TagText]) -> float:
    """How alike the letters are, 0 to 1, that another engine's texts have where these words stand."""
    wanted = _letters(words)
    found = {
        _letters([span.word for span in text.words if any(_one_print(span.word, word) for word in words)])
        for text in others
    }
    return max((fuzz.ratio(wanted, letters) / 100 for letters in found if letters), default=0.0)


def _letters(words: Iterable[Word]) -> str:
    return "".join(c for word in words for c in word.text.casefold() if c.isalnum())


def _one_print(a: Word, b: Word) -> bool:
    return a.place.shared(b.place) > COVERED * min(a.place.w * a.place.h, b.place.w * b.place.h)
