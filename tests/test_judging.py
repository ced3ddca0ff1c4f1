"""The judging set: its truth is what its tags say. Its fonts may be missing: one font stands in for all."""

import importlib.util
import json
import re
import sys
from collections.abc import Iterator
from functools import cache
from itertools import combinations, islice
from pathlib import Path
from random import Random
from typing import Any

import pytest
from PIL import ImageFont

FOLDER = Path(__file__).parent.parent / "samples" / "judging"
sys.path[:0] = [str(FOLDER), str(FOLDER.parent)]

import art  # noqa: E402
import backs  # noqa: E402
import blocks  # noqa: E402
import faces  # noqa: E402
import fronts  # noqa: E402
import press  # noqa: E402
import second_faces  # noqa: E402
import second_sides  # noqa: E402
import sides  # noqa: E402
from facts import Fact, Said  # noqa: E402
from figures import Hand, Length, check_digit, in_store_number, say_length, zone_floor  # noqa: E402
from outlines import SHAPES  # noqa: E402
from saying import Tag, plan_tag  # noqa: E402
from second_says import load_second, plan_copy  # noqa: E402
from smallprint import bars  # noqa: E402
from species import load_species  # noqa: E402

# `samples` has a draw.py of its own.
_spec = importlib.util.spec_from_file_location("judging_draw", FOLDER / "draw.py")
assert _spec and _spec.loader
draw = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(draw)

HAND = Hand("-", '"', " ft", " cm", " m", "hyphen", False, "( )", False)


def _everything(tag: Tag) -> dict[str, Any]:
    said = Said()
    named = (tag.common, tag.second_common, tag.foreign_common, tag.botanical, tag.series)
    for fact in (*named, *tag.facts, *tag.small, tag.passport, tag.gtin):
        if fact:
            said.add(fact, "back")
    return said.truth()[0]


def test_every_species_makes_a_tag_whose_truth_is_whole() -> None:
    for number, species in enumerate(load_species()):
        fields = _everything(plan_tag(Random(number), species))
        assert json.loads(json.dumps(fields)) == fields
        assert fields["botanical_name"]["value"]["genus"] == species.genus
        for length in ("height", "spread", "spacing"):
            value = fields.get(length, {"value": {"min_cm": 1, "max_cm": 2}})["value"]
            assert value["min_cm"] is None or 0 < value["min_cm"] <= value["max_cm"]


def test_there_are_plants_enough() -> None:
    assert len({species.name for species in load_species()}) >= 120


def test_lengths_say_what_they_are_worth() -> None:
    # 1 in = 2.54 cm and 1 ft = 30.48 cm exactly (international yard and pound agreement, 1959).
    assert say_length(Length(1.5, 2, "ft", "range"), HAND) == "1-1/2 to 2 ft (45-60 cm)"
    assert Length(12, 18, "in", "range").value == {"min_cm": 30.48, "max_cm": 45.72}
    assert Length(2, 3, "ft", "upto").value == {"min_cm": None, "max_cm": 91.44}


def test_zone_limits() -> None:
    # USDA Plant Hardiness Zone Map: 5a begins at -20 F, 7b at 5 F.
    assert (zone_floor("5"), zone_floor("7b")) == (-20, 5)


@pytest.mark.parametrize(("digits", "last"), [("629104150021", "3"), ("730001100001", "7")])
def test_check_digits(digits: str, last: str) -> None:
    """Worked examples of GS1 and of GS1 Sweden."""
    assert check_digit(digits) == last


def test_bars_follow_the_code_sets() -> None:
    """ISO/IEC 15420, code sets A, B and C, from memory; ZXing 3.1 read bars drawn by this function."""
    left = "0001101 0100111 0111101 0001011 0010111 0011101"  # 0 in A, 0 in B, 3 in A, 9 in A, 9 in B, 4 in B
    right = "1100110 1001110 1001110 1011100 1001000 1010000"
    assert bars("4003994155486") == f"101{left}01010{right}101".replace(" ", "")


@pytest.mark.parametrize("european", [True, False])
def test_numbers_are_none_that_a_product_bears(european: bool) -> None:
    # GS1: prefixes 20 to 29 and UPC-A beginning with 4 are for use inside a shop.
    for seed in range(50):
        number = in_store_number(Random(seed), european)
        assert (len(number), number[0]) == ((13, "2") if european else (12, "4"))
        assert check_digit(number[:-1]) == number[-1]


def test_two_values_of_one_field_are_refused() -> None:
    said = Said()
    said.add(Fact("water", "Water", "Low", "Low"), "front")
    said.add(Fact("water", "Water", "High", "High"), "back")
    with pytest.raises(ValueError, match="two values for water"):
        said.truth()


# ---------------------------------------------------------------- the second part


