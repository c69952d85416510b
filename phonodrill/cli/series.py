"""Where the sets of a group are kept, so that words do not come again too soon."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from platformdirs import user_data_path

from phonodrill.errors import PhonodrillError
from phonodrill.tasks.history import History, parse_history
from phonodrill.whole_file import write_whole


def series_path(name: str, after: Path | None) -> Path | None:
    """Return the file of a series, by name in the user's data folder or as given.

    Raises:
        PhonodrillError: if both are given, or the name is no plain name.
    """
    if name and after:
        raise PhonodrillError("--series and --after both name a file", "one of the two")
    if not name:
        return after
    if not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9_-]{0,60}", name):
        raise PhonodrillError(
            f"{name!r} is no name for a series", "letters, digits and hyphens: monday-group"
        )
    return user_data_path("phonodrill", appauthor=False) / "series" / f"{name.lower()}.txt"


def read_series(path: Path | None, rest: int) -> History:
    """Read a series; a file that is not there yet has no sets.

    Raises:
        PhonodrillError: if it cannot be read or is not UTF-8.
    """
    if path is None or not path.exists():
        return History(rest=rest)
    try:
        return parse_history(path.read_text("utf-8-sig"), rest=rest)
    except UnicodeDecodeError as error:
        raise PhonodrillError(f"{path} is not UTF-8 text", "save it as UTF-8 text") from error
    except OSError as error:
        raise PhonodrillError(f"cannot read {path}: {error.strerror}", "check the name") from error


def keep_set(path: Path, history: History, about: str, words: Iterable[str]) -> None:
    """Add a set to a series, whole or not at all.

    Args:
        path: the file; its folder is made if it is one of ours.
        history: what was read.
        about: day and task.
        words: the words of the set.

    Raises:
        PhonodrillError: if it cannot be written.
    """
    try:
        if path.parent.name == "series":
            path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise PhonodrillError(
            f"cannot make the folder {path.parent}: {error.strerror}", "check its permissions"
        ) from error
    write_whole(path, history.with_set(about, words).encode())
