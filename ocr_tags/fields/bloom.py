"""When a plant blooms: the words as printed, the seasons they name, the months they span.

Seasons travel, dates do not: "summer" is June to August in the north and December to February in the
south (meteorological seasons, U.S. National Centers for Environmental Information), so a season is never
turned into months. "Until frost" stays in the words: where it falls depends on the place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from ocr_tags.fields.bloom_flowers import (
    before_flowers,
    clause_before,
    of_flowers,
    opens_with_colours,
    opens_with_flowers,
)
from ocr_tags.fields.bloom_numbers import LABELS, read_numbers, span
from ocr_tags.fields.colour_words import colour
from ocr_tags.fields.phrases import Hit, Phrases, clean, fold, listed
from ocr_tags.fields.values import SECOND_LANGUAGE, Labelled, labelled
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText
from ocr_tags.values import Bloom


@dataclass(frozen=True, slots=True)
class _Term:
    season: str = ""
    part: str = ""
    month: int = 0
    foreign: bool = False


def _terms() -> dict[str, _Term]:
    table = {word: _Term() for word in listed("frost")["frost"]}
    table |= {word: _Term(month=int(month)) for month, words in listed("month").items() for word in words}
    for prefix in ("foreign_", ""):
        foreign, parts = bool(prefix), listed(f"{prefix}part")
        table |= {word: _Term("", part, 0, foreign) for part, words in parts.items() for word in words}
        for season, words in listed(f"{prefix}season").items():
            table |= {word: _Term(season, "", 0, foreign) for word in words}
            for part, before in parts.items():
                term = _Term(season, part, 0, foreign)
                table |= {f"{first} {word}": term for word in words for first in before}
    return table


_Chain = list[Hit[_Term]]
_TERMS = Phrases(_terms, shortest=6)


_JOIN = later(
    r"\.?\s?(?:(?:,|;|\band)? (?:(?:then|often|and) )?(?:re-?bloom\w*|re-?peat\w*|re-?flower\w*"
    r"|again)(?: again)? in\b"
    r"|[-–—/&+~]|\bt/?m\b|\bthrough to\b|\bright through\b|\bto\b|\bthrough\b|\bthru\b|\buntil\b"
    r"|\btill?\b|,?\s?\band\b|,?\s?\bor\b|,|\binto\b|\bup to\b|\ba\b"
    r"|\bau\b|\baux\b|\bjusqu.{1,2}(?:a|au|aux)?\b|\bet\b|\by\b|\bhasta\b|\bbis\b|\bund\b|\btot\b|\ben\b"
    r"|\bog\b|\boch\b|\btil\b)\s?"
    r"(?:the |a |again in |les |la |el )?"
)
_LEAD = later(r"(?:from |in |all |throughout |during |de |d.|du |en |l.|i |im |von |vom )*")
_RANGE = later(r"[-–—~]|\b(?:t/?m|to|through|thru|until|till?|into|a|au|aux|hasta|bis|tot)\b|jusqu")

_VERB = later(
    r"\b(?:re-?)?(?:blooms?|blooming|flowers?|flowering|blossoms?|fleurit|floraison|florece|floracion"
    r"|bluht|blute|blutezeit|bloeit|bloei|bloeitijd|bloeiperiode|blommar|blomning|blomstrer|blomstring"
    r"|fioritura)\b"
    r"(?: (?:period|times?|seasons?|months?)\b)?(?:\s?/\s?[^\W\d_]+(?:[ \n][^\W\d_]+){0,3}\s?[:|/–—-]+)?"
    r"(?P<filler>(?:[ ,\n]+(?:from|in|during|throughout|all|through|continuously|profusely|heavily"
    r"|abundantly|freely|non-?stop|best|mainly|mostly|repeatedly|again|appear|appears|appearing|open|opening"
    r"|are|produced|borne|held|the|on|over|a|season|every|bloom|blooms|white|pink|red|blue|purple|yellow|orange"
    r"|violet|lavender|cover|covers|this|plant|each|long|de|du|en|desde|von|im|vom"
    r"|van|dans|tout|todo|l|d|le|la|el|a|au)){0,6})[ ,:'’\n|/–—-]*$"
)
_CHORE = later(
    r"\b(?:prune?d?|cut|deadhead\w*|remove|spent|after|before|pinch\w*|divide|plant(?:ed)? (?:in|out)"
    r"|trim|shear|harvest|pick"
    r"|fertili[sz]e|feed|for|next|tailler|podar|faded|old|following)\b[^.;\t]{0,40}$"
)
_HANGING = later(r"\b(?:after|before|until|when|once|for|of|spent|faded)\s*$")
"""Before what looks like a label: "PRUNE AFTER", and "FLOWERING" below it."""
_BEGUN_ABOVE = later(r"(?:^|[\n\t])(?:until|to|through|thru|till?|bis|hasta) $")
"""Before the far end of a time whose beginning stands in another row."""
_MODAL = later(r"may (?!(?:to|and|or|through|thru|until|till|into|in|on|with|for|then|onwards?|if)\b)[a-z]")
"""No month: "flowers may drop"."""
_REVERSE = later(
    r"[ \n-](?:[a-z]+ )?(?:blooming|flowering|bloomers?|blooms?|color and bloom)\b(?! to| in| for)"
)
_NOT_TIME = later(
    r"\s?(?:street|st\b|road|farms?|nursery|nurseries|growers|gardens?|be\b|fade)| ?(?:snow|showers"
    r"|sun\b|need)"
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
    after = {found.start: found for found in labelled(text, LABELS)}
    told: list[_Chain] = []
    for chain, anchor in _chains(text):
        certainty = _certainty(text, chain, anchor, after)
        if chain[0].value.foreign and (chain[0].start != anchor or _says_again(text, told, chain)):
            continue  # says again what stands before it
        if certainty and (bloom := _bloom(text, chain)):
            told.append(chain)
            yield from _whole(text, chain, Found(bloom, (_start(folded, chain), chain[-1].end), certainty))
    if not told:
        yield from _unlabelled(text)
    yield from read_numbers(text)
    yield from _all_season(tag)


def _says_again(text: str, told: list[_Chain], chain: _Chain) -> bool:
    """Whether words of another language on this line have told the time already."""
    line = text.rfind("\n", 0, chain[0].start)
    return any(other[0].start > line and not other[0].value.foreign for other in told)


def _whole(text: str, chain: _Chain, found: Found[Bloom]) -> Iterator[Found[Bloom]]:
    """What was found, when it does not break off where no time ends: "early spring to mid".

    Behind it another language may fill the line: then its last word opens the next, or it is not read.
    """
    if not _is_part(chain[-1].value):
        torn = _RUNS_ON.match(text, chain[-1].end)
        if (torn and not _OPEN_END.match(fold(text), torn.end() - 1)) or _month_below(text, chain):
            found = replace(found, certainty=TORN * found.certainty)
        yield found
        return
    rest, _, following = text[chain[-1].end :].partition("\n")
    end = next(iter(_TERMS.find(following)), None)
    if not end or end.start or end.value.part or end.value.foreign or not _BAR.match(rest):
        return
    if not (end.value.month or following[0].islower()) or not _CELL_END.match(following, end.end):
        return
    printed = f"{found.value.text} {following[: end.end]}"
    chains = [parts for parts, _ in _chains(printed)]
    bloom = _bloom(printed, chains[0]) if len(chains) == 1 else None
    if bloom:
        yield Found(bloom, found.span, 0.9 * found.certainty)


_RUNS_ON = later(
    lambda: (
        rf"(?:(?! — )\s?[-–—]\s?(?!(?i:{colour()}))|\s(?:to|through|thru|until|till|bis|à|hasta|t/m"
        rf"|tot)\s)[^\W\d_]"
        r"|(?: to| through| thru| until| till| ?[-–—]|,) ?(?:\n|\t|$)"
        r"|\n[^\t\n]{2,20}\t(?:to|until|till?|through|thru|bis|hasta) [^\W\d_]"
    )
)
"""Behind a time that goes on to another, which was not made out: "Late spring to midsurmer"."""
_OPEN_END = later(
    r"(?:(?:the )?(?:first |hard |killing )*frosts?|early frost|late in|gel|frost|heladas?|vorst)\b"
)
TORN = 0.3


def _month_below(text: str, chain: _Chain) -> bool:
    """Whether a month stands alone in the next line: "May" and "October" below it have lost their stroke."""
    rest, _, following = text[chain[-1].end :].partition("\n")
    if rest.strip(" -–—~") or not chain[-1].value.month:
        return False
    term = next(iter(_TERMS.find(following)), None)
    return bool(term and not term.start and term.value.month and _CELL_END.match(following, term.end))


_BAR = later(r" ?[|/•·] ?[^\W\d_]")
_CELL_END = later(r" ?[.,;]?(?:$|[\n\t]| ?[|/•·])")


def _is_part(term: _Term) -> bool:
    return bool(term.part and not term.season and not term.month)


_OTHER_TIME = later(
    r"\b(?:plant(?!(?:as?|es?)\b)|sow|harvest|pick|prun|cut|feed|ship|available|interest|colou?r|fruit|berr"
    r"|foliage|calendar"
    r"|start|transplant|divide|protect|season|semis|recolte|siembra|cosecha|aussaat|ernte|pflanz|zaai"
    r"|oogst)"
)


def _unlabelled(text: str) -> Iterator[Found[Bloom]]:
    """ "Midsummer - early fall" alone in its cell, its label a picture."""
    folded = fold(text)
    alone = [chain for chain, anchor in _chains(text) if anchor == chain[0].start and _is_cell(text, chain)]
    if len(alone) != 1 or not _RANGE.search(folded, alone[0][0].end, alone[0][-1].start):
        return
    before = folded[max(0, alone[0][0].start - 60) : alone[0][0].start]
    bloom = _bloom(text, alone[0])
    if bloom and not _OTHER_TIME.search(before):
        sure = min(hit.certainty for hit in alone[0])
        yield Found(bloom, (alone[0][0].start, alone[0][-1].end), 0.8 * sure)


def _is_cell(text: str, chain: _Chain) -> bool:
    before, after = text[: chain[0].start].rstrip(" ✿*-"), text[chain[-1].end :].lstrip(" .")
    ends = ("", "\n", "\t", "•", "·", "|")
    rest = re.split(r"[\n\t•·|]", after)[0]
    closed = after[:1] in ends or (after[:1] == "," and opens_with_colours(fold(rest[1:])))
    return before[-1:] in ends and closed


def _chains(text: str) -> Iterator[tuple[_Chain, int]]:
    """Seasons and months joined by "to", "and", a dash: one statement, and where its words begin.

    "Late spring / Fin du printemps" is two, which begin at one place.
    """
    folded = fold(text)
    chain: _Chain = []
    anchor = 0
    for hit in _TERMS.find(text):
        joint = folded[chain[-1].end : hit.start] if chain else ""
        if chain and not _joined(joint, chain[-1].value, hit.value):
            yield chain, anchor
            chain = []
        elif chain and _turns(joint, chain, hit.value):
            yield chain, anchor
            chain = [hit]
            continue
        anchor = anchor if chain else hit.start
        chain.append(hit)
    if chain:
        yield chain, anchor


def _joined(joint: str, one: _Term, other: _Term) -> bool:
    beside = one.part and not one.season and other.month  # "late May"
    return bool(_JOIN.fullmatch(joint) or (beside and joint in (" ", "-", "\n")))


def _turns(joint: str, chain: _Chain, other: _Term) -> bool:
    """Whether another language begins here; names of months belong to several."""
    seasons = any(hit.value.season for hit in chain) and (other.season or other.part)
    return bool(seasons and re.search(r"[/|\n]", joint) and chain[-1].value.foreign != other.foreign)


def _certainty(text: str, chain: _Chain, start: int, after: dict[int, Labelled]) -> float:
    """How sure it is that this time is the bloom time; 0 when it is another time, or no time."""
    folded, end = fold(text), chain[-1].end
    sure = min(hit.certainty for hit in chain)
    before = folded[max(0, start - 90) : start]
    if _MODAL.match(text, start) and len(chain) == 1:
        return 0.0
    if _NOT_TIME.match(folded, end) or not any(h.value.season or h.value.month for h in chain):
        return 0.0
    for begin, found in after.items():
        between = folded[begin:start]
        colours = opens_with_colours(between) or (not found.bare and opens_with_flowers(between))
        torn = _HANGING.search(clause_before(text, found.label))
        if begin <= start and not torn and (colours or _LEAD.fullmatch(between)):
            return sure * found.certainty / (SECOND_LANGUAGE if _is_beside(text, found) else 1)
    if _CHORE.search(clause_before(text, start)):
        return 0.0
    if _BEGUN_ABOVE.search(before):
        return TORN * sure
    if re.search("✿ ?$", before):
        return (0.8 if _CELL_END.match(folded, end) else 0.55) * sure
    if _VERB.search(before):
        return 0.85 * sure
    if _REVERSE.match(folded, end):
        return 0.8 * sure
    if certain := before_flowers(text, start, end):
        return certain * sure
    cold = chain[0].value.season in ("fall", "winter")
    return sure * of_flowers(text, start, end, months=any(h.value.month for h in chain), cold=cold)


def _is_beside(text: str, found: Labelled) -> bool:
    """Whether a second label stands below its English one, the value after both: "Bloom /", "Floraison:"."""
    before = text[: found.label].rstrip()
    return found.second and before.endswith("/") and LABELS.whole(before.splitlines()[-1]) is not None


def _start(folded: str, chain: _Chain) -> int:
    """Where the words begin: "all summer" and "throughout summer" belong to the time."""
    lead = re.search(r"(?:\ball |\bthroughout |\btout l.|\btodo el )$", folded[: chain[0].start])
    return lead.start() if lead else chain[0].start


def _bloom(text: str, chain: _Chain) -> Bloom | None:
    folded = fold(text)
    months = _months(folded, chain)
    seasons = tuple(dict.fromkeys(_season_names(chain)))
    if not months and not seasons:
        return None
    return Bloom(clean(text[_start(folded, chain) : chain[-1].end]), seasons, months)


def _season_names(chain: _Chain) -> Iterator[str]:
    """Seasons as named; in "early to mid summer" the season of the first part is that of the next."""
    for at, hit in enumerate(chain):
        if hit.value.season:
            yield "_".join(filter(None, (hit.value.part, hit.value.season)))
        elif hit.value.part:
            following = next((h.value for h in chain[at + 1 :] if h.value.season or h.value.month), None)
            if following and following.season:
                yield f"{hit.value.part}_{following.season}"


def _months(folded: str, chain: _Chain) -> tuple[int, ...]:
    months: list[int] = []
    previous: Hit[_Term] | None = None
    for hit in chain:
        if not hit.value.month:
            continue
        joined = folded[previous.end : hit.start] if previous else ""
        months += span(months[-1], hit.value.month)[1:] if _RANGE.search(joined) else (hit.value.month,)
        previous = hit
    return tuple(dict.fromkeys(months))


_ALL_SEASON = later(
    r"(?:all season(?: long)?|season[- ]long|year[- ]round|all year(?: round)?|everblooming"
    r"|toute la saison|"
    r"toute l.annee|todo el ano)\b"
)


def _all_season(tag: TagText) -> Iterator[Found[Bloom]]:
    folded = fold(tag.string)
    starts = {found.start for found in labelled(tag.string, LABELS)}
    for match in _ALL_SEASON.finditer(folded):
        if match.start() in starts or _VERB.search(folded[max(0, match.start() - 60) : match.start()]):
            yield Found(Bloom(clean(tag.string[slice(*match.span())])), match.span(), 0.85)
