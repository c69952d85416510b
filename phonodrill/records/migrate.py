"""Bring a database to the tables of this version; refuse one that is newer or not ours."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, inspect

from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra
from phonodrill.records.database import Database
from phonodrill.records.place import VARIABLE
from phonodrill.records.tables import METADATA, SCHEMA

if TYPE_CHECKING:
    from alembic.script import ScriptDirectory

MIGRATIONS = Path(__file__).parent / "migrations"
_VERSIONS = "alembic_version"
_WHICH = f"SELECT version_num FROM {_VERSIONS}"  # noqa: S608
_LOCK = 7_309_451
"""Number of the lock that keeps two programs from migrating a server at once."""


def bring_up_to_date(database: Database, migrations: Path = MIGRATIONS, to: str = SCHEMA) -> None:
    """Make the tables in an empty database, or change older ones; all of it or nothing.

    Args:
        database: the open database.
        migrations: folder of the revisions.
        to: the revision wanted.

    Raises:
        PhonodrillError: if it is of a newer version or of another program.
    """
    with database.reading() as connection:
        if _revision(connection) == to:
            return
    scripts = _scripts(migrations)
    with database.writing() as connection:
        if not database.is_file:
            connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({_LOCK})")
        # Another program may have done it while this one waited.
        revision = _revision(connection)
        _refuse(connection, revision, scripts, database)
        if revision != to:
            _migrate(connection, revision, scripts, to)


def refuse_unknown(connection: sqlite3.Connection, path: Path) -> None:
    """Refuse a file that is not of this or an older version.

    Args:
        connection: to the file.
        path: its name, for the message.

    Raises:
        PhonodrillError: if it is newer or of another program.
    """
    names = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
    if (_VERSIONS,) not in names:
        raise _other(str(path))
    (revision,) = connection.execute(_WHICH).fetchone() or ("",)
    if revision not in _known(_scripts(MIGRATIONS)):
        raise _newer(str(path), revision)


def _revision(connection: Connection) -> str:
    if not inspect(connection).has_table(_VERSIONS):
        return ""
    return str(connection.exec_driver_sql(_WHICH).scalar() or "")


def _refuse(
    connection: Connection, revision: str, scripts: ScriptDirectory, database: Database
) -> None:
    if revision and revision not in _known(scripts):
        raise _newer(database.place.shown, revision)
    if not revision and inspect(connection).get_table_names():
        raise _other(database.place.shown)


def _known(scripts: ScriptDirectory) -> set[str]:
    return {script.revision for script in scripts.walk_revisions()}


def _newer(shown: str, revision: str) -> PhonodrillError:
    return PhonodrillError(
        f"{shown} was written by a newer phonodrill (its tables are {revision})",
        "install phonodrill again, from its newer folder: python -m pip install .",
    )


def _other(shown: str) -> PhonodrillError:
    return PhonodrillError(
        f"{shown} holds something else than records", f"another place in {VARIABLE}"
    )


def _scripts(migrations: Path) -> ScriptDirectory:
    import_extra("alembic", "keeping records", extra="records")
    from alembic.script import ScriptDirectory

    return ScriptDirectory(str(migrations))


def _migrate(connection: Connection, revision: str, scripts: ScriptDirectory, to: str) -> None:
    from alembic.operations import Operations
    from alembic.runtime.migration import MigrationContext

    context = MigrationContext.configure(connection, opts={"target_metadata": METADATA})
    missing = list(scripts.iterate_revisions(to, revision or "base"))
    with Operations.context(context):
        for script in reversed(missing):
            script.module.upgrade()
    context.stamp(scripts, to)
