"""Backs of tags. To add one: write `back_x(sheet, content)` and put it in BACKS."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import cos, pi, sin

import art
from art import mix
from content import SHOP, Content
from parts import (
    BLACK,
    entries_of,
    foot,
    inset,
    name_items,
    size_line,
    small,
)
from PIL import ImageDraw
from sheet import Box, Item, Sheet, Show, item
from wording import Said


def _back(
    sheet: Sheet, content: Content, entries: list[Item], size: float = 62, smallest: float = 30
) -> None:
    box = inset(sheet)
    sheet.column(name_items(content) + entries + foot(content, sheet.rng), box, size, smallest)


def back_phrases(sheet: Sheet, content: Content) -> None:
    """Phrases without labels, some of them two facts to a line."""
    sizes = size_line(content, sheet.rng) if sheet.rng.random() < 0.7 else None
    skip = ("height", "spread") if sizes else ()
    show: Show = sheet.rng.choice(["phrase", "phrase", "bullet"])
    entries = entries_of(content, show, sheet.rng, skip)
    if sizes:
        entries.insert(min(2, len(entries)), replace(sizes, show=show))
    _back(sheet, content, entries + small(content.small_print[:2]))


def back_lines(sheet: Sheet, content: Content) -> None:
    """Bold label, colon, words."""
    _back(sheet, content, entries_of(content, "line", sheet.rng) + small(content.small_print[:2]))


def back_table(sheet: Sheet, content: Content) -> None:
    _back(sheet, content, entries_of(content, "table", sheet.rng))


def back_dots(sheet: Sheet, content: Content) -> None:
    """Leader dots between label and value; long words go without."""
    entries = [
        replace(e, show="dots" if len(e.text) + len(e.label) < 30 else "phrase")
        for e in entries_of(content, "dots", sheet.rng)
    ]
    _back(sheet, content, entries)


def back_stacked(sheet: Sheet, content: Content) -> None:
    """Label above value, in two columns where the tag is wide enough."""
    sheet.style = replace(sheet.style, align="left")
    left, top, right, bottom = inset(sheet)
    y = sheet.column(name_items(content), (left, top, right, top + (bottom - top) * 0.3), 66, 34)
    entries = entries_of(content, "stack", sheet.rng)
    last = foot(content, sheet.rng)
    if sheet.width < 800:
        sheet.column(entries + last, (left, y + 20, right, bottom), 56, 30)
        return
    middle, half = (left + right) / 2, (len(entries) + 1) // 2
    sheet.column(entries[:half], (left, y + 20, middle - 25, bottom), 56, 30)
    sheet.column(entries[half:] + last, (middle + 25, y + 20, right, bottom), 56, 30)


def back_icons(sheet: Sheet, content: Content) -> None:
    """Pictograms beside the words."""
    sheet.style = replace(sheet.style, align="left")
    entries = [
        replace(e, label=e.label if sheet.rng.random() < 0.75 or e.icon in ("tall", "wide", "apart") else "")
        for e in entries_of(content, "icon", sheet.rng)
    ]
    _back(sheet, content, entries)


def back_two_columns(sheet: Sheet, content: Content) -> None:
    """Facts in one column, planting words in the other."""
    sheet.style = replace(sheet.style, align="left")
    left, top, right, bottom = inset(sheet)
    y = sheet.column(name_items(content), (left, top, right, top + (bottom - top) * 0.32), 70, 34)
    middle = left + (right - left) * 0.52
    sheet.pen.line([(middle, y + 20), (middle, bottom)], fill=sheet.style.accent, width=3)
    long = [f for f in content.facts if len(f.text) > 24]
    short = [f for f in content.facts if f not in long]
    sheet.column([item(f, "line") for f in short], (left, y + 20, middle - 25, bottom), 54, 28)
    care = [item(f, "line") for f in long] + small(content.small_print) + foot(content, sheet.rng)
    sheet.column(
        [Item(sheet.rng.choice(["How to plant", "Planting & care", "Care"]), "heading"), *care],
        (middle + 25, y + 20, right, bottom),
        54,
        28,
    )


def back_bilingual(sheet: Sheet, content: Content) -> None:
    """Two languages side by side; the second repeats the first."""
    sheet.style = replace(sheet.style, align="left")
    languages = content.supplier.languages
    second = languages[1] if len(languages) > 1 else sheet.rng.choice(["fr", "es"])
    left, top, right, bottom = inset(sheet)
    middle = (left + right) / 2
    y = top
    if content.botanical:
        y = sheet.line(
            content.botanical.text,
            (left, top, right, top + 100),
            art.FAMILIES[sheet.style.family][2],
            sheet.style.ink,
            62,
            content.botanical.says,
            "left",
        )
    english = content.subtitle or content.title
    foreign = content.french if second == "fr" else content.spanish
    both = [f for f in content.facts if second in f.other]
    only = [f for f in content.facts if f.field in ("warnings", "native_claim", "days_to_maturity")]
    first_items = [Item(english.text, "title", says=english.says, scale=1.2, keep=True)] + [
        item(f, "line") for f in both
    ]
    second_items = [Item(foreign.text, "title", says=foreign.says, scale=1.2, keep=True)] + [
        item(f, "line", second) for f in both
    ]
    room = (bottom - y) * 0.76
    ends = [
        sheet.column(first_items, (left, y + 20, middle - 25, y + room), 64, 26),
        sheet.column(second_items, (middle + 25, y + 20, right, y + room), 64, 26),
    ]
    sheet.pen.line([(middle, y + 20), (middle, max(ends))], fill=sheet.style.accent, width=3)
    sheet.column(
        [item(f, "phrase") for f in only] + foot(content, sheet.rng),
        (left, max(ends) + 15, right, bottom),
        44,
        26,
    )


def back_dense(sheet: Sheet, content: Content) -> None:
    """Everything run together in small print."""
    left, top, right, bottom = inset(sheet)
    y = sheet.column(name_items(content, 1.4), (left, top, right, top + (bottom - top) * 0.3), 56, 30)
    phrases = [item(fact, "phrase") for fact in content.facts]
    lines = small(content.small_print)
    texts, says = [], []
    for entry in [*phrases, *lines]:
        texts.append(entry.text.rstrip(".") + ".")
        says.extend(entry.says)
    half = len(texts) // 2
    joined = [Item(" ".join(part), "small", keep=True) for part in (texts[:half], texts[half:])]
    if joined[0].text:
        joined[0] = replace(joined[0], says=tuple(says))
    last = foot(content, sheet.rng)
    sheet.column(joined + last, (left, y + 10, right, bottom), sheet.rng.choice([38, 46, 58]), 20)


def back_passport(sheet: Sheet, content: Content) -> None:
    """A European label: metric facts above, the plant passport block below."""
    left, top, right, bottom = inset(sheet)
    split = top + (bottom - top) * 0.58
    facts = [item(f, "line") for f in content.facts]
    y = sheet.column(name_items(content, 1.3), (left, top, right, split), 60, 32)
    if sheet.width < 1300:
        sheet.column(facts + foot(content, sheet.rng), (left, y + 10, right, split), 56, 28)
    else:
        middle, half = (left + right) / 2, (len(facts) + 1) // 2
        sheet.column(facts[:half], (left, y + 10, middle - 20, split), 56, 30)
        sheet.column(facts[half:] + foot(content, sheet.rng), (middle + 20, y + 10, right, split), 56, 30)
    british = content.supplier.country == "GB"
    heading = (
        "UK Plant Passport"
        if british
        else sheet.rng.choice(
            ["Plantenpaspoort / Plant Passport", "Pflanzenpass / Plant Passport", "Plant Passport"]
        )
    )
    name, operator, trace, origin = content.passport
    shown = operator.split("-")[1] if british else operator
    value = {
        "botanical_name": name,
        "operator": shown,
        "traceability": trace,
        "origin": origin,
        "protected_zone": None,
    }
    rows = [f"A {name}", f"B {shown}", f"C {trace}", f"D {origin}"]
    sheet.pen.rectangle((left, split + 20, right, bottom), outline=sheet.style.ink, width=3)
    indent = left + 25
    if not british:
        _flag(sheet.pen, indent, split + 40, 110)
    sheet.line(
        heading,
        (indent + 140, split + 35, right - 20, split + 100),
        art.FAMILIES[sheet.style.family][1],
        sheet.style.ink,
        46,
    )
    said = Said("plant_passport", value, "\n".join(rows))
    mark = sheet.rng.choice(["{0} {1}", "{0}. {1}", "{0}: {1}"])
    items = [Item(mark.format(row[0], row[2:]), "phrase", keep=True) for row in rows]
    sheet.column(items, (indent, split + 125, right - 20, bottom - 15), 46, 24)
    sheet.said.append(said)


def _flag(pen: ImageDraw.ImageDraw, x: float, y: float, width: float) -> None:
    """The flag of the Union as the passport asks for: a blue field with a ring of gold spots."""
    pen.rectangle((x, y, x + width, y + width * 0.66), fill=(0, 51, 153))
    for k in range(12):
        cx, cy = (
            x + width / 2 + width * 0.22 * cos(k * pi / 6),
            y + width * 0.33 + width * 0.22 * sin(k * pi / 6),
        )
        pen.ellipse((cx - 4, cy - 4, cx + 4, cy + 4), fill=(255, 204, 0))


def back_sticker(sheet: Sheet, content: Content) -> None:
    """A few facts and the shop's sticker: price, barcode, digits."""
    left, top, right, bottom = inset(sheet)
    split = top + (bottom - top) * 0.56
    entries = entries_of(content, "line", sheet.rng)[:7]
    sheet.column(name_items(content, 1.4) + entries, (left, top, right, split), 58, 28)
    _sticker(sheet, content, (left, split + 20, right, bottom))


