"""How well tags are read: precision, recall, F1, wrong values, names found, time; plain readers beside.

    python samples/measure.py FOLDER [FOLDER …]         folders made by a draw.py here, with their truth
    python samples/measure.py FOLDER --ways all         each reader alone and plain readers in the same run
    python samples/measure.py FOLDER --errors           each wrong and missing value
    python samples/measure.py FOLDER --calibration      how often values of each confidence are right

A plain reader reads the same photos once each, as they are, and the same field readers get its text: the
difference is what finding, cleaning and voting win. Plain RapidOCR runs as its makers set it up, on one
thread. Every process reads one tag before it is timed: what it loads once is no price of a tag.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from functools import cache, partial
from pathlib import Path
from typing import Any

from ocr_tags.workers import ONE_THREAD

os.environ.update(dict.fromkeys(ONE_THREAD, "1"))

import cv2
import numpy as np
from score import Tally, Verdict, judge, name_found

Look = Callable[[Any, Any], Any]


def plain_tesseract(pictures: Any, engines: Any) -> Any:
    """What Tesseract reads when it gets the photos as they are."""
    grey = [cv2.cvtColor(pixels, cv2.COLOR_BGR2GRAY) for pixels in pictures]
    return list(map(_plain, pictures, engines[0].read(grey, "page")))


def plain_rapidocr(pictures: Any, engines: Any) -> Any:
    """What RapidOCR reads when it gets the photos as they are, with its own settings."""
    return [_plain(pixels, _plain_rapidocr(pixels)) for pixels in pictures]


def _plain_rapidocr(pixels: Any) -> Any:
    from ocr_tags.engines.rapidocr import whole_word

    found = _plain_models()(pixels, return_word_box=True)
    lines = [] if found.boxes is None else found.word_results
    return [[whole_word(*word) for word in line] for line in lines]


@cache
def _plain_models() -> Any:
    from rapidocr import RapidOCR

    threads = ("intra_op_num_threads", "inter_op_num_threads")
    one = {f"EngineConfig.onnxruntime.{name}": 1 for name in threads}
    return RapidOCR(params={"Global.log_level": "critical", **one})


def _plain(pixels: Any, lines: Any) -> Any:
    from ocr_tags.pictures.cleaning import Straightened
    from ocr_tags.reading import PictureRead, on_photo

    whole = Straightened(pixels, np.eye(3), (), 0.0)
    limits = (pixels.shape[1], pixels.shape[0])
    return PictureRead(whole, 0, {"plain": on_photo(lines, "plain", whole, limits)})


OURS = "both readers"
WAYS: dict[str, tuple[str, Look | None]] = {
    OURS: ("auto", None),
    "tesseract alone": ("tesseract", None),
    "rapidocr alone": ("rapidocr", None),
    "plain tesseract": ("tesseract", plain_tesseract),
    "plain rapidocr": ("tesseract", plain_rapidocr),
}
"""How tags are read: the `--reader` setting, and what looks at a photo instead of the program's own way."""


def read_one(folder: Path, way: str, truth: Mapping[str, Any]) -> tuple[dict[str, Any] | None, float, int]:
    """One tag's record as JSON, the processor seconds it took, and this process's most kilobytes so far."""
    from ocr_tags.pictures.photos import open_photo
    from ocr_tags.pipeline import make_record, read_sides
    from ocr_tags.reading import read_pictures
    from ocr_tags.record_json import to_json
    from ocr_tags.settings import Settings

    cv2.setNumThreads(1)
    reader, look = WAYS[way]
    settings = replace(Settings(), reader=reader)
    start = _cpu()
    fronts, backs = (
        [open_photo(folder / photo["file"]) for photo in truth["photos"] if photo["side"] == side]
        for side in ("front", "back")
    )
    record = make_record(*read_sides(fronts, backs, settings, look or read_pictures))
    return to_json(record), _cpu() - start, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


