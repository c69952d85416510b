"""Which sections fit the minutes of a lesson, and how many items each has.

The shares are ours (common practice, no source). A short lesson leaves out whole
sections, the least needed first, rather than rushing through all of them.
"""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.focus import Kind

FEWEST_MINUTES = 8
MOST_MINUTES = 60
QUICK_CHECK = 8
"""Items of the quick check."""
WARMUP, REVIEW, RULE, BUILD, LIST, SENTENCES, SORT, BASES, DICTATION, CHECK, NEXT = SECTIONS = (
    *("warmup", "review", "rule", "build", "list", "sentences"),
    *("sort", "bases", "dictation", "check", "next"),
)
"""Names of the sections, in the order of a lesson."""


class Slot(NamedTuple):
    """How long a section may take.

    Attributes:
        name: which section.
        fewest, most: minutes.
        per_minute: items done in a minute.
        fewest_items: items it has at least.
    """

    name: str
    fewest: int
    most: int
    per_minute: float
    fewest_items: int


SLOTS = {
    slot.name: slot
    for slot in (
        Slot(WARMUP, 2, 6, 2, 4),
        Slot(REVIEW, 1, 4, 4, 4),
        Slot(RULE, 2, 6, 1, 1),
        Slot(BUILD, 2, 6, 1.5, 3),
        Slot(LIST, 1, 5, 6, 6),
        Slot(SENTENCES, 1, 6, 2, 2),
        Slot(SORT, 2, 8, 4, 8),
        Slot(BASES, 1, 4, 4, 4),
        Slot(DICTATION, 2, 7, 2, 4),
        Slot(CHECK, 2, 5, 4, QUICK_CHECK),
    )
}
MOST_NEEDED = (RULE, WARMUP, LIST, DICTATION, SENTENCES, BUILD, CHECK, SORT, REVIEW, BASES)
"""Sections, the one that a short lesson keeps longest first."""
_GROWING = (WARMUP, BUILD, SORT, DICTATION, SENTENCES, LIST, REVIEW, RULE, BASES, CHECK)
"""In which order the minutes that are left go to the sections."""


class Part(NamedTuple):
    """A section of the plan."""

    name: str
    minutes: int
    items: int


def plan_lesson(minutes: int, kind: Kind) -> tuple[Part, ...]:
    """Plan which sections a lesson has.

    Args:
        minutes: 8 to 60.
        kind: sort of focus; only endings have base words to find.

    Returns:
        The sections in order; their minutes add up to no more than ``minutes``.

    Raises:
        PhonodrillError: if the minutes are too few or too many.

    >>> [part.name for part in plan_lesson(8, Kind.ENDINGS)]
    ['warmup', 'rule', 'list', 'sentences', 'dictation', 'next']
    >>> sum(part.minutes for part in plan_lesson(25, Kind.ENDINGS))
    25
    """
    if not FEWEST_MINUTES <= minutes <= MOST_MINUTES:
        raise PhonodrillError(
            f"--minutes is {minutes}", f"{FEWEST_MINUTES} to {MOST_MINUTES}: --minutes 25"
        )
    given: dict[str, int] = {}
    left = minutes
    for name in MOST_NEEDED:
        fits = SLOTS[name].fewest <= left and (name != BASES or kind is Kind.ENDINGS)
        if fits:
            given[name] = SLOTS[name].fewest
            left -= SLOTS[name].fewest
    while left and any(given[name] < SLOTS[name].most for name in given):
        for name in _GROWING:
            if left and name in given and given[name] < SLOTS[name].most:
                given[name] += 1
                left -= 1
    parts = [
        Part(name, given[name], _items(SLOTS[name], given[name]))
        for name in SECTIONS
        if name in given
    ]
    return (*parts, Part(NEXT, 0, 0))


def _items(slot: Slot, minutes: int) -> int:
    if slot.name == CHECK:
        return QUICK_CHECK
    return max(slot.fewest_items, int(slot.per_minute * minutes))
