"""One side of a tag being printed: text that shrinks until it fits, and a note of every value printed."""

from __future__ import annotations

import random
from dataclasses import dataclass, field, replace
from typing import Literal

import art
from art import Colour
from PIL import Image, ImageDraw, ImageFont
from wording import Fact, Said

Box = tuple[float, float, float, float]
"""Left, top, right, bottom in pixels of the side."""

Show = Literal[
    "line", "phrase", "table", "dots", "stack", "icon", "heading", "title", "small", "italic", "bullet"
]


@dataclass(frozen=True)
class Item:
    """One entry in a column of print. `scale` is its letter size over the column's."""

    text: str
    show: Show = "phrase"
    label: str = ""
    says: tuple[Said, ...] = ()
    icon: str = ""
    scale: float = 1.0
    keep: bool = False
    """Never dropped when the column runs out of room."""


@dataclass(frozen=True)
class Style:
    """A house's look: fonts, ink, paper. `dark` tells light text on a dark ground."""

    family: str
    display: str
    ink: Colour
    accent: Colour
    paper: Colour
    align: Literal["left", "center"] = "left"
    upper_labels: bool = False
    colon: str = ":"
    gap: float = 0.45

    @property
    def block(self) -> Colour:
        """The house colour for a ground under white print."""
        return min(self.accent, self.paper, key=sum)


