"""Plant names that exist, and which plants have them.

Three lists stand behind it, each explained at its own head (`data/`): the trade table, small, curated and
loaded at once; the ambiguous names; and the long list of published names, loaded when first asked for.
"""

from __future__ import annotations

import gzip
import re
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

from ocr_tags.names.epithets import plain_epithet


def genus_of(name: str) -> str:
    """The genus of a well written name, without its hybrid sign."""
    return name.removeprefix("× ").split()[0]


@dataclass(frozen=True, slots=True)
class Plant:
    """One plant of the trade table. Names are well written: "Petunia × atkinsiana"."""

    name: str
    synonyms: tuple[str, ...]
    common_names: tuple[str, ...]
    kind: str

    @property
    def genus(self) -> str:
        return genus_of(self.name)


@lru_cache(maxsize=8192)
def key(name: str) -> str:
    """The name without case, accents, quotes, hyphens, spaces and hybrid signs.

    >>> key("Lamb’s-Ear"), key("Calibrachoa × hybrida"), key("Étoile"), key("Æsculus")
    ('lambsear', 'calibrachoahybrida', 'etoile', 'aesculus')
    """
    plain = plain_epithet(name.lower())
    plain = re.sub(r"(?<![^\W\d_])x\s+(?=[^\W\d_])|×", " ", plain)
    return "".join(c for c in plain if c.isascii() and c.isalnum())


def _singular(name: str) -> str:
    """The key of the name in the singular, roughly: petunias, pansies, tomatoes."""
    for ending, single in (("ies", "y"), ("oes", "o"), ("s", "")):
        if name.endswith(ending) and not name.endswith("ss"):
            return name.removesuffix(ending) + single
    return name


@lru_cache(maxsize=8192)
def _numbers(common_name: str) -> tuple[str, ...]:
    """Keys under which a list may have this name: as it is, in the singular, in the plural."""
    name = key(common_name)
    plural = (name + "s",) if len(name) > 6 else ()
    return (name, _singular(name), *plural)


# ---------------------------------------------------------------- the trade table


def _rows(file: str) -> list[list[str]]:
    text = files("ocr_tags").joinpath("data", file).read_text("utf-8")
    return [line.split("\t") for line in text.splitlines() if line and not line.startswith("#")]


def _names(cell: str) -> tuple[str, ...]:
    return tuple(name for name in cell.split("|") if name)


@cache
def plants() -> tuple[Plant, ...]:
    """The trade table."""
    return tuple(Plant(row[0], _names(row[1]), _names(row[2]), row[3]) for row in _rows("trade_plants.tsv"))


@cache
def _by_common() -> dict[str, tuple[Plant, ...]]:
    found: dict[str, list[Plant]] = {}
    for plant in plants():
        for name in plant.common_names:
            entry = found.setdefault(key(name), [])
            if plant not in entry:
                entry.append(plant)
    return {name: tuple(entry) for name, entry in found.items()}


@cache
def trade_genera() -> dict[str, tuple[Plant, ...]]:
    """Genus in lower case -> its plants in the trade, under accepted names or synonyms."""
    found: dict[str, list[Plant]] = {}
    for plant in plants():
        for name in (plant.name, *plant.synonyms):
            entry = found.setdefault(genus_of(name).lower(), [])
            if plant not in entry:
                entry.append(plant)
    return {genus: tuple(entry) for genus, entry in found.items()}


@cache
def _by_botanical() -> dict[str, Plant]:
    found = {key(name): plant for plant in plants() for name in plant.synonyms}
    return found | {key(plant.name): plant for plant in plants()}


@cache
def _spellings() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for plant in plants():
        for name in plant.common_names:
            entry = found.setdefault(key(name), [])
            if name not in entry:
                entry.append(name)
    return {name: tuple(entry) for name, entry in found.items()}


@cache
def _ambiguous() -> dict[str, tuple[str, ...]]:
    return {key(row[0]): _names(row[2]) for row in _rows("ambiguous.tsv") if row[1] == "strong"}


def plants_called(common_name: str) -> tuple[Plant, ...]:
    """Trade plants known by this common name, singular or plural; a genus name serves as one too.

    >>> [plant.name for plant in plants_called("Lamb's Ears")]
    ['Stachys byzantina']
    """
    for name in _numbers(common_name):
        if found := _by_common().get(name) or trade_genera().get(name):
            return found
    return ()


def shared_by(common_name: str) -> tuple[str, ...]:
    """The botanical names, not of the trade alone, that are known to share this common name."""
    return _ambiguous().get(key(common_name), ())


def is_trade_name(common_name: str) -> bool:
    """Whether the trade table has this common name (a mere genus does not count)."""
    return any(name in _by_common() for name in _numbers(common_name))


def is_common_name(name: str) -> bool:
    """Whether any of the lists has this common name."""
    return is_trade_name(name) or any(one in _long_common() for one in _numbers(name))


