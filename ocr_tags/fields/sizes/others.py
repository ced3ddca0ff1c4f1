"""Lengths that a sentence gives of something else: a companion, another kind, the plant in the wild, or how
tall it is when a task is due."""

from __future__ import annotations

import re

from ocr_tags.patterns import later

_SENTENCE = later(r"(?:[.!?;](?=\s)|\n\n)(?<! [A-Z]\.)")
_OTHER_BEFORE = later(
    r"\b(?:(?:looks?|grows?|goes|good|great|lovely"
    r"|works?|mix(?:es)?|pairs?|paired|combines?|teams?|teamed|plants?"
    r"|partners?|sits?|contrasts?)(?: (?:great|good|well|best|lovely|happily|beautifully|nicely))?(?: in)?"
    r" (?:with|beside|among|alongside|between)\s(?!(?:an?|its|their|full|equal|the same|similar)\b)"
    r"|(?:companions?|partners?|pair with|try with|underplant with): ?)"
    r"[^\t]*\($"
    r"|\b(?:dwarf|tall(?:er)?|climbing|pole|bush|trailing|compact"
    r"|standard|other|smaller|larger|wild|older|newer)"
    r" (?:types?|varieties|kinds|forms|cultivars|sorts|selections)\s(?:[a-z]+\s){0,3}$"
    r"|(?-i:\([A-Z]\. [a-z-]+\))\s(?:grows?|reach(?:es)?|gets?|climbs?)\s(?:up\s)?$"
    r"|\b(?:called|named|christened) (?:after|for)\b[^.;\t]*$"
    r"|\b(?:beside|beneath|amongst?|dwarfed by|next to|behind|than|unlike)\s(?:the|its|their|those|these|our"
    r"|her|his)\s$|\bthan [^.;\t]*\($"
    r"|\b(?:something|anything|(?:a|the) (?:plant|one|cousin|relative))\s(?:taller|shorter|smaller"
    r"|bigger|larger|lower)\b[^.;\t]*$"
    r"|\bcousins?,?\s(?:[a-z]+\s){0,4}$"
    r"|\b(?:overtops?|outgrows?|dwarfs|towers over|overshadows)\s(?:it|this|them)\b[^.;\t]{0,20}$"
    r"|\b(?:side-?dress|top-?dress|feed|fertili[sz]e|thin|transplant|plant out|set out|pot on|repot"
    r"|hill up|earth up|tie in|tie up|stake|spray|pick|harvest|pinch|mulch|cut)\b"
    r"[^.;:\n\t]{0,30}\s(?:at|when|once)\s(?:about |around )?$",
    re.I,
)
"""What a sentence speaks of before the length, which is then not this plant's, or not its full one."""
_OTHER_AFTER = later(
    r",?\s?(?:tall |high )?(?:\n ?)?in (?:the wild|nature|habitat|(?:its|their) (?:native|natural|wild)\b)"
    r"|[;,.]\s(?:but )?this (?:one|form|variety|selection) (?:won['’]t|will not|does(?:n['’]t| not)|never"
    r"|is not|stays?|only)\b",
)
_ASIDE_AFTER = later(r" in (?:[A-Z][a-z]+|the (?:tropics|south|north|jungle|rainforest|open ground))\)")


_PART = later(
    r"\b(?:flowers?|blooms?|blossoms?|trumpets|stars|daisies|saucers|bells|cups|goblets|bowls|suns|globes"
    r"|pompo[mn]s?|heads|petals|berries|fruits?|pods|cones|hips|tomatoes|melons|pumpkins)\b"
    r"(?!.*(?:\d|\b(?:shrub|tree|bush|vine|climber|mounds?|clumps?|plants?|grows?|spread\w*)\b))",
    re.I | re.S,
)
_ACROSS = later(r"[ -]?(?:wide|across|in diameter|broad)\b", re.I)
_OF_PART = 31.0
"""In cm, about a foot: flowers and fruit may be so wide."""


def of_another(text: str, start: int, end: int, most_cm: float | None = None) -> bool:
    """Whether the words around a length give it to something else than the plant of the tag, full grown; a
    width of at most `most_cm` to a flower or fruit: "Flowers open in May, to 4 inches across"."""
    before = text[max(0, start - 160) : start]
    sentence = _SENTENCE.split(before)[-1]
    aside = before.endswith("(") and _ASIDE_AFTER.match(text, end)
    part = most_cm and most_cm <= _OF_PART and _ACROSS.match(text, end) and _PART.search(sentence)
    return bool(aside or part or _OTHER_BEFORE.search(sentence) or _OTHER_AFTER.match(text, end))
