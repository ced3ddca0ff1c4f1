"""The words around a printed length that say what it measures, in ten languages and worn."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ocr_tags.fields.sizes.clauses import OPENS_CELL, ROWS
from ocr_tags.fields.sizes.parts import (
    ANY_LENGTH,
    BARE,
    BLOOM,
    BORNE,
    EACH,
    RISING,
    ROOM,
    STEMS,
    THINGS,
    WILL,
)
from ocr_tags.patterns import later

_CLEAN = {"{height}": "heights?", "{spread}": "spread", "{width}": "width", "{spacing}": "spacing"}
_WORN = {  # letters readers take for one another, in the words that matter most
    "{height}": r"(?:h[eco][il1j!|íì][g9q][hnb][t1lf]s?|heigt|heigh(?=[ :.\t]))",
    "{spread}": r"sp[rn][eco][ao](?:d|cl)",
    "{width}": r"w[il1j!|](?:d|cl)[t1lf][hnb]",
    "{spacing}": r"sp[ao][ceo][il1j!|í][nm][g9q]",
}

_NAMES = {  # kind -> its labels, tried in this order; "none" takes a length out of the running
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
        rf"(?:in|with) (?:bloom|flower|plume|seed|flowers|blooms|plumes|spikes)(?= ?[:\t\n]"
        rf"|(?: ?[.·…_]){{3,}} ?\d)|"
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
        rf"(?<!in[- ])(?:between[- ])?{ROWS}[- ]{{spacing}}|row gaps?|(?:row|line) to (?:row"
        rf"|line)(?= {ANY_LENGTH})"
        rf"|(?:(?<=[\"”″'’′m] )|(?<=[\"”″'’′m], ))rows?(?= {ANY_LENGTH})|(?:between "
        rf"|space )?rows(?= ?[:\t\n/|]| ?\([a-z ]{{2,14}}\):"
        rf"|[ .·…_]{{1,40}}\d)|"
        r"rows? spaced|(?-i:R[wW])\.?(?=[ :.]{1,3}\d)|"
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
        rf"|crown|stem|vine)(?= {ANY_LENGTH})|dist\.(?= {ANY_LENGTH})|esp\."
        rf"|on ctrs?\.?(?=[ :\t]{{1,4}}\d)|o/c(?=[ :\t]{{1,4}}\d)"
        rf"|(?:hedge plants|for (?:an? )?hedg(?:e|ing),?)(?= {ANY_LENGTH})"
        rf"|(?:plants?|plugs?|bulbs?|sets|corms?) (?:@|at)(?= {ANY_LENGTH}\s?(?:$|[.,;\n\t)]))"
        rf"|(?:{{spacing}}|distance) (?:in|within) (?:the )?rows?|(?:in"
        rf"|within)[- ](?:the )?row[- ]{{spacing}}|"
        r"(?:{spacing}|space|distance) (?:between )?plants|(?:between )?plants(?= ?[:\t|])|{spacing}"
        rf"|(?<![a-z] )distance(?= ?[:\t\n]| {ANY_LENGTH}\s*(?:$|[\n\t,;.|•·/]))"
        rf"|apt\.?(?=[ :.\t]{{1,4}}{ANY_LENGTH})|allow(?= {ANY_LENGTH} ?(?:$|[.,;\n\t)]))"
        rf"|plants(?= {ANY_LENGTH},?[ \t](?:(?:in|and|x|by) )?rows?\b)"
        r"|o\.? ?c\.?(?=[ :.=\t]{1,4}\d)|on[ -]cent(?:er|re)s?(?=[ :\t]{1,4}\d)|elbow[ -]?room"
        rf"|hills(?= {ANY_LENGTH})"
        rf"|(?:give|allow|leave|allot){EACH}(?: about| at least)?"
        rf"(?= {ANY_LENGTH}(?!\s(?:of\s(?!{ROOM})|an?|each|every|per|deep|below|above|under|tall|high"
        rf"|wide)\b))"
        rf"|(?:set|space|line|plant)(?: out)?(?:{EACH})? at(?= {ANY_LENGTH} ?(?:$|[.,;\n\t)]))"
        rf"|hedg(?:e|es|ing)(?: plants)? at(?= {ANY_LENGTH}\s?(?:$|[.,;\n\t)]))"
        rf"|(?:one|an?) (?:(?:plant|bulb|corm|clove|tuber|crown|set) )?every(?= {ANY_LENGTH})"
        r"|(?-i:S[pP]|SP[CD])\.?(?=[ :.]{1,3}\d[^\n\t]{0,14}(?-i:R[wW]|ROWS?|Rows?)\b)"
        r"|plant(?:ing)? distance|distance apart|(?:planting|plants?|set|space) apart(?= ?(?:[:\t\n/|]|$))"
        r"|(?:in|within)[- ](?:the |an? |each )?rows?(?: {spacing})?"
        r"(?= ?[:\t\n|]|(?: ?[.·…_]){3,} ?\d)|spcg?\.?|how far apart ?\??|how far(?: ?\?|(?= ?[:\t]))"
        r"|set out(?= ?[:/\t–—])|space between plants"
        r"|(?:give|allow) (?:each|every) plant|plants?(?: in| out)? every(?=[ \t]\d)|apart{bare}|"
        r"spaced?|thin(?:ned)?(?: plants| seedlings)?(?= to)|"
        r"espacement|espacer(?: les plant[se]*)?|espac\.|distance (?:de plantation|entre les plant[se]*)|"
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
        r"|(?:leaf|foliage) (?:mound|clump)(?= ?[:\t\n])|"
        r"hauteur du feuillage|blatthöhe|foliage(?= (?:up )?to \d)|"
        r"foliage[ \n](?:stays|reaches|is|remains|keeps|mounds|sits|tops out)(?: at| about| around)?(?= \d)|"
        rf"foliage(?= {ANY_LENGTH}(?: tall| high)?(?:[,;/.]| and) ?(?:the )?(?:plumes|seed ?heads)\b)|"
        rf"leaves(?= (?:up )?to {ANY_LENGTH}[,;.]?\s[^.\n]{{0,12}}\b(?:flowers?|blooms?|scapes?)\b"
        r"[^.\n]{0,20} to \d)"
    ),
    "height": (
        r"{height}|stature|ht\.?|hgt\.?|hght\.?|hauteur|haut\.|altura|alt\.|(?:wuchs|end)?h[öo]he|hoogte|"
        r"h[öo]jd|h[øo]jde|h[øo]yde|altezza|wysoko[śs][ćc]|alto(?= ?(?:[:/|\t\n]|$))|"
        rf"(?:how )?(?:tall|high){WILL}|tall{{bare}}|(?-i:H)\.?"
        r"|(?-i:h\.)(?= \d[^\n]*\nw\. \d)"
        r"|(?:ankle|knee|hip|waist|chest|shoulder|head)[- ](?:high|height|tall),?(?: at"
        r"| about)?(?=[ :–-]{1,3}\d)"
        r"|(?:ultimately|eventually)(?= (?:up )?(?:to )?(?:about |around )?\d)"
    ),
    "spread": (
        rf"rosettes?(?: of| about)?(?=[ \n]{ANY_LENGTH}(?! ?(?:tall|high)))|"
        r"across{bare}|girth|(?:surface|ground) (?:cover|spread)(?=[ \n:]{1,2}\d)|canopy(?= ?:? \d)|"
        r"{spread}|{width}|wi?d\.?|wd?th\.?|spr\.?|spd\.?|sprd\.?|(?:plant|clump|canopy|crown) diameter|"
        r"(?-i:S[pP])\.?|[ée]talement|[ée]tal\.|largeur|larg\."
        r"|envergure|"
        r"extensi[óo]n|"
        r"ancho|anchura|(?:wuchs)?breite|breedte|spreiding|bredde?|larghezza|largura|szeroko[śs][ćc]|"
        rf"(?:how )?wide{WILL}|wide{{bare}}|(?-i:[WSBL])\.?|(?<=\n)(?-i:w\.)(?= \d)"
    ),
    "grows": (
        r"grow(?:s|ing)?|reach(?:es|ing)?|matures|maturing|mature(?= (?:at|to) )|attains?|climbs?|"
        r"(?:tops?|topping|max(?:es)?|maxing) out(?: at)?|(?:finish(?:es)?|settles?|stops?|stays?|remains?"
        r"|peaks?|stands"
        r"|ends? up)(?: (?:bushy|compact|low|neat|small|short|tidy|dwarf|little"
        r"|modest))?(?: at)?(?= (?:around |about |under |below |less than )?\d)|keeps? to(?= \d)"
        r"|holds? at(?= \d)|"
        r"(?:stretch(?:es)?|shoots? up|rises?|scrambles?|ramps?|(?:self-)?clings?|soars?|ascends?"
        r"|gets?|comes? up)(?= (?:up )?to \d)|"
        r"(?<=\b(?:it|he) )makes|(?<=\bI )make|(?<=\b(?:they|ants) )make|(?<=\bto )make(?= \d)"
        r"|(?:(?<=[.;:!] )|(?<=\n)|(?<=specimen )|(?<=this )|(?<=plant ))makes(?= \d)"
        r"|(?:tree|shrub|bush|plant|climber|hedge|vine|it) will be(?= \d)|(?:plan|figure|count"
        r"|reckon) on(?= \d)"
        r"|(?:bush|upright|vining|climbing|mounding) habit,?(?= \d)|(?:bush|shrub|tree|vine"
        r"|climber)(?= ?: ?\d)"
        rf"|(?:tree|shrub|bush|climber|tufts|legume|perennial)(?= of {ANY_LENGTH})"
        rf"|(?:tree|shrub|subshrub|perennial|legume|grass|fern|conifer|evergreen),"
        rf"(?= {ANY_LENGTH}(?:[,.;]|$|\n|[ ](?:with|in) ))|"
        r"climbing(?! ?[\t\n])|twines?|gets? (?:big|tall|taller than (?:me|you))|atteint|alcanza|crece"
        r"|(?:climber|shrub|tree|perennial|annual|grass|fern|bush|palm|bamboo|sedge|conifer|hedge"
        r"|(?:annual|perennial|woody|evergreen|deciduous|climbing|twining|flowering) vine)"
        r"(?= (?:growing )?(?:up )?to \d)|(?:vine|climber),(?= (?:up )?to \d)"
    ),
    "size": (
        r"(?:size|how (?:big|large)(?: (?:does|will|do) (?:it|this|they|i) (?:get|grow|be))? ?\??|"
        r"mature(?= ?:)|(?:clumps|mounds)(?= \d)|dimensions?|größe|grösse|afmeting(?:en)?|storlek"
        r"|størrelse|"
        r"maat|matt|mått|taille|tamaño|dimensiones|dimensioni)"
        r"(?: (?:in (?:the )?(?:ground|garden|landscape)|at maturity|when mature|à maturité|adulte))?"
    ),
    "trails": (
        r"trail(?:s|ing)?|spreads|spreading|cascades|cascading|widen(?:s|ing)?(?: out)?|bulk(?:s|ing)? out"
        r"|sucker(?:s|ing)?|sprawl(?:s|ing|ed)?(?:[ \n]out)?(?:,?[ \n](?:it|they)[ \n](?:takes?|needs?"
        r"|covers?))?"
        r"|(?:fill(?:s|ing)|span(?:s|ning)?|colonis(?:es|ing)|coloniz(?:es|ing)|carpet(?:s|ing)|creep(?:s"
        r"|ing)?)"
        r"|takes? up|(?<=each )fills?"
    ),
}
_BARE_WORDS = frozenset(["tall", "wide", "apart", "across"])
_BARE_LEAVES = later(
    r"(?:foliage|leaves|lvs\.?|blades|cushion|(?:leaf|foliage|leafy)\s(?:mound|clump|tuft))(?:\s(?:reach"
    r"|to|about))?",
    re.I,
)
_FIRST_BARE = later(r"(?:^|(?<=[\n\t]))(?:tall|wide|apart)\b", re.I)
_LENGTH_ENDS = later(r"(?:\d ?(?:in|inch(?:es)?|ft|feet|foot|cm|m)\.?|[\"”″'′])\s*$", re.I)
"""A length before the first of the bare words: on this tag they stand behind theirs."""
_LETTER = later(r"(?:[HWSBL]|sp)\.?", re.I)
_JOIN = later(
    r"(?: (?:at maturity|when mature))? ?(?:[/&x×+,|·•]|\b(?:and|by|et|y|und|en)\b) ?"
    r"(?:(?:mature|eventual|ultimate|expected|adult|final|full|plant|approx\.?) )?",
    re.I,
)
_NOT_IN_A_WORD = (
    r"(?:(?<![^\W_])|(?<=\d)(?=[hw])|(?<=[nm])(?=[hw]\b)|(?<=ft)(?=[hw]\b)"
    r"|(?<=H[x×])(?=[WBSL]\b)|(?<=\d[\"”″])(?=[hw]\b))"
)

_BESIDE_H = later(
    r"(?:^|\n)H[\t:][^\n\t]{1,20}\n$"
    r"|\bH(?:[ .]{0,2}[x×/&][ ]?|[ .:=]{0,3}\d[^\n\t]{0,26}[\s,;/x×])$|\dH[ ,;/x×]{1,3}$"
)
"""B, L and S are Breite, largeur and spread beside an H, and anything at all without one."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a following (or preceding) length measures; two kinds for "Height/Spread"."""

    kinds: tuple[str, ...]
    start: int
    end: int
    certainty: float

    @property
    def weak(self) -> bool:
        """A verb, or "size": a length follows, but a word after the length may still say which."""
        return self.kinds[0] in {"grows", "trails", "size"}


