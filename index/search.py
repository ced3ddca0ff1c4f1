"""Finding records by misspelt and badly read names, with an index that keeps itself up to date.

The index is derived from the store and worth nothing by itself: whatever is wrong with it, it is
built again beside and put in the old one's place. On disk, `search/current` names the folder in use;
one atomic rename of `current` swaps two builds, so another program never meets half an index.
"""

from __future__ import annotations

import secrets
import shutil
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple, Protocol

from index.answering import Answers, answers
from index.entries import Entry
from index.generation import Generation, build
from index.query import Question
from ocr_tags.errors import CatalogueError

_ABANDONED_AFTER_SECONDS = 3600

Progress = Callable[[int, int], None]


class Source(Protocol):
    """Where the index is derived from."""

    identity: str

    def standing(self) -> tuple[int, int]:
        """(last change number, how many tags)."""

    def changes_after(self, number: int) -> Iterator[tuple[int, str]]:
        """(number, tag id) of each tag changed or removed since."""

    def entry(self, tag_id: str) -> Entry | None:
        """What the index keeps of a tag; None when it was removed."""

    def entries(self) -> Iterator[Entry]:
        """All tags."""


class State(NamedTuple):
    """`number`: the last change the index has taken; `problem`: why it will be built anew, or empty."""

    number: int
    tags: int
    problem: str = ""


class Search:
    """The search index in `folder`, derived from `source`; threads sharing it wait for each other."""

    def __init__(self, folder: Path, source: Source, timeout: float) -> None:
        self._folder = folder
        self._source = source
        self._timeout = timeout
        self._lock = threading.RLock()
        self._open: Generation | None = None

    def close(self) -> None:
        with self._lock:
            if self._open:
                self._open.close()
            self._open = None

    def find(self, question: Question, limit: int) -> Answers:
        """The best answers first: the good ones or, when there is none, the nearest."""
        with self._lock:
            generation = self._up_to_date()
            try:
                return answers(generation, question, limit)
            except Exception:  # a torn file shows itself only when it is read
                return answers(self._rebuilt(None), question, limit)

    def catch_up(self) -> None:
        """Take the changes made since; an index that is missing, broken or of another make is built anew."""
        with self._lock:
            self._up_to_date()

    def rebuild(self, on_progress: Progress | None = None) -> None:
        """Build the index anew beside the old one and swap. `on_progress(done, total)` after each record."""
        with self._lock:
            self._rebuilt(on_progress)

    def state(self) -> State:
        """How the index on disk stands, without changing it."""
        with self._lock:
            try:
                found = self._load()
            except Exception as error:
                return State(0, 0, f"it cannot be read ({type(error).__name__})")
            finally:
                self.close()  # the next search must look at it for itself
            return (
                State(found.number, found.tags, found.problem) if found else State(0, 0, "there is none yet")
            )

    # ------------------------------------------------------------ keeping up

    def _up_to_date(self) -> Generation:
        number, _ = self._source.standing()
        if self._open and self._open.name == self._current() and self._open.number == number:
            return self._open
        try:
            found = self._load()
            if found and not found.problem and found.number < number:
                found.take(self._changes, self._timeout)
                found = self._load()
            if found and not found.problem and self._agrees(found):
                return found
        except CatalogueError:
            raise
        except Exception:  # at least six kinds come out of a torn index, pickle's among them
            return self._rebuilt(None)
        return self._rebuilt(None)

    def _agrees(self, found: Generation) -> bool:
        """False when the index is ahead of the store (an older copy of it was put back) or miscounts."""
        number, tags = self._source.standing()
        return found.number < number or (found.number, found.tags) == (number, tags)

    def _changes(self, number: int) -> Iterator[tuple[int, str, Entry | None]]:
        for later, tag_id in self._source.changes_after(number):
            yield later, tag_id, self._source.entry(tag_id)

    def _load(self) -> Generation | None:
        self.close()
        name = self._current()
        self._open = Generation(self._folder / name, self._source.identity) if name else None
        return self._open

    def _rebuilt(self, on_progress: Progress | None) -> Generation:
        self.close()
        folder = self._folder / f"built-{secrets.token_hex(6)}"
        # The number is asked for before the first record: what changes meanwhile is taken again later.
        number, total = self._source.standing()
        try:
            folder.mkdir(parents=True)
            build(folder, self._source.identity, number, _counted(self._source.entries(), total, on_progress))
            self._point_to(folder.name)
        except OSError as error:
            shutil.rmtree(folder, ignore_errors=True)
            raise CatalogueError(
                f"The search index {self._folder} cannot be written: {error.strerror}.",
                "Check the permissions and the room on the disk.",
            ) from error
        except BaseException:
            shutil.rmtree(folder, ignore_errors=True)
            raise
        self._clear_old(folder.name)
        self._open = Generation(folder, self._source.identity)
        return self._open

    # ------------------------------------------------------------ folders

    def _current(self) -> str:
        with suppress(OSError, UnicodeDecodeError):
            name = (self._folder / "current").read_text("utf-8").strip()
            if name == Path(name).name:
                return name
        return ""

    def _point_to(self, name: str) -> None:
        beside = self._folder / f"{name}.current"
        beside.write_text(name, "utf-8")
        beside.replace(self._folder / "current")

    def _clear_old(self, name: str) -> None:
        """Earlier builds; a young one may still be another program's work, which has it open."""
        for path in self._folder.glob("built-*"):
            with suppress(OSError):
                if path.name != name and time.time() - path.stat().st_mtime > _ABANDONED_AFTER_SECONDS:
                    shutil.rmtree(path) if path.is_dir() else path.unlink()


def _counted(entries: Iterator[Entry], total: int, on_progress: Progress | None) -> Iterator[Entry]:
    for count, entry in enumerate(entries, 1):
        yield entry
        if on_progress:
            on_progress(count, max(count, total))
