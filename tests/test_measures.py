"""Lengths as printed, against the definitions of the units and printed back in many forms."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ocr_tags.measures.printed import find_lengths, parse_length
from ocr_tags.values import Length

# NIST Special Publication 811, appendix B.8: inch = 2.54 E-02 m and foot = 3.048 E-01 m, both exact.
INCH_CM, FOOT_CM = 2.54, 30.48
UNITS = {
    "in": (INCH_CM, [" in", "in", " in.", '"', "”", "″", "''", " inches", " Inches", " IN", " po", " pulg."]),
    "ft": (FOOT_CM, [" ft", "ft", " ft.", "'", "’", "′", " feet", " FT", " pi"]),
    "cm": (1.0, [" cm", "cm", " CM", " cm."]),
    "m": (100.0, [" m", "m", " metres", " meters"]),
}
DASHES = ["-", " - ", "–", " – ", "—", " to ", " TO ", " à ", " bis ", " tot ", " a "]


def found(text: str) -> list[Length]:
    return [measure.length for measure in find_lengths(text)]


def one(text: str) -> Length:
    (length,) = found(text)
    return length


def near(length: Length, low: float | None, high: float | None) -> bool:
    ends = ((length.min_cm, low), (length.max_cm, high))
    return all(
        a is b is None or (a is not None and b is not None and abs(a - b) < 1e-5 * max(1, b)) for a, b in ends
    )


@given(st.sampled_from(sorted(UNITS)), st.data())
def test_a_range_printed_in_any_form_is_read_back(unit: str, data: st.DataObject) -> None:
    size, forms = UNITS[unit]
    low = data.draw(st.integers(1, 40))
    high = data.draw(st.integers(low, min(8 * low, 50)))
    text = f"{low}{data.draw(st.sampled_from(DASHES))}{high}{data.draw(st.sampled_from(forms))}"
    assert near(one(text), low * size, high * size), text
    assert parse_length(text) is not None


@given(st.sampled_from(sorted(UNITS)), st.data())
def test_the_unit_may_stand_at_both_ends(unit: str, data: st.DataObject) -> None:
    size, forms = UNITS[unit]
    low = data.draw(st.integers(1, 40))
    high = data.draw(st.integers(low, min(8 * low, 50)))
    form = data.draw(st.sampled_from(forms))
    text = f"{low}{form}{data.draw(st.sampled_from(DASHES))}{high}{form}"
    assert near(one(text), low * size, high * size), text


@given(
    st.integers(0, 12),
    st.sampled_from([("½", "1/2", 0.5), ("¼", "1/4", 0.25), ("¾", "3/4", 0.75), ("⅓", "1/3", 1 / 3)]),
    st.sampled_from(["{w}{v}", "{w} {v}", "{w} {s}", "{w}-{s}"]),
    st.sampled_from([" in", '"', " ft", "'"]),
)
def test_fractions_are_read_back(whole: int, part: tuple[str, str, float], form: str, unit: str) -> None:
    vulgar, stroke, value = part
    text = (form.format(w=whole, v=vulgar, s=stroke) if whole else vulgar) + unit
    size = INCH_CM if unit in {" in", '"'} else FOOT_CM
    assert near(one(text), (whole + value) * size, (whole + value) * size), text


@given(
    st.integers(1, 12),
    st.integers(1, 11),
    st.sampled_from(["{}'{}\"", "{}' {}\"", "{} ft {} in", "{}ft. {}in."]),
)
def test_feet_and_inches_are_one_length(feet: int, inches: int, form: str) -> None:
    value = feet * FOOT_CM + inches * INCH_CM
    assert near(one(form.format(feet, inches)), value, value)


@given(
    st.integers(4, 100),
    st.sampled_from(["{} in ({} cm)", '{}" / {} cm', "{}in/{}cm", "{} in. {} cm", '{}"\n{} cm']),
)
def test_two_units_that_agree_are_one_length_as_first_printed(inches: int, form: str) -> None:
    (measure,) = find_lengths(form.format(inches, round(inches * INCH_CM)))
    assert near(measure.length, inches * INCH_CM, inches * INCH_CM)
    assert measure.certainty > 0.95


@given(st.integers(10, 100), st.floats(1.2, 3))
def test_two_units_that_clash_leave_doubt(inches: int, off: float) -> None:
    (measure,) = find_lengths(f"{inches} in ({round(inches * INCH_CM * off)} cm)")
    assert measure.certainty <= 0.4


@given(st.text(max_size=60) | st.text(alphabet="0123456789 -–½/.,'\"inchcmft()toO\nl|", max_size=60))
def test_no_text_is_too_strange(text: str) -> None:
    for measure in find_lengths(text):
        assert 0 <= measure.span[0] < measure.span[1] <= len(text)
        assert 0 <= measure.certainty <= 1
        assert all(end is None or 0 < end <= 6100 for end in (measure.length.min_cm, measure.length.max_cm))


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("up to 3 ft", None, 3 * FOOT_CM),
        ('<12"', None, 12 * INCH_CM),
        ("jusqu'à 1,5 m", None, 150),
        ("hasta 2 m", None, 200),
        ("bis zu 80 cm", None, 80),
        ("18 in max.", None, 18 * INCH_CM),
        ("over 6 ft", 6 * FOOT_CM, None),
        ("6 ft+", 6 * FOOT_CM, None),
        ("3 ft or more", 3 * FOOT_CM, None),
        ("about 12 in", 12 * INCH_CM, 12 * INCH_CM),
        ("between 12 and 18 in", 12 * INCH_CM, 18 * INCH_CM),
        ("de 30 à 45 cm", 30, 45),
        ("10\" - 1'", 10 * INCH_CM, FOOT_CM),
        ("18 in - 2 ft", 18 * INCH_CM, 2 * FOOT_CM),
        ('12" (30 cm) to 18" (45 cm)', 12 * INCH_CM, 18 * INCH_CM),
        ("12 to\n18 inches", 12 * INCH_CM, 18 * INCH_CM),
        ("12-18\ninches", 12 * INCH_CM, 18 * INCH_CM),
        ("1-1½ ft", FOOT_CM, 1.5 * FOOT_CM),
    ],
)
def test_ends_and_joins(text: str, low: float | None, high: float | None) -> None:
    assert near(one(text), low, high)


@pytest.mark.parametrize(
    "text",
    [
        "12-18",
        "18-12 in",
        "0 in",
        "1218 in",
        "3045 cm",
        "612 ft",
        "12.18 in",
        "12-18\n\ninches",
        "65-75°F",
        "$12 in",
        "6 in a pot",
        "18-24 in full sun",
        "10-10-10 in",
        "5 months",
        "3 m²",
        "6B",
        "zone 5",
        "3-5′'",
        "12 to 15 days",
        "",
    ],
)
def test_near_misses_stay_silent(text: str) -> None:
    assert found(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "l8in",
        'I2-18"',
        "12-1B in",
        "3O cm",
        "12-18ln",
        "12-181n",
        "1% ft",
        "12-18°",
        "21½2 to 4 ft",
        "2%2 to 4 ft",
    ],
)
def test_repaired_letters_cost_certainty(text: str) -> None:
    (measure,) = find_lengths(text)
    assert measure.certainty <= 0.6