def _labels(forms: dict[str, str]) -> re.Pattern[str]:
    joined = "|".join(f"(?P<{kind}>{names})" for kind, names in _NAMES.items())
    for mark, form in {**forms, "{bare}": BARE}.items():
        joined = joined.replace(mark, form)
    return later(
        rf"{_NOT_IN_A_WORD}(?:{joined})(?![^\W\d_])|(?<![^\W_])(?P<letter>(?-i:H))(?=[x×][WBSL]\b)", re.I
    )


_LABEL, _CLEAN_LABEL = _labels(_WORN), _labels(_CLEAN)


def find_labels(text: str) -> Iterator[Label]:
    """Every label, in order; labels joined by a stroke, an ampersand or "and" are one."""
    held: Label | None = None
    for match in _LABEL.finditer(text):
        beside_h = _BESIDE_H.search(text, max(0, match.start() - 34), match.start())
        if match[0].rstrip(".") in "SBL" and not beside_h:
            continue
        if _BARE_LEAVES.fullmatch(match[0]) and not FLOWER_TOO.search(text):
            continue  # as likely how long a leaf is
        if match[0].casefold() in _BARE_WORDS and not _heads_cell(text, match):
            continue
        label = _label(text, match)
        if held and _joined(text, held, label):
            kinds = (*held.kinds, *(kind for kind in label.kinds if kind not in held.kinds))
            held = Label(kinds, held.start, label.end, min(held.certainty, label.certainty))
            continue
        if held:
            yield held
        held = label
    if held:
        yield held


