"""What silences a colour: it is another plant's, a sick leaf's, a person's skin's, a stem's below flowers."""

from __future__ import annotations

import re

from ocr_tags.patterns import later

TROUBLE = later(r"[^.\n]{0,30}\b(?:means?|indicates?|signals?|signs? of)\b")
"""Yellow leaves that mean something are ill."""


def of_another(folded: str, match: re.Match[str]) -> bool:
    """Whether fruits named by their kind are a neighbour's or a dish's: "Good with green beans"."""
    return bool(_ANOTHER.search(folded, max(0, match.start() - 50), match.start()))


_ANOTHER = later(
    r"\b(?:sausages?|bacon|soup|stew|butter|cups?|chop|simmer|bake|toast|with|near|beside|like|unlike"
    r"|not|from|other|companions?|after|before|behind|no|than|avoid"
    r"|serve|cook\w*"
    r"|add|or)\b[^.;\n]{0,40}$"
)
_SICK = later(r"(?:yellow|brown|black|pale)(?:,? (?:and|or) (?:yellow|brown|black))?")
_CHORE = later(
    r"\b(?:unless|should|remove|prune|cut|trim|pick off|discard|snip|if|when|until|prevent|avoid|clean|dead"
    r"|old|spot"
    r"|watch for)\b"
    r"[^.;\n]{0,30}$"
)
"""Before yellow and brown leaves that are to be cut off."""


BELOW_FLOWERS = later(
    r"\b(?:flowers|flowerheads|blooms|blossoms?|florets|petals|spikes|spires|plumes|bells|trumpets|heads"
    r"|clusters|racemes|umbels|panicles|daisies|stars)(?: [a-z]+){0,2} (?:on|over|above|atop|along|from"
    r"|upon)"
    r" (?:[a-z-]+,? ){1,5}(?:stems|stalks|scapes|pedicels)\Z"
)
"""What bears the flowers is told beside them: "Violet flowers on near-black stems"."""
PERHAPS = later(r"\b(?:if|when|should|unless|until)\b[^.;\n]{0,20}$")
"""Before what leaves may do: "If leaves turn red in winter"."""


RIPE = later(
    r"(?:berries|fruits?|pods|tomatoes|peppers|hips|haws|cherries|apples|plums|figs) (?:all |first )?"
    r"(?:turn|go|ripen|colour|color|change|deepen|blush)(?:s|es)? "
    r"(?:to |in ?to )?(?!(?:brown|pale|yellow)\b)"
)
"""What fruit does when it is ripe is sure to come: "Net when berries turn blue"."""


def is_ill(folded: str, match: re.Match[str]) -> bool:
    sick = _SICK.fullmatch(match["list"])
    if sick and _CHORE.search(folded, max(0, match.start() - 40), match.start()):
        return True
    if sick and (_WHEN_COLD.match(folded, match.end()) or _WHEN_COLD.match(folded, match.end("list"))):
        return True
    if sick and _HUNGRY.match(folded, match.end("list")):
        return True
    around = folded[max(0, match.start() - 60) : match.end() + 30]
    return bool(_SKIN.search(match[0]) and _HARM.search(around))


_WHEN_COLD = later(
    r"\?| (?:below|under|at|when|if) (?:about )?\d"
    r"|[,;]? (?:it got|they got|too) (?:cold|wet|dry)"
)
"""Behind leaves that turn black of cold, or are asked after: "Black leaves? It got cold"."""
_HUNGRY = later(
    r" (?:in|on|from|with) (?:an? |too |very )?(?:lim[ey]y?|alkaline|chalky?|wet|heavy|poor"
    r"|cold|drought|much|hard)\b| (?:when|if|unless|without)\b"
)
"""Behind leaves that turn yellow for want of something."""
_SKIN = later(r" skins?$")
_HARM = later(r"\b(?:cause[sd]?|irritat\w+|rash|sap|burns?|dermat\w+|sensitive|contact|gloves)\b")
"""Near skin that is a person's."""
