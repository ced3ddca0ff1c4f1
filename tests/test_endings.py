"""A phrase ends where its words stop telling of the fact, whatever the pattern that found it made of it.

What is printed is invented; what its words tell of is given, as the learnt meaning would.
"""

import pytest

from ocr_tags.claims import endings
from ocr_tags.claims.endings import ending_where_meant
from ocr_tags.fields import FIELDS
from ocr_tags.meaning.features import tokens
from ocr_tags.meaning.model import Meaning
from ocr_tags.record import Found, TagText

ONE_PHRASE = "Water plants in the morning"
"""No cut where no phrase ends, whatever its words tell of."""
BY_NAME = {field.name: field for field in FIELDS}


def ends(text: str, fact: str, found: str, meant: str, monkeypatch: pytest.MonkeyPatch) -> str:
    """What becomes of the words a pattern `found`, where the words `meant` tell of the fact."""
    seen, start = tokens(text), text.index(meant)
    inside = [start <= token.start < start + len(meant) for token in seen]
    begins = [0.95 if token.start == start else 0.0 for token in seen]
    goes_on = [0.95 if held and not begun else 0.0 for held, begun in zip(inside, begins, strict=True)]
    monkeypatch.setattr(endings, "meaning", lambda tag: Meaning(tuple(seen), {fact: begins}, {fact: goes_on}))
    at = text.index(found)
    first = Found(" ".join(found.split()), (at, at + len(found)), 0.9)
    kept = ending_where_meant(TagText(text), BY_NAME[fact], first)
    assert text[slice(*kept.span)].split() == kept.value.split()
    return str(kept.value)


@pytest.mark.parametrize(
    ("text", "fact", "found", "meant", "kept"),
    [
        ("Any soil\nSap stains", "soil", "Any soil\nSap stains", "Any soil", "Any soil"),
        ("Rich loam\nsoil type", "soil", "Rich loam\nsoil type", "Rich loam\nsoil type", "Rich loam"),
        (
            "Water plants in\nthe morning",
            "water",
            "Water plants in\nthe morning",
            "Water plants in",
            ONE_PHRASE,
        ),
        ("Loam kept\ncool", "soil", "Loam kept\ncool", "Loam kept\ncool", "Loam kept cool"),
        ("Leafy loam, unlimed", "soil", "Leafy loam", "Leafy loam, unlimed", "Leafy loam, unlimed"),
        ("Raised, peaty bed", "soil", "peaty bed", "Raised, peaty bed", "Raised, peaty bed"),
        ("Leafy loam\nFeed in May", "soil", "Leafy loam", "Leafy loam\nFeed in May", "Leafy loam"),
        ("Soil: leafy loam", "soil", "leafy loam", "Soil: leafy loam", "leafy loam"),
        ("Soil Leafy loam", "soil", "Leafy loam", "Soil Leafy loam", "Leafy loam"),
        ("Thrives in loam", "soil", "loam", "Thrives in loam", "loam"),
        ("¢ Leafy loam", "soil", "¢ Leafy loam", "Leafy loam", "Leafy loam"),
        ("Tarn Growers Dunmore", "supplier", "Tarn Growers", "Tarn Growers Dunmore", "Tarn Growers"),
    ],
)
def test_a_phrase_ends_where_its_words_stop_telling_of_the_fact(
    text: str, fact: str, found: str, meant: str, kept: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert ends(text, fact, found, meant, monkeypatch) == kept
