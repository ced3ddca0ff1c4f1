"""The series a plant is sold in, where only its place tells: over the plant's name, or before a colour.

How series are printed is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ocr_tags.fields.answers import find_answers
from ocr_tags.fields.colours.words import colour
from ocr_tags.fields.makers import written
from ocr_tags.fields.names import read_botanical_name, read_common_names
from ocr_tags.names import lexicon
from ocr_tags.names.firms import firm_in
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.naming import LABEL
from ocr_tags.names.signatures import signed_firms
from ocr_tags.names.titles import Line, is_answer, is_noise, looks_like_name
from ocr_tags.names.vocabulary import is_tag_word
from ocr_tags.patterns import later
from ocr_tags.record import Found, TagText

MARKED = 0.85
HEADED = 0.75
"""How sure a line over the plant's name is to be its series, when only its place and its words tell."""
COLOURED = 0.75
CLOSE = 0.12
"""Names so much less sure than the surest may be words of a series: Primrose, of Viola Tidewick Primrose."""

CAP = r"[A-ZÀ-ÖØ-Þ][\w’'-]*"
_MANY = (
    r"Club|Row|Patch|Path|Heroes|Friends|Mates|Pets|Stars|Lights|Walls|Bells|Originals"
    r"|Classics|Gems|Jewels|Buddies"
    r"|Babies|Minis|Giants|Treasures|Trinkets|Legends|Heroines|Champions|Explorers"
    r"|Wanderers|Ramblers|Lanterns"
    r"|Favourites|Dancers|Ladies|Beauties|Delights|Pots|Crew|Gang|Squad|Tribe|Family|Clan"
    r"|Troupe|Parade|Party|Carnival"
    r"|Circus|Crowd|Bunch|Jungle|Larder|Pantry|Deli|Bouquet|Balcony|Orchard|Foliage"
    r"|Meadows?|Oddities|Rascals|Rebels"
    r"|Baskets|Succulents|Tropicals|Citrus|Edibles|Hebes|Nights|Days|Dreams|Tales|Stories|Charms"
    r"|Wonders|Colours|Colors"
)
"""What a range of plants is called by, and seldom a single one."""
MANY_LAST = later(rf"(?:{_MANY})$", re.I)
_SHELF = later(
    r"\b(?:fruits?|climbers?|vines?|natives?|plugs?|heirlooms?|heritage|favou?rites?"
    r"|choice|picks?|finds?|winners?"
    r"|privacy|fillers?|magnets?|purifying|safe|ready|sale|special|offer|waterwise|sensory|salad|queen|king"
    r"|everything|merry|happy|mountains?|hills|alps|instant|rare|unusual|sampler|gift|local|staff"
    r"|customer|gardener'?s|grower'?s"
    r"|pet|kids?|school|society|club plant|trust|friends of|nursery|nurseries|garden"
    r"|gardens|farms?|growers?|supply"
    r"|seeds?|bulbs?|roses|works|barn|lane|road|house plants?|market|mix(?:ed)?|shop|stock"
    r"|grade|lot|bench|bed|item"
    r"|no|zone|hardy|tender|bare|potted|your|my|me|you|we|us|i|is|are|it|on|for|with|in|at"
    r"|by|from|to|that|than|and"
    r"|who|what|when|where|why|how|hello|hi|meet|try|say|pick|love|loves|thrives?|grow|water)\b",
    re.I,
)
"""Words of shelves, firms and slogans: a line with one over the plant's name is no series."""
_SORT_OF = later(
    r"(?<=\w)\s(?:Seedlings|Herbs|Plants|Perennials|Annuals|Vegetables|Veg|Shrubs|Grasses"
    r"|Groundcovers)$",
    re.I,
)
_NUMBER = later(r"\s(?:No\.?|Nr\.?|N°|№|#)\s?\d{1,3}$", re.I)

