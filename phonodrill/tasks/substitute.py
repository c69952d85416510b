"""Substitution: say a word, put another sound or part in a place, hear another word."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Cut, Position
from phonodrill.sounds.units import splits_heard_affricate
from phonodrill.tasks.change import Words, middle_part
from phonodrill.tasks.compounds import Halves, compounds
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part

NAME = "substitute"
MOST_OF_ONE = 6
"""Other rimes for one word: nearly every word has the onset of a hundred others."""


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every substitution item of the pool that holds for every listener asked for.

    Args:
        pool: the words that may be used.
        query: band, sound (the one changed or the new one), accents and how
            vowel + R is counted.
        at: where the change is made; syllables of compounds.
    """
    if query.made_up:
        from phonodrill.tasks.made_up import substitutions

        yield from substitutions(pool, query, at)
        return
    words = Words(pool, query)
    if at is Position.SYLLABLE:
        yield from _parts_changed(words)
        return
    frames = words.frames(at)

    def changes(normal: str) -> bool:
        cut = words.cut(normal, at)
        return cut is not None and len(frames.get((cut.left, cut.right), ())) > 1

    for stimulus in words.stimuli(changes):
        cut = words.cut(stimulus.said.normal, at)
        if cut is None or not _may_be_changed(words, stimulus, cut, at):
            continue
        others = list(frames.get((cut.left, cut.right), ()))
        if pool.rng:
            pool.rng.shuffle(others)
        found = (_item(words, stimulus, cut, other, at) for other in others)
        yield from islice(filter(None, found), MOST_OF_ONE if at is Position.RIME else None)


def _may_be_changed(words: Words, stimulus: Spoken, cut: Cut, at: Position) -> bool:
    """Whether the sound to be changed may be named: steady, and no weak vowel."""
    if not cut.middle or not words.may_be_said(cut.middle):
        return False
    if middle_part(stimulus.said, cut).stress not in ("", "1"):
        return False
    splits = splits_heard_affricate(stimulus.said.sounds, len(cut.left))
    if words.query.band == 1 and splits and at in (Position.FIRST, Position.ONSET2):
        return False
    return words.is_steady_at(stimulus, at)


def _item(words: Words, stimulus: Spoken, cut: Cut, other: str, at: Position) -> Item | None:
    there = words.cut(other, at)
    if there is None or there.middle == cut.middle or not words.may_be_said(there.middle):
        return None
    answers = words.answers(other)
    if not answers or not words.is_wanted(stimulus.entry, answers[0].entry):
        return None
    answer, *also = answers
    old, new = middle_part(stimulus.said, cut), middle_part(answer.said, there)
    if not _may_be_exchanged(words.query, old, new, at) or not words.is_steady_at(answer, at):
        return None

    def agree(before: str, after: str) -> bool:
        one, two = words.cut(before, at), words.cut(after, at)
        return (
            one is not None and two is not None and (one.left, one.right) == (two.left, two.right)
        )

    if not words.holds(stimulus, answer, agree):
        return None
    return _made(stimulus, answer, also, old, new, at)


def _may_be_exchanged(query: Query, old: Part, new: Part, at: Position) -> bool:
    if query.sound and query.sound not in (old.sounds, new.sounds):
        return False
    if at is Position.ONSET and len(old.sounds) == len(new.sounds) == 1:
        return False
    colored = query.r_vowels is None and "ɝ" in old.sounds + new.sounds
    return new.stress in ("", "1") and not (at is Position.VOWEL and colored)


def _parts_changed(words: Words) -> Iterator[Item]:
    """Put one word for another in a compound: cowboy, tomboy."""
    found = list(compounds(words))
    by_part: dict[tuple[str, bool], list[Halves]] = {}
    for halves in found:
        by_part.setdefault((halves.first.word, True), []).append(halves)
        by_part.setdefault((halves.second.word, False), []).append(halves)
    for halves in found:
        for kept_first in (True, False):
            kept = halves.first if kept_first else halves.second
            old = halves.second if kept_first else halves.first
            for other in by_part[kept.word, kept_first]:
                new = other.second if kept_first else other.first
                answers = words.answers(other.whole.said.normal)
                if new.word == old.word or not answers:
                    continue
                answer, *also = answers
                if answer.entry.word == other.whole.entry.word:
                    yield _made(halves.whole, answer, also, old, new, Position.SYLLABLE)


def _made(
    stimulus: Spoken, answer: Spoken, also: list[Spoken], old: Part, new: Part, at: Position
) -> Item:
    band = max(stimulus.entry.band, answer.entry.band)
    sounds = max(stimulus.said.sounds, answer.said.sounds, key=len)
    return Item(
        task=NAME,
        at=at,
        stimulus=stimulus.entry.word,
        stimulus_said=stimulus.said,
        sound=old,
        answer=answer.entry.word,
        answer_said=answer.said,
        also=tuple(spoken.entry.word for spoken in also),
        base=stimulus.entry.base,
        band=band,
        difficulty=estimate(
            NAME, at, sounds, band, spelling=f"{stimulus.entry.word} {answer.entry.word}"
        ),
        new=new,
    )
