"""Botanical names of two sides, where one prints a cultivar and the other only a title above the name.

The title is taken for the cultivar as long as nothing else is known. Where the other side prints another
cultivar in the name itself, the title is what the plant is sold as: "Sky Lantern" over Salvia nemorosa, and
on the back Salvia nemorosa 'Lambin'. That is no disagreement.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from rapidfuzz.distance import OSA

from ocr_tags.claims.of_side import Claim
from ocr_tags.names import lexicon, repair
from ocr_tags.names.cultivars import combine, with_cultivar
from ocr_tags.values import BotanicalName

CLEAR = 0.7
"""How strong a cultivar without a genus is, at least, for a name on the other side to take it up."""
DOUBT = 0.5
"""What is left of the vote of an engine that read the name on one side and not its cultivar on the other."""
ALIKE = 0.7
"""Share of letters in common from which on a title may be the printed cultivar, read in other letters."""


def told_apart(stated: Sequence[Claim]) -> list[Claim]:
    """The claims of both sides for the botanical name, each name with the cultivar that is its own.

    A title beside a printed cultivar is a selling name. A cultivar printed without a genus belongs to the
    name on the other side, where that has none; it is no name by itself.
    """
    alone = [claim for claim in stated if claim.value.genus is None and claim.value.cultivar]
    settled = [claim for claim in stated if claim not in alone]
    clear = [claim for claim in alone if claim.strength >= CLEAR]
    settled = [_with_its_cultivar(claim, clear) for claim in settled]
    whole = list(settled)
    for at, title in enumerate(whole):
        for number, named in enumerate(whole):
            if _is_sold_as(title, named):
                settled[at] = replace(title, value=_without_cultivar(title.value))
                sold_as = named.value.trade_designation or title.value.cultivar
                settled[number] = replace(named, value=replace(named.value, trade_designation=sold_as))
    return settled


def _with_its_cultivar(named: Claim, alone: Sequence[Claim]) -> Claim:
    apart = max(
        (claim for claim in alone if claim.side != named.side), key=lambda claim: claim.strength, default=None
    )
    if apart is None or named.value.cultivar or named.value.trade_designation or not named.value.species:
        return named
    weaker = dict(apart.votes)
    votes = tuple((engine, min(vote, weaker.get(engine, vote * DOUBT))) for engine, vote in named.votes)
    certainty = min(named.certainty, apart.certainty)
    return replace(
        named, value=with_cultivar(named.value, apart.value.cultivar), votes=votes, certainty=certainty
    )


def _is_sold_as(title: Claim, named: Claim) -> bool:
    above, own = title.value.cultivar, named.value.cultivar
    if title.side == named.side or not above or not own or _is_printed(title) or not _is_printed(named):
        return False
    rest = replace(named.value, trade_designation=title.value.trade_designation)
    agreed = combine(_without_cultivar(title.value), rest) is not None
    return agreed and OSA.normalized_similarity(repair.fold(above), repair.fold(own)) < ALIKE


def _is_printed(claim: Claim) -> bool:
    """Whether the cultivar stands in the name as printed, and was not sought above or below it."""
    return lexicon.key(claim.value.cultivar or "") in lexicon.key(claim.printed)


def _without_cultivar(name: BotanicalName) -> BotanicalName:
    return replace(with_cultivar(name, ""), cultivar=None)
