"""Lists of steps kept by name, each a taught file in one folder."""

from __future__ import annotations

import re
from contextvars import ContextVar
from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.services.taught_steps import LIST
from phonodrill.whole_file import with_folder, write_whole

LONGEST_NAME = 40
MOST_LISTS = 200
LARGEST_LIST = 20_000
FOLDER: ContextVar[Path | None] = ContextVar("folder of lists", default=None)
"""Where lists are kept, for whoever reads steps in this thread; None if they are not.

The desk sets it once in its thread, so that a list may be named wherever steps may
be given and no page has to hand the folder on.
"""
_NAME = re.compile(rf"[a-z0-9][a-z0-9-]{{0,{LONGEST_NAME - 1}}}", re.ASCII)


def list_names(folder: Path | None) -> list[str]:
    """Return the names of the lists that were kept, from a to z."""
    if folder is None:
        return []
    try:
        names = (path.stem for path in folder.iterdir() if path.suffix == ".txt")
        return sorted(name for name in names if _NAME.fullmatch(name))
    except OSError:
        return []


def read_list(name: str) -> str:
    """Return the text of a list.

    Raises:
        PhonodrillError: if there is no such list.
    """
    path = _path(name)
    try:
        with path.open("rb") as file:
            return file.read(LARGEST_LIST).decode("utf-8-sig", "replace")
    except OSError as error:
        known = [LIST + other for other in list_names(path.parent)]
        hint = f"one of {', '.join(known)}" if known else "keep one on the page Taught"
        raise PhonodrillError(f"there is no list {path.stem!r}", hint) from error


def keep_list(name: str, text: str) -> str:
    """Keep a list, in place of one of the same name.

    Args:
        name: letters, digits and dashes; capitals and spaces are written as these.
        text: a step a line.

    Returns:
        The name under which it was kept.

    Raises:
        PhonodrillError: if the name cannot be one, the folder is full or not to be written.
    """
    path = _path(name)
    if not path.exists() and len(list_names(path.parent)) >= MOST_LISTS:
        raise PhonodrillError(f"{MOST_LISTS} lists are kept already", "delete one first")
    try:
        write_whole(with_folder(path), text.encode())
    except PhonodrillError as error:
        # Its message names the file, which is nobody's business on a page.
        raise PhonodrillError("the list cannot be kept: its folder cannot be written to") from error
    return path.stem


def delete_list(name: str) -> None:
    """Delete a list; one that is not there is no trouble.

    Raises:
        PhonodrillError: if the name cannot be one, or it cannot be deleted.
    """
    try:
        _path(name).unlink(missing_ok=True)
    except OSError as error:
        raise PhonodrillError(f"the list cannot be deleted: {error.strerror}") from error


def _path(name: str) -> Path:
    """The file of a list: only what fits the pattern ever becomes a part of a path."""
    folder = FOLDER.get()
    if folder is None:
        raise PhonodrillError("lists are not kept here", "the steps themselves, a step a line")
    plain = "-".join(name.strip().removeprefix(LIST).lower().split())
    if not _NAME.fullmatch(plain):
        raise PhonodrillError(
            f"{name[:LONGEST_NAME]!r} cannot be the name of a list",
            f"letters, digits and dashes, {LONGEST_NAME} at most: harbor-class",
        )
    return folder / f"{plain}.txt"
