"""How tall, how wide, how far apart: five different things, and none is ever filled from another.

A length counts only where the tag says what it measures: a label before it ("Height: 12 in"), a word
after it ("12 in tall"), or a label in the cell to its left or above it. Print puts the label first or
last; where a line leaves open which length a label belongs to, nothing is read.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import lru_cache

from ocr_tags.fields.density import by_density
from ocr_tags.fields.sizes import clauses
from ocr_tags.fields.sizes.ages import grown
from ocr_tags.fields.sizes.arrows import ARROWS, arrow_before, without_arrow
from ocr_tags.fields.sizes.columns import (
    Measured,
    Size,
    cell_around,
    mixed_table,
    table,
    values_above,
    values_left,
)
from ocr_tags.fields.sizes.flowering import two_heights
from ocr_tags.fields.sizes.limits import arrived, by_verb, limited, up_to
from ocr_tags.fields.sizes.others import of_another
from ocr_tags.fields.sizes.pairs import (
    ACROSS,
    LEAD,
    OF_SIZE,
    SHARED_UNIT,
    TIMES,
    beside_arrow,
    height_by_spread,
    says_again,
    two_lengths,
    unexplained,
)
from ocr_tags.fields.sizes.repeats import settle
from ocr_tags.fields.sizes.tails import by_tail, tail_of
from ocr_tags.fields.sizes.ties import apart_in_table, opens, tied
from ocr_tags.fields.sizes.words import Label
from ocr_tags.fields.sizes.wraps import wrapped
from ocr_tags.measures.printed import Measure
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Length

_GAP = later(
    r"(?: ?\((?!flower|bloom|leaf|foliage)[a-z ]{2,14}\)|,? (?:full(?:y|-)?[ -]?grown|full-(?=[\t\n]))"
    r"|(?: after| in| at| @|:) (?:\d{1,2}|five|ten|twenty) y(?:ea)?rs?\b\.?"
    r"| ?\((?:(?:in|after|at) )?\d{1,2} ?y(?:ea)?rs?\.?\)"
    r"| (?:at|in) maturity(?= ?/)| ?/(?=\t)"
    r"| (?:on|against|along|over|up) (?:an? |the |its )?(?:wall|fence|trellis|wires?)"
    r"|(?: for| in| as)?(?: [a-z]+){1,3}\? ?A(?:nswer)?[.:)]| ?A(?:nswer)?[.:)](?= )"
    r"|,(?=\t)| with (?:an? )?(?:supports?|trellis|canes?|stakes?)"
    r"|,? (?:when )?(?:staked|trained|caned|supported|un(?:pruned|clipped)|clipped|pruned)"
    r"| in (?:full |part |light |half )?(?:sun|shade)"
    r"| in (?:leaf|foliage)| in (?:pots?|containers?|tubs?|(?:the )?(?:ground|garden))"
    r"| on (?:the )?(?:surface|water)\b"
    r"| for (?:an? )?(?:hedg(?:es?|ing)|screens?|screening|ground ?cover|mass(?:ed)? planting)"
    r"| (?:hedg(?:e|ing)|hecke|haie|haag|seto|siepe)"
    r"| above (?:the )?(?:water|ground|soil)(?: level)?)?"
    r"(?: ?/\s?[^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2}(?= ?[:/\t]| \d)){0,2}"
    r"(?: (?:at maturity|when mature|à maturité|adulte|is|of|at|range|from|to(?=[:\t\n]"
    r"| \d[\d.½]*(?: ?[-–]| to ))))?"
    rf"{LEAD}[\t\n]?{LEAD}",
    re.I,
)
OF_ARROW = 0.75
"""Certainty of what a drawn arrow says, which is less than a word's."""
_FIGURE = later(r"[ .:=]{0,2}\d")
_ITS_OWN = later(r"[ .:=]{0,2}\d|: ?\n\d")
_NEVER_LAST = later(r"space|thin(?:ned)?\b.*|set out|(?:give|allow) .*", re.I)


_HANGS = later(r"trail|cascad", re.I)
"""How long shoots hang is hardly how wide a plant grows."""
_RUNS = later(r"(?:can |will )?(?:run|ramble|go|sprawl)", re.I)
_VINES = later(r"\b(?:vines|runners|shoots)\s(?:can |will |may )?\Z", re.I)
"""How far vines run tells no height: melons run over the ground."""
_POT_ABOVE = later(r"\b(?:pot|topf|potmaat|container)\W*\Z", re.I)


def _unrivalled(tag: Measured, arrow: tuple[str, int]) -> bool:
    """Whether no label of another width waits for its figure: "Spacing" over "↔ 80 cm" is no spread."""
    waiting = [label for label in tag.labels if not _ITS_OWN.match(tag.text, label.end)]
    spaced = arrow[0] == "↔" and any("spacing" in label.kinds for label in waiting)
    return not spaced and not _POT_ABOVE.search(tag.text[: arrow[1]])


