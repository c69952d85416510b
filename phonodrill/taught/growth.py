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

from phonodrill.graphemes.chunk import ODD_CODE, correspondence_codes
from phonodrill.lexicon.entry import Spelled
from phonodrill.taught.known import BaseOf
from phonodrill.taught.steps import WHOLE, Step, Taught

NEVER = 1_000_000
"""The step of what is not taught at all."""

Way = frozenset[str]
"""Things that together are enough to read a word: codes, ``-es``, ``word:said``."""


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


def ways_to_read(word: Spelled, chunks_of: BaseOf) -> tuple[Way, ...]:
    """Return every set of things that is enough to read a word.

    Args:
        word: with its stored chunks.
        chunks_of: gives the stored chunks of its base.
    """
    whole = frozenset({WHOLE + word.word})
    stored = [word.chunks]
    if not word.endings:
        return (whole, *_decoded(stored))
    by_base: list[Way] = []
    if word.base != word.word:
        stored.append(chunks_of(word.base))
        by_base = [frozenset({WHOLE + word.base})]
    return (
        whole,
        *(way | {f"-{ending}"} for ending in word.endings for way in (*_decoded(stored), *by_base)),
    )


def word_target(word: Spelled, chunks_of: BaseOf) -> Target:
    """Return a word as a target."""
    return Target(word.word, (ways_to_read(word, chunks_of),))


def things_of(step: Step) -> frozenset[str]:
    """Return all that a step teaches: codes, endings as ``-es``, words as ``word:said``."""
    endings = (f"-{ending}" for ending in step.endings)
    return step.opens.union(endings, (WHOLE + word for word in step.words))


def first_taught(taught: Taught) -> dict[str, int]:
    """Return the step, from 1, at which each thing is taught; 0 if it needs no teaching."""
    first = dict.fromkeys(taught.open, 0)
    for number, step in enumerate(taught.steps, 1):
        for thing in things_of(step):
            first.setdefault(thing, number)
    return first


def growth(targets: Iterable[Target], taught: Taught) -> list[int]:
    """Return how many targets can be read after 0, 1, 2 ... steps."""
    first = first_taught(taught)
    opened = Counter(target.opens_at(first) for target in targets)
    return list(accumulate(opened[number] for number in range(len(taught.steps) + 1)))


def _decoded(stored: Iterable[str]) -> list[Way]:
    return [correspondence_codes([text]) for text in stored if text and ODD_CODE not in text]


def _last(way: Way, first: Mapping[str, int]) -> int:
    return max((first.get(thing, NEVER) for thing in way), default=0)
