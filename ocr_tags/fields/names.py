"""Common names, botanical name, series and supplier.

Damaged names are put right only when one known name is clearly nearest; unknown names and new cultivars are
kept as read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from rapidfuzz.distance import OSA

from ocr_tags.fields.answers import find_answers
from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.broken_names import is_perhaps_longer
from ocr_tags.names.common_names import read_side
from ocr_tags.names.cultivars import combine, labelled_cultivar, lone_cultivar, with_cultivar
from ocr_tags.names.epithets import plausible_epithet, tidy_epithet
from ocr_tags.names.known_names import agrees
from ocr_tags.names.naming import Mention
from ocr_tags.names.side import KNOWN, Side, also_named, is_bare, is_headline
from ocr_tags.names.titles import Line
from ocr_tags.record import Found, LineSpan, TagText
from ocr_tags.values import BotanicalName

DOUBTED = 0.45
"""Names less sure than this stay unsaid: several readings of one doubtful name do not make it surer."""

SHORTEST_LOOSE = 5
"""Letters of an unquoted cultivar: what is read out of pictures is shorter mostly."""

ALONE = 0.88
"""How sure a cultivar is that quotes or a label show, apart from its botanical name."""

IN_BLOCK = 0.8
"""How sure unknown words are to be the cultivar that stand with the common name over the botanical one."""

PERHAPS_LONGER = 0.72
"""How sure a known name is below unknown words in the same letters, which may be its beginning."""

PART = 0.5
"""The share of its certainty that the end of a longer name keeps: enough to vouch for that name."""


def read_common_names(tag: TagText) -> Iterator[Found[str]]:
    """Every common name on the side, the main one first.

    >>> [found.value for found in read_common_names(TagText("PURPLE CONEFLOWER\\nEchinacea purpurea"))]
    ['Purple Coneflower']
    >>> list(read_common_names(TagText("Height 12 in. Flowers rose to lilac.")))
    []
    """
    yield from _names(tag.string, tag.lines)[0]


def read_botanical_name(tag: TagText) -> Iterator[Found[BotanicalName]]:
    """The botanical name with the cultivar that belongs to it, wherever on the side that stands.

    >>> [found.value.name for found in read_botanical_name(TagText("'Sky Lantern'\\nSalvia nemorosa"))]
    ["Salvia nemorosa 'Sky Lantern'"]
    """
    yield from _names(tag.string, tag.lines)[1]


_ACCENTED = re.compile("[áéíóúàèâêîôûçñ]")
"""Letters of names in other languages: without quotes more likely a common name, Lus Mór, than a cultivar."""


@lru_cache(maxsize=256)
def _names(
    string: str, spans: tuple[LineSpan, ...]
) -> tuple[tuple[Found[str], ...], tuple[Found[BotanicalName], ...]]:
    tag = TagText(string, lines=spans)
    side = read_side(tag, find_answers(tag))
    botanical = tuple(_botanical(string, side))
    return tuple(_chosen(side, botanical)), botanical


def _chosen(side: Side, botanical: tuple[Found[BotanicalName], ...]) -> list[Found[str]]:
    """One finding a name; those of the botanical plant surer, those it contradicts less sure."""
    cultivars = {lexicon.key(b.value.cultivar) for b in botanical if b.value.cultivar}
    bare = {b.value.name for b in botanical if is_bare(b.value)}
    genera = {b.value.genus for b in botanical}
    best: dict[str, Found[str]] = {}
    known = any(found.certainty >= KNOWN for found in side.common)
    found = side.common if known else [*side.common, *side.unknown]
    for one in sorted(found, key=lambda f: f.span):
        folded, certainty = lexicon.key(one.value), one.certainty
        said_better = one.value in bare or _is_said_better(one, side, genera)
        if folded in cultivars or (said_better and one.span not in side.labelled):
            continue
        if side.genera and lexicon.plants_called(one.value) and one.span not in side.labelled:
            agreed = any(agrees(one.value, genus) for genus in side.genera)
            certainty = min(0.98, certainty + 0.1) if agreed else certainty * 0.6
        if one.span not in side.labelled and not is_headline(one, side) and _is_part(one, found, side):
            certainty *= PART
        if is_perhaps_longer(one, side):
            certainty = min(certainty, PERHAPS_LONGER)
        if certainty < DOUBTED:
            continue
        first = best.setdefault(folded, one)
        best[folded] = replace(
            first, certainty=round(max(certainty, first.certainty if first is not one else 0), 3)
        )
    return sorted(best.values(), key=lambda f: (f.certainty < KNOWN, f.span))


def _is_part(one: Found[str], others: list[Found[str]], side: Side) -> bool:
    """Whether a longer name of the side ends with this one, and no label tells that they are two names.

    It is a line read twice, once in part, or the last line of that name.
    """
    return any(
        other.value.lower().endswith(f" {one.value.lower()}")
        and other.span not in side.labelled
        and (
            (other.certainty >= KNOWN and lexicon.is_common_name(other.value))
            or min(abs(other.span[0] - one.span[1]), abs(one.span[0] - other.span[1])) < 3
        )
        for other in others
    )


def _is_said_better(one: Found[str], side: Side, genera: set[str | None]) -> bool:
    """A genus beside a true common name of its plant, or the category Rose beside a kind of rose."""
    value = one.value
    if lexicon.is_genus(value) and (value in genera or not lexicon.is_trade_name(value)):
        return also_named(side, value) and not is_headline(one, side)
    others = [c.value.lower() for c in side.common if c.certainty >= KNOWN]
    return value.lower() == "rose" and any(other.endswith(" rose") for other in others)


# ---------------------------------------------------------------- the botanical name


def _botanical(string: str, side: Side) -> Iterator[Found[BotanicalName]]:
    main = _main_mention(side)
    if main is None:
        yield from _cultivar_alone(string, side)
        return
    name, certainty = main.name, main.certainty
    for other in side.mentions:
        joined = combine(name, other.name)
        if joined is not None and joined != name and other.certainty >= 0.6:
            name, certainty = joined, min(certainty, other.certainty)
    closed = bool(re.search(r"['’\"”`´]", string[main.span[1] - 1 : main.span[1] + 1]))
    if name.cultivar and (whole := _in_title(name.cultivar, closed, side)):
        name = with_cultivar(name, whole)
    if not name.cultivar and (apart := _cultivar_apart(string, side, name)):
        name, certainty = with_cultivar(name, apart[0]), min(certainty, apart[1])
    sold = name.cultivar and not name.trade_designation and len(side.marked) == 1
    if name.cultivar and sold and not _heads_cultivar(side.marked[0], name.cultivar, side):
        name = replace(name, trade_designation=titles.as_written(_selling_name(side.marked[0])))
    headline = is_bare(name) and is_headline(Found(name.name, main.span, certainty), side)
    if is_bare(name) and (headline or not also_named(side, name.name)):
        return
    yield Found(name, main.span, round(certainty, 3))
    for other in side.mentions:
        if other.alone and not is_bare(other.name) and combine(name, other.name) is None:
            yield Found(other.name, other.span, round(other.certainty * 0.8, 3))


def _in_title(cultivar: str, closed: bool, side: Side) -> str | None:
    """The cultivar as the title prints it, in letters larger than those of the botanical name.

    There it is whole where the small print lost its end (its quote is not `closed`) and read better.
    """
    plain, count = repair.fold(cultivar), len(cultivar.split())
    titled = [line.text.strip(" '‘’“”\"") for line in side.lines if line.title]
    for text in (*titled, *(f"{a} {b}" for a, b in pairwise(titled))):
        words = text.split()
        if not titles.looks_like_name(text) or len(set(words)) < len(words):
            continue
        begins = (
            not closed
            and not titles.known_ending(words)[0]
            and repair.fold(" ".join(words[:count])) == plain
            and len(words) == count + 1
        )
        alike = len({word.isupper() for word in words}) == 1 and plausible_epithet(text)
        shown = repair.fold(text)
        damaged = shown != plain and len(shown) == len(plain) > 7
        if alike and (begins or (damaged and OSA.normalized_similarity(shown, plain) >= repair.ACCEPT)):
            return tidy_epithet(text)
    return None


def _heads_cultivar(marked: str, cultivar: str, side: Side) -> bool:
    """Whether a marked name is right before the cultivar: then it is the series, "Ravelot™ Plum Ruffle"."""
    whole = repair.fold(f"{marked} {cultivar}")
    return any(whole in repair.fold(re.sub("[™®]", " ", line.text)) for line in side.lines)


def _selling_name(printed: str) -> str:
    """A marked name without the plant's own at its end: "Ravelot Sprite Japanese Maple"."""
    words = printed.split()
    count, _ = titles.known_ending(words)
    return " ".join(words[:-count] if 0 < count < len(words) else words)


