"""What a lesson and a warm-up for a group start from."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.request import Request
from phonodrill.records.answer import Answer, Asked, Kind, Skill
from phonodrill.records.confusions import find_confusion
from phonodrill.records.items import make_items
from phonodrill.records.practice import (
    Oral,
    make_warmup_of_missed,
    missed_words,
    next_pick,
    oral_for,
)
from phonodrill.records.report import see_next, where_it_fails
from phonodrill.records.standing import THRESHOLDS
from phonodrill.selection import Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.registry import TASKS
from tests.records.makers import DELETE, ES, answer, answers


def oral_answers(place: str, right: int, asked: int) -> list[Answer]:
    item = Asked("", "", "plate", "", "", (DELETE, Skill(Kind.PLACE, place)))
    return [Answer("A", "delete", "2026-11-02", item, n < right) for n in range(asked)]


def test_the_weakest_task_at_its_weakest_place() -> None:
    listed = oral_answers("first", 8, 8) + oral_answers("last", 2, 8) + oral_answers("coda1", 0, 1)
    assert oral_for(listed) == Oral(TASKS["delete"], Position.LAST)
    assert oral_for(answers("A", ES, 0, 8)) is None
    assert oral_for([]) is None
    (only,) = where_it_fails(listed, THRESHOLDS)
    assert (only.skill.name, only.right, only.asked) == ("last", 2, 8)


def test_a_focus_only_where_the_answers_say_it() -> None:
    assert next_pick(answers("A", ES, 1, 8)).focus == "es"
    for listed, said in (
        ([], "nothing was asked yet"),
        (answers("A", ES, 20, 20), "nothing that was asked is short"),
        (answers("A", ES, 0, 2), "too few answers"),
    ):
        with pytest.raises(PhonodrillError, match=said):
            next_pick(listed)


def test_missed_words_are_practiced_first(lexicon: Lexicon) -> None:
    listed = [
        answer("A", ES, right=word == "ropes", word=word)
        for word in ("crabs", "ropes", "snails", "nosuchword")
    ]
    missed = missed_words(listed, "2026-11-25")
    assert missed == ("crabs", "nosuchword", "snails")
    query = Query(2, frozenset({"s"}))
    made = make_warmup_of_missed(
        lexicon, TASKS["delete"], Position.LAST, query, missed=missed, count=6, seed=1
    )
    stimuli = [item.stimulus for item in made.items]
    assert {"crabs", "snails"} <= {*stimuli}
    assert len({*stimuli}) == 6
    assert [item.difficulty for item in made.items] == sorted(i.difficulty for i in made.items)


def test_next_is_seen_with_its_reasons(lexicon: Lexicon) -> None:
    seen = see_next(oral_answers("last", 2, 8), lexicon, group="G", today="2026-11-25")
    assert seen.picks[0].focus == "delete"
    assert [facet.skill.name for facet in seen.where] == ["last"]
    assert [due.word for due in seen.due] == ["plate"]
    assert seen.answers == 8


@pytest.mark.parametrize("focus", ["s,es,ies,ves", "ed,ing", "a_e", "c=s", "i:e"])
def test_a_right_answer_shows_no_confusion(focus: str, lexicon: Lexicon) -> None:
    for item in make_items(lexicon, Request(focus, band=3), 20):
        assert find_confusion(item, item.answer, lexicon) == "", item


@pytest.mark.parametrize("task", ["isolate", "delete", "substitute", "blend", "segment", "reverse"])
def test_nor_does_one_of_a_task(task: str, lexicon: Lexicon) -> None:
    for item in make_items(lexicon, Request(task, band=3), 16):
        right = item.answer.partition(" (also ")[0].partition(":")[0]
        assert find_confusion(item, right, lexicon) == "", item
