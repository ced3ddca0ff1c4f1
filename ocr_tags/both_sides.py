"""What one side of a tag tells about names on the other, before the two are laid together.

A front often has the common name alone and the back the botanical one: what plant the back names tells
whether a word of the front is a name, a colour or a fruit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ocr_tags import titles
from ocr_tags.claims import Claim
from ocr_tags.facts import BOTANICAL_NAME, COMMON_NAMES
from ocr_tags.known_names import agrees
from ocr_tags.selling_names import told_apart

NAMED = 0.8
"""How sure a botanical name is, at least, that tells about the other side."""
VOUCHED, ENDING = 0.95, 0.8
"""How sure a common name becomes whose plant the other side names in Latin, whole or by its last words."""
OTHER_PLANT = 0.6
"""What is left of the certainty of one that is another plant's."""


def settled(stated: Mapping[str, Sequence[Claim]]) -> dict[str, list[Claim]]:
    """By field, what both sides state, names judged by the botanical names of the other side."""
    botanical = told_apart(stated.get(BOTANICAL_NAME.name, ()))
    common = list(_judged(stated.get(COMMON_NAMES.name, ()), botanical))
    said = {name: list(several) for name, several in stated.items()}
    return {**said, BOTANICAL_NAME.name: botanical, COMMON_NAMES.name: common}


def _judged(common: Sequence[Claim], botanical: Sequence[Claim]) -> Iterator[Claim]:
    named = [b for b in botanical if b.certainty >= NAMED and b.value.genus]
    genera = {b.value.genus for b in named}
    known = any(_is_of(titles.known_ending(claim.value.split())[1], genera) for claim in common)
    for claim in common:
        if not named or any(b.side == claim.side for b in named):
            yield claim
        elif not known and len(common) == 1 and titles.has_head(claim.value):
            yield _surer(claim, ENDING)  # what ends as names do and is the only one: Spiny-Head Mat-Rush
        else:
            yield _beside(claim, genera)


def _beside(claim: Claim, genera: set[str]) -> Claim:
    words = claim.value.split()
    if claim.value in genera or _is_of(claim.value, genera):
        return _surer(claim, VOUCHED)
    count, ending = titles.known_ending(words)
    if _is_of(ending, genera):
        return _surer(claim, ENDING)
    first = " ".join(words[: titles.known_beginning(words)])
    if _is_of(first, genera):  # Strawberry Ozark Beauty, and on the back Fragaria
        return _surer(replace(claim, value=first), ENDING)
    return _weighted(claim, OTHER_PLANT) if count == len(words) else claim


def _is_of(name: str, genera: set[str]) -> bool:
    return bool(name) and any(agrees(name, genus) for genus in genera)


def _surer(claim: Claim, certainty: float) -> Claim:
    return _weighted(claim, certainty / claim.certainty) if 0 < claim.certainty < certainty else claim


def _weighted(claim: Claim, share: float) -> Claim:
    votes = tuple((engine, min(vote * share, 1.0)) for engine, vote in claim.votes)
    return replace(claim, certainty=min(claim.certainty * share, 1.0), votes=votes)
