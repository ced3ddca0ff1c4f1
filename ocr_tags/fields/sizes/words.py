"""The labels in a text that say what a printed length measures."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ocr_tags.fields.sizes.called import CLEAN, NAMES, WORN
from ocr_tags.fields.sizes.clauses import OPENS_CELL, OPENS_FACT, SET_OUT
from ocr_tags.fields.sizes.parts import BARE, BLOOM
from ocr_tags.patterns import later

_BARE_WORDS = frozenset(["tall", "wide", "apart", "across"])
_BARE_LEAVES = later(
    r"(?:foliage|leaves|lvs\.?|blades|cushion|(?:leaf|foliage|leafy)\s(?:mound|clump|tuft))(?:\s(?:reach"
    r"|to|about))?",
    re.I,
)
_FIRST_BARE = later(r"(?:^|(?<=[\n\t]))(?:tall|wide|apart|across)\b", re.I)
_LENGTH_ENDS = later(r"(?:\d ?(?:in|inch(?:es)?|ft|feet|foot|cm|m)\.?|[\"”″'′])\s*$", re.I)
"""A length before the first of the bare words: on this tag they stand behind theirs."""
_LETTER = later(r"(?:[HWSBL]|sp)\.?", re.I)
_JOIN = later(
    r"(?: (?:at maturity|when mature))? ?(?:[/&x×+,|·•]|\b(?:and|by|et|y|und|en)\b) ?"
    r"(?:(?:mature|eventual|ultimate|expected|adult|final|full|plant|approx\.?) )?",
    re.I,
)
_NOT_IN_A_WORD = (
    r"(?:(?<![^\W_])|(?<=\d)(?=[hw])|(?<=[nm])(?=[hw]\b)|(?<=ft)(?=[hw]\b)"
    r"|(?<=H[x×])(?=[WBSL]\b)|(?<=\d[\"”″])(?=[hw]\b))"
)

_BESIDE_H = later(
    r"(?:^|\n)H[\t:][^\n\t]{1,20}\n$"
    r"|\bH(?:[ .]{0,2}[x×/&][ ]?|[ .:=]{0,3}\d[^\n\t]{0,34}[\s,;/x×])$|\dH[ ,;/x×]{1,3}$"
)
"""B, L and S are Breite, largeur and spread beside an H, and anything at all without one."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a following (or preceding) length measures; two kinds for "Height/Spread"."""

    kinds: tuple[str, ...]
    start: int
    end: int
    certainty: float

    @property
    def weak(self) -> bool:
        """A verb, or "size": a length follows, but a word after the length may still say which."""
        return self.kinds[0] in {"grows", "trails", "size"}


def _labels(forms: dict[str, str]) -> re.Pattern[str]:
    joined = "|".join(f"(?P<{kind}>{names})" for kind, names in NAMES.items())
    for mark, form in {**forms, "{bare}": BARE, "{set_out}": SET_OUT}.items():
        joined = joined.replace(mark, form)
    return later(
        rf"{_NOT_IN_A_WORD}(?:{joined})(?![^\W\d_])|(?<![^\W_])(?P<letter>(?-i:H))(?=[x×][WBSL]\b)", re.I
    )


_LABEL, _CLEAN_LABEL = _labels(WORN), _labels(CLEAN)


def find_labels(text: str) -> Iterator[Label]:
    """Every label, in order; labels joined by a stroke, an ampersand or "and" are one."""
    held: Label | None = None
    for match in _LABEL.finditer(text):
        beside_h = _BESIDE_H.search(text, max(0, match.start() - 42), match.start())
        if match[0].rstrip(".") in "SBL" and not beside_h:
            continue
        if _BARE_LEAVES.fullmatch(match[0]) and not FLOWER_TOO.search(text):
            continue  # as likely how long a leaf is
        if match[0].casefold() in _BARE_WORDS and not _heads_cell(text, match):
            continue
        label = _label(text, match)
        if held and _joined(text, held, label):
            kinds = (*held.kinds, *(kind for kind in label.kinds if kind not in held.kinds))
            held = Label(kinds, held.start, label.end, min(held.certainty, label.certainty))
            continue
        if held:
            yield held
        held = label
    if held:
        yield held


