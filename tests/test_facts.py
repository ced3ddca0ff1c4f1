"""No fact without its reader, and in one order: a record's fields come in the order of the readers."""

from ocr_tags.facts import FACTS
from ocr_tags.fields import FIELDS


def test_every_fact_has_its_reader() -> None:
    assert [field.fact for field in FIELDS] == list(FACTS)
