"""Names that a narrow tag breaks over lines of one size of letters."""

from __future__ import annotations

import re
from itertools import accumulate, pairwise

from rapidfuzz.distance import OSA

from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.firms import is_maker
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.known_names import called_by, known_name, spelt
from ocr_tags.names.side import Side
from ocr_tags.names.title_runs import runs
from ocr_tags.names.titles import Line, Piece
from ocr_tags.record import Found, TagText

MARK = re.compile(r"\s?(?:[™®©]|\((?:TM|R)\))")

ONE_TITLE = 0.85
"""How sure a name is that a selling name begins and a common name of the botanical plant ends."""


def read_runs(tag: TagText, side: Side) -> None:
    """Names broken over title lines, the longest runs of lines first."""
    for run in runs(tag, side.lines):
        if _is_cultivar(_joined(run), side):
            side.taken.append((run[0].start, run[-1].end))
    for run in runs(tag, side.lines):
        whole = Piece(run[0].start, run[-1].end, _joined(run))
        # A genus over its cultivar may be the last word of the plant's common name (Panicle / Hydrangea), and
        # a line that is a name may begin another (Saskatoon / Berry).
        known = lexicon.is_common_name(whole.text)
        parts = {mention.span for mention in side.mentions} | {(line.start, line.end) for line in run}
        taken = set(side.taken) - (parts if known else set())
        if any(start < line.end and end > line.start for line in run for start, end in taken):
            continue
        if (
            not _is_repeated(whole.text)
            and not MARK.search(whole.text)
            and not re.search(r"(?<!\w)['‘“\"]\w", whole.text)
        ):
            if known:
                side.common = [one for one in side.common if not _is_within(one.span, whole)]
            _read_run(whole, run, side)


def _is_within(span: tuple[int, int], whole: Piece) -> bool:
    return whole.start <= span[0] and span[1] <= whole.end


def _are_names(run: tuple[Line, ...], genera: set[str]) -> bool:
    """Whether each line, one of several words among them, is a whole name of the plant named in Latin."""
    several = any(" " in line.text.strip() for line in run)
    return several and all(called_by(line.text.strip()) & genera for line in run)


def _joined(run: tuple[Line, ...]) -> str:
    return " ".join(line.text.strip() for line in run)


def _is_repeated(text: str) -> bool:
    """Whether a word stands twice, once in part perhaps: two readings of one line, not two lines."""
    words = sorted(text.lower().split())
    return any(b.startswith(a) and (len(a) > 3 or a == b) for a, b in pairwise(words))


def _read_run(whole: Piece, run: tuple[Line, ...], side: Side) -> None:
    """A broken name that the lists know, whole or but for describing words: Dwarf / Fountain Grass.

    Where unknown words of one size stand above a describing word, it may end them as well ("Harbour / Pink /
    Tulip"): then neither is said.
    """
    if not lexicon.is_common_name(whole.text) and _are_names(run, side.genera):
        return
    if own := _name_of_plant(whole.text, side):
        side.take(Found(spelt(own, whole.text), (whole.start, whole.end), 0.93))
        return
    if (found := known_name(whole, 0.93)) and (lexicon.is_common_name(whole.text) or not _parts_known(run)):
        side.take(found)
        return
    if any(genera_called(line.text) and not lexicon.plants_called(line.text) for line in run):
        return  # two names in two languages
    count, kept = _known_end(whole)
    before = whole.text.split()[:-count]
    crosses = count > len(run[-1].text.split())
    whole_begins = not _goes_on_above(run[0], side)
    if not count or not (before or crosses):
        return
    if titles.is_qualifier(before):
        side.taken.append((whole.start, whole.end))
        if not before or "leaf" in before[0].lower() or whole_begins:
            side.common.append(Found(titles.as_written(kept), (whole.start, whole.end), 0.8))
        else:
            above = side.lines[side.lines.index(run[0]) - 1]
            side.taken.append((above.start, above.end))
    elif whole_begins and _is_one_title(before, run, side):
        side.take(Found(titles.as_written(kept), (whole.start, whole.end), ONE_TITLE))
    elif (len(run) == 2 and len(before) == count == 1 and _name_one_plant(before[0], kept.split()[-1])) or (
        whole_begins and _fancy_before(before, run) and titles.looks_like_name(" ".join(before))
    ):
        side.take(Found(titles.as_written(kept), (whole.start, whole.end), 0.7))


def _name_of_plant(text: str, side: Side) -> str | None:
    """The common name, of the plant that the side names in Latin, that the whole run is but for a letter."""
    latin = [m.name for m in side.mentions if m.name.species]
    nearest = (repair.nearest_name_of(f"{name.genus} {name.species}", text) for name in latin)
    return next((near.name for near in nearest if near and near.likeness >= repair.ACCEPT), None)


