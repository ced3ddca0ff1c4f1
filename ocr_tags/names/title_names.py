"""Common names that titles hold: a known one, one turned round, one with a cultivar or a kind beside it."""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.broken_names import MARK
from ocr_tags.names.cultivars import lone_cultivar
from ocr_tags.names.epithets import SMALL, plausible_epithet
from ocr_tags.names.firms import is_maker
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.known_names import agrees, ending_of, known_name, names_in, spelt
from ocr_tags.names.side import KNOWN, Side
from ocr_tags.names.titles import Line, Piece
from ocr_tags.record import Found

AGREED = 0.95
"""How sure a known name is that goes with the botanical name on its side, in letters of any size."""
OWN_SORT = 0.88
"""How sure a kind is behind the very cultivar that the botanical name has, be it words of any sense."""
OTHERS = 0.6
"""How sure a name of one word is that other plants have than the one named in Latin beside it."""


def read_titles(string: str, side: Side) -> None:
    shown = [line for line in side.lines if line.title and not is_maker(line.text)]
    largest = max((line.size for line in shown), default=1.0)
    for number, line in enumerate(shown):
        marked = [p.text for p in titles.pieces(line, side.taken) if MARK.match(string, p.end)]
        side.marked.extend(_with_line_above(string, shown[:number], line, text) for text in marked)
        quoted = lone_cultivar(string, line)
        pieces = titles.pieces(line, side.taken + ([quoted[1]] if quoted else []))
        for piece in [name for one in pieces for name in names_in(one, side.genera)]:
            if piece.text not in marked:
                main = line.size >= 0.8 * largest if not line.flat else number == 0
                _read_title(piece, line, side, main or side.is_in_block(line))


def _with_line_above(string: str, above: list[Line], line: Line, marked: str) -> str:
    """A marked name with its beginning, an unknown title of one size right above: Sorrel / Copper®."""
    before = above[-1] if above else None
    if before is None or string[before.end : line.start] != "\n" or not line.text.strip().startswith(marked):
        return marked
    words = Piece(before.start, before.end, before.text.strip())
    alike = 0.77 < before.size / line.size < 1.3 and titles.looks_like_name(words.text)
    return f"{words.text} {marked}" if alike and not known_name(words, 1) else marked


def _read_title(piece: Piece, line: Line, side: Side, main: bool) -> None:
    shade = 0.88 if line.flat else 1.0
    found = _inverted(piece, 0.95 * shade) or known_name(piece, 0.95 * shade)
    label = side.answers_in(piece) or line.text[piece.end - line.start :].lstrip().startswith(":")
    if found and label and lexicon.key(found.value) != lexicon.key(piece.text):
        found = None  # a label or another field's value is no damaged name: "In flower:" is no fan flower
    if found:
        if any(agrees(found.value, genus) for genus in side.genera):
            found = replace(found, certainty=max(found.certainty, AGREED))
        single = " " not in found.value
        if single and side.genera and not any(agrees(found.value, genus) for genus in side.genera):
            found = replace(found, certainty=min(found.certainty, OTHERS))  # Apricot, of a petunia
        alone = single and lexicon.key(found.value) in lexicon.words_of("doubtful")
        if not alone or any(agrees(found.value, genus) for genus in side.genera):
            side.common.append(found)
        elif main:
            side.common.append(replace(found, certainty=0.7 * shade))
        return
    words = piece.text.split()
    if piece.start > line.start and line.text[piece.start - line.start - 1] in "'‘“\"`´„":
        return  # a cultivar whose closing quote was lost
    parted = _parted(piece, words, line, side) if len(words) > 1 and words[0][0].isupper() else None
    parted = parted or _vouched(piece, shade, side)
    if parted:
        side.common.append(parted)
    elif titles.looks_like_name(piece.text) and not side.answers_in(piece):
        head = titles.has_head(piece.text) or titles.is_foreign(piece.text)
        certainty = (0.75 if genera_called(piece.text) else 0.62 if head else 0.55) * shade
        if main:
            side.unknown.append(Found(titles.as_written(piece.text), (piece.start, piece.end), certainty))
        before = line.text[: piece.start - line.start].rstrip()
        if (
            not head
            and not (before.endswith("(") and titles.is_foreign(before))  # Viorne trilobée (Pimbina)
            and not titles.is_qualifier(words)
            and all(word[0].isupper() or SMALL.fullmatch(word) for word in words)
        ):
            side.loose.append((piece.text, 0.65 if main else 0.6, line))


def _inverted(piece: Piece, certainty: float) -> Found[str] | None:
    """A known name turned round at a comma, as in a list: Maple, Japanese; FERN, OSTRICH."""
    last, comma, first = piece.text.partition(", ")
    if not comma or not first:
        return None
    if not lexicon.is_common_name(f"{first} {last}"):
        certainty *= 0.85
        if not lexicon.is_trade_name(last) or not titles.is_qualifier(first.split()):
            return None
    return Found(titles.as_written(piece.text), (piece.start, piece.end), certainty)


