"""The command `ocr-tags`."""

from ocr_tags.commands import adding, catalogue, comparing, places, planting, upkeep
from ocr_tags.commands.shared import app

__all__ = ["adding", "app", "catalogue", "comparing", "main", "places", "planting", "upkeep"]


def main() -> None:
    app()
