"""Builds catalogues of invented tags, asks them in the ways people ask, and prints how that went.

All is drawn from a seed. Times are CPU time of this process; a first round of other questions warms it up.
Peers search the same names in the same run, with fewer questions of each kind, for they are slow.
"""

from __future__ import annotations

import argparse
import json
import random
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from index.benchmark.measuring import Measured, Search, measure, together
from index.benchmark.peers import Ask, plain_scan, texts_of, trigrams
from index.benchmark.questions import KINDS, Asked, absent
from index.benchmark.tags import Tag, all_plants, build_tags
from index.catalogue import Catalogue
from index.store import Store
from ocr_tags.names.lexicon import plants
from ocr_tags.record_json import to_json

_UNSOLD = 5
_PEER_QUESTIONS = 40
_SHELL_RUNS = 5


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m index.benchmark", description=__doc__)
    parser.add_argument("--records", type=int, nargs="+", default=[1000, 10000])
    parser.add_argument("--queries", type=int, default=200, help="questions of each kind")
    parser.add_argument("--seed", type=int, default=7)
    parser.add_argument("--no-peers", action="store_true", help="leave the other ways of searching out")
    parser.add_argument("--folder", type=Path, help="keep the catalogues here, and use those that are there")
    chosen = parser.parse_args()
    for records in chosen.records:
        with tempfile.TemporaryDirectory() as passing:
            folder = (chosen.folder or Path(passing)) / f"{records} tags, seed {chosen.seed}"
            for line in report(folder, records, chosen.queries, chosen.seed, peers=not chosen.no_peers):
                print(line, flush=True)


def report(folder: Path, records: int, queries: int, seed: int, *, peers: bool) -> Iterator[str]:
    dice = random.Random(seed)
    known = all_plants()
    dice.shuffle(known)
    traded = {plant.name for plant in plants()}
    unsold = [plant for plant in known[: len(known) // _UNSOLD] if plant.name not in traded]
    sold = [*known[len(known) // _UNSOLD :], *plants() * 5]
    tags = build_tags(records, dice, sold)
    yield f"\n{records} tags, seed {seed}, {queries} questions of each kind"
    _keep(folder, tags)
    with Catalogue.open(folder) as catalogue:
        yield from _built(catalogue, tags)
        asked = _questions(tags, queries, dice)
        search = _ours(catalogue, tags)
        measure(search, [question for kind in _questions(tags, 10, dice).values() for question in kind])
        yield from _table("this index", {kind: measure(search, each) for kind, each in asked.items()})
        for title, texts in absent(unsold, sold, dice, queries).items():
            yield _absent_row(title, measure(search, [_unanswered(text) for text in texts]))
        yield f"from the shell: {_from_the_shell(folder):.2f} s CPU for one 'ocr-tags find'"
    if peers:
        texts = texts_of(tags)
        for name, ask in (("rapidfuzz over all", plain_scan(texts)), ("FTS5 trigrams", trigrams(texts))):
            yield from _table(
                name,
                {kind: measure(_peer(ask, tags), each[:_PEER_QUESTIONS]) for kind, each in asked.items()},
            )


def _keep(folder: Path, tags: list[Tag]) -> None:
    """All records in one transaction, unless they are there from an earlier run."""
    folder.mkdir(parents=True, exist_ok=True)
    store = Store(folder / "catalogue.sqlite", 10)
    if store.count() != len(tags):
        with store.transaction():
            for tag in tags:
                store.put(tag.record.tag_id, json.dumps(to_json(tag.record), ensure_ascii=False), {})
    store.close()


def _built(catalogue: Catalogue, tags: list[Tag]) -> Iterator[str]:
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    start = time.process_time()
    catalogue.rebuild()
    took = time.process_time() - start
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    size = sum(path.stat().st_size for path in (catalogue.path / "search").rglob("*") if path.is_file())
    yield (
        f"index built in {took:.1f} s CPU, {len(tags) / took:.0f} tags a second; {size / 1e6:.0f} MB on disk;"
        f" peak memory {peak} MB, of which {before} MB before building"
    )


def _questions(tags: list[Tag], count: int, dice: random.Random) -> dict[str, list[Asked]]:
    """Of well read tags in every way, and of misread ones as a person who knows the plant asks."""
    clean = [tag for tag in tags if not tag.misread]
    misread = [tag for tag in tags if tag.misread]
    asked = {
        kind: [ask(tag, dice) for tag in dice.sample(clean, min(count, len(clean)))]
        for kind, ask in KINDS.items()
    }
    for kind in ("exact", "one typo"):
        chosen = dice.sample(misread, min(count, len(misread)))
        asked[f"{kind}, the tag misread"] = [KINDS[kind](tag, dice) for tag in chosen]
    return asked


def _ours(catalogue: Catalogue, tags: list[Tag]) -> Search:
    truth = {tag.record.tag_id: tag for tag in tags}

    def search(text: str) -> tuple[list[Tag], bool]:
        found = catalogue.search(text, limit=10)
        return [truth[hit.tag_id] for hit in found.hits], found.good

    return search


def _peer(ask: Ask, tags: list[Tag]) -> Search:
    return lambda text: ([tags[place] for place in ask(text)], True)


def _unanswered(text: str) -> Asked:
    return Asked(text, lambda tag: False, lambda cultivar: False)


def _from_the_shell(folder: Path) -> float:
    """CPU seconds of a whole process, the least of a few runs."""
    took = []
    for name in ("lavender", "lavander", "purple coneflower", "coreopsis", "hydranga")[:_SHELL_RUNS]:
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        command = [sys.executable, "-m", "ocr_tags", "--catalogue", str(folder), "find", name]
        subprocess.run(command, capture_output=True, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        took.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return sorted(took)[len(took) // 2]


def _table(title: str, measured: dict[str, Measured]) -> Iterator[str]:
    yield f"{title:<28}{'asked':>7}{'first':>8}{'in ten':>8}{'refused':>8}{'median ms':>11}{'p95 ms':>8}"
    for kind, done in {**measured, "all": together(measured.values())}.items():
        shares = (
            f"{done.share(done.first):>8.1f}{done.share(done.in_ten):>8.1f}{done.share(done.refused):>9.1f}"
        )
        yield f"  {kind:<26}{done.asked:>7}{shares}{done.median:>11.1f}{done.p95:>8.1f}"


def _absent_row(title: str, done: Measured) -> str:
    refused = done.share(done.refused)
    return f"  absent: {title:<26}{done.asked:>5} asked, {refused:>5.1f} % refused{done.p95:>22.1f}"


if __name__ == "__main__":
    main()
