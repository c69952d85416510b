"""How many words, or sentences, a class can read after each step of a taught file.

What a word asks for is worked out once, as the sets of things any one of which
is enough; the step at which it opens is then a matter of looking up when each
thing is taught. ``Known.reads`` says the same of one word at one point.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from itertools import accumulate
from typing import NamedTuple

from phonodrill.lexicon.entry import Spelled
from phonodrill.taught.known import BaseOf, Way, ways_to_read
from phonodrill.taught.steps import Taught

NEVER = 1_000_000
"""The step of what is not taught at all."""


class Target(NamedTuple):
    """A word or a sentence to be read.

    Attributes:
        text: as it is written.
        words: for each of its words, the ways to read it; any one is enough.
    """

    text: str
    words: tuple[tuple[Way, ...], ...]

    def opens_at(self, first: Mapping[str, int]) -> int:
        """Return the step from which it can be read, 0 if from the start, or NEVER.

        Args:
            first: the step at which each thing is taught.
        """
        return max(min((_last(way, first) for way in ways), default=NEVER) for ways in self.words)


def word_target(word: Spelled, chunks_of: BaseOf, ending_codes: frozenset[str]) -> Target:
    """Return a word as a target."""
    return Target(word.word, (ways_to_read(word, chunks_of, ending_codes),))


def first_taught(taught: Taught) -> dict[str, int]:
    """Return the step, from 1, at which each thing is taught; 0 if it needs no teaching."""
    first = dict.fromkeys(taught.open, 0)
    for number, step in enumerate(taught.steps, 1):
        for thing in step.things:
            first.setdefault(thing, number)
    return first


def growth(targets: Iterable[Target], taught: Taught) -> list[int]:
    """Return how many targets can be read after 0, 1, 2 ... steps."""
    first = first_taught(taught)
    opened = Counter(target.opens_at(first) for target in targets)
    return list(accumulate(opened[number] for number in range(len(taught.steps) + 1)))


def _last(way: Way, first: Mapping[str, int]) -> int:
    return max((first.get(thing, NEVER) for thing in way), default=0)
