"""Firms that sign a tag: at its foot, over its title, or behind "from" and "at"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.names import lexicon
from ocr_tags.names.addresses import COUNTY, LAND, STATE, TRADE, Span, foot_of
from ocr_tags.names.firms import FORM, is_first, is_last, is_plain_heading
from ocr_tags.names.signature_words import (
    BODY,
    EVENT,
    FOREIGN,
    GOODS,
    GROUNDS,
    HOUSE,
    NO_HEADING,
    OTHER_MATTER,
    RANGE_TOO,
    SHOP,
    SPEAKS,
    TAIL,
)
from ocr_tags.names.titles import TITLE_SIZE, Line, is_qualifier, known_ending
from ocr_tags.names.vocabulary import is_care_word, is_tag_word
from ocr_tags.patterns import later

_JOIN = r"(?:&|and|of|de|du|des|la|le|les|et|aux|van|von|der|den|ten|ter|het|'t|und|en|zum|am|im|y)"
_CAP = (
    r"(?:[dl]['’])?(?:(?:Bros|Hort|Soc|St|Mt|Dr|[A-ZÀ-Þ])\.(?=[ \n\t,]|$)|(?:[A-Z]\.){2,}|[A-ZÀ-Þ][\w’'-]*)"
)
_RUN = later(
    rf"(?!(?:From|By|At)[ ]){_CAP}(?: (?:& (?:fils|filles?|sons?|daughters?|co)\b|{_JOIN}(?= )|{_CAP}))*"
)
_SENDS = r"\b(?:by|at|from|par|chez|von|vom|van|fra|från|af|av|da|door|bei)"
_OPENS = later(
    r"(?:^|[.!?·•|,;:/(©★✦✿❀❁☆♦◆■●♣✻❖]|\s[–—-]|\t| {2}|[€£$] ?\d+[.,]\d\d|\d[.,]\d\d ?[€£$]|\d{3}"
    rf"|{_SENDS}) ?$",
    re.I,
)
_FROM = later(rf"{_SENDS} ?$", re.I)
_REGION = rf"(?:{STATE}|{COUNTY}|{LAND}|[A-Z]\.-?[A-Z]\.|SA|Holland|USA|UK|NZ|NL|BE|DK)"
_CLOSES = later(
    r" ?(?:$|[\t\n]|[.,;·•|/(:]| [–—-]|  |[–—]|[€£$\d]|(?:tray|pack|pot|punnet|bundle|box|bag|strip"
    r"|cell|est|since|peat|spring|native|code|raises|ships|tubestock)\b)"
)
_PLACED = later(
    r", (?:[A-Z]{1,3}-)?\d{4,5}(?=\W*$| [A-ZÀ-Þ])"
    rf"|(?:,|,? ?[(/|·•–-]) ?(?:[A-Z][\w’'-]+(?:[ -][\w’'-]+){{0,3}}[ ,/]{{1,3}})?{_REGION}(?!\w)"
)
_IN_TOWN = later(rf"(?: [A-ZÀ-Þ]\w*[a-zà-ÿ][\w’'-]*){{1,3}},? {_REGION}(?!\w)")
"""The town and its state in small letters behind a name in capitals, with no mark between."""
_GROWN_AT = later(
    r"\b(?:grown|raised|propagated|potted|sown|started|reared|nurtured|born|tended|cultivated|dug|lifted|rooted)"
    r"(?: [a-z-]+){0,3} at (?:the )?$",
    re.I,
)
_BEFORE_NUMBER = later(r"[\t ]+(?:[€£$] ?\d|\d{1,3}[.,]\d\d ?[€£$]|\d[\d ]{10,}\d\b)")
_OF_SENTENCES = later(
    r"\b(?:do|not|never|no|eat|your|our|you|it|this|that|these|if"
    r"|when|with|without|to|in|on|all|may|can|is|are|for|from|new|please|enjoy|thanks?|happy|between|among|under)\b",
    re.I,
)
"""In capitals a sentence looks like a name."""
_EVEN = 1.3
"""No name goes on in letters as much larger or smaller."""
_BEHIND_POT = later(r"(?:\b(?:pot|gal\.?|cm|in\.|l)|[€£$] ?\d+[.,]\d\d)\t\Z", re.I)
_BRANCH = later(rf" \((?P<branch>[A-Z][\w'’-]+)\)(?P<form>{FORM})?")
"""A place or a trade in brackets that is part of the name: "Marlby Shrubs (Elmscote) Ltd"."""
_MARKED = later(r" ?[®™]")
_OF_PASSPORT = later(r"D[.:)]? ?[A-Z]{2}")
"""The last line of a plant passport: the land it comes from."""


def signed_firms(text: str, lines: Sequence[Line]) -> Iterator[tuple[str, Span, float]]:
    """Names that a trade's word, a land's form or their place at the foot tells to be who sells the plant.

    >>> from ocr_tags.record import TagText
    >>> from ocr_tags.names.titles import lines_of
    >>> tag = TagText("Sent out by Elmscote" + chr(10) + "Wildflowers, Devon. 1L")
    >>> [name for name, _, _ in signed_firms(tag.string, lines_of(tag))]
    ['Elmscote Wildflowers']
    """
    foot = foot_of(lines[1:])
    taken = 0
    for at, line in enumerate(lines):
        below = lines[at + 1] if at + 1 < len(lines) else None
        even = below is not None and max(line.size, below.size) < _EVEN * min(line.size, below.size)
        cased = below is not None and line.text.isupper() != below.text.isupper()
        apart = cased and (_is_care(line.text) or (below is not None and is_signed(below.text)))
        apart = apart or bool(_OF_PASSPORT.fullmatch(line.text))
        below = below if below and text[line.end : below.start] == "\n" and even and not apart else None
        joined = f"{line.text} {below.text}" if below else line.text
        for run in _RUN.finditer(joined):
            start = line.start + run.start()
            if run.start() >= len(line.text) or start < taken or not _OPENS.search(joined[: run.start()]):
                continue
            crosses = run.end() > len(line.text)
            name, sure = _firm(joined, run, len(line.text) if crosses else 0)
            own = _RUN.match(line.text, run.start()) if crosses and not name else None
            if own:
                name, sure = _firm(line.text, own, 0)
            if not name:
                continue
            if line.text.endswith(",") and run.start() + len(name) > len(line.text):
                name = name[: len(line.text) - run.start() - 1]  # what its people are stands below
            end = run.start() + len(name)
            last = below if below and end > len(line.text) else line
            told = last in foot or _FROM.search(joined[: run.start()]) or _PLACED.match(joined, end)
            told = told or SPEAKS.match(joined, end)
            told = told or (_IN_TOWN.match(joined, end) if name.isupper() else None)
            whole = not joined[: run.start()].strip() and (line.flat or not line.title)
            header = whole and any(other.size >= TITLE_SIZE * line.size for other in lines[at + 1 : at + 4])
            told = told or EVENT.match(joined, end)
            if sure and header and not told and _may_be_range(name):
                continue
            if sure:
                certainty = sure if told or header else sure - 0.1 if whole else 0.0
            else:
                ends = _ends_back(lines, at, joined[: len(line.text)], name)
                beside = _BEFORE_NUMBER.match(text, line.start + end) or _BEHIND_POT.search(
                    text, 0, line.start
                )
                alone = line in foot and ((beside and _own(name)) or (ends and _own_at_end(name)))
                placed = "&" in name and _own(name) and _PLACED.match(joined, end)
                certainty = 0.8 if whole and placed else 0.65 if whole and alone else 0.0
                if _GROWN_AT.search(joined[: run.start()]) and _unknown(name.split()):
                    certainty = 0.85
            if certainty:
                taken = start + len(name)
                yield name, (start, taken), certainty


def _is_care(text: str) -> bool:
    """Whether a line is another matter than a firm's name, as its words are those of any tag: PERENNIAL."""
    return all(map(is_tag_word, text.split()))


