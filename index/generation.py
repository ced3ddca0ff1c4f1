"""The only file that knows Whoosh: one generation of the search index, written, opened and asked.

Opening an index runs pickle, so a folder from a stranger must never be opened. Of Whoosh only what has
been stable for years is used: plain fields of words, one writer, the words of a field, the documents of a
word. Scores are not asked for: what is near is found among the words, what is best by `index.ranking`.

A document is a tag, or a plant that tags are linked to, so that its names are kept once.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from functools import cache, lru_cache
from importlib.resources import files
from pathlib import Path
from typing import Any, NamedTuple

from whoosh import fields
from whoosh.analysis import SpaceSeparatedTokenizer
from whoosh.index import LockError, create_in, open_dir

from index.entries import Entry, Name, Plant, joined
from index.folding import fold, shape
from index.vocabulary import Vocabulary
from ocr_tags.errors import CatalogueError

FORM = 3
"""Raise when what is kept, or how words are folded, changes: older indexes are then built anew."""

_ABOUT = "-about-"
_PLANT = "-plant-"
_KEPT_IN_MEMORY = 1_000_000
_KEPT_READY = 5_000
_WORD_LISTS = ("trade_plants.tsv", "ambiguous.tsv", "plant_names.txt.gz")

Changes = Callable[[int], Iterator[tuple[int, str, Entry | None]]]
"""From a change number to (number, tag id, the tag's entry or None when removed) of all later changes."""
Documents = frozenset[int]

# `words` are the folded words of all names of the tag and its plant; `joined` are neighbouring words run
# together and `names` the shapes of whole names run together, both only of the document's own names.
# "Scorable" only so that their lengths are kept: without, Whoosh asks the disk for them at every posting.
_WORDS, _ONE = fields.ID(analyzer=SpaceSeparatedTokenizer()), fields.ID(unique=True)
_WORDS.scorable = _ONE.scorable = True
_SCHEMA = fields.Schema(
    id=_ONE,
    group=_WORDS,
    words=_WORDS,
    joined=_WORDS,
    names=_WORDS,
    facts=_WORDS,
    kept=fields.STORED(),
)


class Document(NamedTuple):
    """What is kept of a tag, or of a plant: then `tag_id` is empty and `plant` its own key."""

    tag_id: str
    names: tuple[Name, ...]
    plant: str
    sure: bool
    group: str


def build(folder: Path, identity: str, number: int, entries: Iterable[Entry]) -> None:
    """Write a new index into an empty folder. `number` is the last change the entries are sure to hold."""
    with _committed(create_in(str(folder), _SCHEMA).writer(limitmb=64)) as writer:
        plants: set[str] = set()
        for entry in entries:
            if entry.plant and entry.plant.key not in plants:
                plants.add(entry.plant.key)
                writer.add_document(**_plant_fields(entry.plant))
            writer.add_document(**_tag_fields(entry))
        writer.add_document(**_about(identity, number))


class Generation:
    """An opened index. `number` is the last change it has taken, `problem` says why it is of no use.

    Opening or asking a damaged index may raise any exception at all.
    """

    def __init__(self, folder: Path, identity: str) -> None:
        self.name = folder.name
        self._folder = folder
        self._identity = identity
        self._index = open_dir(str(folder))
        self._reader = self._index.reader()
        self._seen: dict[tuple[str, str], Documents] = {}
        self._seen_size = 0
        self._kept: dict[int, Document] = {}
        self._plants_seen: dict[str, Document | None] = {}
        self._vocabulary: Vocabulary | None = None
        self._facts: list[str] | None = None
        (about,) = self.documents("id", _ABOUT)
        form, owner, lists, self.number = self._reader.stored_fields(about)["kept"]
        self.plants = self.documents("facts", _PLANT)
        self.tags: int = self._reader.doc_count() - 1 - len(self.plants)
        self.problem = ""
        if form != FORM:
            self.problem = "it was made by another version"
        elif owner != identity:
            self.problem = "it belongs to another catalogue"
        elif lists != _word_lists():
            self.problem = "the lists of plant names have changed"

    def close(self) -> None:
        with suppress(Exception):
            self._reader.close()

    # ------------------------------------------------------------ changing

    def take(self, changes: Changes, timeout: float) -> None:
        """Write later changes in one commit; this object goes on showing the state before.

        Another program may take them while this one waits for the lock, so the number is read again.
        CatalogueError when the lock is held for longer than `timeout` seconds.
        """
        try:
            writer = self._index.writer(timeout=timeout, limitmb=64)
        except LockError as error:
            raise CatalogueError(
                f"Another program has been updating the search index {self._folder.parent} for more than"
                f" {timeout:g} seconds.",
                "Wait for it to finish, then try again.",
            ) from error
        with _committed(writer):
            latest = Generation(self._folder, self._identity)
            number = latest.number
            new: set[str] = set()
            for later, tag_id, entry in changes(number):
                number = later
                if entry is None:
                    writer.delete_by_term("id", tag_id)
                    continue
                plant = entry.plant
                if plant and plant.key not in new and not latest.plant(plant.key):
                    new.add(plant.key)
                    writer.add_document(**_plant_fields(plant))
                writer.update_document(**_tag_fields(entry))
            latest.close()
            writer.update_document(**_about(self._identity, number))

    # ------------------------------------------------------------ asking

    def documents(self, field: str, word: str) -> Documents:
        """The documents that have a word in a field."""
        asked = (field, word)
        found = self._seen.get(asked)
        if found is None:
            found = frozenset()
            if word and asked in self._reader:
                found = frozenset(self._reader.postings(field, word).all_ids())
            if self._seen_size > _KEPT_IN_MEMORY:
                self._seen.clear()
                self._seen_size = 0
            self._seen[asked] = found
            self._seen_size += len(found) + 1
        return found

    def count(self, word: str) -> int:
        """How many documents have a word in their names."""
        return len(self.documents("words", word))

    def with_tags_of_plants(self, found: Documents) -> Documents:
        """These documents, and the tags of the plants among them."""
        plants = found & self.plants
        return found.union(*(self.documents("group", self.kept(plant).plant) for plant in plants))

    def kept(self, document: int) -> Document:
        """What is kept of a document; of some thousands it is remembered."""
        found = self._kept.get(document)
        if found is None:
            if len(self._kept) >= _KEPT_READY:
                self._kept.clear()
            found = self._kept[document] = self._stored(document)
        return found

    def _stored(self, document: int) -> Document:
        tag_id, names, *rest = self._reader.stored_fields(document)["kept"]
        return Document(tag_id, tuple(Name(*name) for name in names), *rest)

    def plant(self, key: str) -> Document | None:
        """The plant of this key with all its names."""
        if key and key not in self._plants_seen:
            found = self.documents("id", _plant_id(key))
            self._plants_seen[key] = self.kept(min(found)) if found else None
        return self._plants_seen.get(key)

    @property
    def vocabulary(self) -> Vocabulary:
        """All different words of all names."""
        if self._vocabulary is None:
            self._vocabulary = Vocabulary(self._lexicon("words"))
        return self._vocabulary

    @property
    def everything(self) -> Documents:
        """All tags and plants."""
        about = self.documents("id", _ABOUT)
        return frozenset(self._reader.all_doc_ids()) - about

    @property
    def facts(self) -> list[str]:
        """All different facts."""
        if self._facts is None:
            self._facts = self._lexicon("facts")
        return self._facts

    def _lexicon(self, field: str) -> list[str]:
        return [bytes(term).decode("utf-8") for term in self._reader.lexicon(field)]


@contextmanager
def _committed(writer: Any) -> Iterator[Any]:
    """All that is written becomes one commit, or nothing of it does and the lock is free again."""
    try:
        yield writer
        writer.commit()
    finally:
        if not writer.is_closed:
            writer.cancel()


@cache
def _word_lists() -> int:
    """A number that changes with the lists that link names to plants."""
    sums = (zlib.crc32(files("ocr_tags").joinpath("data", name).read_bytes()) for name in _WORD_LISTS)
    return hash(tuple(sums))


def _about(identity: str, number: int) -> dict[str, Any]:
    return {"id": _ABOUT, "kept": (FORM, identity, _word_lists(), number)}


def _plant_id(key: str) -> str:
    return f"{_PLANT}{key}"


def _plant_fields(plant: Plant) -> dict[str, Any]:
    words, together, names = _spellings(plant.names)
    kept = ("", tuple(map(tuple, plant.names)), plant.key, True, "")
    return {
        "id": _plant_id(plant.key), "words": words, "joined": together, "names": names, "facts": [_PLANT],
        "kept": kept,
    }  # fmt: skip


def _tag_fields(entry: Entry) -> dict[str, Any]:
    words, together, names = _spellings(entry.names)
    if entry.plant:
        words = [*words, *_spellings(entry.plant.names)[0]]
    plant = entry.plant.key if entry.plant else ""
    kept = (entry.tag_id, tuple(map(tuple, entry.names)), plant, entry.sure, entry.group)
    shown = {
        "id": entry.tag_id, "group": [entry.group] if entry.group else [], "words": words, "joined": together,
        "names": names, "facts": list(entry.facts),
    }  # fmt: skip
    return {"kept": kept, **{field: value for field, value in shown.items() if value}}


@lru_cache(maxsize=20_000)
def _spellings(names: tuple[Name, ...]) -> tuple[list[str], list[str], list[str]]:
    """Words, neighbours run together, and shapes of whole names run together."""
    folded = [fold(name.text).split() for name in names]
    words = dict.fromkeys(word for each in folded for word in each)
    together = dict.fromkeys(pair for name in names for pair in joined(name))
    whole = dict.fromkeys(shape("".join(each)) for each in folded)
    return list(words), list(together), list(whole)
