"""All settings with their defaults and help, and where each value came from.

Later sources win: default, config file (TOML), environment (`OCR_TAGS_<NAME>`), command option.
"""

from __future__ import annotations

import os
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from ocr_tags.errors import TagError

PREFIX = "OCR_TAGS_"


class SettingError(TagError):
    """A setting has a value that cannot be used."""


def config_file() -> Path:
    """Where the config file stands on this system, whether or not it exists."""
    import platformdirs

    return Path(platformdirs.user_config_dir("ocr-tags", appauthor=False)) / "config.toml"


def default_catalogue() -> Path:
    """The catalogue folder used when none is named."""
    import platformdirs

    return Path(platformdirs.user_data_dir("ocr-tags", appauthor=False)) / "catalogue"


def default_place() -> Path:
    """The file that holds the user's place when none is named."""
    return config_file().with_name("place.toml")


def _help(text: str) -> dict[str, str]:
    return {"help": text}


@dataclass(frozen=True, slots=True)
class Settings:
    """Every choice a user can make; units are part of the name."""

    catalogue: Path = field(
        default_factory=default_catalogue, metadata=_help("Folder of the catalogue and its photos.")
    )
    place: Path = field(
        default_factory=default_place, metadata=_help("File of your place, written by 'ocr-tags place'.")
    )
    reader: str = field(
        default="auto",
        metadata=_help(
            "Engines that read words: auto (all that work), both, tesseract, tesserocr or rapidocr."
        ),
    )
    languages: str = field(default="eng", metadata=_help('Tesseract languages, joined by "+": eng+deu.'))
    tessdata: Path | None = field(
        default=None, metadata=_help("Folder of Tesseract's language data; the system's own when unset.")
    )
    workers: int = field(default=0, metadata=_help("Tags read at once; 0 means one per processor core."))
    timeout_seconds: int = field(
        default=180, metadata=_help("Give a tag's photos up after this long, then each of them.")
    )
    max_pixels: int = field(default=60_000_000, metadata=_help("Largest picture accepted: width x height."))
    max_bytes: int = field(default=100_000_000, metadata=_help("Largest photo file accepted."))
    min_side_pixels: int = field(default=40, metadata=_help("Smallest width or height accepted."))
    pair_seconds: int = field(
        default=60, metadata=_help("Front and back are taken within this time of each other.")
    )
    doubtful_below: float = field(
        default=0.8, metadata=_help("A value with less confidence is marked as doubtful, 0 to 1.")
    )

    def __post_init__(self) -> None:
        if not 0 <= self.doubtful_below <= 1:
            raise SettingError(f"doubtful_below: {self.doubtful_below} does not lie between 0 and 1.")
        for name in ("max_pixels", "max_bytes", "min_side_pixels", "timeout_seconds"):
            if getattr(self, name) < 1:
                raise SettingError(f"{name}: {getattr(self, name)} must be 1 or more.")
        for name in ("workers", "pair_seconds"):
            if getattr(self, name) < 0:
                raise SettingError(f"{name}: {getattr(self, name)} must not be negative.")

    @property
    def worker_count(self) -> int:
        return self.workers or os.cpu_count() or 1


@dataclass(frozen=True, slots=True)
class Loaded:
    """The settings in force, and for each name the place its value came from, in words."""

    settings: Settings
    origins: Mapping[str, str]


def load_settings(
    options: Mapping[str, object] | None = None,
    environ: Mapping[str, str] | None = None,
    config: Path | None = None,
) -> Loaded:
    """Settings from all sources; options that are None were not given.

    `config` is a file the user named, which must exist; without it, `OCR_TAGS_CONFIG` or the usual
    place is read if there is one. Raises SettingError naming the source and the key.
    """
    environ = os.environ if environ is None else environ
    named = config or (Path(environ[PREFIX + "CONFIG"]) if environ.get(PREFIX + "CONFIG") else None)
    values: dict[str, Any] = {}
    origins = {each.name: "default" for each in fields(Settings)}
    for origin, found in (
        *_from_file(named or config_file(), must_exist=named is not None),
        *_from_environment(environ),
        *(("command line", {name: value}) for name, value in (options or {}).items() if value is not None),
    ):
        for name, value in found.items():
            values[name] = _convert(name, value, origin)
            origins[name] = origin
    return Loaded(Settings(**values), origins)


def _from_file(path: Path, *, must_exist: bool) -> list[tuple[str, Mapping[str, object]]]:
    try:
        content = tomllib.loads(path.read_text("utf-8"))
    except FileNotFoundError:
        if must_exist:
            raise SettingError(f"The config file {path} does not exist.") from None
        return []
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise SettingError(f"The config file {path} cannot be read: {error}.") from error
    return [(f"config file {path}", content)]


def _from_environment(environ: Mapping[str, str]) -> list[tuple[str, Mapping[str, object]]]:
    found: list[tuple[str, Mapping[str, object]]] = []
    for each in fields(Settings):
        key = PREFIX + each.name.upper()
        if environ.get(key):
            found.append((f"environment variable {key}", {each.name: environ[key]}))
    return found


def _convert(name: str, value: object, origin: str) -> object:
    """The value in the setting's own type; text is converted, other types must already fit."""
    kinds = {each.name: str(each.type) for each in fields(Settings)}
    if name not in kinds:
        raise SettingError(f"{origin}: there is no setting called {name!r}.", f"Known: {', '.join(kinds)}.")
    try:
        match kinds[name]:
            case "int" if not isinstance(value, bool | float):
                return int(str(value))
            case "float" if not isinstance(value, bool):
                return float(str(value))
            case "Path" | "Path | None" if isinstance(value, str | Path):
                return Path(value).expanduser()
            case "str" if isinstance(value, str):
                return value
    except ValueError:
        pass
    kind = {"int": "a whole number", "float": "a number", "str": "text"}.get(kinds[name], "a folder")
    raise SettingError(f"{origin}: {name} must be {kind}, not {value!r}.")
