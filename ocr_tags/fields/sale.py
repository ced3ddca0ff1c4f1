"""The price of one plant, and in which of the world's dollars."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from ocr_tags.fields.lands import american, crown, dollar
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Price

_SIGNS = {
    "CAD": "ca$ c$ cad cad$ cdn$ cdn",
    "USD": "$ us$ usd usd$",
    "AUD": "a$ au$ aud aud$",
    "NZD": "nz$ nzd nzd$",
    "EUR": "€ eur",
    "GBP": "£ gbp",
    "CHF": "chf",
    "PLN": "zł pln",
    "SEK": "sek",
    "DKK": "dkk",
    "NOK": "nok",
    "": "kr kr.",
}
_CURRENCY = {sign: currency for currency, signs in _SIGNS.items() for sign in signs.split()}
_SIGN = "|".join(
    re.sub(r"(?<=[a-z])\\\$", r" ?\\$", re.escape(sign)) for sign in sorted(_CURRENCY, key=len, reverse=True)
)
_CODE = r"(?:[ \n]?\(?(?P<code>usd|cad|cdn|aud|nzd)\b)?"
_AMOUNT = (
    r"(?P<whole>\d{1,3}(?:,\d{3})+|\d{1,4})(?:(?P<point>[.,:]) ?(?P<cents>\d{2})(?!\d)|[.,:]-"
    r"|(?P<worn> \d{2})(?=\s*(?:$|[\t\n])))?"
)
_FORMS = (
    later(rf"(?<![\w$€£])(?P<sign>{_SIGN}) ?{_AMOUNT}{_CODE}(?!(?!ea\b)[\w%]|[.,-]\d)"),
    later(
        rf"(?<![\w$€£,])(?<!\d\.){_AMOUNT} ?(?P<sign>€|eur\b|£|usd\b|cad\b|aud\b|nzd\b|gbp\b|chf\b"
        rf"|zł|pln\b|sek\b|dkk\b|nok\b|kr\b\.?|\$){_CODE}(?!\w)"
    ),
)
_CENTS = later(r"(?:^|(?<=[\n\t]))(?:only |sale |now )?(?P<cents>[1-9]\d)¢(?= ?(?:each|ea\b|[\n\t]|$))")
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_SPOKEN = later(
    rf"(?<![\w$.,])(?P<amount>\d{{1,3}}|{'|'.join(_NUMBERS)}) (?:bucks|dollars)\b"
    r"(?! (?:off|to|from|of|for)\b)"
)
"""What a person writes by hand: "2 bucks each"."""
_BARE = later(
    r"(?:^|(?<=[\n\t])|(?<=[\n\t]#\d )|(?<=[\n\t]#\d\d )|(?<=[\n\t]0\dg )|(?<=pk ))"
    r"(?P<price>[1-9]\d{0,2}\.\d[059])(?= ?(?:each|ea\.?)?\s*(?:$|[\n\t]))"
)
"""What a till prints may lack its sign: alone in a line, or behind the class of the pot."""
_NOT_PRICE_BEFORE = later(
    r"(?:\b\d{1,3}(?:\+| (?:or more|and up|plus))[ :@/]{0,3}(?!\n)"
    r"|(?<!of )(?<!\d)\d{1,3}\s?(?:for|/|@|fur|pour|por)\s?|\b(?:save|off|extra|rabatt|deposit"
    r"|fine of|fines? (?:up )?to"
    r"|over|value|worth|up to)\s?)$"
)
_OLD = later(r"(?:\b(?:was|orig(?:inally)?\b\.?|compare at|statt|avant|antes|before)[\s:]*(?:price[\s:]*)?)$")
_USUAL = later(r"(?:\b(?:reg(?:ular(?:ly)?)?\b\.?|msrp|srp|list|retail)[\s:]*(?:price[\s:]*)?)$")
"""Before a price that is a former one only where the tag prints another."""
_NOT_PRICE_AFTER = later(
    r"\s?(?:(?:each |ea\.? )?(?:for|from) (?:\d{2,}(?:\+| ?(?:or more|plus)\b)|[2-9]\d{1,2}\b)"
    r"|donat\w+|to |goes |from |of |off\b|value\b|fine\b|coupon|rebate|discount|savings|deposit"
    r"|/ ?\d(?! ?(?:for|pour|fur)\b)"
    r"(?![\d.]{0,3}[ -]?(?:½|¼|¾|\d/\d)? ?(?:[\"″”]|in\b|inch|cm|mm|l\b|gal|pk\b|pack)))"
)

_OF_SALE = later(
    r"(?:[\W\d_]|(?<![^\W\d_])(?:price[ds]?|prix|preis|precio|prezzo|prijs|pris|only|just|now|sale|sold"
    r"|special|offer"
    r"|our|your|regular|rrp|was|reg|each|ea|per|for|at|an?|one|plants?|pots?|flats?|packs?|trays?|baskets?"
    r"|pi[eè]ce"
    r"|chacun|st[uü]ck|stk|stuk|plus|tax|taxe?s|vat|incl?|gal(?:lons?)?|qts?|in|inch|cm|mm|l|lt|litres?|hanging"
    r"|today|to|clearance|fib(?:er|re)|peat|clay|net|square|bags?|tubes?|bare|root|bulbs?|plugs?|tubestock|punnets?|cells?|seedlings?|deep|the|cash|che(?:ck|que)|only|or"
    r"|shrubs?|trees?|perennials?|annuals?|vines?|grass(?:es)?|ferns?|herbs?|houseplants?)(?![^\W\d_]))*"
)


def read_price(tag: TagText) -> Iterator[Found[Price]]:
    """The price of one plant. Offers for several, savings, fines and former prices are no price.

    "$" alone is taken for US dollars, unless the tag speaks French too: then it is Canadian where the tag
    measures in centimetres, and elsewhere only the French form "6,99 $" is taken, for Canadian dollars.
    Where the tag names its country, "$" is that country's; where only its spelling is not American, "$"
    alone tells no currency and is left out.

    >>> [found.value for found in read_price(TagText("Was $9.99 Now $6.99"))]
    [Price(amount='6.99', currency='USD')]
    >>> list(read_price(TagText("2 for $10. Save $5")))
    []
    """
    folded = tag.string.lower()
    if len(folded) != len(tag.string):
        return
    matches = [match for form in _FORMS for match in form.finditer(folded) if _is_price(folded, match)]
    own = [match for match in matches if not _USUAL.search(_before(folded, match))]
    for match in own or matches:
        if price := _price(tag.string, match, large=bool(_LARGE.search(folded))):
            yield Found(price, match.span(), _price_certainty(folded, match))
    if not matches and re.search("[a-z]{3}", folded):
        for match in _BARE.finditer(folded):
            yield Found(Price(match["price"], "USD"), match.span("price"), 0.6)
    for match in _SPOKEN.finditer(folded):
        amount = match["amount"]
        if _is_price(folded, match) and (land := dollar(tag.string)):
            figure = amount if amount.isdigit() else str(_NUMBERS.index(amount) + 1)
            yield Found(Price(figure, land), match.span(), 0.7)
    for match in _CENTS.finditer(folded):
        if _is_price(folded, match):
            yield Found(Price(f"0.{match['cents']}", "USD"), match.span(), 0.6)


def _before(folded: str, match: re.Match[str]) -> str:
    return folded[max(0, match.start() - 30) : match.start()]


def _is_price(folded: str, match: re.Match[str]) -> bool:
    before = _before(folded, match)
    old = _OLD.search(before) or _NOT_PRICE_BEFORE.search(before)
    return not old and not _NOT_PRICE_AFTER.match(folded, match.end())


def _price(text: str, match: re.Match[str], *, large: bool) -> Price | None:
    whole, cents = match["whole"].replace(",", ""), (match["cents"] or match["worn"] or "").strip()
    currency = _CURRENCY[match["sign"].replace(" ", "")]
    if match["code"]:
        currency = _CURRENCY[match["code"]]
    elif not currency:
        land = crown(text)
        if land is None:
            return None
        currency = land
    elif match["sign"] == "$":
        after = match.start("sign") > match.start("whole")
        land = ("CAD" if match["point"] == "," else None) if after else dollar(text)
        if land is None:
            return None
        currency = land
    if not cents and len(whole) > 2 and not large:
        return None  # "$699" is $6.99 with its point or its raised cents lost
    amount = Decimal(f"{whole}.{cents}") if cents else Decimal(whole)
    return Price(str(amount), currency) if amount > 0 else None


def of_land(price: Price, printed: str, sides: str) -> Price | None:
    """The price, "$" alone being that of the land which any side of the tag names; None where none tells.

    >>> of_land(Price("39.95", "USD"), "$39.95", "Acer palmatum" + chr(10) + "Carrow Nursery, Wombeek VIC")
    Price(amount='39.95', currency='AUD')
    """
    if price.currency != "USD" or re.search("(?i)us", printed):
        return price
    if not re.search(r"[^\W\d_]|[$¢]", printed):
        return price if american(sides) else None
    land = dollar(sides)
    return replace(price, currency=land) if land else None


_LARGE = later(
    r"(?<![\d.,])(?:(?:[7-9]|[1-9]\d) ?-?gal|#\s?(?:[7-9]|10|15|2[05]|45|65)(?!\d)"
    r"|(?:[3-9]\d|\d{3}) ?(?:l|lt|ltr|lit(?:re|er)s?)\b"
    r"|[3-6]\d0 ?mm (?:pot|bag|tub)|\d ?[\"”″'] ?cal\b)"
    r"|\b(?:caliper|b ?& ?b|balled (?:&|and) burlapped|field[ -](?:dug|grown))\b"
)
"""Plants so large cost hundreds: of smaller ones "$699" has lost its point."""
_EACH = later(
    r" ?(?:each|ea\b|(?:[/|]|the|an?|per) ?(?:\w+ )?"
    r"(?:pots?|plants?|packs?|flats?|trays?|bundles?|punnets?|each|ea)\b)"
)
_CLOSING = later(r"(?:[.!] |  | [–—|·•-] ?|\t|, [^\W\d_]+(?: [^\W\d_]+)? )$")


def _price_certainty(folded: str, match: re.Match[str]) -> float:
    """How sure it is a price: a whole figure among words that speak of none may be anything misread."""
    if match["worn"]:
        return 0.6
    if match["cents"]:
        return 0.95
    start = max(folded.rfind(end, 0, match.start()) for end in "\t\n") + 1
    rest = folded[start : match.start()] + " " + re.split(r"[\t\n]", folded[match.end() :])[0]
    if _OF_SALE.fullmatch(rest):
        return 0.75
    ends = match.end() == len(folded) or folded[match.end()] in "\t\n"
    apart = ends and _CLOSING.search(folded, 0, match.start())
    return 0.65 if apart or _EACH.match(folded, match.end()) else 0.45
