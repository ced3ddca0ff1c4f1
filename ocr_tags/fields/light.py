"""How much sun a plant wants, in the four classes of the trade.

The classes: full sun at least 6 hours of direct sun, full shade 3 at most, part sun and part shade between
(common practice, no source). Words decide; hours only where they leave one class. Both ends of a range
are given, nothing in between. Room light ("bright indirect") has no class here and is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ocr_tags.fields.phrases import Hit, Phrases, cells, fold, label_phrases, labelled, listed
from ocr_tags.record import Field, Found, TagText

SUNNY_TO_SHADY = ("full_sun", "part_sun", "part_shade", "full_shade")
Light = tuple[str, ...]

_WORDS = Phrases(
    {word: (light, False) for light, words in listed("light").items() for word in words}
    | {word: (light, True) for light, words in listed("light_alone").items() for word in words}
)
_LABELS = label_phrases("light")
_LABEL_WORD = re.compile(r"(?:light|sun|sunlight|exposure|luz|licht|exposition|exposicion)")

_JOIN = re.compile(
    r"\s*(?:[-–—/&,+|]|\bto\b|\bor\b|\band\b|\bthru\b|\bthrough\b|\ba\b|\bou\b|\bet\b|\bo\b|\by\b|\bbis\b"
    r"|\bund\b|\boder\b|\btot\b|\ben\b|\bof\b|\n(?!\n)|\t)(?:\s*\n(?!\n))?\s*"
)
_HALF = re.compile(r"\b(full|part|partial|partly|light|half)(\s*(?:[-–/&]|\bto\b|\bor\b|\band\b)\s*)$")
_HALVES = {
    "full": "full",
    "light": "part",
    "half": "part",
    "part": "part",
    "partial": "part",
    "partly": "part",
}
_SHIELD = re.compile(
    r"(?:\bnot?\b|\bavoid\w*|\bprotect\w*|\bfrom\b|\bshelter\w*|\bout of\b|\btolera\w+|\btakes\b"
    r"|\bburn\w*|\bwithout\b"
    r"|\bless than\b|\bevite\w*|\bevitar?\b|\bkein\w*|\bgeen\b|\bprovide\b|\bneeds? afternoon"
    r"|\bbright)[^.;\n\t]{0,24}$"
)
_TOLERANT = re.compile(
    r"\s*(?:tolera|avoid|may burn|burns|can scorch|scorch|express|garden|lover|collection|mix\b)"
)
_HOT = re.compile(r"\s*(?:in|where|si|if)\b[^.;\n\t]{0,24}(?:hot|south|warm|desert|north|cool|inland|heat)")
_LEAD = re.compile(
    r"(?:best |grows? |does |performs |plant |place |needs? |prefers |likes |thrives |requires |ideal )*"
    r"(?:best )?(?:in|for)?(?: an?)?[\W\d_]*"
)
_TRAIL = re.compile(
    r"[\W\d_]*(?:hours|hrs|location|spot|position|areas?|exposure|daily|day|only|best|lover)?[\W\d_]*"
)


def read_light(tag: TagText) -> Iterator[Found[Light]]:
    r"""Each statement of light, its classes from sunny to shady.

    >>> [found.value for found in read_light(TagText("Exposure: Sun to part shade"))]
    [('full_sun', 'part_shade')]
    >>> list(read_light(TagText("Protect from full sun. A shade tree.")))
    []
    """
    text = tag.string
    after_label = [(found.start, found.end) for found in labelled(text, _LABELS)]
    statements: list[Found[Light]] = []
    for chain in _chains(text, _hits(text)):
        certainty = _certainty(text, chain, after_label)
        if certainty:
            statements.append(_found(text, chain, certainty))
    yield from _without_legend(statements)
    if not statements:
        yield from _by_marks(text)
    yield from _sun_full(text)
    yield from _by_hours(text)
    yield from _morning_sun(text)


_Word = Hit[tuple[str, bool]]


def _hits(text: str) -> list[_Word]:
    folded = fold(text)
    hits = (_label_apart(text, hit) for hit in _WORDS.find(text))
    return [hit for hit in hits if not _not_light(text, folded, hit)]


def _label_apart(text: str, hit: _Word) -> _Word:
    """ "LIGHT Shade" is a label in capitals and its value, unlike "Light shade"."""
    label, _, value = text[hit.start : hit.end].partition(" ")
    if label == "LIGHT" and value.istitle():
        return Hit(("full_shade", True), hit.end - len(value), hit.end, 0.8)
    return hit


def _not_light(text: str, folded: str, hit: _Word) -> bool:
    if re.match(r" ?[:=]", text[hit.end :]):
        return True  # a label: "Sun: 6 hours", "Sol : bien drainé"
    words = folded[hit.start : hit.end]
    if words.startswith("light") and re.match(r"light\s", words):
        opens_line = not text[: hit.start].rstrip(" ") or text[: hit.start].rstrip(" ")[-1] in "\t\n"
        closes_line = text[hit.end : hit.end + 1] in ("", "\t", "\n")
        if "\n" in words or (opens_line and closes_line):
            return True  # "Light Shade" on its own may be a label and its value
    return False


def _chains(text: str, hits: Sequence[_Word]) -> Iterator[list[_Word]]:
    """Words joined by "to", "or", a slash, a line end: one statement."""
    folded = fold(text)
    chain: list[_Word] = []
    for hit in hits:
        if chain and not _JOIN.fullmatch(folded, chain[-1].end, hit.start):
            yield chain
            chain = []
        chain.append(hit)
    if chain:
        yield chain


def _certainty(text: str, chain: Sequence[_Word], after_label: Sequence[tuple[int, int]]) -> float:
    """How sure it is that these words tell the plant's light; 0 when they tell something else."""
    folded = fold(text)
    start, end = chain[0].start, chain[-1].end
    sure = min(hit.certainty for hit in chain)
    if _SHIELD.search(folded[max(0, start - 48) : start]) or _TOLERANT.match(folded, end):
        return 0.0
    if text[start - 1 : start] in ("'", "‘", '"', "“"):
        return 0.0
    if len({hit.value[0] for hit in chain}) >= 3 and not re.search(r"\bto\b|\ba\b|[/,]", folded[start:end]):
        return 0.3  # a legend of all classes, one of them ticked
    if any(begin <= start < stop and _led(folded[begin:start]) for begin, stop in after_label):
        return sure
    whole = _fills_cells(text, folded, start, end)
    if all(hit.value[1] for hit in chain):
        return 0.9 * sure if whole else 0.0
    if _HOT.match(folded, end):
        return 0.4 * sure
    return (0.95 if whole else 0.85) * sure


