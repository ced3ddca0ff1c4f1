"""What no pattern knows is told by example, and only there: the words come from examples, the value from the
field's own reader."""

from dataclasses import replace

import pytest

from ocr_tags.claims import by_example as room
from ocr_tags.claims.both_sides import settled
from ocr_tags.claims.of_side import claims
from ocr_tags.fields import FIELDS
from ocr_tags.meaning.features import tokens
from ocr_tags.meaning.model import Meaning
from ocr_tags.record import Field, TagText

BY_NAME = {field.name: field for field in FIELDS}
STRANGE = TagText("Sky Lantern\nLanky thing, 60-90 cm all told\nA drink at each moonrise")


def taught(tag: TagText, fact: str, words: str, chance: float = 0.9) -> Meaning:
    """A meaning by which these words tell of a fact, and nothing else does."""
    found = tokens(tag.string)
    start = tag.string.index(words)
    inside = [start <= token.start < start + len(words) for token in found]
    first = inside.index(True)
    begins = [chance if at == first else 0.0 for at in range(len(found))]
    goes_on = [chance if held and at != first else 0.0 for at, held in enumerate(inside)]
    return Meaning(tuple(found), {fact: begins}, {fact: goes_on})


@pytest.fixture
def teach(monkeypatch: pytest.MonkeyPatch) -> object:
    def learn(tag: TagText, fact: str, words: str, chance: float = 0.9) -> None:
        monkeypatch.setattr(room, "meaning", lambda text: taught(tag, fact, words, chance))

    return learn


def guesses(field: Field[object], tag: TagText = STRANGE) -> list[tuple[object, str, bool]]:
    return [(claim.value, claim.printed, claim.by_example) for claim in claims([tag], field)]


def test_where_words_tell_of_a_fact_and_how_surely() -> None:
    told = taught(STRANGE, "height", "60-90 cm", 0.8)
    ((start, end, chance),) = told.told("height")
    assert (STRANGE.string[start:end], chance) == ("60-90 cm", 0.8)
    assert not list(told.told("spread"))
    unsure = replace(told, goes_on={"height": [0.45 if c == 0.8 else c for c in told.goes_on["height"]]})
    assert [STRANGE.string[a:b] for a, b, _ in unsure.told("height")] == ["60"]


def test_a_length_that_no_pattern_knows_is_read_as_if_labelled(teach) -> None:  # type: ignore[no-untyped-def]
    assert guesses(BY_NAME["height"]) == []
    teach(STRANGE, "height", "60-90 cm")
    ((value, printed, guessed),) = guesses(BY_NAME["height"])
    assert (value.min_cm, value.max_cm, printed, guessed) == (60, 90, "60-90 cm", True)  # type: ignore[attr-defined]


def test_what_the_reader_of_the_fact_does_not_understand_is_no_value(teach) -> None:  # type: ignore[no-untyped-def]
    teach(STRANGE, "height", "Lanky thing")
    assert guesses(BY_NAME["height"]) == []
    teach(STRANGE, "patents", "Lanky thing")
    assert guesses(BY_NAME["patents"]) == []


def test_a_phrase_keeps_its_words(teach) -> None:  # type: ignore[no-untyped-def]
    teach(STRANGE, "water", "A drink at each moonrise")
    assert guesses(BY_NAME["water"]) == [("A drink at each moonrise", "A drink at each moonrise", True)]


def test_examples_are_silent_where_a_pattern_speaks(teach) -> None:  # type: ignore[no-untyped-def]
    tag = TagText("Height: 12 in\nLanky thing, 60-90 cm all told")
    teach(tag, "height", "60-90 cm")
    assert [(printed, guessed) for _, printed, guessed in guesses(BY_NAME["height"], tag)] == [
        ("12 in", False)
    ]
    (known,) = claims([tag], BY_NAME["height"])
    (guess,) = claims([STRANGE], BY_NAME["height"]) or [replace(known, by_example=True, side="back")]
    assert settled({"height": [known, guess]})["height"] == [known]


def test_words_that_another_fact_holds_are_not_told_by_example(teach) -> None:  # type: ignore[no-untyped-def]
    tag = TagText("Spacing: 60-90 cm")
    teach(tag, "height", "60-90 cm")
    height, spacing = (claims([tag], BY_NAME[name]) for name in ("height", "spacing"))
    assert height and height[0].by_example and not spacing[0].by_example
    assert settled({"height": height, "spacing": spacing})["height"] == []
    assert settled({"height": height})["height"] == list(height)