def _sticker(sheet: Sheet, content: Content, box: Box) -> None:
    left, top, right, bottom = box
    paper = sheet.rng.choice([(255, 255, 255), (255, 244, 170), (255, 255, 255), (250, 214, 200)])
    sheet.pen.rounded_rectangle(box, 20, fill=paper, outline=mix(paper, (0, 0, 0), 0.25), width=2)
    bold, room = art.FAMILIES["condensed"][1], bottom - top
    y = sheet.line(
        SHOP,
        (left + 20, top + 12, right - 20, top + room * 0.16),
        art.FAMILIES["condensed"][0],
        BLACK,
        46,
        (Said("supplier", SHOP, SHOP),),  # no other firm signs these tags
    )
    y = sheet.line(
        content.price.text,
        (left + 20, y, right - 20, y + room * 0.26),
        bold,
        BLACK,
        120,
        (content.price.said(),),
    )
    size = content.container
    if sheet.rng.random() < 0.5:
        y = sheet.line(
            size.text,
            (left + 20, y, right - 20, y + room * 0.12),
            art.FAMILIES["condensed"][0],
            BLACK,
            46,
            (size.said(),),
        )
    module = int(min((right - left) * 0.86 / 95, 7))
    if module < 3:
        return
    x = left + (right - left - module * 95) / 2
    _bars(sheet.pen, content.gtin, x, y + 12, module, bottom - 62)
    spaced = content.gtin if sheet.rng.random() < 0.3 else _grouped(content.gtin)
    sheet.line(
        spaced,
        (left + 20, bottom - 58, right - 20, bottom - 4),
        art.FAMILIES["liberation"][0],
        BLACK,
        44,
        (Said("gtin", content.gtin, spaced),),
    )


