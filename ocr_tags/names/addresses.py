"""Who is at home in an address: firms whose names hold no grower's word, told by what stands with them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from ocr_tags.names import lexicon
from ocr_tags.names.titles import Line
from ocr_tags.names.vocabulary import is_tag_word
from ocr_tags.patterns import later

Span = tuple[int, int]

_SITE = later(
    r"(?<![\w@.-])(?:www\.)?(?P<site>[a-z][a-z0-9-]{4,})\.(?:example\b|(?:co\.)?[a-z]{2,3}\b)(?:\.[a-z]{2,3}\b)?",
    re.I,
)
_WORD = later(r"[^\W\d_][\w’'-]*\.?|&")
_SMALL = frozenset(["&", "and", "of", "the", "de", "du", "des", "la", "le", "van", "von", "und", "et", "en"])
ON_SITE = 0.9
"""How sure a name is that the web address on the tag spells."""
LONE = 0.78
"""How sure a name of one word is that stands over an address."""
_FEWEST_LETTERS = 6
"""A name on the web shorter than this, of one word, tells too little."""
_STREET = (
    r"(?:Road|Rd|Street|Lane|Ln|Avenue|Ave|Highway|Hwy|Drive|Drove|Boulevard|Blvd|Crescent|Close|Turnpike|Pike"
    r"|Route|Rte|Chemin|Rue|Rang)"
)
IN_STREET = later(r".* (?:Road|Rd|Street|Avenue|Ave|Highway|Hwy|Boulevard|Blvd|Turnpike|Chemin)\.?", re.I)
"""A street and no firm, nor, as Lane and Close may be, a person: Outlook Road."""
STATE = (
    r"(?:A[BKLRZ]|BC|C[AOT]|DE|FL|GA|HI|I[ADLN]|K[SY]|LA|M[ABDEINOST]|N[BCDEHJLMSVY]|O[HKNR]|P[AE]|QC|RI"
    r"|S[ACDK]|T[NX]|UT|V[AT]|W[AIVY]|NSW|VIC|QLD|TAS|ACT"
    r"|(?:Ont|Que|Man|Sask|Alta|Ala|Ariz|Ark|Calif|Colo|Conn|Del|Fla|Ga|Ill|Ind|Kan|Ky|La|Md|Mass|Mich|Minn|Miss"
    r"|Mo|Mont|Neb|Nev|Okla|Ore|Pa|Tenn|Tex|Vt|Va|Wash|Wis|Wyo|Worcs|Herts|Bucks|Berks|Glos|Northants|Notts|Oxon"
    r"|Wilts|Hants|Lancs|Yorks|Cambs|Staffs|Leics|Beds)\.?)"
)
COUNTY = (
    r"(?:Bedfordshire|Berkshire|Buckinghamshire|Cambridgeshire|Cheshire|Cornwall|Cumbria|Derbyshire|Devon|Dorset"
    r"|Durham|Essex|Gloucestershire|Hampshire|Herefordshire|Hertfordshire|Kent|Lancashire|Leicestershire"
    r"|Lincolnshire|Lincs|Norfolk|Northamptonshire|Northumberland|Nottinghamshire|Oxfordshire|Rutland|Shropshire"
    r"|Somerset|Staffordshire|Suffolk|Surrey|Sussex|Warwickshire|Wiltshire|Worcestershire|Yorkshire|Powys|Gwynedd"
    r"|Dyfed|Fife|Angus|Perthshire|Aberdeenshire|Ayrshire|(?:Co\.?|County) [A-Z][a-z]+"
    r"|Otago|Southland|Canterbury|Waikato|Northland|Taranaki|Marlborough|Hawke['’]s Bay|Manawatu)"
)
OF_COUNTY = (
    r"(?i:Antrim|Armagh|Carlow|Cavan|Clare|Cork|Derry|Donegal|Down|Dublin|Durham|Fermanagh|Galway|Kerry|Kildare"
    r"|Kilkenny|Laois|Leitrim|Limerick|Londonderry|Longford|Louth|Mayo|Meath|Monaghan|Offaly|Roscommon|Sligo"
    r"|Tipperary|Tyrone|Waterford|Westmeath|Wexford|Wicklow)\b"
)
"""Counties after "Co.", which is no company there."""
LAND = (
    r"(?:Alabama|Arkansas|California|Colorado|Connecticut|Delaware|Florida|Georgia|Idaho|Illinois|Indiana|Iowa"
    r"|Kansas|Kentucky|Louisiana|Maine|Maryland|Massachusetts|Michigan|Minnesota|Mississippi|Missouri|Montana"
    r"|Nebraska|Nevada|New (?:Hampshire|Jersey|Mexico|York|Brunswick|Zealand|South Wales)|Ohio|Oklahoma"
    r"|Oregon|(?:North|South) (?:Carolina|Dakota)|Pennsylvania|Rhode Island|Tennessee|Texas|Utah|Vermont"
    r"|(?:West )?Virginia|Washington|Wisconsin|Wyoming|Alberta|British Columbia|Manitoba|Nova Scotia|Ontario"
    r"|Qu[ée]bec|Saskatchewan|Queensland|Victoria|Tasmania|South Australia|England|Scotland|Wales|Ireland"
    r"|Australia|Canada)"
)
"""States, provinces and lands, spelt out."""
_PLACE = r"[A-Z][\w’'-]+(?:[ -][A-Z][\w’'-]+){0,2}"
_REGION = rf"(?:{STATE}|{COUNTY})(?:,? [A-Z\d][A-Z\d -]{{2,9}})?"
_ADDRESS = later(
    r"\W*(?:(?i:P\.? ?O\.? Box\b|Box \d|Rural Route\b|R\.?R\.? ?\d|Lot \d+\b)"
    rf"|\d{{1,5}}[A-Za-z]? (?:{_PLACE} )?(?i:{_STREET})\b"
    rf"|(?:{_PLACE}, )?{_PLACE},? (?:{_REGION}|{LAND})\W*(?:$|[\t\n·•|]|\d{{3}}))"
)
_CLOSES_ADDRESS = later(rf"(?:{_PLACE},? )?(?:{_REGION}|{LAND})\W*")
_LANDS = later(rf"(?:{COUNTY}|{LAND})(?:, {LAND})?\W*(?:$|[\t\n·•|])")
_BEHIND = later(
    rf"(?:, ?| ?[·•|~–-] ?)(?:(?P<place>(?:{_PLACE},? ){{1,3}})(?:{_REGION}|{LAND})|{COUNTY}|{LAND})"
    r"(?=\W*(?:$|[·•|~\t\n])|,? [A-Z\d][A-Z\d -]{2,9}$)"
)
"""A place and its state or county, or one of them, behind a name on the same line."""
_NO_NAME = later(
    r"\b(?:zones?|sun|shade|water|soil|height|spread|spacing|bloom|hardy|plant|feed|care|keep|packed|page|item|lot"
    r"|price|patent|passport|made|product|caution|toxic|harmful|native|series|annual|perennial|shrub|tree)\b",
    re.I,
)
TRADE = later(
    r"\b(?:Houseplants|Conifers|Seedlings|Herbs|Roses|Natives|Citrus|Tropicals|Bulbs|Gardens|Trees|Bedding"
    r"|Aquatics|Ferns|Grasses|Orchids|Succulents|Vines|Fruits?|Orchards?|Berries|Works|Yard|Company|Dahlias|Tubers|Alpines"
    r"|Shrubs|Hedging|Tubes|Tubestock|Hostas|Lilies|Irises|Peonies|Clematis|Heathers|Plantations|Propagation"
    r"|Wildflowers|Youngplants|Palms|Cacti|Vegetables|Hellebores|Salvias|Blooms|Blossoms)$"
)
"""Such words end names of growers, but headings too."""


_DANGLING = later(r"[·•|] [A-Z][\w’'-]+ ?$")
"""One word in capitals behind a dot at the end of a line begins a name that goes on elsewhere."""


def firms_at_home(text: str, lines: Sequence[Line]) -> Iterator[tuple[str, Span, float]]:
    """Names that share their letters with the web address on the tag, or stand right over or before a postal
    address; each with its stretch and how sure that is (common practice, no source).

    >>> from ocr_tags.record import TagText
    >>> from ocr_tags.names.titles import lines_of
    >>> tag = TagText("Mist & Morrow" + chr(10) + "Coldharrow, Devon")
    >>> [name for name, _, _ in firms_at_home(tag.string, lines_of(tag))]
    ['Mist & Morrow']
    """
    foot = foot_of(lines[2:])
    torn = any(_DANGLING.search(line.text) for line in lines)
    sites = [re.sub(r"[^a-z0-9]", "", site["site"].lower()) for site in _SITE.finditer(text)]
    for line, below, third in zip_longest(lines, lines[1:], lines[2:]):
        if below and _goes_on(line, below, below in foot or (third and _ADDRESS.match(third.text))):
            yield f"{line.text} {below.text.rstrip(' ,.·')}", (line.start, below.end), 0.8
            continue
        for start, words in _names(line.text):
            name = line.text[slice(*_ends(words))]
            trade = TRADE.search(name) is not None
            span = line.start + start, line.start + words[-1].end()
            if any(_shares(site, words) for site in sites):
                yield name, span, ON_SITE
            elif len(words) == 1 and below is not None and _is_lone(line, name, below):
                yield name, span, LONE
            elif (
                len(words) == 1
                or words[-1][0] == "OK"
                or lexicon.is_common_name(name)
                or (not trade and _NO_NAME.search(name))
            ):
                continue
            elif trade and line in foot and not torn and _at_foot(line.text, words):
                yield name, span, 0.85 if line.flat else 0.7
            elif _placed_behind(_with_next(line, below), words[-1].end(), trade or "&" in name) or (
                start == 0 and below is not None and _placed_below(line, words[-1].end(), below)
            ):
                yield name, span, 0.8


_GROWERS = later(
    r"Nurser(?:y|ies)|Growers|Greenhouses|Farms?|Horticulture|Plants|Perennials|Propagators", re.I
)
_NO_FOOT = later(
    r"\d|\b(?:propagat|reproduc|prohibit|licen[cs]e|patent|royalt|breeders|passe?port|passaport|plantepas|guarante)"
    r"|\b(?:product|produce|made|grown) (?:of|in)(?: the)? \w+$"
    r"|^\W*(?:quart|gallon|pint|flat|plug|pot|bare[ -]?root)\W*$",
    re.I,
)


def foot_of(lines: Sequence[Line]) -> list[Line]:
    """The last line, or the one above the pots, prices and numbers that close a tag, and those."""
    told = (at for at in range(len(lines), 0, -1) if not _NO_FOOT.search(lines[at - 1].text))
    words = next(told, 1)
    return list(lines[words - 1 :])


def _goes_on(line: Line, below: Line, placed: object) -> bool:
    """Whether a name of words no tag carries has its last word, "Company" or "Natives", alone below it."""
    words = line.text.split()
    last = TRADE.fullmatch(below.text.rstrip(" ,.·")) or (
        placed and _GROWERS.fullmatch(below.text.rstrip(" ,.·"))
    )
    if not placed or not last or not 1 < len(words) <= 4 or below.start - line.end > 1:
        return False
    fits = all(_WORD.fullmatch(word) and (word[0].isupper() or word in _SMALL) for word in words)
    unknown = any(word.lower() not in _SMALL and not is_tag_word(word) for word in words)
    return fits and unknown and not lexicon.is_common_name(line.text)


_COUNTED = later(r"\W*(?:one|two|three|four|five|six|eight|ten|twelve|mixed|assorted)\b", re.I)


def _at_foot(text: str, words: Sequence[re.Match[str]]) -> bool:
    """Whether a name, perhaps with its place, closes a line, and begins with words no tag carries: "Elmerton
    Ferns", unlike "Hardy Ferns"."""
    closes = re.fullmatch(rf"(?:,? (?:(?:by|near) )?{_PLACE})?[ .]*(?:[·•|].*\d.*)?", text[words[-1].end() :])
    unknown = [word[0] for word in words[:-1] if word[0].lower() not in _SMALL and not is_tag_word(word[0])]
    return closes is not None and bool(unknown) and not _COUNTED.match(text)


