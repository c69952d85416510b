"""Choose the words of a lesson about an ending: balanced, short bases first.

Balanced over what the base ends in (each of s, ss, x, z, zz, sh, ch, tch that has
enough words) and over nouns and verbs. Words whose sounds can also be played with
go first: without the last sound the base is left (*ropes*, *rope*), without the
first another word with the same ending (*brushes*, *rushes*).
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import NamedTuple

from phonodrill.endings.classify import Ending
from phonodrill.endings.kinds import kind_of
from phonodrill.endings.suffix import PARTS_OF
from phonodrill.endings.together import has_ending
from phonodrill.endings.vocabulary import known_endings
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Pool, Query, select
from phonodrill.sounds.inventory import VOWELS

ENOUGH = 3
"""How many words a kind of base must have to be kept apart."""


class Chosen(NamedTuple):
    """One word of a lesson about an ending.

    Attributes:
        ending: the word, taken apart.
        kind: what its base ends in.
        reading: noun, verb or adjective: the usual reading of its base.
        without_last: the base, if taking off the last sound leaves it; or empty.
        without_first: another word with this ending, if taking off the first sound
            leaves it; or empty.
    """

    ending: Ending
    kind: str
    reading: str
    without_last: str
    without_first: str


def choose_words(
    lexicon: Lexicon,
    query: Query,
    *,
    count: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> tuple[Chosen, ...]:
    """Choose words that carry an ending, as different as they can be.

    No base comes twice, and every base is of the query's bands too.

    Args:
        lexicon: the open lexicon.
        query: band and spelled endings, at least one.
        count: how many are wanted.
        rng: the only source of chance.
        overlay: a teacher's own words.

    Returns:
        Up to ``count`` words; kinds of base take turns.

    >>> with Lexicon() as lexicon:
    ...     query = Query(band=2, endings=frozenset({"es"}))
    ...     chosen = choose_words(lexicon, query, count=4, rng=random.Random(1))
    >>> len({word.kind for word in chosen})
    4
    """
    pool = select(lexicon, query, overlay=overlay)
    piles: dict[str, list[Chosen]] = {}
    for ending in known_endings(lexicon, query, rng, overlay):
        base = lexicon.get(ending.base)
        if base and 0 < base.band <= query.band:
            chosen = _judge(ending, base, pool)
            piles.setdefault(chosen.kind, []).append(chosen)
    kinds = [pile for pile in piles.values() if len(pile) >= ENOUGH] or list(piles.values())
    rng.shuffle(kinds)
    ranked = [sorted(pile, key=lambda chosen: _rank(chosen, lexicon)) for pile in kinds]
    return tuple(_take_turns(ranked, count))


def _judge(ending: Ending, base: Entry, pool: Pool) -> Chosen:
    normal = ending.said.normal
    bases = {said.normal for said in base.usable_pronunciations}
    without_last = ending.base if normal[:-1] in bases and normal[-1] not in VOWELS else ""
    without_first = ""
    if normal[0] not in VOWELS:
        for spoken in pool.heard_as(normal[1:]):
            if has_ending(spoken.entry, ending.suffix) and spoken.entry.band <= pool.query.band:
                without_first = spoken.entry.word
                break
    fitting = PARTS_OF[ending.suffix]
    reading = next((part for part in base.parts_of_speech if part in fitting), "")
    if len(ending.parts_of_speech) == 1 and ending.suffix == "s":
        reading = ending.parts_of_speech[0]
    return Chosen(ending, kind_of(ending), reading, without_last, without_first)


def _rank(chosen: Chosen, lexicon: Lexicon) -> tuple[bool, bool, bool]:
    """Order words: used as what they mostly are, short bases, then those with a partner."""
    base = lexicon.get(chosen.ending.base)
    is_unusual = base is None or base.parts_of_speech[:1] != (chosen.reading,)
    is_long = base is None or base.pronunciations[0].syllables > 1
    return is_unusual, is_long, not (chosen.without_first or chosen.without_last)


def _take_turns(piles: list[list[Chosen]], count: int) -> Iterator[Chosen]:
    """Yield from each pile in turn, of the reading that is behind if the pile has it."""
    used: set[str] = set()
    met: dict[str, int] = {}
    taken = 0
    while piles and taken < count:
        for pile in piles:
            open_ = [chosen for chosen in pile if chosen.ending.base not in used]
            pile[:] = open_
            if not open_ or taken == count:
                continue
            fewest = min(met.get(chosen.reading, 0) for chosen in open_)
            picked = next(c for c in open_ if met.get(c.reading, 0) == fewest)
            used.add(picked.ending.base)
            met[picked.reading] = met.get(picked.reading, 0) + 1
            taken += 1
            yield picked
        piles = [pile for pile in piles if pile]