def _led(words: str) -> bool:
    """True when nothing but "best in", "full to" or the like stands between label and light."""
    return bool(_LEAD.fullmatch(words) or _HALF.search(words))


def _fills_cells(text: str, folded: str, start: int, end: int) -> bool:
    """True when the lines the statement stands on say nothing else."""
    touched = [cell for cell in cells(text) if cell[0] < end and cell[1] > start]
    before, after = folded[touched[0][0] : start], folded[end : touched[-1][1]]
    begins = _LEAD.fullmatch(before) or _HALF.fullmatch(before) or _LABEL_WORD.fullmatch(before.strip(" :"))
    return bool(begins and _TRAIL.fullmatch(after))


def _found(text: str, chain: Sequence[_Word], certainty: float) -> Found[Light]:
    folded = fold(text)
    start, end = chain[0].start, chain[-1].end
    classes = {hit.value[0] for hit in chain}
    printed = folded[start:end]
    if re.fullmatch(r"part(?:ial|ly)?\s+sun\s*/\s*shade", printed):
        return Found(("part_sun", "part_shade"), (start, end), 0.7 * certainty)
    half = _HALF.search(folded[:start])
    noun = re.search(r"(sun|shade)", printed)
    if half and noun:
        classes.add(f"{_HALVES[half[1]]}_{noun[1]}")
        start = half.start()
    return Found(tuple(c for c in SUNNY_TO_SHADY if c in classes), (start, end), certainty)


def _without_legend(statements: Sequence[Found[Light]]) -> Iterator[Found[Light]]:
    """Three and more different statements are a legend of what the words mean, not this plant's light."""
    legend = len({found.value for found in statements}) >= 3
    for found in statements:
        yield replace(found, certainty=0.3 * found.certainty) if legend else found


_MARKS = re.compile(r"(?:[☀◐](?: ?(?:[-–/,>]|to)? ?[☀◐●○])*|●(?: ?(?:[-–/,>]|to)? ?[☀◐])+)")


def _by_marks(text: str) -> Iterator[Found[Light]]:
    """Drawn suns, where no word tells: full, half (part sun or part shade, the mark does not say), dark.

    All three in a row are a scale of what there is rather than this plant's light, and so are several rows.
    """
    rows = list(_MARKS.finditer(text))
    for match in rows if len(rows) == 1 else ():
        drawn = set(match[0]) & set("☀◐●")
        if len(drawn) < 3 and "○" not in match[0]:
            classes = {"☀": ("full_sun",), "◐": ("part_sun", "part_shade"), "●": ("full_shade",)}
            yield Found(tuple(c for mark in "☀◐●" if mark in drawn for c in classes[mark]), match.span(), 0.5)


_SUN_FULL = re.compile(
    r"(?:^|(?<=[\n\t. ]))sun(?:light)? ?[:\t] ?(?P<how>full|part|partial)(?! ?(?:sun|shade|to\b|or\b|[/-]))\b"
)


def _sun_full(text: str) -> Iterator[Found[Light]]:
    for match in _SUN_FULL.finditer(fold(text)):
        yield Found(("full_sun" if match["how"] == "full" else "part_sun",), match.span(), 0.85)


_HOURS = re.compile(
    r"(?P<less>less than |under |fewer than |up to |<\s?)?(?P<low>\d{1,2})\s?(?P<more>\+|or more|plus|to"
    r"|-|–)?\s?"
    r"(?P<high>\d{1,2})?\+?\s?(?:or more )?(?:hours?|hrs?\b\.?)\s?(?:or more )?(?:of )?(?:full |direct )*sun"
)


def _by_hours(text: str) -> Iterator[Found[Light]]:
    """Six hours and more are full sun, under three full shade; between them hours alone do not tell."""
    folded = fold(text)
    if len(re.findall(r"\bh(?:ou)?rs?\b", folded)) > 1:
        return  # a legend gives hours for every class
    for match in _HOURS.finditer(folded):
        low, high = int(match["low"]), int(match["high"] or match["low"])
        if match["less"] and high <= 3:
            yield Found(("full_shade",), match.span(), 0.7)
        elif not match["less"] and 6 <= low <= high <= 12:
            yield Found(("full_sun",), match.span(), 0.8)


_MORNING = re.compile(
    r"\b(?:morning|am|a\.m\.) sun[\s,;]{1,3}(?:and |with |then |& ?)?(?:afternoon|pm|p\.m\.) shade\b"
)


def _morning_sun(text: str) -> Iterator[Found[Light]]:
    for match in _MORNING.finditer(fold(text)):
        yield Found(("part_shade",), match.span(), 0.8)


LIGHT: Field[Light] = Field("light", "Light", tuple[str, ...], read_light)
