"""One colour in two tongues, where the second's word is English too: "Pink / Rose" on a Canadian tag.

Most foreign colours give themselves away; "rose" and "violet" do not. On a tag that speaks French, a stroke
or a new line between "pink" and "rose" parts two languages, not two colours (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from ocr_tags.fields.colours.words import compound
from ocr_tags.fields.phrases import fold, french, listed
from ocr_tags.patterns import later
from ocr_tags.record import Found

_SPEAKS = later(
    r"\b(?:couleurs?|fleurs?|feuillage|arbuste|legume|exposition|espacement|rusticite|rustique|racines"
    r"|oeillet"
    r"|coeur|petit|grand|arbre|plante|bisannuelle|ombre|soleil)\b"
)
_TWINS = {
    "pink": later(
        r"roses?(?:[ -](?:pales?|fonces?|vifs?|clairs?|tendres?|saumon|nuit|lavande|lilas|corail|mauve"
        r"|violace|poudre|givre|bonbon|vieux))?"
    ),
    "purple": later(r"(?:violet|mauve)s?(?:[ -](?:pales?|fonces?|vifs?|clairs?|rose|bleu))?"),
}
_PARTS = later(r"[^\w,&+]*(?:/|\||·|•| [-–—] |[\n\t])[^\w,&+]*")


def without_twins(text: str, found: Sequence[Found[str]]) -> list[Found[str]]:
    """What was found, in printed order, less the colours that say in French what stands beside them.

    >>> tag = "Vivace" + chr(10) + "Pink / Rose"
    >>> pink, rose = Found("Pink", (7, 11), 0.9), Found("Rose", (14, 18), 0.9)
    >>> [one.value for one in without_twins(tag, [pink, rose])]
    ['Pink']
    """
    if not (french(text) or _SPEAKS.search(fold(text))):
        return list(found)
    return [one for at, one in enumerate(found) if not _is_twin(text, found, at)]


def _is_twin(text: str, found: Sequence[Found[str]], at: int) -> bool:
    """Whether a colour is parted from its neighbour, as tongues are, and the tag has its English word."""
    own = fold(found[at].value)
    english = [word for word, pattern in _TWINS.items() if pattern.fullmatch(own)]
    others = {re.split("[ -]", fold(other.value))[-1] for other in found if other is not found[at]}
    if not any(word in others for word in english):
        return False
    start, end = found[at].span
    before = found[at - 1].span[1] if at else None
    after = found[at + 1].span[0] if at + 1 < len(found) else None
    if at and is_foreign(found[at - 1].value):
        return True
    parted = before is not None and before <= start and _PARTS.fullmatch(text, before, start)
    return bool(parted or (after is not None and end <= after and _PARTS.fullmatch(text, end, after)))


def is_foreign(value: str) -> bool:
    """Whether a colour's words are all those of another language."""
    (first, *rest), (english, foreign) = fold(value).split(), _colour_words()
    words = [first, *(word for word in rest if word not in _SHADES)]
    return all((word in foreign or _COMPOUND.fullmatch(word)) and word not in english for word in words)


_COMPOUND = later(compound)
_SHADES = frozenset(
    ("claro", "oscuro", "clair", "fonce", "pale", "vif", "sombre", "tendre", "pomme", "scuro", "chiaro")
)
"""Behind a foreign colour, which one it is."""


@cache
def _colour_words() -> tuple[frozenset[str], frozenset[str]]:
    lists = listed("colour")
    english = frozenset(fold(word) for word in (*lists["english"], *lists["modifier"]))
    return english, frozenset(fold(word) for word in lists["foreign"])