@pytest.fixture
def one_font(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The font that Pillow brings along stands in for every font of the tags."""
    plain = cache(lambda _name, size: ImageFont.load_default(size))
    for module in (faces, press):
        monkeypatch.setattr(module, "font", plain)
    for known in (faces.has, faces._absent):
        known.cache_clear()
    yield
    for known in (faces.has, faces._absent):
        known.cache_clear()


def _print(seed: int, shape: str) -> tuple[Any, Said, list[tuple[str, Any, str]]]:
    rng, said = Random(seed), Said()
    outline, species = SHAPES[shape][0](rng), load_second()[seed % len(load_second())]
    copy = plan_copy(rng, species)
    return copy, said, draw.print_sides(copy, True, outline, "hard", rng, said)


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.replace("\u200c", "").casefold())


def test_every_species_of_the_second_part_makes_a_tag_whose_truth_is_whole() -> None:
    for number, species in enumerate(load_second()):
        copy, said = plan_copy(Random(number), species), Said()
        facts = (*copy.commons, copy.botanical, *(fact for line in copy.lines for fact in line.facts))
        for fact in (*facts, *copy.small, copy.series, copy.price, copy.passport, copy.gtin):
            if fact:
                said.add(fact, "back")
        fields = said.truth()[0]
        assert json.loads(json.dumps(fields)) == fields
        assert fields["botanical_name"]["value"]["genus"] == species.genus
        assert {"common_names", "categories"} <= set(fields)


def test_the_parts_share_no_plant() -> None:
    second = {species.name for species in load_second()}
    first = {species.name for species in load_species()}
    assert len(second) >= 25
    assert not second & first
    for part, wanted in (("first", first), ("second", second), ("all", first | second)):
        count = len(wanted)
        assert {species.name for species in draw.choose_species(Random(1), count, part)} == wanted


def test_the_first_part_draws_what_it_drew_before_there_was_a_second() -> None:
    # Noted from tags drawn with seed 31 when the set had one part.
    chosen = islice(draw.choose_species(Random("31 easy"), 24, "first"), 4)
    names = [species.commons[0] for species in chosen]
    assert names == ["Garden Speedwell", "Sweet Pepper", "Little Bluestem", "Winged Spindle"]


def test_fonts_serve_one_generator_only() -> None:
    """But for Noto, which lends both parts of the judging set single letters, and OCR-B below bar codes."""
    families = (path for family in art.FAMILIES.values() for path in family)
    built = {Path(path).name for path in (*families, *art.DISPLAY.values(), *art.ORNAMENTAL.values())}
    first, second = faces.wanted(), second_faces.wanted()
    assert len(built) > 20 < len(second)
    assert not built & first
    assert not second & (built | first)


def test_layouts_serve_one_generator_only() -> None:
    first = {*sides.ROW_STYLES, *blocks.ROWS, "picture", "cover", "band", "plain", "side", "two languages"}
    second = {*second_sides.FRONTS, *second_sides.BACKS, "tongues"}
    assert not second & (first | set(fronts.FRONTS) | set(backs.BACKS))


def test_marks_and_quotes_stand_where_the_code_wants_them() -> None:
    """ICNCP 2016: an epithet stands in single quotes, a trade designation never; ™ and ® are the trade's."""
    for seed in range(300):
        copy = plan_copy(Random(seed), load_second()[seed % 60])
        value = copy.botanical.value
        if value["trade_designation"]:
            assert copy.title.rstrip("™®") == value["trade_designation"]
        elif copy.title:
            assert copy.title[1:-1] == value["cultivar"]
            assert (copy.title[0], copy.title[-1]) in {("'", "'"), ("‘", "’")}


def test_print_stands_out_from_its_paper() -> None:
    """WCAG 2.1, success criterion 1.4.3: 4.5 to 1 at least."""
    for paper, *inks in (*second_faces.LIGHT, *second_faces.DARK):
        for ink in inks:
            dark, light = sorted((_luminance(paper), _luminance(ink)))
            assert (light + 0.05) / (dark + 0.05) >= 4.5


def _luminance(colour: tuple[int, int, int]) -> float:
    """Relative luminance of sRGB, as WCAG 2.1 defines it."""
    linear = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in (n / 255 for n in colour)]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_the_same_seed_prints_the_same(one_font: None) -> None:
    first, again, other = (_print(seed, "hang") for seed in (5, 5, 72))
    assert first[1].truth() == again[1].truth() != other[1].truth()
    pixels = [[pen.image.tobytes() for _, pen, _ in printed[2]] for printed in (first, again, other)]
    assert pixels[0] == pixels[1] != pixels[2]


@pytest.mark.parametrize("shape", ["stake", "wide", "loop"])
def test_truth_is_printed_on_the_side_it_names(
    shape: str, one_font: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown: dict[str, list[str]] = {}
    line = press.Pen.line

    def note(pen: Any, x: float, y: float, text: str, *rest: Any, **more: Any) -> float:
        if not pen.dry:
            shown.setdefault(pen.side, []).extend(_words(text))
        return line(pen, x, y, text, *rest, **more)

    monkeypatch.setattr(press.Pen, "line", note)
    for seed in range(5):
        shown.clear()
        fields, also = _print(seed, shape)[1].truth()
        names = fields.pop("common_names", [])
        for field, entry in (*fields.items(), *also.items(), *(("name", name) for name in names)):
            said = entry["value"] if isinstance(entry["value"], str) else entry["printed"]
            for side in entry["sides"]:
                if field == "gtin":  # printed in groups of digits
                    assert said in "".join(shown[side])
                else:
                    assert set(_words(said)) <= set(shown[side]), (seed, field, side)


def test_words_keep_to_their_columns_and_apart(one_font: None) -> None:
    for seed in range(40, 44):
        for _, pen, _ in _print(seed, "stake")[2]:
            # A line's box holds its leading too: its middle half is the letters.
            boxes = [(a + 2, b + (d - b) / 4, c - 2, d - (d - b) / 4) for a, b, c, d in pen.printed]
            assert all(left >= 0 and right <= pen.image.width for left, _, right, _ in boxes)
            for one, other in combinations(boxes, 2):
                beside = one[2] <= other[0] or other[2] <= one[0]
                assert beside or one[3] <= other[1] or other[3] <= one[1]
