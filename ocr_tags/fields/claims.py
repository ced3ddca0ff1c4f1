"""What a tag claims of itself, in its own words: native where."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.care import in_english
from ocr_tags.fields.phrases import cells, clean, flowing, label_phrases
from ocr_tags.fields.small_letters import in_list
from ocr_tags.fields.values import is_torn, labelled, value_end
from ocr_tags.names.firms import firm_in
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_PLACE = (
    r"(?:(?:(?:north|south|new|west|rhode) )?(?:"
    r"alabama|alaska|arizona|arkansas|california|colorado|connecticut|delaware|florida|georgia|hawaii"
    r"|idaho|illinois"
    r"|indiana|iowa|kansas|kentucky|louisiana|maine|maryland|massachusetts|michigan|minnesota|mississippi"
    r"|missouri|montana|nebraska|nevada|hampshire|jersey|mexico|york|carolina|dakota|ohio|oklahoma|oregon"
    r"|pennsylvania|island"
    r"|tennessee|texas|utah|vermont|virginia|washington|wisconsin|wyoming|alberta|british columbia|manitoba"
    r"|new brunswick|newfoundland|nova scotia|ontario|quebec|saskatchewan)|"
    r"(?:north|south|central|latin) american?|americas?|american|u\.?s\.?a?\.?|united states|canadian"
    r"|british|english|scottish|welsh|irish|uk|european|new zealand|nz|tasmanian|"
    r"eastern|western|northern|southern|midwest(?:ern)?|northeast(?:ern)?|southeast(?:ern)?"
    r"|southwest(?:ern)?|northwest(?:ern)?|"
    r"n\. ?a\.|n\.? amer(?:ican?|\.)|aussie|kiwi|queensland|victorian|carolinian|acadian|cascadian"
    r"|boreal|sonoran"
    r"|great basin|sierra|piedmont|tall-?grass|"
    r"great plains|prairie|regional|local|locally|australian|mexican|ozark|appalachian|great lakes|"
    r"(?:(?:south|west|east|north) )?african|cape|karoo|fynbos|asian|chinese|japanese|korean"
    r"|himalayan|siberian|mediterranean"
    r"|caribbean|b\.? ?c\.?|pnw"
    r"|hawaiian|texan|californian|floridian|alaskan|brazilian|chilean|peruvian|andean|patagonian|alpine"
    r"|balkan|turkish"
    r"|spanish|italian|french|german|dutch|swedish|norwegian|danish|finnish|nordic|pacific northwest"
    r"|new england"
    r"|tasmania|(?:western|south) australian|nsw|"
    r"(?:gulf|east|west) coast|coastal|desert|mountain|atlantic|pacific)"
)
_OPEN_PLACE = r"(?:(?:north|south|east|west|mid)(?:[- ]?(?:east|west))?(?:ern)?|central|latin)"
"""No place ends so: the line below, in capitals as well, goes on."""
_KIND = (
    r"(?:plants?|wildflowers?|forbs?|sedges?|rushes|species|perennials?|shrubs?|trees?|grass(?:es)?"
    r"|ferns?|vines?|annuals?"
    r"|flowers?|cultivars?|hedging(?: plants?)?|hedges?|bulbs?|climbers?|herbs?|evergreens?|conifers?)"
)
_SORT = (
    r"(?:woodland|rainforest|meadow|wetland|hedgerow|bunch|clump(?:ing)?|flowering|evergreen|deciduous"
    r"|perennial"
    r"|annual|climbing"
    r"|shade|pond|marginal|hardy|spring|summer|small|large|understor(?:e)?y|warm[- ]season|cool[- ]season)"
)
_SIDE = (
    r"(?:(?:north|south|east|west)(?:ern)?|central|mid|upper|lower|and|the|[nsew]|[ns]\.? ?[ew])(?!\w)\.?|&"
)
_WHERE = (
    rf"\b(?:(?: ?[-–—:] ?| \()(?:(?:{_SIDE})[ ,]*){{0,5}}(?:u\.?s\.?a?\b|united states"
    r"|(?:north )?america|canada|australia|britain|europe|ireland|new zealand)\)?)?"
)
"""After a native kind: where, said behind a dash or in brackets ("Native vine - East. & Central US")."""
_NATIVE_TO = later(
    rf"\b(?:native(?: {_KIND})? (?:to|of|from|across|throughout|along)|native in|native as far|(?:indigenous"
    rf"|endemic) (?:to|in|throughout|across|along)|originally from|hail(?:s|ing)? from"
    rf"|(?:an? )?selection of (?:an? )?(?:{_KIND} )?native (?:to|of)"
    r"|(?:found|grows|growing|occurs) (?:wild|naturally) (?:in|from|along|across|throughout|on|over"
    r"|through|between)"
    r"|found (?:throughout|right across|only in)(?= (?:the )?(?:south|north|east|west|new|central"
    r"|eastern|western|[ne])\b)"
    r"|(?:^|(?<=[\n\t.•·*|] )|(?<=[\n\t]))from the (?:\w+ )?(?:mountains|hills|forests|woods|woodlands"
    r"|deserts|bogs"
    r"|swamps|meadows|prairies|steppes|cliffs|coasts?|highlands|uplands|rainforests?|grasslands|islands"
    r"|plains|shores"
    r"|slopes|marshes|jungles?) of"
    r"|(?:^|(?<=[\n\t.•·*|] )|(?<=[\n\t])|(?<=\.\.))(?:native|indigenous|endemic)(?:,"
    r"| [-–—]) ?(?=[\w .]{3,24} to \w|[\w .]{3,30}"
    r"\b(?:catchment|plains?|district|region|ranges)\b)"
    r"|native (?:north|south|east|west) of"
    rf"|native (?:(?:{_SIDE})[ ,]*){{1,4}}(?=(?:america|canada|usa?|u\.s|united states)\b)"
    rf"|native (?:here(?:abouts)?|locally)(?: ?[:–—-] |, (?=in |on |to ))"
    rf"|(?:an? )?{_PLACE}(?: native)?, (?:growing |found )?wild (?:in|on|along|from|across|over|through"
    rf"|throughout)"
    rf"|originaire d\w*|(?:(?:espece|arbre|arbuste|plante|vivace|fougere|fleur|graminee) )?indigene (?:aux?"
    rf"|a|d\w*)|nativ[ao] de|beheimatet in)\b"
)
_FOREIGN = later(r"(?:originaire|(?:\w+ )?indigene|nativ[ao] |beheimatet)")
_NATIVE_KIND = later(
    rf"(?:\b(?:(?:an? )?selection of (?:an? |the )?|(?:(?:an? )?true|truly an?|evergreen|deciduous) ))?"
    rf"(?:\b(?:{_OPEN_PLACE}\n|{_PLACE}(?: (?:and|&))? ))+(?:(?:rainforest|woodland|bush|desert|coastal"
    rf"|alpine"
    rf"|wetland|meadow|hedgerow) )?(?:native|endemic)(?: {_KIND}| parentage| stock| origin"
    rf"| hybrid)?\b"
    rf"|\b(?:an?|our|this) native (?:(?:{_PLACE}|{_SORT}) ){{0,3}}(?:[a-z]+-[a-z]+ )?(?:cactus|succulent"
    rf"|palm|orchid|rose|grape"
    rf"|oak|maple"
    r"|pine|lily|iris|azalea|berry|groundcover|ground cover|bamboo|bush|milkweed|honeysuckle|sage|aster"
    r"|violet|plum|fruit"
    r"|birch|ash|willow|rhododendron|clematis|viburnum|dogwood|ninebark|elder(?:berry)?|serviceberry"
    r"|snowberry"
    r"|huckleberry|currant|hazel|hawthorn|beech|rowan|alder|holly|primrose|bluebell|cowslip|foxglove"
    r"|columbine"
    r"|phlox|penstemon|lupine|goldenrod|coneflower|hydrangea|magnolia|redbud|cherry|crabapple|juniper|cedar"
    r"|spruce|wattle|banksia|grevillea|daisy|poppy|geranium|spirea|spicebush|buttonbush|tussock|flax|thyme"
    r"|heather|broom)\b"
    rf"|\bnative (?:(?:{_PLACE}|{_SORT}) ){{0,3}}{_KIND}{_WHERE}|\bplantes? indigenes?\b"
    rf"|\bplantas? nativas?\b|"
    r"\b(?:einheimisch\w*|heimische) (?:pflanze|staude|wildstaude)\b|\binheemse plant\b"
)
_NAMED = later(r"[A-Z][a-z]+ \Z")
"""Before "Native Plants", where the two words are part of a name."""
_MORE = later(
    r",? ?(?:and |also )+(?:found|grows|growing|occurs) (?:wild|naturally) [^.;\n\t]*"
    r"|(?:,| [-–—]) ?[\w .]{2,30}\b(?:provenance|catchment|origin|stock|district|plains?|region)\b"
    r"|(?: [-–—]|:) (?:(?:of|in|from|the|and|[a-z'’]+) ){0,4}?(?:forests?|woods|woodlands?|prairies?"
    r"|coasts?|bogs?"
    r"|meadows?|hills?|valleys?|mountains?|ranges|shores?|dunes?|wetlands?|savannas?|savannahs?|grasslands?"
    r"|swamps?"
    r"|marsh(?:es)?|fens?|heaths?|moors?|cliffs?|deserts?|rainforests?|hedgerows?|hedges|riverbanks?|uplands?"
    r"|streamsides?|foothills)(?= ?(?:[\n\t.;,·•|]|$))"
)
"""What a native claim goes on with: where else it grows, on what ground, where its seed was gathered."""
_BY_ORIGIN = later(rf"\b(?:of )?(?:{_PLACE} )+(?:(?:in|by) )origin\b|\bof (?:{_PLACE} )+origin\b")
_STATUS = later(r"(?:^|(?<=[\n\t]))native(?=; | ?[·•|] )")
_NATIVE_COLON = later(
    r"(?:^|(?<=[\n\t.•] )|(?<=[\n\t]))"
    r"native(?: ?: ?| ?/ ?indigene(?: ?: ?|\t))(?=[a-z])(?!(?:yes|no|to|of|from)\b)"
)
_NATIVE_CELL = later(
    rf"(?:^|(?<=[\n\t]))native\t(?=[^\n\t]*\b(?:{_PLACE}|america|canada|usa?|europe|asia|africa|australia"
    r"|mtns?|mts|plains|ranges|coasts?|[ns]?[ew]\.? (?:& [ns]?[cew]\.? )?u\.?s)\b)"
)
"""A label in a row of labels and values, where the value is a place."""
_DENIED = later(r"(?i)(?:non?|not|introduced|exotic|hybrid|cultivar|garden|unknown)\b")
_HERE = later(r"\bnative (?:here|locally)")
_NATIVE_LABELS = label_phrases("native")
_NOT_CLAIM = later(
    r"\b(?:non|not|nor|attracts?|supports?|feeds?|for|to|many|other|like|mimics)[ -]+(?:an? )?$"
    r"|\bnative,? (?:and |also )+$"
)
_NOT_NATIVE_WORD = later(
    r"\s+(?:nursery|nurseries|farms?|gardens?|growers|society|seeds?|soils?|bees?|pollinators|birds"
    r"|insects|butterflies|woods?\b|woodlands?|forests?|prairies?|meadows?|(?:plant )?(?:food|feed"
    r"|fertili[sz]er|pellets|mix|blend|potting)|co\b|center"
    r"|centre|ltd)"
)
_INITIAL = later(r"(?<!\.)\b[NSEW]\Z")
"""The side of a land, whose stop ends no sentence: "Native to N. America"."""
_OPEN_END = later(
    r"\b(?:(?:north|south|east|west|mid)(?:[- ]?(?:east|west))?(?:ern)?|central|the|aotearoa|new|nova"
    r"|british|prince edward|rhode|great|upper|lower|lake|mount|mt\.?|saint|ste?\.?|sierra|gulf of)$",
    re.I,
)
_AFTER_STATES = later(
    r"\.\s(?:&|and|to|or|[A-Z][a-z]+(?:west|east|lands?|ains?)\b|(?:Gulf|Great|Pacific|Atlantic|East|West)\b)"
)
"""What goes on from "the U.S.", whose stop ends no sentence: "and Canada", "Southeast", "Gulf Coast"."""
_ALONE = later(r"[\W_]*(?P<value>(?:(?:locally|truly) )?native(?:: yes)?|indigene|autoctona)[\W_]*")


_WHOSE = later(
    rf"(?:\ban? )?\b{_PLACE} \Z"
    r"|\b(?:the|its) (?:(?:wild|true|type|original|parent|plain|common) )?(?:species|sort|form|kind|type"
    r"|parents?"
    r"|ancestors?|original|one)(?: itself)? (?:is|are|was|comes?|hails?) \Z",
    re.I,
)
"""Before "native of": "A British native of chalk downs". Of the wild plant's home it is told whose it is."""
_ABBREVIATED = later(
    r"\b(?:Ala|Ariz|Ark|Calif|Colo|Conn|Del|Fla|Ga|Ill|Ind|Kans?|Ky|La|Mass|Md|Mich|Minn|Miss|Mo|Mont|Nebr?"
    r"|Nev"
    r"|Okla|Ore|Pa|Penn|Tenn|Tex|Va|Vt|Wash|Wis|Wyo|Dak|Car|Alta|Man|Ont|Qu[eé]|Sask|Mex|Can|Amer?|Mts?|Co"
    r"|Cos)\Z"
)
"""A land cut short, whose stop ends no sentence where "and" or "to" another one follows."""
_TO_ANOTHER = later(r"\.,? (?:&|and|to|thru|through|or|south to|north to|east to|west to) (?=[A-Z])")


