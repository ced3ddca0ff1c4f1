"""The parts of which the labels of lengths are made: what has a length, what rises, what must follow."""

from __future__ import annotations

from ocr_tags.measures.quantities import WORD

THINGS = (  # they have a height or width too, but not the plant's own
    r"pots?|containers?|box|hook|hanger|bracket|trellis|fence|wall|support|stake|hole|bed|leaf|leaves|"
    r"trunk|root(?:ball)?|head|fruit|seed|"
    r"package|shelf|door|window|tray|cell|stem"
)
BLOOM = r"(?:flower(?:s|ing)?|bloom(?:s|ing)?|blossoms?|scapes?)(?: (?:stalk|spike|stem|scape|head)s?)?"

ANY_LENGTH = (
    r"(?:(?:about|up to|to) )?(?:\d[\d ½¼¾./–-]{0,8}(?:to \d+)?[ -]?"
    r"(?:[\"”″'′]|in\.|ins?\b|inch(?:es)?|cm|ft\.?|feet|foot|m\b)"
    rf"|(?:(?:half )?an?|{WORD})[ \n-](?:inch(?:es)?|foot|feet|met(?:re|er)s?|yards?)\b(?: and a half)?)"
)
THIS = (
    r"(?:(?:and |it |they |will |can ){0,2}(?:(?:grow|get|goe?|stand|spread|fill|reache?)s? )?"
    r"(?:this|so|that) )"
)
"""What leads to "tall" in a caption beside its length: "grows this tall" (common practice, no source)."""
LED = r"(?: ?[.·…_])+\t|(?: ?[.·…_]){2,} ?\d"
"""Leader dots to the next column or to a figure."""
STEMS = rf"{ANY_LENGTH}[ \n-](?:[a-z]+ )?(?:stems|stalks|scapes|spikes|wands)\b"
BARE = rf"(?=\s{{0,2}}(?:[:|↕↔⇿\t\n]|$)| \d|{LED})"
"""What must follow a word that is a label only at the head of its cell."""
WILL = r"(?: (?:(?:does|do|will) )?(?:it|they) (?:gets?|grows?|will get))?(?: ?\?|(?= ?:))"

FLOWER_STEMS = (
    r"(?:(?:flower(?:ing)?|bloom(?:ing)?|seed)[ \n-](?:spires?|spikes?|stems?|stalks?|scapes?|plumes?|wands?"
    r"|heads?|panicles?)"
    r"|scapes?|spires|plumes|wands|sprays|panicles|seed ?heads|flowers?|blooms?)"
)
RISING = (
    rf"{FLOWER_STEMS}(?:[ \n]of(?:[ \n][a-z-]+){{1,3}})?(?:[ \n](?:that[ \n]|then[ \n]|can[ \n]"
    rf"|will[ \n])?(?:rise|rising|reach(?:ing)?"
    rf"|stand(?:ing)?|grow|tower|top out"
    r"|float(?:ing)?|soar|arch|climb|shoot(?: up)?|dance|wave|sway|hover|ascend|stretch|held|carried)s?)"
    r"(?:[ \n](?:at|about|around|up|above|over|well above|out)){0,2}(?=[ \n](?:to )?\d)"
    rf"|{FLOWER_STEMS}(?=[ \n](?:up )?to \d)"
)
"""What carries the flowers, and how it gets up to its height: "flower stems float to 30 in"."""
BORNE = (
    r"(?:flowers?|blooms?|blossoms?|bells|stars|heads|trusses|daisies)[^.;:\n\t\d]{0,30}? "
    r"(?:held |borne |carried )?"
)
EACH = (
    r"[ \n](?:it|me|us|them|(?:each|every)(?:[ \n](?:perennial|mature|young|single))?(?:[ \n](?:one|plant"
    r"|bulb"
    r"|tree|shrub|crown|hill|vine|clump|bush|hole|corm|tuber|clove|root|fan))?|one another|(?:the )?plants)"
)
ROOM = r"(?:elbow[ -]?|growing |head)?(?:room|space)"