def genera_of(common_name: str) -> frozenset[str]:
    """The genera, old names too, that any of the lists gives this common name."""
    names = [name for plant in plants_called(common_name) for name in (plant.name, *plant.synonyms)]
    names += [name for one in _numbers(common_name) for name in _long_common().get(one, ())]
    return frozenset(map(genus_of, names))


def spelling(common_name: str, printed: str = "") -> str | None:
    """How the trade table writes this common name; of several ways, the one parted like `printed`.

    >>> spelling("BLACKEYEDSUSAN", "Black Eyed Susan"), spelling("moonrise fern")
    ('black-eyed Susan', None)
    """
    known = _spellings().get(key(common_name), ())
    parts = _parts(printed)
    return next((name for name in known if _parts(name) == parts), known[0] if known else None)


def is_well_parted(common_name: str) -> bool:
    """Whether a known name has its spaces and hyphens where one of its spellings has them."""
    known = next((found for name in _numbers(common_name) if (found := _spellings().get(name))), ())
    return not known or any(_parts(name) == _parts(common_name) for name in known)


def _parts(name: str) -> int:
    return len(re.findall(r"[^\s-]+", name))


def plant_named(botanical: str) -> Plant | None:
    """The trade plant with this accepted name or synonym, hybrid sign or not."""
    return _by_botanical().get(key(botanical))


def is_trade_genus(word: str) -> bool:
    return plain_epithet(word.lower()) in trade_genera()


def is_ambiguous(common_name: str) -> bool:
    """Whether several plants of the trade share this common name.

    >>> is_ambiguous("Dusty Miller"), is_ambiguous("Purple Coneflower")
    (True, False)
    """
    name = key(common_name)
    return name in _ambiguous() or _singular(name) in _ambiguous() or len(plants_called(common_name)) > 1


# ---------------------------------------------------------------- the long list


@cache
def _long() -> dict[str, str]:
    packed = files("ocr_tags").joinpath("data", "plant_names.txt.gz").read_bytes()
    lines = gzip.decompress(packed).decode("utf-8").splitlines()
    return {line[: line.index("\t")].lower(): line for line in lines if not line.startswith("#")}


@lru_cache(maxsize=512)
def epithets(genus: str) -> dict[str, tuple[str, ...]]:
    """The epithets of a genus (lower case) in the long list, each with its common names; × marks a hybrid."""
    line = _long().get(genus, "")
    entries = line.split("\t")[3].split(";") if line else []
    found: dict[str, tuple[str, ...]] = {}
    for entry in entries:
        epithet, _, names = entry.partition("=")
        if epithet:
            found[epithet] = _names(names)
    return found


@cache
def _long_common() -> dict[str, tuple[str, ...]]:
    """Key of a common name -> botanical names, from the long list."""
    found: dict[str, tuple[str, ...]] = {}
    for line in _long().values():
        genus, _, names, species = line.split("\t")
        pairs = [(genus, name) for name in _names(names)]
        if "=" in species:
            for entry in species.split(";"):
                epithet, _, own = entry.partition("=")
                pairs.extend((binomial(genus, epithet), name) for name in _names(own))
        for botanical, name in pairs:
            folded = key(name)
            found[folded] = (*found.get(folded, ()), botanical)
    return found


def published_as(common_name: str) -> tuple[str, ...]:
    """The botanical names that the long list gives this common name."""
    return _long_common().get(key(common_name), ())


def binomial(genus: str, epithet: str) -> str:
    """Both words as one name; a hybrid's epithet comes with its sign ("×hybrida")."""
    return f"{genus} × {epithet[1:]}" if epithet.startswith("×") else f"{genus} {epithet}"


@cache
def trade_binomials() -> frozenset[tuple[str, str]]:
    """(genus, epithet) in lower case, of accepted names and synonyms."""
    pairs = set()
    for plant in plants():
        for name in (plant.name, *plant.synonyms):
            words = name.lower().replace("× ", "").split()
            if len(words) > 1:
                pairs.add((words[0], words[1]))
    return frozenset(pairs)


def is_genus(word: str) -> bool:
    """Whether this is a published plant genus (or one the trade still uses)."""
    return is_trade_genus(word) or plain_epithet(word.lower()) in _long()


def is_binomial(genus: str, epithet: str) -> bool:
    """Whether this species, or named hybrid, is known.

    >>> is_binomial("Salvia", "nemorosa"), is_binomial("Salvia", "plants")
    (True, False)
    """
    genus, epithet = genus.lower(), epithet.lower()
    if (genus, epithet) in trade_binomials():
        return True
    known = epithets(genus)
    return epithet in known or "×" + epithet in known


@cache
def words_of(name: str) -> frozenset[str]:
    """One of the lists in `data/name_words.txt`: head, qualifier, stock, doubtful, foreign, answer …"""
    text = files("ocr_tags").joinpath("data", "name_words.txt").read_text("utf-8")
    section = re.search(rf"^\[{name}\]\n((?:(?![\[#]).*\n?)*)", text, re.M)
    return frozenset(section[1].split()) if section else frozenset()
