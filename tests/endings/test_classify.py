from __future__ import annotations

import random

import pytest

from phonodrill import By, Lexicon, Query, classify, sort_vocabulary, sort_words
from phonodrill.endings.bulk import sounds_of_endings
from phonodrill.endings.classify import SOUNDS
from tests.case_files import cases


@pytest.mark.source("see tests/cases/endings.tsv")
@pytest.mark.parametrize(("word", "base", "ending", "sound", "rule"), cases("endings.tsv"))
def test_words_in_s(
    lexicon: Lexicon, word: str, base: str, ending: str, sound: str, rule: str
) -> None:
    ways = {way.base: way for way in classify(word, lexicon, lexicon.ending_exceptions())}
    way = ways[base]
    assert (way.ending, way.sound, way.rule) == (ending, sound, rule)


@pytest.mark.source("GPO Style Manual 5.10; common practice for the rest")
@pytest.mark.parametrize(
    "word",
    [
        "bus",
        "gas",
        "yes",
        "this",
        "plus",
        "us",
        "is",
        "his",
        "always",
        "perhaps",
        "news",
        "lens",
        "cactus",
        "series",
        "dress",
    ],
)
def test_words_that_only_look_inflected(lexicon: Lexicon, word: str) -> None:
    assert classify(word, lexicon, lexicon.ending_exceptions()) == []


def test_exceptions_are_watch_outs(lexicon: Lexicon) -> None:
    exceptions = lexicon.ending_exceptions()
    for word in ("says", "does", "mouths", "houses", "pies", "movies"):
        assert classify(word, lexicon, exceptions)[0].watch_out, word
    assert not classify("ropes", lexicon, exceptions)[0].watch_out


def test_the_ending_is_heard_in_the_pronunciation(lexicon: Lexicon) -> None:
    exceptions = lexicon.ending_exceptions()
    heard = {"s": "s", "z": "z", "ɪz": "z", "iz": "iz", "aɪz": "Iz"}
    checked = 0
    for entry in lexicon.entries(highest_band=3):
        if {"s", "es", "ies"} & set(entry.endings):
            for way in classify(entry.word, lexicon, exceptions):
                assert way.said.sounds.endswith(heard[way.sound]), way
                checked += 1
    assert checked > 2500


@pytest.mark.parametrize("by", [By.SOUND, By.SPELLING])
def test_a_sort_has_full_groups_without_repeats(lexicon: Lexicon, by: By) -> None:
    query = Query(endings=frozenset({"s", "es", "ies"}))
    made = sort_vocabulary(lexicon, query, by, 8, random.Random(4))
    labels = [group.label for group in made.groups]
    assert labels == (list(SOUNDS) if by is By.SOUND else ["s", "es", "ies"])
    assert all(len(group.words) == 8 for group in made.groups)
    bases = [ending.base for group in made.groups for ending in group.words]
    assert len(bases) == len(set(bases))
    assert sorted(made.to_sort) == sorted(e.word for g in made.groups for e in g.words)


def test_a_sort_by_rule_names_the_rules(lexicon: Lexicon) -> None:
    query = Query(endings=frozenset({"ed"}))
    made = sort_vocabulary(lexicon, query, By.RULE, 3, random.Random(4))
    assert [group.label for group in made.groups] == [
        "y to i, add ed",
        "drop e, add ed",
        "double, add ed",
        "add ed",
    ]
    assert all(e.rule == group.label for group in made.groups for e in group.words)


def test_a_sort_by_base_has_families(lexicon: Lexicon) -> None:
    query = Query(endings=frozenset({"s", "es", "ies", "ed", "ing"}))
    made = sort_vocabulary(lexicon, query, By.BASE, 4, random.Random(4))
    assert len(made.groups) == 4
    for group in made.groups:
        assert {ending.base for ending in group.words} == {group.label}
        assert {ending.suffix for ending in group.words} == {"s", "ed", "ing"}


@pytest.mark.parametrize(
    ("ending", "sounds"),
    [
        ("ed", {"t", "d", "ɪd"}),
        ("ing", {"ɪŋ"}),
        ("er", {"ɚ"}),
        ("est", {"ɪst"}),
        ("ly", {"li"}),
        ("y", {"i"}),
        ("'s", {"s", "z", "ɪz"}),
        ("ves", {"z"}),
    ],
)
def test_every_ending_can_be_sorted(lexicon: Lexicon, ending: str, sounds: set[str]) -> None:
    query = Query(3, frozenset({ending}))
    made = sort_vocabulary(lexicon, query, By.SOUND, 5, random.Random(2))
    assert {group.label for group in made.groups} == sounds
    words = [e for group in made.groups for e in group.words]
    assert len(words) >= 5
    assert {e.ending for e in words} == {ending}
    assert all(e.word.endswith(ending) for e in words)


def test_hissing_words_come_from_both_rules(lexicon: Lexicon) -> None:
    query = Query(endings=frozenset({"s", "es"}))
    made = sort_vocabulary(lexicon, query, By.SOUND, 8, random.Random(4))
    hissing = next(group for group in made.groups if group.label == "ɪz")
    assert {"add s", "add es"} <= {ending.rule for ending in hissing.words}


def test_own_words_are_sorted_and_the_rest_named(lexicon: Lexicon) -> None:
    words = ["ropes", "sailfishes", "bus", "blorfs"]
    made = sort_words(lexicon, words, By.SOUND, random.Random(1))
    assert {g.label: [e.word for e in g.words] for g in made.groups} == {
        "s": ["ropes"],
        "ɪz": ["sailfishes"],
    }
    assert made.left_out == (("bus", "no -s ending here"), ("blorfs", "base word not known"))


def test_many_words_at_once_agree_with_one_at_a_time(lexicon: Lexicon) -> None:
    exceptions = lexicon.ending_exceptions()
    words = ["bus", "blorf", *dict.fromkeys(form for form, *_ in lexicon.listed_forms())]
    differing = []
    for word, label in sounds_of_endings(words, lexicon):
        ways = classify(word, lexicon, exceptions)
        if label != (ways[0].sound if ways else ""):
            differing.append(word)
    # Spellings that a dictionary lists and no rule gives.
    assert set(differing) <= {"lassooed", "lassooes", "lassooing", "reales", "smoothes"}
    assert len(words) > 20_000
