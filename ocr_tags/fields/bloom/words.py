"""The words of a bloom time, seasons, months and their parts, and what print puts before and behind them."""

from __future__ import annotations

from dataclasses import dataclass

from ocr_tags.fields.phrases import Hit, Phrases, listed
from ocr_tags.patterns import later


@dataclass(frozen=True, slots=True)
class Term:
    season: str = ""
    part: str = ""
    month: int = 0
    foreign: bool = False


def _terms() -> dict[str, Term]:
    table = {word: Term() for word in listed("frost")["frost"]}
    table |= {word: Term(month=int(month)) for month, words in listed("month").items() for word in words}
    for prefix in ("foreign_", ""):
        foreign, parts = bool(prefix), listed(f"{prefix}part")
        table |= {word: Term("", part, 0, foreign) for part, words in parts.items() for word in words}
        for season, words in listed(f"{prefix}season").items():
            table |= {word: Term(season, "", 0, foreign) for word in words}
            for part, before in parts.items():
                term = Term(season, part, 0, foreign)
                table |= {f"{first} {word}": term for word in words for first in before}
    return table


Chain = list[Hit[Term]]
TERMS = Phrases(_terms, shortest=6)


JOIN = later(
    r"\.?\s?(?:(?:,|;|\band)? (?:(?:then|often|and|with|some|a|little|light|lighter|occasional|sporadic"
    r"|second"
    r"|smaller|sometimes|usually) )*(?:re-?bloom\w*|re-?peat\w*|re-?flower\w*|flush|encore"
    r"|again)(?: (?:again|bloom|flush|show|flowers))? in\b|,? then\b"
    r"|,? (?:and |then |then again )?(?:repeats?|re-?blooms?|sporadic(?:ally)?|scattered|stragglers"
    r"|a few)(?: again)?"
    r"(?: in| into| to| until| through)?\b|(?:indoors|inside|under glass|outdoors|outside),? (?:and |or )?"
    r"|,? (?:then )?(?:on and off|off and on|now and then),? (?:again )?(?:to|until|till?|through|into)\b"
    r"|\b(?:right|well|clear|clean|straight|deep|all the way|often|even) (?:up )?(?:to|until|till?|through"
    r"|into)\b|\b(?:until|till?|to|through) (?:well|deep|far|right|late) into\b"
    r"|[-–—/&+~→]|\bt/?m\b|\bthrough to\b|\bright through\b|\bto\b|\bthrough\b|\bthru\b|\buntil\b"
    r"|\btill?\b|,?\s?\band\b|,?\s?\bor\b|,|\binto\b|\bup to\b|\ba\b"
    r"|\bau\b|\baux\b|\bjusqu.{1,2}(?:a|au|aux)?\b|\bet\b|\by\b|\bhasta\b|\bbis\b|\bund\b|\btot\b|\ben\b"
    r"|\bog\b|\boch\b|\btil\b)\s?"
    r"(?:the |a |(?:then |and |sometimes |often )?again[ \n](?:in[ \n])?|les |la |el )?"
)
GOES_ON = later(
    r",? (?:and |then |and then )?(?:(?:can |will |often )?(?:keeps?|keeping|carr(?:y|ies)|carrying|goes"
    r"|go|going"
    r"|continues?|continuing|lasts?|lasting|runs?|running|on)\b(?: (?:on|going|coming|flowering|blooming"
    r"|right"
    r"|well|it|all the way))* )(?:to|until|till?|into|through|up to) (?:the )?"
)
"""Between the beginning and the end of a time told in two verbs: "in February and keeps going to April"."""
LEAD = later(
    r"(?:every (?:\d+(?: ?[-–] ?\d+)?|few) weeks,? |(?:on and off|off and on|non-?stop|continuously|in waves"
    r"|in flushes|repeatedly|heavily|profusely|freely|mainly|mostly|best|heaviest|abundantly|reliably),? "
    r"|from |in |all |throughout |during |de |d.|du |en |l.|i |im |von |vom )*"
)
RANGE = later(r"[-–—~→]|\b(?:t/?m|to|through|thru|until|till?|into|a|au|aux|hasta|bis|tot)\b|jusqu")

