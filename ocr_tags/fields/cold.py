"""The lowest temperature a plant bears, as the tag prints it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.zones import TO, ZONE
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Temperature

_MINUS = r"(?:[-−–—‐‑]\s?|[·∙](?=\d)|minus |moins |menos )"
"""The dot is a minus misread; before a list's next item it stands apart from the figure."""
_DEGREES = r"(?:(?: |\n(?=[°º˚]))?(?:[°º*˚]|deg(?:rees?|\.)?|degrés|grados|grad)? ?)"
_TO_OR_ABOUT = (
    r"(?:(?:fully |frost )?hardy )?(?:down |safe )?"
    r"(?:to|tot|bis|till?|ned till?|hasta|jusqu.{0,2}[àa]|about|approx\.?|ca\.?)"
    r"(?: (?:below|about|around))?"
)
_COLDER = r"(?:(?:hardy |well |down )?(?:below|under|(?:colder|lower) than)|min\.?|[<≤])"
"""Before a frost in the row of a rating, which then is the least of it: "H7 (below -20C)"."""
_COLD_GAP = (  # no dash but before a minus: it would be one
    r"(?:\s?/\s?[^\W\d_]{4,}(?: [^\W\d_]{2,12}){0,2}(?= ?[:–—\t\n]))?(?: [–—-](?= [-−–—]\d))?"
    rf"[ ]?[:.=|,]?(?:[ ]?[·•….]){{0,30}}[ ]?[\t\n]?(?!\n)[ ]?"
    rf"(?:H[1-7][abc]?[,/]? ?)?(?:{_TO_OR_ABOUT}(?: (?:about|approx\.?|ca\.?))? )?"
)
_FIGURE = rf"(?:(?:{_MINUS}|\+ ?)?(?:\d{{1,2}}(?:[.,]\d)?|O(?=°))|{_MINUS}[lI|]\d)"


def _temperature(name: str) -> str:
    return (
        rf"(?P<{name}>{_FIGURE})(?:{_DEGREES}[FC]?{TO}(?P<{name}_to>{_FIGURE}))?"
        rf"{_DEGREES}(?P<{name}_unit>[FC]|fahrenheit|celsius)(?:(?![^\W_])|(?=min\b))"
    )


