"""The committed set: what each sample is there to show. README.md has the same list in words."""

from __future__ import annotations

from typing import Any

# tag|level|plant|supplier|shape|front|back
ROWS = """
01-echinacea|easy|Echinacea purpurea|Tarnholt Perennials|stake|picture_top|lines
02-petunia|easy|Petunia × atkinsiana|Quillmere Growers|wide_stake|picture_top|icons
03-hydrangea|easy|Hydrangea paniculata|Tarnholt Perennials|label|beside|two_columns
04-hydrangea|medium|Hydrangea paniculata|Saltmarrow Nursery|hang|picture_full|table
05-maple|easy|Acer rubrum|Saltmarrow Nursery|card|card|-
06-clematis|medium|Clematis × jackmanii|Pépinières Lac-aux-Merles|label|picture_full|bilingual
07-reed-grass|medium|Calamagrostis × acutiflora|Saltmarrow Nursery|wide_stake|colour_block|dots
08-reed-grass|hard|Calamagrostis × acutiflora|Tarnholt Perennials|stake|picture_full|phrases
09-painted-fern|easy|Athyrium niponicum|Kwekerij Oosterwiel|square|picture_top|passport
10-tulip|medium|Tulipa gesneriana|Kwekerij Oosterwiel|hang|picture_top|passport
11-basil|medium|Ocimum basilicum|Bramhythe Kitchen Plants|stake|up_the_side|stacked
12-tomato|easy|Solanum lycopersicum|Bramhythe Kitchen Plants|wide_stake|picture_top|table
13-blueberry|medium|Vaccinium corymbosum|Saltmarrow Nursery|label|beside|icons
14-pothos|medium|Epipremnum aureum|Ondelay Indoor Plants|hang|picture_full|icons
15-echeveria|easy|Echeveria elegans|Ondelay Indoor Plants|square|colour_block|sticker
16-rose|hard|Rosa chinensis|Quillmere Growers|hang|script|table
17-sage|medium|Salvia nemorosa|Tarnholt Perennials|stake|picture_top|dense
18-lavender|medium|Lavandula angustifolia|Quillmere Growers|stake|picture_top|phrases
19-lavender|easy|Lavandula angustifolia|Kwekerij Oosterwiel|label|beside|passport
20-hosta|hard|Hosta plantaginea|Tarnholt Perennials|wide_stake|script|stacked
21-zinnia|easy|Zinnia elegans|Viveros Tres Garzas|label|beside|bilingual
22-barberry|medium|Berberis thunbergii|Fenwold Plants|wide_stake|plain|lines
23-milkweed|medium|Asclepias tuberosa|Tarnholt Perennials|label|beside|dense
24-foxglove|hard|Digitalis purpurea|Quillmere Growers|stake|colour_block|icons
25-virginia|medium|Parthenocissus quinquefolia|Pépinières Lac-aux-Merles|square|picture_top|bilingual
26-lettuce|easy|Lactuca sativa|Bramhythe Kitchen Plants|strip|strip|-
27-apple|medium|Malus domestica|Fenwold Plants|hang|picture_top|lines
28-snake-plant|easy|Dracaena trifasciata|Ondelay Indoor Plants|stake|plain|phrases
29-houseleek|hard|Sempervivum tectorum|Viveros Tres Garzas|square|script|two_columns
30-spruce|medium|Picea glauca|Saltmarrow Nursery|card|card|-
31-stonecrop|easy|Hylotelephium spectabile|Tarnholt Perennials|wide_stake|-|dots
32-impatiens|medium|Impatiens walleriana|Quillmere Growers|wide_stake|colour_block|sticker
33-iris|medium|Iris sibirica|Fenwold Plants|wide_stake|picture_full|stacked
34-strawberry|easy|Fragaria × ananassa|Viveros Tres Garzas|hang|picture_top|lines
35-lantana|hard|Lantana camara|Quillmere Growers|label|picture_full|table
36-switchgrass|medium|Panicum virgatum|Saltmarrow Nursery|stake|up_the_side|lines
"""

CULTIVARS = {
    "03-hydrangea": "Brindlow Parasol",
    "04-hydrangea": "Brindlow Parasol",
    "07-reed-grass": "Wrenfold Sentinel",
    "08-reed-grass": "Wrenfold Sentinel",
    "18-lavender": "Jorvelle Blue",
    "19-lavender": "Jorvelle Blue",
}
"""Three plants that two suppliers sell and describe differently; a given name is never a selling name."""

SEEDS: dict[str, int] = {}
"""Where the tag's own number made a dull or doubtful sample."""

NAMINGS = {
    name: way
    for way, names in {
        "camera": ["17-sage", "18-lavender", "20-hosta", "23-milkweed", "24-foxglove", "25-virginia"],
        "numbers": ["04-hydrangea", "07-reed-grass", "10-tulip", "13-blueberry", "29-houseleek", "33-iris"],
        "letters": ["06-clematis", "11-basil", "14-pothos", "27-apple", "32-impatiens", "35-lantana"],
    }.items()
    for name in names
}
KINDS = {"09-painted-fern": "webp", "19-lavender": "tif", "26-lettuce": "png", "33-iris": "webp"}
TURNS = {"11-basil": 90, "16-rose": 270, "24-foxglove": 180, "36-switchgrass": 90, "35-lantana": 90}


def _order(row: str) -> tuple[str, dict[str, Any]]:
    name, level, plant, supplier, shape, front, back = row.split("|")
    sides = tuple(side for side, layout in (("front", front), ("back", back)) if layout != "-")
    order: dict[str, Any] = {
        "seed": SEEDS.get(name, int(name[:2])),
        "level": level,
        "plant": plant,
        "supplier": supplier,
        "shape": shape,
        "front": front,
        "back": back,
        "sides": sides,
        "cultivar": CULTIVARS.get(name),
        "kind": KINDS.get(name, "jpg"),
        "naming": NAMINGS.get(name, "front_back"),
        "turn": TURNS.get(name),
    }
    return name, order


COMMITTED = [_order(row) for row in ROWS.strip().splitlines()]
