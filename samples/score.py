"""Records against the truth of drawn samples: right, wrong, missing, field by field.

Both sides are JSON in the record's outside shape, so records of any origin can be scored. The rules of
equality stand here, apart from the package, so that the package cannot excuse itself.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from rapidfuzz import fuzz

Json = Any
NUMBERS = {
    "height",
    "flower_height",
    "spread",
    "spacing",
    "row_spacing",
    "min_temperature",
    "days_to_maturity",
}
SETS = {"light", "categories"}
PHRASES = {"water", "soil", "feeding", "native_claim", "container", "supplier"}
PHRASE_SETS = {"colours", "warnings"}
LIKE = 80.0
"""Two printed phrases whose words agree to this share are the same phrase."""
TENTH = 0.051
"""In degrees Celsius, half a step of what truth rounded to tenths gives, and the dust of binary figures."""
OWN_WORDS = frozenset(["caution", "warning", "attention", "water", "watering", "soil", "needs"])
"""What a field is called and how a warning begins: with or without them a phrase is the same."""


@dataclass(frozen=True)
class Verdict:
    """One value: what the tag says, what was read, and whether that is right, wrong or missing."""

    tag: str
    field: str
    outcome: str
    truth: Json
    got: Json
    confidence: float | None = None
    status: str = ""


@dataclass
class Tally:
    right: int = 0
    wrong: int = 0
    missing: int = 0
    names: Counter[str] = field(default_factory=Counter)

    def add(self, verdict: Verdict) -> None:
        setattr(self, verdict.outcome, getattr(self, verdict.outcome) + 1)

    @property
    def precision(self) -> float:
        return self.right / max(self.right + self.wrong, 1)

    @property
    def recall(self) -> float:
        return self.right / max(self.right + self.missing, 1)

    @property
    def f1(self) -> float:
        """A wrong value in place of a printed one counts against both precision and recall."""
        return 2 * self.precision * self.recall / max(self.precision + self.recall, 1e-9)

    @property
    def wrong_share(self) -> float:
        return self.wrong / max(self.right + self.wrong, 1)


def judge(truth: Mapping[str, Json], record: Mapping[str, Json] | None) -> Iterator[Verdict]:
    """Every value that the tag or the record holds. A wrong value for a printed one is also a missing one."""
    got = (record or {}).get("fields", {})
    for name in sorted({*truth["fields"], *got}):
        if name in {"rhs_rating", "heat_zones"} and name not in truth["fields"]:
            continue
        yield from _judge_field(
            truth["tag"], name, truth["fields"].get(name), got.get(name), _selling_names(truth)
        )


def name_found(truth: Mapping[str, Json], record: Mapping[str, Json] | None) -> bool:
    """Whether the main common name or the botanical name was read right."""
    fields, got = truth["fields"], (record or {}).get("fields", {})
    botanical = "botanical_name" in fields and "botanical_name" in got
    if botanical and _same(
        "botanical_name", fields["botanical_name"]["value"], got["botanical_name"]["value"]
    ):
        return True
    printed, own = fields.get("common_names", []), _selling_names(truth)
    return bool(printed) and any(
        _common(printed[0]["value"], own) == _common(name["value"], own)
        for name in got.get("common_names", [])
    )


def _selling_names(truth: Mapping[str, Json]) -> list[str]:
    """What a tag prints as cultivar or trade name, folded: each may stand before its common name."""
    name = truth["fields"].get("botanical_name", {}).get("value", {})
    sold_as = truth.get("also_printed", {}).get("selling_name", {}).get("value")
    parts = (name.get("cultivar"), name.get("trade_designation"), sold_as)
    return [_fold(part) for part in parts if part]


def _common(name: str, selling_names: Iterable[str]) -> str:
    """A common name folded, without the selling name before or behind it: where one ends and the other begins
    the trade itself does not tell ("Sky Lantern Meadow Sage" is right, and so is "Meadow Sage")."""
    plain = _fold(name)
    for own in selling_names:
        rest = plain.removeprefix(own) if plain.startswith(own) else plain.removesuffix(own)
        plain = rest or plain
    return plain


def _judge_field(tag: str, name: str, truth: Json, got: Json, selling_names: list[str]) -> Iterator[Verdict]:
    if name == "common_names":
        yield from _judge_names(tag, truth or [], got or [], selling_names)
        return
    if got is None:
        yield Verdict(tag, name, "missing", truth["value"], None)
        return
    sure = got["confidence"], got.get("status", "")
    if truth is None:
        yield Verdict(tag, name, "wrong", None, got["value"], *sure)
    elif _same(name, truth["value"], got["value"]):
        yield Verdict(tag, name, "right", truth["value"], got["value"], *sure)
    else:
        yield Verdict(tag, name, "wrong", truth["value"], got["value"], *sure)
        yield Verdict(tag, name, "missing", truth["value"], got["value"])


def judge_part(name: str, truth: Json, part: Json) -> bool:
    """Whether one item of a list is among those printed."""
    return any(_same(name, [item], [part]) for item in truth)


def _judge_names(tag: str, truth: list[Json], got: list[Json], selling_names: list[str]) -> Iterator[Verdict]:
    wanted = {_common(entry["value"], selling_names): entry["value"] for entry in truth}
    for entry in got:
        printed = wanted.pop(_common(entry["value"], selling_names), None)
        outcome = "right" if printed else "wrong"
        sure = entry["confidence"], entry.get("status", "")
        yield Verdict(tag, "common_names", outcome, printed, entry["value"], *sure)
    for printed in wanted.values():
        yield Verdict(tag, "common_names", "missing", printed, None)


def _same(name: str, truth: Json, got: Json) -> bool:
    if name in NUMBERS:
        return _numbers(truth, got)
    if name == "price":
        return Decimal(truth["amount"]) == Decimal(got["amount"]) and truth["currency"] == got["currency"]
    if name == "patents":
        return {_patent(item) for item in truth} == {_patent(item) for item in got}
    if name in SETS:
        return {_fold(item) for item in truth} == {_fold(item) for item in got}
    if name in PHRASE_SETS:
        return _phrases(truth, got)
    if name == "botanical_name":
        parts = ("genus", "species", "cultivar")
        return all(_fold(truth.get(part) or "") == _fold(got.get(part) or "") for part in parts)
    if name == "bloom":
        seasons = set(truth["seasons"]) == set(got["seasons"]) and bool(truth["seasons"])
        months = set(truth["months"]) == set(got["months"]) and bool(truth["months"])
        return seasons or months or _phrase(truth["text"], got["text"])
    if name in PHRASES:
        return _phrase(truth, got)
    if isinstance(truth, Mapping):
        return all(_fold(truth.get(part) or "") == _fold(got.get(part) or "") for part in {*truth, *got})
    return _fold(truth) == _fold(got)


def _patent(text: str) -> str:
    """One form for a plant patent of the USA: "USPP 12,345", "U.S. Plant Patent No. 12345"."""
    return re.sub(r"^(?:us)?(?:plantpatent(?:no)?|pp)(?=\d|af)", "pp", _fold(text))


def _numbers(truth: Mapping[str, Json], got: Mapping[str, Json]) -> bool:
    """Within a hundredth, and a temperature to the tenth of a degree to which truth may be rounded."""
    for part in truth:
        a, b = truth[part], got.get(part)
        if (a is None) != (b is None) or (
            a is not None and abs(a - b) > max(0.01 * max(abs(a), 1), TENTH if part == "celsius" else 0)
        ):
            return False
    return True


def _phrases(truth: Iterable[str], got: Iterable[str]) -> bool:
    left = list(got)
    for item in truth:
        match = next((other for other in left if _phrase(item, other)), None)
        if match is None:
            return False
        left.remove(match)
    return not left


def _phrase(truth: str, got: str) -> bool:
    """Whether all of a phrase was read, and nothing more; of one printed in two languages, either."""
    wanted = {truth, *truth.split(" / ")}
    return any(fuzz.token_sort_ratio(_plain(one), _plain(got)) >= LIKE for one in wanted)


def _plain(text: str) -> str:
    """The words of a phrase but its own ones, unless it has no others."""
    said = _fold(text, " ")
    return " ".join(word for word in said.split() if word not in OWN_WORDS) or said


def _fold(text: str, between: str = "") -> str:
    plain = unicodedata.normalize("NFKD", str(text).replace("×", "x"))
    kept = "".join(c if c.isalnum() else " " for c in plain.casefold() if not unicodedata.combining(c))
    return between.join(kept.split())
