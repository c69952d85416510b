"""Deletion: say a word, take a sound or a part off, hear another word.

A vowel is never parted from the R behind it: without the R it is another vowel
(*hear* without its last sound is not quite *he*). A vowel that carries the main
stress stays: without it nothing is left to stress (*easter* is not *stir*).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Position, count_nuclei
from phonodrill.sounds.units import splits_heard_affricate
from phonodrill.tasks.change import Agree, Words, middle_part
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part

NAME = "delete"
WEAK_I = ("ɪ", "0")
"""The weak vowel of *eraser*: heard as short i, long e or neither, so it is not named."""


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every deletion item of the pool that holds for every listener asked for.

    Args:
        pool: the words that may be used.
        query: band, sound, accents and how vowel + R is counted.
        at: what is taken off.
    """
    words = Words(pool, query)
    if at is Position.SYLLABLE:
        from phonodrill.tasks.compounds import has_two_beats

        for whole in words.stimuli(has_two_beats):
            yield from _without_a_half(words, whole)
        return
    for stimulus in words.stimuli(_may_leave_a_word(words, at)):
        item = _item(words, stimulus, at)
        if item:
            yield item


def _may_leave_a_word(words: Words, at: Position) -> Callable[[str], bool]:
    """Make the cheap test that thousands of words go through: at an end, a slice will do."""
    heard_as = words.pool.lexicon.heard_as
    end = {Position.FIRST: slice(1, None), Position.LAST: slice(None, -1)}.get(at)
    if end and not words.r_joins:
        return lambda normal: bool(heard_as(normal[end]))
    return lambda normal: bool(heard_as(leave(words, normal, at)))


def leave(words: Words, normal: str, at: Position) -> str:
    """Return what is left of a form, empty if nothing can be taken off there."""
    cut = words.cut(normal, at)
    # A whole onset is taken off only where it is more than the first sound.
    if cut is None or (at is Position.ONSET and len(cut.middle) == 1):
        return ""
    return cut.left + cut.right


def _item(words: Words, stimulus: Spoken, at: Position) -> Item | None:
    said, query = stimulus.said, words.query
    cut = words.cut(said.normal, at)
    if cut is None:
        return None
    taken = middle_part(said, cut)
    index = len(cut.left)
    if (
        (query.sound and query.sound != taken.sounds)
        or taken.stress == "1"
        or (taken.sounds, taken.stress) == WEAK_I
        or not count_nuclei(cut.left + cut.right)
        or (query.band == 1 and splits_heard_affricate(said.sounds, index))
    ):
        return None

    def agree(whole: str, rest: str) -> bool:
        here = words.cut(whole, at)
        return here is not None and here.middle == cut.middle and here.left + here.right == rest

    return _checked(words, stimulus, taken, leave(words, said.normal, at), at, agree)


def _without_a_half(words: Words, whole: Spoken) -> Iterator[Item]:
    """Take off the first or the second half; what is left has to be a word."""
    from phonodrill.tasks.compounds import halves_of

    halves = halves_of(words, whole)
    if halves is None:
        return
    cut = len(halves.first.sounds)
    normal = whole.said.normal
    for taken, left, rest, ahead in (
        (halves.first, halves.second, normal[cut:], True),
        (halves.second, halves.first, normal[:cut], False),
    ):

        def named(form: str, *, ahead: bool = ahead) -> str:
            return form[:cut] if ahead else form[cut:]

        if not (taken.word or words.is_steady(whole, named)):
            continue

        def agree(whole: str, rest: str, *, ahead: bool = ahead) -> bool:
            return whole.endswith(rest) if ahead else whole.startswith(rest)

        item = _checked(words, whole, taken, rest, Position.SYLLABLE, agree, left.word)
        if item:
            yield item


def _checked(
    words: Words,
    stimulus: Spoken,
    taken: Part,
    rest: str,
    at: Position,
    agree: Agree,
    spelled: str = "",
) -> Item | None:
    """Make the item if its answer is right; the word ``spelled`` goes before its homophones."""
    answers = words.answers(rest) if rest else ()
    # What is left of seacoast is sea, not see.
    answers = tuple(sorted(answers, key=lambda answer: answer.entry.word != spelled))
    if not answers or not words.holds(stimulus, answers[0], agree):
        return None
    if not words.is_wanted(stimulus.entry, answers[0].entry):
        return None
    entry, said = stimulus
    answer, *also = answers
    band = max(entry.band, answer.entry.band)
    return Item(
        task=NAME,
        at=at,
        stimulus=entry.word,
        stimulus_said=said,
        sound=taken,
        answer=answer.entry.word,
        answer_said=answer.said,
        also=tuple(spoken.entry.word for spoken in also),
        base=entry.base,
        band=band,
        difficulty=estimate(NAME, at, said.sounds, band, spelling=entry.word),
    )