_OF_PROSE = later(r"(?:[^A-Z]*\b[a-z]{2,}\b){4}")
_BEHIND_OWN = later(rf"(?:[.,] ?[^\W\d_].*|,? {_REGION})?")


def _ends_back(lines: Sequence[Line], at: int, text: str, name: str) -> bool:
    """Whether a name in small and capital letters is all that the last line of a side without a title says,
    below sentences: there firms sign (common practice, no source)."""
    prose = sum(_OF_PROSE.search(line.text) is not None for line in lines[:at])
    flat = all(line.flat for line in lines) and at > 3 and prose > 1
    return (
        flat
        and not any(word.isupper() for word in name.split())
        and _BEHIND_OWN.fullmatch(text[len(name) :]) is not None
    )


def _own_at_end(name: str) -> bool:
    """Whether a name may be a firm's where only firms sign; of two joined words one may be on some tags."""
    words = name.split()
    return _own(name) or (len(words) == 3 and words[1] == "&" and not all(map(is_care_word, words[::2])))


def is_signed(text: str) -> bool:
    """Whether a text opens with the name of a firm that its own words tell."""
    run = _RUN.match(text)
    return run is not None and _firm(text, run, 0)[1] > 0


def _firm(joined: str, run: re.Match[str], line_end: int) -> tuple[str, float]:
    """The firm's name that opens a run of words in capitals, and how sure its words make it; 0 if not at all.

    `line_end` is where the first of two lines ends, for a run that goes on in the second.
    """
    said = OTHER_MATTER.split(EVENT.split(run[0])[0])[0]
    form = re.search(rf"{FORM}$", said)
    said = said[: form.start()] if form else said
    words = said.split()
    form = re.match(FORM, joined[run.start() + len(said) :])
    whole = said + (form[0] if form else "")
    whole = re.sub(r"\b(OHG|GmbH|GbR|KG|LL[CP]|PLC|plc)\.$", r"\1", whole)  # the full stop of the sentence
    if form and 1 <= len(words) <= 5:
        return (whole, 0.85) if _unknown(words) else ("", 0)
    if not 2 <= len(words) <= 8:
        return "", 0
    last = next((at for at in range(len(words) - 1, 0, -1) if _ends(words, at)), 0)
    if last:
        name, behind = " ".join(words[: last + 1]), " ".join(words[last + 1 :])
    elif _heads(words) and not (
        line_end and run.start() + len(said) > line_end and " " in joined[run.start() : line_end]
    ):
        name, last = re.sub(rf" {_REGION}$", "", said), len(words) - 1
        behind = said[len(name) + 1 :]
    else:
        name, behind = said, ""
    at_end = run.start() + len(name)
    if line_end and at_end <= line_end and at_end + len(behind) > line_end:
        behind = ""  # the next line is another matter
    if last and re.fullmatch(r"of [A-Z][\w’'-]+", behind):
        name, behind = f"{name} {behind}", ""  # "Elmscote Herbs of Marlhill"
    placed = not behind or re.fullmatch(rf"(?:[A-Z][\w’'.-]+ ?){{0,2}}{_REGION}?", behind)
    known = lexicon.is_common_name(name) or lexicon.is_genus(words[0].title())
    place = re.sub(rf"\b{_REGION}$", "", behind)
    if name.isupper() and all(re.search("[a-zà-ÿ]", word) for word in place.split()):
        place = ""  # a town in small letters, of whatever words: "QUARLE NATIVES Alder Fork OR"
    spoken = re.sub(rf" {_REGION}$", "", said)
    tail = TAIL.match(joined, run.end()) if len(said) == len(run[0]) else None
    if tail and not (known or _OF_SENTENCES.search(said)) and len(name.split()) < 5:
        return said + (tail[0] if tail["trade"][0].isupper() else ""), 0.85
    said_more = any(map(is_tag_word, place.split())) or _OF_SENTENCES.search(spoken) is not None
    if known or not placed or said_more or len(name.split()) > 6:
        return "", 0
    if _MARKED.match(joined, at_end) or not (
        at_end == line_end
        or _CLOSES.match(joined, at_end + (len(behind) and len(behind) + 1))
        or EVENT.match(joined, at_end)
        or OTHER_MATTER.match(joined, at_end)
        or SPEAKS.match(joined, at_end)
    ):
        return "", 0
    if not last:
        return ("", 0) if line_end and at_end > line_end else (name, 0)
    before = words[:last] if _ends(words, last) else words
    sure = NO_HEADING.fullmatch(words[last].title()) and last > 1 and not is_plain_heading(before[0])
    heading = is_plain_heading(" ".join(before)) and not _unknown(before[:-1])
    heading = heading or is_plain_heading(before[0])
    if not sure and (heading or not _unknown(before)):
        return "", 0
    branch = _BRANCH.match(joined, at_end)
    if branch and not behind and (branch["form"] or _ends(["", branch["branch"]], 1)):
        name += branch[0]
    return name, 0.65 if SHOP.search(name) else 0.85


