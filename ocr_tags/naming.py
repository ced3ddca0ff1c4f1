"""Botanical names found in the text of one side of a tag, with damaged letters put right where that is clear.

A name is trusted for what it says (a known binomial, a quoted cultivar) and for where it stands (after a
label, a line of its own, in running text). In running text only names the lists know are taken, and
never the plants recommended as company.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from ocr_tags import lexicon, repair
from ocr_tags.cultivars import half_quoted
from ocr_tags.foreign_names import genera_called
from ocr_tags.nomenclature import Parsed, read_name
from ocr_tags.patterns import later
from ocr_tags.record import TagText
from ocr_tags.titles import Line, is_noise, lines_of, words_of
from ocr_tags.values import BotanicalName

LABEL = later(
    r"\b(?:(?:botanical|latin|scientific)(?:\s+name)?|bot\.|nom\s+(?:botanique|latin|scientifique)"
    r"|nombre\s+(?:cient[ií]fico|bot[aá]nico)|nome\s+(?:botanico|scientifico)|botanischer\s+name"
    r"|botanische\s+naam|species|pass\w*\s+A(?=[ .:)])\)?)\s*[:.\-–]?[ \t]*(?:\n(?!\n))?",
    re.I,
)
_COMPANY = later(
    r"\b(?:with|beside|near|like|than|and|or|companions?|pairs?|combine|avec|similar|from|of|to)\W*$", re.I
)
_WORD = later(r"(?:[×✕+][ ]?|\b[xX][ ])?[^\W\d_]{3,}(?:-[^\W\d_]+)*")
_LATIN = later(r"(?:us|a|um|is|e|ens|ans|ii|i|ae|oides|or|ix|ax|es|on|os|er|ys|x)$")


_EITHER = later(r"^[A-Z]{2,}[a-z]{2,}(?:[soSOlIBZ]\d|\d[soSOlIBZ])")
CODE = 0.6
"""How sure a raiser's code is with a letter beside its figures that may be a figure as well: "ELLmass3"."""


@dataclass(frozen=True, slots=True)
class Mention:
    """One printing of a botanical name: where it stands, and how far it is to be trusted."""

    name: BotanicalName
    span: tuple[int, int]
    certainty: float
    alone: bool = False
    """Whether it is a line of its own, or labelled."""


def find_names(tag: TagText) -> list[Mention]:
    """Every botanical name on the side that can be trusted at all, in text order.

    >>> [m.name.name for m in find_names(TagText("Meadow Sage\\nSalvia nernorosa 'Sky Lantern'"))]
    ["Salvia nemorosa 'Sky Lantern'"]
    """
    found = list(_labelled_parts(tag.string))
    for line in lines_of(tag):
        reach = _reach(tag.string, line)
        position = line.start
        while mention := _first_in(tag.string, line, position, reach):
            found.append(mention)
            position = max(mention.span[1], position + 1)
            if position >= line.end:
                break
    return _without_overlap(sorted(found, key=lambda mention: mention.span[0]))


_PARTS = later(
    r"\b(?:genus|genre|g[eé]nero|gattung|geslacht)\s*[:\t]\s*(?P<genus>[A-Z][a-z]+)\s+"
    r"(?:species|esp[eè]ce|especie|art|soort)\s*[:\t]\s*(?P<species>[×x]?\s?[a-z-]{3,})(?=\s|$)",
    re.I,
)


def _labelled_parts(string: str) -> Iterator[Mention]:
    """Names printed part by part: "Genus: Salvia", and below it "Species: nemorosa"."""
    for match in _PARTS.finditer(string):
        parsed = read_name(
            f"{match['genus'].capitalize()} {match['species'].lower()}", 0, lexicon.is_binomial
        )
        if parsed and parsed.name.species and "\n\n" not in match[0]:
            yield Mention(parsed.name, (match.start("genus"), match.end()), 0.9, True)


def _without_overlap(found: list[Mention]) -> list[Mention]:
    kept: list[Mention] = []
    for mention in found:
        if kept and mention.span[0] < kept[-1].span[1]:
            continue
        kept.append(mention)
    return kept


def _reach(string: str, line: Line) -> int:
    """How far a name begun in this line may run: into the three lines next beside or below it."""
    end = line.end
    for _ in range(3):
        after = string[end : end + 2]
        if not after or after[0] not in "\n\t" or after == "\n\n":
            break
        ends = [string.find(mark, end + 1) for mark in "\n\t"]
        end = min([at for at in ends if at >= 0], default=len(string))
    return end


def _first_in(string: str, line: Line, position: int, reach: int) -> Mention | None:
    for match in _WORD.finditer(string, position, line.end):
        start = match.start() + len(match[0]) - len(match[0].lstrip())
        mention = _mention_at(string, line, start, reach)
        if mention is not None:
            return mention
    return None


