"""Common names found in the text of one side of a tag, and what stands beside them.

The title block, a label, or the company of a botanical name make a word a plant's name; the small print
never does, where "rose" is a colour and "Oak" a street.
"""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags import lexicon, repair, titles
from ocr_tags.broken_names import MARK, put_together, read_runs
from ocr_tags.cultivars import labelled_cultivar, lone_cultivar
from ocr_tags.epithets import SMALL, plausible_epithet
from ocr_tags.firms import SERIES_AFTER, is_maker, labelled_firms
from ocr_tags.foreign_names import genera_called
from ocr_tags.known_names import agrees, known_name, spelt
from ocr_tags.labelled_names import read_labelled, read_languages, read_strokes
from ocr_tags.name_block import as_titles, find_blocks
from ocr_tags.name_side import KNOWN, Side, headline_of, is_bare
from ocr_tags.naming import find_names, mentions_in
from ocr_tags.record import Found, TagText
from ocr_tags.titles import Line, Piece

_OWNED = re.compile(r"[A-Z]\w+['’][sS] ")
"""How many a common name begins and few else: Widow's, Lady's, Bishop's."""

KIND = 0.8
AGREED = 0.95
"""How sure a known name is that goes with the botanical name on its side, in letters of any size."""
OTHERS = 0.6
"""How sure a name of one word is that other plants have than the one named in Latin beside it."""
BLOCK = 0.75
"""How sure an unknown name is whose place beside a botanical name leaves nothing else for it to be."""


def read_side(tag: TagText, answers: tuple[tuple[int, int], ...] = ()) -> Side:
    """Everything on one side that may be a name; unknown words where other fields find answers may not."""
    mentions = find_names(tag)
    taken = [m.span for m in mentions if not is_bare(m.name)]
    taken += [span for _, span in labelled_firms(tag.string)]
    side = Side(titles.lines_of(tag), mentions, taken, answers)
    side.blocks = list(find_blocks(tag.string, side.lines, mentions, side.answers_in))
    side.lines = as_titles(tag.string, side.lines, side.blocks)
    side.cultivars = any(_is_set_apart(tag.string, line) for line in side.lines)
    read_labelled(tag.string, side)
    read_languages(side)
    _read_beside(side)
    _read_kinds(side)
    _read_before_genus(tag.string, side)
    read_runs(tag, side)
    _read_titles(tag.string, side)
    side.unknown = put_together(tag.string, side.unknown, side.lines)
    _read_blocks(side)
    read_strokes(side)
    _read_foreign(side)
    return side


def _is_set_apart(string: str, line: Line) -> bool:
    """Whether a line shows a cultivar by quotes or a label, or a trade mark on a name."""
    marked = MARK.search(line.text) and not SERIES_AFTER.search(line.text) and not line.text.startswith("©")
    return bool(marked or lone_cultivar(string, line) or labelled_cultivar(string, line))


# ---------------------------------------------------------------- common names: where they stand


def _read_beside(side: Side) -> None:
    """Known names on the line of a botanical name, or on the lines next to one that stands alone.

    The line of its series may stand between.
    """
    for number, line in enumerate(side.lines):
        here = [m for m in mentions_in(side.mentions, line) if not is_bare(m.name) and m.certainty >= 0.7]
        if not here:
            continue
        beside = side.lines[max(number - 1, 0) : number] + side.lines[number + 1 : number + 2]
        if is_maker(" ".join(other.text for other in side.lines[number + 1 : number + 2])):
            beside += side.lines[number + 2 : number + 3]
        near = (line, *beside) if here[0].alone else (line,)
        for other in near:
            if other.title and other is not line and _first_sentence(other) is other:
                continue  # titles are read by themselves
            for piece in titles.pieces(_first_sentence(other), side.taken):
                found = known_name(piece, 0.93) or _kind_of(piece, here[0].name.genus)
                if found and (agrees(found.value, here[0].name.genus) or found.certainty == KIND):
                    side.take(found)


def _first_sentence(line: Line) -> Line:
    """Of a line of small print what stands before its first full stop: "Sweet William. A biennial."."""
    stop = re.search(r"(?<=[a-z]{3})\. (?=[A-Z])", line.text)
    return replace(line, end=line.start + stop.start(), text=line.text[: stop.start()]) if stop else line


