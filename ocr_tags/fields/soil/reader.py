"""Soil: the kind a tag asks for, in its own words."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain

from ocr_tags.fields.care import DOUBTFUL, after_labels, listed_from, opens_sentence, or_spoken, sentences
from ocr_tags.fields.parts import onward, told
from ocr_tags.fields.phrases import clean, flowing, fold, label_phrases
from ocr_tags.fields.soil.alone import named_alone
from ocr_tags.fields.soil.ends import grounds, soil_end
from ocr_tags.fields.soil.mixes import BORNE, RECIPE
from ocr_tags.fields.soil.talk import FIRM, TALK
from ocr_tags.fields.soil.tongues import ELSEWHERE, GERMAN
from ocr_tags.fields.soil.words import ADJECTIVE, JOINED
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_LABELS = label_phrases("soil")
_OWN = later(
    r"drain|moist|\bdry|\bwet|damp|average|ordinar|normal|rich|fertile|poor|lean|light|heav|loose|loam|sand"
    r"|clay|rock"
    r"|gravel|grit|acid|alkali|neutral|chalk|lime|humus|organic|\bany|most|\ball|well|adapt|compost|mix"
    r"|potting|peat"
    r"|\bph\b|tolera|bog|medium|cool|deep|soil|ericac|ston[ey]|leaf|woodland|silt|friable|bark|crumbl"
    r"|sabl|argil|frais|humid|\bsec|leger|calcaire|terreau|tout"
    r"|neutr|fertil|rico|suelto|manur|muck|\bdug|\blimed|retent|permeab|calcar|dren|aren|arcill|humed"
    r"|durchlass|humos|nahrstoff|sauer|kalk|lehm|feucht"
    r"|trocken"
    r"|frisch|jede|alle|doorla|zuur|zand|klei|vocht|droog|voedz|goed|mull|naring|\bsur|torr|fukt|lucker"
    r"|ricc"
)
_WORKED = (
    r"(?:trenched|enriched|improved|dug(?: over)?|manured|amended|limed|laced|lightened|opened(?: up)?"
    r"|fed|stuffed"
    r"|sweetened|fattened(?: up)?|packed|mixed|loosened)"
    r" (?:with|by)\b"
)
_SOILS = (
    rf"(?:{ADJECTIVE}(?:{JOINED}{ADJECTIVE})*[ -](?:(?:garden )?soils?(?: types?)?|ground(?! ?cover)|loam"
    rf"|earth|dirt)\b"
    r"|(?:whatever|any|what) (?:soil|ground|dirt|earth) (?:that )?you(?: have|.ve)(?: got)?\b"
    r"|(?:soil|ground|loam|earth|dirt)\b(?= (?:with (?:plenty|lots|some|added|extra|a) |full of "
    r"|you have \w+(?: up)? with )| (?:that|which) (?:is|drains|holds|stays|keeps|never|doesn.t|isn.t"
    r"|won.t"
    rf"|warms|has|retains)\b| {_WORKED}))"
)
# A compost or mix is named by what it is for: bare "compost" is a feed or what the plant was raised in.
_MIX = (
    rf"(?:(?:(?:light|open|airy|chunky|gritty|peaty|sandy|barky|loose|fluffy|mossy|leafy|coarse|acid|rich"
    rf"|spongy|premium|slightly acid|fast-draining|quick-draining|free-draining|well-drained|loamy"
    rf"|bagged|any|houseplant"
    r"|container|quality),? (?:and )?){1,4}(?:(?:potting|container|african violet) )?(?:mix(?:ture)?"
    r"|blend|medium|compost|substrate)\b"
    rf"|(?:(?:{ADJECTIVE}|chunky|airy|coarse|barky|fluffy)(?:, ?| ))*"
    rf"(?:(?:ericaceous|aquatic|john innes(?: no\.? ?\d)?|bark|(?:loam|soil"
    r"|peat|bark"
    rf"|coir)-based"
    r"|peat- ?free|multi-? ?purpose|cactus|succulent|orchid|citrus|bulb|potting|houseplant|lime-free|gritty"
    r"|soilless"
    r"|well[- ]drain(?:ed|ing)|free[- ]draining)(?:, ?| )){1,3}(?:compost|mix(?:ture)?|medium"
    r"|bark)\b)(?: topped with (?:\w+ )?(?:grit|gravel|sand))?"
)
_LAST = (
    r"(?: (?:only|preferred|essential|(?:is |are )?(?:fine|ok|okay|ideal|acceptable|preferred)|will do"
    r"|(?:is )?best|a must)\b"
    r"|,? (?:if|provided|providing|as long as|so long as) (?:it is |they are |it.s |it |they |kept "
    r"|not too |reasonably )*"
    r"(?:well |freely |free |sharply |good )?(?:drain|wet|dry|moist|waterlogged|not waterlogged|never"
    r"|cold)[\w-]*"
    r"(?: (?:well|freely|quickly|sharply))?"
    rf"| {_WORKED}[^.;,\t•|·\n]{{3,50}}"
    r"|,? ph\b ?(?:of )?\d(?:\.\d+)?(?: ?(?:-|–|to) ?\d(?:\.\d+)?)?"
    r"| but (?:soggy|boggy|wet|waterlogged|dry|chalk)\b"
    r"|(?:, (?:wet|dry|heavy|light|clay|sandy?|acid|alkaline|limy|poor|rich|chalky?|good|bad|moist|stony"
    r"|loam)"
    r" or (?:wet|dry|heavy|light|clay|sandy?|acid|alkaline|limy|poor|rich|chalky?|good|bad|moist|stony"
    r"|loam)\b)+"
    r"|,? (?:even|incl\.?|including|also|heavy) (?:(?:heavy|poor|wet|dry|light|solid) )?(?:clay|chalky?"
    r"|sand"
    r"|sandy|gravel|lime(?:stone)?|limy|stony|peat|wet|dry|poor|rocky)\b"
    r"|,? (?:add )?lime if (?:sour|acid|acidic|needed)\b|[;,] no (?:chalk|lime|peat|clay)\b"
    r"| topped with (?:\w+ )?(?:grit|gravel|sand|shingle|stones)\b"
    r"|,? or (?:(?:very |shallow|still|moving|up to|\d+ ?(?:cm|in(?:ches)?)\b\.?|of|in"
    r"|standing) ){1,4}water\b"
    r"(?: (?:up )?to \d+ ?(?:cm|in(?:ches)?)\b)?"
    r"| suits (?:it|me|them) (?:better|best)(?: than [^.;,\t•|·\n]{3,25})?|,? not (?:fed|enriched|manured"
    r"|over-?rich|amended)\b"
    r"|,? (?:except|but not|excluding|other than|not) (?:\w+ ){0,2}(?:wet|waterlogged|soggy|boggy|sodden"
    r"|chalk\w*|lim\w+|dry"
    r"|alkaline|clay|acid\w*|shallow|heavy)\b"
    r"|,? (?:but )?never (?:too |very |overly )?(?:wet|waterlogged|soggy"
    r"|boggy|sodden|dry|chalky|limy|heavy)\b(?! out)"
    r"|,? (?:that|which) (?:is|are|drains?|stays?|holds?|does|do|isn.t|aren.t|doesn.t|don.t|never"
    r"|won.t|keeps?|retains?|warms?|has|have|can)\b[^.;,\t•|·\n]{0,40}"
    r"|,? (?:with|and) (?:its )?(?:roots|feet|toes|base) (?:in|kept|well) (?:the )?(?:shade|shaded|cool"
    r"|moist|damp"
    r"|wet)\b"
    r"|,? (?:(?:w/ ?(?:added |some |extra )?"
    r"|with (?:good|excellent|sharp|free|plenty of|lots of|added|some|extra"
    r"|high|a little|a (?:bit|touch|lot) of) )|rich in |high in )(?:body|lime|moisture|leaf litter|gravel"
    r"|organic matter|drainage|humus|compost|grit|leaf ?mould|leaf ?mold|peat|sand|organic content"
    r"|nutrients|perlite|bark|pumice|manure|muck|chippings|stones?)\b"
    r"|; (?:sand|sandy|clay|loam|gravel|chalk|stones?)(?:(?:,| or| and)\s(?:sand|clay|loam|gravel|chalk"
    r"|stones?))*"
    r"|[;,] (?:tolerates?|takes|withstands|will (?:take|tolerate)|copes with|stands)"
    r" (?:some )?(?:wet feet|wet|clay|poor soil|salt|drought|dry soil|occasional flooding)\b"
    r")?"
)
_SPOKEN = later(
    r"(?:\b(?P<verb>prefers?|requires?|needs?|likes?|loves?|wants?|enjoys?|tolerates?|takes|accepts|handles"
    r"|thrives? (?:in|on)"
    r"|adaptable to"
    r"|adapts to|tolerant of|copes with|suits|withstands|(?:happy|best|good|well) in) (?:an? )?)?"
    rf"\b(?P<soil>{_SOILS}{_LAST})"
)
_WHOLE = later(r"adapt|prefer|require|need|like|love|want|enjoy|tolerates?$|takes|accepts|handles|thrive")
"""Verbs that are kept when they open the sentence."""
_MIXED = later(
    r"(?:\b(?P<verb>use|needs?|requires?|prefers?|likes?|loves?|wants?|enjoys?|aim for|choose|asks? for"
    r"|calls? for"
    r"|(?:happy|happiest|best|thrives?|does well) in|(?:re)?pot(?: \w+){0,3} in(?:to)?|(?:plant|grow"
    r"|set|put|out)(?: it| them)?(?: out| up| on)?(?: (?:after|from|once|when|in) [^.,;\t]{3,24},?)?"
    r" in(?:to)?)"
    rf" (?:an? |only |some )?)?\b(?P<soil>{_MIX}(?: ?/ ?{_SOILS})?{_LAST})"
)
_MIX_END = later(r"(?:compost|mix(?:ture)?|medium|bark)$")
"""A mix that is all a line says may be another product, or what the plant was raised in."""
_TEXTURE = later(
    r".*\bph\b|.*topped with"
    r"|(?:very )?(?:acid(?:ic)? |gritty|sandy|loose|open|chunky|airy|coarse|barky|rich"
    r"|any|slightly|quick|fast|sharp|moist|light|peaty|leafy|mossy|premium|quality|(?:well|free)[- ]drain)"
)
_MUST = later(
    r"\b(?:(?:not|never|isn.t|un) ?(?:at all |too )?(?:fussy|particular|choosy|picky|fussed|demanding)"
    r"(?: (?:about|as to|over) (?:its |the )?(?:soils?|ground)\b|(?=[:;,] (?:[\w-]+ ){0,4}(?:soil|ground"
    r"|clay|loam)))"
    r"|(?:the )?(?:soil|ground|mix|compost|bed|drainage) (?:must|should|has to|needs to|will) (?:drain\b"
    r"|(?:not|never) "
    r"(?:be |get |lie |stay |become )?(?:water|wet|sogg|sodden|boggy|too)|be (?:(?:very|slightly|fairly"
    r"|kept) )?"
    r"(?:well|free|sharp|fast|rich|acid|light|loose|fertile|deep|humus|neutral|alkaline|sandy|gritty"
    r"|perfect|good))"
    r"|must (?:be|have) (?:(?:very|a) )?(?:well|free|sharp|fast|good|perfect)[ly]*[- ]drain"
    r"|(?:does|grows|is) (?:best|well|happiest) where (?:the )?(?:drainage|soil|ground)\b"
    r")"
)
_ARTICLE = later(
    r"(?<!grown in )(?<!raised in )(?<!rooted in )(?<!potted in )(?<!sold in )(?<!supplied in )"
    r"(?<!with )(?<!under )(?<!mulch of )(?<!layer of )\b(?:an?|some) \Z"
)
_THE_POORER = later(
    r"\bthe (?:poorer|leaner|worse|sandier|stonier|grittier|richer|sharper)(?: and \w+)? (?:the|your)"
    r" (?:soil|ground|dirt|earth|drainage),? the (?:better|happier|more|sweeter|finer)[^.,;:\n\t]{0,30}"
)
_PIECE_END = later(r" ?(?:[.;,/|\t\n]|$)")
_DRAINAGE = later(
    r"(?:\b(?P<verb>needs?|requires?|demands?|wants?|likes?|prefers?|must have) )?"
    rf"\b(?P<soil>(?:{ADJECTIVE},? (?:and |with )?)*(?:sharp|good|excellent|perfect|free|fast"
    rf"|quick) drainage(?: (?:is )?(?:essential|a must|important|vital|needed|required))?)\b"
)
_PRESSED = later(r"(?:essential|a must|important|vital|needed|required)$")
_NOT_OF_PLANT = later(
    r"\b(?:(?<!of )water(?!,)|keep|when|until|if|allow|let|backfill|fill|cover|with(?! its| their)|firm"
    r"|press"
    r"|potting|moisten|remove"
    r"|in poor|improves|enriches|breaks up|binds|mix(?:ed)?|new|native|bag of|use)\b[^.;\n\t•·|]{0,20}\Z"
)
_SUFFERED = later(
    r" (?:makes(?! (?:all the|the) difference)|rots|kills|spoils|causes|means|turns|leads|stunts|breeds"
    r"|encourages)\b"
    r"| (?:is|are) (?:\w+ )?(?:avoided|unsuitable|fatal|death|no good|wrong|resented|hated|the enemy)\b"
    r"| avoided\b"
    r"| (?:does not|doesn.t|will not|won.t)\b(?! (?:matter|need))"
    r"|,? (?:(?:the |its )?(?:flowers|blooms|heads|they|it) )?(?:are|is|turns?|goes|go|becomes?|comes?)"
    r" (?:a |more |much |deep |pale )*(?:blue|pink|purple|mauve|lilac|violet|red)(?:r|der|er)?\b"
    r"| to (?:about )?\d[^.;\n]{0,8} (?:depth|deep)\b"
    r"| (?:bluer?|pink(?:er)?|mauve|purple)(?= ?[.,;\n])"
)
"""Behind a soil that does something to the plant."""
_WORD_CUT = later(r"\w- ?\n?\Z")
"""Before the rest of a word that a hyphen parts: "semi-", "moist soil"."""
_ENDED = later(rf"(?:^|(?<=[.!;] )|(?<=[\n\t])){ADJECTIVE}\.\s\Z")
"""A comma that was read as a full stop: "Moist.", "humus-rich soil"."""
_ON_CONDITION = later(
    r"(?:\bhardy (?:down )?to\b[^.;\n]{0,14}|\b(?:pink|pinker|bluer?|redder|red|mauve|purple|white|lilac"
    r"|violet)(?: flowers)?|\bneeded) (?:in|on) \Z"
)
"""Before a soil in which a plant bears more cold, or flowers in another colour."""
_UNWANTED = later(
    r"\b(?:avoid|dislikes?|hates?|resents?|not|never|no|won.t|cannot|can.t|intolerant of|except|unless"
    r"|(?:rots?|dies) in)\b[^.,:;\n\t•·|]{0,25}\Z"
)
"""Before a soil that the plant does not bear."""

_BARE = later(
    rf"{ADJECTIVE}(?:{JOINED}{ADJECTIVE})*(?: soils?)?"
    rf"|{GERMAN}(?:(?:,? (?:und|bis|oder|och) |, ?|/| ){GERMAN})*"
)


def read_soil(tag: TagText) -> Iterator[Found[str]]:
    """The soil a tag asks for: the labelled phrase, or else "Prefers well-drained soil" and its like.

    >>> [found.value for found in read_soil(TagText("Plant in full sun and rich, well-drained soil."))]
    ['rich, well-drained soil']
    >>> list(read_soil(TagText("Keep soil moist. Fill hole with soil.")))
    []
    """
    text = tag.string
    found = [f for f in after_labels(text, _LABELS, _BARE, _OWN, ELSEWHERE) if _is_soil(text, f)]
    spoken = [onward(text, one, FIRM) for one in _spoken(text)]
    spoken.sort(key=lambda f: (f.certainty <= DOUBTFUL, f.span[0], -f.span[1]))
    yield from or_spoken(text, found, chain(spoken, _talked(text), _elsewhere(text)))


def _is_soil(text: str, found: Found[str]) -> bool:
    """Not "Sol" of a Spanish tag, nor a soil's moisture or temperature read as its kind."""
    printed = fold(text[: found.span[0]])
    if re.search(r"\bsun ?/ ?sol\s?[:.\t\n ]*$", printed):
        return False
    if re.search(r"\bsol\s?[:.\t\n ]*$", printed):
        return not re.match(r"(?:directo|pleno|parcial|y |o |a )", fold(found.value))
    return not (printed.rstrip().endswith("ground") and later(r"cover", re.I).match(found.value))