_TOLD_BESIDE = later(r"\t(?:up )?(?:to )?\d")
_LED = later(r"\s?:|(?: ?[.·…_]){3,} ?\d")


def _heads_cell(text: str, match: re.Match[str]) -> bool:
    """Whether "TALL" or "Apart" is the label of what follows, and not the last word of what is before it."""
    heads_row = match.start() == 0 or text[match.start() - 1] == "\n"
    if _LED.match(text, match.end()) or (heads_row and _TOLD_BESIDE.match(text, match.end())):
        return True
    begin = max(0, match.start() - 40)
    opens = OPENS_CELL.search(text, begin, match.start()) or OPENS_FACT.search(text, begin, match.start())
    first = _FIRST_BARE.search(text)
    return bool(opens and first) and not _LENGTH_ENDS.search(text, 0, first.start() if first else 0)


FLOWER_TOO = later(
    rf"\b(?:(?:{BLOOM}|fl(?:w?r)?\.?|blm\.?) (?:height|ht)\b|height in (?:bloom|flower)"
    r"|(?:flower|bloom)(?:ing)? (?:stalk|stem|spike|spire|scape|plume)s?\b"
    r"|\bplumes (?:up )?to \d|\b(?:in|with) (?:bloom|flowers?|plumes?)(?= ?[:\t.·…]| \d)|\bstems \d"
    r"|(?:scapes|spires) (?:(?:up )?to|of|reach|rise|stand) )",
    re.I,
)


_SP = later(r"sp\.?", re.I)
_WIDTH_TOLD = later(
    r"(?<![^\W\d_])(?-i:W|WD|Wd|Spr|SPR|WIDTH|Width|SPREAD|Spread|WIDE|Wide)\.?[ :=.\t\n]{1,3}\d"
    r"|\d ?(?:[\"”″'′]|in\.?|ft\.?|cm) ?(?:(?-i:W|WD|Wd|wd)\b|wide\b|spread\b)",
    re.I,
)
"""Where the width has a label of its own, "SP" is how far apart (common practice, no source)."""
_LONE_H = later(r"(?:(?<=\n)|^)H ?\d[^\n\t:x×,]*(?=\n|$)")
_WIDTH_TOO = later(
    r"(?<![^\W\d_])(?-i:[WSBL]|Sp)(?![^\W\d_])|\bsp(?:r|read)|\bwid(?:th|e)\b|[ée]tal|larg|breit|↔", re.I
)


def _label(text: str, match: re.Match[str]) -> Label:
    kind = match.lastgroup or ""
    if _SP.fullmatch(match[0]) and _WIDTH_TOLD.search(text):
        kind = "spacing"
    certainty = 1.0 if _CLEAN_LABEL.match(text, match.start()) else 0.8
    if _LETTER.fullmatch(match[0]):
        certainty *= 0.9 if match[0][0] in "HWSBL" else 0.7
        if _LONE_H.match(text, match.start()) and not _WIDTH_TOO.search(text):
            certainty *= 0.5  # what readers make of a drawn arrow, whichever way it points
    if kind == "foliage":
        # Beside the height in flower the height without is the plant's own.
        kind, certainty = "height", certainty * (0.9 if FLOWER_TOO.search(text) else 0.5)
    return Label(("height" if kind == "letter" else kind,), match.start(), match.end(), certainty)


def _joined(text: str, one: Label, other: Label) -> bool:
    sizes = one.kinds == other.kinds == ("size",)
    return (sizes or not (one.weak or other.weak)) and bool(_JOIN.fullmatch(text, one.end, other.start))
