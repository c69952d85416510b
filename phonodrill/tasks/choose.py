"""Choose a varied set of items, easy ones first."""

from __future__ import annotations

import random
from collections.abc import Iterable

from phonodrill.tasks.item import Item


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
        by_sound.setdefault(item.sound, []).append(item)
    piles = [by_sound[sound] for sound in sorted(by_sound)]
    for pile in piles:
        rng.shuffle(pile)
    rng.shuffle(piles)
    chosen: list[Item] = []
    used: set[str] = set()
    while piles and len(chosen) < count:
        for pile in piles:
            item = _next_unused(pile, used)
            if item and len(chosen) < count:
                chosen.append(item)
                used |= {item.stimulus, item.base, item.answer, *item.also}
        piles = [pile for pile in piles if pile]
    return sorted(chosen, key=lambda item: (item.difficulty, item.stimulus))


def _next_unused(pile: list[Item], used: set[str]) -> Item | None:
    while pile:
        item = pile.pop()
        if used.isdisjoint({item.stimulus, item.base, item.answer, *item.also}):
            return item
    return None
