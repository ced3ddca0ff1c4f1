"""Height, flower height, spread, spacing, row spacing: from rows of tag text, and printed and read back."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.fields import FIELDS
from ocr_tags.fields.sizes.reader import read_height, read_spacing
from ocr_tags.record import Found, TagText
from ocr_tags.values import Length

SIZES = [field for field in FIELDS if field.fact.type is Length]
CM = {"in": 2.54, "ft": 30.48, "cm": 1.0, "m": 100.0}  # NIST SP 811, appendix B.8
SURE = 0.5
CASES = Path(__file__).parent / "cases"
Row = tuple[str, dict[str, tuple[Length, str]], bool]


def rows(pattern: str) -> Iterator[object]:
    for path in sorted(CASES.glob(pattern)):
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1):
            if line and not line.startswith("#"):
                yield pytest.param(line, id=f"{path.stem}-{number}")


def row(line: str) -> Row:
    """The text, what must be read of it with its mark, and whether doubtful findings are allowed beside."""
    text, wanted = line.split("\t")
    values = {}
    for part in wanted.split():
        if match := re.fullmatch(r"(\w+)=([\d.]*)(:?)([\d.]*)(in|ft|cm|m)([~?]?)", part):
            name, low, colon, high, unit, mark = match.groups()
            ends = [float(end) * CM[unit] if end else None for end in (low, high if colon else low)]
            values[name] = (Length(*ends), mark)
        else:
            assert part in {"-", "-?"}, part
    return text.replace("\\n", "\n").replace("\\t", "\t"), values, wanted == "-?"


def same(one: Length, other: Length) -> bool:
    pairs = ((one.min_cm, other.min_cm), (one.max_cm, other.max_cm))
    return all(
        a is b is None or (a is not None and b is not None and math.isclose(a, b, rel_tol=1e-5))
        for a, b in pairs
    )


def read(text: str) -> dict[str, list[Found[Length]]]:
    found = {field.name: list(field.read(TagText(text))) for field in SIZES}
    return {name: values for name, values in found.items() if values}


@pytest.mark.parametrize("line", list(rows("sizes*.tsv")))
def test_rows(line: str) -> None:
    text, wanted, doubt_allowed = row(line)
    found = read(text)
    for name, values in found.items():
        for value in values:
            if name in wanted:
                assert same(value.value, wanted[name][0])
                assert value.certainty <= {"~": 0.9, "?": SURE, "": 1}[wanted[name][1]]
            else:
                assert doubt_allowed and value.certainty <= SURE, (name, value)
    sure = {name for name, values in found.items() if any(value.certainty > SURE for value in values)}
    assert {name for name, (_, mark) in wanted.items() if mark != "?"} <= sure


LABELS = {
    "height": [
        "Height",
        "Ht.",
        "HEIGHT",
        "Mature Height",
        "Hauteur",
        "Altura",
        "Höhe",
        "Hoogte",
        "Plant height",
    ],
    "spread": ["Spread", "Width", "Wd.", "SPREAD", "Étalement", "Largeur", "Ancho", "Breite", "Breedte"],
    "spacing": ["Spacing", "Plant Spacing", "SPACING", "Espacement", "Espaciamiento", "Pflanzabstand"],
    "flower_height": ["Flower height", "Bloom Height", "Height in bloom", "Hauteur en fleur", "Blütenhöhe"],
    "row_spacing": ["Row Spacing", "ROW SPACING", "Reihenabstand"],
}
FORMS = ["{}-{} in", '{}-{}"', "{} to {} inches", "{}–{} in.", "{} - {} in"]


@given(st.data())
def test_a_printed_tag_is_read_back(data: st.DataObject) -> None:
    kinds = data.draw(st.lists(st.sampled_from(sorted(LABELS)), min_size=1, max_size=5, unique=True))
    gap = data.draw(st.sampled_from([": ", " ", "\t", "\n", " ..... ", ":\t", ":\n", " - "]))
    between = data.draw(st.sampled_from(["\n", "\n\n"] if gap != " " else ["\n", "\n\n", "  ", "; "]))
    printed, wanted = [], {}
    for kind in kinds:
        low = data.draw(st.integers(2, 30))
        high = data.draw(st.integers(low, 3 * low))
        size = data.draw(st.sampled_from(FORMS)).format(low, high)
        printed.append(data.draw(st.sampled_from(LABELS[kind])) + gap + size)
        wanted[kind] = Length(low * 2.54, high * 2.54)
    text = between.join(printed)
    found = read(text)
    assert found.keys() == wanted.keys(), text
    for kind, values in found.items():
        assert all(same(value.value, wanted[kind]) for value in values), text


@pytest.mark.parametrize("kind", LABELS)
def test_nothing_is_filled_from_another(kind: str) -> None:
    assert set(read(f"{LABELS[kind][0]}: 12-18 in")) == {kind}


@given(
    st.sampled_from(sorted(LABELS)),
    st.sampled_from(["\n\n", " Full sun ", "\n\n\n", "\tFull sun\n", ". Feed often. "]),
)
def test_a_label_does_not_reach_past_other_text(kind: str, gap: str) -> None:
    assert read(f"{LABELS[kind][0]}{gap}12-18 in") == {}


@given(st.text(alphabet="Height Spread W\t\n12-8½\"'incmft./:apart", max_size=80))
def test_no_text_is_too_strange(text: str) -> None:
    for values in read(text).values():
        for value in values:
            assert 0 <= value.span[0] < value.span[1] <= len(text)
            assert 0 < value.certainty <= 1


@pytest.mark.parametrize(("plants", "metres"), [(1, 1.0), (4, 0.5), (16, 0.25), (25, 0.2), (100, 0.1)])
def test_plants_in_a_square_metre_are_a_square_grid(plants: int, metres: float) -> None:
    """Square grid geometry: plants per m² = 10 000 / s², s in cm."""
    text = f"{plants}/m²"
    found = list(read_spacing(TagText(text)))
    if plants == 100:
        assert found == []  # three figures: a price or a dose
    else:
        assert [value.value.min_cm for value in found] == [pytest.approx(100 * metres)]


@pytest.mark.parametrize(("inches", "plants"), [(6, 4), (12, 1)])
def test_plants_in_a_square_foot(inches: int, plants: int) -> None:
    """Iowa State University Extension, Determining Plant Quantity (1992): 6 in 4, 12 in 1 per square foot."""
    (found,) = read_spacing(TagText(f"{plants} plants per sq ft"))
    assert found.value.min_cm == pytest.approx(inches * 2.54)


def test_the_span_is_the_printed_length() -> None:
    text = 'Height: 12-18" (30-45 cm)'
    (found,) = read_height(TagText(text))
    assert text[slice(*found.span)] == '12-18" (30-45 cm)'


def test_a_height_after_some_years_gives_way_to_the_last_one() -> None:
    young, grown = read("Height after 10 years 2.5m, ultimately up to 8m")["height"]
    assert grown.value.max_cm == 800 and young.certainty <= SURE < grown.certainty
    small, tall = read("Forest tree, 5 m in ten years, up to 12 m in the end.")["height"]
    assert small.certainty < 0.3 < tall.certainty
    assert tall.value == Length(None, 1200)
    (alone,) = read("Height in 10 years: 3m")["height"]
    assert alone.certainty > SURE


def test_an_arrow_gives_way_to_a_label_that_waits_for_its_figure() -> None:
    (spread,) = read("Wuchshöhe\nPflanzabstand\n200-300 cm\t↔ 80 cm")["spread"]
    assert spread.certainty <= SURE


def test_an_arrow_over_a_pot_is_no_spread() -> None:
    (spread,) = read("Pot\n↔12cm")["spread"]
    assert spread.certainty <= SURE


def test_years_of_something_else_leave_a_height_alone() -> None:
    (height,) = read("Height in 10 years: 3m. Lives 50 years")["height"]
    assert height.certainty > SURE
