"""What a tag may say is written once without its readers and once with them: the two must agree."""

from ocr_tags.facts import FACTS
from ocr_tags.fields import FIELDS


def test_every_fact_has_its_reader() -> None:
    facts = [(fact.name, fact.label, fact.type, fact.shape) for fact in FACTS]
    assert facts == [(field.name, field.label, field.type, field.shape) for field in FIELDS]