def _main_mention(side: Side) -> Mention | None:
    whole = [m for m in side.mentions if not is_bare(m.name)]
    if whole:
        return max(whole, key=lambda m: (m.alone, round(m.certainty, 1), len(m.name.name), -m.span[0]))
    return max(side.mentions, key=lambda m: m.certainty, default=None)


def _cultivar_alone(string: str, side: Side) -> Iterator[Found[BotanicalName]]:
    """A printed cultivar on a side that names no genus: the other side may have the rest of the name."""
    for line in side.lines:
        found = labelled_cultivar(string, line) or lone_cultivar(string, line)
        if found and (line.title or found[1][1] - found[1][0] >= len(line.text.strip()) - 1):
            yield Found(BotanicalName(f"'{found[0]}'", cultivar=found[0]), found[1], ALONE)
            return


def _cultivar_apart(string: str, side: Side, name: BotanicalName) -> tuple[str, float] | None:
    """The cultivar that stands apart from the name: labelled, quoted, or the one title of unknown words."""
    for line in side.lines:
        if found := labelled_cultivar(string, line):
            return found[0], 0.9
    quoted = [(found[0], line) for line in side.lines if (found := lone_cultivar(string, line))]
    if quoted:
        epithet, line = max(quoted, key=lambda pair: pair[1].size)
        return (epithet, 0.88) if line.title or len(line.text.split()) <= 5 else None
    if not name.species or name.trade_designation:
        return None
    return _one_title(side)