def read_native_claim(tag: TagText) -> Iterator[Found[str]]:
    """The native claim, as printed. Native to where, and whether true, the tag alone answers for.

    >>> [found.value for found in read_native_claim(TagText("A North American native. Native soil is fine."))]
    ['North American native']
    """
    text = tag.string
    folded = flowing(text)
    english = False
    told = [*_NATIVE_COLON.finditer(folded), *_NATIVE_CELL.finditer(folded)]
    for match in told:
        in_row = match[0].endswith("\t")
        end = _cell(text, match.end(), match.end())[1] if in_row else value_end(text, match.end())
        yield Found(in_english(clean(text[match.end() : end])), (match.end(), end), 0.9)
    for found in labelled(text, _NATIVE_LABELS):
        if _DENIED.match(text, found.start) or _HERE.search(folded, found.label, found.start):
            continue
        yield Found(clean(text[found.start : found.end]), (found.start, found.end), found.certainty)
    for match in _NATIVE_TO.finditer(folded):
        foreign = _FOREIGN.match(match[0])
        end = _clause_end(text, match.end(), _past_open_end(text, match.end()))
        end = _place_end(folded, match.end(), end)
        if foreign and english:
            continue  # says again what is kept
        if end > match.end() + 2 and not _NOT_CLAIM.search(folded[: match.start()]):
            english = english or not foreign
            whose = _WHOSE.search(folded, 0, match.start())
            start = whose.start() if whose else match.start()
            yield Found(clean(text[start:end]), (start, end), 0.95)
    for match in _NATIVE_KIND.finditer(folded):
        others = _NOT_NATIVE_WORD.match(folded, match.end()) or re.match(
            r" (?:to|of)\b", folded[match.end() :]
        )
        firm = match[0].startswith("native") and firm_in(tag.string[slice(*_cell(text, *match.span()))])
        name = text[slice(*match.span())].istitle() and _NAMED.search(text[: match.start()])
        if not others and not firm and not name and not _NOT_CLAIM.search(folded[: match.start()]):
            more = _MORE.match(folded, match.end())
            span = (match.start(), more.end() if more else match.end())
            yield Found(clean(text[slice(*span)]), span, 0.96 if more else 0.9)
    for match in _STATUS.finditer(folded):
        yield Found(clean(text[slice(*match.span())]), match.span(), 0.7)
    for match in _BY_ORIGIN.finditer(folded):
        yield Found(clean(text[slice(*match.span())]), match.span(), 0.85)
    for start, end in cells(text):
        label = any(match.start() <= start < match.end() for match in told)
        if not label and (alone := _ALONE.fullmatch(folded, start, end)):
            yield Found(clean(text[slice(*alone.span("value"))]), alone.span("value"), 0.9)


