"""The rule of a lesson: one example a condition, and what to watch out for."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import chain, zip_longest

from phonodrill.endings.lookalikes import Kind as TrapKind
from phonodrill.endings.lookalikes import find_lookalikes
from phonodrill.endings.rule import Rule as SpellingRule
from phonodrill.endings.rules import possible_bases
from phonodrill.endings.sounds import written_sound
from phonodrill.endings.suffix import SUFFIX_OF
from phonodrill.endings.table import row_of
from phonodrill.graphemes.correspondence import Kind as CorrespondenceKind
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.lesson.candidates import Candidate, Vocabulary
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import RULE
from phonodrill.lesson.reasons import in_style
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Point, Rule, WatchOut
from phonodrill.lesson.words import Words
from phonodrill.reading.letter_places import Place, Where, habit_of
from phonodrill.selection import Query

MOST_WATCH_OUTS = 6
MANY = 1000
SCRIPTS = {
    Kind.ENDINGS: "Say the rule, write the base, add the ending, read the word together.",
    Kind.SPELLING: "Write the word, point to the letters of today, say their sound, read the word.",
    Kind.SOUND: "Say the word, find the sound in it, show which letters spell it here.",
    Kind.CONTRAST: "Say both sounds slowly and feel the mouth; then read the words.",
}


def compose_rule(
    context: Context,
    vocabulary: Vocabulary,
    words: Words,
    minutes: int,
    watch: tuple[WatchOut, ...],
) -> Rule:
    """Write the rule out."""
    points = tuple(
        Point(
            candidate.condition,
            _says(candidate, context),
            candidate.word,
            candidate.base if candidate.ending else "",
            sound_in(candidate, context),
        )
        for candidate in (vocabulary.words[word] for word in words.rule)
    )
    title = f"Rule: {context.focus.title}"
    return Rule(RULE, minutes, title, SCRIPTS[context.focus.kind], points, watch)


def sound_in(candidate: Candidate, context: Context) -> str:
    """Write what the focus says in a word, between slashes; nothing for a task."""
    if candidate.ending:
        return written_sound(candidate.sound, context.style)
    if context.focus.kind is Kind.TASK:
        return ""
    return _between_slashes(candidate.sound, context)


def _between_slashes(sounds: str, context: Context) -> str:
    return f"/{write_sounds(sounds, context.style)}/"


def row_for(candidate: Candidate, context: Context) -> SpellingRule | None:
    """Find the row of the rule table that a word with an ending follows."""
    return row_of(candidate.ending, context.lexicon) if candidate.ending else None


def _says(candidate: Candidate, context: Context) -> str:
    row = row_for(candidate, context)
    if row:
        return row.says
    if context.focus.kind is Kind.CONTRAST:
        return f"{sound_in(candidate, context)}, spelled {candidate.spelling} in {candidate.word}."
    letters, is_one = name_letters(candidate.spelling), len(candidate.spelling) == 1
    says = f"The {letters} {'says' if is_one else 'say'} {sound_in(candidate, context)}."
    habit = habit_of(candidate.spelling, candidate.sound, context.lexicon)
    if habit is None:
        return says
    return f"{says} In words of one syllable {'it is' if is_one else 'they are'} {habit.where}."


def name_letters(spelling: str) -> str:
    """Name one letter or several."""
    return f"letter {spelling}" if len(spelling) == 1 else f"letters {spelling}"


def watch_outs_of(context: Context) -> tuple[WatchOut, ...]:
    """Find all there is to be ready for, past the gate, each word once."""
    found: Iterator[WatchOut] = iter(())
    if context.focus.kind is Kind.SPELLING:
        found = chain(_other_readings(context), _other_places(context))
    elif context.focus.kind is Kind.ENDINGS:
        found = _traps(context)
    by_word: dict[str, WatchOut] = {}
    for watch in found:
        by_word.setdefault(watch.word, watch)
    return tuple(by_word.values())


def _traps(context: Context) -> Iterator[WatchOut]:
    """Yield what only looks as the ending, or is added otherwise.

    Kinds take turns, short words first.
    """
    endings = context.focus.endings
    traps = find_lookalikes(
        context.lexicon,
        Query(context.request.band, frozenset(endings)),
        count=MANY,
        rng=random.Random(0),
        overlay=context.overlay,
        ways_of=context.ways_of,
        listings=context.listings,
    )
    kinds: dict[str, list[WatchOut]] = {}
    judged = context.lexicon.only_looks_inflected
    # What we judged ourselves is the plainest: hundred before seaweed.
    for trap in sorted(traps, key=lambda trap: (not judged(trap.word), len(trap.word), trap.word)):
        if trap.kind is TrapKind.NO_ENDING and _may_have_ending(trap.word, context):
            continue
        if any(word.endswith(endings) for word in trap.word.split(", ")):
            kinds.setdefault(trap.kind, []).append(
                WatchOut(trap.word, in_style(trap.why, context.style))
            )
    for turn in zip_longest(*kinds.values()):
        yield from filter(None, turn)


def _may_have_ending(word: str, context: Context) -> bool:
    """Whether somebody may well see a base in a word (*texted*), so that it is no plain trap."""
    if word.endswith("selves"):
        return True
    lexicon = context.lexicon
    bases = (
        lexicon.get(base)
        for ending in context.focus.endings
        for base in possible_bases(word, SUFFIX_OF[ending])
    )
    is_open = any(base and base.band and base.parts_of_speech for base in bases)
    return is_open and not lexicon.only_looks_inflected(word)


def draw_watch_outs(all_: tuple[WatchOut, ...], rng: random.Random) -> tuple[WatchOut, ...]:
    """Choose some of the first ones: these are the plainest."""
    first = all_[: 2 * MOST_WATCH_OUTS]
    picked = set(rng.sample(range(len(first)), min(MOST_WATCH_OUTS, len(first))))
    return tuple(watch for place, watch in enumerate(first) if place in picked)


def _other_readings(context: Context) -> Iterator[WatchOut]:
    """Yield known words in which the letters of the focus say something else."""
    pool = context.pool._replace(query=context.pool.query._replace(known=None))
    own = {row.correspondence for row in context.focus.rows}
    spellings = {found.spelling for found in own}
    for row in context.lexicon.correspondences():
        found = row.correspondence
        if found.spelling not in spellings or found in own or not found.sound or found.is_weak:
            continue
        if found.kind is CorrespondenceKind.ENDING or found.is_before_rr:
            continue
        if pool.find(found.example):
            sound = _between_slashes(found.sound, context)
            yield WatchOut(found.example, f"here {found.spelling} says {sound}")


def _other_places(context: Context) -> Iterator[WatchOut]:
    """Yield known words that break where the letters of the focus stand in nearly all words."""
    pool = context.pool._replace(query=context.pool.query._replace(known=None))
    for row in context.focus.rows:
        found = row.correspondence
        habit = habit_of(found.spelling, found.sound, context.lexicon)
        if habit is None:
            continue
        habit = habit.of_words(lambda word: pool.find(word) is not None)
        for place in habit.breaking:
            yield WatchOut(place.word, _why_breaking(place, habit.where, context))
        for place in habit.instead:
            yield WatchOut(place.word, _why_instead(place, habit.where, context))


def _why_breaking(place: Place, where: Where, context: Context) -> str:
    if where is Where.CLOSING and place.is_last:
        sound = _between_slashes(place.before_sound, context)
        return f"here {place.before} before {place.spelling} says {sound}"
    expected = Where.LAST if where is Where.CLOSING else where
    return f"here {place.spelling} is not {expected}"


def _why_instead(place: Place, where: Where, context: Context) -> str:
    sound = _between_slashes(place.sound, context)
    if where is Where.CLOSING:
        return f"here {sound} is spelled {place.spelling} after a short vowel"
    return f"here {place.spelling} before {place.after} says {sound}"