VERB = later(
    r"\b(?:re-?)?(?:blooms?|blooming|flowers?|flowering|blossoms?|fleurit|floraison|florece|floracion"
    r"|bluht|blute|blutezeit|bloeit|bloei|bloeitijd|bloeiperiode|blommar|blomning|blomstrer|blomstring"
    r"|fioritura|fiorisce|fioriscono|bl\.)(?![^\W_])"
    r"(?: (?:period|times?|seasons?|months?)\b)?(?:\s?/\s?[^\W\d_]+(?:[ \n][^\W\d_]+){0,3}\s?[:|/–—-]+)?"
    r"(?P<filler>(?:[ ,\n]+(?:from|in|at|around|about|towards?|during|throughout|all|through|continuously"
    r"|profusely|heavily|abundantly|freely|turn|up|come|arrive|show|keep|coming|almost|nearly|non-?stop|best|mainly|mostly"
    r"|repeatedly|again|appear|appears|appearing|open"
    r"|opening"
    r"|are|produced|borne|held|the|on|over|a|season|every|bloom|blooms|white|pink|red|blue|purple|yellow"
    r"|orange"
    r"|violet|lavender|starry|freely|long|through|cover|covers|this|plant|each|long|begins?|beginning"
    r"|starts?|starting|commences?"
    r"|commencing|peaks?|peaking"
    r"|lasts?|lasting|continues?|continuing|de|du|en|desde|von|im|vom"
    r"|van|dans|tout|todo|l|d|le|la|el|a|au)){0,6})(?:(?!\n\n)[ ,:'’\n|/–—-])*$"
)
CHORE = later(
    r"\b(?:prune?d?|cut|deadhead\w*|remove|spent|after|before|pinch\w*|divide|plant(?:ed)? (?:in|out)"
    r"|trim|shear|harvest|pick"
    r"|fertili[sz]e|feed|for(?! (?:our|my|its|their) )|next|tailler|podar|faded|old"
    r"|following)\b[^.;\t]{0,40}$"
)
HANGING = later(r"\b(?:after|before|until|when|once|for|of|spent|faded)\s*$")
"""Before what looks like a label: "PRUNE AFTER", and "FLOWERING" below it."""
HANGS_ABOVE = later(r"\b(?:to|until|through|thru|till?|bis|hasta)[ \t]*\n{1,2}[^\n\t]{0,24}[ \t]$")
"""Before the far end of a time whose beginning ends the row above, behind the label's second line."""
BEGUN_ABOVE = later(r"(?:^|[\n\t])(?:until|to|through|thru|till?|bis|hasta) $")
"""Before the far end of a time whose beginning stands in another row."""
MODAL = later(r"may (?!(?:to|and|or|through|thru|until|till|into|in|on|with|for|then|onwards?|if)\b)[a-z]")
"""No month: "flowers may drop"."""
REVERSE = later(
    r"[ \n-](?:[a-z]+ )?(?:blooming|flowering|bloomers?|blooms?|color and bloom)\b(?! to| in| for)"
    r"|[ \n](?:is|are) (?:show ?time|its (?:moment|season|peak)|when (?:it|they) (?:blooms?|flowers?)"
    r"|(?:the |its )?(?:bloom|flowering) (?:time|season))\b"
    r"|[ \n](?:brings?|sees?) (?:(?!no\b)[a-z-]+,? ){0,3}(?:flowers|blooms|blossoms?)\b"
)
NOT_TIME = later(
    r"\s?(?:street|st\b|road|farms?|nursery|nurseries|growers|gardens?|be\b|fade)| ?(?:snow|showers"
    r"|sun\b|need)| ?[▸►»]"
)
OTHER_TIME = later(
    r"\b(?:plant(?!(?:as?|es?)\b)|sow|harvest|pick|prun|cut|feed|ship|available|interest|colou?r|fruit|berr"
    r"|foliage|calendar"
    r"|start|transplant|divide|protect|season|semis|recolte|siembra|cosecha|aussaat|ernte|pflanz|zaai"
    r"|oogst)"
)
LABEL_APART = later(
    r"(?:^|[\n\t])(?:(?:season|time|period) (?:of )?)?(?:interest|harvest|ripens?|ripening|picking"
    r"|harvesting|pick"
    r"|fall colou?r)(?: (?:time|season|period))?:?(?=\n|$)"
)
"""A label of another time that stands by itself: the time may be its value, set in another column."""
COVERED = later(
    r"\b(?:covered|smothered|loaded|laden|decked|bedecked|studded|cloaked|draped|dripping|alight|lit"
    r"|wreathed)"
    r"(?: (?:from|in|all|throughout|through|each|every))* $"
)
WITH_FLOWERS = later(r"[ \n](?:with|in|by) [a-z ,\n-]{0,50}?\b(?:flowers|blooms|blossoms?|bloom)\b")
"""Around the time of "covered in May with white flowers"."""
SHOWN = later(
    r"(?:^|[\n\t.;•|] ?)(?:(?:main|first|peak|long|non-?stop|constant|bright|summer) )?"
    r"(?:(?:it |they )?(?:shows? (?:itself |themselves )?off|struts? (?:its|their) stuff|steals? the show"
    r"|(?:puts?|putting) on (?:a|its|the) (?:\w+ )?(?:show|display|performance)|on stage|takes? the stage)"
    r"|season|on show|on display|in colou?r|colou?r|show(?: ?time)?(?: runs| lasts| is)?|flush)"
    r"(?: ?: ?|\t|\.{3,} ?| )(?:from |all |in )?$"
)
"""Before a time with a beginning and an end, words of what a flowering plant is grown for."""
