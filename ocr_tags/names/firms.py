"""How tags print the names of firms and series: the patterns that tell them from plants."""

from __future__ import annotations

import re

from ocr_tags.names import lexicon
from ocr_tags.names.addresses import OF_COUNTY, TRADE
from ocr_tags.names.series_words import CAPITALS, SERIES_AFTER, WORD
from ocr_tags.names.signature_words import GOODS, HOUSE, OWNER, TAIL, TRADED
from ocr_tags.names.vocabulary import is_tag_word
from ocr_tags.patterns import later

_WORD = WORD
_JOIN = "&|and|of|de|du|des|la|le|les|et|aux|van|von|den|der|ten|ter|del|los|las|el|y|und|en|zum|zur|am"
_SMALL = frozenset(["the", *_JOIN.split("|")])
"""Words in small letters within names of firms."""
_NAME = rf"{_WORD}(?:\.?[ ](?:{_JOIN}|{_WORD})){{0,5}}"
FORM = (
    rf"(?:,?\s(?:Inc|LLC|L\.L\.C|Ltd|Limited|(?<!,\s)Co(?!\.? {OF_COUNTY})|(?<!,\s)CO(?=\.)(?!\. {OF_COUNTY})"
    r"|(?:(?<=PLANT\s)|(?<=SEED\s)|(?<=BULB\s)|(?<=ROSE\s)|(?<=TREE\s))CO"
    r"|Corp|Corporation|GmbH|B\.?V|S\.?A|plc|PLC|LTD|INC|KG|OHG|e\.K"
    r"|Ltée|Ltee|inc(?=\.)|ltée|enr(?=\.)"
    r"|N\.?V|BVBA|S\.?L|SARL|S\.A\.R\.L|SAS|S\.?r\.?l|S\.?p\.?A|(?<!,\s)AB|A/S|ApS|Oy|(?<=[a-zà-ÿ]\s)AS|GbR|cc|CC"
    r"|(?:\(?Pty\)?|PTY)(?:\.? (?:Ltd|LTD))?|LLP|SNC|Lda|V\.?O\.?F"
    r"|P/L|sp\. z o\. ?o)(?![\w/])\.?)"
)
"""Forms of companies; ", AB" is a province, and AS among capitals a plain word."""
# Words for growers. A garden centre is the shop that priced the tag, not the supplier: it needs a label.
_LAST = (
    r"(?:Nursery|Nurseries|Nsys?|Nsry|Organics|Growers?|Greenhouses?|Glasshouses?|Farms?|Horticulture|"
    r"Plants|Starts|Floriculture|Perennials|Botanicals|Horticultural|Seedhouse|Plantsmen|Propagators|Liners|Co-?op(?:erative)?|Wholesale(?:rs?)?"
    r"|Wh(?:o?l)?sle?s?|Whse|Grwrs?|Gr(?:ee)?nhses?|Ghses?|Propag?n)"
)
# Such words end names of firms, but plain headings too: they want a sign before them or an address behind.
_PERHAPS_LAST = r"(?:Gardens?|Seeds?|Bulbs|Roses|Trees|Herbs|Orchards?|Orchids|Succulents|Vineyards?|Flowers)"
_FIRST = (
    r"(?:(?:Stauden|Friedhofs)?Gärtnerei|Gartenbau|(?:Rosen)?Baumschulen?|Staudengärtnerei|Rosenschulen?"
    r"|Planteskolen?|Gartneri(?:et)?|Plantskola|Handelsträdgård|(?:Plant(?:en)?|Boom)?[Kk]wekerij(?:en)?|P[ée]pini[èée]res?"
    r"|Viveros?|Serres?|Jardins|Roseraies?|Vergers?|Fermes?|Vivaio|Vivai|Horticultura)"
)
_VERB = (
    r"(?:grown|produced|supplied|distributed|raised|marketed|packed|propagated|cultivated|divided"
    r"|started|nurtured|tended|potted|sent out|brought to you"
    r"|collected|sown|reared|lifted|rooted"
    r"|cultivé|produit|gekweekt|kultiviert|cultivado)"
)
LABEL = later(
    rf"\b(?:(?:{_VERB}|rown|(?:house)?plants?)(?:[ ][a-z]+){{0,5}}?(?:\s(?:in"
    rf"|at)\s(?:the\s)?(?:Co\.?\s)?[A-Z]\w+(?:[ ][A-Z]\w+){{0,2}})?\s+(?:by|par|door|von|por)"
    r"(?:[:\s]|$)"
    r"(?:(?:the )?(?:[\w.’']+\s){0,3}?(?:volunteers|members|pupils|students|children|kids|class|graders?"
    r"|grade|staff|residents|gardeners)\s(?:of|at|from|in)\s)?(?:the (?=(?-i:[A-Z])))?"
    rf"|{_VERB} (?:[a-z]+ ){{0,2}}from [^.;:\t]{{3,70}},\s(?:by|at)(?:[:\s]|$)(?=\s*(?-i:[A-Z]))"
    r"|packed (?:exclusively )?for(?=\s[A-Z])|(?:range|collection) by(?=\s(?-i:[A-Z]))"
    r"|(?<![^\n\t])(?:supplier|grower|nursery|producer|vendor)(?=\t)|(?:supplier|grower|nursery|producer|vendor|fournisseur"
    r"|producteur|proveedor|productor|kweker"
    r"|leverancier|gärtnerei|produzent|lieferant)\s?:)\s*",
    re.I,
)
_GROWN_FOR = later(
    r"\b(?:grown|raised|made|produced|propagated|potted|packed) (?:exclusively |expressly |specially )?"
    r"(?:in (?:the )?(?-i:[A-Z])[\w.-]+(?: (?-i:[A-Z])[\w.-]+)? )?for[ ](?=(?-i:[A-Z]))",
    re.I,
)
_SIGN = later(r"(?:^|(?<=[\n\t]))\W*?(?:©|\(c\)|from|by|de|von)[ ](?:\d{4}[ ])?[ ]*", re.I)
_BROKEN = later(
    rf"(?:^|(?<=[\n\t]))(?P<name>{_WORD}(?:[ ](?:&|and|{_WORD})){{1,3}}\n(?:Nursery|Nurseries|Growers"
    rf"|Greenhouses|Glasshouses|Farms?))"
    r"(?=\n(?:www\.|[\w-]+\.[a-z]{3,}))"
)
"""A firm's name on two lines and its address on the web below."""
_OVER_GOODS = later(
    rf"(?:^|(?<=\n))(?P<name>{_WORD}(?: {_WORD})?\n(?P<goods>[\w]+ (?:&|and) [\w]+))(?=[\n\t]|$)", re.M
)
"""A firm's name and what it deals in below: "Marlwick / Shrubs & Climbers"."""
_TOKEN = later(rf"(?P<gap>[ ]?\n?)(?P<word>(?:{_JOIN})(?=[ \n])|{_WORD}\.?(?:[A-Z]\.)*)")
_FORMED = later(rf"(?P<name>(?:The\s)?{_NAME}{FORM})(?=\s|,|$)")
_FROM = later(r"^\W*?(?:©\s*(?:\d{4}\s)?|\(c\)\s*|(?:from|by|de|von)\s+)", re.I)
_PRICE_BEFORE = later(r"^[^\n\t]{0,20}[$£€] ?\d{1,3}\.\d\d (?=[A-Z])")
_NOT = later(
    r"\b(?:new|our|your|the best|best|ideal|easy|water|wildlife|full|hardy|annual|fragrant|showy|native|"
    r"bedding|perennial|house|garden|companion|potted|young|tropical|organic|all|these|other|more|vegetable|flower"
    r"|kitchen|culinary|fresh|tender|"
    r"shade|sun|border|patio)$|^(?:space|set|place|water|feed|keep|remove|divide|protect|plant|pinch|cut)\b",
    re.I,
)
_HEADS = later(
    r"(?:north|south|east|west|eastern|western|northern|southern|mid\w*|central|great|american"
    r"|australian|british"
    r"|canadian|european|texas|california|florida|regional|prairie|woodland|desert|coastal|beautiful"
    r"|hardy|drought"
    r"|shop|plant|grow|choose|buy|why|true|genuine|locally|garden|pollinator|bird|wildlife|bee|butterfly)\b",
    re.I,
)
"""What "native plants" of a heading are."""
_NEVER_SERIES = later(r"Nurser(?:y|ies)|Growers|Greenhouses|Horticulture", re.I)
"""A sign of protection behind other words makes a series of them: "Quillmarsh Farm®"."""
_YOUNG = later(r"\b(?:herb|tomato|pepper|veg|veggie|greens?|lettuce|fruit|bulb|seed)s? starts$", re.I)
"""Young plants, and not who raised them."""
_FAMILY = later(
    rf"^(?:(?:[Vv][ao]n|[Dd]e[nr]?|[Tt]er|[Ll][ae]|St\.?|[A-Z]\.|[A-Z][\w'’-]+) ){{0,2}}[A-Z][\w'’-]+"
    r" (?:&|and|und|et|en|y|e|och|og) (?:Sons?|Daughters?|Brothers|Bros\.?|Sohn|Söhne"
    rf"|Tochter|Töchter|Fils|Filles?|Hijos?|Hijas?|Zo(?:on|nen)|Figli|Söner|Sønner)(?: (?:{_LAST}"
    rf"|{_PERHAPS_LAST}|Plant Sales?))?$"
)
_ADDRESS = later(
    r"(?<=\w)(?=[-–]\s)|\s(?=[-–|·]?\s?(?:www\b|https?:|[\w-]+\.[a-z]{2,}\b)|-\s|-$)|\s(?=(?:LOT|Lot|ROW|Row|Route|Rte|RR|P\.?O\.?|Box)\b)|\s(?=(?:Est(?:d"
    r"|ablished)?|EST|[Ss]ince|SINCE|Founded)\b)"
    r"|\s(?=(?:ABN|ACN|NZBN|VAT|Tel|Ph|Phone)\b)"
)
_PLACED = later(
    r"\W{0,3}(?:www\.|https?:|[\w-]+\.[a-z]{2,}\b|\d{4,5}\s[A-Z])|,(?:\s[A-Z][\w'. -]+,)?\s[A-Z]{2}\b"
)
_STATE = (
    r"(?:A[BKLRZ]|BC|C[AOT]|DE|FL|GA|HI|I[ADLN]|K[SY]|LA|M[ABDEINOST]|N[BCDEHJLMSVY]|O[HKNR]|P[AE]|QC|RI"
    r"|S[CDK]|T[NX]|UT|V[AT]|W[AIVY]|NSW|VIC|QLD|TAS|ACT)"
)
_IN_STATE = later(
    rf"(?:^|[•·|]\s?)\W*(?P<name>{_WORD}(?:[ ](?:{_JOIN}|{_WORD})){{1,4}}),"
    rf"(?:\s{_WORD}(?:[ ]{_WORD}){{0,2}},?\s){_STATE}(?:\s\d{{4,5}})?\W*$"
)
"""What stands before a place and its state is who sends the plant: "Ashcroft Berry Works, Hale, OR"."""
_STREET_BEFORE = later(r"\d|\b(?:Road|Rd|Street|St|Lane|Avenue|Ave|Highway|Hwy|Drive)\b")
"""Behind a street SA is South Australia, and no form of a company."""
_BETWEEN_DOTS = later(r"(?:(?!\s[—–]\s)[^•·|~])+")
_PASSPORT = later(r"\bplant\s*passport\b|^\s*[ABCD]\s[A-Z]", re.I)


