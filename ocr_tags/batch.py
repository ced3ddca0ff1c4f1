"""Many photos in, one record per tag out, in the order of the photos; one bad photo never stops the rest."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from ocr_tags.errors import PhotoError, TagError
from ocr_tags.joining import TagRead as TagRead
from ocr_tags.joining import assemble
from ocr_tags.pairing.pairs_file import group_by_file
from ocr_tags.pairing.photographs import Group, group_by_name
from ocr_tags.pictures.photos import OpenedPhoto, PhotoFile, find_photos, fingerprint, open_photo
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
    """Photos to be read together, as they may be one tag."""

    group: Group
    settings: Settings

    @property
    def name(self) -> str:
        return self.group.photos[0].name

    def one_by_one(self) -> Iterator[Job]:
        for photo in self.group.photos:
            fronts, backs = (
                tuple(own for own in side if own == photo) for side in (self.group.fronts, self.group.backs)
            )
            yield replace(self, group=replace(self.group, fronts=fronts, backs=backs))


PhotoRead: TypeAlias = "SideRead | PhotoError"
ReadJob: TypeAlias = Callable[[Job], "list[PhotoRead]"]
"""What each of a job's photos says, in their order."""


def read_photos(job: Job) -> list[PhotoRead]:
    """Photos opened and read; runs in a worker process."""
    from ocr_tags.pipeline import read_sides

    opened = {photo: _opened(photo, job.settings) for photo in job.group.photos}
    fronts, backs = (
        [photo for name in side if not isinstance(photo := opened[name], PhotoError)]
        for side in (job.group.fronts, job.group.backs)
    )
    read = chain.from_iterable(read_sides(fronts, backs, job.settings))
    return [photo if isinstance(photo, PhotoError) else next(read) for photo in opened.values()]


def _opened(photo: PhotoFile, settings: Settings) -> OpenedPhoto | PhotoError:
    try:
        return open_photo(photo.path, photo.name, settings)
    except PhotoError as error:
        return error


def read_all(
    paths: Iterable[Path],
    settings: Settings,
    *,
    pairs_file: Path | None = None,
    on_progress: Progress | None = None,
    tag_of_photo: Callable[[str], str | None] = lambda sha256: None,
    read: ReadJob = read_photos,
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
    jobs = [Job(group, settings) for group in groups]
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
    jobs: Sequence[Job], settings: Settings, on_progress: Progress | None, read: ReadJob
) -> Iterator[PhotoRead]:
    """The photos of all jobs, read side by side, given in the order of `jobs`."""
    early: dict[int, list[PhotoRead]] = {}
    next_up = count = 0
    total = sum(len(job.group.photos) for job in jobs)
    for number, outcome in _read(jobs, settings, read):
        early[number] = outcome
        for photo in jobs[number].group.photos:
            count += 1
            if on_progress:
                on_progress(count, total, photo.name)
        while next_up in early:
            yield from early.pop(next_up)
            next_up += 1


def _read(jobs: Sequence[Job], settings: Settings, read: ReadJob) -> Iterator[tuple[int, list[PhotoRead]]]:
    """Each job's number and photos, as they are done; where several fail together, they are read one by one,
    as it is one of them that the reader fails on."""
    done = map_in_processes(
        read,
        jobs,
        workers=settings.worker_count,
        timeout_seconds=settings.timeout_seconds,
        name_of=lambda job: job.name,
    )
    for number, outcome in done:
        alone = list(jobs[number].one_by_one())
        if not isinstance(outcome, TagError):
            yield number, outcome
        elif len(alone) > 1:
            yield number, list(_in_order(alone, settings, None, read))
        else:
            yield number, [_as_photo_error(outcome, jobs[number].name)]


def _as_photo_error(error: TagError, name: str) -> PhotoError:
    """A reader that fails on one photo costs that photo only."""
    return error if isinstance(error, PhotoError) else PhotoError(f"{name}: {error.message}", error.remedy)
