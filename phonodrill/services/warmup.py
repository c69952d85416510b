"""An oral warm-up, as the command line and the page ask for it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import NO_HISTORY, History
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS, Task
from phonodrill.tasks.warmup import WarmUp, make_warmup

USUAL_TASK = "delete"


class Wish(NamedTuple):
    """What is wanted.

    Attributes:
        query: which words may be used.
        size: how many items.
        seed: makes the same set again.
        task: name of the task.
        at: where in the word; None for the task's usual place.
        level: how hard among items of its kind; None for any.
        missed: words a group missed, to be taken first.
    """

    query: Query
    size: int
    seed: int
    task: str = USUAL_TASK
    at: Position | None = None
    level: Level | None = None
    missed: tuple[str, ...] = ()


def warm_up(
    lexicon: Lexicon, wish: Wish, overlay: Overlay = NO_OVERLAY, history: History = NO_HISTORY
) -> WarmUp:
    """Make a warm-up with at least one item.

    Args:
        lexicon: the open lexicon.
        wish: what is wanted.
        overlay: a teacher's own words.
        history: earlier sets, whose words rest.

    Raises:
        PhonodrillError: if options do not go together or no item fits.
    """
    task, place = task_and_place(wish.task, wish.at)
    query = wish.query
    if query.made_up:
        _check_made_up(task, place, has_words=bool(query.endings or query.words))
    # Taking a sound off a word in -s should leave its base, or another word in -s.
    is_about_ending = task.name == "delete" and bool(query.endings) and not query.words
    make = make_warmup
    if wish.missed:
        from phonodrill.records.practice import make_warmup_of_missed

        make = partial(make_warmup_of_missed, missed=wish.missed)
    result = make(
        lexicon,
        task,
        place,
        query,
        count=wish.size,
        seed=wish.seed,
        level=wish.level,
        history=history,
        overlay=overlay,
        keep=_leaves_ending(lexicon) if is_about_ending else lambda _: True,
    )
    if not result.items:
        message, _, offers = result.notes[0].partition("; for more: ")
        raise PhonodrillError(message, offers or "other constraints")
    return result


def task_and_place(name: str, at: Position | None) -> tuple[Task, Position]:
    """Return a task and where in the word it is done.

    Raises:
        PhonodrillError: if there is no such task, or it has no such place.
    """
    if name not in TASKS:
        raise PhonodrillError(f"no task {name!r}", f"--task {', '.join(TASKS)}")
    task = TASKS[name]
    place = at or task.positions[0]
    if place not in task.positions:
        raise PhonodrillError(
            f"--task {task.name} has no --at {place}",
            f"--at {', '.join(task.positions[:-1])} or {task.positions[-1]}",
        )
    return task, place


def _check_made_up(task: Task, place: Position, *, has_words: bool) -> None:
    if not task.made_up:
        can = " or ".join(f"--task {name}" for name, task in TASKS.items() if task.made_up)
        raise PhonodrillError(f"--task {task.name} takes no made-up words", can)
    if place is Position.SYLLABLE:
        raise PhonodrillError("made-up words have one syllable", f"--at {task.positions[0]}")
    if has_words:
        raise PhonodrillError("--made-up goes without --words and --ending", "one of the two")


def _leaves_ending(lexicon: Lexicon) -> Callable[[Item], bool]:
    """Make the test that an item for an ending leaves the base, or a word with that ending."""
    from phonodrill.endings.together import belongs_together

    def leaves(item: Item) -> bool:
        stimulus = lexicon.get(item.stimulus)
        answers = filter(None, map(lexicon.get, [item.answer, *item.also]))
        return stimulus is not None and any(belongs_together(stimulus, a) for a in answers)

    return leaves
