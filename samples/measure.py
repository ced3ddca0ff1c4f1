"""How well tags are read: precision, recall, F1, wrong values, names found, time; plain Tesseract beside.

    python samples/measure.py FOLDER [FOLDER …]         folders made by samples/draw.py, with their truth
    python samples/measure.py FOLDER --errors           each wrong and missing value
    python samples/measure.py FOLDER --calibration      how often values of each confidence are right

Plain Tesseract reads the same photos in the same run, once each, as they are, and the same field
readers get its text: the difference is what finding, cleaning and voting win.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from typing import Any

import cv2
import numpy as np
from score import Tally, Verdict, judge, name_found

os.environ.setdefault("OMP_THREAD_LIMIT", "1")

Look = Callable[[Any, Any], Any]
OURS, PLAIN = "ocr-tags", "plain Tesseract"


def plain(pixels: Any, engine: Any) -> Any:
    """What the engine reads when it gets the photo as it is."""
    from ocr_tags.cleaning import Straightened
    from ocr_tags.reading import PictureRead, on_photo

    whole = Straightened(pixels, np.eye(3), (), 0.0)
    lines = engine.read([cv2.cvtColor(pixels, cv2.COLOR_BGR2GRAY)], "page")[0]
    limits = (pixels.shape[1], pixels.shape[0])
    return PictureRead(whole, 0, {"plain": on_photo(lines, "plain", whole, limits)})


def read_one(folder: Path, way: str, truth: Mapping[str, Any]) -> tuple[dict[str, Any] | None, float]:
    """One tag's record as JSON, and the processor seconds it took, Tesseract's included."""
    from ocr_tags.photos import open_photo
    from ocr_tags.pipeline import make_record, read_side
    from ocr_tags.reading import read_picture
    from ocr_tags.record_json import to_json
    from ocr_tags.settings import Settings

    cv2.setNumThreads(1)
    look: Look = plain if way == PLAIN else read_picture
    start = _cpu()
    sides = {
        photo["side"]: read_side(open_photo(folder / photo["file"]), Settings(), photo["side"], look)
        for photo in truth["photos"]
    }
    record = make_record(sides.get("front"), sides.get("back"))
    return to_json(record), _cpu() - start


def _cpu() -> float:
    return sum(
        usage.ru_utime + usage.ru_stime
        for usage in (resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN))
    )


def measure(folder: Path, way: str, workers: int) -> tuple[list[Verdict], int, int, float, list[Any]]:
    """Verdicts on all values, tags whose name was found, tags, CPU seconds, and the records."""
    truths = [json.loads(line) for line in (folder / "truth.jsonl").read_text("utf-8").splitlines()]
    with ProcessPoolExecutor(workers) as pool:
        results = list(pool.map(partial(read_one, folder, way), truths))
    verdicts = [v for truth, (record, _) in zip(truths, results, strict=True) for v in judge(truth, record)]
    found = sum(name_found(truth, record) for truth, (record, _) in zip(truths, results, strict=True))
    return verdicts, found, len(truths), sum(cpu for _, cpu in results), [record for record, _ in results]


def by_field(verdicts: list[Verdict]) -> dict[str, Tally]:
    tallies: dict[str, Tally] = defaultdict(Tally)
    for verdict in verdicts:
        tallies[verdict.field].add(verdict)
        tallies["all fields"].add(verdict)
    return tallies


def table(tallies: Mapping[str, Tally]) -> Iterator[str]:
    yield f"  {'field':<18}{'right':>6}{'wrong':>6}{'miss':>6}{'prec':>8}{'recall':>8}{'F1':>8}{'wrong %':>9}"
    for name in sorted(tallies, key=lambda name: (name == "all fields", name)):
        t = tallies[name]
        yield (
            f"  {name:<18}{t.right:>6}{t.wrong:>6}{t.missing:>6}"
            f"{t.precision:>8.3f}{t.recall:>8.3f}{t.f1:>8.3f}{100 * t.wrong_share:>9.1f}"
        )


def calibration(verdicts: list[Verdict]) -> Iterator[str]:
    """Of the values given with each confidence, how many are right."""
    bins: dict[int, list[bool]] = defaultdict(list)
    for verdict in verdicts:
        if verdict.confidence is not None:
            bins[int(verdict.confidence * 20)].append(verdict.outcome == "right")
    for step in sorted(bins):
        right = bins[step]
        share = sum(right) / len(right)
        yield f"  {step / 20:.2f} to {step / 20 + 0.05:.2f}: {sum(right)} of {len(right)} right ({share:.3f})"


def errors(verdicts: list[Verdict]) -> Iterator[str]:
    for v in verdicts:
        if v.outcome != "right":
            yield f"  {v.outcome:<8}{v.tag:<20}{v.field:<17}tag: {v.truth!r}  read: {v.got!r}  {v.confidence}"


def report(folder: Path, way: str, chosen: argparse.Namespace) -> Iterator[str]:
    verdicts, found, tags, cpu, records = measure(folder, way, chosen.workers)
    yield f"{folder}, {way}: {tags} tags, names found on {found} ({100 * found / tags:.1f} %),"
    yield f"  {1000 * cpu / tags:.0f} ms processor time a tag"
    yield from table(by_field(verdicts))
    if way == OURS:
        yield from calibration(verdicts) if chosen.calibration else ()
        yield from errors(verdicts) if chosen.errors else ()
        if chosen.records:
            lines = [json.dumps(record, ensure_ascii=False) + "\n" for record in records]
            chosen.records.write_text("".join(lines), encoding="utf-8")


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folders", nargs="+", type=Path)
    parser.add_argument("--errors", action="store_true", help="each wrong and missing value")
    parser.add_argument("--calibration", action="store_true", help="share right by confidence")
    parser.add_argument("--without-plain", action="store_true", help="leave plain Tesseract out")
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--records", type=Path, help="write the records of ocr-tags here, one a line")
    chosen = parser.parse_args()
    for folder in chosen.folders:
        for way in (OURS,) if chosen.without_plain else (OURS, PLAIN):
            print("\n".join(report(folder, way, chosen)), flush=True)


if __name__ == "__main__":
    main()