def _heads(words: Sequence[str]) -> bool:
    """Whether a firm's name may begin so: with a word of its trade, an article or adjective aside."""
    for at in (0, 1):
        first, pair = words[at], " ".join(words[at : at + 2])
        if is_first(first) or any(FOREIGN.fullmatch(some.title()) for some in (first, pair)):
            return at == 0 or words[0] in _BEFORE_HEAD
    return False


_BEFORE_HEAD = ("Les", "La", "Le", "Il", "De", "Het", "Vaste", "Oude", "Alte", "Die", "Der")


def _may_be_range(name: str) -> bool:
    """Whether a name over a title may be a series': "Marrow Patch", "Tidewick Ferns"."""
    last = name.split()[-1].title()
    goods = TRADE.fullmatch(last) and not GOODS.search(name)
    return bool(goods or (RANGE_TOO.fullmatch(last) and not BODY.search(name)))


def _ends(words: Sequence[str], at: int) -> bool:
    """Whether a firm's name may end with this word: of its trade, or the second of two goods."""
    pair = " ".join(words[max(at - 2, 0) : at + 1])
    shop = SHOP.fullmatch(" ".join(words[at - 1 : at + 1])) is not None
    return (
        is_last(words[at])
        or any(kind.fullmatch(words[at].title()) for kind in (TRADE, HOUSE, RANGE_TOO))
        or HOUSE.fullmatch(words[at]) is not None
        or GROUNDS.fullmatch(" ".join(words[at - 1 : at + 1])) is not None
        or _is_genus_plural(words[at])
        or (shop or GOODS.fullmatch(pair) is not None)
    )


