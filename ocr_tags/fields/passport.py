"""The plant passport: lines A to D with their values.

Format: Implementing Regulation (EU) 2017/2313, and for Great Britain its retained version. The models fix
letters and content, but neither size nor place, so values go by their letters. A is the botanical name,
B the operator (EU: country code, hyphen, number), C the traceability code, D the origin; passports for a
protected zone carry "PZ" and the code of the pest.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.fields.phrases import Hit, Phrases, clean, listed
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import PlantPassport

_HEADINGS = Phrases(lambda: dict.fromkeys(listed("heading")["passport"], True), shortest=9)
_MEMBERS = "AT|BE|BG|CY|CZ|DE|DK|EE|EL|ES|FI|FR|GR|HR|HU|IE|IT|LT|LU|LV|MT|NL|PL|PT|RO|SE|SI|SK"
# A letter right before itself ends a sentence beside: "from May. A" and then "A Salix".
_LETTER = later(
    r"(?:^|(?<=[\t\n ·•|]))(?P<letter>[ABCD])(?![.:)]?\s+(?P=letter)[ \t.:)])(?::(?=[A-Z\d])|(?:[.:)]"
    r"| ?[-–—](?= ))?(?=[ \t\n]|$))"
    r"[ \t]*(?:\n(?!\n|[ABCD][ .:)\n]))?"
)
# A letter that lost its space, in the form of its own line only: DNL, BNL-123, C24-1; B and D within one too.
_JOINED = later(
    r"(?<=[\n ])(?P<letter>A(?<=\nA)(?=[A-Z][a-z]{3,} [a-z]{3,})"
    rf"|B(?=(?:{_MEMBERS})-\d)|B(?<=\nB)(?=(?:{_MEMBERS})[ -]?\d)|C(?<=\nC)(?=(?:[A-Z]{{1,4}}[ -]?)?\d)"
    rf"|D(?=(?:{_MEMBERS}|GB)(?=\n|\t|$))|D(?<=\nD)(?=[A-Z]{{2}}(?=\n|\t|$)))"
)
_OPERATOR = later(
    rf"(?:(?:{_MEMBERS}|XI|GB) ?[-–—] ?[A-Z0-9][A-Z0-9./ -]{{2,20}}|(?:GB|UK)?[ -]?\d[\dA-Z/-]{{3,14}})"
)
_EU_OPERATOR = later(rf"(?:{_MEMBERS}|XI|GB) ?[-–—] ?[A-Z0-9][A-Z0-9./-]{{2,20}}")
_ZONE = later(
    r"\b(?:PZ|ZP)\b[\s:–—-]*"
    r"(?P<codes>(?:[A-Z]{5,6}\b(?:[,; /]+(?=[A-Z]{5,6}\b))?)+|[A-Z][a-z]+ [a-z]{4,}(?=\s*(?:$|[\n\t])))?"
)
_NAME = later(r"[A-Z×x][\w× .'‘’\"-]*[a-z][\w× .'‘’\"()-]*")
_SPECIES_BELOW = later(r"\n(?:[×x] ?)?[a-z]{3,}(?:-[a-z]+)*(?=\n|\t|$)")
_RANK = later(r" (?:var|subsp|ssp|f|convar)\.?$")
_ORIGIN = later(r"[A-Z]{2}(?:\(NI\))?|[A-Z][a-z]+(?: [A-Z][a-z]+){0,2}")


def read_plant_passport(tag: TagText) -> Iterator[Found[PlantPassport]]:
    """The passport, when its heading or an EU operator number is there and at least A or D besides B.

    >>> chosen = "Plant Passport  A Salvia nemorosa  B NL-000000001  C 12  D NL"
    >>> [found.value.operator for found in read_plant_passport(TagText(chosen))]
    ['NL-000000001']
    """
    text = tag.string
    headings = _HEADINGS.find(text)
    lines, start, end = _lettered(text, headings[-1].end if headings else 0)
    if headings and "B" not in lines:
        lines, start, end = _lettered(text, 0)  # the heading may stand below, or be read last
        end = max(end, headings[-1].end)
    values = {letter: value for letter, value in lines.items() if _fits(letter, value)}
    operator = values.get("B")
    if operator is None or not ("A" in values or "D" in values):
        return
    if not headings and not (_EU_OPERATOR.fullmatch(operator) and len(values) >= 3):
        return
    start = min([start, *(heading.start for heading in headings)])
    passport = PlantPassport(
        _with_sign(values.get("A")),
        operator,
        values.get("C"),
        values.get("D"),
        _protected_zone(text, headings),
    )
    yield Found(passport, (start, end), _certainty(headings, values))


def _with_sign(name: str | None) -> str | None:
    """The name of a hybrid with the multiplication sign for the letter that stands for it (ICN Art. H.3A)."""
    return name and later(r"(?<= )[xX](?= [a-z])").sub("×", name)


def _certainty(headings: Sequence[Hit[bool]], values: dict[str, str]) -> float:
    """A passport prints all its letters, but C where the trade needs none (Annex VII, Part A)."""
    complete = 1.0 if len(values) == 4 else 0.85 if "A" in values and "D" in values else 0.55
    return (0.95 if headings else 0.8) * complete


def _lettered(text: str, start: int) -> tuple[dict[str, str], int, int]:
    """What stands after each of the letters, and the stretch of text from the first to the last."""
    marks = [*_LETTER.finditer(text, start), *(_JOINED.finditer(text, start) if start else ())]
    marks.sort(key=lambda mark: mark.start())
    lines: dict[str, str] = {}
    begin, end = len(text), start
    for mark in marks:
        stop = _value_end(text, mark, marks)
        if mark["letter"] == "A":
            stop = _name_end(text, mark.end(), stop)
        value = clean(text[mark.end() : stop])
        if mark["letter"] not in lines and _fits(mark["letter"], value):
            lines[mark["letter"]] = value
            begin, end = min(begin, mark.start()), max(end, stop)
    return lines, begin, end


def _value_end(text: str, mark: re.Match[str], marks: list[re.Match[str]]) -> int:
    """A value ends with its line, or where the next letter with a fitting value begins."""
    line = later(r"[\t\n·•|]|$| +(?:PZ|ZP)\b| /(?= [BCD]\b)").search(text, mark.end())
    stop = line.start() if line else len(text)
    for other in marks:
        fits = "ABCD".index(other["letter"]) > "ABCD".index(mark["letter"])
        if mark.end() < other.start() < stop and fits:
            return other.start()
    return stop


def _name_end(text: str, start: int, stop: int) -> int:
    """A name of one word, or that ends with a rank, goes on with the small letters of the next line:
    Zamioculcas / zamiifolia."""
    further = _SPECIES_BELOW.match(text, stop)
    open_ended = " " not in text[start:stop].strip() or _RANK.search(text, start, stop)
    return further.end() if further and open_ended else stop


def _fits(letter: str, value: str) -> bool:
    if letter == "A":
        return bool(_NAME.fullmatch(value)) and len(value) <= 70 and "pass" not in value.lower()
    if letter == "B":
        return bool(_OPERATOR.fullmatch(value))
    if letter == "C":
        return bool(value) and len(value) <= 30 and any(character.isdigit() for character in value)
    return bool(_ORIGIN.fullmatch(value))


def _protected_zone(text: str, headings: Sequence[Hit[bool]]) -> str | None:
    """The pests after "PZ", by name or code: EPPO codes are five letters for plants and six for pests."""
    match = _ZONE.search(text) if headings else None
    return clean(match["codes"]) if match and match["codes"] else None
