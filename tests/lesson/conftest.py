"""Lessons over foci, bands and seeds, each made once."""

from __future__ import annotations

import random

import pytest

from phonodrill import Lexicon
from phonodrill.lesson.compose import Prepared, make_lesson, prepare
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson

FOCI = ("es,ies", "s", "ed", "ing", "sh", "a_e", "c=s", "/k/", "i:e", "sh:ch", "delete", "segment")
UNTAUGHT = ("c=s", "ed", "es,ies")
"""Foci for which the words that these steps open are too few."""
TAUGHT = (
    *("s, a, t, p, i, n", "m, d, g, o, c=k, k", "ck, e, u, r", "h, b, f, l", "ll, ss, ff"),
    *("sh, ch, th, ng, nk", "a_e, i_e, o_e", "ee, ea, ai, ay, oa", "word: the to she he was"),
)


@pytest.fixture(scope="session")
def prepared(lexicon: Lexicon) -> dict[tuple[str, int, bool], Prepared]:
    return {
        (focus, band, taught): prepare(lexicon, Request(focus, band, taught=TAUGHT * taught))
        for focus in FOCI
        for band, taught in ((1, False), (3, False), (2, True))
        if not (taught and focus in UNTAUGHT)
    }


@pytest.fixture(scope="session")
def lessons(
    lexicon: Lexicon, prepared: dict[tuple[str, int, bool], Prepared]
) -> list[tuple[Lesson, Prepared]]:
    made = []
    rng = random.Random(20)
    for (focus, band, taught), ready in prepared.items():
        for seed in rng.sample(range(1000), 2):
            minutes = rng.choice((8, 15, 25, 40, 60))
            request = Request(focus, band, minutes, seed, taught=TAUGHT * taught)
            made.append((make_lesson(lexicon, request, prepared=ready), ready))
    return made
