"""The only file that knows RapidOCR: a second reader that errs differently from Tesseract, and finds lines.

Its models lie inside its wheel, so nothing is ever fetched. Reading a line costs about 20 ms, finding the
lines of a picture twenty times that (it grows with the area), so lines are sought on a small copy and read at
full size.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.metadata import version
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from ocr_tags.engines import Layout, Picture, Quad
from ocr_tags.errors import ReaderError
from ocr_tags.pictures.geometry import reduced, through
from ocr_tags.record import Box, Word

FIND_AREA = 240_000
"""Pixels of the copy on which the lines of a tag are sought: on 124 photographs copies of up to 600,000
showed no more, those of 180,000 lost some small print. Finding costs by the area."""
FIND_SIDE = 1200
"""Its longest side, for strips: their print is as small as that of broad tags, but they have less area."""
MOST_SIDE = 4000
"""Longer than any copy made here, so that the library makes none smaller once more."""
LINES_AT_ONCE = 1
"""The recogniser fills short lines up to the longest: lines one by one take the least memory, and no more
time."""
NARROWEST = 160
"""Shorter lines are filled up to this width, in pixels of a line 48 high. The library's own 320 reads no
better and costs half as much again, as most lines of a tag are short."""
HEIGHT = 48
ROOM = ((0.45, 120.0), (0.7, 20.0), (0.995, 15.0))
"""Below such a chance a line with fewer pixels for each letter read has too little room: condensed print."""
STRETCHES = (1.6, 2.5)
"""By how much wider it is read again; on a line with room enough that makes nothing better."""
MARGIN = 0.15
"""Share of a line's cut above and below its letters."""
SIGNS = "–—‘’“”„«»…•·°×±½¼¾⅓⅔⅛′″™®©€£¥†♀♂→←↑↓↔↕"
INSTALL = "Install it with 'pip install rapidocr onnxruntime onnx'."


@dataclass(frozen=True)
class _Recognised:
    """One line as the recogniser gives it; `width` is that of the print, in pixels of a line 48 high."""

    text: str
    info: Any
    width: float

    @property
    def chance(self) -> float:
        chances = self.info.confs if self.text else ()
        return float(np.mean(chances)) if len(chances) else 0.0

    @property
    def crowded(self) -> bool:
        """Whether letters may share one of the recogniser's columns, of which it then gives but one."""
        letters = sum(not sign.isspace() for sign in self.text)
        room = next((room for chance, room in ROOM if self.chance < chance), 0.0)
        return self.width < room * letters


