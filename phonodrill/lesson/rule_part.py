"""The rule of a lesson: one example a condition, and what to watch out for."""

from __future__ import annotations

import random
from collections.abc import Iterator

from phonodrill.endings.lookalikes import find_lookalikes
from phonodrill.endings.rule import Rule as SpellingRule
from phonodrill.endings.table import row_of
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.graphemes.correspondence import Kind as CorrespondenceKind
from phonodrill.endings.sounds import written_sound
from phonodrill.lesson.candidates import Candidate, Vocabulary
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import RULE
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Point, Rule, WatchOut
from phonodrill.lesson.words import Words
from phonodrill.selection import Query
from phonodrill.tasks.phrases import PHRASES
from phonodrill.tasks.registry import TASKS

MOST_WATCH_OUTS = 6
SCRIPTS = {
    Kind.ENDINGS: "Say the rule, write the base, add the ending, read the word together.",
    Kind.SPELLING: "Write the word, point to the letters of today, say their sound, read the word.",
    Kind.SOUND: "Say the word, find the sound in it, show which letters spell it here.",
    Kind.CONTRAST: "Say both sounds slowly and feel the mouth; then read the words.",
    Kind.TASK: "Show the task once with a word of your own, then read the words together.",
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
    return f"/{write_sounds(candidate.sound, context.style)}/"


def row_for(candidate: Candidate, context: Context) -> SpellingRule | None:
    """Find the row of the rule table that a word with an ending follows."""
    return row_of(candidate.ending, context.lexicon) if candidate.ending else None


def _says(candidate: Candidate, context: Context) -> str:
    row = row_for(candidate, context)
    if row:
        return row.says
    if context.focus.kind is Kind.TASK:
        task = TASKS[context.focus.task]
        return PHRASES[task.name, task.positions[0]].title + "."
    return f"The letters {candidate.spelling} say {sound_in(candidate, context)}."


def find_watch_outs(context: Context, rng: random.Random) -> tuple[WatchOut, ...]:
    """Find what to be ready for, past the gate."""
    if context.focus.kind is Kind.ENDINGS:
        query = Query(context.request.band, frozenset(context.focus.endings))
        traps = find_lookalikes(context.lexicon, query, count=2, rng=rng, overlay=context.overlay)
        # One of each kind first: kinds come in blocks of two.
        first = [t for n, t in enumerate(traps) if n == 0 or traps[n - 1].kind is not t.kind]
        ordered = [*first, *(trap for trap in traps if trap not in first)]
        return tuple(WatchOut(t.word, t.why) for t in ordered[:MOST_WATCH_OUTS])
    if context.focus.kind is Kind.SPELLING:
        return tuple(_other_readings(context))[:MOST_WATCH_OUTS]
    return ()


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
            sound = f"/{write_sounds(found.sound, context.style)}/"
            yield WatchOut(found.example, f"here {found.spelling} says {sound}")
