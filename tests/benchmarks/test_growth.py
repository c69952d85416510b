"""How time grows with size; not in the default run.

Each group of ``growth: …`` is one series; the report works out the slope of the logarithms.
``slope`` is the most that is asked: 1 is in proportion, 0 no growth.
"""

from __future__ import annotations

import pathlib
import random
from typing import Any

import pytest

from phonodrill import TASKS, Lexicon, Position, Query, select
from phonodrill.gate import open_gate
from phonodrill.overlay import read_overlay
from phonodrill.records.store import Store
from phonodrill.render.views.warmup import record
from phonodrill.services.passage import check_text
from phonodrill.sounds.notation import Notation
from phonodrill.tasks.warmup import make_warmup
from phonodrill.taught.steps import parse_steps
from tests.benchmarks.commands import TAUGHT, make_passage
from tests.benchmarks.load_records import RECENT
from tests.benchmarks.time_record_pages import fill
from tests.benchmarks.year import make_year

LINEAR = 1.1
"""Somewhat above 1: the machine is no ruler."""


def series(benchmark: Any, shown: str, unit: str, size: int, most: float = LINEAR) -> None:
    """Tell the report which series a benchmark belongs to."""
    benchmark.group = f"growth: {shown}"
    benchmark.extra_info.update(unit=unit, size=size, slope=most)


@pytest.mark.parametrize("step", [8, 4, 2, 1])
def test_the_bank(benchmark: Any, step: int) -> None:
    with Lexicon() as lexicon:
        words = tuple(sorted(lexicon.plain_words(3)))[::step]
    series(benchmark, "every item of every task", "words", len(words))
    query = Query(band=3, words=words)

    def make_all() -> int:
        with Lexicon() as lexicon:
            items = (
                record(item, Notation.IPA)
                for task in TASKS.values()
                for at in task.positions
                for item in task.candidates(select(lexicon, query), query, at)
            )
            return sum(1 for _ in items)

    assert benchmark.pedantic(make_all, rounds=1) > 100


@pytest.mark.parametrize("count", [12_500, 25_000, 50_000, 100_000, 200_000])
def test_passages(benchmark: Any, count: int) -> None:
    series(benchmark, "a passage checked", "words", count)
    text = make_passage(count)

    def check() -> int:
        with Lexicon() as lexicon:
            known = parse_steps(TAUGHT.splitlines(), lexicon.correspondences()).known()
            return check_text(lexicon, text, known).total()

    assert benchmark.pedantic(check, rounds=2) > count * 0.9


@pytest.mark.parametrize("days", [36, 72, 144])
def test_lessons(benchmark: Any, days: int) -> None:
    series(benchmark, "lessons, 36 foci in turn", "lessons", days)
    assert len(benchmark.pedantic(make_year, args=(days,), rounds=1)) == days


@pytest.mark.parametrize("count", [25, 50, 100, 200])
def test_warmups(benchmark: Any, count: int) -> None:
    series(benchmark, "a warm-up", "items", count)
    task = TASKS["segment"]

    def make() -> int:
        with Lexicon() as lexicon:
            at = task.positions[0]
            made = make_warmup(lexicon, task, at, Query(band=3), count=count, seed=1)
            return len(made.items)

    assert benchmark.pedantic(make, rounds=5, warmup_rounds=1) == count


@pytest.mark.parametrize("count", [250, 1_000, 4_000])
def test_own_words(benchmark: Any, count: int, tmp_path: pathlib.Path) -> None:
    series(benchmark, "a warm-up with a teacher's own words", "words", count)
    with Lexicon() as lexicon:
        words = sorted(lexicon.plain_words(3))[:count]
    path = tmp_path / "words.txt"
    path.write_text("".join(f"add {word} 1\n" for word in words), "utf-8")
    task = TASKS["delete"]

    def make() -> int:
        with Lexicon() as lexicon:
            own, query = read_overlay(path), Query(band=2)
            made = make_warmup(lexicon, task, Position.FIRST, query, count=20, seed=1, overlay=own)
            return len(made.items)

    assert benchmark.pedantic(make, rounds=3) == 20


@pytest.mark.parametrize("count", [100, 400, 1_600])
def test_taught_files(benchmark: Any, count: int) -> None:
    series(benchmark, "a taught file read", "steps", count)
    with Lexicon() as lexicon:
        inventory = lexicon.correspondences()
        words = sorted(lexicon.plain_words(3))[: count // 2]
    rows = [row.correspondence.spelling for row in inventory if row.correspondence.spelling]
    lines = [(rows[place % len(rows)], f"word: {word}") for place, word in enumerate(words)]
    text = [line for both in lines for line in both]
    taught = benchmark.pedantic(parse_steps, args=(text, inventory), rounds=5, warmup_rounds=1)
    assert len(taught.steps) + len(taught.problems) == count


@pytest.mark.parametrize("days", [40, 80, 160])
def test_group_pages(benchmark: Any, days: int, tmp_path: pathlib.Path) -> None:
    """What a group page reads: its last checks, however many there are before them."""
    path = tmp_path / "records.sqlite"
    fill(path, 100, days)
    series(benchmark, "a group's last 30 checks read", "results", 100 * days * 8, 0.3)
    with Store(str(path)) as store:
        count = benchmark.pedantic(
            lambda: sum(1 for _ in store.answers("group 1", last=RECENT)), rounds=7, warmup_rounds=1
        )
    assert count == RECENT * 25 * 8


@pytest.mark.parametrize("count", [4_000, 8_000, 16_000, 32_000])
def test_never_say(benchmark: Any, count: int) -> None:
    series(benchmark, "words asked of the gate", "words", count)
    with Lexicon() as lexicon:
        asked = lexicon.spelled(highest_band=3)
        words = random.Random(1).choices(asked, k=count)
        gate = open_gate(lexicon)
        allowed = benchmark.pedantic(
            lambda: sum(gate.allows(word.word, word.normals) for word in words), rounds=5
        )
    assert allowed > count / 2
