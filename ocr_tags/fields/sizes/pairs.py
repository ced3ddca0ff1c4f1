"""Two lengths in a row, height and then spread ("Size 3 ft x 2 ft"), and a length that no word explains."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.fact_rows import in_fact_row
from ocr_tags.fields.sizes.arrows import arrow_before
from ocr_tags.fields.sizes.beside import CROP, ITEM_START, LINE_START, SMALLEST, told_beside, wide_behind
from ocr_tags.fields.sizes.clauses import FOREIGN_BEFORE, FOREIGN_NOUN_AFTER, OPENS_FACT, is_row
from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.fields.sizes.crossed import is_plant, large_enough
from ocr_tags.measures.printed import Measure, parse_length
from ocr_tags.measures.quantities import METRIC
from ocr_tags.patterns import later
from ocr_tags.values import Length

LEAD = r"[ :.=?|)\]\-–—·•…_~*]*"
PAIR = 0.8
"""How sure two lengths without a word are height and spread: the trade prints them so, and pots by
their word (common practice, no source)."""
TIMES = later(r" ?(?:[x×/,&;]|\b(?:by|and)\b) ?", re.I)
SHARED_UNIT = later(rf"{LEAD}[\t\n]?{LEAD}(?P<first>\d[\d ./½¼¾–-]*?(?:to ?\d+)?) ?(?:[x×/]|\bby\b) ?", re.I)
"""The first of two lengths whose unit stands once, behind the second."""
ACROSS = later(r"\s?(?:[x×]|\bby\b)\s?", re.I)
OF_SIZE = later(r"\s?(?:[x×,;]|\bby\b)\s?", re.I)
_BESIDE = later(r" ?[/·•|] ?|[,;] | |(?<=m)\. ")
IN_PROSE = 0.72
BESIDE = 0.68
"""As `PAIR`, with a stroke or nothing but a blank between them."""
_STROKE = later(r"(?P<first>\d{2,3}) ?/ ?(?P<second>\d{2,3}) ?cm\.?", re.I)
_LINE_END = later(
    r"(?: \([^()\n]{3,24}\)| indoors(?:, ?\d[^\n]{0,24}(?:wild|nature|habitat)(?=\n|$))?)?"
    r"[ .]{0,2}(?:\n|$)"
)
_NEXT_FACT = later(r"[ .]{0,2}(?:[•·|/;+]|, )[ ]?(?=[^\W\d_]{2})")
_NEXT_STROKE = later(r"[ .]{0,2}[/|•·+] ")
_SENTENCE_START = later(r"[.!?;)][ \n]$")
_SENTENCE_END = later(r"(?:(?<=\.)|[.;]) ?(?:[ \n](?=[A-Z])|\n?$|\n\n)")
_ITEM_END = later(
    r",? (?:in time|eventually|in the end|at maturity|when mature|indoors|(?:if |when |left )?(?:un(?:pruned"
    r"|trimmed|clipped)"
    r"|alone|full(?:y|-)[ -]?grown|in the (?:ground|garden|open)|to grow))(?=[ .]{0,2}(?:[\n\t,;]|$))"
    r"|[ .]{0,2}(?:[\n\t]|$)| ?[;,/|•·+)]| ?(?:\.{2,}|…)"
    r"| ?[(\[](?i:h(?:eigh)?t? ?[x×/] ?(?:w|s|width|spread))[)\]]"
    r"|(?:(?<=\.)|\.) (?=[A-Z])|(?: in| after| at) (?:\d{1,2}|five|ten|twenty) y(?:ea)?rs?\b"
    r"| +(?=[Zz](?:ones?|n)?[ .:]{0,2}\d)"
)
_SECOND_LANGUAGE = later(r" ?[/|] ?\n?")
HEIGHT_THEN_SPREAD = ("height", "spread")


def two_lengths(
    tag: Measured, place: int, kinds: Sequence[str], start: int, sure: float, times: re.Pattern[str] = TIMES
) -> Iterator[Size]:
    """The lengths of "18/12 in", "18 in x 12 in" and "18/12 cm", of which the text at `start` consists."""
    measure, (one, other) = tag.measures[place], kinds
    if shared := SHARED_UNIT.fullmatch(tag.between(start, measure.span[0])):
        if first := parse_length(f"{shared['first'].strip()} {measure.unit}"):
            span = (start + shared.start("first"), measure.span[1])
            yield Size(one, replace(first, span=span), sure * 0.95)
            yield Size(other, measure, sure * 0.95)
        return
    if stroke := _STROKE.fullmatch(tag.text[slice(*measure.span)]):
        for kind, figure in ((one, stroke["first"]), (other, stroke["second"])):
            if each := parse_length(f"{figure} {measure.unit}"):
                yield Size(kind, replace(each, span=measure.span), sure * 0.95)
        return
    follower = tag.measures[place + 1] if place + 1 < len(tag.measures) else None
    if follower and times.fullmatch(tag.between(measure.span[1], follower.span[0])):
        tag.settled.add(place + 1)
        yield Size(one, measure, sure)
        yield Size(other, _limited_too(measure, follower), sure * follower.certainty)


def height_by_spread(
    tag: Measured, place: int, start: int, certainty: float, times: re.Pattern[str] = ACROSS
) -> list[Size]:
    """Two lengths with a cross between them, as every trade prints a plant's size: its height first."""
    if _STROKE.fullmatch(tag.text[slice(*tag.measures[place].span)]):
        return []
    return list(two_lengths(tag, place, HEIGHT_THEN_SPREAD, start, certainty, times))


