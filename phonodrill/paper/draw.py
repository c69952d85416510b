"""Draw words for cards and lists from the vocabulary, evenly over their endings."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import zip_longest
from typing import TypeVar

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.vocabulary import is_watch_out
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query, select

Thing = TypeVar("Thing")


def draw_words(
    lexicon: Lexicon,
    query: Query,
    count: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> list[Entry]:
    """Draw words with the endings asked for, each ending in its turn, no base twice.

    Words whose ending may say several things, and exceptions, are left out.

    Args:
        lexicon: the open lexicon.
        query: band, endings and what is known.
        count: how many words at most.
        rng: the only source of chance.
        overlay: a teacher's own words.

    Returns:
        The words, fewer than asked for if there are no more.
    """
    exceptions = lexicon.ending_exceptions()

    def with_ending(ending: str) -> Iterator[tuple[Ending, Entry]]:
        pool = select(lexicon, query._replace(endings=frozenset({ending})), rng, overlay)
        for entry in pool.stimuli():
            ways = classify(entry.word, lexicon, exceptions)
            is_clear = len({way.sound for way in ways}) == 1 and not is_watch_out(ways[0])
            if is_clear and ways[0].ending == ending:
                yield ways[0], entry

    found: dict[str, Entry] = {}
    for ending, entry in _in_turn(*map(with_ending, sorted(query.endings))):
        if len(found) == count:
            break
        found.setdefault(ending.base, entry)
    return list(found.values())


def _in_turn(*sources: Iterator[Thing]) -> Iterator[Thing]:
    for row in zip_longest(*sources):
        yield from (thing for thing in row if thing is not None)
