"""How names are spoilt: by fingers, by ears, by readers, by haste. Nothing here is used by the search.

Each takes a text and dice. The keys beside a key are those of the common typewriter layout (ISO/IEC 9995-2);
the faults of a reader were counted on rendered plant names; what is written as heard is from memory.
"""

from __future__ import annotations

import random
import re

LETTERS = "abcdefghijklmnopqrstuvwxyz"
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")

# The commonest letter faults of Tesseract 5.3 on rendered plant names, with how often each was counted.
COUNTED = {
    ("l", "i"): 158, ("l", ""): 39, ("i", ""): 34, ("l", "t"): 33, ("i", "t"): 30, ("a", "o"): 23,
    ("r", "n"): 20, ("m", ""): 20, ("u", "a"): 17, ("o", "e"): 15, ("m", "n"): 15, ("c", "e"): 14,
    ("l", "f"): 13, (" ", ""): 27,
}  # fmt: skip
# Letters that look alike in print, either way, and the space that is not seen.
ALIKE = (
    ("rn", "m"), ("m", "rn"), ("cl", "d"), ("d", "cl"), ("o", "0"), ("l", "1"), ("i", "1"), ("i", "l"),
    ("l", "i"), ("s", "5"), ("b", "8"), ("g", "q"), ("h", "b"), ("e", "c"), ("u", "ii"), ("w", "vv"),
    ("t", "f"), ("n", "ri"), ("a", "o"), (" ", ""),
)  # fmt: skip
AS_HEARD = (
    ("ph", "f"), ("f", "ph"), ("y", "i"), ("i", "y"), ("ae", "e"), ("oe", "e"), ("chs", "sh"), ("sch", "sh"),
    ("ch", "k"), ("rh", "r"), ("th", "t"), ("qu", "kw"), ("ck", "k"), ("c", "k"), ("k", "c"), ("x", "cks"),
    ("ea", "ee"), ("ee", "ea"), ("ie", "ei"), ("ei", "ie"), ("ou", "ow"), ("us", "is"), ("ium", "eum"),
    ("er", "ar"), ("or", "er"), ("en", "an"), ("ia", "ea"), ("z", "s"), ("s", "z"), ("le", "el"),
    ("au", "aw"),
)  # fmt: skip
_DOUBLED = re.compile(r"([bcdfglmnprstz])\1")
_SINGLE = re.compile(r"(?<=[aeiou])([lmnprst])(?=[aeiou])")


def misread(text: str, dice: random.Random, times: int = 2) -> str:
    """A reader's faults, as often as they were counted."""
    for _ in range(times):
        here = [(f, text.count(f[0]) * weight) for f, weight in COUNTED.items() if f[0] in text]
        if here:
            ((wrong, seen),) = dice.choices([fault for fault, _ in here], [weight for _, weight in here])
            text = _replace(text, wrong, seen, dice)
    return text


def look_alike(text: str, dice: random.Random) -> str:
    """Two letters or pairs taken for what they look like."""
    for _ in range(2):
        wrong, seen = dice.choice([pair for pair in ALIKE if pair[0] in text] or [("", "")])
        text = _replace(text, wrong, seen, dice) if wrong else text
    return text


def as_heard(text: str, dice: random.Random) -> str:
    """Two sounds written otherwise, or a letter single that should be double, or the other way."""
    for _ in range(2):
        rules = [pair for pair in AS_HEARD if pair[0] in text]
        doubled, single = _DOUBLED.findall(text), _SINGLE.findall(text)
        rules += [(letter * 2, letter) for letter in doubled] + [(letter, letter * 2) for letter in single]
        if rules:
            text = _replace(text, *dice.choice(rules), dice)
    return text


def mistype(text: str, dice: random.Random, times: int = 1) -> str:
    """A letter dropped, doubled, swapped with the next, or the key beside hit; in words of four or more."""
    for _ in range(times):
        places = [i for i in range(len(text) - 1) if text[i : i + 2].isalpha() and len(_word_at(text, i)) > 3]
        place = dice.choice(places or [0])
        one, two = text[place], text[place + 1 : place + 2]
        beside = dice.choice(_beside(one.lower()) or LETTERS)
        instead = dice.choice((two, one + one + two, beside + two, one + beside + two, two + one))
        text = text[:place] + instead + text[place + 2 :]
    return text


def _beside(letter: str) -> str:
    for number, row in enumerate(_ROWS):
        if letter in row:
            place = row.index(letter)
            above = _ROWS[number - 1][place : place + 2] if number else ""
            below = _ROWS[number + 1][max(0, place - 1) : place + 1] if number < 2 else ""
            return row[max(0, place - 1) : place] + row[place + 1 : place + 2] + above + below
    return ""


def _word_at(text: str, place: int) -> str:
    return text[text.rfind(" ", 0, place) + 1 :].split(" ")[0]


def _replace(text: str, wrong: str, seen: str, dice: random.Random) -> str:
    places = [place for place in range(len(text)) if text.startswith(wrong, place)]
    place = dice.choice(places)
    return text[:place] + seen + text[place + len(wrong) :]
