"""A class year of lessons, as the benchmarks make it."""

from __future__ import annotations

from collections.abc import Sequence

from phonodrill import Lexicon
from phonodrill.lesson.compose import Prepared, make_lesson, prepare
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from phonodrill.tasks.history import History

REST = 10
YEAR = (
    *("sh", "ch", "th", "ck", "a_e", "i_e", "o_e", "s", "ee", "ea", "ai", "ay", "ed", "oa", "igh"),
    *("s,es", "ar", "or", "es,ies", "i:e", "/k/", "ing", "ou", "ow", "oi", "p:b", "oo", "aw", "er"),
    *("c=s", "wh", "ng", "segment", "sh:ch", "s,es,ies", "/f/"),
)


def make_year(days: int) -> list[Lesson]:
    """Make a lesson for each of so many days, the foci in turn, each word resting ten lessons."""
    lessons: list[Lesson] = []
    history = History(rest=REST)
    prepared: dict[str, Prepared] = {}
    with Lexicon() as lexicon:
        for day in range(days):
            request = Request(YEAR[day % len(YEAR)], seed=day)
            if request.focus not in prepared:
                prepared[request.focus] = prepare(lexicon, request)
            ready = prepared[request.focus]
            lesson = make_lesson(lexicon, request, history=history, prepared=ready)
            history = history._replace(sets=(*history.sets, words_of_lesson(lesson)))
            lessons.append(lesson)
    return lessons


def words_back_too_soon(lessons: Sequence[Lesson]) -> list[str]:
    """Return the words that came back within ten lessons without a note that says so."""
    found: list[str] = []
    for place, lesson in enumerate(lessons):
        before = frozenset[str]().union(
            *map(words_of_lesson, lessons[max(0, place - REST) : place])
        )
        if "recent lessons again" not in " ".join(lesson.notes):
            found += sorted(before & words_of_lesson(lesson))
    return found
