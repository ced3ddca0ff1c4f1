"""The words around a length that are no label: behind it, before it, and where a clause begins and ends."""

from __future__ import annotations

import re

from ocr_tags.fields.sizes.parts import ANY_LENGTH
from ocr_tags.patterns import later

WRAP = r"(?: ?\n(?!\n) ?|-| ?)"  # prose may run on to the next line

ROWS = r"(?:rows?|drills?|trench(?:es)?|furrows?|ranks?)"
"""What plants of the field stand in (common practice, no source)."""
SET_OUT = (
    r"plants?|trees?|shrubs?|bush(?:es)?|sets|bulbs?|corms?|cloves|tubers?|hills|crowns?|slips|seedlings?"
    r"|plugs"
    r"|canes|roots|runners|clumps|fans|vines"
)
_THE = r"(?:its|their|the|any|each|every)"

_LETTER_ENDS = (
    r"(?=\.? ?(?:[x×,;/&)◆•·|+~–-]|by\b|[\n\t]|$)"
    r"|\.? {1,3}(?:z(?:ones?|n)?\.? ?\d|usda|full|part|sun|shade|fs|ps)"
    r"(?![a-z]))"
)
"""A small letter for height or width ends its fact: the next one may begin right behind it."""
TAIL = later(
    rf"(?:{WRAP}|\t(?=[a-z]+(?:\n|$)))"
    rf"(?:(?P<flower_height>(?:(?:tall|high){WRAP})?(?:(?<!\n)|(?-i:(?=[iw])))(?:when )?"
    rf"in{WRAP}(?:full )?(?:bloom|flower|seed(?=[.,;]|\n|$))(?! (?:beds?|gardens?|borders?|pots?)\b)"
    rf"(?! {ANY_LENGTH})|"
    r"(?-i:(?:(?:flower|bloom)(?:ing)?[ -]?)(?:stems|stalks|scapes)|scapes|"
    r"when[ \n](?:it|they)[ \n](?:is[ \n]|are[ \n])?(?:flowers?|blooms?|flowering|blooming|in[ \n](?:flower"
    r"|bloom))|(?:when|at|during)[ \n](?:flowering|blooming)(?=[.,;]|\n|$)|"
    r"with[ \n](?:(?:its|the|their)[ \n])?(?:scapes?|plumes?|spires?|tassels?|panicles?|seed ?heads?"
    r"|(?:flower"
    r"|bloom|seed)(?:ing)? (?:spikes?|stems?|stalks?|heads?|plumes?))(?=[.,;)]|\n|$)|"
    r"stems(?= in (?:(?:early|mid|late)[ -])?"
    r"(?:bloom|flower|spring|summer|autumn|fall|winter|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec))))|"
    r"(?P<both>(?:tall|high),?[ \n]?(?:and|&|x|by|/)[ \n]?(?:(?:about|nearly|almost|just|roughly"
    r"|quite)[ \n])?"
    r"(?:(?:equally|as)[ \n])?"
    r"(?:wide|broad|across)|"
    r"(?:tall|high), (?:of )?(?:equal|same|similar)(?: in)? (?:spread|width)|"
    r"(?:in (?:\d+|five|ten|twenty) years,? ?)?(?:and |just |about )?as (?:wide|broad) as (?:high|tall)|"
    r"and an? (?:clump|crown|mound) of (?:similar|equal|the same) (?:width|spread)|"
    r"(?:tall|high),? ?(?:and|with)(?: an?)? ?(?:the )?(?:equal|same|similar|matching)(?: in)? "
    r"(?:spread|width|wide|across)|"
    r"in height and (?:spread|width)|"
    r"(?:tall|high),?[ \n](?:and|by|x|&)[ \n](?:about[ \n])?(?:as[ \n]much|the[ \n]same)"
    r"(?:[ \n](?:across|wide|through|again))?(?=[.,;)\n\t]|$)|"
    r"(?:wide|across) ?(?:and|&) ?(?:tall|high)|both[ \n]ways|"
    r",?[ \n](?:and|&|by|x)[ \n](?:(?:about|nearly|almost|just|roughly|quite)[ \n])?(?:the[ \n]same"
    r"|as[ \n](?:much"
    r"|far)|that[ \n](?:much|far))(?:[ \n]again)?[ \n](?:across|wide|through|around|in[ \n](?:spread"
    r"|width|girth))"
    r"(?=[.,;)\n\t]|$)|"
    r",?[ \n](?:and|&|by)[ \n](?:(?:about|nearly|almost|just|roughly|quite)[ \n])?(?:as|equally)[ \n]"
    r"(?:wide|broad|across)(?![ \n](?:as|or))|"
    r"(?:tall|high),?[ \n]and[ \n](?:(?:about|nearly|almost)[ \n])?as[ \n](?:much|far)[ \n](?:across|wide"
    r"|through)|"
    r"(?:H|ht|height) ?(?:and|&|x|/|by) ?(?:W|spread|width))|"
    r"(?P<height>tall|high|hoch|høj|hög|hoog|de[ \n](?:haut(?:eur)?|alto|altura)|di[ \n]altezza|"
    r"(?:from[ \n])?(?:(?:top|head)[ \n]to[ \n](?:bottom|toe|foot)|(?:soil|ground|toe)[ \n]to[ \n](?:top"
    r"|tip))|\((?:h|height|tall|high)(?=\))|"
    r"in[ \n](?:leaf|foliage)(?=[.,;/&\n\t]|[ \n](?:and|but)\b)|(?:in|of)[ \n]height"
    r"|,?[ \n]?straight[ \n]up(?=[.,;)\n\t]|$)"
    rf"|(?-i:h){_LETTER_ENDS}"
    r"|(?-i:T)(?=\.? ?[x×/,] ?\d[\d ./½¼¾–-]{0,8}(?:[\"”″'′’]|in\.?|ft\.?|feet) ?(?-i:W)\b))|"
    r"(?P<spread>wide|broad|across|breit|bred|breed|de[ \n](?:large(?:ur)?|ancho)|d['’](?:étalement"
    r"|envergure)|(?:from[ \n])?(?P<sides>side|edge|tip|end)[ \n-](?:to|by)[ \n-](?P=sides)"
    r"|spread[ \n](?:on|over|across)[ \n](?:the[ \n])?(?:surface|water"
    r"|ground)|(?:through|a?round)(?=[.,;)\t]|\n(?!(?:an?|the|your)\b)|$|[ \n]and\b)|span(?=[.,;)\n\t]|$)"
    r"|along(?=[ \n](?:a|the|its)[ \n](?:wall|fence|wires?|trellis))|of[ \n](?:canopy"
    r"|spread)(?=[.,;)\n\t]|$)|\((?:w|width|wide|spread|s)(?=\))|(?-i:mats?"
    r"|carpets?)(?=[.,;)\n\t]|$| (?:of|in|that))|"
    rf"(?:in|of)[ \n](?:width|spread|diameter)|(?-i:w){_LETTER_ENDS})|"
    rf"(?P<row_spacing>(?<!\.)(?:apart[ \n])?between[ \n](?:the[ \n])?{ROWS}"
    rf"(?![ \t]*(?:\([^)\n]*\))?(?:[ \t]*|[ .·…_]+\t)[:\d]|\s+{ANY_LENGTH})|"
    rf"(?:to|from)[ \n](?:{_THE}[ \n])?(?:next|nearest|other|adjacent|neighbou?ring)[ \n]{ROWS}|"
    rf"(?:from[ \n])?{ROWS}[ \n]to[ \n]{ROWS}|(?:aisles?|alleys?|paths?)(?=[.,;)\n\t]|$)|"
    r"entre les rangs|entre hileras)|"
    r"(?P<between>between(?= ?(?:[.,;\t]|$|\n(?!(?:the |each )?(?:plants|rows|neighbou?rs|friends|"
    rf"{SET_OUT})\b))))|"
    r"(?P<spacing>apart|apt?\.?(?=[,;)\n\t]|$)|each way|in each direction|"
    r"(?:(?:one )?from[ \n]the[ \n](?:next|other)|from[ \n]one[ \n](?:to|and)[ \n](?:the[ \n])?(?:next|other"
    r"|another))(?=[.,;)\n\t]|$)|"
    rf"(?:to|from)[ \n](?:{_THE}[ \n])?(?:(?:nearest|next|closest)[ \n])?neighbou?rs?|"
    rf"from[ \n](?:{_THE}[ \n])?(?:(?:other|next|nearest)[ \n](?:{SET_OUT}|one)|each[ \n]other"
    rf"|one[ \n]another)|"
    rf"between[ \n](?:the[ \n]|each[ \n]|every[ \n])?(?:friends|neighbou?rs|{SET_OUT})|"
    r"between[ \n](?:each|them)(?=[.,;)\n\t]|$)|"
    r"(?:from[ \n])?(?:crown|bush|tree|bulb|stem|vine|hill)[ \n]to[ \n](?:crown|bush|tree|bulb|stem|vine"
    r"|hill)"
    r"(?=[.,;)\n\t]|$)|in[ \n]line(?=[.,;)\n\t]|$)|"
    r"(?:in|within|along)[ \n](?:the|each|a)[ \n]row(?=[.,;)\n\t]|$|[ \n](?:and|by|x)\b)|"
    rf"(?:for|to|per)[ \n](?:each|every)[ \n](?:{SET_OUT})(?=[.,;)\n\t]|$)|"
    r"(?:(?:all[ \n])?to[ \n]itself|to[ \n]themselves|(?:from[ \n])?plant[ \n]to[ \n]plant)(?=[.,;)\n\t]|$)|"
    r"on[ -]cent(?:er|re)s?|c\.? ?(?:à|a|/|to) ?c\b\.?|cent(?:er|re)s(?=[.,;|\n]| [|•·]|$| for\b)|"
    r"[O0]\.? ?[C]\b\.?|center to center|"
    r"entre (?:les plant[se]*|plantas)|de distancia|d['’]écart)|"
    r"(?P<centres>cent(?:er|re)s|ctrs?\.?)|"
    r"(?P<each>per[ \n](?:plant|tree|bush|vine|shrub|crown)(?=[.,;)\n\t]|$))|"
    r"(?P<stems>(?-i:stems|stalks|spikes))|"
    r"(?P<plant>(?-i:(?:[a-z-]+ )?(?:plants?|shrubs?|trees?|bush(?:es)?|hedges?|vines?|climbers?))"
    r"(?= ?(?:[.,;)\n\t]|$|(?:for|in|with|that|of|or|and|which|at|on|if|when|by)\b)))|"
    r"(?P<none>deep|"
    r"de profond(?:eur)?))(?![^\W\d_]| ?:)",
    re.I,
)

