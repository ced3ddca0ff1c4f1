from __future__ import annotations

import os
import time
from pathlib import Path

import fake_reading
import pytest

from ocr_tags.errors import PhotoError
from ocr_tags.workers import map_in_processes


def test_every_job_is_answered_once() -> None:
    answers = dict(map_in_processes(fake_reading.double, range(20), workers=3, timeout_seconds=60))
    assert answers == {number: 2 * number for number in range(20)}


def test_nothing_to_do() -> None:
    assert list(map_in_processes(fake_reading.double, [], workers=2, timeout_seconds=60)) == []


def test_a_fault_keeps_its_trace(tmp_path: Path) -> None:
    ((_, fault),) = map_in_processes(
        fake_reading.words_at, [tmp_path / "none"], workers=1, timeout_seconds=60
    )
    assert isinstance(fault, PhotoError) and "FileNotFoundError" in fault.message
    assert "words_at" in "".join(fault.__notes__)


def test_leaving_early_ends_the_processes(tmp_path: Path) -> None:
    answers = map_in_processes(fake_reading.own_process, range(50), workers=2, timeout_seconds=60)
    _, process = next(answers)
    assert isinstance(process, int)
    answers.close()
    for _ in range(100):
        try:
            os.kill(process, 0)
        except ProcessLookupError:
            return
        time.sleep(0.05)
    pytest.fail("the worker process lives on")
