"""What an experienced nursery person would tell you about a tag: record and place in, cautions out.

A caution depends on where the user is, so it is worked out when a record is shown or exported and never
kept. To add one, write its rule in a file here and one line in the list. A rule that lacks what it needs
says nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from ocr_tags.cautions.care import bloom_by_date, water_by_calendar
from ocr_tags.cautions.hardiness import open_rating, verdict, winter_here, zone_worked_out
from ocr_tags.cautions.lifespan import after_frost, life_span, perennial_without_zone
from ocr_tags.cautions.light import light_here, light_key, light_not_in_words
from ocr_tags.cautions.names import front_unread, only_common_name, shared_name, sides_disagree
from ocr_tags.cautions.safety import (
    call_before_digging,
    edible_claim,
    printed_warning,
    propagation,
    regulated,
    silence,
)
from ocr_tags.cautions.sizes import (
    kind_against_name,
    only_flower_height,
    size_out_of_range,
    spacing_without_spread,
    spread_without_spacing,
)
from ocr_tags.cautions.words import colour_words, native_where
from ocr_tags.place import Place
from ocr_tags.record import Caution, TagRecord

__all__ = ["RULES", "cautions", "general", "verdict", "with_cautions"]

Rule = Callable[[TagRecord, Place], Iterator[Caution]]

RULES: tuple[Rule, ...] = (
    printed_warning,
    regulated,
    edible_claim,
    call_before_digging,
    winter_here,
    size_out_of_range,
    kind_against_name,
    sides_disagree,
    front_unread,
    shared_name,
    only_common_name,
    zone_worked_out,
    open_rating,
    perennial_without_zone,
    life_span,
    light_here,
    light_not_in_words,
    after_frost,
    water_by_calendar,
    bloom_by_date,
    spread_without_spacing,
    spacing_without_spread,
    only_flower_height,
    colour_words,
    native_where,
    propagation,
)
"""Every rule; among cautions of one weight this is the order they are told in."""

_WEIGHTS = ("harm", "loss", "note")


def cautions(record: TagRecord, place: Place) -> tuple[Caution, ...]:
    """All cautions on a record for this place, the weightiest first."""
    found = [caution for rule in RULES for caution in rule(record, place)]
    return tuple(sorted(found, key=lambda caution: _WEIGHTS.index(caution.weight)))


def with_cautions(record: TagRecord, place: Place) -> TagRecord:
    """The record with the cautions of this place in it, as it is shown and exported."""
    return replace(record, cautions=cautions(record, place))


def general(place: Place) -> tuple[str, ...]:
    """What holds for every tag, to be said once a page."""
    lines = (
        silence(place),
        "The colours of printed pictures are not true, reds least of all; screens differ as well.",
        f"Light: {light_key()}.",
    )
    if place.zone is None:
        return (
            *lines,
            "Where are you? 'ocr-tags place --zone 5b' lets it say what lives through your winter.",
        )
    return lines
