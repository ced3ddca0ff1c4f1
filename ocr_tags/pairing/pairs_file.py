"""Which photos are one tag, as a person has written it down in a CSV file."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from pathlib import Path

from ocr_tags.errors import TagError
from ocr_tags.pairing.photographs import Group
from ocr_tags.pictures.photos import PhotoFile, reason


class PairsFileError(TagError):
    """A line of the pairs file cannot be followed."""


def group_by_file(pairs_file: Path, photos: Sequence[PhotoFile]) -> list[Group]:
    """The groups a CSV file asks for, one a line: columns front and back, of which cells may be blank.

    A first line of "front" and "back" says which column is which; either may stand several times, for
    sides with several photos ("front,front,back"). Without it there are two. A name is a path from the
    pairs file's own folder, or the name of exactly one of `photos`. Raises PairsFileError naming the line.
    """
    try:
        with pairs_file.open(encoding="utf-8-sig", newline="") as stream:
            rows = [
                (number, row)
                for number, row in enumerate(csv.reader(stream), start=1)
                if any(map(str.strip, row))
            ]
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        words = reason(error) if isinstance(error, OSError) else str(error)
        raise PairsFileError(f"The pairs file {pairs_file} cannot be read: {words}.") from error
    columns = [cell.strip().casefold() for cell in rows[0][1]] if rows else []
    if columns and set(columns) <= {"front", "back", ""} and {"front", "back"} & set(columns):
        del rows[0]
    else:
        columns = ["front", "back"]
    used: dict[Path, int] = {}
    return [_from_row(pairs_file, number, row, columns, photos, used) for number, row in rows]


def _from_row(
    pairs_file: Path,
    number: int,
    row: list[str],
    columns: Sequence[str],
    photos: Sequence[PhotoFile],
    used: dict[Path, int],
) -> Group:
    where = f"Line {number} of {pairs_file.name}"
    cells = [(place, cell.strip()) for place, cell in enumerate(row) if cell.strip()]
    if any(place >= len(columns) or not columns[place] for place, _ in cells):
        raise PairsFileError(
            f"{where} has more cells than the columns {', '.join(filter(None, columns))}.",
            'Write one tag a line; for more photos of a side, begin with a line like "front,front,back".',
        )
    sides: dict[str, list[PhotoFile]] = {"front": [], "back": []}
    here: set[Path] = set()
    for place, cell in cells:
        photo = _named_in(cell, where, pairs_file.parent, photos)
        if (earlier := used.setdefault(photo.path.resolve(), number)) != number:
            raise PairsFileError(f"{where}: {photo.name} is already used in line {earlier}.")
        if photo.path.resolve() in here:
            raise PairsFileError(f"{where} names {cell} twice.")
        here.add(photo.path.resolve())
        sides[columns[place]].append(photo)
    why = f"line {number} of {pairs_file.name} says so"
    return Group(tuple(sides["front"]), tuple(sides["back"]), "told", why)


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
