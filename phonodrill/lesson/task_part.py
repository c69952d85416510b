"""A lesson on a task: items to show it with, and fresh items for the quick check."""

from __future__ import annotations

import random
from typing import NamedTuple

from phonodrill.lesson.candidates import NO_WORDS, Vocabulary
from phonodrill.lesson.oral import (
    Drawn,
    compose_activities,
    draw_for,
    ideas_of_task,
    words_of_items,
)
from phonodrill.lesson.plan import CHECK, QUICK_CHECK, RULE
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Check, Point, Question, Rule
from phonodrill.sounds.places import Position
from phonodrill.tasks.history import NO_HISTORY, History
from phonodrill.tasks.item import Item
from phonodrill.tasks.phrases import SHOWS

SHOW = "Show each once, slowly, then do it together. No letters yet; then read the words of today."
ASK = (
    "One student at a time, two minutes each; no letters. Mark right or not yet. Give no help "
    "meanwhile."
)
BY_EAR = "by ear"
"""Items of the quick check that are said and answered aloud: no word is shown."""
EASIEST_OF = 3
"""Items drawn for one to show: the easiest of them is taken."""
_PLACES = {
    Position.FIRST: "first sound",
    Position.LAST: "last sound",
    Position.VOWEL: "vowel sound",
    Position.ONSET2: "second of two consonants",
    Position.CODA1: "consonant after the vowel",
    Position.SYLLABLE: "part",
    Position.ONSET: "beginning before the vowel",
    Position.RIME: "part from the vowel on",
    Position.EACH: "sound",
}
_PARTS = {
    Position.EACH: "single sounds",
    Position.ONSET: "beginning and rest",
    Position.SYLLABLE: "two parts",
}


class TaskItems(NamedTuple):
    """Items of the lesson's task, beside those of the warm-up.

    Attributes:
        shown: one a kind, to show the task with.
        asked: those of the quick check.
    """

    shown: tuple[Drawn, ...] = ()
    asked: tuple[Drawn, ...] = ()


NO_ITEMS = TaskItems()


def draw_task_items(
    context: Context,
    vocabulary: Vocabulary,
    warmup: tuple[Drawn, ...],
    barred: frozenset[str],
    history: History,
    rng: random.Random,
    *,
    has_check: bool,
) -> tuple[TaskItems, list[str]]:
    """Draw items of the kinds that the warm-up has, none of them said before.

    Args:
        context: what is asked for.
        vocabulary: the words there are.
        warmup: its items.
        barred: words of the other sections.
        history: earlier lessons, whose words rest.
        rng: the only source of chance.
        has_check: whether there is a quick check.

    Returns:
        The items, and a note on what is missing.
    """
    places = [one.at for one in warmup if one.task == context.focus.task]
    said = words_of_items(warmup)
    shown: tuple[Drawn, ...] = ()
    for at in places:
        used = said | words_of_items(shown)
        found = _draw(context, vocabulary, at, EASIEST_OF, used | barred, history, rng)
        easiest = (found or _draw(context, vocabulary, at, 1, used, NO_HISTORY, rng))[:1]
        shown += (Drawn(context.focus.task, at, easiest),) if easiest else ()
    said |= words_of_items(shown)
    if not has_check:
        return TaskItems(shown), []
    asked: dict[Position, tuple[Item, ...]] = dict.fromkeys(places, ())
    # First without the words of the other sections, then without those that rest, then any.
    for others, earlier in ((barred, history), (NO_WORDS, history), (NO_WORDS, NO_HISTORY)):
        for number, at in enumerate(places):
            missing = QUICK_CHECK - sum(map(len, asked.values()))
            share = -(-missing // (len(places) - number))
            used = said | others | {w for items in asked.values() for i in items for w in i.words}
            asked[at] += _draw(context, vocabulary, at, share, used, earlier, rng)
    drawn = tuple(Drawn(context.focus.task, at, items) for at, items in asked.items() if items)
    notes = []
    if sum(len(one.items) for one in drawn) < QUICK_CHECK:
        notes.append(f"quick check: {sum(len(one.items) for one in drawn)} of {QUICK_CHECK} items")
    if not history.resting.isdisjoint(words_of_items(drawn)):
        notes.append("quick check: words of recent lessons again")
    return TaskItems(shown, drawn), notes


def _draw(
    context: Context,
    vocabulary: Vocabulary,
    at: Position,
    count: int,
    barred: frozenset[str],
    history: History,
    rng: random.Random,
) -> tuple[Item, ...]:
    if count < 1:
        return ()
    idea = next(idea for idea in ideas_of_task(context, vocabulary, rng) if idea.at is at)
    return draw_for(context, idea, count, history, barred, rng)


def other_items(
    context: Context,
    vocabulary: Vocabulary,
    drawn: tuple[Drawn, ...],
    old: str,
    barred: frozenset[str],
    rng: random.Random,
) -> tuple[Drawn, ...]:
    """Take other items of the same kind for those that say a word.

    Args:
        context: what is asked for.
        vocabulary: the words there are.
        drawn: the items there are.
        old: the word that must not be said.
        barred: other words of the lesson.
        rng: the only source of chance.
    """
    changed = []
    for one in drawn:
        items = tuple(item for item in one.items if old not in item.words)
        used = barred | {old}
        missing = len(one.items) - len(items)
        items += _draw(context, vocabulary, one.at, missing, used, NO_HISTORY, rng)
        if items:
            changed.append(one._replace(items=items))
    return tuple(changed)


def compose_task_rule(context: Context, items: TaskItems, minutes: int) -> Rule:
    """Show the task, one worked example a kind."""
    activities = compose_activities(items.shown, context.style)
    points = tuple(
        Point(activity.title, oral.correction, _word(item), "", "")
        for one, activity in zip(items.shown, activities, strict=True)
        for item, oral in zip(one.items, activity.items, strict=True)
    )
    return Rule(RULE, minutes, f"Show how: {context.focus.title}", SHOW, points, (), activities)


def compose_task_check(context: Context, items: TaskItems, minutes: int) -> Check:
    """Ask items of the task that nobody has heard today."""
    activities = compose_activities(items.asked, context.style)
    questions = tuple(
        Question(BY_EAR, oral.say, _word(item), oral.answer_line, what_it_shows(item))
        for one, activity in zip(items.asked, activities, strict=True)
        for item, oral in zip(one.items, activity.items, strict=True)
    )
    return Check(CHECK, minutes, "Quick check", ASK, questions, activities)


def what_it_shows(item: Item) -> str:
    """Say what a right answer shows."""
    bare = _PLACES[item.at]
    article = "a" if item.at is Position.SYLLABLE else "the"
    if item.task == "add":
        article = "a"
    place = f"{article} {bare}"
    return SHOWS[item.task].format(place=place, bare=bare, parts=_PARTS.get(item.at, ""))


def _word(item: Item) -> str:
    """Return the word an item is about: the one said, else the one heard or compared."""
    return item.stimulus or item.answer or item.choices[0].word
