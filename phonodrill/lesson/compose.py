"""Join the sections of a lesson: choose once, compose from the choice alone.

What is chosen (words, items, sentences) is kept apart from what follows from it
(rules, sounds, keys, answers), so that a lesson read from a file is composed
again from its choice and every answer compared.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Iterable
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lesson import plan
from phonodrill.lesson.building import compose_build, compose_list
from phonodrill.lesson.candidates import Vocabulary, gather, with_endings
from phonodrill.lesson.checking import compose_check, compose_next, traps_among
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.letters import compose_review
from phonodrill.lesson.lines import (
    compose_dictation,
    compose_sentences,
    draw_dictated,
    draw_sentences,
)
from phonodrill.lesson.oral import Drawn, compose_warmup, draw_oral
from phonodrill.lesson.plan import Part, plan_lesson
from phonodrill.lesson.request import Context, Request, open_context
from phonodrill.lesson.rule_part import compose_rule, draw_watch_outs, watch_outs_of
from phonodrill.lesson.sorting import compose_bases, compose_sort, has_two_groups
from phonodrill.lesson.task_part import (
    NO_ITEMS,
    TaskItems,
    compose_task_check,
    compose_task_rule,
    draw_task_items,
)
from phonodrill.lesson.tree import Lesson, Section, WatchOut
from phonodrill.lesson.words import Words, draw_words
from phonodrill.lexicon.entry import Sentence
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.tasks.history import NO_HISTORY, History

FEWEST_WORDS = 8
LEAST_OF_OTHER_PILES = 10
"""Words beside the largest pile that a sort by condition needs."""
"""Words a focus must have for a lesson."""


class Choice(NamedTuple):
    """Everything that was chosen for a lesson.

    Attributes:
        parts: the sections and their minutes.
        words: the words of each section.
        oral: the items of the warm-up.
        sentences: to read.
        dictated: the sentence to write, or empty.
        watch_outs: what to be ready for.
        traps: words of the check that only look inflected.
        notes: one line each on what was relaxed.
        task: for a focus on a task, items to show and to ask.
    """

    parts: tuple[Part, ...]
    words: Words
    oral: tuple[Drawn, ...] = ()
    sentences: tuple[Sentence, ...] = ()
    dictated: str = ""
    watch_outs: tuple[WatchOut, ...] = ()
    traps: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    task: TaskItems = NO_ITEMS


class Prepared(NamedTuple):
    """What several lessons on one focus share: days of a week need not gather words again."""

    context: Context
    vocabulary: Vocabulary
    watch_outs: tuple[WatchOut, ...]


def prepare(lexicon: Lexicon, request: Request, overlay: Overlay = NO_OVERLAY) -> Prepared:
    """Read the focus and gather its words.

    Raises:
        PhonodrillError: if the focus cannot be read or too few words fit it.
    """
    context = open_context(lexicon, request, overlay)
    vocabulary = gather(context)
    if len(vocabulary.words) < FEWEST_WORDS:
        more = "--band 3" if request.band < 3 else "another focus"  # noqa: PLR2004
        raise PhonodrillError(
            f"only {len(vocabulary.words)} words fit {context.focus.title}: too few for a lesson",
            f"more steps taught, {more}" if request.taught else more,
        )
    watch_outs = watch_outs_of(context)
    ready = Prepared(context, vocabulary, watch_outs)
    doubtful = _doubtful(ready)
    plain = {word: found for word, found in vocabulary.words.items() if word not in doubtful}
    if len(plain) >= FEWEST_WORDS:
        ready = ready._replace(vocabulary=vocabulary._replace(words=plain))
    return ready


def _doubtful(ready: Prepared) -> set[str]:
    """Return words of two bases (*doggies*): something to warn of, not to practice with."""
    ways_of = ready.context.ways_of
    return {watch.word for watch in ready.watch_outs if len(ways_of(watch.word)) > 1}


def with_words(ready: Prepared, words: Iterable[str]) -> Prepared:
    """Add words that a teacher names, if they fit the focus but were not among the first ones."""
    known = ready.vocabulary.words
    missing = frozenset(words) - known.keys() - _doubtful(ready)
    if not (missing and ready.context.focus.endings):
        return ready
    found = {candidate.word: candidate for candidate in with_endings(ready.context, missing)}
    return ready._replace(vocabulary=ready.vocabulary._replace(words={**known, **found}))


def make_lesson(
    lexicon: Lexicon,
    request: Request,
    *,
    history: History = NO_HISTORY,
    overlay: Overlay = NO_OVERLAY,
    prepared: Prepared | None = None,
) -> Lesson:
    """Plan and compose a lesson.

    Args:
        lexicon: the open lexicon.
        request: what is asked for.
        history: earlier lessons, whose words rest.
        overlay: a teacher's own words.
        prepared: from :func:`prepare` for the same focus, band and taught steps.

    Raises:
        PhonodrillError: if the focus cannot be read, too few words fit it, or the
            minutes are too few or too many.

    >>> with Lexicon() as lexicon:
    ...     lesson = make_lesson(lexicon, Request("es,ies", seed=3))
    >>> [section.name for section in lesson.sections][:4]
    ['warmup', 'review', 'rule', 'build']
    """
    ready = for_request(prepared or prepare(lexicon, request, overlay), request)
    return compose(ready, choose(ready, history))


def for_request(ready: Prepared, request: Request) -> Prepared:
    """Use what was prepared for another seed, day or number of minutes."""
    focus = ready.context.focus.text
    return ready._replace(context=ready.context._replace(request=request._replace(focus=focus)))


def choose(ready: Prepared, history: History) -> Choice:
    """Choose all that a lesson needs."""
    context, vocabulary, all_watch_outs = ready
    request = context.request
    # A text as seed is stable between versions of Python and runs.
    rng = random.Random(f"{request.seed} {request.day} {request.focus} {request.band}")
    parts = plan_lesson(request.minutes, context.focus.kind)
    notes = []
    if not _can_be_sorted(vocabulary):
        parts = _without_sort(parts)
        notes.append("no sort: the words of this focus make one pile")
    items = {part.name: part.items for part in parts}
    watch_outs = draw_watch_outs(all_watch_outs, rng)
    traps = traps_among(watch_outs, context) if context.focus.endings else ()
    shown = tuple(word for watch in watch_outs for word in watch.word.split(", "))
    words = draw_words(context, vocabulary, parts, history.resting, rng, shown, len(traps))
    notes += words.notes
    if words.sort and not has_two_groups(vocabulary, words):
        # Late in a series the words that are left may all go under one heading.
        parts, words = _without_sort(parts), words._replace(sort=())
        notes.append("no sort: the words left for it make one pile")
    oral, missing = draw_oral(context, vocabulary, items.get(plan.WARMUP, 0), history, rng)
    notes += missing
    wanted = items.get(plan.SENTENCES, 0)
    sentences, missing = draw_sentences(context, vocabulary, words, wanted, history.resting, rng)
    notes += missing
    spare = request.minutes - sum(part.minutes for part in parts)
    if spare:
        notes.append(f"{spare} of {request.minutes} minutes are left: no section should be longer")
    dictated = draw_dictated(context, vocabulary, words, sentences, rng)
    if plan.DICTATION in items and not dictated:
        notes.append("dictation: no sentence of the bank fits")
    task = NO_ITEMS
    if context.focus.kind is Kind.TASK:
        task, missing = draw_task_items(
            context, vocabulary, oral, words.every, history, rng, has_check=plan.CHECK in items
        )
        notes += missing
    empty = {
        plan.WARMUP: not oral,
        plan.SENTENCES: not sentences,
        plan.DICTATION: not (words.dictation or dictated),
        plan.CHECK: not (words.check or traps or task.asked),
        plan.BASES: not words.bases,
    }
    parts = tuple(part for part in parts if not empty.get(part.name))
    chosen = (parts, words, oral, sentences, dictated, watch_outs, traps, tuple(notes), task)
    return Choice(*chosen)


def _without_sort(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    return tuple(part for part in parts if part.name != plan.SORT)


def _can_be_sorted(vocabulary: Vocabulary) -> bool:
    """Whether a sort has two groups."""
    headings = {(found.spelling, found.sound) for found in vocabulary.words.values()}
    if len(headings) > 1 or vocabulary.rivals:
        return True
    # The other sections take words of the smaller pile, too.
    counts = Counter(found.condition for found in vocabulary.words.values())
    return sum(size for _, size in counts.most_common()[1:]) >= LEAST_OF_OTHER_PILES


def compose(ready: Prepared, choice: Choice) -> Lesson:
    """Compose a lesson from what was chosen."""
    context = ready.context
    sections = tuple(_composers(ready, choice)[part.name](part) for part in choice.parts)
    oral = sum(part.minutes for part in choice.parts if part.name == plan.WARMUP)
    title = f"Lesson: {context.focus.title}"
    return Lesson(title, str(context.focus.kind), context.request, oral, choice.notes, sections)


def _composers(ready: Prepared, choice: Choice) -> dict[str, Callable[[Part], Section]]:
    context, vocabulary, _ = ready
    words = choice.words
    has_check = any(part.name == plan.CHECK for part in choice.parts)
    if context.focus.kind is Kind.TASK:
        own: dict[str, Callable[[Part], Section]] = {
            plan.RULE: lambda p: compose_task_rule(context, choice.task, p.minutes),
            plan.CHECK: lambda p: compose_task_check(context, choice.task, p.minutes),
        }
    else:
        own = {
            plan.RULE: lambda p: compose_rule(
                context, vocabulary, words, p.minutes, choice.watch_outs
            ),
            plan.CHECK: lambda p: compose_check(
                context, vocabulary, words, choice.traps, p.minutes
            ),
        }
    return {
        **own,
        plan.WARMUP: lambda p: compose_warmup(choice.oral, p.minutes, context.style),
        plan.REVIEW: lambda p: compose_review(context, words, p.minutes, p.items),
        plan.BUILD: lambda p: compose_build(context, vocabulary, words, p.minutes),
        plan.LIST: lambda p: compose_list(context, vocabulary, words, p.minutes),
        plan.SENTENCES: lambda p: compose_sentences(context, choice.sentences, p.minutes),
        plan.SORT: lambda p: compose_sort(context, vocabulary, words, p.minutes),
        plan.BASES: lambda p: compose_bases(context, words, p.minutes),
        plan.DICTATION: lambda p: compose_dictation(context, words, choice.dictated, p.minutes),
        plan.NEXT: lambda _: compose_next(context, has_check=has_check),
    }
