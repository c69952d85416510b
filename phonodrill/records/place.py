"""Where the records are kept: one SQLite file of the user's, or a district's PostgreSQL."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path
from typing import NamedTuple

from phonodrill import home
from phonodrill.errors import PhonodrillError

VARIABLE = "PHONODRILL_DATABASE"
"""Environment variable with a path, or the URL of a PostgreSQL database."""
FILE_MODE = 0o600
FOLDER_MODE = 0o700
_OTHERS = 0o077
_DRIVER = "postgresql+psycopg"
_SCHEMES = (_DRIVER, "postgresql", "postgres")


class Place(NamedTuple):
    """Where the records are.

    Attributes:
        path: the SQLite file; None for a server.
        url: of the server, with the name of its driver; may hold a password, so it is
            never shown. Empty for a file.
    """

    path: Path | None
    url: str = ""

    @property
    def shown(self) -> str:
        """Name the place without anything that is secret."""
        return str(self.path) if self.path else f"the database of {VARIABLE}"


def data_folder() -> Path:
    """Return the user's own folder for records, which is made when something is kept.

    Raises:
        PhonodrillError: if no home folder is known.
    """
    return home.data_folder() / "records"


def find_place(database: str = "") -> Place:
    """Say where the records are.

    Args:
        database: a path or a URL; by default what ``PHONODRILL_DATABASE`` says, else a
            file in the user's data folder.

    Raises:
        PhonodrillError: if a URL is neither of SQLite nor of PostgreSQL.

    >>> find_place("harbor.sqlite").path.name
    'harbor.sqlite'
    >>> find_place("postgresql://office@db/harbor").url
    'postgresql+psycopg://office@db/harbor'
    """
    text = database or os.environ.get(VARIABLE, "")
    if not text:
        return Place(data_folder() / "records.sqlite")
    scheme, parted, rest = text.partition("://")
    if not parted:
        return Place(_without_tilde(text))
    if scheme == "sqlite" and rest.startswith("/"):
        return Place(Path(rest[1:]))
    if scheme in _SCHEMES:
        return Place(None, f"{_DRIVER}://{rest}")
    raise PhonodrillError(
        f"{VARIABLE} names a kind of database that is not known: {scheme}",
        f"a path, or {_DRIVER}://USER@HOST/NAME",
    )


def _without_tilde(text: str) -> Path:
    try:
        return Path(text).expanduser()
    except RuntimeError:
        raise PhonodrillError(f"no home folder is known for {text}", "a whole path") from None


def make_folder(folder: Path) -> None:
    """Make a folder that only the user can look into; one that is there stays as it is.

    Raises:
        PhonodrillError: if it cannot be made.
    """
    if folder.is_dir():
        return
    try:
        folder.mkdir(FOLDER_MODE, parents=True, exist_ok=True)
        # The mask of the process may have taken bits away, never added some.
        folder.chmod(FOLDER_MODE)
    except OSError as error:
        raise PhonodrillError(
            f"cannot make the folder {folder}: {error.strerror}", "check its permissions"
        ) from error


def make_private(path: Path) -> None:
    """Make sure that a file is there and that only the user can read it.

    SQLite gives the files it writes beside it (``-wal``, ``-shm``) the same mode.

    Raises:
        PhonodrillError: if it cannot be made.
    """
    try:
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, FILE_MODE))
    except OSError as error:
        raise PhonodrillError(
            f"cannot open {path}: {error.strerror}", "check its folder and permissions"
        ) from error
    if path.stat().st_mode & _OTHERS:
        # The file of another user cannot be changed; that user chose its mode.
        with contextlib.suppress(OSError):
            path.chmod(FILE_MODE)
