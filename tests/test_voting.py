"""Readings of one side vote; the two sides are laid together; doubt is shown, never hidden."""

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest

from ocr_tags.claims.agreement import compare
from ocr_tags.claims.confidence import Evidence, Fit, fitted, is_sure
from ocr_tags.claims.of_side import Claim, claims, settle_places
from ocr_tags.claims.voting import readings, weigh
from ocr_tags.record import Box, Fact, Field, Found, Side, TagText, Word, WordSpan
from ocr_tags.values import BotanicalName, Hardiness, Length

PLAIN = Fit(
    start=-2.0,
    weights={"vote": 4.0, "second": 2.5, "unsupported": -0.5, "both_sides": 1.5, "in_place": -1.0},
    offsets={},
    shown=0.4,
    named=0.2,
    sure=0.97,
)
"""A fit of round figures, so that how votes are gathered is tested apart from how they were fitted."""


def read_number(tag: TagText) -> Iterator[Found[str]]:
    for match in re.finditer(r"\d+", tag.string):
        yield Found(match.group(), match.span())


BOTANICAL = Field(Fact("botanical_name", "Botanical name", BotanicalName), lambda tag: iter(()))
NUMBER = Field(Fact("number", "Number", str), read_number)
NUMBERS = Field(Fact("numbers", "Numbers", str, "list"), read_number)


def text(string: str, reader: str, side: str = "front", confidence: float = 0.9, x: int = 0) -> TagText:
    """A text whose words are ten pixels a letter, in one row."""
    spans = [
        WordSpan(
            *match.span(),
            Word(
                match.group(),
                box := Box(x + match.start() * 10, 0, len(match.group()) * 10, 20),
                box,
                confidence,
            ),
        )
        for match in re.finditer(r"\S+", string)
    ]
    return TagText(string, side, words=tuple(spans), reader=reader)  # type: ignore[arg-type]


SPECIES = BotanicalName("Salvia nemorosa", "Salvia", "nemorosa")
OTHER = BotanicalName("Nepeta racemosa", "Nepeta", "racemosa")


def stated(value: BotanicalName, side: Side, certainty: float) -> Claim:
    votes = (("rapidocr", certainty), ("tesseract", certainty))
    return Claim(value, value.name, side, Box(0, 0, 90, 20), votes, 0.0, certainty=certainty, asked=2)


def test_a_rival_whose_words_tell_of_something_else_casts_no_doubt() -> None:
    first = stated(SPECIES, "front", 0.9)
    likely, unlikely = (
        replace(stated(OTHER, "front", 0.85), box=Box(0, 90, 90, 20), meant=meant) for meant in (0.6, 0.0)
    )
    (_, doubted), (_, sure) = (weigh(BOTANICAL, [first, rival], PLAIN)[0] for rival in (likely, unlikely))
    assert doubted.elsewhere > 0.9 and sure.elsewhere == 0.0


def test_two_readings_that_agree_are_surer_than_one() -> None:
    alone = readings(NUMBER, claims([text("12", "page")], NUMBER), ())[0]
    both = readings(NUMBER, claims([text("12", "page"), text("12", "lines")], NUMBER), ())[0]
    assert both.confidence > alone.confidence


def test_one_reader_has_one_vote_however_often_it_finds_the_value() -> None:
    once = claims([text("12", "page")], NUMBER)
    twice = claims([text("12", "page"), text("12", "page")], NUMBER)
    assert once[0].strength == twice[0].strength


def test_of_two_readings_of_one_place_the_surer_stays_with_doubt() -> None:
    clear = readings(NUMBER, claims([text("12", "page")], NUMBER), ())[0]
    (settled,) = readings(
        NUMBER, claims([text("12", "page"), text("72", "lines", confidence=0.6)], NUMBER), (), PLAIN
    )
    assert settled.value == "12"
    assert settled.status == "read"
    assert settled.confidence < clear.confidence


def test_passes_of_one_engine_and_the_merged_text_are_one_vote() -> None:
    both = [text("12", "tesseract lines"), text("12", "tesseract page"), text("12", "merged")]
    (claim,) = claims(both, NUMBER)
    assert [engine for engine, _ in claim.votes] == ["tesseract"]
    assert claim.asked == 1