def _cell(text: str, start: int, end: int) -> tuple[int, int]:
    """The run without a column gap or line end in which a stretch stands."""
    return next((first, last) for first, last in cells(text) if first <= start < last)


def _past_open_end(text: str, start: int) -> int:
    """Where the claim ends; no place ends in "eastern" or "North", so there the line below belongs to it.

    >>> tag = "Native to eastern North" + chr(10) + "America" + chr(10) + "Deadhead"
    >>> tag[: _past_open_end(tag, 10)].splitlines()
    ['Native to eastern North', 'America']
    """
    if re.match(r"\n[A-Z]", text[start:]):
        start += 1  # the place itself stands on the next line
    end = value_end(text, start)
    listed = text.find("\n", start, end)
    if listed >= 0 and in_list(text, start) and not is_torn(text[start:listed]):
        return listed  # in a list in small letters the next line tells of something else
    if text[:end].endswith(("U.S", "U.S.A")) and _AFTER_STATES.match(text, end):
        end = value_end(text, end + 1)
    while _ABBREVIATED.search(text, start, end) and (more := _TO_ANOTHER.match(text, end)):
        end = value_end(text, more.end())
    if _INITIAL.search(text, start, end) and re.match(r"\. ?(?:Am|Afr|Asia|Eu|Aus|Pac)", text[end:]):
        end = value_end(text, end + 1)
    if _OPEN_END.search(text[start:end]) and re.match(r"\n[^\n]", text[end:]):
        return value_end(text, end + 1)
    return end


