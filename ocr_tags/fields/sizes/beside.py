"""A length that no word explains, told by what stands beside it in its line or sentence."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ocr_tags.fields.sizes.clauses import FOREIGN_NOUN_AFTER
from ocr_tags.fields.sizes.columns import Measured, Size
from ocr_tags.fields.sizes.crossed import large_enough
from ocr_tags.measures.quantities import METRIC
from ocr_tags.patterns import later

SMALLEST = 15.0
"""In cm; less than this in a pair, or twice this alone, may be a pot or a flower (common practice)."""
LINE_START = later(r"(?:^|\n)[ •·*–-]{0,3}$")
_KINDS = (
    r"(?:shrub|tree|perennial|annual|biennial|vine|climber|grass|fern|ground ?cover|conifer|palm|bamboo|sedge"
    r"|succulent|herb)"
)
_YEARS = r"(?:\d{1,2}|five|ten|twenty)"
ITEM_START = later(
    r"(?i:(?:^|[\n\t]|\. )(?:(?:very )?(?:slow|fast|quick|moderate|habit|mature)"
    rf"|(?:(?:en|de|fr|nl|uk) )?(?:[a-z-]+,? ){{0,2}}{_KINDS}"
    rf"|(?:age|year|at(?: age)?|(?:in|after|at)) {_YEARS}(?:[ -]y(?:ea)?rs?)?"
    rf"|{_YEARS}[ -]?y(?:ea)?rs?(?:[ -]size)?)"
    r"(?:[:,]| [-–])? (?![/|•·+–-]))"
    r"|(?:^|[\n\t]|[;,.] | [/|•·+–] )[ •·*–-]{0,3}"
)
"""What may stand before a size: a mark, what kind of plant it is, or its age ("Age 10: 3 ft x 2 ft")."""

_STEMS_BEFORE = later(
    r"(?:^|[\n\t]|\. )(?:(?!trail|hang|casc|weep|flower|bloom)[^\W\d_]+ )?(?:canes|stems|fronds"
    r"|ground[ -]?hugg(?:er|ing))"
    r"(?: of| reach(?:ing)?)? $",
    re.I,
)
"""What a plant is made of, at the head of a line or sentence, is as tall as the plant."""
_VINES_BEFORE = later(r"(?:^|[\n\t]|\. )vines(?: of| reach(?:ing)?| to)? $", re.I)
_TIED_UP = later(
    r"\b(?:stak(?:e[sd]?|ing)|cag(?:e[sd]?|ing)|trellis\w*|indeterminate|indet\b|tie[sd]?)\b", re.I
)
"""A vine that is tied up goes up, so its one length is its height (common practice, no source)."""
_KIND_BEFORE = later(
    r"(?:^|[\n\t]|\. )(?:(?:en|de|fr|nl|uk) )?(?:[a-z-]+,? ){0,2}(?:(?:semi-)?evergreen |deciduous |hardy )?"
    rf"(?!vine){_KINDS}(?:[:,]| [-–/|·•])? $",
    re.I,
)
"""A vine's one length may as well be how far it trails."""
_CLAUSE_ENDS = later(r"(?<=\.) (?=[A-Z])| ?(?:[.,;\n\t]|$| [-–/|·•] )")
_PLACED = r"(?: (?:in|as) (?:an? |the )?(?:tub|pot|container|ground|open|garden|bed|shrub|bush|tree))?"
_THEN_WIDE = later(
    rf"(?: (?:at|in|after) \d{{1,2}} y(?:ea)?rs?\.?)?{_PLACED}"
    r"(?:,| ?[x×;]| [•·|]| and| by)? ?"
    r"(?:(?:slowly )?(?:spreads|spreading|trailing|sprawling|creeping|suckering) )?(?:(?:about|around) )?",
    re.I,
)
_THEN_PLANTED = later(r"[,;]? (?:plant|space|set|thin)(?:ed)?(?: out)?(?: about| at| to)? ?", re.I)
_SMALL = 8.0
"""In cm; as `SMALLEST`, of an alpine that spreads and whose height is an item of its own."""
_PLANTED = 20.0
"""In cm; a smaller single figure before "plant 12 in apart" may be the pot."""
_FOLIAGE_THEN_FLOWER = later(r" ?(?:foliage|leaves) ?[/,;&] ?(?=\d)", re.I)
_BUSH_AFTER = later(r" ?-?(?:bush|shrub|tree|climber|vine)\b(?=[.,;\n\t]|$)", re.I)
_WHOLE_LIMIT = later(
    r"up to .*(?:ft|feet|foot|m|metres|meters)\b\.?.*|.* or so|(?-i:To) .*(?:ft|feet|foot|cm|m|in"
    r"|inch(?:es)?|met(?:re|er)s)\b\.?.*",
    re.I,
)
_NEAR_END_ABOVE = later(r"(?:\d ?(?:in|ft|cm|m)?\.?|[\"”″'’′–-]|\bto)\s*\n[^\w\n]{0,3}$", re.I)
"""Below such a line "To 3 ft" may be the far end of a range."""
_PLACE = (
    r"(?:(?:indoors|outdoors|inside|outside|under glass"
    r"|(?:as|in|for) (?:an? |the )?(?:house ?plant|pots?|tubs?|containers?|home|ground|garden|open)))"
)
_PLACED_ROW = later(
    rf"(?:(?:^|(?<=[\n\t]))|(?<=\. )){_PLACE},? (?:it )?(?:to |about |around |reaches |grows )?$", re.I
)
_ROW_ENDS = later(rf"(?:,? {_PLACE})?[ .]{{0,2}}(?:[\n\t]|$)", re.I)
_ALL_IT_GETS = later(
    r"\s(?:(?:is|are)\s)?(?:all\s(?:you|it|they|she|he|I)(?:['’]ll|\swill|\scan)?(?:\sever)?\s(?:gets?"
    r"|grows?|reach(?:es)?|makes?|manages?|need)"
    r"|(?:is|are)\s(?:as\s(?:tall|high|big|large)\sas|the\stallest|(?:its|the)\s(?:limit|ceiling"
    r"|full\sheight|top))"
    r"|tops(?=[.,;\n]|$)|(?:at|is)\s(?:the\s)?(?:most|tallest|very\smost)(?=[.,;\n]|$)|and\sno\s(?:more"
    r"|taller|higher)\b)",
    re.I,
)
_UPWARD = later(
    r"(?:on|up|over|with|against|through|into|given)\s(?:an?\s|the\s|its\s)?(?:[a-z]+\s)?"
    r"(?:walls?|trellis|fences?|supports?|trees?|arch|pergola|wires?|netting|canes|strings?|poles?)\b",
    re.I,
)
_AT_AGE = later(rf" (?:in|after|at)(?: about)? {_YEARS} y(?:ea)?rs?\b\.?(?=[.,;)\n\t]|$)", re.I)
_WIDE_ENDS = later(r" ?(?:[.,;)\n\t]|$| (?:or|and|in|with|when|if)\b)")
CROP = later(
    r"\b\d{2,3}(?:[–-]\d{2,3})? ?days\b(?! of)|(?:^|(?<=[\n\t|] )|(?<=[\n\t]))(?:\d{2,3}(?:[–-]\d{2,3})? ?d\b"
    r"|\d{1,2}(?:[–-]\d{1,2})? ?(?:weeks|wks))\.?(?=\s*(?:$|[\n\t|]))",
    re.I,
)
"""A crop in so many days: its lengths may as well be how far apart it stands."""
_NO_TALLER, _NEVER_OVER = (
    later(r"no (?:taller|higher) than", re.I),
    later(r"(?:never|rarely|seldom|hardly ever) ", re.I),
)
_SLOWLY = later(
    r",? (?:but )?(?:very |quite |rather )?(?:slowly|quickly|fast|in time|eventually)(?=[.,;( \n]|$)", re.I
)
_TALLER = later(
    r"(?P<said>[ ,]{0,2}(?:tall|high|straight up|upright|h)\b)?"
    r"(?: ?(?:[,;/·|•]|\band\b|(?P<across>[x×]|\bby\b))|\.|(?<=\.))\s?(?:by |about )?",
    re.I,
)


