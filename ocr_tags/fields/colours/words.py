"""The patterns of one colour and of several, as tags print them, for all who look for colours in a text."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from ocr_tags.fields.phrases import fold, listed

SHAPE = (
    r"(?:bells|cups|brushes|bottlebrushes|stars|daisies|trumpets|heads|clusters|sprays|globes|balls"
    r"|wands|pompoms"
    r"|pompons|puffs|tassels|buttons|pokers|lanterns|saucers|chalices|pea-flowers|discs|candles|spikes"
    r"|spires"
    r"|plumes|racemes|umbels|panicles|catkins|torches|pincushions?|domes|cones|crowns|fountains|fluff"
    r"|froth|foam|tubes|thimbles|lockets|plates(?= of\b)|pinwheels|bonnets|slippers|parasols|goblets|flutes"
    r"|chains|pom-poms|mops|mopheads|lacecaps|starbursts|sunbursts|drumsticks|hoods|helmets|whiskers"
    r"|baubles|beads|turbans|parachutes|thistles|funnels"
    r"|streamers|fireworks|hearts|skirts|rosettes|feathers|powder[- ]puffs|corymbs|cymes|bobbles|whorls"
    r"|trusses|doubles|sails|ruffs|ruffles|falls|paws|urns|skyrockets|foxtails|pagodas|shuttlecocks|hoods"
    r"|bobs|steeples|sprays|powderpuffs|cockades|tufts|wheels|windmills|moons|bottle[- ]brushes)"
)
"""What flowers look like; beside a colour and in small letters, flowers."""


LAID = (
    r"(?:splashed|spotted|mottled|freckled|flecked|speckled|striped|streaked|margined|edged|veined|marbled"
    r"|rimmed|tipped|flushed|brushed|dusted|stained|blotched|banded|netted|furred|backed|lined|suffused"
    r"|tinged|marked|washed|slashed|dipped|overlaid|feathered|laced|barred|ringed|shot|dappled|sprinkled"
    r"|frosted|stippled|daubed|bordered|outlined|blushed|eyed|cent(?:er|re)d|tinted|shaded|picked out)"
)
"""How a second colour lies on the first."""
TRACE = (
    r"(?:touch|tinge|flush|blush|wash|splash|rim|edge|margin|trace|suggestion|whisper|breath|kiss|dash|stripe"
    r"|eye|cent(?:er|re)|cast|overlay|ring|band|border|tip) (?:of|in) "
)
"""How little of it: "white with a touch of pink"."""
MEASURE = (
    r"(?:\d[\d./½¼¾]*(?: ?[-–] ?\d[\d./½¼¾]*)? ?-?(?:in(?:ch(?:es)?)?\b\.?|cm\b|mm\b|ft\b\.?|[\"”″])"
    r"(?: (?:wide|long|across|tall))? )?"
)
"""How large what follows is: "violet 4 in. globes"."""


def choice(words: Iterable[str]) -> str:
    """Any of `words`, the longest first."""
    return "|".join(sorted(set(map(fold, words)), key=len, reverse=True))


_LIKENED = (
    r"(?!(?:non|red|all|and|not|edged|veined|tipped|flushed|striped|spotted|ever)-)[a-z]{3,12}-(?:red|pink"
    r"|blue|yellow"
    r"|orange|purple|white|green|violet|scarlet|crimson|mauve|gold|black|brown|gr[ea]y|bronze|apricot"
    r"|salmon|lavender|lilac|cream|magenta|chartreuse|copper|burgundy|maroon|buff)"
)
"""What hangs before a colour by a hyphen makes it more exact, whatever it is: "lipstick-red"."""


@cache
def colour() -> str:
    """The pattern of one colour, with the words that only go before one."""
    lists = listed("colour")
    word, modifier = choice(lists["english"] + lists["foreign"]), choice(lists["modifier"])
    tail = (
        r"(?:[ -](?:claro|oscuro|clair|fonce|pale|vif|lavande|ciel|nuit|saumon|violace|creme|blend|sombre"
        r"|tendre|pomme|fonces|clairs|vifs|scuro|chiaro))?"
    )
    one = (
        r"(?:[a-z]+-(?:tinged|tinted|flushed|blushed) )?"
        rf"(?:(?:{modifier})[ -]){{0,2}}(?:{word}|{compound()})"
        rf"(?:-\s?(?:{word})|-tinged|-tinted|-flushed|-blushed)?{tail}"
    )
    return rf"(?:{one}|{_LIKENED})"


def modifiers() -> set[str]:
    """Words that are no colour by themselves: deep, pale, velvet."""
    lists = listed("colour")
    return {*lists["modifier"]} - {*lists["english"], *lists["foreign"]}


def compound() -> str:
    """German and Dutch colours of two words in one: "purpurrosa", "lichtblauw"."""
    last = (
        r"(?:rot|rosa|blau|gelb|weiss|weiß|violett?|lila|orange|grun|braun|blauw|geel|wit|rood|roze|paars"
        r"|groen)"
    )
    first = (
        r"(?:schwefel|enzian|blut|rosen|kirsch|hell|dunkel|tief|zart|rein|gold|creme|zitronen|karmin"
        r"|lachs|wein"
        r"|feuer|schnee|himmel|lavendel"
        r"|purpur|silber|licht|donker|zalm|goud|citroen|karmijn|diep|zacht|wijn|hemels)"
    )
    return rf"(?:{first}|{last}){{1,2}}{last}"


@cache
def colour_list() -> str:
    """The pattern of one colour or several: each with what parts it from the next, which the last one lacks.

    The colours stand in it once, as it takes long to compile.
    """
    parted = r"(?:, | ?/ ?| ?& ?| ?\+ ?|,? (?:and|or|to|et|y|und) )"
    return rf"(?:{colour()}(?:{parted}|(?![a-z]))){{1,6}}(?<![ /&+])"
