"""Common names in French, Spanish, German and Dutch, and the genera they can stand for.

French and Spanish put the plant's word first ("sauge des bois"), German and Dutch last and often in one
word with what goes before ("Steppensalbei"); so a name is known by its head, and its genus must agree with
what else the tag names.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from importlib.resources import files

from ocr_tags.names.lexicon import is_trade_genus, key
from ocr_tags.patterns import later

LONGEST = 5
"""More words than this are a sentence."""
SHORTEST_ENDING = 5
"""A shorter word may close a longer one by chance."""

# Common practice of the languages, no source: German and Dutch, then the Scandinavian ones, then Afrikaans.
_PLANT_WORD = later(
    r"[a-z]{3}(?:farne?|gras|kraut|palmen?|lilien?|blumen?|baum|kaktus|pflanze|wurz|nelken?|glockchen|glocken?"
    r"|beeren?|strauch|moos|distel|minze|roschen|veilchen|kresse|enzian|schwingel|orchideen?"
    r"|varen|kruid|bloem|boom|lelie|cactus|struik|viooltje|klokje|anjer"
    r"|bregne|braken|ormbunke|graes|lilj[ae]|blomst|blomma|blom|traed?|baer|klokk[ae]|klocka|tistel|tidsel"
    r"|nellik|nejlika|mynt[ea]|rokul|stjerne|stjarna|orkid[ea]|aalwyn|vygie|varing)$"
)
_SHELF = later(
    r"(?:zimmer|grun|kletter|balkon|beet|kubel|kuchen|garten|zier|obst|laub|nadel|hange|ampel|topf|bluten?|bluh|gemuse"
    r"|nutz|gewurz|heil|duft|haus|hof|weihnachts|christ|wald|sommer|steingarten|schnitt|boden|wasser|sumpf|teich"
    r"|kamer|hang|kuip|sier|fruit|loof|naald|keuken|tuin|snij|zomer|water|vijver"
    r"|pryd|prydnads|frugt|frukt|frukttr|krydd?er?|stue|potte|kruk|have|hage|tradgards|sommer|sommar)"
    r"(?:gras|graes|gress|kraut|palmen?|blumen?|baum|pflanze|strauch|beeren?|kruid|bloem|boom|struik|blomst|blomma|blom"
    r"|traed?|baer|farne?|varen|bregne|orchideen?)$"
)

_OF = frozenset({"de", "del", "des", "du", "à", "aux"})


def genera_called(name: str) -> frozenset[str]:
    """The genera that this name of a bilingual tag can mean; none when no list word heads it.

    >>> sorted(genera_called("Sauge des bois")), sorted(genera_called("Steppen-Salbei"))
    (['Salvia'], ['Salvia'])
    >>> sorted(genera_called("Plein soleil"))
    []
    """
    return _genera_called(" ".join(name.split()))


@lru_cache(maxsize=2048)
def _genera_called(name: str) -> frozenset[str]:
    words = re.findall(r"[^\W\d_]+(?:[-'’][^\W\d_]+)*", name)
    if not 0 < len(words) <= LONGEST:
        return frozenset()
    if len(words) == 1 and re.search("[éèêï]", name) and is_trade_genus(key(name)):
        return frozenset({key(name).capitalize()})  # "Amélanchier"
    for count in range(len(words), 0, -1):
        if found := _heads().get(_fold(" ".join(words[:count]))):
            return found
    if len(words) > 1 and words[1].lower() in _OF and is_trade_genus(words[0]):
        return frozenset({words[0].capitalize()})  # "Salvia de los prados"
    return _closing(_fold(words[-1]))


def is_whole(name: str) -> bool:
    """Whether the list has all of a name, not its head alone.

    >>> is_whole("Ciboulette"), is_whole("Steppensalbei")
    (True, False)
    """
    return _fold(name) in _heads()


def _closing(word: str) -> frozenset[str]:
    """The genera of the longest list word that ends this one."""
    for start in range(len(word) - SHORTEST_ENDING + 1):
        if found := _heads().get(word[start:]):
            return found
    return frozenset()


@cache
def _heads() -> dict[str, frozenset[str]]:
    text = files("ocr_tags").joinpath("data", "foreign_names.tsv").read_text("utf-8")
    rows = [line.split("\t") for line in text.splitlines() if line and not line.startswith("#")]
    heads = {_fold(name): frozenset(genera.split("|")) for name, genera in rows}
    plurals = {f"{name}s": genera for name, genera in heads.items() if not name.endswith("s")}
    return plurals | heads


_LETTERS = str.maketrans({"œ": "oe", "Œ": "Oe", "ß": "ss", "ø": "o", "Ø": "O", "æ": "ae", "Æ": "Ae"})


def _fold(name: str) -> str:
    return key(name.translate(_LETTERS))


@lru_cache(maxsize=2048)
def is_plant_word(word: str) -> bool:
    """Whether a word ends as plant names of other languages do, of whatever genus: Schwertfarn, Aftenstjerne.

    What every shop calls a kind of plant so is none: Zimmerpflanze, Obstbaum.
    """
    folded = _fold(word)
    return bool(_PLANT_WORD.search(folded)) and not _SHELF.match(folded)
