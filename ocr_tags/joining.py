"""Photos that were read → tags: which are one side, which two sides are one tag, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from ocr_tags.errors import PhotoError
from ocr_tags.pairing.belonging import Verdict, belong_together, likely_side
from ocr_tags.pairing.photographs import Bond, Group, Nearness, nearness
from ocr_tags.pictures.photos import PhotoFile
from ocr_tags.record import Side, TagRecord

if TYPE_CHECKING:
    from ocr_tags.pipeline import SideRead


@dataclass(frozen=True, slots=True)
class TagRead:
    """A tag that was read. `files`: content hash of each of its photos to its file."""

    record: TagRecord
    files: dict[str, Path]


@dataclass(frozen=True, slots=True)
class _Shot:
    """A photo that was read, with the file it came from."""

    side: SideRead
    path: Path


@dataclass(frozen=True, slots=True)
class _Face:
    """One side of a tag in all its photos, and what they say together."""

    shots: tuple[_Shot, ...]
    side: SideRead

    @property
    def file(self) -> str:
        return self.shots[0].side.photo.file


def _face(*shots: _Shot) -> _Face:
    from ocr_tags.pipeline import one_side

    return _Face(shots, one_side([shot.side for shot in shots]))


@dataclass
class _Loose:
    """Sides read one after the other whose names tell nothing; at most three wait for a decision."""

    seconds: int
    waiting: list[_Face] = field(default_factory=list)
    last: _Shot | None = None

    def add(self, shot: _Shot) -> Iterator[TagRead]:
        if self.last and self.last.path.parent != shot.path.parent:
            yield from self.flush()
        again = self._seen_before(shot)
        self.last = shot
        if again is not None:
            self.waiting[again] = _face(*self.waiting[again].shots, shot)
            return
        self.waiting.append(_face(shot))
        if len(self.waiting) == 3:
            yield self._decide()

    def flush(self) -> Iterator[TagRead]:
        while self.waiting:
            yield self._decide()
        self.last = None

    def _seen_before(self, shot: _Shot) -> int | None:
        """Which of the waiting sides this photo shows once more."""
        if self.last is None or self._near([self.last], [shot]).near is False:
            return None
        for place in reversed(range(len(self.waiting))):
            if any(belong_together(old.side, shot.side).same for old in self.waiting[place].shots):
                return place
        return None

    def _decide(self) -> TagRead:
        """One tag off the queue. A second side that goes better with the third is left to it."""
        first, *more = self.waiting
        if not more:
            self.waiting = []
            return _single(first, ())
        verdict, near = self._judge(first, more[0])
        if verdict.ok and len(more) > 1:
            rival, _ = self._judge(more[0], more[1])
            if rival.ok and _rank(rival) > _rank(verdict):
                verdict = Verdict(False, f"{more[0].file} goes better with {more[1].file}")
        if not verdict.ok:
            self.waiting = more
            return _single(first, (f"Not joined with {more[0].file}: {verdict.why}.",))
        self.waiting = more[1:]
        return _pair(first, more[0], verdict, f"Front and back joined: {near}, and {verdict.why}.")

    def _judge(self, first: _Face, second: _Face) -> tuple[Verdict, str]:
        verdict = belong_together(first.side, second.side)
        order = self._near(first.shots, second.shots)
        if verdict.ok and (order.near is False or (order.near is None and verdict.strength < 3)):
            verdict = Verdict(False, f"{order.why}, which does not show that they are one tag")
        return verdict, order.why

    def _near(self, earlier: Sequence[_Shot], later: Sequence[_Shot]) -> Nearness:
        """The best that can be said of any two photos."""
        found = [nearness(one.side.photo, two.side.photo, self.seconds) for one in earlier for two in later]
        return max(found, key=lambda order: (order.near is True, order.near is None))


def _rank(verdict: Verdict) -> int:
    return 2 * verdict.strength + verdict.front_first


def assemble(
    groups: Sequence[Group], sides: Iterator[SideRead | PhotoError], seconds: int
) -> Iterator[TagRead | PhotoError]:
    """One tag after the other from the groups and, in the same order, what was read of their photos.

    Loose photos may be `seconds` apart.
    """
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
    """The tag of a group whose names pair it; photos that plainly show another plant are tags of their own.

    A pairs file and the word for a side are taken at their word, a number is not.
    """
    if group.bond == "counted" and not _is_one_tag(group, shots):
        for front, back in zip(group.fronts, group.backs, strict=True):
            why = f"their names say front and back: {front.name}, {back.name}"
            yield from _tags_of(Group((front,), (back,), "named", why), shots)
        return
    fronts, strays = _kept([shots[photo] for photo in group.fronts if photo in shots], group.bond)
    backs, more = _kept([shots[photo] for photo in group.backs if photo in shots], group.bond)
    notes = tuple(
        f"{'Another photo' if (fronts if photo in group.fronts else backs) else 'The other side'},"
        f" {photo.name}, could not be opened."
        for photo in group.photos
        if photo not in shots
    )
    if fronts and backs:
        yield from _both(group, _face(*fronts), _face(*backs), notes)
    elif fronts or backs:
        side: Side = "front" if fronts else "back"
        yield _single(_face(*fronts, *backs), notes, None if group.bond == "numbered" else side)
    for stray, why in strays + more:
        yield _single(_face(stray), (why,))


def _is_one_tag(group: Group, shots: dict[PhotoFile, _Shot]) -> bool:
    """Whether numbers behind the sides count photos: a side shows one print twice, and none another plant."""
    verdicts = [
        belong_together(shots[photos[0]].side, shots[again].side)
        for photos in (group.fronts, group.backs)
        for again in photos[1:]
        if photos[0] in shots and again in shots
    ]
    return any(verdict.same for verdict in verdicts) and not any(verdict.clash for verdict in verdicts)


def _kept(shots: Sequence[_Shot], bond: Bond) -> tuple[list[_Shot], list[tuple[_Shot, str]]]:
    """The photos of one side, and those that their names put there and what was read does not, with why."""
    kept: list[_Shot] = []
    strays = []
    for shot in shots:
        verdict = belong_together(kept[0].side, shot.side) if kept and bond != "told" else None
        if verdict and verdict.clash:
            strays.append((shot, f"Not joined with {kept[0].side.photo.file}: {verdict.why}."))
        else:
            kept.append(shot)
    return kept, strays


def _both(group: Group, front: _Face, back: _Face, notes: tuple[str, ...]) -> Iterator[TagRead]:
    verdict = belong_together(front.side, back.side)
    note = f"Front and back joined: {group.why}."
    if group.bond != "numbered":
        doubt = (f"Check that these are one tag: {verdict.why}.",) if verdict.clash else ()
        yield _record(front.shots, back.shots, (note, *doubt, *notes))
    elif verdict.same:
        yield _single(_face(*front.shots, *back.shots), notes)
    elif verdict.clash:
        for face, other in ((front, back), (back, front)):
            yield _single(face, (f"Not joined with {other.file}: {verdict.why}.",))
    else:
        yield _pair(front, back, verdict, note)


def _pair(first: _Face, second: _Face, verdict: Verdict, note: str) -> TagRead:
    front, back = (first, second) if verdict.front_first else (second, first)
    return _record(front.shots, back.shots, (note,))


def _single(face: _Face, notes: tuple[str, ...], side: Side | None = None) -> TagRead:
    if (side or likely_side(face.side)) == "front":
        return _record(face.shots, (), notes)
    return _record((), face.shots, notes)


def _record(fronts: Sequence[_Shot], backs: Sequence[_Shot], notes: tuple[str, ...]) -> TagRead:
    from ocr_tags.pipeline import make_record

    several = tuple(
        f"The {side} was read from {len(shots)} photos: {', '.join(shot.side.photo.file for shot in shots)}."
        for side, shots in (("front", fronts), ("back", backs))
        if len(shots) > 1
    )
    record = make_record([shot.side for shot in fronts], [shot.side for shot in backs], (*notes, *several))
    return TagRead(record, {shot.side.photo.sha256: shot.path for shot in (*fronts, *backs)})
