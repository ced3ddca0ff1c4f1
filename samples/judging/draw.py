"""Draws the judging set: photographs of invented plant tags, with the truth of what they say.

    python samples/judging/draw.py --out DIR --seed 31 --count 24 --level medium --part first|second|all

The same seed draws the same tags. The reader is judged on these and never tuned by them.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import Any

import faces
import lens
import numpy as np
import second_faces
import second_sides
from facts import Said
from outlines import SHAPES, Outline
from PIL import Image
from press import Pen
from saying import plan_tag
from second_says import Copy, load_second, plan_copy
from sides import print_back, print_front
from species import Species, load_species

LEVELS = ("easy", "medium", "hard")
PARTS = ("first", "second", "all")
FANCY = {"easy": 0.05, "medium": 0.2, "hard": 0.5}


def choose_species(rng: Random, count: int, part: str = "all") -> Iterator[Species]:
    """All species of the part in turn before any comes twice; no species is in both parts."""
    known = (load_species() if part != "second" else []) + (load_second() if part != "first" else [])
    for start in range(0, count, len(known)):
        yield from rng.sample(known, len(known))[: count - start]


def print_sides(
    tag: Any, second: bool, outline: Outline, level: str, rng: Random, said: Said
) -> list[tuple[str, Pen, str]]:
    """The sides that this tag has, printed: (side, pen, layout)."""
    # Each part's sides take the tag that its own plan made.
    front_of: Any = second_sides.print_front if second else print_front
    back_of: Any = second_sides.print_back if second else print_back
    one = rng.choices(("", "front", "back"), (84, 6, 10))[0]
    if outline.name in ("bench", "thermal"):
        one = "front" if rng.random() < 0.7 else one
    if one:
        pen, layout = back_of(tag, outline, rng, said, True, one)
        return [(one, pen, layout)]
    full_front = rng.random() < 0.5
    front, front_layout = front_of(tag, outline, rng, said, full_front, FANCY[level])
    back, back_layout = back_of(tag, outline, rng, said, not full_front)
    return [("front", front, front_layout), ("back", back, back_layout)]


def draw_tag(species: Species, number: int, level: str, rng: Random, out: Path) -> dict[str, Any]:
    """One tag, photographed into `out`; gives its line of truth."""
    outline, said, sides = _print_named(species, level, rng)
    name = f"{number:02}-{species.commons[0].lower().replace(' ', '-').replace(chr(39), '')}"
    photos = []
    for side, pen, _ in sides:
        shot = lens.take(pen, outline, level, rng)
        file = f"{name}_{side}.jpg"
        _save(shot, out / file, level != "easy" and rng.random() < 0.2)
        photos.append({"file": file, "side": side, "corners": shot.corners, "turn": shot.turn})
    fields, also = said.truth()
    return {
        "tag": name,
        "level": level,
        "layout": "/".join([outline.name, *(layout for _, _, layout in sides)]),
        "photos": photos,
        "fields": fields,
        "also_printed": also,
        "plant": species.name,
    }


def _print_named(
    species: Species, level: str, rng: Random
) -> tuple[Outline, Said, list[tuple[str, Pen, str]]]:
    """A tag on which both names found room; in the second part the botanical one in full."""
    second = species.name in {known.name for known in load_second()}
    while True:
        shape = rng.choices(list(SHAPES), [share for _, share in SHAPES.values()])[0]
        outline, said = SHAPES[shape][0](rng), Said()
        tag: Any = plan_copy(rng, species) if second else plan_tag(rng, species)
        sides = print_sides(tag, second, outline, level, rng, said)
        fields = said.truth()[0]
        named = {"common_names", "botanical_name"} <= set(fields)
        if named and (not second or _is_whole(tag, fields, sides)):
            return outline, said, sides


def _is_whole(copy: Copy, fields: dict[str, Any], sides: list[tuple[str, Pen, str]]) -> bool:
    """Whether the cultivar stands beside its species, and no side is left empty."""
    full = fields["botanical_name"]["value"] == copy.botanical.value
    return full and all(pen.printed for _, pen, _ in sides)


def _save(shot: lens.Shot, path: Path, sideways: bool) -> None:
    """Some phones store the sensor's rows as they lie and say in EXIF how to turn them (tag 274, value 6)."""
    exif = Image.Exif()
    if sideways:
        exif[274] = 6
    pixels = np.rot90(shot.pixels) if sideways else shot.pixels
    Image.fromarray(np.ascontiguousarray(pixels)).save(path, quality=shot.quality, exif=exif)


def main() -> None:
    parser = argparse.ArgumentParser(
        description="Draws the judging set: plant tags never used to build the reader."
    )
    parser.add_argument("--out", type=Path, required=True, help="folder for the photographs and truth.jsonl")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=24)
    parser.add_argument("--level", choices=LEVELS, default="medium")
    parser.add_argument("--part", choices=PARTS, default="all", help="which layouts, words and plants")
    chosen = parser.parse_args()
    faces.check(second_faces.wanted(), second_faces.PACKAGES)
    chosen.out.mkdir(parents=True, exist_ok=True)
    lot = Random(f"{chosen.seed} {chosen.level}")
    with (chosen.out / "truth.jsonl").open("w", encoding="utf-8") as truth:
        for number, species in enumerate(choose_species(lot, chosen.count, chosen.part), 1):
            rng = Random(f"{chosen.seed} {chosen.level} {number}")
            line = draw_tag(species, number, chosen.level, rng, chosen.out)
            truth.write(json.dumps(line, ensure_ascii=False) + "\n")
            print(f"{number} of {chosen.count}: {line['tag']} ({line['layout']})", file=sys.stderr)


if __name__ == "__main__":
    main()
