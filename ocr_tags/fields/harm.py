"""Warnings a tag prints, in its own words.

A warning that is missing or unread does not make a plant safe; nothing here says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.fields.care import other_tongue
from ocr_tags.fields.harm_words import ARMED, FOOD_AFTER_ALL, HARM, HARM_ELSEWHERE, NOT_THIS, WHOM
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import clean, flowing
from ocr_tags.fields.small_letters import all_small, ended_on_purpose, in_list
from ocr_tags.fields.values import is_torn, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_FURTHER = later(
    r"(?i);\s+(?=[^.;!]*\b(?:may|can|could|will|causes?|is|are|not (?:for|to|suitable)|do not|don.t"
    r"|harmful|toxic"
    r"|poisonous|if (?:eaten|ingested|swallowed))\b)"
)
_THEN = later(r"(?:do not|don.t|they|it|if|contact|handle|wear|wash|keep)\b")
"""Other matter may follow: "Toxic to dogs; the leaves are fragrant"; danger and advice belong to it."""
_HARMLESS = later(
    r"(?:\b(?:non|not|nor|is not|are not|isn.t|no known|niet|nicht|ikke|inte|pas)[ -]*(?:known to be "
    r"|considered )?|\b(?:hasn.t got|haven.t got|lost its|without|minus|free of)[: ]+|\b(?:does not"
    r"|doesn.t|do not|don.t|won.t|will not|never|resists?"
    r"|crown of|nearly|almost|un|no|few|without|lacks)\s)$"
)
_OF_ANOTHER = later(r"\b(?:fertili[sz]ers?|manure|salt|spray|pesticides?|herbicides?)\b[^.;\n]{0,60}\Z")
"""Before "harmful", where it is said of what is put on the plant."""
_NOT_HARM = later(r"\s?(?:ivy|oak|sumac|-free|free)\b")


def read_warnings(tag: TagText) -> Iterator[Found[str]]:
    """Each warning sentence, as printed.

    >>> [found.value for found in read_warnings(TagText("Full sun. Harmful if eaten. Non-toxic to bees."))]
    ['Harmful if eaten']
    """
    text = tag.string
    folded = _one_voice(text)
    own = list(_sentences(text, folded, HARM, ()))
    again = list(_sentences(text, folded, HARM_ELSEWHERE, own))
    if len(again) > len(own):  # else they say in another language what is kept
        own += again
    armed = _sentences(text, folded, ARMED, own)
    own += [one for one in armed if not own or any(_is_next(text, one, other) for other in own)]
    for start, end in (_with_food(text, span) for span in sorted(own)):
        for opening in (_OPENS_WARNING, _OUTCRY_FIRST, WHOM):
            opens = opening.match(text, start, end)
            start = opens.end("mark") if opens and opens["mark"] else start
        for first, last in _by_tongue(text, start, end):
            yield Found(clean(text[first:last]).strip("()!"), (first, last), _wholeness(text, first, last))


def _with_food(text: str, span: tuple[int, int]) -> tuple[int, int]:
    """The sentence with the next one of its line, where that says which part is food after all.

    A danger, and what to do about it, are two warnings if they are two sentences: a list of them is what a
    tag prints, and none hides behind another.

    >>> tag = "Leaves are toxic. Eat stalks only. Wear gloves."
    >>> tag[slice(*_with_food(tag, (0, 16)))]
    'Leaves are toxic. Eat stalks only'
    """
    start, end = span
    follows = text[end : end + 2] == ". " and FOOD_AFTER_ALL.match(text, end + 2)
    return (start, value_end(text, end + 2)) if follows else span


def _is_next(text: str, one: tuple[int, int], other: tuple[int, int]) -> bool:
    """Whether two sentences stand side by side: weapons beside a danger are one too."""
    (_, start), (end, _) = sorted((one, other))
    return start <= end and _FULL_STOP.fullmatch(text, start, end) is not None


_FULL_STOP = later(r"[.!] ?\n?| [·•|] ")
_STROKE = later(r"\s+/\s*|\s*/\s+|(?<=[a-zà-ÿ]{3})/(?=[A-ZÀ-Þ][a-zà-ÿ]{2})")


def _by_tongue(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """A sentence; of one printed in several languages, strokes between, what English says.

    >>> tag = "Toxic to dogs / Toxique pour les chiens"
    >>> [tag[a:b] for a, b in _by_tongue(tag, 0, len(tag))]
    ['Toxic to dogs']
    """
    strokes = list(_STROKE.finditer(text, start, end))
    if not strokes:
        return [(start, end)]
    ends = [start, *(at for stroke in strokes for at in stroke.span()), end]
    parts = list(zip(ends[::2], ends[1::2], strict=True))
    words = [flowing(text)[first:last].replace("\n", " ") for first, last in parts]
    harms = [bool(HARM.search(part) or HARM_ELSEWHERE.search(part)) for part in words]
    foreign = [
        other_tongue(text[slice(*part)]) or (harm and not HARM.search(said))
        for part, said, harm in zip(parts, words, harms, strict=True)
    ]
    if not any(foreign) or not all(harms):
        return [(start, end)]
    return [part for part, other in zip(parts, foreign, strict=True) if not other] or parts[:1]


def _wholeness(text: str, start: int, end: int) -> float:
    """How sure it is that a sentence is whole, and holds nothing of the line above in a list."""
    if is_torn(text[start:end]):
        return 0.3
    return 0.4 if "\n" in text[start:end] and in_list(text, start) and not text[start:end].isupper() else 0.9


def _sentences(
    text: str, folded: str, pattern: re.Pattern[str], taken: Sequence[tuple[int, int]]
) -> Iterator[tuple[int, int]]:
    """The sentences in which a pattern is found, each once, and none that is taken."""
    seen = list(taken)
    for match in pattern.finditer(folded):
        before = folded[: match.start()]
        if _HARMLESS.search(before) or _NOT_HARM.match(folded, match.end()):
            continue
        if match[0] in ("harmful", "toxic") and _OF_ANOTHER.search(before):
            continue
        start, end = _sentence(text, match.start(), match.end())
        if NOT_THIS.search(folded, start, end):
            continue
        if len(clean(text[start:end])) <= 240 and not any(a < end and start < b for a, b in seen):
            seen.append((start, end))
            yield start, end


def _one_voice(text: str) -> str:
    """The flowing text, in which capitals run on over line ends as well."""
    folded = flowing(text)
    for match in re.finditer(r"(?<=[A-Z])\n(?=[A-Z]{2})", text):
        folded = folded[: match.start()] + " " + folded[match.end() :]
    return folded


_STOPS = later(
    r"[.!;]\s+|\b[a-z]{2,},\s+(?=[A-Z][a-z]+\s(?:is|are|may|can|will|causes?)\b)"
    r"|\s[-–—]\s(?=(?:do not|don.t|never) (?:eat|ingest|consume)\b)"
    r"|(?<=[a-z]{3})\.(?=[A-Z][a-z]{2})|\t|\n\n|[•|·]\s|[•·](?=[A-Z])|(?<=[^\W\d_])[)\]] (?=[A-Z])"
)


def _sentence(text: str, start: int, end: int) -> tuple[int, int]:
    """The whole sentence around a stretch: back over lines that run into it, on to its full stop."""
    stops = (stop for stop in _STOPS.finditer(text) if stop.end() <= start)
    begin = max((stop.end() for stop in stops if not _closes_bracket(text, stop)), default=0)
    lines = [at for at in range(begin, start) if text[at] == "\n" and not _runs_on(text, at)]
    begin = lines[-1] + 1 if lines else begin
    led = _LED.match(text, begin, start)
    if led and not ARMED.search(flowing(text)[begin : led.end()]):
        begin = led.end()
    bracket = text.rfind("(", begin, start)
    if bracket >= 0 and ")" not in text[bracket:start] and _SEVERAL_WORDS.match(text, bracket):
        begin = bracket + 1
    stop = value_end(text, end)
    for small in _SMALL_BELOW.finditer(text, end, stop):
        above = text[begin : small.start()]
        if above.isupper() or (_DANGER.match(text, small.end()) and not _AWAITS.search(above)):
            return begin, small.start()
    colon = _COLON.match(text, stop)
    # "if eaten: these are no peas" is no label, nor is "planting" in "after planting: bulbs irritate"
    if colon and (_AFTER.search(text, begin, stop) or not is_label(colon["word"])):
        stop = value_end(text, start, colon.end())
    if comma := _COMMA_FOR_STOP.search(text, end, stop):
        return begin, comma.start()
    while text[stop : stop + 1] == "\n" and _TORN_ABROAD.search(text, begin, stop):
        spaced = _SPACED_COLON.match(text, stop + 1)
        stop = value_end(text, stop + 1, spaced.end() if spaced else 0)
    if outcry := _OUTCRY.search(text, 0, begin):
        begin = outcry.start("cry")
    if text[stop : stop + 2] == "! " and len(text[begin:stop].split()) <= 4:
        further_end = value_end(text, stop + 2)
        stop = further_end if HARM.search(flowing(text), stop, further_end) else stop
    for further in _FURTHER.finditer(text, end, stop):
        after = flowing(text)[further.end() : stop].split("; ")[0]
        if not HARM.search(after) and not _THEN.match(after):
            return begin, further.start()
    while text[stop : stop + 1] == "\n" and text[begin:stop].isupper() and _runs_on(text, stop):
        stop = value_end(text, stop + 1)
    return begin, stop


_SMALL_BELOW = later(r"\n(?=[a-z])(?!(?:if|when|to|or|and|from|by|on|in|with|for|of|after|upon)\b)")
"""Before a line in small letters: of one in capitals it is no part, nor of a danger if it tells another."""
_OUTCRY = later(r"(?i)(?:^|[\n\t•·|]|\. )\s?(?P<cry>(?:danger|warning|caution|careful|attention|beware)!) \Z")
_OUTCRY_FIRST = later(
    r"(?i)(?P<mark>\W*(?:(?:take care|watch out|heads up|be aware|please note|fair warning"
    r"|achtung|vorsicht|safety(?: note)?)[:!])\s(?=[^\W\d_]))"
)
_LED = later(r"(?:[^.:;\t\n]|\n(?=[a-z]))*\b(?:is|are|has|have) (?:[^.:;\t\n]|\n(?=[a-z]))*: ")
"""A sentence that leads up to a warning without telling it: "The juice is another matter: wear gloves"."""
_SEVERAL_WORDS = later(r"\([^()\t]+ [^()\t]+ [^()\t]+ [^()\t]+\)")
"""What a bracket holds is a sentence of its own when it has several words."""
_AFTER = later(r"\b(?:after|before|when|while|during|if|from|by)\Z")
_SPACED_COLON = later(r"[^:\t\n]+ : (?=[a-zà-ÿ])")
_TORN_ABROAD = later(
    r"(?:/|/ ?[A-ZÀ-Þ]?[a-zà-ÿ]{1,3}|\b(?:zum|zur|beim?|voor|pour|aux?|les?|la|ses|du|des|der|die|das"
    r"|mit|para|con))\Z"
)
"""No phrase ends so in the languages that stand behind a stroke."""
_COLON = later(r",?(?P<word>(?:[ \n][a-z]+)+) ?: (?=[a-z])")
_COMMA_FOR_STOP = later(r"(?<=[a-z]),\n(?=[A-Z][a-z]+\s(?:[A-Z&]|inc\b))")
"""Before a name, which tells of no danger, a comma at a line's end is a full stop read amiss."""


