"""Fits the network that tells marks by their shape, and writes ocr_tags/data/mark_network.npz.

    python samples/fit_marks.py FOLDER …        folders of tags made by draw.py here, with their truth

What it learns from: pages of drawings of `mark_drawings.py`, each time others, small, tilted and blurred as
in a photograph, with print beside them in the fonts of this machine; and the tags of the folders that have no
marks, pictures of plants and all. Each patch that `marks` would ask about is one lesson. A tenth is held out
to report on. Takes some ten minutes of one processor.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from itertools import chain
from pathlib import Path
from random import Random
from typing import Any

import cv2
import numpy as np
from mark_drawings import DRAWINGS
from mark_pen import SIDE, Ink
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from ocr_tags.pictures.cleaning import straighten
from ocr_tags.pictures.mark_shapes import KINDS, Kind, Network, Small
from ocr_tags.pictures.mark_shapes import SIDE as SEEN
from ocr_tags.pictures.marks import SURE, contrasts, patches
from ocr_tags.pictures.photos import open_photo
from ocr_tags.record import Box

GOAL = Path(__file__).parent.parent / "ocr_tags" / "data" / "mark_network.npz"
FONTS = Path("/usr/share/fonts/truetype")
SYMBOL_FONTS = ("Noto", "Symbol", "Symbola", "DejaVu", "opens")
"""Fonts with symbols of their own are kept to test with."""
PAGES, ALONE, BLOTS, WORKERS = 900, 6000, 24000, 2
"""Pages of drawings; drawings alone on their ground, of each kind and of what is none."""
HIDDEN, ROUNDS, BATCH = 256, 20, 256
SIGNS = "ABCDEFGHIJKLMNPQRSTUVWXYZabcdefghijklmnpqrstuvwxyz123456789&@#%()[]{}/!?€$£§+=<>~½¼¾©®™×†ßœæØ"
WORDS = (
    *(
        "12 in",
        "45 cm",
        "Full sun",
        "Zone 5",
        "June",
        "-20 °C",
        "Height",
        "to",
        'H 18"',
        "Spread 24-36 in.",
        "a",
    ),
    *(
        "water",
        "Keep moist",
        "Perennial",
        "III–V",
        "of",
        "6—9",
        "A",
        "ATTRACTS",
        "10–15 ft",
        "5.",
        "No. 1",
        "–",
    ),
)
FRAMELESS = ("", "shade", "ring", "crescent")

Lesson = tuple[int, NDArray[np.uint8]]
"""Which of `KINDS` a patch is, and the patch as the network sees it, 0 to 255."""
Placed = list[tuple[Kind, Box]]


# ---------------------------------------------------------------- pages of drawings


def page(lot: Random, fonts: Sequence[Path]) -> tuple[Ink, Placed]:
    """A photograph of a page of drawings and print, and where each drawing stands."""
    cover, marks = Image.new("L", (1400, 1000), 0), Placed()
    for number in range(35):
        left, top = (number % 5) * 280 + lot.randint(4, 30), (number // 5) * 142 + 6
        if lot.random() < 0.75:
            name = lot.choice([name for name in DRAWINGS if name] * 4 + [""])
            left += _draw(cover, lot, left, top, marks, name)
        _write(cover, lot, fonts, left, top)
    return _photographed(np.asarray(cover, np.uint8), lot), marks


def alone(name: str, lot: Random, fonts: Sequence[Path]) -> tuple[Ink, Placed]:
    """A photograph of one drawing on its ground; of what is none, in one of three a large sign."""
    cover, marks = Image.new("L", (240, 240), 0), Placed()
    if not name and lot.random() < 0.33:
        font = ImageFont.truetype(str(lot.choice(fonts)), round(2 ** lot.uniform(5.2, 7.2)))
        ImageDraw.Draw(cover).text((40, 30), lot.choice(SIGNS), font=font, fill=255)
    else:
        _draw(cover, lot, 40, 50, marks, name)
    return _photographed(np.asarray(cover, np.uint8), lot), marks


def _draw(cover: Image.Image, lot: Random, left: int, top: int, marks: Placed, name: str) -> int:
    """Adds the drawing and, where it is a mark, its place; how far to the right print may begin."""
    ink = DRAWINGS[name](lot)
    if name not in FRAMELESS and lot.random() < 0.08:
        ink = framed(ink, lot)
    ink = small(ink, lot)
    height, width = ink.shape
    at = left, top + max(0, (126 - height) // 2)
    cover.paste(255, at, Image.fromarray(ink))
    if name:
        marks.append((name, Box(*at, width, height)))  # type: ignore[arg-type]
    return width + round(max(width, height) * lot.uniform(0.15, 0.6)) + 3


def framed(ink: Ink, lot: Random) -> Ink:
    """The drawing in a ring or a box, as on a badge."""
    size = round(SIDE * lot.uniform(0.5, 0.75))
    sheet = Image.new("L", (SIDE, SIDE), 0)
    pen, line = ImageDraw.Draw(sheet), lot.randint(6, 16)
    if lot.random() < 0.6:
        pen.ellipse((3, 3, SIDE - 4, SIDE - 4), outline=255, width=line)
    else:
        pen.rounded_rectangle((3, 3, SIDE - 4, SIDE - 4), lot.choice((0, 20, 50)), outline=255, width=line)
    sheet.paste(Image.fromarray(ink).resize((size, size)), ((SIDE - size) // 2,) * 2)
    return np.asarray(sheet, np.uint8)


def small(ink: Ink, lot: Random) -> Ink:
    """The drawing at the size of print, a little tilted, squeezed and slanted."""
    scale = round(2 ** lot.uniform(4.6, 7.0)) / max(tight(ink).shape)
    turn, stretch = np.radians(lot.gauss(0, 3.5)), lot.uniform(0.9, 1.1)
    way = np.array(
        [[np.cos(turn) * stretch, lot.gauss(0, 0.04) - np.sin(turn)], [np.sin(turn) * stretch, np.cos(turn)]]
    )
    room = round(1.6 * SIDE * scale) + 8
    shift = room / 2 - scale * way @ np.array([SIDE / 2, SIDE / 2]) + np.array([lot.random(), lot.random()])
    soft = cv2.GaussianBlur(ink, (0, 0), 0.4 / scale) if scale < 1 else ink
    drawn = cv2.warpAffine(soft, np.column_stack([scale * way, shift]), (room, room))
    return tight(np.asarray(cv2.convertScaleAbs(drawn, alpha=255 / max(int(drawn.max()), 1)), np.uint8))


def tight(ink: Ink) -> Ink:
    """Without the empty room around."""
    rows, columns = (np.flatnonzero((ink > 80).any(axis=axis)) for axis in (1, 0))
    return ink[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1] if len(rows) else ink


def _write(cover: Image.Image, lot: Random, fonts: Sequence[Path], left: int, top: int) -> None:
    size = round(2 ** lot.uniform(4.4, 6.3))
    font = ImageFont.truetype(str(lot.choice(fonts)), size)
    pen, y = ImageDraw.Draw(cover), top + 10
    while y + size < top + 136:
        signs = "".join(lot.choice(SIGNS) for _ in range(lot.randint(1, 4)))
        pen.text((left, y), lot.choice(WORDS) if lot.random() < 0.7 else signs, font=font, fill=255)
        y += round(size * lot.uniform(1.1, 1.6))


def _photographed(cover: Ink, lot: Random) -> Ink:
    """Dark on light or light on dark, unevenly lit, a little out of focus, with grain, saved as JPEG."""
    dark, light = (
        np.array([lot.randint(*ends) for _ in "bgr"], np.float32) for ends in ((0, 110), (185, 255))
    )
    ink, paper = (dark, light) if lot.random() < 0.6 else (light, dark)
    shares = cv2.GaussianBlur(cover, (0, 0), lot.uniform(0.5, 1.5)).astype(np.float32)[..., None] / 255
    lit = np.linspace(lot.uniform(0.7, 1), lot.uniform(0.7, 1), cover.shape[1], dtype=np.float32)[
        None, :, None
    ]
    grain = cv2.randn(np.zeros((*cover.shape, 3), np.float32), (0, 0, 0), (lot.uniform(1, 7),) * 3)
    taken = np.clip((paper + (ink - paper) * shares) * lit + grain, 0, 255).astype(np.uint8)
    packed = cv2.imencode(".jpg", taken, [cv2.IMWRITE_JPEG_QUALITY, lot.randint(70, 95)])[1]
    return np.asarray(cv2.imdecode(packed, cv2.IMREAD_COLOR), np.uint8)


# ---------------------------------------------------------------- lessons


def told(picture: Ink, marks: Placed) -> Iterator[Lesson]:
    """Every patch of a picture with what it is; pieces and mixtures of marks are left out."""
    for contrast in contrasts(picture):
        for patch in patches(contrast):
            shares = [(overlap(patch.box, box), kind) for kind, box in marks]
            share, kind = max(shares, default=(0.0, None))
            if share > 0.72 or share < 0.1:
                seen = np.asarray(patch.small * 255, np.uint8)
                yield KINDS.index(kind if share > 0.72 else None), seen


def overlap(a: Box, b: Box) -> float:
    """What two boxes share, of what they cover together."""
    w, h = min(a.right, b.right) - max(a.x, b.x), min(a.bottom, b.bottom) - max(a.y, b.y)
    shared = max(w, 0) * max(h, 0)
    return shared / (a.w * a.h + b.w * b.h - shared)


def of_page(fonts: Sequence[Path], seed: int) -> list[Lesson]:
    cv2.setNumThreads(1)
    cv2.setRNGSeed(seed)
    return list(told(*page(Random(seed), fonts)))


def of_kind(name: str, fonts: Sequence[Path], seed: int) -> list[Lesson]:
    """A hundred drawings of one kind."""
    cv2.setNumThreads(1)
    cv2.setRNGSeed(seed)
    lot = Random(f"{name} {seed}")
    return [lesson for _ in range(100) for lesson in told(*alone(name, lot, fonts))]


def of_photo(path: Path) -> list[Lesson]:
    cv2.setNumThreads(1)
    return list(told(straighten(open_photo(path).pixels).pixels, []))


def without_marks(folder: Path) -> Iterator[Path]:
    """The photos of tags that print no marks."""
    for line in (folder / "truth.jsonl").read_text("utf-8").splitlines():
        tag = json.loads(line)
        if "icon" not in tag["layout"]:
            yield from (folder / photo["file"] for photo in tag["photos"])


def lessons(folders: Sequence[Path]) -> list[Lesson]:
    fonts = [path for path in sorted(FONTS.rglob("*.ttf")) if not path.name.startswith(SYMBOL_FONTS)]
    photos = [path for folder in folders for path in without_marks(folder)]
    with ProcessPoolExecutor(WORKERS) as pool:
        drawn = pool.map(partial(of_page, fonts), range(PAGES), chunksize=10)
        taken = pool.map(of_photo, photos, chunksize=4)
        single = [
            pool.map(partial(of_kind, name, fonts), range((ALONE if name else BLOTS) // 100))
            for name in DRAWINGS
        ]
        return [lesson for some in chain(drawn, taken, *single) for lesson in some]


# ---------------------------------------------------------------- learning


def fit(seen: NDArray[np.uint8], kinds: NDArray[Any]) -> Network:
    """Adam on cross entropy, the step shrinking to nothing; patches are mirrored and moved by a pixel."""
    dice = np.random.default_rng(1)
    shapes = ((SEEN * SEEN, HIDDEN), (HIDDEN,), (HIDDEN, len(KINDS)), (len(KINDS),))
    weights = [dice.normal(0, (2 / s[0]) ** 0.5 if len(s) == 2 else 0, s).astype(np.float32) for s in shapes]
    first, second = ([np.zeros_like(w) for w in weights] for _ in range(2))
    steps = ROUNDS * (len(seen) // BATCH)
    for step in range(1, steps + 1):
        chosen = dice.integers(0, len(seen), BATCH)
        squares = np.roll(seen[chosen].reshape(-1, SEEN, SEEN), dice.integers(-1, 2, 2), (1, 2))
        rows = squares[:, :, :: 1 - 2 * (step % 2)].reshape(BATCH, -1).astype(np.float32) / 255
        rate = 2e-3 * (1 - step / (steps + 1))
        for w, m, v, slope in zip(weights, first, second, _slopes(weights, rows, kinds[chosen]), strict=True):
            m += 0.1 * (slope - m)
            v += 0.001 * (slope**2 - v)
            w -= rate * (m / (1 - 0.9**step)) / (np.sqrt(v / (1 - 0.999**step)) + 1e-8)
            w -= rate * 2e-3 * w * (w.ndim == 2)
    return Network(*weights)


def _slopes(weights: list[Small], rows: Small, kinds: NDArray[Any]) -> list[Small]:
    w1, b1, w2, b2 = weights
    hidden = np.maximum(rows @ w1 + b1, 0)
    error = Network(w1, b1, w2, b2).likeness(rows)
    error[np.arange(len(kinds)), kinds] -= 1
    error /= len(kinds)
    back = (error @ w2.T) * (hidden > 0)
    return [rows.T @ back, back.sum(axis=0), hidden.T @ error, error.sum(axis=0)]


def report(likeness: Small, kinds: NDArray[Any]) -> None:
    guess = np.where(likeness.max(axis=1) > SURE, likeness.argmax(axis=1), KINDS.index(None))
    for at, kind in enumerate(KINDS):
        found, right = np.mean(guess[kinds == at] == at), np.mean(kinds[guess == at] == at)
        print(f"{kind or 'none':12} {np.sum(kinds == at):6}  found {found:.3f}  right when said {right:.4f}")


def main() -> None:
    taught = lessons([Path(name) for name in sys.argv[1:]])
    Random(8).shuffle(taught)
    kinds, seen = np.array([kind for kind, _ in taught]), np.stack([patch for _, patch in taught])
    held = len(taught) // 10
    network = fit(seen[held:], kinds[held:])
    report(network.likeness(seen[:held].astype(np.float32) / 255), kinds[:held])
    kept = {name: getattr(network, name).astype(np.float16) for name in Network.__slots__}
    np.savez_compressed(GOAL, **kept)


if __name__ == "__main__":
    main()
