"""Names, makers, sale, codes and kinds read from whole small tags in the wordings of the trade."""

from __future__ import annotations

from typing import Any

import pytest
from test_field_rows import HEARD, written
from test_names import Case, answers_of, read_cases

from ocr_tags.fields import FIELDS
from ocr_tags.record import TagText

OTHERS = {
    "container": "container",
    "price": "price",
    "patents": "patents",
    "passport": "plant_passport",
    "categories": "categories",
    "gtin": "gtin",
}
LABELS = ("common", "botanical", "selling", "series", "supplier", *OTHERS)
ALL = [pytest.param(case, id=case.name) for case in read_cases("trade_variety.txt", LABELS)]


def everything(tag: TagText) -> dict[str, str]:
    fields: dict[str, Any] = {field.name: field for field in FIELDS}
    found = answers_of(tag)
    for label, name in OTHERS.items():
        heard = [one for one in fields[name].read(tag) if one.certainty > HEARD]
        if values := [written(one.value) for one in sorted(heard, key=lambda one: one.span)]:
            found[label] = " | ".join(dict.fromkeys(values))
    return found


@pytest.mark.parametrize("case", ALL)
def test_a_whole_tag(case: Case) -> None:
    assert everything(case.tag) == case.answers
