"""What goes wrong on pages with records; nothing of it holds what is kept of students."""

from __future__ import annotations

from phonodrill.web.page import Problem


class RecordsError(Exception):
    """Something about the records that the user can put right.

    Attributes:
        problem: worded for a page: no path, no code of a student.
    """

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


class SignInError(Exception):
    """Somebody who is not signed in asked for records."""


class FaultError(Exception):
    """A fault of ours; says where, and nothing of what was worked on."""