LABELS_NEXT = later(
    r"[ \t]?[:|/↕↔⇿]| \d|[ .·…_]*\t[^\w\n]{0,2}\d|(?: ?[.·…_]){3,} ?\d|\n\d|(?<=[oO]\.[cC]\.)[ :]{1,2}\d"
    r"|(?<=O[cC])[ :]{1,2}\d"
)
"""Behind a word that opens a line: it is the label of what follows."""

# The length belongs to something else, whatever the label says.
FOREIGN_AFTER = later(
    rf"{WRAP}(?:(?:layer )?of (?:\w+ ){{0,2}}(?:mulch|compost|soil|water|bark|peat|gravel"
    r"|straw|hay|grit|sand|manure|(?:wood|bark) ?chips?|leaf ?mou?ld|leaves|pine needles"
    r"|clippings)|(?-i:mulch|layer)|"
    r"per\s(?:year|season|month|week)|(?:an?|each|every)\s(?:year|season|month|week)|/ ?y(?:ea)?r|annually|"
    r"between (?:the )?(?:plums|fruits?|fruitlets|apples|pears|peaches|apricots|clusters|trusses|bunches)|"
    r"from (?:the )?"
    r"(?:house|wall|foundation|building))| ?(?-i:pots?\b|containers?\b|POTS?\b|above|below)",
    re.I,
)
FOREIGN_NOUN_AFTER = later(
    rf"{WRAP}(?-i:(?:(?!(?:on|with|and|in|or|up|against)\b)[a-z-]+,? ){{0,2}}(?:flowers?|blooms?|"
    rf"blossoms?|lea(?:f|ves)|clusters?|trumpets?|fruits?|fences?|walls?|stakes?|trellis|pots?|"
    rf"containers?|supports?)\b)"
)
_FOREIGN = (
    r"\b(?:dig|holes?|trench|mulch|pots?|containers?|(?<!in a )(?<!in )(?:tubs?|troughs?|planters?|barrels?)"
    r"|prune[ds]?|cut|trim|shear|pinch(?:ed)?|when|until|once|"
    r"seedlings?|harvest|"
    r"before|hills|ridges?|raised (?:beds?|rows?)|(?:mound|hill|heap|bank|draw)(?: up)?(?: the)? "
    r"(?:soil|earth|compost)|shoots|sprouts|fiddleheads|"
    r"stakes?|trellis|fence|supports?|(?:flowers?|blooms?)(?!(?<=\bin flower)(?= and| but)"
    r"|(?<=\bin bloom)(?= and| but))"
    r"|blossoms?|heads?|(?<!in )lea(?:f|ves)|foliage|cones?|"
    r"fruits?|needles?|"
    r"spikes?|clusters?|panicles?|globes|umbels?|trusses|pompo[mn]s?|saucers|trumpets|discs|petals?|bracts?|"
    r"pods?|berries|stars|bells|daisies|corymbs?|catkins?|tassels|bare[- ]?root|root[- ]?ball|"
    r"apply|cover(?!s?\s(?:about )?\d)|bury|water|mow|keep|cages?|collars?|guards?|netting|rows?)\b"
)
FOREIGN_BEFORE = later(
    _FOREIGN
    + r"[^.;:,\n\t]{0,40}\Z|\b(?:flowers?|blooms?|blossoms?|lea(?:f|ves)|foliage|pots?): ?\Z|[øØ] ?\Z"
    r"|\d ?(?:lbs?|pounds?|kg|oz|ounces)\b\.?,? ?\Z"
    r"|(?:^|[\n\t])(?:[a-z]+ )?pot, ?\Z",
    re.I,
)
_TIMES_OF = (
    r"\b(?:spring|summer|autumn|fall|winter|frost|january|february|march|april|may|june|july|august|"
    r"september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|days?|weeks?)\b"
)
OF_PART = later(
    r"(?:^|[\n\t|•·.;] ?)(?:flowers?|fruits?|blooms?|blossoms?|lea(?:f|ves)|foliage|pods?|berries|cones?"
    r"|heads?"
    r"|petals?|bulbs?|tubers?|trunk|hole|pot)(?: size)? ?[:\t][^\n\t]{0,50}\Z",
    re.I,
)
"""The label of a part of the plant opens the line, so the length is that part's."""
FOREIGN_EARLIER = later(_FOREIGN + rf"(?:(?!{_TIMES_OF})[^.;:\n\t]|\n(?![\n·•*–-])){{0,40}}$", re.I)
"""As `FOREIGN_BEFORE`, but past a comma or line end: a doubt, no more. A season or "in 30 days" ends what
was said of flowers or of cutting."""

