"""Make lessons over foci, bands, minutes, seeds and what was taught, and check each."""

from __future__ import annotations

import random
import time
from collections.abc import Callable, Iterator
from itertools import count
from typing import Any, NamedTuple

from phonodrill import Lexicon
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.request import Request
from phonodrill.overlay import NO_OVERLAY
from phonodrill.services.lesson import Lessons, Wish
from phonodrill.tasks.registry import TASKS
from tests.soak.lesson_checker import faults
from tests.soak.tally import Tally

ENDINGS = ("s", "es", "es,ies", "ies", "ves", "ed", "ing", "ed,ing", "er", "est", "s,es,ies", "y")
SPELLINGS = ("sh", "ch", "th", "ck", "ai", "oa", "ee", "igh", "a_e", "i_e", "c=s", "ar", "or", "st")
SOUNDS = ("/k/", "/s/", "/m/", "/sh/", "i:e", "sh:ch", "p:b", "a:u", "f:v")
FOCI = (*ENDINGS, *SPELLINGS, *SOUNDS, *TASKS)
TAUGHT = (
    *("s, a, t, p, i, n", "m, d, g, o, c=k, k", "ck, e, u, r", "h, b, f, l", "ll, ss, ff"),
    *("sh, ch, th, ng, nk", "a_e, i_e, o_e", "ee, ea, ai, ay, oa", "word: the to she he was"),
)
OF_A_GROUP = 10
"""Lessons on one focus, band and taught list before the next."""


class Kind(NamedTuple):
    """What a group of lessons shares."""

    focus: str
    band: int
    taught: tuple[str, ...]


def kinds(seed: int) -> Iterator[Kind]:
    """Yield kinds of lessons without end: every focus in turn, the rest by chance."""
    rng = random.Random(seed)
    while True:
        for focus in rng.sample(FOCI, len(FOCI)):
            steps = rng.choice((0, 0, 6, 8, len(TAUGHT)))
            yield Kind(focus, rng.choice((1, 2, 3)), TAUGHT[:steps])


def lessons(lexicon: Lexicon, seed: int) -> Iterator[tuple[Kind, dict[str, Any] | None]]:
    """Make lessons without end; None where a focus has too few words, which is said so."""
    rng = random.Random(seed)
    maker = Lessons()
    for kind in kinds(seed):
        for _ in count():
            minutes = rng.randint(8, 60)
            request = Request(
                kind.focus, kind.band, minutes, rng.randrange(10**6), 1, "arpabet", kind.taught
            )
            try:
                made = maker.make(lexicon, Wish(request, rng.choice((1, 1, 1, 5))), NO_OVERLAY)
            except PhonodrillError:
                yield kind, None
                break
            for read in made.reads:
                yield kind, as_data(read.lesson)
            if rng.random() < 1 / OF_A_GROUP:
                break


def soak_lessons(
    lexicon: Lexicon, tally: Tally, wanted: int, report: Callable[[str], None]
) -> None:
    """Make and check so many lessons."""
    wall, processor = time.perf_counter(), time.process_time()
    made = 0
    for kind, lesson in lessons(lexicon, tally.seed):
        if made == wanted:
            break
        if lesson is None:
            tally.draws["too few words for the focus, as it said"] += 1
            continue
        made += 1
        for name in _names(kind, lesson):
            tally.draws[name] += 1
        for fault in faults(lesson):
            report(fault)
            tally.note(
                f"{'unfit' if 'unfit' in fault else 'wrong'}: {fault}", str(lesson["request"])
            )
        if made % 500 == 0:
            report(f"{made} lessons, {dict(tally.faults)}")
    tally.wall += time.perf_counter() - wall
    tally.processor += time.process_time() - processor


def _names(kind: Kind, lesson: dict[str, Any]) -> tuple[str, ...]:
    minutes = lesson["request"]["minutes"]
    length = "8-15" if minutes <= 15 else "16-30" if minutes <= 30 else "31-60"
    return (
        "all",
        f"focus on {lesson['kind']}",
        f"band {kind.band}",
        f"minutes {length}",
        "with a taught list" if kind.taught else "without a taught list",
    )
