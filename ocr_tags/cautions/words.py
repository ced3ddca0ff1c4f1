"""Words that promise more than they hold: colours, and "native"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from ocr_tags.cautions.common import PRACTICE, caution, quoted
from ocr_tags.facts import BOTANICAL_NAME, COLOURS, NATIVE_CLAIM
from ocr_tags.place import Place
from ocr_tags.record import Caution, Fact, Reading, Swatch, TagRecord

_CHARTS = (
    "Kelly and Judd, Color: Universal Language and Dictionary of Names, NBS Special Publication 440 (1976), "
    "and common practice"
)
_MOST_SWATCHES = 6
_FOREIGN = {
    **dict.fromkeys(
        ("bleu", "bleue", "bleus", "bleues", "azul", "azules", "blau", "blauw", "bluish"), "blue"
    ),
    **dict.fromkeys(("pourpre", "pourpres", "purpur", "morado", "morada", "paars", "purplish"), "purple"),
    **dict.fromkeys(("rouge", "rouges", "rojo", "roja", "rojas", "rot", "rood"), "red"),
}
_SAYING = {
    "blue": "{} on a tag is mostly violet or purple; true blue flowers are rare.",
    "purple": "{} on a tag is mostly magenta, a purplish red rather than violet.",
    "red": "{} promises little: words for red are used for anything from orange to purplish red.",
}
_LOOK = (
    "See it in flower before you match it to anything; the squares show how far the word has been stretched, "
    "and screens differ."
)


@cache
def _swatches() -> dict[str, tuple[str, tuple[Swatch, ...]]]:
    """Word -> its family (blue, purple or red) and the colours it was used for, along the spectrum."""
    text = files("ocr_tags").joinpath("data", "colour_words.tsv").read_text("utf-8")
    found: dict[str, tuple[str, tuple[Swatch, ...]]] = {}
    for line in text.splitlines():
        if not line.startswith("#"):
            word, family, _, name, colour = line.split("\t")
            found[word] = family, (*found.get(word, (family, ()))[1], Swatch(name, colour))
    return found


def colour_words(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak once for each of blue, purple and red named in the tag's colours or in the plant's own name.

    A common name does not count: blue fescue and red maple are names, not promises.
    """
    said: dict[str, tuple[str, Reading[Any], Fact[Any]]] = {}
    for reading, field, text in _coloured(record):
        for printed in re.findall(r"[^\W\d_]+", text):
            word = _FOREIGN.get(printed.lower(), printed.lower())
            if word in _swatches():
                said.setdefault(_swatches()[word][0], (printed, reading, field))
    for family, (printed, reading, field) in said.items():
        word = _FOREIGN.get(printed.lower(), printed.lower())
        yield caution(
            f"colour-{family}",
            field,
            _SAYING[family].format(quoted(printed)),
            _LOOK,
            basis=_CHARTS,
            reading=reading,
            printed=printed,
            swatches=_spread(_swatches()[word][1]),
        )


def _spread(swatches: tuple[Swatch, ...]) -> tuple[Swatch, ...]:
    """At most six of them, the two ends among them."""
    if len(swatches) <= _MOST_SWATCHES:
        return swatches
    step = (len(swatches) - 1) / (_MOST_SWATCHES - 1)
    return tuple(swatches[round(number * step)] for number in range(_MOST_SWATCHES))


def _coloured(record: TagRecord) -> Iterator[tuple[Reading[Any], Fact[Any], str]]:
    """Readings that may promise a colour, and the words that do: stated colours first."""
    colours, name = record.best(COLOURS), record.best(BOTANICAL_NAME)
    if colours:
        yield colours, COLOURS, " ".join(colours.value)
    if name:
        yield name, BOTANICAL_NAME, f"{name.value.cultivar or ''} {name.value.trade_designation or ''}"


# ---------------------------------------------------------------- native

_NORTH_AMERICA = frozenset({"US", "CA", "MX"})
_AMERICAN = re.compile(
    r"\b(?:america|american|u\.?s|usa|united states|canad\w+|prairie|great plains|great lakes|appalachian\w*"
    r"|ozarks?|texas|california|florida|ontario|qu[eé]bec|michigan|ohio|wisconsin|minnesota|illinois|virginia"
    r"|carolina|georgia|oregon|colorado|arizona)\b",
    re.I,
)
_WHERE = re.compile(
    r"\b(?:native|originaire|indig\w+|nativ[ao]|beheimatet)\b\s*(?:to|of|from|d\w*|de|in)?", re.I
)
_NATIVE_BASIS = "University of Maryland Extension and USDA: native to an ecoregion; “native” needs a where"


def native_where(record: TagRecord, place: Place) -> Iterator[Caution]:
    """Speak of every claim that a plant is native: where, and is that here?"""
    claim = record.best(NATIVE_CLAIM)
    if claim is None:
        return
    american = bool(_AMERICAN.search(claim.value))
    named = american or bool(re.search(r"[^\W\d_]{4,}", _WHERE.sub("", claim.value).replace("plant", "")))
    abroad = american and place.country is not None and place.country not in _NORTH_AMERICA
    if abroad:
        message = f"{quoted(claim.value)} does not mean here: North America is a long way from you."
    elif named:
        message = f"{quoted(claim.value)} names a wide region at best; it need not mean your county or state."
    else:
        message = (
            f"{quoted(claim.value)} does not say where; on tags it usually means somewhere in North America."
        )
    yield caution(
        "native-where",
        NATIVE_CLAIM,
        message,
        "If you want local natives, look the botanical name up in a regional flora or plant list.",
        basis=_NATIVE_BASIS if not abroad else PRACTICE,
        reading=claim,
    )
