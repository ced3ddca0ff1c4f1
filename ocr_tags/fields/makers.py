"""Who sells the plant."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from ocr_tags.names import lexicon
from ocr_tags.names.addresses import IN_STREET, ON_SITE, firms_at_home
from ocr_tags.names.closing_lines import closing_firms
from ocr_tags.names.epithets import title_case
from ocr_tags.names.firms import firm_at, firm_in, labelled_firms
from ocr_tags.names.signatures import is_nameless, signed_firms
from ocr_tags.names.titles import Line, lines_of
from ocr_tags.names.vocabulary import is_tag_word
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

DOUBTFUL = 0.75
"""A firm less sure than this may be read as any name that closes a tag is."""
BEGUN, REST_OF_NAME = 0.95, 0.6
"""What is left of the certainty of a name of trade words alone, with what stands above it and without."""
SMALL = 0.8
"""How sure a firm is whose name is printed without capitals."""
IMPORTER = 0.9
"""How sure a firm is that only brought the plant into the country."""
EVEN = 1.3
"""No name goes on in letters as much larger or smaller."""


def read_supplier(tag: TagText) -> Iterator[Found[str]]:
    """The firm that grew or sent out the plant.

    >>> [found.value for found in read_supplier(TagText("Grown by Hollow Oak Nursery, Millbrook"))]
    ['Hollow Oak Nursery']
    >>> list(read_supplier(TagText("Ideal for cottage gardens")))
    []
    """
    lines = lines_of(tag)
    for name, span, certainty in _firms(tag, lines):
        if certainty == ON_SITE or not is_nameless(name.title() if name.islower() else name):
            yield Found(written(name), span, certainty)
        elif begun := _begun_above(tag.string, lines, span[0]):
            whole = f"{begun.text.strip()} {name}"
            yield Found(written(whole), (begun.start, span[1]), certainty * BEGUN)
        else:
            yield Found(written(name), span, certainty * REST_OF_NAME)


def _firms(tag: TagText, lines: Sequence[Line]) -> Iterator[tuple[str, tuple[int, int], float]]:
    labelled = labelled_firms(tag.string)
    yield from ((name, span, 0.93) for name, span in labelled)
    taken = 0
    told = [span for _, span in labelled]
    for above, line in pairwise([None, *lines]):
        if line is None or line.start < taken:
            continue
        found = firm_in(line.text)
        if found and above and above.text.endswith(",") and is_nameless(found[0]):
            continue  # what the people of the firm above are: "Marl & Thrush," over "Herb Growers"
        if found is None and (found := _over_two_lines(tag.string, line.start, line.end)):
            taken = line.end + 2
        if found is None or any(start < line.end and end > line.start for _, (start, end) in labelled):
            continue
        start = line.start + found[1]
        end = start + len(found[0])
        told.append((start, end))
        yield found[0], (start, min(end, line.end)), 0.85
    placed = [*firms_at_home(tag.string, lines), *signed_firms(tag.string, lines)]
    if not told and all(certainty < DOUBTFUL for _, _, certainty in placed):
        placed = [*closing_firms(tag.string, lines), *placed]
    signed = any(certainty >= DOUBTFUL for _, _, certainty in placed)
    for name, span, certainty in placed:
        if IN_STREET.fullmatch(name) or (signed and certainty < DOUBTFUL):
            continue  # where the firm is
        if not any(start < span[1] and span[0] < end for start, end in told):
            told.append(span)
            yield name, span, certainty
    small = () if told else _in_small_letters(lines)
    for name, span in small:
        told.append(span)
        yield name, span, SMALL
    if not told:  # who brought it into the country, where nobody signs as who sells it
        yield from _importers(tag.string)


_SMALL_NAME = later(
    r"(?P<name>(?!\w*(?:y|ed|ing|ful|ous|al|ic) )[a-z]{4,}(?: [a-z]{3,})?)"
    r" (?:nursery|nurseries|growers|farms?|greenhouses?|foliage|botanicals"
    r"|horticulture|organics)"
)


def _in_small_letters(lines: Sequence[Line]) -> Iterator[tuple[str, tuple[int, int]]]:
    """A firm that prints its name without capitals, in the first or last line: "quarlehouse foliage"."""
    for line in dict.fromkeys((*lines[:1], *lines[-1:])):
        match = _SMALL_NAME.fullmatch(line.text.strip())
        if match and match[0].endswith("foliage") and line is not lines[0]:
            continue  # what the plant has
        if match and not any(map(is_tag_word, match["name"].split())):
            start = line.start + line.text.index(match[0])
            yield match[0], (start, start + len(match[0]))


_IMPORTED = later(r"\b(?:imported|shipped)(?: (?:from|into) (?-i:[A-Z])\w+)? by[:\s]\s*", re.I)


def _importers(string: str) -> Iterator[tuple[str, tuple[int, int], float]]:
    """Who imported or shipped the plant: seldom who sells it under a name of its own."""
    for label in _IMPORTED.finditer(string):
        if firm := firm_at(string, label.end()):
            yield firm[0], (label.end(), firm[1]), IMPORTER


def _begun_above(text: str, lines: Sequence[Line], at: int) -> Line | None:
    """The line right above in letters of the same size that may begin the name: "Marlwater / Bedding Co."."""
    for above, line in pairwise(lines):
        if (
            line.start == at
            and text[above.end : line.start] == "\n"
            and _NAME_LINE.fullmatch(above.text.strip())
        ):
            alike = max(above.size, line.size) < EVEN * min(above.size, line.size)
            own = not is_nameless(above.text) and not lexicon.plants_called(above.text)
            if alike and own and above.text.isupper() == line.text.isupper():
                return above
    return None


_NAME_LINE = re.compile(r"[^\W\d_][\w’'&-]*(?: [^\W\d_&][\w’'-]*| &){0,2}")


_LAST_PART = re.compile(r"(?=[^•·|]).*(?:[•·|]\s?|\s[–-]\s)(?=[^•·|]*$)")


def _over_two_lines(text: str, start: int, end: int) -> tuple[str, int] | None:
    """A firm that begins behind a dot and is taken up by the next line, as at the foot of a tag."""
    opening = _LAST_PART.match(text, start, end)
    if opening is None or not opening.end() < end or text[end : end + 2] in ("", "\n\n"):
        return None
    following = text[end + 1 :].split("\n")[0]
    joined = f"{text[opening.end() : end].strip()} {following}"
    found = firm_in(joined)
    if found and later(r"\d ?\Z").search(joined, 0, found[1]):
        return None  # "7.5 L" over a firm
    return found and (found[0], opening.end() - start + found[1])


_BODY = r"^(?!The )[A-Z]\S*(?: \S+){0,2} (?:Gardens|Nurser(?:y|ies)|Farms?|Plants|Growers|Greenhouses)"
"""A firm's name with the word of its trade last: where it lies may follow."""


def written(name: str) -> str:
    """A firm's or series' name as a person would write it."""
    plain = re.sub("'{2}", "'", " ".join(name.replace("’", "'").split()))
    plain = re.sub(r"(?<=[a-z])(?:TM|™|®|ß)$", "", plain)  # a raised sign, read as letters
    plain = re.sub(r"(?<=[a-z])- .*$", "", plain)  # where it lies, behind a dash that lost its blank
    plain = re.sub(r"^(?:From|By)(?=[A-Z][a-z])", "", plain)  # a lost blank
    plain = re.sub(r"^Plant of (?=[A-Z])", "", plain)
    plain = re.sub(r"(?: \w+)? Div(?:ision|\.)?$", "", plain)
    plain = re.sub(rf"({_BODY}) (?:on|in|at|near) .*$", r"\1", plain)
    plain = re.sub(r"\bP[ée]pini[éèe]re", "Pépinière", plain)  # readers mistake the second accent
    return title_case(plain) if plain.isupper() and len(plain) > 4 else plain
