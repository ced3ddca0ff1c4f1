"""Fits what words tell of (ocr_tags/meaning/) to typed tags, and writes ocr_tags/data/meaning.crfsuite.

python samples/fit_meaning.py                     every file of samples/typed but those that judge
python samples/fit_meaning.py --held-out FILE     without that file: how many of its marks are found
"""

from __future__ import annotations

import argparse
import random
import tempfile
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import Any

import pycrfsuite
from typed import TYPED, Typed, laid_out, texts_of, typed_tags

from ocr_tags.meaning.features import Token, features
from ocr_tags.meaning.model import BEGINS, GOES_ON, NOTHING
from ocr_tags.record import Side, TagText

OUT = Path(__file__).parent.parent / "ocr_tags" / "data" / "meaning.crfsuite"
JUDGING = frozenset(["judging", "ordinary", "calibrating"])
"""Files that nothing is learnt from."""
SETTINGS = {"c1": 0.25, "c2": 0.02, "max_iterations": 80, "feature.minfreq": 3}
"""L1 and L2 penalties that found most marks of files held out; rarer features are dropped."""
WORN_LETTER, WORN_SPACE = 0.012, 0.02
"""Each tag is learnt from twice, clean and with these shares of letters misread and of spaces lost."""
_TAKEN_FOR = "l1I 1lI o0c 0O ec ce il S5 B8 nri mrn hb tf ao ., ,. O0"
LOOK_ALIKES = {each[0]: each[1:] for each in _TAKEN_FOR.split()}
"""Letters, and what readers take each for."""

Learnt = tuple[list[list[str]], list[str]]


def sequences(tag: Mapping[str, Any], dice: random.Random | None = None) -> Iterator[Learnt]:
    """What is seen of each token of a tag's texts, and its label; with dice, the letters are worn."""
    sides: tuple[Side, Side] = ("front", "back")
    for side in sides:
        if not tag.get(side):
            continue
        lines, height = laid_out(tag[side])
        if dice:
            lines = [list(_worn(line, dice)) for line in lines]
        held = {(word.box.x, word.box.y): word for line in lines for word in line}
        for text in texts_of(lines, height, side, ["typed"]):
            tokens, seen = features(text)
            yield seen, _labels(text, tokens, held)


def _worn(line: Sequence[Typed], dice: random.Random) -> Iterator[Typed]:
    before: Typed | None = None
    for word in line:
        letters = [
            dice.choice(LOOK_ALIKES.get(c, c)) if dice.random() < WORN_LETTER else c for c in word.text
        ]
        word = replace(word, text="".join(letters))
        if before and dice.random() < WORN_SPACE:
            before = Typed(before.text + word.text, before.box, before.marks + word.marks)
            continue
        if before:
            yield before
        before = word
    if before:
        yield before


def _labels(text: TagText, tokens: Sequence[Token], held: Mapping[tuple[int, int], Typed]) -> list[str]:
    marks: list[tuple[str, int] | None] = []
    spans = iter(text.words)
    span = next(spans)
    for token in tokens:
        while span.end <= token.start:
            span = next(spans)
        word = held[span.word.box.x, span.word.box.y]
        marks.append(word.marks[min(token.start - span.start, len(word.marks) - 1)])
    labels = []
    for before, mark in zip([None, *marks], marks, strict=False):
        labels.append(NOTHING if mark is None else (GOES_ON if mark == before else BEGINS) + mark[0])
    return labels


def files_to_learn(held_out: Sequence[Path] = ()) -> list[Path]:
    """The files of typed tags but those held out and those that judge."""
    kept_out = {file.resolve() for file in held_out}
    files = (file for file in sorted(TYPED.glob("*.jsonl")) if file.resolve() not in kept_out)
    return [file for file in files if file.stem not in JUDGING]


def fit(tags: Sequence[Mapping[str, Any]], out: Path) -> None:
    """Writes the model that best explains the marks of these tags."""
    trainer = pycrfsuite.Trainer(verbose=False)
    trainer.set_params(SETTINGS)
    dice = random.Random(1)
    for tag in tags:
        for seen, labels in chain(sequences(tag), sequences(tag, dice)):
            trainer.append(pycrfsuite.ItemSequence(seen), labels)
    trainer.train(str(out))


def marks_of(labels: Sequence[str]) -> set[tuple[str, int, int]]:
    """Marks as (fact, first token, token behind the last)."""
    found, begin = set(), 0
    for at, label in enumerate([*labels, NOTHING]):
        if at and labels[at - 1] != NOTHING and label[: len(GOES_ON)] != GOES_ON:
            found.add((labels[begin][len(BEGINS) :], begin, at))
        if label[: len(GOES_ON)] != GOES_ON:
            begin = at
    return found


def report(model: Path, tags: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    """By fact, how many marks are found as they are, how many are given, and how many there are."""
    tagger = pycrfsuite.Tagger()
    tagger.open(str(model))
    found, given, there = Counter[str](), Counter[str](), Counter[str]()
    for seen, labels in (each for tag in tags for each in sequences(tag)):
        told, true = marks_of(tagger.tag(pycrfsuite.ItemSequence(seen))), marks_of(labels)
        found.update(fact for fact, *_ in told & true)
        given.update(fact for fact, *_ in told)
        there.update(fact for fact, *_ in true)
    for fact, number in there.most_common():
        yield f"{fact:<18} {found[fact]:>4} right of {given[fact]:>4} given, {number:>4} there"
    share = found.total() / max(given.total(), 1), found.total() / max(there.total(), 1)
    yield f"together: {share[0]:.3f} of what is given, {share[1]:.3f} of what is there"


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument(
        "--held-out", type=Path, nargs="+", default=[], help="files to judge by, not learnt from"
    )
    parser.add_argument("--out", type=Path, default=OUT)
    chosen = parser.parse_args()
    files = files_to_learn(chosen.held_out)
    tags = [tag for file in files for tag in typed_tags(file)]
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "held_out" if chosen.held_out else chosen.out
        fit(tags, out)
        print(f"{len(tags)} tags of {len(files)} files, {out.stat().st_size / 1e6:.1f} MB")
        for file in chosen.held_out:
            print("\n".join(report(out, typed_tags(file))))


if __name__ == "__main__":
    main()
