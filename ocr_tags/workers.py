"""Photos read side by side in processes of their own, so that a crash or a hang costs one photo.

The standard pool gives up all work when one of its processes dies and cannot say on which photo; here
every process has one photo at a time, so the one that was being read is known.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import signal
import time
from collections.abc import Callable, Generator, Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Any, Generic, TypeVar

from ocr_tags.errors import PhotoError, TagError

Job = TypeVar("Job")
Result = TypeVar("Result")

ONE_THREAD = ("OPENCV_FOR_THREADS_NUM", "OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "OMP_THREAD_LIMIT")
"""What tells the libraries, before a process loads them, not to start threads of their own: one process for
each core is all the cores there are."""


@dataclass
class _Worker(Generic[Job]):
    process: BaseProcess
    line: Connection
    number: int = -1
    """Which job it has; -1 when idle."""
    since: float = field(default=0.0)


def map_in_processes(
    work: Callable[[Job], Result],
    jobs: Sequence[Job],
    *,
    workers: int,
    timeout_seconds: float,
    name_of: Callable[[Job], str] = str,
) -> Generator[tuple[int, Result | TagError]]:
    """`work(job)` for every job: (its number, its result or error), in the order they are done.

    A job whose process dies or takes too long gives a PhotoError; whatever else `work` raises that is
    no TagError is our fault and is given as a PhotoError naming it. `work` and jobs must be picklable.
    """
    context = multiprocessing.get_context("spawn")  # forking a process that runs OpenCV threads may hang
    waiting = list(enumerate(jobs))[::-1]
    team: list[_Worker[Job]] = []
    try:
        while waiting or any(worker.number >= 0 for worker in team):
            while waiting and len(team) < workers:
                team.append(_start(context, work))
            for worker in team:
                if worker.number < 0 and waiting:
                    _give(worker, *waiting.pop())
            for worker in _ready(team, timeout_seconds):
                number = worker.number
                outcome = _outcome(worker, name_of(jobs[number]), timeout_seconds)
                if worker.number >= 0:  # it is gone, and another takes its place
                    _stop(worker)
                    team.remove(worker)
                yield number, outcome
    finally:
        for worker in team:
            _stop(worker)


def _start(context: multiprocessing.context.SpawnContext, work: Callable[[Job], Any]) -> _Worker[Job]:
    for name in ONE_THREAD:
        os.environ.setdefault(name, "1")
    ours, theirs = context.Pipe()
    process = context.Process(target=_serve, args=(theirs, work), daemon=True)
    process.start()
    theirs.close()
    return _Worker(process, ours)


def _serve(line: Connection, work: Callable[[Any], Any]) -> None:
    """What runs in the process: job in, result out, until the other end is closed."""
    if hasattr(os, "setsid"):  # out of reach of Ctrl-C, and ended together with the programs it starts
        os.setsid()
    while True:
        try:
            job = line.recv()
        except EOFError:
            return
        try:
            line.send(work(job))
        except TagError as error:
            line.send(error)
        except Exception as error:
            import traceback

            line.send(_Fault(f"{type(error).__name__}: {error}", traceback.format_exc()))


@dataclass(frozen=True)
class _Fault:
    words: str
    trace: str


def _give(worker: _Worker[Job], number: int, job: Job) -> None:
    worker.number, worker.since = number, time.monotonic()
    with contextlib.suppress(OSError):  # it died while idle or starting: its end will be the answer
        worker.line.send(job)


def _ready(team: Sequence[_Worker[Job]], timeout_seconds: float) -> list[_Worker[Job]]:
    """The workers that have answered, died, or run out of time."""
    busy = [worker for worker in team if worker.number >= 0]
    left = min(worker.since for worker in busy) + timeout_seconds - time.monotonic()
    heard = wait([worker.line for worker in busy], timeout=max(left, 0.0))
    late = time.monotonic() - timeout_seconds
    return [worker for worker in busy if worker.line in heard or worker.since <= late]


def _outcome(worker: _Worker[Job], name: str, timeout_seconds: float) -> Any:
    """What became of the worker's job. `worker.number` becomes -1 when the worker can go on."""
    if not worker.line.poll():
        return PhotoError(f"{name} was given up after {timeout_seconds:.0f} s.", "Raise timeout_seconds.")
    try:
        answer = worker.line.recv()
    except (EOFError, OSError):
        worker.process.join(5)
        return PhotoError(f"{name}: the reader broke down on it (exit {worker.process.exitcode}).")
    worker.number = -1
    if isinstance(answer, _Fault):
        fault = PhotoError(f"{name}: a fault of ours while reading it ({answer.words}).", "Try --debug.")
        fault.add_note(answer.trace)
        return fault
    return answer


def _stop(worker: _Worker[Job]) -> None:
    worker.line.close()
    if worker.number < 0:
        worker.process.join(2)
    if worker.process.is_alive() and worker.process.pid:
        with contextlib.suppress(AttributeError, ProcessLookupError, PermissionError):
            os.killpg(worker.process.pid, signal.SIGKILL)
        worker.process.kill()
    worker.process.join()
