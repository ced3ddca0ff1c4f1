"""Fonts found by file name; none of them serves the samples that the reader is built on."""

from __future__ import annotations

import functools
import os
import sys
from dataclasses import dataclass
from pathlib import Path

from PIL import ImageFont

FOLDERS = (
    "/usr/share/texmf/fonts/opentype",
    "/usr/share/fonts",
    "/usr/local/share/fonts",
    "~/.fonts",
    "~/.local/share/fonts",
    "/Library/Fonts",
)
PACKAGES = (
    "fonts-noto-core fonts-crosextra-carlito fonts-crosextra-caladea fonts-linuxlibertine fonts-cantarell "
    "fonts-karla fonts-inter fonts-league-spartan fonts-oldstandard fonts-sil-gentium-basic "
    "fonts-sil-charis fonts-sil-andika fonts-quattrocento fonts-prociono fonts-goudybookletter "
    "fonts-fanwood fonts-lindenhill fonts-adf-accanthis fonts-adf-gillius fonts-adf-universalis "
    "fonts-averia-sans-gwf fonts-averia-serif-gwf fonts-clear-sans fonts-b612 fonts-oxygen fonts-play "
    "fonts-paratype fonts-national-park fonts-roadgeek fonts-tuffy fonts-kaushanscript fonts-leckerli-one "
    "fonts-lemonada fonts-havana fonts-comic-neue fonts-arapey fonts-allerta fonts-courier-prime "
    "fonts-hack fonts-yrsa-rasa fonts-jura fonts-century-catalogue fonts-ocr-b fonts-sora fonts-manrope "
    "fonts-sjfonts fonts-georgewilliams fonts-gfs-neohellenic fonts-gfs-artemisia"
)


@dataclass(frozen=True, slots=True)
class Family:
    """File names of one family; a face that a family lacks is another of its faces."""

    regular: str
    bold: str
    italic: str
    serif: bool = False


def _family(stem: str, regular: str, bold: str, italic: str, end: str, serif: bool = False) -> Family:
    return Family(f"{stem}{regular}.{end}", f"{stem}{bold}.{end}", f"{stem}{italic}.{end}", serif)


