"""Sentences of a text in parts, and which of the parts tell of one matter.

A tag in prose puts several jobs into one sentence, and a reason or a second half beside each: what is kept
are the parts of one matter and the parts of none between and behind them (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from ocr_tags.fields.fact_rows import behind_facts
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import clean, flowing
from ocr_tags.fields.values import is_torn, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found

Span = tuple[int, int]

_LETTER = later(r"[^\W_]")
_PART = later(
    r"[;]\s?(?:(?:and|but|so|then|plus) )?|,(?!\d)\s?(?:(?:and|but|so|then|plus) )?|\s[–—-]\s"
    r"|\s(?:and|but|then)\s|\s\(|\)\s"
)
_NEW_JOB = later(
    r"(?<=[a-z]) (?=(?:Feed|Water|Fertili[sz]e|Cut|Prune|Plant|Keep|Mulch|Divide|Dead-?head|Pinch|Grow"
    r"|Space|Best|Ideal|Height|Spread"
    r"|Flowers|Blooms)\b)"
)
"""A capital that begins another sentence, its full stop or bullet lost."""
_STRAY = later(
    r"(?!(?:A|I|An|In|On|At|To|As|If|By|No|Do|Up|So|Or|My|We|It|pH)\b)[^\W\d_]{1,2} (?=[A-Z][a-z])"
)
"""A drawn sign read as letters."""
_HEAD = later(r"(?P<head>[^\W\d_][\w/’' -]{1,28}?)(?: ?[:=]\s| [–—-] )")
_NO_LABEL = later(r"(?: |(?<=[a-z])\n)(?P<head>[a-z][\w/]*(?: \w[\w/]*){0,2}) ?:(?=\s)")
_CONDITION = later(
    r"(?:if|when(?:ever)?|once|as soon as|in|on|during|through|throughout|from|for|after|until|till|before"
    r"|unless|except|while|by|at|to)\b"
)
_WORN = later(r"[a-z]{1,2}[A-Z]")
_HALF = later(r"\w+ (?:and|then) ")
"""Before a job: "Mulch and", which shares what stands behind both."""
_NO_START = later(r"(?:which|who|whose|that|or|nor|than|of|as well|with|without)\b")


OTHER = (
    r"\bsun\b|\bsunny\b|drain(?:s|ed|age|ing)\b|\bph\b|\bgrit|dead-?head|\bclip\b|\bstake\b|\bdivide"
    r"|\brepot|\bblooms? (?:in|from|all)|\bflower(?:s|ing) (?:in|from|all)|\bfragran|\bpetals"
    r"|\bzones?\b|\bhardy\b|\bhardiness|°|\bapart\b|\bspac(?:e|ing)\b|\btall\b|\bdeer\b|\bbees?\b"
    r"|butterfl|\bbirds?\b|\bslugs?\b|\bplant (?:in|out|at|the|it|with|them)\b|\bhole\b|\bback-?fill"
    r"|\btoxic|\bpoison|\bedible"
)
"""Words of matters that are neither watering nor feeding."""


IT_WILL = (
    r"(?:it|they|you|she|he|(?:the )?(?:plants?|flowers?|blooms?|crops?|heads|leaves|buds|fruits?|roots))"
    r"(?:['’]ll| (?:will|may|might|can|should|blooms?|flowers|comes?|repays?|rewards?|goes on|keeps?"
    r"|bolts?|drops?"
    r"|crops))\b"
)
"""What comes of a job, which is no part of it."""
_COMES_OF_IT = later(IT_WILL, re.I)


@dataclass(frozen=True, slots=True)
class Matter:
    """What tells of a matter, what of another, and how much a stretch of text says of it."""

    own: re.Pattern[str]
    other: re.Pattern[str]
    weight: Callable[[str], float]


def sentences_of(text: str) -> Iterator[Span]:
    """The sentences, cells and lines of a text, one after the other."""
    at = 0
    while letter := _LETTER.search(text, at):
        start = stray.end() if (stray := _STRAY.match(text, letter.start())) else letter.start()
        end = max(value_end(text, start), start + 1)
        while (head := _NO_LABEL.match(text, end)) and not is_label(head["head"]):
            end = value_end(text, start, head.end())  # "They drink like fish: a gallon a day" is one sentence
        yield start, end
        at = end


def told(text: str, matter: Matter, certainty: float, enough: float) -> Iterator[Found[str]]:
    """What the sentences say of a matter, those first that say most of it."""
    found: list[tuple[float, Span]] = []
    flow = flowing(text)
    before = ""
    for first, end in sentences_of(text):
        start = behind_facts(text, first, end)
        printed, above = text[start:end], before
        before = printed
        if is_label(above) and not matter.own.search(flow[:start].rstrip()[-len(above) :]):
            before = above if text[end : end + 1] == ";" else printed  # the value goes on
            continue
        begin = _behind_head(flow, start, end, matter)
        span = _told_in(text, flow, begin, end, matter) if begin is not None else None
        if not span or (weight := matter.weight(flow[slice(*span)])) < enough:
            continue
        if found and _NEXT.fullmatch(text, found[-1][1][1], span[0]):
            weight, span = max(weight, found[-1][0]), (found.pop()[1][0], span[1])
        found.append((weight, span))
    for _, (start, end) in sorted(found, key=lambda one: -one[0]):
        phrase = clean(text[start:end])
        if (
            6 <= len(phrase) <= 160
            and not (text[end : end + 1] not in ".!;" and is_torn(phrase))
            and not _WORN.match(phrase)
        ):
            yield Found(phrase, (start, end), certainty)


def rounded(text: str, found: Found[str], matter: Matter) -> Found[str]:
    """A clause with what its sentence says of the same before it, and without what it says of another."""
    flow = flowing(text)
    start, end = found.span
    whole = next(((first, last) for first, last in sentences_of(text) if first <= start < last), None)
    if whole is None:
        return found
    begin = _behind_head(flow, *whole, matter)
    parts = _parts(text, flow, min(start, whole[0] if begin is None else begin), max(end, whole[1]))
    here = next((at for at, part in enumerate(parts) if part[0] <= start < part[1]), None)
    if here is None:
        return found
    kinds = [_kind(flow[slice(*part)], matter) for part in parts]
    first = here
    while first and kinds[first - 1] == "own":
        first -= 1
    before = _with_conditions(flow, parts, kinds, first, matter)
    alone = before >= parts[here][0] and not _belongs(flow[parts[here][0] : start], matter)
    first_at = start if alone else before
    if whole[1] > end and _UNBROKEN.match(flow, end):
        end = whole[1]
    stop = next(
        (at for at in range(here + 1, len(parts)) if kinds[at] == "other" and parts[at][0] < end), None
    )
    last = parts[stop - 1][1] if stop is not None else end
    if (first_at, last) == found.span:
        return found
    return replace(found, value=clean(text[first_at:last]), span=(first_at, last))


_UNBROKEN = later(r" (?!(?:and|or|then|but|so)\b|[–—&-])\w[^.;:\n\t]{0,20}:")
"""What was taken for the next label, and is a part of the sentence."""


def _belongs(words: str, matter: Matter) -> bool:
    """Whether words right before a clause are its own: "A pinch of | cow manure", "a high- | potash feed"."""
    return bool(words.strip()) and (words[-1] == "-" or bool(matter.own.search(words)))


def onward(text: str, found: Found[str], matter: Matter) -> Found[str]:
    """A phrase with the parts of its sentence behind it that tell of the same: "Takes lime, | clay, salt".

    What tells of nothing belongs to it where it stands between two that do, or ends their list.
    """
    flow = flowing(text)
    start, end = found.span
    stop = value_end(text, start, end)
    last = joined = end
    for first, behind in (part for part in _parts(text, flow, start, stop) if part[1] > end):
        kind = _kind(flow[max(first, end) : behind], matter)
        if kind == "other":
            break
        if first >= end and kind == "own":
            last = joined = behind
        elif last > end and behind == stop and _COUPLED.match(flow, joined, first):
            last = behind  # the last of a list: "clay, sand and everything in between"
    last = joined if is_torn(text[start:last]) else last
    if last == end or is_torn(text[start:last]):
        return found
    return replace(found, value=clean(text[start:last]), span=(start, last))


_COUPLED = later(r" ?,? ?(?:and|or|&) ")
_NEXT = later(r"[.!?][ \n]")


def with_next(text: str, found: Found[str], matter: Matter, enough: float) -> Found[str]:
    """A phrase with the sentence right behind it, where that tells of the same from its first word on."""
    start, end = found.span
    gap = _NEXT.match(text, end)
    if not gap:
        return found
    flow, stop = flowing(text), value_end(text, gap.end())
    if (
        _told_in(text, flow, gap.end(), stop, matter) != (gap.end(), stop)
        or matter.weight(flow[gap.end() : stop]) < enough
    ):
        return found
    return replace(found, value=clean(text[start:stop]), span=(start, stop))


def _behind_head(flow: str, start: int, end: int, matter: Matter) -> int | None:
    """Where the sentence begins behind a label that is no part of what is said; None behind another's."""
    head = _HEAD.match(flow, start, end)
    if not head:
        return start
    own = matter.own.search(head["head"])
    if is_label(head["head"]):
        return head.end() if own else None
    return start if own or head["head"].count(" ") > 2 else head.end()


