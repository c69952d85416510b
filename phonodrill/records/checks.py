"""Checks as they were made."""

from __future__ import annotations

import json
import secrets
from collections.abc import Iterable, Sequence
from datetime import date as Date  # noqa: N812
from functools import lru_cache

from sqlalchemy import Connection, delete, func, insert, select

from phonodrill.errors import PhonodrillError
from phonodrill.records.answer import Asked, Kind, Skill
from phonodrill.records.groups import group_id_of
from phonodrill.records.kept import Check, Listed
from phonodrill.records.tables import CHECKS, GROUPS, ITEMS, RESULTS

KEY_DIGITS = 8
"""Digits only: letters drawn at random spell words now and then."""
ASKED = (ITEMS.c.how, ITEMS.c.ask, ITEMS.c.word, ITEMS.c.answer, ITEMS.c.shows, ITEMS.c.skills)
"""The columns that :func:`asked_of` reads, in its order."""


def keep_check(connection: Connection, check: Check) -> Check:
    """Keep a check that was made; its key is drawn here.

    Raises:
        PhonodrillError: if there is no such group, or its date is none.
    """
    _check_date(check.date)
    group_id = group_id_of(connection, check.group)
    check = check._replace(key=_new_key(connection))
    made = connection.execute(
        insert(CHECKS).values(
            key=check.key,
            group_id=group_id,
            focus=check.focus,
            date=check.date,
            band=check.band,
            seed=check.seed,
        )
    )
    (check_id,) = made.inserted_primary_key or (None,)
    connection.execute(insert(ITEMS), rows_of(check.items, check_id))
    return check


def find_check(connection: Connection, key: str) -> Check:
    """Return a check by its key.

    Raises:
        PhonodrillError: if there is none.
    """
    check_id = check_id_of(connection, key)
    columns = (CHECKS.c.key, GROUPS.c.name, CHECKS.c.focus, CHECKS.c.date)
    query = select(*columns, CHECKS.c.band, CHECKS.c.seed).join(GROUPS)
    row = connection.execute(query.where(CHECKS.c.id == check_id)).one()
    items = connection.execute(
        select(*ASKED).where(ITEMS.c.check_id == check_id).order_by(ITEMS.c.position)
    )
    return Check(*row, tuple(asked_of(*item) for item in items))


def list_checks(connection: Connection, group: str, most: int) -> Sequence[Listed]:
    """Return the latest checks, the latest first.

    Args:
        connection: to the database.
        group: of this group only; empty for all.
        most: how many.

    Raises:
        PhonodrillError: if there is no such group.
    """
    items = select(func.count()).select_from(ITEMS).where(ITEMS.c.check_id == CHECKS.c.id)
    results = select(func.count()).select_from(ITEMS).join(RESULTS)
    columns = (CHECKS.c.key, GROUPS.c.name, CHECKS.c.focus, CHECKS.c.date)
    query = (
        select(
            *columns,
            items.scalar_subquery(),
            results.where(ITEMS.c.check_id == CHECKS.c.id).scalar_subquery(),
        )
        .join(GROUPS)
        .order_by(CHECKS.c.date.desc(), CHECKS.c.id.desc())
        .limit(most)
    )
    if group:
        query = query.where(CHECKS.c.group_id == group_id_of(connection, group))
    return [Listed(*row) for row in connection.execute(query)]


def remove_check(connection: Connection, key: str) -> bool:
    """Remove a check with its results.

    Returns:
        Whether it had results.

    Raises:
        PhonodrillError: if there is none.
    """
    check_id = check_id_of(connection, key)
    of_it = select(RESULTS.c.item_id).join_from(ITEMS, RESULTS).where(ITEMS.c.check_id == check_id)
    has_results = connection.execute(of_it.limit(1)).first() is not None
    connection.execute(delete(CHECKS).where(CHECKS.c.id == check_id))
    return has_results


def check_id_of(connection: Connection, key: str) -> int:
    """Return the id of a check.

    Raises:
        PhonodrillError: if there is none.
    """
    found = connection.execute(select(CHECKS.c.id).where(CHECKS.c.key == key)).scalar()
    if found is None:
        raise PhonodrillError(f"there is no check {key!r}", "phonodrill check list")
    return int(found)


def rows_of(items: Iterable[Asked], check_id: int | None) -> list[dict[str, object]]:
    """Return the rows of a check's items."""
    return [
        {
            **item._asdict(),
            "skills": write_skills(item.skills),
            "check_id": check_id,
            "position": position,
        }
        for position, item in enumerate(items, 1)
    ]


def write_skills(skills: tuple[Skill, ...]) -> str:
    """Write skills as the text that :func:`read_skills` reads."""
    return json.dumps([[str(skill.kind), skill.name] for skill in skills], ensure_ascii=False)


@lru_cache(4096)
def read_skills(text: str) -> tuple[Skill, ...]:
    """Read skills; the same few stand in most items, so they are remembered.

    >>> read_skills('[["task", "delete"]]')
    (Skill(kind=<Kind.TASK: 'task'>, name='delete'),)

    Raises:
        PhonodrillError: if the text was spoiled on the disk.
    """
    try:
        return tuple(Skill(Kind(kind), str(name)) for kind, name in json.loads(text))
    except (ValueError, TypeError):
        raise PhonodrillError(
            "an item of a check is damaged", "phonodrill records restore BACKUP"
        ) from None


def asked_of(how: str, ask: str, word: str, answer: str, shows: str, skills: str) -> Asked:
    """Make an item of its columns."""
    return Asked(how, ask, word, answer, shows, read_skills(skills))


def _new_key(connection: Connection) -> str:
    while True:
        key = str(secrets.randbelow(9 * 10 ** (KEY_DIGITS - 1)) + 10 ** (KEY_DIGITS - 1))
        if connection.execute(select(CHECKS.c.id).where(CHECKS.c.key == key)).scalar() is None:
            return key


def _check_date(text: str) -> None:
    try:
        is_plain = Date.fromisoformat(text).isoformat() == text
    except ValueError:
        is_plain = False
    if not is_plain:
        raise PhonodrillError(f"{text!r} is no date", "year-month-day: 2026-11-25")
