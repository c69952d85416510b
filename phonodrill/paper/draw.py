"""Draw words for cards and lists from the vocabulary, evenly over their endings."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import zip_longest

from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query, select


def draw_words(
    lexicon: Lexicon,
    query: Query,
    count: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> list[Entry]:
    """Draw words with the endings asked for, each ending in its turn, no base twice.

    Args:
        lexicon: the open lexicon.
        query: band, endings and what is known.
        count: how many words at most.
        rng: the only source of chance.
        overlay: a teacher's own words.

    Returns:
        The words, fewer than asked for if there are no more.
    """
    turns = (
        select(lexicon, query._replace(endings=frozenset({ending})), rng, overlay).stimuli()
        for ending in sorted(query.endings)
    )
    found: dict[str, Entry] = {}
    for entry in _in_turn(*turns):
        if len(found) == count:
            break
        found.setdefault(entry.base, entry)
    return list(found.values())


def _in_turn(*sources: Iterator[Entry]) -> Iterator[Entry]:
    for row in zip_longest(*sources):
        yield from (entry for entry in row if entry is not None)
