"""Fronts and backs of the second part."""

from __future__ import annotations

from random import Random

import pictures
import second_faces
from blocks import Block, fill
from faces import Family
from facts import Fact, Said
from outlines import Box, Outline
from PIL import Image, ImageDraw
from press import Pen
from second_pen import NarrowPen
from second_rows import COLUMNS, ROWS, badges, fits_beside, grid, row, running, tongues
from second_says import Copy
from smallprint import barcode, footer, passport, sticker
from titles import Title, title_block

FRONTS = ("oval", "ruled", "panel", "diagonal", "masthead")
BACKS = (*ROWS, "running", "dotted", "badges")


def _sheet(outline: Outline, side: str, said: Said, rng: Random, dark: float) -> Pen:
    paper, ink, accent = second_faces.colours(rng, dark)
    families: tuple[Family, ...] = second_faces.BODY
    if outline.name == "thermal":
        paper, ink, accent = (255, 255, 255), (8, 8, 8), (8, 8, 8)
        families = second_faces.LABEL
    image = Image.new("RGB", (outline.width, outline.height), paper)
    return NarrowPen(image, side, said, rng.choice(families), ink, accent, paper)


def _alone(fact: Fact, face: str, scale: float, rank: int, align: str, lead: str = "") -> Block:
    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(fact)
        name, big, text = getattr(pen.family, face), size * scale, lead + fact.text
        while big > size and not pen.fits(text, name, big, w):
            big *= 0.95
        return pen.text(x, y, w, text, name, big, None, align)

    return Block(show, rank)


def _names(
    copy: Copy, rng: Random, pen: Pen, full: bool, fancy: bool, align: str, most: float
) -> list[Block]:
    """Selling name, common names, botanical name, older name, series."""
    face = rng.choice(second_faces.FANCY if fancy else second_faces.TITLES)
    look = Title(face, pen.ink, "", False, None, align, most)
    botanical = copy.botanical if full or not copy.short else copy.short
    latin = _alone(
        botanical, "italic", 1.1, 0, align, rng.choice(("", "", "Botanical name: ")) if full else ""
    )
    rest = [_alone(fact, "regular", 1.15, 1 + 3 * n, align) for n, fact in enumerate(copy.commons)]
    if copy.title:
        blocks = [title_block(copy.title, "", look, ()), *rest]
        blocks[1:1] = [latin] if rng.random() < 0.4 else []
        blocks += [] if latin in blocks else [latin]
    elif rng.random() < 0.25 and not fancy:
        blocks = [latin, *rest]
    else:
        blocks = [title_block(copy.commons[0].text, "", look, copy.commons[:1]), latin, *rest[1:]]
    if full and "syn" in copy.species.notes:
        older = copy.species.notes["syn"]
        said = Fact("also:synonyms", "", f"(formerly {older})", older)
        blocks.append(_alone(said, "italic", 0.9, 8, align))
    if copy.series:
        blocks.append(_alone(copy.series, "bold", 0.95, 2, align))
    return blocks


def print_front(
    copy: Copy, outline: Outline, rng: Random, said: Said, full: bool, fancy: float
) -> tuple[Pen, str]:
    if outline.name == "thermal":
        return print_back(copy, outline, rng, said, True, "front")
    # A long low tag has no height for print above a band of picture.
    kind = rng.choice(FRONTS[:4] if outline.width > 2 * outline.height else FRONTS)
    pen = _sheet(outline, "front", said, rng, {"oval": 0.8, "masthead": 0.5}.get(kind, 0.15))
    box = PAINT[kind](pen, copy, outline, rng)
    most = min(rng.choice((0.14, 0.18)), 0.18 * box[3] / box[2])  # a low tag has a low title
    blocks = _names(copy, rng, pen, full, rng.random() < fancy, rng.choice("mml"), most)
    marked = [line for line in copy.lines if line.icon and not line.other]
    if marked and rng.random() < 0.45:
        blocks.append(badges(rng.sample(marked, min(3, len(marked))), copy, 6))
    elif rng.random() < 0.4:
        told = [line for line in copy.lines if line.field in ("light", "height", "categories", "bloom")]
        blocks += [row(line, copy, "dash", 6 + n) for n, line in enumerate(told[:2])]
    if copy.small and rng.random() < 0.3:
        blocks.append(footer(copy.small[:1], 20, "m"))
    fill(pen, blocks, box, outline.body * rng.choice((1.1, 1.3, 1.6)), outline.least)
    return pen, kind


def _art(copy: Copy, size: tuple[int, int], rng: Random) -> Image.Image:
    colour = pictures.hue(copy.species.colours[0] if copy.species.colours else "", rng)
    return pictures.paint(copy.species.picture, colour, size, rng)


def _split(outline: Outline, share: float) -> tuple[tuple[int, int, int, int], Box]:
    """Room for a picture and the room left for print: beside it on a wide tag, else below."""
    x, y, w, h = outline.box
    if outline.width > outline.height * 1.15:
        cut = int(x + w * share * 0.8)
        return (int(x), int(y), cut, int(y + h)), (cut + 70, y, x + w - cut - 70, h)
    cut = int(y + h * share)
    return (int(x), int(y), int(x + w), cut), (x, cut + 50, w, y + h - cut - 50)


