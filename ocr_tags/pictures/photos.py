"""Photo files found, and opened upright: one clear sentence for every file that is no photo."""

from __future__ import annotations

import hashlib
import io
import os
import re
import warnings
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PIL import Image, UnidentifiedImageError

from ocr_tags.errors import PhotoError
from ocr_tags.pictures.pixels import Pixels, to_bgr, upright
from ocr_tags.settings import Settings

# fmt: off
PHOTO_ENDINGS = frozenset((
    ".jpg", ".jpeg", ".jpe", ".jfif", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif", ".hif",
    ".avif", ".bmp", ".gif",
))
RAW_ENDINGS = frozenset((
    ".dng", ".cr2", ".cr3", ".nef", ".arw", ".raf", ".orf", ".rw2", ".pef", ".srw",
))
# fmt: on
HEIF_BRANDS = frozenset((b"heic", b"heix", b"heim", b"heis", b"hevc", b"mif1", b"msf1"))
# Only these decoders are let near a stranger's file: Pillow knows others that start outside programs.
FORMATS = ("JPEG", "MPO", "PNG", "TIFF", "WEBP", "BMP", "GIF", "AVIF", "HEIF")
ASK = "Save it as JPEG or PNG."


@dataclass(frozen=True, slots=True)
class PhotoFile:
    """A file that should be a photo. `name` is its path below the folder given, or its plain file name."""

    path: Path
    name: str


@dataclass(frozen=True, slots=True, eq=False)
class OpenedPhoto:
    """A photo as a person sees it: `pixels` are BGR, uint8, height x width x 3, upright."""

    path: Path
    name: str
    sha256: str
    pixels: Pixels
    width: int
    height: int
    taken_at: str | None = None


# ---------------------------------------------------------------- finding


def find_photos(paths: Iterable[Path]) -> tuple[list[PhotoFile], list[PhotoError]]:
    """All photo files named or below the folders named, in natural order, each once.

    In a folder, hidden entries and files whose ending is not a picture's are passed over; a file named
    directly is always taken, so that opening it can say what is wrong with it.
    """
    found: dict[Path, PhotoFile] = {}
    problems: list[PhotoError] = []
    for path in paths:
        try:
            for photo in sorted(_below(path, problems), key=lambda each: natural_key(each.name)):
                found.setdefault(photo.path.resolve(), photo)
        except OSError as error:
            problems.append(PhotoError(f"{printable(path)} cannot be looked at: {reason(error)}."))
    return sorted(found.values(), key=lambda each: natural_key(str(each.path))), problems


def _below(path: Path, problems: list[PhotoError]) -> Iterator[PhotoFile]:
    if path.is_dir():
        yield from _in_folder(path, problems)
    elif path.is_file():
        yield PhotoFile(path, printable(path.name))
    elif path.exists():
        problems.append(PhotoError(f"{printable(path)} is neither a file nor a folder."))
    else:
        problems.append(PhotoError(f"{printable(path)} does not exist."))


def _in_folder(top: Path, problems: list[PhotoError]) -> Iterator[PhotoFile]:
    def note(error: OSError) -> None:
        shown = printable(error.filename)
        problems.append(PhotoError(f"The folder {shown} cannot be read: {reason(error)}."))

    before, any_found = len(problems), False
    for folder, inner, names in os.walk(top, onerror=note):
        inner[:] = [name for name in inner if not name.startswith(".")]
        for name in names:
            path = Path(folder, name)
            shown = printable(path.relative_to(top))
            if name.startswith(".") or not path.is_file():
                continue
            if path.suffix.lower() in RAW_ENDINGS:
                problems.append(PhotoError(f"{shown} is a camera's raw file, which is not read.", ASK))
            elif path.suffix.lower() in PHOTO_ENDINGS:
                any_found = True
                yield PhotoFile(path, shown)
    if not any_found and len(problems) == before:
        problems.append(PhotoError(f"The folder {printable(top)} holds no photos."))


def natural_key(text: str) -> tuple[tuple[int, int, str], ...]:
    """A sort key that puts 9 before 10 and pays no heed to case.

    >>> sorted(["b2", "B10", "b1", "a/x"], key=natural_key)
    ['a/x', 'b1', 'b2', 'B10']
    """
    parts = re.findall(r"\d+|\D", text.casefold().replace(os.sep, "\0"))
    return tuple((0, int(part), part) if part.isdecimal() else (1, ord(part[0]), "") for part in parts)


def printable(path: str | Path) -> str:
    """The path as text any terminal and any JSON can take: odd bytes and control characters become "?"."""
    text = str(path).encode("utf-8", "replace").decode("utf-8")
    return "".join(each if each.isprintable() else "?" for each in text)


def reason(error: OSError) -> str:
    """The system's own words for what went wrong, to end a sentence with.

    >>> reason(PermissionError(13, "Permission denied"))
    'permission denied'
    """
    words = error.strerror or str(error) or type(error).__name__
    return words[:1].lower() + words[1:]


# ---------------------------------------------------------------- opening


def fingerprint(path: Path) -> str:
    """SHA-256 of the file's bytes in hexadecimal; PhotoError when it cannot be read."""
    try:
        with path.open("rb") as stream:
            return hashlib.file_digest(stream, "sha256").hexdigest()
    except OSError as error:
        raise PhotoError(f"{printable(path.name)} cannot be read: {reason(error)}.") from error


