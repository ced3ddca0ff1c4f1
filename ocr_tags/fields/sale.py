"""What is sold and for how much: the container and the price.

A container class is a name, not a volume: "#1" is no gallon, and a trade gallon holds less than one
(American Standard for Nursery Stock, ANSI Z60.1). So the printed words are the value.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from ocr_tags.fields.phrases import cells, fold, french, label_phrases
from ocr_tags.fields.values import labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Price

# ---------------------------------------------------------------- container

_NUMBER = r"\d{1,3}(?:[.,]\d{1,2})?(?: ?[-/] ?\d/\d| \d/\d| ?[½¼¾])?"
_LENGTH = r"(?:inch(?:es)?|in\b\.?|\"|”|″|''|-inch|-in\b\.?|cm\b|po\b|pouces?)"
_VOLUME = (
    r"(?:gal(?:lons?|\b\.?)|-gal(?:lon)?|qts?\b\.?|quarts?|pts?\b\.?|pints?|l\b|lt\b|ltr\b|litres?"
    r"|liters?|litros?|liter|ml\b)"
)
_POT = (
    r"(?:pots?|containers?|topf|tray|macetas?|contenants?|nursery pot|square|round|band|basket"
    r"|hanging basket|tub)"
)
_POTTED = later(
    rf"(?<![\w.,/#$-]){_NUMBER} ?(?:{_LENGTH}|{_VOLUME}) ?(?:(?:square|round|nursery|trade|deep|peat"
    rf"|fiber|plastic) )?{_POT}\b"
    rf"|(?<![\w$])#\s?\d{{1,2}} {_POT}\b|\b(?:pot|topf|maceta|contenant|potmaat)(?: de"
    rf"| ø)? {_NUMBER} ?(?:{_LENGTH}|{_VOLUME})(?!\w)"
    rf"|\bgallon pot\b|\bquart pot\b"
    rf"|\b(?:pot|topf|vaso|vase|maceta|kruka|potte) [ø∅⌀] ?{_NUMBER}(?: ?(?:cm|mm)\b)?(?!\w)"
    rf"|(?<![\w$])[øº∅⌀] ?{_NUMBER} ?(?:cm|mm)\b|(?<![\w.,/#$-]){_NUMBER} ?cm ?[ø∅⌀]"
)
_MEASURE = later(
    rf"(?P<whole>\d{{1,3}})(?:[.,]\d{{1,2}})?(?: ?[-/]? ?(?P<top>\d)/(?P<under>\d)| ?[½¼¾])? ?"
    rf"(?:(?P<cm>cm\b|[ø∅⌀])|(?P<inch>{_LENGTH})|(?P<gallon>gal|-gal)|(?P<litre>(?:lt?|ltr|lit(?:re|er|ro)s?)\b))"
)
_LARGEST = {"cm": 100, "inch": 36, "gallon": 100, "litre": 400}
"""No pot of the trade is wider or holds more (common practice, no source): a greater figure is misread."""
_PACK = later(
    r"(?<![\w-])(?:\d{1,2}|four|six|jumbo|half) ?[- ]?(?:packs?|pk|pak)\b\.?|\b(?:10 ?x ?20|1020|606|804"
    r"|806|1204|1206|1801|3601) (?:flat|tray)\b"
    r"|\bflat of \d{1,3}\b|(?<!\w)\d{1,3}[- ](?:ct|count|cells?) (?:plug )?(?:flat|tray|pack)\b"
)
_CLASS = later(
    rf"(?:#\s?(?:[1-9]|1\d|[2346]5|[2-4]0|100)|(?:trade )?(?:{_NUMBER}|one|two|three|five|seven"
    rf"|ten) ?{_VOLUME}"
    r"|p ?(?:7|8|9|10|11|12|13|14|15|17|19)|c ?(?:[1-9]|1\d|[2-9]\d)(?:[.,][05])?|gallon|quart|qt\.?|pint"
    r"|sp ?[1-5])"
)
_CLASSES = later(rf"{_CLASS.pattern}(?: ?[/(] ?{_CLASS.pattern}\)?)?")
# Sold without a pot, or in trays: "racines nues", "wurzelnackt", "wortelgoed" are bare roots.
_POTLESS = later(
    r"bare[- ]?roots?|racines? nues?|wurzelnackt|wortelgoed|kale wortel|raiz desnuda"
    r"|balled (?:&|and) burlapped|root[- ]?ball(?:ed)?|(?:plug|cell|seedling) (?:trays?|packs?|flats?)"
)
_LOOSE = later(rf"(?:{_POTLESS.pattern}|plugs?|hanging basket|(?:starter )?tray|flat|basket|liner|b ?& ?b)")
# A letter for a diameter is read as a nought.
_ROUND = later(r"[0oø] ?(?P<width>\d{1,2}(?:[.,]5)? ?cm)")
_CONTAINER_LABELS = label_phrases("container")
_SIZE = later(
    rf"(?:[0ø] ?)?(?:{_NUMBER} ?(?:{_LENGTH}|{_VOLUME})|{_CLASS.pattern}|{_PACK.pattern}|{_LOOSE.pattern})"
    r".{0,12}"
)
_SIZE_LABEL = later(r"(?<![^\n\t])(?:sale |sold )?(?:size|format|formaat|taille|gr[oö]sse|tama[nñ]o) ?: ?")
_PLANTING = later(
    r"\b(?:in|into|with|of|to|for|use|add|per|fill|large|least|our|than|min(?:imum)?\.?)\s(?:an? "
    r"|at least )*$"
)


def read_container(tag: TagText) -> Iterator[Found[str]]:
    """The pot or pack the plant is sold in, as printed.

    >>> [found.value for found in read_container(TagText("1 gal" + chr(10) + "Plant in a 12 in. pot"))]
    ['1 gal']
    """
    text = tag.string
    folded = fold(text)
    seen = False
    for found in labelled(text, _CONTAINER_LABELS):
        if _SIZE.fullmatch(folded[found.start : found.end].strip()):
            seen = True
            if not _is_made(folded[found.start : found.end]):
                continue
            # "Pot 12 cm": the word belongs to the size
            start = found.label if found.bare else found.start
            yield Found(clean_size(text[start : found.end]), (start, found.end), found.certainty)
    if seen:
        return
    for pattern, certainty in ((_POTTED, 0.9), (_PACK, 0.85)):
        for match in pattern.finditer(folded):
            planting = _PLANTING.search(folded[max(0, match.start() - 24) : match.start()])
            if not planting and _is_made(match[0]):
                seen = True
                yield Found(clean_size(text[slice(*match.span())]), match.span(), certainty)
    for start, end in cells(text) if not seen else ():
        yield from _whole_cell(text, folded, start, end)


def _whole_cell(text: str, folded: str, start: int, end: int) -> Iterator[Found[str]]:
    """A container class, volume or "bare root" that is all a cell holds, a label "Size" aside."""
    label = _SIZE_LABEL.match(folded, start, end)
    start = label.end() if label else start
    span = (start, end)
    if _after_label(text, start) and not label:
        return
    if not _is_made(folded[start:end]):
        return
    if _CLASSES.fullmatch(folded, start, end):
        yield Found(
            clean_size(text[start:end]), span, 0.9 if label else 0.75 if folded[start] in "pc" else 0.85
        )
    elif _POTLESS.fullmatch(folded, start, end):
        yield Found(clean_size(text[start:end]), span, 0.8)
    elif round_ := _ROUND.fullmatch(folded, start, end):
        yield Found(f"Ø {text[slice(*round_.span('width'))]}", span, 0.65)


def _is_made(folded: str) -> bool:
    """Whether pots of the sizes printed are made: none is 444 in. wide, and 4/2 is no part of an inch.

    >>> _is_made('4-1/2" pot'), _is_made('444" pot'), _is_made('4 4/2" pot'), _is_made("0 gal")
    (True, False, False, False)
    """
    for size in _MEASURE.finditer(folded):
        largest = _LARGEST[size.lastgroup or "cm"]
        part = size["top"] is None or (size["top"] < size["under"] and size["under"] in "2348")
        if not part or int(size["whole"]) > largest or not re.search("[1-9½¼¾]", size[0]):
            return False
    return True


def clean_size(text: str) -> str:
    return " ".join(text.split()).strip(" ,;:|•")


def _after_label(text: str, start: int) -> bool:
    """True when another label's column or line leads to this cell: "Spacing" and then "2 L" is no pot."""
    line = text[:start].rstrip("\t").split("\n")[-1] if text[:start].endswith("\t") else ""
    return bool(re.search(r"[^\W\d_]{4,}\s*$", line)) and not re.search(r"(?i)plants?|perennial|shrub", line)


