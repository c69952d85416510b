"""Lessons of every kind of focus, each made once."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon
from phonodrill.lesson.days import make_days
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson

FOCI = ("es,ies", "sh", "k:g", "delete")


@pytest.fixture(scope="session")
def shown_lessons(lexicon: Lexicon) -> list[Lesson]:
    requests = [Request(focus, minutes=25, seed=seed) for seed, focus in enumerate(FOCI, 1)]
    return [lesson for request in requests for lesson in make_days(lexicon, request, 1)]
