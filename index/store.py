"""The only file with SQL: records, which photos are whose, people's corrections, and change numbers.

Every change is one transaction that either happened or did not. Each takes the next change number;
whoever derives something from the store (the search index) remembers the last number it took.
"""

from __future__ import annotations

import secrets
import sqlite3
import threading
import time
from collections.abc import Iterable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from typing import Any, NamedTuple

from index.store_errors import is_busy, plain_errors
from ocr_tags.errors import CatalogueError

APPLICATION = 0x0C7A6500
"""SQLite's application id of our files, so that a stranger's database is not taken for a catalogue."""

MIGRATIONS = (
    """
    CREATE TABLE about (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
    CREATE TABLE tags (
        place INTEGER PRIMARY KEY AUTOINCREMENT,
        tag_id TEXT NOT NULL UNIQUE,
        record TEXT NOT NULL
    );
    CREATE TABLE photos (
        sha256 TEXT PRIMARY KEY,
        tag_id TEXT NOT NULL REFERENCES tags (tag_id) ON DELETE CASCADE,
        copy TEXT
    ) WITHOUT ROWID;
    CREATE INDEX photos_by_tag ON photos (tag_id);
    CREATE TABLE corrections (
        tag_id TEXT NOT NULL REFERENCES tags (tag_id) ON DELETE CASCADE,
        field TEXT NOT NULL,
        status TEXT NOT NULL CHECK (status IN ('confirmed', 'corrected')),
        value TEXT NOT NULL,
        PRIMARY KEY (tag_id, field)
    ) WITHOUT ROWID;
    CREATE TABLE changes (number INTEGER PRIMARY KEY AUTOINCREMENT, tag_id TEXT NOT NULL UNIQUE);
    """,
)
"""Each entry takes the schema one version further; PRAGMA user_version counts those done."""


class Correction(NamedTuple):
    """A person's word on one field; `value` is JSON, "null" where the tag says nothing of the kind."""

    field: str
    status: str
    value: str


class Row(NamedTuple):
    """A stored tag: its JSON as read, and what people said about single fields."""

    tag_id: str
    record: str
    corrections: tuple[Correction, ...]