# Sown and sold by the tray, in many colours of one series; of other plants "Name Colour" is a cultivar.
_BEDDING_PLANTS = (
    "Petunia Calibrachoa Viola Tagetes Impatiens Pelargonium Catharanthus Begonia Lobelia"
    " Verbena Antirrhinum Zinnia Primula Cyclamen Gazania Lantana Angelonia Nemesia Diascia"
    " Osteospermum Argyranthemum Chaenostoma Sutera Mandevilla Dipladenia Celosia Cosmos"
    " Digitalis Portulaca Bidens Scaevola Torenia Ageratum Lobularia Nicotiana Coleus"
    " Plectranthus Gerbera Kalanchoe Ranunculus Matthiola Callistephus Bellis Anigozanthos"
    " Brachyscome Helleborus Lewisia Eustoma Salvia Dianthus Cineraria Pericallis Sanvitalia"
    " Cuphea Pentas Dimorphotheca"
)
_BEDDING = frozenset(_BEDDING_PLANTS.split())
_SCHEME = (
    r"Blotch|Eye|Bicolou?r|Picotee|Halo|Vein|Veined|Splash|Star|Sunset|Sunrise"
    r"|Frost|Flame|Face|Wing|Ice"
)
_MIXED = later(r"\b(?:mix\w*|blend|assorted|shades|with)\b|[&/-]", re.I)
"""Several sorts of a kind; by itself it may as well end the name of one mixture: Tidewick Mix."""
_COLOURED = later(
    lambda: (
        rf"^(?P<name>{CAP}(?:[ ](?:& )?{CAP})??)"
        rf"(?:[ ](?:(?:Deep|Light|Dark|Bright|Clear|Pure|True|Hot|Soft|Pale)|(?:{colour()})"
        rf"|{_SCHEME}|{_MIXED.pattern}))+"
        r"(?:,\s[a-z ]+)?$"
    ),
    re.I,
)


def beside_names(tag: TagText, lines: tuple[Line, ...]) -> Iterator[Found[str]]:
    """The series by the plant's names, at most one."""
    common = [found for found in read_common_names(tag) if found.certainty >= 0.6]
    botanical = [found for found in read_botanical_name(tag) if found.certainty >= 0.6]
    surest = max((found.certainty for found in (*common, *botanical)), default=0)
    spans = [found.span for found in (*common, *botanical) if found.certainty > surest - CLOSE]
    if not spans or LABEL.search(lines[0].text):
        return
    holds = [any(start < line.end and end > line.start for start, end in spans) for line in lines]
    sorts = {found.value.cultivar for found in botanical if found.value.cultivar}
    sold = {found.value.trade_designation for found in botanical if found.value.trade_designation}
    genera = {found.value.genus for found in botanical} | {
        genus for found in common for genus in lexicon.genera_of(found.value)
    }
    bedding = genera & _BEDDING
    ways = [_before_tint(lines, holds, sorts)]
    ways += [
        _over_the_name(tag, lines, holds, {*sorts, *sold}),
        _before_mark(lines, holds, bedding - _SINGLE),
    ]
    ways.append(_marked_alone(lines, holds, sorts, bedding - _SINGLE))
    if bedding:
        ways.append(_before_colour(lines, holds, sorts))
    yield from [found for found in ways if found][:1]


def _before_tint(lines: tuple[Line, ...], holds: list[bool], sorts: set[str]) -> Found[str] | None:
    """A line that is a cultivar's name without its colour, which is not the line below."""
    for line, below, held in zip(lines, (*lines[1:], None), holds, strict=True):
        name = line.text.strip(" ™®\"'“”*·•-–—")
        if held or lexicon.plants_called(name) or not re.fullmatch(rf"{CAP}(?:[ ]{CAP}){{0,2}}", name):
            continue
        for sort in sorts:
            rest = sort[len(name) + 1 :].casefold()
            parted = below is not None and below.text.strip(" '’”").casefold().startswith(rest)
            if sort.casefold() == f"{name.casefold()} {rest}" and re.fullmatch(colour(), rest) and not parted:
                start = line.start + line.text.index(name)
                return Found(written(name), (start, start + len(name)), HEADED)
    return None


_MARKED_SORT = later(
    rf"^\W*(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,2}})\s?[™®]\s(?P<rest>{CAP}(?:[ ]{CAP}){{0,3}})\W*$"
)