@dataclass
class Sheet:
    """A side: its picture, and what has been printed on it."""

    image: Image.Image
    style: Style
    rng: random.Random
    said: list[Said] = field(default_factory=list)
    hole: bool = False
    """A hang tag: the top middle is punched out."""

    @property
    def width(self) -> int:
        return self.image.width

    @property
    def height(self) -> int:
        return self.image.height

    @property
    def pen(self) -> ImageDraw.ImageDraw:
        return ImageDraw.Draw(self.image)

    def face(self, size: float, weight: int = 0, text: str = "") -> ImageFont.FreeTypeFont:
        return art.face_for(art.FAMILIES[self.style.family][weight], text, max(8, int(size)))

    # ------------------------------------------------------------ single lines

    def line(
        self,
        text: str,
        box: Box,
        path: str,
        ink: Colour,
        size: float,
        says: tuple[Said, ...] = (),
        align: str = "center",
        outline: Colour | None = None,
    ) -> float:
        """Print in at most two lines, as large as fits the box; returns the bottom."""
        left, top, right, bottom = box
        for pixels in range(int(size), 11, -2):
            face = art.face_for(path, text, pixels)
            rows = wrap(text, face, right - left)
            step = sum(face.getmetrics()) * 0.95
            widest = max(face.getlength(row) for row in rows)
            if len(rows) <= 2 and widest <= right - left and step * len(rows) <= bottom - top:
                break
        y = top
        for row in rows:
            x = left if align == "left" else left + (right - left - face.getlength(row)) / 2
            stroke = max(1, pixels // 22) if outline else 0
            self.pen.text((x, y), row, font=face, fill=ink, stroke_width=stroke, stroke_fill=outline)
            y += step
        self.said.extend(says)
        return y

    # ------------------------------------------------------------ columns

    def column(
        self, items: list[Item], box: Box, size: float, smallest: float, ink: Colour | None = None
    ) -> float:
        """Print the items one under another, smaller if need be; what still does not fit is left out."""
        entries = list(items)
        width, room = box[2] - box[0], box[3] - box[1]
        while entries:
            pixels = size
            while pixels >= smallest:
                if self._run(entries, box, pixels, None) <= room and self._fits(entries, width, pixels):
                    bottom = self._run(entries, box, pixels, ink or self.style.ink)
                    for item in entries:
                        self.said.extend(item.says)
                    return box[1] + bottom
                pixels *= 0.94
            loose = [at for at, item in enumerate(entries) if not item.keep]
            if not loose:
                return box[1]
            entries.pop(loose[-1])
        return box[1]

    def _fits(self, items: list[Item], width: float, size: float) -> bool:
        for item in items:
            face = self.face(size * item.scale, 0, item.text)
            if any(face.getlength(word) > width * 0.95 for word in item.text.split()):
                return False
            if item.show == "dots":
                label = self.face(size * item.scale, 1, item.label)
                if label.getlength(self._label(item)) + face.getlength(item.text) > width * 0.92:
                    return False
        return True

    def _label(self, item: Item) -> str:
        if self.style.upper_labels:
            return item.label.upper()
        return item.label.capitalize() if item.label.isupper() and len(item.label) > 2 else item.label

    def _run(self, items: list[Item], box: Box, size: float, ink: Colour | None) -> float:
        y = box[1]
        for item in items:
            y = self._item(item, box, y, size * item.scale, ink) + size * self.style.gap
        return y - box[1]

    def _item(self, item: Item, box: Box, y: float, size: float, ink: Colour | None) -> float:
        left, _, right, _ = box
        label = self._label(item)
        if item.show in ("table", "dots") and label:
            return self._row(item, label, box, y, size, ink)
        if item.show == "stack" and label:
            y = self._paragraph(label, left, right, y, size * 0.72, 1, self.style.accent if ink else None)
            return self._paragraph(item.text, left, right, y, size, 0, ink)
        if item.show == "icon":
            if ink:
                draw_icon(self.pen, item.icon, left, y, size * 1.5, self.style.accent)
            text = f"{label}{self.style.colon} {item.text}" if label else item.text
            bottom = self._paragraph(text, left + size * 2.1, right, y + size * 0.1, size, 0, ink, "left")
            return max(bottom, y + size * 1.6)
        if item.show == "heading":
            return self._paragraph(item.text, left, right, y, size, 1, self.style.accent if ink else None)
        weight = {"title": 1, "italic": 2}.get(item.show, 0)
        if label:
            return self._labelled(item.text, f"{label}{self.style.colon}", left, right, y, size, ink)
        bullet = "• " if item.show == "bullet" else ""
        return self._paragraph(bullet + item.text, left, right, y, size, weight, ink)

    def _row(self, item: Item, label: str, box: Box, y: float, size: float, ink: Colour | None) -> float:
        left, _, right, _ = box
        bold, plain = self.face(size, 1, label), self.face(size, 0, item.text)
        if item.show == "dots":
            if ink:
                self.pen.text((left, y), label, font=bold, fill=ink)
                start, end = left + bold.getlength(label), right - plain.getlength(item.text)
                self.pen.text((end, y), item.text, font=plain, fill=ink)
                dot = plain.getlength(" .")
                count = int((end - start - dot) / dot)
                self.pen.text((end - dot * (count + 0.5), y), " ." * count, font=plain, fill=ink)
            return y + sum(plain.getmetrics())
        middle = left + (right - left) * 0.42
        first = self._paragraph(label, left, middle - size * 0.3, y, size, 1, ink, "left")
        second = self._paragraph(item.text, middle, right, y, size, 0, ink, "left")
        bottom = max(first, second)
        if ink:
            rule = bottom + size * self.style.gap * 0.5
            self.pen.line([(left, rule), (right, rule)], fill=art.mix(ink, self.style.paper, 0.6), width=2)
        return bottom

    def _labelled(
        self, text: str, label: str, left: float, right: float, y: float, size: float, ink: Colour | None
    ) -> float:
        """Bold label and plain words running on, wrapped together."""
        bold, plain = self.face(size, 1, label), self.face(size, 0, text)
        rows: list[list[tuple[str, bool]]] = [[]]
        x, space = 0.0, plain.getlength(" ")
        for word, is_label in [(w, True) for w in label.split()] + [(w, False) for w in text.split()]:
            length = (bold if is_label else plain).getlength(word)
            if x and x + length > right - left:
                rows.append([])
                x = 0.0
            rows[-1].append((word, is_label))
            x += length + space
        for row in rows:
            total = sum((bold if b else plain).getlength(word) + space for word, b in row) - space
            x = left if self.style.align == "left" else left + (right - left - total) / 2
            for word, is_label in row:
                face = bold if is_label else plain
                if ink:
                    self.pen.text((x, y), word, font=face, fill=ink)
                x += face.getlength(word) + space
            y += sum(plain.getmetrics())
        return y

    def _paragraph(
        self,
        text: str,
        left: float,
        right: float,
        y: float,
        size: float,
        weight: int,
        ink: Colour | None,
        align: str | None = None,
    ) -> float:
        face = self.face(size, weight, text)
        for row in wrap(text, face, right - left):
            if ink:
                centred = (align or self.style.align) == "center"
                x = left + (right - left - face.getlength(row)) / 2 if centred else left
                self.pen.text((x, y), row, font=face, fill=ink)
            y += sum(face.getmetrics())
        return y


def wrap(text: str, face: ImageFont.FreeTypeFont, width: float) -> list[str]:
    """The text in lines no wider than `width`, broken at spaces."""
    rows = [""]
    for word in text.split(" "):
        longer = f"{rows[-1]} {word}".strip()
        if rows[-1] and face.getlength(longer) > width:
            rows.append(word)
        else:
            rows[-1] = longer
    return rows


def item(fact: Fact, show: Show, language: str = "en", **more: object) -> Item:
    """A fact as an entry: with its label, or as a phrase that stands alone."""
    if language != "en":
        label, text = fact.other[language]
        return Item(text, show, label)
    bare = (
        show in ("phrase", "bullet", "small")
        or not fact.label
        or fact.text.lower().startswith(fact.label.lower())
    )
    text = (
        (fact.phrase or fact.text)
        if bare and (show in ("phrase", "bullet", "small") or not fact.label)
        else fact.text
    )
    if show in ("phrase", "bullet", "small") and not fact.phrase and fact.label:
        text = f"{fact.label}: {fact.text}"
    entry = Item(
        text,
        show,
        "" if bare else fact.label,
        (fact.said(text if text != f"{fact.label}: {fact.text}" else fact.text),),
    )
    return replace(entry, **more)  # type: ignore[arg-type]


ICON_OF = {
    "light": "sun",
    "height": "tall",
    "spread": "wide",
    "spacing": "apart",
    "hardiness": "cold",
    "water": "drop",
    "min_temperature": "cold",
    "bloom": "flower",
    "flower_height": "tall",
    "rhs_rating": "cold",
}


def draw_icon(pen: ImageDraw.ImageDraw, name: str, x: float, y: float, size: float, ink: Colour) -> None:
    """A little pictogram of our own, as stands beside the words."""
    r, cx, cy, thick = size / 2, x + size / 2, y + size / 2, max(2, int(size / 14))
    if name == "sun":
        pen.ellipse((cx - r * 0.5, cy - r * 0.5, cx + r * 0.5, cy + r * 0.5), fill=ink)
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1), (0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7)):
            pen.line(
                (cx + dx * r * 0.65, cy + dy * r * 0.65, cx + dx * r, cy + dy * r), fill=ink, width=thick
            )
    elif name in ("tall", "wide", "apart"):
        dx, dy = (0.0, r) if name == "tall" else (r, 0.0)
        pen.line((cx - dx, cy - dy, cx + dx, cy + dy), fill=ink, width=thick)
        for end in (-1, 1):
            px, py = cx + dx * end, cy + dy * end
            for turn in (-1, 1):
                bx, by = (
                    (turn * r * 0.3, -end * r * 0.35) if name == "tall" else (-end * r * 0.35, turn * r * 0.3)
                )
                pen.line((px, py, px + bx, py + by), fill=ink, width=thick)
    elif name == "drop":
        pen.polygon([(cx, cy - r), (cx - r * 0.55, cy + r * 0.2), (cx + r * 0.55, cy + r * 0.2)], fill=ink)
        pen.ellipse((cx - r * 0.6, cy - r * 0.2, cx + r * 0.6, cy + r), fill=ink)
    elif name == "dot":
        pen.ellipse((cx - r * 0.35, cy - r * 0.35, cx + r * 0.35, cy + r * 0.35), fill=ink)
    elif name == "cold":
        for dx, dy in ((1.0, 0.0), (0.5, 0.87), (-0.5, 0.87)):
            pen.line((cx - dx * r, cy - dy * r, cx + dx * r, cy + dy * r), fill=ink, width=thick)
    else:
        for dx, dy in ((0.5, 0), (-0.5, 0), (0, 0.5), (0, -0.5)):
            pen.ellipse(
                (cx + dx * r - r * 0.4, cy + dy * r - r * 0.4, cx + dx * r + r * 0.4, cy + dy * r + r * 0.4),
                fill=ink,
            )
