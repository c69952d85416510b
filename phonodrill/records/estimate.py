"""An estimate of what each student can do, drawn toward what the group leads to expect.

A few answers say little: two wrong ones of two are no proof that a skill is a
student's weakest. So each share is mixed with what is expected of this student in this
skill, as if that had been seen in some more answers (the mean of a beta-binomial
model). Expected is the group's share in the skill, shifted in odds by how the student
does in all skills. How many more answers that weighs is ours; docs/progress.md has what
other weights give.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from phonodrill.records.answer import Skill
from phonodrill.records.standing import Standing

WEIGHT = 8.0
"""As how many answers the expected share counts."""


class Tally(NamedTuple):
    """Right answers and answers."""

    right: float = 0.0
    asked: float = 0.0

    def plus(self, right: float, asked: float) -> Tally:
        """Add answers."""
        return Tally(self.right + right, self.asked + asked)

    @property
    def share(self) -> float:
        """The share right, with one right and one wrong answer added: never 0 or 1."""
        return (self.right + 1) / (self.asked + 2)


Estimates = Mapping[tuple[str, Skill], float]
"""Estimated share right of (student, skill); also for pairs never asked."""


def estimate(standings: Iterable[Standing], weight: float = WEIGHT) -> Estimates:
    """Estimate the share right of every student in every skill that the group was asked.

    Args:
        standings: of one group.
        weight: as how many answers the expected share counts.
    """
    listed = tuple(standings)
    everything = Tally()
    of_student: dict[str, Tally] = defaultdict(Tally)
    of_skill: dict[Skill, Tally] = defaultdict(Tally)
    own: dict[tuple[str, Skill], Tally] = {}
    for one in listed:
        everything = everything.plus(one.right, one.asked)
        of_student[one.student] = of_student[one.student].plus(one.right, one.asked)
        of_skill[one.skill] = of_skill[one.skill].plus(one.right, one.asked)
        own[one.student, one.skill] = Tally(one.right, one.asked)
    found = {}
    for student, all_skills in of_student.items():
        for skill, all_students in of_skill.items():
            expected = _expected(all_students.share, all_skills.share, everything.share)
            right, asked = own.get((student, skill), Tally())
            found[student, skill] = (right + weight * expected) / (asked + weight)
    return found


def _expected(of_skill: float, of_student: float, of_all: float) -> float:
    odds = _odds(of_skill) * _odds(of_student) / _odds(of_all)
    return odds / (1 + odds)


def _odds(share: float) -> float:
    return share / (1 - share)


def weakest(estimates: Estimates, student: str) -> Skill | None:
    """Return the skill in which a student is estimated weakest; None if none was asked."""
    own = [(share, skill) for (code, skill), share in estimates.items() if code == student]
    return min(own)[1] if own else None
