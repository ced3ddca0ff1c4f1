"""Lengths as the trade writes them, in either system."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth_records import truth_records

from ocr_tags.measures.lengths import length_in_words
from ocr_tags.measures.printed import parse_length
from ocr_tags.values import Length

INCH = 2.54  # exact: international yard and pound agreement of 1959


def inches(low: float | None, high: float | None = None) -> Length:
    high = low if high is None else high
    return Length(low and low * INCH, high and high * INCH)


@pytest.mark.parametrize(
    ("length", "imperial", "metric"),
    # As bilingual tags print: 12 in beside 30 cm, 18 beside 45, 24 beside 60 (common practice, no source).
    [
        (inches(12, 18), "12–18 in", "30–45 cm"),
        (inches(18, 24), "1½–2 ft", "45–60 cm"),
        (inches(36), "3 ft", "90 cm"),
        (inches(15), "15 in", "38 cm"),
        (inches(6, 8), "6–8 in", "15–20 cm"),
        (inches(32, 48), "32–48 in", "80–120 cm"),
        (inches(1.5, 2), "1½–2 in", "4–5 cm"),
        (inches(96, 120), "8–10 ft", "2.5–3 m"),
        (Length(33, 33), "13 in", "33 cm"),
        (Length(300, 450), "10–15 ft", "3–4.5 m"),
        (Length(750, 1200), "25–40 ft", "7.5–12 m"),
        (Length(None, 250), "up to 8 ft", "up to 2.5 m"),
        (Length(45, None), "18 in or more", "45 cm or more"),
    ],
)
def test_as_on_tags(length: Length, imperial: str, metric: str) -> None:
    assert length_in_words(length, "in") == imperial
    assert length_in_words(length, "cm") == metric
    both = length_in_words(length)
    assert both.startswith(imperial) and metric.removeprefix("up to ").removesuffix(" or more") in both


def test_what_a_sample_prints_in_one_unit_is_shown_as_printed() -> None:
    """Tags in one system come out with their own figures; in the other, near the exact ones."""
    seen = 0
    for record in truth_records().values():
        for name in ("height", "spread", "spacing"):
            for reading in record.readings.get(name, ()):
                value = reading.value
                metric = value.max_cm is not None and value.max_cm == round(value.max_cm)
                shown = parse_length(length_in_words(value, "cm" if metric else "in"))
                assert shown is not None
                assert shown.length.max_cm == pytest.approx(value.max_cm, abs=0.01), (record.tag_id, name)
                seen += 1
    assert seen > 50


@given(st.floats(2, 6000))
def test_a_shown_figure_is_near_the_exact_one_and_reads_back(centimetres: float) -> None:
    for units in ("in", "cm"):
        shown = parse_length(length_in_words(Length(centimetres, centimetres), units))  # type: ignore[arg-type]
        assert shown is not None and shown.length.max_cm is not None
        assert shown.length.max_cm == pytest.approx(centimetres, rel=0.05, abs=0.65)
