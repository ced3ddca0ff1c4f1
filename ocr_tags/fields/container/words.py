"""The words and figures by which pots, packs and plants without a pot are sold.

Sizes, classes and the words for pots are common practice of the trade, no source.
"""

from __future__ import annotations

from ocr_tags.patterns import later

NUMBER = (
    r"(?:(?<!\w)[il](?= ?(?:gal|l\b|qt|quart|pt))|\d{1,3}(?:[.,]\d{1,2})?|(?<![\d.])\.\d{1,2})"
    r"(?: ?[-/] ?\d/\d| \d/\d| ?[½¼¾])?"
)
LENGTH = r"(?:inch(?:es)?|in\b\.?|\"|”|″|''|-inch|-in\b\.?|cm\b|mm\b|po\b|pouces?)"
VOLUME = (
    r"(?:gal(?:lons?|ones|[oó]n\b|\b\.?)|-gal(?:lon|\b\.?)|-lit(?:re|er)s?\b|qts?\b\.?|quarts?"
    r"|pts?\b\.?|pints?|l\b"
    r"|lt\b|ltr\b|litres?"
    r"|liters?|litros?|liter|ml\b)"
)
PRICE = (
    r"(?:(?:us|ca|au|nz|a|c)?\$|£|€|eur\b|gbp\b) ?\d{1,4}(?:[.,]\d{2})?(?: ?(?:usd|cad|aud|nzd)\b)?"
    r"(?: ?(?:each|ea\.?))?"
)
PRICED = rf"(?:{PRICE}|\d{{1,3}}[.,]\d\d ?[$€£]|\d{{1,2}} (?:bucks|dollars)\b)"
"""A price with its sign before or behind it."""
WORDED = "one|two|three|five|seven|ten|fifteen"
"""Gallons that pots are made in, in words."""
_ENDS = r"(?= ?(?:[\n\t.,;|/($£€]|$))"
POT = (
    r"(?:pots?|containers?(?![ -]grown)|cont\.|[a-zäöü]*topf|potter?|kruka|tray|macetas?|contenants?"
    r"|conteneurs?|godets?"
    r"|nursery pot|tree ?pot|plug"
    r"|band|basket|hanging basket|tub(?:e ?stocks?|es?)?|bowl|pan(?= ?(?:[\n\t,;|/($£€]|$))|planter"
    r"|planter bag|(?:grow |poly )?bag(?! of)"
    r"|(?:square|round)(?= ?(?:[\n\t.,;|/($£€]|pot|$)))"
)
_MATERIAL = r"(?:terra-? ?cotta|clay|ceramic|plastic|glazed|peat|coir|fibre|fiber)"
MADE_WORD = (
    rf"(?:square|sq\.?|round|rnd\.?|nursery|trade|deep|long|tall|grower(?:.?s)?(?= pot)|{_MATERIAL}"
    r"|aquatic|paper|jute"
    rf"|fabric"
    r"|coco|(?:cow-?)?manure|decorative|azalea|hanging|plantable|net|mesh|patio|starter|recycled|bamboo"
    r"|peat-free"
    r"|self-watering|bio-?degradable|compostable|gift"
    r"|clear|see-through|trellis|grande|premium|thermoformed|eco)"
)
MADE_OF = rf"(?:{MADE_WORD}[ -]){{0,2}}"
_POT_FIRST = (
    r"(?:pot|[a-zäöü]*topf|maceta|cubeta|contenedor|contenant|conteneur|container|godet|potmaat|kruka|krukke"
    r"|potte|vaso"
    r"|vase)"
)
POTTED = later(
    rf"(?<![\w.,/#$'’%½¼¾¥-]){NUMBER} ?(?:{LENGTH}|{VOLUME})"
    rf"(?: ?[(/] ?{NUMBER} ?(?:{LENGTH}|{VOLUME})\)?)?(?: ?|\n(?=[a-z]))"
    rf"{MADE_OF}{POT}\b(?![ :]{{1,3}}\d{{1,2}}(?:[.,]\d)? ?(?:{LENGTH}|{VOLUME}))"
    rf"|(?<![\w.,/#$'’%½¼¾¥-])\d{{1,2}}(?:\.\d)?[ -]?(?:fl\.? ?)?oz\.? ?{MADE_OF}(?:pot|cup)\b"
    rf"|(?<![\w.,/#$'’%½¼¾¥-]){NUMBER} ?{LENGTH} ?(?:pt\b(?!\.? ?(?:sun|shade|sh\b))\.?|hb\b){_ENDS}"
    rf"|(?<![\w.,/x])\d{{1,2}} ?[x×] ?\d{{1,2}}(?: ?[x×] ?\d{{1,2}})? ?{LENGTH} ?"
    rf"{MADE_OF}(?:tree ?)?(?:pots?|band)\b"
    rf"|(?<![\w.,/x])\d{{1,2}} ?[x×] ?\d{{1,2}} (?:cm )?{MADE_OF}(?:basket|crate)\b"
    rf"|(?<![\w$])(?:#\s?|(?:number |no\.? ?)(?=[1-357]\b|10\b|15\b|20\b|25\b))\d{{1,2}} "
    rf"{MADE_OF}(?:{POT}|cont)\b"
    rf"|\b{_POT_FIRST}(?: de| ø)? {NUMBER} ?(?:{LENGTH}|{VOLUME})(?!\w)(?!\.? ?(?:wide|deep|apart|or ))"
    rf"|(?:^|(?<=[\n\t]))(?:(?:tree|rose|deep|long|nursery|square|round|self-watering) ?)?{_POT_FIRST}"
    rf",? {NUMBER} ?{LENGTH} ?(?:tall|high|deep|across){_ENDS}"
    rf"|(?:^|(?<=[\n\t]))(?:{_MATERIAL}|paper|coco|fabric|square"
    rf"|round) {_POT_FIRST}, ?{NUMBER} ?{LENGTH}(?!\w)"
    rf"|(?<![\w.,])p ?(?:[7-9]|1\d) pots?\b"
    rf"|\b(?:(?:{WORDED})[- ])?gallon (?:pot|can|container)\b|\bquart pot\b"
    rf"|\b{_POT_FIRST} [ø∅⌀] ?{NUMBER}(?: ?(?:cm|mm)\b)?(?!\w)"
    rf"|(?<![\w$])[øº∅⌀] ?{NUMBER} ?(?:cm|mm)\b|(?<![\w.,/#$-]){NUMBER} ?cm ?[ø∅⌀]"
)
_COUNT = r"(?:\d{1,3}|one|two|three|four|five|six|eight|nine|ten|twelve|a dozen)"
_YOUNG = (
    r"(?:plants?|plugs?|bulbs?|seedlings?|tubers?|corms?|roots?|sets|crowns?|rhizomes?|bareroots?|cloves?"
    r"|transplants?|starts|canes|whips|cuttings)"
)
PACK = later(
    r"(?<![\w-])(?:(?:jumbo|mini|maxi|super|giant) (?=\d|four|six))?"
    r"(?:\d{1,2}|four|six|jumbo|half) ?[- ]?(?:packs?|pk|pak)\b\.?|\b(?:10 ?x ?20|1020|306|406|504|606|804"
    r"|806|1204|1206|1801|3601) (?:flat|tray)\b"
    r"|\b(?:bare[- ]root |cell |plug )?(?:flat|pack|package|pkg\.?|tray|bag|box|bundle|punnet|strip"
    r"|sachet|pot) of "
    rf"{_COUNT}(?: (?:large |small |jumbo |garden ready |rooted )?(?:{_YOUNG}|cells|liners))?\b"
    r"(?! ?(?:cm|mm|in\b|inch|\"|l\b|lit|kg|lbs?\b|oz|g\b))"
    rf"(?:, {NUMBER} ?{VOLUME})?"
    rf"|(?<!\w){_COUNT}[- ](?:ct|count|cells?|plants?|seedlings?)\b\.? (?:plug |young |cell |strip |jumbo )?"
    r"(?:flat|tray|pack|bag|box|tub|punnet|strip)\b(?: insert)?"
)
CELLS = (
    r"(?:\d{2,3}[- ](?:cells?|count|ct\b\.?)|[2-9]-cell)(?: deep| plugs?| trays?| flats?)?"
    r"|\d{2,3}-(?:deep|long)-cell(?: plugs?)?|\d{1,3} cells? ?/ ?\d{1,3} alv[ée]oles"
)
COUNTED = later(
    rf"{_COUNT} {NUMBER} ?{LENGTH} (?:cells?|plugs?|pots?)\b"
    rf"|{_COUNT} {_YOUNG} in an? (?:{NUMBER} ?{LENGTH} )?{MADE_OF}"
    r"(?:net|bowl|pot|pan|basket|bag|box|tray|punnet)"
    r"|tray \d{1,3} ?[x×] ?(?:p ?\d{1,2}|\d{1,2}(?:[.,]5)? ?cm)|\d{1,3} bare-?root plants"
    rf"|(?:(?:jumbo|big|large|small|mini|deep|square|round) )?(?:{_MATERIAL}|paper|cow|compostable) pots?\b"
    rf"|(?:[2-9]|[1-9]\d|\d{{3}}) (?:rooted )?plug(?:s|[ -]plants)\b|{CELLS}|\d{{2,3}} ?/ ?(?:flat|tray)\b"
)
"""Plugs, and cells of a tray, sold as one: only as all that a cell or part of a line says. Other counts
("25 bulbs") tell how many, but not in what."""
SEVERAL = rf"{_COUNT} {_YOUNG}"
STRIP = later(
    r"(?:[2-9]|1[0-8]|2[0145]|three|four|six|eight|nine|ten|twelve)"
    r" (?:(?:young|vegetable|veg|flower|herb|bedding|garden|plug|rooted) )?"
    r"(?:plants|seedlings|starts|transplants|plugs)"
)
"""How many young plants a pack or punnet holds, all a cell says beside the price: so bedding and vegetables
are sold (common practice, no source)."""
TRAYED = later(
    rf"(?:^|(?<=[\n\t]))(?P<size>{NUMBER} ?{LENGTH}) ?[|·•,/–-] ?"
    r"\d{1,3} ?(?:per|/|to (?:a|the)) ?(?:tray|flat|case|shelf)\b"
)
"""A length before so many to the tray is that of their pots."""
# PB sizes are planter bags of New Zealand; P, C, CO and T stand before sizes of European pots, and 01G and
# the like are gallons on the labels that tills print.
CLASS = later(
    rf"(?:#\s?(?:100|1\d|[2346]5|[2-4]0|[1-9])(?!\d)(?: (?:trade )?(?:gallon|gal\b\.?|can))?"
    rf"|(?:trade )?(?:{NUMBER}|{WORDED}) ?(?:trade )?{VOLUME}"
    r"|p ?(?:0[.,]5|7|8|9|10|11|12|13|14|15|17|19)(?! ?(?:l|lt|ltr|lit(?:re|er))\b|[.,]\d)"
    r"|p ?\d{1,2}(?:[.,]\d{1,2})? ?(?:l|lt|ltr|lit(?:re|er))\b"
    r"|c ?(?:[1-9]\d|[1-9])(?!\d)(?:[.,][05])?(?: ?(?:l|lt|ltr|lit(?:re|er))\b)?"
    r"|pb ?(?:3/4|1[.,]5|2|3|5|6[.,]5|8|10|12|18|25|28|40|60|95|150)|(?:trade )?gallon|trade gal\b\.?"
    r"|quart|qt\.?|pint|sp ?[1-5]"
    r"|0[1-9] ?g\b)"
)
CLASSES = later(
    rf"{CLASS.pattern}(?: ?[/(] ?{CLASS.pattern}\)?| ?\({NUMBER} ?{LENGTH}(?: (?:square|sq\.?|round))?\))?"
)
NURSERY_CLASS = later(r"#\s?(?:[1-357]|10|15|20|25|45|65)(?!\d)")
"""The classes of nursery stock: other numbers beside a price may be an item's."""
# Sold without a pot, or in trays: "racines nues", "wurzelnackt", "wortelgoed" are bare roots. "2-0" before
# them counts a tree's years in the seed bed and in the one it was moved to.
_GRADE = (
    r"(?:\d(?: ?[-–/] ?\d)? ?(?:eyes?|fans?|yr\.?|years?|canes?)|(?:no\.? ?|#|grade )[12]"
    rf"|\d{{1,3}}(?: ?[-–/] ?\d{{1,3}})? ?(?:{LENGTH}|'|ft\b\.?))"
)
POTLESS = later(
    rf"(?:[1-4][-+/][0-3] )?bare[- ]?root(?:s|ed)?(?: plants?)?(?:,? {_GRADE})?"
    r"|racines? nues?|wurzelnackt|wortelgoed|kale wortel|raiz desnuda"
    r"|balled (?:&|and) burlapped|root[- ]?ball(?:ed)?|(?:plug|cell|seedling) (?:trays?|packs?|flats?)"
    rf"|(?:\d{{1,2}}(?: ?[-–] ?\d{{1,2}})? ?(?:{LENGTH}|'|′|’|ft\b\.?) ?(?:cal(?:iper|\.)? ?)?)b ?& ?b"
    rf"|b ?& ?b,? \d{{1,2}}(?: ?[-–] ?\d{{1,2}})? ?(?:{LENGTH}|'|′|’|ft\b\.?)(?: cal(?:iper|\.)?)?"
)
LOOSE = later(
    rf"(?:{POTLESS.pattern}|plugs?|tubestock|forestry tubes?|hiko(?: v ?\d{{2,3}})?|trade gal(?:lon)?\.?"
    r"|hanging basket|(?:starter )?tray|flat|basket|liner|b ?& ?b)"
)
SQUARE = later(
    rf"(?P<size>{NUMBER} ?{LENGTH} (?:square|sq\.?|round|rnd\.?|grande|azalea|{_MATERIAL}))"
    rf"(?:[ ,]*{PRICE}| \.)?"
)
OF_POTS = later(
    r"(?P<size>(?:2\.25|2\.5|3\.25|3\.5|4\.25|4\.5) ?(?:in\b\.?|inch(?:es)?|[\"”″])"
    r"|(?:9|10[.,]5|13) ?cm|[789] ?[x×] ?[789] ?cm|[ø∅⌀] ?(?:9|1\d|2[0-4])(?:[.,]5)?)"
)
"""Widths that pots are made in and no plant, gap or depth is told by: alone in a cell they are the pot
(common practice, no source)."""
MILLIMETRES = later(r"(?:50|68|70|75|80|85|90|1[0-8]0|125|135|165|175|200|2[0358]0|300|330|400) ?mm")
"""Widths of pots in Australia, where plants are told in centimetres and metres: alone they are the pot
(common practice, no source)."""
GRADED = later(
    r"(?P<size>[pc] ?(?:[5-9]|1\d|2\d|3[05])(?:[.,]5)?) +\d{2,3} ?[-/–] ?\d{2,3}(?: ?cm)?(?: {2,}.*)?"
    r"|(?:[^\n\d]{3,30} )?\d{2,3} ?[-/–] ?\d{2,3}(?: ?cm)?(?: m\.?b\.?)? +"
    r"(?P<behind>[pc] ?(?:[5-9]|1\d|2\d|3[05])(?:[.,]5)?)"
)
"""The class of a European pot beside the grade of height: "C10 60-80"."""
