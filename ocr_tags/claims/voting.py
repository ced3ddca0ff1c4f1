"""Claims into readings: what the two sides of a tag state is laid together, field by field.

Engines that agree leave less doubt than either; another value in the same place, or elsewhere on the tag,
leaves more. How much, is measured (`confidence.py`); here it is only gathered.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import prod
from typing import Any

from ocr_tags.claims.agreement import compare
from ocr_tags.claims.confidence import IN_WORDS, PART, Evidence, Fit, fitted
from ocr_tags.claims.of_side import Claim, odds
from ocr_tags.layout.text import MERGED
from ocr_tags.meaning.model import UNKNOWN
from ocr_tags.record import Box, Field, Reading, Side, Status

LIKELY = 0.5
"""Likelier right than wrong: enough for an item of a list, and for a value to put another in doubt."""
LESSER = frozenset(("tesseract", "tesserocr"))
"""Engines that err more often: of what one of them alone found on drawn tags two in five were right, of what
the other alone found nine in ten."""
LEAST_VOTE = 0.3
"""A value with no better vote is left out: the samples hold too few such to tell how often they are right."""

Weighed = tuple[Reading[Any], Evidence]


def readings(
    field: Field[Any], front: Iterable[Claim], back: Iterable[Claim], fit: Fit | None = None
) -> tuple[Reading[Any], ...]:
    """The record's entry for this field: agreement of the sides raises confidence, difference is shown."""
    fit = fit or fitted()
    found = weigh(field, [*front, *back], fit)
    return tuple(reading for reading, evidence in found if _is_shown(field, reading, evidence, fit))


def _is_shown(field: Field[Any], reading: Reading[Any], evidence: Evidence, fit: Fit) -> bool:
    """Sides that differ are both shown, where either would be without the other."""
    if reading.status == "disagreed" and any(other.side != reading.side for other in reading.alternatives):
        return fit.chance(field.name, replace(evidence, elsewhere=0.0)) >= fit.least(field.name)
    return evidence.vote >= LEAST_VOTE and reading.confidence >= fit.least(field.name)


def weigh(field: Field[Any], everything: Sequence[Claim], fit: Fit) -> list[Weighed]:
    """Every reading the field could have, however unlikely, with the evidence for it."""
    if field.shape == "one":
        return _one(field, everything, fit)
    if field.shape == "each":
        items = [(group, _weighed(field.name, group, fit)) for group in _grouped(everything, apart=True)]
        items.sort(key=lambda item: (min(claim.order for claim in item[0]), -_joint(item[0])))
        return [weighed for _, weighed in items]
    return _list(field, parts(field, everything, fit), fit)


def parts(field: Field[Any], everything: Sequence[Claim], fit: Fit) -> list[Weighed]:
    """Every item a list could have, in printed order, each with the evidence for it."""
    groups = sorted(_grouped(everything), key=lambda group: min(claim.order for claim in group))
    return [_weighed(field.name + PART, group, fit) for group in groups]


def _one(field: Field[Any], everything: Sequence[Claim], fit: Fit) -> list[Weighed]:
    groups = sorted(_grouped(everything), key=lambda group: -_odds(group))
    if not groups:
        return []
    best, evidence = _weighed(field.name, groups[0], fit, *groups[1:])
    others = [_weighed(field.name, group, fit, groups[0])[0] for group in groups[1:]]
    likely = [fit.chance(field.name, _evidence(field.name, group)) >= LIKELY for group in groups[1:]]
    shown = tuple(other for other, alone in zip(others, likely, strict=True) if alone)
    return [(replace(best, status="disagreed", alternatives=shown) if shown else best, evidence)]


def _list(field: Field[Any], items: Sequence[Weighed], fit: Fit) -> list[Weighed]:
    """One reading of all likely items: as sure as its weakest, less the strongest that was left out."""
    kept = [item for item in items if item[0].confidence >= LIKELY]
    if not kept:
        return []
    left_out = max((item[0].confidence for item in items if item not in kept), default=0.0)
    members = [reading for reading, _ in kept]
    weakest = min(kept, key=lambda item: item[0].confidence)[1]
    evidence = replace(weakest, elsewhere=left_out, parts=1 - 1 / len(kept))
    first = max(members, key=lambda part: part.confidence)
    boxes = [part.box for part in members if part.photo == first.photo and part.box is not None]
    reading = Reading(
        value=tuple(part.value for part in members),
        printed=" · ".join(part.printed for part in members),
        side=first.side,
        box=Box.around(boxes) if boxes else None,
        confidence=fit.chance(field.name, evidence),
        status="agreed" if all(part.status == "agreed" for part in members) else "read",
        photo=first.photo,
    )
    return [(reading, evidence)]


