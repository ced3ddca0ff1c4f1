"""From a question to the tags that may answer it, and the best of them.

All is done with sets of document numbers: for every word the documents that may mean it, and what is common
to all words. First with the words as typed, then with every word near to them, then with one word left out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from index.folding import shape
from index.generation import Documents, Generation
from index.query import Question, Words
from index.ranking import Fit, Known, fit, known
from index.sought import Sought, misspelt, spelt

RANKED = 80
"""So many tags at least are looked at name by name; more are only counted."""
_PLANTS_RANKED = 30
_TAGS_OF_A_PLANT = 24
_NEARER = 0.8
_NEARLY_ALL, _MANY = 0.3, 2_000
_TWO_WORDS = 9

Ranked = dict[int, Fit]


class Pool:
    """The documents that fit a question in some way, `found`; and those of them looked at, `ranked`."""

    def __init__(self, sought: Sought, found: Documents, ranked: Ranked) -> None:
        self.sought = sought
        self.found = found
        self.ranked = ranked

    @property
    def good(self) -> bool:
        return any(how.good for how in self.ranked.values())


def pool(generation: Generation, question: Question, limit: int) -> Pool:
    """The first way of taking the words that gives a good answer; else all ways together.

    The more tags are wanted (`limit`), the more are looked at.
    """
    allowed = _allowed(generation, question)
    last = Pool(spelt(question.words, generation.vocabulary), frozenset(), {})
    if allowed is not None and not allowed:
        return last
    for sought, found in _stages(generation, question.words):
        kept = found if allowed is None else found & allowed
        if not kept:
            continue
        before = last.ranked if sought is last.sought else {}
        chosen = [d for d in _chosen(generation, sought, kept, max(RANKED, 2 * limit)) if d not in before]
        ranked = {d: _fit(generation, sought, d) for d in chosen if _passes(generation, question, d)}
        last = Pool(sought, last.found | kept, last.ranked | ranked)
        if last.good:
            break
    return last


def passing(generation: Generation, question: Question) -> Documents:
    """The tags that pass a question without words."""
    return (_allowed(generation, question) or frozenset()) - generation.plants


# ---------------------------------------------------------------- what is common to all words


def _stages(generation: Generation, words: Words) -> Iterator[tuple[Sought, Documents]]:
    """From the strictest to the loosest way of taking the words."""
    right = spelt(words, generation.vocabulary)
    yield right, _common(_each(generation, right, 0.0))
    near = misspelt(words, generation.vocabulary, generation.count)
    yield near, _common(_each(generation, near, _NEARER))
    loose = _each(generation, near, 0.0)
    yield near, _common(loose)
    if len(loose) > 1:
        yield near, frozenset().union(*_all_but_one(loose))


def _common(each: list[Documents]) -> Documents:
    if not each:
        return frozenset()
    first, *rest = sorted(each, key=len)
    return first.intersection(*rest)


def _all_but_one(each: list[Documents]) -> Iterator[Documents]:
    for place in range(len(each)):
        yield _common(each[:place] + each[place + 1 :])


def _each(generation: Generation, sought: Sought, least: float) -> list[Documents]:
    """For each word the documents that may mean it; a letter, or a word of nearly all, restricts nothing."""
    together = [_together(generation, sought, place, least) for place in range(len(sought.words) - 1)]
    found = []
    for place, word in enumerate(sought.words):
        if len(word) == 1:
            continue
        meant = _meaning(generation, word, sought, place, least)
        beside = together[max(0, place - 1) : place + 1]
        found.append(meant.union(*beside) if any(beside) else meant)
    if len(found) > 1:
        many = max(_MANY, _NEARLY_ALL * generation.tags)
        found = [documents for documents in found if len(documents) <= many] or found
    return found


def _meaning(generation: Generation, word: str, sought: Sought, place: int, least: float) -> Documents:
    sets = [generation.documents("words", each) for each, fit in sought.fits[place].items() if fit >= least]
    if word not in generation.vocabulary:
        sets.append(generation.with_tags_of_plants(generation.documents("joined", word)))
        for left, right in generation.vocabulary.halves(word):
            sets.append(generation.documents("words", left) & generation.documents("words", right))
        sets.append(generation.with_tags_of_plants(generation.documents("names", shape(word))))
        if least == 0 and len(word) >= _TWO_WORDS and not any(sets):
            sets += [generation.documents("words", part) for part in generation.vocabulary.parts(word)]
    return sets[0] if len(sets) == 1 else frozenset().union(*sets)


def _together(generation: Generation, sought: Sought, place: int, least: float) -> Documents:
    """Those that have two neighbouring words of the question as one."""
    near = sought.together.get(place, {})
    return frozenset().union(
        *(generation.documents("words", each) for each, fit in near.items() if fit >= least)
    )


# ---------------------------------------------------------------- what must be so


def _allowed(generation: Generation, question: Question) -> Documents | None:
    """The documents that pass what is asked beside the words; None when nothing is."""
    sets = [
        _with_fact(generation, wanted.field, wanted.passes)
        for wanted in question.filters
        if not wanted.negated
    ]
    sets += [_with_phrase(generation, phrase) for phrase in question.phrases]
    unwanted = [
        _with_fact(generation, wanted.field, wanted.passes) for wanted in question.filters if wanted.negated
    ]
    unwanted += [_with_phrase(generation, phrase) for phrase in question.without]
    if not sets and not unwanted:
        return None
    return _common(sets or [generation.everything]).difference(*unwanted)


def _with_fact(generation: Generation, field: str, passes: Callable[[str], bool]) -> Documents:
    opens = f"{field}="
    facts = [fact for fact in generation.facts if fact.startswith(opens) and passes(fact[len(opens) :])]
    return frozenset().union(*(generation.documents("facts", fact) for fact in facts))


def _with_phrase(generation: Generation, phrase: Words) -> Documents:
    """Those that have the words, each beside the next."""
    if len(phrase) == 1:
        return generation.documents("words", phrase[0])
    pairs = [generation.documents("joined", left + right) for left, right in pairwise(phrase)]
    return _common([generation.with_tags_of_plants(pair) for pair in pairs])


def _passes(generation: Generation, question: Question, document: int) -> bool:
    """A last look at the phrases: pairs of words may have been pairs of two different names."""
    if not any(len(phrase) > 1 for phrase in question.phrases):
        return True
    names = [
        f" {' '.join(words)} "
        for record in _records(generation, document)
        if record
        for _, words, _ in record.names
    ]
    return all(any(f" {' '.join(phrase)} " in name for name in names) for phrase in question.phrases)


# ---------------------------------------------------------------- which of them to look at


def _records(generation: Generation, document: int) -> tuple[Known, Known | None]:
    tag = generation.kept(document)
    plant = generation.plant(tag.plant)
    return known(tag.names), known(plant.names) if plant else None


def _fit(generation: Generation, sought: Sought, document: int) -> Fit:
    own, plant = _records(generation, document)
    return fit(sought, own, plant)


def _chosen(generation: Generation, sought: Sought, found: Documents, most: int) -> list[int]:
    """The tags to look at: all when they are few, else those likely to be the best."""
    tags = found - generation.plants
    if len(tags) <= most:
        return sorted(tags)
    chosen: dict[int, None] = {}
    for likely in _likely(generation, sought, found):
        chosen.update(dict.fromkeys(sorted(likely & tags)[:most]))
        if len(chosen) >= most:
            break
    return list(chosen)[:most]


def _likely(generation: Generation, sought: Sought, found: Documents) -> Iterator[Documents]:
    """Parts of what was found, the likeliest first: called so in full, then with the words side by side."""
    whole = generation.documents("names", shape("".join(sought.words)))
    yield from (_some_tags(generation, plant, found) for plant in sorted(whole & generation.plants))
    yield whole
    pairs = [left + right for left, right in pairwise(sought.words)]
    beside = [generation.with_tags_of_plants(generation.documents("joined", pair)) for pair in pairs]
    for sets in (beside, *([one] for one in sorted(filter(None, beside), key=len))):
        if sets:
            yield _common(list(sets))
    best = [max(fits.items(), key=lambda pair: pair[1])[0] for fits in sought.fits if fits]
    exact = [generation.documents("words", word) for word in best]
    if exact:
        yield _common(exact)
    plants = sorted(found & generation.plants)[: 2 * _PLANTS_RANKED]
    scored = sorted((-_fit(generation, sought, plant).score, plant) for plant in plants)[:_PLANTS_RANKED]
    yield from (_some_tags(generation, plant, found) for _, plant in scored)
    yield found


def _some_tags(generation: Generation, plant: int, found: Documents) -> Documents:
    tags = generation.documents("group", generation.kept(plant).plant) & found
    return frozenset(sorted(tags)[:_TAGS_OF_A_PLANT])
