"""The one table of tasks: a new task is a module and a line here."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.sounds.places import Position
from phonodrill.tasks.item import Item

if TYPE_CHECKING:
    from phonodrill.selection import Pool, Query


class Task(NamedTuple):
    """A phonemic task.

    Attributes:
        name: its name on the command line and in JSON, and that of its module.
        positions: where in the word it can be done; the first is the usual one.
        made_up: whether it can be done with made-up words.
    """

    name: str
    positions: tuple[Position, ...]
    made_up: bool = False

    def candidates(self, pool: Pool, query: Query, at: Position) -> Iterator[Item]:
        """Yield every item of a pool; the task's module is imported only now."""
        module = import_module(f"phonodrill.tasks.{self.name}")
        found: Iterator[Item] = module.candidates(pool, query, at)
        return found


def _places(names: str) -> tuple[Position, ...]:
    return tuple(map(Position, names.split()))


TASKS: Mapping[str, Task] = MappingProxyType(
    {
        task.name: task
        for task in (
            Task("isolate", _places("first last vowel onset2 coda1 syllable onset rime")),
            Task("identify", _places("first last vowel onset rime")),
            Task("categorize", _places("first last vowel onset rime")),
            Task("blend", _places("each onset syllable"), made_up=True),
            Task("segment", _places("each onset syllable"), made_up=True),
            Task("delete", _places("first last onset2 coda1 syllable onset")),
            Task("add", _places("first last onset2 coda1 syllable onset")),
            Task(
                "substitute",
                _places("first last vowel onset2 coda1 syllable onset rime"),
                made_up=True,
            ),
            Task("reverse", _places("each syllable")),
        )
    }
)
