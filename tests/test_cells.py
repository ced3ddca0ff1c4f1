"""Labels and values wrapped over several lines come out whole, and label before value."""

from __future__ import annotations

import pytest
from test_text import line

from ocr_tags.fields.labels import is_label
from ocr_tags.layout.cells import stacked, table
from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import columns
from ocr_tags.layout.text import side_texts, tag_text


def in_cells(*lines: Line) -> str:
    arranged = table(lines, is_label)
    return tag_text(arranged, "back", 500, "").string if arranged else ""


def in_pairs(*lines: Line) -> str:
    pairs = stacked(lines, is_label)
    return tag_text(pairs[0], "back", 500, "").string if pairs else ""


WRAPPED = (
    line("Flowering", 0, 0),
    line("time", 0, 24),
    line("Early", 200, 0),
    line("autumn", 200, 24),
    line("into winter", 200, 48),
    line("Water", 0, 90),
    line("Once a", 200, 90),
    line("week", 200, 114),
    line("Soil", 0, 150),
    line("Rich", 200, 150),
)


def test_wrapped_labels_and_values_of_a_table_are_whole() -> None:
    text = in_cells(*WRAPPED)
    assert text.split("\n\n") == [
        "Flowering time\tEarly autumn into winter",
        "Water\tOnce a week",
        "Soil\tRich",
    ]


def test_a_label_half_way_down_its_cell_gets_the_lines_above_and_below_it() -> None:
    text = in_cells(
        *(line("Light", 0, 12), line("Full sun to", 200, 0), line("part shade", 200, 24)),
        *(line("Water", 0, 84), line("Keep moist", 200, 60), line("while the buds", 200, 84)),
        line("swell", 200, 108),
        *(line("Soil", 0, 144), line("Rich", 200, 144)),
    )
    assert text.split("\n\n") == [
        "Light\tFull sun to part shade",
        "Water\tKeep moist while the buds swell",
        "Soil\tRich",
    ]


def test_the_firms_address_is_no_part_of_the_cell_above_it() -> None:
    text = in_cells(*WRAPPED, line("moist www.brenwick.example", 200, 174))
    assert "Soil\tRich" in text.split("\n\n")


def test_values_of_other_labels_are_no_part_of_a_cell() -> None:
    rows = [("Height", "12 in"), ("Light", "Sun"), ("Water", "Low")]
    cells = [
        line(text, x, 30 * at) for at, row in enumerate(rows) for x, text in zip((0, 200), row, strict=True)
    ]
    text = in_cells(*cells, line("Soil", 0, 130), line("Rich,", 200, 118), line("moist", 200, 142))
    assert text.split("\n\n") == ["Height\t12 in", "Light\tSun", "Water\tLow", "Soil\tRich, moist"]


def test_what_is_in_no_cell_stays_with_its_neighbours() -> None:
    text = in_cells(line("Purple Coneflower", 0, -100), line("Echinacea purpurea", 0, -74), *WRAPPED)
    assert text.startswith("Purple Coneflower\nEchinacea purpurea\n\n")


def test_a_table_without_wrapped_cells_is_left_to_the_rows() -> None:
    labels = [line(name, 0, 40 * at) for at, name in enumerate(("Water", "Soil", "Height", "Spread"))]
    values = [line(value, 200, 40 * at) for at, value in enumerate(("Low", "Rich", "12 in", "10 in"))]
    assert in_cells(*labels, *values) == ""


def test_the_line_below_the_last_value_is_not_of_it() -> None:
    assert in_cells(*WRAPPED, line("Brenwick Growers", 150, 230)).startswith("Brenwick Growers\n\n")


def pairs(near: int, far: int, under: bool) -> list[Line]:
    """Three values of one or two lines with their labels: `near` between the two, `far` between pairs."""
    found: list[Line] = []
    y = 0
    for label, value in (("Light", ["Full sun to", "part shade"]), ("Water", ["Low"]), ("Soil", ["Rich"])):
        for text in [*value, label] if under else [label, *value]:
            found.append(line(text, 0, y))
            y += 20 + near
        y += far - near
    return found


WHOLE = ["Light\nFull sun to part shade", "Water\nLow", "Soil\nRich"]


def test_a_label_nearer_to_the_line_above_it_is_that_lines() -> None:
    assert in_pairs(*pairs(2, 14, under=True)).split("\n\n") == WHOLE


