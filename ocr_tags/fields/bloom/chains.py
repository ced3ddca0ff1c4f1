"""The words of a time one after the other, and the bloom time that they tell."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.bloom.numbers import span
from ocr_tags.fields.bloom.words import GOES_ON, JOIN, RANGE, TERMS, Chain, Term
from ocr_tags.fields.phrases import Hit, clean, fold
from ocr_tags.values import Bloom


def chains_of(text: str) -> Iterator[tuple[Chain, int]]:
    """Seasons and months joined by "to", "and", a dash: one statement, and where its words begin.

    "Late spring / Fin du printemps" is two, which begin at one place.
    """
    folded = fold(text)
    chain: Chain = []
    anchor = 0
    for hit in TERMS.find(text):
        joint = folded[chain[-1].end : hit.start] if chain else ""
        if chain and not _joined(joint, chain[-1].value, hit.value):
            yield chain, anchor
            chain = []
        elif chain and _turns(joint, chain, hit.value):
            yield chain, anchor
            chain = [hit]
            continue
        anchor = anchor if chain else hit.start
        chain.append(hit)
    if chain:
        yield chain, anchor


def _joined(joint: str, one: Term, other: Term) -> bool:
    beside = one.part and not one.season and other.month  # "late May"
    lasts = GOES_ON.fullmatch(joint.replace("\n", " ", 1))
    return bool(JOIN.fullmatch(joint) or lasts or (beside and joint in (" ", "-", "\n")))


def _turns(joint: str, chain: Chain, other: Term) -> bool:
    """Whether another language begins here; names of months belong to several."""
    seasons = any(hit.value.season for hit in chain) and (other.season or other.part)
    return bool(seasons and re.search(r"[/|\n]", joint) and chain[-1].value.foreign != other.foreign)


def start_of(folded: str, chain: Chain) -> int:
    """Where the words begin: "all summer" and "throughout summer" belong to the time."""
    lead = re.search(r"(?:\ball |\bthroughout |\btout l.|\btodo el )$", folded[: chain[0].start])
    return lead.start() if lead else chain[0].start


def bloom_of(text: str, chain: Chain) -> Bloom | None:
    folded = fold(text)
    months = _months(folded, chain)
    seasons = tuple(dict.fromkeys(_season_names(chain)))
    if not months and not seasons:
        return None
    return Bloom(clean(text[start_of(folded, chain) : chain[-1].end]), seasons, months)


def _season_names(chain: Chain) -> Iterator[str]:
    """Seasons as named; in "early to mid summer" the season of the first part is that of the next."""
    for at, hit in enumerate(chain):
        if hit.value.season:
            yield "_".join(filter(None, (hit.value.part, hit.value.season)))
        elif hit.value.part:
            following = next((h.value for h in chain[at + 1 :] if h.value.season or h.value.month), None)
            if following and following.season:
                yield f"{hit.value.part}_{following.season}"


def _months(folded: str, chain: Chain) -> tuple[int, ...]:
    months: list[int] = []
    previous: Hit[Term] | None = None
    for hit in chain:
        if not hit.value.month:
            continue
        joined = folded[previous.end : hit.start] if previous else ""
        months += span(months[-1], hit.value.month)[1:] if RANGE.search(joined) else (hit.value.month,)
        previous = hit
    return tuple(dict.fromkeys(months))
