"""Records in, answers out: a catalogue of plant tags that is safe to write and quick to search."""

from index.answers import Added, Files, Found, Health, Hit, PlantHits
from index.catalogue import Catalogue

__all__ = ["Added", "Catalogue", "Files", "Found", "Health", "Hit", "PlantHits"]
