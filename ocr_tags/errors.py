"""Every error a user can meet: one sentence that says what and where, and the exit code it ends with.

Doubt is not an error: what could not be read is simply absent from the record.
"""

from __future__ import annotations

from enum import IntEnum


class ExitCode(IntEnum):
    DONE = 0
    OUR_FAULT = 1
    WRONG_USE = 2
    SOME_PHOTOS_FAILED = 3
    NO_READER = 4
    CATALOGUE = 5
    STOPPED = 130


class TagError(Exception):
    """We could not do what was asked. The message is one sentence for the user; `remedy` says what to do."""

    exit_code = ExitCode.WRONG_USE

    def __init__(self, message: str, remedy: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.remedy = remedy

    def __str__(self) -> str:
        return f"{self.message} {self.remedy}".strip()


class PhotoError(TagError):
    """One file cannot be used as a photo; the batch goes on without it."""

    exit_code = ExitCode.SOME_PHOTOS_FAILED


class ReaderError(TagError):
    """Tesseract or its language data is missing or failed."""

    exit_code = ExitCode.NO_READER


class CatalogueError(TagError):
    """The catalogue is locked, damaged, or of a later version."""

    exit_code = ExitCode.CATALOGUE


class QueryError(TagError):
    """A search that cannot be understood."""