def _grouped(everything: Iterable[Claim], apart: bool = False) -> list[list[Claim]]:
    """Claims that say the same, or of which one says more than the other, together; the fullest first.

    With `apart`, only those that say the same: "Coneflower" and "Purple Coneflower" are two names.
    """
    groups: list[list[Claim]] = []
    for claim in sorted(everything, key=lambda claim: -claim.strength):
        for group in groups:
            verdict = compare(claim.value, group[0].value)
            if verdict == "different" or (apart and verdict != "same"):
                continue
            fuller = verdict == "fuller" and claim.strength > 0.5 * group[0].strength
            group.insert(0, claim) if fuller else group.append(claim)
            break
        else:
            groups.append([claim])
    return groups


def _joint(group: Sequence[Claim]) -> float:
    """Strength of what both sides say: each side counts once."""
    return 1 - prod(1 - strength for strength in _by_side(group).values())


def _rivalry(group: Sequence[Claim]) -> float:
    """Strength of another value, as far as its words may tell of this fact: "Well drained" is no watering."""
    return _joint(group) * min(max(claim.meant for claim in group) / UNKNOWN, 1.0)


def _odds(group: Sequence[Claim]) -> float:
    """How likely it is right by what was read and by what its words tell of."""
    return odds(_joint(group), max(claim.meant for claim in group))


def _by_side(group: Sequence[Claim]) -> dict[Side, float]:
    best: dict[Side, float] = {}
    for claim in group:
        best[claim.side] = max(claim.strength, best.get(claim.side, 0.0))
    return best


def _weighed(name: str, group: Sequence[Claim], fit: Fit, *rivals: Sequence[Claim]) -> Weighed:
    shown = next((claim for claim in group if not _in_capitals(claim.value)), group[0])
    status: Status = "agreed" if len(_by_side(group)) > 1 else "read"
    evidence = _evidence(name, group, *rivals)
    chance = fit.chance(name, evidence)
    reading = Reading(shown.value, shown.printed, shown.side, shown.box, chance, status, photo=shown.photo)
    return reading, evidence


def _in_capitals(value: Any) -> bool:
    """Whether words are in capitals throughout: as they stand elsewhere on the tag they read better."""
    return isinstance(value, str) and value.isupper()


def _evidence(name: str, group: Sequence[Claim], *rivals: Sequence[Claim]) -> Evidence:
    """What speaks for the value on the side that shows it best, and what the rest of the tag says to it.

    A claim that says less than the value ("Phlox paniculata", of a cultivar) speaks for a part of it only.
    """
    whole = [claim for claim in group if compare(claim.value, group[0].value) != "poorer"]
    best = max(whole, key=lambda claim: claim.strength)
    votes = sorted((vote for _, vote in best.votes), reverse=True)
    away = [strength for side, strength in _by_side(group).items() if side != best.side]
    rival = max(map(_rivalry, rivals), default=0.0)
    alone = len(votes) < best.asked
    lesser = best.votes[0][0] in LESSER
    return Evidence(
        vote=votes[0],
        certainty=best.certainty,
        second=votes[1] if len(votes) > 1 else 0.0,
        unsupported=float(alone),
        lesser=float(alone and lesser),
        in_form=float(alone and not lesser and name.removesuffix(PART) not in IN_WORDS),
        echo=best.echo if alone else 0.0,
        partly=float(best.partly),
        pieced=float(best.votes[0][0] == MERGED),
        both_sides=max(away, default=0.0),
        in_place=best.doubt,
        meant=best.meant,
        beyond=best.beyond,
        by_example=float(best.by_example),
        elsewhere=min(rival / max(_joint(group), 1e-6), 1.0),
    )
