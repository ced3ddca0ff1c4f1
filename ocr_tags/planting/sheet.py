"""A sheet of paper with lines, discs and words on it, in millimetres, written out as SVG or PNG."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal
from xml.sax.saxutils import escape, quoteattr

from PIL import Image, ImageDraw, ImageFont

Anchor = Literal["start", "middle", "end"]
Spot = tuple[float, float]

DOTS_PER_INCH = 150
_SMOOTH = 2
"""The PNG is drawn so many times larger and then reduced, which takes the steps out of slanting lines."""
_FONTS = ("DejaVuSans.ttf", "LiberationSans-Regular.ttf", "Arial.ttf", "Helvetica.ttc", "Verdana.ttf")
_PLAIN = str.maketrans(
    {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "–": "-", "−": "-", "×": "x", "²": "2", "…": "."}
)


@dataclass(frozen=True, slots=True)
class Line:
    """A line through points; `fill` closes it. Colours are "#rrggbb", widths millimetres."""

    points: tuple[Spot, ...]
    colour: str = "#000000"
    width: float = 0.3
    fill: str = ""
    dashed: bool = False
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Disc:
    centre: Spot
    radius: float
    colour: str = "#000000"
    width: float = 0.2
    fill: str = ""


@dataclass(frozen=True, slots=True)
class Words:
    """One line of text standing on `at`; `height` is the type size."""

    at: Spot
    text: str
    height: float = 3.6
    anchor: Anchor = "start"
    colour: str = "#1c1c1c"
    turned: bool = False
    """Read from below upwards."""


@dataclass(frozen=True, slots=True)
class Sheet:
    width: float
    height: float
    title: str
    marks: tuple[Line | Disc | Words, ...]


# ---------------------------------------------------------------- SVG


def to_svg(sheet: Sheet) -> str:
    """The sheet as SVG; printed at full size it is true to scale."""
    size = f"{sheet.width:g} {sheet.height:g}"
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" width="{sheet.width:g}mm"'
        f' height="{sheet.height:g}mm" viewBox="0 0 {size}" font-family="sans-serif">'
    )
    paper = f'<rect width="{sheet.width:g}" height="{sheet.height:g}" fill="#ffffff"/>'
    body = "\n".join(_svg(mark) for mark in sheet.marks)
    return f"{head}\n<title>{escape(sheet.title)}</title>\n{paper}\n{body}\n</svg>\n"


def _svg(mark: Line | Disc | Words) -> str:
    match mark:
        case Line(points, colour, width, fill, dashed, closed):
            kind = "polygon" if fill or closed else "polyline"
            where = " ".join(f"{x:.2f},{y:.2f}" for x, y in points)
            dashes = ' stroke-dasharray="2 1.5"' if dashed else ""
            return (
                f'<{kind} points="{where}" fill={quoteattr(fill or "none")} stroke="{colour}"'
                f' stroke-width="{width:g}" stroke-linejoin="round"{dashes}/>'
            )
        case Disc((x, y), radius, colour, width, fill):
            return (
                f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{radius:.2f}" fill={quoteattr(fill or "none")}'
                f' stroke="{colour}" stroke-width="{width:g}"/>'
            )
        case Words((x, y), text, height, anchor, colour, turned):
            turn = f' transform="rotate(-90 {x:.2f} {y:.2f})"' if turned else ""
            return (
                f'<text x="{x:.2f}" y="{y:.2f}" font-size="{height:g}" text-anchor="{anchor}"'
                f' fill="{colour}"{turn}>{escape(text)}</text>'
            )


# ---------------------------------------------------------------- PNG


def to_png(sheet: Sheet) -> bytes:
    """The sheet as PNG at 150 dots per inch; its size in inches is recorded, so it too prints to scale."""
    dots = DOTS_PER_INCH / 25.4 * _SMOOTH
    size = (round(sheet.width * dots), round(sheet.height * dots))
    picture = Image.new("RGB", size, "white")
    pen = ImageDraw.Draw(picture)
    for mark in sheet.marks:
        match mark:
            case Line():
                _draw_line(pen, mark, dots)
            case Disc((x, y), radius, colour, width, fill):
                box = [(x - radius) * dots, (y - radius) * dots, (x + radius) * dots, (y + radius) * dots]
                pen.ellipse(box, fill=fill or None, outline=colour, width=max(1, round(width * dots)))
            case Words():
                _draw_words(picture, pen, mark, dots)
    small = picture.resize((size[0] // _SMOOTH, size[1] // _SMOOTH), Image.Resampling.LANCZOS)
    stream = io.BytesIO()
    small.save(stream, "PNG", dpi=(DOTS_PER_INCH, DOTS_PER_INCH), optimize=True)
    return stream.getvalue()


def _draw_line(pen: ImageDraw.ImageDraw, line: Line, dots: float) -> None:
    points = [(x * dots, y * dots) for x, y in line.points]
    width = max(1, round(line.width * dots))
    if line.fill:
        pen.polygon(points, fill=line.fill)
    if line.fill or line.closed:
        points.append(points[0])
    if not line.dashed:
        pen.line(points, fill=line.colour, width=width, joint="curve")
        return
    (x, y), (far_x, far_y) = points[0], points[-1]
    length = ((far_x - x) ** 2 + (far_y - y) ** 2) ** 0.5
    for start in range(0, round(length), round(3.5 * dots)):
        near, far = start / length, min(1, (start + 2 * dots) / length)
        ends = [(x + (far_x - x) * at, y + (far_y - y) * at) for at in (near, far)]
        pen.line(ends, fill=line.colour, width=width)


def _draw_words(picture: Image.Image, pen: ImageDraw.ImageDraw, words: Words, dots: float) -> None:
    font, complete = _font(round(words.height * dots))
    text = words.text if complete else words.text.translate(_PLAIN)
    x, y = words.at[0] * dots, words.at[1] * dots
    anchor = {"start": "ls", "middle": "ms", "end": "rs"}[words.anchor]
    if not words.turned:
        pen.text((x, y), text, fill=words.colour, font=font, anchor=anchor)
        return
    width, height = round(font.getlength(text)) + 4, round(words.height * dots * 1.5)
    strip = Image.new("L", (width, height), 0)
    ImageDraw.Draw(strip).text((2, words.height * dots), text, fill=255, font=font, anchor="ls")
    strip = strip.rotate(90, expand=True)
    up = {"start": width, "middle": width / 2, "end": 0}[words.anchor]
    corner = (round(x - words.height * dots), round(y - up))
    picture.paste(words.colour, (*corner, corner[0] + strip.width, corner[1] + strip.height), strip)


@lru_cache(maxsize=16)
def _font(size: int) -> tuple[ImageFont.FreeTypeFont | ImageFont.ImageFont, bool]:
    """A font of the system, and whether it has ½ and ×; failing all, Pillow's own, which has not."""
    for name in _FONTS:
        try:
            return ImageFont.truetype(name, size), True
        except OSError:
            continue
    return ImageFont.load_default(size), False