def test_an_engine_that_read_nothing_there_makes_less_sure_than_two_that_agree() -> None:
    agreed = claims([text("12", "tesseract lines"), text("12", "rapidocr lines")], NUMBER)
    single = claims([text("12", "rapidocr lines"), text("x", "tesseract lines")], NUMBER)
    (sure,), (less,) = (readings(NUMBER, found, ()) for found in (agreed, single))
    assert sure.confidence > less.confidence


def test_a_phrase_misread_in_one_letter_backs_the_other_engine() -> None:
    phrase = Field(Fact("phrase", "Phrase", str), lambda tag: iter([Found(tag.string, (0, len(tag.string)))]))
    found = claims([text("Keep soil moist", "a"), text("Keep soll moist", "b", confidence=0.7)], phrase)
    assert [(claim.value, len(claim.votes)) for claim in found] == [("Keep soil moist", 2)]


def test_the_fit_that_ships_takes_support_for_support_and_rivals_for_doubt() -> None:
    fit = fitted()
    middling = Evidence(vote=0.8, certainty=0.9)
    for kind, better in {
        "second": 1,
        "both_sides": 1,
        "elsewhere": -1,
        "in_place": -1,
        "unsupported": -1,
    }.items():
        moved = Evidence(**{"vote": 0.8, "certainty": 0.9, kind: 1.0})
        change = fit.chance("height", moved) - fit.chance("height", middling)
        assert change * better > 0, kind
    assert 0 < fit.shown < fit.sure < 1


def test_what_disagrees_is_never_sure_and_what_a_person_settled_always_is() -> None:
    assert not is_sure("disagreed", 0.999)
    assert is_sure("corrected", 0.1)


def test_sides_that_agree_say_so() -> None:
    (entry,) = readings(
        NUMBER, claims([text("12", "page")], NUMBER), claims([text("12", "page", side="back")], NUMBER)
    )
    assert entry.status == "agreed"


def test_sides_that_differ_show_both_values() -> None:
    (entry,) = readings(
        NUMBER, claims([text("12", "page")], NUMBER), claims([text("18", "page", side="back")], NUMBER)
    )
    assert entry.status == "disagreed"
    assert {entry.value, entry.alternatives[0].value} == {"12", "18"}
    assert {entry.side, entry.alternatives[0].side} == {"front", "back"}


def test_of_two_values_the_one_comes_first_whose_words_tell_of_the_fact() -> None:
    """Spread: "3 ft across", of a planting hole, beside "by 10-15 ft. wide"."""
    claim = Claim("12", "12", "back", None, (("rapidocr", 0.9), ("tesseract", 0.9)), 0.0, asked=2, meant=0.0)
    other = replace(claim, value="18", votes=(("rapidocr", 0.85), ("tesseract", 0.85)), meant=1.0)
    (entry,) = readings(NUMBER, (), [claim, other], PLAIN)
    assert (entry.value, entry.status) == ("18", "disagreed")


def test_what_was_hardly_read_is_absent() -> None:
    assert readings(NUMBER, claims([text("12", "page", confidence=0.2)], NUMBER), ()) == ()


def test_a_list_collects_items_and_keeps_their_print() -> None:
    (entry,) = readings(NUMBERS, claims([text("12 and 18", "page")], NUMBERS), ())
    assert entry.value == ("12", "18")
    assert entry.printed == "12 · 18"
    assert entry.box == Box(0, 0, 90, 20)


NAME = Field(
    Fact("name", "Name", str, "each"),
    lambda tag: (Found(m.group().strip(), m.span()) for m in re.finditer(r"[A-Z][A-Za-z ]+", tag.string)),
)


def test_items_that_one_reader_took_for_one_word_are_both_kept() -> None:
    box = Box(0, 0, 50, 20)
    word = Word("12·34", box, box, 0.9)
    read = TagText("12·34", "front", words=(WordSpan(0, 5, word),), reader="lines")
    assert [claim.value for claim in claims([read], NUMBERS)] == ["12", "34"]


def test_a_name_within_a_longer_name_is_a_name_of_its_own() -> None:
    front = claims([text("Coneflower", "page")], NAME)
    back = claims([text("Purple Coneflower", "page", side="back")], NAME)
    assert {entry.value for entry in readings(NAME, front, back)} == {"Coneflower", "Purple Coneflower"}


