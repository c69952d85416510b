"""What the answers say about each student and skill, with how sure it is.

The interval is Wilson's score interval for a share (Wilson 1927, *J. Am. Stat. Assoc.* 22,
209-212). The limits between "has it", "on the way" and "not yet" are ours; no source.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from enum import StrEnum
from math import sqrt
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.records.answer import Answer, Skill


class Verdict(StrEnum):
    """Where a student stands with a skill."""

    HAS = "has it"
    ON_THE_WAY = "on the way"
    NOT_YET = "not yet"
    TOO_FEW = "too few to say"


class Thresholds(NamedTuple):
    """The rule by which answers become a verdict.

    Attributes:
        fewest: answers below which nothing is said.
        has: share right that the whole interval must reach for "has it".
        lacks: share right that the whole interval must stay below for "not yet".
        z: width of the interval in standard deviations; 1.645 is 90 %.
        window: answers that count: whole days, the latest first, until there are so many.
    """

    fewest: int = 6
    has: float = 0.7
    lacks: float = 0.6
    z: float = 1.645
    window: int = 20

    def checked(self) -> Thresholds:
        """Return the rule, if it makes sense.

        Raises:
            PhonodrillError: if a share is no share, or the marks cross.
        """
        if not 0 < self.lacks <= self.has < 1:
            raise PhonodrillError(
                f"marks {self.lacks} and {self.has}", "0 < not yet <= has it < 1: 0.6 and 0.7"
            )
        if self.fewest < 1 or self.window < self.fewest or self.z <= 0:
            raise PhonodrillError(
                f"fewest {self.fewest}, window {self.window}, z {self.z}",
                "1 or more answers, a window no smaller, z above 0: 6, 20 and 1.645",
            )
        return self


THRESHOLDS = Thresholds()


class Interval(NamedTuple):
    """Between which shares the true one lies, as far as the answers tell."""

    low: float
    high: float


class Standing(NamedTuple):
    """A student's standing with one skill.

    Attributes:
        student: code of the student.
        skill: which skill.
        right, asked: answers in the window.
        interval: of the share right.
        verdict: by the rule.
        needs_it: whether enough answers say that it is not there yet.
        last: date of the latest answer, ISO 8601.
    """

    student: str
    skill: Skill
    right: int
    asked: int
    interval: Interval
    verdict: Verdict
    needs_it: bool
    last: str


Rolled = dict[tuple[str, Skill], dict[str, list[bool]]]
"""Student and skill -> day -> whether each answer was right."""


def wilson(right: int, asked: int, z: float = THRESHOLDS.z) -> Interval:
    """Return Wilson's interval of a share.

    Args:
        right: how many were right.
        asked: of how many; with none, nothing is known: 0 to 1.
        z: width in standard deviations.

    >>> low, high = wilson(8, 10, z=1.96)
    >>> round(low, 3), round(high, 3)
    (0.49, 0.943)
    """
    if not asked:
        return Interval(0.0, 1.0)
    share, square = right / asked, z * z
    middle = (share + square / (2 * asked)) / (1 + square / asked)
    half = z * sqrt(share * (1 - share) / asked + square / (4 * asked * asked))
    half /= 1 + square / asked
    return Interval(max(0.0, middle - half), min(1.0, middle + half))


def judge(right: int, asked: int, rule: Thresholds = THRESHOLDS) -> Verdict:
    """Return the verdict on some answers.

    >>> [str(judge(right, 8)) for right in (8, 6, 2)], str(judge(3, 3))
    (['has it', 'on the way', 'not yet'], 'too few to say')
    """
    if asked < rule.fewest:
        return Verdict.TOO_FEW
    low, high = wilson(right, asked, rule.z)
    if low >= rule.has:
        return Verdict.HAS
    return Verdict.NOT_YET if high < rule.lacks else Verdict.ON_THE_WAY


def shows_need(right: int, asked: int, rule: Thresholds = THRESHOLDS) -> bool:
    """Whether answers say that a skill is needed: enough of them, and their share below the mark.

    >>> [shows_need(*counts) for counts in ((4, 8), (6, 6), (0, 3))]
    [True, False, False]
    """
    return asked >= rule.fewest and right / asked < rule.has


def stand(answers: Iterable[Answer], rule: Thresholds = THRESHOLDS) -> tuple[Standing, ...]:
    """Roll answers up by student and skill.

    Args:
        answers: of any students, in any order.
        rule: how answers become a verdict.

    Returns:
        One standing a student and skill that was asked, by student, then skill.
    """
    return stand_on(roll_up(answers), rule)


def roll_up(answers: Iterable[Answer]) -> Rolled:
    """Sort answers by student and skill, and by day."""
    days: Rolled = defaultdict(dict)
    for answer in answers:
        for skill in answer.asked.skills:
            days[answer.student, skill].setdefault(answer.date, []).append(answer.right)
    return days


def stand_on(rolled: Rolled, rule: Thresholds, last: str = "") -> tuple[Standing, ...]:
    """Say how students stood on a day.

    Args:
        rolled: answers as :func:`roll_up` sorts them.
        rule: how answers become a verdict.
        last: ISO 8601; answers of later days do not count. Empty: all count.
    """
    rule = rule.checked()
    found = []
    for student, skill in sorted(rolled):
        days = rolled[student, skill]
        known = {day: right for day, right in days.items() if day <= last} if last else days
        if known:
            found.append(_standing(student, skill, known, rule))
    return tuple(found)


def recent(days: dict[str, list[bool]], window: int) -> list[bool]:
    """Take the answers of the latest days until there are enough of them.

    >>> recent({"2026-11-03": [True], "2026-11-10": [False, True]}, window=2)
    [False, True]
    """
    taken: list[bool] = []
    for day in sorted(days, reverse=True):
        if len(taken) >= window:
            break
        taken += days[day]
    return taken


def _standing(
    student: str, skill: Skill, days: dict[str, list[bool]], rule: Thresholds
) -> Standing:
    taken = recent(days, rule.window)
    right, asked = sum(taken), len(taken)
    interval = wilson(right, asked, rule.z)
    verdict = judge(right, asked, rule)
    needs_it = shows_need(right, asked, rule)
    return Standing(student, skill, right, asked, interval, verdict, needs_it, max(days))