PLANT_OF_LEAVES = later(
    r"\b(?:mound(?:s|ed|ing)?|clump(?:s|ing)?|rosettes?|tufts?|tussocks?|cushions?|hummocks?|fountains?) "
    r"(?:of )?(?:(?!(?:with|and|under)\b)[a-z-]+,? ){0,3}(?:leaves|foliage|blades|needles)\b",
    re.I,
)
"""A mound of leaves is the plant itself."""

PARTS_ON_PLANT = later(
    r"\b(?:flowers?|blooms?|blossoms?|heads?|fruits?|clusters?|pods?|berries|lea(?:f|ves)|foliage|cones?)\b"
    r"(?:[^.;:\n\t]|\n(?!\n)){0,60}?"
    r"\b(?:on(?: an?)?|shrub|tree|bush|vine|climber|perennial|annual|biennial)\s$",
    re.I,
)
"""Flowers on a shrub, fruits on: the length that follows is that of the plant."""
BLOOM_BEFORE = later(r"\b(?:flower|bloom|blossom)\w*[^.;\n\t\d]{0,40}(?<!on )$", re.I)
PLANT_BEFORE = later(r"\b(?:an?|on|into|makes|forms|forming)(?: an?)? $", re.I)
"""What makes of "10-15 ft vine" and of "30 in stems" the plant, and its flowers."""

