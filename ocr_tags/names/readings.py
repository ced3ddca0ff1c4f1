"""One botanical name read from a place in a text: spelt right, with damaged letters, or of no list.

Each reader says how far the letters alone can be trusted; where the name stands is judged in `naming.py`.
"""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.names import lexicon, repair
from ocr_tags.names.cultivars import MARKS, half_quoted, with_cultivar
from ocr_tags.names.epithets import plausible_epithet, title_case
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.nomenclature import Parsed, read_name
from ocr_tags.names.titles import Line
from ocr_tags.patterns import later

_LATIN = later(r"(?:us|a|um|is|e|ens|ans|ii|i|ae|oides|or|ix|ax|es|on|os|er|ys|x)$")


def _probe(text: str, start: int) -> str | None:
    """The text with the genus at `start` given its capital; None when no genus stands there."""
    word = re.match(r"(?:[×✕+][ ]?|[xX][ ])?([^\W\d_]+(?:-[^\W\d_]+)*)", text[start:])
    if word is None or not lexicon.is_genus(word[1]):
        return None
    first = start + word.start(1)
    return text[:first] + text[first].upper() + text[first + 1 :]


def read_known(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
    """A name spelt right: a known species, or a genus with nothing that looks like a species behind it."""
    probe = _probe(text, start)
    parsed = read_name(probe, start, lexicon.is_binomial) if probe else None
    if probe is None or parsed is None:
        return None, 0
    name = parsed.name
    if name.genus is None or (name.species and lexicon.is_binomial(name.genus, name.species)):
        small = _SMALL.match(text, parsed.end, line.end) if probe != text and not name.cultivar else None
        if small and plausible_epithet(small[1]):
            named = with_cultivar(name, title_case(small[1]))
            return replace(parsed, name=named, end=small.end(), quoted=2), 0.93
        return half_quoted(text, line, parsed, 0.96)
    if name.species or probe != text or _with_unknown_species(probe, start):
        return None, 0
    if name.cultivar or name.group or name.trade_designation or name.name.endswith((".", "hybrid")):
        return parsed, 0.93 if parsed.quoted > 1 else 0.85
    half, trust = half_quoted(text, line, parsed, 0.93)
    return (half, trust) if half.quoted else (parsed, 0.7)


_SMALL = later(r"[ ]['‘\"“]([a-z][a-z' -]+[a-z])['’\"”](?=[ .,]*$)")
"""The cultivar of a tag that prints no capitals: salvia rosmarinus 'sky lantern'."""


def read_unknown(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
    """A species no list holds, in a known genus: only on a line of its own or after a label.

    One much like a known species may be that, misread beyond repair: it is trusted less.
    """
    probe = _probe(text, start)
    parsed = _with_unknown_species(probe, start) if probe == text else None
    if parsed is None or not (labelled or is_whole(text, line, start, parsed.end)):
        return None, 0
    near = repair.nearest_epithet(parsed.name.genus or "", parsed.name.species or "")
    if near is not None:
        return parsed, 0.5
    return parsed, 0.88 if parsed.quoted > 1 else 0.75


def _with_unknown_species(probe: str, start: int) -> Parsed | None:
    parsed = read_name(probe[: _line_end(probe, start)], start, _maybe_epithet)
    name = parsed.name if parsed else None
    if parsed is None or name is None or not name.species:
        return None
    return None if lexicon.is_binomial(name.genus or "", name.species) else parsed


_OPEN_QUOTE = later(r"\s['‘\"“][^'’\"”\n]*$")
_CLOSED_BELOW = later(r"\n[^'’\"”\n]{1,30}['’\"”]")


def _line_end(text: str, start: int) -> int:
    """The end of the line, or of a cultivar whose quote is opened in it and closed in the next.

    >>> _line_end("Iris nova 'Sky" + chr(10) + "Lark'", 0), _line_end("Iris nova 'Sky" + chr(10) + "Sun", 0)
    (20, 14)
    """
    end = text.find("\n", start)
    if end < 0:
        return len(text)
    closed = _CLOSED_BELOW.match(text, end) if _OPEN_QUOTE.search(text, start, end) else None
    return closed.end() if closed else end


def _maybe_epithet(genus: str, word: str) -> bool:
    return lexicon.is_binomial(genus, word) or bool(
        len(word) > 3 and _LATIN.search(word) and word not in lexicon.words_of("english")
    )


def read_repaired(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
    """A name with damaged letters, when one known name is clearly the nearest.

    Two words are tried first, then one (joined) and three (parted); the rest is read as printed.
    """
    stretch = re.match(r"[^\W_]+(?:[ -][×xX]?\s?[^\W_]+){0,3}", text[start : line.end])
    if stretch is None or not (labelled or _name_like(text, start, line)):
        return None, 0
    if not stretch[0].isascii() and genera_called(stretch[0]):  # Hydrangée arborescente is French
        return None, 0
    words = list(re.finditer(r"[^\s]+", stretch[0]))
    best: tuple[float, str, int] | None = None
    for count in (2, 1, 3):
        if count <= len(words):
            end = words[count - 1].end()
            near = repair.nearest_binomial(stretch[0][:end])
            if near and near.clear and (best is None or near.likeness > best[0] + 0.02):
                best = near.likeness, near.name, end
    if best is None and len(words) > 1 and lexicon.is_genus(words[0][0]):
        near = repair.nearest_epithet(words[0][0], words[1][0])
        if near and near.clear and words[1][0].islower():
            best = near.likeness, f"{words[0][0].capitalize()} {near.name}", words[1].end()
    if best is None:
        return _repaired_genus(text, start, words)
    parsed = _reread(text, start, start + best[2], best[1])
    return half_quoted(text, line, parsed, 0.72 + 0.2 * best[0]) if parsed else (None, 0)


def _name_like(text: str, start: int, line: Line) -> bool:
    """Repair starts only where a name can: at the head of a line, after a label, a dash or a bracket."""
    before = text[line.start : start].rstrip()
    return not before or before[-1] in ":-–—(|•/,"


def _repaired_genus(text: str, start: int, words: list[re.Match[str]]) -> tuple[Parsed | None, float]:
    near = repair.nearest_genus(words[0][0])
    if near is None or not near.clear or near.likeness == 1 or not words[0][0][0].isupper():
        return None, 0
    parsed = _reread(text, start, start + words[0].end(), near.name)
    if parsed is None or not (parsed.name.species or parsed.name.cultivar):
        return None, 0
    return parsed, 0.75


def _reread(text: str, start: int, end: int, right: str) -> Parsed | None:
    """The name read again with its damaged beginning put right; the end is given in the printed text."""
    parsed = read_name(right + text[end:], 0, lexicon.is_binomial)
    return parsed and replace(parsed, end=max(end, parsed.end - len(right) + end))


_RIGHTS = later(
    r"(?:[\s,;.()®™©-]|\b(?:us|u\.s\.?|can\.?|eu|aus)(?=\W|pp)|(?:us)?pp(?:af)?|c?p[bv]raf|c?p[bv]r|copf?"
    r"|plant pat\w*|pat\w*|no\.?|pending|applied for|breeders['’]? rights?|prop\w* prohibited|\d[\d,]{3,})+",
    re.I,
)
"""What is said of a cultivar's protection right behind its name."""
OLDER = later(
    r"[\s(\[,;–-]*(?<![^\W\d_])(?:syn(?:onyms?|s)?\b\.?|formerly|previously|until recently|once|was|ex\b"
    r"|olim\b|old(?:er)? name"
    r"|(?:also|still|sometimes|often)\b(?=\s+(?:sold|listed|labelled|offered|found|seen|traded))"
    r"|(?:old(?:er)? (?:books|labels|lists|gardeners)|some|many|others|books|botanists)(?:\s+still)?"
    r"\s+(?:call|list|have|know|name|write|say)(?:\s+it)?"
    r"|=|≡)"
    r"(?:\s+(?:known|sold|called|listed|named|labelled|offered|found|seen|traded)?\s*(?:as|of|under)?)?[\s:]*",
    re.I,
)
"""What leads from a name to another that the plant had: (syn. Dicentra spectabilis), formerly Sedum."""


def is_whole(text: str, line: Line, start: int, end: int) -> bool:
    before = text[line.start : start].strip(" .,:;-–—'\"|*•(")
    rest = text[end : line.end].strip(" .,:;-–—'\"|*•)")
    if before:
        return False
    return not rest or bool(_RIGHTS.fullmatch(rest) or MARKS.fullmatch(rest) or OLDER.match(rest))
