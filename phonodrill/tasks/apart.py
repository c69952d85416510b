"""Take a word apart: into syllables, onset and rime, or single sounds.

Blending and segmenting are the two directions of the same thing, and the same
words are safe for both: those whose sounds are counted alike by everybody.
"""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Position, count_nuclei
from phonodrill.sounds.units import RVowels, has_r_vowel, hides_y, split_units
from phonodrill.tasks.change import Words, part_of
from phonodrill.tasks.compounds import halves_of, has_two_beats
from phonodrill.tasks.item import Part

BREAKING = ("I", "W", "Y")
"""Diphthongs between which and an L many say one vowel more: oil, file, owl."""
MOST_SOUNDS = 6
"""More sounds than that are no warm-up."""


def taken_apart(
    pool: Pool, query: Query, at: Position
) -> Iterator[tuple[Words, Spoken, tuple[Part, ...]]]:
    """Yield the words that everybody takes apart alike, with their parts.

    Args:
        pool: the words that may be used.
        query: band, sound (one that is among the parts), accents and how vowel + R is counted.
        at: ``each`` single sound, ``onset`` (onset and rime) or ``syllable``.
    """
    words = Words(pool, query)
    for spoken in words.stimuli(has_two_beats if at is Position.SYLLABLE else _is_short):
        parts = _parts(words, spoken, at)
        is_about = not query.sound or query.sound in (part.sounds for part in parts)
        if len(parts) > 1 and is_about:
            yield words, spoken, parts


def _is_short(normal: str) -> bool:
    return len(normal) <= MOST_SOUNDS and count_nuclei(normal) == 1


def _parts(words: Words, spoken: Spoken, at: Position) -> tuple[Part, ...]:
    said = spoken.said
    if at is Position.SYLLABLE:
        halves = halves_of(words, spoken)
        return (halves.first, halves.second) if halves and _one_way(words, spoken) else ()
    if at is Position.ONSET:
        cut = words.cut(said.normal, at)
        if cut is None or not (_one_way(words, spoken) and words.may_be_said(cut.right)):
            return ()
        end = len(cut.middle)
        return part_of(said, 0, end), part_of(said, end, len(said.sounds))
    return _single_sounds(words, spoken)


def _single_sounds(words: Words, spoken: Spoken) -> tuple[Part, ...]:
    sounds = spoken.said.sounds
    breaks = any(glide + "l" in sounds for glide in BREAKING)
    unsettled = breaks or (words.query.r_vowels is None and has_r_vowel(sounds))
    if unsettled or hides_y(sounds) or not (_is_short(sounds) and _one_way(words, spoken)):
        return ()
    if words.query.band == 1 and sounds[:2] in ("tr", "dr"):
        return ()
    parts = []
    start = 0
    for unit in split_units(sounds, words.query.r_vowels or RVowels.TWO):
        parts.append(part_of(spoken.said, start, start + len(unit)))
        start += len(unit)
    return tuple(parts)


def _one_way(words: Words, spoken: Spoken) -> bool:
    """Whether every usable way to say the word is this one."""
    if spoken.entry.is_heteronym:
        return True
    merge = words.query.accents.merge_known
    ways = {merge(way.normal) for way in spoken.entry.usable_pronunciations}
    return ways == {merge(spoken.said.normal)}
