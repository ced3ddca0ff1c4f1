"""Asking, and counting what comes first and what it costs."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from statistics import median, quantiles

from index.benchmark.questions import Asked
from index.benchmark.tags import Tag

Search = Callable[[str], tuple[list[Tag], bool]]
"""From a question to the tags found, the best first, and whether they are said to be what was asked for."""


@dataclass(frozen=True, slots=True)
class Measured:
    """`refused`: how often it was said that nothing is called so. Times are CPU milliseconds."""

    asked: int
    first: int
    in_ten: int
    refused: int
    milliseconds: tuple[float, ...]

    @property
    def p95(self) -> float:
        return quantiles(self.milliseconds, n=20)[-1] if len(self.milliseconds) > 1 else self.milliseconds[0]

    @property
    def median(self) -> float:
        return median(self.milliseconds)

    def share(self, count: int) -> float:
        return 100 * count / self.asked


def measure(search: Search, questions: Iterable[Asked]) -> Measured:
    first = in_ten = refused = 0
    times = []
    for asked in questions:
        start = time.process_time()
        tags, good = search(asked.text)
        times.append(1000 * (time.process_time() - start))
        right = [asked.is_answered_by(tag) for tag in tags[:10]]
        first += right[:1] == [True]
        in_ten += any(right)
        refused += not good
    return Measured(len(times), first, in_ten, refused, tuple(times))


def together(parts: Iterable[Measured]) -> Measured:
    every = list(parts)
    return Measured(
        sum(part.asked for part in every),
        sum(part.first for part in every),
        sum(part.in_ten for part in every),
        sum(part.refused for part in every),
        tuple(took for part in every for took in part.milliseconds),
    )
