"""The index while others write, and when a program is killed in the middle: real processes, really killed."""

import multiprocessing
import os
import runpy
import signal
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from whoosh.index import open_dir

from index import Catalogue, generation
from ocr_tags.errors import CatalogueError, ExitCode

_tags = runpy.run_path(str(Path(__file__).parent / "data" / "index_tags.py"))
make_tag = _tags["make_tag"]
fork = multiprocessing.get_context("fork")
COUNT = 12


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    path = tmp_path / "catalogue"
    with Catalogue.open(path) as catalogue:
        catalogue.add_many(make_tag(tmp_path, f"f{n}", common=f"Plant{n:03}") for n in range(COUNT))
    return path


def current(folder: Path) -> str:
    return (folder / "search" / "current").read_text()


def is_there(catalogue: Catalogue, number: int) -> bool:
    hits = catalogue.find(f"plant{number:03}", limit=1)
    return bool(hits) and hits[0].record.readings["common_names"][0].value == f"Plant{number:03}"


def found_all(catalogue: Catalogue, count: int) -> bool:
    return all(is_there(catalogue, number) for number in range(count))


def killed_at(work: Callable[[Callable[[], None]], None]) -> None:
    """Run in a child until it tells where it is; then kill it there."""
    told, tell = fork.Pipe(duplex=False)

    def here() -> None:
        tell.send("here")
        time.sleep(600)

    child = fork.Process(target=work, args=(here,))
    child.start()
    assert told.poll(60), "the child never came so far"
    os.kill(child.pid, signal.SIGKILL)
    child.join()


def test_killed_in_the_middle_of_a_rebuild_the_old_index_answers(folder: Path) -> None:
    before = current(folder)

    def work(here: Callable[[], None]) -> None:
        with Catalogue.open(folder) as child:
            child.rebuild(lambda done, total: here() if done == COUNT // 2 else None)

    killed_at(work)
    with Catalogue.open(folder) as catalogue:
        assert found_all(catalogue, COUNT)
        assert catalogue.check().problems == ()
    assert current(folder) == before


def test_killed_in_the_middle_of_an_update_nothing_is_lost_and_no_lock_stays(
    folder: Path, tmp_path: Path
) -> None:
    before = current(folder)
    with Catalogue.open(folder) as catalogue:
        for n in range(COUNT, COUNT + 6):
            catalogue.add(*make_tag(tmp_path, f"f{n}", common=f"Plant{n:03}"))

    def work(here: Callable[[], None]) -> None:
        with Catalogue.open(folder) as child:
            source = child._search._source
            entry, asked = source.entry, []

            def entry_or_stop(tag_id: str) -> Any:
                asked.append(tag_id)
                if len(asked) == 4:
                    here()
                return entry(tag_id)

            source.entry = entry_or_stop  # type: ignore[method-assign]
            child.find("plant000")

    killed_at(work)
    with Catalogue.open(folder, timeout=5) as catalogue:
        assert catalogue.check().behind == 6, "half an update is no update"
        assert found_all(catalogue, COUNT + 6)
        assert (catalogue.check().behind, catalogue.check().problems) == (0, ())
    assert current(folder) == before, "nothing of this needs building anew"


def holding_the_lock(folder: Path) -> Iterator[None]:
    told, tell = fork.Pipe(duplex=False)

    def work() -> None:
        writer = open_dir(str(folder / "search" / current(folder))).writer()
        tell.send("locked")
        time.sleep(600)
        writer.cancel()

    child = fork.Process(target=work)
    child.start()
    assert told.poll(60)
    yield
    os.kill(child.pid, signal.SIGKILL)
    child.join()
    yield


def test_a_second_writer_of_the_index_waits_so_long_and_then_says_why(folder: Path, tmp_path: Path) -> None:
    lock = holding_the_lock(folder)
    next(lock)
    with Catalogue.open(folder, timeout=0.3) as catalogue:
        catalogue.add(*make_tag(tmp_path, "late", common="Latecomer"))
        with pytest.raises(CatalogueError, match=r"updating the search index .* than 0\.3 seconds") as caught:
            catalogue.find("latecomer")
        assert caught.value.exit_code == ExitCode.CATALOGUE
        assert len(catalogue) == COUNT + 1, "what was added is safe all the same"
        next(lock)
        assert catalogue.find("latecomer"), "a killed writer's lock is free at once"


def test_readers_go_on_while_another_program_writes(folder: Path, tmp_path: Path) -> None:
    more = [make_tag(tmp_path, f"f{n}", common=f"Plant{n:03}") for n in range(COUNT, COUNT + 20)]

    def write() -> None:
        with Catalogue.open(folder, timeout=60) as child:
            for record, files in more:
                child.add_many([(record, files)])
            child.rebuild()

    child = fork.Process(target=write)
    child.start()
    seen: list[int] = []
    with Catalogue.open(folder, timeout=60) as catalogue:
        while child.is_alive():
            assert is_there(catalogue, 3)
            seen.append(sum(is_there(catalogue, n) for n in range(0, COUNT + 20, 4)))
        child.join()
        assert child.exitcode == 0
        assert found_all(catalogue, COUNT + 20)
    assert seen == sorted(seen) and seen, "nothing that was there ever goes missing"


def test_changed_word_lists_make_the_index_stale(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = current(folder)
    monkeypatch.setattr(generation, "_word_lists", lambda: 1)
    with Catalogue.open(folder) as catalogue:
        assert "lists of plant names have changed" in catalogue.check().problems[0]
        assert found_all(catalogue, COUNT)
        assert catalogue.check().problems == ()
    assert current(folder) != before
