"""Botanical names taken apart and written well, by the codes of nomenclature.

The rules are those of the International Code of Nomenclature for algae, fungi, and plants (ICN, Shenzhen
Code 2018: Art. 20, 23, 24 and Appendix H) and of the International Code of Nomenclature for Cultivated
Plants (ICNCP, 9th edition, 2016). What tags print against the codes (double quotes, "cv.", the letter x,
capitals throughout) is read too, and written out as the codes want it.

Nothing here knows which plants exist: callers who do pass `accepts`, which says whether a word can be
the epithet of a genus.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from ocr_tags.names.epithets import CAPITAL, OPENING, plain_epithet, read_cultivar, tidy_epithet
from ocr_tags.patterns import later
from ocr_tags.values import BotanicalName

Accepts = Callable[[str, str], bool]
"""(genus, word, both in lower case) -> can this word be an epithet in this genus?"""

_LOW = "a-zß-öø-ÿšžœ"

_HYBRID = r"(?:[×✕✖╳]\s*|[xX]\s+)"
_GENUS = later(
    rf"(?P<cross>[×✕✖+]\s*|[xX]\s+|x(?=[A-Z]))?(?P<genus>[{CAPITAL}][{_LOW}]+(?:-[{_LOW}]+)?|[{CAPITAL}]{{3,}})\b"
)
# Readers lose the spaces around it: Anemone× hybrida'Sky Lantern', Pisum sativumSky Lantern.
_EPITHET = later(
    rf"(?:\s+|(?=[×✕✖╳]))(?P<cross>{_HYBRID})?"
    rf"(?P<word>[{_LOW}]+(?:-[{_LOW}]+)*(?=[{CAPITAL}][{_LOW}])|[{_LOW}{CAPITAL}]+(?:-[{_LOW}{CAPITAL}]+)*(?!\w))"
    rf"(?!['’](?![{CAPITAL}]))"
)
_UNSURE = later(r"[ ]+(spp?\b\.?|hybrids?\b|hyb\.)", re.I)
_CROSSED = later(rf"\s+(?:[×✕✖╳]|[xX])(?=\s*[{re.escape(OPENING)}][{CAPITAL}])")
_RANK = later(
    rf"\s+(?P<rank>(?:notho)?(?:subsp|ssp|subvar|subf|var|fo|f))(?:\.\s*|\s+)"
    rf"(?P<word>[{_LOW}{CAPITAL}]+(?:-[{_LOW}{CAPITAL}]+)*)(?!\w)",
    re.I,
)
_PERSON = rf"(?:[{CAPITAL}]\. ?)*(?:de |du |von )?[{CAPITAL}][{_LOW}]*\.?(?: ?f\.)?"
_PEOPLE = rf"{_PERSON}(?:(?: ?&| et| ex) {_PERSON})*"
_AUTHOR = later(rf"[ ]+(?:\({_PEOPLE}\)(?: ?{_PEOPLE})?|hort\.|{_PEOPLE})(?=\s|,|$)")
_GROUP = later(
    rf"(?:[ ]+|[ ]?\n)(?P<open>\()?(?P<words>[{CAPITAL}][\w’'-]*(?:\s[{CAPITAL}][\w’'-]*){{0,2}})"
    r"\s(?P<kind>[Gg]roup|GROUP|Grp?\b\.?|grex|gx)\b\)?"
)
_MARKED = later(
    rf"[ ]+\(?(?P<words>[{CAPITAL}][\w’'!-]*(?:\s[{CAPITAL}0-9][\w’'!-]*){{0,3}})"
    r"\s?(?:[™®]|\((?:TM|R)\))\)?(?!\s*[Ss](?:eries|ERIES))"
)
_BRACKETED = later(
    rf"[ ]+(?P<words>[{CAPITAL}][\w’'-]*(?:\s[{CAPITAL}][\w’'-]*){{0,2}})[ ]\((?=[{re.escape(OPENING)}])"
)
"""A selling name before its cultivar in brackets: Rosa Harbour Lantern ('Tenquil')."""
_CAPITALS = later(
    r"[ ]+(?!(?:US)?PP|P[BV]R|COPF|EU\b)"
    rf"(?P<words>[{CAPITAL}][{CAPITAL}’'-]{{2,}}(?:\s[{CAPITAL}0-9][{CAPITAL}0-9’'!-]*){{0,3}})(?=\s|$)"
)
_FORMULA = later(rf"\s+[×xX✕]\s+(?=[{CAPITAL}][{_LOW}]*\.?\s?[{_LOW}])")
_SECOND = later(rf"(?P<genus>[{CAPITAL}](?:[{_LOW}]+|\.))\s?(?P<word>[{_LOW}]+(?:-[{_LOW}]+)*)(?!\w)")

_RANKS = {
    "ssp": "subsp.",
    "subsp": "subsp.",
    "var": "var.",
    "f": "f.",
    "fo": "f.",
    "subvar": "subvar.",
    "subf": "subf.",
}


@dataclass(frozen=True, slots=True)
class Parsed:
    """A name found in a text, and where it ends. `quoted` is how many of the cultivar's quotes were seen."""

    name: BotanicalName
    end: int
    quoted: int = 0


