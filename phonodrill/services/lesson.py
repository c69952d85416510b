"""Lessons as the command line and the page ask for them, with words swapped in."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.compose import Prepared, prepare
from phonodrill.lesson.days import MOST_DAYS, draw_days
from phonodrill.lesson.from_data import Read
from phonodrill.lesson.request import Request
from phonodrill.lesson.swap import swap_in
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.remembered import Remembered

KEPT_FOCI = 48
KEPT_LESSONS = 10
"""Lessons kept of each focus."""


class Swap(NamedTuple):
    """A word of a lesson, and the word to take instead; if empty, one is chosen."""

    old: str
    new: str = ""


class Wish(NamedTuple):
    """Which lessons are wanted.

    Attributes:
        request: what is asked for on the first day.
        days: how many lessons.
        swaps: words to swap, in this order.
    """

    request: Request
    days: int = 1
    swaps: tuple[Swap, ...] = ()


class Swapped(NamedTuple):
    """Lessons after words were swapped.

    Attributes:
        reads: the lessons, and what they were composed from.
        notes: one line each on what was put in.
    """

    reads: tuple[Read, ...]
    notes: tuple[str, ...] = ()


class _Focus(NamedTuple):
    prepared: Prepared
    lessons: Remembered[tuple[int, int, int, tuple[Swap, ...]], Swapped]


class Lessons:
    """Makes lessons and remembers the last ones; gathering the words of a focus is what costs."""

    def __init__(self) -> None:
        self._foci: Remembered[object, _Focus] = Remembered(KEPT_FOCI)

    def make(self, lexicon: Lexicon, wish: Wish, overlay: Overlay) -> Swapped:
        """Make lessons, or recall them.

        Args:
            lexicon: the open lexicon; always the same one.
            wish: which lessons.
            overlay: a teacher's own words.

        Raises:
            PhonodrillError: if the focus cannot be read, too few words fit it, the minutes
                or days are too few or too many, or a word cannot be swapped.
        """
        check_days(wish.days)
        asked = wish.request
        words = tuple(overlay.rules.values())
        key = (asked.focus, asked.band, asked.taught, asked.notation, words)
        focus = self._foci.recall(
            key, lambda: _Focus(prepare(lexicon, asked, overlay), Remembered(KEPT_LESSONS))
        )
        return _made(focus, wish)


def check_days(days: int) -> None:
    """Make sure that so many lessons can be made.

    Raises:
        PhonodrillError: if not.
    """
    if not 1 <= days <= MOST_DAYS:
        raise PhonodrillError(f"--days is {days}", f"1 to {MOST_DAYS}: --days 5")


def _made(focus: _Focus, wish: Wish) -> Swapped:
    """Make lessons of a focus; those before the last swap are remembered, too."""
    asked = wish.request
    key = (asked.minutes, asked.seed, wish.days, wish.swaps)

    def make() -> Swapped:
        if not wish.swaps:
            return Swapped(tuple(draw_days(focus.prepared, asked, wish.days)))
        *before, last = wish.swaps
        earlier = _made(focus, wish._replace(swaps=tuple(before)))
        swapped = swap_everywhere(earlier.reads, last)
        return swapped._replace(notes=(*earlier.notes, *swapped.notes))

    return focus.lessons.recall(key, make)


def swap_everywhere(reads: Sequence[Read], swap: Swap) -> Swapped:
    """Swap a word in each of several lessons that has it.

    Args:
        reads: the lessons.
        swap: which word, and the one to take instead.

    Raises:
        PhonodrillError: if no lesson has the word, or the other does not fit.
    """
    swapped: list[Read] = []
    problem: PhonodrillError | None = None
    put_in: list[str] = []
    for read in reads:
        try:
            changed, word = swap_in(read, swap.old, swap.new)
        except PhonodrillError as error:
            problem = problem or error
            swapped.append(read)
        else:
            swapped.append(changed)
            day = f"day {changed.lesson.request.day}: " if len(reads) > 1 else ""
            put_in.append(f"{day}{swap.old} → {word or 'other items'}")
    if problem and not put_in:
        raise problem
    return Swapped(tuple(swapped), tuple(put_in))
