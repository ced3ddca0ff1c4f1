"""Fonts and colours of the second part; none of them serves the first part."""

from __future__ import annotations

from random import Random

from faces import Family

PACKAGES = (
    "fonts-texgyre fonts-karmilla fonts-adf-switzera fonts-adf-ikarius fonts-adf-verana fonts-adf-libris "
    "fonts-adf-baskervald fonts-adf-romande fonts-adf-tribun fonts-adf-berenis fonts-tlwg-umpush-ttf "
    "fonts-tlwg-loma-ttf fonts-tlwg-kinnari-ttf fonts-tlwg-norasi-ttf fonts-tlwg-purisa-ttf fonts-go "
    "fonts-dejavu-extra fonts-jetbrains-mono fonts-cardo fonts-apropal fonts-junicode"
)
"""Debian packages."""


def _tex(stem: str, serif: bool = False) -> Family:
    regular, bold, italic = (f"texgyre{stem}-{face}.otf" for face in ("regular", "bold", "italic"))
    return Family(regular, bold, italic, serif)


BODY = (
    _tex("adventor"),
    _tex("heros"),
    _tex("heroscn"),
    _tex("bonum", True),
    _tex("pagella", True),
    _tex("schola", True),
    Family("Karmilla-Regular.ttf", "Karmilla-Bold.ttf", "Karmilla-Italic.ttf"),
    Family("SwitzeraADF-Cond.otf", "SwitzeraADF-BoldCond.otf", "SwitzeraADF-CondItalic.otf"),
    Family("IkariusADFStd-Regular.otf", "IkariusADFStd-Bold.otf", "IkariusADFStd-Italic.otf"),
    Family("VeranaSans-Regular.otf", "VeranaSans-Bold.otf", "VeranaSans-Oblique.otf"),
    Family("LibrisADFStd-Regular.otf", "LibrisADFStd-Bold.otf", "LibrisADFStd-Italic.otf"),
    Family("BaskervaldADFStd.otf", "BaskervaldADFStd-Bold.otf", "BaskervaldADFStd-Italic.otf", True),
    Family("TribunADFStd-Regular.otf", "TribunADFStd-Bold.otf", "TribunADFStd-Italic.otf", True),
    Family("Umpush.ttf", "Umpush-Bold.ttf", "Umpush-Oblique.ttf"),
    Family("Loma.ttf", "Loma-Bold.ttf", "Loma-Oblique.ttf"),
    Family("Kinnari.ttf", "Kinnari-Bold.ttf", "Kinnari-Italic.ttf", True),
    Family("Norasi.ttf", "Norasi-Bold.ttf", "Norasi-Italic.ttf", True),
    Family("Go-Regular.ttf", "Go-Bold.ttf", "Go-Italic.ttf"),
    Family("DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf", "DejaVuSansCondensed-Oblique.ttf"),
)
LABEL = (
    Family("JetBrainsMono-Regular.ttf", "JetBrainsMono-Bold.ttf", "JetBrainsMono-Italic.ttf"),
    Family("Go-Mono.ttf", "Go-Mono-Bold.ttf", "Go-Mono-Italic.ttf"),
    _tex("heroscn"),
)
TITLES = (
    "texgyreadventor-bold.otf",
    "texgyreheroscn-bold.otf",
    "texgyrebonum-bold.otf",
    "SwitzeraADF-BoldExt.otf",
    "RomandeADFStd-DemiBold.otf",
    "TribunADFStd-ExtraBold.otf",
    "IkariusADFStd-Bold.otf",
    "Karmilla-Bold.ttf",
    "Umpush-Bold.ttf",
    "Cardob101.ttf",
    "Go-Smallcaps.ttf",
    "Apropal-Bold.otf",
)
FANCY = (
    "RomandeADFScriptStd-Italic.otf",
    "Purisa-Bold.ttf",
    "BerenisADFPro-BoldItalic.otf",
    "JunicodeTwoBeta-BoldItalic.otf",
)

Colour = tuple[int, int, int]
LIGHT: tuple[tuple[Colour, Colour, Colour], ...] = (  # paper, ink, accent
    ((253, 244, 233), (70, 35, 20), (176, 74, 30)),
    ((233, 246, 247), (12, 60, 72), (0, 122, 140)),
    ((250, 250, 246), (45, 45, 48), (98, 108, 26)),
    ((244, 238, 250), (55, 28, 90), (112, 62, 160)),
    ((255, 255, 255), (10, 10, 10), (200, 30, 60)),
    ((226, 234, 216), (34, 44, 22), (84, 104, 36)),
    ((240, 224, 196), (62, 44, 20), (122, 82, 24)),
)
DARK: tuple[tuple[Colour, Colour, Colour], ...] = (
    ((92, 52, 30), (255, 244, 226), (250, 200, 120)),
    ((60, 34, 92), (250, 244, 255), (232, 200, 90)),
    ((176, 62, 26), (255, 255, 250), (255, 236, 190)),
    ((14, 74, 104), (245, 252, 255), (170, 226, 240)),
)


def colours(rng: Random, dark: float) -> tuple[Colour, Colour, Colour]:
    return rng.choice(DARK if rng.random() < dark else LIGHT)


def wanted() -> set[str]:
    """Every font file of the second part."""
    families = {name for face in (*BODY, *LABEL) for name in (face.regular, face.bold, face.italic)}
    return {*families, *TITLES, *FANCY}