def _grouped(digits: str) -> str:
    if len(digits) == 12:
        return f"{digits[0]} {digits[1:6]} {digits[6:11]} {digits[11]}"
    return f"{digits[0]} {digits[1:7]} {digits[7:]}"


_ODD = [
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
]
_PARITY = ["LLLLLL", "LLGLGG", "LLGGLG", "LLGGGL", "LGLLGG", "LGGLLG", "LGGGLL", "LGLGLG", "LGLGGL", "LGGLGL"]


def bars(digits: str) -> str:
    """EAN-13 (or UPC-A) as 95 modules, "1" black. Patterns of ISO/IEC 15420, from memory."""
    full = digits.rjust(13, "0")
    invert = str.maketrans("01", "10")
    left = "".join(
        _ODD[int(d)] if p == "L" else _ODD[int(d)].translate(invert)[::-1]
        for d, p in zip(full[1:7], _PARITY[int(full[0])], strict=True)
    )
    right = "".join(_ODD[int(d)].translate(invert) for d in full[7:])
    return f"101{left}01010{right}101"


def _bars(pen: ImageDraw.ImageDraw, digits: str, x: float, top: float, module: int, bottom: float) -> None:
    for at, black in enumerate(bars(digits)):
        if black == "1":
            pen.rectangle((x + at * module, top, x + (at + 1) * module - 1, bottom), fill=BLACK)


BACKS: dict[str, Callable[[Sheet, Content], None]] = {
    "phrases": back_phrases,
    "lines": back_lines,
    "table": back_table,
    "dots": back_dots,
    "stacked": back_stacked,
    "icons": back_icons,
    "two_columns": back_two_columns,
    "bilingual": back_bilingual,
    "dense": back_dense,
    "passport": back_passport,
    "sticker": back_sticker,
}
