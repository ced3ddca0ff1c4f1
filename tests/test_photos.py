"""Photo files as cameras, scanners and accidents leave them: opened right, or refused in one sentence."""

from __future__ import annotations

import io
import os
import re
import struct
import sys
import zlib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageOps

from ocr_tags.errors import PhotoError
from ocr_tags.pictures.photos import find_photos, fingerprint, natural_key, open_photo
from ocr_tags.pictures.pixels import to_bgr, upright
from ocr_tags.settings import Settings

RED, BLUE, WHITE = (200, 30, 30), (30, 30, 200), (255, 255, 255)


def corners(size: tuple[int, int] = (96, 64)) -> Image.Image:
    """White, red at the top left, blue at the bottom right: any turn or mirroring shows."""
    image = Image.new("RGB", size, WHITE)
    image.paste(RED, (0, 0, 32, 32))
    image.paste(BLUE, (size[0] - 32, size[1] - 32, *size))
    return image


def near(pixel: np.ndarray, rgb: tuple[int, int, int], within: int = 12) -> bool:
    return bool(np.all(np.abs(pixel.astype(int) - rgb[::-1]) <= within))


def refused(path: Path, settings: Settings | None = None) -> str:
    with pytest.raises(PhotoError) as caught:
        open_photo(path, settings=settings)
    message = caught.value.message
    assert path.name in message and message.endswith(".") and "\n" not in message
    return message


# ---------------------------------------------------------------- formats


@pytest.mark.parametrize("ending", ["jpg", "png", "tif", "webp", "bmp"])
def test_common_formats_open_alike(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"tag.{ending}"
    corners().save(path, **({"quality": 95, "subsampling": 0} if ending == "jpg" else {}))
    photo = open_photo(path)
    assert (photo.width, photo.height) == (96, 64)
    assert photo.pixels.shape == (64, 96, 3) and photo.pixels.dtype == np.uint8
    assert near(photo.pixels[8, 8], RED) and near(photo.pixels[-8, -8], BLUE)
    assert near(photo.pixels[8, -8], WHITE)
    assert photo.sha256 == fingerprint(path)


def test_heic_turned_by_its_own_box() -> None:
    """tests/data/tiny.heic was stored lying down, with a turn by 90 degrees (ISO/IEC 23008-12, `irot`)."""
    photo = open_photo(Path(__file__).parent / "data" / "tiny.heic")
    assert (photo.width, photo.height) == (64, 96)
    assert near(photo.pixels[8, -8], RED) and near(photo.pixels[-8, 8], BLUE)
    assert photo.taken_at == "2026-04-18T09:12:44"


@pytest.mark.parametrize("ending", ["png", "tif"])
def test_sixteen_bit_grey_keeps_its_greys(tmp_path: Path, ending: str) -> None:
    levels = np.repeat(np.array([0, 1000, 32768, 65535], np.uint16), 16)
    path = tmp_path / f"deep.{ending}"
    Image.fromarray(np.tile(levels, (64, 1))).save(path)
    row = open_photo(path).pixels[10, 8::16, 0]
    assert row.tolist() == [0, 4, 128, 255]  # value * 255 / 65535, rounded


def test_float_and_long_greys() -> None:
    ramp = np.array([[0.0, 0.5, 1.0]], np.float32)
    assert to_bgr(Image.fromarray(ramp))[0, :, 0].tolist() == [0, 128, 255]
    long = np.array([[0, 128, 255]], np.int32)
    assert to_bgr(Image.fromarray(long))[0, :, 0].tolist() == [0, 128, 255]


def test_cmyk_jpeg(tmp_path: Path) -> None:
    path = tmp_path / "print.jpg"
    corners().convert("CMYK").save(path, quality=95)
    photo = open_photo(path)
    assert near(photo.pixels[8, 8], RED, 40) and near(photo.pixels[8, -8], WHITE)


def test_transparent_becomes_white_paper(tmp_path: Path) -> None:
    clear = Image.new("RGBA", (64, 64), (0, 0, 0, 0))
    clear.paste((*RED, 255), (0, 0, 32, 64))
    clear.save(tmp_path / "clear.png")
    palette = Image.new("P", (64, 64), 0)
    palette.putpalette([0, 0, 0, *RED])
    palette.paste(1, (0, 0, 32, 64))
    palette.save(tmp_path / "palette.png", transparency=0)
    for name in ("clear.png", "palette.png"):
        pixels = open_photo(tmp_path / name).pixels
        assert near(pixels[8, 8], RED) and near(pixels[8, -8], WHITE), name


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "YCbCr", "LAB", "HSV"])
def test_other_modes_give_three_channels(mode: str) -> None:
    image = Image.new("L", (50, 40), 255).convert("RGB")
    given = image.convert("LAB") if mode == "LAB" else image.convert(mode)
    pixels = to_bgr(given)
    assert pixels.shape == (40, 50, 3) and int(pixels.min()) > 245


