"""How tags print the names of firms and series: the patterns that tell them from plants."""

from __future__ import annotations

import re

from ocr_tags import lexicon

_CAP = "A-ZÀ-ÖØ-Þ"
_WORD = rf"[{_CAP}][\w’'&-]*"
_NAME = rf"{_WORD}(?:\.?[ ](?:&|and|of|de|du|la|van|der|{_WORD})){{0,5}}"
FORM = r"(?:,?\s(?:Inc|LLC|Ltd|Limited|Co|Corp|GmbH|B\.?V|S\.?A|plc|PLC|LTD|INC|KG|Ltée)\b\.?)"
# Words for growers. A garden centre is the shop that priced the tag, not the supplier: it needs a label.
_LAST = (
    r"(?:Nursery|Nurseries|Growers?|Greenhouses?|Glasshouses?|Farms?|Horticulture|"
    r"Plants|Floriculture|Perennials|Botanicals)"
)
_FIRST = r"(?:Gärtnerei|Baumschulen?|Kwekerij(?:en)?|P[ée]pini[èée]res?|Viveros?|Serres|Vivaio|Horticultura)"
_VERB = (
    r"(?:grown|produced|supplied|distributed|raised|marketed|packed|propagated|cultivated|"
    r"cultivé|produit|gekweekt|kultiviert|cultivado)"
)
LABEL = re.compile(
    rf"\b(?:{_VERB}(?:\s+(?:with\s+\w+|proudly|locally|and\s+\w+))?\s+(?:by|par|door|von|por)(?:[:\s]|$)"
    r"|(?:supplier|grower|nursery|producer|vendor|fournisseur|proveedor)\s?:)\s*",
    re.I,
)
_TOKEN = re.compile(
    rf"(?P<gap>[ ]?\n?)(?P<word>(?:&|and|of|de|du|la|van|der)(?=[ \n])|{_WORD}\.?(?:[A-Z]\.)*)"
)
_FORMED = re.compile(rf"(?P<name>(?:The\s)?{_NAME}{FORM})(?=\s|,|$)")
_FROM = re.compile(r"^\W*(?:from|by|de|von)\s+", re.I)
_NOT = re.compile(
    r"\b(?:new|our|your|the best|best|ideal|easy|water|wildlife|full|hardy|annual|fragrant|showy|native|"
    r"bedding|house|garden|companion|potted|young|tropical|organic|all|these|other|more|vegetable|flower|kitchen|culinary|fresh|tender|"
    r"shade|sun|border|patio)$",
    re.I,
)
_FAMILY = re.compile(r"^[A-Z][\w'’-]+ (?:&|and) (?:Sons?|Daughters?|Brothers|Bros\.?)$")
_ADDRESS = re.compile(r"\s(?=www\.|https?:|[\w-]+\.[a-z]{2,}\b)")
_PASSPORT = re.compile(r"\bplant\s*passport\b|^\s*[ABCD]\s[A-Z]", re.I)

SERIES_AFTER = re.compile(rf"(?P<name>{_WORD}(?:[ ]{_WORD}){{0,2}})(?:\s?[™®©])?\s+(?:[Ss]eries|SERIES)\b")
SERIES_BEFORE = re.compile(
    rf"\b(?:[Ss]eries|SERIES|Série|Serie)\s*[:–-]\s*(?P<name>{_WORD}(?:[ ]{_WORD}){{0,2}})"
)


def is_maker(text: str) -> bool:
    """Whether a line is a firm or a series rather than a plant."""
    shop = re.search(r"\bgarden cent(?:er|re)\b", text, re.I)
    return bool(firm_in(text) or LABEL.search(text) or SERIES_AFTER.search(text) or shop)


def firm_in(text: str) -> tuple[str, int] | None:
    """A firm's name that is a line, or opens one before an address, and where it starts."""
    if _PASSPORT.search(text):
        return None
    if form := _FORMED.search(text):
        return form["name"], form.start("name")
    skipped = _FROM.match(text)
    head = re.compile(r"\W*(?P<name>[^•·|,\d©®™/:;()–—]+)").match(text, skipped.end() if skipped else 0)
    words = _without_place(_ADDRESS.split(head["name"])[0].split()) if head else []
    small = ("&", "and", "of", "the", "de", "du", "la")
    if head is None or not 2 <= len(words) <= 6 or not all(w[0].isupper() or w in small for w in words):
        return None
    if _FAMILY.search(" ".join(words)):
        return " ".join(words), head.start("name")
    last = is_last(words[-1]) and not _NOT.search(" ".join(words[:-1]))
    if not (last or is_first(words[0])) or lexicon.is_common_name(" ".join(words)):
        return None
    return " ".join(words), head.start("name")


def _without_place(words: list[str]) -> list[str]:
    """The words up to the firm's last, when its own place name follows: Fenwold Plants Fenwold."""
    for at in range(1, len(words) - 1):
        if is_last(words[at]) and set(words[at + 1 :]) <= set(words[:at]):
            return words[: at + 1]
    return words


def is_last(word: str) -> bool:
    """Whether growers' names end with this word: Nursery, Growers, Farms."""
    return bool(re.fullmatch(_LAST, word.strip(".,"), re.I))


def is_first(word: str) -> bool:
    """Whether growers' names begin with this word: Pépinières, Viveros, Kwekerij."""
    return bool(re.fullmatch(_FIRST, word, re.I))


def labelled_firms(string: str) -> list[tuple[str, tuple[int, int]]]:
    """The firms behind "Grown by" and the like, each with its span."""
    found = []
    for label in LABEL.finditer(string):
        if "\n\n" not in label[0] and (firm := firm_at(string, label.end())):
            found.append((firm[0], (label.end(), firm[1])))
    return found


def firm_at(string: str, start: int) -> tuple[str, int] | None:
    """The name behind a label, which a narrow tag may break over lines, and where it ends."""
    words: list[str] = []
    end = start
    while len(words) < 6 and (match := _TOKEN.match(string, end)):
        broken = bool(words) and "\n" in match["gap"]
        done = len(words) > 1 and is_last(words[-1]) and not _ends_firm(match["word"])
        if done or (broken and not _goes_on(words, string[match.start("word") :])):
            break
        words.append(match["word"])
        end = match.end()
    while words and words[-1] in ("&", "and", "of", "de", "du", "la", "van", "der"):
        words.pop()
    name = " ".join(words)
    if not name[:1].isupper() or len(name) < 3:
        return None
    return (name if re.search(rf"{FORM}$", name) else name.rstrip(".")), end


def _ends_firm(word: str) -> bool:
    return is_last(word) or bool(re.match(FORM, f" {word}"))


def _goes_on(words: list[str], rest: str) -> bool:
    """Whether a name cut by the end of a line is taken up by the next."""
    ahead = re.split(r"[,\n·•|]", rest)[0].split()[:3]
    return (len(words) == 1 and is_first(words[0])) or any(is_last(word) for word in ahead)
