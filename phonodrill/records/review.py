"""When a word comes back: soon after a miss, at growing gaps after success.

That practice spread over days lasts longer is well founded (Cepeda, Pashler, Vul, Wixted &
Rohrer 2006, *Psychological Bulletin* 132, 354-380). That the gaps should grow is common
practice, no source: Karpicke & Roediger (2007, *JEP: Learning, Memory, and Cognition* 33,
704-719) found no lasting gain over equal ones. The lengths are ours.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import date, timedelta
from typing import NamedTuple

from phonodrill.records.answer import Answer

LONG_AGO = "1900-01-01"
"""When something counts as answered that is dated after today: a clock that once ran ahead
must not keep a word away until then."""
GAPS = (1, 3, 7, 14, 30, 60)
"""Days until a word comes back: the first after a miss, one further after each success."""


class Due(NamedTuple):
    """A word that a group has to see again.

    Attributes:
        word: which word.
        day: from when on, ISO 8601.
        students: how many have to see it.
        misses: wrong answers to it, by all of them.
    """

    word: str
    day: str
    students: int
    misses: int


def next_day(days: Mapping[str, bool], gaps: tuple[int, ...] = GAPS) -> str:
    """Return from when on something is reviewed.

    Args:
        days: dates, ISO 8601, and whether all went well on that day; not empty.
        gaps: days until the first review, the second...

    >>> next_day({"2026-11-02": False})
    '2026-11-03'
    >>> next_day({"2026-11-02": False, "2026-11-03": True, "2026-11-06": True})
    '2026-11-13'
    """
    successes = 0
    for day in sorted(days):
        successes = successes + 1 if days[day] else 0
    gap = gaps[min(successes, len(gaps) - 1)]
    return (date.fromisoformat(max(days)) + timedelta(days=gap)).isoformat()


def review_words(answers: Iterable[Answer], today: str) -> tuple[Due, ...]:
    """Return the words a group missed that are due, the most needed first.

    A word that was never missed does not come back by itself.

    Args:
        answers: of the students of the group.
        today: ISO 8601.
    """
    days: dict[tuple[str, str], dict[str, bool]] = defaultdict(dict)
    misses: dict[tuple[str, str], int] = defaultdict(int)
    for answer in answers:
        key = answer.asked.word, answer.student
        day = answer.date if answer.date <= today else LONG_AGO
        days[key][day] = answer.right and days[key].get(day, True)
        misses[key] += not answer.right
    due: dict[str, Due] = {}
    for (word, student), own in sorted(days.items()):
        missed = misses[word, student]
        day = next_day(own)
        if missed and day <= today:
            known = due.get(word, Due(word, day, 0, 0))
            first = min(day, known.day)
            due[word] = Due(word, first, known.students + 1, known.misses + missed)
    return tuple(sorted(due.values(), key=lambda one: (-one.students, -one.misses, one.day, one)))
