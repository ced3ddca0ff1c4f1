"""The labels of sizes in ten languages, worn letters too: what each kind of length is called."""

from __future__ import annotations

from ocr_tags.fields.sizes.clauses import ROWS
from ocr_tags.fields.sizes.parts import (
    ANY_LENGTH,
    BLOOM,
    BORNE,
    EACH,
    FLOWER_STEMS,
    LED,
    RISING,
    ROOM,
    STEMS,
    THINGS,
    THIS,
    WILL,
)

CLEAN = {"{height}": "heights?", "{spread}": "spread", "{width}": "width", "{spacing}": "spacing"}
WORN = {  # letters readers take for one another, in the words that matter most
    "{height}": r"(?:h[eco][il1j!|íì][g9q][hnb][t1lf]s?|heigt|heigh(?=[ :.\t]))",
    "{spread}": r"sp[rn][eco][ao](?:d|cl)",
    "{width}": r"w[il1j!|](?:d|cl)[t1lf][hnb]",
    "{spacing}": r"sp[ao][ceo][il1j!|í][nm][g9q]",
}

NAMES = {  # kind -> its labels, tried in this order; "none" takes a length out of the running
    "none": (
        rf"(?:{THINGS}) (?:{{height}}|{{width}}|{{spread}}|{{spacing}}|size|diameter)|row {{width}}|"
        rf"(?:plug|bulb|basket|berry|cone|pond|liner) (?:{{height}}|{{width}}|size|diameter|depth)|"
        rf"(?:lea(?:f|ves)|foliage|fronds?|fruits?|pods?|berries|cones?)(?: [a-z]+){{0,3}} (?:on|atop)"
        rf"(?= {STEMS})|"
        rf"{BLOOM} (?:{{width}}|{{spread}}|size|diameter)|(?:planting |sowing |seed )?depth|profondeur|"
        rf"profundidad|"
        r"pflanztiefe|plantdiepte|profondit[àa]|s[åa]djup|plantedybde"
    ),
    "flower_height": (
        rf"(?:in|with) (?:bloom|flower|plume|seed|flowers|blooms|plumes|spikes)(?= ?[:\t\n]|{LED})|"
        rf"{FLOWER_STEMS}[ \n](?:up )?to(?= ?[:\t\n]|{LED})|"
        rf"(?:flower|bloom)(?:ing)? (?:stalk|stem|spike)s?(?= ?[:\t\n/])|in fl\.(?=,? ?{ANY_LENGTH})|"
        rf"(?:(?:fl(?:r|w|wr)?s?\.|flower|bloom)(?:ing)? ?)(?:stem|stalk|spike|scape)s?(?=[ \n]{ANY_LENGTH}"
        rf"(?! ?(?:long|across|wide|in dia)))|(?:plume|spike|inflorescence) (?:{{height}}|hg?t\.?)|"
        rf"(?<!leaves )(?<!foliage )on (?:[a-z-]+ ){{0,2}}(?:stems?|stalks?|scapes?|spikes?|wands)(?: of)?"
        rf"(?= {ANY_LENGTH}(?:[.,;)]|$| in | above))|"
        r"in (?:full )?(?:bloom|flower)(?=[ :.=\t\n|–-]{1,4}\d)|"
        rf"(?:{BLOOM}|fl(?:w?r)?\.?|blm\.?)[ -](?:{{height}}|hg?t\.?)|"
        rf"{{height}} (?:in|when in|at) (?:full )?(?:bloom|flower)|"
        rf"(?:(?:flowers?|blooms?|blossoms?)(?: (?:held|borne|carried|rise))?(?: up)? )?"
        rf"(?<!across )(?<!wide )(?:on|atop)(?= {STEMS})|"
        rf"{RISING}|{BORNE}(?:on|atop) an?(?= {ANY_LENGTH}[ \n-](?:[a-z]+ )?(?:stem|stalk|scape|spike)\b)|"
        rf"(?:scapes?|(?:flower|bloom)(?:ing)? (?:stalk|spike|stem)s?)(?=[ :.=\t\n–-]{{1,4}}{ANY_LENGTH}"
        r"(?! ?(?:long|across|wide|in dia)))|"
        r"hauteur (?:en fleurs?|des fleurs|de floraison|à la floraison)|"
        r"altura (?:en flor|de (?:la )?flor(?:es|ación)?)|bl[üu](?:ten|h)h[öo]he|bloeihoogte|blomh[öo]jd"
    ),
    "row_spacing": (
        rf"(?<!in[- ])(?:(?:between|btwn?\.?|betw\.?)[- ])?{ROWS}[- ]{{spacing}}|row gaps?|(?:row"
        rf"|line) to (?:row"
        rf"|line)(?= {ANY_LENGTH}| ?[:\t]|{LED})|(?:and[ \n])?each row(?= {ANY_LENGTH})|row(?= ?: ?\d)"
        rf"|(?:(?<=[\"”″'’′m] )|(?<=[\"”″'’′m], ))rows?(?= {ANY_LENGTH})|(?:between "
        rf"|betw\.? |btwn?\.? |space )?rows(?= ?[:\t\n/|]|{LED}| ?\([a-z ]{{2,14}}\):"
        rf"|[ .·…_]{{1,40}}\d)|"
        rf"rows? spaced|in rows(?=[ :\t\n]{{1,3}}{ANY_LENGTH}[ \n]apart\b)|(?-i:R[wW])\.?(?=[ :.]{{1,3}}\d)|"
        r"(?:{spacing}|space|distance) between (?:the )?rows|"
        r"(?:(?:entre )?(?:les )?rangs|(?:entre )?(?:hileras|surcos))(?= ?[:\t\n/]| \d)|"
        r"reihen(?:abstand)?|rijen|"
        r"rijafstand|radavst[åa]nd|r[æa]kkeafstand|(?:espacement|distance) (?:entre|des) (?:les )?(?:rangs"
        r"|rangées|lignes)|"
        r"distancia entre (?:hileras|surcos|filas)"
    ),
    "spacing": (
        rf"(?:planting )?gap(?= ?[:\t\n]| {ANY_LENGTH})|(?:plant|bush|tree|crown|stem|vine) to (?:plant"
        rf"|bush|tree"
        rf"|crown|stem|vine)(?= {ANY_LENGTH}| ?[:\t]|{LED})|dist\.(?= {ANY_LENGTH})|esp\."
        rf"|on ctrs?\.?(?=[ :\t]{{1,4}}\d)|o/c(?=[ :\t]{{1,4}}\d)"
        rf"|(?:hedge plants|for (?:an? )?(?:low |dwarf )?hedg(?:e|ing),?"
        rf"|hedg(?:e|ing)(?: plants)? ?@)(?= {ANY_LENGTH})"
        r"|hedg(?:e|ing)(?= ?: ?\d\d(?: ?[–-] ?\d\d)? ?cm\b)"
        r"|hedg(?:e|ing) (?:o\.?c\.?|ctrs?\.?|cent(?:er|re)s|distance|gaps?)"
        r"|[ée]cart(?:ement)?(?= ?[:\t\n/]| \d)"
        r"|between (?:the )?(?:{set_out}|them|each)(?= ?[:\t]|(?: ?[.·…_]){3,} ?\d)"
        rf"|(?:(?<=[·•|/] )|(?<=\n)|(?<=\A))plants(?= {ANY_LENGTH} ?[·•|/,;] ?(?:between )?rows?\b)"
        rf"|(?<=[·•|/] )plants(?= {ANY_LENGTH}\s*(?:$|[\n\t·•|/]))"
        r"|sp\.? ?/ ?esp\.?|(?:plant|set)(?: out)? (?:at|every)(?=[ ]?[:\t]|(?: ?[.·…_]){3,} ?\d)"
        rf"|(?:plants?|plugs?|bulbs?|sets|corms?) (?:@|at)(?= {ANY_LENGTH}\s?(?:$|[.,;\n\t)]))"
        rf"|(?:{{spacing}}|distance) (?:in|within) (?:the )?rows?|(?:in"
        rf"|within)[- ](?:the )?row[- ]{{spacing}}|"
        r"(?:{spacing}|space|distance) (?:between )?plants|(?:between )?plants(?= ?[:\t|]|"
        rf"{LED})|{{spacing}}"
        rf"|(?<![a-z] )distance(?= ?[:\t\n]| {ANY_LENGTH}\s*(?:$|[\n\t,;.|•·/]))"
        rf"|apt\.?(?=[ :.\t]{{1,4}}{ANY_LENGTH})|allow(?= {ANY_LENGTH} ?(?:$|[.,;\n\t)]))"
        rf"|plants(?= {ANY_LENGTH},?[ \t](?:(?:in|and|x|by) )?rows?\b)"
        r"|o\.? ?c\.?(?=[ :.=\t]{1,4}\d)|on[ -]cent(?:er|re)s?(?=[ :\t]{1,4}\d|(?: ?[.·…_]){3,} ?\d)"
        r"|elbow[ -]?room"
        rf"|hills(?=[ :\t]{{1,2}}{ANY_LENGTH})|hill(?=[ :\t]{{1,2}}{ANY_LENGTH}\s*(?:$|[\n\t,;|•·/]))"
        rf"|(?<![a-z] )interval(?= ?[:\t] ?{ANY_LENGTH})"
        rf"|(?:give|allow|leave|allot){EACH}(?: about| at least)?"
        rf"(?= {ANY_LENGTH}(?!\s(?:of\s(?!{ROOM})|an?|each|every|per|deep|below|above|under|tall|high"
        rf"|wide)\b))"
        rf"|(?:set|space|line|plant)(?: out)?(?:{EACH})? at(?= {ANY_LENGTH} ?(?:$|[.,;\n\t)]))"
        rf"|hedg(?:e|es|ing)(?: plants)? at(?= {ANY_LENGTH}\s?(?:$|[.,;\n\t)]))"
        rf"|(?:one|an?) (?:(?:plant|bulb|corm|clove|tuber|crown|set) )?every(?= {ANY_LENGTH})"
        r"|(?-i:S[pP]|SP[CD])\.?(?=[ :.]{1,3}\d[^\n\t]{0,14}(?-i:R[wW]|ROWS?|Rows?)\b)"
        rf"|plant(?:ing)? distance|distance apart|(?:planting|plants?|set|space) apart(?= ?(?:[:\t\n/|]|$)"
        rf"|{LED})"
        r"|(?:in|within)[- ](?:the |an? |each )?rows?(?: {spacing})?"
        rf"(?= ?[:\t\n|]|(?: ?[.·…_]){{3,}} ?\d|(?<![sS])[ ]{ANY_LENGTH}\.?\s*(?:$|[\n\t,;|•·/]"
        rf"|(?<=\.) [A-Z]|(?:between|betw\.?|btwn?\.?|row)\b))"
        r"|spcg?\.?|how far apart ?\??|how far(?: ?\?|(?= ?[:\t]))"
        r"|set out(?= ?[:/\t–—])|space between plants"
        r"|(?:give|allow) (?:each|every) plant|plants?(?: in| out)? every(?=[ \t]\d)"
        r"|apart(?:,? (?:for|in|as) (?:an? |the )?[a-z ]{3,18}(?=\n|$|\t)|{bare})|(?:this|so"
        r"|that) far apart{bare}"
        r"|(?:une? )?(?:plant(?:e[rz]?)?|pied) (?:aux|tous les|chaque)(?= \d)|"
        r"spaced?|thin(?:ned)?(?: plants| seedlings)?(?= to)|"
        r"espacement|espacer(?: les plant[se]*)?|espac\.|distance (?:de plantation"
        r"|entre (?:les )?plant[se]*)|"
        rf"(?:needs?|wants?|requires?|likes?)(?: about| at least)?(?= {ANY_LENGTH} (?:of )?{ROOM}\b)|"
        r"espaciamiento|distancia (?:entre plantas|de siembra|de plantación)|separaci[oó]n|"
        r"(?:pflanz)?abstand(?: in der reihe)?|"
        r"(?:plant)?afstand(?: in de rij)?|"
        r"plant(?:erings)?avst[åa]nd|plante(?:afstand|avstand)|distanza(?: di impianto"
        r"| tra (?:le )?piante)?|"
        r"rozstawa"
    ),
    "foliage": (
        r"(?:foliage|fol\.?|leaf|clump|mound) (?:{height}|hg?t\.?)"
        rf"|(?:foliage|leaves|lvs\.?|blades|(?:leaf|foliage|leafy) (?:mound|clump|tuft)"
        rf"|(?<=[\n.;·•] )cushion)"
        rf"(?:[ \n](?:reach|to|about))?(?=(?:[ \n:]| ?[.·…_]{{2,}} ?){ANY_LENGTH}(?! ?(?:long|across"
        rf"|wide|broad|in dia)))"
        rf"|(?:leaf|foliage|leafy) (?:mound|clump|tuft|rosette|cushion)(?= ?[:\t\n]|{LED})|"
        r"hauteur du feuillage|blatthöhe|foliage(?= (?:up )?to \d)|"
        r"foliage[ \n](?:stays|reaches|is|remains|keeps|mounds|sits|tops out)(?: at| about| around)?(?= \d)|"
        rf"foliage(?= {ANY_LENGTH}(?: tall| high)?(?:[,;/.]| and) ?(?:the )?(?:plumes|seed ?heads)\b)|"
        rf"leaves(?= (?:up )?to {ANY_LENGTH}[,;.]?\s[^.\n]{{0,12}}\b(?:flowers?|blooms?|scapes?)\b"
        r"[^.\n]{0,20} to \d)"
    ),
    "height": (
        r"{height}|stature|ht\.?|hgt\.?|hght\.?|hauteur|haut\.|altura|alt\.|(?:wuchs|end)?h[öo]he|hoogte|"
        r"h[öo]jd|h[øo]jde|h[øo]yde|altezza|wysoko[śs][ćc]|alto(?= ?(?:[:/|\t\n]|$))|"
        rf"(?:how )?(?:tall|high){WILL}|(?:how )?tall{{bare}}|how high{{bare}}|{THIS}(?:tall"
        rf"|high){{bare}}|(?-i:H)\.?"
        r"|(?-i:h\.)(?= \d[^\n]*\nw\. \d)"
        r"|(?:ankle|shin|knee|thigh|hip|waist|chest|shoulder|head|eye)[- ](?:high|height|tall"
        r"|level),?(?: at| or)?"
        rf"(?=[ :–-]{{1,3}}{ANY_LENGTH})"
        r"|(?:ultimately|eventually|ultimate|eventual)(?= (?:up )?(?:to )?(?:about |around )?\d)"
        r"|(?<=[\n.;] )up(?= ?: ?\d)|(?:(?<=[\n\t])|(?<=\A))up(?= ?[:\t] ?\d)"
        rf"|(?:(?<=[\n\t])|(?<=\A))up(?= {ANY_LENGTH}[.,;]?\s{{1,2}}out\b)"
        rf"|(?:20|10|15)[ -]?(?:yr|year) height"
    ),
    "spread": (
        rf"rosettes?(?: of| about)?(?=[ \n](?!to\b){ANY_LENGTH}(?! ?(?:tall|high)))|"
        rf"mats?[ \n](?:makes?|reach(?:es)?|spreads? to|of|to)(?=[ \n]{ANY_LENGTH})|"
        rf"runners?[ \n](?:trail|spread|creep)(?:s|ing)?(?: out| to)?(?=[ \n]{ANY_LENGTH})|"
        rf"crown(?=[: ]{{1,2}}\d[\d .–-]*(?:to \d+ ?)?(?:ft|feet|m|met(?:re|er)s)\b"
        rf"(?! (?:below|under|deep|above|apart|tall|high)))|along(?= ?: ?\d)|sp(?:r)?\.? ?/ ?[ée]tal\.?"
        r"|w ?/ ?l(?= ?:)|"
        r"across{bare}|(?:plant|clump|with an?) girth|girth(?= of)"
        r"|(?:surface|ground)[ \n](?:cover|spread)(?=(?: is| of| about)?[ \n:]{1,2}\d)"
        r"|canopy(?= ?:? \d)|"
        rf"(?<=[\n\t])out(?=(?: ?: ?|[ \t]){ANY_LENGTH}\s*(?:$|[\n\t]))|"
        r"{spread}|{width}|breadth|wi?d\.?|wd?th\.?|spr\.?|spd\.?|sprd\.?|(?:plant|clump|canopy"
        r"|crown) diameter|"
        r"(?-i:S[pP])\.?|[ée]talement|[ée]tal\.|largeur|larg\."
        r"|envergure|"
        r"extensi[óo]n|"
        r"ancho|anchura|(?:wuchs)?breite|breedte|spreiding|bredde?|larghezza|largura|szeroko[śs][ćc]|"
        rf"(?:how )?wide{WILL}|(?:how )?wide{{bare}}|{THIS}(?:wide|broad){{bare}}|(?-i:[WSBL])\.?"
        rf"|(?<=\n)(?-i:w\.)(?= \d)"
    ),
    "grows": (
        r"grow(?:s|ing)?|reach(?:es|ing)?(?![ \n]out)|matures|maturing|mature(?= (?:at|to) )|attains?"
        r"|climbs?|"
        r"(?:tops?|topping|max(?:es)?|maxing) out(?: at)?|(?:finish(?:es)?|settles?(?: down| in)?"
        r"|stops?(?: short)?|stays?(?: put)?|remains?"
        r"|peaks?|stands|sits|halts|levels off|hugs the ground|tops"
        r"|ends? up)(?: (?:bushy|compact|low|neat|small|short|tidy|dwarf|little"
        r"|modest))?(?: at)?(?= (?:around |about |under |below |less than )?\d)|keeps? to(?= \d)"
        r"|holds? at(?= \d)|"
        r"(?:stretch(?:es)?|shoots? up|rises?|scrambles?|ramps?|(?:self-)?clings?|soars?|ascends?"
        r"|gets?|comes? up)(?= (?:up )?to \d)|"
        rf"gets?(?=[ \n]{ANY_LENGTH}[^\n.;]{{0,12}}(?:$|[.,;\n]| (?:tall|high"
        r"|and)\b)(?! of\b))|"
        r"(?:makes?|making)(?=[ \n](?:about |around |a good |some |up to )?\d)"
        rf"|(?<!you can )(?<!to )expect(?:ing)?(?: it to (?:reach|make|get to)"
        rf"| an? plant of)?(?=[ \n]{ANY_LENGTH})"
        rf"|(?:hits?|reach|manages?|clears?|rambles?|rambling|goes|(?:that|it)['’]ll go|could hit"
        rf"|can (?:hit|go|run)"
        rf"|(?<!ca)(?<=nes )run|(?<=ines )run|will (?:hit|go))(?=[ \n]{ANY_LENGTH})"
        r"|(?:tree|shrub|bush|plant|climber|hedge|vine|it) will be(?= \d)|(?:plan|figure|count"
        r"|reckon) on(?= \d)"
        r"|(?:bush|upright|vining|climbing|mounding) habit,?(?= \d)|(?:bush|shrub|tree|vine"
        r"|climber)(?= ?: ?\d)"
        rf"|(?:tree|shrub|bush|climber|tufts|legume|perennial|mound|dome|column|pyramid|vine"
        rf"|hedge)(?= of {ANY_LENGTH})"
        rf"|\b(?:an?|the|this|rounded|upright|compact|dense|neat|bushy)[ \n](?:tree|shrub|bush|climber"
        rf"|dome|vine)"
        rf"(?=[ \n]{ANY_LENGTH}\s*(?:[,.;\n\t]|$))"
        rf"|(?:tree|shrub|subshrub|perennial|legume|grass|fern|conifer|evergreen),"
        rf"(?= {ANY_LENGTH}(?:[,.;]|$|\n|[ ](?:with|in) ))|"
        r"climbing(?! ?[\t\n])|twines?|gets? (?:big|tall|taller than (?:me|you))|atteint|alcanza|crece"
        r"|(?:climber|shrub|tree|perennial|annual|grass|fern|bush|palm|bamboo|sedge|conifer|hedge"
        r"|(?:annual|perennial|woody|evergreen|deciduous|climbing|twining|flowering) vine)"
        r"(?= (?:growing )?(?:up )?to \d)|(?:vine|climber),(?= (?:up )?to \d)"
    ),
    "size": (
        r"(?:size|how (?:big|large)(?: (?:does|will|do) (?:it|this|they|i) (?:get|grow|be))? ?\??|"
        r"(?:(?<=\A)|(?<=[\n\t])|(?<=[.;•·|] ))at maturity(?= ?[:\t\n]|(?: ?[.·…_]){3,} ?\d)|mature(?= ?:)"
        r"|un(?:sheared|clipped|pruned|trimmed)(?= ?:)"
        r"|mature[ ](?:clump|plant|bush|shrub|tree)(?= ?:? \d)|(?:clumps|mounds)(?= \d)|dimensions?|größe"
        r"|grösse|afmeting(?:en)?|storlek"
        r"|størrelse|"
        r"maat|matt|mått|taille|tamaño|dimensiones|dimensioni)"
        r"(?: (?:in (?:the )?(?:ground|garden|landscape)|at maturity|when mature|à maturité|adulte"
        r"|in an? (?:pot|tub|container)))?"
    ),
    "trails": (
        rf"(?:fills?|covers?|needs?)[ \n]an?(?:(?=[ \n]{ANY_LENGTH}[ \n](?:circle|patch|space|ring)\b)"
        rf"|[ \n](?:circle|patch|space)(?: of)?(?=[ \n]{ANY_LENGTH}))|"
        r"trail(?:s|ing)?|spreads|spreading|cascades|cascading|widen(?:s|ing)?(?: out)?|bulk(?:s|ing)? out"
        r"|sucker(?:s|ing)?|sprawl(?:s|ing|ed)?(?:[ \n]out)?(?:,?[ \n](?:it|they)[ \n](?:takes?|needs?"
        r"|covers?))?"
        r"|(?:fill(?:s|ing)|span(?:s|ning)?|colonis(?:es|ing)|coloniz(?:es|ing)|carpet(?:s|ing)|creep(?:s"
        r"|ing)?)"
        r"|takes? up|(?<=each )fills?"
        r"|gets?[ \n](?:about |nearly |just )?as[ \n]wide[ \n]as|reach(?:es|ing)?[ \n]out(?:[ \n]to)?"
    ),
}
