"""Do two photos show the two sides of one tag? Judged from what was read on them.

A record mixed from two plants is worse than two half records, so without a sign that two sides belong
together they stay apart. The signs are common practice, no source: a back usually repeats the plant's
name or has no name and only care; a front says little, a back much.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Protocol

from rapidfuzz import fuzz

from ocr_tags.names.matching import match_plant
from ocr_tags.pictures.overlay import lay_over
from ocr_tags.record import Photo, Reading, Side, Word
from ocr_tags.values import BotanicalName

NAMES = frozenset(("common_names", "botanical_name", "series"))
NOT_CARE = NAMES | {"supplier", "warnings", "native_claim"}
FEW_WORDS = 3
SAME_PRINT = 80.0
"""Likeness, 0 to 100, above which two texts are the same side read twice."""
LEAST_ALIKE = 0.5
"""Share of the words of the photo with fewer that must be in place on the other, to show one side twice."""
LEAST_WHOLE = 0.35
"""The same of the photo with more words: light may hide much, a front and a back share only names."""
MOST_UNLIKE = 8
"""So many words must be the same for each that surely differs."""
SAME_WORD = 80.0
SAME_EPITHET = 72.0
"""Lower: an epithet is set in small italics, which are read worst."""


class ReadSide(Protocol):
    """What is looked at in a side that was read (`pipeline.SideRead` has it all)."""

    @property
    def photo(self) -> Photo: ...
    @property
    def readings(self) -> Mapping[str, tuple[Reading[Any], ...]]: ...
    @property
    def lines(self) -> tuple[str, ...]: ...
    @property
    def title(self) -> str | None: ...
    @property
    def word_count(self) -> int: ...
    @property
    def words(self) -> tuple[Word, ...]: ...


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether two sides are one tag. `why` completes "because ...".

    `clash`: they plainly speak of two tags, even if their file names pair them. `strength` ranks the
    signs of one that is ok, 1 to 3.
    """

    ok: bool
    why: str
    front_first: bool = True
    clash: bool = False
    strength: int = 0
    same: bool = False
    """They are two photos of one side."""


def belong_together(first: ReadSide, second: ReadSide) -> Verdict:
    """The verdict on two photos, given in the order they were taken."""
    one, two = _Look(first), _Look(second)
    front_first = one.fullness <= two.fullness
    if not one.legible or not two.legible:
        if not one.legible and not two.legible:
            return Verdict(False, "neither could be read")
        return Verdict(True, "one of them could not be read", strength=1)
    same, parted = _same_print(first, second, one, two), _parted(one, two)
    if parted and not (same and _told_on(one, two) and _told_on(two, one)):
        return Verdict(False, parted, front_first, clash=True)
    if same:
        return Verdict(False, "they show the same print: one side photographed twice", front_first, same=True)
    against = _disagreements(one, two)
    shared = _shared(one, two)
    if shared and len(against) < 3 and not _two_fronts(one, two):
        return Verdict(True, f"both speak of {shared}", front_first, strength=3)
    if one.names and two.names:
        return Verdict(
            False, f"no name on one ({one.names[0]}) is on the other ({two.names[0]})", front_first
        )
    if not one.names and not two.names:
        return Verdict(False, "neither names a plant", front_first)
    if len(against) > 1:
        return Verdict(False, f"they give different values for {' and '.join(against)}", front_first)
    if not (two if one.names else one).care:
        # Script or picture letters beat the reader: nothing of that side goes into the record.
        return Verdict(True, "one of them gave no value that could be read", front_first, strength=1)
    return Verdict(True, "one names the plant and the other tells how to grow it", front_first, strength=2)


def likely_side(side: ReadSide) -> Side:
    """Which side a lone photo shows: the back when it tells of care and names no plant, else the front."""
    look = _Look(side)
    return "back" if look.care and not look.names else "front"


