"""Categorization: hear three words, find the one whose sound is not that of the others."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.compare import comparisons
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item

NAME = "categorize"
SHARING = 2


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield sets of three words, one of which is the odd one out at the place asked about.

    Args:
        pool: the words that may be used.
        query: band, sound (the one that two words share), accents.
        at: where to listen; ``rime`` asks for the word that does not rhyme.
    """
    for found in comparisons(pool, query, at, alike=SHARING):
        first = found.alike[0]
        odd = found.odd.spoken
        words = (*found.alike, found.odd)
        band = max(named.spoken.entry.band for named in words)
        longest = max((named.spoken.said.sounds for named in words), key=len)
        choices = [named.choice for named in words]
        # The odd one stands in no place oftener than in another; its letters decide.
        turn = sum(map(ord, odd.entry.word + first.spoken.entry.word)) % len(choices)
        choices.insert(turn, choices.pop())
        yield Item(
            task=NAME,
            at=at,
            stimulus="",
            stimulus_said=choices[0].said,
            sound=first.part,
            answer=odd.entry.word,
            answer_said=odd.said,
            base=first.spoken.entry.base,
            band=band,
            difficulty=estimate(NAME, at, longest, band, nearness=found.nearness),
            new=found.odd.part,
            choices=tuple(choices),
        )
