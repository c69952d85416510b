"""Swap a word of a lesson; everything that depends on it is worked out again."""

from __future__ import annotations

import random
from collections.abc import Iterator

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.candidates import builds_cleanly, is_plain_to_hear
from phonodrill.lesson.compose import Choice, Prepared, compose, with_words
from phonodrill.lesson.fit import check_words
from phonodrill.lesson.from_data import Read
from phonodrill.lesson.lines import draw_dictated, draw_sentences
from phonodrill.lesson.oral import Drawn, draw_oral
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.words import Words, gaps
from phonodrill.sentences import words_of
from phonodrill.tasks.history import History

SHOWN = 6


def swap_word(read: Read, old: str, new: str = "") -> tuple[Lesson, str]:
    """Put another word in the place of one, as :func:`swap_in`; return only the lesson."""
    swapped, word = swap_in(read, old, new)
    return swapped.lesson, word


def swap_in(read: Read, old: str, new: str = "") -> tuple[Read, str]:
    """Put another word in the place of one.

    Args:
        read: the lesson, as it was read.
        old: a word of the lesson.
        new: the word to take instead; empty: one that fits is chosen.

    Returns:
        The lesson as if it had been read, and the new word; empty if ``old`` stood
        only in oral items or sentences, which were replaced.

    Raises:
        PhonodrillError: if ``old`` is not in the lesson, or ``new`` does not fit.
    """
    old, new = old.lower().strip(), new.lower().strip()
    ready, choice = with_words(read.ready, {new} - {""}), read.choice
    is_listed = old in choice.words.every
    heard = any(old in item.words for one in choice.oral for item in one.items)
    written = any(old in words_of(text) for text in _texts(choice))
    if not (is_listed or heard or written):
        shown = ", ".join(sorted(choice.words.every)[:SHOWN])
        raise PhonodrillError(f"{old!r} is not in the lesson", f"one of its words: {shown}, ...")
    if new and new in choice.words.every:
        raise PhonodrillError(f"{new!r} is in the lesson already", "a word that is not in it")
    rng = random.Random(f"{read.lesson.request.seed} {old} {new}")
    words = choice.words
    if is_listed:
        new = new or _another(ready, choice, old, rng)
        words = words._replace(
            **{
                section: tuple(new if word == old else word for word in listed)
                for section, listed in words._asdict().items()
                if section != "notes"
            }
        )
        check_words(ready, words)
    else:
        new = ""
    choice = choice._replace(words=words, notes=_notes(ready, choice, words))
    choice = _other_oral(ready, choice, old, rng)
    choice = _other_sentences(ready, choice, old, rng)
    return Read(compose(ready, choice), ready, choice), new


def _texts(choice: Choice) -> list[str]:
    return [*(sentence.text for sentence in choice.sentences), choice.dictated]


def _another(ready: Prepared, choice: Choice, old: str, rng: random.Random) -> str:
    """Choose a word that is not in the lesson: of the same condition, else as near as can be."""
    known = ready.vocabulary.words
    taken = choice.words.every
    bases = {known[word].base for word in taken if word in known}
    hears = {*choice.words.dictation, *choice.words.check}
    for group in _like(ready, old):
        free = sorted(
            word
            for word in group
            if word not in taken
            and (word not in known or known[word].base not in bases)
            and (old not in choice.words.build or builds_cleanly(word, ready.context))
            and (old not in hears or is_plain_to_hear(word, ready.context))
        )
        if free:
            return rng.choice(free)
    raise PhonodrillError(f"no other word can stand for {old!r}", "name one yourself")


def _like(ready: Prepared, old: str) -> Iterator[list[str]]:
    """Yield groups of words that are like one, the most alike first."""
    known, rivals = ready.vocabulary.words, ready.vocabulary.rivals
    if old in known:
        own = known[old]
        short = [c for c in known.values() if c.syllables <= max(2, own.syllables)]
        yield [c.word for c in short if c.condition == own.condition]
        yield [c.word for c in short if (c.spelling, c.sound) == (own.spelling, own.sound)]
        yield list(known)
    elif old in rivals:
        own = rivals[old]
        yield [
            c.word for c in rivals.values() if (c.spelling, c.sound) == (own.spelling, own.sound)
        ]
    else:
        yield list(ready.vocabulary.review)


def _notes(ready: Prepared, choice: Choice, words: Words) -> tuple[str, ...]:
    """Keep the notes, with those on uncovered conditions made anew."""
    others = [note for note in choice.notes if note not in gaps(choice.words, ready.vocabulary)]
    return (*gaps(words, ready.vocabulary), *others)


def _other_oral(ready: Prepared, choice: Choice, old: str, rng: random.Random) -> Choice:
    """Take other items for those that say the word."""
    drawn = []
    used = {word for one in choice.oral for item in one.items for word in item.words}
    for one in choice.oral:
        kept = tuple(item for item in one.items if old not in item.words)
        missing = len(one.items) - len(kept)
        if missing:
            more, _ = draw_oral(
                ready.context, ready.vocabulary, 2 * missing, History(sets=(frozenset(used),)), rng
            )
            same = (d for d in more if (d.task, d.at) == (one.task, one.at))
            kept += next(same, Drawn(one.task, one.at, ())).items[:missing]
        if kept:
            drawn.append(one._replace(items=kept))
    return choice._replace(oral=tuple(drawn))


def _other_sentences(ready: Prepared, choice: Choice, old: str, rng: random.Random) -> Choice:
    """Take other sentences for those with the word."""
    context, vocabulary = ready.context, ready.vocabulary
    kept = [s for s in choice.sentences if old not in words_of(s.text)]
    missing = len(choice.sentences) - len(kept)
    if missing:
        barred = frozenset({old, *(sentence.word for sentence in kept)})
        more, _ = draw_sentences(
            context, vocabulary, choice.words, len(choice.sentences), barred, rng
        )
        free = [s for s in more if s.word not in barred and old not in words_of(s.text)]
        kept += free[:missing]
    dictated = choice.dictated
    barred_words = {old, *choice.words.sort}
    if barred_words & {*words_of(dictated)}:
        dictated = draw_dictated(context, vocabulary, choice.words, kept, rng)
    return choice._replace(sentences=tuple(kept), dictated=dictated)
