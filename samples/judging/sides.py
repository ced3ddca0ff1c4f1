"""One printed side of a tag: a front that sells, a back that tells, or both on one side."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pictures
from blocks import Block, cells, columns, fill, prose, row
from faces import BODY, FANCY_TITLES, PLAIN_TITLES, THERMAL
from facts import Fact, Said
from languages import two_languages
from outlines import Outline
from PIL import Image, ImageDraw
from press import Colour, Pen
from saying import Tag
from smallprint import barcode, footer, passport, sticker
from titles import Title, title_block

WHITE: Colour = (255, 255, 255)
PALETTES: tuple[tuple[Colour, Colour, Colour], ...] = (  # paper, ink, accent
    (WHITE, (25, 25, 25), (40, 110, 60)),
    ((252, 250, 242), (40, 34, 28), (150, 60, 40)),
    ((246, 242, 226), (30, 50, 40), (60, 100, 50)),
    (WHITE, (20, 40, 90), (20, 60, 140)),
    ((238, 245, 232), (20, 60, 40), (20, 90, 60)),
    ((255, 250, 225), (60, 30, 60), (130, 40, 110)),
    ((250, 236, 238), (80, 20, 40), (160, 30, 70)),
    (WHITE, (0, 0, 0), (0, 0, 0)),
    ((228, 236, 242), (25, 45, 65), (30, 80, 120)),
)
DARK: tuple[tuple[Colour, Colour, Colour], ...] = (
    ((24, 66, 44), (250, 248, 236), (240, 215, 130)),
    ((30, 40, 80), (250, 250, 250), (200, 220, 250)),
    ((88, 24, 50), (255, 246, 240), (250, 205, 170)),
    ((40, 38, 36), (250, 248, 240), (170, 215, 140)),
    ((0, 90, 95), (255, 255, 250), (255, 230, 150)),
)
ROW_STYLES = (
    "colon",
    "colon",
    "table",
    "dots",
    "stacked",
    "margin",
    "caps",
    "inline",
    "bullet",
    "icon",
    "icon",
)


def _sheet(outline: Outline, side: str, said: Said, rng: Random, dark: float) -> Pen:
    thermal = outline.name == "thermal"
    paper, ink, accent = rng.choice(DARK if rng.random() < dark else PALETTES)
    if thermal:
        paper, ink, accent = WHITE, (12, 12, 12), (12, 12, 12)
    image = Image.new("RGB", (outline.width, outline.height), paper)
    return Pen(image, side, said, rng.choice(THERMAL if thermal else BODY), ink, accent, paper)


def _text(
    fact: Fact, face: str, scale: float, rank: int, align: str = "m", fill: Colour | None = None
) -> Block:
    """One fact alone, at so many times the letter size."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(fact)
        name = getattr(pen.family, face)
        big = size * scale
        while big > size and not pen.fits(fact.text, name, big, w):
            big *= 0.95
        return pen.text(x, y, w, fact.text, name, big, fill, align)

    return Block(show, rank)


def _name_blocks(
    tag: Tag, rng: Random, look: Title, full: bool, foreign: bool, botanical: bool = True
) -> list[Block]:
    """Selling name, common name, botanical name: in the order and sizes of the lot."""
    align = look.align
    blocks: list[Block] = []
    shown = str.upper if rng.random() < 0.22 and "Script" not in look.face else str
    if tag.title and rng.random() < 0.12 and tag.species.commons:
        joined = f"{tag.title} {tag.common.text}"
        fact = Fact("common_names", "", joined, joined)
        blocks.append(title_block(shown(joined), "", replace(look, stacked=False), (fact,)))
    elif tag.title:
        blocks.append(title_block(shown(tag.title), tag.mark, look, ()))
        blocks.insert(rng.choice((0, 1, 1)), _text(tag.common, "bold", 1.35, 0, align, look.fill))
    else:
        blocks.append(title_block(shown(tag.common.text), "", look, (tag.common,)))
    if foreign and tag.foreign_common:
        blocks.append(_text(tag.foreign_common, "regular", 1.2, 0, align, look.fill))
    if botanical:
        fact = tag.botanical if full or not tag.botanical_short else tag.botanical_short
        blocks.append(_text(fact, "italic", 1.05, 0, align, look.fill))
    if botanical and full and "syn" in tag.species.notes:
        older = f"syn. {tag.species.notes['syn']}"
        blocks.append(_text(Fact("also:synonyms", "", older, older), "italic", 0.9, 9, align, look.fill))
    if tag.series and rng.random() < 0.7:
        blocks.append(_text(tag.series, "regular", 0.9, 3, align, look.fill))
    return blocks


