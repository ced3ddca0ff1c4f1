from __future__ import annotations

from pathlib import Path

import pytest

from ocr_tags.pairing.pairs_file import PairsFileError, group_by_file
from ocr_tags.pairing.photographs import group_by_name, nearness
from ocr_tags.pictures.photos import PhotoFile
from ocr_tags.record import Photo


def files(*names: str) -> list[PhotoFile]:
    return [PhotoFile(Path(name), name) for name in names]


def listed(photos: tuple[PhotoFile, ...]) -> str | None:
    return " + ".join(photo.name for photo in photos) or None


def grouped(*names: str) -> list[tuple[str, str | None, str | None]]:
    return [(group.bond, listed(group.fronts), listed(group.backs)) for group in group_by_name(files(*names))]


@pytest.mark.parametrize(
    ("front", "back"),
    [
        ("rose_front.jpg", "rose_back.jpg"),
        ("rose-Front.JPG", "rose-BACK.png"),
        ("front_rose.jpg", "back_rose.jpg"),
        ("Front of rose.jpg", "Back of rose.jpg"),
        ("front.jpg", "back.jpg"),
        ("tag_front_001.jpg", "tag_back_001.jpg"),
        ("x F.jpg", "x B.jpg"),
        ("x_f.jpg", "x_b.jpg"),
        ("12recto.tif", "12verso.tif"),
        ("Rose vorne.jpg", "Rose hinten.jpg"),
        ("rose_vorderseite.jpg", "rose_rückseite.jpg"),
    ],
)
def test_sides_named(front: str, back: str) -> None:
    assert grouped(back, front) == [("named", front, back)]


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("rose-1.jpg", "rose-2.jpg"),
        ("rose_1.jpg", "rose_2.jpg"),
        ("rose_01.jpg", "rose_02.jpg"),
        ("rose (1).jpg", "rose (2).jpg"),
        ("012a.jpg", "012b.jpg"),
        ("rosea.jpg", "roseb.jpg"),
        ("rose A.jpg", "rose B.jpg"),
        ("IMG_2041-1.jpg", "IMG_2041-2.jpg"),
        ("1_1.jpg", "1_2.jpg"),
    ],
)
def test_first_and_second_shot_of_one_name(first: str, second: str) -> None:
    assert grouped(first, second) == [("numbered", first, second)]


@pytest.mark.parametrize(
    ("names", "front", "back"),
    [
        (["x_front.jpg", "x_front2.jpg", "x_back.jpg"], "x_front.jpg + x_front2.jpg", "x_back.jpg"),
        (["x_front1.jpg", "x_front2.jpg", "x_back.jpg"], "x_front1.jpg + x_front2.jpg", "x_back.jpg"),
        (["x_front_a.jpg", "x_front_b.jpg", "x_back.jpg"], "x_front_a.jpg + x_front_b.jpg", "x_back.jpg"),
        (["x-front.jpg", "x-front (2).jpg", "x-back.jpg"], "x-front.jpg + x-front (2).jpg", "x-back.jpg"),
        (["x-Front (1).jpg", "x-Front (2).jpg"], "x-Front (1).jpg + x-Front (2).jpg", None),
        (["x_b1.jpg", "x_b2.jpg", "x_f.jpg"], "x_f.jpg", "x_b1.jpg + x_b2.jpg"),
        (["x_back_top.jpg", "x_back_bottom.jpg"], None, "x_back_bottom.jpg + x_back_top.jpg"),
        (["front.jpg", "front copy.jpg", "back.jpg"], "front.jpg + front copy.jpg", "back.jpg"),
        (["x hinten unten.jpg", "x hinten.jpg"], None, "x hinten.jpg + x hinten unten.jpg"),
    ],
)
def test_several_photos_of_one_side(names: list[str], front: str | None, back: str | None) -> None:
    assert grouped(*names) == [("named", front, back)]


def test_a_number_behind_the_side_may_count_tags_where_each_has_both_sides() -> None:
    names = ["x_front_1.jpg", "x_back_1.jpg", "x_front_2.jpg", "x_back_2.jpg"]
    assert grouped(*names) == [("counted", "x_front_1.jpg + x_front_2.jpg", "x_back_1.jpg + x_back_2.jpg")]
    assert grouped(*(f"IMG_{name[2:]}" for name in names)) == [
        ("named", "IMG_front_1.jpg", "IMG_back_1.jpg"),
        ("named", "IMG_front_2.jpg", "IMG_back_2.jpg"),
    ]


@pytest.mark.parametrize(
    "names",
    [
        ["tag_front_1.jpg", "tag_front_2.jpg", "tag_front_3.jpg"],
        ["front1.jpg", "front2.jpg"],
        [f"rose_front_{number}.jpg" for number in range(1, 8)],
        ["x_front_blue.jpg", "x_front_red.jpg"],
    ],
)
def test_a_series_of_fronts_is_not_one_tag(names: list[str]) -> None:
    assert grouped(*names) == [("loose", name, None) for name in names]


