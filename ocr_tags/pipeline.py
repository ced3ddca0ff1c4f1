"""The whole story on one page: a photo of each side in, one record out."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any, TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray

from ocr_tags.claims.both_sides import settled
from ocr_tags.claims.confidence import Fit, fitted
from ocr_tags.claims.of_side import Claim, claims
from ocr_tags.claims.voting import readings
from ocr_tags.claims.whole_names import whole_names
from ocr_tags.engines import Engine, open_engines
from ocr_tags.facts import BOTANICAL_NAME, COMMON_NAMES, PRICE, SERIES
from ocr_tags.fields import FIELDS
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.sale import of_land
from ocr_tags.layout.lines import Line
from ocr_tags.layout.text import BARS, side_texts
from ocr_tags.names.matching import match_plant
from ocr_tags.pictures.barcodes import code_words, confirmed, read_codes
from ocr_tags.pictures.glare import find_glare
from ocr_tags.pictures.photos import OpenedPhoto, open_photo
from ocr_tags.reading import PictureRead, read_pictures
from ocr_tags.record import Photo, PlantMatch, Reading, Side, TagRecord, Word
from ocr_tags.settings import Settings
from ocr_tags.shots import joined_claims, joined_lines

FEW_WORDS = 3
"""A side with fewer words than this, and no value among them, counts as unreadable."""
TITLE_SIZE = 1.5
HEARD = 0.7
"""From this chance on, what a photo says helps to tell which photos are of one tag."""

T = TypeVar("T")
Several: TypeAlias = T | Sequence[T] | None
"""Of one side: nothing, its only photo, or all its photos."""

Look = Callable[[Sequence[NDArray[np.uint8]], Sequence[Engine]], Sequence[PictureRead]]
"""What turns the pixels of photos into lines of words."""


@dataclass(frozen=True, slots=True)
class SideRead:
    """What one photo says, before it is known what stands on the tag's other side."""

    photo: Photo
    claims: Mapping[str, tuple[Claim, ...]]
    lines: tuple[str, ...]
    title: str | None
    word_count: int
    readers: tuple[str, ...]
    words: tuple[Word, ...] = ()
    blown_out: tuple[str, ...] = ()
    """The words beside patches where light has blown out the print."""

    @property
    def readings(self) -> dict[str, tuple[Reading[Any], ...]]:
        """The record's entries, were this side the whole tag, and what is a little too unsure for them."""
        return _laid_together(self, None, fit=replace(fitted(), shown=HEARD))


def read_tag(front: Several[Path], back: Several[Path] = None, settings: Settings | None = None) -> TagRecord:
    """The record of one tag from a photo, or several, of its front, its back, or both.

    Raises PhotoError when a file is no photo and ReaderError when no engine is installed.
    """
    chosen = settings or Settings()
    fronts, backs = (
        [open_photo(path, settings=chosen) for path in _several(paths)] for paths in (front, back)
    )
    return make_record(*read_sides(fronts, backs, chosen))


def read_sides(
    fronts: Sequence[OpenedPhoto],
    backs: Sequence[OpenedPhoto],
    settings: Settings,
    look: Look = read_pictures,
) -> tuple[list[SideRead], list[SideRead]]:
    """Everything each photo says: those thought to be fronts, and backs, best of one tag at a time."""
    engines = _engines(settings.reader, settings.languages, str(settings.tessdata or ""))
    readers = tuple(engine.describe() for engine in engines)
    seen = look_at((*fronts, *backs), engines, look)
    return (
        [_side_read("front", photo, *next(seen), readers) for photo in fronts],
        [_side_read("back", photo, *next(seen), readers) for photo in backs],
    )


def look_at(
    photos: Sequence[OpenedPhoto], engines: Sequence[Engine], look: Look = read_pictures
) -> Iterator[tuple[PictureRead, list[Word]]]:
    """What each photo says, the numbers in its bars among the passes, and its codes by themselves."""
    for photo, seen in zip(photos, look([photo.pixels for photo in photos], engines), strict=True):
        codes = _codes(photo, seen)
        yield replace(seen, passes=_with_codes(seen.passes, codes)), codes


