"""What a catalogue takes and what it answers with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from ocr_tags.record import TagRecord

Files = Mapping[str, Path]
"""Content hash (SHA-256, hex) of a photo to the file it was read from."""


@dataclass(frozen=True, slots=True)
class Added:
    """Where a record went. `new` is False when the tag was there; `changed` when anything was written."""

    tag_id: str
    new: bool
    changed: bool


@dataclass(frozen=True, slots=True)
class Hit:
    """A record found: `score` 0 to 100, and `why` in plain words.

    `nearest_only`: nothing matches what was asked; this record is merely the nearest there is.
    """

    tag_id: str
    record: TagRecord
    score: float
    why: str
    nearest_only: bool


@dataclass(frozen=True, slots=True)
class PlantHits:
    """The tags of one plant, the best first. `total` counts the tags found but not listed too."""

    plant: str
    hits: tuple[Hit, ...]
    total: int


@dataclass(frozen=True, slots=True)
class Found:
    """What a search found, the best plant first. `good` is False when nothing is called so.

    `shared`: the plants, when they are several, that go by the name asked for. `meant`: names in the
    catalogue near to what was asked for, when nothing is called so. `note`: a sentence that says what was
    found when it is not what was asked for, or empty.
    """

    plants: tuple[PlantHits, ...] = ()
    good: bool = True
    shared: tuple[str, ...] = ()
    meant: tuple[str, ...] = ()
    note: str = ""

    @property
    def hits(self) -> list[Hit]:
        """All tags listed, the best first, without regard to plants."""
        hits = [hit for plant in self.plants for hit in plant.hits]
        return sorted(hits, key=lambda hit: -hit.score)


@dataclass(frozen=True, slots=True)
class Health:
    """What `check` found: counts, and a sentence for each thing that is wrong (empty: all is well)."""

    tags: int
    photos: int
    indexed: int
    behind: int
    """Changes the search index has not taken yet; it takes them by itself at the next search."""
    problems: tuple[str, ...]
