"""Warnings a tag prints, in its own words.

A warning that is missing or unread does not make a plant safe; nothing here says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import clean, flowing
from ocr_tags.fields.small_letters import all_small, ended_on_purpose, in_list
from ocr_tags.fields.values import is_torn, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

_EATEN = r"(?:eaten|ingested|swallowed|consumed|chewed|touched|inhaled)"
_WHO = (
    r"(?:(?:small |young |the |your |our )?(?:dogs?|cats?|pets?|horses?|ponies|rabbits?|livestock|cattle"
    r"|sheep"
    r"|goats?|stock"
    r"|animals?|people|humans?|children|kids|toddlers|babies|birds|fish|you)(?:,? (?:and|or|&) |, )?)+"
)
_ILL = (
    r"(?:(?:mouth|stomach|tummy|throat|skin|eye|belly) (?:pain|ache|upset|burns?|trouble)|nausea"
    r"|vomiting|cramps?"
    r"|swelling|burning|itch\w*|hives|sickness|convulsions|diarrh?o?ea|drooling|hay ?fever|asthma|sneezing"
    r"|hallucinations|death)"
)
"""Whom a plant harms, and how (common practice, no source)."""
_ARMS = r"(?:thorns?|spines?|prickles?|barbs|stings?)"
_LIMBS = r"(?:stems?|canes?|branches|leaves|foliage|twigs|stalks|pads|shoots|fronds|trunk|wood|leaf tips)"
_HARM = later(
    r"\b(?:(?:makes?|making) (?:\w+ )?"
    rf"{_WHO} (?:very |quite |really )?(?:ill|sick|unwell|poorly)|get(?:s|ting)? (?:sick|ill)\b"
    rf"|{_WHO} (?:may|can|could|will|might) (?:vomit|drool|be sick|fall ill|get ill)"
    rf"|(?:causes?|causing|triggers?|trigger|brings? on|sets? off|aggravates?) (?!no\b)(?:\w+ ){{0,2}}{_ILL}"
    r"|(?:stings?|burns?|blisters?|harms?) (?:the |your )?(?:eyes|skin|hands|mouths?)\b"
    r"|(?:juice|sap|latex|hairs|bristles) (?:may|can|will|could) (?:blister|burn|sting|itch|stain)"
    r"|calcium oxalate|contains? (?:\w+ ){0,2}(?:cyanide|oxalates?|toxins?|alkaloids|saponins|poisons?)"
    rf"|(?:is|are) (?:very |quite |truly )?deadly|for (?:the )?birds,? (?:and )?not (?:for )?(?:people"
    rf"|you|us|humans|eating)"
    r"|(?:not (?:to )?be|not be|never be|not) taken internally"
    r"|where (?:\w+ )?(?:livestock|animals|horses|cattle|sheep|ponies|pets|dogs|stock|children"
    r"|kids) (?:can |may |will )?"
    r"(?:graze|browse|reach|feed|play|eat|nibble)"
    r"|gloves (?:are )?(?:advised|recommended|essential|needed|required|a must|please)"
    r"|toxic|poison(?:ous|s)|harmful|inedible|not edible|deadly (?:if|when|poison\w*)|(?:can|may"
    r"|could) be fatal|fatal if"
    r"|(?:not|never) (?:intended |meant |suitable |safe )?(?:for |be )?"
    r"(?:(?:human|animal|internal|people|pet)s?(?:(?:,| or| and|,? nor|/)"
    r" ?(?:human|animal|pet|livestock)s?)* )?"
    r"(?:consumption|consumed|eaten)|(?:do not|don.t|never) (?:eat|ingest|consume)"
    r"|not (?:recommended|fit|suited|good|safe) (?:for|to) (?:human )?(?:eat(?:ing)?|consumption"
    r"|consum(?:e|ing))"
    r"|(?:not|never) for (?:eating|food|culinary use|human use)"
    r"|unsafe (?:to|for)|handle with (?:gloves|care)|(?:beware(?: of)?|mind|watch for)(?: the"
    r"| its)? (?:sharp )?(?:thorns"
    r"|spines|prickles)|(?:fatal|lethal|deadly|dangerous|hazardous|bad) (?:to|for) (?:your )?(?:pets"
    r"|cats|dogs|horses"
    r"|livestock|humans|people|animals|children)|not (?:pet|child)[- ](?:friendly|safe)"
    r"|not safe (?:for|around) \w+"
    r"|avoid (?:skin |eye )?contact with (?:the |its )?(?:\w+ )?(?:sap|hairs|juice|berries|spines)"
    r"|irrita(?:nt|ting|te|tes|tion)|(?:cause|causes|causing) (?!no\b)(?:\w+ )?(?:\w+ )?(?:rash(?:es)?"
    r"|dermatitis|blister\w*|skin burns?|burns? to"
    rf"|vomiting|discomfort|allerg\w+|illness|stomach upset|upset)|(?:discomfort|illness|upset|sick"
    rf"|ill) if {_EATEN}"
    r"|(?:may|can|will|could) (?:burn|blister|sting|injure|scratch|stain) (?:the |your )?(?:skin|eyes|hands)"
    r"|(?:thorns|spines|prickles|hairs|sap) (?:may|can|will) (?:injure|scratch|sting|burn|hurt|prick)"
    r"|out of (?:the )?reach of (?:small |young )?(?:children|pets)|away from (?:children|pets|animals"
    r"|livestock|kids)|keep (?:it |this |seeds? |berries )?from"
    r" (?:small |young )?(?:children|kids|pets|animals|livestock)"
    r"|(?:wash|rinse) (?:your |the )?(?:hands|skin)|choking hazard"
    r"|(?:skin|contact|eye) (?:allergy|allergies|allergen|irritation|reaction|sensiti\w+)|allergic reaction"
    r"|phototoxic"
    r"|(?:for )?(?:ornamental|decorative) (?:use|purposes?) only|wear"
    r" (?:(?:protective|long|sturdy|tough|strong|thick|stout|leather|heavy|garden(?:ing)?) )?(?:gloves"
    r"|gauntlets|mitts"
    r"|mittens|long sleeves|eye)"
    r"|(?:may|can|will|could) (?:upset|harm|hurt|sicken|poison|kill|injure) (?:[\w-]+ ){0,2}(?:pets?|cats?"
    r"|dogs?|horses?"
    r"|livestock|cattle|animals|people|children|kids|stomachs?|tumm\w+|skin|eyes)"
    r"|upsets? (?:my |their |your |the )?(?:tumm\w+|stomachs?|pets|cats|dogs)"
    r"|(?:makes?|making) (?:you|people|pets|dogs|cats|children|animals|horses|livestock"
    r"|them) (?:very )?(?:ill|sick"
    r"|unwell|poorly)"
    r"|(?:keep|store) (?:[\w’']+ ){0,4}?(?:well )?(?:away from|off"
    r"|out of(?: the)?(?: reach of)?) (?:the )?(?:[\w-]+ ){0,2}?"
    r"(?:child(?:ren)?|kids|toddlers|pets?|cats?|dogs?|puppies|horses|livestock|cattle|stock|food|eyes|skin"
    r"|mouths?)"
    r"(?! (?:store|cupboard))"
    r"|protect (?:your )?(?:eyes|hands|skin|arms)|(?:do not|don.t|never) (?:rub|touch) (?:your )?(?:eyes"
    r"|face)"
    r"|(?:do not|don.t|never) let (?:\w+ )?(?:pets?|cats?|dogs?|children|kids|livestock|horses) (?:eat|chew"
    r"|nibble|graze"
    r"|browse|near)|(?:do not|don.t|never) (?:chew|nibble|taste|swallow|lick)"
    r"|(?:must|should|need to|have to) (?:always )?be (?:\w+ )?(?:cooked|boiled)|(?:boil"
    r"|cook) (?:the )?(?:\w+ ){0,2}"
    r"(?:well |thoroughly |fully |for [\w ]{1,14})?before (?:eating|you eat|tasting)"
    r"|(?:not for|do not|never) release\b|use with (?:caution|care)\b|(?:do not|don.t"
    r"|never) confuse (?:it )?with\b"
    r"(?=[^.!\n]{0,60}\b(?:deadly|death|poison\w*|toxic))"
    r"|raw\b[^.;\n]{0,16}(?:=|\bmakes? you|\bmay make you|\bwill make you) ?(?:sick|ill|unwell)"
    r"|(?:must be|always|only eat) cooked|cook (?:well |thoroughly )?before eating"
    r"|(?:edges?|margins|blades|tips|leaf|leaves) (?:is|are)"
    r" (?:very |razor[- ]|quite )?(?:sharp|spiny|prickly)"
    r"|razor[- ]sharp|(?:thorns|spines|prickles)\b[^.;\n]{0,24}\b(?:hurt|sting|scratch|prick)"
    r"|thorny(?! (?:climber|shrub|tree|vine|bush|plant|evergreen|rose|hedge|habit))"
    r"|stinging hairs"
    r"|(?:sharp|has|with|large|many) (?:thorns|spines|prickles)|sharp (?:leaf )?(?:edges|tips|points)"
    r"|sharp (?:thorns|spines|prickles)"
    r"|(?:may|can|could) (?:be(?:come)? )?(?:considered )?(?:an? )?(?:locally |highly )?(?:invasive|weedy"
    r"|noxious|weed)|is an? (?:\w+ )?weed in|invasive in|(?:noxious|invasive) (?:weed|plant|species)"
    r"|weed notice"
    r"|(?:spreads|spreading) (?:aggressively|invasively))\b"
    r"|(?:^|(?<=[\n\t.:;!] )|(?<=[\n\t]))(?:thorns|spines)(?=!|\.?(?:\n|$))"
    r"|(?:^|(?<=[\n\t.:;,] )|(?<=[\n\t]))(?:thorns|spines|prickles) (?:on|along|at) (?!show|display|request)"
    r"|(?:(?<=\bcaution[\t\n])|(?<=\bcaution[:!] )|(?<=\bwarning[\t\n])|(?<=\bwarning[:!] ))"
    r"[^.;\t\n]{0,24}\b(?:thorns?|thorny|spines?|spiny|prickl\w+|sharp|sap)\b"
)
_ARMED = later(
    r"(?:^|(?<=[\n\t.:;!] )|(?<=[\n\t]))(?:(?:very|rather|quite|many|small|tiny|long|fierce|wicked"
    r"|occasional|some|scattered|wickedly|ferocious|savage|curved|needle-like"
    r"|vicious|nasty"
    r"|stout|hidden|hooked|fine|big|backward|sharp|curved) )*"
    r"(?:(?:prickly|thorny|spiny|spiky|barbed|hooked|sharp-(?:tipped|edged|toothed)) (?:stems?|leaves|foliage"
    r"|branches|canes?|pads|tips|stalks|twigs|fronds|wood|shoots|bracts)|(?<= )(?:thorns|spines|prickles"
    r"|barbs)(?: (?:on|along) (?:the |its |all )?(?:old(?:er)? |young |lower )?[a-z]+)?"
    r"|(?:the |its )?"
    rf"{_LIMBS} (?:is|are) (?:very |rather |quite |wickedly )?(?:prickly|thorny|spiny"
    r"|barbed|sharp))"
    r"(?= ?(?:[:.;!\n–-]|, (?:so|keep|wear|mind|handle|take)\b|$))"
)
"""Weapons that are all a line tells of: a warning where there is no other, else part of the description."""
_HARM_ELSEWHERE = later(
    r"\b(?:toxi[qc]\w{1,3}|venen\w+|nocif\w*|ne pas (?:consommer|ingerer|manger)|epineux|irritant\w+"
    r"|ma ikke (?:spises|spisses)|far ej atas|non commestibil\w+|nicht essbar|pas comestibles?"
    r"|non comestibles?"
    r"|no (?:comestible|ingerir|consumir|comer)|(?:hors de|fuera) (?:la )?(?:portee|del alcance)"
    r"|giftig\w*|nicht zum (?:verzehr|essen)|hautreizend|reizt (?:die )?(?:haut|augen)|huidirriterend"
    r"|niet (?:geschikt )?voor consumptie|plante? ornementale seulement)\b"
)
_FURTHER = later(
    r"(?i);\s+(?=[^.;!]*\b(?:may|can|could|will|causes?|is|are|not (?:for|to|suitable)|do not|don.t"
    r"|harmful|toxic"
    r"|poisonous|if (?:eaten|ingested|swallowed))\b)"
)
_THEN = later(r"(?:do not|don.t|they|it|if|contact|handle|wear|wash|keep)\b")
"""Other matter may follow: "Toxic to dogs; the leaves are fragrant"; danger and advice belong to it."""
_HARMLESS = later(
    r"(?:\b(?:non|not|nor|is not|are not|isn.t|no known|niet|nicht|ikke|inte|pas)[ -]*(?:known to be "
    r"|considered )?|\b(?:hasn.t got|haven.t got|lost its|without|minus|free of)[: ]+|\b(?:does not"
    r"|doesn.t|do not|don.t|won.t|will not|never|resists?"
    r"|crown of|nearly|almost|un|no|few|without|lacks)\s)$"
)
_OF_ANOTHER = later(r"\b(?:fertili[sz]ers?|manure|salt|spray|pesticides?|herbicides?)\b[^.;\n]{0,60}\Z")
"""Before "harmful", where it is said of what is put on the plant."""
_NOT_HARM = later(r"\s?(?:ivy|oak|sumac|-free|free)\b")


def read_warnings(tag: TagText) -> Iterator[Found[str]]:
    """Each warning sentence, as printed.

    >>> [found.value for found in read_warnings(TagText("Full sun. Harmful if eaten. Non-toxic to bees."))]
    ['Harmful if eaten']
    """
    text = tag.string
    folded = _one_voice(text)
    own = list(_sentences(text, folded, _HARM, ()))
    again = list(_sentences(text, folded, _HARM_ELSEWHERE, own))
    if len(again) > len(own):  # else they say in another language what is kept
        own += again
    for start, end in own or _sentences(text, folded, _ARMED, ()):
        opens = _OPENS_WARNING.match(text, start)
        start = opens.end("mark") if opens and opens["mark"] else start
        yield Found(clean(text[start:end]).strip("()!"), (start, end), _wholeness(text, start, end))


def _wholeness(text: str, start: int, end: int) -> float:
    """How sure it is that a sentence is whole, and holds nothing of the line above in a list."""
    if is_torn(text[start:end]):
        return 0.3
    return 0.4 if "\n" in text[start:end] and in_list(text, start) and not text[start:end].isupper() else 0.9


def _sentences(
    text: str, folded: str, pattern: re.Pattern[str], taken: Sequence[tuple[int, int]]
) -> Iterator[tuple[int, int]]:
    """The sentences in which a pattern is found, each once, and none that is taken."""
    seen = list(taken)
    for match in pattern.finditer(folded):
        before = folded[: match.start()]
        if _HARMLESS.search(before) or _NOT_HARM.match(folded, match.end()):
            continue
        if match[0] in ("harmful", "toxic") and _OF_ANOTHER.search(before):
            continue
        start, end = _sentence(text, match.start(), match.end())
        if len(clean(text[start:end])) <= 240 and not any(a < end and start < b for a, b in seen):
            seen.append((start, end))
            yield start, end


def _one_voice(text: str) -> str:
    """The flowing text, in which capitals run on over line ends as well."""
    folded = flowing(text)
    for match in re.finditer(r"(?<=[A-Z])\n(?=[A-Z]{2})", text):
        folded = folded[: match.start()] + " " + folded[match.end() :]
    return folded


_STOPS = later(
    r"[.!;]\s+|\b[a-z]{2,},\s+(?=[A-Z][a-z]+\s(?:is|are|may|can|will|causes?)\b)"
    r"|(?<=[a-z]{3})\.(?=[A-Z][a-z]{2})|\t|\n\n|[•|·]\s|(?<=[^\W\d_])[)\]] (?=[A-Z])"
)


def _sentence(text: str, start: int, end: int) -> tuple[int, int]:
    """The whole sentence around a stretch: back over lines that run into it, on to its full stop."""
    stops = (stop for stop in _STOPS.finditer(text) if stop.end() <= start)
    begin = max((stop.end() for stop in stops if not _closes_bracket(text, stop)), default=0)
    lines = [at for at in range(begin, start) if text[at] == "\n" and not _runs_on(text, at)]
    begin = lines[-1] + 1 if lines else begin
    stop = value_end(text, end)
    colon = _COLON.match(text, stop)
    if colon and not is_label(colon["word"]):  # "if eaten: these are no peas" is no label
        stop = value_end(text, start, colon.end())
    if comma := _COMMA_FOR_STOP.search(text, end, stop):
        return begin, comma.start()
    if outcry := _OUTCRY.search(text, 0, begin):
        begin = outcry.start("cry")
    if text[stop : stop + 2] == "! " and len(text[begin:stop].split()) <= 4:
        further_end = value_end(text, stop + 2)
        stop = further_end if _HARM.search(flowing(text), stop, further_end) else stop
    for further in _FURTHER.finditer(text, end, stop):
        after = flowing(text)[further.end() : stop].split("; ")[0]
        if not _HARM.search(after) and not _THEN.match(after):
            return begin, further.start()
    while text[stop : stop + 1] == "\n" and text[begin:stop].isupper() and _runs_on(text, stop):
        stop = value_end(text, stop + 1)
    return begin, stop


_OUTCRY = later(r"(?i)(?:^|[\n\t•·|]|\. )\s?(?P<cry>(?:danger|warning|caution|careful|attention|beware)!) \Z")
_COLON = later(r"(?P<word>(?: [a-z]+)+) ?: (?=[a-z])")
_COMMA_FOR_STOP = later(r"(?<=[a-z]),\n(?=[A-Z][a-z]+\s(?:[A-Z&]|inc\b))")
"""Before a name, which tells of no danger, a comma at a line's end is a full stop read amiss."""