def _vouched(piece: Piece, shade: float, side: Side) -> Found[str] | None:
    """A title that a list has as a name of the plant that the side names in Latin, or one much like it."""
    if lexicon.is_common_name(piece.text) and any(agrees(piece.text, genus) for genus in side.genera):
        return Found(titles.as_written(piece.text), (piece.start, piece.end), AGREED)  # Kowhai
    if genera_called(piece.text):
        return None
    for mention in side.mentions:
        near = repair.nearest_name_of(f"{mention.name.genus} {mention.name.species}", piece.text)
        if near and mention.name.species:
            # With accents it is another language's name, like the English one: Sansevière.
            name = spelt(near.name, piece.text) if piece.text.isascii() else titles.as_written(piece.text)
            return Found(name, (piece.start, piece.end), 0.85 * shade)
    return None


def _is_many(name: str) -> bool:
    """Whether it is the plural of a known name: Pansies, Zinnias, and no name in -s: Clematis."""
    name = name.lower()
    one = re.sub("ies$", "y", name) if name.endswith("ies") else name.removesuffix("s")
    return one != name and not lexicon.is_genus(name) and lexicon.is_trade_name(one)


def _parted(piece: Piece, words: list[str], line: Line, side: Side) -> Found[str] | None:
    """A title that holds a known name and more words: a kind of it, or it and a cultivar."""
    shade = 0.88 if line.flat else 1.0
    count, ending = ending_of(words, side.genera)
    span = (piece.start, piece.end)
    if count:
        before = words[:-count]
        printed = lexicon.key(ending) == lexicon.key(" ".join(words[-count:]))
        if ending.islower() and " " not in ending and not lexicon.is_trade_name(ending):
            return None  # "Patio citrus" tells the kind by its genus
        whole = titles.as_written(piece.text if printed else " ".join([*before, ending]))
        agreed = any(agrees(ending, genus) for genus in side.genera)
        shown = agreed and line.size >= titles.TITLE_SIZE  # in small print a shrub rose is a category
        if titles.is_qualifier([word for word in before if not (shown and word.lower() == "shrub")]):
            return Found(whole, span, (0.88 if agreed else 0.8) * shade)
        told = bool(side.genera) or any(
            c.certainty >= KNOWN and c.span[1] <= piece.start for c in side.common
        )
        vague = lexicon.key(ending) in lexicon.words_of("doubtful") and told and not agreed
        sorts = {lexicon.key(m.name.cultivar) for m in side.mentions if m.name.cultivar}
        if agreed and lexicon.key(" ".join(before)) in sorts:
            return Found(whole, span, OWN_SORT)
        if vague or titles.is_noise(" ".join(before)):
            return None
        marked = MARK.search(line.text[: piece.start - line.start])  # Frostwick™ Apricot Punch Petunia
        apart = " ".join(before).isupper() != " ".join(words[-count:]).isupper()
        many = len(words[-1]) > 4 and _is_many(ending)  # Marlbrook Pansies, of the series Marlbrook
        firm = line.flat or ending.lower() == "roses" or not side.is_largest(line)
        if many and not marked and firm:
            return None  # a range or a firm: Marlbrook Hebes
        if marked or apart or many:
            if not marked and not many and " ".join(before).isupper():
                side.loose.append((" ".join(before), 0.75 * shade, line))
            start = piece.end - len(" ".join(words[-count:]))
            return Found(titles.as_written(ending), (start, piece.end), 0.75 * shade)
        return Found(whole, span, (0.8 if agreed else 0.7) * shade)
    first = titles.known_beginning(words)
    rest = " ".join(words[first:])
    if first and all(word.lower() in lexicon.words_of("stock") for word in words[first:]):
        return Found(titles.as_written(piece.text), span, 0.8 * shade)
    shouted = first and " ".join(words[:first]).isupper() and not rest.isupper() and words[first][0].isupper()
    if shouted and len(words) <= first + 3:  # PANSY Brightmoor Mixed
        if titles.looks_like_name(rest):
            side.loose.append((rest, 0.6 * shade, line))
        begun = " ".join(words[:first])
        return Found(titles.as_written(begun), (piece.start, piece.start + len(begun)), 0.88 * shade)
    if not first or titles.is_noise(rest) or not plausible_epithet(rest) or not words[first][0].isupper():
        return None
    begun = " ".join(words[:first]).rstrip(",")
    agreed = any(agrees(begun, genus) for genus in side.genera)
    if (titles.has_head(rest) and not agreed) or titles.is_qualifier(words[first:]):
        return None  # Carrot Bush is no carrot; Strawberry Ozark Beauty is one, beside Fragaria
    if lexicon.key(begun) in lexicon.words_of("doubtful") and not agreed:
        return None  # Apricot Punch, Cherry Bomb
    of_series = lexicon.is_genus(begun) and words[-1].lower() in lexicon.words_of("shade")
    if not of_series:  # Impatiens Harrowby Coral: a series and its colour
        side.loose.append((rest, 0.7 * shade, line))
    return Found(titles.as_written(begun), (piece.start, piece.start + len(begun)), 0.75 * shade)
