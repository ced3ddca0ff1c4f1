"""Fits the chance that a value is right to counts, and writes it to ocr_tags/data/confidence.toml.

    python samples/calibrate.py FOLDER [FOLDER …]       folders made by draw.py here, with their truth
    python samples/calibrate.py FOLDER --kept DIR       keeps what the engines read in DIR, and uses it again
    python samples/calibrate.py FOLDER --typed FILE     typed tags as well (typed.py), in wordings of others
    python samples/calibrate.py FOLDER --onward         from the weights that stand, which earlier tags told
    python samples/calibrate.py FOLDER --dry            prints the tables, writes nothing

Drawn tags tell how letters are misread, typed ones how words are misunderstood: give typed tags for which no
pattern was written and from which no meaning was learnt. Each tag is read by both engines; each of them alone
is the same reading without the other, so that the chance is right on a machine with one engine too. Tags are
held out in five folds: every table and both cuts rest on tags the fit had not seen. Do not judge by a folder
that was fitted on.
"""

from __future__ import annotations

import argparse
import json
import os
import pickle
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import astuple, dataclass, fields, replace
from datetime import date
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import Any

from ocr_tags.workers import ONE_THREAD

os.environ.update(dict.fromkeys(ONE_THREAD, "1"))

import cv2
import msgspec
import numpy as np
from numpy.typing import NDArray
from score import judge, judge_part
from typed import READERS, laid_out, texts_of, typed_tags

from ocr_tags.claims.both_sides import settled
from ocr_tags.claims.confidence import PART, Evidence, Fit, fitted
from ocr_tags.claims.of_side import Claim, claims
from ocr_tags.claims.voting import Weighed, parts, weigh
from ocr_tags.engines import open_engines
from ocr_tags.fields import FIELDS
from ocr_tags.fields.labels import is_label
from ocr_tags.layout.lines import Line
from ocr_tags.layout.text import side_texts
from ocr_tags.pictures.photos import open_photo
from ocr_tags.pipeline import look_at
from ocr_tags.record import Field, Reading, Side, TagText
from ocr_tags.settings import Settings

OUT = Path(__file__).parent.parent / "ocr_tags" / "data" / "confidence.toml"
LISTS = frozenset(field.name for field in FIELDS if field.shape == "list")
KINDS = tuple(each.name for each in fields(Evidence))
FOLDS = 5
EVIDENCE_RIDGE, OFFSET_RIDGE = 0.5, 2.0
"""How strongly weights and fields' offsets are drawn to 0: a field seen seldom keeps the common chance."""
STANDING_RIDGE = 20.0
"""How strongly they are drawn to what stands: as if some hundreds of tags had told it."""
ALONE_WEIGHT = 0.5
"""What one engine alone counts beside both: each tag is there three times."""
TYPED_WEIGHT = 0.3
"""What a typed tag counts beside a drawn one. Much of what is wrong on them is where a phrase ends in its
writer's opinion, which no evidence tells: at full weight twice as many values of photographs are doubted."""
SURE_WRONG = 1 / 250
"""At most one in 200 is asked for; tags of others err more than those drawn here."""
SHOWN = 0.85
"""Under this chance a value is left out: here the table of floors has its least cost, a wrong value counting
as ten missing ones. Of the values, 1 in 100 is lost so, and of the wrong ones a third."""
NAMED = 0.75
"""The same for names, by which a tag is found: between the cuts 9 in 10 are right on tags of others."""
EDGES = (0, 0.3, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.97, 0.98, 0.99, 1.001)

Seen = Mapping[str, tuple[int, dict[str, list[Line]]]]
"""By side: the height of the straightened picture, and lines by pass."""
Sides = dict[str, tuple[Claim, ...]]
Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Row:
    """One reading with its evidence, and whether it is right. `field` ends in PART for an item of a list."""

    tag: str
    engines: str
    field: str
    evidence: Evidence
    right: bool
    doubted: bool
    typed: bool
    chance: float = 0.0


# ---------------------------------------------------------------- from photos to rows


def seen_on(folder: Path, kept: Path | None, truth: Mapping[str, Any]) -> Seen:
    """What both engines read on a tag's photos, read now or kept from an earlier time."""
    cv2.setNumThreads(1)
    file = kept / folder.name / f"{truth['tag']}.pickle" if kept else None
    if file and file.exists():
        found: Seen = pickle.loads(file.read_bytes())
        return found
    engines = open_engines("both")
    photos = [open_photo(folder / photo["file"], settings=Settings()) for photo in truth["photos"]]
    seen = {
        photo["side"]: (read.height, read.passes)
        for photo, (read, _) in zip(truth["photos"], look_at(photos, engines), strict=True)
    }
    if file:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(pickle.dumps(seen))
    return seen


