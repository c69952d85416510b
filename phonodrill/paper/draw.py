"""Draw words for cards and lists from the vocabulary, evenly over their endings."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from itertools import islice, zip_longest

from phonodrill.endings.classify import Ending
from phonodrill.endings.sort import By, sort_vocabulary
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.paper.mat import HIGHEST_COLUMNS
from phonodrill.selection import Query, select


def draw_words(
    lexicon: Lexicon,
    query: Query,
    by: By,
    count: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> list[Entry]:
    """Draw words with the endings asked for, as many of each kind as there can be.

    Words whose ending may say several things, and exceptions, are left out. But
    for ``By.BASE``, which draws every form of a few bases, no base comes twice.

    Args:
        lexicon: the open lexicon.
        query: band, endings and what is known.
        by: what makes a kind: the sound of the ending, its spelling, its rule.
        count: how many words at most.
        rng: the only source of chance.
        overlay: a teacher's own words.

    Returns:
        The words, fewer than asked for if there are no more.
    """
    per_group = HIGHEST_COLUMNS if by is By.BASE else count
    groups = sort_vocabulary(lexicon, query, by, per_group, rng, overlay).groups
    pool = select(lexicon, query, overlay=overlay)
    entries = (
        entry
        for ending in _in_turn([_mixed(group.words, rng) for group in groups])
        if (entry := pool.entry_of(ending.word)) and pool.can_read(entry)
    )
    drawn = list(islice(entries, count))
    rng.shuffle(drawn)
    return drawn


def _mixed(endings: Iterable[Ending], rng: random.Random) -> list[Ending]:
    """Mix the words of a group, one of each rule before the rest."""
    mixed = list(endings)
    rng.shuffle(mixed)
    first = {ending.rule: ending for ending in reversed(mixed)}
    return sorted(mixed, key=lambda ending: first[ending.rule] is not ending)


def _in_turn(groups: Iterable[Iterable[Ending]]) -> Iterator[Ending]:
    for row in zip_longest(*groups):
        yield from (ending for ending in row if ending is not None)
