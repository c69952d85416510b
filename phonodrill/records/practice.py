"""What a lesson and a warm-up for a group start from: its next focus, and what it missed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.records.answer import Answer, Kind
from phonodrill.records.estimate import estimate
from phonodrill.records.next_focus import Pick, choose_next, rank
from phonodrill.records.review import review_words
from phonodrill.records.standing import THRESHOLDS, Thresholds, stand
from phonodrill.selection import Query, select
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import NO_HISTORY, History
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS, Task
from phonodrill.tasks.warmup import WarmUp, make_warmup

MOST_REVIEWED = 12
"""Missed words that a lesson or a warm-up takes up at once."""


class Oral(NamedTuple):
    """A task and a place to practice.

    Attributes:
        task: which task.
        at: where in the word.
    """

    task: Task
    at: Position


def next_pick(
    answers: Sequence[Answer], order: Sequence[str] = (), rule: Thresholds = THRESHOLDS
) -> Pick:
    """Return what to teach a group next.

    Raises:
        PhonodrillError: if the answers do not say it.
    """
    picks = choose_next(stand(answers, rule), rule, order)
    if not picks:
        what = "nothing that was asked is short of the mark" if answers else "nothing was asked yet"
        raise PhonodrillError(f"no focus to go on with: {what}", "--focus …, or a check first")
    if not picks[0].is_sure:
        raise PhonodrillError(
            "too few answers to say what comes next",
            f"phonodrill check make --focus {picks[0].focus}, or --focus …",
        )
    return picks[0]


def missed_words(answers: Sequence[Answer], today: str) -> tuple[str, ...]:
    """Return the words a group missed that are due, the most needed first."""
    return tuple(due.word for due in review_words(answers, today)[:MOST_REVIEWED])


def oral_for(answers: Sequence[Answer], rule: Thresholds = THRESHOLDS) -> Oral | None:
    """Return the task a group is weakest in, at its weakest place; None if none was asked."""
    standings = stand(answers, rule)
    estimates = estimate(standings)
    tasks = {one.skill for one in standings if one.skill.kind is Kind.TASK}
    weak = rank(tasks, estimates, rule) or sorted(tasks)
    if not weak or weak[0].name not in TASKS:
        return None
    about = [one for one in answers if weak[0] in one.asked.skills]
    task = TASKS[weak[0].name]
    places: dict[Position, list[bool]] = {}
    for one in about:
        for skill in one.asked.skills:
            if skill.kind is Kind.PLACE and skill.name in task.positions:
                places.setdefault(Position(skill.name), []).append(one.right)
    # One right and one wrong answer more, so that a single miss is not the weakest place.
    at = min(
        places,
        key=lambda place: ((sum(places[place]) + 1) / (len(places[place]) + 2), place),
        default=task.positions[0],
    )
    return Oral(task, at)


def make_warmup_of_missed(
    lexicon: Lexicon,
    task: Task,
    at: Position,
    query: Query,
    *,
    missed: Sequence[str],
    count: int,
    seed: int,
    level: Level | None = None,
    history: History = NO_HISTORY,
    overlay: Overlay = NO_OVERLAY,
    keep: Callable[[Item], bool] = lambda _: True,
) -> WarmUp:
    """Make a warm-up from missed words first, then from any.

    Args:
        lexicon: the open lexicon.
        task: what is done with the words.
        at: where in the word.
        query: which words may be used.
        missed: words the group missed.
        count: how many items are wanted.
        seed: the same seed gives the same set.
        level: how hard the items may be among their kind; None: any.
        history: earlier sets, whose words rest; missed words do not.
        overlay: a teacher's own words.
        keep: says whether an item belongs in the set.
    """
    make = partial(make_warmup, lexicon, task, at, seed=seed, level=level, overlay=overlay)
    pool = select(lexicon, query, None, overlay)
    words = tuple(word for word in missed if pool.find(word))
    again = make(query._replace(words=words), count=count, keep=keep).items if words else ()
    used = frozenset[str]().union(*(item.words for item in again))
    left = count - len(again)
    others = make(
        query,
        count=left,
        history=history,
        keep=lambda item: keep(item) and used.isdisjoint(item.words),
    )
    items = sorted(
        (*again, *others.items), key=lambda item: (item.difficulty, item.stimulus, item.answer)
    )
    return others._replace(items=tuple(items), wanted=count)