# ---------------------------------------------------------------- price

_SIGNS = {
    "CAD": "ca$ c$ cad cad$ cdn$",
    "USD": "$ us$ usd",
    "AUD": "a$ au$ aud",
    "NZD": "nz$ nzd",
    "EUR": "€ eur",
    "GBP": "£ gbp",
    "CHF": "chf",
}
_CURRENCY = {sign: currency for currency, signs in _SIGNS.items() for sign in signs.split()}
_SIGN = "|".join(re.escape(sign) for sign in sorted(_CURRENCY, key=len, reverse=True))
_AMOUNT = (
    r"(?P<whole>\d{1,3}(?:,\d{3})+|\d{1,4})(?:(?P<point>[.,]) ?(?P<cents>\d{2})(?!\d)|[.,]-"
    r"|(?P<worn> \d{2})(?=\s*(?:$|[\t\n])))?"
)
_FORMS = (
    later(rf"(?<![\w$€£])(?P<sign>{_SIGN}) ?{_AMOUNT}(?![\w%]|[.,-]\d)"),
    later(rf"(?<![\w$€£.,]){_AMOUNT} ?(?P<sign>€|eur\b|£|usd\b|cad\b|aud\b|nzd\b|gbp\b|chf\b|\$)(?!\w)"),
)
_CENTS = later(r"(?:^|(?<=[\n\t]))(?:only |sale |now )?(?P<cents>[1-9]\d)¢(?= ?(?:each|ea\b|[\n\t]|$))")
_NOT_PRICE_BEFORE = later(
    r"(?:\d\s?(?:for|/|@|fur|pour|por)\s?|\b(?:save|off|extra|rabatt|deposit|fine of|fines? (?:up )?to"
    r"|over|value|worth|up to)\s?)$"
)
_OLD = later(
    r"(?:\b(?:was|reg(?:ular)?\b\.?|regularly|orig(?:inally)?\b\.?|compare at|msrp|list|retail|statt"
    r"|avant|antes|before)[\s:]*(?:price[\s:]*)?)$"
)
_NOT_PRICE_AFTER = later(
    r"\s?(?:donat\w+|to |goes |from |of |off\b|value\b|fine\b|coupon|rebate|discount|savings|deposit|/ ?\d)"
)

