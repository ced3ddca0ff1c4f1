"""Which tags speak of one plant: by botanical name and cultivar, by selling name, by article number.

The rules are those of the codes. The hybrid sign is no part of a name (ICN Art. H.3); a cultivar name
belongs to its genus, so the species may be missing or old (ICNCP); a species is not its cultivar. A name
that several plants share joins nothing: such tags are only said to be perhaps the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal, NamedTuple

from rapidfuzz.distance import OSA

from ocr_tags.gtin import gtin14, is_restricted
from ocr_tags.names.lexicon import genus_of, is_common_name, key
from ocr_tags.names.matching import match_plant
from ocr_tags.record import TagRecord
from ocr_tags.values import BotanicalName

Verdict = Literal["same", "perhaps", "other"]
ALIKE = 0.85
"""Share of letters in common above which two cultivar names may be one that was misread."""


@dataclass(frozen=True, slots=True)
class Identity:
    """What the names on a tag say the plant is. All names are keys: no case, accents, spaces or ×.

    `genera` are the printed genus and the accepted one; `species` is the accepted name down to the
    infraspecific part, empty when only a genus is known. `given` are cultivar and trade designation;
    `beside` is what a common name has before or after the plant's usual ones, which may be a given name
    ("Wrenfold Sentinel Reed Grass") or mere description ("Hardy Hibiscus"). `loose` are names in the
    place of a common one that no list has: perhaps a given name. `line` is series and group.
    """

    tag_id: str
    genera: frozenset[str]
    species: str
    cultivar: str
    given: frozenset[str]
    beside: frozenset[str]
    loose: frozenset[str]
    line: str
    gtins: frozenset[str]
    could_be: frozenset[str] = frozenset()
    """Species keys, when the names on the tag are shared by several plants."""


class Tie(NamedTuple):
    """Whether two tags are of one plant, and why, in words that follow "because"."""

    verdict: Verdict
    why: str = ""


def identity_of(record: TagRecord) -> Identity:
    """The identity by all names on the tag, a person's corrections included."""
    botanical = _botanical(record)
    common = tuple(str(reading.value) for reading in record.readings.get("common_names", ()))
    match = match_plant(common, botanical)
    shared = match is not None and not match.name and bool(match.could_be)
    accepted = (match.name or "") if match else ""
    meant = match.could_be if match and shared else (accepted,)
    genera = {genus_of(name).lower() for name in meant if name}
    below = key(botanical.infraspecific or "") if botanical else ""
    species = key(accepted) if " " in accepted else ""
    if botanical and botanical.genus:
        genera.add(botanical.genus.lower())
        if botanical.species and not species:
            species = key(f"{botanical.genus} {botanical.species}")
    if species and below and not species.endswith(below):
        species += below
    usual = (*(match.common_names if match else ()), *genera)
    parts = (botanical.cultivar, botanical.trade_designation) if botanical else ()
    # A common name in quotes is no cultivar, whatever the quotes say.
    given = [key(part) if part and key(part) not in map(key, usual) else "" for part in parts]
    return Identity(
        record.tag_id,
        frozenset(genera),
        species,
        given[0] if given else "",
        frozenset(given) - {""},
        frozenset(_extra(name, usual) for name in common) - {""},
        frozenset(key(name) for name in common if not (_extra(name, usual) or _is_usual(name, usual))),
        key(" ".join(filter(None, (_series(record), botanical.group if botanical else "")))),
        frozenset(_gtins(record)),
        frozenset(key(name) for name in match.could_be) if match and shared else frozenset(),
    )


def _is_usual(name: str, usual: Sequence[str]) -> bool:
    """Whether a name is the plant's own common name, or one that the lists give to any plant."""
    return key(name) in map(key, usual) or is_common_name(name)


def _botanical(record: TagRecord) -> BotanicalName | None:
    found = record.readings.get("botanical_name", ())
    value = found[0].value if found else None
    return value if isinstance(value, BotanicalName) else None


def _extra(name: str, usual: Sequence[str]) -> str:
    """What a common name says beyond the plant's usual ones, as a key.

    >>> _extra("Brindlow Parasol Panicle Hydrangea", ("panicle hydrangea", "hydrangea"))
    'brindlowparasol'
    >>> _extra("Swamp Maple", ("red maple", "swamp maple", "maple")), _extra("Red Acer", ("maple",))
    ('', '')
    """
    known = {key(each) for each in usual}
    words = name.split()
    if key(name) in known:
        return ""
    for length in range(len(words) - 1, 0, -1):
        if key(" ".join(words[-length:])) in known:
            return key(" ".join(words[:-length]))
        if key(" ".join(words[:length])) in known:
            return key(" ".join(words[length:]))
    return ""


def _series(record: TagRecord) -> str:
    found = record.readings.get("series", ())
    return str(found[0].value) if found else ""


def _gtins(record: TagRecord) -> Iterator[str]:
    """Article numbers to 14 digits, without those a shop gives itself, which mean nothing elsewhere."""
    for reading in record.readings.get("gtin", ()):
        digits = "".join(c for c in str(reading.value) if c.isdigit())
        if 8 <= len(digits) <= 14 and not is_restricted(digits):
            yield gtin14(digits)


# ---------------------------------------------------------------- two tags