_ADJECTIVES = (
    r"(?:(?:mature|adult|full|final|finished|fin\.?|eventual|ultimate|overall|typical|average|avg\.?|"
    r"approx\.?|approximate|expected|usual|rhs|garden|landscape|plant|plt|planting|screen|screening"
    r"|clump|canopy"
    r"|crown|tree|shrub|max\.?|maximum|min\.?|"
    r"minimum|bush|vine|ferns?|hedge|climber|grass|palm|perennial|annual|it|they)[ \n]){0,2}"
)
OTHER_TONGUE = (
    r"(?:(?!(?:flower|bloom|lea[fv]|foliage|pot|row|fruit|stem|zone|light|sun|soil|colou?r|depth|age)\w* ?/)"
    r"[^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2} ?/ ?){0,3}"
)
"""What a label is called in languages that are not known, before the one that is: "uchder / height"."""
_PLAIN = rf"{OTHER_TONGUE}{_ADJECTIVES}(?:(?:size|dimensions?) ?[(\[:]? ?)?$"
OPENS_CELL = later(r"(?:^|[\n\t])[^\w\n\t]{0,4}" + _PLAIN, re.I)
OPENS_ROW = later(r"(?:^|\n)[^\w\n\t]{0,4}" + _PLAIN, re.I)
OPENS_CLAUSE = later(r"[.;,•|·] " + _PLAIN, re.I)
OPENS_FACT = later(r"\s[/|•·+]\s$")
CLOSES_CLAUSE = later(r" ?(?:[.,;)\t\n/|•·+]|$)(?![\s:=.–-]{0,4}(?:(?:up )?to )?\d)")
BARE_TO = later(r"(?:^|[\t\n])[^\w↕↔⇿]*to $")
"""A line that begins with "to": what stood before it may be the near end of a range."""

