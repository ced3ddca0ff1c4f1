"""Draw sample tags: invented plants' labels, photographed, with the truth of what is printed on them.

python samples/draw.py                                     the committed set, into samples/tags
python samples/draw.py --out DIR --seed 7 --count 20       twenty fresh tags
python samples/draw.py --out DIR --seed 7 --count 20 --level hard
"""

from __future__ import annotations

import argparse
import json
import random
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import art
import cv2
from backs import BACKS
from camera import LEVELS, Photo, cut_out, photograph
from committed import COMMITTED
from content import Content, write_content
from fronts import FRONTS
from parts import new_sheet
from PIL import Image
from plants import PLANTS, SUPPLIERS, Plant, Supplier
from sheet import Style
from wording import Said

RECORD_FIELDS = (
    "common_names",
    "botanical_name",
    "series",
    "height",
    "flower_height",
    "spread",
    "spacing",
    "row_spacing",
    "hardiness",
    "heat_zones",
    "rhs_rating",
    "min_temperature",
    "light",
    "water",
    "soil",
    "feeding",
    "bloom",
    "colours",
    "categories",
    "native_claim",
    "days_to_maturity",
    "container",
    "price",
    "gtin",
    "patents",
    "plant_passport",
    "supplier",
    "warnings",
)
"""Fields of the record; anything else printed goes under `also_printed`."""

FRONTS_OF = {
    "stake": ("picture_top", "picture_full", "script", "up_the_side", "colour_block", "plain"),
    "wide_stake": ("picture_top", "picture_full", "script", "colour_block", "plain", "up_the_side"),
    "hang": ("picture_top", "picture_full", "script", "colour_block"),
    "label": ("beside", "picture_full", "script"),
    "square": ("picture_top", "picture_full", "colour_block", "script"),
    "card": ("card",),
    "strip": ("strip",),
}
BACKS_OF = {
    "stake": ("phrases", "stacked", "lines", "dense", "icons"),
    "wide_stake": ("phrases", "table", "dots", "stacked", "icons", "lines", "dense", "sticker"),
    "hang": ("icons", "table", "dots", "phrases", "stacked", "lines", "dense", "sticker"),
    "label": ("two_columns", "table", "stacked", "bilingual", "icons", "dense"),
    "square": ("two_columns", "table", "dots", "bilingual", "stacked", "sticker", "icons"),
    "card": (),
    "strip": (),
}


@dataclass(frozen=True)
class Order:
    """What to draw; what is left None is drawn by lot from the seed."""

    seed: int
    level: str | None = None
    plant: str | None = None
    supplier: str | None = None
    shape: str | None = None
    front: str | None = None
    back: str | None = None
    sides: tuple[str, ...] = ("front", "back")
    cultivar: str | None = None
    naming: str | None = None
    kind: str = "jpg"
    turn: int | None = None


# ---------------------------------------------------------------- choosing


def _plant_and_supplier(order: Order, rng: random.Random) -> tuple[Plant, Supplier]:
    suppliers = list(SUPPLIERS.values())
    if order.plant:
        plant = PLANTS[order.plant]
    else:
        kinds = sorted({p.kind for p in PLANTS.values()})
        kind = rng.choice([*kinds, "perennial", "perennial", "annual", "shrub"])
        plant = rng.choice([p for p in PLANTS.values() if p.kind == kind])
    if order.supplier:
        return plant, SUPPLIERS[order.supplier]
    return plant, rng.choice([s for s in suppliers if plant.kind in s.kinds] or suppliers[:1])


def _style(supplier: Supplier, rng: random.Random) -> Style:
    """A house look: its colour, with fonts drawn by lot."""
    dark = rng.random() < 0.16
    accent = (
        supplier.colour
        if rng.random() < 0.6
        else rng.choice([(40, 80, 40), (20, 60, 110), (120, 30, 60), (70, 50, 90)])
    )
    paper = rng.choice([(252, 252, 250), (250, 246, 232), (240, 246, 236), (255, 250, 214), (238, 240, 246)])
    if dark:
        paper, accent = art.mix(accent, (0, 0, 0), 0.35), (250, 238, 190)
    ink = (246, 246, 240) if dark else rng.choice([(24, 24, 26), (40, 40, 44), (30, 50, 36), (36, 32, 60)])
    return Style(
        family=rng.choice(sorted(art.FAMILIES)),
        display=rng.choice(sorted(art.DISPLAY)),
        ink=ink,
        accent=accent,
        paper=paper,
        align=rng.choice(["left", "left", "center"]),
        upper_labels=rng.random() < 0.25,
        colon=rng.choice([":", ":", ":", ""]),
        gap=rng.uniform(0.25, 0.6),
    )


