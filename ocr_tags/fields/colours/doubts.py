"""What silences a colour: it is another plant's, a sick leaf's, a person's skin's, a stem's below flowers."""

from __future__ import annotations

import re

from ocr_tags.names import lexicon
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


_BELOW_FLOWERS = later(
    r"\b(?:flowers|flowerheads|blooms|blossoms?|florets|petals|spikes|spires|plumes|bells|trumpets|heads"
    r"|clusters|racemes|umbels|panicles|daisies|stars)(?: [a-z]+){0,2} (?:on|over|above|atop|along|from"
    r"|upon)"
    r" (?:[a-z-]+,? ){1,5}(?:stems|stalks|scapes|pedicels)\Z"
    r"|\b(?:on|over|above|atop|upon|with|has|and)\s(?:[a-z]+,?\s){0,2}?(?:(?:near|nearly|almost|jet|ink"
    r"|inky|blue"
    r"|purple|brown)[- ]\s?)?(?:black|dark)(?:ish)?\s(?:(?:flower|leaf|wiry|square|stiff|upright)\s)?"
    r"(?:stems|stalks|scapes|pedicels|canes|wands)\Z"
)
"""What bears the flowers is told beside them: "Violet flowers on near-black stems"; dark, it is no feature
of its own, as red stems in winter are."""
_OTHERS = later(
    r"^ (?:on|of) (?:the |its )?(?:wild|common|true|related|other|old) (?!plants?\b|ones?\b|stems|wood|canes)"
    r"[a-z]+|^[^.;\n]{0,24}\(not (?:on|of|in|this)\b"
)
"""Behind a part, whose it is: "red berries on wild asparagus (not on this)"."""


def borne(folded: str, match: re.Match[str]) -> bool:
    """Whether a coloured part only bears the flowers, or is another plant's."""
    return bool(_BELOW_FLOWERS.search(folded[: match.end()]) or _OTHERS.search(folded[match.end() :]))


_OF_ALL = later(
    r"\b(?:most|other|many|all|unlike|like|than|these|those|ordinary|common|old|wild|true|with|among|and|of"
    r"|or"
    r"|our|other)(?: other| the)? $"
)


def is_plant(folded: str, start: int, end: int) -> bool:
    """Whether a colour and a shape are the name of a kind of plant that is spoken of: "most coral bells".

    >>> tag = "when most coral bells are done"
    >>> is_plant(tag, 10, 21), is_plant("then coral trumpets", 5, 19)
    (True, False)
    """
    name = " ".join(folded[start:end].split())
    return name == "coral bells" or bool(
        lexicon.plants_called(name) and _OF_ALL.search(folded, max(0, start - 30), start)
    )


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
    if sick and (_OR_ELSE.search(folded, 0, match.start()) or _MEANS.match(folded, match.end())):
        return True
    if match["list"] == "silver" and _DISEASE.search(folded, max(0, match.start() - 60), match.end() + 20):
        return True
    if sick and (_WHEN_COLD.match(folded, match.end()) or _WHEN_COLD.match(folded, match.end("list"))):
        return True
    if sick and _HUNGRY.match(folded, match.end("list")):
        return True
    around = folded[max(0, match.start() - 60) : match.end() + 30]
    return bool(_SKIN.search(match[0]) and _HARM.search(around))


_OR_ELSE = later(r"\bor (?:else )?(?:the |its |their )?\Z")
"""Before what leaves do where the advice is not heeded: "Acid soil, or the leaves go yellow"."""
_MEANS = later(
    r" ?= ?(?!ripe|ready|sweet)[a-z]|,? (?:can|may|should|must) (?:simply |just |safely )?be (?:cut|trimmed"
    r"|removed|pulled|picked off|snipped)"
)
"""Behind leaves that are ill or dead: "Brown tips = too dry", "brown fronds can be cut"."""
_DISEASE = later(
    r"\b(?:prun\w*|cut|against|avoids?|prone|resist\w*|prevents?|risk|protect\w*|to stop|guard\w*)\b"
    r"[^.;\n]{0,36}\bsilver[- ]?leaf|silver[- ]?leaf (?:disease|fungus|risk|spores)"
)
"""Silver leaf is what stone fruit suffers from that was pruned when wet."""
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
