"""Many findings into few claims: readings of one side vote, then the two sides are laid together.

A finding counts by how surely its letters were read and how surely its grammar speaks. Independent
readings that agree leave less doubt than either; readings of one place that differ leave more.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import prod
from typing import Any

from ocr_tags.agreement import compare, key
from ocr_tags.confidence import chance
from ocr_tags.record import Box, Field, Found, Reading, Side, Status, TagText

TRUST = 0.9
"""The most that one reading alone can count, however sure it is of itself."""
SHOWN = 0.45
"""A claim with a smaller chance of being right is left out: unreadable is absent."""
FULLER_SHARE = 0.6
"""A value that explains more of the print stays when it is at least this strong beside the poorer one."""


@dataclass(frozen=True, slots=True)
class Claim:
    """One value that one side of a tag may state. `votes` holds, by reader, how much its finding counts."""

    value: Any
    printed: str
    side: Side
    box: Box | None
    votes: tuple[tuple[str, float], ...]
    order: float
    doubt: float = 0.0
    """0 to 1: how strongly another value is read in the same place."""

    @property
    def strength(self) -> float:
        return (1 - prod(1 - TRUST * vote for _, vote in self.votes)) * (1 - self.doubt)


def claims(texts: Sequence[TagText], field: Field[Any]) -> tuple[Claim, ...]:
    """What the texts of one side state for this field, strongest first; `each` fields in printed order."""
    groups: dict[Any, list[Claim]] = {}
    for text in texts:
        for order, found in enumerate(field.read(text)):
            claim = _claim(text, found, order)
            groups.setdefault(key(claim.value), []).append(claim)
    united = sorted((_unite(group) for group in groups.values()), key=lambda claim: -claim.strength)
    return _settle_places(united)


def _claim(text: TagText, found: Found[Any], order: int) -> Claim:
    words = text.words_in(found.span)
    box = Box.around(word.box for word in words) if words else None
    printed = " ".join(text.string[slice(*found.span)].split())
    vote = found.certainty * _clearness(text, found)
    return Claim(found.value, printed, text.side, box, ((text.reader, vote),), order)


def _clearness(text: TagText, found: Found[Any]) -> float:
    """How surely the letters were read: the mean over letters, pulled down by the worst word."""
    words = text.words_in(found.span)
    letters = sum(len(word.text) for word in words)
    if not letters:
        return 1.0
    mean = sum(word.confidence * len(word.text) for word in words) / letters
    return 0.6 * mean + 0.4 * min(word.confidence for word in words)


def _unite(group: Sequence[Claim]) -> Claim:
    """Claims of one value as one claim; a reader has one vote, its best."""
    votes: dict[str, float] = {}
    for claim in group:
        for reader, vote in claim.votes:
            votes[reader] = max(vote, votes.get(reader, 0.0))
    best = max(group, key=lambda claim: claim.strength)
    own = {reader: vote for reader, vote in votes.items() if reader != "merged"}
    order = sum(claim.order for claim in group) / len(group)
    return replace(best, votes=tuple(sorted((own or votes).items())), order=order)


def _settle_places(united: Sequence[Claim]) -> tuple[Claim, ...]:
    """Of several values read in one place one stays, doubted as far as the others are strong.

    The strongest stays, unless a value hardly weaker explains more of the print ("Full Sun to Part Sun"
    beside "Full Sun"): then that one does, and the poorer is no reason for doubt.
    """
    kept: list[Claim] = []
    for claim in united:
        at = next((index for index, other in enumerate(kept) if _same_place(claim, other)), None)
        if at is None:
            kept.append(claim)
        elif _explains_more(claim, kept[at]):
            kept[at] = claim if claim.strength > FULLER_SHARE * kept[at].strength else kept[at]
        elif compare(kept[at].value, claim.value) == "different" and not _explains_more(kept[at], claim):
            doubt = 0.5 * claim.strength / max(kept[at].strength, 1e-6)
            kept[at] = replace(kept[at], doubt=max(kept[at].doubt, doubt))
    return tuple(kept)


def _explains_more(claim: Claim, other: Claim) -> bool:
    fuller, poorer = key(claim.printed), key(other.printed)
    return len(fuller) > len(poorer) and poorer in fuller


def _same_place(a: Claim, b: Claim) -> bool:
    if a.box is None or b.box is None:
        return False
    wide = min(a.box.right, b.box.right) - max(a.box.x, b.box.x)
    high = min(a.box.bottom, b.box.bottom) - max(a.box.y, b.box.y)
    return wide > 0 and high > 0 and wide * high > 0.4 * min(a.box.w * a.box.h, b.box.w * b.box.h)


# ---------------------------------------------------------------- the two sides together


def readings(field: Field[Any], front: Iterable[Claim], back: Iterable[Claim]) -> tuple[Reading[Any], ...]:
    """The record's entry for this field: agreement of the sides raises confidence, difference is shown."""
    everything = [*front, *back]
    if field.shape == "one":
        return _one(everything)
    items = _distinct(everything, apart=field.shape == "each")
    if field.shape == "each":
        return tuple(_reading(members) for members in items)
    return _list(items)


def _one(everything: Sequence[Claim]) -> tuple[Reading[Any], ...]:
    groups = sorted((g for g in _grouped(everything)), key=lambda group: -_joint(group))
    shown = [reading for reading in map(_reading, groups) if reading.confidence >= SHOWN]
    if not shown:
        return ()
    best, others = shown[0], tuple(shown[1:])
    if others:
        doubt = _joint(groups[1]) / max(_joint(groups[0]) + _joint(groups[1]), 1e-6)
        best = replace(best, status="disagreed", confidence=best.confidence * (1 - doubt / 2))
    return (replace(best, alternatives=others),)


def _distinct(everything: Sequence[Claim], apart: bool) -> list[list[Claim]]:
    groups = [group for group in _grouped(everything, apart) if _reading(group).confidence >= SHOWN]
    return sorted(groups, key=lambda group: (min(c.order for c in group), -_joint(group)))


def _list(items: Sequence[Sequence[Claim]]) -> tuple[Reading[Any], ...]:
    if not items:
        return ()
    parts = [_reading(members) for members in items]
    first = max(parts, key=lambda part: part.confidence)
    boxes = [part.box for part in parts if part.side == first.side and part.box is not None]
    return (
        Reading(
            value=tuple(part.value for part in parts),
            printed=" · ".join(part.printed for part in parts),
            side=first.side,
            box=Box.around(boxes) if boxes else None,
            confidence=min(part.confidence for part in parts),
            status="agreed" if all(part.status == "agreed" for part in parts) else "read",
        ),
    )


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
    by_side = {
        side: max((c.strength for c in group if c.side == side), default=0.0) for side in _sides(group)
    }
    return 1 - prod(1 - strength for strength in by_side.values())


def _sides(group: Sequence[Claim]) -> set[Side]:
    return {claim.side for claim in group}


def _reading(group: Sequence[Claim]) -> Reading[Any]:
    shown = group[0]
    status: Status = "agreed" if len(_sides(group)) > 1 else "read"
    confidence = chance(_joint(group), max(len(claim.votes) for claim in group), status == "agreed")
    return Reading(shown.value, shown.printed, shown.side, shown.box, confidence, status)
