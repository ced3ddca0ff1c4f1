"""What SQLite's errors mean to the person at the screen."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ocr_tags.errors import CatalogueError

_MEANINGS = (
    (
        {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED},
        "Another program has been writing to {path} for more than {seconds:g} seconds.",
        "Wait for it to finish, then try again.",
    ),
    (
        {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB},
        "The catalogue file {path} is damaged.",
        "Put a backup in its place, or move it away and add the photos again.",
    ),
    (
        {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH},
        "The catalogue file {path} may not be written.",
        "Change its permissions, or copy the folder to a place you may write.",
    ),
    (
        {sqlite3.SQLITE_CANTOPEN},
        "The catalogue file {path} cannot be opened.",
        "Check that the folder exists and that you may read and write it.",
    ),
    (
        {sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR},
        "The disk holding {path} is full or failing.",
        "Make room, then try again; nothing half-written was kept.",
    ),
)


@contextmanager
def plain_errors(path: Path, timeout: float) -> Iterator[None]:
    """Turns any error of SQLite into a CatalogueError that names the file and says what to do."""
    try:
        yield
    except sqlite3.Error as error:
        code = _code(error)
        for codes, message, remedy in _MEANINGS:
            if code in codes:
                raise CatalogueError(message.format(path=path, seconds=timeout), remedy) from error
        raise CatalogueError(f"The catalogue {path} cannot be used: {error}.", "Check the file.") from error


def is_busy(error: sqlite3.Error) -> bool:
    """True when another program holds the lock."""
    return _code(error) == sqlite3.SQLITE_BUSY


def _code(error: sqlite3.Error) -> int:
    """SQLite's primary result code; 0 for errors of the Python module itself."""
    return int(getattr(error, "sqlite_errorcode", 0) or 0) & 0xFF