def _spoken(text: str) -> Iterator[Found[str]]:
    """Kinds of soil in sentences, composts and mixes, drainage, and soils in other languages."""
    folded = flowing(text)
    for match in _SPOKEN.finditer(folded):
        before = folded[max(0, match.start() - 40) : match.start()]
        if (
            _NOT_OF_PLANT.search(before)
            or _ON_CONDITION.search(before)
            or _UNWANTED.search(before)
            or _WORD_CUT.search(before)
            or _SUFFERED.match(folded, match.end())
            or re.fullmatch(r"(?:garden|potting|good|cactus)\s(?:garden )?soils?", match[0])
        ):
            continue
        whole = match["verb"] and _WHOLE.match(match["verb"]) and opens_sentence(text, match.start())
        span = (listed_from(text, match.start()), match.end()) if whole else match.span("soil")
        span = (span[0], soil_end(text, span[0], span[1]))
        if text[span[0]].islower() and (first := _ENDED.search(folded, 0, span[0])):
            span = (first.start(), span[1])
        yield Found(clean(text[slice(*span)]), span, 0.85)
    for match in BORNE.finditer(folded):
        if opens_sentence(folded, match.start()):
            yield Found(clean(text[slice(*match.span())]), match.span(), 0.88)
    for pattern in (RECIPE, _MIXED, _DRAINAGE):
        for match in pattern.finditer(folded):
            alone = opens_sentence(text, match.start()) and _PIECE_END.match(folded, match.end())
            product = (
                pattern is _MIXED and _MIX_END.search(match["soil"]) and not _TEXTURE.match(match["soil"])
            )
            asked = match["verb"] or (
                pattern is _MIXED
                and _TEXTURE.match(match["soil"])
                and _ARTICLE.search(folded[: match.start()])
            )
            if (asked or (alone and not product)) and not _UNWANTED.search(folded[: match.start()]):
                # drainage alone ("Sun, good drainage") tells of the place as much as of the soil
                pressed = pattern is not _DRAINAGE or _PRESSED.search(match["soil"])
                certainty = 0.75 if asked or pressed else 0.5
                start, end = match.start("soil"), soil_end(text, *match.span("soil"))
                yield Found(clean(text[start:end]), (start, end), certainty)
    yield from sentences(text, _MUST, 0.75)
    yield from (
        Found(clean(text[slice(*found.span())]), found.span(), 0.7) for found in _THE_POORER.finditer(folded)
    )
    yield from grounds(text)
    yield from named_alone(text, folded)


_WARE = later(
    r"(?:use )?(?:(?:ericaceous|potting|garden|peat-free|multi-?purpose|aquatic|orchid|cactus|citrus|bulb"
    r"|premium"
    r"|quality) )+(?:compost|soil|mix)(?: and (?:bark|grit|perlite|sand))?"
)
"""What a bag is called, where no colon says that it is asked for."""


def _talked(text: str) -> Iterator[Found[str]]:
    """What sentences say of the ground in words of their own; not where a list may begin before."""
    flow = flowing(text)
    for found in told(text, TALK, 0.75, 2.5):
        part = later(r"[^,;.:\n\t]*, \Z").search(flow, 0, found.span[0])
        ware = _WARE.fullmatch(fold(found.value)) and text[: found.span[0]].rstrip()[-1:] != ":"
        if not ware and (not part or not TALK.own.search(part[0])):
            yield found


def _elsewhere(text: str) -> Iterator[Found[str]]:
    """What is said in another language counts behind what is said in English."""
    for match in ELSEWHERE.finditer(flowing(text)):
        if opens_sentence(text, match.start()):
            yield Found(clean(text[slice(*match.span())]), match.span(), 0.8)
