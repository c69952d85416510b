"""Where the sets of a group are kept, so that words do not come again too soon."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.home import data_folder
from phonodrill.one_at_a_time import one_at_a_time
from phonodrill.tasks.history import History, parse_history
from phonodrill.text_file import read_text
from phonodrill.whole_file import with_folder, write_whole


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
    return data_folder() / "series" / f"{name.lower()}.txt"


def read_series(path: Path | None, rest: int) -> History:
    """Read a series; a file that is not there yet has no sets.

    Raises:
        PhonodrillError: if it cannot be read or is not UTF-8.
    """
    if path is None or not path.exists():
        return History(rest=rest)
    return parse_history(read_text(path), rest=rest)


def keep_sets(path: Path, sets: Iterable[tuple[str, Iterable[str]]]) -> None:
    """Add sets to a series, all of them or none.

    The file is read again, as another run may have added some.

    Args:
        path: the file; its folder is made if it is one of ours.
        sets: day and task of each, and its words.

    Raises:
        PhonodrillError: if it cannot be written.
    """
    if path.parent.name == "series":
        with_folder(path)
    with one_at_a_time(path):
        history = read_series(path, 0)
        for about, words in sets:
            history = parse_history(history.with_set(about, words))
        write_whole(path, "".join(f"{line}\n" for line in history.lines).encode())