def _closes_bracket(text: str, stop: re.Match[str]) -> bool:
    """Whether a bracket was opened as well: one that was not is a full stop read amiss."""
    opened = text.rfind("(["[")]".index(stop[0][0])], 0, stop.start()) if stop[0][0] in ")]" else -1
    return opened >= 0 and not re.search(r"[.!?;\t]|\n\n", text[opened : stop.start()])


_OPENS_WARNING = later(
    r"(?P<mark>[A-Z]\W{0,2}\s)?"
    r"(?:(?:Mildly |Highly |Slightly )?Toxic|Harmful|Poisonous|Caution|Warning|All parts)\b"
)
"""A sentence of its own, whatever was read for the stop above; a mark before it may be read as a letter."""


def _runs_on(text: str, at: int) -> bool:
    """Whether the line that ends at `at` runs into the next one."""
    above = re.split(r"[\t\n]", text[:at])[-1].rstrip()
    below = re.split(r"[\t\n]", text[at + 1 :], maxsplit=1)[0]
    if above.endswith((",", "-")):
        return not _OPENS_WARNING.match(below)
    if above.isupper():
        return _capitals_run_on(above, below)
    if not below[:1].islower():
        return False
    return is_torn(above) or not (
        all_small(text, at + 1, at) or ended_on_purpose(above, below, max(len(above), len(below)))
    )


