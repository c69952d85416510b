"""What a report on a group or a student rests on, worked out once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from phonodrill.lexicon.store import Lexicon
from phonodrill.records.answer import Answer, Kind, Skill
from phonodrill.records.confusions import Confusion, find_confusions
from phonodrill.records.next_focus import Pick, choose_next
from phonodrill.records.review import Due, review_words
from phonodrill.records.sharing import Sharing, share_needs
from phonodrill.records.skills import describe
from phonodrill.records.standing import (
    THRESHOLDS,
    Interval,
    Rolled,
    Standing,
    Thresholds,
    Verdict,
    roll_up,
    stand,
    stand_on,
    wilson,
)
from phonodrill.records.teachable import focus_of

MOST_DATES = 12
"""Latest days of checks that the growth is drawn for."""
WHERE = (Kind.PLACE, Kind.LEVEL, Kind.CLUSTER)


class Facet(NamedTuple):
    """How items of a skill went that share something else: a place, a level, a cluster."""

    skill: Skill
    right: int
    asked: int
    interval: Interval


class Growth(NamedTuple):
    """How something grew from check to check.

    Attributes:
        dates: days of checks, ISO 8601.
        curves: name -> one number a day; None on days before anything was asked.
    """

    dates: tuple[str, ...]
    curves: Mapping[str, tuple[int | None, ...]]


class Progress(NamedTuple):
    """How a group, or one student of it, stands.

    Attributes:
        group: its name.
        student: code; empty for the whole group.
        rule: by which it was judged.
        standings: one a student and skill.
        growth: what the growth plot shows.
        confusions: that wrong answers showed.
        due: words to review.
        answers: how many there are in all.
    """

    group: str
    student: str
    rule: Thresholds
    standings: tuple[Standing, ...]
    growth: Growth
    confusions: tuple[Confusion, ...]
    due: tuple[Due, ...]
    answers: int


class NextStep(NamedTuple):
    """What to teach a group next, and why.

    Attributes:
        group: its name.
        rule: by which it was judged.
        picks: the first is what to teach next.
        where: of the first pick, where it goes least well.
        confusions: on items of the first pick.
        sharing: small groups.
        due: words to review.
        answers: how many there are in all.
    """

    group: str
    rule: Thresholds
    picks: tuple[Pick, ...]
    where: tuple[Facet, ...]
    confusions: tuple[Confusion, ...]
    sharing: Sharing
    due: tuple[Due, ...]
    answers: int


def see_progress(
    answers: Iterable[Answer],
    lexicon: Lexicon,
    *,
    group: str,
    today: str,
    student: str = "",
    rule: Thresholds = THRESHOLDS,
) -> Progress:
    """Work out how a group or a student stands.

    Args:
        answers: of the group.
        lexicon: the open lexicon.
        group: its name.
        today: ISO 8601; for what is due.
        student: only this student; empty for all.
        rule: how answers become a verdict.
    """
    listed = [one for one in answers if student in ("", one.student)]
    growth = _growth_of_student(listed, rule) if student else _growth_of_group(listed, rule)
    return Progress(
        group,
        student,
        rule,
        stand(listed, rule),
        growth,
        find_confusions(listed, lexicon),
        review_words(listed, today),
        len(listed),
    )


def see_next(
    answers: Iterable[Answer],
    lexicon: Lexicon,
    *,
    group: str,
    today: str,
    rule: Thresholds = THRESHOLDS,
    order: Sequence[str] = (),
) -> NextStep:
    """Work out what a group needs next.

    Args:
        answers: of the group.
        lexicon: the open lexicon.
        group: its name.
        today: ISO 8601; for what is due.
        rule: how answers become a verdict.
        order: correspondences as skills name them, in the order taught.
    """
    listed = list(answers)
    standings = stand(listed, rule)
    picks = choose_next(standings, rule, order)
    about = [one for one in listed if picks and picks[0].skill in one.asked.skills]
    return NextStep(
        group,
        rule,
        picks,
        where_it_fails(about, rule),
        find_confusions(about, lexicon),
        share_needs(standings),
        review_words(listed, today),
        len(listed),
    )


def where_it_fails(answers: Iterable[Answer], rule: Thresholds) -> tuple[Facet, ...]:
    """Return where items go least well: places, levels and clusters surely below the mark."""
    counts: dict[Skill, list[bool]] = {}
    for one in answers:
        for skill in one.asked.skills:
            if skill.kind in WHERE:
                counts.setdefault(skill, []).append(one.right)
    facets = [
        Facet(skill, sum(right), len(right), wilson(sum(right), len(right), rule.z))
        for skill, right in sorted(counts.items())
        if len(right) >= rule.fewest
    ]
    low = [facet for facet in facets if facet.interval.high < rule.has]
    return tuple(sorted(low, key=lambda facet: (facet.right / facet.asked, facet.skill)))


def _days_of(answers: Sequence[Answer]) -> tuple[str, ...]:
    return tuple(sorted({one.date for one in answers}))[-MOST_DATES:]


def _taught(answers: Iterable[Answer]) -> Rolled:
    """Sort the answers on skills that a lesson teaches."""
    return {key: days for key, days in roll_up(answers).items() if focus_of(key[1])}


def _growth_of_group(answers: Sequence[Answer], rule: Thresholds) -> Growth:
    """Count the verdicts on all students and skills that a lesson teaches, day by day."""
    days = _days_of(answers)
    taught = _taught(answers)
    then = [[one.verdict for one in stand_on(taught, rule, day)] for day in days]
    shown = (Verdict.HAS, Verdict.ON_THE_WAY, Verdict.NOT_YET)
    curves = {str(verdict): tuple(now.count(verdict) for now in then) for verdict in shown}
    return Growth(days, curves)


def _growth_of_student(answers: Sequence[Answer], rule: Thresholds) -> Growth:
    """Follow the share right of the skills asked most, day by day."""
    days = _days_of(answers)
    taught = _taught(answers)
    now = sorted(stand_on(taught, rule), key=_most_asked)
    skills = [one.skill for one in now][:4]
    shares: dict[Skill, list[int | None]] = {skill: [] for skill in skills}
    for day in days:
        then = {one.skill: one for one in stand_on(taught, rule, day)}
        for skill in skills:
            one = then.get(skill)
            shares[skill].append(round(100 * one.right / one.asked) if one else None)
    return Growth(days, {describe(skill): tuple(values) for skill, values in shares.items()})


def _most_asked(standing: Standing) -> tuple[int, Skill]:
    return -standing.asked, standing.skill
