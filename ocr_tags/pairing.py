"""Which two photos are the two sides of one tag, before anything is read: by a pairs file, a name, an order.

Pairs files and side names are taken at their word. Order is only a proposal: whether two photos taken
one after the other belong together is decided in `belonging` from what they say.
"""

from __future__ import annotations

import csv
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Literal

from ocr_tags.errors import TagError
from ocr_tags.photos import PhotoFile, reason
from ocr_tags.record import Photo


class PairsFileError(TagError):
    """A line of the pairs file cannot be followed."""


Bond = Literal["named", "numbered", "loose"]
"""How sure a grouping is: sides named; a first and a second shot of one name; nothing but the order."""


@dataclass(frozen=True, slots=True)
class Group:
    """Photos thought to be one tag before anything is read, front first.

    `named`: sides are known. `numbered`: the two belong together unless they plainly speak of two
    plants, and which is the front is seen from the print. `loose`: one photo, which may belong to the
    next loose one.
    """

    front: PhotoFile | None
    back: PhotoFile | None
    bond: Bond
    why: str

    @property
    def photos(self) -> tuple[PhotoFile, ...]:
        return tuple(each for each in (self.front, self.back) if each is not None)


# ---------------------------------------------------------------- by name

_FRONT = "front|recto|obverse|vorne|vorn|vorderseite|avant|frente"
_BACK = "back|rear|verso|reverse|hinten|rueckseite|rückseite|arriere|arrière|dorso"
_SIDE_WORD = re.compile(rf"(?<![^\W\d_])(?:(?P<front>{_FRONT})|(?P<back>{_BACK}))(?:\s*of)?(?![^\W\d_])")
_SIDE_LETTER = re.compile(r"[\s_.-]+\(?(?:(?P<front>f)|(?P<back>b))\)?$")
_NUMBER = re.compile(r"(?:[\s_.-]+|\s*\()0?(?P<place>\d)\)?$")
_LETTER = re.compile(r"(?:(?<=[^\W_])|[\s_.-]+)\(?(?P<place>[a-z])\)?$")
_RUNNING = re.compile(
    r"(?:img|dscn?|dscf|dscp|pxl|mvimg|image|photo|foto|pict?|picture|sca?n|cam|cimg|sam|file|p|tag)?[\s_.-]*"
    r"|.*\d\d[\s_.-]\d\d"
)
"""What stands before a running number, a day or a second: "IMG_1" and "IMG_2" need not be one tag."""

_Key = tuple[str, str]
_BySide = dict[str, list[PhotoFile]]


def group_by_name(photos: Sequence[PhotoFile]) -> list[Group]:
    """Every photo in one group, in the order of each group's first photo.

    >>> def names(*files):
    ...     return [[p.name for p in g.photos] for g in group_by_name([PhotoFile(Path(f), f) for f in files])]
    >>> names("aster_back.jpg", "aster_front.jpg", "rose (1).jpg", "rose (2).jpg", "IMG_1.jpg", "IMG_2.jpg")
    [['aster_front.jpg', 'aster_back.jpg'], ['rose (1).jpg', 'rose (2).jpg'], ['IMG_1.jpg'], ['IMG_2.jpg']]
    """
    groups: dict[Path, Group] = {}
    left = list(photos)
    for gather in (_named, _numbered):
        for group in gather(left):
            groups.update((photo.path, group) for photo in group.photos)
        left = [photo for photo in left if photo.path not in groups]
    for photo in left:
        groups[photo.path] = Group(photo, None, "loose", "nothing in its name says which side it is")
    return list({id(groups[photo.path]): groups[photo.path] for photo in photos}.values())


def _named(photos: Sequence[PhotoFile]) -> Iterator[Group]:
    sides: dict[_Key, _BySide] = defaultdict(lambda: defaultdict(list))
    for photo in photos:
        stem = photo.path.stem.casefold()
        match = _SIDE_WORD.search(stem) or _SIDE_LETTER.search(stem)
        if match:
            rest = re.sub(r"[\s_.()-]+", " ", f"{stem[: match.start()]} {stem[match.end() :]}").strip()
            side = "front" if match["front"] else "back"
            sides[(str(photo.path.parent), rest)][side].append(photo)
    for found in _one_a_side(sides, ("front", "back")):
        front, back = found.get("front"), found.get("back")
        if front and back:
            yield Group(front, back, "named", f"their names say front and back: {front.name}, {back.name}")
        elif _ends_in_side_word(front or back):
            side = "front" if front else "back"
            yield Group(front, back, "named", f"its name says {side}, and the other side is not here")


def _ends_in_side_word(photo: PhotoFile | None) -> bool:
    """A word inside a name ("back yard rose") says nothing when no partner's name answers to it."""
    if photo is None:
        return False
    matches = list(_SIDE_WORD.finditer(photo.path.stem.casefold()))
    return bool(matches) and matches[-1].end() == len(photo.path.stem)


