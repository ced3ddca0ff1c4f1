"""How print says what kind of plant this is: the clauses and cells in which a kind word tells of it."""

from __future__ import annotations

import re

_ADJECTIVE = (
    r"(?:hardy|tender|(?:fall|summer|autumn|spring|ever|june)-?bearing|bunch|indigenous|aussie|carolinian"
    r"|half[- ]hardy|cold[- ]hardy|winter[- ]hardy|flowering|evergreen|semi-evergreen|deciduous"
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
    r"|seeding|sowing|pollinating)|british|irish|european|north-?west(?:ern)?|north-?east(?:ern)?"
    r"|south-?east(?:ern)?|south-?west(?:ern)?|midwest(?:ern)?"
    r"|eastern|western|northern|southern|pacific|california|texas|florida|prairie|american|canadian"
    r"|australian|unusual|grass-?like"
    r"|slow growing|fast growing|quick-growing|carefree|care-free|low-care|low[- ]maintenance|elegant"
    r"|attractive|stunning|striking|popular|spring|winter|autumn|spring-flowering|summer-flowering"
    r"|autumn-flowering|winter-flowering|long-flowering|free-flowering|repeat-flowering|long-blooming"
    r"|early-flowering|late-flowering|broad-?leaved|needled|columnar|pyramidal|narrow|dense|thorny|prickly"
    r"|variegated|scented|marginal|aquatic|alpine|woodland|prairie|rock[- ]garden|shade-loving|sun-loving"
    r"|fruit|nut|street|avenue|specimen|drought tolerant|drought-resistant|clump forming|mat-forming"
    r"|carpeting|creeping|arching|erect"
    r"|semi-woody|wiry|tuberous|rhizomatous|cottage|hardwearing|hard-wearing|adaptable|salad|leafy|root"
    r"|perpetual|everbearing|self fertile|fruit-bearing|indoor|exotic|frost[- ]hardy|semi-hardy|fully hardy"
    r"|wetland|water|pond|bog|meadow|coastal|mountain|seaside|airy|shapely|slim|light|broad|bold|big"
    r"|great|old"
    r"|new zealand|african|asian|japanese|chinese|himalayan|mexican|mediterranean|alpine"
    r"|wall|stone|foliage|tidy|neat|lax|favou?rite|loose|pretty|immergruner?|sommergruner?|laubabwerfender?"
    r"|winterharter?"
    r"|bluhender?|persistant|caduc|grimpant|very hardy|semi-deciduous|semi-dwarf|miniature|columnar|medium"
    r"|giant|large-leaved|cultivated|wild|(?:semi-|in)?determinate|vining|open-pollinated|self-fruitful"
    r"|heat-loving|cut-and-come-again|perfect|ideal|excellent|superb|wonderful|good|fine|splendid|best"
    r"|grafted"
    r"|little|suckering|choice|trusty|dependable|sociable|useful|charming|dainty|majestic|sprawling"
    r"|scrambling"
    r"|clambering|rambling|tufted|spiny|thornless|silvery|rare|forgiving|undemanding|kitchen|medicinal"
    r"|screening|hedging|dessert|cooking|nz|bare[- ]root|half[- ]standard|young|lush|cheerful|easy-going"
    r"|long-flowered|sun-baked|moisture-loving|warmth-loving|frost-tender|fuss-free|clipped|pot-grown"
    r"|rain|slow|quick|fast|healthy|prostrate|rainforest|understor(?:e?y)|hedgerow|riverside|desert|heritage"
    r"|fresh|potted"
    r"|strappy|feathery|wispy|fluffy|shaggy|tussocky|tussock(?:-forming)?|ferny|shrubby|scrubby|twiggy"
    r"|architectural|sculptural|statuesque|billowing|domed|cushion|conical|fastigiate|hummock-forming"
    r"|vase-shaped|fountain-shaped|frost-resistant|fresh-green"
    r"|living|live|bush|bushy|leggy|open|silver-leaved|e/g|evg|evgrn|dec\.|decid\.?|herb\.|hdy\.?|h/h|orn\."
    r"|(?:pond|stream|water)[- ](?:margin|edge|side)|(?:rain|bog|water|herb|cutting|woodland)[- ]gardens?"
    r"|[a-z]{2,}-(?:forming|growing|loving|tolerant|resistant|flowering|blooming|leaved|leafed|stemmed"
    r"|hardy|season|weather|climate|bearing|fruiting|seeding|branched|rooted|headed|scented|coloured"
    r"|colored|maintenance|care|free|friendly|lived))"
)
"""The trade's short forms among them are common practice, no source."""
_ADJECTIVES = rf"(?:{_ADJECTIVE}[ ,]{{1,2}}(?:(?:to|or|and|&) )?){{0,4}}"
_LENGTH = r"\d[\d.,]*(?: ?[-–] ?\d[\d.,]*)? ?(?:cm|mm|m|ft|in|[\"”″'’])\.?"
WHOLE = re.compile(
    rf"[\W_]*(?:(?:fr|de|en|nl|es|it|dk|se|gb|uk|d|f)(?:(?:/(?:no|se|dk|at|be|ch))?:"
    rf"|[:.]?)\s)?(?:\[[a-z ]{{2,24}}\] ?)?(?:zones?\s?\d+\w?\s|(?:(?:h|ht|height)\b[.:]? ?)?{_LENGTH} "
    rf"|\d+(?: ?[-–] ?\d+)? days )?(?:(?:\d[\d./-]* ?(?:in\b\.?|cm|[\"”″]) ?)?cal(?:iper)?\b\.? )?"
    rf"(?:b ?& ?b |bare[- ]?root |container[- ]grown |pot[- ]grown )?{_ADJECTIVES}"
)
TRAIL = re.compile(
    r"(?:[^\w,]|_)*(?:(?:plug |young )?plants?[\W_]*|rustiques?[\W_]*|indigenes?[\W_]*|starts?|starters?"
    r"|seedlings?|plugs?|transplants?|bedding|hedging|legume|fruitiers?|frutal(?:es)?"
    r"|cut[- ]flowers?(?: (?:starts?|seedlings?|plugs?|plants?))?"
    r"|in (?:growth|leaf|bud|flower|bloom|full leaf)|by nature|at heart"
    r"|elsewhere|no\.? ?\d+|\d{1,2} ?/ ?(?:\d{1,2}"
    r"|\+))?(?:[^\w,]|_)*$"
    r"|,? (?:except (?:in|where|for)|where (?:winters?|summers?|frosts?|hardy|it|the|climates?"
    r"|temperatures))\b| (?:north|south|east|west|outside) of (?:usda )?zones?\b"
    r"|(?: plants?)? (?:(?:raised|grown|bred) )?by (?!(?:mail|post|order)\b)(?:our |the )?[a-z]"
    r"|(?<!s) plants? from [a-z]"
    r"| ?[-–] ?[ø∅⌀]? ?\d{1,3}(?:[.,]\d)? ?(?:cm|mm|in\b|[\"”″])"
    r"| ?\* ?\d| ?/ ?(?:full|part|half|light|sun|shade)\b"
    r"|\s#?0?\d{1,2} ?g(?:al)?\b|\s\d{1,3}(?: ?[-–] ?\d+)? ?(?:dtm|days?)\b"
    r"|, (?:warm|cool)[- ]season\b|, (?:semi-)?(?:evergreen|deciduous)\W*$"
    r"| (?:(?:growing |grows )?(?:up )?to|reaching) \d[\d.]*(?: ?[-–] ?\d+)? ?"
    r"(?:feet|foot|ft|m|cm|in|inches)\b\W*$"
    r"|\s+zn?\.? ?\d|\s+(?:h|ht)?\.? ?\d[\d.,]*(?: ?[-–] ?\d[\d.,]*)? ?(?:m|cm|ft|in|inch(?:es)?|feet)\b"
    r"|\W{0,3}\(?(?:in )?(?:usda )?(?:hardiness )?zones?\b"
    r"|,? #?\d[\d./]*(?: ?(?:gal|gallon|qt|quart|pt|pint|l|lt|ltr|lit(?:er|re)s?|cm|mm|m|in|inch|ft|pk|pack"
    r"|ct|count)\b|[\"”″'’]| *$)|(?: rustique)?\s?\([^)]*\)?|,? (?:in|for) (?:most|all|many|cold(?:er)?"
    r"|cool(?:er)?|northern)"
    r" (?:zones|areas|climates|regions|gardens|states)\b|\s+aus\s"
    r"|\s?[,•|;–—-]\s(?:zones?|hardy|sun|full|part|shade|height|usda)\b|\s+hardy\b|\s+(?:de|du)\s"
)
JOIN = re.compile(
    rf"\s?(?:\(|\]|/|,|&|\+|\bor\b|\band\b|-|–|\bou\b|\bo\b|[|·•]|\n(?!\n))\s?(?:{_ADJECTIVE}\s)?"
)
OR_HEDGE = re.compile(r" (?:or|and|/) (?:hedge|hedging|screen)\W*")
BESIDE = re.compile(rf"\s?[/,&-]?\s?(?:{_ADJECTIVE}\s)?")
SENTENCE = re.compile(
    rf"\b(?:(?:this|is an?|one|my|an?|these|makes an?"
    rf"|our) (?:{_ADJECTIVE},? (?:and )?){{0,4}}(?:[a-z]+-[a-z]+ )?)$"
)
OPENS = re.compile(
    rf"(?:^|(?<=[.!;•|] )|(?<=[\t\n]))(?:(?:fr|de|en|nl|es|it|d|f|gb|uk|dk|se)[:.]? )?"
    rf"{_ADJECTIVES}(?:[a-z]+-[a-z]+ )?$"
)
GOES_ON = re.compile(
    r"(?: bedding| hedging)? (?:(?:for|with|where|native|that|which|whose|on|in (?:full|part|sun|shade)"
    r"|bearing"
    r"|grown for|loved by"
    r"|prized"
    r"|in an? \d|ideal|suitable|suited|to \d|up to \d|reaching|growing to|forming|dying|growing"
    r"|flowering|clinging|twining|covering|carrying|spreading|no|mounds?|clumps?|mats?|cushions?|tussocks?"
    r"|spreaders?|a|aux?|avec|mit|met|con|med|fur|pour|para|voor|dont)\b(?! (?:gardens?"
    r"|nursery)\b)"
    r"|(?:or|and) (?:short|long)-lived )|, [a-z]| ?[—–] ?[a-z]"
)
"""After a kind of plant that opens its sentence: "Deciduous shrub for banks", "Perennial with spikes"."""
FROM_WHERE = re.compile(r" (?:of|from) (?!the (?:year|month)\b|heaven\b|life\b|seed\b|our\b|us\b)[a-z]")
"""After a kind and where it grows: "Small tree of river banks", "Perennial from alpine screes"."""
FOR_HOME = re.compile(r" for the (?:home|kitchen|small|back ?yard|family|cottage) (?:orchard|garden|table)\b")
"""Behind "Fruit", what it is grown for."""
GROWN_AS = re.compile(
    r"\b(?:grow|grown|train|trained|prune|pruned|keep|kept|clip|clipped|leave|left|raise|raised|use|used)"
    r"(?: (?:it|this|them))?(?: (?:up|down|on|small|low))?(?: either)? as an? "
    rf"(?:\d+[- ](?:foot|feet|ft|m|metre|meter)[- ](?:tall |high )?)?{_ADJECTIVES}$"
)
COUNTED = re.compile(
    r"(?:^|[\t\n]|[|·•] ?)[\W_]*\d{1,3} (?:x )?(?:large |premium |top-?size |quality dutch |flower |(?:fall"
    r"|spring"
    r"|autumn)[- ]plant(?:ed|ing) )?$"
)
COUNTED_ON = re.compile(
    r"[^\w\n\t]*(?:(?:size )?\d|[-–/]|$|[\n\t]|(?:in|per|to) an? (?:[\w.]+ ){0,3}(?:pots?|nets?|bags?|bowls?"
    r"|pans?|packs?|box|basket)\b)"
)
"""Behind a count of bulbs, where that is all that is sold: "5 bulbs in a 12 cm pot"."""
OF_PLANT = re.compile(
    r"(?: (?:that|which|with|is|are|grows?|for|has|bears|produces|native|hardy|growing|forming|whose"
    r"|covered|loved|stands?|reach(?:es)?|forms?|spreads?|creeps?|likes?|loves?|needs?|prefers?|comes"
    r"|flowers"
    r"|carries|gives|lights|fills|will|can|slowly|quickly|usually|often|best|lives|dies|"
    r"just|only|about|around|roughly|barely|under|sold|treated|"
    r"blooms?|prized|valued|grown|featuring|offering|offers|adds|thrives|performs|features|makes|returns"
    r"|in zones?|\d+)\b|[.,;:!]| [•·|]|$)"
)
NOT_ONE = re.compile(
    r"(?<![\w-])(?:as|for|of|like|under|around|near|with|to|not|than|unlike|over|through|against|support"
    r"|along"
    r"|up|into"
    r"|beneath)\s"
    rf"(?:an?\s|the\s)?{_ADJECTIVES}(?:[a-z]+-[a-z]+ )?$"
)


