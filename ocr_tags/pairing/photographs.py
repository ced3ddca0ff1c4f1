"""Which photos are the sides of one tag, before anything is read: by their names, or by their order.

Side names are taken at their word. Order is only a proposal: whether two photos taken
one after the other belong together is decided in `belonging` from what they say.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Literal

from ocr_tags.pictures.photos import PhotoFile
from ocr_tags.record import Photo

Bond = Literal["told", "named", "counted", "numbered", "loose"]
"""How sure a grouping is: by a pairs file, by sides named, by sides named and numbered, by two shots of one
name, by nothing but order."""


@dataclass(frozen=True, slots=True)
class Group:
    """Photos thought to be one tag before anything is read, fronts first; a side may have several photos.

    `told` and `named`: sides are known. `counted`: sides are known, and every number has both; the numbers
    may count photos of one tag, or tags. `numbered`: the two belong together unless they plainly speak of
    two plants, and which is the front is seen from the print. `loose`: one photo, which may belong to the
    next loose one.
    """

    fronts: tuple[PhotoFile, ...]
    backs: tuple[PhotoFile, ...]
    bond: Bond
    why: str

    @property
    def photos(self) -> tuple[PhotoFile, ...]:
        return self.fronts + self.backs


# ---------------------------------------------------------------- by name

_FRONT = "front|recto|obverse|vorne|vorn|vorderseite|avant|frente"
_BACK = "back|rear|verso|reverse|hinten|rueckseite|rückseite|arriere|arrière|dorso"
_SIDE_WORD = re.compile(rf"(?<![^\W\d_])(?:(?P<front>{_FRONT})|(?P<back>{_BACK}))(?:\s*of)?(?![^\W\d_])")
_SIDE_LETTER = re.compile(r"[\s_.-]+\(?(?:(?P<front>f)|(?P<back>b))(?=[\W\d_]*$)")
_AGAIN = re.compile(
    r"[\s_.-]*\(?0?(?P<place>\d)\)?|[\s_.-]+\(?(?P<letter>[a-d])\)?"
    r"|[\s_.-]+\(?(?P<part>top|upper|middle|lower|bottom|left|right|detail|close[\s_-]?up|again|copy|retake"
    r"|oben|mitte|unten|links|rechts|haut|milieu|bas|gauche|droite)\)?(?:[\s_.-]*\d)?"
)
"""What people put behind the word for a side when they photograph it once more."""
MOST_SHOTS = 4
"""More photos "of one side" by a running number are a series of tags."""
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
    >>> names("aster_back.jpg", "aster_front.jpg", "aster_front (2).jpg")
    [['aster_front.jpg', 'aster_front (2).jpg', 'aster_back.jpg']]
    """
    groups: dict[Path, Group] = {}
    left = list(photos)
    for gather in (_named, _numbered):
        for group in gather(left):
            groups.update((photo.path, group) for photo in group.photos)
        left = [photo for photo in left if photo.path not in groups]
    for photo in left:
        groups[photo.path] = Group((photo,), (), "loose", "nothing in its name says which side it is")
    return list({id(groups[photo.path]): groups[photo.path] for photo in photos}.values())


@dataclass(frozen=True, slots=True)
class _Name:
    """A file name taken apart: the tag's part, the side, and which photo of it, "" where it does not say."""

    photo: PhotoFile
    tag: str
    side: str
    again: str
    counted: bool
    """Whether `again` is a number or letter, which may also count tags."""


def _named(photos: Sequence[PhotoFile]) -> Iterator[Group]:
    tags: dict[_Key, list[_Name]] = defaultdict(list)
    for name in filter(None, map(_taken_apart, photos)):
        tags[(str(name.photo.path.parent), name.tag)].append(name)
    for names in tags.values():
        for alike in _one_tag_each(names):
            yield from _sides_of(alike)


def _taken_apart(photo: PhotoFile) -> _Name | None:
    stem = photo.path.stem.casefold()
    match = _SIDE_WORD.search(stem) or _SIDE_LETTER.search(stem)
    if match is None:
        return None
    again = _AGAIN.fullmatch(stem[match.end() :])
    rest = stem[: match.start()] if again else f"{stem[: match.start()]} {stem[match.end() :]}"
    return _Name(
        photo,
        tag=re.sub(r"[\s_.()-]+", " ", rest).strip(),
        side="front" if match["front"] else "back",
        again=(again["place"] or again["letter"] or again["part"]) if again else "",
        counted=bool(again and not again["part"]),
    )


def _one_tag_each(names: Sequence[_Name]) -> Iterator[list[_Name]]:
    """Names of what may be one tag; behind a running name, and in a long row, a number counts tags."""
    several = len({name.again for name in names})
    series = all(name.counted for name in names) and _RUNNING.fullmatch(names[0].tag)
    if several > 1 and (series or several > MOST_SHOTS):
        for again in dict.fromkeys(name.again for name in names):
            yield [name for name in names if name.again == again]
    else:
        yield list(names)


def _sides_of(names: Sequence[_Name]) -> Iterator[Group]:
    """The group; two where every picture is there in two formats, which are told apart by their ending."""
    taken = Counter((name.side, name.again) for name in names)
    twice = max(taken.values()) > 1
    formats: dict[str, list[_Name]] = defaultdict(list)
    for name in names:
        formats[name.photo.path.suffix.casefold() if twice else ""].append(name)
    for alike in formats.values():
        if len({(name.side, name.again) for name in alike}) == len(alike):
            yield from _named_group(sorted(alike, key=lambda name: name.again))


def _named_group(names: Sequence[_Name]) -> Iterator[Group]:
    fronts, backs = (tuple(name.photo for name in names if name.side == side) for side in ("front", "back"))
    shown = ", ".join(photo.name for photo in fronts + backs)
    if fronts and backs:
        sides = [[name.again for name in names if name.side == side] for side in ("front", "back")]
        counted = len(fronts) > 1 and sides[0] == sides[1] and all(n.counted or not n.again for n in names)
        bond: Bond = "counted" if counted else "named"
        yield Group(fronts, backs, bond, f"their names say front and back: {shown}")
    elif len(names) > 1 and all(map(_ends_in_side_word, (name.photo for name in names))):
        yield Group(fronts, backs, "named", f"their names say {names[0].side}: {shown}")
    elif len(names) == 1 and not names[0].again and _ends_in_side_word(names[0].photo):
        why = f"its name says {names[0].side}, and the other side is not here"
        yield Group(fronts, backs, "named", why)


def _ends_in_side_word(photo: PhotoFile) -> bool:
    """A word inside a name ("back yard rose") says nothing when no partner's name answers to it."""
    stem = photo.path.stem.casefold()
    matches = list(_SIDE_WORD.finditer(stem))
    end = matches[-1].end() if matches else -1
    return bool(matches) and (end == len(stem) or _AGAIN.fullmatch(stem, end) is not None)


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
                yield Group((found[first],), (found[second],), "numbered", why)


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
