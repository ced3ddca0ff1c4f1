"""Botanical names of two sides, where one prints a cultivar and the other only a title above the name.

The title is taken for the cultivar as long as nothing else is known. Where the other side prints another
cultivar in the name itself, the title is what the plant is sold as: "Sky Lantern" over Salvia nemorosa, and
on the back Salvia nemorosa 'Lambin'. That is no disagreement.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from rapidfuzz.distance import OSA

from ocr_tags import lexicon, repair
from ocr_tags.claims import Claim
from ocr_tags.cultivars import combine, with_cultivar
from ocr_tags.values import BotanicalName

ALIKE = 0.7
"""Share of letters in common from which on a title may be the printed cultivar, read in other letters."""


def told_apart(stated: Sequence[Claim]) -> list[Claim]:
    """The claims of both sides for the botanical name, with titles as selling names of a printed cultivar."""
    settled = list(stated)
    for at, title in enumerate(stated):
        for number, named in enumerate(stated):
            if _is_sold_as(title, named):
                settled[at] = replace(title, value=_without_cultivar(title.value))
                sold_as = named.value.trade_designation or title.value.cultivar
                settled[number] = replace(named, value=replace(named.value, trade_designation=sold_as))
    return settled


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
