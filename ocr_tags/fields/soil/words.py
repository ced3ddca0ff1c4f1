"""The words of which a demand on the soil is made (common practice, no source)."""

from __future__ import annotations

HYPHEN = r"(?:- ?| )"
"""Behind a hyphen a line may end: "well-", "drained"."""
ADJECTIVE = (
    r"(?:(?:(?:almost|nearly|virtually|just about|practically) )?any(?: old)?"
    r"|fresh(?=,| (?:to|and|or)\b)|humous|moist|dry|dryish|wet|damp|boggy"
    r"|soggy|marshy"
    rf"|average|avg\.?|plain|decent|regular|cultivated|well{HYPHEN}(?:dug|cultivated|prepared|manured"
    r"|worked|rotted|aerated|mucked|dunged|fed|limed)|dunged"
    r"|ordinary|normal"
    r"|reasonable|rich|fertile|infertile|poor|lean|light|heavy|loose|crumbly|friable|deep|shallow|open"
    r"|soft|firm"
    rf"|loamy|loam|clay{HYPHEN}loam|sandy{HYPHEN}loam|sandy|sand|silty|clay|rocky|stony|stone{HYPHEN}free"
    rf"|gravelly|gravel"
    r"|gritty|(?:deeply|freshly|newly|lightly)[- ]dug|(?:compost|lime|manure)-laced"
    rf"|acidic|acid|alkaline|calcareous|neutral|chalky|chalk|limestone|lime|lime?y|lime{HYPHEN}free"
    rf"|ericaceous"
    r"|peaty|leafy"
    rf"|woodland|humusy|humus{HYPHEN}rich|humus|nutrient{HYPHEN}rich|organic|organically rich"
    rf"|well{HYPHEN}?drain(?:ed|ing)"
    r"|drained"
    rf"|(?:free|fast|quick|freely|sharply|sharp|good){HYPHEN}?(?:draining|drained)"
    rf"|(?:moisture|water){HYPHEN}(?:retentive|retaining|holding)|evenly moist|permanently|constantly|always"
    r"|slightly"
    r"|moderately|consistently|reasonably|very|medium|mesic|most|all|good|garden|cactus|potting|enriched"
    r"|improved|amended|compacted|limed|manured|tilled|salty|saline|cool|warm|city|town|urban|aquatic"
    r"|thin|sweet|sour|sterile|unimproved|mineral|volcanic|basalt|prairie|bottomland|woodsy|mucky|swampy"
    r"|sticky"
    r"|coarse|mounded|black|dark|retentive|spongy|airy|porous|permeable|stiff|dusty|decent|leaner|poorer"
    r"|sandier|fluffy|bagged|composted"
    rf"|(?:humus|compost|leaf|lime|calcium|peat|clay|grit|moisture){HYPHEN}(?:rich|laden|heavy|holding"
    rf"|filled)"
    r"|adaptable|mucked|preferably|ideally|fairly|rather|quite|mostly|not too)"
)
_WETNESS = r"(?:moist|wet|damp|dry|mesic|medium|average|med\b\.?|avg\b\.?)"
_SPAN = r"(?: to | ?[-–/] ?)"
_MATERIAL = (
    r"(?:(?:any|most|heavy|light|sandy|loamy|stony|rocky) )*(?:sand|loam|clay|gravel|chalk|limestone"
    r"|peat|muck|silt|rock|soils?)\b"
)
_GROUND_NEXT = (
    rf"(?:{_MATERIAL}|(?:any|most|all|lean|rich|poor|deep|fertile|sandy|loamy|stony|rocky|gravelly|gritty|peaty"
    r"|humus\w*|organic|acid\w*|alkaline|neutral|limy|(?:well|free|sharply)[- ]drain\w+)\b)"
)
MOISTURE_FIRST = (
    rf"(?:{_WETNESS}(?:{_SPAN}{_WETNESS})?(?=; {_GROUND_NEXT})|{_WETNESS}{_SPAN}{_WETNESS}(?=, {_MATERIAL}))"
)
"""How wet a plant likes it, where the line tells next of what ground is made: "Dry to medium; sand, loam"."""
JOINED = r"(?:,? (?:and|or|to|but(?: not| never)?|yet|if not|y|&) |, ?|/| )"

MATTER = (
    r"(?:(?:sub|top)?soils?(?! ?(?:line|level|temp))|ground(?! ?(?:cover|level|elder))|loams?|earth|dirt"
    r"|clays?|sands?"
    r"|grit|chalk|gravel|shingle|scree|silt|muck|mud|duff|lime(?:stone)?|leaf[ -]?mou?ld|peat(?: moss)?"
    r"|bog|swamp"
    r"|slough|perlite|pumice|sphagnum|hardpan|marl|granite|humus|ph|compost(?! tea)|peat|bark|grit"
    r"|leaf litter|drainage"
    r"|organic matter|(?:potting )?mix)"
)
"""What ground is made of, in any part of a sentence."""
