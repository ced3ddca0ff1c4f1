"""The command `ocr-tags`."""

from ocr_tags.commands import adding, catalogue, upkeep
from ocr_tags.commands.shared import app

__all__ = ["adding", "app", "catalogue", "main", "upkeep"]


def main() -> None:
    app()
