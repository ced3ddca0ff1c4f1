"""The words of a stretch that states colours, told apart into one run for each colour."""

from __future__ import annotations

from collections.abc import Iterator

from ocr_tags.fields.colours.words import choice, colour, modifiers
from ocr_tags.fields.phrases import flowing, fold
from ocr_tags.fields.small_letters import all_small
from ocr_tags.patterns import later

ONE = later(lambda: rf"(?<![\w'’‘-]){colour()}(?![\w-])")


def within_one_flow(text: str, start: int, end: int, listed: bool) -> str:
    """The stretch as one flow: "Rose" and "pink" below it are rose pink; listed in small letters, two."""
    folded = (fold if text[start].islower() and (listed or all_small(text, start)) else flowing)(text)[
        start:end
    ]
    for joint in _JOINT.finditer(text, start, end):
        if "-" in joint[0] or {*fold(joint[0]).split()} <= _BASIC:
            at = joint.start("joint") - start
            folded = f"{folded[:at]}\n{folded[at + 1 :]}"
    folded = _OPENS.sub(r"\1 ", folded)
    return _SHADED.sub(r"\1 ", folded) if folded.count("\n") == 1 else folded


_JOINT = later(r"[\w-]+(?P<joint>\n)(?=[\w-])[\w-]+")
"""Two words over the end of a line; one of "blue-green" and "russet" is whole."""
_BASIC = frozenset(
    (
        "red",
        "pink",
        "blue",
        "yellow",
        "orange",
        "purple",
        "white",
        "black",
        "brown",
        "green",
        "silver",
        "gold",
    )
)


_OPENS = later(lambda: rf"((?<![\w-])(?:{choice(modifiers())}|[a-z]+ish))\n(?=[a-z])")
"""No colour ends so: "reddish" and "purple" below it are one, and so are "velvet" and "purple"."""


_SHADED = later(
    r"(?<![\w-])(golden|lime|lemon|butter|canary|straw|sul(?:ph|f)ur|cherry|brick|ruby|wine|emerald|sapphire"
    r"|cobalt|tangerine|chocolate)\n(?=(?:red|yellow|blue|green|orange|brown)(?![\w-]))"
)
"""Rather which yellow or green than a colour beside it, where no list goes on: "lime" over "green"."""


_MANY = later(r"(?:bi-?colou?r|tri-?colou?r|two-tone|assorted)")
"""Before colours, how many there are: "Bicolor rose & white"; of one colour, "bicolor pink", it is a part."""
_AND_MORE = later(r"[ ,/&+-]{1,3}(?:(?:and|with|et|und|y)[ ]+)?")


def _several_from(folded: str, start: int) -> bool:
    """Whether two colours and a joint between them begin here."""
    end = start
    while match := ONE.match(folded, end):
        end = match.end() + (folded[match.end() : match.end() + 1] == " ")
    joint = _AND_MORE.match(folded, end - (folded[end - 1 : end] == " ")) if end > start else None
    return joint is not None and joint.end() > end and ONE.match(folded, joint.end()) is not None


def runs_of(folded: str) -> Iterator[tuple[int, int]]:
    """Colour words, those with only a space between them as one: mahogany red."""
    run: tuple[int, int] | None = None
    for match in ONE.finditer(folded):
        if _MANY.fullmatch(match[0]) and (match[0] == "assorted" or _several_from(folded, match.end() + 1)):
            continue
        if run and folded[run[1] : match.start()] == " ":
            run = run[0], match.end()
            continue
        if run:
            yield run
        run = match.span()
    if run:
        mixed = _MIXED_AFTER.search(folded, *run)
        yield (run[0], mixed.start()) if mixed and mixed.start() > run[0] else run


_MIXED_AFTER = later(r" (?:mix|mixed|mixture|assorted|shades)\Z")
"""Behind the last of several colours, that they come together."""
