"""The SQLite file: versions, strangers' files, damage, waiting writers, change numbers."""

import sqlite3
from pathlib import Path

import pytest

from index.store import MIGRATIONS, Correction, Store
from ocr_tags.errors import CatalogueError, ExitCode


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "catalogue.sqlite"


def put(store: Store, *tags: str) -> None:
    for tag in tags:
        with store.transaction():
            store.put(tag, "{}", {f"hash of {tag}": None})


def test_what_was_put_is_there_after_opening_again(path: Path) -> None:
    store = Store(path, 1)
    put(store, "one", "two")
    identity = store.identity
    store.close()
    store = Store(path, 1)
    assert [row.tag_id for row in store.rows(None, 0)] == ["one", "two"]
    assert store.owner("hash of two") == "two"
    assert store.identity == identity


def test_two_catalogues_differ_in_identity(path: Path, tmp_path: Path) -> None:
    assert Store(path, 1).identity != Store(tmp_path / "other.sqlite", 1).identity


def test_the_file_is_safe_against_power_loss_and_broken_links(path: Path) -> None:
    store = Store(path, 1)
    # SQLite documentation, "PRAGMA Statements": synchronous 2 is FULL, foreign_keys 1 is on.
    assert store._all("PRAGMA journal_mode") == [("wal",)]
    assert store._all("PRAGMA synchronous") == [(2,)]
    assert store._all("PRAGMA foreign_keys") == [(1,)]


def test_a_later_schema_is_refused_by_name_and_left_alone(path: Path) -> None:
    put(Store(path, 1), "one")
    raw = sqlite3.connect(path)
    raw.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    raw.close()
    with pytest.raises(
        CatalogueError, match=r"later version of this program.*Update this program\."
    ) as caught:
        Store(path, 1)
    assert caught.value.exit_code == ExitCode.CATALOGUE
    assert sqlite3.connect(path).execute("SELECT tag_id FROM tags").fetchall() == [("one",)]


def test_an_interrupted_first_opening_is_made_good(path: Path) -> None:
    sqlite3.connect(path).close()
    assert Store(path, 1).count() == 0
    path.with_name("empty.sqlite").touch()
    assert Store(path.with_name("empty.sqlite"), 1).count() == 0


def test_somebody_elses_database_is_refused_and_left_alone(path: Path) -> None:
    raw = sqlite3.connect(path)
    raw.execute("CREATE TABLE recipes (name)")
    raw.close()
    before = path.read_bytes()
    with pytest.raises(CatalogueError, match="not a catalogue"):
        Store(path, 1)
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    "contents", [b"not a database at all" * 100, b"SQLite format 3\x00" + b"\xff" * 5000]
)
def test_a_file_that_is_no_database_is_called_damaged(path: Path, contents: bytes) -> None:
    path.write_bytes(contents)
    with pytest.raises(CatalogueError, match=r"is damaged.*backup"):
        Store(path, 1)


def test_a_spoilt_page_is_called_damaged(path: Path) -> None:
    store = Store(path, 1)
    put(store, *(f"tag {number:04}" for number in range(500)))
    store.close()
    spoilt = bytearray(path.read_bytes())
    spoilt[8192:] = b"\x5a" * (len(spoilt) - 8192)
    path.write_bytes(spoilt)
    with pytest.raises(CatalogueError, match=r"catalogue\.sqlite is damaged"):
        list(Store(path, 1).rows(None, 0))


def test_a_folder_in_the_way_is_named(tmp_path: Path) -> None:
    (tmp_path / "catalogue.sqlite").mkdir()
    with pytest.raises(CatalogueError, match="cannot be opened"):
        Store(tmp_path / "catalogue.sqlite", 1)


def test_a_second_writer_waits_and_then_says_so(path: Path) -> None:
    first, second = Store(path, 1), Store(path, 0.05)
    with first.transaction():
        first.put("one", "{}", {})
        with pytest.raises(CatalogueError, match=r"more than 0\.05 seconds.*Wait"):
            put(second, "two")
        assert second.count() == 0, "readers go on, and see nothing of what is not finished"
    put(second, "two")
    assert first.count() == 2


def test_a_failed_transaction_leaves_nothing(path: Path) -> None:
    store = Store(path, 1)
    with pytest.raises(KeyError), store.transaction():
        store.put("one", "{}", {"hash": None})
        raise KeyError
    assert store.standing() == (0, 0)
    assert store.owner("hash") is None


def test_numbers_only_grow_and_each_tag_has_its_latest(path: Path) -> None:
    store = Store(path, 1)
    put(store, "one", "two", "one")
    assert list(store.changes_after(0)) == [(2, "two"), (3, "one")]
    with store.transaction():
        store.drop("one")
    assert list(store.changes_after(3)) == [(4, "one")]
    assert store.standing() == (4, 1)
    with store.transaction():
        store.drop("two")
    put(store, "three")
    assert list(store.changes_after(5)) == [(6, "three")], "no number comes back after a removal"


def test_all_changes_come_out_though_they_are_fetched_in_parts(path: Path) -> None:
    store = Store(path, 1)
    with store.transaction():
        for number in range(1200):
            store.put(f"{number}", "{}", {})
    assert [number for number, _ in store.changes_after(100)] == list(range(101, 1201))


def test_removing_a_tag_takes_its_photos_and_corrections_along(path: Path) -> None:
    store = Store(path, 1)
    put(store, "one")
    with store.transaction():
        store.put_correction("one", Correction("height", "corrected", "null"))
        store.drop("one")
    assert (store.owner("hash of one"), store.corrections("one"), store.damage()) == (None, (), "")
