"""What the store hands out: plain records, the same for every kind of database."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.records.answer import Asked


class Group(NamedTuple):
    """Students who are checked together.

    Attributes:
        name: of the group.
        students: how many.
        checks: how many were made for it.
    """

    name: str
    students: int
    checks: int


class Check(NamedTuple):
    """A check as it was made.

    Attributes:
        key: random digits that name it, in commands and addresses.
        group: name of its group.
        focus: what it is about, as ``--focus`` takes it.
        date: ISO 8601 (``2026-11-25``).
        band: highest band of its words.
        seed: makes the same items again.
        items: what is asked, in order.
    """

    key: str
    group: str
    focus: str
    date: str
    band: int
    seed: int
    items: tuple[Asked, ...]


class Listed(NamedTuple):
    """A check in a list.

    Attributes:
        key, group, focus, date: as in :class:`Check`.
        items: how many are asked.
        results: how many are entered, of all students.
    """

    key: str
    group: str
    focus: str
    date: str
    items: int
    results: int


class Result(NamedTuple):
    """What is entered for one item and one student.

    Attributes:
        position: of the item in its check, from 1.
        student: code of the student.
        right: whether it was right.
        said: what was said or written instead; empty if right or not noted.
        entry: a random text that the one who enters makes up for every act of entering.
            The same act sent again changes nothing. Empty: not remembered.
    """

    position: int
    student: str
    right: bool
    said: str = ""
    entry: str = ""


class Entered(NamedTuple):
    """One result of a student with all that belongs to it.

    Attributes:
        check, focus, date: of the check it belongs to.
        position: of the item in the check.
        asked: the item.
        right, said: as in :class:`Result`.
        at: when it was entered, ISO 8601 in UTC.
    """

    check: str
    focus: str
    date: str
    position: int
    asked: Asked
    right: bool
    said: str
    at: str


class StudentRecord(NamedTuple):
    """All that is kept of a student.

    Attributes:
        group: the student's group.
        code: the student's code.
        entered: every result, the oldest first.
    """

    group: str
    code: str
    entered: tuple[Entered, ...]


class Counts(NamedTuple):
    """How much is kept."""

    groups: int
    students: int
    checks: int
    results: int
