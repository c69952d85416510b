"""Blending: hear the parts of a word one by one, say the word."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query
from phonodrill.sounds.low_back import is_misfiled
from phonodrill.sounds.places import Position
from phonodrill.tasks.apart import taken_apart
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item

NAME = "blend"


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every word of the pool that its parts lead to for every listener asked for.

    Args:
        pool: the words that may be used.
        query: band, sound (one that is among the parts), accents, made-up words.
        at: what the parts are: ``each`` sound, ``onset`` and rime, ``syllable``.
    """
    if query.made_up:
        from phonodrill.tasks.made_up import blends

        yield from blends(pool, query, at)
        return
    for words, spoken, parts in taken_apart(pool, query, at):
        if is_misfiled(spoken.entry.word, spoken.said.normal):
            continue
        answers = words.answers(spoken.said.normal)
        if spoken.entry.word not in (answer.entry.word for answer in answers):
            continue
        entry, said = spoken
        others = (answer.entry.word for answer in answers if answer.entry != entry)
        yield Item(
            task=NAME,
            at=at,
            stimulus="",
            stimulus_said=said,
            sound=parts[0],
            answer=entry.word,
            answer_said=said,
            also=tuple(others),
            base=entry.base,
            band=entry.band,
            difficulty=estimate(NAME, at, said.sounds, entry.band, spelling=entry.word),
            parts=parts,
        )
