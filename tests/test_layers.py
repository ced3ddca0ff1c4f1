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
    "ocr_tags.gtin": 0,
    "ocr_tags.usda": 0,
    "ocr_tags.settings": 1,
    "ocr_tags.facts": 1,
    "ocr_tags.measures": 1,
    "ocr_tags.layout": 1,
    "ocr_tags.names": 1,
    "ocr_tags.meaning": 2,
    "ocr_tags.place": 2,
    "ocr_tags.record_json": 2,
    "ocr_tags.pictures": 2,
    "ocr_tags.engines": 3,
    "ocr_tags.fields": 3,
    "ocr_tags.claims": 3,
    "ocr_tags.workers": 3,
    "ocr_tags.cautions": 4,
    "ocr_tags.planting": 4,
    "ocr_tags.typed": 4,
    "ocr_tags.framing": 4,
    "ocr_tags.reading": 4,
    "ocr_tags.shots": 4,
    "ocr_tags.pairing": 4,
    "index": 5,
    "ocr_tags.pipeline": 5,
    "ocr_tags.joining": 6,
    "ocr_tags.batch": 7,
    "ocr_tags.commands": 8,
    "ocr_tags.cli": 9,
    "ocr_tags.__main__": 10,
}
PICTURE_SIDE = {"pictures", "engines", "framing", "reading", "workers"}
"""Never seen by the fields, nor by the catalogue, which opens where OpenCV and Tesseract are missing."""
FILES = sorted([*ROOT.glob("ocr_tags/**/*.py"), *ROOT.glob("index/**/*.py")])
WITHOUT_PICTURES = sorted([*ROOT.glob("ocr_tags/fields/**/*.py"), *ROOT.glob("index/**/*.py")])


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
