"""Read a teacher's own word list, and say which lines cannot be used."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from phonodrill.cli.text_file import read_text
from phonodrill.errors import PhonodrillError

HIGHEST_LINES = 20_000


class Line(NamedTuple):
    """One word of the list and the line it stands on."""

    number: int
    word: str


def read_words(path: Path) -> list[Line]:
    """Read one word a line; empty lines and ``#`` comments are passed over.

    Args:
        path: a UTF-8 text file of at most 20,000 lines.

    Raises:
        PhonodrillError: if it cannot be read, is not UTF-8, too long or has no word.
    """
    lines = []
    for number, line in enumerate(read_text(path).splitlines(), 1):
        if number > HIGHEST_LINES:
            raise PhonodrillError(f"{path} has more than {HIGHEST_LINES:,} lines", "a shorter list")
        word = line.partition("#")[0].strip().lower().replace("’", "'")
        if word:
            lines.append(Line(number, word))
    if not lines:
        raise PhonodrillError(f"{path} has no word in it", "one word a line")
    return lines


def problems_of(lines: list[Line], why: Callable[[str], str | None]) -> tuple[list[str], list[str]]:
    """Part the words that can be used from those that cannot.

    Args:
        lines: the list.
        why: says why a word cannot be used, or None.

    Returns:
        The usable words, and one note for each other line.
    """
    usable, problems = [], []
    for line in lines:
        reason = why(line.word)
        if reason:
            problems.append(f"line {line.number}: {reason}")
        else:
            usable.append(line.word)
    return usable, problems