def _look(pen: Pen, rng: Random, fancy: bool, align: str = "m") -> Title:
    face = rng.choice(FANCY_TITLES if fancy else PLAIN_TITLES)
    bend = rng.choice(("arch", "slant", "", "")) if fancy else ""
    return Title(face, pen.ink, bend, rng.random() < 0.15, None, align, rng.choice((0.15, 0.19, 0.24)))


def print_front(
    tag: Tag, outline: Outline, rng: Random, said: Said, full: bool, fancy: float
) -> tuple[Pen, str]:
    """The side that sells; `full` when the whole botanical name has to stand here."""
    if outline.name == "thermal":
        return print_back(tag, outline, rng, said, True, "front")
    kinds = ["picture", "picture", "cover", "band", "plain"]
    if outline.name in ("stake", "strip"):
        kinds = ["picture", "band", "plain", "side" if outline.name == "stake" else "plain", "picture"]
    if outline.width > 2 * outline.height:
        kinds = ["picture", "picture", "band", "plain"]
    kind = rng.choice(kinds)
    pen = _sheet(outline, "front", said, rng, {"band": 1.0, "plain": 0.2}.get(kind, 0.25))
    is_fancy = rng.random() < fancy
    extras = _front_facts(tag, rng)
    if kind == "side":
        _up_the_side(pen, tag, outline, rng, full, extras)
        return pen, kind
    box = _picture(pen, tag, outline, rng, kind)
    look = _look(pen, rng, is_fancy, rng.choice("mml"))
    if kind == "cover":
        pen.ink = look_ink = rng.choice((WHITE, (255, 250, 200)))
        look = replace(look, fill=look_ink, edge=(20, 30, 15))
    blocks = _name_blocks(tag, rng, look, full, bool(tag.language))
    style = rng.choice(("phrase", "icon", "colon", "phrase"))
    blocks += [
        row(fact, style if fact.icon or style != "icon" else "phrase", 5 + n) for n, fact in enumerate(extras)
    ]
    fill(pen, blocks, box, outline.body * rng.choice((1.1, 1.4, 1.7)), outline.least)
    return pen, f"{kind}{'/fancy' if is_fancy else ''}"


def _front_facts(tag: Tag, rng: Random) -> list[Fact]:
    count = rng.choice((0, 0, 1, 2, 3))
    able = [
        f for f in tag.facts if f.field in ("height", "light", "categories", "bloom", "hardiness", "spread")
    ]
    chosen = rng.sample(able, min(count, len(able)))
    small = [f for f in tag.small if f.field in ("patents", "container", "supplier")]
    return chosen + (rng.sample(small, 1) if small and rng.random() < 0.4 else [])


def _picture(
    pen: Pen, tag: Tag, outline: Outline, rng: Random, kind: str
) -> tuple[float, float, float, float]:
    """Paints the picture that this kind of front has; gives the room that is left for print."""
    x, y, w, h = outline.box
    if kind in ("band", "plain"):
        if kind == "plain" and rng.random() < 0.5:
            pen.draw.rectangle((0, 0, outline.width, y * 0.55), fill=pen.accent)
        return outline.box
    colour = pictures.hue(rng.choice(tag.species.colours) if tag.species.colours else "", rng)
    if kind == "cover":
        art = pictures.paint(tag.species.picture, colour, pen.image.size, rng)
        top = rng.random() < 0.5
        share = 0.5
        where = (x, y if top else y + h * (1 - share), w, h * share)
        shade = Image.new("L", pen.image.size, 0)
        ImageDraw.Draw(shade).rectangle((0, where[1] - 40, outline.width, where[1] + where[3] + 40), fill=165)
        art.paste((18, 34, 16), (0, 0), shade)
        pen.image.paste(art)
        return where
    if outline.width > outline.height * 1.2:
        side = int(outline.width * rng.uniform(0.34, 0.45))
        pen.image.paste(pictures.paint(tag.species.picture, colour, (side, outline.height), rng), (0, 0))
        return side + 60, y, outline.width - side - 60 - max(outline.width - x - w, 60), h
    tall = int(outline.height * rng.uniform(0.3, 0.45))
    pen.image.paste(pictures.paint(tag.species.picture, colour, (outline.width, tall), rng), (0, 0))
    return x, tall + 40, w, y + h - tall - 40


def _up_the_side(pen: Pen, tag: Tag, outline: Outline, rng: Random, full: bool, extras: list[Fact]) -> None:
    """The names run up the stake, read from its side; a few facts stand upright below."""
    x, y, w, h = outline.box
    long = int(h * 0.72)
    pane = Image.new("RGB", (long, int(w)), pen.paper)
    inner = Pen(pane, pen.side, pen.said, pen.family, pen.ink, pen.accent, pen.paper)
    look = replace(_look(inner, rng, False, "l"), most=0.13, stacked=False)
    fill(
        inner,
        _name_blocks(tag, rng, look, full, bool(tag.language)),
        (20, 10, long - 40, w - 20),
        outline.body * 1.2,
        outline.least,
    )
    pen.least = min(pen.least, inner.least)
    pen.image.paste(pane.rotate(90, expand=True), (int(x), int(y)))
    pen.printed.append((x, y, x + w, y + long))
    blocks = [row(fact, "phrase", 3 + n) for n, fact in enumerate(extras)]
    fill(pen, blocks, (x, y + long + 40, w, h - long - 40), outline.body, outline.least)