_BEAR = r"(?:stand|take|bear|survive|endure|handle|cope with|go|withstand|tolerate|weather|shrug off|see out)"
_UNHARMED = (
    r"(?:(?:ha(?:s|ve) )?(?:com(?:e|es|ing)|came)[ \n]through|shrug(?:s|ging)?[ \n]off|laugh(?:s|ing)?[ \n]at"
    r"|sail(?:s|ing)?[ \n]through|put(?:s|ting)?[ \n]up[ \n]with|cop(?:e|es|ing)[ \n]with|wintering at"
    r"|(?:sound|alive|reckoned|rated|lives)[ \n](?:(?:down[ \n])?to|at)"
    r"|(?:unharmed|undamaged|unhurt|unfazed|untroubled) (?:at|by|to|down to)|proven to|tested to|weathers"
    r"|sees out"
    r"|recovers from|has (?:survived|taken|stood|seen))"
)
"""What a plant does in frost (common practice, no source)."""
_MOVED_IN = (
    r"(?:(?:bring|move|take|carry|shift|get|lift)"
    r"(?:[ \n](?:it|them|me|us|her|him|(?:(?:the|your|a|some|any)[ \n])?(?:few[ \n])?(?:pots?|plants?|tubs?"
    r"|baskets?|containers?|potfuls|cuttings)))?[ \n]"
    r"(?:back[ \n])?(?:in(?:side|doors|to[ \n]the[ \n]\w+)?|under[ \n](?:glass|cover)|to[ \n]shelter)"
    r"|(?:(?:and|then|back)[ \n]|(?<=, ))(?:in|inside|indoors)"
    r"|overwinter[ \n](?:as[ \n]a[ \n]houseplant|indoors|inside|under[ \n]glass))(?:[ \n](?:again"
    r"|for[ \n](?:the[ \n])?winter))?,?[ \n]"
)
_WHEN_COLD = (
    r"(?:(?:well[ \n])?(?:before|when(?:ever)?|once|if|as soon as)[ \n](?:(?:it|the|night|nights|winter"
    r"|temp\w*|mercury|thermometer|lows)[ \n]){1,3}"
    r"(?:(?:can|will|may)[ \n])?(?:reach|hit|fall|drop|dip|go|touch|get|sink|near|approach|threaten|see|are"
    r"|is)(?:e?s)?(?:[ \n](?:to|below|under|near|down[ \n]to|as[ \n]low[ \n]as))?"
    r"|(?:under|below|at|by|before))"
)
"""When a tender plant is to come in, which is the least it bears."""
_SUFFERS = (
    r"(?:dislikes?|hates?|resents?|sulks?|suffers?|dies|damaged|hurt|harmed|killed|unhappy|not happy|tender"
    r"|rots?|blackens?|collapses?|shivers?|perish(?:es)?|chills?|stalls?|burns?|freezes?|anything"
    r"|(?:turns?|goe?s?)[ \n](?:to[ \n])?(?:black|mush|brown|limp)"
    r"|(?:^|[ \n])black|not[ \n](?:reliably|fully|truly|quite)[ \n]hardy"
    r"|drops[ \n](?:its[ \n])?leaves(?:[ \n]in[ \n]a[ \n]sulk)?)"
    r"(?:[ \n](?:by|at|in|if|when|anything|temp\w*|frosts?|nights?|it|is|drops|falls)){0,4}[ \n]"
    r"(?:below|under|(?:cold|cool)er[ \n]than)|(?:dies|burns|blackens|killed)[ \n]at"
)
_SHIELDED = (
    r"(?:(?:protect|shield|shelter|cover|fleece|guard|wrap)(?:[ \n](?:it|them|me|plants?|crowns?))?[ \n]"
    r"(?:if|when(?:ever)?|once|before)[ \n](?:(?:it|the|nights?|temp\w*|mercury|lows)[ \n]){1,2}"
    r"(?:(?:can|will|may)[ \n])?(?:falls?|drops?|dips?|goe?s?|gets?|is|are)[ \n](?:to|below|under)"
    r"|(?:protect|cover|fleece|bring[ \n]in)[ \n](?:if|when)[ \n](?:below|under)"
    r"|frost[ -]protect(?:ion)?[ \n](?:at|below|under)"
    r"|(?:protect|shield|shelter|cover|fleece|guard|wrap)(?:[ \n](?:it|them|me|plants?|crowns?))?"
    r"(?:[ \n](?:from|against|in))?(?:[ \n](?:(?:hard|heavy|severe|any)[ \n])?(?:frosts?|cold|temperatures?"
    r"|temps|lows|weather))?[ \n](?:below|under|beyond|colder[ \n]than))"
)
_MOVED, _ZONED = later(_MOVED_IN, re.I), later(r"\bz(?:ones?|n)\b", re.I)
"""Beside zones, which tell how hardy it is, when it comes in may be mere advice."""
_COLD_HEAD = (
    r"(?:(?:cold |frost |winter )?hard(?:y|i?ness)(?: rating)?(?: (?:down )?to| at| below)?(?: about)?|"
    rf"(?:withstands?|tolerates?|survives?|takes|bears|endures|handles|stands|soporta|tolera|supporte"
    rf"|(?:will|can) {_BEAR}|{_BEAR}(?=(?:[ \n](?:short|brief))?(?:[ \n](?:cold|frosts?|lows|winters?"
    rf"|temp\w*))?"
    rf"(?:[ \n](?:(?:down[ \n])?to|of))?[ \n]{_MINUS}\d)|{_UNHARMED})"
    r"(?: (?:short|light|mild|hard|heavy|severe|brief|winter))?"
    r"(?: (?:cold|frosts?|freezes?|temperatures?|temps?|temperaturas|winters?|lows))?"
    r"(?: (?:(?:down )?to|hasta|of|as low as|jusqu.{0,2}[àa]))?|"
    r"(?:not|never|avoid|no[ \n](?:low|cold|cool)er|(?:do|should|must)n['’]t)(?:[ \n](?:let|letting"
    r"|allow|allowing))?"
    r"(?:[ \n](?:it|them|me|us|her|him|the|nights?|rooms?|places|things))*"
    r"(?:[ \n]temp\w*)?(?:[ \n](?:to )?(?:go|drop|fall|get|dip|be|sit|stay|stand))?"
    r"[ \n](?:below|under|(?:cold|cool)er[ \n]than|less[ \n]than|than)|"
    r"protect (?:from temp\w* )?(?:below|under)|frost[- ]tender (?:below|under)"
    r"|(?:keep|winter)[ \n](?:(?:it|me|her|him|them|plants?)[ \n])?(?:(?:always|well|at or)[ \n])?"
    r"(?:above|over)|"
    r"(?:do not|don['’]t|never)[ \n]leave[ \n](?:it|me|her|him|them)[ \n](?:[a-z]+[ \n]){0,4}(?:below|under)|"
    rf"(?:below|under)(?=[ \n]{_MINUS}\d{{1,2}} ?[°º˚]? ?[CF][ \n](?:it|they|she|he|the[ \n]plant)[ \n]"
    r"(?:is|are|will|dies?|perish\w*)(?:[ \n](?:be[ \n])?(?:gone|lost|killed|dead|die|perish))?)|"
    r"comfort(?:able)?(?: zone)?:?[ \n](?:at least|above|over)|"
    rf"(?:rhs )?H[1-7][abc]?(?= ?\((?:(?:{_TO_OR_ABOUT}|{_COLDER}) ?)?[^\w(]?\d)|"
    rf"(?:rhs )?H[1-7][abc]?(?:[,:;=]| ?[–—/|·•])?(?=[ \n\t](?:(?:{_TO_OR_ABOUT}|{_COLDER}) ?)?{_MINUS}\d)|"
    rf"{_MOVED_IN}{_WHEN_COLD}|{_SHIELDED}|{_SUFFERS}|"
    rf"(?:(?:outside|outdoors)[ \n])?down[ \n]to(?=[ \n]{_MINUS}\d)|(?:outside|outdoors)[ \n]down[ \n]to|"
    r"nights?(?: temp\w*)?(?: held| kept)? (?:above|over)|"
    r"(?:needs?|requires?|wants?|likes?|keep(?: at)?)[ \n](?:at[ \n]least|no[ \n]less[ \n]than"
    r"|a[ \n]minimum[ \n]of)|"
    rf"(?:frosts?|cold|temperatures?|temps|lows|anything|weather)[ \n](?:[a-z]+[ \n]){{0,5}}(?:below|under"
    rf"|beyond|colder[ \n]than)(?=[ \n]{_MINUS}\d)|"
    r"(?:all year(?: round)?|year[- ]round|ganzjährig|toute l['’]année|always|hele jaar)[ \n](?:above|over"
    r"|über|boven)|"
    r"(?:outside|outdoors|hardy|out|perennial|evergreen|survives|overwinters|mulch)[ \n]"
    r"(?:only[ \n])?(?:where|if)[ \n](?:(?:the|your)[ \n])?(?:nights?|winters?|temp\w*|it"
    r"|lows)[ \n](?:hold|stay|keep|remain|are)s?[ \n]above|"
    r"frost[- ]?\n?(?:free|frei|vrij)(?:,| at| bei| bij)?(?:[ \n](?:above|over|und über))?(?=[ :]{1,3}\d)|"
    r"(?:cold|chill|frost|low(?:er)?|temperature|winter)[ -](?:limit|floor|threshold|minimum|point"
    r"|cut-?off)s?|"
    r"(?:coldest|lowest|winter low)(?: (?:night|winter|it takes|temp(?:erature)?))?(?= ?[:\t\n]"
    r"| ?[.…·]{2}| ?[-−–] ?\d)|"
    r"over-?winter(?:s|ed)? (?:it |them |indoors |inside )?(?:above|at or above)|"
    r"(?:fine|ok(?:ay)?|happy|tough|reliable|good|root[- ]hardy|grand|safe|(?:no|without"
    r"|not a) (?:bother|problem|trouble|worries)"
    r"|un(?:bothered|troubled))(?: (?:all the way|right))?(?: down)? to|"
    rf"(?:bis(?: zu)?|ned til|ne[dr] till|tot|jusqu.{{0,2}}[àa]|fino a"
    rf"|hasta)(?=[ \n]{_MINUS}\d{{1,2}} ?[°º˚]? ?C)|"
    r"(?:later|once established|when established|once mature),?(?= [-−–]\d)|"
    r"frosts?: ?(?:light|mild|moderate|medium|hard|heavy|severe)(?= ?[(,])|"
    r"frosts?(?: (?:is|are))? (?:no problem|no bother|fine|ok)(?= ?\()|"
    r"temp(?:erature|\.)?s?:? ?(?:down to|not below|min(?:imum|\.)?)|"
    r"(?:cold|frost)(?: (?:tolerance|tolerant(?= (?:down )?to [-−–] ?\d)|resistance|resistant|proof|hardy))?"
    r"(?= ?[:\t\n]| ?[-−–] ?\d| to| down)|(?:light |mild |hard )?frosts?(?: only,?(?= ?[-−–]\d| (?:down )?to)"
    r"|(?= (?:down )?to))(?: (?:down )?to)?|safe(?: down)? to"
    r"|(?:min(?:imum|imaal|imal|destens|d\.|\.)?)(?:[ \n]|\t(?=temp))?(?:winter |night )?(?:temp(?:erature|s"
    r"|\.)?)?"
    r"|low(?:est)?(?: (?:night|winter))? temp(?:erature)?|"
    r"rustique(?: (?:jusqu.{0,2})?[àa])?|rusticit[ée]"
    r"|temp(?:[ée]rature|eratura|\.)? m[ií]n(?:imal?e?|ima|\.)?|r[ée]sist(?:e|ente|ant)"
    r"(?: au froid| al fr[íi]o)?(?: (?:hasta|jusqu.{0,2}[àa]|[àa]))?(?: los)?|"
    r"ne pas descendre (?:en dessous de|sous)|nicht unter|niet onder"
    r"|(?:winterhart|frosthart|frostfest)(?: bis)?|winterhard(?: tot)?|mindesttemperatur"
    r"|(?:vinter)?h[äa]rdig(?: (?:ned )?till)?|(?:vinter)?h[åa]rdf[øo]r(?: til)?|(?:rustica"
    r"|resistente)(?: fino a)?"
    r"|mrozoodporno[śs][ćc](?: do)?"
    rf"|(?:(?:winterh[äa]rte)?zone[sn]?|whz|usda|z(?=\d)):?[ .·…]{{0,40}}\n?(?!\n)"
    rf"{ZONE}(?:{TO}{ZONE})?[,;]? ?\(?(?:hardy )?(?:to|or|=)?)"
)
_OTHER_SCALE = rf"(?: ?[/,=|–-] ?|[ \n]?[(\[] ?){_temperature('u')}"
_IN_TEXT = rf"{_temperature('t')}(?:{_OTHER_SCALE})?"
_IN_CELL = rf"{_temperature('t')}(?:{_OTHER_SCALE}[)\]]?)?"
"""A temperature and perhaps the same in the other scale; in a cell of its own a bracket may close it."""
_COLD = later(
    rf"(?<![^\W\d_])(?P<head>{_COLD_HEAD}){_COLD_GAP}"
    rf"(?:\((?:{_TO_OR_ABOUT} )?)?(?:(?<=[(\s]){_COLDER} ?)?{_IN_TEXT}",
    re.I,
)
_COLD_MARK = later(rf"(?P<head>[❄🌡]) ?{_IN_TEXT}", re.I)
"""A snowflake or thermometer drawn before a frost (common practice, no source)."""
_COLD_ABOVE = later(
    rf"(?:^|(?<=\n)){_IN_CELL}\n"
    rf"(?P<head>(?:min(?:imum|\.)?|low(?:est)?|coldest) ?(?:(?:winter|night|room) )?(?:temp(?:erature"
    rf"|\.)?s?|nights?)"
    rf"|(?:night|winter) low|hardy to|lowest it takes)(?=\s*(?:$|\n(?!{_MINUS}?\d)))",
    re.I,
)
"""A temperature over its label, where no other follows the label."""
_COLD_BEFORE = later(
    rf"(?:^|(?<=\n)|(?<=[.,;·•|] )){_IN_CELL} ?(?P<head>min(?:imum|\.)?(?: temp(?:erature|\.)?)?)"
    r"(?=[.,;]?(?:\n|$)|[.;] [A-Z])",
    re.I,
)
"""A temperature and behind it what it is, alone in its clause."""
_OF_ROOMS = later(r"\b(?:house ?plants?|indoors?|orchids?|living room|conservatory)\b", re.I)
_COLD_ALONE = later(
    rf"(?:(?:^|(?<=[\n\t])|(?<=[/|•·+*] )|(?<= \. ))(?P<to>(?<![/|•·] )to )?(?:(?<=[/|•·] )to )?"
    rf"|(?:^|(?<=[\n\t]))[&*§$#@%] ?|(?<=[^\W\d_]\t)to (?=[^\n\t]*\t[^\W\d_])|(?<=[IVX] )(?={_MINUS}\d)"
    rf"|(?:^|(?<=\n))(?P<least>(?:[>≥]|above|over|keep above|at least) ?))"
    rf"{_IN_CELL}"
    r"(?(to)(?=\. [A-Z]|, ?(?:then|after that|below that)\b)"
    r"|(?=(?: (?:if|when|with)(?: kept)? (?:dry|cover|protection|shelter|sheltered"
    r"|established|mulched|well[- ]drained))?\s*(?:$|[\n\t])| [/|•·+]| \. ))",
    re.I,
)
"""A frost alone in its cell or between the strokes of a list, its label a picture or none; behind
"to" only as a sentence, for else the near end of a range is lost."""
_FROST_BARE = later(
    r"(?:\b(?:(?:frosts?|hardy|bother|problem|trouble|fine|good|safe|grand) (?:hardy )?(?:down )?to|takes"
    r"|survives|stands|bears)|(?:^|(?<=[\n\t])|(?<=[.;·|] ))frost)"
    rf" (?:(?:about|around) )?(?P<t>{_MINUS}\d{{1,2}})(?: ?(?:degrees?|deg\.?|[°º˚]))?"
    rf"(?![\d°º˚*%]| ?[FC]\b| ?(?:to|deg\w*) ?\b|[.,]\d)"
    rf"|(?:^|(?<=[\n\t]))(?P<cell>minus \d{{1,2}}|{_MINUS}\d{{1,2}} ?[°º˚])(?=\s*(?:$|[\n\t]))",
    re.I,
)
"""A frost without its scale: in °C on a tag that measures in metres."""
_OF_SOWING = later(r"\b(?:soil|sow\w*|seed\w*|germinat\w*|transplant\w*|harvest\w*)\b", re.I)
_OF_PART = later(
    r"\b(?:flowers?|blooms?|blossoms?|buds?|fruit(?:s|lets)?|berries|seedlings?|new growth|shoots|leaf tips)"
    r"(?:[ \n](?:will|can|may|only|often|even|still))?[ \n]$",
    re.I,
)
"""What bears less than the plant itself."""
_METRIC = later(r"\d ?(?:mm|cm|m)\b")
_IMPERIAL = later(r"\d ?(?:[\"”″'′’]|in\b|inch|ft\b|feet)", re.I)
_NOT_COLD = later(
    r"\b(?:soil|germinat\w*|sow\w*|seeds?|water|growing|ideal|indoor|storage|store[ds]?|lager\w*|ship\w*|"
    r"transplant\w*|heat)\b[^.;·•|\n\t]{0,25}\Z"
    r"|\b(?:nights?(?!\s\Z)|when|until|once|after|day)\b[^.,;·•|\n\t]{0,25}\Z",
    re.I,
)
"""A condition ends with its comma: "Once established, hardy to -15 °C"."""
_NOT_BELOW = later(
    r"frost[- ]?\n?(?:free|frei|vrij)|limit|floor|threshold|all year|(?:hate|resent|sulk|suffer|damaged|hurt"
    r"|harm|unhappy|happy|dislike)\w* .*(?:below|under)|\b(?:in|inside|indoors|cover|glass)\b|"
    r"(?:not|never|avoid|n['’]t)\b.*\b(?:below|under|than)|(?:keep|winter).* (?:above|over)|comfort|protect"
    r"|black|collapse|mush|perish|shiver|sees|above|lower|cooler|colder|anything|chill|stall|burns|dies",
    re.I | re.S,
)
_HARDY = later(
    r"(?<!half[- ])(?<!not )\bhardy (?:perennial|shrub|tree|fern|grass|vine|climber|bulb|geranium)", re.I
)
"""No plant that is called so is kept from a cool room (common practice, no source)."""
_COLDEST, _WARMEST = -55.0, 25.0
_COOL = 12.0
"""In °C; a warmer least is mostly that of the ground at sowing (common practice, no source)."""


