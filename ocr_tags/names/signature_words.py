"""The words by which firms and bodies that sign a tag are told, and what beside a name is none of it.

Words of firms that sell plants and of bodies that hold plant sales: common practice, no source.
"""

from __future__ import annotations

import re

from ocr_tags.names.series_words import WORD
from ocr_tags.patterns import later

HOUSE = later(
    r"Suppl(?:y|ies)|Stands?|Farmstands?|Merchants?|Traders|Trading|Imports?|Nurserym[ae]n|Nurserywom[ae]n"
    r"|Seedsm[ae]n|Ranch|Societ(?:y|ies)|Soc\.?|Trust|Partnership"
    r"|Association|Landscap(?:es?|ers|ing)|Botanics|Botanica|Exotics|Specialists?|Transplants"
    r"|Climbers|Carnivores|Bromeliads|Bamboos?|Bonsai|Wildflowers|Meadows|Mosses|Evergreens|Seedsavers|Outfitters"
    r"|Market Gardens?|Gardeners|Bushes|Canes|Stock|Groundcovers|Plugs|Greenery|Florists?|Florals|Arboretum"
    r"|District"
    r"|Bros\.?|Brothers|Potplanten|Potteplanter|Perenner|Ornamentals|Introductions|Emporium|Oddities|Curiosities"
    r"|Rarities|Indigenous|Reveg(?:etation)?|Landcare|Shelterbelts?|Swappers|Volunteers|Council|P\.?T\.?[AO]\.?"
    r"|College|University|Elementary|Topiary|Microgreens|Hardwoods|Farmers"
    r"|Kwekerij|Gärtnerei|Baumschulen?|Plantskola|(?:Handels)?[Tt]rädgård|Planteskole|Gartneri|Staudengärten|Stauden"
)
RANGE_TOO = later(
    r"Barn|Depot|Patch|Acres?|Homestead|Estates?|Club|Guild|Collective|Exchange|Edibles|Interiors|Foliage|Circle"
    r"|Espaliers|Vineyards?|Woodlands"
)
"""Firms end with such words, but ranges do too: over a title alone they tell neither."""
BODY = later(r"(?:Garden(?:ing|ers)?|Ag|Plant|Flower|Horticultural|\w+ School|4-H) Club")
"""Clubs of people, unlike a range that calls itself one."""
NO_HEADING = later(
    r"Compan(?:y|ies)|Nurser(?:y|ies)|Growers|Emporium|Elementary|P\.?T\.?[AO]\.?|Society|Council|Florals|Oddities"
    r"|Farmstands?|Merchants|Traders|Nurserym[ae]n|Seedsm[ae]n|Propagators|Arboretum"
)
"""What ends with these is who sells the plant, of whatever words it is made."""
SHOP = later(r"Garden (?:Cent(?:er|re)|Shop|Mart|World)", re.I)
"""A shop may only have priced the tag: less sure than a grower."""
_GOOD = (
    r"(?:Trees?|Shrubs?|Seeds?|Plugs?|Bulbs?|Plants?|Herbs?|Roses?|Vines?|Berry|Berries|Flowers?|Fruits?|Turf"
    r"|Gardens?|Landscapes?|Alpines?|Ferns?|Grasses|Perennials?|Orchids?|Cacti|Succulents?|Climbers?|Hedging"
    r"|Shelterbelts?|Tubers?|Conifers?)"
)
GOODS = later(rf"{_GOOD} (?:&|and) {_GOOD}", re.I)
GROUNDS = later(
    r"(?:Botanic(?:al)?|Herb|School|Community|Teaching|Physic|Walled|Allotment|Memorial) Gardens?", re.I
)
"""Gardens that sell or give away what they grow."""
FOREIGN = later(
    r"[A-ZÀ-Þ]\w*(?:kwekerij(?:en)?|gärtnerei(?:en)?|gartenbau|baumschulen?|kulturen|hof|garten|huis|skolan?|skolen"
    r"|gartneri(?:et)?|trädgård|handel|pflanzen|planten|bollen|zwiebeln|kontor|keller|freunde|zucht|erei)"
    r"|Orchidées|Conifères|Arbres|Plantes|Bulbes|Cactées|Rosiers|Agrumes|Agrumeto|Floricoltura|Azienda|Plantas"
    r"|Semillas|Cultivos|Huertas?|Meithrinfa|Planhigion|Horticulture|Alpinum|Koniferen|Coniferen|Stauden|Heesters"
    r"|V\.O\.F\.?|Gebr\.?|Gebroeders|Gebrüder|Firma|Ets\.?|Ville De|Friends Of"
)
"""Firms of other tongues begin with their trade: "Baumschule Eschlach", "Kräuterhof Tannweiler"."""
EVENT = later(
    r" (?:(?:Annual|Spring|Fall|Autumn|Summer|Native|Plant|Seedling|Tree|Bulb|Herb|Shrub) ){0,3}(?:Sale|Swap"
    r"|Fundraiser|Fair)\b",
    re.I,
)
"""The sale that a body holds is no part of its name."""
OTHER_MATTER = later(
    r" (?:(?:sku|lot|item|no|ean|upc|qty|batch|abn|acn|est|since|tray|zones?|ppaf|pbr|eu|us)\b"
    r"|(?:bay|bench|row)(?= [A-Z]?\d| [A-Z]\b|$)|(?:uspp|qr)\b"
    r"|(?:uk )?(?:plant ?passport|pp) (?=A\b)|plant ?passport\b|product of\b|(?:made|grown) in\b)",
    re.I,
)
"""What begins behind a name without a mark between: numbers, rights, passports, the land."""
SPEAKS = later(r" (?:ships|grows|raises|supplies|sends|propagates|grafts|sells|offers|donates)\b")
"""Behind a firm's name, what it does."""
TAIL = later(
    r", (?:[\w-]+ ){0,2}?(?P<trade>[Gg]rowers|[Nn]urser(?:y|ies)|[Nn]urserym[ae]n|[Ss]eedsm[ae]n"
    r"|[Ss]pecialists|[Hh]ybridi[sz]ers|[Ww]holesale(?:rs?)?)(?=[.,;]|\s|$)"
)
"""Behind a name, what its people are; in capitals it is part of it: "Marl & Daughters, Rose Growers"."""
TRADED = later(
    rf"^\W*(?P<name>{WORD}(?:[ ](?:&|and|of|{WORD})){{1,4}}), (?P<trade>(?:[A-Z][\w-]+ )?"
    r"(?:Plants(?:wo)?m[ae]n|Nursery(?:wo)?m[ae]n|Seedsm[ae]n|Growers|Rosarians|Hybridi[sz]ers|Propagators|Wholesalers))"
    r"(?=\W*$|[.,;·•|]\s)"
)
"""A line of its own with a name and what its people are: "Marl & Thrush, Nurserymen"."""
OWNER = later(
    r"(?!(?:chef|cook|gardener|grower|grandma|grandmother|granny|nature|lady|ladies|baker|lover"
    r"|collector|bee|kid"
    r"|children|beginner|today|summer|spring|winter|autumn|world|farmer|bachelor|shepherd|butcher"
    r"|florist|let|it"
    r"|that|what|here|there|don|won|mother|father|valentine|new year)['’])[A-Z][a-zA-Z]+['’][sS]$",
    re.I,
)
"""Whose firm it is: "Harper's Ferryhouse Herbs"."""
