"""An oral warm-up: a varied set of items of one task, easy to hard."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from itertools import groupby, islice
from typing import NamedTuple

from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import HIGHEST_KNOWN_BAND, Pool, Query, select
from phonodrill.sounds.places import Position
from phonodrill.tasks.choose import choose
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import NO_HISTORY, History
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import Task

DRAWN_AT_LEAST = 30
DRAWN_PER_ITEM = 5
"""How many candidates are looked at for each item wanted: enough for a varied set."""
MOST_OF_ONE_STIMULUS = 2
"""Candidates taken from one stimulus while looking: the others would share its words."""


class WarmUp(NamedTuple):
    """A set of items and how it was chosen.

    Attributes:
        task: name of the task.
        at: where in the word.
        items: easy to hard.
        query: what was asked for.
        wanted: how many items were asked for.
        seed: makes the same set again.
        notes: one line each on what could not be met and what to loosen.
        review: words of the set that an earlier set of the series had.
    """

    task: str
    at: Position
    items: tuple[Item, ...]
    query: Query
    wanted: int
    seed: int
    notes: tuple[str, ...]
    review: tuple[str, ...] = ()

    @property
    def words(self) -> frozenset[str]:
        """Every word of the set."""
        return frozenset(word for item in self.items for word in item.words)


class _Wanted(NamedTuple):
    """What is asked of single items, beside the words they are made of."""

    level: Level | None
    resting: frozenset[str]
    keep: Callable[[Item], bool]

    def filter(self, items: Iterator[Item]) -> Iterator[Item]:
        return (
            item
            for item in items
            if (self.level is None or item.level is self.level)
            and self.resting.isdisjoint(item.words)
            and self.keep(item)
        )


def make_warmup(
    lexicon: Lexicon,
    task: Task,
    at: Position,
    query: Query,
    *,
    count: int,
    seed: int,
    level: Level | None = None,
    history: History = NO_HISTORY,
    overlay: Overlay = NO_OVERLAY,
    keep: Callable[[Item], bool] = lambda _: True,
) -> WarmUp:
    """Make a warm-up.

    Args:
        lexicon: the open lexicon.
        task: what is done with the words.
        at: where in the word; one of the task's positions.
        query: which words may be used.
        count: how many items are wanted.
        seed: the same seed gives the same set.
        level: how hard the items may be among their kind; None: any.
        history: earlier sets, whose words rest.
        overlay: a teacher's own words.
        keep: says whether an item belongs in the set, as a lesson's focus may ask.
    """
    rng = random.Random(seed)
    pool = select(lexicon, query, rng, overlay)
    wanted = _Wanted(level, history.resting, keep)
    items = _draw(pool, task, at, count, wanted)
    got = len(items)
    notes = () if got == count else (_shortage(pool, task, at, wanted, (count, got)),)
    made = WarmUp(task.name, at, tuple(items), query, count, seed, notes)
    return made._replace(review=history.back(made.words))


def draw_items(
    pool: Pool,
    task: Task,
    at: Position,
    *,
    count: int,
    history: History = NO_HISTORY,
    keep: Callable[[Item], bool] = lambda _: True,
) -> list[Item]:
    """Draw items as :func:`make_warmup` does, without asking what else could be loosened.

    Args:
        pool: the words that may be used, with its source of chance.
        task: what is done with the words.
        at: where in the word.
        count: how many are wanted.
        history: earlier sets, whose words rest.
        keep: says whether an item belongs in the set.
    """
    return _draw(pool, task, at, count, _Wanted(None, history.resting, keep))


def _draw(pool: Pool, task: Task, at: Position, count: int, wanted: _Wanted) -> list[Item]:
    found = wanted.filter(_few_of_each(task.candidates(pool, pool.query, at)))
    looked_at = islice(found, DRAWN_AT_LEAST + DRAWN_PER_ITEM * count)
    return choose(looked_at, count, pool.rng or random.Random(0))


def _few_of_each(items: Iterator[Item]) -> Iterator[Item]:
    for _, group in groupby(items, key=lambda item: item.base):
        yield from islice(group, MOST_OF_ONE_STIMULUS)


def _shortage(
    pool: Pool, task: Task, at: Position, wanted: _Wanted, numbers: tuple[int, int]
) -> str:
    """Say how many there are, and the first constraint that gives more when loosened."""
    count, got = numbers
    plural = "item holds" if got == 1 else "items hold"
    message = f"only {got} of {count} {plural} under these constraints"
    for change, query, looser in _looser(pool.query, wanted):
        items = looser.filter(task.candidates(pool._replace(query=query), query, at))
        if _gives_more(items, got):
            return f"{message}; for more: {change}"
    return message


def _gives_more(items: Iterator[Item], got: int) -> bool:
    """Whether there are more different items than ``got``; looks no further."""
    found: set[str] = set()
    for item in items:
        found.add(item.answer or item.base)
        if len(found) > got:
            return True
    return False


def _looser(query: Query, wanted: _Wanted) -> Iterator[tuple[str, Query, _Wanted]]:
    if query.band < HIGHEST_KNOWN_BAND and not query.made_up:
        yield f"--band {query.band + 1}", query._replace(band=query.band + 1), wanted
    if wanted.level:
        yield "no --level", query, wanted._replace(level=None)
    if wanted.resting:
        yield "a smaller --rest", query, wanted._replace(resting=frozenset())
    if query.sound:
        yield "no --sound", query._replace(sound=""), wanted
    if query.endings:
        # Without an ending there is none to keep.
        plain = wanted._replace(keep=lambda _: True)
        yield "no --ending", query._replace(endings=frozenset()), plain
    if query.known:
        yield "more steps taught", query._replace(known=None), wanted
    if query.words:
        yield "no --words", query._replace(words=()), wanted
