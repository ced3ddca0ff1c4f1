"""Lines that string facts together with nothing but blanks between them: "Sun 40 cm June-Oct".

Such a line says of each part what it is by all its other parts: none of them is prose.
"""

from __future__ import annotations

import re

from ocr_tags.patterns import later

_DASH = r" ?(?:[-–—/&+,]|to|thru|or|till?|bis) ?"
_SUN = (
    r"(?:(?:full|part(?:ial)?|pt\.?|p|half|light|dappled|deep|semi|some|open)[ -])?(?:sun|shade|shd|sh)\b"
    r"|(?:fs|psh|ptsh|psu|ptsu)\b|sonnig|halbschattig|schattig|soleil|mi-ombre|zon\b|halfschaduw"
)
_MONTH = (
    r"(?:(?:(?:early|mid|late)[ -])?(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?"
    r"|(?:(?:early|mid|late)[ -])?(?:spring|summer|autumn|fall|winter)|first frost|frost)"
)
_LENGTH = (
    r"(?:(?:height|hgt|ht|h|spread|spr|sp|width|wd|w|spacing|space|spc)[.:]? ?)?"
    r"(?:(?:up )?to )?\d[\d.,½¼¾/]*(?: ?[-–] ?\d[\d.,½¼¾/]*)? ?"
    r"(?:[\"”″'’′]|in\b\.?|inch(?:es)?|ft\b\.?|feet|cm\b|m\b)(?: ?[hw]\b)?"
)
_ZONE = (
    r"(?:usda )?z(?:ones?|n)?\.? ?\d{1,2}[ab]?(?: ?(?:[-–]|to|thru) ?\d{1,2}[ab]?)?\+?"
    r"|(?:rhs )?h[1-7][abc]?\b"
)
_GROUND = (
    r"(?:any|moist|dry|wet|damp|rich|poor|good|average|most)"
    r"(?: (?:decent|good|fair|garden|ordinary|moist|drained|reasonable))?(?: soils?\b)?"
    r"|(?:low|average|medium|high|little) water"
)
_KIND = (
    r"(?:perennial|annual|biennial|evergreen|deciduous|shrub|tree|climber|plants?|hardy|tender|scented"
    r"|fragrant"
    r"|native|deer[ -]resistant"
    r"|(?:(?:deep|dark|pale|light|bright|soft|hot|rich)[ -])?(?:red|pink|white|yellow|blue|purple|violet"
    r"|orange"
    r"|mauve|crimson|scarlet|magenta|lilac|lavender|cream|apricot|salmon|coral|rose|burgundy|maroon))"
)
_FACT = (
    rf"(?:(?:{_SUN})(?:{_DASH}(?:{_SUN}))*|{_ZONE}|{_LENGTH}|{_MONTH}(?:{_DASH}{_MONTH})?"
    rf"|{_GROUND}|[€£$] ?\d[\d.,]*)"
)
_FACTS = later(rf"(?:[\s,;/|•·.+–-]*(?:{_FACT}|{_KIND})(?![^\W_]))*[\s,;/|•·.+–-]*", re.I)
_OF_SHADE = later(rf" {_KIND}", re.I)
""""Shade perennial" is a kind of plant, and so is a shade tree."""
_A_SUN, _ONE_FACT = (later(rf"(?<![^\W_]){kind}(?![^\W_])", re.I) for kind in (rf"(?:{_SUN})", _FACT))

_FIGURES_FIRST = later(
    rf"(?:[\s,;/|•·]*(?:(?:{_LENGTH}|{_ZONE}|{_SUN}|ps)(?:{_DASH}(?:{_SUN}|ps))*)(?![^\W_]))+[ ,;/|•·]+", re.I
)


def behind_facts(text: str, start: int, end: int) -> int:
    """Where the words begin behind figures and light at the head of a line.

    >>> row = "HT 2-3' Z3-9 FS low water"
    >>> row[behind_facts(row, 0, len(row)) :]
    'low water'
    """
    facts = _FIGURES_FIRST.match(text, start, end)
    return facts.end() if facts and re.search(r"\d", facts[0]) else start


def in_fact_row(text: str, start: int, end: int, others: int = 1) -> bool:
    """Whether all that shares its line with a stretch of text are `others` facts and more, one of them of
    light if the stretch is not.

    >>> row = "To 1.2 m Sun July-Aug"
    >>> in_fact_row(row, 0, 8), in_fact_row(row, 9, 12), in_fact_row("Sun dried figs", 0, 3)
    (True, True, False)
    """
    first = text.rfind("\n", 0, start) + 1
    last = text.find("\n", end)
    before, after = text[first:start], text[end : last if last >= 0 else len(text)]
    lit = _A_SUN.search(text[start:end]) or _A_SUN.search(before) or _A_SUN.search(after)
    if _OF_SHADE.match(after):
        return False
    count = len(_ONE_FACT.findall(before)) + len(_ONE_FACT.findall(after))
    return bool(lit) and count >= others and bool(_FACTS.fullmatch(before) and _FACTS.fullmatch(after))


def all_facts(line: str) -> bool:
    """Whether a line holds facts of light, size, cold or ground and nothing else.

    >>> all_facts("Full sun, 30-40 cm"), all_facts("Sun dried figs")
    (True, False)
    """
    return bool(_ONE_FACT.search(line) and _FACTS.fullmatch(line))
