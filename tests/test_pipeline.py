"""Two sides become one record: what is said about a side that gave no name, and when nothing is said."""

from dataclasses import replace

from fake_reading import side_of

from ocr_tags.claims.of_side import Claim
from ocr_tags.layout.lines import Line
from ocr_tags.pipeline import SideRead, _with_codes, make_record
from ocr_tags.record import Box, Photo, Side, Word


def side(which: Side, *names: str, strength: float = 0.9) -> SideRead:
    """A side that was read well and gives these common names."""
    claims = tuple(
        Claim(name, name, which, Box(0, 0, 90, 20), (("page", strength), ("lines", strength)), order)
        for order, name in enumerate(names)
    )
    photo = Photo(which, f"{which}.jpg", which, 100, 100)
    return SideRead(photo, {"common_names": claims}, (), None, 20, ("test",))


def test_sides_that_both_give_the_name_need_no_note() -> None:
    record = make_record(side("front", "Shasta Daisy", strength=0.8), side("back", "Shasta Daisy"))
    (name,) = record.readings["common_names"]
    assert (name.side, name.status) == ("back", "agreed")
    assert record.notes == ()


def test_a_name_that_only_the_back_gives_is_said_to_be_from_the_back() -> None:
    (note,) = make_record(side("front"), side("back", "Shasta Daisy")).notes
    assert "front gave no name" in note


def test_a_front_too_faint_to_count_gave_no_name() -> None:
    (note,) = make_record(side("front", "Shasta Daisy", strength=0.1), side("back", "Shasta Daisy")).notes
    assert "front gave no name" in note


def test_a_name_that_only_the_front_gives_needs_no_note() -> None:
    assert make_record(side("front", "Shasta Daisy"), side("back")).notes == ()


def test_a_front_of_few_words_is_unreadable_only_when_none_of_them_is_a_value() -> None:
    named, blank = (replace(side("front", *names), word_count=2) for names in (("Snake Plant",), ()))
    assert make_record(named, side("back", "Snake Plant")).notes == ()
    (note,) = make_record(blank, side("back", "Snake Plant")).notes
    assert note == "The front could not be read (front.jpg)."


def word(text: str, box: Box, reader: str) -> Word:
    return Word(text, box, box, 0.9, reader)


def test_bars_are_read_as_a_number_and_never_as_letters() -> None:
    title = Line((word("Daisy", Box(0, 0, 90, 20), "page"),))
    stripes = Line((word("IIHIH", Box(20, 60, 60, 20), "page"),))
    codes = [
        word("6291041500213", Box(10, 50, 90, 40), "barcode"),
        word("https://daisy.example", Box(10, 150, 60, 60), "qr"),
    ]
    passes = _with_codes({"page": [title, stripes]}, codes)
    assert passes == {"page": [title], "barcode": [Line((codes[0],))]}
    assert _with_codes({"page": [title, stripes]}, []) == {"page": [title, stripes]}


def test_the_dollar_is_that_of_the_land_the_other_side_names() -> None:
    front, back = "Japanese Maple\nAcer palmatum\n$39.95", "Japanese Maple\nCarrow Nursery, Wombeek VIC 3999"
    record = make_record(side_of(front, "a.jpg", "a"), side_of(back, "b.jpg", "b"))
    (price,) = record.readings["price"]
    assert (price.value.amount, price.value.currency, price.side) == ("39.95", "AUD", "front")
    priced = make_record(side_of(front, "a.jpg", "a"), side_of(back + "\n$39.95", "b.jpg", "b"))
    assert [one.status for one in priced.readings["price"]] == ["agreed"]
