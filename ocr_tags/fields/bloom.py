"""When a plant blooms: the words as printed, the seasons they name, the months they span.

Seasons travel, dates do not: "summer" is June to August in the north and December to February in the
south (meteorological seasons, U.S. National Centers for Environmental Information), so a season is never
turned into months. "Until frost" stays in the words: where it falls depends on the place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ocr_tags.fields.phrases import Hit, Phrases, clean, fold, label_phrases, labelled, listed
from ocr_tags.record import Bloom, Field, Found, TagText


@dataclass(frozen=True, slots=True)
class _Term:
    season: str = ""
    part: str = ""
    month: int = 0


def _terms() -> dict[str, _Term]:
    seasons, parts = listed("season"), listed("part")
    table = {word: _Term() for word in listed("frost")["frost"]}
    table |= {word: _Term(month=int(month)) for month, words in listed("month").items() for word in words}
    table |= {word: _Term(part=part) for part, words in parts.items() for word in words}
    for season, words in seasons.items():
        table |= {word: _Term(season) for word in words}
        for part, before in parts.items():
            table |= {f"{first} {word}": _Term(season, part) for word in words for first in before}
    return table


_TERMS = Phrases(_terms(), shortest=6)
_NUMERALS = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII")
_ROMAN = {r: n for n, r in enumerate(_NUMERALS, 1)}

_LABELS = label_phrases("bloom")
_NUMERIC_LABEL = re.compile(
    r"(?:blute|blutezeit|bl|bloei\w*|bloom months|flowering months|floraison|floracion)\b"
)

_JOIN = re.compile(
    r"\s?(?:[-–—/&+~]|\bto\b|\bthrough\b|\bthru\b|\buntil\b|\btill?\b|,?\s?\band\b|,?\s?\bor\b|,|\binto\b"
    r"|\bup to\b|\ba\b"
    r"|\bau\b|\baux\b|\bjusqu.{1,2}(?:a|au|aux)?\b|\bet\b|\by\b|\bhasta\b|\bbis\b|\bund\b|\btot\b|\ben\b)\s?"
    r"(?:the |a |again in |les |la |el )?"
)
_RANGE = re.compile(r"[-–—~]|\b(?:to|through|thru|until|till?|into|a|au|aux|hasta|bis|tot)\b|jusqu")

_VERB = re.compile(
    r"\b(?:re-?)?(?:blooms?|blooming|flowers?|flowering|blossoms?|fleurit|floraison|florece|bluht|bloeit)\b"
    r"(?P<filler>(?:[ ,\n]+(?:from|in|during|throughout|all|through|continuously|profusely|heavily"
    r"|abundantly|freely|"
    r"non-?stop|best|mainly|mostly|repeatedly|again|appear|appears|appearing|open|opening|are|produced"
    r"|borne|held|"
    r"the|on|bloom|blooms|white|pink|red|blue|purple|yellow|orange|violet|lavender|cover|covers|this"
    r"|plant|each|long|"
    r"de|du|en|desde|von|im|vom|van|dans|tout|todo|l|d|le|la|el|a|au)){0,6})[ ,:'’\n]*$"
)
_CHORE = re.compile(
    r"\b(?:prune?d?|cut|deadhead\w*|remove|spent|after|before|pinch\w*|divide|plant(?:ed)? (?:in|out)"
    r"|trim|shear|harvest"
    r"|fertili[sz]e|feed|for|next|tailler|podar|faded|old|following)\b[^.;\t]{0,40}$"
)
_REVERSE = re.compile(
    r"[ \n-](?:[a-z]+ )?(?:blooming|flowering|bloomers?|blooms?|color and bloom)\b(?! to| in| for)"
)
_NOT_TIME = re.compile(
    r"\s?(?:street|st\b|road|farms?|nursery|nurseries|growers|gardens?|be\b|fade|snow|showers|sun\b|need)"
)


def read_bloom(tag: TagText) -> Iterator[Found[Bloom]]:
    """Each statement of bloom time.

    >>> [found.value for found in read_bloom(TagText("Blooms June to August"))]
    [Bloom(text='June to August', seasons=(), months=(6, 7, 8))]
    >>> list(read_bloom(TagText("Plant in spring. Prune after bloom in fall.")))
    []
    """
    text = tag.string
    folded = fold(text)
    after = {found.start: found.certainty for found in labelled(text, _LABELS)}
    for chain in _chains(text):
        certainty = _certainty(folded, chain, after)
        if certainty and (bloom := _bloom(text, chain)):
            yield Found(bloom, (_start(folded, chain), chain[-1].end), certainty)
    yield from _numbered(tag)
    yield from _behind_flower(tag.string)
    yield from _all_season(tag)


def _chains(text: str) -> Iterator[list[Hit[_Term]]]:
    """Seasons and months joined by "to", "and", a dash: one statement."""
    folded = fold(text)
    chain: list[Hit[_Term]] = []
    for hit in _TERMS.find(text):
        if chain and not _JOIN.fullmatch(folded, chain[-1].end, hit.start):
            # "late May": the part and its month stand side by side
            beside = chain[-1].value.part and not chain[-1].value.season and hit.value.month
            if not (beside and folded[chain[-1].end : hit.start] in (" ", "-")):
                yield chain
                chain = []
        chain.append(hit)
    if chain:
        yield chain


def _certainty(folded: str, chain: list[Hit[_Term]], after: dict[int, float]) -> float:
    """How sure it is that this time is the bloom time; 0 when it is another time, or no time."""
    start, end = chain[0].start, chain[-1].end
    sure = min(hit.certainty for hit in chain)
    before = folded[max(0, start - 90) : start]
    if _NOT_TIME.match(folded, end) or not any(h.value.season or h.value.month for h in chain):
        return 0.0
    for begin, certainty in after.items():
        if begin <= start and re.fullmatch(
            r"(?:from |in |all |throughout |during |de |d.|du |en |l.)*", folded[begin:start]
        ):
            return certainty * sure
    if _CHORE.search(before):
        return 0.0
    if re.search("✿ ?$", before):
        return 0.55 * sure
    if _VERB.search(before):
        return 0.85 * sure
    return 0.8 * sure if _REVERSE.match(folded, end) else 0.0


def _start(folded: str, chain: list[Hit[_Term]]) -> int:
    """Where the words begin: "all summer" and "throughout summer" belong to the time."""
    lead = re.search(r"(?:\ball |\bthroughout |\btout l.|\btodo el )$", folded[: chain[0].start])
    return lead.start() if lead else chain[0].start


def _bloom(text: str, chain: list[Hit[_Term]]) -> Bloom | None:
    folded = fold(text)
    months = _months(folded, chain)
    seasons = tuple(dict.fromkeys(_season_names(chain)))
    if not months and not seasons:
        return None
    return Bloom(clean(text[_start(folded, chain) : chain[-1].end]), seasons, months)


def _season_names(chain: list[Hit[_Term]]) -> Iterator[str]:
    """Seasons as named; in "early to mid summer" the season of the first part is that of the next."""
    for at, hit in enumerate(chain):
        if hit.value.season:
            yield "_".join(filter(None, (hit.value.part, hit.value.season)))
        elif hit.value.part:
            following = next((h.value for h in chain[at + 1 :] if h.value.season or h.value.month), None)
            if following and following.season:
                yield f"{hit.value.part}_{following.season}"


def _months(folded: str, chain: list[Hit[_Term]]) -> tuple[int, ...]:
    months: list[int] = []
    previous: Hit[_Term] | None = None
    for hit in chain:
        if not hit.value.month:
            continue
        joined = folded[previous.end : hit.start] if previous else ""
        months += span(months[-1], hit.value.month)[1:] if _RANGE.search(joined) else (hit.value.month,)
        previous = hit
    return tuple(dict.fromkeys(months))


def span(first: int, last: int) -> tuple[int, ...]:
    """The months from `first` to `last`, over the turn of the year where it must be.

    >>> span(11, 2)
    (11, 12, 1, 2)
    """
    return tuple((first + step - 1) % 12 + 1 for step in range((last - first) % 12 + 1))


_NUMBERS = re.compile(
    r"(?P<a>[IVX]{1,4}|\d{1,2})(?:\s?[-–—]\s?(?P<b>[IVX]{1,4}|\d{1,2}))?(?=$|[\s,;.|)])(?!\s?(?:\d|in|cm"
    r"|ft|we|da|\"))"
)


def _numbered(tag: TagText) -> Iterator[Found[Bloom]]:
    """Months as Roman numbers after any bloom label; as plain numbers only where the trade prints them so."""
    text = tag.string
    for found in labelled(text, _LABELS):
        match = _NUMBERS.match(text, found.start)
        if match is None:
            continue
        roman = match["a"] in _ROMAN and (match["b"] or match["a"]) in _ROMAN
        first, last = _month_number(match["a"]), _month_number(match["b"] or match["a"])
        if (
            not first
            or not last
            or (not roman and not (_NUMERIC_LABEL.match(fold(text), found.label) and match["b"]))
        ):
            continue
        yield Found(Bloom(match[0], (), span(first, last)), match.span(), 0.9 * found.certainty)


def _behind_flower(text: str) -> Iterator[Found[Bloom]]:
    """Roman months behind a drawn flower (common practice, no source)."""
    for flower in re.finditer("✿ ?", text):
        match = _NUMBERS.match(text, flower.end())
        if match and match["a"] in _ROMAN and (match["b"] or match["a"]) in _ROMAN:
            months = span(_ROMAN[match["a"]], _ROMAN[match["b"] or match["a"]])
            yield Found(Bloom(match[0], (), months), match.span(), 0.55)


def _month_number(printed: str) -> int:
    number = _ROMAN.get(printed) or (int(printed) if printed.isdigit() else 0)
    return number if 1 <= number <= 12 else 0


_ALL_SEASON = re.compile(
    r"(?:all season(?: long)?|season[- ]long|year[- ]round|all year(?: round)?|everblooming|toute la saison|"
    r"toute l.annee|todo el ano)\b"
)


def _all_season(tag: TagText) -> Iterator[Found[Bloom]]:
    folded = fold(tag.string)
    starts = {found.start for found in labelled(tag.string, _LABELS)}
    for match in _ALL_SEASON.finditer(folded):
        if match.start() in starts or _VERB.search(folded[max(0, match.start() - 60) : match.start()]):
            yield Found(Bloom(clean(tag.string[slice(*match.span())])), match.span(), 0.85)


BLOOM: Field[Bloom] = Field("bloom", "Bloom time", Bloom, read_bloom)