def parse(text: str) -> BotanicalName | None:
    """The botanical name that is the whole of `text`, or None when it is not one.

    >>> parse("Salvia nemorosa 'Caradonna'").cultivar
    'Caradonna'
    >>> parse("CALIBRACHOA X HYBRIDA").name
    'Calibrachoa × hybrida'
    >>> parse("Sarcococca hookeriana var digyna").infraspecific
    'var. digyna'
    >>> parse("Plant in spring after frost") is None
    True
    """
    stripped = text.strip()
    parsed = read_name(stripped, 0)
    if parsed is None or stripped[parsed.end :].strip(" .,;"):
        return None
    return parsed.name


def read_name(text: str, start: int, accepts: Accepts = lambda genus, word: True) -> Parsed | None:
    """The longest botanical name beginning at `start`; None when no genus stands there.

    A lone genus counts. Authors are passed over; trade designations are kept apart from the name, of
    which, by the code (ICNCP), they are no part.
    """
    match = _GENUS.match(text, start)
    if match is None:
        return None
    genus = plain_epithet(match["genus"].lower()).capitalize()
    cross = (match["cross"] or "").strip()
    name = BotanicalName(name="", genus=genus, hybrid=bool(cross) and cross != "+")
    end = match.end()
    capitals = match["genus"].isupper()

    name, end = _read_epithets(text, end, name, accepts, capitals)
    formula = _read_formula(text, end, name)
    if formula is not None:
        return formula
    end = _skip_authors(text, end, name)
    name, end, quoted, unsure = _read_cultivated(text, end, name, capitals)
    prefix = "+" if cross == "+" else "× " if name.hybrid and cross else ""
    written = write(name, prefix) + (f" {unsure}" if unsure and not (name.cultivar or name.group) else "")
    return Parsed(replace(name, name=written), end, quoted)


def write(name: BotanicalName, before_genus: str = "") -> str:
    """The parts written as the codes want them, without the trade designation.

    >>> write(BotanicalName("", "Salix", "capreola", hybrid=True))
    'Salix × capreola'
    """
    parts = [before_genus + (name.genus or "")]
    if name.species:
        parts.append(f"× {name.species}" if name.hybrid and not before_genus else name.species)
    if name.infraspecific:
        parts.append(name.infraspecific)
    if name.group:
        parts.append(f"({name.group})" if name.cultivar else name.group)
    if name.cultivar:
        parts.append(f"'{name.cultivar}'")
    return " ".join(part for part in parts if part)


def _read_epithets(
    text: str, end: int, name: BotanicalName, accepts: Accepts, capitals: bool
) -> tuple[BotanicalName, int]:
    genus = (name.genus or "").lower()
    match = _EPITHET.match(text, end)
    if match and _case_fits(match["word"], capitals) and not _is_rank(match["word"]):
        word, cross = plain_epithet(match["word"].lower()), bool(match["cross"])
        word, joined = _unjoin(genus, word, accepts)
        if len(word) > 2 and not _UNSURE.match(f" {word}") and (cross or accepts(genus, word)):
            name = replace(name, species=word, hybrid=name.hybrid or cross or joined)
            end = match.end()
    below: list[str] = []
    while name.species and (match := _RANK.match(text, _skip_authors(text, end, name))):
        if not _case_fits(match["word"], capitals):
            break
        rank = match["rank"].lower()
        plain = rank.removeprefix("notho")
        below.append(
            ("notho" if plain != rank else "") + f"{_RANKS[plain]} {plain_epithet(match['word'].lower())}"
        )
        end = match.end()
    if below:
        name = replace(name, infraspecific=" ".join(below))
    return name, end


