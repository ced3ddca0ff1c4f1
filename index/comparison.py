"""What several tags say of one plant, field by field: what agrees, what differs and by how much."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Any, Literal

from index.comparison_identity import Group, group, identity_of, tie
from index.comparison_values import Relation, relate
from ocr_tags.facts import FACTS
from ocr_tags.record import Reading, TagRecord

Verdict = Literal["apart", "overlap", "uncertain", "wording", "fuller", "agree", "single"]
VERDICTS: tuple[Verdict, ...] = ("apart", "overlap", "uncertain", "wording", "fuller", "agree", "single")
"""Worst first. `uncertain`: they differ, but one of the readings is doubtful and may be misread."""

NOT_OF_THE_PLANT = frozenset({"series", "container", "price", "gtin", "plant_passport", "supplier"})
"""They belong to the article or the firm; two tags of one plant need not share them."""


@dataclass(frozen=True, slots=True)
class Said:
    """What one tag says. `who` is the supplier, or the photo where the tag names none."""

    tag_id: str
    supplier: str
    who: str
    value: Any
    printed: str
    doubtful: bool = False
    also_read: tuple[Any, ...] = ()
    """Other readings of a doubtful place; one of them may agree with the rest."""


@dataclass(frozen=True, slots=True)
class FieldComparison:
    """One field over all tags. `relation` is the widest between sure values, or between doubtful ones when
    only those differ.

    `alone` is who differs from all the rest, where three or more speak and the rest do not contradict
    each other.
    """

    name: str
    label: str
    said: tuple[Said, ...]
    verdict: Verdict
    relation: Relation
    alone: str | None = None

    @property
    def differs(self) -> bool:
        """Whether sure readings differ; doubtful ones are not counted."""
        return self.verdict in ("apart", "overlap")

    @property
    def rank(self) -> tuple[int, float]:
        """For sorting, worst first."""
        return VERDICTS.index(self.verdict), -self.relation.size


@dataclass(frozen=True, slots=True)
class PlantComparison:
    """One plant on several tags. `why` says what joins them; `remarks` what a person should know of that."""

    name: str
    tag_ids: tuple[str, ...]
    why: tuple[str, ...]
    fields: tuple[FieldComparison, ...]
    remarks: tuple[str, ...] = ()

    @property
    def differences(self) -> tuple[FieldComparison, ...]:
        return tuple(each for each in self.fields if each.differs)

    @property
    def rank(self) -> tuple[int, float]:
        """That of the worst field."""
        return min((each.rank for each in self.fields), default=(len(VERDICTS), 0.0))


@dataclass(frozen=True, slots=True)
class Report:
    """All plants with several tags, worst first, and the pairs that may be one plant but were kept apart."""

    plants: tuple[PlantComparison, ...]
    perhaps: tuple[tuple[str, str, str], ...]


def compare_all(records: Iterable[TagRecord], below: float) -> Report:
    """Every plant that several of these tags speak of. A value less sure than `below` is doubtful."""
    known = {record.tag_id: record for record in records}
    found = group([identity_of(record) for record in known.values()])
    plants = [_compare(each, known, below) for each in found.groups]
    return Report(tuple(sorted(plants, key=lambda plant: plant.rank)), found.perhaps)


def compare_these(records: Sequence[TagRecord], below: float) -> PlantComparison:
    """The tags a person put side by side, of one plant or not; `remarks` say where the names do not agree."""
    identities = [identity_of(record) for record in records]
    ties = [(a.tag_id, b.tag_id, tie(a, b)) for a, b in combinations(identities, 2)]
    why = tuple(dict.fromkeys(found.why for _, _, found in ties if found.verdict == "same"))
    known = {record.tag_id: record for record in records}
    plant = _compare(Group(tuple(known), why), known, below)
    doubts = [
        f"{one} and {other} may be of one plant: {found.why}."
        if found.verdict == "perhaps"
        else f"By their names {one} and {other} are not of one plant."
        for one, other, found in ties
        if found.verdict != "same"
    ]
    # Three tags may be joined through a middle one that shares a name with both.
    joined = group(identities).groups
    if len(joined) == 1 and len(joined[0].tag_ids) == len(records):
        doubts = []
    name = plant.name if why else " and ".join(dict.fromkeys(_name([record]) for record in records))
    return replace(plant, name=name, remarks=(*doubts, *plant.remarks))


# ---------------------------------------------------------------- one plant


def _compare(tags: Group, known: Mapping[str, TagRecord], below: float) -> PlantComparison:
    records = [known[tag_id] for tag_id in tags.tag_ids]
    who = witnesses(records)
    fields = []
    for field in FACTS:
        if field.name in NOT_OF_THE_PLANT:
            continue
        said = tuple(
            _said(record, who[record.tag_id], record.readings[field.name][0], below)
            for record in records
            if record.readings.get(field.name)
        )
        if said:
            fields.append(compare_field(field.name, field.label, said))
    fields.sort(key=lambda field: field.rank)
    remarks = tuple(_remarks(records, below))
    return PlantComparison(_name(records), tags.tag_ids, tags.why, tuple(fields), remarks)


def compare_field(name: str, label: str, said: tuple[Said, ...]) -> FieldComparison:
    """The verdict on one field from what each tag says of it."""
    if len(said) == 1:
        return FieldComparison(name, label, said, "single", Relation("same"))
    pairs = [(one, other, relate(name, one.value, other.value)) for one, other in combinations(said, 2)]
    sure = [relation for one, other, relation in pairs if not (one.doubtful or other.doubtful)]
    widest = max(sure, key=_width, default=Relation("same"))
    any_widest = max((relation for _, _, relation in pairs), key=_width)
    if any_widest.differs and not widest.differs:
        return FieldComparison(name, label, said, "uncertain", any_widest)
    if not sure:
        widest = any_widest
    verdict: Verdict = "agree" if widest.kind == "same" else widest.kind
    return FieldComparison(name, label, said, verdict, widest, _alone(name, said))


_ORDER = ("same", "fuller", "wording", "overlap", "apart")


def _width(relation: Relation) -> tuple[int, float]:
    return _ORDER.index(relation.kind), relation.size


def _alone(name: str, said: tuple[Said, ...]) -> str | None:
    """The one without whom no two sure values would contradict, or failing that differ; None when not one."""
    sure = [each for each in said if not each.doubtful]
    if len(sure) < 3:
        return None
    for kinds in (("apart",), ("apart", "overlap")):
        clashes = [
            (one, other)
            for one, other in combinations(sure, 2)
            if relate(name, one.value, other.value).kind in kinds
        ]
        culprits = [each for each in sure if clashes and all(each in clash for clash in clashes)]
        if len(culprits) == 1:
            return culprits[0].who
        if clashes:
            return None
    return None


# ---------------------------------------------------------------- who says it


def witnesses(records: Sequence[TagRecord]) -> dict[str, str]:
    """For each tag who speaks: its supplier, with year or photo where one supplier has several tags."""
    suppliers = {record.tag_id: _supplier(record) for record in records}
    often = Counter(name.casefold() for name in suppliers.values() if name)
    years = {record.tag_id: _year(record) for record in records}
    named: dict[str, str] = {}
    for record in records:
        supplier, photo = suppliers[record.tag_id], _photo(record)
        if not supplier:
            named[record.tag_id] = photo
        elif often[supplier.casefold()] == 1:
            named[record.tag_id] = supplier
        else:
            same = [other for other in records if suppliers[other.tag_id].casefold() == supplier.casefold()]
            apart = len({years[other.tag_id] for other in same} - {""}) == len(same)
            named[record.tag_id] = f"{supplier}, {years[record.tag_id] if apart else photo}"
    return named


def _supplier(record: TagRecord) -> str:
    found = record.readings.get("supplier", ())
    return str(found[0].value) if found else ""


def _year(record: TagRecord) -> str:
    return next((photo.taken_at[:4] for photo in record.photos if photo.taken_at), "")


def _photo(record: TagRecord) -> str:
    return record.photos[0].file if record.photos else f"tag {record.tag_id}"


def _said(record: TagRecord, who: str, reading: Reading[Any], below: float) -> Said:
    doubtful = is_doubtful(reading, below)
    also = tuple(other.value for other in reading.alternatives) if doubtful else ()
    return Said(record.tag_id, _supplier(record), who, reading.value, reading.printed, doubtful, also)


def is_doubtful(reading: Reading[Any], below: float) -> bool:
    """Whether a value may have been misread; not once a person has spoken."""
    if reading.status in ("confirmed", "corrected"):
        return False
    return reading.status in ("disagreed", "inferred") or reading.confidence < below


# ---------------------------------------------------------------- the plant


def _name(records: Sequence[TagRecord]) -> str:
    """The fullest botanical name on the tags, else the first common one."""
    botanical = [
        reading.value.name for record in records for reading in record.readings.get("botanical_name", ())[:1]
    ]
    common = [
        str(reading.value) for record in records for reading in record.readings.get("common_names", ())[:1]
    ]
    return max(botanical, key=len, default="") or (common[0] if common else "no name read")


def _remarks(records: Sequence[TagRecord], below: float) -> Iterable[str]:
    for record in records:
        names = record.readings.get("botanical_name", ())
        if not names:
            yield f"{record.tag_id} prints no botanical name; it is placed by its other names alone."
        elif is_doubtful(names[0], below):
            yield f"The botanical name of {record.tag_id} is doubtful: {names[0].value.name}. See the tag."
