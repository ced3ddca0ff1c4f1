"""The words that tell light, and which of them stand for something else where they stand."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.light.clauses import (
    HALF_AFTER,
    HOURS_AFTER,
    NUMBER_AFTER,
    ROOM_AFTER,
    SOIL_AFTER,
    SUN_SHADE,
)
from ocr_tags.fields.light.signs import HALF_DAY, MORNING, SUN_FULL, TILL_NOON
from ocr_tags.fields.phrases import Hit, Phrases, fold, listed
from ocr_tags.patterns import later


@dataclass(frozen=True, slots=True)
class Term:
    light: str
    alone: bool = False
    foreign: bool = False


WORDS = Phrases(
    lambda: {
        word: Term(light, "alone" in name, "foreign" in name)
        for name in ("foreign_light_alone", "foreign_light", "light_alone", "light")
        for light, words in listed(name).items()
        for word in words
    }
)

LightWord = Hit[Term]

_BROKEN_LABEL = later(
    r"(?:^|(?<=[\n\t])|(?<=[|] ))(Sun) (?:or|/|&) "
    r"(?:Full (?:sun|shade)|Part(?:ial)? (?:sun|shade))(?: [^\n]*)?\t?[^\n]*"
    r"\n{1,2}(?:[^\n]*\n{1,2})??(?:\W{0,3})(Shade)(?= ?(?:[\n\t]|$))"
)
"""A label over two lines, "Sun or" above "Shade", whose value begins with a capital beside it."""


def light_words(text: str) -> list[LightWord]:
    folded = fold(text)
    halves = [part for label in _BROKEN_LABEL.finditer(text) for part in (label.start(1), label.start(2))]
    found = (hit for hit in WORDS.find(text) if hit.start not in halves)
    hits = [_label_apart(text, _on_one_line(text, hit)) for hit in found]
    hits = [_of_morning(folded, hit) for hit in _told_once(folded, _without_sun_shade(folded, hits))]
    enough = list(_half_days(folded, hits))
    hits = [hit for hit in hits if not any(half.start <= hit.start < half.end for half in enough)]
    hits = sorted([*hits, *enough], key=lambda hit: hit.start)
    told = {hit.value.light for hit in hits if HOURS_AFTER.match(text, hit.end)}
    if len(told) > 1:  # several words with their hours are a legend, not this plant's light
        hits = [hit for hit in hits if not HOURS_AFTER.match(text, hit.end)]
    return [hit for hit in hits if not _not_light(text, folded, hit)]


def _told_once(folded: str, hits: list[LightWord]) -> list[LightWord]:
    """The words without their echo: "sun sun sun" is sun, said with some warmth."""
    once: list[LightWord] = []
    for hit in hits:
        last = once[-1] if once else None
        if last and last.value == hit.value and folded[last.end : hit.start] in (" ", ", "):
            once[-1] = replace(last, end=hit.end)
        else:
            once.append(hit)
    return once


def _half_days(folded: str, hits: list[LightWord]) -> Iterator[LightWord]:
    """Half a day that is enough, where the sun was named before: "Sun if you can, half a day will do"."""
    for match in HALF_DAY.finditer(folded):
        sun = next((hit for hit in reversed(hits) if hit.end <= match.start()), None)
        between = folded[sun.end : match.start()] if sun else ""
        if sun and sun.value.light == "full_sun" and later(r"[^\t:]{0,60}").fullmatch(between):
            yield Hit(Term("part_sun"), *match.span(), sun.certainty)


EARLY = later(r"\b(?:morning|early|early morning|am|a\.m\.) (?=sun|\Z)")


def _of_morning(folded: str, hit: LightWord) -> LightWord:
    """The sun of the morning alone is part sun (common practice, no source)."""
    if folded[hit.start : hit.end] == "sun" and (noon := TILL_NOON.match(folded, hit.start)):
        return Hit(Term("part_sun", alone=True), hit.start, noon.end(), hit.certainty)
    early = folded[hit.start : hit.end] in ("sun", "sunshine") and EARLY.search(folded, 0, hit.start)
    return Hit(Term("part_sun", alone=True), early.start(), hit.end, hit.certainty) if early else hit


def _on_one_line(text: str, hit: LightWord) -> LightWord:
    """Words mended over a line end may be two: "8 à 10 m" and "soleil" are no "mi-soleil"."""
    head, _, last = text[hit.start : hit.end].rpartition("\n")
    own = WORDS.whole(last) if head and hit.certainty < 1 else None
    return Hit(own.value, hit.end - len(last), hit.end, own.certainty) if own else hit


def _without_sun_shade(folded: str, hits: list[LightWord]) -> list[LightWord]:
    """The words but "Sun/Shade" where the tag says which of them: then it is the label."""
    asked = [match.span() for match in _WHICH.finditer(folded)]
    hits = [hit for hit in hits if not any(start <= hit.start < end for start, end in asked)]
    labels = [match.span() for match in SUN_SHADE.finditer(folded)]
    others = [hit for hit in hits if not any(start <= hit.start < end for start, end in labels)]
    return others or hits


_WHICH = later(r"\b(?:full )?(?:sun or (?:full )?shade|shade or (?:full )?sun) ?\?")
"""A question, which tells neither."""


def _label_apart(text: str, hit: LightWord) -> LightWord:
    """ "LIGHT Shade" is a label in capitals and its value, unlike "Light shade"."""
    label, _, value = re.sub(r"\s", " ", text[hit.start : hit.end]).partition(" ")
    if label == "LIGHT" and value.istitle():
        return Hit(Term("full_shade", alone=True), hit.end - len(value), hit.end, 0.8)
    return hit


def _not_light(text: str, folded: str, hit: LightWord) -> bool:
    if re.match(r" ?[:=]", text[hit.end :]) and (hit.value.alone or not HOURS_AFTER.match(text, hit.end)):
        return True  # a label: "Sun: 6 hours", "Sol : bien drainé"
    words = folded[hit.start : hit.end]
    if any(part.start() <= hit.start < part.end() for part in MORNING.finditer(folded)):
        return True  # "Morning sun, afternoon shade" is part shade
    if words.startswith(("a ", "some ")) and re.match(
        r"\s(?:at|around|from|in|during|where|if)\b", folded[hit.end :]
    ):
        return True  # "Sun, or a little shade at noon"
    if re.search(r"\b(?:afternoon|aft\.?|evening|midday|noon|winter|pm) $", folded[: hit.start]):
        return True
    if _LATE.match(words) and not _OR_BEFORE.search(folded, 0, hit.start):
        return True  # what breaks another light, unless it ends a range
    if words == "sun" and SUN_FULL.match(folded, hit.start):
        return True  # the label of "full" or "part"
    if words == "sun" and (HALF_AFTER.match(folded, hit.end) or _heads_column(text, hit.end)):
        return True
    if words == "shade" and _PLANT_AFTER.match(folded, hit.end):
        return True  # "Shade tree" is a use
    if ROOM_AFTER.match(folded, hit.end):
        return True  # "Sunny window" is room light
    if words == "sol" and SOIL_AFTER.match(folded, hit.end):
        return True
    lettered = any(two.start() <= hit.start < two.end() for two in _LETTERED.finditer(folded))
    if _SHORT.match(words) and not lettered and ("\n" in words or re.match(r"[pf] ", words)):
        return True  # a stray letter beside a word
    if hit.value.alone and NUMBER_AFTER.match(folded, hit.end):
        return True  # "Zon 3" is a zone
    if words.startswith("light") and re.match(r"light\s", words):
        opens_line = not text[: hit.start].rstrip(" ") or text[: hit.start].rstrip(" ")[-1] in "\t\n"
        closes_line = text[hit.end : hit.end + 1] in ("", "\t", "\n")
        broken = "\n" in words and (
            opens_line or not text[hit.end - len(words.rpartition("\n")[2])].islower()
        )
        if broken or (opens_line and closes_line):
            return True  # "Light Shade" on its own may be a label and its value
    return False


def _heads_column(text: str, end: int) -> bool:
    """Whether another label stands right beside, each over its value: "SUN", "HEIGHT"."""
    return text[end : end + 1] == "\t" and is_label(re.split(r"[\t\n]", text[end + 1 :])[0])


_LATE = later(r"(?:light )?afternoon shade")
_OR_BEFORE = later(r"\bsun(?: (?:or|to|and)| ?[/–&-])\s\Z")
_PLANT_AFTER = later(r" (?:trees?|cloth|house|structure)\b")
_LETTERED = later(r"\b[pf] (?:sun|shade) ?(?:[-–/,&]|to|or) ?[pf] (?:sun|shade)\b")
"""Two such letters in a range are none that strayed there: "F sun - P sun"."""
_SHORT = later(r"(?:pt|p|f)\b")