PART_END = re.compile(
    r"(?i) [/|•·+–—★☆✿❀✶✦-] |; |(?<=\w), (?=[\d#]|zn?\.? ?\d|zones?\b|annual elsewhere|annual in )"
    r"|(?<=\w) ?· ?"
)
"""Between what a cell tells of several fields: "Perennial - 3 ft", "FS / 10-12 in. / annual"."""
_PREPOSITION = (
    r"(?:for|of|to|in|on|with|from|like|as|under|between|than|every|into|and|or|at|by|near|is|are)\b"
)
_ANY_WORDS = rf"(?:(?!{_PREPOSITION})[a-z][a-z-]*,? (?:and )?){{0,3}}"
THIS = re.compile(
    rf"(?<!under )(?<!around )(?<!near )(?<!beneath )(?<!than )(?<!like )\bthis {_ANY_WORDS}$"
    rf"|\bi.?a?m an? (?:\d[\d'’\" ]*(?:to \d[\d'’\" ]*)?(?:ft|foot|m|cm|in)?\.? ?)?{_ANY_WORDS}$"
    rf"|\bone of (?:our|the) {_ANY_WORDS}$|(?:^|[.!?•*;] |[\t\n]|[·|] ?)an? {_ANY_WORDS}$"
)
"""The plant itself, whatever is said of it: "this tidy annual", "A lax shrub", "I'm a 10 ft vine"."""
HEADLESS = re.compile(
    r"(?:^|[.!?] |[\t\n])(?!(?:plant|prune|keep|water|stake|feed|place|move|train|support|protect|grow|use"
    r"|shade|cut|set"
    r"|let|give|tie|under|near|around|beneath|like|as|with|for|this|these|not?)\b)"
    rf"(?:(?!{_PREPOSITION})[a-z][a-z-]+,? (?:and )?){{1,3}}$"
)
OF_HEADLESS = re.compile(r" (?:with|that|which|whose|bearing|grown for|\d)\b|, \d")
"""Of "Dense prostrate shrub with red flowers", which no article opens."""
OF_THIS = re.compile(
    r"[.,;:!(]| [-–—•·|(]| (?:that|which|with|is|are|was|were|for|has|bears|native|hardy|whose|where|it"
    r"|to|from|up to|at|of"
    r"|in|on|by|when|after|before|and|but|so|sold|treated|known|just|only|about|barely|under|up|over|an?|the"
    r"|thrives|loves?|likes|needs|will|may|can|blooms?|grows?"
    r"|gives|makes|grown|raised"
    r"|its|plenty|room|won['’]?t|doesn['’]?t|isn['’]?t|can['’]?t|never|always|only|just|really|still|also"
    r"|(?!(?:gardens|borders|beds|roses|seeds|plants|leaves|flowers|fruits|berries|bulbs|ferns"
    r"|bushes)\b)[a-z]{3,}s"
    r"|you|we|anyone|everyone|worth|pretty|fit|there"
    r"|reach(?:es)?|ideal|perfect|excellent|great|[a-z]{3,}(?:ed|ing)|[a-z]{2,}ly|stands?|forms?"
    r"|\d+)\b(?! (?:gardens?|border"
    r"|nursery)\b)|$"
)

