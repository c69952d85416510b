"""Groups and their students."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Sequence

from sqlalchemy import Connection, delete, func, insert, select
from sqlalchemy.exc import IntegrityError

from phonodrill.errors import PhonodrillError
from phonodrill.records.kept import Group
from phonodrill.records.tables import CHECKS, GROUPS, STUDENTS

LONGEST_NAME = 60
MOST_STUDENTS = 200
_CODE = re.compile(r"[^\W_][\w.-]{0,11}")
_LIST = "phonodrill group list"


def read_codes(text: str) -> tuple[str, ...]:
    """Read codes of students parted by commas.

    Args:
        text: for example ``A,B,C2``.

    Raises:
        PhonodrillError: if one is no code, or comes twice.

    >>> read_codes("A, B,C2")
    ('A', 'B', 'C2')
    """
    codes = tuple(filter(None, map(str.strip, text.split(","))))
    for number, code in enumerate(codes, 1):
        if not _CODE.fullmatch(code):
            raise PhonodrillError(
                f"code {number} of the students is no code",
                "initials or a number of up to 12 signs, no full name: A,B,C2",
            )
    if len(set(codes)) < len(codes):
        raise PhonodrillError("a code of the students comes twice", "one code for each: A,B,B2")
    return codes


def add_group(connection: Connection, name: str, codes: Iterable[str]) -> None:
    """Add a group with its students.

    Raises:
        PhonodrillError: if its name cannot be used or is taken.
    """
    if not name.isprintable() or name != name.strip() or not 1 <= len(name) <= LONGEST_NAME:
        raise PhonodrillError(
            "that is no name for a group", f"1 to {LONGEST_NAME} letters: harbor-2"
        )
    try:
        connection.execute(insert(GROUPS).values(name=name))
    except IntegrityError:
        raise PhonodrillError(f"there is a group {name!r} already", _LIST) from None
    add_students(connection, name, codes)


def add_students(connection: Connection, group: str, codes: Iterable[str]) -> None:
    """Add students to a group.

    Raises:
        PhonodrillError: if there is no such group, it has one of the codes, or is too large.
    """
    group_id = group_id_of(connection, group)
    there = set(codes_of(connection, group_id))
    new = list(codes)
    if len(there) + len(new) > MOST_STUDENTS:
        raise PhonodrillError(f"a group has at most {MOST_STUDENTS} students", "two groups")
    if there & set(new):
        raise PhonodrillError("the group has one of these codes already", f"{_LIST} --students")
    if new:
        rows = [{"group_id": group_id, "code": code} for code in new]
        connection.execute(insert(STUDENTS), rows)


def remove_group(connection: Connection, name: str) -> None:
    """Remove a group with its students, checks and results.

    Raises:
        PhonodrillError: if there is no such group.
    """
    group_id = group_id_of(connection, name)
    # Students first: their results lie side by side, those of an item do not.
    connection.execute(delete(STUDENTS).where(STUDENTS.c.group_id == group_id))
    connection.execute(delete(GROUPS).where(GROUPS.c.id == group_id))


def list_groups(connection: Connection) -> tuple[Group, ...]:
    """Return the groups by name."""
    students, checks = (
        select(func.count())
        .select_from(table)
        .where(table.c.group_id == GROUPS.c.id)
        .scalar_subquery()
        for table in (STUDENTS, CHECKS)
    )
    rows = connection.execute(select(GROUPS.c.name, students, checks).order_by(GROUPS.c.name))
    return tuple(Group(*row) for row in rows)


def group_id_of(connection: Connection, name: str) -> int:
    """Return the id of a group.

    Raises:
        PhonodrillError: naming the nearest group, if there is none of that name.
    """
    found = connection.execute(select(GROUPS.c.id).where(GROUPS.c.name == name)).scalar()
    if found is None:
        names = connection.execute(select(GROUPS.c.name)).scalars().all()
        near = difflib.get_close_matches(name, names, n=1)
        raise PhonodrillError(
            f"there is no group {name!r}",
            f"did you mean {near[0]}?" if near else f"{_LIST}, or phonodrill group add",
        )
    return int(found)


def codes_of(connection: Connection, group_id: int) -> Sequence[str]:
    """Return the codes of a group's students, in the order of their codes."""
    query = select(STUDENTS.c.code).where(STUDENTS.c.group_id == group_id)
    return sorted(connection.execute(query).scalars(), key=_in_order)


def groups_with(connection: Connection, code: str) -> Sequence[str]:
    """Return the names of the groups that have a student of that code."""
    query = select(GROUPS.c.name).join(STUDENTS).where(STUDENTS.c.code == code)
    return connection.execute(query.order_by(GROUPS.c.name)).scalars().all()


def student_id_of(connection: Connection, group: str, code: str) -> int:
    """Return the id of a student.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    group_id = group_id_of(connection, group)
    query = select(STUDENTS.c.id).where(STUDENTS.c.group_id == group_id, STUDENTS.c.code == code)
    found = connection.execute(query).scalar()
    if found is None:
        raise PhonodrillError(
            f"there is no such student in the group {group!r}", f"{_LIST} --students"
        )
    return int(found)


def _in_order(code: str) -> tuple[str, int, str]:
    """Order codes as people do: B2 before B10.

    >>> sorted(["B10", "a", "B2"], key=_in_order)
    ['a', 'B2', 'B10']
    """
    letters = code.rstrip("0123456789")
    return letters.casefold(), int(code[len(letters) :] or 0), code
