"""Fronts of tags. To add one: write `front_x(sheet, content)` and put it in FRONTS."""

from __future__ import annotations

from collections.abc import Callable

import art
from art import mix
from content import Content
from parts import (
    WHITE,
    entries_of,
    foot,
    front_entries,
    inset,
    names,
    paste_picture,
    pick,
    shade,
)
from PIL import Image
from sheet import Sheet, Show, item


def front_picture_top(sheet: Sheet, content: Content) -> None:
    share = sheet.rng.uniform(0.42, 0.58)
    paste_picture(sheet, content, (0, 0, sheet.width, sheet.height * share))
    left, _, right, bottom = inset(sheet)
    y = sheet.height * share + sheet.width * 0.04
    if content.series and sheet.rng.random() < 0.7:
        y = sheet.line(
            content.series.text,
            (left, y, right, y + 90),
            art.FAMILIES[sheet.style.family][1],
            sheet.style.accent,
            60,
            content.series.says,
        )
    y = names(sheet, content, (left, y, right, y + (bottom - y) * 0.62), sheet.style.accent)
    sheet.column(front_entries(content, sheet.rng, 4), (left, y + 20, right, bottom), 58, 36)


def front_picture_full(sheet: Sheet, content: Content) -> None:
    """Text straight on the picture."""
    paste_picture(sheet, content, (0, 0, sheet.width, sheet.height))
    left, _, right, bottom = inset(sheet)
    at_top = sheet.rng.random() < 0.5
    band = sheet.height * 0.36
    start = 0.0 if at_top else sheet.height - band
    lower = 120 if sheet.hole and at_top else 30
    shade(sheet, (0, start, sheet.width, start + band), sheet.rng.randint(110, 170))
    names(sheet, content, (left, start + lower, right, start + band - 20), WHITE)
    facts = front_entries(content, sheet.rng, 3)
    if facts and at_top:
        shade(sheet, (0, sheet.height * 0.8, sheet.width, sheet.height), 150)
        sheet.column(facts, (left, sheet.height * 0.82, right, bottom), 56, 34, WHITE)


def front_script(sheet: Sheet, content: Content) -> None:
    """An ornamental name over a busy picture: hard to read even for people. The back repeats it."""
    paste_picture(sheet, content, (0, 0, sheet.width, sheet.height))
    left, _, right, bottom = inset(sheet)
    path = art.ORNAMENTAL[sheet.rng.choice(sorted(art.ORNAMENTAL))]
    ink = sheet.rng.choice([(255, 240, 245), (250, 235, 120), (255, 220, 235)])
    y = sheet.height * sheet.rng.choice([0.1, 0.35, 0.66])
    name = content.title
    y = sheet.line(name.text, (left, y, right, y + sheet.height * 0.24), path, ink, 230, name.says)
    if content.subtitle:
        sub = content.subtitle
        sheet.line(sub.text, (left, y, right, min(bottom, y + sheet.height * 0.1)), path, ink, 110, sub.says)


def front_colour_block(sheet: Sheet, content: Content) -> None:
    """Light text on a dark block, a strip of picture."""
    sheet.image.paste(sheet.style.block, (0, 0, sheet.width, sheet.height))
    left, top, right, bottom = inset(sheet)
    split = sheet.height * sheet.rng.uniform(0.4, 0.5)
    y = names(sheet, content, (left, top, right, split), WHITE)
    if content.series:
        sheet.line(
            content.series.text,
            (left, y, right, y + 80),
            art.FAMILIES[sheet.style.family][0],
            mix(WHITE, sheet.style.block, 0.15),
            52,
            content.series.says,
        )
    paste_picture(sheet, content, (0, split, sheet.width, sheet.height * 0.8))
    sheet.column(
        front_entries(content, sheet.rng, 3), (left, sheet.height * 0.82, right, bottom), 56, 34, WHITE
    )