def _closes_bracket(text: str, stop: re.Match[str]) -> bool:
    """Whether a bracket was opened as well: one that was not is a full stop read amiss."""
    opened = text.rfind("(["[")]".index(stop[0][0])], 0, stop.start()) if stop[0][0] in ")]" else -1
    return opened >= 0 and not re.search(r"[.!?;\t]|\n\n", text[opened : stop.start()])


_OPENS_WARNING = later(
    r"(?P<mark>[A-Z]\W{0,2}\s)?"
    r"(?:(?:Mildly |Highly |Slightly )?Toxic|Harmful|Poisonous|Caution|Warning|All parts)\b"
)
"""A sentence of its own, whatever was read for the stop above; a mark before it may be read as a letter."""


def _runs_on(text: str, at: int) -> bool:
    """Whether the line that ends at `at` runs into the next one."""
    above = re.split(r"[\t\n]", text[:at])[-1].rstrip()
    below = re.split(r"[\t\n]", text[at + 1 :], maxsplit=1)[0]
    if above.endswith((",", "-")):
        return not _OPENS_WARNING.match(below)
    if below[:1].islower() and _UNFINISHED.search(above):
        return True
    if above.isupper():
        return _capitals_run_on(above, below)
    if not below[:1].islower() or (_DANGER.match(below) and not _AWAITS.search(above)):
        return False
    return is_torn(above) or not (
        all_small(text, at + 1, at) or ended_on_purpose(above, below, max(len(above), len(below)))
    )


