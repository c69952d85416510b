"""Results: entered once, corrected, taken back, read again."""

from __future__ import annotations

import time
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any, NamedTuple

from sqlalchemy import Connection, Select, delete, select
from sqlalchemy.dialects import postgresql, sqlite

from phonodrill.errors import PhonodrillError
from phonodrill.records.answer import Answer, Asked
from phonodrill.records.checks import ASKED, asked_of, check_id_of
from phonodrill.records.groups import group_id_of, student_id_of
from phonodrill.records.kept import Entered, Result, StudentRecord
from phonodrill.records.tables import CHECKS, ENTRIES, ITEMS, RESULTS, STUDENTS

LONGEST_SAID = 80
REMEMBERED = 3 * 24 * 3600
"""Seconds for which an act of entering is remembered: no browser sends one again later."""


class _Where(NamedTuple):
    """The ids that a result lies under."""

    student_id: int
    item_id: int


def enter(connection: Connection, key: str, result: Result) -> bool:
    """Enter a result, or put it in the place of what was entered before.

    Returns:
        Whether the act of entering was a new one; if not, nothing was changed.

    Raises:
        PhonodrillError: if there is no such check, item or student.
    """
    where = _find(connection, key, result.position, result.student)
    if not _is_new(connection, result.entry):
        return False
    values = {
        "is_right": result.right,
        "said": "" if result.right else _plain(result.said),
        "at": int(time.time()),
    }
    statement = _insert(connection)(RESULTS).values(**where._asdict(), **values)
    connection.execute(
        statement.on_conflict_do_update(index_elements=["student_id", "item_id"], set_=values)
    )
    return True


def undo(connection: Connection, key: str, position: int, student: str, entry: str) -> bool:
    """Take a result back; the same act sent again changes nothing.

    Returns:
        Whether there was one that was taken back.

    Raises:
        PhonodrillError: if there is no such check, item or student.
    """
    where = _find(connection, key, position, student)
    if not _is_new(connection, entry):
        return False
    found = connection.execute(
        delete(RESULTS).where(
            RESULTS.c.student_id == where.student_id, RESULTS.c.item_id == where.item_id
        )
    )
    return bool(found.rowcount)


def results_of(connection: Connection, key: str) -> Sequence[Result]:
    """Return what is entered in a check, by position and student.

    Raises:
        PhonodrillError: if there is no such check.
    """
    columns = (ITEMS.c.position, STUDENTS.c.code, RESULTS.c.is_right, RESULTS.c.said)
    query = (
        select(*columns)
        .join_from(ITEMS, RESULTS)
        .join(STUDENTS)
        .where(ITEMS.c.check_id == check_id_of(connection, key))
        .order_by(ITEMS.c.position, STUDENTS.c.code)
    )
    return [Result(*row) for row in connection.execute(query)]


def answers_of(connection: Connection, group: str, last: int | None, since: str) -> list[Answer]:
    """Return the answers of a group, the oldest check first.

    Args:
        connection: to the database.
        group: its name.
        last: only of so many of its latest checks; None for all.
        since: only of checks of this date or later; empty for all.

    Raises:
        PhonodrillError: if there is no such group.
    """
    group_id = group_id_of(connection, group)
    window = select(CHECKS.c.id, CHECKS.c.focus, CHECKS.c.date).where(
        CHECKS.c.group_id == group_id, CHECKS.c.date >= since
    )
    window = window.order_by(CHECKS.c.date.desc(), CHECKS.c.id.desc()).limit(last)
    about = {check_id: (focus, date) for check_id, focus, date in connection.execute(window)}
    items = _items_in(connection, window)
    if not items:
        return []
    # Ids grow with time, so the rows wanted lie at the end of each student's rows.
    query = (
        select(STUDENTS.c.code, RESULTS.c.item_id, RESULTS.c.is_right, RESULTS.c.said)
        .join_from(STUDENTS, RESULTS)
        .where(STUDENTS.c.group_id == group_id, RESULTS.c.item_id >= min(items))
    )
    found: dict[int, list[Answer]] = {item_id: [] for item_id in items}
    for code, item_id, is_right, said in connection.execute(query).all():
        if item_id in items:
            check_id, asked = items[item_id]
            found[item_id].append(Answer(code, *about[check_id], asked, is_right, said))
    order = {check_id: place for place, check_id in enumerate(reversed(about))}
    in_order = sorted(items, key=lambda item_id: (order[items[item_id][0]], item_id))
    return [answer for item_id in in_order for answer in sorted(found[item_id])]