def _placed_behind(text: str, end: int, trade: bool) -> bool:
    """Whether a place and its land stand behind a name; behind one of the `trade`, the land alone will do."""
    place = _BEHIND.match(text, end)
    return place is not None and (trade or place["place"] is not None)


def _is_lone(line: Line, name: str, below: Line) -> bool:
    """Whether a name of one word, which no tag has else, fills a line over an address."""
    own = name == line.text.strip() and (line.flat or not line.title) and len(name) >= _FEWEST_LETTERS
    strange = name[1:].islower() and not (is_tag_word(name) or lexicon.is_genus(name))
    return own and strange and _placed_below(line, len(line.text.rstrip()), below)


def _with_next(line: Line, below: Line | None) -> str:
    """The line, and the next where an address goes on there: "Larch Roses, Mill Cottage," and "Hale, OR"."""
    goes_on = below and (line.text.endswith((",", "Co.")) or _CLOSES_ADDRESS.fullmatch(below.text))
    return f"{line.text} {below.text}" if below and goes_on else line.text


def _placed_below(line: Line, end: int, below: Line) -> bool:
    """Whether a name is all its line says, and an address right below it; a land alone behind a comma."""
    if end != len(line.text.rstrip(" ·•|,.")) or below.start - line.end > 2:
        return False
    comma = line.text[end : end + 1] == ","
    return bool(_ADDRESS.match(below.text) or (comma and _LANDS.match(below.text)))


