"""From the tags that were found to what is answered: grouped by plant, the best plant first."""

from __future__ import annotations

from dataclasses import dataclass

from index.finding import Pool, passing, pool
from index.folding import shape
from index.generation import Generation
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
    if not question.words:
        return _by_facts(generation, question, limit)
    found = pool(generation, question, limit)
    best = {doc: how for doc, how in found.ranked.items() if how.good or not found.good}
    order = sorted(best, key=lambda doc: (-best[doc].score, generation.kept(doc).tag_id))
    groups: dict[str, list[int]] = {}
    for document in order:
        groups.setdefault(generation.kept(document).group or generation.kept(document).tag_id, []).append(
            document
        )
    shared = _sharing(generation, question, groups) if found.good else ()
    each = max(1, limit // len(shared)) if shared else max(_AT_LEAST_EACH, limit // max(1, len(groups)))
    plants = []
    for group, documents in groups.items():
        shown = documents[: min(each, limit)]
        limit -= len(shown)
        if shown:
            total = len(found.found & generation.documents("group", group)) if found.good else len(documents)
            listed = tuple(_answer(generation, found, document, best[document]) for document in shown)
            plants.append(Plant(_title(generation, group, shown[0]), listed, max(total, len(documents))))
    return Answers(
        tuple(plants),
        found.good,
        shared,
        () if found.good else _meant(generation, found, order, best),
    )


def _by_facts(generation: Generation, question: Question, limit: int) -> Answers:
    """Tags that fit the fields asked for, in the order they were added."""
    found = passing(generation, question)
    groups: dict[str, list[int]] = {}
    for document in sorted(found)[:limit]:
        groups.setdefault(generation.kept(document).group or generation.kept(document).tag_id, []).append(
            document
        )
    return Answers(
        tuple(
            Plant(
                _title(generation, group, documents[0]),
                tuple(
                    Answer(generation.kept(doc).tag_id, 100.0, "fits the fields asked for")
                    for doc in documents
                ),
                max(len(documents), len(found & generation.documents("group", group))),
            )
            for group, documents in groups.items()
        )
    )


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