@lru_cache(maxsize=64)
def _sizes(text: str) -> tuple[Size, ...]:
    tag = Measured(text)
    found = [*wrapped(tag), *table(tag), *mixed_table(tag), *values_above(tag), *values_left(tag)]
    found += [*two_heights(tag), *grown(tag)]
    for place, measure in enumerate(tag.measures):
        if place not in tag.settled:
            found += _read_one(tag, place, measure)
    found += unexplained(tag, found)
    return tuple(settle(text, found))


def _read_one(tag: Measured, place: int, measure: Measure) -> Iterator[Size]:
    """What the words around one length say of it."""
    foreign = clauses.FOREIGN_AFTER.match(tag.text, measure.span[1]) or of_another(
        tag.text, *measure.span, measure.length.max_cm
    )
    if foreign or says_again(tag, place):
        tag.settled.add(place)
        return
    label = _label_of(tag, place, measure)
    tail = tail_of(tag.text, measure, label)
    if tail and (label is None or label.weak or tail.lastgroup in _overrides(tag, label)):
        kinds, certainty = by_tail(tag, measure, tail)
    elif label is None and (arrow := arrow_before(tag.text, measure.span[0])):
        kinds, certainty = (ARROWS[arrow[0]],), OF_ARROW if _unrivalled(tag, arrow) else 0.4
    elif label is None:
        kinds, certainty = _by_label_after(tag, place, measure)
        if not kinds:
            kinds, certainty = beside_arrow(tag, place, measure)
    elif tail and tail.lastgroup not in (*label.kinds, "both") and not _rows_apart(label, tail):
        kinds, certainty = (), 0.0  # "Height 12 in wide"
    else:
        yield from _by_label(tag, place, measure, label)
        return
    if label is None and clauses.BARE_TO.search(tag.text, max(0, measure.span[0] - 8), measure.span[0] + 3):
        certainty *= 0.4
    if kinds or tail:
        tag.settled.add(place)
        if label:
            tag.spent.add(label)
    yield from (Size(kind, measure, certainty * measure.certainty) for kind in kinds if kind != "none")


def _rows_apart(label: Label, tail: re.Match[str]) -> bool:
    """ "Rows 2 ft apart"."""
    return label.kinds == ("row_spacing",) and tail[0].strip().lower() == "apart"


def _overrides(tag: Measured, label: Label) -> tuple[str, ...]:
    """Words after a length that say better than its label what it is: "Sp 6 in apart"."""
    if label.kinds == ("spread",) and tag.text[label.start : label.end].lower() in {"sp", "sp.", "spc"}:
        return ("spacing",)
    if label.kinds == ("spacing",):
        return ("row_spacing",)
    return ("flower_height", "both") if label.kinds == ("height",) else ()


def _label_of(tag: Measured, place: int, measure: Measure) -> Label | None:
    """The label this length follows, if that is beyond doubt."""
    label = tag.label_before(measure.span[0])
    if label is None or label in tag.spent:
        return None
    between = without_arrow(label, tag.between(label.end, measure.span[0]))
    if between == "\n\n" and apart_in_table(tag.text, label, measure):
        between = "\n"
    if not (_GAP.fullmatch(between) or _shared(label, between)):
        return None
    if not tied(tag, label, measure, between):
        return None
    if label.kinds == ("size",):
        told = up_to(measure) or height_by_spread(tag, place, label.end, 1.0, OF_SIZE)
        return label if told and opens(tag.text, label) else None
    if _NEVER_LAST.fullmatch(tag.text, label.start, label.end):
        return label
    if between.lstrip().startswith(":") or not _open_length_before(tag, place, label):
        return label
    return None


def _shared(label: Label, between: str) -> bool:
    return (len(label.kinds) == 2 or label.weak) and bool(SHARED_UNIT.fullmatch(between))


def _open_length_before(tag: Measured, place: int, label: Label) -> bool:
    """Whether an unexplained length stands right before the label, which may then be its own."""
    if place == 0 or place - 1 in tag.settled:
        return False
    before = tag.between(tag.measures[place - 1].span[1], label.start)
    own_line = before == "\n" and not re.search(
        r"[\t\n]", tag.between(label.end, tag.measures[place].span[0])
    )
    return before in {"", " ", "\t", "\n"} and not own_line


def _by_label(tag: Measured, place: int, measure: Measure, label: Label) -> Iterator[Size]:
    tag.spent.add(label)
    tag.settled.add(place)
    between = tag.between(label.end, measure.span[0])
    certainty = (
        label.certainty * measure.certainty * (0.93 if "\n" in between else 0.95 if "\t" in between else 0.97)
    )
    if label.weak:
        yield from _by_verb(tag, place, label, certainty)
    elif len(label.kinds) == 1:
        if label.kinds != ("none",):
            yield limited(tag, label, Size(label.kinds[0], arrived(tag.text, label, measure), certainty))
    elif len(label.kinds) == 2 and "none" not in label.kinds:
        yield from _by_two_labels(tag, place, measure, label, certainty)


