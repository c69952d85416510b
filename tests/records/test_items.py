"""The items of a check: right, about the focus, spread, and each with what it asks for."""

from __future__ import annotations

from collections import Counter

import pytest

from phonodrill import Gate, Lexicon
from phonodrill.endings.classify import classify
from phonodrill.endings.rules import RULES, rule_for
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.request import Request
from phonodrill.records.answer import Asked, Kind
from phonodrill.records.items import make_items
from phonodrill.sounds.places import NUCLEI
from phonodrill.tasks.registry import TASKS
from phonodrill.taught.tokens import read_token

FOCI = ("es,ies", "ed,ing", "er,est", "sh", "a_e", "c=s", "ow=ō", "/k/", "i:e", *TASKS)


def names(item: Asked, kind: Kind) -> list[str]:
    return [skill.name for skill in item.skills if skill.kind is kind]


@pytest.mark.parametrize("focus", FOCI)
def test_every_focus_gives_eight_items_with_skills(
    focus: str, lexicon: Lexicon, gate: Gate
) -> None:
    items = make_items(lexicon, Request(focus))
    assert len(items) == 8
    assert len({(item.ask, item.how) for item in items}) == 8
    for item in items:
        assert item.skills
        assert item.ask
        assert item.answer
        entry = lexicon.get(item.word)
        assert entry
        assert gate.allows(item.word, [said.normal for said in entry.pronunciations])


def test_what_is_asked_of_an_ending_is_true_of_the_word(lexicon: Lexicon) -> None:
    for item in make_items(lexicon, Request("s,es,ies,ves", band=3), 30):
        way = classify(item.word, lexicon, lexicon.ending_exceptions())[0]
        for rule in names(item, Kind.CONDITION):
            found = rule_for(item.word, way.base)
            assert found
            assert rule == found.name
        for sound in names(item, Kind.ENDING_SOUND):
            assert sound == way.sound


def test_a_check_of_endings_asks_for_several_rules_and_sounds(lexicon: Lexicon) -> None:
    known = {rule.name for rule in RULES}
    for seed in range(4):
        items = make_items(lexicon, Request("es,ies", seed=seed))
        rules = Counter(name for item in items for name in names(item, Kind.CONDITION))
        sounds = {name for item in items for name in names(item, Kind.ENDING_SOUND)}
        assert known >= rules.keys()
        assert len(rules) > 1
        assert len(sounds) > 1
        assert {item.how for item in items} == {
            *("spell with the ending", "say the ending", "find the base")
        }


def test_a_correspondence_is_written_so_that_a_lesson_takes_it(lexicon: Lexicon) -> None:
    inventory = lexicon.correspondences()
    for focus in ("sh", "a_e", "c=s", "ow=ō", "/k/"):
        for item in make_items(lexicon, Request(focus)):
            (token,) = names(item, Kind.CORRESPONDENCE)
            (row,) = read_token(token, inventory)
            entry = lexicon.get(item.word)
            assert entry
            assert row.code in entry.usable_pronunciations[0].chunks


@pytest.mark.parametrize("task", TASKS)
def test_a_task_is_asked_at_places_it_has_and_at_several_levels(
    task: str, lexicon: Lexicon
) -> None:
    items = make_items(lexicon, Request(task))
    places = Counter(name for item in items for name in names(item, Kind.PLACE))
    assert places.keys() <= {str(at) for at in TASKS[task].positions}
    assert len(places) > 1
    assert len({name for item in items for name in names(item, Kind.LEVEL)}) > 1
    assert {name for item in items for name in names(item, Kind.TASK)} == {task}


def test_clusters_are_named_where_they_are(lexicon: Lexicon) -> None:
    for item in make_items(lexicon, Request("a_e"), 24):
        entry = lexicon.get(item.word)
        assert entry
        sounds = entry.usable_pronunciations[0].sounds
        found = names(item, Kind.CLUSTER)
        assert ("onset cluster" in found) == NUCLEI.isdisjoint(sounds[:2])
        assert ("coda cluster" in found) == NUCLEI.isdisjoint(sounds[-2:])
        assert ("no cluster" in found) == (not {"onset cluster", "coda cluster"} & {*found})


def test_the_same_seed_gives_the_same_check_and_another_seed_another(lexicon: Lexicon) -> None:
    for focus in ("es,ies", "sh", "delete"):
        first = make_items(lexicon, Request(focus, seed=5))
        assert first == make_items(lexicon, Request(focus, seed=5))
        assert first != make_items(lexicon, Request(focus, seed=6))


def test_words_asked_not_long_ago_rest(lexicon: Lexicon) -> None:
    for focus in ("es,ies", "sh", "delete"):
        first = {item.word for item in make_items(lexicon, Request(focus))}
        again = {item.word for item in make_items(lexicon, Request(focus), avoid=frozenset(first))}
        assert not first & again


def test_an_unknown_focus_is_one_line(lexicon: Lexicon) -> None:
    with pytest.raises(PhonodrillError):
        make_items(lexicon, Request("zzz"))
