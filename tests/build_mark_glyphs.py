"""Makes `tests/data/mark_glyphs.png` and `.tsv` anew: symbols of the Unicode standard, by published fonts.

The fonts are Noto Sans Symbols and Symbols 2 (SIL Open Font License) and DejaVu Sans (Bitstream Vera
licence), as in the Debian packages fonts-noto-core and fonts-dejavu-core. What each symbol shows is its name
in the standard: BLACK SUN WITH RAYS, CIRCLE WITH LEFT HALF BLACK, UP DOWN ARROW, SNOWFLAKE, THERMOMETER.

    python tests/build_mark_glyphs.py
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from PIL import Image, ImageFont

DATA = Path(__file__).parent / "data"
FONTS = {
    "Noto Sans Symbols": "/usr/share/fonts/truetype/noto/NotoSansSymbols-Regular.ttf",
    "Noto Sans Symbols 2": "/usr/share/fonts/truetype/noto/NotoSansSymbols2-Regular.ttf",
    "DejaVu Sans": "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
    "DejaVu Sans Bold": "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf",
}
SHOWN = {
    "sun": "☀☼🌣",
    "half_sun": "◐◑◒◓",
    "crescent": "☾☽",
    "drop": "🌢",
    "thermometer": "🌡",
    "snow": "❄❅❆",
    "tall": "↕⇕⭥⬍",
    "wide": "↔⇔⬌⭤⟷",
    "flower": "✿❀❁✾",
    "": "★✂✔✘☎⚠♥♣♠♻☞➜☺⚑✉⌂♫⚖☂☁⚘♀♂☠✈⚓□△◇▲▼◆■→←↑↓⇒",
}
"""Which symbols show which kind of mark; under no name some that are no mark."""
CELL = 112


def glyph(font: Path, symbol: str) -> Image.Image | None:
    """The symbol, its longer side 96 pixels; None where the font has none."""
    face, missing = ImageFont.truetype(str(font), 300), ImageFont.truetype(str(font), 300).getmask("\ufffe")
    mask = face.getmask(symbol)
    if mask.size == missing.size or not mask.getbbox():
        return None
    image = Image.fromarray(np.array(mask, np.uint8).reshape(mask.size[::-1])).crop(mask.getbbox())
    scale = 96 / max(image.size)
    return image.resize(
        (max(1, round(image.width * scale)), max(1, round(image.height * scale))), Image.Resampling.LANCZOS
    )


def main() -> None:
    rows, glyphs = [], []
    for kind, symbols in SHOWN.items():
        for symbol in symbols:
            for name, path in FONTS.items():
                if image := glyph(Path(path), symbol):
                    rows.append(f"{kind or 'none'}\t{name}\tU+{ord(symbol):04X}")
                    glyphs.append(image)
    across = 12
    sheet = Image.new("L", (across * CELL, -(-len(glyphs) // across) * CELL), 0)
    for at, image in enumerate(glyphs):
        x, y = at % across * CELL, at // across * CELL
        sheet.paste(image, (x + (CELL - image.width) // 2, y + (CELL - image.height) // 2))
    sheet.save(DATA / "mark_glyphs.png", optimize=True)
    head = "# Kind, font, code point, in the order of mark_glyphs.png. Made by tests/build_mark_glyphs.py.\n"
    (DATA / "mark_glyphs.tsv").write_text(head + "\n".join(rows) + "\n", "utf-8")


if __name__ == "__main__":
    main()
