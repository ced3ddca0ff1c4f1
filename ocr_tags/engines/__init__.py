"""Pictures in, words out. To add an engine: a new file with an `open_engine`, and a line in `ENGINES`.

An engine knows nothing of tags: it gets grey pictures and a layout, and gives words whose `place` is
in pixels of that picture.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from importlib import import_module
from typing import Literal, Protocol

import numpy as np
from numpy.typing import NDArray

from ocr_tags.errors import ReaderError, TagError
from ocr_tags.record import Word

Grey = NDArray[np.uint8]
Layout = Literal["line", "page", "block", "sparse"]
"""What a picture holds: one line, a page to be analysed, one block of lines, or words anywhere."""


class Engine(Protocol):
    """An opened engine. It may be used again and again, by one thread at a time."""

    name: str

    def describe(self) -> str:
        """Engine, version and model, for the record."""
        ...

    def read(self, pictures: Sequence[Grey], layout: Layout) -> list[list[list[Word]]]:
        """The lines of words of each picture, in the order given.

        Pictures hold dark text on light. ReaderError when the engine fails.
        """
        ...


ENGINES: dict[str, str] = {
    "tesseract": "the Tesseract program, through pytesseract",
    "tesserocr": "the Tesseract library inside the tesserocr wheel",
}
"""Engines by name, in the order they are tried."""

AUTOMATIC = "auto"


def open_engine(name: str = AUTOMATIC, languages: str = "eng", data_folder: str | None = None) -> Engine:
    """The named engine, or the first that works here; ReaderError saying how to get one otherwise."""
    if name == AUTOMATIC:
        return _first_working(languages, data_folder)
    if name not in ENGINES:
        raise TagError(f"There is no reader called '{name}'.", f"Choose one of: {', '.join(ENGINES)}.")
    opener: Callable[[str, str | None], Engine] = import_module(f"ocr_tags.engines.{name}").open_engine
    return opener(languages, data_folder)


def _first_working(languages: str, data_folder: str | None) -> Engine:
    troubles = []
    for name in ENGINES:
        try:
            return open_engine(name, languages, data_folder)
        except ReaderError as error:
            troubles.append(error)
    raise troubles[0]
