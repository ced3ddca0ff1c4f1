"""In whose dollars or crowns a tag states its price, where it prints "$" or "kr" alone."""

from __future__ import annotations

import re

from ocr_tags.fields.phrases import french
from ocr_tags.patterns import later

_PROVINCES = (
    r"(?:Ontario|Ont\.|B\. ?C\.|British Columbia|Alberta|Saskatchewan|Manitoba|Qu[ée]bec|Nova Scotia"
    r"|New Brunswick|Newfoundland|Labrador|Prince Edward Island|Yukon|P\.?E\.?I\.?|Sask|Alta|Que|Ont)"
)
_PROVINCE = r"(?:ON|BC|AB|SK|MB|QC|NB|NS|PEI?|YT|N\.-?[BS]\.|Ont\.|Alta\.|Sask\.|Man\.|Qu[ée]\.)"
_CLOSES = r"(?=\)?\s*(?:$|[\t\n•·|,.;$]|\d))"
_AUSTRALIAN_TOWNS = (
    r"(?:Sydney|Brisbane|Adelaide|Hobart|Canberra|Darwin|Launceston|Geelong|Ballarat|Bendigo|Toowoomba|Cairns"
    r"|Townsville|Wollongong|Dubbo|Wagga|Mildura|Bundaberg|Mackay|Rockhampton|Gympie|Queensland|Tasmania"
    r"|New South Wales|South Australia|Western Australia)"
)
_NEW_ZEALAND_TOWNS = (
    r"(?:Auckland|Christchurch|Dunedin|Tauranga|Invercargill|Rotorua|Whangarei|(?:Upper|Lower) Hutt"
    r"|Palmerston North|New Plymouth|Gisborne|Timaru|Kerikeri|Taup[oō]|Wh?anganui|Pukekohe|Katikati"
    r"|Northland|Waikato|Otago|Southland|Taranaki|Hawke['’]s Bay|Bay of Plenty|Manawat[uū])"
)
_CANADIAN_TOWNS = (
    r"(?:Winnipeg|Calgary|Edmonton|Regina|Ottawa|Toronto|Montr[ée]al|Mississauga|Kelowna|Nanaimo|Kamloops"
    r"|Lethbridge|Brandon|Portage la Prairie|Thunder Bay|Sudbury|Fredericton|Moncton|Charlottetown|Gatineau"
    r"|Sherbrooke|Trois-Rivi[èe]res|Saint-[A-Z]\w+,? \(?Qu[ée]bec)"
)
_OF_ADDRESS = r"[A-Z][\w'’.-]*,? \(?"
"""A town or province counts behind another word in capitals and at the end of its line, as in an address."""
# What only a tag printed for that country says. Numbers of trade items begin with 93 or 94 where GS1
# Australia or New Zealand gave them out (gs1.org, list of prefixes); planter bags named PB are New
# Zealand's (common practice, no source).
_LANDS = (
    (
        "AUD",
        later(
            r"\b(?:NSW|QLD|VIC|TAS)(?: \d{4})?\b|\.com\.au\b|\bABN\b|(?<![\d-])9 ?3\d{5} ?\d{6}(?![\d-])"
            r"|(?i:\b(?:(?:grown|made) in|product of) australia\b)|\bNSW, Qld\b|\bQld, NSW\b"
            rf"|{_OF_ADDRESS}{_AUSTRALIAN_TOWNS}{_CLOSES}|\b(?:SA|WA|NT|ACT|Vic|Qld|Tas)\.? \d{{4}}\b"
            r"|(?i:\bmelbourne cup\b)"
        ),
    ),
    (
        "NZD",
        later(
            r"\.co\.nz\b|\bAotearoa\b|\bk[uū]mara\b|(?i:\blabour weekend\b)"
            r"|(?i:\b(?:(?:grown|made) in|product of) new zealand\b)|\bNZ natives?\b"
            r"|(?<![\d-])9 ?4\d{5} ?\d{6}(?![\d-])"
            rf"|{_OF_ADDRESS}{_NEW_ZEALAND_TOWNS}{_CLOSES}"
            r"|\bPB ?(?:3/4|1\.5|2|3|5|6\.5|8|10|12|18|25|28|40|60|95|150)\b(?![.,]?\d)"
        ),
    ),
    (
        "CAD",
        later(
            r"\b[A-CEGHJ-NPR-TVXY]\d[A-Z] \d[A-Z]\d\b|\bCDN\b"
            r"|(?m:^)[A-Z][A-Z .'’-]{3,24},? (?:BC|AB|SK|MB|QC|NB|NS|PEI)(?m:$)|(?i:\b(?:(?:grown"
            r"|made) in|product of) canada\b)"
            r"|(?i:\b(?:may|victoria day) long weekend\b|\bvictoria day\b)"
            rf"|{_OF_ADDRESS}{_CANADIAN_TOWNS}{_CLOSES}|[A-Z][\w'’.-]*[a-zà-ÿ],? \(?{_PROVINCE}{_CLOSES}"
            rf"|[A-Z][\w'’.-]+(?:, | \(){_PROVINCES}\)?(?=\s*(?:$|[\n\t•·|]))"
        ),
    ),
)
_NOT_AMERICAN = later(r"(?i)\b(?:colours?|fertilis\w+|(?:centi)?metres?|litres?|vegies?|\d{2,3} ?mm pots?)\b")
"""Words as they are not spelt, and pots as they are not measured, in the United States."""
_OTHER_NATIVE = later(r"(?i)\b(?:Australian|New Zealand|Kiwi|Aussie) natives?\b")
_MILLIMETRE_POT = later(
    r"(?i)(?<![\d.,–-])(?:[1-4]\d[05]|[5-9][05]|68) ?mm"
    r"(?: (?:squat |square |round |hanging )?(?:pots?|tubes?|bags?|baskets?)\b"
    r"|[ ·•|,/–-]*\$|$|(?=\n))"
    r"|\bpot,? [1-4]\d0 ?mm\b|\bpotted colou?r\b"
)
"""Australia tells pots in millimetres, New Zealand in litres or planter bags (common practice, no source)."""
_GALLONS = later(r"(?i)\d ?gal(?:lons?)?\b")
_SPANISH = later(r"(?i)\b(?:sombra|riego|altura|agua|pleno sol|espaciamiento|maceta|anchura)\b")
_METRIC = later(r"\d ?(?:cm|mm|m)\b|[°º˚] ?C\b")
_IMPERIAL = later(
    r"(?i)\d(?: ?[½¼¾])? ?-?(?:\"|”|″|''|inch(?:es)?\b|ins?\b\.?(?! (?:the|full|part|a|an|sun|shade|\d)\b)"
    r"|f(?:ee|oo)?t\b|['’′](?![a-z]{2}))|\d ?[°º˚]? ?F\b|\d ?gal(?:lons?)?\b"
)
_FEET_OR_INCHES = later(
    r"(?i)\d(?: ?[½¼¾])? ?-?(?:\"|”|″|inch(?:es)?\b|f(?:ee|oo)?t\b|['’′](?![a-z]{2}))|\d in\b|\d ?[°º˚]? ?F\b"
    r"|\bft\b"
)
_CELSIUS, _FAHRENHEIT = later(r"[°º˚] ?C\b"), later(r"\d ?[°º˚]? ?F\b")
_COLD_ZONE = later(r"\b(?i:zones?|zn?)[ :.]{0,2}0?[0-6][ab]?(?![\d.,])")
"""Zones so cold, on a tag that measures in centimetres, are those of Canada (common practice, no source)."""
_FRENCH = later(
    r"(?i)\b(?:soleil|mi-soleil|ombre|l[ée]gumes?|grimpante?|fleurit|comestible|bulbes|plante d['’]\w+"
    r"|arbuste|s[ée]rie|vivaces?|t[êe]te|ciboulette|feuillage|fleurs|plantez|engrais|griffes)\b"
)


