"""Words of one reading as level lines, parted at wide gaps."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from statistics import median

from ocr_tags.record import Box, Word

WIDE_GAP = 1.3
"""A gap of more letter heights than this parts a line in two (columns, leader dots)."""
FEW_LETTERS, UPRIGHT = 3, 1.5
TOWERING = 1.6
"""A word's box of more letter heights holds specks of other lines beside its letters."""


@dataclass(frozen=True)
class Line:
    """A level run of words of one reading, with no wide gap inside; never empty."""

    words: tuple[Word, ...]

    @cached_property
    def place(self) -> Box:
        """Where it stands: a word whose box runs into the lines above or below says nothing of how high."""
        whole = self._whole
        low = [word for word in self.words if word.place.h <= TOWERING * self.height]
        if self.upright or not low:
            return whole
        level = Box.around(word.place for word in low)
        return Box(whole.x, level.y, whole.w, level.h)

    @cached_property
    def _whole(self) -> Box:
        return Box.around(word.place for word in self.words)

    @cached_property
    def text(self) -> str:
        return " ".join(word.text for word in self.words)

    @cached_property
    def upright(self) -> bool:
        """Whether it runs up or down the tag: a few letters in a box taller than letters side by side are."""
        letters = sum(len(word.text) for word in self.words)
        return letters > FEW_LETTERS and self._whole.h > UPRIGHT * self._whole.w

    @cached_property
    def height(self) -> float:
        """Letter height in picture pixels: the usual height of the words, short marks left out."""
        tall = [word for word in self.words if any(c.isalnum() for c in word.text)]
        return float(median(word.place.w if self.upright else word.place.h for word in tall or self.words))

    @cached_property
    def confidence(self) -> float:
        """Mean confidence of the words, weighted by their length."""
        letters = sum(len(word.text) for word in self.words)
        return sum(word.confidence * len(word.text) for word in self.words) / max(letters, 1)

    @cached_property
    def weight(self) -> float:
        """How much was read here, and how surely: decides between readings of one place."""
        return sum((word.confidence**2) * sum(c.isalnum() for c in word.text) for word in self.words)


def split_wide(words: Sequence[Word]) -> Iterator[Line]:
    """The words of one printed line, parted where a column gap stands between them.

    Those of a line up the side of a tag stay as they were read.
    """
    if not words:
        return
    upright = Line(tuple(words)).upright
    ordered = words if upright else sorted(words, key=lambda word: word.place.x)
    height = Line(tuple(ordered)).height
    run = [ordered[0]]
    for word in ordered[1:]:
        if not upright and word.place.x - run[-1].place.right > WIDE_GAP * max(height, 1.0):
            yield Line(tuple(run))
            run = []
        run.append(word)
    yield Line(tuple(run))


def halves(word: Word, cut: int) -> tuple[Word, Word]:
    """The word in two. Each keeps the whole box on the photo, where the print may lie at any angle."""
    wide = round(word.place.w * cut / len(word.text))
    left = Box(word.place.x, word.place.y, wide, word.place.h)
    right = Box(left.right, word.place.y, word.place.w - wide, word.place.h)
    return replace(word, text=word.text[:cut], place=left), replace(word, text=word.text[cut:], place=right)
