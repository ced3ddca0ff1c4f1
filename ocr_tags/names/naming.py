"""Botanical names found in the text of one side of a tag, with damaged letters put right where that is clear.

A name is trusted for what it says (a known binomial, a quoted cultivar) and for where it stands (after a
label, a line of its own, in running text). In running text only names the lists know are taken, and
never the plants recommended as company.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ocr_tags.names import lexicon
from ocr_tags.names.mixtures import without_parts
from ocr_tags.names.nomenclature import Parsed, read_name
from ocr_tags.names.readings import OLDER, is_whole, read_known, read_repaired, read_unknown
from ocr_tags.names.titles import Line, is_noise, lines_of
from ocr_tags.patterns import later
from ocr_tags.record import TagText
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


WORDS_BEFORE = 4
"""Behind so many words in its line a name that goes on below is part of a sentence."""
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
    for line in without_parts(lines_of(tag)):
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
    for read in (read_known, read_repaired, read_unknown):
        parsed, trust = read(text, start, line, labelled)
        if parsed is None or _ends_another(string[line.start : start], parsed.name):
            continue
        certainty, alone = _standing(string, line, start, parsed, trust, labelled)
        if parsed.name.cultivar and _EITHER.search(parsed.name.cultivar):
            certainty = min(certainty, CODE)
        if certainty > 0:
            return Mention(parsed.name, (start, parsed.end), certainty, alone)
    return None


def _ends_another(before: str, name: BotanicalName) -> bool:
    """Whether a genus is the last word of a known common name of another plant: "Zonal Geranium"."""
    if not before.strip() or name.species or not name.genus:
        return False
    genera = lexicon.genera_of(f"{before.strip()} {name.genus}")
    return bool(genera) and name.genus not in genera


def _labelled(string: str, start: int) -> bool:
    before = string[max(0, start - 40) : start]
    return any(match.end() == len(before) for match in LABEL.finditer(before))


_OTHERS = later(
    r"\b(?:not|unlike|confus\w+|mistak\w+|relat(?:ed|ives?|ion)|cousins?|rather than|instead of|resembl\w+"
    r"|looks? like|companions?|neighbou?rs?|partners?|combine|pair|plant(?:ed)? (?:with|near|beside)|try)"
    r"\b[^.;!?]{0,60}$",
    re.I,
)
"""Words of a sentence that speaks of another plant, before its name."""
_INTRODUCED = later(
    r"\b(?:(?:I['’]?\s?a?m|we(?: a|['’])re|meet|this is|these are|say hello to|introducing|call(?:s|ed)? me"
    r"|(?:you(?:['’]ve| have)|just) bought|name(?: is|['’]s)|properly|botanically|scientifically|in latin"
    r"|known as|it is|it['’]s)"
    r"(?:\s+(?:an?|the|your|called|properly|really|botanically|new))?)[\s,:–-]*$",
    re.I,
)
"""How a sentence presents the tag's own plant: I'm Ocimum basilicum 'Sky Lantern' and I like it warm."""
_BEHIND = later(r"[(–—|:•·/]\s*$|\s-\s*$")
_PARTED = later(r"\s*[•·|–—;:(]|\s-\s|,\s")
"""What parts a name that begins a line from what is said of it: Fuchsia 'Sky Lantern' · Hardy fuchsia."""


_UNREAD = later(r"[ \n]?['‘’“\"`„][ ]?[^\W_]{2}|[ \n][A-Z]{3,}[a-z]{2,}\d*\b")
UNREAD = 0.75
"""Certainty of a name behind which a quote opens, or a raiser's code stands, that make no cultivar: part of
the name is not read."""
_SENTENCE = later(r"(?:^|[.!?]|\n\n)\s*$")
_SUBJECT = later(
    r"(?:\.(?=\s|$)|\s(?:is|was|has|grows|likes|loves|needs|makes|blooms|flowers|gives|bears|comes|stays)\b)"
    r"(?![^.!?]{0,80}\b(?:companions?|partners?|neighbou?rs?|beside|alternative|instead|better)\b)"
)


def _is_subject(string: str, start: int, end: int) -> bool:
    """Whether a whole name begins a sentence that says what this plant is or does."""
    before = string[max(0, start - 90) : start]
    return bool(_SENTENCE.search(before) and _SUBJECT.match(string, end))


def _standing(
    string: str, line: Line, start: int, parsed: Parsed, trust: float, labelled: bool
) -> tuple[float, bool]:
    """How far place and parts together can be trusted, and whether the name stands alone."""
    name = parsed.name
    bare = (
        not (name.species or name.cultivar or name.group or name.trade_designation) and " " not in name.name
    )
    whole = is_whole(string, line, start, parsed.end)
    if labelled:
        return max(trust, 0.9) if not bare else 0.9, True
    if bare:
        return (0.7, True) if whole else (0, False)
    if not name.cultivar and _UNREAD.match(string, parsed.end):
        trust = min(trust, UNREAD)
    before = string[line.start : start]
    other = before.strip() and _OTHERS.search(string[max(0, start - 90) : start])
    # What leads to it may end the line above: "Old books call it / Rosmarinus officinalis".
    above = string[:start].endswith("\n") and not string[:start].endswith("\n\n")
    led_from = max(0, string.rfind("\n", 0, start - 1) + 1) if above else line.start
    if other or any(match.end() == start for match in OLDER.finditer(string, led_from, start)):
        return 0, False
    if whole or (parsed.end > line.end and (parsed.quoted or len(before.split()) < WORDS_BEFORE)):
        return trust, True
    if _INTRODUCED.search(before) and (name.species or parsed.quoted > 1):
        return trust - 0.03, False
    if parsed.quoted > 1 and name.species and _is_subject(string, start, parsed.end):
        return trust - 0.1, False
    parted = not before.strip() and parsed.quoted > 1 and _PARTED.match(string, parsed.end)
    behind = _BEHIND.search(before)
    closes = behind and parsed.quoted > 1 and not string[parsed.end : line.end].strip(" .,)")
    if name.genus and not name.species and not line.title and not parted and not closes:
        return (0.6, False) if parsed.quoted else (0, False)
    if line.title or behind:
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