def _shape_and_sides(order: Order, supplier: Supplier, rng: random.Random) -> tuple[str, dict[str, str]]:
    shape = order.shape or rng.choice(
        [
            "stake",
            "stake",
            "stake",
            "wide_stake",
            "wide_stake",
            "hang",
            "hang",
            "label",
            "label",
            "label",
            "square",
            "card",
            "strip",
        ]
    )
    front = order.front or rng.choice(FRONTS_OF[shape])
    backs = BACKS_OF[shape]
    if supplier.country in ("NL", "GB") and shape in ("label", "square", "hang", "wide_stake"):
        backs = ("passport", "passport", *backs)
    if len(supplier.languages) > 1 and "bilingual" in backs:
        backs = ("bilingual", "bilingual", "bilingual", *backs)
    back = order.back or (rng.choice(backs) if backs else "")
    sides = {"front": front, "back": back}
    wanted = order.sides
    if order.plant is None and back and rng.random() < 0.08:
        wanted = (rng.choice(["back", "back", "front"]) if front != "script" else "back",)
    return shape, {side: sides[side] for side in wanted if sides[side]}


# ---------------------------------------------------------------- drawing one tag


@dataclass(frozen=True)
class Drawn:
    tag: str
    level: str
    layout: str
    content: Content
    photos: dict[str, Photo]
    said: dict[str, list[Said]]


def draw_tag(order: Order, tag: str, long_side: tuple[int, int]) -> Drawn:
    """Print and photograph the sides of one tag."""
    rng = random.Random(f"tag {order.seed} {order.level}")
    level = order.level or rng.choice(sorted(LEVELS))
    plant, supplier = _plant_and_supplier(order, rng)
    content = write_content(plant, supplier, rng, order.cultivar)
    shape, layout = _shape_and_sides(order, supplier, rng)
    style = _style(supplier, rng)
    photos, said = {}, {}
    size = rng.randrange(*long_side)
    for side, name in layout.items():
        sheet = new_sheet(shape, style, rng)
        (FRONTS if side == "front" else BACKS)[name](sheet, content)
        cut = cut_out(sheet.image, shape, rng)
        photos[side] = photograph(cut, level, size, rng, order.turn, "stake" in shape)
        said[side] = sheet.said
    return Drawn(tag, level, f"{shape}/{'/'.join(layout.values())}", content, photos, said)


def truth_of(drawn: Drawn, files: dict[str, str]) -> dict[str, Any]:
    """The line of truth.jsonl: only what was printed, in the record's shapes."""
    fields: dict[str, Any] = {}
    names: list[dict[str, Any]] = []
    also: dict[str, Any] = {}
    for side, said in drawn.said.items():
        for one in said:
            if one.field == "common_names":
                _add(names, one, side)
            elif one.field in RECORD_FIELDS:
                entry = fields.setdefault(
                    one.field, {"value": one.value, "printed": one.printed, "sides": []}
                )
                _note_side(entry, side)
            else:
                _note_side(
                    also.setdefault(one.field, {"value": one.value, "printed": one.printed, "sides": []}),
                    side,
                )
    ordered = {"common_names": names, **{name: fields[name] for name in RECORD_FIELDS if name in fields}}
    if not names:
        ordered.pop("common_names")
    photos = [
        {"file": files[side], "side": side, "corners": [list(c) for c in photo.corners], "turn": photo.turn}
        for side, photo in drawn.photos.items()
    ]
    head = {"tag": drawn.tag, "level": drawn.level, "layout": drawn.layout, "photos": photos}
    return {**head, "fields": ordered, "also_printed": also, "plant": drawn.content.plant.accepted}


def _add(names: list[dict[str, Any]], one: Said, side: str) -> None:
    for entry in names:
        if entry["value"] == one.value:
            return _note_side(entry, side)
    names.append({"value": one.value, "printed": one.printed, "sides": [side]})
    return None


