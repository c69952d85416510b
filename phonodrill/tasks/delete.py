"""Deletion: say a word, take off its first or last sound, hear another word.

A vowel is never parted from the R behind it: without the R it is another vowel
(*hear* without its last sound is not quite *he*). A vowel that carries the main
stress stays: without it nothing is left to stress (*easter* is not *stir*).
"""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.accents import holds_in_every_accent
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.units import RVowels, split_units, splits_heard_affricate
from phonodrill.tasks.difficulty import deletion_difficulty
from phonodrill.tasks.item import Item, Position

NAME = "delete"
POSITIONS = (Position.FIRST, Position.LAST)


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every deletion item of the pool that holds for every listener.

    Args:
        pool: the words that may be used.
        query: band, sound and how vowel + R is counted.
        at: whether the first or the last sound is taken off.
    """
    heard_as = pool.lexicon.heard_as
    # With r_vowels=ONE the unit may be two sounds long.
    longest = 1 if query.r_vowels is RVowels.TWO else 2

    def may_leave_a_word(normal: str) -> bool:
        return bool(heard_as(drop(normal, at))) or (
            longest > 1 and bool(heard_as(drop(normal, at, longest)))
        )

    for entry in pool.stimuli(may_leave_a_word):
        for said in _ways_to_say(entry):
            item = _item(pool, query, at, entry, said)
            if item:
                yield item


def _ways_to_say(entry: Entry) -> tuple[Pronunciation, ...]:
    """A heteronym is asked for in each reading; any other word in its first way.

    Only ways that a dictionary lists: a form built from base + ending is good
    for a sort, but an oral item rests on two dictionary entries.
    """
    usable = tuple(said for said in entry.usable_pronunciations if said.is_listed)
    return usable if entry.is_heteronym else usable[:1]


def _item(pool: Pool, query: Query, at: Position, entry: Entry, said: Pronunciation) -> Item | None:
    units = split_units(said.sounds, query.r_vowels)
    unit = units[0] if at is Position.FIRST else units[-1]
    index = 0 if at is Position.FIRST else len(said.sounds) - 1
    if (
        len(units) == 1
        or (query.sound and query.sound != unit)
        or _parts_vowel_from_r(said.sounds, at)
        or _takes_the_stress(unit, said.stress, at)
        or (query.band == 1 and splits_heard_affricate(said.sounds, index))
    ):
        return None
    answers = _answers(pool, query, said.normal, at, len(unit))
    if not answers:
        return None
    if not entry.is_heteronym and not _every_way_agrees(entry, answers[0], at, len(unit)):
        return None
    answer, *also = answers
    band = max(entry.band, answer.entry.band)
    return Item(
        task=NAME,
        at=at,
        stimulus=entry.word,
        stimulus_said=said,
        sound=unit,
        sound_stress=_stress_of(unit, said.stress, at),
        answer=answer.entry.word,
        answer_said=answer.said,
        also=tuple(spoken.entry.word for spoken in also),
        base=entry.base,
        band=band,
        difficulty=deletion_difficulty(said.sounds, at, band),
    )


def _parts_vowel_from_r(sounds: str, at: Position) -> bool:
    return at is Position.LAST and sounds[-1] == "r" and sounds[-2] in VOWELS


def _takes_the_stress(unit: str, stress: str, at: Position) -> bool:
    return _stress_of(unit, stress, at) == "1"


def drop(sounds: str, at: Position, length: int = 1) -> str:
    """Take ``length`` sounds off one end.

    >>> drop("slOp", Position.FIRST), drop("slOp", Position.LAST)
    ('lOp', 'slO')
    """
    return sounds[length:] if at is Position.FIRST else sounds[:-length]


def _answers(
    pool: Pool, query: Query, normal: str, at: Position, length: int
) -> tuple[Spoken, ...]:
    """The words that are left, or none if the answer would not be plain to everybody."""
    rest = drop(normal, at, length)
    heard = pool.heard_as(rest)
    if not heard or not _is_plain(heard[0].entry, rest, query):
        return ()
    holds = pool.stands_alone(rest) and holds_in_every_accent(
        normal, rest, lambda sounds: drop(sounds, at, length)
    )
    return heard if holds else ()


def _is_plain(answer: Entry, normal: str, query: Query) -> bool:
    """Whether the answer is familiar and this is the first way to say it."""
    first = answer.usable_pronunciations[0].normal
    return answer.band <= query.band and not answer.is_heteronym and first == normal


def _every_way_agrees(entry: Entry, answer: Spoken, at: Position, length: int) -> bool:
    """Whether each way to say the stimulus leaves a way to say the answer."""
    left = {drop(said.normal, at, length) for said in entry.usable_pronunciations}
    return left <= {said.normal for said in answer.entry.usable_pronunciations}


def _stress_of(unit: str, stress: str, at: Position) -> str:
    if unit[0] not in VOWELS:
        return ""
    return stress[0] if at is Position.FIRST else stress[-1]
