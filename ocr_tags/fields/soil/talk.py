"""Sentences about the ground in nobody's pattern: weighed by what they name, as a reader would.

Asked last, where no label, list or plain demand tells of the soil (common practice, no source).
"""

from __future__ import annotations

from ocr_tags.fields.parts import Matter
from ocr_tags.patterns import later

_GROUND = (
    r"(?:(?:sandy |clay |stony |silt )?loams?|clay|sand|silt|gravel|shingle|scree|chalk|limestone|muck|mud"
    r"|marl|gumbo|hardpan|subsoil|topsoil|bottomland|grassland|peat|sphagnum|perlite|pumice|rubble"
    r"|leaf[ -]?(?:mou?ld|litter)|bark|grit|decomposed granite|soils?|dirt|earth|humus"
    r"|organic matter|road salt|compaction|(?:stony|gravelly|gritty|sandy|loamy|vegetable|peaty|raised"
    r"|well-dug|thin|damp|peat"
    r"|bog|wet|cracked-rock|salt|heavy|rich|lean|manured) (?:\w+ )?(?:ground|bed|border|slope|bank|spot"
    r"|strip)s?"
    r"|(?:cactus|cacti|succulent|orchid|potting|bulb|houseplant|palm|citrus|peat-based|peaty|bark|gritty"
    r"|barky"
    r"|(?:fast|quick|free)-draining|aquatic|ericaceous|loam-based|multi-?purpose|bagged)"
    r",? (?:\w+,? )?(?:mix(?:ture)?|blend|compost|medium|substrate)|\bph)\b"
)
_TEXTURE = (
    r"(?:sandy|gritty|stony|rocky|gravelly|chalky|limy|limey|limed|peaty|leafy|loamy|clayey|silty|mucky"
    r"|mulchy"
    r"|humus[y-]\w*|humusy|acid(?:ic)?|alkaline|neutral|ericaceous|loam-based|lime-free|manured|mucked"
    r"|unfed"
    r"|drained|drains|(?:fast|quick|slow) (?:to drain|draining)|(?:free|fast|quick|well"
    r"|sharply?)[- ]drain\w+"
    r"|composted|friable|crumbly|boggy|sour|(?<!fruits )sweet(?=,| soil|$)|moisture-\w+|retentive"
    r"|calcareous"
    r"|permeable|waterlogged|compacted|sodden)\b"
)
_STATE = (
    r"(?:moist|damp|wet|dry|rich|poor|lean|thin|light|heavy|deep|shallow|fertile|loose|firm|open|warm"
    r"|cool|mean"
    r"|drainage|average|ordinary|decent|cold|soft|any|anything|airy|worked|dug|well-dug|sticky|hungry"
    r"|soggy|swamp"
    r"|bog"
    r"|compaction|lime|salt|manure)\b"
)
_VERDICT = (
    r"(?:(?:suits?|welcome|preferred|essential|non-negotiable|a must|no obstacle|no trouble|no problem"
    r"|not a problem|forgiven|(?:is|are|was) (?:fine|ok|okay|best|ideal|heaven|perfect|enough|a plus|right"
    r"|better|what|all|where|how|taken|tolerated|no bother)|will do|it copes|copes|matters|does (?:fine"
    r"|well)"
    r"|makes better|is all|works|only|never|no fuss|not (?:fussy|choosy|picky|particular|too))\b)"
)
_WISH = (
    r"\b(?:prefers?|likes?|loves?|wants?|needs?|asks? for|calls? for|demands?|requires?|enjoys?"
    r"|tolerates?|takes?"
    r"|stands|bears|accepts?|handles?|adapts? to|adaptable|copes? with|puts? up with"
    r"|hates?"
    r"|thrives? (?:in|on)|happy (?:in|on)|at home (?:in|on)|revels in|not fussy|not choosy|use"
    r"|pot (?:\w+ )?in"
    r"|give it|anywhere|plant (?:it )?in)\b"
)
_GROUNDS, _TEXTURES = later(rf"\b{_GROUND}"), later(rf"\b{_TEXTURE}")
_STATES, _VERDICTS, _WISHES = later(rf"\b{_STATE}"), later(_VERDICT), later(_WISH)
_NO_SOIL = later(
    r"(?:clay|stone|gravel|bark|sand|chalk|peat)[ -](?:pots?|walls?|paths?|tablets?|pebbles?|pellets?"
    r"|coloured"
    r"|colored|pink|gardens?|chips|mulch|dollar)|(?:rock|gravel|sand|bog|moon|beach|dry) gardens?"
    r"|peat[- ]free(?! (?:\w+ )*(?:mix|compost|ericaceous))|(?:peeling|flaking|shaggy|papery|smooth"
    r"|winter|its"
    r"|red|coral|cinnamon|mahogany|copper|silver|white) bark|\bbark (?:is|peels|flakes|in winter|turns"
    r"|glows)"
    r"|soil (?:line|level|surface|temp\w*)|(?:above|below|under|over|of|into|from|the|bare|open"
    r"|your) (?:the )?"
    r"(?:soil|ground|earth|mud)(?! you)\b|down to earth|\bon earth\b|ground ?cover\w*|grown in\b.*"
    r"|raised in\b.*"
    r"|sand(?:y)? (?:beach|coloured|dunes?)|acid (?:yellow|green|lime)|lime[- ](?:green|yellow)"
    r"|bark like\b.*|lime (?:leaves|foliage|flowers|juice)|sweet (?:pea|corn|scent\w*|potato|fragran\w*"
    r"|smell\w*)"
)
"""Ground that is no demand: ware, colours, gardens, and what the plant was raised in."""
_OWN = later(rf"\b{_GROUND}|\b{_TEXTURE}|\b{_STATE}")
_OTHER = later(
    r"\bsun\b|\bsunny\b|\bshad(?:e|y)\b|\blight shade\b|\bsill\b|\bwater(?:s|ed|ing)?\b(?! table|logged"
    r"| beneath)"
    r"|\bsoak\w*|\bdrinks?\b|\bhose\b|\birrigat\w*|\brain\w*\b|\bthirst\w*|\bdrought\w*|\bdr(?:y|ies"
    r"|ying) out\b"
    r"|\b(?:keep|kept|let|allow)\b|\bfeed\w*|\bfertili[sz]\w*|\bfood\b|\bmulch(?:ed|ing)?\b(?!y)"
    r"|\bprun\w*|\bpinch"
    r"|\bcut\b|\btrim\b|\bshear\b|\bdead-?head|\bstak\w+|\bdivide|\brepot\b|\bflower\w*|\bbloom\w*"
    r"|\bpetals?"
    r"|\bleaves\b|\bfoliage\b|\bfruits?\b(?! than)|\bberries\b|\bseeds?\b|\bsow\b|\bharvest|\bpick\b"
    r"|\bzones?\b"
    r"|\bhard(?:y|iness)\b|\bfrosts?\b|°|\bapart\b|\bspac(?:e|ing)\b|\btall\b|\bhigh\b(?! ph| in)"
    r"|\bwide\b|\bdeer\b"
    r"|\bbees?\b|butterfl|\bbirds?\b|\bslugs?\b|\btoxic|\bpoison|\bedible|\bhole\b|\bback-?fill"
    r"|\bnative to\b"
    r"|\bplant (?:out|at|the|them|with|in|when)\b|\bfirm (?:in|it|the)\b|\bpress\b|\bcover\b|\btop up\b"
    r"|\bheight\b|\bspread\b"
    r"|\b(?:pink|blue|red|mauve|cinnamon)\b|\bstore\b|\blift\b|\bover-?winter|\bgive it an?\b|\bpot up\b"
    r"|\btubs?\b|\bbaskets?\b|\bcontainers?\b|\bdepth\b|\binch(?:es)?\b|\bcm\b|\bhedg\w*|\bwind\b"
    r"|\bspring\b|\bsummers?\b|\bautumn\b|\bfall\b|\b(?:jan|febr)uary\b|\bmarch\b|\bapril\b|\bjune\b"
    r"|\bjuly\b"
    r"|\baugust\b|\bseptember\b|\boctober\b|\bdig\b|\btread\b|\bcrop\b(?= )|\bweeds?\b|\bworms?\b"
    r"|\blawns?\b"
)