def test_a_label_nearer_to_the_line_below_it_is_that_lines() -> None:
    assert in_pairs(*pairs(2, 14, under=False)).split("\n\n") == WHOLE


def test_how_tightly_a_line_is_boxed_tells_nothing() -> None:
    values = (("Full sun", 20, 14), ("Low", 78, 40), ("Rich", 136, 40))
    labels = (("Light", 44, 20), ("Water", 102, 20), ("Soil", 160, 20))
    lines = [line(text, 0, middle - tall // 2, tall) for text, middle, tall in (*values, *labels)]
    assert in_pairs(*lines).split("\n\n") == ["Light\nFull sun", "Water\nLow", "Soil\nRich"]


def test_even_gaps_do_not_tell() -> None:
    assert in_pairs(*pairs(8, 8, under=True)) == ""


def test_a_line_that_opens_with_a_label_ends_the_value_above() -> None:
    text = in_pairs(*pairs(2, 14, under=False), line("Feed: weekly", 0, 178), line("in summer", 0, 200))
    assert "Soil\nRich\n\nFeed: weekly" in text


def test_the_value_of_a_lost_label_is_not_of_the_row_above() -> None:
    lost = line("Brenwick Growers", 200, 174)
    assert "Soil\tRich" in in_cells(*WRAPPED, lost).split("\n\n")


def test_what_stands_below_a_stacked_value_is_not_of_it() -> None:
    lines = pairs(2, 14, under=False)
    foot = line("Brenwick Growers, Stonemere", 0, lines[-1].place.bottom + 2)
    assert "Soil\nRich\nBrenwick Growers, Stonemere" in in_pairs(*lines, foot)


def test_a_label_wrapped_under_its_value_is_whole() -> None:
    zones = [line("4-8", 0, 0), line("Zona / Winter", 0, 22), line("hardy", 0, 44)]
    rest = [lowered(each) for each in pairs(2, 14, under=True)]
    assert in_pairs(*zones, *rest).split("\n\n") == ["Zona / Winter hardy\n4-8", *WHOLE]


def lowered(given: Line) -> Line:
    return line(given.text, given.place.x, given.place.y + 80)


def test_what_begins_in_a_small_letter_goes_on_with_the_line_above_it() -> None:
    wrapped = line("Light", 0, 0), line("Full sun to", 0, 22), line("part shade", 0, 54)
    rest = pairs(2, 14, under=False)[3:]
    moved = [line(each.text, 0, each.place.y + 22) for each in rest]
    assert in_pairs(*wrapped, *moved).split("\n\n") == WHOLE


def test_one_reading_of_a_side_tells_another_how_its_labels_stand() -> None:
    even = pairs(8, 8, under=True)
    assert stacked(even, is_label) is None
    clear = side_texts(
        {"rapidocr lines": pairs(2, 14, under=True), "tesseract lines": even}, "back", 500, is_label
    )
    assert [text.string.split("\n\n") for text in clear if text.reader == "tesseract lines"][-1] == WHOLE


def test_a_label_under_its_value_has_no_tie_to_the_next_value() -> None:
    texts = side_texts({"rapidocr lines": pairs(2, 14, under=True)}, "back", 500, is_label)
    assert all("Light\nLow" not in text.string for text in texts)


@pytest.mark.parametrize("opening", ["Water: weekly", "WATER Weekly"])
def test_what_opens_with_a_label_ends_the_value_above_it(opening: str) -> None:
    rich = [*WRAPPED[:-1], line("Rich,", 200, 150), line(opening, 200, 174)]
    assert "Soil\tRich," in in_cells(*rich).split("\n\n")
    last = pairs(2, 14, under=False)
    over = [*last[:-1], line("Rich,", 0, last[-1].place.y), line(opening, 0, last[-1].place.y + 22)]
    assert "Soil\nRich," in in_pairs(*over).split("\n\n")


def test_a_label_in_the_corner_of_its_cell_stands_over_the_value_in_the_middle() -> None:
    """Boxes side by side, the label small at the left, its value in the middle and not right below."""
    grid = (
        *(line("Height", 0, 0), line("Width", 300, 0), line("60 cm", 20, 30), line("45 cm", 400, 30)),
        *(line("Light", 0, 100), line("Water", 300, 100), line("Full sun", 20, 130), line("Low", 400, 130)),
    )
    text = tag_text(columns(grid, is_label), "back", 500, "").string
    assert {"Width\n45 cm", "Water\nLow"} <= set(text.split("\n\n"))
    assert "Height\n45 cm" not in text
