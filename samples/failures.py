"""Draws a sheet of what was read wrong or not at all: the piece of photo, what the tag says, what was read.

    python samples/failures.py FOLDER RECORDS OUT.png     RECORDS as `measure.py FOLDER --records` writes them

Pieces are grouped by kind of failure, then by field. Of a value that is missing no place is known: the whole
side is shown instead.
"""

from __future__ import annotations

import argparse
import json
import unicodedata
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw, ImageFont, ImageOps
from rapidfuzz import fuzz
from score import Verdict, judge

Failure = tuple[Mapping[str, Any], Mapping[str, Any], Verdict]
"""Truth of the tag, its record, and what is wrong or missing."""
KINDS = ("letters misread", "phrase cut short or run on", "taken for something else", "not given")
MISREAD = 70
"""In hundredths: what shares more letters with the print is the print misread."""

PIECE, CAPTION, GAP, HEADING = (360, 150), 46, 14, 44
COLUMNS = 4
ROOM = 0.6
"""Of the value's height and width, shown around it."""


def failures(truths: list[Mapping[str, Any]], records: list[Mapping[str, Any]]) -> Iterator[Failure]:
    """Tag, record and verdict of everything wrong or missing; a wrong value in place of another once."""
    for truth, record in zip(truths, records, strict=True):
        verdicts = list(judge(truth, record))
        wrong = {verdict.field for verdict in verdicts if verdict.outcome == "wrong"}
        for verdict in verdicts:
            if verdict.outcome == "wrong" or (verdict.outcome == "missing" and verdict.field not in wrong):
                yield truth, record, verdict


def kind_of(verdict: Verdict) -> str:
    """Which of `KINDS` a failure is, by the words printed and read."""
    if verdict.outcome == "missing" and verdict.got is None:
        return KINDS[3]
    printed, read = _words(verdict.truth), _words(verdict.got)
    if printed and set(printed.split()) ^ set(read.split()) and (printed in read or read in printed):
        return KINDS[1]
    return KINDS[0] if fuzz.ratio(printed, read) >= MISREAD else KINDS[2]


def _words(value: Any) -> str:
    if isinstance(value, Mapping):
        value = value.get("name") or value.get("text") or [v for v in value.values() if v]
    return " ".join(str(one) for one in value) if isinstance(value, list) else str(value or "")


def _plain(value: Any) -> str:
    """The words without accents, which the caption's font has not."""
    return unicodedata.normalize("NFKD", _words(value)).encode("ascii", "ignore").decode()[:54]


def piece(folder: Path, truth: Mapping[str, Any], record: Mapping[str, Any], verdict: Verdict) -> Image.Image:
    """The place a wrong value was read at, or the side on which a missing one is printed."""
    entries = record["fields"].get(verdict.field, []) if verdict.outcome == "wrong" else []
    entries = entries if isinstance(entries, list) else [entries]
    entry = next((e for e in entries if e["value"] == verdict.got and e.get("box")), None)
    printed = truth["fields"].get(verdict.field, {})
    printed = printed[0] if isinstance(printed, list) else printed
    side = entry["side"] if entry else (printed.get("sides") or [truth["photos"][0]["side"]])[0]
    file = next((p["file"] for p in truth["photos"] if p["side"] == side), truth["photos"][0]["file"])
    with Image.open(folder / file) as opened:
        photo = ImageOps.exif_transpose(opened).convert("RGB")
    if entry:
        x, y, w, h = entry["box"]
        room = ROOM * max(w, 2 * h)
        photo = photo.crop((int(x - room), int(y - room), int(x + w + room), int(y + h + room)))
    return ImageOps.contain(photo, PIECE)


def sheet(folder: Path, found: list[Failure]) -> Image.Image:
    """All pieces, kind by kind under its heading."""
    parts = [_group(folder, kind, [one for one in found if kind_of(one[2]) == kind]) for kind in KINDS]
    parts = [part for part in parts if part]
    drawn = Image.new("RGB", (COLUMNS * (PIECE[0] + GAP) + GAP, sum(part.height for part in parts)), "white")
    top = 0
    for part in parts:
        drawn.paste(part, (0, top))
        top += part.height
    return drawn


def _group(folder: Path, kind: str, found: list[Failure]) -> Image.Image | None:
    if not found:
        return None
    font, large = ImageFont.load_default(13), ImageFont.load_default(22)
    wide, high = PIECE[0] + GAP, PIECE[1] + CAPTION + GAP
    drawn = Image.new("RGB", (COLUMNS * wide + GAP, HEADING + -(-len(found) // COLUMNS) * high), "white")
    pen = ImageDraw.Draw(drawn)
    pen.text((GAP, 8), f"{kind}: {len(found)}", fill="black", font=large)
    for number, (truth, record, verdict) in enumerate(found):
        left, top = GAP + number % COLUMNS * wide, HEADING + number // COLUMNS * high
        drawn.paste(piece(folder, truth, record, verdict), (left, top))
        lines = (
            f"{verdict.tag}  {verdict.field}",
            f"tag: {_plain(verdict.truth)}",
            f"read: {_plain(verdict.got)}",
        )
        for line, text in enumerate(lines):
            pen.text((left, top + PIECE[1] + 15 * line), text, fill="black", font=font)
    return drawn


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folder", type=Path)
    parser.add_argument("records", type=Path)
    parser.add_argument("out", type=Path)
    chosen = parser.parse_args()
    lines = (chosen.folder / "truth.jsonl").read_text("utf-8").splitlines()
    records = [json.loads(line) for line in chosen.records.read_text("utf-8").splitlines()]
    found = sorted(
        failures([json.loads(line) for line in lines], records),
        key=lambda failure: (failure[2].field, failure[2].outcome, failure[2].tag),
    )
    sheet(chosen.folder, found).save(chosen.out)
    print(f"{len(found)} pieces in {chosen.out}")


if __name__ == "__main__":
    main()
