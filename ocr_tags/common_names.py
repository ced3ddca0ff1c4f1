"""Common names found in the text of one side of a tag, and what stands beside them.

The title block, a label, or the company of a botanical name make a word a plant's name; the small print
never does, where "rose" is a colour and "Oak" a street.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from rapidfuzz.distance import OSA

from ocr_tags import lexicon, repair, titles
from ocr_tags.firms import is_maker, labelled_firms
from ocr_tags.foreign_names import genera_called
from ocr_tags.naming import LABEL, Mention, find_names, lone_cultivar, mentions_in
from ocr_tags.nomenclature import plausible_epithet, title_case
from ocr_tags.record import BotanicalName, Found, TagText
from ocr_tags.titles import Line, Piece

_COMMON_LABEL = re.compile(
    r"\b(?:common\s+names?|plant\s+name|also\s+(?:known\s+as|called|sold\s+as)|a\.?k\.?a\.?|nom\s+commun|nombre\s+com[uú]n"
    r"|deutscher\s+name|commonly\s+(?:known\s+as|called))(?:\s*[:–-]\s*|\s+|$)",
    re.I,
)
_LISTED = re.compile(r"\s*(?:,|;|/|\bor\b|\band\b|\baka\b|&)\s*")
_MARK = re.compile(r"\s?(?:[™®©]|\((?:TM|R)\))")

KNOWN = 0.7
"""From this certainty up a common name counts as known, and unknown titles are no longer guessed at."""

KIND = 0.8


@dataclass(slots=True)
class Side:
    """What the names of one side come to.

    `common` are known names, `unknown` titles that may be names, `loose` title words that may be a cultivar
    standing apart, `marked` words with a trade mark sign; `labelled` is where the tag says that it names.
    In `answers` other fields found their values.
    """

    lines: tuple[Line, ...]
    mentions: list[Mention]
    taken: list[tuple[int, int]]
    answers: tuple[tuple[int, int], ...] = ()
    common: list[Found[str]] = field(default_factory=list)
    unknown: list[Found[str]] = field(default_factory=list)
    loose: list[tuple[str, float, Line]] = field(default_factory=list)
    marked: list[str] = field(default_factory=list)
    labelled: set[tuple[int, int]] = field(default_factory=set)

    @property
    def genera(self) -> set[str]:
        return {m.name.genus for m in self.mentions if m.name.genus and not is_bare(m.name)}

    def take(self, found: Found[str]) -> None:
        self.common.append(found)
        self.taken.append(found.span)

    def answers_in(self, piece: Piece) -> bool:
        return any(start < piece.end and end > piece.start for start, end in self.answers)


def read_side(tag: TagText, answers: tuple[tuple[int, int], ...] = ()) -> Side:
    """Everything on one side that may be a name; unknown words where other fields find answers may not."""
    mentions = find_names(tag)
    taken = [m.span for m in mentions if not is_bare(m.name)]
    taken += [span for _, span in labelled_firms(tag.string)]
    side = Side(titles.lines_of(tag), mentions, taken, answers)
    _read_labelled(tag.string, side)
    _read_beside(side)
    _read_runs(tag, side)
    _read_titles(tag.string, side)
    _read_foreign(side)
    return side


def is_bare(name: BotanicalName) -> bool:
    """Whether it is a lone genus, which may as well be a common name: Petunia."""
    return name.name == name.genus and not name.trade_designation


# ---------------------------------------------------------------- common names: where they stand


def _read_labelled(string: str, side: Side) -> None:
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
                found = _named(piece, 0.95)
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
    position = start
    for part in _LISTED.split(string[start:end]):
        words = part.strip(" .,:'’‘\"“”")
        if len(words) > 2:
            at = string.index(words, position)
            position = at + len(words)
            yield Piece(at, position, words)


def _read_beside(side: Side) -> None:
    """Known names on the line of a botanical name, or on the lines next to one that stands alone."""
    for number, line in enumerate(side.lines):
        here = [m for m in mentions_in(side.mentions, line) if not is_bare(m.name) and m.certainty >= 0.7]
        if not here:
            continue
        near = [line] + [
            side.lines[n] for n in (number - 1, number + 1) if 0 <= n < len(side.lines) and here[0].alone
        ]
        for other in near:
            if other.title and other is not line:
                continue
            for piece in titles.pieces(other, side.taken):
                found = _named(piece, 0.93) or _kind_of(piece, here[0].name.genus)
                if found and (agrees(found.value, here[0].name.genus) or found.certainty == KIND):
                    side.take(found)


def _kind_of(piece: Piece, genus: str | None) -> Found[str] | None:
    """A name of this genus with only describing words before it: Climbing Rose."""
    words = piece.text.split()
    count, ending = titles.known_ending(words)
    if not 0 < count < len(words) or not titles.is_qualifier(words[:-count]) or not agrees(ending, genus):
        return None
    return Found(titles.as_written(piece.text), (piece.start, piece.end), KIND)


def _read_runs(tag: TagText, side: Side) -> None:
    """Names broken over title lines, whole ones first."""
    for run in titles.runs(tag, side.lines):
        if any(start < line.end and end > line.start for line in run for start, end in side.taken):
            continue
        whole = Piece(run[0].start, run[-1].end, " ".join(line.text.strip() for line in run))
        if _is_cultivar(whole.text, side):
            side.taken.append((whole.start, whole.end))
            continue
        parts = any(_named(piece, 1) for line in run for piece in titles.pieces(line, []))
        found = _broken(whole, run) if parts else _named(whole, 0.93) or _broken(whole, run)
        if found:
            side.take(found)


def _is_cultivar(text: str, side: Side) -> bool:
    """Whether title lines together are the cultivar of a botanical name on the side."""
    plain = repair.fold(text)
    known = [repair.fold(m.name.cultivar) for m in side.mentions if m.name.cultivar]
    return any(OSA.normalized_similarity(plain, cultivar) >= repair.ACCEPT for cultivar in known)


def _broken(whole: Piece, run: tuple[Line, ...]) -> Found[str] | None:
    """A broken name that the lists know in part: Dwarf / Fountain Grass; Garden / Phlox."""
    words = whole.text.split()
    count, ending = titles.known_ending(words)
    before = words[:-count]
    if (
        not count
        or (titles.is_noise(" ".join(before)) and before)
        or _MARK.search(whole.text)
        or re.search(r"['‘“\"]\w", whole.text)
    ):
        return None
    span = (whole.start, whole.end)
    kept = (
        " ".join([*before, ending])
        if lexicon.key(ending) != lexicon.key(" ".join(words[-count:]))
        else whole.text
    )
    crosses = count > len(run[-1].text.split())
    if titles.is_qualifier(before) and (before or crosses):
        return Found(titles.as_written(kept), span, 0.8)
    same = max(line.size for line in run) <= 1.12 * min(line.size for line in run)
    if same and not run[0].flat and (crosses or len(words) <= 4) and titles.looks_like_name(" ".join(before)):
        return Found(titles.as_written(kept), span, 0.65)
    return None


def _read_titles(string: str, side: Side) -> None:
    shown = [line for line in side.lines if line.title and not is_maker(line.text)]
    largest = max((line.size for line in shown), default=1.0)
    for number, line in enumerate(shown):
        marked = [p.text for p in titles.pieces(line, side.taken) if _MARK.match(string, p.end)]
        side.marked.extend(_with_line_above(string, shown[:number], line, text) for text in marked)
        quoted = lone_cultivar(string, line)
        for piece in titles.pieces(line, side.taken + ([quoted[1]] if quoted else [])):
            if piece.text not in marked:
                _read_title(piece, line, side, line.size >= 0.8 * largest if not line.flat else number == 0)


def _with_line_above(string: str, above: list[Line], line: Line, marked: str) -> str:
    """A marked name with its beginning, an unknown title of one size right above: Sorrel / Copper®."""
    before = above[-1] if above else None
    if before is None or string[before.end : line.start] != "\n" or not line.text.strip().startswith(marked):
        return marked
    words = Piece(before.start, before.end, before.text.strip())
    alike = 0.87 < before.size / line.size < 1.15 and titles.looks_like_name(words.text)
    return f"{words.text} {marked}" if alike and not _named(words, 1) else marked


def _read_title(piece: Piece, line: Line, side: Side, main: bool) -> None:
    shade = 0.88 if line.flat else 1.0
    found = _named(piece, 0.95 * shade)
    if found:
        alone = " " not in found.value and lexicon.key(found.value) in titles.words_of("doubtful")
        if not alone or any(agrees(found.value, genus) for genus in side.genera):
            side.common.append(found)
        elif main:
            side.common.append(replace(found, certainty=0.7 * shade))
        return
    words = piece.text.split()
    if piece.start > line.start and line.text[piece.start - line.start - 1] in "'‘“\"`´„":
        return  # a cultivar whose closing quote was lost
    parted = _parted(piece, words, line, side) if len(words) > 1 else None
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
            and all(word[0].isupper() or len(word) < 4 for word in words)
        ):
            side.loose.append((piece.text, 0.65 if main else 0.6, line))


def _vouched(piece: Piece, shade: float, side: Side) -> Found[str] | None:
    """A damaged title that is fairly like a common name of the plant whose botanical name stands here."""
    if genera_called(piece.text):
        return None
    for mention in side.mentions:
        near = repair.nearest_name_of(f"{mention.name.genus} {mention.name.species}", piece.text)
        if near and mention.name.species:
            return Found(_spelt(near.name, piece.text), (piece.start, piece.end), 0.85 * shade)
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
        if titles.is_qualifier(before):
            return Found(whole, span, (0.88 if agreed else 0.8) * shade)
        vague = lexicon.key(ending) in titles.words_of("doubtful") and bool(side.genera) and not agreed
        if vague or titles.is_noise(" ".join(before)):
            return None
        if " ".join(before).isupper() and not " ".join(words[-count:]).isupper():
            side.loose.append((" ".join(before), 0.75 * shade, line))
            start = piece.end - len(" ".join(words[-count:]))
            return Found(titles.as_written(ending), (start, piece.end), 0.75 * shade)
        return Found(whole, span, (0.8 if agreed else 0.7) * shade)
    first = titles.known_beginning(words)
    rest = " ".join(words[first:])
    if not first or titles.is_noise(rest) or not plausible_epithet(rest) or not words[first][0].isupper():
        return None
    if titles.has_head(rest) or titles.is_qualifier(words[first:]):  # Carrot Bush is no carrot
        return None
    side.loose.append((rest, 0.7 * shade, line))
    name = " ".join(words[:first])
    return Found(titles.as_written(name), (piece.start, piece.start + len(name)), 0.75 * shade)


def _read_foreign(side: Side) -> None:
    """Names in another language of the plant that the side names in Latin or English already."""
    known = {genus for c in side.common if c.certainty >= KNOWN for genus in genera_of(c.value)}
    for line in side.lines:
        for piece in titles.pieces(line, side.taken) if not is_maker(line.text) else ():
            genera = genera_called(piece.text) if titles.is_line_of_names(piece, line) else frozenset()
            if not genera & (side.genera | known) or lexicon.plants_called(piece.text):
                continue
            if not side.answers_in(piece):
                certainty = 0.9 if genera & side.genera else 0.8
                side.take(Found(titles.as_written(piece.text), (piece.start, piece.end), certainty))


# ---------------------------------------------------------------- common names: which they are


def _named(piece: Piece, certainty: float) -> Found[str] | None:
    """The piece as a known name: as printed when spelt right, as the lists spell it when clearly damaged."""
    span = (piece.start, piece.end)
    text = titles.without_digits(piece.text)
    written = titles.as_written(text)
    if lexicon.is_trade_name(text):
        kept = written if lexicon.is_well_parted(text) else _spelt(text, text)
        return Found(kept, span, certainty if text == piece.text else certainty * 0.9)
    if lexicon.plants_called(text):
        return Found(written, span, certainty - 0.2)
    if " " in text and lexicon.is_common_name(text) and not titles.is_noise(text):
        return Found(written, span, certainty - 0.05)
    near = None if titles.is_answer(text) or genera_called(text) else repair.nearest_common(text)
    if near and near.clear and (near.likeness >= 0.9 or not titles.is_noise(text)):
        return Found(_spelt(near.name, text), span, certainty * (0.6 + 0.3 * near.likeness))
    return None


def _spelt(known: str, printed: str) -> str:
    """A known name as the lists spell it, in title letters when it was printed so."""
    name = lexicon.spelling(known, printed) or known
    return title_case(name) if printed[:1].isupper() else name


def agrees(common: str, genus: str | None) -> bool:
    """Whether a plant of this genus has this common name."""
    return genus in genera_of(common)


def genera_of(common: str) -> set[str]:
    """The genera, old names too, of the trade plants with this common name."""
    return {
        lexicon.genus_of(name)
        for plant in lexicon.plants_called(common)
        for name in (plant.name, *plant.synonyms)
    }


def also_named(side: Side, genus: str) -> bool:
    """Whether a plant of this genus has a common name on the side that does without the genus."""
    others = [c.value for c in side.common if c.certainty >= KNOWN and genus.lower() not in c.value.lower()]
    return any(agrees(value, genus) for value in others)
