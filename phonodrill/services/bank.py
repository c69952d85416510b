"""Every item of a task."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from phonodrill.errors import PhonodrillError
from phonodrill.selection import Pool, Query
from phonodrill.sounds.places import Position
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS, Task


def every_item(kinds: Iterable[tuple[Task, Position]], pool: Pool, query: Query) -> Iterator[Item]:
    """Yield every item of some kinds, one kind after the other.

    Args:
        kinds: tasks, each with a place.
        pool: the words that may be used.
        query: what is wanted.
    """
    for task, place in kinds:
        yield from task.candidates(pool, query, place)


def kinds_of(tasks: str, at: Position | None, *, made_up: bool) -> list[tuple[Task, Position]]:
    """Read which tasks and places are wanted.

    Raises:
        PhonodrillError: naming a task that is not known, or a place that none of them has.
    """
    names = [name.strip().lower() for name in tasks.split(",") if name.strip()] or list(TASKS)
    for name in names:
        if name not in TASKS:
            import difflib

            near = difflib.get_close_matches(name, TASKS, n=1, cutoff=0.3)
            raise PhonodrillError(
                f"unknown task {name!r}", f"--task {near[0] if near else ','.join(TASKS)}"
            )
    kinds = [
        (TASKS[name], place)
        for name in dict.fromkeys(names)
        if TASKS[name].made_up or not made_up
        for place in TASKS[name].positions
        if at in (None, place) and not (made_up and place is Position.SYLLABLE)
    ]
    if not kinds:
        raise PhonodrillError(
            f"--task {','.join(names)} has no such items", "another --at, or no --made-up"
        )
    return kinds