def told_beside(tag: Measured, place: int, found: Sequence[Size]) -> Iterator[Size]:
    """A height told by what stands beside it: "4-6 m, 3 m across", "Canes 5 ft", "2-3 ft bush"."""
    measure, text = tag.measures[place], tag.text
    start, end = measure.span
    low, high = measure.length.min_cm, measure.length.max_cm
    after = tag.measures[place + 1] if place + 1 < len(tag.measures) else None
    beside = {size.kind for size in found if after and size.measure.span == after.span}
    opens = ITEM_START.search(text, 0, start) and text[:start].rstrip(" ")[-1:] in {"", *"\n\t,.;:•·|"}
    first = opens and after and "spread" in beside and _THEN_WIDE.fullmatch(text, end, after.span[0])
    listed = first and measure.unit in METRIC and not text[:start].endswith(", ")
    if max(low or 0, high or 0) < (_SMALL if listed else SMALLEST):
        return
    whole = measure.unit in METRIC or low != high or (high or 0) >= _PLANTED
    planted = (
        opens
        and after
        and whole
        and "spacing" in beside
        and _THEN_PLANTED.fullmatch(text, end, after.span[0])
    )
    leaves = opens and "flower_height" in beside and _FOLIAGE_THEN_FLOWER.match(text, end)
    tied = _VINES_BEFORE.search(text, 0, start) and _TIED_UP.search(text)
    stems = tied or _STEMS_BEFORE.search(text, 0, start)
    stems = stems if not FOREIGN_NOUN_AFTER.match(text, end) else None
    bush = LINE_START.search(text, 0, start) and _BUSH_AFTER.match(text, end)
    limit = bool(_ROW_ENDS.match(text, end)) and _limit_of_row(tag, start, end)
    aged = opens and high and _AT_AGE.match(text, end)
    no_more = _NO_TALLER.match(text, start) or (opens and _NEVER_OVER.match(text, start))
    up = (
        aged
        or no_more
        or (opens and low is None and (_UPWARD.match(text, end + 1) or _SLOWLY.match(text, end)))
    )
    kind = _KIND_BEFORE.search(text, 0, start) and _CLAUSE_ENDS.match(text, end)
    if kind or first or planted or leaves or stems or bush or limit or up or _ALL_IT_GETS.match(text, end):
        yield Size("height", measure, (0.7 if first or leaves else 0.6) * measure.certainty)


