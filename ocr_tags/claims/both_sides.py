"""What one side of a tag tells about names on the other, before the two are laid together.

A front often has the common name alone and the back the botanical one: what plant the back names tells
whether a word of the front is a name, a colour or a fruit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from rapidfuzz.distance import OSA

from ocr_tags.claims.agreement import compare
from ocr_tags.claims.of_side import Claim
from ocr_tags.claims.selling_names import told_apart
from ocr_tags.claims.whole_names import is_one_line
from ocr_tags.facts import (
    BOTANICAL_NAME,
    COLOURS,
    COMMON_NAMES,
    FLOWER_HEIGHT,
    HEIGHT,
    PLANT_PASSPORT,
    ROW_SPACING,
    SERIES,
    SPACING,
    SPREAD,
)
from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.known_names import agrees

NAMED = 0.8
"""How sure a botanical name is, at least, that tells about the other side."""
VOUCHED, ENDING = 0.95, 0.8
"""How sure a common name becomes whose plant the other side names in Latin, whole or by its last words."""
OTHER_PLANT = 0.6
"""What is left of the certainty of one that is another plant's, or a title beside a name that is known."""
GUESSED = 0.75
"""The most that a title counts of which no list knows a word."""
LONG, ALIKE = 7, 0.75
"""How long a name of no list is, and how like one of the other side, to be the same read badly."""
CLEARLY = 1.25
WHOLE = 0.6
"""A range is as printed from this share of the strength up that one of its ends has by itself."""
SIZES = frozenset(fact.name for fact in (HEIGHT, FLOWER_HEIGHT, SPREAD, SPACING, ROW_SPACING))

ACROSS = frozenset(fact.name for fact in (SPREAD, SPACING))


def settled(stated: Mapping[str, Sequence[Claim]]) -> dict[str, list[Claim]]:
    """By field, what both sides state, names judged by the botanical names of the other side."""
    botanical = told_apart(stated.get(BOTANICAL_NAME.name, ()))
    selling = _selling_names(botanical, stated.get(SERIES.name, ()))
    named = [_put_right(claim, stated[COMMON_NAMES.name]) for claim in stated.get(COMMON_NAMES.name, ())]
    named = [claim for claim in named if lexicon.is_common_name(claim.value) or _is_apart(claim, selling)]
    common = list(_judged(list(_with_selling_name(named, selling)), botanical))
    known = {name: list(_known_first(several, stated)) for name, several in stated.items()}
    said = {name: [_cut_short(claim, name, known) for claim in several] for name, several in known.items()}
    if SERIES.name in said:
        sold = {repair.fold(claim.value.trade_designation or "") for claim in botanical}
        said[SERIES.name] = [claim for claim in said[SERIES.name] if repair.fold(claim.value) not in sold]
    if PLANT_PASSPORT.name in said:
        said[PLANT_PASSPORT.name] = [_cut_name(claim, botanical) for claim in said[PLANT_PASSPORT.name]]
    if COLOURS.name in said:
        said[COLOURS.name] = [claim for claim in said[COLOURS.name] if not _is_name(claim, common)]
    for name in SIZES & said.keys():
        own = [claim for claim in said[name] if not _is_other_size(claim, name, stated)]
        said[name] = [claim for claim in own if not any(_is_end_of(claim, other) for other in own)]
    if SPACING.name in said:
        said[SPACING.name] = list(_not_of_rows(said[SPACING.name], said.get(ROW_SPACING.name, ())))
    return {**said, BOTANICAL_NAME.name: botanical, COMMON_NAMES.name: common}


def _known_first(several: Sequence[Claim], stated: Mapping[str, Sequence[Claim]]) -> Iterator[Claim]:
    """What examples alone tell only where no pattern tells this fact, nor another one of the same words."""
    known = [claim for claim in several if not claim.by_example]
    yield from known
    if not known:
        others = [claim for own in stated.values() for claim in own if not claim.by_example]
        yield from (claim for claim in several if not any(_shares_words(claim, other) for other in others))


def _cut_short(claim: Claim, name: str, stated: Mapping[str, Sequence[Claim]]) -> Claim:
    """A phrase without what is another fact's print, where an engine reads it without: one that has lost a
    label runs on from one value of a table into the next, "Let it dry out Well drained"."""
    if not (claim.partly and isinstance(claim.value, str)):
        return claim
    others = (other for fact, several in stated.items() if fact != name for other in several)
    for other in others:
        head = claim.value.removesuffix(f" {other.printed}")
        if head != claim.value and (other.side, other.photo) == (claim.side, claim.photo):
            printed = claim.printed.removesuffix(f" {other.printed}")
            return replace(claim, value=head.rstrip(" ,;·"), printed=printed)
    return claim


