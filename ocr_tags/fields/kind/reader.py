"""What kind of plant the tag says it is: perennial, shrub, herb and the like.

Kind words stand in names ("Tree Mallow"), praise ("a perennial favourite") and places ("herb garden") as
well, so a word counts only alone on its line, after a label, or as the noun of a describing sentence.
"Perennial" holds for some place only; that is for a caution to say.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from itertools import pairwise

from ocr_tags.fields.kind.cells import among_labels, is_kind_of_rose, is_offer, labels_in_capitals
from ocr_tags.fields.kind.clauses import (
    BESIDE,
    CAPITAL_NEXT,
    CARRIED,
    CHORE_NEXT,
    CLOSED,
    COUNTED,
    COUNTED_ON,
    ELSEWHERE,
    FOR_HOME,
    FROM_WHERE,
    GOES_ON,
    GROWTH,
    HABIT,
    JOIN,
    LISTED,
    MEASURED_FRUIT,
    MONTH,
    OPENS,
    OR_HEDGE,
    OVER_TYPE,
    OWN_SENTENCE,
    PAIRS,
    PART_END,
    SCRAP,
    SCRAPS,
    TO_HEIGHT,
    TORN,
    TRAIL,
    TYPE,
    USE_LABEL,
    WHOLE,
)
from ocr_tags.fields.kind.sentences import LIVES, PARTS_TOO, opens_value, told_in_sentence
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import Hit, Phrases, cells, fold, label_phrases, listed
from ocr_tags.fields.values import labelled
from ocr_tags.names import lexicon
from ocr_tags.names.firms import labelled_firms
from ocr_tags.record import Found, TagText

_WORDS = Phrases(lambda: {word: kind for kind, words in listed("kind").items() for word in words}, shortest=8)
_FRUIT = re.compile(r"\b(?P<fruit>fruit(?:ing|[- ]bearing)?)[ \n]$")
_FRUIT_AFTER = re.compile(r" (?P<fruit>fruitiers?|frutal(?:es)?|da frutto)\b")
_PLURAL = re.compile(r"(?<![su])s\Z")
_SHOUT = re.compile(r"!(?=\s|$)")
"""A mark that ends a sentence, which would else be taken for the letter it looks like."""
_NITROGEN = re.compile(r"\b(?:an?|the|this|native|perennial|annual|woody|shrubby|hardy|wild)\s$")
"""Before "legume", which in English is a family and in French a vegetable."""
_FRUITING = frozenset(("tree", "vine", "shrub"))
_DOTTED = frozenset(("per", "ann"))
"""Short for perennial and annual only with a full stop."""

_LABELS = label_phrases("categories")


def read_categories(tag: TagText) -> Iterator[Found[str]]:
    """Each kind the tag names, once; where a label says it, no other word does.

    >>> [found.value for found in read_categories(TagText("Hardy. This compact shrub is evergreen."))]
    ['shrub']
    >>> [found.value for found in read_categories(TagText("Plant type: Perennial / Annual"))]
    ['perennial', 'annual']
    >>> list(read_categories(TagText("A perennial favourite for the herb garden")))
    []
    """
    text = _SHOUT.sub(".", tag.string)
    folded = fold(text)
    firms = [span for _, span in labelled_firms(text)]
    hits = [
        hit
        for hit in map(partial(_below_frost, folded), _WORDS.find(text))
        if not re.match(r"['’]s\b", folded[hit.end :])
        and (folded[hit.start : hit.end] not in _DOTTED or folded[hit.end : hit.end + 1] == ".")
        and not (hit.certainty < 1 and MONTH.search(folded, hit.start, hit.end))
        and not any(start <= hit.start < end for start, end in firms)
        and not _is_other(text, folded, hit)
    ]
    values = [(found.start, found.end) for found in labelled(text, _LABELS)]
    graded = [(hit, _certainty(text, folded, hits, hit, values)) for hit in hits]
    graded = [*_with_lives(folded, graded)]
    told = any(certainty == LABELLED for _, certainty in graded)
    seen: set[str] = set()
    for hit, certainty in graded:
        kinds = [(hit.value, (hit.start, hit.end))]
        fruit = _FRUIT.search(folded, 0, hit.start) or _FRUIT_AFTER.match(folded, hit.end)
        if hit.value in _FRUITING and fruit:
            kinds.append(("fruit", fruit.span("fruit")))
        for kind, span in kinds if certainty == LABELLED or (certainty and not told) else ():
            if kind not in seen:
                seen.add(kind)
                yield Found(kind, span, certainty * hit.certainty)


def _below_frost(folded: str, hit: Hit[str]) -> Hit[str]:
    """The kind without what ends the line above: "May to frost" and "Tender perennial" below."""
    above = folded[hit.start : hit.end].startswith("frost\n")
    return replace(hit, start=hit.start + len("frost\n")) if above else hit


def _is_other(text: str, folded: str, hit: Hit[str]) -> bool:
    """Whether a kind word says something else: "annual feeding", "a legume", "herb. perennial"."""
    word = text[hit.start : hit.end]
    if hit.value in LIVES:
        begins = text[hit.end + 1 : hit.end + 2]
        return CHORE_NEXT.match(folded, hit.end) is not None and not (
            text[hit.end : hit.end + 1] in "\n\t" and begins.isupper()  # "Perennial" over "Feed: monthly"
        )
    if hit.value == "herb" and re.match(r"\. (?:peren|per\b|border)", folded[hit.end :]):
        return True
    return word.casefold() == "legume" and _NITROGEN.search(folded, 0, hit.start) is not None


def _with_lives(folded: str, graded: list[tuple[Hit[str], float]]) -> Iterator[tuple[Hit[str], float]]:
    """The words again; how long it lives is as sure as the kind it stands before: a perennial vine."""
    for at, (hit, certainty) in enumerate(graded):
        for after, its in graded[at + 1 : at + 2] if hit.value in LIVES else ():
            certainty = max(certainty, its) if folded[hit.end : after.start] == " " else certainty
        yield hit, certainty


_Kind = Hit[str]
LABELLED = 1.0
_NAMES_TOO = frozenset(("rose",))
"""Kinds that are common names as well: they count behind a label, or where the name is said more fully."""


_USES_TOO = frozenset(("groundcover",))
"""Kinds that tags list among the uses too, one a line."""


def _sentences(text: str) -> list[tuple[int, int]]:
    """Short sentences with their end: "Hardy perennial." in running text."""
    return [match.span() for match in OWN_SENTENCE.finditer(text)]


def _certainty(text: str, folded: str, hits: list[_Kind], hit: _Kind, values: list[tuple[int, int]]) -> float:
    """How sure it is that this word says what the plant is; 0 when it belongs to something else."""
    if any(start <= hit.start < end and _fills(folded, start, end, hits, hit) for start, end in values):
        return LABELLED
    if any(
        start <= hit.start < end and opens_value(folded, start, hit.start, hit.end) for start, end in values
    ):
        return 0.9
    start, end = next(cell for cell in cells(text) if cell[0] <= hit.start < cell[1])
    if hit.value in _NAMES_TOO and not is_kind_of_rose(folded, start, end):
        return 0.0
    if OVER_TYPE.match(folded, start) and TYPE.search(folded):
        begin = start + len("plant ")
        return 0.9 if begin <= hit.start and _fills(folded, begin, end, hits, hit) else 0.0
    beside = text[: hit.start].rsplit("\n", 1)[-1].rsplit("\t", 2)
    if hit.value in PARTS_TOO and (
        (hit.value == "fruit" and start == hit.start and MEASURED_FRUIT.match(folded, hit.end))
        or (
            hit.value == "vine"
            and re.match(r"s? \d[\d.]*(?: ?[-–] ?\d+)? ?(?:ft|m|cm|in|feet)\b", folded[hit.end :])
        )
        or text[hit.end : hit.end + 1] == "\t"
        or (len(beside) > 1 and is_label(beside[-2]))
        or (text[hit.start : hit.end].isupper() and labels_in_capitals(text) > 2)
        or (text[hit.end : hit.end + 1] == "\n" and is_label(text[hit.end + 1 :].split("\n")[0]))
        or (hit.value == "fruit" and among_labels(text, start, end))
    ):
        return 0.0  # "Fruit" over "Colour", and a value beside
    if hit.value in PARTS_TOO and (
        TORN.fullmatch(text, start, end) or (start == hit.start and TO_HEIGHT.match(folded, hit.end))
    ):
        return 0.0
    if SCRAP.search(text, 0, hit.start):
        return 0.4
    if hit.value == "annual" and ELSEWHERE.search(folded, 0, hit.start) and CLOSED.match(folded, hit.end):
        return 0.85
    habit = HABIT.match(folded, start)
    if habit and any(
        _fills(folded, habit.end(), stop, hits, hit) for stop in (end, folded.find(",", start, end))
    ):
        return 0.85
    if is_offer(folded, [other for other in hits if start <= other.start < end], hits):
        return 0.0
    if _fills(folded, start, end, hits, hit):
        listed_use = hit.value in _USES_TOO and not _tells_growth(folded, start, end, hits)
        broken = _ends_name(text, start, end) or (hit.value not in LIVES and _begins_name(text, start, end))
        return 0.0 if listed_use or broken else 0.9
    if (part := _part(text, start, end, hit.start)) and _fills(folded, *part, hits, hit):
        return 0.0 if hit.value in _USES_TOO else 0.8
    sentence = next((part for part in _sentences(text) if part[0] <= hit.start < part[1]), None)
    if sentence and _fills(folded.replace("\n", " "), *sentence, hits, hit):
        return 0.4 if text[slice(*sentence)] in SCRAPS and CAPITAL_NEXT.match(text, sentence[1]) else 0.8
    if _opens_sentence(text, folded, hit):
        return 0.8
    return told_in_sentence(text, hit.value, hit.start, hit.end)


def _tells_growth(folded: str, start: int, end: int, hits: list[_Kind]) -> bool:
    """Whether a cell tells how the groundcover grows, which no item of a list of uses does."""
    return bool(GROWTH.match(folded, start)) and sum(start <= other.start < end for other in hits) == 1


def _ends_name(text: str, start: int, end: int) -> bool:
    """Whether the line above and this one make a common name: "Japanese Forest" and "Grass"."""
    above = (
        text[text.rfind("\n", 0, max(start - 1, 0)) + 1 : start - 1] if text[:start].endswith("\n") else ""
    )
    words = above.replace("\t", " ").split()
    runs = (
        " ".join([*words[-number:], text[start:end].strip()]) for number in range(1, min(len(words), 3) + 1)
    )
    own = words and not WHOLE.fullmatch(fold(f"{words[-1]} "))
    return bool(own) and any(lexicon.is_common_name(run) for run in runs)


def _begins_name(text: str, start: int, end: int) -> bool:
    """Whether this line and the one below make a common name: "Shrub" and "Verbena"."""
    below = re.match(r"\n(?=[^\n])([^\n\t]*)", text[end:])
    words = below[1].split()[:2] if below else []
    runs = (" ".join([text[start:end].strip(), *words[:number]]) for number in range(1, len(words) + 1))
    return any(lexicon.is_common_name(run) for run in runs)


def _opens_sentence(text: str, folded: str, hit: _Kind) -> bool:
    """ "Evergreen shrub for rock gardens", "10 bulbs": no article, but the noun comes first and goes on."""
    if hit.value == "bulb" and COUNTED.search(folded, 0, hit.start):
        return COUNTED_ON.match(folded, hit.end) is not None
    opening = OPENS.search(folded, 0, hit.start)
    many = _PLURAL.search(folded, hit.start, hit.end) and not (
        hit.value == "houseplant" and folded.startswith(" for ", hit.end)  # of the shelf it stands on
    )
    if not opening or hit.value in _USES_TOO or many:
        return False
    begin = opening.start()
    if hit.value in LIVES and LISTED.match(text, hit.end):
        return not CARRIED.search(folded, 0, begin)
    torn = text[begin - 1 : begin] == "\n" and text[begin].islower() and text[begin - 2] not in ".!?:"
    alone = opening.end() == begin and hit.value == "fruit" and not FOR_HOME.match(folded, hit.end)
    flow = folded.replace("\n", " ")
    goes_on = GOES_ON.match(flow, hit.end)
    if FROM_WHERE.match(flow, hit.end) and (opening.end() > begin or hit.value in LIVES):
        return not torn and not _is_name(text, hit)
    if goes_on and goes_on[0].startswith(",") and text[goes_on.end() - 1].isupper():
        return False  # a name and its place
    if torn or alone or goes_on is None:
        return False
    following = _WORDS.whole(_next_word(text, goes_on))
    return following is None or (following.value == hit.value and ", " in goes_on[0])  # said again in Spanish


def _is_name(text: str, hit: _Kind) -> bool:
    """Whether a kind is printed as part of a name: "Tree of Heaven" with its second capital."""
    words = text[hit.end :].split(maxsplit=2)
    return len(words) > 1 and words[1][0].isupper() and hit.value not in LIVES and text[hit.start].isupper()


def _next_word(text: str, joint: re.Match[str]) -> str:
    """The word at the end of what joins on: in "Shrub, tree or hedge" a kind, and the clause a list."""
    return text[joint.end() - 1 :].split(maxsplit=1)[0]


def _part(text: str, start: int, end: int, at: int) -> tuple[int, int] | None:
    """The part of a cell in which `at` lies, when marks divide it; of "Uses: hedge / shrub" none."""
    cuts = list(PART_END.finditer(text, start, end))
    if not cuts or USE_LABEL.match(text, start):
        return None
    begins = [start, *(cut.end() for cut in cuts)]
    ends = [*(cut.start() for cut in cuts), end]
    part = next(((one, other) for one, other in zip(begins, ends, strict=True) if one <= at < other), None)
    return None if part and text[slice(*part)].casefold() == "fruit" else part  # "Fruit - red in autumn"


def _fills(folded: str, start: int, end: int, hits: list[_Kind], hit: _Kind) -> bool:
    """True when kinds, their adjectives and a zone are all there is between `start` and `end`."""
    inside = [other for other in hits if start <= other.start < end]
    if hit not in inside or not WHOLE.fullmatch(folded, start, inside[0].start):
        return False
    for one, other in pairwise(inside):
        gap = folded[one.end : other.start]
        if "(" in gap and one.value == "conifer":
            return False  # its tree is said again: "Conifère (arbre)"
        beside = len(gap) > 1 and BESIDE.fullmatch(gap)
        paired = gap == " " and (one.value in LIVES or (one.value, other.value) in PAIRS)
        if not (beside or paired or JOIN.fullmatch(gap)):
            return False
    rest = folded[inside[-1].end : end]
    return bool(TRAIL.match(rest) or (len(inside) == 1 and OR_HEDGE.fullmatch(rest)))
