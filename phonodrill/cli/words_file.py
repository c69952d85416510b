"""Read a teacher's own word list, and say which lines cannot be used."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.cli.text_file import read_text
from phonodrill.errors import PhonodrillError
from phonodrill.selection import may_be_said, may_be_shown, nearest_words

if TYPE_CHECKING:
    from phonodrill.gate import Gate
    from phonodrill.lexicon.entry import Entry
    from phonodrill.lexicon.store import Lexicon

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


def why_unusable(
    lexicon: Lexicon,
    gate: Gate,
    own: Mapping[str, Entry] | None = None,
    may_be_used: Callable[[Entry, Gate], bool] = may_be_said,
) -> Callable[[str], str | None]:
    """Return a check that says why a word cannot be said, shown or printed, or None.

    Args:
        lexicon: the open lexicon.
        gate: the never-say check.
        own: entries that go before the lexicon's: words a teacher added.
        may_be_used: whether an entry may be used in the way that is asked for.
    """
    added = own or {}

    def why_not(word: str) -> str | None:
        entry = added.get(word) or lexicon.get(word)
        if entry is None:
            near = ", ".join(nearest_words(lexicon, word))
            return f"{word!r} is not in the lexicon" + (f"; did you mean {near}?" if near else "")
        if may_be_used(entry, gate):
            return None
        if may_be_shown(entry, gate) and not entry.band:
            can_be_added = own is not None and word.isalpha()
            hint = f"; to use it: phonodrill words add {word}" if can_be_added else ""
            return f"{word!r} is rare, or a name{hint}"
        return "not a word for class"

    return why_not


def problems_of(
    lines: list[Line], why: Callable[[str], str | None], what: str = "line"
) -> tuple[list[str], list[str]]:
    """Part the words that can be used from those that cannot.

    Args:
        lines: the list.
        why: says why a word cannot be used, or None.
        what: what the numbers count.

    Returns:
        The usable words, and one note for each other line.
    """
    usable, problems = [], []
    for line in lines:
        reason = why(line.word)
        if reason:
            problems.append(f"{what} {line.number}: {reason}")
        else:
            usable.append(line.word)
    return usable, problems
