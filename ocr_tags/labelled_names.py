"""Common names behind a label: "Common name: …", "also called …", one or a list of them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags import lexicon, titles
from ocr_tags.known_names import known_name
from ocr_tags.name_side import Side
from ocr_tags.naming import LABEL
from ocr_tags.record import Found
from ocr_tags.titles import Piece

_COMMON_LABEL = re.compile(
    r"\b(?:common\s+names?|plant\s+name|also\s+(?:known\s+as|called|sold\s+as)|a\.?k\.?a\.?|nom\s+commun|nombre\s+com[uú]n"
    r"|deutscher\s+name|commonly\s+(?:known\s+as|called))(?:\s*[:–-]\s*|\s+|$)",
    re.I,
)
_LISTED = re.compile(r"\s*(?:,|;|/|\bor\b|\band\b|\baka\b|&)\s*")


def read_labelled(string: str, side: Side) -> None:
    """Add to the side the names that a label announces."""
    for number, line in enumerate(side.lines):
        for label in _COMMON_LABEL.finditer(line.text):
            start, end = line.start + label.end(), line.end
            if not string[start:end].strip(" :") and number + 1 < len(side.lines):
                start, end = side.lines[number + 1].start, side.lines[number + 1].end
            stop = re.search(r"[.;)(]|\s-\s|" + LABEL.pattern, string[start:end], re.I)
            end = start + stop.start() if stop else end
            named = list(_listed(string, start, end))
            if named and stop is None and (joined := _joined(string, named[-1], end)):
                named[-1], end = joined, joined.end
            for piece in named:
                found = known_name(piece, 0.95)
                vague = titles.is_noise(piece.text) or titles.is_qualifier(piece.text.split())
                if found is None and not vague:
                    found = Found(titles.as_written(piece.text), (piece.start, piece.end), 0.8)
                if found:
                    side.common.append(found)
                    side.labelled.add(found.span)
            side.taken.append((line.start + label.start(), end))


def _joined(string: str, piece: Piece, end: int) -> Piece | None:
    """A labelled name that the next line ends, when only the whole is known: Garden / Strawberry."""
    if string[end : end + 1] != "\n" or string[end : end + 2] == "\n\n":
        return None
    rest = re.split(r"[\n\t.,;]", string[end + 1 :])[0].rstrip()
    whole = Piece(piece.start, end + 1 + len(rest), f"{piece.text} {rest}")
    return whole if rest and lexicon.is_trade_name(whole.text) else None


def _listed(string: str, start: int, end: int) -> Iterator[Piece]:
    """The names of a list; a known name with "and" in it stays whole: hens and chicks."""
    held: Piece | None = None
    for piece in _words_between(string, start, end):
        whole = held and Piece(held.start, piece.end, string[held.start : piece.end])
        if whole and lexicon.is_common_name(whole.text):
            held = whole
            continue
        if held:
            yield held
        held = piece
    if held:
        yield held


def _words_between(string: str, start: int, end: int) -> Iterator[Piece]:
    position = start
    for part in _LISTED.split(string[start:end]):
        words = part.strip(" .,:'’‘\"“”")
        if len(words) > 2:
            at = string.index(words, position)
            position = at + len(words)
            yield Piece(at, position, words)