_OF_SALE = later(
    r"(?:[\W\d_]|(?<![^\W\d_])(?:price[ds]?|prix|preis|precio|prezzo|prijs|pris|only|just|now|sale|sold|special|offer"
    r"|our|your|regular|rrp|was|reg|each|ea|per|for|at|an?|one|plants?|pots?|flats?|packs?|trays?|baskets?|pi[eè]ce"
    r"|chacun|st[uü]ck|stk|stuk|plus|tax|taxe?s|vat|incl?|gal(?:lons?)?|qts?|in|inch|cm|l|lt|litres?|hanging"
    r"|today|to|clearance)(?![^\W\d_]))*"
)


def read_price(tag: TagText) -> Iterator[Found[Price]]:
    """The price of one plant. Offers for several, savings, fines and former prices are no price.

    "$" alone is taken for US dollars, unless the tag speaks French too: then it may be Canadian, and only
    the French form "6,99 $" is taken, for Canadian dollars.

    >>> [found.value for found in read_price(TagText("Was $9.99 Now $6.99"))]
    [Price(amount='6.99', currency='USD')]
    >>> list(read_price(TagText("2 for $10. Save $5")))
    []
    """
    folded = tag.string.lower()
    if len(folded) != len(tag.string):
        return
    for pattern in _FORMS:
        for match in pattern.finditer(folded):
            if _is_price(folded, match) and (price := _price(tag.string, match)):
                yield Found(price, match.span(), _price_certainty(folded, match))
    for match in _CENTS.finditer(folded):
        if _is_price(folded, match):
            yield Found(Price(f"0.{match['cents']}", "USD"), match.span(), 0.6)


def _is_price(folded: str, match: re.Match[str]) -> bool:
    before = folded[max(0, match.start() - 30) : match.start()]
    old = _OLD.search(before) or _NOT_PRICE_BEFORE.search(before)
    return not old and not _NOT_PRICE_AFTER.match(folded, match.end())


def _price(text: str, match: re.Match[str]) -> Price | None:
    whole, cents = match["whole"].replace(",", ""), (match["cents"] or match["worn"] or "").strip()
    after = match.start("sign") > match.start("whole")
    currency = _CURRENCY[match["sign"]]
    if match["sign"] == "$":
        if after:
            if match["point"] != ",":
                return None
            currency = "CAD"
        elif french(text):
            return None
    if not cents and len(whole) > 2:
        return None  # "$699" is $6.99 with its point or its raised cents lost
    amount = Decimal(f"{whole}.{cents}") if cents else Decimal(whole)
    return Price(str(amount), currency) if amount > 0 else None


def _price_certainty(folded: str, match: re.Match[str]) -> float:
    """How sure it is a price: a whole figure among words that speak of none may be anything misread."""
    if match["worn"]:
        return 0.6
    if match["cents"]:
        return 0.95
    start = max(folded.rfind(end, 0, match.start()) for end in "\t\n") + 1
    rest = folded[start : match.start()] + " " + re.split(r"[\t\n]", folded[match.end() :])[0]
    return 0.75 if _OF_SALE.fullmatch(rest) else 0.45