def _shares_words(claim: Claim, other: Claim) -> bool:
    """Whether half of a claim's print or more was read as the other."""
    return (claim.side, claim.photo) == (other.side, other.photo) and any(
        one[0] == two[0] and min(one[2], two[2]) - max(one[1], two[1]) > (one[2] - one[1]) / 2
        for one in claim.spans
        for two in other.spans
    )


def _cut_name(passport: Claim, botanical: Sequence[Claim]) -> Claim:
    """A passport that names the genus alone, where the tag names the species, has likely lost a word."""
    genus = passport.value.botanical_name
    cut = any(b.value.genus == genus and b.value.species and b.certainty >= NAMED for b in botanical)
    return _weighted(passport, OTHER_PLANT) if cut else passport


def _is_name(colour: Claim, common: Sequence[Claim]) -> bool:
    """Whether a colour is all of a line that is a common name of the plant: Sea Pink, of Armeria."""
    return any(
        (claim.side, claim.photo, claim.box) == (colour.side, colour.photo, colour.box)
        and claim.certainty >= NAMED
        and " " in claim.value
        for claim in common
    )


def _is_other_size(claim: Claim, name: str, stated: Mapping[str, Sequence[Claim]]) -> bool:
    """Whether other words say more surely what a printed length is: in one order of reading it has lost them,
    or the other side has words where this one has an arrow, and arrows for spread and spacing look alike.

    "2 ft tall and wide" is both, and one text says so.
    """
    return claim.box is not None and any(
        (_is_print_of(other, claim) or (name in ACROSS and fact in ACROSS and _is_repeat_of(other, claim)))
        and other.certainty > CLEARLY * claim.certainty
        for fact in SIZES - {name}
        for other in stated.get(fact, ())
    )


def _is_end_of(claim: Claim, other: Claim) -> bool:
    """Whether it is one end of a range that another reading has whole: "40 cm", of "25 cm - 40 cm"."""
    whole, end = other.value, claim.value
    return (
        end.min_cm == end.max_cm
        and whole.min_cm != whole.max_cm
        and end.max_cm in (whole.min_cm, whole.max_cm)
        and None not in (whole.min_cm, whole.max_cm)
        and other.strength > WHOLE * claim.strength
    )


def _is_print_of(other: Claim, claim: Claim) -> bool:
    same = (other.side, other.photo, other.box) == (claim.side, claim.photo, claim.box)
    return same and not {*other.spans} & {*claim.spans}


def _is_repeat_of(other: Claim, claim: Claim) -> bool:
    return other.side != claim.side and compare(other.value, claim.value) == "same"


def _not_of_rows(spacing: Sequence[Claim], rows: Sequence[Claim]) -> Iterator[Claim]:
    """The spacings without what is printed as that of rows: where columns were read one by one, "8 ft apart"
    has lost the "rows" that stands beside it, and so has the second of two units in the next line."""
    of_rows = {(claim.side, claim.photo, claim.box) for claim in rows}
    for claim in spacing:
        within = any(one.side == claim.side and _holds_print(one, claim) for one in rows)
        if (claim.side, claim.photo, claim.box) not in of_rows and not within:
            yield claim


def _holds_print(claim: Claim, other: Claim) -> bool:
    """Whether the other is a part of its print that says the same: 90 cm, of 3 ft / 90 cm."""
    whole, part = ("".join(one.printed.split()) for one in (claim, other))
    return part in whole and part != whole and compare(claim.value, other.value) == "same"


def _judged(common: Sequence[Claim], botanical: Sequence[Claim]) -> Iterator[Claim]:
    named = [b for b in botanical if b.certainty >= NAMED and b.value.genus]
    genera = {b.value.genus for b in named}
    known = [claim for claim in common if _is_of(titles.known_ending(claim.value.split())[1], genera)]
    said = {claim.side for claim in known if claim.value not in genera}
    for claim in common:
        if claim.value in genera and any(_is_within(claim, latin) for latin in botanical):
            continue  # Hosta, of Hosta 'Sky Lantern'
        if lexicon.is_genus(claim.value) and any(_ends_with(one, claim.value) for one in common):
            continue  # Deutzia, where the tag has Slender Deutzia
        if any(_is_kind_of(claim.value, one.value) for one in common if one.side != claim.side):
            continue  # "Tomato, Roma", where the other side says Tomato
        guessed = claim.certainty <= GUESSED and claim not in known and not titles.is_foreign(claim.value)
        if guessed and said - {claim.side}:
            yield _weighted(claim, OTHER_PLANT)  # a selling name above it, or its series
        elif any(b.side == claim.side for b in named) or (
            said and claim.value in genera and not lexicon.is_trade_name(claim.value)
        ):
            yield claim
        elif named and (known or len(common) > 1):
            yield _beside(claim, genera)
        else:
            yield _alone(claim, genera)


