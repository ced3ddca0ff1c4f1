"""Barcodes and QR codes of a photo: what they say, where they are, and which readers read them.

zxing-cpp goes first: it is quick and reads small and blurred bars, but only bars nearly level or upright.
OpenCV's detector finds slanted bars; what it can find but not read is turned level and given to zxing again.
EAN-8 and UPC-E have so little redundancy that they are also "read" where there are none: they count only
where the same number is printed beside them (`confirmed`). No picture is sharpened: that makes false codes.
The text of a QR code is kept as it is, never opened or followed.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import cv2
import numpy as np
import zxingcpp

from ocr_tags.gtin import expanded, gtin14, is_gtin
from ocr_tags.pictures.geometry import Floats, Pixels, reduced, through, warped
from ocr_tags.record import Box, Word

Corner = tuple[float, float]

LOOK_SIDE = 1600
"""Long side, in pixels, of the copy in which slanted bars are looked for."""
QUIET = 0.12
"""White margin of a levelled code as a share of its width: ten modules of the 95 of EAN-13."""
ONE_READER, TWO_READERS, PRINTED = 0.97, 0.99, 0.995
"""How sure a code is that one reader read, that both read, and that stands in digits beside it too."""

_FORMATS = zxingcpp.BarcodeFormat
_KINDS = {
    _FORMATS.EAN13: "ean13",
    _FORMATS.UPCA: "upca",
    _FORMATS.EAN8: "ean8",
    _FORMATS.UPCE: "upce",
    _FORMATS.ITF14: "itf14",
    _FORMATS.ITF: "itf14",
    _FORMATS.QRCode: "qr",
    _FORMATS.QRCodeModel1: "qr",
    _FORMATS.QRCodeModel2: "qr",
}
_BARS = (_FORMATS.EAN13, _FORMATS.UPCA, _FORMATS.EAN8, _FORMATS.UPCE, _FORMATS.ITF14)
_EASILY_FALSE = {"ean8", "upce"}
_OPENCV_KINDS = {"EAN_13": "ean13", "UPC_A": "upca"}


@dataclass(frozen=True, slots=True)
class Code:
    """One barcode or QR code.

    `kind` is ean13, upca, ean8, upce, itf14 or qr. `text`: the digits of the GTIN with a right check
    digit (12 for UPC-A and UPC-E), or a QR code's text. `corners`, clockwise, and `box` are in pixels of
    the photo. `readers` says who read it. `confidence` is 0 where print beside it still has to confirm it.
    """

    kind: str
    text: str
    corners: tuple[Corner, Corner, Corner, Corner]
    readers: tuple[str, ...]
    confidence: float

    @property
    def box(self) -> Box:
        x, y = (np.array(axis) for axis in zip(*self.corners, strict=True))
        left, top = int(np.floor(x.min())), int(np.floor(y.min()))
        return Box(left, top, max(int(np.ceil(x.max())) - left, 1), max(int(np.ceil(y.max())) - top, 1))


def read_codes(pixels: Pixels) -> list[Code]:
    """The codes in an upright photo (BGR, uint8, height x width x 3), one for each place."""
    grey = np.asarray(cv2.cvtColor(pixels, cv2.COLOR_BGR2GRAY), np.uint8)
    tries = [*_with_zxing(grey, (*_BARS, _FORMATS.QRCode)), *_slanted(grey)]
    for code in tries[:]:
        if code.kind != "qr":
            tries += _levelled(grey, np.array(code.corners))
    return [_strongest(place) for place in _by_place(tries)]


def confirmed(codes: Iterable[Code], words: Sequence[Word]) -> list[Code]:
    """The codes that may count, surer where the words printed near them give the same number.

    EAN-8 and UPC-E without such print are left out.
    """
    checked = [replace(code, confidence=PRINTED) if _is_printed(code, words) else code for code in codes]
    return [code for code in checked if code.confidence > 0]


def code_words(codes: Iterable[Code], to_photo: Floats) -> list[Word]:
    """Each code as one word, its `place` in the straightened picture (`to_photo` leads from it to the photo).

    The reader of a word is "barcode" for numbers and "qr" for a QR code's text.
    """
    back = np.asarray(np.linalg.inv(to_photo), np.float64)
    words = []
    for code in codes:
        low_high = through(back, np.array(code.corners))
        left, top = (int(v) for v in np.floor(low_high.min(axis=0)))
        right, bottom = (int(v) for v in np.ceil(low_high.max(axis=0)))
        place = Box(left, top, max(right - left, 1), max(bottom - top, 1))
        reader = "qr" if code.kind == "qr" else "barcode"
        words.append(Word(" ".join(code.text.split()), place, code.box, code.confidence, reader))
    return words


# ---------------------------------------------------------------- the two readers


def _with_zxing(grey: Pixels, formats: Sequence[zxingcpp.BarcodeFormat]) -> Iterator[Code]:
    wanted = zxingcpp.BarcodeFormats(tuple(formats))
    for seen in zxingcpp.read_barcodes(np.ascontiguousarray(grey), formats=wanted):
        at = seen.position
        corners = [(p.x, p.y) for p in (at.top_left, at.top_right, at.bottom_right, at.bottom_left)]
        yield from _code(_KINDS.get(seen.format), seen.text, corners, "zxing")


def _slanted(grey: Pixels) -> Iterator[Code]:
    """Bars that OpenCV's detector finds, read by it, or else levelled and read by zxing."""
    look, back = reduced(grey, LOOK_SIDE / max(grey.shape))
    detector = cv2.barcode.BarcodeDetector()
    _, texts, kinds, quads = detector.detectAndDecodeWithType(look)
    for place, quad in enumerate(() if quads is None else quads):
        # The detector's first corner is the lower left one of the bars as they read.
        corners = np.roll(through(back, np.asarray(quad, np.float64).reshape(4, 2)), -1, axis=0)
        if place < len(texts) and texts[place]:
            yield from _code(_OPENCV_KINDS.get(kinds[place]), texts[place], corners, "opencv")
        else:
            yield from _levelled(grey, corners)


