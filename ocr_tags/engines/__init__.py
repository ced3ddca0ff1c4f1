"""Pictures in, words out. To add an engine: a new file with an `open_engine`, and a line in `ENGINES`.

An engine knows nothing of tags: it gets pictures and a layout, and gives words whose `place` is in pixels
of that picture.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from importlib import import_module
from typing import Literal, Protocol, TypeAlias, runtime_checkable

import numpy as np
from numpy.typing import NDArray

from ocr_tags.errors import ReaderError, TagError
from ocr_tags.record import Word

Picture: TypeAlias = NDArray[np.uint8]
"""Height x width, grey; or height x width x 3, blue, green, red."""
Layout = Literal["line", "page", "block", "sparse"]
"""What a picture holds: one line, a page to be analysed, one block of lines, or words anywhere."""
Quad: TypeAlias = tuple[tuple[float, float], tuple[float, float], tuple[float, float], tuple[float, float]]


class Engine(Protocol):
    """An opened engine. It may be used again and again, by one thread at a time."""

    @property
    def name(self) -> str: ...

    @property
    def colour(self) -> bool:
        """Whether it reads a line best as photographed; if not, grey and dark on light."""
        ...

    def describe(self) -> str:
        """Engine, version and model, for the record."""
        ...

    def read(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        """The lines of words of each picture, in the order given. ReaderError when the engine fails."""
        ...


@runtime_checkable
class LineFinder(Protocol):
    """An engine that can also say where lines are, whichever way they run."""

    def find_lines(self, picture: Picture, closely: float = 1.0) -> list[Quad]:
        """Each line's four corners in pixels of a colour picture, clockwise, with a little room around it.

        `closely`: how many times the usual area to look at, where a tag is only a part of the picture.
        """
        ...


ENGINES: dict[str, str] = {
    "tesseract": "the Tesseract program, through pytesseract",
    "tesserocr": "the Tesseract library inside the tesserocr wheel",
    "rapidocr": "RapidOCR with the models inside its wheel",
}
"""Engines by name, in the order they are tried."""

KINDS: tuple[tuple[str, ...], ...] = (("tesseract", "tesserocr"), ("rapidocr",))
"""Engines that err differently; of one kind the first that works here is taken."""
AUTOMATIC, BOTH = "auto", "both"


def open_engines(
    name: str = AUTOMATIC, languages: str = "eng", data_folder: str | None = None
) -> tuple[Engine, ...]:
    """The engines that read side by side: `auto` one of each kind that works here, `both` one of every kind,
    any other name that engine alone. ReaderError, saying how to get one, where none or too few work."""
    if name not in (AUTOMATIC, BOTH):
        return (open_engine(name, languages, data_folder),)
    found: list[Engine] = []
    troubles: list[ReaderError] = []
    for kind in KINDS:
        try:
            found.append(_first_working(kind, languages, data_folder))
        except ReaderError as error:
            troubles.append(error)
    if troubles and (name == BOTH or not found):
        raise troubles[0]
    return tuple(found)


def open_engine(name: str, languages: str = "eng", data_folder: str | None = None) -> Engine:
    """The named engine; ReaderError saying how to get it where it is missing."""
    if name not in ENGINES:
        known = ", ".join((AUTOMATIC, BOTH, *ENGINES))
        raise TagError(f"There is no reader called '{name}'.", f"Choose one of: {known}.")
    opener: Callable[[str, str | None], Engine] = import_module(f"ocr_tags.engines.{name}").open_engine
    return opener(languages, data_folder)


def _first_working(kind: Iterable[str], languages: str, data_folder: str | None) -> Engine:
    troubles = []
    for name in kind:
        try:
            return open_engine(name, languages, data_folder)
        except ReaderError as error:
            troubles.append(error)
    raise troubles[0]
