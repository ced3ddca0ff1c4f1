"""When a plant blooms: the words as printed, the seasons they name, the months they span.

Seasons travel, dates do not: "summer" is June to August in the north and December to February in the
south (meteorological seasons, U.S. National Centers for Environmental Information), so a season is never
turned into months. "Until frost" stays in the words: where it falls depends on the place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from ocr_tags.fields.bloom.chains import bloom_of, chains_of, start_of
from ocr_tags.fields.bloom.colours import is_of_crop
from ocr_tags.fields.bloom.ends import CELL_END, TORN, is_torn
from ocr_tags.fields.bloom.flowers import (
    LINKED,
    before_flowers,
    clause_before,
    of_flowers,
    opens_with_colours,
    opens_with_flowers,
)
from ocr_tags.fields.bloom.frost import lasts_to_frost, read_open
from ocr_tags.fields.bloom.numbers import LABELS, read_numbers
from ocr_tags.fields.bloom.words import (
    BEGUN_ABOVE,
    CHORE,
    COVERED,
    HANGING,
    HANGS_ABOVE,
    LABEL_APART,
    LEAD,
    MODAL,
    NOT_TIME,
    OTHER_TIME,
    RANGE,
    REVERSE,
    SHOWN,
    TERMS,
    VERB,
    WITH_FLOWERS,
    Chain,
    Term,
)
from ocr_tags.fields.colours.words import colour_list
from ocr_tags.fields.fact_rows import all_facts, in_fact_row
from ocr_tags.fields.phrases import fold
from ocr_tags.fields.values import SECOND_LANGUAGE, Labelled, labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Bloom


def read_bloom(tag: TagText) -> Iterator[Found[Bloom]]:
    """Each statement of bloom time.

    >>> [found.value for found in read_bloom(TagText("Blooms June to August"))]
    [Bloom(text='June to August', seasons=(), months=(6, 7, 8))]
    >>> list(read_bloom(TagText("Plant in spring. Prune after bloom in fall.")))
    []
    """
    text = tag.string
    folded = fold(text)
    after = {found.start: found for found in labelled(text, LABELS)}
    told: list[Chain] = []
    for chain, anchor in chains_of(text):
        certainty = _certainty(text, chain, anchor, after)
        if chain[0].value.foreign and (chain[0].start != anchor or _says_again(text, told, chain)):
            continue  # says again what stands before it
        if certainty and (bloom := bloom_of(text, chain)):
            told.append(chain)
            yield from _whole(text, chain, Found(bloom, (start_of(folded, chain), chain[-1].end), certainty))
    if not told:
        yield from _unlabelled(text)
    yield from read_numbers(text)
    yield from read_open(text)


def _says_again(text: str, told: list[Chain], chain: Chain) -> bool:
    """Whether words of another language on this line have told the time already."""
    line = text.rfind("\n", 0, chain[0].start)
    return any(other[0].start > line and not other[0].value.foreign for other in told)


def _whole(text: str, chain: Chain, found: Found[Bloom]) -> Iterator[Found[Bloom]]:
    """What was found, when it does not break off where no time ends: "early spring to mid".

    Behind it another language may fill the line: then its last word opens the next, or it is not read.
    """
    if not _is_part(chain[-1].value):
        if is_torn(text, chain):
            found = replace(found, certainty=TORN * found.certainty)
        yield found
        return
    rest, _, following = text[chain[-1].end :].partition("\n")
    again = next(iter(TERMS.find(rest)), None)
    if again and again.start <= 1 and again.value.foreign and (bloom := bloom_of(text, chain[:-1])):
        yield replace(found, value=bloom, span=(found.span[0], chain[-2].end))  # "late", of "late lente"
        return
    end = next(iter(TERMS.find(following)), None)
    if not end or end.start or end.value.part or end.value.foreign or not _BAR.match(rest):
        return
    if not (end.value.month or following[0].islower()) or not CELL_END.match(following, end.end):
        return
    printed = f"{found.value.text} {following[: end.end]}"
    chains = [parts for parts, _ in chains_of(printed)]
    bloom = bloom_of(printed, chains[0]) if len(chains) == 1 else None
    if bloom:
        yield Found(bloom, found.span, 0.9 * found.certainty)


_BAR = later(r" ?[|/•·] ?[^\W\d_]")


def _is_part(term: Term) -> bool:
    return bool(term.part and not term.season and not term.month)


def _unlabelled(text: str) -> Iterator[Found[Bloom]]:
    """ "Midsummer - early fall" alone in its cell, its label a picture."""
    folded = fold(text)
    alone = [
        chain for chain, anchor in chains_of(text) if anchor == chain[0].start and _stands_alone(text, chain)
    ]
    if not alone or any(chain[0].value.month != alone[0][0].value.month for chain in alone[1:]):
        return
    ranged = RANGE.search(folded, alone[0][0].end, alone[0][-1].start)
    if not (ranged or _is_listed(text, alone[0])):
        return
    if any(_told(folded, chain) != _told(folded, alone[0]) for chain in alone[1:]):
        return
    before = folded[max(0, alone[0][0].start - 60) : alone[0][0].start]
    bloom = bloom_of(text, alone[0])
    if bloom and not OTHER_TIME.search(before) and not LABEL_APART.search(folded):
        sure = min(hit.certainty for hit in alone[0])
        yield Found(bloom, (alone[0][0].start, alone[0][-1].end), (0.8 if ranged else 0.65) * sure)


def _is_listed(text: str, chain: Chain) -> bool:
    """Whether a time without an end is still one fact of several: neighbouring months, or a line among facts.

    "May, June." says as much as "May-June"; one month or season in its line, as much as the height above it.
    """
    months = [hit.value.month for hit in chain]
    if len(months) > 1 and all(months):
        return all((other - one) % 12 <= 1 for one, other in pairwise(months))
    begin, end = text.rfind("\n", 0, chain[0].start) + 1, chain[-1].end
    beside = text[begin - 1 if begin else 0 :].strip("\n")
    above = text[: max(begin - 1, 0)].rpartition("\n")[2]
    below = text[end:].partition("\n")[2].partition("\n")[0]
    whole = text[begin:end] == text[chain[0].start : end] and _LINE_ENDS.match(text, end)
    return bool(whole and beside) and (all_facts(above) or all_facts(below))


def _told(folded: str, chain: Chain) -> tuple[tuple[int, ...], tuple[str, ...]] | None:
    """The months and seasons of a time, which are the same in every language of a tag."""
    bloom = bloom_of(folded, chain)
    return (bloom.months, bloom.seasons) if bloom else None


_LINE_ENDS = later(r" ?(?:\n|$)")


def _stands_alone(text: str, chain: Chain) -> bool:
    """Whether nothing in its sentence explains a time: in a cell, a sentence, or among facts it is all."""
    start, end = chain[0].start, chain[-1].end
    above = text[:start].rpartition("\n")[0].rpartition("\n")[2]
    if _ABBREVIATED.search(fold(text), 0, start):
        return False
    if text[start - 1 : start] == "\n" and LINKED.search(fold(above)):
        return False  # "food every two weeks from" and "May to July" below
    months = chain[0].value.month and chain[-1].value.month
    lasts = len(chain) > 1 and bool(RANGE.search(fold(text), chain[0].end, chain[-1].start))
    lasts = lasts and not is_of_crop(fold(text))
    sentence = (months or lasts) and _SENTENCE_ENDS.search(text[:start]) and _SENTENCE_CLOSES.match(text, end)
    return _is_cell(text, chain) or bool(sentence) or (len(chain) > 1 and in_fact_row(text, start, end))


_ABBREVIATED = later(r"\b(?:mo|mos|mthly|wk|wks|wkly|fert|x)\. \Z")
"""Before the months of feeding, a stop that ends no sentence: "Mo. Apr-Sep"."""
_SENTENCE_ENDS = later(r"(?:^|[\n\t]|[.!?;] )\Z")
_SENTENCE_CLOSES = later(
    r"(?:\.(?= [A-Z\d]|\n|$)|,(?= (?:in )?(?:its|the|their) (?:first|second|third) (?:year|season|summer))"
    r"|,(?= (?:in )?(?:its|the|their) (?:first|second|third)\n)|, again\b|;|,(?= \d)"
    r"| without (?:dead-?heading|a (?:break|pause|rest)"
    r"|stopping|pause)\b"
    r"| if (?:d.?headed|dead-?headed|cut back|sheared|picked)"
    r"|(?=\n[A-Z]))"
)


_WHEN = later(r"(?:^|(?<=[\n\t]))when(?: does it flower| to look)?(?: ?[:?]\s?|[\t\n])\Z", re.I)
"""On a tag that asks "When?", its time stands alone behind the question."""


def _is_cell(text: str, chain: Chain) -> bool:
    before = _WHEN.sub("\n", text[: chain[0].start]).rstrip(" ✿*-")
    after = text[chain[-1].end :].lstrip(" .")
    ends = ("", "\n", "\t", "•", "·", "|", "—")
    rest = re.split(r"[\n\t•·|—]", after)[0]
    closed = after[:1] in ends or (after[:1] == "," and opens_with_colours(fold(rest[1:])))
    return before[-1:] in ends and closed


def _certainty(text: str, chain: Chain, start: int, after: dict[int, Labelled]) -> float:
    """How sure it is that this time is the bloom time; 0 when it is another time, or no time."""
    folded, end = fold(text), chain[-1].end
    sure = min(hit.certainty for hit in chain)
    before = folded[max(0, start - 90) : start]
    if MODAL.match(text, start) and len(chain) == 1:
        return 0.0
    if NOT_TIME.match(folded, end) or not any(h.value.season or h.value.month for h in chain):
        return 0.0
    for begin, found in after.items():
        between = folded[begin:start]
        colours = opens_with_colours(between) or (not found.bare and opens_with_flowers(between))
        torn = HANGING.search(clause_before(text, found.label))
        if (
            begin <= start
            and not torn
            and (colours or any(words.fullmatch(between) for words in (LEAD, _WHEN_OF_ALL, _HARDLY_SEEN)))
        ):
            whole = TORN if HANGS_ABOVE.search(folded, 0, start) else 1.0
            return whole * sure * found.certainty / (SECOND_LANGUAGE if _is_beside(text, found) else 1)
    if chain[-1].value == _FROST and lasts_to_frost(text, start):
        return (0.8 if _is_cell(text, chain) else 0.65) * sure
    if CHORE.search(clause_before(text, start)):
        return 0.0
    if BEGUN_ABOVE.search(before):
        return TORN * sure
    if _PICTURED.search(before):
        return (0.8 if CELL_END.match(folded, end) else 0.55) * sure
    if VERB.search(before):
        return 0.85 * sure
    if REVERSE.match(folded, end) or (COVERED.search(before) and WITH_FLOWERS.match(folded, end)):
        return 0.8 * sure
    ranged = len(chain) > 1 and RANGE.search(folded, chain[0].end, chain[-1].start)
    if ranged and SHOWN.search(before) and not is_of_crop(folded) and _SHOWN_ENDS.match(folded, end):
        return 0.75 * sure
    if certain := before_flowers(text, start, end):
        return certain * sure
    if folded[end : end + 1] == ")" and _BRACKETED.search(before):
        return 0.75 * sure
    cold = chain[0].value.season in ("fall", "winter")
    told = of_flowers(
        text, start, end, months=any(h.value.month for h in chain), cold=cold, spans=bool(ranged)
    )
    return sure * (max(told, 0.8) if told and _is_cell(text, chain) else told)


_PICTURED = later(lambda: rf"✿ ?(?:{colour_list()}(?:,| [-–—·])? )?$")
"""A flower drawn before the time, or before colours that lead to it."""
_SHOWN_ENDS = later(r" ?(?:[.,;\n\t]|$)")
_FROST = Term()
_BRACKETED = later(
    r"\b(?:blooms?|flowers|blooming|flowering|blossoms?)(?! (?:after|before)\b):?(?: [a-z'’-]+){0,6}[ \n]\($"
)
"""Before the month that explains words of a bloom time: "Blooms at lilac time (May)"."""
_HARDLY_SEEN = later(
    r"(?:flowers? )?(?:insignificant|inconspicuous|unshowy|not showy|hardly noticed|tiny|small|minor|sparse)"
    r"(?:,| -| –|;| in| during| from)? ?(?:in )?"
)
"""Between a label and its time, that there is little to see: "Bloom Insignificant, June"."""
_WHEN_OF_ALL = later(r"(?:very )?(?:early|mid|late)(?:[ -]?season)?[,:]? ?\(?")
"""Between a label and its month, how early that is among its kind: "Blossom: mid-season (May)"."""


def _is_beside(text: str, found: Labelled) -> bool:
    """Whether a second label stands below its English one, the value after both: "Bloom /", "Floraison:"."""
    before = text[: found.label].rstrip()
    return found.second and before.endswith("/") and LABELS.whole(before.splitlines()[-1]) is not None
