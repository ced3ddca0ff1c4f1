"""An engine that need not read the same line twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from ocr_tags.engines import Engine, Layout, Picture
from ocr_tags.record import Word


@dataclass(frozen=True, slots=True)
class Remembering:
    """An engine with what it has read so far. The lines that told which way is up come again among all
    lines, pixel for pixel the same."""

    engine: Engine
    before: dict[tuple[tuple[int, ...], bytes], list[list[Word]]] = field(default_factory=dict)

    @property
    def name(self) -> str:
        return self.engine.name

    @property
    def colour(self) -> bool:
        return self.engine.colour

    def describe(self) -> str:
        return self.engine.describe()

    def read(self, pictures: Sequence[Picture], layout: Layout) -> list[list[list[Word]]]:
        keys = [(picture.shape, picture.tobytes()) for picture in pictures]
        new = [number for number, key in enumerate(keys) if key not in self.before]
        for number, read in zip(new, self.engine.read([pictures[n] for n in new], layout), strict=True):
            self.before[keys[number]] = read
        return [self.before[key] for key in keys]
