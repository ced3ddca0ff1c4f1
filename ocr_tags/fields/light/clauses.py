"""Whether a clause or a cell speaks of light and nothing else, so that one word in it is enough."""

from __future__ import annotations

from ocr_tags.fields.phrases import cells, flowing
from ocr_tags.patterns import later

CONDITION = later(
    r",? \(?(?:if|when|where|while|in|for|on|up|down)\b(?! (?:full|part|deep|light|to)\b)"
    r"[^.;\n\t()]{2,24}\)?[,;] (?:(?:and|or|but|with) )?(?:(?:stands|takes|bears|accepts|will take) )?"
)
_WILL_TAKE = r"it(?:['’]ll| will| can)? (?:takes?|bears?|stands?|tolerates?) "
BEST_THEN = later(
    r" (?:(?:is|are) )?(?:best|ideal|preferred|favou?red|perfect)(?: of all)?"
    rf"(?:[,;:]? (?:(?:and|but|though|although|with|or) )?(?:{_WILL_TAKE})?|\. {_WILL_TAKE})"
    r"|,? (?:and |but )?(?:leaning|lax(?:er)?|loos(?:e|er)|tall(?:er)?|short(?:er)?|lank(?:y|ier)|slow(?:er)?"
    r"|sparser|leggy|leggier|flopp(?:y|ier)|small(?:er)?|open|soft(?:er)?) in "
)
"""Between the light that is best and the other that will do: "sun is best, part shade OK"."""

ELSEWHERE = later(r"(?:[;,]| \()[ ]?(?:or |but |and |greener in |paler in |with )?")
ON_CONDITION = later(
    r",? (?:only (?=in|where|when|if)|just (?=where|when|if))?"
    r"(?:in|by|for|where|when|while|if|on|at|will do|is fine|ok\b|okay|keeps?|also|too|works)\b"
    r"(?! full| part)"
    r"|\)"
)
"""A second light behind a semicolon holds on a condition of its own: "Sun; light shade in hot gardens"."""
"""Between two words of light of which each holds on a condition: "full sun if wet, part sun if dry"."""

ALSO = later(
    r"[.,;]?[ \n](?:(?:but|though|although|and|yet)[ \n])?(?:(?:it|they|she|he)[ \n])?(?:(?:will|can)[ \n])?"
    r"(?:also[ \n])?(?:forgiv(?:es?|ing)|allow(?:s|ing)?|permit(?:s|ting)?|gets?[ \n]by[ \n](?:in|with)"
    r"|put(?:s|ting)?[ \n]up[ \n]with|cop(?:es?|ing)[ \n]with|accept(?:s|ing)?"
    r"|manag(?:es?|ing)[ \n]in|takes?|(?:is[ \n])?(?:fine|happy|content|ok)[ \n]in"
    r"|(?:does|do)[ \n](?:fine|well|ok)[ \n]in"
    r"|makes?[ \n]do[ \n]with|lives?[ \n]with)[ \n]"
)
"""Between the light a plant wants and the least it is content with (common practice, no source)."""

LIGHT_LABEL = later(r"(?:^|[\t\n]|[.;•|] )(?:LIGHT|Light) ?/\s*$")
"""A label before another ("LIGHT / Sun"), not half of a range."""