def claims_on(folder: Path, kept: Path | None, truth: Mapping[str, Any]) -> dict[str, Sides]:
    """What a tag may state, field by field, as read by both engines and by each alone."""
    seen = seen_on(folder, kept, truth)
    engines = sorted({name.partition(" ")[0] for _, passes in seen.values() for name in passes})
    return {
        "both": _claims(seen, tuple(engines)),
        **{engine: _claims(seen, (engine,)) for engine in engines if engine in ("tesseract", "rapidocr")},
    }


def claims_typed(truth: Mapping[str, Any]) -> dict[str, Sides]:
    """What a typed tag may state, field by field, as if both engines or each alone had read every letter."""
    sides: tuple[Side, Side] = ("front", "back")
    held = [(side, *laid_out(truth[side])) for side in sides if truth.get(side)]
    ways = {"both": READERS, **{reader: (reader,) for reader in READERS}}
    return {
        way: _stated(texts_of(lines, height, side, readers) for side, lines, height in held)
        for way, readers in ways.items()
    }


def _claims(seen: Seen, engines: tuple[str, ...]) -> Sides:
    own = {
        side: (
            height,
            {name: lines for name, lines in passes.items() if name.startswith((*engines, "barcode"))},
        )
        for side, (height, passes) in seen.items()
    }
    return _stated(
        side_texts(passes, side, height, is_label)  # type: ignore[arg-type]
        for side, (height, passes) in own.items()
    )


def _stated(sides: Iterable[Sequence[TagText]]) -> Sides:
    found: dict[str, list[Claim]] = {field.name: [] for field in FIELDS}
    for texts in sides:
        for field in FIELDS:
            found[field.name].extend(claims(texts, field))
    return {name: tuple(several) for name, several in settled(found).items()}


Tag = tuple[Mapping[str, Any], dict[str, Sides]]


def rows(tags: Sequence[Tag], fit: Fit) -> list[Row]:
    """Every reading of every tag; items of lists come beside the lists they make."""
    return [
        row
        for truth, by_engines in tags
        for engines, sides in by_engines.items()
        for field in FIELDS
        for row in _rows(truth, engines, field, sides[field.name], fit)
    ]


def _rows(
    truth: Mapping[str, Any], engines: str, field: Field[Any], stated: tuple[Claim, ...], fit: Fit
) -> Iterator[Row]:
    if field.name in {"rhs_rating", "heat_zones"} and field.name not in truth["fields"]:
        return
    found: list[tuple[str, Weighed, bool]] = []
    if field.shape == "list":
        printed = truth["fields"].get(field.name, {}).get("value", [])
        for item in parts(field, stated, fit):
            right = judge_part(field.name, printed, msgspec.to_builtins(item[0].value))
            found.append((field.name + PART, item, right))
    weighed = weigh(field, stated, fit)
    found += zip([field.name] * len(weighed), weighed, _judged(truth, field, weighed), strict=True)
    for name, (reading, evidence), right in found:
        doubted, typed = reading.status == "disagreed", "photos" not in truth
        yield Row(truth["tag"], engines, name, evidence, right, doubted, typed)


def _judged(truth: Mapping[str, Any], field: Field[Any], weighed: Sequence[Weighed]) -> list[bool]:
    shown = [_as_json(reading) for reading, _ in weighed]
    if not shown:
        return []
    beside = {field.name, "botanical_name"} if field.name == "common_names" else {field.name}
    own = {**truth, "fields": {name: v for name, v in truth["fields"].items() if name in beside}}
    record = {"fields": {field.name: shown if field.shape == "each" else shown[0]}}
    return [verdict.outcome == "right" for verdict in judge(own, record) if verdict.confidence is not None]


def _as_json(reading: Reading[Any]) -> dict[str, Any]:
    return {"value": msgspec.to_builtins(reading.value), "confidence": reading.confidence}


# ---------------------------------------------------------------- the fit