def is_maker(text: str) -> bool:
    """Whether a line is a firm or a series rather than a plant."""
    shop = re.search(r"\bgarden cent(?:er|re)\b", text, re.I)
    return bool(firm_in(text) or LABEL.search(text) or SERIES_AFTER.search(text) or shop)


def firm_in(text: str) -> tuple[str, int] | None:
    """A firm's name that is a line, or opens one before an address, and where it starts."""
    if _PASSPORT.search(text):
        return None
    form = _FORMED.search(text)
    if form and not (form["name"].endswith(" SA") and _STREET_BEFORE.search(text[: form.start("name")])):
        name = re.sub("^(?:From|By) ", "", form["name"])
        return name, form.end("name") - len(name)
    if placed := _IN_STATE.search(text):
        words = placed["name"].split()
        if not _NOT.search(" ".join(words[:-1])) and not lexicon.is_common_name(placed["name"]):
            return placed["name"], placed.start("name")
    if (traded := TRADED.search(text)) and not lexicon.plants_called(traded["name"]):
        own = traded["name"].isupper() and not traded["trade"].isupper()
        return (traded["name"] if own else f"{traded['name']}, {traded['trade']}"), traded.start("name")
    parts = [(part.start(), part[0]) for part in _BETWEEN_DOTS.finditer(text)]
    found = ((start, _firm_of(part)) for start, part in parts)
    return next(((firm[0], start + firm[1]) for start, firm in found if firm), None)


