"""Firms that sign a tag: at its foot, over its title, or behind "from" and "at"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags import lexicon
from ocr_tags.addresses import COUNTY, LAND, STATE, TRADE, Span, foot_of
from ocr_tags.firms import FORM, is_first, is_last, is_plain_heading
from ocr_tags.patterns import later
from ocr_tags.titles import TITLE_SIZE, Line
from ocr_tags.vocabulary import is_tag_word

# Words of firms that sell plants and words of bodies that hold plant sales: common practice, no source.
_HOUSE = later(
    r"Suppl(?:y|ies)|Stands?|Farmstands?|Merchants?|Traders|Trading|Imports?|Nurserym[ae]n|Seedsm[ae]n|Barn|Depot"
    r"|Patch|Acres?|Homestead|Ranch|Estates?|Societ(?:y|ies)|Soc\.?|Club|Guild|Trust|Collective|Partnership"
    r"|Association|Exchange|Landscap(?:es?|ers|ing)|Botanics|Botanica|Exotics|Specialists?|Transplants"
    r"|Climbers|Carnivores|Bromeliads|Bamboos?|Bonsai|Wildflowers|Meadows|Mosses|Evergreens|Edibles|Seedsavers"
    r"|Market Gardens?|Gardeners|Bushes|Canes|Stock|Groundcovers|Plugs|Greenery|Florists?|Arboretum|District"
    r"|Bros\.?|Brothers|Potplanten|Potteplanter|Perenner"
)
_SHOP = later(r"Garden (?:Cent(?:er|re)|Shop|Mart|World)", re.I)
"""A shop may only have priced the tag: less sure than a grower."""
_GOOD = (
    r"(?:Trees?|Shrubs?|Seeds?|Plugs?|Bulbs?|Plants?|Herbs?|Roses?|Vines?|Berry|Berries|Flowers?|Fruits?|Turf"
    r"|Gardens?|Landscapes?)"
)
_GOODS = later(rf"{_GOOD} (?:&|and) {_GOOD}", re.I)
_FOREIGN = later(
    r"[A-ZÀ-Þ]\w*(?:kwekerij(?:en)?|gärtnerei(?:en)?|gartenbau|baumschulen?|kulturen|hof|garten|huis|skolan?|skolen"
    r"|gartneri(?:et)?|trädgård|handel)"
    r"|Orchidées|Conifères|Arbres|Plantes|Bulbes|Cactées|Rosiers|Agrumes|Agrumeto|Floricoltura|Azienda|Plantas"
    r"|Semillas|Cultivos|Huertas?|Meithrinfa|Planhigion|Horticulture"
)
"""Firms of other tongues begin with their trade: "Baumschule Eschlach", "Kräuterhof Tannweiler"."""
_EVENT = later(
    r" (?:(?:Annual|Spring|Fall|Autumn|Summer|Native|Plant|Seedling|Tree|Bulb|Herb|Shrub) ){1,3}(?:Sale|Swap"
    r"|Fundraiser|Fair)\b",
    re.I,
)
"""The sale that a body holds is no part of its name."""
_JOIN = r"(?:&|and|of|de|du|des|la|le|les|et|aux|van|von|der|den|ten|ter|het|'t|und|en|zum|y)"
_CAP = (
    r"(?:[dl]['’])?(?:(?:Bros|Hort|Soc|St|Mt|Dr|[A-ZÀ-Þ])\.(?=[ \n\t,]|$)|(?:[A-Z]\.){2,}|[A-ZÀ-Þ][\w’'-]*)"
)
_RUN = later(rf"{_CAP}(?: (?:& (?:fils|filles?|sons?|daughters?|co)\b|{_JOIN}(?= )|{_CAP}))*")
_OPENS = later(
    r"(?:^|[.·•|,;:/(©★]|\s[–—-]|\t| {2}|[€£$] ?\d+[.,]\d\d|\d[.,]\d\d ?[€£$]"
    r"|\b(?:by|at|from|par|chez|von|vom|van|fra|från|af|av|da|door|bei)) ?$",
    re.I,
)
_FROM = later(r"\b(?:by|at|from|par|chez|von|vom|van|fra|från|af|av|da|door|bei) ?$", re.I)
_REGION = rf"(?:{STATE}|{COUNTY}|{LAND}|[A-Z]\.-?[A-Z]\.|SA|Holland|USA|UK|NZ)"
_CLOSES = later(
    r" ?(?:$|[\t\n]|[.,;·•|/(:]| [–—-]|  |[–—]|[€£$\d]|(?:tray|pack|pot|punnet|bundle|box|bag|strip"
    r"|cell|est|since|peat|spring|native)\b)"
)
_PLACED = later(rf"(?:,|,? ?[(/|·•–-]) ?(?:[A-Z][\w’'-]+(?:[ -][\w’'-]+){{0,3}}[ ,/]{{1,3}})?{_REGION}(?!\w)")
_BEFORE_NUMBER = later(r"[\t ]+(?:[€£$] ?\d|\d{1,3}[.,]\d\d ?[€£$]|\d[\d ]{10,}\d\b)")
_OF_SENTENCES = later(
    r"\b(?:one|two|three|four|five|six|eight|ten|twelve|do|not|never|no|eat|your|our|you|it|this|that|these|if"
    r"|when|with|without|to|in|on|all|may|can|is|are|for|from|new|please|enjoy|thanks?|happy)\b",
    re.I,
)
"""In capitals a sentence looks like a name."""
_EVEN = 1.3
"""No name goes on in letters as much larger or smaller."""
_BEHIND_POT = later(r"(?:\b(?:pot|gal\.?|cm|in\.|l)|[€£$] ?\d+[.,]\d\d)\t\Z", re.I)
_BRANCH = later(rf" \((?P<branch>[A-Z][\w'’-]+)\)(?P<form>{FORM})?")
"""A place or a trade in brackets that is part of the name: "Marlby Shrubs (Elmscote) Ltd"."""
_MARKED = later(r" ?[®™]")


def signed_firms(text: str, lines: Sequence[Line]) -> Iterator[tuple[str, Span, float]]:
    """Names that a trade's word, a land's form or their place at the foot tells to be who sells the plant.

    >>> from ocr_tags.record import TagText
    >>> from ocr_tags.titles import lines_of
    >>> tag = TagText("Sent out by Elmscote" + chr(10) + "Wildflowers, Devon. 1L")
    >>> [name for name, _, _ in signed_firms(tag.string, lines_of(tag))]
    ['Elmscote Wildflowers']
    """
    foot = foot_of(lines[1:])
    taken = 0
    for at, line in enumerate(lines):
        below = lines[at + 1] if at + 1 < len(lines) else None
        even = below is not None and max(line.size, below.size) < _EVEN * min(line.size, below.size)
        below = below if below and text[line.end : below.start] == "\n" and even else None
        joined = f"{line.text} {below.text}" if below else line.text
        for run in _RUN.finditer(joined):
            start = line.start + run.start()
            if run.start() >= len(line.text) or start < taken or not _OPENS.search(joined[: run.start()]):
                continue
            crosses = run.end() > len(line.text)
            name, sure = _firm(joined, run, len(line.text) if crosses else 0)
            if not name:
                continue
            end = run.start() + len(name)
            told = line in foot or _FROM.search(joined[: run.start()]) or _PLACED.match(joined, end)
            whole = not joined[: run.start()].strip() and (line.flat or not line.title)
            header = whole and any(other.size >= TITLE_SIZE * line.size for other in lines[at + 1 : at + 4])
            told = told or _EVENT.match(joined, end)
            if sure and header and not told and TRADE.fullmatch(name.split()[-1].title()):
                continue  # a series may be called so
            if sure:
                certainty = sure if told or header else sure - 0.1 if whole else 0.0
            else:
                beside = _BEFORE_NUMBER.match(text, line.start + end) or _BEHIND_POT.search(
                    text, 0, line.start
                )
                certainty = 0.65 if whole and line in foot and beside and _own(name) else 0.0
            if certainty:
                taken = start + len(name)
                yield name, (start, taken), certainty


def is_signed(text: str) -> bool:
    """Whether a text opens with the name of a firm that its own words tell."""
    run = _RUN.match(text)
    return run is not None and _firm(text, run, 0)[1] > 0


def _firm(joined: str, run: re.Match[str], line_end: int) -> tuple[str, float]:
    """The firm's name that opens a run of words in capitals, and how sure its words make it; 0 if not at all.

    `line_end` is where the first of two lines ends, for a run that goes on in the second.
    """
    said = _EVENT.split(run[0])[0]
    words = said.split()
    form = re.match(FORM, joined[run.start() + len(said) :])
    whole = said + (form[0] if form else "")
    if form and 1 <= len(words) <= 5:
        return (whole, 0.85) if _unknown(words) else ("", 0)
    if not 2 <= len(words) <= 8:
        return "", 0
    last = next((at for at in range(len(words) - 1, 0, -1) if _ends(words, at)), 0)
    if last:
        name, behind = " ".join(words[: last + 1]), " ".join(words[last + 1 :])
    elif _heads(words[words[0] in ("Les", "La", "Le", "Il", "De")]):
        name, behind, last = said, "", len(words) - 1
    else:
        name, behind = said, ""
    at_end = run.start() + len(name)
    if line_end and at_end <= line_end and at_end + len(behind) > line_end:
        behind = ""  # the next line is another matter
    placed = not behind or re.fullmatch(rf"(?:[A-Z][\w’'.-]+ ?){{0,2}}{_REGION}?", behind)
    known = lexicon.is_common_name(name) or lexicon.is_genus(words[0].title())
    place = re.sub(rf"\b{_REGION}$", "", behind)
    said_more = any(map(is_tag_word, place.split())) or _OF_SENTENCES.search(said) is not None
    if known or not placed or said_more or len(name.split()) > 6:
        return "", 0
    if _MARKED.match(joined, at_end) or not (
        at_end == line_end
        or _CLOSES.match(joined, at_end + (len(behind) and len(behind) + 1))
        or _EVENT.match(joined, at_end)
    ):
        return "", 0
    if not last:
        return ("", 0) if line_end and at_end > line_end else (name, 0)
    before = words[:last] if _ends(words, last) else words
    heading = is_plain_heading(before[0]) or (is_plain_heading(" ".join(before)) and not _unknown(before[:1]))
    if heading or not _unknown(before):
        return "", 0
    branch = _BRANCH.match(joined, at_end)
    if branch and not behind and (branch["form"] or _ends(["", branch["branch"]], 1)):
        name += branch[0]
    return name, 0.65 if _SHOP.search(name) else 0.85


def _heads(word: str) -> bool:
    """Whether a firm's name may begin with this word of its trade."""
    return is_first(word) or _FOREIGN.fullmatch(word.title()) is not None


def _ends(words: Sequence[str], at: int) -> bool:
    """Whether a firm's name may end with this word: of its trade, or the second of two goods."""
    pair = " ".join(words[max(at - 2, 0) : at + 1])
    shop = _SHOP.fullmatch(" ".join(words[at - 1 : at + 1])) is not None
    return (
        is_last(words[at])
        or bool(TRADE.fullmatch(words[at].title()) or _HOUSE.fullmatch(words[at].title()))
        or (shop or _GOODS.fullmatch(pair) is not None)
    )


def _unknown(words: Sequence[str]) -> bool:
    return any(
        len(word) > 2 and word[0].isupper() and not any(map(is_tag_word, re.split("['’.-]", word)))
        for word in words
    )


def _own(name: str) -> bool:
    """Whether no trade's word is needed: two names joined, or two words that no tag carries."""
    words = name.split()
    plain = [word for word in words if word[0].isupper()]
    if "&" in words:
        return len(plain) == 2 and _unknown(plain)
    return 2 <= len(words) == len(plain) <= 3 and all(_unknown([word]) for word in plain)
