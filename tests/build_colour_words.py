"""Makes `ocr_tags/data/colour_words.tsv` anew: what published colour charts call by the colour words of tags.

Source: K. L. Kelly and D. B. Judd, "Color: Universal Language and Dictionary of Names", NBS Special
Publication 440, 1976 (work of the US government), which gives the ISCC-NBS colours of the names in older
charts. They come as data in the Debian package libcolor-library-perl; only facts are taken: names and the
sRGB of the 267 colours' centroids. Where the package lies unpacked:

    apt-get download libcolor-library-perl && dpkg-deb -x libcolor-library-perl_*.deb unpacked
    python tests/build_colour_words.py unpacked/usr/share/perl5/Color/Library/Dictionary
"""

from __future__ import annotations

import colorsys
import re
import sys
from pathlib import Path

HEAD = """\
# What published colour charts call by a colour word of tags: the same word, several colours.
# Belonging here means: a word tags print for flowers, whose family (blue, purple, red) misleads most.
# Made by tests/build_colour_words.py from Kelly and Judd, NBS Special Publication 440 (1976).
# Charts: H Horticultural Colour Charts, M Maerz and Paul, R Ridgway, S postage stamps, TC textile card.
# word TAB family TAB charts TAB ISCC-NBS colour TAB sRGB of its centroid; from blue over violet to orange
"""
WORDS = {
    "blue": ["blue", "azure", "cobalt", "indigo", "periwinkle", "sapphire"],
    "purple": ["purple", "plum", "mulberry"],
    "red": [
        *("red", "cherry", "crimson", "carmine", "scarlet", "vermilion", "ruby", "wine", "claret"),
        *("burgundy", "maroon", "cerise", "raspberry"),
    ],
}
CHARTS = ("H", "M", "R", "S", "TC")
WHOLE = {"blue": ("H",), "purple": ("H",), "red": ("H",)}
"""Words so general that only the flower chart's own names ending in them are taken: "lobelia blue"."""
PATCHED = {"f88379": "strong yellowish pink", "e66761": "deep yellowish pink"}
"""Two centroids that the package gives two ways; these are the ones its charts use."""
Charts = dict[str, list[tuple[str, str, str]]]
ENTRY = re.compile(r"\['nbs-iscc-\w+:[^']*\.(\d+)','[^']*','((?:[^'\\]|\\.)*)',\[[\d,]+\],'([0-9a-f]{6})'")
CENTROID = re.compile(r"\['nbs-iscc:\w+','\w+','([^']*)',\[[\d,]+\],'([0-9a-f]{6})'")


def rows(folder: Path) -> list[str]:
    names = {m[2]: m[1].lower() for m in CENTROID.finditer((folder / "NBS_ISCC.pm").read_text("latin1"))}
    names |= PATCHED
    charts = {chart: ENTRY.findall((folder / f"NBS_ISCC/{chart}.pm").read_text("latin1")) for chart in CHARTS}
    listed = ((word, family) for family, words in WORDS.items() for word in words)
    return [row for word, family in listed for row in _rows(word, family, names, charts)]


def _rows(word: str, family: str, names: dict[str, str], charts: Charts) -> list[str]:
    where: dict[str, list[str]] = {}
    for chart in WHOLE.get(word, CHARTS):
        for _, name, colour in charts[chart]:
            plain = re.sub(r"\s*\[[^]]*\]", "", name).strip()
            ends = word in WHOLE and plain.endswith(f" {word}")
            if ends or plain in (word, f"{word} {family}", f"spanish {word}", f"port {word}"):
                where.setdefault(colour, []).append(chart)
    told = ((colour, ",".join(dict.fromkeys(where[colour]))) for colour in sorted(where, key=_along))
    return ["\t".join((word, family, which, names[colour], "#" + colour)) for colour, which in told]


def _along(colour: str) -> float:
    """Where a colour stands on the way from green over blue, violet and red to orange."""
    red, green, blue = (int(colour[n : n + 2], 16) / 255 for n in (0, 2, 4))
    return (colorsys.rgb_to_hsv(red, green, blue)[0] - 0.4) % 1


if __name__ == "__main__":
    made = rows(Path(sys.argv[1]))
    Path("ocr_tags/data/colour_words.tsv").write_text(HEAD + "".join(row + "\n" for row in made), "utf-8")