HALF = later(
    r"\b(full|fs|part|partial|partly|light(?! ?[-–])|half|semi|dappled|filtered|deep|dense|heavy|all[- ]day)"
    r"(\s*(?:[-–/&]|(?:, ?)?(?:\bto\b|\bor\b|\band\b))\s*)$"
)
_LABEL_WORD = later(r"(?:light|sun|sunlight|exposure|exp|luz|licht|exposition|exposicion)")
_LEAD = later(
    r"(?:(?:en|de|fr|nl|gb|uk|it|es|da|dk|sv|se)(?:[:–—-]| [–—-])? )?"
    r"(?:(?:it|they|she|he|i)(?: really| just| only)? (?=wants?|needs?|likes?|loves?|asks?|prefers?))?"
    r"(?:(?:an? )?(?:(?:hardy|tender|half-hardy|evergreen|deciduous|tough) )*"
    r"(?:annual|perennial|biennial|shrub|tree|climber|vine|fern|grass|herb|bulb|plant)s? (?=for|in))?"
    r"(?:best |grows? |does |performs |plant |place |needs? |prefers? |likes? |loves? |enjoys? |thrives? "
    r"|requires |asks (?:only )?for |grow it |give (?:it|them|her|him|me|us) |ideal "
    r"|(?:must|has to|have to) have |craves |demands |insists on |(?:can't|can’t|cannot|won't"
    r"|won’t) do without "
    r"|(?:likes|loves|wants|needs) it |suits |wants? |happiest |happy |choose |give |position |site "
    r"|suitable |suited )*"
    r"(?:(?:(?:set|space|plant|thin|sow)\b[^.;\n\t]{0,28}\b)?apart )?"
    r"(?:(?:(?:south|west|east|north)(?:[- ]facing)?(?: (?:or|and) )?){1,2} ?(?:walls?|fences?|aspects?"
    r"|borders?"
    r"|slopes?|sides?)(?: in|,) )?"
    r"(?:any(?: aspect| site| position| soil)?[,:;]? )?(?:best )?(?:in|for|to)?:?(?:(?:^| )?\b(?:an?|any"
    r"|the))?(?:(?:^| )(?:open|warm|sheltered|hot"
    r"|airy)(?:,? and\b|,)?)*"
    r"[\W\d_]*"
)
_PLACE_AFTER = later(
    r"(?:[ ,]+(?:(?:and|or|but) )?(?:sheltered|warm|dry|moist|open|well[- ]drained|hot|cool|airy|damp"
    r"|protected|exposed|frost[- ]free|draught[- ]free|south[- ]facing|west[- ]facing)){0,3},? (?:spots?"
    r"|sites?|positions?|locations?|places?|areas?|borders?|beds?|gardens?"
    r"|banks?"
    r"|walls?|patios?|terraces?|balcon(?:y|ies)|decks?|courtyards?|rocker(?:y|ies)"
    r"|corners?|aspects?|situations?|exposures?|slopes?|conditions)\b(?! (?:indoors|until|while|centre"
    r"|center|nursery"
    r"|nurseries|growers|farms?|plants|collection|ltd|llc|inc|co\b))"
)
"""After "sunny" or "shady": where the plant is to stand."""
_TRAIL = later(
    r"[\W\d_]*(?:hours|hrs?|location|lage|standort|plats|plek|standplaats|spot|position|areas?|exposure|daily|day|only|best|lover)?[\W\d_]*"
)

# What stands before or behind a light word and turns its meaning.
SHIELD = later(
    r"(?:(?<!-)\bnot?\b|\bavoid\w*|\bprotect\w*|\bexcept(?:ing)?\b"
    r"|\b(?:any(?:thing|where)?|all|every(?:thing|where))(?: \w+)? but\b"
    r"|(?<!anywhere )(?<!anything )(?<!everything )(?<!range )(?<!ranges )(?<!ranging )\bfrom\b"
    r"|\bshelter\w*|\bout of\b|\btolera\w+|(?<![.!;] )(?<!\A)(?<!\n)\btakes\b"
    r"|\bburn\w*|\bwithout\b"
    r"|\bless than\b|\bevite\w*|\bevitar?\b|\bkein\w*|\bgeen\b|\bprovide (?:some|light|afternoon|midday"
    r"|a little)\b|\bneeds? afternoon"
    r"|\bbright(?! (?:light|spot|place|position|room)[,;]))(?: ?:| ?\n)?"
    r"(?:(?!\b(?:winds?|gales?|draughts?|drafts?|frosts?|rain|cold)\b)[^.;:\n\t]){0,24}\Z"
)
"""What the light named is kept from the plant, or only borne."""

TOLERANT = later(
    r"\s*toleran[tc]|\s*tolerated| ?(?:tolera|avoid|may burn|burns|can scorch|scorch|kills|harms"
    r"|weakens|reduces|means (?:less|fewer)|gives fewer)"
    r"| ?(?:express|garden|lover|collection|mix\b)"
)

HOT = later(r"\s*(?:in|where|si|if|up|down)\b[^.;\n\t]{0,24}(?:hot|south|warm|desert|north|cool|inland|heat)")

SUN_SHADE = later(
    r"(?<!part )(?<!partial )(?<!partly )\bsun ?"
    r"(?:/ ?shade\b|(?:or|and|&) ?shade(?= (?:needs|requirements?|preference)\b| ?[:|\t—–]))"
)

HOURS_AFTER = later(
    r" ?[:=] ?(?:yes|please|always)\b| ?[:=] ?(?:at least |min(?:imum|\.)? |(?:more|less) than "
    r"|[<>≥≤] ?)?\d{1,2}\b(?! ?(?:cm|in|ft|m)\b)"
)
"""After "Full sun": its meaning, which makes it no label."""

NUMBER_AFTER = later(
    r" ?\d(?![\d.,–-]* ?(?:cm|m|in|ft|feet)\b)"
    r"(?!\d?[ +–-]{0,3}(?:\d{0,2} ?\+?)? ?(?:h\b|hours?|hrs?|std|uur|tim))"
)

HALF_AFTER = later(r"\s(?:full|part) ?[/&–-] ?(?:part|full)\b")

ROOM_AFTER = later(r"[ \n](?:window|windowsill|sill|room|(?:spot )?indoors|conservatory)")

SOIL_AFTER = later(r" (?!(?:a|o|y|to|till?|et|e|og|och|eller)\b)[^\W\d_]")
"""French soil, not the sun of Spain and the North: "Sol sec, calcaire"."""