def _limit_of_row(tag: Measured, start: int, end: int) -> bool:
    """Whether a length is all its line says but for where it grows so tall: "To 3 ft", "Indoors to 6 ft"."""
    bare = all(label.weak or label in tag.spent for label in tag.labels)
    whole = LINE_START.search(tag.text, 0, start) and _WHOLE_LIMIT.fullmatch(tag.text, start, end)
    if whole:
        return whole[0][0] != "T" or (bare and not _NEAR_END_ABOVE.search(tag.text, 0, start))
    return bare and bool(_PLACED_ROW.search(tag.text, 0, start))


def wide_behind(tag: Measured, open_places: Sequence[int], found: Sequence[Size]) -> Iterator[Size]:
    """A spread that stands bare behind the height: "5 ft tall, 3 ft" to the end of its line."""
    if "spread" in {size.kind for size in found}:
        return
    heights = {size.measure.span for size in found if size.kind == "height"}
    for place in open_places:
        measure, before = tag.measures[place], tag.measures[place - 1] if place else None
        if before is None or before.span not in heights:
            continue
        behind = _TALLER.fullmatch(tag.text, before.span[1], measure.span[0])
        ends = tag.text[measure.span[1] - 1] == "." or _WIDE_ENDS.match(tag.text, measure.span[1])
        if not behind or not ends:
            continue
        alike = (before.unit in METRIC) == (measure.unit in METRIC) and large_enough(before, measure)
        if behind["said"] or (alike and (behind["across"] or not CROP.search(tag.text))):
            yield Size("spread", measure, 0.6 * measure.certainty)
