"""Common names behind a label ("Common name: …", "also called …") and in lists of several languages."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from ocr_tags.names import lexicon, titles
from ocr_tags.names.firms import is_maker
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.known_names import known_name
from ocr_tags.names.naming import LABEL
from ocr_tags.names.side import KNOWN, Side
from ocr_tags.names.titles import Line, Piece
from ocr_tags.record import Found

_COMMON_LABEL = re.compile(
    r"\b(?:common\s+names?|plant\s+name|a\.?k\.?a\.?|nom\s+commun|nombre\s+com[uú]n"
    r"|(?:also|sometimes|often)\s+(?:known\s*(?:as|&)|called|sold\s+as|goes\s+by|answers\s+to)"
    r"|(?:otherwise|better|locally|popularly)\s+(?:known\s+as|called)|alias"
    r"|(?:some|many|folks?|people|others|locals|gardeners)(?:\s+also)?\s+(?:say|call\s+it|know\s+it\s+as)"
    r"|you\s+(?:(?:may|might|will|probably)\s+)?(?:also\s+|better\s+)?know\s+it(?:\s+(?:better\s+)?as|$)"
    r"|known\s+(?:here(?:abouts)?|to\s+\w+|in\s+\w+)\s+as"
    r"|(?<=,\s)(?:also|or\s+(?:plain|simply|just)(?:\s+old)?)(?=\s(?-i:[A-Z]))"
    r"|deutscher\s+name|commonly\s+(?:known\s+as|called))(?:\s*[:–-]\s*|\s+|$)",
    re.I,
)
PARTED = 0.86
"""How sure a name of no list is that a stroke parts from known names of the plant."""
# Codes of the languages and lands of the trade; single letters are those of cars, with a colon only.
_LANGUAGE = re.compile(
    r"(?:^|(?<=[\s/|,;·•(]))(?:(?P<code>NL|FR|DE|EN|GB|UK|ES|IT|PT|PL|SE|SV|DK|DA|NO|FI|CZ|CS|HU)\)?\s?[:.–-]?"
    r"|(?P<small>^(?:nl|fr|de|en|gb|es|it|pt|pl|sv|dk|da|no|fi|cz|cs|hu)[:.]?(?=\s[A-ZÀ-Þ]))"
    r"|(?P<land>[DFEINPS])\s?:|(?P<bare>[DFEI])(?=\s[A-ZÀ-Þ]))\s+(?=[^\W\d_]{3})"
)
_LISTED = re.compile(r"\s*(?:,|;|/|\bor\b|\band\b|\baka\b|&)\s*")


def read_labelled(string: str, side: Side) -> None:
    """Add to the side the names that a label announces."""
    for number, line in enumerate(side.lines):
        for label in _COMMON_LABEL.finditer(line.text):
            start, end = line.start + label.end(), line.end
            if number + 1 < len(side.lines):
                start, end = _over_line_end(string, start, end, side.lines[number + 1])
            stop = re.search(r"[.;)(]|\s-\s|" + LABEL.pattern, string[start:end], re.I)
            end = start + stop.start() if stop else end
            named = list(_listed(string, start, end))
            if named and stop is None and (joined := _joined(string, named[-1], end)):
                named[-1], end = joined, joined.end
            for piece in named:
                found = _labelled_name(piece, side)
                small = piece.text.islower() and not titles.has_head(piece.text)  # ", though rarely now"
                vague = small or titles.is_noise(piece.text) or titles.is_qualifier(piece.text.split())
                latin = piece.text.split()
                known = lexicon.is_trade_name(piece.text)  # Aloe vera
                if len(latin) > 1 and lexicon.is_binomial(latin[0], latin[1]) and not known:
                    continue  # "also sold as Sedum spectabile": no common name
                if found is None and not vague:
                    found = Found(titles.as_written(piece.text), (piece.start, piece.end), 0.8)
                if found:
                    side.common.append(found)
                    side.labelled.add(found.span)
            side.taken.append((line.start + label.start(), end))


_OR_IS = re.compile(
    r"(?P<name>[A-Z][\w'’-]+(?: [\w'’-]+){0,3}), or (?P<other>[\w'’-]+(?: [\w'’-]+){0,2}),"
    r" (?:is|are|was|has|grows|comes|makes|likes|needs|will|can)\b"
)


def read_spoken(side: Side) -> None:
    """Add the other name of a sentence about the plant: "Blue Grama, or mosquito grass, is …"."""
    for line in side.lines:
        match = _OR_IS.match(line.text)
        if match and known_name(Piece(line.start, line.start + match.end("name"), match["name"]), 1):
            first, last = match.span("other")
            other = Piece(line.start + first, line.start + last, match["other"])
            if (found := known_name(other, 0.9)) or titles.has_head(other.text):
                span = (other.start, other.end)
                side.take(found or Found(titles.as_written(other.text), span, 0.8))
                side.labelled.add(span)


def _labelled_name(piece: Piece, side: Side) -> Found[str] | None:
    """The name as the lists know it, not mended into one the side prints: silkweed, of Swamp Milkweed."""
    found = known_name(piece, 0.95)
    if found is None or lexicon.key(found.value) == lexicon.key(piece.text):
        return found
    mended = re.compile(rf"\b{re.escape(found.value)}\b", re.I)
    return None if any(mended.search(line.text) for line in side.lines) else found


def _over_line_end(string: str, start: int, end: int, below: Line) -> tuple[int, int]:
    """From where to where a labelled list runs, that begins or goes on in the next line."""
    if not string[start:end].strip(" :"):
        led = re.match(r"\s*as\s+", below.text)
        return below.start + (led.end() if led else 0), below.end
    goes_on = string[end : below.start] == "\n" and _GOES_ON.search(string[start:end])
    return start, below.end if goes_on else end


_GOES_ON = re.compile(r"(?:[,;/&]|\b(?:and|or|by))\s*$")


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


# ---------------------------------------------------------------- lists in several languages


def read_languages(side: Side) -> None:
    """Names each behind the code of its language, "NL Lavendel FR Lavande", when one is the plant's."""
    for group in _language_groups(side):
        shared = side.genera or {g for one, other in pairwise(group) for g in _called(one) & _called(other)}
        if len(group) < 2 or not any(_called(piece) & shared for piece in group):
            continue
        for piece in group:
            if _called(piece) & shared or not side.answers_in(piece):
                found = Found(titles.as_written(piece.text), (piece.start, piece.end), 0.85)
                side.take(found)
                side.labelled.add(found.span)


