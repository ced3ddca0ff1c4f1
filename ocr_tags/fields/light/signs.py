"""Light told without its words: drawn suns, "Sun: Full", hours of sun, morning sun."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.facts import SUNNY_TO_SHADY
from ocr_tags.fields.phrases import flowing, fold
from ocr_tags.patterns import later
from ocr_tags.record import Found

Light = tuple[str, ...]

_DRAWN: dict[str, Light] = {
    "☀": ("full_sun",),
    "◐": ("part_sun", "part_shade"),
    "☾": ("part_shade",),
    "●": ("full_shade",),
}
"""A drawn sun, half-dark disc, crescent, dark disc (common practice, no source)."""
_AND = r" ?(?:[-–/,>]|to)? ?"
_MARKS = later(rf"(?:[☀◐](?:{_AND}[☀◐☾●○])*|[☾●](?:{_AND}[☀◐])+)")


def by_marks(text: str) -> Iterator[Found[Light]]:
    """Drawn suns, where no word tells. A half sun is part sun or part shade, the mark does not say.

    Three kinds in a row are a scale of what there is rather than this plant's light, and so are several rows.
    A dark disc or a crescent alone is a bullet or an ornament, and a sun before other words
    or beside words of room light is their label.
    """
    rows = [match for match in _MARKS.finditer(text) if not _CAPTION.match(text, match.end())]
    for match in rows if len(rows) == 1 and not _ROOM_LIGHT.search(fold(text)) else ():
        drawn = set(match[0]) & set(_DRAWN)
        if len(drawn) < 3 and "○" not in match[0]:
            classes = {name for mark in drawn for name in _DRAWN[mark]}
            yield Found(tuple(name for name in SUNNY_TO_SHADY if name in classes), match.span(), 0.5)


_CAPTION = later(r" [^\W\d_]{3,} ")
_ROOM_LIGHT = later(r"\b(?:low|medium|bright|indirect|filtered)\b[^.\n\t]{0,24}\blight\b")

_CODE = r"(?:FSh|FSH|FSu|FS|PtSh|PtSu|PSh|PSH|PSu|PS|Sh|SH)"
_CODES = later(
    rf"(?:^|(?<=[\n\t:|•·/] )|(?<=\d )|(?<=[\n\t:|•·])|(?<=(?:Exp|EXP|Sun|SUN)[ .])|(?<=(?:Lt|LT)[ .]))"
    rf"(?P<codes>{_CODE}(?: ?(?:[-–/,&]|to|or) ?{_CODE}){{0,3}})(?= ?(?:[\n\t|•·.;]|, |$)| / "
    r"|[ ]{1,3}(?=(?:JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep"
    r"|Oct)\b)"
    rf"| \d{{1,3}} ?(?:[\"”″'’′]|in|ft|cm)"
    r"|[ ]{1,3}(?=(?:low|med(?:ium)?|moderate|average|high|moist|dry|wet)\b))"
)
_MEANT = {
    "fs": "full_sun",
    "fsu": "full_sun",
    "ps": "part_sun",
    "psu": "part_sun",
    "ptsu": "part_sun",
    "psh": "part_shade",
    "ptsh": "part_shade",
}
_SHADES = {"fsh": "full_shade", "sh": "full_shade"}


def by_codes(text: str) -> Iterator[Found[Light]]:
    """ "FS-PSh": the letters of nursery lists. "PS" is part sun beside others; alone it adds words."""
    for match in _CODES.finditer(text):
        letters = [code.lower() for code in re.findall(_CODE, match["codes"])]
        if not {"ps", "sh"}.issuperset(letters):
            named = {(_MEANT | _SHADES)[code] for code in letters}
            found = tuple(name for name in SUNNY_TO_SHADY if name in named)
            yield Found(found, match.span("codes"), 0.75)


SUN_FULL = later(
    r"(?:^|(?<=[\n\t. ]))sun(?:light| exposure| needs)? ?(?:[:=(☀☼]\t?|\t|(?<=[\n\t]sun)\n) ?(?P<how>full"
    r"|part|partial|half|prt|pt\b\.?)"
    r"(?: ?(?:to|or|and|[/&,–-]) ?(?P<also>full|part|partial|half|prt|pt\b\.?))?"
    r"(?!,? ?(?:sun|shade|shady|to\b|or\b|[/-]))\b"
)


def sun_full(text: str) -> Iterator[Found[Light]]:
    """ "Sun: Full", "Sun: Full to Part": the noun stands in the label."""
    for match in _SUN_HITS.finditer(flowing(text)):
        yield Found(("full_sun",), match.span(), 0.75)
    for match in _SUN_LONG.finditer(flowing(text)):
        if not _KEPT_FROM.search(flowing(text), max(0, match.start() - 40), match.start()):
            yield Found(("full_sun",), match.span(), 0.85)
    for match in _SUN_ALL_DAY.finditer(fold(text)):
        yield Found(("full_sun",), match.span(), 0.9)
    for match in (*SUN_FULL.finditer(fold(text)), *_SUN_THEN_FULL.finditer(text)):
        named = {"full_sun" if how.lower() == "full" else "part_sun" for how in match.groups() if how}
        yield Found(tuple(c for c in SUNNY_TO_SHADY if c in named), match.span(), 0.85)


_SUN_HITS = later(
    r"(?:^|(?<=[\n\t])|(?<=[.!?;,:–—] ))(?:(?!(?:not?|never|avoid|unless|without|if|until|from"
    r"|away)\b)[a-z']+ ){0,4}"
    r"sun(?:shine|light)? (?:(?:can )?(?:hits?|on|reach(?:es)?|beats?(?: down)?(?: on)?|bakes?"
    r"|shines?(?: on)?|falls? on|strikes?) )"
    r"(?:(?:it|them|me|us|the|its|their|leaves|plants?|roots|bed) ){0,3}(?:all|most of the|the whole"
    r"|all the livelong) day\b"
)
"""The sun is to do it all day, whatever the verb."""
_SUN_LONG = later(
    r"\bsun(?:shine|light)? from (?:breakfast|dawn|daybreak|sunrise|sun-?up|morning|first light)"
    r" (?:to|till?|until|through to) (?:supper|dinner|tea(?: ?time)?|dusk|sunset|sundown|night(?:fall)?"
    r"|evening"
    r"|bed ?time|last light)\b"
    r"|\bsun(?:shine|light)? (?:for )?(?:most|the (?:best|better|greater) part|nearly all|almost all"
    r"|more than half) of (?:the |a |each |every )?day\b"
    r"|\bas sunny as (?:possible|you (?:can|have)|it gets)\b"
    r"|\bsun(?:shine|light)? (?:from )?(?:dawn|morning|breakfast|sun-?up) to (?:dusk|evening|supper"
    r"|night|sunset)\b"
    r"|\b(?:the|your) sunniest\b(?! (?:day|month|week|part of the (?:day|year))s?\b)|\bsunnier,? the better\b"
)
"""Most of the day, or more than any other place has, is full sun (common practice, no source)."""
_KEPT_FROM = later(r"\b(?:not?|never|avoid\w*|from|out of|except|but|without|keep off)\b[^.;:\t]{0,20}$")
_SUN_ALL_DAY = later(
    r"(?:^|(?<=[\n\t])|(?<=[.!] ))(?:(?:how much )?sun(?:light|shine)?|light)"
    r"(?:(?:\?|[:\t]| ?[–—-]) ?| (?=all (?:you|it)|as much as))"
    r"(?![^.\n\t]{0,24}\b(?:filtered|indirect|bright|diffuse\w*|shade\w*|but|no|not)\b)(?:all day"
    r"|all (?:you|it) |as much as|the more|bring it|yes|love[sd]? it|lots|plenty|loads|hours of it)"
)
"""The sun is named and wanted, whatever the words: "Sun? Bring it on!", "Sun: all day"."""
_SUN_THEN_FULL = later(
    r"(?:^|(?<=[\n\t]))SUN (?P<how>FULL(?=[\n\t]|$)|full|part|partial)"
    r"(?: ?(?:to|or|and|[/&,–-]) ?(?P<also>full|part|partial))?(?! ?(?:sun|shad|to\b|or\b|[/-]))\b"
)
"""A label in capitals and its value in small letters need no mark between them."""

_COUNT = (
    r"(?P<less>(?<!not )(?<!no )(?:less than |fewer than )|under |up to "
    r"|<\s?)?(?<![\d/-])(?<![^.]\.)(?P<low>\d{1,2}|six|seven|eight)"
    r"(?: ?\+|[ -]?(?:or more|plus))?"
    r"(?: ?(?:to|-|–) ?(?P<high>\d{1,2}|eight|ten))?\+?\s?(?:or more |plus )?(?:hours?|hrs?\b\.?|h\b)['’]?"
)
_HOURS = later(rf"{_COUNT}\s?(?:or more )?(?:a day |per day |daily )?(?:of )?(?:full |direct )*sun")
_SUN_HOURS = later(
    rf"\b(?:direct )?sun(?:light)?(?: exposure| needs)? ?(?:[:,\t–—-][ \t]?| (?=\d))(?:at least |min(?:imum"
    rf"|\.)?(?: of)? )?{_COUNT}"
)


_LIGHT_HOURS = later(
    rf"(?:^|[\n\t])(?:light|exposure)[:\t.]+ ?(?:at least |min(?:imum|\.)? )?{_COUNT}"
    r"(?: ?\+| or more)?(?:,? (?:of )?(?:direct|full))?(?: ?/ ?day| daily| a day)?(?=[.;,\n\t]|$)"
)
_IN_WORDS = {"six": "6", "seven": "7", "eight": "8", "ten": "10"}
_OF_OTHERS = later(
    r"\b(?:soak|stand|chill|steep|leave|within|sprouts?|roots?)\w*\b[^.;\n\t]{0,24}\d ?(?:h|hrs?|hours?)\b"
    r"|\bchill hours?"
    r"|\bopen\b[^.;\n\t]{0,20}\d ?h(?:ou)?rs?\b"
)
"""Hours of something else than light."""


def by_hours(text: str) -> Iterator[Found[Light]]:
    """Six hours and more are full sun, under three full shade; between them hours alone do not tell."""
    folded = fold(text)
    if len(re.findall(r"\bh(?:ou)?rs?\b", _OF_OTHERS.sub("", folded))) > 1:
        return  # a legend gives hours for every class
    for match in (*_HOURS.finditer(folded), *_SUN_HOURS.finditer(folded), *_LIGHT_HOURS.finditer(folded)):
        low = int(_IN_WORDS.get(match["low"], match["low"]))
        high = int(_IN_WORDS.get(match["high"], match["high"]) or low)
        if match["less"] and high <= 3:
            yield Found(("full_shade",), match.span(), 0.7)
        elif not match["less"] and 6 <= low <= high <= 12:
            yield Found(("full_sun",), match.span(), 0.8)


_NOON = r"(?:noon|mid-?day|lunch(?: ?time)?|12|1 ?p\.?m|early afternoon|the afternoon)\b"
TILL_NOON = later(rf"sun (?:only )?(?:(?:un)?till?|['’]til|to|up to|before) (?:about |around )?{_NOON}")
_EARLY_SUN = (
    r"(?:(?:morning|early|am|a\.m\.) sun(?:shine|light)?|sun(?:shine|light)? "
    r"(?:(?:in|of) the morning|(?:in the )?(?:am|a\.m\.))|"
    rf"{TILL_NOON.pattern})"
)
_LATE_SHADE = (
    r"(?:(?:afternoon|pm|p\.m\.) shade|"
    r"(?:some |light )?shade (?:(?:in the )?(?:pm|p\.m\.)|(?:in|for|during|through|from) (?:the )?"
    rf"(?:afternoon|{_NOON})|after(?:wards?)?(?: (?:that|{_NOON}))?|thereafter|later|from then|the rest))"
)
MORNING = later(
    rf"\b(?:{_EARLY_SUN}[\s,;/]{{1,3}}(?:(?:and|with|then|but|plus) |& ?|w/ ?|\+ ?)?(?:then )?"
    rf"(?:{_LATE_SHADE}|(?<=then )shade)(?!\w)"
    rf"|{_LATE_SHADE}[\s,;/]{{1,3}}(?:(?:and|with) |& ?|w/ ?|\+ ?)?{_EARLY_SUN})"
)
"""Sun before and shade behind the heat of the day, in either order."""
_HALF = (
    r"(?:a )?(?:half(?:[ -](?:a|the))?|½|1 ?/ ?2|1½2?)[\s-]day\b(?!\s(?:of|in) (?!sun|it))(?: of (?:sun|it))?"
)
_SUFFICES = (
    r"(?:will (?:do|serve)|does(?: it)?|is (?:fine|enough|ok|okay|plenty|all right)|suffices|works|ok|okay"
    r"|(?:at )?min(?:imum)?|at (?:the very )?least)\b"
)
_STANDS = (
    r"(?:(?:it )?(?:will |can )?(?:takes?|stands?|bears?|tolerates?|(?:manages?|gets? by) (?:on|with))|tol\.)"
)
HALF_DAY = later(rf"{_STANDS}\s{_HALF}|{_HALF}\s{_SUFFICES}")
"""As much of the sun as will do."""


_HEAD = r"(?:head|top|tops) in (?:the )?sun(?:shine)?"
_FEET = r"(?:feet|roots?|base) (?:in (?:the )?shade|shaded|kept cool|cool)"
_WITH = r"[\s,;&]{1,3}(?:and |but |with )?(?:its |the )?"
_COOL_ROOTS = later(rf"\b(?:{_HEAD}{_WITH}{_FEET}|{_FEET}{_WITH}{_HEAD})\b")


def cool_roots(text: str) -> Iterator[Found[Light]]:
    """ "Head in sun, feet in shade": the sun is the climber's light (common practice, no source)."""
    for match in _COOL_ROOTS.finditer(flowing(text)):
        yield Found(("full_sun",), match.span(), 0.75)


def morning_sun(text: str) -> Iterator[Found[Light]]:
    for match in MORNING.finditer(fold(text)):
        yield Found(("part_shade",), match.span(), 0.8)
