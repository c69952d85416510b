"""What the pages Progress and Next share: which group, which answers, by which rule."""

from __future__ import annotations

from typing import NamedTuple

from pydantic import Field

from phonodrill.records.answer import Answer
from phonodrill.records.standing import THRESHOLDS, Thresholds
from phonodrill.records.store import Store
from phonodrill.web.forms import Form
from phonodrill.web.records.keys import Keys

RECENT = 30
"""Checks that a page looks back on: what it needs then does not grow with the year."""
MOST_CHECKS = 400


class RuleForm(Form):
    """The rule by which answers are judged."""

    has: float = Field(
        default=THRESHOLDS.has, ge=0, le=1, description="Share that “has it” surely reaches."
    )
    lacks: float = Field(
        default=THRESHOLDS.lacks, ge=0, le=1, description="Share that “not yet” surely stays under."
    )
    fewest: int = Field(
        default=THRESHOLDS.fewest, ge=1, le=100, description="Answers below which nothing is said."
    )
    window: int = Field(
        default=THRESHOLDS.window, ge=1, le=1000, description="How many latest answers count."
    )
    last: int = Field(
        default=RECENT, ge=1, le=MOST_CHECKS, description="How many latest checks are looked at."
    )

    def rule(self) -> Thresholds:
        """Put the rule together.

        Raises:
            PhonodrillError: if it makes no sense.
        """
        return THRESHOLDS._replace(
            has=self.has, lacks=self.lacks, fewest=self.fewest, window=self.window
        ).checked()


class Kept(NamedTuple):
    """The answers of a group.

    Attributes:
        group: its name.
        students: code and key of each.
        answers: of the latest checks.
        student: code of the one student that is looked at; empty for all.
    """

    group: str
    students: tuple[tuple[str, str], ...]
    answers: list[Answer]
    student: str = ""


def read_kept(store: Store, keys: Keys, group: str, last: int, student: str = "") -> Kept:
    """Read the answers of a group.

    Args:
        store: the open store.
        keys: that addresses have.
        group: key of the group.
        last: how many latest checks.
        student: key of one student; empty for all.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    name = keys.group(store, group)
    code = keys.student(store, name, student) if student else ""
    students = tuple((one, keys.of(name, one)) for one in store.list_students(name))
    return Kept(name, students, list(store.answers(name, last=last)), code)