_TWO_TONGUES = later(
    r"(?i)\b(?:annual|perennial|biennial|shrub|tree|vine|vegetable|herb|fern|grass|houseplant)s? ?[/|·] ?"
    r"(?:annuelle|vivace|bisannuelle|arbuste|arbre|grimpante|l[ée]gume|fine herbe|foug[èe]re|gramin[ée]e"
    r"|plante d['’]int[ée]rieur)"
)
"""Said in English and French, which with dollars only Canada prints (common practice, no source)."""


def dollar(text: str) -> str | None:
    """Whose dollar "$" is before a figure; None when that cannot be told."""
    named = [currency for currency, land in _LANDS if land.search(text)]
    if len(named) == 1:
        return named[0]
    if named:
        return None
    if _MILLIMETRE_POT.search(text) and not _FEET_OR_INCHES.search(text):
        return "AUD"
    speaks_french = french(text) or _FRENCH.search(text)
    canadian = _TWO_TONGUES.search(text) or (speaks_french and _METRIC.search(text))
    if canadian and not _SPANISH.search(text):
        return "CAD"
    not_american = _NOT_AMERICAN.search(text) or _CELSIUS.search(text)
    # Inches and gallons beside degrees Celsius or "colour" are Canada's habit (common practice, no source).
    if not_american and _IMPERIAL.search(text) and not _FAHRENHEIT.search(text):
        return "CAD"
    metric = len(_METRIC.findall(text)) >= 2 and not _FEET_OR_INCHES.search(text)
    if metric and (_COLD_ZONE.search(text) or _GALLONS.search(text)):
        return "CAD"
    foreign = _NOT_AMERICAN.search(text) or (_OTHER_NATIVE.search(text) and not _FEET_OR_INCHES.search(text))
    return None if metric or french(text) or foreign else "USD"


_KRONOR = (
    (
        "SEK",
        later(r"(?i)\.se\b|\b(?:sverige|sweden|svensk\w*|h[öo]jd|bredd|v[äa]xt\w*|jordm[åa]n|och|vatten)\b"),
    ),
    ("NOK", later(r"(?i)\.no\b|\b(?:norge|norway|norsk\w*)\b")),
    ("DKK", later(r"(?i)\.dk\b|\b(?:danmark|denmark|dansk\w*)\b")),
)


def crown(text: str) -> str | None:
    """Whose crown "kr" is beside a figure; None when that cannot be told."""
    named = [currency for currency, land in _KRONOR if land.search(text)]
    return named[0] if len(named) == 1 else None


def american(text: str) -> bool:
    """Whether a tag measures as the United States do, and nowhere else: what has no sign is dollars."""
    other = _METRIC.search(text) or re.search("[£€]", text)
    return bool(_IMPERIAL.search(text)) and not other and dollar(text) == "USD"
