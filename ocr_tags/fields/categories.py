"""What kind of plant the tag says it is: perennial, shrub, herb and the like.

Kind words stand in names ("Tree Mallow"), praise ("a perennial favourite") and places ("herb garden") as
well, so a word counts only alone on its line, after a label, or as the noun of a describing sentence.
"Perennial" holds for some place only; that is for a caution to say.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from ocr_tags import lexicon
from ocr_tags.fields.labels import is_label
from ocr_tags.fields.phrases import Hit, Phrases, cells, flowing, fold, label_phrases, listed
from ocr_tags.fields.values import labelled
from ocr_tags.firms import labelled_firms
from ocr_tags.record import Found, TagText

_WORDS = Phrases(lambda: {word: kind for kind, words in listed("kind").items() for word in words}, shortest=8)
_FRUIT = re.compile(r"\b(?P<fruit>fruit(?:ing)?)[ \n]$")
_FRUITING = frozenset(("tree", "vine", "shrub"))

_LIVES = frozenset(("annual", "perennial", "biennial", "tender_perennial"))
"""How long a plant lives goes before what it is: Perennial grass, Annual vine."""
_PAIRS = frozenset(
    (
        *(("fruit", "vine"), ("fruit", "shrub"), ("fruit", "tree"), ("herb", "shrub"), ("shrub", "rose")),
        *(("conifer", "tree"), ("conifer", "shrub")),
        *(("succulent", "houseplant"), ("fern", "houseplant"), ("vine", "houseplant")),
        *(("succulent", "perennial"), ("herb", "perennial"), ("groundcover", "perennial")),
        *(("vegetable", "annual"), ("herb", "annual"), ("vine", "annual"), ("vine", "perennial")),
    )
)

_LABELS = label_phrases("categories")
_ADJECTIVE = (
    r"(?:hardy|half[- ]hardy|cold[- ]hardy|winter[- ]hardy|flowering|evergreen|semi-evergreen|deciduous"
    r"|ornamental|climbing|"
    r"herbaceous|garden|dwarf|compact|native|woody|fruiting|bedding|perennial|annual|broadleaf"
    r"|summer|fall|tall|small|large|"
    r"tropical|sun|shade|long[- ]lived|low|low-growing|fast-growing|vigorous|rugged|tough|trailing"
    r"|twining|showy|easy|"
    r"easy-care|reliable|handsome|graceful|bushy|upright|rounded|spreading|mounding|colorful|colourful"
    r"|beautiful|lovely|"
    r"hybrid|heirloom|organic|aromatic|fragrant|drought-tolerant|warm-season|cool-season|medium-sized"
    r"|multi-stemmed|short-lived|"
    r"slow-growing|versatile|classic|culinary|edible|patio|specimen|stately|robust|clumping|clump-forming"
    r"|weeping|"
    r"late|early|true|soft|orchard|rustique|resistente"
    r"|full[- ]sun|part[- ](?:sun|shade)|(?:cool|warm|hot)[- ](?:weather|season|climate)|self-(?:fertile"
    r"|clinging"
    r"|seeding|sowing|pollinating)|british|irish|european|north-?west(?:ern)?|north-?east(?:ern)?|south-?east(?:ern)?|south-?west(?:ern)?|midwest(?:ern)?"
    r"|eastern|western|northern|southern|pacific|california|texas|florida|prairie|american|canadian|australian|unusual|grass-?like"
    r"|slow growing|fast growing|quick-growing|carefree|care-free|low-care|low[- ]maintenance|elegant"
    r"|attractive|stunning|striking|popular|spring|winter|autumn|spring-flowering|summer-flowering"
    r"|autumn-flowering|winter-flowering|long-flowering|free-flowering|repeat-flowering|long-blooming"
    r"|early-flowering|late-flowering|broad-?leaved|needled|columnar|pyramidal|narrow|dense|thorny|prickly"
    r"|variegated|scented|marginal|aquatic|alpine|woodland|prairie|rock[- ]garden|shade-loving|sun-loving"
    r"|fruit|nut|street|avenue|specimen|drought tolerant|drought-resistant|clump forming|mat-forming"
    r"|carpeting|creeping|arching|erect"
    r"|semi-woody|wiry|tuberous|rhizomatous|cottage|hardwearing|hard-wearing|adaptable|salad|leafy|root"
    r"|perpetual|everbearing|self fertile|fruit-bearing|indoor|exotic|frost[- ]hardy|semi-hardy|fully hardy"
    r"|wetland|water|pond|bog|meadow|coastal|mountain|seaside|airy|shapely|slim|light|broad|bold|big|great|old"
    r"|new zealand|african|asian|japanese|chinese|himalayan|mexican|mediterranean|alpine"
    r"|wall|stone|foliage|tidy|neat|lax|favou?rite|loose|pretty|immergruner?|sommergruner?|laubabwerfender?"
    r"|winterharter?"
    r"|bluhender?|persistant|caduc|grimpant|very hardy|semi-deciduous|semi-dwarf|miniature|columnar|medium"
    r"|giant|large-leaved|cultivated|wild)"
)
_ADJECTIVES = rf"(?:{_ADJECTIVE}[ ,]{{1,2}}(?:(?:to|or|and) )?){{0,4}}"
_WHOLE = re.compile(
    rf"[\W_]*(?:(?:fr|de|en|nl|es|it|dk|se|gb|uk)\s)?(?:zones?\s?\d+\w?\s"
    rf"|\d+(?: ?[-–] ?\d+)? days )?{_ADJECTIVES}"
)
_TRAIL = re.compile(
    r"(?:[^\w,]|_)*(?:(?:plug |young )?plants?[\W_]*|rustiques?[\W_]*|indigenes?[\W_]*|starts?|starters?"
    r"|seedlings?|plugs?|transplants?|bedding|hedging|elsewhere|no\.? ?\d+|\d{1,2} ?/ ?(?:\d{1,2}"
    r"|\+))?(?:[^\w,]|_)*$"
    r"|\s+zn?\.? ?\d|\s+(?:h|ht)?\.? ?\d[\d.,]*(?: ?[-–] ?\d[\d.,]*)? ?(?:m|cm|ft|in|inch(?:es)?|feet)\b"
    r"|\W{0,3}\(?(?:in )?(?:usda )?(?:hardiness )?zones?\b"
    r"|,? #?\d[\d./]*(?: ?(?:gal|gallon|qt|quart|pt|pint|l|lt|ltr|lit(?:er|re)s?|cm|mm|m|in|inch|ft|pk|pack"
    r"|ct|count)\b|[\"”″'’]| *$)|(?: rustique)?\s?\([^)]*\)?|,? (?:in|for) (?:most|all|many|cold(?:er)?"
    r"|cool(?:er)?|northern)"
    r" (?:zones|areas|climates|regions|gardens|states)\b|\s+aus\s"
    r"|\s?[,•|;–—-]\s(?:zones?|hardy|sun|full|part|shade|height|usda)\b|\s+hardy\b|\s+(?:de|du)\s"
)
_JOIN = re.compile(rf"\s?(?:/|,|&|\+|\bor\b|\band\b|-|–|\bou\b|\bo\b|[|·•]|\n(?!\n))\s?(?:{_ADJECTIVE}\s)?")
_OR_HEDGE = re.compile(r" (?:or|and|/) (?:hedge|hedging|screen)\W*")
_BESIDE = re.compile(rf"\s?[/,&-]?\s?(?:{_ADJECTIVE}\s)?")
_SENTENCE = re.compile(
    rf"\b(?:(?:this|is an?|an?|these|makes an?|our) (?:{_ADJECTIVE},? (?:and )?){{0,4}}(?:[a-z]+-[a-z]+ )?)$"
)
_OPENS = re.compile(rf"(?:^|(?<=[.!;•|] )|(?<=[\t\n])){_ADJECTIVES}(?:[a-z]+-[a-z]+ )?$")
_GOES_ON = re.compile(
    r"(?: bedding| hedging)? (?:(?:for|with|native|that|which|whose|on|in (?:full|part|sun|shade)|bearing"
    r"|grown for|loved by"
    r"|prized"
    r"|ideal|suitable|suited|to \d|up to \d|reaching|growing to|forming)\b(?! (?:gardens?|nursery)\b)"
    r"|(?:or|and) (?:short|long)-lived )|, [a-z]"
)
"""After a kind of plant that opens its sentence: "Deciduous shrub for banks", "Perennial with spikes"."""
_COUNTED = re.compile(
    r"(?:^|[\t\n])[\W_]*\d{1,3} (?:x )?(?:large |dutch |flower |(?:fall|spring"
    r"|autumn)[- ]plant(?:ed|ing) )?$"
)
_OF_PLANT = re.compile(
    r"(?: (?:that|which|with|is|are|grows?|for|has|bears|produces|native|hardy|growing|forming|whose"
    r"|covered|loved|stands?|reach(?:es)?|forms?|spreads?|creeps?|likes?|loves?|needs?|prefers?|comes|flowers"
    r"|carries|gives|lights|fills|will|can|slowly|quickly|usually|often|best|lives|dies|"
    r"blooms?|prized|valued|grown|featuring|offering|offers|adds|thrives|performs|features|makes|returns"
    r"|in zones?|\d+)\b|[.,;:!]| [•·|]|$)"
)
_NOT_ONE = re.compile(
    r"\b(?:as|like|under|around|near|with|to|not|than|unlike|over|through|against|support|along|up|into"
    r"|beneath)\s"
    rf"(?:an?\s|the\s)?{_ADJECTIVES}$"
)


_PART_END = re.compile(
    r"(?i) [/|•·+–—-] |; |(?<=\w), (?=[\d#]|zn?\.? ?\d|zones?\b|annual elsewhere|annual in )|(?<=\w) ?· ?"
)
"""Between what a cell tells of several fields: "Perennial - 3 ft", "FS / 10-12 in. / annual"."""
_PREPOSITION = (
    r"(?:for|of|to|in|on|with|from|like|as|under|between|than|every|into|and|or|at|by|near|is|are)\b"
)
_ANY_WORDS = rf"(?:(?!{_PREPOSITION})[a-z][a-z-]*,? (?:and )?){{0,3}}"
_THIS = re.compile(
    rf"(?<!under )(?<!around )(?<!near )(?<!beneath )(?<!than )(?<!like )\bthis {_ANY_WORDS}$"
    rf"|\bi.?a?m an? (?:\d[\d'’\" ]*(?:to \d[\d'’\" ]*)?(?:ft|foot|m|cm|in)?\.? ?)?{_ANY_WORDS}$"
    rf"|\bone of (?:our|the) {_ANY_WORDS}$|(?:^|[.!?•*] |[\t\n])an? {_ANY_WORDS}$"
)
"""The plant itself, whatever is said of it: "this tidy annual", "A lax shrub", "I'm a 10 ft vine"."""
_HEADLESS = re.compile(
    r"(?:^|[.!?] |[\t\n])(?!(?:plant|prune|keep|water|stake|feed|place|move|train|support|protect|grow|use"
    r"|shade|cut|set"
    r"|let|give|tie|under|near|around|beneath|like|as|with|for|this|these|not?)\b)"
    rf"(?:(?!{_PREPOSITION})[a-z][a-z-]+,? (?:and )?){{1,3}}$"
)
_OF_HEADLESS = re.compile(r" (?:with|that|which|whose|bearing|grown for|\d)\b")
"""Of "Dense prostrate shrub with red flowers", which no article opens."""
_OF_THIS = re.compile(
    r"[.,;:!(]| [-–—•·|(]| (?:that|which|with|is|are|for|has|bears|native|hardy|whose|where|it|to|from"
    r"|up to|at|of"
    r"|in|on|by|when|after|before|and|but|an?|the|thrives|loves?|likes|needs|will|may|can|blooms?|grows?"
    r"|gives|makes"
    r"|reach(?:es)?|ideal|perfect|excellent|great|[a-z]{3,}(?:ed|ing)|[a-z]{2,}ly|stands?|forms?"
    r"|\d+)\b(?! (?:gardens?|border"
    r"|nursery)\b)|$"
)


def read_categories(tag: TagText) -> Iterator[Found[str]]:
    """Each kind the tag names, once; where a label says it, no other word does.

    >>> [found.value for found in read_categories(TagText("Hardy. This compact shrub is evergreen."))]
    ['shrub']
    >>> [found.value for found in read_categories(TagText("Plant type: Perennial / Annual"))]
    ['perennial', 'annual']
    >>> list(read_categories(TagText("A perennial favourite for the herb garden")))
    []
    """
    text = tag.string
    folded = fold(text)
    firms = [span for _, span in labelled_firms(text)]
    hits = [
        hit
        for hit in _WORDS.find(text)
        if not re.match(r"['’]s\b", folded[hit.end :])
        and (folded[hit.start : hit.end] not in _DOTTED or folded[hit.end : hit.end + 1] == ".")
        and not any(start <= hit.start < end for start, end in firms)
    ]
    values = [(found.start, found.end) for found in labelled(text, _LABELS)]
    graded = [(hit, _certainty(text, folded, hits, hit, values)) for hit in hits]
    graded = [*_with_lives(folded, graded)]
    told = any(certainty == LABELLED for _, certainty in graded)
    seen: set[str] = set()
    for hit, certainty in graded:
        kinds = [(hit.value, (hit.start, hit.end))]
        if hit.value in _FRUITING and (fruit := _FRUIT.search(folded, 0, hit.start)):
            kinds.append(("fruit", fruit.span("fruit")))
        for kind, span in kinds if certainty == LABELLED or (certainty and not told) else ():
            if kind not in seen:
                seen.add(kind)
                yield Found(kind, span, certainty * hit.certainty)


def _with_lives(folded: str, graded: list[tuple[Hit[str], float]]) -> Iterator[tuple[Hit[str], float]]:
    """The words again; how long it lives is as sure as the kind it stands before: a perennial vine."""
    for at, (hit, certainty) in enumerate(graded):
        for after, its in graded[at + 1 : at + 2] if hit.value in _LIVES else ():
            certainty = max(certainty, its) if folded[hit.end : after.start] == " " else certainty
        yield hit, certainty


_Kind = Hit[str]
LABELLED = 1.0
_NAMES_TOO = frozenset(("rose",))
"""Kinds that are common names as well: they count behind a label, or where the name is said more fully."""


def _is_kind_of_rose(folded: str, start: int, end: int) -> bool:
    """Whether "Shrub rose", or "Rose" beside a name like Beach Rose, is all a cell says."""
    cell = folded[start:end].strip(" •·*-.|")
    named = re.search(r"(?<!shrub) rose[ \W]*$", folded, re.M)
    return cell == "shrub rose" or (cell == "rose" and named is not None)


def _labels_in_capitals(text: str) -> int:
    """How many lines are labels in capitals, as stand over their values."""
    return sum(line.isupper() and is_label(line) for line in re.split(r"[\t\n]+", text))


_PARTS_TOO = frozenset(("fruit", "vine"))
"""Kinds that are parts of plants as well, and so labels."""
_USES_TOO = frozenset(("groundcover",))
"""Kinds that tags list among the uses too, one a line."""
_SENTENCE_OF_ITS_OWN = re.compile(
    r"(?:^|(?<=[.!;] )|(?<=[.!;]\n)|(?<=\n)(?=[A-Z])|(?<=\t))(?:[^.!;\t\n]|\n(?=[a-z])){3,60}[.!;]"
)


def _sentences(text: str) -> list[tuple[int, int]]:
    """Short sentences with their end: "Hardy perennial." in running text."""
    return [match.span() for match in _SENTENCE_OF_ITS_OWN.finditer(text)]


def _certainty(text: str, folded: str, hits: list[_Kind], hit: _Kind, values: list[tuple[int, int]]) -> float:
    """How sure it is that this word says what the plant is; 0 when it belongs to something else."""
    if any(start <= hit.start < end and _fills(folded, start, end, hits, hit) for start, end in values):
        return LABELLED
    start, end = next(cell for cell in cells(text) if cell[0] <= hit.start < cell[1])
    if hit.value in _NAMES_TOO and not _is_kind_of_rose(folded, start, end):
        return 0.0
    beside = text[: hit.start].rsplit("\n", 1)[-1].rsplit("\t", 2)
    if hit.value in _PARTS_TOO and (
        text[hit.end : hit.end + 1] == "\t"
        or (len(beside) > 1 and is_label(beside[-2]))
        or (text[hit.start : hit.end].isupper() and _labels_in_capitals(text) > 2)
        or (text[hit.end : hit.end + 1] == "\n" and is_label(text[hit.end + 1 :].split("\n")[0]))
    ):
        return 0.0  # "Fruit" over "Colour", and a value beside
    if _is_offer(folded, [other for other in hits if start <= other.start < end]):
        return 0.0
    if _fills(folded, start, end, hits, hit):
        return 0.0 if hit.value in _USES_TOO or _ends_name(text, start, end) else 0.9
    if (part := _part(text, start, end, hit.start)) and _fills(folded, *part, hits, hit):
        return 0.0 if hit.value in _USES_TOO else 0.8
    sentence = next((part for part in _sentences(text) if part[0] <= hit.start < part[1]), None)
    if sentence and _fills(folded.replace("\n", " "), *sentence, hits, hit):
        return 0.8
    if _opens_sentence(text, folded, hit):
        return 0.8
    flow = flowing(text)
    before = flow[max(0, hit.start - 70) : hit.start]
    if _THIS.search(before) and _OF_THIS.match(flow, hit.end):
        return 0.8
    if _HEADLESS.search(before) and _OF_HEADLESS.match(flow, hit.end):
        return 0.75
    flow, before = flow.replace("\n", " "), before.replace("\n", " ")
    opens = None if _NOT_ONE.search(before) else _SENTENCE.search(before)
    return 0.85 if opens and _OF_PLANT.match(flow, hit.end) else 0.0


def _ends_name(text: str, start: int, end: int) -> bool:
    """Whether the line above and this one make a common name: "Japanese Forest" and "Grass"."""
    above = (
        text[text.rfind("\n", 0, max(start - 1, 0)) + 1 : start - 1] if text[:start].endswith("\n") else ""
    )
    words = above.replace("\t", " ").split()
    runs = (
        " ".join([*words[-number:], text[start:end].strip()]) for number in range(1, min(len(words), 3) + 1)
    )
    own = words and not _WHOLE.fullmatch(fold(f"{words[-1]} "))
    return bool(own) and any(lexicon.is_common_name(run) for run in runs)


def _opens_sentence(text: str, folded: str, hit: _Kind) -> bool:
    """ "Evergreen shrub for rock gardens", "10 bulbs": no article, but the noun comes first and goes on."""
    if hit.value == "bulb" and _COUNTED.search(folded, 0, hit.start):
        return bool(re.match(r"[^\w\n\t]*(?:(?:size )?\d|[-–/]|$|[\n\t])", folded[hit.end :]))
    opening = _OPENS.search(folded, 0, hit.start)
    if not opening or hit.value in _USES_TOO or folded[hit.start : hit.end].endswith("s"):
        return False
    begin = opening.start()
    torn = text[begin - 1 : begin] == "\n" and text[begin].islower() and text[begin - 2] not in ".!?:"
    alone = opening.end() == begin and hit.value == "fruit"
    goes_on = _GOES_ON.match(folded.replace("\n", " "), hit.end)
    if goes_on and goes_on[0].startswith(",") and text[goes_on.end() - 1].isupper():
        return False  # a name and its place
    return not torn and not alone and goes_on is not None and _WORDS.whole(_next_word(text, goes_on)) is None


def _next_word(text: str, joint: re.Match[str]) -> str:
    """The word at the end of what joins on: in "Shrub, tree or hedge" a kind, and the clause a list."""
    return text[joint.end() - 1 :].split(maxsplit=1)[0]


_USE_LABEL = re.compile(r"[^\W\d]+(?: [^\W\d]+){0,2} ?:")


def _part(text: str, start: int, end: int, at: int) -> tuple[int, int] | None:
    """The part of a cell in which `at` lies, when marks divide it; of "Uses: hedge / shrub" none."""
    cuts = list(_PART_END.finditer(text, start, end))
    if not cuts or _USE_LABEL.match(text, start):
        return None
    begins = [start, *(cut.end() for cut in cuts)]
    ends = [*(cut.start() for cut in cuts), end]
    part = next(((one, other) for one, other in zip(begins, ends, strict=True) if one <= at < other), None)
    return None if part and text[slice(*part)].casefold() == "fruit" else part  # "Fruit - red in autumn"


def _is_offer(folded: str, inside: list[_Kind]) -> bool:
    """Whether a line tells what a nursery grows: "Trees • Shrubs • Perennials"."""
    several = len({hit.value for hit in inside}) > 2
    return several and all(folded[hit.start : hit.end].endswith("s") for hit in inside)


_DOTTED = frozenset(("per", "ann"))
"""Short for perennial and annual only with a full stop."""


def _fills(folded: str, start: int, end: int, hits: list[_Kind], hit: _Kind) -> bool:
    """True when kinds, their adjectives and a zone are all there is between `start` and `end`."""
    inside = [other for other in hits if start <= other.start < end]
    if hit not in inside or not _WHOLE.fullmatch(folded, start, inside[0].start):
        return False
    for one, other in pairwise(inside):
        gap = folded[one.end : other.start]
        beside = len(gap) > 1 and _BESIDE.fullmatch(gap)
        paired = gap == " " and (one.value in _LIVES or (one.value, other.value) in _PAIRS)
        if not (beside or paired or _JOIN.fullmatch(gap)):
            return False
    rest = folded[inside[-1].end : end]
    return bool(_TRAIL.match(rest) or (len(inside) == 1 and _OR_HEDGE.fullmatch(rest)))