FAR_END_LOST = later(
    r"(?: ?[-–—/&]| ?\ba\b|[ \n]?\b(?:to|or|bis|tot|till)\b) ?(?:(?:part|partial|partly|light|half"
    r"|full)\b)?(?= ?(?:[\t\n]|$))"
    r"| (?:to|or|and) (?:part|partial|partly|light|half|full)(?= [^\W\d_]+ ?:)"
    r"|,? tol\. ?(?:(?:part|light|half|day)\b|(?=[\t\n]|$))"
)

NEAR_END_LOST = later(
    r"(?:^|[\t\n])(?:to|or|bis|tot|till|a) $"
    r"|(?<!\w)(?!(?:full|part|half|light|dappled|filtered|deep|dense|heavy|semi|day|adapt|suit|expos|mov"
    r"|acclimat|tolera|accustom|respon|used|next"
    r"|due)\w*\s)\w+\s(?:to|till) $"
    r"|[^\W\d_] or\n$"
)


SUN_LOST = later(r"\bsun(?:(?:shine|light|ny) (?:or|to|and|[&/]) (?:\w+ )?| (?:or|to|and|[&/]) \w+ )$")
"""Before shade: the sunny end of a range, in other words than those of light ("sunshine or half shade")."""


def led(words: str) -> bool:
    """True when nothing but "best in", "full to" or the like stands between label and light."""
    return bool(_LEAD.fullmatch(words) or HALF.search(words))


_CLAUSE_START = later(r"[.;!] |[\t\n|•·]|(?<= )[/+] ")
_WANTS_TOO = (
    r"(?:sand|gravel|grit|compost|muck|lots|plenty|neglect|heat|warmth|shelter|water|drainage|space|room|air"
    r"|wind|good|rich|moist|dry|lean|poor|gritty|sharp|well|humid\w*|moisture)\b"
)
_EMPHASIS = (
    r"(?:and )?(?:(?:we|i) (?:do |really )?mean (?:it|that)|(?:lots|plenty|loads|heaps|tons|masses"
    r"|buckets) of it"
    r"|the (?:more|hotter|brighter|sunnier|deeper|longer)\b|nothing (?:less|but|else)\b|no (?:less"
    r"|exceptions)\b"
    r"|please\b|always\b|all day\b|every day\b|essential\b|a must\b|(?:is |are )?(?:required|essential"
    r"|a must|vital"
    r"|best|ideal|preferred)\b)"
)
"""How the trade presses a point, which adds no other."""
_CLAUSE_END = later(
    rf" ?(?:[.;\t\n|•·]|$|/ (?=[^\n\t])|\+ (?=\d|zones?\b|{_WANTS_TOO})|\(| – )"
    r"|,? (?:(?:and|in) )?[^.,;\n\t]{0,32}\b(?:soils?|ground(?! ?cover)|loam|earth)\b"
    r"|(?:,| and| &) (?:shelter|warmth|heat|wind|moisture|cool(?:ness)?(?: roots)?|humidity|company|room"
    r"|space"
    r"|privacy|damp|protection)\b"
    r"|(?:,| &| and| \+) (?:sheltered|warm|open|moist|dry|damp|hot|airy|dryish|lean|poor|exposed"
    r"|frost[- ]free|free[- ]draining|well[- ]drained|plenty(?: of it)?) ?(?:[.;:,\t\n]|$)"
    r"|(?:,? (?:if|when|where|until|unless) [^.;\n\t]{2,20})? (?:to|for) (?:best |good |more )?(?:fruit"
    r"|flower|bloom|crop|colou?r|berr)\w*"
    r"|, (?:or|but|not|never|with|at least) (?!shade|part|full|light)"
    rf"|(?:,| and| &) {_WANTS_TOO}"
    rf"|(?:,| [-–—])? {_EMPHASIS}"
)


def fills_clause(folded: str, start: int, end: int) -> bool:
    """ "Thrives in sun, but tolerates part shade", "Zone 4. Sun.": the clause tells of light and no more."""
    before = _CLAUSE_START.split(folded[:start])[-1].lstrip()
    led = _LEAD.fullmatch(before)
    return bool(led and (_CLAUSE_END.match(folded, end) or (before and folded[end : end + 1] == ",")))


def in_place(text: str, start: int, end: int) -> bool:
    """ "For a shady spot", "a sunny, sheltered position"."""
    flow = flowing(text)
    return flow[start:end] in ("sunny", "shady", "shaded") and bool(_PLACE_AFTER.match(flow, end))


def fills_cells(text: str, folded: str, start: int, end: int) -> bool:
    """True when the lines the statement stands on say nothing else."""
    touched = [cell for cell in cells(text) if cell[0] < end and cell[1] > start]
    before, after = folded[touched[0][0] : start], folded[end : touched[-1][1]]
    begins = _LEAD.fullmatch(before) or HALF.fullmatch(before) or _LABEL_WORD.fullmatch(before.strip(" :"))
    return bool(begins and _TRAIL.fullmatch(after))
