"""What each task makes of single words, and what holds for every task."""

from __future__ import annotations

import random

import pytest

from phonodrill import TASKS, Item, Lexicon, Position, Query, make_warmup, select
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.units import RVowels
from phonodrill.tasks import script
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import parse_history
from phonodrill.tasks.item import Part
from phonodrill.tasks.phrases import PHRASES
from phonodrill.tasks.warmup import draw_items
from tests.case_files import cases

KINDS = [(task.name, at) for task in TASKS.values() for at in task.positions]


def phones(part: Part) -> str:
    return part.word or " ".join(BY_CODE[code].arpabet for code in part.sounds)


def results(item: Item) -> set[str]:
    if item.task == "segment" or (item.task == "reverse" and not item.answer):
        return {" | ".join(map(phones, item.parts))}
    if item.task == "isolate" and item.answer:
        return {f"{item.stimulus}:{item.answer}"}
    return {item.answer, *item.also} if item.answer else {phones(item.sound)}


def query_for(word: str, options: str) -> Query:
    query = Query(band=3, words=(word,))
    for option in filter(None, options.split()):
        name, _, value = option.partition("=")
        if name == "r":
            query = query._replace(r_vowels=RVowels(value))
        else:
            query = query._replace(accents=parse_accents(value))
    return query


@pytest.mark.parametrize(("task", "at", "word", "options", "expect"), cases("tasks.tsv"))
def test_a_word_in_a_task(
    lexicon: Lexicon, task: str, at: str, word: str, options: str, expect: str
) -> None:
    query = query_for(word, options)
    items = list(TASKS[task].candidates(select(lexicon, query), query, Position(at)))
    found = {result for item in items for result in results(item)}
    if expect == "-":
        assert not found
    else:
        assert expect in found


@pytest.mark.parametrize(("task", "at"), KINDS)
def test_every_kind_has_its_words_and_makes_a_set(
    lexicon: Lexicon, task: str, at: Position
) -> None:
    made = make_warmup(lexicon, TASKS[task], at, Query(band=3), count=8, seed=3)
    assert len(made.items) == 8
    assert len({(i.sound, i.new, i.stimulus, i.answer, i.choices) for i in made.items}) == 8
    assert [i.difficulty for i in made.items] == sorted(i.difficulty for i in made.items)
    for item in made.items:
        for line in script.say(item, Notation.MARKS):
            assert line
            assert "{" not in line
            assert "“”" not in line
            assert "//" not in line
    words = [word for item in made.items for word in item.words]
    assert len(words) == len(set(words))


def test_every_task_has_its_phrases_and_no_more() -> None:
    assert set(PHRASES) == set(KINDS)
    assert {task.name for task in TASKS.values()} == set(TASKS)


def test_levels_part_the_items_of_every_kind(every_item: list[Item]) -> None:
    levels: dict[tuple[str, Position], set[Level]] = {}
    for item in every_item:
        levels.setdefault((item.task, item.at), set()).add(item.level)
    assert levels.keys() == set(KINDS)
    assert all(len(found) > 1 for found in levels.values()), levels


def test_a_level_can_be_asked_for(lexicon: Lexicon) -> None:
    for level in Level:
        made = make_warmup(
            lexicon, TASKS["delete"], Position.FIRST, Query(), count=5, seed=1, level=level
        )
        assert {item.level for item in made.items} == {level}


def test_no_word_is_used_beyond_the_band(lexicon: Lexicon) -> None:
    query = Query(band=1)
    for task in TASKS.values():
        for item in task.candidates(select(lexicon, query), query, task.positions[0]):
            for word in (item.stimulus, item.answer, *(c.word for c in item.choices)):
                entry = lexicon.get(word) if word else None
                assert entry is None or entry.band == 1, (item.task, word)


def test_sets_differ_by_seed_and_repeat_with_one(lexicon: Lexicon) -> None:
    for task in TASKS.values():
        sets = [
            make_warmup(lexicon, task, task.positions[0], Query(), count=6, seed=seed).items
            for seed in (1, 1, 2)
        ]
        assert sets[0] == sets[1] != sets[2]


