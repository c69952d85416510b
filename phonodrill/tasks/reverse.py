"""Reversal: say the sounds of a word from last to first, or its two words the other way round."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Position
from phonodrill.sounds.units import RVowels, has_r_vowel, hides_y
from phonodrill.tasks.change import Words, part_of, part_said
from phonodrill.tasks.compounds import Halves, compounds
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part

NAME = "reverse"


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every word of the pool that is another word from back to front.

    Args:
        pool: the words that may be used.
        query: band, sound (the first one of the stimulus) and accents.
        at: ``each`` sound, or ``syllable``: the parts of a compound.
    """
    words = Words(pool, query)
    if at is Position.SYLLABLE:
        for halves in compounds(words):
            if pool.gate.allows_join(
                [_normal(words, halves.second)], [_normal(words, halves.first)]
            ):
                yield _parts_turned(halves)
        return
    heard = pool.lexicon.every_sound()

    def turns(normal: str) -> bool:
        return len(normal) > 1 and normal[::-1] != normal and normal[::-1] in heard

    for stimulus in words.stimuli(turns):
        sounds = stimulus.said.sounds
        vowel_and_r = has_r_vowel(sounds) or has_r_vowel(sounds[::-1])
        is_same = sounds == sounds[::-1]
        if is_same or hides_y(sounds) or (vowel_and_r and query.r_vowels is not RVowels.TWO):
            continue
        item = _item(words, stimulus)
        if item and (not query.sound or item.sound.sounds == query.sound):
            yield item


def _is_turned(before: str, after: str) -> bool:
    return before[::-1] == after


def _normal(words: Words, part: Part) -> str:
    found = words.pool.find(part.word)
    return found.said.normal if found else ""


def _parts_turned(halves: Halves) -> Item:
    """The answer is no word: *cowboy*, the parts the other way round, is *boy-cow*."""
    whole, first, second = halves
    turned = Part(second.sounds + first.sounds, second.stress + first.stress)
    return Item(
        task=NAME,
        at=Position.SYLLABLE,
        stimulus=whole.entry.word,
        stimulus_said=whole.said,
        sound=first,
        answer="",
        answer_said=part_said(turned),
        base=whole.entry.base,
        band=whole.entry.band,
        difficulty=estimate(NAME, Position.SYLLABLE, whole.said.sounds, whole.entry.band),
        parts=(second, first),
    )


def _item(words: Words, stimulus: Spoken) -> Item | None:
    answers = words.answers(stimulus.said.normal[::-1])
    if not answers or not words.holds(stimulus, answers[0], _is_turned):
        return None
    answer, *also = answers
    band = max(stimulus.entry.band, answer.entry.band)
    return Item(
        task=NAME,
        at=Position.EACH,
        stimulus=stimulus.entry.word,
        stimulus_said=stimulus.said,
        sound=part_of(stimulus.said, 0, 1),
        answer=answer.entry.word,
        answer_said=answer.said,
        also=tuple(spoken.entry.word for spoken in also),
        base=stimulus.entry.base,
        band=band,
        difficulty=estimate(
            NAME, Position.EACH, stimulus.said.sounds, band, spelling=stimulus.entry.word
        ),
    )
