"""Identity: hear words, say the sound they share; then tell a word that does not have it."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.change import part_said
from phonodrill.tasks.compare import comparisons
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item

NAME = "identify"
SHARING = 3


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield sets of three words that share one sound and nothing else, with a foil.

    Args:
        pool: the words that may be used.
        query: band, sound, accents and how vowel + R is counted.
        at: where the shared sound is.
    """
    for found in comparisons(pool, query, at, alike=SHARING):
        first = found.alike[0]
        words = (*found.alike, found.odd)
        band = max(named.spoken.entry.band for named in words)
        longest = max((named.spoken.said.sounds for named in found.alike), key=len)
        yield Item(
            task=NAME,
            at=at,
            stimulus="",
            stimulus_said=first.spoken.said,
            sound=first.part,
            answer="",
            answer_said=part_said(first.part),
            base=first.spoken.entry.base,
            band=band,
            difficulty=estimate(NAME, at, longest, band, nearness=found.nearness),
            choices=tuple(named.choice for named in found.alike),
            foil=found.odd.choice,
        )
