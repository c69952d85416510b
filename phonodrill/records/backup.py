"""Backups of a file of records: made while it is in use, checked, restored, erased from."""

from __future__ import annotations

import contextlib
import os
import sqlite3
import tempfile
from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.records.database import Database, damaged
from phonodrill.records.migrate import refuse_unknown
from phonodrill.records.place import FILE_MODE, Place, make_private
from phonodrill.records.store import Store

_SIDE_FILES = ("-wal", "-shm")
_ONE_FILE = "PRAGMA journal_mode = DELETE"
"""Without a log beside it: what people copy and carry away is one file."""


def back_up(store: Store, target: Path) -> None:
    """Write a backup as one file, whole or not at all, and remember where it is.

    Raises:
        PhonodrillError: if the records are on a server, or the file cannot be written or
            is something else than a backup.
    """
    source = _file_of(store.place)
    if target.exists() and target.samefile(source):
        raise PhonodrillError("that is the file of records itself", "another name")
    if target.exists():
        check_file(target)
    with store.database.raw() as connection, _whole_file(target) as partial:
        _copy(connection, partial)
        check_file(partial)
    _remember(source, target)


def restore(place: Place, backup: Path) -> Path | None:
    """Put the records of a backup in the place of those kept now.

    What is replaced is kept beside it, and is erased from like other backups.

    Returns:
        The file with what was replaced; None if there was nothing.

    Raises:
        PhonodrillError: if the backup is damaged, newer or no backup; nothing is changed.
    """
    target = _file_of(place)
    check_file(backup)
    if target.exists() and backup.samefile(target):
        raise PhonodrillError("that is the file of records itself", "a backup of it")
    replaced = None
    if target.exists() and target.stat().st_size:
        now = datetime.now().astimezone().strftime("%Y%m%d-%H%M%S-%f")
        replaced = target.with_name(f"{target.stem}-replaced-{now}{target.suffix}")
        _set_aside(place, target, replaced)
        _remember(target, replaced)
    # Written into the open file, not renamed over it: whoever has it open goes on with this.
    database = Database(place)
    try:
        with contextlib.closing(_open(backup)) as source, database.raw() as connection:
            source.backup(connection)
    finally:
        database.close()
    with Store(place):
        pass
    return replaced


def check_file(path: Path) -> None:
    """Check every page, every tie between tables and the version of a file, changing nothing.

    Raises:
        PhonodrillError: if it is not there, damaged, newer, or no file of records.
    """
    if not path.is_file():
        raise PhonodrillError(f"{path} is not there", "check the name")
    try:
        with contextlib.closing(_open(path)) as connection:
            _check(connection, path)
    except sqlite3.OperationalError:
        raise PhonodrillError(f"{path} is no file of records", "a backup of phonodrill") from None
    except UnicodeDecodeError:
        raise damaged(path) from None
    except sqlite3.DatabaseError as error:
        if "not a database" in str(error):
            raise PhonodrillError(
                f"{path} is no file of records", "a backup of phonodrill"
            ) from None
        raise damaged(path) from None


def backups_of(place: Place) -> Sequence[Path]:
    """Return where backups of these records were written, the oldest first."""
    if place.path is None:
        return ()
    try:
        lines = _list_of(place.path).read_text("utf-8").splitlines()
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise PhonodrillError(
            f"cannot read the list of backups: {error.strerror}", "check its permissions"
        ) from error
    return tuple(Path(line) for line in dict.fromkeys(lines) if line)


def erase_from_backups(place: Place, group: str, student: str) -> tuple[int, list[str]]:
    """Erase a student from the backups of these records, wherever they were written.

    Returns:
        From how many the student was erased, and a line each on those that could not be
        looked into.
    """
    erased, problems = 0, []
    for path in backups_of(place):
        if not path.exists():
            problems.append(f"{path} is not there any more; if it was moved, erase there, too")
            continue
        try:
            with Store(Place(path), must_exist=True) as backup:
                if group in backup.groups_with(student):
                    backup.erase_student(group, student)
                    erased += 1
                with backup.database.raw() as connection:
                    connection.execute(_ONE_FILE)
        except PhonodrillError as error:
            problems.append(f"not looked into, delete it yourself: {path} ({error.message})")
    return erased, problems


def _file_of(place: Place) -> Path:
    if place.path is None:
        raise PhonodrillError(
            "the records are in PostgreSQL, whose own tools make its backups",
            "pg_dump and pg_restore",
        )
    return place.path


def _set_aside(place: Place, target: Path, replaced: Path) -> None:
    """Keep what is there under another name, sound or not."""
    try:
        database = Database(place)
    except PhonodrillError:
        for ending in ("", *_SIDE_FILES):
            with contextlib.suppress(FileNotFoundError):
                beside = target.with_name(target.name + ending)
                beside.rename(replaced.with_name(replaced.name + ending))
        return
    try:
        with database.raw() as connection, _whole_file(replaced) as partial:
            _copy(connection, partial)
    finally:
        database.close()


def _copy(connection: sqlite3.Connection, path: Path) -> None:
    with contextlib.closing(sqlite3.connect(path)) as copy:
        connection.backup(copy)
        copy.execute(_ONE_FILE)


def _open(path: Path) -> sqlite3.Connection:
    return sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)


def _check(connection: sqlite3.Connection, path: Path) -> None:
    (found,) = connection.execute("PRAGMA integrity_check(1)").fetchone()
    if found != "ok" or connection.execute("PRAGMA foreign_key_check").fetchone():
        raise damaged(path)
    refuse_unknown(connection, path)


@contextlib.contextmanager
def _whole_file(path: Path) -> Iterator[Path]:
    """Give a private file to write, which takes its name when all of it is written."""
    partial: Path | None = None
    try:
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        os.close(handle)
        partial = Path(name)
        partial.chmod(FILE_MODE)
        yield partial
        with partial.open("rb") as file:
            os.fsync(file.fileno())
        partial.replace(path)
    except OSError as error:
        raise PhonodrillError(
            f"cannot write {path}: {error.strerror}", "another folder or name"
        ) from error
    finally:
        if partial:
            partial.unlink(missing_ok=True)


def _remember(source: Path, backup: Path) -> None:
    path = _list_of(source)
    make_private(path)
    try:
        with path.open("a", encoding="utf-8") as file:
            file.write(f"{backup.absolute()}\n")
    except OSError as error:
        raise PhonodrillError(
            f"{backup} is written, but not noted: {error.strerror}",
            f"make room for {path}, then back up once more",
        ) from error


def _list_of(source: Path) -> Path:
    return source.with_name(f"{source.name}.backups")