@pytest.mark.parametrize(
    ("first", "second", "verdict"),
    [
        ("Keep soil moist", "KEEP SOIL  MOIST.", "same"),
        ("Keep soil moist", "Keep soll moist", "same"),
        ("Keep soil moist", "Keep soil dry", "different"),
        ("12 in", "18 in", "different"),
        ("Salvia", "Salvia Blue", "poorer"),
        ("Lüttmoor", "Liittmoor", "same"),
        (
            BotanicalName("Salvia 'Dünenlied'", "Salvia", cultivar="Dünenlied"),
            BotanicalName("Salvia 'Diinenlied'", "Salvia", cultivar="Diinenlied"),
            "same",
        ),
        (Hardiness("5", None), Hardiness("5", "9"), "poorer"),
        (Hardiness("5", "9"), Hardiness("4", "9"), "different"),
        (Length(30.48, 45.72), Length(30.0, 45.0), "same"),
        (Length(30.48, 45.72), Length(None, 45.72), "different"),
        (BotanicalName("Salvia", "Salvia"), BotanicalName("Salvia nemorosa", "Salvia", "nemorosa"), "poorer"),
        (
            BotanicalName("Salvia", "Salvia", trade_designation="White"),
            BotanicalName("Salvia", "Salvia", trade_designation="Sky White"),
            "poorer",
        ),
        (
            BotanicalName("Salvia 'Sky'", "Salvia", cultivar="Sky"),
            BotanicalName("Salvia 'Sea'", "Salvia", cultivar="Sea"),
            "different",
        ),
        (BotanicalName("Salvia x", "Salvia", "x"), BotanicalName("Salvia y", "Salvia", "y"), "different"),
        (
            BotanicalName("Salvia", "Salvia", trade_designation="Sky"),
            BotanicalName("Salvia x 'Sky Sea'", "Salvia", "x", cultivar="Sky Sea"),
            "poorer",
        ),
    ],
)
def test_comparing_values(first: object, second: object, verdict: str) -> None:
    assert compare(first, second) == verdict


def test_bars_on_a_side_are_no_engine_that_missed_its_words() -> None:
    engines = [text("12", "tesseract lines"), text("12", "rapidocr lines")]
    (plain,) = claims(engines, NUMBER)
    (beside_bars,) = claims([*engines, text("x", "barcode", x=400)], NUMBER)
    assert plain.asked == beside_bars.asked == 2


def test_one_engine_s_value_knows_whether_the_other_read_its_letters() -> None:
    one, other = text("12", "tesseract lines"), text("l2", "rapidocr lines")
    texts = [one, other, text("7", "rapidocr lines", x=300)]
    found = {claim.value: claim.echo for claim in claims(texts, NUMBER)}
    assert found == {"12": 0.5, "7": 0.0}


def test_a_range_that_one_engine_has_whole_is_as_printed() -> None:
    """The far end of a range is often lost, and none is ever made up (common practice, no source)."""
    end = Claim(Length(61.0, 61.0), "24 in", "front", Box(60, 0, 40, 20), (("rapidocr", 0.95),), 0.0)
    whole = Claim(
        Length(46.0, 61.0), "18 in - 24 in", "front", Box(0, 0, 100, 20), (("tesseract", 0.7),), 0.0
    )
    (kept,) = settle_places([end, replace(whole, meant=0.1)])
    assert kept.value == whole.value and kept.partly


@pytest.mark.parametrize(
    ("name", "engines", "in_form"),
    [
        ("height", ("rapidocr",), 1.0),
        ("light part", ("rapidocr",), 1.0),
        ("soil", ("rapidocr",), 0.0),  # misread letters make other words
        ("height", ("tesseract",), 0.0),
        ("height", ("tesseract", "rapidocr"), 0.0),
    ],
)
def test_a_figure_that_the_better_engine_alone_found_is_told_from_words(
    name: str, engines: tuple[str, ...], in_form: float
) -> None:
    field = Field(Fact(name, name, str), lambda tag: iter(()))
    votes = tuple((engine, 0.9) for engine in engines)
    claim = Claim("12", "12", "front", Box(0, 0, 90, 20), votes, 0.0, asked=2)
    ((_, evidence),) = weigh(field, [claim], fitted())
    assert evidence.in_form == in_form