def _oval(pen: Pen, copy: Copy, outline: Outline, rng: Random) -> Box:
    (a, b, c, d), box = _split(outline, 0.4)
    art = _art(copy, (c - a, d - b), rng)
    mask = Image.new("L", art.size, 0)
    ImageDraw.Draw(mask).ellipse((4, 4, c - a - 5, d - b - 5), fill=255)
    pen.image.paste(art, (a, b), mask)
    pen.draw.ellipse((a, b, c, d), outline=pen.accent, width=8)
    return box


def _ruled(pen: Pen, copy: Copy, outline: Outline, rng: Random) -> Box:
    x, y, w, h = outline.box
    for inset, thick in ((0, 7), (20, 2)):
        pen.draw.rectangle(
            (x + inset, y + inset, x + w - inset, y + h - inset), outline=pen.accent, width=thick
        )
    return x + 60, y + 60, w - 120, h - 120


def _panel(pen: Pen, copy: Copy, outline: Outline, rng: Random) -> Box:
    """A card of plain paper laid on a picture that fills the tag."""
    pen.image.paste(_art(copy, pen.image.size, rng))
    x, y, w, h = outline.box
    top = y + h * (0.0 if rng.random() < 0.4 else 0.36)
    pen.draw.rounded_rectangle((x, top, x + w, top + h * 0.62), 40, fill=pen.paper)
    return x + 45, top + 40, w - 90, h * 0.62 - 80


def _diagonal(pen: Pen, copy: Copy, outline: Outline, rng: Random) -> Box:
    (_, _, c, d), box = _split(outline, 0.4)
    wide = outline.width > outline.height * 1.15
    size = (c, outline.height) if wide else (outline.width, d)
    art = _art(copy, size, rng)
    mask = Image.new("L", size, 0)
    w, h = size
    shape = [(0, 0), (w, 0), (w * 0.75, h), (0, h)] if wide else [(0, 0), (w, 0), (w, h * 0.72), (0, h)]
    ImageDraw.Draw(mask).polygon(shape, fill=255)
    pen.image.paste(art, (0, 0), mask)
    return box


def _masthead(pen: Pen, copy: Copy, outline: Outline, rng: Random) -> Box:
    """Print above, a band of picture along the foot."""
    x, y, w, h = outline.box
    top = int(y + h * 0.68)
    pen.image.paste(_art(copy, (outline.width, outline.height - top), rng), (0, top))
    pen.draw.rectangle((0, top - 14, outline.width, top), fill=pen.accent)
    return x, y, w, h * 0.68 - 40


PAINT = {"oval": _oval, "ruled": _ruled, "panel": _panel, "diagonal": _diagonal, "masthead": _masthead}


def print_back(
    copy: Copy, outline: Outline, rng: Random, said: Said, full: bool, side: str = "back"
) -> tuple[Pen, str]:
    pen = _sheet(outline, side, said, rng, 0.1)
    names = _names(copy, rng, pen, full, False, rng.choice("lm"), 0.1) if full or rng.random() < 0.7 else []
    x, y, w, h = outline.box
    beside = bool(names) and outline.width > 2 * outline.height
    told, style = _told(copy, rng, pen, w * 0.66 if beside else w, outline.least)
    rest = [*told, *_edge(copy, rng)]
    most = outline.body * rng.choice((1.0, 1.15, 1.4))
    if beside:
        fill(pen, names, (x, y, w * 0.3, h), most, outline.least)
        fill(pen, rest, (x + w * 0.34, y, w * 0.66, h), most, outline.least)
    else:
        fill(pen, [*names, *rest], outline.box, most, outline.least)
    return pen, style


def _told(copy: Copy, rng: Random, pen: Pen, width: float, least: float) -> tuple[list[Block], str]:
    """What the back tells, in one of its ways, and the name of that way."""
    style, room = rng.choice(BACKS), width > 900
    lines = [line for line in copy.lines if line.label] + [line for line in copy.lines if not line.label]
    marked = [line for line in copy.lines if line.icon][:4]
    if copy.tongue and rng.random() < 0.35:
        return [tongues(lines, copy, 1)], "tongues"
    if style in ("running", "dotted") and not copy.tongue:
        return [running(lines, 1, ". " if style == "running" else " • ")], style
    if style == "badges" and room and marked and not copy.tongue:
        rest = [line for line in lines if line not in marked]
        return [badges(marked, copy, 1), *([running(rest, 2)] if rest else [])], style
    style = style if style in ROWS else "dash"
    across = 2 if room and rng.random() < (0.8 if style in ("boxed", "headed") else 0.25) else 1
    if style in COLUMNS and not fits_beside(pen, width / across - 30, least, lines, copy):
        style = "dash"
    if across == 2:
        return [grid(lines, copy, style, 1)], f"grid {style}"
    return [row(line, copy, style, 6 + n) for n, line in enumerate(lines)], style


def _edge(copy: Copy, rng: Random) -> list[Block]:
    blocks = [passport(copy.passport, 30)] if copy.passport else []
    blocks += [footer(copy.small, 26, rng.choice("lm"))] if copy.small else []
    blocks += [sticker(copy.price, 28)] if copy.price else []
    return blocks + ([barcode(copy.gtin, 32)] if copy.gtin else [])
