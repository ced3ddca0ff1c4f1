"""What fronts and backs are put together from: shapes, name blocks, and facts as entries of print."""

from __future__ import annotations

import random
from dataclasses import replace

import art
from art import Colour
from content import Content, Line
from PIL import Image
from sheet import ICON_OF, Box, Item, Sheet, Show, Style, item
from wording import Fact

WHITE, BLACK = (252, 252, 248), (28, 28, 30)

SHAPES: dict[str, tuple[int, int]] = {
    "stake": (620, 2000),
    "wide_stake": (860, 1900),
    "hang": (1000, 1700),
    "label": (1900, 1150),
    "card": (1400, 1900),
    "square": (1400, 1400),
    "strip": (1900, 560),
}
"""Printable size in pixels. A stake has a blank point below that is no part of this."""


def new_sheet(shape: str, style: Style, rng: random.Random) -> Sheet:
    return Sheet(Image.new("RGB", SHAPES[shape], style.paper), style, rng, hole=shape == "hang")


def inset(sheet: Sheet, share: float = 0.06) -> Box:
    edge = min(sheet.width, sheet.height) * share
    top = sheet.width * 0.14 if sheet.hole else edge
    return edge, top, sheet.width - edge, sheet.height - edge


def paste_picture(sheet: Sheet, content: Content, box: Box) -> None:
    left, top, right, bottom = (int(v) for v in box)
    panel = art.picture(right - left, bottom - top, content.plant.art, content.plant.colours, sheet.rng)
    sheet.image.paste(panel, (left, top))


def shade(sheet: Sheet, box: Box, strength: int) -> None:
    """Darken a panel so that light text can stand on it."""
    left, top, right, bottom = (int(v) for v in box)
    veil = Image.new("RGB", (right - left, bottom - top), (0, 0, 0))
    part = sheet.image.crop((left, top, right, bottom))
    sheet.image.paste(Image.blend(part, veil, strength / 255), (left, top))


def names(
    sheet: Sheet,
    content: Content,
    box: Box,
    ink: Colour,
    path: str | None = None,
    size: float = 150.0,
    align: str = "center",
    outline: Colour | None = None,
) -> float:
    """Title, common name and botanical name, largest first; returns the bottom."""
    left, top, right, bottom = box
    room = bottom - top
    face = path or art.DISPLAY[sheet.style.display]
    plain, italic = art.FAMILIES[sheet.style.family][1], art.FAMILIES[sheet.style.family][2]
    y = sheet.line(
        content.title.text,
        (left, top, right, top + room * 0.5),
        face,
        ink,
        size,
        content.title.says,
        align,
        outline,
    )
    if content.subtitle:
        y = sheet.line(
            content.subtitle.text,
            (left, y, right, y + room * 0.22),
            plain,
            ink,
            size * 0.5,
            content.subtitle.says,
            align,
        )
    if content.botanical:
        line = content.botanical
        y = sheet.line(
            line.text, (left, y, right, y + room * 0.24), italic, ink, max(40, size * 0.36), line.says, align
        )
    return y


# ---------------------------------------------------------------- which facts, in which form


def pick(content: Content, *fields: str) -> list[Fact]:
    return [fact for name in fields for fact in content.facts if fact.field == name]


def size_line(content: Content, rng: random.Random) -> Item | None:
    """Height and spread in one line, as `H 18in W 12in` or `18" tall x 12" wide`."""
    height, spread = content.fact("height"), content.fact("spread")
    if height is None or spread is None or len(height.text + spread.text) > 26:
        return None
    h, w = height.text, spread.text
    if h[0] in "uUt" or w[0] in "uUt":
        return None
    text = rng.choice(
        [
            f"H {h} W {w}",
            f"Ht. {h}  Sp. {w}",
            f"{h} tall x {w} wide",
            f"{h} H x {w} W",
            f"H: {h}  S: {w}",
            f"Height {h}, Spread {w}",
            f"{h} tall, {w} wide",
        ]
    )
    return Item(text, "phrase", says=(height.said(h), spread.said(w)))


def entries_of(content: Content, show: Show, rng: random.Random, skip: tuple[str, ...] = ()) -> list[Item]:
    """All facts as entries, in the order of the label."""
    entries = []
    for fact in content.facts:
        if fact.field in skip:
            continue
        entry = item(fact, show)
        if show == "icon":
            entry = replace(entry, icon=ICON_OF.get(fact.field, "dot"))
        entries.append(replace(entry, keep=fact.field == "warnings"))
    return entries


def front_entries(content: Content, rng: random.Random, limit: int) -> list[Item]:
    """The few facts a front gives."""
    chosen = [
        item(fact, "phrase") for fact in pick(content, "light", "hardiness", "rhs_rating", "categories")
    ]
    sizes = size_line(content, rng)
    chosen += [sizes] if sizes else [item(fact, "phrase") for fact in pick(content, "height")]
    rng.shuffle(chosen)
    return chosen[: rng.randint(0, limit)]


def small(lines: tuple[Line, ...] | list[Line], scale: float = 0.82) -> list[Item]:
    return [Item(line.text, "small", says=line.says, scale=scale) for line in lines]


def foot(content: Content, rng: random.Random) -> list[Item]:
    """Patents, maker, pot: what stands last."""
    entries = []
    if content.patents:
        entries.append(Item(content.patents.text, "small", says=(content.patents.said(),), scale=0.85))
    if rng.random() < 0.5:
        size = content.container
        entries.append(Item(f"{size.label}: {size.text}", "small", says=(size.said(),), scale=0.9))
    if rng.random() < 0.75:
        entries.append(Item(content.maker.text, "small", says=content.maker.says, scale=0.9))
    return entries


def name_items(content: Content, scale: float = 1.5) -> list[Item]:
    head = [Item(content.title.text, "title", says=content.title.says, scale=scale, keep=True)]
    if content.subtitle:
        head.append(
            Item(content.subtitle.text, "title", says=content.subtitle.says, scale=scale * 0.75, keep=True)
        )
    if content.botanical:
        head.append(
            Item(content.botanical.text, "italic", says=content.botanical.says, scale=scale * 0.78, keep=True)
        )
    if content.also:
        head.append(Item(content.also.text, "phrase", says=content.also.says, scale=0.95))
    return head
