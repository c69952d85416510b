"""Segmenting: hear a word, say its parts one by one."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.apart import taken_apart
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item

NAME = "segment"


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every word of the pool that everybody takes apart alike.

    Args:
        pool: the words that may be used.
        query: band, sound (one that is among the parts), accents, made-up words.
        at: what the parts are: ``each`` sound, ``onset`` and rime, ``syllable``.
    """
    if query.made_up:
        from phonodrill.tasks.made_up import segmentations

        yield from segmentations(pool, query, at)
        return
    for words, spoken, parts in taken_apart(pool, query, at):
        entry, said = spoken
        named = at is not Position.SYLLABLE or not all(part.word for part in parts)
        if named and not words.is_steady(spoken, lambda form: form):
            continue
        yield Item(
            task=NAME,
            at=at,
            stimulus=entry.word,
            stimulus_said=said,
            sound=parts[0],
            answer="",
            answer_said=said,
            base=entry.base,
            band=entry.band,
            difficulty=estimate(NAME, at, said.sounds, entry.band, spelling=entry.word),
            parts=parts,
        )