@pytest.mark.parametrize(
    "names",
    [
        ["IMG_1.jpg", "IMG_2.jpg"],
        ["scan 1.jpg", "scan 2.jpg"],
        ["Image (1).jpg", "Image (2).jpg"],
        ["rose_1.jpg", "rose_2.jpg", "rose_3.jpg"],
        ["planta.jpg", "plantb.jpg", "plantc.jpg"],
        ["2026-04-01.jpg", "2026-04-02.jpg"],
        ["2026-04-18 09.12.01.jpg", "2026-04-18 09.12.02.jpg"],
        ["DSC01234.jpg", "DSC01235.jpg"],
        ["backhousia.jpg", "frontier.jpg"],
        ["back yard rose.jpg"],
        ["a/rose_front.png", "b/rose_back.png"],
        ["lily.jpg", "lila.jpg"],
    ],
)
def test_names_that_pair_nothing(names: list[str]) -> None:
    """The last but one: a front and a back in two folders are two lone sides, not one tag."""
    assert all(front is None or back is None for _, front, back in grouped(*names))


def test_lone_sides_are_legal() -> None:
    assert grouped("rose_front.jpg", "hosta_back.jpg") == [
        ("named", "rose_front.jpg", None),
        ("named", None, "hosta_back.jpg"),
    ]


def test_same_picture_in_two_formats_is_paired_within_its_format() -> None:
    assert grouped("x_back.heic", "x_back.jpg", "x_front.heic", "x_front.jpg") == [
        ("named", "x_front.heic", "x_back.heic"),
        ("named", "x_front.jpg", "x_back.jpg"),
    ]


def test_every_photo_stands_in_one_group_in_order() -> None:
    names = ["a_front.jpg", "IMG_7.jpg", "b-1.jpg", "a_back.jpg", "b-2.jpg", "a front.jpg"]
    groups = group_by_name(files(*names))
    assert sorted(photo.name for group in groups for photo in group.photos) == sorted(names)
    assert [group.photos[0].name for group in groups][-2:] == ["IMG_7.jpg", "b-1.jpg"] or len(groups) == 5


def pairs(tmp_path: Path, text: str, *names: str) -> list[tuple[str | None, str | None]]:
    (tmp_path / "pairs.csv").write_text(text, "utf-8")
    photos = [PhotoFile(tmp_path / name, name) for name in names]
    groups = group_by_file(tmp_path / "pairs.csv", photos)
    assert all(group.bond == "told" and "pairs.csv says so" in group.why for group in groups)
    return [(listed(group.fronts), listed(group.backs)) for group in groups]


def test_a_pairs_file_with_several_photos_of_a_side(tmp_path: Path) -> None:
    text = "Front,back,front,front\n1.jpg,2.jpg,3.jpg,\n,4.jpg\n5.jpg,,,6.jpg\n"
    assert pairs(tmp_path, text, *(f"{number}.jpg" for number in range(1, 7))) == [
        ("1.jpg + 3.jpg", "2.jpg"),
        (None, "4.jpg"),
        ("5.jpg + 6.jpg", None),
    ]


def test_a_pairs_file(tmp_path: Path) -> None:
    text = "\ufefffront,back\n7.jpg,3.jpg\n\n,4.jpg\n5.jpg\n"
    assert pairs(tmp_path, text, "3.jpg", "4.jpg", "5.jpg", "7.jpg") == [
        ("7.jpg", "3.jpg"),
        (None, "4.jpg"),
        ("5.jpg", None),
    ]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("front,back\n1.jpg,9.jpg\n", "Line 2 of pairs.csv: there is no photo 9.jpg"),
        ("1.jpg,2.jpg\n3.jpg,2.jpg\n", "Line 2 of pairs.csv: 2.jpg is already used in line 1"),
        ("1.jpg,1.jpg\n", "Line 1 of pairs.csv names 1.jpg twice"),
        ("1.jpg,2.jpg,3.jpg\n", "Line 1 of pairs.csv has more cells than the columns front, back"),
        (
            "front,front,back\n1.jpg,2.jpg,3.jpg,1.jpg\n",
            "Line 2 of pairs.csv has more cells than the columns",
        ),
        ("x.jpg,2.jpg\n", "there are 2 photos called x.jpg"),
    ],
)
def test_errors_in_a_pairs_file_name_the_line(tmp_path: Path, text: str, words: str) -> None:
    with pytest.raises(PairsFileError) as caught:
        pairs(tmp_path, text, "1.jpg", "2.jpg", "3.jpg", "a/x.jpg", "b/x.jpg")
    assert words in caught.value.message


def test_a_pairs_file_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(PairsFileError, match="no such file"):
        group_by_file(tmp_path / "none.csv", [])
    (tmp_path / "odd.csv").write_bytes(b"\xff\xfe\xfa")
    with pytest.raises(PairsFileError, match="cannot be read"):
        group_by_file(tmp_path / "odd.csv", [])


def shot(file: str, taken_at: str | None = None) -> Photo:
    return Photo("front", file, "0", 1, 1, taken_at)


def test_nearness() -> None:
    early, late = "2026-04-18T09:12:44", "2026-04-18T09:13:30"
    assert nearness(shot("a.jpg", early), shot("b.jpg", late), 60).near is True
    assert (
        nearness(shot("IMG_1.jpg", early), shot("IMG_2.jpg", late), 20).near is False
    )  # the clock has the say
    assert nearness(shot("IMG_0099.jpg"), shot("IMG_0100.JPG"), 60).near is True
    assert nearness(shot("IMG_0099.jpg", early), shot("IMG_0101.jpg"), 60).near is False
    assert nearness(shot("salvia.jpg"), shot("sage.jpg"), 60).near is None
