"""What a tag says of size, hardiness, light, care, bloom and warnings, in the many wordings of the trade.

`cases/growing_trade.tsv` holds small invented tags; the wording is common practice, no source. The value
heard best must be the right one, and a field that a row does not name must stay silent.
"""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pytest

from ocr_tags.fields import FIELDS
from ocr_tags.record import TagText
from ocr_tags.values import Bloom, Days, Hardiness, HeatZones, Length, Temperature

ROWS = Path(__file__).parent / "cases" / "growing_trade.tsv"
NAMES = (
    *("height", "flower_height", "spread", "spacing", "row_spacing", "days_to_maturity"),
    *("hardiness", "min_temperature", "rhs_rating", "heat_zones", "light", "water", "soil", "feeding"),
    *("bloom", "colours", "warnings", "native_claim"),
)
HEARD = 0.5
CM = {"in": 2.54, "ft": 30.48, "cm": 1.0, "m": 100.0}  # NIST SP 811, appendix B.8


def lines() -> list[str]:
    text = ROWS.read_text(encoding="utf-8")
    return [line for line in text.splitlines() if line and not line.startswith("# ")]


def heard(name: str, tag: TagText) -> str | None:
    """The value heard best, as the rows write it; None when nothing is."""
    field = next(one for one in FIELDS if one.name == name)
    found = [one for one in field.read(tag) if one.certainty > HEARD]
    if not found:
        return None
    if field.shape == "list":
        return "|".join(str(one.value) for one in found)
    return written(max(found, key=lambda one: one.certainty).value)


def written(value: Any) -> str:
    match value:
        case Length():
            return f"{_figure(value.min_cm)}:{_figure(value.max_cm)}cm"
        case Hardiness():
            return f"{value.min_zone or ''}:{value.max_zone or ''}"
        case HeatZones():
            return ":".join(str(end) for end in _ends(value))
        case Temperature():
            return f"{value.celsius:.1f}C"
        case Bloom():
            return f"{value.text};{','.join(value.seasons)};{','.join(map(str, value.months))}"
        case Days():
            return "-".join(map(str, dict.fromkeys((value.min_days, value.max_days))))
        case tuple():
            return ",".join(value)
    return str(value)


def _ends(value: HeatZones) -> tuple[int, ...]:
    return tuple(sorted(getattr(value, name) for name in value.__slots__))


def _figure(cm: float | None) -> str:
    return "" if cm is None else f"{cm:.2f}"


def wanted(name: str, printed: str) -> str:
    """A value of a row in the units of the record."""
    if match := re.fullmatch(r"([\d.]*):([\d.]*)(in|ft|cm|m)", printed):
        ends = [float(end) * CM[match[3]] if end else None for end in match.groups()[:2]]
        return f"{_figure(ends[0])}:{_figure(ends[1])}cm"
    if name == "min_temperature":
        degrees = float(printed[:-1])
        return f"{degrees if printed[-1] == 'C' else (degrees - 32) / 1.8:.1f}C"
    return printed


@pytest.mark.parametrize("line", lines())
def test_trade_wording(line: str) -> None:
    text, *columns = line.split("\t")
    tag = TagText(text.replace("\\n", "\n").replace("\\t", "\t"))
    values = dict(column.split("=", 1) for column in columns if column != "-")
    expected = {name: wanted(name, value) for name, value in values.items()}
    assert {name: value for name in NAMES if (value := heard(name, tag))} == expected


def test_the_rows_are_many_and_name_fields() -> None:
    assert len(lines()) >= 60
    named = {column.split("=")[0] for line in lines() for column in line.split("\t")[1:] if column != "-"}
    assert named == set(NAMES)
    assert math.isclose(CM["ft"], 12 * CM["in"])
