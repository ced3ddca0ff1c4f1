"""Small signs that readers mangle (common practice, no source)."""

from test_text import Line, line

from ocr_tags.fields.labels import is_label
from ocr_tags.layout.mended import mended


def texts(*lines: Line) -> list[str]:
    return [each.text for each in mended(lines, is_label)]


def test_a_raised_sign_read_as_letters_is_a_sign() -> None:
    assert texts(line("Calluna SkyTM", 0, 0), line("ATM", 0, 30)) == ["Calluna Sky™", "ATM"]
    assert texts(line("PEARLFLEECETM", 0, 0)) == ["PEARLFLEECE™"]


def test_a_letter_that_opens_a_range_is_a_figure() -> None:
    assert texts(line("Water l-2 inches a week", 0, 0)) == ["Water 1-2 inches a week"]
    assert texts(line("Vitamin l-arginine", 0, 0)) == ["Vitamin l-arginine"]


def test_a_unit_apart_from_its_figure_is_put_behind_it() -> None:
    assert texts(line("150-210", 0, 0), line("cm", 110, 0)) == ["150-210 cm"]
    assert texts(line("150-210", 0, 0), line("cm", 300, 0)) == ["150-210", "cm"]
    assert texts(line("Height", 0, 0), line("cm", 80, 0)) == ["Height", "cm"]


def test_a_bar_behind_labels_is_a_colon_also_where_it_is_read_as_a_letter() -> None:
    lines = line("SPREAD |18 in", 0, 0), line("WATER I Sparingly", 0, 30), line("SOIL | Rich", 0, 60)
    read = texts(*lines, line("SPRD|40 cm", 0, 90))
    assert read == ["SPREAD: 18 in", "WATER: Sparingly", "SOIL: Rich", "SPRD: 40 cm"]


def test_one_bar_alone_or_between_labels_stays() -> None:
    alone = line("SOIL | Rich", 0, 0), line("Marl Growers | Orford", 0, 30)
    assert texts(*alone) == [
        "SOIL | Rich",
        "Marl Growers | Orford",
    ]
    heads = line("HEIGHT | SPREAD", 0, 0), line("WATER | SOIL", 0, 30)
    assert texts(*heads) == ["HEIGHT | SPREAD", "WATER | SOIL"]


def test_a_raised_sign_apart_from_its_name_is_put_behind_it() -> None:
    name, sign = line("Trevaluna", 0, 20, 30), line("TM", 145, 14, 12)
    assert texts(name, sign) == ["Trevaluna ™"]
    assert texts(name, line("TM", 300, 14, 12)) == ["Trevaluna", "TM"]