_NEXT_CLAUSE = later(
    r",\s(?:(?:and|but|yet|so)\s)?(?:quite|very|(?:once |now |increasingly |sadly |rather )?(?:rarer?"
    r"|rarely|scarcer?|uncommon|common|endangered"
    r"|threatened|declining|vanishing)|happy|glad|at home|loved|beloved|easy|good|great|grown|hardy"
    r"|tough|perfect|ideal|thriv\w+|grows|blooms|attracts|now|still|just|well suited|a favou?rite|but|yet)\b"
)


def _clause_end(text: str, start: int, end: int) -> int:
    """Where a clause without a place of its own begins, which are in capitals: ", and glad of a wet spot"."""
    clause = _NEXT_CLAUSE.search(text, start, end)
    return end if not clause or re.search(r"[A-Z]", text[clause.end() : end]) else clause.start()


def _place_end(folded: str, start: int, end: int) -> int:
    """The end of the place: a comma before "this", a relative clause and the like end it."""
    stop = later(
        r"\s*(?:;\s| / |\s[–—-]\s|\sfrom (?:children|pets|reach|frost|wind|sun)\b"
        r"|\sand (?:an? |the (?:bees?|birds?|butterfl\w+|plants?|flowers|leaves)\b|is |it |loved "
        r"|great (?!lakes|plains|basin)|good |easy |very )"
        r"|,\s(?:and\s)?(?:by rights|makes|grows|reaches|forms|gives|for|i|we|you|they|he|she"
        r"|ours?|my|like)\b"
        r"|,\s(?:so|hence|and so|and (?:far|much|quite|none|still|now|as)|not|here|so there|it|this"
        r"|the plant|these|with|and is|where|which)\b|\b(?:that|which|with|this|where"
        r"|it is)\b|[(])"
    ).search(folded, start, end)
    return stop.start() if stop else end