def _firm_of(text: str) -> tuple[str, int] | None:
    skipped = _FROM.match(text) or _PRICE_BEFORE.match(text)
    head = later(r"\W*(?P<name>[^•·|,\d©®™/:;()–—]+)").match(text, skipped.end() if skipped else 0)
    words = _without_place(_ADDRESS.split(head["name"])[0].split()) if head else []
    if head is None or not 2 <= len(words) <= 6 or not all(_of_name(word) for word in words):
        return None
    if words[-1] in _SMALL or words == ["Les", words[-1]]:
        return None
    name = " ".join(words)
    if _FAMILY.search(name.title() if name.isupper() else name):
        return name, head.start("name")
    after = text[head.start("name") + len(name) :]
    sure = is_last(words[-1]) or is_first(words[words[0] in ("Les", "La", "Le")])
    owner = len(words) > 2 and OWNER.match(words[0]) and not lexicon.is_common_name(" ".join(words[:-1]))
    perhaps = bool(re.fullmatch(_PERHAPS_LAST, words[-1], re.I)) and (
        skipped or owner or _PLACED.match(after)
    )
    rest = words[:-1]
    if len(rest) > 1 and rest[-1].lower() == "native" and not _HEADS.match(rest[0]):
        rest = rest[:-1]  # "Rushlight Native Plants" is a firm, "Texas Native Plants" a heading
    known = rest[0].lower() in lexicon.words_of("english") or lexicon.is_genus(rest[0].title())
    odd = len(rest) > 1 and not (known or _HEADS.match(rest[0]) or _NOT.search(rest[0]))
    if re.match(r" ?[®™]", after) and not _NEVER_SERIES.fullmatch(words[-1]):
        return None
    about = ((_NOT.search(" ".join(rest)) and not odd) or _YOUNG.search(name)) and not is_first(words[0])
    if about or not (sure or perhaps) or lexicon.is_common_name(name):
        return None
    form = re.match(FORM, after)
    return name + (form[0] if form else ""), head.start("name")