def fit_to(rows: Sequence[Row], before: Fit, standing: Fit | None = None) -> Fit:
    """Logistic regression by Newton's method, weights and offsets drawn to 0 (ridge), or to what stands."""
    names = sorted({row.field for row in rows} | set(standing.offsets if standing else ()))
    place = {name: number for number, name in enumerate(names)}
    x = np.zeros((len(rows), 1 + len(KINDS) + len(names)))
    x[:, 0] = 1
    x[:, 1 : 1 + len(KINDS)] = [astuple(row.evidence) for row in rows]
    x[np.arange(len(rows)), [1 + len(KINDS) + place[row.field] for row in rows]] = 1
    y = np.array([row.right for row in rows], float)
    weight = np.array(
        [
            (1.0 if row.engines == "both" else ALONE_WEIGHT) * (_typed_weight(row) if row.typed else 1.0)
            for row in rows
        ]
    )
    if standing:
        known = [standing.weights.get(kind) for kind in KINDS]
        told = [
            standing.start,
            *(one or 0.0 for one in known),
            *(standing.offsets.get(n, 0.0) for n in names),
        ]
        pull = [EVIDENCE_RIDGE if one is None else STANDING_RIDGE for one in known]
        ridge = np.array([STANDING_RIDGE, *pull, *[STANDING_RIDGE] * len(names)])
    else:
        told = [0.0] * (1 + len(KINDS) + len(names))
        ridge = np.array([1e-3] + [EVIDENCE_RIDGE] * len(KINDS) + [OFFSET_RIDGE] * len(names))
    found = _newton(x, y, weight, ridge, np.array(told))
    weights = dict(zip(KINDS, map(float, found[1:]), strict=False))
    offsets = dict(zip(names, map(float, found[1 + len(KINDS) :]), strict=True))
    return replace(before, start=float(found[0]), weights=weights, offsets=offsets)


def _typed_weight(row: Row) -> float:
    """A list of a typed tag is not weighed: one word more or less in its writer's opinion makes it wrong."""
    return 0.0 if row.field.removesuffix(PART) in LISTS else TYPED_WEIGHT


def _newton(x: Floats, y: Floats, weight: Floats, ridge: Floats, told: Floats) -> Floats:
    found = told.copy()
    for _ in range(30):
        chance = 1 / (1 + np.exp(-np.clip(x @ found, -30, 30)))
        slope = x.T @ (weight * (y - chance)) - ridge * (found - told)
        bend = (x * (weight * chance * (1 - chance))[:, None]).T @ x + np.diag(ridge)
        found = found + np.linalg.solve(bend, slope)
    return np.asarray(found, float)


def with_chance(rows: Sequence[Row], fit: Fit) -> list[Row]:
    return [replace(row, chance=fit.chance(row.field, row.evidence)) for row in rows]


def held_out(rows: Sequence[Row], before: Fit, standing: Fit | None) -> list[Row]:
    """The rows, each with the chance given by a fit that had not seen its tag."""
    folds = {tag: number % FOLDS for number, tag in enumerate(sorted({row.tag for row in rows}))}
    judged: list[Row] = []
    for fold in range(FOLDS):
        fit = fit_to([row for row in rows if folds[row.tag] != fold], before, standing)
        judged += with_chance([row for row in rows if folds[row.tag] == fold], fit)
    return judged


def whole(rows: Sequence[Row], typed: bool = False) -> list[Row]:
    """What a person is given of drawn tags, or of typed ones: readings of both engines, no items of lists."""
    both = (row for row in rows if row.engines == "both" and not row.field.endswith(PART))
    return [row for row in both if row.typed == typed]


def printed_on(tags: Sequence[Tag]) -> int:
    """How many values the tags print."""
    held = [value for truth, _ in tags for value in truth["fields"].values()]
    return sum(len(value) if isinstance(value, list) else 1 for value in held)


# ---------------------------------------------------------------- cuts and tables


def sure_from(rows: Sequence[Row]) -> float:
    """The lowest chance from which up few enough are wrong, half a value more allowed for."""
    ordered = sorted((row for row in rows if not row.doubted), key=lambda row: -row.chance)
    cut, wrong = 1.0, 0
    for number, row in enumerate(ordered, 1):
        wrong += not row.right
        if (wrong + 0.5) / number <= SURE_WRONG:
            cut = row.chance
    return cut


@dataclass(frozen=True)
class Floor:
    """What comes of leaving out values with a smaller chance. `cost`: a wrong value 10, a missing one 1."""

    shown: float
    right: int
    wrong: int
    f1: float
    cost: int


def floors(rows: Sequence[Row], printed: int) -> list[Floor]:
    found = []
    for shown in np.arange(0.2, 0.96, 0.05):
        given = Counter(row.right for row in rows if row.chance >= shown)
        right, wrong = given[True], given[False]
        f1 = 2 * right / (right + wrong + printed)
        found.append(Floor(round(float(shown), 2), right, wrong, f1, 10 * wrong + printed - right))
    return found


