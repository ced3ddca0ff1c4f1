"""The readers of light, care, bloom, colours, kinds, claims, sale and codes against rows of tag text.

`cases/<field>.tsv` was used while writing the readers and must be read exactly. `cases/<field>_judge.tsv`
was written before the readers, only to judge them: at most one wrong value and one miss in ten are borne.
All rows are invented; the wording is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from ocr_tags.fields import FIELDS
from ocr_tags.record import Field, TagText
from ocr_tags.values import Bloom, Days, PlantPassport, Price

CASES = Path(__file__).parent / "cases"
NAMES = sorted(file.stem for file in CASES.glob("*.tsv") if (CASES / f"{file.stem}_judge.tsv").exists())
HEARD = 0.5
"""Findings up to this certainty are whispers that no record shows."""


def field(name: str) -> Field[Any]:
    return next(one for one in FIELDS if one.name == name)


def rows(file: str) -> Iterator[tuple[str, set[str]]]:
    """Text and the values to be read, from one file of cases."""
    for line in (CASES / file).read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("# "):
            text, _, wanted = line.partition("\t")
            text = text.replace("\\n", "\n").replace("\\t", "\t")
            yield text, set() if wanted == "-" else set(wanted.split("|"))


def written(value: Any) -> str:
    """A value as the case files write it."""
    match value:
        case Bloom():
            return f"{value.text};{','.join(value.seasons)};{','.join(map(str, value.months))}"
        case Days():
            ends = dict.fromkeys((value.min_days, value.max_days))
            return "-".join(map(str, ends))
        case Price():
            return f"{value.amount} {value.currency}"
        case PlantPassport():
            lines = (
                value.botanical_name,
                value.operator,
                value.traceability,
                value.origin,
                value.protected_zone,
            )
            return ";".join(f"{a}={b}" for a, b in zip(("A", "B", "C", "D", "PZ"), lines, strict=True) if b)
        case tuple():
            return ",".join(value)
    return str(value)


def heard(name: str, text: str) -> set[str]:
    return {written(one.value) for one in field(name).read(TagText(text)) if one.certainty > HEARD}


@pytest.mark.parametrize("name", NAMES)
def test_rows_used_while_writing_are_read_exactly(name: str) -> None:
    wrong = [(text, wanted, heard(name, text)) for text, wanted in rows(f"{name}.tsv")]
    assert [row for row in wrong if row[1] != row[2]] == []


@pytest.mark.parametrize("name", NAMES)
def test_rows_only_for_judging(name: str) -> None:
    judged = [(text, wanted, heard(name, text)) for text, wanted in rows(f"{name}_judge.tsv")]
    assert len(judged) >= 25
    assert len([row for row in judged if row[2] - row[1]]) <= 1, "wrong values"
    assert len([row for row in judged if row[1] - row[2]]) <= len(judged) / 10, "missed values"


@pytest.mark.parametrize("name", NAMES)
def test_every_span_holds_the_words_it_was_read_from(name: str) -> None:
    for text, _ in rows(f"{name}_judge.tsv"):
        for found in field(name).read(TagText(text)):
            start, end = found.span
            assert 0 <= start < end <= len(text)
            assert "\n\n" not in text[start:end] or name == "plant_passport"
            assert 0 < found.certainty <= 1


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(
    "text",
    ["", " ", "\n\n", "\t", "A", ":", "1", "ﬁne ß İ ½″ — ●◐○", "Light:", "Water:\n\n", "$", "A\nB\nC\nD"],
)
def test_nothing_is_read_from_nothing(name: str, text: str) -> None:
    assert heard(name, text) == set()
