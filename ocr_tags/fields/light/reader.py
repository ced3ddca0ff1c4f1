"""How much sun a plant wants, in the four classes of the trade.

The classes: full sun at least 6 hours of direct sun, full shade 3 at most, part sun and part shade between
(common practice, no source). Words decide; hours only where they leave one class. Both ends of a range
are given, nothing in between. Room light ("bright indirect") has no class here and is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence, Set
from dataclasses import replace
from itertools import pairwise

from ocr_tags.facts import SUNNY_TO_SHADY
from ocr_tags.fields.fact_rows import in_fact_row
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.light.clauses import (
    ALSO,
    BEST_THEN,
    CONDITION,
    ELSEWHERE,
    FAR_END_LOST,
    HALF,
    HOT,
    LIGHT_LABEL,
    NEAR_END_LOST,
    ON_CONDITION,
    SHIELD,
    SUN_LOST,
    TOLERANT,
    fills_cells,
    fills_clause,
    in_place,
    led,
)
from ocr_tags.fields.light.doubts import BESIDE, SUN_OR_SHADE, stands_as_label, wholeness, without_legend
from ocr_tags.fields.light.signs import (
    HALF_DAY,
    Light,
    by_codes,
    by_hours,
    by_marks,
    cool_roots,
    morning_sun,
    sun_full,
)
from ocr_tags.fields.light.words import EARLY, LightWord, light_words
from ocr_tags.fields.phrases import flowing, fold, label_phrases
from ocr_tags.fields.values import SECOND_LANGUAGE, labelled, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_LABELS = label_phrases("light")

_VERB_TOO = later(r"(?:place|where)\b")
"""Labels only before a colon or a gap: "Place in a sunny window" is an order."""

_SOFT = r"(?: |\n(?!\n)){0,2}"
_JOIN = later(
    rf"(?:\t(?=or\b|to\b|and\b)|{_SOFT})(?:,? ?(?:\bor\b|\band\b)|//|[-–—/&,+|•·]"
    r"|\bto\b|\bthru\b|\bthrough\b"
    rf"|\ba\b|\bou\b|\bet\b|\bo\b"
    rf"|\by\b|\beller\b|\boch\b|\bog\b"
    rf"|\bbis\b|,? ?\bauch\b"
    rf"|\bund\b|\boder\b|\btot\b|\ben\b|\bof\b|\btill?\b|\bmed\b|[→>]|\n(?!\n)|\t)(?:(?<=or|to|nd)\t"
    rf"|{_SOFT})(?:(?<=or )(?:the|an?|very|(?:thin|light|high|broken|airy|open),) )?"
)
_WHICH_OF_TWO = later(r"(?:^|(?<=[\n\t]))sun ?/ ?shade ?[–—-] ")
"""A label that asks which of the two: "Sun/shade — Sunny"."""
_OR_BUT = later(r"(?: (?:is|are) (?:best|ideal|preferred|perfect))?[.,;]? ?(?:but |and |or |though )?")
_HALVES = {
    "full": "full",
    "fs": "full_sun",
    "light": "part",
    "half": "part",
    "part": "part",
    "partial": "part",
    "partly": "part",
    "semi": "part",
    "dappled": "part_shade",
    "filtered": "part_shade",
    "deep": "full",
    "dense": "full",
    "heavy": "full",
    "all-day": "full",
    "all day": "full",
}
"""What an adjective before the joint means; two of them whatever the noun behind."""


_MARK = later(r"\s?[™®]")


def read_light(tag: TagText) -> Iterator[Found[Light]]:
    r"""Each statement of light, its classes from sunny to shady.

    >>> [found.value for found in read_light(TagText("Exposure: Sun to part shade"))]
    [('full_sun', 'part_shade')]
    >>> list(read_light(TagText("Protect from full sun. A shade tree.")))
    []
    """
    text = tag.string
    folded = fold(text)
    after_label = [
        (found.start, found.end)
        for found in labelled(text, _LABELS)
        if not (found.bare and _VERB_TOO.match(folded, found.label))
    ]
    after_label += [(label.end(), value_end(text, label.end())) for label in _WHICH_OF_TWO.finditer(folded)]
    statements: list[Found[Light]] = []
    again: list[Found[Light]] = []
    chains = list(_chains(text, light_words(text)))
    repeats = {chain[0].start for chain in chains if chain[0].value.foreign}
    for chain in chains:
        if _MARK.match(text, chain[-1].end):
            continue  # a trade name: Solvenna Sol™
        chain, doubt = _without_label(folded, chain)
        certainty = _certainty(text, chain, after_label, repeats)
        if certainty:
            said = again if chain[0].value.foreign else statements
            said.append(_found(text, chain, certainty * doubt))
    for found in without_legend(statements or again):
        sure = BESIDE if len(statements) > 1 and stands_as_label(text, found) else wholeness(folded, found)
        if SUN_OR_SHADE.fullmatch(folded, *found.span) and not any(
            start <= found.span[0] <= end for start, end in after_label
        ):
            sure *= BESIDE  # as likely a label whose value was not read
        yield replace(found, certainty=found.certainty * sure)
    yield from (replace(found, certainty=SECOND_LANGUAGE * found.certainty) for found in again if statements)
    statements = statements or again
    if not statements:
        yield from by_marks(text)
        yield from by_codes(text)
    yield from sun_full(text)
    yield from by_hours(text)
    yield from morning_sun(text)
    yield from cool_roots(text)


def _chains(text: str, hits: Sequence[LightWord]) -> Iterator[list[LightWord]]:
    """Words joined by "to", "or", a slash, a line end: one statement, in one language."""
    folded = fold(text)
    chain: list[LightWord] = []
    aside: list[LightWord] = []  # the same in another language, between two lines of one list
    end = 0
    for hit in hits:
        gap, end = folded[end : hit.start], hit.end
        joined = (
            _JOIN.fullmatch(gap)
            or CONDITION.fullmatch(plain := gap.replace("\n", " "))
            or ALSO.fullmatch(gap)
            or BEST_THEN.fullmatch(plain)
            or (
                ELSEWHERE.fullmatch(plain)
                and ON_CONDITION.match(flowing(text), hit.end)
                and chain
                and hit.value.light != chain[-1].value.light
            )
            or (chain and _next_sentence(folded, chain, hit))
            or (_OR_BUT.fullmatch(plain) and HALF_DAY.match(folded, hit.start))
        )
        if chain and not joined:
            yield from filter(None, (chain, aside))
            chain, aside = [hit], []
        elif chain and _turns(chain[-1], hit) and (aside or re.search(r"[/|\t\n]", gap)):
            aside.append(hit)
        else:
            chain.append(hit)
    yield from filter(None, (chain, aside))


def _next_sentence(folded: str, chain: Sequence[LightWord], hit: LightWord) -> bool:
    """Whether the word is a sentence of its own after another that is one: "Part sun. Full sun."."""
    if folded[chain[-1].end : hit.start] != ". " or not re.match(r" ?(?:[.;\n\t]|$)", folded[hit.end :]):
        return False
    opens = re.search(r"(?:^|[\n\t:]|[.;!] ) ?$", folded[: chain[0].start])
    return opens is not None and not any(word.value.alone for word in (*chain, hit))


def _turns(one: LightWord, other: LightWord) -> bool:
    return one.value.foreign != other.value.foreign


def _without_label(folded: str, chain: list[LightWord]) -> tuple[list[LightWord], float]:
    """ "Sun" in a cell of its own before "Shade to part shade" is the label of that range."""
    first = chain[0]
    if len(chain) == 2 and _is_row_label(folded, first.start, folded[first.end : chain[1].start]):
        return chain[1:], 0.9
    if len(chain) < 3 or not re.match(r"sun[\t\n]", folded[first.start :]):
        return chain, 1.0
    joints = (folded[one.end : other.start] for one, other in pairwise(chain[1:]))
    if not all(re.search(r"[\w/&–-]", joint) for joint in joints):
        return chain, 1.0
    return chain[1:], 0.8


_PAIRS = later(r"(?:^|\n)((?:[^\t\n]+\t[^\t\n]+\t)+)$")


def _is_row_label(folded: str, start: int, gap: str) -> bool:
    """Whether a word stands before its value among such pairs: "Zone", "5-8", "Sun", "Part shade"."""
    if gap != "\t" or not folded[start:].startswith("sun\t"):
        return False
    if pairs := _PAIRS.search(folded, 0, start):
        return all(map(is_label, pairs[1].split("\t")[:-1:2]))
    above, below = folded[:start].rstrip("\n"), folded[start:].partition("\n")[2].lstrip("\n")
    rows = (above.rpartition("\n")[2], below.partition("\n")[0])
    opens = folded[:start].endswith("\n") or not start
    return opens and any(is_label(head) for head, tab, _ in (row.partition("\t") for row in rows) if tab)


def _certainty(
    text: str, chain: Sequence[LightWord], after_label: Sequence[tuple[int, int]], repeats: Set[int]
) -> float:
    """How sure it is that these words tell the plant's light; 0 when they tell something else.

    At `repeats` another language begins: a stroke before it breaks no range off.
    """
    folded = fold(text)
    start, end = chain[0].start, chain[-1].end
    sure = min(hit.certainty for hit in chain)
    labels = [begin for begin, stop in after_label if begin <= start < stop]
    if SHIELD.search(flowing(text)[max(0, start - 48, *labels) : start]) or TOLERANT.match(folded, end):
        return 0.0
    if text[start - 1 : start] in ("'", "‘", '"', "“"):
        return 0.0
    every = len({hit.value.light for hit in chain}) >= 3
    if every and not re.search(r"\bto\b|\ba\b|[/,]| [-–] ", folded[start:end]):
        return 0.3  # a legend of all classes, one of them ticked
    lost = FAR_END_LOST.match(folded, end)
    stroke = lost is not None and lost[0].strip() == "/"
    whole_range = stroke and (len(chain) > 1 or not repeats.isdisjoint(range(end, end + 4)))
    near_lost = NEAR_END_LOST.search(folded, max(0, start - 30), start) or (
        chain[0].value.light != "full_sun" and SUN_LOST.search(folded, max(0, start - 30), start)
    )
    if (lost and not whole_range) or near_lost:
        return 0.4 * sure  # a range broken off
    if any(led(folded[begin:start]) for begin in labels):
        return sure
    if len(chain) == 1 and (EARLY.match(folded[start:end]) or _AT_LEAST.match(folded, end)):
        return 0.4  # when the rest of the day is not told
    if _TAKES.search(folded, start, end) or (len(chain) == 1 and folded[start:end] == "shadow"):
        return 0.4 * sure  # how much of it, the one does not say; a name, the other may be
    if len(chain) == 1 and HALF_DAY.match(folded, start) and "sun" not in folded[start:end]:
        return 0.0  # half a day of what, a word too far off says
    if _LITTLE.match(folded, start):
        return 0.0  # what breaks another light, left off
    whole = fills_cells(text, folded, start, end) or in_fact_row(text, start, end)
    if all(hit.value.alone for hit in chain):
        if whole or fills_clause(folded, start, end):
            alone = re.search(r"(?:^|\n|[.;!] )$", folded[:start]) and re.match(r" ?[.;\n]", folded[end:])
            return sure * (0.9 if whole else 0.8 if alone else 0.7)
        return sure * (0.7 if in_place(text, chain[-1].start, end) else 0.0)
    if HOT.match(folded, end) and len(chain) == 1:
        return 0.4 * sure
    return (0.95 if whole else 0.85) * sure


_AT_LEAST = later(r"[ ,]{1,2}(?:at (?:the very )?least|at a minimum|minimum|or (?:more|better|longer))\b")
_TAKES = later(r"\btakes?\sshade")
_LITTLE = later(r"(?:a (?:little|bit of|touch of)|some) ")


def _found(text: str, chain: Sequence[LightWord], certainty: float) -> Found[Light]:
    folded = fold(text)
    start, end = chain[0].start, chain[-1].end
    classes = {hit.value.light for hit in chain}
    printed = folded[start:end]
    if re.fullmatch(r"part(?:ial|ly)?\s+sun\s*/\s*shade", printed):
        return Found(("part_sun", "part_shade"), (start, end), 0.7 * certainty)
    half = HALF.search(folded[:start])
    noun = re.search(r"(sun|shade)", printed)
    if half and noun and not LIGHT_LABEL.search(text[: half.end()]):
        sunny = half[1] == "full" and _SUN_LABEL.search(folded[: half.start()])
        share = _HALVES[half[1]]
        classes.add("full_sun" if sunny else share if "_" in share else f"{share}_{noun[1]}")
        start = half.start()
    return Found(tuple(c for c in SUNNY_TO_SHADY if c in classes), (start, end), certainty)


_SUN_LABEL = later(
    r"(?:^|[\t\n])sun(?: ?/ ?(?:soleil|sol|sonne|zon))?[\t\n]|\| ?sun ?\| ?\Z"
    r"|\bsun(?:light)?(?: needs| exposure)? ?[:\t\n–—-] ?\Z"
)
"""Before "Full/Part Shade": what is full there is the sun."""
