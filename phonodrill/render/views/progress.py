"""How progress is shown: a grid readable without color, growth, confusions, what is due."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from phonodrill.records.answer import Skill
from phonodrill.records.confusions import Confusion
from phonodrill.records.report import Growth, Progress
from phonodrill.records.review import Due
from phonodrill.records.skills import describe
from phonodrill.records.standing import Standing, Thresholds, Verdict, wilson
from phonodrill.records.teachable import focus_of
from phonodrill.render.document import Document, Picture, Section, Table, counted
from phonodrill.render.plot import line_chart

if TYPE_CHECKING:
    from phonodrill.render.fields import records

SIGNS = {Verdict.HAS: "+", Verdict.ON_THE_WAY: "~", Verdict.NOT_YET: "-", Verdict.TOO_FEW: "?"}
LEGEND = "; ".join(f"{sign} {verdict}" for verdict, sign in SIGNS.items())
CAUTION = "A check is not a diagnosis: it says what a child did in some items on some days."
MOST_SHOWN = 12
ACROSS = 15
"""Skills beside each other in a grid."""


def progress(found: Progress, *, inline: bool = False) -> Document:
    """Show how a group or a student stands.

    Args:
        found: how it stands.
        inline: whether the drawing becomes a part of a page, whose color it takes.
    """
    records = [_record(one) for one in found.standings]
    who = f"student {found.student}" if found.student else f"group {found.group}"
    about = f"{counted(found.answers, 'answer')}. {rule_in_words(found.rule)} {CAUTION}"
    sections: list[Section] = []
    if found.standings and found.student:
        sections.append(Section("Where the student stands", _of_student(found.standings)))
    elif found.standings:
        sections.append(Section("Skills", _of_skills(found.standings, found.rule)))
        sections += _grids(found.standings)
    sections += _growth(found, inline=inline)
    sections += confused(found.confusions)
    sections += due(found.due)
    data = {
        "group": found.group,
        "student": found.student,
        "rule": found.rule._asdict(),
        "answers": found.answers,
        "standings": records,
        "growth": {
            "dates": list(found.growth.dates),
            **{name: list(values) for name, values in found.growth.curves.items()},
        },
        "confusions": [one._asdict() for one in found.confusions],
        "review": [one._asdict() for one in found.due],
    }
    return Document(f"Progress: {who}", about, tuple(sections), data, records)


def rule_in_words(rule: Thresholds) -> str:
    """State the rule by which was judged."""
    return (
        f"“{Verdict.HAS}”: surely {rule.has:.0%} right or more; “{Verdict.NOT_YET}”: surely under "
        f"{rule.lacks:.0%}; fewer than {rule.fewest} answers: {Verdict.TOO_FEW}. "
        f"The latest {rule.window} answers count."
    )


def share(right: int, asked: int, interval: tuple[float, float]) -> str:
    """Write a share with its interval.

    >>> share(3, 8, (0.16, 0.65))
    '38 % (16-65)'
    """
    low, high = interval
    return f"{right / asked:.0%} ({low:.0%}-{high:.0%})".replace("%", "").replace(" (", " % (")


def _record(one: Standing) -> records.Standing:
    return {
        "student": one.student,
        "kind": str(one.skill.kind),
        "skill": one.skill.name,
        "right": one.right,
        "asked": one.asked,
        "low": round(one.interval.low, 3),
        "high": round(one.interval.high, 3),
        "verdict": str(one.verdict),
        "last": one.last,
    }


def _of_student(standings: Iterable[Standing]) -> Table:
    rows = tuple(
        (
            describe(one.skill),
            f"{one.right} of {one.asked}",
            share(one.right, one.asked, one.interval),
            str(one.verdict),
            one.last,
        )
        for one in sorted(standings, key=lambda one: _order(one.skill))
    )
    return Table(("skill", "right", "share", "stands", "last asked"), rows)


def _skills_of(standings: Iterable[Standing]) -> list[Skill]:
    """Return the skills, first those that a lesson teaches."""
    return sorted({one.skill for one in standings}, key=_order)


def _order(skill: Skill) -> tuple[bool, Skill]:
    return not focus_of(skill), skill


def _of_skills(standings: Sequence[Standing], rule: Thresholds) -> Table:
    rows = []
    for number, skill in enumerate(_skills_of(standings), 1):
        own = [one for one in standings if one.skill == skill]
        right, asked = sum(one.right for one in own), sum(one.asked for one in own)
        verdicts = [one.verdict for one in own]
        shared = share(right, asked, wilson(right, asked, rule.z))
        numbers = tuple(str(verdicts.count(verdict)) for verdict in SIGNS)
        rows.append((str(number), describe(skill), f"{right} of {asked}", shared, *numbers))
    return Table(("no.", "skill", "right", "share", *map(str, SIGNS)), tuple(rows))


def _grids(standings: Sequence[Standing]) -> Iterator[Section]:
    """Show a sign a student and skill, as many skills beside each other as a page has room for."""
    skills = _skills_of(standings)
    students = sorted({one.student for one in standings})
    signs = {(one.student, one.skill): SIGNS[one.verdict] for one in standings}
    for start in range(0, len(skills), ACROSS):
        shown = skills[start : start + ACROSS]
        rows = tuple(
            (student, *(signs.get((student, skill), "") for skill in shown)) for student in students
        )
        numbers = map(str, range(start + 1, start + 1 + len(shown)))
        heading = f"Who stands where, skills {start + 1} to {start + len(shown)} ({LEGEND})"
        yield Section(heading, Table(("student", *numbers), rows))


def _growth(found: Progress, *, inline: bool) -> Iterator[Section]:
    growth = found.growth
    if len(growth.dates) < 2 or not growth.curves:  # noqa: PLR2004
        return
    up = "per cent right" if found.student else "students and skills"
    days = [day[5:] for day in growth.dates]
    svg = line_chart(
        "Growth", "day of the check", up, growth.curves, marks=days, name="growth", inline=inline
    )
    yield Section("Growth", Picture(svg, _told(growth, up)))
    rows = tuple(
        (day, *(_shown(values[place]) for values in growth.curves.values()))
        for place, day in enumerate(growth.dates)
    )
    yield Section("Growth in numbers", Table(("day", *growth.curves), rows), 2)


def _shown(value: int | None) -> str:
    return "" if value is None else str(value)


def _told(growth: Growth, up: str) -> str:
    parts = []
    for name, values in growth.curves.items():
        first = next(value for value in values if value is not None)
        parts.append(f"{name} {first} → {values[-1]}")
    return f"From {growth.dates[0]} to {growth.dates[-1]}, {up}: {'; '.join(parts)}."


def confused(confusions: Sequence[Confusion]) -> Iterator[Section]:
    """Show what wrong answers showed."""
    rows = tuple(
        (one.what, str(one.times), " ".join(one.students), ", ".join(one.words[:4]))
        for one in confusions[:MOST_SHOWN]
    )
    if rows:
        yield Section("Likely confusions", Table(("what", "times", "who", "in"), rows))


def due(words: Sequence[Due]) -> Iterator[Section]:
    """Show the words that come back."""
    rows = tuple(
        (one.word, one.day, str(one.students), str(one.misses)) for one in words[:MOST_SHOWN]
    )
    if rows:
        headings = ("word", "due since", "students", "misses")
        yield Section(f"To review: {counted(len(words), 'word')}", Table(headings, rows))
