"""Many photos in, one record per tag out, in the order of the photos; one bad photo never stops the rest."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from ocr_tags.errors import PhotoError, TagError
from ocr_tags.joining import TagRead as TagRead
from ocr_tags.joining import assemble
from ocr_tags.pairing.pairs_file import group_by_file
from ocr_tags.pairing.photographs import Group, group_by_name
from ocr_tags.pictures.photos import PhotoFile, find_photos, fingerprint, open_photo
from ocr_tags.settings import Settings
from ocr_tags.workers import map_in_processes

if TYPE_CHECKING:
    from ocr_tags.pipeline import SideRead

Progress = Callable[[int, int, str], None]
"""Called with photos done, photos in all, and the name of the one just done."""


@dataclass(frozen=True, slots=True)
class Passed:
    """A photo that was not read again: `why` is a sentence."""

    name: str
    why: str


Outcome = TagRead | Passed | PhotoError


@dataclass(frozen=True, slots=True)
class Job:
    photo: PhotoFile
    settings: Settings


def read_photo(job: Job) -> SideRead:
    """One photo opened and read; runs in a worker process."""
    from ocr_tags.pipeline import read_side

    return read_side(open_photo(job.photo.path, job.photo.name, job.settings), job.settings)


def read_all(
    paths: Iterable[Path],
    settings: Settings,
    *,
    pairs_file: Path | None = None,
    on_progress: Progress | None = None,
    tag_of_photo: Callable[[str], str | None] = lambda sha256: None,
    read: Callable[[Job], SideRead] = read_photo,
) -> Generator[Outcome]:
    """Every tag in these photos and folders, as they come, in the order of the photos.

    Photos that `tag_of_photo` (from content hash) knows are passed over without reading. Raises
    PairsFileError; everything else that goes wrong is a PhotoError among the outcomes.
    """
    photos, problems = find_photos(paths)
    yield from problems
    groups: list[Group] = []
    for found in _fresh(_grouped(photos, pairs_file), tag_of_photo):
        if isinstance(found, Group):
            groups.append(found)
        else:
            yield found
    jobs = [Job(photo, settings) for group in groups for photo in group.photos]
    yield from assemble(groups, _in_order(jobs, settings, on_progress, read), settings.pair_seconds)


def _grouped(photos: Sequence[PhotoFile], pairs_file: Path | None) -> list[Group]:
    """The pairs file first; photos it does not mention go by their names."""
    told = group_by_file(pairs_file, photos) if pairs_file else []
    mentioned = {photo.path.resolve() for group in told for photo in group.photos}
    return told + group_by_name([photo for photo in photos if photo.path.resolve() not in mentioned])


def _fresh(
    groups: Sequence[Group], tag_of_photo: Callable[[str], str | None]
) -> Iterator[Group | Passed | PhotoError]:
    """The groups with a photo that is neither in the catalogue nor a copy of an earlier one."""
    seen: dict[str, str] = {}
    for group in groups:
        try:
            hashes = {photo: fingerprint(photo.path) for photo in group.photos}
        except PhotoError:
            yield group  # opening it will say what is wrong
            continue
        tags = [tag_of_photo(sha256) for sha256 in hashes.values()]
        if all(tags):
            yield from (Passed(photo.name, f"already in tag {tags[0]}") for photo in group.photos)
        elif all(sha256 in seen for sha256 in hashes.values()):
            yield from (Passed(photo.name, f"the same picture as {seen[hashes[photo]]}") for photo in hashes)
        else:
            yield group
        for photo, sha256 in hashes.items():
            seen.setdefault(sha256, photo.name)


def _in_order(
    jobs: Sequence[Job],
    settings: Settings,
    on_progress: Progress | None,
    read: Callable[[Job], SideRead],
) -> Iterator[SideRead | PhotoError]:
    """The photos read side by side, given in the order of `jobs`."""
    early: dict[int, SideRead | PhotoError] = {}
    next_up = 0
    done = map_in_processes(
        read,
        jobs,
        workers=settings.worker_count,
        timeout_seconds=settings.timeout_seconds,
        name_of=lambda job: job.photo.name,
    )
    for count, (number, outcome) in enumerate(done, start=1):
        name = jobs[number].photo.name
        early[number] = _as_photo_error(outcome, name) if isinstance(outcome, TagError) else outcome
        if on_progress:
            on_progress(count, len(jobs), name)
        while next_up in early:
            yield early.pop(next_up)
            next_up += 1


def _as_photo_error(error: TagError, name: str) -> PhotoError:
    """A reader that fails on one photo costs that photo only."""
    return error if isinstance(error, PhotoError) else PhotoError(f"{name}: {error.message}", error.remedy)
