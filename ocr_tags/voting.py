"""Many findings into few claims: readings of one side vote, then the two sides are laid together.

A finding counts by how surely its letters were read and how surely its grammar speaks. An engine has one
vote, however often it read: only different engines err differently. Engines that agree leave less doubt than
either; another value in the same place, or elsewhere on the tag, leaves more. How much, is measured
(`confidence.py`); here it is only gathered.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import prod
from typing import Any

from ocr_tags.agreement import compare, key
from ocr_tags.confidence import PART, Evidence, Fit, fitted
from ocr_tags.record import Box, Field, Found, Reading, Side, Status, TagText
from ocr_tags.text import MERGED

TRUST = 0.9
"""The most that one reading alone can count, however sure it is of itself."""
FULLER_SHARE = 0.6
"""A value that explains more of the print stays when it is at least this strong beside the poorer one."""
POORER_VOTE = 0.5
"""The share of its vote that an engine gives to a value of which it read a part in the same place."""

LIKELY = 0.5
"""Likelier right than wrong: enough for an item of a list, and for a value to put another in doubt."""
LEAST_VOTE = 0.3
"""A value with no better vote is left out: the samples hold too few such to tell how often they are right."""


@dataclass(frozen=True, slots=True)
class Claim:
    """One value that one side of a tag may state. `votes` holds, by engine, how much its finding counts."""

    value: Any
    printed: str
    side: Side
    box: Box | None
    votes: tuple[tuple[str, float], ...]
    order: float
    doubt: float = 0.0
    """How strong another value is that was read in the same place, 0 to 1 of this one's strength."""
    certainty: float = 1.0
    """The grammar's part of the best vote."""
    asked: int = 1
    """How many engines read this side."""
    photo: int = 0
    """In which of the record's photos `box` lies."""
    place: Box | None = None
    """Where `box` lies in the first photo of a side that has several; None where that is not known."""
    spans: tuple[tuple[int, int, int], ...] = ()
    """In which of the side's texts it was found, from where to where."""

    @property
    def strength(self) -> float:
        return (1 - prod(1 - TRUST * vote for _, vote in self.votes)) * (1 - self.doubt / 2)


Weighed = tuple[Reading[Any], Evidence]


def claims(texts: Sequence[TagText], field: Field[Any]) -> tuple[Claim, ...]:
    """What the texts of one side state for this field, strongest first; `each` fields in printed order."""
    asked = len({_engine(text.reader) for text in texts} - {MERGED})
    groups: dict[Any, list[Claim]] = {}
    for number, text in enumerate(texts):
        for order, found in enumerate(field.read(text)):
            spans = ((number, *found.span),)
            claim = replace(_claim(text, found, order), asked=max(asked, 1), spans=spans)
            groups.setdefault(key(claim.value), []).append(claim)
    united = sorted((unite(group) for group in groups.values()), key=lambda claim: -claim.strength)
    return settle_places(united)


def _engine(reader: str) -> str:
    """The engine of a pass: "tesseract" of "tesseract lines"."""
    return reader.partition(" ")[0]


def _claim(text: TagText, found: Found[Any], order: int) -> Claim:
    words = text.words_in(found.span)
    box = Box.around(word.box for word in words) if words else None
    printed = " ".join(text.string[slice(*found.span)].split())
    votes = ((_engine(text.reader), found.certainty * _clearness(text, found)),)
    return Claim(found.value, printed, text.side, box, votes, order, certainty=found.certainty)


def _clearness(text: TagText, found: Found[Any]) -> float:
    """How surely the letters were read: the mean over letters, pulled down by the worst word."""
    words = text.words_in(found.span)
    letters = sum(len(word.text) for word in words)
    if not letters:
        return 1.0
    mean = sum(word.confidence * len(word.text) for word in words) / letters
    return 0.6 * mean + 0.4 * min(word.confidence for word in words)


def unite(group: Sequence[Claim]) -> Claim:
    """Claims of one value as one claim. The merged text is made of the others, so it counts only alone."""
    votes = _joined(*(claim.votes for claim in group))
    best = max(group, key=lambda claim: claim.strength)
    own = tuple(vote for vote in votes if vote[0] != MERGED)
    order = sum(claim.order for claim in group) / len(group)
    spans = tuple(span for claim in group for span in claim.spans)
    return replace(best, votes=own or votes, order=order, spans=spans)


def _joined(*several: Iterable[tuple[str, float]]) -> tuple[tuple[str, float], ...]:
    """Votes by engine; an engine has one, its best."""
    votes: dict[str, float] = {}
    for engine, vote in (each for votes in several for each in votes):
        votes[engine] = max(vote, votes.get(engine, 0.0))
    return tuple(sorted(votes.items()))