_REFUSED = later(
    r"\W*(?:(?:it|they|but|roots?) )?(?:hates?|dislikes?|resents?|avoid|will not|won.t|never|do not|don.t"
    r"|does not"
    r"|doesn.t|not for|improves|breaks up|binds|rots? in|blue|bluer|pink|pinker)\b"
    r"|[^,;:]*\b(?:kills?|rots?|not welcome|avoided|unsuitable|refuses|is fatal|(?:is"
    r"|are) no good)\b[^,;]*\Z"
)
"""What it does not bear is no soil that it asks for."""


def _weight(printed: str) -> float:
    said = _NO_SOIL.sub("#", printed)
    if _REFUSED.match(said):
        return 0.0
    ground = {one[0] for one in _GROUNDS.finditer(said)}
    texture = {one[0] for one in _TEXTURES.finditer(said)}
    if not ground and not texture:
        return 0.0
    state = {one[0] for one in _STATES.finditer(said)} - {"any"} | ({"any"} if "any " in said else set())
    return (
        2 * min(len(ground), 2)
        + 1.5 * min(len(texture), 2)
        + 0.5 * min(len(state), 2)
        + bool(_VERDICTS.search(said))
        + bool(_WISHES.search(said))
    )


TALK = Matter(_OWN, _OTHER, _weight)
FIRM = Matter(later(rf"\b{_GROUND}|\b{_TEXTURE}"), _OTHER, _weight)
"""Where a demand is to go on, words that tell of water as well do not count."""
