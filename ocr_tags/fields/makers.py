"""Who sells the plant."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.names.addresses import firms_at_home
from ocr_tags.names.closing_lines import closing_firms
from ocr_tags.names.epithets import title_case
from ocr_tags.names.firms import firm_in, labelled_firms
from ocr_tags.names.signatures import signed_firms
from ocr_tags.names.titles import lines_of
from ocr_tags.record import Found, TagText

DOUBTFUL = 0.75
"""A firm less sure than this may be read as any name that closes a tag is."""


def read_supplier(tag: TagText) -> Iterator[Found[str]]:
    """The firm that grew or sent out the plant.

    >>> [found.value for found in read_supplier(TagText("Grown by Hollow Oak Nursery, Millbrook"))]
    ['Hollow Oak Nursery']
    >>> list(read_supplier(TagText("Ideal for cottage gardens")))
    []
    """
    labelled = labelled_firms(tag.string)
    for name, span in labelled:
        yield Found(written(name), span, 0.93)
    taken = 0
    lines = lines_of(tag)
    told = [span for _, span in labelled]
    for line in lines:
        if line.start < taken:
            continue
        found = firm_in(line.text)
        if found is None and (found := _over_two_lines(tag.string, line.start, line.end)):
            taken = line.end + 2
        if found is None or any(start < line.end and end > line.start for _, (start, end) in labelled):
            continue
        start = line.start + found[1]
        end = start + len(found[0])
        told.append((start, end))
        yield Found(written(found[0]), (start, min(end, line.end)), 0.85)
    placed = [*firms_at_home(tag.string, lines), *signed_firms(tag.string, lines)]
    if not told and all(certainty < DOUBTFUL for _, _, certainty in placed):
        placed = [*closing_firms(tag.string, lines), *placed]
    for name, span, certainty in placed:
        if not any(start < span[1] and span[0] < end for start, end in told):
            told.append(span)
            yield Found(written(name), span, certainty)


_LAST_PART = re.compile(r".*(?:[•·|]\s?|\s[–-]\s)(?=[^•·|]*$)")


def _over_two_lines(text: str, start: int, end: int) -> tuple[str, int] | None:
    """A firm that begins behind a dot and is taken up by the next line, as at the foot of a tag."""
    opening = _LAST_PART.match(text, start, end)
    if opening is None or not opening.end() < end or text[end : end + 2] in ("", "\n\n"):
        return None
    following = text[end + 1 :].split("\n")[0]
    found = firm_in(f"{text[opening.end() : end].strip()} {following}")
    return found and (found[0], opening.end() - start + found[1])


def written(name: str) -> str:
    """A firm's or series' name as a person would write it."""
    plain = re.sub("'{2}", "'", " ".join(name.replace("’", "'").split()))
    plain = re.sub(r"(?<=[a-z])(?:TM|™|®)$", "", plain)  # a raised sign, read as letters
    plain = re.sub(r"\bP[ée]pini[éèe]re", "Pépinière", plain)  # readers mistake the second accent
    return title_case(plain) if plain.isupper() and len(plain) > 4 else plain
