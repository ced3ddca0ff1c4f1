"""How far a demand on the soil goes, and sentences of nothing but ground (common practice, no source)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.phrases import clean, flowing, fold
from ocr_tags.fields.soil.words import ADJECTIVE, MATTER, MOISTURE_FIRST
from ocr_tags.fields.values import is_torn, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found

_OTHER_NEED = later(
    r"\b(?:sun\w*|shad(?:e|ed|y)|semi-shade|(?:full|bright|good|direct|indirect|filtered) light"
    r"|dapple\w*|aspect"
    r"|water(?:s|ed|ing)?(?! ?(?:logg|gets|table|drains|runs|stands))(?<!standing water)|irrigat\w+"
    r"|drinks?|feed\w*"
    r"|fertili[sz]\w+|food|mulch\w*|prun\w+|cut|trim|spac\w+|apart|zones?|hard(?:y|iness)|frosts?|flower\w*"
    r"|bloom\w*|height|tall|high by|wide|weekly|monthly|daily|spring|summer"
    r"|(?<!previous )autumn(?! before)|fall|winter|years? old|until|while"
    r"|when|after|(?<!year )(?<!autumn )(?<!season )before|once|let|keep|kept|allow|dr(?:y|ies|ying) out"
    r"|divide|stake|protect|shelter\w*|cold|heat"
    r"|wind\w*|drought\w*|(?<!each )(?<!per )plant(?:s|ed|ing)?|sow\w*|harvest\w*|grown?|grows"
    r"|germinat\w+|patios?|(?<!clay )(?<!loam )borders?|deer"
    r"|rabbits?|bees|butterfl\w+|birds|native|evergreen|deciduous|perennial|annual|shrub|climber|space"
    r"|crown"
    r"|hole|depth|rots?|kills?|deep(?= hole)|seeds?|bulbs?|roots?(?! run)|jan|feb|mar|apr|may(?! be)"
    r"|june?|july?|aug|sept?|oct"
    r"|nov|dec|january|february|march|april|august|september|october|november|december)\b"
    r"|\d ?(?:cm|m|in|ft|inch\w*|feet|litres?|gal\w*)\b|\d ?[\"”″'’]|[°£$€]"
)
"""What another field says: no part of the soil."""
_BREAK = later(
    r"\s?[,;:(]\s?|\s[-–—]\s|\s(?:and|&|but|(?<!low )(?<!high )(?<!rich )in|under|for|with|at"
    r"|near|plus|as|so|where|on|makes|gives|keeps)\s|\s?[•·|/➜→►▸]\s?"
)
_GOES_ON = later(
    r" (?:with|that|which|enriched|improved|limed|laced|sweetened|lightened|fattened|worked|raked"
    r"|stuffed|amended"
    r"|topped|capped|dug|trenched|manured|mucked|opened|mixed|beefed|full of|rich in|high in|low in|to"
    r"|or|and|even"
    r"|incl(?:\.|uding)?|included|but|except\w*|excluding|save|apart from|if(?! you)|provided|providing"
    r"|as long as|so long as"
    r"|suits?|matters|will do|will (?:suit|serve)|(?:is|are) (?:\w+ )?(?:fine|ok|okay|welcome|enough|plenty"
    r"|ideal|best|good|plus|better|heaven|bliss|no (?:obstacle|trouble|problem|bother)|non-negotiable"
    r"|perfect|right|preferred|essential|needed|all|what)\b|does (?:it )?(?:fine|well|nicely)|preferred"
    r"|please|only|not"
    r"|never|short of|at ph|below|above|around|on (?:a|the) (?:\w+ )?(?:side|slope|bank|ridge|mound|berm"
    r"|hump)"
    r"|welcome|from (?!\w+ to \w+$)\w+ to|on the|in the mix|(?:for )?(?:the|a|last) (?:year|autumn|season"
    r"|previous|crop)|(?:tucked|forked"
    r"|dug|worked|turned|mixed) (?:in|through|over)|added|you (?:have|.ve)|in between|of (?:some|good|a"
    r"|any))\b"
)
"""How the clause of a ground goes on behind its noun."""
_OR_ELSE = later(
    r",? or (?:else\b|(?:the |its )?(?:leaves|foliage|buds|roots|flowers|leaf|plant|tips) [a-z]+)"
)
"""What comes of another soil: "Acid, peaty soil or the leaves go yellow"."""
_COUPLED = later(r"\s(?:with|in|on|and|&|but|under)\s")
_SAID = later(
    r"(?:please|because|even|all (?:are|is|suit)|improved|enriched|amended|sweetened|lightened|raised"
    r"|hates?|resents?|never|not\b|the \w+er the \w+er|preferably|provided(?! you)|providing|if(?! you)"
    r"|(?:as"
    r"|so) long as(?! you)|tolerates|takes|\d+ ?[-–] ?\d+ ?mm|\d:\d|too (?:rich|wet|heavy|fat|much|dry)"
    r"|ideally|if possible|(?:is|are) (?:all|what|plenty|fine|enough|welcome|ideal|best|right)"
    r"|will (?:do|suit)|suits? (?:it|them|me)|(?:never|not|no) (?:too |very |over-?)?(?:wet|soggy|sodden"
    r"|waterlogged"
    r"|boggy|dry|rich|fed|manured|dusty|swampy|sticky|heavy|compacted|limed)|yes\b|(?:thin "
    r"|shallow )?\w+ excepted"
    r"|fast|drains|(?:on )?(?:a|the) (?:\w+ )?(?:side|slope|bank|ridge|mound|berm|hump))\b"
)
_KINDS = later(
    rf"\b(?:{MATTER}|gritty|sandy|loamy|acid\w*|alkaline|neutral|limy|limey|chalky|peaty|leafy|humusy"
    rf"|stony|rocky"
    r"|gravelly|heavy|fertile|lean|sour|well-(?:drained|aerated)|free-draining|too rich|limed|soggy"
    r"|waterlogged"
    r"|manured|composted|body|lime|nitrogen|humus|organic|charcoal|wet feet|standing water)\b"
)


def soil_end(text: str, start: int, end: int) -> int:
    """Where the clause ends of which the soil named from `start` to `end` is part.

    >>> tag = "Sandy loam with a bucket of compost to each hill, full sun"
    >>> tag[: soil_end(tag, 0, 10)]
    'Sandy loam with a bucket of compost to each hill'
    """
    folded, limit = flowing(text), value_end(text, start, end)
    told = later(r"[ ,]*[\w-]+ ?:").match(text, limit)
    if told and _KINDS.search(folded, limit, told.end()):  # "well-drained: sulks in clay" is no label
        limit = value_end(text, start, told.end())
    if ruin := _OR_ELSE.search(folded, end, limit):
        limit = ruin.start()
    breaks = [*_BREAK.finditer(folded, end, limit)]
    first = breaks[0].start() if breaks else limit
    if (end < first and not _GOES_ON.match(folded, end, limit)) or _OTHER_NEED.search(folded, end, first):
        return end
    best, held = first, False
    ends = [*(gap.start() for gap in breaks[1:]), limit]
    for at, (gap, following) in enumerate(zip(breaks, ends, strict=False)):
        joined = gap[0].strip()
        held = joined == "with" or (held and joined not in _PARTING)
        parted = (
            end
            for further, end in zip(breaks[at + 1 :], ends[at:], strict=False)
            if further[0].strip() in _PARTING
        )
        clause = next(parted, limit) if joined in _PARTING else following
        told = _KINDS.search(folded, gap.end(), clause) or _SAID.match(folded, gap.end(), following)
        if _OTHER_NEED.search(folded, gap.end(), following) or not (
            told or (held and _COUPLED.match(gap[0]))
        ):
            break
        if following < limit and is_torn(text[start:following]):
            break
        best = following + (folded[following : following + 1] == ")")
    return best


_PARTING = (",", ";", ":", "(")
START = (
    r"(?:^|(?<=[\n\t])|(?<=[★•·*|] )|(?<=[\n\t]- )|(?<=^- )|(?<=[.;!?] )|(?<=\bmedium: )"
    r"|(?<=\bcompost: )|(?<=\bmix: )"
    r"|(?<=\broots: ))"
)
_ANY = (
    rf"(?:{ADJECTIVE}|coarse|fine|sharp|dry|black|dark|chunky|raw|pure|solid|winter-wet|decomposed"
    rf"|crushed|chopped"
    r"|washed|horticultural|river|desert|moss|leaf|pine|fir|orchid|half|even|or|and|to|granite|basalt"
    r"|raised bed"
    r"|garden|lime-free|stiff|thin|long-fib(?:re|er)|\d/\d|pond)"
)
_BED = (
    r"(?:soils?|loam|clay|sand|grit|chalk|earth|dirt|peat|gravel|shingle|scree|stones|silt|muck|mud|duff"
    r"|limestone"
    r"|leaf[ -]?mou?ld|perlite|pumice|sphagnum|bark|granite|(?:raised bed|potting) mix|humus|rubble|marl"
    r"|ground|substrate|pea gravel|coir)\b"
)
_THING = rf"(?:{_ANY}(?:,? ?| ?/ ?))*{_BED}"
_GROUNDS = later(
    rf"{START}(?:in )?(?P<soil>{_THING}(?:(?:,? (?:and|or|to|but|even|with|plus|&) |, ?| ?/ ?){_THING})*"
    rf"(?:(?:,? (?:and|or|but) |, ?){ADJECTIVE}(?: also| too| even)?(?= ?(?:[.;\n\t•·|]|$)))*)"
)
ENDED = later(r" ?(?:[.,;:!\n\t•·|/(]|$)")
_SURFACE = later(r"\b(?:mulch\w*|chips|pots?|top-?dress\w*|collar)\b")
_REFUSED = later(
    r"\b(?:(?:is|are|does|do) not|isn.t|aren.t|doesn.t|avoided|unsuitable|resented|hates?|refuses?|avoid)\b"
)
MOISTURE = later(rf"{MOISTURE_FIRST}[;,] ")
_PLAIN = later(
    r"(?:(?:fine|coarse|rough|good|pea) )?(?:bark|gravel|stones|granite|pea gravel|earth|ground|humus)"
    r"|(?:good |fine )?(?:garden|potting|cactus)? ?soil|(?:raised bed|potting) mix(?: included)?"
)


def grounds(text: str) -> Iterator[Found[str]]:
    """Sentences that begin with nothing but ground: "Sand, shingle or heavy clay", "Dry sand or gravel".

    >>> [found.value for found in grounds("Sun. Leaf mould and loam. Zone 4. Sand.")]
    ['Leaf mould and loam']
    """
    folded, plain = flowing(text), fold(text)
    spans = dict.fromkeys(m.span("soil") for words in (plain, folded) for m in _GROUNDS.finditer(words))
    for start, known in spans:
        moisture = MOISTURE.match(folded, start, known)
        start = moisture.end() if moisture else start
        end = soil_end(text, start, known)
        words = re.findall(r"[^\W_]+", folded[start:end])
        if len(words) < 2 or _PLAIN.fullmatch(folded, start, end) or not ENDED.match(plain, end):
            continue
        clause = re.split(r"[,;]", folded[start:end], maxsplit=1)[0]
        if goes_before(text, start, end) or _SURFACE.search(folded, start, end) or _REFUSED.search(clause):
            continue
        sure = 0.88 if ENDED.match(folded, end) else 0.45  # what runs on in the next line is a part
        yield Found(clean(text[start:end]), (start, end), sure)


def goes_before(text: str, start: int, end: int) -> bool:
    """Whether the line above runs into what begins a line in small letters."""
    above = re.sub(r"\n[-–*] $", "\n", text[:start])
    if above.rstrip().endswith(":"):
        return True  # the value of another label
    if not above.endswith("\n") or not text[start].islower():
        return is_torn(above.rstrip()) and above.endswith("\n")
    return is_torn(above.rstrip()) or not later(r" ?(?:[\n•·|]|$)").match(text, end)
