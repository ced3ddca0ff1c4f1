"""Is this stretch of a tag a common name that the lists know, and of which plants?"""

from __future__ import annotations

import re

from ocr_tags import lexicon, repair, titles
from ocr_tags.epithets import title_case
from ocr_tags.foreign_names import genera_called
from ocr_tags.record import Found
from ocr_tags.titles import Piece


def known_name(piece: Piece, certainty: float) -> Found[str] | None:
    """The piece as a known name: as printed when spelt right, as the lists spell it when clearly damaged."""
    span = (piece.start, piece.end)
    text = titles.without_digits(piece.text)
    written = titles.as_written(text)
    if lexicon.is_trade_name(text):
        kept = written if lexicon.is_well_parted(text) and text.isascii() else spelt(text, text)
        # A lone genus may as well be what is left of the botanical name.
        doubt = 0.85 if lexicon.is_genus(text) else 1.0 if text == piece.text else 0.9
        return Found(kept, span, certainty * doubt)
    if lexicon.plants_called(text):
        return Found(written, span, certainty - 0.2)
    if " " in text and lexicon.is_common_name(text) and not titles.is_noise(text):
        return Found(written, span, certainty - 0.05)
    near = None if titles.is_answer(text) or genera_called(text) else repair.nearest_common(text)
    if near and near.clear and (_owned(near.name) == _owned(text) or not text.isascii()):
        return Found(written, span, certainty * 0.9)  # with accents it is another language's: Sansevière
    if near and near.clear and (near.likeness >= 0.9 or not titles.is_noise(text)):
        return Found(spelt(near.name, text), span, certainty * (0.6 + 0.3 * near.likeness))
    return None


def _owned(name: str) -> str:
    """The name without the endings in which printings differ: Florist's, Florist; Bat-Faced, Bat-Face."""
    plain = re.sub(r"(?<=[ -])(fac|leaf|leav|eye|flower)(?:e?d|ing)\b", r"\1", name, flags=re.I)
    plain = re.sub(r"(?<=[ -])(fac|leav)e?\b", r"\1", plain, flags=re.I)
    return lexicon.key(re.sub(r"['’]?s\b", "", plain, flags=re.I))


def spelt(known: str, printed: str) -> str:
    """A known name as the lists spell it, in title letters when it was printed so."""
    name = lexicon.spelling(known, printed) or known
    return title_case(name) if printed[:1].isupper() else name


def agrees(common: str, genus: str | None) -> bool:
    """Whether a plant of this genus has this common name."""
    return genus in lexicon.genera_of(common)
