"""Lessons on several days: no word again too soon, and the oral minutes counted."""

from __future__ import annotations

import re

from phonodrill.lesson.compose import Prepared, choose, compose, for_request, prepare
from phonodrill.lesson.from_data import Read
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.tasks.history import NO_HISTORY, History

MOST_DAYS = 20
RESTING_LESSONS = 10
"""For how many lessons a word rests unless asked otherwise."""
MOST_ORAL_MINUTES = 18 * 60
"""Work on sounds in all beyond which studies found less gain: 18 hours (Ehri, Nunes,
Willows, Schuster, Yaghoub-Zadeh & Shanahan 2001, *RRQ* 36, 250-287)."""
_ORAL = re.compile(r"\boral (\d+) min\b")


def make_days(
    lexicon: Lexicon,
    request: Request,
    days: int,
    *,
    history: History = NO_HISTORY,
    overlay: Overlay = NO_OVERLAY,
) -> list[Lesson]:
    """Make a lesson for each of several days on one focus.

    Args:
        lexicon: the open lexicon.
        request: what is asked for on the first day.
        days: how many.
        history: earlier lessons of the series.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: as :func:`phonodrill.lesson.compose.make_lesson`.
    """
    ready = prepare(lexicon, request, overlay)
    return [read.lesson for read in draw_days(ready, request, days, history)]


def draw_days(
    prepared: Prepared, request: Request, days: int, history: History = NO_HISTORY
) -> list[Read]:
    """Make lessons of what was prepared, and keep what they were composed from.

    Args:
        prepared: from :func:`phonodrill.lesson.compose.prepare` for the same focus, band,
            notation and taught steps.
        request: what is asked for on the first day.
        days: how many.
        history: earlier lessons of the series.

    Raises:
        PhonodrillError: if the minutes are too few or too many.
    """
    made: list[Read] = []
    minutes = oral_minutes(history)
    for day in range(request.day, request.day + days):
        ready = for_request(prepared, request._replace(day=day))
        choice = choose(ready, history)
        lesson = compose(ready, choice)
        minutes += lesson.oral_minutes
        if minutes > MOST_ORAL_MINUTES:
            note = (
                f"{minutes // 60} hours of oral work are planned in all; studies found 5 to 18 "
                "hours best"
            )
            lesson = lesson._replace(notes=(*lesson.notes, note))
        made.append(Read(lesson, ready, choice))
        history = history._replace(sets=(*history.sets, words_of_lesson(lesson)))
    return made


def oral_minutes(history: History) -> int:
    """Add up the oral minutes that the lines of a series name."""
    return sum(int(match[1]) for line in history.lines for match in _ORAL.finditer(line))


def describe(lesson: Lesson, date: str) -> str:
    """Write what stands before the words of a lesson in its series.

    Args:
        lesson: the lesson.
        date: the day, as ``2026-11-25``.
    """
    focus = lesson.request.focus.replace(":", "-")
    return f"{date} lesson {focus}, day {lesson.request.day}, oral {lesson.oral_minutes} min"