def read_min_temperature(tag: TagText) -> Iterator[Found[Temperature]]:
    """The lowest temperature the plant bears, in degrees Celsius; of two scales the first printed.

    >>> [found.value for found in read_min_temperature(TagText("Hardy to -20°F (-29°C)"))]
    [Temperature(celsius=-28.88888888888889)]
    """
    for match in _COLD.finditer(tag.string):
        celsius = _celsius(match, "t")
        if _NOT_COLD.search(tag.string[max(0, match.start() - 40) : match.start()]) or celsius is None:
            continue
        zoned = _MOVED.match(match["head"]) and _ZONED.search(tag.string)
        lost = celsius > 0 and _HARDY.search(tag.string)  # its minus, as likely as not
        part = _OF_PART.search(tag.string[max(0, match.start() - 40) : match.start()])
        doubt = 0.4 if part else 0.5 if zoned or lost else 1
        yield Found(Temperature(celsius), match.span(), doubt * _cold_certainty(match, celsius))
    for match in _COLD_ABOVE.finditer(tag.string):
        if (celsius := _celsius(match, "t")) is not None:
            yield Found(Temperature(celsius), match.span(), 0.65 * _cold_certainty(match, celsius))
    for match in _COLD_BEFORE.finditer(tag.string):
        celsius = _celsius(match, "t")
        if celsius is not None and (celsius <= _COOL or _OF_ROOMS.search(tag.string)):
            yield Found(Temperature(celsius), match.span(), 0.9 * _cold_certainty(match, celsius))
    alone = list(_COLD_ALONE.finditer(tag.string))
    for match in alone if len(alone) == 1 else ():
        celsius = _celsius(match, "t")
        least = match["least"] and not _OF_SOWING.search(tag.string)
        if celsius is not None and (re.match(_MINUS, match["t"], re.I) or _frost(match, celsius) or least):
            yield Found(Temperature(celsius), match.span(), 0.8)
    if _METRIC.search(tag.string) and not _IMPERIAL.search(tag.string):
        for match in _FROST_BARE.finditer(tag.string):
            yield Found(Temperature(_degrees(match["t"] or match["cell"])), match.span(), 0.75)
    for match in _COLD_MARK.finditer(tag.string):
        celsius = _celsius(match, "t")
        if celsius is not None and celsius < 0:
            drawn = 0.9 if match["u"] else 0.55  # in both scales a frost is nothing else
            yield Found(Temperature(celsius), match.span(), min(drawn, _cold_certainty(match, celsius)))


