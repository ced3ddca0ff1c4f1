"""What a reader ran together though print sets it apart: a label in bold letters and its value behind it
("LightPart shade"), a value and the label of the next column ("3'Type", "Full sun  Moisture"). And the one
thing that a gap parts though print does not: a figure from its unit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import IsLabel, level
from ocr_tags.patterns import later
from ocr_tags.record import Box, Word

_BEHIND_LABEL = later(
    r"(?<=[a-zß-ÿ])(?=[A-ZÀ-Þ])|(?<=[A-ZÀ-Þ]{3})(?=[A-ZÀ-Þ][a-zß-ÿ])|(?<=[a-zß-ÿ]\.)(?=[A-ZÀ-Þ\d])"
)
_BEFORE_LABEL = later(r"(?<=[\d'’′\"”″])(?=[A-ZÀ-Þ][a-zß-ÿ]{2}|[A-ZÀ-Þ]{4})")
_RAISED = later(r"(?<=[a-zß-ÿ])TM$")
"""A raised sign, read as letters."""
_UNIT = later(r"(?:mm|cm|m|in|ft)[.,]?")
FEWEST_BARS = 2
MOST_GAP = 3.0
"""In letter heights: a unit stands no further behind its figure."""
LARGE = 1.5
"""Lines of so many times the usual letter height are names, which may hold capitals: they are left alone."""

LOOSE = 0.7
"""A gap of so many letter heights is no space between words; before a label it parts columns."""


def set_apart(lines: Iterable[Line], usual: float, is_label: IsLabel) -> list[Line]:
    """The lines with labels parted from what runs into them; `usual` is this side's usual letter height."""
    marked = _with_units([Line(tuple(map(_with_sign, line.words))) for line in lines])
    marked = _with_colons(marked, is_label)
    return [
        part
        for line in marked
        for part in (_apart(line, is_label) if line.height < LARGE * usual else [line])
    ]


def _with_colons(lines: Sequence[Line], is_label: IsLabel) -> list[Line]:
    """The lines, with a colon for the bar that parts labels from values ("SPREAD |18 in"), where several have
    one; a bar is often read as a letter, and run into the value."""
    parted = [Line(tuple(part for word in line.words for part in _off_bar(word))) for line in lines]
    bars = {number: at for number, line in enumerate(parted) if (at := _bar_at(line, "|", is_label))}
    if len(bars) < FEWEST_BARS:
        return list(lines)
    like = {number: at for number, line in enumerate(parted) if (at := _bar_at(line, "Il1", is_label))}
    found = {**like, **bars}
    return [
        _with_colon(line, found[number]) if number in found else whole
        for number, (line, whole) in enumerate(zip(parted, lines, strict=True))
    ]


def _with_colon(line: Line, bar: int) -> Line:
    last = line.words[bar - 1]
    return Line((*line.words[: bar - 1], replace(last, text=f"{last.text}:"), *line.words[bar + 1 :]))


def _off_bar(word: Word) -> tuple[Word, ...]:
    """The word, a bar in it as a word by itself."""
    at = word.text.find("|")
    if at < 0 or len(word.text) == 1:
        return (word,)
    if at == 0:
        return _halves(word, 1)
    before, rest = _halves(word, at)
    return before, *_off_bar(rest)


def _bar_at(line: Line, signs: str, is_label: IsLabel) -> int:
    """Which word is a bar behind the label that opens the line, before no other label; 0 where none is."""
    texts = [word.text for word in line.words]
    return next(
        (
            at
            for at in range(1, len(texts))
            if len(texts[at]) == 1
            and texts[at] in signs
            and is_label(" ".join(texts[:at]))
            and not is_label(" ".join(texts[at + 1 :]))
        ),
        0,
    )


def _with_units(lines: Sequence[Line]) -> list[Line]:
    """The lines, each unit that stands alone put behind the figure that ends level with it."""
    units = [line for line in lines if _UNIT.fullmatch(line.text)]
    kept = [line for line in lines if not any(line is unit for unit in units)]
    for unit in units:
        before = [line for line in kept if _ends_before(line, unit)]
        nearest = max(before, key=lambda line: line.place.right, default=None)
        if nearest is None:
            kept.append(unit)
        else:
            kept[kept.index(nearest)] = Line((*nearest.words, *unit.words))
    return kept


def _ends_before(line: Line, unit: Line) -> bool:
    gap = unit.place.x - line.place.right
    return 0 <= gap < MOST_GAP * line.height and line.text[-1:].isdigit() and level(line, unit)


def _with_sign(word: Word) -> Word:
    return replace(word, text=_RAISED.sub("™", word.text)) if word.text.endswith("TM") else word


def _apart(line: Line, is_label: IsLabel) -> Iterator[Line]:
    for number, word in enumerate(line.words):
        if cut := _cut_behind_label(line.words, number, is_label):
            yield Line((*line.words[:number], *_halves(word, cut), *line.words[number + 1 :]))
            return
        if number and _begins_column(line, number, is_label):
            yield Line(line.words[:number])
            yield Line(line.words[number:])
            return
        if cut := _cut_before_label(line.words, number, is_label):
            value, label = _halves(word, cut)
            yield Line((*line.words[:number], value))
            yield Line((label, *line.words[number + 1 :]))
            return
    yield line


def _cut_behind_label(words: tuple[Word, ...], number: int, is_label: IsLabel) -> int:
    """After how many letters of this word the label ends with which the line begins; 0 when it does not."""
    text, before = words[number].text, [word.text for word in words[:number]]
    cuts = (gap.start() for gap in _BEHIND_LABEL.finditer(text))
    return next((at for at in cuts if is_label(" ".join([*before, text[:at]]))), 0)


def _begins_column(line: Line, number: int, is_label: IsLabel) -> bool:
    """Whether a wide gap parts this word, and a label that fills the rest of the line, from a value in words.

    Behind a figure the word may be that figure's own label: "18 in  Height".
    """
    before, word = line.words[number - 1 : number + 1]
    texts = [each.text for each in line.words]
    return (
        word.place.x - before.place.right > LOOSE * line.height
        and not line.upright
        and not any(map(str.isdigit, "".join(texts[:number])))
        and is_label(" ".join(texts[number:]))
        and not is_label(line.text)
    )


def _cut_before_label(words: tuple[Word, ...], number: int, is_label: IsLabel) -> int:
    """After how many letters of this word the label begins that fills the rest of the line; 0 for none."""
    text, behind = words[number].text, [word.text for word in words[number + 1 :]]
    cuts = (gap.start() for gap in _BEFORE_LABEL.finditer(text))
    return next((at for at in cuts if is_label(" ".join([text[at:], *behind]))), 0)


def _halves(word: Word, cut: int) -> tuple[Word, Word]:
    """The word in two. Each keeps the whole box on the photo, where the print may lie at any angle."""
    wide = round(word.place.w * cut / len(word.text))
    left = Box(word.place.x, word.place.y, wide, word.place.h)
    right = Box(left.right, word.place.y, word.place.w - wide, word.place.h)
    return replace(word, text=word.text[:cut], place=left), replace(word, text=word.text[cut:], place=right)