def _note_side(entry: dict[str, Any], side: str) -> None:
    if side not in entry["sides"]:
        entry["sides"].append(side)


# ---------------------------------------------------------------- files

NAMINGS = ("front_back", "front_back", "numbers", "letters", "camera")


def _file_names(drawn: Drawn, naming: str, kind: str, shots: Iterator[int]) -> dict[str, str]:
    endings = {
        "front_back": {"front": "_front", "back": "_back"},
        "numbers": {"front": "-1", "back": "-2"},
        "letters": {"front": "a", "back": "b"},
    }
    if naming == "camera":
        return {side: f"IMG_{next(shots):04d}.{'JPG' if kind == 'jpg' else kind}" for side in drawn.photos}
    return {side: f"{drawn.tag}{endings[naming][side]}.{kind}" for side in drawn.photos}


def _save(photo: Photo, path: Path, taken: datetime, rng: random.Random, quality: int) -> None:
    """Write the photo; JPEGs carry the time taken; some are stored turned, with the EXIF tag for it."""
    pixels = cv2.cvtColor(photo.pixels, cv2.COLOR_BGR2RGB)
    image = Image.fromarray(pixels)
    if path.suffix.lower() not in (".jpg", ".jpeg"):
        if path.suffix == ".png":
            image = image.quantize(64, dither=Image.Dither.NONE)
        options = {".webp": {"quality": 82}, ".tif": {"compression": "jpeg", "quality": 80}}
        image.save(path, **options.get(path.suffix.lower(), {}))
        return
    exif = Image.Exif()
    stored = rng.choice([None, None, Image.Transpose.ROTATE_90, Image.Transpose.ROTATE_270])
    if stored is not None:
        image = image.transpose(stored)
        exif[0x0112] = 6 if stored == Image.Transpose.ROTATE_90 else 8
    exif.get_ifd(0x8769)[0x9003] = taken.strftime("%Y:%m:%d %H:%M:%S")
    image.save(path, quality=quality, exif=exif)


def draw_set(orders: list[tuple[str, Order]], out: Path, long_side: tuple[int, int]) -> None:
    """Draw all orders into a folder, with truth.jsonl."""
    out.mkdir(parents=True, exist_ok=True)
    clock = random.Random(f"clock {orders[0][1].seed}")
    taken = datetime(
        2026, clock.randint(4, 6), clock.randint(1, 28), clock.randint(8, 11), clock.randint(0, 59)
    )
    shots = iter(range(clock.randint(1000, 8000), 10000))
    lines = []
    for tag, order in orders:
        rng = random.Random(f"file {order.seed}")
        drawn = draw_tag(order, tag, long_side)
        naming = order.naming or rng.choice(NAMINGS)
        quality = rng.randint(73, 80)
        files = _file_names(drawn, naming, order.kind, shots)
        for side, photo in drawn.photos.items():
            taken += timedelta(seconds=clock.randint(3, 9))
            _save(photo, out / files[side], taken, rng, quality)
        taken += timedelta(seconds=clock.randint(25, 90))
        lines.append(json.dumps(truth_of(drawn, files), ensure_ascii=False))
        print(tag, drawn.level, drawn.layout, *files.values())
    (out / "truth.jsonl").write_text("\n".join(lines) + "\n", "utf-8")


def fresh(seed: int, count: int, level: str | None) -> list[tuple[str, Order]]:
    """Orders for tags nobody has seen: everything by lot."""
    return [(f"tag{seed:03d}-{at:03d}", Order(seed * 10_000 + at, level)) for at in range(count)]


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--out", type=Path, default=Path(__file__).parent / "tags", help="folder to write")
    parser.add_argument("--seed", type=int, help="draw fresh tags from this number")
    parser.add_argument("--count", type=int, default=12, help="how many fresh tags")
    parser.add_argument("--level", choices=sorted(LEVELS), help="all of one level; without it, mixed")
    asked = parser.parse_args()
    if asked.seed is None:
        draw_set([(name, Order(**order)) for name, order in COMMITTED], asked.out, (1360, 1500))
    else:
        draw_set(fresh(asked.seed, asked.count, asked.level), asked.out, (1800, 2900))


if __name__ == "__main__":
    main()