_LED = later(r"\s?:|(?: ?[.·…_]){3,} ?\d")


def _heads_cell(text: str, match: re.Match[str]) -> bool:
    """Whether "TALL" or "Apart" is the label of what follows, and not the last word of what is before it."""
    if _LED.match(text, match.end()):
        return True
    opens = OPENS_CELL.search(text, max(0, match.start() - 40), match.start())
    first = _FIRST_BARE.search(text)
    return bool(opens and first) and not _LENGTH_ENDS.search(text, 0, first.start() if first else 0)


FLOWER_TOO = later(
    rf"\b(?:(?:{BLOOM}|fl(?:w?r)?\.?|blm\.?) (?:height|ht)\b|height in (?:bloom|flower)"
    r"|(?:flower|bloom)(?:ing)? (?:stalk|stem|spike|spire|scape|plume)s?\b"
    r"|\bplumes (?:up )?to \d|\b(?:in|with) (?:bloom|flowers?|plumes?)(?= ?[:\t.·…])|\bstems \d"
    r"|(?:scapes|spires) (?:(?:up )?to|of|reach|rise|stand) )",
    re.I,
)


_LONE_H = later(r"(?:(?<=\n)|^)H ?\d[^\n\t:x×,]*(?=\n|$)")
_WIDTH_TOO = later(
    r"(?<![^\W\d_])(?-i:[WSBL]|Sp)(?![^\W\d_])|\bsp(?:r|read)|\bwid(?:th|e)\b|[ée]tal|larg|breit|↔", re.I
)


def _label(text: str, match: re.Match[str]) -> Label:
    kind = match.lastgroup or ""
    certainty = 1.0 if _CLEAN_LABEL.match(text, match.start()) else 0.8
    if _LETTER.fullmatch(match[0]):
        certainty *= 0.9 if match[0][0] in "HWSBL" else 0.7
        if _LONE_H.match(text, match.start()) and not _WIDTH_TOO.search(text):
            certainty *= 0.5  # what readers make of a drawn arrow, whichever way it points
    if kind == "foliage":
        # Beside the height in flower the height without is the plant's own.
        kind, certainty = "height", certainty * (0.9 if FLOWER_TOO.search(text) else 0.5)
    return Label(("height" if kind == "letter" else kind,), match.start(), match.end(), certainty)


def _joined(text: str, one: Label, other: Label) -> bool:
    sizes = one.kinds == other.kinds == ("size",)
    return (sizes or not (one.weak or other.weak)) and bool(_JOIN.fullmatch(text, one.end, other.start))