def open_photo(path: Path, name: str | None = None, settings: Settings | None = None) -> OpenedPhoto:
    """The photo upright, with its fingerprint and the time it was taken; PhotoError says why not."""
    shown = name or printable(path.name)
    settings = settings or Settings()
    data = _bytes_of(path, shown, settings.max_bytes)
    image = _decode(data, shown, settings)
    pixels = upright(to_bgr(image), _orientation(image))
    height, width = pixels.shape[:2]
    return OpenedPhoto(path, shown, hashlib.sha256(data).hexdigest(), pixels, width, height, _taken_at(image))


def _bytes_of(path: Path, shown: str, limit: int) -> bytes:
    try:
        size = path.stat().st_size
        if size > limit:
            raise PhotoError(
                f"{shown} is too large: {size / 1e6:.0f} MB, and the limit is {limit / 1e6:.0f} MB.",
                "Save a smaller copy, or raise max_bytes.",
            )
        data = path.read_bytes()
    except OSError as error:
        raise PhotoError(f"{shown} cannot be read: {reason(error)}.") from error
    if not data:
        raise PhotoError(f"{shown} is empty.", "Copy it again from the camera or phone.")
    return data


def _decode(data: bytes, shown: str, settings: Settings) -> Image.Image:
    Image.init()
    _ready_for_heif(data, shown)
    try:
        with warnings.catch_warnings():
            # Our own limit below is the lower one; Pillow's damage warnings say nothing a user can use.
            warnings.simplefilter("ignore")
            image = Image.open(io.BytesIO(data), formats=[each for each in FORMATS if each in Image.OPEN])
            _check_size(image.size, shown, settings)
            _check_single(image, shown)
            image.load()
            return image
    except PhotoError:
        raise
    except Image.DecompressionBombError as error:
        raise _too_many_pixels(shown, "more than Pillow opens", settings.max_pixels) from error
    except UnidentifiedImageError as error:
        raise _not_a_picture(data, shown) from error
    except MemoryError as error:
        message = f"{shown} is too large for this machine's memory."
        raise PhotoError(message, "Save a smaller copy.") from error
    except Exception as error:  # damaged files make decoders raise nearly anything, SyntaxError included
        if "truncated" in str(error).lower() or isinstance(error, EOFError):
            message = f"{shown} is cut short: the picture ends before its last line."
        else:
            message = f"{shown} is damaged and cannot be decoded."
        raise PhotoError(message, "Copy it again from the camera or phone.") from error


def _ready_for_heif(data: bytes, shown: str) -> None:
    if data[4:8] != b"ftyp" or data[8:12] not in HEIF_BRANDS:
        return
    try:
        import pi_heif
    except ImportError as error:
        raise PhotoError(
            f"{shown} is a HEIC photo, and the package that reads those is missing.", "pip install pi-heif"
        ) from error
    pi_heif.register_heif_opener()


def _check_size(size: tuple[int, int], shown: str, settings: Settings) -> None:
    width, height = size
    if width * height > settings.max_pixels:
        raise _too_many_pixels(shown, f"{width} x {height}", settings.max_pixels)
    if min(size) < settings.min_side_pixels:
        raise PhotoError(f"{shown} is too small to hold legible print: {width} x {height} pixels.")


def _too_many_pixels(shown: str, amount: str, limit: int) -> PhotoError:
    return PhotoError(
        f"{shown} has too many pixels ({amount}; the limit is {limit / 1e6:.0f} million).",
        "Save a smaller copy, or raise max_pixels.",
    )


def _check_single(image: Image.Image, shown: str) -> None:
    """One picture per file. A second picture that is a phone's depth map or a thumbnail does not count."""
    frames = getattr(image, "n_frames", 1)
    if frames < 2 or image.format in {"MPO", "JPEG", "HEIF"}:
        return
    if image.format == "TIFF":
        pages = _full_pages(image, frames)
        if pages > 1:
            raise PhotoError(f"{shown} has {pages} pages.", "Save each page as a picture of its own.")
        return
    raise PhotoError(f"{shown} is an animation of {frames} frames, not a photo.", ASK)


def _full_pages(image: Image.Image, frames: int) -> int:
    """TIFF pages that are not marked as a reduced copy or a mask (NewSubfileType, TIFF 6.0 section 8)."""
    pages = 0
    for frame in range(frames):
        image.seek(frame)
        pages += not int(getattr(image, "tag_v2", {}).get(254, 0)) & 0b101
    image.seek(0)
    return pages


def _not_a_picture(data: bytes, shown: str) -> PhotoError:
    if data.startswith(b"%PDF"):
        return PhotoError(f"{shown} is a PDF document, not a photo.", "Save its pages as pictures.")
    if Path(shown).suffix.lower() in RAW_ENDINGS:
        return PhotoError(f"{shown} is a camera's raw file, which is not read.", ASK)
    return PhotoError(f"{shown} is not a picture in a format we read (JPEG, PNG, TIFF, WebP, HEIC).")


def _orientation(image: Image.Image) -> int:
    """Asked after decoding: Pillow turns TIFF and HEIC itself and then says 1."""
    try:
        return int(image.getexif().get(274, 1))
    except Exception:  # a broken EXIF block must not cost a sound picture
        return 1


def _taken_at(image: Image.Image) -> str | None:
    """When the picture was taken, by the camera's clock (EXIF DateTimeOriginal, else DateTimeDigitized)."""
    try:
        details = image.getexif().get_ifd(0x8769)
        for tag in (36867, 36868):
            if details.get(tag):
                return datetime.strptime(str(details[tag]).strip("\0 "), "%Y:%m:%d %H:%M:%S").isoformat()
    except Exception:  # as above; cameras without a set clock write 0000:00:00
        return None
    return None