def _cpu() -> float:
    return sum(
        usage.ru_utime + usage.ru_stime
        for usage in (resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN))
    )


@dataclass(frozen=True)
class Measured:
    """One way of reading over one folder: verdicts, tags whose name was found, tags, seconds, megabytes."""

    verdicts: list[Verdict]
    named: int
    tags: int
    cpu: float
    memory: float
    records: list[Any]


def measure(folder: Path, way: str, workers: int) -> Measured:
    truths = [json.loads(line) for line in (folder / "truth.jsonl").read_text("utf-8").splitlines()]
    with ProcessPoolExecutor(workers, initializer=read_one, initargs=(folder, way, truths[0])) as pool:
        results = list(pool.map(partial(read_one, folder, way), truths))
    pairs = [(truth, result[0]) for truth, result in zip(truths, results, strict=True)]
    return Measured(
        verdicts=[verdict for truth, record in pairs for verdict in judge(truth, record)],
        named=sum(name_found(truth, record) for truth, record in pairs),
        tags=len(pairs),
        cpu=sum(cpu for _, cpu, _ in results),
        memory=max(kilobytes for _, _, kilobytes in results) / 1024,
        records=[record for _, record in pairs],
    )


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


def levels(found: Measured) -> str:
    """How many of the values given as sure are wrong, and what share people are sent to look at."""
    from ocr_tags.claims.confidence import is_sure

    given = [
        entry
        for record in found.records
        for entries in record["fields"].values()
        for entry in (entries if isinstance(entries, list) else [entries])
    ]
    looked_at = sum(not is_sure(entry["status"], entry["confidence"]) for entry in given)
    sure = [v.outcome for v in found.verdicts if v.status and is_sure(v.status, v.confidence or 0.0)]
    wrong = sure.count("wrong")
    share = 100 * wrong / max(len(sure), 1)
    look = 100 * looked_at / max(len(given), 1)
    return f"sure: {wrong} of {len(sure)} wrong ({share:.1f} %), to look at {look:.1f} %"


def errors(verdicts: list[Verdict]) -> Iterator[str]:
    for v in verdicts:
        if v.outcome != "right":
            yield f"  {v.outcome:<8}{v.tag:<20}{v.field:<17}tag: {v.truth!r}  read: {v.got!r}  {v.confidence}"


def report(folder: Path, way: str, chosen: argparse.Namespace) -> Iterator[str]:
    found = measure(folder, way, chosen.workers)
    total = by_field(found.verdicts)["all fields"]
    yield (
        f"{folder.name}, {way}: {found.tags} tags, F1 {total.f1:.3f}, wrong {100 * total.wrong_share:.1f} %, "
        f"names {100 * found.named / found.tags:.1f} %, {found.cpu / found.tags:.2f} s CPU a tag, "
        f"{found.memory:.0f} MB at most; {levels(found)}"
    )
    if way != chosen.ways[0]:
        return
    yield from table(by_field(found.verdicts)) if chosen.fields else ()
    yield from calibration(found.verdicts) if chosen.calibration else ()
    yield from errors(found.verdicts) if chosen.errors else ()
    if chosen.records:
        lines = [json.dumps(record, ensure_ascii=False) + "\n" for record in found.records]
        chosen.records.write_text("".join(lines), encoding="utf-8")


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folders", nargs="+", type=Path)
    parser.add_argument("--ways", nargs="+", choices=[*WAYS, "all"], default=[OURS], help="how to read")
    parser.add_argument("--fields", action="store_true", help="a table by field")
    parser.add_argument("--errors", action="store_true", help="each wrong and missing value")
    parser.add_argument("--calibration", action="store_true", help="share right by confidence")
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--records", type=Path, help="write the records of the first way here, one a line")
    chosen = parser.parse_args()
    if "all" in chosen.ways:
        chosen.ways = list(WAYS)
    for folder in chosen.folders:
        for way in chosen.ways:
            print("\n".join(report(folder, way, chosen)), flush=True)


if __name__ == "__main__":
    main()