_SUBJECT = later(
    r"\b(?:PARTS?|PLANT|LEAVES|LVS|FOLIAGE|SEEDS?|BERR(?:Y|IES)|FRUITS?|ROOTS?|BULBS?|TUBERS?|SAP|STEMS?"
    r"|FLOWERS"
    r"|PODS?|HIGHLY|VERY|MILDLY|EXTREMELY|SEVERELY|SLIGHTLY|MAY|CAN|WILL|IS|ARE|CAUSES?|CAUSING|SEVERE|SKIN"
    r"|STOMACH|EYE|PROTECTIVE|ALLERGIC|CAUTION|WARNING|DO NOT|DON.T|NEVER|NOT|HUMAN)[:!]?$"
)
_PREDICATE = later(r"(?:IF|WHEN|TO|OR|AND|&|FROM|BY|ON|IN|WITH|FOR|OF|AFTER|UPON|WHICH|THAT|CONSUMPTION)\b")


def _capitals_run_on(above: str, below: str) -> bool:
    """Whether two lines in capitals are one sentence: case tells nothing, so words that lack another must."""
    if not below.isupper() or len(below.split()) > 6 or ":" in below or above.endswith("."):
        return False
    return is_torn(above) or bool(_SUBJECT.search(above) or _PREDICATE.match(below))