TORN = re.compile(r"(?:fruits?|vines?)\.")
"""The end of a sentence whose other words stand elsewhere: "Trellis for straight", and "fruit." below it."""
TO_HEIGHT = re.compile(r"s? (?:to|up to|reaching) \d")
"""Behind a part of the plant, its length."""
ELSEWHERE = re.compile(r"\d[ab]?[,;:]? ?[(]?(?:elsewhere|otherwise)(?: (?:grown as )?an?)? $")
CLOSED = re.compile(r"\W*(?:$|[\n\t]|\. )")
"""What closes "10-11, elsewhere annual"."""
OVER_TYPE = re.compile(r"plant (?!types?\b)(?=[a-z])")
TYPE = re.compile(r"(?:^|[\n\t|] ?)type:?(?= ?(?:[\n\t]|$))")
"""The second line of a label whose first stands before the kind: "Plant Woody vine" over "Type"."""
MONTH = re.compile(r"\s(?:jan|feb|mar|apr|may|june?|july?|aug|sep|oct|nov|dec)[a-z]*")
"""What stands two letters from a kind and is none: "flowering July" from "flowering bulb"."""
SCRAP = re.compile(r"[a-z][.!?] [A-Z]\.\s\Z")
"""Before a kind, the one letter that was read of the word that says more: "A." for "Annual"."""
CAPITAL_NEXT = re.compile(r" [A-Z]")
"""Where sentences show by their capitals."""
LISTED = re.compile(r"(?:, ?(?!it\b|they\b|which\b)|: )[a-z]|, ?[A-Z]{2,}\b(?= [A-Z]{2})")
"""Behind how long it lives, what else the line says of it: "Biennial: leaves this year", "annual, blue"."""
CARRIED = re.compile(r"(?:\b(?:an?|the|as|or|and|of|for|like|hardy|tender)|[,&])\n(?:[a-z-]+ )*\Z")
"""Before it, a line that runs on to it: "grown as a" and "annual" below."""
GROWTH = re.compile(
    r"\W*(?:evergreen|deciduous|native|flowering|creeping|spreading|carpeting|dense|prostrate|low"
    r"|trailing|woody"
    r"|mat-forming|fast-growing|vigorous)\b"
)
"""Before "groundcover", how it grows."""
PAIRS = frozenset(
    (
        *(("fruit", "vine"), ("fruit", "shrub"), ("fruit", "tree"), ("herb", "shrub"), ("shrub", "rose")),
        *(("groundcover", "shrub"), ("conifer", "tree"), ("conifer", "shrub")),
        *(("succulent", "houseplant"), ("fern", "houseplant"), ("vine", "houseplant")),
        *(("succulent", "perennial"), ("herb", "perennial"), ("groundcover", "perennial")),
        *(("houseplant", "succulent"), ("houseplant", "fern"), ("houseplant", "vine")),
        *(("vegetable", "annual"), ("herb", "annual"), ("vine", "annual"), ("vine", "perennial")),
    )
)
"""Kinds that stand together with only a space between them."""
HABIT = re.compile(
    r"\W*(?:habit|form|growth|growth habit|shape|sort|nature|life|life ?span|lives|duration|hardiness|returns"
    r"|comes back|persistence|longevity|behaves as|grow(?:n|s)? as|treat(?:ed)? as"
    r"|what (?:it is|is it|am i|i am)\??) ?(?::|\t"
    r"|\.{3,}| [-–—]) ?"
)
"""Labels of a plant's habit, under which some print its kind: "Form: small tree, vase shaped"."""
SCRAPS = frozenset(("herb.", "shrub.", "tree.", "annual.", "perennial.", "vegetable.", "fern.", "grass."))
"""Sentences of one word in small letters: ends of some whose beginning stands elsewhere or was not read."""
OWN_SENTENCE = re.compile(
    r"(?:^|(?<=[.!;] )|(?<=\n\n)|(?<=[.!;'’”)]\n)|(?<=\n)(?=[A-Z])|(?<=\t))(?:[^.!;\t\n]"
    r"|(?<!['’”)])\n(?=[a-z])){3,60}[.!;]"
)
USE_LABEL = re.compile(r"[^\W\d]+(?: [^\W\d]+){0,2} ?:")


