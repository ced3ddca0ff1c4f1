"""Draws a sheet of what was read wrong or not at all: the piece of photo, what the tag says, what was read.

    python samples/failures.py FOLDER RECORDS OUT.png     RECORDS as `measure.py FOLDER --records` writes them

Pieces are grouped by field. Of a value that is missing no place is known: the whole side is shown instead.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw, ImageFont, ImageOps
from score import Verdict, judge

PIECE, CAPTION, GAP = (360, 150), 46, 14
COLUMNS = 4
ROOM = 0.6
"""Of the value's height and width, shown around it."""


def failures(
    truths: list[Mapping[str, Any]], records: list[Mapping[str, Any]]
) -> Iterator[tuple[Mapping[str, Any], Mapping[str, Any], Verdict]]:
    """Tag, record and verdict of everything wrong or missing; a wrong value in place of another once."""
    for truth, record in zip(truths, records, strict=True):
        verdicts = list(judge(truth, record))
        wrong = {verdict.field for verdict in verdicts if verdict.outcome == "wrong"}
        for verdict in verdicts:
            if verdict.outcome == "wrong" or (verdict.outcome == "missing" and verdict.field not in wrong):
                yield truth, record, verdict


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


def sheet(folder: Path, found: list[tuple[Mapping[str, Any], Mapping[str, Any], Verdict]]) -> Image.Image:
    font = ImageFont.load_default(13)
    wide, high = PIECE[0] + GAP, PIECE[1] + CAPTION + GAP
    rows = -(-len(found) // COLUMNS)
    drawn = Image.new("RGB", (COLUMNS * wide + GAP, max(rows, 1) * high + GAP), "white")
    pen = ImageDraw.Draw(drawn)
    for number, (truth, record, verdict) in enumerate(found):
        left, top = GAP + number % COLUMNS * wide, GAP + number // COLUMNS * high
        drawn.paste(piece(folder, truth, record, verdict), (left, top))
        lines = (
            f"{verdict.tag}  {verdict.field}: {verdict.outcome}",
            f"tag: {_short(verdict.truth)}",
            f"read: {_short(verdict.got)}",
        )
        for line, text in enumerate(lines):
            pen.text((left, top + PIECE[1] + 15 * line), text, fill="black", font=font)
    return drawn


def _short(value: Any) -> str:
    if isinstance(value, Mapping):
        value = value.get("name") or value.get("text") or " ".join(str(v) for v in value.values())
    return str(value)[:54]


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