def _one_title(side: Side) -> tuple[str, float] | None:
    """The one title of unknown words beside a known common name; surest in the block that names the plant."""
    known = [found for found in side.common if found.certainty >= KNOWN * 0.88]
    loose = [
        entry for entry in side.loose if not lexicon.is_genus(entry[0].split()[0]) and _apart(entry, side)
    ]
    if not known or side.marked or len(loose) != 1:
        return None
    words, certainty, line = loose[0]
    epithet = tidy_epithet(words)
    if not plausible_epithet(epithet) or len(epithet) < SHORTEST_LOOSE or titles.has_head(epithet):
        return None
    if _ACCENTED.search(epithet) or all(w.lower() in lexicon.words_of("shade") for w in epithet.split()):
        return None
    if re.search(r"\b(?:mix(?:ed|ture)?|blend|assorted|shades|colou?rs)$", epithet, re.I):
        return None
    told = side.is_in_block(line) and any(side.is_in_block(other) for other in _lines_of(known, side))
    return epithet, max(certainty, IN_BLOCK) if told else certainty


def _lines_of(found: list[Found[str]], side: Side) -> Iterator[Line]:
    return (line for one in found for line in side.lines if line.start <= one.span[0] < line.end)


def _apart(entry: tuple[str, float, Line], side: Side) -> bool:
    """Whether unknown title words are set off from the common name: on its line, or in another size.

    In the same size they are as likely the beginning of the common name, broken over two lines; in small
    print they head the shelf: Butterfly Garden.
    """
    line = entry[2]
    named = [other for c in side.common for other in side.lines if other.start <= c.span[0] < other.end]
    return (
        not line.flat
        and line.size >= titles.SUBTITLE_SIZE
        and all(other is line or not 0.87 < other.size / line.size < 1.15 for other in named)
    ) or line in named