def _limited_too(first: Measure, second: Measure) -> Measure:
    """ "To 3 ft x 2 ft" limits both."""
    length = second.length
    if first.length.min_cm is None and length.min_cm == length.max_cm:
        return replace(second, length=Length(None, length.max_cm))
    return second


def says_again(tag: Measured, place: int) -> bool:
    """Whether a length is the one before it in a second language: "45-60cm / 45 bis 60cm"."""
    if place - 1 not in tag.settled:
        return False
    earlier, measure = tag.measures[place - 1], tag.measures[place]
    parted = _SECOND_LANGUAGE.fullmatch(tag.between(earlier.span[1], measure.span[0]))
    return bool(parted) and earlier.length == measure.length


def unexplained(tag: Measured, found: Sequence[Size]) -> Iterator[Size]:
    """A size without any word, on a tag that says no height or spread elsewhere; never quite sure.

    "24 in x 18 in" in a line of its own, or between the strokes of a list of facts, is height and spread.
    The only length of a text is the height when it is a range or metric in a line of its own ("20-30 cm"),
    or one of a list of facts ("3 ft / full sun").
    """
    known = {size.kind for size in found}
    open_places = [place for place in range(len(tag.measures)) if _is_open(tag, place)]
    if "height" in known:
        yield from wide_behind(tag, open_places, found)
        return
    if told := [size for place in open_places for size in told_beside(tag, place, found)]:
        yield from told if len(told) == 1 else ()
        return
    crop = CROP.search(tag.text) and "spacing" not in known
    # else as likely how far apart plants and rows stand
    pairs = [] if crop else [size for place in open_places for size in _lone_pair(tag, place)]
    if {size.measure.span for size in pairs} & {size.measure.span for size in found}:
        pairs = []  # a word says what one of the two is
    if len(pairs) == 2:
        yield from pairs if "spread" not in known else ()
    elif any(not x.weak and x not in tag.spent for x in tag.labels):
        return
    elif len(open_places) == 2 and not crop:
        yield from _two_rows(tag, *open_places)
    elif len(open_places) == 1:
        measure = tag.measures[open_places[0]]
        low, high = measure.length.min_cm, measure.length.max_cm
        row = in_fact_row(tag.text, *measure.span, others=2)
        if high is None or (low or (high if row else 0)) < SMALLEST or high < 2 * SMALLEST:
            return
        alone = "spread" not in known and _of_line(tag.text, measure)
        if row or ("/" not in tag.text[slice(*measure.span)] and (_of_list(tag.text, measure) or alone)):
            yield Size("height", measure, (0.5 if CROP.search(tag.text) else 0.65) * measure.certainty)


def _two_rows(tag: Measured, upper: int, lower: int) -> Iterator[Size]:
    """Two lengths in a row each, one right below the other: the first is the height. The second may be the
    spread or the spacing; so much wider than high are only plants that cover the ground."""
    one, other = tag.measures[upper], tag.measures[lower]
    if tag.text[one.span[1] : other.span[0]] != "\n" or not is_row(tag.text, one.span[0], other.span[1]):
        return
    ends = [x.length for x in (one, other) if x.length.min_cm and x.length.max_cm]
    if len(ends) != 2 or (ends[0].min_cm or 0) < 10 or (ends[1].max_cm or 0) < 2 * SMALLEST:
        return
    yield Size("height", one, 0.62 * one.certainty)
    if (ends[1].min_cm or 0) >= 4 * (ends[0].max_cm or 0):
        yield Size("spread", other, 0.6 * other.certainty)


