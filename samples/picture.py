"""Draws samples/demo.svg: the two photos of a sample tag beside what is read on them.

python samples/picture.py
"""

from __future__ import annotations

import base64
import io
from pathlib import Path

from PIL import Image, ImageOps
from rich.console import Console
from rich.terminal_theme import DEFAULT_TERMINAL_THEME

from ocr_tags.commands.show import details
from ocr_tags.pipeline import read_tag

HERE = Path(__file__).parent
PHOTOS = tuple(HERE / "tags" / f"03-hydrangea_{side}.jpg" for side in ("front", "back"))
WIDE, HIGH, GAP = 560, 400, 20
"""Pixels: the most room for one photo, and what is left free around it."""
COLUMNS = 118

TABLE = """<svg x="{{at}}" width="{width}" height="{height}" viewBox="0 0 {width} {height}">
<style>.{unique_id}-matrix {{{{font: {char_height}px monospace; line-height: {line_height}px}}}}
{styles}</style>
<g>{backgrounds}</g><g class="{unique_id}-matrix">{matrix}</g></svg>"""


def photo(file: Path, top: int) -> tuple[str, int]:
    """One photo as an SVG image, and how high it is."""
    with Image.open(file) as opened:
        small = ImageOps.contain(ImageOps.exif_transpose(opened).convert("RGB"), (WIDE, HIGH))
    data = io.BytesIO()
    small.save(data, "JPEG", quality=72)
    link = "data:image/jpeg;base64," + base64.b64encode(data.getvalue()).decode()
    size = f'width="{small.width}" height="{small.height}"'
    return f'<image x="0" y="{top}" {size} href="{link}"/>', small.height


def main() -> None:
    console = Console(record=True, width=COLUMNS, file=io.StringIO(), highlight=False)
    table = details(read_tag(*PHOTOS), 0.0)
    table.box = None  # few fonts of browsers have the strokes of a frame
    console.print(table)
    drawn = console.export_svg(theme=DEFAULT_TERMINAL_THEME, code_format=TABLE, unique_id="tag")
    wide, high = (float(drawn.split(f'{name}="')[1].split('"')[0]) for name in ("width", "height"))
    images, top = [], 0
    for file in PHOTOS:
        image, tall = photo(file, top)
        images.append(image)
        top += tall + GAP
    size = f"0 0 {WIDE + GAP + wide:.0f} {max(high, top - GAP):.0f}"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{size}">'
    paper = '<rect width="100%" height="100%" fill="#ffffff"/>'
    (HERE / "demo.svg").write_text(
        "\n".join((svg, paper, *images, drawn.replace("{at}", str(WIDE + GAP)), "</svg>")), "utf-8"
    )


if __name__ == "__main__":
    main()
