"""Bars drawn by zxing-cpp's writer and OpenCV's QR encoder, laid in a picture, and read back."""

from __future__ import annotations

from typing import Any

import cv2
import numpy as np
import pytest
import zxingcpp

from ocr_tags.fields.codes import read_gtin
from ocr_tags.gtin import expanded, gtin14, is_gtin, is_restricted
from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import columns
from ocr_tags.layout.text import tag_text
from ocr_tags.pictures.barcodes import Code, code_words, confirmed, read_codes
from ocr_tags.record import Box, Word

FORMATS = zxingcpp.BarcodeFormat
CENTRE = np.array([500.0, 400.0])
# The number of GS1's page "How to calculate a check digit manually" (gs1.org).
EAN = "6291041500213"


def drawn(text: str, kind: Any = FORMATS.EAN13, scale: int = 3) -> np.ndarray[Any, Any]:
    return np.array(zxingcpp.create_barcode(text, kind).to_image(scale=scale, add_quiet_zones=True))


def laid(code: np.ndarray[Any, Any], degrees: float = 0.0) -> np.ndarray[Any, Any]:
    """The code turned clockwise in the middle of a grey picture that also carries print and stripes."""
    picture = np.full((800, 1000, 3), 205, np.uint8)
    for row in range(3):
        at = (40, 50 + 30 * row)
        cv2.putText(picture, "HEIGHT 18 IN SPREAD 12 IN", at, cv2.FONT_HERSHEY_SIMPLEX, 1, (20, 20, 20), 2)
    cv2.rectangle(picture, (40, 700), (400, 780), (40, 120, 40), -1)
    height, width = code.shape
    turn = cv2.getRotationMatrix2D((width / 2, height / 2), -degrees, 1.0)
    turn[:, 2] += CENTRE - (width / 2, height / 2)
    over = cv2.warpAffine(code, turn, (1000, 800), flags=cv2.INTER_AREA)
    mask = cv2.warpAffine(np.full_like(code, 255), turn, (1000, 800)) > 127
    picture[mask] = over[mask][:, None]
    return picture


def texts(codes: list[Code]) -> list[str]:
    return [code.text for code in codes]


@pytest.mark.parametrize("degrees", [0, 12, 30, 45, 60, 90, 135, 180, 225, 270, 320])
def test_bars_are_read_whichever_way_they_lie(degrees: float) -> None:
    [code] = confirmed(read_codes(laid(drawn(EAN), degrees)), [])
    assert (code.kind, code.text) == ("ean13", EAN)
    middle = np.array([code.box.x + code.box.w / 2, code.box.y + code.box.h / 2])
    assert np.linalg.norm(middle - CENTRE) < 25
    # The corners lie as the code does: the first side runs along its digits.
    (x0, y0), (x1, y1) = code.corners[:2]
    assert abs(np.cos(np.arctan2(y1 - y0, x1 - x0) - np.radians(degrees))) > 0.95


# 12 digits: "0" before them makes thirteen (GS1 General Specifications); the number system 4 is a shop's own.
def test_upc_keeps_its_twelve_digits() -> None:
    [code] = read_codes(laid(drawn("411890740097", FORMATS.UPCA)))
    assert (code.kind, code.text) == ("upca", "411890740097")
    assert is_restricted(code.text)


# 1 7350053850 25 2, the GTIN-14 of a case: worked out with the check digit rule.
def test_case_number_of_fourteen_digits() -> None:
    [code] = read_codes(laid(drawn("17350053850252", FORMATS.ITF14)))
    assert (code.kind, code.text) == ("itf14", "17350053850252")


def word(text: str, x: int, y: int) -> Word:
    box = Box(x, y, 60, 20)
    return Word(text, box, box, 0.9)


