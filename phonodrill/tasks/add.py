"""Addition: say a word, add a sound or a part, hear another word."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.places import Cut, Position, count_nuclei
from phonodrill.sounds.units import splits_heard_affricate
from phonodrill.tasks.change import Agree, Words, middle_part
from phonodrill.tasks.compounds import Halves, compounds
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part

NAME = "add"


def candidates(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield every addition item of the pool that holds for every listener asked for.

    Args:
        pool: the words that may be used.
        query: band, sound, accents and how vowel + R is counted.
        at: where the sound is added; a syllable makes a compound.
    """
    words = Words(pool, query)
    if at is Position.SYLLABLE:
        for halves in compounds(words):
            yield from _to_a_compound(words, halves)
        return
    frames = words.frames(at)

    def grows(normal: str) -> bool:
        return any(frame in frames for frame in _frames_around(normal, at))

    for stimulus in words.stimuli(grows):
        for frame in _frames_around(stimulus.said.normal, at):
            for longer in frames.get(frame, ()):
                item = _item(words, stimulus, longer, at)
                if item:
                    yield item


def _frames_around(normal: str, at: Position) -> Iterator[tuple[str, str]]:
    """Yield what would stand around a sound added at a place."""
    if at in (Position.FIRST, Position.ONSET):
        yield "", normal
    elif at is Position.LAST:
        yield normal, ""
    elif at is Position.ONSET2:
        yield normal[:1], normal[1:]
    elif at is Position.CODA1 and len(normal) > 1:
        yield normal[:-1], normal[-1:]


def _item(words: Words, stimulus: Spoken, longer: str, at: Position) -> Item | None:
    cut = words.cut(longer, at)
    if cut is None or not _may_be_added(words, cut, at):
        return None
    answers = words.answers(longer)
    if not answers:
        return None
    added = middle_part(answers[0].said, cut)
    if (words.query.sound and words.query.sound != added.sounds) or added.stress == "1":
        return None

    def agree(short: str, long: str) -> bool:
        here = words.cut(long, at)
        return here is not None and here.middle == cut.middle and here.left + here.right == short

    return _checked(words, stimulus, answers, added, at, agree)


def _may_be_added(words: Words, cut: Cut, at: Position) -> bool:
    if at is Position.ONSET and len(cut.middle) == 1:
        return False
    splits = splits_heard_affricate(cut.left + cut.middle + cut.right, len(cut.left))
    if words.query.band == 1 and splits:
        return False
    return count_nuclei(cut.middle) == 0


def _to_a_compound(words: Words, halves: Halves) -> Iterator[Item]:
    whole = halves.whole
    for kept, added, ahead in (
        (halves.second, halves.first, True),
        (halves.first, halves.second, False),
    ):
        stimulus = words.pool.find(kept.word)
        answers = words.answers(whole.said.normal)
        if stimulus is None or not answers or answers[0].entry.word != whole.entry.word:
            continue

        def agree(short: str, long: str, *, ahead: bool = ahead) -> bool:
            return long.endswith(short) if ahead else long.startswith(short)

        item = _checked(words, stimulus, answers, added, Position.SYLLABLE, agree)
        if item:
            yield item._replace(parts=(halves.first, halves.second))


def _checked(
    words: Words,
    stimulus: Spoken,
    answers: tuple[Spoken, ...],
    added: Part,
    at: Position,
    agree: Agree,
) -> Item | None:
    answer, *also = answers
    is_its_form = at is Position.LAST and answer.entry.base == stimulus.entry.word
    if not (is_its_form or words.is_wanted(stimulus.entry, answer.entry)):
        return None
    if not words.holds(stimulus, answer, agree):
        return None
    band = max(stimulus.entry.band, answer.entry.band)
    return Item(
        task=NAME,
        at=at,
        stimulus=stimulus.entry.word,
        stimulus_said=stimulus.said,
        sound=added,
        answer=answer.entry.word,
        answer_said=answer.said,
        also=tuple(spoken.entry.word for spoken in also),
        base=stimulus.entry.base,
        band=band,
        difficulty=estimate(NAME, at, answer.said.sounds, band, spelling=answer.entry.word),
    )