def _put_right(claim: Claim, common: Sequence[Claim]) -> Claim:
    """A name of no list, as the other side has it whom a list knows, where few letters differ: of curved or
    written letters engines read "Sade Plan", beside Jade Plant on the back."""
    if lexicon.is_common_name(claim.value) or len(claim.value) < LONG or claim.certainty > GUESSED:
        return claim
    read = repair.fold(claim.value)
    near = (
        other.value
        for other in common
        if other.side != claim.side
        and other.certainty > GUESSED
        and lexicon.is_common_name(other.value)
        and OSA.normalized_similarity(read, repair.fold(other.value)) >= ALIKE
    )
    return replace(claim, value=next(near, claim.value))


def _is_apart(claim: Claim, selling: set[str]) -> bool:
    """Whether a name is none under which the tag sells its plant, its series or cultivar."""
    return repair.fold(claim.value) not in selling


def _selling_names(botanical: Sequence[Claim], series: Sequence[Claim]) -> set[str]:
    """The words, folded, under which this plant is sold beside its common name."""
    named = [part for claim in botanical for part in (claim.value.cultivar, claim.value.trade_designation)]
    return {repair.fold(part) for part in (*named, *(claim.value for claim in series)) if part}


def _with_selling_name(common: Sequence[Claim], selling: set[str]) -> Iterator[Claim]:
    """The names, where one side has in one line what the other breaks in two or leaves out: Arp Rosemary, and
    Rosemary on the front, are one name, and so are Black Cherry Tomato, and Tomato under Black Cherry."""
    for claim in common:
        own = [one for one in common if one.side == claim.side and one is not claim]
        whole = [one for one in common if one.side != claim.side and is_one_line(one)]
        if any(_is_begun(claim, one, own) for one in whole):
            continue
        before = selling | {repair.fold(one.value) for one in own}
        named = next((one for one in whole if _begun(one, claim) in before), claim)
        yield replace(claim, value=named.value)


def _is_begun(claim: Claim, whole: Claim, own: Sequence[Claim]) -> bool:
    """Whether it begins a name whose rest its side has on another line: Pee Gee, over Hydrangea."""
    first, words = _words(claim), _words(whole)
    rest = words[len(first) :]
    return (
        bool(rest) and words[: len(first)] == first and any(_words(one)[-len(rest) :] == rest for one in own)
    )


def _begun(whole: Claim, claim: Claim) -> str:
    """What stands before a name in a longer one that ends with it, folded; "" where it does not."""
    words, ending = _words(whole), _words(claim)
    first = len(words) - len(ending)
    return "".join(words[:first]) if first > 0 and words[first:] == ending else ""


def _words(claim: Claim) -> list[str]:
    return [repair.fold(word) for word in claim.value.split()]


def _is_within(claim: Claim, latin: Claim) -> bool:
    """Whether a common name was read out of the botanical one: the two have one place."""
    return claim.side == latin.side and bool({*claim.spans} & {*latin.spans})


def _ends_with(claim: Claim, genus: str) -> bool:
    return claim.certainty >= NAMED and claim.value.lower().endswith(f" {genus.lower()}")


def _is_kind_of(name: str, other: str) -> bool:
    """Whether a name is the other one and, behind a comma, its kind or cultivar."""
    return name.lower().startswith(f"{other.lower()}, ")


def _alone(claim: Claim, genera: set[str]) -> Claim:
    """The only common name of a tag: one that ends as names do is hardly anything else."""
    ends = titles.has_head(claim.value) or titles.known_ending(claim.value.split())[0]
    return _surer(_beside(claim, genera), ENDING) if ends and " " in claim.value else _beside(claim, genera)


def _beside(claim: Claim, genera: set[str]) -> Claim:
    """The claim beside a plant named in Latin on the other side; without one, as it is."""
    words = claim.value.split()
    if claim.value in genera or _is_of(claim.value, genera):
        return _surer(claim, VOUCHED)
    count, ending = titles.known_ending(words)
    if _is_of(ending, genera):
        return _surer(claim, ENDING)
    first = " ".join(words[: titles.known_beginning(words)])
    if _is_of(first, genera) and words[len(first.split())][0].islower():  # Géranium zonal
        return _surer(claim, ENDING)
    if _is_of(first, genera):  # Strawberry Ozark Beauty, and on the back Fragaria
        return _surer(replace(claim, value=first), ENDING)
    return _weighted(claim, OTHER_PLANT) if genera and count == len(words) else claim


def _is_of(name: str, genera: set[str]) -> bool:
    return bool(name) and any(agrees(name, genus) for genus in genera)


def _surer(claim: Claim, certainty: float) -> Claim:
    return _weighted(claim, certainty / claim.certainty) if 0 < claim.certainty < certainty else claim


def _weighted(claim: Claim, share: float) -> Claim:
    votes = tuple((engine, min(vote * share, 1.0)) for engine, vote in claim.votes)
    return replace(claim, certainty=min(claim.certainty * share, 1.0), votes=votes)