@dataclass(frozen=True)
class RapidReader:
    models: Any
    version: str
    name: str = "rapidocr"
    colour: bool = True

    def describe(self) -> str:
        return f"RapidOCR {self.version}, PP-OCRv6 small models of its wheel"

    def find_lines(self, picture: Picture, closely: float = 1.0) -> list[Quad]:
        tall, wide = picture.shape[:2]
        scale = min((FIND_AREA / (tall * wide)) ** 0.5, FIND_SIDE / max(tall, wide)) * closely**0.5
        small, back = reduced(_in_colour(picture), scale)
        found = self.models(small, use_det=True, use_cls=False, use_rec=False)
        boxes = [] if found.boxes is None else found.boxes
        return [_quad(through(back, np.asarray(box, np.float64))) for box in boxes]

    def read(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        if layout == "line":
            return [[words] if words else [] for words in self._read_lines(pictures)]
        return [self._read_page(picture) for picture in pictures]

    def _read_lines(self, pictures: Sequence[Picture]) -> list[list[Word]]:
        crops = [_in_colour(picture) for picture in pictures]
        read = self._recognised(crops)
        narrow = [number for number, line in enumerate(read) if line.crowded]
        for stretch in STRETCHES:
            wider = self._recognised([crops[number] for number in narrow], stretch)
            better = [
                (k, line) for k, line in zip(narrow, wider, strict=True) if line.chance > read[k].chance
            ]
            for number, line in better:
                read[number] = line
            narrow = [number for number, line in better if line.crowded]
        return [
            _words(line.text, line.info, crop.shape[1], crop.shape[0])
            for line, crop in zip(read, crops, strict=True)
        ]

    def _recognised(self, crops: list[Picture], stretch: float = 1.0) -> list[_Recognised]:
        from rapidocr.ch_ppocr_rec import TextRecInput

        if not crops:
            return []
        wide = crops if stretch == 1 else [_stretched(crop, stretch) for crop in crops]
        read = self.models.text_rec(TextRecInput(img=wide, return_word_box=True))
        return [
            _Recognised(text, info, crop.shape[1] * HEIGHT / crop.shape[0])
            for text, info, crop in zip(read.txts, read.word_results, crops, strict=True)
        ]

    def _read_page(self, picture: Picture) -> list[list[Word]]:
        colour = _in_colour(picture)
        found = self.models(colour, use_det=True, use_cls=True, use_rec=True, return_word_box=True)
        lines = [] if found.boxes is None else found.word_results
        return [[whole_word(*word) for word in line] for line in lines]


def open_engine(languages: str = "eng", data_folder: str | None = None) -> RapidReader:
    """RapidOCR with its models loaded, on one thread; ReaderError when it is not installed.

    One model reads all Latin languages, so `languages` and `data_folder` change nothing.
    """
    try:
        from rapidocr import RapidOCR

        models = RapidOCR(
            params={
                "Global.log_level": "critical",
                "EngineConfig.onnxruntime.intra_op_num_threads": 1,
                "EngineConfig.onnxruntime.inter_op_num_threads": 1,
                # Memory kept from picture to picture: to get it anew costs a fifth of the time of finding.
                "EngineConfig.onnxruntime.enable_cpu_mem_arena": True,
                "Det.limit_type": "max",
                "Det.limit_side_len": MOST_SIDE,
                "Rec.rec_batch_num": LINES_AT_ONCE,
                "Rec.rec_img_shape": [3, 48, NARROWEST],
            }
        )
        models.recognize_txt([np.full((48, 96, 3), 255, np.uint8)])
        recogniser: Any = models.text_rec
    except ImportError as error:
        raise ReaderError("The reader RapidOCR is not installed.", INSTALL) from error
    except Exception as error:
        raise ReaderError(f"RapidOCR does not start: {str(error).strip()[-200:]}.", INSTALL) from error
    _keep_latin(recogniser)
    return RapidReader(models, version("rapidocr"))


def _keep_latin(recogniser: Any) -> None:
    """Cut all signs but those of Latin tags out of the recogniser: it knows Chinese as well, and a sixth of
    its time and most of its memory go into the chances of signs that no tag here prints."""
    import onnx
    from onnxruntime import InferenceSession

    decoder, runs = recogniser.postprocess_op, recogniser.session
    known = len(decoder.character)
    kept = [at for at, sign in enumerate(decoder.character) if sign == "blank" or _is_latin(sign)]
    model = onnx.load(runs.session._model_path)
    for weights in model.graph.initializer:
        if weights.dims[-1:] == [known]:
            some = np.ascontiguousarray(onnx.numpy_helper.to_array(weights)[..., kept])
            weights.CopyFrom(onnx.numpy_helper.from_array(some, weights.name))
    model.graph.output[0].type.tensor_type.shape.dim[-1].dim_value = len(kept)
    options = runs.session.get_session_options()
    runs.session = InferenceSession(model.SerializeToString(), options, providers=["CPUExecutionProvider"])
    decoder.character = [decoder.character[at] for at in kept]


def _is_latin(sign: str) -> bool:
    return sign.isascii() or sign in SIGNS or unicodedata.name(sign[:1], "").startswith("LATIN")


# ---------------------------------------------------------------- signs into words, picture into pictures


def _words(text: str, info: Any, width: int, height: int) -> list[Word]:
    """The line's words; each sign is placed by the column in which it was seen (about eight pixels wide).

    `info.word_cols` has a column for each sign but spaces, `info.confs` a chance for each with spaces; the
    library's own parting into words is not used, as it parts wide letters.
    """
    columns = [column for word in info.word_cols for column in word]
    per_column = width / max(float(info.line_txt_len), 1.0)
    words: list[Word] = []
    seen = position = 0
    for part in text.split(" "):
        letters = len(part)
        if letters:
            first, last = columns[seen], columns[seen + letters - 1]
            left, right = (first - 0.5) * per_column, (last + 1.5) * per_column
            x, end = max(0, round(left)), min(width, round(right))
            place = Box(x, round(MARGIN * height), max(1, end - x), max(1, round((1 - 2 * MARGIN) * height)))
            chances = info.confs[position : position + letters]
            words.append(Word(part, place, place, float(np.mean(chances)), "rapidocr"))
        seen += letters
        position += letters + 1
    return words


def _stretched(picture: Picture, share: float) -> Picture:
    wide = cv2.resize(picture, None, fx=share, fy=1.0, interpolation=cv2.INTER_CUBIC)
    return np.asarray(wide, np.uint8)


def whole_word(text: str, chance: float, corners: Sequence[Sequence[float]]) -> Word:
    points = np.array(corners)
    (left, top), (right, bottom) = points.min(axis=0).astype(int), points.max(axis=0).astype(int)
    place = Box(int(left), int(top), max(1, int(right - left)), max(1, int(bottom - top)))
    return Word(text, place, place, float(chance), "rapidocr")


def _quad(points: NDArray[np.float64]) -> Quad:
    a, b, c, d = ((float(x), float(y)) for x, y in points)
    return a, b, c, d


def _in_colour(picture: Picture) -> Picture:
    if picture.ndim == 3:
        return picture
    return np.asarray(cv2.cvtColor(picture, cv2.COLOR_GRAY2BGR), np.uint8)
