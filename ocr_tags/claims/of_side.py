"""Many findings of one side into few claims: the readings of a side vote.

A finding counts by how surely its letters were read and how surely its grammar speaks. An engine has one
vote, however often it read: only different engines err differently.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import log, prod
from typing import Any

from ocr_tags.claims.agreement import compare, key
from ocr_tags.claims.by_example import by_example
from ocr_tags.claims.echo import letters_again
from ocr_tags.claims.endings import ending_where_meant
from ocr_tags.layout.text import BARS, MARKS, MERGED
from ocr_tags.meaning.model import meaning
from ocr_tags.record import Box, Field, Found, Side, TagText
from ocr_tags.values import Length

TRUST = 0.9
"""The most that one reading alone can count, however sure it is of itself."""
FULLER_SHARE = 0.6
"""A value that explains more of the print stays when it is at least this strong beside the poorer one."""
NO_EYES = frozenset([MERGED, BARS])
"""Readings that can miss no printed word: one is made of the others, one holds nothing but bars."""
FULLER_LEAD, MEANING = 0.7, 2.0
"""What speaks for the fuller of two ends of a value, and what the meaning of its words weighs: of 520 drawn
tags 22 values more were right so, and 3 fewer wrong."""
POORER_VOTE = 0.5
"""The share of its vote that an engine gives to a value of which it read a part in the same place."""


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
    echo: float = 0.0
    """How alike another engine's letters are in its place, where that engine did not find the value."""
    partly: bool = False
    """Whether another engine read a part of it only, or more than it: where it ends, they do not agree."""
    meant: float = 0.5
    """The chance that its words tell of this fact, by example (`meaning/`)."""
    beyond: float = 0.0
    """The chance that the words beside it belong to it as well."""
    by_example: bool = False
    """Whether examples alone tell it, and no pattern."""
    spans: tuple[tuple[int, int, int], ...] = ()
    """In which of the side's texts it was found, from where to where."""

    @property
    def strength(self) -> float:
        return (1 - prod(1 - TRUST * vote for _, vote in self.votes)) * (1 - self.doubt / 2)


def claims(texts: Sequence[TagText], field: Field[Any]) -> tuple[Claim, ...]:
    """What the texts of one side state for this field, strongest first; `each` fields in printed order."""
    asked = len({_engine(text.reader) for text in texts} - NO_EYES)
    by_pattern = [list(field.read(text)) for text in texts]
    guessed = not any(by_pattern)
    read = (by_example(text, field) for text in texts) if guessed else by_pattern
    groups: dict[Any, list[Claim]] = {}
    for number, (text, several) in enumerate(zip(texts, read, strict=True)):
        told = meaning(text)
        for order, found in enumerate(ending_where_meant(text, field, each) for each in several):
            claim = replace(
                _claim(text, found, order),
                asked=max(asked, 1),
                spans=((number, *found.span),),
                meant=told.chance(field.name, found.span),
                beyond=told.beyond(field.name, found.span),
                by_example=guessed,
            )
            groups.setdefault(key(claim.value), []).append(claim)
    united = sorted((unite(group) for group in groups.values()), key=lambda claim: -claim.strength)
    settled = settle_places([_heard(claim, texts) for claim in united])
    # A name broken over lines is read in part as well: that tells nothing of where it ends.
    return tuple(replace(claim, partly=claim.partly and field.shape != "each") for claim in settled)