def settle_places(united: Sequence[Claim]) -> tuple[Claim, ...]:
    """Of several values read in one place one stays, doubted as far as the others are strong.

    The strongest stays, unless a value hardly weaker explains more of the print ("Full Sun to Part Sun"
    beside "Full Sun"): then that one does, and the poorer is no reason for doubt but half a vote.
    """
    kept: list[Claim] = []
    for claim in united:
        at = next((index for index, other in enumerate(kept) if _same_place(claim, other)), None)
        if at is None:
            kept.append(claim)
        elif _explains_more(claim, kept[at]):
            elsewhere = claim.photo != kept[at].photo  # may have run into what stands beside it there
            backed = not elsewhere or len(claim.votes) >= len(kept[at].votes)
            if backed and claim.strength > FULLER_SHARE * kept[at].strength:
                kept[at] = _backed(claim, kept[at], POORER_VOTE)
        elif _explains_more(kept[at], claim):
            kept[at] = _backed(kept[at], claim, POORER_VOTE)
        elif compare(kept[at].value, claim.value) == "different":
            doubt = min(claim.strength / max(kept[at].strength, 1e-6), 1.0)
            kept[at] = replace(kept[at], doubt=max(kept[at].doubt, doubt))
        else:
            kept[at] = _backed(kept[at], claim, 1.0)
    return tuple(kept)


def _backed(claim: Claim, other: Claim, share: float) -> Claim:
    """The claim with a share of another's votes that its own engines have not given."""
    given = [(engine, vote * share) for engine, vote in other.votes if engine != MERGED]
    return replace(claim, votes=_joined(claim.votes, given))


def _explains_more(claim: Claim, other: Claim) -> bool:
    fuller, poorer = key(claim.printed), key(other.printed)
    return len(fuller) > len(poorer) and (poorer in fuller or _lost_a_word(claim.printed, other.printed))


def _lost_a_word(fuller: str, poorer: str) -> bool:
    """Whether the poorer print is the fuller one without words from its middle.

    >>> _lost_a_word("Swamp White Oak", "Swamp Oak"), _lost_a_word("3 to 4 ft", "3 4 ft")
    (True, False)
    """
    left = iter(fuller.lower().split())
    words = poorer.lower().split()
    return len(words) > 1 and not any(map(str.isdigit, poorer)) and all(word in left for word in words)


def _same_place(a: Claim, b: Claim) -> bool:
    here, there = (a.box, b.box) if a.photo == b.photo else (a.place, b.place)
    if here is None or there is None or _side_by_side(a, b):
        return False
    wide = min(here.right, there.right) - max(here.x, there.x)
    high = min(here.bottom, there.bottom) - max(here.y, there.y)
    return wide > 0 and high > 0 and wide * high > 0.4 * min(here.w * here.h, there.w * there.h)


def _side_by_side(a: Claim, b: Claim) -> bool:
    """Whether one text holds both, one after the other, whatever their boxes: "FRUIT·SHRUB" read as one word,
    two sentences that share a line."""
    return a.photo == b.photo and any(
        one[0] == other[0] and (one[2] <= other[1] or other[2] <= one[1])
        for one in a.spans
        for other in b.spans
    )


# ---------------------------------------------------------------- the two sides together


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
        return fit.chance(field.name, replace(evidence, elsewhere=0.0)) >= fit.shown
    return evidence.vote >= LEAST_VOTE and reading.confidence >= fit.shown


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
    groups = sorted(_grouped(everything), key=lambda group: -_joint(group))
    if not groups:
        return []
    best, evidence = _weighed(field.name, groups[0], fit, *groups[1:])
    others = [_weighed(field.name, group, fit, groups[0])[0] for group in groups[1:]]
    likely = [fit.chance(field.name, _evidence(group)) >= LIKELY for group in groups[1:]]
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


def _by_side(group: Sequence[Claim]) -> dict[Side, float]:
    best: dict[Side, float] = {}
    for claim in group:
        best[claim.side] = max(claim.strength, best.get(claim.side, 0.0))
    return best


def _weighed(name: str, group: Sequence[Claim], fit: Fit, *rivals: Sequence[Claim]) -> Weighed:
    shown = next((claim for claim in group if not _in_capitals(claim.value)), group[0])
    status: Status = "agreed" if len(_by_side(group)) > 1 else "read"
    evidence = _evidence(group, *rivals)
    chance = fit.chance(name, evidence)
    reading = Reading(shown.value, shown.printed, shown.side, shown.box, chance, status, photo=shown.photo)
    return reading, evidence


def _in_capitals(value: Any) -> bool:
    """Whether words are in capitals throughout: as they stand elsewhere on the tag they read better."""
    return isinstance(value, str) and value.isupper()


def _evidence(group: Sequence[Claim], *rivals: Sequence[Claim]) -> Evidence:
    """What speaks for the value on the side that shows it best, and what the rest of the tag says to it."""
    best = max(group, key=lambda claim: claim.strength)
    votes = sorted((vote for _, vote in best.votes), reverse=True)
    away = [strength for side, strength in _by_side(group).items() if side != best.side]
    rival = max(map(_joint, rivals), default=0.0)
    return Evidence(
        vote=votes[0],
        certainty=best.certainty,
        second=votes[1] if len(votes) > 1 else 0.0,
        unsupported=float(len(votes) < best.asked),
        pieced=float(best.votes[0][0] == MERGED),
        both_sides=max(away, default=0.0),
        in_place=best.doubt,
        elsewhere=min(rival / max(_joint(group), 1e-6), 1.0),
    )
