"""Parts of a plant beside the colour they have: "white flowers", "leaves turn red", "green veins".

The noun decides: a flower, leaf, fruit, stem or bud has colours of its own, soil, pots and bees have not.
"""

from __future__ import annotations

from ocr_tags.fields.colours.clauses import DETAIL, TURNS, time_words
from ocr_tags.fields.colours.words import LAID, MEASURE, SHAPE, choice, colour, colour_list
from ocr_tags.patterns import later

ADJECTIVE = (
    r"(?:large|small|big|huge|tiny|giant|showy|fragrant|scented|double|single|semi-double|ruffled|tubular"
    r"|trumpet|"
    r"trumpet-shaped|bell-shaped|daisy-like|star-shaped|starry|glossy|lacy|ferny|feathery|evergreen|fall"
    r"|spring|summer|"
    r"funnel-shaped|round|fluffy|velvety|fuzzy|flat|upright|heart-shaped|lance-shaped|edged|marked"
    r"|sweetly|long-lasting|"
    r"bottlebrush|lacecap|mophead|pompon|spidery|cupped|star|bell|daisy|[a-z]+-[a-z]+|edible|nodding"
    r"|pendulous|papery|aromatic|variegated|striped|veined|tinged|tipped|puckered|crinkled|wrinkled|quilted"
    r"|leathery|shiny|waxy|thick|broad|narrow|slender|strappy|spiky|pleated|lobed|divided|finely|deeply"
    r"|cut|toothed"
    r"|strap|grassy|palm|fan|paddle|sword|ribbon|maple-like|pinnate|deeper|darker|lighter|ripe|sweet"
    r"|plump|juicy|crisp"
    r"|heirloom|heritage|beefsteak|slicing|dessert|culinary|cooking|eating|snacking|paste"
    r"|felted|hairy|downy|woolly|silky|soft|rounded|oval|long|dense|airy|heart|pea|seeded|seedless|skinned"
    r"|slipskin"
    r"|[a-z]{3,}(?:y|ous|ular|like|shaped|ish|ing))"
)
PART = (
    r"(?:(?:pea-)?flowers?|fl(?:o?w)?rs?\b\.?|fl(?:w?s)?\b\.?|blooms|(?:pea-)?blossoms?|florets?|petals"
    r"|bracts|foliage"
    r"|leaves|leaf|flowerheads"
    r"|flower heads"
    r"|flower spikes|plumes|"
    r"spikes|trumpets|bells|panicles|umbels|spires|catkins|berries|stems|bark|needles|fronds|blades"
    r"|seedheads|bloom(?= in |,|\.|\n|;| \()|lvs\b\.?|lf\b\.?"
    r"|berry(?= (?:in )?(?:fall|autumn|winter|summer|late)\b|,|;)|buds|spathes?|cymes|corymbs|rays"
    r"|ray petals|sepals"
    r"|drupes|haws|hips|pods?|skins?|flesh|pulp|peel|stalks|ribs|twigs|branches|midribs|petioles|faces?"
    r"|inflorescences"
    r"|seed ?pods|cones|samaras|rosettes|tendrils|new fronds|new needles|undersides|veins(?=[,.;\n]|$"
    r"| (?:on|in|and)\b)"
    r"|cent(?:er|re)s|eyes|throats|new (?:tips|growth|shoots|leaves)|shoots|tips|edges?|margins?|leaflets"
    r"|(?:fall|autumn|winter) (?:colou?rs?|tones|tints|hues)"
    r"|rinds?|shells?(?= ?[,.;\n\t])|crops?(?! rotation)|culms|corms|tepals|croziers|buttons|standards"
    r"|fruits?)(?![\w-])"
)
_BORNE = r"(?:flowers|blooms|racemes|panicles|umbels|trusses|spikes|bracts)\b"
"""Flowers, said to be behind a comma: "Lilac-blue, racemes to 30 cm"."""
BEFORE_PART = later(
    lambda: (
        r"(?<![\w'’‘-])(?!(?:orchid|lemon|orange|lime|ginger|mango|cherry|coral) (?:bark|peel|pulp"
        r"|stones?)\b|(?:cherry|plum) fruits?\b)"
        rf"(?P<list>{colour_list()})(?:- ?(?:colou?red|edged|tipped|veined|splashed|margined"
        rf"|striped))?(?:(?:,? {ADJECTIVE}){{0,3}}(?:,(?= \d| {_BORNE}))? {MEASURE}{PART}"
        rf"| (?!{colour()} )[a-z]{{3,}} (?:flowers|blooms|blossoms|florets)(?![\w-]))"
    )
)
VERB = (
    r"(?:turn(?:s|ing)?|(?:have|has) (?:turned|gone|become|aged to|faded to)|go(?:es)?|becom(?:es?|ing)"
    r"|open(?:s|ing)?|emerg(?:es?|ing)|unfurl(?:s|ing)?"
    r"|unfolds?|unrolls?|lights? up"
    r"|starts?(?: out| off)?|begins?|finish(?:es)?(?: the [a-z]+)?|ends?(?: up)?|fills? out|edges?"
    r"|(?:then |and )?holds?|blazes?|glows?|flares?|flames?|burns?|blush(?:es|ing)?"
    r"|flush(?:es|ing)?|reddens?|colou?rs?|bronzes?"
    r"|(?:fad(?:es?|ing)|deepen(?:s|ing)?|age(?:s|ing)?|aging|matur(?:es?|ing)|ripen(?:s|ing)?"
    r"|chang(?:es?|ing)"
    r"|darken(?:s|ing)?|dry|dries|drying|weathers?|bleach(?:es)?|mellows?|softens?|shifts?|warms?|melts?"
    r"|pales?|settles?|passes|moves?|mutes?|burnish(?:es)?|cools?|lightens?|drifts?|morphs?)"
    r"(?: from [a-z -]{3,20})? (?:in)?to)"
)
"""What becomes of a colour, or how it comes: "emerge maroon", "dry to tan", "blaze scarlet"."""
_DRIFT = (
    r"(?:masses|mounds|clouds|swords|shades|rays|tufts|trusses|carpets|ruffles|profusion|flushes|drifts"
    r"|curls"
    r"|antlers|fronds|spathes|bouquets|showers|cascades|curtains|pitchers|traps|strings|ropes|mass|mound"
    r"|cloud"
    r"|carpet|haze|sea|froth|foam|mist|veil|fountain|curtain|blanket|dome|shower|cascade|tangle|mop"
    r"|blaze|wash|riot|burst|sweep|glow)"
)
AFTER_PART = later(
    lambda: (
        rf"\b(?:(?:{SHAPE}|{_DRIFT}) (?:of|in)|"
        r"(?:flowers|blooms|blossoms?|foliage|leaves|growth|shoots|needles|fronds|blades|bracts|tips|edges"
        r"|margins|buds|berries|fruits?|pods|petals|stems|cones|twigs|bark|heads|plumes|panicles|spikes"
        r"|clump"
        r"|mound|rosettes?|pads|pitchers|domes|bells|globes|cups|trumpets|stars|clusters|umbels"
        r"|racemes|stalks|ribs|skins?|spears|culms|catkins|curls|leaflets|florets|tepals|sepals|canes"
        r"|cobs|kernels|husks|roots|tubers|caps|tops|ones) (?:that )?"
        rf"(?:is|are|in|of|stays?|staying|remains?|keeps?|{VERB}|show|in shades of)(?: out| up)?|"
        r"(?:leaf|flower|bloom|petal|fruit|stem|pod|berry|cent(?:er|re)|middle|eye|throat|cone|face|head"
        r"|lip|skin"
        r"|flesh|trunk|spathe|bract|tip|edge|inside|outside|pulp|heart) (?:is|turns|ripens to|(?:should"
        r"|will|must)"
        r" (?:be|turn))|"
        r"fleurs|flores|bluten|feuillage|feuilles|aiguilles|epis|follaje|hojas|bloemen|baies|fruits"
        r"(?= (?:rouges|jaunes|bleus|verts|noirs|blancs|orange|violets|pourpres|cramoisis|roses))|frutos"
        r"|bayas|tiges|beeren|fruchte|bessen|marguerites|grappes) "
        rf"(?:an? (?!{colour()}\b)[a-z]+ (?={colour()}[,.;\n])|(?!{colour()} )[a-z]+ and )?"
        r"(?:an? |the |glossy |shiny )*"
        rf"(?P<list>{colour_list()})(?![\w-])(?! (?:sun\w*|soil|shade|light|joy|juice|tea|peel|zest)\b)"
    )
)
FLOWERS_FIRST = later(
    lambda: (
        r"\b(?:(?:flowers|blooms|blossoms|petals|bracts|fruits?|berries|foliage|leaves|fronds|new growth"
        r"|shoots|flesh|pods|buds|stems|bark|rosettes|needles|pads|heads|panicles|racemes|spikes|falls"
        r"|plumes|standards|wings|shanks|flags|outside|inside|outer petals|inner petals|tepals|lobes|blades"
        r"|culms"
        r"|ribs"
        r"|roots|shells|meat|rind|tips|new tips|hips|haws|leaflets|stalks|spears|canes|croziers|twigs|skins"
        r"|seed ?heads|catkins|cones|tops|undersides|throats|florets|calyces|bells|trumpets)(?:,| -"
        r"| –)?"
        r"|(?<![^\n\t.;,•·|—–] )(?<![^\n\t ])(?:cone|eye|lip|centre|center|flower|bloom|blossom|rind"
        r"|shell|leaf|skin|fruit|keel"
        r"|flag|tube|cup|corona|pod|reverse"
        r"|revers|throat|spathe|pod))"
        rf" (?P<list>{colour_list()}(?:,?{TURNS}{colour_list()})*)(?![\w-])"
        rf"(?=[,.;:)]|[ ]?(?:$|[\n\t])| (?:(?:early|mid|late)[ -])?(?:{choice(time_words())})\b"
        r"| (?:in|from|with|by|on|at|over|all|above|below|beneath|underneath|inside"
        r"|within|outside|through|until|before|veined|edged|\w+ spotted)\b| and [a-z]+(?:ed|y|ous|en)\b)"
    )
)
BRACKETED = later(
    lambda: (
        r"\b(?:flowers|blooms|blossoms?|foliage|leaves|berries|fruits?|petals|bracts|pods|flesh|skins?|bark"
        r"|hips|cones"
        rf"|plumes|seed ?heads|catkins) \((?:(?:small|large|showy|fragrant"
        rf"|scented),? )*(?P<list>{colour_list()})"
        r"(?=[,;)]| (?:in|from|at|to)\b)"
    )
)
"""Colours told in passing behind the part: "Flowers (creamy yellow) come in April"."""
FRUIT = (
    r"(?:apples|pears|plums|cherries|peaches|figs|grapes|kiwis|lemons|limes|oranges|apricots|quinces"
    r"|olives|nuts|acorns"
    r"|tomatoes|peppers|chillies|chilies|beans|peas|squash|cucumbers|aubergines|eggplants|pumpkins"
    r"|strawberries"
    r"|raspberries|blueberries|blackberries|currants|gooseberries|melons|carrots|beets|radishes|onions"
    r"|kernels|(?:apple|pear|plum|peach|tomato|pepper|squash|pumpkin)(?= ?(?:[,.;]|$)))"
)
FRUITS = later(
    lambda: (
        rf"(?<![\w'’‘-])(?!(?:cherry|plum) tomato(?:es)?\b)"
        rf"(?P<list>{colour_list()})(?:,? (?:heirloom|dessert|cooking|eating|slicing|sweet"
        rf"|juicy|plump|ripe|smooth|crisp|round|long"
        rf"|small|large"
        rf"|tiny|tasty|meaty|edible|firm))* (?P<shape>{FRUIT})(?![\w-])"
    )
)
"""Fruits by name, which in small letters are this plant's unless another is spoken of."""
FORMS = later(
    lambda: (
        rf"(?<![\w'’‘-])(?P<list>{colour_list()}) (?:{ADJECTIVE} )?(?P<shape>columns?|mounds?|clumps?"
        rf"|mats?|tufts?"
        r"|hummocks?|carpet|cushions?|tints?|tinges?|hues?|overtones?|undertones?|highlights|flush"
        r"|tones|fountain|dome|haze|cloud|pillar|curtain|sheaf|sheaves|rosettes?|pitchers|traps|antlers"
        r"|curls|swords?|straps?|fans?|pads?)(?![\w-])"
    )
)
"""What a plant is or has as a whole; in small letters, its leaves."""
HYPHENED = later(
    lambda: (
        rf"(?<![\w-])(?P<list>{colour()})- ?(?:{LAID}|throated) (?:{ADJECTIVE},? ){{0,2}}"
        rf"(?:{PART}|(?:pads|fans|swords|straps|pitchers|traps|cups|heads|growth|rosettes?)\b)"
    )
)
"""A second colour in the adjective: "white, purple-spotted flowers"."""
DETAILS = later(
    lambda: rf",? (?:and |with )?(?:an? )?(?P<list>{colour_list()}) (?:{ADJECTIVE} )?{DETAIL}(?![\w-])"
)
"""Behind one part's colour that of a lesser one: "White leaves, green veins"."""
SHAPES = later(
    lambda: rf"(?<![\w'’‘-])(?P<list>{colour_list()}) {MEASURE}(?:{ADJECTIVE} )?(?P<shape>{SHAPE})(?![\w-])"
)
LEAF_AND_FLOWER = later(
    lambda: rf"(?<![\w-]){colour()} (?:leaf|foliage) ?[/,] ?(?P<list>{colour_list()})(?= ?(?:[\n\t.;]|$))"
)
GERMAN = later(lambda: rf"(?<![\w-])(?P<list>{colour()}e?s?) (?:bluten|blatter|bloemen|blad)\b")
_KIND = r"(?:cherry|plum|pear|peach|apricot|grape|currant|olive|apple)"
_OF_KIND = later(
    rf"(?P<own>(?:.*[ -])?(?:red|orange|yellow|pink|purple|black|gold(?:en)?|green|white|brown|bronze"
    rf"|scarlet"
    rf"|crimson|cream|chocolate|burgundy)) {_KIND}"
)
_FRUIT_NEXT = later(r"[- ](?:fruit|tomato|truss|pepper|type)(?:e?s)?\b")


