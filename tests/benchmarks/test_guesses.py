"""How well hidden dictionary words are read, beside espeak-ng: docs/guesses.md.

``python -m pytest tests/benchmarks/test_guesses.py --benchmark-only -s`` prints the table.
"""

from __future__ import annotations

import re
from typing import Any, NamedTuple

import pytest

from phonodrill.errors import UnknownWordError
from phonodrill.guess import guess_reading
from phonodrill.sounds.accents import COT_CAUGHT
from tests.benchmarks import espeak
from tests.held_out import (
    Score,
    WithoutWords,
    choose,
    normal_forms,
    score,
    with_their_forms,
)

COUNT = 2000
SEED = 20261125
SETS = {"words of bands 1-4": "band > 0", "names, foreign and rare words": "band = 0"}


class Compared(NamedTuple):
    ours: Score
    ours_folded: Score
    espeak: Score
    espeak_folded: Score


def fold(normal: str) -> str:
    """Write alike what two dictionaries' habits, or accents, set apart."""
    merged = COT_CAUGHT.merge(normal).replace("ir", "ɪr").replace("ær", "ɛr")
    return re.sub("[əʌ]r|ɝr", "ɝ", merged)


def compare() -> dict[str, Compared]:
    chosen = {name: choose(condition, COUNT, SEED) for name, condition in SETS.items()}
    hidden = with_their_forms(word for words in chosen.values() for word in words)
    compared = {}
    with WithoutWords(hidden) as lexicon:

        def guessed(word: str) -> str:
            try:
                return guess_reading(word, lexicon).said.normal
            except UnknownWordError:
                return ""

        for name, words in chosen.items():
            references = normal_forms(words)
            theirs = espeak.say(words)
            ours = {word: guessed(word) for word in words}
            compared[name] = Compared(
                score(references, ours.__getitem__),
                score(references, ours.__getitem__, fold),
                score(references, theirs.__getitem__),
                score(references, theirs.__getitem__, fold),
            )
    return compared


@pytest.mark.skipif(not espeak.is_there(), reason="the Debian package espeak-ng is not installed")
@pytest.mark.source("CMUdict's words, hidden from training; espeak-ng 1.51 (Debian), voice en-us")
def test_hidden_words_are_read_better_than_by_espeak(benchmark: Any) -> None:
    compared = benchmark.pedantic(compare, rounds=1)
    for name, scores in compared.items():
        print(f"\n{name}: {COUNT}")
        for reader, found in scores._asdict().items():
            print(f"  {reader:14} sounds wrong {found.errors:.2%}  whole words {found.whole:.1%}")
    for scores in compared.values():
        assert scores.ours.errors < scores.espeak.errors
        assert scores.ours.whole > scores.espeak.whole
        assert scores.ours_folded.errors < scores.espeak_folded.errors
        assert scores.ours_folded.whole > scores.espeak_folded.whole
