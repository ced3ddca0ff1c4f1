"""Arrows drawn before a length, which say what it measures."""

from __future__ import annotations

from ocr_tags.fields.sizes.words import Label
from ocr_tags.patterns import later

ARROWS = {"↕": "height", "↑": "height", "▲": "height", "↔": "spread", "⟷": "spread", "⇿": "spacing"}
"""What a length behind a drawn arrow measures (common practice, no source)."""
_ARROW_BEFORE = later(rf"(?:(?<![^\W\d_])[{''.join(ARROWS)}]|[↕↔⟷⇿]|(?P<broken>[←<][–—=-]?[→>]))(?=[ \t]?$)")


def arrow_before(text: str, start: int) -> tuple[str, int] | None:
    """The arrow drawn right before `start`, and where it begins; "←>" is what readers make of "↔"."""
    match = _ARROW_BEFORE.search(text, max(0, start - 4), start)
    return match and ("↔" if match["broken"] else match[0], match.start())


def without_arrow(label: Label, between: str) -> str:
    """The gap without an arrow that shows what its label says: "Height" over "↓ 2 ft"."""
    signs = _ARROWS_OF.get(label.kinds[0], "")
    arrow = next((sign for sign in signs if sign in between), None) if len(label.kinds) == 1 else None
    return between.replace(f"{arrow} ", "", 1).replace(arrow, "", 1) if arrow else between


_ARROWS_OF = {"height": "↕↑↓", "flower_height": "↕↑↓", "spread": "↔⟷→", "spacing": "↔⟷⇿→"}