def _mention_at(string: str, line: Line, start: int, reach: int) -> Mention | None:
    labelled = _labelled(string, start)
    text = string[:reach]
    for read in (_known, _repaired, _unknown):
        parsed, trust = read(text, start, line, labelled)
        if parsed is None:
            continue
        certainty, alone = _standing(string, line, start, parsed, trust, labelled)
        if parsed.name.cultivar and _EITHER.search(parsed.name.cultivar):
            certainty = min(certainty, CODE)
        if certainty > 0:
            return Mention(parsed.name, (start, parsed.end), certainty, alone)
    return None


def _labelled(string: str, start: int) -> bool:
    before = string[max(0, start - 40) : start]
    return any(match.end() == len(before) for match in LABEL.finditer(before))


def _probe(text: str, start: int) -> str | None:
    """The text with the genus at `start` given its capital; None when no genus stands there."""
    word = re.match(r"(?:[×✕+][ ]?|[xX][ ])?([^\W\d_]+(?:-[^\W\d_]+)*)", text[start:])
    if word is None or not lexicon.is_genus(word[1]):
        return None
    first = start + word.start(1)
    return text[:first] + text[first].upper() + text[first + 1 :]


def _known(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
    """A name spelt right: a known species, or a genus with nothing that looks like a species behind it."""
    probe = _probe(text, start)
    parsed = read_name(probe, start, lexicon.is_binomial) if probe else None
    if probe is None or parsed is None:
        return None, 0
    name = parsed.name
    if name.genus is None or (name.species and lexicon.is_binomial(name.genus, name.species)):
        return half_quoted(text, line, parsed, 0.96)
    if name.species or probe != text or _with_unknown_species(probe, start):
        return None, 0
    if name.cultivar or name.group or name.trade_designation or name.name.endswith((".", "hybrid")):
        return parsed, 0.93 if parsed.quoted > 1 else 0.85
    half, trust = half_quoted(text, line, parsed, 0.93)
    return (half, trust) if half.quoted else (parsed, 0.7)


def _unknown(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
    """A species no list holds, in a known genus: only on a line of its own or after a label.

    One much like a known species may be that, misread beyond repair: it is trusted less.
    """
    probe = _probe(text, start)
    parsed = _with_unknown_species(probe, start) if probe == text else None
    if parsed is None or not (labelled or _whole(text, line, start, parsed.end)):
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
        len(word) > 3 and _LATIN.search(word) and word not in words_of("english")
    )


def _repaired(text: str, start: int, line: Line, labelled: bool) -> tuple[Parsed | None, float]:
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


_PARTED = later(r"\s*[•·|–—;:(]|\s-\s|,\s")
"""What parts a name that begins a line from what is said of it: Fuchsia 'Sky Lantern' · Hardy fuchsia."""
_RIGHTS = later(
    r"(?:[\s,;.()®™©-]|\b(?:us|u\.s\.?|can\.?|eu|aus)(?=\W|pp)|(?:us)?pp(?:af)?|c?p[bv]raf|c?p[bv]r|copf?"
    r"|plant pat\w*|pat\w*|no\.?|pending|applied for|breeders['’]? rights?|prop\w* prohibited|\d[\d,]{3,})+",
    re.I,
)
"""What is said of a cultivar's protection right behind its name."""


def _whole(text: str, line: Line, start: int, end: int) -> bool:
    before = text[line.start : start].strip(" .,:;-–—'\"|*•(")
    rest = text[end : line.end].strip(" .,:;-–—'\"|*•)")
    return not before and (not rest or bool(_RIGHTS.fullmatch(rest)))


def _standing(
    string: str, line: Line, start: int, parsed: Parsed, trust: float, labelled: bool
) -> tuple[float, bool]:
    """How far place and parts together can be trusted, and whether the name stands alone."""
    name = parsed.name
    bare = (
        not (name.species or name.cultivar or name.group or name.trade_designation) and " " not in name.name
    )
    whole = _whole(string, line, start, parsed.end)
    if labelled:
        return max(trust, 0.9) if not bare else 0.9, True
    if bare:
        return (0.7, True) if whole else (0, False)
    if whole or parsed.end > line.end:
        return trust, True
    before = string[line.start : start]
    parted = not before.strip() and parsed.quoted > 1 and _PARTED.match(string, parsed.end)
    if name.genus and not name.species and not line.title and not parted:
        return (0.6, False) if parsed.quoted else (0, False)
    if line.title or re.search(r"[(–—|:•]\s*$|\s-\s*$", before):
        return trust - 0.03, False
    if _COMPANY.search(before) or (is_noise(before + " x") and len(before.split()) > 2):
        return 0, False
    rest = string[parsed.end : line.end]
    if parted:
        return trust - 0.03, True
    return (0.55 if len(rest.split()) > 2 or before.strip() else 0.8), False


def mentions_in(found: list[Mention], line: Line) -> Iterator[Mention]:
    for mention in found:
        if mention.span[0] < line.end and mention.span[1] > line.start:
            yield mention
