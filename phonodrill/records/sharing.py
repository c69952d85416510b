"""Small groups of students who need the same thing."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.records.answer import Skill
from phonodrill.records.estimate import estimate
from phonodrill.records.standing import Standing
from phonodrill.records.teachable import focus_of

FEWEST, MOST = 2, 6
"""Students of a small group; ours, no source."""


class Team(NamedTuple):
    """Students who may work together.

    Attributes:
        skill: what all of them need.
        focus: what ``lesson --focus`` takes.
        students: the weakest first.
    """

    skill: Skill
    focus: str
    students: tuple[str, ...]


class Sharing(NamedTuple):
    """How a group may be parted.

    Attributes:
        teams: those who share a need.
        alone: those whose need too few others share, each with it.
        free: those of whom no need is known.
    """

    teams: tuple[Team, ...]
    alone: tuple[Team, ...]
    free: tuple[str, ...]


def share_needs(
    standings: Iterable[Standing], *, fewest: int = FEWEST, most: int = MOST
) -> Sharing:
    """Part students by the skill that most of them need.

    The need that most students share makes the first team, of its weakest students; so it
    goes on with those who are left, until no need is shared by enough.

    Args:
        standings: of the students of one group.
        fewest: students of a team.
        most: the same.

    Raises:
        PhonodrillError: if the sizes make no team.
    """
    if not 2 <= fewest <= most:  # noqa: PLR2004
        raise PhonodrillError(f"groups of {fewest} to {most}", "2 or more: --sizes 2-6")
    listed = tuple(standings)
    estimates = estimate(listed)
    needs: dict[str, set[Skill]] = {one.student: set() for one in listed}
    for one in listed:
        if one.needs_it and focus_of(one.skill):
            needs[one.student].add(one.skill)
    free = tuple(sorted(student for student, skills in needs.items() if not skills))
    left = {student for student, skills in needs.items() if skills}
    teams = []
    while left:
        skills = sorted(set[Skill]().union(*(needs[student] for student in left)))
        sharing = {s: sorted(student for student in left if s in needs[student]) for s in skills}
        skill = min(
            skills,
            key=lambda s: (-len(sharing[s]), sum(estimates[x, s] for x in sharing[s]), s),
        )
        if len(sharing[skill]) < fewest:
            break
        weakest = sorted(sharing[skill], key=lambda student: (estimates[student, skill], student))
        teams.append(Team(skill, focus_of(skill), tuple(weakest[:most])))
        left -= {*weakest[:most]}
    alone = []
    for student in sorted(left):
        own = min(needs[student], key=lambda skill: (estimates[student, skill], skill))
        alone.append(Team(own, focus_of(own), (student,)))
    return Sharing(tuple(teams), tuple(alone), free)
