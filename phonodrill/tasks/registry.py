"""The one table of tasks: a new task is a module and a line here."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from phonodrill.selection import Pool, Query
from phonodrill.tasks import delete
from phonodrill.tasks.item import Item, Position

Candidates = Callable[[Pool, Query, Position], Iterator[Item]]


class Task(NamedTuple):
    """A phonemic task.

    Attributes:
        name: its name on the command line and in JSON.
        positions: where in the word it can be done.
        candidates: yields every item of a pool.
    """

    name: str
    positions: tuple[Position, ...]
    candidates: Candidates


TASKS: Mapping[str, Task] = MappingProxyType(
    {task.name: task for task in [Task(delete.NAME, delete.POSITIONS, delete.candidates)]}
)
