"""Whether a bloom time ends where it was read to end, or goes on to words that were not made out."""

from __future__ import annotations

import re

from ocr_tags.fields.bloom.words import TERMS, Chain
from ocr_tags.fields.colours.words import colour
from ocr_tags.fields.phrases import fold
from ocr_tags.patterns import later

TORN = 0.3
"""What is left of the certainty of a time whose end was not made out."""
CELL_END = later(r" ?[.,;]?(?:$|[\n\t]| ?[|/•·])")


def is_torn(text: str, chain: Chain) -> bool:
    r"""Whether what follows a time belongs to it and was not read.

    >>> chain = list(TERMS.find("May to"))
    >>> is_torn("May to", chain), is_torn("May,\nbefore the leaves", chain)
    (True, False)
    """
    torn = _RUNS_ON.match(text, chain[-1].end)
    plain = len(chain) > 1 or (chain[0].value.month and text[chain[0].start].isupper())
    aside = plain and _ASIDE.match(text, chain[-1].end)
    if torn and not (aside or _is_aside_below(text, torn)):
        return not _OPEN_END.match(fold(text), torn.end() - 1) or _month_below(text, chain)
    return _month_below(text, chain)


def _is_aside_below(text: str, torn: re.Match[str]) -> bool:
    """Whether what a comma leads to in the next line is no time: "in early June," and "before the leaves"."""
    if not _COMMA_BELOW.fullmatch(torn[0]):
        return False
    following = text[torn.end() :].split("\n")[0]
    time = next(iter(TERMS.find(following)), None)
    if (other := _THEN_OTHER.match(following)) and (time is None or other.end() <= time.start):
        return True
    if _AND_BELOW.match(following) and (time is None or len(following[: time.start].split()) > 3):
        return True
    return bool(_ASIDE_BELOW.match(following)) and (time is None or time.start > 0)


_COMMA_BELOW = later(r", ?\n")
_THEN_OTHER = later(
    r"(?:(?:and )?then|(?:and )?followed by|and|with) (?:[a-z-]+ ){0,3}?(?:berries|hips|haws|fruits?|pods?"
    r"|cones|seed[ -]?\w*|foliage|leaves|cherries|apples|catkins|acorns|nuts|keys)\b"
)
"""What comes of the flowers: "July to September," and "then red berries" below."""
_AND_BELOW = later(r"(?:and|or) (?!again|then|often|sometimes|in\b|into\b|to\b|repeat|reb)[a-z]{3,} ")
_ASIDE_BELOW = later(
    r"(?!(?:then|and|or|again|also|to|until|till?|through|into|often|sometimes)\b)[a-z-]{2,}[ ,]"
)
_RUNS_ON = later(
    lambda: (
        rf"(?:(?! — )\s?[-–—]\s?(?!(?i:{colour()}))|\s(?:to|through|thru|until|till|bis|à|hasta|t/m"
        rf"|tot)\s)[^\W\d_]"
        r"|,? (?:and|then|or|&)(?: (?:then|often|sometimes))?(?: again)?(?: in)? ?(?:\n|\t|$)"
        r"|(?: to| through| thru| until| till| ?[-–—]|,) ?(?:\n|\t|$)"
        r"|\n[^\t\n]{2,20}\t(?:to|until|till?|through|thru|bis|hasta) [^\W\d_]"
    )
)
"""Behind a time that goes on to another, which was not made out: "Late spring to midsurmer"."""
_OPEN_END = later(
    r"(?:(?:the )?(?:first |hard |killing )*frosts?|early frost|late in|gel|frost|heladas?|vorst"
    r"|(?:the )?(?:leaves|leaf) ?(?:turn|drop|fall)|the snow|snow|it (?:snows|freezes)"
    r"|(?:really )?(?:cold|cool|hot)"
    r"|the heat|winter|christmas|halloween|thanksgiving|labou?r day)\b"
)
_ASIDE = later(r" [-–—] [a-z]")
"""Behind "May and June", which is whole, other matter: "May and June – bees love it"."""


def _month_below(text: str, chain: Chain) -> bool:
    """Whether a month stands alone in the next line: "May" and "October" below it have lost their stroke."""
    rest, _, following = text[chain[-1].end :].partition("\n")
    if rest.strip(" -–—~") or not chain[-1].value.month:
        return False
    term = next(iter(TERMS.find(following)), None)
    return bool(term and not term.start and term.value.month and CELL_END.match(following, term.end))
