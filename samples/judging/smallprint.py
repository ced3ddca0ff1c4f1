"""What stands at the edge of a tag: supplier, patents, price stickers, bar codes, plant passports."""

from __future__ import annotations

import math
from collections.abc import Sequence

from blocks import Block
from faces import DIGITS
from facts import Fact
from press import Pen, fit_line

L = (
    "0001101",
    "0011001",
    "0010011",
    "0111101",
    "0100011",
    "0110001",
    "0101111",
    "0111011",
    "0110111",
    "0001011",
)
PARITY = ("LLLLLL", "LLGLGG", "LLGGLG", "LLGGGL", "LGLLGG", "LGGLLG", "LGGGLL", "LGLGLG", "LGLGGL", "LGGLGL")
"""Bar patterns of EAN-13 (ISO/IEC 15420); UPC-A is EAN-13 with a leading 0."""


def bars(digits: str) -> str:
    """Ones and zeros of the bar code, 95 modules wide."""
    full = digits.zfill(13)
    left = ""
    for digit, parity in zip(full[1:7], PARITY[int(full[0])], strict=True):
        code = L[int(digit)]
        left += code if parity == "L" else _flip(code)[::-1]
    return "101" + left + "01010" + "".join(_flip(L[int(digit)]) for digit in full[7:]) + "101"


def _flip(code: str) -> str:
    return code.translate(str.maketrans("01", "10"))


def barcode(fact: Fact, rank: int) -> Block:
    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        module = max(int(min(w / 113, size / 9)), 2)
        tall = size * 2.6
        pen.say(fact)
        if not pen.dry:
            _bars(pen, x, y, module, tall, fact.text, size)
        return tall + size * 1.4

    return Block(show, rank)


def _bars(pen: Pen, x: float, y: float, module: int, tall: float, digits: str, size: float) -> None:
    quiet = 9 * module
    pen.draw.rectangle((x, y, x + 113 * module, y + tall + size * 1.3), fill=(255, 255, 255))
    for number, one in enumerate(bars(digits)):
        if one == "1":
            left = x + quiet + number * module
            pen.draw.rectangle((left, y + size * 0.2, left + module - 1, y + tall), fill=(10, 10, 10))
    text = (
        f"{digits[0]} {digits[1:7]} {digits[7:]}"
        if len(digits) == 13
        else f"{digits[0]} {digits[1:6]} {digits[6:11]} {digits[11]}"
    )
    letters = fit_line(pen, text, DIGITS, 108 * module, size * 0.85, 20)
    pen.line(x + 56 * module, y + tall + size * 0.1, text, DIGITS, letters, (10, 10, 10), "m")


def passport(fact: Fact, rank: int) -> Block:
    """The block of Annex VII to Regulation (EU) 2016/2031: flag, heading, lines A to D."""
    heading = {
        "NL": "Plantenpaspoort",
        "DE": "Pflanzenpass",
        "BE": "Plantenpaspoort",
        "FR": "Passeport phytosanitaire",
    }

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        small, pad = max(size * 0.85, 26), size * 0.4
        title = f"{heading.get(fact.label, 'Plantepas')} / Plant Passport"
        value = fact.value
        lines = [
            f"A {value['botanical_name']}",
            f"B {value['operator']}",
            f"C {value['traceability']}",
            f"D {value['origin']}",
        ]
        flag = small * 2.1
        tall = pad + pen.text(x + pad * 2 + flag, y + pad, w - flag - 3 * pad, title, pen.family.bold, small)
        tall = max(tall, pad + flag * 0.75)
        for line in lines:
            tall += pen.text(x + pad, y + tall, w - 2 * pad, line, pen.family.regular, small)
        pen.say(fact)
        if not pen.dry:
            pen.draw.rectangle((x, y, x + w, y + tall + pad), outline=pen.ink, width=2)
            _flag(pen, x + pad, y + pad, flag)
        return tall + pad

    return Block(show, rank)


def _flag(pen: Pen, x: float, y: float, wide: float) -> None:
    tall = wide * 2 / 3
    pen.draw.rectangle((x, y, x + wide, y + tall), fill=(10, 50, 140))
    for star in range(12):
        a = star * math.pi / 6
        cx, cy, r = x + wide / 2 + math.cos(a) * tall / 3, y + tall / 2 + math.sin(a) * tall / 3, tall * 0.055
        pen.draw.ellipse((cx - r, cy - r, cx + r, cy + r), fill=(250, 210, 0))


def footer(facts: Sequence[Fact], rank: int, align: str) -> Block:
    """Supplier, patents and pot, one under another or in one line with dots between."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        small = max(size * 0.78, 28)
        tall = 0.0
        for fact in facts:
            pen.say(fact)
            text = (
                fact.text if fact.field != "container" or len(fact.text) > 3 else f"{fact.label}: {fact.text}"
            )
            tall += pen.text(x, y + tall, w, text, pen.family.regular, small, align=align)
        return tall

    return Block(show, rank, 0.6)


def sticker(fact: Fact, rank: int) -> Block:
    """A price on a label of its own colour."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        big = size * 1.5
        wide = pen.width(fact.text, pen.family.bold, big)
        pen.say(fact)
        if not pen.dry:
            pen.draw.rounded_rectangle(
                (x, y, x + wide + size, y + big * 1.5), size * 0.2, fill=(255, 238, 120)
            )
        pen.line(x + size * 0.5, y + big * 0.15, fact.text, pen.family.bold, big, (20, 20, 20))
        return big * 1.5

    return Block(show, rank)