def _side_read(
    side: Side, photo: OpenedPhoto, seen: PictureRead, codes: Sequence[Word], readers: tuple[str, ...]
) -> SideRead:
    texts = side_texts(seen.passes, side, seen.height, is_label)
    main = texts[0] if texts else None
    lines = tuple(main.string[line.start : line.end] for line in main.lines) if main else ()
    titles = [main.string[ln.start : ln.end] for ln in main.lines if ln.size >= TITLE_SIZE] if main else []
    outline = tuple((round(x), round(y)) for x, y in seen.straight.outline)
    words, glare = tuple(span.word for span in main.words) if main else (), find_glare(seen.straight.pixels)
    return SideRead(
        photo=Photo(side, photo.name, photo.sha256, photo.width, photo.height, photo.taken_at, outline),
        claims={field.name: claims(texts, field) for field in FIELDS},
        lines=(*lines, *(word.text for word in codes if word.reader == "qr")),
        title=" ".join(titles) or None,
        word_count=len(main.words) if main else 0,
        readers=readers,
        words=words,
        blown_out=tuple(word.text for word in glare.beside(words)) if glare else (),
    )


def _codes(photo: OpenedPhoto, seen: PictureRead) -> list[Word]:
    """The photo's bar and QR codes, each as one word."""
    words = [word for lines in seen.passes.values() for line in lines for word in line.words]
    return code_words(confirmed(read_codes(photo.pixels), words), seen.straight.to_photo)


def _with_codes(passes: Mapping[str, Sequence[Line]], codes: Sequence[Word]) -> dict[str, list[Line]]:
    """The passes and, as one more reading, the numbers in bars; what was read inside a code is no print.

    A QR code's text is no print either: it may hold anything, so no field is sought in it.
    """
    if not codes:
        return {name: list(lines) for name, lines in passes.items()}
    kept = {
        name: [
            Line(words)
            for line in lines
            if (words := tuple(word for word in line.words if not any(_lies_in(word, c) for c in codes)))
        ]
        for name, lines in passes.items()
    }
    return {**kept, BARS: [Line((code,)) for code in codes if code.reader == BARS]}


def _lies_in(word: Word, code: Word) -> bool:
    x, y = word.box.x + word.box.w / 2, word.box.y + word.box.h / 2
    return code.box.x <= x <= code.box.right and code.box.y <= y <= code.box.bottom


def make_record(
    front: Several[SideRead], back: Several[SideRead] = None, notes: tuple[str, ...] = ()
) -> TagRecord:
    """One record from what the photos of the sides say. ValueError when there are none."""
    shots = [_as_side(shot, "front") for shot in _several(front)]
    shots += [_as_side(shot, "back") for shot in _several(back)]
    shots = [_as_photo(shot, number) for number, shot in enumerate(shots)]
    if not shots:
        raise ValueError("a record needs at least one side")
    by_side = [[shot for shot in shots if shot.photo.side == side] for side in ("front", "back")]
    sides = [one_side(group) for group in by_side if group]
    found = _laid_together(*sides)
    return TagRecord(
        tag_id=tag_id(*(shot.photo.sha256 for shot in shots)),
        photos=tuple(shot.photo for shot in shots),
        readings=found,
        plant=_plant(found),
        texts={side.photo.side: side.lines for side in sides},
        readers=tuple(dict.fromkeys(reader for shot in shots for reader in shot.readers)),
        notes=(*notes, *_unreadable(sides, found), *_blown_out(sides)),
    )