def _kind_of(piece: Piece, genus: str | None) -> Found[str] | None:
    """A name of this genus with only describing words before it: Climbing Rose."""
    words = piece.text.split()
    count, ending = titles.known_ending(words)
    if not 0 < count < len(words) or not titles.is_qualifier(words[:-count]) or not agrees(ending, genus):
        return None
    return Found(titles.as_written(piece.text), (piece.start, piece.end), KIND)


def _read_kinds(side: Side) -> None:
    """What kind of plant a selling name is, in small letters right over or under it: Climbing Rose."""
    for number, line in enumerate(side.lines):
        near = [side.lines[n] for n in (number - 1, number + 1) if 0 <= n < len(side.lines)]
        if line.title or is_maker(line.text) or not any(other.title for other in near):
            continue
        found = titles.pieces(line, side.taken)
        if len(found) == 1 and titles.is_line_of_names(found[0], line) and not side.answers_in(found[0]):
            genera = side.genera or set(lexicon.genera_of(titles.known_ending(found[0].text.split())[1]))
            known = known_name(found[0], KIND) if lexicon.is_trade_name(found[0].text) else None
            kinds = (_kind_of(found[0], genus) for genus in sorted(genera))
            if kind := known or next(filter(None, kinds), None):
                side.take(kind)


def _read_before_genus(string: str, side: Side) -> None:
    """A title whose last word the botanical name took with it: Dinnerplate Dahlia / 'Widow Tansley'.

    The genus alone as the title is the common name where the side has no other.
    """
    for mention in side.mentions:
        line = next((one for one in side.lines if one.start < mention.span[0] < one.end), None)
        genus = mention.name.genus
        if head := headline_of(mention, side):
            side.common.append(
                Found(titles.as_written(head.text.strip(" .,|")), (head.start, head.end), KIND)
            )
        if line is None or not line.title or mention.name.species or not genus or not mention.name.cultivar:
            continue
        before, end = string[line.start : mention.span[0]].split(), mention.span[0] + len(genus)
        named = titles.is_qualifier(before) or (
            titles.looks_like_name(" ".join(before)) and not titles.is_noise(" ".join(before))
        )
        if 0 < len(before) < 3 and named and string[mention.span[0] - 1] == " ":
            side.take(Found(titles.as_written(string[line.start : end].strip()), (line.start, end), KIND))


def _read_titles(string: str, side: Side) -> None:
    shown = [line for line in side.lines if line.title and not is_maker(line.text)]
    largest = max((line.size for line in shown), default=1.0)
    for number, line in enumerate(shown):
        marked = [p.text for p in titles.pieces(line, side.taken) if MARK.match(string, p.end)]
        side.marked.extend(_with_line_above(string, shown[:number], line, text) for text in marked)
        quoted = lone_cultivar(string, line)
        for piece in titles.pieces(line, side.taken + ([quoted[1]] if quoted else [])):
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
    found = _inverted(piece, 0.85 * shade) or known_name(piece, 0.95 * shade)
    label = side.answers_in(piece) or line.text[piece.end - line.start :].lstrip().startswith(":")
    if found and label and lexicon.key(found.value) != lexicon.key(piece.text):
        found = None  # a label or another field's value is no damaged name: "In flower:" is no fan flower
    if found:
        if any(agrees(found.value, genus) for genus in side.genera):
            found = replace(found, certainty=max(found.certainty, AGREED))
        single = " " not in found.value
        if single and side.genera and not any(agrees(found.value, genus) for genus in side.genera):
            found = replace(found, certainty=min(found.certainty, OTHERS))  # Apricot, of a petunia
        alone = single and lexicon.key(found.value) in titles.words_of("doubtful")
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
        if (
            not head
            and not titles.is_qualifier(words)
            and all(word[0].isupper() or SMALL.fullmatch(word) for word in words)
        ):
            side.loose.append((piece.text, 0.65 if main else 0.6, line))


def _inverted(piece: Piece, certainty: float) -> Found[str] | None:
    """A known name with its describing words behind a comma, as in a list: Maple, Japanese."""
    before, comma, after = piece.text.partition(", ")
    if not comma or not after or not lexicon.is_trade_name(before) or not titles.is_qualifier(after.split()):
        return None
    return Found(titles.as_written(piece.text), (piece.start, piece.end), certainty)


