"""Labels and what stands after them, and where a printed phrase ends."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ocr_tags.fields.phrases import Hit, Phrases, label_phrases, listed, squeezed
from ocr_tags.fields.small_letters import all_small
from ocr_tags.fields.turns import NEW_MATTER, OTHER_MATTER
from ocr_tags.patterns import later

_CELL_START = later(r"(?:^|[\t\n]|[ \w)][|•·] ?)[^\w\n\t]*$")
_AFTER_COLON = later(
    r"(?: ?/\s?[^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2})?\.?\s?[:=?\]→➜➔▸►▶»›][ \t]*(?:\n(?!\n))?[ \t]*(?:A[.:] )?"
)
_AFTER_STOP = later(r"\. (?=[A-Z])")
_OPENS_SENTENCE = later(r"(?:^|\n|[.!] )\W*$")
_AFTER_LEADERS = later(
    r"(?: ?/(?: ?[^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2})?(?=[\t\n]))?"
    r"(?:(?: ?[.…_·]){2,}[ .…_·]*\t?[ .…_·]*| ?[-–—]{1,3}(?: |\n(?!\n))|[ .]?\t[ .…_·]*|[ .]?\n(?!\n))"
)
_NEXT_LABEL = later(
    r"[ \t][^\W\d_][\w/]*(?: \w[\w/]*){0,2} ?:(?=\s|\d|$)"
    r"|[ \t](?:Grown|Raised|Produced|Supplied|Propagated|Packed) (?:in [A-Z]\w+ )?by (?=[A-Z])"
)
_OTHER_LABELS = label_phrases("other")
_BOTH = later(r" ?[/|&·•–-] ?")
_ENGLISH = later(
    r"\b(?:height|spread|spacing|light|soil|feed(?:ing)?|fertili[sz]er|bloom(?:s| time)?|watering|exposure"
    r"|hardiness|full sun|part(?:ial)? shade|perennial|annual)\b",
    re.I,
)
_COLON = later(r" ?:")
_TWO_TONGUES = later(r"[^\W\d_] ?/ ?[^\W\d_]")
"""Within a label, said in two languages: no sentence begins so."""
_FOREIGN_LABELS = Phrases(
    lambda: {label: True for labels in listed("foreign_label").values() for label in labels}
)
SECOND_LANGUAGE = 0.5
"""Share of its certainty that a foreign phrase keeps on a tag that also speaks English."""


@dataclass(frozen=True, slots=True)
class Labelled:
    """What stands after a label: from `start` to `end` of the text; `label` is where the label begins.

    `certainty` is 1 after a colon, less after leaders or a column gap; `bare` when only a space
    (or a line end before small letters) parts the two, so that label and value may be one sentence;
    `second` when it says again what English words say.
    """

    label: int
    start: int
    end: int
    certainty: float
    bare: bool = False
    second: bool = False


def labelled(text: str, labels: Phrases[bool]) -> Iterator[Labelled]:
    """The values printed after any of `labels`, in order; less sure those of a second language.

    A tag in two languages says one thing twice, and what is kept is what its English part says.

    >>> tag = "Water: Low  Soil: Dry" + chr(10) + "Light" + chr(9) + "Sun"
    >>> labels = Phrases(lambda: {"soil": True, "light": True})
    >>> [tag[found.start : found.end] for found in labelled(tag, labels)]
    ['Dry', 'Sun']
    """
    hits = [_on_own_line(text, labels, hit) for hit in labels.find(text)]
    found = [
        (value, label.value)
        for label in _side_by_side(text, hits)
        if (value := _value_after(text, label)) is not None and value.start < value.end
    ]
    own = any(english for _, english in found) or bool(found and _speaks_two(text))
    for value, english in found:
        if own and not english:
            value = replace(value, certainty=value.certainty * SECOND_LANGUAGE, second=True)
        yield value


def _on_own_line(text: str, labels: Phrases[bool], hit: Hit[bool]) -> Hit[bool]:
    """The label that opens a line, where a longer one was made of it and the end of the line above."""
    head, _, last = text[hit.start : hit.end].rpartition("\n")
    opens = hit.start == 0 or text[hit.start - 1] in "\n\t"
    own = labels.whole(last) if head and not opens else None
    return Hit(own.value, hit.end - len(last), hit.end, own.certainty) if own else hit


def _side_by_side(text: str, labels: Sequence[Hit[bool]]) -> Iterator[Hit[bool]]:
    """Labels of which one repeats another ("Riego / Water") as one: English if one of them is."""
    whole: Hit[bool] | None = None
    for label in labels:
        if whole is not None and _BOTH.fullmatch(text, whole.end, label.start):
            sure = min(whole.certainty, label.certainty)
            whole = Hit(whole.value or label.value, whole.start, label.end, sure)
            continue
        if whole is not None:
            yield whole
        whole = label
    if whole is not None:
        yield whole


def _speaks_two(text: str) -> bool:
    """Whether English words stand beside two foreign labels; one alone ("Sol:") may be a worn English one."""
    labels = (hit for hit in _FOREIGN_LABELS.find(text) if hit.certainty == 1 and _COLON.match(text, hit.end))
    return len({squeezed(text[hit.start : hit.end]) for hit in labels}) >= 2 and bool(_ENGLISH.search(text))


_STROKE_BEFORE = later(r"[^\W\d_.)]\.?\s?/\s\Z")
_RUN_ON_LABEL = later(r"\s?/\s(?P<label>[A-Z]{4,}(?: [A-Z]{4,})?)(?=\s[A-Z\d][a-z\d]| [a-z])")
"""In running text of labels in capitals and their values: "SOIL Cool and moist / WATER Weekly"."""


def _value_after(text: str, hit: Hit[bool]) -> Labelled | None:
    opens_cell = bool(_CELL_START.search(text[: hit.start])) and not _continues(text, hit.start)
    opens_cell |= text[hit.start : hit.end].isupper() and bool(_STROKE_BEFORE.search(text[: hit.start]))
    colon = _AFTER_COLON.match(text, hit.end)
    leaders = _AFTER_LEADERS.match(text, hit.end) if opens_cell else None
    stop = _AFTER_STOP.match(text, hit.end) if text[hit.start].isupper() else None
    if stop and hit.certainty == 1 and _OPENS_SENTENCE.search(text[: hit.start]):
        return Labelled(hit.start, stop.end(), value_end(text, stop.end()), 0.9)
    gap = colon or leaders
    if gap is None:
        if not opens_cell or text[hit.end : hit.end + 1] != " ":
            return None
        end = value_end(text, hit.end + 1)
        label = text[hit.start : hit.end]
        if _TWO_TONGUES.search(label):
            return Labelled(hit.start, hit.end + 1, end, 0.95 * hit.certainty)
        apart = label.isupper() and not text[hit.end + 1 : end].isupper()
        return Labelled(hit.start, hit.end + 1, end, (0.92 if apart else 0.8) * hit.certainty, True)
    start = gap.end()
    if ("\n" in gap[0] or "\t" in gap[0]) and _is_label(text, start):
        return None
    below = (
        colon is None and "\n" in gap[0] and not gap[0].strip(" .\n") and "/" not in text[hit.start : hit.end]
    )
    bare = below and text[start : start + 1].islower()
    certainty = 1.0 if colon and "\n" not in gap[0] else 0.95
    return Labelled(hit.start, start, value_end(text, start), certainty * hit.certainty, bare)


def _continues(text: str, at: int) -> bool:
    """Whether a line in small letters goes on with the one above: "dry between", "waterings"."""
    above = text[:at].rsplit("\n", 2)
    return text[at].islower() and len(above) > 1 and is_torn(above[-2]) and not above[-1]


def _is_label(text: str, start: int) -> bool:
    line = re.split(r"[\t\n]|[.;] ", text[start:], maxsplit=1)[0]
    head = re.split(r":| [-–—] ", line)[0]
    if line[:1].islower() and text[start + len(line) : start + len(line) + 1] == ".":
        return ":" in line  # the end of a sentence: "free-draining" over "soil. Feed weekly."
    return ":" in line or _OTHER_LABELS.whole(head) is not None or _in_capitals(line)


def _in_capitals(line: str) -> bool:
    """ "SOIL Sandy": a label in capitals and its value."""
    hit = next(iter(_OTHER_LABELS.find(line)), None)
    if hit is None or hit.start or not line[: hit.end].isupper():
        return False
    return line[hit.end : hit.end + 1] == " " and not line[hit.end :].isupper()


_STOP = later(
    r"(?<=[a-z]{5})(?<!approx)\.(?=\s+[a-z])"
    r"|(?<!\b[Ee][XxSs][CcPp])(?<!\b[EeIi][XxNn][Cc][Ll])(?<!\b[Ff]ert)"
    r"(?<!\b[Ss]low[- ][Rr]el)(?<!\bSLOW[- ]REL)[.!;?](?=\s+[^\sa-zà-ÿ]|\s*$"
    r"|(?<=[a-z]{3}[.!])[A-Z][a-z]{2})|\s?[•·]\s|\s[*«»¢]\s|\s\+\s(?=[A-Z][a-z]+\s[a-z])|\s\|\s|\t|\n"
)
_GOES_ON = later(
    r"(?:,|;|-|&|/|\b(?:(?:every|each) (?:other|second|third|few)"
    r"|(?<!is )(?<!are )over|under|onto|into|beneath|and|or|but|the|a|an|of|to"
    r"|(?<!settled )(?<!bedded )in|is|are|by|for|from|during"
    r"|with|at|when|if|as|until|than|between|every|each|per|(?<!or )not|never|(?<!will\s)do|very|evenly"
    r"|(?<!matter )(?<!compost )(?<!manure )(?<!grit )(?<!sand )(?<!lime )added|(?<!dry )(?<!out )slightly"
    r"|moderately|consistently|fairly|(?<!, )(?:balanced|liquid)|et|y"
    r"|(?<!to )keep|(?<!to )let|(?<!to )allow"
    r"|(?:from|on|after|before) the first|(?:and|but|with) no|(?<!high )(?<!low )ph|de|du|des|und|bei|mit"
    r"|bis|jede[nr]?|chaque|tous les|cada|met|elke))$"
)
"""No phrase ends so."""
_CUT = later(
    r"\b(?:(?:when|until|if) (?:the )?(?:top|soil|surface|first)"
    r"|(?:low|little|moderate|medium|average|tolerant) once"
    r"|(?<=[a-z]{3} )[b-hj-z])$"  # the first letter of a word that is worn away
)
"""Nor so; but the line below may belong to another value."""
_GOES_BACK = later(
    r"(?:and|or|of|than|(?:monthly|weekly|daily)(?= ?(?:[.;\n]|$))|drained|draining|drainage)\b(?! ?:)"
    r"(?!\t)",
    re.I,
)
"""No phrase begins so; but with "Monthly, from May" the next value of a column of them may begin."""
_TAKEN_UP = later(
    r"(?:BUT|TO|WITH|IS|ARE|THE|FROM|BETWEEN|UNTIL|WHEN|DURING|EVERY|EACH|ONCE|TWICE"
    r"|IN(?= (?:EARLY|LATE|MID|SPRING|SUMMER|AUTUMN|FALL|WINTER)))(?! PLANT| GROW) (?=[A-Z])"
)
"""In capitals, where sentences do not show, few phrases begin so."""
_PARTED = later(
    r"(?:release|purpose|soluble|potash|tomato|rose)\n(?:feed|food|fertili[sz]er|plant food)\b(?! ?:)", re.I
)

_SCRAP = later(
    r"(?!(?:a|à|y|o|e|in|to|of|or|by|if|at|as|on|is|it|no|up|so|et|de|du|au|le|la|el|en|un|al|se|si|zu|im"
    r"|am|op|te|be|do|go|he|me|my|us|we|pH)\b)[^\W\d_]{1,2}\b(?!')|e [A-Z]",
    re.I,
)
"""The rest of a torn word or a mark read as letters, where a line should go on."""


def value_end(text: str, start: int, known: int = 0) -> int:
    """Where the phrase that begins at `start` ends: its sentence or line, and lines that run on.

    Up to `known` it is known to go on.
    """
    position = max(start, known)
    while stop := _STOP.search(text, position):
        listed = stop[0] == ";" and text[start : stop.start()].isupper()  # capitals show no sentences
        parted = (
            stop[0] == "\t"
            and text[stop.end() : stop.end() + 1].islower()
            and _NEGATION.search(text, start, stop.start())
        )
        goes_on = parted or (stop[0] == "\n" and _goes_on(text, start, stop.start()))
        if not listed and not goes_on:
            end = stop.start()
            break
        position = stop.end()
    else:
        end = len(text)
    run_on = _RUN_ON_LABEL.finditer(text, max(start, known), end)
    end = next((at.start() for at in run_on if _OTHER_LABELS.whole(at["label"])), end)
    label = _NEXT_LABEL.search(text, max(start, known), end)
    end = len(text[: _label_start(label)].rstrip(" ;,")) if label else end
    matter = NEW_MATTER.search(text, max(start, known), end)
    return matter.start() if matter and not _is_title(text[start:end]) else end


def _is_title(phrase: str) -> bool:
    """Whether words of a phrase after its first are in capitals as a rule: "Keep Moist, Resists Drought"."""
    later_words = [word for word in phrase.split()[1:] if len(word) > 3]
    return all(not word[0].islower() for word in later_words)


def _label_start(label: re.Match[str]) -> int:
    """Where the label itself begins: at its known words, or at its capital, of "clay Water:".

    >>> tag = "Any, incl. clay Water:"
    >>> tag[_label_start(_NEXT_LABEL.search(tag)) :]
    ' Water:'
    """
    blanks = [label.start() + gap.start() for gap in re.finditer(r"[ \t](?=\w)", label[0])]
    parts = {at: label.string[at : label.end()].strip(" \t:") for at in blanks}
    known = (at for at, part in parts.items() if _OTHER_LABELS.whole(part))
    capital = (at for at, part in parts.items() if not part[0].islower())
    return next(known, next(capital, label.start()))


def is_torn(phrase: str) -> bool:
    """Whether a phrase breaks off where none ends.

    >>> [is_torn(text) for text in ("Water when top inch is", "Feed monthly during", "Soak once a week t")]
    [True, True, True]
    >>> is_torn("Water weekly")
    False
    """
    ending = phrase.rstrip(" /").lower()
    return bool(_GOES_ON.search(ending) or _CUT.search(ending))


_NEGATION = later(r"\b(?:[Nn]ever|[Dd]o not|[Dd]on.t|NEVER|DO NOT)\Z")  # no sense without what follows
_FULL_STOP = later(
    r"(?i)(?<![^\W\d_])(?!(?:approx|incl|excl|min|max|avg|mod|med|temp|temps|esp|est|hrs|wks|mos|yrs|ins|dia"
    r"|diam|var|subsp|ssp|spp|syn|spr|sum|aut|win|jan|feb|mar|apr|jun|jul|aug|sep|sept|oct|nov|dec|amer"
    r"|cult)\.)[^\W\d_]{3,}\.$",
)
"""A whole word and its full stop end a sentence, whatever the letter below."""


def _goes_on(text: str, start: int, at: int) -> bool:
    following, phrase = text[at + 1 : at + 2], text[start:at]
    if following in ("", "\n") or _SCRAP.match(text, at + 1) or _FULL_STOP.search(phrase):
        return False
    ending = phrase.rstrip().lower()
    if _GOES_ON.search(ending) or (following.isdecimal() and _CUT.search(ending)):
        return not _labelled_line(text, at + 1)
    last = max(text.rfind(" ", start, at), text.rfind("-", start, at), start - 1) + 1
    if "\n" not in text[last:at] and _PARTED.match(text, last):
        return True
    if _is_label(text, at + 1):
        return False
    if following.islower() and not OTHER_MATTER.match(text, at + 1) and not all_small(text, start, at):
        return True
    return bool(_GOES_BACK.match(text, at + 1) or (phrase.isupper() and _TAKEN_UP.match(text, at + 1)))


def _labelled_line(text: str, start: int) -> bool:
    """Whether a line opens with a label that is known and its colon or leader dots."""
    head, *value = re.split(r":| ?\.{2}", text[start:].split("\n")[0], maxsplit=1)
    return bool(value) and _OTHER_LABELS.whole(head) is not None
