"""How the next focus is shown: what, for whom, and why."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from phonodrill.records.next_focus import Pick
from phonodrill.records.report import NextStep
from phonodrill.records.skills import describe
from phonodrill.records.standing import Verdict
from phonodrill.render.document import Document, Section, Table, counted
from phonodrill.render.views.progress import CAUTION, confused, due, rule_in_words, share

if TYPE_CHECKING:
    from phonodrill.render.fields import records

WHAT_TO_DO = "What to do"
"""Heading of the section with commands, which a page has links for."""


def next_step(found: NextStep) -> Document:
    """Show what to teach a group next."""
    about = f"{counted(found.answers, 'answer')}. {rule_in_words(found.rule)} {CAUTION}"
    data = {
        "group": found.group,
        "rule": found.rule._asdict(),
        "answers": found.answers,
        "next": [_data(pick) for pick in found.picks],
        "where": [
            {"kind": str(one.skill.kind), "name": one.skill.name, **_counts(one)}
            for one in found.where
        ],
        "confusions": [one._asdict() for one in found.confusions],
        "teams": [
            {"focus": team.focus, "skill": describe(team.skill), "students": list(team.students)}
            for team in (*found.sharing.teams, *found.sharing.alone)
        ],
        "no_need_known": list(found.sharing.free),
        "review": [one._asdict() for one in found.due],
    }
    flat = [_flat(pick, number) for number, pick in enumerate(found.picks, 1)]
    title = f"Next for group {found.group}: {_title(found)}"
    return Document(title, about, tuple(_sections(found)), data, flat)


def _title(found: NextStep) -> str:
    if not found.picks:
        return "nothing that was asked is short of the mark" if found.answers else "check first"
    first = found.picks[0]
    return first.focus if first.is_sure else f"check {first.focus} first"


def _sections(found: NextStep) -> Iterator[Section]:
    if not found.picks:
        what = "a new focus, or a check of another one" if found.answers else "make a check"
        line = f"phonodrill check make --group {found.group} --focus …"
        yield Section(WHAT_TO_DO, Table(("what", "how"), ((what, line),)))
        yield from due(found.due)
        return
    first = found.picks[0]
    yield Section("Why", Table(("reason", "in numbers"), tuple(_reasons(found, first))))
    rows = tuple(
        (one.student, f"{one.right} of {one.asked}", _share(one), str(one.verdict))
        for one in first.students
    )
    if rows:
        yield Section("For whom", Table(("student", "right", "share", "stands"), rows))
    yield from confused(found.confusions)
    later = tuple(
        (pick.focus, describe(pick.skill), f"{pick.right} of {pick.asked}", _share(pick))
        for pick in found.picks[1:]
    )
    if later:
        yield Section("After that", Table(("focus", "skill", "right", "share"), later))
    teams = tuple(
        (team.focus, describe(team.skill), " ".join(team.students))
        for team in (*found.sharing.teams, *found.sharing.alone)
    )
    if teams:
        yield Section("Small groups", Table(("focus", "shared need", "students"), teams))
    yield from due(found.due)
    command = "lesson" if first.is_sure else "check make"
    line = f"phonodrill {command} --group {found.group} --focus {first.focus}"
    yield Section(WHAT_TO_DO, Table(("command",), ((line,),)))


def _reasons(found: NextStep, pick: Pick) -> Iterator[tuple[str, str]]:
    yield describe(pick.skill), f"{pick.right} of {pick.asked} right: {_share(pick)}"
    verdicts = [one.verdict for one in pick.students]
    if verdicts:
        numbers = (
            f"{verdicts.count(verdict)} {verdict}"
            for verdict in (Verdict.NOT_YET, Verdict.ON_THE_WAY)
            if verdict in verdicts
        )
        yield f"{counted(len(verdicts), 'student')} need it", ", ".join(numbers)
    else:
        yield "the group as a whole", str(pick.verdict)
    if pick.likely:
        yield "expected to need it, by few answers", " ".join(pick.likely)
    if len(pick.unsure) > len(pick.likely):
        others = (student for student in pick.unsure if student not in pick.likely)
        yield "too few answers to say", " ".join(others)
    if pick.before:
        yield "comes before what is weakest", describe(pick.before)
    for facet in found.where:
        shown = f"{facet.right} of {facet.asked} right: {_share(facet)}"
        yield f"least well: {describe(facet.skill)}", shown


def _share(one: Any) -> str:
    return share(one.right, one.asked, one.interval)


def _counts(one: Any) -> records.Counted:
    return {
        "right": one.right,
        "asked": one.asked,
        "low": round(one.interval.low, 3),
        "high": round(one.interval.high, 3),
    }


def _data(pick: Pick) -> records.Pick:
    return {
        "focus": pick.focus,
        "kind": str(pick.skill.kind),
        "skill": pick.skill.name,
        **_counts(pick),
        "is_sure": pick.is_sure,
        "verdict": str(pick.verdict),
        "students": [one.student for one in pick.students],
        "likely": list(pick.likely),
        "too_few_to_say": list(pick.unsure),
        "comes_before": pick.before.name if pick.before else "",
    }


def _flat(pick: Pick, number: int) -> dict[str, Any]:
    return {"place": number, **_data(pick)}
