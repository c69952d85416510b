"""Standing: the interval against published values, the rule, and what must never happen."""

from __future__ import annotations

import random
from math import isclose
from statistics import NormalDist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from phonodrill.errors import PhonodrillError
from phonodrill.records.standing import (
    THRESHOLDS,
    Thresholds,
    Verdict,
    judge,
    recent,
    stand,
    wilson,
)
from tests.records.makers import ES, IES, answer, answers

ORDER = (Verdict.NOT_YET, Verdict.ON_THE_WAY, Verdict.HAS)
COUNTS = st.integers(0, 60).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))


@pytest.mark.source(
    "Newcombe (1998), Statistics in Medicine 17, 857-872, table I, score method (values from "
    "memory; scipy.stats.binomtest gave the same)"
)
@pytest.mark.parametrize(
    ("right", "asked", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_published_values(right: int, asked: int, low: float, high: float) -> None:
    found = wilson(right, asked, z=1.959964)
    assert (round(found.low, 4), round(found.high, 4)) == (low, high)


@pytest.mark.source("Wilson (1927): the bounds are the shares that the score test just allows")
@settings(max_examples=50, deadline=None)
@given(COUNTS, st.floats(0.5, 0.99))
def test_bounds_solve_the_score_equation(counts: tuple[int, int], sure: float) -> None:
    right, asked = counts
    z = NormalDist().inv_cdf(0.5 + sure / 2)
    for bound in wilson(right, asked, z) if asked else ():
        distance = (right / asked - bound) ** 2
        assert isclose(distance, z * z * bound * (1 - bound) / asked, abs_tol=1e-9)


@settings(max_examples=50, deadline=None)
@given(COUNTS)
def test_the_interval_holds_the_share(counts: tuple[int, int]) -> None:
    right, asked = counts
    low, high = wilson(right, asked)
    assert 0 <= low <= high <= 1
    if asked:
        assert low - 1e-12 <= right / asked <= high + 1e-12


@settings(max_examples=50, deadline=None)
@given(COUNTS)
def test_more_right_answers_never_lower_the_verdict(counts: tuple[int, int]) -> None:
    right, asked = counts
    if right < asked and asked >= THRESHOLDS.fewest:
        assert ORDER.index(judge(right, asked)) <= ORDER.index(judge(right + 1, asked))


@pytest.mark.parametrize("asked", range(THRESHOLDS.fewest))
def test_a_handful_of_answers_gives_no_verdict(asked: int) -> None:
    assert {judge(right, asked) for right in range(asked + 1)} == {Verdict.TOO_FEW}


def test_the_rule_by_example() -> None:
    assert judge(8, 8) is Verdict.HAS
    assert judge(7, 8) is Verdict.ON_THE_WAY
    assert judge(2, 8) is Verdict.NOT_YET
    assert judge(2, 8, Thresholds(fewest=9)) is Verdict.TOO_FEW
    assert judge(6, 8, Thresholds(has=0.4, lacks=0.3)) is Verdict.HAS


@settings(max_examples=50, deadline=None)
@given(st.randoms(use_true_random=False))
def test_the_order_of_the_answers_does_not_matter(rng: random.Random) -> None:
    listed = [
        answer(student, skill, rng.random() < 0.6, f"2026-11-{day:02}")
        for student in "AB"
        for skill in (ES, IES)
        for day in range(1, 9)
        for _ in range(4)
    ]
    before = stand(listed)
    rng.shuffle(listed)
    assert stand(listed) == before


def test_only_recent_days_count() -> None:
    old = answers("A", ES, 0, 20, "2026-09-01")
    new = answers("A", ES, 10, 10, "2026-11-02") + answers("A", ES, 10, 10, "2026-11-09")
    (one,) = stand(old + new)
    assert (one.right, one.asked, one.verdict) == (20, 20, Verdict.HAS)
    (all_,) = stand(old + new, Thresholds(window=40))
    assert (all_.right, all_.asked) == (20, 40)


def test_a_day_counts_whole() -> None:
    assert len(recent({"2026-11-02": [True] * 30, "2026-11-09": [False] * 19}, 20)) == 49


@pytest.mark.parametrize(
    "rule",
    [
        Thresholds(has=0.4, lacks=0.6),
        Thresholds(has=1.0),
        Thresholds(fewest=0),
        Thresholds(window=3),
        Thresholds(z=0.0),
    ],
)
def test_a_rule_without_sense_is_refused(rule: Thresholds) -> None:
    with pytest.raises(PhonodrillError):
        stand([], rule)
