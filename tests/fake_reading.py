"""Stands in for the reading engine: a photo's text stands in a file beside it ("x.jpg" has "x.txt").

A module of its own because worker processes must be able to import what they run.
"""

from __future__ import annotations

import os
import time
from pathlib import Path

from ocr_tags.batch import Job, PhotoRead
from ocr_tags.claims.of_side import claims
from ocr_tags.errors import PhotoError, ReaderError
from ocr_tags.fields import FIELDS
from ocr_tags.pictures.photos import PhotoFile, open_photo
from ocr_tags.pipeline import SideRead
from ocr_tags.record import LineSpan, Photo, TagText
from ocr_tags.settings import Settings


def side_of(text: str, file: str = "x.jpg", sha256: str = "0" * 64, taken_at: str | None = None) -> SideRead:
    """A side whose first line is its title, read without fault."""
    lines = [
        LineSpan(line.start, line.end, 2.5 if number == 0 else 1.0, line.level)
        for number, line in enumerate(TagText(text).lines)
    ]
    both = [TagText(text, lines=tuple(lines), reader=reader) for reader in ("tesseract", "rapidocr")]
    shown = tuple(text[line.start : line.end] for line in lines)
    return SideRead(
        photo=Photo("front", file, sha256, 100, 100, taken_at),
        claims={field.name: claims(both, field) for field in FIELDS},
        lines=shown,
        title=shown[0] if shown else None,
        word_count=len(text.split()),
        readers=("fake",),
    )


def read(job: Job) -> list[PhotoRead]:
    return [read_one(photo, job.settings) for photo in job.group.photos]


def read_one(photo: PhotoFile, settings: Settings) -> PhotoRead:
    try:
        opened = open_photo(photo.path, photo.name, settings)
    except PhotoError as error:
        return error
    text = photo.path.with_suffix(".txt").read_text("utf-8")
    if text == "CRASH":
        os._exit(11)
    if text == "HANG":
        time.sleep(600)
    if text == "FAULT":
        raise ZeroDivisionError("our own mistake")
    if text == "ENGINE":
        raise ReaderError("Tesseract failed on this one.")
    if text == "SLOW":
        time.sleep(0.7)
    return side_of(text, opened.name, opened.sha256, opened.taken_at)


def double(number: int) -> int:
    return 2 * number


def words_at(path: Path) -> str:
    return path.read_text("utf-8")


def own_process(number: int) -> int:
    return os.getpid()