CHORE_NEXT = re.compile(
    r"\s(?:feed(?:ing|s)?|dress(?:ing)?|top[- ]?dress\w*|mulch\w*|prun\w+|cut(?:ting)?(?![- ]flower)|trim\w*"
    r"|shear\w*|spray\w*"
    r"|dose|repot\w*|rainfall|growth|check|clip|haircut|sale|show|event|meeting|weeds?|cycle|tidy|clean-?up"
    r"|application|handful|increase|division|report|catalogue|fair|fundraiser)\b"
)
"""Behind "annual", what comes once a year: "An annual feeding, each April"."""
MEASURED_FRUIT = re.compile(r"s? (?:is |are |about |up to |to |size |de |von |van )?\d|s?: ")
"""Behind "Fruit" at the head of a cell, what it is like and not that this is one: "Fruit 8 in. long"."""
GIVEN = re.compile(
    rf"\b(?:give|treat|keep|plant|grow|cut|feed|water|put|tuck|set|site|let|place|move|prune|train|use"
    rf"|offer|leave"
    rf"|protect|expect|find|know|we call|ships?|love|raised?) this {_ANY_WORDS}$"
)
"""Before the plant itself as what is cared for: "Give this perennial part shade"."""
NO_COMPOUND = re.compile(
    r"(?! (?:gardens?|borders?|beds?|plants?|seeds?|leaves|flowers?|fruits?|mix|food|fertili[sz]er"
    r"|compost|soil|pot"
    r"|roots?|stock|series|range|collection|supports?|guards?)\b)(?!['’-])"
)
ONE_OF_ALL = re.compile(
    rf"(?:^|[.!?;•*] |[\t\n])(?:the |our |your )?(?:[a-z]+est|best|only|one|ultimate|perfect|classic|original"
    rf"|number one|most [a-z]+|favou?rite) {_ANY_WORDS}$|(?:^|[.!?;•*] |[\t\n])the {_ANY_WORDS}$"
)
AMONG_ALL = re.compile(
    r" (?:there is|there are|of choice|you can|you will|you['’]ll|we (?:know|grow|sell|have)"
    r"|around|on earth|going"
    r"|that (?!is not|isn))\b"
)
"""A superlative and what it is told against: "Easiest houseplant there is", "The one herb that likes"."""
AS_ONE = re.compile(r"(?:^|[.!?;] |[\t\n])as an? (?:[a-z-]+ )?$")
IT_DOES = re.compile(r",? (?:it|she|he|they|this|i)\b")
"""Around a kind that opens a sentence of the plant: "As a houseplant it likes"."""
TREATED = re.compile(
    r"\b(?:treat|treated|sold|offered|grown)(?: (?:here|locally|it|this|him|her|them))? as an? (?:[a-z-]+ )?$"
)
ENDS_THERE = re.compile(r"(?=[.,;!)]|$|\n\n)(?!, (?:in|where|north|then|but)\b)")
"""Around "annual", where nothing says that it is one in some climates only."""