def test_forms_are_asked_for_with_forms(lexicon: Lexicon) -> None:
    query = Query(band=3, endings=frozenset({"s", "es"}))
    for task in ("delete", "substitute", "segment", "categorize"):
        place = Position.EACH if task == "segment" else Position.FIRST
        found = list(TASKS[task].candidates(select(lexicon, query), query, place))
        assert found
        for item in found[:200]:
            for word in [item.stimulus, *(choice.word for choice in item.choices)]:
                entry = lexicon.get(word) if word else None
                assert entry is None or {"s", "es"} & {*entry.endings}


def test_a_stop_behind_s_is_to_be_said_afresh(lexicon: Lexicon) -> None:
    query = Query(band=3, words=("stop", "slip", "top", "slice"))
    items = list(TASKS["delete"].candidates(select(lexicon, query), query, Position.FIRST))
    notes = {item.stimulus: script.note(item) for item in items}
    assert "puff of air" in notes["stop"]
    assert "“top”" in notes["stop"]
    assert notes["slip"] == ""
    added = list(TASKS["add"].candidates(select(lexicon, query), query, Position.FIRST))
    assert any("puff" in script.note(item) for item in added if item.answer == "stop")


def test_sounds_are_held_or_said_short(lexicon: Lexicon) -> None:
    query = Query(band=3, words=("mat",))
    items = list(TASKS["segment"].candidates(select(lexicon, query), query, Position.EACH))
    held, short = script.how_to_say(items, Notation.MARKS)
    assert held.startswith("Hold")
    assert "/m/" in held
    assert "/t/" in short
    assert "no “uh”" in short
    for phrase in PHRASES.values():
        assert "uh" not in " ".join(phrase).replace("through", "").lower().split()


@pytest.mark.parametrize("name", ["identify", "categorize"])
def test_words_share_the_sound_in_the_accent_asked_for(lexicon: Lexicon, name: str) -> None:
    # Found by the soak: whale, which CMUdict lists with /hw/, too, stood beside hair and hat.
    query = Query(band=1, accents=parse_accents("wh-w"))
    pool = select(lexicon, query, random.Random(1))
    found = list(TASKS[name].candidates(pool, query, Position.FIRST))
    assert len(found) > 300
    for item in found:
        alike = [choice for choice in item.choices if choice.word != item.answer]
        assert {choice.said.sounds[0] for choice in alike} == {item.sound.sounds}, item


@pytest.mark.source("Read (1971); Treiman (2004): young children hear ch and j in tr and dr")
def test_band_one_makes_no_tr_or_dr(lexicon: Lexicon) -> None:
    for task, word, at, answer in (
        ("add", "rain", Position.FIRST, "train"),
        ("delete", "train", Position.FIRST, "rain"),
        ("substitute", "train", Position.FIRST, "brain"),
    ):
        for band, found in ((1, False), (2, True)):
            query = Query(band=band, words=(word,))
            items = TASKS[task].candidates(select(lexicon, query), query, at)
            assert (answer in {item.answer for item in items}) is found, (task, band)


def test_a_part_may_be_named_though_the_other_differs_by_accent(lexicon: Lexicon) -> None:
    query = Query(band=3, words=("seesaw",))
    items = TASKS["isolate"].candidates(select(lexicon, query), query, Position.SYLLABLE)
    assert [item.answer for item in items] == ["see"]


def test_draws_keep_what_they_are_asked_to_keep(lexicon: Lexicon) -> None:
    pool = select(lexicon, Query(band=2), random.Random(1))
    drawn = draw_items(
        pool,
        TASKS["delete"],
        Position.FIRST,
        count=4,
        history=parse_history("top rain"),
        keep=lambda item: item.sound.sounds == "s",
    )
    assert len(drawn) == 4
    assert {item.sound.sounds for item in drawn} == {"s"}
    assert not {"top", "rain"} & {word for item in drawn for word in item.words}
