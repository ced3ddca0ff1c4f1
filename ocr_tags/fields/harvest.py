"""Days from planting to harvest, as vegetable and fruit tags print them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.phrases import fold
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Days

PLAUSIBLE = range(15, 301)
"""Days that a crop can take: cress to garlic set in autumn (common practice, no source)."""

_NUMBER = r"(?P<low>\d{2,3})(?:\s?(?:-|–|—|to|a|bis|tot|/)\s?(?P<high>\d{2,3}))?\+?"
_SMALL = r"(?P<low>\d{1,2})(?:\s?(?:-|–|—|to|/)\s?(?P<high>\d{1,2}))?"
_DAY = r"(?:(?:days?|jours?|dias?|tage?n?|dagen)\b|d(?= (?:from|after|to|till?|until)\b|[.,;)]|\s*(?:$|\n)))"
_WEEKS = r"(?P<weeks>weeks?)\b"
_DAYS = rf"(?:{_DAY}(?:\s?/\s?{_DAY})*)"
_RIPE = (
    r"(?:maturity|maturation|mature|(?<!seed )harvest|pick(?:ing)?|ripen(?:ing)?|ripe|eat|table"
    r"|fruit(?:ing)?"
    r"|crop"
    r"|maturite|recolte|cosecha|madurez|ernte)"
)
_SPACE = r"[ :=.…_·|\t–—-]*(?:\n(?!\n))?[ \t]*"
_START = (
    r"(?:sow(?:ing)?|seed(?:ing)?|transplant(?:ing)?|planting|setting[- ]out|set[- ]?out"
    r"|plant(?:ing)?[- ]out)"
)
_LABEL = (
    rf"(?:days\s(?:to|until|till|from transplant to)(?:\sfirst)?\s{_RIPE}(?:\s?\([a-z ]{{3,24}}\))?|dtm|"
    rf"jours\s(?:a|jusqu.a)\s(?:la\s)?{_RIPE}|{_RIPE}\s(?:in\s)?\(?days\)?|"
    rf"days\s?\(?(?:from|after)\s{_START}\)?)"
)
_RESULT = (
    rf"(?:(?:from\s)?(?:{_START}|seed|plant|pot)\sto\s(?:{_RIPE}|red|plate|fork|kitchen|bowl|pot"
    rf"|first\s[a-z]+)|"
    r"baby\s(?:leaf|leaves|greens|salad|carrots?|roots?|beets?)|"
    rf"time\s(?:to|until)\s{_RIPE}|"
    r"(?:first|earliest)\s(?!shoot|leaf|leaves|bloom|flower|seedling|frost|feed|year|sprout|true)[a-z]{4,}"
    r"(?=\s(?:in|after|at|about|approx|around|from)\b)|"
    r"(?:fruits|crops|bears|yields|produces|makes)(?:\s(?!roots?|shoots?|growth|bloom|flower)(?:lbs?\."
    r"|oz\.|(?!in\s)[^\s.;]+)){0,5}(?=\sin\s)|"
    r"(?:pick|cut|harvest|snip)(?:ting|ping|ing)?"
    r"(?:\s(?!in\s|from\s|after\s|at\s|to\s|back|down|up\s|off|flower|bloom|stem|grass|hay)[a-z-]+){0,4}"
    r"(?=\s(?:in|after|from|at|about)\s)|"
    r"(?:dig|lift|pull|gather|snip)(?:s|ging|ping|ing)?(?=\sfrom\s(?![^.;]{3,25}\b(?:flower|bloom)))|"
    r"(?:start|begin)\s(?:to\s)?(?:pick|cut|harvest)(?:ting|ing)?|"
    r"first\s(?:leaves|greens|salads?|heads|hearts|pods|fruits?|roots|ears|cobs|pick(?:ing)?s?|cut(?:ting)?s?"
    r"|crops?|tomatoes|peppers|beans|peas|courgettes|zucchini|squash|cucumbers)(?=\s(?:\d|about|around))|"
    r"(?:(?:pick|harvest|cutt|cropp|ripen)ing|harvest|crops?|fruits?)\s(?:starts?|begins?|commences?"
    r"|is\sready)|"
    r"matur(?:es?|ity|ing)|ready in ?/ ?pret en|"
    r"ready(?:\s(?:to|for)\s(?:pick(?:ing)?|cut(?:ting)?|harvest(?:ing)?"
    r"|eat(?:ing)?))?|"
    r"(?<!seed )harvest(?:s|ed)?|ripen?s?(?:\sready)?"
    r"|fruits?\sripen|"
    r"pick|recolte|cosecha|ernte|maturite|madurez|oogst)"
)
_ABOUT = (
    r"(?:(?:early|mid|late|main)(?:[- ]?season)?[ ,(]{1,2})?"
    r"(?:(?:in|after|at|about|approx\.?|approximately|around|within|from|en|nach|na)[\s:]{1,2})*"
)
_FORMS = (
    (
        later(rf"\b{_LABEL}{_SPACE}{_NUMBER}(?![\d.,]*\d)(?!\s?(?:in|cm|°|%|f\b|lb|oz))(?:\s?{_DAYS})?"),
        1.0,
    ),
    (later(rf"\b{_RESULT}{_SPACE}{_ABOUT}{_NUMBER}\s?{_DAYS}"), 0.95),
    (later(rf"\b{_RESULT}{_SPACE}{_ABOUT}{_SMALL}\s?{_WEEKS}"), 0.9),
    (
        later(
            rf"\b{_NUMBER}\s?{_DAYS}\s(?:to|until|till|from|after|a)\s(?:first\s|la\s)?(?:{_RIPE}"
            rf"|transplant\w*|planting|setting|set[- ]?out|seed\b|(?:direct )?sowing"
            r"|you (?:plant|set|sow|tuck|pot|transplant)\b)"
        ),
        0.95,
    ),
    (
        later(
            r"(?:^|(?<=[\t\n]))days(?:\s?/\s?(?:jours|dias|tage|dagen))?(?:\s?[:=]\s?|[ ]?[\t\n]"
            r"|\.{3,}\s?|[ ])"
            rf"{_NUMBER}(?=\s*(?:$|[\t\n]))"
        ),
        0.85,
    ),
    (
        later(
            rf"(?:^|[\n\t.;•|] ?)from\s{_START}(?:\s?[:,–—-]|\t)\s?{_NUMBER}\s?{_DAYS}(?=\s*(?:$|[.,;\n\t]))"
        ),
        0.85,
    ),
    (later(rf"\b{_NUMBER}\s?dtm\b"), 0.95),
    (
        later(
            rf"\b{_NUMBER}\s?{_DAYS}\s(?:to|until|till|before)\s(?:you(?:['’]re| are| can)?\s(?:eat|pick"
            rf"|harvest|cut)"
            r"(?:ing)?|(?:the |your )?(?:table|plate|fork|kitchen|supper|salad|first (?!flower|bloom"
            r"|frost)[a-z]+))\b"
        ),
        0.95,
    ),
    (
        later(
            rf"(?<!flower )(?<!seed )\b(?:pods|beans|peas|peppers|fruits?|(?<!true )leaves(?: off)?"
            rf"|tomatoes|cukes|cucumbers|heads"
            rf"|ears|bulbs|hearts|(?:crisp|sweet|round|baby|tender|small|full) roots|cobs|curds|florets"
            r"|spears|leeks|lettuces|beets|carrots|radishes"
            rf"|turnips|bunches|pumpkins|melons|courgettes|eggplants|aubergines|chill?ies|chilis|herbs"
            rf"|(?:golf|tennis|cricket|ping[- ]pong)[- ]balls?(?:[- ]sized?)?"
            r"|squash|zucchini|berries|salads?|greens|supper|dinner|on (?:the|your) (?:table|plate))"
            rf"\s(?:ready\s)?(?:in|by|at|after)\s(?:about\s|just\s|only\s|some\s)?{_NUMBER}\s?{_DAYS}"
        ),
        0.9,
    ),
    (
        later(
            r"\b(?:pick|harvest|crop|cut|ready|eat)[a-z]*\b(?:\s(?:starts?|begins?|opens?|ready))?"
            rf"(?:\s(?:at|from|by|on|around|about)){{1,2}}\sday\s{_NUMBER}\b"
        ),
        0.9,
    ),
    (
        later(
            r"\b(?:pick(?:s|ing)?|harvest(?:s|ing)?|crops?|cropping|cut(?:ting)?|ready|dig(?:ging)?"
            r"|lift(?:ing)?)\b"
            rf"[^.;\t\d]{{0,30}}\b{_SMALL}\s?{_WEEKS}\s(?:(?:from|after)\s"
            r"(?:sowing|planting|seed|transplant\w*|setting)|on\b|later\b)"
        ),
        0.85,
    ),
    (later(rf"\b{_NUMBER}[\s-]days?\s(?:variety|hybrid|crop)\b"), 0.9),
)
_LINE = later(
    rf"(?:^|(?<=[\t\n(])|(?<=[.;,•|·]\s))(?:approx\.?\s|about\s|ca\.?\s)?{_NUMBER}\s?(?:{_DAYS}"
    rf"|d\.?(?=\s*(?:$|\n)))"
    r"(?:\s\((?:green|red|ripe|baby|full|mature|bulbs?|pods?)[a-z ]{0,12}\))?"
    r"(?=\s*(?:$|[\t\n;,•|·)]|\.(?:\s|$)))"
)
_OTHER = later(
    r"germin|emerg|sprout|levee|keim|return|refund|guarant|garant|warrant|vase|trial|\bship|rooting"
    r"|finish|shelf|store|water"
    r"|feed|bloom|flowers\b"
)
_NO_HARVEST = later(r"\b(?:within|every|each|for|lasts?|next|first)(?: (?:the|a|about|at least|up to))*\W*$")
"""Before days that no other word explains."""


def read_days(tag: TagText) -> Iterator[Found[Days]]:
    """Days to maturity; a lone "60-70 days" counts when no other use of days stands beside it.

    >>> [found.value for found in read_days(TagText("Matures in 60-70 days"))]
    [Days(min_days=60, max_days=70)]
    >>> list(read_days(TagText("Germinates in 15-20 days")))
    []
    """
    folded = fold(tag.string)
    seen = False
    for pattern, certainty in _FORMS:
        for match in pattern.finditer(folded):
            heading = match[0].startswith("days") and _OTHER.search(_line_before(folded, match))
            if not heading and not _of_other(folded, match) and (days := _days(match)):
                seen = True
                yield Found(days, match.span(), certainty)
    if seen:
        return
    for match in _LINE.finditer(folded):
        before = _line_before(folded, match)
        if (
            not _OTHER.search(before)
            and not _NO_HARVEST.search(before)
            and not before.endswith("\t")
            and (days := _days(match))
        ):
            yield Found(days, match.span(), 0.7)


def _line_before(folded: str, match: re.Match[str]) -> str:
    """What stands over a match: "Germination" makes days and figure below it no harvest."""
    return folded[max(0, match.start() - 40) : match.start()].split("\n\n")[-1]


def _of_other(folded: str, match: re.Match[str]) -> bool:
    """True when the sentence before is about germination, a guarantee and the like."""
    before = re.split(r"[.;\n\t]", folded[max(0, match.start() - 40) : match.start()])[-1]
    return bool(_OTHER.search(before))


def _days(match: re.Match[str]) -> Days | None:
    unit = 7 if match.groupdict().get("weeks") else 1
    low = unit * int(match["low"])
    high = unit * int(match["high"] or match["low"])
    return Days(low, high) if low in PLAUSIBLE and high in PLAUSIBLE and low <= high else None