def reliability(rows: Sequence[Row]) -> Iterator[str]:
    """Of the values given with each chance, how many are right."""
    for low, high in pairwise(EDGES):
        inside = [row for row in rows if low <= row.chance < high]
        if inside:
            share = np.mean([row.right for row in inside])
            mean = np.mean([row.chance for row in inside])
            yield f"  {low:.2f} to {min(high, 1):.2f}: said {mean:.3f}, right {share:.3f} of {len(inside)}"


def written(fit: Fit, tags: int, readings: int, onward: bool) -> str:
    """The fit as TOML."""
    shares = [
        "# How the chance that a value is right follows from evidence: see ocr_tags/claims/confidence.py.",
        f"# Logistic regression over {readings} readings of {tags} drawn and typed tags, fitted on",
        f"# {date.today()} by samples/calibrate.py; `sure` by counts on drawn tags held out in five folds.",
        *(["# Drawn to an earlier fit, of other tags."] if onward else []),
        "# Under `shown` a value is left out: unreadable is absent.",
        f"start = {fit.start:.4f}",
        f"shown = {fit.shown:.4f}",
        f"named = {fit.named:.4f}",
        f"sure = {fit.sure:.4f}",
        "\n[weights]",
        *(f"{name} = {value:.4f}" for name, value in fit.weights.items()),
        "\n[offsets]",
        *(f'"{name}" = {value:.4f}' for name, value in fit.offsets.items()),
    ]
    return "\n".join(shares) + "\n"


def calibrated(tags: Sequence[Tag], before: Fit, standing: Fit | None) -> Fit:
    """Two rounds: which items make a list rests on the chance of each, so lists are fitted last."""
    fit = before
    for _ in range(3):
        fit = fit_to(rows(tags, fit), fit, standing)
        judged = whole(held_out(rows(tags, fit), fit, standing))
        fit = replace(fit, shown=SHOWN, named=NAMED, sure=sure_from(judged))
    return fit


def report(tags: Sequence[Tag], before: Fit, after: Fit, standing: Fit | None) -> Iterator[str]:
    yield "before, readings of both engines:"
    yield from reliability(whole(with_chance(rows(tags, before), before)))
    judged = held_out(rows(tags, after), after, standing)
    yield "after, on tags held out:"
    yield from reliability(whole(judged))
    for engine in ("tesseract", "rapidocr"):
        yield f"after, {engine} alone, on tags held out:"
        alone = [row for row in judged if row.engines == engine and not row.typed]
        yield from reliability([row for row in alone if not row.field.endswith(PART)])
    yield "floor   right  wrong     F1   cost (wrong 10, missing 1)"
    drawn = [(truth, stated) for truth, stated in tags if "photos" in truth]
    for floor in floors(whole(judged), printed_on(drawn)):
        yield f"  {floor.shown:.2f}  {floor.right:>6} {floor.wrong:>6}  {floor.f1:.3f}  {floor.cost}"
    yield f"shown from {after.shown:.3f}, sure from {after.sure:.3f}:"
    for kind, own in (("drawn", whole(judged)), ("typed", whole(judged, typed=True))):
        given = [row for row in own if row.chance >= after.least(row.field)]
        sure = [row for row in given if row.chance >= after.sure and not row.doubted]
        wrong = sum(not row.right for row in sure)
        look = 1 - len(sure) / max(len(given), 1)
        yield f"  {kind}: {len(given)} given, {len(sure)} sure, of them {wrong} wrong; {look:.1%} to look at"


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folders", nargs="+", type=Path)
    parser.add_argument("--kept", type=Path, help="folder that keeps what the engines read")
    parser.add_argument("--typed", type=Path, nargs="*", default=[], help="files of typed tags")
    parser.add_argument("--onward", action="store_true", help="start from the weights that stand")
    parser.add_argument("--dry", action="store_true", help="write nothing")
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    chosen = parser.parse_args()
    tags: list[Tag] = []
    with ProcessPoolExecutor(chosen.workers) as pool:
        for folder in chosen.folders:
            truths = [json.loads(line) for line in (folder / "truth.jsonl").read_text("utf-8").splitlines()]
            found = pool.map(partial(claims_on, folder, chosen.kept), truths)
            tags += zip(truths, found, strict=True)
        for file in chosen.typed:
            typed = typed_tags(file)
            tags += zip(typed, pool.map(claims_typed, typed), strict=True)
    before = fitted()
    standing = before if chosen.onward else None
    after = calibrated(tags, before, standing)
    print("\n".join(report(tags, before, after, standing)))
    if not chosen.dry:
        OUT.write_text(
            written(after, len(tags), len(whole(rows(tags, after))), chosen.onward), encoding="utf-8"
        )


if __name__ == "__main__":
    main()
