"""From the tags that were found to what is answered: grouped by plant, the best plant first."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from index.finding import Pool, passing, pool
from index.folding import shape
from index.generation import Documents, Generation
from index.query import Question
from index.ranking import Fit, Known, known, matched_names, why

_AT_LEAST_EACH = 3
_SUGGESTED = 4


@dataclass(frozen=True, slots=True)
class Answer:
    """A tag found: `score` 0 to 100, and which of its names matched."""

    tag_id: str
    score: float
    why: str


@dataclass(frozen=True, slots=True)
class Plant:
    """The tags of one plant that were found, the best first; `total` counts those not listed too."""

    name: str
    answers: tuple[Answer, ...]
    total: int


@dataclass(frozen=True, slots=True)
class Answers:
    """`good` is False when these are only the nearest. `shared` are the plants, when several, that go by
    the name asked for; not all of them need be listed.

    `meant` are names of the index that may have been meant, the nearest first; only when none is good.
    """

    plants: tuple[Plant, ...] = ()
    good: bool = True
    shared: tuple[str, ...] = ()
    meant: tuple[str, ...] = ()


def answers(generation: Generation, question: Question, limit: int) -> Answers:
    """The good answers or, when there is none, the nearest; `limit` tags at most."""
    return (_by_names if question.words else _by_facts)(generation, question, limit)


def _by_names(generation: Generation, question: Question, limit: int) -> Answers:
    found = pool(generation, question, limit)
    best = {doc: how for doc, how in found.ranked.items() if how.good or not found.good}
    order = sorted(best, key=lambda doc: (-best[doc].score, generation.kept(doc).tag_id))
    groups = _grouped(generation, order)
    shared = _sharing(generation, question, groups) if found.good else ()
    each = max(1, limit // len(shared)) if shared else max(_AT_LEAST_EACH, limit // max(1, len(groups)))
    among = found.found if found.good else frozenset()
    plants = []
    for group, documents in groups.items():
        shown = documents[: min(each, limit)]
        limit -= len(shown)
        if shown:
            listed = tuple(_answer(generation, found, document, best[document]) for document in shown)
            plants.append(_plant(generation, group, documents, listed, among))
    meant = () if found.good else _meant(generation, found, order, best)
    return Answers(tuple(plants), found.good, shared, meant)


def _by_facts(generation: Generation, question: Question, limit: int) -> Answers:
    """Tags that fit the fields asked for, in the order they were added."""
    found = passing(generation, question)
    plants = []
    for group, documents in _grouped(generation, sorted(found)[:limit]).items():
        ids = (generation.kept(document).tag_id for document in documents)
        listed = tuple(Answer(tag_id, 100.0, "fits the fields asked for") for tag_id in ids)
        plants.append(_plant(generation, group, documents, listed, found))
    return Answers(tuple(plants))


def _grouped(generation: Generation, documents: Iterable[int]) -> dict[str, list[int]]:
    """The documents of each plant, in the order given; a tag of no known plant stands alone."""
    groups: dict[str, list[int]] = {}
    for document in documents:
        tag = generation.kept(document)
        groups.setdefault(tag.group or tag.tag_id, []).append(document)
    return groups


def _plant(
    generation: Generation,
    group: str,
    documents: list[int],
    listed: tuple[Answer, ...],
    among: Documents,
) -> Plant:
    """The plant of `documents`; those of its tags that are `among` what was found count too."""
    total = max(len(documents), len(among & generation.documents("group", group)))
    return Plant(_title(generation, group, documents[0]), listed, total)


def _answer(generation: Generation, found: Pool, document: int, how: Fit) -> Answer:
    tag = generation.kept(document)
    own, plant = _known(generation, document)
    return Answer(tag.tag_id, how.score, why(found.sought, how, own, plant, tag.plant, sure=tag.sure))


def _known(generation: Generation, document: int) -> tuple[Known, Known | None]:
    tag = generation.kept(document)
    plant = generation.plant(tag.plant)
    return known(tag.names), known(plant.names) if plant else None


def _title(generation: Generation, group: str, document: int) -> str:
    """The plant's name; of a tag of no known plant what was read first."""
    if generation.plant(group):
        return " or ".join(group.split(" | "))
    names = generation.kept(document).names
    return names[0].text if names else ""


def _sharing(generation: Generation, question: Question, groups: dict[str, list[int]]) -> tuple[str, ...]:
    """The plants whose name, in full, is what was asked for; none when it is only one plant's."""
    asked = shape("".join(question.words))
    called = [
        part
        for group, documents in groups.items()
        if any(_is_called(generation, document, asked) for document in documents)
        for part in _title(generation, group, documents[0]).split(" or ")
    ]
    return tuple(dict.fromkeys(called)) if len(called) > 1 else ()


def _is_called(generation: Generation, document: int, asked: str) -> bool:
    own, plant = _known(generation, document)
    names = (*own.names, *(plant.names if plant else ()))
    return any(main and shape("".join(words)) == asked for _, words, main in names)


def _meant(generation: Generation, found: Pool, order: list[int], best: dict[int, Fit]) -> tuple[str, ...]:
    """The names that came nearest, each once."""
    meant: dict[str, str] = {}
    for document in order[: 5 * _SUGGESTED]:
        own, plant = _known(generation, document)
        for name in matched_names(best[document], own, plant)[:1]:
            meant.setdefault(name.text.casefold(), name.text)
    return tuple(meant.values())[:_SUGGESTED]
