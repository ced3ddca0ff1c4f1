"""The series a plant is sold in, where a word for it tells: the X series, part of the X collection.

How series are printed is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from ocr_tags.fields.makers import written
from ocr_tags.fields.series.beside import CAP, MANY_LAST, MARKED, beside_names, is_plain, is_shelf
from ocr_tags.names import lexicon
from ocr_tags.names.series_words import SERIES_AFTER, SERIES_BEFORE, SERIES_NAMED, SERIES_OF_KIND
from ocr_tags.names.titles import Line, is_noise, known_beginning, lines_of
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

NAMED = 0.9

_RANGE = r"(?:series|strain|range|collection|line|family|bunch|gang|crew|group|club)"
_TOLD = (
    later(
        rf"\b(?:[Tt]he|[Oo]ur"
        rf"|THE)\s(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,2}})\s?[™®]?\s(?:strain|range|series)(?=[\s.,;]|$)"
    ),
    later(
        rf"\b(?:[Pp]art of|[Mm]ember of|[Oo]ne of|[Jj]oins?|[Aa]nother of)\s(?:the|our)\s"
        rf"(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,2}})\s?[™®]?\s{_RANGE}(?=[\s.,;:]|$)"
    ),
    later(
        rf"(?<=[™®])\s(?:of|from)\s(?:the|our)\s(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,2}}?)"
        rf"\s(?i:{_RANGE})(?=\W*(?:\n|$))"
    ),
    later(
        rf"\b(?:[Aa]lso|[Mm]ore|[Oo]thers?|ALSO|MORE)\s(?:available\s)?(?:in|from|IN"
        rf"|FROM)\s(?:(?:the|our)\s)?"
        rf"(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,2}})(?:\s?[™®])?(?:\s{_RANGE})?\s?:",
    ),
    later(rf"(?:^|(?<=\n))(?P<name>{CAP}(?:[ ]{CAP}){{0,2}})\s?[™®]\n(?:[Ss]eries|SERIES)(?=\W*(?:\n|$))"),
    later(rf"(?<!\w)(?P<name>{CAP}(?:[ ]{CAP}){{0,2}})\s?[™®]\s(?:plants|varieties|colou?rs)\b"),
)
"""Sentences that name a range: the X strain, part of the X family, also in X: …"""
_OWN_LINE = later(
    rf"^\W*(?P<name>(?:The )?{CAP}(?:[ ](?:& )?{CAP}){{0,2}})(?:\s?[™®])?\s(?:Collection"
    rf"|COLLECTION|Range|RANGE|Strain"
    r"|STRAIN|Family|FAMILY|collection|range|strain)(?=\W*$|\s?[·•|])"
)

_BEFORE = later(r"^(?:Collection|The|THE|From|In|Our|This|A|S[ée]rie)\s+(?:(?:the|our)\s+)?")


def read_series(tag: TagText) -> Iterator[Found[str]]:
    """The series the plant is sold in, without the plant's own name.

    >>> [found.value for found in read_series(TagText("Petunia Tidewater™ Series"))]
    ['Tidewater']
    """
    lines = lines_of(tag)
    told = list(_called_so(lines))
    told += [one for one in _in_sentences(tag.string) if one.value not in {other.value for other in told}]
    yield from told
    if not told:
        yield from map(_without_genus, beside_names(tag, lines))


def _without_genus(found: Found[str]) -> Found[str]:
    """A series without the genus or the plant's name of several words that may open its line:
    "Petunia Tidewick™ Apricot", "Ivy Geranium Tidewick™"."""
    words = found.value.split()
    count = known_beginning(words)
    name = " ".join(words[count if count > 1 else 1 :])
    if not name or not (count > 1 or lexicon.is_genus(words[0])):
        return found
    return replace(found, value=name, span=(found.span[1] - len(name), found.span[1]))


def _called_so(lines: tuple[Line, ...]) -> Iterator[Found[str]]:
    """What the word series, or one like it, stands beside."""
    for line in lines:
        match = SERIES_BEFORE.search(line.text) or SERIES_AFTER.search(line.text)
        if match is None and (kind := SERIES_OF_KIND.search(line.text)):
            match = kind
        if match is None and (named := SERIES_NAMED.search(line.text)):
            match = None if is_plain(named["name"]) else named
        if match is None and (own := _OWN_LINE.search(line.text)) and _may_own(own["name"]):
            match = own
        if match is None:
            continue
        name = re.sub(
            r"^(?:Collection|The|THE|From|In|Our|This|A|S[ée]rie)\s+(?:(?:the|our)\s+)?", "", match["name"]
        )
        words = name.rstrip("'’").split()
        while len(words) > 1 and lexicon.plants_called(words[0]):
            words = words[1:]
        name = " ".join(words)
        if not name or name.lower() in ("the", "this", "our", "new", "a"):
            continue
        start = line.start + line.text.rindex(name, 0, match.end("name"))
        name = _SIGN.sub("", name)
        yield Found(written(name), (start, start + len(name)), NAMED)


_SIGN = later(r"(?<=[A-ZÀ-Þ]{3})TM$")
"""A raised sign, read as letters of a name in capitals: no such word ends so."""


def _may_own(name: str) -> bool:
    return not is_plain(name) or (" " in name and MANY_LAST.search(name) is not None)


def _in_sentences(string: str) -> Iterator[Found[str]]:
    for pattern in _TOLD:
        for match in pattern.finditer(string):
            name = " ".join(match["name"].split())
            if "\n\n" in match[0] or "\t" in match[0] or is_noise(name) or is_shelf(name):
                continue
            if not lexicon.plants_called(name) and not lexicon.is_genus(name.split()[0]):
                yield Found(written(name), match.span("name"), MARKED)
