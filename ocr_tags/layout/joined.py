"""What a reader ran together though print sets it apart: a label in bold letters and its value behind it
("LightPart shade"), a value and the label of the next column ("3'Type", "Full sun  Moisture")."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ocr_tags.layout.lines import Line, halves
from ocr_tags.layout.reading_order import IsLabel
from ocr_tags.patterns import later
from ocr_tags.record import Word

_BEHIND_LABEL = later(
    r"(?<=[a-zß-ÿ])(?=[A-ZÀ-Þ])|(?<=[A-ZÀ-Þ]{3})(?=[A-ZÀ-Þ][a-zß-ÿ])|(?<=[a-zß-ÿ]\.)(?=[A-ZÀ-Þ\d])"
)
_BEFORE_LABEL = later(r"(?<=[\d'’′\"”″])(?=[A-ZÀ-Þ][a-zß-ÿ]{2}|[A-ZÀ-Þ]{4})")
LARGE = 1.5
"""Lines of so many times the usual letter height are names, which may hold capitals: they are left alone."""

LOOSE = 0.7
"""A gap of so many letter heights is no space between words; before a label it parts columns."""


def set_apart(lines: Iterable[Line], usual: float, is_label: IsLabel) -> list[Line]:
    """The lines with labels parted from what runs into them; `usual` is this side's usual letter height."""
    return [
        part for line in lines for part in (_apart(line, is_label) if line.height < LARGE * usual else [line])
    ]


def _apart(line: Line, is_label: IsLabel) -> Iterator[Line]:
    for number, word in enumerate(line.words):
        if cut := _cut_behind_label(line.words, number, is_label):
            yield Line((*line.words[:number], *halves(word, cut), *line.words[number + 1 :]))
            return
        if number and _begins_column(line, number, is_label):
            yield Line(line.words[:number])
            yield Line(line.words[number:])
            return
        if cut := _cut_before_label(line.words, number, is_label):
            value, label = halves(word, cut)
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