def front_beside(sheet: Sheet, content: Content) -> None:
    """Picture on one side, words on the other (wide labels)."""
    width = sheet.width * sheet.rng.uniform(0.34, 0.46)
    at_left = sheet.rng.random() < 0.6
    paste_picture(
        sheet,
        content,
        (0, 0, width, sheet.height) if at_left else (sheet.width - width, 0, sheet.width, sheet.height),
    )
    left = width + 50 if at_left else 50
    right = sheet.width - 50 if at_left else sheet.width - width - 50
    edge = sheet.height * 0.06
    y = names(
        sheet, content, (left, edge, right, sheet.height * 0.58), sheet.style.accent, size=130, align="left"
    )
    sheet.column(
        front_entries(content, sheet.rng, 5) + foot(content, sheet.rng),
        (left, y + 20, right, sheet.height - edge),
        58,
        34,
    )


def front_plain(sheet: Sheet, content: Content) -> None:
    """The common name only, and perhaps a rule: the sparest tag there is."""
    left, _, right, bottom = inset(sheet, 0.09)
    name = content.subtitle or content.title
    middle = sheet.height * sheet.rng.uniform(0.2, 0.4)
    y = sheet.line(
        name.text,
        (left, middle, right, middle + sheet.height * 0.3),
        art.DISPLAY[sheet.style.display],
        sheet.style.ink,
        210,
        name.says,
    )
    sheet.pen.line([(left, y + 30), (right, y + 30)], fill=sheet.style.accent, width=8)
    if sheet.rng.random() < 0.5:
        sheet.column(front_entries(content, sheet.rng, 2), (left, y + 60, right, bottom), 64, 40)


def front_up_the_side(sheet: Sheet, content: Content) -> None:
    """The name runs up the stake; small facts stand level."""
    paste_picture(sheet, content, (0, 0, sheet.width, sheet.height * 0.3))
    ground = sheet.rng.random() < 0.5
    paper, ink = (sheet.style.block, WHITE) if ground else (sheet.style.paper, sheet.style.accent)
    long, short = int(sheet.height * 0.66), int(sheet.width * 0.6)
    strip = Sheet(Image.new("RGB", (long, short), paper), sheet.style, sheet.rng)
    names(strip, content, (30, 15, long - 30, short - 10), ink, size=170, align="left")
    sheet.said.extend(strip.said)
    sheet.image.paste(strip.image.rotate(90, expand=True), (0, int(sheet.height * 0.32)))
    box = (sheet.width * 0.63, sheet.height * 0.34, sheet.width * 0.99, sheet.height * 0.97)
    sheet.column([item(f, "stack") for f in pick(content, "height", "spread", "hardiness")], box, 46, 32)


def front_card(sheet: Sheet, content: Content) -> None:
    """A bench card: the sign above a block of one kind of plant."""
    paste_picture(sheet, content, (0, 0, sheet.width, sheet.height * 0.36))
    left, _, right, bottom = inset(sheet, 0.05)
    y = names(
        sheet, content, (left, sheet.height * 0.38, right, sheet.height * 0.62), sheet.style.accent, size=170
    )
    show: Show = sheet.rng.choice(["line", "table", "bullet"])
    y = sheet.column(
        entries_of(content, show, sheet.rng)[:8], (left, y + 15, right, sheet.height * 0.88), 60, 34
    )
    price = content.price
    sheet.line(
        price.text,
        (left, sheet.height * 0.885, right, bottom),
        art.FAMILIES["condensed"][1],
        sheet.style.accent,
        190,
        (price.said(),),
    )


def front_strip(sheet: Sheet, content: Content) -> None:
    """A long strip: name at the left, facts at the right."""
    edge = 40
    middle = sheet.width * 0.5
    names(
        sheet,
        content,
        (edge, edge, middle - 20, sheet.height - edge),
        sheet.style.accent,
        size=120,
        align="left",
    )
    entries = front_entries(content, sheet.rng, 5) or entries_of(content, "line", sheet.rng)[:4]
    sheet.column(
        entries + foot(content, sheet.rng),
        (middle + 20, edge, sheet.width - edge, sheet.height - edge),
        56,
        32,
    )


FRONTS: dict[str, Callable[[Sheet, Content], None]] = {
    "picture_top": front_picture_top,
    "picture_full": front_picture_full,
    "script": front_script,
    "colour_block": front_colour_block,
    "beside": front_beside,
    "plain": front_plain,
    "up_the_side": front_up_the_side,
    "card": front_card,
    "strip": front_strip,
}
