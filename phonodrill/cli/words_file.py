"""Read a teacher's own word list from a file."""

from __future__ import annotations

from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.services.word_list import Line
from phonodrill.text_file import read_text

HIGHEST_LINES = 20_000
LONGEST_WORD = 60
"""Letters of a line that are looked at: no word has so many, and a note quotes fewer."""


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
        word = line.partition("#")[0].strip()[:LONGEST_WORD].lower().replace("’", "'")
        if word:
            lines.append(Line(number, word))
    if not lines:
        raise PhonodrillError(f"{path} has no word in it", "one word a line")
    return lines
