"""Is this stretch of a tag a common name that the lists know, and of which plants?"""

from __future__ import annotations

import re

from ocr_tags.names import lexicon, repair, titles
from ocr_tags.names.epithets import title_case
from ocr_tags.names.foreign_names import genera_called
from ocr_tags.names.titles import Piece
from ocr_tags.record import Found


def known_name(piece: Piece, certainty: float) -> Found[str] | None:
    """The piece as a known name: as printed when spelt right, as the lists spell it when clearly damaged."""
    span = (piece.start, piece.end)
    text = titles.without_digits(piece.text)
    written = titles.as_written(text)
    if lexicon.is_trade_name(text):
        kept = written if lexicon.is_well_parted(text) and text.isascii() else spelt(text, text)
        # A lone genus may as well be what is left of the botanical name.
        doubt = 0.92 if lexicon.is_genus(text) else 1.0 if text == piece.text else 0.9
        return Found(kept, span, certainty * doubt)
    if lexicon.plants_called(text):
        return Found(written, span, certainty - 0.2)
    if " " in text and lexicon.is_common_name(text) and not titles.is_noise(text):
        return Found(written, span, certainty - 0.05)
    if "&" in text and lexicon.is_trade_name(text.replace("&", "and")):
        return Found(written, span, certainty)
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


def names_in(piece: Piece, genera: set[str]) -> list[Piece]:
    """The piece, or the several names it lists: at commas, or side by side in two languages or two words.

    What a comma parts from a known name and is only its colour or shape falls away: Sword Lily, Purple.
    """
    parts = list(_comma_parts(piece))
    if len(parts) > 1:
        named = [_is_name(part.text, genera) for part in parts]
        like = all(own or _is_like_name(part.text) for part, own in zip(parts, named, strict=True))
        if (all(named) or (genera and any(named) and like)) and not _is_turned(parts):
            return parts
        shown = all(word.lower() in lexicon.words_of("shade") for p in parts[1:] for word in p.text.split())
        if shown and _is_name(parts[0].text, genera) and not _is_turned(parts):
            return parts[:1]
        return [piece]
    if genera and not lexicon.is_common_name(piece.text):
        for space in re.finditer(" ", piece.text):
            one, other = piece.text[: space.start()], piece.text[space.end() :]
            kind = f"{one} {other.split()[-1]}"  # Jalapeño Hot Pepper is a Jalapeño Pepper
            if lexicon.is_common_name(kind):
                continue
            if other[0].isupper() and called_by(one) & genera and _whole_or_list(other, genera):
                at = piece.start + space.start()
                rest = names_in(Piece(at + 1, piece.end, other), genera)
                return [Piece(piece.start, at, one), *rest]
    return [piece]


def _whole_or_list(text: str, genera: set[str]) -> bool:
    return bool(called_by(text) & genera) or len(names_in(Piece(0, len(text), text), genera)) > 1


def _comma_parts(piece: Piece) -> list[Piece]:
    found = re.finditer(r"[^\s,][^,]*[^\s,]", piece.text)
    return [Piece(piece.start + part.start(), piece.start + part.end(), part[0]) for part in found]


def _is_turned(parts: list[Piece]) -> bool:
    """Whether the parts are one name turned round, as in a list: Maple, Japanese."""
    last, *first = (part.text for part in parts)
    return (
        titles.is_qualifier(" ".join(first).split())
        and not all(word.lower() in lexicon.words_of("shade") for word in " ".join(first).split())
    ) or lexicon.is_common_name(" ".join((*first, last)))


def _is_like_name(text: str) -> bool:
    return " " in text and titles.has_head(text) and titles.looks_like_name(text)


def _is_name(text: str, genera: set[str]) -> bool:
    """Whether it is a name, or ends with one, of these plants; of any plant where none is named."""
    own = called_by(text) | lexicon.genera_of(ending_of(text.split(), genera)[1])
    return bool(own & genera if genera else own) and not titles.is_noise(text)


def ending_of(words: list[str], genera: set[str]) -> tuple[int, str]:
    """The trade name that ends a name, or any name of the plants named in Latin beside it, and of how many
    words it is: Gentian is hardly sold by that alone, but beside Gentiana it ends Trumpet Gentian."""
    count, ending = titles.known_ending(words)
    last = words[-1]
    own = not count and lexicon.is_common_name(last) and any(agrees(last, genus) for genus in genera)
    return (1, last) if own else (count, ending)


def called_by(name: str) -> frozenset[str]:
    """The genera a whole name may mean, in English or another language."""
    return (lexicon.genera_of(name) if lexicon.is_common_name(name) else frozenset()) | genera_called(name)
