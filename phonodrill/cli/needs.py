"""What commands that work from kept answers share: the rule, the order taught."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from phonodrill.cli.records_store import open_store
from phonodrill.errors import PhonodrillError
from phonodrill.records.standing import THRESHOLDS, Thresholds

if TYPE_CHECKING:
    from phonodrill.lexicon.store import Lexicon
    from phonodrill.records.answer import Answer

HasOption = Annotated[
    float, typer.Option("--has", help="Share right that “has it” surely reaches, 0 to 1.")
]
LacksOption = Annotated[
    float, typer.Option("--not-yet", help="Share right that “not yet” surely stays under.")
]
FewestOption = Annotated[
    int, typer.Option("--fewest", help="Answers below which nothing is said of a student.")
]
WindowOption = Annotated[
    int, typer.Option("--window", help="How many of the latest answers count.")
]


def rule_of(has: float, lacks: float, fewest: int, window: int) -> Thresholds:
    """Put the rule together.

    Raises:
        PhonodrillError: if it makes no sense.
    """
    return THRESHOLDS._replace(has=has, lacks=lacks, fewest=fewest, window=window).checked()


def answers_of(group: str) -> list[Answer]:
    """Return the kept answers of a group.

    Raises:
        PhonodrillError: if no group is named or there is none of that name.
    """
    if not group:
        raise PhonodrillError("no group", "--group G; phonodrill group list")
    with open_store() as store:
        return list(store.answers(group))


def group_of(student: str) -> str:
    """Return the one group that has a student.

    Raises:
        PhonodrillError: if none or several have.
    """
    with open_store() as store:
        groups = store.groups_with(student)
    if len(groups) != 1:
        what = "is in several groups" if groups else "is in no group"
        raise PhonodrillError(f"that student {what}", "--group G --student S")
    return groups[0]


def order_of(taught: Path | None, lexicon: Lexicon) -> tuple[str, ...]:
    """Return the correspondences of a taught file as skills name them, in its order."""
    if taught is None:
        return ()
    from phonodrill.cli.taught_file import read_taught
    from phonodrill.services import needs

    return needs.order_of(read_taught(taught, lexicon).steps)
