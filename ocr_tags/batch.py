"""Many photos in, one record per tag out, in the order of the photos; one bad photo never stops the rest."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from ocr_tags.belonging import Verdict, belong_together, likely_side
from ocr_tags.errors import PhotoError, TagError
from ocr_tags.pairing import Group, group_by_file, group_by_name, nearness
from ocr_tags.photos import PhotoFile, find_photos, fingerprint, open_photo
from ocr_tags.record import Side, TagRecord
from ocr_tags.settings import Settings
from ocr_tags.workers import map_in_processes

if TYPE_CHECKING:
    from ocr_tags.pipeline import SideRead

Progress = Callable[[int, int, str], None]
"""Called with photos done, photos in all, and the name of the one just done."""


@dataclass(frozen=True, slots=True)
class TagRead:
    """A tag that was read. `files`: content hash of each of its photos to its file."""

    record: TagRecord
    files: dict[str, Path]


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
    yield from _assemble(groups, _in_order(jobs, settings, on_progress, read), settings.pair_seconds)


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


# ---------------------------------------------------------------- sides into tags


@dataclass(frozen=True, slots=True)
class _Shot:
    """A side that was read, with the file it came from."""

    side: SideRead
    path: Path


@dataclass
class _Loose:
    """Photos read one after the other whose names tell nothing; at most three wait for a decision."""

    seconds: int
    waiting: list[_Shot] = field(default_factory=list)

    def add(self, shot: _Shot) -> Iterator[TagRead]:
        if self.waiting and self.waiting[-1].path.parent != shot.path.parent:
            yield from self.flush()
        self.waiting.append(shot)
        if len(self.waiting) == 3:
            yield self._decide()

    def flush(self) -> Iterator[TagRead]:
        while self.waiting:
            yield self._decide()

    def _decide(self) -> TagRead:
        """One tag off the queue. A second photo that goes better with the third is left to it."""
        first, *more = self.waiting
        if not more:
            self.waiting = []
            return _single(first, ())
        verdict, near = self._judge(first, more[0])
        if verdict.ok and len(more) > 1:
            rival, _ = self._judge(more[0], more[1])
            if rival.ok and _rank(rival) > _rank(verdict):
                verdict = Verdict(
                    False, f"{more[0].side.photo.file} goes better with {more[1].side.photo.file}"
                )
        if not verdict.ok:
            self.waiting = more
            return _single(first, (f"Not joined with {more[0].side.photo.file}: {verdict.why}.",))
        self.waiting = more[1:]
        return _pair(first, more[0], verdict, f"Front and back joined: {near}, and {verdict.why}.")

    def _judge(self, first: _Shot, second: _Shot) -> tuple[Verdict, str]:
        verdict = belong_together(first.side, second.side)
        order = nearness(first.side.photo, second.side.photo, self.seconds)
        if verdict.ok and (order.near is False or (order.near is None and verdict.strength < 3)):
            verdict = Verdict(False, f"{order.why}, which does not show that they are one tag")
        return verdict, order.why


def _rank(verdict: Verdict) -> int:
    return 2 * verdict.strength + verdict.front_first


def _assemble(
    groups: Sequence[Group], sides: Iterator[SideRead | PhotoError], seconds: int
) -> Iterator[TagRead | PhotoError]:
    loose = _Loose(seconds)
    for group in groups:
        read = [(photo, next(sides)) for photo in group.photos]
        shots = {photo: _Shot(side, photo.path) for photo, side in read if not isinstance(side, PhotoError)}
        if group.bond != "loose" or not shots:
            yield from loose.flush()
        yield from (side for _, side in read if isinstance(side, PhotoError))
        if group.bond == "loose":
            for shot in shots.values():
                yield from loose.add(shot)
        else:
            yield from _tags_of(group, shots)
    yield from loose.flush()


def _tags_of(group: Group, shots: dict[PhotoFile, _Shot]) -> Iterator[TagRead]:
    """The tag of a group whose names pair it: two tags when numbered photos plainly show two plants."""
    front, back = (shots.get(photo) if photo else None for photo in (group.front, group.back))
    if not front or not back:
        lost = [photo.name for photo in group.photos if photo not in shots]
        notes = tuple(f"The other side, {name}, could not be opened." for name in lost)
        for shot in shots.values():
            side: Side = "front" if shot is front else "back"
            yield _single(shot, notes, side if group.bond == "named" else None)
        return
    verdict = belong_together(front.side, back.side)
    if group.bond == "named":
        doubt = (f"Check that these are one tag: {verdict.why}.",) if verdict.clash else ()
        yield _record(front, back, (f"Front and back joined: {group.why}.", *doubt))
    elif verdict.clash:
        for shot, other in ((front, back), (back, front)):
            yield _single(shot, (f"Not joined with {other.side.photo.file}: {verdict.why}.",))
    else:
        yield _pair(front, back, verdict, f"Front and back joined: {group.why}.")


def _pair(first: _Shot, second: _Shot, verdict: Verdict, note: str) -> TagRead:
    front, back = (first, second) if verdict.front_first else (second, first)
    return _record(front, back, (note,))


def _single(shot: _Shot, notes: tuple[str, ...], side: Side | None = None) -> TagRead:
    if (side or likely_side(shot.side)) == "front":
        return _record(shot, None, notes)
    return _record(None, shot, notes)


def _record(front: _Shot | None, back: _Shot | None, notes: tuple[str, ...]) -> TagRead:
    from ocr_tags.pipeline import make_record

    record = make_record(front.side if front else None, back.side if back else None, notes)
    return TagRead(record, {shot.side.photo.sha256: shot.path for shot in (front, back) if shot})