def own_end(folded: str, start: int, end: int, following: str) -> int:
    """Where the colour from `start` to `end` itself ends: in "Bright red cherry", before the kind of tomato.

    >>> own_end("bright red cherry", 0, 17, " fruit"), own_end("cherry", 0, 6, " tomatoes")
    (10, 0)
    """
    if not _FRUIT_NEXT.match(folded[end:] + following.casefold().replace("\n", " ")):
        return end
    named = _OF_KIND.fullmatch(folded, start, end)
    if named:
        return named.end("own")
    return start if folded[start:end] in ("cherry", "plum") and "tomato" in following.casefold() else end


MARKED = later(
    lambda: (
        rf"(?<![\w-])(?:{PART}|{SHAPE}|pads|lip|lips|swords|straps|rosettes?|croziers|falls|tongues)"
        r"(?: (?:is|are))?,? (?:(?:each|all|every one|some|often|then|thickly) )?"
        rf"(?:(?:heavily|lightly|boldly|finely|softly|deeply|generously|richly) )?{LAID}"
        rf"(?: (?:in|with|by))?(?: an?| the)? (?P<list>{colour_list()})(?![\w-])"
    )
)
"""What lies on a part and not its own colour: "leaves splashed with gold"."""
ONE_OF_THEM = later(
    lambda: (
        rf"\b(?:each|every|an?|its|single)(?: (?!{colour()} )[a-z-]+,?){{0,2}} (?P<list>{colour_list()}) "
        rf"(?:{ADJECTIVE} )?(?P<shape>spike|trumpet|bell|cone|cup|star|daisy|spire|plume|flower|bloom"
        rf"|blossom|bract"
        r"|tube|paw|globe|spathe|rosette|throat|umbel|raceme|panicle|lantern|pompon|saucer)(?![\w-])"
    )
)
"""One for all: "each lemon yellow trumpet lasts a day"."""
