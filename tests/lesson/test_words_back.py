"""Words that a teacher asks back come for review, if the class may read them."""

from __future__ import annotations

from typing import Any

import pytest

from phonodrill import Lexicon
from phonodrill.lesson import plan
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.days import make_days
from phonodrill.lesson.from_data import read_lessons
from phonodrill.lesson.request import Request
from phonodrill.lesson.swap import swap_word
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from phonodrill.tasks.history import History

BACK = ("ropes", "crab", "torch")


def part(lesson: Lesson, name: str) -> Any:
    return next(section for section in lesson.sections if section.name == name)


@pytest.mark.parametrize("focus", ["s", "sh", "/k/", "delete"])
def test_they_come_back_to_be_read_and_written(lexicon: Lexicon, focus: str) -> None:
    history = History(sets=(frozenset(BACK),), rest=10)
    request = Request(focus, band=3, seed=2, review=BACK)
    lesson = make_lesson(lexicon, request, history=history)
    review = {row.word for row in part(lesson, plan.LIST).words if row.review}
    assert {*BACK} <= review
    assert {*BACK} <= {row.word for row in part(lesson, plan.DICTATION).words}
    assert {*BACK}.isdisjoint(part(lesson, plan.SORT).words)
    assert not any("not brought back" in note for note in lesson.notes)
    (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
    assert again.lesson == lesson


def test_not_more_than_half_of_a_section(lexicon: Lexicon) -> None:
    many = ("crab", "torch", "rope", "gull", "lamp", "boat", "net", "fog", "map", "sand", "wind")
    lesson = make_lesson(lexicon, Request("ed", band=2, seed=2, review=many))
    listed = part(lesson, plan.LIST).words
    assert sum(row.review for row in listed) <= len(listed) // 2
    assert sum(row.word in many for row in part(lesson, plan.DICTATION).words) == 3
    week = make_days(lexicon, Request("ed", band=2, seed=2, review=many), 3)
    first, second = ([row.word for row in part(day, plan.DICTATION).words][:3] for day in week[:2])
    assert first != second


def test_what_the_class_may_not_read_stays_away(lexicon: Lexicon) -> None:
    # Beyond the band, unknown, not for class, with letters that were not taught.
    asked = ("abbess", "blorf", "bitch", "sleigh")
    taught = ("s a t p i n", "m d g o c=k k ck", "e u r h b f l", "ll ss ff", "sh ch th")
    request = Request("sh", band=2, seed=2, review=asked, taught=taught)
    lesson = make_lesson(lexicon, request)
    assert {*asked}.isdisjoint(words_of_lesson(lesson))
    assert "not brought back, as the class may not read it: 4 words" in lesson.notes
    assert not any("bitch" in note for note in lesson.notes)


def test_without_them_the_lesson_is_as_it_was(lexicon: Lexicon) -> None:
    plain = make_lesson(lexicon, Request("sh", seed=2))
    assert plain == make_lesson(lexicon, Request("sh", seed=2, review=()))
    assert as_data(plain)["request"]["review"] == []


def test_they_are_swapped_and_checked_in_a_file(lexicon: Lexicon) -> None:
    made = make_lesson(lexicon, Request("s", band=3, seed=2, review=BACK))
    data = as_data(made)
    (read,) = read_lessons({"lesson": data}, lexicon)
    lesson, new = swap_word(read, "crab", "lamp")
    assert new == "lamp"
    assert "crab" not in words_of_lesson(lesson)
    assert "lamp" in {row.word for row in part(lesson, plan.DICTATION).words}
    (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
    assert again.lesson == lesson
    del data["request"]["review"]
    (older,) = read_lessons({"lesson": data}, lexicon)
    assert older.lesson.request.review == ()
