"""Arrows drawn before a length, which say what it measures."""

from __future__ import annotations

from ocr_tags.patterns import later

ARROWS = {"↕": "height", "↑": "height", "▲": "height", "↔": "spread", "⟷": "spread", "⇿": "spacing"}
"""What a length behind a drawn arrow measures (common practice, no source)."""
_ARROW_BEFORE = later(rf"(?:[{''.join(ARROWS)}]|(?P<broken>[←<][–—=-]?[→>]))(?=[ \t]?$)")


def arrow_before(text: str, start: int) -> tuple[str, int] | None:
    """The arrow drawn right before `start`, and where it begins; "←>" is what readers make of "↔"."""
    match = _ARROW_BEFORE.search(text, max(0, start - 4), start)
    return match and ("↔" if match["broken"] else match[0], match.start())