class _Look:
    """One side as pairing sees it."""

    def __init__(self, side: ReadSide) -> None:
        self.readings = side.readings
        self.text = fold(" ".join(side.lines))
        self.words = frozenset(self.text.split())
        self.word_count = side.word_count
        self.title = side.title
        self.care = [name for name in self.readings if name not in NOT_CARE]

    @property
    def legible(self) -> bool:
        return self.word_count >= FEW_WORDS or bool(self.readings)

    @cached_property
    def botanical(self) -> BotanicalName | None:
        found = self.readings.get("botanical_name")
        value = found[0].value if found else None
        return value if isinstance(value, BotanicalName) else None

    @cached_property
    def common(self) -> tuple[str, ...]:
        return tuple(str(reading.value) for reading in self.readings.get("common_names", ()))

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Every name on the side, as printed; the cultivar also by itself."""
        botanical = self.botanical
        written = (botanical.name, botanical.cultivar) if botanical else ()
        return (*self.common, *(name for name in written if name))

    @cached_property
    def plants(self) -> frozenset[str]:
        """The plants the names may stand for, by the word lists."""
        match = match_plant(self.common, self.botanical) if self.names else None
        return frozenset() if match is None else frozenset(filter(None, (match.name, *match.could_be)))

    @property
    def fullness(self) -> int:
        """How much the side says: the back says more. A value counts as much as five words of advertising;
        a side without a name as if it had three values more."""
        return self.word_count + 5 * len(self.care) + (0 if self.names else 15)


# ---------------------------------------------------------------- signs for and against


def _shared(one: _Look, two: _Look) -> str | None:
    """A name of one side that the other side also has, or a plant both names stand for."""
    for here, there in ((one, two), (two, one)):
        for name in here.names:
            words = [word for word in fold(name).split() if len(word) > 2]
            if len("".join(words)) >= 4 and all(_is_among(word, there.words) for word in words):
                return name
    plants = sorted(one.plants & two.plants)
    return plants[0] if plants else None


def _same_print(first: ReadSide, second: ReadSide, one: _Look, two: _Look) -> bool:
    """One side twice: most of what can be on both stands in the same places and says the same.

    Where places tell nothing, because too little was read, all of the text must be nearly the same.
    """
    over = lay_over(first, second)
    if over is None:
        return fuzz.token_sort_ratio(one.text, two.text) >= SAME_PRINT and not _two_fronts(one, two)
    told = {word for name in (*one.names, *two.names) for word in fold(name).split()}
    if any(here.words <= told and len(there.care) > 1 for here, there in ((one, two), (two, one))):
        return False  # a front that has names only, in the places in which the back has them too
    other_name = any(told & {*fold(a).split(), *fold(b).split()} for a, b in over.unlike)
    few_differ = len(over.unlike) * MOST_UNLIKE <= over.alike
    return over.share >= LEAST_ALIKE and over.whole >= LEAST_WHOLE and few_differ and not other_name


def _told_on(one: _Look, two: _Look) -> bool:
    """Whether all that names the first stands on the second too, whatever it was taken for there."""
    codes = [str(reading.value) for reading in one.readings.get("gtin", ())]
    return all(_is_among(word, two.words) for name in (*one.names, *codes) for word in fold(name).split())


def _two_fronts(one: _Look, two: _Look) -> bool:
    """Two tags that share a name ("Tomato") and go on differently ("Roma", "Big Boy"), in large letters where
    there is anything on care, which the back of such a front would have."""

    def goes_on(here: _Look, there: _Look) -> bool:
        told = fold(here.title or "") if here.care or there.care else here.text
        return any(len(word) > 2 and not _is_among(word, there.words) for word in told.split())

    return len(one.care) < 2 and len(two.care) < 2 and goes_on(one, two) and goes_on(two, one)


def _is_among(word: str, words: frozenset[str]) -> bool:
    return word in words or any(
        abs(len(other) - len(word)) < 3 and fuzz.ratio(word, other) >= SAME_WORD for other in words
    )


def _parted(one: _Look, two: _Look) -> str | None:
    """Why the two cannot be one tag, or None."""
    codes = [side.readings["gtin"][0].value for side in (one, two) if side.readings.get("gtin")]
    if len(codes) == 2 and codes[0] != codes[1]:
        return f"they carry different barcodes ({codes[0]}, {codes[1]})"
    if one.botanical and two.botanical:
        for part, rank in (("genus", "genera"), ("species", "species"), ("cultivar", "cultivars")):
            here, there = getattr(one.botanical, part), getattr(two.botanical, part)
            if here and there and not _alike(here, there):
                return f"they name two {rank}, {here} and {there}"
    both_known = one.plants and two.plants and not one.plants & two.plants
    if both_known and not _shared(one, two) and not _same_genus(one.plants, two.plants):
        return f"they name two plants, {one.names[0]} and {two.names[0]}"
    return None


def _alike(here: str, there: str) -> bool:
    here, there = fold(here), fold(there)
    shorter = min(len(here), len(there))
    within = set(here.split()) <= set(there.split()) or set(there.split()) <= set(
        here.split()
    )  # half a name read
    return within or fuzz.ratio(here, there) >= SAME_EPITHET or (shorter < 4 and here[:1] == there[:1])


def _same_genus(one: frozenset[str], two: frozenset[str]) -> bool:
    return bool({name.split()[0] for name in one} & {name.split()[0] for name in two})


def _disagreements(one: _Look, two: _Look) -> list[str]:
    def differing() -> Iterator[str]:
        for name in one.care:
            if name in two.care:
                here, there = one.readings[name][0].value, two.readings[name][0].value
                if isinstance(here, str) or here == there:  # free words differ on any two sides
                    continue
                yield name.replace("_", " ")

    return list(differing())


def fold(text: str) -> str:
    """Lower-case words without accents and marks, to compare names.

    >>> fold("Salvia 'Caradónna'")
    'salvia caradonna'
    """
    plain = unicodedata.normalize("NFKD", text).casefold()
    bare = "".join(each for each in plain if not unicodedata.combining(each))
    return " ".join(re.findall(r"[a-z0-9]+", bare))