def _of_name(word: str) -> bool:
    return word[0].isupper() or word in _SMALL or bool(re.match(rf"[dl]['’]{{1,2}}[{CAPITALS}]", word))


def _without_place(words: list[str]) -> list[str]:
    """The words up to the firm's last, when its own place or state follows: Fenwold Plants Fenwold."""
    words = _without_echo(words)
    if len(words) > 2 and is_last(words[-2]) and re.fullmatch(_STATE, words[-1].strip(",.")):
        return words[:-1]
    for at in range(1, len(words) - 1):
        if is_last(words[at]) and set(words[at + 1 :]) <= set(words[:at]):
            return words[: at + 1]
    return words


def _without_echo(words: list[str]) -> list[str]:
    """The words without a place that ends the firm's name and follows it: Viveros Tres Garzas Tres Garzas.

    One short word said twice is a place of its own: Walla Walla.
    """
    for count in (3, 2, 1):
        tail = [word.casefold() for word in words[-count:]]
        again = tail == [word.casefold() for word in words[-2 * count : -count]]
        if again and len(words) > 2 * count and (count > 1 or "-" in tail[0]):
            return words[:-count]
    return words


def is_last(word: str) -> bool:
    """Whether growers' names end with this word: Nursery, Growers, Farms."""
    return bool(re.fullmatch(_LAST, word.strip(".,"), re.I))


def is_first(word: str) -> bool:
    """Whether growers' names begin with this word: Pépinières, Viveros, Kwekerij."""
    return bool(re.fullmatch(_FIRST, word, re.I))


def is_plain_heading(before: str) -> bool:
    """Whether these words before one of a firm's last make a heading of it: "Easy Care" and "Plants"."""
    return _NOT.search(before) is not None


_AT = later(r"\s+at\s+(?=[A-Z])")
"""Behind the people who work there the firm: "potted by Ann and Joe at Elmscote Plants"."""


