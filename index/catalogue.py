"""A catalogue of tag records: a folder holding one SQLite file, copies of the photos, and a search index."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from types import TracebackType
from typing import Any, Self

from index import copies
from index.answering import Answers
from index.answers import Added, Files, Found, Health, Hit, PlantHits
from index.corrections import confirmed, corrected, field_named, lay_over
from index.entries import Entry, entry_of
from index.query import Question, ask
from index.search import Progress, Search
from index.store import Row, Store
from ocr_tags.errors import CatalogueError, QueryError
from ocr_tags.record import TagRecord
from ocr_tags.record_json import from_json, to_json


class Catalogue:
    """Use as a context manager; may be shared by threads, which then wait for each other.

    All methods raise CatalogueError when the files are locked, damaged or cannot be written, and
    QueryError when what was asked cannot be understood; both say in one sentence what to do.
    """

    def __init__(self, path: Path, store: Store, timeout: float) -> None:
        self.path = path
        self._store = store
        self._photos = path / "photos"
        self._search = Search(path / "search", _Source(store), timeout)

    @classmethod
    def open(cls, path: Path, *, timeout: float = 10.0) -> Catalogue:
        """The catalogue in the folder `path`, made if it is not there.

        `timeout` is how many seconds to wait for another program that is writing.
        """
        try:
            path.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise CatalogueError(
                f"The catalogue folder {path} cannot be made: {error.strerror}.", "Choose another folder."
            ) from error
        return cls(path, Store(path / "catalogue.sqlite", timeout), timeout)

    def close(self) -> None:
        self._search.close()
        self._store.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def __len__(self) -> int:
        """How many tags there are."""
        return self._store.count()

    # ------------------------------------------------------------ putting in

    def add(self, record: TagRecord, files: Files) -> Added:
        """Keep a record and copies of its photos, in one transaction.

        Photos say which tag it is. All of them known together: the tag stays, and a different reading
        replaces the old one. Fewer than known: nothing changes. More than known (a front first, then
        front and back): the fuller record takes over, and the tag keeps its id. People's corrections
        stay in every case. A photo missing from `files` is recorded without a copy.
        CatalogueError when one of the photos belongs to a tag with other photos not among these.
        """
        hashes = {photo.sha256 for photo in record.photos}
        with self._store.transaction():
            owners = self._store.owners(hashes)
            if not owners and self._store.row(record.tag_id):
                owners = [record.tag_id]
            known = [set(self._store.photos_of(owner)) for owner in owners]
            if len(owners) == 1 and hashes < known[0]:
                return Added(owners[0], new=False, changed=False)
            for owner, theirs in zip(owners, known, strict=True):
                if not theirs <= hashes:
                    raise _shared_photo(record, owner, theirs & hashes)
            return self._put(record, files, owners)

    def _put(self, record: TagRecord, files: Files, owners: list[str]) -> Added:
        tag_id = owners[0] if owners else record.tag_id
        before = {sha: copy for owner in owners for sha, copy in self._store.photos_of(owner).items()}
        kept = {photo.sha256: before.get(photo.sha256) for photo in record.photos}
        for sha256, copy in kept.items():
            source = files.get(sha256)
            if source is not None and (copy is None or not (self._photos / copy).exists()):
                kept[sha256] = copies.keep(self._photos, sha256, source)
        old = self._store.row(tag_id)
        text = _text(replace(record, tag_id=tag_id), old)
        if len(owners) == 1 and old and old.record == text and kept == before:
            return Added(tag_id, new=False, changed=False)
        for other in owners[1:]:
            self._take_over(other, tag_id)
        self._store.put(tag_id, text, kept)
        return Added(tag_id, new=not owners, changed=True)

    def _take_over(self, other: str, tag_id: str) -> None:
        """Two tags turned out to be the sides of one: the earlier keeps its id and has the last word."""
        said = {correction.field for correction in self._store.corrections(tag_id)}
        for correction in self._store.corrections(other):
            if correction.field not in said:
                self._store.put_correction(tag_id, correction)
        self._store.drop(other)

    def add_many(self, records: Iterable[tuple[TagRecord, Files]]) -> list[Added]:
        """Add one after the other, each in its own transaction, then bring the search index up to date."""
        added = [self.add(record, files) for record, files in records]
        self._search.catch_up()
        return added

    def correct(self, tag_id: str, field: str, value: Any) -> TagRecord:
        """Lay a person's value over what was read; returns the record as it now stands.

        `value` is of the field's type or in its JSON shape; None says that the tag has nothing of the kind.
        A field with several readings (common names) takes one value or a list. Reading again keeps it.
        """
        correction = corrected(field, value)
        with self._store.transaction():
            found = self._row(tag_id)
            self._store.put_correction(found.tag_id, correction)
        return self.get(found.tag_id)

    def confirm(self, tag_id: str, field: str | None = None) -> TagRecord:
        """Vouch for what was read in one field, or in all that have a value and no correction yet."""
        with self._store.transaction():
            found = self._row(tag_id)
            record = _record(found)
            said = {correction.field for correction in found.corrections}
            for name in [field] if field else [name for name in record.readings if name not in said]:
                if field is None or name not in said:
                    self._store.put_correction(found.tag_id, confirmed(record, name))
        return self.get(found.tag_id)

    def withdraw(self, tag_id: str, field: str) -> TagRecord:
        """Take a correction or confirmation back: what was read counts again; QueryError for none."""
        with self._store.transaction():
            found = self._row(tag_id)
            if not self._store.drop_correction(found.tag_id, field_named(field).name):
                raise QueryError(f"Nobody has corrected or confirmed {field} of tag {found.tag_id}.")
        return self.get(found.tag_id)

    def remove(self, tag_id: str) -> None:
        """Take a tag out, with its corrections and the copies of its photos."""
        with self._store.transaction():
            found = self._row(tag_id).tag_id
            gone = [copy for copy in self._store.photos_of(found).values() if copy]
            self._store.drop(found)
        with self._store.transaction():  # a second look: another program may just have added them again
            copies.discard(self._photos, set(gone) - set(self._store.copies()))

    # ------------------------------------------------------------ getting out

    def tag_of_photo(self, sha256: str) -> str | None:
        """The id of the tag a photo belongs to, or None when the photo is not in the catalogue."""
        return self._store.owner(sha256)

    def get(self, tag_id: str) -> TagRecord:
        """The record of this id, or of the only id beginning so; QueryError for none or several."""
        return _record(self._row(tag_id))

    def records(self, limit: int | None = None, offset: int = 0) -> Iterator[TagRecord]:
        """Records in the order they were first added."""
        return map(_record, self._store.rows(limit, offset))

    def photo_path(self, sha256: str) -> Path:
        """The kept copy of a photo; CatalogueError when there is none."""
        copy = self._store.copy_of(sha256)
        if copy is None or not (self._photos / copy).is_file():
            raise CatalogueError(f"No copy of photo {sha256[:12]} is kept.", "Add the photo again.")
        return self._photos / copy

    def search(self, words: str = "", *, limit: int = 20, **fields: str | None) -> Found:
        """Tags by any of their names and by what they say, grouped by plant, the best first.

        Names may be misspelt, cut short, in any order; `words` may hold all that `index.query` explains, and
        `fields` are further `field:value` parts (`zone="5"`). At most `limit` tags; QueryError when what was
        asked cannot be understood.
        """
        question = ask(words, **fields)
        found = self._search.find(question, limit)
        if not found.good or not found.plants:
            return self._nearest(question, found, limit)
        return self._found(found)

    def _nearest(self, question: Question, found: Answers, limit: int) -> Found:
        """What comes near: tags of that name that do not say the rest, else those of a name like it."""
        if question.words and question.narrowed:
            named = self._search.find(replace(question, filters=(), phrases=(), without=()), limit)
            if named.good and named.plants:
                return self._found(
                    replace(named, good=False), "The tags of that name do not fit the rest of what was asked."
                )
        if found.plants:
            return self._found(found, "No tag is called so; these come nearest.")
        return Found(
            good=False, note="No tag is called anything like that." if question.words else "No tag says that."
        )

    def _found(self, found: Answers, note: str = "") -> Found:
        plants = []
        for plant in found.plants:
            rows = [(answer, self._store.row(answer.tag_id)) for answer in plant.answers]
            hits = tuple(
                Hit(row.tag_id, _record(row), round(answer.score, 1), answer.why, not found.good)
                for answer, row in rows
                if row is not None
            )
            if hits:
                plants.append(PlantHits(plant.name, hits, plant.total))
        return Found(tuple(plants), found.good, found.shared, found.meant, note)

    def find(self, words: str = "", *, limit: int = 20, **fields: str | None) -> list[Hit]:
        """The same as `search`, as a plain list of tags, the best first."""
        return self.search(words, limit=limit, **fields).hits

    # ------------------------------------------------------------ upkeep

    def rebuild(self, on_progress: Progress | None = None) -> None:
        """Build the search index anew from the records. `on_progress(done, total)` after each record."""
        self._search.rebuild(on_progress)

    def check(self) -> Health:
        """Look for damage: in the database, among the photo copies, in the search index."""
        damage = self._store.damage()
        problems = [f"The database is damaged: {damage}."] if damage else []
        wanted = set(self._store.copies())
        missing = [name for name in sorted(wanted) if not (self._photos / name).is_file()]
        problems += [f"The photo copy {name} is missing." for name in missing]
        number, tags = self._store.standing()
        state = self._search.state()
        if state.problem:
            problems.append(f"The search index will be built anew at the next search: {state.problem}.")
        return Health(
            tags, len(wanted) - len(missing), state.tags, max(0, number - state.number), tuple(problems)
        )

    def _row(self, tag_id: str) -> Row:
        found = self._store.row(tag_id)
        if found is None and tag_id:
            ids = self._store.ids_starting(tag_id, limit=4)
            if len(ids) > 1:
                shown = ", ".join(ids[:3]) + (" and more" if len(ids) > 3 else "")
                raise QueryError(f"Several tags begin with {tag_id!r}: {shown}.", "Give more of the id.")
            found = self._store.row(ids[0]) if ids else None
        if found is None:
            raise QueryError(f"There is no tag {tag_id!r} in this catalogue.", "Search for it by name.")
        return found


class _Source:
    """The store as the search index sees it."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self.identity = store.identity
        self.standing = store.standing
        self.changes_after = store.changes_after

    def entry(self, tag_id: str) -> Entry | None:
        row = self._store.row(tag_id)
        return None if row is None else entry_of(_record(row))

    def entries(self) -> Iterator[Entry]:
        return (entry_of(_record(row)) for row in self._store.rows(None, 0))


def _record(row: Row) -> TagRecord:
    return lay_over(from_json(json.loads(row.record)), row.corrections)


def _text(record: TagRecord, old: Row | None) -> str:
    """The record as stored; a photo known already keeps the file name it first came under."""
    files = {photo["sha256"]: photo["file"] for photo in json.loads(old.record)["photos"]} if old else {}
    photos = tuple(replace(photo, file=files.get(photo.sha256, photo.file)) for photo in record.photos)
    return json.dumps(to_json(replace(record, photos=photos)), ensure_ascii=False, sort_keys=True)


def _shared_photo(record: TagRecord, owner: str, shared: set[str]) -> CatalogueError:
    name = next((photo.file for photo in record.photos if photo.sha256 in shared), None)
    if name is None:
        return CatalogueError(
            f"The id {owner} is taken by a tag with other photos.", "Remove that tag first."
        )
    return CatalogueError(
        f"The photo {name} already belongs to tag {owner}, together with a photo that is not among these.",
        "Remove that tag first if the photos were paired wrongly, then add these again.",
    )
