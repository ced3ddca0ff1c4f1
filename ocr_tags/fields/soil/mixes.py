"""Soils told by what they are made of, or by what of them a plant bears (common practice, no source)."""

from __future__ import annotations

from ocr_tags.patterns import later

_MATERIAL = (
    r"(?:(?:(?:long|short)[- ]fib(?:re|er)|fine|coarse|medium|chunky|sharp|horticultural|washed|milled|live"
    r"|dried"
    r"|orchid|pine|fir|cactus|succulent|ericaceous|(?:loam|soil|peat)-based|peat-free|multi-?purpose"
    r"|john innes(?: no\.? ?\d)?|garden|potting|composted|leaf|coco(?:nut)?|river|sphagnum|pea|rotted"
    r"|well[- ]rotted|good|gritty|crushed|houseplant|all-purpose|aquatic) )*"
    r"(?:bark(?: chips?)?|perlite|pumice|sphagnum(?: moss)?|moss|peat(?: moss)?|grit|sand|coir|compost|loam"
    r"|soil"
    r"|vermiculite|leaf ?mou?ld|gravel|charcoal|chips|husks?|lava(?: rock)?|mix|clay pebbles|leca|topsoil"
    r"|turf"
    r"|chippings|fibre|limestone|shell)\b"
)
_SHARE = (
    r"(?:(?:(?:\d|one|two|three|half|a (?:third|quarter|half|handful|little|bit|pinch|dash)|equal|some|\d/\d"
    r"|[½⅓¼¾⅔]|\d+ ?%)(?: (?:part|quarter|third|measure|handful)s?)?(?: of)?|plenty of|lots of|extra|added) )"
)
_AND = r"(?: ?\+ ?|,? (?:and|with|plus|to|in|&) | ?/ ?| ?: ?|, )"
RECIPE = later(
    r"(?:\b(?P<verb>use|needs?|requires?|prefers?|likes?|best in|(?:re)?pot(?: up)? in(?:to)?|plant in"
    r"|grow in)"
    r" (?:an? )?)?\b(?<!\d)"
    rf"(?P<soil>equal parts (?:of )?{_MATERIAL}(?:, {_MATERIAL})*,? (?:and|&|to) {_MATERIAL}"
    rf"|{_SHARE}{_MATERIAL}(?:{_AND}{_SHARE}?{_MATERIAL})+"
    rf"|{_MATERIAL}(?:{_AND}{_MATERIAL})*(?: ?\+ ?|,? (?:with|plus) ){_SHARE}?{_MATERIAL}"
    rf"(?:{_AND}{_SHARE}?{_MATERIAL})*"
    rf"|{_MATERIAL}(?:{_AND}{_SHARE}{_MATERIAL})+)"
)
"""Materials in their shares: "3 parts loam, 1 part grit", "bark + perlite", "compost with a third grit"."""
_STATE = (
    r"(?:heavy|light|sandy|wet|dry|damp|poor|rich|stony|rocky|thin|compacted|acid|alkaline|stiff|cold"
    r"|solid|pure"
    r"|any|most|some|even|salty|average|boggy|soggy|sour|limy|sticky|baked) "
)
_NOUN = r"(?:clay|sand|chalk|gravel|loam|limestone|lime|shale|peat|rubble|muck|mud|wet feet)\b"
BORNE = later(
    r"(?P<soil>(?:takes?|tolerates?|copes? with|handles|accepts?|stands|puts? up with|(?:will|can) (?:take"
    r"|grow (?:in|on)|cope with|stand)|(?:fine|ok(?:ay)?|happy|good|grows|thrives|at home) (?:in|on|with)"
    r"|adapt(?:s|able) to|not afraid of|unfazed by|doesn.t mind) "
    rf"(?:(?:{_STATE})+{_NOUN}|(?:(?<=takes )|(?<=take )|(?<=tolerates )|(?<=handles ))(?:clay|chalk"
    r"|limestone)\b(?= ?(?:[.;\t\n]|$))"
    rf"|{_NOUN}(?=,? (?:and|or|to)? ?(?:{_STATE})*{_NOUN}))"
    rf"(?:(?:, ?| and | or | to |, or ?){{1}}(?:{_STATE})*{_NOUN})*)(?= ?(?:[.;,/\t\n]|$))"
)
"""Ground that is borne, where no word "soil" stands: "takes clay and wet feet"; one bare word is none."""
