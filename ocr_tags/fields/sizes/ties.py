"""Whether a gap between a label and a length leaves the two together."""

from __future__ import annotations

import re

from ocr_tags.fields.sizes import clauses
from ocr_tags.fields.sizes.columns import Measured
from ocr_tags.fields.sizes.words import Label
from ocr_tags.measures.printed import Measure

_BEFORE = 80
"""So many characters before a label may be what it is called in other languages."""


def tied(tag: Measured, label: Label, measure: Measure, between: str) -> bool:
    """Whether a column gap or line end leaves label and length together; a sentence runs on past its line."""
    text = tag.text
    if "\n" in between and "\t" not in between:
        clause = label.weak or bool(
            clauses.OPENS_CLAUSE.search(text, max(0, label.start - _BEFORE), label.start)
        )
        ends = _ends_row(tag, label, measure) or _ends_with_colon(tag, label, measure)
        return clause or _opens_cell(text, label.start, True) or ends
    return "\t" not in between or _opens_cell(text, label.start, False)


def opens(text: str, label: Label) -> bool:
    """Whether a label opens its cell or a sentence in it."""
    before = max(0, label.start - _BEFORE)
    return _opens_cell(text, label.start, False) or bool(
        clauses.OPENS_CLAUSE.search(text, before, label.start)
    )


def _opens_cell(text: str, start: int, row_too: bool) -> bool:
    """Whether a label opens its cell (with `row_too`, its row): icons read as signs may stand before it."""
    return bool(
        (clauses.OPENS_ROW if row_too else clauses.OPENS_CELL).search(text, max(0, start - _BEFORE), start)
    )


def _ends_row(tag: Measured, label: Label, measure: Measure) -> bool:
    """Whether a label is the last cell and only label of its row, and the length all of the next row."""
    start, end = label.start, measure.span[1]
    row = tag.text.rfind("\n", 0, start) + 1
    alone = not any(row <= other.start < start for other in tag.labels)
    length_alone = re.fullmatch(r"\n ?", tag.text[label.end : measure.span[0]])
    return bool(
        alone
        and length_alone
        and _opens_cell(tag.text, start, False)
        and tag.text[end : end + 1] in ("", "\n")
        and not any(row <= other.span[0] < start for other in tag.measures)
    )


def _ends_with_colon(tag: Measured, label: Label, measure: Measure) -> bool:
    """Whether a label and its colon end a row whose other labels have their lengths: "H: 3 ft W:"."""
    row = tag.text.rfind("\n", 0, label.start) + 1
    labels = sum(row <= other.start < label.start for other in tag.labels)
    lengths = sum(row <= other.span[0] < label.start for other in tag.measures)
    between = tag.text[label.end : measure.span[0]]
    return labels == lengths > 0 and bool(re.fullmatch(r"\.? ?:\n ?", between))


def apart_in_table(text: str, label: Label, measure: Measure) -> bool:
    """Whether a label and a length stand alone in rows of their own amid rows of label and value: one row of
    the table, in a photo that hangs to one side."""
    start, end = label.start, measure.span[1]
    if text[:start][-1:] not in ("", "\n") or text[end : end + 1] not in ("", "\n"):
        return False
    above, below = text[:start].rstrip("\n").rsplit("\n", 1)[-1], text[end:].lstrip("\n").split("\n", 1)[0]
    return all(row.count("\t") == 1 for row in (above, below))