def _by_verb(tag: Measured, place: int, label: Label, certainty: float) -> Iterator[Size]:
    measure, before = tag.measures[place], tag.text[: label.start]
    foreign = clauses.FOREIGN_BEFORE.search(before) and not clauses.PLANT_IS_SUBJECT.search(before)
    if foreign or clauses.FOREIGN_NOUN_AFTER.match(tag.text, measure.span[1]):
        return
    if _RUNS.match(tag.text, label.start) and _VINES.search(before):
        return
    times = OF_SIZE if label.kinds == ("size",) else ACROSS
    pair = (
        [] if label.kinds == ("trails",) else height_by_spread(tag, place, label.end, 0.85 * certainty, times)
    )
    yield from pair
    if not pair and label.kinds == ("size",):
        if up_to(measure):
            yield Size("height", measure, 0.7 * certainty)
    elif not pair:
        between = tag.between(label.end, measure.span[0])
        if not SHARED_UNIT.fullmatch(between):
            kind = "spread" if label.kinds == ("trails",) else "height"
            hangs = _HANGS.match(tag.text, label.start)
            yield Size(kind, by_verb(tag.text, label, measure), certainty * (0.4 if hangs else 0.8))


def _by_two_labels(
    tag: Measured, place: int, measure: Measure, label: Label, certainty: float
) -> Iterator[Size]:
    """ "Height/Spread: 18/12 in", "H x W: 18 in x 12 in", "Height & width 2 ft"."""
    both = list(two_lengths(tag, place, label.kinds, label.end, certainty))
    yield from both
    if both or SHARED_UNIT.fullmatch(tag.between(label.end, measure.span[0])):
        return
    if not TIMES.match(tag.text, measure.span[1]) or tag.text[measure.span[1]] == ",":
        parted = any(sign in tag.text[label.start : label.end] for sign in "/x×,")
        yield from (Size(kind, measure, certainty * (0.75 if parted else 0.95)) for kind in label.kinds)


def _by_label_after(tag: Measured, place: int, measure: Measure) -> tuple[tuple[str, ...], float]:
    """ "18 in H x 12 in W", "18 in height": a label after its length, where the line leaves no choice."""
    label = tag.label_after(measure.span[1])
    if label is None or label.weak or not _right_after(tag, measure, label):
        return (), 0.0
    if (
        tag.text[measure.span[1] - 1] == "."
        and tag.text[label.start].isupper()
        and _FIGURE.match(tag.text, label.end)
    ):
        return (), 0.0  # "March. 20 cm. Space 8 cm.": the label of what follows
    if not (_labels_last(tag, measure) or _closes_clause(tag, place, label)):
        return (), 0.0
    figure = _FIGURE.match(tag.text, label.end)
    if figure and all(other.span[0] != figure.end() - 1 for other in tag.measures):
        return (), 0.0  # the label of a figure too worn to read
    tag.spent.add(label)
    return label.kinds, 0.9 * label.certainty


def _right_after(tag: Measured, measure: Measure, label: Label) -> bool:
    """Whether a label follows its length; past a line end only as the last word of a sentence."""
    between = tag.between(measure.span[1], label.start)
    if between == "\t":
        return clauses.is_row(tag.text, measure.span[0], label.end)
    runs_on = tag.text[label.start].islower() and tag.text[label.end : label.end + 1] in {".", ",", ";"}
    return between in {"", " ", "-"} or (between in {"\n", " \n"} and runs_on)


def _closes_clause(tag: Measured, place: int, label: Label) -> bool:
    """ "Ht. 60 cm. To 55 cm spread.": what stands before is settled, and nothing follows the label."""
    start = tag.measures[place].span[0]
    own = place == 0 or place - 1 in tag.settled or clauses.OPENS_FACT.search(tag.text, 0, start)
    return bool(own) and len(label.kinds) == 1 and bool(clauses.CLOSES_CLAUSE.match(tag.text, label.end))


def _labels_last(tag: Measured, measure: Measure) -> bool:
    """Whether the cell reads length, label, length, label to its end."""
    start, end = cell_around(tag, measure)
    marks = [(m.span[0], "M") for m in tag.measures if start <= m.span[0] < end]
    tails = [tail for m in tag.measures if (tail := tail_of(tag.text, m, None))]
    named = [x.start for x in tag.labels if not x.weak]
    named = [at for at in named if not any(tail.start() <= at < tail.end() for tail in tails)]
    marks += [(at, "L") for at in (*named, *(tail.start() for tail in tails)) if start <= at < end]
    return bool(re.fullmatch("(?:ML)+", "".join(mark for _, mark in sorted(marks))))


def _reader(kind: str) -> Callable[[TagText], Iterator[Found[Length]]]:
    def read(tag: TagText) -> Iterator[Found[Length]]:
        sizes = [size for size in _sizes(tag.string) if size.kind == kind and size.certainty > 0]
        yield from (Found(x.measure.length, x.measure.span, round(x.certainty, 3)) for x in sizes)
        if kind == "spacing" and not sizes:
            yield from by_density(tag.string)

    read.__doc__ = f"Every {kind.replace('_', ' ')} on the tag, in the order printed."
    return read


read_height = _reader("height")
read_flower_height = _reader("flower_height")
read_spread = _reader("spread")
read_spacing = _reader("spacing")
read_row_spacing = _reader("row_spacing")
