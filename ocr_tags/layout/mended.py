"""Small signs that readers mangle, put right before lines are put in order: a raised ™ read as letters, a bar
between label and value read as a letter or run into the value, a unit that a gap parts from its figure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from ocr_tags.layout.lines import Line, halves
from ocr_tags.layout.reading_order import IsLabel, level
from ocr_tags.patterns import later
from ocr_tags.record import Word

_RAISED = later(r"(?:(?<=[a-zß-ÿ])|(?<=[A-ZÀ-Þ]{4}))TM$")
_ONE = later(r"^[lI|](?=[-–—]\d)")
"""The first figure of a range, read as a letter."""
_SIGN = later(r"™|®|TM")
_UNIT = later(r"(?:mm|cm|m|in|ft)[.,]?")
FEWEST_BARS = 2
MOST_GAP = 3.0
"""In letter heights: a unit stands no further behind its figure."""

Belongs = Callable[[Line, Line], bool]
"""Whether the second line is a rest of the first, which a gap has parted from it."""


def mended(lines: Iterable[Line], is_label: IsLabel) -> list[Line]:
    """The lines with their small signs as printed, and a colon for the bar between a label and its value."""
    marked = [Line(tuple(map(_with_sign, line.words))) for line in lines]
    named = _put_behind(marked, _SIGN, _raised_behind)
    return _with_colons(_put_behind(named, _UNIT, _ends_before), is_label)


def _put_behind(lines: Sequence[Line], alone: re.Pattern[str], belongs: Belongs) -> list[Line]:
    """The lines, each that is `alone` what the pattern says put behind the nearest it belongs to."""
    rests = [line for line in lines if alone.fullmatch(line.text)]
    kept = [line for line in lines if not any(line is rest for rest in rests)]
    for rest in rests:
        before = [line for line in kept if belongs(line, rest)]
        nearest = max(before, key=lambda line: line.place.right, default=None)
        if nearest is None:
            kept.append(rest)
        else:
            behind = (replace(word, text=word.text.replace("TM", "™")) for word in rest.words)
            kept[kept.index(nearest)] = Line((*nearest.words, *behind))
    return kept


def _raised_behind(line: Line, sign: Line) -> bool:
    gap, middle = sign.place.x - line.place.right, sign.place.y + sign.place.h / 2
    level_with = line.place.y - line.height / 2 < middle < line.place.bottom
    return level_with and -0.5 * line.height < gap < line.height and sign.height < line.height


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
        return halves(word, 1)
    before, rest = halves(word, at)
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


def _ends_before(line: Line, unit: Line) -> bool:
    gap = unit.place.x - line.place.right
    return 0 <= gap < MOST_GAP * line.height and line.text[-1:].isdigit() and level(line, unit)


def _with_sign(word: Word) -> Word:
    text = _ONE.sub("1", _RAISED.sub("™", word.text))
    return word if text == word.text else replace(word, text=text)
