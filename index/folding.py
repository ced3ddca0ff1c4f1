"""One spelling for many: what two ways of writing a name have in common.

Two keys are made of every word. Its *folded* form forgets what a person leaves out when typing:
accents, case, quotes, hyphens, the multiplication sign. Its *shape* also forgets which of two
look-alike letters a reader saw (the figure 1 and the letter l, "rn" and "m").
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

# Letters that Unicode does not take apart into a letter and an accent.
_SPELT_OUT = str.maketrans(
    {"ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "ı": "i"}
)
# An apostrophe inside a word goes (john's, d'ivoire); one that opens or closes a cultivar parts words.
_INSIDE_A_WORD = re.compile(r"(?<=\b[^\W\d_])['’](?=\w)|(?<=\w)['’](?=\w{1,2}\b)")
_NOT_A_LETTER = re.compile(r"[\W_]+")
# Rank words (ICN) and small words are printed or left out at will.
_UNSAID = frozenset(("x", "and", "the", "cv", "var", "subsp", "ssp", "subvar", "f", "forma", "sp", "spp"))

# Longest first: a pair must be seen before its letters are changed one by one.
_PAIRS = (("rn", "m"), ("cl", "d"), ("vv", "w"), ("ii", "u"), ("ri", "n"))
_SINGLES = str.maketrans("01i58q", "ollsbg")


@lru_cache(maxsize=50_000)
def fold(text: str) -> str:
    """The words of a text in plain lower-case letters and figures, with single spaces between.

    >>> fold("Rosa × damascena ‘Comte de Chambord’")
    'rosa damascena comte de chambord'
    >>> fold("St. John's-wort"), fold("Hydrangea'Annabelle'"), fold("PHLOX ‘Crème Brûlée’™")
    ('st johns wort', 'hydrangea annabelle', 'phlox creme brulee')
    """
    text = re.sub("[™®©]", " ", text)
    text = unicodedata.normalize("NFKD", text.casefold().translate(_SPELT_OUT))
    text = "".join(letter for letter in text if not unicodedata.combining(letter))
    words = ["st" if word == "saint" else word for word in _NOT_A_LETTER.split(_INSIDE_A_WORD.sub("", text))]
    return " ".join([word for word in words if word and word not in _UNSAID] or filter(None, words))


@lru_cache(maxsize=50_000)
def shape(word: str) -> str:
    """The key that look-alike readings of one folded word share.

    >>> shape("1avender") == shape("lavender"), shape("cornus") == shape("comus")
    (True, True)
    """
    for pair, letter in _PAIRS:
        word = word.replace(pair, letter)
    return word.translate(_SINGLES)