def test_letters_beside_a_drawn_mark_count_for_each_engine_that_reads_them() -> None:
    def marked(tag: TagText) -> list[Found[str]]:
        return [Found("12", (2, 4), 0.75)] if tag.reader == "rapidocr marks" else []

    field = Field(Fact("number", "Number", str), marked)
    drawn = text("↕ 12", "rapidocr marks")
    plain = replace(text("12", "tesseract lines"), words=(replace(drawn.words[1], start=0, end=2),))
    (both,) = claims([drawn, plain], field)
    assert [engine for engine, _ in both.votes] == ["rapidocr", "tesseract"]
    (alone,) = claims([drawn, text("13", "tesseract lines", x=300)], field)
    assert [engine for engine, _ in alone.votes] == ["rapidocr"]


def test_a_side_that_says_less_speaks_for_a_part_of_the_value_only() -> None:
    """A cultivar guessed from a title is no surer because the other side prints the species well."""
    species = BotanicalName("Phlox paniculata", "Phlox", "paniculata")
    whole = BotanicalName("Phlox paniculata 'Elm'", "Phlox", "paniculata", cultivar="Elm")
    guessed, printed = stated(whole, "front", 0.65), stated(species, "back", 0.96)
    ((reading, evidence),) = weigh(BOTANICAL, [guessed, printed], fitted())
    assert reading.value == whole
    assert (evidence.vote, evidence.certainty) == (0.65, 0.65)
    assert evidence.both_sides > 0


def test_engines_that_do_not_agree_where_a_value_ends_are_told_from_those_that_do() -> None:
    short, long = text("Water well", "tesseract lines"), text("Water well Hardy fern", "rapidocr lines")
    field = Field(Fact("phrase", "Phrase", str), lambda tag: iter([Found(tag.string, (0, len(tag.string)))]))
    (contested,), (agreed,) = claims([short, long], field), claims([long, replace_reader(long)], field)
    assert (contested.value, contested.partly) == ("Water well Hardy fern", True)
    assert not agreed.partly
    worn = text("Water well Hardy fern", "rapidocr lines", confidence=0.6)
    (shorter,) = claims([text("Water well", "tesseract lines", confidence=1.0), worn], field)
    assert (shorter.value, shorter.partly) == ("Water well", True)


def replace_reader(tag: TagText) -> TagText:
    return replace(tag, reader="tesseract lines")


def test_a_name_is_given_where_another_value_would_be_left_out() -> None:
    fit = fitted()
    assert (
        fit.least("common_names") == fit.least("botanical_name") == fit.named < fit.least("soil") == fit.shown
    )
    assert replace(fit, shown=0.5).least("common_names") == 0.5


def read_words(tag: TagText) -> Iterator[Found[str]]:
    yield Found(tag.string, (0, len(tag.string)), 0.9)


WORDS = Field(Fact("words", "Words", str), read_words)


def test_a_value_goes_on_as_far_as_the_clearer_engine_has_it() -> None:
    fuller, poorer = "Humus-rich, moist", "Humus-rich,"
    ran_on = claims([text(fuller, "one", confidence=0.6), text(poorer, "two", confidence=0.99)], WORDS)
    assert [claim.value for claim in ran_on] == [poorer]
    missed = claims([text(fuller, "one", confidence=0.99), text(poorer, "two", confidence=0.6)], WORDS)
    assert [claim.value for claim in missed] == [fuller]


def test_an_engine_that_has_the_fuller_value_does_not_speak_for_the_poorer_as_well() -> None:
    texts = [text("Humus-rich, moist", "one rows", confidence=0.6), text("Humus-rich,", "one columns")]
    assert [claim.value for claim in claims(texts, WORDS)] == ["Humus-rich, moist"]


def test_what_only_the_weaker_engine_found_is_less_likely_than_what_only_the_better_one_did() -> None:
    engines = ("rapidocr lines", "tesseract lines")
    better, weaker = (
        weigh(NUMBER, claims([text("12", found), text("x", missed)], NUMBER), fitted())[0][0].confidence
        for found, missed in (engines, engines[::-1])
    )
    assert weaker < better
