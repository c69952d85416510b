"""Pairs of words for contrast: one sound differs, one is left off, or only the spelling differs."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Sequence
from enum import StrEnum
from itertools import combinations
from typing import NamedTuple

from phonodrill.lexicon.entry import Counted, Spelled
from phonodrill.sounds.accents import heard_alike
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import WEAK

ANY_SOUND = "_"


class Kind(StrEnum):
    """What the two words of a pair have to do with each other."""

    MINIMAL = "minimal"
    DELETION = "deletion"
    SPELLING = "spelling"


class Place(StrEnum):
    """Where in the word the sound is that makes the difference."""

    FIRST = "first"
    LAST = "last"
    VOWEL = "vowel"
    ANY = "any"


class Pair(NamedTuple):
    """Two words.

    Attributes:
        a, b: the words; in a deletion pair ``a`` is the longer.
        place: index of the sound of ``a`` that differs or is left off; -1 if
            only the spelling differs.
    """

    a: Spelled
    b: Spelled
    place: int = -1

    @property
    def sounds(self) -> tuple[str, str]:
        """The codes that differ, one a word; empty for a sound that is not there."""
        if self.place < 0:
            return "", ""
        is_deletion = len(self.a.sounds) > len(self.b.sounds)
        return self.a.sounds[self.place], "" if is_deletion else self.b.sounds[self.place]

    @property
    def at(self) -> str:
        """Where the difference is: first, last, vowel or inside."""
        if self.place < 0:
            return ""
        if self.place == 0:
            return Place.FIRST
        if self.place == len(self.a.sounds) - 1:
            return Place.LAST
        return Place.VOWEL if self.a.sounds[self.place] in VOWELS else "inside"


def minimal_pairs(
    words: Iterable[Spelled],
    either_vowel: frozenset[str],
    place: Place = Place.ANY,
    sounds: Sequence[str] = (),
) -> Iterator[Pair]:
    """Yield pairs of words in which exactly one sound differs.

    Left out: pairs that some US accent says alike, and vowels before r, which
    are not the vowels they are written with.

    Args:
        words: those that may be used.
        either_vowel: from :func:`said_with_either_vowel`.
        place: where the sound is.
        sounds: the two codes wanted, or none for any.
    """
    groups: dict[str, list[tuple[Spelled, int]]] = {}
    for word in words:
        for i, char in enumerate(word.normal):
            if char == WEAK or word.normal.startswith("r", i + 1):
                continue
            if _fits(word, i, place) and (not sounds or char in sounds):
                rest = f"{word.normal[:i]}{ANY_SOUND}{word.normal[i + 1 :]}"
                groups.setdefault(f"{rest} {word.stress}", []).append((word, i))
    wanted = set(sounds)
    for group in groups.values():
        for (a, i), (b, _) in combinations(group, 2):
            differ = {a.normal[i], b.normal[i]}
            if len(differ) < 2 or (wanted and differ != wanted):  # noqa: PLR2004
                continue
            is_vowel = a.sounds[i] in VOWELS
            if b.normal in heard_alike(a.normal) or not (
                is_vowel or _same_vowel_class(a, b, either_vowel)
            ):
                continue
            first, second = (b, a) if sounds and a.normal[i] != sounds[0] else (a, b)
            yield Pair(first, second, i)


def deletion_pairs(
    words: Iterable[Spelled], either_vowel: frozenset[str], place: Place = Place.ANY
) -> Iterator[Pair]:
    """Yield pairs of which the second is the first without its first or last consonant.

    Args:
        words: those that may be used.
        either_vowel: from :func:`said_with_either_vowel`.
        place: first, last, or any for both.
    """
    listed = list(words)
    by_sound: dict[str, list[Spelled]] = {}
    for word in listed:
        by_sound.setdefault(word.normal, []).append(word)
    for a in listed:
        last = len(a.normal) - 1
        for i, rest in ((0, a.normal[1:]), (last, a.normal[:-1])):
            if not _fits(a, i, place) or a.sounds[i] in VOWELS or _parts_r(a, i):
                continue
            for b in by_sound.get(rest, ()):
                if b.stress == a.stress and _same_vowel_class(a, b, either_vowel):
                    yield Pair(a, b, i)


def said_with_either_vowel(inventory: Iterable[Counted]) -> frozenset[str]:
    """Return the codes of spellings that say the vowel of *caught*, or for many that of *cot*.

    CMUdict lists some such words with the one, some with the other (*bought*).
    Beside a word that has the vowel of *cot* for everybody (*pot*), they differ
    in two sounds for some listeners.
    """
    return frozenset(row.code for row in inventory if {"ɔ", "ɑ"} <= {*row.correspondence.sounds})


def spelling_pairs(words: Iterable[Spelled]) -> Iterator[Pair]:
    """Yield pairs of words that sound the same and are spelled differently."""
    by_sound: dict[tuple[str, str], list[Spelled]] = {}
    for word in words:
        by_sound.setdefault((word.sounds, word.stress), []).append(word)
    for group in by_sound.values():
        yield from (Pair(a, b) for a, b in combinations(group, 2))


def choose_pairs(pairs: Iterable[Pair], count: int, rng: random.Random) -> list[Pair]:
    """Choose pairs, easy words first, no word twice.

    Args:
        pairs: all there are.
        count: how many are wanted.
        rng: mixes pairs that are equally easy.
    """
    listed = list(pairs)
    rng.shuffle(listed)
    chosen: list[Pair] = []
    used: set[str] = set()
    for pair in sorted(listed, key=_ease):
        if len(chosen) == count:
            break
        if used.isdisjoint({pair.a.word, pair.b.word}):
            chosen.append(pair)
            used |= {pair.a.word, pair.b.word}
    return chosen


def _ease(pair: Pair) -> tuple[int, int]:
    return max(pair.a.band, pair.b.band), len(pair.a.sounds) + len(pair.b.sounds)


def _fits(word: Spelled, i: int, place: Place) -> bool:
    if place is Place.FIRST:
        return i == 0
    if place is Place.LAST:
        return i == len(word.normal) - 1
    return place is Place.ANY or word.sounds[i] in VOWELS


def _same_vowel_class(a: Spelled, b: Spelled, either_vowel: frozenset[str]) -> bool:
    return either_vowel.isdisjoint(a.chunks) is either_vowel.isdisjoint(b.chunks)


def _parts_r(word: Spelled, i: int) -> bool:
    """Whether taking the sound off would part a vowel from its r."""
    return i > 0 and word.sounds[i] == "r" and word.sounds[i - 1] in VOWELS
