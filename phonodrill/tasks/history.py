"""What a group has done: which words rest for some sets, and which come back.

A series is a plain text file, one line a set, the newest last; what stands
before the colon is for the reader:

    2026-11-25 delete first: stop top plate late

``#`` begins a comment. A line without a colon is a set of words, too, so any
list of words can be avoided.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

FIRST_LINE = "# phonodrill series: one line a set, the newest last"
RESTING_SETS = 5
"""For how many sets a word rests unless asked otherwise."""


EMPTY: frozenset[str] = frozenset()


class History(NamedTuple):
    """The sets of a series.

    Attributes:
        lines: the file as it stands.
        sets: the words of each set, the oldest first.
        rest: for how many sets a word rests.
    """

    lines: tuple[str, ...] = ()
    sets: tuple[frozenset[str], ...] = ()
    rest: int = RESTING_SETS

    @property
    def resting(self) -> frozenset[str]:
        """The words of the last sets, not to be used again yet."""
        return EMPTY.union(*self.sets[max(0, len(self.sets) - self.rest) :])

    def back(self, words: Iterable[str]) -> tuple[str, ...]:
        """Return which of these words were used in an earlier set: they come for review."""
        earlier = EMPTY.union(*self.sets)
        return tuple(sorted(earlier.intersection(words)))

    def with_set(self, about: str, words: Iterable[str]) -> str:
        """Write the file with one set more.

        Args:
            about: day and task, without a colon.
            words: the words of the set.
        """
        lines = self.lines or (FIRST_LINE,)
        return "\n".join([*lines, f"{about}: {' '.join(sorted(words))}"]) + "\n"


NO_HISTORY = History()


def parse_history(text: str, *, rest: int = RESTING_SETS) -> History:
    r"""Read the text of a series.

    Args:
        text: one line a set.
        rest: for how many sets a word rests.

    >>> history = parse_history("# ours\n2026-11-25 delete first: stop top\ngull\n", rest=1)
    >>> sorted(history.resting), history.back(["top", "crab"])
    (['gull'], ('top',))
    """
    lines = tuple(text.splitlines())
    bare = (line.partition("#")[0] for line in lines)
    words = [line.rpartition(":")[2].lower().replace(",", " ").split() for line in bare]
    return History(lines, tuple(frozenset(found) for found in words if found), rest)