def _told_in(text: str, flow: str, start: int, end: int, matter: Matter) -> Span | None:
    """From the first part that tells of the matter to before the first that tells of another."""
    parts = _parts(text, flow, start, end)
    kinds = [_kind(flow[slice(*part)], matter) for part in parts]
    first = next((at for at, kind in enumerate(kinds) if kind == "own"), None)
    if first is None:
        return None
    last = next((at for at in range(first + 1, len(parts)) if kinds[at] == "other"), len(parts)) - 1
    while (
        last + 1 < len(parts) and last > first and kinds[last] == "none" and not _opens(flow, parts[last + 1])
    ):
        last -= 1  # what leads over to the other matter
    begin = _with_conditions(flow, parts, kinds, first, matter)
    if _NO_START.match(flow, begin) or _HALF.fullmatch(flow, start, begin):
        return None
    return begin, parts[last][1]


_REASON = later(r"(?!(?:it|they|i|we)\b(?! ma[dk]e))(?:[\w’'-]+,? ){3,8}so \Z")
"""What it does so for: "Maples have no tap root, so | do not let them dry"."""


def _with_conditions(flow: str, parts: list[Span], kinds: list[str], first: int, matter: Matter) -> int:
    """Where the advice begins: behind a colon ("Neglect is best: skip the hose") or at its conditions."""
    start, end = parts[first]
    colon = later(r":\s").search(flow, start, end)
    if colon and not matter.own.search(flow[start : colon.start()]):
        return colon.end()
    if first and "other" not in kinds[:first] and _REASON.match(flow, parts[0][0], start):
        return parts[0][0]
    while first and kinds[first - 1] == "none" and _CONDITION.match(flow, parts[first - 1][0]):
        first -= 1
    return parts[first][0]


def _opens(flow: str, part: Span) -> bool:
    """Whether a part is the first after a semicolon."""
    return ";" in flow[max(0, part[0] - 7) : part[0]]


def _kind(part: str, matter: Matter) -> str:
    if matter.other.search(part):
        return "other"
    if matter.own.search(part):
        return "own"
    return "other" if _COMES_OF_IT.match(part) else "none"


def _parts(text: str, flow: str, start: int, end: int) -> list[Span]:
    parts: list[Span] = []
    gaps = (*_PART.finditer(flow, start, end), *_NEW_JOB.finditer(text, start, end))
    for gap in sorted(gaps, key=lambda one: one.start()):
        if gap.start() > start:
            parts.append((start, gap.start()))
        start = gap.end()
    return [*parts, (start, end)] if end > start else parts