def _levelled(grey: Pixels, corners: Floats) -> Iterator[Code]:
    """What zxing reads in the bars turned level: in the upper half and, on its own, in the lower half."""
    wide = float(np.linalg.norm(corners[1] - corners[0]))
    tall = float(np.linalg.norm(corners[3] - corners[0]))
    if wide < 8 or tall < 8:
        return
    margin, half = QUIET * wide, round(tall / 2)
    size = (round(wide + 2 * margin), 2 * half)
    target = np.array([(margin, 0), (margin + wide, 0), (margin + wide, tall), (margin, tall)], np.float32)
    way = np.asarray(cv2.getPerspectiveTransform(target, corners.astype(np.float32)), np.float64)
    flat = warped(grey, way, size)
    for strip in (flat[:half], flat[half:]):
        for code in _with_zxing(strip, _BARS):
            yield replace(code, corners=_corners(corners))


def _code(kind: str | None, text: str, corners: Floats | Sequence[Corner], reader: str) -> Iterator[Code]:
    """The code, if its number is sound; UPC-A comes from both readers as twelve digits."""
    if kind is None or not text.strip():
        return
    if kind != "qr":
        text = re.sub(r"\D", "", text)
        if kind in {"ean13", "upca", "upce"} and len(text) == 13 and text[0] == "0":
            kind, text = ("upce" if kind == "upce" else "upca"), text[1:]
        if not is_gtin(text):
            return
    yield Code(kind, text, _corners(np.asarray(corners, np.float64)), (reader,), 0.0)


def _corners(points: Floats) -> tuple[Corner, Corner, Corner, Corner]:
    a, b, c, d = ((float(x), float(y)) for x, y in points)
    return (a, b, c, d)


def _by_place(tries: Iterable[Code]) -> list[list[Code]]:
    """Tries that lie on one another, together."""
    places: list[list[Code]] = []
    for code in tries:
        for place in places:
            if _overlap(code.box, place[0].box):
                place.append(code)
                break
        else:
            places.append([code])
    return places


def _strongest(tries: Sequence[Code]) -> Code:
    """The code that most tries in one place read. Bars seen aslant or blurred may give a false number with
    a right check digit, so a number counts by itself only when read twice and three times as often as any
    other there."""
    votes = Counter((code.kind, code.text) for code in tries)
    (best, most), *others = votes.most_common()
    agreeing = [code for code in tries if (code.kind, code.text) == best]
    readers = tuple(dict.fromkeys(code.readers[0] for code in agreeing))
    sound = best[0] == "qr" or (most >= 2 and all(most >= 3 * less for _, less in others))
    sure = (
        (TWO_READERS if len(readers) > 1 else ONE_READER) if sound and best[0] not in _EASILY_FALSE else 0.0
    )
    return replace(agreeing[0], readers=readers, confidence=sure)


def _overlap(a: Box, b: Box) -> bool:
    return a.x < b.right and b.x < a.right and a.y < b.bottom and b.y < a.bottom


# ---------------------------------------------------------------- the print beside it


def _is_printed(code: Code, words: Sequence[Word]) -> bool:
    """Whether the code's number stands, in one or more groups of digits, beside or below the bars."""
    if code.kind == "qr":
        return False
    room = round(0.6 * max(code.box.w, code.box.h))
    near = Box(code.box.x - room, code.box.y - room, code.box.w + 2 * room, code.box.h + 2 * room)
    groups = [re.sub(r"\W", "", word.text) if _overlap(word.box, near) else " " for word in words]
    joined = "".join(group if group.isdecimal() else " " for group in groups)
    printed = {
        digits[at : at + size]
        for digits in joined.split()
        for size in (8, 12, 13, 14)
        for at in range(len(digits) - size + 1)
    }
    return any(gtin14(code.text) in {gtin14(digits), gtin14(expanded(digits) or "0")} for digits in printed)