def tie(one: Identity, other: Identity) -> Tie:
    """Whether two tags are of one plant."""
    named = _by_name(one, other)
    if one.gtins & other.gtins:
        if named.verdict == "other" and one.genera and other.genera:
            return Tie("perhaps", "they bear the same article number, but other names")
        return Tie("same", "they bear the same article number")
    return named


def _by_name(one: Identity, other: Identity) -> Tie:
    if one.could_be or other.could_be:
        return _by_shared_name(one, other)
    if not one.genera & other.genera:
        return Tie("other")
    if one.species and other.species and one.species != other.species:
        same = one.cultivar and one.cultivar == other.cultivar
        return Tie("perhaps", "the cultivar is the same but the species is not") if same else Tie("other")
    if one.cultivar and other.cultivar:
        return _by_cultivar(one, other)
    names = one.given | one.beside | one.loose, other.given | other.beside | other.loose
    if one.given & names[1] or other.given & names[0]:
        return Tie("same", "both bear the same given name")
    if one.given or other.given or one.beside != other.beside or one.line != other.line:
        # A species is not its cultivar, nor one colour of a series another.
        return Tie("perhaps", "one given name may be cut short") if _begun(*names) else Tie("other")
    if not one.species or one.species != other.species:
        return Tie("other")
    if one.loose != other.loose:
        return Tie("perhaps", "one has a further name that may be that of a cultivar")
    return Tie("same", "both name the species and no cultivar")


def _begun(ones: frozenset[str], others: frozenset[str]) -> bool:
    """Whether a name of one is the beginning of a name of the other."""
    pairs = ((min(a, b, key=len), max(a, b, key=len)) for a in ones for b in others if a != b)
    return any(len(short) > 3 and long.startswith(short) for short, long in pairs)


def _by_cultivar(one: Identity, other: Identity) -> Tie:
    if one.cultivar == other.cultivar:
        return Tie("same", "genus and cultivar are the same")
    digits = [[c for c in each.cultivar if c.isdigit()] for each in (one, other)]
    alike = OSA.normalized_similarity(one.cultivar, other.cultivar) >= ALIKE
    if alike and digits[0] == digits[1]:
        return Tie("perhaps", "the cultivar names are almost the same; one may be misread")
    return Tie("other")


def _by_shared_name(one: Identity, other: Identity) -> Tie:
    ones, others = one.could_be or {one.species}, other.could_be or {other.species}
    names = one.given | one.beside, other.given | other.beside
    if not (ones & others or one.genera & other.genera) or (all(names) and not names[0] & names[1]):
        return Tie("other")
    return Tie("perhaps", "one has only a common name that several plants share")


# ---------------------------------------------------------------- many tags


@dataclass(frozen=True, slots=True)
class Group:
    """Tags of one plant, and the reasons for taking them together, each once."""

    tag_ids: tuple[str, ...]
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Grouping:
    """Groups of two and more, and the pairs that may be one plant but are kept apart."""

    groups: tuple[Group, ...]
    perhaps: tuple[tuple[str, str, str], ...]


def group(identities: Sequence[Identity]) -> Grouping:
    """Tags put together where their names or numbers say so; never two cultivars in one group."""
    sets: dict[str, list[Identity]] = {each.tag_id: [each] for each in identities}
    reasons: dict[str, dict[str, None]] = {each.tag_id: {} for each in identities}
    perhaps: list[tuple[str, str, str]] = []
    for one, other in _candidates(identities):
        found = tie(one, other)
        if found.verdict == "perhaps":
            perhaps.append((one.tag_id, other.tag_id, found.why))
        elif found.verdict == "same":
            first, second = sets[one.tag_id], sets[other.tag_id]
            if first is second:
                reasons[first[0].tag_id][found.why] = None
            elif clash := _clash(first, second):
                perhaps.append((one.tag_id, other.tag_id, clash))
            else:
                why = reasons[first[0].tag_id] | {found.why: None} | reasons[second[0].tag_id]
                first.extend(second)
                sets.update({each.tag_id: first for each in second})
                reasons[first[0].tag_id] = why
    together = {id(each): each for each in sets.values()}.values()
    groups = [
        Group(tuple(each.tag_id for each in members), tuple(reasons[members[0].tag_id]))
        for members in together
        if len(members) > 1
    ]
    apart = [pair for pair in perhaps if sets[pair[0]] is not sets[pair[1]]]
    return Grouping(tuple(groups), tuple(apart))


def _candidates(identities: Sequence[Identity]) -> Iterator[tuple[Identity, Identity]]:
    """Pairs worth a look: those that share a genus or an article number, each pair once."""
    shelves: dict[str, list[Identity]] = {}
    for each in identities:
        for word in each.genera | each.gtins:
            shelves.setdefault(word, []).append(each)
    seen: set[tuple[str, str]] = set()
    for shelf in shelves.values():
        for one, other in combinations(shelf, 2):
            if (one.tag_id, other.tag_id) not in seen:
                seen.add((one.tag_id, other.tag_id))
                yield one, other


def _clash(ones: Sequence[Identity], others: Sequence[Identity]) -> str:
    """Why two groups must stay apart although two of their tags agree, or ""."""
    cultivars = {each.cultivar for each in (*ones, *others) if each.cultivar}
    if len(cultivars) > 1:
        return "one given name is used for two cultivars"
    species = {each.species for each in (*ones, *others) if each.species}
    return "one given name is used for two species" if len(species) > 1 else ""
