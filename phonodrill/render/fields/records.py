"""Fields of records: groups, checks, what is kept of a student, progress, what comes next."""

from __future__ import annotations

from typing import Annotated, NotRequired, TypedDict

from phonodrill.records.answer import Kind
from phonodrill.records.confusions import Confusion
from phonodrill.records.review import Due
from phonodrill.records.standing import Thresholds, Verdict
from phonodrill.render.fields.common import Band, Count, Keyword, Share

Day = Annotated[str, Keyword("pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$")]
Key = Annotated[str, Keyword("pattern", "^[0-9]{8}$")]
Position = Annotated[int, Keyword("minimum", 1)]
Skill = tuple[Annotated[str, Kind], str]


class Group(TypedDict):
    """A group.

    Attributes:
        group: its name.
        students: how many.
        checks: how many were made for it.
        codes: codes of the students; only if asked for.
    """

    group: str
    students: Count
    checks: Count
    codes: NotRequired[list[str]]


class Groups(TypedDict):
    """The groups.

    Attributes:
        groups: by name.
    """

    groups: list[Group]


class ListedCheck(TypedDict):
    """A check in a list.

    Attributes:
        check: the digits that name it.
        group: name of its group.
        focus: what it is about.
        date: when it was made.
        items: how many are asked.
        results: how many are entered.
    """

    check: Key
    group: str
    focus: str
    date: Day
    items: Count
    results: Count


class Checks(TypedDict):
    """Checks that were made.

    Attributes:
        checks: the latest first.
    """

    checks: list[ListedCheck]


class CheckItem(TypedDict):
    """An item of a check.

    Attributes:
        position: of the item, from 1.
        how: what sort of item it is.
        ask: what the teacher says.
        word: the word it is about.
        answer: what is right.
        shows: what a right answer shows.
        skills: what it asks for: kind and name.
    """

    position: Position
    how: str
    ask: str
    word: str
    answer: str
    shows: str
    skills: list[Skill]


class CheckResult(TypedDict):
    """What is entered for one item and one student.

    Attributes:
        position: of the item, from 1.
        student: code of the student.
        right: whether it was right.
        said: what was said or written instead; may be empty.
    """

    position: Position
    student: str
    right: bool
    said: str


class Check(TypedDict):
    """A check as it was made, and what is entered.

    Attributes:
        check: the digits that name it.
        group: name of its group.
        focus: what it is about.
        date: when it was made.
        band: highest band of its words.
        seed: makes the same items again.
        items: what is asked, in order.
        students: codes of the group.
        results: what is entered.
    """

    check: Key
    group: str
    focus: str
    date: Day
    band: Band
    seed: int
    items: list[CheckItem]
    students: list[str]
    results: list[CheckResult]


class KeptResult(TypedDict):
    """A result of a student, with all that belongs to it.

    Attributes:
        check: the digits that name its check.
        focus: what the check was about.
        date: of the check.
        position: of the item in the check, from 1.
        how: what sort of item it was.
        ask: what the teacher said.
        word: the word it was about.
        answer: what was right.
        shows: what a right answer shows.
        skills: what it asked for: kind and name.
        right: whether it was right.
        said: what was said or written instead; may be empty.
        entered: when it was entered, in UTC.
    """

    check: Key
    focus: str
    date: Day
    position: Position
    how: str
    ask: str
    word: str
    answer: str
    shows: str
    skills: list[Skill]
    right: bool
    said: str
    entered: str


class Student(TypedDict):
    """All that is kept of a student.

    Attributes:
        group: the student's group.
        student: the student's code.
        results: the oldest first.
    """

    group: str
    student: str
    results: list[KeptResult]


class Standing(TypedDict):
    """How one student stands in one skill.

    Attributes:
        student: code of the student.
        kind: in what respect items with this skill are alike.
        skill: its name.
        right: right answers that count.
        asked: answers that count.
        low: lower end of the interval.
        high: upper end of the interval.
        verdict: what follows by the rule.
        last: day of the latest answer.
    """

    student: str
    kind: Annotated[str, Kind]
    skill: str
    right: Count
    asked: Count
    low: Share
    high: Share
    verdict: Annotated[str, Verdict]
    last: Day


Growth = Annotated[
    dict[str, list[int | None]],
    Keyword("properties", {"dates": {"type": "array", "items": {"type": "string"}}}),
    Keyword("required", ["dates"]),
]


class Progress(TypedDict):
    """How a group or a student stands.

    Attributes:
        group: name of the group.
        student: code of the student; empty for all.
        rule: by which the answers were judged.
        answers: how many there are.
        standings: by student and skill.
        growth: dates of the checks, and for each curve one number a date; null before
            anything was asked.
        confusions: likely confusions that wrong answers showed.
        review: words to come back to.
    """

    group: str
    student: str
    rule: Thresholds
    answers: Count
    standings: list[Standing]
    growth: Growth
    confusions: list[Confusion]
    review: list[Due]


class Counted(TypedDict):
    """Answers counted, with the interval in which the true share lies.

    Attributes:
        right: right answers.
        asked: answers.
        low: lower end of the interval.
        high: upper end of the interval.
    """

    right: Count
    asked: Count
    low: Share
    high: Share


class Pick(TypedDict):
    """A focus that may be next.

    Attributes:
        focus: what lesson --focus takes.
        kind: in what respect items with its skill are alike.
        skill: the skill that is needed.
        right: right answers of the group.
        asked: answers of the group.
        low: lower end of the interval.
        high: upper end of the interval.
        is_sure: whether enough was asked to say so; else a check comes first.
        verdict: how the group as a whole stands.
        students: codes of those who need it.
        likely: codes of those who may need it, by few answers.
        too_few_to_say: codes of those with too few answers.
        comes_before: the weaker skill before which it comes; may be empty.
    """

    focus: str
    kind: Annotated[str, Kind]
    skill: str
    right: Count
    asked: Count
    low: Share
    high: Share
    is_sure: bool
    verdict: Annotated[str, Verdict]
    students: list[str]
    likely: list[str]
    too_few_to_say: list[str]
    comes_before: str


class Where(TypedDict):
    """Where items of the first focus go least well.

    Attributes:
        kind: in what respect.
        name: which place, level or cluster.
        right: right answers.
        asked: answers.
        low: lower end of the interval.
        high: upper end of the interval.
    """

    kind: Annotated[str, Kind]
    name: str
    right: Count
    asked: Count
    low: Share
    high: Share


class Team(TypedDict):
    """Students with the same need.

    Attributes:
        focus: what they need.
        skill: the skill, in words.
        students: their codes.
    """

    focus: str
    skill: str
    students: list[str]


class Next(TypedDict):
    """What to teach a group next.

    Attributes:
        group: name of the group.
        rule: by which the answers were judged.
        answers: how many there are.
        next: foci in order, the first the next.
        where: where items of the first focus go least well.
        confusions: likely confusions that wrong answers showed.
        teams: small groups by shared need; students alone with theirs at the end.
        no_need_known: codes of students without a known need.
        review: words to come back to.
    """

    group: str
    rule: Thresholds
    answers: Count
    next: list[Pick]
    where: list[Where]
    confusions: list[Confusion]
    teams: list[Team]
    no_need_known: list[str]
    review: list[Due]
