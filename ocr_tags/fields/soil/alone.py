"""Kinds of soil without the noun: all that a line or a sentence says."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain

from ocr_tags.fields.phrases import clean, fold
from ocr_tags.fields.soil.ends import ENDED, MOISTURE, START, goes_before, soil_end
from ocr_tags.fields.soil.words import ADJECTIVE
from ocr_tags.patterns import later
from ocr_tags.record import Found

_STRONG = (
    r"drain|sand|clay|loam|humus|acid|alkal|gravel|grit|chalk|lim[ey]|organic|fertile|lean|stony"
    r"|rocky|peat|leafy|manured|mucked|calcar|ericac|sour|soil|clay"
)
_DEGREE = (
    r"(?:(?:consistently|constantly|evenly|reliably|permanently|always|fairly|slightly|moderately|very) )?"
)
_LIST = rf"{_DEGREE}{ADJECTIVE}(?:(?:,? (?:and|or|to|but|&) |,[ \n]?| ?/ ?){_DEGREE}{ADJECTIVE})*"
_LISTED = later(
    rf"{START}(?P<soil>{_LIST}(?: (?:is |are )?(?:fine|ok|okay|only|best))?)(?= ?(?:[.,;:\n\t•·|(]|$|\s\w))"
)
_BESIDE_LIGHT = later(rf"\b(?:sun|shade)(?:, | and | & | \+ )(?P<soil>{_LIST}) ?(?=[.;\n\t]|$)")
_PH = later(
    r"(?:^|(?<=[\n\t])|(?<=[.;] ))(?P<soil>ph"
    r" ?:? ?\d(?:\.\d)?(?: ?(?:-|–|to) ?\d(?:\.\d)?)?)(?!\d|\.\d)(?= ?(?:[.,;\n\t]|$))"
)
_JOINT = later(r"[,;/]| (?:and|or|to|but|&) ")
_RICH_AND_MOIST = later(rf"(?:rich|fertile|poor)(?:,| and|, and|,? but) {_DEGREE}(?:moist|damp|dry|wet)")
_DRAINED = later(r"(?:very )?(?:sharp|well|free|fast|quick)(?:ly)?[- ]?drain(?:ed|ing)")
_NOUN_BELOW = later(r"\s*(?:soils?|ground|loam|compost|mix|border|bed|site|spot|position)\b")


def named_alone(text: str, folded: str) -> Iterator[Found[str]]:
    """Kinds of soil without the noun: all a line says ("Acid, organic, well drained"), or beside the light.

    One word alone may be anything, but for drainage, and words of moisture tell of water.
    """
    plain = fold(text)
    listed = (_LISTED.finditer(plain), _LISTED.finditer(folded))
    for match in chain(*listed, _BESIDE_LIGHT.finditer(folded), _PH.finditer(plain)):
        beside = match[0].startswith(("sun", "shade"))
        start, end = match.span("soil")
        moisture = None if beside else MOISTURE.match(folded, start)
        if moisture:
            start, end = moisture.end(), max(end, moisture.end())
        whole = end if beside else soil_end(text, start, end)
        part = (not beside and goes_before(text, start, whole)) or _NOUN_BELOW.match(folded, end)
        end = end if part else whole
        soil = folded[start:end]
        more = soil if re.search(_STRONG, soil[len(match["soil"]) :]) else match["soil"]
        several = bool(beside or moisture or _JOINT.search(more)) or soil.endswith((" ok", " okay", " fine"))
        kinds = several and (re.search(_STRONG, soil) or _RICH_AND_MOIST.match(soil))
        if ENDED.match(plain, end) and (_PH.match(soil) or _DRAINED.fullmatch(soil) or kinds):
            yield Found(clean(text[start:end]), (start, end), 0.88 * (0.5 if part else 1))
