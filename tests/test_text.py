"""Words into lines and lines into reading order: what stands beside, what below, and what has no tie."""

from ocr_tags.layout.lines import Line, split_wide
from ocr_tags.layout.reading_order import columns, rows
from ocr_tags.layout.text import merge, side_texts, tag_text
from ocr_tags.record import Box, Word


def words(text: str, x: int, y: int, height: int = 20, confidence: float = 0.9) -> list[Word]:
    """The words of `text` set in a typewriter face from the point given."""
    made = []
    for part in text.split():
        place = Box(x, y, len(part) * height // 2, height)
        made.append(Word(part, place, place, confidence))
        x += (len(part) + 1) * height // 2
    return made


def line(text: str, x: int, y: int, height: int = 20, confidence: float = 0.9) -> Line:
    return Line(tuple(words(text, x, y, height, confidence)))


def in_rows(*lines: Line) -> str:
    return tag_text(rows(lines), "front", 500, "test").string


def in_columns(*lines: Line) -> str:
    return tag_text(columns(lines), "front", 500, "test").string


def test_a_wide_gap_parts_a_line() -> None:
    parts = list(split_wide([*words("Height", 0, 0), *words("12-18 in", 300, 0)]))
    assert [part.text for part in parts] == ["Height", "12-18 in"]


def test_words_are_put_in_order_whatever_order_they_come_in() -> None:
    (only,) = split_wide(list(reversed(words("Full sun to part shade", 0, 0))))
    assert only.text == "Full sun to part shade"


def test_a_word_whose_box_runs_into_another_line_does_not_part_the_lines() -> None:
    first, second = words("Water deeply once a week until", 0, 0), words("established. Feed in spring", 0, 30)
    tall = Box(first[2].place.x, 0, first[2].place.w, 50)
    first[2] = Word(first[2].text, tall, tall, 0.9)
    lines = Line(tuple(first)), Line(tuple(second))
    assert in_rows(*lines) == "Water deeply once a week until\nestablished. Feed in spring"


def test_a_title_over_a_row_of_values_is_no_part_of_the_column_below_it() -> None:
    title = line("Red Hot Poker", 0, 0, 40), line("Kniphofia uvaria", 0, 50)
    values = line("1.2m", 0, 80), line("75cm", 200, 80)
    labels = line("tall", 0, 105), line("wide", 200, 105)
    text = tag_text(columns([*title, *values, *labels], {"tall", "wide"}.__contains__), "front", 500, "test")
    assert text.string.split("\n\n") == ["Red Hot Poker\nKniphofia uvaria", "tall\n1.2m", "wide\n75cm"]


def test_a_label_far_off_what_is_below_it_has_its_value_beside_it() -> None:
    """A table above, labels over their values below it: both on one side."""
    labels = {"Spread", "Water", "Soil"}.__contains__
    lines = [line("Spread", 0, 0), line("45 cm", 120, 0), line("Full sun", 0, 36)]
    for at, (label, value) in enumerate((("Water", "Low"), ("Soil", "Rich"))):
        lines += [line(label, 0, 80 + 60 * at), line(value, 0, 104 + 60 * at)]
    text = tag_text(rows(lines, labels), "front", 500, "test").string
    assert "Spread\t45 cm" in text
    near = [line("Spread", 0, 0), line("45 cm", 120, 0), line("Full sun", 0, 24), *lines[3:]]
    assert "Spread\n\n45 cm" in tag_text(rows(near, labels), "front", 500, "test").string


def test_a_headline_and_small_print_below_it_have_no_tie() -> None:
    assert in_rows(line("HYDRANGEA", 0, 0, 60), line("Full sun to part shade", 0, 70, 20)).count("\n\n") == 1


def up_the_side(text: str, x: int, bottom: int, height: int = 20) -> list[Word]:
    """Words of a line that runs upwards and leans a little to the left."""
    made, y = [], bottom
    for number, part in enumerate(text.split()):
        long = len(part) * height // 2
        place = Box(x - 2 * number, y - long, height, long)
        made.append(Word(part, place, place, 0.9))
        y -= long + height // 2
    return made


def test_words_up_the_side_stay_in_order_and_are_no_larger_than_others() -> None:
    (only,) = split_wide(up_the_side("Foxglove Beardtongue of meadows", 10, 500))
    assert only.text == "Foxglove Beardtongue of meadows"
    assert only.height == 20 == line("Full sun", 60, 0).height
    (word,) = split_wide(words("III", 0, 0))
    assert not word.upright


def test_a_line_up_the_side_is_in_no_row_with_level_ones() -> None:
    (side,) = split_wide(up_the_side("Foxglove Beardtongue", 10, 220))
    assert in_rows(side, line("Full sun", 60, 100)) in (
        "Foxglove Beardtongue\n\nFull sun",
        "Full sun\n\nFoxglove Beardtongue",
    )
    (side,) = split_wide(up_the_side("Foxglove Beardtongue", 10, 220))
    assert in_columns(side, line("Full sun", 0, 232)) == "Foxglove Beardtongue\n\nFull sun"


def test_labels_left_and_values_right() -> None:
    table = [
        line("Height", 0, 0),
        line("12 in", 300, 0),
        line("Spread", 0, 40),
        line("10 in", 300, 40),
    ]
    assert in_rows(*table) == "Height\t12 in\n\nSpread\t10 in"
    assert in_columns(*table) == "Height\nSpread\n\n12 in\n10 in"


def test_labels_above_values() -> None:
    table = [line("Height", 0, 0), line("Spread", 300, 0), line("12 in", 0, 30), line("10 in", 300, 30)]
    assert "Height\n12 in\n\nSpread\n10 in" in in_columns(*table)
    assert "Spread\n12 in" not in in_rows(*table)


def test_a_value_that_goes_on_below_itself() -> None:
    parts = [line("Height", 0, 0), line("12 to", 300, 0), line("18 inches", 300, 26)]
    assert "Height\t12 to\n18 inches" in in_rows(*parts)


def test_far_lines_have_no_tie() -> None:
    assert in_rows(line("Height", 0, 0), line("12 in", 0, 300)) == "Height\n\n12 in"


def test_a_title_beside_small_print_is_no_row() -> None:
    assert "\t" not in in_rows(line("SALVIA", 0, 0, height=80), line("Zone 5", 400, 0, height=20))


def test_merging_keeps_the_surer_reading_of_one_place_and_adds_what_it_lacks() -> None:
    good = line("Full sun", 0, 0, confidence=0.9)
    poor = line("Fu11 sum to shade", 0, 0, confidence=0.6)
    elsewhere = line("Zone 5", 0, 100, confidence=0.8)
    assert sorted(each.text for each in merge([poor, good, elsewhere])) == ["Full sun", "Zone 5", "to shade"]


def test_every_reading_stands_beside_the_merged_one() -> None:
    readings = {"page": [line("Full sun", 0, 0)], "lines": [line("Zone 5", 0, 100)]}
    texts = side_texts(readings, "back", 500)
    assert [text.reader for text in texts] == ["merged", "page", "lines"]
    assert {text.side for text in texts} == {"back"}
    assert "Full sun" in texts[0].string
    assert "Zone 5" in texts[0].string


def test_a_title_is_large_and_small_print_is_one() -> None:
    text = tag_text(
        rows([line("SALVIA", 0, 0, height=60), line("Plant in full sun in spring", 0, 100)]), "front", 200, ""
    )
    title, body = text.lines
    assert title.size == 3.0
    assert body.size == 1.0
    assert title.level < body.level


def test_every_span_leads_back_to_its_word() -> None:
    text = tag_text(rows([line("Zones 4-9", 5, 7)]), "front", 100, "")
    for span in text.words:
        assert text.string[span.start : span.end] == span.word.text
    assert text.words_in((6, 9))[0].text == "4-9"


LABELS = {"Height", "Spread", "Light"}


def arranged(*lines: Line) -> tuple[str, str]:
    """The rows and the columns text of a side whose labels are known."""
    is_label = LABELS.__contains__
    return (
        tag_text(rows(lines, is_label), "front", 500, "").string,
        tag_text(columns(lines, is_label), "front", 500, "").string,
    )


def test_in_a_table_nothing_below_a_label_is_its_value() -> None:
    in_order = arranged(
        line("Height", 0, 0),
        line("12 in", 300, 0),
        line("Spread", 0, 30),
        line("10 in", 300, 30),
        line("Grown near here", 0, 60),
    )
    assert "Spread\t10 in" in in_order[0]
    assert "Spread\nGrown" not in in_order[1]


def test_where_labels_stand_over_values_nothing_beside_a_label_is_its_value() -> None:
    in_order = arranged(
        line("Height", 0, 0),
        line("12 in", 0, 24),
        line("Spread", 0, 100),
        line("10 in", 0, 124),
        line("For pots", 300, 100),
    )
    assert "Spread\tFor pots" not in in_order[0]
    assert "Spread\n10 in" in in_order[1]


def test_labels_printed_under_their_values_come_first() -> None:
    in_order = arranged(
        line("12 in", 0, 0), line("Height", 0, 24), line("Full sun", 300, 0), line("Light", 300, 24)
    )
    assert "Height\n12 in" in in_order[1]
    assert "Light\nFull sun" in in_order[1]


def test_one_label_under_a_line_is_no_pattern() -> None:
    assert "Daisy\nHeight" in arranged(line("Daisy", 0, 0), line("Height", 0, 24))[1]


def test_a_lost_label_does_not_hand_its_value_to_the_next_one() -> None:
    """The label over "10 in" was not read, which parts the column; what follows still goes label, value."""
    in_order = arranged(
        line("Daisy", 0, 0),
        line("Height", 0, 30),
        line("10 in", 0, 108),
        line("Spread", 0, 138),
        line("14 in", 0, 160),
        line("Light", 0, 190),
        line("Full sun", 0, 212),
    )
    assert "Spread\n10 in" not in in_order[1]
    assert "Spread\n14 in\nLight\nFull sun" in in_order[1]


def test_the_ends_of_a_scale_are_no_values() -> None:
    scale = line("low", 0, 60), line("high", 400, 60)
    lines = [line("Water", 0, 0), line("Every ten days", 200, 0), *scale]
    assert all("low" not in text.string for text in side_texts({"a": lines}, "back", 500))
    labelled = [*lines[:2], line("Feeding", 0, 60), *(line("low", 160, 60), line("high", 400, 60))]
    assert all("low" in text.string for text in side_texts({"a": labelled}, "back", 500))
