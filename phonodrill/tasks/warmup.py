"""An oral warm-up: a varied set of items of one task, easy to hard."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace

from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import HIGHEST_KNOWN_BAND, Query, select
from phonodrill.tasks.choose import choose
from phonodrill.tasks.item import Item, Position
from phonodrill.tasks.registry import Task


@dataclass(frozen=True, slots=True)
class WarmUp:
    """A set of items and how it was chosen.

    Attributes:
        task: name of the task.
        at: where in the word.
        items: easy to hard.
        query: what was asked for.
        count: how many were asked for.
        seed: makes the same set again.
        notes: one line each on what could not be met and what to loosen.
    """

    task: str
    at: Position
    items: tuple[Item, ...]
    query: Query
    count: int
    seed: int
    notes: tuple[str, ...]


def make_warmup(
    lexicon: Lexicon, task: Task, at: Position, query: Query, *, count: int, seed: int
) -> WarmUp:
    """Make a warm-up.

    Args:
        lexicon: the open lexicon.
        task: what is done with the words.
        at: where in the word.
        query: which words may be used.
        count: how many items are wanted.
        seed: the same seed gives the same set.
    """
    items = _items(lexicon, task, at, query, count, seed)
    notes = () if len(items) == count else (_shortage(lexicon, task, at, query, count, len(items)),)
    return WarmUp(task.name, at, tuple(items), query, count, seed, notes)


def _items(
    lexicon: Lexicon, task: Task, at: Position, query: Query, count: int, seed: int
) -> list[Item]:
    pool = select(lexicon, query)
    return choose(task.candidates(pool, query, at), count, random.Random(seed))


def _shortage(
    lexicon: Lexicon, task: Task, at: Position, query: Query, count: int, got: int
) -> str:
    """Say how many there are, and how many more each loosened constraint gives."""
    offers = [
        f"{change} ({len(more)})"
        for change, looser in _looser(query)
        if len(more := _items(lexicon, task, at, looser, count, 0)) > got
    ]
    plural = "item holds" if got == 1 else "items hold"
    message = f"only {got} of {count} {plural} under these constraints"
    return f"{message}; for more: {', or '.join(offers)}" if offers else message


def _looser(query: Query) -> Iterator[tuple[str, Query]]:
    if query.band < HIGHEST_KNOWN_BAND:
        yield f"--band {query.band + 1}", replace(query, band=query.band + 1)
    if query.sound:
        yield "no --sound", replace(query, sound="")
    if query.endings:
        yield "no --ending", replace(query, endings=frozenset())
    if query.words:
        yield "no --words", replace(query, words=())
