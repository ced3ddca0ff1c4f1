"""Common names found in the text of one side of a tag, and what stands beside them.

The title block, a label, or the company of a botanical name make a word a plant's name; the small print
never does, where "rose" is a colour and "Oak" a street.
"""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.names import lexicon, titles
from ocr_tags.names.block import as_titles, find_blocks
from ocr_tags.names.broken_names import MARK, put_together, read_runs
from ocr_tags.names.cultivars import labelled_cultivar, lone_cultivar
from ocr_tags.names.firms import is_maker, labelled_firms
from ocr_tags.names.foreign_names import genera_called, is_plant_word, is_whole
from ocr_tags.names.known_names import agrees, ending_of, known_name, names_in
from ocr_tags.names.labelled_names import read_labelled, read_languages, read_spoken, read_strokes
from ocr_tags.names.mixtures import without_parts
from ocr_tags.names.naming import find_names, mentions_in
from ocr_tags.names.series_words import SERIES_AFTER
from ocr_tags.names.side import KNOWN, Side, headline_of, is_bare
from ocr_tags.names.title_names import AGREED, OWN_SORT, read_titles
from ocr_tags.names.title_runs import with_wrapped
from ocr_tags.names.titles import Line, Piece
from ocr_tags.record import Found, TagText
from ocr_tags.values import BotanicalName

_OWNED = re.compile(r"[A-Z]\w+['’][sS] ")
"""How many a common name begins and few else: Widow's, Lady's, Bishop's."""

KIND = 0.8
BLOCK = 0.75
"""How sure an unknown name is whose place beside a botanical name leaves nothing else for it to be."""

OWN_LINE = 0.9
"""How sure a trade name is that fills a line, on a side that names the same plant in Latin."""

NEAR = 3
"""At most so many lines from a name or a title other languages name the plant again."""


def read_side(tag: TagText, answers: tuple[tuple[int, int], ...] = ()) -> Side:
    """Everything on one side that may be a name; unknown words where other fields find answers may not."""
    mentions = find_names(tag)
    taken = [m.span for m in mentions if not is_bare(m.name)]
    taken += [span for _, span in labelled_firms(tag.string)]
    side = Side(with_wrapped(tag.string, without_parts(titles.lines_of(tag))), mentions, taken, answers)
    side.blocks = list(find_blocks(tag.string, side.lines, mentions, side.answers_in))
    side.lines = as_titles(tag.string, side.lines, side.blocks)
    side.cultivars = any(_is_set_apart(tag.string, line) for line in side.lines)
    read_labelled(tag.string, side)
    read_spoken(side)
    read_languages(side)
    _read_beside(side)
    _read_kinds(side)
    _read_before_genus(tag.string, side)
    read_runs(tag, side)
    read_titles(tag.string, side)
    side.unknown = put_together(tag.string, side.unknown, side.lines)
    _read_own_lines(tag.string, side)
    _read_blocks(side)
    read_strokes(side)
    _read_foreign(side)
    _read_genus(tag.string, side)
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
            pieces = _pieces(_first_sentence(other), side)
            listed = len(pieces) > 1 and "," in other.text
            if other.title and other is not line and _first_sentence(other) is other and not listed:
                continue  # titles are read by themselves
            for piece in pieces:
                sort = _listed(piece, side.genera) if listed else None
                found = known_name(piece, 0.93) or sort or _kind_of(piece, here[0].name)
                if found and (agrees(found.value, here[0].name.genus) or found.certainty == KIND):
                    side.take(found)


def _pieces(line: Line, side: Side) -> list[Piece]:
    return [name for piece in titles.pieces(line, side.taken) for name in names_in(piece, side.genera)]


def _first_sentence(line: Line) -> Line:
    """Of a line of small print what stands before its first full stop: "Sweet William. A biennial."."""
    stop = re.search(r"(?<=[a-z]{3})\. (?=[A-Z])", line.text)
    return replace(line, end=line.start + stop.start(), text=line.text[: stop.start()]) if stop else line


def _listed(piece: Piece, genera: set[str]) -> Found[str] | None:
    """One of several names listed beside the botanical one, that ends as a name of this plant does."""
    _, ending = ending_of(piece.text.split(), genera)
    own = bool(ending) and any(agrees(ending, genus) for genus in genera)
    return Found(titles.as_written(piece.text), (piece.start, piece.end), KIND) if own else None


def _kind_of(piece: Piece, named: BotanicalName) -> Found[str] | None:
    """A name of this plant with only describing words or its cultivar before it: Climbing Rose."""
    words = piece.text.split()
    count, ending = ending_of(words, {named.genus or ""})
    if not 0 < count < len(words) or not agrees(ending, named.genus):
        return None
    own = lexicon.key(named.cultivar or "") == lexicon.key(" ".join(words[:-count]))
    if not own and not titles.is_qualifier(words[:-count]):
        return None
    return Found(titles.as_written(piece.text), (piece.start, piece.end), KIND)


def _read_kinds(side: Side) -> None:
    """What kind of plant a selling name is, in small letters right over or under it: Climbing Rose."""
    for number, line in enumerate(side.lines):
        near = [side.lines[n] for n in (number - 1, number + 1) if 0 <= n < len(side.lines)]
        if line.title or is_maker(line.text) or not any(other.title for other in near):
            continue
        found = titles.pieces(line, side.taken)
        if len(found) != 1 or not titles.is_line_of_names(found[0], line, ",") or side.answers_in(found[0]):
            continue
        for piece in names_in(found[0], side.genera):
            if "," in piece.text:
                continue
            genera = side.genera or set(lexicon.genera_of(titles.known_ending(piece.text.split())[1]))
            known = known_name(piece, KIND) if lexicon.is_trade_name(piece.text) else None
            kinds = (_kind_of(piece, BotanicalName(genus, genus)) for genus in sorted(genera))
            if kind := known or next(filter(None, kinds), None):
                side.take(kind)


