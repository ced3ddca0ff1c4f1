"""Common names of a record laid beside its botanical name: which of them are only parts of another.

One side may print the selling name and the common name as one title, the other side the common name alone;
whether that title is the name, or a cultivar above a name, only the two sides together can tell.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from rapidfuzz.distance import OSA

from ocr_tags.claims.of_side import Claim
from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.known_names import agrees
from ocr_tags.record import Reading, Side
from ocr_tags.values import BotanicalName

ALIKE = 0.8
"""Share of letters in common above which title words are the cultivar, read twice."""
LINE = 0.2
"""A line of print is longer than it is high by at least this for each of its letters; two lines are not."""
WITHIN = 0.8
"""Of the place of a name, in that of another: it is a part of the other's print."""
ENOUGH = 0.75
"""A longer title is the name when it is read at least this surely beside its ending."""

Names = Sequence[Reading[str]]


def whole_names(
    common: Names,
    botanical: BotanicalName | None,
    series: str | None = None,
    lines: Mapping[Side, Sequence[str]] | None = None,
) -> tuple[Reading[str], ...]:
    """The common names without those that another one holds, and without the series or the cultivar printed
    before them. `lines` are those of each side, which may hold what a name was cut from."""
    common = [one for one in common if not any(_is_line_of(one, other) for other in common)]
    held = lines or {}
    common = [one for one in common if not any(_was_cut(one, other, held) for other in common)]
    if series:
        common = _once([_without_series(one, series) for one in common])
    if botanical and botanical.genus:
        common = tuple(one for one in common if not _of_another(one, common, botanical.genus))
    if botanical and (botanical.cultivar or botanical.trade_designation):
        return tuple(one for one in common if not _holds_cultivar(one, common, botanical))
    return tuple(one for one in common if not any(_is_rest_of(one, other) for other in common))


def _of_another(one: Reading[str], common: Names, genus: str) -> bool:
    """Whether it is another plant's name, part of a cultivar broken over lines, where a name goes with the
    genus: Mango, of the calibrachoa 'Mango Sky'."""
    if " " in one.value or not lexicon.plants_called(one.value) or agrees(one.value, genus):
        return False
    return any(agrees(other.value, genus) for other in common if other is not one)


def _is_line_of(one: Reading[str], other: Reading[str]) -> bool:
    """Whether it is one line of the other, which is broken over two: Sunflower, of Common over Sunflower."""
    words, whole = one.value.casefold().split(), other.value.casefold().split()
    part = len(words) < len(whole) and words in (whole[-len(words) :], whole[: len(words)])
    if not part or one.box is None or other.box is None or (one.side, one.photo) != (other.side, other.photo):
        return False
    own, its = one.box.w * one.box.h, other.box.w * other.box.h
    return own < WITHIN * its and one.box.shared(other.box) > WITHIN * own


def _was_cut(one: Reading[str], other: Reading[str], lines: Mapping[Side, Sequence[str]]) -> bool:
    """Whether it is the end of a known name that the other side has whole, whose first words this side has as
    well: Forget-Me-Not, apart from its Woodland."""
    own, words = one.value.casefold().split(), other.value.casefold().split()
    begun = words[: -len(own)]
    if one.side == other.side or not begun or words[len(begun) :] != own:
        return False
    printed = (line.casefold().split() for line in lines.get(one.side, ()))
    return bool(lexicon.plants_called(other.value)) and any(line[-len(begun) :] == begun for line in printed)


def _without_series(one: Reading[str], series: str) -> Reading[str]:
    """Known by what follows the series: Foxglove, of Fern Hollow Foxglove in the Fern Hollow series."""
    words, begun = one.value.split(), series.split()
    rest = " ".join(words[len(begun) :])
    same = [repair.fold(word) for word in words[: len(begun)]] == [repair.fold(word) for word in begun]
    return replace(one, value=rest) if same and lexicon.plants_called(rest) else one


def _once(common: Names) -> Names:
    """Each name where it is read surest."""
    surest: dict[str, Reading[str]] = {}
    for one in sorted(common, key=lambda one: -one.confidence):
        surest.setdefault(repair.fold(one.value), one)
    return [one for one in common if surest[repair.fold(one.value)] is one]


def _holds_cultivar(one: Reading[str], common: Names, botanical: BotanicalName) -> bool:
    """Whether it is a cultivar or selling name over a common name that the record has alone as well."""
    begun, rest = _parted(one.value)
    if not begun or is_one_line(one) or not any(other.value.lower() == rest.lower() for other in common):
        return False
    # A cultivar that is a mere code says that the words above are the selling name.
    return bool(botanical.cultivar) or _is_alike(begun, botanical.trade_designation or "")


def _is_rest_of(one: Reading[str], other: Reading[str]) -> bool:
    """Whether it is what the other name has after unknown words: Tiger Lily, of Sorrel Moon Tiger Lily."""
    begun, rest = _parted(other.value)
    ends = bool(begun) and rest.lower().endswith(one.value.lower())
    return ends and other.confidence >= ENOUGH * one.confidence


def _parted(name: str) -> tuple[str, str]:
    """The unknown words that begin a name, and the known name that ends it; ("", name) without such."""
    words = name.split()
    count, _ = titles.known_ending(words)
    begun = words[:-count]
    if not count or not begun or titles.is_qualifier(begun) or not titles.looks_like_name(" ".join(begun)):
        return "", name
    return " ".join(begun), " ".join(words[-count:])


def _is_alike(one: str, other: str) -> bool:
    return OSA.normalized_similarity(repair.fold(one), repair.fold(other)) >= ALIKE


def is_one_line(one: Reading[str] | Claim) -> bool:
    """Whether its print is as long as one line of its letters would be."""
    if one.box is None:
        return True
    long, short = max(one.box.w, one.box.h), max(min(one.box.w, one.box.h), 1)
    return long / short > LINE * len(one.printed)