def _read_blocks(side: Side) -> None:
    """Unknown names that their place beside a botanical name tells."""
    known = any(found.certainty >= KNOWN for found in side.common)
    for block in side.blocks:
        above = {side.lines[number].start for number in block.above}
        lone = [found for found in side.unknown if found.span[0] in above]
        lone = [found for found in lone if not any(found.value in marked for marked in side.marked)]
        cultivar = lexicon.key(block.mention.name.cultivar or "")
        settled = cultivar and len(lone) == 1 and lexicon.key(lone[0].value) not in cultivar
        if not known and len(lone) == 1 and (settled or titles.has_head(lone[0].value)):
            side.common.append(replace(lone[0], certainty=BLOCK))
        if block.below is not None and (known or lone):
            _read_below(side.lines[block.below], side)


def _read_below(line: Line, side: Side) -> None:
    """Another common name right under a botanical name: any plant's, or words that end as names do."""
    found = titles.pieces(line, side.taken)
    if len(found) != 1 or side.answers_in(line):
        return
    piece = found[0]
    if " " in piece.text and (known := known_name(piece, BLOCK)):
        side.take(known)
        side.labelled.add(known.span)
    elif titles.looks_like_name(piece.text) and (titles.has_head(piece.text) or _OWNED.match(piece.text)):
        side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), 0.65))


def _vouched(piece: Piece, shade: float, side: Side) -> Found[str] | None:
    """A damaged title that is fairly like a common name of the plant whose botanical name stands here."""
    if genera_called(piece.text):
        return None
    for mention in side.mentions:
        near = repair.nearest_name_of(f"{mention.name.genus} {mention.name.species}", piece.text)
        if near and mention.name.species:
            return Found(spelt(near.name, piece.text), (piece.start, piece.end), 0.85 * shade)
    return None


def _parted(piece: Piece, words: list[str], line: Line, side: Side) -> Found[str] | None:
    """A title that holds a known name and more words: a kind of it, or it and a cultivar."""
    shade = 0.88 if line.flat else 1.0
    count, ending = titles.known_ending(words)
    span = (piece.start, piece.end)
    if count:
        before = words[:-count]
        printed = lexicon.key(ending) == lexicon.key(" ".join(words[-count:]))
        whole = titles.as_written(piece.text if printed else " ".join([*before, ending]))
        agreed = any(agrees(ending, genus) for genus in side.genera)
        shown = agreed and line.size >= titles.TITLE_SIZE  # in small print a shrub rose is a category
        if titles.is_qualifier([word for word in before if not (shown and word.lower() == "shrub")]):
            return Found(whole, span, (0.88 if agreed else 0.8) * shade)
        vague = lexicon.key(ending) in titles.words_of("doubtful") and bool(side.genera) and not agreed
        if vague or titles.is_noise(" ".join(before)):
            return None
        marked = MARK.search(line.text[: piece.start - line.start])  # Frostwick™ Apricot Punch Petunia
        if marked or (" ".join(before).isupper() and not " ".join(words[-count:]).isupper()):
            if not marked:
                side.loose.append((" ".join(before), 0.75 * shade, line))
            start = piece.end - len(" ".join(words[-count:]))
            return Found(titles.as_written(ending), (start, piece.end), 0.75 * shade)
        return Found(whole, span, (0.8 if agreed else 0.7) * shade)
    first = titles.known_beginning(words)
    rest = " ".join(words[first:])
    if first and all(word.lower() in titles.words_of("stock") for word in words[first:]):
        return Found(titles.as_written(piece.text), span, 0.8 * shade)
    if not first or titles.is_noise(rest) or not plausible_epithet(rest) or not words[first][0].isupper():
        return None
    if titles.has_head(rest) or titles.is_qualifier(words[first:]):  # Carrot Bush is no carrot
        return None
    begun = " ".join(words[:first]).rstrip(",")
    if lexicon.key(begun) in titles.words_of("doubtful") and not any(agrees(begun, g) for g in side.genera):
        return None  # Apricot Punch, Cherry Bomb
    side.loose.append((rest, 0.7 * shade, line))
    return Found(titles.as_written(begun), (piece.start, piece.start + len(begun)), 0.75 * shade)


def _read_foreign(side: Side) -> None:
    """Names in another language of the plant that the side names in Latin or English already."""
    known = {genus for c in side.common if c.certainty >= KNOWN for genus in lexicon.genera_of(c.value)}
    for line in side.lines:
        for piece in titles.pieces(line, side.taken) if not is_maker(line.text) else ():
            genera = genera_called(piece.text) if titles.is_line_of_names(piece, line) else frozenset()
            english = piece.text.isascii() and lexicon.plants_called(piece.text)
            if not genera & (side.genera | known) or english:
                continue
            if not side.answers_in(piece):
                certainty = 0.9 if genera & side.genera else 0.8
                side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), certainty))