# ---------------------------------------------------------------- orientation and time


@pytest.mark.parametrize("orientation", range(1, 9))
@pytest.mark.parametrize("ending", ["jpg", "png", "tif", "webp"])
def test_exif_orientation_agrees_with_pillow(tmp_path: Path, orientation: int, ending: str) -> None:
    """Reference: Pillow's ImageOps.exif_transpose, which follows EXIF 2.32, tag 274."""
    path = tmp_path / f"turned.{ending}"
    exif = Image.Exif()
    exif[0x0112] = orientation
    corners().save(path, exif=exif, **({"quality": 95, "subsampling": 0} if ending == "jpg" else {}))
    with Image.open(path) as stored:
        wanted = np.asarray(ImageOps.exif_transpose(stored).convert("RGB"))[:, :, ::-1]
    assert np.array_equal(open_photo(path).pixels, wanted)


def test_orientation_six_turns_clockwise() -> None:
    """EXIF 2.32: with 6, row 0 of the data is the right-hand side of the picture as seen."""
    stored = np.zeros((2, 3, 3), np.uint8)
    stored[0, 0] = 9
    assert upright(stored, 6)[0, -1].tolist() == [9, 9, 9]


def test_time_taken(tmp_path: Path) -> None:
    for name, written, wanted in (
        ("set.jpg", "2026:04:18 09:12:44", "2026-04-18T09:12:44"),
        ("unset.jpg", "0000:00:00 00:00:00", None),
        ("odd.jpg", "yesterday", None),
    ):
        exif = Image.Exif()
        exif.get_ifd(0x8769)[36867] = written
        corners().save(tmp_path / name, exif=exif)
        assert open_photo(tmp_path / name).taken_at == wanted


def test_broken_exif_does_not_cost_the_picture(tmp_path: Path) -> None:
    path = tmp_path / "odd.jpg"
    corners().save(path, exif=b"Exif\0\0II*\0\xff\xff\xff\xff")
    assert open_photo(path).width == 96


# ---------------------------------------------------------------- refused


def jpeg_bytes() -> bytes:
    stream = io.BytesIO()
    corners((600, 400)).save(stream, "JPEG")
    return stream.getvalue()