def _is_one_title(before: list[str], run: tuple[Line, ...], side: Side) -> bool:
    """Whether a selling name and the common name below it are printed as one: in the same letters, over a
    botanical name of that plant without a cultivar. With a cultivar the selling name stands for itself.
    """
    alike = len({line.text.isupper() for line in run}) == 1
    alike = alike and max(line.size for line in run) < 1.36 * run[-1].size  # a selling name apart is larger
    words = " ".join(before)
    named = titles.looks_like_name(words) and not titles.known_ending(before)[0]
    plain = any(titles.known_ending(run[-1].text.split())) and not any(is_maker(line.text) for line in run)
    return alike and named and plain and side.is_without_cultivar(run[-1].text)


def _fancy_before(before: list[str], run: tuple[Line, ...]) -> bool:
    """Whether unknown words stand on one line with the known end, so that those above belong to it too."""
    starts = [*accumulate((len(line.text.split()) for line in run), initial=0)]
    begun = max(start for start in starts if start <= len(before))
    return len(before) > begun and not titles.is_qualifier(before[begun:])


def _parts_known(run: tuple[Line, ...]) -> bool:
    return any(known_name(piece, 1) for line in run for piece in titles.pieces(line, []))


def _known_end(whole: Piece) -> tuple[int, str]:
    """How many last words the lists know, and the whole with those well spelt."""
    words = whole.text.split()
    count, ending = titles.known_ending(words)
    printed = lexicon.key(ending) == lexicon.key(" ".join(words[-count:]))
    return count, whole.text if printed else " ".join([*words[:-count], ending])


def _name_one_plant(one: str, other: str) -> bool:
    """Whether two words are common names of one genus, as in Shadblow / Serviceberry."""
    plain = not any(lexicon.is_genus(word) or genera_called(word) for word in (one, other))
    return plain and bool(lexicon.genera_of(one) & lexicon.genera_of(other))


def _goes_on_above(line: Line, side: Side) -> bool:
    """Whether an unknown title of about the same letters stands right above this one."""
    at = side.lines.index(line)
    before = side.lines[at - 1] if at else None
    alike = before and before.title and 0.6 < before.size / line.size < 1.6
    return bool(before and alike and not _ends_known(before.text.strip()))


def _ends_known(text: str) -> bool:
    return lexicon.is_common_name(text) or titles.known_ending(text.split())[0] > 0


def is_perhaps_longer(found: Found[str], side: Side) -> bool:
    """Whether a known name may be the end of a longer one: unknown words in its letters stand above it.

    They are a selling name or its beginning; printed as the cultivar, or marked, they stand apart.
    """
    at = next((n for n, line in enumerate(side.lines) if line.start == found.span[0]), 0)
    line = side.lines[at]
    before = next((other for other in reversed(side.lines[max(0, at - 4) : at]) if other.title), None)
    if before is None or not line.title or not 0.8 < before.size / line.size < 1.25:
        return False
    if any(m.span[0] < before.end and m.span[1] > before.start for m in side.mentions):
        return False
    text = before.text.strip(" '‘’“”\"")
    told = [m.name.cultivar or "" for m in side.mentions] + side.marked
    apart = (
        any(repair.fold(text) in repair.fold(name) for name in told) or text.isupper() != line.text.isupper()
    )
    apart = apart or titles.is_foreign(text)
    return not apart and titles.looks_like_name(text) and not _ends_known(text)


def _is_cultivar(text: str, side: Side) -> bool:
    """Whether title lines together are the cultivar of a botanical name on the side."""
    plain = repair.fold(text)
    known = [repair.fold(m.name.cultivar) for m in side.mentions if m.name.cultivar]
    return any(OSA.normalized_similarity(plain, cultivar) >= repair.ACCEPT for cultivar in known)


def put_together(string: str, unknown: list[Found[str]], lines: tuple[Line, ...]) -> list[Found[str]]:
    """Unknown titles with those that stand on lines of the same letters under each other made one."""
    whole = {(line.start, line.end): line for line in lines}
    found: list[Found[str]] = []
    sizes: list[float] = []
    for one in sorted(unknown, key=lambda one: one.span):
        line = whole.get(one.span)
        last = found[-1] if found else None
        if line and last and string[last.span[1] : one.span[0]] == "\n" and sizes[-1]:
            cased = last.value.isupper() == one.value.isupper()
            if cased and 0.77 < line.size / sizes[-1] < 1.3:
                words = string[last.span[0] : one.span[1]].replace("\n", " ")
                span = (last.span[0], one.span[1])
                found[-1] = Found(titles.as_written(words), span, min(last.certainty, one.certainty))
                continue
        found.append(one)
        sizes.append(line.size if line else 0.0)
    return found
