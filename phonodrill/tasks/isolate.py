"""Isolation: hear a word, say one sound or part of it."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Cut, Position, count_nuclei
from phonodrill.sounds.units import hides_y, splits_heard_affricate
from phonodrill.tasks.change import Words, middle_part, part_said
from phonodrill.tasks.compounds import halves_of, has_two_beats
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part

NAME = "isolate"


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every word of the pool whose sound at a place is the same for everybody.

    Args:
        pool: the words that may be used.
        query: band, sound, accents and how vowel + R is counted.
        at: which sound or part is asked for; for ``syllable``, the first one.
    """
    words = Words(pool, query)
    if at is Position.SYLLABLE:
        for spoken in words.stimuli(has_two_beats):
            item = _first_half(words, spoken)
            if item:
                yield item
        return
    for spoken in words.stimuli(lambda normal: words.cut(normal, at) is not None):
        named = sound_at(words, spoken, at)
        if named and (not query.sound or query.sound == named.sounds):
            yield _item(spoken, named, at)


def sound_at(words: Words, spoken: Spoken, at: Position) -> Part | None:
    """Return the sound at a place if it may be named and everybody has it there."""
    cut = words.cut(spoken.said.normal, at)
    if cut is None or not words.may_be_said(cut.middle) or not _is_plain(words, spoken, cut, at):
        return None
    return middle_part(spoken.said, cut) if words.is_steady_at(spoken, at) else None


def _is_plain(words: Words, spoken: Spoken, cut: Cut, at: Position) -> bool:
    """Whether a class can be asked for this sound: no more than one, and no disputed one."""
    said = spoken.said
    is_no_more_than_first = at is Position.ONSET and len(cut.middle) == 1
    is_hidden = hides_y(said.sounds) and at is not Position.LAST
    is_split = words.query.band == 1 and splits_heard_affricate(said.sounds, len(cut.left))
    is_r_vowel = "ɝ" in cut.middle and words.query.r_vowels is None
    is_weak = at is Position.FIRST and count_nuclei(cut.middle) > 0 and said.stress[0] != "1"
    return not (is_no_more_than_first or is_hidden or is_split or is_r_vowel or is_weak)


def _first_half(words: Words, spoken: Spoken) -> Item | None:
    halves = halves_of(words, spoken)
    if halves is None:
        return None
    end = len(halves.first.sounds)
    steady = words.is_steady(spoken, lambda form: form[:end])
    return _item(spoken, halves.first, Position.SYLLABLE) if steady else None


def _item(spoken: Spoken, named: Part, at: Position) -> Item:
    entry, said = spoken
    return Item(
        task=NAME,
        at=at,
        stimulus=entry.word,
        stimulus_said=said,
        sound=named,
        answer=named.word,
        answer_said=part_said(named),
        base=entry.base,
        band=entry.band,
        difficulty=estimate(NAME, at, said.sounds, entry.band, spelling=entry.word),
    )
