"""Lists with a dot before each item, and what readers make of the dots (common practice, no source)."""

from test_text import Line, in_columns, line, words

from ocr_tags.fields.labels import is_label
from ocr_tags.layout.bullets import as_list, no_rest


def texts(*lines: Line) -> list[str]:
    return [each.text for each in as_list(lines)]


def test_a_dot_misread_before_several_items_is_a_dot() -> None:
    items = line("¢ Grows 12 in", 0, 0), line("* Hardy", 0, 30), line("e Best in sun", 0, 60)
    assert texts(*items) == ["• Grows 12 in", "• Hardy", "• Best in sun"]
    heads = line("> Red and gold", 0, 0), line("> Knee high", 0, 30), line("> Hardy", 0, 60)
    assert texts(*heads) == ["• Red and gold", "• Knee high", "• Hardy"]


def test_a_sign_before_one_line_or_before_small_letters_is_no_dot() -> None:
    assert texts(line("© Marl Growers", 0, 0), line("Full sun", 0, 30)) == ["© Marl Growers", "Full sun"]
    letters = line("e grown by us", 0, 0), line("e fed weekly", 0, 30), line("e watered", 0, 60)
    assert texts(*letters) == ["e grown by us", "e fed weekly", "e watered"]


def test_a_second_column_of_items_begins_at_its_dots() -> None:
    first = Line((*words("• Grows 3 ft", 0, 0), *words("* Keep evenly", 140, 0)))
    below = line("• Tree", 0, 60), line("• Rich soil", 142, 60)
    assert texts(first, *below) == ["• Grows 3 ft", "• Keep evenly", "• Tree", "• Rich soil"]
    in_a_sentence = line("Borders • Pots • Bees", 0, 90)
    assert texts(first, *below, in_a_sentence)[-1] == "Borders • Pots • Bees"


def test_the_rest_of_an_item_is_no_label_whatever_its_word() -> None:
    lines = [line("• Regular", 0, 0), line("watering", 20, 22), line("Watering", 0, 80)]
    assert in_columns(*lines[:2]) == "• Regular\nwatering"
    label = no_rest(lines, is_label)
    assert [label(each.text) for each in lines] == [False, False, True]