def _language_groups(side: Side) -> Iterator[list[Piece]]:
    """Pieces behind language codes, a code at most once in each group and no other line between."""
    group: list[Piece] = []
    codes: set[str] = set()
    for line in side.lines:
        found = list(_LANGUAGE.finditer(line.text))
        if not any(code["code"] or code["small"] for code in found):
            found = [code for code in found if not code["bare"]]  # a lone letter goes with longer codes only
        if not found:
            yield group
            group, codes = [], set()
            continue
        for code, end in zip(found, [*(m.start() for m in found[1:]), len(line.text)], strict=True):
            if code[0].strip(" :") in codes:
                yield group
                group, codes = [], set()
            codes.add(code[0].strip(" :"))
            words = line.text[code.end() : end].strip(" .,;:/|·•–-(")
            start = line.start + line.text.index(words, code.end())
            piece = Piece(start, start + len(words), words)
            if words[:1].isupper() and (_called(piece) or titles.looks_like_name(words)):
                group.append(piece)
    yield group


def _called(piece: Piece) -> frozenset[str]:
    return genera_called(piece.text) | lexicon.genera_of(piece.text)


def read_strokes(side: Side) -> None:
    """Names parted by strokes, dots or commas beside a botanical name or in titles: "Roquette / Rocket".

    With two known ones, or one in another language, the others are names of the plant as well.
    """
    genera = side.genera | {
        g for c in side.common if c.certainty >= KNOWN for g in lexicon.genera_of(c.value)
    }
    for number, line in enumerate(map(_without_price, side.lines)):
        listed = _parted_names(line)
        if len(listed) < 2 or is_maker(line.text) or re.search(r"(?<!\w)['‘’“\"]|[™®©:]", line.text):
            continue
        if not _is_beside_name(number, side) or not all(
            titles.is_line_of_names(p, line, ",") for p in listed
        ):
            continue
        shared = genera or {g for a, b in pairwise(listed) for g in _ends(a) & _ends(b)}
        known = [piece for piece in listed if _ends(piece) & shared]
        foreign = any(genera_called(piece.text) for piece in known)
        others = [piece for piece in listed if piece not in known]
        plain = all(_may_be_name(piece, side) for piece in others)
        if not known or not plain or (others and len(known) < (1 if foreign else 2)):
            continue
        for piece in listed:
            if not any(start < piece.end and end > piece.start for start, end in side.taken):
                side.take(
                    known_name(piece, 0.9)
                    or Found(titles.as_written(piece.text), (piece.start, piece.end), PARTED)
                )


def _parted_names(line: Line) -> list[Piece]:
    """What stands between the strokes, commas and "or" of a line; a kind and its sort in a title stay
    together."""
    found: list[Piece] = []
    for piece in titles.pieces(line, []):
        if piece.text.count(", ") == 1 and line.title and not _OR.search(piece.text):
            found.append(piece)
            continue
        position = piece.start
        for part in _EITHER.split(piece.text):
            position = piece.start + piece.text.index(part, position - piece.start)
            found.append(Piece(position, position + len(part), part))
    return found


_OR = re.compile(r",?\s+(?:or|aka)\s+")
_EITHER = re.compile(rf"{_OR.pattern}|,\s+")
_PRICE = re.compile(r"\s*[$£€] ?\d+(?:[.,]\d\d)?\s*$")


def _without_price(line: Line) -> Line:
    text = _PRICE.sub("", line.text)
    return replace(line, end=line.start + len(text), text=text)


def _ends(piece: Piece) -> frozenset[str]:
    """The genera a name may mean, whole or by its last words."""
    return _called(piece) | lexicon.genera_of(titles.known_ending(piece.text.split())[1])


def _is_beside_name(number: int, side: Side) -> bool:
    """Whether the line is a title or right under one, or stands next to a botanical name of its own line."""
    near = [side.lines[n] for n in (number - 1, number + 1) if 0 <= n < len(side.lines)]
    botanical = any(
        m.alone and m.span[0] < line.end and m.span[1] > line.start for m in side.mentions for line in near
    )
    return botanical or side.lines[number].title or (number > 0 and side.lines[number - 1].title)


def _may_be_name(piece: Piece, side: Side) -> bool:
    plain = titles.looks_like_name(piece.text) and not titles.is_qualifier(piece.text.split())
    return plain and not lexicon.is_genus(piece.text) and not side.answers_in(piece)