def _names(text: str) -> Iterator[tuple[int, list[re.Match[str]]]]:
    """Runs of up to six words in capitals, "&" and the like between them, that open a line or sentence."""
    run: list[re.Match[str]] = []
    for word in [*_WORD.finditer(text), None]:
        joined = word and run and text[run[-1].end() : word.start()] == " " and not run[-1][0].endswith(".")
        fits = word and (word[0][0].isupper() or (run and word[0].lower() in _SMALL))
        if run and not (joined and fits):
            while run and run[-1][0].lower() in _SMALL:
                run.pop()
            if 1 <= len(run) <= 6:
                yield run[0].start(), run
            run = []
        if word and fits and word[0][0].isupper() and not run:
            before = text[: word.start()].rstrip()
            run = [word] if not before or before[-1] in ".·•|©" or word.start() == 0 else []
        elif word and fits and run:
            run.append(word)


def _ends(words: Sequence[re.Match[str]]) -> Span:
    return words[0].start(), words[-1].end()


def _shares(site: str, words: Sequence[re.Match[str]]) -> bool:
    """Whether the address on the web is made of the name's first words."""
    for count in range(1, len(words) + 1):
        spoken = "".join("and" if word[0] == "&" else word[0].lower() for word in words[:count])
        for letters in (spoken, spoken.replace("and", "", 1)):
            plain = re.sub(r"[^a-z0-9]", "", letters)
            if plain == site and (count > 1 or len(plain) >= _FEWEST_LETTERS) and len(words) > 1:
                return True
    return False