PLANT_IS_SUBJECT = later(
    r"(?:[–—-]|[:;,(]|\b(?:as|because|since|for|so|and|but|though))\s(?:it|they|he|she|this(?: one)?"
    r"|(?:the )?plants?)\s$",
    re.I,
)
"""Right before a verb: whatever the words before spoke of, the plant is what grows."""
CROWN_BEFORE = later(
    r"\b(?:with|an?|its|the|in|[;,.–-])[ \n]?(?:an?[ \n]|its[ \n])?"
    r"(?:(?:round(?:ed)?|spreading|broad|wide|open|domed?|leafy|large|dense|neat) ){0,2}(?:head|crown|canopy"
    r"|top)"
    r"(?: of| about| some)?[ \n]$",
    re.I,
)
CROWN = 60.0
"""In cm; a head so wide and wider is the crown of a tree, no flower."""

LIMIT_BEFORE = later(r"\b(?:(?P<most>max)|(?P<least>min))(?:imum\b|\.)? $", re.I)
POSTS_BEFORE = later(
    r"\b(?:within|pollinators?|stakes?|posts?|poles?|supports?|leaves|drills?|wires?|canes?|strings?"
    r"|battens?|rails?|hooks|eyes|rods|slats)\b[^.;\n\t]{0,15}$",
    re.I,
)
ROWS_BEFORE = later(rf"\b(?<!in[ -])(?<!within )(?<!in the ){ROWS} ?(?:about |spaced |set |at )?$", re.I)
SOWING_BEFORE = later(r"\b(?:sow|seeds?)\b[^.;\n\t]{0,40}$", re.I)


def is_row(text: str, start: int, end: int) -> bool:
    """Whether a stretch is its whole line."""
    return text[:start][-1:] in ("", "\n") and text[end : end + 1] in ("", "\n")