_TINT = later(lambda: rf"\b(?:{colour()}|{_SCHEME})\b", re.I)
_SINGLE = frozenset(
    ["Anigozanthos", "Helleborus", "Digitalis", "Brachyscome", "Salvia", "Dianthus", "Lewisia"]
)
"""Of these a marked name and another are often one sort's selling name."""


def _before_mark(lines: tuple[Line, ...], holds: list[bool], bedding: set[str | None]) -> Found[str] | None:
    """A marked name and the name of its sort behind it, by the plant's name: Tidewick™ Apricot."""
    for number, line in enumerate(lines):
        match = _MARKED_SORT.match(line.text)
        near = any(holds[max(0, number - 2) : number + 3])
        if match is None or not near or firm_in(line.text):
            continue
        rest = match["rest"].split()
        plant = lexicon.is_genus(rest[0]) or any(
            lexicon.plants_called(" ".join(rest[n:])) for n in range(len(rest))
        )
        tint = _TINT_FIRST.match(match["rest"])
        behind = match["rest"][tint.end() :].strip() if tint else ""
        sort = (tint is not None and (not behind or lexicon.plants_called(behind))) or (
            bedding and (lexicon.plants_called(match["rest"]) or not (plant or is_noise(match["rest"])))
        )
        if sort and not lexicon.plants_called(match["name"]):
            start = line.start + match.start("name")
            return Found(written(match["name"]), (start, start + len(match["name"])), MARKED)
    return None


_TINT_FIRST = later(lambda: rf"(?:{colour()})(?:\s(?:{colour()}))?(?!\S)", re.I)
"""The colour of one of a series, alone or before what the plant is: Tidewick™ Lemon | Million Bells."""
_MARKED = later(rf"^\W*(?P<name>{CAP}(?:[ ](?:& )?{CAP}){{0,3}}) ?[™®]\W*$")


def _marked_alone(
    lines: tuple[Line, ...], holds: list[bool], sorts: set[str], bedding: set[str | None]
) -> Found[str] | None:
    """A marked name on a line of its own next to the name of a bedding plant: Tidewick™ over Petunia."""
    for number, line in enumerate(lines):
        match = _MARKED.match(line.text)
        if match is None or not (bedding or MANY_LAST.search(match["name"])):
            continue
        below = lines[number + 1].text.strip() if number + 1 < len(lines) else ""
        beside = any(holds[max(0, number - 1) : number] + holds[number + 1 : number + 2]) or (
            any(holds[number + 2 : number + 4]) and re.fullmatch(colour(), below, re.I)
        )
        if not beside or firm_in(line.text) or lexicon.plants_called(match["name"]):
            continue
        if number and not holds[number - 1] and _is_begun_above(lines[number - 1], line):
            continue
        name, own = lexicon.key(match["name"]), {lexicon.key(sort) for sort in sorts}
        # Over a cultivar that is called otherwise it is what this one is sold as: Tidewick Rose™, 'Marlnix'.
        if not own or any(sort.startswith(name) and sort != name for sort in own):
            start = line.start + match.start("name")
            return Found(written(match["name"]), (start, start + len(match["name"])), MARKED)
    return None


def _is_begun_above(above: Line, line: Line) -> bool:
    """Whether a marked word is the last of a name on two lines, as large in both: Tarwick / Minuet™."""
    alike = above.title and 0.77 < above.size / line.size < 1.3
    return alike and above.end + 1 == line.start and looks_like_name(above.text.strip())