def record_of(connection: Connection, group: str, code: str) -> StudentRecord:
    """Return all that is kept of a student.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    student_id = student_id_of(connection, group, code)
    query = (
        select(
            CHECKS.c.key,
            CHECKS.c.focus,
            CHECKS.c.date,
            ITEMS.c.position,
            *ASKED,
            RESULTS.c.is_right,
            RESULTS.c.said,
            RESULTS.c.at,
        )
        .join_from(RESULTS, ITEMS)
        .join(CHECKS)
        .where(RESULTS.c.student_id == student_id)
        .order_by(CHECKS.c.date, CHECKS.c.id, ITEMS.c.position)
    )
    return StudentRecord(group, code, tuple(_entered(row) for row in connection.execute(query)))


def erase_student(connection: Connection, group: str, code: str) -> int:
    """Delete a student and all results; the rest is :meth:`Database.vacuum`.

    Returns:
        How many results were deleted.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    student_id = student_id_of(connection, group, code)
    gone = connection.execute(delete(RESULTS).where(RESULTS.c.student_id == student_id))
    connection.execute(delete(STUDENTS).where(STUDENTS.c.id == student_id))
    return int(gone.rowcount)


def forget_entries(connection: Connection) -> None:
    """Forget acts of entering that are too old to be sent again."""
    connection.execute(delete(ENTRIES).where(ENTRIES.c.at < int(time.time()) - REMEMBERED))


def _find(connection: Connection, key: str, position: int, student: str) -> _Where:
    query = (
        select(STUDENTS.c.id, ITEMS.c.id)
        .join_from(CHECKS, ITEMS)
        .join(STUDENTS, STUDENTS.c.group_id == CHECKS.c.group_id)
        .where(CHECKS.c.key == key, ITEMS.c.position == position, STUDENTS.c.code == student)
    )
    row = connection.execute(query).one_or_none()
    if row is None:
        check_id = check_id_of(connection, key)
        items = select(ITEMS.c.position).where(ITEMS.c.check_id == check_id)
        if position not in connection.execute(items).scalars().all():
            raise PhonodrillError(
                f"check {key} has no item {position}", f"phonodrill check show {key}"
            )
        raise PhonodrillError(
            f"there is no such student in the group of check {key}",
            "phonodrill group list --students",
        )
    return _Where(*row)


def _is_new(connection: Connection, entry: str) -> bool:
    """Remember an act of entering, and say whether it is a new one."""
    if not entry:
        return True
    statement = _insert(connection)(ENTRIES).values(entry=entry, at=int(time.time()))
    kept = connection.execute(statement.on_conflict_do_nothing().returning(ENTRIES.c.entry))
    return kept.first() is not None


def _insert(connection: Connection) -> Any:
    """Return the insert statement that knows ``ON CONFLICT`` of this kind of database."""
    return sqlite.insert if connection.dialect.name == "sqlite" else postgresql.insert


def _items_in(
    connection: Connection, window: Select[tuple[int, str, str]]
) -> dict[int, tuple[int, Asked]]:
    """Return the items of some checks by their id, each with its check and what is asked."""
    chosen = window.subquery()
    query = select(ITEMS.c.id, ITEMS.c.check_id, *ASKED).join(
        chosen, ITEMS.c.check_id == chosen.c.id
    )
    return {
        item_id: (check_id, asked_of(*asked))
        for item_id, check_id, *asked in connection.execute(query).all()
    }


def _entered(row: Any) -> Entered:
    key, focus, date, position, *asked, right, said, at = row
    when = datetime.fromtimestamp(at, UTC).isoformat()
    return Entered(key, focus, date, position, asked_of(*asked), right, said, when)


def _plain(said: str) -> str:
    r"""Keep one short line of what was said.

    >>> _plain(" torch is\n")
    'torch is'
    """
    line = "".join(sign if sign.isprintable() else " " for sign in said)
    return " ".join(line.split())[:LONGEST_SAID]
