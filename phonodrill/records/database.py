"""Open the database of the records: its settings, its transactions, its errors in one line."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, IntegrityError, SQLAlchemyError

from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra
from phonodrill.records.place import VARIABLE, Place, data_folder, make_folder, make_private

WAIT = 10
"""Seconds to wait for another process that is writing."""
_WRITES = "phonodrill_writes"
_MAGIC = b"SQLite format 3\0"
_SMALL = 8_000_000
"""Bytes up to which a file is checked as a whole whenever it is opened: about 0.05 s."""
RESTORE = "phonodrill records restore BACKUP"


class Database:
    """A database and its transactions; no error of it shows what it was told to keep.

    Args:
        place: where it is.
        must_exist: whether a file that is not there is refused, not made.

    Raises:
        PhonodrillError: if it cannot be opened, is no database, or is damaged.
    """

    def __init__(self, place: Place, *, must_exist: bool = False) -> None:
        self.place = place
        if place.path:
            _prepare(place.path, must_exist=must_exist)
        else:
            import_extra("psycopg", "PostgreSQL", extra="district")
        # What goes into a statement may be of a student: never into a message.
        self.engine = create_engine(
            _url(place),
            hide_parameters=True,
            pool_pre_ping=not place.path,
            connect_args=_args(place),
        )
        if place.path:
            event.listen(self.engine, "connect", _set_up)
            event.listen(self.engine, "begin", _begin)
        try:
            self._look()
        except BaseException:
            self.close()
            raise

    @property
    def is_file(self) -> bool:
        """Whether it is a file of SQLite, not a server."""
        return self.place.path is not None

    def close(self) -> None:
        """Close all connections."""
        self.engine.dispose()

    @contextlib.contextmanager
    def reading(self) -> Iterator[Connection]:
        """Read in one transaction.

        Raises:
            PhonodrillError: if it cannot be read.
        """
        with self._clear_errors(), self.engine.begin() as connection:
            yield connection

    @contextlib.contextmanager
    def writing(self) -> Iterator[Connection]:
        """Write all of it or nothing; when this ends, it is on the disk.

        Raises:
            PhonodrillError: if it cannot be written.
        """
        with (
            self._clear_errors(),
            self.engine.connect().execution_options(**{_WRITES: True}) as connection,
            connection.begin(),
        ):
            yield connection

    def vacuum(self) -> None:
        """Write the tables anew without what was deleted, and empty the log beside the file.

        Raises:
            PhonodrillError: if others are using it.
        """
        if not self.is_file:
            with (
                self._clear_errors(),
                self.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection,
            ):
                connection.exec_driver_sql("VACUUM (FULL) results, students, entries")
            return
        with self.raw() as connection:
            connection.execute("VACUUM")
        self.empty_log()

    def empty_log(self) -> None:
        """Bring all into the file and empty the log beside it, where deleted rows may stand.

        Raises:
            PhonodrillError: if others are using it.
        """
        if not self.is_file:
            return
        with self.raw() as connection:
            (is_busy, *_) = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
        if is_busy:
            raise PhonodrillError(
                "another program uses the log beside the file, which may hold what was deleted",
                "close other windows of phonodrill, then phonodrill records verify",
            )

    @contextlib.contextmanager
    def raw(self) -> Iterator[sqlite3.Connection]:
        """Give the connection of SQLite itself, for what has no name in SQLAlchemy.

        Raises:
            PhonodrillError: if the file cannot be read or written.
        """
        with self._clear_errors():
            pooled = self.engine.raw_connection()
            try:
                connection: Any = pooled.driver_connection
                yield connection
            finally:
                pooled.close()

    def _look(self) -> None:
        """See that it answers, and check a small file as a whole."""
        with self.reading() as connection:
            connection.exec_driver_sql("SELECT 1")
            path = self.place.path
            if path and path.stat().st_size <= _SMALL:
                _check_whole(connection, path)

    @contextlib.contextmanager
    def _clear_errors(self) -> Iterator[None]:
        # "from None": the error of the driver quotes what it was given.
        try:
            yield
        except (SQLAlchemyError, sqlite3.Error) as error:
            raise explain(error, self.place) from None
        except UnicodeDecodeError:
            # What is told of a spoiled page may quote it.
            raise damaged(self.place.path or Path(self.place.shown)) from None
        except (OverflowError, UnicodeError):
            raise PhonodrillError(
                "that text or number cannot be kept", "check what was typed"
            ) from None


def _check_whole(connection: Connection, path: Path) -> None:
    """Check every page of a file.

    Raises:
        PhonodrillError: if it is damaged.
    """
    if connection.exec_driver_sql("PRAGMA quick_check(1)").scalar_one() != "ok":
        raise damaged(path)


def damaged(path: Path) -> PhonodrillError:
    """Say that a file is damaged, and what to do."""
    return PhonodrillError(f"{path} is damaged", RESTORE)


def explain(error: Exception, place: Place) -> PhonodrillError:
    """Turn an error of a database into one line without anything that was kept.

    Args:
        error: of SQLAlchemy or of SQLite.
        place: where the records are.
    """
    raw = error.orig if isinstance(error, DBAPIError) and error.orig else error
    text = str(raw).lower()
    shown = place.shown
    for sign, message, hint in (
        ("locked", f"another program is writing to {shown}", "try again in a moment"),
        ("readonly", f"{shown} cannot be written to", "check its permissions"),
        ("permission denied", f"{shown} cannot be written to", "check its permissions"),
        ("unable to open", f"cannot open {shown}", "check its folder and permissions"),
        ("disk is full", f"no room is left for {shown}", "free some room on the disk"),
        ("malformed", f"{shown} is damaged", RESTORE),
        ("not a database", f"{shown} is damaged", RESTORE),
        ("no space left", f"no room is left for {shown}", "free some room on the disk"),
    ):
        if sign in text:
            return PhonodrillError(message, hint)
    if isinstance(error, IntegrityError):
        return PhonodrillError("another program changed this at the same time", "try again")
    if place.path:
        return PhonodrillError(f"{shown} cannot be used", "phonodrill records verify")
    return PhonodrillError(f"cannot work with {shown}", "check its address and that it is running")


def _prepare(path: Path, *, must_exist: bool) -> None:
    """Make the file if it is not there; refuse one that is no database or is cut short."""
    if path.is_dir():
        raise PhonodrillError(
            f"{path} is a folder", f"a file: {VARIABLE}={path / 'records.sqlite'}"
        )
    if path.exists():
        make_private(path)
        _refuse_others(path)
        return
    if must_exist:
        raise PhonodrillError(f"{path} is not there", "check the name")
    if path.parent == data_folder():
        make_folder(path.parent)
    make_private(path)


def _refuse_others(path: Path) -> None:
    try:
        with path.open("rb") as file:
            head = file.read(100)
            size = file.seek(0, 2)
    except OSError as error:
        raise PhonodrillError(
            f"cannot read {path}: {error.strerror}", "check its permissions"
        ) from error
    if not size:
        return
    if not head.startswith(_MAGIC):
        raise PhonodrillError(
            f"{path} is no file of records", f"another path in {VARIABLE}, or {RESTORE}"
        )
    page = int.from_bytes(head[16:18]) or 1
    page = 65536 if page == 1 else page
    log = path.with_name(f"{path.name}-wal")
    # With a log beside it, a shorter file may be whole together with that log.
    if size < int.from_bytes(head[28:32]) * page and not (log.exists() and log.stat().st_size):
        raise damaged(path)


def _url(place: Place) -> URL:
    if place.path:
        return URL.create("sqlite", database=str(place.path))
    try:
        return make_url(place.url)
    except ArgumentError:
        raise PhonodrillError(
            f"{VARIABLE} is no address of a database", "postgresql+psycopg://USER@HOST/NAME"
        ) from None


def _args(place: Place) -> dict[str, Any]:
    return {"timeout": WAIT} if place.path else {"connect_timeout": WAIT}


def _set_up(connection: sqlite3.Connection, _: object) -> None:
    """Set a new connection up; the transactions are begun here, not by the driver."""
    connection.isolation_level = None
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA secure_delete = ON")


def _begin(connection: Connection) -> None:
    # A transaction that reads first and writes then would fail when another wrote between.
    kind = "IMMEDIATE" if connection.get_execution_options().get(_WRITES) else "DEFERRED"
    connection.exec_driver_sql(f"BEGIN {kind}")
