"""The catalogue folder: nothing added twice, nothing lost when killed, people's corrections kept."""

import hashlib
import multiprocessing
import os
import random
import runpy
import signal
import sqlite3
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import replace
from itertools import count
from pathlib import Path
from typing import Any

import pytest

from index import Added, Catalogue
from ocr_tags.errors import CatalogueError, QueryError
from ocr_tags.record import TagRecord
from ocr_tags.values import Length

_tags = runpy.run_path(str(Path(__file__).parent / "data" / "index_tags.py"))
make_tag, reading, botanical = _tags["make_tag"], _tags["reading"], _tags["botanical"]
fork = multiprocessing.get_context("fork")


@pytest.fixture
def catalogue(tmp_path: Path) -> Iterator[Catalogue]:
    with Catalogue.open(tmp_path / "catalogue") as opened:
        yield opened


def daisy(folder: Path, *photos: str, **more: Any) -> tuple[TagRecord, dict[str, Path]]:
    return make_tag(folder, *(photos or ("front",)), common="Shasta Daisy", **more)


def files_in(catalogue: Catalogue) -> list[Path]:
    return [path for path in (catalogue.path / "photos").rglob("*") if path.is_file()]


# ---------------------------------------------------------------- adding


def test_a_record_comes_back_as_it_went_in(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(
        tmp_path, "front", "back", name="Leucanthemum × superbum 'Silver Pony'", height=(30, None)
    )
    assert catalogue.add(record, files) == Added(record.tag_id, new=True, changed=True)
    assert catalogue.get(record.tag_id) == record
    assert list(catalogue.records()) == [record]
    for sha256, path in files.items():
        kept = catalogue.photo_path(sha256)
        assert hashlib.sha256(kept.read_bytes()).hexdigest() == sha256
        assert kept.suffix == path.suffix
        assert catalogue.tag_of_photo(sha256) == record.tag_id


def test_adding_again_changes_nothing(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    catalogue.add(record, files)
    standing = catalogue._store.standing()
    renamed = replace(record, photos=(replace(record.photos[0], file="same photo, other name.jpg"),))
    for again in (record, renamed):
        assert catalogue.add(again, files) == Added(record.tag_id, new=False, changed=False)
    assert (catalogue._store.standing(), len(files_in(catalogue))) == (standing, 1)


def test_reading_again_replaces_what_was_read(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    catalogue.add(record, files)
    better = replace(record, readings={"common_names": (reading("Shasta Daisy"), reading("Ox-eye"))})
    assert catalogue.add(better, files) == Added(record.tag_id, new=False, changed=True)
    assert list(catalogue.records()) == [better]


def test_a_front_alone_grows_into_front_and_back_under_the_same_id(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    front, front_file = daisy(tmp_path, "front")
    both, both_files = daisy(tmp_path, "front", "back", zones=("5", "9"))
    catalogue.add(front, front_file)
    catalogue.correct(front.tag_id, "common_names", "Ox-eye Daisy")
    assert catalogue.add(both, both_files) == Added(front.tag_id, new=False, changed=True)
    grown = catalogue.get(front.tag_id)
    assert (len(catalogue), len(grown.photos)) == (1, 2)
    assert grown.readings["hardiness"][0].value.min_zone == "5"
    assert grown.readings["common_names"][0].value == "Ox-eye Daisy"
    assert not catalogue.add(front, front_file).changed, "a part of what is known adds nothing"
    assert not catalogue.add(both, both_files).changed


def test_two_sides_added_apart_become_one_tag(catalogue: Catalogue, tmp_path: Path) -> None:
    front, front_file = daisy(tmp_path, "front")
    back, back_file = daisy(tmp_path, "back", height=(30, 60))
    both, both_files = daisy(tmp_path, "front", "back", height=(30, 60))
    catalogue.add(front, front_file)
    catalogue.add(back, back_file)
    catalogue.correct(front.tag_id, "common_names", "Ox-eye Daisy")
    catalogue.correct(back.tag_id, "common_names", "Daisy")
    catalogue.correct(back.tag_id, "height", Length(45, 45))
    assert catalogue.add(both, both_files).tag_id == front.tag_id
    joined = catalogue.get(front.tag_id)
    assert [tag.tag_id for tag in catalogue.records()] == [front.tag_id]
    assert joined.readings["common_names"][0].value == "Ox-eye Daisy", "the earlier tag has the last word"
    assert joined.readings["height"][0].value == Length(45, 45)
    assert [hit.tag_id for hit in catalogue.find("ox-eye daisy")] == [front.tag_id]


def test_a_photo_paired_otherwise_is_refused_and_named(catalogue: Catalogue, tmp_path: Path) -> None:
    first, files = daisy(tmp_path, "front", "back")
    catalogue.add(first, files)
    second, others = daisy(tmp_path, "front", "another back")
    with pytest.raises(
        CatalogueError, match=rf"front\.jpg already belongs to tag {first.tag_id}.*Remove that tag"
    ):
        catalogue.add(second, others)
    assert list(catalogue.records()) == [first]
    assert len(files_in(catalogue)) == 2


def test_a_photo_that_changed_since_it_was_read_is_refused(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    (tmp_path / "front.jpg").write_bytes(b"another picture")
    with pytest.raises(CatalogueError, match=r"front\.jpg has changed"):
        catalogue.add(record, files)
    assert (len(catalogue), files_in(catalogue)) == (0, [])


def test_a_photo_that_is_gone_is_named(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    (tmp_path / "front.jpg").unlink()
    with pytest.raises(CatalogueError, match=r"front\.jpg could not be copied"):
        catalogue.add(record, files)
    assert len(catalogue) == 0


def test_a_record_without_photo_files_is_kept_and_gets_its_copy_later(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    record, files = daisy(tmp_path)
    catalogue.add(record, {})
    with pytest.raises(CatalogueError, match="No copy"):
        catalogue.photo_path(record.photos[0].sha256)
    assert catalogue.add(record, files).changed
    assert catalogue.photo_path(record.photos[0].sha256).is_file()


def test_many_are_added_and_found(catalogue: Catalogue, tmp_path: Path) -> None:
    tags = [make_tag(tmp_path, name, common=name) for name in ("Lupin", "Foxglove", "Hollyhock")]
    assert [added.new for added in catalogue.add_many(tags)] == [True] * 3
    assert catalogue.check().behind == 0
    assert [tag.readings["common_names"][0].value for tag in catalogue.records(limit=1, offset=1)] == [
        "Foxglove"
    ]


# ---------------------------------------------------------------- ids


def test_an_id_may_be_cut_short_while_it_is_the_only_one(catalogue: Catalogue, tmp_path: Path) -> None:
    for tag_id, photo in (("abc1", "1"), ("abc2", "2"), ("abd", "3"), ("ab", "4")):
        record, files = daisy(tmp_path, photo)
        catalogue.add(replace(record, tag_id=tag_id), files)
    assert catalogue.get("abd").tag_id == "abd"
    assert catalogue.get("abc1").tag_id == "abc1"
    assert catalogue.get("ab").tag_id == "ab", "a whole id wins over longer ones"
    with pytest.raises(QueryError, match="abc1, abc2"):
        catalogue.get("abc")
    for absent in ("x", "", "%", "abc_", "abc1 "):
        with pytest.raises(QueryError, match="no tag"):
            catalogue.get(absent)


# ---------------------------------------------------------------- corrections


def test_a_correction_lies_over_the_reading_and_survives_reading_again(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    record, files = daisy(tmp_path, height=(30, 45))
    catalogue.add(record, files)
    catalogue.correct(record.tag_id[:6], "height", Length(60, 90))
    again = replace(record, readings={**record.readings, "height": (reading(Length(10, 10)),)})
    catalogue.add(again, files)
    height = catalogue.get(record.tag_id).readings["height"][0]
    assert (height.value, height.status, height.confidence) == (Length(60, 90), "corrected", 1.0)
    assert (height.printed, height.box) == (
        again.readings["height"][0].printed,
        again.readings["height"][0].box,
    )
    assert [other.value for other in height.alternatives] == [Length(10, 10)]
    catalogue.withdraw(record.tag_id, "height")
    assert catalogue.get(record.tag_id) == again
    with pytest.raises(QueryError, match="Nobody has corrected"):
        catalogue.withdraw(record.tag_id, "height")


def test_values_may_come_as_json_and_in_lists(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path, light=("full_sun",))
    catalogue.add(record, files)
    catalogue.correct(record.tag_id, "height", {"min_cm": 30.48, "max_cm": None})
    catalogue.correct(record.tag_id, "common_names", ["Daisy", "Shasta Daisy"])
    catalogue.correct(record.tag_id, "categories", ["perennial"])
    fixed = catalogue.correct(record.tag_id, "light", None).readings
    assert fixed["height"][0].value == Length(30.48, None)
    assert [name.value for name in fixed["common_names"]] == ["Daisy", "Shasta Daisy"]
    assert fixed["categories"][0].value == ("perennial",)
    assert "light" not in fixed


@pytest.mark.parametrize(
    ("field", "value", "message"),
    [
        ("hight", "60 cm", "no field 'hight'.*height"),
        ("height", "tall", "not a value for height"),
        ("height", {"min_cm": "12"}, "not a value for height"),
        ("common_names", [1], "not a value for common name"),
    ],
)
def test_a_value_of_another_kind_is_refused(
    catalogue: Catalogue, tmp_path: Path, field: str, value: Any, message: str
) -> None:
    record, files = daisy(tmp_path)
    catalogue.add(record, files)
    with pytest.raises(QueryError, match=message):
        catalogue.correct(record.tag_id, field, value)
    assert catalogue.get(record.tag_id) == record


def test_confirming_keeps_the_value_whatever_is_read_later(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path, height=(30, 45), zones=("5", "9"))
    catalogue.add(record, files)
    catalogue.correct(record.tag_id, "hardiness", {"min_zone": "4", "max_zone": "9"})
    confirmed = catalogue.confirm(record.tag_id).readings
    assert {field: found[0].status for field, found in confirmed.items()} == {
        "common_names": "confirmed", "height": "confirmed", "hardiness": "corrected",
    }  # fmt: skip
    catalogue.add(replace(record, readings={"height": (reading(Length(1, 1)),)}), files)
    later = catalogue.get(record.tag_id).readings
    assert later["height"][0].value == Length(30, 45)
    assert later["common_names"][0].value == "Shasta Daisy"
    with pytest.raises(QueryError, match="says nothing of spread"):
        catalogue.confirm(record.tag_id, "spread")


def test_a_corrected_name_is_what_search_finds(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = make_tag(tmp_path, "front", common="Lupin")
    catalogue.add(record, files)
    assert not catalogue.find("lupin")[0].nearest_only
    catalogue.correct(record.tag_id, "common_names", "Foxglove")
    assert catalogue.find("foxglove")[0].why == "common name 'Foxglove'"


# ---------------------------------------------------------------- removing, checking


def test_removing_takes_record_correction_and_photos_out(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path, "front", "back")
    other, other_files = make_tag(tmp_path, "other", common="Lupin")
    catalogue.add_many([(record, files), (other, other_files)])
    catalogue.correct(record.tag_id, "common_names", "Daisy")
    catalogue.remove(record.tag_id[:8])
    assert (len(catalogue), len(files_in(catalogue)), catalogue.find("daisy")) == (1, 1, [])
    assert catalogue.tag_of_photo(record.photos[0].sha256) is None
    catalogue.add(record, files)
    assert catalogue.get(record.tag_id) == record, "a correction does not come back from the dead"


def test_check_says_what_is_wrong(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    catalogue.add(record, files)
    assert catalogue.check().problems == (
        "The search index will be built anew at the next search: there is none yet.",
    )
    catalogue.find("daisy")
    found = catalogue.check()
    assert (found.tags, found.photos, found.indexed, found.behind, found.problems) == (1, 1, 1, 0, ())
    catalogue.correct(record.tag_id, "common_names", "Daisy")
    assert catalogue.check().behind == 1
    files_in(catalogue)[0].unlink()
    assert "missing" in catalogue.check().problems[0]


def test_a_folder_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(CatalogueError, match="file/below cannot be made"):
        Catalogue.open(tmp_path / "file" / "below")


def test_it_opens_where_the_picture_libraries_are_missing(tmp_path: Path) -> None:
    code = (
        "import sys\n"
        "for name in ('cv2', 'pytesseract', 'PIL', 'zxingcpp'): sys.modules[name] = None\n"
        "from pathlib import Path\n"
        "from index import Catalogue\n"
        "print(Catalogue.open(Path(sys.argv[1])).find('daisy'))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path)], capture_output=True, text=True, check=False
    )
    assert (done.stdout, done.stderr) == ("[]\n", "")


# ---------------------------------------------------------------- killed, and two at once


def many(folder: Path, count: int) -> list[tuple[TagRecord, dict[str, Path]]]:
    return [make_tag(folder, f"f{n}", f"b{n}", common=f"Plant{n:03}") for n in range(count)]


def kill_after(steps: int, moment: float, work: Callable[[Callable[[], None]], None]) -> bool:
    """Run in a child, which tells of each step; kill it some seconds after so many. True when still at it."""
    told, tell = fork.Pipe(duplex=False)

    def run() -> None:
        told.close()
        work(lambda: tell.send("one step done"))

    child = fork.Process(target=run)
    child.start()
    tell.close()
    with suppress(EOFError):  # it has finished its work before
        for _ in range(steps):
            told.recv()
    time.sleep(moment)
    os.kill(child.pid, signal.SIGKILL)
    child.join()
    told.close()
    return child.exitcode == -signal.SIGKILL


def test_killed_while_adding_nothing_is_lost_or_doubled(tmp_path: Path) -> None:
    dice = random.Random(3)
    tags = many(tmp_path, 25)
    interrupted = 0
    for turn in range(5):
        path = tmp_path / f"catalogue {turn}"

        def work(tell: Callable[[], None], path: Path = path) -> None:
            with Catalogue.open(path) as child:
                for record, files in tags:
                    if child.add(record, files).new:
                        tell()

        for _ in range(6):
            interrupted += kill_after(dice.randrange(4), dice.uniform(0, 0.01), work)
            with Catalogue.open(path) as seen:
                assert list(seen.records()) == [record for record, _ in tags[: len(seen)]], (
                    "a whole beginning"
                )
                assert seen._store.damage() == ""
                for record in seen.records():
                    for photo in record.photos:
                        kept = seen.photo_path(photo.sha256).read_bytes()
                        assert hashlib.sha256(kept).hexdigest() == photo.sha256
        with Catalogue.open(path) as seen:
            seen.add_many(tags)
            assert list(seen.records()) == [record for record, _ in tags]
            assert len(files_in(seen)) == 50
            assert [seen.find(f"plant{n:03}")[0].tag_id for n in range(25)] == [tag.tag_id for tag, _ in tags]
            assert seen.check().problems == ()
    assert interrupted > 0


def test_killed_while_indexing_the_next_search_finds_all(tmp_path: Path) -> None:
    dice = random.Random(4)
    path = tmp_path / "catalogue"
    tags = many(tmp_path, 10)
    with Catalogue.open(path) as catalogue:
        catalogue.add_many(tags)

    def work(tell: Callable[[], None]) -> None:
        with Catalogue.open(path) as child:
            for turn in count():
                record = tags[turn % 10][0]
                child.correct(record.tag_id, "series", f"Series{dice.randrange(999)}")
                tell()
                child.rebuild() if turn % 5 == 4 else child.find("plant001")

    for _ in range(15):
        assert kill_after(dice.randrange(1, 9), dice.uniform(0, 0.02), work)
        with Catalogue.open(path) as catalogue:
            for record in catalogue.records():
                name = record.readings["common_names"][0].value
                assert catalogue.find(name)[0].record == record
            assert catalogue.check().problems == ()
            assert catalogue.check().indexed == 10


def test_two_programs_adding_at_once_lose_nothing(tmp_path: Path) -> None:
    tags = many(tmp_path, 30)
    path = tmp_path / "catalogue"

    def work(mine: list[tuple[TagRecord, dict[str, Path]]]) -> None:
        with Catalogue.open(path, timeout=60) as child:
            for record, files in mine:
                child.add(record, files)
                child.find(record.readings["common_names"][0].value)

    # The middle third is added by both.
    children = [fork.Process(target=work, args=(part,)) for part in (tags[:20], tags[10:])]
    for child in children:
        child.start()
    for child in children:
        child.join()
    assert [child.exitcode for child in children] == [0, 0]
    with Catalogue.open(path) as catalogue:
        assert {record.tag_id for record in catalogue.records()} == {record.tag_id for record, _ in tags}
        assert len(catalogue) == 30
        assert all(catalogue.find(f"plant{n:03}")[0].tag_id == tags[n][0].tag_id for n in range(30))


def test_a_writer_kept_waiting_too_long_says_so(catalogue: Catalogue, tmp_path: Path) -> None:
    record, files = daisy(tmp_path)
    other = sqlite3.connect(catalogue.path / "catalogue.sqlite", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with (
        Catalogue.open(catalogue.path, timeout=0.05) as hasty,
        pytest.raises(CatalogueError, match="Another program has been writing"),
    ):
        hasty.add(record, files)
    other.execute("ROLLBACK")
    assert catalogue.add(record, files).new


def test_threads_may_share_a_catalogue(catalogue: Catalogue, tmp_path: Path) -> None:
    tags = many(tmp_path, 20)
    problems: list[Exception] = []

    def work(mine: list[tuple[TagRecord, dict[str, Path]]]) -> None:
        try:
            for record, files in mine:
                catalogue.add(record, files)
                assert catalogue.find(record.readings["common_names"][0].value)[0].tag_id == record.tag_id
        except Exception as error:
            problems.append(error)

    threads = [threading.Thread(target=work, args=(tags[start::4],)) for start in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert problems == []
    assert len(catalogue) == 20
