"""Cultivars that stand apart from the botanical name, and names put together of what a tag prints apart."""

from __future__ import annotations

import re
from dataclasses import replace

from ocr_tags.names import lexicon
from ocr_tags.names.epithets import plausible_epithet, read_cultivar, tidy_epithet
from ocr_tags.names.nomenclature import Parsed, write
from ocr_tags.names.titles import Line, is_answer, is_noise, known_ending
from ocr_tags.patterns import later
from ocr_tags.values import BotanicalName

CULTIVAR_LABEL = later(r"\b(?:variety|cultivar|variet[eé]|sorte|variedad|ras)\s*[:–-][ \t]*", re.I)

_OPENED = later(r"['‘“\"`´„]([A-ZÀ-Þ][^\W\d_]+(?:[’'-][^\W\d_]+)*(?:[ ][A-ZÀ-Þ][^\W\d_]+){0,2})[ .]*")
_CAPPED = r"[A-ZÀ-Þ][^\W\d_]+(?:[’'-][^\W\d_]+)*"
_BROKEN = later(
    rf"['‘“\"`´„](?P<words>{_CAPPED}(?:[ ]{_CAPPED})?[ ]?\n{_CAPPED}(?:[ ]{_CAPPED})?)['’”\"`´](?=[\n\t]|$)"
)

# The rest of a line after a name: words with capitals, between what is left of their quotes.
_AFTER = later(
    r"[ ]*(?P<open>['‘’`´“”\"„‚,])?(?P<words>[A-ZÀ-Þ][^\W\d_]+(?:[’'-][^\W\d_]+)*\d{0,3}"
    r"(?:[ ](?:of|the|de|[A-ZÀ-Þ\d](?:[\w’'-]*\w)?)){0,3}!?)"
    r"(?P<close>['’`´“”\"])?[ .,;|]*$"
)
# The line or two under a name: words with capitals before a closing quote, whose fellow was lost.
_CODED = r"[A-ZÀ-Þ](?:[\w’'-]*\w)"
_UNDER = later(
    rf"[ ]*\n(?P<open>)(?P<words>{_CODED}(?:[ ]{_CODED})?(?:\n{_CAPPED})?)(?P<close>['’”\"])(?=[\n\t]|$)"
)

# The same where the words begin on the name's own line: "speciosa Skelda" over "Crimson'".
_ACROSS = later(
    rf"[ ]+(?P<open>)(?P<words>{_CAPPED}(?:[ ]{_CAPPED})?\n{_CAPPED}(?:[ ]{_CAPPED})?)"
    r"(?P<close>['’”\"])(?=[\n\t]|$)"
)

# The same before whose words the quote was opened, and where it closed was not read.
_UNDER_OPENED = later(
    rf"[ ]*\n(?P<open>['‘“\"])(?P<words>{_CAPPED}\d{{0,3}}(?:[ ]{_CAPPED})?)(?P<close>)(?=[\n\t]|$)"
)

# A line under an epithet whose quote was opened and not closed: Monarda 'Skelda / Crimson.
_GOES_ON = later(rf"\n({_CAPPED})(?=[\n\t]|$)")


MARKS = later(
    r"(?:(?:AGM|RHS|F\s?[12](?:[ -][Hh]ybrids?)?|P[BV]R|PPAF|COPF|CPBR|hort|[Oo]rganic|BIO|Bio|NEW|New)"
    r"\b[ .,]*)+"
)
"""What is printed behind a name and is none of it: an award, the first cross, a right."""

_SAYS = later(
    r"\b(?:of|than|with|like|unlike|as|from|and|or|our|by|to|for|is|are|was|see|try|beside|under)\s+$"
)
"""Words of a sentence, before a cultivar that is named beside the tag's own: "unlike that of"."""


def lone_cultivar(string: str, line: Line) -> tuple[str, tuple[int, int]] | None:
    """A quoted epithet that is a whole line, or closes one: ("Sky Lantern", its span).

    It may close on the next line; on a line of its own the closing quote may be lost.
    """
    if whole := _over_two_lines(string, line):
        return whole
    if half := _OPENED.fullmatch(line.text):
        return tidy_epithet(half[1]), (line.start + half.start(1), line.start + half.end(1))
    opening = re.search(r"(?:^|(?<=\s))['‘’`´“”\"„‚]", line.text)
    if opening is None or _SAYS.search(line.text[: opening.start()]):
        return None
    start = line.start + opening.start()
    read = read_cultivar(string[: line.end], start)
    words = read[0].split() if read else []
    if read is None or len(words) > 4 or not words[0][0].isalnum() or not _capitals(words):
        return None
    return read[0], (start, read[1])