def one_side(shots: Sequence[SideRead]) -> SideRead:
    """Several photos of one side as one reading of it; `photo` and `words` are those of the first."""
    if len(shots) == 1:
        return shots[0]
    fullest = max(shots, key=lambda shot: shot.word_count)
    return replace(
        shots[0],
        claims=joined_claims(shots),
        lines=joined_lines(shots),
        title=fullest.title,
        word_count=fullest.word_count,
        blown_out=shots[0].blown_out if all(shot.blown_out for shot in shots) else (),
    )


def tag_id(*hashes: str) -> str:
    """The tag's name, from the contents of its photos: the same photos always give the same name."""
    return hashlib.sha256("".join(sorted(hashes)).encode()).hexdigest()[:12]


@cache
def _engines(name: str, languages: str, data_folder: str) -> tuple[Engine, ...]:
    return open_engines(name, languages, data_folder or None)


def _as_side(side_read: SideRead, side: Side) -> SideRead:
    if side_read.photo.side == side:
        return side_read
    own = {
        name: tuple(replace(claim, side=side) for claim in found) for name, found in side_read.claims.items()
    }
    return replace(side_read, photo=replace(side_read.photo, side=side), claims=own)


def _as_photo(shot: SideRead, number: int) -> SideRead:
    """The claims pointing at the record's photo of this number."""
    own = {
        name: tuple(replace(claim, photo=number) for claim in found) for name, found in shot.claims.items()
    }
    return replace(shot, claims=own)


def _several(given: Several[T]) -> Sequence[T]:
    if given is None:
        return ()
    return given if isinstance(given, Sequence) else (given,)


def _laid_together(
    first: SideRead, second: SideRead | None = None, *, fit: Fit | None = None
) -> dict[str, tuple[Reading[Any], ...]]:
    sides = (first, second) if second else (first,)
    lines = {side.photo.side: side.lines for side in sides}
    both = "\n".join(line for own in lines.values() for line in own)
    said = settled(
        {field.name: [c for side in sides for c in side.claims.get(field.name, ())] for field in FIELDS}
    )
    said[PRICE.name] = list(_of_land(said[PRICE.name], both))
    found = {field.name: readings(field, said[field.name], (), fit) for field in FIELDS}
    botanical, series = (
        found[name][0].value if found[name] else None for name in (BOTANICAL_NAME.name, SERIES.name)
    )
    found[COMMON_NAMES.name] = whole_names(found[COMMON_NAMES.name], botanical, series, lines)
    return {name: entries for name, entries in found.items() if entries}


def _of_land(prices: Sequence[Claim], both: str) -> Iterator[Claim]:
    """The prices one side states, in the money of the land that either side names."""
    for claim in prices:
        if (price := of_land(claim.value, claim.printed, both)) is not None:
            yield replace(claim, value=price)


def _plant(found: Mapping[str, tuple[Reading[Any], ...]]) -> PlantMatch | None:
    common = tuple(reading.value for reading in found.get(COMMON_NAMES.name, ()))
    botanical = found.get(BOTANICAL_NAME.name)
    return match_plant(common, botanical[0].value if botanical else None)


def _unreadable(sides: list[SideRead], found: Mapping[str, tuple[Reading[Any], ...]]) -> tuple[str, ...]:
    """Which side could not be read, so that the other one speaks for the tag."""
    notes = [
        f"The {side.photo.side} could not be read ({side.photo.file})."
        for side in sides
        if side.word_count < FEW_WORDS and not side.readings
    ]
    if len(sides) > 1 and _named(found) and not _named(sides[0].readings) and not notes:
        notes.append("The front gave no name that could be read; the name is from the back.")
    return tuple(notes)


def _blown_out(sides: Sequence[SideRead]) -> Iterator[str]:
    """Where light hides print, so that what is missing there is not taken for not printed."""
    for side in sides:
        if side.blown_out:
            which, longest = side.photo.side, max(side.blown_out, key=len)
            yield f"Part of the {which} is blown out by light: print near “{longest}” may be missing."


def _named(found: Mapping[str, tuple[Reading[Any], ...]]) -> bool:
    return COMMON_NAMES.name in found or BOTANICAL_NAME.name in found
