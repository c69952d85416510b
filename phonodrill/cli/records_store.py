"""Open the records for a command; ask before anything is deleted."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import typer

from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra

if TYPE_CHECKING:
    from phonodrill.records.store import Store


def open_store() -> Store:
    """Open the records where ``PHONODRILL_DATABASE`` or the default says they are.

    Raises:
        PhonodrillError: if a package is missing or they cannot be opened.
    """
    need_records()
    from phonodrill.records.store import Store

    return Store()


def need_records() -> None:
    """See that the packages for records are there.

    Raises:
        PhonodrillError: if one is missing; says what to install.
    """
    for package in ("sqlalchemy", "alembic"):
        import_extra(package, "keeping records", extra="records")


def be_sure(what: str, *, yes: bool) -> None:
    """Ask before something is deleted that cannot be brought back.

    Raises:
        PhonodrillError: if there is nobody to ask and ``--yes`` was not said.
        typer.Abort: if the answer is no.
    """
    if yes:
        return
    if not sys.stdin.isatty():
        raise PhonodrillError(f"{what} cannot be brought back", "--yes if you are sure")
    typer.confirm(f"{what} cannot be brought back. Go on?", abort=True, err=True)