def _read_own_lines(string: str, side: Side) -> None:
    """Where no title is a known name: a line, or two, that is as a whole a trade name of the plant named in
    Latin. What readers make of a picture may look larger than the true title.
    """
    if any(found.certainty >= KNOWN for found in side.common):
        return
    for number, line in enumerate(side.lines):
        above = side.lines[number - 1] if number and string[line.start - 1] == "\n" else None
        joined = above is not None and string[above.end : line.start] == "\n" and not _is_taken(above, side)
        start = above.start if above and joined else line.start  # what stands right above may begin the name
        name = " ".join(string[start : line.end].split()).strip(" .,|")
        own = lexicon.is_trade_name(name) and name[:1].isupper() and any(agrees(name, g) for g in side.genera)
        if own and not side.answers_in(line) and not _is_taken(line, side):
            side.take(Found(titles.as_written(name), (start, line.end), OWN_LINE))


def _is_taken(line: Line, side: Side) -> bool:
    return any(start < line.end and end > line.start for start, end in side.taken)


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


def _read_genus(string: str, side: Side) -> None:
    """The botanical name that is the common one as well, on a side that has no other in English.

    A genus that shops use so, before its cultivar in quotes: CLEMATIS 'SKY LANTERN' (common practice, no
    source). A title that the small print repeats as the botanical name: ALOE VERA, over Aloe vera.
    """
    if any(c.certainty >= KNOWN and not titles.is_foreign(c.value) for c in side.common):
        return
    for mention in side.mentions:
        name = mention.name
        end = mention.span[0] + len(name.genus or "")
        line = next((one for one in side.lines if one.start <= mention.span[0] < one.end), None)
        if line is None or not name.genus or not mention.alone or not line.title:
            continue
        shop = (
            lexicon.is_trade_name(name.genus) and name.genus.lower() == string[mention.span[0] : end].lower()
        )
        if shop and name.cultivar and not name.species and mention.certainty >= KNOWN:
            side.common.append(Found(name.genus, mention.span, BLOCK))
            return
        again = any(m is not mention and m.name.name == name.name and m.alone for m in side.mentions)
        if again and name.species and not name.cultivar and lexicon.is_trade_name(name.name):
            first = titles.pieces(line, [])[0]  # brackets behind it hold an author or another name
            side.common.append(Found(titles.as_written(first.text), (first.start, first.end), KIND))
            return


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
            _read_below(side.lines[block.below], side, block.mention.name.genus)


def _read_below(line: Line, side: Side, genus: str | None) -> None:
    """Another common name right under a botanical name: any plant's, or words that end as names do."""
    found = titles.pieces(line, side.taken)
    if len(found) != 1 or side.answers_in(line):
        return
    piece = found[0]
    if " " in piece.text and (known := known_name(piece, BLOCK)):
        side.take(known)
        side.labelled.add(known.span)
    elif titles.looks_like_name(piece.text) and (titles.has_head(piece.text) or _OWNED.match(piece.text)):
        own = agrees(titles.known_ending(piece.text.split())[1], genus)  # of maples, "Marl-bark Maple"
        side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), 0.88 if own else 0.65))


def _read_foreign(side: Side) -> None:
    """Names in another language of the plant that the side names in Latin or English already.

    Right beside the botanical name any words that end as plant names do in that language are one.
    """
    known = {genus for c in side.common if c.certainty >= KNOWN for genus in lexicon.genera_of(c.value)}
    whole = side.genera | {m.name.genus for m in side.mentions if m.alone and m.name.genus}
    named = [number for number, line in enumerate(side.lines) if line.title or _holds_name(line, side)]
    for number, line in enumerate(side.lines):
        near = any(abs(number - other) <= NEAR for other in named)
        beside = any(_is_alone_in(other, side) for other in side.lines[max(0, number - 1) : number + 3])
        for piece in _pieces(line, side) if near and not is_maker(line.text) else ():
            if not titles.is_line_of_names(piece, line) or side.answers_in(piece):
                continue
            genera = genera_called(piece.text)
            if _is_kind_of_genus(piece.text, side.genera):
                side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), OWN_SORT))
                continue
            if lexicon.plants_called(piece.text) and not (genera and not piece.text.isascii()):
                if " " in piece.text and any(agrees(piece.text, genus) for genus in side.genera):
                    side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), OWN_LINE))
                continue
            if genera & (whole | known):
                own = AGREED if is_whole(piece.text) else 0.9
                certainty = own if genera & whole else 0.8
            elif beside and not genera and _ends_as_plant(piece.text):
                certainty = BLOCK
            else:
                continue
            side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), certainty))


def _is_kind_of_genus(text: str, genera: set[str]) -> bool:
    """Whether it is a describing word and the genus that the side names: Roundleaf Correa, of Correa."""
    *before, last = text.split()
    return bool(before) and last.title() in genera and titles.is_qualifier(before)


def _holds_name(line: Line, side: Side) -> bool:
    spans = [m.span for m in side.mentions] + [c.span for c in side.common if c.certainty >= KNOWN]
    return any(start < line.end and end > line.start for start, end in spans)


def _is_alone_in(line: Line, side: Side) -> bool:
    """Whether a botanical name of more than a genus stands on this line for itself."""
    return any(m.alone and not is_bare(m.name) for m in mentions_in(side.mentions, line))


def _ends_as_plant(text: str) -> bool:
    named = is_plant_word(re.split(r"[\s-]", text)[-1]) or re.search("[āēīōū]", text)
    return titles.looks_like_name(text) and bool(named)
