"""Choose a varied set of items, easy ones first."""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping

from phonodrill.tasks.item import Item

ATTEMPTS = 20
"""Tries at a full set where words are scarce; the largest is kept."""


def choose(items: Iterable[Item], count: int, rng: random.Random) -> list[Item]:
    """Choose up to ``count`` items that differ as much as they can.

    No two share an answer, a stimulus or a base word, and no word is both
    asked and answered. The sounds they are about take turns, so that no sound
    comes up much oftener than another.

    Args:
        items: all candidates.
        count: how many are wanted.
        rng: the only source of chance.

    Returns:
        The chosen items, easy to hard.
    """
    by_sound: dict[str, list[Item]] = {}
    for item in items:
        by_sound.setdefault(item.sound.sounds, []).append(item)
    best: list[Item] = []
    for _ in range(ATTEMPTS):
        chosen = _draw(by_sound, count, rng)
        best = max(best, chosen, key=len)
        if len(best) == count:
            break
    return sorted(best, key=lambda item: (item.difficulty, item.stimulus, item.answer))


def _draw(by_sound: Mapping[str, list[Item]], count: int, rng: random.Random) -> list[Item]:
    piles = [rng.sample(pile, len(pile)) for _, pile in sorted(by_sound.items())]
    rng.shuffle(piles)
    chosen: list[Item] = []
    used: set[str] = set()
    while piles and len(chosen) < count:
        for pile in piles:
            picked = _next_unused(pile, used)
            if picked and len(chosen) < count:
                chosen.append(picked)
                used |= picked.words
        piles = [pile for pile in piles if pile]
    return chosen


def _next_unused(pile: list[Item], used: set[str]) -> Item | None:
    while pile:
        item = pile.pop()
        if used.isdisjoint(item.words):
            return item
    return None
