"""What to teach a group next, for whom, and why."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from phonodrill.records.answer import Skill
from phonodrill.records.estimate import Estimates, estimate
from phonodrill.records.standing import (
    THRESHOLDS,
    Interval,
    Standing,
    Thresholds,
    Verdict,
    judge,
    shows_need,
    wilson,
)
from phonodrill.records.teachable import comes_before, focus_of

HALF = 0.5
MOST_PICKS = 3


class Pick(NamedTuple):
    """A focus that may come next.

    Attributes:
        focus: what ``lesson --focus`` takes.
        skill: the skill it is for.
        right, asked: answers of the whole group, in the window.
        interval: of the share right.
        verdict: on the group as a whole.
        students: those who need it by enough answers of their own, the weakest first.
        likely: those of whom too few answers are known, but who fall short of the mark in
            these and are expected to by their other answers and the group's.
        unsure: codes of all of whom too few answers are known.
        is_sure: whether enough answers, of one student or of all, say that it is needed.
        before: the weaker skill that this one comes before, if that is why it was picked.
    """

    focus: str
    skill: Skill
    right: int
    asked: int
    interval: Interval
    verdict: Verdict
    students: tuple[Standing, ...]
    likely: tuple[str, ...]
    unsure: tuple[str, ...]
    is_sure: bool
    before: Skill | None = None


def choose_next(
    standings: Iterable[Standing],
    rule: Thresholds = THRESHOLDS,
    order: Sequence[str] = (),
    count: int = MOST_PICKS,
) -> tuple[Pick, ...]:
    """Choose what to teach a group next.

    Skills are ranked by how far the students' estimated shares stay below the mark of
    "has it", all together. Where half of those who need a skill need one that comes
    before it, that one is taught first.

    Args:
        standings: of the students of one group.
        rule: by which they were judged.
        order: correspondences as skills name them, in the order taught.
        count: how many picks are wanted.

    Returns:
        The first is what to teach next; empty if nothing is short of the mark.
    """
    by_skill: dict[Skill, list[Standing]] = defaultdict(list)
    listed = tuple(standings)
    for one in listed:
        if focus_of(one.skill):
            by_skill[one.skill].append(one)
    estimates = estimate(listed)
    picks: dict[str, Pick] = {}
    for skill in rank(by_skill, estimates, rule):
        first = _first_before(skill, by_skill, order)
        pick = _pick(first, by_skill[first], estimates, rule, None if first == skill else skill)
        picks.setdefault(pick.focus, pick)
    ordered = sorted(picks.values(), key=lambda pick: not pick.is_sure)
    return tuple(ordered[:count])


def rank(skills: Iterable[Skill], estimates: Estimates, rule: Thresholds) -> list[Skill]:
    """Return the skills that fall short of the mark, the most needed first."""
    short: dict[Skill, float] = dict.fromkeys(skills, 0.0)
    for (_, skill), share in estimates.items():
        if skill in short:
            short[skill] += max(0.0, rule.has - share)
    needed = [skill for skill in short if short[skill] > 0]
    return sorted(needed, key=lambda skill: (-short[skill], skill))


def _first_before(
    skill: Skill, by_skill: dict[Skill, list[Standing]], order: Sequence[str]
) -> Skill:
    needing = {one.student for one in by_skill[skill] if one.needs_it}
    for other in comes_before(skill, by_skill, order) if needing else ():
        also = {one.student for one in by_skill[other] if one.needs_it} & needing
        if len(also) >= HALF * len(needing):
            return other
    return skill


def _pick(
    skill: Skill,
    standings: list[Standing],
    estimates: Estimates,
    rule: Thresholds,
    before: Skill | None,
) -> Pick:
    right, asked = sum(one.right for one in standings), sum(one.asked for one in standings)
    needing = sorted(
        (one for one in standings if one.needs_it),
        key=lambda one: (estimates[one.student, skill], one.student),
    )
    known = {one.student for one in standings if one.verdict is not Verdict.TOO_FEW}
    unsure = sorted({student for student, _ in estimates if student not in known})
    # One student's few answers are no group's.
    is_of_group = len(standings) > 1
    shares = {one.student: one.right / one.asked for one in standings}

    def is_short(student: str) -> bool:
        # Who had all of a few answers right is not named, whatever the others did.
        return max(shares.get(student, 0.0), estimates[student, skill]) < rule.has

    return Pick(
        focus_of(skill),
        skill,
        right,
        asked,
        wilson(right, asked, rule.z),
        judge(right, asked, rule) if is_of_group else Verdict.TOO_FEW,
        tuple(needing),
        tuple(student for student in unsure if is_short(student)),
        tuple(unsure),
        bool(needing) or (is_of_group and shows_need(right, asked, rule)),
        before,
    )