class Store:
    """One SQLite file. Open with `Store(path, timeout)`; may be shared by threads, one at a time inside.

    Every method raises CatalogueError, with its remedy, when the file is locked for longer than
    `timeout` seconds, damaged, full, read-only, or was written by a later version.
    """

    def __init__(self, path: Path, timeout: float) -> None:
        self.path = path
        self._timeout = timeout
        self._lock = threading.RLock()
        with self._plain_errors():
            self._db = sqlite3.connect(path, timeout=timeout, isolation_level=None, check_same_thread=False)
        try:
            with self._plain_errors():
                self._prepare()
        except CatalogueError:
            self._db.close()
            raise
        self.identity: str = self._one("SELECT value FROM about WHERE name = 'identity'")

    def close(self) -> None:
        with self._lock, self._plain_errors():
            self._db.close()

    # ------------------------------------------------------------ schema

    def _prepare(self) -> None:
        # Another program may be making the catalogue right now, in one transaction: asked in this order, a
        # file that was empty at first or bears our mark afterwards is ours.
        empty = not self._pragma("schema_version")
        application, version = self._pragma("application_id"), self._pragma("user_version")
        if application != APPLICATION and not (empty and application == 0):
            raise CatalogueError(f"{self.path} is a database, but not a catalogue.", "Choose another folder.")
        if version > len(MIGRATIONS):
            raise CatalogueError(
                f"The catalogue {self.path.parent} was written by a later version of this program"
                f" (its schema is {version}, this one knows {len(MIGRATIONS)}).",
                "Update this program.",
            )
        self._use_write_ahead_log()
        self._db.execute("PRAGMA synchronous = FULL")
        if version < len(MIGRATIONS):
            self._migrate()
        self._db.execute("PRAGMA foreign_keys = ON")

    def _use_write_ahead_log(self) -> None:
        """SQLite does not wait its timeout for this one switch when another program makes it too."""
        deadline = time.monotonic() + self._timeout
        while True:
            try:
                self._db.execute("PRAGMA journal_mode = WAL")
                return
            except sqlite3.OperationalError as error:
                if not is_busy(error) or time.monotonic() > deadline:
                    raise
                time.sleep(0.02)

    def _migrate(self) -> None:
        with self.transaction():
            for number in range(self._pragma("user_version"), len(MIGRATIONS)):
                for statement in MIGRATIONS[number].split(";"):
                    self._db.execute(statement)
                self._db.execute(f"PRAGMA user_version = {number + 1}")
            self._db.execute(f"PRAGMA application_id = {APPLICATION}")
            self._db.execute("INSERT OR IGNORE INTO about VALUES ('identity', ?)", (secrets.token_hex(8),))

    def _pragma(self, name: str) -> int:
        return int(self._db.execute(f"PRAGMA {name}").fetchone()[0])

    # ------------------------------------------------------------ asking

    def count(self) -> int:
        return int(self._one("SELECT count(*) FROM tags"))

    def standing(self) -> tuple[int, int]:
        """(last change number, how many tags), both of the same moment."""
        found = self._all(
            "SELECT (SELECT coalesce(max(number), 0) FROM changes), (SELECT count(*) FROM tags)"
        )
        return int(found[0][0]), int(found[0][1])

    def changes_after(self, number: int) -> Iterator[tuple[int, str]]:
        """(number, tag id) of the latest change of every tag changed or removed since, oldest first."""
        while rows := self._all(
            "SELECT number, tag_id FROM changes WHERE number > ? ORDER BY number LIMIT 500", number
        ):
            yield from rows
            number = rows[-1][0]

    def ids_starting(self, prefix: str, limit: int) -> list[str]:
        rows = self._all(
            "SELECT tag_id FROM tags WHERE substr(tag_id, 1, ?) = ? ORDER BY tag_id LIMIT ?",
            len(prefix), prefix, limit,
        )  # fmt: skip
        return [row[0] for row in rows]

    def row(self, tag_id: str) -> Row | None:
        found = self._all("SELECT tag_id, record FROM tags WHERE tag_id = ?", tag_id)
        return Row(tag_id, found[0][1], self.corrections(tag_id)) if found else None

    def rows(self, limit: int | None, offset: int) -> Iterator[Row]:
        """Stored tags in the order they were added; a tag removed meanwhile is left out."""
        places = self._all(
            "SELECT place FROM tags ORDER BY place LIMIT ? OFFSET ?", -1 if limit is None else limit, offset
        )
        for (place,) in places:
            for tag_id, record in self._all("SELECT tag_id, record FROM tags WHERE place = ?", place):
                yield Row(tag_id, record, self.corrections(tag_id))

    def corrections(self, tag_id: str) -> tuple[Correction, ...]:
        rows = self._all(
            "SELECT field, status, value FROM corrections WHERE tag_id = ? ORDER BY field", tag_id
        )
        return tuple(Correction(*row) for row in rows)

    def owner(self, sha256: str) -> str | None:
        """The tag a photo belongs to."""
        rows = self._all("SELECT tag_id FROM photos WHERE sha256 = ?", sha256)
        return rows[0][0] if rows else None

    def owners(self, hashes: Iterable[str]) -> list[str]:
        """The tags these photos belong to, first added first."""
        found = {tag_id for sha in hashes if (tag_id := self.owner(sha))}
        rows = [self._all("SELECT place, tag_id FROM tags WHERE tag_id = ?", tag_id)[0] for tag_id in found]
        return [tag_id for _, tag_id in sorted(rows)]

    def photos_of(self, tag_id: str) -> dict[str, str | None]:
        """Content hash to the name of the kept copy (None: no copy) of a tag's photos."""
        return dict(self._all("SELECT sha256, copy FROM photos WHERE tag_id = ?", tag_id))

    def copy_of(self, sha256: str) -> str | None:
        rows = self._all("SELECT copy FROM photos WHERE sha256 = ?", sha256)
        return rows[0][0] if rows else None

    def copies(self) -> list[str]:
        return [row[0] for row in self._all("SELECT copy FROM photos WHERE copy IS NOT NULL")]

    def damage(self) -> str:
        """What SQLite's own check finds wrong, or an empty string."""
        found = "; ".join(row[0] for row in self._all("PRAGMA quick_check(5)"))
        return "" if found == "ok" else found

    # ------------------------------------------------------------ changing

    @contextmanager
    def transaction(self) -> Iterator[None]:
        """All or nothing: waits for other writers up to the timeout, then keeps them out until the end."""
        with self._lock, self._plain_errors():
            self._db.execute("BEGIN IMMEDIATE")
            try:
                yield
                self._db.execute("COMMIT")
            except BaseException:
                if self._db.in_transaction:
                    self._db.execute("ROLLBACK")
                raise

    def put(self, tag_id: str, record: str, copies: dict[str, str | None]) -> None:
        """Write a tag and its photos over whatever was there, and take a number. Inside a transaction."""
        self._db.execute(
            "INSERT INTO tags (tag_id, record) VALUES (?, ?)"
            " ON CONFLICT (tag_id) DO UPDATE SET record = excluded.record",
            (tag_id, record),
        )
        self._db.execute("DELETE FROM photos WHERE tag_id = ?", (tag_id,))
        self._db.executemany(
            "INSERT INTO photos (sha256, tag_id, copy) VALUES (?, ?, ?)",
            [(sha, tag_id, copy) for sha, copy in copies.items()],
        )
        self._number(tag_id)

    def put_correction(self, tag_id: str, correction: Correction) -> None:
        """Write a person's word on one field, and take a number. Inside a transaction."""
        self._db.execute("INSERT OR REPLACE INTO corrections VALUES (?, ?, ?, ?)", (tag_id, *correction))
        self._number(tag_id)

    def drop_correction(self, tag_id: str, field: str) -> bool:
        """Forget a person's word on one field; False when there was none. Inside a transaction."""
        done = self._db.execute(
            "DELETE FROM corrections WHERE tag_id = ? AND field = ?", (tag_id, field)
        ).rowcount
        if done:
            self._number(tag_id)
        return bool(done)

    def drop(self, tag_id: str) -> None:
        """Remove a tag, its photos' rows and its corrections, and take a number. Inside a transaction."""
        self._db.execute("DELETE FROM tags WHERE tag_id = ?", (tag_id,))
        self._number(tag_id)

    def _number(self, tag_id: str) -> None:
        """Only a tag's latest change matters, so its earlier number is given up; numbers never return."""
        self._db.execute("INSERT OR REPLACE INTO changes (tag_id) VALUES (?)", (tag_id,))

    # ------------------------------------------------------------ below

    def _all(self, sql: str, *values: Any) -> list[Any]:
        with self._lock, self._plain_errors():
            return self._db.execute(sql, values).fetchall()

    def _one(self, sql: str) -> Any:
        return self._all(sql)[0][0]

    def _plain_errors(self) -> AbstractContextManager[None]:
        return plain_errors(self.path, self._timeout)
