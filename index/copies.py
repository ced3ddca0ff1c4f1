"""Copies of the photos, each under the hash of its contents, so that no photo is kept twice.

A copy appears under its name whole or not at all: it is written beside, flushed to the disk, renamed.
"""

from __future__ import annotations

import hashlib
import os
import re
import tempfile
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from ocr_tags.errors import CatalogueError

_BLOCK = 1 << 20
_HASH = re.compile(r"[0-9a-f]{64}")
_UNFINISHED = ".unfinished-"


def keep(folder: Path, sha256: str, source: Path) -> str:
    """Copy a photo into the folder unless it is there; returns the copy's name below it ("ab/abcd….jpg").

    CatalogueError when the source cannot be read, the copy cannot be written, or the contents are not
    those of the hash: the photo changed after it was read, and its record would point at another picture.
    Only one program may be here at a time: what another left half-written is cleared away.
    """
    if not _HASH.fullmatch(sha256):
        raise CatalogueError(f"{sha256!r} is not the SHA-256 hash of a photo's contents.")
    name = f"{sha256[:2]}/{sha256}{source.suffix.lower()}"
    target = folder / name
    try:
        if target.exists() and target.stat().st_size == source.stat().st_size:
            return name
        target.parent.mkdir(parents=True, exist_ok=True)
        _copy(source, target, sha256)
    except OSError as error:
        place = error.filename or source
        raise CatalogueError(
            f"The photo {source} could not be copied into the catalogue: {error.strerror}, {place}.",
            "Check the file and the room on the disk, then add it again.",
        ) from error
    return name


def _copy(source: Path, target: Path, sha256: str) -> None:
    folder = target.parent.parent
    for left in folder.glob(f"{_UNFINISHED}*"):
        left.unlink(missing_ok=True)
    handle, unfinished = tempfile.mkstemp(dir=folder, prefix=_UNFINISHED)
    try:
        digest = hashlib.sha256()
        with os.fdopen(handle, "wb") as out, source.open("rb") as photo:
            while block := photo.read(_BLOCK):
                digest.update(block)
                out.write(block)
            out.flush()
            os.fsync(out.fileno())
        if digest.hexdigest() != sha256:
            raise CatalogueError(f"The photo {source} has changed since it was read.", "Add it again.")
        Path(unfinished).replace(target)
        _flush_folder(target.parent)
    finally:
        Path(unfinished).unlink(missing_ok=True)


def _flush_folder(folder: Path) -> None:
    """A new name is safe from a power cut only once its folder is flushed; not every system can."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def discard(folder: Path, names: Iterable[str]) -> None:
    """Delete copies; one already gone is no fault."""
    for name in names:
        with suppress(FileNotFoundError):
            (folder / name).unlink()
