"""What the tasks share that compare words: companions that give nothing away.

Words that share a sound are put together, and a foil that does not. Nothing
else may point to the answer: no two words rhyme (unless rhyme is what is asked
for), their other ends differ, they have as many syllables, the same main part
of speech, and no base word or spelling in common.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.features import distance, features_apart
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.places import NUCLEI, Position, count_nuclei
from phonodrill.tasks.change import Words
from phonodrill.tasks.difficulty import Nearness
from phonodrill.tasks.isolate import sound_at
from phonodrill.tasks.item import Choice, Part

TRIES = 40
"""Draws for one companion before a word is given up."""
FAR = 0.35
"""Distance of features from which two sounds are clearly different."""


class Named(NamedTuple):
    """A word and the sound of it that an item is about."""

    spoken: Spoken
    part: Part

    @property
    def choice(self) -> Choice:
        """The word as it is shown."""
        return Choice(self.spoken.entry.word, self.spoken.said)


class Compared(NamedTuple):
    """Words that share a sound, and one that does not.

    Attributes:
        alike: the words that share it.
        odd: the word that does not.
        nearness: how the odd one's sound compares.
    """

    alike: tuple[Named, ...]
    odd: Named
    nearness: Nearness


def comparisons(pool: Pool, query: Query, at: Position, *, alike: int) -> Iterator[Compared]:
    """Yield, for each word of the pool, a set with a far foil and one with a near foil.

    Args:
        pool: the words that may be used.
        query: band, sound, accents and how vowel + R is counted.
        at: where the sound is; ``rime`` compares rhymes.
        alike: how many words share the sound.
    """
    words = Words(pool, query)
    shelf = _Shelf(words, at, pool.rng or random.Random(0))
    for spoken in words.stimuli(lambda normal: words.cut(normal, at) is not None):
        part = shelf.name(spoken)
        if part is None or (query.sound and query.sound != part.sounds):
            continue
        for near in (False, True):
            found = shelf.companions(Named(spoken, part), alike=alike, near=near)
            if found:
                yield found


class _Shelf:
    """Possible companions by the sound at the place and the number of syllables."""

    def __init__(self, words: Words, at: Position, rng: random.Random) -> None:
        self.words = words
        self.at = at
        self.rng = rng
        pool = words.pool
        key = (at, words.r_joins, pool.query._replace(sound=""), pool.choice)
        kept = pool.lexicon.recall
        self._shelves: dict[tuple[str, int], list[str]] = kept(("shelves", *key), self._fill)
        self._named: dict[str, Named | None] = kept(("named", *key), dict)
        self._foils: dict[tuple[str, int, bool], list[str]] = kept(("foils", *key), dict)

    def _fill(self) -> dict[tuple[str, int], list[str]]:
        shelves: dict[tuple[str, int], list[str]] = {}
        for word, normals in self.words.pool.companions().items():
            cut = self.words.cut(normals[0], self.at)
            if cut:
                shelves.setdefault((cut.middle, count_nuclei(normals[0])), []).append(word)
        return shelves

    def name(self, spoken: Spoken) -> Part | None:
        """Return the sound of a word, if it is plain and the word is fit to compare."""
        part = sound_at(self.words, spoken, self.at)
        first_of_cluster = (
            self.at is Position.FIRST and NUCLEI.isdisjoint(spoken.said.normal[:2])
        ) or (self.at is Position.LAST and NUCLEI.isdisjoint(spoken.said.normal[-2:]))
        # A child may take a cluster for one sound, so none is among words to compare.
        return None if first_of_cluster else part

    def companions(self, first: Named, *, alike: int, near: bool) -> Compared | None:
        """Find words to put beside a word, or None where there are none."""
        sound = first.part.sounds
        beats = count_nuclei(first.spoken.said.normal)
        chosen = [first]
        for _ in range(alike - 1):
            other = self._draw([sound], beats, chosen)
            if other is None:
                return None
            chosen.append(other)
        odd = self._draw(self._sounds_for_foil(sound, beats, near=near), beats, chosen)
        if odd is None:
            return None
        return Compared(tuple(chosen), odd, nearness(sound, odd.part.sounds))

    def _draw(self, sounds: Sequence[str], beats: int, beside: list[Named]) -> Named | None:
        if not sounds:
            return None
        chance = self.rng.random  # a third of the time of rng.choice
        for _ in range(TRIES):
            sound = sounds[int(chance() * len(sounds))]
            shelf = self._shelves.get((sound, beats))
            if not shelf:
                continue
            named = self._look_up(shelf[int(chance() * len(shelf))])
            # A word said in two ways (whale) may stand on the shelf of the other one.
            if (
                named
                and named.part.sounds == sound
                and all(gives_nothing_away(named, other, self.at) for other in beside)
            ):
                return named
        return None

    def _look_up(self, word: str) -> Named | None:
        if word not in self._named:
            spoken = self.words.pool.find(word)
            part = self.name(spoken) if spoken else None
            self._named[word] = Named(spoken, part) if spoken and part else None
        return self._named[word]

    def _sounds_for_foil(self, sound: str, beats: int, *, near: bool) -> list[str]:
        key = (sound, beats, near)
        if key not in self._foils:
            self._foils[key] = [
                other
                for other, syllables in self._shelves
                if syllables == beats and other != sound and _is_foil(sound, other, near=near)
            ]
        return self._foils[key]


def gives_nothing_away(one: Named, two: Named, at: Position) -> bool:
    """Whether nothing but the sound asked for groups or parts two words."""
    first, second = one.spoken.entry, two.spoken.entry
    if first.parts_of_speech[:1] != second.parts_of_speech[:1] or first.base == second.base:
        return False
    if first.word in second.word or second.word in first.word:
        return False
    a, b = one.spoken.said, two.spoken.said
    if at is not Position.RIME and a.rhyme == b.rhyme:
        return False
    if at is not Position.FIRST and at is not Position.ONSET and a.sounds[0] == b.sounds[0]:
        return False
    # Forms all end in the sound of the ending: that groups none of them.
    are_forms = bool(first.endings and second.endings)
    return at in (Position.LAST, Position.RIME) or are_forms or a.sounds[-1] != b.sounds[-1]


def nearness(sound: str, other: str) -> Nearness:
    """Say how two sounds compare, for the estimate of difficulty.

    >>> nearness("p", "b"), nearness("p", "m")
    (Nearness(near=True, voice_only=True), Nearness(near=False, voice_only=False))
    """
    near = _is_foil(sound, other, near=True)
    if not near or len(sound) > 1 or len(other) > 1:
        return Nearness(near)
    one, two = BY_CODE[sound], BY_CODE[other]
    return Nearness(near, not one.is_vowel and one.voiced != two.voiced)


def _is_foil(sound: str, other: str, *, near: bool) -> bool:
    """Whether a sound is one feature away, or clearly different.

    Of an onset or a rime, a near foil keeps one of its sounds, a far one none.
    """
    if len(sound) == len(other) == 1:
        if not {sound, other} <= BY_CODE.keys():
            return False
        apart = features_apart(sound, other)
        return apart == 1 if near else apart > 1 and distance(sound, other) >= FAR
    shared = sum(a == b for a, b in zip(sound, other, strict=False))
    return bool(shared) is near