def _over_two_lines(string: str, line: Line) -> tuple[str, tuple[int, int]] | None:
    """An epithet whose quote is opened in this line and closed at the end of the next: 'Lemon / Ridge'."""
    match = _BROKEN.match(string, line.start)
    epithet = tidy_epithet(match["words"].replace("\n", " ")) if match else ""
    if match is None or not plausible_epithet(epithet):
        return None
    return epithet, match.span("words")


def _capitals(words: list[str]) -> bool:
    """Whether every word has a capital, small linking words aside: a saying in quotes has not."""
    return words[0][0] == words[0][0].upper() and all(w[0] == w[0].upper() or len(w) < 4 for w in words)


def labelled_cultivar(string: str, line: Line) -> tuple[str, tuple[int, int]] | None:
    """What a "Variety:" label names."""
    label = CULTIVAR_LABEL.search(line.text)
    if label is None:
        return None
    words = line.text[label.end() :].strip(" .,'’‘`\"“”")
    epithet = tidy_epithet(words)
    if not plausible_epithet(epithet) or not epithet[0].isupper() or len(words.split()) > 4:
        return None
    start = line.start + label.end() + line.text[label.end() :].index(words)
    return epithet, (start, start + len(words))


def with_cultivar(name: BotanicalName, cultivar: str) -> BotanicalName:
    """The name with the cultivar that stands elsewhere on the tag."""
    whole = replace(name, cultivar=cultivar)
    before = "× " if name.name.startswith("×") else "+" if name.name.startswith("+") else ""
    return replace(whole, name=write(whole, before))


def combine(one: BotanicalName, other: BotanicalName) -> BotanicalName | None:
    """One name that says what both say; None when they contradict each other.

    >>> front = BotanicalName("Salvia 'Sky'", "Salvia", cultivar="Sky")
    >>> combine(front, BotanicalName("Salvia nemorosa", "Salvia", "nemorosa")).name
    "Salvia nemorosa 'Sky'"
    """
    parts: dict[str, str | None] = {}
    for part in ("genus", "species", "infraspecific", "cultivar", "group", "trade_designation"):
        a, b = getattr(one, part), getattr(other, part)
        if a and b and lexicon.key(a) != lexicon.key(b):
            return None
        parts[part] = a or b
    if ("× " in one.name[2:] and one.species is None) or ("× " in other.name[2:] and other.species is None):
        return one if one.name == other.name else None
    whole = BotanicalName("", hybrid=one.hybrid or other.hybrid, **parts)
    before = next((p for n in (one, other) for p in ("× ", "+") if n.name.startswith(p)), "")
    written = write(whole, before)
    longest = max(one.name, other.name, key=len)
    return replace(whole, name=written if len(written) >= len(longest) else longest)


def half_quoted(text: str, line: Line, parsed: Parsed, trust: float) -> tuple[Parsed, float]:
    """The name with the words after it as its cultivar, when they fill the line and lost a quote or both.

    They may stand on the next line, or go on there, or be broken over the next two, if a quote closes them.
    """
    after = _ACROSS.match(text, parsed.end) or _AFTER.match(text, parsed.end, line.end)
    match = after or _UNDER.match(text, parsed.end) or _UNDER_OPENED.match(text, parsed.end)
    if parsed.name.cultivar or match is None:
        return parsed, trust
    quotes = bool(match["open"]) + bool(match["close"])
    epithet = tidy_epithet(match["words"])
    if (
        not plausible_epithet(epithet)
        or MARKS.fullmatch(epithet)
        or (
            not (quotes and (after or epithet[-1].isdigit()))
            and (is_noise(epithet) or lexicon.is_common_name(epithet))
        )
    ):
        return parsed, trust
    end = match.end("words")
    rest = _GOES_ON.match(text, end) if match["open"] and not match["close"] else None
    if rest and not (is_noise(rest[1]) or is_answer(rest[1]) or known_ending(rest[1].split())[0]):
        epithet, end = f"{epithet} {tidy_epithet(rest[1])}", rest.end()
    named = replace(parsed, name=with_cultivar(parsed.name, epithet), end=end, quoted=quotes)
    if not quotes and " " in epithet and epithet.split()[-1].lower() in lexicon.words_of("shade"):
        trust -= 0.1  # Impatiens Harrowby Coral: a series and its colour as well as a cultivar
    # A quote that is opened only may close on a line that was not read.
    return named, trust - (0.3 if not quotes else 0.05 if after and match["close"] else 0.15)
