"""The only file that knows Whoosh: one generation of the search index, written, opened and asked.

Opening an index runs pickle, so a folder from a stranger must never be opened. Of Whoosh only what has
been stable for years is used: plain fields, one writer, terms joined by And and Or.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import astuple
from pathlib import Path
from typing import Any

from whoosh import fields
from whoosh.analysis import SpaceSeparatedTokenizer
from whoosh.index import LockError, create_in, open_dir
from whoosh.query import And, Or, Term

from index.entries import Entry, Name
from index.folding import fold, shape
from index.query import Question
from index.vocabulary import Vocabulary
from ocr_tags.errors import CatalogueError

FORM = 1
"""Raise when what is kept, or how words are folded, changes: older indexes are then built anew."""

_ABOUT = "-about-"
_POSTINGS = 4_000
_READINGS = 6
_WHOLE_NAME_BOOST = 20.0

Changes = Callable[[int], Iterator[tuple[int, str, Entry | None]]]
"""From a change number to (number, tag id, the tag's entry or None when removed) of all later changes."""

# `names` holds every whole name as one word; the filter fields hold a fact as printed ("4a-9") as one
# word, because tags know so few different ones that a filter can look at each.
_WORDS = fields.TEXT(analyzer=SpaceSeparatedTokenizer(), phrase=False)
_SCHEMA = fields.Schema(
    tag=fields.ID(unique=True),
    names=_WORDS,
    words=_WORDS,
    shapes=_WORDS,
    heights=_WORDS,
    zones=_WORDS,
    light=_WORDS,
    categories=_WORDS,
    suppliers=_WORDS,
    kept=fields.STORED(),
)


def build(folder: Path, identity: str, number: int, entries: Iterable[Entry]) -> None:
    """Write a new index into an empty folder. `number` is the last change the entries are sure to hold."""
    with _committed(create_in(str(folder), _SCHEMA).writer(limitmb=128)) as writer:
        for entry in entries:
            writer.add_document(**_document(entry))
        writer.add_document(tag=_ABOUT, kept=(FORM, identity, number))


class Generation:
    """An opened index. `number` is the last change it has taken, `problem` says why it is of no use.

    Opening or asking a damaged index may raise any exception at all.
    """

    def __init__(self, folder: Path, identity: str) -> None:
        self.name = folder.name
        self._folder = folder
        self._identity = identity
        self._index = open_dir(str(folder))
        self._searcher = self._index.searcher()
        self.tags: int = self._searcher.doc_count() - 1
        form, owner, self.number = self._searcher.search(Term("tag", _ABOUT), limit=1)[0]["kept"]
        self.problem = ""
        if form != FORM:
            self.problem = "it was made by another version"
        elif owner != identity:
            self.problem = "it belongs to another catalogue"
        self._vocabulary: Vocabulary | None = None

    def close(self) -> None:
        with suppress(Exception):
            self._searcher.close()

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
            latest.close()
            for later, tag_id, entry in changes(number):
                number = later
                if entry is None:
                    writer.delete_by_term("tag", tag_id)
                else:
                    writer.update_document(**_document(entry))
            writer.update_document(tag=_ABOUT, kept=(FORM, self._identity, number))

    # ------------------------------------------------------------ asking

    def entries(self, wanted: list[Any], filters: list[Any], limit: int) -> list[Entry]:
        """The entries that fit all parts, at most `limit`, those with rare and near words first."""
        hits = self._searcher.search(And([*wanted, *filters]), limit=limit)
        return [_entry(hit["kept"]) for hit in hits]

    def filters(self, asked: Question) -> list[Any] | None:
        """A part for each filter that was set; None when no record can pass."""
        parts = []
        for field, passes in _tests(asked):
            terms = [Term(field, term) for term in self._lexicon(field) if passes(term)]
            if not terms:
                return None
            parts.append(Or(terms))
        return parts

    def stages(self, words: tuple[str, ...]) -> Iterator[Any]:
        """Parts from the strictest to the loosest; the first with a good answer is the last one to ask."""
        words = tuple(word for word in words if len(word) > 1) or words
        exact = [Term("shapes", shape(word)) for word in words]
        yield Or([Term("names", shape("".join(words)), boost=_WHOLE_NAME_BOOST), And(exact)])
        if beginnings := self._words.beginning(words[-1]):
            yield And([*exact[:-1], Or([Term("words", word) for word in beginnings])])
        for reading in self._words.readings(words)[:_READINGS]:
            yield And([self._near(word, last=place == len(reading)) for place, word in enumerate(reading, 1)])
        if rest := self._without_worst(words):
            yield And([self._near(word, last=False) for word in rest])
        if rarest := self._rarest(words):
            yield Or([Term("shapes", text) for text in rarest])

    def _near(self, word: str, *, last: bool) -> Any:
        terms = [Term("shapes", near.shape, boost=near.fit**4) for near in self._words.near(word)]
        if last:
            terms += [Term("words", start, boost=0.5) for start in self._words.beginning(word)]
        return Or(terms)

    def _without_worst(self, words: tuple[str, ...]) -> list[str]:
        """The words something is near to, but for the one that fits worst."""
        fits = [max((near.fit for near in self._words.near(word)), default=0.0) for word in words]
        worst = fits.index(min(fits))
        return [word for place, word in enumerate(words) if fits[place] > 0 and place != worst]

    def _rarest(self, words: tuple[str, ...]) -> list[str]:
        """Near word shapes, rare ones first, as far as the postings stay few enough to answer at once."""
        reader = self._searcher.reader()
        near = {found.shape for word in words for found in self._words.near(word)}
        chosen: list[str] = []
        total = 0
        for count, text in sorted((reader.doc_frequency("shapes", text), text) for text in near):
            total += count
            if chosen and total > _POSTINGS:
                break
            chosen.append(text)
        return chosen

    @property
    def _words(self) -> Vocabulary:
        if self._vocabulary is None:
            self._vocabulary = Vocabulary(self._lexicon("words"), self._lexicon("shapes"))
        return self._vocabulary

    def _lexicon(self, field: str) -> list[str]:
        return [bytes(term).decode("utf-8") for term in self._searcher.reader().lexicon(field)]


@contextmanager
def _committed(writer: Any) -> Iterator[Any]:
    """All that is written becomes one commit, or nothing of it does and the lock is free again."""
    try:
        yield writer
        writer.commit()
    finally:
        if not writer.is_closed:
            writer.cancel()


def _document(entry: Entry) -> dict[str, Any]:
    names = [fold(name.text) for name in entry.names]
    words = list(dict.fromkeys(word for name in names for word in name.split()))
    suppliers = (fold(name.text).replace(" ", "_") for name in entry.names if name.kind == "supplier")
    texts = {
        "names": " ".join(shape(name.replace(" ", "")) for name in names),
        "words": " ".join(words),
        "shapes": " ".join(dict.fromkeys(map(shape, words))),
        "heights": entry.height,
        "zones": entry.zones,
        "light": " ".join(entry.light),
        "categories": " ".join(entry.categories),
        "suppliers": " ".join(suppliers),
    }
    kept = (entry.tag_id, tuple(map(tuple, entry.names)), *astuple(entry)[2:])
    return {"tag": entry.tag_id, "kept": kept, **{field: text for field, text in texts.items() if text}}


def _entry(kept: tuple[Any, ...]) -> Entry:
    tag_id, names, *facts = kept
    return Entry(tag_id, tuple(Name(*name) for name in names), *facts)


def _tests(asked: Question) -> Iterator[tuple[str, Callable[[str], bool]]]:
    """For each filter that was set: the index field, and which of its words pass."""
    if asked.zones:
        yield "zones", asked.zones.within
    if asked.heights:
        yield "heights", asked.heights.fits
    if asked.light:
        yield "light", asked.light.__eq__
    if asked.category:
        yield "categories", {asked.category, asked.category.removesuffix("s")}.__contains__
    if asked.supplier:
        wanted = set(asked.supplier.split())
        yield "suppliers", lambda term: wanted <= set(term.split("_"))