def bomb(width: int, height: int) -> bytes:
    """A PNG of a few bytes that claims to be huge (PNG specification, section 11.2.2)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", header)
        + chunk(b"IDAT", zlib.compress(b""))
        + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize(
    ("name", "data", "words"),
    [
        ("half.jpg", lambda: jpeg_bytes()[: len(jpeg_bytes()) // 2], "cut short"),
        ("empty.jpg", lambda: b"", "empty"),
        ("letter.jpg", lambda: b"Dear all,\nplease find the tags enclosed.\n", "not a picture"),
        ("page.jpg", lambda: b"%PDF-1.7\n...", "PDF"),
        ("raw.dng", lambda: b"raw sensor data", "raw file"),
        ("bomb.png", lambda: bomb(10_000, 10_000), "too many pixels"),
        ("giant.png", lambda: bomb(60_000, 60_000), "too many pixels"),
        ("cut.png", lambda: bomb(200, 200)[:50], "cut short|damaged"),
    ],
)
def test_files_that_are_no_photo(tmp_path: Path, name: str, data: Callable[[], bytes], words: str) -> None:
    path = tmp_path / name
    path.write_bytes(data())
    assert re.search(words, refused(path))


@pytest.mark.parametrize("ending", ["gif", "webp", "png"])
def test_animations_are_no_photos(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"moving.{ending}"
    frames = [corners(), corners().rotate(180)]
    frames[0].save(path, save_all=True, append_images=frames[1:], duration=100)
    assert "animation of 2 frames" in refused(path)


def test_still_gif_is_a_photo(tmp_path: Path) -> None:
    corners().save(tmp_path / "still.gif")
    assert open_photo(tmp_path / "still.gif").width == 96


def test_tiff_pages(tmp_path: Path) -> None:
    path = tmp_path / "scan.tif"
    corners().save(path, save_all=True, append_images=[corners()])
    assert "2 pages" in refused(path)
    # A reduced copy in the second place is a thumbnail (TIFF 6.0, section 8, NewSubfileType bit 0).
    with_thumbnail = tmp_path / "camera.tif"
    small = corners().resize((48, 32))
    small.encoderinfo = {"tiffinfo": {254: 1}}
    corners().save(with_thumbnail, save_all=True, append_images=[small])
    assert open_photo(with_thumbnail).width == 96


def test_limits_of_size(tmp_path: Path) -> None:
    path = tmp_path / "tag.png"
    corners().save(path)
    assert "too large" in refused(path, Settings(max_bytes=100))
    assert "too many pixels" in refused(path, Settings(max_pixels=6000))
    corners((300, 39)).save(path)
    assert "too small" in refused(path)


def test_a_file_gone_or_locked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert "no such file" in refused(tmp_path / "gone.jpg")
    path = tmp_path / "locked.jpg"
    corners().save(path)

    def no_entry(self: Path) -> bytes:  # root may read all, so the system's answer is played
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", no_entry)
    assert "permission denied" in refused(path)


def test_heic_without_its_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pi_heif", None)
    path = tmp_path / "phone.heic"
    path.write_bytes(b"\0\0\0\x18ftypheic" + b"\0" * 40)
    assert "HEIC" in refused(path)


def test_damaged_heic(tmp_path: Path) -> None:
    sound = (Path(__file__).parent / "data" / "tiny.heic").read_bytes()
    path = tmp_path / "half.heic"
    path.write_bytes(sound[: len(sound) // 2])
    refused(path)


# ---------------------------------------------------------------- finding


def test_finding_in_folders(tmp_path: Path) -> None:
    for name in (
        "IMG_10.JPG",
        "IMG_9.jpg",
        "deep/er/x.heic",
        ".hidden.jpg",
        ".cache/y.jpg",
        "notes.txt",
        "a.cr2",
    ):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(b"x")
    photos, problems = find_photos([tmp_path])
    assert [photo.name for photo in photos] == [
        str(Path("deep/er/x.heic")),
        "IMG_9.jpg",
        "IMG_10.JPG",
    ]
    assert [problem.message for problem in problems] == ["a.cr2 is a camera's raw file, which is not read."]


def test_finding_each_once_and_naming_what_is_missing(tmp_path: Path) -> None:
    (tmp_path / "a.jpg").write_bytes(b"x")
    (tmp_path / "notes.txt").write_bytes(b"x")
    (tmp_path / "bare").mkdir()
    photos, problems = find_photos(
        [tmp_path / "a.jpg", tmp_path, tmp_path / "notes.txt", tmp_path / "gone", tmp_path / "bare"]
    )
    assert [photo.name for photo in photos] == [
        "a.jpg",
        "notes.txt",
    ]  # named directly: opening says what it is
    assert len(problems) == 2
    assert "gone does not exist" in problems[0].message and "bare holds no photos" in problems[1].message


def test_names_that_no_terminal_can_show(tmp_path: Path) -> None:
    os.close(os.open(os.fsencode(tmp_path) + b"/caf\xe9\n.jpg", os.O_CREAT | os.O_WRONLY))
    (photo,), _ = find_photos([tmp_path])
    assert photo.name == "caf??.jpg"
    with pytest.raises(PhotoError, match=r"caf\?\?\.jpg is empty"):
        open_photo(photo.path, photo.name)


def test_natural_order() -> None:
    names = ["t10.jpg", "T9.jpg", "t010.jpg", "a/2.jpg"]
    assert sorted(names, key=natural_key) == ["a/2.jpg", "T9.jpg", "t010.jpg", "t10.jpg"]