@pytest.mark.parametrize(
    ("kind", "printed", "number"),
    # 01801624 is a zero-suppressed 018200000164 (expansion rule of the UPC-E symbol).
    [(FORMATS.EAN8, "23456785", "23456785"), (FORMATS.UPCE, "01801624", "018200000164")],
)
def test_short_codes_count_only_where_the_digits_are_printed_beside(
    kind: Any, printed: str, number: str
) -> None:
    codes = read_codes(laid(drawn(printed, kind, 4)))
    assert texts(codes) == [number]
    below = [word(printed[:4], 420, 540), word(printed[4:], 490, 540)]
    far = [word(printed[:4], 20, 20), word(printed[4:], 90, 20)]
    wrong = [word(printed[:4], 420, 540), word("1111", 490, 540)]
    assert texts(confirmed(codes, below)) == [number]
    assert confirmed(codes, far) == confirmed(codes, wrong) == confirmed(codes, []) == []


def test_print_beside_the_bars_makes_a_code_surer() -> None:
    codes = read_codes(laid(drawn(EAN)))
    below = [word("6", 380, 540), word("291041", 400, 540), word("500213", 470, 540)]
    assert confirmed(codes, below)[0].confidence > confirmed(codes, [])[0].confidence


def test_text_of_a_qr_code_is_kept_as_it_stands() -> None:
    text = "https://tags.example/plant?id=7&next=<b>"
    encoder = cv2.QRCodeEncoder.create()
    square = cv2.copyMakeBorder(encoder.encode(text), 4, 4, 4, 4, cv2.BORDER_CONSTANT, value=255)
    large = cv2.resize(square, None, fx=6, fy=6, interpolation=cv2.INTER_NEAREST)
    [code] = read_codes(laid(large, 33))
    assert (code.kind, code.text) == ("qr", text)


def test_print_stripes_and_hatching_are_no_codes() -> None:
    assert read_codes(laid(np.full((90, 90), 205, np.uint8))) == []
    stripes = np.full((500, 900, 3), 255, np.uint8)
    stripes[:, ::9] = stripes[:, 1::9] = stripes[:, 2::9] = 20
    assert confirmed(read_codes(stripes), []) == []


def test_a_wrong_check_digit_is_no_number() -> None:
    assert not is_gtin(EAN[:-1] + "4")
    assert not is_gtin("0" * 13)
    assert not is_gtin(EAN[:-2])


# Prefixes of restricted circulation: GS1 General Specifications, table of GS1 prefixes.
@pytest.mark.parametrize(
    ("digits", "restricted"),
    [
        ("2000000000008", True),
        ("2999999999996", True),
        ("0400000000009", True),
        ("212345000007", True),
        ("20000004", True),
        ("7300011000017", False),
        ("8904000210037", False),
        ("036000291452", False),
    ],
)
def test_numbers_a_shop_gives_itself(digits: str, restricted: bool) -> None:
    assert is_restricted(digits) is restricted


def test_one_number_printed_in_three_lengths_has_one_key() -> None:
    # "Right justified in a 14 digit field" (GS1 Hong Kong).
    assert gtin14("411890740097") == gtin14("0411890740097") == gtin14("00411890740097")


def test_shortened_upc_expands_by_its_seventh_digit() -> None:
    # Every number that can be shortened, made long by zxing-cpp's reader, is what the rule gives.
    for how in range(10):
        for last in range(10):
            short = f"0{12345}{how}{last}"
            if (full := expanded(short)) is not None:
                seen = zxingcpp.read_barcode(drawn(short, FORMATS.UPCE), formats=FORMATS.UPCE)
                assert gtin14(seen.text) == gtin14(full)
                break
        else:
            pytest.fail(f"no check digit fits 12345{how}")


def test_a_code_becomes_a_word_that_the_field_reads() -> None:
    codes = confirmed(read_codes(laid(drawn(EAN), 90)), [])
    twice = np.diag([0.5, 0.5, 1.0])
    [seen] = code_words(codes, twice)
    assert seen.box == codes[0].box
    assert abs(seen.place.x - 2 * seen.box.x) <= 2
    text = tag_text(columns([Line((seen,))]), "back", 800, "barcode")
    assert [(found.value, found.certainty) for found in read_gtin(text)] == [(EAN, 1.0)]