_UNFINISHED = later(r"\b(?:may|can|could|will|might|should|must|not|do|causes?|which|that)\Z")
_DANGER = later(
    r"(?:(?:very |highly |mildly )?(?:poisonous|toxic)|harmful|irritant)(?: (?:to|if|when)\b|[.,;!]? ?$)"
)
_AWAITS = later(
    r"(?i)(?:,|-|&|\b(?:parts?|plants?|leaves|foliage|seeds?|berr(?:y|ies)|fruits?|roots?|bulbs?|tubers?|sap|bark"
    r"|stems?|flowers?|pods?|juice|pollen|oils?|kernels?|pits|stones|leaf|wood|be|is|are|and|or|but|very|highly"
    r"|mildly|slightly|extremely|also|potentially|possibly|which|that|it|they|not|non|no|considered|known|if"
    r"|the|a|an|all|cause|to|being|quite|rather|mostly|severely|both|as))\W*\Z"
)
"""Before a danger on the next line, words of the same sentence: "All parts", "harmful if eaten"."""
_SUBJECT = later(
    r"\b(?:PARTS?|PLANT|LEAVES|LVS|FOLIAGE|SEEDS?|BERR(?:Y|IES)|FRUITS?|ROOTS?|BULBS?|TUBERS?|SAP|STEMS?"
    r"|FLOWERS"
    r"|PODS?|HIGHLY|VERY|MILDLY|EXTREMELY|SEVERELY|SLIGHTLY|MAY|CAN|WILL|IS|ARE|CAUSES?|CAUSING|SEVERE|SKIN"
    r"|STOMACH|EYE|PROTECTIVE|ALLERGIC|CAUTION|WARNING|DO NOT|DON.T|NEVER|NOT|HUMAN)[:!]?$"
)
_PREDICATE = later(r"(?:IF|WHEN|TO|OR|AND|&|FROM|BY|ON|IN|WITH|FOR|OF|AFTER|UPON|WHICH|THAT|CONSUMPTION)\b")


def _capitals_run_on(above: str, below: str) -> bool:
    """Whether two lines in capitals are one sentence: case tells nothing, so words that lack another must."""
    if not below.isupper() or len(below.split()) > 6 or ":" in below or above.endswith("."):
        return False
    return is_torn(above) or bool(_SUBJECT.search(above) or _PREDICATE.match(below))