def _frost(match: re.Match[str], celsius: float) -> bool:
    """Whether degrees Fahrenheit alone can be nothing but a frost: no room and no soil is so cold."""
    return match["t_unit"] in "Ff" and celsius < -1 and bool(re.search("[°º˚]", match[0]))


def _celsius(match: re.Match[str], which: str) -> float | None:
    """The colder end, in °C; None when it is no winter low, or when a range is not one."""
    if match[which] is None:
        return None
    ends = [_degrees(match[which])] + ([_degrees(match[f"{which}_to"])] if match[f"{which}_to"] else [])
    celsius = min(ends) if match[f"{which}_unit"][0] in "Cc" else (min(ends) - 32) * 5 / 9
    return celsius if _COLDEST <= celsius <= _WARMEST else None


def _degrees(printed: str) -> float:
    figure = re.sub(r"[^\d.,]", "", re.sub(r"[lI|](?=\d)", "1", printed)).replace(",", ".")
    return (-1 if re.match(_MINUS, printed, re.I) else 1) * float(figure or 0)


def _cold_certainty(match: re.Match[str], celsius: float) -> float:
    other = _celsius(match, "u")
    if other is not None:
        return 0.97 if abs(other - celsius) <= 1.2 else 0.35
    if match["t_to"] or re.search("[OlI|·∙]", match["t"]):
        return 0.7
    # A lost minus turns a winter low into a mild one; only a named minimum may well be mild.
    mild = not re.match(_MINUS, match["t"], re.I) and _degrees(match["t"]) != 0
    if not mild or re.search("min|lowest|coldest|night low", match["head"], re.I):
        return 0.93
    if match["t_unit"] in "Ff" and celsius < 0 and not _ZONED.match(match["head"]):
        # Where the sign of the degrees is lost, so may be the minus.
        return 0.85 if re.search("[°º˚]", match[0]) else 0.6
    return 0.85 if _NOT_BELOW.search(match["head"]) else 0.6
