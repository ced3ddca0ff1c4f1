"""What several photos of one side say together: each reads the same print, in other light.

A value that light or a finger hides in one photo is taken from another; what two photos say is surer; of two
values in one place one stays. Every value keeps pointing at the photo in which it is seen best.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any, Protocol

from rapidfuzz import fuzz

from ocr_tags.claims.agreement import key
from ocr_tags.claims.of_side import Claim, settle_places, unite
from ocr_tags.pictures.overlay import Overlay, Shot, lay_over

SAME_LINE = 75.0
"""Likeness, 0 to 100, above which lines of two photos are one line."""
SAME_EYES = 0.5
"""An engine's second look leaves less in doubt, but half as much less as another engine's: it errs alike."""


class ReadShot(Shot, Protocol):
    @property
    def claims(self) -> Mapping[str, tuple[Claim, ...]]: ...
    @property
    def lines(self) -> tuple[str, ...]: ...


def joined_lines(shots: Sequence[ReadShot]) -> tuple[str, ...]:
    """The lines of the first photo, then those of the others that it does not show."""
    kept: list[str] = []
    for shot in shots:
        kept += [line for line in shot.lines if not any(fuzz.ratio(line, old) >= SAME_LINE for old in kept)]
    return tuple(kept)


def joined_claims(shots: Sequence[ReadShot]) -> dict[str, tuple[Claim, ...]]:
    """By field, what the photos state, strongest first, as one photo's claims would be."""
    ways = [None, *(lay_over(shots[0], shot) for shot in shots[1:])]
    return {
        name: _united(
            _placed(claim, way, first=number == 0)
            for number, (shot, way) in enumerate(zip(shots, ways, strict=True))
            for claim in shot.claims.get(name, ())
        )
        for name in dict.fromkeys(name for shot in shots for name in shot.claims)
    }


def _placed(claim: Claim, way: Overlay | None, first: bool) -> Claim:
    """The claim with its place in the first photo, where that is known."""
    if first or claim.box is None:
        return replace(claim, place=claim.box)
    return replace(claim, place=way.carried(claim.box) if way else None)


def _united(claims: Iterable[Claim]) -> tuple[Claim, ...]:
    groups: dict[Any, list[Claim]] = {}
    for claim in claims:
        groups.setdefault(key(claim.value), []).append(claim)
    return settle_places(sorted(map(_seen_again, groups.values()), key=lambda claim: -claim.strength))


def _seen_again(group: Sequence[Claim]) -> Claim:
    """One value in several photos, as it is seen best, and surer for each."""
    best = unite(group)
    place = best.place or next((claim.place for claim in group if claim.place), None)
    return replace(best, place=place, votes=tuple((engine, _vote(engine, group)) for engine, _ in best.votes))


def _vote(engine: str, group: Sequence[Claim]) -> float:
    first, *more = sorted((dict(claim.votes).get(engine, 0.0) for claim in group), reverse=True)
    for vote in more:
        first += (1 - first) * SAME_EYES * vote
    return first