def _heard(claim: Claim, texts: Sequence[TagText]) -> Claim:
    """The claim, and where one engine alone found it, how alike the letters of another are in its place.

    A drawn mark is found by its shape, whichever engine reads what stands beside it. Where it tells what a
    value is, another engine that reads the same letters there has a vote as well.
    """
    own = {engine for engine, _ in claim.votes}
    others = [text for text in texts if _engine(text.reader) not in own | NO_EYES]
    if len(own) > 1 or not others or not claim.spans:
        return claim
    words = [texts[number].words_in((start, end)) for number, start, end in claim.spans]
    echo = letters_again(max(words, key=len), others)
    if echo == 1 and all(texts[number].reader.endswith(MARKS) for number, _, _ in claim.spans):
        return replace(claim, votes=_joined(claim.votes, [(_engine(others[0].reader), claim.certainty)]))
    return replace(claim, echo=echo)


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
    return replace(
        best,
        votes=own or votes,
        order=order,
        spans=spans,
        meant=max(claim.meant for claim in group),
        beyond=min(claim.beyond for claim in group),
    )


def _joined(*several: Iterable[tuple[str, float]]) -> tuple[tuple[str, float], ...]:
    """Votes by engine; an engine has one, its best."""
    votes: dict[str, float] = {}
    for engine, vote in (each for votes in several for each in votes):
        votes[engine] = max(vote, votes.get(engine, 0.0))
    return tuple(sorted(votes.items()))


def settle_places(united: Sequence[Claim]) -> tuple[Claim, ...]:
    """Of several values read in one place one stays, doubted as far as the others are strong.

    The strongest stays, unless a value hardly weaker explains more of the print ("Full Sun to Part Sun"
    beside "Full Sun"): then that one does, and the poorer is no reason for doubt but half a vote. Where
    another engine has the poorer one alone, that one may stay.
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
                kept[at] = _longer(claim, kept[at])
        elif _explains_more(kept[at], claim):
            kept[at] = _longer(kept[at], claim)
        elif compare(kept[at].value, claim.value) == "different":
            doubt = min(claim.strength / max(kept[at].strength, 1e-6), 1.0)
            kept[at] = replace(kept[at], doubt=max(kept[at].doubt, doubt))
        else:
            kept[at] = _backed(kept[at], claim, 1.0)
    return tuple(kept)


def _longer(fuller: Claim, poorer: Claim) -> Claim:
    """The fuller value where it is likely to go on so far; else the poorer, whose end is open to doubt."""
    return _backed(fuller, poorer, POORER_VOTE) if _goes_on(fuller, poorer) else replace(poorer, partly=True)


def _goes_on(fuller: Claim, poorer: Claim) -> bool:
    """Whether a value goes on as far as some engines have it, where another ends it earlier: they may have
    run on into the next line, or the other may have missed words; the meaning of the words speaks too.

    Of a range the far end is often lost, and none is ever made up: that one always goes on.
    """
    if isinstance(fuller.value, Length):
        return True
    own = {engine for engine, _ in fuller.votes}
    rest = tuple(vote for vote in poorer.votes if vote[0] not in own)
    without = replace(poorer, votes=rest)
    lead = odds(fuller.strength, fuller.meant) - odds(without.strength, without.meant)
    return not rest or lead > -FULLER_LEAD


def odds(strength: float, meant: float) -> float:
    """How likely a claim of this strength is right, on the scale on which evidence adds up."""
    strength = min(max(strength, 0.001), 0.999)
    return log(strength / (1 - strength)) + MEANING * meant


def _backed(claim: Claim, other: Claim, share: float) -> Claim:
    """The claim with a share of another's votes that its own engines have not given."""
    given = [(engine, vote * share) for engine, vote in other.votes if engine != MERGED]
    partly = claim.partly or (share < 1 and not {e for e, _ in given} <= {e for e, _ in claim.votes})
    return replace(claim, votes=_joined(claim.votes, given), partly=partly)


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
    return here.shared(there) > 0.4 * min(here.w * here.h, there.w * there.h)


def _side_by_side(a: Claim, b: Claim) -> bool:
    """Whether one text holds both, one after the other, whatever their boxes: "FRUIT·SHRUB" read as one word,
    two sentences that share a line."""
    return a.photo == b.photo and any(
        one[0] == other[0] and (one[2] <= other[1] or other[2] <= one[1])
        for one in a.spans
        for other in b.spans
    )
