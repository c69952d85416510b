"""The items of a check, each with what it asks for.

A check of a lesson's focus asks as the quick check of the lesson does, with other
words; of a task it takes the items of the task, spread over places and levels.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain, zip_longest

from phonodrill.lesson import plan
from phonodrill.lesson.candidates import FIRST, INSIDE, LAST, Candidate
from phonodrill.lesson.checking import FIND, SAY, SPELL, ask_about, ways_to_ask
from phonodrill.lesson.compose import prepare
from phonodrill.lesson.focus import Kind as FocusKind
from phonodrill.lesson.plan import QUICK_CHECK, Part
from phonodrill.lesson.request import Context, Request, open_context
from phonodrill.lesson.rule_part import row_for
from phonodrill.lesson.task_part import what_it_shows
from phonodrill.lesson.words import draw_words
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.records.answer import Asked, Kind, Skill
from phonodrill.selection import Query
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.places import NUCLEI, Position
from phonodrill.tasks import script
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS, Task
from phonodrill.tasks.warmup import make_warmup
from phonodrill.taught.tokens import write_whole_token

PER_PLACE = 2
"""Items of a task that are asked at one place: fewer would say little about it."""
ONSET_CLUSTER, CODA_CLUSTER, NO_CLUSTER = "onset cluster", "coda cluster", "no cluster"
_BEGIN = frozenset({Position.FIRST, Position.ONSET, Position.ONSET2})
_END = frozenset({Position.LAST, Position.CODA1})


def make_items(
    lexicon: Lexicon,
    request: Request,
    count: int = QUICK_CHECK,
    overlay: Overlay = NO_OVERLAY,
    avoid: frozenset[str] = frozenset(),
) -> tuple[Asked, ...]:
    """Make the items of a check.

    Args:
        lexicon: the open lexicon.
        request: what the check is about; ``seed`` makes the same check again, ``minutes``
            and ``day`` are not looked at.
        count: how many items are wanted.
        overlay: a teacher's own words.
        avoid: words asked not long ago; they come back only where others are lacking.

    Returns:
        Up to ``count`` items.

    Raises:
        PhonodrillError: if the focus cannot be read or too few words fit it.

    >>> with Lexicon() as lexicon:
    ...     items = make_items(lexicon, Request("es,ies"), 3)
    >>> [item.how for item in items]
    ['spell with the ending', 'say the ending', 'find the base']
    """
    context = open_context(lexicon, request, overlay)
    if context.focus.kind is FocusKind.TASK:
        return tuple(_of_task(context, count, avoid))
    vocabulary = prepare(lexicon, request, overlay).vocabulary
    parts = (Part(plan.CHECK, 0, count),)
    words = draw_words(context, vocabulary, parts, avoid, _chance(context)).check
    return tuple(_about_words([vocabulary.words[word] for word in words], context))


def _chance(context: Context) -> random.Random:
    # A text as seed is stable between versions of Python and runs.
    return random.Random(f"check {context.request.seed} {context.focus.text}")


def _about_words(candidates: Iterable[Candidate], context: Context) -> Iterator[Asked]:
    """Ask of each word in the way, and for the skill, that was asked least so far."""
    asked: Counter[str | Skill] = Counter()
    for candidate in candidates:
        ways = {
            how: tuple(_skills_of_word(how, candidate, context))
            for how in ways_to_ask(context.focus.kind)
        }
        how = min(ways, key=lambda how: asked[how] + sum(asked[skill] for skill in ways[how]))
        asked.update((how, *ways[how]))
        yield Asked(*ask_about(how, candidate, context), ways[how])


def _skills_of_word(how: str, candidate: Candidate, context: Context) -> Iterator[Skill]:
    if candidate.ending:
        rule = row_for(candidate, context)
        if rule and how in (SPELL, FIND):
            yield Skill(Kind.CONDITION, rule.name)
        if how == SAY:
            yield Skill(Kind.ENDING_SOUND, candidate.sound)
        return
    for row in context.focus.rows:
        found = row.correspondence
        if (found.spelling, found.sound) == (candidate.spelling, candidate.sound):
            yield Skill(Kind.CORRESPONDENCE, write_whole_token(row))
    place = candidate.condition.removeprefix(candidate.spelling).strip()
    if place in (FIRST, INSIDE, LAST):
        yield Skill(Kind.PLACE, place)
    entry = context.lexicon.get(candidate.word)
    if entry:
        sounds = entry.usable_pronunciations[0].sounds
        yield from _clusters(sounds, starts=True, ends=True)


def _clusters(sounds: str, *, starts: bool, ends: bool) -> Iterator[Skill]:
    """Name the clusters at the ends of a word that are looked at; or that there are none."""
    has_onset = starts and _is_cluster(sounds[:2])
    has_coda = ends and _is_cluster(sounds[-2:])
    if has_onset:
        yield Skill(Kind.CLUSTER, ONSET_CLUSTER)
    if has_coda:
        yield Skill(Kind.CLUSTER, CODA_CLUSTER)
    if not has_onset and not has_coda:
        yield Skill(Kind.CLUSTER, NO_CLUSTER)


def _is_cluster(pair: str) -> bool:
    return len(pair) > 1 and NUCLEI.isdisjoint(pair)


def _of_task(context: Context, count: int, avoid: frozenset[str]) -> list[Asked]:
    """Ask some items at each of several places; another seed begins with another place."""
    task = TASKS[context.focus.task]
    rng = _chance(context)
    start = rng.randrange(len(task.positions))
    places = (*task.positions[start:], *task.positions[:start])
    used: set[str] = set()
    asked: list[Asked] = []
    for resting in (avoid, frozenset[str]()):
        for at in places:
            wanted = min(PER_PLACE, count - len(asked))
            for item in _at_place(task, at, context, wanted, resting | used, rng):
                used |= item.words
                asked.append(about_item(item, context.style))
    return asked


def _at_place(
    task: Task,
    at: Position,
    context: Context,
    count: int,
    resting: frozenset[str],
    rng: random.Random,
) -> Iterable[Item]:
    """Draw items of one place, of several levels where there are."""
    if not count:
        return ()
    made = make_warmup(
        context.lexicon,
        task,
        at,
        Query(context.request.band),
        count=2 * len(Level) * count,
        seed=rng.randrange(1_000_000),
        overlay=context.overlay,
        keep=lambda item: item.band <= context.request.band and resting.isdisjoint(item.words),
    )
    start = rng.randrange(len(Level))
    order = [*Level][start:] + [*Level][:start]
    levels = ([item for item in made.items if item.level is level] for level in order)
    taken = filter(None, chain.from_iterable(zip_longest(*levels)))
    return tuple(taken)[:count]


def about_item(item: Item, style: Notation) -> Asked:
    """Write an item of a phonemic task out, with what it asks for."""
    phrase = script.say(item, style)
    said = max(item.stimulus_said, item.answer_said, key=lambda said: len(said.sounds))
    skills = (
        Skill(Kind.TASK, item.task),
        Skill(Kind.PLACE, str(item.at)),
        Skill(Kind.LEVEL, str(item.level)),
        *_clusters(said.sounds, starts=item.at not in _END, ends=item.at not in _BEGIN),
    )
    word = item.stimulus or item.answer or item.choices[0].word
    return Asked(phrase.title, phrase.ask, word, phrase.answer, what_it_shows(item), skills)