def _is_genus_plural(word: str) -> bool:
    """Whether a grower of one genus may be called so: "Camellias", "Agaves"."""
    return len(word) > 5 and word.endswith("s") and lexicon.is_genus(word[:-1].title())


_NUMERALS = frozenset(
    ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
)


def _unknown(words: Sequence[str]) -> bool:
    return any(
        len(word) > 2
        and word[0].isupper()
        and word.lower() not in _NUMERALS
        and not any(map(is_tag_word, re.split("['’.-]", word)))
        for word in words
    )


def is_nameless(name: str) -> bool:
    """Whether a firm's name has none but words of the trade, so that its own word is missing.

    >>> is_nameless("Bedding Co."), is_nameless("Seeds & Starts"), is_nameless("Elmscote Plants Ltd")
    (True, True, False)
    >>> is_nameless("Clover & Pine")  # two plants, of which neither is what a firm deals in
    False
    """
    words = re.sub(rf"{FORM}$", "", name).replace("&", " ").split()
    if "&" in name and not any(map(_of_trade, words)):
        return False
    before = words[:-1]
    plain = not any(is_care_word(word) or word.lower().endswith("ing") for word in before)
    if len(words) > 2 and plain and not known_ending(before)[0] and any(map(_is_borrowed, before)):
        return False
    return not any(_unknown([word]) and not _of_trade(word) for word in words)


def _is_borrowed(word: str) -> bool:
    """Whether a firm may be called by this word, which some plant's name has too: Lantern, Spur."""
    plant = lexicon.plants_called(word) or lexicon.is_genus(word.title())
    return len(word) > 2 and word[0].isupper() and not (plant or is_qualifier([word]) or _of_trade(word))


def _of_trade(word: str) -> bool:
    return _ends(["", word], 1) or GOODS.fullmatch(f"{word} & {word}") is not None


def _own(name: str) -> bool:
    """Whether no trade's word is needed: two names joined, or two words that no tag carries."""
    words = name.split()
    plain = [word for word in words if word[0].isupper()]
    if "&" in words:
        return len(plain) == 2 and _unknown(plain)
    return 2 <= len(words) == len(plain) <= 3 and all(_unknown([word]) for word in plain)