def print_back(
    tag: Tag, outline: Outline, rng: Random, said: Said, full: bool, side: str = "back"
) -> tuple[Pen, str]:
    """The side that tells. On a tag with one side it is that side, and everything stands here."""
    pen = _sheet(outline, side, said, rng, 0.12)
    align = rng.choice("lm")
    look = replace(_look(pen, rng, False, align), most=0.11)
    blocks: list[Block] = []
    if full or rng.random() < 0.8:
        blocks += _name_blocks(tag, rng, look, full, bool(tag.language), full or rng.random() < 0.8)
        if tag.second_common:
            blocks.append(_text(tag.second_common, "regular", 1.0, 4, align))
    names, wide = len(blocks), outline.width > outline.height
    style = rng.choice(ROW_STYLES)
    labelled = [fact for fact in tag.facts if fact.label]
    plain = [fact for fact in tag.facts if not fact.label]
    if not tag.language and {"height", "spread"} <= {fact.field for fact in labelled} and rng.random() < 0.18:
        blocks.append(_size(labelled, rng))
        labelled = [fact for fact in labelled if fact.field not in ("height", "spread")]
    room = outline.box[2] > 900
    if tag.language and rng.random() < 0.9:
        style = "two languages"
        blocks.append(two_languages(labelled, 1, room and rng.random() < 0.6))
        blocks += [row(fact, "phrase", 6 + n) for n, fact in enumerate(plain)]
    elif rng.random() < 0.14 and len(labelled) >= 3:
        style = "prose"
        blocks.append(prose(_together([*labelled, *plain]), 1))
    elif rng.random() < 0.1 and room:
        style = "cells"
        blocks.append(cells(labelled, 3 if wide else 2, 1))
        blocks += [row(fact, "phrase", 6 + n) for n, fact in enumerate(plain)]
    elif room and (wide or rng.random() < 0.2) and len(tag.facts) > 4:
        blocks.append(columns([*labelled, *plain], style, 1))
        style = f"columns {style}"
    else:
        blocks += [row(fact, style, 6 + n) for n, fact in enumerate([*labelled, *plain])]
    edge = _edge(tag, rng, align)
    most = outline.body * rng.choice((1.0, 1.2, 1.5))
    if outline.width > 2 * outline.height:
        _side_by_side(pen, blocks[:names], [*blocks[names:], *edge], outline, most)
    else:
        fill(pen, [*blocks, *edge], outline.box, most, outline.least)
    return pen, style


def _side_by_side(pen: Pen, names: list[Block], rest: list[Block], outline: Outline, most: float) -> None:
    """A long low tag: its names at the left, what it says of the plant at the right."""
    x, y, w, h = outline.box
    left = w * 0.34 if names else 0.0
    fill(pen, names, (x, y, left - 40, h), most, outline.least)
    fill(pen, rest, (x + left, y, w - left, h), most, outline.least)


def _size(facts: list[Fact], rng: Random) -> Block:
    """Height and spread in one line: `18-24" H x 12" W`."""
    tall, broad = (next(fact for fact in facts if fact.field == field) for field in ("height", "spread"))
    lead, by = rng.choice(("Size: ", "Mature size: ", "")), rng.choice((" x ", " × ", ", "))
    one, two = (fact.text[0].lower() + fact.text[1:] for fact in (tall, broad))
    text = lead + rng.choice((f"{one} H{by}{two} W", f"H {one}{by}W {two}", f"{one} tall{by}{two} wide"))

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(tall, broad)
        return pen.text(x, y, w, text, pen.family.regular, size)

    return Block(show, 5)


def _together(facts: list[Fact]) -> list[Fact]:
    """Facts whose sentence can stand in a paragraph."""
    return [replace(fact, sentence=fact.sentence or fact.text) for fact in facts]


def _edge(tag: Tag, rng: Random, align: str) -> list[Block]:
    blocks: list[Block] = []
    small = [fact for fact in tag.small if fact.field != "price"]
    price = [fact for fact in tag.small if fact.field == "price"]
    if tag.passport:
        blocks.append(passport(tag.passport, 30))
    if small:
        blocks.append(footer(small, 26, align))
    blocks += [sticker(fact, 28) for fact in price]
    if tag.gtin:
        blocks.append(barcode(tag.gtin, 32))
    return blocks
