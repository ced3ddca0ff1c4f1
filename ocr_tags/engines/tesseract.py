"""The only file that knows pytesseract: pictures go to the Tesseract program in lists, words come back.

Starting the program and loading its model is five sixths of the price of reading one line, so all
pictures of one layout go in one call. `OMP_THREAD_LIMIT=1` is set because Tesseract's own threads
double the processor time of a page and get in the way of our worker processes.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import cv2
import pytesseract

from ocr_tags.engines import Layout, Picture
from ocr_tags.errors import ReaderError
from ocr_tags.record import Box, Word

PAGE_MODES: dict[Layout, int] = {"line": 7, "page": 3, "block": 6, "sparse": 11}
INSTALL = (
    "Install it with 'apt-get install tesseract-ocr tesseract-ocr-eng' (Debian, Ubuntu) or "
    "'brew install tesseract' (macOS), or without either with 'pip install ocr-tags[pip-only]'."
)


@dataclass(frozen=True)
class TesseractProgram:
    languages: str
    data_folder: str | None
    version: str
    name: str = "tesseract"
    colour: bool = False

    def describe(self) -> str:
        folder = self.data_folder or "system"
        return f"Tesseract {self.version} through pytesseract, model {self.languages} ({folder})"

    def read(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        if not pictures:
            return []
        with tempfile.TemporaryDirectory(prefix="ocr-tags-") as folder:
            listing = _write_pictures(Path(folder), pictures)
            try:
                table = self._call(listing, layout)
            except pytesseract.TesseractError as error:
                if error.status >= 0:
                    raise ReaderError(f"Tesseract failed: {str(error).strip()[-200:]}.") from error
                return self._around_crash(pictures, layout)
        return _lines_by_picture(table, len(pictures))

    def _around_crash(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        """Some picture crashed the program (it divides by zero on odd shapes): lose only that one."""
        if len(pictures) == 1:
            return [[]]
        half = len(pictures) // 2
        return [*self.read(pictures[:half], layout), *self.read(pictures[half:], layout)]

    def _call(self, listing: Path, layout: Layout) -> dict[str, list[Any]]:
        options = f"--psm {PAGE_MODES[layout]} --dpi 300"
        if layout == "line":
            options += " -c tessedit_do_invert=0"
        if self.data_folder:
            options += f' --tessdata-dir "{self.data_folder}"'
        try:
            table: dict[str, list[Any]] = pytesseract.image_to_data(
                str(listing), lang=self.languages, config=options, output_type=pytesseract.Output.DICT
            )
        except pytesseract.TesseractError:
            raise
        except (RuntimeError, OSError) as error:
            raise ReaderError(f"Tesseract failed: {str(error).strip()[-200:]}.") from error
        return table


def open_engine(languages: str = "eng", data_folder: str | None = None) -> TesseractProgram:
    """The installed Tesseract program; ReaderError when it or a language is missing."""
    os.environ.setdefault("OMP_THREAD_LIMIT", "1")
    command = os.environ.get("OCR_TAGS_TESSERACT", "tesseract")
    pytesseract.pytesseract.tesseract_cmd = command
    if shutil.which(command) is None:
        raise ReaderError("The Tesseract program was not found.", INSTALL)
    version, known = _installed(command, data_folder)
    missing = [language for language in languages.split("+") if language not in known]
    if missing:
        raise ReaderError(
            f"Tesseract has no data for the language '{missing[0]}'.",
            f"Install it (Debian: 'apt-get install tesseract-ocr-{missing[0]}'); it has: {', '.join(known)}.",
        )
    return TesseractProgram(languages, data_folder, version)


@cache
def _installed(command: str, data_folder: str | None) -> tuple[str, tuple[str, ...]]:
    """Version and languages of the program `command`; the command is an argument only for the cache."""
    config = f'--tessdata-dir "{data_folder}"' if data_folder else ""
    try:
        return str(pytesseract.get_tesseract_version()), tuple(pytesseract.get_languages(config=config))
    except (pytesseract.TesseractError, RuntimeError, OSError, SystemExit) as error:
        raise ReaderError(f"The Tesseract program does not run: {error}.", INSTALL) from error


def _write_pictures(folder: Path, pictures: Sequence[Picture]) -> Path:
    names = []
    for number, picture in enumerate(pictures):
        name = folder / f"{number:04d}.pgm"
        cv2.imwrite(str(name), picture)
        names.append(str(name))
    listing = folder / "pictures.txt"
    listing.write_text("\n".join(names) + "\n", encoding="utf-8")
    return listing


def _lines_by_picture(table: dict[str, list[Any]], count: int) -> list[list[list[Word]]]:
    lines: list[dict[tuple[int, int, int], list[Word]]] = [{} for _ in range(count)]
    for row, text in enumerate(table["text"]):
        page = int(table["page_num"][row]) - 1
        if not str(text).strip() or not 0 <= page < count:
            continue
        key = (int(table["block_num"][row]), int(table["par_num"][row]), int(table["line_num"][row]))
        place = Box(*(int(table[side][row]) for side in ("left", "top", "width", "height")))
        word = Word(str(text).strip(), place, place, max(0.0, float(table["conf"][row]) / 100), "tesseract")
        lines[page].setdefault(key, []).append(word)
    return [list(found.values()) for found in lines]
