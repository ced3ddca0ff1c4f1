"""Where the user is: the few facts of a place that change what a tag means there.

A place is a small TOML file of texts, beside the config file, or the same texts typed for one command.
Every text is optional; what is not known is None, and whoever needs it stays silent.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, Literal, get_args

from ocr_tags.errors import TagError
from ocr_tags.measures.lengths import Units
from ocr_tags.usda import halves, zone_for

Heat = Literal["cool", "average", "hot"]
Hemisphere = Literal["north", "south"]
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


class PlaceError(TagError):
    """A part of the place cannot be understood."""


@dataclass(frozen=True, slots=True)
class Point:
    """Degrees north and east (south and west are negative), and metres above the sea where known."""

    latitude: float
    longitude: float
    elevation_m: float | None = None

    def __str__(self) -> str:
        high = "" if self.elevation_m is None else f", {self.elevation_m:g} m"
        return f"{self.latitude:g}, {self.longitude:g}{high}"


@dataclass(frozen=True, slots=True)
class Day:
    """A day of any year."""

    month: int
    day: int

    def __str__(self) -> str:
        return f"{self.day} {MONTHS[self.month - 1]}"


@dataclass(frozen=True, slots=True)
class Place:
    """The profile; a part that is not known is None.

    `zone` is a USDA zone, "5" or "5b". `heat` tells of the summers, `country` is an ISO 3166 code.
    `hemisphere` counts where `at` is unknown. Frosts are the usual last one of spring and first one of
    autumn. `units` is how lengths are shown, both ways when None. `tags_at` is where the bloom months of
    the user's tags were written for.
    """

    zone: str | None = None
    heat: Heat | None = None
    country: str | None = None
    at: Point | None = None
    hemisphere: Hemisphere | None = None
    last_frost: Day | None = None
    first_frost: Day | None = None
    units: Units | None = None
    tags_at: Point | None = None

    @property
    def south(self) -> bool:
        """True when it is known to lie in the southern half of the world."""
        return self.hemisphere == "south" or (self.at is not None and self.at.latitude < 0)

    @property
    def halves(self) -> tuple[int, int] | None:
        """Coldest and warmest half zone it may lie in, as places in the USDA table."""
        return None if self.zone is None else halves(self.zone)

    def texts(self) -> dict[str, str]:
        """What is known, as it may be typed; `place_from` reads it back."""
        known = ((each.name, getattr(self, each.name)) for each in fields(self))
        return {name: str(value) for name, value in known if value is not None}


# ---------------------------------------------------------------- file


def load_place(path: Path) -> Place:
    """The place kept in this file; an empty one when there is no file. PlaceError when it is damaged."""
    try:
        kept = tomllib.loads(path.read_text("utf-8"))
    except FileNotFoundError:
        return Place()
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise PlaceError(f"{path} cannot be read: {error}.", "Correct or remove it.") from error
    try:
        return place_from({name: str(value) for name, value in kept.items()})
    except PlaceError as error:
        raise PlaceError(f"{path}: {error.message}", error.remedy) from None


def save_place(place: Place, path: Path) -> None:
    """Write the place to its file; PlaceError when that cannot be done."""
    lines = [f"{name} = {json.dumps(text)}\n" for name, text in place.texts().items()]
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("".join(lines), "utf-8")
    except OSError as error:
        raise PlaceError(f"{path} cannot be written: {error.strerror}.") from error


# ---------------------------------------------------------------- text


def place_from(texts: Mapping[str, str], base: Place | None = None) -> Place:
    """A place from texts by name, laid over `base`; an empty text takes that part away.

    >>> place_from({"zone": "-15 F", "at": "46.8, -92.1, 690 ft"}).texts()
    {'zone': '5b', 'at': '46.8, -92.1, 210 m'}

    Raises PlaceError naming the part and how to write it.
    """
    known = [each.name for each in fields(Place)]
    values: dict[str, Any] = {name: getattr(base, name) for name in known} if base else {}
    for name, text in texts.items():
        if name not in known:
            raise PlaceError(f"A place has no {name!r}.", f"Known: {', '.join(known)}.")
        values[name] = _READERS[name](text.strip()) if text.strip() else None
        if values[name] is None and text.strip():
            raise PlaceError(f"{name}: {text!r} is not understood.", f"Write it like {_EXAMPLES[name]}.")
    return Place(**values)


_FIGURE = r"\d{1,2}(?:\.\d+)?"
_DEGREES = re.compile(rf"([-−–])\s*({_FIGURE})\s*°?\s*([FC])|()({_FIGURE})[°\s]\s*([FC])", re.I)
"""A sign, a blank or a degree sign must tell: "5c" is neither a zone nor surely 5 °C."""
_POINT = re.compile(
    r"([-−]?\d{1,2}(?:\.\d+)?)\s*[,;/ ]\s*([-−]?\d{1,3}(?:\.\d+)?)"
    r"(?:\s*[,;/ ]\s*([-−]?\d{1,4}(?:\.\d+)?)\s*(m|ft)\.?)?",
    re.I,
)
_DAY = re.compile(r"(?:(?P<day>\d{1,2})\.?\s+)?(?P<month>[a-z]{3,9})\.?(?:\s+(?P<after>\d{1,2}))?", re.I)
_LONGEST_MONTH = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def _zone(text: str) -> str | None:
    degrees = _DEGREES.fullmatch(text)
    if degrees:
        minus, figure, scale = (part for part in degrees.groups() if part is not None)
        value = float(figure) * (-1 if minus else 1)
        return zone_for(value if scale in "Cc" else (value - 32) * 5 / 9)
    zone = text.lower().removeprefix("zone").strip()
    try:
        halves(zone)
    except ValueError:
        return None
    return zone


def _point(text: str) -> Point | None:
    match = _POINT.fullmatch(text)
    if match is None:
        return None
    latitude, longitude = (float(match[n].replace("−", "-")) for n in (1, 2))
    high = None
    if match[3]:
        metres = 0.3048 if match[4].lower() == "ft" else 1.0
        high = float(round(float(match[3].replace("−", "-")) * metres))
    return Point(latitude, longitude, high) if abs(latitude) <= 90 and abs(longitude) <= 180 else None


def _day(text: str) -> Day | None:
    match = _DAY.fullmatch(text)
    number = match and (match["day"] or match["after"])
    short = match["month"][:3].capitalize() if match else ""
    if not match or not number or short not in MONTHS or (match["day"] and match["after"]):
        return None
    month = MONTHS.index(short) + 1
    return Day(month, int(number)) if 1 <= int(number) <= _LONGEST_MONTH[month - 1] else None


def _country(text: str) -> str | None:
    code = {"UK": "GB", "USA": "US"}.get(text.upper(), text.upper())
    return code if re.fullmatch("[A-Z]{2}", code) else None


def _one_of(words: tuple[str, ...]) -> Callable[[str], str | None]:
    return lambda text: text.lower() if text.lower() in words else None


_READERS: Mapping[str, Callable[[str], Any]] = {
    "zone": _zone,
    "heat": _one_of(get_args(Heat)),
    "country": _country,
    "at": _point,
    "hemisphere": _one_of(get_args(Hemisphere)),
    "last_frost": _day,
    "first_frost": _day,
    "units": _one_of(get_args(Units)),
    "tags_at": _point,
}
_EXAMPLES: Mapping[str, str] = {
    "zone": "5, 5b or -15 F",
    "heat": "cool, average or hot",
    "country": "US or NL",
    "at": "46.8, -92.1 or 46.8, -92.1, 210 m",
    "hemisphere": "north or south",
    "last_frost": "10 May",
    "first_frost": "1 Oct",
    "units": "in or cm",
    "tags_at": "39.8, -86.1",
}