def labelled_firms(string: str) -> list[tuple[str, tuple[int, int]]]:
    """The firms behind "Grown by" and the like, or broken after a © or before an address; and the spans."""
    found = []
    for label in LABEL.finditer(string):
        if "\n\n" not in label[0] and (firm := firm_at(string, label.end())):
            if label[0].endswith(" in ") and " " not in firm[0]:
                continue  # where they are: "grown by members in Marlby"
            start = label.end()
            at = None if is_last(firm[0].split()[-1]) else _AT.match(string, firm[1])
            if at and (whose := firm_at(string, at.end())):
                start, firm = at.end(), whose
            tail = TAIL.match(string, firm[1])
            tail = tail if tail and tail["trade"][0].isupper() else None
            name, end = (firm[0] + tail[0], tail.end()) if tail else firm
            found.append((name, (start, end)))
    for label in _GROWN_FOR.finditer(string):
        firm = firm_at(string, label.end())
        last = firm[0].split()[-1] if firm and " " in firm[0] else ""
        trade = _ends_firm(last) or any(kind.fullmatch(last) for kind in (TRADE, HOUSE))
        if firm and (trade or re.fullmatch(_PERHAPS_LAST, last)):
            found.append((firm[0], (label.end(), firm[1])))
    for sign in _SIGN.finditer(string):
        firm = firm_at(string, sign.end())
        if firm and "\n" in string[sign.end() : firm[1]] and is_last(firm[0].split()[-1]):
            found.append((firm[0], (sign.end(), firm[1])))
    for broken in _BROKEN.finditer(string):
        if not _NOT.search(broken["name"].split("\n")[0]):
            found.append((" ".join(broken["name"].split()), broken.span("name")))
    for over in _OVER_GOODS.finditer(string):
        own = over["name"].split("\n")[0].split()
        if GOODS.fullmatch(over["goods"]) and not any(map(is_tag_word, own)):
            found.append((" ".join(over["name"].split()), over.span("name")))
    return found


_WHEN = later(
    r"(?:January|February|March|April|May|June|July|August|September|October|November|December|Spring|Summer|Autumn"
    r"|Fall|Winter|Christmas|Easter)\.?"
)
_IN_LAW = later(r"(?:Co|Inc|Ltd|Corp)\.")
"""A short word for what a firm is in law ends its name: behind it, the mark lost, stands its place."""
_CLOSED = later(r"(?!(?:Bros|Hort|Soc|Corp|Mount|Saint)\.)[^\W\d_]{4,}\.")
"""A whole word and its full stop end a sentence, and the name in it."""


def firm_at(string: str, start: int) -> tuple[str, int] | None:
    """The name behind a label, which a narrow tag may break over lines, and where it ends."""
    words: list[str] = []
    end = start
    while len(words) < 6 and (match := _TOKEN.match(string, end)):
        broken = bool(words) and "\n" in match["gap"]
        done = len(words) > 1 and is_last(words[-1]) and not _ends_firm(match["word"])
        done = done or (bool(words) and _CLOSED.fullmatch(words[-1]) is not None)
        done = done or (len(words) > 1 and _IN_LAW.fullmatch(words[-1]) is not None)
        if done or (broken and not _goes_on(words, string[match.start("word") :])):
            break
        words.append(match["word"])
        end = match.end()
    form = later(FORM).match(string, end) if words else None
    if form:
        words[-1:], end = [words[-1] + form[0]], form.end()
    while words and words[-1] in _SMALL:
        words.pop()
    name = " ".join(_without_echo(words))
    if not name[:1].isupper() or len(name) < 3 or name == "The" or _WHEN.fullmatch(name):
        return None
    return (name if re.search(rf"{FORM}$", name) else name.rstrip(".")), end


def _ends_firm(word: str) -> bool:
    return is_last(word) or bool(re.match(FORM, f" {word}"))


def _goes_on(words: list[str], rest: str) -> bool:
    """Whether a name cut by the end of a line is taken up by the next."""
    if words == ["The"] or words[-1] in ("&", "and"):
        return True
    ahead = re.split(r"[,\n·•|]", rest)[0].split()[:3]
    if is_first(words[0]) and (
        len(words) == 1 or (len(words) == 2 and len(ahead) == 1 and ahead[0].istitle())
    ):
        return True  # Viveros Tres / Garzas: such firms end with a name
    ahead = [word.rstrip(".") for word in ahead]
    return any(_ends_firm(word) or TRADE.fullmatch(word) or _TAKEN_UP.fullmatch(word) for word in ahead)


_TAKEN_UP = later(rf"{HOUSE.pattern}|Gardens?|Club")