def _numbered(photos: Sequence[PhotoFile]) -> Iterator[Group]:
    for pattern, first, second in ((_NUMBER, "1", "2"), (_LETTER, "a", "b")):
        places: dict[_Key, _BySide] = defaultdict(lambda: defaultdict(list))
        for photo in photos:
            stem = photo.path.stem.casefold()
            match = pattern.search(stem)
            if match and not _RUNNING.fullmatch(stem[: match.start()]):
                places[(str(photo.path.parent), stem[: match.start()])][match["place"]].append(photo)
        for found in _one_a_side(places, (first, second)):
            if len(found) == 2:
                names = f"{found[first].name}, {found[second].name}"
                why = f"their names differ only in {first} and {second}: {names}"
                yield Group(found[first], found[second], "numbered", why)


def _one_a_side(sides: Mapping[_Key, _BySide], wanted: tuple[str, str]) -> Iterator[dict[str, PhotoFile]]:
    """Groups with at most one photo a side; the same picture in two formats is kept apart by its ending.

    Groups with a third member ("x-3", "xc") are a series and no pair.
    """
    for found in sides.values():
        if set(found) - set(wanted):
            continue
        crowded = any(len(photos) > 1 for photos in found.values())
        alike: dict[str, _BySide] = defaultdict(lambda: defaultdict(list))
        for side, photos in found.items():
            for photo in photos:
                alike[photo.path.suffix.casefold() if crowded else ""][side].append(photo)
        for group in alike.values():
            if all(len(photos) == 1 for photos in group.values()):
                yield {side: photos[0] for side, photos in group.items()}


# ---------------------------------------------------------------- by a pairs file


def group_by_file(pairs_file: Path, photos: Sequence[PhotoFile]) -> list[Group]:
    """The groups a CSV file (columns front, back; one may be blank) asks for.

    A name in it is a path from the pairs file's own folder, or the name of exactly one of `photos`.
    Raises PairsFileError naming the line.
    """
    try:
        with pairs_file.open(encoding="utf-8-sig", newline="") as stream:
            rows = [(number, row) for number, row in enumerate(csv.reader(stream), start=1) if any(row)]
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        words = reason(error) if isinstance(error, OSError) else str(error)
        raise PairsFileError(f"The pairs file {pairs_file} cannot be read: {words}.") from error
    if rows and [cell.strip().casefold() for cell in rows[0][1][:2]] == ["front", "back"]:
        del rows[0]
    used: dict[Path, int] = {}
    return [_from_row(pairs_file, number, row, photos, used) for number, row in rows]


def _from_row(
    pairs_file: Path, number: int, row: list[str], photos: Sequence[PhotoFile], used: dict[Path, int]
) -> Group:
    where = f"Line {number} of {pairs_file.name}"
    front, back, *more = *(cell.strip() for cell in row), *[""] * (2 - len(row))
    if any(more) or not (front or back):
        raise PairsFileError(f"{where} does not name one or two photos.", "Write one tag a line: front,back")
    sides = [_named_in(cell, where, pairs_file.parent, photos) if cell else None for cell in (front, back)]
    for photo in sides:
        if photo is not None and (earlier := used.setdefault(photo.path.resolve(), number)) != number:
            raise PairsFileError(f"{where}: {photo.name} is already used in line {earlier}.")
    if front and back and len({photo.path.resolve() for photo in sides if photo}) == 1:
        raise PairsFileError(f"{where} names {front} as both front and back.")
    return Group(sides[0], sides[1], "named", f"line {number} of {pairs_file.name} says so")


def _named_in(cell: str, where: str, folder: Path, photos: Sequence[PhotoFile]) -> PhotoFile:
    wanted = Path(cell).expanduser()
    matching = [photo for photo in photos if cell in (photo.name, photo.path.name)]
    if len(matching) == 1:
        return matching[0]
    if len(matching) > 1:
        message = f"{where}: there are {len(matching)} photos called {cell}."
        raise PairsFileError(message, "Give the folder too.")
    if (folder / wanted).is_file():
        return PhotoFile(folder / wanted, cell)
    raise PairsFileError(f"{where}: there is no photo {cell}.")


# ---------------------------------------------------------------- by order


@dataclass(frozen=True, slots=True)
class Nearness:
    """Whether two photos were taken one right after the other: `near` is None when nothing tells."""

    near: bool | None
    why: str


def nearness(first: Photo, second: Photo, seconds: int) -> Nearness:
    """Clock times settle it where both photos have one; else the camera's running number does.

    The second photo is the next one in order; `seconds` is the longest time between two sides.
    """
    times = [datetime.fromisoformat(each.taken_at) for each in (first, second) if each.taken_at]
    if len(times) == 2:
        apart = abs((times[1] - times[0]).total_seconds())
        return Nearness(apart <= seconds, f"taken {apart:.0f} s apart")
    one, two = (_NUMBERED.match(str(Path(each.file).with_suffix(""))) for each in (first, second))
    if one and two and one["before"] == two["before"]:
        return Nearness(
            int(two["number"]) == int(one["number"]) + 1, f"numbered {one['number']} and {two['number']}"
        )
    return Nearness(None, "next to each other in order")


_NUMBERED = re.compile(r"(?P<before>.*?)(?P<number>\d{1,12})\D*$", re.S)