def _is_open(tag: Measured, place: int) -> bool:
    """Whether no word says what a length is; "Pot 12 cm" says it."""
    start, end = tag.measures[place].span
    foreign = FOREIGN_BEFORE.search(tag.text[:start]) or FOREIGN_NOUN_AFTER.match(tag.text, end)
    return place not in tag.settled and not foreign


def _of_line(text: str, measure: Measure) -> bool:
    """A range or a metric length that is its whole line; "12 in" alone may be a pot."""
    range_or_metric = measure.length.min_cm != measure.length.max_cm or measure.unit in METRIC
    range_or_metric = range_or_metric or (measure.unit == "ft" and (measure.length.min_cm or 0) >= _PACES)
    opens, closes = LINE_START.search(text, 0, measure.span[0]), _LINE_END.match(text, measure.span[1])
    return bool(opens and closes and range_or_metric)


_PACES = 60.0
"""In cm; no pot and no flower is told in so many feet."""


def _of_list(text: str, measure: Measure) -> bool:
    """One of several facts between strokes or dots, or between full stops."""
    start, end = measure.span
    next_stroke = _NEXT_STROKE.match(text, end)
    if LINE_START.search(text, 0, start) and (next_stroke or _NEXT_FACT.match(text, end)):
        return True
    if OPENS_FACT.search(text, 0, start) and (next_stroke or _LINE_END.match(text, end)):
        return True
    plain = measure.length.min_cm != measure.length.max_cm or measure.unit in {"cm", "m", "ft"}
    return bool(plain and _SENTENCE_START.search(text, 0, start) and _SENTENCE_END.match(text, end))


def _lone_pair(tag: Measured, place: int) -> list[Size]:
    """Height and spread, if the two lengths from this one on are their whole line or item of a list, or
    stand with a cross between them in a sentence of the plant."""
    if sizes := _item(tag, place):
        return sizes
    sizes = height_by_spread(tag, place, tag.measures[place].span[0], IN_PROSE)
    return sizes if len(sizes) == 2 and is_plant(tag.text, *(size.measure for size in sizes)) else []


def _item(tag: Measured, place: int) -> list[Size]:
    first = tag.measures[place].span[0]
    start = max(match.end() for match in ITEM_START.finditer(tag.text, 0, first + 1))
    sizes = height_by_spread(tag, place, start, PAIR)
    if not sizes and not _STROKE.fullmatch(tag.text[slice(*tag.measures[place].span)]):
        sizes = list(two_lengths(tag, place, HEIGHT_THEN_SPREAD, start, BESIDE, _BESIDE))
    if len(sizes) != 2:
        return []
    one, other = (size.measure for size in sizes)
    if one.span[0] != start and not in_fact_row(tag.text, one.span[0], other.span[1], others=2):
        return []
    if one.length == other.length and "/" in tag.text[one.span[1] : other.span[0]]:
        return []  # one length in two languages
    if "\t" in tag.text[one.span[1] : other.span[0]] and any(
        {"height", "spread"} & {*x.kinds} for x in tag.labels
    ):
        return []  # a row of a table whose heads are elsewhere
    ends = tag.text[other.span[1] - 1] == "." or _ITEM_END.match(tag.text, other.span[1])
    return sizes if ends and large_enough(one, other) else []


def beside_arrow(tag: Measured, place: int, measure: Measure) -> tuple[tuple[str, ...], float]:
    """A length alone in its line, right above or below one with a drawn arrow, is the other of the two."""
    for near in (place - 1, place + 1) if is_row(tag.text, *measure.span) else ():
        other = tag.measures[near] if 0 <= near < len(tag.measures) else None
        arrow = arrow_before(tag.text, other.span[0]) if other else None
        if other is None or arrow is None or not is_row(tag.text, arrow[1], other.span[1]):
            continue
        upper, lower = (other.span[1], measure.span[0]) if near < place else (measure.span[1], arrow[1])
        if tag.text[upper:lower] == "\n" and arrow[0] in _OTHER_ARROW:
            return (_OTHER_ARROW[arrow[0]],), 0.5
    return (), 0.0


_OTHER_ARROW = {"↔": "height", "↕": "spread"}
