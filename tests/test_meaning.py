"""What words tell of is learnt from typed tags: what a pattern takes for something else is doubted."""

import json
import sys
from pathlib import Path

import pytest

from ocr_tags import facts
from ocr_tags.claims.confidence import Evidence, fitted
from ocr_tags.claims.of_side import Claim, claims
from ocr_tags.fields import FIELDS
from ocr_tags.meaning.model import UNKNOWN, meaning
from ocr_tags.record import Field, Found, TagText

sys.path.insert(0, str(Path(__file__).parent.parent / "samples"))

from fit_meaning import files_to_learn
from score import Tally
from typed import TYPED, laid_out, typed_tags, verdicts

TAG = TagText(
    "Purple Coneflower\nEchinacea purpurea\n\nHeight 30-45 cm\nWater deeply once a week\n"
    "Any well-drained soil\n\nGrown by Hollow Oak Nursery"
)


def test_chances_are_of_the_span_asked_for() -> None:
    start = TAG.string.index("Water deeply")
    whole = (start, TAG.string.index("\nAny well"))
    assert meaning(TAG).chance("water", whole) > 0.9
    assert meaning(TAG).chance("soil", whole) < 0.1
    assert meaning(TAG).chance("no such fact", whole) == UNKNOWN


def test_a_phrase_cut_short_leaves_words_beyond() -> None:
    start = TAG.string.index("Water deeply")
    cut = (start, start + len("Water deeply"))
    whole = (start, TAG.string.index("\nAny well"))
    assert meaning(TAG).beyond("water", cut) > 0.5 > meaning(TAG).beyond("water", whole)


@pytest.mark.parametrize("string", ["", "↕", "Ö", "12", "a\tb\n\nc"])
def test_any_text_has_a_meaning(string: str) -> None:
    found = meaning(TagText(string))
    assert 0 <= found.chance("water", (0, len(string))) <= 1
    assert 0 <= found.beyond("water", (0, 1)) <= 1


def test_a_value_cut_short_or_taken_for_something_else_is_less_likely() -> None:
    whole, other = one_claim("Water deeply once a week"), one_claim("Hollow Oak")
    cut = one_claim("Water deeply", "deep watering")  # not as printed, so no words are added to it
    assert whole.meant > 0.9 > 0.5 > other.meant and cut.beyond > 0.5 > whole.beyond
    assert chance(whole) > chance(cut) and chance(whole) > chance(other)


def test_a_phrase_cut_short_is_given_the_rest_of_its_words() -> None:
    assert one_claim("Water deeply").value == "Water deeply once a week"


def one_claim(words: str, value: str | None = None) -> Claim:
    start = TAG.string.index(words)
    field = Field(facts.WATER, lambda tag: iter([Found(value or words, (start, start + len(words)))]))
    (claim,) = claims([TAG], field)
    return claim


def chance(claim: Claim) -> float:
    return fitted().chance("water", Evidence(vote=1.0, meant=claim.meant, beyond=claim.beyond))


# ---------------------------------------------------------------- what it is learnt from


FILES = sorted(TYPED.glob("*.jsonl"))


def test_marks_are_laid_out_with_their_words() -> None:
    lines, height = laid_out("2|{common_names|Bee Balm}\nSoil\t{soil|moist, {colours|black}} loam")
    words = [(word.text, word.marks[0][0] if word.marks[0] else None) for line in lines for word in line]
    assert words == [
        ("Bee", "common_names"),
        ("Balm", "common_names"),
        ("Soil", None),
        ("moist,", "soil"),
        ("black", "soil"),
        ("loam", None),
    ]
    assert lines[0][0].box.h == 2 * lines[1][0].box.h and height > lines[-1][0].box.bottom


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_typed_tags_are_whole(file: Path) -> None:
    known = {field.name for field in FIELDS}
    for tag in typed_tags(file):
        assert tag["fields"] and set(tag["fields"]) <= known, tag["tag"]
        for side in ("front", "back"):
            marks = {mark for line in laid_out(tag.get(side, ""))[0] for word in line for mark in word.marks}
            assert {mark[0] for mark in marks if mark} <= known, tag["tag"]


def test_no_tag_is_typed_twice() -> None:
    names = [json.loads(row)["tag"] for file in FILES for row in file.read_text("utf-8").splitlines()]
    assert len(set(names)) == len(names)


def test_what_judges_is_not_learnt_from() -> None:
    learnt = {file.stem for file in files_to_learn(FILES[:1])}
    assert learnt == {file.stem for file in FILES[1:]} - {"judging", "ordinary", "calibrating"}


@pytest.mark.parametrize(("name", "f1", "wrong"), [("judging", 0.86, 0.065), ("ordinary", 0.95, 0.025)])
def test_typed_tags_of_strangers_are_read(name: str, f1: float, wrong: float) -> None:
    tally = Tally()
    for tag in typed_tags(TYPED / f"{name}.jsonl"):
        for verdict in verdicts(tag):
            tally.add(verdict)
    assert tally.f1 > f1 and tally.wrong_share < wrong
