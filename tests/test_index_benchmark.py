"""The benchmark itself, small: that right tags come first and that what is not there is refused; no times."""

import random

import pytest

from index import Catalogue
from index.benchmark.damage import as_heard, look_alike, misread, mistype
from index.benchmark.measuring import measure, together
from index.benchmark.peers import plain_scan, texts_of, trigrams
from index.benchmark.questions import KINDS, Asked, absent
from index.benchmark.tags import Tag, all_plants, build_tags

ASKED_EACH = 15


@pytest.fixture(scope="module")
def tags() -> list[Tag]:
    dice = random.Random(5)
    return build_tags(400, dice, all_plants()[:2000])


@pytest.fixture(scope="module")
def catalogue(tags: list[Tag], tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    opened = Catalogue.open(tmp_path_factory.mktemp("benchmark"))
    opened.add_many((tag.record, {}) for tag in tags)
    return opened


def test_the_right_tag_comes_first_however_it_is_asked_for(tags: list[Tag], catalogue: Catalogue) -> None:
    truth = {tag.record.tag_id: tag for tag in tags}
    dice = random.Random(6)

    def search(text: str) -> tuple[list[Tag], bool]:
        found = catalogue.search(text, limit=10)
        return [truth[hit.tag_id] for hit in found.hits], found.good

    clean = [tag for tag in tags if not tag.misread]
    done = {
        kind: measure(search, [ask(tag, dice) for tag in dice.sample(clean, ASKED_EACH)])
        for kind, ask in KINDS.items()
    }
    spoilt = [tag for tag in tags if tag.misread]
    done["misread"] = measure(search, [KINDS["exact"](tag, dice) for tag in spoilt])
    assert {kind: each.first for kind, each in done.items() if each.first < each.asked - 2} == {}
    every = together(done.values())
    assert every.share(every.first) >= 98
    assert done["exact"].first == ASKED_EACH


def test_what_is_not_there_is_refused(catalogue: Catalogue) -> None:
    plants = all_plants()
    questions = absent(plants[6000:], plants[:2000], random.Random(7), 40)
    for title, texts in questions.items():
        refused = sum(not catalogue.search(text).good for text in texts)
        assert refused >= 0.9 * len(texts), title


def test_peers_find_what_is_spelt_right(tags: list[Tag]) -> None:
    texts = texts_of(tags)
    wanted = next(place for place, tag in enumerate(tags) if not tag.misread)
    question = f"{tags[wanted].plant.name} {tags[wanted].cultivar}"
    assert plain_scan(texts)(question)[0] == wanted
    assert trigrams(texts)(question)[0] == wanted


def test_damage_changes_little_but_something() -> None:
    dice = random.Random(8)
    for spoil in (misread, look_alike, as_heard, mistype):
        spoilt = [spoil("echinacea purpurea silver pony", dice) for _ in range(50)]
        assert sum(text != "echinacea purpurea silver pony" for text in spoilt) >= 40, spoil
        assert all(abs(len(text) - 30) <= 6 for text in spoilt)


def test_an_answer_is_right_by_plant_and_cultivar(tags: list[Tag]) -> None:
    asked = Asked("", lambda tag: tag is tags[0], lambda cultivar: cultivar == tags[0].cultivar)
    assert asked.is_answered_by(tags[0])
    assert not asked.is_answered_by(tags[1])