BODY = (
    _family("Carlito", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("Caladea", "-Regular", "-Bold", "-Italic", "ttf", True),
    _family("LinLibertine", "_R", "_RB", "_RI", "otf", True),
    _family("LinBiolinum", "_R", "_RB", "_RI", "otf"),
    Family("Cantarell-Regular.otf", "Cantarell-Bold.otf", "LinBiolinum_RI.otf"),
    _family("Karla", "-Regular", "-Bold", "-Italic", "otf"),
    _family("Inter", "-Regular", "-SemiBold", "-Italic", "otf"),
    Family("GenBasR.ttf", "GenBasB.ttf", "GenBasI.ttf", True),
    _family("GenBkBas", "R", "B", "I", "ttf", True),
    _family("CharisSIL", "-Regular", "-Bold", "-Italic", "ttf", True),
    _family("Andika", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("AveriaSansGWF", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("AveriaSerifGWF", "-Regular", "-Bold", "-Italic", "ttf", True),
    _family("ClearSans", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("B612", "-Regular", "-Bold", "-Italic", "otf"),
    Family("Oxygen-Sans.ttf", "Oxygen-Sans-Bold.ttf", "PTS56F.ttf"),
    Family("Play-Regular.ttf", "Play-Bold.ttf", "NotoSans-Italic.ttf"),
    Family("PTS55F.ttf", "PTS75F.ttf", "PTS56F.ttf"),
    Family("PTF55F.ttf", "PTF75F.ttf", "PTF56F.ttf", True),
    Family("PTN57F.ttf", "PTN77F.ttf", "GilliusADF-CondItalic.otf"),
    _family("Tuffy", "", "_Bold", "_Italic", "ttf"),
    _family("GilliusADF", "-Regular", "-Bold", "-Italic", "otf"),
    _family("GilliusADF", "-Cond", "-BoldCond", "-CondItalic", "otf"),
    _family("UniversalisADFStd", "-Regular", "-Bold", "-Italic", "otf"),
    _family("UniversalisADFStd", "-Cond", "-BoldCond", "-CondItalic", "otf"),
    _family("NotoSans", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("NotoSerif", "-Regular", "-Bold", "-Italic", "ttf", True),
    _family("Yrsa", "-Regular", "-Bold", "-Italic", "ttf", True),
    Family("Sora-Regular.otf", "Sora-Bold.otf", "Inter-Italic.otf"),
    Family("Manrope-Regular.ttf", "Manrope-Bold.ttf", "Karla-Italic.otf"),
    _family("OldStandard", "-Regular", "-Bold", "-Italic", "ttf", True),
    _family("AccanthisADFStd", "-Regular", "-Bold", "-Italic", "otf", True),
    Family("GFSNeohellenic.otf", "GFSNeohellenicBold.otf", "GFSNeohellenicIt.otf"),
    Family("GFSArtemisia.otf", "GFSArtemisiaBold.otf", "GFSArtemisiaIt.otf", True),
    _family("ComicNeue", "-Regular", "-Bold", "-Italic", "otf"),
)
THERMAL = (
    Family("Courier Prime.otf", "Courier Prime Bold.otf", "Courier Prime Italic.otf"),
    _family("Hack", "-Regular", "-Bold", "-Italic", "ttf"),
    _family("B612Mono", "-Regular", "-Bold", "-Italic", "otf"),
    Family("PTN57F.ttf", "PTN77F.ttf", "PTN57F.ttf"),
    _family("UniversalisADFStd", "-Regular", "-Bold", "-Italic", "otf"),
)
PLAIN_TITLES = [
    "LeagueSpartan-Bold.otf",
    "LeagueSpartan-Black.otf",
    "NationalPark-Heavy.otf",
    "RG2014E.ttf",
    "RG2014C.ttf",
    "Jura-Bold.otf",
    "Sora-ExtraBold.otf",
    "Inter-Black.otf",
    "GoudyBookletter1911.otf",
    "Fanwood.otf",
    "LindenHill.otf",
    "Prociono.otf",
    "Century-Catalogue.ttf",
    "Caslon-Black.ttf",
    "Quattrocento-Regular.otf",
    "Arapey-Black.otf",
    "Arapey-Regular.otf",
    "allerta_medium.otf",
    "Yrsa-Bold.ttf",
    "OldStandard-Bold.ttf",
    "GilliusADF-BoldCond.otf",
    "Manrope-ExtraBold.ttf",
    "AveriaSerifGWF-Bold.ttf",
    "PTN77F.ttf",
]
FANCY_TITLES = [
    "KaushanScript-Regular.otf",
    "LeckerliOne-Regular.ttf",
    "Lemonada-SemiBold.otf",
    "Havana-Regular.otf",
    "LinLibertine_DR.otf",
    "Delphine.ttf",
    "FanwoodText-Italic.otf",
    "CaslonItalic.ttf",
    "Lemonada-Bold.otf",
    "AccanthisADFStd-BoldItalic.otf",
]
DIGITS = "OCRB.otf"
SPARE = {False: "NotoSans-Regular.ttf", True: "NotoSerif-Regular.ttf"}
SPARE_BOLD = {False: "NotoSans-Bold.ttf", True: "NotoSerif-Bold.ttf"}


@functools.cache
def files() -> dict[str, Path]:
    found: dict[str, Path] = {}
    for folder in FOLDERS:
        for root, _, names in os.walk(Path(folder).expanduser()):
            found.update({name: Path(root, name) for name in names if name.endswith((".ttf", ".otf"))})
    return found


def wanted() -> set[str]:
    """Every font file that the layouts may ask for."""
    families = {name for family in (*BODY, *THERMAL) for name in (family.regular, family.bold, family.italic)}
    return {*families, *PLAIN_TITLES, *FANCY_TITLES, DIGITS, *SPARE.values(), *SPARE_BOLD.values()}


def check(also: set[str], packages: str) -> None:
    """Ends the program with one sentence when fonts, or those `also` wanted, are missing."""
    missing = sorted((wanted() | also) - set(files()))
    if missing:
        sys.exit(
            f"{len(missing)} fonts are missing, for example {missing[0]}. "
            f"On Debian: apt-get install {PACKAGES} {packages}"
        )


@functools.lru_cache(4000)
def font(name: str, size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(files()[name]), size)


@functools.cache
def _absent(name: str) -> bytes:
    return bytes(font(name, 40).getmask("\U0010fff0"))


@functools.cache
def has(name: str, letter: str) -> bool:
    """Whether the font draws this letter and not its empty box."""
    if letter.isspace():
        return True
    drawn = bytes(font(name, 40).getmask(letter))
    return drawn != _absent(name) and any(drawn)


def runs(text: str, name: str, spare: str) -> list[tuple[str, str]]:
    """The text in pieces, each with the font that can draw it."""
    pieces: list[tuple[str, str]] = []
    for letter in text:
        chosen = name if has(name, letter) else spare
        if pieces and pieces[-1][1] == chosen:
            pieces[-1] = (pieces[-1][0] + letter, chosen)
        else:
            pieces.append((letter, chosen))
    return pieces


def spare_for(name: str) -> str:
    serif = any(name in (f.regular, f.bold, f.italic) and f.serif for f in BODY)
    bold = any(word in name for word in ("Bold", "Black", "Heavy", "_RB", "7", "SemiBold"))
    return (SPARE_BOLD if bold else SPARE)[serif]
