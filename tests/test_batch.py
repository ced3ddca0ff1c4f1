"""Many photos at once, with a fake reader: what goes wrong with one must not touch the others."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import cv2
import fake_reading
import numpy as np
import pytest
from PIL import Image

from ocr_tags.batch import Job, Outcome, Passed, TagRead, read_all, read_photos
from ocr_tags.engines.tesseract import TesseractProgram
from ocr_tags.errors import PhotoError
from ocr_tags.pairing.photographs import Group
from ocr_tags.pictures.photos import PhotoFile, fingerprint
from ocr_tags.pipeline import SideRead
from ocr_tags.settings import Settings

SALVIA = "Meadow Sage\nSalvia nemorosa 'Wexcombe'"
SALVIA_BACK = "Meadow Sage\nHeight: 24-36 in\nSpacing 18 in\nFull sun\nUSDA Zones 3-8\nBlooms all summer"
HOSTA = "Plantain Lily\nHosta plantaginea"
HOSTA_BACK = "Hosta plantaginea\nHeight: 18-24 in\nSpread 30 in\nPart shade\nUSDA Zones 3-9\nWater weekly"


def put(folder: Path, name: str, text: str, taken_at: str = "") -> Path:
    """A photo unlike all others, and what the fake reader finds on it."""
    path = folder / name
    shade = sum(path.name.encode()) % 256
    exif = Image.Exif()
    if taken_at:
        exif.get_ifd(0x8769)[36867] = taken_at
    Image.new("RGB", (64, 48 + len(list(folder.iterdir()))), (shade, 90, 10)).save(path, exif=exif)
    path.with_suffix(".txt").write_text(text, "utf-8")
    return path


def run(*paths: Path, workers: int = 2, seconds: int = 60, **more: object) -> list[Outcome]:
    settings = Settings(workers=workers, timeout_seconds=seconds)
    return list(read_all(paths, settings, read=fake_reading.read, **more))  # type: ignore[arg-type]


def told(outcomes: list[Outcome]) -> list[str]:
    lines = []
    for each in outcomes:
        if isinstance(each, TagRead):
            lines.append(" ".join(f"{photo.side}:{photo.file}" for photo in each.record.photos))
        else:
            lines.append(each.message if isinstance(each, PhotoError) else f"{each.name}: {each.why}")
    return lines


def test_camera_numbers_are_paired_by_what_was_read(tmp_path: Path) -> None:
    put(tmp_path, "IMG_1.jpg", SALVIA)
    put(tmp_path, "IMG_2.jpg", SALVIA_BACK)
    put(tmp_path, "IMG_3.jpg", HOSTA_BACK)  # the back first
    put(tmp_path, "IMG_4.jpg", HOSTA)
    put(tmp_path, "IMG_5.jpg", SALVIA)
    assert told(run(tmp_path)) == [
        "front:IMG_1.jpg back:IMG_2.jpg",
        "front:IMG_4.jpg back:IMG_3.jpg",
        "front:IMG_5.jpg",
    ]


def test_a_lone_front_does_not_take_the_next_tags_side(tmp_path: Path) -> None:
    put(tmp_path, "IMG_1.jpg", "Height: 24-36 in\nSpacing 18 in\nFull sun\nUSDA Zones 3-8\nBlooms all summer")
    put(tmp_path, "IMG_2.jpg", HOSTA)
    put(tmp_path, "IMG_3.jpg", HOSTA_BACK)
    assert told(run(tmp_path)) == ["back:IMG_1.jpg", "front:IMG_2.jpg back:IMG_3.jpg"]


def test_photos_far_apart_in_time_stay_apart(tmp_path: Path) -> None:
    put(tmp_path, "IMG_1.jpg", SALVIA, "2026:04:18 09:12:44")
    put(tmp_path, "IMG_2.jpg", SALVIA_BACK, "2026:04:18 11:12:44")
    outcomes = run(tmp_path)
    assert told(outcomes) == ["front:IMG_1.jpg", "front:IMG_2.jpg"]
    assert isinstance(outcomes[0], TagRead) and "7200 s apart" in outcomes[0].record.notes[0]


def test_numbered_photos_of_two_plants_are_two_tags(tmp_path: Path) -> None:
    put(tmp_path, "x-1.jpg", SALVIA)
    put(tmp_path, "x-2.jpg", HOSTA_BACK)
    assert told(run(tmp_path)) == ["front:x-1.jpg", "front:x-2.jpg"]


def test_named_sides_are_taken_at_their_word_with_a_note(tmp_path: Path) -> None:
    put(tmp_path, "x_back.jpg", HOSTA_BACK)
    put(tmp_path, "x_front.jpg", SALVIA)
    outcomes = run(tmp_path)
    assert told(outcomes) == ["front:x_front.jpg back:x_back.jpg"]
    assert isinstance(outcomes[0], TagRead)
    assert any(note.startswith("Check that these are one tag") for note in outcomes[0].record.notes)


def test_a_pairs_file_overrules_names(tmp_path: Path) -> None:
    put(tmp_path, "x_back.jpg", SALVIA)
    put(tmp_path, "x_front.jpg", SALVIA_BACK)
    put(tmp_path, "y.jpg", HOSTA)
    (tmp_path / "pairs.csv").write_text("front,back\nx_back.jpg,x_front.jpg\n", "utf-8")
    assert told(run(tmp_path, pairs_file=tmp_path / "pairs.csv")) == [
        "front:x_back.jpg back:x_front.jpg",
        "front:y.jpg",
    ]


@pytest.mark.parametrize(
    ("fate", "words"),
    [
        ("CRASH", "c_front.jpg: the reader broke down on it (exit 11)."),
        ("FAULT", "c_front.jpg: a fault of ours while reading it (ZeroDivisionError: our own mistake)."),
        ("ENGINE", "c_front.jpg: Tesseract failed on this one."),
    ],
)
def test_one_bad_photo_costs_one_photo(tmp_path: Path, fate: str, words: str) -> None:
    for name in "abde":
        put(tmp_path, f"{name}_front.jpg", SALVIA)
    put(tmp_path, "c_front.jpg", fate)
    put(tmp_path, "c_back.jpg", HOSTA_BACK)
    outcomes = run(tmp_path)
    fine = [f"front:{name}_front.jpg" for name in "abde"]
    assert told(outcomes) == [*fine[:2], words, "back:c_back.jpg", *fine[2:]]
    lone = outcomes[3]
    assert isinstance(lone, TagRead) and lone.record.notes[0].startswith("The other side, c_front.jpg, could")


def test_the_photos_of_a_tag_are_read_in_one_go_each_as_its_side(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls: list[int] = []
    read = TesseractProgram.read

    def counted(self: TesseractProgram, pictures: list[Any], layout: Any) -> Any:
        calls.append(len(pictures))
        return read(self, pictures, layout)

    monkeypatch.setattr(TesseractProgram, "read", counted)
    for name, words in (("x_front.png", "Meadow Sage"), ("x_back.png", "Height: 24 in")):
        tag = np.full((300, 900, 3), 250, np.uint8)
        cv2.putText(tag, words, (60, 180), cv2.FONT_HERSHEY_SIMPLEX, 2.0, (20, 20, 20), 5, cv2.LINE_AA)
        cv2.imwrite(str(tmp_path / name), tag)
    (tmp_path / "x_back (2).png").write_bytes(b"not a picture")
    front, back, broken = (
        PhotoFile(tmp_path / name, name) for name in ("x_front.png", "x_back.png", "x_back (2).png")
    )
    said, failed, below = read_photos(Job(Group((front,), (broken, back), "named", ""), Settings()))
    assert isinstance(failed, PhotoError) and failed.message.startswith("x_back (2).png is not a picture")
    assert isinstance(said, SideRead) and isinstance(below, SideRead)
    assert [(each.photo.side, each.lines) for each in (said, below)] == [
        ("front", ("Meadow Sage",)),
        ("back", ("Height: 24 in",)),
    ]
    assert calls == [2]


def test_a_photo_that_hangs_is_given_up(tmp_path: Path) -> None:
    put(tmp_path, "a_front.jpg", "HANG")
    put(tmp_path, "b_front.jpg", SALVIA)
    assert told(run(tmp_path, seconds=16)) == ["a_front.jpg was given up after 16 s.", "front:b_front.jpg"]


def test_order_holds_however_long_a_photo_takes(tmp_path: Path) -> None:
    put(tmp_path, "a_front.jpg", "SLOW")
    for name in "bcd":
        put(tmp_path, f"{name}_front.jpg", SALVIA)
    seen: list[tuple[int, int, str]] = []
    outcomes = run(tmp_path, on_progress=lambda *step: seen.append(step))
    assert told(outcomes) == [f"front:{name}_front.jpg" for name in "abcd"]
    assert [step[:2] for step in seen] == [(1, 4), (2, 4), (3, 4), (4, 4)]


def test_files_that_are_no_photos_are_named(tmp_path: Path) -> None:
    put(tmp_path, "a_front.jpg", SALVIA)
    (tmp_path / "b_front.jpg").write_bytes(b"not a picture")
    assert told(run(tmp_path, tmp_path / "gone")) == [
        f"{tmp_path / 'gone'} does not exist.",
        "front:a_front.jpg",
        "b_front.jpg is not a picture in a format we read (JPEG, PNG, TIFF, WebP, HEIC).",
    ]


def test_known_photos_and_copies_are_passed_over(tmp_path: Path) -> None:
    known = put(tmp_path, "a_front.jpg", SALVIA)
    first = put(tmp_path, "b_front.jpg", HOSTA)
    (tmp_path / "c_front.jpg").write_bytes(first.read_bytes())
    sha256 = fingerprint(known)
    outcomes = run(tmp_path, tag_of_photo=lambda each: "3fa2" if each == sha256 else None)
    assert outcomes[:2] == [
        Passed("a_front.jpg", "already in tag 3fa2"),
        Passed("c_front.jpg", "the same picture as b_front.jpg"),
    ]
    assert told(outcomes[2:]) == ["front:b_front.jpg"]


def test_half_known_pairs_are_read_again(tmp_path: Path) -> None:
    front = put(tmp_path, "a_front.jpg", SALVIA)
    put(tmp_path, "a_back.jpg", SALVIA_BACK)
    sha256 = fingerprint(front)
    outcomes = run(tmp_path, tag_of_photo=lambda each: "3fa2" if each == sha256 else None)
    assert told(outcomes) == ["front:a_front.jpg back:a_back.jpg"]
    assert isinstance(outcomes[0], TagRead) and outcomes[0].files[sha256] == front


def test_a_side_photographed_twice_is_one_side(tmp_path: Path) -> None:
    """Two photos of the front and two of the back in a row: fronts are not married to each other."""
    put(tmp_path, "IMG_1.jpg", SALVIA + "\nTough and long in flower")
    put(tmp_path, "IMG_2.jpg", SALVIA + "\nTough and long in fl")
    put(tmp_path, "IMG_3.jpg", SALVIA_BACK)
    put(tmp_path, "IMG_4.jpg", SALVIA_BACK.replace("Zones 3-8", "Zones"))
    put(tmp_path, "IMG_5.jpg", HOSTA)
    put(tmp_path, "IMG_6.jpg", HOSTA_BACK)
    outcomes = run(tmp_path)
    assert told(outcomes) == [
        "front:IMG_1.jpg front:IMG_2.jpg back:IMG_3.jpg back:IMG_4.jpg",
        "front:IMG_5.jpg back:IMG_6.jpg",
    ]
    assert isinstance(outcomes[0], TagRead)
    record = outcomes[0].record
    assert "The front was read from 2 photos: IMG_1.jpg, IMG_2.jpg." in record.notes
    (zones,) = record.readings["hardiness"]
    assert (zones.side, record.photos[zones.photo].file) == ("back", "IMG_3.jpg")


def test_the_front_once_more_after_the_back(tmp_path: Path) -> None:
    for number, text in enumerate((SALVIA, SALVIA_BACK, SALVIA, HOSTA, HOSTA_BACK), start=1):
        put(tmp_path, f"IMG_{number}.jpg", text)
    assert told(run(tmp_path)) == [
        "front:IMG_1.jpg front:IMG_3.jpg back:IMG_2.jpg",
        "front:IMG_4.jpg back:IMG_5.jpg",
    ]


def test_the_same_print_on_another_day_is_another_tag(tmp_path: Path) -> None:
    put(tmp_path, "IMG_1.jpg", SALVIA, "2026:04:18 09:12:44")
    put(tmp_path, "IMG_2.jpg", SALVIA, "2026:04:19 09:12:44")
    assert told(run(tmp_path)) == ["front:IMG_1.jpg", "front:IMG_2.jpg"]


def test_names_put_several_photos_on_one_side_unless_they_show_another_plant(tmp_path: Path) -> None:
    put(tmp_path, "x_front1.jpg", SALVIA)
    put(tmp_path, "x_front2.jpg", HOSTA)
    put(tmp_path, "x_front3.jpg", SALVIA)
    put(tmp_path, "x_back.jpg", SALVIA_BACK)
    outcomes = run(tmp_path)
    assert told(outcomes) == ["front:x_front1.jpg front:x_front3.jpg back:x_back.jpg", "front:x_front2.jpg"]
    assert isinstance(outcomes[1], TagRead)
    assert outcomes[1].record.notes[0].startswith("Not joined with x_front1.jpg: they name two")


def test_first_and_second_shot_of_one_side_are_no_front_and_back(tmp_path: Path) -> None:
    put(tmp_path, "rose-1.jpg", SALVIA_BACK)
    put(tmp_path, "rose-2.jpg", SALVIA_BACK)
    (outcome,) = run(tmp_path)
    assert isinstance(outcome, TagRead)
    assert {photo.side for photo in outcome.record.photos} == {"front"}


def test_a_photo_more_of_a_side_is_read_with_the_others(tmp_path: Path) -> None:
    front = put(tmp_path, "a_front.jpg", SALVIA)
    put(tmp_path, "a_front2.jpg", SALVIA)
    put(tmp_path, "a_front3.jpg", "CRASH")
    sha256 = fingerprint(front)
    outcomes = run(tmp_path, tag_of_photo=lambda each: "3fa2" if each == sha256 else None)
    assert told(outcomes) == [
        "a_front3.jpg: the reader broke down on it (exit 11).",
        "front:a_front.jpg front:a_front2.jpg",
    ]
    assert isinstance(outcomes[1], TagRead)
    assert "Another photo, a_front3.jpg, could not be opened." in outcomes[1].record.notes


def test_numbers_behind_sides_count_photos_or_tags_by_what_was_read(tmp_path: Path) -> None:
    for number, front, back in ((1, SALVIA, SALVIA_BACK), (2, HOSTA, HOSTA_BACK)):
        put(tmp_path, f"x_front{number}.jpg", front)
        put(tmp_path, f"x_back{number}.jpg", back)
        put(tmp_path, f"y_front{number}.jpg", SALVIA)
        put(tmp_path, f"y_back{number}.jpg", SALVIA_BACK)
    assert told(run(tmp_path)) == [
        "front:x_front1.jpg back:x_back1.jpg",
        "front:x_front2.jpg back:x_back2.jpg",
        "front:y_front1.jpg front:y_front2.jpg back:y_back1.jpg back:y_back2.jpg",
    ]