def _case_fits(word: str, capitals: bool) -> bool:
    return word.islower() or (capitals and word.isupper())


def _is_rank(word: str) -> bool:
    return word.lower().removeprefix("notho") in _RANKS


def _unjoin(genus: str, word: str, accepts: Accepts) -> tuple[str, bool]:
    """Part a joined x from its epithet: no Greek or Latin word begins with x and a consonant."""
    if word.startswith("x") and len(word) > 4:
        if word[1] not in "aeiouy":
            return word[1:], True
        if not accepts(genus, word) and accepts(genus, word[1:]):
            return word[1:], True
    return word, False


def _read_formula(text: str, end: int, name: BotanicalName) -> Parsed | None:
    """`Salix aurita × S. caprea`: a hybrid with no name of its own (ICN Art. H.2)."""
    cross = _FORMULA.match(text, end)
    other = cross and _SECOND.match(text, cross.end())
    if not (cross and other and name.species):
        return None
    same = other["genus"].rstrip(".") in (name.genus or "")[: len(other["genus"].rstrip("."))]
    second = f"{other['genus']} {other['word']}"
    written = f"{write(replace(name, hybrid=False))} × {second}"
    return Parsed(BotanicalName(written, name.genus if same else None, hybrid=True), other.end())


def _skip_authors(text: str, end: int, name: BotanicalName) -> int:
    """Past the authors of a species. A bare capitalised word may be a cultivar: it stays."""
    match = _AUTHOR.match(text, end) if name.species else None
    if match and re.search(r"[.&(]|\bex\b|\bet\b", match[0]) and not re.match(r"\s+[cC]v\.", match[0]):
        return match.end()
    return end


def _read_cultivated(
    text: str, end: int, name: BotanicalName, capitals: bool
) -> tuple[BotanicalName, int, int, str]:
    """Group, grex, trade designation and cultivar, in whatever order they come."""
    quoted, unsure = 0, ""
    if not name.species and (match := _UNSURE.match(text, end)):
        end = match.end()
        word = match[1].lower().rstrip(".")
        unsure = word + "." if word in ("sp", "spp") else "hybrid" if word == "hyb" else word
        name = replace(name, hybrid=name.hybrid or word.startswith("hyb"))
    if not name.species and (match := _CROSSED.match(text, end)):  # Rosa × 'Sky Lantern'
        name, end = replace(name, hybrid=True), match.end()
    for _ in range(4):
        if name.group is None and (match := _GROUP.match(text, end)):
            kind = "grex" if match["kind"].lower() in ("grex", "gx") else "Group"
            name, end = replace(name, group=f"{tidy_epithet(match['words'])} {kind}"), match.end()
        elif name.cultivar is None and (cultivar := read_cultivar(text, end)):
            name, end, quoted = replace(name, cultivar=cultivar[0]), cultivar[1], cultivar[2]
        elif name.trade_designation is None and (match := _MARKED.match(text, end)):
            name, end = replace(name, trade_designation=tidy_epithet(match["words"])), match.end()
        elif (
            name.cultivar is None
            and (match := _BRACKETED.match(text, end))
            and (cultivar := read_cultivar(text, match.end()))
            and text[cultivar[1] : cultivar[1] + 1] == ")"
        ):
            name = replace(name, trade_designation=tidy_epithet(match["words"]), cultivar=cultivar[0])
            end, quoted = cultivar[1] + 1, cultivar[2]
        elif name.trade_designation is None and not capitals and (match := _CAPITALS.match(text, end)):
            # Capitals alone prove nothing: only beside a quoted cultivar are they a selling name.
            if not (name.cultivar or read_cultivar(text, match.end())):
                break
            name, end = replace(name, trade_designation=tidy_epithet(match["words"])), match.end()
        else:
            break
    return name, end, quoted, unsure
