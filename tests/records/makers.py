"""Answers and standings for tests, in a line each."""

from __future__ import annotations

from phonodrill.records.answer import Answer, Asked, Kind, Skill

ES = Skill(Kind.CONDITION, "add es")
IES = Skill(Kind.CONDITION, "y to i, add es")
ADD_S = Skill(Kind.CONDITION, "add s")
DELETE = Skill(Kind.TASK, "delete")
SEGMENT = Skill(Kind.TASK, "segment")
FIRST = Skill(Kind.PLACE, "first")


def answer(
    student: str,
    skill: Skill,
    right: bool,
    date: str = "2026-11-02",
    word: str = "torches",
) -> Answer:
    return Answer(student, "es", date, Asked("", "", word, "", "", (skill,)), right)


def answers(
    student: str, skill: Skill, right: int, asked: int, date: str = "2026-11-02"
) -> list[Answer]:
    """So many answers of one day, the right ones first."""
    return [answer(student, skill, place < right, date) for place in range(asked)]
