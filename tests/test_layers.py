"""Imports go down, never up: the table of DEVELOPERS.md, checked line by line."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
LEVELS = {
    "ocr_tags.record": 0,
    "ocr_tags.values": 0,
    "ocr_tags.errors": 0,
    "ocr_tags.data": 0,
    "ocr_tags.patterns": 0,
    "ocr_tags.settings": 1,
    "ocr_tags.lines": 1,
    "ocr_tags.reading_order": 1,
    "ocr_tags.cells": 1,
    "ocr_tags.text": 1,
    "ocr_tags.agreement": 1,
    "ocr_tags.confidence": 1,
    "ocr_tags.echo": 1,
    "ocr_tags.quantities": 1,
    "ocr_tags.measures": 1,
    "ocr_tags.two_units": 1,
    "ocr_tags.gtin": 1,
    "ocr_tags.lengths": 1,
    "ocr_tags.facts": 1,
    "ocr_tags.usda": 1,
    "ocr_tags.epithets": 1,
    "ocr_tags.nomenclature": 1,
    "ocr_tags.lexicon": 1,
    "ocr_tags.matching": 1,
    "ocr_tags.repair": 1,
    "ocr_tags.foreign_names": 1,
    "ocr_tags.titles": 1,
    "ocr_tags.vocabulary": 1,
    "ocr_tags.word_features": 1,
    "ocr_tags.meaning": 1,
    "ocr_tags.addresses": 1,
    "ocr_tags.firms": 1,
    "ocr_tags.signature_words": 1,
    "ocr_tags.signatures": 1,
    "ocr_tags.cultivars": 1,
    "ocr_tags.title_runs": 1,
    "ocr_tags.name_readings": 1,
    "ocr_tags.naming": 1,
    "ocr_tags.known_names": 1,
    "ocr_tags.name_block": 1,
    "ocr_tags.name_side": 1,
    "ocr_tags.labelled_names": 1,
    "ocr_tags.broken_names": 1,
    "ocr_tags.title_names": 1,
    "ocr_tags.common_names": 1,
    "ocr_tags.fields": 2,
    "ocr_tags.place": 2,
    "ocr_tags.photos": 2,
    "ocr_tags.pixels": 2,
    "ocr_tags.geometry": 2,
    "ocr_tags.shapes": 2,
    "ocr_tags.glyphs": 2,
    "ocr_tags.outline": 2,
    "ocr_tags.regions": 2,
    "ocr_tags.crops": 2,
    "ocr_tags.leaders": 2,
    "ocr_tags.cleaning": 2,
    "ocr_tags.glare": 2,
    "ocr_tags.barcodes": 2,
    "ocr_tags.mark_shapes": 2,
    "ocr_tags.marks": 2,
    "ocr_tags.month_bars": 2,
    "ocr_tags.engines": 2,
    "ocr_tags.cautions": 3,
    "ocr_tags.record_json": 3,
    "ocr_tags.typed": 3,
    "ocr_tags.planting": 3,
    "ocr_tags.claims": 2,
    "ocr_tags.both_sides": 3,
    "ocr_tags.selling_names": 3,
    "ocr_tags.voting": 3,
    "ocr_tags.whole_names": 3,
    "ocr_tags.overlay": 3,
    "ocr_tags.shots": 3,
    "ocr_tags.bend": 2,
    "ocr_tags.level": 2,
    "ocr_tags.facing": 3,
    "ocr_tags.reading": 3,
    "ocr_tags.belonging": 3,
    "ocr_tags.workers": 3,
    "ocr_tags.pairing": 4,
    "ocr_tags.pairs_file": 4,
    "ocr_tags.pipeline": 4,
    "index": 5,
    "ocr_tags.joining": 5,
    "ocr_tags.batch": 5,
    "ocr_tags.advice": 5,
    "ocr_tags.show": 5,
    "ocr_tags.commands": 6,
    "ocr_tags.cli": 7,
    "ocr_tags.__main__": 8,
}
PICTURE_SIDE = {
    *("photos", "pixels", "geometry", "shapes", "glyphs", "outline", "regions", "crops", "leaders"),
    *("glare", "barcodes", "mark_shapes", "marks", "month_bars"),
    *("cleaning", "engines", "bend", "level", "facing", "reading", "workers"),
}
"""Never seen by the fields, nor by the catalogue, which opens where OpenCV and Tesseract are missing."""
FILES = sorted([*ROOT.glob("ocr_tags/**/*.py"), *ROOT.glob("index/**/*.py")])
WITHOUT_PICTURES = sorted([*ROOT.glob("ocr_tags/fields/*.py"), *ROOT.glob("index/**/*.py")])


def module_of(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def level_of(module: str) -> int:
    """The level of a module, or of the nearest package above it that has one."""
    while module:
        if module in LEVELS:
            return LEVELS[module]
        module = module.rpartition(".")[0]
    return -1


def imports(path: Path) -> Iterator[tuple[int, str]]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield from ((node.lineno, f"{node.module}.{alias.name}") for alias in node.names)


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_imports_go_down(path: Path) -> None:
    own = level_of(module_of(path))
    assert own >= 0 or path == ROOT / "ocr_tags/__init__.py", f"{path.name} is in no level of the table"
    for line, name in imports(path):
        if name.split(".")[0] in {"ocr_tags", "index"}:
            assert level_of(name) <= own, f"{path.name}:{line} imports {name}, which is above it"


@pytest.mark.parametrize("path", WITHOUT_PICTURES, ids=lambda path: str(path.relative_to(ROOT)))
def test_fields_and_catalogue_never_see_pictures(path: Path) -> None:
    for line, name in imports(path):
        assert name.split(".")[0] not in {"cv2", "pytesseract", "tesserocr"}, f"{path.name}:{line} {name}"
        if name.startswith("ocr_tags."):
            assert name.split(".")[1] not in PICTURE_SIDE, f"{path.name}:{line} imports {name}"