def _over_the_name(
    tag: TagText, lines: tuple[Line, ...], holds: list[bool], sorts: set[str]
) -> Found[str] | None:
    """The first line in smaller letters over the plant's name: Lantern Club / Swiss Cheese Plant."""
    line = lines[0]
    named = next((number for number, held in enumerate(holds) if held), None)
    if (
        tag.side != "front"
        or holds[0]
        or named not in (1, 2)
        or not lines[1].title
        or line.end >= lines[1].start
    ):
        return None
    if tag.string[line.end : lines[1].start] == "\t" or line.size > 0.8 * lines[1].size:
        return None
    mark = re.search(r"[™®]\s*$", line.text)
    text = _NUMBER.sub("", line.text.strip(" ™®\"'“”*·•-–—★~"))
    short = _SORT_OF.sub("", text)
    name = short if " " in short else text
    many = MANY_LAST.search(name)
    if (firm_in(line.text) and not mark) or not _may_head(name, bool(mark)):
        return None
    told = (*find_answers(tag), *(span for _, span, _ in signed_firms(tag.string, lines)))
    if any(start < line.start + len(name) and end > line.start for start, end in told) and not (mark or many):
        return None
    key = lexicon.key(name)
    if any(key == lexicon.key(sort) or key in lexicon.key(sort) for sort in sorts):
        return None
    start = line.start + line.text.index(name)
    other = bool(sorts) or named == 2 or any(map(_is_sort, lines[named + 1 : named + 2]))
    if " " not in name and not mark:
        return None  # half a firm's name: Marlbrook, of Gärtnerei Marlbrook
    small = line.size <= 0.55 * lines[1].size
    if mark and (other or many):
        return Found(written(name), (start, start + len(name)), MARKED)
    if many or other or small:
        return Found(written(name), (start, start + len(name)), HEADED)
    return None


def _is_sort(line: Line) -> bool:
    """Whether the line under the plant's name tells which sort it is, so that the one over it does not."""
    plain = line.text.strip(" .,'‘’“”\"")
    return (
        line.size >= 0.9 and looks_like_name(plain) and plain.istitle() and not lexicon.plants_called(plain)
    )


def _may_head(name: str, mark: bool) -> bool:
    words = name.split()
    if not 1 <= len(words) <= 4 or not re.fullmatch(
        r"[^\W\d_’'&-]+(?:[ ’'-]{1,2}(?:& )?[^\W\d_’'&-]+)*", name
    ):
        return False
    if not all(word[0].isupper() or word in ("of", "the", "&", "de", "la") for word in words):
        return False
    if lexicon.plants_called(name) or genera_called(name) or lexicon.is_genus(words[0]):
        return False
    if mark:
        return len(words) > 1 or not is_noise(name)
    many = MANY_LAST.search(name)
    if ("&" in words and not many) or _SHELF.search(name) or (name.isupper() and len(words) > 1 and not many):
        return False
    if many and len(words) > 1:
        return not all(word.lower() in lexicon.words_of("answer") for word in words[:-1])
    strange = [word for word in words if not is_tag_word(re.sub("['’]s$", "", word))]
    return bool(strange) and not is_noise(name) and not is_answer(name) and len(words) < 4


def _before_colour(lines: tuple[Line, ...], holds: list[bool], sorts: set[str]) -> Found[str] | None:
    """A strange word and a colour under the name of a bedding plant: PANSY / Tidewick Gold."""
    for number, line in enumerate(lines):
        above = [lines[n] for n in range(max(0, number - 2), number) if holds[n]]
        match = _COLOURED.match(line.text.strip(" .,™®"))
        if match is None or not above or max(one.size for one in above) <= line.size or holds[number]:
            continue
        name = match["name"]
        while " " in name and (lexicon.is_genus(name.split()[0]) or lexicon.plants_called(name.split()[0])):
            name = name.partition(" ")[2]
        tail = _MIXED.sub("", line.text[line.text.index(name) + len(name) :])
        if (
            is_plain(name)
            or not _TINT.search(tail)
            or any(lexicon.key(name) in lexicon.key(sort) for sort in sorts)
        ):
            continue
        if not lexicon.plants_called(name) and not re.fullmatch(colour(), name, re.I):
            start = line.start + line.text.index(name)
            return Found(written(name), (start, start + len(name)), COLOURED)
    return None


def is_plain(name: str) -> bool:
    """Whether tags or plants' names use every word of it."""
    return all(map(is_tag_word, name.split()))


def is_shelf(name: str) -> bool:
    """Whether it heads a shelf, calls to the buyer or ends as firms do."""
    return _SHELF.search(name) is not None
