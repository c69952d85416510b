"""An oral warm-up: a varied set of items of one task, easy to hard."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from itertools import islice
from typing import NamedTuple

from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import HIGHEST_KNOWN_BAND, Pool, Query, select
from phonodrill.tasks.choose import choose
from phonodrill.tasks.item import Item, Position
from phonodrill.tasks.registry import Task

DRAWN_AT_LEAST = 60
DRAWN_PER_ITEM = 8
"""How many candidates are looked at for each item wanted: enough for a varied set."""


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
    """

    task: str
    at: Position
    items: tuple[Item, ...]
    query: Query
    wanted: int
    seed: int
    notes: tuple[str, ...]


def make_warmup(
    lexicon: Lexicon,
    task: Task,
    at: Position,
    query: Query,
    *,
    count: int,
    seed: int,
    overlay: Overlay = NO_OVERLAY,
    keep: Callable[[Item], bool] = lambda _: True,
) -> WarmUp:
    """Make a warm-up.

    Args:
        lexicon: the open lexicon.
        task: what is done with the words.
        at: where in the word.
        query: which words may be used.
        count: how many items are wanted.
        seed: the same seed gives the same set.
        overlay: a teacher's own words.
        keep: says whether an item belongs in the set, as a lesson's focus may ask.
    """
    rng = random.Random(seed)
    pool = select(lexicon, query, rng, overlay)
    fitting = filter(keep, task.candidates(pool, query, at))
    items = choose(islice(fitting, DRAWN_AT_LEAST + DRAWN_PER_ITEM * count), count, rng)
    notes = () if len(items) == count else (_shortage(pool, task, at, count, items, keep),)
    return WarmUp(task.name, at, tuple(items), query, count, seed, notes)


def _shortage(
    pool: Pool,
    task: Task,
    at: Position,
    count: int,
    items: Sequence[Item],
    keep: Callable[[Item], bool],
) -> str:
    """Say how many there are, and the first constraint that gives more when loosened."""
    got = len(items)
    plural = "item holds" if got == 1 else "items hold"
    message = f"only {got} of {count} {plural} under these constraints"
    for change, looser in _looser(pool.query):
        candidates = task.candidates(pool._replace(query=looser), looser, at)
        # Without an ending there is none to keep.
        wanted = filter(keep, candidates) if looser.endings else candidates
        if _gives_more(wanted, got):
            return f"{message}; for more: {change}"
    return message


def _gives_more(items: Iterator[Item], got: int) -> bool:
    """Whether there are more different answers than ``got``; looks no further."""
    answers: set[str] = set()
    for item in items:
        answers.add(item.answer)
        if len(answers) > got:
            return True
    return False


def _looser(query: Query) -> Iterator[tuple[str, Query]]:
    if query.band < HIGHEST_KNOWN_BAND:
        yield f"--band {query.band + 1}", query._replace(band=query.band + 1)
    if query.sound:
        yield "no --sound", query._replace(sound="")
    if query.endings:
        yield "no --ending", query._replace(endings=frozenset())
    if query.words:
        yield "no --words", query._replace(words=())
