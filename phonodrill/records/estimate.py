"""An estimate of what each student can do, drawn toward what the group leads to expect.

A few answers say little: two wrong ones of two are no proof that a skill is a
student's weakest. So each share is mixed with what is expected of this student in this
skill, as if that had been seen in some more answers (the mean of a beta-binomial model).

What is expected comes from a one-parameter logistic model (Rasch 1960): how well the
student does in all, and how hard the skill is for all, each weighed against whom it was
asked of. It is fitted by Newton steps with a normal prior around the group's share. How
much the expected share and the prior weigh is ours; docs/progress.md has what other
weights give.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from math import exp, log

from phonodrill.records.answer import Skill
from phonodrill.records.standing import Standing

WEIGHT = 8.0
"""As how many answers the expected share counts."""
PRECISION = 1.0
"""Of the prior: levels of students and of skills deviate by about 1 logit."""
ROUNDS = 8
"""Newton steps; after these the levels stand still to three digits."""
MOST_STEP = 2.0

Estimates = Mapping[tuple[str, Skill], float]
"""Estimated share right of (student, skill); also for pairs never asked."""


def estimate(standings: Iterable[Standing], weight: float = WEIGHT) -> Estimates:
    """Estimate the share right of every student in every skill that the group was asked.

    Args:
        standings: of one group.
        weight: as how many answers the expected share counts.
    """
    own = {(one.student, one.skill): one for one in sorted(standings)}
    if not own:
        return {}
    mean, levels = _fit(own)
    skills = sorted({skill for _, skill in own})
    found = {}
    for student in sorted({student for student, _ in own}):
        for skill in skills:
            expected = _logistic(mean + levels[student] + levels[skill])
            one = own.get((student, skill))
            right, asked = (one.right, one.asked) if one else (0, 0)
            found[student, skill] = (right + weight * expected) / (asked + weight)
    return found


def weakest(estimates: Estimates, student: str) -> Skill | None:
    """Return the skill in which a student is estimated weakest; None if none was asked."""
    own = [(share, skill) for (code, skill), share in estimates.items() if code == student]
    return min(own)[1] if own else None


def _fit(own: Mapping[tuple[str, Skill], Standing]) -> tuple[float, dict[str | Skill, float]]:
    """Fit how well the group does, and how far each student and each skill is from that."""
    right, asked = sum(one.right for one in own.values()), sum(one.asked for one in own.values())
    mean = log((right + 1) / (asked - right + 1))
    levels: dict[str | Skill, float] = dict.fromkeys((key for pair in own for key in pair), 0.0)
    for _ in range(ROUNDS):
        for side in (0, 1):
            for key, step in _steps(own, mean, levels, side).items():
                levels[key] += step
    return mean, levels


def _steps(
    own: Mapping[tuple[str, Skill], Standing],
    mean: float,
    levels: Mapping[str | Skill, float],
    side: int,
) -> dict[str | Skill, float]:
    """Return the Newton step of each student (side 0) or each skill (side 1)."""
    slope: dict[str | Skill, float] = defaultdict(float)
    curve: dict[str | Skill, float] = defaultdict(float)
    for pair, one in own.items():
        share = _logistic(mean + levels[pair[0]] + levels[pair[1]])
        key = pair[side]
        slope[key] += one.right - one.asked * share
        curve[key] += one.asked * share * (1 - share)
    steps = {
        key: (slope[key] - PRECISION * levels[key]) / (curve[key] + PRECISION) for key in slope
    }
    return {key: max(-MOST_STEP, min(MOST_STEP, step)) for key, step in steps.items()}


def _logistic(level: float) -> float:
    return 1 / (1 + exp(-level))
