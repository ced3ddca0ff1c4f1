"""Bloom times that lean on frost, or on no month and no season at all: "until frost", "all season".

Whatever goes on until the first frost is bloom, a harvest or a chore; so a time that ends there needs no word
of flowers, if none of the others is near (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.fields.bloom.flowers import of_flowers
from ocr_tags.fields.bloom.numbers import LABELS
from ocr_tags.fields.bloom.words import VERB
from ocr_tags.fields.colours.words import SHAPE, colour_list
from ocr_tags.fields.phrases import clean, fold
from ocr_tags.fields.values import labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found
from ocr_tags.values import Bloom

_ALL_SEASON = later(
    r"(?:(?:at )?any time of (?:the )?year"
    r"|all season(?: long)?|season[- ]long|year[- ]round|all year(?:[ \n]round)?|everblooming"
    r"|toute la saison|"
    r"(?:quasi |presque |casi )?(?:tutto l.anno|toute l.annee|todo el ano)"
    r"|(?:almost |nearly |most of |much of |for most of |practically )(?:all |the "
    r"|the whole )?year(?: round)?"
    r"|(?:(?:on (?:and|&) off|off (?:and|&) on)[ \n])all (?:year|season|summer)|all the year(?: round)?"
    r"|ganzjahrig|het hele jaar|hele aret)\b"
)
_WEEKS = later(
    r"(?:in |about |within )*\d{1,2}(?: ?(?:-|–|to) ?\d{1,2})? weeks(?: (?:after|from) (?:planting"
    r"|potting|sowing"
    r"|seed|purchase|you plant|being potted|first watering))?(?=\W|$)"
)
"""How long a bulb takes to bloom: "Flowers 8 weeks after potting"; what lasts so long says "for"."""
_WITHOUT_END = later(
    r"(?:(?:almost |nearly )?(?:continuous(?:ly)?|constant(?:ly)?|non-?stop|perpetual(?:ly)?|ever-?blooming"
    r"|repeat(?:s|ing|edly)?|recurrent|most of the year|any time|sporadic(?:ally)?|intermittent(?:ly)?))"
    r"(?= ?(?:[\n\t.,;]|$))"
)
_SHAPES = later(lambda: rf"{colour_list()} (?:[a-z-]+ )?{SHAPE} (?=in )")
_TO_FROST = later(
    r"(?:(?:from )?(?:planting|planting[- ](?:day|out|time)|plant-out) )?"
    r"(?:until|till?|to|up to|right up to|through|thru) (?:the )?(?:(?:first|hard|killing|heavy|autumn"
    r"|fall|winter"
    r"|a|late|real) )*(?:frosts?|freeze)\b"
)
_OTHERS = later(
    r"\b(?:water\w*|feed\w*|fertili\w+|food|keep|kept|protect\w*|mulch\w*|cut|prun\w*|dead ?head\w*"
    r"|pinch\w*|trim\w*"
    r"|plant|planted|planting|sow\w*|harvest\w*|pick\w*|produc\w*|bear\w*|crop\w*|yield\w*|fruit\w*"
    r"|berr\w+|ripen\w*"
    r"|tomato\w*|peppers?|beans?|squash|eat\w*|ready|tops|leaf|leaves|foliage|green|hardy|store|lift|dig"
    r"|divide"
    r"|available|sale|colou?r|interest|outdoors?|outside|inside|indoors|after(?! \d)|not|no|until"
    r"|when(?!:)|if)\b"
)
_HARVESTED = later(r"\b(?:harvest\w*|ripens?|ripening|pick(?:ing)?|crops?|cropping)\b")
_LABEL_ABOVE = later(r"[^\d,.;!]{1,24}:?")


def read_open(text: str) -> Iterator[Found[Bloom]]:
    """Each bloom time that names neither month nor season.

    >>> [found.value.text for found in read_open("Flowers until hard frost")]
    ['until hard frost']
    """
    folded = fold(text)
    starts = {found.start for found in labelled(text, LABELS)}
    for pattern in (_ALL_SEASON, _TO_FROST):
        for match in pattern.finditer(folded):
            before = folded[max(0, match.start() - 60) : match.start()]
            english = pattern is _ALL_SEASON and not match[0].startswith(("to", "qu"))
            shown = english and of_flowers(text, *match.span(), months=False, cold=False)
            if match.start() in starts or VERB.search(before) or shown:
                yield Found(Bloom(clean(text[slice(*match.span())])), match.span(), 0.85)
    for start in starts:
        if lasting := _WITHOUT_END.match(folded, start):
            yield Found(Bloom(clean(text[slice(*lasting.span())])), lasting.span(), 0.85)
    for match in _WEEKS.finditer(folded):
        before = folded[max(0, match.start() - 60) : match.start()]
        dated = match[0].startswith("in ") or "weeks " in match[0]
        if dated and (VERB.search(before) or _SHAPES.search(before + "in ")) and not _KEPT.search(before):
            words = match[0].removeprefix("in ")
            begin = match.end() - len(words)
            yield Found(Bloom(clean(text[begin : match.end()])), (begin, match.end()), 0.8)


_KEPT = later(r"\b(?:if|feed|water|after|until|when|cut|not|last|lasts|spent|prune)\b[^.;]*$")


def lasts_to_frost(text: str, start: int) -> bool:
    r"""Whether nothing but bloom can be what lasts from `start` of the text until frost.

    >>> lasts_to_frost("poor soil\nall summer until frost", 14)
    True
    >>> lasts_to_frost("Water all summer until frost", 10)
    False
    """
    folded = fold(text)
    line = folded.rfind("\n", 0, start) + 1
    above = folded[folded.rfind("\n", 0, max(line - 1, 0)) + 1 : max(line - 1, 0)]
    label = f"{above} " if _LABEL_ABOVE.fullmatch(above) else ""
    return not _HARVESTED.search(folded) and not _OTHERS.search(label + folded[line:start])
